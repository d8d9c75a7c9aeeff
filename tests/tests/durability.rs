//! What is acknowledged stays: kills, cuts, flipped bits, full and failing disks, two
//! writers, clocks set back.
//!
//! Each test says how many cases it tried. For every fault the same is asked: opened
//! again, the throw is as it was before or after the deed in flight, with everything
//! acknowledged; or what could not be kept is told, with where the untouched copy lies.
//! Then something is written, and it is opened once more.
//!
//! Some tests run themselves again as another process, told what to do by
//! `LAPWORK_PART`; without it those parts return at once.

use lapwork_core::log::journal::Journal;
use lapwork_core::show::{Prefs, Request, ShelfCommand};
use lapwork_core::throw::Time;
use lapwork_core::words::Words;
use lapwork_service::desktop;
use lapwork_service::service::{Service, message};
use lapwork_service::store::{Place, Store, StoreError, ThrowId};
use lapwork_tests::forgetful::{
    EIO, ENOSPC, EROFS, Fault, Forgetful, How, Then, Told, alone, cases, in_halves, quick,
};
use lapwork_tests::maker::{Chance, beginning, done, entries, note, request};
use lapwork_tests::served::{serve, serve_on};
use rustix::process::{Pid, Resource, Rlimit, Signal, kill_process, setrlimit};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fs;
use std::io::{BufRead as _, BufReader, Write as _};
use std::path::{Path, PathBuf};
use std::process::{self, Child, ChildStdout, Stdio};
use std::sync::LazyLock;
use std::time::Duration;

#[path = "durability/clock.rs"]
mod clock;
#[path = "durability/damaged.rs"]
mod damaged;
#[path = "durability/failing_disk.rs"]
mod failing_disk;
#[path = "durability/full_disk.rs"]
mod full_disk;
#[path = "durability/killed.rs"]
mod killed;
#[path = "durability/read_only.rs"]
mod read_only;
#[path = "durability/two_writers.rs"]
mod two_writers;

const PART: &str = "LAPWORK_PART";

const FOLDER: &str = "LAPWORK_PART_FOLDER";

const SEED: &str = "LAPWORK_PART_SEED";

const START: Time = 1_773_000_000_000;

/// A small record with `more` deeds in it.
fn record(seed: u64, more: usize) -> Journal {
    let (mut journal, _) = Journal::begin(&beginning("Small", 3, 2), START).unwrap();
    let mut chance = Chance(seed);
    for at in 0.. {
        if journal.len() > more {
            break;
        }
        done(&mut journal, &request(&mut chance), START + at);
    }
    journal
}

fn claimed(folder: &Path) -> Store {
    let mut store = desktop::store(folder.to_path_buf());
    store.claim().unwrap();
    store
}

fn id() -> ThrowId {
    ThrowId::parse("a").unwrap()
}

/// Put `bytes` where the throw `a` of an otherwise empty data folder lies.
fn lay(folder: &Path, bytes: &[u8]) -> PathBuf {
    let throw = folder.join("throws/a");
    let _ = fs::remove_dir_all(&throw);
    fs::create_dir_all(&throw).unwrap();
    let file = throw.join("throw.jsonl");
    fs::write(&file, bytes).unwrap();
    file
}

/// This program again, doing one part.
fn part(name: &str, folder: &Path, seed: u64, before: &[&str]) -> process::Command {
    let me = std::env::current_exe().unwrap();
    let mut command = match before {
        [] => process::Command::new(&me),
        [first, rest @ ..] => {
            let mut command = process::Command::new(first);
            command.args(rest).arg(&me);
            command
        }
    };
    command
        .args(["--exact", name, "--nocapture", "--test-threads", "1"])
        .env(PART, name)
        .env(FOLDER, folder)
        .env(SEED, seed.to_string())
        .env_remove("RUST_BACKTRACE");
    command
}

/// Whether this process is to do that part; with its folder and seed.
fn asked(name: &str) -> Option<(PathBuf, u64)> {
    let is = std::env::var(PART).is_ok_and(|asked| asked == name);
    is.then(|| {
        let folder = std::env::var_os(FOLDER).unwrap();
        let seed = std::env::var(SEED).unwrap().parse().unwrap();
        (folder.into(), seed)
    })
}

fn say(line: &str) {
    let mut out = std::io::stdout().lock();
    out.write_all(format!("{line}\n").as_bytes()).unwrap();
    out.flush().unwrap();
}

fn spawn(command: &mut process::Command) -> (Child, BufReader<ChildStdout>) {
    let mut child = command
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let out = BufReader::new(child.stdout.take().unwrap());
    (child, out)
}

fn kill(child: &mut Child) {
    let process = Pid::from_raw(child.id() as i32).unwrap();
    // It may have ended already, which is as good.
    let _ = kill_process(process, Signal::KILL);
    child.wait().unwrap();
}

/// The next line that begins with `word`, or none once the process has ended.
fn line(out: &mut BufReader<ChildStdout>, word: &str) -> Option<String> {
    loop {
        let mut line = String::new();
        match out.read_line(&mut line) {
            Ok(0) | Err(_) => return None,
            Ok(_) => {}
        }
        // The test harness writes its own words before the first.
        if let Some(at) = line.find(word) {
            return Some(line[at..].trim().to_string());
        }
    }
}

/// The throw `a` as it lies there, and its bytes.
fn read(folder: &Path) -> (lapwork_service::store::Opened, Vec<u8>) {
    let store = desktop::store(folder.to_path_buf());
    let file = store.throw_file(Place::Throws, &id());
    (
        store.read(Place::Throws, &id()).unwrap(),
        fs::read(file).unwrap(),
    )
}

/// Run a part to its end; what it said, or none if it could not be run at all.
fn run(mut command: process::Command) -> Option<String> {
    let output = command.stdin(Stdio::null()).output().ok()?;
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    let said = text
        .lines()
        .find_map(|line| line.split_once("said ").map(|found| found.1));
    let ran = text.contains("running 1 test");
    assert!(
        !ran || (output.status.success() && said.is_some()),
        "{text}\n{}",
        String::from_utf8_lossy(&output.stderr)
    );
    said.map(str::to_string)
}
