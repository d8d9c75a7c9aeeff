//! Nonsense from outside: typed, in files, from the window. Each is told or taken for what
//! it is; nothing panics, nothing is lost, nothing takes without bounds.
//!
//! What once made trouble is kept in `tests/corpus` and tried first, every time.

use lapwork_core::cloth::weight::parse_weight;
use lapwork_core::command::Command;
use lapwork_core::log::intake;
use lapwork_core::log::journal::{FormatError, Journal};
use lapwork_core::measure::bounds::{FigureOutOfBounds, Sent};
use lapwork_core::measure::{Count, MetricUnit, ParseError, Ruler, System, in_nm, parse};
use lapwork_core::plan::assembly::Rect;
use lapwork_core::show::{GridWish, PlanDraft, Prefs, Query, Request, ShelfCommand};
use lapwork_core::throw::wishes::Wishes;
use lapwork_service::desktop::read_throw;
use lapwork_service::service::Service;
use lapwork_service::store::{MOST_BYTES, StoreError};
use lapwork_tests::asked::{actions, looks};
use lapwork_tests::maker::Chance;
use lapwork_tests::served::serve;
use proptest::prelude::*;
use proptest::test_runner::{FileFailurePersistence, TestRunner};
use serde::de::DeserializeOwned;
use serde_json::{Value, json};
use std::fs::{self, File};
use std::io::Write as _;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use tempfile::TempDir;

#[path = "bad_input/bounds.rs"]
mod bounds;
#[path = "bad_input/calls.rs"]
mod calls;
#[path = "bad_input/files.rs"]
mod files;
#[path = "bad_input/huge.rs"]
mod huge;
#[path = "bad_input/typed.rs"]
mod typed;

const NOW: i64 = 1_773_000_000_000;

fn corpus(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("corpus")
        .join(name)
}

fn kept_texts(name: &str) -> Vec<String> {
    serde_json::from_slice(&fs::read(corpus(name)).unwrap()).unwrap()
}

fn kept(name: &str) -> Vec<u8> {
    fs::read(
        Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("kept")
            .join(name),
    )
    .unwrap()
}

fn runner(cases: u32) -> TestRunner {
    let kept = FileFailurePersistence::Direct("corpus/found.txt");
    TestRunner::new(ProptestConfig {
        cases,
        failure_persistence: Some(Box::new(kept)),
        source_file: Some(file!()),
        ..ProptestConfig::default()
    })
}

fn with_sum(body: &str) -> String {
    let sum = crc32fast::hash(body.as_bytes());
    format!("{body},\"crc\":\"{sum:08x}\"}}\n")
}

/// The lines of a kept file, each without its checksum.
fn bodies(bytes: &[u8]) -> Vec<String> {
    let text = std::str::from_utf8(bytes).unwrap();
    let cut = |line: &str| {
        line.rsplit_once(",\"crc\"")
            .map_or(line, |found| found.0)
            .to_string()
    };
    text.lines().map(cut).collect()
}

/// Figures and words nobody means.
fn absurd() -> Vec<Value> {
    let mut all: Vec<Value> = [0i64, 1, -1, 2, 59, 60, 61, 255, 256, 65535, 65536]
        .into_iter()
        .chain([i64::from(u32::MAX), 999_999_999_999, 1_000_000_000_001])
        .chain([-1_000_000_000_000, i64::MAX, i64::MIN])
        .map(Value::from)
        .collect();
    all.extend([
        json!(u64::MAX),
        json!(0.5),
        json!(1e308),
        json!(-1e-308),
        json!(null),
        json!(true),
        json!([]),
        json!({}),
        json!(""),
        json!("\u{202e}\u{0}\n"),
        json!("a".repeat(10_000)),
        json!("square-up"),
        json!([0, 0, 65535, 65535]),
        json!([59, 59, 1, 1]),
        json!([0, 0, 60, 60]),
        json!([5, 5, 2, 2]),
    ]);
    all
}

/// The paths of all places in a value where something may stand instead.
fn places(value: &Value, at: &str, found: &mut Vec<String>) {
    found.push(at.to_string());
    match value {
        Value::Array(all) => {
            for (i, one) in all.iter().enumerate().take(6) {
                places(one, &format!("{at}/{i}"), found);
            }
        }
        Value::Object(all) => {
            for (key, one) in all {
                places(one, &format!("{at}/{key}"), found);
            }
        }
        _ => {}
    }
}

/// Every value with one place of it changed to something absurd.
fn changed(value: &Value) -> Vec<Value> {
    let mut found = Vec::new();
    places(value, "", &mut found);
    let mut all = Vec::new();
    for place in found {
        for instead in absurd() {
            let mut one = value.clone();
            if let Some(spot) = one.pointer_mut(&place) {
                *spot = instead;
                all.push(one);
            }
        }
        // Longer lists than anyone has.
        let mut one = value.clone();
        if let Some(Value::Array(list)) = one.pointer_mut(&place)
            && let Some(first) = list.first().cloned()
        {
            *list = vec![first; 500];
            all.push(one);
        }
    }
    all
}

fn shown(journal: &Journal, looks: &[Query]) {
    use lapwork_core::show::{self, Context};
    use lapwork_core::words::Words;
    let words = Words::english();
    let context = Context {
        words: &words,
        ruler: Ruler::default(),
        now: NOW,
    };
    for query in looks {
        let _ = show::answer(journal, query, context);
    }
    let _ = show::shelf_row("a", journal, context);
    let _ = show::figures(journal, context);
}

fn quick() -> TempDir {
    tempfile::tempdir_in("/dev/shm").unwrap_or_else(|_| tempfile::tempdir().unwrap())
}

/// Read a file's bytes; if they can be read, all can be shown and written again.
fn read_or_told(bytes: &[u8]) -> Result<usize, FormatError> {
    let read = Journal::read(bytes)?;
    let again = Journal::read(read.journal.text().as_bytes()).unwrap();
    assert_eq!(again.journal.throw(), read.journal.throw());
    Ok(read.journal.len())
}
