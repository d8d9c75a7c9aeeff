//! Appending an entry to a throw's file, after checking that no other program changed the file.

use super::opened::Seal;
use super::{
    LONGEST_LINE, MOST_BYTES, MOST_COPIES, Opened, Place, Seen, Store, StoreError, SyncState, TAIL,
    ThrowId, bytes_of, failed, opened,
};
use crate::disk::{About, DiskFile, DiskPath, OpenMode, write_all};
use lapwork_core::log::journal::Entry;
use lapwork_core::throw::Time;
use std::io;

/// How the file that lies there stands to the one that was written.
enum Comparison {
    /// It is that one.
    Ours(About),
    /// It is another file with the same in it.
    Copy,
    /// It is not that one.
    Other,
}

impl Store {
    /// Write an entry at the end of a throw's file and wait until it is on the disk.
    /// Only then may it be accepted. After an error `opened` no longer says what is
    /// on the disk: read the file again before the next append, unless it was
    /// [`StoreError::Changed`].
    ///
    /// # Errors
    /// What stood in the way; the entry is then not in the file, except that
    /// [`StoreError::Unsure`] says what is to be read there.
    pub fn append(
        &self,
        id: &ThrowId,
        opened: &mut Opened,
        entry: &Entry,
    ) -> Result<(), StoreError> {
        self.must_be_claimed()?;
        let path = self.throw_file(Place::Throws, id);
        if opened.torn() {
            return Err(StoreError::Torn { path });
        }
        if opened.held {
            return Err(StoreError::Held { path });
        }
        let line = entry.line();
        if Entry::from_line(line.trim_end_matches('\n')).as_ref() != Some(entry) {
            return Err(StoreError::Unreadable);
        }
        let newline = if opened.lacks_newline { "\n" } else { "" };
        let text = format!("{newline}{line}");
        let length = opened.seal.length;
        if line.len() > LONGEST_LINE || length + text.len() as u64 > MOST_BYTES {
            return Err(StoreError::TooLarge { path });
        }
        let mut file = self.own_file(id, opened, entry.at)?;
        if let Err(why) = write_all(&mut *file, text.as_bytes()) {
            // What was not acknowledged must not come back.
            let cut = file.cut(length);
            if cut.and_then(|()| file.sync()).is_ok() {
                return Err(failed(&path)(why));
            }
            drop(file);
            return self.settle(id, opened, entry, why);
        }
        if let Err(why) = file.sync() {
            drop(file);
            return self.settle(id, opened, entry, why);
        }
        let mut seal = opened.seal.clone();
        seal.grow(text.as_bytes());
        match self.ends_as(&mut *file, &path, &seal) {
            Ok(Some(about)) => {
                seal.about = Some(about);
                opened.seal = seal;
                opened.lacks_newline = false;
                Ok(())
            }
            Ok(None) => {
                drop(file);
                Err(self.put_back(id, opened, entry.at))
            }
            Err(why) => {
                drop(file);
                self.settle(id, opened, entry, why)
            }
        }
    }

    /// A throw's file opened to add to it, once it is known to be the one that was written.
    fn own_file(
        &self,
        id: &ThrowId,
        opened: &mut Opened,
        now: Time,
    ) -> Result<Box<dyn DiskFile>, StoreError> {
        let path = self.throw_file(Place::Throws, id);
        for _ in 0..MOST_COPIES {
            if !self.is(id, SyncState::Fresh) {
                self.freshen(id, opened, now)?;
            }
            let mut file = match self.disk.open(&path, OpenMode::Append) {
                Ok(file) => file,
                Err(why) if why.kind() == io::ErrorKind::NotFound => {
                    return Err(self.put_back(id, opened, now));
                }
                Err(why) => return Err(failed(&path)(why)),
            };
            match self.compare(&mut *file, &path, &opened.seal) {
                Ok(Comparison::Ours(about)) => {
                    opened.seal.about = Some(about);
                    return Ok(file);
                }
                // The other program may not have waited until the file was on the disk.
                Ok(Comparison::Copy) => self.unknown(id),
                Ok(Comparison::Other) => {
                    drop(file);
                    return Err(self.put_back(id, opened, now));
                }
                Err(why) => return Err(failed(&path)(why)),
            }
        }
        let why = io::Error::other("another program changes it again and again");
        Err(failed(&path)(why))
    }

    /// Whether the file that is open is the one at `path` and ends as the one that was
    /// written; what the system reports of it then.
    fn ends_as(
        &self,
        file: &mut dyn DiskFile,
        path: &DiskPath,
        seal: &Seal,
    ) -> io::Result<Option<About>> {
        let own = file.about()?;
        let there = match self.disk.about(path) {
            Err(why) if why.kind() == io::ErrorKind::NotFound => return Ok(None),
            there => there?,
        };
        let alike = there.identity == own.identity && own.length == seal.length;
        let alike = alike && file.read_end(TAIL as u64)? == seal.tail;
        Ok(alike.then_some(own))
    }

    /// How the file that is open stands to the one that was written.
    fn compare(
        &self,
        file: &mut dyn DiskFile,
        path: &DiskPath,
        seal: &Seal,
    ) -> io::Result<Comparison> {
        let Some(own) = self.ends_as(file, path, seal)? else {
            return Ok(Comparison::Other);
        };
        if seal.about == Some(own) && own.changed.is_some() {
            return Ok(Comparison::Ours(own));
        }
        // It was touched, or nothing is known of it: all of it is held against what was
        // written.
        let bytes = self.disk.read(path, MOST_BYTES + 1)?;
        Ok(match seal.about {
            _ if !seal.is_of(&bytes) => Comparison::Other,
            Some(known) if known.identity != own.identity => Comparison::Copy,
            _ => Comparison::Ours(own),
        })
    }

    /// Write the file again before the first entry since the folder was claimed. A failed sync of
    /// an earlier session may have left bytes in it that are visible and will never be written, and
    /// no sync would report that. The module's head says why no cheaper way is used.
    fn freshen(&self, id: &ThrowId, opened: &mut Opened, now: Time) -> Result<(), StoreError> {
        let path = self.throw_file(Place::Throws, id);
        match bytes_of(&*self.disk, &path) {
            Ok(bytes) if opened.seal.is_of(&bytes) => {
                opened.seal.about = None;
                self.renew(id, &bytes, opened, now).map_err(failed(&path))?;
                Ok(())
            }
            Ok(_)
            | Err(
                StoreError::Missing { .. } | StoreError::NoSuchThrow | StoreError::TooLarge { .. },
            ) => Err(self.put_back(id, opened, now)),
            Err(error) => Err(error),
        }
    }

    /// The disk failed at a file's end: read what is there, put that in a fresh file,
    /// and say which it was. If the entry is there and the fresh file safe, it is kept.
    fn settle(
        &self,
        id: &ThrowId,
        before: &mut Opened,
        entry: &Entry,
        why: io::Error,
    ) -> Result<(), StoreError> {
        self.mark(id, SyncState::Doubtful);
        let path = self.throw_file(Place::Throws, id);
        let read = bytes_of(&*self.disk, &path)
            .and_then(|bytes| opened(&path, &bytes).map(|now| (now, bytes)));
        let Ok((now, bytes)) = read else {
            let seen = Seen::Neither;
            return Err(StoreError::Unsure { path, why, seen });
        };
        let old = before.journal.text();
        let text = now.journal.text();
        let seen = if text == old {
            Seen::Before
        } else if text.strip_prefix(&old) == Some(&entry.line()) {
            Seen::After
        } else {
            let seen = Seen::Neither;
            return Err(StoreError::Unsure { path, why, seen });
        };
        match (self.renew(id, &bytes, &now, entry.at), seen) {
            (Ok(_), Seen::After) => {
                before.seal = now.seal;
                before.lacks_newline = now.lacks_newline;
                Ok(())
            }
            (Ok(_), _) => Err(failed(&path)(why)),
            (Err(_), seen) => Err(StoreError::Unsure { path, why, seen }),
        }
    }
}
