//! The record in memory: its entries, which of them stand, and the state they fold to.

use crate::cloth::photos::PhotoId;
use crate::command::{Command, Rejection, cooled, decide, decide_at};
use crate::log::journal::entry::{Entry, What, first_name, header_line, is_name};
use crate::log::journal::pace_record::PaceRecord;
use crate::throw::heritage::Heritage;
use crate::throw::{Event, Throw, Time};
use std::borrow::Cow;
use std::collections::BTreeSet;
use std::sync::OnceLock;

/// Entries from one checkpoint to the next, at least.
pub const STRIDE: usize = 32;
/// So many squares are taken to cost as much to copy as an entry costs to fold (an estimate).
const PER_ENTRY: usize = 16;

/// A throw with its record.
#[derive(Debug, Clone)]
pub struct Journal {
    name: String,
    pub(super) entries: Vec<Entry>,
    /// Positions of the entries that stand, oldest first.
    pub(super) stand: Vec<usize>,
    /// Positions of the entries taken back, the next to do again last.
    taken_back: Vec<usize>,
    /// States after the first 0, 32, 64 … standing entries past the beginning.
    /// The state after so many of these; the first after none.
    pub(super) checkpoints: Vec<(usize, Throw)>,
    throw: Throw,
    /// What the entries tell of the maker's pace, from the first time it is asked for. Entries that
    /// change which of the others stand clear it.
    pace: OnceLock<PaceRecord>,
    /// Positions of the entries that are folded into the state, oldest first.
    folded: Vec<usize>,
    /// How many of them are also the first that stand.
    agree: usize,
}

impl Journal {
    /// A record that opens with the action that begins a throw.
    ///
    /// # Errors
    /// The refusal, when the action does not begin one or cannot be done.
    pub fn begin(action: &Command, at: Time) -> Result<(Journal, Entry), Rejection> {
        let entry = Entry {
            n: 1,
            at,
            what: What::Do(decide(None, action)?),
        };
        let journal = Journal::open(&entry).ok_or(Rejection::Beginning)?;
        Ok((journal, entry))
    }

    /// A record of nothing but its beginning; `None` if that does not begin one.
    pub fn from_first(entry: &Entry) -> Option<Journal> {
        (entry.n == 1).then(|| Journal::open(entry)).flatten()
    }

    /// The same for a throw made after an older one, which left it something.
    ///
    /// # Errors
    /// The refusal, when the action does not begin one or cannot be done.
    pub fn begin_after(
        action: &Command,
        heritage: Heritage,
        at: Time,
    ) -> Result<(Journal, Entry), Rejection> {
        let mut events = decide(None, action)?;
        if let Some(Event::Begun { after, .. }) = events.first_mut() {
            *after = Some(Box::new(heritage));
        }
        let what = What::Do(events);
        let entry = Entry { n: 1, at, what };
        let journal = Journal::open(&entry).ok_or(Rejection::Beginning)?;
        Ok((journal, entry))
    }

    fn open(entry: &Entry) -> Option<Journal> {
        let What::Do(events) = &entry.what else {
            return None;
        };
        let throw = Throw::begin(events.first()?)?;
        Some(Journal {
            name: first_name(entry),
            entries: vec![entry.clone()],
            stand: Vec::new(),
            taken_back: Vec::new(),
            checkpoints: vec![(0, throw.clone())],
            throw,
            pace: OnceLock::new(),
            folded: Vec::new(),
            agree: 0,
        })
    }

    /// The same record as that of a throw so named; unchanged where it is no name.
    #[must_use]
    pub fn named(mut self, throw: &str) -> Journal {
        if is_name(throw) {
            self.name = throw.to_string();
        }
        self
    }

    /// Which throw this is: the same in every copy of it.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The throw as it stands. Between [`Journal::follow`] and [`Journal::catch_up`] it lags
    /// behind the entries.
    pub fn throw(&self) -> &Throw {
        &self.throw
    }

    /// Every entry ever made, with whether it stands.
    pub fn entries(&self) -> impl DoubleEndedIterator<Item = (&Entry, bool)> {
        let mut stands = vec![false; self.entries.len()];
        stands[0] = true;
        for i in &self.stand {
            stands[*i] = true;
        }
        self.entries.iter().zip(stands)
    }

    /// Positions of the entries that stand past the beginning, and of those to be done
    /// again, the next one last.
    pub(crate) fn positions(&self) -> (&[usize], &[usize]) {
        (&self.stand, &self.taken_back)
    }

    /// The entry at a position, counted from 0.
    pub(crate) fn entry(&self, position: usize) -> Option<&Entry> {
        self.entries.get(position)
    }

    /// Every photo that was ever put into the story or is of a fabric, standing or not.
    pub fn photos(&self) -> BTreeSet<PhotoId> {
        let mut named = BTreeSet::new();
        for entry in &self.entries {
            let mut what = &entry.what;
            while let What::Past(past) = what {
                what = past;
            }
            let What::Do(events) = what else { continue };
            for event in events {
                match event {
                    Event::Pictured { photo, .. } => named.extend([photo.clone()]),
                    Event::Begun { prints, .. } | Event::ClothChanged { prints, .. } => {
                        named.extend(prints.iter().filter_map(|p| p.photo.clone()));
                    }
                    _ => {}
                }
            }
        }
        named
    }

    /// How many entries have been made.
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Never: a record opens with its beginning.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// The entry that `undo` would take back.
    pub fn last(&self) -> Option<&Entry> {
        self.stand.last().map(|i| &self.entries[*i])
    }

    /// The entry that `redo` would do again.
    pub fn next(&self) -> Option<&Entry> {
        self.taken_back.last().map(|i| &self.entries[*i])
    }

    pub(super) fn ends_past(&self) -> bool {
        let last = self.entries.last();
        last.is_some_and(|entry| matches!(entry.what, What::Past(_)))
    }

    fn number(&self) -> u64 {
        self.entries.len() as u64 + 1
    }

    /// The entry that `action` would make now.
    ///
    /// # Errors
    /// The refusal, when it cannot be done.
    pub fn propose(&self, action: &Command, at: Time) -> Result<Entry, Rejection> {
        let events = decide_at(&self.throw, action, at)?;
        Ok(Entry {
            n: self.number(),
            at,
            what: What::Do(events),
        })
    }

    /// What the entries tell of the maker's pace.
    pub(in crate::log) fn pace_record(&self) -> &PaceRecord {
        let read = || PaceRecord::of(self.entries());
        self.pace.get_or_init(read)
    }

    /// The throw as it is at this moment: what has cooled by then is cool, ticked or not.
    pub fn throw_at(&self, now: Time) -> Cow<'_, Throw> {
        let cooled = cooled(&self.throw, now);
        match cooled.is_empty() {
            true => Cow::Borrowed(&self.throw),
            false => Cow::Owned(self.throw.after(&cooled)),
        }
    }

    /// The entry that takes back the last.
    ///
    /// # Errors
    /// [`Rejection::NothingToUndo`].
    pub fn propose_undo(&self, at: Time) -> Result<Entry, Rejection> {
        let last = self.last().ok_or(Rejection::NothingToUndo)?;
        Ok(Entry {
            n: self.number(),
            at,
            what: What::Undo(last.n),
        })
    }

    /// The entry that does the last one taken back again.
    ///
    /// # Errors
    /// [`Rejection::NothingToRedo`].
    pub fn propose_redo(&self, at: Time) -> Result<Entry, Rejection> {
        let next = self.next().ok_or(Rejection::NothingToRedo)?;
        Ok(Entry {
            n: self.number(),
            at,
            what: What::Redo(next.n),
        })
    }

    /// Take an entry in, once it is safely kept. `None` if it does not follow.
    pub fn accept(&mut self, entry: Entry) -> Option<()> {
        self.follow(entry)?;
        self.catch_up();
        Some(())
    }

    /// Take an entry in and leave the state behind, until [`Journal::catch_up`] folds what stands
    /// by then: what is undone by then is never folded.
    pub(crate) fn follow(&mut self, entry: Entry) -> Option<()> {
        if entry.n != self.number() {
            return None;
        }
        let position = self.entries.len();
        let pace = self.pace.take();
        match &entry.what {
            What::Do(events) => {
                if events.iter().any(|e| matches!(e, Event::Begun { .. })) {
                    return None;
                }
                if let Some(mut pace) = pace {
                    pace.add(&entry, true);
                    self.pace = OnceLock::from(pace);
                }
                self.taken_back.clear();
                self.entries.push(entry);
                self.push(position);
            }
            What::Undo(n) => {
                let last = *self.stand.last()?;
                if self.entries[last].n != *n {
                    return None;
                }
                self.stand.pop();
                self.agree = self.agree.min(self.stand.len());
                self.taken_back.push(last);
                self.entries.push(entry);
            }
            What::Redo(n) => {
                let next = *self.taken_back.last()?;
                if self.entries[next].n != *n {
                    return None;
                }
                self.taken_back.pop();
                self.entries.push(entry);
                self.push(next);
            }
            What::Past(past) => {
                match past.as_ref() {
                    What::Do(_) => {}
                    What::Undo(n) | What::Redo(n) if *n < entry.n => {}
                    _ => return None,
                }
                self.entries.push(entry);
            }
        }
        Some(())
    }

    /// Let the entry at `position` stand.
    fn push(&mut self, position: usize) {
        if self.agree == self.stand.len() && self.folded.get(self.agree) == Some(&position) {
            self.agree += 1;
        }
        self.stand.push(position);
    }

    /// Bring the state up to what stands.
    pub(crate) fn catch_up(&mut self) {
        self.go_back();
        self.throw.settle_index();
        // Once is cheaper than for each of many.
        let many = self.stand.len() - self.folded.len() > self.stride();
        for n in self.folded.len() + 1..=self.stand.len() {
            if many {
                self.throw.leave_index();
            }
            // Where many are folded at once, checkpoints that would be dropped again are not made.
            // Nor is the index worked out for them but for the last, which the next undo goes back to.
            let stride = self.stride().max((self.stand.len() - n) / 8);
            self.fold(n, stride, !many || self.stand.len() - n < stride);
        }
        self.throw.settle_index();
    }

    /// The same without the state's index ([`Throw::work_index`]), which stays out of date until
    /// [`Journal::catch_up`], and with fewer checkpoints. Returns what it cost ([`Throw::effort`]).
    pub(crate) fn fold_up(&mut self) -> u64 {
        let mut cost = self.go_back();
        self.throw.leave_index();
        for n in self.folded.len() + 1..=self.stand.len() {
            cost += self.fold(n, self.stride().max(n / 8), false);
        }
        cost
    }

    /// Go back to a checkpoint where entries are folded in that do not stand any more. Returns
    /// what that costs.
    fn go_back(&mut self) -> u64 {
        if self.agree == self.folded.len() {
            return 0;
        }
        let agree = self.agree;
        self.checkpoints.retain(|(at, _)| *at <= agree);
        let Some((at, checkpoint)) = self.checkpoints.last() else {
            return 0;
        };
        self.throw = checkpoint.clone();
        self.folded.truncate(*at);
        self.agree = *at;
        checkpoint.bulk()
    }

    /// Entries from one checkpoint to the next, at least.
    fn stride(&self) -> usize {
        STRIDE.max(self.throw.plan.squares() as usize / PER_ENTRY)
    }

    /// Fold in what stands as the `n`th, and keep a checkpoint where the last is `stride` entries
    /// back, its index settled or not. Returns what that costs.
    fn fold(&mut self, n: usize, stride: usize, settled: bool) -> u64 {
        let mut cost = 1;
        let position = self.stand[n - 1];
        let entry = &self.entries[position];
        if let What::Do(events) = &entry.what {
            for event in events {
                cost += self.throw.effort(event);
                self.throw.apply_in_turn(event, entry.at);
            }
        }
        self.folded.push(position);
        self.agree = self.folded.len();
        let last = self.checkpoints.last().map_or(0, |(at, _)| *at);
        if n - last >= stride {
            if settled {
                self.throw.settle_index();
            }
            self.checkpoints.push((n, self.throw.clone()));
            self.thin_out(n);
            cost += self.throw.bulk();
        }
        cost
    }

    /// Drop checkpoints whose neighbours lie no farther apart than a quarter of their age.
    fn thin_out(&mut self, now: usize) {
        for i in (2..self.checkpoints.len()).rev() {
            let (newer, older) = (self.checkpoints[i].0, self.checkpoints[i - 2].0);
            if newer - older <= (now - newer) / 4 {
                self.checkpoints.remove(i - 1);
            }
        }
    }

    /// The record as a file.
    pub fn text(&self) -> String {
        let lines = self.entries.iter().map(Entry::line);
        std::iter::once(header_line(&self.name))
            .chain(lines)
            .collect()
    }
}
