//! The few file operations that the service needs, as a trait.
//!
//! A [`Disk`] holds the files. It is the desktop's file system (`crate::desktop::DesktopDisk`),
//! memory ([`MemoryDisk`]), or a test's disk that fails on purpose or forgets what was not synced,
//! as a real disk does in a power cut. The trait uses no type of a file system: paths are
//! [`DiskPath`]s, an open file is a [`DiskFile`], a lock is a [`DiskLock`].
//!
//! Promises: no operation is tried a second time. A failed sync means that the written bytes may
//! be lost: the system may have dropped them, and a second sync of the same file may then succeed
//! without them. [`Disk::read`] therefore reads what the disk holds rather than what the system
//! has cached, wherever it can tell the two apart.

mod memory;
mod path;

pub use memory::MemoryDisk;
pub use path::DiskPath;

use lapwork_core::throw::Time;
use std::fmt::Debug;
use std::io;
use std::sync::atomic::{AtomicU32, Ordering};

/// The operations that the data folder needs of its disk.
///
/// Every operation fails with what the system said.
#[expect(clippy::missing_errors_doc, reason = "said once, above")]
pub trait Disk: Debug + Send {
    /// Make a folder within an existing one.
    fn make_folder(&self, path: &DiskPath) -> io::Result<()>;

    /// Open a file to write in it.
    fn open(&self, path: &DiskPath, how: OpenMode) -> io::Result<Box<dyn DiskFile>>;

    /// Read a file from its beginning, no more than `most` bytes.
    fn read(&self, path: &DiskPath, most: u64) -> io::Result<Vec<u8>>;

    /// What the system knows of a file or folder without reading it.
    fn about(&self, path: &DiskPath) -> io::Result<About>;

    /// The content of a folder, in no order.
    fn list(&self, path: &DiskPath) -> io::Result<Vec<DiskPath>>;

    /// Give a file or folder another name, over a file of that name.
    fn rename(&self, from: &DiskPath, to: &DiskPath) -> io::Result<()>;

    /// Remove a file, or a folder with all in it.
    fn remove(&self, path: &DiskPath) -> io::Result<()>;

    /// Wait until the names in a folder are on the disk, where the system supports that.
    fn sync_folder(&self, path: &DiskPath) -> io::Result<()>;

    /// Lock a file, which is made if it does not exist, until the lock is dropped or the program
    /// ends; returns nothing while another program has the lock.
    fn lock(&self, path: &DiskPath) -> io::Result<Option<Box<dyn DiskLock>>>;

    /// The file that a link leads to; the path itself where it is no link, or where the disk has
    /// none.
    fn resolve(&self, path: &DiskPath) -> DiskPath {
        path.clone()
    }

    /// Let the same people read and write a file as another one, if there is such a file and the
    /// disk knows who may.
    fn permit_as(&self, path: &DiskPath, model: &DiskPath) -> io::Result<()> {
        let _ = (path, model);
        Ok(())
    }

    /// Whether there is a file or folder.
    fn exists(&self, path: &DiskPath) -> bool {
        self.about(path).is_ok()
    }

    /// Whether there is a folder.
    fn is_folder(&self, path: &DiskPath) -> bool {
        self.about(path)
            .is_ok_and(|about| about.kind == EntryKind::Folder)
    }
}

/// How a file is opened.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OpenMode {
    /// A new file; an existing one is refused.
    New,
    /// One that is there, to add at its end and to read.
    Append,
}

/// A file that is open. Every operation fails with what the system said.
#[expect(clippy::missing_errors_doc, reason = "said once, above")]
pub trait DiskFile: Debug + Send {
    /// What the system knows of it without reading it.
    fn about(&self) -> io::Result<About>;

    /// Read its last bytes, no more than `most`.
    fn read_end(&mut self, most: u64) -> io::Result<Vec<u8>>;

    /// Write some of `bytes` at the end of what was written, and say how many.
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize>;

    /// Wait until it is on the disk, with its length. After an error what was written since
    /// the last time may be lost.
    fn sync(&mut self) -> io::Result<()>;

    /// Cut it to a length.
    fn cut(&mut self, length: u64) -> io::Result<()>;
}

/// A locked file; dropping this releases the lock.
pub trait DiskLock: Debug + Send {
    /// What the system knows of the locked file.
    ///
    /// # Errors
    /// What the system said.
    fn about(&self) -> io::Result<About>;
}

/// What a path leads to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EntryKind {
    /// A plain file.
    File,
    /// A folder.
    Folder,
    /// Something else, such as a pipe, at which a reader could wait forever.
    Other,
}

/// What the system knows of a file or folder without reading it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct About {
    /// What it is.
    pub kind: EntryKind,
    /// Its length in bytes.
    pub length: u64,
    /// Which file it is under any name (on Unix: device and inode), where the system says so.
    pub identity: Option<(u64, u64)>,
    /// When it was last changed, in seconds and nanoseconds since 1970, where the system says so.
    /// On Unix any change of the file or of its name counts.
    pub changed: Option<(i64, i64)>,
    /// When it was last written, in milliseconds since 1970; 0 where the system does not say so.
    pub written: Time,
}

/// Make a folder and its parents; each is on the disk before the next is made.
///
/// # Errors
/// What the system said.
pub(crate) fn make_folders(disk: &dyn Disk, path: &DiskPath) -> io::Result<()> {
    if disk.is_folder(path) {
        return Ok(());
    }
    let above = path.parent();
    if let Some(above) = &above {
        make_folders(disk, above)?;
    }
    match disk.make_folder(path) {
        Err(why) if why.kind() == io::ErrorKind::AlreadyExists && disk.is_folder(path) => Ok(()),
        // Something else has its name.
        Err(why) if why.kind() == io::ErrorKind::AlreadyExists => {
            Err(io::ErrorKind::NotADirectory.into())
        }
        Err(why) => Err(why),
        Ok(()) => above.map_or(Ok(()), |above| disk.sync_folder(&above)),
    }
}

/// Sync all parents of a folder. A parent that may not even be opened contains no name of ours, and
/// trying again does not help with one that cannot be synced.
///
/// # Errors
/// What the system said.
pub(crate) fn sync_above(disk: &dyn Disk, path: &DiskPath) -> io::Result<()> {
    for above in path.ancestors() {
        match disk.sync_folder(&above) {
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
pub(crate) fn write_all(file: &mut dyn DiskFile, mut bytes: &[u8]) -> io::Result<()> {
    while !bytes.is_empty() {
        match file.write(bytes) {
            Ok(0) => return Err(io::ErrorKind::WriteZero.into()),
            Ok(written) => bytes = &bytes[written..],
            Err(why) if why.kind() == io::ErrorKind::Interrupted => {}
            Err(why) => return Err(why),
        }
    }
    Ok(())
}

/// Put a whole file in the place of one that may exist: it is written at `beside`, synced,
/// renamed, and its name synced. Who may read it stays as it was; a new file is as open as
/// `model`. Where the path is a link it stays one, and the file it leads to is replaced.
///
/// # Errors
/// What the system said; what was at `path` is then still there, unless only its folder
/// could not be synced.
pub(crate) fn put(
    disk: &dyn Disk,
    path: &DiskPath,
    beside: &DiskPath,
    bytes: &[u8],
    model: &DiskPath,
) -> io::Result<()> {
    let (path, beside) = at_its_place(disk, path, beside);
    write_new(disk, &beside, bytes, Some(model))?;
    name(disk, &path, &beside)
}

/// Where a file lies that is to be replaced, and where the new one is written: beside that file,
/// also where the path is a link to it.
pub(crate) fn at_its_place(
    disk: &dyn Disk,
    path: &DiskPath,
    beside: &DiskPath,
) -> (DiskPath, DiskPath) {
    let real = disk.resolve(path);
    match beside.name() {
        Some(name) if real != *path => (real.clone(), real.with_name(name)),
        _ => (path.clone(), beside.clone()),
    }
}

/// Rename a file that was written beside its place, and sync the name.
///
/// # Errors
/// As [`put`].
pub(crate) fn name(disk: &dyn Disk, path: &DiskPath, beside: &DiskPath) -> io::Result<()> {
    if let Err(why) = disk.rename(beside, path) {
        let _ = disk.remove(beside);
        return Err(why);
    }
    disk.sync_folder(&path.parent().unwrap_or_else(|| DiskPath::from(".")))
}

/// A name beside `path` to write a file under until it is whole: hidden, no longer than
/// any disk takes, and not given twice.
pub(crate) fn part_of(path: &DiskPath) -> DiskPath {
    static GIVEN: AtomicU32 = AtomicU32::new(0);
    let n = GIVEN.fetch_add(1, Ordering::Relaxed);
    // Where there is only one program, it has no number.
    let program = match cfg!(target_arch = "wasm32") {
        true => 0,
        false => std::process::id(),
    };
    path.with_name(&format!(".lapwork-{program}-{n}.part"))
}

/// Write a new file and wait until it is on the disk; a file of that name that an
/// app left when it died is removed first. Its name in the folder is not yet synced. Before
/// anything is in it, it is made as open as `model`.
///
/// # Errors
/// What the system said; the file is then removed, if the disk permits.
pub(crate) fn write_new(
    disk: &dyn Disk,
    path: &DiskPath,
    bytes: &[u8],
    model: Option<&DiskPath>,
) -> io::Result<()> {
    // Never into an old file: what a failed sync left of that one may be anything.
    match disk.remove(path) {
        Err(why) if why.kind() != io::ErrorKind::NotFound => return Err(why),
        _ => {}
    }
    let mut file = disk.open(path, OpenMode::New)?;
    if let Some(model) = model {
        // A disk that knows no permissions takes none.
        let _ = disk.permit_as(path, model);
    }
    let written = write_all(&mut *file, bytes).and_then(|()| file.sync());
    if written.is_err() {
        drop(file);
        // The error says that the file was not written, so half of it must not stay.
        let _ = disk.remove(path);
    }
    written
}
