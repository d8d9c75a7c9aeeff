//! The window as those meet it who see little, press keys, or want large letters.
//!
//! [`Tour`] comes by every screen and sheet there is; [`Seen`] measures what is shown with a
//! script of our own (`seen.js`); [`Audit`] has axe-core read the page over, from where npm
//! has put it. The tour finds its way by marks alone, so that it can be taken in any language.

use crate::walk::Walk;
use lapwork_core::command::Command;
use lapwork_core::log::journal::Journal;
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

const SEEN: &str = include_str!("seen.js");

/// The rules of axe-core that are gone by: WCAG 2.0, 2.1 and 2.2, A and AA, and what it
/// calls best practice. None of them is switched off.
const TAGS: [&str; 6] = [
    "wcag2a",
    "wcag2aa",
    "wcag21a",
    "wcag21aa",
    "wcag22aa",
    "best-practice",
];

/// What was measured on a screen; a line for each fault.
#[derive(Debug, Clone)]
pub struct Seen {
    /// Hit areas less than 48 × 48 px.
    pub targets: Vec<String>,
    /// Letters that stand out from their ground less than 4.5 : 1.
    pub contrast: Vec<String>,
    /// Letters cut off.
    pub cut: Vec<String>,
    /// Letters over other letters.
    pub over: Vec<String>,
    /// What scrolls sideways.
    pub sideways: Vec<String>,
    /// Large buttons not to be had without scrolling.
    pub hidden: Vec<String>,
    /// Grounds that could not be told.
    pub unclear: Vec<String>,
    /// How many targets, and how many with letters.
    pub counted: [u64; 2],
}

fn lines(value: &Value) -> Vec<String> {
    let all = value.as_array().map(Vec::as_slice).unwrap_or_default();
    let text = |v: &Value| v.as_str().unwrap_or_default().to_string();
    all.iter().map(text).collect()
}

impl Seen {
    /// Measure what is shown now.
    pub fn of(walk: &Walk) -> Seen {
        settled(walk);
        let found = walk.window.run(SEEN, &[]);
        let counted = |n: usize| found["counted"][n].as_u64().expect("a count");
        Seen {
            targets: lines(&found["targets"]),
            contrast: lines(&found["contrast"]),
            cut: lines(&found["cut"]),
            over: lines(&found["over"]),
            sideways: lines(&found["sideways"]),
            hidden: lines(&found["hidden"]),
            unclear: lines(&found["unclear"]),
            counted: [counted(0), counted(1)],
        }
    }
}

/// What axe-core found on a screen.
#[derive(Debug, Clone)]
pub struct Audit {
    /// Rules that something on the screen was held against and that held.
    pub passed: BTreeSet<String>,
    /// Rules with nothing on the screen to be held against.
    pub idle: BTreeSet<String>,
    /// What does not hold: rule, element, why.
    pub violations: Vec<String>,
    /// What it could not decide: rule, element, why.
    pub undecided: Vec<String>,
    /// How many times an element was held against a rule.
    pub elements: u64,
}

/// Wait until no colour is on its way to another.
fn settled(walk: &Walk) {
    let script = "return document.getAnimations().every((a) =>
        a.playState !== 'running' || a.effect.getComputedTiming().endTime === Infinity)";
    walk.window.wait_until("the colours are settled", |w| {
        w.run(script, &[]) == json!(true)
    });
}

impl Audit {
    /// Bring axe-core into the page, where it stays until the window goes.
    pub fn begin(walk: &Walk) {
        let file = concat!(
            env!("CARGO_MANIFEST_DIR"),
            "/../ui/node_modules/axe-core/axe.min.js"
        );
        let source = fs::read_to_string(file);
        let source = source.unwrap_or_else(|why| panic!("{file} (npm ci in ui/): {why}"));
        walk.window.run(&source, &[]);
    }

    /// Have the page as it is now read over: by all the rules, or, where only its colours are
    /// others than when that was done, by those of colour.
    pub fn of(walk: &Walk, colours: bool) -> Audit {
        settled(walk);
        let by = if colours {
            json!({ "type": "rule", "values": ["color-contrast", "link-in-text-block"] })
        } else {
            json!({ "type": "tag", "values": TAGS })
        };
        let script = "const [by, done] = arguments;
            const lines = (found) => found.flatMap(({ id, nodes }) => nodes.map((node) =>
                `${id}: ${node.html.slice(0, 160)} — ${[...node.any, ...node.all, ...node.none].map((c) => c.message).join('; ').slice(0, 300)}`));
            axe.run(document, {
                runOnly: by,
                rules: by.type === 'tag' ? { 'target-size': { enabled: true } } : {},
                iframes: false,
            }).then((told) => done({
                passed: told.passes.map((r) => r.id),
                idle: told.inapplicable.map((r) => r.id),
                violations: lines(told.violations),
                undecided: lines(told.incomplete),
                elements: [told.passes, told.violations, told.incomplete].flat().reduce((n, r) => n + r.nodes.length, 0),
            }), (why) => done({ failed: String(why) }));";
        let output = walk.window.run_and_wait(script, &[by]);
        assert_eq!(output["failed"], Value::Null, "axe-core failed");
        Audit {
            passed: lines(&output["passed"]).into_iter().collect(),
            idle: lines(&output["idle"]).into_iter().collect(),
            violations: lines(&output["violations"]),
            undecided: lines(&output["undecided"]),
            elements: output["elements"].as_u64().expect("a count"),
        }
    }
}

/// A way past every screen and sheet; what is to be done at each is handed in.
pub struct Tour<'a> {
    walk: &'a Walk,
    photo: &'a [u8],
    at: &'a mut dyn FnMut(&Walk, &str),
}

impl Tour<'_> {
    /// Go all the way, from a folder with nothing in it, with a photo for the story.
    pub fn take(walk: &Walk, photo: &[u8], at: &mut dyn FnMut(&Walk, &str)) {
        let mut tour = Tour { walk, photo, at };
        tour.beginning();
        walk.tap("open-demo");
        tour.shows("[data-testid=tick]");
        tour.work();
        tour.faces();
        tour.bench();
        tour.plan();
        tour.measuring();
        tour.pile();
        tour.laying_out();
        tour.story();
        tour.shelf();
        tour.finished();
    }

    fn see(&mut self, name: &str) {
        (self.at)(self.walk, name);
    }

    fn shows(&self, selector: &str) {
        self.walk.window.select(selector);
    }

    fn gone(&self, selector: &str) {
        let script = "return document.querySelector(arguments[0]) === null";
        self.walk.window.wait_until(&format!("no {selector}"), |w| {
            w.run(script, &[json!(selector)]) == json!(true)
        });
    }

    /// Open a sheet by its button, look at it, and close it.
    fn sheet(&mut self, button: &str, name: &str) {
        self.open(button);
        self.see(name);
        self.close();
    }

    fn open(&self, button: &str) {
        self.walk.tap(button);
        self.shows("dialog:modal");
    }

    fn close(&self) {
        self.walk.tap("close-sheet");
        self.gone("dialog:modal");
    }

    /// Go to a screen as the window's own back and forth do.
    fn go(&self, place: Value) {
        let script = "document.activeElement?.blur();
            const { depth, tab, id } = history.state;
            const spot = { place: arguments[0], id, depth: depth + 1, tab };
            history.pushState(spot, '');
            dispatchEvent(new PopStateEvent('popstate', { state: spot }));";
        self.walk.window.run(script, std::slice::from_ref(&place));
        self.arrived(&place.to_string());
    }

    fn back(&self) {
        self.walk
            .window
            .run("document.activeElement?.blur(); history.back()", &[]);
        self.arrived("back");
    }

    fn arrived(&self, place: &str) {
        let script = "return document.activeElement?.tagName";
        self.walk
            .window
            .wait_until(&format!("{place} is there"), |w| {
                w.run(script, &[]) == json!("H1")
            });
    }

    fn focused(&self, id: &str) {
        let script = "return document.activeElement?.id";
        self.walk
            .window
            .wait_until(&format!("the focus is on {id}"), |w| {
                w.run(script, &[]) == json!(id)
            });
    }

    fn tab(&self, name: &str) {
        self.walk.tap(&format!("tab-{name}"));
        self.shows(&format!("[data-testid=tab-{name}][aria-current]"));
        self.arrived(name);
    }

    /// The nth that fits a selector, clicked where it stands.
    fn click(&self, selector: &str, nth: usize) {
        self.shows(selector);
        let script = "document.querySelectorAll(arguments[0])[arguments[1]].click()";
        self.walk.window.run(script, &[json!(selector), json!(nth)]);
    }

    fn act(&self, action: Value) {
        let request = json!({ "request": "act", "action": action });
        let asked = json!({ "id": self.walk.id(), "request": request });
        self.walk.window.call("act", asked).expect("allowed");
    }

    fn beginning(&mut self) {
        self.shows("[data-testid=open-demo]");
        self.see("shelf, empty");
        self.walk.tap("settings");
        self.shows("[data-testid=folder]");
        self.see("settings");
        self.walk.tap("back");
        self.walk.tap("new-throw");
        for page in 1..=4 {
            self.arrived("a page");
            if page == 1 {
                self.click("[data-testid=find-grid]", 0);
            }
            self.see(&format!("new throw, page {page}"));
            if page < 4 {
                self.walk.window.run("document.activeElement?.blur()", &[]);
                self.walk.tap("next-page");
            }
        }
        self.walk.tap("back");
    }

    fn work(&mut self) {
        self.see("work, cut");
        self.sheet("units", "sheet: units");
        self.sheet("note", "sheet: note");
        let offers = self.walk.window.run(
            "return [...document.querySelectorAll('[data-testid^=offer-]')].map((e) => e.dataset.testid)",
            &[],
        );
        for offer in lines(&offers).iter().skip(1) {
            self.walk.tap(offer);
            // The focus goes to the step taken up.
            self.focused("step-title");
            self.see(&format!("work, {}", offer.trim_start_matches("offer-")));
        }
        self.walk.tap("station-iron");
        self.shows("[data-testid=station-iron][aria-pressed=true]");
        self.see("work, at the iron");
        self.walk.tap("station-anywhere");
        self.shows("[data-testid=station-anywhere][aria-pressed=true]");
    }

    fn faces(&mut self) {
        self.tab("faces");
        self.see("faces, front");
        self.walk.tap("field-face-back");
        self.shows(".face.back");
        self.see("faces, back");
        self.walk.tap("face-7-0");
        self.walk.tap("face-7-1");
        self.shows("[data-testid=choose-print]");
        self.see("faces, two chosen");
        self.sheet("choose-print", "sheet: prints");
        self.sheet("move-or-pin", "sheet: move or pin");
        self.walk.tap("choose-none");
        self.sheet("edit-cloth", "sheet: prints and denim");
        self.walk.tap("open-floor");
        self.shows("[data-testid=floor-cell]");
        self.walk.tap("floor-next");
        self.see("floor");
        self.back();
        self.go(json!({ "at": "covering" }));
        self.see("covering");
        self.back();
    }

    fn bench(&mut self) {
        self.tab("bench");
        self.see("bench");
        self.walk.tap("cell-0-2");
        self.shows("dialog [data-testid=piece-card]");
        self.see("sheet: piece");
        self.close();
    }

    fn plan(&mut self) {
        self.tab("plan");
        self.see("plan");
        self.walk.types("field-lap", "3/8 in");
        self.shows("[data-testid=apply-plan]");
        self.see("plan, changed");
        self.walk.types("field-lap", "a thumb");
        self.shows(".fault");
        self.see("plan, misread");
        self.walk.tap("plan-as-is");
        self.gone(".fault");
        self.tab("history");
        self.see("history");
    }

    fn measuring(&mut self) {
        let four = json!([0, 4, 2, 2]);
        self.tab("work");
        self.go(json!({ "at": "measure", "piece": four }));
        self.see("measure");
        self.walk.keys(&["9", "½", "next", "9", "⅝"]);
        self.shows("[data-testid=keep]:not([aria-disabled=true])");
        self.see("measure, read");
        self.walk.tap("keep");
        self.gone("[data-testid=keep]");
        self.see("measure, kept");
        self.walk.tap("measure-outline");
        self.shows("[data-testid=field-top]");
        self.walk.types("field-top", "a thumb");
        self.shows(".fault");
        self.see("measure, sides");
        self.go(json!({ "at": "trim" }));
        self.see("trim");
        self.go(json!({ "at": "off", "piece": four, "why": null }));
        self.see("off");
        self.go(json!({ "at": "off", "piece": [1, 0, 1, 1], "why": "scorched" }));
        self.see("off, scorched");
        self.go(json!({ "at": "hold" }));
        self.walk.types("field-width", "54");
        self.walk.types("field-height", "72");
        self.shows("[data-testid=hold-row]");
        self.see("hold");
        self.go(json!({ "at": "whole" }));
        self.walk.types("field-width", "27 1/2 in");
        self.walk.types("field-height", "36 1/2 in");
        self.shows(".fault");
        self.see("whole, too early");
        self.tab_home();
    }

    /// Back to the work, from however far.
    fn tab_home(&self) {
        self.go(json!({ "at": "work" }));
        self.shows("[data-testid=tab-work]");
    }

    fn pile(&mut self) {
        self.go(json!({ "at": "pile" }));
        self.open("add-heap");
        self.see("sheet: heap, a garment");
        self.walk.tap("heap-cloth");
        self.walk.types("field-heap-width", "wide");
        self.walk.tap("make-0");
        self.walk.tap("add-cloth");
        self.shows("dialog .fault");
        self.see("sheet: heap, cloth misread");
        self.walk.tap("heap-pack");
        self.walk.types("field-heap-side", "5");
        self.walk.types("field-heap-count", "12");
        self.see("sheet: heap, a pack");
        self.walk.tap("add-pack");
        self.gone("dialog:modal");
        self.shows("[data-testid=heap-3]");
        self.see("pile");
        self.sheet("describe-cloth-1", "sheet: cloth");
        self.sheet("pile-piece-3-0", "sheet: count a pack");
        self.go(json!({ "at": "cutting", "n": 1, "index": 0 }));
        self.see("cutting, counted");
        self.act(json!({ "do": "add-garment", "kind": "mens-jeans", "size": "large", "makes": { "for": "denim" }, "name": "Patched" }));
        self.go(json!({ "at": "cutting", "n": 4, "index": 0 }));
        self.walk.tap("cut-line-0");
        self.see("cutting, a line done");
        self.walk.tap("not-all-came");
        self.see("cutting, counting");
        self.walk.tap("to-measuring");
        self.walk.tap("add-zone");
        self.shows("[data-testid=zone-0]");
        self.see("cutting, measured");
        self.go(json!({ "at": "gather" }));
        self.walk.tap("gather-0");
        self.see("gather");
        self.go(json!({ "at": "scraps" }));
        self.see("scraps");
        self.sheet("keep-scrap", "sheet: scrap");
        self.tab_home();
    }

    fn laying_out(&mut self) {
        self.go(json!({ "at": "layouts" }));
        self.see("layouts, wishes");
        self.walk.tap("look-for-layouts");
        self.shows("[data-testid=layouts-progress]");
        self.see("layouts, looking");
        self.walk.tap("layout-B");
        self.shows("[data-testid=take-layout]");
        self.see("layouts, one chosen");
        self.tab_home();
    }

    fn story(&mut self) {
        fs::write(self.walk.window.brought(), self.photo).expect("written");
        self.go(json!({ "at": "story" }));
        self.walk.tap("story-photo");
        self.shows("dialog [data-testid=photo]");
        self.see("sheet: photo");
        self.walk.types("note-text", "On the sill");
        self.walk.tap("note-keep");
        self.gone("dialog:modal");
        self.shows("figure");
        self.see("story");
        self.go(json!({ "at": "hand-on" }));
        self.walk.tap("hand-story-0");
        self.shows("[data-testid=handed]");
        self.see("hand on, and print");
        self.walk.tap("print");
        self.gone("[data-testid=print-stop]");
        self.tab_home();
    }

    fn shelf(&mut self) {
        let file = self
            .walk
            .window
            .data()
            .join("throws")
            .join(self.walk.id())
            .join("throw.jsonl");
        let bytes = fs::read(file).expect("the throw's file");
        let mut copy = Journal::read(&bytes).expect("a record").journal;
        let renamed = |name: &str| Command::Rename { name: name.into() };
        let at = copy.entries().map(|(e, _)| e.at).max().expect("entries") + 1_000;
        let entry = copy.propose(&renamed("Sill throw"), at).expect("allowed");
        copy.accept(entry).expect("accepted");
        self.act(json!({ "do": "rename", "name": "Bay throw" }));
        self.walk.tap("back");
        // From however deep: the shelf, where there are throws.
        self.walk.window.run(
            "const spot = { place: { at: 'shelf' }, id: null, depth: 0, tab: null };
             history.pushState(spot, ''); dispatchEvent(new PopStateEvent('popstate', { state: spot }));",
            &[],
        );
        self.shows("[data-testid=throw-row]");
        self.see("shelf");
        fs::write(self.walk.window.brought(), "Dear diary,\n").expect("written");
        self.walk.tap("bring");
        self.shows("[data-testid=problem]");
        self.see("a problem told");
        self.walk.tap("dismiss");
        fs::write(self.walk.window.brought(), copy.text()).expect("written");
        self.open("bring");
        self.see("sheet: a copy brought");
        self.close();
        self.open("throw-menu");
        self.see("sheet: a throw");
        self.walk.tap("rename");
        self.shows("dialog [data-testid=field-name]");
        self.see("sheet: rename");
        self.close();
        // One put away, one deleted.
        for request in ["archive", "delete"] {
            self.walk.tap("new-throw");
            self.arrived("a page");
            for _ in 0..3 {
                self.walk.tap("next-page");
            }
            self.walk.tap("begin");
            self.shows("[data-testid=tick]");
            self.walk.tap("back");
            self.shows("[data-testid=throw-row]");
            self.open("throw-menu");
            self.walk.tap(request);
            self.shows("[data-testid=second]");
        }
        for fold in ["put-away", "deleted"] {
            self.walk.tap(fold);
        }
        self.see("shelf, put away and deleted");
        self.sheet("erase", "sheet: erase");
    }

    fn finished(&mut self) {
        self.walk.tap("new-throw");
        self.arrived("a page");
        self.walk.types("field-across", "2");
        self.walk.types("field-down", "1");
        for _ in 0..3 {
            self.walk.tap("next-page");
        }
        self.walk.tap("begin");
        self.walk.tap("ask-bare");
        self.shows("[data-testid=tick]");
        for _ in 0..60 {
            let next = self
                .walk
                .view(json!({ "see": "work", "station": null, "batch": null }));
            let Some(tick) = next["card"]["ticks"].as_array().and_then(|t| t.last()) else {
                break;
            };
            self.act(tick["action"].clone());
        }
        self.tab("plan");
        self.tab("work");
        self.shows("[data-testid=make-again]");
        self.see("work, finished");
        self.go(json!({ "at": "whole" }));
        self.walk.types("field-width", "9 1/2 in");
        self.walk.types("field-height", "5 in");
        self.shows("[data-testid=keep]:not([aria-disabled=true])");
        self.see("whole");
        self.tab_home();
        self.walk.tap("make-again");
        self.arrived("a page");
        self.see("new throw, after another");
        self.walk.tap("back");
    }
}

/// Where pictures go, if they are wanted: `LAPWORK_PICTURES`.
pub fn pictures() -> Option<PathBuf> {
    std::env::var_os("LAPWORK_PICTURES").map(|folder| Path::new(&folder).to_path_buf())
}
