//! The two faces as pictures to work on.

use crate::cloth::fabric::{Cover, Denim, Face};
use crate::command::may_turn_if;
use crate::faces::arrange;
use crate::faces::spread::{mirrored, thickest};
use crate::log::journal::Journal;
use crate::plan::assembly::Rect;
use crate::show::context::Context;
use crate::show::drawing::face_window::Worked;
use crate::show::names;
use crate::show::parts::{Head, Swatch, head, swatches};
use crate::show::picture::{InkKey, Picture};
use crate::show::wishes::{self, WishLine};
use crate::throw::Throw;
use crate::throw::loose::Holds;
use crate::types::TS;
use serde::Serialize;

/// One square on a face.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct FaceCell {
    /// Its place as seen from the front.
    pub piece: Rect,
    /// Column in the picture of this face, from the left.
    pub x: u16,
    /// Row in the picture.
    pub y: u16,
    /// Pinned to its place.
    pub pinned: bool,
    /// The loose piece it belongs to: itself, a pair or a four; none once it is joined to more.
    pub unit: Option<Rect>,
    /// It is sewn in and bare on this face: fabric can only be laid on it.
    pub sewn_bare: bool,
    /// No fabric can be chosen for it on this face: its own is glued, or it is sewn in.
    pub fixed: bool,
    /// The fewest quarters that piece may be turned by; 0 where it may not.
    pub turn: u8,
    /// Its label.
    pub label: String,
    /// The square in words.
    pub spoken: String,
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
    /// What is painted, a square to a unit.
    pub picture: Picture,
    /// What the signs in it mean, those that are there.
    pub signs: Vec<InkKey>,
    /// The fabrics.
    pub prints: Vec<Swatch>,
    /// The denims.
    pub denims: Vec<Denim>,
    /// Remarks about it, a line each.
    pub lines: Vec<String>,
    /// How well the wishes are met.
    pub wishes: Vec<WishLine>,
    /// How fabric comes onto squares that are sewn in, in words; none where they are too small.
    pub laid_on: Option<String>,
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
    let holds = Holds::of(throw);
    let units = holds.units();
    let mut unit_at = vec![None; throw.plan.squares() as usize];
    for unit in &units {
        for n in unit.squares().filter_map(|s| throw.assembly().number(s)) {
            unit_at[n] = Some(*unit);
        }
    }
    let cells = throw
        .assembly()
        .whole()
        .squares()
        .map(|piece| {
            let (cover, shown) = (throw.cover(piece), turned(piece));
            let number = throw.assembly().number(piece);
            let joined = holds.is_joined(piece);
            let unit = number.and_then(|n| unit_at[n]);
            let unit = unit.or_else(|| (!joined).then_some(piece));
            let may = |u: Rect, q| may_turn_if(throw, u, q, || holds.is_loose(u)).is_ok();
            let turns = |q: &u8| unit.is_some_and(|u| may(u, *q));
            let glued = throw.has(piece, crate::throw::tasks::cover_task(face));
            let stays = joined || glued;
            let sewn_bare = joined && cover.on(face).is_none();
            let takes_laid_on = throw.laid_on(piece, face).is_some()
                || (sewn_bare && throw.plan.laid_on().is_some());
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
                pinned,
                unit,
                sewn_bare,
                fixed: glued || (joined && !takes_laid_on),
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
    let wishes = wishes::standing(throw);
    let score = arrange::of(throw, wishes);
    let clashes: Vec<(Rect, Rect)> = score.alike[face.index()]
        .iter()
        .map(|(a, b)| (turned(*a), turned(*b)))
        .collect();
    let seen: Vec<Rect> = units.iter().map(|u| turned(*u)).collect();
    let worked = Worked {
        throw,
        face,
        units: &seen,
        clashes: &clashes,
    };
    let covered = Face::BOTH.map(|face| throw.covered(face));
    let laid_on = throw.plan.laid_on().map(|side| {
        let side = context.by(side, side);
        say!(context, "face-laid-on", side = side)
    });
    let both = throw.covers().iter().filter(|c| c.layers() == 3).count();
    let (lap, _, crossing) = thickest(throw);
    let squares = throw.plan.squares();
    let title = match face {
        Face::Front => say!(context, "face-front"),
        Face::Back => say!(context, "face-back"),
    };
    let this = covered[face.index()];
    let mut lines = vec![
        say!(context, "face-covered", n = this, all = squares),
        say!(context, "face-both", n = both),
    ];
    let patches = throw.small_patches();
    if patches > 0 {
        lines.push(say!(context, "face-patches", n = patches));
    }
    let pieced = throw.pieced_placed();
    if pieced > 0 {
        lines.push(say!(context, "face-pieced", n = pieced));
    }
    if lap > 0 {
        lines.push(say!(context, "face-layers", lap = lap, crossing = crossing));
    }
    let spoken = say!(
        context,
        "face-spoken",
        title = title.as_str(),
        across = across,
        down = down,
        n = this
    );
    FacesView {
        head: head(journal, context),
        face,
        picture: worked.picture(spoken.clone(), context),
        signs: worked.signs(context),
        spoken,
        title,
        across,
        down,
        cells,
        prints: swatches(journal, context),
        denims: throw.denims.clone(),
        wishes: wishes::lines_now(&score, wishes, throw, context),
        laid_on,
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
