//! Bytes that may be a photo: refused, or made small and plain.
//!
//! Run it from the root:
//! `cargo +nightly fuzz run --fuzz-dir tests/fuzz -s none photo` (tests/README.md,
//! “Fuzzing”).

#![no_main]

use lapwork_service::photos;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    if let Ok(kept) = photos::shrink(bytes) {
        assert!(photos::name(&kept).is_some());
        let again = image::load_from_memory_with_format(&kept, image::ImageFormat::Jpeg);
        let again = again.expect("what is kept can be read");
        assert!(again.width().max(again.height()) <= photos::LONGEST_SIDE);
        assert!(kept.len() as u64 <= photos::MOST_BYTES);
        for trace in [&b"Exif"[..], b"http://", b"ICC_PROFILE"] {
            let head = &kept[..kept.len().min(600)];
            assert!(!head.windows(trace.len()).any(|at| at == trace));
        }
    }
});
