//! Two copies of one throw become one again.
//!
//! Two devices held the same throw and both went on. Their records share a beginning; then
//! each has a tail. [`meet`] finds what both can keep and what is for the maker to decide
//! ([`Conflict`]); [`Meeting::join`] makes the one record.
//!
//! # How entries are recognised
//!
//! An entry is known by when it was made, what it says, and how many such came before it
//! in its copy ([`Known`]); an undo or redo by the entry it speaks of. Numbers play no
//! part, since they differ once copies have been merged.
//!
//! # What becomes of the tails
//!
//! * What stands in one copy only is a *change* of that copy; so is a shared entry that one
//!   copy took back, or did again. Two changes that do not clash ([`crate::log::footprint`]) are
//!   both kept. Changes that clash, with whatever builds on them, form a conflict; one side
//!   of it is kept. The same step made on both (two ticks of one square, in whatever order)
//!   is kept once, as of the earlier time.
//! * A step is the same on both only where it rests on the same on both. Two entries that
//!   happen to say the same at the same moment, but follow on different work, are a change of
//!   each copy, although the result holds them as one entry.
//! * Nothing is lost: what does not stand in the result is in it as [`What::Past`].
//! * Entries come in the order of their times, then of what they say, but never before
//!   what came before them in their own copy. Where the copies made the same steps in two
//!   orders, only what a step rests on comes before it for certain.
//!
//! # Promises, kept by the properties below
//!
//! * `join(a, b)` is `join(b, a)` to the byte, the choices being swapped too.
//! * `join(a, a)` is `a`; `join(join(a, b), a)` is `join(a, b)`.
//! * Every entry of either copy is in the result; all that stood in either and is not on
//!   the losing side of a conflict stands.
//! * Every step of the result follows on those before it ([`crate::log::intake::follows`]); a
//!   result that would not is refused ([`Unmergeable`]), and both copies are to be kept.
//!
//! Not promised: that merging three copies gives the same whichever two go first. What was
//! decided between two is shown to the third as decided.
//!
//! Limits: time and memory grow with the product of the lengths of the two tails.
//!
//! ```
//! use lapwork_core::command::Command;
//! use lapwork_core::demo;
//! use lapwork_core::log::merge::meet;
//!
//! // Two copies of one throw, a note made in each.
//! let [mut table, mut machine] = [demo::throw(0), demo::throw(0)];
//! for (copy, text, at) in [(&mut table, "More jeans found", 9), (&mut machine, "New needle", 7)] {
//!     let note = Command::Note { text: text.into(), piece: None, task: None, next: false };
//!     let entry = copy.propose(&note, at).unwrap();
//!     copy.accept(entry).unwrap();
//! }
//! let meeting = meet(&table, &machine).unwrap();
//! assert!(meeting.conflicts().is_empty());
//! let one = meeting.join(&[]).unwrap();
//! assert_eq!(one.len(), table.len() + 1);
//! ```

use crate::log::footprint::Footprint;
use crate::log::intake;
use crate::log::journal::{Entry, Journal, What};
use crate::throw::{Event, Throw, Time};
use std::collections::{BTreeMap, BTreeSet};
use thiserror::Error;

/// One of two copies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MergeSide {
    /// The one named first.
    First,
    /// The other.
    Second,
}

impl MergeSide {
    /// The other one.
    #[must_use]
    pub fn other(self) -> MergeSide {
        match self {
            MergeSide::First => MergeSide::Second,
            MergeSide::Second => MergeSide::First,
        }
    }
}

/// How a change came about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin {
    /// Done.
    Did,
    /// Done before the copies parted, and taken back since.
    TookBack,
    /// Taken back before the copies parted, and done again since.
    DidAgain,
}

/// Something one copy has and the other has not.
#[derive(Debug, Clone, PartialEq)]
pub struct Divergence {
    /// How it came about.
    pub way: Origin,
    /// When the step itself was made.
    pub at: Time,
    /// The step.
    pub events: Vec<Event>,
}

/// Changes of the two copies that cannot both stand.
#[derive(Debug, Clone, PartialEq)]
pub struct Conflict {
    /// Those of the first copy.
    pub first: Vec<Divergence>,
    /// Those of the second.
    pub second: Vec<Divergence>,
}

/// How two records stand to each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Relation {
    /// Not copies of one throw.
    Strangers,
    /// The same, entry for entry.
    Same,
    /// The first has all of the second, and so many entries more.
    FirstHasMore(usize),
    /// The second has all of the first, and so many entries more.
    SecondHasMore(usize),
    /// Each has entries the other has not, or they decided otherwise.
    Apart {
        /// Entries only the first has.
        first: usize,
        /// Entries only the second has.
        second: usize,
    },
}

/// The two cannot be made one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum Unmergeable {
    /// They are not copies of one throw.
    #[error("not two copies of one throw")]
    Strangers,
    /// Some conflict has no choice.
    #[error("a conflict was not decided")]
    Undecided,
    /// The result would hold a step that does not follow.
    #[error("the merged record would hold a step that does not follow")]
    Misfit,
}

/// What an entry is known by.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Known {
    at: Time,
    says: String,
    nth: usize,
}

/// What the entries of a record are known by, in order.
pub fn known(journal: &Journal) -> Vec<Known> {
    let mut out: Vec<Known> = Vec::with_capacity(journal.len());
    let mut seen: BTreeMap<(Time, String), usize> = BTreeMap::new();
    for (entry, _) in journal.entries() {
        let of = |n: u64| {
            let at = usize::try_from(n).ok().and_then(|n| n.checked_sub(1));
            let of = at.and_then(|at| out.get(at));
            of.map_or_else(String::new, |k| format!("{} {} {}", k.at, k.nth, k.says))
        };
        let says = match present(&entry.what) {
            What::Undo(n) => format!("undo {}", of(*n)),
            What::Redo(n) => format!("redo {}", of(*n)),
            what => serde_json::to_string(what).unwrap_or_default(),
        };
        let nth = seen.entry((entry.at, says.clone())).or_insert(0);
        out.push(Known {
            at: entry.at,
            says,
            nth: *nth,
        });
        *nth += 1;
    }
    out
}

/// What an entry said when it was made.
fn present(what: &What) -> &What {
    match what {
        What::Past(past) => past,
        what => what,
    }
}

fn strangers(a: &Journal, b: &Journal) -> bool {
    let first = |j: &Journal| j.entries().next().map(|(e, _)| e.clone());
    a.name() != b.name() || first(a) != first(b)
}

/// How two records stand to each other.
pub fn relation(a: &Journal, b: &Journal) -> Relation {
    if strangers(a, b) {
        return Relation::Strangers;
    }
    if same(a, b) {
        return Relation::Same;
    }
    let (of_a, of_b): (BTreeSet<Known>, BTreeSet<Known>) = (
        known(a).into_iter().collect(),
        known(b).into_iter().collect(),
    );
    let first = of_a.difference(&of_b).count();
    let second = of_b.difference(&of_a).count();
    match (first, second) {
        (0, more) if more > 0 => Relation::SecondHasMore(more),
        (more, 0) if more > 0 => Relation::FirstHasMore(more),
        (first, second) => Relation::Apart { first, second },
    }
}

fn same(a: &Journal, b: &Journal) -> bool {
    a.len() == b.len() && a.entries().zip(b.entries()).all(|((x, _), (y, _))| x == y)
}

/// An entry of one or both tails.
struct Node {
    known: Known,
    what: What,
    /// What an undo or redo speaks of.
    of: Option<Known>,
    /// Where it is in each copy.
    at: [Option<usize>; 2],
    /// Whether it stands in each.
    stands: [bool; 2],
    /// Whether it is one step of both copies, which rests on the same in both.
    common: bool,
    footprint: Footprint,
}

/// What one copy changed.
struct Changed {
    side: usize,
    what: Subject,
    footprint: Footprint,
    /// Its order among the changes of its copy; 0 for what is gone from it.
    order: usize,
}

enum Subject {
    /// What stands of the shared beginning.
    Beginning,
    /// A node that stands here only.
    Own(usize),
    /// A shared node that does not stand here.
    Gone(usize),
}

/// Two copies laid side by side.
pub struct Meeting {
    /// First and second are swapped inside, so that it matters not which is named first.
    swapped: bool,
    /// One of the two has all of the other: nothing to decide.
    whole: Option<Journal>,
    sides: [Journal; 2],
    shared: usize,
    /// Positions of the beginning's entries in the order they stand, then those that could
    /// be done again.
    chain: Vec<usize>,
    /// How many of the chain stood where the copies parted.
    stood: usize,
    /// How many stand in each copy.
    stand: [usize; 2],
    nodes: Vec<Node>,
    changes: Vec<Changed>,
    /// For each conflict the changes in it.
    conflicts: Vec<Vec<usize>>,
}

/// Lay two copies side by side.
///
/// # Errors
/// [`Unmergeable::Strangers`].
pub fn meet(a: &Journal, b: &Journal) -> Result<Meeting, Unmergeable> {
    let relation = relation(a, b);
    let whole = match relation {
        Relation::Strangers => return Err(Unmergeable::Strangers),
        Relation::Same | Relation::FirstHasMore(_) => Some(a.clone()),
        Relation::SecondHasMore(_) => Some(b.clone()),
        Relation::Apart { .. } => None,
    };
    let pairs = a.entries().zip(b.entries());
    let shared = pairs.take_while(|((x, _), (y, _))| x == y).count();
    let tail = |j: &Journal| -> Vec<String> {
        let tail = j.entries().skip(shared);
        tail.map(|(entry, _)| entry.line()).collect()
    };
    let swapped = tail(a) > tail(b);
    let sides = if swapped {
        [b.clone(), a.clone()]
    } else {
        [a.clone(), b.clone()]
    };
    let mut meeting = Meeting {
        swapped,
        whole,
        sides,
        shared,
        chain: Vec::new(),
        stood: 0,
        stand: [0, 0],
        nodes: Vec::new(),
        changes: Vec::new(),
        conflicts: Vec::new(),
    };
    if meeting.whole.is_none() {
        meeting.lay_out()?;
    }
    Ok(meeting)
}

/// The record of a copy's first entries.
fn beginning(journal: &Journal, entries: usize) -> Option<Journal> {
    let mut given = journal.entries().map(|(entry, _)| entry);
    let mut out = Journal::from_first(given.next()?)?.named(journal.name());
    for entry in given.take(entries.saturating_sub(1)) {
        out.accept(entry.clone())?;
    }
    Some(out)
}

impl Meeting {
    fn lay_out(&mut self) -> Result<(), Unmergeable> {
        let parted = beginning(&self.sides[0], self.shared).ok_or(Unmergeable::Misfit)?;
        let (stand, again) = parted.positions();
        self.stood = stand.len();
        self.chain = stand.iter().chain(again.iter().rev()).copied().collect();
        self.collect_nodes()?;
        let begun: Vec<Throw> = [0, 1].map(|side| self.begun(self.stand[side])).into();
        for (side, throw) in begun.into_iter().enumerate() {
            self.find_footprints(side, throw);
        }
        self.find_common();
        self.find_changes();
        self.find_conflicts();
        Ok(())
    }

    /// The events of an entry of the shared beginning.
    fn shared_events(&self, position: usize) -> &[Event] {
        match self.sides[0].entry(position).map(|entry| &entry.what) {
            Some(What::Do(events)) => events,
            _ => &[],
        }
    }

    fn shared_at(&self, position: usize) -> Time {
        self.sides[0].entry(position).map_or(0, |entry| entry.at)
    }

    /// The throw with so many of the chain standing.
    fn begun(&self, count: usize) -> Throw {
        let first = self.shared_events(0);
        let throw = first.first().and_then(Throw::begin);
        let mut throw = match throw {
            Some(throw) => throw,
            None => self.sides[0].throw().clone(),
        };
        for position in &self.chain[..count] {
            let at = self.shared_at(*position);
            for event in self.shared_events(*position) {
                throw.apply(event, at);
            }
        }
        throw
    }

    fn collect_nodes(&mut self) -> Result<(), Unmergeable> {
        let mut index: BTreeMap<Known, usize> = BTreeMap::new();
        let names = [known(&self.sides[0]), known(&self.sides[1])];
        for (side, names) in names.iter().enumerate() {
            let journal = &self.sides[side];
            let (stand, _) = journal.positions();
            let of_beginning = stand.iter().take_while(|p| **p < self.shared).count();
            if stand[..of_beginning] != *self.chain.get(..of_beginning).unwrap_or_default() {
                return Err(Unmergeable::Misfit);
            }
            self.stand[side] = of_beginning;
            let standing: BTreeSet<usize> = stand[of_beginning..].iter().copied().collect();
            for (position, (entry, _)) in journal.entries().enumerate().skip(self.shared) {
                let known = &names[position];
                let what = present(&entry.what).clone();
                let of = match &what {
                    What::Undo(n) | What::Redo(n) => {
                        let at = usize::try_from(*n).ok().and_then(|n| n.checked_sub(1));
                        at.and_then(|at| names.get(at)).cloned()
                    }
                    _ => None,
                };
                let i = *index.entry(known.clone()).or_insert_with(|| {
                    self.nodes.push(Node {
                        known: known.clone(),
                        what,
                        of,
                        at: [None, None],
                        stands: [false, false],
                        common: false,
                        footprint: Footprint::default(),
                    });
                    self.nodes.len() - 1
                });
                self.nodes[i].at[side] = Some(position);
                self.nodes[i].stands[side] = standing.contains(&position);
            }
        }
        Ok(())
    }

    /// The nodes of a copy, in its order.
    fn of_side(&self, side: usize) -> Vec<usize> {
        let mut found: Vec<(usize, usize)> = self
            .nodes
            .iter()
            .enumerate()
            .filter_map(|(i, node)| Some((node.at[side]?, i)))
            .collect();
        found.sort_unstable();
        found.into_iter().map(|(_, i)| i).collect()
    }

    fn find_footprints(&mut self, side: usize, mut throw: Throw) {
        for i in self.of_side(side) {
            if !self.nodes[i].stands[side] {
                continue;
            }
            let What::Do(events) = self.nodes[i].what.clone() else {
                continue;
            };
            let footprint = Footprint::of(&throw, &events);
            self.nodes[i].footprint.add(&footprint);
            for event in &events {
                throw.apply(event, self.nodes[i].known.at);
            }
        }
    }

    /// Find the steps that are the same on both copies: entries that both have, and twins,
    /// which say the same at different times. Of two twins the earlier stands for both and
    /// the later is past.
    ///
    /// A step is common only if all that it rests on is common. What comes earlier in the
    /// first copy is therefore settled first.
    fn find_common(&mut self) {
        let order = [0, 1].map(|side| -> Vec<usize> {
            let nodes = self.of_side(side).into_iter();
            nodes.filter(|i| self.nodes[*i].stands[side]).collect()
        });
        let unlike = self.unlike_beginning();
        for (nth, i) in order[0].iter().copied().enumerate() {
            if !self.rests_on_common(0, &order[0][..nth], i, &unlike) {
                continue;
            }
            let twins = order[1].iter().copied().enumerate();
            let same = twins.filter(|(_, j)| self.may_be_same(i, *j));
            let found = same
                .filter(|(nth, j)| self.rests_on_common(1, &order[1][..*nth], *j, &unlike))
                .map(|(_, j)| j)
                .next();
            match found {
                Some(j) if i == j => self.nodes[i].common = true,
                Some(j) => self.pair(i, j),
                None => {}
            }
        }
    }

    /// Whether all that a node follows on in a copy, and that touches the same, is common.
    fn rests_on_common(&self, side: usize, before: &[usize], i: usize, unlike: &Footprint) -> bool {
        let node = &self.nodes[i].footprint;
        let own = |i: &usize| self.nodes[*i].stands[side] && !self.nodes[*i].common;
        let mut own = before.iter().filter(|i| own(i));
        !unlike.clashes(node) && !own.any(|i| self.nodes[*i].footprint.clashes(node))
    }

    /// Whether a node that stands in the first copy and one that stands in the second may be
    /// the same step.
    fn may_be_same(&self, i: usize, j: usize) -> bool {
        let (x, y) = (&self.nodes[i], &self.nodes[j]);
        let both = |node: &Node| node.at[0].is_some() && node.at[1].is_some();
        if i == j {
            return true;
        }
        let alone = x.stands == [true, false] && y.stands == [false, true];
        // An entry that the other copy has as past is stood for by an earlier one only: so
        // it was when the copies were merged before.
        let order = match (both(x), both(y)) {
            (false, false) => true,
            (true, false) => y.known < x.known,
            (false, true) => x.known < y.known,
            (true, true) => false,
        };
        // What touches nothing, like a note, is not the same for saying the same.
        let one = x.footprint == y.footprint && x.footprint.clashes(&y.footprint);
        alone && order && one && x.what == y.what
    }

    /// Let the earlier of two twins stand for both.
    fn pair(&mut self, i: usize, j: usize) {
        let (keep, past) = if self.nodes[i].known < self.nodes[j].known {
            (i, j)
        } else {
            (j, i)
        };
        let side = usize::from(past == j);
        self.nodes[keep].at[side] = self.nodes[past].at[side];
        self.nodes[keep].stands = [true, true];
        self.nodes[keep].common = true;
        self.nodes[past].stands = [false, false];
    }

    /// How many of the chain stand as far as both copies agree: what both took back, or did
    /// again, of the beginning.
    fn agreed(&self) -> usize {
        let [a, b] = self.stand;
        if a.max(b) <= self.stood {
            a.max(b)
        } else if a.min(b) >= self.stood {
            a.min(b)
        } else {
            self.stood
        }
    }

    /// Which part of the chain a copy alone took back or did again.
    fn of_beginning(&self, side: usize) -> Option<(usize, usize)> {
        let (here, agreed) = (self.stand[side], self.agreed());
        (here != agreed).then_some((here.min(agreed), here.max(agreed)))
    }

    /// The footprint of a part of the chain.
    fn of_chain(&self, (from, to): (usize, usize)) -> Footprint {
        let mut throw = self.begun(from);
        let mut footprint = Footprint::default();
        for position in &self.chain[from..to] {
            let events = self.shared_events(*position);
            footprint.add(&Footprint::of(&throw, events));
            for event in events {
                throw.apply(event, 0);
            }
        }
        footprint
    }

    /// The footprint of what stands of the beginning in one copy only.
    fn unlike_beginning(&self) -> Footprint {
        let [a, b] = self.stand;
        self.of_chain((a.min(b), a.max(b)))
    }

    fn find_changes(&mut self) {
        let mut changes = Vec::new();
        for side in 0..2 {
            if let Some(part) = self.of_beginning(side) {
                changes.push(Changed {
                    side,
                    what: Subject::Beginning,
                    footprint: self.of_chain(part),
                    order: 0,
                });
            }
            for (order, i) in self.of_side(side).into_iter().enumerate() {
                let node = &self.nodes[i];
                let shared = node.at[1 - side].is_some();
                let (what, order) = match (node.stands[side], node.stands[1 - side]) {
                    (true, true) if !node.common => (Subject::Own(i), order + 1),
                    (true, false) if !shared => (Subject::Own(i), order + 1),
                    (false, true) if shared => (Subject::Gone(i), 0),
                    _ => continue,
                };
                changes.push(Changed {
                    side,
                    what,
                    footprint: node.footprint.clone(),
                    order,
                });
            }
        }
        self.changes = changes;
    }

    /// Whether two changes of different copies cannot both be.
    fn against(x: &Changed, y: &Changed) -> bool {
        match (&x.what, &y.what) {
            // One took back of the beginning, the other did something of it again.
            (Subject::Beginning, Subject::Beginning) => true,
            _ => x.footprint.clashes(&y.footprint),
        }
    }

    fn find_conflicts(&mut self) {
        let count = self.changes.len();
        let mut group: Vec<usize> = (0..count).collect();
        let mut contested = vec![false; count];
        fn root(group: &mut [usize], mut i: usize) -> usize {
            while group[i] != i {
                group[i] = group[group[i]];
                i = group[i];
            }
            i
        }
        let join = |group: &mut [usize], i: usize, j: usize| {
            let (i, j) = (root(group, i), root(group, j));
            group[i.max(j)] = i.min(j);
        };
        for i in 0..count {
            for j in i + 1..count {
                let (x, y) = (&self.changes[i], &self.changes[j]);
                if x.side != y.side && Self::against(x, y) {
                    join(&mut group, i, j);
                    (contested[i], contested[j]) = (true, true);
                }
            }
        }
        // Whatever builds on a contested change goes with it; and what is gone from a copy
        // comes back, if it does, with what it was built on there.
        let mut spreads: Vec<usize> = (0..count).filter(|i| contested[*i]).collect();
        while let Some(i) = spreads.pop() {
            let x = &self.changes[i];
            for (j, y) in self.changes.iter().enumerate() {
                let builds = x.order < y.order || (x.order, y.order) == (0, 0);
                if i != j && x.side == y.side && builds && x.footprint.clashes(&y.footprint) {
                    join(&mut group, i, j);
                    if !std::mem::replace(&mut contested[j], true) {
                        spreads.push(j);
                    }
                }
            }
        }
        let mut found: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
        for i in (0..count).filter(|i| contested[*i]) {
            found.entry(root(&mut group, i)).or_default().push(i);
        }
        let mut conflicts: Vec<Vec<usize>> = found.into_values().collect();
        conflicts.sort_by_key(|members| {
            let keys = members.iter().map(|i| self.key(&self.changes[*i]));
            keys.min()
        });
        self.conflicts = conflicts;
    }

    /// By what conflicts are put in order.
    fn key(&self, change: &Changed) -> (Time, String) {
        match change.what {
            Subject::Own(i) | Subject::Gone(i) => {
                let known = &self.nodes[i].known;
                (known.at, known.says.clone())
            }
            Subject::Beginning => {
                let (first, _) = self.of_beginning(change.side).unwrap_or_default();
                (self.shared_at(self.chain[first]), String::new())
            }
        }
    }

    /// What is for the maker to decide, oldest first.
    pub fn conflicts(&self) -> Vec<Conflict> {
        let told = |members: &[usize], side: usize| -> Vec<Divergence> {
            let here = members.iter().map(|i| &self.changes[*i]);
            here.filter(|c| c.side == side)
                .flat_map(|c| self.told(c))
                .collect()
        };
        let (first, second) = if self.swapped { (1, 0) } else { (0, 1) };
        let conflicts = self.conflicts.iter();
        conflicts
            .map(|members| Conflict {
                first: told(members, first),
                second: told(members, second),
            })
            .collect()
    }

    fn told(&self, change: &Changed) -> Vec<Divergence> {
        let node = |i: usize, way: Origin| {
            let node = &self.nodes[i];
            let events = match &node.what {
                What::Do(events) => events.clone(),
                _ => Vec::new(),
            };
            let at = node.known.at;
            vec![Divergence { way, at, events }]
        };
        match change.what {
            Subject::Own(i) => node(i, Origin::Did),
            Subject::Gone(i) => node(i, Origin::TookBack),
            Subject::Beginning => {
                let (from, to) = self.of_beginning(change.side).unwrap_or_default();
                let way = if self.stand[change.side] < self.stood {
                    Origin::TookBack
                } else {
                    Origin::DidAgain
                };
                let positions = self.chain[from..to].iter();
                positions
                    .map(|position| Divergence {
                        way,
                        at: self.shared_at(*position),
                        events: self.shared_events(*position).to_vec(),
                    })
                    .collect()
            }
        }
    }

    /// The one record; `choices` says for each conflict whose side is kept.
    ///
    /// # Errors
    /// [`Unmergeable`]; both copies are then to be kept.
    pub fn join(&self, choices: &[MergeSide]) -> Result<Journal, Unmergeable> {
        if let Some(whole) = &self.whole {
            return Ok(whole.clone());
        }
        if choices.len() != self.conflicts.len() {
            return Err(Unmergeable::Undecided);
        }
        let mut lost = vec![false; self.changes.len()];
        for (members, choice) in self.conflicts.iter().zip(choices) {
            let kept = usize::from((*choice == MergeSide::Second) != self.swapped);
            for i in members {
                lost[*i] = self.changes[*i].side != kept;
            }
        }
        let mut count = self.agreed();
        // For each node, in which copies' order it stands in the result.
        let mut stands: Vec<[bool; 2]> = self
            .nodes
            .iter()
            .map(|node| [node.common, node.common])
            .collect();
        for (change, lost) in self.changes.iter().zip(&lost) {
            match (&change.what, lost) {
                (Subject::Own(i), false) => stands[*i][change.side] = true,
                (Subject::Gone(i), true) => stands[*i][1 - change.side] = true,
                (Subject::Beginning, false) => count = self.stand[change.side],
                _ => {}
            }
        }
        self.write(count, &stands).ok_or(Unmergeable::Misfit)
    }

    /// Whether something that is not written yet must come before a node: what it rests on,
    /// in a copy by whose order both stand.
    fn waits(&self, i: usize, stands: &[[bool; 2]], written: &[bool]) -> bool {
        let node = &self.nodes[i];
        (0..self.nodes.len()).any(|j| {
            let other = &self.nodes[j];
            let before =
                |side: usize| stands[i][side] && stands[j][side] && other.at[side] < node.at[side];
            !written[j] && (before(0) || before(1)) && other.footprint.clashes(&node.footprint)
        })
    }

    fn write(&self, count: usize, stands: &[[bool; 2]]) -> Option<Journal> {
        let mut out = beginning(&self.sides[0], self.shared)?;
        let mut numbers: BTreeMap<&Known, u64> = BTreeMap::new();
        let shared = known(&out);
        for (i, known) in shared.iter().enumerate() {
            numbers.insert(known, i as u64 + 1);
        }
        let mut written = vec![false; self.nodes.len()];
        // What is taken back or done again of the beginning, with the entry that did so.
        let back: Vec<usize> = (count..self.stood).rev().collect();
        let again: Vec<usize> = (self.stood..count).collect();
        for at in back.into_iter().chain(again) {
            let position = self.chain[at];
            let of = &shared[position];
            let n = position as u64 + 1;
            let what = if count < self.stood {
                What::Undo(n)
            } else {
                What::Redo(n)
            };
            let by = self.said_so(of, &what, at)?;
            let n = out.len() as u64 + 1;
            let node = &self.nodes[by];
            out.accept(Entry {
                n,
                at: node.known.at,
                what,
            })?;
            numbers.insert(&node.known, n);
            written[by] = true;
        }
        let mut queues = [self.of_side(0), self.of_side(1)].map(|q| q.into_iter().peekable());
        loop {
            for queue in &mut queues {
                while queue.next_if(|i| written[*i]).is_some() {}
            }
            let heads = [0, 1].map(|side| queues[side].peek().copied());
            let first_everywhere = |i: usize| {
                (0..2).all(|side| self.nodes[i].at[side].is_none() || heads[side] == Some(i))
            };
            let by_known = |i: &usize| &self.nodes[*i].known;
            let open = || heads.into_iter().flatten();
            // Where the copies made the same steps in two orders none is first in both.
            let next = open()
                .filter(|i| first_everywhere(*i))
                .min_by_key(by_known)
                .or_else(|| {
                    let free = open().filter(|i| !self.waits(*i, stands, &written));
                    free.min_by_key(by_known)
                });
            let i = match next {
                Some(i) => i,
                None if open().next().is_none() => break,
                None => return None,
            };
            written[i] = true;
            let node = &self.nodes[i];
            let n = out.len() as u64 + 1;
            let number = |of: &Option<Known>| of.as_ref().and_then(|of| numbers.get(of)).copied();
            let what = match &node.what {
                What::Do(events) if stands[i] != [false, false] => {
                    if !intake::follows(out.throw(), events) {
                        return None;
                    }
                    What::Do(events.clone())
                }
                What::Undo(_) => What::Past(Box::new(What::Undo(number(&node.of)?))),
                What::Redo(_) => What::Past(Box::new(What::Redo(number(&node.of)?))),
                what => What::Past(Box::new(what.clone())),
            };
            out.accept(Entry {
                n,
                at: node.known.at,
                what,
            })?;
            numbers.insert(&node.known, n);
        }
        Some(out)
    }

    /// The last entry by which a copy took this back, or did it again; where both did, the
    /// one that comes first by what entries are known by.
    fn said_so(&self, of: &Known, what: &What, at: usize) -> Option<usize> {
        let did = |side: usize| match what {
            What::Undo(_) => self.stand[side] <= at,
            _ => self.stand[side] > at,
        };
        let last = |side: usize| {
            let nodes = self.of_side(side).into_iter().rev();
            nodes.into_iter().find(|i| {
                let node = &self.nodes[*i];
                let same_way = matches!(
                    (&node.what, what),
                    (What::Undo(_), What::Undo(_)) | (What::Redo(_), What::Redo(_))
                );
                same_way && node.of.as_ref() == Some(of)
            })
        };
        let found = (0..2).filter(|side| did(*side)).filter_map(last);
        found.min_by_key(|i| &self.nodes[*i].known)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::command::Command;
    use crate::log::journal::tests::{begin, step};
    use crate::measure::sixty_fourths;
    use crate::plan::Plan;
    use crate::plan::assembly::Rect;
    use crate::throw::Mishap;
    use crate::throw::tasks::Task;
    use proptest::prelude::*;

    type Steps = Vec<(u8, u32)>;

    /// A copy after some more steps, the clock going on from `at`.
    fn after(start: &Journal, steps: &[(u8, u32)], at: Time) -> Journal {
        let mut copy = start.clone();
        for (i, s) in steps.iter().enumerate() {
            step(&mut copy, *s, at + i as Time);
        }
        copy
    }

    fn steps(most: usize) -> impl Strategy<Value = Steps> {
        prop::collection::vec((0u8..26, any::<u32>()), 0..most)
    }

    fn sides(picks: u64, count: usize) -> Vec<MergeSide> {
        (0..count)
            .map(|i| {
                if picks >> (i % 64) & 1 == 0 {
                    MergeSide::First
                } else {
                    MergeSide::Second
                }
            })
            .collect()
    }

    fn standing(journal: &Journal) -> Vec<(Time, Vec<Event>)> {
        let stand = journal.entries().filter(|(_, stands)| *stands);
        stand
            .filter_map(|(entry, _)| match &entry.what {
                What::Do(events) => Some((entry.at, events.clone())),
                _ => None,
            })
            .collect()
    }

    fn does(copy: &mut Journal, at: Time, action: &Command) {
        let entry = copy.propose(action, at).unwrap();
        copy.accept(entry).unwrap();
    }

    fn cut(at: [u16; 4]) -> Command {
        tick(Task::Cut, at)
    }

    fn tick(task: Task, at: [u16; 4]) -> Command {
        let pieces = vec![Rect::from(at)];
        Command::Tick { task, pieces }
    }

    /// Both dotted the same pair at the same moment: one after a square of it was cut anew,
    /// the other after another lap was planned.
    #[test]
    fn entries_that_say_the_same_but_rest_on_other_work_are_no_common_step() {
        let mut start = begin(2, 2);
        for at in [[1, 0, 1, 1], [0, 0, 1, 1]] {
            does(&mut start, 1, &cut(at));
        }
        let (mut a, mut b) = (start.clone(), start);
        let spoil = Command::Spoil {
            piece: Rect::square(1, 0),
            why: Mishap::Scorched,
        };
        does(&mut a, 31, &spoil);
        does(&mut a, 35, &cut([1, 0, 1, 1]));
        does(&mut a, 37, &cut([1, 1, 1, 1]));
        does(&mut a, 38, &tick(Task::Dot, [1, 0, 1, 2]));
        does(&mut b, 33, &cut([1, 1, 1, 1]));
        let plan = Plan {
            lap: sixty_fourths(24),
            ..b.throw().plan
        };
        does(&mut b, 37, &Command::ChangePlan { plan });
        does(&mut b, 38, &tick(Task::Dot, [1, 0, 1, 2]));
        let conflicts = meet(&a, &b).unwrap().conflicts();
        assert_eq!(conflicts.len(), 1);
        // Each dotted its own: that is part of the question on both sides.
        for side in [&conflicts[0].first, &conflicts[0].second] {
            let dotted = |c: &Divergence| c.at == 38 && c.way == Origin::Did;
            assert!(side.iter().any(dotted), "{side:?}");
        }
        for picks in 0..2 {
            become_one(&a, &b, picks).unwrap();
        }
    }

    #[test]
    fn the_same_ticks_in_another_order_are_no_question() {
        let start = begin(6, 8);
        let (mut a, mut b) = (start.clone(), start);
        let all: Vec<(u16, u16)> = (0..8).flat_map(|r| (0..6).map(move |c| (r, c))).collect();
        for (n, (row, col)) in all.iter().enumerate() {
            does(&mut a, 1000 * (n as Time + 1), &cut([*row, *col, 1, 1]));
        }
        let mut by_column = all.clone();
        by_column.sort_by_key(|(row, col)| (*col, *row));
        for (n, (row, col)) in by_column.iter().enumerate() {
            does(&mut b, 1000 * (n as Time + 1), &cut([*row, *col, 1, 1]));
        }
        // What one copy goes on with from there is no question either.
        does(&mut b, 90_000, &tick(Task::Dot, [0, 0, 1, 2]));
        let meeting = meet(&a, &b).unwrap();
        assert_eq!(meeting.conflicts(), vec![]);
        become_one(&a, &b, 0).unwrap();
        let one = meeting.join(&[]).unwrap();
        assert_eq!(standing(&one).len(), 1 + 48 + 1);
        // Each square counts as cut when it first was.
        for (row, col) in all {
            let square = Rect::square(row, col);
            let when = |copy: &Journal| copy.throw().work(square).unwrap().when(Task::Cut);
            assert_eq!(when(&one), when(&a).min(when(&b)));
        }
        // Both may go on with a copy that was merged before, or was not.
        let (mut merged, mut old) = (one, a);
        does(&mut merged, 100_000, &tick(Task::PressLap, [0, 0, 1, 2]));
        does(&mut old, 100_500, &tick(Task::Dot, [2, 2, 1, 2]));
        assert_eq!(meet(&merged, &old).unwrap().conflicts(), vec![]);
        become_one(&merged, &old, 0).unwrap();
    }

    /// So many cases, or `PROPTEST_CASES` where that asks for more.
    fn cases(least: u32) -> ProptestConfig {
        let asked = ProptestConfig::default();
        let cases = asked.cases.max(least);
        ProptestConfig { cases, ..asked }
    }

    /// All that is promised of two copies of one throw, with these choices between them.
    fn become_one(a: &Journal, b: &Journal, picks: u64) -> Result<(), TestCaseError> {
        let meeting = meet(a, b).unwrap();
        let conflicts = meeting.conflicts();
        let choices = sides(picks, conflicts.len());
        let joined = meeting.join(&choices);
        prop_assert!(joined.is_ok(), "{joined:?}");
        let joined = joined.unwrap();

        // The same from the other side.
        let back = meet(b, a).unwrap();
        let swapped: Vec<MergeSide> = choices.iter().map(|c| c.other()).collect();
        prop_assert_eq!(back.conflicts().len(), conflicts.len());
        for (x, y) in conflicts.iter().zip(back.conflicts()) {
            prop_assert_eq!(&x.first, &y.second);
            prop_assert_eq!(&x.second, &y.first);
        }
        prop_assert_eq!(back.join(&swapped).unwrap().text(), joined.text());

        // Once more changes nothing.
        prop_assert_eq!(meet(a, a).unwrap().join(&[]).unwrap().text(), a.text());
        for copy in [a, b] {
            let holds = matches!(
                relation(&joined, copy),
                Relation::Same | Relation::FirstHasMore(_)
            );
            prop_assert!(holds);
            let again = meet(&joined, copy).unwrap();
            prop_assert_eq!(again.conflicts().len(), 0);
            prop_assert_eq!(again.join(&[]).unwrap().text(), joined.text());
        }

        // It is a record like any other.
        let read = Journal::read(joined.text().as_bytes()).unwrap().journal;
        prop_assert_eq!(read.text(), joined.text());
        prop_assert_eq!(read.throw(), joined.throw());
        prop_assert_eq!(intake::check(&joined), Ok(()));

        // Nothing is lost.
        let kept: BTreeSet<Known> = known(&joined).into_iter().collect();
        for copy in [a, b] {
            prop_assert!(known(copy).iter().all(|k| kept.contains(k)));
        }
        let stands = standing(&joined);
        let lost: Vec<&Divergence> = conflicts
            .iter()
            .zip(&choices)
            .flat_map(|(c, side)| match side {
                MergeSide::First => &c.second,
                MergeSide::Second => &c.first,
            })
            .collect();
        for (copy, other) in [(a, b), (b, a)] {
            let others = standing(other);
            for done in standing(copy) {
                let there = stands.contains(&done)
                    // The same step, as of the other's time.
                    || stands.iter().any(|(at, events)| *events == done.1 && *at < done.0 && others.contains(&(*at, events.clone())));
                let losing = lost
                    .iter()
                    .any(|c| c.way != Origin::TookBack && c.at == done.0 && c.events == done.1);
                // Taken back on the other copy, which nothing spoke against.
                let had =
                    |e: &Entry| e.at == done.0 && *present(&e.what) == What::Do(done.1.clone());
                let back = other.entries().any(|(e, _)| had(e)) && !others.contains(&done);
                prop_assert!(there || losing || back, "{done:?} is lost");
            }
        }
        Ok(())
    }

    proptest! {
        #![proptest_config(cases(300))]
        #[test]
        fn two_copies_become_one(
            grid in (1u16..6, 1u16..6),
            before in steps(40),
            here in steps(24),
            there in steps(24),
            clocks in (0i64..40, 0i64..40),
            picks in any::<u64>(),
        ) {
            let start = after(&begin(grid.0, grid.1), &before, 0);
            let a = after(&start, &here, 1000 + clocks.0);
            let b = after(&start, &there, 1000 + clocks.1);
            become_one(&a, &b, picks)?;
        }

        #[test]
        fn a_merged_copy_and_one_of_the_two_become_one(
            grid in (1u16..6, 1u16..6),
            before in steps(20),
            tails in (steps(20), steps(20), steps(12), steps(12)),
            clocks in (0i64..40, 0i64..40),
            picks in any::<u64>(),
        ) {
            let start = after(&begin(grid.0, grid.1), &before, 0);
            let a = after(&start, &tails.0, 1000 + clocks.0);
            let b = after(&start, &tails.1, 1000 + clocks.1);
            let meeting = meet(&a, &b).unwrap();
            let merged = meeting.join(&sides(picks, meeting.conflicts().len())).unwrap();
            let merged = after(&merged, &tails.2, 2000 + clocks.0);
            let b = after(&b, &tails.3, 2000 + clocks.1);
            become_one(&merged, &b, picks.rotate_right(32))?;
        }

        #[test]
        fn every_step_follows_on_its_own_record(grid in (1u16..6, 1u16..6), made in steps(120)) {
            let start = begin(grid.0, grid.1);
            let made = after(&start, &made, 5);
            prop_assert_eq!(intake::check(&made), Ok(()));
            let mut so_far = start;
            for (entry, _) in made.entries().skip(1) {
                if let What::Do(events) = &entry.what {
                    prop_assert!(intake::follows(so_far.throw(), events), "{events:?}");
                }
                so_far.accept(entry.clone()).unwrap();
            }
        }
    }
}
