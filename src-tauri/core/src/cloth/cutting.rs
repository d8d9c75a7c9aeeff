//! Where to cut: strips straight across the piece, then squares along each strip.
//!
//! A maker cuts this way on the table: she lays the ruler across the leg, cuts off a strip as
//! high as the square, and cuts the strip into squares. Which strips give most depends on
//! hems, worn knees and the taper, and moving one strip by a little moves all strips above it.
//!
//! # How the strips are found
//!
//! With `s` the side as cut (side and trimming), strips may begin `i·r + j·s` above the
//! hem (above what is trimmed off a cut lower edge) for whole `i` and `j`, where `r` is the resolution ([`Cutting::step`]); if `s` is a
//! multiple of `r` these are just the marks of the ruler. `count(y)` is how many squares
//! the strip from `y` to `y + s` gives: between the farthest the left edge comes in and
//! the farthest the right edge comes in over the strip's whole height, less the zones that
//! reach into it, each free stretch of length `l` gives `⌊l / s⌋`. Then
//!
//! * `f(y) = max( f(next mark), count(y) + f(y + s) )`,
//!
//! solved from the top down. Equal counts go to fewer cuts (a line two strips share is
//! one cut; a run of `n` squares takes `n + 1` upright cuts), and then to strips nearer the
//! hem. (Dynamic programming, plain arithmetic.)
//!
//! Where [`Cutting::half`] asks for it, what these strips leave is cut into halves of squares
//! (`cloth/halves.rs`).
//!
//! Where [`Cutting::both_edges`] asks for it, strips may begin at the marks measured down from the
//! upper edge too, above all those from below (`cloth/choice.rs`), where that gives more.
//!
//! # Promises (kept by tests)
//!
//! * Every square lies wholly inside the outline and off the zones, none overlap. Edges
//!   between stations are rounded inwards to the nanometre.
//! * No other choice of strips at the same resolution gives more squares.
//! * [`naive`] ≤ [`lay_out`] ≤ [`free_yield`] ≤ [`bound`].
//! * Another zone never raises the count; a wider outline never lowers it.
//! * [`begins`] with the cloth's edge at that height is the true place, or a ruler's mark
//!   farther in at which all still lies on the cloth.
//! * No input causes a panic: it is laid out or refused with a [`CuttingFault`].
//!
//! # The bound
//!
//! No way of placing squares along the grain gives more than [`bound`]. Draw level lines
//! `s` apart, anywhere. A square, its lower edge with it and its upper edge not, is crossed
//! by exactly one of them; squares crossed by the same line lie side by side on it. So the
//! sum over the lines of the most squares each can cross is never less than the yield, and
//! the same holds for upright lines. The least such sum over many positions of the lines is
//! taken. What a line can cross is estimated a little too high: squares that cross it are sorted
//! by their height into eighths of `s`, and for each eighth only the part common to all
//! of them is asked to be free. (Own argument; plain geometry.)
//!
//! # Not straight across
//!
//! [`free_yield`] tries strips across, strips upright, and bands across of which each is
//! either one strip or cut into upright strips. It shows what is given up by cutting
//! straight across; it is not the most there is.
//!
//! **Staggered rows are not looked for**: squares that stand beside one another at different heights,
//! row by row, so that no line goes straight through. They can give more on tapered pieces. An
//! independent count of 100 such pieces (not repeated here) found 1,098 squares possible, where these
//! strips give 1,093 and [`free_yield`] 1,096; on 90 of the pieces the strips are the most there is.
//! To find them is a search over every place of every square, which takes far longer than an answer
//! may, for one square in 200, and each would be cut out by itself.
//!
//! # Limits
//!
//! Squares lie along the grain, never turned; `cloth/ways.rs` turns the piece. A square may begin anywhere along a strip;
//! only the strips keep to the marks. Positions between marks could give more, and then
//! the bound shows it. Where both edges slant, squares that fit to a hair between them may
//! be lost to the rounding, which is under a nanometre at each edge. At most [`MOST_PLACES`] places for a strip and [`MOST_LAID`] squares.
//!
//! Offcuts come from what the squares leave, and so do binding strips: each lies where the
//! least cloth is left at its end, so that longer places stay for later ones. At the
//! resolution a strip is found wherever one fits; several together need not be the most.
//! [`crate::cloth::strips`] finds strips that cost squares.
//!
//! ```
//! use lapwork_core::cloth::cutting::{Cutting, bound, lay_out};
//! use lapwork_core::cloth::garments::fat_quarter;
//! use lapwork_core::measure::System;
//!
//! // A fat quarter of 18 × 22 in gives twelve 5 in squares, and cannot give more.
//! let piece = fat_quarter(System::Inch);
//! let how = Cutting::default();
//! assert_eq!(lay_out(&piece, &how).unwrap().count, 12);
//! assert_eq!(bound(&piece, &how), Ok(12));
//! ```

use crate::cloth::choice::{best, following, from_both};
use crate::cloth::garments::{
    GarmentKind, GarmentSize, Guess, Piece, PieceFault, Source, ZoneKind, start,
};
use crate::cloth::halves::{self, Band};
use crate::measure::{
    Area, Count, Length, Ruler, System, eighth_inches, in_nm, inches, nm, square_metres,
};
use crate::types::TS;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Most places a strip may begin.
pub const MOST_PLACES: i64 = 200_000;
/// Most squares one piece may have room for.
pub const MOST_LAID: i64 = 20_000;
/// Most marks tried for a binding strip, and most lines tried for the bound.
const MOST_MARKS: i64 = 8_192;
/// Most column looks [`free_yield`] makes before it leaves out mixed bands.
const MOST_TRIALS: usize = 20_000_000;
/// Most binding strips of one piece.
const MOST_BINDING: usize = 64;
/// Sides of offcuts under 1 in are not worth listing (our judgement).
const LEAST_OFFCUT: i64 = 25_400_000;
/// Parts into which the bound sorts the squares on a line.
const PARTS: i64 = 8;
/// Longest binding strip, 100 m.
const LONGEST_STRIP: i64 = 100_000_000_000;
/// Shortest and longest side as cut, 5 mm and 2 m.
const SIDES: std::ops::RangeInclusive<i64> = 5_000_000..=2_000_000_000;

/// Strips for the binding, all of one length, from what the squares leave.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct BindingCut {
    /// Width of a strip.
    pub width: Length,
    /// Length of a strip.
    pub length: Length,
    /// No more than so many are taken.
    pub most: u32,
}

/// What is to be cut, and how finely places are tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Cutting {
    /// Side of a square as it is to be sewn.
    pub side: Length,
    /// Cut so much larger, to be trimmed later; nothing for rotary cutting.
    pub trimming: Length,
    /// From one place tried to the next.
    pub step: Length,
    /// Strips for the binding, where wanted.
    pub binding: Option<BindingCut>,
    /// Strips are measured from the upper edge too, where that gives more.
    pub both_edges: bool,
    /// What the squares leave is cut into halves of this width, of which two are lapped into one
    /// square.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub half: Option<Length>,
}

impl Default for Cutting {
    /// Five-inch squares at every eighth of an inch, no binding.
    fn default() -> Self {
        Cutting {
            side: inches(5),
            trimming: nm(0),
            step: Cutting::usual_step(System::Inch),
            binding: None,
            both_edges: false,
            half: None,
        }
    }
}

impl Cutting {
    /// 1/8 in, or 2 mm.
    pub fn usual_step(system: System) -> Length {
        match system {
            System::Inch => eighth_inches(1),
            System::Metric => nm(2_000_000),
        }
    }

    /// Side as cut, trimming and all.
    pub fn cut_side(&self) -> Length {
        nm(in_nm(self.side).saturating_add(in_nm(self.trimming)))
    }

    /// What stands in the way of these measures, on every piece.
    ///
    /// # Errors
    /// The first [`CuttingFault`] found.
    pub fn check(&self) -> Result<(), CuttingFault> {
        if !SIDES.contains(&in_nm(self.side)) {
            return Err(CuttingFault::Side);
        }
        if self.trimming < nm(0) || self.trimming > self.side {
            return Err(CuttingFault::Trimming);
        }
        let narrow = |half: Length| half * 2 <= self.cut_side() || half >= self.cut_side();
        if self.half.is_some_and(narrow) {
            return Err(CuttingFault::Half);
        }
        if self.step < nm(100_000) || self.step > self.cut_side() {
            return Err(CuttingFault::Step);
        }
        let wrong = |b: &BindingCut| {
            !SIDES.contains(&in_nm(b.width))
                || b.length < b.width
                || in_nm(b.length) > LONGEST_STRIP
        };
        if self.binding.as_ref().is_some_and(wrong) {
            return Err(CuttingFault::Binding);
        }
        Ok(())
    }
}

/// Why a piece cannot be laid out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum CuttingFault {
    /// The piece itself.
    #[error(transparent)]
    Piece(#[from] PieceFault),
    /// Side outside 5 mm to 2 m.
    #[error("the side of a square is not between 5 mm and 2 m")]
    Side,
    /// Trimming below nothing or more than the side.
    #[error("the trimming is not between nothing and the side")]
    Trimming,
    /// Two halves that do not overlap in one square, or that are as wide as it.
    #[error("a half is not between half the side of a square and all of it")]
    Half,
    /// Resolution under 0.1 mm, or coarser than the squares.
    #[error("the step is under 0.1 mm or larger than a square")]
    Step,
    /// Binding under 5 mm wide, or pieces of it shorter than wide.
    #[error("binding strips are under 5 mm wide or shorter than wide")]
    Binding,
    /// More than [`MOST_PLACES`] places: a coarser resolution is needed.
    #[error("more than {MOST_PLACES} places to try; take a larger step")]
    TooFine,
    /// Room for more than [`MOST_LAID`] squares.
    #[error("room for more than {MOST_LAID} squares")]
    TooMany,
}

/// A strip across the piece.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Strip {
    /// Its lower edge, above the hem.
    pub from: Length,
    /// Its upper edge.
    pub to: Length,
    /// Left edges of its squares, from the left.
    pub squares: Vec<Length>,
}

/// An upright rectangle of cloth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Patch {
    /// Lower edge, above the hem.
    pub from: Length,
    /// Upper edge.
    pub to: Length,
    /// Left edge, from the middle line.
    pub left: Length,
    /// Right edge.
    pub right: Length,
}

impl Strip {
    /// Its squares in runs edge to edge, from the left.
    pub fn runs(&self) -> Vec<Patch> {
        let side = self.to - self.from;
        let mut runs: Vec<Patch> = Vec::new();
        for left in &self.squares {
            let right = *left + side;
            match runs.last_mut() {
                Some(run) if run.right == *left => run.right = right,
                _ => runs.push(Patch {
                    from: self.from,
                    to: self.to,
                    left: *left,
                    right,
                }),
            }
        }
        runs
    }
}

/// Half a square; two of them are lapped into one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Half {
    /// Where it lies.
    pub patch: Patch,
    /// Its long side runs up the piece as it lies; else across.
    pub upright: bool,
    /// The strip beside whose squares it lies, counted from 0; none where it lies in a row of
    /// halves.
    pub strip: Option<usize>,
}

impl Half {
    /// Its width and height as it lies.
    pub fn size(&self) -> [Length; 2] {
        let p = &self.patch;
        [p.right - p.left, p.to - p.from]
    }
}

/// One cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CutLine {
    /// Straight across the piece.
    Across {
        /// Height above the hem.
        at: Length,
        /// From here.
        left: Length,
        /// To here.
        right: Length,
    },
    /// Up a strip.
    Upright {
        /// Distance from the middle line.
        at: Length,
        /// From here.
        from: Length,
        /// To here.
        to: Length,
    },
}

/// A piece laid out.
#[derive(Debug, Clone, PartialEq)]
pub struct CutPlan {
    /// Strips in the order they are cut: from the hem up, and then those measured from the upper
    /// edge, from there down.
    pub strips: Vec<Strip>,
    /// How many of them, the last ones, are measured from the upper edge.
    pub from_top: usize,
    /// The piece lies a quarter turned.
    pub turned: bool,
    /// Cuts in the order they are made: across from the hem up, then along each strip.
    pub lines: Vec<CutLine>,
    /// Squares in all, those pieced of halves with them.
    pub count: u32,
    /// Of these, squares pieced of two halves.
    pub pieced: u32,
    /// The halves, two for each pieced square, in the order they are cut.
    pub halves: Vec<Half>,
    /// Strips for the binding, in the order they were found.
    pub binding: Vec<Patch>,
    /// Rectangles left over, 1 in and more both ways.
    pub offcuts: Vec<Patch>,
    /// Cloth that is neither square nor binding, unusable places with it.
    pub spare: Area,
}

/// Halves edge to edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HalfRun {
    /// All of them.
    pub patch: Patch,
    /// How many.
    pub count: u32,
    /// They are upright.
    pub upright: bool,
    /// The strip they are cut of, where it is one of squares.
    pub strip: Option<usize>,
}

impl CutPlan {
    /// Whether a half lies right beside a square of its strip.
    pub fn is_beside(&self, half: &Half) -> bool {
        let strip = half.strip.and_then(|nth| self.strips.get(nth));
        strip.is_some_and(|s| {
            let side = s.to - s.from;
            s.squares.iter().any(|left| *left + side == half.patch.left)
        })
    }

    /// The halves that lie beside no square, in runs edge to edge.
    pub fn loose_halves(&self) -> Vec<HalfRun> {
        let mut runs: Vec<HalfRun> = Vec::new();
        for half in self.halves.iter().filter(|half| !self.is_beside(half)) {
            let patch = half.patch;
            match runs.last_mut() {
                Some(run)
                    if run.patch.right == patch.left
                        && (run.patch.from, run.patch.to) == (patch.from, patch.to) =>
                {
                    run.patch.right = patch.right;
                    run.count += 1;
                }
                _ => runs.push(HalfRun {
                    patch,
                    count: 1,
                    upright: half.upright,
                    strip: half.strip,
                }),
            }
        }
        runs
    }

    /// Which of the pieced squares a half is of, counted from 0: two upright ones make a square,
    /// or two that lie across.
    pub fn pair_of(&self, nth: usize) -> usize {
        let Some(half) = self.halves.get(nth) else {
            return 0;
        };
        let alike = |h: &&Half| h.upright == half.upright;
        let before = self.halves.iter().take(nth).filter(alike).count();
        let upright = self.halves.iter().filter(|h| h.upright).count();
        let first = if half.upright { 0 } else { upright / 2 };
        first + before / 2
    }

    /// Whole squares.
    pub fn whole(&self) -> u32 {
        self.count.saturating_sub(self.pieced)
    }
}

/// A rectangle in nanometres.
#[derive(Debug, Clone, Copy)]
pub(super) struct ClearRect {
    pub(super) from: i64,
    pub(super) to: i64,
    pub(super) left: i64,
    pub(super) right: i64,
}

impl ClearRect {
    fn of(patch: &Patch) -> ClearRect {
        ClearRect {
            from: in_nm(patch.from),
            to: in_nm(patch.to),
            left: in_nm(patch.left),
            right: in_nm(patch.right),
        }
    }

    pub(super) fn patch(self) -> Patch {
        Patch {
            from: nm(self.from),
            to: nm(self.to),
            left: nm(self.left),
            right: nm(self.right),
        }
    }
}

/// `rise·part / run`, rounded down, or up.
fn share(rise: i64, part: i64, run: i64, up: bool) -> i64 {
    let turn = if up { -1 } else { 1 };
    match (turn * rise).checked_mul(part) {
        Some(product) => turn * product.div_euclid(run),
        None => {
            let product = i128::from(turn * rise) * i128::from(part);
            turn * product.div_euclid(i128::from(run)) as i64
        }
    }
}

/// The heights between `low` and `high` at which an edge running from `v0` to `v1` is at
/// most `limit`, rounded inwards.
pub(super) fn at_most([low, high]: [i64; 2], [v0, v1]: [i64; 2], limit: i64) -> Option<[i64; 2]> {
    match (v0 <= limit, v1 <= limit) {
        (true, true) => Some([low, high]),
        (false, false) => None,
        (true, false) => Some([low, low + share(high - low, limit - v0, v1 - v0, false)]),
        (false, true) => Some([low + share(high - low, v0 - limit, v0 - v1, true), high]),
    }
}

/// A piece as the arithmetic wants it.
pub(super) struct CuttingGround {
    /// Where the marks begin: at the lower edge, or above what is trimmed off it.
    base: i64,
    /// Where those from above begin: at the upper edge, or under what is trimmed off it.
    top: i64,
    /// Height, left edge, right edge.
    stations: Vec<[i64; 3]>,
    /// Kept clear, by left edge.
    by_left: Vec<ClearRect>,
    /// The same by lower edge.
    by_from: Vec<ClearRect>,
}

impl CuttingGround {
    fn new(piece: &Piece) -> Result<CuttingGround, CuttingFault> {
        piece.check()?;
        let stations = piece.stations.iter();
        let blocks = piece.zones.iter().map(|z| ClearRect {
            from: in_nm(z.from),
            to: in_nm(z.to),
            left: in_nm(z.left),
            right: in_nm(z.right),
        });
        let [low, high, left, right] = piece.reach();
        let trimmed = || {
            piece
                .zones
                .iter()
                .filter(|z| z.kind == ZoneKind::CutEdge && z.left <= left && z.right >= right)
        };
        let under = trimmed().filter(|z| z.from <= low).map(|z| z.to);
        let over = trimmed().filter(|z| z.to >= high).map(|z| z.from);
        let mut ground = CuttingGround {
            base: in_nm(under.fold(low, std::cmp::max)),
            top: in_nm(over.fold(high, std::cmp::min)),
            stations: stations
                .map(|s| [in_nm(s.at), in_nm(s.left), in_nm(s.right)])
                .collect(),
            by_left: Vec::new(),
            by_from: Vec::new(),
        };
        ground.keep_off(blocks);
        Ok(ground)
    }

    fn keep_off(&mut self, blocks: impl Iterator<Item = ClearRect>) {
        self.by_left.extend(blocks);
        self.by_left
            .sort_by_key(|b| (b.left, b.right, b.from, b.to));
        self.by_from.clone_from(&self.by_left);
        self.by_from
            .sort_by_key(|b| (b.from, b.to, b.left, b.right));
    }

    fn low(&self) -> i64 {
        self.stations[0][0]
    }

    fn high(&self) -> i64 {
        self.stations[self.stations.len() - 1][0]
    }

    fn left(&self) -> i64 {
        self.stations.iter().map(|s| s[1]).min().unwrap_or(0)
    }

    fn right(&self) -> i64 {
        self.stations.iter().map(|s| s[2]).max().unwrap_or(0)
    }

    /// What the outline holds over the whole height from `a` to `b`, rounded inwards.
    fn level(&self, a: i64, b: i64) -> [i64; 2] {
        let (mut left, mut right) = (i64::MIN, i64::MAX);
        let mut within = |l: i64, r: i64| {
            left = left.max(l);
            right = right.min(r);
        };
        for pair in self.stations.windows(2) {
            let ([y0, l0, r0], [y1, l1, r1]) = (pair[0], pair[1]);
            if y1 < a || y0 > b {
                continue;
            }
            for y in [a.max(y0), b.min(y1)] {
                within(
                    l0 + share(l1 - l0, y - y0, y1 - y0, true),
                    r0 + share(r1 - r0, y - y0, y1 - y0, false),
                );
            }
        }
        [left, right]
    }

    /// The free stretches of the strip from `a` to `b`, from the left.
    pub(super) fn across(&self, a: i64, b: i64, mut each: impl FnMut(i64, i64)) {
        let [mut at, right] = self.level(a, b);
        for block in &self.by_left {
            // A steep slant leaves no cloth over the whole height: its left edge ends right of its
            // right one.
            if at >= right {
                return;
            }
            if block.from < b && block.to > a && block.right > at {
                if block.left > at {
                    each(at, block.left.min(right));
                }
                at = block.right;
            }
        }
        if at < right {
            each(at, right);
        }
    }

    /// Squares of a strip, and the upright cuts they take.
    fn count(&self, a: i64, side: i64) -> (i64, i64) {
        let (mut squares, mut cuts) = (0, 0);
        self.across(a, a + side, |from, to| {
            let n = (to - from) / side;
            squares += n;
            cuts += if n > 0 { n + 1 } else { 0 };
        });
        (squares, cuts)
    }

    /// The free stretches of the column from `a` to `b`, from the hem up.
    pub(super) fn upright(&self, a: i64, b: i64, mut each: impl FnMut(i64, i64)) {
        let mut free = |mut at: i64, end: i64| {
            for block in &self.by_from {
                if block.left < b && block.right > a && block.to > at {
                    if block.from > at {
                        each(at, block.from.min(end));
                    }
                    at = block.to;
                }
                if at >= end {
                    return;
                }
            }
            if at < end {
                each(at, end);
            }
        };
        let mut open: Option<[i64; 2]> = None;
        for pair in self.stations.windows(2) {
            let ([y0, l0, r0], [y1, l1, r1]) = (pair[0], pair[1]);
            let left = at_most([y0, y1], [l0, l1], a);
            let right = at_most([y0, y1], [-r0, -r1], -b);
            let both = left
                .zip(right)
                .map(|(l, r)| [l[0].max(r[0]), l[1].min(r[1])]);
            let Some([from, to]) = both.filter(|[from, to]| from <= to) else {
                continue;
            };
            open = match open {
                Some([start, end]) if end == from => Some([start, to]),
                Some([start, end]) => {
                    free(start, end);
                    Some([from, to])
                }
                None => Some([from, to]),
            };
        }
        if let Some([from, to]) = open {
            free(from, to);
        }
    }
}

/// Where the cloth begins and ends at a height, rounded inwards to the nanometre; beyond
/// the piece as at its end. A piece that cannot be cut is taken for as wide as it reaches.
pub fn edges(piece: &Piece, at: Length) -> [Length; 2] {
    let Ok(ground) = CuttingGround::new(piece) else {
        let [_, _, left, right] = piece.reach();
        return [left, right];
    };
    let at = in_nm(at).clamp(ground.low(), ground.high());
    ground.level(at, at).map(nm)
}

/// How far something cut may slide to the right before it meets the edge of the cloth, a
/// place to keep clear, or something else that is cut.
fn slack(piece: &Piece, plan: &CutPlan, patch: &Patch) -> Length {
    let Ok(ground) = CuttingGround::new(piece) else {
        return nm(0);
    };
    // A half right beside squares goes along with them.
    let beside = |half: &&Half| half.strip.is_some() && half.patch.left == patch.right;
    let beside = (plan.halves.iter()).find(|h| beside(h) && h.patch.from == patch.from);
    let patch = &Patch {
        right: beside.map_or(patch.right, |half| half.patch.right),
        ..*patch
    };
    let [_, end] = ground.level(in_nm(patch.from), in_nm(patch.to));
    let zones = piece.zones.iter().map(|z| (z.from, z.to, z.left));
    let level = |strip: &&Strip| strip.from < patch.to && strip.to > patch.from;
    let runs = plan.strips.iter().filter(level).flat_map(Strip::runs);
    let halves = plan.halves.iter().map(|half| half.patch);
    let cut = runs.chain(plan.binding.iter().copied()).chain(halves);
    let end = zones
        .chain(cut.map(|p| (p.from, p.to, p.left)))
        .filter(|(from, to, left)| *from < patch.to && *to > patch.from && *left >= patch.right)
        .map(|(_, _, left)| left)
        .fold(nm(end), std::cmp::min);
    end - patch.right
}

/// The edge on the left from which something cut is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FromEdge {
    /// The cloth's own left edge, on the lower line of what is cut.
    Cloth,
    /// The right edge of a binding strip that was cut before, where one lies in between: the cloth
    /// left and right of it is in two parts by then.
    Strip,
}

/// Where something cut begins.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Beginning {
    /// What it is measured from.
    pub from: FromEdge,
    /// How far from it.
    pub by: Length,
    /// Where that is.
    pub left: Length,
}

/// Where each binding strip begins, then each run of squares and then each run of halves that
/// begins beside no square, in the order in which they are cut. Each begins on the ruler's next
/// mark inwards where the cloth leaves room for that, else to the nanometre.
pub fn beginnings(piece: &Piece, plan: &CutPlan, ruler: Ruler) -> Vec<Beginning> {
    let mut out: Vec<Beginning> = Vec::new();
    let mut cut: Vec<Patch> = Vec::new();
    let runs = plan.strips.iter().flat_map(Strip::runs);
    let halves = plan.loose_halves().into_iter().map(|run| run.patch);
    let all = plan.binding.iter().copied().chain(runs).chain(halves);
    for (n, patch) in all.enumerate() {
        let between = |p: &&Patch| p.from < patch.to && p.to > patch.from && p.right <= patch.left;
        let strip = cut.iter().filter(between).map(|p| p.right).max();
        let (from, by, base) = match strip {
            Some(edge) => (
                FromEdge::Strip,
                on_mark(piece, plan, &patch, edge, ruler),
                edge,
            ),
            None => {
                let [edge, _] = edges(piece, patch.from);
                (FromEdge::Cloth, begins(piece, plan, &patch, ruler), edge)
            }
        };
        let left = base + by;
        out.push(Beginning { from, by, left });
        if n < plan.binding.len() {
            cut.push(Patch {
                left,
                right: left + (patch.right - patch.left),
                ..patch
            });
        }
    }
    out
}

/// How far from the cloth's own left edge, on the lower line of what is cut, the ruler is
/// laid to begin it: on the ruler's next mark inwards where the cloth leaves room for
/// that, else to the nanometre.
pub fn begins(piece: &Piece, plan: &CutPlan, patch: &Patch, ruler: Ruler) -> Length {
    let [edge, _] = edges(piece, patch.from);
    on_mark(piece, plan, patch, edge, ruler)
}

/// How far from an edge something cut begins.
fn on_mark(piece: &Piece, plan: &CutPlan, patch: &Patch, edge: Length, ruler: Ruler) -> Length {
    let exact = patch.left - edge;
    let mark = ruler.at_least(exact);
    if mark - exact <= slack(piece, plan, patch) {
        mark
    } else {
        exact
    }
}

/// Where strips may begin: `i·step + j·side` from `low`, the strip ending by `high`.
fn places(low: i64, high: i64, side: i64, step: i64) -> Result<Vec<i64>, CuttingFault> {
    let room = high - low - side;
    if room < 0 {
        return Ok(Vec::new());
    }
    let rows = if side % step == 0 { 1 } else { room / side + 1 };
    if (room / step + 1).saturating_mul(rows) > MOST_PLACES {
        return Err(CuttingFault::TooFine);
    }
    let mut out: Vec<i64> = (0..rows)
        .flat_map(|j| (0..=(room - j * side) / step).map(move |i| low + j * side + i * step))
        .collect();
    out.sort_unstable();
    out.dedup();
    Ok(out)
}

pub(super) fn ready(
    piece: &Piece,
    how: &Cutting,
) -> Result<(CuttingGround, i64, i64), CuttingFault> {
    how.check()?;
    let (ground, side) = (CuttingGround::new(piece)?, in_nm(how.cut_side()));
    let rows = (ground.high() - ground.low()) / side;
    if rows.saturating_mul((ground.right() - ground.left()) / side) > MOST_LAID {
        return Err(CuttingFault::TooMany);
    }
    Ok((ground, side, in_nm(how.step)))
}

/// The strips that give most squares, straight across the piece.
///
/// # Errors
/// A [`CuttingFault`] saying what cannot be.
pub fn lay_out(piece: &Piece, how: &Cutting) -> Result<CutPlan, CuttingFault> {
    let (mut ground, side, step) = ready(piece, how)?;
    let (starts, from_top) = starts(&ground, how, side, step)?;
    let mut squares = Vec::new();
    let mut strips = Vec::new();
    let mut lines = Vec::new();
    let mut uprights = Vec::new();
    let mut cut = [None; 2];
    for from in starts {
        let to = from + side;
        for at in [from, to]
            .into_iter()
            .filter(|at| !cut.contains(&Some(*at)))
        {
            let [left, right] = ground.level(at, at);
            lines.push(CutLine::Across {
                at: nm(at),
                left: nm(left),
                right: nm(right),
            });
        }
        cut = [Some(from), Some(to)];
        let mut lefts = Vec::new();
        ground.across(from, to, |left, right| {
            let n = (right - left) / side;
            lefts.extend((0..n).map(|k| left + k * side));
            uprights.extend((0..=n).filter(|_| n > 0).map(|k| CutLine::Upright {
                at: nm(left + k * side),
                from: nm(from),
                to: nm(to),
            }));
        });
        squares.extend(lefts.iter().map(|left| ClearRect {
            from,
            to,
            left: *left,
            right: left + side,
        }));
        strips.push(Strip {
            from: nm(from),
            to: nm(to),
            squares: lefts.into_iter().map(nm).collect(),
        });
    }
    lines.append(&mut uprights);
    let whole = squares.len();
    ground.keep_off(squares.into_iter());
    let halves = match how.half {
        Some(half) => halves_of(&ground, &strips, [side, in_nm(half)], step),
        None => Vec::new(),
    };
    ground.keep_off(halves.iter().map(|half| ClearRect::of(&half.patch)));
    let pieced = halves.len() / 2;
    let count = whole + pieced;
    let binding = how
        .binding
        .map_or_else(Vec::new, |b| binding(&mut ground, b, step));
    let mut spare = piece.area() - square_metres(nm(side), nm(side)) * whole as f64;
    for half in &halves {
        let [wide, high] = half.size();
        spare -= square_metres(wide, high);
    }
    for strip in &binding {
        spare -= square_metres(nm(strip.right - strip.left), nm(strip.to - strip.from));
    }
    Ok(CutPlan {
        offcuts: offcuts(&ground, &strips),
        strips,
        from_top,
        turned: false,
        lines,
        count: u32::try_from(count).unwrap_or(u32::MAX),
        pieced: u32::try_from(pieced).unwrap_or(u32::MAX),
        halves,
        binding: binding.into_iter().map(ClearRect::patch).collect(),
        spare,
    })
}

/// How many squares [`lay_out`] finds, without saying where.
pub(super) fn squares_of(piece: &Piece, how: &Cutting) -> Result<u32, CuttingFault> {
    if how.half.is_some() {
        return Ok(lay_out(piece, how)?.count);
    }
    let (ground, side, step) = ready(piece, how)?;
    let (starts, _) = starts(&ground, how, side, step)?;
    let squares: i64 = starts.iter().map(|from| ground.count(*from, side).0).sum();
    Ok(u32::try_from(squares).unwrap_or(u32::MAX))
}

/// Where the strips begin, in the order they are cut, and how many of them are measured from
/// the upper edge.
fn starts(
    ground: &CuttingGround,
    how: &Cutting,
    side: i64,
    step: i64,
) -> Result<(Vec<i64>, usize), CuttingFault> {
    let below = places(ground.base, ground.high(), side, step)?;
    let count = |from: &i64| ground.count(*from, side);
    let squares: Vec<_> = below.iter().map(count).collect();
    let from_below = best(&below, side, &squares);
    let plain = || from_below.iter().map(|i| below[*i]).collect();
    if !how.both_edges {
        return Ok((plain(), 0));
    }
    let depths = places(0, ground.top - ground.low(), side, step)?;
    let froms: Vec<i64> = depths.iter().map(|d| ground.top - side - d).collect();
    let above: Vec<_> = froms.iter().map(count).collect();
    let heights: Vec<i64> = below.iter().map(|y| y - ground.base).collect();
    let tall = ground.top - ground.base;
    let [low, high] = from_both([&heights, &depths], [&squares, &above], tall, side);
    let sum =
        |taken: &[usize], counts: &[(i64, i64)]| taken.iter().map(|i| counts[*i].0).sum::<i64>();
    if sum(&low, &squares) + sum(&high, &above) <= sum(&from_below, &squares) {
        return Ok((plain(), 0));
    }
    let up = low.iter().map(|i| below[*i]);
    let down = high.iter().map(|i| froms[*i]);
    Ok((up.chain(down).collect(), high.len()))
}

/// The halves in what the squares leave, two for each pieced square: those beside the squares, strip
/// by strip, then those in rows from the hem up.
fn halves_of(
    ground: &CuttingGround,
    strips: &[Strip],
    [side, half]: [i64; 2],
    step: i64,
) -> Vec<Half> {
    let mut out = Vec::new();
    let upright = |from: i64, to: i64, left: i64, strip| Half {
        patch: ClearRect {
            from,
            to,
            left,
            right: left + half,
        }
        .patch(),
        upright: true,
        strip,
    };
    // Squares are kept off, so that what is free lies beside them.
    for (nth, strip) in strips.iter().enumerate() {
        let (from, to) = (in_nm(strip.from), in_nm(strip.to));
        ground.across(from, to, |left, right| {
            if right - left >= half {
                out.push(upright(from, to, left, Some(nth)));
            }
        });
    }
    let mut edges: Vec<i64> = strips.iter().map(|s| in_nm(s.from)).collect();
    edges.extend(strips.iter().map(|s| in_nm(s.to)));
    edges.extend([ground.low(), ground.high()]);
    edges.sort_unstable();
    // Strips are as high as a square and do not overlap: every other gap lies between them.
    let free = edges.chunks_exact(2).map(|e| [e[0], e[1]]);
    let free: Vec<[i64; 2]> = free.filter(|[a, b]| b - a >= half).collect();
    let count = |from: i64, high: i64, wide: i64| {
        let mut n = 0;
        ground.across(from, from + high, |left, right| n += (right - left) / wide);
        u32::try_from(n).unwrap_or(u32::MAX)
    };
    let bands = free.iter().map(|[low, high]| {
        let step = step * ((high - low) / step / MOST_MARKS + 1);
        let marks = (0..=(high - low - half) / step).map(|i| low + i * step);
        let marks: Vec<i64> = marks.collect();
        let tall = |m: &i64| match m + side <= *high {
            true => count(*m, side, half),
            false => 0,
        };
        Band {
            upright: marks.iter().map(tall).collect(),
            lying: marks.iter().map(|m| count(*m, half, side)).collect(),
            marks,
        }
    });
    let bands: Vec<Band> = bands.collect();
    for row in halves::rows(&bands, out.len() as u32, [side, half]) {
        let (high, wide) = if row.upright {
            (side, half)
        } else {
            (half, side)
        };
        ground.across(row.from, row.from + high, |left, right| {
            out.extend((0..(right - left) / wide).map(|k| {
                let left = left + k * wide;
                let patch = ClearRect {
                    from: row.from,
                    to: row.from + high,
                    left,
                    right: left + wide,
                };
                Half {
                    patch: patch.patch(),
                    upright: row.upright,
                    strip: None,
                }
            }));
        });
    }
    // One that finds no other half is no square; the last of its kind is left out.
    for upright in [true, false] {
        let mut own = out.iter().enumerate().filter(|(_, h)| h.upright == upright);
        if own.clone().count() % 2 == 1
            && let Some((last, _)) = own.next_back()
        {
            out.remove(last);
        }
    }
    out
}

/// Straight strips in what is left, one after another; they are kept off after.
fn binding(ground: &mut CuttingGround, how: BindingCut, step: i64) -> Vec<ClearRect> {
    let mut out = Vec::new();
    while out.len() < MOST_BINDING.min(how.most as usize) {
        let mut tightest: Option<(i64, ClearRect)> = None;
        strip_places(ground, how, step, |over, block, _| {
            if tightest.is_none_or(|(least, _)| over < least) {
                tightest = Some((over, block));
            }
        });
        let Some((_, block)) = tightest else {
            break;
        };
        ground.keep_off(std::iter::once(block));
        out.push(block);
    }
    out
}

/// Every place at the resolution where a binding strip fits, upright and then across: what is
/// left over beyond its end, the place, and whether it is upright.
pub(super) fn strip_places(
    ground: &CuttingGround,
    how: BindingCut,
    step: i64,
    mut each: impl FnMut(i64, ClearRect, bool),
) {
    let (width, length) = (in_nm(how.width), in_nm(how.length));
    for left in marks(ground, [ground.left(), ground.right()], width, step, true) {
        let right = left + width;
        ground.upright(left, right, |from, to| {
            if to - from >= length {
                let to_length = from + length;
                let block = ClearRect {
                    from,
                    to: to_length,
                    left,
                    right,
                };
                each(to - to_length, block, true);
            }
        });
    }
    for from in marks(ground, [ground.low(), ground.high()], width, step, false) {
        let to = from + width;
        ground.across(from, to, |left, right| {
            if right - left >= length {
                let block = ClearRect {
                    from,
                    to,
                    left,
                    right: left + length,
                };
                each(right - block.right, block, false);
            }
        });
    }
}

/// Places for a binding strip: the marks, and against every edge of what is kept off.
fn marks(
    ground: &CuttingGround,
    [low, high]: [i64; 2],
    width: i64,
    step: i64,
    upright: bool,
) -> Vec<i64> {
    let steps = (high - low) / step;
    // A vast piece is tried more coarsely.
    let step = step * (steps / MOST_MARKS + 1);
    let mut out: Vec<i64> = (0..=(high - low) / step).map(|i| low + i * step).collect();
    for b in &ground.by_left {
        let [before, after] = if upright {
            [b.left, b.right]
        } else {
            [b.from, b.to]
        };
        out.extend([before - width, after]);
    }
    for s in &ground.stations {
        if upright {
            out.extend([s[1], s[2] - width]);
        } else {
            out.extend([s[0], s[0] - width]);
        }
    }
    out.retain(|at| (low..=high - width).contains(at));
    out.sort_unstable();
    out.dedup();
    out
}

/// What is left in and between the strips.
fn offcuts(ground: &CuttingGround, strips: &[Strip]) -> Vec<Patch> {
    let mut edges = vec![ground.low()];
    edges.extend(strips.iter().flat_map(|s| [in_nm(s.from), in_nm(s.to)]));
    edges.push(ground.high());
    edges.sort_unstable();
    let mut out = Vec::new();
    for band in edges.windows(2) {
        let (from, to) = (band[0], band[1]);
        if to - from < LEAST_OFFCUT {
            continue;
        }
        ground.across(from, to, |left, right| {
            if right - left >= LEAST_OFFCUT {
                let block = ClearRect {
                    from,
                    to,
                    left,
                    right,
                };
                out.push(block.patch());
            }
        });
    }
    out
}

/// Squares by cutting strip after strip: the first where the lowest square fits, each
/// next on top of the last, squares from the left.
///
/// # Errors
/// A [`CuttingFault`] saying what cannot be.
pub fn naive(piece: &Piece, how: &Cutting) -> Result<u32, CuttingFault> {
    let (ground, side, step) = ready(piece, how)?;
    let places = places(ground.base, ground.high(), side, step)?;
    let first = places.into_iter().find(|y| ground.count(*y, side).0 > 0);
    let mut squares = 0;
    if let Some(mut y) = first {
        while y <= ground.high() - side {
            squares += ground.count(y, side).0;
            y += side;
        }
    }
    Ok(u32::try_from(squares).unwrap_or(u32::MAX))
}

/// No placing of squares along the grain gives more than this; see the module's header.
///
/// # Errors
/// A [`CuttingFault`] saying what cannot be.
pub fn bound(piece: &Piece, how: &Cutting) -> Result<u32, CuttingFault> {
    let (ground, side, step) = ready(piece, how)?;
    let of = |upright: bool| {
        let [low, high] = if upright {
            [ground.left(), ground.right()]
        } else {
            [ground.low(), ground.high()]
        };
        if high - low < side {
            return 0;
        }
        // Positions that fall on edges, then at most 64 by the ruler.
        let step = step.max(side / 64);
        let mut offsets = vec![(high - low) % side];
        for b in ground.by_left.iter().take(32) {
            let edges = if upright {
                [b.left, b.right]
            } else {
                [b.from, b.to]
            };
            offsets.extend(edges.map(|e| (e - low).rem_euclid(side)));
        }
        offsets.extend((0..(side + step - 1) / step).map(|i| i * step));
        offsets.truncate((MOST_MARKS / ((high - low) / side)).max(1) as usize);
        let mut least = i64::MAX;
        let mut free = Vec::new();
        for offset in offsets {
            let mut sum = 0;
            let mut line = low + offset;
            while line <= high && sum < least {
                sum += crossed(&ground, [low, high], line, side, upright, &mut free);
                line += side;
            }
            least = least.min(sum);
        }
        least
    };
    let most = of(false).min(of(true));
    Ok(u32::try_from(most).unwrap_or(u32::MAX))
}

/// The most squares one line can cross, estimated a little too high.
fn crossed(
    ground: &CuttingGround,
    [low, high]: [i64; 2],
    line: i64,
    side: i64,
    upright: bool,
    free: &mut Vec<[i64; 2]>,
) -> i64 {
    // Squares on the line begin after `line − side` and no later than the line.
    let (first, last) = ((line - side + 1).max(low), line.min(high - side));
    if first > last {
        return 0;
    }
    free.clear();
    let mut keep = |from: i64, to: i64| {
        // Edges were rounded inwards by under a nanometre: give it back.
        let (from, to) = (from - 1, to + 1);
        if to - from >= side {
            free.push([from, to]);
        }
    };
    for part in 0..PARTS {
        let begins =
            |k: i64| first + (last - first) / PARTS * k + (last - first) % PARTS * k / PARTS;
        let (a, b) = (begins(part), begins(part + 1));
        if upright {
            ground.upright(b, a + side, &mut keep);
        } else {
            ground.across(b, a + side, &mut keep);
        }
    }
    // Side by side from the left, each as far left as any stretch allows.
    let (mut count, mut at) = (0, i64::MIN);
    loop {
        let next = free
            .iter()
            .filter(|[from, to]| to - side >= at.max(*from))
            .map(|[from, _]| at.max(*from))
            .min();
        let Some(left) = next else {
            return count;
        };
        // A square right after it can begin no further left, while the stretch lasts.
        let n = free
            .iter()
            .filter(|[from, to]| *from <= left && to - side >= left)
            .map(|[_, to]| (to - left) / side)
            .max()
            .unwrap_or(1);
        count += n;
        at = left + n * side;
    }
}

/// How the squares of a [`FreeYield`] lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum StripDirection {
    /// Strips straight across.
    Across,
    /// Strips upright.
    Upright,
    /// Bands across, of which some are cut into upright strips.
    Mixed,
}

/// A layout that need not go straight across.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FreeYield {
    /// Squares in all.
    pub count: u32,
    /// The way that gave most; the plainest of equals.
    pub way: StripDirection,
    /// The squares.
    pub squares: Vec<Patch>,
}

/// Columns of the piece, for strips upright.
struct Columns {
    side: i64,
    lefts: Vec<i64>,
    next: Vec<usize>,
    free: Vec<Vec<[i64; 2]>>,
    /// From a column on, the most squares.
    most: Vec<i64>,
}

impl Columns {
    fn new(ground: &CuttingGround, side: i64, step: i64) -> Result<Columns, CuttingFault> {
        let lefts = places(ground.left(), ground.right(), side, step)?;
        let free = lefts.iter().map(|x| {
            let mut free = Vec::new();
            ground.upright(*x, x + side, |from, to| {
                if to - from >= side {
                    free.push([from, to]);
                }
            });
            free
        });
        Ok(Columns {
            side,
            free: free.collect(),
            next: following(&lefts, side),
            most: vec![0; lefts.len() + 1],
            lefts,
        })
    }

    /// The most squares in upright strips between two heights.
    fn between(&mut self, a: i64, b: i64) -> i64 {
        let side = self.side;
        for i in (0..self.lefts.len()).rev() {
            let squares: i64 = self.free[i]
                .iter()
                .map(|[from, to]| ((*to).min(b) - (*from).max(a)).max(0) / side)
                .sum();
            self.most[i] = self.most[i + 1].max(squares + self.most[self.next[i]]);
        }
        self.most[0]
    }

    fn squares(&mut self, a: i64, b: i64, out: &mut Vec<Patch>) {
        self.between(a, b);
        let (mut i, side) = (0, self.side);
        while i < self.lefts.len() {
            if self.most[i] == self.most[i + 1] {
                i += 1;
                continue;
            }
            let left = self.lefts[i];
            for [from, to] in &self.free[i] {
                let (from, to) = ((*from).max(a), (*to).min(b));
                let n = (to - from).max(0) / side;
                out.extend((0..n).map(|k| {
                    let block = ClearRect {
                        from: from + k * side,
                        to: from + (k + 1) * side,
                        left,
                        right: left + side,
                    };
                    block.patch()
                }));
            }
            i = self.next[i];
        }
    }
}

/// More squares, where the strips need not go straight across.
///
/// # Errors
/// A [`CuttingFault`] saying what cannot be.
pub fn free_yield(piece: &Piece, how: &Cutting) -> Result<FreeYield, CuttingFault> {
    let (ground, side, step) = ready(piece, how)?;
    let (low, high) = (ground.low(), ground.high());
    let places = places(ground.base, high, side, step)?;
    let counts: Vec<_> = places.iter().map(|y| ground.count(*y, side)).collect();
    let next = following(&places, side);
    let n = places.len();
    let mut columns = Columns::new(&ground, side, step)?;
    // Bands begin at some hundred places at most, and are whole squares high or reach the top.
    let stride = n / 96 + 1;
    let bands = ((high - low) / side + 1).max(0) as usize;
    let mixed = (n / stride + 1)
        .saturating_mul(bands)
        .saturating_mul(columns.lefts.len())
        <= MOST_TRIALS;
    let mut most = vec![0; n + 1];
    // What to do at a place: nothing, a strip, or upright strips up to a height.
    let mut choice: Vec<Option<Option<i64>>> = vec![None; n];
    for i in (0..n).rev() {
        let mut offer = (most[i + 1], None);
        let strip = counts[i].0 + most[next[i]];
        if strip > offer.0 {
            offer = (strip, Some(None));
        }
        if mixed && i % stride == 0 {
            let tall = (high - places[i]) / side;
            let tops = (2..=tall).map(|k| places[i] + k * side).chain([high]);
            for top in tops {
                let on = places.partition_point(|p| *p < top);
                let band = columns.between(places[i], top) + most[on];
                if band > offer.0 {
                    offer = (band, Some(Some(top)));
                }
            }
        }
        (most[i], choice[i]) = offer;
    }
    let across = lay_out(
        piece,
        &Cutting {
            binding: None,
            both_edges: false,
            half: None,
            ..*how
        },
    )?;
    let upright = columns.between(low, high);
    let count = most[0].max(upright);
    let strip = |from: Length, left: Length| Patch {
        from,
        to: from + nm(side),
        left,
        right: left + nm(side),
    };
    let mut squares = Vec::new();
    let way = if i64::from(across.count) == count {
        for s in across.strips {
            squares.extend(s.squares.into_iter().map(|left| strip(s.from, left)));
        }
        StripDirection::Across
    } else if upright == count {
        columns.squares(low, high, &mut squares);
        StripDirection::Upright
    } else {
        let mut i = 0;
        while i < n {
            match choice[i] {
                None => i += 1,
                Some(None) => {
                    ground.across(places[i], places[i] + side, |left, right| {
                        let lefts = (0..(right - left) / side).map(|k| left + k * side);
                        squares.extend(lefts.map(|left| strip(nm(places[i]), nm(left))));
                    });
                    i = next[i];
                }
                Some(Some(top)) => {
                    columns.squares(places[i], top, &mut squares);
                    i = places.partition_point(|p| *p < top);
                }
            }
        }
        StripDirection::Mixed
    };
    Ok(FreeYield {
        count: u32::try_from(squares.len()).unwrap_or(u32::MAX),
        way,
        squares,
    })
}

/// What a garment may give before it was measured: by narrow and worn, typical, and wide
/// starting outlines. An estimate, no more.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Expected {
    /// Narrow and worn.
    pub low: u32,
    /// As one would expect.
    pub typical: u32,
    /// Wide and little worn.
    pub high: u32,
}

/// What a garment of a kind and size may give.
///
/// # Errors
/// A [`CuttingFault`] saying what cannot be.
pub fn expected(
    kind: GarmentKind,
    size: GarmentSize,
    how: &Cutting,
) -> Result<Expected, CuttingFault> {
    let of = |guess| -> Result<u32, CuttingFault> {
        let mut sum = 0_u32;
        for piece in start(kind, size, guess, System::Inch) {
            sum = sum.saturating_add(lay_out(&piece, how)?.count);
        }
        Ok(sum)
    };
    Ok(Expected {
        low: of(Guess::Low)?,
        typical: of(Guess::Typical)?,
        high: of(Guess::High)?,
    })
}

/// What one source in the pile gives.
#[derive(Debug, Clone, PartialEq)]
pub enum Yield {
    /// Its pieces laid out, or why not.
    Cut(Vec<Result<CutPlan, CuttingFault>>),
    /// Squares ready cut.
    Ready(Count),
}

impl Yield {
    /// Squares it gives.
    pub fn count(&self) -> u32 {
        match self {
            Yield::Ready(count) => count.get(),
            Yield::Cut(plans) => plans
                .iter()
                .flatten()
                .fold(0, |sum, plan| sum.saturating_add(plan.count)),
        }
    }
}

/// The whole pile laid out; one piece can be laid out again without the others.
#[derive(Debug, Clone, PartialEq)]
pub struct Pile {
    how: Cutting,
    yields: Vec<Yield>,
}

impl Pile {
    /// Every source laid out.
    pub fn lay_out(sources: &[Source], how: Cutting) -> Pile {
        let one = |source: &Source| match source {
            Source::Cloth(garment) => {
                Yield::Cut(garment.pieces.iter().map(|p| lay_out(p, &how)).collect())
            }
            Source::Precut(pack) => Yield::Ready(pack.gives(how.side)),
        };
        Pile {
            how,
            yields: sources.iter().map(one).collect(),
        }
    }

    /// What each source gives, in the order given.
    pub fn yields(&self) -> &[Yield] {
        &self.yields
    }

    /// Squares in all.
    pub fn total(&self) -> u32 {
        let counts = self.yields.iter().map(Yield::count);
        counts.fold(0, u32::saturating_add)
    }

    /// Lays out one piece anew; false where there is no such piece.
    pub fn change(&mut self, source: usize, piece: usize, to: &Piece) -> bool {
        let Some(Yield::Cut(plans)) = self.yields.get_mut(source) else {
            return false;
        };
        let Some(plan) = plans.get_mut(piece) else {
            return false;
        };
        *plan = lay_out(to, &self.how);
        true
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use crate::cloth::garments::{GarmentPart, OutlineStation, Zone, fat_quarter};
    use crate::measure::Fraction;
    use crate::measure::sixty_fourths;
    use proptest::prelude::*;

    /// What is kept clear: from, to, left, right.
    pub(in crate::cloth) fn hole([from, to, left, right]: [Length; 4]) -> Zone {
        Zone {
            kind: ZoneKind::Hole,
            from,
            to,
            left,
            right,
        }
    }

    /// The same in eighths of an inch.
    pub(in crate::cloth) fn zone(place: [i64; 4]) -> Zone {
        hole(place.map(eighth_inches))
    }

    fn sheet(width: i64, length: i64) -> Piece {
        Piece::rectangle(
            GarmentPart::Cloth,
            eighth_inches(width),
            eighth_inches(length),
        )
    }

    fn five() -> Cutting {
        Cutting::default()
    }

    #[test]
    fn a_strip_moves_up_over_a_hem() {
        // 1 in of hem, 11 in long: from the very hem up one strip is lost.
        let piece = sheet(88, 88).without(zone([0, 8, 0, 88]));
        let plan = lay_out(&piece, &five()).unwrap();
        assert_eq!(plan.count, 4);
        assert_eq!(
            [plan.strips[0].from, plan.strips[1].from],
            [eighth_inches(8), eighth_inches(48)]
        );
        assert_eq!(bound(&piece, &five()), Ok(4));
    }

    #[test]
    fn cuts_in_order() {
        // One strip of two squares beside one that has a hole at its left.
        let piece = sheet(80, 80).without(zone([45, 50, 0, 10]));
        let plan = lay_out(&piece, &five()).unwrap();
        assert_eq!(plan.count, 3);
        let across = |at| CutLine::Across {
            at: eighth_inches(at),
            left: eighth_inches(0),
            right: eighth_inches(80),
        };
        let up = |at, from| CutLine::Upright {
            at: eighth_inches(at),
            from: eighth_inches(from),
            to: eighth_inches(from + 40),
        };
        let want = [
            across(0),
            across(40),
            across(80),
            up(0, 0),
            up(40, 0),
            up(80, 0),
            up(10, 40),
            up(50, 40),
        ];
        assert_eq!(plan.lines, want);
        // Left of the square above, and to its right, something is left over.
        assert_eq!(plan.offcuts.len(), 1);
        assert_eq!(plan.offcuts[0].left, eighth_inches(50));
    }

    #[test]
    fn equal_counts_lie_together_and_near_the_hem() {
        let plan = lay_out(&sheet(40, 100), &five()).unwrap();
        let from: Vec<_> = plan.strips.iter().map(|s| s.from).collect();
        assert_eq!(from, [eighth_inches(0), eighth_inches(40)]);
        // By hand: 11 in wide with a tear of 1 in from 5 to 6 in, an inch up from the hem. Two squares
        // beside it take four cuts up; an inch higher they lie edge to edge and take three.
        let torn = sheet(88, 48).without(zone([0, 8, 40, 48]));
        let plan = lay_out(&torn, &five()).unwrap();
        assert_eq!((plan.count, plan.strips[0].from), (2, eighth_inches(8)));
        assert_eq!(plan.lines.len(), 2 + 3);
        // 2 in beside the tear give no square and take no cut: it is cut from the hem up.
        let narrow = sheet(64, 48).without(zone([0, 8, 40, 48]));
        let plan = lay_out(&narrow, &five()).unwrap();
        assert_eq!((plan.strips[0].from, plan.lines.len()), (nm(0), 2 + 2));
    }

    /// By hand: beside squares of 5 in an offcut 1 in wide is worth listing, one of ⅞ in is not; likewise
    /// above them.
    #[test]
    fn offcuts_are_listed_from_an_inch_on() {
        let offcuts = |wide, long| {
            let plan = lay_out(&sheet(wide, long), &five()).unwrap();
            let size = |p: &Patch| [p.to - p.from, p.right - p.left];
            plan.offcuts.iter().map(size).collect::<Vec<_>>()
        };
        let eighths = |high, wide| [high, wide].map(eighth_inches);
        assert_eq!(offcuts(48, 40), [eighths(40, 8)]);
        assert_eq!(offcuts(40, 48), [eighths(8, 40)]);
        assert!(offcuts(47, 47).is_empty());
        assert_eq!(offcuts(48, 48), [eighths(40, 8), eighths(8, 48)]);
    }

    /// By hand: two fat quarters of twelve squares each, and 42 ready cut.
    #[test]
    fn a_pile_gives_what_its_sources_do() {
        use crate::cloth::garments::{Garment, Precut};
        let quarter = fat_quarter(System::Inch);
        let cloth = Source::Cloth(Garment {
            name: String::new(),
            pieces: vec![quarter.clone(), quarter],
            start: None,
        });
        let pack = Source::Precut(Precut {
            name: String::new(),
            side: inches(5),
            count: Count::at_most(42),
        });
        let pile = Pile::lay_out(&[cloth, pack], five());
        assert_eq!(pile.total(), 66);
        let each: Vec<u32> = pile.yields().iter().map(Yield::count).collect();
        assert_eq!(each, [24, 42]);
        assert_eq!(Pile::lay_out(&[], five()).total(), 0);
    }

    #[test]
    fn trimming_needs_more_cloth() {
        let how = Cutting {
            trimming: eighth_inches(2),
            ..five()
        };
        assert_eq!(lay_out(&sheet(80, 40), &five()).unwrap().count, 2);
        assert_eq!(lay_out(&sheet(80, 42), &how).unwrap().count, 1);
    }

    #[test]
    fn a_slope_is_cut_inside() {
        // From 20 in wide down to 4 in over 20 in.
        let mut piece = sheet(160, 160);
        piece.stations[1].right = eighth_inches(32);
        let plan = lay_out(&piece, &five()).unwrap();
        // Strip k ends where the width is 16, 12, 8 and 4 in: 3 + 2 + 1.
        assert_eq!(plan.count, 6);
        assert_eq!(bound(&piece, &five()), Ok(6));
    }

    #[test]
    fn columns_set_off_from_one_another_show_what_straight_cuts_give_up() {
        // 10 × 12½ in: the left column is free above 2½ in, the right one below 10 in.
        let piece = sheet(80, 100)
            .without(zone([0, 20, 0, 40]))
            .without(zone([80, 100, 40, 80]));
        let straight = lay_out(&piece, &five()).unwrap().count;
        let free = free_yield(&piece, &five()).unwrap();
        assert_eq!(
            (straight, free.count, free.way),
            (3, 4, StripDirection::Upright)
        );
        assert_eq!(bound(&piece, &five()), Ok(4));
        // The same above two strips set off from one another, which only straight cuts hold.
        let both = sheet(100, 180)
            .without(zone([0, 40, 0, 20]))
            .without(zone([40, 180, 80, 100]))
            .without(zone([80, 100, 0, 40]))
            .without(zone([160, 180, 40, 80]));
        let straight = lay_out(&both, &five()).unwrap().count;
        let free = free_yield(&both, &five()).unwrap();
        assert_eq!(
            (straight, free.count, free.way),
            (7, 8, StripDirection::Mixed)
        );
    }

    /// By hand, in eighths of an inch: below, a column of two squares beside one that holds a square from 16
    /// to 56 only; no two strips hold all three. Above it two strips set off from one another. Cut
    /// straight across that is 2 and 4 squares, with the lower part cut upright 3 and 4.
    #[test]
    fn a_band_cut_upright_lies_under_strips_across() {
        let low = sheet(100, 160)
            .without(zone([0, 16, 40, 80]))
            .without(zone([56, 80, 40, 80]))
            .without(zone([0, 80, 80, 100]))
            .without(zone([80, 120, 0, 20]))
            .without(zone([120, 160, 80, 100]));
        let found = |piece: &Piece| {
            let free = free_yield(piece, &five()).unwrap();
            assert!(sound(piece, &free.squares));
            let straight = lay_out(piece, &five()).unwrap().count;
            (straight, free.count, free.way)
        };
        assert_eq!(found(&low), (6, 7, StripDirection::Mixed));
        // A band three squares high, in which each of two columns set off from one another holds two.
        let tall = sheet(100, 200)
            .without(zone([0, 20, 40, 80]))
            .without(zone([80, 100, 0, 40]))
            .without(zone([100, 120, 0, 100]))
            .without(zone([0, 160, 80, 100]))
            .without(zone([160, 200, 0, 20]));
        assert_eq!(found(&tall), (7, 8, StripDirection::Mixed));
    }

    /// By hand: 40 in wide, with four tears an inch wide in the lower 5 in and four in the upper 5 in, so
    /// that each row is in stretches of 9 in, a square each; the stretches of one row are 3 in off those
    /// of the other. Eight squares are the most; to say so, the lines across are needed, and of the same
    /// cloth on its side the upright ones.
    #[test]
    fn the_bound_is_told_by_lines_either_way() {
        let lower = [9, 19, 29, 39].map(|x| [0, 40, x * 8, x * 8 + 8]);
        let upper = [2, 12, 22, 32].map(|x| [40, 80, x * 8, x * 8 + 8]);
        let tears = || lower.into_iter().chain(upper);
        let rows = tears().fold(sheet(320, 80), |piece, at| piece.without(zone(at)));
        assert_eq!(lay_out(&rows, &five()).unwrap().count, 8);
        assert_eq!(bound(&rows, &five()), Ok(8));
        let on_its_side = tears().map(|[from, to, left, right]| [left, right, from, to]);
        let columns = on_its_side.fold(sheet(80, 320), |piece, at| piece.without(zone(at)));
        assert_eq!(bound(&columns, &five()), Ok(8));
        assert_eq!(free_yield(&columns, &five()).unwrap().count, 8);
        assert_eq!(naive(&sheet(80, 80), &five()), Ok(4));
        // A cloth of just one square, and one that begins with a hem.
        assert_eq!(bound(&sheet(40, 40), &five()), Ok(1));
        let hemmed = sheet(88, 88).without(zone([0, 8, 0, 88]));
        assert_eq!(naive(&hemmed, &five()), Ok(4));
        // With 4 in left all round a hole no square fits.
        let hole = sheet(104, 104).without(zone([32, 72, 32, 72]));
        assert_eq!(bound(&hole, &five()), Ok(0));
    }

    #[test]
    fn binding_from_what_is_left() {
        // 22 × 18 in: 12 squares leave 2 in by 18 and 3 in by 20 (the corner with either).
        let strips = |length: i64, most: u32| {
            let how = Cutting {
                binding: Some(BindingCut {
                    width: inches(1),
                    length: inches(length),
                    most,
                }),
                ..five()
            };
            let plan = lay_out(&fat_quarter(System::Inch), &how).unwrap();
            assert_eq!(plan.count, 12);
            let left = plan.spare.value / (0.0254 * 0.0254);
            let want = 396 - 300 - length * plan.binding.len() as i64;
            assert!((left - want as f64).abs() < 1e-6, "{left}");
            plan.binding.len()
        };
        // Three across the whole 22 in, and none of 20 in beside the squares.
        assert_eq!(strips(20, 9), 3);
        assert_eq!(strips(20, 2), 2);
        // Of 18 in two upright beside the squares, and then three of 20 in across.
        assert_eq!(strips(18, 9), 5);
        assert_eq!(strips(23, 9), 0);
    }

    /// Where one binding strip lies in a piece that holds no square of 30 in: from, to, left and right in
    /// sixteenths of an inch.
    fn one_strip(piece: &Piece, width: i64, length: i64) -> Vec<[i64; 4]> {
        let how = Cutting {
            side: inches(30),
            binding: Some(BindingCut {
                width: sixteenths(width),
                length: sixteenths(length),
                most: 1,
            }),
            ..five()
        };
        let plan = lay_out(piece, &how).unwrap();
        let told = |l: Length| in_nm(l) * 16 / 25_400_000;
        let strips = plan.binding.iter();
        strips
            .map(|p| [p.from, p.to, p.left, p.right].map(told))
            .collect()
    }

    fn sixteenths(n: i64) -> Length {
        sixty_fourths(n * 4)
    }

    /// A piece by height, left and right, and places kept clear, all in sixteenths of an inch.
    fn outline(rows: &[[i64; 3]], zones: &[[i64; 4]]) -> Piece {
        let stations = rows.iter().map(|row| {
            let [at, left, right] = row.map(sixteenths);
            OutlineStation { at, left, right }
        });
        let zones = zones.iter().map(|place| hole(place.map(sixteenths)));
        Piece {
            part: GarmentPart::Cloth,
            stations: stations.collect(),
            zones: zones.collect(),
        }
    }

    /// By hand: a triangle 20¼ in wide and half as high holds an upright rectangle of 2 × 9⅛ in at one
    /// place only, 9⅛ in from either corner (2 · 9⅛ + 2 = 20¼). It leaves nothing over at its end, and
    /// strips across do.
    #[test]
    fn a_strip_is_found_at_the_one_mark_where_it_fits() {
        let triangle = outline(&[[0, 0, 324], [162, 162, 162]], &[]);
        let found = one_strip(&triangle, 32, 146);
        assert_eq!(found, [[0, 146, 146, 178]]);
    }

    /// By hand: strips 1 in wide and 10 in long that fit at one place only, which is no mark of the ruler
    /// and no corner: right beside what is kept clear.
    #[test]
    fn a_strip_is_found_right_beside_what_is_kept_clear() {
        // Halfway up the left edge has come out to 1/16 in; a seam runs up 1 1/16 in from the middle.
        let upright = outline(&[[0, 2, 48], [320, 0, 48]], &[[0, 320, 17, 48]]);
        assert_eq!(one_strip(&upright, 16, 160), [[160, 320, 1, 17]]);
        let other = crate::cloth::garments::mirrored(&upright, GarmentPart::Cloth);
        assert_eq!(one_strip(&other, 16, 160), [[160, 320, -17, -1]]);
        // Above a tear of 5 in the left edge stands upright 1/16 in out, and 10 in higher the right one has
        // come in to 1 1/16 in: the strip lies right along the left edge.
        let rows = [[0, 0, 40], [80, 1, 19], [320, 1, 16]];
        let along = outline(&rows, &[[0, 80, -8, 48]]);
        assert_eq!(one_strip(&along, 16, 160), [[80, 240, 1, 17]]);
        let other = crate::cloth::garments::mirrored(&along, GarmentPart::Cloth);
        assert_eq!(one_strip(&other, 16, 160), [[80, 240, -17, -1]]);
        // 12 1/32 in wide below and ½ in less with each inch: 10 in wide at 4 1/16 in.
        let narrow = |low: i64, high: i64, zone: [i64; 4]| {
            let mut piece = outline(&[[0, 0, 48], [160, 0, 48]], &[zone]);
            piece.stations[0].right = sixty_fourths(low);
            piece.stations[1].right = sixty_fourths(high);
            piece
        };
        let above = narrow(770, 450, [0, 49, 0, 192]);
        assert_eq!(one_strip(&above, 16, 160), [[49, 65, 0, 160]]);
        let below = narrow(450, 770, [111, 160, 0, 192]);
        assert_eq!(one_strip(&below, 16, 160), [[95, 111, 0, 160]]);
        // Likewise right below the upper edge, where the cloth ends.
        let mut ends = outline(&[[0, 0, 48], [111, 0, 168]], &[]);
        ends.stations[0].right = sixty_fourths(450);
        assert_eq!(one_strip(&ends, 16, 160), [[95, 111, 0, 160]]);
    }

    /// By hand, in sixteenths: the left edge comes in by 5 over the height of a square, so that it begins
    /// 5 from the edge at its lower line. The next mark is 6, an eighth more.
    #[test]
    fn a_square_is_moved_to_the_next_mark_where_there_is_room() {
        let begin = |piece: &Piece, how: &Cutting| {
            let plan = lay_out(piece, how).unwrap();
            let run = plan.strips[0].runs()[0];
            assert_eq!(run.left, sixteenths(5));
            let ruler = Ruler {
                system: System::Inch,
                fraction: Fraction::Eighth,
                ..Ruler::default()
            };
            in_nm(begins(piece, &plan, &run, ruler)) * 16 / 25_400_000
        };
        let slanted = |right: i64, zones: &[[i64; 4]]| {
            let rows = [[0, 0, right], [80, 5, right], [96, 5, right]];
            begin(&outline(&rows, zones), &five())
        };
        // A square ends at 85: there is room for 1, or none.
        assert_eq!([96, 86, 85].map(|right| slanted(right, &[])), [6, 6, 5]);
        // A hole beside the square takes the room, one farther off or above it does not.
        assert_eq!(slanted(96, &[[0, 16, 85, 96]]), 5);
        assert_eq!(slanted(96, &[[0, 16, 86, 96]]), 6);
        assert_eq!(slanted(96, &[[80, 96, 85, 96]]), 6);
        // Likewise one below it, where the strip begins above a hem.
        let rows = [[0, 0, 96], [16, 0, 96], [96, 5, 96]];
        let hem = [[0, 16, 0, 85], [0, 16, 85, 96]];
        assert_eq!(begin(&outline(&rows, &hem), &five()), 6);
        // A half of 44 right beside the square goes along with it: two strips, so that there are two.
        let how = Cutting {
            half: Some(sixteenths(44)),
            ..five()
        };
        let with_half = |right: i64| {
            let rows = [[0, 0, right], [80, 5, right], [160, 5, right]];
            begin(&outline(&rows, &[]), &how)
        };
        assert_eq!([130, 129].map(with_half), [6, 5]);
        // Of three strips the lowest has a tear where the others have their halves: it has no room.
        let rows = [[0, 0, 130], [80, 5, 130], [240, 5, 130]];
        assert_eq!(begin(&outline(&rows, &[[0, 80, 85, 130]]), &how), 5);
        // One left of it, beyond a tear from 48 to 65, does not: the square from there on ends at the edge.
        let torn = outline(&[[0, 0, 145], [160, 0, 145]], &[[0, 160, 48, 65]]);
        let plan = lay_out(&torn, &how).unwrap();
        assert_eq!((plan.count, plan.pieced), (3, 1));
        let run = plan.strips[0].runs()[0];
        let ruler = Ruler {
            fraction: Fraction::Eighth,
            ..Ruler::default()
        };
        let begin = begins(&torn, &plan, &run, ruler);
        assert_eq!((run.left, begin), (sixteenths(65), sixteenths(65)));
    }

    /// By hand: a band 1 in wide that goes 2 in to the right with each inch up holds no rectangle half an inch
    /// high, so no square, no half and nothing else, whatever is kept clear beside it.
    #[test]
    fn a_steep_slant_holds_nothing() {
        let slant = outline(&[[0, 0, 16], [320, 640, 656]], &[[0, 320, 648, 656]]);
        let how = Cutting {
            half: Some(eighth_inches(22)),
            ..five()
        };
        let plan = lay_out(&slant, &how).unwrap();
        assert_eq!((plan.count, plan.halves.len()), (0, 0));
        assert!(plan.offcuts.is_empty());
        assert_eq!(naive(&slant, &five()), Ok(0));
        assert_eq!(free_yield(&slant, &five()).unwrap().count, 0);
        let mut found = 0;
        let (ground, ..) = ready(&slant, &five()).unwrap();
        for from in [0, 20, 100, 240] {
            let (from, to) = (in_nm(sixteenths(from)), in_nm(sixteenths(from + 8)));
            ground.across(from, to, |_, _| found += 1);
        }
        assert_eq!(found, 0);
    }

    /// By hand: a slant of 160 m over 200 m is 80 m at half way; of a nanometre more, half of one is left over,
    /// rounded down or up. So far out a product of two lengths is more than 64 bits hold.
    #[test]
    fn a_long_slant_is_shared_out_exactly() {
        let m = 1_000_000_000;
        for (rise, down, up) in [
            (160 * m, 80 * m, 80 * m),
            (160 * m + 1, 80 * m, 80 * m + 1),
            (-160 * m - 1, -80 * m - 1, -80 * m),
        ] {
            assert_eq!(share(rise, 100 * m, 200 * m, false), down);
            assert_eq!(share(rise, 100 * m, 200 * m, true), up);
        }
    }

    /// By hand: 11 in wide with a tear of 1 in from 5 to 6 in: the square beyond it is not cut off a strip of
    /// the binding, but begins 6 in from the edge of the cloth.
    #[test]
    fn beyond_a_tear_it_is_told_from_the_edge_of_the_cloth() {
        let torn = sheet(88, 40).without(zone([0, 40, 40, 48]));
        let plan = lay_out(&torn, &five()).unwrap();
        let told = beginnings(&torn, &plan, Ruler::default());
        let want = [0, 6].map(|n| (FromEdge::Cloth, inches(n), inches(n)));
        let told: Vec<_> = told.iter().map(|b| (b.from, b.by, b.left)).collect();
        assert_eq!(told, want);
    }

    /// By hand: 1 in is trimmed off below and 11/16 in above, and the cloth is torn from 6 to 10 5/16 in:
    /// one strip from the lower edge, two measured down from the upper one.
    #[test]
    fn both_edges_are_measured_from_where_they_are_trimmed() {
        let mut piece = outline(
            &[[0, 0, 80], [336, 0, 80]],
            &[[0, 16, 0, 80], [325, 336, 0, 80], [96, 165, 0, 80]],
        );
        piece.zones[0].kind = ZoneKind::CutEdge;
        piece.zones[1].kind = ZoneKind::CutEdge;
        let how = Cutting {
            both_edges: true,
            ..five()
        };
        // Wherever heights are told from.
        for up in [0, 48] {
            let plan = lay_out(&piece, &how).unwrap();
            assert_eq!((plan.count, plan.from_top), (3, 2));
            let from: Vec<_> = plan.strips.iter().map(|s| s.from).collect();
            assert_eq!(from, [16, 245, 165].map(|at| sixteenths(at + up)));
            piece.stations.iter_mut().for_each(|s| s.at += inches(3));
            for z in &mut piece.zones {
                (z.from, z.to) = (z.from + inches(3), z.to + inches(3));
            }
        }
        assert_eq!(squares_of(&piece, &how), Ok(3));
        // Strip on strip from 1 in on: the second meets the tear, the fourth the upper edge.
        assert_eq!(naive(&piece, &how), Ok(2));
    }

    /// By hand, with halves of 2¾ in: 12¾ in wide there are two squares and a half right beside them in each
    /// of two strips. 9 in wide with a tear of 1 in from 3 in on, a half lies left of it and the square
    /// right of it; above two strips 10 in wide, two halves lie across, edge to edge.
    #[test]
    fn halves_beside_squares_are_told_from_loose_ones() {
        let how = Cutting {
            half: Some(eighth_inches(22)),
            ..five()
        };
        let plan = |piece: &Piece| lay_out(piece, &how).unwrap();
        let beside = plan(&sheet(102, 80));
        assert_eq!((beside.count, beside.whole(), beside.pieced), (5, 4, 1));
        assert!(beside.halves.iter().all(|half| beside.is_beside(half)));
        assert_eq!(beside.loose_halves(), []);
        // An eighth less, and there is no room for a half.
        assert_eq!(plan(&sheet(101, 80)).count, 4);
        let run = |place: [i64; 4], count, upright, strip| {
            let [from, to, left, right] = place.map(eighth_inches);
            HalfRun {
                patch: Patch {
                    from,
                    to,
                    left,
                    right,
                },
                count,
                upright,
                strip,
            }
        };
        let apart = plan(&sheet(72, 80).without(zone([0, 80, 24, 32])));
        let left = [[0, 40, 0, 22], [40, 80, 0, 22]];
        let left = [0, 1].map(|n| run(left[n], 1, true, Some(n)));
        assert_eq!(apart.loose_halves(), left);
        let above = plan(&sheet(80, 104));
        assert_eq!(
            above.loose_halves(),
            [run([80, 102, 0, 80], 2, false, None)]
        );
        // Above a tear of ⅛ in a row begins at the next mark of the ruler.
        assert_eq!(plan(&sheet(80, 63).without(zone([40, 41, 0, 80]))).count, 3);
        // 130 in² of cloth less four squares and two halves of 13¾ in².
        let spare = above.spare.value / (0.0254 * 0.0254);
        assert!((spare - (130.0 - 100.0 - 27.5)).abs() < 1e-6, "{spare}");
    }

    /// Both legs are alike, so that a pair of jeans gives twice what one leg does; a narrow worn pair
    /// gives less than a wide one.
    #[test]
    fn a_pair_of_jeans_gives_twice_what_a_leg_does() {
        let (kind, size) = (GarmentKind::MensJeans, GarmentSize::Large);
        let found = expected(kind, size, &five()).unwrap();
        let leg = |guess| {
            let leg = &start(kind, size, guess, System::Inch)[0];
            lay_out(leg, &five()).unwrap().count
        };
        let twice = [Guess::Low, Guess::Typical, Guess::High].map(|guess| 2 * leg(guess));
        assert_eq!([found.low, found.typical, found.high], twice);
        assert!(found.low < found.typical && found.typical <= found.high);
    }

    #[test]
    fn faults_are_named() {
        let piece = sheet(80, 80);
        let check = |how: Cutting, want| {
            assert_eq!(lay_out(&piece, &how), Err(want));
            assert_eq!(bound(&piece, &how), Err(want));
        };
        let odd = |change: fn(&mut Cutting)| {
            let mut how = five();
            change(&mut how);
            how
        };
        check(odd(|h| h.side = nm(0)), CuttingFault::Side);
        check(odd(|h| h.trimming = nm(i64::MAX)), CuttingFault::Trimming);
        check(odd(|h| h.step = nm(0)), CuttingFault::Step);
        let thin = BindingCut {
            width: nm(0),
            length: eighth_inches(8),
            most: 1,
        };
        let how = Cutting {
            binding: Some(thin),
            ..five()
        };
        check(how, CuttingFault::Binding);
        // A strip is as long as it is wide, or longer.
        let strip = |width: i64, length: i64| {
            let (width, length) = (eighth_inches(width), eighth_inches(length));
            let binding = Some(BindingCut {
                width,
                length,
                most: 1,
            });
            Cutting { binding, ..five() }.check()
        };
        assert_eq!([strip(8, 8), strip(8, 9)], [Ok(()), Ok(())]);
        assert_eq!(strip(8, 7), Err(CuttingFault::Binding));
        // Places may be tried as far apart as squares are large, and no farther.
        let step = |eighths| {
            let step = eighth_inches(eighths);
            Cutting { step, ..five() }.check()
        };
        assert_eq!([step(40), step(41)], [Ok(()), Err(CuttingFault::Step)]);
        let trimming = |eighths| {
            let trimming = eighth_inches(eighths);
            Cutting { trimming, ..five() }.check()
        };
        assert_eq!([trimming(0), trimming(40)], [Ok(()); 2]);
        assert_eq!(
            [trimming(-1), trimming(41)],
            [Err(CuttingFault::Trimming); 2]
        );
        let vast = Piece::rectangle(GarmentPart::Cloth, nm(90_000_000_000), nm(90_000_000_000));
        assert_eq!(lay_out(&vast, &five()), Err(CuttingFault::TooMany));
        // Likewise where its middle line is in the middle.
        let mut vast = vast;
        for s in &mut vast.stations {
            (s.left, s.right) = (nm(-45_000_000_000), nm(45_000_000_000));
        }
        assert_eq!(lay_out(&vast, &five()), Err(CuttingFault::TooMany));
        let long = Piece::rectangle(GarmentPart::Cloth, eighth_inches(40), nm(90_000_000_000));
        let fine = Cutting {
            step: nm(100_000),
            ..five()
        };
        assert_eq!(lay_out(&long, &fine), Err(CuttingFault::TooFine));
        let mut torn = piece.clone();
        torn.stations.clear();
        let want = CuttingFault::Piece(PieceFault::TooFewStations);
        assert_eq!(free_yield(&torn, &five()), Err(want));
    }

    /// Pieces by their widths at a few heights, in eighths, with some zones.
    pub(in crate::cloth) fn piece() -> impl Strategy<Value = Piece> {
        let station = (8i64..150, -60i64..20, 20i64..180);
        let zone = (0i64..280, 1i64..60, -60i64..170, 1i64..60);
        let zones = prop::collection::vec(zone, 0..5);
        (prop::collection::vec(station, 2..6), zones).prop_map(|(rows, zones)| {
            let mut at = 0;
            let stations = rows.into_iter().map(|(up, left, right)| {
                let station = OutlineStation {
                    at: eighth_inches(at),
                    left: eighth_inches(left),
                    right: eighth_inches(right),
                };
                at += up;
                station
            });
            let mut piece = Piece {
                part: GarmentPart::Cloth,
                stations: stations.collect(),
                zones: zones
                    .into_iter()
                    .map(|(from, high, left, wide)| zone_of([from, from + high, left, left + wide]))
                    .collect(),
            };
            while let Err(PieceFault::ZoneOutside(i)) = piece.check() {
                piece.zones.remove(i);
            }
            piece
        })
    }

    fn zone_of(place: [i64; 4]) -> Zone {
        zone(place)
    }

    fn how() -> impl Strategy<Value = Cutting> {
        (
            10i64..60,
            0i64..3,
            prop::sample::select(vec![7i64, 8, 16, 24]),
        )
            .prop_map(|(side, trimming, step)| Cutting {
                side: eighth_inches(side),
                trimming: eighth_inches(trimming),
                step: sixty_fourths(step),
                binding: Some(BindingCut {
                    width: eighth_inches(8),
                    length: eighth_inches(20),
                    most: 20,
                }),
                ..Cutting::default()
            })
    }

    /// Whether a rectangle lies in the outline, by exact products.
    pub(in crate::cloth) fn inside(piece: &Piece, p: &Patch) -> bool {
        let (low, high) = (in_nm(p.from), in_nm(p.to));
        let mut heights = vec![low, high];
        let stations = piece.stations.iter().map(|s| in_nm(s.at));
        heights.extend(stations.filter(|y| (low..=high).contains(y)));
        heights.into_iter().all(|y| {
            piece.stations.windows(2).any(|w| {
                let (y0, y1) = (in_nm(w[0].at), in_nm(w[1].at));
                let edge = |a: Length, b: Length| {
                    i128::from(in_nm(a)) * i128::from(y1 - y)
                        + i128::from(in_nm(b)) * i128::from(y - y0)
                };
                let scaled = |x: Length| i128::from(in_nm(x)) * i128::from(y1 - y0);
                (y0..=y1).contains(&y)
                    && edge(w[0].left, w[1].left) <= scaled(p.left)
                    && edge(w[0].right, w[1].right) >= scaled(p.right)
            })
        })
    }

    pub(in crate::cloth) fn overlap(a: &Patch, b: &Patch) -> bool {
        a.from < b.to && b.from < a.to && a.left < b.right && b.left < a.right
    }

    fn sound(piece: &Piece, patches: &[Patch]) -> bool {
        let zones = piece.zones.iter().map(|z| Patch {
            from: z.from,
            to: z.to,
            left: z.left,
            right: z.right,
        });
        let zones: Vec<_> = zones.collect();
        patches.iter().enumerate().all(|(i, p)| {
            inside(piece, p)
                && !zones.iter().any(|z| overlap(z, p))
                && !patches[..i].iter().any(|q| overlap(p, q))
        })
    }

    fn squares(plan: &CutPlan, side: Length) -> Vec<Patch> {
        let of = |s: &Strip| {
            let from = s.from;
            let patch = move |left: &Length| Patch {
                from,
                to: from + side,
                left: *left,
                right: *left + side,
            };
            s.squares.iter().map(patch).collect::<Vec<_>>()
        };
        plan.strips.iter().flat_map(of).collect()
    }

    proptest! {
        /// A rectangle holds as many squares along the grain as whole ones go into its width times those that
        /// go into its height; a tear right across makes two rectangles of it.
        #[test]
        fn a_rectangle_holds_rows_times_columns(
            wide in 20i64..160, long in 20i64..160, tear in (0i64..160, 1i64..60), how in how(),
        ) {
            let how = Cutting { binding: None, ..how };
            let side = in_nm(how.cut_side());
            let rows = |length: Length| in_nm(length).max(0) / side;
            let columns = rows(eighth_inches(wide));
            let piece = sheet(wide, long);
            let most = u32::try_from(columns * rows(eighth_inches(long))).unwrap();
            prop_assert_eq!(bound(&piece, &how), Ok(most));
            prop_assert_eq!(lay_out(&piece, &how).unwrap().count, most);
            prop_assert_eq!(naive(&piece, &how), Ok(most));
            let (from, high) = tear;
            let torn = piece.without(zone([from, from + high, -10, wide + 10]));
            prop_assume!(torn.check().is_ok());
            let parts = [from.min(long), long - from - high].map(|part| rows(eighth_inches(part)));
            let most = u32::try_from(columns * (parts[0] + parts[1])).unwrap();
            prop_assert_eq!(bound(&torn, &how), Ok(most));
        }

        #[test]
        fn squares_lie_inside_clear_and_apart(piece in piece(), how in how()) {
            let plan = lay_out(&piece, &how).unwrap();
            let mut all = squares(&plan, how.cut_side());
            prop_assert_eq!(all.len(), plan.count as usize);
            all.extend(plan.binding.iter().copied());
            prop_assert!(sound(&piece, &all));
            all.extend(plan.offcuts.iter().copied());
            prop_assert!(sound(&piece, &all));
            prop_assert!(plan.spare.value > -1e-9);
            let free = free_yield(&piece, &how).unwrap();
            prop_assert!(free.squares.iter().all(|p| p.to - p.from == how.cut_side() && p.right - p.left == how.cut_side()));
            prop_assert!(sound(&piece, &free.squares));
        }

        #[test]
        fn more_than_naive_and_never_more_than_the_bound(piece in piece(), how in how()) {
            let ours = lay_out(&piece, &how).unwrap().count;
            let free = free_yield(&piece, &how).unwrap().count;
            prop_assert!(naive(&piece, &how).unwrap() <= ours);
            prop_assert!(ours <= free);
            prop_assert!(free <= bound(&piece, &how).unwrap());
        }

        #[test]
        fn another_zone_never_raises_the_count(piece in piece(), how in how(), place in (0i64..200, 1i64..50, -40i64..150, 1i64..50)) {
            let (from, high, left, wide) = place;
            let less = piece.clone().without(zone([from, from + high, left, left + wide]));
            prop_assume!(less.check().is_ok());
            prop_assert!(lay_out(&less, &how).unwrap().count <= lay_out(&piece, &how).unwrap().count);
        }

        #[test]
        fn a_wider_outline_never_lowers_it(piece in piece(), how in how(), grow in prop::collection::vec((0i64..40, 0i64..40), 6)) {
            let mut wider = piece.clone();
            for (s, (left, right)) in wider.stations.iter_mut().zip(grow) {
                s.left -= eighth_inches(left);
                s.right += eighth_inches(right);
            }
            prop_assert!(lay_out(&wider, &how).unwrap().count >= lay_out(&piece, &how).unwrap().count);
        }

        #[test]
        fn the_cuts_are_those_that_are_needed(piece in piece(), how in how()) {
            let plan = lay_out(&piece, &how).unwrap();
            let across: Vec<_> = plan.lines.iter().filter_map(|l| match l {
                CutLine::Across { at, .. } => Some(*at),
                CutLine::Upright { .. } => None,
            }).collect();
            prop_assert!(across.windows(2).all(|w| w[0] < w[1]));
            for strip in &plan.strips {
                prop_assert!(across.contains(&strip.from) && across.contains(&strip.to));
                for left in &strip.squares {
                    for at in [*left, *left + how.cut_side()] {
                        let line = CutLine::Upright { at, from: strip.from, to: strip.to };
                        prop_assert!(plan.lines.contains(&line));
                    }
                }
            }
        }

        #[test]
        fn told_from_the_edge_of_the_cloth_it_is_the_true_place(
            piece in piece(),
            how in how(),
            metric: bool,
            fraction in prop::sample::select(vec![Fraction::Eighth, Fraction::Sixteenth]),
        ) {
            let system = if metric { System::Metric } else { System::Inch };
            let ruler = Ruler { system, fraction, ..Ruler::default() };
            let plan = lay_out(&piece, &how).unwrap();
            let mut cut: Vec<Patch> = plan.strips.iter().flat_map(Strip::runs).collect();
            let wide: i64 = cut.iter().map(|p| in_nm(p.right - p.left)).sum();
            prop_assert_eq!(wide, i64::from(plan.count) * in_nm(how.cut_side()));
            cut.extend(plan.binding.iter().copied());
            let mut moved = Vec::new();
            for patch in &cut {
                let begin = begins(&piece, &plan, patch, ruler);
                let place = edges(&piece, patch.from)[0] + begin;
                prop_assert!(begin >= nm(0) && place >= patch.left);
                prop_assert!(place == patch.left || ruler.nearest(begin) == begin);
                prop_assert!(place - patch.left < ruler.step());
                moved.push(Patch { left: place, right: place + (patch.right - patch.left), ..*patch });
                // The edge is that of the cloth: a hair farther out there is none.
                let edge = edges(&piece, patch.from)[0];
                let point = |left| Patch { from: patch.from, to: patch.from, left, right: left };
                prop_assert!(inside(&piece, &point(edge)) && !inside(&piece, &point(edge - nm(1))));
            }
            prop_assert!(sound(&piece, &moved));
        }

        /// Where strips of the binding were cut before, what lies right of them is measured from
        /// them; cut where it is stated, everything is on the cloth and meets nothing else.
        #[test]
        fn told_from_a_strip_that_was_cut_it_is_on_the_cloth(
            piece in piece(),
            how in how(),
            fraction in prop::sample::select(vec![Fraction::Eighth, Fraction::Sixteenth]),
        ) {
            let ruler = Ruler { fraction, ..Ruler::default() };
            let plan = lay_out(&piece, &how).unwrap();
            let runs = plan.strips.iter().flat_map(Strip::runs);
            let cut: Vec<Patch> = plan.binding.iter().copied().chain(runs).collect();
            let begin = beginnings(&piece, &plan, ruler);
            prop_assert_eq!(begin.len(), cut.len());
            let mut moved: Vec<Patch> = Vec::new();
            for (n, (patch, begin)) in cut.iter().zip(&begin).enumerate() {
                prop_assert!(begin.by >= nm(0) && begin.left >= patch.left);
                prop_assert!(begin.left - patch.left < ruler.step());
                let strips = &moved[..n.min(plan.binding.len())];
                let beside = strips.iter().filter(|p| {
                    p.from < patch.to && p.to > patch.from && p.right <= patch.left
                });
                let beside = beside.map(|p| p.right).max();
                let edge = match begin.from {
                    FromEdge::Cloth => edges(&piece, patch.from)[0],
                    FromEdge::Strip => beside.unwrap(),
                };
                prop_assert_eq!(begin.from == FromEdge::Strip, beside.is_some());
                prop_assert_eq!(edge + begin.by, begin.left);
                moved.push(Patch {
                    left: begin.left,
                    right: begin.left + (patch.right - patch.left),
                    ..*patch
                });
            }
            prop_assert!(sound(&piece, &moved));
        }

        #[test]
        fn one_piece_changed_is_the_pile_laid_out_anew(pieces in prop::collection::vec(piece(), 1..4), to in piece(), which in 0usize..4) {
            let source = |pieces: &[Piece]| {
                let name = String::new();
                Source::Cloth(crate::cloth::garments::Garment { name, pieces: pieces.to_vec(), start: None })
            };
            let mut pile = Pile::lay_out(&[source(&pieces)], five());
            let mut changed = pieces.clone();
            let there = which < changed.len();
            if there {
                changed[which] = to.clone();
            }
            prop_assert_eq!(pile.change(0, which, &to), there);
            prop_assert!(!pile.change(1, 0, &to));
            prop_assert_eq!(pile, Pile::lay_out(&[source(&changed)], five()));
        }

        #[test]
        fn nothing_panics(
            stations in prop::collection::vec(prop::array::uniform3(any_length()), 2..4),
            zones in prop::collection::vec(prop::array::uniform4(any_length()), 0..3),
            how in prop::array::uniform5(any_length()),
            sorted: bool,
        ) {
            let mut piece = Piece {
                part: GarmentPart::Cloth,
                stations: stations.into_iter().map(|[at, left, right]| OutlineStation { at, left, right }).collect(),
                zones: zones.into_iter()
                    .map(|[from, to, left, right]| Zone { kind: ZoneKind::Stain, from, to, left, right })
                    .collect(),
            };
            if sorted {
                piece.stations.sort_by_key(|s| s.at);
                for s in &mut piece.stations {
                    (s.left, s.right) = (std::cmp::min(s.left, s.right), std::cmp::max(s.left, s.right));
                }
                piece.zones.retain(|z| z.from < z.to && z.left < z.right);
                while let Err(PieceFault::ZoneOutside(i) | PieceFault::ZoneTooFar(i)) = piece.check() {
                    piece.zones.remove(i);
                }
            }
            let [side, trimming, step, width, length] = how;
            let odd = Cutting { side, trimming, step, binding: Some(BindingCut { width, length, most: 3 }), both_edges: sorted, half: None };
            for how in [odd, Cutting { binding: odd.binding, ..five() }, five()] {
                let _ = lay_out(&piece, &how);
                let _ = naive(&piece, &how);
                let _ = bound(&piece, &how);
                let _ = free_yield(&piece, &how);
            }
        }
    }

    fn any_length() -> impl Strategy<Value = Length> {
        prop_oneof![
            any::<i64>(),
            -10i64..10,
            -900_000_000i64..900_000_000,
            -99_000_000_000i64..99_000_000_000,
        ]
        .prop_map(nm)
    }
}
