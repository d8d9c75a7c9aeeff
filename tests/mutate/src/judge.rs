//! Which changes are noticed, and the table of it.

use crate::{GROUPS, formula_files};
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};
use std::fs::{self, OpenOptions};
use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant};

/// Tests longer than this are left out.
const LONGEST: f64 = 8.0;
/// Tests are run together until their usual times come to this, in seconds.
const TOGETHER: f64 = 2.0;
/// So many run at a time.
const AT_A_TIME: usize = 2;

/// A line of `changes.tsv`.
struct Change {
    number: u32,
    file: String,
    key: String,
    told: String,
}

fn changes(out: &Path) -> Vec<Change> {
    let text = fs::read_to_string(out.join("changes.tsv")).unwrap();
    text.lines()
        .map(|line| {
            let fields: Vec<&str> = line.split('\t').collect();
            Change {
                number: fields[0].parse().unwrap(),
                file: fields[1].into(),
                key: fields[6].into(),
                told: fields[1..6].join("\t"),
            }
        })
        .collect()
}

/// What is known of a test: its usual time in seconds, and the changes it reaches.
#[derive(Default)]
struct Test {
    name: String,
    seconds: f64,
    reaches: HashSet<u32>,
}

/// How a run ended.
enum Ended {
    Passed,
    Failed(String),
}

fn run(out: &Path, names: &[&str], variables: &[(&str, &str)], most: Duration) -> Ended {
    let binary = out.join("tests");
    let log = out.join(format!("log-{:?}", std::thread::current().id()));
    let file = fs::File::create(&log).unwrap();
    // The shell bounds the memory: 4 GiB.
    let mut child = Command::new("sh")
        .args(["-c", "ulimit -v 4194304; exec nice \"$0\" \"$@\""])
        .arg(binary)
        .args(["--exact", "--test-threads=1"])
        .args(names)
        .envs(variables.iter().copied())
        .env("PROPTEST_DISABLE_FAILURE_PERSISTENCE", "1")
        .current_dir(out.join("src/src-tauri/core"))
        .stdin(Stdio::null())
        .stdout(file.try_clone().unwrap())
        .stderr(file)
        .spawn()
        .unwrap();
    let start = Instant::now();
    loop {
        if let Some(status) = child.try_wait().unwrap() {
            if status.success() {
                return Ended::Passed;
            }
            let text = String::from_utf8_lossy(&fs::read(&log).unwrap()).into_owned();
            let failed = text
                .lines()
                .find_map(|l| l.strip_prefix("test ")?.strip_suffix(" ... FAILED"));
            let broke = || format!("broke off in {}", names.join(" "));
            return Ended::Failed(failed.map_or_else(broke, str::to_owned));
        }
        if start.elapsed() > most {
            child.kill().unwrap();
            child.wait().unwrap();
            return Ended::Failed(format!("too long: {}", names.join(" ")));
        }
        std::thread::sleep(Duration::from_millis(5));
    }
}

/// Runs each test alone, or each of those named, unless that was done for this build.
fn trace(out: &Path, named: Option<&BTreeSet<String>>) -> Vec<Test> {
    let kept = out.join(match named {
        Some(_) => "reached-named.tsv",
        None => "reached.tsv",
    });
    if !kept.exists() {
        let list = Command::new(out.join("tests"))
            .arg("--list")
            .output()
            .unwrap();
        let list = String::from_utf8(list.stdout).unwrap();
        let names: Vec<&str> = list
            .lines()
            .filter_map(|l| l.strip_suffix(": test"))
            .filter(|name| named.is_none_or(|n| n.contains(*name)))
            .collect();
        let next = AtomicUsize::new(0);
        let lines = Mutex::new(String::new());
        std::thread::scope(|scope| {
            for worker in 0..AT_A_TIME {
                let (next, lines, names) = (&next, &lines, &names);
                scope.spawn(move || {
                    while let Some(name) = names.get(next.fetch_add(1, Ordering::Relaxed)) {
                        let path = out.join(format!("trace-{worker}"));
                        let _ = fs::remove_file(&path);
                        let start = Instant::now();
                        let traced = [("LAPWORK_TRACE", path.to_str().unwrap())];
                        let ended = run(out, &[name], &traced, Duration::from_secs(240));
                        let seconds = start.elapsed().as_secs_f64();
                        if let Ended::Failed(why) = ended {
                            eprintln!("left out, since it fails with nothing changed: {why}");
                            continue;
                        }
                        let reached = fs::read_to_string(&path).unwrap_or_default();
                        let reached: Vec<&str> = reached.lines().collect();
                        let line = format!("{name}\t{seconds:.3}\t{}\n", reached.join(" "));
                        lines.lock().unwrap().push_str(&line);
                    }
                });
            }
        });
        fs::write(&kept, lines.into_inner().unwrap()).unwrap();
    }
    let text = fs::read_to_string(&kept).unwrap();
    text.lines()
        .map(|line| {
            let mut fields = line.split('\t');
            Test {
                name: fields.next().unwrap().into(),
                seconds: fields.next().unwrap().parse().unwrap(),
                reaches: fields
                    .next()
                    .unwrap()
                    .split(' ')
                    .filter_map(|n| n.parse().ok())
                    .collect(),
            }
        })
        .collect()
}

/// The changes in the order in which they are tried: file by file in turn.
fn in_turn(all: Vec<Change>) -> Vec<Change> {
    let mut files: HashMap<String, Vec<Change>> = HashMap::new();
    for change in all {
        files.entry(change.file.clone()).or_default().push(change);
    }
    let mut placed: Vec<(usize, usize, Change)> = Vec::new();
    for (at, file) in formula_files().enumerate() {
        let mut own = files.remove(file).unwrap_or_default();
        own.sort_by_cached_key(|c| Sha256::digest(c.key.as_bytes()).to_vec());
        placed.extend(own.into_iter().enumerate().map(|(nth, c)| (nth, at, c)));
    }
    placed.sort_by_key(|(nth, at, _)| (*nth, *at));
    placed.into_iter().map(|(_, _, change)| change).collect()
}

/// Results by key: which test noticed, or `-`.
fn results(path: &Path) -> BTreeMap<String, String> {
    let text = fs::read_to_string(path).unwrap_or_default();
    let pair = |line: &str| Some(line.split_once('\t')?).map(|(a, b)| (a.to_owned(), b.to_owned()));
    text.lines().filter_map(pair).collect()
}

fn clock() -> String {
    let date = Command::new("date").arg("+%H:%M").output().unwrap();
    String::from_utf8(date.stdout).unwrap().trim().to_owned()
}

/// Judge as many changes as there is time for.
pub fn judge(out: &Path, options: &[&str]) {
    let option = |name: &str| {
        options
            .iter()
            .position(|o| *o == name)
            .map(|at| options[at + 1])
    };
    let until = option("--until").unwrap_or("99:99").to_owned();
    let named: Option<BTreeSet<String>> = option("--tests").map(|path| {
        fs::read_to_string(path)
            .unwrap()
            .lines()
            .map(str::to_owned)
            .collect()
    });
    let mut tests = trace(out, named.as_ref());
    tests.sort_by(|a, b| a.seconds.total_cmp(&b.seconds));
    let before = results(&out.join("before.tsv"));
    let kept = out.join(if named.is_some() {
        "after.tsv"
    } else {
        "before.tsv"
    });
    let done = results(&kept);
    let earlier = option("--not").map_or_else(BTreeMap::new, |folder| {
        results(&Path::new(folder).join("before.tsv"))
    });
    // With tests named, only what was let pass is asked again.
    let wanted = |c: &Change| match named {
        Some(_) => {
            before.get(&c.key).is_some_and(|by| by == "-")
                && done.get(&c.key).is_none_or(|by| by == "-")
        }
        None => !done.contains_key(&c.key) && !earlier.contains_key(&c.key),
    };
    let todo: Vec<Change> = in_turn(changes(out)).into_iter().filter(wanted).collect();
    println!("{} to judge", todo.len());
    let next = AtomicUsize::new(0);
    let file = OpenOptions::new()
        .create(true)
        .append(true)
        .open(&kept)
        .unwrap();
    let file = Mutex::new(file);
    std::thread::scope(|scope| {
        for _ in 0..AT_A_TIME {
            let (next, todo, tests, named, until, file) =
                (&next, &todo, &tests, &named, &until, &file);
            scope.spawn(move || {
                while clock() < *until
                    && let Some(change) = todo.get(next.fetch_add(1, Ordering::Relaxed))
                {
                    let by = notices(out, change, tests, named.as_ref());
                    let line = format!("{}\t{}\n", change.key, by.as_deref().unwrap_or("-"));
                    file.lock().unwrap().write_all(line.as_bytes()).unwrap();
                }
            });
        }
    });
}

/// The first test that notices a change.
fn notices(
    out: &Path,
    change: &Change,
    tests: &[Test],
    named: Option<&BTreeSet<String>>,
) -> Option<String> {
    let room = change.file.split(['/', '.']).next().unwrap();
    let module = change
        .file
        .trim_end_matches(".rs")
        .trim_end_matches("/mod")
        .replace('/', "::");
    let asked = |t: &&Test| {
        t.seconds <= LONGEST
            && t.reaches.contains(&change.number)
            && named.is_none_or(|n| n.contains(&t.name))
    };
    let mut asked: Vec<&Test> = tests.iter().filter(asked).collect();
    // Those of its own module, then of its room, then all others; the quickest first.
    asked.sort_by_key(|t| {
        let own = t.name.starts_with(&module);
        let near = t.name.starts_with(room);
        (!own, !near)
    });
    let number = change.number.to_string();
    let mut asked = asked.into_iter().peekable();
    while asked.peek().is_some() {
        let (mut names, mut seconds) = (Vec::new(), 0.0);
        while let Some(test) =
            asked.next_if(|t| names.is_empty() || seconds + t.seconds <= TOGETHER)
        {
            names.push(test.name.as_str());
            seconds += test.seconds;
        }
        let most = Duration::from_secs_f64(15.0 + 8.0 * seconds);
        if let Ended::Failed(by) = run(out, &names, &[("LAPWORK_MUTANT", &number)], most) {
            return Some(by);
        }
    }
    None
}

/// Counts by group of files, and what no test noticed.
pub fn table(out: &Path) {
    let (before, after) = (
        results(&out.join("before.tsv")),
        results(&out.join("after.tsv")),
    );
    let all = in_turn(changes(out));
    let mut sum = [0; 4];
    println!("| Files | Changes | Tried | Noticed before | Noticed by new checks | Not noticed |");
    println!("| --- | --- | --- | --- | --- | --- |");
    let mut let_pass = Vec::new();
    for (name, files) in GROUPS {
        let mut counts = [0; 4];
        for change in all.iter().filter(|c| files.contains(&c.file.as_str())) {
            counts[0] += 1;
            let Some(by) = before.get(&change.key) else {
                continue;
            };
            counts[1] += 1;
            if by != "-" {
                counts[2] += 1;
            } else if after.get(&change.key).is_some_and(|by| by != "-") {
                counts[3] += 1;
            } else {
                let_pass.push(&change.told);
            }
        }
        print_row(name, counts);
        sum.iter_mut().zip(counts).for_each(|(s, c)| *s += c);
    }
    print_row("all", sum);
    println!();
    for told in let_pass {
        println!("{told}");
    }
}

fn print_row(name: &str, [all, tried, before, new]: [i32; 4]) {
    println!(
        "| {name} | {all} | {tried} | {before} | {new} | {} |",
        tried - before - new
    );
}
