//! Writes what fuzzing begins with, beside this crate: a folder of seeds for each target
//! (`corpus/`) and a list of words it may put in (`words.dict`).
//!
//! All of it is made from `tests/kept` and `tests/corpus`, so that nothing is kept twice.

use image::{ImageFormat, Rgb, RgbImage};
use lapwork_core::garments::{GarmentKind, GarmentSize, Guess, start};
use lapwork_core::journal::{Journal, What};
use lapwork_core::measure::Ruler;
use lapwork_core::plan::Plan;
use lapwork_core::show::{self, Lens};
use lapwork_core::throw::Event;
use lapwork_core::view::Prefs;
use lapwork_core::words::Words;
use lapwork_core::{cutting::Cutting, outline::Measures};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::fs;
use std::io::Cursor;
use std::path::{Path, PathBuf};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let tests = here.parent().ok_or("no folder above")?;
    let put = |target: &str, name: &str, bytes: &[u8]| -> std::io::Result<()> {
        let folder = here.join("corpus").join(target);
        fs::create_dir_all(&folder)?;
        fs::write(folder.join(name), bytes)
    };
    let mut words = BTreeSet::new();

    for list in ["measures", "weights", "texts"] {
        let bytes = fs::read(tests.join(format!("corpus/{list}.json")))?;
        let texts: Vec<String> = serde_json::from_slice(&bytes)?;
        for (n, text) in texts.iter().filter(|text| text.len() < 200).enumerate() {
            put("measure", &format!("{list}-{n}"), text.as_bytes())?;
        }
    }

    let kept = ["every-event-1", "every-event-2", "throw-1", "throw-2"];
    let mut measures = None::<Measures>;
    let mut begin = Value::Null;
    for name in kept {
        let bytes = fs::read(tests.join(format!("kept/{name}.jsonl")))?;
        put("record", name, &bytes)?;
        put("brought", name, &bytes)?;
        let text = String::from_utf8(bytes.clone())?;
        let lines: Vec<&str> = text.split_inclusive('\n').collect();
        // A header and a few entries, so that a small change reaches far.
        for few in [2, 5, 12] {
            let part = lines[..few.min(lines.len())].concat();
            put("record", &format!("{name}-{few}"), part.as_bytes())?;
            put("brought", &format!("{name}-{few}"), part.as_bytes())?;
        }
        let most = lines.len();
        for (a, b) in [(most, most), (most, most - 3), (6, 4), (8, 5)] {
            let first = lines[..a.min(most)].concat();
            let mut second = lines[..b.min(most)].concat();
            let n = second.lines().count();
            second += &format!(
                "{{\"n\":{n},\"at\":5,\"do\":[{{\"renamed\":{{\"name\":\"Other\"}}}}],\"crc\":\"\"}}\n"
            );
            let both = format!("{}{}{second}", first.trim_end(), lapwork_fuzz::BETWEEN);
            put("merge", &format!("{name}-{a}-{b}"), both.as_bytes())?;
        }
        let journal = Journal::read(&bytes).map_err(|how| format!("{how:?}"))?.journal;
        for (entry, _) in journal.entries() {
            let value = serde_json::to_value(entry.line())?;
            let value: Value = serde_json::from_str(value.as_str().unwrap_or("null"))?;
            names(&value, &mut words);
            let What::Do(events) = &entry.what else {
                continue;
            };
            for event in events {
                if let Event::Outlined { measures: said, .. } = event {
                    measures = Some(*said);
                }
            }
            if let Some(begun) = value.pointer("/do/0/begun") {
                begin = begun.clone();
                begin["do"] = json!("begin");
            }
        }
    }

    // One of every action.
    let actions = lapwork_fuzz::asked::actions();
    for (n, action) in actions.iter().enumerate() {
        names(action, &mut words);
        put("actions", &format!("{n}"), format!("{action}\n").as_bytes())?;
        let several: Vec<String> = actions[n..].iter().take(5).map(Value::to_string).collect();
        put("actions", &format!("{n}-on"), several.join("\n").as_bytes())?;
    }
    put("actions", "begin", format!("{begin}\n\"undo\"\n").as_bytes())?;

    let english = Words::english();
    let lens = Lens {
        words: &english,
        ruler: Ruler::default(),
        now: 0,
    };
    let draft = serde_json::to_value(show::draft_of(&Plan::default(), lens))?;
    names(&draft, &mut words);
    for (n, look) in lapwork_fuzz::asked::looks().iter().enumerate() {
        names(look, &mut words);
        put("sent", &format!("look-{n}"), look.to_string().as_bytes())?;
    }
    put("sent", "draft", draft.to_string().as_bytes())?;
    put("sent", "prefs", &serde_json::to_vec(&Prefs::default())?)?;
    let tend = json!({"tend": "begin", "action": begin});
    put("sent", "begin", tend.to_string().as_bytes())?;
    for (n, wish) in [
        json!({"by": "squares", "have": "48"}),
        json!({"by": "size", "width": "27", "height": "36"}),
    ]
    .iter()
    .enumerate()
    {
        names(wish, &mut words);
        put("grids", &format!("{n}"), wish.to_string().as_bytes())?;
        put("grids", &format!("{n}-draft"), format!("{draft}\n{wish}").as_bytes())?;
    }

    let how = serde_json::to_string(&Cutting::default())?;
    for (n, kind) in GarmentKind::ALL.into_iter().enumerate() {
        for piece in start(kind, GarmentSize::Medium, Guess::Typical).iter().take(1) {
            let piece = serde_json::to_value(piece)?;
            names(&piece, &mut words);
            put("outline", &format!("{n}"), format!("{how}\n{piece}").as_bytes())?;
        }
    }
    let measures = measures.ok_or("no block was measured in the kept files")?;
    let measures = serde_json::to_value(measures)?;
    names(&measures, &mut words);
    put("outline", "block", measures.to_string().as_bytes())?;

    for (name, format) in [
        ("jpeg", ImageFormat::Jpeg),
        ("png", ImageFormat::Png),
    ] {
        for side in [1, 9, 40] {
            let picture = RgbImage::from_fn(side, side, |x, y| Rgb([x as u8 * 6, y as u8 * 6, 90]));
            let mut out = Cursor::new(Vec::new());
            picture.write_to(&mut out, format)?;
            put("photo", &format!("{name}-{side}"), out.get_ref())?;
        }
    }
    let picture = RgbImage::from_pixel(9, 9, Rgb([1, 200, 3]));
    let mut out = Cursor::new(Vec::new());
    picture.write_to(&mut out, ImageFormat::WebP)?;
    put("photo", "webp-9", out.get_ref())?;

    // What was once found begins every later search.
    for target in fs::read_dir(tests.join("corpus/fuzzed"))?.flatten() {
        for found in fs::read_dir(target.path())?.flatten() {
            let name: PathBuf = found.file_name().into();
            let to = here.join("corpus").join(target.file_name());
            fs::create_dir_all(&to)?;
            fs::copy(found.path(), to.join(name))?;
        }
    }

    let quoted = |word: &String| format!("\"\\\"{word}\\\"\"\n");
    let mut list: String = words.iter().map(quoted).collect();
    list += "\"9223372036854775807\"\n\"-1\"\n\"1000000000000\"\n\"65535\"\n\"60\"\n\"null\"\n";
    fs::write(here.join("words.dict"), list)?;
    Ok(())
}

/// Keys, and words that stand for one of a few things.
fn names(value: &Value, found: &mut BTreeSet<String>) {
    let plain = |text: &str| {
        !text.is_empty() && text.bytes().all(|b| b.is_ascii_lowercase() || b"-_".contains(&b))
    };
    match value {
        Value::String(text) if plain(text) => {
            found.insert(text.clone());
        }
        Value::Array(all) => all.iter().for_each(|one| names(one, found)),
        Value::Object(all) => {
            for (key, one) in all {
                if plain(key) {
                    found.insert(key.clone());
                }
                names(one, found);
            }
        }
        _ => {}
    }
}
