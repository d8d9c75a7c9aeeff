//! The app in a browser with the screen of a phone, worked by touch; the network cut, the browser
//! killed, two pages; and the same files through both shells.
//!
//! The tests run where the app for browsers is built (`.ci/web`, as `.ci/test` does).

use image::{ImageFormat, Rgb, RgbImage};
use lapwork_core::log::journal::Journal;
use lapwork_service::disk::DiskPath;
use lapwork_service::import;
use lapwork_tests::maker::beginning;
use lapwork_tests::page::{Browser, CALL, Host, IMPORT, built, keep_worker};
use serde_json::{Value, json};
use std::io::{Cursor, Write as _};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::Duration;

/// One browser at a time.
fn alone() -> MutexGuard<'static, ()> {
    static ONE: Mutex<()> = Mutex::new(());
    ONE.lock().unwrap_or_else(PoisonError::into_inner)
}

fn demo(browser: &Browser) -> u64 {
    browser.tap("open-demo");
    browser.wait("return document.querySelector('[data-testid=tick]') !== null");
    browser.steps_done()
}

/// Touch the large button, and wait until that is told.
fn tick(browser: &Browser) {
    let before = browser.steps_done();
    browser.tap("tick");
    browser.wait_done(before + 1);
}

#[test]
fn a_throw_is_worked_by_touch_and_a_page_loaded_again_has_all_of_it() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let profile = tempfile::tempdir().unwrap();
    let host = Host::serve(&folder, "/", 0);
    let browser = Browser::open(profile.path(), &host.url);
    let begun = demo(&browser);
    for _ in 0..3 {
        tick(&browser);
    }
    browser.tap("undo");
    browser.wait_done(begun + 2);
    // Back is the app's own way back.
    browser.run("history.back()");
    browser.wait_text("Your throws");
    browser.run("history.forward()");
    browser.wait("return document.querySelector('[data-testid=tick]') !== null");
    browser.run("location.reload()");
    browser.wait_text("Your throws");
    assert_eq!(browser.steps_done(), begun + 2);
    // Nothing was asked of anybody else.
    let foreign = browser.run(
        "return performance.getEntriesByType('resource').map((one) => one.name)\
         .filter((name) => !name.startsWith(location.origin) && !/^(blob|data):/.test(name))",
    );
    assert_eq!(foreign, json!([]));
    browser.close();
}

#[test]
fn it_starts_and_works_with_the_network_cut() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let profile = tempfile::tempdir().unwrap();
    // Under a path, as many hosts have it.
    let host = Host::serve(&folder, "/some/where/", 0);
    let url = host.url.clone();
    let browser = Browser::open(profile.path(), &url);
    let begun = demo(&browser);
    browser.wait("return navigator.serviceWorker.getRegistration().then((at) => !!at?.active)");
    browser.close();
    drop(host);
    let browser = Browser::open(profile.path(), &url);
    browser.wait_text("Your throws");
    assert_eq!(browser.steps_done(), begun);
    browser.run("document.querySelector('[data-testid=throw-row] button').click()");
    tick(&browser);
    browser.run("location.reload()");
    browser.wait_text("Your throws");
    assert_eq!(browser.steps_done(), begun + 1);
    browser.close();
}

#[test]
fn a_second_page_is_told_so_and_takes_over_once_the_first_is_gone() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let profile = tempfile::tempdir().unwrap();
    let host = Host::serve(&folder, "/", 0);
    let browser = Browser::open(profile.path(), &host.url);
    let begun = demo(&browser);
    let first = browser.driver().handle();
    let second = browser
        .driver()
        .post("/window/new", json!({"type": "tab"}))
        .unwrap();
    let second = &second["handle"];
    let switch = |to: &Value| {
        browser
            .driver()
            .post("/window", json!({"handle": to}))
            .unwrap();
    };
    switch(second);
    browser.go(&host.url);
    browser
        .wait("return document.querySelector('[data-testid=problem]')?.dataset.code === 'locked'");
    assert_eq!(browser.steps_done(), begun, "it can be looked at");
    browser.run("document.querySelector('[data-testid=throw-row] button').click()");
    browser.tap("tick");
    browser
        .wait("return document.querySelector('[data-testid=problem]')?.dataset.code === 'locked'");
    assert_eq!(browser.steps_done(), begun);
    // The first is not disturbed.
    switch(&first);
    tick(&browser);
    browser.driver().close_tab().unwrap();
    switch(second);
    // What it shows is old: the piece is done by now.
    browser.run("history.back()");
    browser.wait_done(begun + 1);
    browser.run("document.querySelector('[data-testid=throw-row] button').click()");
    tick(&browser);
    browser.close();
}

/// What asks the worker as the page does: faces, then a note, then a face again, all at once; then
/// the tab of the faces and the tick are tapped, at once too. Gives what came in which order.
const BESIDE: &str = r"
    const [id, done] = arguments;
    const worker = window.lapworkWorker;
    const came = [];
    const ask = (what, command, given) => new Promise((answered) => {
      const n = 1e9 + Math.random();
      const heard = ({ data }) => {
        if (data.n !== n) return;
        worker.removeEventListener('message', heard);
        const { ok, problem } = JSON.parse(data.json);
        came.push(what);
        answered(problem ?? { revision: ok.revision, entry: (ok.view ?? ok).head.entry, seen: ok.view?.seen });
      };
      worker.addEventListener('message', heard);
      worker.postMessage({ do: 'ask', command, given: JSON.stringify(given), n });
    });
    const query = { see: 'faces', face: 'back' };
    const face = (what) => ask(what, 'view', { id, query });
    const action = { do: 'note', text: 'amid faces', piece: null };
    const note = (query) => ['act', { id, request: { request: 'act', action }, query }];
    const bar = () => document.querySelector('[role=progressbar]')?.getAttribute('aria-valuenow');
    const taps = () => new Promise((shown) => {
      const before = bar();
      const seen = (what) => { if (!came.includes(what)) came.push(what); };
      const watch = new MutationObserver(() => {
        if (bar() !== before) seen('tick shown');
        if (document.querySelectorAll('[role=gridcell]').length !== 3600) return;
        seen('face shown');
        watch.disconnect();
        shown();
      });
      watch.observe(document.body, { subtree: true, childList: true, attributes: true });
      document.querySelector('[data-testid=tab-faces]').click();
      document.querySelector('[data-testid=tick]').click();
    });
    (async () => {
      const faces = Array.from({ length: 8 }, (_, n) => face(`face ${n}`));
      const noted = ask('note', ...note(null));
      const faced = ask('note with its face', ...note(query));
      const after = face('face after');
      const answers = await Promise.all([...faces, noted, faced, after]);
      await taps();
      done([came, answers]);
    })();
";

#[test]
fn a_command_does_not_wait_for_the_large_screens_asked_for_before_it() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let profile = tempfile::tempdir().unwrap();
    let host = Host::serve(&folder, "/", 0);
    let browser = Browser::open(profile.path(), "about:blank");
    keep_worker(browser.driver());
    browser.go(&host.url);
    browser.text("new-throw");
    let (large, _) = Journal::begin(&beginning("Barn wall", 60, 60), 1_800_000_000_000).unwrap();
    let call = |script: &str, given: &[Value]| {
        let mut answer = browser.driver().run_and_wait(script, given).unwrap();
        assert!(answer["refused"].is_null(), "{answer}");
        answer["fine"].take()
    };
    let found = call(IMPORT, &[json!("throw.jsonl"), json!(large.text())]);
    let choice = json!({"choice": {"choice": "add"}, "file": found["file"]});
    let id = call(CALL, &[json!("decide_import"), choice])["id"].take();
    browser.run("location.reload()");
    browser.tap("throw-row");
    let there = "return document.querySelector('[data-testid=ask-bare], [data-testid=tick]')?.dataset.testid";
    if browser.wait(there) == "ask-bare" {
        browser.tap("ask-bare");
    }
    browser.wait("return document.querySelector('[data-testid=tick]') !== null");
    let told = browser
        .driver()
        .run_and_wait(BESIDE, std::slice::from_ref(&id))
        .unwrap();
    let came: Vec<&str> = told[0]
        .as_array()
        .unwrap()
        .iter()
        .filter_map(Value::as_str)
        .collect();
    println!("{came:?}");
    let place = |what: &str| came.iter().position(|one| *one == what).expect(what);
    // None of the faces is needed to do it, whichever of them are made meanwhile.
    assert!(place("note") < place("face 7"), "{came:?}");
    assert!(place("tick shown") < place("face shown"), "{came:?}");
    // Each answer is of the throw as it is, or is told to be older.
    let answers = told[1].as_array().unwrap();
    let number = |n: usize, what: &str| {
        answers[n][what]
            .as_u64()
            .unwrap_or_else(|| panic!("{told}"))
    };
    let (noted, faced, after) = (8, 9, 10);
    for older in 0..8 {
        assert_eq!(number(older, "entry") + 1, number(noted, "entry"));
        assert!(
            number(older, "revision") < number(noted, "revision"),
            "{told}"
        );
    }
    assert_eq!(number(faced, "entry"), number(noted, "entry") + 1);
    assert_eq!(answers[faced]["seen"], "faces");
    assert_eq!(number(after, "entry"), number(faced, "entry"));
    assert_eq!(number(after, "revision"), number(faced, "revision"));
    // What was told is kept.
    browser.run("location.reload()");
    browser.text("throw-row");
    let shelf = call(CALL, &[json!("shelf"), json!({})]);
    assert_eq!(
        shelf["rows"][0]["head"]["entry"],
        number(faced, "entry") + 1,
        "and the tick"
    );
    browser.close();
}

/// Works the worker itself, without a page: begins a throw or finds the one there is, and writes
/// notes as fast as they are acknowledged.
const WRITER: &str = r"
    const [script, text] = arguments;
    const worker = new Worker(script, { type: 'module' });
    const waiting = new Map();
    let count = 0;
    worker.onmessage = ({ data }) => {
      if (!('n' in data)) return;
      waiting.get(data.n)(data.json ? JSON.parse(data.json) : data);
      waiting.delete(data.n);
    };
    const ask = (command, given) => new Promise((done) => {
      const n = ++count;
      waiting.set(n, done);
      worker.postMessage({ do: 'ask', command, given: JSON.stringify(given), n });
    });
    window.acknowledged = 0;
    window.found = null;
    worker.postMessage({ do: 'open', languages: 'en', patience: 5000 });
    const work = async () => {
      const hello = await ask('hello', {});
      if (hello.ok.problem) throw new Error(JSON.stringify(hello.ok.problem));
      const [row] = hello.ok.shelf.rows;
      if (row?.problem) throw new Error(JSON.stringify(row.problem));
      const begun = row ? { ok: row } : await ask('shelf_command', { command: { command: 'demo' } });
      if (begun.problem) throw new Error(JSON.stringify(begun.problem));
      const { id } = begun.ok;
      window.found = row?.head.entry ?? 0;
      for (;;) {
        const note = { do: 'note', text: `${text} ${window.acknowledged}`, piece: null };
        const acted = await ask('act', { id, request: { request: 'act', action: note }, query: null });
        if (acted.problem) throw new Error(JSON.stringify(acted.problem));
        window.acknowledged = acted.ok.head.entry;
      }
    };
    work().catch((why) => (window.failed = String(why)));
";

/// The address of the worker's script.
fn worker_of(folder: &Path, url: &str) -> String {
    let files = std::fs::read_dir(folder.join("assets")).unwrap().flatten();
    let mut files = files.map(|file| file.file_name().into_string().unwrap());
    let script = files.find(|name| name.starts_with("worker-") && name.ends_with(".js"));
    format!("{url}assets/{}", script.unwrap())
}

#[test]
fn nothing_acknowledged_is_lost_when_the_browser_is_killed() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let profile = tempfile::tempdir().unwrap();
    let host = Host::serve(&folder, "/", 0);
    let page = format!("{}hosting.html", host.url);
    let script = worker_of(&folder, &host.url);
    let mut acknowledged = 0;
    for round in 0..6u64 {
        let browser = Browser::open(profile.path(), &page);
        let given = [json!(script), json!("note")];
        browser.driver().run(WRITER, &given).unwrap();
        let found = browser.wait("return window.failed ?? window.found").clone();
        let found = found.as_u64().unwrap_or_else(|| panic!("{found}"));
        assert!(
            found >= acknowledged,
            "{found} found, {acknowledged} acknowledged"
        );
        // A while that is another each time.
        std::thread::sleep(Duration::from_millis(700 + 317 * (round * 7 % 5)));
        let output = browser.run("return window.failed ?? window.acknowledged");
        acknowledged = output.as_u64().unwrap_or_else(|| panic!("{output}"));
        browser.kill();
    }
    println!("{acknowledged} entries acknowledged, 6 times killed, none lost");
    assert!(acknowledged > 1000);
    let browser = Browser::open(profile.path(), &host.url);
    browser.wait_text("Your throws");
    browser.close();
}

/// All files below a folder.
fn below(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap().flatten() {
        let path = entry.path();
        // What the browser holds open may be a link to nowhere.
        if path.is_dir() {
            found.extend(below(&path));
        } else if path.is_file() {
            found.push(path);
        }
    }
    found
}

/// A photo that lies on its side, with a place written into it.
fn photo(place: &str) -> Vec<u8> {
    let picture = RgbImage::from_fn(2000, 1000, |x, y| Rgb([(x / 8) as u8, (y / 4) as u8, 90]));
    let mut out = Cursor::new(Vec::new());
    picture.write_to(&mut out, ImageFormat::Jpeg).unwrap();
    let mut said = b"Exif\0\0MM\0*\0\0\0\x08\0\x02".to_vec();
    // ImageDescription, at the end; Orientation, turned a quarter.
    let length = u32::try_from(place.len()).unwrap();
    said.extend_from_slice(&[0x01, 0x0e, 0, 2]);
    said.extend_from_slice(&length.to_be_bytes());
    said.extend_from_slice(&38u32.to_be_bytes());
    said.extend_from_slice(&[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0]);
    said.extend_from_slice(&[0; 4]);
    said.extend_from_slice(place.as_bytes());
    let plain = out.into_inner();
    let mut bytes = plain[..2].to_vec();
    bytes.extend_from_slice(&[0xff, 0xe1]);
    bytes.extend_from_slice(&u16::try_from(said.len() + 2).unwrap().to_be_bytes());
    bytes.extend_from_slice(&said);
    bytes.extend_from_slice(&plain[2..]);
    bytes
}

/// Where the photo was taken, as it is written into it.
const PLACE: &str = "49.0034 N 12.1 E, the place it was taken";

/// A photo as a phone takes it, in a folder.
fn photo_in(folder: &Path) -> PathBuf {
    let file = folder.join("photo.jpg");
    std::fs::write(&file, photo(PLACE)).unwrap();
    file
}

/// How many photos lie in the browser's files; where one was taken is in none of them.
fn photos_without_place(profile: &Path) -> usize {
    let mut photos = 0;
    for file in below(profile) {
        let bytes = std::fs::read(&file).unwrap_or_default();
        let place = PLACE.as_bytes();
        let named = bytes.windows(place.len()).any(|part| part == place);
        assert!(!named, "{}", file.display());
        photos += usize::from(bytes.starts_with(&[0xff, 0xd8, 0xff]));
    }
    photos
}

#[test]
fn a_photo_is_made_small_turned_upright_and_freed_of_its_place() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let (profile, brought) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let file = photo_in(brought.path());
    let host = Host::serve(&folder, "/", 0);
    let browser = Browser::open(profile.path(), &host.url);
    demo(&browser);
    browser.tap("of-throw");
    browser.tap("of-throw-story");
    browser.tap("story-photo");
    browser.choose("choose-photo", &file);
    browser.tap("note-keep");
    let size = browser.wait(
        "const e = document.querySelector('[data-testid=story-item] [data-testid=photo]');\
         e?.scrollIntoView();\
         return e?.naturalWidth > 1 ? [e.naturalWidth, e.naturalHeight] : null",
    );
    assert_eq!(size, json!([800, 1600]));
    // What is no picture is refused in words.
    std::fs::write(&file, "no picture").unwrap();
    browser.tap("story-photo");
    browser.choose("choose-photo", &file);
    browser.wait(
        "return document.querySelector('[data-testid=problem]')?.dataset.code === 'photo-kind'",
    );
    browser.close();
    assert_eq!(photos_without_place(profile.path()), 1, "it is kept once");
}

/// A photo of a fabric is kept in the browser and shown on the squares of that fabric.
#[test]
fn a_photo_of_a_fabric_is_shown_on_its_squares() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let (profile, brought) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let file = photo_in(brought.path());
    let host = Host::serve(&folder, "/", 0);
    let browser = Browser::open(profile.path(), &host.url);
    demo(&browser);
    browser.tap("tab-faces");
    browser.tap("edit-cloth");
    browser.tap("print-photo-0");
    browser.choose("choose-photo", &file);
    browser.wait("return !!document.querySelector('[data-testid=print-photo-none-0]')");
    browser.tap("cloth-keep");
    // The picture is there, upright and small.
    let shown = "const at = document.querySelector('main pattern image')?.href.baseVal;\
         if (!at) return null;\
         window.seen ??= Object.assign(new Image(), { src: at });\
         if (window.seen.src !== at) window.seen.src = at;\
         return window.seen.naturalWidth > 1 ? [window.seen.naturalWidth, window.seen.naturalHeight] : null";
    assert_eq!(browser.wait(shown), json!([800, 1600]));
    // It goes with the throw: to the desktop, and from there to another browser.
    browser.tap("of-throw");
    browser.tap("of-throw-hand-on");
    browser.tap("hand-throw-0");
    browser.text("handed");
    let sent = downloaded(profile.path(), "jsonl");
    browser.close();
    photos_without_place(profile.path());
    let (photo, again) = native::through_the_desktop(std::fs::read(&sent).unwrap());
    let seen = image::load_from_memory(&photo).unwrap();
    assert_eq!((seen.width(), seen.height()), (800, 1600));
    let back = brought.path().join("back.jsonl");
    std::fs::write(&back, again).unwrap();
    let other = tempfile::tempdir().unwrap();
    let browser = Browser::open(other.path(), &host.url);
    browser.tap("bring");
    browser.choose("choose-throw", &back);
    browser.tap("take-add");
    browser.wait("return document.querySelector('[data-testid=tick]') !== null");
    browser.tap("tab-faces");
    assert_eq!(browser.wait(shown), json!([800, 1600]));
    browser.close();
}

/// The file with this ending that the browser with this profile has downloaded, waited for.
fn downloaded(profile: &Path, ending: &str) -> PathBuf {
    let downloads = profile.join("downloads");
    let found = (0..100).find_map(|_| {
        std::thread::sleep(Duration::from_millis(100));
        let mut files = below(&downloads).into_iter();
        files.find(|file| file.extension().is_some_and(|found| found == ending))
    });
    found.expect("it was downloaded")
}

#[test]
fn a_throw_goes_from_one_browser_to_another_and_to_the_desktop() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let (one, other) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let host = Host::serve(&folder, "/", 0);
    let browser = Browser::open(one.path(), &host.url);
    let begun = demo(&browser);
    tick(&browser);
    browser.tap("of-throw");
    browser.tap("of-throw-hand-on");
    browser.tap("hand-throw-0");
    browser.text("handed");
    let file = downloaded(one.path(), "jsonl");
    browser.close();
    // The desktop reads it as it is.
    let bytes = std::fs::read(&file).unwrap();
    let path = DiskPath::from("handed.jsonl");
    let read = import::read(&path, bytes.clone()).expect("a throw");
    assert_eq!(read.journal.text().as_bytes(), bytes);
    let browser = Browser::open(other.path(), &host.url);
    browser.tap("bring");
    browser.choose("choose-throw", &file);
    browser.tap("take-add");
    browser.wait("return document.querySelector('[data-testid=tick]') !== null");
    assert_eq!(browser.steps_done(), begun + 1);
    browser.close();
}

/// Hand the open throw on; gives the file.
fn hand_on(browser: &Browser, profile: &Path) -> PathBuf {
    let _ = std::fs::remove_dir_all(profile.join("downloads"));
    browser.tap("of-throw");
    browser.tap("of-throw-hand-on");
    browser.tap("hand-throw-0");
    browser.text("handed");
    downloaded(profile, "jsonl")
}

/// Bring a file to the shelf, look at what is said of it, and do this with it.
fn bring(browser: &Browser, file: &Path, said: &str, choice: &str) {
    browser.run("location.reload()");
    browser.tap("bring");
    browser.choose("choose-throw", file);
    browser.wait_text(said);
    browser.tap(choice);
    browser.wait("return document.querySelector('[data-testid=tick]') !== null");
}

fn write_note(browser: &Browser, text: &str) {
    browser.tap("note");
    let text = json!(text);
    browser.wait("return document.querySelector('[data-testid=note-text]') !== null");
    browser.run(&format!(
        "const e = document.querySelector('[data-testid=note-text]');
         e.value = {text};
         e.dispatchEvent(new Event('input', {{ bubbles: true }}));"
    ));
    browser.tap("note-keep");
    browser.wait("return document.querySelector('[data-testid=note-text]') === null");
}

/// A throw goes from a phone to another phone and to a desktop, all three work on, and what they
/// did comes together again, with the work of each.
#[test]
fn what_two_phones_and_a_desktop_did_apart_becomes_one_throw() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let (one, other) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let kept = tempfile::tempdir().unwrap();
    let host = Host::serve(&folder, "/", 0);
    let file = kept.path().join("apart.jsonl");
    let keep = |found: PathBuf| {
        std::fs::copy(found, &file).unwrap();
    };
    let first = Browser::open(one.path(), &host.url);
    let begun = demo(&first);
    keep(hand_on(&first, one.path()));
    let mut desktop = native::Desktop::with(std::fs::read(&file).unwrap());

    // Apart: a note on the other phone, another at the desktop, a tick here.
    let second = Browser::open(other.path(), &host.url);
    bring(&second, &file, "No copy of it is here yet", "take-add");
    write_note(&second, "Cut the rest at the library.");
    keep(hand_on(&second, other.path()));
    second.close();
    desktop.note("The attic has more jeans.");
    first.run("location.reload()");
    first.tap("throw-row");
    tick(&first);

    // The other phone's copy comes to this one.
    let said = "Only here: one step. Only in the file: one step.";
    bring(&first, &file, said, "take-merge");
    first.wait_text("Merged.");
    first.wait_done(begun + 1);
    keep(hand_on(&first, one.path()));
    // That comes to the desktop, and the desktop's back to this phone, which lacks one step.
    let merged = desktop.merge(std::fs::read(&file).unwrap());
    std::fs::write(&file, &merged).unwrap();
    bring(&first, &file, "A newer copy", "take-take-brought");
    first.wait_done(begun + 1);
    let everywhere = std::fs::read(hand_on(&first, one.path())).unwrap();
    assert_eq!(everywhere, merged, "both have the same to the byte");
    first.close();
    let all = Journal::read(&everywhere).unwrap().journal;
    let notes: Vec<&str> = all
        .throw()
        .notes
        .iter()
        .map(|note| note.text.as_str())
        .collect();
    for note in ["Cut the rest at the library.", "The attic has more jeans."] {
        assert!(notes.contains(&note), "{notes:?}");
    }
}

/// Work that was never saved elsewhere is reminded of on the shelf; one tap saves a copy, another
/// puts it off.
#[test]
fn the_shelf_reminds_of_a_copy_and_one_tap_saves_it() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let profile = tempfile::tempdir().unwrap();
    let host = Host::serve(&folder, "/", 0);
    let browser = Browser::open(profile.path(), "about:blank");
    keep_worker(browser.driver());
    browser.go(&host.url);
    let there = "return document.querySelector('[data-testid=reminder]') !== null";
    demo(&browser);
    let ask = |command: &str, given: Value| {
        let answer = browser
            .driver()
            .run_and_wait(CALL, &[json!(command), given]);
        answer.unwrap_or_else(|why| panic!("{command}: {why}"))["fine"].take()
    };
    let id = ask("shelf", json!({}))["rows"][0]["id"].take();
    for n in 0..30 {
        let note = json!({"do": "note", "text": format!("note {n}"), "piece": null});
        let request = json!({"request": "act", "action": note});
        let done = ask("act", json!({"id": id, "request": request, "query": null}));
        assert!(done["head"].is_object(), "{done}");
    }
    tick(&browser);
    assert_eq!(browser.run(there), false, "never amid a step");
    browser.run("history.back()");
    assert!(browser.text("reminder").contains("in this browser only"));
    browser.run("location.reload()");
    assert!(browser.text("reminder").contains("in this browser only"));
    assert_eq!(amiss(&browser), json!([]), "the reminder");
    let small = browser.run(
        "return [...document.querySelectorAll('[data-testid=reminder] button')].filter((e) => {
            const box = e.getBoundingClientRect();
            return box.width < 48 || box.height < 48;
         }).length",
    );
    assert_eq!(small, 0, "each can be tapped");
    let seen = browser.run(
        "const box = document.querySelector('[data-testid=reminder]').getBoundingClientRect();
         const row = document.querySelector('[data-testid=throw-row] .name').getBoundingClientRect();
         return box.top >= 0 && box.height < innerHeight / 3 && row.bottom < innerHeight;",
    );
    assert_eq!(
        seen, true,
        "it is small, and the throw is in view beside it"
    );
    browser.tap("copy-save");
    browser.wait(&format!(
        "return {}",
        &there["return ".len()..].replace("!==", "===")
    ));
    downloaded(profile.path(), "jsonl");
    browser.run("location.reload()");
    browser.text("throw-row");
    assert_eq!(browser.run(there), false, "it is not asked for again");
    browser.close();
}

#[test]
fn a_newer_app_waits_until_the_next_start() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let (profile, copy) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    for file in below(&folder) {
        let there = copy.path().join(file.strip_prefix(&folder).unwrap());
        std::fs::create_dir_all(there.parent().unwrap()).unwrap();
        std::fs::copy(&file, there).unwrap();
    }
    let host = Host::serve(copy.path(), "/", 0);
    let browser = Browser::open(profile.path(), &host.url);
    browser.wait("return navigator.serviceWorker.getRegistration().then((at) => !!at?.active)");
    browser.wait("return localStorage.getItem('lapwork-build')");
    let begun = demo(&browser);
    let index = copy.path().join("index.html");
    let newer = std::fs::read_to_string(&index).unwrap();
    let newer = newer.replace("<title>", "<meta name=\"newer\" content=\"yes\" /><title>");
    std::fs::write(&index, newer).unwrap();
    let build = Path::new(env!("CARGO_MANIFEST_DIR")).join("../ui/web/build.js");
    let sealed = Command::new("node").arg(build).arg(copy.path()).status();
    assert!(sealed.unwrap().success());
    browser.run("navigator.serviceWorker.getRegistration().then((at) => at.update())");
    browser.wait("return navigator.serviceWorker.getRegistration().then((at) => !!at?.waiting)");
    // It is there, and the one that is worked with goes on.
    tick(&browser);
    let is_newer = "return document.querySelector('meta[name=newer]') !== null";
    assert_eq!(browser.run(is_newer), false);
    // It takes over at a start at which no other page is there; on a slow machine the one before
    // may still be. Only the start at which it does says so: none is begun before the last is there.
    let started = "return window.before || document.readyState !== 'complete' ? null
        : document.querySelector('meta[name=newer]') !== null";
    let took_over = (0..20).any(|_| {
        browser.run("window.before = true; location.reload()");
        let newer = (0..240).find_map(|_| {
            std::thread::sleep(std::time::Duration::from_millis(250));
            browser.driver().run(started, &[]).ok()?.as_bool()
        });
        newer == Some(true)
    });
    assert!(took_over, "the newer app is still waiting");
    browser.wait_text("Lapwork has been updated");
    assert_eq!(browser.steps_done(), begun + 1);
    browser.close();
}

#[test]
fn a_full_disk_is_told_and_loses_nothing() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let profile = tempfile::tempdir().unwrap();
    let host = Host::serve(&folder, "/", 0);
    let browser = Browser::open(profile.path(), &format!("{}hosting.html", host.url));
    let origin = host.url.trim_end_matches('/');
    let quota = json!({"origin": origin, "quotaSize": 12_000_000});
    browser.command("Storage.overrideQuotaForOrigin", quota);
    let script = worker_of(&folder, &host.url);
    let long = "a long note ".repeat(160);
    let written = browser.driver().run(WRITER, &[json!(script), json!(long)]);
    written.unwrap();
    let failed = browser.wait("return window.failed");
    let failed = failed.as_str().unwrap();
    assert!(failed.contains("The disk is full"), "{failed}");
    let acknowledged = browser.run("return window.acknowledged").as_u64().unwrap();
    assert!(acknowledged > 300, "{acknowledged}");
    browser.command("Storage.overrideQuotaForOrigin", json!({"origin": origin}));
    browser.go("about:blank");
    browser.go(&format!("{}hosting.html", host.url));
    browser
        .driver()
        .run(WRITER, &[json!(script), json!("x")])
        .unwrap();
    let found = browser.wait("return window.failed ?? window.found");
    assert_eq!(found, acknowledged);
    browser.wait(&format!("return window.acknowledged > {acknowledged}"));
    browser.close();
}

/// What axe-core finds amiss on the page as it is, by WCAG 2.0 to 2.2, A and AA.
fn amiss(browser: &Browser) -> Value {
    let axe = Path::new(env!("CARGO_MANIFEST_DIR")).join("../ui/node_modules/axe-core/axe.min.js");
    browser.run(&std::fs::read_to_string(axe).expect("npm ci in ui/"));
    let tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
    let script = "const [tags, done] = arguments;\
        axe.run(document, { runOnly: { type: 'tag', values: tags } }).then((told) => done([\
            told.passes.length, told.violations.map((one) => [one.id, one.nodes.map((n) => n.html)]),\
        ]), (why) => done(String(why)));";
    let output = browser.driver().run_and_wait(script, &[json!(tags)]);
    let output = output.unwrap_or_else(|why| panic!("axe-core: {why}"));
    assert!(
        output[0].as_u64().is_some_and(|rules| rules > 5),
        "{output}"
    );
    output[1].clone()
}

#[test]
fn what_only_the_browsers_shell_shows_holds_the_rules_of_access() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let profile = tempfile::tempdir().unwrap();
    let host = Host::serve(&folder, "/", 0);
    let browser = Browser::open(profile.path(), &host.url);
    demo(&browser);
    assert_eq!(amiss(&browser), json!([]), "the step");
    browser.run("history.back()");
    browser.text("open-install");
    assert_eq!(amiss(&browser), json!([]), "the shelf");
    browser.tap("open-install");
    // Whether it stays is told, and that the app is here whole.
    assert!(!browser.text("here-kept").is_empty());
    browser.wait_text("it works without a network");
    assert_eq!(amiss(&browser), json!([]), "the settings");
    browser.close();
}

/// Every kept file, as both shells show it.
#[test]
fn both_shells_show_the_same_of_every_kept_file() {
    if built().is_none() {
        return;
    }
    let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
    let seen = Command::new("node")
        .arg(tests.join("src/through_wasm.mjs"))
        .arg(tests.join("../target/web-glue"))
        .arg(tests.join("kept"))
        .output()
        .unwrap();
    assert!(
        seen.status.success(),
        "{}",
        String::from_utf8_lossy(&seen.stderr)
    );
    let seen: Value = serde_json::from_slice(&seen.stdout).unwrap();
    let seen = seen.as_object().unwrap();
    assert!(seen.len() > 5, "{} files", seen.len());
    for (file, there) in seen {
        let here = native::views(&tests.join("kept").join(file));
        for (what, view) in there.as_object().unwrap() {
            assert_eq!(view, &here[what], "{file}: {what}");
        }
        assert!(there["bytes"].is_string());
    }
}

/// The wall card and the making sheet of the demo, as the module that prints in a browser sets
/// them and as it is set here: the same to the byte.
#[test]
fn a_browser_prints_the_same_pages() {
    if built().is_none() {
        return;
    }
    let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
    for (order, least) in native::orders() {
        let job = native::job(&order);
        let here = lapwork_press::print(&job, &|_| None, &|_| {}).unwrap();
        let mut node = Command::new("node")
            .arg(tests.join("src/printed_by_wasm.mjs"))
            .arg(tests.join("../target/web-glue"))
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let mut given = node.stdin.take().unwrap();
        given.write_all(job.as_bytes()).unwrap();
        drop(given);
        let there = node.wait_with_output().unwrap();
        let said = String::from_utf8_lossy(&there.stderr).into_owned();
        assert!(there.status.success(), "{said}");
        println!("{order:?}: {} bytes, {}", here.len(), said.trim());
        assert!(here.len() > least, "{} bytes", here.len());
        assert!(
            there.stdout == here,
            "{order:?}: {} bytes",
            there.stdout.len()
        );
    }
}

/// The wall card, ordered by touch without a network, and read by poppler.
#[test]
fn the_wall_card_is_printed_on_the_phone_without_a_network() {
    let Some(folder) = built() else { return };
    let _alone = alone();
    let profile = tempfile::tempdir().unwrap();
    let host = Host::serve(&folder, "/", 0);
    let browser = Browser::open(profile.path(), &host.url);
    demo(&browser);
    browser.wait("return navigator.serviceWorker.getRegistration().then((at) => !!at?.active)");
    browser.close();
    let url = host.url.clone();
    drop(host);
    let browser = Browser::open(profile.path(), &url);
    browser.wait_text("Your throws");
    browser.run("document.querySelector('[data-testid=throw-row] button').click()");
    browser.wait("return document.querySelector('[data-testid=tick]') !== null");
    browser.tap("of-throw");
    browser.tap("of-throw-hand-on");
    browser.tap("field-print-what-card");
    let downloads = profile.path().join("downloads");
    std::fs::create_dir_all(&downloads).unwrap();
    browser.tap("print");
    let file = (0..600).find_map(|_| {
        std::thread::sleep(Duration::from_millis(100));
        let mut files = below(&downloads).into_iter();
        files.find(|file| file.extension().is_some_and(|ending| ending == "pdf"))
    });
    let file = file.expect("the card was printed");
    browser.wait_text("pdf");
    let read = Command::new("pdftotext").arg(&file).arg("-").output();
    let text = String::from_utf8(read.unwrap().stdout).unwrap();
    let demo = lapwork_core::demo::throw(0);
    let name = &demo.throw().name;
    assert!(text.contains(name), "{name} is on the card: {text}");
    browser.close();
}

mod native {
    //! What this machine's own service shows of a file.

    use lapwork_core::measure::Ruler;
    use lapwork_core::show::{
        Export, ImportChoice, PrintOrder, PrintPaper, PrintUnits, Query, ZoneName,
    };
    use lapwork_service::disk::{DiskPath, MemoryDisk};
    use lapwork_service::import;
    use lapwork_service::paper::PrintJob;
    use lapwork_service::service::Service;
    use lapwork_service::store::Store;
    use lapwork_service::{desktop, export::ExportFile};
    use lapwork_tests::maker::note;
    use serde_json::{Map, Value, json};
    use std::path::Path;

    /// The time both shells go by.
    pub const NOW: i64 = 1_800_000_000_000;

    /// What is printed, each with what it has at least of bytes.
    pub fn orders() -> [(PrintOrder, usize); 2] {
        let making = PrintOrder {
            card: false,
            blank: false,
            units: PrintUnits::Both,
            paper: PrintPaper::A4,
            large: false,
            black: false,
            story: false,
            zone: ZoneName::default(),
        };
        let card = PrintOrder {
            card: true,
            ..making.clone()
        };
        [(card, 10_000), (making, 50_000)]
    }

    /// The demo to be printed so.
    pub fn job(order: &PrintOrder) -> String {
        let job = PrintJob {
            record: lapwork_core::demo::throw(NOW).text(),
            language: "en".into(),
            ruler: Ruler::default(),
            now: NOW,
            order: order.clone(),
        };
        serde_json::to_string(&job).unwrap()
    }

    /// What is looked at; `through_wasm.mjs` has the same.
    fn looks() -> Vec<Value> {
        vec![
            json!({"see": "work", "station": null, "batch": null}),
            json!({"see": "history", "most": 100}),
            json!({"see": "plan"}),
            json!({"see": "hand-on"}),
        ]
    }

    /// Take an exported throw in on this machine; gives the photo of its fabric as it is kept here,
    /// and the throw as it is exported again.
    pub fn through_the_desktop(file: Vec<u8>) -> (Vec<u8>, Vec<u8>) {
        let store = Store::on("Lapwork", Box::new(MemoryDisk::new()));
        let mut service = Service::new(store, desktop::host());
        let found = import::read(&DiskPath::from("sent.jsonl"), file).unwrap();
        assert_eq!(found.left_out, 0);
        let prints = found.journal.throw().prints.clone();
        let photo = prints.iter().find_map(|print| print.photo.clone());
        let view = service.import(Ok(found), NOW).unwrap();
        let taken = service.decide_import(&ImportChoice::Add, view.file, NOW);
        let id = taken.unwrap().id.unwrap();
        let photo = service.photo(&id, photo.unwrap().as_str());
        let files = service.export(&id, &Export::Throw, NOW).unwrap();
        let again = files.into_iter().next().unwrap().bytes;
        (photo.expect("it is kept here"), again)
    }

    /// A desktop's service with a copy of a throw.
    pub struct Desktop {
        service: Service,
        id: String,
    }

    impl Desktop {
        pub fn with(file: Vec<u8>) -> Desktop {
            let store = Store::on("Lapwork", Box::new(MemoryDisk::new()));
            let mut service = Service::new(store, desktop::host());
            let found = import::read(&DiskPath::from("sent.jsonl"), file);
            let view = service.import(found, NOW).unwrap();
            let taken = service.decide_import(&ImportChoice::Add, view.file, NOW);
            let id = taken.unwrap().id.unwrap();
            Desktop { service, id }
        }

        pub fn note(&mut self, text: &str) {
            self.service.act(&self.id, &note(text), NOW).unwrap();
        }

        /// Merge a file with the copy that is here, which it does not contradict; gives the result.
        pub fn merge(&mut self, file: Vec<u8>) -> Vec<u8> {
            let found = import::read(&DiskPath::from("sent.jsonl"), file);
            let view = self.service.import(found, NOW).unwrap();
            let merge = ImportChoice::Merge { brought: vec![] };
            let merged = self.service.decide_import(&merge, view.file, NOW);
            merged.unwrap();
            let files = self.service.export(&self.id, &Export::Throw, NOW).unwrap();
            files.into_iter().next().unwrap().bytes
        }
    }

    pub fn views(file: &Path) -> Map<String, Value> {
        let store = Store::on("Lapwork", Box::new(MemoryDisk::new()));
        let mut service = Service::new(store, desktop::host());
        let path = DiskPath::from("kept.jsonl");
        let found = import::read(&path, std::fs::read(file).unwrap());
        let mut all = Map::new();
        let view = match service.import(found, NOW) {
            Ok(view) => view,
            Err(problem) => {
                all.insert("problem".into(), serde_json::to_value(problem).unwrap());
                all.insert("bytes".into(), json!(""));
                return all;
            }
        };
        let taken = service.decide_import(&ImportChoice::Add, view.file, NOW);
        let id = taken.unwrap().id.unwrap();
        for query in looks() {
            let parsed: Query = serde_json::from_value(query.clone()).unwrap();
            let seen = service.view(&id, &parsed, NOW).unwrap();
            all.insert(
                query["see"].as_str().unwrap().into(),
                serde_json::to_value(seen).unwrap(),
            );
        }
        let files = service.export(&id, &Export::Throw, NOW).unwrap();
        let [ExportFile { bytes, .. }] = files.as_slice() else {
            panic!("one file")
        };
        all.insert(
            "bytes".into(),
            json!(String::from_utf8(bytes.clone()).unwrap()),
        );
        all
    }
}
