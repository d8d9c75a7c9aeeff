//! Both faces laid out: a first even spread, the search for better layouts, their score.

pub mod arrange;
pub mod inherit;
pub mod spread;
