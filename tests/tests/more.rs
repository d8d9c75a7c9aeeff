//! More from a leg in the real window: the other leg by one tap, other ways to cut, pockets.

use lapwork_core::cloth::garments::{GarmentKind, GarmentSize, Source, Zone, ZoneKind};
use lapwork_core::cloth::pile::Use;
use lapwork_core::command::Command;
use lapwork_core::log::journal::Journal;
use lapwork_core::measure::{inches, sixty_fourths, zero};
use lapwork_core::plan::Plan;
use lapwork_tests::walk::Walk;
use std::path::Path;

const NOON: i64 = 1_767_225_600_000;

fn act(journal: &mut Journal, command: &Command) {
    let entry = journal.propose(command, NOON).expect("it is allowed");
    journal.accept(entry).expect("it follows");
}

/// A throw with jeans of which the left leg was measured, and torn cloth 10 in wide.
fn keep_a_throw(data: &Path) {
    let begin = Command::Begin {
        name: "More".into(),
        plan: Plan::default(),
        prints: Vec::new(),
        denims: lapwork_core::demo::throw(NOON).throw().denims.clone(),
    };
    let mut journal = Journal::begin(&begin, NOON).expect("a plan").0;
    act(
        &mut journal,
        &Command::AddGarment {
            kind: GarmentKind::MensJeans,
            size: Some(GarmentSize::Medium),
            knees: None,
            system: None,
            makes: Use::ANY_DENIM,
            name: "Old jeans".into(),
        },
    );
    act(
        &mut journal,
        &Command::AddCloth {
            width: inches(10),
            length: sixty_fourths(1300),
            edges: None,
            makes: Use::ANY_DENIM,
            name: "A rest".into(),
        },
    );
    let piece = |journal: &Journal, n: u16| match &journal.throw().pile[&n].from {
        Source::Cloth(garment) => garment.pieces[0].clone(),
        Source::Precut(_) => panic!("cloth"),
    };
    let zone = |from: i64, to: i64, left: i64, right: i64| Zone {
        kind: ZoneKind::Hole,
        from: sixty_fourths(from),
        to: sixty_fourths(to),
        left: zero() + inches(left),
        right: inches(right),
    };
    let mut leg = piece(&journal, 1);
    leg.stations[0].right += inches(1);
    leg.zones.push(zone(640, 768, 2, 4));
    let mut cloth = piece(&journal, 2);
    cloth.zones.push(zone(320, 660, 0, 10));
    for (n, outline) in [(1, leg), (2, cloth)] {
        act(
            &mut journal,
            &Command::SetPiece {
                n,
                index: 0,
                outline,
            },
        );
    }
    let folder = data.join("throws").join("more-1");
    std::fs::create_dir_all(&folder).expect("a folder");
    let text = journal.named("more-1").text();
    std::fs::write(folder.join("throw.jsonl"), text).expect("a file");
}

/// Keep a picture of the window where one is asked for.
fn seen(walk: &Walk, name: &str) {
    if let Some(folder) = std::env::var_os("LAPWORK_PICTURES") {
        let folder = std::path::PathBuf::from(folder);
        std::thread::sleep(std::time::Duration::from_millis(600));
        walk.window.picture(&folder.join(format!("{name}.png")));
    }
}

/// The picture above the list.
fn seen_at_the_top(walk: &Walk, name: &str) {
    walk.window.run(
        "document.querySelector('[data-testid=cutting-title]').scrollIntoView({ block: 'end' })",
        &[],
    );
    seen(walk, name);
}

fn scroll_to(walk: &Walk, mark: &str) {
    walk.window.run(
        "document.querySelector(`[data-testid=\"${arguments[0]}\"]`).scrollIntoView({ block: 'end' })",
        &[serde_json::json!(mark)],
    );
}

#[test]
fn more_from_a_leg() {
    let data = tempfile::tempdir().unwrap();
    keep_a_throw(data.path());
    let walk = Walk::start(data.path());
    walk.window.size(390, 844);
    walk.window.wait_text("More");
    walk.window.run(
        "document.querySelector('[data-testid=throw-row] button').click()",
        &[],
    );
    walk.tap("tab-pile");

    // One tap gives the right leg the outline of the left one; then its wear is asked for.
    walk.tap("pile-piece-1-0");
    walk.tap("to-measuring");
    scroll_to(&walk, "mirror-piece");
    seen(&walk, "mirror");
    walk.window.wait_text("The right leg is the same, mirrored");
    walk.tap("mirror-piece");
    walk.window.wait_text("Mark where the right leg is worn");
    walk.tap("to-other-half");
    walk.sees("cutting-title", "Right leg");
    walk.sees("worn-asked", "Where is this one worn?");
    seen(&walk, "worn");
    walk.tap("worn-nothing");
    walk.window
        .wait_until("it is said", |_| walk.reads("worn-asked").is_empty());
    walk.tap("back");
    walk.tap("back");

    // The cloth gives more from both edges, and turned; each line is ticked off in its picture.
    walk.tap("pile-piece-2-0");
    walk.sees("ways", "In strips from the lower edge up: 4 squares");
    walk.sees("ways", "From both edges: 6 squares");
    seen(&walk, "ways");
    walk.tap("way-1");
    walk.sees("cut-list", "From here on measure from the upper edge.");
    walk.tap("cut-line-0");
    walk.sees("cut-list", "below the last cut");
    scroll_to(&walk, "cut-line-1");
    seen(&walk, "both-edges");
    seen_at_the_top(&walk, "both-edges-picture");
    walk.tap("way-2");
    walk.sees("cut-list", "Turn the piece");
    scroll_to(&walk, "cut-line-0");
    seen(&walk, "turned");
    seen_at_the_top(&walk, "turned-to-turn");
    walk.tap("cut-line-0");
    walk.tap("cut-line-1");
    scroll_to(&walk, "cut-line-2");
    seen(&walk, "turned-strips");
    seen_at_the_top(&walk, "turned-picture");
    walk.tap("to-measuring");
    seen(&walk, "turned-measured");
    walk.tap("to-cutting");
    walk.tap("way-0");
    walk.window.wait_until("the plain way", |_| {
        !walk.reads("cut-list").contains("Turn the piece")
    });
    walk.tap("back");

    // A pocket and the waistband are pieces of their own.
    walk.tap("add-part-1-0");
    walk.window.wait_text("Back pocket");
    walk.tap("add-part-1-1");
    walk.window.wait_text("Waistband");
    scroll_to(&walk, "pile-piece-1-3");
    seen(&walk, "parts");
    walk.tap("pile-piece-1-2");
    walk.window.wait_text("sew it onto a square as a pocket");
    walk.window.wait_text("Nothing is to be cut from it");
    seen(&walk, "pocket");
    walk.tap("back");
    walk.tap("pile-piece-1-3");
    walk.sees("cut-list", "Binding strip");
    seen(&walk, "waistband");
}
