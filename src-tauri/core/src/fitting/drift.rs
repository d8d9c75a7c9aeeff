//! What the measured fours say about the maker's lap, in the order they were sewn.
//!
//! Planned and sewn lap never agree to the thread. After a few fours the measures
//! can decide whether that is chance, a ruler line read wrong on every join, cloth
//! that gave under the foot, or a hand that wanders from block to block; each
//! calls for something else. A four is `2s − o` to a side, so a block oversize by
//! some amount was lapped narrow by the same amount.
//!
//! # The statistics
//!
//! Each block gives its deviation (measured less planned) across and down; its
//! *deviation* is the mean of both. Over `n` blocks in millimetres:
//!
//! * mean `x̄ = Σx/n` and sample standard deviation `s = √(Σ(x − x̄)²/(n − 1))`
//!   (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.1 and 1.3.5.6),
//! * 95 % confidence interval of the mean `x̄ ± t·s/√n`, Student's `t` with `n − 1`
//!   degrees (the same, 1.3.5.2), and the two-sided p of the mean being zero,
//! * the trend per block: the least-squares slope against the order 0, 1, 2 …,
//!   its standard error, and the two-sided p with `n − 2` degrees (ordinary least
//!   squares; textbook),
//! * across against down by Welch's test, `t = (x̄₁ − x̄₂)/√(s₁²/n + s₂²/n)`, with
//!   the degrees of freedom of Welch and Satterthwaite (e-Handbook, 1.3.5.3).
//!
//! Sums are taken in whole nanometres, so that like measures have a spread of
//! exactly zero. Without any spread a p is 1 where the figure agrees with zero
//! and 0 where it does not.
//!
//! # The verdict
//!
//! Telling stretch from a wrong lap is a **judgement** from these figures: common
//! practice, no source for any of the thresholds. The reasoning is that a wrong
//! mark errs alike on every join and both ways, while cloth gives unevenly or along
//! one grain. With the ruler's mark as measure, in this order:
//!
//! 1. fewer than 3 blocks: [`DriftVerdict::TooFew`];
//! 2. slope significant at 5 % and over all blocks worth a mark: [`DriftVerdict::Drifting`];
//! 3. across and down differ at 5 % and by half a mark: [`DriftVerdict::Stretch`] along
//!    the larger, or [`DriftVerdict::Uneven`] where the larger is not over by half a mark;
//! 4. the mean is off at 5 % and by half a mark: with a spread of one mark at most
//!    [`DriftVerdict::LapNarrow`] or [`DriftVerdict::LapWide`]; with more, [`DriftVerdict::Stretch`]
//!    both ways when over, [`DriftVerdict::Uneven`] when under;
//! 5. otherwise nothing speaks against the plan: [`DriftVerdict::AsPlanned`].
//!
//! # Promises
//!
//! No figure is ever NaN or infinite, and no input panics. Mean and spread do not
//! depend on the order; spread and slope do not depend on a constant added to all.
//!
//! # Limits
//!
//! Three tests are asked at once, so chance alone raises an alarm more often than one
//! test would, but never oftener than three in twenty, the sum of the three (Boole's
//! inequality); less where the thresholds in marks hold back. In the outside check
//! (`tests/tests/drift.rs`, 4,000 throws each), with widths and heights so far about the plan:
//!
//! | one standard deviation | ½ mark | 1 mark | 1.6 marks | 3 marks |
//! | --- | --- | --- | --- | --- |
//! | throws of 6 fours | 6.3 % | 11.9 % | 13.9 % | 13.7 % |
//! | throws of 12 fours | 2.2 % | 10.0 % | 13.5 % | 13.9 % |
//!
//! The two directions of a four are sewn at different times, pairs first; a mark moved in
//! between looks like stretch. Measures are taken as independent and near the bell curve,
//! which a handful cannot show.

use crate::fitting::squaring::{leans, natural};
use crate::measure::{Length, from_mm, in_nm, nm};
use crate::throw::Throw;
use statrs::distribution::{ContinuousCDF, StudentsT};
use statrs::function::beta::checked_beta_reg;

/// What is called significant.
const LEVEL: f64 = 0.05;
/// Nanometres in a millimetre.
const NM: f64 = crate::measure::NM_PER_MM as f64;

/// What one measured four is off by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Deviation {
    /// Measured less planned width.
    pub across: Length,
    /// Measured less planned height.
    pub down: Length,
}

/// How far each measured four is off that does not lean, in the order they were sewn.
pub fn seen(throw: &Throw) -> Vec<Deviation> {
    throw
        .measured
        .iter()
        .filter(|p| p.rows == 2 && p.cols == 2 && !leans(throw, **p))
        .filter_map(|p| {
            let (measured, own) = (throw.work(*p)?.measured?, natural(throw, *p));
            Some(Deviation {
                across: measured.width - own.width,
                down: measured.height - own.height,
            })
        })
        .collect()
}

/// The line through the deviations in the order they were sewn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trend {
    /// Millimetres more with every block.
    pub slope: f64,
    /// Standard error of the slope, in millimetres.
    pub error: f64,
    /// Two-sided p of the slope being zero.
    pub p: f64,
    /// Where the line stands at the next block, in millimetres.
    pub next: f64,
}

/// Across against down (Welch).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Directions {
    /// Mean across, in millimetres.
    pub across: f64,
    /// Mean down, in millimetres.
    pub down: f64,
    /// Two-sided p of both being the same.
    pub p: f64,
}

/// Along which way cloth has given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Along {
    /// The width.
    Across,
    /// The height.
    Down,
    /// Both.
    Both,
}

/// What the measures point to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DriftVerdict {
    /// Fewer than three blocks.
    TooFew,
    /// Nothing speaks against the plan.
    AsPlanned,
    /// The blocks are over alike: the lap is sewn narrower than planned.
    LapNarrow {
        /// By how much.
        by: Length,
    },
    /// The blocks are under alike: the lap is sewn wider than planned.
    LapWide {
        /// By how much.
        by: Length,
    },
    /// The blocks are over unevenly, or one way only: the cloth has given.
    Stretch {
        /// Which way.
        along: Along,
    },
    /// The blocks are off, but neither one lap nor stretch would do that: under
    /// with a large spread, or under one way only.
    Uneven,
    /// The blocks grow or shrink as the work goes on.
    Drifting {
        /// By how much with each block; negative they shrink.
        per_block: Length,
    },
}

/// How far to trust the verdict, from the count of blocks alone (common practice,
/// no source).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sureness {
    /// Fewer than 5.
    Guess,
    /// Fewer than 12.
    Likely,
    /// 12 or more.
    Firm,
}

/// What the measures say. Floating figures are millimetres, positive is over.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drift {
    /// How many blocks.
    pub count: usize,
    /// Mean deviation; zero for none.
    pub mean: f64,
    /// Sample standard deviation, from two blocks on.
    pub spread: Option<f64>,
    /// 95 % confidence interval of the mean, from two blocks on.
    pub interval: Option<(f64, f64)>,
    /// Two-sided p of the mean being zero, from two blocks on.
    pub p: Option<f64>,
    /// The trend, from three blocks on.
    pub trend: Option<Trend>,
    /// Across against down, from two blocks on.
    pub directions: Option<Directions>,
    /// What it points to.
    pub verdict: DriftVerdict,
    /// How far to trust that.
    pub sureness: Sureness,
    /// By how much to move the lap's mark for the next blocks, in whole marks: above
    /// zero is a wider lap. Only for a lap narrow, wide or drifting, and only when
    /// it comes to a mark.
    pub change_mark: Option<Length>,
}

/// Mean and deviations from it, in millimetres, of numbers in units of `unit` mm.
struct Sample {
    mean: f64,
    away: Vec<f64>,
}

impl Sample {
    /// `None` for no numbers. They come from at most two `i64` added, so that the
    /// sums over any slice that fits in memory stay far inside an `i128`.
    fn of(numbers: impl Iterator<Item = i128> + Clone, unit: f64) -> Option<Sample> {
        let count = numbers.clone().count() as i128;
        if count == 0 {
            return None;
        }
        let sum: i128 = numbers.clone().sum();
        let scale = unit / count as f64;
        Some(Sample {
            mean: sum as f64 * scale,
            away: numbers
                .map(|number| (number * count - sum) as f64 * scale)
                .collect(),
        })
    }

    /// Sample variance; zero for fewer than two.
    fn variance(&self) -> f64 {
        let squares: f64 = self.away.iter().map(|a| a * a).sum();
        squares / self.away.len().saturating_sub(1).max(1) as f64
    }
}

/// Two-sided p of `figure` being zero, when its standard error is `error`.
fn two_sided(figure: f64, error: f64, freedom: f64) -> f64 {
    if error <= 0.0 {
        return if figure == 0.0 { 1.0 } else { 0.0 };
    }
    let square = (figure / error).powi(2);
    // P(|T| > t) is an incomplete beta function; each tail where it keeps its digits.
    let p = if square > 1.0 {
        checked_beta_reg(freedom / 2.0, 0.5, freedom / (freedom + square))
    } else {
        checked_beta_reg(0.5, freedom / 2.0, square / (freedom + square)).map(|rest| 1.0 - rest)
    };
    p.ok()
        .filter(|p| p.is_finite())
        .map_or(1.0, |p| p.clamp(0.0, 1.0))
}

/// `t` that 95 % of Student's distribution lies within.
fn student(freedom: f64) -> f64 {
    StudentsT::new(0.0, 1.0, freedom).map_or(0.0, |t| t.inverse_cdf(0.975))
}

/// The least-squares line, from three blocks on.
fn trend(sample: &Sample) -> Option<Trend> {
    let n = sample.away.len();
    if n < 3 {
        return None;
    }
    let middle = (n - 1) as f64 / 2.0;
    let orders = || (0..n).map(|i| i as f64 - middle);
    let squares: f64 = orders().map(|x| x * x).sum();
    let slope = orders().zip(&sample.away).map(|(x, y)| x * y).sum::<f64>() / squares;
    let rest: f64 = orders()
        .zip(&sample.away)
        .map(|(x, y)| (y - slope * x).powi(2))
        .sum();
    let freedom = (n - 2) as f64;
    let error = (rest / freedom / squares).sqrt();
    Some(Trend {
        slope,
        error,
        p: two_sided(slope, error, freedom),
        next: sample.mean + slope * (n as f64 - middle),
    })
}

/// Welch's test.
fn directions(across: &Sample, down: &Sample) -> Option<Directions> {
    let n = across.away.len() as f64;
    if n < 2.0 {
        return None;
    }
    let (one, two) = (across.variance() / n, down.variance() / n);
    let both = one + two;
    // Scaled by the larger, so that squares of small variances do not vanish.
    let most = one.max(two);
    let freedom = if most > 0.0 {
        (n - 1.0) * (both / most).powi(2) / ((one / most).powi(2) + (two / most).powi(2))
    } else {
        n - 1.0
    };
    Some(Directions {
        across: across.mean,
        down: down.mean,
        p: two_sided(across.mean - down.mean, both.sqrt(), freedom),
    })
}

/// Read the measured fours, in the order they were sewn. `mark` is the ruler's
/// step; one that is not positive counts as a millimetre.
pub fn drift(seen: &[Deviation], mark: Length) -> Drift {
    let mark = if mark > nm(0) {
        mark
    } else {
        nm(crate::measure::NM_PER_MM)
    };
    let count = seen.len();
    let across = seen.iter().map(|s| i128::from(in_nm(s.across)));
    let down = seen.iter().map(|s| i128::from(in_nm(s.down)));
    let both = across.clone().zip(down.clone()).map(|(a, d)| a + d);
    let mut found = Drift {
        count,
        mean: 0.0,
        spread: None,
        interval: None,
        p: None,
        trend: None,
        directions: None,
        verdict: DriftVerdict::TooFew,
        sureness: match count {
            0..5 => Sureness::Guess,
            5..12 => Sureness::Likely,
            _ => Sureness::Firm,
        },
        change_mark: None,
    };
    let (Some(both), Some(across), Some(down)) = (
        Sample::of(both, 0.5 / NM),
        Sample::of(across, 1.0 / NM),
        Sample::of(down, 1.0 / NM),
    ) else {
        return found;
    };
    found.mean = both.mean;
    if count < 2 {
        return found;
    }
    let spread = both.variance().sqrt();
    let error = spread / (count as f64).sqrt();
    let freedom = (count - 1) as f64;
    let either = student(freedom) * error;
    found.spread = Some(spread);
    found.interval = Some((both.mean - either, both.mean + either));
    found.p = Some(two_sided(both.mean, error, freedom));
    found.trend = trend(&both);
    found.directions = directions(&across, &down);
    judge(&mut found, mark);
    found
}

/// Put a verdict on the figures.
fn judge(found: &mut Drift, mark: Length) {
    let (Some(spread), Some(p), Some(trend), Some(ways)) =
        (found.spread, found.p, found.trend, found.directions)
    else {
        return;
    };
    let step = in_nm(mark) as f64 / NM;
    // Figures come from whole nanometres; a millionth of a mark is rounding.
    let reaches = |figure: f64, marks: f64| figure.abs() >= step * (marks - 1e-6);
    let larger = ways.across.max(ways.down);
    let over = larger > 0.0 && reaches(larger, 0.5);
    let off = p < LEVEL && reaches(found.mean, 0.5);
    let (verdict, lap) = if trend.p < LEVEL && reaches(trend.slope * found.count as f64, 1.0) {
        let per_block = from_mm(trend.slope);
        (DriftVerdict::Drifting { per_block }, Some(trend.next))
    } else if ways.p < LEVEL && reaches(ways.across - ways.down, 0.5) {
        let along = if ways.across > ways.down {
            Along::Across
        } else {
            Along::Down
        };
        let verdict = if over {
            DriftVerdict::Stretch { along }
        } else {
            DriftVerdict::Uneven
        };
        (verdict, None)
    } else if off && spread <= step * (1.0 + 1e-6) {
        let by = from_mm(found.mean.abs());
        let verdict = if found.mean > 0.0 {
            DriftVerdict::LapNarrow { by }
        } else {
            DriftVerdict::LapWide { by }
        };
        (verdict, Some(found.mean))
    } else if off && found.mean > 0.0 {
        (DriftVerdict::Stretch { along: Along::Both }, None)
    } else if off {
        (DriftVerdict::Uneven, None)
    } else {
        (DriftVerdict::AsPlanned, None)
    };
    found.verdict = verdict;
    found.change_mark = lap
        .map(|off| ((off / step * (1.0 + 1e-9)).round() as i64).saturating_mul(in_nm(mark)))
        .filter(|change| *change != 0)
        .map(nm);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{eighth_inches, sixty_fourths};
    use proptest::prelude::*;

    /// Deviations in sixty-fourths, across and down.
    fn fours(sixtyfourths: &[(i64, i64)]) -> Vec<Deviation> {
        sixtyfourths
            .iter()
            .map(|(across, down)| Deviation {
                across: sixty_fourths(*across),
                down: sixty_fourths(*down),
            })
            .collect()
    }

    /// The verdict and the change of mark on a ruler of sixteenths.
    fn check(sixtyfourths: &[(i64, i64)], verdict: DriftVerdict, change: i64) {
        let found = drift(&fours(sixtyfourths), sixty_fourths(4));
        assert_eq!(found.verdict, verdict, "{found:?}");
        assert_eq!(
            found.change_mark,
            (change != 0).then(|| sixty_fourths(change))
        );
    }

    /// By the rule that tells stretch from other unevenness, on a ruler of sixteenths, of which half is
    /// 2/64: across 2½/64 over and down as planned is cloth that gave across; 1½/64 over across and
    /// 1/64 under down is over by too little for that, though both ways differ by as much.
    #[test]
    fn half_a_mark_over_is_stretch_and_less_is_not() {
        let along = Along::Across;
        check(
            &[(2, 0), (3, 0), (3, 0), (2, 0)],
            DriftVerdict::Stretch { along },
            0,
        );
        check(
            &[(1, -1), (2, -1), (2, -1), (1, -1)],
            DriftVerdict::Uneven,
            0,
        );
        // Forty fours by turns 3/64 under and 7/64 over are 2/64 over, half a mark, and differ by more than
        // a mark, 5/64: the cloth gave both ways.
        let both: Vec<_> = [(-3, -3), (7, 7)].repeat(20);
        let along = Along::Both;
        check(&both, DriftVerdict::Stretch { along }, 0);
    }

    #[test]
    fn verdicts_of_the_bench() {
        check(&[], DriftVerdict::TooFew, 0);
        check(&[(8, 8), (8, 8)], DriftVerdict::TooFew, 0);
        check(&[(0, 0); 5], DriftVerdict::AsPlanned, 0);
        check(
            &[(1, 0), (-1, 1), (0, -1), (1, -1)],
            DriftVerdict::AsPlanned,
            0,
        );
        let by = eighth_inches(1);
        check(&[(8, 8); 4], DriftVerdict::LapNarrow { by }, 8);
        check(&[(-8, -8); 4], DriftVerdict::LapWide { by }, -8);
        check(
            &[(7, 9), (8, 8), (9, 7), (9, 9), (7, 7)],
            DriftVerdict::LapNarrow { by },
            8,
        );
        // Half a mark, the least that counts, is a whole mark's change.
        check(
            &[(2, 2); 3],
            DriftVerdict::LapNarrow {
                by: sixty_fourths(2),
            },
            4,
        );
        check(
            &[(8, 1), (7, 0), (9, -1), (8, 0)],
            DriftVerdict::Stretch {
                along: Along::Across,
            },
            0,
        );
        check(
            &[(0, 8), (0, 7), (1, 9)],
            DriftVerdict::Stretch { along: Along::Down },
            0,
        );
        check(
            &[(12, 12), (2, 4), (18, 16), (10, 9), (1, 3), (11, 12)],
            DriftVerdict::Stretch { along: Along::Both },
            0,
        );
        check(
            &[
                (-12, -12),
                (-2, -4),
                (-18, -16),
                (-10, -9),
                (-1, -3),
                (-11, -12),
            ],
            DriftVerdict::Uneven,
            0,
        );
        check(
            &[(-8, 0), (-7, 0), (-9, 1), (-8, 0)],
            DriftVerdict::Uneven,
            0,
        );
        check(
            &[(0, 0), (2, 2), (4, 4), (6, 6)],
            DriftVerdict::Drifting {
                per_block: sixty_fourths(2),
            },
            8,
        );
        check(
            &[(6, 6), (4, 4), (2, 2), (0, 0), (-2, -2)],
            DriftVerdict::Drifting {
                per_block: sixty_fourths(-2),
            },
            -4,
        );
    }

    /// By hand: two fours are 1 and 3 mm over across, and 1 mm under and 1 over down. The means are 2 and 0;
    /// either way the squares of what they are off their mean come to 2, over 2 fours 1, so that Welch's t is
    /// 2 / √2 with (1 + 1)² / (1 + 1) = 2 degrees. Of 2 degrees p is 1 − t / √(t² + 2) = 1 − √2 / 2.
    #[test]
    fn two_fours_tell_across_from_down() {
        let mm = |n: i64| nm(n * 1_000_000);
        let of = |across, down| Deviation { across, down };
        let found = drift(&[of(mm(1), mm(-1)), of(mm(3), mm(1))], sixty_fourths(4));
        let ways = found.directions.expect("two fours are enough");
        assert_eq!((ways.across, ways.down), (2.0, 0.0));
        assert!((ways.p - 0.292_893).abs() < 1e-6, "{}", ways.p);
        assert_eq!(found.trend, None);
        let alike = [of(mm(2), mm(2)); 3];
        assert_eq!(drift(&alike, nm(0)).change_mark, Some(mm(2)));
        let one = drift(&[of(mm(1), mm(-1))], sixty_fourths(4));
        assert_eq!(one.directions, None);
    }

    /// By hand, on sixteenths, a mark of 4/64: five fours that grow by 1/64 each grow by 5/64 in all, more than a
    /// mark, and the sixth would be 5/64 over, a mark to the nearest. Three grow by 3/64, less than a mark.
    #[test]
    fn fours_drift_that_grow_by_a_mark_in_all() {
        let per_block = sixty_fourths(1);
        let grow = [0, 1, 2, 3, 4].map(|n| (n, n));
        check(&grow, DriftVerdict::Drifting { per_block }, 4);
        check(&grow[..3], DriftVerdict::AsPlanned, 0);
        // Four that come up to the plan: the fifth would be as planned, so that no mark is moved.
        let up = [-4, -3, -2, -1].map(|n| (n, n));
        check(&up, DriftVerdict::Drifting { per_block }, 0);
    }

    /// By hand: fours that are 0, 1, 3 and 4 mm over lie about a line that rises 7/5 = 1.4 mm a four, through
    /// −0.1, 1.3, 2.7 and 4.1, and stands at 5.5 for the fifth. What they are off it comes, squared, to 0.2,
    /// over 2 degrees 0.1, so that the slope's error is √(0.1 / 5) and t = 1.4 / 0.1414 = √98. Of 2 degrees p is
    /// 1 − t / √(t² + 2) = 1 − √0.98.
    #[test]
    fn a_line_through_four_fours() {
        let over = |n: i64| Deviation {
            across: nm(n * 1_000_000),
            down: nm(n * 1_000_000),
        };
        let found = drift(&[0, 1, 3, 4].map(over), sixty_fourths(4));
        let trend = found.trend.expect("four fours are enough");
        let near = |told: f64, hand: f64| assert!((told - hand).abs() < 1e-6, "{trend:?}");
        near(trend.slope, 1.4);
        near(trend.next, 5.5);
        near(trend.error, 0.141_421_4);
        near(trend.p, 0.010_050_5);
    }

    /// By hand, in sixty-fourths, with the two-sided 5 % points of Student's t from any handbook
    /// (3.182 with 3 degrees, 2.571 with 5, 2.776 with 4, 2.447 with 6): what chance alone gives in
    /// more than one throw of twenty is no finding, even where it would be one in five.
    #[test]
    fn one_in_twenty_is_the_limit() {
        let by = |n| DriftVerdict::LapNarrow {
            by: sixty_fourths(n),
        };
        // 2, 6, 0, 4: mean 3, squares (1 + 9 + 9 + 1) / 3, s = 2.58, t = 3 / (2.58 / 2) = 2.32, which
        // is under 3.18 (p is a tenth).
        check(
            &[(2, 2), (6, 6), (0, 0), (4, 4)],
            DriftVerdict::AsPlanned,
            0,
        );
        // 3, 5, 1, 3: the same mean, s = 1.63, t = 3.67, over 3.18.
        check(&[(3, 3), (5, 5), (1, 1), (3, 3)], by(3), 4);
        // 0, 6, 0, 6, 4, 8: the slope is 20 / 17.5 = 1.14 a block and 6.9 over all; its error is
        // sqrt((56 - 22.86) / 4 / 17.5) = 0.69, t = 1.66, under 2.78 (p is a sixth). The mean is 4
        // with s = sqrt(56 / 5) = 3.35, t = 4 / (3.35 / sqrt 6) = 2.93, over 2.57: off, not drifting.
        let six = [(0, 0), (6, 6), (0, 0), (6, 6), (4, 4), (8, 8)];
        check(&six, by(4), 4);
        // Across 2, 6, 0, 4 and down as much less 4: means 3 and -1, Welch's t is
        // 4 / sqrt(6.67 / 4 + 6.67 / 4) = 2.19, under 2.45 with 6 degrees (p is 0.07).
        check(
            &[(2, -2), (6, 2), (0, -4), (4, 0)],
            DriftVerdict::AsPlanned,
            0,
        );
        // Down as much less 5: t = 2.74, over 2.45. That is stretch across.
        check(
            &[(2, -3), (6, 1), (0, -5), (4, -1)],
            DriftVerdict::Stretch {
                along: Along::Across,
            },
            0,
        );
    }

    /// By hand: 1, 2, 3, 4 and 5 mm have the mean 3 and the variance (4 + 1 + 0 + 1 + 4) / 4 = 2.5;
    /// 95 % of Student's t with 4 degrees lie within 2.776, so that the mean lies within
    /// 3 ± 2.776 · √(2.5 / 5) = 3 ± 1.963. The line through them gains 1 a block and stands at 6 next.
    #[test]
    fn figures_of_five_blocks() {
        let seen: Vec<_> = (1..=5)
            .map(|mm| Deviation {
                across: nm(mm * 1_000_000),
                down: nm(mm * 1_000_000),
            })
            .collect();
        let found = drift(&seen, nm(1_000_000));
        let close = |a: f64, b: f64| (a - b).abs() < 5e-4;
        assert!(close(found.mean, 3.0) && close(found.spread.unwrap(), 2.5_f64.sqrt()));
        let (low, high) = found.interval.unwrap();
        assert!(close(low, 1.037) && close(high, 4.963), "{low} {high}");
        let trend = found.trend.unwrap();
        assert!(close(trend.slope, 1.0) && close(trend.error, 0.0) && close(trend.next, 6.0));
    }

    /// By hand, with Student's distribution in its closed forms: with 1 degree of freedom the two-sided
    /// p is 1 − 2/π · arctan t, with 2 it is 1 − t/√(t² + 2), with 4 it is 1 − ¾ · u · (1 − u²/12) where
    /// u = t/√(1 + t²/4).
    #[test]
    fn p_by_the_closed_forms_of_students_distribution() {
        let mm = |sizes: &[(i64, i64)]| {
            let each = sizes.iter().map(|(across, down)| Deviation {
                across: nm(across * 1_000_000),
                down: nm(down * 1_000_000),
            });
            drift(&each.collect::<Vec<_>>(), nm(1_000_000))
        };
        let close = |a: f64, b: f64| assert!((a - b).abs() < 1e-6, "{a} {b}");
        // 0 and 2 mm over: 1 on average, a spread of √2 and so a standard error of 1; t is 1, arctan of it
        // π/4. 95 % of Student's distribution with 1 degree lie within tan(0.95 · π/2) = 12.7062.
        let two = mm(&[(0, 0), (2, 2)]);
        close(two.p.unwrap(), 0.5);
        let (low, high) = two.interval.unwrap();
        assert!((low + 11.7062).abs() < 1e-4 && (high - 13.7062).abs() < 1e-4);
        // 0, 2 and 1 mm: a slope of ½. Off its line they are ½, 1 and ½, of which the squares make 1½, so
        // that the standard error is √(1½ / 1 / 2) = √¾; t is 1/√3, arctan of it π/6. Next it stands at 2.
        let trend = mm(&[(0, 0), (2, 2), (1, 1)]).trend.unwrap();
        close(trend.slope, 0.5);
        close(trend.error, 0.75_f64.sqrt());
        close(trend.p, 2.0 / 3.0);
        close(trend.next, 2.0);
        // Across 1, 2 and 3 mm, down as planned: t is 2/√⅓ = √12 with 2 degrees.
        let one = mm(&[(1, 0), (2, 0), (3, 0)]).directions.unwrap();
        close(one.p, 1.0 - (12.0_f64 / 14.0).sqrt());
        // Down −1, 0 and 1 mm, so that both ways vary alike: t is 2/√⅔ = √6 with 4 degrees, u² 2.4.
        let both = mm(&[(1, -1), (2, 0), (3, 1)]).directions.unwrap();
        close(both.p, 1.0 - 0.75 * 2.4_f64.sqrt() * 0.8);
        close(both.across, 2.0);
        close(both.down, 0.0);
        // Six fours, across 2 mm over on average and 1 off that each, down 3 under and 3 over once: of 6/5
        // and 18/5 the standard error is √(24/5 / 6) = √⅘, so that t² is 5; the degrees of freedom are
        // 5 · (1 + 3)² / (1² + 3²) = 8. With cos² θ = 8 / (8 + 5) the p is 1 − sin θ · (1 + ½ cos² θ
        // + ⅜ cos⁴ θ + 5/16 cos⁶ θ).
        let six = [(1, -3), (3, 3), (1, 0), (3, 0), (1, 0), (3, 0)];
        let square = 8.0_f64 / 13.0;
        let sum = 1.0 + square / 2.0 + square.powi(2) * 0.375 + square.powi(3) * 0.3125;
        close(
            mm(&six).directions.unwrap().p,
            1.0 - (5.0_f64 / 13.0).sqrt() * sum,
        );
        let turned = six.map(|(across, down)| (down, across));
        close(
            mm(&turned).directions.unwrap().p,
            1.0 - (5.0_f64 / 13.0).sqrt() * sum,
        );
    }

    #[test]
    fn figures_of_few_blocks() {
        let none = drift(&[], sixty_fourths(4));
        assert_eq!((none.count, none.mean, none.spread), (0, 0.0, None));
        let one = drift(&fours(&[(64, 128)]), sixty_fourths(4));
        assert_eq!((one.mean, one.interval), (38.1, None));
        let two = drift(&fours(&[(64, 64), (64, 64)]), sixty_fourths(4));
        assert_eq!((two.spread, two.interval), (Some(0.0), Some((25.4, 25.4))));
        assert_eq!((two.p, two.trend), (Some(0.0), None));
        let same = drift(&fours(&[(1, 1); 7]), sixty_fourths(4));
        let trend = same.trend.unwrap();
        assert_eq!((trend.slope, trend.error, trend.p), (0.0, 0.0, 1.0));
        assert_eq!(same.directions.unwrap().p, 1.0);
    }

    #[test]
    fn sureness_goes_by_count() {
        let sure = |n| drift(&fours(&vec![(0, 0); n]), nm(0)).sureness;
        assert_eq!(
            [0, 4, 5, 11, 12].map(sure),
            [
                Sureness::Guess,
                Sureness::Guess,
                Sureness::Likely,
                Sureness::Likely,
                Sureness::Firm
            ]
        );
    }

    fn some_fours() -> impl Strategy<Value = Vec<Deviation>> {
        let off = || -20_000_000i64..20_000_000;
        prop::collection::vec((off(), off()), 0..40).prop_map(|v| {
            v.into_iter()
                .map(|(across, down)| Deviation {
                    across: nm(across),
                    down: nm(down),
                })
                .collect()
        })
    }

    fn near(a: f64, b: f64) -> bool {
        (a - b).abs() <= 1e-9 * (1.0 + a.abs() + b.abs())
    }

    proptest! {
        #[test]
        fn a_constant_moves_the_mean_alone(seen in some_fours(), by in -50_000_000i64..50_000_000) {
            let moved: Vec<_> = seen.iter().map(|s| Deviation { across: s.across + nm(by), down: s.down + nm(by) }).collect();
            let (one, two) = (drift(&seen, nm(1_000_000)), drift(&moved, nm(1_000_000)));
            if !seen.is_empty() {
                prop_assert!(near(one.mean + by as f64 / 1e6, two.mean));
            }
            prop_assert_eq!(one.spread, two.spread);
            prop_assert_eq!(one.trend.map(|t| (t.slope, t.error, t.p)), two.trend.map(|t| (t.slope, t.error, t.p)));
        }

        #[test]
        fn the_order_does_not_matter_to_mean_and_spread((seen, mixed) in some_fours().prop_flat_map(|s| (Just(s.clone()), Just(s).prop_shuffle()))) {
            let (one, two) = (drift(&seen, nm(1_000_000)), drift(&mixed, nm(1_000_000)));
            prop_assert_eq!(one.mean, two.mean);
            prop_assert!(near(one.spread.unwrap_or(0.0), two.spread.unwrap_or(0.0)));
            prop_assert!(near(one.p.unwrap_or(0.0), two.p.unwrap_or(0.0)));
        }

        #[test]
        fn turning_the_blocks_turns_the_answer(seen in some_fours()) {
            let turned: Vec<_> = seen.iter().map(|s| Deviation { across: s.down, down: s.across }).collect();
            let (one, two) = (drift(&seen, nm(1_000_000)), drift(&turned, nm(1_000_000)));
            prop_assert_eq!((one.mean, one.spread, one.trend), (two.mean, two.spread, two.trend));
            let swapped = match one.verdict {
                DriftVerdict::Stretch { along: Along::Across } => DriftVerdict::Stretch { along: Along::Down },
                DriftVerdict::Stretch { along: Along::Down } => DriftVerdict::Stretch { along: Along::Across },
                other => other,
            };
            prop_assert_eq!(swapped, two.verdict);
        }

        #[test]
        fn every_figure_is_a_number(raw in prop::collection::vec((prop_oneof![any::<i64>(), -3i64..3], prop_oneof![any::<i64>(), -3i64..3]), 0..8), mark in prop_oneof![any::<i64>(), -3i64..3]) {
            let seen: Vec<_> = raw.iter().map(|(a, d)| Deviation { across: nm(*a), down: nm(*d) }).collect();
            let found = drift(&seen, nm(mark));
            let mut figures = vec![found.mean];
            figures.extend(found.spread);
            figures.extend(found.p);
            figures.extend(found.interval.map(|(a, _)| a));
            figures.extend(found.interval.map(|(_, b)| b));
            figures.extend(found.trend.map(|t| t.slope + t.error + t.p + t.next));
            figures.extend(found.directions.map(|d| d.across + d.down + d.p));
            prop_assert!(figures.iter().all(|f| f.is_finite()), "{:?}", found);
            prop_assert!(found.spread.is_none_or(|s| s >= 0.0));
            prop_assert!(found.p.is_none_or(|p| (0.0..=1.0).contains(&p)));
        }
    }
}
