//! What fuzzing found, and a little of the same without it.
//!
//! `tests/fuzz` searches, guided by which lines are reached, for bytes that break a
//! promise; that needs a nightly compiler and is done by hand (tests/README.md, “Fuzzing”). Here the same functions are given what was once found (`tests/corpus/fuzzed`, a
//! folder for each way in), the kept files, and kept files changed by chance: a fifth of the
//! cases, or all with `LAPWORK_LONG=1`. With `LAPWORK_WRITE=1` they are written down as what
//! a search begins with, and a list of words it may put in.

#[path = "../fuzz/src/lib.rs"]
mod ways;

use lapwork_core::cloth::garments::{GarmentKind, GarmentSize, Guess, start};
use lapwork_core::demo;
use lapwork_core::measure::{Ruler, System};
use lapwork_core::plan::Plan;
use lapwork_core::show::Prefs;
use lapwork_core::show::{self, Context};
use lapwork_core::words::Words;
use lapwork_service::photos::{LONGEST_SIDE, shrink};
use lapwork_tests::maker::Chance;
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::fs;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

fn tests() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// What was once found on this way in, the oldest names first.
fn once_found(way: &str) -> Vec<(PathBuf, Vec<u8>)> {
    let Ok(found) = fs::read_dir(tests().join("corpus/fuzzed").join(way)) else {
        return Vec::new();
    };
    let mut paths: Vec<PathBuf> = found.flatten().map(|found| found.path()).collect();
    paths.sort();
    let with = |path: PathBuf| (path.clone(), fs::read(path).unwrap());
    paths.into_iter().map(with).collect()
}

/// Bytes with a few places changed, taken out, said twice or put in from another.
fn changed(bytes: &[u8], other: &[u8], chance: &mut Chance) -> Vec<u8> {
    let mut out = bytes.to_vec();
    for _ in 0..1 + chance.below(5) {
        let at = chance.below(out.len() as u64 + 1) as usize;
        let to = (at + chance.below(24) as usize).min(out.len());
        match chance.below(6) {
            0 if at < out.len() => out[at] = chance.draw() as u8,
            1 => {
                out.drain(at..to);
            }
            2 => {
                let again = out[at..to].to_vec();
                out.splice(at..at, again);
            }
            3 if !other.is_empty() => {
                let from = chance.below(other.len() as u64) as usize;
                let until = (from + chance.below(60) as usize).min(other.len());
                out.splice(at..to, other[from..until].to_vec());
            }
            4 => {
                let digits = [
                    "0",
                    "-1",
                    "65535",
                    "9223372036854775807",
                    "1e300",
                    "null",
                    "60",
                ];
                let digits = digits[chance.below(digits.len() as u64) as usize];
                let start = out[at..].iter().position(u8::is_ascii_digit);
                if let Some(start) = start.map(|start| at + start) {
                    let end = out[start..].iter().position(|b| !b.is_ascii_digit());
                    let end = end.map_or(out.len(), |end| start + end);
                    out.splice(start..end, digits.bytes());
                }
            }
            _ => {
                out.splice(at..at, *b"\"");
            }
        }
    }
    out
}

/// Give a way in what was found on it, then its seeds and those changed by chance.
fn give(way: &str, seeds: &[Vec<u8>], cases: usize, take: impl Fn(&[u8])) {
    let took = |what: &str, bytes: &[u8]| {
        let began = Instant::now();
        if catch_unwind(AssertUnwindSafe(|| take(bytes))).is_err() {
            let lies = std::env::temp_dir().join(format!("lapwork-{way}"));
            fs::write(&lies, bytes).unwrap();
            panic!(
                "{way}, {what}: a panic; the bytes lie at {}",
                lies.display()
            );
        }
        // On a machine with much else to do; a single one takes milliseconds.
        assert!(began.elapsed() < Duration::from_secs(30), "{way}, {what}");
    };
    let found = once_found(way);
    if std::env::var_os("LAPWORK_WRITE").is_some() {
        let folder = tests().join("fuzz/corpus").join(way);
        fs::create_dir_all(&folder).unwrap();
        for (n, seed) in seeds.iter().enumerate() {
            fs::write(folder.join(format!("seed-{n}")), seed).unwrap();
        }
        for (path, bytes) in &found {
            fs::write(folder.join(path.file_name().unwrap()), bytes).unwrap();
        }
        return;
    }
    for (path, bytes) in &found {
        took(&path.display().to_string(), bytes);
    }
    // A little at every run; all when asked for.
    let all = std::env::var_os("LAPWORK_LONG").is_some();
    let cases = if all { cases } else { cases.div_ceil(5) };
    let mut chance = Chance(way.len() as u64);
    for seed in seeds {
        took("a seed", seed);
    }
    for case in 0..cases {
        let seed = &seeds[case % seeds.len()];
        let other = &seeds[chance.below(seeds.len() as u64) as usize];
        took(&format!("case {case}"), &changed(seed, other, &mut chance));
    }
    println!(
        "{way}: {} once found, {} seeds, {cases} changed by chance",
        found.len(),
        seeds.len()
    );
}

fn kept() -> Vec<Vec<u8>> {
    [
        "every-event-1",
        "every-event-2",
        "every-event-2-said",
        "throw-1",
        "throw-2",
    ]
    .map(|name| fs::read(tests().join(format!("kept/{name}.jsonl"))).unwrap())
    .into()
}

/// The first lines of a record.
fn beginning(bytes: &[u8], lines: usize) -> Vec<u8> {
    let ends = bytes.iter().enumerate().filter(|(_, b)| **b == b'\n');
    let end = ends.map(|(at, _)| at + 1).nth(lines - 1);
    bytes[..end.unwrap_or(bytes.len())].to_vec()
}

#[test]
fn measures() {
    let texts = ["measures.json", "weights.json"].map(|list| {
        let bytes = fs::read(tests().join("corpus").join(list)).unwrap();
        serde_json::from_slice::<Vec<String>>(&bytes).unwrap()
    });
    let seeds: Vec<Vec<u8>> = texts.concat().into_iter().map(String::into_bytes).collect();
    give("measure", &seeds, 4000, ways::measure);
}

#[test]
fn records() {
    let short = kept().into_iter().map(|bytes| beginning(&bytes, 9));
    let seeds: Vec<Vec<u8>> = kept().into_iter().chain(short).collect();
    give("record", &seeds, 600, ways::record);
}

#[test]
fn records_brought() {
    let short = kept().into_iter().map(|bytes| beginning(&bytes, 9));
    let seeds: Vec<Vec<u8>> = kept().into_iter().chain(short).collect();
    give("brought", &seeds, 600, ways::brought);
}

#[test]
fn actions() {
    let each = ways::asked::actions();
    let several = each.windows(4).map(|some: &[serde_json::Value]| {
        let lines: Vec<String> = some.iter().map(|one| one.to_string()).collect();
        lines.join("\n").into_bytes()
    });
    give("actions", &several.collect::<Vec<_>>(), 300, ways::actions);
}

#[test]
fn all_else_the_window_sends() {
    let looks = ways::asked::looks();
    let mut seeds: Vec<Vec<u8>> = looks.iter().map(|query| query.to_string().into()).collect();
    seeds.push(serde_json::to_vec(&Prefs::default()).unwrap());
    let begin = &ways::asked::actions()[0];
    seeds.push(
        json!({"command": "begin", "action": begin})
            .to_string()
            .into(),
    );
    give("sent", &seeds, 1500, ways::sent);
}

#[test]
fn merges() {
    let mut seeds = Vec::new();
    for bytes in kept() {
        for (a, b) in [(12, 9), (200, 14)] {
            let mut both = beginning(&bytes, a);
            both.pop();
            both.extend(ways::BETWEEN.bytes());
            let second = beginning(&bytes, b);
            let n = second.iter().filter(|b| **b == b'\n').count();
            both.extend(second);
            let more = format!(
                "{{\"n\":{n},\"at\":5,\"do\":[{{\"renamed\":{{\"name\":\"Other\"}}}}],\"crc\":\"\"}}\n"
            );
            both.extend(more.bytes());
            seeds.push(both);
        }
    }
    give("merge", &seeds, 400, ways::merge);
}

#[test]
fn outlines() {
    let how = serde_json::to_string(&lapwork_core::cloth::cutting::Cutting::default()).unwrap();
    let seeds: Vec<Vec<u8>> = GarmentKind::ALL
        .into_iter()
        .flat_map(|kind| start(kind, GarmentSize::Medium, Guess::Typical, System::Inch))
        .map(|piece| format!("{how}\n{}", serde_json::to_string(&piece).unwrap()).into_bytes())
        .collect();
    give("outline", &seeds, 150, ways::outline);
}

#[test]
fn grids() {
    let words = Words::english();
    let context = Context {
        words: &words,
        ruler: Ruler::default(),
        now: 0,
    };
    let draft = serde_json::to_string(&show::draft_of(&Plan::default(), context)).unwrap();
    let wishes = [
        json!({"by": "squares", "have": "48"}),
        json!({"by": "size", "width": "27", "height": "36"}),
    ];
    let seeds = wishes.map(|wish| format!("{draft}\n{wish}").into_bytes());
    give("grids", &seeds, 1000, ways::grids);
}

#[test]
fn photos() {
    let picture = image::RgbImage::from_fn(40, 30, |x, y| image::Rgb([x as u8 * 6, y as u8, 90]));
    let mut png = std::io::Cursor::new(Vec::new());
    picture.write_to(&mut png, image::ImageFormat::Png).unwrap();
    let png = png.into_inner();
    let seeds = [shrink(&png).unwrap(), png];
    give("photo", &seeds, 1500, |bytes| {
        if let Ok(kept) = shrink(bytes) {
            // Its own writing is read again, and stays as small.
            assert!(shrink(&kept).is_ok());
            assert!(u64::from(LONGEST_SIDE).pow(2) * 4 > kept.len() as u64);
        }
    });
}

/// The names of fields and of one of a few things, for a search to put in.
fn words() -> BTreeSet<String> {
    fn add(value: &Value, found: &mut BTreeSet<String>) {
        let mut plain = |text: &str| {
            let fine = |b: u8| b.is_ascii_lowercase() || b == b'-' || b == b'_';
            if !text.is_empty() && text.len() < 24 && text.bytes().all(fine) {
                found.insert(text.to_string());
            }
        };
        match value {
            Value::String(text) => plain(text),
            Value::Array(all) => all.iter().for_each(|one| add(one, found)),
            Value::Object(all) => {
                all.keys().for_each(|key| plain(key));
                all.values().for_each(|one| add(one, found));
            }
            _ => {}
        }
    }
    let mut found = BTreeSet::new();
    let sent = ways::asked::actions().into_iter();
    for value in sent.chain(ways::asked::looks()) {
        add(&value, &mut found);
    }
    for bytes in kept() {
        for line in String::from_utf8(bytes).unwrap().lines() {
            add(&serde_json::from_str(line).unwrap(), &mut found);
        }
    }
    found
}

#[test]
fn words_to_put_in() {
    let words = words();
    assert!(
        words.contains("tick-next") && words.len() > 100,
        "{words:?}"
    );
    if std::env::var_os("LAPWORK_WRITE").is_some() {
        let word = |word: &String| format!("\"\\\"{word}\\\"\"\n");
        let mut list: String = words.iter().map(word).collect();
        for figure in [
            "9223372036854775807",
            "-1",
            "1000000000000",
            "65535",
            "60",
            "null",
        ] {
            list += &format!("\"{figure}\"\n");
        }
        fs::write(tests().join("fuzz/words.dict"), list).unwrap();
    }
}

/// A panic is told, with where its bytes lie.
#[test]
fn what_is_found_is_told() {
    if std::env::var_os("LAPWORK_WRITE").is_some() {
        return;
    }
    let throw = demo::throw(0).text().into_bytes();
    let tried = catch_unwind(|| give("none", &[throw], 1, |_| panic!("found")));
    let output = tried.unwrap_err();
    let output = output.downcast_ref::<String>().unwrap();
    assert!(output.contains("the bytes lie at"), "{output}");
}
