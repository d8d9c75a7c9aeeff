//! All else the window sends, a line of JSON each: screens, settings, drafts.
//!
//! What must hold is in the crate's own page, at [`lapwork_fuzz::sent`]. Run it from the
//! root: `cargo +nightly fuzz run --fuzz-dir tests/fuzz -s none sent` (tests/README.md,
//! “Fuzzing”).

#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| lapwork_fuzz::sent(bytes));
