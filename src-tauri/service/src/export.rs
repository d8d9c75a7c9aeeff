//! Exported files, written where the maker says.
//!
//! Promise: a file appears whole or not at all. It is written beside its place, synced and
//! renamed, and then its folder is synced. Of several files all appear or none: where one cannot
//! be written, those before it are removed again, as far as the disk still allows.

use crate::disk::{Disk, DiskPath, part_of, put};
use crate::store::{StoreError, failed};

/// A file to be put somewhere.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ExportFile {
    /// The name suggested.
    pub name: String,
    /// What is in it.
    pub bytes: Vec<u8>,
}

/// Write the files into a folder; a name that is taken gets a number.
///
/// # Errors
/// What stood in the way of the first that could not be written.
pub fn write_into(
    disk: &dyn Disk,
    folder: &DiskPath,
    files: &[ExportFile],
) -> Result<Vec<DiskPath>, StoreError> {
    let mut put = Vec::new();
    for file in files {
        let path = free(disk, folder, &file.name);
        if let Err(why) = write(disk, &path, &file.bytes) {
            for path in &put {
                // What went wrong is told; that a file stays behind tells nothing more.
                let _ = disk.remove(path);
            }
            let _ = disk.sync_folder(folder);
            return Err(why);
        }
        put.push(path);
    }
    Ok(put)
}

/// `name` in `folder`, or `name (2)` and so on where there is such a file.
fn free(disk: &dyn Disk, folder: &DiskPath, name: &str) -> DiskPath {
    let path = folder.join(name);
    let (stem, ending) = match name.rsplit_once('.') {
        Some((stem, ending)) => (stem, format!(".{ending}")),
        None => (name, String::new()),
    };
    (2..)
        .map(|n| folder.join(&format!("{stem} ({n}){ending}")))
        .find(|path| !disk.exists(path))
        .filter(|_| disk.exists(&path))
        .unwrap_or(path)
}

/// Write a file whole: beside its place, synced, then renamed over a file of that name.
///
/// # Errors
/// What stood in the way; what was at `path` is then still there, unless only its folder
/// could not be synced.
pub fn write(disk: &dyn Disk, path: &DiskPath, bytes: &[u8]) -> Result<(), StoreError> {
    put(disk, path, &part_of(path), bytes, path).map_err(failed(path))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desktop::DesktopDisk;
    use std::fs;
    use std::path::Path;

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
        write(&DesktopDisk, &path.as_path().into(), b"one").unwrap();
        write(&DesktopDisk, &path.as_path().into(), b"two").unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"two");
        assert_eq!(names(folder.path()), ["a.jsonl"]);
    }

    #[test]
    fn the_longest_name_in_any_writing_is_taken() {
        let folder = tempfile::tempdir().unwrap();
        for letter in ["a", "ß", "ش", "毛", "🧵"] {
            let name = lapwork_core::show::file_name(&letter.repeat(10_000), "jsonl");
            let file = ExportFile {
                name,
                bytes: b"x".to_vec(),
            };
            let put = write_into(&DesktopDisk, &folder.path().into(), &vec![file; 2]);
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
        let file = ExportFile {
            name: "a.svg".into(),
            bytes: b"x".to_vec(),
        };
        write_into(&DesktopDisk, &folder.path().into(), &vec![file; 3]).unwrap();
        assert_eq!(names(folder.path()), ["a (2).svg", "a (3).svg", "a.svg"]);
    }

    #[test]
    fn of_several_files_all_are_put_or_none() {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("a.csv"), "hers").unwrap();
        let file = |name: &str| ExportFile {
            name: name.into(),
            bytes: b"x".to_vec(),
        };
        // The third would lie in a folder that is not there.
        let files = [file("a.csv"), file("b.csv"), file("none/c.csv")];
        let put = write_into(&DesktopDisk, &folder.path().into(), &files);
        assert!(put.is_err());
        assert_eq!(names(folder.path()), ["a.csv"]);
        assert_eq!(fs::read(folder.path().join("a.csv")).unwrap(), b"hers");
        let put = write_into(&DesktopDisk, &folder.path().into(), &files[..2]);
        assert_eq!(put.unwrap().len(), 2);
        assert_eq!(names(folder.path()), ["a (2).csv", "a.csv", "b.csv"]);
    }

    #[test]
    fn what_cannot_be_written_leaves_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let taken = folder.path().join("taken");
        fs::create_dir(&taken).unwrap();
        fs::write(taken.join("mine"), "mine").unwrap();
        let no_folder = folder.path().join("none/a.jsonl");
        for path in [&taken, &no_folder] {
            assert!(matches!(
                write(&DesktopDisk, &path.as_path().into(), b"x"),
                Err(StoreError::Disk { .. })
            ));
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
        let path = DiskPath::from("a.jsonl");
        let words = lapwork_core::words::Words::english();
        let problem = crate::service::message(&words, &failed(&path)(why));
        assert!(problem.said.contains("The disk is full"), "{problem:?}");
        assert!(problem.said.contains("a.jsonl"), "{problem:?}");
    }
}
