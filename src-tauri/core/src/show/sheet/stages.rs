//! The steps on the making sheet, stage by stage.

use crate::cloth::fabric::Face;
use crate::plan::assembly::{Kind, Rect};
use crate::show::card_figures::card_figures;
use crate::show::context::Context;
use crate::show::sheet::both::Both;
use crate::show::sheet::content::{
    SheetEntry, SheetLine, SheetMoves, SheetStage, SheetStep, Tick, Warning,
};
use crate::show::{bound, names, work};
use crate::throw::tasks::{Caution, Task};
use crate::throw::{Throw, Time};
use std::collections::{BTreeMap, BTreeSet};

/// The stages of joining, in order, as named in the words files.
fn stage_key(kind: Kind) -> &'static str {
    match kind {
        Kind::Row | Kind::Column | Kind::Part => "larger",
        kind => names::key(kind),
    }
}

/// Whether a task belongs to the binding or the washes, which come once for the whole.
fn last_stage(task: Task) -> Option<&'static str> {
    match task {
        Task::TrimEdge
        | Task::CutBinding
        | Task::JoinBinding
        | Task::PressBinding
        | Task::GlueBinding
        | Task::StitchBinding => Some("binding"),
        Task::Snip | Task::Wash | Task::Clip => Some("washing"),
        _ => None,
    }
}

pub(super) fn warning(
    throw: &Throw,
    caution: Caution,
    short: bool,
    context: Context<'_>,
) -> Warning {
    let key = caution.key();
    Warning {
        title: context.say(&format!("caution-{key}-title"), &[]),
        text: match short {
            true => context.say(&format!("sheet-caution-{key}"), &[]),
            false => work::caution_text(throw, caution, context),
        },
    }
}

pub(super) fn stages(
    throw: &Throw,
    both: &Both<'_>,
    day_of: &dyn Fn(Time) -> String,
) -> Vec<SheetStage> {
    let order = ["square", "pair", "four", "larger", "whole"];
    let mut by_stage: BTreeMap<usize, Vec<Rect>> = BTreeMap::new();
    for piece in throw.assembly().pieces() {
        let key = stage_key(throw.kind(piece));
        let at = order.iter().position(|k| *k == key).unwrap_or(0);
        by_stage.entry(at).or_default().push(piece);
    }
    let letters = names::letters(&throw.prints);
    let mut cautions = BTreeSet::new();
    let mut out: Vec<SheetStage> = by_stage
        .into_iter()
        .map(|(at, pieces)| {
            stage(
                throw,
                order[at],
                &pieces,
                &letters,
                &mut cautions,
                both,
                day_of,
            )
        })
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
            let mut step = step(throw, task, title, &[whole], &mut cautions, both);
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
            let kind = context.say(&format!("kind-{}", names::key(throw.kind(here[0]))), &[]);
            let title = context.say(&format!("title-{}", task.key()), &[("kind", kind.into())]);
            let mut step = step(throw, *task, title, &here, cautions, both);
            step.caution = step.caution.filter(|c| here_told.insert(c.title.clone()));
            step
        })
        .collect();
    let line = |piece: &Rect| SheetLine {
        label: match throw.kind(*piece) {
            Kind::Square => names::square(*piece),
            Kind::Pair => {
                let last = Rect::square(piece.row + piece.rows - 1, piece.col + piece.cols - 1);
                let first = Rect::square(piece.row, piece.col);
                say!(
                    both,
                    "sheet-line-pair",
                    first = names::square(first),
                    second = names::square(last)
                )
            }
            Kind::Four => names::block(*piece),
            _ => names::piece(throw, *piece, context),
        },
        ticks: tasks
            .iter()
            .map(|task| {
                let face = match task {
                    Task::CoverFront => Some(Face::Front),
                    Task::CoverBack => Some(Face::Back),
                    _ => None,
                };
                let print = face.and_then(|f| throw.cover(*piece).on(f));
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

/// So many values of one figure are told side by side.
const VALUES_TOLD: usize = 3;

fn step(
    throw: &Throw,
    task: Task,
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
    let others: Vec<Vec<_>> = pieces
        .iter()
        .filter(|p| **p != piece)
        .map(|p| each(*p))
        .collect();
    for (n, row) in figures.iter_mut().enumerate() {
        let all = std::iter::once(&*row).chain(others.iter().filter_map(|o| o.get(n)));
        let (mut own, mut other) = (Vec::new(), Vec::new());
        for one in all {
            if !own.contains(&one.own) {
                own.push(one.own.clone());
                other.extend(one.other.clone());
            }
        }
        // Few that differ are all told; which piece has which stands in its step in the window.
        match own.len() {
            1 => {}
            2..=VALUES_TOLD => {
                row.own = own.join("; ");
                row.other = (!other.is_empty()).then(|| other.join("; "));
            }
            _ => {
                row.own = say!(both, "sheet-differs");
                row.other = None;
            }
        }
    }
    let mut how: Vec<String> = match task {
        Task::JoinBinding | Task::GlueBinding => work::special(throw, task, piece, context),
        _ => Vec::new(),
    };
    let usual = work::usual_how(throw, task, piece, context);
    how.extend(usual.lines().map(str::to_string));
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
        caution: task.caution().map(|caution| {
            let first = cautions.insert(format!("{caution:?}"));
            warning(throw, caution, !first, context)
        }),
        tick: None,
    }
}
