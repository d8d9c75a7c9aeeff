//! The fringe beside the stitching, and the narrowest lap that leaves enough of it.
//!
//! The fringe is what stays free of the stitching on each side of a lap:
//! `(o − stitched width) / 2`, where `o` is the lap; the stitched width is nothing for one straight
//! row, the needle spacing for a twin needle, the distance from row to row for two rows with a
//! single needle, the stitch width for a zigzag. On
//! an exposed seam the whole allowance beyond the stitching stands free:
//! `a − stitched width / 2`, where `a` is the allowance. A plain seam has no fringe. (Plain arithmetic.)
//! What the seam takes up is measured to the row at the other side ([`Plan::take`]).
//!
//! The same arithmetic says where each row runs ([`rows`]): the middle of the rows lies in the middle
//! of the lap, or one allowance in from the raw edges.
//!
//! The limit for the joins of a throw is [`crate::throw::fringe`].

use crate::measure::{Length, nm};
use crate::plan::{Joining, Plan, Stitch};

impl Plan {
    /// Free edge each side of the stitching, which may come out negative; none on a plain seam.
    pub fn fringe(&self) -> Option<Length> {
        self.fringe_at(self.lap)
    }

    /// The same where the edges are lapped by this much.
    pub fn fringe_at(&self, lap: Length) -> Option<Length> {
        fringe(self.joining, lap, self.stitch)
    }

    /// The narrowest lap (or allowance) that leaves `least_fringe`: `w + 2f`, or `f + w/2`.
    /// A plain seam has no fringe; under 5 mm it pulls out (common practice, no source).
    pub fn narrowest_lap(&self) -> Length {
        match self.joining {
            Joining::Lapped => self.stitch.width() + self.least_fringe * 2,
            Joining::Exposed => self.least_fringe + self.stitch.width() / 2,
            Joining::Seamed => nm(5_000_000),
        }
    }
}

/// The fringe a join of this kind leaves on each side of its stitching.
pub fn fringe(joining: Joining, lap: Length, stitch: Stitch) -> Option<Length> {
    match joining {
        Joining::Lapped => Some((lap - stitch.width()) / 2),
        Joining::Exposed => Some(lap - stitch.width() / 2),
        Joining::Seamed => None,
    }
}

/// How far each row of stitching runs from the raw edge that lies on top, the nearest first. A
/// zigzag is one row about its middle.
pub fn rows(joining: Joining, lap: Length, stitch: Stitch) -> Vec<Length> {
    let middle = match joining {
        Joining::Lapped => lap / 2,
        Joining::Seamed | Joining::Exposed => lap,
    };
    match stitch {
        Stitch::Straight | Stitch::Zigzag { .. } => vec![middle],
        Stitch::Twin { spacing } | Stitch::TwoRows { spacing } => {
            vec![middle - spacing / 2, middle - spacing / 2 + spacing]
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{half_inches, tenths_of_mm};

    /// Half an inch is 12.7 mm. Two rows 5 mm apart leave 7.7 mm, half of it on either side: the
    /// first row runs 3.85 mm from the raw edge and the second 8.85 mm from it, 3.85 mm from the
    /// other raw edge.
    #[test]
    fn two_rows_lie_about_the_middle_of_the_lap() {
        let (lap, spacing) = (half_inches(1), tenths_of_mm(50));
        let two = Stitch::TwoRows { spacing };
        assert_eq!(
            rows(Joining::Lapped, lap, two),
            [nm(3_850_000), nm(8_850_000)]
        );
        assert_eq!(fringe(Joining::Lapped, lap, two), Some(nm(3_850_000)));
        assert_eq!(rows(Joining::Lapped, lap, Stitch::Straight), [lap / 2]);
        // A twin needle of that spacing runs the same two rows at once.
        let twin = Stitch::Twin { spacing };
        assert_eq!(
            rows(Joining::Lapped, lap, twin),
            rows(Joining::Lapped, lap, two)
        );
        assert_eq!((twin.passes(), two.passes()), (1, 2));
        assert_eq!(
            rows(Joining::Exposed, lap, two),
            [nm(10_200_000), nm(15_200_000)]
        );
    }
}
