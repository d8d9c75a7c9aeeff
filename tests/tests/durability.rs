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
use lapwork_tests::maker::{Chance, beginning, deed, done, entries, note};
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
        done(&mut journal, &deed(&mut chance), START + at);
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

/// What became of a broken file.
#[derive(Debug, PartialEq, Eq, Clone, Copy)]
enum Came {
    /// Nothing was left out, and everything is there, or (cut between two lines) `less`.
    Whole { less: bool },
    /// The end was left out, a copy kept, and both told.
    Cut,
    /// Refused and told, and left untouched.
    Refused,
}

/// Open a throw whose file was broken, see that what stands is the beginning of what
/// there was, write to it, and open it again.
fn mended(folder: &Path, broken: &[u8], was: &Journal, what: &str) -> Came {
    static WORDS: LazyLock<Words> = LazyLock::new(Words::english);
    let file = lay(folder, broken);
    let store = claimed(folder);
    let mut opened = match store.open(&id(), START) {
        Ok(opened) => opened,
        Err(error) => {
            assert!(
                matches!(error, StoreError::Damaged { .. }),
                "{what}: {error:?}"
            );
            let problem = message(&WORDS, &error);
            let place = file.to_str().unwrap();
            let told = format!("{} {}", problem.said, problem.next);
            assert!(told.contains(place), "{what}: {told}");
            assert_eq!(fs::read(&file).unwrap(), broken, "{what}: touched");
            assert_eq!(fs::read_dir(file.parent().unwrap()).unwrap().count(), 1);
            return Came::Refused;
        }
    };
    assert!(!opened.torn() && !opened.held(), "{what}");
    let kept = opened.journal.text();
    assert!(
        was.text().starts_with(&kept),
        "{what}: something else is kept"
    );
    let came = match &opened.mended {
        Some(mended) => {
            assert_eq!(fs::read(&mended.copy).unwrap(), broken, "{what}: the copy");
            let left = fs::read(&file).unwrap();
            assert_eq!(
                left.len() as u64 + mended.bytes,
                broken.len() as u64,
                "{what}"
            );
            assert!(broken.starts_with(&left), "{what}");
            Came::Cut
        }
        None => Came::Whole {
            less: kept.trim_end() != was.text().trim_end(),
        },
    };
    let before = opened.journal.len();
    for text in ["after", "and again"] {
        let Request::Act { action } = note(text) else {
            unreachable!()
        };
        let entry = opened.journal.propose(&action, START).unwrap();
        store.append(&id(), &mut opened, &entry).unwrap();
        opened.accept(entry).unwrap();
    }
    drop(store);
    let again = claimed(folder).open(&id(), START).unwrap();
    assert!(again.mended.is_none(), "{what}: torn a second time");
    assert_eq!(again.journal.len(), before + 2, "{what}");
    assert_eq!(again.journal.throw(), opened.journal.throw(), "{what}");
    came
}

#[test]
fn cut_at_every_byte() {
    let _alone = alone();
    let folder = quick();
    let mut cases = BTreeMap::new();
    let mut lost = 0;
    let mut try_cuts = |journal: &Journal, from: usize| {
        let text = journal.text();
        // Where each entry's line ends, without its newline.
        let ends: Vec<usize> = text.match_indices('\n').map(|(at, _)| at).collect();
        for cut in from..=text.len() {
            let came = mended(
                folder.path(),
                &text.as_bytes()[..cut],
                journal,
                &format!("cut at {cut}"),
            );
            *cases.entry(format!("{came:?}")).or_insert(0) += 1;
            let whole = ends.iter().skip(1).filter(|end| **end <= cut).count();
            let kept = match came {
                Came::Refused => 0,
                _ => {
                    let read = claimed(folder.path()).open(&id(), START).unwrap();
                    read.journal.len() - 2
                }
            };
            lost += whole - kept;
        }
    };
    try_cuts(&record(7, 12), 0);
    let large = record(11, 400);
    let text = large.text();
    let from = text.rmatch_indices('\n').nth(6).unwrap().0;
    try_cuts(&large, from);
    let all: i32 = cases.values().sum();
    println!("cut at every byte: {all} cases {cases:?}, whole entries lost: {lost}");
    assert!(all > 2000 && lost == 0);
}

#[test]
fn every_bit_flipped() {
    let _alone = alone();
    let journal = record(3, 7);
    let bytes = journal.text().into_bytes();
    let halves = [0..bytes.len() / 2, bytes.len() / 2..bytes.len()];
    let tried = std::thread::scope(|scope| {
        let working = halves.map(|half| {
            let (bytes, journal) = (&bytes, &journal);
            scope.spawn(move || {
                let folder = quick();
                let mut cases = BTreeMap::new();
                for (byte, bit) in half.flat_map(|byte| (0..8).map(move |bit| (byte, bit))) {
                    let mut broken = bytes.clone();
                    broken[byte] ^= 1 << bit;
                    let came = mended(
                        folder.path(),
                        &broken,
                        journal,
                        &format!("bit {bit} of byte {byte}"),
                    );
                    assert_ne!(came, Came::Whole { less: true }, "bit {bit} of byte {byte}");
                    *cases.entry(format!("{came:?}")).or_insert(0) += 1;
                }
                cases
            })
        });
        working.map(|half| half.join().unwrap())
    });
    let mut cases: BTreeMap<String, usize> = BTreeMap::new();
    for (came, count) in tried.into_iter().flatten() {
        *cases.entry(came).or_default() += count;
    }
    let all: usize = cases.values().sum();
    println!("every bit of a file flipped: {all} cases {cases:?}, lost untold: 0");
    assert_eq!(all, bytes.len() * 8);
}

#[test]
fn bytes_of_a_large_file_changed() {
    let _alone = alone();
    let journal = record(5, 500);
    let bytes = journal.text().into_bytes();
    let folder = quick();
    let mut chance = Chance(17);
    let mut cases = BTreeMap::new();
    for case in 0..240 {
        let mut broken = bytes.clone();
        for _ in 0..1 + chance.below(3) {
            let near_the_end = case % 3 == 0;
            let from = if near_the_end { bytes.len() - 400 } else { 0 };
            let at = from + chance.below((bytes.len() - from) as u64) as usize;
            broken[at] = chance.draw() as u8;
        }
        if case % 5 == 0 {
            // What a power cut leaves of pages never written.
            let from = broken.len() - chance.below(600) as usize;
            broken[from..].fill(0);
        }
        let came = mended(folder.path(), &broken, &journal, &format!("case {case}"));
        *cases.entry(format!("{came:?}")).or_insert(0) += 1;
    }
    println!("random bytes of a large file changed: 240 cases {cases:?}, lost untold: 0");
}

// ── Kills ────────────────────────────────────────────────────────────────────

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

/// Does one deed after another and says so after each, until it is killed.
#[test]
fn part_maker() {
    let _alone = alone();
    let Some((folder, seed)) = asked("part_maker") else {
        return;
    };
    let mut service = serve(folder);
    let hello = service.hello(START);
    if let Some(problem) = hello.problem {
        say(&format!("problem {}", problem.code));
        return;
    }
    say("ready");
    let mut chance = Chance(seed);
    let id = "a";
    for at in 0..400 {
        let deed = deed(&mut chance);
        let done = service.act(id, &deed, START + at);
        say(&format!("done {at} {}", done.is_ok()));
        match at % 16 {
            5 => {
                let prefs = Prefs {
                    text: 100 + (at % 90) as u16,
                    ..Prefs::default()
                };
                service.set_prefs(prefs, START).unwrap();
            }
            9 => {
                let action = beginning("Passing", 2, 2);
                let begun = service
                    .tend(
                        &ShelfCommand::Begin {
                            action,
                            pile: Vec::new(),
                        },
                        START,
                    )
                    .unwrap()
                    .id
                    .unwrap();
                service
                    .tend(&ShelfCommand::Delete { id: begun.clone() }, START)
                    .unwrap();
                service
                    .tend(&ShelfCommand::Erase { id: begun }, START)
                    .unwrap();
            }
            13 => {
                service
                    .tend(&ShelfCommand::Delete { id: id.into() }, START)
                    .unwrap();
                service
                    .tend(&ShelfCommand::Restore { id: id.into() }, START)
                    .unwrap();
            }
            _ => {}
        }
    }
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

/// Kill a maker `kills` times in one folder after another; gives deeds acknowledged,
/// deeds in flight that were kept, and torn lines.
fn kill_makers(kills: u64, seed: u64) -> (u64, u64, u64) {
    let mut chance = Chance(seed);
    let (mut acknowledged, mut in_flight, mut torn) = (0, 0, 0);
    let mut folder = tempfile::tempdir().unwrap();
    let mut journal = record(seed, 1);
    claimed(folder.path()).begin(&id(), &journal).unwrap();
    for round in 0..kills {
        if round % 30 == 29 {
            folder = tempfile::tempdir().unwrap();
            journal = record(seed + round, 1);
            claimed(folder.path()).begin(&id(), &journal).unwrap();
        }
        let its_seed = chance.draw();
        let (mut child, mut out) = spawn(&mut part("part_maker", folder.path(), its_seed, &[]));
        assert!(line(&mut out, "ready").is_some(), "it did not start");
        let most = 1 + chance.below(30);
        let mut acked = 0;
        let mut said = Vec::new();
        while acked < most {
            let Some(answer) = line(&mut out, "done ") else {
                break;
            };
            said.push(answer.ends_with("true"));
            acked += 1;
        }
        std::thread::sleep(Duration::from_micros(chance.below(2500)));
        kill(&mut child);
        while let Some(answer) = line(&mut out, "done ") {
            if answer.split(' ').count() == 3 {
                said.push(answer.ends_with("true"));
            }
        }
        acknowledged += said.len() as u64;
        // What must be there: all that was said, perhaps one deed more.
        let mut its = Chance(its_seed);
        for (at, fine) in said.iter().enumerate() {
            let did = done(&mut journal, &deed(&mut its), START + at as Time);
            assert_eq!(did, *fine, "deed {at} of {its_seed}");
        }
        let mut after = journal.clone();
        done(&mut after, &deed(&mut its), START + said.len() as Time);

        let mut service = serve(folder.path());
        assert_eq!(service.hello(START).problem, None);
        let mut shelf = service.shelf(START);
        if shelf.rows.iter().all(|row| row.id != "a") {
            // Killed between deleting and restoring.
            let restored = service.tend(&ShelfCommand::Restore { id: "a".into() }, START);
            shelf = restored.unwrap().shelf;
        }
        for row in shelf.rows.iter().chain(&shelf.deleted) {
            let fine = row
                .problem
                .as_ref()
                .is_none_or(|problem| problem.code == "torn");
            torn += u64::from(row.problem.is_some());
            assert!(fine && row.head.is_some(), "{row:?}");
        }
        let text = read(folder.path()).0.journal.text();
        if text == after.text() && text != journal.text() {
            in_flight += 1;
            journal = after;
        }
        assert_eq!(
            text,
            journal.text(),
            "kill {round}, {} acknowledged",
            said.len()
        );
        // And on: write, and open again.
        service.act("a", &note("after the dark"), START).unwrap();
        assert!(done(&mut journal, &note("after the dark"), START));
        drop(service);
        assert_eq!(read(folder.path()).0.journal.text(), journal.text());
    }
    (acknowledged, in_flight, torn)
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

#[test]
fn killed_at_any_moment() {
    let _alone = alone();
    const KILLS: u64 = 300;
    let sums = std::thread::scope(|scope| {
        let two = [1000, 2000].map(|seed| scope.spawn(move || kill_makers(KILLS / 2, seed)));
        two.map(|one| one.join().unwrap())
    });
    let acknowledged: u64 = sums.iter().map(|sum| sum.0).sum();
    let in_flight: u64 = sums.iter().map(|sum| sum.1).sum();
    let torn: u64 = sums.iter().map(|sum| sum.2).sum();
    println!(
        "killed with -9: {KILLS} kills, {acknowledged} deeds acknowledged, lost: 0; \
         {in_flight} in flight kept whole, {torn} torn lines"
    );
    assert!(acknowledged > 2000);
}

// ── A disk that fails ────────────────────────────────────────────────────────

/// One thing to do at the service; throws are known by their names.
#[derive(Debug, Clone)]
enum Step {
    Begin(&'static str),
    Act(&'static str, Request),
    Text(u16),
    Delete(&'static str),
    Restore(&'static str),
    Erase(&'static str),
}

impl Step {
    /// The throw it is about.
    fn throw(&self) -> Option<&'static str> {
        match self {
            Step::Begin(name)
            | Step::Act(name, _)
            | Step::Delete(name)
            | Step::Restore(name)
            | Step::Erase(name) => Some(name),
            Step::Text(_) => None,
        }
    }
}

/// A morning at the service: each kind of writing once at least.
fn script() -> Vec<Step> {
    use Step::{Act, Begin, Delete, Erase, Restore, Text};
    let cut = || {
        let cut = json!({"do": "tick-next", "task": "cut", "kind": "square", "count": 2});
        Request::Act {
            action: serde_json::from_value(cut).unwrap(),
        }
    };
    vec![
        Begin("one"),
        Act("one", cut()),
        Act("one", note(&"long ".repeat(300))),
        Text(120),
        Begin("two"),
        Act("two", note("short")),
        Act("two", Request::Undo),
        Delete("one"),
        Act("two", Request::Redo),
        Restore("one"),
        Act("one", note("back")),
        Delete("two"),
        Erase("two"),
        Text(150),
        Act("one", cut()),
        Act("one", Request::Undo),
    ]
}

/// What lies in a data folder: for each throw where it is and its record; and the text
/// size of the settings.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
struct Lies {
    throws: BTreeMap<String, (bool, String)>,
    text: u16,
}

struct Meant {
    throws: BTreeMap<String, (bool, Journal)>,
    text: u16,
}

impl Meant {
    fn lies(&self) -> Lies {
        let throws = self.throws.iter();
        Lies {
            throws: throws
                .map(|(name, (deleted, journal))| (name.clone(), (*deleted, entries(journal))))
                .collect(),
            text: self.text,
        }
    }

    fn after(&self, step: &Step, at: Time) -> Meant {
        let mut throws = self.throws.clone();
        let mut text = self.text;
        match step {
            Step::Begin(name) => {
                let (journal, _) = Journal::begin(&beginning(name, 2, 2), at).unwrap();
                throws.insert((*name).into(), (false, journal));
            }
            Step::Act(name, deed) => {
                let (_, journal) = throws.get_mut(*name).unwrap();
                assert!(done(journal, deed, at), "{step:?} is not allowed");
            }
            Step::Text(size) => text = *size,
            Step::Delete(name) => throws.get_mut(*name).unwrap().0 = true,
            Step::Restore(name) => throws.get_mut(*name).unwrap().0 = false,
            Step::Erase(name) => {
                throws.remove(*name);
            }
        }
        Meant { throws, text }
    }
}

fn lies(folder: &Path) -> Lies {
    let store = desktop::store(folder.to_path_buf());
    let mut lies = Lies {
        text: store.settings().unwrap().unwrap_or_default().text,
        ..Lies::default()
    };
    for place in [Place::Throws, Place::Deleted] {
        for id in store.ids(place).unwrap() {
            let opened = store.read(place, &id);
            let opened = opened.unwrap_or_else(|why| panic!("{}: {why:?}", id.as_str()));
            let journal = opened.journal;
            let name = journal.throw().name.clone();
            let other = lies
                .throws
                .insert(name.clone(), (place == Place::Deleted, entries(&journal)));
            assert!(other.is_none(), "{name} is there twice");
        }
    }
    lies
}

/// The id of the throw of that name.
fn named(folder: &Path, name: &str) -> String {
    let store = desktop::store(folder.to_path_buf());
    for place in [Place::Throws, Place::Deleted] {
        for id in store.ids(place).unwrap() {
            let opened = store.read(place, &id);
            if opened.is_ok_and(|opened| opened.journal.throw().name == name) {
                return id.as_str().to_string();
            }
        }
    }
    String::from("not-there")
}

/// Do a step; the code of the problem if it is not done.
fn take(service: &mut Service, folder: &Path, step: &Step, at: Time) -> Result<(), String> {
    let done = match step {
        Step::Begin(name) => {
            let action = beginning(name, 2, 2);
            service
                .tend(
                    &ShelfCommand::Begin {
                        action,
                        pile: Vec::new(),
                    },
                    at,
                )
                .map(|_| ())
        }
        Step::Act(name, deed) => service.act(&named(folder, name), deed, at).map(|_| ()),
        Step::Text(size) => {
            let prefs = Prefs {
                text: *size,
                ..Prefs::default()
            };
            service.set_prefs(prefs, at).map(|_| ())
        }
        Step::Delete(name) => {
            let id = named(folder, name);
            service.tend(&ShelfCommand::Delete { id }, at).map(|_| ())
        }
        Step::Restore(name) => {
            let id = named(folder, name);
            service.tend(&ShelfCommand::Restore { id }, at).map(|_| ())
        }
        Step::Erase(name) => {
            let id = named(folder, name);
            service.tend(&ShelfCommand::Erase { id }, at).map(|_| ())
        }
    };
    done.map_err(|problem| {
        assert!(
            problem.said.len() > 10 && problem.next.len() > 10,
            "{problem:?}"
        );
        problem.code
    })
}

/// Open what is left, see that it is one of those that may be, write, open again.
fn goes_on(folder: &Path, may_be: &[Lies], what: &str) {
    let mut service = serve(folder);
    let hello = service.hello(START);
    assert_eq!(hello.problem, None, "{what}");
    let rows = hello.shelf.rows.iter().chain(&hello.shelf.deleted);
    for row in rows {
        let torn = row.problem.as_ref().is_none_or(|p| p.code == "torn");
        assert!(torn && row.head.is_some(), "{what}: {row:?}");
    }
    let found = lies(folder);
    assert!(
        may_be.contains(&found),
        "{what}\nfound {found:#?}\nmay be {may_be:#?}"
    );
    for row in &hello.shelf.rows {
        let head = service.act(&row.id, &note("going on"), START).unwrap();
        service.set_prefs(Prefs::default(), START).unwrap();
        drop(service);
        service = serve(folder);
        assert_eq!(service.hello(START).problem, None, "{what}");
        let look = serde_json::from_value(json!({"see": "trim"})).unwrap();
        let seen = serde_json::to_value(service.look(&row.id, &look, START).unwrap()).unwrap();
        assert_eq!(seen["head"]["entry"], head.entry, "{what}");
    }
}

/// One morning with one fault; whether it was met.
fn morning(fault: Fault, then: Then, told: &mut Told) -> bool {
    let what = format!("{fault:?} {then:?}");
    let (folder, left) = (quick(), quick());
    let shown = folder.path().join("data");
    fs::create_dir(&shown).unwrap();
    let disk = Forgetful::new(&shown, Some(fault));
    let mut service = serve_on(shown.clone(), disk.clone());
    let _ = service.hello(START);
    let mut meant = Meant {
        throws: BTreeMap::new(),
        text: Prefs::default().text,
    };
    let mut may_be = vec![meant.lies()];
    let mut unsure: Option<(&str, Option<(bool, String)>)> = None;
    for (n, step) in script().iter().enumerate() {
        let at = START + n as Time;
        let after = meant.after(step, at);
        if unsure
            .as_ref()
            .is_some_and(|(name, _)| step.throw() == Some(name))
        {
            unsure = None;
        }
        may_be = match take(&mut service, &shown, step, at) {
            Ok(()) => vec![after.lies()],
            Err(code) => {
                *told.entry(code).or_default() += 1;
                vec![meant.lies(), after.lies()]
            }
        };
        if may_be.len() == 1 {
            meant = after;
            continue;
        }
        let now = lies(&shown);
        assert!(
            may_be.contains(&now),
            "{what}, {step:?}: {now:#?} {may_be:#?}"
        );
        if !matches!(then, Then::GoesOn(..)) {
            break;
        }
        // She sees what is there, which the window asks for at once, and does it again if it
        // is not.
        disk.mend();
        let _ = service.shelf(at);
        let told = matches!(step, Step::Text(_));
        if now != after.lies() || told {
            let again = take(&mut service, &shown, step, at);
            assert_eq!(again, Ok(()), "{what}, {step:?}");
        }
        may_be = vec![after.lies()];
        if let (Step::Delete(name) | Step::Restore(name) | Step::Erase(name), true) =
            (step, now == after.lies())
        {
            unsure = Some((name, meant.lies().throws.remove(*name)));
        }
        meant = after;
    }
    // She was told that the disk did not say it is safe, and did no more about it.
    if let Some((name, Some(throw))) = unsure {
        let mut back = may_be[0].clone();
        back.throws.insert(name.to_string(), throw);
        may_be.push(back);
    }
    let met = disk.count() > fault.at;
    drop(service);
    match then {
        Then::Reopens => goes_on(&shown, &may_be, &what),
        Then::PowerGoes(names, bytes) | Then::GoesOn(names, bytes) => {
            disk.after_power_cut(left.path(), names, bytes);
            goes_on(left.path(), &may_be, &what);
        }
    }
    met
}

#[test]
fn a_fault_at_every_operation() {
    let _alone = alone();
    // How many operations the morning has.
    let folder = quick();
    let shown = folder.path().join("data");
    fs::create_dir(&shown).unwrap();
    let disk = Forgetful::new(&shown, None);
    let mut service = serve_on(shown.clone(), disk.clone());
    assert_eq!(service.hello(START).problem, None);
    for (n, step) in script().iter().enumerate() {
        take(&mut service, &shown, step, START + n as Time).unwrap();
    }
    let count = disk.count();
    let plain = Fault {
        at: 0,
        how: How::Fails(EIO),
        lasting: false,
        forgets: false,
    };
    let kinds = [
        plain,
        Fault {
            forgets: true,
            ..plain
        },
        Fault {
            lasting: true,
            ..plain
        },
        Fault {
            lasting: true,
            forgets: true,
            ..plain
        },
        Fault {
            how: How::Fails(ENOSPC),
            ..plain
        },
        Fault {
            how: How::Fails(EROFS),
            lasting: true,
            ..plain
        },
        Fault {
            how: How::Late(EIO),
            ..plain
        },
        Fault {
            how: How::Late(EIO),
            lasting: true,
            ..plain
        },
        Fault {
            how: How::Short,
            ..plain
        },
    ];
    let all = cases(count, &kinds);
    let (met, told) = in_halves(&all, morning);
    println!(
        "a fault at each of {count} operations: {} cases, {met} met, told {told:?}, lost: 0",
        all.len()
    );
    assert!(met > 1500);
}

// ── A full disk ──────────────────────────────────────────────────────────────

/// Fill the data folder's disk to all but so much, then work until it is full; see that
/// nothing is lost; make room and go on. Gives how many writes were refused.
fn full(data: &Path, filler: &Path, room: u64, long: usize) -> usize {
    let _ = fs::remove_dir_all(data);
    let mut service = serve(data);
    assert_eq!(service.hello(START).problem, None);
    let id = service
        .tend(&ShelfCommand::Demo, START)
        .unwrap()
        .id
        .unwrap();
    // All of the disk, then give back `room`.
    let mut fill = fs::File::create(filler).unwrap();
    let block = [1u8; 1024];
    while fill.write_all(&block).is_ok() {}
    let length = fill.metadata().unwrap().len();
    fill.set_len(length.saturating_sub(room)).unwrap();
    drop(fill);
    let file = data.join("throws").join(&id).join("throw.jsonl");
    let mut refused = 0;
    for n in 0..400 {
        let kept = fs::read(&file).unwrap();
        let deed = note(&format!("{n} {}", "x".repeat(long)));
        if let Err(problem) = service.act(&id, &deed, START) {
            assert_eq!(problem.code, "disk", "{problem:?}");
            assert!(problem.said.contains("full"), "{problem:?}");
            assert_eq!(fs::read(&file).unwrap(), kept);
            refused += 1;
            break;
        }
    }
    let prefs = Prefs {
        text: 140,
        ..Prefs::default()
    };
    if let Err(problem) = service.set_prefs(prefs, START) {
        assert_eq!(problem.code, "disk");
        refused += 1;
    }
    if let Err(problem) = service.tend(&ShelfCommand::Demo, START) {
        assert_eq!(problem.code, "disk");
        assert_eq!(
            service.shelf(START).rows.len(),
            1,
            "half a throw is on the shelf"
        );
        refused += 1;
    }
    // A torn line cannot be mended now, and is left as it is.
    let whole = fs::read(&file).unwrap();
    drop(service);
    let cut = fs::OpenOptions::new().write(true).open(&file).unwrap();
    cut.set_len(whole.len() as u64 - 3).unwrap();
    let mut service = serve(data);
    let hello = service.hello(START);
    let row = hello.shelf.rows.iter().find(|row| row.id == id).unwrap();
    let code = row.problem.as_ref().unwrap().code.clone();
    assert!(row.head.is_some() && ["torn", "torn-left"].contains(&code.as_str()));
    if code == "torn-left" {
        assert_eq!(fs::read(&file).unwrap(), whole[..whole.len() - 3]);
        assert!(service.act(&id, &note("no"), START).is_err());
        refused += 1;
    }
    drop(service);
    fs::remove_file(filler).unwrap();
    let mut service = serve(data);
    let head = service
        .hello(START)
        .shelf
        .rows
        .into_iter()
        .find(|row| row.id == id);
    let before = head.and_then(|row| row.head).unwrap().entry;
    let after = service.act(&id, &note("room again"), START).unwrap();
    assert_eq!(after.entry, before + 1);
    drop(service);
    let mut service = serve(data);
    let shelf = service.hello(START).shelf;
    let row = shelf.rows.iter().find(|row| row.id == id).unwrap();
    assert_eq!(row.problem, None);
    assert_eq!(row.head.as_ref().unwrap().entry, after.entry);
    refused
}

#[test]
fn part_full() {
    let _alone = alone();
    let Some((disk, _)) = asked("part_full") else {
        return;
    };
    let (mut cases, mut refused) = (0, 0);
    for pages in 0..14 {
        for long in [0, 40, 300, 900, 1900] {
            refused += full(&disk.join("data"), &disk.join("filler"), pages * 4096, long);
            cases += 1;
        }
    }
    say(&format!(
        "said a full disk: {cases} cases, {refused} writes refused, lost: 0"
    ));
}

/// The system lets no file grow past a limit, at every byte of an entry.
#[test]
fn part_limited() {
    let _alone = alone();
    let Some((folder, _)) = asked("part_limited") else {
        return;
    };
    let journal = record(9, 20);
    let mut cases = 0;
    for long in [0, 700] {
        let deed = note(&format!("so {}", "x".repeat(long)));
        let mut after = journal.clone();
        done(&mut after, &deed, START);
        let (least, most) = (journal.text().len(), after.text().len());
        for limit in least..=most {
            let folder = folder.join(format!("{long}-{limit}"));
            claimed(&folder).begin(&id(), &journal).unwrap();
            let mut service = serve(folder.clone());
            assert_eq!(service.hello(START).problem, None);
            let limits = |current: Option<u64>| Rlimit {
                current,
                maximum: None,
            };
            setrlimit(Resource::Fsize, limits(Some(limit as u64))).unwrap();
            let kept = service.act("a", &deed, START);
            let bytes = read(&folder).1;
            setrlimit(Resource::Fsize, limits(None)).unwrap();
            assert_eq!(kept.is_ok(), limit == most, "{limit}");
            let meant = if limit == most { &after } else { &journal };
            assert_eq!(bytes, meant.text().as_bytes(), "{limit}");
            service.act("a", &note("on"), START).unwrap();
            drop(service);
            assert_eq!(read(&folder).0.journal.len(), meant.len() + 1);
            cases += 1;
        }
    }
    say(&format!(
        "said a file that may not grow (EFBIG): {cases} cases, lost: 0"
    ));
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

#[test]
fn a_disk_that_is_full() {
    let _alone = alone();
    let folder = tempfile::tempdir().unwrap();
    let disk = folder.path().join("disk");
    fs::create_dir(&disk).unwrap();
    let mount = "mount -t tmpfs -o size=512k none \"$1\" && shift && exec \"$@\"";
    let place = disk.to_str().unwrap();
    let before = ["unshare", "--mount", "sh", "-c", mount, "sh", place];
    match run(part("part_full", &disk, 0, &before)) {
        Some(said) => println!("{said} (a tmpfs of 512 KiB)"),
        None => println!(
            "a full disk: no tmpfs may be mounted here; ENOSPC at every operation stands in \
             for it (a_fault_at_every_operation)"
        ),
    }
    let limit = ["sh", "-c", "trap '' XFSZ; exec \"$@\"", "sh"];
    let said = run(part("part_limited", quick().path(), 0, &limit));
    println!("{}", said.expect("a shell"));
}

// ── A folder that may not be written ─────────────────────────────────────────

/// Everything can be looked at, nothing is written, and that is told.
fn look_only(data: &Path) {
    let before = lies(data);
    let mut service = serve(data);
    let hello = service.hello(START);
    assert_eq!(hello.problem.unwrap().code, "disk");
    let row = &hello.shelf.rows[0];
    assert!(row.head.is_some(), "it can be read");
    for deed in [note("no"), Request::Undo] {
        let refused = service.act(&row.id, &deed, START).unwrap_err();
        assert_eq!(refused.code, "disk");
        assert!(refused.said.contains("may not"), "{refused:?}");
    }
    let id = row.id.clone();
    for tend in [ShelfCommand::Demo, ShelfCommand::Delete { id }] {
        assert_eq!(service.tend(&tend, START).unwrap_err().code, "disk");
    }
    assert_eq!(
        service.set_prefs(Prefs::default(), START).unwrap_err().code,
        "disk"
    );
    assert_eq!(lies(data), before);
}

#[test]
fn part_look_only() {
    let _alone = alone();
    if let Some((folder, _)) = asked("part_look_only") {
        look_only(&folder);
        say("said nothing written, all told, all to be seen");
    }
}

#[test]
fn a_folder_that_may_only_be_read() {
    let _alone = alone();
    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().join("data");
    claimed(&data).begin(&id(), &record(1, 5)).unwrap();
    let nobody = [
        "setpriv",
        "--reuid=65534",
        "--regid=65534",
        "--clear-groups",
    ];
    let root = rustix::process::geteuid().is_root();
    let open =
        "chmod -R a+rX \"$1\" && chmod a-w \"$1\" \"$1\"/* \"$1\"/*/* && chmod a-w \"$1\"/lock";
    let opened = process::Command::new("sh")
        .args(["-c", open, "sh"])
        .arg(&data)
        .status()
        .unwrap();
    assert!(opened.success());
    fs::set_permissions(
        folder.path(),
        std::os::unix::fs::PermissionsExt::from_mode(0o755),
    )
    .unwrap();
    let bits = if root {
        run(part("part_look_only", &data, 0, &nobody))
    } else {
        run(part("part_look_only", &data, 0, &[]))
    };
    match bits {
        Some(said) => println!("permission bits, not as root: {said}"),
        None => println!("permission bits: not run, no other user to be here"),
    }
    let mount =
        "mount --bind \"$1\" \"$1\" && mount -o remount,bind,ro \"$1\" && shift && exec \"$@\"";
    let place = data.to_str().unwrap();
    let bound = ["unshare", "--mount", "sh", "-c", mount, "sh", place];
    match run(part("part_look_only", &data, 0, &bound)) {
        Some(said) => println!("a read-only mount: {said}"),
        None => println!("a read-only mount: not run, nothing may be mounted here"),
    }
    println!("EROFS at every operation: see a_fault_at_every_operation");
    let again = process::Command::new("chmod")
        .args(["-R", "u+w"])
        .arg(&data)
        .status();
    assert!(again.unwrap().success());
    goes_on(&data, &[lies(&data)], "writable again");
}

// ── Two at once ──────────────────────────────────────────────────────────────

/// Tries to write, a few deeds if it may, and says what it kept.
#[test]
fn part_rival() {
    let _alone = alone();
    let Some((folder, seed)) = asked("part_rival") else {
        return;
    };
    let mut service = serve(folder);
    let mut kept = 0;
    for n in 0..8 {
        match service.act("a", &note(&format!("{seed}-{n}")), START) {
            Ok(_) => kept += 1,
            Err(problem) => assert_eq!(problem.code, "locked", "{problem:?}"),
        }
    }
    say(&format!("said {kept}"));
}

#[test]
fn two_on_one_folder() {
    let _alone = alone();
    // One holds the folder, the other looks on.
    let folder = tempfile::tempdir().unwrap();
    claimed(folder.path()).begin(&id(), &record(2, 1)).unwrap();
    let (mut child, mut out) = spawn(&mut part("part_maker", folder.path(), 5, &[]));
    assert!(line(&mut out, "done ").is_some());
    let mut looking = serve(folder.path());
    let hello = looking.hello(START);
    assert_eq!(hello.problem.unwrap().code, "locked");
    let mut refused = 0;
    for _ in 0..50 {
        let problem = looking.act("a", &note("no"), START).unwrap_err();
        assert!(
            ["locked", "no-such-throw"].contains(&problem.code.as_str()),
            "{problem:?}"
        );
        refused += 1;
    }
    kill(&mut child);
    assert_eq!(looking.hello(START).problem, None);
    if looking.shelf(START).rows.is_empty() {
        looking
            .tend(&ShelfCommand::Restore { id: "a".into() }, START)
            .unwrap();
    }
    looking.act("a", &note("now"), START).unwrap();
    drop(looking);
    assert!(!read(folder.path()).0.torn());
    // Three rush at it.
    let mut kept = 0;
    let mut journal_was = read(folder.path()).0.journal.len();
    for round in 0..12 {
        let three = [0, 1, 2].map(|n| {
            let mut rival = part("part_rival", folder.path(), round * 3 + n, &[]);
            spawn(&mut rival)
        });
        let mut now = 0;
        for (mut child, mut out) in three {
            let said = line(&mut out, "said ").expect("it ends well");
            now += said.trim_start_matches("said ").parse::<usize>().unwrap();
            assert!(child.wait().unwrap().success());
        }
        let opened = read(folder.path()).0;
        assert!(!opened.torn());
        assert_eq!(opened.journal.len(), journal_was + now, "round {round}");
        journal_was = opened.journal.len();
        kept += now;
    }
    assert!(kept > 0);
    println!(
        "two on one folder: {refused} deeds refused while held; 12 rushes of 3 processes, \
         {kept} deeds acknowledged, lost: 0"
    );
}

// ── The clock ────────────────────────────────────────────────────────────────

#[test]
fn a_clock_set_back_and_forth() {
    let _alone = alone();
    let folder = quick();
    claimed(folder.path()).begin(&id(), &record(4, 1)).unwrap();
    let mut journal = (*read(folder.path()).0.journal).clone();
    let mut chance = Chance(23);
    let year = 31_557_600_000;
    let looks: Vec<Value> = vec![
        json!({"see": "work", "station": null, "batch": null}),
        json!({"see": "bench", "chosen": [0, 0, 1, 1]}),
        json!({"see": "history", "most": 500}),
        json!({"see": "gather"}),
    ];
    let mut cases = 0;
    for round in 0..60 {
        let mut service = serve(folder.path());
        assert_eq!(service.hello(START).problem, None);
        for _ in 0..10 {
            let at = match chance.below(6) {
                0 => 0,
                1 => Time::MAX,
                2 => START - chance.below(50) as Time * year,
                3 => START + chance.below(200) as Time * year,
                _ => START + chance.below(100_000) as Time,
            };
            let deed = deed(&mut chance);
            let fine = service.act("a", &deed, at).is_ok();
            assert_eq!(fine, done(&mut journal, &deed, at));
            for look in &looks {
                let look = serde_json::from_value(look.clone()).unwrap();
                service.look("a", &look, START).unwrap();
                service.look("a", &look, at).unwrap();
            }
            service.shelf(at);
            cases += 1;
        }
        drop(service);
        assert_eq!(
            read(folder.path()).0.journal.text(),
            journal.text(),
            "round {round}"
        );
    }
    // Two torn lines at the same moment: both copies stay.
    let text = journal.text();
    let mut copies = Vec::new();
    for left in [5, 9] {
        let file = folder.path().join("throws/a/throw.jsonl");
        let torn = &text.as_bytes()[..text.len() - left];
        fs::write(&file, torn).unwrap();
        let opened = claimed(folder.path()).open(&id(), START).unwrap();
        let copy = opened.mended.unwrap().copy;
        copies.push((copy, torn.to_vec()));
    }
    for (copy, torn) in copies {
        assert_eq!(fs::read(&copy).unwrap(), torn);
    }
    println!("clock set back and forth: {cases} deeds, 60 times opened again, lost: 0");
}
