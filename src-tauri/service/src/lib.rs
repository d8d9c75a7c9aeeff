//! Lapwork's service: it keeps throws and answers what a window asks.
//!
//! It knows no window and no operating system. What it needs of the machine it is given: a
//! [`disk::Disk`], and a [`host::Host`] with a clock, a source of randomness and a way to run
//! long work. [`desktop`] has all of these for a machine with a file system and threads.
//!
//! [`store`] keeps files, [`service`] answers, [`search`] looks for layouts meanwhile,
//! [`import`] and [`export`] read and write files elsewhere, [`photos`] makes photos small,
//! [`paper`] says what is printed. All thinking about throws is in `lapwork-core`; all words
//! are in its word files.

#[cfg(not(target_arch = "wasm32"))]
pub mod desktop;
pub mod disk;
pub mod export;
pub mod host;
pub mod import;
pub mod paper;
pub mod photos;
pub mod search;
pub mod service;
pub mod store;
