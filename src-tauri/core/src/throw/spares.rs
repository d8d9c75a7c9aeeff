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
