//! Large screens, made in a worker of their own from a copy of the record.
//!
//! On the desktop a snapshot of a throw goes to another thread. Workers of a browser share no
//! memory, so the reader has a copy of the record: each [`Reading`] brings the entries that the copy
//! lacks, which a [`Feed`] knows, and says when and how the screen is to be made ([`Setting`]). The
//! reader has no files and is asked nothing that changes a throw, so that nothing is lost with it.
//!
//! Small throws are not read there: their screens take a few milliseconds, less than a second
//! module of the core is worth in memory.

use crate::calls::to_json;
use lapwork_core::log::journal::{Entry, Journal};
use lapwork_core::show::Query;
use lapwork_service::service::{Setting, Snapshot, is_quick};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// From so many squares on a throw is large: the slowest screen of 20 × 20 takes about 10 ms.
pub const LARGE: u32 = 400;

/// A screen that the reader is to make.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Reading {
    record: Lines,
    setting: Setting,
    query: Query,
    /// It goes with the answer to a command.
    acted: bool,
}

/// What the reader's copy of the record lacks, as lines of the throw's file.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Lines {
    /// The whole file: the copy is of another throw, or there is none.
    All(String),
    /// What follows on the lines that are there.
    More(String),
}

/// What the service knows of its reader.
#[derive(Debug, Default)]
pub struct Feed {
    is_there: bool,
    /// Which throw the copy is of, and its last entry.
    copy: Option<(String, Entry)>,
}

impl Feed {
    /// A reader without a copy is there, or none is.
    pub fn begin(&mut self, is_there: bool) {
        self.is_there = is_there;
        self.copy = None;
    }

    /// The record may be another from now on, and no longer begin as the copy does.
    pub fn forget(&mut self) {
        self.copy = None;
    }

    /// Whether the reader is to make this screen.
    pub fn wants(&self, snapshot: &Snapshot, query: &Query) -> bool {
        let plan = &snapshot.journal().throw().plan;
        self.is_there && !is_quick(query) && plan.squares() >= LARGE
    }

    /// Have the reader make it, after all it was asked before.
    pub fn order(&mut self, id: &str, snapshot: &Snapshot, query: Query, acted: bool) -> Reading {
        let journal = snapshot.journal();
        let copy = self.copy.take().filter(|(of, _)| of == id);
        let more = copy.and_then(|(_, last)| lines_after(journal, &last));
        let last = journal.entries().next_back();
        self.copy = last.map(|(last, _)| (id.to_string(), last.clone()));
        Reading {
            record: more.map_or_else(|| Lines::All(journal.text()), Lines::More),
            setting: snapshot.setting(),
            query,
            acted,
        }
    }
}

/// The lines that follow on an entry, if the record has it.
fn lines_after(journal: &Journal, last: &Entry) -> Option<String> {
    let before = usize::try_from(last.n).ok()?.checked_sub(1)?;
    let mut entries = journal.entries().map(|(entry, _)| entry).skip(before);
    (entries.next()? == last).then(|| entries.map(Entry::line).collect())
}

/// Makes screens from its copy of a record.
#[derive(Debug, Default)]
pub struct Reader {
    journal: Option<Arc<Journal>>,
}

impl Reader {
    /// Make a screen that was ordered as JSON; gives the answer to the call.
    ///
    /// # Errors
    /// That the order makes no sense, or does not follow on the copy.
    pub fn read(&mut self, reading: &str) -> Result<String, String> {
        let reading: Reading = serde_json::from_str(reading).map_err(|why| why.to_string())?;
        let snapshot = Snapshot::of(self.copy(&reading.record)?, &reading.setting);
        Ok(match reading.acted {
            true => to_json(Ok(snapshot.acted(&reading.query))),
            false => to_json(snapshot.answer(&reading.query)),
        })
    }

    /// The copy of the record, brought up to date.
    fn copy(&mut self, lines: &Lines) -> Result<Arc<Journal>, String> {
        match lines {
            Lines::All(text) => {
                // Two at a time would take memory for nothing.
                self.journal = None;
                let read = Journal::read(text.as_bytes()).map_err(|why| why.to_string())?;
                self.journal = Some(Arc::new(read.journal));
            }
            Lines::More(lines) => {
                let copy = self.journal.as_mut().ok_or("there is no copy")?;
                let copy = Arc::make_mut(copy);
                for line in lines.lines() {
                    let entry = Entry::from_line(line).and_then(|entry| copy.accept(entry));
                    entry.ok_or("an entry does not follow")?;
                }
            }
        }
        self.journal
            .clone()
            .ok_or_else(|| "there is no copy".into())
    }
}

#[cfg(test)]
mod tests;
