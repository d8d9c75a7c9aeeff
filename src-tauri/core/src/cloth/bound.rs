//! How much of a binding strip is to be seen.
//!
//! A strip of width `w`, folded lengthwise over an edge of thickness `t`, goes up one face, round
//! the edge and down the other, so that each face has `(w − t) / 2` of it. (Plain arithmetic; the
//! cloth's own stretch round the fold is left out.) The edge is
//!
//! * one square thick along most of its way,
//! * two where squares are lapped, or where the allowances of a seam lie open,
//! * one square and both sides of the strip beneath where the strip laps over itself.
//!
//! Limits: an edge thicker than the strip is wide leaves nothing to be seen.
//!
//! ```
//! use lapwork_core::cloth::bound::shows;
//! use lapwork_core::cloth::weight::thick;
//! use lapwork_core::measure::{inches, tenths_of_mm};
//!
//! // A strip of 1 in over an edge of 1 mm: 24.4 mm, half of it on each face.
//! assert_eq!(shows(inches(1), thick(1.0)), tenths_of_mm(122));
//! ```

use crate::cloth::weight::{Cloth, Thickness, in_mm_thick};
use crate::measure::{Length, NM_PER_MM, nm, zero};
use crate::plan::Plan;

/// What shows of the strip on each face.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StripShown {
    /// Along most of the edge.
    pub plain: Length,
    /// Where squares are joined.
    pub on_joins: Length,
    /// Where the strip laps over itself.
    pub on_itself: Length,
}

/// What shows on each face of a strip so wide, over an edge so thick.
pub fn shows(strip: Length, edge: Thickness) -> Length {
    let round = (in_mm_thick(edge) * NM_PER_MM as f64).round() as i64;
    std::cmp::max((strip - nm(round)) / 2, zero())
}

/// What shows of the binding of a throw with `covers` fabric squares on it.
pub fn strip_shown(plan: &Plan, covers: u32, denim: &Cloth, fabric: &Cloth) -> StripShown {
    let share = f64::from(covers) / f64::from(plan.squares().max(1));
    let square = denim.thickness + fabric.thickness * share;
    let at = |edge| shows(plan.binding.strip, edge);
    StripShown {
        plain: at(square),
        on_joins: at(square * 2.0),
        on_itself: at(square + denim.thickness * 2.0),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::weight::thick;
    use crate::measure::{inches, tenths_of_mm};

    /// A cloth as thick as that, in millimetres.
    fn of_mm(mm: f64, cloth: Cloth) -> Cloth {
        Cloth {
            thickness: thick(mm),
            ..cloth
        }
    }

    /// By hand, of a strip of 1 in (25.4 mm) in denim of 0.95 mm: one layer leaves 24.45 mm, two
    /// 23.5 mm, and three, one of the throw and two of the strip beneath, 22.55 mm; half of that
    /// on each face.
    #[test]
    fn a_strip_of_an_inch_shows_a_little_under_half_of_it() {
        let denim = of_mm(0.95, Cloth::denim());
        let found = strip_shown(&Plan::default(), 0, &denim, &Cloth::cotton());
        let want = [12_225_000, 11_750_000, 11_275_000].map(nm);
        assert_eq!([found.plain, found.on_joins, found.on_itself], want);
        // Each of 48 squares with a fabric of 0.3 mm on it: 1.25 mm a square.
        let cotton = of_mm(0.3, Cloth::cotton());
        let found = strip_shown(&Plan::default(), 48, &denim, &cotton);
        let want = [12_075_000, 11_450_000, 11_125_000].map(nm);
        assert_eq!([found.plain, found.on_joins, found.on_itself], want);
    }

    /// A sample of a single square, fabric of 0.3 mm on its denim of 0.95 mm: 1.25 mm are gone round, and
    /// (25.4 − 1.25) / 2 = 12.075 mm show.
    #[test]
    fn of_a_single_square_all_its_fabric_counts() {
        let sample = Plan {
            across: 1,
            down: 1,
            ..Plan::default()
        };
        let found = strip_shown(
            &sample,
            1,
            &of_mm(0.95, Cloth::denim()),
            &of_mm(0.3, Cloth::cotton()),
        );
        assert_eq!(found.plain, nm(12_075_000));
    }

    #[test]
    fn an_edge_thicker_than_the_strip_is_wide_leaves_nothing() {
        assert_eq!(shows(inches(1), thick(30.0)), zero());
        assert_eq!(shows(tenths_of_mm(100), thick(0.0)), tenths_of_mm(50));
    }
}
