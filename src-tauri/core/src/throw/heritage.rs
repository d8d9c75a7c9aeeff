//! What a throw leaves to the next one made after its plan.
//!
//! [`Heritage`] is kept with the beginning of the new throw, as data: the older throw
//! may be gone. Lessons are kept in words, the maker's own and those told from the
//! record ([`crate::show::heritage`] makes them); her pace and the mean error of her lap
//! are kept as figures, and stand in until the new throw has enough of its own
//! ([`crate::log::pace::FEW`], three measured fours).

use crate::cloth::fabric::Cover;
use crate::measure::{Count, Length};
use crate::throw::tasks::Task;
use serde::{Deserialize, Serialize};

/// Most lessons that are carried on.
pub const MOST_LESSONS: usize = 60;

/// What an older throw left.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Heritage {
    /// The older throw's name.
    pub name: String,
    /// What was learned, in words.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub lessons: Vec<Lesson>,
    /// The maker's pace.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub paces: Vec<Learned>,
    /// What her measured fours were off by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drift: Option<Carried>,
    /// The faces to begin with, row by row; empty for bare ones.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub faces: Vec<Cover>,
}

/// Something learned.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Lesson {
    /// In words.
    pub words: String,
    /// The step it is about; none where it is about the whole.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub task: Option<Task>,
    /// Whether the maker wrote it; else it was told from the record.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub hers: bool,
}

/// How long a step took her for one piece, in milliseconds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Learned {
    /// The step.
    pub task: Task,
    /// The lower quartile.
    pub low: u32,
    /// The median.
    pub middle: u32,
    /// The upper quartile.
    pub high: u32,
}

/// What the measured fours were off by, in the mean.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Carried {
    /// How many fours.
    pub fours: Count,
    /// Measured less planned, for each lap; above nought is over.
    pub mean: Length,
}
