//! The record of a throw: its file, its history, imported records, and merging two copies.

pub mod footprint;
pub mod intake;
pub mod journal;
pub mod lessons;
pub mod merge;
pub mod pace;
