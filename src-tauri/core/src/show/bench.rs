//! The bench: every square, pair and four, and how far each is.

use crate::command::{Command, may_do};
use crate::log::journal::Journal;
use crate::plan::assembly::{Kind, Rect};
use crate::show::context::Context;
use crate::show::names;
use crate::show::parts::{Button, Head, head};
use crate::throw::Throw;
use crate::throw::tasks::Task;
use crate::types::TS;
use serde::Serialize;

/// How far a square is, as a sign.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum SquareStage {
    /// Not cut.
    Open,
    /// Cut; something is still to be glued or to cool.
    Cut,
    /// Ready to be joined.
    Ready,
    /// Its edge is held but not sewn.
    Held,
    /// Sewn into a pair.
    Paired,
    /// Sewn into its block.
    Blocked,
    /// Its block is squared up.
    Squared,
    /// Sewn to other blocks.
    Joined,
}

/// One square on the bench.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct BenchCell {
    /// Its place.
    pub piece: Rect,
    /// Short label.
    pub label: String,
    /// How far it is.
    pub stage: SquareStage,
    /// The square and its stage in words.
    pub spoken: String,
}

/// A stage with its sign, for the key.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct StageKey {
    /// The stage.
    pub stage: SquareStage,
    /// Its name.
    pub label: String,
    /// How many squares are there now.
    pub count: u32,
}

/// A count on the bench.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Tally {
    /// Of what.
    pub label: String,
    /// Done.
    pub done: u32,
    /// In all.
    pub all: u32,
    /// In words.
    pub text: String,
}

/// The bench: every square, pair and four, and how far each is.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct BenchView {
    /// Common to all screens.
    pub head: Head,
    /// Squares across.
    pub across: u16,
    /// Squares down.
    pub down: u16,
    /// The squares.
    pub cells: Vec<BenchCell>,
    /// The key.
    pub key: Vec<StageKey>,
    /// The counts.
    pub tallies: Vec<Tally>,
    /// Spare squares at hand.
    pub spares: u32,
    /// Spoilt squares, in words.
    pub losses: String,
    /// The piece chosen, and those it belongs to.
    pub chosen: Vec<PieceCard>,
}

/// One piece in detail.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct PieceCard {
    /// The piece.
    pub piece: Rect,
    /// What it is and which.
    pub title: String,
    /// How far it is, a line each.
    pub lines: Vec<String>,
    /// What can be done to it.
    pub buttons: Vec<Button>,
    /// It can be measured now.
    pub measure: bool,
    /// It may be said to be off.
    pub off: bool,
}

const STAGES: [(SquareStage, &str); 8] = [
    (SquareStage::Open, "open"),
    (SquareStage::Cut, "cut"),
    (SquareStage::Ready, "ready"),
    (SquareStage::Held, "held"),
    (SquareStage::Paired, "paired"),
    (SquareStage::Blocked, "blocked"),
    (SquareStage::Squared, "squared"),
    (SquareStage::Joined, "joined"),
];

/// The bench, with the chosen piece in detail.
pub(super) fn bench(journal: &Journal, chosen: Option<Rect>, context: Context<'_>) -> BenchView {
    // What has cooled by now is cool here as it is at work.
    let now = journal.throw_at(context.now);
    let throw = now.as_ref();
    let stage_name = |stage| stage_name(stage, context);
    let cells: Vec<BenchCell> = throw
        .assembly()
        .whole()
        .squares()
        .map(|piece| {
            let stage = stage(throw, piece);
            BenchCell {
                piece,
                label: names::square(piece),
                stage,
                spoken: say!(
                    context,
                    "told",
                    what = names::spoken(throw, piece, context),
                    how = stage_name(stage)
                ),
            }
        })
        .collect();
    let key = STAGES
        .iter()
        .map(|(stage, _)| StageKey {
            stage: *stage,
            label: stage_name(*stage),
            count: cells.iter().filter(|c| c.stage == *stage).count() as u32,
        })
        .collect();
    let chosen = chosen
        .filter(|p| throw.assembly().knows(*p))
        .map_or_else(Vec::new, |piece| {
            let mut pieces = vec![piece];
            while let Some(join) = throw.assembly().goes_into(*pieces.last().unwrap_or(&piece)) {
                pieces.push(join.whole);
                if throw.assembly().is_block(join.whole) {
                    break;
                }
            }
            pieces
                .into_iter()
                .map(|p| piece_card(throw, p, context))
                .collect()
        });
    let mut losses = std::collections::BTreeMap::new();
    for loss in &throw.losses {
        *losses.entry(loss.why.key()).or_insert(0usize) += 1;
    }
    let losses: Vec<String> = losses
        .into_iter()
        .map(|(why, n)| {
            let what = context.say(&format!("mishap-{why}"), &[]);
            say!(context, "times", n = n, what = what)
        })
        .collect();
    BenchView {
        head: head(journal, context),
        across: throw.plan.across,
        down: throw.plan.down,
        cells,
        key,
        tallies: tallies(throw, context),
        spares: throw.spares.get(),
        losses: match losses.is_empty() {
            true => say!(context, "losses-none"),
            false => say!(
                context,
                "losses",
                list = context.words.list("list-short", losses)
            ),
        },
        chosen,
    }
}

/// A stage in words.
pub(super) fn stage_name(stage: SquareStage, context: Context<'_>) -> String {
    let found = STAGES.iter().find(|(s, _)| *s == stage);
    let key = found.map_or("open", |(_, key)| key);
    context.say(&format!("stage-{key}"), &[])
}

/// How far a square is.
pub(super) fn stage(throw: &Throw, square: Rect) -> SquareStage {
    if !throw.has(square, Task::Cut) {
        return SquareStage::Open;
    }
    let loose = throw.assembly().whole() != square && !throw.is_joined(square);
    if !throw.complete(square) && loose {
        return SquareStage::Cut;
    }
    let mut stage = SquareStage::Ready;
    let mut piece = square;
    while let Some(join) = throw.assembly().goes_into(piece) {
        let whole = join.whole;
        if !throw.has(whole, Task::Stitch) {
            let held = throw.has(whole, Task::Dot) || throw.has(whole, Task::Pin);
            return if held && stage == SquareStage::Ready {
                SquareStage::Held
            } else {
                stage
            };
        }
        stage = if !throw.assembly().is_block(whole) {
            if throw.kind(whole) == Kind::Pair {
                SquareStage::Paired
            } else {
                return SquareStage::Joined;
            }
        } else if throw.is_through(whole, Task::SquareUp) {
            SquareStage::Squared
        } else if throw.kind(whole) == Kind::Pair {
            SquareStage::Paired
        } else {
            SquareStage::Blocked
        };
        piece = whole;
    }
    stage
}

fn tallies(throw: &Throw, context: Context<'_>) -> Vec<Tally> {
    let assembly = throw.assembly();
    let tally = |key: &str, pieces: &mut dyn Iterator<Item = Rect>, task: Task| {
        let (mut done, mut all) = (0, 0);
        for piece in pieces {
            all += 1;
            done += u32::from(throw.is_through(piece, task));
        }
        (all > 0).then(|| Tally {
            label: context.say(&format!("tally-{key}"), &[]),
            done,
            all,
            text: say!(context, "of", done = done, all = all),
        })
    };
    let squares = || assembly.whole().squares();
    let joined = |kind: Kind| {
        assembly
            .joins()
            .iter()
            .map(|j| j.whole)
            .filter(move |p| assembly.kind(*p) == kind)
    };
    let larger = || {
        let large = |p: &Rect| !matches!(assembly.kind(*p), Kind::Pair | Kind::Four);
        assembly
            .joins()
            .iter()
            .map(|j| j.whole)
            .filter(move |p| large(p))
    };
    let mut fronts = squares().filter(|s| throw.cover(*s).front.is_some());
    let mut backs = squares().filter(|s| throw.cover(*s).back.is_some());
    let mut cut_for = squares().filter(|s| throw.tasks(*s).contains(&Task::CutFabric));
    [
        tally("cut", &mut squares(), Task::Cut),
        tally("fabric", &mut cut_for, Task::CutFabric),
        tally("front", &mut fronts, Task::CoverFront),
        tally("back", &mut backs, Task::CoverBack),
        tally("pairs", &mut joined(Kind::Pair), Task::Stitch),
        tally("fours", &mut joined(Kind::Four), Task::Stitch),
        tally(
            "squared",
            &mut assembly
                .blocks()
                .into_iter()
                .filter(|b| assembly.is_block(*b)),
            Task::SquareUp,
        ),
        tally("larger", &mut larger(), Task::Stitch),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// One piece in detail.
fn piece_card(throw: &Throw, piece: Rect, context: Context<'_>) -> PieceCard {
    let mut lines = Vec::new();
    let next = throw.next(piece);
    if let Some(work) = throw.work(piece) {
        // What is to be trimmed again is not squared up any more.
        let through = |(task, _): &&(Task, _)| throw.is_through(piece, *task);
        for (task, _) in work.done.iter().filter(through) {
            lines.push(say!(
                context,
                "line-done",
                task = context.say(&format!("past-{}", task.key()), &[])
            ));
        }
        if let Some(measured) = work.measured {
            lines.push(say!(
                context,
                "line-measured",
                size = context.by(measured.width, measured.height)
            ));
        }
        if let Some(squared) = work.squared {
            lines.push(say!(
                context,
                "line-squared",
                size = context.by(squared.width, squared.height)
            ));
        }
    }
    let mut buttons = Vec::new();
    match (next, throw.waits_for(piece)) {
        (None, _) => lines.push(say!(context, "line-complete")),
        (Some(_), Some(part)) => {
            lines.push(say!(
                context,
                "line-waits",
                part = names::piece(throw, part, context)
            ));
        }
        (Some(task), None) => {
            lines.push(say!(
                context,
                "line-next",
                task = context.say(&format!("task-{}", task.key()), &[])
            ));
            if may_do(throw, task, piece).is_ok() {
                let label = context.say(&format!("tick-{}", task.key()), &[]);
                buttons.push(Button {
                    label,
                    action: Command::Tick {
                        task,
                        pieces: vec![piece],
                    },
                });
            }
            if task == Task::Cut {
                buttons.extend(super::work::spares(throw, piece, context));
            }
        }
    }
    for note in throw.notes.iter().filter(|n| n.piece == Some(piece)) {
        lines.push(say!(context, "line-note", text = note.text.as_str()));
    }
    let block = throw.assembly().is_block(piece);
    PieceCard {
        piece,
        title: names::piece(throw, piece, context),
        lines,
        buttons,
        measure: block && throw.has(piece, Task::Stitch) && !throw.has(piece, Task::SquareUp),
        off: match piece.is_square() {
            true => throw.has(piece, Task::Cut),
            false => throw.begun(piece),
        },
    }
}
