//! Files brought up to this version, brought from elsewhere and handed on.

use super::{at, begun, entry, note, noted, row};
use crate::desktop::DesktopDisk;
use crate::import::{self, Import};
use crate::store::StoreError;
use lapwork_core::demo;
use lapwork_core::log::journal::Journal;
use lapwork_core::show::{Export, ImportChoice, ShelfCommand};
use std::fs;
use std::path::{Path, PathBuf};
use tempfile::TempDir;

/// A file of version 1, as the one Lapwork before this wrote.
fn old(journal: &Journal) -> String {
    let text = journal.text();
    let (_, entries) = text.split_once('\n').unwrap();
    format!("{{\"lapwork\":\"throw\",\"version\":1}}\n{entries}")
}

fn beside(file: &Path) -> Vec<PathBuf> {
    let found = fs::read_dir(file.parent().unwrap()).unwrap();
    let mut found: Vec<PathBuf> = found.map(|found| found.unwrap().path()).collect();
    found.retain(|path| path != file);
    found.sort();
    found
}

#[test]
fn a_file_of_version_1_is_upgraded_once_it_is_kept_beside() {
    let folder = tempfile::tempdir().unwrap();
    let (service, id, file) = begun(&folder);
    drop(service);
    let journal = demo::throw(7);
    let given = old(&journal);
    fs::write(&file, &given).unwrap();
    // The second to open reads it and changes nothing.
    let (_first, mut second) = (super::service(&tempfile::tempdir().unwrap()), {
        at(folder.path().to_path_buf())
    });
    let lock = fs::File::create(folder.path().join("lock")).unwrap();
    lock.try_lock().unwrap();
    assert!(row(&mut second, &id).head.is_some());
    assert_eq!(fs::read_to_string(&file).unwrap(), given);
    drop(lock);

    let mut service = super::service(&folder);
    assert_eq!(row(&mut service, &id).problem, None);
    assert_eq!(fs::read_to_string(&file).unwrap(), journal.text());
    let copies = beside(&file);
    assert_eq!(copies, [file.with_file_name("throw.jsonl.version-1")]);
    assert_eq!(fs::read_to_string(&copies[0]).unwrap(), given);
    service.act(&id, &note("on"), 0).unwrap();
    drop(service);
    let mut service = super::service(&folder);
    assert_eq!(entry(&mut service, &id) as usize, journal.len() + 1);
    assert_eq!(beside(&file), copies);
}

#[test]
fn a_newer_file_is_refused_with_its_number_and_place_and_left_alone() {
    let folder = tempfile::tempdir().unwrap();
    let (service, id, file) = begun(&folder);
    drop(service);
    let text = fs::read_to_string(&file).unwrap();
    let newer = text.replacen("\"version\":2", "\"version\":7", 1);
    fs::write(&file, &newer).unwrap();
    let mut service = super::service(&folder);
    let problem = row(&mut service, &id).problem.unwrap();
    assert!(problem.said.contains("file version 7"), "{problem:?}");
    assert!(problem.said.contains(file.to_str().unwrap()), "{problem:?}");
    assert_eq!(fs::read_to_string(&file).unwrap(), newer);
    assert!(beside(&file).is_empty());
}

fn brought(folder: &TempDir, bytes: &[u8]) -> Result<Import, StoreError> {
    let path = folder.path().join("brought");
    fs::write(&path, bytes).unwrap();
    import::read_throw(&DesktopDisk, &path.into())
}

#[test]
fn what_is_brought_and_handed_on_again_is_the_same_to_the_byte() {
    let folder = tempfile::tempdir().unwrap();
    let mut service = super::service(&folder);
    let given = demo::throw(3).text();
    let view = service
        .import(brought(&folder, given.as_bytes()), 9)
        .unwrap();
    assert_eq!(view.buttons[0].choice, ImportChoice::Add);
    let id = service
        .decide_import(&ImportChoice::Add, view.file, 9)
        .unwrap()
        .id
        .unwrap();
    let files = service.export(&id, &Export::Throw, 10).unwrap();
    assert_eq!(files[0].bytes, given.as_bytes());
    // The same once more changes nothing; it is taken in once only.
    let view = service
        .import(brought(&folder, given.as_bytes()), 11)
        .unwrap();
    assert_eq!(view.buttons[0].choice, ImportChoice::KeepHere);
    assert_eq!(
        service
            .decide_import(&ImportChoice::KeepHere, view.file, 11)
            .unwrap()
            .id,
        None
    );
    assert_eq!(service.shelf(12).rows.len(), 1);
    let twice = service
        .decide_import(&ImportChoice::Add, view.file, 12)
        .unwrap_err();
    assert_eq!(twice.code, "nothing-brought");
}

#[test]
fn all_pictures_and_all_tables_are_handed_on_under_names_of_their_own() {
    let folder = tempfile::tempdir().unwrap();
    let (mut service, id, _) = begun(&folder);
    for (export, ending, begins) in [
        (Export::Pictures, ".svg", "<?xml"),
        (Export::Tables, ".csv", ""),
    ] {
        let files = service.export(&id, &export, 9).unwrap();
        let mut names: Vec<&str> = files.iter().map(|p| p.name.as_str()).collect();
        assert!(names.iter().all(|name| name.ends_with(ending)), "{names:?}");
        names.sort_unstable();
        assert!(names.len() > 3 && names.windows(2).all(|w| w[0] != w[1]));
        for file in &files {
            let text = String::from_utf8(file.bytes.clone()).unwrap();
            assert!(text.len() > 40 && text.starts_with(begins), "{}", file.name);
        }
    }
}

#[test]
fn a_dropped_file_is_asked_for_once() {
    let folder = tempfile::tempdir().unwrap();
    let mut service = super::service(&folder);
    assert_eq!(service.pending_import().unwrap(), None);
    service.import_dropped(brought(&folder, demo::throw(3).text().as_bytes()), 9);
    assert!(service.pending_import().unwrap().is_some());
    assert_eq!(service.pending_import().unwrap(), None);
    service.import_dropped(brought(&folder, b"{}"), 9);
    assert_eq!(
        service.pending_import().unwrap_err().code,
        "file-not-a-throw"
    );
    // The one that was asked about is still to be decided; no other is meant by it.
    let other = service.decide_import(&ImportChoice::Add, 2, 9).unwrap_err();
    assert_eq!(other.code, "other-brought");
    service.import_dropped(brought(&folder, demo::throw(4).text().as_bytes()), 9);
    let old = service.decide_import(&ImportChoice::Add, 1, 9).unwrap_err();
    assert_eq!(old.code, "other-brought");
    assert!(service.decide_import(&ImportChoice::Add, 2, 9).is_ok());
    let twice = service.decide_import(&ImportChoice::Add, 2, 9).unwrap_err();
    assert_eq!(twice.code, "nothing-brought");
}

#[test]
fn a_brought_file_s_torn_end_is_told_and_kept() {
    let folder = tempfile::tempdir().unwrap();
    let (mut service, _, file) = begun(&folder);
    let other = noted(&file, &["one", "two"]);
    let whole = other.text();
    let torn = &whole.as_bytes()[..whole.len() - 7];
    let lost = torn.len() - torn.iter().rposition(|b| *b == b'\n').unwrap() - 1;
    let view = service.import(brought(&folder, torn), 2_000_000).unwrap();
    let bytes = format!("The last {lost} bytes");
    assert!(view.said[0].contains(&bytes), "{:?}", view.said);
    assert_eq!(
        view.buttons[0].choice,
        ImportChoice::TakeBrought,
        "one step more"
    );
    // The throw here goes on, so that the two are merged: both are kept as they were.
    let id = service.shelf(2_000_000).rows[0].id.clone();
    service.act(&id, &note("here"), 2_000_000).unwrap();
    let here = fs::read(&file).unwrap();
    let view = service.import(brought(&folder, torn), 2_000_000).unwrap();
    let merge = ImportChoice::Merge { brought: vec![] };
    service.decide_import(&merge, view.file, 2_000_000).unwrap();
    let mut copies: Vec<Vec<u8>> = beside(&file)
        .iter()
        .map(|copy| fs::read(copy).unwrap())
        .collect();
    copies.sort();
    let mut meant = [here, torn.to_vec()];
    meant.sort();
    assert_eq!(copies, meant);
    // Of a whole file nothing is left out.
    let view = service
        .import(brought(&folder, whole.as_bytes()), 2_000_000)
        .unwrap();
    assert!(!view.said[0].contains("bytes"), "{:?}", view.said);
}

#[test]
fn the_one_with_more_takes_the_place_of_the_other_which_is_kept() {
    let folder = tempfile::tempdir().unwrap();
    let (mut service, _, file) = begun(&folder);
    let kept = fs::read(&file).unwrap();
    let more = noted(&file, &["more"]);
    let found = brought(&folder, more.text().as_bytes());
    let view = service.import(found, 2_000_000).unwrap();
    assert_eq!(view.buttons[0].choice, ImportChoice::TakeBrought);
    service
        .decide_import(&ImportChoice::TakeBrought, view.file, 2_000_000)
        .unwrap();
    assert_eq!(fs::read_to_string(&file).unwrap(), more.text());
    let copies = beside(&file);
    assert_eq!(copies.len(), 1);
    assert_eq!(fs::read(&copies[0]).unwrap(), kept);
}

#[test]
fn the_copies_of_old_merges_are_few_and_can_be_cleared() {
    let folder = tempfile::tempdir().unwrap();
    let (mut service, id, file) = begun(&folder);
    assert_eq!(row(&mut service, &id).copies, None);
    let mut newest = Vec::new();
    for n in 0..8 {
        // Each time the file has one note, and the throw here another.
        let other = noted(&file, &[&format!("there {n}")]).text();
        service
            .act(&id, &note(&format!("here {n}")), 10 + n)
            .unwrap();
        newest = fs::read(&file).unwrap();
        let view = service
            .import(brought(&folder, other.as_bytes()), 0)
            .unwrap();
        let merge = ImportChoice::Merge { brought: vec![] };
        service.decide_import(&merge, view.file, 1_000 + n).unwrap();
    }
    let copies = beside(&file);
    let named = |kind: &str| -> Vec<PathBuf> {
        let times = 1_003..1_008;
        times
            .map(|at| file.with_file_name(format!("throw.jsonl.{kind}-{at}")))
            .collect()
    };
    assert_eq!(copies, [named("brought"), named("here")].concat());
    assert_eq!(fs::read(&named("here")[4]).unwrap(), newest);
    let said = row(&mut service, &id).copies.unwrap();
    assert!(said.contains("10 copies"), "{said}");
    // What is not of a merge stays.
    let others = [
        "throw.jsonl.version-1",
        "throw.jsonl.torn-5",
        "throw.jsonl.here-x",
        "mine",
    ];
    let others = others.map(|name| file.with_file_name(name));
    others.iter().for_each(|path| fs::write(path, "x").unwrap());
    let before = fs::read(&file).unwrap();
    let clear = ShelfCommand::ClearCopies { id: id.clone() };
    service.shelf_command(&clear, 0).unwrap();
    let mut left = others.to_vec();
    left.sort();
    assert_eq!(beside(&file), left);
    assert_eq!(row(&mut service, &id).copies, None);
    assert_eq!(fs::read(&file).unwrap(), before);
    // Nor without a throw, or for another who may not write.
    let none = ShelfCommand::ClearCopies { id: "none".into() };
    assert_eq!(
        service.shelf_command(&none, 0).unwrap_err().code,
        "no-such-throw"
    );
    let mut second = at(folder.path().to_path_buf());
    assert_eq!(second.shelf_command(&clear, 0).unwrap_err().code, "locked");
}
