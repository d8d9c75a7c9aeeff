//! A throw file with forged numbers is refused, or every screen of it can be made.

use super::*;

/// Numbers a forger would try.
const WILD: [i64; 9] = [
    -1,
    0,
    1,
    61,
    255,
    65_535,
    4_294_967_295,
    i64::MAX / 2,
    i64::MIN / 2,
];

/// Every number in a line, in order.
fn numbers(value: &mut Value) -> Vec<&mut Value> {
    match value {
        Value::Number(_) => vec![value],
        Value::Array(list) => list.iter_mut().flat_map(numbers).collect(),
        Value::Object(map) => map.values_mut().flat_map(numbers).collect(),
        _ => Vec::new(),
    }
}

/// The record with one number of one line forged, and the checksum made to agree.
fn forged(text: &str, line: usize, which: usize, wild: i64) -> String {
    let mut lines: Vec<String> = text.lines().map(str::to_string).collect();
    let at = 1 + line % (lines.len() - 1);
    let body = lines[at].rsplit_once(",\"crc\"").unwrap().0.to_string() + "}";
    let mut value: Value = serde_json::from_str(&body).unwrap();
    let mut found = numbers(&mut value["do"]);
    if let Some(n) = found.len().checked_sub(1) {
        *found[which % (n + 1)] = wild.into();
    }
    // Keys keep their order, so that nothing but the number is strange.
    let said = value.to_string();
    let entry: Option<crate::log::journal::Entry> = serde_json::from_str(&said).ok();
    if let Some(entry) = entry {
        lines[at] = entry.line().trim_end().to_string();
    }
    lines.join("\n") + "\n"
}

fn looked_at(journal: &Journal) {
    let words = Words::english();
    let context = Context {
        words: &words,
        ruler: Ruler::default(),
        now: 10_000_000,
    };
    let piece = Rect::square(0, 0);
    let typed = OutlineTyped::default();
    for wanted in [
        Query::Work {
            station: None,
            batch: None,
        },
        Query::Bench {
            chosen: Some(piece),
        },
        Query::Faces {
            face: crate::cloth::fabric::Face::Back,
        },
        Query::Plan { draft: None },
        Query::Trim,
        Query::Outline { piece, typed },
        Query::Off { piece, why: None },
        Query::Pile,
        Query::Cutting {
            n: 1,
            index: 0,
            typed: None,
            drag: None,
        },
        Query::Gather,
        Query::Scraps { typed: None },
        Query::Whole {
            width: "40".into(),
            height: "40".into(),
        },
        Query::History { most: 500 },
        Query::HandOn,
    ] {
        let _ = answer(journal, &wanted, context);
    }
    let _ = figures(journal, context);
    let _ = shelf_row("a", journal, context);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// A number anywhere may be anything: it is refused, or what comes in can be shown.
    #[test]
    fn no_forged_number_breaks_anything(
        steps in prop::collection::vec((2u8..26, any::<u32>()), 1..60),
        line in any::<usize>(), which in any::<usize>(), wild in prop::sample::select(&WILD[..]),
    ) {
        let mut journal = crate::log::journal::tests::begin(3, 3);
        for (i, s) in steps.into_iter().enumerate() {
            crate::log::journal::tests::step(&mut journal, s, i as Time);
        }
        let text = forged(&journal.text(), line, which, wild);
        if let Ok(read) = crate::log::intake::read(text.as_bytes()) {
            looked_at(&read.journal);
        }
    }
}
