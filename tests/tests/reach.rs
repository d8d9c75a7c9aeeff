//! What is within reach: squares chosen several at once, the one way back, and what is one or two
//! taps away from the step.

use lapwork_tests::walk::Walk;
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// The squares that are chosen, by row and column from 1.
fn chosen(walk: &Walk) -> BTreeSet<(u64, u64)> {
    let script = "return [...document.querySelectorAll('[role=gridcell][aria-selected=true]')]
        .map((e) => e.dataset.testid.split('-').slice(1).map((n) => Number(n) + 1))";
    let output = walk.window.run(script, &[]);
    let pair = |v: &Value| {
        (
            v[0].as_u64().expect("a row"),
            v[1].as_u64().expect("a column"),
        )
    };
    output
        .as_array()
        .expect("squares")
        .iter()
        .map(pair)
        .collect()
}

#[test]
fn squares_are_chosen_by_row_column_checkerboard_and_stroke() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.begin("Porch throw", 4, 3);
    walk.tap("tab-faces");
    walk.window.select("[data-testid=face-1-2]");
    // From the square last tapped, in the second row and third column.
    walk.tap("face-1-2");
    walk.window
        .wait_until("one is chosen", |_| chosen(&walk).len() == 1);
    assert_eq!(
        [walk.all("pick-row"), walk.all("pick-column")],
        [["Row 2"], ["Column 3"]]
    );
    walk.tap("pick-row");
    let row: BTreeSet<_> = (1..=4).map(|column| (2, column)).collect();
    walk.window.wait_until("the row", |_| chosen(&walk) == row);
    walk.tap("pick-row");
    walk.window
        .wait_until("none of it", |_| chosen(&walk).is_empty());
    walk.tap("pick-column");
    let column: BTreeSet<_> = (1..=3).map(|row| (row, 3)).collect();
    walk.window
        .wait_until("the column", |_| chosen(&walk) == column);
    walk.tap("choose-none");
    walk.tap("pick-board");
    let board: BTreeSet<_> = (1..=3)
        .flat_map(|row| (1..=4).map(move |column| (row, column)))
        .filter(|(row, column)| (row + column) % 2 == 1)
        .collect();
    assert_eq!(board.len(), 6);
    walk.window
        .wait_until("the checkerboard", |_| chosen(&walk) == board);
    walk.tap("choose-none");
    // A finger drawn down the first column chooses it, and moves nothing.
    walk.tap("pick-draw");
    let stroke = "const at = (name) => { const b = document.querySelector(`[data-testid=${name}]`).getBoundingClientRect();
            return { clientX: b.x + b.width / 2, clientY: b.y + b.height / 2 }; };
        const send = (type, name) => document.querySelector(`[data-testid=${name}]`).dispatchEvent(
            new PointerEvent(type, { bubbles: true, pointerType: 'touch', button: 0, ...at(name) }));
        document.querySelector('[role=grid]').scrollIntoView({ block: 'center' });
        send('pointerdown', 'face-0-0');
        for (const name of ['face-0-0', 'face-1-0', 'face-2-0']) send('pointermove', name);
        send('pointerup', 'face-2-0');
        return getComputedStyle(document.querySelector('[role=grid]')).touchAction;";
    assert_eq!(walk.window.run(stroke, &[]), json!("none"));
    let first: BTreeSet<_> = (1..=3).map(|row| (row, 1)).collect();
    walk.window
        .wait_until("the stroke", |_| chosen(&walk) == first);
    // The columns of the back are numbered as those of the front are.
    let numbers = || {
        let script =
            "return [...document.querySelectorAll('.numbers text')].map((e) => e.textContent)";
        walk.window.run(script, &[])
    };
    assert_eq!(numbers(), json!(["1", "2", "3", "4", "1", "2", "3"]));
    walk.window.click("radio", "Back");
    walk.window
        .wait_until("the back", |_| numbers()[0] == json!("4"));
}

#[test]
fn a_touch_on_small_squares_enlarges_them_to_a_fingers_size() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.begin("Barn wall", 30, 40);
    walk.tap("tab-faces");
    walk.window.select("[data-testid=face-20-15]");
    let touch = "const e = document.querySelector('[data-testid=face-20-15]');
        e.dispatchEvent(new PointerEvent('click', { bubbles: true, pointerType: 'touch' }));";
    let side = || {
        let script = "return document.querySelector('[data-testid=face-20-15]').getBoundingClientRect().width";
        walk.window.run(script, &[]).as_f64().expect("a width")
    };
    assert!(side() < 20.0, "{}", side());
    walk.window.run(touch, &[]);
    walk.window
        .wait_until("it is as large as a finger", |_| side() >= 48.0);
    assert!(chosen(&walk).is_empty(), "the first touch chooses nothing");
    walk.window.run(touch, &[]);
    walk.window
        .wait_until("it is chosen", |_| chosen(&walk) == [(21, 16)].into());
}

#[test]
fn a_step_back_closes_a_sheet_first_and_loses_no_draft() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    let back = || walk.window.run("history.back()", &[]);
    let sheet = || {
        let script = "return document.querySelector('dialog:modal') !== null";
        walk.window.run(script, &[]) == json!(true)
    };
    // A page of the beginning leads to the page before, by the bar's back as by the phone's.
    walk.tap("new-throw");
    walk.types("field-name", "Lake throw");
    walk.types("field-across", "7");
    walk.tap("next-page");
    walk.window.wait_text("New throw · 2 / 4");
    back();
    walk.window.wait_text("New throw · 1 / 4");
    assert_eq!(walk.reads("field-name"), "Lake throw");
    walk.tap("next-page");
    walk.window.wait_text("New throw · 2 / 4");
    walk.tap("back");
    walk.window.wait_text("New throw · 1 / 4");
    // The shelf, and what was typed is found again.
    back();
    walk.window.select("[data-testid=open-demo]");
    walk.tap("new-throw");
    walk.sees("field-name", "Lake throw");
    walk.sees("field-across", "7");
    walk.tap("begin-afresh");
    walk.window
        .wait_until("nothing is typed", |_| walk.reads("field-across") == "6");
    walk.tap("back");
    walk.tap("open-demo");
    walk.sees("card-title", "Cut a square");
    walk.tap("note");
    walk.window.wait_until("the sheet is open", |_| sheet());
    back();
    walk.window.wait_until("the sheet is closed", |_| !sheet());
    walk.sees("card-title", "Cut a square");
    back();
    walk.window.select("[data-testid=throw-row]");
}

#[test]
fn units_undo_stages_and_printing_are_two_taps_from_the_step() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    for (width, height) in [(390, 844), (360, 740)] {
        walk.window.size(width, height);
        if width == 390 {
            walk.tap("open-demo");
        }
        walk.sees("card-title", "Cut a square");
        let shown = |mark: &str| {
            let script = "const b = document.querySelector(`[data-testid=${arguments[0]}]`)?.getBoundingClientRect();
                return b ? [Math.round(b.width), Math.round(b.height)] : null";
            let output = walk.window.run(script, &[json!(mark)]);
            let size = |n: usize| output[n].as_u64().unwrap_or_default();
            assert!(size(0) >= 48 && size(1) >= 48, "{mark}: {output}");
        };
        shown("undo");
        shown("of-throw");
        walk.tap("of-throw");
        walk.window
            .select("dialog:modal [data-testid=way-rows] [aria-current=step]");
        for mark in [
            "of-throw-hand-on",
            "of-throw-story",
            "of-throw-settings",
            "of-throw-redo",
        ] {
            shown(mark);
        }
        let to = if width == 390 {
            "units-mm"
        } else {
            "units-inch"
        };
        walk.tap(to);
        let figure = if width == 390 {
            "127 × 127 mm"
        } else {
            "5 × 5 in"
        };
        walk.window.wait_until(figure, |_| {
            walk.all("figure-value").contains(&figure.to_string())
        });
        walk.tap("of-throw");
        walk.tap("of-throw-hand-on");
        walk.window.select("[data-testid=print]");
        walk.tap("back");
    }
}
