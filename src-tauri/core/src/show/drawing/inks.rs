//! From inks to colours on paper: one table for colour, one for black.
//!
//! The window's own table is the style sheet of `ui/src/parts/Marks.svelte`.

use super::tiles::ALWAYS_LIGHT;
use crate::cloth::fabric::lightness;
use crate::show::picture::{DrawnCloth, Ink, Tile, TileMarks};
use crate::types::TS;
use serde::{Deserialize, Serialize};

/// How a drawing is coloured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Style {
    /// In the colours of the cloths.
    #[default]
    Colour,
    /// Black on white: textures, letters, and greys for denims.
    Ink,
}

pub(super) const DARK: &str = "#1b2540";
pub(super) const LIGHT: &str = "#fff8ea";
const BLACK: &str = "#000000";
const WHITE: &str = "#ffffff";
const THREAD: &str = "#f2a76f";
const RED: &str = "#b3261e";

/// How a mark is painted. Widths and dashes are in pens, the width of a thin line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Paint {
    /// What an area is filled with, where no cloth fills it.
    pub fill: Option<&'static str>,
    /// How strongly.
    pub fill_opacity: f64,
    /// A hatching over that, in the colour of the line.
    pub hatch: Option<Tile>,
    /// The line.
    pub stroke: Option<&'static str>,
    /// How wide the line is.
    pub width: f64,
    /// Its dashes.
    pub dash: Option<[f64; 2]>,
    /// A wider line below it, and how wide.
    pub under: Option<(&'static str, f64)>,
}

impl Style {
    /// Lines and letters.
    pub(super) fn dark(self) -> &'static str {
        match self {
            Style::Colour => DARK,
            Style::Ink => BLACK,
        }
    }

    /// What letters stand on.
    pub(super) fn plate(self) -> &'static str {
        match self {
            Style::Colour => LIGHT,
            Style::Ink => WHITE,
        }
    }

    /// The paper itself.
    pub(super) fn paper(self) -> &'static str {
        match self {
            Style::Colour => "#fcf8ef",
            Style::Ink => WHITE,
        }
    }

    /// The ground of a cloth. In black a print has none, and a denim is a grey as light as
    /// it is, light enough for letters.
    pub(super) fn ground(self, cloth: &DrawnCloth) -> String {
        let denim = cloth.tile.is_some_and(is_twill);
        match self {
            Style::Colour => cloth.colour.clone(),
            Style::Ink if denim => {
                let grey = 120 + u32::from(lightness(&cloth.colour)) * 115 / 255;
                format!("#{grey:02x}{grey:02x}{grey:02x}")
            }
            Style::Ink => WHITE.into(),
        }
    }

    /// The colour and the strength of a tile's marks over a ground.
    pub(super) fn marks(self, marks: &TileMarks, ground: &str) -> (&'static str, f64) {
        match self {
            Style::Colour if lightness(ground) <= marks.light_up_to => (LIGHT, marks.strength),
            Style::Colour => (DARK, marks.strength),
            Style::Ink if marks.light_up_to == ALWAYS_LIGHT => (WHITE, marks.strength),
            Style::Ink if is_twill(marks.tile) => (BLACK, 0.45),
            Style::Ink => (BLACK, 1.0),
        }
    }

    /// How an ink is painted.
    pub(super) fn paint(self, ink: Ink) -> Paint {
        let by = |colour, black| match self {
            Style::Colour => colour,
            Style::Ink => black,
        };
        let dark = self.dark();
        let plain = Paint {
            fill: None,
            fill_opacity: 1.0,
            hatch: None,
            stroke: Some(dark),
            width: 1.0,
            dash: None,
            under: None,
        };
        let filled = |fill| Paint {
            fill: Some(fill),
            ..plain
        };
        let bare = Paint {
            stroke: None,
            ..plain
        };
        let wide = |width| Paint { width, ..plain };
        let cased = |stroke, width, case, under| Paint {
            stroke: Some(stroke),
            width,
            under: Some((case, under)),
            ..plain
        };
        let thread = Paint {
            dash: Some([4.5, 2.6]),
            ..cased(by(THREAD, BLACK), 1.6, by(DARK, WHITE), 3.2)
        };
        let red = by(RED, BLACK);
        match ink {
            Ink::Denim => filled(by("#c9d4e5", "#e1e1e1")),
            Ink::Blank => Paint {
                dash: Some([4.0, 3.0]),
                ..filled(self.plate())
            },
            Ink::Now => wide(3.0),
            Ink::Next => Paint {
                dash: Some([3.0, 4.0]),
                hatch: Some(Tile::Next),
                ..filled(self.plate())
            },
            Ink::Done => filled(by("#54729f", "#c8c8c8")),
            Ink::Lap => Paint {
                hatch: Some(Tile::Lap),
                ..filled(by("#2b4472", "#909090"))
            },
            Ink::Stitch | Ink::Sewn => thread,
            Ink::Waste => Paint {
                fill: Some(self.plate()),
                fill_opacity: 0.8,
                hatch: Some(Tile::Waste),
                stroke: Some(red),
                width: 1.2,
                ..plain
            },
            Ink::Cut => Paint {
                stroke: Some(red),
                width: 2.2,
                dash: Some([12.0, 6.0]),
                ..plain
            },
            Ink::Amiss => Paint {
                hatch: Some(Tile::Amiss),
                stroke: Some(red),
                width: 2.0,
                dash: Some([2.0, 3.0]),
                ..filled(self.plate())
            },
            Ink::Rule => Paint {
                width: 1.4,
                ..filled(self.plate())
            },
            Ink::Cloth => bare,
            Ink::Veiled => Paint {
                fill: Some(self.plate()),
                fill_opacity: 0.6,
                ..bare
            },
            Ink::Outline => wide(3.0),
            Ink::Edge => wide(0.6),
            Ink::Block => wide(1.5),
            Ink::Fringe => Paint {
                stroke: Some(by("#e9eef8", WHITE)),
                ..plain
            },
            Ink::Threads => Paint {
                stroke: Some(by("#5f7596", BLACK)),
                width: 1.1,
                ..plain
            },
            Ink::Hidden => Paint {
                dash: Some([3.0, 2.5]),
                ..cased(self.plate(), 1.2, dark, 2.6)
            },
            Ink::Fray => cased(self.plate(), 1.0, dark, 2.2),
            Ink::Needle => Paint {
                width: 1.6,
                ..filled(self.plate())
            },
            Ink::Binding => Paint {
                width: 2.0,
                ..filled(self.plate())
            },
            Ink::Leader => plain,
            Ink::Unit => cased(self.plate(), 2.0, dark, 4.5),
            Ink::Stays => filled(by("#ffd9bd", WHITE)),
            Ink::Pin => cased(self.plate(), 2.0, dark, 4.0),
            Ink::Clash => cased(by("#ffb3a8", WHITE), 2.5, by("#6d0f1d", BLACK), 6.0),
            Ink::Grain => cased(self.plate(), 1.5, dark, 4.0),
            Ink::Ring => cased(self.plate(), 1.5, dark, 3.5),
            Ink::Beneath => wide(2.0),
            Ink::Words | Ink::Title | Ink::Letters | Ink::Bare | Ink::Wrong | Ink::Number => {
                Paint {
                    fill: Some(dark),
                    ..bare
                }
            }
        }
    }
}

/// Whether a tile is that of a denim.
pub(super) fn is_twill(tile: Tile) -> bool {
    matches!(
        tile,
        Tile::Twill
            | Tile::TwillBroken
            | Tile::TwillFlat
            | Tile::TwillDouble
            | Tile::TwillWrong
            | Tile::TwillBrokenWrong
            | Tile::TwillFlatWrong
            | Tile::TwillDoubleWrong
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::fabric::Texture;

    #[test]
    fn in_black_denims_are_greys_in_the_order_of_their_lightness() {
        let grey = |colour: &str| {
            Style::Ink.ground(&DrawnCloth {
                colour: colour.into(),
                tile: Some(Tile::Twill),
                photo: None,
            })
        };
        let all = ["#1b2540", "#3a5788", "#7d97bd", "#c9d4dc"].map(grey);
        assert!(all.is_sorted() && all.windows(2).all(|w| w[0] != w[1]));
        let print = DrawnCloth {
            colour: "#1b2540".into(),
            tile: Some(Tile::Print(Texture::Dot)),
            photo: None,
        };
        assert_eq!(Style::Ink.ground(&print), WHITE);
    }
}
