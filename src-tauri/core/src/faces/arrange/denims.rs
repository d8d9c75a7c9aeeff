//! Which denim each square is cut from.
//!
//! Only squares that are not cut yet can be of another denim: those that are cut, sewn, pinned
//! or chosen by hand stay as they are ([`Board::opens_denim`]). How many of the open squares
//! are of which denim is settled first ([`share`]) and then kept; the search decides which
//! places they take. What a square shows is one piece of denim, right side and wrong side, so
//! that its denim counts on each face that is not covered.

use crate::faces::arrange::board::{Board, LOOSE};
use crate::faces::arrange::supply::share;
use crate::throw::Throw;
use crate::throw::wishes::{DenimWish, Pattern, Wishes};

/// Which denim each square would be cut from, row by row: dealt out nearly as the wishes would have
/// it, without a search. Squares that are cut, pinned or chosen by hand keep theirs.
pub fn dealt(throw: &Throw, wishes: Wishes) -> Vec<u8> {
    let mut board = Board::new(throw, wishes);
    if board.chooses {
        board.deal_denims();
    }
    board.squares.iter().map(|square| square.denim).collect()
}

impl Board {
    /// Whether the denim of the square at a place may still be another.
    pub(super) fn opens_denim(&self, x: usize) -> bool {
        let square = &self.squares[x];
        self.chooses && !self.still[x] && square.unit == LOOSE && !square.made
    }

    /// Squares that are not cut yet, of each denim: all of them, or those that are open.
    pub(super) fn uncut(&self, only_open: bool) -> Vec<u32> {
        let mut out = vec![0; self.light.len()];
        for (x, square) in self.squares.iter().enumerate() {
            let counts = !square.made && (self.opens_denim(x) || !only_open);
            if counts && let Some(n) = out.get_mut(usize::from(square.denim)) {
                *n += 1;
            }
        }
        out
    }

    /// Whether the wishes ask for more than one denim.
    fn mixes(&self) -> bool {
        matches!(
            self.wishes.pattern,
            Pattern::ShadeRows | Pattern::LightEdges
        ) || matches!(
            self.wishes.denims,
            Some(DenimWish::Apart | DenimWish::Bands)
        )
    }

    /// How many of the open squares are to be of each denim.
    pub(super) fn denim_share(&self) -> Vec<u32> {
        let (open, uncut) = (self.uncut(true), self.uncut(false));
        // Squares not cut yet whose denim stays take theirs first.
        let left = self.supply.as_ref().map(|supply| {
            let mut left = supply.clone();
            for (d, named) in left.named.iter_mut().enumerate() {
                let stay = uncut[d] - open[d];
                let beyond = stay.saturating_sub(*named);
                *named = named.saturating_sub(stay);
                left.unnamed = left.unnamed.saturating_sub(beyond);
            }
            left
        });
        share(&open, self.mixes(), left.as_ref())
    }

    /// Deal the denims out over the open places, nearly as the wishes would have them.
    pub(super) fn deal_denims(&mut self) {
        let mut left = self.denim_share();
        let mut places = self.places_by_shade();
        places.retain(|x| self.opens_denim(*x));
        if !self.mixes() {
            // Each keeps its denim while there is enough of it.
            let mut others = Vec::new();
            for x in places {
                match left.get_mut(usize::from(self.squares[x].denim)) {
                    Some(n) if *n > 0 => *n -= 1,
                    _ => others.push(x),
                }
            }
            self.fill_denims(&others, (0..left.len()).collect(), &mut left);
            return;
        }
        let mut denims: Vec<usize> = (0..left.len()).collect();
        let shades = !matches!(self.wishes.pattern, Pattern::Free | Pattern::Mirror);
        if shades || self.wishes.denims == Some(DenimWish::Bands) {
            denims.sort_by_key(|d| (-self.shade(*d as u8), *d));
        } else {
            // As on a chessboard, the most frequent first.
            denims.sort_by_key(|d| (std::cmp::Reverse(left[*d]), *d));
            places.sort_by_key(|x| ((x / self.across + x % self.across) % 2, *x));
        }
        self.fill_denims(&places, denims, &mut left);
    }

    fn fill_denims(&mut self, places: &[usize], order: Vec<usize>, left: &mut [u32]) {
        let mut places = places.iter();
        for d in order {
            for x in places.by_ref().take(left[d] as usize) {
                self.squares[*x].denim = d as u8;
            }
            left[d] = 0;
        }
    }

    /// In how many parts the denims lie: squares of one denim that touch along an edge are one.
    pub(super) fn denim_parts(&self) -> u32 {
        let mut seen = vec![false; self.squares.len()];
        let mut parts = 0;
        for start in 0..self.squares.len() {
            if seen[start] {
                continue;
            }
            parts += 1;
            seen[start] = true;
            let mut next = vec![start];
            while let Some(x) = next.pop() {
                for y in self.beside(x) {
                    if !seen[y] && self.squares[y].denim == self.squares[start].denim {
                        seen[y] = true;
                        next.push(y);
                    }
                }
            }
        }
        parts
    }

    /// How many different denims there are among the squares.
    pub(super) fn denims_used(&self) -> u32 {
        let used: std::collections::BTreeSet<u8> = self.squares.iter().map(|s| s.denim).collect();
        used.len() as u32
    }

    /// Whether the squares could be of several denims, and are to be.
    pub(super) fn could_mix(&self) -> bool {
        let share = self.denim_share();
        let fixed = (0..self.squares.len()).filter(|x| !self.opens_denim(*x));
        let mut used: std::collections::BTreeSet<usize> =
            fixed.map(|x| usize::from(self.squares[x].denim)).collect();
        used.extend((0..share.len()).filter(|d| share[*d] > 0));
        used.len() > 1
    }
}
