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
use std::process;
use std::time::{Duration, Instant};
use tempfile::TempDir;

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

/// Text as nobody means it: digits, units, signs and anything at all, mixed.
fn nonsense() -> impl Strategy<Value = String> {
    let bits = prop_oneof![
        4 => "[0-9]{1,40}",
        2 => "[ .,/'\"½⅛⅓−-]{1,3}",
        2 => prop::sample::select(vec!["in", "mm", "cm", "m", "ft", "oz", "g/m²", "NaN", "inf", "e9"])
            .prop_map(str::to_string),
        1 => any::<char>().prop_map(String::from),
        1 => "[\u{0}-\u{1f}\u{200b}-\u{200f}\u{202a}-\u{202e}\u{2066}-\u{2069}\u{feff}]{1,4}",
    ];
    prop::collection::vec(bits, 0..9).prop_map(|bits| bits.concat())
}

fn rulers() -> [Ruler; 3] {
    let ruler = |system, metric| Ruler {
        system,
        metric,
        ..Ruler::default()
    };
    [
        ruler(System::Inch, MetricUnit::Mm),
        ruler(System::Metric, MetricUnit::Mm),
        ruler(System::Metric, MetricUnit::Cm),
    ]
}

fn a_length_or_told(typed: &str) {
    for ruler in rulers() {
        match parse(typed, ruler) {
            Ok(length) => assert!((0..=100_000_000_000).contains(&in_nm(length)), "{typed:?}"),
            Err(ParseError::OffTheMarks { nearest }) => assert!(in_nm(nearest) >= 0, "{typed:?}"),
            Err(_) => {}
        }
    }
    for system in [System::Inch, System::Metric] {
        if let Some(weight) = parse_weight(typed, system) {
            let grams = lapwork_core::cloth::weight::in_gsm(weight);
            assert!(grams.is_finite() && grams >= 0.0, "{typed:?}");
        }
    }
}

#[test]
fn typed_nonsense_is_a_length_or_told() {
    let kept = [
        kept_texts("measures.json"),
        kept_texts("weights.json"),
        kept_texts("texts.json"),
    ];
    let kept: Vec<String> = kept.concat();
    for typed in &kept {
        a_length_or_told(typed);
    }
    let tried = runner(20_000).run(&nonsense(), |typed| {
        a_length_or_told(&typed);
        Ok(())
    });
    tried.unwrap();
    let long = Instant::now();
    for piece in ["9", "½", " ", "/", "\u{202e}"] {
        a_length_or_told(&piece.repeat(2_000_000));
    }
    assert!(long.elapsed() < Duration::from_secs(20));
    println!(
        "typed: {} kept and 20000 random texts, five of 2 million characters",
        kept.len()
    );
}

// ── Files ────────────────────────────────────────────────────────────────────

/// Read a file's bytes; if they can be read, all can be shown and written again.
fn read_or_told(bytes: &[u8]) -> Result<usize, FormatError> {
    let read = Journal::read(bytes)?;
    let again = Journal::read(read.journal.text().as_bytes()).unwrap();
    assert_eq!(again.journal.throw(), read.journal.throw());
    Ok(read.journal.len())
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

#[test]
fn files_that_are_no_throw_files() {
    let good = kept("every-event-1.jsonl");
    let text = String::from_utf8(good.clone()).unwrap();
    let bodies = bodies(&good);
    let (header, begun) = (format!("{}\n", bodies[0]), with_sum(&bodies[1]));
    let entry = |what: &str| {
        format!(
            "{header}{begun}{}",
            with_sum(&format!("{{\"n\":2,\"at\":1,{what}"))
        )
    };
    let note = |text: &str| {
        entry(&format!(
            "\"do\":[{{\"noted\":{{\"text\":{text},\"piece\":null}}}}]"
        ))
    };
    let refused: Vec<(&str, Vec<u8>)> = vec![
        ("nothing", vec![]),
        ("only zeros", vec![0; 5000]),
        ("a byte order mark", [b"\xef\xbb\xbf", &good[..]].concat()),
        (
            "UTF-16",
            text.encode_utf16().flat_map(u16::to_le_bytes).collect(),
        ),
        ("brackets", "[".repeat(100_000).into_bytes()),
        (
            "brackets in a line",
            format!(
                "{header}{}",
                with_sum(&format!(
                    "{{\"n\":1,\"at\":1,\"do\":{}",
                    "[".repeat(100_000)
                ))
            )
            .into_bytes(),
        ),
        (
            "brackets after a beginning",
            entry(&format!("\"do\":{}", "[".repeat(100_000))).into_bytes(),
        ),
        ("a lone surrogate", note("\"\\ud800\"").into_bytes()),
        (
            "half a surrogate pair",
            note("\"\\ud83d\\u0041\"").into_bytes(),
        ),
        (
            "keys twice in the header",
            format!("{{\"lapwork\":\"throw\",\"lapwork\":\"throw\",\"version\":1}}\n{begun}")
                .into_bytes(),
        ),
        (
            "keys twice in an entry",
            entry("\"n\":2,\"do\":[]").into_bytes(),
        ),
        (
            "keys twice in an event",
            entry("\"do\":[{\"renamed\":{\"name\":\"a\",\"name\":\"b\"}}]").into_bytes(),
        ),
        (
            "an unknown event",
            entry("\"do\":[{\"unheard-of\":{}}]").into_bytes(),
        ),
        (
            "a second beginning",
            format!(
                "{header}{begun}{}",
                with_sum(&bodies[1].replacen("\"n\":1", "\"n\":2", 1))
            )
            .into_bytes(),
        ),
        (
            "a gap",
            format!(
                "{header}{begun}{}",
                with_sum("{\"n\":3,\"at\":1,\"undo\":2")
            )
            .into_bytes(),
        ),
        (
            "undo of nothing",
            format!(
                "{header}{begun}{}",
                with_sum("{\"n\":2,\"at\":1,\"undo\":18446744073709551615")
            )
            .into_bytes(),
        ),
        (
            "version 0",
            text.replacen("\"version\":1", "\"version\":0", 1)
                .into_bytes(),
        ),
        (
            "a huge version",
            text.replacen("\"version\":1", "\"version\":4294967295", 1)
                .into_bytes(),
        ),
        (
            "a version beyond numbers",
            text.replacen("\"version\":1", "\"version\":1e400", 1)
                .into_bytes(),
        ),
        (
            "a grid of 65535",
            format!(
                "{header}{}",
                with_sum(
                    &bodies[1]
                        .replace("\"across\":6,\"down\":8", "\"across\":65535,\"down\":65535")
                )
            )
            .into_bytes(),
        ),
        (
            "a grid of 0",
            format!(
                "{header}{}",
                with_sum(&bodies[1].replace("\"across\":6,\"down\":8", "\"across\":0,\"down\":0"))
            )
            .into_bytes(),
        ),
        (
            "a square of a light year",
            format!(
                "{header}{}",
                with_sum(&bodies[1].replace("\"side\":127000000", "\"side\":9223372036854775807"))
            )
            .into_bytes(),
        ),
        (
            "places beyond every grid",
            entry("\"do\":[{\"set-aside\":{\"pieces\":[[65535,65535,65535,65535]]}}]").into_bytes(),
        ),
        (
            "spares beyond numbers",
            entry("\"do\":[{\"spares-counted\":{\"spares\":18446744073709551615}}]").into_bytes(),
        ),
        (
            "a time beyond numbers",
            format!(
                "{header}{begun}{}",
                with_sum("{\"n\":2,\"at\":1e30,\"do\":[]")
            )
            .into_bytes(),
        ),
    ];
    let folder = tempfile::tempdir().unwrap();
    for (what, bytes) in &refused {
        assert!(read_or_told(bytes).is_err(), "{what} was taken");
        assert!(intake::read(bytes).is_err(), "{what} was brought");
        // The whole way: told in words, and not touched.
        let throw = folder.path().join("throws/a");
        fs::create_dir_all(&throw).unwrap();
        fs::write(throw.join("throw.jsonl"), bytes).unwrap();
        let mut service = serve(folder.path());
        let shelf = service.hello(NOW).shelf;
        let problem = shelf.rows[0].problem.clone().unwrap();
        assert!(
            (problem.code.starts_with("file-") || problem.code == "newer-there"),
            "{what}: {problem:?}"
        );
        assert_eq!(
            &fs::read(throw.join("throw.jsonl")).unwrap(),
            bytes,
            "{what}"
        );
        assert_eq!(fs::read_dir(&throw).unwrap().count(), 1, "{what}");
    }
    // Other newlines are no damage.
    let other = text.replace('\n', "\r\n");
    assert_eq!(read_or_told(other.as_bytes()), read_or_told(&good));
    // Strange words are just words.
    for words in kept_texts("texts.json") {
        let quoted = serde_json::to_string(&words).unwrap();
        assert_eq!(read_or_told(note(&quoted).as_bytes()), Ok(2), "{words:?}");
    }
    println!(
        "{} kinds of files that are none: each told, none touched",
        refused.len()
    );
}

#[test]
fn files_with_bytes_changed() {
    let files = [kept("every-event-1.jsonl"), kept("throw-1.jsonl")];
    let edits = prop::collection::vec(
        (any::<prop::sample::Index>(), 0..6u8, any::<[u8; 4]>()),
        1..6,
    );
    let tried = runner(3_000).run(&(0..2usize, edits), |(which, edits)| {
        let mut bytes = files[which].clone();
        for (at, how, new) in edits {
            if bytes.is_empty() {
                break;
            }
            let at = at.index(bytes.len());
            match how {
                0 => bytes[at] = new[0],
                1 => bytes.truncate(at),
                2 => {
                    bytes.splice(at..at, new);
                }
                3 => {
                    bytes.drain(at..(at + usize::from(new[0])).min(bytes.len()));
                }
                4 => {
                    let again: Vec<u8> = bytes[at..(at + 300).min(bytes.len())].to_vec();
                    bytes.splice(at..at, again);
                }
                _ => bytes[at] = b"\n{}[]\",0\\"[usize::from(new[0]) % 9],
            }
        }
        let _ = read_or_told(&bytes);
        let _ = intake::read(&bytes);
        Ok(())
    });
    tried.unwrap();
    println!("3000 throw files with bytes changed, no panic");
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

#[test]
fn events_with_figures_changed_and_a_checksum_that_agrees() {
    let (mut read, mut told) = (0, 0);
    let looks: Vec<Query> = looks()
        .into_iter()
        .map(|look| serde_json::from_value(look).unwrap())
        .collect();
    // Events as they were, and events that say what was decided.
    for name in ["every-event-1.jsonl", "every-event-2-said.jsonl"] {
        let (some, others) = figures_changed(&kept(name), &looks);
        assert!(some > 100 && others > 200, "{name}: {some}, {others}");
        (read, told) = (read + some, told + others);
    }
    println!(
        "{} events changed: {read} read and shown, {told} told, no panic",
        read + told
    );
}

/// How many of the changed records were read and shown, and how many were told.
fn figures_changed(file: &[u8], looks: &[Query]) -> (usize, usize) {
    let (mut read, mut told) = (0, 0);
    let text = std::str::from_utf8(file).unwrap();
    let header = text.lines().next().unwrap();
    let bodies = bodies(file);
    for (line, body) in bodies.iter().enumerate().skip(1) {
        let value: Value = serde_json::from_str(&format!("{body}}}")).unwrap();
        // Every twelfth, others for each line; a sixth of them on every screen.
        let some = changed(&value).into_iter().skip(line % 12).step_by(12);
        for (n, one) in some.enumerate() {
            let mut text = format!("{header}\n");
            for (other, body) in bodies.iter().enumerate().skip(1) {
                if other == line {
                    let changed = serde_json::to_string(&one).unwrap();
                    text += &with_sum(changed.strip_suffix('}').unwrap_or(&changed));
                } else {
                    text += &with_sum(body);
                }
            }
            let tried = catch_unwind(|| {
                let _ = intake::read(text.as_bytes());
                let Ok(read) = Journal::read(text.as_bytes()) else {
                    return false;
                };
                if n % 6 == 0 {
                    shown(&read.journal, looks);
                }
                true
            });
            match tried {
                Ok(true) => read += 1,
                Ok(false) => told += 1,
                Err(_) => panic!("line {} with {one}", line + 1),
            }
        }
    }
    (read, told)
}

/// Every number in a value, by its JSON pointer.
fn numbers(value: &Value) -> Vec<String> {
    let mut found = Vec::new();
    places(value, "", &mut found);
    let number = |place: &String| value.pointer(place).is_some_and(Value::is_number);
    found.into_iter().filter(number).collect()
}

/// Figures beyond the bounds of every type there is.
fn beyond() -> [Value; 6] {
    [
        json!(1_000_000_000_001_i64),
        json!(-1_000_000_000_001_i64),
        json!(i64::MAX),
        json!(i64::MIN),
        json!(u64::MAX),
        json!(1e300),
    ]
}

/// What `bounds.rs` promises of files: whichever figure of whichever event it is, one that
/// is out of bounds is refused, and told with its line and its place.
#[test]
fn no_figure_of_any_event_may_be_out_of_bounds() {
    let (mut tried, mut named) = (0, 0);
    for file in ["every-event-1.jsonl", "every-event-2.jsonl"] {
        let bodies = bodies(&kept(file));
        let header = std::str::from_utf8(&kept(file))
            .unwrap()
            .lines()
            .next()
            .unwrap()
            .to_string();
        for (line, body) in bodies.iter().enumerate().skip(1) {
            let value: Value = serde_json::from_str(&format!("{body}}}")).unwrap();
            // The number of the entry and its time are none of an event's figures.
            for place in numbers(&value)
                .iter()
                .filter(|p| !["/n", "/at"].contains(&p.as_str()))
            {
                for instead in beyond() {
                    let mut one = value.clone();
                    *one.pointer_mut(place).unwrap() = instead.clone();
                    let changed = serde_json::to_string(&one).unwrap();
                    let changed = with_sum(changed.strip_suffix('}').unwrap());
                    let before: String = bodies[1..line].iter().map(|b| with_sum(b)).collect();
                    let text = format!("{header}\n{before}{changed}");
                    let what = format!("{file}, line {}, {place}: {instead}", line + 1);
                    assert!(intake::read(text.as_bytes()).is_err(), "{what} was brought");
                    match Journal::read(text.as_bytes()) {
                        Ok(_) => panic!("{what} was read"),
                        Err(FormatError::FigureOutOfBounds { line: told, figure }) => {
                            assert_eq!(told, line + 1, "{what}");
                            let steps = place.split('/').skip(1);
                            assert!(
                                steps.clone().all(|s| figure.field.contains(s)),
                                "{what}: {figure:?}"
                            );
                            assert_eq!(figure.figure, instead.to_string(), "{what}");
                            named += 1;
                        }
                        // A place in the grid is read as a piece, a number of an entry as one.
                        Err(
                            FormatError::Unknown { line: told }
                            | FormatError::OutOfOrder { line: told },
                        ) => {
                            assert_eq!(told, line + 1, "{what}");
                        }
                        Err(other) => panic!("{what}: {other:?}"),
                    }
                    tried += 1;
                }
            }
        }
    }
    println!("{tried} figures of events out of bounds: all refused, {named} by name");
    assert!(tried > 1000 && named > 400);
}

/// The same of what the window sends.
#[test]
fn no_figure_the_window_sends_may_be_out_of_bounds() {
    fn refused<T: DeserializeOwned>(sent: &Value) -> Option<String> {
        match serde_json::from_value::<Sent<T>>(sent.clone()) {
            Ok(Sent(Ok(_))) => panic!("taken: {sent}"),
            Ok(Sent(Err(figure))) => Some(figure.field),
            Err(_) => None,
        }
    }
    let (mut tried, mut named) = (0, 0);
    for action in actions() {
        for place in numbers(&action) {
            for instead in beyond() {
                let mut one = action.clone();
                *one.pointer_mut(&place).unwrap() = instead;
                let fields = [
                    refused::<Command>(&one),
                    refused::<Request>(&json!({"deed": "act", "action": one})),
                    refused::<ShelfCommand>(&json!({"tend": "begin", "action": one})),
                ];
                tried += 1;
                if let [Some(own), Some(deed), Some(tend)] = &fields {
                    named += 1;
                    assert_eq!(
                        (deed, tend),
                        (&format!("action.{own}"), &format!("action.{own}"))
                    );
                } else {
                    assert_eq!(fields, [None, None, None], "{one} at {place}");
                }
            }
        }
    }
    let wishes = json!({"front": 12, "back": u32::MAX, "seed": 1});
    assert_eq!(
        refused::<Query>(&json!({"see": "wishes", "wishes": wishes})).as_deref(),
        Some("wishes.back")
    );
    assert_eq!(refused::<Wishes>(&wishes).as_deref(), Some("back"));
    // What the maker reads of it.
    let folder = quick();
    let desk = serve(folder.path());
    let count = json!({"deed": "act", "action": {"do": "count-spares", "spares": u32::MAX}});
    let problem = desk
        .accept(serde_json::from_value::<Sent<Request>>(count).unwrap())
        .unwrap_err();
    assert_eq!(problem.code, "beyond");
    assert!(
        problem.said.contains("4294967295") && problem.said.contains("action.spares"),
        "{problem:?}"
    );
    println!("{tried} figures sent out of bounds: all refused, {named} by name");
    assert!(tried > 300 && named > 200);
}

/// A record that overflowed when its counts were added up, so that the app did not start.
#[test]
fn counts_that_overflow_are_told_and_the_app_starts() {
    let bytes = fs::read(corpus("spares.jsonl")).unwrap();
    let field = "do[0].spares-counted.spares".to_string();
    let how = FormatError::FigureOutOfBounds {
        line: 3,
        figure: FigureOutOfBounds {
            field,
            figure: u32::MAX.to_string(),
        },
    };
    assert_eq!(read_or_told(&bytes), Err(how.clone()));
    assert_eq!(intake::read(&bytes).unwrap_err(), how);
    let folder = tempfile::tempdir().unwrap();
    let throw = folder.path().join("throws/a");
    fs::create_dir_all(&throw).unwrap();
    fs::write(throw.join("throw.jsonl"), &bytes).unwrap();
    let mut desk = serve(folder.path());
    let shelf = desk.hello(NOW).shelf;
    let problem = shelf.rows[0].problem.clone().unwrap();
    assert_eq!(problem.code, "file-beyond");
    assert!(
        problem.said.contains("4294967295") && problem.said.contains('3'),
        "{problem:?}"
    );
    assert_eq!(
        fs::read(throw.join("throw.jsonl")).unwrap(),
        bytes,
        "it was touched"
    );
    assert!(
        desk.tend(&ShelfCommand::Demo, NOW).is_ok(),
        "nothing else can be done"
    );
}

/// As many as may be counted, said again and again: added up they stop at the most.
#[test]
fn counts_at_their_bound_add_up_however_often_they_are_said() {
    let text = String::from_utf8(fs::read(corpus("spares.jsonl")).unwrap()).unwrap();
    let bodies = bodies(text.as_bytes());
    let most = Count::MOST.get();
    let plan = bodies[1]
        .split_once("\"plan\":")
        .unwrap()
        .1
        .split_once(",\"prints\"")
        .unwrap()
        .0;
    let print = |n: usize| {
        format!("{{\"name\":\"P{n}\",\"colour\":\"#445566\",\"texture\":\"dot\",\"stock\":{most}}}")
    };
    let prints = (0..500).map(print).collect::<Vec<_>>().join(",");
    let wide = 1_000_000_000_000_i64;
    let pack = |n: usize, makes: &str| {
        format!(
            "{{\"heap-set\":{{\"n\":{n},\"heap\":{{\"from\":{{\"source\":\"precut\",\"name\":\"Pack\",\"side\":{wide},\"count\":{most}}},\"makes\":{makes},\"cloth\":{{\"weight\":0.4,\"thickness\":0.001,\"stretch\":false,\"washed\":true}},\"trimming\":0,\"counted\":[null]}}}}}}"
        )
    };
    let mut events = vec![
        format!("{{\"cloth-changed\":{{\"prints\":[{prints}],\"denims\":[]}}}}"),
        format!("{{\"wished\":{{\"wishes\":{{\"front\":{most},\"back\":{most}}}}}}}"),
    ];
    for n in 1..=500 {
        events.push(format!("{{\"spares-counted\":{{\"spares\":{most}}}}}"));
        events.push(format!(
            "{{\"plan-changed\":{{\"plan\":{plan},\"spares\":{most}}}}}"
        ));
        let makes = ["{\"for\":\"denim\"}", "{\"for\":\"fabric\",\"print\":0}"][n % 2];
        events.push(pack(n, makes));
        events.push(format!(
            "{{\"piece-cut\":{{\"n\":{n},\"piece\":0,\"squares\":{most}}}}}"
        ));
        events.push(pack(n + 500, makes));
    }
    let mut text = format!("{}\n{}", text.lines().next().unwrap(), with_sum(&bodies[1]));
    for (i, event) in events.iter().enumerate() {
        let n = i + 2;
        text += &with_sum(&format!("{{\"n\":{n},\"at\":{n},\"do\":[{event}]"));
    }
    let read = Journal::read(text.as_bytes()).unwrap();
    assert_eq!(read.journal.len(), events.len() + 1);
    let throw = read.journal.throw();
    assert_eq!(
        (throw.spares, throw.prints[0].stock),
        (Count::MOST, Some(Count::MOST))
    );
    let looks: Vec<Query> = looks()
        .into_iter()
        .map(|look| serde_json::from_value(look).unwrap())
        .collect();
    shown(&read.journal, &looks);
    // What is beyond the rules of today does not come in from elsewhere.
    assert!(intake::read(text.as_bytes()).is_err());
}

fn shown(journal: &Journal, looks: &[Query]) {
    use lapwork_core::show::{self, Context};
    use lapwork_core::words::Words;
    let words = Words::english();
    let lens = Context {
        words: &words,
        ruler: Ruler::default(),
        now: NOW,
    };
    for look in looks {
        let _ = show::answer(journal, look, lens);
    }
    let _ = show::shelf_row("a", journal, lens);
    let _ = show::figures(journal, lens);
}

// ── What the window sends ────────────────────────────────────────────────────

/// The names the shell knows for one sort of thing, from what it says of an unknown one.
fn names<T: DeserializeOwned>(tag: &str) -> Vec<String> {
    let Err(why) = serde_json::from_value::<T>(json!({tag: "?"})) else {
        panic!("“?” is known")
    };
    let why = why.to_string();
    let list = why.split_once("expected one of ").expect("a list").1;
    let mut names: Vec<String> = list
        .split(", ")
        .map(|name| name.trim_matches('`').to_string())
        .collect();
    names.sort_unstable();
    names
}

fn quick() -> TempDir {
    tempfile::tempdir_in("/dev/shm").unwrap_or_else(|_| tempfile::tempdir().unwrap())
}

/// A service with the demo throw on it.
fn with_demo(folder: &TempDir) -> (Service, String) {
    let mut service = serve(folder.path());
    let id = service.tend(&ShelfCommand::Demo, NOW).unwrap().id.unwrap();
    (service, id)
}

/// Run it; a panic is told with what was asked.
fn no_panic<T>(asked: &Value, run: impl FnOnce() -> T) -> T {
    catch_unwind(AssertUnwindSafe(run)).unwrap_or_else(|_| panic!("a panic from {asked}"))
}

#[test]
fn actions_with_fields_changed() {
    let actions = actions();
    let mut named: Vec<&str> = actions
        .iter()
        .map(|action| action["do"].as_str().unwrap())
        .collect();
    named.sort_unstable();
    assert_eq!(named, names::<Command>("do"), "one of every action");
    for action in &actions {
        let fine = serde_json::from_value::<Command>(action.clone());
        assert!(fine.is_ok(), "{action}: {fine:?}");
    }
    let folder = quick();
    let (mut service, mut id) = with_demo(&folder);
    let looks: Vec<Query> = looks()
        .into_iter()
        .map(|look| serde_json::from_value(look).unwrap())
        .collect();
    let (mut unread, mut refused, mut taken) = (0, 0, 0);
    for action in &actions {
        for asked in changed(action) {
            let Ok(action) = serde_json::from_value::<Command>(asked.clone()) else {
                unread += 1;
                continue;
            };
            no_panic(&asked, || {
                let begins = matches!(action, Command::Begin { .. });
                if begins {
                    let begun = service.tend(
                        &ShelfCommand::Begin {
                            action: action.clone(),
                            pile: Vec::new(),
                        },
                        NOW,
                    );
                    if let Ok(begun) = begun {
                        let id = begun.id.unwrap();
                        service
                            .tend(&ShelfCommand::Delete { id: id.clone() }, NOW)
                            .unwrap();
                        service.tend(&ShelfCommand::Erase { id }, NOW).unwrap();
                    }
                }
                match service.act(&id, &Request::Act { action }, NOW) {
                    Ok(_) => {
                        taken += 1;
                        for look in looks.iter().skip(taken % 4).step_by(4) {
                            let _ = service.look(&id, look, NOW);
                        }
                        // Mostly taken back, so that the next finds the throw much the same.
                        if taken % 5 != 0 {
                            service.act(&id, &Request::Undo, NOW).unwrap();
                        }
                    }
                    Err(problem) => {
                        assert!(!problem.said.contains("error-"), "{problem:?}");
                        refused += 1;
                    }
                }
            });
            if taken % 300 == 299 {
                // What was taken can be read again; then a fresh throw.
                drop(service);
                service = serve(folder.path());
                let shelf = service.hello(NOW).shelf;
                assert!(
                    shelf.rows.iter().all(|row| row.problem.is_none()),
                    "{:?}",
                    shelf.rows
                );
                id = service.tend(&ShelfCommand::Demo, NOW).unwrap().id.unwrap();
                taken += 1;
            }
        }
    }
    println!(
        "actions with fields changed: {unread} not understood, {refused} refused, {taken} taken, no panic"
    );
    assert!(refused > 500 && taken > 200);
}

#[test]
fn looks_and_all_else_the_window_asks_with_fields_changed() {
    let looks = looks();
    let mut named: Vec<&str> = looks
        .iter()
        .map(|look| look["see"].as_str().unwrap())
        .collect();
    named.sort_unstable();
    named.dedup();
    assert_eq!(named, names::<Query>("see"), "one of every look");
    let folder = quick();
    let (mut service, id) = with_demo(&folder);
    let note = json!({"do": "add-garment", "kind": "mens-jeans", "size": "medium", "makes": {"for": "denim"}, "name": "J"});
    let action = serde_json::from_value(note).unwrap();
    service.act(&id, &Request::Act { action }, NOW).unwrap();
    let texts = [kept_texts("measures.json"), kept_texts("texts.json")].concat();
    let mut tried = 0;
    let mut chance = Chance(5);
    for look in &looks {
        let mut all = changed(look);
        let mut spots = Vec::new();
        places(look, "", &mut spots);
        for spot in spots.iter().skip(1) {
            if look.pointer(spot).is_some_and(Value::is_string) {
                for _ in 0..12 {
                    let mut one = look.clone();
                    let text = &texts[chance.below(texts.len() as u64) as usize];
                    *one.pointer_mut(spot).unwrap() = json!(text);
                    all.push(one);
                }
            }
        }
        for asked in all {
            if let Ok(look) = serde_json::from_value::<Query>(asked.clone()) {
                no_panic(&asked, || service.look(&id, &look, NOW).is_ok());
                tried += 1;
            }
        }
    }
    let draft = looks
        .iter()
        .find_map(|look| look.get("draft").filter(|draft| draft.is_object()))
        .unwrap();
    for asked in changed(draft) {
        if let Ok(draft) = serde_json::from_value::<PlanDraft>(asked.clone()) {
            no_panic(&asked, || service.draft(&draft, NOW));
            tried += 1;
            for wish in [
                json!({"by": "squares", "have": "48"}),
                json!({"by": "size", "width": "27", "height": "36"}),
            ]
            .iter()
            .flat_map(|wish| [wish.clone()].into_iter().chain(changed(wish)).step_by(17))
            {
                if let Ok(wish) = serde_json::from_value::<GridWish>(wish) {
                    no_panic(&asked, || service.grids(&draft, &wish, NOW));
                    tried += 1;
                }
            }
        }
    }
    for text in &texts {
        no_panic(&json!(text), || service.length(text, NOW).is_ok());
        for tend in ["delete", "restore", "erase"] {
            let tend =
                serde_json::from_value::<ShelfCommand>(json!({"tend": tend, "id": text})).unwrap();
            no_panic(&json!(text), || service.tend(&tend, NOW).unwrap_err());
        }
        tried += 4;
    }
    for asked in changed(&serde_json::to_value(Prefs::default()).unwrap()) {
        if let Ok(prefs) = serde_json::from_value::<Prefs>(asked.clone()) {
            no_panic(&asked, || {
                service.set_prefs(prefs, NOW).unwrap();
                for look in looks.iter().step_by(5) {
                    let look = serde_json::from_value(look.clone()).unwrap();
                    let _ = service.look(&id, &look, NOW);
                }
            });
            tried += 1;
        }
    }
    println!(
        "looks, drafts, wishes, ids and settings with fields changed: {tried} tried, no panic"
    );
    assert!(tried > 1000);
}

#[test]
fn places_are_within_the_largest_grid() {
    for bad in [
        "[0,0,0,1]",
        "[60,0,1,1]",
        "[0,0,61,1]",
        "[65535,65535,65535,65535]",
        "[0,0,1]",
        "[0,0,1,1,1]",
        "[-1,0,1,1]",
    ] {
        assert!(serde_json::from_str::<Rect>(bad).is_err(), "{bad}");
    }
    assert_eq!(
        serde_json::from_str::<Rect>("[59,59,1,1]").unwrap(),
        Rect::square(59, 59)
    );
}

// ── Huge files ───────────────────────────────────────────────────────────────

const HUGE: &str = "LAPWORK_HUGE";

/// Reads one file and says how much memory it took at most.
#[test]
fn part_huge() {
    let Some(path) = std::env::var_os(HUGE).map(PathBuf::from) else {
        return;
    };
    let began = Instant::now();
    let came = match read_throw(&path.as_path().into()) {
        Ok(opened) => format!("{} entries", opened.journal.len()),
        Err(StoreError::TooLarge { .. }) => "too large".to_string(),
        Err(StoreError::Damaged { how, .. }) => format!("{how:?}"),
        Err(error) => panic!("{error:?}"),
    };
    let took = began.elapsed().as_millis();
    let status = fs::read_to_string("/proc/self/status").unwrap();
    let peak = status
        .lines()
        .find_map(|line| line.strip_prefix("VmHWM:"))
        .unwrap();
    let peak = peak.trim().trim_end_matches(" kB");
    let said = format!("\nsaid {came}|{peak}|{took}\n");
    std::io::stdout().lock().write_all(said.as_bytes()).unwrap();
}

/// What came of a file, the most memory in MiB, and the milliseconds it took.
fn huge(path: &Path) -> (String, u64, u64) {
    let output = process::Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "part_huge", "--nocapture"])
        .env(HUGE, path)
        .output()
        .unwrap();
    let text = String::from_utf8_lossy(&output.stdout);
    assert!(output.status.success(), "{text}");
    let said = text
        .lines()
        .find_map(|line| line.strip_prefix("said "))
        .unwrap();
    let parts: Vec<&str> = said.split('|').collect();
    let number = |i: usize| parts[i].parse::<u64>().unwrap();
    (parts[0].to_string(), number(1) / 1024, number(2))
}

#[test]
fn huge_files_take_no_more_than_they_must() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("throw.jsonl");
    let sparse = |length: u64| File::create(&path).unwrap().set_len(length).unwrap();
    sparse(1 << 30);
    let (came, peak, took) = huge(&path);
    println!("a file of 1 GiB: {came}, peak {peak} MiB, {took} ms");
    assert!(came == "too large" && peak < 200 && took < 5000);
    sparse(MOST_BYTES);
    let (came, peak, took) = huge(&path);
    println!("64 MiB of zeros: {came}, peak {peak} MiB, {took} ms");
    assert!(peak < 300 && took < 20_000);
    let good = kept("every-event-1.jsonl");
    let after = |filler: &[u8]| {
        let mut file = File::create(&path).unwrap();
        file.write_all(&good).unwrap();
        let mut left = MOST_BYTES as usize - good.len();
        while left > 0 {
            let n = filler.len().min(left);
            file.write_all(&filler[..n]).unwrap();
            left -= n;
        }
    };
    let fillers: [(&str, Vec<u8>); 4] = [
        ("newlines", b"\n".repeat(4096)),
        ("brackets", b"[".repeat(4096)),
        ("beginnings of entries", b"{\"n\":".repeat(1000)),
        (
            "short lines",
            b"{\"n\":2,\"at\":0,\"undo\":1,\"crc\":\"00000000\"}\n".repeat(100),
        ),
    ];
    for (what, filler) in fillers {
        after(&filler);
        let (came, peak, took) = huge(&path);
        println!("64 MiB, {what} after a good record: {came}, peak {peak} MiB, {took} ms");
        assert!(peak < 300 && took < 60_000, "{what}");
    }
    // As many sound entries as a file holds.
    let mut text = String::from_utf8(good).unwrap();
    let mut n = text.lines().count();
    while text.len() < 16 << 20 {
        text += &with_sum(&format!(
            "{{\"n\":{n},\"at\":0,\"do\":[{{\"spares-counted\":{{\"spares\":3}}}}]"
        ));
        n += 1;
    }
    fs::write(&path, &text).unwrap();
    let (came, peak, took) = huge(&path);
    println!("16 MiB of sound entries: {came}, peak {peak} MiB, {took} ms");
    assert!(came.ends_with("entries") && peak < 1000 && took < 60_000);
}
