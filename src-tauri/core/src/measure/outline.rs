//! The true outline of a sewn block, and the cut that squares it up.
//!
//! A four comes off the machine a little out of shape: one end stretched, a
//! corner pulled. Width and height alone do not show it; the four sides and the
//! two diagonals do. From them an [`Outline`] is built, and it answers three
//! questions: how far out of square the block is ([`Outline::skew`]), how large a
//! piece it still holds ([`Outline::largest`]), and where to lay the ruler for a
//! wanted size so that the crossing of the seams stays in the middle
//! ([`Outline::place`]).
//!
//! # The outline
//!
//! Millimetres in floating point, `x` to the right and `y` downwards, the
//! top-left corner at (0, 0) and the top side along `x`. Each lower corner is the
//! apex of a triangle on the top side: bottom-left from the left side and the
//! diagonal to it, bottom-right from the right side and the other diagonal. With
//! base `c`, and `a`, `b` from its two ends,
//!
//! * `x = (c² + a² − b²) / 2c`, `y = √(a² − x²)` (law of cosines).
//!
//! Five lengths fix the shape; the sixth, the bottom, checks them. What it is off
//! by is the [`Outline::closing`]; it is refused where it is more than 5 mm, more than 1.5 % of
//! the bottom side, and more than 3.5 mm times the longest length divided by the bottom side (our
//! estimate of how a tape is read; common practice, no source for the figures).
//!
//! Without diagonals four sides may be pushed into many shapes. The one taken has
//! its corners on one circle, which is the largest those sides can hold; its
//! diagonals are (Brahmagupta's quadrilateral; sides a, b, c, d in turn)
//!
//! * `√((ac + bd)(ad + bc) / (ab + cd))` and `√((ac + bd)(ab + cd) / (ad + bc))`.
//!
//! Where one pair of opposite sides is alike this is the shape symmetric about
//! the line between them, and with both pairs alike it is the rectangle. It is a
//! guess: skew shows only in diagonals.
//!
//! # The largest piece
//!
//! A side of the outline with inward unit normal `n` and offset `b` holds a
//! rectangle of half sizes `p`, `q` with middle `m`, turned by `θ` and scaled by
//! `s`, when `n·m − s·r(θ) ≥ b`, where `r = p·|n·u| + q·|n·v|` and `u`, `v` are the
//! rectangle's own directions (its support function). For one `θ` that is a linear
//! programme; by duality its best `s` is the least of `B / Σλᵢrᵢ(θ)` over the few
//! weights `λ ≥ 0` with `Σλᵢnᵢ = 0` and at most three of them not zero, where
//! `B = −Σλᵢbᵢ`. The weights do not depend on `θ`. Between the turns at which a
//! side of the rectangle lies along a side of the outline every `r` is one sine
//! curve, so each of those ratios is convex there, and the best turn is at the end
//! of such a stretch or where two ratios meet: all of them are tried, so nothing
//! is left to a search. (Plain geometry and linear programming.)
//!
//! # Promises
//!
//! * What [`Outline::largest`] and [`Outline::place`] give lies inside the outline
//!   to a millionth of a millimetre (tested on blocks up to half a metre).
//! * The same measures give the same answer; nothing is random, and no input panics.
//!
//! # Limits
//!
//! Sides are taken as straight. Turns are measured from the top side, clockwise as
//! seen, and kept within 10° either way. [`Outline::place`] is strict to a
//! nanometre: a block a hair short of the size does not hold it, and the caller
//! decides how much to forgive (by asking for the size [`Outline::largest`] gave).
//! When the centre cannot come onto the crossing, the turn is found by a scan of
//! half degrees with a golden-section refinement.
//!
//! ```
//! use lapwork_core::measure::tenths_of_mm;
//! use lapwork_core::measure::outline::{Measures, Outline, Sides};
//!
//! // A four of 240 mm pushed out of square: one diagonal 8 mm longer than the other.
//! let side = tenths_of_mm(2_400);
//! let block = Outline::new(Measures {
//!     sides: Sides { top: side, right: side, bottom: side, left: side },
//!     diagonals: Some((tenths_of_mm(3_434), tenths_of_mm(3_354))),
//! })
//! .unwrap();
//! let held = block.largest(side, side).unwrap();
//! assert!(held.width < side);
//! // What it holds can be cut from it, and no more.
//! assert!(block.place(held.width, held.height, None).is_some());
//! assert!(block.place(side, side, None).is_none());
//! ```

use crate::measure::{Length, from_mm, in_mm, nm};
use crate::types::TS;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// A place on the block: millimetres right of and below its top-left corner.
pub type Spot = (f64, f64);

/// Farthest turn tried either way, in radians (10°).
const WIDEST_TURN: f64 = 10.0 * std::f64::consts::PI / 180.0;
/// Corners flatter or sharper than this sine are no corners.
const LEAST_CORNER: f64 = 1e-9;
/// Lengths are whole nanometres; half of one, in millimetres.
const HALF_NM: f64 = 0.5e-6;

/// The four sides of a block as measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Sides {
    /// Along the top.
    pub top: Length,
    /// Down the right.
    pub right: Length,
    /// Along the bottom.
    pub bottom: Length,
    /// Down the left.
    pub left: Length,
}

/// What was measured of one block.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Measures {
    /// The four sides.
    pub sides: Sides,
    /// Top left to bottom right, and top right to bottom left.
    pub diagonals: Option<(Length, Length)>,
}

impl Measures {
    /// The same block turned by a quarter, clockwise.
    pub fn turned(self) -> Measures {
        let Sides {
            top,
            right,
            bottom,
            left,
        } = self.sides;
        Measures {
            sides: Sides {
                top: left,
                right: top,
                bottom: right,
                left: bottom,
            },
            // What ran from the top left runs from the top right now.
            diagonals: self.diagonals.map(|(down, up)| (up, down)),
        }
    }

    /// A block of which only width and height were measured: taken as a rectangle.
    pub fn plain(width: Length, height: Length) -> Measures {
        Measures {
            sides: Sides {
                top: width,
                right: height,
                bottom: width,
                left: height,
            },
            diagonals: None,
        }
    }
}

/// One of the six lengths that can be measured on a block.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Line {
    /// The top side.
    Top,
    /// The right side.
    Right,
    /// The bottom side.
    Bottom,
    /// The left side.
    Left,
    /// The diagonal from top left to bottom right.
    Falling,
    /// The diagonal from top right to bottom left.
    Rising,
}

/// Why measures give no outline.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum OutlineFault {
    /// No block has such measures: a side is nothing, a triangle does not meet, or
    /// a corner points inwards.
    #[error("no block has these measures")]
    Impossible,
    /// The bottom side does not agree with the other five lengths.
    #[error("the bottom side is {by} off what the other measures give; measure {repeat:?} again")]
    DoesNotClose {
        /// The bottom the others ask for, less the bottom measured.
        by: Length,
        /// The one to measure again first: put right alone, it leaves the block
        /// squarest. A hint; six lengths with one contradiction prove no culprit.
        repeat: Line,
    },
}

/// The outline of a block: a convex quadrilateral in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outline {
    /// Top left, top right, bottom right, bottom left.
    corners: [Spot; 4],
    /// Inward unit normals of top, right, bottom, left.
    normals: [Spot; 4],
    /// What `normal · spot` is along each side.
    offsets: [f64; 4],
    /// The dual weights and their `B`; two, or the same ones found twice.
    weights: [Option<([f64; 4], f64)>; 4],
    /// Longest extent, for tolerances.
    size: f64,
    closing: f64,
}

/// The largest rectangle of some proportions that an outline holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fit {
    /// Its width, down to the whole nanometre.
    pub width: Length,
    /// Its height, down to the whole nanometre.
    pub height: Length,
    /// Its size over the size asked about.
    pub scale: f64,
    /// Its middle.
    pub centre: Spot,
    /// Its turn from the top side in degrees, clockwise as seen.
    pub turn: f64,
    /// Top left, top right, bottom right, bottom left.
    pub corners: [Spot; 4],
}

/// Where to cut a block to a size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    /// The middle of the piece.
    pub centre: Spot,
    /// Its turn from the top side in degrees, clockwise as seen.
    pub turn: f64,
    /// The corners of the piece: top left, top right, bottom right, bottom left.
    pub corners: [Spot; 4],
    /// What falls away at top, right, bottom and left: the width of the strip at
    /// the two ends of the cut side (left then right, or top then bottom), read
    /// square to the cut from the piece's corner out to the block's edge.
    pub trims: [(Length, Length); 4],
    /// How far the crossing lies from the middle of the piece.
    pub off: Length,
}

fn dot(a: Spot, b: Spot) -> f64 {
    a.0 * b.0 + a.1 * b.1
}

fn cross(a: Spot, b: Spot) -> f64 {
    a.0 * b.1 - a.1 * b.0
}

fn minus(a: Spot, b: Spot) -> Spot {
    (a.0 - b.0, a.1 - b.1)
}

fn apart(a: Spot, b: Spot) -> f64 {
    (a.0 - b.0).hypot(a.1 - b.1)
}

/// The apex `a` from the start and `b` from the end of a base along `x`.
fn apex(base: f64, a: f64, b: f64) -> Option<Spot> {
    let x = (base + (a - b) * (a + b) / base) / 2.0;
    let square = (a - x) * (a + x);
    (square > 0.0).then(|| (x, square.sqrt()))
}

/// Six lengths in millimetres, in the order of [`Line`].
type Six = [f64; 6];

/// The corners from all but the bottom.
fn build([top, right, _, left, falling, rising]: Six) -> Option<[Spot; 4]> {
    let below_left = apex(top, left, rising)?;
    let below_right = apex(top, falling, right)?;
    Some([(0.0, 0.0), (top, 0.0), below_right, below_left])
}

/// What one length must be for the other five to close.
fn sixth(six: Six, line: Line) -> Option<f64> {
    let [top, right, bottom, left, falling, rising] = six;
    // Two apexes over the length opposite; over a diagonal they lie on both sides.
    let (first, second, mirrored) = match line {
        Line::Top => (
            apex(bottom, left, falling),
            apex(bottom, rising, right),
            false,
        ),
        Line::Right => (apex(left, top, rising), apex(left, falling, bottom), false),
        Line::Bottom => (apex(top, left, rising), apex(top, falling, right), false),
        Line::Left => (
            apex(right, top, falling),
            apex(right, rising, bottom),
            false,
        ),
        Line::Falling => (apex(rising, top, left), apex(rising, right, bottom), true),
        Line::Rising => (apex(falling, top, right), apex(falling, left, bottom), true),
    };
    let (first, second) = (first?, second?);
    let second = if mirrored {
        (second.0, -second.1)
    } else {
        second
    };
    Some(apart(first, second))
}

/// For each corner, cross and dot of its two sides; `None` when not convex.
fn angles(corners: [Spot; 4]) -> Option<[(f64, f64); 4]> {
    let mut found = [(0.0, 0.0); 4];
    for (i, slot) in found.iter_mut().enumerate() {
        let here = corners[i];
        let on = minus(corners[(i + 1) % 4], here);
        let back = minus(corners[(i + 3) % 4], here);
        let (sine, cosine) = (cross(on, back), dot(on, back));
        let least = LEAST_CORNER * on.0.hypot(on.1) * back.0.hypot(back.1);
        // A comparison that is false for what is not a number.
        if !(sine > least && least > 0.0 && sine.is_finite()) {
            return None;
        }
        *slot = (sine, cosine);
    }
    Some(found)
}

/// The measure that, put right alone, leaves the squarest block.
fn suspect(six: Six) -> Line {
    let lines = [
        Line::Falling,
        Line::Rising,
        Line::Top,
        Line::Right,
        Line::Bottom,
        Line::Left,
    ];
    let mut best = (Line::Bottom, f64::INFINITY);
    for line in lines {
        let Some(wanted) = sixth(six, line) else {
            continue;
        };
        let mut mended = six;
        mended[line as usize] = wanted;
        let Some(angles) = build(mended).and_then(angles) else {
            continue;
        };
        let off: f64 = angles
            .iter()
            .map(|(s, c)| c * c / (s * s + c * c))
            .sum::<f64>();
        if off < best.1 {
            best = (line, off);
        }
    }
    best.0
}

/// Half width and half height in millimetres.
fn halves(width: Length, height: Length) -> Option<(f64, f64)> {
    (width > nm(0) && height > nm(0)).then(|| (in_mm(width) / 2.0, in_mm(height) / 2.0))
}

/// How far a rectangle turned by `turn` reaches against the normal `n`.
fn reach(half: (f64, f64), n: Spot, (sin, cos): (f64, f64)) -> f64 {
    half.0 * (n.0 * cos + n.1 * sin).abs() + half.1 * (n.1 * cos - n.0 * sin).abs()
}

/// The corners of a rectangle.
fn rectangle(half: (f64, f64), centre: Spot, turn: f64) -> [Spot; 4] {
    let (sin, cos) = turn.sin_cos();
    let at = |x: f64, y: f64| {
        let (x, y) = (x * half.0, y * half.1);
        (centre.0 + x * cos - y * sin, centre.1 + x * sin + y * cos)
    };
    [at(-1.0, -1.0), at(1.0, -1.0), at(1.0, 1.0), at(-1.0, 1.0)]
}

impl Outline {
    /// Build the outline of a block from its measures.
    ///
    /// # Errors
    /// A [`OutlineFault`] when no block has these measures, or they contradict one another.
    pub fn new(measures: Measures) -> Result<Outline, OutlineFault> {
        let Sides {
            top,
            right,
            bottom,
            left,
        } = measures.sides;
        let (falling, rising) = measures.diagonals.unwrap_or((nm(1), nm(1)));
        let all = [top, right, bottom, left, falling, rising];
        if all.iter().any(|length| *length <= nm(0)) {
            return Err(OutlineFault::Impossible);
        }
        let [a, b, c, d] = [top, right, bottom, left].map(in_mm);
        let (falling, rising) = match measures.diagonals {
            Some((falling, rising)) => (in_mm(falling), in_mm(rising)),
            None => {
                let (opposite, one, two) = (a * c + b * d, a * d + b * c, a * b + c * d);
                (
                    (opposite * (one / two)).sqrt(),
                    (opposite * (two / one)).sqrt(),
                )
            }
        };
        let six = [a, b, c, d, falling, rising];
        let corners = build(six).ok_or(OutlineFault::Impossible)?;
        if measures.diagonals.is_none() {
            return Outline::of(corners, 0.0).ok_or(OutlineFault::Impossible);
        }
        let closing = apart(corners[2], corners[3]) - c;
        let outline = Outline::of(corners, closing).ok_or(OutlineFault::Impossible)?;
        // A tape read to ⅛ in is up to 1.6 mm off. A wrong diagonal moves the lower corner by its
        // error times the diagonal divided by the bottom, which is much on a narrow piece.
        let longest = six.into_iter().fold(0.0, f64::max);
        if closing.abs() > (0.015 * c).max(5.0).max(3.5 * longest / c) {
            return Err(OutlineFault::DoesNotClose {
                by: from_mm(closing),
                repeat: suspect(six),
            });
        }
        Ok(outline)
    }

    /// The outline with these corners, when it is convex.
    fn of(corners: [Spot; 4], closing: f64) -> Option<Outline> {
        angles(corners)?;
        let (mut normals, mut offsets, mut size) = ([(0.0, 0.0); 4], [0.0; 4], 0.0_f64);
        for i in 0..4 {
            let (from, to) = (corners[i], corners[(i + 1) % 4]);
            let long = apart(from, to);
            normals[i] = ((from.1 - to.1) / long, (to.0 - from.0) / long);
            offsets[i] = dot(normals[i], from);
            size = size.max(long).max(apart(from, corners[(i + 2) % 4]));
        }
        let mut weights = [None; 4];
        for (skip, slot) in weights.iter_mut().enumerate() {
            let [i, j, k] = [1, 2, 3].map(|step| (skip + step) % 4);
            let raw = [
                cross(normals[j], normals[k]),
                cross(normals[k], normals[i]),
                cross(normals[i], normals[j]),
            ];
            let most = raw.iter().fold(0.0_f64, |m, r| m.max(*r));
            if most <= 0.0 || raw.iter().any(|r| *r < -1e-12 * most) {
                continue;
            }
            let mut weight = [0.0; 4];
            for (side, r) in [i, j, k].into_iter().zip(raw) {
                weight[side] = r.max(0.0) / most;
            }
            let bound = -(0..4).map(|s| weight[s] * offsets[s]).sum::<f64>();
            *slot = Some((weight, bound));
        }
        weights.iter().flatten().next()?;
        Some(Outline {
            corners,
            normals,
            offsets,
            weights,
            size,
            closing,
        })
    }

    /// Top left, top right, bottom right, bottom left.
    pub fn corners(&self) -> [Spot; 4] {
        self.corners
    }

    /// The bottom the other five lengths ask for, less the bottom measured, in
    /// millimetres; zero without diagonals.
    pub fn closing(&self) -> f64 {
        self.closing
    }

    /// The mean of the four corners.
    pub fn middle(&self) -> Spot {
        let sum = |pick: fn(&Spot) -> f64| self.corners.iter().map(pick).sum::<f64>() / 4.0;
        (sum(|c| c.0), sum(|c| c.1))
    }

    /// How far each corner is from square, in degrees: positive is too wide,
    /// below is too sharp. Top left, top right, bottom right, bottom left.
    ///
    /// By the law of cosines `cos C = (a² + b² − c²) / 2ab`; the same cosine, with
    /// its sine, is taken off the corners so that small angles keep their digits.
    pub fn angles_off(&self) -> [f64; 4] {
        angles(self.corners)
            .unwrap_or([(1.0, 0.0); 4])
            .map(|(sine, cosine)| -cosine.atan2(sine).to_degrees())
    }

    /// The corner farthest from square, in degrees off: positive is too wide.
    /// Of corners equally far, the first from the top left clockwise.
    pub fn skew(&self) -> f64 {
        self.angles_off().into_iter().fold(0.0, |worst: f64, off| {
            if off.abs() > worst.abs() + 1e-9 {
                off
            } else {
                worst
            }
        })
    }

    /// Whether it is out of square by as much as is reported: a twentieth of a degree.
    pub fn leans(&self) -> bool {
        self.skew().abs() >= 0.05
    }

    /// How many times larger the rectangle could be at this turn.
    fn scale(&self, half: (f64, f64), turn: f64) -> f64 {
        let turned = turn.sin_cos();
        let reaches = self.normals.map(|n| reach(half, n, turned));
        self.weights
            .iter()
            .flatten()
            .map(|(weight, bound)| {
                bound / (0..4).map(|side| weight[side] * reaches[side]).sum::<f64>()
            })
            .fold(f64::INFINITY, f64::min)
    }

    /// The turns, in order, at which a side of the piece lies along a side of the
    /// outline, with the widest turns at both ends.
    fn bends(&self) -> [f64; 6] {
        let quarter = std::f64::consts::FRAC_PI_2;
        let mut bends = [WIDEST_TURN; 6];
        bends[4] = -WIDEST_TURN;
        for (bend, n) in bends.iter_mut().zip(self.normals) {
            let along = n.1.atan2(n.0);
            let turn = along - (along / quarter).round() * quarter;
            *bend = turn.clamp(-WIDEST_TURN, WIDEST_TURN);
        }
        bends.sort_by(f64::total_cmp);
        bends
    }

    /// Between two bends, each side's reach as `p·cos + q·sin` of the turn.
    fn waves(&self, half: (f64, f64), middle_turn: f64) -> [(f64, f64); 4] {
        let (sin, cos) = middle_turn.sin_cos();
        self.normals.map(|n| {
            let wide = half.0.copysign(n.0 * cos + n.1 * sin);
            let high = half.1.copysign(n.1 * cos - n.0 * sin);
            (wide * n.0 + high * n.1, wide * n.1 - high * n.0)
        })
    }

    /// The turn at which the largest piece lies, and how many times larger it is.
    fn best(&self, half: (f64, f64)) -> (f64, f64) {
        let mut best = (0.0_f64, self.scale(half, 0.0));
        let mut consider = |turn: f64| {
            let scale = self.scale(half, turn);
            let (more, same) = (best.1 * (1.0 + 1e-13), best.1 * (1.0 - 1e-13));
            if scale > more || (scale >= same && turn.abs() < best.0.abs()) {
                best = (turn, scale);
            }
        };
        let bends = self.bends();
        bends.into_iter().for_each(&mut consider);
        for stretch in bends.windows(2) {
            if stretch[1] <= stretch[0] {
                continue;
            }
            let waves = self.waves(half, (stretch[0] + stretch[1]) / 2.0);
            let sums = self.weights.map(|w| {
                w.map(|(weight, bound)| {
                    let sum = |pick: fn(&(f64, f64)) -> f64| {
                        (0..4).map(|s| weight[s] * pick(&waves[s])).sum::<f64>()
                    };
                    (sum(|w| w.0), sum(|w| w.1), bound)
                })
            });
            for (i, one) in sums.iter().enumerate() {
                for two in &sums[i + 1..] {
                    let (Some(one), Some(two)) = (one, two) else {
                        continue;
                    };
                    let x = one.2 * two.0 - two.2 * one.0;
                    let y = one.2 * two.1 - two.2 * one.1;
                    let turn = (-x / y).atan();
                    if turn > stretch[0] && turn < stretch[1] {
                        consider(turn);
                    }
                }
            }
        }
        best
    }

    /// The spot nearest to `wanted` at which a rectangle may have its middle.
    fn nearest(&self, half: (f64, f64), turn: f64, wanted: Spot, give: f64) -> Option<Spot> {
        let turned = turn.sin_cos();
        let mut bounds = self.offsets;
        for (bound, n) in bounds.iter_mut().zip(self.normals) {
            *bound += reach(half, n, turned) - give;
        }
        let rounding = 1e-13 * self.size;
        let held = |spot: Spot| {
            (0..4).all(|side| dot(self.normals[side], spot) >= bounds[side] - rounding)
        };
        if held(wanted) {
            return Some(wanted);
        }
        let mut best: Option<(f64, Spot)> = None;
        let mut consider = |spot: Spot| {
            let way = minus(spot, wanted);
            let far = dot(way, way);
            if best.is_none_or(|(least, _)| far < least) && held(spot) {
                best = Some((far, spot));
            }
        };
        for one in 0..4 {
            let n = self.normals[one];
            let short = bounds[one] - dot(n, wanted);
            if short > 0.0 {
                consider((wanted.0 + n.0 * short, wanted.1 + n.1 * short));
            }
            for two in one + 1..4 {
                let m = self.normals[two];
                let sine = cross(n, m);
                if sine.abs() > 1e-12 {
                    consider((
                        (bounds[one] * m.1 - bounds[two] * n.1) / sine,
                        (n.0 * bounds[two] - m.0 * bounds[one]) / sine,
                    ));
                }
            }
        }
        best.map(|(_, spot)| spot)
    }

    /// The largest rectangle in the proportion `width : height` that the outline
    /// holds, turned 10° at most; of equal ones the least turned, its middle as
    /// near to the block's as it goes. `None` when a proportion is not positive.
    pub fn largest(&self, width: Length, height: Length) -> Option<Fit> {
        let half = halves(width, height)?;
        let (turn, scale) = self.best(half);
        let fitted = (half.0 * scale, half.1 * scale);
        let middle = self.middle();
        let centre = [1e-13, 1e-12, 1e-11, 1e-10, 1e-9]
            .into_iter()
            .find_map(|give| self.nearest(fitted, turn, middle, give * self.size))?;
        // A hundredth of a nanometre is rounding; beyond that, down.
        let down = |half: f64| nm((half * 2e6 + 0.01).floor() as i64);
        Some(Fit {
            width: down(fitted.0),
            height: down(fitted.1),
            scale,
            centre,
            turn: turn.to_degrees(),
            corners: rectangle(fitted, centre, turn),
        })
    }

    /// Where to cut `width` × `height` out of the block, its centre as near as may
    /// be to `crossing`, where the seams cross (the mean of the corners if not
    /// given); of placements equally near, the least turned. `None` when the
    /// outline does not hold that size.
    pub fn place(&self, width: Length, height: Length, crossing: Option<Spot>) -> Option<Cut> {
        let half = halves(width, height)?;
        let crossing = crossing
            .filter(|spot| spot.0.is_finite() && spot.1.is_finite())
            .unwrap_or_else(|| self.middle());
        let give = HALF_NM + 1e-12 * self.size;
        let too_small = 1.0 - 4.0 * give / half.0.min(half.1);
        let gap = |turn: f64| {
            // The quick way to say no; the spot itself decides.
            if self.scale(half, turn) < too_small {
                return None;
            }
            let spot = self.nearest(half, turn, crossing, give)?;
            Some((apart(spot, crossing), turn, spot))
        };
        let (_, turn, centre) = match gap(0.0) {
            Some(here) if here.0 == 0.0 => here,
            _ => self.least_gap(half, crossing, give, gap)?,
        };
        let corners = rectangle(half, centre, turn);
        let (sin, cos) = turn.sin_cos();
        let (right, down) = ((cos, sin), (-sin, cos));
        let (left, up) = ((-cos, -sin), (sin, -cos));
        let [tl, tr, br, bl] = corners;
        let strip = |from: Spot, to: Spot, out: Spot| (self.out(from, out), self.out(to, out));
        Some(Cut {
            centre,
            turn: turn.to_degrees(),
            corners,
            trims: [
                strip(tl, tr, up),
                strip(tr, br, right),
                strip(bl, br, down),
                strip(tl, bl, left),
            ],
            off: from_mm(apart(centre, crossing)),
        })
    }

    /// The least distance from crossing to centre over all turns, with its turn and
    /// centre.
    fn least_gap(
        &self,
        half: (f64, f64),
        crossing: Spot,
        give: f64,
        gap: impl Fn(f64) -> Option<(f64, f64, Spot)>,
    ) -> Option<(f64, f64, Spot)> {
        let (best_turn, _) = self.best(half);
        gap(best_turn)?;
        // Turns at which something begins or ends: the scan, the bends, where the
        // outline just holds the size, and where a side just reaches the crossing.
        let mut turns: Vec<f64> = (-20..=20)
            .map(|step| f64::from(step) / 20.0 * WIDEST_TURN)
            .collect();
        turns.push(best_turn);
        let bends = self.bends();
        turns.extend(bends);
        for stretch in bends.windows(2) {
            if stretch[1] <= stretch[0] {
                continue;
            }
            let mut meet = |(p, q): (f64, f64), level: f64| {
                let (top, ratio) = (q.atan2(p), level / p.hypot(q));
                if ratio.abs() <= 1.0 {
                    for turn in [top - ratio.acos(), top + ratio.acos()] {
                        let turn =
                            turn - (turn / std::f64::consts::TAU).round() * std::f64::consts::TAU;
                        if turn > stretch[0] && turn < stretch[1] {
                            turns.push(turn);
                        }
                    }
                }
            };
            let waves = self.waves(half, (stretch[0] + stretch[1]) / 2.0);
            for (wave, (n, offset)) in waves.iter().zip(self.normals.iter().zip(self.offsets)) {
                meet(*wave, dot(*n, crossing) - offset + give);
            }
            for (weight, bound) in self.weights.iter().flatten() {
                let (mut p, mut q, mut slack) = (0.0, 0.0, 0.0);
                for side in 0..4 {
                    p += weight[side] * waves[side].0;
                    q += weight[side] * waves[side].1;
                    slack += weight[side] * give;
                }
                meet((p, q), bound + slack);
            }
        }
        turns.sort_by(f64::total_cmp);
        turns.dedup();
        let tried: Vec<_> = turns.iter().map(|turn| gap(*turn)).collect();
        let least = tried
            .iter()
            .flatten()
            .map(|t| t.0)
            .fold(f64::INFINITY, f64::min);
        let at = tried.iter().position(|t| t.is_some_and(|t| t.0 == least))?;
        let mut found = tried[at]?;
        if least > 0.0 {
            let (mut from, mut to) = (
                turns[at.saturating_sub(1)],
                turns[(at + 1).min(turns.len() - 1)],
            );
            let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
            let mut look = |turn: f64| {
                let tried = gap(turn);
                if let Some(nearer) = tried.filter(|t| t.0 < found.0) {
                    found = nearer;
                }
                // Where both are out, draw in towards the best turn known.
                tried.map_or(((turn - found.1).abs(), true), |t| (t.0, false))
            };
            let worse = |a: (f64, bool), b: (f64, bool)| a.1 & !b.1 || (a.1 == b.1 && a.0 >= b.0);
            let step = (to - from) * golden;
            let (mut one, mut two) = (to - step, from + step);
            let (mut first, mut second) = (look(one), look(two));
            for _ in 0..30 {
                if worse(first, second) {
                    (from, one, first) = (one, two, second);
                    two = from + (to - from) * golden;
                    second = look(two);
                } else {
                    (to, two, second) = (two, one, first);
                    one = to - (to - from) * golden;
                    first = look(one);
                }
            }
        }
        // Equal to a millionth of the block is equal: then the least turned.
        let equal = found.0 + 1e-6 * self.size;
        tried
            .into_iter()
            .flatten()
            .filter(|t| t.0 <= equal && t.1.abs() < found.1.abs())
            .min_by(|a, b| a.1.abs().total_cmp(&b.1.abs()))
            .or(Some(found))
    }

    /// From a spot inside, straight on in one direction, to the edge.
    fn out(&self, from: Spot, way: Spot) -> Length {
        let mut far = f64::INFINITY;
        for (n, offset) in self.normals.iter().zip(self.offsets) {
            let towards = -dot(*n, way);
            if towards > 1e-12 {
                far = far.min((dot(*n, from) - offset) / towards);
            }
        }
        from_mm(if far.is_finite() { far.max(0.0) } else { 0.0 })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const LINES: [Line; 6] = [
        Line::Top,
        Line::Right,
        Line::Bottom,
        Line::Left,
        Line::Falling,
        Line::Rising,
    ];

    fn mm(length: f64) -> Length {
        from_mm(length)
    }

    fn sides(top: f64, right: f64, bottom: f64, left: f64) -> Sides {
        Sides {
            top: mm(top),
            right: mm(right),
            bottom: mm(bottom),
            left: mm(left),
        }
    }

    fn measured(corners: [Spot; 4]) -> Measures {
        let [tl, tr, br, bl] = corners;
        Measures {
            sides: sides(apart(tl, tr), apart(tr, br), apart(br, bl), apart(bl, tl)),
            diagonals: Some((mm(apart(tl, br)), mm(apart(tr, bl)))),
        }
    }

    /// How far the worst corner of a piece stands out of an outline.
    fn outside(outline: &Outline, corners: [Spot; 4]) -> f64 {
        let mut worst = 0.0_f64;
        for (n, offset) in outline.normals.iter().zip(outline.offsets) {
            for corner in corners {
                worst = worst.max(offset - dot(*n, corner));
            }
        }
        worst
    }

    /// Whether `a` and `b` are within `most` of one another.
    fn near(a: f64, b: f64, most: f64) -> bool {
        (a - b).abs() <= most
    }

    /// A second way to the middles a rectangle may have: all places, cut back by each side of the block
    /// so far as the corner of the rectangle reaches that is farthest out there. Nothing of the
    /// outline is used but its corners.
    fn middles(corners: [Spot; 4], half: (f64, f64), turn: f64) -> Vec<Spot> {
        let four = rectangle(half, (0.0, 0.0), turn);
        let mut left = vec![(-9e3, -9e3), (9e3, -9e3), (9e3, 9e3), (-9e3, 9e3)];
        for i in 0..4 {
            let (from, along) = (corners[i], minus(corners[(i + 1) % 4], corners[i]));
            // On the inner side of a line this is more than nothing; the least of the four corners.
            let within = |m: Spot| {
                let each = four.map(|c| cross(along, minus((m.0 + c.0, m.1 + c.1), from)));
                each.into_iter().fold(f64::INFINITY, f64::min)
            };
            let mut kept = Vec::new();
            for (n, a) in left.iter().enumerate() {
                let b = left[(n + 1) % left.len()];
                let (x, y) = (within(*a), within(b));
                if x >= 0.0 {
                    kept.push(*a);
                }
                if (x < 0.0) != (y < 0.0) {
                    let t = x / (x - y);
                    kept.push((a.0 + (b.0 - a.0) * t, a.1 + (b.1 - a.1) * t));
                }
            }
            left = kept;
        }
        left
    }

    /// How far a spot is from the nearest of those middles; nothing where there is none.
    fn nearest_middle(middles: &[Spot], spot: Spot) -> Option<f64> {
        let sides = || (0..middles.len()).map(|n| (middles[n], middles[(n + 1) % middles.len()]));
        if !middles.is_empty() && sides().all(|(a, b)| cross(minus(b, a), minus(spot, a)) >= 0.0) {
            return Some(0.0);
        }
        let to_side = |(a, b): (Spot, Spot)| {
            let (way, long) = (minus(b, a), apart(a, b));
            let t = if long > 0.0 {
                dot(minus(spot, a), way) / (long * long)
            } else {
                0.0
            };
            let t = t.clamp(0.0, 1.0);
            apart(spot, (a.0 + way.0 * t, a.1 + way.1 * t))
        };
        sides().map(to_side).min_by(f64::total_cmp)
    }

    /// Every twentieth of a degree up to ten either way, in radians.
    fn every_turn() -> impl Iterator<Item = f64> {
        (-200..=200).map(|n| f64::from(n) / 20.0 * std::f64::consts::PI / 180.0)
    }

    /// Tried at every twentieth of a degree by a second way: none holds a larger piece of these
    /// proportions, and at the turn found one a millionth smaller does lie in the block.
    fn holds_the_largest(corners: [Spot; 4], (w, h): (f64, f64)) {
        let outline = Outline::of(corners, 0.0).unwrap();
        let (w, h) = (in_mm(mm(w)), in_mm(mm(h)));
        let fit = outline.largest(mm(w), mm(h)).unwrap();
        let half = |by: f64| (w / 2.0 * fit.scale * by, h / 2.0 * fit.scale * by);
        let turn = fit.turn.to_radians();
        assert!(!middles(corners, half(1.0 - 1e-6), turn).is_empty());
        for turn in every_turn() {
            let larger = middles(corners, half(1.0 + 1e-6), turn);
            assert!(larger.is_empty(), "{}", turn.to_degrees());
        }
        // As large as it is told, to the nanometre below.
        assert!(near(in_mm(fit.width), w * fit.scale, 2e-6));
        assert!(near(in_mm(fit.height), h * fit.scale, 2e-6));
    }

    /// Likewise where to cut a piece a little smaller: its middle is as far from the crossing as it is
    /// told, no turn brings it nearer, and where it comes onto the crossing no lesser turn does.
    fn lies_nearest(corners: [Spot; 4], (w, h): (f64, f64), less: f64, at: (f64, f64)) {
        let outline = Outline::of(corners, 0.0).unwrap();
        let fit = outline.largest(mm(w), mm(h)).unwrap();
        let size = [fit.width, fit.height].map(|l| from_mm(in_mm(l) * less));
        let half = (in_mm(size[0]) / 2.0, in_mm(size[1]) / 2.0);
        let [tl, tr, br, bl] = corners;
        let along = |a: Spot, b: Spot, t: f64| (a.0 + (b.0 - a.0) * t, a.1 + (b.1 - a.1) * t);
        let crossing = along(along(tl, tr, at.0), along(bl, br, at.0), at.1);
        let cut = outline.place(size[0], size[1], Some(crossing)).unwrap();
        let off = in_mm(cut.off);
        assert!(near(apart(cut.centre, crossing), off, 1e-6));
        let turn = cut.turn.to_radians();
        // Half a nanometre is forgiven at each side, which is more at a sharp corner.
        let smaller = (half.0 - 2e-6, half.1 - 2e-6);
        let there = nearest_middle(&middles(corners, smaller, turn), crossing).unwrap();
        assert!(near(there, off, 1e-3), "{there} {off}");
        for other in every_turn() {
            let Some(far) = nearest_middle(&middles(corners, half, other), crossing) else {
                continue;
            };
            assert!(far >= off - 1e-3, "{far} at {}", other.to_degrees());
            if off < 1e-5 && other.abs() < turn.abs() - 1e-6 {
                assert!(
                    far > 0.0,
                    "{} is less than {}",
                    other.to_degrees(),
                    cut.turn
                );
            }
        }
    }

    /// Blocks whose largest piece, or whose nearest one, lies at a turn between those of their sides.
    #[test]
    fn what_lies_at_a_turn_of_its_own_is_found() {
        let leaning = [(0.0, 0.0), (424.5, 0.0), (467.2, 229.8), (37.2, 229.8)];
        holds_the_largest(leaning, (238.1, 113.6));
        let twisted = [(34.8, -22.4), (305.6, 14.8), (320.1, 372.7), (7.1, 317.6)];
        holds_the_largest(twisted, (36.5, 48.2));
        let wide = [(-29.9, 0.0), (361.1, 0.0), (351.6, 198.7), (4.6, 170.9)];
        lies_nearest(wide, (191.7, 149.8), 0.9388, (0.697, 0.546));
        let tall = [(10.4, -4.0), (112.9, 18.1), (109.6, 258.7), (4.2, 278.6)];
        lies_nearest(tall, (34.5, 212.7), 0.9943, (0.634, 0.3));
    }

    #[test]
    fn a_square_block_holds_itself() {
        let (w, h) = (mm(241.3), mm(241.3));
        let block = Outline::new(Measures::plain(w, h)).unwrap();
        let fit = block.largest(w, h).unwrap();
        assert_eq!((fit.width, fit.height, fit.turn), (w, h, 0.0));
        let cut = block.place(w, h, None).unwrap();
        assert_eq!(cut.trims, [(nm(0), nm(0)); 4]);
        assert_eq!((cut.off, cut.turn), (nm(0), 0.0));
        assert_eq!(block.skew(), 0.0);
        assert_eq!(block.place(w + nm(10), h, None), None);
        // A crossing nobody could have measured is none.
        for nowhere in [(f64::NAN, 3.0), (3.0, f64::INFINITY)] {
            assert_eq!(block.place(w, h, Some(nowhere)), Some(cut));
        }
        for (w, h) in [(nm(0), h), (w, nm(0)), (-w, h)] {
            assert_eq!(block.largest(w, h), None);
        }
        // 3-4-5, so that the diagonals are whole.
        let exact = Measures {
            diagonals: Some((mm(500.0), mm(500.0))),
            ..Measures::plain(mm(300.0), mm(400.0))
        };
        let block = Outline::new(exact).unwrap();
        assert_eq!(block.closing(), 0.0);
        let fit = block.largest(mm(30.0), mm(40.0)).unwrap();
        assert_eq!((fit.width, fit.height), (mm(300.0), mm(400.0)));
        assert!(block.place(mm(300.0), mm(400.0), None).is_some());
    }

    #[test]
    fn an_oversize_block_is_trimmed_alike_all_round() {
        let block = Outline::new(Measures::plain(mm(245.3), mm(247.3))).unwrap();
        let cut = block.place(mm(241.3), mm(241.3), None).unwrap();
        let (side, end) = (mm(2.0), mm(3.0));
        assert_eq!(
            cut.trims,
            [(end, end), (side, side), (end, end), (side, side)]
        );
        // The crossing sits 2 mm right of the middle: the right strip goes, no turn.
        let cut = block
            .place(mm(241.3), mm(241.3), Some((124.65, 123.65)))
            .unwrap();
        assert_eq!((cut.off, cut.turn), (nm(0), 0.0));
        assert_eq!((cut.trims[1].0, cut.trims[3].0), (nm(0), mm(4.0)));
        // Farther than the block allows: as near as it goes.
        let cut = block
            .place(mm(241.3), mm(241.3), Some((127.65, 123.65)))
            .unwrap();
        assert!(near(in_mm(cut.off), 3.0, 2e-6));
        assert_eq!(cut.trims[1], (nm(0), nm(0)));
    }

    #[test]
    fn a_leaning_block_says_how_far() {
        // A parallelogram leaning 10 mm over 240.
        let lean = [(0.0, 0.0), (240.0, 0.0), (250.0, 240.0), (10.0, 240.0)];
        let block = Outline::new(measured(lean)).unwrap();
        let want = (10.0_f64 / 240.0).atan().to_degrees();
        assert!(near(block.skew().abs(), want, 1e-6));
        assert!(block.leans());
        // A corner 10 mm out both ways is sharp by twice the lean of a side, one as far in too wide.
        for out in [10.0, -10.0] {
            let corner = 240.0 + out;
            let pulled = [(0.0, 0.0), (240.0, 0.0), (corner, corner), (0.0, 240.0)];
            let pulled = Outline::new(measured(pulled)).unwrap();
            let want = -2.0 * (out / corner).atan().to_degrees();
            assert!(near(pulled.skew(), want, 1e-5) && pulled.leans());
        }
        let straight = Outline::new(Measures::plain(mm(240.0), mm(240.0))).unwrap();
        assert!(!straight.leans());
        // A twentieth of a degree is a fifth of a millimetre on 240.
        let leans = |lean: f64| {
            let corners = [
                (0.0, 0.0),
                (240.0, 0.0),
                (240.0 + lean, 240.0),
                (lean, 240.0),
            ];
            Outline::new(measured(corners)).unwrap().leans()
        };
        assert!(leans(0.22) && !leans(0.20));
        // The top-left corner is the sharp one.
        assert!(near(block.angles_off()[0], -want, 1e-6));
        assert!(near(block.angles_off()[1], want, 1e-6));
    }

    #[test]
    fn sides_alone_give_the_symmetric_shape() {
        let bare = |s| {
            Outline::new(Measures {
                sides: s,
                diagonals: None,
            })
            .unwrap()
        };
        let c = bare(sides(230.0, 240.0, 250.0, 240.0)).corners();
        assert!(near(c[2].0 - 240.0, 0.0, 1e-9) && near(c[3].0 + 10.0, 0.0, 1e-9));
        assert!(near(c[2].1, c[3].1, 1e-9));
        let c = bare(sides(240.0, 230.0, 240.0, 250.0)).corners();
        assert!(near(apart(c[2], c[3]), 240.0, 1e-9));
        assert!(near(apart(c[0], c[2]), apart(c[1], c[3]), 1e-9));
        // All four unlike: it closes, and opposite corners add up to half a turn.
        let block = bare(sides(240.0, 231.0, 236.0, 250.0));
        let c = block.corners();
        assert!(near(apart(c[2], c[3]), 236.0, 1e-9));
        let off = block.angles_off();
        assert!(near(off[0] + off[2], 0.0, 1e-9) && near(off[1] + off[3], 0.0, 1e-9));
    }

    #[test]
    fn measures_that_cannot_be_are_refused() {
        let block = |t, r, b, l, d: Option<(f64, f64)>| {
            Outline::new(Measures {
                sides: sides(t, r, b, l),
                diagonals: d.map(|(x, y)| (mm(x), mm(y))),
            })
        };
        let right = Some((500.0, 500.0));
        for bad in [
            block(0.0, 400.0, 300.0, 400.0, right),
            block(300.0, -1.0, 300.0, 400.0, right),
            block(300.0, 400.0, 300.0, 400.0, Some((0.0, 500.0))),
            block(300.0, 400.0, 300.0, 400.0, Some((701.0, 500.0))),
            block(300.0, 400.0, 300.0, 400.0, Some((500.0, 90.0))),
            block(10.0, 10.0, 40.0, 10.0, None),
            // Folded over: the lower corners change places.
            block(300.0, 500.0, 300.0, 500.0, Some((400.0, 400.0))),
        ] {
            assert_eq!(bad, Err(OutlineFault::Impossible));
        }
        // Each length read 12 mm wrong in turn on a good 3-4-5 block is named.
        let good = [300.0, 400.0, 300.0, 400.0, 500.0, 500.0];
        for (i, line) in LINES.into_iter().enumerate() {
            for wrong in [-12.0, 12.0] {
                let mut six = good;
                six[i] += wrong;
                let [t, r, b, l, f, s] = six;
                match block(t, r, b, l, Some((f, s))) {
                    Err(OutlineFault::DoesNotClose { repeat, .. }) => assert_eq!(repeat, line),
                    other => panic!("{six:?}: {other:?}"),
                }
            }
        }
        assert!(block(300.0, 400.0, 302.9, 400.0, right).is_ok());
        // Told as the bottom the others ask for, less the one measured.
        let closing = |bottom: f64| block(300.0, 400.0, bottom, 400.0, right).map(|b| b.closing());
        assert!(near(closing(302.9).unwrap(), -2.9, 1e-9));
        assert!(near(closing(297.5).unwrap(), 2.5, 1e-9));
        // By hand, with the bottom read short: on a block of 400 × 300 mm 1.5 % of the bottom are 5.9 mm,
        // on one of 320 × 240 mm 4.7, so that 5 mm are let pass there. On a narrow pair of 120 × 241 mm,
        // whose diagonals are 269.2 mm, it is 3.5 × 269.2 / 113 = 8.3 mm.
        let closes = |w: f64, h: f64, short: f64| {
            let d = w.hypot(h);
            block(w, h, w - short, h, Some((d, d))).is_ok()
        };
        assert!(closes(400.0, 300.0, 5.85) && !closes(400.0, 300.0, 5.95));
        assert!(closes(320.0, 240.0, 4.95) && !closes(320.0, 240.0, 5.05));
        assert!(closes(120.0, 241.0, 8.0) && !closes(120.0, 241.0, 8.7));
        // A pair of 5 × 9½ in whose diagonals were read as 10⅞ and 10½ in, the first ⅛ in too long.
        let inch = |n: f64| n * 25.4;
        let read = Some((inch(10.875), inch(10.5)));
        assert!(block(inch(5.0), inch(9.5), inch(5.0), inch(9.5), read).is_ok());
        assert_eq!(
            block(300.0, 400.0, 310.0, 400.0, right),
            Err(OutlineFault::DoesNotClose {
                by: mm(-10.0),
                repeat: Line::Bottom
            })
        );
    }

    /// Blocks a little out of shape, of which one length was then read 14 mm wrong: it is the one named.
    #[test]
    fn the_length_that_was_read_wrong_is_named() {
        let shapes = (0..16).map(|n| [1, 2, 4, 8].map(|bit| if n & bit > 0 { 1.0 } else { -1.0 }));
        for [a, b, c, d] in shapes {
            for (w, h) in [(127.0, 241.3), (241.3, 241.3), (300.0, 400.0)] {
                let below = [(w + 2.0 * a, h + 3.0 * b), (c, h + 2.0 * d)];
                let good = measured([(0.0, 0.0), (w, 0.0), below[0], below[1]]);
                for (line, wrong) in LINES.into_iter().flat_map(|l| [(l, 14.0), (l, -14.0)]) {
                    let mut read = good;
                    let (falling, rising) = read.diagonals.as_mut().unwrap();
                    let length = match line {
                        Line::Top => &mut read.sides.top,
                        Line::Right => &mut read.sides.right,
                        Line::Bottom => &mut read.sides.bottom,
                        Line::Left => &mut read.sides.left,
                        Line::Falling => falling,
                        Line::Rising => rising,
                    };
                    *length += mm(wrong);
                    match Outline::new(read) {
                        Err(OutlineFault::DoesNotClose { repeat, .. }) => assert_eq!(repeat, line),
                        other => panic!("{line:?} {wrong}: {other:?}"),
                    }
                }
            }
        }
    }

    fn block() -> impl Strategy<Value = [Spot; 4]> {
        let jog = || (-0.12..0.12, -0.12..0.12);
        (80.0..500.0, 80.0..500.0, jog(), jog(), jog(), jog()).prop_map(
            |(w, h, a, b, c, d): (f64, f64, Spot, Spot, Spot, Spot)| {
                [
                    (a.0 * w, a.1 * h),
                    (w + b.0 * w, b.1 * h),
                    (w + c.0 * w, h + c.1 * h),
                    (d.0 * w, h + d.1 * h),
                ]
            },
        )
    }

    fn any_length() -> impl Strategy<Value = Length> {
        prop_oneof![any::<i64>(), -10i64..10, 0i64..600_000_000].prop_map(nm)
    }

    proptest! {
        #[test]
        fn what_is_given_lies_inside(corners in block(), w in 30.0..300.0, h in 30.0..300.0, at in (0.2..0.8, 0.2..0.8)) {
            let outline = Outline::new(measured(corners)).unwrap();
            let fit = outline.largest(mm(w), mm(h)).unwrap();
            prop_assert!(outside(&outline, fit.corners) <= 1e-9 * outline.size);
            prop_assert!(fit.turn.abs() <= 10.0 + 1e-9);
            // It is held, and a little more is not.
            prop_assert!(outline.place(fit.width, fit.height, None).is_some());
            let more = |l: Length| from_mm(in_mm(l) * 1.0001 + 0.0001);
            prop_assert_eq!(outline.place(more(fit.width), more(fit.height), None), None);
            let less = |l: Length| from_mm(in_mm(l) * 0.97);
            let crossing = (at.0 * in_mm(fit.width), at.1 * in_mm(fit.height));
            let cut = outline.place(less(fit.width), less(fit.height), Some(crossing)).unwrap();
            prop_assert!(outside(&outline, cut.corners) <= 1e-6);
            prop_assert!(cut.trims.iter().all(|(a, b)| *a >= nm(0) && *b >= nm(0)));
            prop_assert!(cut.turn.abs() <= 10.0 + 1e-9);
            prop_assert_eq!(outline.place(less(fit.width), less(fit.height), Some(crossing)), Some(cut));
        }

        #[test]
        fn no_turn_holds_a_larger_piece(corners in block(), w in 30.0..300.0, h in 30.0..300.0) {
            holds_the_largest(corners, (w, h));
        }

        #[test]
        fn no_turn_lays_the_piece_nearer_to_the_crossing(
            corners in block(), w in 30.0..300.0, h in 30.0..300.0,
            less in 0.85..0.999, at in (0.3..0.7, 0.3..0.7),
        ) {
            lies_nearest(corners, (w, h), less, at);
        }

        /// Each strip that falls away ends at the edge of the block.
        #[test]
        fn what_is_trimmed_off_ends_at_the_edge(corners in block(), w in 30.0..300.0, h in 30.0..300.0, less in 0.7..1.0) {
            let outline = Outline::of(corners, 0.0).unwrap();
            let fit = outline.largest(mm(w), mm(h)).unwrap();
            let size = [fit.width, fit.height].map(|l| from_mm(in_mm(l) * less));
            let cut = outline.place(size[0], size[1], None).unwrap();
            let [tl, tr, br, bl] = cut.corners;
            // Up from the two upper corners, and so on round; read square to the cut.
            let ends = [
                (bl, tl, cut.trims[0].0), (br, tr, cut.trims[0].1),
                (tl, tr, cut.trims[1].0), (bl, br, cut.trims[1].1),
                (tl, bl, cut.trims[2].0), (tr, br, cut.trims[2].1),
                (tr, tl, cut.trims[3].0), (br, bl, cut.trims[3].1),
            ];
            for (behind, corner, trim) in ends {
                let way = minus(corner, behind);
                let by = in_mm(trim) / apart(corner, behind);
                let end = (corner.0 + way.0 * by, corner.1 + way.1 * by);
                // How far inside the nearest side it lies.
                let inside = (0..4).map(|i| {
                    let along = minus(corners[(i + 1) % 4], corners[i]);
                    cross(along, minus(end, corners[i])) / along.0.hypot(along.1)
                }).fold(f64::INFINITY, f64::min);
                prop_assert!(near(inside, 0.0, 1e-5), "{inside}");
            }
        }

        #[test]
        fn the_scaled_block_holds_the_scaled_piece(corners in block(), by in 0.01..40.0) {
            let outline = Outline::of(corners, 0.0).unwrap();
            let scaled = Outline::of(corners.map(|c| (c.0 * by, c.1 * by)), 0.0).unwrap();
            let (one, two) = (outline.largest(mm(3.0), mm(4.0)).unwrap(), scaled.largest(mm(3.0), mm(4.0)).unwrap());
            prop_assert!(near(two.scale / one.scale / by, 1.0, 1e-9));
            prop_assert!(near(one.turn, two.turn, 1e-6));
        }

        #[test]
        fn a_larger_outline_holds_no_less(corners in block(), grow in 0.0..20.0) {
            let outline = Outline::of(corners, 0.0).unwrap();
            // Every side moved out by `grow`: the corners where the moved sides meet.
            let moved: [Spot; 4] = std::array::from_fn(|i| {
                let (n, m) = (outline.normals[(i + 3) % 4], outline.normals[i]);
                let (a, b) = (outline.offsets[(i + 3) % 4] - grow, outline.offsets[i] - grow);
                let sine = cross(n, m);
                ((a * m.1 - b * n.1) / sine, (n.0 * b - m.0 * a) / sine)
            });
            let larger = Outline::of(moved, 0.0).unwrap();
            let (small, large) = (outline.largest(mm(1.0), mm(1.0)).unwrap(), larger.largest(mm(1.0), mm(1.0)).unwrap());
            prop_assert!(large.scale >= small.scale * (1.0 - 1e-12));
        }

        #[test]
        fn the_measures_give_the_corners_back(corners in block()) {
            let outline = Outline::new(measured(corners)).unwrap();
            prop_assert!(outline.closing().abs() < 1e-4);
            let angles = angles(corners).unwrap().map(|(s, c)| -c.atan2(s).to_degrees());
            for (a, b) in angles.into_iter().zip(outline.angles_off()) {
                prop_assert!(near(a, b, 1e-5));
            }
        }

        #[test]
        fn nothing_panics(six in prop::array::uniform6(any_length()), bare: bool, size in (any_length(), any_length()), at in (any::<f64>(), any::<f64>())) {
            let [top, right, bottom, left, falling, rising] = six;
            let measures = Measures {
                sides: Sides { top, right, bottom, left },
                diagonals: (!bare).then_some((falling, rising)),
            };
            if let Ok(outline) = Outline::new(measures) {
                prop_assert!(outline.skew().is_finite());
                let _ = outline.largest(size.0, size.1);
                let _ = outline.place(size.0, size.1, Some(at));
            }
        }

        #[test]
        fn nothing_panics_on_a_plain_block(w in any_length(), h in any_length(), size in (any_length(), any_length()), at in (any::<f64>(), any::<f64>())) {
            if let Ok(outline) = Outline::new(Measures::plain(w, h)) {
                let _ = outline.largest(size.0, size.1);
                let _ = outline.place(size.0, size.1, Some(at));
                let itself = outline.largest(w, h);
                prop_assert!(itself.is_some());
            }
        }
    }
}
