//! The throw file's format is pinned: a file of each version is kept, still opens, and
//! is written again to the byte.
//!
//! `LAPWORK_WRITE=1 cargo test -p lapwork-tests --test format` writes the file of the
//! version now written; do that only when the version is raised.

use lapwork_core::journal::{Journal, VERSION};
use lapwork_core::measure::Ruler;
use lapwork_core::show::{Lens, figures};
use lapwork_core::words::Words;
use std::path::PathBuf;

/// Noon, 14 March 2026, UTC.
const NOON: i64 = 1_773_489_600_000;

fn kept(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("kept")
        .join(name)
}

#[test]
fn version_1_opens_and_is_written_again_to_the_byte() {
    let words = Words::english();
    let lens = Lens {
        words: &words,
        ruler: Ruler::default(),
        now: NOON,
    };
    let told = |journal: &Journal| format!("{:#}\n", figures(journal, lens));
    if std::env::var_os("LAPWORK_WRITE").is_some() && VERSION == 1 {
        let demo = lapwork_core::demo::throw(NOON);
        std::fs::create_dir_all(kept("")).expect("a folder");
        std::fs::write(kept("throw-1.jsonl"), demo.text()).expect("a file");
        std::fs::write(kept("throw-1.json"), told(&demo)).expect("a file");
    }
    let file = std::fs::read_to_string(kept("throw-1.jsonl")).expect("the kept file");
    let read = Journal::read(file.as_bytes()).expect("the kept file opens");
    assert!(!read.torn && !read.lacks_newline);
    let want = std::fs::read_to_string(kept("throw-1.json")).expect("its figures");
    assert_eq!(told(&read.journal), want);
    assert_eq!(read.journal.text(), file);
}

#[test]
fn every_byte_of_the_kept_file_matters() {
    let file = std::fs::read(kept("throw-1.jsonl")).expect("the kept file");
    let whole = Journal::read(&file).expect("it opens").journal.text();
    let mut unnoticed = Vec::new();
    for at in (0..file.len()).step_by(7) {
        let mut flipped = file.clone();
        flipped[at] ^= 0x01;
        if let Ok(read) = Journal::read(&flipped)
            && !read.torn
            && read.journal.text() != whole
        {
            unnoticed.push(at);
        }
    }
    assert!(
        unnoticed.is_empty(),
        "flips not noticed at bytes {unnoticed:?}"
    );
}
