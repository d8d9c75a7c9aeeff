//! The finished piece against the plan: where the difference came from.
//!
//! In each direction the difference is the measured size less the foreseen one, which is
//! the plan's with what squaring up and marked laps made of it; per lap it is divided by
//! the number of laps that run across that direction, `n − 1` for `n` squares. It is the
//! give of the cloth and the sewing. Cloth gives up to 2 % in making up (common practice,
//! no source).
//!
//! Washing changes the size too. Laps are therefore judged only by what was measured before the
//! first wash; later measures are compared with an earlier one ([`before`]).
//!
//! Change of size in washing is `100 · (after − before) / before` per cent, less than
//! nothing for shrinkage (ISO 5077, Textiles: determination of dimensional change in
//! washing and drying; the formula as in the trade notes).

use crate::measure::{Length, in_mm, in_nm, nm};
use crate::plan::assembly::Seam;
use crate::throw::{Size, Throw, WholeMeasure};

/// Cloth gives up to this share of a length in making up (common practice, no source).
pub const GIVE: f64 = 0.02;

/// One direction of the finished piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Direction {
    /// The seams that lie across it: upright for the width.
    pub seam: Seam,
    /// As foreseen from what was squared up and how it was lapped.
    pub foreseen: Length,
    /// As measured.
    pub measured: Length,
    /// Measured less foreseen.
    pub off: Length,
    /// How many laps share it.
    pub laps: u16,
    /// The difference for each lap, to the nanometre; none where there is no lap.
    pub per_lap: Option<Length>,
    /// Whether the difference lies within the give of the cloth.
    pub within_give: bool,
}

/// Both directions of a measured whole.
pub fn reconcile(throw: &Throw, measured: Size) -> [Direction; 2] {
    let foreseen = throw.finished();
    let one = |seam, foreseen: Length, measured: Length, squares: u16| {
        let off = measured - foreseen;
        let laps = squares - 1;
        Direction {
            seam,
            foreseen,
            measured,
            off,
            laps,
            per_lap: (laps > 0).then(|| nm(in_nm(off) / i64::from(laps.max(1)))),
            within_give: in_mm(off).abs() <= in_mm(foreseen) * GIVE,
        }
    };
    let (width, height) = (measured.width, measured.height);
    [
        one(Seam::Upright, foreseen.width, width, throw.plan.across),
        one(Seam::Level, foreseen.height, height, throw.plan.down),
    ]
}

/// What a measure after so many washes is set against: the whole as it was first measured
/// after fewest of them.
pub fn before(throw: &Throw, washes: u8) -> Option<WholeMeasure> {
    let earlier = throw.wholes.iter().filter(|w| w.washes < washes);
    earlier.min_by_key(|w| w.washes).copied()
}

/// Change of size by ISO 5077, in per cent; `None` where there was nothing before.
pub fn change(before: Length, after: Length) -> Option<f64> {
    (in_nm(before) > 0).then(|| 100.0 * in_mm(after - before) / in_mm(before))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fitting::tests::begun;
    use crate::measure::{half_inches, inches, sixty_fourths, zero};
    use crate::plan::Plan;

    /// Common practice, no source: a real 6 × 8 throw of 5 in squares and ½ in laps came
    /// out 27½ × 36 in: ½ in short over 7 laps, nothing across.
    #[test]
    fn half_an_inch_short_over_seven_laps() {
        let plan = Plan::default();
        let throw = begun(plan);
        let measured = Size {
            width: half_inches(55),
            height: inches(36),
        };
        let [across, down] = reconcile(&throw, measured);
        assert_eq!((across.off, across.laps), (nm(0), 5));
        assert_eq!((down.off, down.laps), (nm(0) - half_inches(1), 7));
        assert_eq!(down.per_lap, Some(nm(-12_700_000 / 7)));
        assert!(across.within_give && down.within_give);
        let short = Size {
            height: inches(35),
            ..measured
        };
        assert!(!reconcile(&throw, short)[1].within_give);
    }

    /// By hand: 2 % of 36½ in is 0.73 in. 11/16 in (0.69) is within it either way, ¾ in is not.
    #[test]
    fn cloth_gives_two_in_a_hundred() {
        let throw = begun(Plan::default());
        let within = |off: Length| {
            let measured = Size {
                width: half_inches(55),
                height: half_inches(73) + off,
            };
            reconcile(&throw, measured)[1].within_give
        };
        let given = sixty_fourths(44);
        assert!(within(given) && within(zero() - given));
        let more = sixty_fourths(48);
        assert!(!within(more) && !within(zero() - more));
    }

    /// By hand: of a piece of one square of 500 mm, 2 % are 10 mm, which the cloth still gives. It has
    /// no lap to share them.
    #[test]
    fn a_single_square_has_no_lap_to_share_what_is_off() {
        let plan = Plan {
            side: nm(500_000_000),
            across: 1,
            down: 1,
            ..Plan::default()
        };
        let measured = Size {
            width: nm(510_000_000),
            height: nm(490_000_000) - nm(1),
        };
        let [across, down] = reconcile(&begun(plan), measured);
        assert_eq!((across.off, across.laps), (nm(10_000_000), 0));
        assert_eq!((across.per_lap, down.per_lap), (None, None));
        assert!(across.within_give && !down.within_give);
        // Two squares have one lap, which takes all of it.
        let pair = begun(Plan { across: 2, ..plan });
        let measured = Size {
            width: pair.finished().width + nm(6_000_000),
            height: pair.finished().height,
        };
        let [across, _] = reconcile(&pair, measured);
        assert_eq!((across.laps, across.per_lap), (1, Some(nm(6_000_000))));
    }

    /// A measure is set against the first one after fewer washes, never against one of its own wash.
    #[test]
    fn a_measure_is_set_against_an_earlier_wash() {
        let mut throw = begun(Plan::default());
        let at = |washes, mm: i64| WholeMeasure {
            size: Size {
                width: nm(mm * 1_000_000),
                height: nm(mm * 1_000_000),
            },
            washes,
            at: 0,
        };
        throw.wholes = vec![at(1, 690), at(1, 688), at(2, 680)];
        assert_eq!(before(&throw, 2), Some(at(1, 690)));
        assert_eq!(before(&throw, 1), None);
        assert_eq!(before(&throw, 0), None);
        // The whole has no size as measured before it is in one piece.
        assert_eq!(throw.measured_whole(), None);
    }

    #[test]
    fn change_of_size() {
        assert_eq!(change(nm(1_000_000_000), nm(970_000_000)), Some(-3.0));
        assert_eq!(change(nm(0), nm(5)), None);
    }
}
