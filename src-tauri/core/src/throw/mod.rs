//! One throw: what can happen to it, its state, and what follows from that at once.
//!
//! Events ([`event`]) fold ([`fold`](Throw::apply)) to the state ([`state`]). The sizes of
//! its pieces, what is ready, and what still lies loose follow from the state.

pub mod account;
mod cooling;
#[cfg(test)]
pub(crate) mod counted;
mod effort;
pub mod event;
pub mod facts;
mod fold;
pub mod fringe;
pub mod heritage;
pub mod index;
pub mod layout;
pub mod loose;
pub mod seams;
mod sizes;
mod spares;
pub mod stage;
pub mod state;
pub mod stock;
pub mod tasks;
pub mod wishes;

pub use event::{Event, Item, Time};
pub use facts::{BegunPiece, Made, Mishap, Pieced, Size, StripsCut, Went};
pub use state::{Aside, Loss, Note, Photo, SeamsToUnpick, Throw, WholeMeasure, Work};
