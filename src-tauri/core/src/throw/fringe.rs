//! The least fringe: how narrow the joins of a throw may be lapped.
//!
//! The maker sets the least fringe she trusts ([`Plan::least_fringe`](crate::plan::Plan), 3 mm by
//! default), and [`Plan::narrowest_lap`](crate::plan::Plan::narrowest_lap) turns it into a lap
//! ([`crate::plan::fringe`]). [`least_lap`] is the limit for a throw. It is enforced
//!
//! * when a lap is chosen: `check_lap` in `command/plan.rs`;
//! * when a short block is saved: `BlockLine` in [`crate::fitting::trimming`];
//! * when a measured piece is judged: [`crate::fitting::squaring`];
//! * when a piece is off: [`crate::rescue`].
//!
//! A plan below the limit is only advised against ([`Plan::advice`](crate::plan::Plan::advice)): the
//! maker may know better.

use crate::measure::Length;
use crate::throw::state::Throw;

/// The narrowest lap a join may have: what leaves the least fringe, or the plan's own
/// lap where that is narrower still.
pub fn least_lap(throw: &Throw) -> Length {
    std::cmp::min(throw.plan.narrowest_lap(), throw.plan.lap_between())
}
