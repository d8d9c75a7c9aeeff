//! Reading a throw file, and telling a torn last line from damage.

use crate::log::journal::entry::{Entry, Header, VERSION, header_line, is_name, summed};
use crate::log::journal::history::Journal;
use crate::measure::bounds::{FigureOutOfBounds, NotRead};
use thiserror::Error;

/// Longest line that is read, in bytes.
const LONGEST_LINE: usize = 4 << 20;

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
    /// What the lines up to this one ask for costs far more than any throw.
    #[error("the lines up to {line} cost too much")]
    TooMuch {
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

/// Why an entry may not come in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Refusal {
    /// It says what cannot be.
    Absurd,
    /// It costs too much, with those before it.
    TooMuch,
}

impl Refusal {
    /// The error of a file that has such an entry in this line.
    pub(crate) fn at(self, line: usize) -> FormatError {
        match self {
            Refusal::Absurd => FormatError::Absurd { line },
            Refusal::TooMuch => FormatError::TooMuch { line },
        }
    }
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

impl Journal {
    /// Read a file.
    ///
    /// # Errors
    /// [`FormatError`], when more than a torn last line is wrong.
    pub fn read(bytes: &[u8]) -> Result<Read, FormatError> {
        Journal::read_if(bytes, |_, _| Ok(()))
    }

    /// Read a file, accepting each entry only if it may come in after those read so far (there
    /// are none before the first). The state of that record may lag behind ([`Journal::fold_up`]).
    ///
    /// # Errors
    /// [`FormatError`] as for [`Journal::read`]; the [`Refusal`] of the first that may not.
    pub(crate) fn read_if(
        bytes: &[u8],
        mut may: impl FnMut(Option<&mut Journal>, &Entry) -> Result<(), Refusal>,
    ) -> Result<Read, FormatError> {
        let end = bytes
            .iter()
            .position(|b| *b == b'\n')
            .unwrap_or(bytes.len());
        let first = bytes[..end].strip_suffix(b"\r").unwrap_or(&bytes[..end]);
        let header: Header = (end < 400)
            .then(|| serde_json::from_slice(first).ok())
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
            _ => is_name(&named) && header_line(&named).trim_end().as_bytes() == first,
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
                // The checksum matches, so the line was written like this: it is not torn, and
                // must not be cut off.
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
                return Ok(Read {
                    journal: whole_of(journal, &named)?,
                    version,
                    sound,
                    torn: true,
                    lacks_newline: false,
                });
            };
            may(journal.as_mut(), &entry).map_err(|why| why.at(number))?;
            let follows = match &mut journal {
                Some(journal) => journal.follow(entry).is_some(),
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
        let lacks_newline = bytes.last() != Some(&b'\n');
        Ok(Read {
            journal: whole_of(journal, &named)?,
            version,
            sound,
            torn: false,
            lacks_newline,
        })
    }
}

/// The record once all of it is read: only what stands is folded.
fn whole_of(journal: Option<Journal>, named: &str) -> Result<Journal, FormatError> {
    let mut journal = journal.ok_or(FormatError::Empty)?.named(named);
    journal.catch_up();
    Ok(journal)
}

fn read_line(line: &[u8]) -> Option<Entry> {
    text_of(line).and_then(Entry::from_line)
}

/// A line as text, without the carriage return that some programs put before each newline.
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
