//! Figures without a window: what is printed, and how it ends.

use lapwork_core::command::Command;
use lapwork_core::log::journal::Journal;
use lapwork_tests::program::lapwork;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{self, Output};

fn ask(args: &[&str]) -> Output {
    let mut command = process::Command::new(lapwork());
    command.env_remove("DISPLAY").env_remove("WAYLAND_DISPLAY");
    command.env("LANGUAGE", "en");
    command.args(args).output().unwrap()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

fn answered(args: &[&str]) -> String {
    let output = ask(args);
    assert_eq!(output.status.code(), Some(0), "{args:?} {output:?}");
    assert!(output.stderr.is_empty(), "{args:?} {output:?}");
    text(&output.stdout)
}

/// Ends with 2, one line on standard error and nothing else.
fn refused(args: &[&str]) -> String {
    let output = ask(args);
    assert_eq!(output.status.code(), Some(2), "{args:?} {output:?}");
    assert!(output.stdout.is_empty(), "{args:?} {output:?}");
    let line = text(&output.stderr);
    assert!(
        line.starts_with("lapwork: ") && line.ends_with(".\n"),
        "{line:?}"
    );
    assert_eq!(line.lines().count(), 1, "{line:?}");
    line
}

fn demo(folder: &Path) -> PathBuf {
    let file = folder.join("throw.jsonl");
    answered(&["demo", file.to_str().unwrap()]);
    file
}

#[test]
fn figures_of_a_file_and_of_its_folder_are_the_same_json() {
    let folder = tempfile::tempdir().unwrap();
    let file = demo(folder.path());
    let of_file = answered(&["figures", file.to_str().unwrap()]);
    let of_folder = answered(&["figures", folder.path().to_str().unwrap()]);
    assert_eq!(of_file, of_folder);
    let figures: serde_json::Value = serde_json::from_str(&of_file).unwrap();
    assert!(figures.is_object());
    assert!(of_file.contains(" in\""), "{of_file}");
    let metric = answered(&["--metric", "figures", file.to_str().unwrap()]);
    assert!(
        !metric.contains(" in\"") && metric.contains("mm\""),
        "{metric}"
    );
}

#[test]
fn history_is_dated_and_the_newest_is_first() {
    let folder = tempfile::tempdir().unwrap();
    let file = demo(folder.path());
    let history = answered(&["history", file.to_str().unwrap()]);
    let dates: Vec<&str> = history.lines().map(|line| &line[..17]).collect();
    assert!(
        dates.len() > 1 && dates.is_sorted_by(|a, b| a >= b),
        "{history}"
    );
    assert!(
        dates
            .iter()
            .all(|date| date.starts_with("20") && date.ends_with('Z'))
    );
}

#[test]
fn a_long_history_is_listed_to_its_beginning() {
    let folder = tempfile::tempdir().unwrap();
    let file = demo(folder.path());
    let mut journal = Journal::read(&fs::read(&file).unwrap()).unwrap().journal;
    for n in 0..2_100 {
        let name = format!("Throw {n}");
        let entry = journal.propose(&Command::Rename { name }, n).unwrap();
        journal.accept(entry).unwrap();
    }
    fs::write(&file, journal.text()).unwrap();
    let listed = answered(&["history", file.to_str().unwrap()]);
    let numbers = listed.lines().map(|line| {
        let number = line.split_whitespace().nth(2).unwrap();
        number.parse::<usize>().unwrap()
    });
    assert!(numbers.eq((1..=journal.len()).rev()), "{listed}");
}

#[test]
fn kept_copies_are_listed_and_removed_and_nothing_else_is() {
    let folder = tempfile::tempdir().unwrap();
    let file = demo(folder.path());
    let [path, of_folder] = [&file, folder.path()].map(|path| path.to_str().unwrap());
    assert_eq!(
        answered(&["copies", path]),
        "No copies are kept beside it.\n"
    );
    let [here, brought] = ["here-1773230400000", "brought-1773230400000-1"]
        .map(|called| folder.path().join(format!("throw.jsonl.{called}")));
    for copy in [&here, &brought] {
        fs::copy(&file, copy).unwrap();
    }
    let others = ["throw.jsonl.version-1", "throw.jsonl.here-old", "letter"];
    let others = others.map(|name| folder.path().join(name));
    others
        .iter()
        .for_each(|other| fs::write(other, "hers").unwrap());
    let listed = answered(&["copies", of_folder]);
    assert!(
        listed.contains("2 copies") && listed.contains("--clear"),
        "{listed}"
    );
    for copy in [&here, &brought] {
        assert!(listed.contains(copy.to_str().unwrap()), "{listed}");
    }
    let cleared = answered(&["copies", path, "--clear"]);
    assert!(cleared.starts_with("2 copies were removed"), "{cleared}");
    assert!(!here.exists() && !brought.exists() && file.exists());
    assert!(others.iter().all(|other| other.exists()));
    refused(&["copies", folder.path().join("none").to_str().unwrap()]);
    refused(&["check", path, "--clear"]);
}

#[test]
fn check_tells_sound_from_torn_from_damaged_and_changes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let file = demo(folder.path());
    let path = file.to_str().unwrap();
    assert!(answered(&["check", path]).starts_with("Sound: "));

    let whole = fs::read(&file).unwrap();
    fs::write(&file, &whole[..whole.len() - 9]).unwrap();
    let torn = ask(&["check", path]);
    assert_eq!(torn.status.code(), Some(1));
    assert!(text(&torn.stdout).contains("torn") && torn.stderr.is_empty());

    let mut damaged = whole.clone();
    damaged[whole.len() / 2] ^= 1;
    fs::write(&file, &damaged).unwrap();
    for command in ["check", "figures", "history"] {
        assert!(refused(&[command, path]).contains(path));
    }
    assert_eq!(fs::read(&file).unwrap(), damaged);
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn the_demo_is_never_written_over_a_file() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("mine");
    fs::write(&file, "mine").unwrap();
    refused(&["demo", file.to_str().unwrap()]);
    assert_eq!(fs::read(&file).unwrap(), b"mine");
    refused(&[
        "demo",
        folder.path().join("no/such/folder").to_str().unwrap(),
    ]);
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn what_cannot_be_is_told_in_one_line() {
    let folder = tempfile::tempdir().unwrap();
    let other = folder.path().join("other.txt");
    fs::write(&other, "a line\nanother\n").unwrap();
    let other = other.to_str().unwrap();
    for args in [
        &["figures"][..],
        &["sew", "x"],
        &["figures", "x", "y"],
        &["figures", "--inches", "x"],
        &["-x"],
        &["--metric"],
        &["figures", "/no/such/place"],
        &["check", folder.path().to_str().unwrap()],
        &["figures", "a\nb"],
        &["figures", other],
        &["history", other],
        &["check", other],
    ] {
        refused(args);
    }
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

/// The names listed, each with the name of a file.
fn listed(command: &str, path: &str) -> Vec<(String, String)> {
    let list = answered(&[command, path]);
    let pair = |line: &str| {
        let (key, file) = line.split_once(' ').unwrap();
        (key.to_string(), file.trim().to_string())
    };
    list.lines().map(pair).collect()
}

#[test]
fn drawings_and_tables_are_listed_and_printed() {
    let folder = tempfile::tempdir().unwrap();
    let file = demo(folder.path());
    let path = file.to_str().unwrap();
    let drawings = listed("draw", path);
    assert_eq!(drawings[0].1, "window-seat-throw-front.svg");
    assert_eq!(drawings.len(), 6);
    for (key, file) in drawings {
        assert!(file.ends_with(".svg"));
        let colour = answered(&["draw", path, &key]);
        let ink = answered(&["--ink", "draw", path, &key]);
        let metric = answered(&["draw", "--metric", path, &key]);
        assert!(colour.starts_with("<?xml") && colour.ends_with("</svg>\n"));
        assert!(colour != ink && colour != metric);
    }
    let tables = listed("table", path);
    assert_eq!(tables.len(), 6);
    for (key, file) in tables {
        assert_eq!(file, format!("window-seat-throw-{key}.csv"));
        assert!(answered(&["table", path, &key]).contains("\r\n"));
    }
    refused(&["draw", path, "piece-9-1"]);
    refused(&["draw", path, "front", "back"]);
    refused(&["table", path, "front"]);
    refused(&["draw"]);
}

/// A copy that went on elsewhere, made without the program.
fn went_on(file: &Path, name: &str, text: &str) -> PathBuf {
    let mut copy = Journal::read(&fs::read(file).unwrap()).unwrap().journal;
    for action in [
        Command::Rename { name: name.into() },
        Command::Note {
            text: text.into(),
            piece: None,
            task: None,
            next: false,
        },
    ] {
        let entry = copy.propose(&action, copy.len() as i64).unwrap();
        copy.accept(entry).unwrap();
    }
    let path = file.with_file_name(format!("{name}.jsonl"));
    fs::write(&path, copy.text()).unwrap();
    path
}

#[test]
fn two_copies_are_merged_where_a_side_is_named() {
    let folder = tempfile::tempdir().unwrap();
    let file = demo(folder.path());
    let (a, b) = (
        went_on(&file, "Attic", "up"),
        went_on(&file, "Porch", "out"),
    );
    let out = folder.path().join("out.jsonl");
    let [a, b, out] = [&a, &b, &out].map(|path| path.to_str().unwrap());
    let asked = ask(&["merge", a, b, "--out", out]);
    assert_eq!(asked.status.code(), Some(1), "{asked:?}");
    let said = text(&asked.stdout);
    assert!(said.contains("Attic") && said.contains("Porch"), "{said}");
    assert!(!Path::new(out).exists());
    answered(&["merge", a, b, "--out", out, "--keep", "second"]);
    let merged = Journal::read(&fs::read(out).unwrap()).unwrap().journal;
    assert_eq!(merged.throw().name, "Porch");
    let notes: Vec<&str> = merged
        .throw()
        .notes
        .iter()
        .map(|n| n.text.as_str())
        .collect();
    assert!(notes.contains(&"up") && notes.contains(&"out"), "{notes:?}");
    // Never over a file, never with a stranger, never with a side that is none.
    refused(&["merge", a, b, "--out", out, "--keep", "second"]);
    refused(&["merge", a, b, "--out", out, "--keep", "both"]);
    refused(&["merge", a, b]);
    let other = folder.path().join("other");
    fs::create_dir(&other).unwrap();
    std::thread::sleep(std::time::Duration::from_millis(5));
    let other = demo(&other);
    refused(&["merge", a, other.to_str().unwrap(), "--out", "x"]);
}

#[test]
fn an_old_file_is_upgraded_and_kept_beside() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("throw.jsonl");
    let kept = concat!(env!("CARGO_MANIFEST_DIR"), "/kept/throw-1.jsonl");
    fs::copy(kept, &file).unwrap();
    let before = answered(&["figures", file.to_str().unwrap()]);
    answered(&["upgrade", folder.path().to_str().unwrap()]);
    let copy = folder.path().join("throw.jsonl.version-1");
    assert_eq!(fs::read(copy).unwrap(), fs::read(kept).unwrap());
    let read = Journal::read(&fs::read(&file).unwrap()).unwrap();
    assert_eq!(read.version, 2);
    assert_eq!(answered(&["figures", file.to_str().unwrap()]), before);
    assert!(answered(&["upgrade", file.to_str().unwrap()]).starts_with("Sound"));
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2);
}

#[test]
fn help_and_version_are_told() {
    let help = answered(&["--help"]);
    for command in [
        "figures", "history", "check", "demo", "draw", "table", "--metric", "--ink",
    ] {
        assert!(help.contains(command), "{help}");
    }
    assert_eq!(
        answered(&["--version"]),
        format!("lapwork {}\n", env!("CARGO_PKG_VERSION"))
    );
}

#[test]
fn without_a_screen_no_window_is_opened_and_that_is_told() {
    let output = ask(&[]);
    assert_eq!(output.status.code(), Some(1), "{output:?}");
    assert_eq!(text(&output.stderr).lines().count(), 1, "{output:?}");
}
