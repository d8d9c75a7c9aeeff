//! Outlines of cloth and how to cut them, and of sewn blocks, a line of JSON each.
//!
//! What must hold is in the crate's own page, at [`lapwork_fuzz::outline`]. Run it from the
//! root: `cargo +nightly fuzz run --fuzz-dir tests/fuzz -s none outline` (tests/README.md,
//! “Fuzzing”).

#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| lapwork_fuzz::outline(bytes));
