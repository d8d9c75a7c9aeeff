//! The seams round a piece, and the narrowest lap they may have.

use crate::measure::Length;
use crate::plan::assembly::{Join, Rect, Seam};
use crate::throw::state::Throw;

/// The narrowest lap a join may have: what leaves the least fringe, or the plan's own
/// lap where that is narrower still.
pub fn least_lap(throw: &Throw) -> Length {
    std::cmp::min(throw.plan.narrowest_lap(), throw.plan.lap_between())
}

/// Whether the seam of `join` runs along an edge of `piece`.
fn touches(join: &Join, piece: Rect) -> bool {
    match join.seam {
        Seam::Upright => piece.col == join.second.col || piece.col + piece.cols == join.second.col,
        Seam::Level => piece.row == join.second.row || piece.row + piece.rows == join.second.row,
    }
}

/// The begun joins round `piece` that must be opened to take it out, innermost first,
/// each with the length to open: the edge of the piece that lies along it.
pub fn round(throw: &Throw, piece: Rect) -> Vec<(Rect, Length)> {
    let mut out = Vec::new();
    let size = throw.size(piece);
    let mut inner = piece;
    while let Some(join) = throw.assembly().goes_into(inner) {
        if throw.begun(join.whole) && touches(join, piece) {
            let along = match join.seam {
                Seam::Upright => size.height,
                Seam::Level => size.width,
            };
            out.push((join.whole, along));
        }
        inner = join.whole;
    }
    out
}

/// The largest joined pieces there really are within a piece.
pub(crate) fn made_in(throw: &Throw, piece: Rect) -> Vec<Rect> {
    let Some(join) = throw.assembly().join(piece) else {
        return Vec::new();
    };
    if throw.begun(piece) {
        return vec![piece];
    }
    let mut parts = made_in(throw, join.first);
    parts.extend(made_in(throw, join.second));
    parts
}
