//! Lapwork's shell: the window, the data folder, the clock, and the same figures
//! without a window.
//!
//! [`store`] keeps files, [`desk`] answers what the window asks, [`arranging`] looks for
//! layouts meanwhile, [`handing`] puts files where the maker says, [`printing`] makes the
//! PDF, `window` ties it all to Tauri, [`headless`] prints for programs. All thinking
//! about throws is in
//! `lapwork-core`; all words are in its word files.

use lapwork_core::throw::Time;
use lapwork_core::words::{self, Words};
use std::time::{SystemTime, UNIX_EPOCH};

pub mod arranging;
pub mod desk;
pub mod disk;
pub mod handing;
pub mod headless;
pub mod photos;
pub mod printing;
pub mod store;
mod window;

pub use window::run;

/// A moment as milliseconds since 1970; 0 for anything before.
fn milliseconds(moment: SystemTime) -> Time {
    let since = moment.duration_since(UNIX_EPOCH).unwrap_or_default();
    Time::try_from(since.as_millis()).unwrap_or(Time::MAX)
}

/// The locale of the first of the system's languages that is spoken here; else its first.
fn system_locale() -> String {
    let known = sys_locale::get_locales().find(|tag| words::language(tag).is_some());
    known.or_else(sys_locale::get_locale).unwrap_or_default()
}

/// The words of the first of the system's languages that is spoken here; else English.
fn system_words() -> Words {
    Words::of(&system_locale())
}

/// Now.
fn now() -> Time {
    milliseconds(SystemTime::now())
}
