//! How large a figure may be, by its type.

use thiserror::Error;

/// The largest weight or thickness that is read, in their SI units: the number of nanometres
/// in the longest length, [`MOST_NM`](crate::measure::MOST_NM).
pub const MOST: f64 = 1e12;

/// A figure that lies beyond the bounds of its type.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum OutOfBounds {
    /// A length of more than a kilometre.
    #[error("a length is at most a kilometre either way; give it in nanometres")]
    Length,
    /// A count of more than ten millions.
    #[error("a count is at most 10 000 000")]
    Count,
    /// A weight that is no number, or far beyond that of any cloth.
    #[error("a weight of cloth is at most {MOST:e} kg/m²")]
    Weight,
    /// A thickness that is no number, or far beyond that of any cloth.
    #[error("a thickness of cloth is at most {MOST:e} m")]
    Thickness,
}
