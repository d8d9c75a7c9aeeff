//! The two faces as pictures to work on.

use crate::cloth::fabric::{Cover, Denim, Face};
use crate::command::may_turn;
use crate::faces::arrange;
use crate::faces::spread::{layers, mirrored};
use crate::log::journal::Journal;
use crate::plan::assembly::{Rect, Seam};
use crate::show::context::Context;
use crate::show::names;
use crate::show::parts::{Head, Swatch, head, swatches};
use crate::show::wishes::{self, WishLine};
use crate::throw::Throw;
use crate::throw::loose::loose_units;
use crate::throw::tasks::Task;
use serde::Serialize;
use ts_rs::TS;

/// One square on a face.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct FaceCell {
    /// Its place as told from the front.
    pub piece: Rect,
    /// Column in the picture of this face, from the left.
    pub x: u16,
    /// Row in the picture.
    pub y: u16,
    /// The print shown, if covered.
    pub print: Option<u8>,
    /// The denim.
    pub denim: u8,
    /// Glued or joined, so that it stays.
    pub stays: bool,
    /// The denim's wrong side is on this face.
    pub wrong_side: bool,
    /// Its lengthwise grain runs across.
    pub crosswise: bool,
    /// Pinned to its place.
    pub pinned: bool,
    /// The loose piece it belongs to: itself, a pair or a four; none once it is joined to more.
    pub unit: Option<Rect>,
    /// The fewest quarters that piece may be turned by; 0 where it may not.
    pub turn: u8,
    /// Its label.
    pub label: String,
    /// The square in words.
    pub spoken: String,
}

/// Two squares on a face that a wish would keep apart, or unlike.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Clash {
    /// Column of one in the picture.
    pub x1: u16,
    /// Row of one.
    pub y1: u16,
    /// Column of the other.
    pub x2: u16,
    /// Row of the other.
    pub y2: u16,
}

/// A stitched line on a face, in squares from the top left of the picture.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct SewnLine {
    /// Start.
    pub x1: u16,
    /// Start.
    pub y1: u16,
    /// End.
    pub x2: u16,
    /// End.
    pub y2: u16,
}

/// One face of the throw.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct FacesView {
    /// Common to all screens.
    pub head: Head,
    /// Which face.
    pub face: Face,
    /// What it is called, and that the back is mirrored.
    pub title: String,
    /// Squares across.
    pub across: u16,
    /// Squares down.
    pub down: u16,
    /// The squares.
    pub cells: Vec<FaceCell>,
    /// Laps sewn so far.
    pub sewn: Vec<SewnLine>,
    /// The fabrics.
    pub prints: Vec<Swatch>,
    /// The denims.
    pub denims: Vec<Denim>,
    /// What there is to say of it, a line each.
    pub lines: Vec<String>,
    /// Squares that a wish would keep apart.
    pub clashes: Vec<Clash>,
    /// How well the wishes are met.
    pub wishes: Vec<WishLine>,
    /// Borders of the pieces that go as one: pairs and fours sewn already.
    pub units: Vec<Rect>,
    /// Whether this face is the stitching side, in words.
    pub stitching: String,
    /// Squares covered on the front and on the back.
    pub covered: [u32; 2],
    /// Squares in all.
    pub squares: u32,
    /// The face in words.
    pub spoken: String,
}

/// One face.
pub(super) fn faces(journal: &Journal, face: Face, context: Context<'_>) -> FacesView {
    let throw = journal.throw();
    let (across, down) = (throw.plan.across, throw.plan.down);
    let turned = |piece| match face {
        Face::Front => piece,
        Face::Back => mirrored(piece, across),
    };
    let units = loose_units(throw);
    let cells = throw
        .assembly()
        .whole()
        .squares()
        .map(|piece| {
            let (cover, shown) = (throw.cover(piece), turned(piece));
            let print = cover.on(face);
            let unit = units.iter().find(|u| u.holds(piece)).copied();
            let unit = unit.or_else(|| (!throw.is_joined(piece)).then_some(piece));
            let turns = |q: &u8| unit.is_some_and(|u| may_turn(throw, u, *q).is_ok());
            let stays =
                throw.is_joined(piece) || throw.has(piece, crate::throw::tasks::cover_task(face));
            let cloth = cloth(throw, cover, face, context);
            let pinned = throw.is_pinned(piece);
            let key = match (pinned, stays) {
                (true, _) => "cell-pinned",
                (false, true) => "cell-stays",
                (false, false) => "cell",
            };
            FaceCell {
                piece,
                x: shown.col,
                y: shown.row,
                print,
                denim: cover.denim,
                stays,
                // Turned over, the other side of the cloth shows.
                wrong_side: cover.wrong_side_up != (face == Face::Back),
                crosswise: cover.crosswise,
                pinned,
                unit,
                turn: [1, 2].into_iter().find(turns).unwrap_or(0),
                label: names::square(piece),
                spoken: say!(
                    context,
                    key,
                    piece = names::spoken(throw, piece, context),
                    cloth = cloth
                ),
            }
        })
        .collect();
    let sewn = sewn_lines(throw, face, None);
    let wishes = wishes::standing(throw);
    let score = arrange::of(throw, wishes);
    let clashes = score.alike[usize::from(face == Face::Back)]
        .iter()
        .map(|(a, b)| {
            let (a, b) = (turned(*a), turned(*b));
            Clash {
                x1: a.col,
                y1: a.row,
                x2: b.col,
                y2: b.row,
            }
        })
        .collect();
    let covered = Face::BOTH.map(|face| throw.covered(face));
    let both = throw.covers().iter().filter(|c| c.layers() == 3).count();
    let (lap, crossing) = layers(across, down, throw.covers());
    let squares = throw.plan.squares();
    let title = match face {
        Face::Front => say!(context, "face-front"),
        Face::Back => say!(context, "face-back"),
    };
    let this = covered[usize::from(face == Face::Back)];
    let mut lines = vec![
        say!(context, "face-covered", n = this, all = squares),
        say!(context, "face-both", n = both),
    ];
    if lap > 0 {
        lines.push(say!(context, "face-layers", lap = lap, crossing = crossing));
    }
    FacesView {
        head: head(journal, context),
        face,
        spoken: say!(
            context,
            "face-spoken",
            title = title.as_str(),
            across = across,
            down = down,
            n = this
        ),
        title,
        across,
        down,
        cells,
        sewn,
        prints: swatches(journal, context),
        denims: throw.denims.clone(),
        clashes,
        wishes: wishes::lines(&score, wishes, throw, context),
        units: units.iter().map(|u| turned(*u)).collect(),
        stitching: match face {
            Face::Front => say!(context, "stitching-front"),
            Face::Back => say!(context, "stitching-back"),
        },
        lines,
        covered,
        squares,
    }
}

/// What a square shows on a face, in words.
pub(super) fn cloth(throw: &Throw, cover: Cover, face: Face, context: Context<'_>) -> String {
    let print = cover
        .on(face)
        .and_then(|p| throw.prints.get(usize::from(p)));
    match print {
        Some(print) => print.name.clone(),
        None if cover.wrong_side_up != (face == Face::Back) => say!(context, "bare-wrong-side"),
        None => say!(context, "bare"),
    }
}

/// Laps stitched so far, in squares of the picture of a face, or of a part of the front.
pub(super) fn sewn_lines(throw: &Throw, face: Face, area: Option<Rect>) -> Vec<SewnLine> {
    let across = throw.plan.across;
    let area = area.unwrap_or_else(|| throw.assembly().whole());
    let joins = throw.assembly().joins().iter();
    joins
        .filter(|j| throw.has(j.whole, Task::Stitch))
        .filter_map(|j| {
            // The seam as a line, told from the front, cut off at the area.
            let s = j.second;
            let (mut x1, mut y1, mut x2, mut y2) = match j.seam {
                Seam::Upright => (s.col, s.row, s.col, s.row + s.rows),
                Seam::Level => (s.col, s.row, s.col + s.cols, s.row),
            };
            let (left, top) = (area.col, area.row);
            let (right, bottom) = (left + area.cols, top + area.rows);
            (x1, x2) = (x1.clamp(left, right), x2.clamp(left, right));
            (y1, y2) = (y1.clamp(top, bottom), y2.clamp(top, bottom));
            let inside = match j.seam {
                Seam::Upright => (left..=right).contains(&s.col) && y1 < y2,
                Seam::Level => (top..=bottom).contains(&s.row) && x1 < x2,
            };
            if face == Face::Back {
                (x1, x2) = (across - x2, across - x1);
            }
            inside.then_some(SewnLine {
                x1: x1 - left * u16::from(face == Face::Front),
                y1: y1 - top,
                x2: x2 - left * u16::from(face == Face::Front),
                y2: y2 - top,
            })
        })
        .collect()
}
