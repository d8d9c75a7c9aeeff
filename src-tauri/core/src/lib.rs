//! Lapwork's domain: planning, making and re-planning a lapped raw-edge throw.
//!
//! Nothing here reads a file, a clock or the network; time and seed are handed in.
//! Change goes one way: an [`command::Command`] is checked against the state and yields
//! [`throw::Event`]s; events fold to a [`throw::Throw`]; the throw yields views that
//! are ready to show. The [`log::journal`] keeps the events, and so gives undo and history.
//!
//! ```
//! use lapwork_core::command::Command;
//! use lapwork_core::log::journal::Journal;
//! use lapwork_core::measure::Count;
//! use lapwork_core::plan::Plan;
//! use lapwork_core::show::{Context, answer};
//! use lapwork_core::throw::tasks::Task;
//! use lapwork_core::plan::assembly::{Kind, Rect};
//! use lapwork_core::show::{Query, View};
//! use lapwork_core::words::Words;
//!
//! // What the maker asks for is checked and becomes an entry; nothing has changed yet.
//! let begin = Command::Begin {
//!     name: "For the bench".into(),
//!     plan: Plan { across: 2, down: 2, ..Plan::default() },
//!     prints: vec![],
//!     denims: vec![],
//! };
//! let (mut journal, _) = Journal::begin(&begin, 0).unwrap();
//! let cut = Command::TickNext { task: Task::Cut, kind: Kind::Square, count: Count::from(4) };
//! let entry = journal.propose(&cut, 1_000).unwrap();
//! assert!(!journal.throw().has(Rect::square(0, 0), Task::Cut));
//!
//! // The shell keeps `entry.line()` on the disk; only then is it folded in.
//! journal.accept(entry).unwrap();
//! assert!(journal.throw().has(Rect::square(0, 0), Task::Cut));
//!
//! // A view is ready to show.
//! let words = Words::english();
//! let context = Context { words: &words, ruler: Default::default(), now: 2_000 };
//! let View::Work(work) = answer(&journal, &Query::Work { station: None, batch: None }, context).unwrap()
//! else {
//!     unreachable!()
//! };
//! assert!(work.card.is_some());
//! ```

#[macro_use]
extern crate uom;

#[macro_use]
pub mod words;

pub mod cloth;
pub mod command;
pub mod demo;
pub mod faces;
pub mod fitting;
pub mod log;
pub mod measure;
pub mod plan;
pub mod rescue;
pub mod show;
pub mod throw;
