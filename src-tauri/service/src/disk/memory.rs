//! A disk in memory, for tests and for machines without a file system.

use super::{About, Disk, DiskFile, DiskLock, DiskPath, EntryKind, OpenMode};
use std::collections::BTreeMap;
use std::io;
use std::path::Path;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

type Bytes = Arc<Mutex<Vec<u8>>>;

#[derive(Debug, Clone)]
enum MemoryEntry {
    Folder,
    File {
        which: u64,
        bytes: Bytes,
        held: Arc<AtomicBool>,
    },
}

#[derive(Debug, Default)]
struct Things {
    by_path: BTreeMap<DiskPath, MemoryEntry>,
    made: u64,
}

/// A disk in memory; clones are the same disk. Nothing on it outlives the program, so
/// nothing needs to be synced.
///
/// Limits: it has no times, so a file that is open is compared in full before something
/// is added to it.
#[derive(Debug, Clone, Default)]
pub struct MemoryDisk(Arc<Mutex<Things>>);

impl MemoryDisk {
    /// A disk with nothing on it.
    pub fn new() -> MemoryDisk {
        MemoryDisk::default()
    }

    fn things(&self) -> MutexGuard<'_, Things> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn inside(bytes: &Bytes) -> MutexGuard<'_, Vec<u8>> {
    bytes.lock().unwrap_or_else(PoisonError::into_inner)
}

impl Things {
    fn find(&self, path: &DiskPath) -> io::Result<MemoryEntry> {
        let root = Path::new("").as_os_str();
        let path_os = path.as_ref().as_os_str();
        if path_os == root || path_os == "." || path_os == "/" {
            return Ok(MemoryEntry::Folder);
        }
        let found = self.by_path.get(path).cloned();
        found.ok_or_else(|| io::ErrorKind::NotFound.into())
    }

    /// See that something can be put there.
    fn room_for(&self, path: &DiskPath) -> io::Result<()> {
        match path.parent().map(|above| self.find(&above)) {
            None | Some(Ok(MemoryEntry::Folder)) => {}
            Some(Ok(MemoryEntry::File { .. })) => return Err(io::ErrorKind::NotADirectory.into()),
            Some(Err(why)) => return Err(why),
        }
        match self.find(path) {
            Ok(_) => Err(io::ErrorKind::AlreadyExists.into()),
            Err(_) => Ok(()),
        }
    }

    fn make_file(&mut self, path: &DiskPath) -> io::Result<MemoryEntry> {
        self.room_for(path)?;
        self.made += 1;
        let file = MemoryEntry::File {
            which: self.made,
            bytes: Bytes::default(),
            held: Arc::default(),
        };
        self.by_path.insert(path.clone(), file.clone());
        Ok(file)
    }

    /// The whole content of a folder, at any depth.
    fn within(&self, path: &DiskPath) -> Vec<DiskPath> {
        let all = self.by_path.keys();
        all.filter(|other| *other != path && other.as_ref().starts_with(path))
            .cloned()
            .collect()
    }
}

fn about(thing: &MemoryEntry) -> About {
    let (kind, length, identity) = match thing {
        MemoryEntry::Folder => (EntryKind::Folder, 0, None),
        MemoryEntry::File { which, bytes, .. } => (
            EntryKind::File,
            inside(bytes).len() as u64,
            Some((0, *which)),
        ),
    };
    About {
        kind,
        length,
        identity,
        changed: None,
        written: 0,
    }
}

impl Disk for MemoryDisk {
    fn make_folder(&self, path: &DiskPath) -> io::Result<()> {
        let mut things = self.things();
        things.room_for(path)?;
        things.by_path.insert(path.clone(), MemoryEntry::Folder);
        Ok(())
    }

    fn open(&self, path: &DiskPath, how: OpenMode) -> io::Result<Box<dyn DiskFile>> {
        let mut things = self.things();
        let thing = match how {
            OpenMode::New => things.make_file(path)?,
            OpenMode::Append => things.find(path)?,
        };
        match thing {
            MemoryEntry::Folder => Err(io::ErrorKind::IsADirectory.into()),
            file @ MemoryEntry::File { .. } => Ok(Box::new(MemoryFile(file))),
        }
    }

    fn read(&self, path: &DiskPath, most: u64) -> io::Result<Vec<u8>> {
        match self.things().find(path)? {
            MemoryEntry::Folder => Err(io::ErrorKind::IsADirectory.into()),
            MemoryEntry::File { bytes, .. } => {
                let mut bytes = inside(&bytes).clone();
                bytes.truncate(usize::try_from(most).unwrap_or(usize::MAX));
                Ok(bytes)
            }
        }
    }

    fn about(&self, path: &DiskPath) -> io::Result<About> {
        Ok(about(&self.things().find(path)?))
    }

    fn list(&self, path: &DiskPath) -> io::Result<Vec<DiskPath>> {
        let things = self.things();
        match things.find(path)? {
            MemoryEntry::File { .. } => Err(io::ErrorKind::NotADirectory.into()),
            MemoryEntry::Folder => {
                let mut found = things.within(path);
                found.retain(|other| other.parent().as_ref() == Some(path));
                Ok(found)
            }
        }
    }

    fn rename(&self, from: &DiskPath, to: &DiskPath) -> io::Result<()> {
        let mut things = self.things();
        let moved = things.find(from)?;
        match (things.find(to), &moved) {
            (Ok(MemoryEntry::File { .. }), MemoryEntry::File { .. }) => {}
            (Ok(_), _) => return Err(io::ErrorKind::AlreadyExists.into()),
            (Err(_), _) => things.room_for(to)?,
        }
        for path in things.within(from) {
            let rest = path.as_ref().strip_prefix(from);
            let rest = rest.map_err(io::Error::other)?.to_path_buf();
            if let Some(thing) = things.by_path.remove(&path) {
                let there = DiskPath::from(to.as_ref().join(rest));
                things.by_path.insert(there, thing);
            }
        }
        things.by_path.remove(from);
        things.by_path.insert(to.clone(), moved);
        Ok(())
    }

    fn remove(&self, path: &DiskPath) -> io::Result<()> {
        let mut things = self.things();
        things.find(path)?;
        for inner in things.within(path) {
            things.by_path.remove(&inner);
        }
        things.by_path.remove(path);
        Ok(())
    }

    fn sync_folder(&self, path: &DiskPath) -> io::Result<()> {
        self.things().find(path).map(|_| ())
    }

    fn lock(&self, path: &DiskPath) -> io::Result<Option<Box<dyn DiskLock>>> {
        let mut things = self.things();
        let thing = match things.find(path) {
            Err(_) => things.make_file(path)?,
            Ok(thing) => thing,
        };
        let MemoryEntry::File { held, .. } = &thing else {
            return Err(io::ErrorKind::IsADirectory.into());
        };
        if held.swap(true, Ordering::SeqCst) {
            return Ok(None);
        }
        Ok(Some(Box::new(MemoryLock(thing))))
    }
}

#[derive(Debug)]
struct MemoryFile(MemoryEntry);

impl MemoryFile {
    fn bytes(&self) -> io::Result<MutexGuard<'_, Vec<u8>>> {
        match &self.0 {
            MemoryEntry::File { bytes, .. } => Ok(inside(bytes)),
            MemoryEntry::Folder => Err(io::ErrorKind::IsADirectory.into()),
        }
    }
}

impl DiskFile for MemoryFile {
    fn about(&self) -> io::Result<About> {
        Ok(about(&self.0))
    }

    fn read_end(&mut self, most: u64) -> io::Result<Vec<u8>> {
        let bytes = self.bytes()?;
        let most = usize::try_from(most).unwrap_or(usize::MAX);
        Ok(bytes[bytes.len().saturating_sub(most)..].to_vec())
    }

    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.bytes()?.extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn sync(&mut self) -> io::Result<()> {
        Ok(())
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        let length = usize::try_from(length).map_err(io::Error::other)?;
        self.bytes()?.resize(length, 0);
        Ok(())
    }
}

#[derive(Debug)]
struct MemoryLock(MemoryEntry);

impl DiskLock for MemoryLock {
    fn about(&self) -> io::Result<About> {
        Ok(about(&self.0))
    }
}

impl Drop for MemoryLock {
    fn drop(&mut self) {
        if let MemoryEntry::File { held, .. } = &self.0 {
            held.store(false, Ordering::SeqCst);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_come_and_go_with_all_that_lies_below() {
        let disk = MemoryDisk::new();
        let [a, b] = ["data/a", "data/b"].map(DiskPath::from);
        assert!(disk.make_folder(&a).is_err(), "the folder above is missing");
        disk.make_folder(&DiskPath::from("data")).unwrap();
        disk.make_folder(&a).unwrap();
        let mut file = disk.open(&a.join("x"), OpenMode::New).unwrap();
        assert!(disk.open(&a.join("x"), OpenMode::New).is_err());
        file.write(b"one two").unwrap();
        file.cut(5).unwrap();
        assert_eq!(file.read_end(3).unwrap(), b"e t");
        disk.rename(&a, &b).unwrap();
        assert_eq!(disk.read(&b.join("x"), 3).unwrap(), b"one");
        assert_eq!(disk.list(&b).unwrap(), [b.join("x")]);
        assert!(!disk.exists(&a) && disk.is_folder(&b));
        let identity = file.about().unwrap().identity;
        assert_eq!(disk.about(&b.join("x")).unwrap().identity, identity);
        disk.remove(&b).unwrap();
        assert!(!disk.exists(&b.join("x")));
    }

    #[test]
    fn a_lock_is_held_by_one_and_let_go_when_it_goes() {
        let disk = MemoryDisk::new();
        let path = DiskPath::from("lock");
        let held = disk.lock(&path).unwrap();
        assert!(held.is_some());
        assert!(disk.lock(&path).unwrap().is_none());
        drop(held);
        assert!(disk.lock(&path).unwrap().is_some());
    }
}
