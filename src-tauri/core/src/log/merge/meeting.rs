//! Two copies laid side by side: their shared beginning and what each has besides.

use crate::log::footprint::Footprint;
use crate::log::journal::{Journal, What};
use crate::log::merge::choice::Unmergeable;
use crate::log::merge::compare::{Known, Relation, known, present, relation};
use crate::throw::{Event, Throw, Time};
use std::collections::{BTreeMap, BTreeSet};

/// An entry of one or both tails.
pub(super) struct Node {
    pub(super) known: Known,
    pub(super) what: What,
    /// The entry that an undo or redo refers to.
    pub(super) of: Option<Known>,
    /// Where it is in each copy.
    pub(super) at: [Option<usize>; 2],
    /// Whether it stands in each.
    pub(super) stands: [bool; 2],
    /// Whether it is one step of both copies, which rests on the same in both.
    pub(super) common: bool,
    pub(super) footprint: Footprint,
}

/// What one copy changed.
pub(super) struct Changed {
    pub(super) side: usize,
    pub(super) what: Subject,
    pub(super) footprint: Footprint,
    /// Its order among the changes of its copy; 0 for what is gone from it.
    pub(super) order: usize,
}

pub(super) enum Subject {
    /// What stands of the shared beginning.
    Beginning,
    /// A node that stands here only.
    Own(usize),
    /// A shared node that does not stand here.
    Gone(usize),
}

/// Two copies laid side by side.
pub struct Meeting {
    /// First and second are swapped inside, so that the order of the two makes no difference.
    pub(super) swapped: bool,
    /// One of the two has all of the other: nothing to decide.
    pub(super) whole: Option<Journal>,
    pub(super) sides: [Journal; 2],
    pub(super) shared: usize,
    /// Positions of the beginning's entries in the order they stand, then those that could
    /// be done again.
    pub(super) chain: Vec<usize>,
    /// How many of the chain stood where the copies parted.
    pub(super) stood: usize,
    /// How many stand in each copy.
    pub(super) stand: [usize; 2],
    pub(super) nodes: Vec<Node>,
    pub(super) changes: Vec<Changed>,
    /// For each conflict the changes in it.
    pub(super) conflicts: Vec<Vec<usize>>,
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
pub(super) fn beginning(journal: &Journal, entries: usize) -> Option<Journal> {
    let mut given = journal.entries().map(|(entry, _)| entry);
    let mut out = Journal::from_first(given.next()?)?.named(journal.name());
    for entry in given.take(entries.saturating_sub(1)) {
        out.follow(entry.clone())?;
    }
    out.catch_up();
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
    pub(super) fn shared_events(&self, position: usize) -> &[Event] {
        match self.sides[0].entry(position).map(|entry| &entry.what) {
            Some(What::Do(events)) => events,
            _ => &[],
        }
    }

    pub(super) fn shared_at(&self, position: usize) -> Time {
        self.sides[0].entry(position).map_or(0, |entry| entry.at)
    }

    /// The throw with so many of the chain standing.
    pub(super) fn begun(&self, count: usize) -> Throw {
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
    pub(super) fn of_side(&self, side: usize) -> Vec<usize> {
        let mut found: Vec<(usize, usize)> = self
            .nodes
            .iter()
            .enumerate()
            .filter_map(|(i, node)| Some((node.at[side]?, i)))
            .collect();
        found.sort_unstable();
        found.into_iter().map(|(_, i)| i).collect()
    }
}
