//! Lapwork's service: it keeps throws and answers what a window asks.
//!
//! The service knows no window and no operating system. The machine gives it a [`disk::Disk`],
//! and a [`host::Host`] with a clock, a source of randomness and a way to run long work. It
//! starts no thread itself; the host's [`host::Runner`] does. It builds for
//! `wasm32-unknown-unknown` without [`desktop`] (`.ci/wasm`).
//!
//! | Module | What is in it |
//! | --- | --- |
//! | [`disk`] | the few file operations, as a trait without a file system; a disk in memory |
//! | [`store`] | the data folder: locks, synced lines, torn tails, files changed by other programs |
//! | [`service`] | open throws, and answers to the window |
//! | [`host`], `desktop` | the clock, randomness and background work that the host provides; their implementation, and the disk, for a machine with a file system |
//! | [`search`] | the layout search, in parallel with everything else |
//! | [`import`], [`export`] | files that the maker brings in, and files written where the maker says |
//! | [`photos`], [`paper`] | photos scaled, turned upright and stripped of everything but the picture; the content of a print |
//!
//! All rules of the work are in `lapwork-core`, and all sentences are in its word files.

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
