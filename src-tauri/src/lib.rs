//! Lapwork's shell: the window, the system's dialogs, the PDF, and the command line.
//!
//! `lapwork-service` keeps throws and answers what the window asks; `window` ties it to Tauri,
//! `dialogs` asks where files go, [`printing`] makes the PDF, [`headless`] prints for programs.
//! All rules of the work are in `lapwork-core`, and all sentences are in its word files. The window
//! knows its shell as the interface `Shell` (`ui/src/lib/shell.ts`), so that another shell can
//! serve the same window.

use lapwork_core::words::{self, Words};

mod calls;
mod dialogs;
pub mod headless;
pub mod printing;
mod window;
mod worker;

pub use window::run;

/// The locale of the first of the system's languages that is spoken here; else its first.
fn system_locale() -> String {
    let known = sys_locale::get_locales().find(|tag| words::language(tag).is_some());
    known.or_else(sys_locale::get_locale).unwrap_or_default()
}

/// The words of the first of the system's languages that is spoken here; else English.
fn system_words() -> Words {
    Words::of(&system_locale())
}
