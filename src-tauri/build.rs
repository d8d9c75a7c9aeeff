//! Puts the built window into the program and names what the window may call.
//!
//! The window must have been built before (`npm ci && npm run build` in `ui/`); the
//! compiler says so in one sentence instead of failing deep inside a macro.

use std::path::Path;
use tauri_build::{AppManifest, Attributes};

/// All the window may call. `capabilities/main.json` grants just these.
const CALLS: &[&str] = &[
    "hello",
    "shelf",
    "look",
    "act",
    "tend",
    "draft",
    "grids",
    "arrange",
    "length",
    "set_prefs",
    "hand",
    "bring",
    "dropped",
    "take",
    "print",
    "printing",
    "stop_printing",
    "again",
    "photo",
];

fn main() {
    println!("cargo:rerun-if-changed=../ui/dist");
    if !Path::new("../ui/dist/index.html").is_file() {
        eprintln!(
            "The window is not built yet: run `npm ci && npm run build` in ui/ first, or .ci/start, which does all of it."
        );
        std::process::exit(1);
    }
    let manifest = AppManifest::new().commands(CALLS);
    if let Err(why) = tauri_build::try_build(Attributes::new().app_manifest(manifest)) {
        eprintln!("The window could not be put into the program: {why:#}");
        std::process::exit(1);
    }
}
