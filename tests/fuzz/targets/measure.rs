//! Typed lengths and weights, names of files and of photos: text as it is typed.
//!
//! What must hold is in the crate's own page, at [`lapwork_fuzz::measure`]. Run it from the
//! root: `cargo +nightly fuzz run --fuzz-dir tests/fuzz -s none measure` (tests/README.md,
//! “Fuzzing”).

#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| lapwork_fuzz::measure(bytes));
