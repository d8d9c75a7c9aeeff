//! Lapwork's second shell: the same service, in a worker thread of a browser.
//!
//! [`pool`] is the service's disk in the browser's own storage, [`calls`] answers what the page
//! asks as the desktop's shell does, [`reader`] makes large screens in a worker of its own, and
//! `browser` ties all of them to the worker they run in. That module exists only for `wasm32`; the
//! rest is tested on any machine.

#[cfg(target_arch = "wasm32")]
mod browser;
pub mod calls;
pub mod pool;
pub mod reader;
