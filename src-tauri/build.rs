//! Puts the built window into the program and names what the window may call.
//!
//! The window must have been built before (`npm ci && npm run build` in `ui/`); the
//! compiler says so in one sentence instead of failing deep inside a macro.

use std::env;
use std::fs::{self, File};
use std::io;
use std::path::Path;
use tauri_build::{AppManifest, Attributes};

/// All the window may call. `capabilities/main.json` grants just these.
const CALLS: &[&str] = &[
    "hello",
    "shelf",
    "view",
    "act",
    "shelf_command",
    "draft",
    "grids",
    "arrange",
    "length",
    "set_prefs",
    "export",
    "import",
    "dropped",
    "decide_import",
    "print",
    "stop_arranging",
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
    // The places that hold addresses, as a list of bits: 17 kB where it was 2.2 MB. The system's
    // loader reads it since glibc 2.36.
    if env::var("CARGO_CFG_TARGET_OS").as_deref() == Ok("linux") {
        println!("cargo:rustc-link-arg-bins=-Wl,-z,pack-relative-relocs");
    }
    // What Tauri has just written here would count as changed since this began, and the next
    // call of cargo would build everything again. Where it cannot be helped, it does.
    let _ = as_old_as(Path::new("build.rs"), Path::new("permissions"));
}

/// Give a folder, and all in it, the time of another file.
fn as_old_as(model: &Path, folder: &Path) -> io::Result<()> {
    let when = fs::metadata(model)?.modified()?;
    for found in fs::read_dir(folder)? {
        let path = found?.path();
        match path.is_dir() {
            true => as_old_as(model, &path)?,
            false => File::options()
                .append(true)
                .open(path)?
                .set_modified(when)?,
        }
    }
    File::open(folder)?.set_modified(when)
}
