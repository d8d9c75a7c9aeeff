//! The order in which a piece is cut with a ruler and a rotary cutter.
//!
//! First the edge is cut straight above the hem, as low as anything begins that is to be cut;
//! then strips for the binding, which run through what the cuts across would chop up; then
//! strip after strip of squares, each measured from the last cut across, and its squares off it
//! from the left. Where strips are measured from the upper edge too, that edge is cut straight
//! next, and then strip after strip down from it. A piece that is cut turned is turned first of
//! all. A half beside the squares of a strip comes off with them; rows of halves are cut then out
//! of what lies between the strips. What is left and worth keeping comes last.

use crate::cloth::cutting::{CutPlan, Half, Patch};
use crate::cloth::garments::Piece;
use crate::measure::{Length, zero};

/// Where cloth lies that is cut into rows of halves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HalvesLie {
    /// Below this strip, counted from 0.
    Below(usize),
    /// Above this strip, and no other is above it.
    Above(usize),
    /// No strip is cut off the piece.
    Alone,
}

/// One line of a piece's cutting list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CutStep {
    /// Lay the piece on its side, the hem to the left.
    Turn,
    /// Cut straight across so far above the lower edge, to begin from.
    Straight {
        /// Height above the lower edge of the cloth.
        above: Length,
    },
    /// Cut a strip for the binding.
    Binding {
        /// The strip.
        patch: Patch,
        /// How far above the straight edge it begins, or above the lower edge of the cloth where
        /// none was cut.
        above: Length,
    },
    /// Cut straight across so far below the upper edge, to measure down from.
    Top {
        /// Depth below the upper edge of the cloth.
        below: Length,
    },
    /// Cut a strip across and squares off it.
    Strip {
        /// Which of the layout's strips, counted from 0.
        nth: usize,
        /// What is cut away first, from the last cut edge; nothing where the strip begins there.
        gap: Length,
        /// It is measured down from the upper edge, or from the strip cut there before.
        from_top: bool,
        /// It is the first one that is measured so, and no edge was cut there.
        at_top: bool,
        /// Height of the strip.
        high: Length,
        /// Its squares, in runs edge to edge.
        runs: Vec<Patch>,
        /// How many squares.
        squares: u32,
        /// Squares of the strips before it.
        before: u32,
        /// Halves that come off it besides, by their numbers in the layout.
        halves: Vec<usize>,
    },
    /// Cut a row of halves out of what is left.
    Halves {
        /// Where it lies.
        lies: HalvesLie,
        /// How far above the lower edge of that cloth it begins.
        above: Length,
        /// Height of the row.
        high: Length,
        /// The halves, by their numbers in the layout.
        halves: Vec<usize>,
    },
}

/// The cutting list of a piece, in order.
pub fn steps(piece: &Piece, plan: &CutPlan) -> Vec<CutStep> {
    let [low, top, ..] = piece.reach();
    let mut out = Vec::new();
    if plan.turned {
        out.push(CutStep::Turn);
    }
    let mut edge = low;
    let from_below = plan.strips.len().saturating_sub(plan.from_top);
    let squares = plan.strips[..from_below].iter().map(|s| s.from);
    let lowest = squares.chain(plan.binding.iter().map(|p| p.from)).min();
    if let Some(lowest) = lowest.filter(|at| *at > low) {
        edge = lowest;
        out.push(CutStep::Straight { above: edge - low });
    }
    let binding = plan.binding.iter();
    out.extend(binding.map(|patch| CutStep::Binding {
        patch: *patch,
        above: patch.from - edge,
    }));
    let mut before = 0;
    for (nth, strip) in plan.strips.iter().enumerate() {
        let from_top = nth >= from_below;
        let mut at_top = false;
        if nth == from_below {
            edge = strip.to;
            at_top = edge >= top;
            if !at_top {
                out.push(CutStep::Top { below: top - edge });
            }
        }
        let squares = strip.squares.len() as u32;
        let gap = match from_top {
            true => edge - strip.to,
            false => strip.from - edge,
        };
        out.push(CutStep::Strip {
            nth,
            gap: std::cmp::max(gap, zero()),
            from_top,
            at_top,
            high: strip.to - strip.from,
            runs: strip.runs(),
            squares,
            before,
            halves: numbered(plan, |half| half.strip == Some(nth)),
        });
        before += squares;
        edge = if from_top { strip.from } else { strip.to };
    }
    out.extend(rows_of_halves(piece, plan));
    out
}

/// The numbers of some of the halves.
fn numbered(plan: &CutPlan, of: impl Fn(&Half) -> bool) -> Vec<usize> {
    let each = plan.halves.iter().enumerate();
    each.filter(|(_, half)| of(half)).map(|(n, _)| n).collect()
}

/// Rows of halves out of what the strips leave.
fn rows_of_halves(piece: &Piece, plan: &CutPlan) -> Vec<CutStep> {
    let [low, ..] = piece.reach();
    let mut rows: Vec<(Length, Length)> = Vec::new();
    for half in plan.halves.iter().filter(|half| half.strip.is_none()) {
        let row = (half.patch.from, half.patch.to);
        if !rows.contains(&row) {
            rows.push(row);
        }
    }
    // What is cut off a band goes from its lower edge up.
    let mut edge: Option<Length> = None;
    let row = |(from, to): (Length, Length)| {
        let strips = || plan.strips.iter().enumerate();
        let over = strips().filter(|(_, s)| s.from >= to);
        let under = strips().filter(|(_, s)| s.to <= from);
        let under = under.max_by_key(|(_, s)| s.to);
        let lies = match (over.min_by_key(|(_, s)| s.from), under) {
            (Some((nth, _)), _) => HalvesLie::Below(nth),
            (None, Some((nth, _))) => HalvesLie::Above(nth),
            (None, None) => HalvesLie::Alone,
        };
        let band = under.map_or(low, |(_, s)| s.to);
        let begin = edge.filter(|at| *at > band && *at <= from).unwrap_or(band);
        edge = Some(to);
        CutStep::Halves {
            lies,
            above: from - begin,
            high: to - from,
            halves: numbered(plan, |half| {
                half.strip.is_none() && (half.patch.from, half.patch.to) == (from, to)
            }),
        }
    };
    rows.into_iter().map(row).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::cutting::tests::zone;
    use crate::cloth::cutting::{BindingCut, Cutting, lay_out};
    use crate::cloth::garments::{Zone, ZoneKind, yardage};
    use crate::cloth::strips::with_strips;
    use crate::measure::{eighth_inches, inches};

    /// By hand: 11 in wide, 31 in long, a hem of 1 in. A strip of 28 in for the binding lies beside
    /// two columns of squares, from the hem up; the squares begin 2 in higher, above a hole. The
    /// straight edge is cut where the strip begins, so that it stays whole.
    #[test]
    fn a_strip_for_the_binding_is_not_cut_short_by_the_straight_edge() {
        let mut piece = yardage(inches(11), inches(31));
        let zone = |kind, from: i64, to: i64, right: i64| Zone {
            kind,
            from: inches(from),
            to: inches(to),
            left: inches(0),
            right: inches(right),
        };
        piece.zones = vec![
            zone(ZoneKind::Hem, 0, 1, 11),
            zone(ZoneKind::Hole, 1, 3, 10),
        ];
        let strip = BindingCut {
            width: inches(1),
            length: inches(28),
            most: 1,
        };
        let plan = with_strips(&piece, &Cutting::default(), strip).unwrap();
        let found = steps(&piece, &plan);
        assert_eq!(found[0], CutStep::Straight { above: inches(1) });
        let CutStep::Binding { patch, above } = found[1] else {
            panic!("{:?}", found[1])
        };
        assert_eq!(
            (patch.from, patch.to, above),
            (inches(1), inches(29), inches(0))
        );
        let CutStep::Strip { gap, squares, .. } = found[2] else {
            panic!("{:?}", found[2])
        };
        assert_eq!((gap, squares), (inches(2), 2));
    }

    /// By hand: 11 in wide, 24 in long, a hem of 1 in and a hole across from 12 to 13 in. Strips
    /// of 5 in: from 1 to 6, from 6 to 11, then from 13 to 18 and from 18 to 23.
    #[test]
    fn each_strip_is_measured_from_the_last_cut() {
        let mut piece = yardage(inches(11), inches(24));
        let across = |kind, from: i64, to: i64| Zone {
            kind,
            from: inches(from),
            to: inches(to),
            left: inches(0),
            right: inches(11),
        };
        piece.zones = vec![across(ZoneKind::Hem, 0, 1), across(ZoneKind::Hole, 12, 13)];
        let plan = lay_out(&piece, &Cutting::default()).unwrap();
        let found: Vec<_> = steps(&piece, &plan)
            .into_iter()
            .map(|step| match step {
                CutStep::Straight { above } => (above, inches(0), 0, 0),
                CutStep::Binding { .. } => panic!("no binding was asked for"),
                CutStep::Turn | CutStep::Top { .. } | CutStep::Halves { .. } => {
                    panic!("it is cut the plain way")
                }
                CutStep::Strip {
                    gap,
                    high,
                    squares,
                    before,
                    ..
                } => (gap, high, squares, before),
            })
            .collect();
        assert_eq!(
            found,
            [
                (inches(1), inches(0), 0, 0),
                (inches(0), inches(5), 2, 0),
                (inches(0), inches(5), 2, 2),
                (inches(2), inches(5), 2, 4),
                (inches(0), inches(5), 2, 6),
            ]
        );
        // Its heights told from 3 in below the cloth, the hem is still 1 in.
        let up = |l: &mut crate::measure::Length| *l += inches(3);
        piece.stations.iter_mut().for_each(|s| up(&mut s.at));
        piece.zones.iter_mut().for_each(|z| {
            up(&mut z.from);
            up(&mut z.to);
        });
        let plan = lay_out(&piece, &Cutting::default()).unwrap();
        let straight = CutStep::Straight { above: inches(1) };
        assert_eq!(steps(&piece, &plan)[0], straight);
    }

    /// By hand: 5 in wide and 21 in long, a hem of 1 in, a tear from 6 to 10 5/16 in and the
    /// uppermost 11/16 in trimmed off. One strip from the hem up; the upper edge is cut straight
    /// 11/16 in below it, and from there two strips go down.
    #[test]
    fn what_is_measured_from_the_upper_edge_comes_last_and_goes_down() {
        let sixteenth = |n: i64| crate::measure::sixty_fourths(n * 4);
        let mut piece = yardage(inches(5), inches(21));
        let across = |kind, from, to| Zone {
            kind,
            from,
            to,
            left: inches(0),
            right: inches(5),
        };
        piece.zones = vec![
            across(ZoneKind::Hem, inches(0), inches(1)),
            across(ZoneKind::Hole, inches(6), sixteenth(165)),
            across(ZoneKind::CutEdge, sixteenth(325), inches(21)),
        ];
        let how = Cutting {
            both_edges: true,
            ..Cutting::default()
        };
        let mut plan = lay_out(&piece, &how).unwrap();
        plan.turned = true;
        let strip = |nth: usize, from_top| CutStep::Strip {
            nth,
            gap: inches(0),
            from_top,
            at_top: false,
            high: inches(5),
            runs: plan.strips[nth].runs(),
            squares: 1,
            before: nth as u32,
            halves: Vec::new(),
        };
        assert_eq!(
            steps(&piece, &plan),
            [
                CutStep::Turn,
                CutStep::Straight { above: inches(1) },
                strip(0, false),
                CutStep::Top {
                    below: sixteenth(11)
                },
                strip(1, true),
                strip(2, true),
            ]
        );
        // With nothing to trim off, the upper edge is straight as it is.
        piece.zones.pop();
        piece.stations[1].at = sixteenth(325);
        let plan = lay_out(&piece, &how).unwrap();
        let found = steps(&piece, &plan);
        assert_eq!(found.len(), 4);
        assert!(matches!(found[2], CutStep::Strip { at_top: true, .. }));
        assert!(matches!(found[3], CutStep::Strip { at_top: false, .. }));
    }

    /// The rows of halves in the list of a cloth; halves of 2¾ in, two of which make 5 in with a lap of
    /// ½ in. Figures in eighths of an inch.
    fn rows_of(width: i64, long: i64, zones: &[[i64; 4]]) -> Vec<CutStep> {
        let mut piece = yardage(eighth_inches(width), eighth_inches(long));
        piece.zones = zones.iter().copied().map(zone).collect();
        let how = Cutting {
            half: Some(eighth_inches(22)),
            ..Cutting::default()
        };
        let plan = lay_out(&piece, &how).unwrap();
        let found = steps(&piece, &plan);
        let halves = found.into_iter();
        halves
            .filter(|step| matches!(step, CutStep::Halves { .. }))
            .collect()
    }

    fn row(lies: HalvesLie, above: i64, high: i64, halves: &[usize]) -> CutStep {
        CutStep::Halves {
            lies,
            above: eighth_inches(above),
            high: eighth_inches(high),
            halves: halves.to_vec(),
        }
    }

    /// By hand: 10 in wide and 13 in long, two strips of 5 in and 3 in above them: a row of two halves
    /// that lie across, cut off the edge of the upper strip.
    #[test]
    fn a_row_of_halves_is_cut_off_the_last_strip() {
        let found = rows_of(80, 104, &[]);
        assert_eq!(found, [row(HalvesLie::Above(1), 0, 22, &[0, 1])]);
        // 3 in wide there is no square: two upright halves, one above the other.
        let found = rows_of(24, 80, &[]);
        let alone = |n| row(HalvesLie::Alone, 0, 40, &[n]);
        assert_eq!(found, [alone(0), alone(1)]);
    }

    /// By hand: 10 in wide and 21¼ in long. Between 5 and 11¼ in no square fits: the cloth is torn
    /// across from 5 to 5¼ in and from 8 to 8½ in, and 3 in on the left are worn. A half lies across
    /// from 5¼ to 8 in and one from 8½ to 11¼ in. The first begins ¼ in above the strip below it,
    /// the second ½ in above where the first was cut off.
    #[test]
    fn rows_of_halves_between_two_strips_are_measured_from_the_last_cut() {
        let worn = [[40, 42, 0, 80], [64, 68, 0, 80], [40, 90, 0, 24]];
        let below = |above, n| row(HalvesLie::Below(1), above, 22, &[n]);
        assert_eq!(rows_of(80, 170, &worn), [below(2, 0), below(4, 1)]);
    }

    /// By hand: 10 in wide. The squares lie from 2¾ to 7¾ in, since 3 in on the left are worn below that.
    /// There a half lies across from the lower edge up; above a tear from 7¾ to 8 in lies the other.
    #[test]
    fn a_row_above_a_strip_is_measured_from_that_strip() {
        let worn = [[0, 22, 0, 24], [62, 64, 0, 80], [64, 86, 0, 24]];
        let lower = row(HalvesLie::Below(0), 0, 22, &[0]);
        let upper = row(HalvesLie::Above(0), 2, 22, &[1]);
        assert_eq!(rows_of(80, 86, &worn), [lower, upper]);
        // Two rows right on one another: above the squares the right 4 in are worn for 2¾ in, then the
        // left 4 in. The second begins where the first was cut off.
        let worn = [[40, 62, 48, 80], [62, 84, 0, 32]];
        let above = |n| row(HalvesLie::Above(0), 0, 22, &[n]);
        assert_eq!(rows_of(80, 84, &worn), [above(0), above(1)]);
    }

    /// By hand: 13 in wide and 10 in long: two strips of two squares with 3 in beside them, so that a
    /// half comes off with each strip.
    #[test]
    fn a_half_beside_its_squares_comes_off_with_its_strip() {
        let piece = yardage(inches(13), inches(10));
        let how = Cutting {
            half: Some(eighth_inches(22)),
            ..Cutting::default()
        };
        let plan = lay_out(&piece, &how).unwrap();
        let found = steps(&piece, &plan);
        let halves = found.iter().map(|step| match step {
            CutStep::Strip { halves, .. } => halves.as_slice(),
            other => panic!("{other:?}"),
        });
        assert_eq!(halves.collect::<Vec<_>>(), [[0], [1]]);
    }
}
