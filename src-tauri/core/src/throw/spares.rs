//! Spare squares and the denim each is of, as far as that is known.
//!
//! Squares of a garment that names its denim, and squares that fall outside a smaller grid, are
//! known to be of that denim. Squares counted by hand are not. In a throw of one denim all are.
//!
//! Those pieced of two halves are counted among the spares and known apart: whole ones are put to
//! use first.

use crate::measure::Count;
use crate::throw::state::{PiecedSpare, Throw};

impl Throw {
    /// Spares known to be of this denim.
    pub fn spares_of(&self, denim: u8) -> u32 {
        match self.denims.len() {
            0 | 1 => self.spares.get(),
            _ => self.spare_denims.get(&denim).copied().unwrap_or(0),
        }
    }

    /// Spares of which nobody said what denim they are.
    pub fn spares_unsaid(&self) -> u32 {
        match self.denims.len() {
            0 | 1 => 0,
            _ => self.spares.get() - self.spare_denims.values().sum::<u32>(),
        }
    }

    /// Spares that may serve for a place of this denim: its own, and those of no known denim.
    pub fn spares_for(&self, denim: u8) -> u32 {
        self.spares_of(denim) + self.spares_unsaid()
    }

    /// The denim that most of the other spares are of, and how many.
    pub fn other_spares(&self, denim: u8) -> Option<(u8, u32)> {
        let others = (0..self.denims.len() as u8).filter(|d| *d != denim);
        let counted = others.map(|d| (d, self.spares_of(d)));
        counted
            .filter(|(_, n)| *n > 0)
            .max_by_key(|(d, n)| (*n, std::cmp::Reverse(*d)))
    }

    /// The denim of the spare that goes to a place of this denim: its own first, then one of no
    /// known denim.
    pub fn spare_for(&self, denim: u8) -> Option<u8> {
        (self.spares_of(denim) > 0).then_some(denim)
    }

    /// Spares pieced of two halves.
    pub fn spares_pieced(&self) -> Count {
        Count::at_most(self.pieced_spares.len() as u32)
    }

    /// The same of one denim, or of none that is known.
    pub fn spares_pieced_of(&self, denim: Option<u8>) -> u32 {
        let alike = |spare: &&PiecedSpare| self.denims.len() <= 1 || spare.denim == denim;
        self.pieced_spares.iter().filter(alike).count() as u32
    }

    /// Whether the spare of this denim, or of none that is known, that is put to use next is pieced:
    /// no whole one is left.
    pub fn next_spare_is_pieced(&self, denim: Option<u8>) -> bool {
        let all = match denim {
            Some(denim) => self.spares_of(denim),
            None if self.denims.len() <= 1 => self.spares.get(),
            None => self.spares_unsaid(),
        };
        let pieced = self.spares_pieced_of(denim);
        pieced > 0 && pieced >= all
    }

    /// A pieced spare of this denim goes out.
    pub(super) fn take_pieced(&mut self, denim: Option<u8>) -> Option<PiecedSpare> {
        let alike = |spare: &PiecedSpare| spare.denim == denim;
        let found = self.pieced_spares.iter().position(alike);
        let found = found.or_else(|| (!self.pieced_spares.is_empty()).then_some(0))?;
        Some(self.pieced_spares.remove(found))
    }

    /// Spares of a known denim come in.
    pub(super) fn add_spares(&mut self, denim: u8, count: u32) {
        let known = self.spare_denims.entry(denim).or_default();
        *known = known.saturating_add(count);
        self.settle_spares();
    }

    /// A spare goes out.
    pub(super) fn take_spare(&mut self, denim: Option<u8>) {
        if let Some(known) = denim.and_then(|d| self.spare_denims.get_mut(&d)) {
            *known = known.saturating_sub(1);
        }
    }

    /// Where fewer spares are left than were known by their denim, the last denims give way.
    pub(super) fn settle_spares(&mut self) {
        let mut room = self.spares.get();
        for known in self.spare_denims.values_mut() {
            *known = (*known).min(room);
            room -= *known;
        }
        self.spare_denims.retain(|_, n| *n > 0);
        self.pieced_spares.truncate(self.spares.get() as usize);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::fabric::Denim;
    use crate::command::{Command, decide};
    use crate::fitting::tests::begun;
    use crate::measure::half_inches;
    use crate::plan::Plan;
    use crate::plan::assembly::Rect;
    use crate::throw::Event;

    /// Six spares in a throw of so many denims: of the first 1, of the second 2, of the third 2, and
    /// of 1 nobody said what it is.
    fn six(denims: usize) -> Throw {
        let mut throw = begun(Plan::default());
        throw.denims = (0..denims)
            .map(|n| Denim {
                name: n.to_string(),
                colour: "#223344".into(),
            })
            .collect();
        throw.spares = Count::from(6);
        for (denim, count) in [(0, 1), (1, 2), (2, 2)] {
            throw.add_spares(denim, count);
        }
        throw
    }

    #[test]
    fn spares_by_their_denim() {
        let throw = six(3);
        assert_eq!([0, 1, 2].map(|d| throw.spares_of(d)), [1, 2, 2]);
        assert_eq!(throw.spares_unsaid(), 1);
        // For a place its own and the unsaid one.
        assert_eq!([0, 1, 2].map(|d| throw.spares_for(d)), [2, 3, 3]);
        // Of the others the denim of which most are left, of like ones the first in the list.
        let others = [0, 1, 2].map(|d| throw.other_spares(d));
        assert_eq!(others, [Some((1, 2)), Some((2, 2)), Some((1, 2))]);
        // In a throw of one denim all are of it, and there is no other.
        let one = six(1);
        assert_eq!((one.spares_of(0), one.spares_unsaid()), (6, 0));
        assert_eq!((one.spares_for(0), one.other_spares(0)), (6, None));
    }

    /// A place takes a spare of its own denim first, then one of which nobody knows; the maker may
    /// name another. Which it was is in the event.
    #[test]
    fn a_place_takes_a_spare_of_its_own_denim_first() {
        let mut throw = six(3);
        let take = |throw: &mut Throw, col: u16, denim: Option<u8>| {
            let piece = Rect::square(0, col);
            let pieces = vec![piece];
            let action = Command::UseSpares { pieces, denim };
            let events = decide(Some(throw), &action).ok()?;
            let of = events.iter().find_map(|event| match event {
                Event::SparesUsed { of, .. } => of.first().copied(),
                _ => None,
            });
            for event in &events {
                throw.apply(event, 0);
            }
            Some((of?, throw.cover(piece).denim, throw.spares.get()))
        };
        // All places are of the first denim, of which one is spare, and then the one unsaid.
        assert_eq!(take(&mut throw, 0, None), Some((Some(0), 0, 5)));
        assert_eq!([0, 1, 2].map(|d| throw.spares_of(d)), [0, 2, 2]);
        assert_eq!(take(&mut throw, 1, None), Some((None, 0, 4)));
        assert_eq!(throw.spares_unsaid(), 0);
        // Then the one of which most are left; the place changes to that denim.
        assert_eq!(take(&mut throw, 2, None), Some((Some(1), 1, 3)));
        assert_eq!(take(&mut throw, 3, None), Some((Some(2), 2, 2)));
        // She names one.
        assert_eq!(take(&mut throw, 4, Some(2)), Some((Some(2), 2, 1)));
        assert_eq!(take(&mut throw, 5, Some(2)), None);
        assert_eq!([0, 1, 2].map(|d| throw.spares_of(d)), [0, 1, 0]);
    }

    /// By hand: where 4 of the 6 are counted, 1 of the first, 2 of the second and 1 of the third are
    /// known still: those of the last denims give way.
    #[test]
    fn of_fewer_spares_the_last_denims_give_way() {
        let mut throw = six(3);
        let counted = |n| Event::SparesCounted {
            spares: Count::from(n),
        };
        throw.apply(&counted(4), 0);
        assert_eq!([0, 1, 2].map(|d| throw.spares_of(d)), [1, 2, 1]);
        assert_eq!(throw.spares_unsaid(), 0);
        throw.apply(&counted(2), 0);
        assert_eq!([0, 1, 2].map(|d| throw.spares_of(d)), [1, 1, 0]);
        // A single spare of another denim is one, and of none left there is none.
        let others = [0, 1, 2].map(|d| throw.other_spares(d));
        assert_eq!(others, [Some((1, 1)), Some((0, 1)), Some((0, 1))]);
        let mut none = throw.clone();
        none.apply(&counted(0), 0);
        assert_eq!([0, 1, 2].map(|d| none.other_spares(d)), [None; 3]);
        // More are counted: nobody said what they are.
        throw.apply(&counted(9), 0);
        assert_eq!([0, 1, 2].map(|d| throw.spares_of(d)), [1, 1, 0]);
        assert_eq!(throw.spares_unsaid(), 7);
    }

    /// Whole ones go first: of 2 spares of a denim one is pieced, which comes last.
    #[test]
    fn pieced_spares_come_last() {
        let mut throw = six(3);
        let pieced = |denim| PiecedSpare {
            denim,
            lap: half_inches(1),
            done: vec![],
        };
        throw.pieced_spares = vec![pieced(Some(1)), pieced(None)];
        let next = |throw: &Throw| [Some(0), Some(1), None].map(|d| throw.next_spare_is_pieced(d));
        assert_eq!(next(&throw), [false, false, true]);
        *throw.spare_denims.get_mut(&1).unwrap() = 1;
        // One of the second fewer is known by its denim, so two are of none: one of these is whole.
        assert_eq!(next(&throw), [false, true, false]);
        let each = [Some(0), Some(1), None].map(|d| throw.spares_pieced_of(d));
        assert_eq!((each, throw.spares_pieced()), ([0, 1, 1], Count::from(2)));
        // The one that is taken is of the denim it is taken for, if there is one.
        for denim in [Some(1), None] {
            let taken = throw.clone().take_pieced(denim).unwrap();
            assert_eq!(taken.denim, denim);
        }
        let other = throw.clone().take_pieced(Some(0)).unwrap();
        assert_eq!(other.denim, Some(1));
        // Of a denim of which there is no spare none is pieced.
        assert!(!throw.next_spare_is_pieced(Some(7)));
        let mut two = six(2);
        two.pieced_spares.clone_from(&throw.pieced_spares);
        assert_eq!(
            [Some(0), Some(1), None].map(|d| two.spares_pieced_of(d)),
            [0, 1, 1]
        );
        // In a throw of one denim any of them will do.
        let mut one = six(1);
        one.pieced_spares = vec![pieced(Some(0)), pieced(None)];
        assert_eq!(one.spares_pieced_of(Some(0)), 2);
        assert!(!one.next_spare_is_pieced(None));
        one.spares = Count::from(2);
        assert!(one.next_spare_is_pieced(None) && one.next_spare_is_pieced(Some(0)));
    }
}
