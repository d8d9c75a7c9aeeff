//! The bench: every square, pair and four, and how far each is.

use super::{Lens, head, names};
use crate::command::{Action, may_do};
use crate::log::journal::Journal;
use crate::plan::assembly::{Kind, Rect};
use crate::throw::Throw;
use crate::throw::tasks::Task;
use crate::view::{BenchCell, BenchView, Button, PieceCard, Stage, StageKey, Tally};

const STAGES: [(Stage, &str); 8] = [
    (Stage::Open, "open"),
    (Stage::Cut, "cut"),
    (Stage::Ready, "ready"),
    (Stage::Held, "held"),
    (Stage::Paired, "paired"),
    (Stage::Blocked, "blocked"),
    (Stage::Squared, "squared"),
    (Stage::Joined, "joined"),
];

/// The bench, with the chosen piece in detail.
pub(super) fn bench(journal: &Journal, chosen: Option<Rect>, lens: Lens<'_>) -> BenchView {
    let throw = journal.throw();
    let stage_name = |stage| stage_name(stage, lens);
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
                    lens,
                    "told",
                    what = names::spoken(throw, piece, lens),
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
                .map(|p| piece_card(throw, p, lens))
                .collect()
        });
    let mut losses = std::collections::BTreeMap::new();
    for loss in &throw.losses {
        *losses.entry(loss.why.key()).or_insert(0usize) += 1;
    }
    let losses: Vec<String> = losses
        .into_iter()
        .map(|(why, n)| {
            let what = lens.say(&format!("mishap-{why}"), &[]);
            say!(lens, "times", n = n, what = what)
        })
        .collect();
    BenchView {
        head: head(journal, lens),
        across: throw.plan.across,
        down: throw.plan.down,
        cells,
        key,
        tallies: tallies(throw, lens),
        spares: throw.spares.get(),
        losses: match losses.is_empty() {
            true => say!(lens, "losses-none"),
            false => say!(lens, "losses", list = lens.words.list("list-short", losses)),
        },
        chosen,
    }
}

/// A stage in words.
pub(super) fn stage_name(stage: Stage, lens: Lens<'_>) -> String {
    let found = STAGES.iter().find(|(s, _)| *s == stage);
    let key = found.map_or("open", |(_, key)| key);
    lens.say(&format!("stage-{key}"), &[])
}

/// How far a square is.
pub(super) fn stage(throw: &Throw, square: Rect) -> Stage {
    if !throw.has(square, Task::Cut) {
        return Stage::Open;
    }
    if !throw.complete(square) && throw.assembly().whole() != square {
        return Stage::Cut;
    }
    let mut stage = Stage::Ready;
    let mut piece = square;
    while let Some(join) = throw.assembly().goes_into(piece) {
        let whole = join.whole;
        if !throw.has(whole, Task::Stitch) {
            let held = throw.has(whole, Task::Dot) || throw.has(whole, Task::Pin);
            return if held && stage == Stage::Ready {
                Stage::Held
            } else {
                stage
            };
        }
        stage = if !throw.assembly().is_block(whole) {
            if throw.kind(whole) == Kind::Pair {
                Stage::Paired
            } else {
                return Stage::Joined;
            }
        } else if throw.has(whole, Task::SquareUp) {
            Stage::Squared
        } else {
            Stage::Blocked
        };
        piece = whole;
    }
    stage
}

fn tallies(throw: &Throw, lens: Lens<'_>) -> Vec<Tally> {
    let assembly = throw.assembly();
    let tally = |key: &str, pieces: &mut dyn Iterator<Item = Rect>, task: Task| {
        let (mut done, mut all) = (0, 0);
        for piece in pieces {
            all += 1;
            done += u32::from(throw.has(piece, task));
        }
        (all > 0).then(|| Tally {
            label: lens.say(&format!("tally-{key}"), &[]),
            done,
            all,
            text: say!(lens, "of", done = done, all = all),
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
    [
        tally("cut", &mut squares(), Task::Cut),
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
fn piece_card(throw: &Throw, piece: Rect, lens: Lens<'_>) -> PieceCard {
    let mut lines = Vec::new();
    let next = throw.next(piece);
    if let Some(work) = throw.work(piece) {
        for (task, _) in &work.done {
            lines.push(say!(
                lens,
                "line-done",
                task = lens.say(&format!("past-{}", task.key()), &[])
            ));
        }
        if let Some(measured) = work.measured {
            lines.push(say!(
                lens,
                "line-measured",
                size = lens.by(measured.width, measured.height)
            ));
        }
        if let Some(squared) = work.squared {
            lines.push(say!(
                lens,
                "line-squared",
                size = lens.by(squared.width, squared.height)
            ));
        }
    }
    let mut buttons = Vec::new();
    match (next, throw.waits_for(piece)) {
        (None, _) => lines.push(say!(lens, "line-complete")),
        (Some(_), Some(part)) => {
            lines.push(say!(
                lens,
                "line-waits",
                part = names::piece(throw, part, lens)
            ));
        }
        (Some(task), None) => {
            lines.push(say!(
                lens,
                "line-next",
                task = lens.say(&format!("task-{}", task.key()), &[])
            ));
            if may_do(throw, task, piece).is_ok() {
                let label = lens.say(&format!("tick-{}", task.key()), &[]);
                buttons.push(Button {
                    label,
                    action: Action::Tick {
                        task,
                        pieces: vec![piece],
                    },
                });
            }
            if task == Task::Cut && throw.spares > 0 {
                let label = say!(lens, "tick-spare", n = throw.spares);
                buttons.push(Button {
                    label,
                    action: Action::UseSpares {
                        pieces: vec![piece],
                    },
                });
            }
        }
    }
    for note in throw.notes.iter().filter(|n| n.piece == Some(piece)) {
        lines.push(say!(lens, "line-note", text = note.text.as_str()));
    }
    let block = throw.assembly().is_block(piece);
    PieceCard {
        piece,
        title: names::piece(throw, piece, lens),
        lines,
        buttons,
        measure: block && throw.has(piece, Task::Stitch) && !throw.has(piece, Task::SquareUp),
        off: piece.squares().all(|s| throw.has(s, Task::Cut)),
    }
}
