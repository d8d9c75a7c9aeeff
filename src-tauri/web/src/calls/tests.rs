//! Calls as the page makes them.

use super::*;
use crate::reader::Reader;
use lapwork_core::demo;
use lapwork_service::desktop;
use lapwork_service::disk::MemoryDisk;
use serde_json::json;
use std::sync::mpsc::channel;

fn service(disk: &MemoryDisk, languages: &str) -> PageService {
    let store = Store::on("Lapwork", Box::new(disk.clone()));
    PageService::new(store, desktop::host(), languages, None)
}

fn ask(service: &mut PageService, command: &str, given: &Value) -> Value {
    let answer = service.answer(command, &given.to_string()).unwrap();
    serde_json::from_str(&answer).unwrap()
}

fn begun(service: &mut PageService) -> String {
    let answer = ask(
        service,
        "shelf_command",
        &json!({"command": {"command": "demo"}}),
    );
    answer["ok"]["id"].as_str().unwrap().to_string()
}

#[test]
fn the_first_language_that_is_spoken_here_is_spoken() {
    for (languages, meant) in [("xx\nde-CH\nen", "de"), ("fr\nxx", "en"), ("", "en")] {
        let hello = ask(
            &mut service(&MemoryDisk::new(), languages),
            "hello",
            &json!({}),
        );
        assert_eq!(hello["ok"]["language"], meant, "{languages:?}");
    }
}

#[test]
fn a_deed_is_answered_with_its_screen_and_a_revision() {
    let disk = MemoryDisk::new();
    let mut service = service(&disk, "en");
    let id = begun(&mut service);
    let query = json!({"see": "work", "batch": null});
    let before = ask(&mut service, "view", &json!({"id": id, "query": query}));
    let request = json!({"request": "undo"});
    let acted = ask(
        &mut service,
        "act",
        &json!({"id": id, "request": request, "query": query}),
    );
    assert_eq!(acted["ok"]["view"]["seen"], "work", "{acted}");
    let revision = |answer: &Value| answer["ok"]["revision"].as_u64().unwrap();
    assert!(revision(&acted) > revision(&before));
    let refused = ask(&mut service, "view", &json!({"id": "none", "query": query}));
    assert_eq!(refused["problem"]["code"], "no-such-throw");
    assert!(service.answer("rm", "{}").is_err());
    assert!(service.answer("view", "{}").is_err());
}

#[test]
fn where_nothing_can_be_kept_that_is_said_and_not_that_another_is_open() {
    let pool = crate::pool::Pool::read_only(Box::new(Nothing)).unwrap();
    let store = Store::on("Lapwork", Box::new(pool));
    let mut service = PageService::new(store, desktop::host(), "en", Some(Stranded::None));
    let hello = ask(&mut service, "hello", &json!({}));
    assert_eq!(hello["ok"]["problem"]["code"], "no-storage");
    let refused = ask(
        &mut service,
        "shelf_command",
        &json!({"command": {"command": "demo"}}),
    );
    assert_eq!(refused["problem"]["code"], "no-storage");
}

#[derive(Debug)]
struct Nothing;

impl crate::pool::Slots for Nothing {
    fn count(&self) -> usize {
        0
    }

    fn length(&self, _: usize) -> std::io::Result<u64> {
        Ok(0)
    }

    fn read(&self, _: usize, _: u64, _: &mut [u8]) -> std::io::Result<usize> {
        Ok(0)
    }

    fn write(&self, _: usize, _: u64, _: &[u8]) -> std::io::Result<usize> {
        panic!("nothing is written")
    }

    fn cut(&self, _: usize, _: u64) -> std::io::Result<()> {
        panic!("nothing is written")
    }

    fn sync(&self, _: usize) -> std::io::Result<()> {
        panic!("nothing is written")
    }
}

#[test]
fn a_throw_handed_on_comes_back_to_the_byte() {
    let disk = MemoryDisk::new();
    let mut first = service(&disk, "en");
    let id = begun(&mut first);
    let files = first.export(&id, r#"{"export":"throw"}"#).unwrap();
    let [file] = files.as_slice() else {
        panic!("one file")
    };
    let mut other = service(&MemoryDisk::new(), "de");
    let brought = other.import(&file.name, file.bytes.clone());
    let brought: Value = serde_json::from_str(&brought).unwrap();
    let number = &brought["ok"]["file"];
    let choice = json!({"choice": {"choice": "add"}, "file": number});
    let taken = ask(&mut other, "decide_import", &choice);
    let id = taken["ok"]["id"]
        .as_str()
        .unwrap_or_else(|| panic!("{taken}"));
    let again = other.export(id, r#"{"export":"throw"}"#).unwrap();
    assert_eq!(again[0].bytes, file.bytes);
    other.drop_in("x.jsonl", b"nonsense".to_vec());
    assert!(other.offers());
    assert!(ask(&mut other, "dropped", &json!({}))["problem"].is_object());
    let told = ask(&mut other, "exported", &json!({"files": ["a.jsonl"]}));
    assert!(told["ok"]["said"].as_str().unwrap().contains("a.jsonl"));
}

#[test]
fn layouts_are_searched_for_from_a_copy_and_told_on_the_way() {
    let mut service = service(&MemoryDisk::new(), "en");
    let id = begun(&mut service);
    let wishes = serde_json::to_value(Wishes::default()).unwrap();
    let order = ask(
        &mut service,
        "order",
        &json!({"id": id, "wishes": wishes, "seed": 1}),
    );
    let (tell, told) = channel();
    let tell = move |found| tell.send(found).unwrap();
    let found = search(&order["ok"].to_string(), desktop_at_once(), tell);
    let found: Value = serde_json::from_str(&found).unwrap();
    assert_eq!(found["ok"]["running"], false, "{found}");
    assert_eq!(found["ok"]["cards"].as_array().unwrap().len(), 4);
    assert!(told.iter().count() > 1);
}

/// Begin a throw of so many squares.
fn begun_of(service: &mut PageService, across: u16, down: u16) -> String {
    let begin = demo::begin("Barn wall", across, down);
    let command = json!({"command": "begin", "action": begin});
    let answer = ask(service, "shelf_command", &json!({"command": command}));
    answer["ok"]["id"].as_str().unwrap().to_string()
}

#[test]
fn the_large_screens_of_large_throws_are_left_to_a_reader_and_no_others() {
    let mut service = service(&MemoryDisk::new(), "en");
    let (small, large) = (
        begun_of(&mut service, 19, 21),
        begun_of(&mut service, 20, 20),
    );
    let work = json!({"see": "work", "batch": null});
    let face = json!({"see": "faces", "face": "front"});
    let view = |service: &mut PageService, id: &str, query: &Value| {
        let answer = ask(service, "view", &json!({"id": id, "query": query}));
        (answer, service.reading())
    };
    for id in [&small, &large] {
        let (answer, left) = view(&mut service, id, &face);
        assert_eq!(answer["ok"]["view"]["seen"], "faces");
        assert!(left.is_none(), "there is no reader");
    }
    service.set_reader(true);
    for (id, query) in [(&small, &face), (&large, &work)] {
        let (answer, left) = view(&mut service, id, query);
        assert!(answer["ok"]["view"].is_object() && left.is_none());
    }
    let mut reader = Reader::default();
    let mut read = |left: Option<String>| -> Value {
        let answer = reader.read(&left.expect("it is left to the reader"));
        serde_json::from_str(&answer.unwrap()).unwrap()
    };
    let (answer, left) = view(&mut service, &large, &face);
    assert_eq!(answer["problem"]["code"], "broke", "unless the reader says");
    let before = read(left);
    assert_eq!(before["ok"]["view"]["seen"], "faces");

    // A command is stored and answered with its screen, a newer one.
    let note = json!({"do": "note", "text": "kept", "piece": null});
    let request = json!({"request": "act", "action": note});
    let given = json!({"id": large, "request": request, "query": face});
    let acted = ask(&mut service, "act", &given);
    let left = service.reading();
    let read_acted = read(left);
    for answer in [&acted, &read_acted] {
        assert!(
            answer["ok"]["head"]["entry"].as_u64() > before["ok"]["view"]["head"]["entry"].as_u64()
        );
        assert!(answer["ok"]["revision"].as_u64() > before["ok"]["revision"].as_u64());
    }
    assert_eq!(acted["ok"]["problem"]["code"], "broke");
    assert_eq!(read_acted["ok"]["view"]["seen"], "faces");
    // One that is refused is answered here.
    let undo = json!({"request": "redo"});
    let given = json!({"id": large, "request": undo, "query": face});
    let refused = ask(&mut service, "act", &given);
    assert!(refused["problem"].is_object() && service.reading().is_none());

    // After a file was taken in, the whole record is sent again.
    let all = |left: Option<String>| left.unwrap().contains(r#""record":{"all":"#);
    assert!(!all(view(&mut service, &large, &face).1));
    ask(
        &mut service,
        "decide_import",
        &json!({"choice": {"choice": "keep-here"}, "file": 1}),
    );
    assert!(all(view(&mut service, &large, &face).1));
    service.set_reader(true);
    assert!(
        all(view(&mut service, &large, &face).1),
        "it is a new reader"
    );
}

fn desktop_at_once() -> Host {
    #[derive(Debug)]
    struct AtOnce;
    impl lapwork_service::host::Runner for AtOnce {
        fn run(&self, work: Box<dyn FnOnce() + Send>) {
            work();
        }
    }
    Host {
        runner: Box::new(AtOnce),
        ..desktop::host()
    }
}

#[test]
fn the_page_reminds_of_a_copy_until_it_says_that_one_was_saved() {
    let disk = MemoryDisk::new();
    let mut service = service(&disk, "de");
    let id = begun(&mut service);
    for n in 0..30 {
        let action = json!({"do": "note", "text": format!("{n}"), "piece": null});
        let request = json!({"request": "act", "action": action});
        ask(
            &mut service,
            "act",
            &json!({"id": id, "request": request, "query": null}),
        );
    }
    let shelf = ask(&mut service, "shelf", &json!({}));
    assert_eq!(shelf["ok"]["reminder"]["id"], json!(id), "{shelf}");
    let said = shelf["ok"]["reminder"]["said"].as_str().unwrap();
    assert!(said.contains("nur in diesem Browser"), "{said}");
    service.export(&id, r#"{"export":"throw"}"#).unwrap();
    // Another file was saved, then the copy.
    for (given, reminds) in [
        (json!({"files": ["a.svg"]}), true),
        (json!({"files": ["a.jsonl"], "throw": id}), false),
    ] {
        ask(&mut service, "exported", &given);
        let shelf = ask(&mut service, "shelf", &json!({}));
        assert_eq!(shelf["ok"]["reminder"].is_object(), reminds, "{given}");
    }
}
