//! A disk made of files that are open from the start: for a browser, which reads and writes an
//! open file at once but opens, renames and removes files only while nothing else runs.
//!
//! A [`Pool`] keeps every file in a slot ([`Slots`]), and in two further slots an index of which
//! name stands for which slot (`index`). To make, rename or remove a file only changes the
//! index, in memory until [`Disk::sync_folder`] writes it: all names at once, so that a rename is
//! one step also across folders.
//!
//! Promises: whenever the app dies, one of the two indexes is whole, and every file that it
//! names has the bytes that were synced. A slot whose file is gone is used again only once an
//! index that no longer names it is on the disk; then it is also emptied. A folder that is synced
//! makes all other names safe as well, which is more than was asked.
//!
//! One that is opened for looking ([`Pool::read_only`]) changes nothing and gives no lock: it is what
//! a second page gets while the first has the files.
//!
//! Limits: a name is not distinguished from another by anything but its text; times of writing are not
//! told. When all slots are in use a new file is refused as on a full disk; whoever opens the
//! files sees to it that some are free ([`Pool::free`], [`Pool::grow`]).

mod index;
mod slots;
#[cfg(test)]
mod tests;

pub use slots::Slots;

use index::{Index, KeptFile};
use lapwork_service::disk::{About, Disk, DiskFile, DiskLock, DiskPath, EntryKind, OpenMode};
use slots::{read_all, read_from};
use std::collections::{BTreeMap, BTreeSet};
use std::io;
use std::path::Path;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// A file of the pool.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct FileAt {
    slot: usize,
    id: u64,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum PoolEntry {
    Folder,
    File(FileAt),
}

#[derive(Debug)]
struct Inner {
    slots: Box<dyn Slots>,
    by_path: BTreeMap<DiskPath, PoolEntry>,
    /// The index that was written last.
    kept: Index,
    /// Names changed since.
    dirty: bool,
    /// Empty slots that no index names.
    free: BTreeSet<usize>,
    /// Slots of files that are gone, which the index on the disk may still name.
    leaving: BTreeSet<usize>,
    /// Slots known so far.
    known: usize,
    /// How often each slot was changed since the start.
    changes: BTreeMap<usize, i64>,
    next: u64,
    /// Files that are held, by number.
    held: BTreeSet<u64>,
    looking: bool,
}

/// The disk; clones are the same disk.
#[derive(Debug, Clone)]
pub struct Pool(Arc<Mutex<Inner>>);

impl Pool {
    /// Open what lies in these slots; where all of them are empty, begin anew.
    ///
    /// # Errors
    /// What the system said; [`io::ErrorKind::InvalidData`] if there are bytes but no whole
    /// index, which is then left as it is; [`io::ErrorKind::StorageFull`] for too few slots.
    pub fn open(slots: Box<dyn Slots>) -> io::Result<Pool> {
        if slots.count() <= index::SLOTS {
            return Err(io::ErrorKind::StorageFull.into());
        }
        let kept = match Index::read(&*slots)? {
            Some(kept) => kept,
            None => begin(&*slots)?,
        };
        let pool = Pool::of(slots, kept, false);
        pool.grow()?;
        Ok(pool)
    }

    /// Look at what lies in these slots, and change nothing.
    ///
    /// # Errors
    /// What the system said.
    pub fn read_only(slots: Box<dyn Slots>) -> io::Result<Pool> {
        let kept = Index::read(&*slots)?.unwrap_or_default();
        Ok(Pool::of(slots, kept, true))
    }

    fn of(slots: Box<dyn Slots>, kept: Index, looking: bool) -> Pool {
        let mut by_path = BTreeMap::new();
        for folder in &kept.folders {
            by_path.insert(DiskPath::from(folder.as_str()), PoolEntry::Folder);
        }
        for KeptFile { path, slot, id } in &kept.files {
            let at = FileAt {
                slot: *slot,
                id: *id,
            };
            by_path.insert(DiskPath::from(path.as_str()), PoolEntry::File(at));
        }
        Pool(Arc::new(Mutex::new(Inner {
            slots,
            by_path,
            next: kept.next,
            kept,
            dirty: false,
            free: BTreeSet::new(),
            leaving: BTreeSet::new(),
            known: index::SLOTS,
            changes: BTreeMap::new(),
            held: BTreeSet::new(),
            looking,
        })))
    }

    /// How many new files there is room for.
    pub fn free(&self) -> usize {
        let inner = self.inner();
        inner.free.len() + inner.leaving.len()
    }

    /// Take up slots that came since.
    ///
    /// # Errors
    /// What the system said where a slot could not be emptied; it is then not used.
    pub fn grow(&self) -> io::Result<()> {
        let mut inner = self.inner();
        let used: BTreeSet<usize> = inner.files().map(|at| at.slot).collect();
        while inner.known < inner.slots.count() {
            let slot = inner.known;
            inner.known += 1;
            if !used.contains(&slot) {
                // What an app that died left there is named by nothing.
                inner.slots.cut(slot, 0)?;
                inner.free.insert(slot);
            }
        }
        Ok(())
    }

    fn inner(&self) -> MutexGuard<'_, Inner> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Write the first index, before anything else is.
fn begin(slots: &dyn Slots) -> io::Result<Index> {
    for slot in index::SLOTS..slots.count() {
        if slots.length(slot)? > 0 {
            return Err(io::Error::new(
                io::ErrorKind::InvalidData,
                "the list of the files kept here cannot be read",
            ));
        }
    }
    let mut first = Index::default();
    // In both slots, so that from now on there is always a whole one.
    first.write(slots)?;
    first.write(slots)?;
    Ok(first)
}

impl Inner {
    fn files(&self) -> impl Iterator<Item = FileAt> + '_ {
        self.by_path.values().filter_map(|thing| match thing {
            PoolEntry::File(at) => Some(*at),
            PoolEntry::Folder => None,
        })
    }

    fn may_change(&self) -> io::Result<()> {
        match self.looking {
            true => Err(io::ErrorKind::ReadOnlyFilesystem.into()),
            false => Ok(()),
        }
    }

    fn find(&self, path: &DiskPath) -> io::Result<PoolEntry> {
        if [Path::new(""), Path::new("."), Path::new("/")].contains(&path.as_ref()) {
            return Ok(PoolEntry::Folder);
        }
        let found = self.by_path.get(path).copied();
        found.ok_or_else(|| io::ErrorKind::NotFound.into())
    }

    fn file(&self, path: &DiskPath) -> io::Result<FileAt> {
        match self.find(path)? {
            PoolEntry::Folder => Err(io::ErrorKind::IsADirectory.into()),
            PoolEntry::File(at) => Ok(at),
        }
    }

    /// See that something can be put there.
    fn room_for(&self, path: &DiskPath) -> io::Result<()> {
        match path.parent().map(|above| self.find(&above)) {
            None | Some(Ok(PoolEntry::Folder)) => {}
            Some(Ok(PoolEntry::File(_))) => return Err(io::ErrorKind::NotADirectory.into()),
            Some(Err(why)) => return Err(why),
        }
        match self.find(path) {
            Ok(_) => Err(io::ErrorKind::AlreadyExists.into()),
            Err(_) => Ok(()),
        }
    }

    /// All that lies in a folder, at any depth.
    fn within(&self, path: &DiskPath) -> Vec<DiskPath> {
        let all = self.by_path.keys();
        all.filter(|other| *other != path && other.as_ref().starts_with(path))
            .cloned()
            .collect()
    }

    /// An empty slot for a new file.
    fn slot(&mut self) -> io::Result<usize> {
        if self.free.is_empty() && !self.leaving.is_empty() {
            self.keep_names()?;
        }
        let slot = self.free.pop_first().ok_or(io::ErrorKind::StorageFull)?;
        if let Err(why) = self.slots.cut(slot, 0) {
            self.free.insert(slot);
            return Err(why);
        }
        Ok(slot)
    }

    fn make_file(&mut self, path: &DiskPath) -> io::Result<FileAt> {
        self.may_change()?;
        self.room_for(path)?;
        if path.as_ref().to_str().is_none() {
            return Err(io::ErrorKind::InvalidInput.into());
        }
        let at = FileAt {
            slot: self.slot()?,
            id: self.next,
        };
        self.next += 1;
        self.by_path.insert(path.clone(), PoolEntry::File(at));
        self.dirty = true;
        self.touched(at.slot);
        Ok(at)
    }

    fn touched(&mut self, slot: usize) {
        *self.changes.entry(slot).or_default() += 1;
    }

    fn forget(&mut self, path: &DiskPath) {
        if let Some(PoolEntry::File(at)) = self.by_path.remove(path) {
            self.leaving.insert(at.slot);
        }
        self.dirty = true;
    }

    /// Write the index, and empty the slots it no longer names.
    fn keep_names(&mut self) -> io::Result<()> {
        self.may_change()?;
        let mut index = Index {
            next: self.next,
            folders: Vec::new(),
            files: Vec::new(),
            ..self.kept
        };
        for (path, thing) in &self.by_path {
            let path = path.to_string();
            match thing {
                PoolEntry::Folder => index.folders.push(path),
                PoolEntry::File(FileAt { slot, id }) => index.files.push(KeptFile {
                    path,
                    slot: *slot,
                    id: *id,
                }),
            }
        }
        index.write(&*self.slots)?;
        self.kept = index;
        self.dirty = false;
        for slot in std::mem::take(&mut self.leaving) {
            // One that cannot be emptied now is emptied before it is used again.
            let _ = self.slots.cut(slot, 0);
            self.free.insert(slot);
        }
        Ok(())
    }

    fn about(&self, thing: PoolEntry) -> io::Result<About> {
        let at = match thing {
            PoolEntry::Folder => {
                return Ok(About {
                    kind: EntryKind::Folder,
                    length: 0,
                    identity: None,
                    changed: None,
                    written: 0,
                });
            }
            PoolEntry::File(at) => at,
        };
        // Nobody else can write there, so counting our own changes is enough.
        let changes = self.changes.get(&at.slot).copied().unwrap_or_default();
        Ok(About {
            kind: EntryKind::File,
            length: self.slots.length(at.slot)?,
            identity: Some((1, at.id)),
            changed: (!self.looking).then_some((changes, 0)),
            written: 0,
        })
    }

    /// That a file which is open is still there.
    fn lives(&self, at: FileAt) -> io::Result<()> {
        let lives = self.files().any(|file| file == at);
        lives.then_some(()).ok_or(io::ErrorKind::NotFound.into())
    }
}

impl Disk for Pool {
    fn make_folder(&self, path: &DiskPath) -> io::Result<()> {
        let mut inner = self.inner();
        inner.may_change()?;
        inner.room_for(path)?;
        if path.as_ref().to_str().is_none() {
            return Err(io::ErrorKind::InvalidInput.into());
        }
        inner.by_path.insert(path.clone(), PoolEntry::Folder);
        inner.dirty = true;
        Ok(())
    }

    fn open(&self, path: &DiskPath, how: OpenMode) -> io::Result<Box<dyn DiskFile>> {
        let mut inner = self.inner();
        let at = match how {
            OpenMode::New => inner.make_file(path)?,
            OpenMode::Append => {
                inner.may_change()?;
                inner.file(path)?
            }
        };
        let pool = self.clone();
        Ok(Box::new(PoolFile { pool, at }))
    }

    fn read(&self, path: &DiskPath, most: u64) -> io::Result<Vec<u8>> {
        let inner = self.inner();
        let at = inner.file(path)?;
        read_all(&*inner.slots, at.slot, most)
    }

    fn about(&self, path: &DiskPath) -> io::Result<About> {
        let inner = self.inner();
        inner.about(inner.find(path)?)
    }

    fn list(&self, path: &DiskPath) -> io::Result<Vec<DiskPath>> {
        let inner = self.inner();
        match inner.find(path)? {
            PoolEntry::File(_) => Err(io::ErrorKind::NotADirectory.into()),
            PoolEntry::Folder => {
                let mut found = inner.within(path);
                found.retain(|other| other.parent().as_ref() == Some(path));
                Ok(found)
            }
        }
    }

    fn rename(&self, from: &DiskPath, to: &DiskPath) -> io::Result<()> {
        let mut inner = self.inner();
        inner.may_change()?;
        let moved = inner.find(from)?;
        match (inner.find(to), moved) {
            _ if from == to => return Ok(()),
            (Ok(PoolEntry::File(_)), PoolEntry::File(_)) => inner.forget(to),
            (Ok(_), _) => return Err(io::ErrorKind::AlreadyExists.into()),
            (Err(_), _) => inner.room_for(to)?,
        }
        if to.as_ref().starts_with(from) {
            return Err(io::ErrorKind::InvalidInput.into());
        }
        for path in inner.within(from) {
            let rest = path.as_ref().strip_prefix(from);
            let rest = rest.map_err(io::Error::other)?.to_path_buf();
            if let Some(thing) = inner.by_path.remove(&path) {
                let there = DiskPath::from(to.as_ref().join(rest));
                inner.by_path.insert(there, thing);
            }
        }
        inner.by_path.remove(from);
        inner.by_path.insert(to.clone(), moved);
        inner.dirty = true;
        Ok(())
    }

    fn remove(&self, path: &DiskPath) -> io::Result<()> {
        let mut inner = self.inner();
        inner.may_change()?;
        inner.find(path)?;
        for path in inner.within(path) {
            inner.forget(&path);
        }
        inner.forget(path);
        Ok(())
    }

    fn sync_folder(&self, path: &DiskPath) -> io::Result<()> {
        let mut inner = self.inner();
        inner.find(path)?;
        match inner.dirty {
            true => inner.keep_names(),
            false => Ok(()),
        }
    }

    fn lock(&self, path: &DiskPath) -> io::Result<Option<Box<dyn DiskLock>>> {
        let mut inner = self.inner();
        if inner.looking {
            return Ok(None);
        }
        let at = match inner.find(path) {
            Ok(PoolEntry::File(at)) => at,
            Ok(PoolEntry::Folder) => return Err(io::ErrorKind::IsADirectory.into()),
            Err(_) => inner.make_file(path)?,
        };
        if !inner.held.insert(at.id) {
            return Ok(None);
        }
        let pool = self.clone();
        Ok(Some(Box::new(PoolLock { pool, at })))
    }
}

/// A file of the pool that is open.
#[derive(Debug)]
struct PoolFile {
    pool: Pool,
    at: FileAt,
}

impl DiskFile for PoolFile {
    fn about(&self) -> io::Result<About> {
        let inner = self.pool.inner();
        inner.lives(self.at)?;
        inner.about(PoolEntry::File(self.at))
    }

    fn read_end(&mut self, most: u64) -> io::Result<Vec<u8>> {
        let inner = self.pool.inner();
        inner.lives(self.at)?;
        let length = inner.slots.length(self.at.slot)?;
        let most = most.min(length);
        read_from(&*inner.slots, self.at.slot, length - most, most)
    }

    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let mut inner = self.pool.inner();
        inner.lives(self.at)?;
        inner.touched(self.at.slot);
        let end = inner.slots.length(self.at.slot)?;
        inner.slots.write(self.at.slot, end, bytes)
    }

    fn sync(&mut self) -> io::Result<()> {
        let inner = self.pool.inner();
        inner.lives(self.at)?;
        inner.slots.sync(self.at.slot)
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        let mut inner = self.pool.inner();
        inner.lives(self.at)?;
        inner.touched(self.at.slot);
        inner.slots.cut(self.at.slot, length)
    }
}

/// A file of the pool that is held.
#[derive(Debug)]
struct PoolLock {
    pool: Pool,
    at: FileAt,
}

impl DiskLock for PoolLock {
    fn about(&self) -> io::Result<About> {
        let inner = self.pool.inner();
        inner.about(PoolEntry::File(self.at))
    }
}

impl Drop for PoolLock {
    fn drop(&mut self) {
        self.pool.inner().held.remove(&self.at.id);
    }
}
