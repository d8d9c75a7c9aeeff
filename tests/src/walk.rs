//! A maker's hand in the window: taps by the marks the screens carry (`data-testid`).

use crate::driver::Element;
use crate::window::Window;
use serde_json::{Value, json};
use std::path::Path;

/// What a narrow window keeps in the sheet of the throw, and its mark there; the units lie
/// open in the sheet.
const BEHIND: [(&str, &str); 3] = [
    ("redo", "of-throw-redo"),
    ("units", ""),
    ("settings", "of-throw-settings"),
];

/// Which of a card's ticks, as the core sends them, is the one for most pieces.
pub fn for_all(card: &Value) -> usize {
    let pieces = |action: &Value| match action["do"].as_str() {
        Some("tick" | "tick-sitting") => action["pieces"].as_array().map_or(0, Vec::len) as u64,
        Some("tick-next") => action["count"].as_u64().unwrap_or(0),
        _ => 0,
    };
    let ticks = card["ticks"].as_array().map_or(&[][..], Vec::as_slice);
    let all = (0..ticks.len()).max_by_key(|n| pieces(&ticks[*n]["action"]));
    all.expect("a tick")
}

/// The mark that a card's tick carries in the window: cutting and measuring have the large button.
fn mark(card: &Value, n: usize) -> String {
    let apart = !card["cut_next"].is_null() || card["measure_first"] == json!(true);
    match n {
        0 => "tick".to_string(),
        _ if apart => format!("tick-{n}"),
        _ => format!("tick-{}", n + 1),
    }
}

/// A window with a maker at it.
pub struct Walk {
    /// The window itself.
    pub window: Window,
}

impl Walk {
    /// Open the window on a data folder.
    pub fn start(data: &Path) -> Walk {
        Walk {
            window: Window::open(data),
        }
    }

    /// Tap what carries this mark, once it can be tapped. What a narrow window keeps in the
    /// sheet of the throw is tapped there.
    pub fn tap(&self, mark: &str) {
        self.tap_by(mark, Window::click_on);
    }

    /// The same, pressed as long as a finger does.
    pub fn press(&self, mark: &str) {
        self.tap_by(mark, Window::press_on);
    }

    fn tap_by(&self, mark: &str, click: impl Fn(&Window, &Element)) {
        let inside = BEHIND.iter().find(|(outside, _)| *outside == mark);
        if let Some((_, inside)) = inside.filter(|_| self.is_behind(mark)) {
            self.tap("of-throw");
            if !inside.is_empty() {
                self.tap(inside);
            }
            return;
        }
        let selector = format!("[data-testid=\"{mark}\"]:not([disabled])");
        let ready = |w: &Window| {
            let found = w.run(
                "const e = document.querySelector(arguments[0]);
                 return !!e && e.getAttribute('aria-disabled') !== 'true' && e.getAttribute('aria-busy') !== 'true';",
                &[json!(selector)],
            );
            found == json!(true)
        };
        self.window
            .wait_until(&format!("“{mark}” can be tapped"), ready);
        let element = self.window.select(&selector);
        self.window.run(
            "arguments[0].scrollIntoView({ block: 'center' })",
            &[element.argument()],
        );
        click(&self.window, &element);
    }

    /// Whether what carries this mark is not shown in the bar, while the throw's sheet can be
    /// opened there.
    fn is_behind(&self, mark: &str) -> bool {
        let script = "const shown = (m) => !!document.querySelector(`[data-testid=\"${m}\"]`)?.getClientRects().length;
            return !shown(arguments[0]) && shown('of-throw') && !document.querySelector('dialog:modal');";
        self.window.run(script, &[json!(mark)]) == json!(true)
    }

    /// The words of what carries this mark; nothing if it is not there.
    pub fn reads(&self, mark: &str) -> String {
        let text = self.window.run(
            "const e = document.querySelector(`[data-testid=\"${arguments[0]}\"]`);
             return e ? (e.value ?? e.innerText) : '';",
            &[json!(mark)],
        );
        text.as_str().unwrap_or_default().replace('\u{a0}', " ")
    }

    /// The words of everything that carries this mark.
    pub fn all(&self, mark: &str) -> Vec<String> {
        let text = self.window.run(
            "return [...document.querySelectorAll(`[data-testid=\"${arguments[0]}\"]`)].map((e) => (e.querySelector('[aria-hidden=true]') ?? e).innerText);",
            &[json!(mark)],
        );
        let words = |v: &Value| v.as_str().unwrap_or_default().replace('\u{a0}', " ");
        text.as_array()
            .map(|a| a.iter().map(words).collect())
            .unwrap_or_default()
    }

    /// Wait until what carries this mark has these words in it.
    pub fn sees(&self, mark: &str, words: &str) {
        let what = format!("“{mark}” says “{words}”");
        self.window
            .wait_until(&what, |_| self.reads(mark).contains(words));
    }

    /// Empty the field of this mark and type into it.
    pub fn types(&self, mark: &str, text: &str) {
        let element = self.window.select(&format!("[data-testid=\"{mark}\"]"));
        self.window.run(
            "const e = arguments[0]; e.focus(); e.value = arguments[1];
             e.dispatchEvent(new Event('input', { bubbles: true }));
             e.dispatchEvent(new Event('change', { bubbles: true })); e.blur();",
            &[element.argument(), json!(text)],
        );
    }

    /// Begin a throw of so many squares, all denim, with the plan the app proposes.
    pub fn begin(&self, name: &str, across: u16, down: u16) {
        self.tap("new-throw");
        self.types("field-name", name);
        self.types("field-across", &across.to_string());
        self.types("field-down", &down.to_string());
        for _ in 0..3 {
            self.tap("next-page");
        }
        self.tap("begin");
        self.sees("ask-title", "Which squares get fabric?");
        self.tap("ask-bare");
        self.window.wait_until("it is not asked again", |_| {
            self.reads("ask-title").is_empty()
        });
        self.sees("card-title", "Cut a square");
    }

    /// The folder name of the only throw.
    pub fn id(&self) -> String {
        let shelf = self.window.call("shelf", json!({})).expect("the shelf");
        shelf["rows"][0]["id"]
            .as_str()
            .expect("a throw")
            .to_string()
    }

    /// See a screen's view as the page would.
    pub fn view(&self, query: Value) -> Value {
        let id = self.id();
        self.window
            .call("view", json!({ "id": id, "query": query }))
            .expect("a view")["view"]
            .take()
    }

    /// The squares of a face, row by row as told from the front. Beside what the view tells of
    /// each there stands what its picture shows there: under `cloth` what it is of, under
    /// `print` which of the fabrics that is, and under `signs` every sign and letter on it.
    pub fn face(&self, face: &str) -> Vec<Value> {
        let view = self.view(json!({ "see": "faces", "face": face }));
        let list = |of: &Value| of.as_array().cloned().unwrap_or_default();
        let marks = list(&view["picture"]["marks"]);
        let mut cells = list(&view["cells"]);
        for cell in &mut cells {
            let corner = ["x", "y"].map(|way| cell[way].as_f64().expect("a place"));
            let mut signs = Vec::new();
            for mark in &marks {
                for spot in list(&mark["at"]) {
                    let [x, y] =
                        [0, 1].map(|way| spot[way].as_f64().expect("a spot") - corner[way]);
                    if !(0.0..1.0).contains(&x) || !(0.0..1.0).contains(&y) {
                        continue;
                    }
                    if mark["ink"] == "cloth" {
                        let cloth = mark["cloth"].as_u64().expect("a cloth") as usize;
                        cell["cloth"] = view["picture"]["cloths"][cloth].clone();
                    } else {
                        signs.push(json!([mark["ink"], mark["text"], mark["d"]]));
                    }
                }
            }
            assert!(
                cell["cloth"].is_object(),
                "nothing is painted at {corner:?}"
            );
            let of = |swatch: &Value| {
                let (print, cloth) = (&swatch["print"], &cell["cloth"]);
                let plain = print["texture"] == "plain" && cloth["tile"].is_null();
                let alike = print["texture"] == cloth["tile"];
                print["colour"] == cloth["colour"] && (alike || plain)
            };
            cell["print"] = json!(list(&view["prints"]).iter().position(of));
            cell["signs"] = json!(signs);
        }
        cells
    }

    /// Press the tick for most pieces until the step is this one.
    pub fn until(&self, title: &str) {
        self.until_piece(title, "");
    }

    /// Press the tick for most pieces until the step is this one, for a piece so named.
    pub fn until_piece(&self, title: &str, piece: &str) {
        for _ in 0..200 {
            if self.reads("card-title").contains(title) && self.reads("card-piece").contains(piece)
            {
                return;
            }
            let before = self.done();
            let all = self.tick_for_all();
            self.tick(&all);
            self.window
                .wait_until("the tick is taken", |_| self.done() > before);
        }
        panic!(
            "never came to “{title}” “{piece}”; now at “{}”",
            self.reads("card-title")
        );
    }

    /// Tap a tick, and say of what lies cooling that it is cool, where that is asked.
    pub fn tick(&self, mark: &str) {
        let cooling = !self.reads("cool-left").is_empty();
        self.tap(mark);
        if cooling {
            self.tap("cool-early");
        }
    }

    /// Tick the piece in hand alone, however many the large button is for.
    pub fn tick_one(&self) {
        let card = self.card();
        let ticks = card["ticks"].as_array().cloned().unwrap_or_default();
        let one = |tick: &Value| {
            let pieces = tick["action"]["pieces"].as_array();
            tick["action"]["do"] == "tick" && pieces.is_some_and(|p| p.len() == 1)
        };
        let n = ticks.iter().position(one).expect("a tick for one piece");
        self.tick(&mark(&card, n));
    }

    /// The mark of the tick for most pieces, waited for.
    fn tick_for_all(&self) -> String {
        let script = "return document.querySelector('[data-testid^=\"tick\"]') !== null";
        let there = |_: &Window| self.window.run(script, &[]) == Value::Bool(true);
        self.window.wait_until("there is a tick", there);
        let card = self.card();
        mark(&card, for_all(&card))
    }

    /// The card of the step that the window shows when it is opened.
    fn card(&self) -> Value {
        let query = json!({ "see": "work", "station": null, "batch": null });
        self.view(query)["card"].take()
    }

    /// Steps done, as the page shows them.
    pub fn done(&self) -> u64 {
        let head = self.window.text();
        let at = head.split(" steps done").next().unwrap_or_default();
        let words: Vec<&str> = at.split_whitespace().collect();
        // “207 of 353 steps done”
        words
            .get(words.len().wrapping_sub(3))
            .and_then(|n| n.parse().ok())
            .unwrap_or(0)
    }

    /// Press keys of the measuring pad, by their names.
    pub fn keys(&self, names: &[&str]) {
        for name in names {
            self.tap(&format!("key-{name}"));
        }
    }
}
