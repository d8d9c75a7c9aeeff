//! Squaring up: what a finished block measures against what it should.
//!
//! With `s` the cut side and `W` a four's measured width, the lap really sewn across
//! it is `2s − W`; on a seam with stitching `w` wide the allowance is half of `2s − W − w`
//! (plain arithmetic). What a block
//! has over the trim size is cut off half on each side, so that the crossing stays in
//! the middle; where halving falls between the ruler's marks, the left or upper side
//! gets the smaller half and nothing is lost.
//!
//! Mean and spread are the arithmetic mean and the sample standard deviation
//! (divisor n − 1; NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.6).
//!
//! ```
//! use lapwork_core::measure::{Ruler, half_inches, sixty_fourths};
//! use lapwork_core::fitting::squaring::trim;
//!
//! // Five sixteenths over: what falls between the marks goes to the right.
//! let cut = trim(sixty_fourths(9 * 64 + 52), half_inches(19), Ruler::default());
//! assert_eq!(cut.before + cut.after, sixty_fourths(20));
//! assert!(cut.before <= cut.after);
//! ```

use crate::measure::outline::{Cut, Measures, Outline, OutlineFault};
use crate::measure::{Length, Ruler, from_mm, in_mm, in_nm, nm, zero};
use crate::plan::assembly::{Rect, Seam};
use crate::plan::{Joining, Plan, Stitch, laps_in};
use crate::throw::fringe::least_lap;
use crate::throw::{Size, Throw};

/// What to cut from one direction of a block.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Trim {
    /// Measured less wished for; below nothing when the block is short.
    pub over: Length,
    /// To cut from the left or upper side.
    pub before: Length,
    /// To cut from the right or lower side.
    pub after: Length,
}

/// Cut `measured` down to `target`, the crossing kept in the middle.
pub fn trim(measured: Length, target: Length, ruler: Ruler) -> Trim {
    let over = measured - target;
    if over <= zero() {
        return Trim {
            over,
            before: zero(),
            after: zero(),
        };
    }
    let step = in_nm(ruler.step());
    let before = nm(in_nm(over) / 2 / step * step);
    Trim {
        over,
        before,
        after: over - before,
    }
}

/// The size a block has with its own laps, untrimmed.
pub fn natural(throw: &Throw, block: Rect) -> Size {
    let mut size = Size {
        width: throw.plan.side * i64::from(block.cols),
        height: throw.plan.side * i64::from(block.rows),
    };
    let Some(join) = throw.assembly().join(block) else {
        return size;
    };
    let taken = |piece: Rect| {
        let made = throw.made(piece);
        made.take(&throw.plan)
    };
    if block.cols == 2 {
        // The four's pairs lie side to side; its own join is the level one.
        let piece = if block.rows == 2 { join.first } else { block };
        size.width -= taken(piece);
    }
    if block.rows == 2 {
        size.height -= taken(block);
    }
    if throw.is_turned(block) {
        size = size.turned();
    }
    size
}

/// How close two readings of a ruler may be called the same: half of 1/64 in.
const READING_NM: i64 = 198_438;

/// What a block of this outline holds: the largest piece of its trim size's proportions,
/// or the trim size itself where the two are the same to a ruler's reading.
///
/// # Errors
/// The [`OutlineFault`] when the measures make no block.
pub fn held(throw: &Throw, block: Rect, measures: Measures) -> Result<Size, OutlineFault> {
    let target = throw.target(block);
    let fit = Outline::new(measures)?
        .largest(target.width, target.height)
        .ok_or(OutlineFault::Impossible)?;
    let near = |got: Length, wished: Length| {
        if in_nm(got - wished).abs() <= READING_NM {
            wished
        } else {
            got
        }
    };
    Ok(Size {
        width: near(fit.width, target.width),
        height: near(fit.height, target.height),
    })
}

/// Where the ruler goes on a block of this outline that holds so much: round the trim size, or as
/// much of it as there is.
pub fn ruled(throw: &Throw, block: Rect, outline: &Outline, held: Size) -> Option<Cut> {
    let target = throw.target(block);
    let too_small = held.width < target.width || held.height < target.height;
    let size = if too_small { held } else { target };
    outline.place(size.width, size.height, None).or_else(|| {
        let fit = outline.largest(size.width, size.height)?;
        outline.place(fit.width, fit.height, None)
    })
}

/// The outline of a block of which the sides were measured, and where it is cut, until it is
/// squared up.
pub fn outlined(throw: &Throw, block: Rect) -> Option<(Outline, Cut)> {
    let work = throw.work(block).filter(|work| work.squared.is_none())?;
    let outline = Outline::new(work.outline?).ok()?;
    let cut = ruled(throw, block, &outline, work.measured?)?;
    Some((outline, cut))
}

/// The lap (or allowance) really sewn across a four of this measured side.
pub fn sewn_lap(plan: &Plan, joining: Joining, stitch: Stitch, measured: Length) -> Length {
    let taken = plan.side * 2 - measured;
    (taken - plan.beside(joining, stitch)) / laps_in(joining)
}

/// The ways in which a measured block's laps, by its size, leave less than the least fringe.
/// Stretch makes a block larger just as a narrow lap does, so the lap itself is to be measured.
pub fn thin_laps(throw: &Throw, block: Rect) -> Vec<Seam> {
    let measured = throw.work(block).and_then(|w| w.measured);
    let Some(size) = measured.filter(|_| !leans(throw, block)) else {
        return Vec::new();
    };
    let made = throw.made(block);
    let lapped = made.joining == Joining::Lapped;
    let ways = [
        (Seam::Upright, block.cols, size.width),
        (Seam::Level, block.rows, size.height),
    ];
    let sewn = |measured| sewn_lap(&throw.plan, made.joining, made.stitch, measured);
    let thin = |measured| sewn(measured) < least_lap(throw);
    let ways = ways.into_iter();
    ways.filter(|(_, squares, measured)| lapped && *squares == 2 && thin(*measured))
        .map(|(seam, _, _)| seam)
        .collect()
}

/// Mean and spread of some measures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Summary {
    /// How many.
    pub count: usize,
    /// Arithmetic mean.
    pub mean: Length,
    /// Sample standard deviation; nothing for a single measure.
    pub spread: Length,
    /// Smallest.
    pub least: Length,
    /// Largest.
    pub most: Length,
}

/// Sum up measures; `None` for none.
pub fn summary(measures: &[Length]) -> Option<Summary> {
    let (least, most) = (*measures.iter().min()?, *measures.iter().max()?);
    let n = measures.len() as f64;
    let mean = measures.iter().map(|m| in_mm(*m)).sum::<f64>() / n;
    let squares: f64 = measures.iter().map(|m| (in_mm(*m) - mean).powi(2)).sum();
    let spread = if measures.len() > 1 {
        (squares / (n - 1.0)).sqrt()
    } else {
        0.0
    };
    Some(Summary {
        count: measures.len(),
        mean: from_mm(mean),
        spread: from_mm(spread),
        least,
        most,
    })
}

/// Whether a block was measured by its sides and leans: the size it holds then tells nothing of its
/// laps, since pulled square it holds more.
pub fn leans(throw: &Throw, block: Rect) -> bool {
    let measures = throw.work(block).and_then(|w| w.outline);
    let outline = measures.and_then(|m| Outline::new(m).ok());
    outline.is_some_and(|outline| outline.leans())
}

/// Widths and heights of the measured fours, and of pairs beside them the side with two squares, in
/// the order they were measured.
pub fn measured_sides(throw: &Throw) -> Vec<Length> {
    sides_of(throw, |_| true)
}

/// The same of fours alone: what is told of the fours.
pub fn measured_fours(throw: &Throw) -> Vec<Length> {
    sides_of(throw, |p| (p.cols, p.rows) == (2, 2))
}

fn sides_of(throw: &Throw, which: impl Fn(Rect) -> bool) -> Vec<Length> {
    let measured = throw.measured.iter().filter(|p| which(**p));
    measured
        .filter(|p| !leans(throw, **p))
        .filter_map(|p| Some((p, throw.work(*p)?.measured?)))
        .flat_map(|(p, m)| {
            [
                (p.cols == 2).then_some(m.width),
                (p.rows == 2).then_some(m.height),
            ]
        })
        .flatten()
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Count;
    use crate::measure::{
        eighth_inches, half_inches, inches, quarter_inches, sixty_fourths, tenths_of_mm,
    };
    use crate::throw::Event;
    use proptest::prelude::*;

    #[test]
    fn a_four_an_eighth_over_loses_a_sixteenth_a_side() {
        let four = half_inches(19);
        let cut = trim(four + eighth_inches(1), four, Ruler::default());
        assert_eq!(
            (cut.over, cut.before, cut.after),
            (eighth_inches(1), sixty_fourths(4), sixty_fourths(4))
        );
        assert_eq!(
            trim(four - eighth_inches(1), four, Ruler::default()).over,
            zero() - eighth_inches(1)
        );
    }

    #[test]
    fn the_lap_being_sewn_shows_in_the_width() {
        let plan = Plan::default();
        let twin = plan.stitch;
        assert_eq!(
            sewn_lap(&plan, Joining::Lapped, twin, eighth_inches(77)),
            eighth_inches(3)
        );
        assert_eq!(
            sewn_lap(&plan, Joining::Seamed, Stitch::Straight, inches(9)),
            half_inches(1)
        );
        // Of 254 mm the pair keeps 224.6: 29.4 are taken, 4 of them between the needles.
        let plan = plan.joined(Joining::Exposed);
        assert_eq!(
            sewn_lap(&plan, Joining::Exposed, twin, tenths_of_mm(2246)),
            half_inches(1)
        );
    }

    #[test]
    fn mean_and_spread() {
        // NIST StRD NumAcc1: 10000001, 10000003, 10000002 has mean 10000002 and standard deviation 1.
        let sum = summary(&[10_000_001, 10_000_003, 10_000_002].map(nm)).unwrap();
        assert_eq!((sum.mean, sum.spread), (nm(10_000_002), nm(1)));
        assert_eq!(summary(&[]), None);
        // 10.1, 10.3 and 10.2 mm, where rounding to the nanometre hides nothing.
        let sum = summary(&[101, 103, 102].map(tenths_of_mm)).unwrap();
        assert_eq!(
            (sum.count, sum.mean, sum.spread),
            (3, tenths_of_mm(102), tenths_of_mm(1))
        );
        assert_eq!((sum.least, sum.most), {
            (tenths_of_mm(101), tenths_of_mm(103))
        });
        // Two measures 2 apart: 1 either way of their mean, √(2 / 1). One has no spread.
        let two = summary(&[tenths_of_mm(10), tenths_of_mm(30)]).unwrap();
        assert_eq!(two.spread, nm(1_414_214));
        assert_eq!(summary(&[inches(9)]).unwrap().spread, zero());
    }

    #[test]
    fn natural_size_follows_each_joins_own_lap() {
        let plan = Plan {
            across: 2,
            down: 2,
            ..Plan::default()
        };
        let mut throw = Throw::begin(&Event::Begun {
            name: "t".into(),
            plan,
            prints: vec![],
            denims: vec![],
            after: None,
        })
        .unwrap();
        let pairs = [Rect::from([0, 0, 1, 2]), Rect::from([1, 0, 1, 2])];
        throw.apply(
            &Event::Done {
                task: crate::throw::tasks::Task::Dot,
                pieces: pairs.to_vec(),
                made: vec![],
            },
            0,
        );
        throw.apply(
            &Event::PlanChanged {
                plan: Plan {
                    lap: quarter_inches(3),
                    ..plan
                },
                spares: Count::NONE,
                glued: vec![],
            },
            0,
        );
        let size = natural(&throw, Rect::grid(2, 2));
        assert_eq!(
            (size.width, size.height),
            (half_inches(19), quarter_inches(37))
        );
    }

    /// A four whose sides are alike, with its diagonals.
    fn even_sides(side: Length, diagonals: (Length, Length)) -> Measures {
        let sides = crate::measure::outline::Sides {
            top: side,
            right: side,
            bottom: side,
            left: side,
        };
        Measures {
            sides,
            diagonals: Some(diagonals),
        }
    }

    /// A ruler of 1/64 in is read to half of that, 0.198 mm: a four of 9½ in that is 0.15 mm less each way
    /// is read as holding it, and one 0.25 mm less is not. The diagonals are those of a square, √2 times
    /// its sides.
    #[test]
    fn a_four_is_short_by_what_a_ruler_can_show() {
        use crate::fitting::tests::begun;
        let throw = begun(Plan::default());
        let of = |hundredths: i64| {
            let side = half_inches(19) - nm(hundredths * 10_000);
            let across = nm((in_nm(side) as f64 * 2.0_f64.sqrt()).round() as i64);
            let measures = even_sides(side, (across, across));
            held(&throw, Rect::grid(2, 2), measures).unwrap()
        };
        let full = half_inches(19);
        assert_eq!((of(15).width, of(15).height), (full, full));
        assert_eq!((of(-15).width, of(-15).height), (full, full));
        let short = of(25);
        for lost in [full - short.width, full - short.height] {
            assert!((in_nm(lost) - 250_000).abs() < 1_000, "{lost}");
        }
        assert!(of(-25).width > full);
    }

    /// By hand: with 3 mm beside two rows 4 mm apart a lap is 10 mm at the least. A four 9¾ in wide was
    /// lapped ¼ in, 6.35 mm, which is too little; 9⅝ in are ⅜ in, 9.525 mm, too little still; 9 9/16 in are
    /// 7/16 in, 11.1 mm. A hidden seam has no fringe to be too little, and a single square no lap.
    #[test]
    fn laps_are_thin_that_leave_too_little_fringe() {
        use crate::fitting::tests::{four, measured};
        let told = |plan: Plan, piece, width, height| {
            thin_laps(&measured(plan, &[(piece, width, height)]), piece)
        };
        let plan = Plan::default();
        let (full, block) = (half_inches(19), four(1, 1));
        let wide = |sixteenths: i64| half_inches(19) + sixty_fourths(4 * sixteenths);
        assert_eq!(told(plan, block, wide(4), full), [Seam::Upright]);
        assert_eq!(told(plan, block, full, wide(2)), [Seam::Level]);
        assert_eq!(told(plan, block, wide(2), wide(2)).len(), 2);
        assert_eq!(told(plan, block, wide(1), wide(1)), []);
        // 244 mm are a lap of 10 mm.
        assert_eq!(told(plan, block, tenths_of_mm(2440), full), []);
        let hidden = plan.joined(Joining::Seamed);
        assert_eq!(told(hidden, block, wide(8), wide(8)), []);
        let odd = Plan { across: 5, ..plan };
        let pair = Rect::from([0, 4, 2, 1]);
        assert_eq!(told(odd, pair, inches(10), full), []);
        assert_eq!(told(odd, pair, inches(10), wide(4)), [Seam::Level]);
    }

    /// A four that leans holds less than its laps made, so that its measure is none of theirs; of a pair
    /// at the end of a row only the side with two squares is one. The sides of a lozenge of 9½ in whose
    /// diagonals are 14 and 12.845 in are as long as those of a square: 14² + 12.845² = 4 · 9.5².
    #[test]
    fn a_four_that_leans_is_no_measure_of_its_laps() {
        use crate::fitting::tests::{four, measured};
        let plan = Plan {
            across: 5,
            down: 2,
            ..Plan::default()
        };
        let pair = Rect::from([0, 4, 2, 1]);
        let full = half_inches(19);
        let odd = [(pair, inches(5), full), (four(0, 0), full, inches(9))];
        let mut throw = measured(plan, &odd);
        assert_eq!(measured_sides(&throw), [full, inches(9), full, full, full]);
        let [side, wide, high] = [full, inches(14), tenths_of_mm(3263)];
        let measures = even_sides(side, (wide, high));
        let piece = four(0, 1);
        throw.apply(&Event::Outlined { piece, measures }, 0);
        assert!(leans(&throw, piece) && !leans(&throw, four(0, 0)));
        assert_eq!(measured_sides(&throw), [full, inches(9), full]);
        // Sides of 9¾ in are those of laps of ¼ in where the four is square; 13.85² + 13.727² = 4 · 9.75².
        let wide = |across, down| even_sides(quarter_inches(39), (across, down));
        let [long, short] = [tenths_of_mm(3518), tenths_of_mm(3487)];
        let even = nm(350_230_000);
        for (measures, thin) in [(wide(long, short), 0), (wide(even, even), 2)] {
            let Size { width, height } = held(&throw, piece, measures).unwrap();
            let holds = Event::Measured {
                piece,
                width,
                height,
            };
            throw.apply(&holds, 0);
            throw.apply(&Event::Outlined { piece, measures }, 0);
            assert!(width > half_inches(19) + eighth_inches(1));
            assert_eq!(leans(&throw, piece), thin == 0);
            assert_eq!(thin_laps(&throw, piece).len(), thin);
        }
    }

    proptest! {
        #[test]
        fn trims_add_up_and_keep_the_middle(measured in 0i64..40_000, target in 0i64..40_000) {
            let (m, t) = (tenths_of_mm(measured), tenths_of_mm(target));
            let cut = trim(m, t, Ruler::default());
            prop_assert_eq!(cut.over, m - t);
            if m > t {
                prop_assert_eq!(m - cut.before - cut.after, t);
                prop_assert!(cut.after >= cut.before);
                prop_assert!(cut.after - cut.before < Ruler::default().step() * 2);
            }
        }
    }
}
