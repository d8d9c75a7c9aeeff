//! The steps on the making sheet, stage by stage.

use crate::plan::assembly::{Kind, Rect};
use crate::show::card_figures::card_figures;
use crate::show::context::Context;
use crate::show::sheet::both::Both;
use crate::show::sheet::content::{
    Row, SheetEntry, SheetLine, SheetMoves, SheetStage, SheetStep, Tick, Warning,
};
use crate::show::{bound, names, work};
use crate::throw::stage::Stage;
use crate::throw::tasks::{Caution, Task, covered_face};
use crate::throw::{Throw, Time};
use std::collections::{BTreeMap, BTreeSet};

/// The stages of joining, in order, as named in the words files.
fn stage_key(kind: Kind) -> &'static str {
    match kind {
        Kind::Row | Kind::Column | Kind::Part => "larger",
        kind => names::key(kind),
    }
}

/// Whether a task belongs to the binding or the washes, which come once for the whole; it does as on
/// the way through the work.
fn last_stage(task: Task) -> Option<&'static str> {
    match Stage::of(task, Kind::Whole) {
        Stage::Bound => Some("binding"),
        Stage::Washed => Some("washing"),
        _ => None,
    }
}

/// What to take care of: at length where the step is given, else in short.
pub(super) fn warning(
    caution: Caution,
    step: Option<(&Throw, Task)>,
    context: Context<'_>,
) -> Warning {
    let key = caution.key();
    Warning {
        title: context.say(&format!("caution-{key}-title"), &[]),
        text: match step {
            None => context.say(&format!("sheet-caution-{key}"), &[]),
            Some((throw, task)) => work::caution_text(throw, task, caution, context),
        },
    }
}

/// The pieces of each stage of joining, in the order of their boxes.
pub(super) fn pieces_by_stage(throw: &Throw) -> Vec<(&'static str, Vec<Rect>)> {
    let mut all: Vec<_> = ["square", "pair", "four", "larger", "whole"]
        .map(|key| (key, Vec::new()))
        .into();
    for piece in throw.assembly().pieces() {
        let key = stage_key(throw.kind(piece));
        if let Some((_, pieces)) = all.iter_mut().find(|(known, _)| *known == key) {
            pieces.push(piece);
        }
    }
    all.retain(|(_, pieces)| !pieces.is_empty());
    all
}

pub(super) fn stages(
    throw: &Throw,
    both: &Both<'_>,
    day_of: &dyn Fn(Time) -> String,
) -> Vec<SheetStage> {
    let letters = throw.letters();
    let mut cautions = BTreeSet::new();
    let mut out: Vec<SheetStage> = pieces_by_stage(throw)
        .into_iter()
        .map(|(key, pieces)| stage(throw, key, &pieces, letters, &mut cautions, both, day_of))
        .collect();
    let whole = throw.assembly().whole();
    for key in ["binding", "washing"] {
        let mut steps = Vec::new();
        let mut columns: Vec<String> = Vec::new();
        let mut before: BTreeMap<Task, usize> = BTreeMap::new();
        for task in throw.tasks(whole) {
            if last_stage(task) != Some(key) {
                continue;
            }
            let turn = before.entry(task).or_insert(0);
            *turn += 1;
            if *turn == 1 {
                columns.push(both.say(&format!("sheet-column-{}", task.key()), &[]));
            }
            let done = throw.work(whole).map_or(0, |w| {
                w.done.iter().filter(|(done, _)| *done == task).count()
            });
            let title = both.say(
                &format!("title-{}", task.key()),
                &[
                    ("n", (*turn).into()),
                    ("all", throw.plan.washes.into()),
                    ("kind", "whole".into()),
                ],
            );
            let mut step = step(throw, (task, None), title, &[whole], &mut cautions, both);
            if *turn > 1 {
                step.how.clear();
                step.learned.clear();
                step.caution = None;
            }
            step.count = String::new();
            step.tick = Some(done >= *turn);
            steps.push(step);
        }
        if !steps.is_empty() {
            let moves = (key == "binding").then(|| SheetMoves {
                title: both.say("sheet-corners", &[]),
                moves: bound::corner(throw, both.doubled),
            });
            out.push(SheetStage {
                title: both.say(&format!("sheet-stage-{key}"), &[]),
                count: String::new(),
                steps,
                moves,
                columns,
                squares_up: false,
                lines: Vec::new(),
                notes: Vec::new(),
            });
        }
    }
    tell_once(&mut out, both);
    out
}

/// A step that repeats lines of an earlier one refers to it instead, where that is shorter: what
/// holds for every lap, as needle and stitch length, is printed once.
fn tell_once(stages: &mut [SheetStage], both: &Both<'_>) {
    let mut told: BTreeMap<String, (usize, usize)> = BTreeMap::new();
    let titles: Vec<String> = stages.iter().map(|stage| stage.title.clone()).collect();
    for (at, stage) in stages.iter_mut().enumerate() {
        for (n, step) in stage.steps.iter_mut().enumerate() {
            let earlier = step.how.iter().find_map(|line| told.get(line)).copied();
            for line in &step.how {
                told.entry(line.clone()).or_insert((at, n));
            }
            let Some(earlier) = earlier else { continue };
            let title = titles[earlier.0].as_str();
            let as_there = say!(both, "sheet-as-step", n = earlier.1 + 1, stage = title);
            let is_there = |line: &String| told.get(line) == Some(&earlier);
            let length = |line: &String| line.chars().count();
            let spared: usize = step.how.iter().filter(|l| is_there(l)).map(length).sum();
            if spared <= length(&as_there) {
                continue;
            }
            let place = step.how.iter().position(is_there).unwrap_or_default();
            step.how.retain(|line| !is_there(line));
            step.how.insert(place, as_there);
        }
    }
}

fn stage(
    throw: &Throw,
    key: &str,
    pieces: &[Rect],
    letters: &[String],
    cautions: &mut BTreeSet<String>,
    both: &Both<'_>,
    day_of: &dyn Fn(Time) -> String,
) -> SheetStage {
    let context = both.doubled;
    let own = |piece: Rect| -> Vec<Task> {
        let mut tasks = throw.tasks(piece);
        tasks.retain(|t| last_stage(*t).is_none());
        tasks
    };
    let tasks: BTreeSet<Task> = pieces.iter().flat_map(|p| own(*p)).collect();
    let mut here_told = BTreeSet::new();
    let steps = tasks
        .iter()
        .map(|task| {
            let here: Vec<Rect> = pieces
                .iter()
                .copied()
                .filter(|p| throw.tasks(*p).contains(task))
                .collect();
            let kind = names::key(throw.kind(here[0]));
            let title = context.say(&format!("title-{}", task.key()), &[("kind", kind.into())]);
            let lapped = tasks
                .iter()
                .position(|t| matches!(t, Task::Dot | Task::Pin));
            let mut step = step(throw, (*task, lapped), title, &here, cautions, both);
            step.caution = step.caution.filter(|c| here_told.insert(c.title.clone()));
            step
        })
        .collect();
    let line = |piece: &Rect| SheetLine {
        label: label(throw, *piece, context),
        ticks: tasks
            .iter()
            .map(|task| {
                let print = covered_face(*task).and_then(|f| throw.cover(*piece).on(f));
                throw.tasks(*piece).contains(task).then(|| Tick {
                    done: throw.is_through(*piece, *task),
                    letters: print
                        .and_then(|p| letters.get(usize::from(p)))
                        .cloned()
                        .unwrap_or_default(),
                })
            })
            .collect(),
    };
    SheetStage {
        title: both.say(&format!("sheet-stage-{key}"), &[]),
        count: match key {
            "whole" => String::new(),
            "larger" => say!(context, "count-part", n = pieces.len()),
            _ => names::count(throw.kind(pieces[0]), pieces.len(), context),
        },
        steps,
        moves: None,
        columns: tasks
            .iter()
            .map(|t| both.say(&format!("sheet-column-{}", t.key()), &[]))
            .collect(),
        squares_up: tasks.contains(&Task::SquareUp),
        lines: pieces.iter().map(line).collect(),
        notes: throw
            .notes
            .iter()
            .filter_map(|n| Some((n, n.piece?)))
            .filter(|(_, p)| throw.assembly().knows(*p) && stage_key(throw.kind(*p)) == key)
            .map(|(n, piece)| SheetEntry {
                day: day_of(n.at),
                piece: names::piece(throw, piece, context),
                text: n.text.clone(),
            })
            .collect(),
    }
}

/// A piece as it is named beside its boxes; a name is never broken from one line to the next.
pub(super) fn label(throw: &Throw, piece: Rect, context: Context<'_>) -> String {
    let name = match throw.kind(piece) {
        Kind::Square => names::square(piece),
        Kind::Pair => {
            let last = Rect::square(piece.row + piece.rows - 1, piece.col + piece.cols - 1);
            let first = Rect::square(piece.row, piece.col);
            say!(
                context,
                "sheet-line-pair",
                first = names::square(first),
                second = names::square(last)
            )
        }
        Kind::Four => names::block(piece),
        _ => names::piece(throw, piece, context),
    };
    name.replace(' ', "\u{a0}")
}

/// Some of these pieces in words, those that follow one another in the order of their boxes by the
/// first and the last; and of how many names that takes.
pub(super) fn named(
    throw: &Throw,
    pieces: &[Rect],
    is_meant: impl Fn(Rect) -> bool,
    context: Context<'_>,
) -> (String, usize) {
    let mut names = Vec::new();
    let mut has_run = false;
    for run in pieces.chunk_by(|a, b| is_meant(*a) == is_meant(*b)) {
        let (Some(first), Some(last)) = (run.first(), run.last()) else {
            continue;
        };
        if !is_meant(*first) {
            continue;
        }
        let label = |piece: &Rect| label(throw, *piece, context);
        if run.len() < 3 {
            names.extend(run.iter().map(label));
        } else {
            has_run = true;
            names.push(say!(
                context,
                "sheet-run",
                first = label(first),
                last = label(last)
            ));
        }
    }
    let count = names.len();
    let list = context.words.list("list-short", names);
    match has_run {
        true => (say!(context, "sheet-in-order", pieces = list), count),
        false => (list, count),
    }
}

/// So many values of one figure are told side by side.
const VALUES_TOLD: usize = 3;
/// So many names are few.
const FEW_NAMES: usize = 3;

/// A figure that is not the same for all pieces: each value with the pieces it holds for. What
/// follows from the lap is told by the lap, whose pieces are named in the step `lapped`.
fn told_apart(
    throw: &Throw,
    (task, lapped): (Task, Option<usize>),
    pieces: &[Rect],
    values: &[String],
    both: &Both<'_>,
) -> String {
    let context = both.doubled;
    let mut known: Vec<&String> = Vec::new();
    for value in values {
        if !known.contains(&value) {
            known.push(value);
        }
    }
    let list = |key: &str, told: Vec<String>| context.words.list(key, told);
    if known.len() > VALUES_TOLD {
        return say!(both, "sheet-differs");
    }
    if !matches!(task, Task::Dot | Task::Pin | Task::PressLap | Task::Stitch) {
        return list("list-long", known.into_iter().cloned().collect());
    }
    let mut by_lap: BTreeMap<_, BTreeSet<&String>> = BTreeMap::new();
    for (piece, value) in pieces.iter().zip(values) {
        let lap = throw.made(*piece).lap;
        by_lap.entry(lap).or_default().insert(value);
    }
    let by_lap = by_lap.into_iter();
    let by_lap: Option<Vec<_>> = by_lap
        .map(|(lap, values)| (values.len() == 1).then(|| (lap, values.first().copied())))
        .collect();
    if let (Some(by_lap), Some(lapped), false) =
        (by_lap, lapped, matches!(task, Task::Dot | Task::Pin))
    {
        if task == Task::PressLap {
            let values = list("list-long", known.into_iter().cloned().collect());
            return say!(both, "sheet-as-lapped", values = values, n = lapped + 1);
        }
        let each = by_lap.into_iter().filter_map(|(lap, value)| {
            let lap = context.length(lap);
            Some(say!(
                both,
                "sheet-at-lap",
                value = value?.as_str(),
                lap = lap
            ))
        });
        return list("list-long", each.collect());
    }
    let of = |value: &String| {
        let has = |piece: Rect| {
            let at = pieces.iter().position(|p| *p == piece);
            at.and_then(|at| values.get(at)) == Some(value)
        };
        named(throw, pieces, has, context)
    };
    let mut each: Vec<_> = known.into_iter().map(|value| (value, of(value))).collect();
    // What would take many names, or holds for the most, comes last, and is all the others.
    each.sort_by_key(|(value, (_, names))| {
        let count = values.iter().filter(|v| v == value).count();
        ((*names).max(FEW_NAMES), count)
    });
    let last = each.len().saturating_sub(1);
    let each = each.into_iter().enumerate();
    let each = each.map(|(n, (value, (names, _)))| {
        let pieces = match n == last {
            true => say!(both, "sheet-all-others"),
            false => names,
        };
        say!(
            both,
            "sheet-value-at",
            value = value.as_str(),
            pieces = pieces
        )
    });
    list("list-long", each.collect())
}

fn step(
    throw: &Throw,
    (task, lapped): (Task, Option<usize>),
    title: String,
    pieces: &[Rect],
    cautions: &mut BTreeSet<String>,
    both: &Both<'_>,
) -> SheetStep {
    let context = both.doubled;
    let through = |piece: &Rect| throw.is_through(*piece, task);
    let done = pieces.iter().filter(|p| through(p)).count();
    // This is said of the first piece that is still to do.
    let first = pieces.iter().copied().find(|p| !through(p));
    let piece = first.unwrap_or(pieces[0]);
    let each = |piece: Rect| {
        let mut rows = both.rows(|l| card_figures(throw, task, piece, l));
        let alone = [
            say!(context, "figure-fabric"),
            say!(context, "figure-measured"),
        ];
        let alone = alone
            .into_iter()
            .chain([say!(context, "figure-across"), say!(context, "figure-down")])
            .collect::<Vec<String>>();
        rows.retain(|row| !alone.contains(&row.label));
        rows
    };
    let mut figures = each(piece);
    let all: Vec<Vec<_>> = pieces.iter().map(|p| each(*p)).collect();
    for (n, row) in figures.iter_mut().enumerate() {
        let text = |row: &Row| match &row.other {
            Some(other) => say!(
                both,
                "sheet-both",
                first = row.own.as_str(),
                second = other.as_str()
            ),
            None => row.own.clone(),
        };
        // A piece that lacks it, such as a join of which no part is to be made again, has nothing
        // to say of it.
        let has = |rows: &&Vec<Row>| rows.get(n).is_some_and(|own| own.label == row.label);
        let (with, values): (Vec<Rect>, Vec<String>) = pieces
            .iter()
            .zip(&all)
            .filter(|(_, rows)| has(rows))
            .map(|(piece, rows)| (*piece, rows.get(n).map(text).unwrap_or_default()))
            .unzip();
        if values.iter().any(|value| Some(value) != values.first()) {
            row.own = told_apart(throw, (task, lapped), &with, &values, both);
            row.other = None;
        }
    }
    let usual = work::usual_how(throw, task, piece, context);
    let mut how: Vec<String> = usual.lines().map(str::to_string).collect();
    if let Some(face) = covered_face(task) {
        let goes_on = |n: u8| pieces.iter().any(|p| throw.cover(*p).on(face) == Some(n));
        let all = throw.prints.iter().zip(0..);
        let mixed = all.filter(|(print, n)| print.mixed && goes_on(*n));
        let names: Vec<String> = mixed.map(|(print, _)| print.name.clone()).collect();
        if !names.is_empty() {
            let names = context.words.list("list-and", names);
            how.push(say!(both, "sheet-mixed", prints = names));
        }
    }
    if matches!(task, Task::Dot | Task::Pin) && cautions.insert("scrap".to_string()) {
        how.insert(0, say!(both, "sheet-scrap-first"));
    }
    if matches!(task, Task::Dot | Task::Pin | Task::Stitch) {
        for piece in pieces {
            if let Some(opened) = work::opened_in_part(throw, *piece) {
                let said = say!(context, "special-opened", length = context.length(opened));
                how.push(say!(
                    both,
                    "sheet-of-piece",
                    piece = names::piece(throw, *piece, context),
                    text = said
                ));
            }
        }
        let marked = pieces
            .iter()
            .filter_map(|p| throw.assembly().join(*p))
            .flat_map(|j| throw.spots(j))
            .filter(|(a, b)| throw.marked(*a, *b).is_some())
            .count();
        if marked > 0 {
            how.push(say!(both, "sheet-laps-see", n = marked));
        }
    }
    SheetStep {
        title,
        station: work::station_name(task.station(), context),
        count: say!(both, "sheet-count", done = done, all = pieces.len()),
        how,
        learned: match cautions.insert(format!("learned {task:?}")) {
            true => both.learned.get(&task).cloned().unwrap_or_default(),
            false => Vec::new(),
        },
        figures,
        // At length the first time, then in short.
        caution: work::usual_caution(throw, task, piece)
            .filter(|caution| task != Task::GlueBinding || *caution != Caution::Iron)
            .map(|caution| {
                let first = cautions.insert(format!("{caution:?}"));
                warning(caution, first.then_some((throw, task)), context)
            }),
        tick: None,
    }
}
