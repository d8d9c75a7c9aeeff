//! The exact length, and why adding lengths up does not overflow.
//!
//! A [`Length`] is a whole number of nanometres. One that is read from outside, from a file
//! or from the window, lies within [`MOST_NM`] either way: anything else is refused while it
//! is deserialised ([`OutOfBounds::Length`]), so that no record and no request holds one.
//! What is computed from lengths is not checked again, because it cannot overflow:
//!
//! * An `i64` holds 9.2 × 10¹⁸ nm, and a length from outside is at most 10¹² nm. So
//!   [`ADDED_SAFELY`] (9.2 million) of them may be added up, or one be taken as many times.
//! * A plan has at most 60 × 60 = 3 600 squares and 3 599 joins. Every length of a plan is
//!   a few of its figures, each times at most as many squares or joins; but for the joins of
//!   the binding: their number stops at what a `u32` holds (4.3 × 10⁹), the strip that
//!   [`Plan::check`](crate::plan::Plan::check) passes is at most 10⁹ nm wide, and their
//!   product still fits.
//! * A throw file has at most 64 MiB. A length of 10¹² nm takes thirteen digits and a
//!   separator, so that a whole file holds fewer than 4.8 million of them.
//!
//! The properties below add up [`ADDED_SAFELY`] of the longest, and compute the sizes of a
//! plan from any figures that may be read, on any grid, and all that a plan that passes its
//! check says of itself. Overflow panics in tests.
//!
//! What multiplies two lengths is an area, and areas are floating point.

use crate::measure::limits::OutOfBounds;
use crate::types::TS;
use serde::{Deserialize, Serialize};
use std::fmt::{self, Display, Formatter};
use std::iter::Sum;
use std::marker::PhantomData;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

mod exact {
    //! The system of quantities whose base length is a whole nanometre.
    #![allow(missing_docs)]
    ISQ!(
        uom::si,
        i64,
        (nanometer, kilogram, second, ampere, kelvin, mole, candela)
    );
}

/// The longest length that is read from outside, either way: a kilometre in nanometres.
pub const MOST_NM: i64 = 1_000_000_000_000;
/// So many lengths from outside can be added up without overflow.
pub const ADDED_SAFELY: i64 = i64::MAX / MOST_NM;

/// An exact length: a whole number of nanometres, written to JSON as that number, and read
/// only within [`MOST_NM`] either way.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize, TS,
)]
#[serde(try_from = "i64", into = "i64")]
#[ts(type = "number")]
pub struct Length(exact::Length);

/// A length of `count` nanometres. That is the base unit of [`exact`], so that nothing is converted:
/// `new::<nanometer>` would work out the factor as a fraction each time.
pub const fn nm(count: i64) -> Length {
    Length(exact::Length {
        dimension: PhantomData,
        units: PhantomData,
        value: count,
    })
}

/// How many nanometres long `length` is.
pub const fn in_nm(length: Length) -> i64 {
    length.0.value
}

impl Display for Length {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        write!(f, "{} nm", in_nm(*self))
    }
}

impl TryFrom<i64> for Length {
    type Error = OutOfBounds;

    fn try_from(count: i64) -> Result<Length, OutOfBounds> {
        match (-MOST_NM..=MOST_NM).contains(&count) {
            true => Ok(nm(count)),
            false => Err(OutOfBounds::Length),
        }
    }
}

impl From<Length> for i64 {
    fn from(length: Length) -> i64 {
        in_nm(length)
    }
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length(self.0 + other.0)
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length(self.0 - other.0)
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length(-self.0)
    }
}

impl Mul<i64> for Length {
    type Output = Length;
    fn mul(self, times: i64) -> Length {
        Length(self.0 * times)
    }
}

/// Rounds towards nothing, as whole numbers do.
impl Div<i64> for Length {
    type Output = Length;
    fn div(self, parts: i64) -> Length {
        Length(self.0 / parts)
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, other: Length) {
        *self = *self + other;
    }
}

impl SubAssign for Length {
    fn sub_assign(&mut self, other: Length) {
        *self = *self - other;
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(lengths: I) -> Length {
        lengths.fold(nm(0), Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::thread::seams;
    use crate::plan::{Binding, JoinOrder, Joining, MOST, Plan, Stitch};
    use proptest::prelude::*;

    /// The longest file the shell reads, in bytes (`store::MOST_BYTES`).
    const LONGEST_FILE: i64 = 64 << 20;

    #[test]
    fn all_figures_share_one_largest_number() {
        assert_eq!(crate::measure::limits::MOST, MOST_NM as f64);
    }

    #[test]
    fn all_lengths_of_the_longest_file_add_up() {
        let written = serde_json::to_string(&nm(MOST_NM)).unwrap();
        assert!(LONGEST_FILE / (written.len() as i64 + 1) < ADDED_SAFELY);
        for one in [nm(MOST_NM), nm(-MOST_NM)] {
            assert_eq!(in_nm(one * ADDED_SAFELY) / ADDED_SAFELY, in_nm(one));
            let sum: Length = (0..ADDED_SAFELY).map(|_| one).sum();
            assert_eq!(sum, one * ADDED_SAFELY);
        }
    }

    /// Any figure that may be read, the outermost often.
    fn figure() -> impl Strategy<Value = Length> {
        let outermost = prop::sample::select(vec![-MOST_NM, -1, 0, 1, MOST_NM]);
        let any = prop_oneof![outermost, -MOST_NM..=MOST_NM];
        any.prop_map(|n| serde_json::from_str(&n.to_string()).unwrap())
    }

    fn stitch() -> impl Strategy<Value = Stitch> {
        prop_oneof![
            Just(Stitch::Straight),
            figure().prop_map(|spacing| Stitch::Twin { spacing }),
            figure().prop_map(|spacing| Stitch::TwoRows { spacing }),
            figure().prop_map(|width| Stitch::Zigzag { width }),
        ]
    }

    fn plan() -> impl Strategy<Value = Plan> {
        let joining =
            prop::sample::select(vec![Joining::Lapped, Joining::Seamed, Joining::Exposed]);
        let order = prop::sample::select(vec![
            JoinOrder::Rows,
            JoinOrder::Columns,
            JoinOrder::Doubling,
        ]);
        let grid = (1..=MOST, 1..=MOST);
        let squares = (figure(), figure(), prop::option::of(figure()), figure());
        let rest = (prop::option::of(figure()), figure(), figure(), figure());
        (grid, joining, stitch(), order, squares, rest).prop_map(
            |((across, down), joining, stitch, order, squares, rest)| Plan {
                side: squares.0,
                lap: squares.1,
                between: squares.2,
                least_fringe: squares.3,
                across,
                down,
                joining,
                stitch,
                order,
                trim: rest.0,
                binding: Binding {
                    strip: rest.1,
                    longest: rest.2,
                    tail: rest.3,
                },
                ..Plan::default()
            },
        )
    }

    /// One of the ends, or between them.
    fn from_to(least: i64, most: i64) -> impl Strategy<Value = Length> {
        prop_oneof![Just(least), Just(most), least..=most].prop_map(nm)
    }

    /// A plan that passes its check, its figures often as far out as they may be.
    fn passing() -> impl Strategy<Value = Plan> {
        let size = (1..=MOST, 1..=MOST, from_to(25_000_000, 1_000_000_000));
        size.prop_flat_map(|(across, down, side)| {
            let most = in_nm(side);
            let laps = (from_to(1, most / 2 - 1), from_to(1, most / 2 - 1));
            let strip = (
                from_to(10_000_000, most),
                from_to(3, 50_000_000_000),
                from_to(0, 1_000_000_000),
            );
            let trim = prop::option::of(from_to(most + 1, most * 2));
            (laps, strip, trim).prop_map(move |(laps, strip, trim)| Plan {
                side,
                across,
                down,
                lap: laps.0,
                between: Some(laps.1),
                stitch: Stitch::Straight,
                trim,
                binding: Binding {
                    strip: strip.0,
                    longest: strip.1.max(laps.0 * 2 + nm(1)),
                    tail: strip.2,
                },
                ..Plan::default()
            })
        })
    }

    proptest! {
        #[test]
        fn no_sum_of_figures_that_may_be_read_overflows(all in prop::collection::vec(figure(), 0..3600)) {
            let sum = all.iter().copied().sum::<Length>();
            let exactly: i128 = all.iter().map(|l| i128::from(in_nm(*l))).sum();
            prop_assert_eq!(i128::from(in_nm(sum)), exactly);
        }

        /// Whatever the figures, even such as no plan may have, on every grid.
        #[test]
        fn no_size_of_a_plan_overflows(plan in plan()) {
            let by_hand = |n: u16, one: Length, join: Length| {
                i128::from(in_nm(one)) * i128::from(n) - i128::from(in_nm(join)) * i128::from(n - 1)
            };
            prop_assert_eq!(
                i128::from(in_nm(plan.run(plan.across))),
                by_hand(plan.across, plan.side, plan.take())
            );
            let (width, height) = plan.finished();
            plan.binding_for(width, height);
            plan.advice();
            let _ = plan.check();
        }

        /// As large and as small as a plan may be in every figure that passes.
        #[test]
        fn nothing_a_plan_that_passes_says_of_itself_overflows(plan in passing()) {
            prop_assert_eq!(plan.check(), Ok(()));
            prop_assert!(seams(&plan).total() > nm(0));
            let (width, height) = plan.finished();
            prop_assert!(width >= plan.side && height >= plan.side);
            plan.advice();
        }

        #[test]
        fn lengths_are_read_within_their_bounds_and_nowhere_else(n in any::<i64>()) {
            let read = serde_json::from_str::<Length>(&n.to_string());
            match n.unsigned_abs() <= MOST_NM.unsigned_abs() {
                true => prop_assert_eq!(read.unwrap(), nm(n)),
                false => prop_assert!(read.is_err()),
            }
        }

        #[test]
        fn it_reckons_as_whole_numbers_do(a in -MOST_NM..=MOST_NM, b in -MOST_NM..=MOST_NM, n in -3600i64..=3600) {
            prop_assert_eq!(in_nm(nm(a) + nm(b)), a + b);
            prop_assert_eq!(in_nm(nm(a) - nm(b)), a - b);
            prop_assert_eq!(in_nm(-nm(a)), -a);
            prop_assert_eq!(in_nm(nm(a) * n), a * n);
            if n != 0 {
                prop_assert_eq!(in_nm(nm(a) / n), a / n);
            }
            prop_assert_eq!(nm(a).cmp(&nm(b)), a.cmp(&b));
            let mut sum = nm(a);
            sum += nm(b);
            sum -= nm(a);
            prop_assert_eq!(sum, nm(b));
        }
    }

    #[test]
    fn a_kilometre_is_the_most() {
        for n in [MOST_NM, -MOST_NM, 0] {
            let read: Length = serde_json::from_str(&n.to_string()).unwrap();
            assert_eq!(read, nm(n));
            assert_eq!(serde_json::to_string(&read).unwrap(), n.to_string());
        }
        for beyond in [
            "1000000000001",
            "-1000000000001",
            "9223372036854775807",
            "18446744073709551615",
            "1e13",
            "0.5",
            "\"5\"",
            "null",
        ] {
            assert!(serde_json::from_str::<Length>(beyond).is_err(), "{beyond}");
        }
    }
}
