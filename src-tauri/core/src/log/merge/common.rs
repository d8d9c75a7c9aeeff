//! The steps that are the same in both copies.

use crate::log::footprint::Footprint;
use crate::log::journal::What;
use crate::log::merge::meeting::{Meeting, Node};
use crate::throw::Throw;

impl Meeting {
    pub(super) fn find_footprints(&mut self, side: usize, mut throw: Throw) {
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
    pub(super) fn find_common(&mut self) {
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

    /// Whether every earlier node of this copy that touches the same things is common to both.
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
        // If the other copy holds this entry as past, only an earlier entry may stand for it,
        // because an earlier merge chose it so.
        let order = match (both(x), both(y)) {
            (false, false) => true,
            (true, false) => y.known < x.known,
            (false, true) => x.known < y.known,
            (true, true) => false,
        };
        // Two entries that touch nothing, such as notes, are not the same step just because
        // their text is equal.
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
}
