//! A maker who does something allowed, or nearly, at every turn; the same for a seed.
//!
//! Promises: what comes of a seed never depends on anything else, so that a test can
//! tell beforehand what must be on the disk after each deed.

use lapwork_core::command::Command;
use lapwork_core::log::journal::Journal;
use lapwork_core::plan::Plan;
use lapwork_core::show::Request;
use lapwork_core::throw::Time;
use serde_json::{Value, json};

/// Numbers that look like chance (splitmix64, by Steele, Lea and Flood).
#[derive(Debug, Clone)]
pub struct Chance(pub u64);

impl Chance {
    /// The next number.
    pub fn draw(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A number below `most`.
    pub fn below(&mut self, most: u64) -> u64 {
        self.draw() % most.max(1)
    }
}

/// Write a note about the whole.
pub fn note(text: &str) -> Request {
    Request::Act {
        action: action(json!({"do": "note", "text": text, "piece": null})),
    }
}

/// A record's entries as they are written; its name is given by chance.
pub fn entries(journal: &Journal) -> String {
    journal.entries().map(|(entry, _)| entry.line()).collect()
}

fn action(value: Value) -> Command {
    serde_json::from_value(value).expect("an action")
}

/// The beginning of a small throw.
pub fn beginning(name: &str, across: u16, down: u16) -> Command {
    Command::Begin {
        name: name.to_string(),
        plan: Plan {
            across,
            down,
            ..Plan::default()
        },
        prints: serde_json::from_value(json!([
            {"name": "Dots", "colour": "#aa5500", "texture": "dot", "stock": null}
        ]))
        .expect("a print"),
        denims: serde_json::from_value(json!([{"name": "Jeans", "colour": "#223355"}]))
            .expect("a denim"),
    }
}

/// Something to do to a throw of at least 2 × 2; it may be refused.
pub fn request(chance: &mut Chance) -> Request {
    let kinds = ["square", "pair", "four", "row", "whole"];
    let tasks = [
        "cut",
        "cover-front",
        "press-cover",
        "dot",
        "press-lap",
        "stitch",
        "press-block",
        "square-up",
    ];
    let square = [chance.below(2), chance.below(2), 1, 1];
    let asked = match chance.below(16) {
        0 => return Request::Undo,
        1 => return Request::Redo,
        2 => {
            json!({"do": "note", "text": format!("“{}”\n\tnaïve ✂ — {}", chance.draw(), "so ".repeat(chance.below(60) as usize)), "piece": null})
        }
        3 => json!({"do": "rename", "name": format!("Throw {}", chance.below(1000))}),
        4 => {
            json!({"do": "wish", "wishes": {"front": chance.below(4), "back": chance.below(9)}})
        }
        5 => json!({"do": "set-face", "pieces": [square], "face": "back", "print": 0}),
        6 => json!({"do": "spoil", "piece": square, "why": "scorched"}),
        7 => json!({"do": "count-spares", "spares": chance.below(9)}),
        8 => json!({"do": "set-plate", "opening": 1_000_000 * (1 + chance.below(9))}),
        _ => json!({
            "do": "tick-next",
            "task": tasks[chance.below(8) as usize],
            "kind": kinds[chance.below(5) as usize],
            "count": 1 + chance.below(4),
        }),
    };
    Request::Act {
        action: action(asked),
    }
}

/// Do it to a record in memory; whether it was allowed.
pub fn done(journal: &mut Journal, request: &Request, at: Time) -> bool {
    let entry = match request {
        Request::Act { action } => journal.propose(action, at),
        Request::Undo => journal.propose_undo(at),
        Request::Redo => journal.propose_redo(at),
    };
    entry.is_ok_and(|entry| journal.accept(entry).is_some())
}
