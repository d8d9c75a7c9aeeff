//! How the maker wants the two faces to look, and another way to lay the throw out.

use crate::cloth::fabric::Cover;
use crate::measure::Count;
use crate::plan::assembly::Rect;
use crate::types::TS;
use serde::{Deserialize, Serialize};

/// Which squares of one print are too close together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Apart {
    /// None are.
    Free,
    /// Those that share an edge.
    Edges,
    /// Those that share an edge or meet at a corner.
    #[default]
    Corners,
}

/// An order for the shades of denim and the fabrics.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Pattern {
    /// None.
    #[default]
    Free,
    /// The right half as the left, in a mirror.
    Mirror,
    /// From light denim in the top row to dark in the bottom row.
    ShadeRows,
    /// Light denim towards the edges.
    LightEdges,
}

/// Which way the grain of the squares is to run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Grain {
    /// As it comes.
    #[default]
    Free,
    /// Lengthwise grain up and down in every square.
    OneWay,
    /// Turned by a quarter from each square to the next.
    ByTurns,
}

/// Which denim the squares that are not cut yet are to be of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum DenimWish {
    /// As they are now: none becomes another denim, though they may change places.
    Kept,
    /// Any that the pile gives; where an order of shades is wished for, some of each.
    Any,
    /// Some of each, no two squares of one denim side by side.
    Apart,
    /// Some of each, those of one denim together.
    Bands,
}

/// How the faces are to look.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, TS)]
pub struct Wishes {
    /// Squares covered on the front, in all.
    pub front: Count,
    /// Squares covered on the back, in all.
    pub back: Count,
    /// Like prints keep apart.
    #[serde(default)]
    pub apart: Apart,
    /// An order for shades and fabrics.
    #[serde(default)]
    pub pattern: Pattern,
    /// Which way the grain runs.
    #[serde(default)]
    pub grain: Grain,
    /// Glued squares and sewn pieces may change places and be turned.
    #[serde(default)]
    pub move_made: bool,
    /// Which denim squares are to be of; where it is not said, as they are now.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[ts(optional)]
    pub denims: Option<DenimWish>,
    /// Squares whose denim was chosen by hand may be of another, too.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[ts(as = "Option<bool>", optional)]
    pub by_hand_too: bool,
    /// Most fabrics that may meet at one crossing, both faces together; where it is not said,
    /// any number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[ts(optional)]
    pub crossing: Option<Count>,
}

impl Wishes {
    /// Whether the denims of squares not cut yet are to be chosen.
    pub fn choose_denims(&self) -> bool {
        self.denims.is_some_and(|denims| denims != DenimWish::Kept)
    }
}

/// Another way to lay the throw out.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize, TS)]
pub struct Layout {
    /// Pieces that change places, from where to where: each place once on either side.
    pub moves: Vec<(Rect, Rect)>,
    /// Pieces, where they lie then, and how many quarters clockwise they are turned,
    /// as seen from the front.
    pub turns: Vec<(Rect, u8)>,
    /// Squares whose faces change after that.
    pub faces: Vec<(Rect, Cover)>,
}
