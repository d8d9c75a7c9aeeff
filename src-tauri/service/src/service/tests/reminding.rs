//! When the maker is reminded to save a copy of a throw, and when no longer.

use super::*;
use crate::import;
use lapwork_core::show::{Export, ImportChoice};

/// A service that reminds, as in a browser.
fn reminding(folder: &TempDir) -> Service {
    let mut service = at(folder.path().to_path_buf()).reminding();
    assert_eq!(service.hello(0).problem, None);
    service
}

/// Begin a throw of the maker's own.
fn own(service: &mut Service) -> String {
    let action = lapwork_core::command::Command::Begin {
        name: "Blue".into(),
        plan: Plan::default(),
        prints: Vec::new(),
        denims: Vec::new(),
    };
    let begin = ShelfCommand::Begin {
        action,
        pile: Vec::new(),
    };
    service.shelf_command(&begin, 1).unwrap().id.unwrap()
}

fn work(service: &mut Service, id: &str, changes: usize) {
    for n in 0..changes {
        service.act(id, &note(&format!("change {n}")), 5).unwrap();
    }
}

/// Which throw the maker is reminded of, and what is said.
fn reminded(service: &mut Service) -> Option<(String, String)> {
    let reminder = service.shelf(9).reminder;
    reminder.map(|reminder| (reminder.id, reminder.said))
}

/// Save a copy outside the shelf; gives it.
fn copied(service: &mut Service, id: &str) -> Vec<u8> {
    let files = service.export(id, &Export::Throw, 6).unwrap();
    service.copy_saved(id);
    files.into_iter().next().unwrap().bytes
}

#[test]
fn work_that_is_in_no_copy_is_reminded_of_until_it_is_in_one() {
    let folder = TempDir::new().unwrap();
    let mut service = reminding(&folder);
    let id = own(&mut service);
    work(&mut service, &id, 6);
    assert_eq!(reminded(&mut service), None, "hardly anything is done");
    work(&mut service, &id, 1);
    let (of, said) = reminded(&mut service).unwrap();
    assert_eq!(of, id);
    assert!(said.contains("“Blue” is in this browser only"), "{said}");
    // It is still so after the app was closed.
    drop(service);
    let mut service = reminding(&folder);
    assert_eq!(reminded(&mut service).map(|(id, _)| id), Some(id.clone()));
    // A copy that was made and not saved is none.
    service.export(&id, &Export::Throw, 6).unwrap();
    assert!(reminded(&mut service).is_some());
    copied(&mut service, &id);
    assert_eq!(reminded(&mut service), None);
    drop(service);
    let mut service = reminding(&folder);
    assert_eq!(reminded(&mut service), None);
    work(&mut service, &id, 29);
    assert_eq!(reminded(&mut service), None);
    work(&mut service, &id, 1);
    let (_, said) = reminded(&mut service).unwrap();
    assert!(said.contains("Much of “Blue”"), "{said}");
}

#[test]
fn a_copy_put_off_is_not_asked_for_until_much_more_is_done() {
    let folder = TempDir::new().unwrap();
    let mut service = reminding(&folder);
    let id = own(&mut service);
    work(&mut service, &id, 8);
    assert!(reminded(&mut service).is_some());
    let later = ShelfCommand::CopyLater { id: id.clone() };
    let shelf = service.shelf_command(&later, 7).unwrap().shelf;
    assert_eq!(shelf.reminder, None);
    drop(service);
    let mut service = reminding(&folder);
    work(&mut service, &id, 29);
    assert_eq!(reminded(&mut service), None);
    work(&mut service, &id, 1);
    assert!(reminded(&mut service).is_some());
    let none = ShelfCommand::CopyLater { id: "../x".into() };
    assert!(service.shelf_command(&none, 7).is_err());
}

#[test]
fn what_was_undone_needs_no_copy() {
    let folder = TempDir::new().unwrap();
    let mut service = reminding(&folder);
    let id = own(&mut service);
    work(&mut service, &id, 7);
    assert!(reminded(&mut service).is_some());
    service.act(&id, &Request::Undo, 6).unwrap();
    assert_eq!(reminded(&mut service), None);
    // A copy has what was undone as well: done again, it is in the copy.
    copied(&mut service, &id);
    service.act(&id, &Request::Redo, 7).unwrap();
    work(&mut service, &id, 29);
    assert_eq!(reminded(&mut service), None);
    work(&mut service, &id, 1);
    assert!(reminded(&mut service).is_some());
}

#[test]
fn the_demo_and_an_imported_throw_are_elsewhere_as_they_came() {
    let (folder, other) = (TempDir::new().unwrap(), TempDir::new().unwrap());
    let mut service = reminding(&folder);
    service.shelf_command(&ShelfCommand::Demo, 1).unwrap();
    assert_eq!(reminded(&mut service), None);
    let id = own(&mut service);
    work(&mut service, &id, 40);
    let copy = copied(&mut service, &id);

    let mut there = reminding(&other);
    let found = import::read(&DiskPath::from("copy.jsonl"), copy.clone());
    let view = there.import(found, 7).unwrap();
    let taken = there.decide_import(&ImportChoice::Add, view.file, 7);
    let here = taken.unwrap().id.unwrap();
    assert_eq!(reminded(&mut there), None);
    work(&mut there, &here, 30);
    assert_eq!(reminded(&mut there).map(|(id, _)| id), Some(here));
    // The first is brought forward with the other's work: all of it is in that file.
    let mut journal = Journal::read(&copy).unwrap().journal;
    for n in 0..40 {
        let entry = journal.propose(&noting(&format!("{n}")), 9).unwrap();
        journal.accept(entry).unwrap();
    }
    let more = import::read(&DiskPath::from("more.jsonl"), journal.text().into_bytes());
    let view = service.import(more, 10).unwrap();
    let taken = service.decide_import(&ImportChoice::TakeBrought, view.file, 10);
    assert_eq!(taken.unwrap().id, Some(id));
    assert_eq!(reminded(&mut service), None);
}

#[test]
fn a_program_on_the_system_does_not_remind_and_keeps_nothing_of_it() {
    let folder = TempDir::new().unwrap();
    let mut service = service(&folder);
    let id = own(&mut service);
    work(&mut service, &id, 50);
    copied(&mut service, &id);
    work(&mut service, &id, 50);
    assert_eq!(reminded(&mut service), None);
    assert!(!folder.path().join("copied.json").exists());
}

#[test]
fn what_is_known_of_copies_may_be_damaged_and_forgets_throws_that_are_gone() {
    let folder = TempDir::new().unwrap();
    let file = folder.path().join("copied.json");
    fs::write(&file, "{\"nothing").unwrap();
    let mut service = reminding(&folder);
    let first = own(&mut service);
    copied(&mut service, &first);
    let kept = fs::read_to_string(&file).unwrap();
    assert!(kept.contains(&first), "{kept}");
    let delete = ShelfCommand::Delete { id: first.clone() };
    service.shelf_command(&delete, 5).unwrap();
    let erase = ShelfCommand::Erase { id: first.clone() };
    service.shelf_command(&erase, 5).unwrap();
    let second = own(&mut service);
    copied(&mut service, &second);
    let kept = fs::read_to_string(&file).unwrap();
    assert!(!kept.contains(&first) && kept.contains(&second), "{kept}");
    // What a later version adds does no harm, and what is left out is not known.
    let id = second;
    fs::write(&file, format!("{{\"{id}\":{{\"put_off\":1,\"more\":2}}}}")).unwrap();
    work(&mut service, &id, 8);
    assert_eq!(reminded(&mut service), None);
    work(&mut service, &id, 22);
    assert!(reminded(&mut service).is_some());
}
