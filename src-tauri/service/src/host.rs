//! What the machine provides to the service besides its disk: a clock, randomness, threads.

use lapwork_core::throw::Time;
use std::fmt::Debug;
use std::io;

/// A clock.
pub trait Clock: Debug + Send {
    /// Now, in milliseconds since 1970, UTC.
    fn now(&self) -> Time;
}

/// A source of unpredictable bytes.
pub trait Random: Debug + Send {
    /// Fill all of `bytes`.
    ///
    /// # Errors
    /// What the system said where it has none to give.
    fn fill(&mut self, bytes: &mut [u8]) -> io::Result<()>;
}

/// Runs long work in parallel with everything else.
pub trait Runner: Debug + Send + Sync {
    /// Begin it, and return at once.
    fn run(&self, work: Box<dyn FnOnce() + Send>);
}

/// The machine, as far as the service needs it.
#[derive(Debug)]
pub struct Host {
    /// Its clock.
    pub clock: Box<dyn Clock>,
    /// Its source of randomness: throws get their ids and names from it.
    pub random: Box<dyn Random>,
    /// Where long work is done.
    pub runner: Box<dyn Runner>,
}
