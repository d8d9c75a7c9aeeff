//! The seams round a piece, and how long they are.

use crate::measure::{Length, zero};
use crate::plan::assembly::{Assembly, Join, Rect, Seam};
use crate::throw::facts::Size;
use crate::throw::state::Throw;

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
            out.push((join.whole, size.along(join.seam)));
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

/// The seams of a throw, given how large each joined piece is: how many, and how long together.
pub fn runs(assembly: &Assembly, size: impl Fn(Rect) -> Size) -> (usize, Length) {
    let joins = assembly.joins();
    let along = joins.iter().map(|join| size(join.whole).along(join.seam));
    (joins.len(), along.fold(zero(), |sum, seam| sum + seam))
}

impl Throw {
    /// Seams of the throw, those sewn as they are, the others as they will be: how many, and
    /// how long together.
    pub fn runs(&self) -> (usize, Length) {
        runs(&self.assembly, |piece| self.size(piece))
    }
}
