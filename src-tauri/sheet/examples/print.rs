//! Prints sheets of some throws into a folder, and says how long each took and how much
//! memory was used at most: `cargo run -p lapwork-sheet --example print -- <folder>`.

#[path = "../benches/filled.rs"]
mod filled;

use lapwork_core::demo;
use lapwork_core::show::Sheet;
use lapwork_sheet::{Inks, Kind, Options, Paper, Size, print};
use std::ops::ControlFlow;
use std::time::Instant;

fn main() {
    let mut args = std::env::args().skip(1);
    let folder = args.next().unwrap_or_else(|| ".".into());
    let only = args.next().unwrap_or_default();
    let sheets: Vec<(&str, Sheet)> = vec![
        ("demo", filled::sheet(&demo::throw(1_800_000_000_000))),
        ("1x1", filled::sheet(&filled::throw(1, 1))),
        ("5x7", filled::sheet(&filled::throw(5, 7))),
        ("20x24", filled::sheet(&filled::throw(20, 24))),
    ];
    for (name, sheet) in &sheets {
        for (size, large) in [(Size::Normal, ""), (Size::Large, "-large")] {
            for (kind, card) in [(Kind::Making, ""), (Kind::Bench, "-card")] {
                for (ink, black) in [(Inks::Colour, ""), (Inks::Black, "-black")] {
                    let file = format!("{name}{card}{large}{black}");
                    if !only.is_empty() && !only.split(',').any(|o| o == file) {
                        continue;
                    }
                    let options = Options {
                        paper: Paper::A4,
                        size,
                        ink,
                        kind,
                    };
                    let begun = Instant::now();
                    let made = print(sheet, options, &mut |_| ControlFlow::Continue(()));
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
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let most = status.lines().find(|l| l.starts_with("VmHWM"));
    println!("{}", most.unwrap_or_default());
}
