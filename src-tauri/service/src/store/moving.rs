//! Beginning a throw, moving it from one place to the other, and erasing it.

use super::{
    GONE, Place, Seen, Store, StoreError, SyncState, THROW_FILE, ThrowId, UNFINISHED, failed,
};
use crate::disk::{DiskPath, write_new};
use lapwork_core::log::journal::Journal;
use std::io;

impl Store {
    /// Keep a new throw.
    ///
    /// # Errors
    /// What stood in the way; the throw is then not there, except that
    /// [`StoreError::Unsure`] says what is to be read there.
    pub fn begin(&self, id: &ThrowId, journal: &Journal) -> Result<(), StoreError> {
        self.must_be_claimed()?;
        if self.knows(id) {
            let path = self.throw_folder(Place::Throws, id);
            return Err(failed(&path)(io::ErrorKind::AlreadyExists.into()));
        }
        let throws = self.folder.join(Place::Throws.name());
        let unfinished = throws.join(&format!("{UNFINISHED}{}", id.as_str()));
        let whole = self.throw_folder(Place::Throws, id);
        let made = self
            .begin_in(&unfinished, &journal.text())
            .and_then(|()| self.disk.rename(&unfinished, &whole))
            .and_then(|()| self.disk.sync_folder(&throws));
        if made.is_ok() {
            self.written_whole(id);
        }
        made.map_err(|why| {
            // The maker is informed that it was not begun, so nothing of it may come back.
            let _ = self.disk.remove(&unfinished);
            let _ = self.disk.remove(&whole);
            if self.disk.exists(&whole) {
                self.mark(id, SyncState::Doubtful);
                let (path, seen) = (whole, Seen::After);
                return StoreError::Unsure { path, why, seen };
            }
            failed(&whole)(why)
        })
    }

    fn begin_in(&self, folder: &DiskPath, text: &str) -> io::Result<()> {
        self.disk.make_folder(folder)?;
        write_new(&*self.disk, &folder.join(THROW_FILE), text.as_bytes(), None)?;
        self.disk.sync_folder(folder)
    }

    /// Move a throw from one place to the other.
    ///
    /// # Errors
    /// What stood in the way; after [`StoreError::Unsure`] it is seen in the other place.
    pub fn carry(&self, id: &ThrowId, from: Place, to: Place) -> Result<(), StoreError> {
        self.must_be_claimed()?;
        let (old, new) = (self.throw_folder(from, id), self.throw_folder(to, id));
        if !self.disk.is_folder(&old) {
            return Err(StoreError::NoSuchThrow);
        }
        if self.disk.exists(&new) {
            return Err(failed(&new)(io::ErrorKind::AlreadyExists.into()));
        }
        let renamed = self.disk.rename(&old, &new);
        if self.disk.exists(&old) || !self.disk.exists(&new) {
            return renamed.map_err(failed(&old));
        }
        // The new place first: twice there after a power cut is better than nowhere.
        let synced = renamed.and_then(|()| {
            [to, from]
                .iter()
                .try_for_each(|place| self.disk.sync_folder(&self.folder.join(place.name())))
        });
        synced.map_err(|why| {
            self.mark(id, SyncState::Doubtful);
            let (path, seen) = (new, Seen::After);
            StoreError::Unsure { path, why, seen }
        })
    }

    /// Erase a deleted throw for good.
    ///
    /// # Errors
    /// What stood in the way; after [`StoreError::Unsure`] it is no longer on the shelf.
    pub fn erase(&self, id: &ThrowId) -> Result<(), StoreError> {
        self.must_be_claimed()?;
        let path = self.throw_folder(Place::Deleted, id);
        if !self.disk.is_folder(&path) {
            return Err(StoreError::NoSuchThrow);
        }
        let deleted = self.folder.join(Place::Deleted.name());
        let gone = deleted.join(&format!("{GONE}{}", id.as_str()));
        // Off the shelf in one step, so that it is never there by halves.
        let renamed = self.disk.rename(&path, &gone);
        if self.disk.exists(&path) {
            return renamed.map_err(failed(&path));
        }
        let synced = renamed.and_then(|()| self.disk.sync_folder(&deleted));
        let removed = self.disk.remove(&gone);
        synced.and(removed).map_err(|why| StoreError::Unsure {
            path: gone,
            why,
            seen: Seen::After,
        })
    }
}
