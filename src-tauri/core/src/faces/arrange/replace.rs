//! Which place can most easily have a square of another denim than it was to have.
//!
//! A square that lies loose may be needed elsewhere. Its place is then open, and where its denim is
//! used up, another denim has to do there. What that costs is read off the same board as layouts.

use crate::faces::arrange::board::{Board, NONE};
use crate::faces::arrange::supply::DenimSupply;
use crate::plan::assembly::Rect;
use crate::throw::Throw;

/// A place in another denim.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OtherDenim {
    /// The place.
    pub place: Rect,
    /// The denim that suits it best, of those the pile has over; none where it has none.
    pub denim: Option<u8>,
    /// How much worse the wishes are met with it, as layouts are judged; less than nothing where
    /// they are met better.
    pub cost: i64,
    /// Faces on which the denim of the place is seen.
    pub seen: usize,
}

/// Each of these places in another denim.
pub fn in_another_denim(throw: &Throw, places: &[Rect]) -> Vec<OtherDenim> {
    let uncut = throw.uncut_by_denim();
    let over: Vec<u8> = DenimSupply::of(throw).map_or_else(Vec::new, |supply| {
        let each = (0_u8..).zip(supply.named.iter().zip(&uncut));
        each.filter(|(_, (has, open))| has > open)
            .map(|(d, _)| d)
            .collect()
    });
    let mut board = Board::new(throw, throw.wishes.unwrap_or_default());
    let mut out = Vec::new();
    for place in places {
        let x = board.place(*place);
        let (square, before) = (board.squares[x], board.cost);
        let mut best: Option<(i64, u8)> = None;
        for denim in over.iter().copied().filter(|d| *d != square.denim) {
            let mut other = square;
            other.denim = denim;
            board.lay(x, other);
            let found = (board.cost - before, denim);
            board.take_back(before);
            best = Some(best.map_or(found, |b| b.min(found)));
        }
        out.push(OtherDenim {
            place: *place,
            denim: best.map(|(_, denim)| denim),
            cost: best.map_or(0, |(cost, _)| cost),
            seen: square.on.iter().filter(|p| **p == NONE).count(),
        });
    }
    out
}
