//! Squares of two halves and small patches in the real window, on a phone's screen.

use lapwork_core::cloth::fabric::Face;
use lapwork_core::cloth::pile::Use;
use lapwork_core::command::Command;
use lapwork_core::log::journal::Journal;
use lapwork_core::measure::{Count, inches};
use lapwork_core::plan::Plan;
use lapwork_core::plan::assembly::Rect;
use lapwork_tests::walk::Walk;
use std::path::{Path, PathBuf};

const NOON: i64 = 1_767_225_600_000;

/// Three by three squares of 5 in, a cloth of 18 × 13 in on the pile, and 3 in squares of fabric.
fn keep_a_throw(data: &Path) {
    let demo = lapwork_core::demo::throw(NOON);
    let mut prints = demo.throw().prints.clone();
    for print in &mut prints {
        print.stock = None;
    }
    let plan = Plan {
        across: 3,
        down: 3,
        ..Plan::default()
    };
    let begin = Command::Begin {
        name: "Halves".into(),
        plan,
        prints,
        denims: demo.throw().denims.clone(),
    };
    let mut journal = Journal::begin(&begin, NOON).expect("a plan").0;
    let small = Use::Fabric { print: 1 };
    let commands = [
        Command::AddCloth {
            width: inches(18),
            length: inches(13),
            edges: None,
            makes: Use::Denim { denim: Some(0) },
            name: "Off a skirt".into(),
        },
        Command::AddPack {
            side: inches(3),
            count: Count::from(20),
            makes: small,
            name: "Small squares".into(),
            mixed: false,
        },
        Command::SetFace {
            pieces: vec![Rect::square(0, 1), Rect::square(2, 2)],
            face: Face::Front,
            print: Some(1),
            laid_on: false,
        },
        Command::SetFace {
            pieces: vec![Rect::square(1, 1)],
            face: Face::Front,
            print: Some(0),
            laid_on: false,
        },
    ];
    for command in commands {
        let entry = journal.propose(&command, NOON).expect("it is allowed");
        journal.accept(entry).expect("it follows");
    }
    let folder = data.join("throws").join("halves-1");
    std::fs::create_dir_all(&folder).expect("a folder");
    let text = journal.named("halves-1").text();
    std::fs::write(folder.join("throw.jsonl"), text).expect("a file");
}

/// Keep a picture of the window where one is asked for.
fn seen(walk: &Walk, name: &str) {
    if let Some(folder) = std::env::var_os("LAPWORK_PICTURES") {
        std::thread::sleep(std::time::Duration::from_millis(600));
        let file = PathBuf::from(folder).join(format!("{name}.png"));
        walk.window.picture(&file);
    }
}

fn scroll_to(walk: &Walk, mark: &str) {
    walk.window.run(
        "document.querySelector(`[data-testid=\"${arguments[0]}\"]`).scrollIntoView({ block: 'end' })",
        &[serde_json::json!(mark)],
    );
}

/// By hand: 18 × 13 in gives two strips of three squares and 3 in beside each, so two upright
/// halves; and above them a row 2¾ in high with three that lie across, of which two are a pair.
#[test]
fn halves_are_taken_cut_and_stitched() {
    let data = tempfile::tempdir().unwrap();
    keep_a_throw(data.path());
    let walk = Walk::start(data.path());
    walk.window.size(390, 844);
    walk.window.wait_text("Halves");
    walk.window.run(
        "document.querySelector('[data-testid=throw-row] button').click()",
        &[],
    );
    walk.tap("tab-pile");
    walk.window.wait_text("1 in of denim all round");
    seen(&walk, "halves-pile");
    walk.tap("pile-piece-1-0");
    walk.sees("ways", "8 squares (6 whole + 2 pieced), 2 more");
    scroll_to(&walk, "way-1");
    seen(&walk, "halves-ways");
    walk.tap("way-1");
    walk.sees("cut-list", "one half");
    walk.sees("cut-list", "2 halves");
    walk.window.run("window.scrollTo(0, 0)", &[]);
    seen(&walk, "halves-cutting");
    scroll_to(&walk, "cut-left");
    seen(&walk, "halves-list");
    walk.tap("not-all-came");
    walk.types("came-pieced", "1");
    walk.window
        .wait_until("the sum follows", |_| walk.reads("field-counted") == "7");
    scroll_to(&walk, "cut-piece");
    seen(&walk, "halves-count");
    walk.types("came-pieced", "2");
    walk.window
        .wait_until("the sum follows", |_| walk.reads("field-counted") == "8");
    walk.tap("cut-piece");
    walk.tap("tab-faces");
    walk.window.wait_text("pieced of two halves");
    walk.window.wait_text("patches in the middle");
    walk.window.run("window.scrollTo(0, 0)", &[]);
    seen(&walk, "halves-faces");
    walk.tap("tab-work");
    walk.window.wait_text("halves");
    seen(&walk, "halves-step");
}
