//! The order in which a piece is cut with a ruler and a rotary cutter.
//!
//! First the edge is cut straight above the hem, as low as anything begins that is to be cut;
//! then strips for the binding, which run through what the cuts across would chop up; then
//! strip after strip of squares, each measured from the last cut across, and its squares off it
//! from the left. What is left and worth keeping comes last.

use crate::cloth::cutting::{CutPlan, Patch};
use crate::cloth::garments::Piece;
use crate::measure::{Length, zero};

/// One line of a piece's cutting list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CutStep {
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
    /// Cut a strip across and squares off it.
    Strip {
        /// Which of the layout's strips, counted from 0.
        nth: usize,
        /// What is cut away first, from the last cut edge; nothing where the strip begins there.
        gap: Length,
        /// Height of the strip.
        high: Length,
        /// Its squares, in runs edge to edge.
        runs: Vec<Patch>,
        /// How many squares.
        squares: u32,
        /// Squares of the strips before it.
        before: u32,
    },
}

/// The cutting list of a piece, in order.
pub fn steps(piece: &Piece, plan: &CutPlan) -> Vec<CutStep> {
    let [low, ..] = piece.reach();
    let mut out = Vec::new();
    let mut edge = low;
    let squares = plan.strips.iter().map(|s| s.from);
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
        let squares = strip.squares.len() as u32;
        out.push(CutStep::Strip {
            nth,
            gap: std::cmp::max(strip.from - edge, zero()),
            high: strip.to - strip.from,
            runs: strip.runs(),
            squares,
            before,
        });
        before += squares;
        edge = strip.to;
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::cutting::{BindingCut, Cutting, lay_out};
    use crate::cloth::garments::{Zone, ZoneKind, yardage};
    use crate::cloth::strips::with_strips;
    use crate::measure::inches;

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
    }
}
