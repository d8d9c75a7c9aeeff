//! Pictures of steps, trims, laps and plans, in millimetres where they are to scale.

mod binding;
mod corner;
mod lap;
mod opened;
mod plan;
mod small;
mod step;
mod trim;

pub(super) use corner::corner;
pub(super) use opened::opened;
pub(super) use plan::{block_key, blocks, grid, section};
pub(super) use small::thumbnail;
pub(super) use step::step;
pub(super) use trim::{measured, outlined, wedges};
