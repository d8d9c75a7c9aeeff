//! The window for those who see little, press keys, want large letters or no motion.
//!
//! ```text
//! cargo test --workspace --test access -- --nocapture
//! ```
//! prints the tables that tests/ACCESS.md keeps.

use image::{ImageFormat, Rgb, RgbImage};
use lapwork_tests::access::{Audit, Seen, Tour, pictures};
use lapwork_tests::walk::Walk;
use lapwork_tests::window::Window;
use serde_json::json;
use std::collections::{BTreeMap, BTreeSet};
use std::time::{Duration, Instant};

fn photo() -> Vec<u8> {
    let picture = RgbImage::from_fn(400, 200, |x, _| Rgb([200, (x / 2) as u8, 40]));
    let mut out = std::io::Cursor::new(Vec::new());
    picture.write_to(&mut out, ImageFormat::Png).unwrap();
    out.into_inner()
}

/// Dress the page as the settings do, with nothing left moving.
fn dress(walk: &Walk, theme: &str, text: u32) {
    let script = "const [theme, text] = arguments;
        const page = document.documentElement;
        page.dataset.theme = theme;
        page.style.fontSize = `${text}%`;
        page.classList.toggle('large', text >= 140);
        document.querySelectorAll('details').forEach((fold) => (fold.open = true));
        document.getAnimations().forEach((motion) => motion.finish());";
    walk.window.run(script, &[json!(theme), json!(text)]);
}

/// How many words the screen has between its bars.
fn words(walk: &Walk) -> u64 {
    let script = "const main = document.querySelector('dialog[open], main');
        return main.innerText.trim().split(/\\s+/).length;";
    let count = walk.window.run(script, &[]);
    count.as_u64().expect("a number")
}

fn picture(walk: &Walk, name: &str) {
    let Some(folder) = pictures() else { return };
    let name = name.replace(", ", "-").replace(": ", "-").replace(' ', "-");
    std::thread::sleep(std::time::Duration::from_millis(150));
    walk.window.picture(&folder.join(format!("{name}.png")));
}

#[test]
fn every_screen_holds_against_the_rules_in_light_and_in_dark() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    Audit::begin(&walk);
    let mut faults: Vec<String> = Vec::new();
    let mut held = BTreeSet::new();
    let mut table = Vec::new();
    let mut undecided: BTreeMap<String, usize> = BTreeMap::new();
    let mut unclear = BTreeSet::new();
    let mut took = [Duration::ZERO; 2];
    let mut output = 0;
    Tour::take(&walk, &photo(), &mut |walk, screen| {
        for theme in ["light", "dark"] {
            dress(walk, theme, 100);
            let start = Instant::now();
            // In the dark the page is the same but for its colours.
            let audit = Audit::of(walk, theme == "dark");
            took[0] += start.elapsed();
            let at = |line: &String| format!("{screen}, {theme}: {line}");
            faults.extend(audit.violations.iter().map(at));
            for line in &audit.undecided {
                let rule = line.split(':').next().unwrap_or_default();
                let why = line.rsplit(" — ").next().unwrap_or_default();
                *undecided.entry(format!("{rule}: {why}")).or_insert(0) += 1;
            }
            held.extend(audit.passed.iter().cloned());
            let start = Instant::now();
            let seen = Seen::of(walk);
            took[1] += start.elapsed();
            faults.extend(seen.contrast.iter().map(|l| at(&format!("contrast {l}"))));
            faults.extend(seen.targets.iter().map(|l| at(&format!("target {l}"))));
            faults.extend(seen.sideways.iter().map(|l| at(&format!("sideways {l}"))));
            unclear.extend(seen.unclear.iter().map(at));
            table.push((
                format!("{screen}, {theme}"),
                audit.passed.len(),
                audit.violations.len(),
                audit.elements,
                seen.counted,
                words(walk),
            ));
            picture(walk, &format!("{screen}-{theme}"));
        }
        // Between the sizes nothing shrinks below a finger's breadth.
        for text in [150, 200] {
            dress(walk, "light", text);
            let seen = Seen::of(walk);
            let at = |line: &String| format!("{screen}, {text} %: target {line}");
            faults.extend(seen.targets.iter().map(at));
        }
        dress(walk, "light", 100);
        faults[output..]
            .iter()
            .for_each(|fault| println!("fault: {fault}"));
        output = faults.len();
    });
    println!("| Screen, theme | Rules passed | Violations | Elements | Targets | Texts | Words |");
    println!("| --- | --- | --- | --- | --- | --- | --- |");
    for (screen, rules, violations, elements, [targets, texts], words) in &table {
        println!(
            "| {screen} | {rules} | {violations} | {elements} | {targets} | {texts} | {words} |"
        );
    }
    for (why, count) in &undecided {
        println!("undecided by axe-core, {count} ×: {why}");
    }
    println!(
        "{} screens, {} readings, {} different rules held; axe-core took {:?}, our own measures {:?}",
        table.len() / 2,
        table.len(),
        held.len(),
        took[0],
        took[1]
    );
    // What axe-core leaves undecided of contrast, our own measures decide: every ground is told.
    assert!(unclear.is_empty(), "grounds not told: {unclear:?}");
    // The rules were really gone by.
    for rule in [
        "color-contrast",
        "target-size",
        "button-name",
        "label",
        "region",
        "heading-order",
    ] {
        assert!(held.contains(rule), "{rule} was never tried: {held:?}");
    }
    assert!(table.len() >= 110, "only {} readings", table.len());
    assert!(
        faults.is_empty(),
        "{} faults:\n{}",
        faults.len(),
        faults.join("\n")
    );
}

/// Screens whose large button is to be had at once, whatever the size of letters.
const AT_ONCE: [&str; 6] = ["work", "faces", "measure", "plan", "layouts", "new throw"];

#[test]
fn letters_of_double_size_fit_a_narrow_window_in_german() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.window.size(360, 740);
    walk.tap("settings");
    walk.tap("field-text-200");
    let large = |w: &Window| {
        let size = "return getComputedStyle(document.documentElement).fontSize";
        w.run(size, &[]) == json!("32px")
    };
    // Growing letters move what is tapped next.
    walk.window.wait_until("letters have grown", large);
    walk.tap("field-language-de");
    walk.window.wait_text("Einstellungen");
    assert!(large(&walk.window));
    walk.tap("back");
    let mut faults: Vec<String> = Vec::new();
    let mut counted = [0, 0, 0];
    Tour::take(&walk, &photo(), &mut |walk, screen| {
        let still = "document.querySelectorAll('details').forEach((fold) => (fold.open = true));
            document.getAnimations().forEach((motion) => motion.finish());";
        walk.window.run(still, &[]);
        let seen = Seen::of(walk);
        counted = [
            counted[0] + 1,
            counted[1] + seen.counted[0],
            counted[2] + seen.counted[1],
        ];
        let before = faults.len();
        for (what, lines) in [
            ("target", &seen.targets),
            ("cut", &seen.cut),
            ("over", &seen.over),
            ("sideways", &seen.sideways),
        ] {
            faults.extend(lines.iter().map(|line| format!("{screen}: {what} {line}")));
        }
        if AT_ONCE.iter().any(|at| screen.starts_with(at)) {
            faults.extend(
                seen.hidden
                    .iter()
                    .map(|line| format!("{screen}: hidden {line}")),
            );
        }
        faults[before..]
            .iter()
            .for_each(|fault| println!("fault: {fault}"));
        picture(walk, &format!("{screen}-large"));
    });
    println!(
        "200 %: {} screens, {} targets, {} texts",
        counted[0], counted[1], counted[2]
    );
    assert!(
        faults.is_empty(),
        "{} faults:\n{}",
        faults.len(),
        faults.join("\n")
    );
}

/// With letters of double size all of the page scrolls: a step that is taken up far down comes into view.
#[test]
fn a_step_taken_up_with_large_letters_comes_into_view() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.window.size(390, 844);
    walk.tap("settings");
    walk.tap("field-text-200");
    let large = |w: &Window| {
        let size = "return getComputedStyle(document.documentElement).fontSize";
        w.run(size, &[]) == json!("32px")
    };
    walk.window.wait_until("letters have grown", large);
    walk.tap("back");
    walk.tap("open-demo");
    walk.sees("card-title", "Cut a square");
    let top = |w: &Window| {
        let of = "const title = document.querySelector('[data-testid=card-title]');
            return title.getBoundingClientRect().top";
        w.run(of, &[]).as_f64().expect("a place")
    };
    let down = "document.querySelector('[data-testid=offer-dot-pair]').scrollIntoView()";
    walk.window.run(down, &[]);
    assert!(top(&walk.window) < 0.0, "it lies far down");
    walk.tap("offer-dot-pair");
    walk.sees("card-title", "Lap and glue a pair");
    walk.window
        .wait_until("the step is in view", |w| (0.0..844.0).contains(&top(w)));
}

const TAB: &str = "\u{e004}";
const ENTER: &str = "\u{e007}";
const SHIFT: &str = "\u{e008}";
const ESCAPE: &str = "\u{e00c}";
const SPACE: &str = " ";
const LEFT: &str = "\u{e012}";
const UP: &str = "\u{e013}";
const RIGHT: &str = "\u{e014}";
const DOWN: &str = "\u{e015}";
const PAGE_DOWN: &str = "\u{e00f}";

/// A maker with a keyboard only. After every key the focus must be somewhere, and seen.
struct Keys<'a> {
    walk: &'a Walk,
}

impl Keys<'_> {
    fn press(&self, key: &str) {
        self.walk.window.key(key);
        self.is_seen(key);
    }

    /// Where the focus is: the mark, or the kind of element.
    fn at(&self) -> String {
        let script = "const e = document.activeElement;
            return e?.dataset?.testid ?? e?.id ?? e?.tagName ?? ''";
        let at = self.walk.window.run(script, &[]);
        at.as_str().unwrap_or_default().to_string()
    }

    /// The focus is on something, and that is shown: an outline, or the ring of a drawing,
    /// that stands out 3 : 1. A heading that was gone to is read aloud and cannot be reached
    /// by Tab; it needs none.
    fn is_seen(&self, key: &str) {
        let script = "const e = document.activeElement;
            if (!e || e === document.body || e === document.documentElement) return 'lost';
            if (/^H[12]$/.test(e.tagName) && e.tabIndex < 0) return '';
            const parts = (c) => c.match(/[\\d.]+/g).map(Number);
            const light = (c) => { const [r, g, b] = parts(c).map((v) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4)); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
            const ratio = (a, b) => { const [h, l] = [light(a), light(b)].sort((x, y) => y - x); return (h + 0.05) / (l + 0.05); };
            if (e.getAttribute('role') === 'gridcell') {
                const rings = [...e.ownerSVGElement.querySelectorAll('.ring')];
                if (rings.length !== 2 || rings.some((r) => r.getAttribute('x') !== e.getAttribute('x') || r.getAttribute('y') !== e.getAttribute('y'))) return 'no ring';
                const [under, ring] = rings.map((r) => getComputedStyle(r).stroke);
                return ratio(under, ring) >= 3 ? '' : `a pale ring ${under} ${ring}`;
            }
            const solid = (s) => s.outlineStyle !== 'none' && s.outlineStyle !== 'auto' && parseFloat(s.outlineWidth) >= 2;
            const shown = [e, e.closest('label')].filter(Boolean).find((x) => solid(getComputedStyle(x)));
            if (!shown) return `no outline: ${getComputedStyle(e).outline}`;
            let ground = shown.parentElement;
            while (ground && parts(getComputedStyle(ground).backgroundColor)[3] === 0) ground = ground.parentElement;
            const [line, under] = [getComputedStyle(shown).outlineColor, getComputedStyle(ground ?? document.body).backgroundColor];
            return ratio(line, under) >= 3 ? '' : `a pale outline ${line} on ${under}`;";
        let mut said = String::new();
        // What a key sets off may take a moment to come back from the core.
        for _ in 0..40 {
            let output = self.walk.window.run(script, &[]);
            said = output.as_str().unwrap_or("no answer").to_string();
            if said.is_empty() {
                return;
            }
            std::thread::sleep(Duration::from_millis(50));
        }
        panic!(
            "after {key:?} the focus is {said} at {}\n{}",
            self.at(),
            self.walk.window.listing()
        );
    }

    /// Tab on, or back, until the focus is on what carries this mark.
    fn go(&self, mark: &str, back: bool) {
        let mut way = vec![self.at()];
        for _ in 0..90 {
            if self.at() == mark {
                return;
            }
            if back {
                self.walk.window.key_with(SHIFT, TAB);
                self.is_seen("Shift+Tab");
            } else {
                self.press(TAB);
            }
            way.push(self.at());
        }
        panic!("never came to {mark}: {way:?}");
    }

    fn on(&self, mark: &str) {
        self.go(mark, false);
    }

    fn back(&self, mark: &str) {
        self.go(mark, true);
    }

    fn is_at(&self, mark: &str) {
        self.walk.window.wait_until(
            &format!("the focus is on {mark}, not {}", self.at()),
            |_| self.at() == mark,
        );
    }

    /// On the heading of a screen just come to.
    fn arrived(&self, words: &str) {
        let script = "const e = document.activeElement;
            return e.tagName === 'H1' && e.textContent.includes(arguments[0])";
        self.walk
            .window
            .wait_until(&format!("the focus is on the heading {words}"), |w| {
                w.run(script, &[json!(words)]) == json!(true)
            });
    }

    /// However often Tab is pressed, the focus stays in the sheet.
    fn is_held_by_the_sheet(&self) {
        let inside =
            "return document.querySelector('dialog:modal').contains(document.activeElement)";
        let mut been = BTreeSet::new();
        for (n, back) in (0..40).map(|n| (n, n >= 20)) {
            if back {
                self.walk.window.key_with(SHIFT, TAB);
            } else {
                self.walk.window.key(TAB);
            }
            let held = self.walk.window.run(inside, &[]);
            assert_eq!(
                held,
                json!(true),
                "Tab {n} leaves the sheet for {}",
                self.at()
            );
            been.insert(self.at());
        }
        assert!(been.len() > 1 && been.contains("close-sheet"), "{been:?}");
    }
}

#[test]
fn a_maker_with_a_keyboard_only_ticks_measures_and_changes_a_square() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    let keys = Keys { walk: &walk };
    walk.window.take_keyboard();
    walk.window.wait_text("A throw from worn jeans");
    keys.on("open-demo");
    keys.press(ENTER);
    keys.arrived("Work");

    // A tick by the space bar, and undone; the focus stays where it was put.
    keys.on("tick");
    let before = walk.done();
    keys.press(SPACE);
    walk.window
        .wait_until("the tick is taken", |_| walk.done() == before + 1);
    keys.is_seen("the tick");
    keys.back("undo");
    keys.press(ENTER);
    walk.window
        .wait_until("it is taken back", |_| walk.done() == before);
    keys.is_seen("undo");
    // On a narrow window what is done again stands in the sheet of the throw.
    keys.back("of-throw");
    keys.press(ENTER);
    keys.on("of-throw-redo");
    keys.press(ENTER);
    walk.window
        .wait_until("it is done again", |_| walk.done() == before + 1);
    // The sheet is closed, and the focus is back where it was opened.
    keys.is_at("of-throw");
    keys.is_seen("redo");

    // A note: the sheet keeps the focus, and gives it back.
    keys.on("note");
    keys.press(ENTER);
    keys.is_held_by_the_sheet();
    keys.press(ESCAPE);
    keys.is_at("note");
    keys.is_seen("Escape");

    // The bench by arrows, a four measured on the keyboard.
    keys.on("tab-bench");
    keys.press(ENTER);
    keys.arrived("Bench");
    keys.on("cell-0-0");
    for key in [RIGHT, DOWN, RIGHT, LEFT, UP, RIGHT] {
        keys.press(key);
    }
    keys.is_at("cell-0-2");
    keys.press(ENTER);
    walk.window.select("dialog:modal");
    keys.is_held_by_the_sheet();
    keys.on("piece-measure");
    keys.press(ENTER);
    keys.arrived("Four A2");
    keys.on("field-width");
    for key in ["9", " ", "1", "/", "2", ENTER, "9", ".", "5"] {
        keys.press(key);
    }
    keys.is_at("field-height");
    walk.sees("verdict", "Across: just right.");
    walk.sees("verdict", "Down: just right.");
    keys.press(ENTER);
    walk.window.wait_until("the measure is kept", |w| {
        w.run(
            "return document.querySelector('[data-testid=keep]') === null",
            &[],
        ) == json!(true)
    });
    keys.is_seen("Enter");
    keys.back("back");
    keys.press(ENTER);
    keys.arrived("Bench");

    // A square is given another fabric.
    let fabric = || walk.face("front")[43]["print"].clone();
    assert_ne!(fabric(), json!(1));
    keys.on("tab-faces");
    keys.press(ENTER);
    keys.arrived("Faces");
    keys.on("face-0-0");
    keys.press(PAGE_DOWN);
    keys.press(RIGHT);
    keys.press(SPACE);
    keys.on("choose-print");
    keys.press(ENTER);
    keys.is_held_by_the_sheet();
    keys.press(ESCAPE);
    keys.is_at("choose-print");
    keys.press(ENTER);
    keys.on("print-1");
    keys.press(ENTER);
    walk.window
        .wait_until("the square has it", |_| fabric() == json!(1));
    keys.is_at("face-7-1");
    keys.is_seen("the fabric");
    keys.back("back");
    keys.press(ENTER);
    keys.arrived("Your throws");

    // A long page is read from its foot.
    keys.on("new-throw");
    keys.press(ENTER);
    for page in 2..=4 {
        keys.on("next-page");
        keys.press(ENTER);
        walk.window.wait_text(&format!("{page} / 4"));
    }
    keys.on("begin");
    let top = "return document.getElementById('main').scrollTop";
    assert_eq!(walk.window.run(top, &[]), json!(0));
    keys.press(PAGE_DOWN);
    walk.window.wait_until("the page has moved", |w| {
        w.run(top, &[]).as_f64() > Some(100.0)
    });
}

#[test]
fn nothing_moves_for_those_who_want_no_motion() {
    let data = tempfile::tempdir().unwrap();
    let mut walk = Walk::start(data.path());
    let asked = "return matchMedia('(prefers-reduced-motion: reduce)').matches";
    let moving = "const long = (text) => text.split(',').some((t) => parseFloat(t) * (t.trim().endsWith('ms') ? 1 : 1000) > 10);
        const found = document.getAnimations().filter((a) => a.effect.getComputedTiming().endTime > 10).map((a) => a.constructor.name);
        for (const e of document.querySelectorAll('*')) for (const part of [null, '::before', '::after', '::backdrop']) {
            const style = getComputedStyle(e, part);
            if (long(style.transitionDuration) || (style.animationName !== 'none' && long(style.animationDuration)) || style.scrollBehavior === 'smooth')
                found.push(`${e.tagName}.${e.className} ${part ?? ''}`);
        }
        return found;";
    // With motion there is some to be found: the measure measures.
    assert_eq!(walk.window.run(asked, &[]), json!(false));
    walk.window.wait_text("A throw from worn jeans");
    let found = walk.window.run(moving, &[]);
    assert!(!found.as_array().unwrap().is_empty());

    walk.window.reopen_still();
    assert_eq!(walk.window.run(asked, &[]), json!(true));
    walk.window.wait_text("A throw from worn jeans");
    let mut screens = 0;
    let mut still = |walk: &Walk, at: &str| {
        assert_eq!(walk.window.run(moving, &[]), json!([]), "moves on {at}");
        screens += 1;
    };
    still(&walk, "shelf");
    walk.tap("open-demo");
    walk.sees("card-title", "Cut a square");
    still(&walk, "work");
    walk.tap("tick");
    still(&walk, "work, ticked");
    walk.tap("note");
    walk.window.select("dialog:modal");
    still(&walk, "sheet");
    walk.tap("close-sheet");
    for tab in ["faces", "bench", "plan", "history"] {
        walk.tap(&format!("tab-{tab}"));
        walk.window
            .select(&format!("[data-testid=tab-{tab}][aria-current]"));
        still(&walk, tab);
    }
    walk.tap("tab-faces");
    walk.tap("lay-out");
    walk.tap("look-for-layouts");
    walk.window.select("[data-testid=layouts-said]");
    still(&walk, "layouts");
    assert_eq!(screens, 9);
}

/// Put something in place of the engine's wake lock that writes down what is asked of it.
fn lock(walk: &Walk, kind: &str) {
    let script = "const kind = arguments[0];
        window.asked = [];
        const held = () => ({ released: false, release() { this.released = true; window.asked.push('release'); return Promise.resolve(); } });
        const request = (what) => { window.asked.push(what);
            return kind === 'refused' ? Promise.reject(new DOMException('no', 'NotAllowedError')) : Promise.resolve(held()); };
        Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: kind === 'none' ? undefined : { request } });";
    walk.window.run(script, &[json!(kind)]);
}

#[test]
fn the_screen_is_kept_awake_at_the_step_where_it_can_be_and_nothing_is_said_of_it() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.tap("open-demo");
    walk.sees("card-title", "Cut a square");
    let asked = |w: &lapwork_tests::window::Window| w.run("return window.asked", &[]);
    let mut texts = BTreeSet::new();
    for (kind, come, gone) in [
        ("held", json!(["screen"]), json!(["screen", "release"])),
        ("refused", json!(["screen"]), json!(["screen"])),
        ("none", json!([]), json!([])),
    ] {
        walk.tap("tab-plan");
        walk.window.select("[data-testid=tab-plan][aria-current]");
        lock(&walk, kind);
        walk.tap("tab-work");
        walk.sees("card-title", "Cut a square");
        walk.window
            .wait_until(&format!("{kind}: asked {come}"), |w| asked(w) == come);
        // Coming back to it while the lock is held asks for no second one.
        walk.window
            .run("document.dispatchEvent(new Event('visibilitychange'))", &[]);
        std::thread::sleep(Duration::from_millis(100));
        let again = if kind == "refused" {
            json!(["screen", "screen"])
        } else {
            come
        };
        walk.window
            .wait_until(&format!("{kind}: asked {again}"), |w| asked(w) == again);
        let problem = "return document.querySelector('[data-testid=problem]') === null";
        assert_eq!(walk.window.run(problem, &[]), json!(true), "{kind}");
        texts.insert(walk.window.text());
        walk.tap("tab-plan");
        walk.window.select("[data-testid=tab-plan][aria-current]");
        if kind != "refused" {
            walk.window
                .wait_until(&format!("{kind}: let go"), |w| asked(w) == gone);
        }
    }
    // With and without it, to the letter the same: no promise is made.
    assert_eq!(texts.len(), 1, "{texts:?}");
}
