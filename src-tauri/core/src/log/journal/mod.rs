//! The record of a throw: what happened, in order, never rewritten.
//!
//! A [`Journal`] holds [`Entry`]s. An entry is the events of one command, or it takes back an
//! earlier entry (`undo`), or does it again (`redo`). The state is the fold of the entries that
//! stand; no inverse of an event is written by hand.
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
//! `throw` (from version 2) names the throw, with 1 to 64 of `a–z`, `0–9` and `-`; copies of one
//! throw have the same name. The caller passes it in when a throw is begun. Version 1 has no such
//! name; it is then made from the first entry ([`first_name`]), which gives the same name on every
//! device.
//!
//! An entry that is in two copies is recognised by its time, by what it says, and by how many
//! entries like it came before it in its copy ([`crate::log::merge`]); its number may differ.
//!
//! A file of version 1 is read like one of version 2, and what is written is version 2:
//! the entries are the same to the byte.
//!
//! Promises: reading a file never guesses. An invalid last line with nothing valid
//! after it is a torn write: it was never acknowledged, and the caller learns of it by
//! [`Read::torn`]. Damage anywhere else, an unknown version and a gap are errors.
//!
//! Checkpoints of the state are kept in memory, so that undoing folds few entries again:
//! one for at least every [`STRIDE`] entries that stand (fewer for a large throw, whose
//! copies cost more), the older the farther apart. Their number grows with the logarithm
//! of the entries; where one has to go back to an older one, closer ones are made again.
//! A file is folded once all of it is read, so that what was undone by then costs nothing.
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

mod entry;
mod history;
mod pace_record;
mod reading;
#[cfg(test)]
pub(crate) mod tests;

pub use entry::{Entry, Header, VERSION, What, first_name, header_line, is_name};
pub use history::{Journal, STRIDE};
pub use pace_record::{FEW, HASTE, LEAST_SHARE, PAUSE};
pub(crate) use reading::Refusal;
pub use reading::{FormatError, Read};
