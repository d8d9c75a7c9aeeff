//! How drawings are made: what a face and a piece look like, the textures of cloth, and the one
//! writer of SVG, by which pictures come to paper. The drawings that leave the app are here too:
//! one face of the throw and one piece of the pile, each a stand-alone SVG 1.1 document.
//!
//! Exported drawings are meant for paper, for a pinboard, or for another drawing program, so they
//! contain their own patterns, words and legend and refer to nothing outside. In
//! [`Style::Ink`] they use only black, white and, for denims, greys as light as the cloth.
//!
//! Promises: what the maker typed is escaped, and characters that XML 1.0 (section 2.2)
//! does not allow are left out; no text and no mark lies outside the view box, since texts are
//! broken by a width estimated for a wide typeface; the same throw, words and ruler
//! give the same bytes.

pub(super) mod canvas;
pub(super) mod face;
mod face_page;
pub(super) mod face_window;
mod inks;
pub(super) mod letters;
pub(super) mod piece;
mod piece_page;
mod svg;
pub(super) mod tiles;

use crate::cloth::fabric::Face;
use crate::cloth::garments::Source;
use crate::log::journal::Journal;
use crate::show::context::Context;
use crate::show::tables::slug;
use crate::throw::Throw;
use crate::types::TS;
use crate::words::Problem;
use serde::{Deserialize, Serialize};

pub use face_page::face_svg;
pub use inks::Style;
pub use piece_page::piece_svg;
pub use svg::{ClothPhotos, SvgPaper, svg};
pub use tiles::{tiles, twills};

/// A drawing that can be had.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "of")]
pub enum Drawing {
    /// One face of the throw.
    Face {
        /// Which.
        face: Face,
    },
    /// One piece on the pile, with where to cut it.
    Piece {
        /// The heap.
        n: u16,
        /// The piece, counted from 0.
        index: u8,
    },
}

impl Drawing {
    /// Every drawing of a throw: the faces, then the pieces of the pile that have an outline.
    pub fn all(throw: &Throw) -> Vec<Drawing> {
        let faces = [Face::Front, Face::Back].map(|face| Drawing::Face { face });
        let pieces = throw.pile.iter().flat_map(|(n, heap)| {
            let pieces = match &heap.from {
                Source::Cloth(garment) => garment.pieces.len(),
                Source::Precut(_) => 0,
            };
            (0..pieces).filter_map(|i| {
                let index = u8::try_from(i).ok()?;
                Some(Drawing::Piece { n: *n, index })
            })
        });
        faces.into_iter().chain(pieces).collect()
    }

    /// What it is called on the command line: `front`, `back`, `piece-2-1` (heap, piece from 1).
    pub fn key(self) -> String {
        match self {
            Drawing::Face { face: Face::Front } => "front".into(),
            Drawing::Face { face: Face::Back } => "back".into(),
            Drawing::Piece { n, index } => format!("piece-{n}-{}", u16::from(index) + 1),
        }
    }

    /// The drawing itself, with photos of the cloths where `photos` gives them.
    ///
    /// # Errors
    /// A [`Problem`] when there is no such piece on the pile.
    pub fn svg(
        self,
        journal: &Journal,
        style: Style,
        photos: &ClothPhotos<'_>,
        context: Context<'_>,
    ) -> Result<String, Problem> {
        match self {
            Drawing::Face { face } => Ok(face_svg(journal, face, style, photos, context)),
            Drawing::Piece { n, index } => piece_svg(journal, (n, index), style, photos, context),
        }
    }

    /// A name for the file, safe on every system: letters, digits and hyphens.
    pub fn file_name(self, throw: &Throw, context: Context<'_>) -> String {
        let what = match self {
            Drawing::Face { face: Face::Front } => say!(context, "file-front"),
            Drawing::Face { face: Face::Back } => say!(context, "file-back"),
            Drawing::Piece { n, index } => {
                let name = throw.pile.get(&n).map_or("", |heap| heap.name());
                let piece = u16::from(index) + 1;
                format!("{} {n} {piece}", slug(name, "", 30))
            }
        };
        format!("{}.svg", slug(&throw.name, &what, 60))
    }
}
