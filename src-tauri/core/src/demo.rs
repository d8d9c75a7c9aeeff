//! A throw to look round in, part-way done.

use crate::faces::{Denim, Print};
use crate::journal::Journal;
use crate::throw::Time;

/// The demo throw, as if worked on until `now`.
pub fn throw(_now: Time) -> Journal {
    todo!()
}

/// The fabrics a new throw begins with, to be renamed.
pub fn prints() -> Vec<Print> {
    todo!()
}

/// The denims a new throw begins with.
pub fn denims() -> Vec<Denim> {
    todo!()
}
