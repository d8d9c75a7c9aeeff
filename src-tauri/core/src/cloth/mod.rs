//! The cloth: fabrics and denims, garments on the pile, how they are cut, weights, thread.

pub mod bound;
mod choice;
pub mod cutting;
pub mod estimate;
pub mod fabric;
pub mod garments;
pub mod halves;
pub mod letters;
pub mod pairs;
pub mod patches;
pub mod photos;
pub mod pieces;
pub mod pile;
pub mod reshape;
pub mod starts;
pub mod steps;
pub mod strips;
pub mod thread;
pub mod ways;
pub mod weight;
