//! The largest patch of a piece that is too small for a square.
//!
//! [`largest`] finds the rectangle along the grain with the greatest area, inside the outline and
//! off the zones, whose lower and upper edge lie on marks or on a corner of the outline or an edge
//! of a zone. Every pair of such heights is tried.
//!
//! # Promises (kept by tests)
//!
//! * The patch lies inside the outline and clear of the zones.
//! * No rectangle between two of those heights is larger.

use crate::cloth::cutting::{ClearRect, Cutting, CuttingFault, Patch, ready};
use crate::cloth::garments::Piece;
use crate::measure::in_nm;

/// Most heights that are tried; a piece with more is no small one.
const MOST_HEIGHTS: usize = 500;

/// The largest rectangle of a piece; nothing where it is too large to be asked, or holds none.
///
/// # Errors
/// A [`CuttingFault`] saying what cannot be.
pub fn largest(piece: &Piece, how: &Cutting) -> Result<Option<Patch>, CuttingFault> {
    let (ground, _, step) = ready(piece, how)?;
    let [low, high, ..] = piece.reach().map(in_nm);
    if (high - low) / step > MOST_HEIGHTS as i64 {
        return Ok(None);
    }
    let mut heights: Vec<i64> = (0..=(high - low) / step).map(|i| low + i * step).collect();
    heights.extend(piece.stations.iter().map(|s| in_nm(s.at)));
    heights.extend(
        piece
            .zones
            .iter()
            .flat_map(|z| [in_nm(z.from), in_nm(z.to)]),
    );
    heights.retain(|y| (low..=high).contains(y));
    heights.sort_unstable();
    heights.dedup();
    let mut best: Option<(i128, ClearRect)> = None;
    for (i, from) in heights.iter().enumerate() {
        for to in &heights[i + 1..] {
            ground.across(*from, *to, |left, right| {
                let area = i128::from(to - from) * i128::from(right - left);
                if best.is_none_or(|(most, _)| area > most) {
                    let rect = ClearRect {
                        from: *from,
                        to: *to,
                        left,
                        right,
                    };
                    best = Some((area, rect));
                }
            });
        }
    }
    Ok(best.map(|(_, rect)| rect.patch()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::cutting::tests::{inside, overlap, piece};
    use crate::cloth::garments::{Zone, ZoneKind, yardage};
    use crate::measure::{eighth_inches, inches, zero};
    use proptest::prelude::*;

    /// By hand: 4 by 6 in with its uppermost inch kept clear leaves 4 by 5 in; with a stain of
    /// 1 by 1 in at the lower left, 4 by 4 in above it is more than 3 by 5 in beside it.
    #[test]
    fn a_patch_lies_beside_what_is_kept_clear() {
        let mut small = yardage(inches(4), inches(6));
        let zone = |from: i64, to: i64, right: i64| Zone {
            kind: ZoneKind::Stain,
            from: inches(from),
            to: inches(to),
            left: zero(),
            right: inches(right),
        };
        small.zones = vec![zone(5, 6, 4)];
        let patch = |from: i64, to: i64, left: i64, right: i64| Patch {
            from: inches(from),
            to: inches(to),
            left: inches(left),
            right: inches(right),
        };
        let how = Cutting::default();
        assert_eq!(largest(&small, &how), Ok(Some(patch(0, 5, 0, 4))));
        small.zones.push(zone(0, 1, 1));
        assert_eq!(largest(&small, &how), Ok(Some(patch(1, 5, 0, 4))));
    }

    /// By hand: of a corner cut off square, 8 in along the hem and 8 in high, the largest patch has
    /// half of each side, 4 by 4 in, and no corner of the outline lies there.
    #[test]
    fn a_patch_of_a_corner_has_half_of_each_side() {
        let station = |at: i64, right: i64| crate::cloth::garments::OutlineStation {
            at: inches(at),
            left: zero(),
            right: inches(right),
        };
        let mut corner = yardage(inches(8), inches(8));
        corner.stations = vec![station(0, 8), station(8, 0)];
        let patch = |to: i64, right: i64| Patch {
            from: zero(),
            to: inches(to),
            left: zero(),
            right: inches(right),
        };
        let how = Cutting::default();
        assert_eq!(largest(&corner, &how), Ok(Some(patch(4, 4))));
        // Its lower edge 3 in above where heights are told from.
        for station in &mut corner.stations {
            station.at += inches(3);
        }
        let higher = Patch {
            from: inches(3),
            to: inches(7),
            ..patch(4, 4)
        };
        assert_eq!(largest(&corner, &how), Ok(Some(higher)));
        corner.stations = vec![station(0, 8), station(4, 8), station(8, 4)];
        // 8 − x wide and 4 + x high is most where x = 2: 6 by 6 in.
        assert_eq!(largest(&corner, &how), Ok(Some(patch(6, 6))));
    }

    proptest! {
        #[test]
        fn none_is_larger(
            piece in piece(),
            (from, high, left, wide) in (0i64..120, 1i64..120, -60i64..160, 1i64..160),
        ) {
            let how = Cutting::default();
            let Some(found) = largest(&piece, &how).unwrap() else { return Ok(()) };
            let clear = |p: &Patch| inside(&piece, p) && !piece.zones.iter().any(|z| {
                overlap(p, &Patch { from: z.from, to: z.to, left: z.left, right: z.right })
            });
            prop_assert!(clear(&found));
            let tried = Patch {
                from: eighth_inches(from),
                to: eighth_inches(from + high),
                left: eighth_inches(left),
                right: eighth_inches(left + wide),
            };
            let area = |p: &Patch| i128::from(in_nm(p.to - p.from)) * i128::from(in_nm(p.right - p.left));
            prop_assert!(!clear(&tried) || area(&tried) <= area(&found));
        }
    }
}
