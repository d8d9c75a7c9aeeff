//! The path of a file or folder on a [`super::Disk`].

use std::fmt;
use std::path::{Path, PathBuf};

/// The path of a file or folder on a disk: the names of its folders, then its own name.
///
/// What the first of them is relative to is the disk's business. On the desktop it is a path
/// of the system; a disk in memory or in a browser takes the names alone.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct DiskPath(PathBuf);

impl DiskPath {
    /// The path of a file or folder of that name in this one.
    #[must_use]
    pub fn join(&self, name: &str) -> DiskPath {
        DiskPath(self.0.join(name))
    }

    /// Its folder; none if the path does not name one.
    pub fn parent(&self) -> Option<DiskPath> {
        let parent = self.0.parent().filter(|path| !path.as_os_str().is_empty());
        parent.map(DiskPath::from)
    }

    /// All folders that contain it, the nearest first.
    pub fn ancestors(&self) -> impl Iterator<Item = DiskPath> + '_ {
        let above = self.0.ancestors().skip(1);
        above
            .filter(|path| !path.as_os_str().is_empty())
            .map(DiskPath::from)
    }

    /// Its own name, where that is text.
    pub fn name(&self) -> Option<&str> {
        self.0.file_name()?.to_str()
    }

    /// Its own name as it can be shown.
    pub fn shown_name(&self) -> String {
        let name = self.0.file_name().unwrap_or(self.0.as_os_str());
        name.to_string_lossy().into_owned()
    }

    /// Another name in the same folder.
    #[must_use]
    pub fn with_name(&self, name: &str) -> DiskPath {
        DiskPath(self.0.with_file_name(name))
    }

    /// The same with something more at the end of its name.
    #[must_use]
    pub fn with_ending(&self, more: &str) -> DiskPath {
        let mut name = self.0.as_os_str().to_os_string();
        name.push(more);
        DiskPath(PathBuf::from(name))
    }
}

impl From<PathBuf> for DiskPath {
    fn from(path: PathBuf) -> DiskPath {
        DiskPath(path)
    }
}

impl From<&Path> for DiskPath {
    fn from(path: &Path) -> DiskPath {
        DiskPath(path.to_path_buf())
    }
}

impl From<&str> for DiskPath {
    fn from(path: &str) -> DiskPath {
        DiskPath(PathBuf::from(path))
    }
}

impl AsRef<Path> for DiskPath {
    fn as_ref(&self) -> &Path {
        &self.0
    }
}

impl fmt::Display for DiskPath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.display().fmt(f)
    }
}
