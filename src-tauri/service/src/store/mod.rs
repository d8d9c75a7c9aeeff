//! The data folder: throw files, the settings, and who may write them.
//!
//! ```text
//! throws/<id>/throw.jsonl    throws in work (and those put away)
//! throws/<id>/photos/        photos of its story, <hash>.jpg; they go where their throw goes
//! deleted/<id>/throw.jsonl   throws deleted but not yet erased
//! settings.json              how the window looks and reads
//! copied.json                up to where copies of throws were saved elsewhere (in a browser)
//! lock                       held while the app is open
//! ```
//!
//! Promises: there is one writer at a time, by a lock on `lock` that the system releases when the
//! app ends in any way. [`Store::append`] returns only once the line is on the disk; if writing
//! fails, the file is cut back to what was sound before. A new throw, the settings and a repaired
//! file appear whole or not at all; an erased throw is gone at once. A path is only ever made from
//! a [`ThrowId`], so nothing outside the folder can be reached. Damaged files are never changed; a
//! torn last line is left out only once a copy of the whole file lies beside it.
//!
//! # Files whose sync failed
//!
//! Such a file is *doubtful*: what the system shows of it may not be what the disk holds, and a
//! second sync might succeed without it. The store closes the file, reads it again, and puts its
//! sound part into a fresh file in its place. Until that is done nothing is added.
//! [`StoreError::Unsure`] says what was read.
//!
//! # Files of an earlier session
//!
//! What an app left that died may be visible and not be on the disk. The store therefore syncs the
//! folders' names when it claims the folder, and a throw's file and its name before it first shows
//! the throw. Before a session's first entry in a throw it also writes the file again, whole: a
//! failed sync of an earlier session may have left bytes in the system's cache that are no longer
//! due to be written, and a new sync would succeed without them.
//!
//! No cheaper way keeps this promise. Rewriting only a torn file does not, since the cached bytes
//! are whole (`keeping what_a_life` then fails). Reading past the cache does not, since the system
//! takes the request to drop it as advice. A mark that an earlier session ended well would have to
//! be erased, with a sync of its own, before the first entry of every session, and written again
//! with another at the end; that is no less waiting than the three syncs of a small fresh file, and
//! it says nothing about a file that another program put there.
//!
//! # Files changed by another program
//!
//! A program that synchronises folders, or a backup, may change a throw's file while it is open
//! here. Before it adds a line, the store compares the file with what was written (`Seal`): which
//! file it is, its length, its last bytes, and all of it where the system says that it was touched.
//! After the line is synced, it checks the first three again. If it is another file, nothing is
//! added. The store keeps the acknowledged record and the file it found beside the throw
//! (`throw.jsonl.here-…`, `throw.jsonl.brought-…`), puts the acknowledged record back in its place,
//! and gives the found one in [`StoreError::Changed`], to be merged. It does not notice a change
//! within the same tick of the system's clock as its own writing (some milliseconds) that leaves
//! the length and the last 4096 bytes as they were.
//!
//! # Versions
//!
//! A file of an older version is kept beside the new one as it was (`throw.jsonl.version-1`), and
//! is then written again with the header of this version, whole or not at all. A file of a newer
//! version is refused with its number and stays untouched. A throw is replaced
//! ([`Store::replace`]) only once the files as they were lie beside it; the newest of these copies
//! are kept, and the maker may clear them (`copies`).
//!
//! Limit: a throw file of more than [`MOST_BYTES`] is neither read nor written.

mod appending;
mod copied;
mod copies;
mod error;
mod id;
mod moving;
mod opened;
mod photo_files;
mod reading;
mod replacing;
mod settings;
#[cfg(test)]
mod tests;

pub use copies::KeptCopies;
#[cfg(not(target_arch = "wasm32"))]
pub(crate) use copies::{clear, kept};
pub(crate) use error::failed;
pub use error::{Found, Seen, StoreError};
pub use id::ThrowId;
pub(crate) use opened::opened;
pub use opened::{Mended, Opened};
#[cfg(not(target_arch = "wasm32"))]
pub(crate) use reading::upgrade;
pub(crate) use reading::{bytes_of, plain};

use crate::disk::{Disk, DiskLock, DiskPath, make_folders, sync_above};
use lapwork_core::throw::Time;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::io;

/// The largest throw file that is read or written.
pub const MOST_BYTES: u64 = 64 << 20;
/// The largest settings file that is read.
const MOST_SETTINGS: u64 = 1 << 20;
/// The longest line that is written; the core reads no longer ones.
const LONGEST_LINE: usize = 4 << 20;
/// The folder of a throw's photos, in its own.
const PHOTOS: &str = "photos";
pub(crate) const THROW_FILE: &str = "throw.jsonl";
/// How many bytes at a file's end are read back before something is added to it.
const TAIL: usize = 4096;
/// How often a file that another program exchanges for a copy of itself is written again
/// before it is given up.
const MOST_COPIES: usize = 3;
/// What a throw's folder is called until it is whole.
const UNFINISHED: &str = ".new-";
/// What a throw's folder is called from the moment it is erased.
const GONE: &str = ".gone-";

/// Where on the shelf a throw lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// In work, or put away.
    Throws,
    /// Deleted, not yet erased.
    Deleted,
}

impl Place {
    fn name(self) -> &'static str {
        match self {
            Place::Throws => "throws",
            Place::Deleted => "deleted",
        }
    }
}

/// How far a throw's file, with its name, is known to be on the disk since the folder was
/// claimed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum SyncState {
    /// It was synced as it was found; what another life wrote may be seen all the same and
    /// never get to the disk.
    Synced,
    /// It was written whole and synced: nothing in it is of another life.
    Fresh,
    /// A sync of it failed.
    Doubtful,
}

/// The data folder.
#[derive(Debug)]
pub struct Store {
    folder: DiskPath,
    lock: Option<Box<dyn DiskLock>>,
    disk: Box<dyn Disk>,
    /// How far each throw's file is known to be on the disk; nothing is known of others.
    known: RefCell<BTreeMap<ThrowId, SyncState>>,
}

impl Store {
    /// The data folder at `folder` on a disk. Nothing is touched until it is claimed.
    pub fn on(folder: impl Into<DiskPath>, disk: Box<dyn Disk>) -> Store {
        Store {
            folder: folder.into(),
            lock: None,
            disk,
            known: RefCell::default(),
        }
    }

    /// Whether this is known of a throw's file.
    fn is(&self, id: &ThrowId, state: SyncState) -> bool {
        self.known.borrow().get(id) == Some(&state)
    }

    fn mark(&self, id: &ThrowId, state: SyncState) {
        self.known.borrow_mut().insert(id.clone(), state);
    }

    /// A throw's file was written whole and synced. A doubt may also be about the name of its
    /// folder, so it stays.
    fn written_whole(&self, id: &ThrowId) {
        if !self.is(id, SyncState::Doubtful) {
            self.mark(id, SyncState::Fresh);
        }
    }

    /// Nothing is known of a throw's file any longer, unless that it is doubtful.
    fn unknown(&self, id: &ThrowId) {
        if !self.is(id, SyncState::Doubtful) {
            self.known.borrow_mut().remove(id);
        }
    }

    /// Where it is.
    pub fn folder(&self) -> &DiskPath {
        &self.folder
    }

    /// Whether this is the one that may write.
    pub fn claimed(&self) -> bool {
        self.lock.is_some()
    }

    /// Become the one that may write; `true` if that is new, so that whatever was
    /// read before may be out of date.
    ///
    /// # Errors
    /// [`StoreError::Locked`] while another has the folder, [`StoreError::Disk`] if the
    /// folder cannot be made, [`StoreError::Away`] if it was claimed and is gone.
    pub fn claim(&mut self) -> Result<bool, StoreError> {
        if let Some(lock) = &self.lock {
            if self.away() {
                // It is not made again: that would be another one, where a disk was taken out.
                let path = self.folder.clone();
                return Err(StoreError::Away { path });
            }
            let path = self.folder.join("lock");
            let own = lock.about().map_err(failed(&path))?;
            match self.disk.about(&path) {
                Ok(there) if there.identity == own.identity => return Ok(false),
                Err(why) if why.kind() != io::ErrorKind::NotFound => {
                    return Err(failed(&path)(why));
                }
                // The folder is another than the one that was claimed.
                _ => {}
            }
            self.lock = None;
            let doubtful = |_: &ThrowId, state: &mut SyncState| *state == SyncState::Doubtful;
            self.known.borrow_mut().retain(doubtful);
        }
        for place in [Place::Throws, Place::Deleted] {
            let path = self.folder.join(place.name());
            make_folders(&*self.disk, &path).map_err(failed(&path))?;
        }
        let path = self.folder.join("lock");
        if !self.disk.exists(&path) {
            // The first time, or the time before got no further: the folder's own name, and
            // those above it, may not be on the disk yet.
            sync_above(&*self.disk, &self.folder).map_err(failed(&self.folder))?;
        }
        let lock = self.disk.lock(&path).map_err(failed(&path))?;
        let lock = lock.ok_or(StoreError::Locked)?;
        self.sync_folder(&self.folder)?;
        // An app that died may have left names that are seen but not on the disk.
        for place in [Place::Throws, Place::Deleted] {
            self.sync_folder(&self.folder.join(place.name()))?;
        }
        self.lock = Some(lock);
        self.clear_unfinished();
        Ok(true)
    }

    /// Whether the folder was claimed and is gone.
    pub fn away(&self) -> bool {
        self.claimed() && !self.disk.is_folder(&self.folder.join(Place::Throws.name()))
    }

    /// Remove what an app that died half-way through beginning or erasing a throw left.
    fn clear_unfinished(&self) {
        for place in [Place::Throws, Place::Deleted] {
            let found = self.disk.list(&self.folder.join(place.name()));
            for path in found.unwrap_or_default() {
                let name = path.name();
                if name.is_some_and(|name| name.starts_with(UNFINISHED) || name.starts_with(GONE)) {
                    // Left there, it does no harm: it is no id, so it is never listed.
                    let _ = self.disk.remove(&path);
                }
            }
        }
    }

    /// Wait until the names in a folder are on the disk.
    fn sync_folder(&self, path: &DiskPath) -> Result<(), StoreError> {
        self.disk.sync_folder(path).map_err(failed(path))
    }

    fn must_be_claimed(&self) -> Result<(), StoreError> {
        self.lock.as_ref().map(|_| ()).ok_or(StoreError::Locked)
    }

    fn throw_folder(&self, place: Place, id: &ThrowId) -> DiskPath {
        self.folder.join(place.name()).join(id.as_str())
    }

    /// The file of a throw.
    pub fn throw_file(&self, place: Place, id: &ThrowId) -> DiskPath {
        self.throw_folder(place, id).join(THROW_FILE)
    }

    /// The throws there, in no order.
    ///
    /// # Errors
    /// [`StoreError::Disk`]; a folder that is not there yet holds none.
    pub fn ids(&self, place: Place) -> Result<Vec<ThrowId>, StoreError> {
        let path = self.folder.join(place.name());
        let found = match self.disk.list(&path) {
            Ok(found) => found,
            Err(why) if why.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
            Err(why) => return Err(failed(&path)(why)),
        };
        let folders = found.iter().filter(|path| self.disk.is_folder(path));
        Ok(folders
            .filter_map(|path| ThrowId::parse(path.name()?).ok())
            .collect())
    }

    /// Whether there is such a throw, anywhere.
    pub fn knows(&self, id: &ThrowId) -> bool {
        [Place::Throws, Place::Deleted]
            .into_iter()
            .any(|place| self.disk.exists(&self.throw_folder(place, id)))
    }

    /// How long its file is, in bytes; 0 if unknown.
    pub fn length(&self, place: Place, id: &ThrowId) -> u64 {
        let about = self.disk.about(&self.throw_file(place, id));
        about.map_or(0, |about| about.length)
    }

    /// When its file was last written, in milliseconds since 1970; 0 if unknown.
    pub fn written(&self, place: Place, id: &ThrowId) -> Time {
        let about = self.disk.about(&self.throw_file(place, id));
        about.map_or(0, |about| about.written)
    }
}

/// Put a whole file in the place of one that may be there. A copy of a throw's file is as open as
/// that file.
fn put(disk: &dyn Disk, path: &DiskPath, bytes: &[u8]) -> io::Result<()> {
    let copy = path
        .name()
        .is_some_and(|name| name.starts_with(THROW_FILE) && name != THROW_FILE);
    let model = if copy {
        path.with_name(THROW_FILE)
    } else {
        disk.resolve(path)
    };
    crate::disk::put(disk, path, &fresh_beside(path), bytes, &model)
}

/// Where a file is written before it takes the place of one.
fn fresh_beside(path: &DiskPath) -> DiskPath {
    path.with_ending(".new")
}

/// A name beside a file for a copy of it that no other copy has, even if the clock was
/// set back.
fn free_name(disk: &dyn Disk, path: &DiskPath, called: &str, now: Time) -> DiskPath {
    let name = |n: u32| {
        let more = if n == 0 {
            String::new()
        } else {
            format!("-{n}")
        };
        path.with_name(&format!("{THROW_FILE}.{called}-{now}{more}"))
    };
    (0..u32::MAX)
        .map(name)
        .find(|copy| !disk.exists(copy))
        .unwrap_or_else(|| name(u32::MAX))
}
