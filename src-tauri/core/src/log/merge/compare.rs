//! How entries of two copies are recognised, and how the copies stand to each other.

use crate::log::journal::{Journal, What};
use crate::throw::Time;
use sha2::{Digest as _, Sha256};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

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
    /// Each has entries the other has not, or their makers resolved a conflict differently.
    Apart {
        /// Entries only the first has.
        first: usize,
        /// Entries only the second has.
        second: usize,
    },
}

/// The key by which an entry is recognised in both copies.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Known {
    pub(super) at: Time,
    /// What a step says; of an undo or redo the digest of the entry it refers to, so that a
    /// chain of them takes no more room than its entries.
    pub(super) says: Arc<str>,
    nth: usize,
}

impl Known {
    /// A short text that stands for this key.
    fn digest(&self) -> String {
        let mut sum = Sha256::new();
        sum.update(self.at.to_le_bytes());
        sum.update((self.nth as u64).to_le_bytes());
        sum.update(self.says.as_bytes());
        let digits = sum.finalize();
        digits.iter().map(|b| format!("{b:02x}")).collect()
    }
}

/// By what the entries of a record are recognised, in order.
pub fn known(journal: &Journal) -> Vec<Known> {
    let mut out: Vec<Known> = Vec::with_capacity(journal.len());
    let mut seen: BTreeMap<(Time, Arc<str>), usize> = BTreeMap::new();
    for (entry, _) in journal.entries() {
        let of = |n: u64| {
            let at = usize::try_from(n).ok().and_then(|n| n.checked_sub(1));
            at.and_then(|at| out.get(at))
                .map_or_else(String::new, Known::digest)
        };
        let says: Arc<str> = match present(&entry.what) {
            What::Undo(n) => format!("undo {}", of(*n)).into(),
            What::Redo(n) => format!("redo {}", of(*n)).into(),
            what => serde_json::to_string(what).unwrap_or_default().into(),
        };
        let nth = seen.entry((entry.at, Arc::clone(&says))).or_insert(0);
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
pub(super) fn present(what: &What) -> &What {
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
