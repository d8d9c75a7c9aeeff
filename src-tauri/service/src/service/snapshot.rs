//! A throw as it stands, to be looked at beside everything else.

use lapwork_core::faces::arrange::Arranger;
use lapwork_core::log::journal::Journal;
use lapwork_core::measure::Ruler;
use lapwork_core::show::{self, Context};
use lapwork_core::show::{Head, Layouts, Query, View};
use lapwork_core::throw::Time;
use lapwork_core::throw::wishes::Wishes;
use lapwork_core::words::Problem;
use lapwork_core::words::Words;
use std::sync::Arc;

/// A throw, the words and the ruler as they were at one moment. What is done afterwards does
/// not change it, and nothing waits for it: it can be looked at on another thread.
#[derive(Clone)]
pub struct Snapshot {
    pub(super) journal: Arc<Journal>,
    pub(super) words: Words,
    pub(super) ruler: Ruler,
    pub(super) now: Time,
}

impl Snapshot {
    fn lens(&self) -> Context<'_> {
        Context {
            words: &self.words,
            ruler: self.ruler,
            now: self.now,
        }
    }

    /// What a screen shows of it.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn look(&self, look: &Query) -> Result<View, Problem> {
        show::answer(&self.journal, look, self.lens())
    }

    /// How far it is.
    pub fn head(&self) -> Head {
        show::head(&self.journal, self.lens())
    }

    /// What a search for layouts of it has come to, as cards to choose from, after `done` of
    /// `all` rounds of work.
    pub fn layouts(&self, wishes: Wishes, found: &[Arranger], rounds: (bool, u32)) -> Layouts {
        show::layouts(&self.journal, wishes, found, rounds, self.lens())
    }

    /// The record itself.
    pub fn journal(&self) -> &Arc<Journal> {
        &self.journal
    }
}
