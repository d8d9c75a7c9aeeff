//! The command line: the figures of a throw and its files without a window.
//!
//! `lapwork figures|history|check|demo|draw|table|sheet|upgrade|copies <path>`, `lapwork merge <path> <path>`; see `shell-help` in the word files.
//!
//! Promises: no window opens. Answers go to standard output. A request that cannot be
//! fulfilled ends with code 2 and exactly one line on standard error, and writes nothing. `check`
//! ends with code 1 if the file can be used but its last line is torn.

use crate::printing;
use jiff::Timestamp;
use lapwork_core::demo;
use lapwork_core::log::journal::Journal;
use lapwork_core::log::merge::{MergeSide, meet};
use lapwork_core::measure::{Ruler, System};
use lapwork_core::show::drawing::{Drawing, Style};
use lapwork_core::show::tables::Table;
use lapwork_core::show::{self, Context};
use lapwork_core::show::{PrintOrder, PrintPaper, PrintUnits};
use lapwork_core::throw::Time;
use lapwork_core::words::Problem;
use lapwork_core::words::{self, Words};
use lapwork_service::desktop::{self, DesktopDisk};
use lapwork_service::disk::DiskPath;
use lapwork_service::service::{damage, message};
use lapwork_service::store::{Opened, StoreError};
use lapwork_service::{export, import, paper};
use lapwork_sheet::{Options, Photos};
use std::ffi::OsString;
use std::io::{self, Write};
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// What is asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Ask {
    Help,
    Version,
    Figures(PathBuf, System),
    History(PathBuf, System),
    Check(PathBuf),
    Demo(PathBuf),
    /// What can be drawn, or one drawing.
    Draw(PathBuf, Option<String>, System, Style),
    /// What tables there are, or one.
    Tables(PathBuf, Option<String>, System),
    Upgrade(PathBuf),
    /// The copies kept beside a throw file, or to remove them.
    Copies(PathBuf, bool),
    Merge {
        first: PathBuf,
        second: PathBuf,
        out: PathBuf,
        keep: Option<MergeSide>,
    },
    /// A sheet, and the file it is to be written to.
    Sheet(PathBuf, PathBuf, System, PrintOrder),
}

/// Why nothing came of it.
enum Failure {
    /// A message for the user.
    Message(String),
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
    let mut words = crate::system_words();
    let mut out = io::stdout().lock();
    let done = read(args, &mut words).and_then(|ask| reply(&ask, &words, now, &mut out));
    Some(match done {
        Ok(code) => code,
        Err(Failure::Message(line)) => {
            // A path may hold anything, even the end of a line.
            eprintln!("lapwork: {}", line.replace(char::is_control, " "));
            ExitCode::from(2)
        }
        // The reader has closed its end.
        Err(Failure::Output(why)) if why.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(Failure::Output(why)) => {
            eprintln!("lapwork: {why}");
            ExitCode::from(2)
        }
    })
}

/// Answer the program's own arguments.
pub fn answer_arguments() -> Option<ExitCode> {
    answer(std::env::args_os().skip(1), desktop::now())
}

/// What is asked for; `words` become those of the language asked for.
fn read(args: impl IntoIterator<Item = OsString>, words: &mut Words) -> Result<Ask, Failure> {
    let misused = |problem: Problem| Failure::Message(one_line(&problem));
    let stray = |words: &Words, argument: String| {
        misused(words.problem("arguments", &[("argument", argument.into())]))
    };
    let mut parser = lexopt::Parser::from_args(args);
    let (mut command, mut path, mut which) = (None, None, None);
    let (mut metric, mut style) = (false, Style::Colour);
    let (mut second, mut out, mut keep) = (None, None, None);
    let (mut paper, mut units) = (None, None);
    let (mut card, mut blank, mut large) = (false, false, false);
    let mut clear = false;
    loop {
        use lexopt::Arg::{Long, Short, Value};
        let next = parser.next().map_err(|why| stray(words, why.to_string()))?;
        let unknown = match next {
            None => break,
            Some(Long("help") | Short('h')) => return Ok(Ask::Help),
            Some(Long("version") | Short('V')) => return Ok(Ask::Version),
            Some(Long("metric")) => {
                metric = true;
                continue;
            }
            Some(Long("language")) => {
                let named = parser
                    .value()
                    .map_err(|why| stray(words, why.to_string()))?;
                let named = named.to_string_lossy();
                match words::language(&named) {
                    Some(language) => *words = Words::of(language.code),
                    None => return Err(misused(no_language(&named, words))),
                }
                continue;
            }
            // A sheet says which ink; a drawing has no choice.
            Some(Long("ink")) if command.as_deref() == Some("sheet") => {
                style = one_of(
                    &mut parser,
                    &[("black", Style::Ink), ("colour", Style::Colour)],
                )
                .map_err(|why| stray(words, why))?;
                continue;
            }
            Some(Long("ink")) => {
                style = Style::Ink;
                continue;
            }
            Some(Long("keep")) => {
                let sides = [("first", MergeSide::First), ("second", MergeSide::Second)];
                keep = Some(one_of(&mut parser, &sides).map_err(|why| stray(words, why))?);
                continue;
            }
            Some(Long("paper")) => {
                let papers = [("a4", PrintPaper::A4), ("letter", PrintPaper::Letter)];
                paper = Some(one_of(&mut parser, &papers).map_err(|why| stray(words, why))?);
                continue;
            }
            Some(Long("out")) => {
                out = Some(PathBuf::from(
                    value(&mut parser).map_err(|why| stray(words, why))?,
                ));
                continue;
            }
            Some(Long("units")) => {
                let systems = [
                    ("inches", PrintUnits::Inches),
                    ("metric", PrintUnits::Metric),
                    ("both", PrintUnits::Both),
                ];
                units = Some(one_of(&mut parser, &systems).map_err(|why| stray(words, why))?);
                continue;
            }
            Some(Long("blank")) => {
                blank = true;
                continue;
            }
            Some(Long("card")) => {
                card = true;
                continue;
            }
            Some(Long("large")) => {
                large = true;
                continue;
            }
            Some(Long("clear")) if command.as_deref() == Some("copies") => {
                clear = true;
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
            // Only a drawing or a table is named after the path.
            Some(Value(value))
                if which.is_none() && matches!(command.as_deref(), Some("draw" | "table")) =>
            {
                which = Some(value.to_string_lossy().into_owned());
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
        return Err(stray(words, unknown));
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
        "draw" => Ok(Ask::Draw(path_or(path)?, which, system, style)),
        "table" => Ok(Ask::Tables(path_or(path)?, which, system)),
        "upgrade" => Ok(Ask::Upgrade(path_or(path)?)),
        "copies" => Ok(Ask::Copies(path_or(path)?, clear)),
        "merge" => Ok(Ask::Merge {
            first: path_or(path)?,
            second: path_or(second)?,
            out: path_or(out)?,
            keep,
        }),
        "sheet" => {
            let path = path_or(path)?;
            let out = out.ok_or_else(|| misused(words.problem("no-out", &[])))?;
            let units = units.unwrap_or_default();
            // One system alone is the maker's own, whatever comes first where both are printed.
            let own = match units {
                PrintUnits::Metric => System::Metric,
                PrintUnits::Inches => System::Inch,
                PrintUnits::Both => system,
            };
            let order = PrintOrder {
                card,
                blank,
                units,
                paper: paper.unwrap_or(show::usual_paper(own)),
                large,
                black: style == Style::Ink,
                story: false,
                zone: printing::zone(),
            };
            Ok(Ask::Sheet(path, out, system, order))
        }
        other => Err(misused(
            words.problem("no-command", &[("command", other.into())]),
        )),
    }
}

/// What follows an option.
fn value(parser: &mut lexopt::Parser) -> Result<OsString, String> {
    parser.value().map_err(|why| why.to_string())
}

/// What follows an option, where only these may.
fn one_of<T: Copy>(parser: &mut lexopt::Parser, these: &[(&str, T)]) -> Result<T, String> {
    let given = value(parser)?;
    let found = these.iter().find(|(name, _)| given == *name);
    found.map_or_else(
        || Err(given.to_string_lossy().into_owned()),
        |(_, value)| Ok(*value),
    )
}

fn reply(ask: &Ask, words: &Words, now: Time, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let context = |system: System| Context {
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
            let figures = show::figures(&journal, context(*system));
            writeln!(out, "{figures:#}")?;
        }
        Ask::History(path, system) => {
            let journal = open(path, words)?.journal;
            history(&journal, context(*system), out)?;
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
        Ask::Draw(path, which, system, style) => {
            let journal = open(path, words)?.journal;
            draw(&journal, which.as_deref(), *style, context(*system), out)?;
        }
        Ask::Tables(path, which, system) => {
            let journal = open(path, words)?.journal;
            tables(&journal, which.as_deref(), context(*system), out)?;
        }
        Ask::Upgrade(path) => {
            let path = desktop::in_folder(&path.as_path().into());
            let path = path.as_ref();
            let opened = open(path, words)?;
            let count = opened.journal.len();
            let left_out = opened.left_out();
            let said = match desktop::upgrade_file(&path.into(), &opened, now)
                .map_err(|error| failed(path, &error, words))?
            {
                Some(copy) => {
                    say_left_out(path, left_out, words, out)?;
                    let copy = copy.to_string();
                    words.say("shell-upgraded", &[("copy", copy.into())])
                }
                None => words.say("shell-sound", &[("count", count.into())]),
            };
            writeln!(out, "{said}")?;
        }
        Ask::Copies(path, clear) => copies(path, *clear, words, out)?,
        Ask::Merge {
            first,
            second,
            out: path,
            keep,
        } => return merge((first, second), path, *keep, context(System::Inch), out),
        Ask::Sheet(path, to, system, order) => {
            if to.exists() {
                let there = StoreError::Disk {
                    path: to.as_path().into(),
                    why: io::ErrorKind::AlreadyExists.into(),
                };
                return Err(failed(to, &there, words));
            }
            let journal = open(path, words)?.journal;
            let sheet = paper::sheet(&journal, context(*system), order);
            let made =
                lapwork_sheet::print(&sheet, Photos::new(), Options::from(order), &mut |_| {
                    ControlFlow::Continue(())
                });
            let bytes = made.map_err(|why| {
                let problem = words.problem("print", &[("why", why.to_string().into())]);
                Failure::Message(one_line(&problem))
            })?;
            export::write(&DesktopDisk, &to.as_path().into(), &bytes)
                .map_err(|error| failed(to, &error, words))?;
            say_written(&to.as_path().into(), words, out)?;
        }
        Ask::Demo(path) => {
            let written = desktop::write_throw(&path.as_path().into(), &demo::throw_in(words, now))
                .map_err(|error| failed(path, &error, words))?;
            say_written(&written, words, out)?;
        }
    }
    Ok(ExitCode::SUCCESS)
}

/// Name the copies kept beside a throw file, or remove them.
fn copies(path: &Path, clear: bool, words: &Words, out: &mut impl Write) -> Result<(), Failure> {
    let file = DiskPath::from(path);
    let refused = |error| failed(path, &error, words);
    let (named, kept) = match clear {
        true => (Vec::new(), desktop::clear_copies(&file).map_err(refused)?),
        false => desktop::kept_copies(&file).map_err(refused)?,
    };
    for copy in named {
        writeln!(out, "{copy}")?;
    }
    let key = match (kept.count, clear) {
        (0, _) => "shell-no-copies",
        (_, false) => "shell-copies",
        (_, true) => "shell-copies-cleared",
    };
    let size = kept.bytes.div_ceil(1000).max(1);
    let args = [("n", kept.count.into()), ("size", size.into())];
    writeln!(out, "{}", words.say(key, &args))?;
    Ok(())
}

/// Merge two copies into a new file. Where they stand against each other and no side was
/// named, each conflict is printed and nothing is written.
fn merge(
    (first, second): (&Path, &Path),
    path: &Path,
    keep: Option<MergeSide>,
    context: Context<'_>,
    out: &mut impl Write,
) -> Result<ExitCode, Failure> {
    let words = context.words;
    let read = |path: &Path| {
        import::read_throw(&DesktopDisk, &desktop::in_folder(&path.into()))
            .map_err(|error| failed(path, &error, words))
    };
    let (a, b) = (read(first)?, read(second)?);
    say_left_out(first, a.left_out, words, out)?;
    say_left_out(second, b.left_out, words, out)?;
    let (a, b) = (a.journal, b.journal);
    let not = |why| failed(second, &StoreError::Unmergeable(why), words);
    let meeting = meet(&a, &b).map_err(not)?;
    let conflicts = meeting.conflicts();
    if !conflicts.is_empty() && keep.is_none() {
        for conflict in &conflicts {
            let sides = show::conflict(conflict, a.throw(), b.throw(), context);
            let args = [
                ("first", sides.here.join("; ").into()),
                ("second", sides.brought.join("; ").into()),
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
    let choices = vec![keep.unwrap_or(MergeSide::First); conflicts.len()];
    let joined = meeting.join(&choices).map_err(not)?;
    let written =
        desktop::write_throw(&path.into(), &joined).map_err(|error| failed(path, &error, words))?;
    say_written(&written, words, out)?;
    Ok(ExitCode::SUCCESS)
}

/// Say that a file's torn end is not in what is made of it.
fn say_left_out(path: &Path, bytes: u64, words: &Words, out: &mut impl Write) -> io::Result<()> {
    if bytes == 0 {
        return Ok(());
    }
    let file = path.display().to_string();
    let args = [("file", file.into()), ("bytes", bytes.into())];
    writeln!(out, "{}", words.say("shell-left-out", &args))
}

fn say_written(path: &DiskPath, words: &Words, out: &mut impl Write) -> io::Result<()> {
    let said = words.say("shell-written", &[("file", path.to_string().into())]);
    writeln!(out, "{said}")
}

fn open(path: &Path, words: &Words) -> Result<Opened, Failure> {
    desktop::read_throw(&path.into()).map_err(|error| failed(path, &error, words))
}

/// An error with a file that was named on the command line, with its name before it.
fn failed(path: &Path, error: &StoreError, words: &Words) -> Failure {
    let problem = match error {
        StoreError::NoSuchThrow | StoreError::Missing { .. } => words.problem("no-file", &[]),
        // The path is said already.
        StoreError::Damaged { how, .. } => damage(words, how),
        error => message(words, error),
    };
    Failure::Message(format!("{}: {}", path.display(), one_line(&problem)))
}

fn no_language(named: &str, words: &Words) -> Problem {
    let codes = words::LANGUAGES.iter().map(|l| l.code.to_string());
    let languages = words.list("list-short", codes);
    let args = [("language", named.into()), ("languages", languages.into())];
    words.problem("no-language", &args)
}

fn one_line(problem: &Problem) -> String {
    format!("{} {}", problem.said, problem.next)
}

/// One line for each entry, the newest first; dates are in UTC.
fn history(journal: &Journal, context: Context<'_>, out: &mut impl Write) -> Result<(), Failure> {
    for row in show::whole_history(journal, context) {
        let undone = if row.stands {
            String::new()
        } else {
            format!("  ({})", context.words.say("shell-taken-back", &[]))
        };
        writeln!(out, "{}  {:>5}  {}{undone}", date(row.at), row.n, row.text)?;
    }
    Ok(())
}

/// One drawing, or a line for each that can be had with a name for its file.
fn draw(
    journal: &Journal,
    which: Option<&str>,
    style: Style,
    context: Context<'_>,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let throw = journal.throw();
    let all = Drawing::all(throw);
    let Some(which) = which else {
        for drawing in all {
            let file = drawing.file_name(throw, context);
            writeln!(out, "{:<12}  {file}", drawing.key())?;
        }
        return Ok(());
    };
    let Some(drawing) = all.into_iter().find(|d| d.key() == which) else {
        let problem = context
            .words
            .problem("no-drawing", &[("which", which.into())]);
        return Err(Failure::Message(one_line(&problem)));
    };
    let svg = drawing.svg(journal, style, &|_| None, context);
    let svg = svg.map_err(|problem| Failure::Message(one_line(&problem)))?;
    out.write_all(svg.as_bytes())?;
    Ok(())
}

/// One table, or a line for each that can be had with a name for its file.
fn tables(
    journal: &Journal,
    which: Option<&str>,
    context: Context<'_>,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let Some(which) = which else {
        for table in Table::ALL {
            let file = table.file_name(journal.throw(), context);
            writeln!(out, "{:<12}  {file}", table.key())?;
        }
        return Ok(());
    };
    let Some(table) = Table::ALL.into_iter().find(|t| t.key() == which) else {
        let problem = context
            .words
            .problem("no-table", &[("which", which.into())]);
        return Err(Failure::Message(one_line(&problem)));
    };
    out.write_all(table.csv(journal, context).as_bytes())?;
    Ok(())
}

/// A moment as `2026-01-31 17:05Z`.
fn date(at: Time) -> String {
    let Ok(when) = Timestamp::from_second(at.div_euclid(1000)) else {
        return at.to_string();
    };
    when.strftime("%Y-%m-%d %H:%MZ").to_string()
}
