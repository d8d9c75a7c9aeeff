//! The program under test: built once with what these tests were built with.
//!
//! Cargo does not build another package's program for a test, so this asks it to. The
//! whole workspace is named with the same profile, and one small test with it, so that
//! cargo picks the same features as for the tests, uses every library built for them
//! again, and takes a second when all is fresh.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::OnceLock;

/// The built program.
pub fn lapwork() -> &'static Path {
    static BUILT: OnceLock<PathBuf> = OnceLock::new();
    BUILT.get_or_init(build)
}

fn build() -> PathBuf {
    let profile = if cfg!(debug_assertions) {
        "dev"
    } else {
        "release"
    };
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let built = Command::new(cargo)
        .args(["build", "--quiet", "--workspace", "--profile", profile])
        .args(["--bin", "lapwork", "--test", "types"])
        .current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
        .status()
        .expect("cargo can be run");
    assert!(built.success(), "lapwork does not build");
    // This test is target/<profile>/deps/<name>-<hash>.
    let test = std::env::current_exe().expect("a test knows where it is");
    let folder = test.parent().and_then(Path::parent).expect("deps folder");
    let program = folder.join(format!("lapwork{}", std::env::consts::EXE_SUFFIX));
    assert!(program.is_file(), "no {}", program.display());
    program
}
