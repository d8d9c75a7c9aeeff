//! How a drawing is inked, and the refusal of one that is of no piece.

use super::page::{Hold, Set};
use crate::command::Rejection;
use crate::show::context::Context;
use crate::show::errors::rejection;
use crate::throw::Throw;
use crate::words::Problem;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

pub(super) const DARK: &str = "#1b2540";

pub(super) const LIGHT: &str = "#fff8ea";

/// How a drawing is coloured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Style {
    /// In the colours of the cloths.
    #[default]
    Colour,
    /// Black on white: textures and letters only.
    Ink,
}

impl Style {
    /// Lines and letters.
    pub(super) fn dark(self) -> &'static str {
        match self {
            Style::Colour => DARK,
            Style::Ink => "#000000",
        }
    }

    /// What letters stand on.
    pub(super) fn plate(self) -> &'static str {
        match self {
            Style::Colour => LIGHT,
            Style::Ink => "#ffffff",
        }
    }

    /// How words are set.
    pub(super) fn set(self, size: f64, bold: bool, hold: Hold) -> Set {
        Set {
            size,
            bold,
            hold,
            fill: self.dark(),
        }
    }
}

/// The refusal for a piece that is not there.
pub(super) fn no_piece(throw: &Throw, context: Context<'_>) -> Problem {
    rejection(&Rejection::Pile, Some(throw), context)
}
