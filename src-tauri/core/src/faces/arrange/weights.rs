//! How much one thing is worth against another: our judgement.

use crate::throw::wishes::Apart;

/// Weight of evenness, for each covered square at chance level.
pub(super) const EVEN: i64 = 1000;

/// The same for each print by itself.
pub(super) const EVEN_PRINT: i64 = 400;

/// For each crossing, times the square of its fabrics.
pub(super) const THICK: i64 = 45;

/// For each fabric beyond those that may meet at one crossing. As much as for two like
/// fabrics that touch, so that one wish is not given up for the other.
pub(super) const TOO_THICK: i64 = 2500;

/// For each neighbour or square against the grain.
pub(super) const AGAINST: i64 = 250;

/// For each two mirrored squares that differ.
pub(super) const UNLIKE: i64 = 1500;

/// For each step of shade out of order.
pub(super) const SHADE: i64 = 8;

/// For each face and each two squares side by side that show the same denim on it, where like
/// denims are to be apart. Even, so that it can be halved.
pub(super) const DENIM_TOUCHES: i64 = 300;

/// For each two squares side by side of different denims, where like denims are to lie
/// together. Even likewise.
pub(super) const DENIM_BORDER: i64 = 400;

/// A shade so far from the wished one is out of the pattern.
pub(super) const SHADE_OFF: i64 = 24;

/// For two that share an edge, and two that meet at a corner.
pub(super) fn closeness(apart: Apart) -> (i64, i64) {
    match apart {
        Apart::Corners => (2500, 2500),
        Apart::Edges => (2500, 250),
        Apart::Free => (200, 100),
    }
}
