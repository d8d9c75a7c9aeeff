//! Test scraps: a lap and a stitch tried out, with a verdict that may set the plan.
//!
//! Before the first real lap is sewn she tries a lap and a stitch on a scrap. A scrap
//! keeps what was tried and what she thought of it; one tap takes its lap and stitch for
//! the plan. What can be foreseen is worked out beside it: the fringe each side
//! ([`crate::plan::fringe`]), the thickness of the layers, and whether a twin needle
//! clears the plate: the widest stitch to be set is the plate's opening less the needle
//! spacing (common practice, no source; the machine's manual decides).
//!
//! Thickness is the sum of the layers (denim 0.95 mm, quilting cotton 0.28 mm, from
//! memory, unless the pile says otherwise).

use crate::measure::{Length, zero};
use crate::plan::{Joining, Stitch};
use crate::types::TS;
use serde::{Deserialize, Serialize};

/// What she thought of a scrap.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum ScrapVerdict {
    /// It is right.
    Right,
    /// Too little fringe: the thread works out.
    LittleFringe,
    /// Too stiff or bulky.
    Bulky,
    /// It puckers or the stitches skip.
    Puckers,
    /// Something else, in the note.
    Other,
}

impl ScrapVerdict {
    /// All of them.
    pub const ALL: [ScrapVerdict; 5] = [
        ScrapVerdict::Right,
        ScrapVerdict::LittleFringe,
        ScrapVerdict::Bulky,
        ScrapVerdict::Puckers,
        ScrapVerdict::Other,
    ];

    /// Its name in the language files.
    pub fn key(self) -> &'static str {
        match self {
            ScrapVerdict::Right => "right",
            ScrapVerdict::LittleFringe => "little-fringe",
            ScrapVerdict::Bulky => "bulky",
            ScrapVerdict::Puckers => "puckers",
            ScrapVerdict::Other => "other",
        }
    }
}

/// One scrap.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Scrap {
    /// Lap or seam.
    pub joining: Joining,
    /// Its lap or allowance.
    pub lap: Length,
    /// Its stitch.
    pub stitch: Stitch,
    /// What she thought.
    pub verdict: ScrapVerdict,
    /// In her words, if she wrote any.
    pub note: String,
}

/// The widest stitch that may be set with this needle over a plate opening so wide:
/// `opening − spacing`. `None` where the needle itself does not clear the plate.
pub fn widest_stitch(opening: Length, stitch: Stitch) -> Option<Length> {
    let left = match stitch {
        Stitch::Twin { spacing } => opening - spacing,
        Stitch::Straight | Stitch::TwoRows { .. } | Stitch::Zigzag { .. } => opening,
    };
    (left >= zero()).then_some(left)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::tenths_of_mm;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn needles_and_stitch_together_never_outgrow_the_plate(opening in 0i64..120, spacing in 0i64..80) {
            let stitch = Stitch::Twin { spacing: tenths_of_mm(spacing) };
            match widest_stitch(tenths_of_mm(opening), stitch) {
                Some(widest) => prop_assert_eq!(widest + tenths_of_mm(spacing), tenths_of_mm(opening)),
                None => prop_assert!(spacing > opening),
            }
        }
    }
}
