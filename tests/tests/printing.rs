//! Printing from the real window: a sheet ordered, seen to be made, and read by poppler
//! (Debian's poppler-utils); one called off; the wall card.

use lapwork_tests::walk::Walk;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::process::Command;

/// What one of poppler's programs says of a file.
fn poppler(program: &str, args: &[&str], file: &Path) -> String {
    let output = Command::new(program).args(args).arg(file).arg("-").output();
    let output = output.unwrap_or_else(|why| panic!("{program} cannot be run: {why}"));
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(output.status.success(), "{program}: {said}");
    String::from_utf8(output.stdout).unwrap()
}

fn info(file: &Path) -> String {
    let output = Command::new("pdfinfo").arg(file).output().unwrap();
    String::from_utf8(output.stdout).unwrap()
}

fn pages(file: &Path) -> usize {
    let output = info(file);
    let pages = output.lines().find_map(|l| l.strip_prefix("Pages:"));
    pages.unwrap().trim().parse().unwrap()
}

/// The text of a file without white space and places to break.
fn text(file: &Path) -> String {
    bare(&poppler("pdftotext", &["-raw"], file))
}

fn bare(text: &str) -> String {
    let unseen = |c: char| c.is_whitespace() || c == '\u{200b}';
    text.chars().filter(|c| !unseen(*c)).collect()
}

/// Everything in the folder for what is handed on.
fn handed(walk: &Walk) -> Vec<PathBuf> {
    let found = std::fs::read_dir(walk.window.handed()).unwrap();
    let mut found: Vec<PathBuf> = found.map(|f| f.unwrap().path()).collect();
    found.sort();
    found
}

/// Save a picture of the window, if a folder for them is named.
fn picture(walk: &Walk, name: &str) {
    if let Some(folder) = std::env::var_os("LAPWORK_PICTURES") {
        let file = format!("{name}.png");
        walk.window.picture(&Path::new(&folder).join(file));
    }
}

fn open_hand_on(walk: &Walk) {
    walk.tap("tab-history");
    walk.tap("hand-on");
    walk.sees("hand-print", "Print it");
}

/// Press the button, and see that pages are being set.
fn begin_print(walk: &Walk) {
    // What was seen is kept by the page, however short it is to be seen.
    walk.window.run(
        "window.seenPrinting = false;
         new MutationObserver(() => {
           const bar = document.querySelector('[data-testid=hand-print] [role=progressbar]');
           if (bar && document.querySelector('[data-testid=printing]')) window.seenPrinting = true;
         }).observe(document.body, { childList: true, subtree: true });",
        &[],
    );
    walk.tap("print");
    walk.window.wait_until("the print is seen to go on", |w| {
        w.run("return window.seenPrinting", &[]) == json!(true)
    });
}

/// The figures of the plan as the core tells them by this ruler.
fn figures(walk: &Walk) -> Vec<String> {
    let plan = walk.view(json!({ "see": "plan", "draft": null }));
    let figures = plan["figures"].as_array().unwrap();
    let shown = figures
        .iter()
        .map(|f| f["value"]["text"].as_str().unwrap().to_string());
    shown.collect()
}

#[test]
fn a_sheet_is_ordered_seen_to_be_made_and_read() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.tap("open-demo");
    walk.sees("card-title", "Cut a square");
    // Something for the story.
    walk.tap("note");
    walk.types("note-text", "More fabric on the back next time.");
    walk.tap("note-next");
    walk.tap("note-keep");
    walk.window.wait_until("it is kept", |_| {
        let history = walk.view(json!({ "see": "history", "most": 1 }));
        history["rows"][0]["text"]
            .to_string()
            .contains("More fabric")
    });
    let mut wanted = figures(&walk);
    let story = walk.view(json!({ "see": "story", "zone": "UTC" }))["story"].clone();
    walk.tap("tab-history");
    // Days are written in the same way on the screen and in the story.
    let last = |days: &Value| days.as_array().unwrap().last().unwrap()["title"].clone();
    let today = last(&story["days"]);
    let day = walk
        .window
        .run("return document.querySelector('main h2').innerText", &[]);
    assert_eq!(day, today);

    open_hand_on(&walk);
    walk.tap("field-print-paper-letter");
    walk.tap("field-print-size-large");
    walk.tap("field-print-ink-black");
    picture(&walk, "print-part");
    begin_print(&walk);
    walk.sees("handed", "Window-seat throw - Making sheet.pdf");
    let files = handed(&walk);
    assert_eq!(files.len(), 1, "{files:?}");
    let sheet = &files[0];
    assert!(info(sheet).contains("(letter)"), "{}", info(sheet));
    assert!(pages(sheet) > 8, "{} pages in large print", pages(sheet));
    let printed = text(sheet);
    assert!(wanted.len() > 5);
    wanted.retain(|figure| !printed.contains(&bare(figure)));
    assert!(wanted.is_empty(), "not on paper: {wanted:?}");
    let pixels = pixels(sheet);
    assert!(pixels.iter().all(|[r, g, b]| r == g && g == b), "black ink");
    assert!(
        printed.contains(&bare("More fabric on the back next time.")),
        "a lesson"
    );
    assert!(
        !printed.contains(&bare(today.as_str().unwrap())),
        "no story yet"
    );

    // In colour, of the usual size, with the story.
    walk.tap("field-print-size-usual");
    walk.tap("field-print-ink-colour");
    walk.tap("print-story");
    begin_print(&walk);
    walk.sees("handed", "Window-seat throw - Making sheet (2).pdf");
    let files = handed(&walk);
    let output = files.iter().find(|f| *f != sheet).unwrap();
    assert!(pages(output) < pages(sheet));
    for day in story["days"].as_array().unwrap() {
        let title = day["title"].as_str().unwrap();
        assert!(text(output).contains(&bare(title)), "{title}");
    }

    // The wall card: one page, without a story.
    walk.tap("field-print-what-card");
    walk.window.wait_until("no story is offered", |w| {
        w.run(
            "return !document.querySelector('[data-testid=print-story]')",
            &[],
        ) == json!(true)
    });
    begin_print(&walk);
    walk.sees("handed", "Window-seat throw - Wall card.pdf");
    let card = walk
        .window
        .handed()
        .join("Window-seat throw - Wall card.pdf");
    assert_eq!(pages(&card), 1);
    assert!(text(&card).contains(&bare("5 × 5 in")));
}

/// Every pixel of the first pages as red, green, blue.
fn pixels(file: &Path) -> Vec<[u8; 3]> {
    let args = ["-r", "30", "-l", "3"];
    let output = Command::new("pdftoppm")
        .args(args)
        .arg(file)
        .output()
        .unwrap();
    assert!(output.status.success());
    let mut all = Vec::new();
    let mut rest = &output.stdout[..];
    while rest.starts_with(b"P6") {
        let head: Vec<&[u8]> = rest.splitn(5, |b| b.is_ascii_whitespace()).collect();
        let number =
            |at: usize| -> usize { std::str::from_utf8(head[at]).unwrap().parse().unwrap() };
        let size = number(1) * number(2) * 3;
        let (pixels, after) = head[4].split_at(size);
        all.extend(pixels.chunks_exact(3).map(|p| [p[0], p[1], p[2]]));
        rest = after;
    }
    assert!(all.len() > 10_000);
    all
}

#[test]
fn a_large_sheet_is_called_off_and_nothing_is_left() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.begin("Barn throw", 20, 24);
    open_hand_on(&walk);
    walk.tap("print");
    walk.sees("printing", "Making the pages");
    picture(&walk, "print-busy");
    // Meanwhile she can look at something else and come back.
    walk.tap("back");
    walk.window.wait_until("the history is there", |w| {
        w.run(
            "return !!document.querySelector('[data-testid=history-row]')",
            &[],
        ) == json!(true)
    });
    walk.tap("hand-on");
    walk.tap("print-stop");
    walk.window.wait_text("Stopped; nothing was written.");
    walk.window.wait_until("it can be printed again", |w| {
        w.run(
            "return !!document.querySelector('[data-testid=print]')",
            &[],
        ) == json!(true)
    });
    assert_eq!(handed(&walk), Vec::<PathBuf>::new());
    // The window goes on, and so does printing.
    walk.tap("field-print-what-card");
    begin_print(&walk);
    walk.sees("handed", "Barn throw - Wall card.pdf");
    let names: Vec<String> = handed(&walk)
        .iter()
        .map(|f| f.file_name().unwrap().to_string_lossy().into_owned())
        .collect();
    assert_eq!(names, ["Barn throw - Wall card.pdf"]);
    walk.tap("back");
    walk.tap("tab-work");
    walk.sees("card-title", "Cut a square");
    let before = walk.done();
    walk.tap("tick");
    walk.window
        .wait_until("the tick is taken", |_| walk.done() > before);
}
