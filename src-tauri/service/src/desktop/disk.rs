//! The disk of a machine with a file system.

use super::milliseconds;
use crate::disk::{About, Disk, DiskFile, DiskLock, DiskPath, EntryKind, OpenMode};
use std::fs::{self, File, Metadata, OpenOptions, TryLockError};
use std::io::{self, Read as _, Seek as _, SeekFrom, Write as _};

/// The disk as the system has it.
///
/// Before a file is read, Linux is asked to forget what it remembers of it, so that what is
/// read is what the disk holds. Only Unix lets a folder be synced; elsewhere nothing can be
/// asked for.
#[derive(Debug, Clone, Copy, Default)]
pub struct DesktopDisk;

impl About {
    fn of(about: &Metadata) -> About {
        let kind = match (about.is_file(), about.is_dir()) {
            (true, _) => EntryKind::File,
            (_, true) => EntryKind::Folder,
            _ => EntryKind::Other,
        };
        let (identity, changed) = identity_of(about);
        About {
            kind,
            length: about.len(),
            identity,
            changed,
            written: about.modified().map_or(0, milliseconds),
        }
    }
}

type Identity = (Option<(u64, u64)>, Option<(i64, i64)>);

/// Which file it is, and when it was last changed.
#[cfg(unix)]
fn identity_of(about: &Metadata) -> Identity {
    use std::os::unix::fs::MetadataExt as _;
    (
        Some((about.dev(), about.ino())),
        Some((about.ctime(), about.ctime_nsec())),
    )
}

/// When it was last changed.
#[cfg(not(unix))]
fn identity_of(about: &Metadata) -> Identity {
    let since = about.modified().ok();
    let since = since.and_then(|at| at.duration_since(std::time::UNIX_EPOCH).ok());
    let changed = |since: std::time::Duration| {
        let seconds = i64::try_from(since.as_secs()).ok()?;
        Some((seconds, i64::from(since.subsec_nanos())))
    };
    (None, since.and_then(changed))
}

impl Disk for DesktopDisk {
    fn make_folder(&self, path: &DiskPath) -> io::Result<()> {
        fs::create_dir(path)
    }

    fn open(&self, path: &DiskPath, how: OpenMode) -> io::Result<Box<dyn DiskFile>> {
        let mut options = OpenOptions::new();
        match how {
            OpenMode::New => options.write(true).create_new(true),
            OpenMode::Append => options.read(true).append(true),
        };
        Ok(Box::new(open_plain(&mut options, path)?))
    }

    fn read(&self, path: &DiskPath, most: u64) -> io::Result<Vec<u8>> {
        let file = open_plain(OpenOptions::new().read(true), path)?;
        #[cfg(target_os = "linux")]
        {
            use rustix::fs::{Advice, fadvise};
            // Advice only: a system that cannot forget reads what it remembers.
            let _ = fadvise(&file, 0, None, Advice::DontNeed);
        }
        let mut bytes = Vec::new();
        file.take(most).read_to_end(&mut bytes)?;
        Ok(bytes)
    }

    fn about(&self, path: &DiskPath) -> io::Result<About> {
        fs::metadata(path).map(|about| About::of(&about))
    }

    fn list(&self, path: &DiskPath) -> io::Result<Vec<DiskPath>> {
        let found = fs::read_dir(path)?.flatten();
        Ok(found.map(|found| DiskPath::from(found.path())).collect())
    }

    fn rename(&self, from: &DiskPath, to: &DiskPath) -> io::Result<()> {
        fs::rename(from, to)
    }

    fn remove(&self, path: &DiskPath) -> io::Result<()> {
        if path.as_ref().is_dir() {
            fs::remove_dir_all(path)
        } else {
            fs::remove_file(path)
        }
    }

    fn sync_folder(&self, path: &DiskPath) -> io::Result<()> {
        if cfg!(unix) {
            File::open(path)?.sync_all()?;
        }
        Ok(())
    }

    fn resolve(&self, path: &DiskPath) -> DiskPath {
        let link = fs::symlink_metadata(path).is_ok_and(|about| about.is_symlink());
        // A link that leads nowhere is replaced itself.
        let real = link.then(|| fs::canonicalize(path).ok()).flatten();
        real.map_or_else(|| path.clone(), DiskPath::from)
    }

    fn permit_as(&self, path: &DiskPath, model: &DiskPath) -> io::Result<()> {
        match fs::metadata(model) {
            Ok(about) if about.is_file() => fs::set_permissions(path, about.permissions()),
            _ => Ok(()),
        }
    }

    fn lock(&self, path: &DiskPath) -> io::Result<Option<Box<dyn DiskLock>>> {
        let mut how = OpenOptions::new();
        how.write(true).create(true).truncate(false);
        let file = open_plain(&mut how, path)?;
        match file.try_lock() {
            Ok(()) => Ok(Some(Box::new(file))),
            Err(TryLockError::WouldBlock) => Ok(None),
            Err(TryLockError::Error(why)) => Err(why),
        }
    }
}

/// Open a plain file. A pipe or another thing in its place is refused at once, where opening it
/// could wait forever for someone at its other end.
fn open_plain(options: &mut OpenOptions, path: &DiskPath) -> io::Result<File> {
    let odd = |about: &Metadata| !(about.is_file() || about.is_dir());
    let refused = || io::Error::other("it is no plain file");
    #[cfg(target_os = "linux")]
    {
        use std::os::unix::fs::OpenOptionsExt as _;
        let at_once = rustix::fs::OFlags::NONBLOCK.bits();
        options.custom_flags(i32::try_from(at_once).unwrap_or_default());
    }
    #[cfg(not(target_os = "linux"))]
    if fs::metadata(path).is_ok_and(|about| odd(&about)) {
        return Err(refused());
    }
    let file = options.open(path).map_err(|why| {
        // A pipe that nobody reads cannot be opened for writing.
        match fs::metadata(path).is_ok_and(|about| odd(&about)) {
            true => refused(),
            false => why,
        }
    })?;
    match odd(&file.metadata()?) {
        true => Err(refused()),
        false => Ok(file),
    }
}

impl DiskFile for File {
    fn about(&self) -> io::Result<About> {
        self.metadata().map(|about| About::of(&about))
    }

    fn read_end(&mut self, most: u64) -> io::Result<Vec<u8>> {
        let length = self.metadata()?.len();
        self.seek(SeekFrom::Start(length.saturating_sub(most)))?;
        let mut bytes = Vec::new();
        (&*self).take(most).read_to_end(&mut bytes)?;
        Ok(bytes)
    }

    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        (&*self).write(bytes)
    }

    fn sync(&mut self) -> io::Result<()> {
        self.sync_all()
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        self.set_len(length)
    }
}

impl DiskLock for File {
    fn about(&self) -> io::Result<About> {
        self.metadata().map(|about| About::of(&about))
    }
}
