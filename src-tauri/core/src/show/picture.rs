//! Pictures: marks in coordinates, in inks that the window and the paper give colours to.

use serde::Serialize;
use ts_rs::TS;

/// A drawing. Coordinates are in its own units, from the top left.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Picture {
    /// Width of the drawing.
    pub width: f64,
    /// Height of the drawing.
    pub height: f64,
    /// The picture in words.
    pub spoken: String,
    /// What is drawn, the first at the bottom.
    pub marks: Vec<Mark>,
}

/// One thing drawn.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
#[serde(rename_all = "kebab-case", tag = "mark")]
pub enum Mark {
    /// A rectangle.
    Area {
        /// Left edge.
        x: f64,
        /// Upper edge.
        y: f64,
        /// Width.
        w: f64,
        /// Height.
        h: f64,
        /// How it is filled.
        ink: Ink,
        /// A print from the throw's list over it.
        print: Option<u8>,
        /// The colour of the denim it is of.
        colour: Option<String>,
        /// Letters in its middle.
        label: Option<String>,
    },
    /// A line, or an arrow.
    Line {
        /// Start.
        x1: f64,
        /// Start.
        y1: f64,
        /// End.
        x2: f64,
        /// End.
        y2: f64,
        /// How it is drawn.
        ink: Ink,
        /// With a head at its end.
        arrow: bool,
    },
    /// Words.
    Words {
        /// Middle of the words.
        x: f64,
        /// Middle of the words.
        y: f64,
        /// The words.
        text: String,
        /// Height of the letters.
        size: f64,
    },
}

/// What a mark stands for; the window chooses colour and pattern.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Ink {
    /// Bare denim.
    Denim,
    /// Denim still to be made.
    Blank,
    /// The piece in hand.
    Now,
    /// A piece that waits beside the one in hand.
    Next,
    /// Done.
    Done,
    /// Cloth overlapping cloth.
    Lap,
    /// A line of stitching.
    Stitch,
    /// What is cut away.
    Waste,
    /// A line to cut.
    Cut,
    /// A measure or an arrow.
    Rule,
    /// Something amiss.
    Amiss,
}

/// What a mark in a drawing means.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct InkKey {
    /// The mark.
    pub ink: Ink,
    /// In words.
    pub label: String,
}
