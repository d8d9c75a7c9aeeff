//! Bytes that may be a photo: refused, or made small and plain.
//!
//! The photo reader is the shell's own file, built here without the window's crates; what
//! it says of a disk is not reached. Run it from the root:
//! `cargo +nightly fuzz run --fuzz-dir tests/fuzz -s none photo` (DEVELOPERS.md, “Working
//! on it”).

#![no_main]
// Only the reader of bytes is called.
#![allow(dead_code)]

#[path = "../../../src-tauri/src/photos.rs"]
mod photos;

/// What the photo reader's file needs of its neighbour.
mod store {
    use std::io;
    use std::path::{Path, PathBuf};

    /// What can go wrong.
    #[derive(Debug)]
    pub enum Trouble {
        /// Reading failed.
        Disk {
            /// Where.
            path: PathBuf,
            /// What the system said.
            why: io::Error,
        },
        /// It is no photo to keep.
        Photo {
            /// Where.
            path: PathBuf,
            /// Why.
            fault: crate::photos::Fault,
        },
    }

    /// Whether it is a plain file is for the shell to see.
    pub fn plain(_: &Path) -> Result<(), Trouble> {
        Ok(())
    }

    /// What the system said, and where.
    pub fn disk(path: &Path) -> impl FnOnce(io::Error) -> Trouble + '_ {
        move |why| Trouble::Disk {
            path: path.to_path_buf(),
            why,
        }
    }
}

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
