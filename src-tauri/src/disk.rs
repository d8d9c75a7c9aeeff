//! The few things done to files, in one place.
//!
//! [`Disk`] does each with the plain call of the system. [`RealDisk`] changes none of
//! them; tests stand a disk in its place that fails where they say, or forgets what was
//! not synced, as one does when the power goes.
//!
//! Promises: nothing here tries a second time. A failed sync says only that what was
//! written may be lost: the system may have dropped it, and a second sync of the same
//! file may then succeed with it gone. [`Disk::read`] therefore has the system forget
//! what it remembers of the file, where that can be asked for (Linux), so that what is
//! read is what the disk holds.

use std::fmt::Debug;
use std::fs::{self, File, OpenOptions};
use std::io::{self, Read as _, Seek as _, SeekFrom, Write as _};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};

/// What the data folder asks of the disk it lies on.
pub trait Disk: Debug + Send {
    /// Make a folder in one that is there.
    ///
    /// # Errors
    /// What the system said.
    fn make_folder(&self, path: &Path) -> io::Result<()> {
        fs::create_dir(path)
    }

    /// Open a file.
    ///
    /// # Errors
    /// What the system said.
    fn open(&self, path: &Path, how: &OpenOptions) -> io::Result<File> {
        how.open(path)
    }

    /// Read a file from its beginning, no more than `most` bytes.
    ///
    /// # Errors
    /// What the system said.
    fn read(&self, path: &Path, most: u64) -> io::Result<Vec<u8>> {
        let file = File::open(path)?;
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

    /// What the system tells of a file by its path.
    ///
    /// # Errors
    /// What the system said.
    fn about(&self, path: &Path) -> io::Result<About> {
        fs::metadata(path).map(|about| About::of(&about))
    }

    /// What the system tells of a file that is open.
    ///
    /// # Errors
    /// What the system said.
    fn about_open(&self, file: &File) -> io::Result<About> {
        file.metadata().map(|about| About::of(&about))
    }

    /// Read the last bytes of a file that is open, no more than `most`.
    ///
    /// # Errors
    /// What the system said.
    fn read_end(&self, mut file: &File, most: u64) -> io::Result<Vec<u8>> {
        let length = file.metadata()?.len();
        file.seek(SeekFrom::Start(length.saturating_sub(most)))?;
        let mut bytes = Vec::new();
        file.take(most).read_to_end(&mut bytes)?;
        Ok(bytes)
    }

    /// Write some of `bytes` at the end of what was written, and say how many.
    ///
    /// # Errors
    /// What the system said.
    fn write(&self, mut file: &File, bytes: &[u8]) -> io::Result<usize> {
        file.write(bytes)
    }

    /// Wait until a file is on the disk, with its length.
    ///
    /// # Errors
    /// What the system said; what was written since the last time may then be lost.
    fn sync(&self, file: &File) -> io::Result<()> {
        file.sync_all()
    }

    /// Cut a file to a length.
    ///
    /// # Errors
    /// What the system said.
    fn cut(&self, file: &File, length: u64) -> io::Result<()> {
        file.set_len(length)
    }

    /// Give a file or folder another name, over a file of that name.
    ///
    /// # Errors
    /// What the system said.
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::rename(from, to)
    }

    /// Take away a file, or a folder with all in it.
    ///
    /// # Errors
    /// What the system said.
    fn remove(&self, path: &Path) -> io::Result<()> {
        if path.is_dir() {
            fs::remove_dir_all(path)
        } else {
            fs::remove_file(path)
        }
    }

    /// Wait until the names in a folder are on the disk. Only Unix lets a folder be
    /// synced; elsewhere nothing can be asked for.
    ///
    /// # Errors
    /// What the system said.
    fn sync_folder(&self, path: &Path) -> io::Result<()> {
        if cfg!(unix) {
            File::open(path)?.sync_all()?;
        }
        Ok(())
    }
}

/// What the system tells of a file without reading it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct About {
    /// Its length in bytes.
    pub length: u64,
    /// Which file it is, whatever it is called: device and inode. Only Unix tells that.
    pub identity: Option<(u64, u64)>,
    /// When it was last changed, in seconds and nanoseconds since 1970, where that is told.
    /// On Unix any change of the file or of its name counts.
    pub changed: Option<(i64, i64)>,
}

impl About {
    #[cfg(unix)]
    fn of(about: &fs::Metadata) -> About {
        use std::os::unix::fs::MetadataExt as _;
        About {
            length: about.len(),
            identity: Some((about.dev(), about.ino())),
            changed: Some((about.ctime(), about.ctime_nsec())),
        }
    }

    #[cfg(not(unix))]
    fn of(about: &fs::Metadata) -> About {
        let since = about.modified().ok();
        let since = since.and_then(|at| at.duration_since(std::time::UNIX_EPOCH).ok());
        let changed = |since: std::time::Duration| {
            let seconds = i64::try_from(since.as_secs()).ok()?;
            Some((seconds, i64::from(since.subsec_nanos())))
        };
        About {
            length: about.len(),
            identity: None,
            changed: since.and_then(changed),
        }
    }
}

/// The disk as the system has it.
#[derive(Debug, Clone, Copy, Default)]
pub struct RealDisk;

impl Disk for RealDisk {}

/// Make a folder and those it lies in, each of them on the disk before the next.
///
/// # Errors
/// What the system said.
pub(crate) fn make_folders(disk: &dyn Disk, path: &Path) -> io::Result<()> {
    if path.is_dir() {
        return Ok(());
    }
    let above = path.parent().filter(|above| !above.as_os_str().is_empty());
    let above = above.unwrap_or(Path::new("."));
    make_folders(disk, above)?;
    match disk.make_folder(path) {
        Err(why) if why.kind() == io::ErrorKind::AlreadyExists && path.is_dir() => Ok(()),
        Err(why) => Err(why),
        Ok(()) => disk.sync_folder(above),
    }
}

/// Sync the folder a folder lies in, and those above it. One that may not even be opened
/// holds no name of ours, and one that cannot be synced will not be by asking again.
///
/// # Errors
/// What the system said.
pub(crate) fn sync_above(disk: &dyn Disk, path: &Path) -> io::Result<()> {
    let path = std::path::absolute(path)?;
    for above in path.ancestors().skip(1) {
        match disk.sync_folder(above) {
            Err(why)
                if matches!(
                    why.kind(),
                    io::ErrorKind::PermissionDenied
                        | io::ErrorKind::InvalidInput
                        | io::ErrorKind::Unsupported
                ) => {}
            synced => synced?,
        }
    }
    Ok(())
}

/// Write all of `bytes`.
///
/// # Errors
/// What the system said; some of it may then be in the file.
pub(crate) fn write_all(disk: &dyn Disk, file: &File, mut bytes: &[u8]) -> io::Result<()> {
    while !bytes.is_empty() {
        match disk.write(file, bytes) {
            Ok(0) => return Err(io::ErrorKind::WriteZero.into()),
            Ok(written) => bytes = &bytes[written..],
            Err(why) if why.kind() == io::ErrorKind::Interrupted => {}
            Err(why) => return Err(why),
        }
    }
    Ok(())
}

/// Put a whole file in the place of one that may be there: written at `beside`, synced,
/// renamed, and its name synced.
///
/// # Errors
/// What the system said; what was at `path` is then still there, unless only its folder
/// could not be synced.
pub(crate) fn put(disk: &dyn Disk, path: &Path, beside: &Path, bytes: &[u8]) -> io::Result<()> {
    write_new(disk, beside, bytes)?;
    name(disk, path, beside)
}

/// Give a file that was written beside its place the name, and sync that.
///
/// # Errors
/// As [`put`].
pub(crate) fn name(disk: &dyn Disk, path: &Path, beside: &Path) -> io::Result<()> {
    if let Err(why) = disk.rename(beside, path) {
        let _ = disk.remove(beside);
        return Err(why);
    }
    match path.parent().filter(|above| !above.as_os_str().is_empty()) {
        Some(folder) => disk.sync_folder(folder),
        None => disk.sync_folder(Path::new(".")),
    }
}

/// A name beside `path` to write a file under until it is whole: hidden, no longer than
/// any disk takes, and not given twice.
pub(crate) fn part_of(path: &Path) -> PathBuf {
    static GIVEN: AtomicU32 = AtomicU32::new(0);
    let n = GIVEN.fetch_add(1, Ordering::Relaxed);
    path.with_file_name(format!(".lapwork-{}-{n}.part", std::process::id()))
}

/// Write a new file and wait until it is on the disk; one of that name left behind by
/// an app that died is taken away first. Its name in the folder is not yet synced.
///
/// # Errors
/// What the system said; nothing is left then, if the disk lets it be taken away.
pub(crate) fn write_new(disk: &dyn Disk, path: &Path, bytes: &[u8]) -> io::Result<()> {
    // Never into an old file: what a failed sync left of that one may be anything.
    match disk.remove(path) {
        Err(why) if why.kind() != io::ErrorKind::NotFound => return Err(why),
        _ => {}
    }
    let file = disk.open(path, OpenOptions::new().write(true).create_new(true))?;
    let written = write_all(disk, &file, bytes).and_then(|()| disk.sync(&file));
    if written.is_err() {
        drop(file);
        // The error says it was not written; half a file helps nobody.
        let _ = disk.remove(path);
    }
    written
}
