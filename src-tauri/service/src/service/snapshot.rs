//! A throw as it stands, to be looked at beside everything else.

use lapwork_core::arrange::Arranger;
use lapwork_core::arrange::Wishes;
use lapwork_core::journal::Journal;
use lapwork_core::measure::Ruler;
use lapwork_core::show::{self, Lens};
use lapwork_core::throw::Time;
use lapwork_core::view::{Head, Layouts, Look, Problem, View};
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
    fn lens(&self) -> Lens<'_> {
        Lens {
            words: &self.words,
            ruler: self.ruler,
            now: self.now,
        }
    }

    /// What a screen shows of it.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn look(&self, look: &Look) -> Result<View, Problem> {
        show::look(&self.journal, look, self.lens())
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
