//! Replacing a throw's record by another, and restoring a record that another program replaced.

use super::{
    Found, MOST_BYTES, Opened, Place, Seen, Store, StoreError, SyncState, ThrowId, bytes_of,
    failed, free_name, put,
};
use crate::disk::{DiskPath, make_folders};
use lapwork_core::log::intake;
use lapwork_core::log::journal::Journal;
use lapwork_core::log::merge::{Relation, relation};
use lapwork_core::throw::Time;

impl Store {
    /// Put another record in the place of a throw's, once `beside` are kept beside it: what
    /// each is called (after `throw.jsonl.`) and its bytes. Gives their paths.
    ///
    /// # Errors
    /// What stood in the way; the throw's own file is then as it was, except that
    /// [`StoreError::Unsure`] says it can be read as the new one.
    pub fn replace(
        &self,
        id: &ThrowId,
        journal: &Journal,
        beside: &[(&str, &[u8])],
        now: Time,
    ) -> Result<Vec<DiskPath>, StoreError> {
        self.must_be_claimed()?;
        let path = self.throw_file(Place::Throws, id);
        let text = journal.text();
        if text.len() as u64 > MOST_BYTES {
            return Err(StoreError::TooLarge { path });
        }
        let mut kept: Vec<DiskPath> = Vec::new();
        // While the throw's own file is untouched, copies of it only take up room.
        let clear = |kept: &[DiskPath]| {
            for copy in kept {
                let _ = self.disk.remove(copy);
            }
        };
        for (called, bytes) in beside {
            let copy = free_name(&*self.disk, &path, called, now);
            kept.push(copy.clone());
            if let Err(why) = put(&*self.disk, &copy, bytes) {
                clear(&kept);
                return Err(failed(&copy)(why));
            }
        }
        match put(&*self.disk, &path, text.as_bytes()) {
            Ok(()) => {
                self.written_whole(id);
                self.bound_copies(id);
                Ok(kept)
            }
            Err(why) => match self.disk.read(&path, MOST_BYTES + 1) {
                Ok(bytes) if bytes == text.as_bytes() => {
                    self.mark(id, SyncState::Doubtful);
                    let seen = Seen::After;
                    Err(StoreError::Unsure { path, why, seen })
                }
                read => {
                    if read.is_ok() {
                        clear(&kept);
                    }
                    Err(failed(&path)(why))
                }
            },
        }
    }

    /// What lies in the place of a throw's file is not what was written: keep it beside, and
    /// put the record back as it was acknowledged. Says what was done.
    pub(crate) fn put_back(&self, id: &ThrowId, opened: &mut Opened, now: Time) -> StoreError {
        let put = self.put_back_in(id, opened, now);
        put.unwrap_or_else(|error| match error {
            StoreError::Disk { path, why } | StoreError::Unsure { path, why, .. } => {
                StoreError::ChangedLeft { path, why }
            }
            error => error,
        })
    }

    fn put_back_in(
        &self,
        id: &ThrowId,
        opened: &mut Opened,
        now: Time,
    ) -> Result<StoreError, StoreError> {
        self.must_be_claimed()?;
        if self.away() {
            let path = self.folder.clone();
            return Err(StoreError::Away { path });
        }
        if self.disk.exists(&self.throw_folder(Place::Deleted, id)) {
            return Err(StoreError::NoSuchThrow);
        }
        self.unknown(id);
        let path = self.throw_file(Place::Throws, id);
        let text = opened.journal.text();
        let (found, bytes) = match bytes_of(&*self.disk, &path) {
            Ok(bytes) => (found(&opened.journal, &bytes), Some(bytes)),
            Err(StoreError::Missing { .. } | StoreError::NoSuchThrow) => (Found::Nothing, None),
            Err(StoreError::TooLarge { .. }) => (Found::Unsound, None),
            Err(error) => return Err(error),
        };
        let folder = self.throw_folder(Place::Throws, id);
        make_folders(&*self.disk, &folder).map_err(failed(&folder))?;
        let mut beside = vec![("here", text.as_bytes())];
        beside.extend(bytes.as_ref().map(|bytes| ("brought", bytes.as_slice())));
        // A file that is too large to be read is moved aside as it is.
        let moved = match (&found, &bytes) {
            (Found::Unsound, None) => {
                let aside = free_name(&*self.disk, &path, "brought", now);
                self.disk.rename(&path, &aside).map_err(failed(&path))?;
                Some(aside)
            }
            _ => None,
        };
        let copies = self.replace(id, &opened.journal, &beside, now)?;
        *opened = Opened::remembered(opened.journal.clone());
        let mut copies = copies.into_iter();
        Ok(StoreError::Changed {
            here: copies.next().unwrap_or_else(|| path.clone()),
            brought: copies.next().or(moved),
            path,
            found,
        })
    }
}

/// What was found in the place of a record.
fn found(own: &Journal, bytes: &[u8]) -> Found {
    match intake::read(bytes) {
        Err(_) => Found::Unsound,
        Ok(read) => match relation(own, &read.journal) {
            Relation::Same | Relation::FirstHasMore(_) => Found::Less,
            _ => Found::More(bytes.to_vec()),
        },
    }
}
