//! Facts that both the events and the state hold: sizes, how joins were made, mishaps.

use crate::measure::{Count, Length};
use crate::plan::assembly::{Rect, Seam};
use crate::plan::{Joining, Plan, Stitch};
use crate::types::TS;
use serde::{Deserialize, Serialize};

/// A width and a height.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Size {
    /// Across.
    pub width: Length,
    /// Down.
    pub height: Length,
}

impl Size {
    /// The same, turned by a quarter.
    pub fn turned(self) -> Size {
        Size {
            width: self.height,
            height: self.width,
        }
    }

    /// How long a seam is that runs all through a piece of this size.
    pub fn along(self, seam: Seam) -> Length {
        match seam {
            Seam::Upright => self.height,
            Seam::Level => self.width,
        }
    }
}

/// What a join was made with, kept from the moment its edges were first held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Made {
    /// Lap or seam.
    pub joining: Joining,
    /// Its lap or allowance.
    pub lap: Length,
    /// Its stitch.
    pub stitch: Stitch,
}

impl Made {
    /// What the join takes up of the two pieces in a throw of this plan.
    pub fn take(self, plan: &Plan) -> Length {
        plan.take_of(self.joining, self.lap, self.stitch)
    }
}

/// How a square came to be spoilt.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Mishap {
    /// Cut too small or crooked.
    MisCut,
    /// A hole, a stain or a worn patch.
    Flaw,
    /// Scorched.
    Scorched,
    /// Not to be found.
    Lost,
}

impl Mishap {
    /// All of them.
    pub const ALL: [Mishap; 4] = [Mishap::MisCut, Mishap::Flaw, Mishap::Scorched, Mishap::Lost];

    /// Its name in the language files.
    pub fn key(self) -> &'static str {
        match self {
            Mishap::MisCut => "mis-cut",
            Mishap::Flaw => "flaw",
            Mishap::Scorched => "scorched",
            Mishap::Lost => "lost",
        }
    }
}

/// Binding strips that were cut out of a piece, all of one size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct StripsCut {
    /// How many.
    pub count: Count,
    /// Width of each.
    pub width: Length,
    /// Length of each.
    pub length: Length,
}

/// Squares pieced of two halves that came out of a piece, among all of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Pieced {
    /// The places they are for, of those the squares of the piece are for.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub places: Vec<Rect>,
    /// How many of the spares are pieced.
    #[serde(default, skip_serializing_if = "is_none")]
    pub spares: Count,
    /// How far the halves are lapped.
    pub lap: Length,
}

fn is_none(count: &Count) -> bool {
    *count == Count::NONE
}

impl Pieced {
    /// How many.
    pub fn count(&self) -> Count {
        self.spares + Count::at_most(self.places.len() as u32)
    }
}

/// A piece that is being cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BegunPiece {
    /// Lines of its cutting list that are done, from the first.
    pub lines: Count,
    /// Binding strips among them and to come, as it was begun.
    pub strips: Count,
}

/// Where the squares cut out of a piece went.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Went {
    /// Denim squares.
    Squares {
        /// The places they are for.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        places: Vec<Rect>,
        /// How many have no place yet.
        spares: Count,
    },
    /// Fabric squares, to the stock of this print.
    Stock {
        /// The print, counted from 0.
        print: u8,
    },
}
