//! One face of a throw as it is seen, square by square: for the window, for the printed
//! sheet, for a file of its own, and for layouts that are only previewed.
//!
//! Every drawing of a face begins with a [`FaceMap`], so that they cannot differ in what a
//! square shows. Turned over like a page, left and right change places, and so does the
//! side of the denim that shows.

use super::canvas::Canvas;
use super::letters::n;
use super::tiles::{of_denim, of_print};
use crate::cloth::fabric::{Cover, Denim, Face, Print};
use crate::cloth::letters::letters_of;
use crate::faces::spread::mirrored;
use crate::measure::{Length, in_mm};
use crate::plan::assembly::{Join, Rect, Seam};
use crate::show::picture::{DrawnCloth, Ink, Picture};
use crate::throw::Throw;
use serde::Serialize;
use std::collections::BTreeSet;
use std::ops::Range;

/// Bare denim where the throw lists none.
const BARE: &str = "#3a5788";

/// What a square shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub(in crate::show) enum ClothShown {
    /// A print of the throw's list.
    Print(u8),
    /// Bare denim.
    Denim {
        /// Which of the throw's list.
        n: u8,
        /// Its wrong side.
        wrong: bool,
    },
}

impl ClothShown {
    /// What a square with this cover shows on a face, of so many prints.
    pub(in crate::show) fn of(cover: Cover, face: Face, prints: usize) -> ClothShown {
        match cover.on(face).filter(|p| usize::from(*p) < prints) {
            Some(print) => ClothShown::Print(print),
            None => ClothShown::Denim {
                n: cover.denim,
                // Turned over, the other side of the cloth shows.
                wrong: cover.wrong_side_up != (face == Face::Back),
            },
        }
    }

    /// Whether it is the wrong side of a denim.
    pub(in crate::show) fn is_wrong(self) -> bool {
        matches!(self, ClothShown::Denim { wrong: true, .. })
    }

    /// How it is drawn.
    pub(in crate::show) fn cloth(self, prints: &[Print], denims: &[Denim]) -> DrawnCloth {
        match self {
            ClothShown::Print(p) => {
                let print = prints.get(usize::from(p));
                DrawnCloth {
                    colour: sound(print.map(|print| &*print.colour)),
                    tile: print.and_then(|print| of_print(print.texture)),
                    photo: print.and_then(|print| print.photo.clone()),
                }
            }
            ClothShown::Denim { n, wrong } => DrawnCloth {
                colour: sound(denims.get(usize::from(n)).map(|denim| &*denim.colour)),
                tile: Some(of_denim(n, wrong)),
                photo: None,
            },
        }
    }
}

/// A colour; what else an old file may hold is none.
fn sound(colour: Option<&str>) -> String {
    let hex = |c: &&str| {
        c.len() == 7 && c.starts_with('#') && c[1..].chars().all(|c| c.is_ascii_hexdigit())
    };
    colour.filter(hex).unwrap_or(BARE).to_string()
}

/// A cloth of the throw as it is drawn on a face of a square, or as it lies bare.
pub(in crate::show) fn shown(throw: &Throw, square: Rect, face: Face) -> DrawnCloth {
    let shown = ClothShown::of(throw.cover(square), face, throw.prints.len());
    shown.cloth(&throw.prints, &throw.denims)
}

/// The denim of a square, without its cover.
pub(in crate::show) fn bare(throw: &Throw, square: Rect, face: Face) -> DrawnCloth {
    let bare = throw.cover(square).with(face, None);
    ClothShown::of(bare, face, 0).cloth(&throw.prints, &throw.denims)
}

/// The binding is of denim, its right side out.
pub(in crate::show) fn binding(throw: &Throw) -> DrawnCloth {
    let denim = ClothShown::Denim { n: 0, wrong: false };
    denim.cloth(&throw.prints, &throw.denims)
}

/// A square where it lies in the picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub(in crate::show) struct LaidSquare {
    /// Its place as seen from the front.
    pub(in crate::show) square: Rect,
    /// Column in the picture, from the left.
    pub(in crate::show) x: u16,
    /// Row in the picture.
    pub(in crate::show) y: u16,
    /// What it shows.
    pub(in crate::show) shown: ClothShown,
    /// The denim it is of, as it shows round a patch.
    pub(in crate::show) beneath: ClothShown,
    /// It is pieced of two halves.
    pub(in crate::show) pieced: bool,
    /// How much of its side a patch on it takes, in thousandths; all of it where its fabric is as
    /// large as the square.
    pub(in crate::show) part: u16,
}

impl LaidSquare {
    /// Whether its denim shows round its fabric.
    fn patched(&self) -> bool {
        self.part < 1000
    }
}

/// Where squares lie in a drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::show) struct FaceGrid {
    /// The upper left corner of the first.
    pub(in crate::show) at: [f64; 2],
    /// The side of each.
    pub(in crate::show) cell: f64,
}

impl FaceGrid {
    /// Squares of one by one from the top left.
    pub(in crate::show) const UNIT: FaceGrid = FaceGrid {
        at: [0.0, 0.0],
        cell: 1.0,
    };

    /// A point measured in squares.
    pub(in crate::show) fn point(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        [self.at[0] + x * self.cell, self.at[1] + y * self.cell]
    }

    /// A point in a square, in parts of its side.
    pub(in crate::show) fn spot(&self, laid: &LaidSquare, [x, y]: [f64; 2]) -> [f64; 2] {
        self.point([f64::from(laid.x) + x, f64::from(laid.y) + y])
    }
}

/// One cloth of a face.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(in crate::show) struct FaceDrawing {
    /// Which.
    pub(in crate::show) shown: ClothShown,
    /// How it is drawn.
    pub(in crate::show) cloth: DrawnCloth,
    /// Its letters; no two of a throw are alike.
    pub(in crate::show) letters: String,
}

/// A face, or a part of one, as it is seen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(in crate::show) struct FaceMap {
    /// Columns.
    pub(in crate::show) across: u16,
    /// Rows.
    pub(in crate::show) down: u16,
    /// The squares, row by row.
    pub(in crate::show) squares: Vec<LaidSquare>,
    /// The cloths that show, prints before denims.
    pub(in crate::show) kinds: Vec<FaceDrawing>,
}

impl FaceMap {
    /// A whole face.
    pub(in crate::show) fn of(throw: &Throw, face: Face) -> FaceMap {
        FaceMap::with(throw, throw.covers(), face)
    }

    /// A whole face, were its squares covered like this.
    pub(in crate::show) fn with(throw: &Throw, covers: &[Cover], face: Face) -> FaceMap {
        let (across, down) = (throw.plan.across, throw.plan.down);
        let seen = Rect::grid(across, down).squares().map(|seen| {
            let square = match face {
                Face::Front => seen,
                Face::Back => mirrored(seen, across),
            };
            let place = usize::from(square.row) * usize::from(across) + usize::from(square.col);
            (seen, square, covers.get(place).copied().unwrap_or_default())
        });
        FaceMap::new(throw, face, [across, down], seen)
    }

    /// Some squares, front up.
    pub(in crate::show) fn within(throw: &Throw, area: Rect) -> FaceMap {
        let seen = area.squares().map(|square| {
            let seen = Rect::square(square.row - area.row, square.col - area.col);
            (seen, square, throw.cover(square))
        });
        FaceMap::new(throw, Face::Front, [area.cols, area.rows], seen)
    }

    fn new(
        throw: &Throw,
        face: Face,
        [across, down]: [u16; 2],
        seen: impl Iterator<Item = (Rect, Rect, Cover)>,
    ) -> FaceMap {
        let side = in_mm(throw.plan.side).max(1e-3);
        let part = |patch: Length| (in_mm(patch) / side * 1000.0).clamp(0.0, 1000.0) as u16;
        let squares: Vec<LaidSquare> = seen
            .map(|(seen, square, cover)| LaidSquare {
                square,
                x: seen.col,
                y: seen.row,
                shown: ClothShown::of(cover, face, throw.prints.len()),
                beneath: ClothShown::of(cover.with(face, None), face, 0),
                pieced: throw.is_pieced(square),
                part: throw.patch_of(square, face, &cover).map_or(1000, part),
            })
            .collect();
        let there: BTreeSet<ClothShown> = squares
            .iter()
            .flat_map(|laid| [Some(laid.shown), laid.patched().then_some(laid.beneath)])
            .flatten()
            .collect();
        let letters = Letters::of(throw);
        let kinds = there.into_iter().map(|shown| FaceDrawing {
            shown,
            cloth: shown.cloth(&throw.prints, &throw.denims),
            letters: letters.on(shown),
        });
        let kinds = kinds.collect();
        FaceMap {
            across,
            down,
            squares,
            kinds,
        }
    }

    /// The part of some columns and rows, counted as they are seen.
    pub(in crate::show) fn part(&self, columns: &Range<u16>, rows: &Range<u16>) -> FaceMap {
        let inside = |laid: &&LaidSquare| columns.contains(&laid.x) && rows.contains(&laid.y);
        let squares = self.squares.iter().filter(inside).map(|laid| LaidSquare {
            x: laid.x - columns.start,
            y: laid.y - rows.start,
            ..*laid
        });
        FaceMap {
            across: columns.end - columns.start,
            down: rows.end - rows.start,
            squares: squares.collect(),
            kinds: self.kinds.clone(),
        }
    }

    /// The squares that show one cloth.
    pub(in crate::show) fn showing(&self, shown: ClothShown) -> impl Iterator<Item = &LaidSquare> {
        self.squares.iter().filter(move |laid| laid.shown == shown)
    }

    /// Every square in its cloth, one shape to a cloth.
    pub(in crate::show) fn paint(&self, d: &mut Canvas, grid: &FaceGrid) {
        let side = n(grid.cell);
        let square = format!("h{side}v{side}h-{side}z");
        let corner = |laid: &LaidSquare| grid.spot(laid, [0.0, 0.0]);
        for kind in &self.kinds {
            let whole = self.showing(kind.shown).filter(|laid| !laid.patched());
            let at = whole.map(corner).collect();
            d.stamp(&square, at, Ink::Cloth, Some(kind.cloth.clone()));
        }
        for kind in &self.kinds {
            let patched = || self.showing(kind.shown).filter(|laid| laid.patched());
            // The denim that shows round them, and then the patches.
            for round in &self.kinds {
                let own = patched().filter(|laid| laid.beneath == round.shown);
                let at = own.map(corner).collect();
                d.stamp(&square, at, Ink::Cloth, Some(round.cloth.clone()));
            }
            let parts: BTreeSet<u16> = patched().map(|laid| laid.part).collect();
            for thousandths in parts {
                let part = f64::from(thousandths) / 1000.0;
                let (side, edge) = (n(grid.cell * part), (1.0 - part) / 2.0);
                let patch = format!("h{side}v{side}h-{side}z");
                let own = patched().filter(|laid| laid.part == thousandths);
                let at: Vec<_> = own.map(|laid| grid.spot(laid, [edge, edge])).collect();
                d.stamp(&patch, at.clone(), Ink::Cloth, Some(kind.cloth.clone()));
                d.stamp(&patch, at, Ink::Edge, None);
            }
        }
    }

    /// The edges between all squares.
    pub(in crate::show) fn edges(&self, d: &mut Canvas, grid: &FaceGrid) {
        let [x, y] = grid.at;
        let [right, low] = grid.point([self.across, self.down].map(f64::from));
        let upright = (0..=self.across).map(|col| {
            let [at, _] = grid.point([f64::from(col), 0.0]);
            format!("M{} {}V{}", n(at), n(y), n(low))
        });
        let level = (0..=self.down).map(|row| {
            let [_, at] = grid.point([0.0, f64::from(row)]);
            format!("M{} {}H{}", n(x), n(at), n(right))
        });
        d.shape(upright.chain(level).collect(), Ink::Edge, None);
    }

    /// The letters of each print in the middle of its squares, or so far below it, of a size
    /// measured in squares.
    pub(in crate::show) fn letters(&self, d: &mut Canvas, grid: &FaceGrid, size: f64, low: f64) {
        let prints = |shown: ClothShown| matches!(shown, ClothShown::Print(_));
        self.lettered(d, grid, size, low, Ink::Letters, prints);
        // What is pieced of two halves has its mark, whatever lies on it.
        let pieced = self.squares.iter().filter(|laid| laid.pieced);
        for (ink, print) in [(Ink::Letters, true), (Ink::Bare, false)] {
            let own = pieced.clone().filter(|laid| prints(laid.shown) == print);
            let at = own.map(|laid| grid.spot(laid, [0.17, 0.83]));
            d.letters("½", 0.22 * grid.cell, at.collect(), ink);
        }
    }

    /// The letters of each denim, where there is more than one to tell apart.
    pub(in crate::show) fn denim_letters(&self, d: &mut Canvas, grid: &FaceGrid, size: f64) {
        let denims = |shown: ClothShown| matches!(shown, ClothShown::Denim { .. });
        self.lettered(d, grid, size, 0.0, Ink::Bare, denims);
    }

    fn lettered(
        &self,
        d: &mut Canvas,
        grid: &FaceGrid,
        size: f64,
        low: f64,
        ink: Ink,
        wanted: impl Fn(ClothShown) -> bool,
    ) {
        for kind in self.kinds.iter().filter(|kind| wanted(kind.shown)) {
            // Longer ones are a little smaller.
            let size = size
                * if kind.letters.chars().count() > 2 {
                    0.75
                } else {
                    1.0
                };
            let at = self
                .showing(kind.shown)
                .map(|l| grid.spot(l, [0.5, 0.5 + low]));
            if !kind.letters.is_empty() {
                d.letters(&kind.letters, size * grid.cell, at.collect(), ink);
            }
        }
    }

    /// A point in each square that something is true of, in squares.
    pub(in crate::show) fn spots(
        &self,
        spot: [f64; 2],
        holds: impl Fn(&LaidSquare) -> bool,
    ) -> Vec<[f64; 2]> {
        let squares = self.squares.iter().filter(|laid| holds(laid));
        squares
            .map(|laid| FaceGrid::UNIT.spot(laid, spot))
            .collect()
    }
}

/// Letters for every cloth of a throw.
pub(in crate::show) struct Letters {
    prints: Vec<String>,
    denims: Vec<String>,
}

impl Letters {
    pub(in crate::show) fn of(throw: &Throw) -> Letters {
        let prints = throw.letters().to_vec();
        let denims = throw.denims.iter().map(|denim| &*denim.name);
        let mut denims = letters_of(denims, &prints);
        if let [only] = &mut denims[..] {
            only.clear();
        }
        Letters { prints, denims }
    }

    /// Those of what a square shows; none for the only denim.
    pub(in crate::show) fn on(&self, shown: ClothShown) -> String {
        let (list, n) = match shown {
            ClothShown::Print(n) => (&self.prints, n),
            ClothShown::Denim { n, .. } => (&self.denims, n),
        };
        list.get(usize::from(n)).cloned().unwrap_or_default()
    }
}

/// A square of a throw's cloth with its letters; of several cloths each has its share.
pub(in crate::show) fn swatch(throw: &Throw, all: &[ClothShown], letters: &str) -> Picture {
    const SIDE: f64 = 10.0;
    let mut d = Canvas::default();
    let wide = SIDE / all.len().max(1) as f64;
    for (i, shown) in all.iter().enumerate() {
        let cloth = shown.cloth(&throw.prints, &throw.denims);
        let area = [i as f64 * wide, 0.0, wide, SIDE];
        d.named_area(area, Ink::Denim, Some(cloth), None);
    }
    let size = if letters.chars().count() > 2 {
        2.4
    } else {
        3.2
    };
    if !letters.is_empty() {
        d.letters(letters, size, vec![[SIDE / 2.0; 2]], Ink::Letters);
    }
    d.picture([SIDE, SIDE], SIDE * 0.6, String::new())
}

/// Joins as lines in squares from the top left of the picture of a face, or of a part of the
/// front: those that are wanted, cut off at the part's edge.
pub(in crate::show) fn joins(
    throw: &Throw,
    face: Face,
    area: Option<Rect>,
    wanted: impl Fn(&Join) -> bool,
) -> Vec<[u16; 4]> {
    let across = throw.plan.across;
    let area = area.unwrap_or_else(|| throw.assembly().whole());
    let (left, top) = (area.col, area.row);
    let (right, bottom) = (left + area.cols, top + area.rows);
    let line = |join: &Join| {
        // The seam as a line, measured from the front.
        let s = join.second;
        let [x1, y1, x2, y2] = match join.seam {
            Seam::Upright => [s.col, s.row, s.col, s.row + s.rows],
            Seam::Level => [s.col, s.row, s.col + s.cols, s.row],
        };
        let (x1, x2) = (x1.clamp(left, right), x2.clamp(left, right));
        let (y1, y2) = (y1.clamp(top, bottom), y2.clamp(top, bottom));
        let inside = match join.seam {
            Seam::Upright => (left..=right).contains(&s.col) && y1 < y2,
            Seam::Level => (top..=bottom).contains(&s.row) && x1 < x2,
        };
        inside.then_some(match face {
            Face::Front => [x1 - left, y1 - top, x2 - left, y2 - top],
            Face::Back => [across - x2, y1 - top, across - x1, y2 - top],
        })
    };
    let joins = throw.assembly().joins().iter();
    joins.filter(|join| wanted(join)).filter_map(line).collect()
}

/// Lines as a path, each a part of a square short of its ends.
pub(in crate::show) fn lines(lines: &[[u16; 4]], grid: &FaceGrid, short: f64) -> String {
    let d = |line: &[u16; 4]| {
        let [x1, y1, x2, y2] = line.map(f64::from);
        let (dx, dy) = if x1 == x2 { (0.0, short) } else { (short, 0.0) };
        let ([x1, y1], [x2, y2]) = (
            grid.point([x1 + dx, y1 + dy]),
            grid.point([x2 - dx, y2 - dy]),
        );
        format!("M{} {}L{} {}", n(x1), n(y1), n(x2), n(y2))
    };
    lines.iter().map(d).collect()
}

/// The outline of each of some pieces, drawn in by a part of a square.
pub(in crate::show) fn borders(pieces: &[Rect], grid: &FaceGrid, short: f64) -> String {
    let d = |piece: &Rect| {
        let [row, col, rows, cols] = [piece.row, piece.col, piece.rows, piece.cols].map(f64::from);
        let [x, y] = grid.point([col + short, row + short]).map(n);
        let [w, h] = [cols, rows].map(|long| n((long - short * 2.0) * grid.cell));
        format!("M{x} {y}h{w}v{h}h-{w}z")
    };
    pieces.iter().map(d).collect()
}

/// Threads standing out of the raw edge of a rectangle, `long` at most, one at each `step`.
pub(in crate::show) fn threads([x, y, w, h]: [f64; 4], long: f64, step: f64) -> String {
    let mut d = String::new();
    // Threads of uneven length, the same each time: the sine of a number that never
    // comes round.
    let uneven = |i: u32| {
        let wave = (f64::from(i) * 2.399_963).sin();
        let lean = step * 0.3 * (f64::from(i) * 1.7).cos();
        (long * (0.72 + 0.26 * wave), lean)
    };
    let mut along = |side: f64, mark: &dyn Fn(f64, f64, f64) -> String| {
        let count = (side / step).floor().max(1.0) as u32;
        for i in 0..count {
            let (length, lean) = uneven(i);
            let at = (f64::from(i) + 0.5) * side / f64::from(count);
            d += &mark(at, length, lean);
        }
    };
    along(w, &|at, long, lean| {
        let (a, end) = (n(x + at), n(x + at + lean));
        let (up, low, down) = (n(y - long), n(y + h), n(y + h + long));
        format!("M{a} {}L{end} {up}M{a} {low}L{end} {down}", n(y))
    });
    along(h, &|at, long, lean| {
        let (a, end) = (n(y + at), n(y + at + lean));
        let (left, far, right) = (n(x - long), n(x + w), n(x + w + long));
        format!("M{} {a}L{left} {end}M{far} {a}L{right} {end}", n(x))
    });
    d
}

/// An arrow with two heads along the lengthwise grain, measured from its middle.
pub(in crate::show) fn grain(crosswise: bool, long: f64) -> String {
    let (l, all, head) = (n(long), n(long * 2.0), n(long / 2.2));
    match crosswise {
        true => format!(
            "m-{l} 0h{all}m-{head} -{head}l{head} {head} -{head} {head}\
             m-{} -{}l-{head} {head} {head} {head}",
            n(long * 2.0 - long / 1.1),
            n(long / 1.1)
        ),
        false => format!(
            "m0 -{l}v{all}m-{head} -{head}l{head} {head} {head} -{head}\
             m-{} -{}l{head} -{head} {head} {head}",
            n(long / 1.1),
            n(long * 2.0 - long / 1.1)
        ),
    }
}
