//! A throw file brought from anywhere: what may come in, and whatever it is shown as.
//!
//! What must hold is in the crate's own page, at [`lapwork_fuzz::brought`]. Run it from the
//! root: `cargo +nightly fuzz run --fuzz-dir tests/fuzz -s none brought` (tests/README.md,
//! “Fuzzing”).

#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| lapwork_fuzz::brought(bytes));
