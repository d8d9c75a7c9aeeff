//! A disk on which something happens right before bytes are written.

use lapwork_service::desktop::DesktopDisk;
use lapwork_service::disk::{About, Disk, DiskFile, DiskLock, DiskPath, OpenMode};
use std::fmt;
use std::io;
use std::sync::Arc;

type Before = Arc<dyn Fn() -> io::Result<()> + Send + Sync>;

/// The desktop's disk; before each writing something is done, which may make it fail.
#[derive(Clone)]
pub struct Tapped(Before);

impl Tapped {
    /// Do this before each writing.
    pub fn with(before: impl Fn() -> io::Result<()> + Send + Sync + 'static) -> Tapped {
        Tapped(Arc::new(before))
    }
}

impl fmt::Debug for Tapped {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Tapped")
    }
}

impl Disk for Tapped {
    fn make_folder(&self, path: &DiskPath) -> io::Result<()> {
        DesktopDisk.make_folder(path)
    }

    fn open(&self, path: &DiskPath, how: OpenMode) -> io::Result<Box<dyn DiskFile>> {
        let before = Arc::clone(&self.0);
        let on = DesktopDisk.open(path, how)?;
        Ok(Box::new(TappedFile { before, on }))
    }

    fn read(&self, path: &DiskPath, most: u64) -> io::Result<Vec<u8>> {
        DesktopDisk.read(path, most)
    }

    fn about(&self, path: &DiskPath) -> io::Result<About> {
        DesktopDisk.about(path)
    }

    fn list(&self, path: &DiskPath) -> io::Result<Vec<DiskPath>> {
        DesktopDisk.list(path)
    }

    fn rename(&self, from: &DiskPath, to: &DiskPath) -> io::Result<()> {
        DesktopDisk.rename(from, to)
    }

    fn remove(&self, path: &DiskPath) -> io::Result<()> {
        DesktopDisk.remove(path)
    }

    fn sync_folder(&self, path: &DiskPath) -> io::Result<()> {
        DesktopDisk.sync_folder(path)
    }

    fn lock(&self, path: &DiskPath) -> io::Result<Option<Box<dyn DiskLock>>> {
        DesktopDisk.lock(path)
    }
}

struct TappedFile {
    before: Before,
    on: Box<dyn DiskFile>,
}

impl fmt::Debug for TappedFile {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.on.fmt(f)
    }
}

impl DiskFile for TappedFile {
    fn about(&self) -> io::Result<About> {
        self.on.about()
    }

    fn read_end(&mut self, most: u64) -> io::Result<Vec<u8>> {
        self.on.read_end(most)
    }

    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        (self.before)()?;
        self.on.write(bytes)
    }

    fn sync(&mut self) -> io::Result<()> {
        self.on.sync()
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        self.on.cut(length)
    }
}
