//! What a throw leaves to the next one made after its plan.
//!
//! [`Heritage`] is stored with the beginning of the new throw, since the older throw may be gone.
//! It holds the maker's own lessons in her words, and lessons derived from the record ([`DerivedLesson`])
//! as figures, so that everybody reads them in their own language and units. Files that stored
//! derived lessons in words are shown as they are. The maker's pace and the mean error of her lap
//! are figures too; they are used until the new throw has enough of its own
//! ([`crate::log::pace::FEW`], three measured fours).

use crate::cloth::fabric::{Cover, Face};
use crate::measure::{Count, Length};
use crate::throw::facts::Mishap;
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
    /// In words: what the maker wrote, or a derived lesson in files without a [`DerivedLesson`]; else
    /// empty.
    pub words: String,
    /// The step it is about; none where it is about the whole.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub task: Option<Task>,
    /// Whether the maker wrote it; else it was derived from the record.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub hers: bool,
    /// What was derived from the record.
    #[serde(default, skip_serializing_if = "Option::is_none", rename = "told")]
    pub derived: Option<DerivedLesson>,
}

/// A lesson derived from the record of a throw. Sizes are a width and a height.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DerivedLesson {
    /// On a scrap this lap was found right.
    Scrap {
        /// The lap.
        lap: Length,
    },
    /// What the measured fours came out at for each lap, in the mean.
    Drift {
        /// How many fours.
        fours: Count,
        /// Measured less planned; positive is over.
        mean: Length,
    },
    /// What the finished piece measured.
    Whole {
        /// As measured first.
        size: (Length, Length),
        /// As planned.
        planned: (Length, Length),
    },
    /// What washing did to it.
    Washed {
        /// How many washes lie between the two.
        washes: u8,
        /// The size before.
        before: (Length, Length),
        /// The size after.
        after: (Length, Length),
    },
    /// Squares that were no good.
    Spoilt {
        /// How many.
        squares: Count,
        /// Why.
        why: Mishap,
    },
    /// Squares of a face that got fabric once cutting had begun.
    More {
        /// How many.
        squares: Count,
        /// The face.
        face: Face,
    },
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
    /// Measured less planned, for each lap; positive is over.
    pub mean: Length,
}
