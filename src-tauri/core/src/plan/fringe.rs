//! The fringe beside the stitching, and the narrowest lap that leaves enough of it.
//!
//! The fringe is what stays free of the stitching on each side of a lap:
//! `(o − stitched width) / 2`, where `o` is the lap; the stitched width is nothing for one straight
//! row, the needle spacing for a twin needle, the stitch width for a zigzag. On
//! an exposed seam the whole allowance beyond the stitching stands free:
//! `a − stitched width / 2`, where `a` is the allowance. A plain seam has no fringe. (Plain arithmetic.)
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
    pub(super) fn fringe_at(&self, lap: Length) -> Option<Length> {
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
