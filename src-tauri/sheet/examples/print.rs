//! Prints sheets of some throws into a folder, and says how long each took and how much
//! memory was used at most: `cargo run -p lapwork-sheet --example print -- <folder>`; after
//! the folder the names of files, with commas between them, where not all are wanted.

#[path = "../benches/filled.rs"]
mod filled;

use lapwork_core::cloth::fabric::{Denim, Print};
use lapwork_core::command::Command;
use lapwork_core::demo;
use lapwork_core::log::journal::Journal;
use lapwork_core::show::{PrintUnits, Sheet};
use lapwork_core::words::Words;
use lapwork_sheet::{Inks, LetterSize, Options, Paper, PrintKind, print};
use std::ops::ControlFlow;
use std::time::Instant;

/// The same throw with the longest of names.
fn long_names(mut journal: Journal) -> Journal {
    let long = |name: &str| format!("{name} from the curtains of the summer house, the older pair");
    let prints = demo::prints().into_iter().map(|p| Print {
        name: long(&p.name).chars().take(60).collect(),
        ..p
    });
    let denims = demo::denims().into_iter().map(|d| Denim {
        name: long(&d.name).chars().take(60).collect(),
        ..d
    });
    let cloth = Command::SetCloth {
        prints: prints.collect(),
        denims: denims.collect(),
    };
    let name = Command::Rename {
        name: "Throw for the long bench in the porch, begun in the winter of storms".into(),
    };
    for action in [cloth, name] {
        let entry = journal.propose(&action, 1_800_000_000_000);
        let entry = entry.unwrap_or_else(|why| panic!("{why:?}"));
        journal.accept(entry).expect("it is sound");
    }
    journal
}

/// A kept file of the tests.
fn kept(name: &str) -> Journal {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/kept");
    let text = std::fs::read_to_string(format!("{folder}/{name}.jsonl")).expect("it is kept");
    Journal::read(text.as_bytes())
        .expect("it can be read")
        .journal
}

fn main() {
    let mut args = std::env::args().skip(1);
    let folder = args.next().unwrap_or_else(|| ".".into());
    let only = args.next().unwrap_or_default();
    let german = |journal: &Journal| {
        let words = Words::of("de");
        filled::story_in(&filled::pictured(journal, 4), &words)
    };
    type Maker<'a> = &'a dyn Fn() -> Sheet;
    let sheets: [(&str, Maker<'_>); 15] = [
        ("demo", &|| filled::sheet(&demo::throw(1_800_000_000_000))),
        ("1x1", &|| filled::sheet(&filled::throw(1, 1))),
        ("5x7", &|| filled::sheet(&filled::throw(5, 7))),
        ("12x14", &|| filled::sheet(&filled::throw(12, 14))),
        ("12x14-bare", &|| {
            filled::sheet(&filled::unpiled(&filled::throw(12, 14)))
        }),
        ("inches", &|| {
            filled::sheet_by(&filled::throw(12, 14), PrintUnits::Inches)
        }),
        ("handout", &|| {
            filled::handout(&filled::throw(12, 14), PrintUnits::Both)
        }),
        ("class", &|| {
            filled::sheet(&filled::piled(&filled::throw(12, 14)))
        }),
        ("cutting", &|| filled::sheet(&kept("cutting-2"))),
        ("12x16", &|| filled::sheet(&filled::throw(12, 16))),
        ("20x24", &|| filled::sheet(&filled::throw(20, 24))),
        ("story", &|| filled::story(&filled::throw(6, 8), 12)),
        ("story-60", &|| filled::story(&filled::throw(6, 8), 60)),
        ("german", &|| german(&filled::throw(6, 8))),
        ("long", &|| {
            filled::sheet(&long_names(filled::throw(24, 10)))
        }),
    ];
    for (name, sheet) in sheets {
        for (size, large) in [(LetterSize::Normal, ""), (LetterSize::Large, "-large")] {
            for (kind, card) in [(PrintKind::Making, ""), (PrintKind::Bench, "-card")] {
                for (ink, black) in [(Inks::Colour, ""), (Inks::Black, "-black")] {
                    for (paper, letter) in [(Paper::A4, ""), (Paper::Letter, "-letter")] {
                        let file = format!("{name}{card}{large}{black}{letter}");
                        if !only.is_empty() && !only.split(',').any(|o| o == file) {
                            continue;
                        }
                        let options = Options {
                            paper,
                            size,
                            ink,
                            kind,
                        };
                        let sheet = sheet();
                        let photos = filled::photos(&sheet, ink == Inks::Black);
                        let begun = Instant::now();
                        let made =
                            print(&sheet, photos, options, &mut |_| ControlFlow::Continue(()));
                        match made {
                            Ok(bytes) => {
                                let took = begun.elapsed();
                                let path = format!("{folder}/{file}.pdf");
                                std::fs::write(&path, &bytes).expect("the folder can be written");
                                println!("{file}: {} kB, {took:.2?}", bytes.len() / 1000);
                            }
                            Err(why) => println!("{file}: {why}"),
                        }
                    }
                }
            }
        }
    }
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let most = status.lines().find(|l| l.starts_with("VmHWM"));
    println!("{}", most.unwrap_or_default());
}
