//! The service on a real folder.

mod imports;
mod memory;
mod reminding;
mod swatches;

use super::*;
use crate::desktop;
use crate::disk::DiskPath;
use crate::store::{Found, Seen};
use lapwork_core::command::Command;
use lapwork_core::log::journal::FormatError;
use lapwork_core::show::{Query, Request, ShelfCommand, ShelfRow, ShelfView, View};
use std::fs;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use tempfile::TempDir;

fn at(folder: PathBuf) -> Service {
    Service::new(desktop::store(folder), desktop::host())
}

pub(super) fn service(folder: &TempDir) -> Service {
    let mut service = at(folder.path().to_path_buf());
    assert_eq!(service.hello(0).problem, None);
    service
}

/// A service with one throw on it.
pub(super) fn begun(folder: &TempDir) -> (Service, String, PathBuf) {
    let mut service = service(folder);
    let id = service
        .shelf_command(&ShelfCommand::Demo, 1_000_000)
        .unwrap()
        .id
        .unwrap();
    let file = folder.path().join("throws").join(&id).join("throw.jsonl");
    (service, id, file)
}

pub(super) fn noting(text: &str) -> Command {
    Command::Note {
        text: text.to_string(),
        piece: None,
        task: None,
        next: false,
    }
}

pub(super) fn note(text: &str) -> Request {
    Request::Act {
        action: noting(text),
    }
}

/// What lies in a throw's file, with these notes more.
pub(super) fn noted(file: &Path, texts: &[&str]) -> Journal {
    let mut journal = Journal::read(&fs::read(file).unwrap()).unwrap().journal;
    for text in texts {
        let entry = journal.propose(&noting(text), 5).unwrap();
        journal.accept(entry).unwrap();
    }
    journal
}

pub(super) fn entry(service: &mut Service, id: &str) -> u32 {
    let seen = service.view(id, &Query::Trim, 0).unwrap();
    let View::Trim(seen) = seen else {
        panic!("asked for trim sizes")
    };
    seen.head.entry
}

pub(super) fn row(service: &mut Service, id: &str) -> ShelfRow {
    let mut rows = service.shelf(0).rows.into_iter();
    rows.find(|row| row.id == id).unwrap()
}

pub(super) fn code(problem: Option<Problem>) -> String {
    problem.map(|problem| problem.code).unwrap_or_default()
}

#[test]
fn what_was_acknowledged_is_there_after_reopening() {
    let folder = tempfile::tempdir().unwrap();
    let (mut service, id, file) = begun(&folder);
    let head = service.act(&id, &note("one"), 2_000_000).unwrap();
    let text = fs::read_to_string(&file).unwrap();
    assert!(text.ends_with("\"}\n") && text.contains("\"one\""));
    drop(service);
    let mut service = self::service(&folder);
    assert_eq!(entry(&mut service, &id), head.entry);
    let undone = service.act(&id, &Request::Undo, 3_000_000).unwrap();
    assert_eq!(undone.entry, head.entry + 1);
    assert!(undone.redo.is_some());
    assert_eq!(row(&mut service, &id).problem, None);
}

#[test]
fn a_refusal_writes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let (mut service, id, file) = begun(&folder);
    let before = fs::read(&file).unwrap();
    assert_eq!(service.act(&id, &note("  "), 0).unwrap_err().code, "words");
    let twice = ShelfCommand::Begin {
        action: Command::Archive { archived: true },
        pile: Vec::new(),
    };
    assert_eq!(
        service.shelf_command(&twice, 0).unwrap_err().code,
        "beginning"
    );
    assert_eq!(fs::read(&file).unwrap(), before);
    assert_eq!(service.shelf(0).rows.len(), 1);
}

#[test]
fn a_torn_last_line_is_left_out_a_copy_kept_and_work_goes_on() {
    let folder = tempfile::tempdir().unwrap();
    let (mut service, id, file) = begun(&folder);
    let before = service.act(&id, &note("kept"), 0).unwrap().entry;
    service.act(&id, &note("torn"), 0).unwrap();
    drop(service);
    let whole = fs::read(&file).unwrap();
    let torn = &whole[..whole.len() - 9];
    fs::write(&file, torn).unwrap();

    let mut service = self::service(&folder);
    assert_eq!(code(row(&mut service, &id).problem), "torn");
    assert_eq!(entry(&mut service, &id), before);
    let copies: Vec<PathBuf> = fs::read_dir(file.parent().unwrap())
        .unwrap()
        .map(|found| found.unwrap().path())
        .filter(|path| *path != file)
        .collect();
    assert_eq!(copies.len(), 1);
    assert_eq!(fs::read(&copies[0]).unwrap(), torn);

    service.act(&id, &note("again"), 0).unwrap();
    drop(service);
    let mut service = self::service(&folder);
    assert_eq!(entry(&mut service, &id), before + 1);
    assert_eq!(row(&mut service, &id).problem, None);
}

#[test]
fn a_lost_newline_is_restored_before_the_next_entry() {
    let folder = tempfile::tempdir().unwrap();
    let (service, id, file) = begun(&folder);
    drop(service);
    let mut whole = fs::read(&file).unwrap();
    assert_eq!(whole.pop(), Some(b'\n'));
    fs::write(&file, &whole).unwrap();

    let mut service = self::service(&folder);
    let before = entry(&mut service, &id);
    assert_eq!(fs::read(&file).unwrap(), whole, "reading mends nothing");
    service.act(&id, &note("one"), 0).unwrap();
    service.act(&id, &note("two"), 0).unwrap();
    drop(service);
    let mut service = self::service(&folder);
    assert_eq!(entry(&mut service, &id), before + 2);
    assert_eq!(row(&mut service, &id).problem, None);
}

#[test]
fn damage_in_the_middle_is_told_and_the_file_left_alone() {
    let folder = tempfile::tempdir().unwrap();
    let (service, id, file) = begun(&folder);
    drop(service);
    let mut bytes = fs::read(&file).unwrap();
    let middle = bytes.len() / 2;
    bytes[middle] ^= 1;
    fs::write(&file, &bytes).unwrap();

    let mut service = self::service(&folder);
    let row = row(&mut service, &id);
    assert!(row.head.is_none() && row.problem.is_some());
    assert!(service.view(&id, &Query::Trim, 0).is_err());
    assert!(service.act(&id, &note("one"), 0).is_err());
    assert_eq!(fs::read(&file).unwrap(), bytes);
    let folder = fs::read_dir(file.parent().unwrap()).unwrap();
    assert_eq!(folder.count(), 1);
}

#[test]
fn the_second_to_open_sees_what_the_first_keeps_and_writes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let (mut first, id, file) = begun(&folder);
    let mut second = at(folder.path().to_path_buf());
    assert_eq!(code(second.hello(0).problem), "locked");
    let before = entry(&mut second, &id);
    first.act(&id, &note("one"), 0).unwrap();
    assert_eq!(entry(&mut second, &id), before + 1);
    let kept = fs::read(&file).unwrap();
    assert_eq!(second.act(&id, &note("two"), 0).unwrap_err().code, "locked");
    let delete = ShelfCommand::Delete { id: id.clone() };
    for command in [ShelfCommand::Demo, delete] {
        assert_eq!(
            second.shelf_command(&command, 0).unwrap_err().code,
            "locked"
        );
    }
    let refused = second.set_prefs(Prefs::default(), 0);
    assert_eq!(refused.unwrap_err().code, "locked");
    assert_eq!(fs::read(&file).unwrap(), kept);
    assert!(!folder.path().join("settings.json").exists());

    drop(first);
    let head = second.act(&id, &note("three"), 0).unwrap();
    assert_eq!(head.entry, before + 2);
    assert_eq!(second.hello(0).problem, None);
}

#[test]
fn a_torn_line_is_not_mended_by_the_second_to_open() {
    let folder = tempfile::tempdir().unwrap();
    let (first, id, file) = begun(&folder);
    let whole = fs::read(&file).unwrap();
    fs::write(&file, &whole[..whole.len() - 9]).unwrap();
    let mut second = at(folder.path().to_path_buf());
    assert_eq!(code(row(&mut second, &id).problem), "torn-left");
    assert_eq!(fs::read(&file).unwrap(), whole[..whole.len() - 9]);
    drop(first);
}

#[test]
fn a_throw_is_deleted_restored_and_erased() {
    let folder = tempfile::tempdir().unwrap();
    let (mut service, id, file) = begun(&folder);
    let kept = fs::read(&file).unwrap();
    let erase = ShelfCommand::Erase { id: id.clone() };
    let early = service.shelf_command(&erase, 0).unwrap_err();
    assert_eq!(
        early.code, "no-such-throw",
        "only what is deleted is erased"
    );

    let shelf = service
        .shelf_command(&ShelfCommand::Delete { id: id.clone() }, 0)
        .unwrap()
        .shelf;
    assert!(shelf.rows.is_empty() && shelf.deleted[0].id == id);
    assert!(shelf.deleted[0].head.is_some());
    let gone = service.act(&id, &note("one"), 0).unwrap_err();
    assert_eq!(gone.code, "no-such-throw");

    let shelf = service
        .shelf_command(&ShelfCommand::Restore { id: id.clone() }, 0)
        .unwrap()
        .shelf;
    assert!(shelf.deleted.is_empty() && shelf.rows[0].id == id);
    assert_eq!(fs::read(&file).unwrap(), kept);
    service.act(&id, &note("one"), 0).unwrap();

    service
        .shelf_command(&ShelfCommand::Delete { id: id.clone() }, 0)
        .unwrap();
    let shelf = service.shelf_command(&erase, 0).unwrap().shelf;
    assert!(shelf.rows.is_empty() && shelf.deleted.is_empty());
    assert_eq!(
        fs::read_dir(folder.path().join("deleted")).unwrap().count(),
        0
    );
}

#[test]
fn a_throw_put_away_is_on_its_own_list() {
    let folder = tempfile::tempdir().unwrap();
    let (mut service, id, _) = begun(&folder);
    let action = Command::Archive { archived: true };
    service.act(&id, &Request::Act { action }, 0).unwrap();
    let shelf = service.shelf(0);
    assert!(shelf.rows.is_empty() && shelf.archived[0].id == id);
}

#[test]
fn bad_ids_reach_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let (mut service, ..) = begun(&folder);
    fs::write(folder.path().join("throw.jsonl"), "mine").unwrap();
    for id in ["..", ".", "", "../throws", "a/b", "ABC"] {
        let id = id.to_string();
        let refused = service.view(&id, &Query::Trim, 0).unwrap_err();
        let acted = service.act(&id, &note("one"), 0).unwrap_err();
        let commands = [
            ShelfCommand::Delete { id: id.clone() },
            ShelfCommand::Restore { id: id.clone() },
            ShelfCommand::Erase { id },
        ];
        let answered = commands.map(|command| service.shelf_command(&command, 0).unwrap_err().code);
        assert_eq!([refused.code, acted.code], ["bad-id", "bad-id"]);
        assert_eq!(answered, ["bad-id", "bad-id", "bad-id"]);
    }
    assert_eq!(
        fs::read(folder.path().join("throw.jsonl")).unwrap(),
        b"mine"
    );
    let unknown = service.view("not-there", &Query::Trim, 0).unwrap_err();
    assert_eq!(unknown.code, "no-such-throw");
}

#[test]
fn a_failed_write_accepts_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let (mut service, id, file) = begun(&folder);
    let before = entry(&mut service, &id);
    let kept = fs::read(&file).unwrap();
    // Root may write anywhere, so the file itself gives way to a folder.
    fs::remove_file(&file).unwrap();
    fs::create_dir(&file).unwrap();
    assert_eq!(service.act(&id, &note("one"), 0).unwrap_err().code, "disk");
    assert!(!service.open.contains_key(&ThrowId::parse(&id).unwrap()));
    assert_eq!(service.view(&id, &Query::Trim, 0).unwrap_err().code, "disk");
    fs::remove_dir(&file).unwrap();
    fs::write(&file, &kept).unwrap();
    assert_eq!(entry(&mut service, &id), before);
    assert_eq!(service.act(&id, &note("two"), 0).unwrap().entry, before + 1);
}

/// The test runs itself again where the system lets no file grow past a limit, so
/// that a write stops half-way, as it does on a disk that fills up.
#[cfg(unix)]
#[test]
fn a_disk_that_fills_up_half_way_through_an_entry_accepts_nothing() {
    const INSIDE: &str = "LAPWORK_TEST_LIMITED";
    if std::env::var_os(INSIDE).is_none() {
        let test = "service::tests::a_disk_that_fills_up_half_way_through_an_entry_accepts_nothing";
        let ended = std::process::Command::new("sh")
            .arg("-c")
            .arg("trap '' XFSZ; ulimit -f 500; exec \"$0\" --exact \"$1\"")
            .arg(std::env::current_exe().unwrap())
            .arg(test)
            .env(INSIDE, "1")
            .output()
            .unwrap();
        let said = String::from_utf8_lossy(&ended.stdout);
        assert!(
            ended.status.success() && said.contains("1 passed"),
            "{said}"
        );
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let (mut service, id, file) = begun(&folder);
    let long = note(&"so ".repeat(600));
    let (kept, problem) = loop {
        let kept = fs::read(&file).unwrap();
        if let Err(problem) = service.act(&id, &long, 0) {
            break (kept, problem);
        }
    };
    assert_eq!(problem.code, "disk");
    assert_eq!(fs::read(&file).unwrap(), kept, "cut back to what was sound");
    let last = entry(&mut service, &id);
    assert_eq!(service.act(&id, &long, 0).unwrap_err().code, "disk");
    assert_eq!(fs::read(&file).unwrap(), kept);
    drop(service);
    let mut service = self::service(&folder);
    assert_eq!(entry(&mut service, &id), last);
    assert_eq!(row(&mut service, &id).problem, None);
}

#[test]
fn a_file_another_program_changed_is_put_right_before_it_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let (mut service, id, file) = begun(&folder);
    let before = entry(&mut service, &id);
    let kept = fs::read(&file).unwrap();
    service.act(&id, &note("one"), 0).unwrap();
    let known = fs::read(&file).unwrap();
    fs::write(&file, &kept).unwrap();
    let problem = service.act(&id, &note("two"), 0).unwrap_err();
    assert_eq!(problem.code, "changed");
    assert_eq!(fs::read(&file).unwrap(), known, "what was acknowledged");
    assert_eq!(service.act(&id, &note("two"), 0).unwrap().entry, before + 2);
}

#[test]
fn a_folder_that_cannot_be_made_is_told_at_the_start() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("file");
    fs::write(&file, "mine").unwrap();
    let mut service = at(file.join("data"));
    let hello = service.hello(0);
    assert!(hello.shelf.rows.is_empty());
    assert_eq!(code(hello.problem), "disk");
    assert_eq!(
        service
            .shelf_command(&ShelfCommand::Demo, 0)
            .unwrap_err()
            .code,
        "disk"
    );
    assert_eq!(fs::read(&file).unwrap(), b"mine");
}

#[test]
fn settings_are_kept_within_bounds_and_broken_ones_do_no_harm() {
    let folder = tempfile::tempdir().unwrap();
    let mut service = self::service(&folder);
    let large = Prefs {
        text: 900,
        ..Prefs::default()
    };
    assert_eq!(service.set_prefs(large, 0).unwrap().prefs.text, 200);
    drop(service);
    assert_eq!(self::service(&folder).hello(0).prefs.text, 200);
    fs::write(folder.path().join("settings.json"), "gone").unwrap();
    let mut service = at(folder.path().to_path_buf());
    let hello = service.hello(0);
    assert_eq!(hello.prefs, Prefs::default());
    assert_eq!(code(hello.problem), "settings");
    let hello = service.set_prefs(Prefs::default(), 0).unwrap();
    assert_eq!(hello.problem, None);
}

#[test]
fn the_chosen_language_is_spoken_else_the_systems() {
    let german = "de_AT.UTF-8";
    let folder = tempfile::tempdir().unwrap();
    let store = || desktop::store(folder.path().to_path_buf());
    let mut service = Service::for_locale(store(), desktop::host(), german);
    let hello = service.hello(0);
    assert_eq!((hello.language.as_str(), hello.point.as_str()), ("de", ","));
    assert_eq!(hello.prefs.ruler.system, System::Metric);
    assert_eq!(hello.draft.side, "125 mm");
    assert_eq!(hello.words["ui-back"], "Zurück");
    assert_eq!(hello.languages.len(), LANGUAGES.len());
    let prefs = |language: &str| Prefs {
        language: Some(language.into()),
        ..Prefs::default()
    };
    let hello = service.set_prefs(prefs("en"), 0).unwrap();
    assert_eq!((hello.language.as_str(), hello.point.as_str()), ("en", "."));
    assert_eq!(hello.words["ui-back"], "Back");
    drop(service);
    // What is kept goes before what is usual there.
    let hello = Service::for_locale(store(), desktop::host(), german).hello(0);
    assert_eq!(hello.language, "en");
    assert_eq!(hello.prefs.ruler.system, System::Inch);
    // A language of a newer Lapwork is kept, and the system's spoken meanwhile.
    let mut service = Service::for_locale(store(), desktop::host(), german);
    let hello = service.set_prefs(prefs("tlh"), 0).unwrap();
    assert_eq!(hello.language, "de");
    assert_eq!(hello.prefs.language.as_deref(), Some("tlh"));
    // What names no language is not kept, however long it is.
    let hello = service.set_prefs(prefs(&"de-".repeat(3 << 20)), 0).unwrap();
    assert_eq!(
        (hello.language.as_str(), hello.prefs.language),
        ("de", None)
    );
    let kept = fs::metadata(folder.path().join("settings.json")).unwrap();
    assert!(kept.len() < 1000, "{kept:?}");
}

/// Each row of the shelf: its id, and whether it is read.
fn filled(shelf: &ShelfView) -> Vec<(String, bool)> {
    let rows = shelf
        .rows
        .iter()
        .chain(&shelf.archived)
        .chain(&shelf.deleted);
    let mut rows: Vec<_> = rows
        .map(|row| (row.id.clone(), row.head.is_some()))
        .collect();
    rows.sort();
    rows
}

#[test]
fn a_shelf_of_many_throws_is_shown_at_once_and_fills_in() {
    let folder = tempfile::tempdir().unwrap();
    let mut service = self::service(&folder);
    for _ in 0..5 {
        service.shelf_command(&ShelfCommand::Demo, 1_000).unwrap();
    }
    let all = filled(&service.shelf(0));
    assert!(all.len() == 5 && all.iter().all(|(_, read)| *read));
    let id = all[0].0.clone();
    service
        .shelf_command(&ShelfCommand::Delete { id }, 1_000)
        .unwrap();
    drop(service);
    // One that takes no time to wait reads one throw each time, and names all at once.
    let mut service = at(folder.path().to_path_buf()).waiting(-1);
    let mut seen = vec![filled(&service.hello(0).shelf)];
    while seen.last().unwrap().iter().any(|(_, read)| !read) {
        seen.push(filled(&service.shelf(0)));
    }
    let read = |rows: &Vec<(String, bool)>| rows.iter().filter(|(_, read)| *read).count();
    assert_eq!(seen.iter().map(read).collect::<Vec<_>>(), [1, 2, 3, 4, 5]);
    for rows in &seen {
        assert!(
            rows.iter()
                .map(|(id, _)| id)
                .eq(all.iter().map(|(id, _)| id))
        );
    }
    // A throw that is not read yet can be opened all the same.
    drop(service);
    let mut service = at(folder.path().to_path_buf()).waiting(-1);
    let shelf = service.hello(0).shelf;
    let unread = shelf.rows.iter().rfind(|row| row.unread).unwrap();
    service.act(&unread.id, &note("on"), 2_000).unwrap();
    // One that waits long enough reads all.
    let mut service = at(folder.path().join("other")).waiting(600_000);
    service.shelf_command(&ShelfCommand::Demo, 1_000).unwrap();
    let shelf = service
        .shelf_command(&ShelfCommand::Demo, 1_000)
        .unwrap()
        .shelf;
    assert!(shelf.rows.len() == 2 && shelf.rows.iter().all(|row| !row.unread));
}

#[test]
fn every_error_has_its_words() {
    let path = DiskPath::from("there/throw.jsonl");
    let disk = |kind: ErrorKind| StoreError::Disk {
        path: path.clone(),
        why: kind.into(),
    };
    let words = Words::english();
    let mut problems: Vec<Problem> = [
        disk(ErrorKind::StorageFull),
        disk(ErrorKind::PermissionDenied),
        disk(ErrorKind::AlreadyExists),
        disk(ErrorKind::Other),
        StoreError::Locked,
        StoreError::TooLarge { path: path.clone() },
        StoreError::NoSuchThrow,
        StoreError::Missing { path: path.clone() },
        StoreError::BadId,
        StoreError::Settings { path: path.clone() },
        StoreError::Unreadable,
        StoreError::Random(ErrorKind::Other.into()),
        StoreError::NothingImported,
        StoreError::OtherImported,
        StoreError::Torn { path: path.clone() },
        StoreError::Unmergeable(lapwork_core::log::merge::Unmergeable::Misfit),
        StoreError::Damaged {
            path: path.clone(),
            how: FormatError::Newer { version: 9 },
        },
    ]
    .iter()
    .map(|error| message(&words, error))
    .collect();
    let unsure = |seen| StoreError::Unsure {
        path: path.clone(),
        why: ErrorKind::Other.into(),
        seen,
    };
    let changed = |found| StoreError::Changed {
        path: path.clone(),
        here: path.clone(),
        brought: Some(path.clone()),
        found,
    };
    problems.extend([
        message(&words, &changed(Found::Nothing)),
        message(&words, &changed(Found::Unsound)),
        message(&words, &changed(Found::Less)),
        message(&words, &changed(Found::More(Vec::new()))),
        message(
            &words,
            &StoreError::ChangedLeft {
                path: path.clone(),
                why: ErrorKind::StorageFull.into(),
            },
        ),
        message(&words, &StoreError::Away { path: path.clone() }),
    ]);
    problems.extend([
        message(&words, &unsure(Seen::Before)),
        message(&words, &unsure(Seen::After)),
        message(&words, &unsure(Seen::Neither)),
        message(&words, &StoreError::Held { path: path.clone() }),
    ]);
    let damaged = StoreError::Damaged {
        path: path.clone(),
        how: FormatError::Line { line: 3 },
    };
    let damaged = message(&words, &damaged);
    assert!(damaged.next.contains("there/throw.jsonl"), "{damaged:?}");
    problems.push(damaged);
    let torn = [
        ("copy", "copy".into()),
        ("bytes", 5.into()),
        ("count", 3.into()),
    ];
    problems.push(words.problem("torn", &torn));
    problems.push(words.problem("torn-left", &[]));
    for problem in problems {
        for text in [&problem.said, &problem.next] {
            assert!(text.ends_with('.'), "{}: {text}", problem.code);
            assert!(!text.contains(['{', '$']), "{}: {text}", problem.code);
        }
    }
}

#[test]
fn after_something_broke_off_everything_is_read_from_the_disk_and_nothing_is_lost() {
    let folder = TempDir::new().unwrap();
    let (mut service, id, file) = begun(&folder);
    let query = Query::Trim;
    let kept = service.act_and_view(&id, &note("kept"), Some(&query), 5);
    let kept = kept.unwrap();
    let before = service.snapshot(&id, 5).unwrap().answer(&query).unwrap();
    assert_eq!(before.revision, kept.revision);

    assert_eq!(service.recover().code, "broke");
    let after = service.snapshot(&id, 6).unwrap().answer(&query).unwrap();
    assert!(after.revision > before.revision, "what was answered is old");
    assert_eq!(entry(&mut service, &id), kept.head.entry);
    let next = service.act_and_view(&id, &note("on"), None, 7).unwrap();
    assert_eq!(next.head.entry, kept.head.entry + 1);
    assert!(next.revision > after.revision);

    // What the disk has lost meanwhile is still known, told, and put back.
    let sound = fs::read(&file).unwrap();
    service.recover();
    fs::remove_file(&file).unwrap();
    let problem = service.act(&id, &note("lost?"), 8).unwrap_err();
    assert_eq!(problem.code, "changed");
    assert_eq!(fs::read(&file).unwrap(), sound);
    assert_eq!(
        service.act(&id, &note("again"), 9).unwrap().entry,
        next.head.entry + 1
    );
}
