//! Merging two copies of one throw.
//!
//! Two devices held the same throw and work went on on both. Their records share a beginning; then
//! each has a tail. [`meet`] finds what both can keep and what is for the maker to decide
//! ([`Conflict`]); [`Meeting::join`] makes the one record.
//!
//! # How entries are recognised
//!
//! An entry is recognised by its time, by what it says, and by how many entries like it came
//! before it in its copy ([`Known`]); an undo or redo by the entry it refers to. Numbers play no
//! part, since they differ once copies have been merged.
//!
//! # What becomes of the tails
//!
//! * What stands in one copy only is a *change* of that copy; so is a shared entry that one
//!   copy took back, or did again. Two changes that do not clash ([`crate::log::footprint`]) are
//!   both kept, so ticks of different squares are. Changes that clash, with whatever builds on
//!   them, form a conflict; one side of it is kept. The same step made on both (two ticks of one square, in whatever order)
//!   is kept once, as of the earlier time.
//! * A step is the same on both only where it rests on the same on both. Two entries that
//!   happen to say the same at the same moment, but follow on different work, are a change of
//!   each copy, although the result holds them as one entry.
//! * Nothing is lost: what does not stand in the result is in it as [`What::Past`].
//! * Entries come in the order of their times, then of what they say, but never before
//!   what came before them in their own copy. Where the copies made the same steps in two
//!   orders, only what a step rests on comes before it for certain.
//!
//! # Promises, kept by the properties in `tests.rs`
//!
//! * `join(a, b)` is `join(b, a)` to the byte, the choices being swapped too.
//! * `join(a, a)` is `a`; `join(join(a, b), a)` is `join(a, b)`.
//! * Every entry of either copy is in the result; all that stood in either and is not on
//!   the losing side of a conflict stands.
//! * Every step of the result follows on those before it ([`crate::log::intake::follows`]); a
//!   result that would not is refused ([`Unmergeable`]), and both copies are to be kept.
//!
//! Not promised: that merging three copies gives the same whichever two go first. What was
//! decided between two is shown to the third as decided.
//!
//! Limits: time and memory grow with the product of the lengths of the two tails.
//!
//! ```
//! use lapwork_core::command::Command;
//! use lapwork_core::demo;
//! use lapwork_core::log::merge::meet;
//!
//! // Two copies of one throw, a note made in each.
//! let [mut table, mut machine] = [demo::throw(0), demo::throw(0)];
//! for (copy, text, at) in [(&mut table, "More jeans found", 9), (&mut machine, "New needle", 7)] {
//!     let note = Command::Note { text: text.into(), piece: None, task: None, next: false };
//!     let entry = copy.propose(&note, at).unwrap();
//!     copy.accept(entry).unwrap();
//! }
//! let meeting = meet(&table, &machine).unwrap();
//! assert!(meeting.conflicts().is_empty());
//! let one = meeting.join(&[]).unwrap();
//! assert_eq!(one.len(), table.len() + 1);
//! ```

mod choice;
mod common;
mod compare;
mod conflicts;
mod join;
mod meeting;
#[cfg(test)]
mod tests;

pub use choice::{Conflict, Divergence, MergeSide, Origin, Unmergeable};
pub use compare::{Known, Relation, known, relation};
pub use meeting::{Meeting, meet};
