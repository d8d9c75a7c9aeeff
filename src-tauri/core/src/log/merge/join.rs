//! The one record made of two copies.

use crate::log::intake;
use crate::log::journal::{Entry, Journal, What};
use crate::log::merge::choice::{MergeSide, Unmergeable};
use crate::log::merge::compare::{Known, known};
use crate::log::merge::meeting::{Meeting, Subject, beginning};
use std::collections::BTreeMap;

impl Meeting {
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
        // For each node: the copies whose order it keeps in the result.
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

    /// Whether something that is not written yet must come before a node: a node it depends on,
    /// in a copy whose order applies to both.
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
        let doers = [0, 1].map(|side| self.doers(side));
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
            let by = self.last_to_do_so(&doers, of, &what, at)?;
            let n = out.len() as u64 + 1;
            let node = &self.nodes[by];
            out.follow(Entry {
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
                    out.catch_up();
                    if !intake::follows(out.throw(), events) {
                        return None;
                    }
                    What::Do(events.clone())
                }
                What::Undo(_) => What::Past(Box::new(What::Undo(number(&node.of)?))),
                What::Redo(_) => What::Past(Box::new(What::Redo(number(&node.of)?))),
                what => What::Past(Box::new(what.clone())),
            };
            out.follow(Entry {
                n,
                at: node.known.at,
                what,
            })?;
            numbers.insert(&node.known, n);
        }
        out.catch_up();
        Some(out)
    }

    /// For each entry that a copy undid or did again (`false` and `true`) the last node that did.
    fn doers(&self, side: usize) -> BTreeMap<(&Known, bool), usize> {
        let mut doers = BTreeMap::new();
        for i in self.of_side(side) {
            let node = &self.nodes[i];
            let again = match node.what {
                What::Undo(_) => false,
                What::Redo(_) => true,
                _ => continue,
            };
            if let Some(of) = &node.of {
                doers.insert((of, again), i);
            }
        }
        doers
    }

    /// The last undo or redo of this entry in a copy. If both copies have one, the one with the
    /// lower key ([`Known`]).
    fn last_to_do_so(
        &self,
        doers: &[BTreeMap<(&Known, bool), usize>; 2],
        of: &Known,
        what: &What,
        at: usize,
    ) -> Option<usize> {
        let again = !matches!(what, What::Undo(_));
        let did = |side: usize| match again {
            false => self.stand[side] <= at,
            true => self.stand[side] > at,
        };
        let last = |side: usize| doers[side].get(&(of, again)).copied();
        let found = (0..2).filter(|side| did(*side)).filter_map(last);
        found.min_by_key(|i| &self.nodes[*i].known)
    }
}
