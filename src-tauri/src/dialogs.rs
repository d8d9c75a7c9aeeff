//! The system's dialogs that ask where exported files go and which file to import.
//!
//! The page never names or sees a path. On a machine without dialogs, and in the tests, two
//! variables answer instead:
//!
//! * `LAPWORK_HAND_TO=<folder>`: files go into that folder under their suggested names,
//!   numbered where the name is taken, and no dialog appears;
//! * `LAPWORK_HAND_FROM=<file>`: Lapwork imports that file, and no dialog appears.
//!
//! Cancelling a dialog is not an error. These functions must not be called on the main thread,
//! which the dialog needs.

use lapwork_service::desktop::DesktopDisk;
use lapwork_service::disk::DiskPath;
use lapwork_service::export::{ExportFile, write, write_into};
use lapwork_service::photos;
use lapwork_service::store::StoreError;
use std::path::PathBuf;
use tauri::{AppHandle, Runtime};
use tauri_plugin_dialog::{DialogExt as _, FilePath};

fn said_beforehand(name: &str) -> Option<DiskPath> {
    let said = std::env::var_os(name).filter(|said| !said.is_empty());
    said.map(|said| DiskPath::from(PathBuf::from(said)))
}

/// Ask where the files go, and write them: a single one as the file she names, several
/// into a folder she chooses. Gives what was written; nothing if she called it off.
///
/// # Errors
/// What stood in the way of the first that could not be written.
pub fn put<R: Runtime>(
    app: &AppHandle<R>,
    files: &[ExportFile],
) -> Result<Vec<DiskPath>, StoreError> {
    if let Some(folder) = said_beforehand("LAPWORK_HAND_TO") {
        return write_into(&DesktopDisk, &folder, files);
    }
    match files {
        [] => Ok(Vec::new()),
        [one] => {
            let ask = app.dialog().file().set_file_name(&one.name);
            let Some(path) = ask.blocking_save_file().map(local).transpose()? else {
                return Ok(Vec::new());
            };
            // She was asked whether a file of that name may go.
            write(&DesktopDisk, &path, &one.bytes)?;
            Ok(vec![path])
        }
        several => match ask_folder(app)? {
            Some(folder) => write_into(&DesktopDisk, &folder, several),
            None => Ok(Vec::new()),
        },
    }
}

#[cfg(desktop)]
fn ask_folder<R: Runtime>(app: &AppHandle<R>) -> Result<Option<DiskPath>, StoreError> {
    let folder = app.dialog().file().blocking_pick_folder();
    folder.map(local).transpose()
}

/// Phones have no dialog for folders: the place of the first file's folder is used.
#[cfg(mobile)]
fn ask_folder<R: Runtime>(app: &AppHandle<R>) -> Result<Option<DiskPath>, StoreError> {
    use tauri::Manager as _;
    Ok(app.path().document_dir().ok().map(DiskPath::from))
}

/// Ask for a file; nothing if she called it off.
///
/// # Errors
/// [`StoreError::Disk`] if what she chose is no file here.
pub fn fetch<R: Runtime>(app: &AppHandle<R>) -> Result<Option<DiskPath>, StoreError> {
    if let Some(file) = said_beforehand("LAPWORK_HAND_FROM") {
        return Ok(Some(file));
    }
    let file = app.dialog().file().blocking_pick_file();
    file.map(local).transpose()
}

/// Ask for a photo; nothing if she called it off.
///
/// # Errors
/// [`StoreError::Disk`] if what she chose is no file here.
pub fn fetch_photo<R: Runtime>(
    app: &AppHandle<R>,
    called: &str,
) -> Result<Option<DiskPath>, StoreError> {
    if let Some(file) = said_beforehand("LAPWORK_HAND_FROM") {
        return Ok(Some(file));
    }
    let ask = app.dialog().file().add_filter(called, &photos::ENDINGS);
    ask.blocking_pick_file().map(local).transpose()
}

fn local(chosen: FilePath) -> Result<DiskPath, StoreError> {
    let path = DiskPath::from(PathBuf::from(chosen.to_string()));
    match chosen.into_path() {
        Ok(path) => Ok(path.into()),
        Err(why) => {
            let why = std::io::Error::other(why);
            Err(StoreError::Disk { path, why })
        }
    }
}
