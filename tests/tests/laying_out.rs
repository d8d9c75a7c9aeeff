//! Both faces in the real window: layouts round what is sewn, and squares moved by hand.

use lapwork_tests::walk::Walk;
use serde_json::{Value, json};

fn act(walk: &Walk, action: Value) {
    let request = json!({ "request": "act", "action": action });
    walk.window
        .call("act", json!({ "id": walk.id(), "request": request }))
        .expect("allowed");
}

/// Squares of a face, row by row as told from the front.
fn cells(walk: &Walk, face: &str) -> Vec<Value> {
    walk.face(face)
}

/// What shows on both faces of the squares that lie in these pieces.
fn shown(walk: &Walk, pieces: &[Value]) -> Vec<Value> {
    let inside = |cell: &Value| {
        let n = |v: &Value, i: usize| v[i].as_u64().unwrap();
        let at = &cell["piece"];
        pieces.iter().any(|p| {
            (n(p, 0)..n(p, 0) + n(p, 2)).contains(&n(at, 0))
                && (n(p, 1)..n(p, 1) + n(p, 3)).contains(&n(at, 1))
        })
    };
    let both = ["front", "back"].map(|face| cells(walk, face)).concat();
    both.into_iter().filter(inside).collect()
}

/// Squares that are to be covered on a face and are not yet.
fn to_cover(walk: &Walk, task: &str) -> bool {
    let work = walk.view(json!({ "see": "work", "station": null, "batch": null }));
    let offers = work["offers"].as_array().cloned().unwrap_or_default();
    offers.iter().any(|offer| offer["task"] == task)
}

fn covered(walk: &Walk) -> [u64; 2] {
    let view = walk.view(json!({ "see": "faces", "face": "front" }));
    [0, 1].map(|n| view["covered"][n].as_u64().unwrap())
}

fn undo_says(walk: &Walk, words: &str) {
    walk.window
        .wait_until(&format!("undo says “{words}”"), |w| {
            let script = "return document.querySelector('[data-testid=undo]')?.ariaLabel ?? ''";
            let label = w.run(script, &[]);
            label.as_str().unwrap_or_default().contains(words)
        });
}

#[test]
fn more_on_the_back_after_two_fours_are_sewn() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.begin("Landing throw", 8, 10);
    // Three squares covered; two fours lie lapped and cool, to be stitched.
    let three = json!([[0, 0, 1, 1], [1, 1, 1, 1], [0, 3, 1, 1]]);
    act(
        &walk,
        json!({ "do": "set-face", "pieces": three, "face": "front", "print": 1 }),
    );
    let tick = |task: &str, kind: &str, count: u32| {
        act(
            &walk,
            json!({ "do": "tick-next", "task": task, "kind": kind, "count": count }),
        );
    };
    tick("cut", "square", 80);
    for task in ["cover-front", "press-cover", "cool-cover"] {
        tick(task, "square", 3);
    }
    for task in ["dot", "press-lap", "cool-lap", "stitch"] {
        tick(task, "pair", 4);
    }
    for task in ["dot", "press-lap", "cool-lap"] {
        tick(task, "four", 2);
    }
    // She stitches them by the step screen.
    walk.tap("tab-bench");
    walk.tap("tab-work");
    walk.tap("offer-stitch-four");
    walk.sees("card-title", "Stitch the four");
    let before = walk.done();
    walk.tap("tick");
    walk.window
        .wait_until("both are stitched", |_| walk.done() == before + 2);
    // The pieces that go as one, each told by all of its squares.
    let mut fours: Vec<Value> = Vec::new();
    for cell in cells(&walk, "front") {
        let unit = cell["unit"].clone();
        if unit != cell["piece"] && !fours.contains(&unit) {
            fours.push(unit);
        }
    }
    assert_eq!(fours, [json!([0, 0, 2, 2]), json!([0, 2, 2, 2])]);
    let sewn = shown(&walk, &fours);
    assert_eq!(sewn.len(), 16);
    let before = (cells(&walk, "front"), cells(&walk, "back"));
    assert_eq!(covered(&walk), [3, 0]);
    assert!(!to_cover(&walk, "cover-back"));

    // More on both faces, and more on the back.
    walk.tap("tab-faces");
    walk.tap("lay-out");
    walk.types("field-front", "20");
    walk.tap("field-back-26");
    walk.sees("field-back", "26");
    walk.tap("look-for-layouts");
    walk.window.wait_until("the search is under way", |w| {
        let script = "const p = document.querySelector('[data-testid=layouts-progress]');
            return !!p && p.max > 1 && p.value > 0";
        w.run(script, &[]) == json!(true)
    });
    walk.sees("layouts-said", "Looking");
    walk.tap("layout-D");
    // Nothing waits for the search: another is chosen while it runs, then it is stopped.
    walk.tap("layout-B");
    walk.window.wait_text("Layout B");
    walk.tap("stop-looking");
    walk.window.wait_until("it has stopped", |w| {
        let script = "return document.querySelector('[data-testid=layouts-progress]') === null";
        w.run(script, &[]) == json!(true)
    });
    let letters = walk.window.run(
        "return [...document.querySelectorAll('[data-testid^=layout-][aria-pressed]')].map((e) => [e.dataset.testid, e.ariaPressed])",
        &[],
    );
    assert_eq!(
        letters,
        json!([
            ["layout-A", "false"],
            ["layout-B", "true"],
            ["layout-C", "false"],
            ["layout-D", "false"]
        ])
    );
    walk.window.wait_text("Take layout B");
    walk.tap("take-layout");
    walk.window.wait_text("Layout taken: B");

    // The sewn fours are where they were and as they were; the back has what was asked.
    assert_eq!(shown(&walk, &fours), sewn);
    assert_eq!(covered(&walk), [20, 26]);
    assert!(to_cover(&walk, "cover-back"));
    let done = walk.view(json!({ "see": "bench", "chosen": [0, 0, 2, 2] }))["chosen"].to_string();
    assert!(done.contains("Done: stitched"), "{done}");
    walk.tap("tab-work");
    walk.window
        .wait_until("the step list has the back to cover", |w| {
            let script = "return !!document.querySelector('[data-testid=offer-cover-back-square]')";
            w.run(script, &[]) == json!(true)
        });

    // Taken back, all is as before.
    walk.tap("undo");
    walk.window
        .wait_until("it is taken back", |_| covered(&walk) == [3, 0]);
    assert_eq!((cells(&walk, "front"), cells(&walk, "back")), before);
    assert!(!to_cover(&walk, "cover-back"));

    // What is sewn in gets fabric by hand, once it was said how; the step says it again.
    walk.tap("tab-faces");
    walk.tap("field-face-back");
    walk.window.wait_text("Back, as you see it turned over");
    walk.tap("face-0-0");
    walk.tap("choose-print");
    walk.sees("laid-on", "trimmed to 3¾ × 3¾ in");
    walk.tap("print-2");
    walk.window
        .wait_until("it is to be covered", |_| covered(&walk) == [3, 1]);
    // It is the next step.
    walk.tap("tab-work");
    walk.window
        .wait_text("Turn the work over. Put a few dots of washable glue on the wrong side");
    walk.window
        .wait_text("Lay it in the middle of the square, on the back, right side up");
    assert_eq!(shown(&walk, &fours).len(), sewn.len());
}

#[test]
fn squares_are_moved_turned_over_and_pinned_by_hand() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.begin("Stair throw", 4, 2);
    walk.tap("tab-faces");
    walk.tap("face-0-0");
    walk.tap("choose-print");
    walk.tap("print-2");
    let print = |face: &str, n: usize| cells(&walk, face)[n]["print"].clone();
    walk.window
        .wait_until("it is covered", |_| print("front", 0) == json!(2));
    let before = (cells(&walk, "front"), cells(&walk, "back"));

    walk.tap("face-0-0");
    walk.tap("face-1-3");
    walk.tap("move-or-pin");
    walk.tap("change-places");
    walk.window.wait_until("they have changed places", |_| {
        print("front", 7) == json!(2)
    });
    assert_eq!(print("front", 0), Value::Null);
    undo_says(&walk, "changed places");

    walk.tap("face-1-3");
    walk.tap("move-or-pin");
    walk.tap("turn-over");
    walk.window.wait_until("it lies on its other face", |_| {
        print("back", 7) == json!(2)
    });
    assert_eq!(print("front", 7), Value::Null);
    assert_eq!(covered(&walk), [0, 1]);

    // It stays chosen; pinned, it can only be let go.
    walk.tap("move-or-pin");
    walk.tap("pin");
    walk.window.wait_until("it is pinned", |_| {
        cells(&walk, "front")[7]["pinned"] == json!(true)
    });
    walk.window.wait_text("Kept in its place");
    walk.tap("face-1-3");
    walk.tap("face-0-0");
    walk.tap("move-or-pin");
    walk.window.wait_text("Let it move");
    let offered = walk.window.run(
        "return [...document.querySelectorAll('dialog [data-testid]')].map((e) => e.dataset.testid)",
        &[],
    );
    assert_eq!(offered, json!(["close-sheet", "pin", "unpin"]));
    walk.tap("close-sheet");

    for _ in 0..3 {
        walk.tap("undo");
    }
    walk.window
        .wait_until("all is as before", |_| cells(&walk, "front") == before.0);
    assert_eq!(cells(&walk, "back"), before.1);
}

#[test]
fn denims_are_laid_out_from_what_the_pile_gives() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.window.size(390, 844);
    walk.begin("Shaded throw", 6, 8);
    let pack = |denim: u8, count: u32, name: &str| {
        let makes = json!({ "for": "denim", "denim": denim });
        act(
            &walk,
            json!({ "do": "add-pack", "side": 127_000_000, "count": count, "makes": makes, "name": name }),
        );
    };
    pack(0, 32, "Dark squares");
    pack(1, 18, "Pale squares");
    // One square is given pale denim by hand, where the order would have dark.
    let corner = json!([[7, 5, 1, 1]]);
    act(
        &walk,
        json!({ "do": "set-denim", "pieces": corner, "denim": 1, "wrong_side_up": false }),
    );
    let line = |label: &str| -> Value {
        let view = walk.view(json!({ "see": "wishes", "wishes": null }));
        let lines = view["lines"].as_array().cloned().unwrap_or_default();
        let found = lines.into_iter().find(|line| line["label"] == label);
        found.unwrap_or_else(|| panic!("no line “{label}”: {view}"))
    };

    walk.tap("tab-faces");
    walk.tap("lay-out");
    walk.sees("wishes-pile", "32 of Dark jeans and 18 of Faded jeans");
    walk.tap("field-pattern-shade-rows");
    walk.sees("wishes-pile", "32 of Dark jeans");
    picture(&walk, "wishes");
    walk.tap("look-for-layouts");
    walk.tap("layout-A");
    walk.sees("layout-denims", "of Faded jeans");
    picture(&walk, "layouts");
    walk.tap("take-layout");
    walk.window.wait_text("Layout taken: A");
    // All that it had to choose is in order; what was chosen by hand is not, and that is said.
    let shades = line("Out of the order of shades");
    assert_eq!(shades["met"], json!(false), "{shades}");
    assert_eq!(line("From the pile")["met"], json!(true));
    picture(&walk, "taken");

    // Given up, the order is met everywhere.
    walk.tap("lay-out");
    walk.tap("field-by-hand-too");
    walk.tap("look-for-layouts");
    walk.tap("layout-A");
    walk.tap("take-layout");
    walk.window.wait_until("the order is met", |_| {
        line("Out of the order of shades")["met"] == json!(true)
    });
}

fn picture(walk: &Walk, name: &str) {
    if let Some(folder) = std::env::var_os("LAPWORK_PICTURES") {
        let file = std::path::Path::new(&folder).join(format!("{name}.png"));
        walk.window.picture(&file);
    }
}
