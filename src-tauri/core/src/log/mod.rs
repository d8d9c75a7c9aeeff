//! The record of a throw: its file, its history, what comes from outside, two copies made one.

pub mod footprint;
pub mod intake;
pub mod journal;
pub mod merge;
pub mod pace;
