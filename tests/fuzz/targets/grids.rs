//! A draft and what is wished for, a line of JSON each: grids near it.
//!
//! What must hold is in the crate's own page, at [`lapwork_fuzz::grids`]. Run it from the
//! root: `cargo +nightly fuzz run --fuzz-dir tests/fuzz -s none grids` (tests/README.md,
//! “Fuzzing”).

#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| lapwork_fuzz::grids(bytes));
