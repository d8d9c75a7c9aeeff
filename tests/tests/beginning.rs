//! From what is in the cupboard to the first leg cut: how many taps it takes.

use lapwork_tests::walk::Walk;
use serde_json::{Value, json};

/// A maker whose taps are counted: one for each thing tapped, and one for each field typed
/// into, besides its keys.
struct Counted {
    walk: Walk,
    taps: usize,
    keys: usize,
}

impl Counted {
    /// A window on a data folder, as wide and high as a phone; nothing is tapped yet.
    fn start(data: &std::path::Path) -> Counted {
        let walk = Walk::start(data);
        walk.window.size(390, 844);
        Counted {
            walk,
            taps: 0,
            keys: 0,
        }
    }

    fn tap(&mut self, mark: &str) {
        self.walk.tap(mark);
        self.taps += 1;
    }

    fn types(&mut self, mark: &str, text: &str) {
        self.walk.types(mark, text);
        self.taps += 1;
        self.keys += text.chars().count();
    }

    /// Keep a picture of the window where one is asked for.
    fn seen(&self, name: &str) {
        if let Some(folder) = std::env::var_os("LAPWORK_PICTURES") {
            let folder = std::path::PathBuf::from(folder);
            std::thread::sleep(std::time::Duration::from_millis(600));
            self.walk
                .window
                .picture(&folder.join(format!("{name}.png")));
        }
    }
}

/// The marks of the grids offered, and what is said of each.
fn grids(walk: &Walk) -> Vec<(String, String)> {
    let script = "return [...document.querySelectorAll('button[data-testid^=\"grid-\"]')].map(
        (e) => [e.dataset.testid, e.innerText]);";
    let found = walk.window.run(script, &[]);
    let pair = |row: &Value| {
        let text = |n: usize| row[n].as_str().unwrap_or_default().replace('\u{a0}', " ");
        (text(0), text(1))
    };
    found
        .as_array()
        .map_or_else(Vec::new, |rows| rows.iter().map(pair).collect())
}

#[test]
fn from_three_pairs_of_jeans_to_the_first_leg_cut() {
    let data = tempfile::tempdir().unwrap();
    let mut maker = Counted::start(data.path());
    maker.tap("new-throw");
    maker.walk.sees("jeans-0", "Pairs");
    maker.seen("new-empty");
    // Three pairs with a torn knee, a pack of 42 squares, about 40 × 55 in.
    maker.types("field-pairs-0", "3");
    maker.tap("knees-0-torn");
    maker.walk.sees("cloth-said", "3 pairs give about");
    maker.seen("new-jeans");
    maker.tap("fabric-pack");
    maker.types("field-fabric-count", "42");
    maker.types("field-wish-width", "40");
    maker.types("field-wish-height", "55");
    maker
        .walk
        .window
        .wait_until("the nearest grid is told", |_| {
            let all = grids(&maker.walk);
            all.first()
                .is_some_and(|(_, said)| said.contains("9 across × 12 down"))
        });
    maker.seen("new-grids");
    let offered = grids(&maker.walk);
    assert!(
        offered[0].1.contains("more pairs of this size"),
        "what is lacking for the size is told: {offered:?}"
    );
    // She takes the one her jeans are enough for.
    let enough = offered.iter().find(|(_, said)| said.contains("are enough"));
    let (mark, _) = enough.expect("a grid for these jeans").clone();
    maker.tap(&mark);
    for _ in 0..3 {
        maker.tap("next-page");
    }
    maker.tap("begin");
    // What she has is on the pile, a main place of the window.
    maker.walk.window.wait_text("Clothes pile");
    maker
        .walk
        .window
        .select("[data-testid=tab-pile][aria-current]");
    let pile = maker.walk.view(json!({ "see": "pile" }));
    assert_eq!(pile["rows"].as_array().map(Vec::len), Some(4), "{pile}");
    let said = pile["said"].to_string();
    assert!(said.contains("may give anything from"), "{said}");
    maker.seen("pile");
    let narrow = maker.walk.window.run(
        "return [...document.querySelectorAll('nav button')].filter((e) => {
            const box = e.getBoundingClientRect();
            return box.width < 48 || box.height < 48 || e.scrollWidth > e.clientWidth + 1;
         }).map((e) => e.innerText);",
        &[],
    );
    assert_eq!(narrow, json!([]), "every place can be tapped and read");
    let before = maker.taps;
    maker.tap("pile-piece-1-0");
    maker.walk.sees("cutting-title", "Left leg");
    let cutting = json!({ "see": "cutting", "n": 1, "index": 0, "typed": null, "drag": null });
    let leg = maker.walk.view(cutting.clone());
    assert!(leg["expected"].as_u64() > Some(4), "{leg}");
    let zones = leg["tidy"]["zones"].to_string();
    assert!(
        zones.contains("\"knee\""),
        "the torn knee is on it: {zones}"
    );
    let lines = maker.walk.window.run(
        "return document.querySelectorAll('[data-testid=cut-list] > li').length",
        &[],
    );
    assert!(lines.as_u64() > Some(4), "{lines} lines to cut by");
    maker.seen("leg");
    let (to_the_leg, keys) = (maker.taps, maker.keys);
    maker.tap("all-came");
    maker.walk.window.wait_until("the leg is cut", |_| {
        !maker.walk.view(cutting.clone())["counted"].is_null()
    });
    let left = "return document.querySelector('[data-testid=cutting-title]') === null";
    maker.walk.window.wait_until("its page is left", |window| {
        window.run(left, &[]) == json!(true)
    });
    eprintln!(
        "{to_the_leg} taps and {keys} keys to the first leg with its cuts ({before} to the pile), {} to the leg cut",
        maker.taps
    );
    // As measured: 13 to the leg with its cuts, 14 to the leg cut.
    assert!(to_the_leg <= 13, "{to_the_leg} taps");
    assert!(maker.taps <= 14, "{} taps", maker.taps);
}

/// A size that is typed the moment before the next page is asked for counts as any other.
#[test]
fn a_wished_size_counts_though_the_next_page_is_asked_for_at_once() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.tap("new-throw");
    walk.sees("jeans-0", "Pairs");
    walk.window.run(
        "const by = (mark) => document.querySelector(`[data-testid=${mark}]`);
         for (const [mark, text] of [['field-wish-width', '40'], ['field-wish-height', '55']]) {
           by(mark).value = text;
           by(mark).dispatchEvent(new Event('input', { bubbles: true }));
         }
         by('next-page').click();",
        &[],
    );
    walk.tap("page-back");
    let grid = || ["across", "down"].map(|side| walk.reads(&format!("field-{side}")));
    walk.window
        .wait_until("the grid nearest to the size", |_| grid() == ["9", "12"]);
}

/// In centimetres, dark and in German: a leg begins in whole centimetres, and a size without
/// jeans tells how many it takes.
#[test]
fn a_metric_throw_begins_in_round_figures() {
    let data = tempfile::tempdir().unwrap();
    let mut maker = Counted::start(data.path());
    maker.tap("settings");
    maker.tap("field-language-de");
    maker.tap("field-theme-dark");
    maker.tap("back");
    maker.tap("units");
    maker.tap("units-cm");
    maker.tap("new-throw");
    maker.types("field-wish-width", "100");
    maker.types("field-wish-height", "140");
    maker
        .walk
        .window
        .wait_until("how many jeans it takes", |_| {
            let all = grids(&maker.walk);
            all.first()
                .is_some_and(|(_, said)| said.contains("Du brauchst etwa"))
        });
    maker.walk.window.run(
        "document.querySelector('button[data-testid^=grid-]').scrollIntoView();",
        &[],
    );
    maker.seen("metric-grids");
    maker.types("field-pairs-0", "1");
    maker.walk.sees("cloth-said", "Eine Jeans gibt etwa");
    maker.tap("fabric-quarters");
    maker.types("field-fabric-count", "1");
    maker.types("field-across", "3");
    maker.types("field-down", "4");
    for _ in 0..3 {
        maker.tap("next-page");
    }
    maker.tap("begin");
    maker.walk.window.wait_text("Kleiderstapel");
    maker.tap("pile-piece-1-0");
    maker.tap("to-measuring");
    let width = |n: usize| maker.walk.reads(&format!("field-station-{n}-width"));
    assert_eq!([width(0), width(1), width(2)], ["43 cm", "48 cm", "64 cm"]);
    maker.seen("metric-leg");
    maker.tap("back");
    // The fat quarter is squared up: 50 cm do not promise four strips of 12.5 cm.
    let cutting = json!({ "see": "cutting", "n": 2, "index": 0, "typed": null, "drag": null });
    assert_eq!(maker.walk.view(cutting)["expected"], json!(12));
    maker.tap("pile-piece-2-0");
    maker.walk.sees("cutting-title", "Fat Quarter");
    maker.seen("metric-quarter");
}
