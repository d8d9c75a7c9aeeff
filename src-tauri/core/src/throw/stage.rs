//! The stages of the work: where the throw is, counted in pieces and not in steps.
//!
//! Every task of every piece belongs to one [`Stage`]. The step screen, the shelf and the making
//! sheet all read [`stages`], so that they cannot contradict each other.
//!
//! The pile comes before all the work and has no tasks: it counts as done once anything lies on
//! it or a square was cut without it, and it is never the stage the throw is at.
//!
//! Promises (kept by the properties below):
//! * the steps of all stages together are the steps of the throw, and so are those done;
//! * a stage has a piece left exactly where it has a step left.

use crate::plan::assembly::Kind;
use crate::throw::state::Throw;
use crate::throw::tasks::Task;
use crate::types::TS;
use serde::Serialize;
use std::collections::BTreeMap;

/// A stage of the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Stage {
    /// What is to be cut is put on the pile.
    Pile,
    /// Squares are cut, and pieced where they are of two halves.
    Cut,
    /// Fabric is glued on squares, pressed and left to cool.
    Cover,
    /// Squares become pairs.
    Pairs,
    /// Pairs become fours.
    Fours,
    /// Blocks are pressed flat and squared up.
    Squared,
    /// Blocks are joined to the whole.
    Joined,
    /// The whole is bound.
    Bound,
    /// The whole is washed and its threads are clipped.
    Washed,
}

impl Stage {
    /// All of them, in the order of the work.
    pub const ALL: [Stage; 9] = [
        Stage::Pile,
        Stage::Cut,
        Stage::Cover,
        Stage::Pairs,
        Stage::Fours,
        Stage::Squared,
        Stage::Joined,
        Stage::Bound,
        Stage::Washed,
    ];

    /// Its name in the language files.
    pub fn key(self) -> &'static str {
        match self {
            Stage::Pile => "pile",
            Stage::Cut => "cut",
            Stage::Cover => "cover",
            Stage::Pairs => "pairs",
            Stage::Fours => "fours",
            Stage::Squared => "squared",
            Stage::Joined => "joined",
            Stage::Bound => "bound",
            Stage::Washed => "washed",
        }
    }

    /// The stage to which a task done to a kind of piece belongs.
    pub fn of(task: Task, kind: Kind) -> Stage {
        match task {
            Task::Cut
            | Task::LapHalves
            | Task::PressHalves
            | Task::CoolHalves
            | Task::StitchHalves
            | Task::CutFabric => Stage::Cut,
            Task::CoverFront
            | Task::CoverBack
            | Task::PressCover
            | Task::CoolCover
            | Task::StitchPatch => Stage::Cover,
            Task::Dot
            | Task::PressLap
            | Task::CoolLap
            | Task::Pin
            | Task::Stitch
            | Task::PressSeam => match kind {
                Kind::Pair => Stage::Pairs,
                Kind::Four => Stage::Fours,
                Kind::Square | Kind::Row | Kind::Column | Kind::Part | Kind::Whole => Stage::Joined,
            },
            Task::PressBlock | Task::SquareUp => Stage::Squared,
            Task::TrimEdge
            | Task::CutBinding
            | Task::JoinBinding
            | Task::PressBinding
            | Task::GlueBinding
            | Task::StitchBinding
            | Task::Snip => Stage::Bound,
            Task::Wash | Task::Clip => Stage::Washed,
        }
    }
}

/// How far one stage is.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Reached {
    /// Pieces that go through it.
    pub pieces: u32,
    /// Of these, those that have been through all of it.
    pub through: u32,
    /// Its steps.
    pub steps: u32,
    /// Of these, those done.
    pub done: u32,
    /// Its steps left, by task.
    pub left: BTreeMap<Task, u32>,
}

impl Reached {
    /// Whether nothing of it is left.
    pub fn is_through(&self) -> bool {
        self.done == self.steps
    }
}

/// How far every stage of a throw is that it goes through. The pile has one step.
///
/// The sums are kept by the [`crate::throw::index::WorkIndex`], so this costs the same on every
/// grid.
pub fn stages(throw: &Throw) -> BTreeMap<Stage, Reached> {
    let mut out = throw.work_index().stages().clone();
    let cut = out.get(&Stage::Cut).is_some_and(|cut| cut.done > 0);
    let listed = u32::from(cut || !throw.pile.is_empty());
    out.insert(
        Stage::Pile,
        Reached {
            pieces: throw.pile.len() as u32,
            through: throw.pile.len() as u32,
            steps: 1,
            done: listed,
            left: BTreeMap::new(),
        },
    );
    out
}

/// The stage a throw is at: the first with work left; none once all is done. A stage in which
/// things only lie cooling is not waited for while there is other work.
pub fn stage_now(stages: &BTreeMap<Stage, Reached>) -> Option<Stage> {
    let work = stages.iter().filter(|(stage, _)| **stage != Stage::Pile);
    let left: Vec<(&Stage, &Reached)> = work.filter(|(_, reached)| !reached.is_through()).collect();
    let works = |reached: &Reached| reached.left.keys().any(|task| !task.is_cooling());
    let first = left.iter().find(|(_, reached)| works(reached));
    first.or(left.first()).map(|(stage, _)| **stage)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::command::{Command, ready_for};
    use crate::log::journal::Journal;
    use crate::measure::Count;
    use crate::plan::{JoinOrder, Joining, Plan};
    use proptest::prelude::*;

    fn begun(across: u16, down: u16, order: JoinOrder, joining: Joining) -> Journal {
        let begin = Command::Begin {
            name: "t".into(),
            plan: Plan {
                across,
                down,
                order,
                joining,
                ..Plan::default()
            },
            prints: vec![],
            denims: vec![],
        };
        Journal::begin(&begin, 0).unwrap().0
    }

    /// The same counted anew from every piece.
    fn counted(throw: &Throw) -> BTreeMap<Stage, Reached> {
        let mut out: BTreeMap<Stage, Reached> = BTreeMap::new();
        for piece in throw.assembly().pieces() {
            let kind = throw.kind(piece);
            let done = throw.work(piece).map_or(&[][..], |work| &work.done);
            let tasks = throw.tasks(piece);
            let mut here: BTreeMap<Stage, u32> = BTreeMap::new();
            for (n, task) in tasks.iter().enumerate() {
                let stage = Stage::of(*task, kind);
                let reached = out.entry(stage).or_default();
                reached.steps += 1;
                // A task that comes more than once was done as often as it is recorded.
                let turn = tasks[..n].iter().filter(|t| *t == task).count();
                let left = here.entry(stage).or_default();
                if done.iter().filter(|(t, _)| t == task).count() > turn {
                    reached.done += 1;
                } else {
                    *reached.left.entry(*task).or_default() += 1;
                    *left += 1;
                }
            }
            for (stage, left) in &here {
                let reached = out.entry(*stage).or_default();
                reached.pieces += 1;
                reached.through += u32::from(*left == 0);
            }
        }
        out
    }

    fn all_of(journal: &mut Journal, task: Task, kind: Kind) {
        let n = ready_for(journal.throw(), kind, task).count() as u32;
        let tick = Command::TickNext {
            task,
            kind,
            count: Count::at_most(n),
        };
        let entry = journal.propose(&tick, 1).unwrap();
        journal.accept(entry).unwrap();
    }

    /// A six by eight in numbers worked by hand: 48 squares are 24 pairs, these 12 fours, and 12
    /// blocks take 11 joins to become one.
    #[test]
    fn a_six_by_eight_goes_through_its_stages() {
        let mut journal = begun(6, 8, JoinOrder::Rows, Joining::Lapped);
        let counts = |journal: &Journal| -> Vec<(Stage, u32, u32)> {
            let found = stages(journal.throw());
            found
                .iter()
                .map(|(stage, r)| (*stage, r.through, r.pieces))
                .collect()
        };
        assert_eq!(
            counts(&journal),
            [
                (Stage::Pile, 0, 0),
                (Stage::Cut, 0, 48),
                (Stage::Pairs, 0, 24),
                (Stage::Fours, 0, 12),
                (Stage::Squared, 0, 12),
                (Stage::Joined, 0, 11),
                (Stage::Bound, 0, 1),
                (Stage::Washed, 0, 1),
            ]
        );
        assert_eq!(stage_now(&stages(journal.throw())), Some(Stage::Cut));
        // Nothing lies on the pile and nothing was cut; one square cut without it will do.
        let listed = |journal: &Journal| stages(journal.throw())[&Stage::Pile].is_through();
        assert!(!listed(&journal));
        let mut one = journal.clone();
        let tick = Command::TickNext {
            task: Task::Cut,
            kind: Kind::Square,
            count: Count::from(1),
        };
        let entry = one.propose(&tick, 1).unwrap();
        one.accept(entry).unwrap();
        assert!(listed(&one));
        all_of(&mut journal, Task::Cut, Kind::Square);
        assert_eq!(stage_now(&stages(journal.throw())), Some(Stage::Pairs));
        assert!(stages(journal.throw())[&Stage::Pile].is_through());
        for task in [Task::Dot, Task::PressLap, Task::CoolLap] {
            all_of(&mut journal, task, Kind::Pair);
        }
        // Lapped, pressed and cooled, but no pair is through before it is stitched.
        let pairs = &stages(journal.throw())[&Stage::Pairs];
        assert_eq!((pairs.through, pairs.steps, pairs.done), (0, 96, 72));
        assert_eq!(pairs.left, BTreeMap::from([(Task::Stitch, 24)]));
        all_of(&mut journal, Task::Stitch, Kind::Pair);
        assert_eq!(counts(&journal)[2], (Stage::Pairs, 24, 24));
        assert_eq!(stage_now(&stages(journal.throw())), Some(Stage::Fours));
    }

    proptest! {
        #[test]
        fn stages_share_out_the_steps(
            (across, down) in (1u16..9, 1u16..9),
            order in prop::sample::select(vec![JoinOrder::Rows, JoinOrder::Columns, JoinOrder::Doubling]),
            joining in prop::sample::select(vec![Joining::Lapped, Joining::Seamed, Joining::Exposed]),
            turns in 0usize..60,
        ) {
            let mut journal = begun(across, down, order, joining);
            for _ in 0..turns {
                let next = crate::command::ready(journal.throw()).next();
                let Some((piece, task)) = next else { break };
                let kind = journal.throw().kind(piece);
                all_of(&mut journal, task, kind);
            }
            let throw = journal.throw();
            let found = stages(throw);
            prop_assert_eq!(throw.work_index().stages(), &counted(throw));
            let work: Vec<&Reached> = found.iter().filter(|(s, _)| **s != Stage::Pile).map(|(_, r)| r).collect();
            let sum = |of: fn(&Reached) -> u32| work.iter().map(|r| of(r) as usize).sum::<usize>();
            let (done, all) = throw.progress();
            prop_assert_eq!((sum(|r| r.done), sum(|r| r.steps)), (done, all));
            for reached in work {
                prop_assert_eq!(reached.through == reached.pieces, reached.is_through());
                let left: u32 = reached.left.values().sum();
                prop_assert_eq!(left + reached.done, reached.steps);
            }
            prop_assert_eq!(stage_now(&found).is_none(), done == all);
        }
    }
}
