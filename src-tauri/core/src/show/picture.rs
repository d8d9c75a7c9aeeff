//! What a drawing is made of: a few kinds of marks, in inks that say what a mark means.
//!
//! A [`Picture`] has no colours of its own but those of the maker's cloths. The window
//! ([`ui/src/parts/Marks.svelte`]) and paper ([`super::drawing::svg`]) each have one table from
//! inks to colours, so that a theme or black print is the choice of the renderer. Textures of
//! cloth and hatchings are named ([`Tile`]) and defined once, in [`super::drawing::tiles`].

use crate::cloth::fabric::Texture;
use crate::cloth::photos::PhotoId;
use crate::types::TS;
use serde::{Serialize, Serializer};

/// A drawing. Coordinates are in its own units, from the top left.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Picture {
    /// Width of the drawing.
    #[serde(serialize_with = "short")]
    pub width: f64,
    /// Height of the drawing.
    #[serde(serialize_with = "short")]
    pub height: f64,
    /// The picture in words.
    pub spoken: String,
    /// After how far the figure of a print comes again; other tiles go by it.
    #[serde(serialize_with = "short")]
    pub repeat: f64,
    /// Where a tile begins, from the left and from the top.
    #[serde(serialize_with = "short_spot")]
    pub from: [f64; 2],
    /// The cloths that marks are filled with, each once.
    pub cloths: Vec<DrawnCloth>,
    /// What is drawn, the first at the bottom.
    pub marks: Vec<Mark>,
}

/// A cloth as it is drawn.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct DrawnCloth {
    /// Its colour, `#rrggbb`.
    pub colour: String,
    /// Its texture; none where it is plain.
    pub tile: Option<Tile>,
    /// A photo of it, which fills two repeats and lies over the texture where it is there.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[ts(as = "Option<String>", optional)]
    pub photo: Option<PhotoId>,
}

/// One thing drawn.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
#[serde(rename_all = "kebab-case", tag = "mark")]
pub enum Mark {
    /// A rectangle.
    Area {
        /// Left edge.
        #[serde(serialize_with = "short")]
        x: f64,
        /// Upper edge.
        #[serde(serialize_with = "short")]
        y: f64,
        /// Width.
        #[serde(serialize_with = "short")]
        w: f64,
        /// Height.
        #[serde(serialize_with = "short")]
        h: f64,
        /// What it is.
        ink: Ink,
        /// The cloth it is filled with, one of the picture's.
        cloth: Option<u8>,
        /// Letters in its middle.
        label: Option<String>,
        /// What it is called in a file.
        #[serde(skip)]
        #[ts(skip)]
        name: Option<String>,
    },
    /// A line, or an arrow.
    Line {
        /// Start.
        #[serde(serialize_with = "short")]
        x1: f64,
        /// Start.
        #[serde(serialize_with = "short")]
        y1: f64,
        /// End.
        #[serde(serialize_with = "short")]
        x2: f64,
        /// End.
        #[serde(serialize_with = "short")]
        y2: f64,
        /// What it is.
        ink: Ink,
        /// With a head at its end.
        arrow: bool,
    },
    /// A shape of lines and curves, once at each of some places.
    Shape {
        /// Its outline as SVG 1.1 writes path data, measured from the place.
        d: String,
        /// The places; none where the outline starts from the top left of the drawing.
        #[serde(serialize_with = "short_spots")]
        at: Vec<[f64; 2]>,
        /// What it is.
        ink: Ink,
        /// The cloth it is filled with, one of the picture's.
        cloth: Option<u8>,
    },
    /// Words.
    Words {
        /// Where they are held.
        #[serde(serialize_with = "short")]
        x: f64,
        /// Middle of the words.
        #[serde(serialize_with = "short")]
        y: f64,
        /// The words.
        text: String,
        /// Height of the letters.
        #[serde(serialize_with = "short")]
        size: f64,
        /// What they are.
        ink: Ink,
        /// Which end of them is held.
        hold: Hold,
        /// Read from below to above.
        upright: bool,
    },
    /// The same letters at some places.
    Letters {
        /// The letters.
        text: String,
        /// Their height.
        #[serde(serialize_with = "short")]
        size: f64,
        /// The middle of each.
        #[serde(serialize_with = "short_spots")]
        at: Vec<[f64; 2]>,
        /// What they are.
        ink: Ink,
    },
}

/// Where words are held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Hold {
    /// At their beginning.
    Start,
    /// In the middle.
    Middle,
    /// At their end.
    End,
}

/// What a mark means; the renderer chooses its colour, hatching and line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Ink {
    /// Bare denim.
    Denim,
    /// Denim still to be made.
    Blank,
    /// The current piece.
    Now,
    /// A piece that waits beside the current one.
    Next,
    /// Done.
    Done,
    /// Cloth overlapping cloth.
    Lap,
    /// A line of stitching.
    Stitch,
    /// What is cut away, or cut clear of.
    Waste,
    /// A line to cut.
    Cut,
    /// A measure or an arrow.
    Rule,
    /// Something amiss.
    Amiss,

    /// Cloth without an edge of its own.
    Cloth,
    /// Cloth that stands back: what is no square of the piece it is cut from.
    Veiled,
    /// The edge of a piece of cloth.
    Outline,
    /// The edge between two squares.
    Edge,
    /// The edge of a four.
    Block,
    /// A lap that is stitched.
    Sewn,
    /// The fringe along a stitched lap. A fine mark.
    Fringe,
    /// Threads standing out of a raw edge.
    Threads,
    /// A raw edge that lies beneath other cloth.
    Hidden,
    /// Threads standing out of a raw edge that lies on cloth.
    Fray,
    /// A needle of the machine, seen from above.
    Needle,
    /// The binding.
    Binding,
    /// A thin line that leads to words.
    Leader,
    /// The border of a piece that goes as one.
    Unit,
    /// A sign on what stays as it is.
    Stays,
    /// A sign on what is pinned to its place.
    Pin,
    /// A tie between two that a wish would keep apart.
    Clash,
    /// An arrow along the lengthwise grain. A fine mark.
    Grain,
    /// A ring round what changes.
    Ring,
    /// A line over the letters of the fabric beneath. A fine mark.
    Beneath,

    /// Words on paper.
    Words,
    /// Words on paper that stand out.
    Title,
    /// The letters of a fabric. A fine mark.
    Letters,
    /// The letters of a denim, where colour does not show it. A fine mark.
    Bare,
    /// The letter for a wrong side. A fine mark.
    Wrong,
    /// The number of a square on its cloth. A fine mark.
    Number,
}

/// The name of a texture or a hatching: a tile that is repeated over an area.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Tile {
    /// Denim: a steep twill.
    Twill,
    /// A steep twill whose lines are broken.
    TwillBroken,
    /// A twill that leans more.
    TwillFlat,
    /// A leaning twill of double lines.
    TwillDouble,
    /// The wrong side of the first: pale, leaning the other way.
    TwillWrong,
    /// The wrong side of the second.
    TwillBrokenWrong,
    /// The wrong side of the third.
    TwillFlatWrong,
    /// The wrong side of the fourth.
    TwillDoubleWrong,
    /// Hatching of [`Ink::Next`].
    Next,
    /// Hatching of [`Ink::Done`].
    Done,
    /// Hatching of [`Ink::Lap`].
    Lap,
    /// Hatching of [`Ink::Waste`].
    Waste,
    /// Hatching of [`Ink::Amiss`].
    Amiss,
    /// The figure of a print.
    #[serde(untagged)]
    Print(Texture),
}

/// A tile as it is drawn: marks on a square of 24 by 24, over the colour of the ground.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct TileMarks {
    /// Its name.
    pub tile: Tile,
    /// Its side, as a part of the picture's `repeat`.
    pub side: f64,
    /// How strongly its marks are drawn, from 0 to 1.
    pub strength: f64,
    /// Up to this lightness of the ground, from 0 to 255, its marks are light; on a lighter
    /// ground they are dark.
    pub light_up_to: u8,
    /// The marks.
    pub strokes: Vec<TileStroke>,
}

/// One line of a tile.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct TileStroke {
    /// Its way, as SVG 1.1 writes path data.
    pub d: String,
    /// How wide it is; 0 where it is filled instead.
    pub width: f64,
    /// Lengths of its dashes and gaps, if it has any.
    pub dash: Option<String>,
}

/// What a mark in a drawing means.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct InkKey {
    /// The mark by itself.
    pub picture: Picture,
    /// In words.
    pub label: String,
}

/// A number to a thousandth, whole ones without a decimal point: pictures of many squares
/// are half as long that way.
fn short<S: Serializer>(number: &f64, to: S) -> Result<S::Ok, S::Error> {
    let rounded = (number * 1e3).round() / 1e3;
    if rounded.fract() == 0.0 && rounded.abs() < 1e9 {
        to.serialize_i64(rounded as i64)
    } else {
        to.serialize_f64(rounded)
    }
}

struct Short(f64);

impl Serialize for Short {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        short(&self.0, to)
    }
}

/// As [`short`], of a place.
fn short_spot<S: Serializer>(spot: &[f64; 2], to: S) -> Result<S::Ok, S::Error> {
    spot.map(Short).serialize(to)
}

/// As [`short`], of places.
fn short_spots<S: Serializer>(spots: &[[f64; 2]], to: S) -> Result<S::Ok, S::Error> {
    to.collect_seq(spots.iter().map(|spot| spot.map(Short)))
}
