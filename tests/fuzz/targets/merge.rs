//! Two copies of a throw made one, two records with a line of four hyphens between them.
//!
//! What must hold is in the crate's own page, at [`lapwork_fuzz::merge`]. Run it from the
//! root: `cargo +nightly fuzz run --fuzz-dir tests/fuzz -s none merge` (tests/README.md,
//! “Fuzzing”).

#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| lapwork_fuzz::merge(bytes));
