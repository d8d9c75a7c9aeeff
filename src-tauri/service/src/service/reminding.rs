//! The reminder to save a copy of a throw, where storage can be taken away.
//!
//! A copy counts from the moment it was saved or shared, up to the entry it ends with. An imported
//! throw and the demo exist elsewhere as they came. What is known of copies outlives the app
//! ([`Store::keep_copy_record`](crate::store::Store::keep_copy_record)).

use super::Service;
use crate::store::ThrowId;
use lapwork_core::log::journal::Journal;
use lapwork_core::show::{self, CopyRecord, Reminder, ShelfView};
use lapwork_core::throw::Time;

impl Service {
    /// From now on the shelf reminds of throws of which much is in no copy.
    #[must_use]
    pub fn reminding(mut self) -> Service {
        self.reminds = true;
        self
    }

    /// The reminder for this shelf: of the throw with the most changes that are in no copy.
    pub(super) fn reminder(&self, shelf: &ShelfView, now: Time) -> Option<Reminder> {
        if !self.reminds || !self.store.claimed() || self.store.away() {
            return None;
        }
        let known = self.store.copy_records();
        let rows = shelf.rows.iter().chain(&shelf.archived);
        let wanting = rows.filter_map(|row| {
            let journal = &self.open.get(&ThrowId::parse(&row.id).ok()?)?.journal;
            let known = known.get(&row.id).copied().unwrap_or_default();
            let changes = show::changes_to_copy(journal, known)?;
            Some((changes, row, journal, known))
        });
        let (_, row, journal, known) = wanting.max_by_key(|(changes, ..)| *changes)?;
        let context = self.context(now);
        Some(show::reminder(&row.id, journal, known, context))
    }

    /// A copy of a throw was saved outside this shelf, as it was last exported.
    pub fn copy_saved(&mut self, id: &str) {
        if let Some((made, last)) = self.copy_made.take_if(|(made, _)| made.as_str() == id) {
            self.note_copy(&made, last);
        }
    }

    /// A copy outside this shelf has a throw's entries up to this one.
    pub(super) fn note_copy(&self, id: &ThrowId, last: u64) {
        let copied = Some(last);
        self.note(id, |known| CopyRecord { copied, ..known });
    }

    /// The maker saves no copy of a throw now.
    pub(super) fn put_copy_off(&mut self, id: &ThrowId) {
        let put_off = self.open.get(id).map(|opened| last_of(&opened.journal));
        self.note(id, |known| CopyRecord { put_off, ..known });
    }

    fn note(&self, id: &ThrowId, change: impl FnOnce(CopyRecord) -> CopyRecord) {
        if !self.reminds {
            return;
        }
        let known = self.store.copy_records().get(id.as_str()).copied();
        // Where it cannot be kept, the maker is reminded once more than needed.
        let _ = self
            .store
            .keep_copy_record(id, change(known.unwrap_or_default()));
    }
}

/// The number of a record's last entry, whether it stands or not: entries have no gaps.
pub(super) fn last_of(journal: &Journal) -> u64 {
    journal.len() as u64
}
