//! Files the maker brings: throw files and photos, read and checked but not yet accepted.
//!
//! An exported throw file is the record, byte for byte. A file to import comes from the dialog
//! or was dropped on the window; the page never names or learns its path. [`read_throw`] reads it,
//! [`lapwork_core::log::intake`] checks each entry before it is folded, and the service holds the
//! file until the maker has chosen what becomes of it
//! ([`Service::import`](crate::service::Service::import),
//! [`decide_import`](crate::service::Service::decide_import)). The throw's name in the header says
//! whether two files are copies of one throw; [`lapwork_core::log::merge`] makes one of them.

use crate::disk::{Disk, DiskPath};
use crate::photos::{self, PhotoFault};
use crate::store::{StoreError, bytes_of, failed, plain};
use lapwork_core::log::intake;
use lapwork_core::log::journal::Journal;

/// An imported throw file, read and checked but not yet accepted.
#[derive(Debug)]
pub struct Import {
    /// All of it, to the byte.
    pub bytes: Vec<u8>,
    /// How many bytes of a torn last line could not be read.
    pub left_out: u64,
    /// Its record.
    pub journal: Journal,
}

/// Read a throw file from anywhere. Nothing in it is trusted: see [`lapwork_core::log::intake`].
///
/// # Errors
/// What stands in the way, or what is wrong with it.
pub fn read_throw(disk: &dyn Disk, path: &DiskPath) -> Result<Import, StoreError> {
    read(path, bytes_of(disk, path)?)
}

/// The same for what was read from there.
///
/// # Errors
/// What is wrong with it.
pub fn read(path: &DiskPath, bytes: Vec<u8>) -> Result<Import, StoreError> {
    let read = intake::read(&bytes).map_err(|how| StoreError::Damaged {
        path: path.clone(),
        how,
    })?;
    Ok(Import {
        left_out: (bytes.len() - read.sound) as u64,
        bytes,
        journal: read.journal,
    })
}

/// Read a photo from anywhere and make it fit to keep.
///
/// # Errors
/// What stands in the way.
pub fn read_photo(disk: &dyn Disk, path: &DiskPath) -> Result<Vec<u8>, StoreError> {
    let photo = |fault| StoreError::Photo {
        path: path.clone(),
        fault,
    };
    plain(disk, path)?;
    let most = photos::MOST_BYTES;
    let bytes = disk.read(path, most + 1).map_err(failed(path))?;
    if bytes.len() as u64 > most {
        return Err(photo(PhotoFault::Large));
    }
    photos::shrink(&bytes).map_err(photo)
}
