//! How many there are of something: squares at hand, spares, fabric squares.
//!
//! A [`Count`] lies between 0 and [`Count::MOST`], well beyond what any throw has. One that
//! is read from outside and is not is refused while it is deserialised
//! ([`OutOfBounds::Count`]). Adding counts stops at the most and subtracting stops at
//! nothing, so that no record, however often it says the same, overflows one.

use crate::measure::limits::OutOfBounds;
use crate::types::TS;
use serde::{Deserialize, Serialize};
use std::cmp::Ordering;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Sub, SubAssign};

/// How many there are of something, at most [`Count::MOST`]; a number in JSON.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize, TS,
)]
#[serde(try_from = "u32", into = "u32")]
#[ts(type = "number")]
pub struct Count(u32);

impl Count {
    /// None.
    pub const NONE: Count = Count(0);
    /// The most there are of anything: ten millions (our judgement).
    pub const MOST: Count = Count(10_000_000);

    /// So many, or the most there are.
    pub const fn at_most(count: u32) -> Count {
        if count > Count::MOST.0 {
            Count::MOST
        } else {
            Count(count)
        }
    }

    /// How many, as a plain number.
    pub const fn get(self) -> u32 {
        self.0
    }
}

impl TryFrom<u32> for Count {
    type Error = OutOfBounds;

    fn try_from(count: u32) -> Result<Count, OutOfBounds> {
        match count <= Count::MOST.0 {
            true => Ok(Count(count)),
            false => Err(OutOfBounds::Count),
        }
    }
}

impl From<u16> for Count {
    fn from(count: u16) -> Count {
        Count(u32::from(count))
    }
}

impl From<Count> for u32 {
    fn from(count: Count) -> u32 {
        count.0
    }
}

impl From<Count> for i64 {
    fn from(count: Count) -> i64 {
        count.0.into()
    }
}

impl PartialEq<u32> for Count {
    fn eq(&self, other: &u32) -> bool {
        self.0 == *other
    }
}

impl PartialOrd<u32> for Count {
    fn partial_cmp(&self, other: &u32) -> Option<Ordering> {
        self.0.partial_cmp(other)
    }
}

impl PartialEq<Count> for u32 {
    fn eq(&self, other: &Count) -> bool {
        *self == other.0
    }
}

impl PartialOrd<Count> for u32 {
    fn partial_cmp(&self, other: &Count) -> Option<Ordering> {
        self.partial_cmp(&other.0)
    }
}

/// Stops at [`Count::MOST`].
impl Add for Count {
    type Output = Count;
    fn add(self, other: Count) -> Count {
        // Two of the most are far from the end of a `u32`.
        Count::at_most(self.0 + other.0)
    }
}

/// Stops at nothing.
impl Sub for Count {
    type Output = Count;
    fn sub(self, other: Count) -> Count {
        Count(self.0.saturating_sub(other.0))
    }
}

impl AddAssign for Count {
    fn add_assign(&mut self, other: Count) {
        *self = *self + other;
    }
}

impl SubAssign for Count {
    fn sub_assign(&mut self, other: Count) {
        *self = *self - other;
    }
}

impl Sum for Count {
    fn sum<I: Iterator<Item = Count>>(counts: I) -> Count {
        counts.fold(Count::NONE, Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn counts_are_read_within_their_bounds_and_nowhere_else(n in any::<u32>()) {
            let read = serde_json::from_str::<Count>(&n.to_string());
            match n <= 10_000_000 {
                true => prop_assert_eq!(read.unwrap().get(), n),
                false => prop_assert!(read.is_err()),
            }
        }

        #[test]
        fn sums_stop_at_the_most_and_differences_at_nothing(all in prop::collection::vec(any::<u32>(), 0..2000)) {
            let counts = all.iter().map(|n| Count::at_most(*n));
            let exactly: u64 = counts.clone().map(|n| u64::from(n.get())).sum();
            let sum: Count = counts.clone().sum();
            prop_assert_eq!(u64::from(sum.get()), exactly.min(10_000_000));
            let left = counts.fold(Count::MOST, |left, n| left - n);
            prop_assert_eq!(u64::from(left.get()), 10_000_000 - exactly.min(10_000_000));
        }
    }

    /// A count stands beside a plain number on either side of the sign.
    #[test]
    fn it_is_compared_with_plain_numbers() {
        let five = Count::from(5);
        assert_eq!(five, 5);
        assert_eq!(5, five);
        assert_ne!(five, 6);
        assert_ne!(6, five);
        assert!(five < 6);
        assert!(4 < five);
    }

    #[test]
    fn it_is_written_as_a_plain_number() {
        assert_eq!(serde_json::to_string(&Count::from(48)).unwrap(), "48");
        for beyond in [
            "10000001",
            "4294967295",
            "18446744073709551615",
            "-1",
            "0.5",
        ] {
            assert!(serde_json::from_str::<Count>(beyond).is_err(), "{beyond}");
        }
    }
}
