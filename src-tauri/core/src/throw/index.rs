//! The work index: what is ready and how far the work has come, kept up to date piece by piece.
//!
//! What can be done now, how far every task is, and how large every piece is follow from the
//! throw, but computing them again for each screen would cost more the larger the throw is.
//! After every event the [`WorkIndex`] receives the pieces that the event touched. It updates
//! those, the pieces they go into, and the sizes up to the whole: for a tick that is a handful
//! on every grid. Events that touch everything rebuild it.
//!
//! Promise, kept by a property test over walks of every kind of work: it equals
//! a [`WorkIndex`] built from nothing.

use crate::plan::assembly::{Kind, Rect};
use crate::throw::event::Time;
use crate::throw::facts::Size;
use crate::throw::stage::{Reached, Stage};
use crate::throw::state::Throw;
use crate::throw::tasks::Task;
use std::collections::{BTreeMap, BTreeSet};

/// The order in which kinds of pieces are worked: squares, pairs, fours, and on.
pub fn tier(kind: Kind) -> u8 {
    match kind {
        Kind::Square => 0,
        Kind::Pair => 1,
        Kind::Four => 2,
        Kind::Row | Kind::Column => 3,
        Kind::Part => 4,
        Kind::Whole => 5,
    }
}

/// How often a piece goes through each task, in the order of [`Task`].
type Times = [u8; Task::ALL.len()];

/// One piece's part in the sums.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct PieceState {
    size: Size,
    next: Option<Task>,
    ready: bool,
    all: u16,
    done: u16,
    /// How often each task is asked for, and how often of these it was done.
    asked: Times,
    made: Times,
}

fn times(tasks: impl Iterator<Item = Task>) -> Times {
    let mut out = Times::default();
    for task in tasks {
        let count = &mut out[task as usize];
        *count = count.saturating_add(1);
    }
    out
}

/// Adds what one piece goes through to the sums of the stages, or takes it away from them.
fn count_in(
    stages: &mut BTreeMap<Stage, Reached>,
    kind: Kind,
    (asked, made): (&Times, &Times),
    adds: bool,
) {
    let sum = |sum: &mut u32, part: u32| match adds {
        true => *sum += part,
        false => *sum -= part,
    };
    // The stages that this piece goes through, with its steps left in each.
    let mut of_piece = [None::<u32>; Stage::ALL.len()];
    for task in Task::ALL {
        let (asked, made) = (
            u32::from(asked[task as usize]),
            u32::from(made[task as usize]),
        );
        if asked == 0 {
            continue;
        }
        let stage = Stage::of(task, kind);
        *of_piece[stage as usize].get_or_insert(0) += asked - made;
        let reached = stages.entry(stage).or_default();
        sum(&mut reached.steps, asked);
        sum(&mut reached.done, made);
        if asked > made {
            let left = reached.left.entry(task).or_default();
            sum(left, asked - made);
            if *left == 0 {
                reached.left.remove(&task);
            }
        }
    }
    for stage in Stage::ALL {
        let Some(left) = of_piece[stage as usize] else {
            continue;
        };
        let reached = stages.entry(stage).or_default();
        sum(&mut reached.pieces, 1);
        sum(&mut reached.through, u32::from(left == 0));
        if reached.pieces == 0 {
            stages.remove(&stage);
        }
    }
}

/// Sums over all pieces, and what is ready.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WorkIndex {
    pieces: Vec<PieceState>,
    ready: BTreeMap<(u8, Task), BTreeSet<u32>>,
    /// Pieces that go through a task, and those it was done to, by kind.
    tallies: BTreeMap<(u8, Task), (u32, u32)>,
    /// How far every stage is that any piece goes through.
    stages: BTreeMap<Stage, Reached>,
    done: usize,
    all: usize,
}

/// The first of `tasks` that is not among the `done`, each done once for each time it
/// is asked for.
pub(crate) fn first_left(tasks: &[Task], done: &[(Task, Time)]) -> Option<Task> {
    for (n, task) in tasks.iter().enumerate() {
        let times = tasks[..=n].iter().filter(|t| *t == task).count();
        let has = done.iter().filter(|(d, _)| d == task).count();
        if has < times {
            return Some(*task);
        }
    }
    None
}

impl WorkIndex {
    /// Worked out from nothing.
    pub fn of(throw: &Throw) -> WorkIndex {
        let mut standing = WorkIndex::default();
        let pieces: Vec<Rect> = throw.assembly().pieces().collect();
        // Parts come before what they are joined to, so each finds its parts' sizes.
        for (n, piece) in pieces.iter().enumerate() {
            standing.pieces.push(PieceState {
                size: throw.size_from(*piece, &standing),
                next: None,
                ready: false,
                all: 0,
                done: 0,
                asked: Times::default(),
                made: Times::default(),
            });
            standing.work_out(throw, n, *piece);
        }
        for (n, piece) in pieces.iter().enumerate() {
            standing.see_if_ready(throw, n, *piece);
        }
        standing
    }

    /// Work out again what changed with these pieces.
    pub(crate) fn refresh(&mut self, throw: &Throw, touched: &[Rect]) {
        let assembly = throw.assembly();
        let number = |piece: Rect| assembly.number(piece);
        for piece in touched {
            let Some(n) = number(*piece) else { continue };
            // A block once joined is not trimmed again, one set free may have to be.
            let parts = assembly.join(*piece).map(|j| [j.first, j.second]);
            for part in parts.into_iter().flatten() {
                if let Some(n) = number(part) {
                    self.pieces[n].size = throw.size_from(part, self);
                }
            }
            self.pieces[n].size = throw.size_from(*piece, self);
            self.work_out(throw, n, *piece);
            for part in parts.into_iter().flatten() {
                if let Some(n) = number(part) {
                    self.work_out(throw, n, part);
                    self.see_if_ready(throw, n, part);
                }
            }
            self.see_if_ready(throw, n, *piece);
            let mut up = *piece;
            let mut growing = true;
            let mut first = true;
            while let Some(join) = assembly.goes_into(up).filter(|_| growing || first) {
                up = join.whole;
                let Some(n) = number(up) else { break };
                let size = throw.size_from(up, self);
                growing = size != self.pieces[n].size;
                self.pieces[n].size = size;
                if first {
                    self.see_if_ready(throw, n, up);
                }
                first = false;
            }
        }
        // What the whole goes through depends on its size.
        if let Some(n) = number(assembly.whole()) {
            self.work_out(throw, n, assembly.whole());
            self.see_if_ready(throw, n, assembly.whole());
        }
    }

    fn work_out(&mut self, throw: &Throw, n: usize, piece: Rect) {
        #[cfg(test)]
        crate::throw::counted::INDEXED.set(crate::throw::counted::INDEXED.get() + 1);
        let kind = tier(throw.kind(piece));
        let was = self.pieces[n];
        let tasks = throw.tasks_of_size(piece, was.size);
        let done = throw.work(piece).map_or(&[][..], |w| &w.done);
        let asked = times(tasks.iter().copied());
        let recorded = times(done.iter().map(|(task, _)| *task));
        let made = std::array::from_fn(|i| asked[i].min(recorded[i]));
        let now = PieceState {
            next: crate::throw::index::first_left(&tasks, done),
            all: tasks.len() as u16,
            done: made.iter().map(|n| u16::from(*n)).sum(),
            asked,
            made,
            ..was
        };
        if (was.asked, was.made) != (asked, made) {
            let kind = throw.kind(piece);
            count_in(&mut self.stages, kind, (&was.asked, &was.made), false);
            count_in(&mut self.stages, kind, (&asked, &made), true);
        }
        self.all = self.all + usize::from(now.all) - usize::from(was.all);
        self.done = self.done + usize::from(now.done) - usize::from(was.done);
        let goes_through = |p: &PieceState, task: Task| p.asked[task as usize] > 0;
        let any = |task: &Task| goes_through(&was, *task) || goes_through(&now, *task);
        for task in Task::ALL.into_iter().filter(any) {
            let tally = self.tallies.entry((kind, task)).or_default();
            let part = |p: &PieceState| u32::from(goes_through(p, task));
            let done = |p: &PieceState| u32::from(p.made[task as usize] > 0);
            tally.0 = tally.0 + part(&now) - part(&was);
            tally.1 = tally.1 + done(&now) - done(&was);
            if tally.0 == 0 {
                self.tallies.remove(&(kind, task));
            }
        }
        // It leaves the list under its old task here, and is listed again below.
        if let Some(task) = was.next.filter(|_| was.ready && was.next != now.next) {
            self.unlist(kind, task, n);
        }
        self.pieces[n] = PieceState {
            ready: was.ready && was.next == now.next,
            ..now
        };
    }

    fn unlist(&mut self, kind: u8, task: Task, n: usize) {
        if let Some(list) = self.ready.get_mut(&(kind, task)) {
            list.remove(&(n as u32));
            if list.is_empty() {
                self.ready.remove(&(kind, task));
            }
        }
    }

    fn see_if_ready(&mut self, throw: &Throw, n: usize, piece: Rect) {
        let assembly = throw.assembly();
        let through = |part: Rect| {
            assembly
                .number(part)
                .is_none_or(|n| self.pieces[n].next.is_none())
                || throw.trims_again(part)
        };
        let parts = assembly
            .join(piece)
            .is_none_or(|j| through(j.first) && through(j.second));
        let kind = tier(throw.kind(piece));
        let is = self.pieces[n];
        let washed_loose = is.next == Some(Task::Wash) && throw.patch_left().is_some();
        let squares = throw.assembly().whole().count() as usize;
        let open = |(m, p): (usize, &PieceState)| {
            let again = || {
                throw
                    .assembly()
                    .numbered(m)
                    .is_some_and(|p| throw.trims_again(p))
            };
            m != n && p.next.is_some() && !again()
        };
        let holed = is.next.is_some_and(Task::takes_a_whole_throw)
            && self.pieces.iter().enumerate().skip(squares).any(open);
        let ready = parts && is.next.is_some() && !washed_loose && !holed;
        if let Some(task) = is.next.filter(|_| ready != is.ready) {
            if ready {
                let list = self.ready.entry((kind, task)).or_default();
                list.insert(n as u32);
            } else {
                self.unlist(kind, task, n);
            }
        }
        self.pieces[n].ready = ready;
    }

    /// The size of the piece of this number.
    pub(crate) fn size(&self, n: usize) -> Option<Size> {
        self.pieces.get(n).map(|p| p.size)
    }

    /// What the piece of this number is to go through next.
    pub(crate) fn next(&self, n: usize) -> Option<Task> {
        self.pieces.get(n).and_then(|p| p.next)
    }

    /// What is ready: by tier of kind and task, the numbers of the pieces.
    pub fn ready(&self) -> &BTreeMap<(u8, Task), BTreeSet<u32>> {
        &self.ready
    }

    /// How many pieces of a kind go through a task, and how many have.
    pub fn tally(&self, kind: Kind, task: Task) -> (u32, u32) {
        let found = self.tallies.get(&(tier(kind), task));
        found.copied().unwrap_or_default()
    }

    /// How far every stage is that any piece goes through. The pile is not among them.
    pub(crate) fn stages(&self) -> &BTreeMap<Stage, Reached> {
        &self.stages
    }

    /// Tasks done, and tasks in all.
    pub fn progress(&self) -> (usize, usize) {
        (self.done, self.all)
    }
}
