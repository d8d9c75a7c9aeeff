//! Whole binding strips out of a piece, and what they cost in squares.
//!
//! A strip of the binding is cut in one length, so that the joins of the binding come where
//! they were planned. What the squares leave is taken first ([`lay_out`] finds it). Where it
//! holds no further strip, one is laid through the squares: along the piece or across it, at
//! the ends of each stretch in which it fits (against an edge of the cloth, a place to avoid
//! or another strip), and the place that leaves most squares is taken; among equals an
//! upright one, the one nearest the left edge, the one nearest the hem. Each strip is laid
//! after the ones before it stand.
//!
//! # Promises (kept by tests)
//!
//! * Every strip has just the width and length asked for, lies inside the outline and off
//!   the zones, and meets neither a square nor another strip.
//! * One more strip never raises the number of squares; without strips it is that of
//!   [`lay_out`].
//!
//! # Limits
//!
//! Strips are laid one after another and only at the ends of stretches, no more than 24 places
//! for each, so that another choice of several might cost fewer squares. Strips lie along the grain or across it.
//!
//! ```
//! use lapwork_core::cloth::cutting::{BindingCut, Cutting};
//! use lapwork_core::cloth::garments::fat_quarter;
//! use lapwork_core::cloth::strips::with_strips;
//! use lapwork_core::measure::{System, inches};
//!
//! // 18 × 22 in: three strips of 1 × 20 in beside twelve squares of 5 in; a fourth costs a row.
//! let squares = |most| {
//!     let strip = BindingCut { width: inches(1), length: inches(20), most };
//!     let plan = with_strips(&fat_quarter(System::Inch), &Cutting::default(), strip).unwrap();
//!     plan.count
//! };
//! assert_eq!([squares(0), squares(3), squares(4)], [12, 12, 8]);
//! ```

use crate::cloth::cutting::{
    BindingCut, ClearRect, CutPlan, Cutting, CuttingFault, Patch, lay_out, ready, squares_of,
    strip_places,
};
use crate::cloth::garments::{Piece, Zone, ZoneKind};
use crate::measure::square_metres;
use crate::plan::Plan;

/// A strip of a plan's binding, and how many are wanted at the most.
pub fn strip_of(plan: &Plan, most: u32) -> BindingCut {
    BindingCut {
        width: plan.binding.strip,
        length: plan.binding.longest,
        most,
    }
}

/// A piece with the strips laid on it so far.
#[derive(Debug, Clone)]
pub struct StripLayout {
    how: Cutting,
    strip: BindingCut,
    /// The piece with the strips as places to keep clear.
    rest: Piece,
    plan: CutPlan,
}

impl StripLayout {
    /// A piece with no strip yet; `strip.most` is not looked at.
    ///
    /// # Errors
    /// A [`CuttingFault`] saying what cannot be.
    pub fn new(piece: &Piece, how: &Cutting, strip: BindingCut) -> Result<Self, CuttingFault> {
        let how = Cutting {
            binding: None,
            ..*how
        };
        Ok(StripLayout {
            plan: lay_out(piece, &how)?,
            rest: piece.clone(),
            how,
            strip,
        })
    }

    /// Squares and strips as they lie now.
    pub fn plan(&self) -> &CutPlan {
        &self.plan
    }

    /// Whether a further strip fits in what the squares leave.
    ///
    /// # Errors
    /// A [`CuttingFault`] saying what cannot be.
    pub fn free(&self) -> Result<Option<StripLayout>, CuttingFault> {
        let strip = BindingCut {
            most: 1,
            ..self.strip
        };
        let how = Cutting {
            binding: Some(strip),
            ..self.how
        };
        let found = lay_out(&self.rest, &how)?.binding;
        found.first().map(|patch| self.holding(*patch)).transpose()
    }

    /// The piece with one strip more, at the cost of squares where it has to be; nothing where
    /// none fits.
    ///
    /// # Errors
    /// A [`CuttingFault`] saying what cannot be.
    pub fn further(&self) -> Result<Option<StripLayout>, CuttingFault> {
        if let Some(free) = self.free()? {
            return Ok(Some(free));
        }
        let found = cheapest(&self.rest, &self.how, self.strip)?;
        found.map(|patch| self.holding(patch)).transpose()
    }

    fn holding(&self, patch: Patch) -> Result<StripLayout, CuttingFault> {
        let rest = without(&self.rest, patch);
        let mut plan = lay_out(&rest, &self.how)?;
        plan.binding.clone_from(&self.plan.binding);
        plan.binding.push(patch);
        for patch in &plan.binding {
            plan.spare -= square_metres(patch.right - patch.left, patch.to - patch.from);
        }
        Ok(StripLayout {
            rest,
            plan,
            ..*self
        })
    }
}

/// The layout of a piece with so many strips, or with as many as fit.
///
/// # Errors
/// A [`CuttingFault`] saying what cannot be.
pub fn with_strips(
    piece: &Piece,
    how: &Cutting,
    strip: BindingCut,
) -> Result<CutPlan, CuttingFault> {
    let mut laid = StripLayout::new(piece, how, strip)?;
    for _ in 0..strip.most {
        let Some(more) = laid.further()? else { break };
        laid = more;
    }
    Ok(laid.plan)
}

/// The piece with strips as places to keep clear.
pub fn rest_of(piece: &Piece, strips: &[Patch]) -> Piece {
    strips
        .iter()
        .fold(piece.clone(), |rest, p| without(&rest, *p))
}

/// The piece with a strip as a place to keep clear.
fn without(piece: &Piece, p: Patch) -> Piece {
    let mut piece = piece.clone();
    piece.zones.push(Zone {
        kind: ZoneKind::Seam,
        from: p.from,
        to: p.to,
        left: p.left,
        right: p.right,
    });
    piece
}

/// Most places tried for one strip.
const MOST_TRIED: usize = 24;

/// A place where a strip fits.
struct StripPlace {
    upright: bool,
    /// Which of the stretches along the same line, counted from 0.
    nth: usize,
    /// The line: its left edge, or its lower one if it lies across.
    at: i64,
    /// At the near end and at the far end of the stretch.
    ends: [ClearRect; 2],
}

/// The place for one strip that leaves most squares.
fn cheapest(
    piece: &Piece,
    bare: &Cutting,
    strip: BindingCut,
) -> Result<Option<Patch>, CuttingFault> {
    let (ground, _, step) = ready(piece, bare)?;
    let mut places: Vec<StripPlace> = Vec::new();
    strip_places(&ground, strip, step, |over, near, upright| {
        let at = if upright { near.left } else { near.from };
        let nth = match places.last() {
            Some(last) if last.upright == upright && last.at == at => last.nth + 1,
            _ => 0,
        };
        let mut far = near;
        if upright {
            (far.from, far.to) = (near.from + over, near.to + over);
        } else {
            (far.left, far.right) = (near.left + over, near.right + over);
        }
        places.push(StripPlace {
            upright,
            nth,
            at,
            ends: [near, far],
        });
    });
    places.sort_by_key(|p| (p.upright, p.nth, p.at));
    let same_run = |a: &StripPlace, b: &StripPlace| {
        (a.upright, a.nth) == (b.upright, b.nth) && b.at - a.at <= step
    };
    let runs = places.chunk_by(same_run);
    let ends = runs.flat_map(|run| [run.first(), run.last()]).flatten();
    let mut tried: Vec<Patch> = ends
        .flat_map(|place| place.ends.map(ClearRect::patch))
        .collect();
    tried.sort_by_key(|p| (p.to - p.from < p.right - p.left, p.left, p.from));
    tried.dedup();
    let every = tried.len().div_ceil(MOST_TRIED).max(1);
    let tried = tried.into_iter().step_by(every);
    let mut best: Option<(u32, Patch)> = None;
    for patch in tried {
        let count = squares_of(&without(piece, patch), bare)?;
        if best.is_none_or(|(most, _)| count > most) {
            best = Some((count, patch));
        }
    }
    Ok(best.map(|(_, patch)| patch))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::cutting::tests::{inside, overlap, piece};
    use crate::cloth::garments::{GarmentKind, GarmentSize, Guess, start};
    use crate::measure::{Length, System, eighth_inches, inches, zero};
    use proptest::prelude::*;

    fn strip(length: Length, most: u32) -> BindingCut {
        BindingCut {
            width: inches(1),
            length,
            most,
        }
    }

    /// The piece with no strip, with one, and so on.
    fn plans(piece: &Piece, strip: BindingCut) -> Vec<CutPlan> {
        let mut laid = StripLayout::new(piece, &Cutting::default(), strip).unwrap();
        let mut plans = vec![laid.plan().clone()];
        while plans.len() <= strip.most as usize
            && let Some(more) = laid.further().unwrap()
        {
            plans.push(more.plan().clone());
            laid = more;
        }
        plans
    }

    fn counts(piece: &Piece, strip: BindingCut) -> Vec<u32> {
        plans(piece, strip).iter().map(|p| p.count).collect()
    }

    /// By hand. 22 × 18 in holds 4 × 3 squares of 5 in and a band of 22 × 3 in over: three
    /// strips of 20 in. A fourth leaves 14 in of height, 4 × 2 squares and four inches more for
    /// strips; the ninth leaves 9 in, 4 squares, and four strips more.
    #[test]
    fn strips_beside_squares_first_then_through_them() {
        let piece = crate::cloth::garments::yardage(inches(22), inches(18));
        assert_eq!(
            counts(&piece, strip(inches(20), 30)),
            [12, 12, 12, 12, 8, 8, 8, 8, 8, 4, 4, 4, 4, 4, 0, 0, 0, 0, 0]
        );
        // Longer than the piece either way.
        assert_eq!(counts(&piece, strip(inches(23), 3)), [12]);
        assert_eq!(counts(&piece, strip(inches(20), 0)), [12]);
    }

    /// A leg 11 in wide and 30 in long: 2 × 6 squares of 5 in and an inch beside them, so that
    /// the first strip of 28 in costs nothing and the second one column, six squares. Four more
    /// lie where that column was.
    #[test]
    fn a_strip_along_a_leg() {
        let piece = crate::cloth::garments::yardage(inches(11), inches(30));
        assert_eq!(
            counts(&piece, strip(inches(28), 7)),
            [12, 12, 6, 6, 6, 6, 6, 0]
        );
        let plan = with_strips(&piece, &Cutting::default(), strip(inches(28), 1)).unwrap();
        let [cut] = plan.binding[..] else {
            panic!("{:?}", plan.binding)
        };
        assert_eq!(cut.right - cut.left, inches(1));
        assert_eq!(cut.to - cut.from, inches(28));
        assert_eq!([cut.left, cut.from], [inches(10), zero()]);
    }

    /// By hand: a band of 33 × 5 in is six squares. A strip of 28 in lies along it, from either end, and
    /// leaves 5 in beside it for one square; the 4 in over it are too low for another.
    #[test]
    fn a_strip_along_a_band_leaves_what_lies_beyond_its_end() {
        let band = crate::cloth::garments::yardage(inches(33), inches(5));
        let plans = plans(&band, strip(inches(28), 1));
        let counts: Vec<u32> = plans.iter().map(|p| p.count).collect();
        assert_eq!(counts, [6, 1]);
        let [cut] = plans[1].binding[..] else {
            panic!("{:?}", plans[1].binding)
        };
        assert_eq!(
            [cut.right - cut.left, cut.to - cut.from],
            [inches(28), inches(1)]
        );
        // Stained above the lowest inch in its last 5 in, the band holds five squares. Below the stain a
        // strip has room from end to end: begun 5 in from the left it leaves one square, begun at the left
        // none.
        let all = |piece: &Piece| {
            let [left, right] = [piece.stations[0].left, piece.stations[0].right];
            let top = piece.stations[1].at;
            (left, right, top)
        };
        let stained = |mut piece: Piece, upright: bool| {
            let (left, right, top) = all(&piece);
            let (from, to, left) = match upright {
                true => (top - inches(5), top, left + inches(1)),
                false => (inches(1), top, right - inches(5)),
            };
            piece.zones.push(Zone {
                kind: ZoneKind::Stain,
                from,
                to,
                left,
                right,
            });
            piece
        };
        let high = crate::cloth::garments::yardage(inches(5), inches(33));
        for (piece, upright) in [(stained(band, false), false), (stained(high, true), true)] {
            let plans = super::tests::plans(&piece, strip(inches(28), 1));
            let counts: Vec<u32> = plans.iter().map(|p| p.count).collect();
            assert_eq!(counts, [5, 1], "{upright}");
            let [cut] = plans[1].binding[..] else {
                panic!("{:?}", plans[1].binding)
            };
            let (left, right, top) = all(&piece);
            let free = match upright {
                true => [cut.from, top - cut.to],
                false => [cut.left - left, right - cut.right],
            };
            assert_eq!(free, [inches(5), zero()], "{upright}");
            // Four squares are scrap now, 100 in², less the strip of 28 in².
            let more = (plans[1].spare - plans[0].spare).value / (0.0254 * 0.0254);
            assert!((more - 72.0).abs() < 1e-6, "{more}");
        }
    }

    /// By hand: on a cloth of 10 × 10 in a strip of that length costs two of four squares, whichever way
    /// it lies. It lies upright at the left edge. So it does where that much of a larger cloth is good, 6
    /// in from its left edge and 6 in above its hem.
    #[test]
    fn among_equals_a_strip_lies_upright_at_the_left() {
        for stained in [0, 6] {
            let size = inches(10 + stained);
            let mut cloth = crate::cloth::garments::yardage(size, size);
            let (left, right) = (cloth.stations[0].left, cloth.stations[0].right);
            let good = left + inches(stained);
            let stain = |from, to, left, right| Zone {
                kind: ZoneKind::Stain,
                from,
                to,
                left,
                right,
            };
            if stained > 0 {
                cloth.zones = vec![
                    stain(zero(), size, left, good),
                    stain(zero(), inches(stained), good, right),
                ];
            }
            let plans = plans(&cloth, strip(inches(10), 1));
            assert_eq!([plans[0].count, plans[1].count], [4, 2], "{stained}");
            let cut = plans[1].binding[0];
            assert_eq!([cut.right - cut.left, cut.left], [inches(1), good]);
        }
    }

    /// A real leg gives a strip and keeps most of its squares.
    #[test]
    fn a_leg_of_jeans() {
        let [leg, _] = &start(
            GarmentKind::MensJeans,
            GarmentSize::Medium,
            Guess::Typical,
            System::Inch,
        )[..] else {
            panic!("two legs")
        };
        let counts = counts(leg, strip(inches(28), 2));
        assert_eq!(counts.len(), 3, "{counts:?}");
        assert!(counts[1] + 4 >= counts[0], "{counts:?}");
    }

    proptest! {
        #[test]
        fn strips_are_whole_and_meet_nothing(
            piece in piece(),
            long in 24i64..160,
            most in 0u32..6,
        ) {
            let cut = strip(eighth_inches(long), most);
            let how = Cutting::default();
            let plans = plans(&piece, cut);
            prop_assert_eq!(plans.last(), Some(&with_strips(&piece, &how, cut).unwrap()));
            prop_assert_eq!(&plans[0], &lay_out(&piece, &how).unwrap());
            prop_assert!(plans.len() <= most as usize + 1);
            for (n, plan) in plans.iter().enumerate() {
                prop_assert_eq!(plan.binding.len(), n);
                prop_assert!(n == 0 || plan.count <= plans[n - 1].count);
                prop_assert_eq!(plan.count as usize, plan.strips.iter().map(|s| s.squares.len()).sum::<usize>());
                let side = how.cut_side();
                let squares = plan.strips.iter().flat_map(|s| s.squares.iter().map(move |left| Patch {
                    from: s.from,
                    to: s.to,
                    left: *left,
                    right: *left + side,
                }));
                let all: Vec<Patch> = plan.binding.iter().copied().chain(squares).collect();
                for (i, a) in all.iter().enumerate() {
                    for b in &all[i + 1..] {
                        prop_assert!(!overlap(a, b), "{:?} {:?}", a, b);
                    }
                    for z in &piece.zones {
                        let zone = Patch { from: z.from, to: z.to, left: z.left, right: z.right };
                        prop_assert!(!overlap(a, &zone));
                    }
                }
                for p in &plan.binding {
                    let (wide, high) = (p.right - p.left, p.to - p.from);
                    let (length, width) = (std::cmp::max(wide, high), std::cmp::min(wide, high));
                    prop_assert_eq!([width, length], [cut.width, cut.length]);
                    prop_assert!(inside(&piece, p));
                }
            }
        }
    }
}
