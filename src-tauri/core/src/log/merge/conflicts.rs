//! What each copy changed, and which changes cannot both stand.

use crate::log::footprint::Footprint;
use crate::log::journal::What;
use crate::log::merge::choice::{Conflict, Divergence, Origin};
use crate::log::merge::meeting::{Changed, Meeting, Subject};
use crate::throw::Time;
use std::collections::BTreeMap;
use std::sync::Arc;

impl Meeting {
    /// The number of entries in the shared beginning that stand once the undos and redos that
    /// both copies made are applied.
    pub(super) fn agreed(&self) -> usize {
        let [a, b] = self.stand;
        if a.max(b) <= self.stood {
            a.max(b)
        } else if a.min(b) >= self.stood {
            a.min(b)
        } else {
            self.stood
        }
    }

    /// The range of the shared beginning that only this copy undid or redid.
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
    pub(super) fn unlike_beginning(&self) -> Footprint {
        let [a, b] = self.stand;
        self.of_chain((a.min(b), a.max(b)))
    }

    pub(super) fn find_changes(&mut self) {
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
            // One copy undid a part of the shared beginning, and the other redid a part of it.
            (Subject::Beginning, Subject::Beginning) => true,
            _ => x.footprint.clashes(&y.footprint),
        }
    }

    pub(super) fn find_conflicts(&mut self) {
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
        // Whatever builds on a contested change goes with it. An entry that one copy undid is
        // restored only together with the entries it depends on there.
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
    fn key(&self, change: &Changed) -> (Time, Arc<str>) {
        match change.what {
            Subject::Own(i) | Subject::Gone(i) => {
                let known = &self.nodes[i].known;
                (known.at, Arc::clone(&known.says))
            }
            Subject::Beginning => {
                let (first, _) = self.of_beginning(change.side).unwrap_or_default();
                (self.shared_at(self.chain[first]), "".into())
            }
        }
    }

    /// What is for the maker to decide, oldest first.
    pub fn conflicts(&self) -> Vec<Conflict> {
        let divergences = |members: &[usize], side: usize| -> Vec<Divergence> {
            let here = members.iter().map(|i| &self.changes[*i]);
            here.filter(|c| c.side == side)
                .flat_map(|c| self.divergences_of(c))
                .collect()
        };
        let (first, second) = if self.swapped { (1, 0) } else { (0, 1) };
        let conflicts = self.conflicts.iter();
        conflicts
            .map(|members| Conflict {
                first: divergences(members, first),
                second: divergences(members, second),
            })
            .collect()
    }

    /// What a change consists of, for the maker to see.
    fn divergences_of(&self, change: &Changed) -> Vec<Divergence> {
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
}
