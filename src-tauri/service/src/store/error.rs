//! The errors of the data folder. [`crate::service`] puts a [`StoreError`] into words.

use crate::disk::DiskPath;
use crate::photos::PhotoFault;
use lapwork_core::log::journal::FormatError;
use lapwork_core::log::merge::Unmergeable;
use std::io;

/// What can go wrong with the data folder.
#[derive(Debug)]
pub enum StoreError {
    /// Reading or writing failed.
    Disk {
        /// Where.
        path: DiskPath,
        /// What the system said.
        why: io::Error,
    },
    /// The disk failed and did not say whether what was written is safe.
    Unsure {
        /// Where.
        path: DiskPath,
        /// What the system said.
        why: io::Error,
        /// What is to be read there now.
        seen: Seen,
    },
    /// A torn last line is still in the file.
    Torn {
        /// Which file.
        path: DiskPath,
    },
    /// The file is not the one that was written: nothing was added, and the record as it was
    /// acknowledged is back in its place.
    Changed {
        /// Which file.
        path: DiskPath,
        /// The copy of the record as it was acknowledged.
        here: DiskPath,
        /// The copy of the file that was found, if there was one.
        brought: Option<DiskPath>,
        /// What was found.
        found: Found,
    },
    /// The file is not the one that was written, and the record could not be put back:
    /// nothing was touched.
    ChangedLeft {
        /// Which file.
        path: DiskPath,
        /// What the system said.
        why: io::Error,
    },
    /// The data folder was there, and is no longer.
    Away {
        /// Where it was.
        path: DiskPath,
    },
    /// After such a failure the file could not be written afresh, so nothing is added.
    Held {
        /// Which file.
        path: DiskPath,
    },
    /// Another Lapwork holds the folder.
    Locked,
    /// A throw file larger than is read or written.
    TooLarge {
        /// Which file.
        path: DiskPath,
    },
    /// There is no throw of that id where it was looked for.
    NoSuchThrow,
    /// There is a folder, but no throw file in it.
    Missing {
        /// The file that is not there.
        path: DiskPath,
    },
    /// Not an id at all.
    BadId,
    /// The settings file cannot be understood.
    Settings {
        /// Which file.
        path: DiskPath,
    },
    /// The throw file is damaged.
    Damaged {
        /// Which file.
        path: DiskPath,
        /// How.
        how: FormatError,
    },
    /// An entry that would not read back as it was written.
    Unreadable,
    /// Two copies that cannot be made one.
    Unmergeable(Unmergeable),
    /// No file waits to be imported.
    NothingImported,
    /// Another file was chosen for import since.
    OtherImported,
    /// The system gave no randomness for an id.
    Random(io::Error),
    /// A file that is no photo to keep.
    Photo {
        /// Which file.
        path: DiskPath,
        /// Why.
        fault: PhotoFault,
    },
    /// No photo was dropped, or it was taken already.
    NoPhoto,
}

/// What was found in the place of a throw's file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Found {
    /// Nothing.
    Nothing,
    /// What is no sound record.
    Unsound,
    /// A record with nothing in it that was not known.
    Less,
    /// A record with something that was not known: its bytes.
    More(Vec<u8>),
}

/// What was read after the disk failed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Seen {
    /// All that was there before, and nothing of the step.
    Before,
    /// All that was there before, and the step.
    After,
    /// Something else; it is left untouched.
    Neither,
}

pub(crate) fn failed(path: &DiskPath) -> impl FnOnce(io::Error) -> StoreError + '_ {
    move |why| StoreError::Disk {
        path: path.clone(),
        why,
    }
}
