//! Lapwork's domain: planning, making and re-planning a lapped raw-edge throw.
//!
//! This crate reads no file, clock or network; callers pass in the time and the seed.
//! Change flows in one direction: a [`command::Command`] is checked against the state and yields
//! [`throw::Event`]s; events fold to a [`throw::Throw`]; the throw yields views that
//! are ready to display. The [`log::journal`] keeps the events, and so gives undo and history.
//!
//! The modules are rooms, here from the bottom up. A room uses only the rooms above it in this
//! table, and no modules form a cycle; `tests/tests/architecture.rs` parses the sources and fails
//! otherwise. The only exception is that the state of a throw and its work index refer to each
//! other. `QUESTIONS.md` beside this crate says where common questions are answered.
//!
//! | Room | What is in it |
//! | --- | --- |
//! | `types` | the derive that declares a type to the window, and writes nothing unless that is asked for |
//! | [`measure`] | exact lengths and counts that are only read within bounds; reading of untrusted input, naming the figure that is out of bounds; parsing and rounding to a ruler; true outlines from sides and diagonals |
//! | [`words`] | all sentences, by language |
//! | [`plan`] | squares, laps, stitch, grid; the order of assembly; the binding; grids near a wish; test scraps |
//! | [`cloth`] | fabrics, garments and their outlines, cutting, weight, thread |
//! | [`throw`] | events and what they share with the state; the state and its fold; the steps of a piece and which are ready; sizes, seams, stock, loose pieces; what an older throw left |
//! | [`faces`] | a first even spread, the search for layouts, faces taken over from an older throw |
//! | [`fitting`] | squaring up, the trim size and how each short block is saved, stretch or lap, the finished piece against the plan |
//! | [`command`] | commands, rejections, [`command::decide`]; a module for each family of commands |
//! | [`rescue`] | what to do when a piece is off; the lap that holds a size |
//! | [`log`] | the journal and its file format; what an event touches; whether a foreign record may come in; merging two copies; the maker's pace; lessons for the next throw |
//! | [`show`] | a module for each screen: its view and how it is made from the state; drawings, tables, the content of the printed sheet. No rule of the work lives here, and nothing else in the core uses it |
//! | [`demo`] | the demo throw, made by commands |
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
mod types;
