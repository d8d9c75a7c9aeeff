//! Seams to be opened.

use super::small::clad;
use crate::cloth::fabric::Face;
use crate::plan::assembly::Rect;
use crate::show::drawing::canvas::Canvas;
use crate::show::names;
use crate::show::picture::{Ink, Picture};
use crate::throw::Throw;
use crate::throw::tasks::Task;

/// Seams to be opened round a piece: the squares near it, an empty gap along each
/// seam; a square that is taken out stands out.
pub(in crate::show) fn opened(
    throw: &Throw,
    centre: Rect,
    square: Option<Rect>,
    seams: &[Rect],
    spoken: String,
) -> Picture {
    const CELL: f64 = 20.0;
    const GAP: f64 = 2.0;
    let mut d = Canvas::default();
    let whole = throw.assembly().whole();
    let (row, col) = (centre.row.saturating_sub(1), centre.col.saturating_sub(1));
    let near = Rect {
        row,
        col,
        rows: (centre.row + centre.rows + 1).min(whole.rows) - row,
        cols: (centre.col + centre.cols + 1).min(whole.cols) - col,
    };
    let (x, y) = (
        |c: u16| (f64::from(c) - f64::from(near.col)) * CELL,
        |r: u16| (f64::from(r) - f64::from(near.row)) * CELL,
    );
    let out = |s: &Rect| Some(*s) == square;
    for place in near.squares().filter(|s| !out(s)).chain(square) {
        let at = [x(place.col), y(place.row), CELL, CELL];
        if !out(&place) && throw.has(place, Task::Cut) {
            let label = Some(names::square(place));
            clad(&mut d, throw, (place, Face::Front), at, Ink::Denim, label);
        } else {
            let ink = if out(&place) { Ink::Now } else { Ink::Blank };
            d.labelled(at, ink, names::square(place));
        }
    }
    for seam in seams {
        let from = (x(seam.col).max(0.0), y(seam.row).max(0.0));
        let to = (
            x(seam.col + seam.cols).min(x(near.col + near.cols)),
            y(seam.row + seam.rows).min(y(near.row + near.rows)),
        );
        let half = |flat: bool| if flat { GAP / 2.0 } else { 0.0 };
        let (across, down) = (half(seam.cols == 0), half(seam.rows == 0));
        let area = [
            from.0 - across,
            from.1 - down,
            to.0 - from.0 + across * 2.0,
            to.1 - from.1 + down * 2.0,
        ];
        d.area(area, Ink::Blank);
        d.line([from.0, from.1, to.0, to.1], Ink::Cut);
    }
    d.picture(
        [x(near.col + near.cols), y(near.row + near.rows)],
        CELL / 2.0,
        spoken,
    )
}
