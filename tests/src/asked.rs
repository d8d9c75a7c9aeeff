//! What the window sends: one of every action, and every screen it asks for.
//!
//! Fuzzing builds this file too; see `tests/fuzz`.

use lapwork_core::demo;
use lapwork_core::log::journal::{Journal, What};
use lapwork_core::measure::Count;
use lapwork_core::throw::Event;
use lapwork_core::throw::wishes::Wishes;
use serde_json::{Value, json};

const NOW: i64 = 1_773_000_000_000;
/// A small throw to which everything has happened.
pub const KEPT: &[u8] = include_bytes!("../kept/every-event-1.jsonl");

/// Every screen there is, and some that are not.
pub fn looks() -> Vec<Value> {
    let draft = json!({"side": "5", "lap": "½", "across": "6", "down": "8", "joining": "lapped",
        "stitch": "twin", "width": "4 mm", "stitch_length": "3 mm", "fringe": "3 mm", "trim": "", "between": "",
        "order": "rows", "trim_edge": true, "strip": "1", "longest": "28", "tail": "4", "cooling": "5", "washes": "3"});
    vec![
        json!({"see": "work", "station": null, "batch": null}),
        json!({"see": "work", "station": "table", "batch": ["cut", "square"]}),
        json!({"see": "bench", "chosen": [0, 0, 2, 2]}),
        json!({"see": "faces", "face": "front"}),
        json!({"see": "faces", "face": "back"}),
        json!({"see": "plan", "draft": null}),
        json!({"see": "plan", "draft": draft}),
        json!({"see": "measure", "piece": [0, 0, 2, 2], "width": "9½", "height": "9½"}),
        json!({"see": "outline", "piece": [0, 0, 2, 2], "typed": {"top": "9½", "right": "9½",
            "bottom": "9½", "left": "9½", "falling": "13⅜", "rising": ""}}),
        json!({"see": "trim"}),
        json!({"see": "off", "piece": [0, 0, 1, 1], "why": "scorched"}),
        json!({"see": "off", "piece": [0, 0, 2, 2], "why": null}),
        json!({"see": "hold", "width": "27½", "height": "36"}),
        json!({"see": "pile"}),
        json!({"see": "cutting", "n": 1, "index": 0, "typed": null, "drag": null}),
        json!({"see": "cutting", "n": 1, "index": 0, "typed": null, "drag": {"station": 1, "x": 5.0, "y": 9.0}}),
        json!({"see": "gather"}),
        json!({"see": "scraps", "typed": null}),
        json!({"see": "scraps", "typed": {"joining": "lapped", "lap": "½", "stitch": "zigzag", "width": "4 mm", "opening": "7 mm"}}),
        json!({"see": "whole", "width": "27½", "height": "36½"}),
        json!({"see": "history", "most": 500}),
        json!({"see": "hand-on"}),
        json!({"see": "wishes", "wishes": null}),
        json!({"see": "wishes", "wishes": serde_json::to_value(Wishes::default()).expect("plain JSON")}),
        json!({"see": "floor", "part": 0}),
        json!({"see": "covering"}),
        json!({"see": "story", "zone": "Europe/Berlin"}),
    ]
}

/// One of every action, as the window sends it.
pub fn actions() -> Vec<Value> {
    let begun = demo::throw(NOW);
    let throw = begun.throw();
    let plan = serde_json::to_value(throw.plan).expect("plain JSON");
    let prints = serde_json::to_value(&throw.prints).expect("plain JSON");
    let denims = serde_json::to_value(&throw.denims).expect("plain JSON");
    // Out of the kept events, what is long to write down.
    let mut outline = json!(null);
    let mut scrap = json!(null);
    let mut measures = json!(null);
    let kept = Journal::read(KEPT).expect("a kept file").journal;
    for (entry, _) in kept.entries() {
        let What::Do(events) = &entry.what else {
            continue;
        };
        for event in events {
            let said = serde_json::to_value(event).expect("plain JSON");
            match event {
                Event::HeapSet { n: 1, .. } => outline = found(&said, "pieces")[0].clone(),
                Event::ScrapTried { .. } => scrap = said["scrap-tried"]["scrap"].clone(),
                Event::Outlined { .. } => measures = said["outlined"]["measures"].clone(),
                _ => {}
            }
        }
    }
    let four = json!([0, 0, 2, 2]);
    let square = json!([4, 4, 1, 1]);
    let photo = "0123456789abcdef".repeat(4);
    let wishes = serde_json::to_value(Wishes {
        front: Count::from(12),
        back: Count::from(8),
        ..Wishes::default()
    })
    .expect("plain JSON");
    vec![
        json!({"do": "begin", "name": "A", "plan": plan, "prints": prints, "denims": denims}),
        json!({"do": "rename", "name": "B"}),
        json!({"do": "archive", "archived": true}),
        json!({"do": "change-plan", "plan": plan}),
        json!({"do": "set-face", "pieces": [square], "face": "front", "print": 0}),
        json!({"do": "set-denim", "pieces": [square], "denim": 0, "wrong_side_up": true}),
        json!({"do": "set-cloth", "prints": prints, "denims": denims}),
        json!({"do": "tick", "task": "cut", "pieces": [square]}),
        json!({"do": "tick-next", "task": "cut", "kind": "square", "count": 3}),
        json!({"do": "tick-sitting", "tasks": ["dot", "press-lap"], "pieces": [[0, 0, 1, 2]]}),
        json!({"do": "use-spares", "pieces": [square]}),
        json!({"do": "count-spares", "spares": 3}),
        json!({"do": "measure", "piece": four, "width": 241_300_000, "height": 241_300_000}),
        json!({"do": "measure-outline", "piece": four, "measures": measures}),
        json!({"do": "measure-whole", "width": 698_500_000, "height": 914_400_000}),
        json!({"do": "choose-trim", "trim": 238_125_000}),
        json!({"do": "mark-laps", "laps": [[four, [0, 2, 2, 2], 12_700_000]]}),
        json!({"do": "unpick", "pieces": [four], "lap": null}),
        json!({"do": "replace", "piece": [0, 0, 1, 1], "why": "flaw", "spare": false}),
        json!({"do": "patch", "piece": [0, 0, 1, 1], "face": "front", "print": 0, "why": "flaw"}),
        json!({"do": "set-aside", "piece": four}),
        json!({"do": "swap", "a": four, "b": [0, 2, 2, 2]}),
        json!({"do": "spoil", "piece": square, "why": "scorched"}),
        json!({"do": "add-garment", "kind": "mens-jeans", "size": "medium", "knees": "torn", "system": "metric", "makes": {"for": "denim"}, "name": "Jeans"}),
        json!({"do": "add-all", "heaps": [
            {"do": "add-garment", "kind": "womens-jeans", "makes": {"for": "denim"}, "name": "Jeans"},
            {"do": "add-cloth", "width": 558_800_000, "length": 457_200_000, "edges": {"cut": 12_700_000, "selvedge": 19_050_000, "selvedges": 1}, "makes": {"for": "fabric", "print": 0}, "name": "Quarter"},
        ]}),
        json!({"do": "add-cloth", "width": 1_100_000_000, "length": 914_400_000, "makes": {"for": "denim"}, "name": "Roll"}),
        json!({"do": "add-pack", "side": 127_000_000, "count": 42, "makes": {"for": "fabric", "print": 0}, "name": "Pack"}),
        json!({"do": "set-piece", "n": 1, "index": 0, "outline": outline}),
        json!({"do": "describe-cloth", "n": 1, "weight": "14 oz", "system": "inch", "stretch": true, "washed": true, "trimming": 0}),
        json!({"do": "add-part", "n": 1, "part": "pocket"}),
        json!({"do": "mirror-piece", "n": 1, "index": 0}),
        json!({"do": "worn-said", "n": 1, "index": 1}),
        json!({"do": "share-denims"}),
        json!({"do": "cut-by", "n": 1, "index": 0, "way": {"turned": true, "both_edges": true}}),
        json!({"do": "take-heap", "n": 2}),
        json!({"do": "cut-lines", "n": 1, "index": 0, "lines": 2}),
        json!({"do": "cut-piece", "n": 1, "index": 0, "squares": 3}),
        json!({"do": "try-scrap", "scrap": scrap}),
        json!({"do": "use-scrap", "scrap": 0}),
        json!({"do": "set-plate", "opening": 7_000_000}),
        json!({"do": "gather", "item": {"item": "glue"}, "have": true}),
        json!({"do": "note", "text": "A note.", "piece": square, "task": "cut", "next": true}),
        json!({"do": "lay-out", "wishes": wishes, "layout": {
            "moves": [[square, [5, 5, 1, 1]], [[5, 5, 1, 1], square]],
            "turns": [[square, 1]],
            "faces": [[square, {"front": 0, "back": null, "denim": 0, "wrong_side_up": false}]],
        }}),
        json!({"do": "wish", "wishes": wishes}),
        json!({"do": "turn", "piece": square, "quarters": 1}),
        json!({"do": "flip", "pieces": [square]}),
        json!({"do": "pin", "pieces": [square], "pinned": true}),
        json!({"do": "picture", "photo": photo, "words": "So far.", "piece": square, "task": "cut"}),
        json!({"do": "unpicture", "photo": photo}),
    ]
}

/// The first value of that name anywhere within.
fn found(value: &Value, name: &str) -> Value {
    match value {
        Value::Object(all) => match all.get(name) {
            Some(it) => it.clone(),
            None => all
                .values()
                .map(|one| found(one, name))
                .find(|it| !it.is_null())
                .unwrap_or_default(),
        },
        Value::Array(all) => all
            .iter()
            .map(|one| found(one, name))
            .find(|it| !it.is_null())
            .unwrap_or_default(),
        _ => Value::Null,
    }
}
