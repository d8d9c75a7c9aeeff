//! The record of a throw: what happened, in order, never rewritten.
//!
//! A [`Journal`] holds [`Entry`]s. An entry is one action's events, or the taking
//! back of an earlier entry (`undo`), or doing it again (`redo`). The state is the
//! fold of the entries that stand; nothing is undone by hand-written inverses.
//!
//! # The file
//!
//! JSON Lines in UTF-8, each line ended by a newline. The first line is the header,
//! `{"lapwork":"throw","version":2,"throw":"…","crc":"…"}`. Then one line for each entry,
//! `{"n":…,"at":…,"do":[…],"crc":"…"}`, where `crc` is the CRC-32 (ISO/IEC 3309, as in
//! gzip) in eight hex digits of the line up to, and not including, `,"crc"`. Entries are
//! numbered from 1 without gaps; `at` is in milliseconds since 1970, UTC. Instead of `do`
//! an entry has
//!
//! * `"undo":n`: the last entry that stood, number n, was taken back;
//! * `"redo":n`: the entry last taken back, number n, was done again;
//! * `"past":{…}` (from version 2): a `do`, `undo` or `redo` of one of two copies that were
//!   merged, kept so that nothing is lost, but without effect: what was taken back before,
//!   or decided against.
//!
//! `throw` (from version 2) names the throw, 1 to 64 of `a–z`, `0–9` and `-`: copies of one
//! throw have the same. It is handed in when a throw is begun. Version 1 has no such name;
//! there it is made from the first entry ([`first_name`]), the same on every device.
//!
//! An entry that lies in two copies is recognised by when it was made, what it says, and
//! how many such came before it in its copy ([`crate::log::merge`]); its number may differ.
//!
//! A file of version 1 is read like one of version 2, and what is written is version 2:
//! the entries are the same to the byte.
//!
//! Promises: reading a file never guesses. An invalid last line with nothing valid
//! after it is a torn write, was never acknowledged, and is told to the caller as
//! [`Read::torn`]; damage anywhere else, an unknown version and a gap are errors.
//!
//! Checkpoints of the state are kept in memory, so that undoing folds few entries again:
//! one for at least every [`STRIDE`] entries that stand (fewer for a large throw, whose
//! copies cost more), the older the farther apart. Their number grows with the logarithm
//! of the entries; where one has to go back to an older one, closer ones are made anew.
//!
//! ```
//! use lapwork_core::demo;
//! use lapwork_core::log::journal::Journal;
//!
//! let journal = demo::throw(1_700_000_000_000);
//! let text = journal.text();
//! // What is written reads back to the same record, to the byte.
//! assert_eq!(Journal::read(text.as_bytes()).unwrap().journal.text(), text);
//! // A torn last line was never acknowledged; it is left out.
//! let torn = &text.as_bytes()[..text.len() - 9];
//! assert_eq!(Journal::read(torn).unwrap().journal.len(), journal.len() - 1);
//! ```

use crate::command::{Command, Rejection, decide};
use crate::measure::bounds::{self, FigureOutOfBounds, NotRead};
use crate::plan::MOST;
use crate::throw::heritage::Heritage;
use crate::throw::photos::PhotoId;
use crate::throw::{Event, Throw, Time};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use thiserror::Error;

/// The version of the file format written here, and the newest that is read.
pub const VERSION: u32 = 2;
/// Entries from one checkpoint to the next, at least.
pub const STRIDE: usize = 32;
/// The same for the largest throw.
pub const LONGEST_STRIDE: usize = (MOST as usize).pow(2) / PER_ENTRY;
/// So many squares are taken to cost as much to copy as an entry costs to fold (an estimate).
const PER_ENTRY: usize = 16;
/// Longest line that is read, in bytes.
const LONGEST_LINE: usize = 4 << 20;

/// What one entry says.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum What {
    /// Events of one action.
    Do(Vec<Event>),
    /// The entry of this number was taken back.
    Undo(u64),
    /// The entry of this number was done again.
    Redo(u64),
    /// Something of one of two merged copies that has no effect here.
    Past(Box<What>),
}

/// One line of the record.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    /// Its number, from 1.
    pub n: u64,
    /// When.
    pub at: Time,
    /// What.
    #[serde(flatten)]
    pub what: What,
}

/// The first line of a throw file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Header {
    /// Always `throw`.
    pub lapwork: String,
    /// The version of the format.
    pub version: u32,
    /// Which throw this is a copy of; from version 2.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub throw: Option<String>,
}

/// The header line this version writes, with its newline.
pub fn header_line(throw: &str) -> String {
    let body = format!("{{\"lapwork\":\"throw\",\"version\":{VERSION},\"throw\":\"{throw}\"");
    let sum = crc32fast::hash(body.as_bytes());
    format!("{body},\"crc\":\"{sum:08x}\"}}\n")
}

/// Whether this may name a throw: 1 to 64 of `a–z`, `0–9` and `-`.
pub fn is_name(throw: &str) -> bool {
    let fine = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-';
    (1..=64).contains(&throw.len()) && throw.bytes().all(fine)
}

/// The name of a throw that was given none: made from its first entry, so that every
/// device makes the same.
pub fn first_name(first: &Entry) -> String {
    let line = first.line();
    let sum = crc32fast::hash(line.as_bytes());
    format!("first-{:x}-{:x}-{sum:08x}", first.at, line.len()).replace("--", "-m")
}

impl Entry {
    /// The entry as a line of the file, with its checksum and newline.
    pub fn line(&self) -> String {
        let mut line = serde_json::to_string(self).unwrap_or_default();
        line.pop();
        let sum = crc32fast::hash(line.as_bytes());
        line.push_str(&format!(",\"crc\":\"{sum:08x}\"}}\n"));
        line
    }

    /// Read a line back; `None` if it is not whole, its checksum does not agree, or it says
    /// what cannot be.
    pub fn from_line(line: &str) -> Option<Entry> {
        let entry = Entry::of(summed(line)?).ok()?;
        entry.what.can_be().then_some(entry)
    }

    /// What a line says up to its checksum, as far as it is known here.
    fn of(body: &str) -> Result<Entry, NotRead> {
        bounds::read(&format!("{body}}}"))
    }
}

impl What {
    /// Whether every plan in it can be. What has been taken into a record passes for good:
    /// a stricter rule for new plans belongs into [`decide`], not into [`crate::plan::Plan::check`].
    fn can_be(&self) -> bool {
        let events = match self {
            What::Do(events) => events,
            What::Past(past) => return past.can_be(),
            What::Undo(_) | What::Redo(_) => return true,
        };
        events.iter().all(|event| match event {
            Event::Begun { plan, .. } | Event::PlanChanged { plan, .. } => plan.check().is_ok(),
            _ => true,
        })
    }
}

/// What a line says up to its checksum, if that agrees.
fn summed(line: &str) -> Option<&str> {
    let (body, sum) = line.rsplit_once(",\"crc\":\"")?;
    let sum = sum.strip_suffix("\"}")?;
    let agrees =
        sum.len() == 8 && u32::from_str_radix(sum, 16).ok()? == crc32fast::hash(body.as_bytes());
    agrees.then_some(body)
}

/// Why a throw file was not read.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum FormatError {
    /// The first line is not that of a throw file.
    #[error("the first line is not that of a throw file")]
    NotAThrow,
    /// Written by a newer Lapwork.
    #[error("written in version {version}, which is newer than {VERSION}")]
    Newer {
        /// Its version.
        version: u32,
    },
    /// A line in the middle is damaged (counted from 1, the header being line 1).
    #[error("line {line} is damaged")]
    Line {
        /// Which line.
        line: usize,
    },
    /// An entry that does not follow from those before it.
    #[error("line {line} does not follow from those before it")]
    OutOfOrder {
        /// Which line.
        line: usize,
    },
    /// No entry at all: the throw was never begun.
    #[error("the throw was never begun")]
    Empty,
    /// A line that holds what this Lapwork does not know, and would not write again.
    #[error("line {line} holds something unknown")]
    Unknown {
        /// Which line.
        line: usize,
    },
    /// A line that says what cannot be.
    #[error("line {line} says what cannot be")]
    Absurd {
        /// Which line.
        line: usize,
    },
    /// A line with a figure far beyond anything a throw has.
    #[error("line {line} holds a figure out of bounds")]
    FigureOutOfBounds {
        /// Which line.
        line: usize,
        /// Which figure.
        #[source]
        figure: FigureOutOfBounds,
    },
}

/// A throw file read.
#[derive(Debug)]
pub struct Read {
    /// The record.
    pub journal: Journal,
    /// The version of the format it is in.
    pub version: u32,
    /// The length in bytes of what is sound: all, unless it is torn.
    pub sound: usize,
    /// Whether a torn last line follows it.
    pub torn: bool,
    /// Whether the last sound line lacks its newline.
    pub lacks_newline: bool,
}

/// A throw with its record.
#[derive(Debug, Clone)]
pub struct Journal {
    name: String,
    entries: Vec<Entry>,
    /// Positions of the entries that stand, oldest first.
    stand: Vec<usize>,
    /// Positions of the entries taken back, the next to do again last.
    taken_back: Vec<usize>,
    /// States after the first 0, 32, 64 … standing entries past the beginning.
    /// The state after so many of these; the first after none.
    checkpoints: Vec<(usize, Throw)>,
    throw: Throw,
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

    /// The throw as it stands.
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

    /// Every photo that was ever put into the story, standing or not.
    pub fn photos(&self) -> BTreeSet<PhotoId> {
        let mut named = BTreeSet::new();
        for entry in &self.entries {
            let mut what = &entry.what;
            while let What::Past(past) = what {
                what = past;
            }
            let What::Do(events) = what else { continue };
            for event in events {
                if let Event::Pictured { photo, .. } = event {
                    named.insert(photo.clone());
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

    fn ends_past(&self) -> bool {
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
        let events = decide(Some(&self.throw), action)?;
        Ok(Entry {
            n: self.number(),
            at,
            what: What::Do(events),
        })
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
        if entry.n != self.number() {
            return None;
        }
        let position = self.entries.len();
        match &entry.what {
            What::Do(events) => {
                if events.iter().any(|e| matches!(e, Event::Begun { .. })) {
                    return None;
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
                self.taken_back.push(last);
                self.entries.push(entry);
                self.refold();
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
        self.stand.push(position);
        self.fold(self.stand.len());
    }

    /// Fold in what stands as the `n`th, and keep a checkpoint when it is time for one.
    fn fold(&mut self, n: usize) {
        fold(&mut self.throw, &self.entries[self.stand[n - 1]]);
        let stride = STRIDE.max(self.throw.plan.squares() as usize / PER_ENTRY);
        let last = self.checkpoints.last().map_or(0, |(at, _)| *at);
        if n - last >= stride {
            self.checkpoints.push((n, self.throw.clone()));
            self.thin_out(n);
        }
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

    fn refold(&mut self) {
        let stand = self.stand.len();
        self.checkpoints.retain(|(at, _)| *at <= stand);
        let mut from = 0;
        if let Some((at, checkpoint)) = self.checkpoints.last() {
            from = *at;
            self.throw = checkpoint.clone();
        }
        for n in from + 1..=stand {
            self.fold(n);
        }
    }

    /// The record as a file.
    pub fn text(&self) -> String {
        let lines = self.entries.iter().map(Entry::line);
        std::iter::once(header_line(&self.name))
            .chain(lines)
            .collect()
    }

    /// Read a file.
    ///
    /// # Errors
    /// [`FormatError`], when more than a torn last line is wrong.
    pub fn read(bytes: &[u8]) -> Result<Read, FormatError> {
        Journal::read_if(bytes, |_, _| true)
    }

    /// Read a file, each entry only if it may come in on the record so far (none before the
    /// first).
    ///
    /// # Errors
    /// [`FormatError`] as for [`Journal::read`]; [`FormatError::Absurd`] at the first that may not.
    pub(crate) fn read_if(
        bytes: &[u8],
        may: impl Fn(Option<&Journal>, &Entry) -> bool,
    ) -> Result<Read, FormatError> {
        let end = bytes
            .iter()
            .position(|b| *b == b'\n')
            .unwrap_or(bytes.len());
        let header: Header = (end < 400)
            .then(|| serde_json::from_slice(&bytes[..end]).ok())
            .flatten()
            .filter(|h: &Header| h.lapwork == "throw" && h.version > 0)
            .ok_or(FormatError::NotAThrow)?;
        if header.version > VERSION {
            return Err(FormatError::Newer {
                version: header.version,
            });
        }
        // Version 2 names the throw, under a checksum like any line; version 1 never does.
        let named = header.throw.unwrap_or_default();
        let whole = match header.version {
            1 => named.is_empty(),
            _ => is_name(&named) && header_line(&named).trim_end().as_bytes() == &bytes[..end],
        };
        if !whole {
            return Err(FormatError::Line { line: 1 });
        }
        let version = header.version;
        let mut sound = (end + 1).min(bytes.len());
        let mut journal: Option<Journal> = None;
        let mut number = 1;
        while sound < bytes.len() {
            number += 1;
            let rest = &bytes[sound..];
            let length = rest.iter().position(|b| *b == b'\n').unwrap_or(rest.len());
            let Some(entry) = read_line(&rest[..length]) else {
                // Written just so: no tear, and nothing to cut off.
                if let Some(body) = text_of(&rest[..length]).and_then(summed) {
                    return Err(match Entry::of(body) {
                        Ok(_) => FormatError::Absurd { line: number },
                        Err(NotRead::FigureOutOfBounds(figure)) => FormatError::FigureOutOfBounds {
                            line: number,
                            figure,
                        },
                        Err(NotRead::Unknown) => FormatError::Unknown { line: number },
                    });
                }
                let after = &rest[(length + 1).min(rest.len())..];
                let whole = |line| text_of(line).is_some_and(|line| summed(line).is_some());
                if after.split(|b| *b == b'\n').any(whole) || holds_another(&rest[..length]) {
                    return Err(FormatError::Line { line: number });
                }
                let journal = journal.ok_or(FormatError::Empty)?.named(&named);
                return Ok(Read {
                    journal,
                    version,
                    sound,
                    torn: true,
                    lacks_newline: false,
                });
            };
            if !may(journal.as_ref(), &entry) {
                return Err(FormatError::Absurd { line: number });
            }
            let follows = match &mut journal {
                Some(journal) => journal.accept(entry).is_some(),
                None => {
                    journal = Journal::from_first(&entry);
                    journal.is_some()
                }
            };
            let past = version == 1 && journal.as_ref().is_some_and(Journal::ends_past);
            if !follows || past {
                return Err(FormatError::OutOfOrder { line: number });
            }
            sound += (length + 1).min(rest.len());
        }
        let journal = journal.ok_or(FormatError::Empty)?.named(&named);
        let lacks_newline = bytes.last() != Some(&b'\n');
        Ok(Read {
            journal,
            version,
            sound,
            torn: false,
            lacks_newline,
        })
    }
}

fn read_line(line: &[u8]) -> Option<Entry> {
    text_of(line).and_then(Entry::from_line)
}

/// A line as text, without the sign some programs put before each newline.
fn text_of(line: &[u8]) -> Option<&str> {
    let line = line.strip_suffix(b"\r").unwrap_or(line);
    (line.len() <= LONGEST_LINE)
        .then(|| std::str::from_utf8(line).ok())
        .flatten()
}

/// Whether a whole entry ends this line, though something else begins it: two lines whose
/// newline was lost are no tear.
fn holds_another(line: &[u8]) -> bool {
    let line = line.strip_suffix(b"\r").unwrap_or(line);
    if line.len() > LONGEST_LINE {
        return false;
    }
    let begins = |at: &usize| line[*at..].starts_with(b"{\"n\":");
    // The last few places where an entry might begin; a note may hold such words too.
    (1..line.len()).rev().filter(begins).take(64).any(|at| {
        let text = std::str::from_utf8(&line[at..]).ok();
        text.is_some_and(|text| summed(text).is_some())
    })
}

fn fold(throw: &mut Throw, entry: &Entry) {
    if let What::Do(events) = &entry.what {
        for event in events {
            throw.apply(event, entry.at);
        }
    }
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use crate::cloth::fabric::Face;
    use crate::measure::Count;
    use crate::measure::{half_inches, sixty_fourths};
    use crate::plan::Plan;
    use crate::plan::assembly::Rect;
    use crate::throw::Mishap;
    use crate::throw::tasks::Task;
    use proptest::prelude::*;

    pub(crate) fn begin(across: u16, down: u16) -> Journal {
        let plan = Plan {
            across,
            down,
            ..Plan::default()
        };
        let print = crate::cloth::fabric::Print {
            name: "Dots".into(),
            colour: "#aa5500".into(),
            texture: crate::cloth::fabric::Texture::Dot,
            stock: None,
            uncut: false,
        };
        let action = Command::Begin {
            name: "Test".into(),
            plan,
            prints: vec![print],
            denims: vec![],
        };
        Journal::begin(&action, 0).unwrap().0
    }

    fn act(journal: &mut Journal, action: &Command, at: Time) -> Result<(), Rejection> {
        let entry = journal.propose(action, at)?;
        journal.accept(entry).unwrap();
        Ok(())
    }

    /// Some allowed (or refused) step, picked by numbers.
    pub(crate) fn step(journal: &mut Journal, (what, pick): (u8, u32), at: Time) {
        let throw = journal.throw();
        let pieces: Vec<Rect> = throw.assembly().pieces().collect();
        let piece = pieces[pick as usize % pieces.len()];
        let open: Vec<Rect> = pieces
            .iter()
            .copied()
            .filter(|p| throw.waits_for(*p).is_none() && !throw.complete(*p))
            .collect();
        let action = match what {
            0 => {
                let entry = journal.propose_undo(at);
                let _ = entry.map(|e| journal.accept(e).unwrap());
                return;
            }
            1 => {
                let entry = journal.propose_redo(at);
                let _ = entry.map(|e| journal.accept(e).unwrap());
                return;
            }
            2 => Command::Spoil {
                piece,
                why: Mishap::Scorched,
            },
            3 => Command::SetFace {
                pieces: vec![piece],
                face: Face::Back,
                print: Some(0),
            },
            4 => Command::ChangePlan {
                plan: Plan {
                    lap: sixty_fourths(24 + i64::from(pick % 16)),
                    ..throw.plan
                },
            },
            5 => Command::Measure {
                piece,
                width: sixty_fourths(600 + i64::from(pick % 20)),
                height: half_inches(19),
            },
            6 => Command::Replace {
                piece,
                why: Mishap::Flaw,
                spare: pick % 2 == 0,
            },
            7 => Command::Unpick {
                pieces: vec![piece],
                lap: (pick % 3 == 0).then_some(sixty_fourths(28)),
            },
            8 => match pick % 8 {
                0 => Command::ChangePlan {
                    plan: Plan {
                        across: 1 + (pick / 5 % 5) as u16,
                        down: 1 + (pick / 25 % 5) as u16,
                        ..throw.plan
                    },
                },
                1 => Command::ChooseTrim {
                    trim: sixty_fourths(592 + i64::from(pick / 5 % 17)),
                    step: None,
                },
                2 => Command::Patch {
                    piece,
                    face: Face::Front,
                    print: 0,
                    why: Mishap::Flaw,
                },
                3 => Command::SetAside { piece },
                4 => Command::Turn {
                    piece,
                    quarters: 1 + (pick / 8 % 3) as u8,
                },
                5 => Command::Flip {
                    pieces: vec![piece],
                },
                6 => Command::Pin {
                    pieces: vec![piece],
                    pinned: pick / 8 % 2 == 0,
                },
                _ => {
                    let blocks = throw.assembly().blocks();
                    let b = blocks[pick as usize / 5 % blocks.len()];
                    Command::Swap { a: piece, b }
                }
            },
            9 => match pick % 6 {
                0 => Command::AddGarment {
                    kind: crate::cloth::garments::GarmentKind::Skirt,
                    size: Some(crate::cloth::garments::GarmentSize::Small),
                    knees: None,
                    system: None,
                    makes: if pick % 4 == 0 {
                        let denim = [None, Some(0), Some(1)][pick as usize / 24 % 3];
                        crate::cloth::pile::Use::Denim { denim }
                    } else {
                        crate::cloth::pile::Use::Fabric { print: 0 }
                    },
                    name: "Skirt".into(),
                },
                1 => Command::CutPiece {
                    n: 1 + (pick / 6 % 3) as u16,
                    index: (pick / 18 % 3) as u8,
                    squares: Count::at_most(pick / 54 % 9),
                    outline: None,
                },
                2 => Command::TakeHeap {
                    n: 1 + (pick / 6 % 3) as u16,
                },
                3 => Command::TryScrap {
                    scrap: crate::plan::scraps::Scrap {
                        joining: throw.plan.joining,
                        lap: sixty_fourths(20 + i64::from(pick / 6 % 20)),
                        stitch: throw.plan.stitch,
                        verdict: crate::plan::scraps::ScrapVerdict::Right,
                        note: String::new(),
                    },
                },
                4 => Command::UseScrap {
                    scrap: (pick / 6 % 3) as u16,
                },
                _ => Command::Gather {
                    item: crate::throw::Item::Glue,
                    have: pick % 4 == 0,
                },
            },
            _ if open.is_empty() => Command::Note {
                text: "all done".into(),
                piece: None,
                task: None,
                next: pick % 2 == 0,
            },
            _ => {
                let piece = open[pick as usize % open.len()];
                Command::Tick {
                    task: throw.next(piece).unwrap(),
                    pieces: vec![piece],
                }
            }
        };
        let _ = act(journal, &action, at);
    }

    /// Whether an event says what was decided when it was made.
    fn says_all(event: &Event) -> bool {
        match event {
            Event::Done { task, made, .. } => {
                let settles = matches!(task, Task::Dot | Task::Pin | Task::Stitch);
                settles != made.is_empty()
            }
            Event::PieceCut { went, .. } => went.is_some(),
            Event::SetAside { pieces, sizes } => pieces.len() == sizes.len(),
            _ => true,
        }
    }

    /// The event as it was before it said so.
    fn unsay(event: &mut Event) {
        match event {
            Event::Done { made, .. } => made.clear(),
            Event::PieceCut { went, .. } => *went = None,
            Event::SetAside { sizes, .. } => sizes.clear(),
            Event::FacesChanged { again, .. } => *again = None,
            Event::Spoilt { opened, .. } => *opened = None,
            _ => {}
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(40))]
        #[test]
        fn the_fold_is_the_same_live_and_replayed(steps in prop::collection::vec((0u8..20, any::<u32>()), 0..160)) {
            let mut journal = begin(3, 4);
            for (i, s) in steps.into_iter().enumerate() {
                step(&mut journal, s, i as Time);
                let throw = journal.throw();
                prop_assert_eq!(throw.work_index(), &crate::throw::index::WorkIndex::of(throw));
            }
            let read = Journal::read(journal.text().as_bytes()).unwrap();
            prop_assert!(!read.torn && !read.lacks_newline);
            prop_assert_eq!(read.journal.throw(), journal.throw());
            prop_assert_eq!(read.journal.text(), journal.text());
        }

        /// What was decided stands in the events. While the rules of today are those of files
        /// that do not say it, they fold to the same without.
        #[test]
        fn what_was_decided_is_said(steps in prop::collection::vec((0u8..26, any::<u32>()), 0..160)) {
            let mut journal = begin(3, 4);
            for (i, s) in steps.into_iter().enumerate() {
                step(&mut journal, s, i as Time);
            }
            let mut unsaid = journal.clone();
            for entry in &mut unsaid.entries {
                let What::Do(events) = &mut entry.what else { continue };
                for event in events {
                    prop_assert!(says_all(event), "{event:?}");
                    unsay(event);
                }
            }
            let text = unsaid.text();
            for key in ["\"made\":", "\"went\":", "\"again\":", "\"sizes\":", "\"opened\":"] {
                prop_assert!(!text.contains(key));
            }
            let folded = Journal::read(text.as_bytes()).unwrap().journal;
            prop_assert_eq!(folded.throw(), journal.throw());
        }

        #[test]
        fn undoing_all_and_redoing_all_is_nothing(steps in prop::collection::vec((2u8..20, any::<u32>()), 1..140)) {
            let mut journal = begin(4, 3);
            let mut states = vec![journal.throw().clone()];
            for (i, s) in steps.into_iter().enumerate() {
                let before = journal.len();
                step(&mut journal, s, i as Time);
                if journal.len() > before { states.push(journal.throw().clone()); }
            }
            for state in states.iter().rev().skip(1) {
                let entry = journal.propose_undo(500).unwrap();
                journal.accept(entry).unwrap();
                prop_assert_eq!(journal.throw(), state);
            }
            prop_assert!(journal.propose_undo(500).is_err());
            for state in states.iter().skip(1) {
                let entry = journal.propose_redo(600).unwrap();
                journal.accept(entry).unwrap();
                prop_assert_eq!(journal.throw(), state);
            }
        }

        #[test]
        fn no_piece_is_worked_before_its_parts(across in 1u16..7, down in 1u16..7, picks in prop::collection::vec(any::<u32>(), 0..300)) {
            let mut journal = begin(across, down);
            for (i, pick) in picks.into_iter().enumerate() {
                step(&mut journal, (10, pick), i as Time);
                let throw = journal.throw();
                for (piece, work) in throw.worked().filter(|(_, w)| !w.done.is_empty()) {
                    prop_assert!(throw.waits_for(*piece).is_none());
                    prop_assert!(work.done.iter().all(|(t, _)| throw.tasks(*piece).contains(t)));
                }
            }
        }
    }

    #[test]
    fn checkpoints_stay_few_and_undoing_goes_back_through_them_all() {
        let mut journal = begin(2, 2);
        let bare = journal.throw().clone();
        for n in 0..3_000u32 {
            let name = format!("Throw {n}");
            act(&mut journal, &Command::Rename { name }, Time::from(n)).unwrap();
        }
        let kept = |journal: &Journal| -> Vec<usize> {
            let at: Vec<usize> = journal.checkpoints.iter().map(|(at, _)| *at).collect();
            assert!(at.len() < 40 && at[0] == 0 && at.is_sorted(), "{at:?}");
            at
        };
        // Going back to any moment folds no more than a quarter of its age, or two strides.
        for near in kept(&journal).windows(2) {
            let age = journal.stand.len() - near[1];
            assert!(near[1] - near[0] <= (age / 4).max(2 * STRIDE), "{near:?}");
        }
        for n in (0..3_000u32).rev() {
            assert_eq!(journal.throw().name, format!("Throw {n}"));
            let entry = journal.propose_undo(9_000).unwrap();
            journal.accept(entry).unwrap();
            kept(&journal);
        }
        assert_eq!(journal.throw(), &bare);
    }

    #[test]
    fn a_four_whose_pairs_are_not_sewn_cannot_be_squared_up() {
        let journal = begin(2, 2);
        let four = Rect::grid(2, 2);
        let asked = journal.propose(
            &Command::Tick {
                task: Task::SquareUp,
                pieces: vec![four],
            },
            0,
        );
        let before = Rect::square(0, 0);
        assert_eq!(
            asked,
            Err(Rejection::First {
                task: Task::SquareUp,
                piece: four,
                before,
                needs: Task::Cut
            })
        );
    }

    #[test]
    fn a_torn_last_line_is_dropped_and_damage_before_it_is_not() {
        let mut journal = begin(2, 2);
        for col in 0..2 {
            let pieces = vec![Rect::square(0, col)];
            act(
                &mut journal,
                &Command::Tick {
                    task: Task::Cut,
                    pieces,
                },
                5,
            )
            .unwrap();
        }
        let text = journal.text();
        let last = text[..text.len() - 1].rfind('\n').unwrap() + 1;
        for cut in last + 1..text.len() - 1 {
            let read = Journal::read(&text.as_bytes()[..cut]).unwrap();
            assert!(read.torn && read.sound == last, "cut at {cut}");
            assert_eq!(read.journal.len(), 2);
        }
        let whole = Journal::read(&text.as_bytes()[..text.len() - 1]).unwrap();
        assert!(whole.lacks_newline && !whole.torn && whole.journal.len() == 3);
        let mut bytes = text.clone().into_bytes();
        let middle = text[..last - 1].rfind('\n').unwrap() + 20;
        bytes[middle] ^= 1;
        assert_eq!(
            Journal::read(&bytes).unwrap_err(),
            FormatError::Line { line: 3 }
        );
        assert_eq!(Journal::read(b"hello").unwrap_err(), FormatError::NotAThrow);
        assert_eq!(
            Journal::read(b"{\"lapwork\":\"throw\",\"version\":9}\n").unwrap_err(),
            FormatError::Newer { version: 9 }
        );
        assert_eq!(
            Journal::read(header_line("a").as_bytes()).unwrap_err(),
            FormatError::Empty
        );
    }
}
