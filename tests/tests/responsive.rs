//! Nothing slow holds the window up: what is asked in the real window while large screens are
//! made, in what order it is done, and what becomes of it when something breaks off.
//!
//! Nothing here is timed. What is told is which of two comes first; how long a tap takes is
//! measured by `benches/window.rs`.

use lapwork_core::demo;
use lapwork_core::log::journal::Journal;
use lapwork_tests::program::lapwork;
use lapwork_tests::walk::Walk;
use lapwork_tests::window::Window;
use serde_json::{Value, json};
use std::path::Path;

const THROW: &str = "throw-large";

/// A throw of 60 × 60 in a data folder, nothing done to it yet.
fn large(data: &Path) {
    let begin = demo::begin("Barn wall", 60, 60);
    let (journal, _) = Journal::begin(&begin, 1_800_000_000_000).unwrap();
    let folder = data.join("throws").join(THROW);
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join("throw.jsonl"), journal.text()).unwrap();
}

fn kept(data: &Path) -> Journal {
    let file = data.join("throws").join(THROW).join("throw.jsonl");
    Journal::read(&std::fs::read(file).unwrap())
        .unwrap()
        .journal
}

#[test]
fn a_tap_is_answered_while_large_faces_are_made() {
    let data = tempfile::tempdir().unwrap();
    large(data.path());
    let walk = Walk::start(data.path());
    walk.window.click("button", "~Barn wall");
    // What is asked first, which squares get fabric, may be left for later.
    walk.tap("offer-cut-square");
    walk.sees("card-title", "Cut a square");
    // Eight faces are asked for, then the screen of the faces is gone to and a square is ticked,
    // all in one task of the page. The file is a few bytes longer long before that many are made.
    let output = walk.window.run_and_wait(
        "const [throwId, done] = arguments;
         const invoke = window.__TAURI_INTERNALS__.invoke;
         const came = [];
         const bar = () => document.querySelector('[role=progressbar]')?.getAttribute('aria-valuenow');
         const before = bar();
         const face = { see: 'faces', face: 'back' };
         const faces = Array.from({ length: 8 }, (_, n) =>
             invoke('view', { id: throwId, query: face }).then(() => came.push(`face ${n}`)));
         document.querySelector('[data-testid=tab-faces]').click();
         document.querySelector('[data-testid=tick]').click();
         const seen = (what) => { if (!came.includes(what)) came.push(what); };
         const watch = new MutationObserver(() => {
             if (bar() !== before) seen('tick shown');
             if (document.querySelectorAll('[role=gridcell]').length === 3600) {
                 seen('face shown');
                 watch.disconnect();
                 Promise.all(faces).then(() => done(came));
             }
         });
         watch.observe(document.body, { subtree: true, childList: true, attributes: true });",
        &[json!(THROW)],
    );
    let output: Vec<&str> = output
        .as_array()
        .unwrap()
        .iter()
        .filter_map(Value::as_str)
        .collect();
    let place = |what: &str| output.iter().position(|one| *one == what).expect(what);
    assert!(place("tick shown") < place("face 7"), "{output:?}");
    assert!(place("tick shown") < place("face shown"), "{output:?}");
    assert_eq!(output.len(), 10, "{output:?}");
    // What is shown as done is on the disk, and the face that came last shows it.
    assert_eq!(kept(data.path()).len(), 2);
    assert_eq!(walk.done(), 3600, "the large button is for all squares");
}

#[test]
fn what_the_page_sends_is_done_in_the_order_it_was_sent() {
    let data = tempfile::tempdir().unwrap();
    large(data.path());
    let walk = Walk::start(data.path());
    // Large screens and small ones, files and deeds, without waiting for any answer.
    let entries = walk.window.run_and_wait(
        "const [id, done] = arguments;
         const invoke = window.__TAURI_INTERNALS__.invoke;
         const sent = [];
         for (let n = 0; n < 200; n += 1) {
             const action = { do: 'note', text: `note ${n}`, piece: null };
             sent.push(invoke('act', { id, request: { request: 'act', action } }).then((a) => [a.head.entry, a.revision]));
             if (n % 40 === 0) void invoke('view', { id, query: { see: 'faces', face: 'front' } });
             if (n % 10 === 0) void invoke('view', { id, query: { see: 'work', station: null, batch: null } });
             if (n % 50 === 0) void invoke('export', { id, export: { export: 'tables' } });
             if (n % 25 === 0) void invoke('length', { text: '5 in' });
         }
         Promise.all(sent).then(done);",
        &[json!(THROW)],
    );
    let wanted: Vec<Value> = (0..200).map(|n| json!([n + 2, n + 1])).collect();
    assert_eq!(entries.as_array().unwrap(), &wanted);
    let lines: Vec<String> = kept(data.path()).entries().map(|(e, _)| e.line()).collect();
    for (n, line) in lines[1..].iter().enumerate() {
        assert!(line.contains(&format!("\"note {n}\"")), "{n}: {line}");
    }
}

#[test]
fn what_breaks_off_is_told_and_the_app_goes_on() {
    let data = tempfile::tempdir().unwrap();
    // Only a program built for trying out listens to this.
    let break_on = [("LAPWORK_BREAK_ON", "Break here.")];
    let window = Window::open_other(lapwork(), data.path(), &break_on);
    let mut walk = Walk { window };
    walk.tap("open-demo");
    walk.sees("card-title", "Cut a square");
    walk.tap("tick");
    walk.window
        .wait_until("the tick is taken", |_| walk.done() > 0);
    let done = walk.done();

    // The deed is on the disk when the program breaks off, but was not yet acknowledged.
    walk.tap("note");
    walk.types("note-text", "Break here.");
    walk.tap("note-keep");
    walk.window.wait_text("Something went wrong inside Lapwork");
    walk.window.wait_text("All steps kept before are safe");
    let history = walk.view(json!({ "see": "history", "most": 1 }));
    assert!(
        history["rows"][0].to_string().contains("Break here."),
        "{history}"
    );

    // The window is alive, and so is what it works with.
    walk.tap("close-sheet");
    walk.tap("tick");
    walk.window
        .wait_until("both ticks are there", |_| walk.done() > done);
    let entry = walk.view(json!({ "see": "trim" }))["head"]["entry"].clone();
    walk.window.reopen();
    assert_eq!(walk.view(json!({ "see": "trim" }))["head"]["entry"], entry);
}

#[test]
fn closing_waits_for_what_was_tapped() {
    let data = tempfile::tempdir().unwrap();
    large(data.path());
    let mut window = Window::open(data.path());
    window.run(
        "for (let n = 0; n < 60; n += 1) {
             const action = { do: 'note', text: `note ${n}`, piece: null };
             const request = { request: 'act', action };
             void window.__TAURI_INTERNALS__.invoke('act', { id: arguments[0], request });
         }",
        &[json!(THROW)],
    );
    window.close_by_desktop();
    assert_eq!(kept(data.path()).len(), 61);
}
