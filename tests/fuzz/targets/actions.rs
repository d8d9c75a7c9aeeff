//! What the window asks of a throw, a line of JSON each: decided, folded, undone, shown.
//!
//! What must hold is in the crate's own page, at [`lapwork_fuzz::actions`]. Run it from the
//! root: `cargo +nightly fuzz run --fuzz-dir tests/fuzz -s none actions` (tests/README.md,
//! “Fuzzing”).

#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| lapwork_fuzz::actions(bytes));
