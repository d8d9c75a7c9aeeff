//! The desktop and the phone: a file system, the system's clock and randomness, threads.
//!
//! Nothing else in this crate touches any of these; this module is left out where there is
//! no such system (`wasm32`).

mod disk;
mod files;

pub use disk::DesktopDisk;
pub use files::{clear_copies, in_folder, kept_copies, read_throw, upgrade_file, write_throw};

use crate::host::{Clock, Host, Random, Runner};
use crate::store::Store;
use lapwork_core::throw::Time;
use std::io;
use std::path::PathBuf;
use std::time::{SystemTime, UNIX_EPOCH};

/// A moment as milliseconds since 1970; 0 for anything before.
pub(crate) fn milliseconds(moment: SystemTime) -> Time {
    let since = moment.duration_since(UNIX_EPOCH).unwrap_or_default();
    Time::try_from(since.as_millis()).unwrap_or(Time::MAX)
}

/// Now.
pub fn now() -> Time {
    milliseconds(SystemTime::now())
}

/// This machine.
pub fn host() -> Host {
    Host {
        clock: Box::new(SystemClock),
        random: Box::new(SystemRandom),
        runner: Box::new(Threads),
    }
}

/// The data folder at `folder` of the file system. Nothing is touched until it is claimed.
pub fn store(folder: impl Into<PathBuf>) -> Store {
    let folder = folder.into();
    // Where the program stands is not reported by some systems; the folder is then used as named.
    let folder = std::path::absolute(&folder).unwrap_or(folder);
    Store::on(folder, Box::new(DesktopDisk))
}

/// The system's clock.
#[derive(Debug, Clone, Copy)]
struct SystemClock;

impl Clock for SystemClock {
    fn now(&self) -> Time {
        now()
    }
}

/// The system's source of randomness.
#[derive(Debug, Clone, Copy)]
struct SystemRandom;

impl Random for SystemRandom {
    fn fill(&mut self, bytes: &mut [u8]) -> io::Result<()> {
        getrandom::fill(bytes).map_err(io::Error::other)
    }
}

/// A thread for each piece of work.
#[derive(Debug, Clone, Copy)]
struct Threads;

impl Runner for Threads {
    fn run(&self, work: Box<dyn FnOnce() + Send>) {
        std::thread::spawn(work);
    }
}
