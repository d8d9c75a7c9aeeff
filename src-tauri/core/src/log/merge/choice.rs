//! What the maker is asked where two copies differ, and what may be answered.

use crate::throw::{Event, Time};
use thiserror::Error;

/// One of two copies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MergeSide {
    /// The one named first.
    First,
    /// The other.
    Second,
}

impl MergeSide {
    /// The other one.
    #[must_use]
    pub fn other(self) -> MergeSide {
        match self {
            MergeSide::First => MergeSide::Second,
            MergeSide::Second => MergeSide::First,
        }
    }
}

/// How a change came about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin {
    /// Done.
    Did,
    /// Done before the copies parted, and taken back since.
    TookBack,
    /// Taken back before the copies parted, and done again since.
    DidAgain,
}

/// Something one copy has and the other has not.
#[derive(Debug, Clone, PartialEq)]
pub struct Divergence {
    /// How it came about.
    pub way: Origin,
    /// When the step itself was made.
    pub at: Time,
    /// The step.
    pub events: Vec<Event>,
}

/// Changes of the two copies that cannot both stand.
#[derive(Debug, Clone, PartialEq)]
pub struct Conflict {
    /// Those of the first copy.
    pub first: Vec<Divergence>,
    /// Those of the second.
    pub second: Vec<Divergence>,
}

/// The two cannot be made one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum Unmergeable {
    /// They are not copies of one throw.
    #[error("not two copies of one throw")]
    Strangers,
    /// Some conflict has no choice.
    #[error("a conflict was not decided")]
    Undecided,
    /// The result would hold a step that does not follow.
    #[error("the merged record would hold a step that does not follow")]
    Misfit,
}
