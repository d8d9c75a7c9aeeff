//! Lapwork's domain: planning, making and re-planning a lapped raw-edge throw.
//!
//! Nothing here reads a file, a clock or the network; time and seed are handed in.
//! Change goes one way: an [`deed::Action`] is checked against the state and yields
//! [`throw::Event`]s; events fold to a [`throw::Throw`]; the throw yields views that
//! are ready to show. The [`journal`] keeps the events, and so gives undo and history.

#[macro_use]
extern crate uom;

#[macro_use]
pub mod words;

pub mod arrange;
pub mod assembly;
pub mod binding;
pub mod bounds;
pub mod cloth;
pub mod cutting;
pub mod deed;
pub mod demo;
pub mod drift;
pub mod faces;
pub mod footprint;
pub mod garments;
pub mod grids;
pub mod heritage;
pub mod holding;
pub mod intake;
pub mod journal;
pub mod measure;
pub mod merge;
pub mod outline;
pub mod pace;
pub mod photos;
pub mod pile;
pub mod plan;
pub mod reconcile;
pub mod rescue;
pub mod scraps;
pub mod show;
pub mod squaring;
pub mod standing;
pub mod tasks;
pub mod thread;
pub mod throw;
pub mod trimming;
pub mod view;
