//! Small pictures of a face, and of a part of one.

use super::lap::Lap;
use crate::cloth::fabric::Face;
use crate::measure::in_mm;
use crate::plan::Joining;
use crate::plan::assembly::{Rect, Seam};
use crate::show::context::Context;
use crate::show::drawing::canvas::Canvas;
use crate::show::drawing::face::{bare, shown};
use crate::show::names;
use crate::show::picture::{Ink, Picture};
use crate::throw::tasks::Task;
use crate::throw::{Made, Throw};

/// Side of a square in a small picture of a face.
const CELL: f64 = 10.0;
/// Most squares of one.
const MOST_SMALL: u16 = 144;

/// A face, small; large grids show every second or third square.
pub(in crate::show) fn thumbnail(throw: &Throw, face: Face, context: Context<'_>) -> Picture {
    let mut d = Canvas::default();
    let (across, down) = small(throw);
    let (width, height) = (f64::from(across) * CELL, f64::from(down) * CELL);
    squares(&mut d, throw, face, [0.0, 0.0, width, height]);
    let key = match face {
        Face::Front => "picture-front",
        Face::Back => "picture-back",
    };
    d.picture(
        [width, height],
        CELL / 2.0,
        say!(context, key, name = throw.name.as_str()),
    )
}

/// Every how many squares one is drawn where there is little room.
fn sparse(throw: &Throw) -> u16 {
    let (across, down) = (throw.plan.across, throw.plan.down);
    (1..)
        .find(|s| across.div_ceil(*s) * down.div_ceil(*s) <= MOST_SMALL)
        .unwrap_or(1)
}

/// Squares across and down of a small picture.
fn small(throw: &Throw) -> (u16, u16) {
    let step = sparse(throw);
    (
        throw.plan.across.div_ceil(step),
        throw.plan.down.div_ceil(step),
    )
}

/// How the squares of a joined piece lie over one another, across or down.
#[derive(Clone, Copy, Default)]
struct Lapped {
    /// How far each lies over the next.
    lap: f64,
    /// How it is made, where it is lapped.
    made: Option<Made>,
    /// It is stitched.
    sewn: bool,
}

/// How the squares of a piece are lapped, across and down; seams lie edge to edge.
fn lapped(throw: &Throw, piece: Rect) -> [Lapped; 2] {
    let mut out = [Lapped::default(); 2];
    let mut next = Some(piece);
    while let Some(join) = next.and_then(|piece| throw.assembly().join(piece)) {
        let made = throw.made(join.whole);
        let way = usize::from(join.seam == Seam::Level);
        if throw.begun(join.whole) && made.joining == Joining::Lapped {
            out[way] = Lapped {
                lap: in_mm(made.lap),
                made: Some(made),
                sewn: throw.has(join.whole, Task::Stitch),
            };
        }
        next = Some(join.first);
    }
    out
}

/// The squares `near` of a piece, each in the cloth it shows on the front, the left and upper
/// ones over the others where they are lapped, with the edges beneath, their fringe and the rows of
/// stitches that hold them.
pub(super) fn part(
    d: &mut Canvas,
    throw: &Throw,
    piece: Rect,
    near: Rect,
    [x, y, w, h]: [f64; 4],
    ink: Ink,
) {
    let [across, down] = lapped(throw, piece);
    // So long is a square in the picture, so far the next begins after it, and so wide the lap.
    let place = |room: f64, count: u16, lapped: Lapped| {
        let (side, count) = (in_mm(throw.plan.side), f64::from(count));
        let scale = room / (side * count - lapped.lap * (count - 1.0));
        let (long, lap) = (side * scale, lapped.lap * scale);
        (long, long - lap, lap)
    };
    let (cw, next_x, lap_x) = place(w, near.cols, across);
    let (ch, next_y, lap_y) = place(h, near.rows, down);
    let mut squares: Vec<Rect> = near.squares().collect();
    // What is drawn later lies over it.
    squares.reverse();
    for square in squares {
        let sx = x + f64::from(square.col - near.col) * next_x;
        let sy = y + f64::from(square.row - near.row) * next_y;
        let label = Some(names::square(square));
        clad(
            d,
            throw,
            (square, Face::Front),
            [sx, sy, cw, ch],
            ink,
            label,
        );
    }
    let upright = (1..near.cols).map(|n| Lap {
        from: x + f64::from(n) * next_x,
        along: y,
        wide: lap_x,
        long: h,
        upright: true,
    });
    let level = (1..near.rows).map(|n| Lap {
        from: y + f64::from(n) * next_y,
        along: x,
        wide: lap_y,
        long: w,
        upright: false,
    });
    let upright = upright.map(|lap| (lap, across));
    for (lap, lapped) in upright.chain(level.map(|lap| (lap, down))) {
        let Some(made) = lapped.made else { continue };
        lap.beneath(d);
        lap.fringe(d);
        if lapped.sewn {
            lap.stitching(d, made);
        }
    }
}

/// A face of a square in the cloth it shows; round a patch its denim shows.
pub(super) fn clad(
    d: &mut Canvas,
    throw: &Throw,
    (square, face): (Rect, Face),
    at: [f64; 4],
    ink: Ink,
    label: Option<String>,
) {
    let cloth = Some(shown(throw, square, face));
    let Some(patch) = throw.patch_on(square, face) else {
        d.named_area(at, ink, cloth, label);
        return;
    };
    d.named_area(at, ink, Some(bare(throw, square, face)), None);
    let part = in_mm(patch) / in_mm(throw.plan.side).max(1e-3);
    let [x, y, w, h] = at;
    let (wide, high) = (w * part, h * part);
    let inside = [x + (w - wide) / 2.0, y + (h - high) / 2.0, wide, high];
    d.named_area(inside, Ink::Denim, cloth, label);
}

/// The squares of a face as it is seen, within a frame.
pub(super) fn squares(d: &mut Canvas, throw: &Throw, face: Face, [x, y, w, h]: [f64; 4]) {
    let step = sparse(throw);
    let (across, down) = small(throw);
    let (cw, ch) = (w / f64::from(across), h / f64::from(down));
    for row in 0..down {
        for col in 0..across {
            let square = Rect::square(row * step, col * step);
            let seen = match face {
                Face::Front => col,
                Face::Back => across - 1 - col,
            };
            let at = [x + f64::from(seen) * cw, y + f64::from(row) * ch, cw, ch];
            match throw.has(square, Task::Cut) {
                true => clad(d, throw, (square, face), at, Ink::Denim, None),
                // What is not cut has no cloth of its own, but its print is chosen.
                false => {
                    let print = throw.cover(square).on(face);
                    let print = print.map(|_| shown(throw, square, face));
                    d.named_area(at, Ink::Blank, print, None);
                }
            }
        }
    }
}
