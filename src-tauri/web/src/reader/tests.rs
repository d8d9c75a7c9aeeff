//! Screens made from a copy, held against those of the snapshot itself.

use super::*;
use lapwork_core::demo;
use lapwork_core::show::{ImportChoice, Request};
use lapwork_service::desktop;
use lapwork_service::disk::{DiskPath, MemoryDisk};
use lapwork_service::import;
use lapwork_service::service::Service;
use lapwork_service::store::Store;
use serde_json::{Value, json};

const NOW: i64 = 1_800_000_000_000;

fn begun(across: u16, down: u16) -> Journal {
    let begin = demo::begin("Barn wall", across, down);
    Journal::begin(&begin, NOW - 1000).unwrap().0
}

fn add(service: &mut Service, journal: &Journal) -> String {
    let found = import::read(&DiskPath::from("x"), journal.text().into_bytes());
    let view = service.import(found, NOW).unwrap();
    let taken = service.decide_import(&ImportChoice::Add, view.file, NOW);
    taken.unwrap().id.unwrap()
}

fn service() -> Service {
    let store = Store::on("Lapwork", Box::new(MemoryDisk::new()));
    Service::new(store, desktop::host())
}

fn queries() -> Vec<Query> {
    let queries = json!([
        {"see": "bench", "chosen": null},
        {"see": "faces", "face": "front"},
        {"see": "faces", "face": "back"},
        {"see": "wishes", "wishes": null},
        {"see": "plan", "draft": null},
        {"see": "trim"},
        {"see": "pile"},
        {"see": "gather"},
        {"see": "history", "most": 100},
        {"see": "hold", "width": "5 m", "height": "nonsense"},
    ]);
    serde_json::from_value(queries).unwrap()
}

fn note(text: &str) -> Request {
    let note = json!({"do": "note", "text": text, "piece": null});
    serde_json::from_value(json!({"request": "act", "action": note})).unwrap()
}

/// Which lines a reading brings: `all` or `more`, and how many.
fn lines(reading: &Reading) -> (&'static str, usize) {
    match &reading.record {
        Lines::All(text) => ("all", text.lines().count()),
        Lines::More(text) => ("more", text.lines().count()),
    }
}

/// Have all screens made from the copy; gives the lines that the first of them brought.
fn same(
    feed: &mut Feed,
    reader: &mut Reader,
    service: &mut Service,
    id: &str,
) -> (&'static str, usize) {
    let snapshot = service.snapshot(id, NOW).unwrap();
    let mut brought = Vec::new();
    for query in queries() {
        let here = to_json(snapshot.answer(&query));
        let reading = feed.order(id, &snapshot, query.clone(), false);
        brought.push(lines(&reading));
        let there = reader.read(&serde_json::to_string(&reading).unwrap());
        assert!(there.unwrap() == here, "{query:?}");
    }
    assert!(brought[1..].iter().all(|lines| *lines == ("more", 0)));
    brought[0]
}

#[test]
fn a_screen_made_from_the_copy_is_the_one_of_the_throw_and_only_what_is_new_is_sent() {
    let mut service = service();
    let id = add(&mut service, &begun(20, 20));
    let (mut feed, mut reader) = (Feed::default(), Reader::default());
    assert_eq!(
        same(&mut feed, &mut reader, &mut service, &id),
        ("all", 2),
        "the header and the beginning"
    );
    for n in 0..3 {
        service.act(&id, &note(&format!("{n}")), NOW).unwrap();
    }
    assert_eq!(same(&mut feed, &mut reader, &mut service, &id), ("more", 3));
    for request in [Request::Undo, Request::Undo, Request::Redo] {
        service.act(&id, &request, NOW).unwrap();
    }
    assert_eq!(same(&mut feed, &mut reader, &mut service, &id), ("more", 3));
    // The language and the ruler are those of the moment.
    let mut prefs = service.prefs().clone();
    prefs.language = Some("de".into());
    service.set_prefs(prefs, NOW).unwrap();
    assert_eq!(same(&mut feed, &mut reader, &mut service, &id), ("more", 0));
    // Another throw, and the first again.
    let other = add(&mut service, &begun(21, 20).named("another"));
    for id in [&other, &id] {
        let (all, _) = same(&mut feed, &mut reader, &mut service, id);
        assert_eq!(all, "all");
    }
}

#[test]
fn a_record_that_does_not_begin_as_the_copy_is_sent_whole() {
    let mut service = service();
    let id = add(&mut service, &begun(20, 20));
    let (mut feed, mut reader) = (Feed::default(), Reader::default());
    service.act(&id, &note("one"), NOW).unwrap();
    same(&mut feed, &mut reader, &mut service, &id);
    for (at, longer) in [(NOW, false), (NOW - 500, true)] {
        // The same throw elsewhere, with another entry in the place of the last.
        let mut elsewhere = begun(20, 20);
        for text in ["two", "three"].iter().take(1 + usize::from(longer)) {
            let Request::Act { action } = note(text) else {
                unreachable!()
            };
            let entry = elsewhere.propose(&action, at).unwrap();
            elsewhere.accept(entry).unwrap();
        }
        let mut snapshot = service.snapshot(&id, NOW).unwrap();
        snapshot = Snapshot::of(Arc::new(elsewhere), &snapshot.setting());
        let query = queries().remove(8);
        let here = to_json(snapshot.answer(&query));
        let reading = feed.order(&id, &snapshot, query, false);
        assert_eq!(lines(&reading).0, "all");
        let there = reader.read(&serde_json::to_string(&reading).unwrap());
        assert_eq!(there.unwrap(), here);
    }
}

#[test]
fn the_answer_to_a_command_has_its_screen_or_says_why_not() {
    let mut service = service();
    let id = add(&mut service, &begun(20, 20));
    let (mut feed, mut reader) = (Feed::default(), Reader::default());
    let piece = [50, 50, 1, 1];
    let off: Query =
        serde_json::from_value(json!({"see": "off", "piece": piece, "why": null})).unwrap();
    for (query, is_shown) in [(queries().remove(1), true), (off, false)] {
        let here = service.act_and_view(&id, &note("here"), Some(&query), NOW);
        let snapshot = service.snapshot(&id, NOW).unwrap();
        let reading = feed.order(&id, &snapshot, query, true);
        let there = reader.read(&serde_json::to_string(&reading).unwrap());
        let there = there.unwrap();
        assert_eq!(there, to_json(here));
        let there: Value = serde_json::from_str(&there).unwrap();
        assert_eq!(there["ok"]["view"].is_object(), is_shown, "{there}");
        assert_eq!(there["ok"]["problem"].is_object(), !is_shown, "{there}");
    }
}

#[test]
fn what_does_not_follow_on_the_copy_is_an_error_and_no_screen() {
    let mut service = service();
    let id = add(&mut service, &begun(20, 20));
    let mut feed = Feed::default();
    let mut order = |service: &mut Service| {
        let snapshot = service.snapshot(&id, NOW).unwrap();
        let reading = feed.order(&id, &snapshot, queries().remove(1), false);
        serde_json::to_string(&reading).unwrap()
    };
    let all = order(&mut service);
    service.act(&id, &note("one"), NOW).unwrap();
    let one = order(&mut service);
    service.act(&id, &note("two"), NOW).unwrap();
    let two = order(&mut service);
    let mut reader = Reader::default();
    assert!(reader.read(&one).is_err(), "there is no copy");
    assert!(reader.read(&all).is_ok());
    assert!(reader.read(&two).is_err(), "one entry is left out");
    assert!(reader.read("{}").is_err());
    assert!(reader.read(&one).is_ok());
    assert!(reader.read(&two).is_ok());
}
