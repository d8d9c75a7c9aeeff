//! Squares pieced of two halves: which rows of halves to cut from what the squares leave.
//!
//! A leg seldom comes out even: beside the squares of a strip, and between the strips, cloth is
//! left that is a square long and only part of a square wide. Two such halves are lapped with the
//! throw's own lap, and glued, pressed, cooled and stitched as a lap of the throw is, into one
//! square: half + half − lap = the side as cut, so that a half is [`width`] wide, rounded up to the
//! nanometre.
//!
//! # The rule
//!
//! * Whole squares come first: the strips and the squares on them are those of the layout without
//!   halves, and none of them is moved.
//! * Beside the squares of a strip, in each free stretch, lies a half where there is room for
//!   one. It is upright: its lap will run along the piece.
//! * Between the strips, below them and above them, rows of halves are cut straight across: rows as
//!   high as a square whose halves are upright, and rows as high as a half is wide whose halves lie
//!   across. A row begins at a mark of the ruler, counted from the lower edge of the free band.
//! * **Grain**: two upright halves make a square, or two that lie across, never one of each: their
//!   lengthwise threads would cross, and the square would stretch unevenly. Both halves of a
//!   square come from the same piece of cloth, so that they are of one denim.
//!
//! [`rows`] finds the rows that give most pairs; among equals the fewest rows, and then those
//! nearest the hem. (Dynamic programming over the marks; what is carried on is whether a half of
//! either kind still wants its other half.)
//!
//! # Promises (kept by tests)
//!
//! * No other choice of rows at these marks gives more pieced squares.
//! * Every half lies wholly on the cloth, clear of zones, squares, binding and the other halves.
//! * The whole squares are as many as without halves.
//!
//! # Limits
//!
//! The strips are not moved to leave better remnants, which could give more halves.

use crate::measure::{Length, in_nm, nm};

/// How wide each of two halves is that make a square of this side where they are lapped.
pub fn width(side: Length, lap: Length) -> Length {
    let both = in_nm(side + lap);
    nm(both.div_euclid(2) + both.rem_euclid(2))
}

/// Free cloth all across the piece between two heights.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Band {
    /// Where a row may begin, from the lower edge up.
    pub(super) marks: Vec<i64>,
    /// How many upright halves a row from each mark gives; none where it does not fit.
    pub(super) upright: Vec<u32>,
    /// How many halves a row of those that lie across gives.
    pub(super) lying: Vec<u32>,
}

/// A row of halves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct HalfRow {
    /// Which band, counted from 0.
    pub(super) band: usize,
    /// Its lower edge.
    pub(super) from: i64,
    /// Its halves are upright.
    pub(super) upright: bool,
}

/// Pairs are worth more than any number of rows saved.
const PAIR: i64 = 1 << 32;

/// The rows that give most pairs, `strips` upright halves being there already; `side` and `half`
/// are how high the two kinds of rows are.
pub(super) fn rows(bands: &[Band], strips: u32, [side, half]: [i64; 2]) -> Vec<HalfRow> {
    // From each mark on, by band, by what wants its other half: pairs, less rows.
    type Best = [[i64; 2]; 2];
    let mut from: Vec<Vec<Best>> = Vec::with_capacity(bands.len());
    let after =
        |marks: &[i64], i: usize, high: i64| marks.partition_point(|m| *m < marks[i] + high);
    let offers = |band: &Band, best: &[Best], i: usize, [u, l]: [usize; 2]| {
        let taken = |n: u32, high: i64, upright: bool| {
            let odd = n as usize + if upright { u } else { l };
            let left = if upright { [odd % 2, l] } else { [u, odd % 2] };
            let on = best[after(&band.marks, i, high)];
            (n > 0).then(|| on[left[0]][left[1]] + odd as i64 / 2 * PAIR - 1)
        };
        [
            Some(best[i + 1][u][l]),
            taken(band.upright[i], side, true),
            taken(band.lying[i], half, false),
        ]
    };
    let mut above: Best = [[0; 2]; 2];
    for band in bands.iter().rev() {
        let n = band.marks.len();
        let mut best = vec![above; n + 1];
        for i in (0..n).rev() {
            for state in [[0, 0], [0, 1], [1, 0], [1, 1]] {
                let most = offers(band, &best, i, state).into_iter().flatten().max();
                best[i][state[0]][state[1]] = most.unwrap_or(0);
            }
        }
        above = best[0];
        from.push(best);
    }
    from.reverse();
    let mut state = [strips as usize % 2, 0];
    let mut out = Vec::new();
    for (nth, (band, best)) in bands.iter().zip(&from).enumerate() {
        let mut i = 0;
        while i < band.marks.len() {
            let [skip, upright, lying] = offers(band, best, i, state);
            let row = |upright| HalfRow {
                band: nth,
                from: band.marks[i],
                upright,
            };
            if upright.is_some() && upright >= lying && upright >= skip {
                out.push(row(true));
                state[0] = (state[0] + band.upright[i] as usize) % 2;
                i = after(&band.marks, i, side);
            } else if lying.is_some() && lying >= skip {
                out.push(row(false));
                state[1] = (state[1] + band.lying[i] as usize) % 2;
                i = after(&band.marks, i, half);
            } else {
                i += 1;
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::cutting::tests::{inside, overlap, piece};
    use crate::cloth::cutting::{CutPlan, Cutting, Half, Patch, lay_out, ready};
    use crate::cloth::garments::{Piece, Zone, ZoneKind, yardage};
    use crate::measure::{eighth_inches, half_inches, inches, quarter_inches, zero};
    use proptest::prelude::*;

    fn pieced(side: Length, lap: Length) -> Cutting {
        Cutting {
            side,
            half: Some(width(side, lap)),
            ..Cutting::default()
        }
    }

    /// Five inches lapped by ½ in: twice 2¾ in less ½ in are 5 in.
    #[test]
    fn two_halves_and_their_lap_are_a_square() {
        let half = width(inches(5), half_inches(1));
        assert_eq!(half, quarter_inches(11));
        assert_eq!(half * 2 - half_inches(1), inches(5));
        // What is odd is rounded up, so that no square is short.
        assert_eq!(width(nm(10), nm(3)), nm(7));
    }

    /// By hand: 8 in wide, 13 in long. Two strips give one square each and 3 in beside it: an
    /// upright half each, a square together. Above them 3 in are left: one row of 2¾ in gives one
    /// half of 5 in that lies across, and finds none to go with.
    #[test]
    fn halves_lie_beside_the_squares_and_above_them() {
        let how = pieced(inches(5), half_inches(1));
        let plan = lay_out(&yardage(inches(8), inches(13)), &how).unwrap();
        assert_eq!((plan.count, plan.pieced), (3, 1));
        let at = |half: &Half| (half.patch.left, half.patch.from, half.upright);
        let found: Vec<_> = plan.halves.iter().map(at).collect();
        assert_eq!(
            found,
            [(inches(5), zero(), true), (inches(5), inches(5), true)]
        );
        // 10 in wide: no room beside the squares, and two halves above them.
        let plan = lay_out(&yardage(inches(10), inches(13)), &how).unwrap();
        assert_eq!((plan.count, plan.pieced), (5, 1));
        assert!(plan.halves.iter().all(|half| !half.upright));
        // A cloth narrower than a square gives only halves: two of 5 in length.
        let plan = lay_out(&yardage(inches(3), inches(10)), &how).unwrap();
        assert_eq!((plan.count, plan.pieced, plan.strips.len()), (1, 1, 0));
        // One half more or less than two is no square: an upright one and one across.
        let plan = lay_out(&yardage(inches(8), inches(8)), &how).unwrap();
        assert_eq!((plan.count, plan.pieced), (1, 0));
        assert!(plan.halves.is_empty());
    }

    #[test]
    fn a_half_as_wide_as_a_square_is_refused() {
        for half in [inches(5), half_inches(5)] {
            let how = Cutting {
                half: Some(half),
                ..Cutting::default()
            };
            assert!(lay_out(&yardage(inches(20), inches(20)), &how).is_err());
        }
    }

    /// The most pairs, by trying every choice of rows one after another, without any table.
    fn by_trying(bands: &[Band], state: (usize, i64), counts: [u32; 2], high: [i64; 2]) -> u32 {
        let (nth, at) = state;
        let Some(band) = bands.get(nth) else {
            return counts[0] / 2 + counts[1] / 2;
        };
        let mut most = by_trying(bands, (nth + 1, i64::MIN), counts, high);
        for (i, mark) in band.marks.iter().enumerate().filter(|(_, m)| **m >= at) {
            for (kind, of) in [&band.upright, &band.lying].into_iter().enumerate() {
                if of[i] > 0 {
                    let mut counts = counts;
                    counts[kind] += of[i];
                    let next = (nth, mark + high[kind]);
                    most = most.max(by_trying(bands, next, counts, high));
                }
            }
        }
        most
    }

    /// The most pairs of so many rows at most, likewise.
    fn with_so_many(
        bands: &[Band],
        state: (usize, i64),
        counts: [u32; 2],
        high: [i64; 2],
        most_rows: usize,
    ) -> u32 {
        let (nth, at) = state;
        let mut most = counts[0] / 2 + counts[1] / 2;
        if most_rows == 0 {
            return most;
        }
        for (n, band) in bands.iter().enumerate().skip(nth) {
            for (i, mark) in band.marks.iter().enumerate() {
                if n == nth && *mark < at {
                    continue;
                }
                for (kind, of) in [&band.upright, &band.lying].into_iter().enumerate() {
                    let mut counts = counts;
                    counts[kind] += of[i];
                    let next = (n, mark + high[kind]);
                    most = most.max(with_so_many(bands, next, counts, high, most_rows - 1));
                }
            }
        }
        most
    }

    /// By hand: two rows of a half each make a pair, and so does one row of two between them; that one is
    /// taken. Of rows that give as much the one nearest the hem is taken.
    #[test]
    fn few_rows_near_the_hem_are_taken() {
        let band = |upright: [u32; 4], lying: [u32; 4]| Band {
            marks: vec![0, 1, 2, 3],
            upright: upright.to_vec(),
            lying: lying.to_vec(),
        };
        let taken = |band: Band, strips| {
            let rows = rows(&[band], strips, [2, 1]);
            let each = rows.iter().map(|row| (row.from, row.upright));
            each.collect::<Vec<_>>()
        };
        let none = [0; 4];
        assert_eq!(taken(band([1, 2, 1, 0], none), 0), [(1, true)]);
        assert_eq!(taken(band(none, [0, 2, 2, 0]), 0), [(1, false), (2, false)]);
        assert_eq!(taken(band([0, 2, 2, 2], none), 0), [(1, true), (3, true)]);
        assert_eq!(taken(band([1, 1, 0, 0], none), 1), [(0, true)]);
        // An odd one is no pair, unless a strip has one to go with it.
        assert_eq!(taken(band([1, 0, 0, 0], [0, 0, 1, 0]), 0), []);
        assert_eq!(taken(band([1, 0, 0, 0], [0, 0, 1, 0]), 1), [(0, true)]);
    }

    fn bands() -> impl Strategy<Value = Vec<Band>> {
        let band = prop::collection::vec((0u32..4, 0u32..4), 0..6).prop_map(|counts| Band {
            marks: (0..counts.len() as i64).collect(),
            upright: counts.iter().map(|c| c.0).collect(),
            lying: counts.iter().map(|c| c.1).collect(),
        });
        prop::collection::vec(band, 0..3)
    }

    fn squares(plan: &CutPlan) -> Vec<Patch> {
        let each = |strip: &crate::cloth::cutting::Strip| {
            let side = strip.to - strip.from;
            let (from, to) = (strip.from, strip.to);
            let patch = move |left: &Length| Patch {
                from,
                to,
                left: *left,
                right: *left + side,
            };
            strip.squares.iter().map(patch).collect::<Vec<_>>()
        };
        plan.strips.iter().flat_map(each).collect()
    }

    fn torn(piece: &Piece, from: i64, high: i64) -> Piece {
        let [_, _, left, right] = piece.reach();
        let mut piece = piece.clone();
        piece.zones.push(Zone {
            kind: ZoneKind::Hole,
            from: eighth_inches(from),
            to: eighth_inches(from + high),
            left,
            right,
        });
        piece
    }

    proptest! {
        #[test]
        fn no_choice_of_rows_gives_more(
            bands in bands(), strips in 0u32..4, side in 1i64..5, half in 1i64..4,
        ) {
            let found = rows(&bands, strips, [side, half]);
            let mut counts = [strips, 0];
            let mut free = vec![i64::MIN; bands.len()];
            for row in &found {
                let band = &bands[row.band];
                let i = band.marks.iter().position(|m| *m == row.from).unwrap();
                prop_assert!(row.from >= free[row.band]);
                free[row.band] = row.from + if row.upright { side } else { half };
                let [of, kind] = if row.upright { [band.upright[i], 0] } else { [band.lying[i], 1] };
                counts[kind as usize] += of;
            }
            let told = counts[0] / 2 + counts[1] / 2;
            // Among equals the fewest rows: with one row less none gives as many.
            let fewest = found.len().saturating_sub(1);
            let fewer = with_so_many(&bands, (0, i64::MIN), [strips, 0], [side, half], fewest);
            prop_assert!(found.is_empty() || fewer < told);
            prop_assert_eq!(told, by_trying(&bands, (0, i64::MIN), [strips, 0], [side, half]));
        }

        /// On random tapered pieces: what the halves promise, and their number by a second way,
        /// from the outline, squares and zones alone and every choice of rows tried.
        #[test]
        fn halves_lie_clear_on_the_cloth(
            piece in piece(), side in 24i64..72, lap in 2i64..7, from in 0i64..160, high in 0i64..9,
        ) {
            let piece = if high > 0 { torn(&piece, from, high) } else { piece };
            let side = eighth_inches(side);
            let how = Cutting { step: half_inches(1), ..pieced(side, eighth_inches(lap)) };
            let (Ok(plan), Ok(bare)) =
                (lay_out(&piece, &how), lay_out(&piece, &Cutting { half: None, ..how }))
                else { return Ok(()) };
            prop_assert_eq!(&plan.strips, &bare.strips);
            prop_assert_eq!(plan.count, bare.count + plan.pieced);
            prop_assert_eq!(plan.halves.len() as u32, plan.pieced * 2);
            let whole = squares(&plan);
            for (i, half) in plan.halves.iter().enumerate() {
                let [wide, tall] = half.size();
                let size = if half.upright { [wide, tall] } else { [tall, wide] };
                prop_assert_eq!(size, [how.half.unwrap(), side]);
                prop_assert!(inside(&piece, &half.patch));
                let others = whole.iter().chain(plan.halves[..i].iter().map(|h| &h.patch));
                for other in others {
                    prop_assert!(!overlap(&half.patch, other));
                }
                for z in &piece.zones {
                    let zone = Patch { from: z.from, to: z.to, left: z.left, right: z.right };
                    prop_assert!(!overlap(&half.patch, &zone));
                }
            }
            prop_assert_eq!(plan.halves.iter().filter(|h| h.upright).count() % 2, 0);

            let ways: Vec<(usize, bool)> = (0..plan.halves.len())
                .map(|n| (plan.pair_of(n), plan.halves[n].upright))
                .collect();
            for pair in 0..plan.pieced as usize {
                let own: Vec<bool> = ways.iter().filter(|w| w.0 == pair).map(|w| w.1).collect();
                prop_assert!(own == [true; 2] || own == [false; 2]);
            }

            // A second way: what is free between two heights, less the squares.
            let (ground, s, step) = ready(&piece, &how).unwrap();
            let h = in_nm(how.half.unwrap());
            let free = |a: i64, b: i64, wide: i64| {
                let mut n = 0;
                ground.across(a, b, |left, right| n += u32::try_from((right - left) / wide).unwrap());
                n
            };
            let mut strips = 0;
            for strip in &plan.strips {
                ground.across(in_nm(strip.from), in_nm(strip.to), |left, right| {
                    strips += u32::from((right - left) % s >= h);
                });
            }
            let [low, top, ..] = piece.reach().map(in_nm);
            let mut edges = vec![low];
            let mut cuts: Vec<[i64; 2]> = plan.strips.iter().map(|p| [in_nm(p.from), in_nm(p.to)]).collect();
            cuts.sort_unstable();
            edges.extend(cuts.iter().flatten());
            edges.push(top);
            // Trying every choice takes too long where a tall band is free.
            let bands: Vec<Band> = edges.chunks(2).map(|e| {
                let marks: Vec<i64> = (0..).map(|i| e[0] + i * step).take_while(|m| m + h <= e[1]).collect();
                Band {
                    upright: marks.iter().map(|m| if m + s <= e[1] { free(*m, m + s, h) } else { 0 }).collect(),
                    lying: marks.iter().map(|m| free(*m, m + h, s)).collect(),
                    marks,
                }
            }).collect();
            if bands.iter().map(|b| b.marks.len()).sum::<usize>() <= 16 {
                prop_assert_eq!(plan.pieced, by_trying(&bands, (0, i64::MIN), [strips, 0], [s, h]));
            }
        }
    }
}
