//! Reading throws, and repairing a torn or doubtful file while it is read.

use super::opened::Seal;
use super::{
    MOST_BYTES, Mended, Opened, Place, Store, StoreError, SyncState, THROW_FILE, ThrowId, failed,
    free_name, fresh_beside, opened, put,
};
use crate::disk::{self, About, Disk, DiskPath, EntryKind, OpenMode, at_its_place, write_new};
use lapwork_core::log::journal::{Journal, VERSION};
use lapwork_core::throw::Time;
use std::io;

impl Store {
    /// Read a throw of any place; nothing is mended.
    ///
    /// # Errors
    /// What stands in the way.
    pub fn read(&self, place: Place, id: &ThrowId) -> Result<Opened, StoreError> {
        let path = self.throw_file(place, id);
        opened(&path, &bytes_of(&*self.disk, &path)?)
    }

    /// Read a throw in work. If this is the one that may write, a torn last line is left
    /// out once a copy of the file is kept beside it, and a doubtful file is written
    /// afresh; where that cannot be done the throw is readable all the same, and
    /// [`Opened::torn`] or [`Opened::held`].
    ///
    /// # Errors
    /// What stands in the way.
    pub fn open(&self, id: &ThrowId, now: Time) -> Result<Opened, StoreError> {
        let path = self.throw_file(Place::Throws, id);
        if self.claimed() {
            self.sync_seen(id, &path);
        }
        let bytes = bytes_of(&*self.disk, &path)?;
        let opened = opened(&path, &bytes)?;
        if !self.claimed() {
            return Ok(opened);
        }
        let doubtful = self.is(id, SyncState::Doubtful);
        if !(opened.torn() || doubtful) {
            return Ok(self.upgraded(id, opened, now));
        }
        // A full or read-only disk must not keep the maker from seeing her throw.
        Ok(match self.renew(id, &bytes, &opened, now) {
            Ok(mended) => {
                let opened = Opened {
                    left_out: 0,
                    mended,
                    ..opened
                };
                self.upgraded(id, opened, now)
            }
            Err(_) => Opened {
                held: doubtful || !opened.torn(),
                ..opened
            },
        })
    }

    /// The last lines of an app that died may be visible and not be on the disk: they are synced
    /// before they are shown. If that fails, the throw is doubtful.
    fn sync_seen(&self, id: &ThrowId, path: &DiskPath) {
        // Reading refuses what is no plain file; opening a pipe could wait forever.
        let known = self.known.borrow().contains_key(id);
        if known || plain(&*self.disk, path).is_err() {
            return;
        }
        // One that cannot be opened for writing cannot be added to either.
        let Ok(mut file) = self.disk.open(path, OpenMode::Append) else {
            return;
        };
        let folder = self.throw_folder(Place::Throws, id);
        let synced = file.sync();
        let synced = synced.and_then(|()| self.disk.sync_folder(&folder));
        self.mark(
            id,
            match synced {
                Ok(()) => SyncState::Synced,
                Err(_) => SyncState::Doubtful,
            },
        );
    }

    /// A throw file upgraded to this version, where that can be done; where not it can
    /// be read and written on as it is, and is upgraded another time.
    fn upgraded(&self, id: &ThrowId, opened: Opened, now: Time) -> Opened {
        if opened.version >= VERSION {
            return opened;
        }
        let path = self.throw_file(Place::Throws, id);
        match upgrade(&*self.disk, &path, &opened.journal, opened.version, now) {
            Ok(_) => {
                self.written_whole(id);
                Opened {
                    seal: Seal::of(opened.journal.text().as_bytes()),
                    lacks_newline: false,
                    version: VERSION,
                    ..opened
                }
            }
            Err(_) => {
                // The new file may be in its place without the disk having said so.
                let untouched = |about: About| about.length == opened.seal.length;
                let held = !self.disk.about(&path).is_ok_and(untouched);
                if held {
                    self.mark(id, SyncState::Doubtful);
                }
                Opened { held, ..opened }
            }
        }
    }

    /// A throw's file as it is, byte for byte.
    ///
    /// # Errors
    /// What stands in the way.
    pub fn untouched(&self, id: &ThrowId) -> Result<Vec<u8>, StoreError> {
        bytes_of(&*self.disk, &self.throw_file(Place::Throws, id))
    }

    /// The sound part of a throw's file, byte for byte, as it is exported.
    ///
    /// # Errors
    /// What stands in the way.
    pub fn bytes(&self, id: &ThrowId) -> Result<Vec<u8>, StoreError> {
        let path = self.throw_file(Place::Throws, id);
        let mut bytes = bytes_of(&*self.disk, &path)?;
        let read = Journal::read(&bytes).map_err(|how| StoreError::Damaged { path, how })?;
        if read.torn {
            bytes.truncate(read.sound);
        }
        if read.lacks_newline {
            bytes.push(b'\n');
        }
        Ok(bytes)
    }

    /// Put what is sound of a throw's file, as just read, in a fresh file in its place. A
    /// copy of all of it is kept first if anything is left out.
    pub(super) fn renew(
        &self,
        id: &ThrowId,
        bytes: &[u8],
        read: &Opened,
        now: Time,
    ) -> io::Result<Option<Mended>> {
        let path = self.throw_file(Place::Throws, id);
        let mended = if read.torn() {
            let copy = free_name(&*self.disk, &path, "torn", now);
            put(&*self.disk, &copy, bytes)?;
            Some(Mended {
                copy,
                bytes: read.left_out,
            })
        } else {
            None
        };
        let sound = usize::try_from(read.seal.length).map_or(bytes, |sound| &bytes[..sound]);
        let (place, beside) = at_its_place(&*self.disk, &path, &fresh_beside(&path));
        let throws = self.folder.join(Place::Throws.name());
        let renewed = write_new(&*self.disk, &beside, sound, Some(&place)).and_then(|()| {
            // From here the names in the folder are in doubt until they are synced.
            self.mark(id, SyncState::Doubtful);
            disk::name(&*self.disk, &place, &beside)?;
            self.disk.sync_folder(&throws)
        });
        match renewed {
            Ok(()) => {
                self.mark(id, SyncState::Fresh);
                Ok(mended)
            }
            Err(why) => {
                // As long as the file itself is untouched a copy only takes up room.
                let untouched = |about: About| about.length == bytes.len() as u64;
                if let Some(mended) = mended
                    && self.disk.about(&path).is_ok_and(untouched)
                {
                    let _ = self.disk.remove(&mended.copy);
                }
                Err(why)
            }
        }
    }
}

/// Write a throw file of an older version anew in this one, once the file as it is lies
/// beside it; gives where.
pub(crate) fn upgrade(
    disk: &dyn Disk,
    path: &DiskPath,
    journal: &Journal,
    version: u32,
    now: Time,
) -> Result<DiskPath, StoreError> {
    let bytes = bytes_of(disk, path)?;
    let mut copy = path.with_name(&format!("{THROW_FILE}.version-{version}"));
    if disk.exists(&copy) && disk.read(&copy, MOST_BYTES + 1).map_err(failed(&copy))? != bytes {
        copy = free_name(disk, path, &format!("version-{version}"), now);
    }
    put(disk, &copy, &bytes).map_err(failed(&copy))?;
    put(disk, path, journal.text().as_bytes()).map_err(failed(path))?;
    Ok(copy)
}

/// Refuse what is neither a file nor a folder: reading a pipe could take forever.
pub(crate) fn plain(disk: &dyn Disk, path: &DiskPath) -> Result<(), StoreError> {
    let odd = |about: About| about.kind == EntryKind::Other;
    if disk.about(path).is_ok_and(odd) {
        return Err(failed(path)(io::Error::other("it is no plain file")));
    }
    Ok(())
}

/// All of a throw file, unless it is too large.
pub(crate) fn bytes_of(disk: &dyn Disk, path: &DiskPath) -> Result<Vec<u8>, StoreError> {
    plain(disk, path)?;
    // The size decides, so that a huge file is not read at all.
    if disk
        .about(path)
        .is_ok_and(|about| about.length > MOST_BYTES)
    {
        let path = path.clone();
        return Err(StoreError::TooLarge { path });
    }
    let bytes = match disk.read(path, MOST_BYTES + 1) {
        Ok(bytes) => bytes,
        Err(why) if why.kind() == io::ErrorKind::NotFound => {
            let path = path.clone();
            return Err(match path.parent() {
                Some(folder) if disk.is_folder(&folder) => StoreError::Missing { path },
                _ => StoreError::NoSuchThrow,
            });
        }
        Err(why) => return Err(failed(path)(why)),
    };
    if bytes.len() as u64 > MOST_BYTES {
        let path = path.clone();
        return Err(StoreError::TooLarge { path });
    }
    Ok(bytes)
}
