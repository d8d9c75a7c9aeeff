//! Other ways to cut a piece than in strips across from the hem.
//!
//! [`CutWay`] says how a piece is cut where it is not the plain way:
//!
//! * **From both edges**: some strips are measured from the hem up, the others from the upper
//!   edge down, and they meet in the middle (`cloth/choice.rs`).
//! * **Turned a quarter**: the piece lies on its side, the hem to the left, and the strips run
//!   along the leg. [`turned`] gives that outline as a [`Piece`] of its own, so that everything
//!   that is true of strips across a piece is true of it: the layout, binding strips, the order
//!   of the cuts and what is measured from where.
//!
//! * **Pieced**: besides, what the squares leave is cut into halves of squares, of which two are
//!   lapped into one (`cloth/halves.rs`). It goes with each of the ways above.
//!
//! [`laid`] lays a piece out in its way, and [`squares`] tells how many squares that gives. A way
//! is worth telling of only where it gives more than the plain one ([`offers`]).
//!
//! # Grain
//!
//! A square cut from a turned piece has its sides along the grain as every square has, but it
//! comes off the strip a quarter turned: the lengthwise thread runs along the strip. Laid as it
//! comes, it shows its twill the other way and stretches the other way. Turned back it is a square
//! like the others; so its label is written with its head away from the hem. (Plain geometry.)
//!
//! # Promises (kept by tests)
//!
//! * A turned piece holds nothing that the piece does not hold, and loses less than 2 nm at its
//!   edges: turned four times its squares are as many as before.
//! * No choice of strips along the piece at the resolution, measured from its right edge, gives
//!   more squares than the turned piece.
//! * No way gives more than [`bound`](crate::cloth::cutting::bound), and both edges give no fewer
//!   than one.
//!
//! # Limits
//!
//! A piece with a waist or a bulge at its sides lies in two parts over some of its columns. It
//! has no [`turned`] outline with one left and one right edge at every height, and is not offered
//! that way. Where an edge runs straight up the piece and then turns outwards, the turned outline
//! stands back from it by 1 nm.

use crate::cloth::cutting::{CutPlan, Cutting, CuttingFault, Half, Patch, Strip, at_most, lay_out};
use crate::cloth::garments::{MOST, OutlineStation, Piece, Zone};
use crate::measure::{in_nm, nm};
use crate::types::TS;
use serde::{Deserialize, Serialize};
use std::borrow::Cow;

/// How a piece is cut; nothing said is the plain way, in strips across from the hem.
#[derive(
    Debug, Clone, Copy, Default, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, TS,
)]
pub struct CutWay {
    /// Strips are measured from the upper edge too.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[ts(as = "Option<bool>", optional)]
    pub both_edges: bool,
    /// The piece lies a quarter turned.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[ts(as = "Option<bool>", optional)]
    pub turned: bool,
    /// What the squares leave is cut into halves, of which two are lapped into one square.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[ts(as = "Option<bool>", optional)]
    pub pieced: bool,
}

impl CutWay {
    /// Strips across from the hem.
    pub const PLAIN: CutWay = CutWay {
        both_edges: false,
        turned: false,
        pieced: false,
    };

    /// Every other way to find whole squares, those that ask least of the hands first.
    pub const OTHERS: [CutWay; 3] = [
        CutWay {
            both_edges: true,
            ..CutWay::PLAIN
        },
        CutWay {
            turned: true,
            ..CutWay::PLAIN
        },
        CutWay {
            both_edges: true,
            turned: true,
            pieced: false,
        },
    ];

    /// The same with halves, or without.
    pub fn with_halves(self, pieced: bool) -> CutWay {
        CutWay { pieced, ..self }
    }

    /// Whether it is the plain way.
    pub fn is_plain(&self) -> bool {
        *self == CutWay::PLAIN
    }

    /// The measures with what this way asks for.
    pub fn how(&self, how: Cutting) -> Cutting {
        Cutting {
            both_edges: self.both_edges,
            half: how.half.filter(|_| self.pieced),
            ..how
        }
    }
}

/// The piece as it lies to be cut; unturned where it cannot be turned.
pub fn lying(piece: &Piece, way: CutWay) -> Cow<'_, Piece> {
    let turned = way.turned.then(|| turned(piece)).flatten();
    turned.map_or(Cow::Borrowed(piece), Cow::Owned)
}

/// A piece laid out in its way, as it lies.
///
/// # Errors
/// A [`CuttingFault`] saying what cannot be.
pub fn laid(piece: &Piece, how: &Cutting, way: CutWay) -> Result<CutPlan, CuttingFault> {
    let lying = lying(piece, way);
    let mut plan = lay_out(&lying, &way.how(*how))?;
    plan.turned = matches!(lying, Cow::Owned(_));
    Ok(plan)
}

/// Squares a piece gives in a way; none where it cannot be cut so.
pub fn squares(piece: &Piece, how: &Cutting, way: CutWay) -> u32 {
    if way.turned && turned(piece).is_none() {
        return 0;
    }
    laid(piece, how, way).map_or(0, |plan| plan.count)
}

/// The ways that give more than the plain one, with what they give. A way that asks for two
/// things is told of only where it gives more than each of them alone.
pub fn offers(piece: &Piece, how: &Cutting) -> Vec<(CutWay, u32)> {
    let mut most = squares(piece, how, CutWay::PLAIN);
    let [both, turned, all] = CutWay::OTHERS.map(|way| (way, squares(piece, how, way)));
    let mut out: Vec<_> = [both, turned]
        .into_iter()
        .filter(|(_, n)| *n > most)
        .collect();
    most = out.iter().map(|(_, n)| *n).fold(most, u32::max);
    out.extend(Some(all).filter(|(_, n)| *n > most));
    out
}

/// What is cut of a turned piece, as it lies on the piece unturned: each square by itself, in
/// the order they are cut.
pub fn turned_back(piece: &Piece, plan: &CutPlan) -> CutPlan {
    let [_, _, _, last] = piece.reach();
    let back = |p: &Patch| Patch {
        from: p.left,
        to: p.right,
        left: last - p.to,
        right: last - p.from,
    };
    let squares = plan.strips.iter().flat_map(|s| {
        let side = s.to - s.from;
        let lefts = s.squares.iter();
        lefts.map(move |left| Strip {
            from: *left,
            to: *left + side,
            squares: vec![last - s.to],
        })
    });
    CutPlan {
        strips: squares.collect(),
        from_top: 0,
        turned: false,
        lines: Vec::new(),
        count: plan.count,
        pieced: plan.pieced,
        halves: (plan.halves.iter())
            .map(|half| Half {
                patch: back(&half.patch),
                upright: !half.upright,
                strip: None,
            })
            .collect(),
        binding: plan.binding.iter().map(back).collect(),
        offcuts: plan.offcuts.iter().map(back).collect(),
        spare: plan.spare,
    }
}

/// The piece turned a quarter clockwise, so that its hem lies to the left; nothing where some
/// column of it lies in two parts, or where its outline would need more than [`MOST`] stations.
pub fn turned(piece: &Piece) -> Option<Piece> {
    piece.check().ok()?;
    let edges = |edge: fn(&OutlineStation) -> i64| -> Vec<[i64; 2]> {
        let stations = piece.stations.iter();
        stations.map(|s| [in_nm(s.at), edge(s)]).collect()
    };
    // Each edge so that the cloth lies where it is at most a limit.
    let (left, right) = (edges(|s| in_nm(s.left)), edges(|s| -in_nm(s.right)));
    if !is_hollow(&left) || !is_hollow(&right) {
        return None;
    }
    let [_, _, first, last] = piece.reach().map(in_nm);
    // What the column at `x` holds.
    let column = |x: i64| -> Option<[i64; 2]> {
        let [a, b] = where_at_most(&left, x)?;
        let [c, d] = where_at_most(&right, -x)?;
        Some([a.max(c), b.min(d)]).filter(|[low, high]| low <= high)
    };
    // Where an edge runs upright and then outwards, the column grows at once.
    let jumps = |edge: &[[i64; 2]], x: i64| {
        let outmost = edge.iter().map(|e| e[1]).min();
        outmost.is_some_and(|o| o < x) && edge.windows(2).any(|w| w[0][1] == x && w[1][1] == x)
    };
    let mut columns = Vec::new();
    let corners = left.iter().map(|e| e[1]).chain(right.iter().map(|e| -e[1]));
    for x in corners {
        if jumps(&left, x) || jumps(&right, -x) {
            let around: Vec<[i64; 2]> = (x - 1..=x + 1).filter_map(column).collect();
            let low = around.iter().map(|c| c[0]).max()?;
            let high = around.iter().map(|c| c[1]).min()?;
            if low > high {
                return None;
            }
            columns.push((x, [low, high]));
            columns.extend(
                [x - 1, x + 1]
                    .into_iter()
                    .filter_map(|x| Some((x, column(x)?))),
            );
        } else {
            columns.push((x, column(x)?));
        }
    }
    columns.retain(|(x, _)| (first..=last).contains(x));
    // Of two at the same place the one that holds less is safe.
    columns.sort_by_key(|(x, [low, high])| (-x, high - low));
    columns.dedup_by_key(|(x, _)| *x);
    if columns.len() > MOST {
        return None;
    }
    let stations = columns.into_iter().map(|(x, [low, high])| OutlineStation {
        at: nm(last - x),
        left: nm(low),
        right: nm(high),
    });
    let zones = piece.zones.iter().map(|z| Zone {
        kind: z.kind,
        from: nm(last) - z.right,
        to: nm(last) - z.left,
        left: z.from,
        right: z.to,
    });
    let turned = Piece {
        part: piece.part,
        stations: stations.collect(),
        zones: zones.collect(),
    };
    turned.check().is_ok().then_some(turned)
}

/// Whether an edge first goes down and then up, so that it is below any limit over one stretch.
fn is_hollow(edge: &[[i64; 2]]) -> bool {
    let mut rising = false;
    edge.windows(2).all(|w| {
        let (a, b) = (w[0][1], w[1][1]);
        rising |= b > a;
        !(rising && b < a)
    })
}

/// The heights over which an edge is at most `limit`, rounded inwards.
fn where_at_most(edge: &[[i64; 2]], limit: i64) -> Option<[i64; 2]> {
    let parts = edge.windows(2).filter_map(|w| {
        let ([y0, v0], [y1, v1]) = (w[0], w[1]);
        at_most([y0, y1], [v0, v1], limit)
    });
    parts.reduce(|[a, b], [c, d]| [a.min(c), b.max(d)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::cutting::tests::{hole, inside, overlap, piece};
    use crate::cloth::cutting::{BindingCut, bound, ready};
    use crate::cloth::garments::{
        GarmentKind, GarmentPart, GarmentSize, Guess, PieceFault, ZoneKind, start, yardage,
    };
    use crate::measure::{Length, System, eighth_inches, half_inches, inches, zero};
    use proptest::prelude::*;

    const TURNED: CutWay = CutWay::OTHERS[1];
    const BOTH: CutWay = CutWay::OTHERS[0];

    fn across(piece: &Piece, from: Length, to: Length) -> Zone {
        let [_, _, left, right] = piece.reach();
        hole([from, to, left, right])
    }

    /// By hand: 5 in wide, with a tear above the first 5 in. Where the tear ends at 10 3/16 in and
    /// the cloth at 20⅜ in, two strips fit above it from the mark at 10¼ in on. Where the tear
    /// ends at 10 5/16 in and the cloth just 10 in higher, the marks from the hem miss that place:
    /// one strip fits, and two measured from the upper edge.
    #[test]
    fn strips_from_the_upper_edge_fit_between_the_marks() {
        let torn = |to: Length, long: Length| {
            let mut piece = yardage(inches(5), long);
            piece.zones = vec![across(&piece, inches(5), to)];
            piece
        };
        let sixteenth = |n: i64| nm(n * 25_400_000 / 16);
        let how = Cutting::default();
        let count = |piece: &Piece, way| squares(piece, &how, way);
        // 20⅜ in less 10 in is a mark of the hem's own: no more from above.
        let even = torn(sixteenth(163), eighth_inches(163));
        assert_eq!([CutWay::PLAIN, BOTH].map(|way| count(&even, way)), [3, 3]);
        assert_eq!(offers(&even, &how), []);
        // 20 5/16 in long: the last mark for two strips is at 10¼ in, inside the tear.
        let odd = torn(sixteenth(165), sixteenth(325));
        assert_eq!([CutWay::PLAIN, BOTH].map(|way| count(&odd, way)), [2, 3]);
        // Along a strip squares begin anywhere, so that a quarter turn finds them too.
        assert_eq!(offers(&odd, &how), [(BOTH, 3), (TURNED, 3)]);
        let plan = laid(&odd, &how, BOTH).unwrap();
        assert_eq!(plan.from_top, 2);
        let from: Vec<_> = plan.strips.iter().map(|s| s.from).collect();
        assert_eq!(from, [zero(), sixteenth(245), sixteenth(165)]);
    }

    /// By hand: 22 × 18 in turned clockwise; the hem goes from the lower edge to the left.
    #[test]
    fn a_turned_rectangle_changes_width_and_length() {
        let mut cloth = yardage(inches(22), inches(18));
        cloth.zones = vec![Zone {
            kind: ZoneKind::Hem,
            from: zero(),
            to: inches(1),
            left: zero(),
            right: inches(22),
        }];
        let side = turned(&cloth).unwrap();
        assert_eq!(side.reach(), [zero(), inches(22), zero(), inches(18)]);
        let hem = side.zones[0];
        assert_eq!(
            [hem.from, hem.to, hem.left, hem.right],
            [zero(), inches(22), zero(), inches(1)]
        );
        // What lay right, by the hem, now lies at the lower left.
        cloth.zones[0].left = inches(20);
        let hem = turned(&cloth).unwrap().zones[0];
        assert_eq!([hem.from, hem.to], [zero(), inches(2)]);
    }

    /// By hand: 10 in wide and 12½ in long; the left column is free above 2½ in, the right one
    /// below 10 in. Strips across find three squares, strips along the piece two and two.
    #[test]
    fn a_quarter_turn_gives_more_where_columns_are_set_off() {
        let mut piece = yardage(inches(10), half_inches(25));
        let zone = |from, to, left: i64, right: i64| Zone {
            kind: ZoneKind::Hole,
            from,
            to,
            left: inches(left),
            right: inches(right),
        };
        piece.zones = vec![
            zone(zero(), half_inches(5), 0, 5),
            zone(inches(10), half_inches(25), 5, 10),
        ];
        let how = Cutting::default();
        assert_eq!(offers(&piece, &how), [(TURNED, 4)]);
        let plan = laid(&piece, &how, TURNED).unwrap();
        assert!(plan.turned && plan.from_top == 0);
        assert_eq!(bound(&piece, &how), Ok(4));
    }

    #[test]
    fn pieces_with_a_waist_are_not_turned() {
        let mut piece = yardage(inches(20), inches(20));
        let station = |at: i64, left: i64, right: i64| OutlineStation {
            at: inches(at),
            left: inches(left),
            right: inches(right),
        };
        piece.stations = vec![station(0, 0, 20), station(10, 2, 18), station(20, 0, 20)];
        assert_eq!(turned(&piece), None);
        let plain = |piece: &Piece| squares(piece, &Cutting::default(), CutWay::PLAIN);
        assert_eq!(squares(&piece, &Cutting::default(), TURNED), 0);
        let torn = Piece {
            stations: Vec::new(),
            ..piece.clone()
        };
        assert_eq!(squares(&torn, &Cutting::default(), CutWay::PLAIN), 0);
        assert_eq!(
            laid(&piece, &Cutting::default(), TURNED).unwrap().count,
            plain(&piece)
        );
        // Of the starting outlines only the waisted ones are left out.
        for kind in GarmentKind::ALL {
            let pieces = start(kind, GarmentSize::Medium, Guess::Typical, System::Inch);
            let waisted = kind == GarmentKind::Blouse;
            for piece in pieces.iter().filter(|p| p.part == GarmentPart::Back) {
                assert_eq!(turned(piece).is_none(), waisted, "{kind:?}");
            }
            if kind == GarmentKind::MensJeans {
                assert!(pieces.iter().all(|p| turned(p).is_some()));
            }
        }
    }

    fn how() -> impl Strategy<Value = Cutting> {
        (10i64..60, prop::sample::select(vec![7i64, 8, 16, 24])).prop_map(|(side, step)| Cutting {
            side: eighth_inches(side),
            step: nm(step * 25_400_000 / 64),
            ..Cutting::default()
        })
    }

    /// A piece whose length falls between the marks, and of which some edges run straight up.
    fn odd() -> impl Strategy<Value = Piece> {
        let upright = prop::collection::vec(any::<[bool; 2]>(), 6);
        let odd = (piece(), 0i64..8, upright).prop_map(|(mut piece, more, upright)| {
            if let Some(last) = piece.stations.last_mut() {
                last.at += nm(more * 25_400_000 / 64);
            }
            for (n, [left, right]) in (1..piece.stations.len()).zip(upright) {
                let below = piece.stations[n - 1];
                let own = &mut piece.stations[n];
                own.left = if left { below.left } else { own.left };
                own.right = if right { below.right } else { own.right };
            }
            while let Err(PieceFault::ZoneOutside(i)) = piece.check() {
                piece.zones.remove(i);
            }
            piece
        });
        odd.prop_filter("it has a width", |piece| piece.check().is_ok())
    }

    /// By hand: 10⅛ in wide up to 10 in, and from there to 20 in outwards by 5 in on one side. Turned there
    /// are two columns of 5 in below that corner, four squares each, and no more beside them: 5 in out
    /// the cloth has come to a point. Where the edge stands upright and then goes inwards likewise.
    #[test]
    fn a_column_beside_a_corner_is_as_long_as_the_cloth() {
        let shaped = |rows: &[[i64; 3]]| {
            let mut piece = yardage(inches(1), inches(20));
            let stations = rows.iter().map(|row| {
                let [at, left, right] = row.map(eighth_inches);
                OutlineStation { at, left, right }
            });
            piece.stations = stations.collect();
            piece
        };
        let how = Cutting::default();
        let outwards = shaped(&[[0, -1, 80], [80, -1, 80], [160, -1, 120]]);
        let inwards = shaped(&[[0, -1, 120], [80, -1, 80], [160, -1, 80]]);
        for piece in [&outwards, &inwards] {
            let other = crate::cloth::garments::mirrored(piece, GarmentPart::Cloth);
            assert_eq!(squares(piece, &how, TURNED), 8, "{piece:?}");
            assert_eq!(squares(&other, &how, TURNED), 8, "{other:?}");
        }
        // 2½ in further out cloth is 5 in long: from 15 to 20 in up, or from the hem.
        let side = turned(&outwards).unwrap();
        let [from, to] = crate::cloth::cutting::edges(&side, half_inches(5));
        assert!(
            in_nm(from - inches(15)).abs() < 4 && to == inches(20),
            "{from:?} {to:?}"
        );
        let side = turned(&inwards).unwrap();
        let [from, to] = crate::cloth::cutting::edges(&side, half_inches(5));
        assert!(
            from == zero() && in_nm(to - inches(5)).abs() < 4,
            "{from:?} {to:?}"
        );
    }

    fn all_squares(plan: &CutPlan) -> Vec<Patch> {
        let strips = plan.strips.iter();
        strips
            .flat_map(|s| {
                let side = s.to - s.from;
                s.squares.iter().map(move |left| Patch {
                    from: s.from,
                    to: s.to,
                    left: *left,
                    right: *left + side,
                })
            })
            .collect()
    }

    /// The most squares of strips, tried one after another without any table: a strip may be
    /// taken or left, those from below first, and once one from above is taken none from below
    /// may follow.
    fn by_trying(below: &[(i64, i64)], above: &[(i64, i64)], side: i64, at: i64) -> i64 {
        let mut most = 0;
        for (i, (from, n)) in below
            .iter()
            .enumerate()
            .filter(|(_, (from, _))| *from >= at)
        {
            most = most.max(n + by_trying(&below[i + 1..], above, side, from + side));
        }
        for (i, (from, n)) in above
            .iter()
            .enumerate()
            .filter(|(_, (from, _))| *from >= at)
        {
            most = most.max(n + by_trying(&[], &above[i + 1..], side, from + side));
        }
        most
    }

    proptest! {
        #[test]
        fn what_is_cut_from_both_edges_lies_on_the_cloth(piece in odd(), how in how()) {
            let plan = laid(&piece, &how, BOTH).unwrap();
            let squares = all_squares(&plan);
            prop_assert_eq!(squares.len(), plan.count as usize);
            for (i, a) in squares.iter().enumerate() {
                prop_assert!(inside(&piece, a));
                prop_assert!(squares[..i].iter().all(|b| !overlap(a, b)));
                for z in &piece.zones {
                    let zone = Patch { from: z.from, to: z.to, left: z.left, right: z.right };
                    prop_assert!(!overlap(a, &zone));
                }
            }
            let plain = lay_out(&piece, &how).unwrap();
            prop_assert!(plan.count >= plain.count);
            prop_assert!(plan.count <= bound(&piece, &how).unwrap());
            prop_assert_eq!(plan.from_top > 0, plan.count > plain.count);
            // From the hem up, then from the upper edge down, above all of those.
            let cut = plan.strips.len() - plan.from_top;
            let (low, high) = plan.strips.split_at(cut);
            prop_assert!(low.windows(2).all(|w| w[0].to <= w[1].from));
            prop_assert!(high.windows(2).all(|w| w[0].from >= w[1].to));
            let top = low.last().map(|s| s.to);
            prop_assert!(top.is_none_or(|top| high.iter().all(|s| s.from >= top)));
        }

        #[test]
        fn no_choice_of_strips_from_both_edges_gives_more(
            counts in prop::array::uniform2(prop::collection::vec(0i64..4, 1..9)),
            side in 2i64..6,
            off in 0i64..3,
        ) {
            // Heights in thirds of the step; those from above lie between those from below.
            let [below, above] = &counts;
            let step = 3;
            let side = side * step - 1;
            let tall = (below.len().max(above.len()) as i64 - 1) * step + side + off;
            let marks = |n: usize| (0..n as i64).map(|i| i * step).collect::<Vec<i64>>();
            let (lows, depths) = (marks(below.len()), marks(above.len()));
            let each = |counts: &[i64]| counts.iter().map(|n| (*n, 1)).collect::<Vec<_>>();
            let found = crate::cloth::choice::from_both(
                [&lows, &depths],
                [&each(below), &each(above)],
                tall,
                side,
            );
            let counted: i64 = found[0].iter().map(|i| below[*i]).sum::<i64>()
                + found[1].iter().map(|i| above[*i]).sum::<i64>();
            let low: Vec<_> = lows.iter().copied().zip(below.iter().copied()).collect();
            let mut high: Vec<_> = depths.iter().map(|d| tall - side - d).zip(above.iter().copied()).collect();
            high.reverse();
            prop_assert_eq!(counted, by_trying(&low, &high, side, 0));
        }

        #[test]
        fn a_turned_piece_holds_only_what_the_piece_holds(piece in odd(), how in how()) {
            let Some(side) = turned(&piece) else { return Ok(()) };
            prop_assert_eq!(side.check(), Ok(()));
            let [_, _, _, last] = piece.reach();
            let plan = laid(&piece, &how, TURNED).unwrap();
            prop_assert!(plan.turned);
            prop_assert!(plan.count <= bound(&piece, &how).unwrap());
            let back = |p: Patch| Patch { from: p.left, to: p.right, left: last - p.to, right: last - p.from };
            for square in all_squares(&plan) {
                let square = back(square);
                prop_assert!(inside(&piece, &square));
                for z in &piece.zones {
                    let zone = Patch { from: z.from, to: z.to, left: z.left, right: z.right };
                    prop_assert!(!overlap(&square, &zone));
                }
            }
        }

        /// What is cut of a turned piece lies on the piece as it was: squares, halves, strips and what is
        /// left over, each on the cloth, clear of the zones and of one another.
        #[test]
        fn what_is_cut_turned_lies_on_the_piece_unturned(piece in odd(), how in how(), lap in 2i64..7) {
            if turned(&piece).is_none() { return Ok(()) }
            let half = crate::cloth::halves::width(how.side, eighth_inches(lap));
            let strip = BindingCut { width: eighth_inches(8), length: eighth_inches(20), most: 3 };
            let how = Cutting { half: Some(half).filter(|h| *h < how.side), binding: Some(strip), ..how };
            let plan = laid(&piece, &how, TURNED.with_halves(true)).unwrap();
            let back = turned_back(&piece, &plan);
            prop_assert!(!back.turned && back.from_top == 0);
            prop_assert_eq!((back.count, back.pieced), (plan.count, plan.pieced));
            let squares = all_squares(&back);
            prop_assert_eq!(squares.len() as u32, back.whole());
            let is_square = |p: &Patch| p.to - p.from == how.side && p.right - p.left == how.side;
            prop_assert!(squares.iter().all(is_square));
            for half in &back.halves {
                let [wide, high] = half.size();
                let size = if half.upright { [wide, high] } else { [high, wide] };
                prop_assert_eq!(Some(size), how.half.map(|h| [h, how.side]));
            }
            let mut cut = squares;
            cut.extend(back.halves.iter().map(|half| half.patch));
            cut.extend(&back.binding);
            cut.extend(&back.offcuts);
            for (i, a) in cut.iter().enumerate() {
                prop_assert!(inside(&piece, a));
                prop_assert!(cut[..i].iter().all(|b| !overlap(a, b)));
                for z in &piece.zones {
                    let zone = Patch { from: z.from, to: z.to, left: z.left, right: z.right };
                    prop_assert!(!overlap(a, &zone));
                }
            }
        }

        /// The columns of the piece itself, by another function: no set of them gives more, and
        /// where no edge runs upright the turned piece stands back from none of them by more than
        /// 1 nm. Where an edge runs upright and then outwards it stands back at that corner.
        #[test]
        fn no_choice_of_strips_along_the_piece_gives_more(piece in odd(), how in how()) {
            if turned(&piece).is_none() { return Ok(()) }
            let (ground, s, step) = ready(&piece, &how).unwrap();
            let [_, _, first, last] = piece.reach().map(in_nm);
            let mut marks: Vec<i64> = Vec::new();
            for j in 0..=(last - first) / s {
                marks.extend((0..=(last - first) / step).map(|i| i * step + j * s));
            }
            marks.retain(|m| m + s <= last - first);
            marks.sort_unstable();
            marks.dedup();
            // The most squares of columns that stand back so far on each side.
            let most = |back: i64| {
                let counts: Vec<i64> = marks.iter().map(|m| {
                    let mut n = 0;
                    let (from, to) = (last - m - s - back, last - m + back);
                    ground.upright(from.max(first), to.min(last), |from, to| {
                        n += (to - from - 2 * back).max(0) / s;
                    });
                    n
                }).collect();
                // From the far end on.
                let mut most = vec![0; marks.len() + 1];
                for i in (0..marks.len()).rev() {
                    let next = marks.iter().position(|m| *m >= marks[i] + s).unwrap_or(marks.len());
                    most[i] = most[i + 1].max(counts[i] + most[next]);
                }
                most[0]
            };
            let found = i64::from(squares(&piece, &how, TURNED));
            let straight = piece.stations.windows(2).all(|w| w[0].left != w[1].left && w[0].right != w[1].right);
            prop_assert!(found <= most(0));
            if straight {
                prop_assert!(found >= most(1));
            }
        }
    }
}
