//! A throw file in the data folder, and whatever it is shown as.
//!
//! What must hold is in the crate's own page, at [`lapwork_fuzz::record`]. Run it from the
//! root: `cargo +nightly fuzz run --fuzz-dir tests/fuzz -s none record` (tests/README.md,
//! “Fuzzing”).

#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| lapwork_fuzz::record(bytes));
