//! Throws handed on and brought back, in the real window and on the page (see `tests/README.md`).

use lapwork_core::command::Command;
use lapwork_core::log::journal::Journal;
use lapwork_core::throw::Item;
use lapwork_tests::walk::Walk;
use serde_json::json;
use std::fs;

#[test]
fn the_throw_is_handed_on_to_the_byte_and_never_over_another() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.tap("open-demo");
    walk.sees("card-title", "Cut a square");
    let id = walk.id();
    walk.tap("tab-history");
    walk.tap("hand-on");
    walk.sees("hand-throw", "The throw itself");
    walk.tap("hand-throw-0");
    walk.sees("handed", "Window-seat throw.jsonl");
    let kept = walk.window.record(&id);
    // The page does not see what the browser calls a second file of one name.
    let second = match walk.window.is_page() {
        true => "Window-seat throw (1).jsonl",
        false => "Window-seat throw (2).jsonl",
    };
    assert_eq!(handed(&walk, 1), ["Window-seat throw.jsonl"]);
    walk.tap("hand-throw-0");
    if !walk.window.is_page() {
        walk.sees("handed", second);
    }
    let names = handed(&walk, 2);
    assert_eq!(names, [second, "Window-seat throw.jsonl"]);
    for name in names {
        assert_eq!(fs::read(walk.window.handed().join(name)).unwrap(), kept);
    }
}

/// The names of the files handed on, once there are so many; a browser writes them by and by.
fn handed(walk: &Walk, count: usize) -> Vec<String> {
    let names = || {
        let found = fs::read_dir(walk.window.handed()).into_iter().flatten();
        let mut names: Vec<String> = found
            .map(|found| found.unwrap().file_name().into_string().unwrap())
            .collect();
        names.sort();
        names
    };
    walk.window.wait_until("the files are there", |_| {
        let names = names();
        names.len() == count && names.iter().all(|name| name.ends_with(".jsonl"))
    });
    names()
}

/// The demo in the window; gives its id and a copy as it was then.
fn demo(walk: &Walk) -> (String, Journal) {
    walk.tap("open-demo");
    walk.sees("card-title", "Cut a square");
    let id = walk.id();
    let copy = read(walk, &id);
    (id, copy)
}

fn read(walk: &Walk, id: &str) -> Journal {
    Journal::read(&walk.window.record(id)).unwrap().journal
}

/// What another device does to its copy.
fn elsewhere(copy: &mut Journal, action: &Command) {
    let at = copy.entries().map(|(e, _)| e.at).max().unwrap() + 1_000;
    let entry = copy.propose(action, at).unwrap();
    copy.accept(entry).unwrap();
}

fn import(walk: &Walk, copy: &Journal) {
    walk.tap("back");
    bring(walk, &copy.text());
}

fn bring(walk: &Walk, record: &str) {
    walk.window.bring(record, || walk.tap("bring"));
}

fn notes(journal: &Journal) -> Vec<&str> {
    let notes = journal.throw().notes.iter();
    notes.map(|note| note.text.as_str()).collect()
}

fn note(text: &str) -> Command {
    Command::Note {
        text: text.into(),
        piece: None,
        task: None,
        next: false,
    }
}

#[test]
fn two_copies_that_went_apart_become_one_with_the_work_of_both() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    let (id, mut copy) = demo(&walk);
    // Here a square is cut; elsewhere a note is written and the glue is found.
    let before = walk.done();
    walk.tap("tick");
    walk.window
        .wait_until("the tick is taken", |_| walk.done() == before + 1);
    let here = walk.window.record(&id);
    elsewhere(&mut copy, &note("Cut the rest at the library."));
    elsewhere(
        &mut copy,
        &Command::Gather {
            item: Item::Glue,
            have: true,
        },
    );
    import(&walk, &copy);
    walk.sees(
        "bring-said",
        "Only here: one step. Only in the file: 2 steps.",
    );
    walk.sees("bring-said", "They do not contradict each other");
    walk.tap("take-merge");
    walk.sees("second", "Merged.");
    walk.window
        .wait_until("the cut square stands", |_| walk.done() == before + 1);
    let merged = read(&walk, &id);
    assert!(notes(&merged).contains(&"Cut the rest at the library."));
    assert!(merged.throw().gathered.contains(&Item::Glue));
    assert_eq!(merged.len(), copy.len() + 1);
    // Both files as they were lie beside it; the page shows nobody its files.
    if !walk.window.is_page() {
        let file = walk.window.file(&id);
        let beside: Vec<Vec<u8>> = fs::read_dir(file.parent().unwrap())
            .unwrap()
            .map(|found| found.unwrap().path())
            .filter(|path| *path != file)
            .map(|path| fs::read(path).unwrap())
            .collect();
        assert_eq!(beside.len(), 2);
        assert!(beside.contains(&here) && beside.contains(&copy.text().into_bytes()));
    }
    // The same file once more: everything in it is here.
    import(&walk, &copy);
    walk.sees("bring-said", "everything in the file");
    walk.tap("take-keep-here");
    assert_eq!(read(&walk, &id).text(), merged.text());
    assert_eq!(walk.id(), id);
}

#[test]
fn what_cannot_both_stand_is_asked_and_obeyed() {
    let data = tempfile::tempdir().unwrap();
    let mut walk = Walk::start(data.path());
    let (_, copy) = demo(&walk);
    let name = |name: &str| Command::Rename { name: name.into() };
    for (brought, want) in [(true, "Attic throw"), (false, "Porch throw")] {
        let id = walk.id();
        let action = serde_json::to_value(name("Porch throw")).unwrap();
        let request = json!({ "request": "act", "action": action });
        walk.window
            .call("act", json!({ "id": id, "request": request }))
            .unwrap();
        let mut other = copy.clone();
        elsewhere(&mut other, &name("Attic throw"));
        elsewhere(&mut other, &note(&format!("Brought {brought}.")));
        import(&walk, &other);
        walk.sees("bring-said", "In one place they contradict each other");
        walk.sees("conflict-0", "Porch throw");
        walk.sees("conflict-0", "Attic throw");
        let merge = walk.window.select("[data-testid=take-merge]");
        let asked = walk.window.run(
            "return arguments[0].getAttribute('aria-disabled')",
            &[merge.argument()],
        );
        assert_eq!(asked, json!("true"), "not before a side is chosen");
        let side = if brought { "brought" } else { "here" };
        walk.tap(&format!("pick-0-{side}"));
        walk.tap("take-merge");
        walk.sees("second", "Merged.");
        let merged = read(&walk, &id);
        assert_eq!(merged.throw().name, want);
        assert!(notes(&merged).contains(&format!("Brought {brought}.").as_str()));
        // Back to where the two parted, for the other choice.
        walk.window.replace(&id, &copy.text());
        walk.window.wait_text("Window-seat throw");
        walk.tap("throw-row");
    }
}

#[test]
fn a_strange_file_is_refused_and_a_copy_gets_a_name_of_its_own() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    let (id, copy) = demo(&walk);
    let kept = walk.window.record(&id);
    walk.tap("back");
    bring(&walk, "Dear diary,\n");
    walk.sees("problem", "This is not a throw file.");
    walk.tap("dismiss");
    let mut more = copy.clone();
    elsewhere(&mut more, &note("One more."));
    bring(&walk, &more.text());
    walk.sees("bring-said", "one step more");
    walk.tap("take-keep-both");
    walk.sees("second", "Window-seat throw (copy)");
    assert_eq!(walk.window.record(&id), kept);
    let shelf = walk.window.call("shelf", json!({})).unwrap();
    assert_eq!(shelf["rows"].as_array().unwrap().len(), 2);
}

#[test]
fn a_file_another_program_put_there_is_told_at_once_and_merged() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    if walk.window.is_page() {
        return;
    }
    let (id, copy) = demo(&walk);
    let file = walk.window.file(&id);
    let before = walk.done();
    walk.tap("tick");
    walk.window
        .wait_until("the tick is taken", |_| walk.done() == before + 1);
    let here = fs::read(&file).unwrap();
    // A copy of the same length, with something else in it, takes the place of the file.
    let other = |text: &str| {
        let mut other = copy.clone();
        elsewhere(&mut other, &note(text));
        other
    };
    let short = other("x").text().len();
    let other = other(&"x".repeat(1 + here.len() - short));
    assert_eq!(other.text().len(), here.len());
    let part = file.with_extension("part");
    fs::write(&part, other.text()).unwrap();
    fs::rename(&part, &file).unwrap();
    walk.tap("tick");
    walk.sees("bring-said", "Another program changed this throw’s file");
    walk.sees("bring-said", "do your last step again");
    walk.sees("details", "Details");
    assert_eq!(fs::read(&file).unwrap(), here, "what was kept is back");
    walk.tap("take-merge");
    walk.sees("second", "Merged.");
    walk.window
        .wait_until("the tick stands", |_| walk.done() == before + 1);
    walk.tap("tick");
    walk.window
        .wait_until("the next is taken", |_| walk.done() == before + 2);
    let merged = read(&walk, &id);
    assert_eq!(merged.len(), copy.len() + 3);
    assert_eq!(notes(&merged).len(), notes(&copy).len() + 1);
}
