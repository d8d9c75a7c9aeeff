//! Throw files anywhere on the file system, for the command line.

use super::DesktopDisk;
use crate::disk::{Disk as _, DiskLock, DiskPath, part_of, write_new};
use crate::import::parted;
use crate::store::{
    KeptCopies, Opened, StoreError, THROW_FILE, bytes_of, clear, failed, kept, opened, upgrade,
};
use lapwork_core::log::journal::{Journal, VERSION};
use lapwork_core::throw::Time;
use std::fs;
use std::io;

/// The throw file meant by a path: a folder stands for the file in it.
pub fn in_folder(path: &DiskPath) -> DiskPath {
    match DesktopDisk.is_folder(path) {
        true => path.join(THROW_FILE),
        false => path.clone(),
    }
}

/// Read a throw file from anywhere; nothing is mended. A folder stands for the file in it.
///
/// # Errors
/// What stands in the way.
pub fn read_throw(path: &DiskPath) -> Result<Opened, StoreError> {
    let path = in_folder(path);
    let bytes = bytes_of(&DesktopDisk, &path)?;
    // An exported file may have photos after the record.
    opened(&path, parted(&bytes).0)
}

/// Upgrade a throw file anywhere to this version; returns the path of the kept original, or
/// nothing if the file was up to date.
///
/// # Errors
/// What stood in the way; the file is then as it was. [`StoreError::Locked`] while a Lapwork
/// that may write has the data folder it lies in.
pub fn upgrade_file(
    path: &DiskPath,
    opened: &Opened,
    now: Time,
) -> Result<Option<DiskPath>, StoreError> {
    if opened.version() >= VERSION {
        return Ok(None);
    }
    let _held = lock_over(path)?;
    // What a Lapwork that has closed meanwhile added is not to be left out.
    let opened = read_throw(path)?;
    upgrade(&DesktopDisk, path, &opened.journal, opened.version(), now).map(Some)
}

/// The copies kept beside a throw file since it was merged, and what they take.
///
/// # Errors
/// Where there is no such file.
pub fn kept_copies(path: &DiskPath) -> Result<(Vec<DiskPath>, KeptCopies), StoreError> {
    Ok(kept(&DesktopDisk, &folder_of(path)?))
}

/// Remove the copies kept beside a throw file; gives what was removed.
///
/// # Errors
/// What stood in the way. [`StoreError::Locked`] while a Lapwork has the data folder it lies in.
pub fn clear_copies(path: &DiskPath) -> Result<KeptCopies, StoreError> {
    let folder = folder_of(path)?;
    let _held = lock_over(&in_folder(path))?;
    clear(&DesktopDisk, &folder)
}

/// The folder of a throw file that is there.
fn folder_of(path: &DiskPath) -> Result<DiskPath, StoreError> {
    let path = in_folder(path);
    match DesktopDisk.about(&path) {
        Ok(_) => Ok(path.parent().unwrap_or_else(|| DiskPath::from("."))),
        Err(why) if why.kind() == io::ErrorKind::NotFound => Err(StoreError::Missing { path }),
        Err(why) => Err(failed(&path)(why)),
    }
}

/// Lock the data folder that contains a throw file; returns nothing if no data folder does.
fn lock_over(path: &DiskPath) -> Result<Option<Box<dyn DiskLock>>, StoreError> {
    let path = DiskPath::from(fs::canonicalize(path).map_err(failed(path))?);
    // <data>/throws/<id>/throw.jsonl
    let Some(lock) = path.ancestors().nth(2).map(|data| data.join("lock")) else {
        return Ok(None);
    };
    if !DesktopDisk.exists(&lock) {
        return Ok(None);
    }
    let held = DesktopDisk.lock(&lock).map_err(failed(&lock))?;
    held.map(Some).ok_or(StoreError::Locked)
}

/// Write a new throw file at `path`, or in the folder there; gives where it was written.
/// It appears whole or not at all.
///
/// # Errors
/// What stood in the way, also if there is such a file already; nothing is left then,
/// unless only its folder could not be synced.
pub fn write_throw(path: &DiskPath, journal: &Journal) -> Result<DiskPath, StoreError> {
    let path = in_folder(path);
    if DesktopDisk.exists(&path) {
        return Err(failed(&path)(io::ErrorKind::AlreadyExists.into()));
    }
    let beside = part_of(&path);
    write_new(&DesktopDisk, &beside, journal.text().as_bytes(), None).map_err(failed(&path))?;
    // A second name is given only where there is none, in one step; a disk that knows no
    // second names has the file renamed.
    let named = match fs::hard_link(&beside, &path) {
        Err(why) if why.kind() != io::ErrorKind::AlreadyExists && !DesktopDisk.exists(&path) => {
            fs::rename(&beside, &path)
        }
        linked => linked,
    };
    // A part that stays beside the file does no harm.
    let _ = fs::remove_file(&beside);
    named.map_err(failed(&path))?;
    let folder = path.parent().unwrap_or_else(|| DiskPath::from("."));
    DesktopDisk.sync_folder(&folder).map_err(failed(&folder))?;
    Ok(path)
}
