//! Which pieces still lie loose, and where else each may lie.

use crate::plan::assembly::{Assembly, Rect};
use crate::throw::state::Throw;

/// Whether a join was begun, or opened again and not mended yet.
fn touched(throw: &Throw, piece: Rect) -> bool {
    throw
        .work(piece)
        .is_some_and(|w| !w.done.is_empty() || w.opened.is_some())
}

/// Which pieces a larger one already holds, worked out once for all of them.
#[derive(Debug)]
pub struct Holds<'a> {
    throw: &'a Throw,
    /// By number: whether a join above it is touched, and whether something was done to one.
    by_number: Vec<(bool, bool)>,
}

impl Holds<'_> {
    /// For a throw as it stands.
    pub fn of(throw: &Throw) -> Holds<'_> {
        let assembly = throw.assembly();
        let mut by_number = vec![(false, false); assembly.pieces().count()];
        // Each join comes after those it needs, so that from the last on the larger come first.
        for join in assembly.joins().iter().rev() {
            let Some(whole) = assembly.number(join.whole) else {
                continue;
            };
            let (held, joined) = by_number[whole];
            let own = (
                held || touched(throw, join.whole),
                joined || throw.begun(join.whole),
            );
            for part in [join.first, join.second] {
                if let Some(n) = assembly.number(part) {
                    by_number[n] = own;
                }
            }
        }
        Holds { throw, by_number }
    }

    fn at(&self, piece: Rect) -> (bool, bool) {
        let n = self.throw.assembly().number(piece);
        n.and_then(|n| self.by_number.get(n).copied())
            .unwrap_or_default()
    }

    /// As [`is_loose`].
    pub fn is_loose(&self, piece: Rect) -> bool {
        !self.at(piece).0
    }

    /// As [`Throw::is_joined`].
    pub fn is_joined(&self, square: Rect) -> bool {
        self.at(square).1
    }

    /// As [`loose_units`].
    pub fn units(&self) -> Vec<Rect> {
        let assembly = self.throw.assembly();
        let mut units = Vec::new();
        for block in assembly.blocks() {
            if !self.is_loose(block) {
                continue;
            }
            if block.count() > 1 && touched(self.throw, block) {
                units.push(block);
            } else if let Some(join) = assembly.join(block) {
                let pairs = [join.first, join.second];
                units.extend(
                    pairs
                        .into_iter()
                        .filter(|p| !p.is_square() && touched(self.throw, *p)),
                );
            }
        }
        units
    }
}

/// The joined pieces of a throw that can still be placed: blocks and pairs not sewn to more.
pub fn loose_units(throw: &Throw) -> Vec<Rect> {
    Holds::of(throw).units()
}

/// Whether a joined piece or square can be put elsewhere: nothing larger holds it.
pub fn is_loose(throw: &Throw, piece: Rect) -> bool {
    let mut up = piece;
    while let Some(join) = throw.assembly().goes_into(up) {
        if touched(throw, join.whole) {
            return false;
        }
        up = join.whole;
    }
    true
}

/// Places of the same kind and shape that a piece may take.
pub fn places_for(assembly: &Assembly, piece: Rect) -> Vec<Rect> {
    let shape = |p: &Rect| (p.rows, p.cols) == (piece.rows, piece.cols);
    if piece.is_square() {
        return assembly.whole().squares().collect();
    }
    if assembly.blocks().contains(&piece) {
        return assembly.blocks().into_iter().filter(shape).collect();
    }
    let pairs = assembly.joins().iter().map(|j| j.whole);
    pairs
        .filter(|p| p.count() == 2 && !assembly.is_block(*p))
        .filter(shape)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{JoinOrder, Plan};
    use crate::throw::{Event, tasks::Task};
    use proptest::prelude::*;

    fn begun(across: u16, down: u16) -> Throw {
        crate::fitting::tests::begun(Plan {
            across,
            down,
            ..Plan::default()
        })
    }

    /// By hand, four across and five down: four fours, and two pairs side by side in the last row, which
    /// are blocks of their own. A pair of a four may lie where any of the eight of the fours does, a
    /// pair of the last row only where the other one does.
    #[test]
    fn a_piece_may_lie_where_another_of_its_kind_does() {
        let throw = begun(4, 5);
        let rects = |of: &[[u16; 4]]| of.iter().map(|r| Rect::from(*r)).collect::<Vec<_>>();
        let places = |r: [u16; 4]| {
            let mut found = places_for(throw.assembly(), Rect::from(r));
            found.sort_unstable();
            found
        };
        let fours = rects(&[[0, 0, 2, 2], [0, 2, 2, 2], [2, 0, 2, 2], [2, 2, 2, 2]]);
        assert_eq!(places([2, 0, 2, 2]), fours);
        assert_eq!(places([4, 2, 1, 2]), rects(&[[4, 0, 1, 2], [4, 2, 1, 2]]));
        let pairs = (0..4).flat_map(|row| [[row, 0, 1, 2], [row, 2, 1, 2]]);
        assert_eq!(places([1, 2, 1, 2]), rects(&pairs.collect::<Vec<_>>()));
        assert_eq!(places([4, 3, 1, 1]).len(), 20);
    }

    /// By hand, four by four: a pair that was begun lies loose until its four is begun, and the four until
    /// it is joined to the one beside it. What was only cut is no joined piece.
    #[test]
    fn what_is_sewn_lies_loose_until_more_is_sewn_to_it() {
        let mut throw = begun(4, 4);
        assert_eq!(loose_units(&throw), []);
        let mut done = |piece: [u16; 4]| {
            let pieces = vec![Rect::from(piece)];
            let task = Task::Dot;
            let event = Event::Done {
                task,
                pieces,
                made: vec![],
            };
            throw.apply(&event, 0);
            loose_units(&throw)
        };
        let (pair, other) = (Rect::from([0, 0, 1, 2]), Rect::from([2, 2, 1, 2]));
        assert_eq!(done([0, 0, 1, 2]), [pair]);
        assert_eq!(done([2, 2, 1, 2]), [pair, other]);
        let four = Rect::from([0, 0, 2, 2]);
        assert_eq!(done([0, 0, 2, 2]), [four, other]);
        // The upper row of two fours: neither of them lies loose.
        assert_eq!(done([0, 0, 2, 4]), [other]);
    }

    proptest! {
        /// What is worked out for all pieces at once is what is worked out for each by itself.
        #[test]
        fn all_at_once_as_each_by_itself(
            (across, down) in (1u16..8, 1u16..8),
            order in prop::sample::select(vec![JoinOrder::Rows, JoinOrder::Columns, JoinOrder::Doubling]),
            work in prop::collection::vec((any::<u16>(), any::<bool>()), 0..12),
        ) {
            let plan = Plan { across, down, order, ..Plan::default() };
            let begun = Event::Begun { name: "t".into(), plan, prints: vec![], denims: vec![], after: None };
            let mut throw = Throw::begin(&begun).unwrap();
            let joins: Vec<Rect> = throw.assembly().joins().iter().map(|j| j.whole).collect();
            for (n, opened) in work {
                let Some(piece) = joins.get(usize::from(n) % joins.len().max(1)).copied() else { continue };
                throw.apply(&Event::Done { task: Task::Dot, pieces: vec![piece], made: vec![] }, 0);
                if opened {
                    throw.apply(&Event::Unpicked { pieces: vec![(piece, throw.plan.side)], glued: false, in_part: vec![], binding: false, block: None, held: vec![] }, 0);
                }
            }
            let holds = Holds::of(&throw);
            let every = throw.assembly().pieces();
            for piece in every.chain([Rect::square(40, 40)]) {
                prop_assert_eq!(holds.is_loose(piece), is_loose(&throw, piece), "{:?}", piece);
                prop_assert_eq!(holds.is_joined(piece), throw.is_joined(piece), "{:?}", piece);
            }
        }
    }
}
