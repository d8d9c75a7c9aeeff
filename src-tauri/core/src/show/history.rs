//! The dated history in plain words.

use crate::log::journal::{Journal, What};
use crate::show::context::Context;
use crate::show::events::what;
use crate::show::parts::{Head, head};
use crate::types::TS;
use serde::Serialize;

/// One line of history.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HistoryRow {
    /// Number of the entry.
    pub n: u32,
    /// When, in milliseconds since 1970.
    #[ts(type = "number")]
    pub at: i64,
    /// In plain words.
    pub text: String,
    /// Whether it still stands.
    pub stands: bool,
}

/// The dated history, newest first.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HistoryView {
    /// Common to all screens.
    pub head: Head,
    /// The lines.
    pub rows: Vec<HistoryRow>,
    /// Whether older ones are left out.
    pub more: bool,
}

/// Newest first, `most` lines at most.
pub(super) fn history(journal: &Journal, most: u32, context: Context<'_>) -> HistoryView {
    let most = most.clamp(1, 2000) as usize;
    HistoryView {
        head: head(journal, context),
        rows: rows(journal, most, context),
        more: journal.len() > most,
    }
}

/// All of the history, newest first: a screen shows no more than 2,000 lines, a list on the command
/// line has them all.
pub fn whole_history(journal: &Journal, context: Context<'_>) -> Vec<HistoryRow> {
    rows(journal, usize::MAX, context)
}

/// The newest entries, `most` at most, newest first.
pub(super) fn rows(journal: &Journal, most: usize, context: Context<'_>) -> Vec<HistoryRow> {
    let entries = journal.entries().rev().take(most);
    entries
        .map(|(e, stands)| HistoryRow {
            n: e.n as u32,
            at: e.at,
            text: what(&e.what, journal, context),
            stands: stands || matches!(e.what, What::Undo(_) | What::Redo(_)),
        })
        .collect()
}
