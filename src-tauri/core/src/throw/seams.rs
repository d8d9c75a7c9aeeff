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
        let open = throw.is_open_in_part(join.whole);
        let is_open_here = || {
            throw
                .seams_to_unpick
                .iter()
                .any(|o| o.is_along(join.whole, piece))
        };
        if (throw.begun(join.whole) || open) && touches(join, piece) && !(open && is_open_here()) {
            let edge = size.along(join.seam);
            // Of what is opened along a part already, no more than is left.
            let left = match throw.work(join.whole).and_then(|w| w.opened) {
                Some(opened) if open => throw.size(join.whole).along(join.seam) - opened,
                _ => edge,
            };
            if left > zero() {
                out.push((join.whole, std::cmp::min(edge, left)));
            }
        }
        inner = join.whole;
    }
    out
}

impl Throw {
    /// Whether an edge of this piece is held: by a seam that is not opened all along it, or since
    /// the edge of the whole is trimmed or bound.
    pub fn is_held(&self, piece: Rect) -> bool {
        let size = [Seam::Upright, Seam::Level].map(|seam| (seam, self.size(piece).along(seam)));
        if piece == self.assembly().whole() {
            return self.is_edged();
        }
        let mut inner = piece;
        while let Some(join) = self.assembly().goes_into(inner) {
            let along = size.iter().find(|(seam, _)| *seam == join.seam);
            let closed = self.work(join.whole).is_some_and(|work| match work.opened {
                Some(opened) => along.is_some_and(|(_, along)| opened < *along),
                None => !work.done.is_empty(),
            });
            if closed && touches(join, piece) {
                return true;
            }
            inner = join.whole;
        }
        false
    }
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
