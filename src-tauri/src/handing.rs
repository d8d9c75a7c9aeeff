//! Files put where the maker says, and files she brings.
//!
//! She is asked by the system's own dialog ([`put`], [`fetch`]); the page never names or
//! sees a path. A machine without a dialog, and the tests, say it beforehand:
//!
//! * `LAPWORK_HAND_TO=<folder>`: files go into that folder under their suggested names,
//!   numbered where the name is taken, and nothing is asked;
//! * `LAPWORK_HAND_FROM=<file>`: that file is brought, and nothing is asked.
//!
//! Promises: a file appears whole or not at all: it is written beside its place, synced,
//! then renamed, and the folder is synced. Calling the dialog off is not an error. Must
//! not be called on the main thread, which the dialog needs.

use crate::disk::{Disk, RealDisk, part_of, put as put_whole};
use crate::photos;
use crate::store::{Trouble, bytes_of, disk};
use lapwork_core::intake;
use lapwork_core::journal::Journal;
use std::path::{Path, PathBuf};
use tauri::{AppHandle, Runtime};
use tauri_plugin_dialog::{DialogExt as _, FilePath};

/// A file to be put somewhere.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Parcel {
    /// The name suggested.
    pub name: String,
    /// What is in it.
    pub bytes: Vec<u8>,
}

fn said_beforehand(name: &str) -> Option<PathBuf> {
    let said = std::env::var_os(name).filter(|said| !said.is_empty());
    said.map(PathBuf::from)
}

/// Ask where the parcels go, and write them: a single one as the file she names, several
/// into a folder she chooses. Gives what was written; nothing if she called it off.
///
/// # Errors
/// What stood in the way of the first that could not be written.
pub fn put<R: Runtime>(app: &AppHandle<R>, parcels: &[Parcel]) -> Result<Vec<PathBuf>, Trouble> {
    if let Some(folder) = said_beforehand("LAPWORK_HAND_TO") {
        return put_into(&RealDisk, &folder, parcels);
    }
    match parcels {
        [] => Ok(Vec::new()),
        [one] => {
            let ask = app.dialog().file().set_file_name(&one.name);
            let Some(path) = ask.blocking_save_file().map(local).transpose()? else {
                return Ok(Vec::new());
            };
            // She was asked whether a file of that name may go.
            write(&path, &one.bytes)?;
            Ok(vec![path])
        }
        several => match ask_folder(app)? {
            Some(folder) => put_into(&RealDisk, &folder, several),
            None => Ok(Vec::new()),
        },
    }
}

#[cfg(desktop)]
fn ask_folder<R: Runtime>(app: &AppHandle<R>) -> Result<Option<PathBuf>, Trouble> {
    let folder = app.dialog().file().blocking_pick_folder();
    folder.map(local).transpose()
}

/// Phones have no dialog for folders: the place of the first file's folder is used.
#[cfg(mobile)]
fn ask_folder<R: Runtime>(app: &AppHandle<R>) -> Result<Option<PathBuf>, Trouble> {
    use tauri::Manager as _;
    Ok(app.path().document_dir().ok())
}

/// Ask for a file; nothing if she called it off.
///
/// # Errors
/// [`Trouble::Disk`] if what she chose is no file here.
pub fn fetch<R: Runtime>(app: &AppHandle<R>) -> Result<Option<PathBuf>, Trouble> {
    if let Some(file) = said_beforehand("LAPWORK_HAND_FROM") {
        return Ok(Some(file));
    }
    let file = app.dialog().file().blocking_pick_file();
    file.map(local).transpose()
}

/// Ask for a photo; nothing if she called it off.
///
/// # Errors
/// [`Trouble::Disk`] if what she chose is no file here.
pub fn fetch_photo<R: Runtime>(
    app: &AppHandle<R>,
    called: &str,
) -> Result<Option<PathBuf>, Trouble> {
    if let Some(file) = said_beforehand("LAPWORK_HAND_FROM") {
        return Ok(Some(file));
    }
    let ask = app.dialog().file().add_filter(called, &photos::ENDINGS);
    ask.blocking_pick_file().map(local).transpose()
}

fn local(chosen: FilePath) -> Result<PathBuf, Trouble> {
    let shown = PathBuf::from(chosen.to_string());
    chosen
        .into_path()
        .map_err(|why| disk(&shown)(std::io::Error::other(why)))
}

/// A throw file that was brought, read and checked but not yet taken in.
#[derive(Debug)]
pub struct Brought {
    /// All of it, to the byte.
    pub bytes: Vec<u8>,
    /// How many bytes of a torn last line could not be read.
    pub left_out: u64,
    /// Its record.
    pub journal: Journal,
}

/// Read a throw file from anywhere. Nothing in it is trusted: see [`lapwork_core::intake`].
///
/// # Errors
/// What stands in the way, or what is wrong with it.
pub fn look_into(path: &Path) -> Result<Brought, Trouble> {
    look_into_on(&RealDisk, path)
}

/// The same, on a disk of the caller's.
///
/// # Errors
/// What stands in the way, or what is wrong with it.
pub fn look_into_on(on: &dyn Disk, path: &Path) -> Result<Brought, Trouble> {
    look_through(path, bytes_of(on, path)?)
}

/// The same for what was read from there.
///
/// # Errors
/// What is wrong with it.
pub fn look_through(path: &Path, bytes: Vec<u8>) -> Result<Brought, Trouble> {
    let read = intake::read(&bytes).map_err(|how| Trouble::Damage {
        path: path.to_path_buf(),
        how,
    })?;
    Ok(Brought {
        left_out: (bytes.len() - read.sound) as u64,
        bytes,
        journal: read.journal,
    })
}

/// Write the parcels into a folder; a name that is taken gets a number.
///
/// # Errors
/// What stood in the way of the first that could not be written.
pub fn put_into(on: &dyn Disk, folder: &Path, parcels: &[Parcel]) -> Result<Vec<PathBuf>, Trouble> {
    let mut put = Vec::new();
    for parcel in parcels {
        let path = free(folder, &parcel.name);
        write_on(on, &path, &parcel.bytes)?;
        put.push(path);
    }
    Ok(put)
}

/// `name` in `folder`, or `name (2)` and so on where there is such a file.
fn free(folder: &Path, name: &str) -> PathBuf {
    let path = folder.join(name);
    let (stem, ending) = match name.rsplit_once('.') {
        Some((stem, ending)) => (stem, format!(".{ending}")),
        None => (name, String::new()),
    };
    (2..)
        .map(|n| folder.join(format!("{stem} ({n}){ending}")))
        .find(|path| !path.exists())
        .filter(|_| path.exists())
        .unwrap_or(path)
}

/// Write a file whole: beside its place, synced, then renamed over whatever was there.
///
/// # Errors
/// What stood in the way; what was at `path` is then still there, unless only its folder
/// could not be synced.
pub fn write(path: &Path, bytes: &[u8]) -> Result<(), Trouble> {
    write_on(&RealDisk, path, bytes)
}

/// The same, on a disk of the caller's.
///
/// # Errors
/// As [`write`].
pub fn write_on(on: &dyn Disk, path: &Path, bytes: &[u8]) -> Result<(), Trouble> {
    put_whole(on, path, &part_of(path), bytes).map_err(disk(path))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs;

    fn names(folder: &Path) -> Vec<String> {
        let mut names: Vec<String> = fs::read_dir(folder)
            .unwrap()
            .map(|found| found.unwrap().file_name().into_string().unwrap())
            .collect();
        names.sort();
        names
    }

    #[test]
    fn a_file_is_put_whole_over_an_old_one_and_nothing_is_left_beside() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.jsonl");
        write(&path, b"one").unwrap();
        write(&path, b"two").unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"two");
        assert_eq!(names(folder.path()), ["a.jsonl"]);
    }

    #[test]
    fn the_longest_name_in_any_writing_is_taken() {
        let folder = tempfile::tempdir().unwrap();
        for letter in ["a", "ß", "ش", "毛", "🧵"] {
            let name = lapwork_core::show::file_name(&letter.repeat(10_000), "jsonl");
            let parcel = Parcel {
                name,
                bytes: b"x".to_vec(),
            };
            let put = put_into(&RealDisk, folder.path(), &vec![parcel; 2]);
            assert_eq!(
                put.map(|put| put.len()).map_err(|why| format!("{why:?}")),
                Ok(2)
            );
        }
        assert_eq!(names(folder.path()).len(), 10);
    }

    #[test]
    fn names_that_are_taken_get_a_number() {
        let folder = tempfile::tempdir().unwrap();
        let parcel = Parcel {
            name: "a.svg".into(),
            bytes: b"x".to_vec(),
        };
        put_into(&RealDisk, folder.path(), &vec![parcel; 3]).unwrap();
        assert_eq!(names(folder.path()), ["a (2).svg", "a (3).svg", "a.svg"]);
    }

    #[test]
    fn what_cannot_be_written_leaves_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let taken = folder.path().join("taken");
        fs::create_dir(&taken).unwrap();
        fs::write(taken.join("mine"), "mine").unwrap();
        let no_folder = folder.path().join("none/a.jsonl");
        for path in [&taken, &no_folder] {
            assert!(matches!(write(path, b"x"), Err(Trouble::Disk { .. })));
        }
        assert_eq!(names(folder.path()), ["taken"]);
        assert_eq!(names(&taken), ["mine"]);
    }

    /// The system's own full device says when a disk is full; nothing stands in for it.
    #[cfg(target_os = "linux")]
    #[test]
    fn a_full_disk_is_told_in_words() {
        let mut full = fs::OpenOptions::new()
            .write(true)
            .open("/dev/full")
            .unwrap();
        let why = std::io::Write::write_all(&mut full, b"x").unwrap_err();
        let path = Path::new("a.jsonl");
        let words = lapwork_core::words::Words::english();
        let problem = crate::desk::told(&words, &disk(path)(why));
        assert!(problem.said.contains("The disk is full"), "{problem:?}");
        assert!(problem.said.contains("a.jsonl"), "{problem:?}");
    }
}
