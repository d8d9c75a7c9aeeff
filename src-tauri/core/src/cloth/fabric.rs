//! Fabrics and denims, and what each square shows on its two faces.
//!
//! Every face is described as seen from the front. When the throw is turned over like a
//! page, left and right change places: the back's column `c` is the front's
//! `across − 1 − c`.

use crate::cloth::photos::PhotoId;
use crate::measure::{Count, Length};
use crate::types::TS;
use serde::{Deserialize, Serialize};

/// One side of the throw.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Face {
    /// The side it is planned from.
    Front,
    /// The other.
    Back,
}

/// A drawn texture, so that prints differ by more than colour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Texture {
    /// No figure.
    Plain,
    /// Upright stripes.
    Stripe,
    /// Crossing stripes.
    Check,
    /// Round dots.
    Dot,
    /// Small scattered sprigs.
    Sprig,
    /// Slanting lines.
    Slant,
    /// Waves.
    Wave,
    /// Crosses.
    Cross,
}

/// A fabric for covering squares.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Print {
    /// What the maker calls it.
    pub name: String,
    /// Its colour for the picture, `#rrggbb`.
    pub colour: String,
    /// Its drawn texture.
    pub texture: Texture,
    /// Squares of it at hand, where counted.
    pub stock: Option<Count>,
    /// It is cloth, or squares too large, of which she cuts the squares: cutting them is a step.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[ts(optional, as = "Option<bool>")]
    pub uncut: bool,
    /// Each square of it is another, as in a pack of many fabrics: none is like the one beside it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[ts(optional, as = "Option<bool>")]
    pub mixed: bool,
    /// Its squares are of this side, smaller than the throw's: each lies as a patch in the middle
    /// of a denim square, clear of the laps, and is stitched round.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[ts(optional)]
    pub patch: Option<Length>,
    /// A photo of it, shown in place of the drawn texture where it is there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[ts(optional, as = "Option<String>")]
    pub photo: Option<PhotoId>,
}

/// A denim among the jeans.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Denim {
    /// What the maker calls it.
    pub name: String,
    /// Its colour for the picture, `#rrggbb`.
    pub colour: String,
}

/// What one square shows on its faces; numbers count from 0 in the throw's lists.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, TS)]
pub struct Cover {
    /// Print on the front, if any.
    pub front: Option<u8>,
    /// Print on the back, if any.
    pub back: Option<u8>,
    /// The denim in the middle.
    pub denim: u8,
    /// The denim's wrong side is to the front.
    #[serde(default)]
    pub wrong_side_up: bool,
    /// Its lengthwise grain lies across, not up and down.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[ts(as = "Option<bool>", optional)]
    pub crosswise: bool,
}

impl Face {
    /// Front, then back.
    pub const BOTH: [Face; 2] = [Face::Front, Face::Back];

    /// Its number in lists of both.
    pub fn index(self) -> usize {
        usize::from(self == Face::Back)
    }
}

impl Cover {
    /// The print on one face.
    pub fn on(&self, face: Face) -> Option<u8> {
        match face {
            Face::Front => self.front,
            Face::Back => self.back,
        }
    }

    /// The same with `print` on one face.
    pub fn with(mut self, face: Face, print: Option<u8>) -> Self {
        match face {
            Face::Front => self.front = print,
            Face::Back => self.back = print,
        }
        self
    }

    /// Layers of cloth: the denim and up to two fabrics.
    pub fn layers(&self) -> u32 {
        1 + u32::from(self.front.is_some()) + u32::from(self.back.is_some())
    }
}

/// Relative lightness of `#rrggbb`, 0 to 255 (luma of ITU-R BT.709: 0.2126, 0.7152, 0.0722).
pub fn lightness(colour: &str) -> u8 {
    let part = |at: usize| {
        colour
            .get(at..at + 2)
            .and_then(|hex| u32::from_str_radix(hex, 16).ok())
            .unwrap_or(0)
    };
    ((part(1) * 2126 + part(3) * 7152 + part(5) * 722) / 10_000) as u8
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand from ITU-R BT.709: of 255 red is 0.2126, 54; green 0.7152, 182; blue 0.0722, 18. A
    /// mid grey is as light as each of its parts.
    #[test]
    fn lightness_is_the_luma_of_the_standard() {
        let colours = [
            "#ff0000", "#00ff00", "#0000ff", "#808080", "#ffffff", "#102030",
        ];
        // 16 · 0.2126 + 32 · 0.7152 + 48 · 0.0722 = 29.75.
        assert_eq!(colours.map(lightness), [54, 182, 18, 128, 255, 29]);
        assert_eq!(["", "#ff", "pink"].map(lightness), [0, 54, 0]);
    }

    /// A denim square is one layer, and one more for the fabric on each face.
    #[test]
    fn each_fabric_is_a_layer() {
        let cover = |front, back| Cover {
            front,
            back,
            ..Cover::default()
        };
        let layers = [
            cover(None, None),
            cover(Some(0), None),
            cover(None, Some(3)),
            cover(Some(1), Some(2)),
        ];
        assert_eq!(layers.map(|c| c.layers()), [1, 2, 2, 3]);
        let both = cover(Some(1), Some(2));
        assert_eq!(
            [both.on(Face::Front), both.on(Face::Back)],
            [Some(1), Some(2)]
        );
        let bare = both.with(Face::Back, None);
        assert_eq!([bare.front, bare.back], [Some(1), None]);
    }
}
