//! Every kind of step fits one screen of a phone: its picture, what it is, the first sentence of
//! how it is done, the large button and the button that reads it aloud lie wholly in the window, in
//! letters of normal size.

use lapwork_core::throw::tasks::Task;
use lapwork_tests::walk::{Walk, for_all};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

/// The windows of phones.
const PHONES: [(u32, u32); 2] = [(390, 844), (360, 740)];

/// What must be seen at once: a name for it, and what it is.
const AT_ONCE: [(&str, &str); 5] = [
    ("picture", "article svg[role=img]"),
    ("title", "#step-title"),
    ("first sentence", "[data-first], .how li"),
    ("large button", ".foot button.big"),
    ("read aloud", "[data-testid=read-aloud]"),
];

/// Gives the page a voice for each language: a screen nobody sees has none.
const VOICES: &str = "Object.defineProperty(window, 'speechSynthesis', {
        configurable: true,
        value: {
            getVoices: () => ['en', 'de'].map((lang) => ({ lang, localService: true, default: true })),
            speak() {},
            cancel() {},
        },
    });";

/// What is not wholly in the window: cut off by it or by what scrolls, or laid under a bar.
fn hidden(walk: &Walk) -> Vec<String> {
    let script = "return arguments[0].flatMap(([name, selector]) => {
            const e = document.querySelector(selector);
            if (!e) return [`${name}: not there`];
            let { left, top, right, bottom } = e.getBoundingClientRect();
            if (right - left < 40 || bottom - top < 16) return [`${name}: ${right - left} × ${bottom - top}`];
            const over = [];
            const within = (box, what) => {
                if (left < box.left - 1 || top < box.top - 1 || right > box.right + 1 || bottom > box.bottom + 1)
                    over.push(`${name}: ${[left, top, right, bottom].map(Math.round)} is outside ${what} ${[box.left, box.top, box.right, box.bottom].map(Math.round)}`);
            };
            within({ left: 0, top: 0, right: innerWidth, bottom: innerHeight }, 'the window');
            for (let up = e.parentElement; up; up = up.parentElement)
                if (getComputedStyle(up).overflowY !== 'visible') within(up.getBoundingClientRect(), up.id || up.tagName);
            return over;
        });";
    let output = walk.window.run(script, &[json!(AT_ONCE)]);
    let lines = output.as_array().cloned().unwrap_or_default();
    let line = |v: &Value| v.as_str().unwrap_or_default().to_string();
    lines.iter().map(line).collect()
}

/// How high the picture is drawn at the moment.
fn picture_height(walk: &Walk) -> f64 {
    let script = "return document.querySelector('article svg[role=img]')?.getBoundingClientRect().height ?? 0";
    walk.window.run(script, &[]).as_f64().unwrap_or_default()
}

struct Fitting<'a> {
    walk: &'a Walk,
    id: String,
    seen: BTreeSet<String>,
    faults: Vec<String>,
    least: f64,
}

impl Fitting<'_> {
    fn act(&self, action: Value) {
        let request = json!({ "request": "act", "action": action });
        let output = self
            .walk
            .window
            .call("act", json!({ "id": self.id, "request": request }));
        output.unwrap_or_else(|why| panic!("{action}: {why}"));
    }

    fn card(&self) -> Value {
        let query = json!({ "see": "work", "station": null, "batch": null });
        let output = self
            .walk
            .window
            .call("view", json!({ "id": self.id, "query": query }));
        output.expect("a view")["view"]["card"].take()
    }

    /// The step that is in hand is on the screen.
    fn show(&self, title: &str) {
        self.walk.tap("tab-plan");
        self.walk
            .window
            .select("[data-testid=tab-plan][aria-current]");
        self.walk.tap("tab-work");
        self.walk.sees("card-title", title);
    }

    /// Go from step to step to the end, and measure each kind of step once.
    fn walk_to_the_end(&mut self, of: &str) {
        for _ in 0..200 {
            let card = self.card();
            let (Some(task), Some(kind)) = (card["task"].as_str(), card["kind"].as_str()) else {
                return;
            };
            let open = if card["open"].is_null() {
                ""
            } else {
                ", to be opened first"
            };
            // A lap is stitched unlike a seam.
            let way = match task {
                "stitch" => of.split(", ").last().unwrap_or_default(),
                _ => "",
            };
            let name = format!("{task} {kind} {way}{open}");
            let name = name.trim().to_string();
            if self.seen.insert(name.clone()) {
                self.show(card["title"].as_str().expect("a title"));
                for (width, height) in PHONES {
                    self.walk.window.size(width, height);
                    let found = hidden(self.walk);
                    let found = found
                        .iter()
                        .map(|line| format!("{of}, {width} × {height}, {name}: {line}"));
                    self.faults.extend(found);
                    if let Some(folder) = lapwork_tests::access::pictures() {
                        let file = format!("{of}-{width}-{name}.png").replace([' ', ','], "-");
                        self.walk.window.picture(&folder.join(&file));
                        // What lies below the first screen, too.
                        let scroll = "document.getElementById('main').scrollTop = arguments[0];";
                        self.walk.window.run(scroll, &[json!(560)]);
                        self.walk
                            .window
                            .picture(&folder.join(format!("below-{file}")));
                        self.walk.window.run(scroll, &[json!(0)]);
                    }
                    self.least = self.least.min(picture_height(self.walk));
                }
            }
            self.act(card["ticks"][for_all(&card)]["action"].clone());
        }
        panic!("no end to {of}");
    }
}

/// A throw of three by two squares, with fabric of its own to be cut on both faces of one square.
fn begin(walk: &Walk, name: &str, joining: &str, stitch: &Value) -> String {
    let (cloth, denim) = (
        json!({ "name": "Blue checks", "colour": "#335577", "texture": "check", "stock": null, "uncut": true }),
        json!({ "name": "Old jeans", "colour": "#2b4472" }),
    );
    let plan = serde_json::to_value(lapwork_core::plan::Plan {
        across: 5,
        down: 4,
        ..lapwork_core::plan::Plan::default()
    });
    let mut plan = plan.expect("a plan");
    plan["joining"] = json!(joining);
    plan["stitch"] = stitch.clone();
    let action =
        json!({ "do": "begin", "name": name, "plan": plan, "prints": [cloth], "denims": [denim] });
    let pile = json!([{ "do": "add-cloth", "width": 500_000_000, "length": 500_000_000, 
        "makes": { "for": "fabric", "print": 0 }, "name": "Checks" }]);
    let command = json!({ "command": "begin", "action": action, "pile": pile });
    let output = walk
        .window
        .call("shelf_command", json!({ "command": command }));
    let output = output.unwrap_or_else(|why| panic!("{why}"));
    output["id"].as_str().expect("a throw").to_string()
}

/// A throw with squares to be pieced of two halves: the kept file of such.
fn bring_halves(walk: &Walk) -> String {
    let kept = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("kept/halves-2.jsonl");
    std::fs::copy(kept, walk.window.brought()).expect("a file to be brought");
    let call = |command: &str, given: Value| {
        let output = walk.window.call(command, given);
        output.unwrap_or_else(|why| panic!("{command}: {why}"))
    };
    let found = call("import", json!({}));
    let given = json!({ "choice": { "choice": "add" }, "file": found["file"] });
    let taken = call("decide_import", given);
    taken["id"].as_str().expect("a throw").to_string()
}

/// Walk a throw of each way of joining to its end; gives the kinds of steps that were seen.
fn walk_all(language: &str, ruler: Value, stitch: &Value) -> (BTreeSet<String>, Vec<String>, f64) {
    let data = tempfile::tempdir().unwrap();
    let mut walk = Walk::start(data.path());
    let mut prefs = walk.window.call("hello", json!({})).expect("a greeting")["prefs"].take();
    prefs["language"] = json!(language);
    prefs["ruler"]["system"] = ruler;
    let output = walk.window.call("set_prefs", json!({ "prefs": prefs }));
    output.unwrap_or_else(|why| panic!("{why}"));
    let mut throws: BTreeMap<&str, String> = ["lapped", "seamed", "exposed"]
        .map(|joining| (joining, begin(&walk, joining, joining, stitch)))
        .into();
    let halves = bring_halves(&walk);
    let request = json!({ "request": "act", "action": { "do": "rename", "name": "of halves" } });
    let named = walk
        .window
        .call("act", json!({ "id": halves, "request": request }));
    named.unwrap_or_else(|why| panic!("{why}"));
    throws.insert("of halves", halves);
    walk.window.reopen();
    walk.window.run(VOICES, &[]);
    let (mut seen, mut faults, mut least) = (BTreeSet::new(), Vec::new(), f64::MAX);
    for (joining, id) in throws {
        walk.window.select("[data-testid=throw-row]");
        walk.window.click("button", &format!("~{joining}"));
        walk.window.select("[data-testid=of-throw]");
        let mut fitting = Fitting {
            walk: &walk,
            id,
            seen,
            faults,
            least,
        };
        let square = json!([[1, 1, 1, 1]]);
        for face in ["front", "back"] {
            fitting.act(json!({ "do": "set-face", "pieces": square, "face": face, "print": 0 }));
        }
        fitting.walk_to_the_end(&format!("{language}, {joining}"));
        // A square that is sewn in is patched, and another is replaced.
        if joining == "lapped" {
            fitting.act(json!({ "do": "patch", "piece": [0, 0, 1, 1], "face": "front", "print": 0, "why": "flaw" }));
            fitting.act(json!({ "do": "replace", "piece": [3, 4, 1, 1], "why": "scorched", "spare": false }));
            fitting.walk_to_the_end(&format!("{language}, {joining}"));
        }
        (seen, faults, least) = (fitting.seen, fitting.faults, fitting.least);
        walk.tap("back");
    }
    (seen, faults, least)
}

#[test]
fn every_kind_of_step_fits_one_screen_of_a_phone() {
    let mut all = Vec::new();
    let [twin, rows] =
        ["twin", "two-rows"].map(|kind| json!({ "kind": kind, "spacing": 4_000_000 }));
    for (language, ruler, stitch) in [("en", json!("inch"), twin), ("de", json!("metric"), rows)] {
        let (seen, faults, least) = walk_all(language, ruler, &stitch);
        println!(
            "{language}: {} kinds of steps, {} faults, the smallest picture is {least} px high",
            seen.len(),
            faults.len()
        );
        for task in Task::ALL {
            let named = |name: &String| name.split(' ').next() == Some(task.key());
            assert!(
                seen.iter().any(named),
                "no step was seen of {}: {seen:?}",
                task.key()
            );
        }
        assert!(
            seen.iter().any(|name| name.contains("opened first")),
            "{seen:?}"
        );
        assert!(least >= 96.0, "a picture is only {least} px high");
        all.extend(faults);
    }
    assert!(all.is_empty(), "{} faults:\n{}", all.len(), all.join("\n"));
}
