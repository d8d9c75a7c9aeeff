//! Formulas changed on purpose, one at a time: does a test notice?
//!
//! ```sh
//! cd tests/mutate
//! cargo run -- make ../.. /tmp/mutate            # a copy of the sources, with every change behind a number
//! cargo run -- judge /tmp/mutate --until 09:00   # which are noticed, as many as there is time for
//! cargo run -- table /tmp/mutate                 # counts by group of files, and what was not noticed
//! ```
//!
//! `make` builds the core's library tests once, with all changes in them; what does not compile is
//! left out and written down. `judge` first runs every test alone, to learn which changes it
//! reaches and how long it takes. Then it takes the changes file by file in turn, those of one
//! file in the order of their SHA-256, and runs the tests that reach the change: those of its own
//! room first, then the quickest of the others, until one fails. A test that takes 8 times as long
//! as usual and 15 s, or over 4 GiB, notices. Tests longer than 8 s are left out.
//! `judge --tests <file>` gives what was let pass only the tests named in that file, a name on
//! each line, and notes what they notice beside it. `judge --not <folder>` leaves out what an
//! earlier run tried, whose results are in that folder.
//!
//! `MUTATIONS.md` beside this folder says what came of it.

mod judge;
mod rewrite;

use rewrite::{Change, Constants, Made, Rewriter};
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::{env, fs};

/// The formula files, in groups as the table has them.
pub const GROUPS: &[(&str, &[&str])] = &[
    (
        "`plan/`: sizes, limits, fringe, grids, scraps, assembly",
        &[
            "plan/mod.rs",
            "plan/fringe.rs",
            "plan/grids.rs",
            "plan/scraps.rs",
            "plan/assembly.rs",
        ],
    ),
    ("`plan/binding`", &["plan/binding.rs"]),
    (
        "`measure/`: reading, rounding, lengths",
        &["measure/mod.rs", "measure/length.rs", "measure/count.rs"],
    ),
    ("`measure/outline`", &["measure/outline.rs"]),
    (
        "`cloth/thread`, `weight`, `bound`",
        &["cloth/thread.rs", "cloth/weight.rs", "cloth/bound.rs"],
    ),
    ("`cloth/estimate`", &["cloth/estimate.rs"]),
    ("`cloth/strips`", &["cloth/strips.rs"]),
    (
        "`cloth/cutting`, `choice`",
        &["cloth/cutting.rs", "cloth/choice.rs"],
    ),
    ("`cloth/ways`", &["cloth/ways.rs"]),
    ("`cloth/halves`", &["cloth/halves.rs"]),
    (
        "`cloth/garments`, `pieces`, `pile`, `fabric`",
        &[
            "cloth/garments.rs",
            "cloth/pieces.rs",
            "cloth/pile.rs",
            "cloth/fabric.rs",
        ],
    ),
    ("`cloth/starts`", &["cloth/starts.rs"]),
    (
        "`cloth/steps`, `reshape`, `pairs`, `patches`",
        &[
            "cloth/steps.rs",
            "cloth/reshape.rs",
            "cloth/pairs.rs",
            "cloth/patches.rs",
        ],
    ),
    ("`fitting/drift`", &["fitting/drift.rs"]),
    (
        "`fitting/reconcile`, `squaring`",
        &["fitting/reconcile.rs", "fitting/squaring.rs"],
    ),
    ("`fitting/trimming`", &["fitting/trimming.rs"]),
    ("`rescue/`", &["rescue/mod.rs", "rescue/holding.rs"]),
    ("`log/`: pace", &["log/pace.rs"]),
    (
        "`log/`: pace record, lessons",
        &["log/journal/pace_record.rs", "log/lessons.rs"],
    ),
    (
        "`throw/`: sizes, seams, stock, account, spares, cooling, fringe",
        &[
            "throw/sizes.rs",
            "throw/seams.rs",
            "throw/stock.rs",
            "throw/account.rs",
            "throw/spares.rs",
            "throw/cooling.rs",
            "throw/fringe.rs",
        ],
    ),
    (
        "`throw/`: loose, tasks, stage",
        &["throw/loose.rs", "throw/tasks.rs", "throw/stage.rs"],
    ),
    (
        "`faces/`: layers, evenness, wishes",
        &[
            "faces/spread.rs",
            "faces/arrange/evenness.rs",
            "faces/arrange/wishes.rs",
        ],
    ),
    (
        "`show/`: whole, hold, card figures, bound",
        &[
            "show/whole.rs",
            "show/hold.rs",
            "show/card_figures.rs",
            "show/bound.rs",
        ],
    ),
];

const CORE: &str = "src-tauri/core/src";

fn main() {
    let args: Vec<String> = env::args().skip(1).collect();
    let args: Vec<&str> = args.iter().map(String::as_str).collect();
    match args.as_slice() {
        ["make", root, out] => make(Path::new(root), Path::new(out)),
        ["judge", out, rest @ ..] => judge::judge(Path::new(out), rest),
        ["table", out] => judge::table(Path::new(out)),
        _ => {
            eprintln!(
                "make <root> <out> | judge <out> [--until HH:MM] [--tests <file>] [--not <folder>] | table <out>"
            );
            std::process::exit(2);
        }
    }
}

/// All Rust files below a folder, by their paths from there.
fn sources(folder: &Path, below: &Path, out: &mut Vec<String>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources(&path, below, out);
        } else if path.extension().is_some_and(|e| e == "rs") {
            out.push(path.strip_prefix(below).unwrap().to_string_lossy().into());
        }
    }
}

/// The files of all groups.
fn formula_files() -> impl Iterator<Item = &'static str> {
    GROUPS.iter().flat_map(|(_, files)| files.iter().copied())
}

/// Rewrites the copy of the core; gives what was made.
fn rewrite(root: &Path, copy: &Path, refused: &BTreeSet<String>) -> Vec<Change> {
    let from = root.join(CORE);
    let mut all = Vec::new();
    sources(&from, &from, &mut all);
    all.sort();
    let parsed: BTreeMap<String, syn::File> = all
        .iter()
        .map(|f| (f.clone(), fs::read_to_string(from.join(f)).unwrap()))
        .map(|(f, text)| (f, syn::parse_file(&text).unwrap()))
        .collect();
    let mut made = Made::without(refused);
    // A name that two formula files have means the constant of each in that file alone.
    let mut own: BTreeMap<&str, Constants> = BTreeMap::new();
    let mut times: BTreeMap<String, usize> = BTreeMap::new();
    for file in formula_files() {
        own.insert(file, made.constants(file, &parsed[file]));
    }
    for file in parsed.values() {
        for item in &file.items {
            if let syn::Item::Const(c) = item {
                *times.entry(c.ident.to_string()).or_default() += 1;
            }
        }
    }
    let everywhere: Constants = own
        .values()
        .flatten()
        .filter(|(name, _)| times.get(*name) == Some(&1))
        .map(|(name, numbers)| (name.clone(), *numbers))
        .collect();
    let formulas: BTreeSet<&str> = formula_files().collect();
    for (name, mut file) in parsed {
        let mut constants = everywhere.clone();
        constants.extend(own.get(name.as_str()).cloned().unwrap_or_default());
        let is_formula = formulas.contains(name.as_str());
        let mut rewriter = Rewriter::new(&mut made, &name, constants, is_formula);
        syn::visit_mut::VisitMut::visit_file_mut(&mut rewriter, &mut file);
        let to = copy.join(CORE).join(&name);
        let text = if rewriter.touched {
            quote::ToTokens::to_token_stream(&file).to_string()
        } else {
            fs::read_to_string(from.join(&name)).unwrap()
        };
        fs::create_dir_all(to.parent().unwrap()).unwrap();
        fs::write(to, text).unwrap();
    }
    let most = made.changes.len() + 1;
    let lib = copy.join(CORE).join("lib.rs");
    let text = fs::read_to_string(&lib).unwrap();
    fs::write(
        &lib,
        format!(
            "{text}\n{}",
            SWITCH.replace("MOST_CHANGES", &most.to_string())
        ),
    )
    .unwrap();
    made.changes
}

/// What the changed core asks: whether a change is on. With `LAPWORK_TRACE` it also writes down
/// which changes were reached.
const SWITCH: &str = r#"
fn mutant_mode() -> (u32, bool) {
    static MODE: std::sync::OnceLock<(u32, bool)> = std::sync::OnceLock::new();
    *MODE.get_or_init(|| {
        let chosen = std::env::var("LAPWORK_MUTANT").ok().and_then(|n| n.parse().ok());
        (chosen.unwrap_or(u32::MAX - 1), std::env::var_os("LAPWORK_TRACE").is_some())
    })
}

fn mutant_reached(n: u32) {
    use std::sync::atomic::{AtomicBool, Ordering};
    static SEEN: [AtomicBool; MOST_CHANGES] = [const { AtomicBool::new(false) }; MOST_CHANGES];
    if n != u32::MAX && !SEEN[n as usize].swap(true, Ordering::Relaxed) {
        use std::io::Write;
        let path = std::env::var_os("LAPWORK_TRACE").unwrap();
        let mut file = std::fs::OpenOptions::new().create(true).append(true).open(path).unwrap();
        file.write_all(format!("{n}\n").as_bytes()).unwrap();
    }
}

#[inline]
pub(crate) fn mutant(n: u32) -> bool {
    let (chosen, trace) = mutant_mode();
    if trace {
        mutant_reached(n);
    }
    chosen == n
}

pub(crate) trait Changed: Copy {
    fn more(self) -> Self;
    fn less(self) -> Self;
}

macro_rules! changed {
    ($($kind:ty),*) => { $(impl Changed for $kind {
        fn more(self) -> Self { self + self / (2 as $kind) }
        fn less(self) -> Self { self / (2 as $kind) }
    })* }
}
changed!(i64, u32, u64, usize, f64, u16, u8, i32, i128);

pub(crate) fn changed<T: Changed>(more: u32, less: u32, value: T) -> T {
    if mutant(more) {
        value.more()
    } else if mutant(less) {
        value.less()
    } else {
        value
    }
}
"#;

fn cargo(copy: &Path, target: &Path, arguments: &[&str]) -> String {
    let output = Command::new("nice")
        .arg("cargo")
        .args(arguments)
        .args(["-p", "lapwork-core", "--lib", "--message-format=json"])
        .env("CARGO_INCREMENTAL", "0")
        .env("CARGO_PROFILE_DEV_DEBUG", "false")
        .env("CARGO_TARGET_DIR", target)
        .current_dir(copy)
        .stderr(Stdio::inherit())
        .output()
        .unwrap();
    String::from_utf8_lossy(&output.stdout).into_owned()
}

/// Makes the copy and its build, leaving out what does not compile.
fn make(root: &Path, out: &Path) {
    fs::create_dir_all(out).unwrap();
    let copy = out.join("src");
    let target = env::var_os("CARGO_TARGET_DIR").map_or(out.join("target"), PathBuf::from);
    let refused_file = out.join("refused.txt");
    let mut refused: BTreeSet<String> = fs::read_to_string(&refused_file)
        .map(|text| text.lines().map(str::to_owned).collect())
        .unwrap_or_default();
    copy_tree(root, &copy);
    // What does not check is left out; the tests are only built once all else holds.
    let mut building = false;
    for round in 1..40 {
        let changes = rewrite(root, &copy, &refused);
        let command: &[&str] = if building {
            &["test", "--no-run"]
        } else {
            &["check"]
        };
        let messages = cargo(&copy, &target, command);
        let faults = faults(&messages, &copy);
        println!(
            "{} changes, {} refused, round {round}: {} faults",
            changes.len(),
            refused.len(),
            faults.len()
        );
        if faults.is_empty() {
            let binary = executable(&messages);
            if let Some(binary) = binary.filter(|_| building) {
                let list: String = changes.iter().map(line).collect();
                fs::write(out.join("changes.tsv"), list).unwrap();
                fs::copy(binary, out.join("tests")).unwrap();
                println!("built: {}", out.join("tests").display());
                return;
            }
            assert!(
                !building,
                "the build failed in a way that is not understood"
            );
            building = true;
            continue;
        }
        let of: BTreeMap<u32, &Change> = changes.iter().map(|c| (c.number, c)).collect();
        let before = refused.len();
        for number in faults {
            refused.insert(of[&number].key.clone());
        }
        assert!(refused.len() > before, "nothing more to leave out");
        let list: String = refused.iter().map(|k| format!("{k}\n")).collect();
        fs::write(&refused_file, list).unwrap();
    }
}

/// A change as a line of `changes.tsv`.
fn line(change: &Change) -> String {
    let Change {
        number,
        file,
        line,
        function,
        what,
        text,
        key,
    } = change;
    let text = text.replace('\t', " ");
    format!(
        "{number}\t{file}\t{line}\t{function}\t{what}\t{text}\t{}\n",
        key.replace('\t', " ")
    )
}

fn copy_tree(root: &Path, copy: &Path) {
    fs::create_dir_all(copy).unwrap();
    let files = Command::new("git")
        .args(["ls-files", "-z"])
        .current_dir(root)
        .output()
        .unwrap();
    for name in String::from_utf8(files.stdout).unwrap().split('\0') {
        let (from, to) = (root.join(name), copy.join(name));
        if name.is_empty() || !from.is_file() || name.starts_with(CORE) && name.ends_with(".rs") {
            continue;
        }
        fs::create_dir_all(to.parent().unwrap()).unwrap();
        fs::copy(from, to).unwrap();
    }
}

/// The numbers of the changes that the compiler's errors point at.
fn faults(messages: &str, copy: &Path) -> BTreeSet<u32> {
    let mut found = BTreeSet::new();
    for line in messages.lines() {
        let Ok(json) = serde_json::from_str::<serde_json::Value>(line) else {
            continue;
        };
        let message = &json["message"];
        if json["reason"] != "compiler-message" || message["level"] != "error" {
            continue;
        }
        let Some(spans) = message["spans"].as_array() else {
            continue;
        };
        let mut any = false;
        for span in spans.iter().filter(|s| s["is_primary"] == true) {
            let file = copy.join(span["file_name"].as_str().unwrap());
            let text = fs::read(file).unwrap();
            let (from, to) = (
                span["byte_start"].as_u64().unwrap(),
                span["byte_end"].as_u64().unwrap(),
            );
            let before = String::from_utf8_lossy(&text[..from as usize]).into_owned();
            let within = String::from_utf8_lossy(&text[from as usize..to as usize]).into_owned();
            // Usually the changed half is at fault, which stands right behind its number.
            let near = before.rfind(MARK).filter(|at| before.len() - at < 400);
            let number = near.map(|at| &before[at..]).and_then(number_at);
            let number =
                number.or_else(|| within.find(MARK).and_then(|at| number_at(&within[at..])));
            if let Some(number) = number {
                found.insert(number);
                any = true;
            }
        }
        if !any && !spans.is_empty() {
            eprintln!(
                "not understood: {}",
                message["rendered"]
                    .as_str()
                    .unwrap_or("")
                    .chars()
                    .take(600)
                    .collect::<String>()
            );
        }
    }
    found
}

const MARK: &str = "crate :: mutant (";

fn number_at(text: &str) -> Option<u32> {
    let digits: String = text[MARK.len()..]
        .trim_start()
        .chars()
        .take_while(char::is_ascii_digit)
        .collect();
    digits.parse().ok()
}

fn executable(messages: &str) -> Option<PathBuf> {
    messages
        .lines()
        .filter_map(|line| serde_json::from_str::<serde_json::Value>(line).ok())
        .filter(|json| {
            json["reason"] == "compiler-artifact" && json["target"]["name"] == "lapwork_core"
        })
        .filter_map(|json| Some(PathBuf::from(json["executable"].as_str()?)))
        .next_back()
}
