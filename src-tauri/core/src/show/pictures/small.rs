//! Small pictures of a face, and of a part of one.

use crate::cloth::fabric::Face;
use crate::plan::assembly::Rect;
use crate::show::context::Context;
use crate::show::drawing::canvas::Canvas;
use crate::show::drawing::face::{bare, shown};
use crate::show::names;
use crate::show::picture::{Ink, Picture};
use crate::throw::Throw;
use crate::throw::tasks::Task;

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

/// A part of a piece: each of its squares in the cloth it shows on the front; of many only
/// the outline.
pub(super) fn part(d: &mut Canvas, throw: &Throw, piece: Rect, [x, y, w, h]: [f64; 4], ink: Ink) {
    if piece.count() > 8 {
        let denim = (ink == Ink::Denim).then(|| bare(throw, piece, Face::Front));
        d.named_area([x, y, w, h], ink, denim, None);
        return;
    }
    let (cw, ch) = (w / f64::from(piece.cols), h / f64::from(piece.rows));
    for square in piece.squares() {
        let sx = x + f64::from(square.col - piece.col) * cw;
        let sy = y + f64::from(square.row - piece.row) * ch;
        let cloth = shown(throw, square, Face::Front);
        let label = names::square(square);
        d.named_area([sx, sy, cw, ch], ink, Some(cloth), Some(label));
    }
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
                true => d.named_area(at, Ink::Denim, Some(shown(throw, square, face)), None),
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
