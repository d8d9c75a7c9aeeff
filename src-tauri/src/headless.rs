//! The same figures without a window, for programs and for the curious.
//!
//! `lapwork figures|history|check|demo|upgrade <path>`, `lapwork merge <path> <path>`; see `shell-help` in the word files.
//!
//! Promises: no window is touched. Answers go to standard output. What cannot be done
//! ends with code 2 and exactly one line on standard error, nothing written. `check`
//! ends with code 1 if the file can be used but its last line is torn.

use crate::desk::told;
use crate::handing;
use crate::store::{self, Trouble};
use lapwork_core::demo;
use lapwork_core::journal::Journal;
use lapwork_core::measure::{Ruler, System};
use lapwork_core::merge::{Side, meet};
use lapwork_core::show::{self, Lens};
use lapwork_core::throw::Time;
use lapwork_core::view::{Look, Problem, View};
use lapwork_core::words::Words;
use std::ffi::OsString;
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use time::OffsetDateTime;

/// What is asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Ask {
    Help,
    Version,
    Figures(PathBuf, System),
    History(PathBuf, System),
    Check(PathBuf),
    Demo(PathBuf),
    Upgrade(PathBuf),
    Merge {
        first: PathBuf,
        second: PathBuf,
        out: PathBuf,
        keep: Option<Side>,
    },
}

/// Why nothing came of it.
enum Failure {
    /// To be told.
    Told(String),
    /// Standard output was closed or could not take more.
    Output(io::Error),
}

impl From<io::Error> for Failure {
    fn from(why: io::Error) -> Self {
        Failure::Output(why)
    }
}

/// Answer the words after the program's name, if there are any; with none, the window
/// is wanted and this gives `None`.
pub fn answer(args: impl IntoIterator<Item = OsString>, now: Time) -> Option<ExitCode> {
    let mut args = args.into_iter().peekable();
    args.peek()?;
    let words = Words::english();
    let mut out = io::stdout().lock();
    let done = read(args, &words).and_then(|ask| reply(&ask, &words, now, &mut out));
    Some(match done {
        Ok(code) => code,
        Err(Failure::Told(line)) => {
            // A path may hold anything, even the end of a line.
            eprintln!("lapwork: {}", line.replace(char::is_control, " "));
            ExitCode::from(2)
        }
        // Whoever reads has read enough.
        Err(Failure::Output(why)) if why.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(Failure::Output(why)) => {
            eprintln!("lapwork: {why}");
            ExitCode::from(2)
        }
    })
}

/// Answer the program's own arguments.
pub fn answer_arguments() -> Option<ExitCode> {
    answer(std::env::args_os().skip(1), crate::now())
}

fn read(args: impl IntoIterator<Item = OsString>, words: &Words) -> Result<Ask, Failure> {
    let misused = |problem: Problem| Failure::Told(one_line(&problem));
    let mut parser = lexopt::Parser::from_args(args);
    let (mut command, mut path, mut metric) = (None, None, false);
    let (mut second, mut out, mut keep) = (None, None, None);
    loop {
        use lexopt::Arg::{Long, Short, Value};
        let next = parser.next().map_err(|why| {
            misused(words.problem("arguments", &[("argument", why.to_string().into())]))
        })?;
        let stray = match next {
            None => break,
            Some(Long("help") | Short('h')) => return Ok(Ask::Help),
            Some(Long("version") | Short('V')) => return Ok(Ask::Version),
            Some(Long("metric")) => {
                metric = true;
                continue;
            }
            Some(Long("out")) => {
                out = parser.value().ok().map(PathBuf::from);
                continue;
            }
            Some(Long("keep")) => {
                let given = parser.value().unwrap_or_default();
                keep = match given.to_str() {
                    Some("first") => Some(Side::First),
                    Some("second") => Some(Side::Second),
                    _ => {
                        let stray = format!("--keep {}", given.to_string_lossy());
                        return Err(misused(
                            words.problem("arguments", &[("argument", stray.into())]),
                        ));
                    }
                };
                continue;
            }
            Some(Value(value)) if command.is_none() => {
                command = Some(value.to_string_lossy().into_owned());
                continue;
            }
            Some(Value(value)) if path.is_none() => {
                path = Some(PathBuf::from(value));
                continue;
            }
            Some(Value(value)) if second.is_none() && command.as_deref() == Some("merge") => {
                second = Some(PathBuf::from(value));
                continue;
            }
            Some(Value(value)) => value.to_string_lossy().into_owned(),
            Some(Long(name)) => format!("--{name}"),
            Some(Short(name)) => format!("-{name}"),
        };
        return Err(misused(
            words.problem("arguments", &[("argument", stray.into())]),
        ));
    }
    let command = command.unwrap_or_default();
    let system = if metric { System::Metric } else { System::Inch };
    let path_or = |path: Option<PathBuf>| {
        path.ok_or_else(|| {
            misused(words.problem("no-path", &[("command", command.clone().into())]))
        })
    };
    match command.as_str() {
        "figures" => Ok(Ask::Figures(path_or(path)?, system)),
        "history" => Ok(Ask::History(path_or(path)?, system)),
        "check" => Ok(Ask::Check(path_or(path)?)),
        "demo" => Ok(Ask::Demo(path_or(path)?)),
        "upgrade" => Ok(Ask::Upgrade(path_or(path)?)),
        "merge" => Ok(Ask::Merge {
            first: path_or(path)?,
            second: path_or(second)?,
            out: path_or(out)?,
            keep,
        }),
        other => Err(misused(
            words.problem("no-command", &[("command", other.into())]),
        )),
    }
}

fn reply(ask: &Ask, words: &Words, now: Time, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let lens = |system: System| Lens {
        words,
        ruler: Ruler {
            system,
            ..Ruler::default()
        },
        now,
    };
    match ask {
        Ask::Help => writeln!(out, "{}", words.say("shell-help", &[]))?,
        Ask::Version => writeln!(out, "lapwork {}", env!("CARGO_PKG_VERSION"))?,
        Ask::Figures(path, system) => {
            let journal = open(path, words)?.journal;
            let figures = show::figures(&journal, lens(*system));
            writeln!(out, "{figures:#}")?;
        }
        Ask::History(path, system) => {
            let journal = open(path, words)?.journal;
            history(&journal, lens(*system), out)?;
        }
        Ask::Check(path) => {
            let opened = open(path, words)?;
            let count = opened.journal.len();
            if opened.torn() {
                writeln!(
                    out,
                    "{}",
                    words.say("shell-torn", &[("count", count.into())])
                )?;
                return Ok(ExitCode::from(1));
            }
            writeln!(
                out,
                "{}",
                words.say("shell-sound", &[("count", count.into())])
            )?;
        }
        Ask::Upgrade(path) => {
            let path = &store::throw_file_in(path);
            let opened = open(path, words)?;
            let count = opened.journal.len();
            let said = match store::upgrade_file(path, &opened, now)
                .map_err(|trouble| failed(path, &trouble, words))?
            {
                Some(copy) => {
                    let copy = copy.display().to_string();
                    words.say("shell-upgraded", &[("copy", copy.into())])
                }
                None => words.say("shell-sound", &[("count", count.into())]),
            };
            writeln!(out, "{said}")?;
        }
        Ask::Merge {
            first,
            second,
            out: path,
            keep,
        } => return merge((first, second), path, *keep, lens(System::Inch), out),
        Ask::Demo(path) => {
            let written = store::write_throw(path, &demo::throw(now))
                .map_err(|trouble| failed(path, &trouble, words))?;
            let file = written.display().to_string();
            writeln!(
                out,
                "{}",
                words.say("shell-written", &[("file", file.into())])
            )?;
        }
    }
    Ok(ExitCode::SUCCESS)
}

/// Merge two copies into a new file. Where they stand against each other and no side was
/// named, each conflict is printed and nothing is written.
fn merge(
    (first, second): (&Path, &Path),
    path: &Path,
    keep: Option<Side>,
    lens: Lens<'_>,
    out: &mut impl Write,
) -> Result<ExitCode, Failure> {
    let words = lens.words;
    let read = |path: &Path| {
        handing::look_into(&store::throw_file_in(path))
            .map_err(|trouble| failed(path, &trouble, words))
    };
    let (a, b) = (read(first)?.journal, read(second)?.journal);
    let not = |why| failed(second, &Trouble::Unmergeable(why), words);
    let meeting = meet(&a, &b).map_err(not)?;
    let conflicts = meeting.conflicts();
    if !conflicts.is_empty() && keep.is_none() {
        for conflict in &conflicts {
            let told = show::conflict(conflict, a.throw(), b.throw(), lens);
            let args = [
                ("first", told.here.join("; ").into()),
                ("second", told.brought.join("; ").into()),
            ];
            writeln!(out, "{}", words.say("shell-conflict", &args))?;
        }
        let count = conflicts.len();
        writeln!(
            out,
            "{}",
            words.say("shell-decide", &[("count", count.into())])
        )?;
        return Ok(ExitCode::from(1));
    }
    let choices = vec![keep.unwrap_or(Side::First); conflicts.len()];
    let joined = meeting.join(&choices).map_err(not)?;
    let written =
        store::write_throw(path, &joined).map_err(|trouble| failed(path, &trouble, words))?;
    let file = written.display().to_string();
    writeln!(
        out,
        "{}",
        words.say("shell-written", &[("file", file.into())])
    )?;
    Ok(ExitCode::SUCCESS)
}

fn open(path: &Path, words: &Words) -> Result<store::Opened, Failure> {
    store::read_throw(path).map_err(|trouble| failed(path, &trouble, words))
}

/// A trouble with a file that was named on the command line, with its name before it.
fn failed(path: &Path, trouble: &Trouble, words: &Words) -> Failure {
    let problem = match trouble {
        Trouble::NoSuchThrow | Trouble::Missing { .. } => words.problem("no-file", &[]),
        trouble => told(words, trouble),
    };
    Failure::Told(format!("{}: {}", path.display(), one_line(&problem)))
}

fn one_line(problem: &Problem) -> String {
    format!("{} {}", problem.said, problem.next)
}

/// One line for each entry, the newest first; dates are in UTC.
fn history(journal: &Journal, lens: Lens<'_>, out: &mut impl Write) -> Result<(), Failure> {
    let look = Look::History { most: u32::MAX };
    let seen = show::look(journal, &look, lens);
    let seen = seen.map_err(|problem| Failure::Told(one_line(&problem)))?;
    let View::History(history) = seen else {
        return Ok(());
    };
    for row in history.rows {
        let undone = if row.stands {
            String::new()
        } else {
            format!("  ({})", lens.words.say("shell-taken-back", &[]))
        };
        writeln!(out, "{}  {:>5}  {}{undone}", date(row.at), row.n, row.text)?;
    }
    Ok(())
}

/// A moment as `2026-01-31 17:05Z`.
fn date(at: Time) -> String {
    let Ok(when) = OffsetDateTime::from_unix_timestamp(at.div_euclid(1000)) else {
        return at.to_string();
    };
    format!(
        "{}-{:02}-{:02} {:02}:{:02}Z",
        when.year(),
        u8::from(when.month()),
        when.day(),
        when.hour(),
        when.minute()
    )
}
