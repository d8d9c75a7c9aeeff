//! One throw: what can happen to it, its state, and what follows from that at once.
//!
//! Events ([`event`]) fold ([`fold`](Throw::apply)) to the state ([`state`]). The sizes of
//! its pieces, what is ready, and what still lies loose follow from the state.

pub mod event;
mod fold;
pub mod heritage;
pub mod index;
pub mod layout;
pub mod loose;
pub mod photos;
pub mod seams;
mod sizes;
pub mod state;
pub mod stock;
pub mod tasks;
pub mod wishes;

pub use event::{Event, Item, Mishap, Time};
pub use state::{Aside, Loss, Made, Note, Photo, SeamsToUnpick, Size, Throw, WholeMeasure, Work};
