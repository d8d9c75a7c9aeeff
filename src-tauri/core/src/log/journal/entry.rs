//! The lines of a throw file: its header, and an entry with its checksum.

use crate::measure::bounds::{self, NotRead};
use crate::throw::{Event, Time};
use serde::{Deserialize, Serialize};

/// The version of the file format written here, and the newest that is read.
pub const VERSION: u32 = 2;

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
    pub(super) fn of(body: &str) -> Result<Entry, NotRead> {
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
pub(super) fn summed(line: &str) -> Option<&str> {
    let (body, sum) = line.rsplit_once(",\"crc\":\"")?;
    let sum = sum.strip_suffix("\"}")?;
    let agrees =
        sum.len() == 8 && u32::from_str_radix(sum, 16).ok()? == crc32fast::hash(body.as_bytes());
    agrees.then_some(body)
}
