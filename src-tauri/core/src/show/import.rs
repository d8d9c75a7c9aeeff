//! A throw file that was brought, beside the copy that is here, if there is one.
//!
//! What is in which is told in plain words; for two copies that went apart the conflicts
//! are told side by side, each to be decided. The buttons come with what they ask for.

use crate::log::journal::Journal;
use crate::log::merge::{Change, Conflict, Relation, Unmergeable, Way, meet, relation};
use crate::show::context::Lens;
use crate::show::events;
use crate::show::shelf::ShelfView;
use crate::throw::Throw;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// What to do with a throw that was brought.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "take")]
pub enum Take {
    /// Put it on the shelf.
    Add,
    /// Put it on the shelf beside the copy that is here, as a throw of its own.
    KeepBoth,
    /// Take it in place of the copy here, which it has all of.
    TakeBrought,
    /// Leave all as it is.
    KeepHere,
    /// Make one of the two.
    Merge {
        /// For each conflict whether the brought side is kept.
        brought: Vec<bool>,
    },
}

/// A button that decides about a throw that was brought.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct TakeButton {
    /// Its words.
    pub label: String,
    /// What it asks for.
    pub take: Take,
}

/// One of the copies.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct CopyRow {
    /// Where it is.
    pub label: String,
    /// What it calls the throw.
    pub name: String,
    /// How many steps it has.
    pub said: String,
    /// When it was last worked on, in milliseconds since 1970.
    #[ts(type = "number")]
    pub at: i64,
}

/// What cannot both stand, to be decided.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct ConflictRow {
    /// On this device, a step each.
    pub here: Vec<String>,
    /// In the file, a step each.
    pub brought: Vec<String>,
}

/// A throw that was brought, beside the copy here.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct BringView {
    /// The number of the file: what is done is said of this one.
    pub file: u32,
    /// What it is.
    pub title: String,
    /// What is in which, a line each.
    pub said: Vec<String>,
    /// The copies.
    pub copies: Vec<CopyRow>,
    /// What is to be decided before they become one.
    pub conflicts: Vec<ConflictRow>,
    /// What can be done, the usual first.
    pub buttons: Vec<TakeButton>,
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Taken {
    /// The throw to open, if there is one.
    pub id: Option<String>,
    /// What to say.
    pub said: String,
    /// The shelf now.
    pub shelf: ShelfView,
}

/// What to show of a throw that was brought as the `file` of that number, of whose torn end
/// `left_out` bytes could not be read.
pub fn bring(
    here: Option<&Journal>,
    brought: &Journal,
    (file, left_out): (u32, u64),
    lens: Lens<'_>,
) -> BringView {
    let mut view = bring_whole(here, brought, file, lens);
    if left_out > 0 {
        view.said
            .insert(0, say!(lens, "bring-torn", bytes = left_out as i64));
    }
    view
}

fn bring_whole(here: Option<&Journal>, brought: &Journal, file: u32, lens: Lens<'_>) -> BringView {
    let copy = |key: &str, journal: &Journal| CopyRow {
        label: lens.say(key, &[]),
        name: journal.throw().name.clone(),
        said: say!(lens, "bring-steps", n = journal.len()),
        at: journal.entries().map(|(e, _)| e.at).max().unwrap_or(0),
    };
    let button = |key: &str, take: Take| TakeButton {
        label: lens.say(key, &[]),
        take,
    };
    let both = || button("bring-both", Take::KeepBoth);
    let Some(here) = here else {
        return BringView {
            file,
            title: say!(lens, "bring-new"),
            said: vec![say!(lens, "bring-new-what")],
            copies: vec![copy("bring-copy-brought", brought)],
            conflicts: Vec::new(),
            buttons: vec![button("bring-add", Take::Add)],
        };
    };
    let copies = vec![
        copy("bring-copy-here", here),
        copy("bring-copy-brought", brought),
    ];
    let mut conflicts = Vec::new();
    let (title, said, buttons) = match relation(here, brought) {
        Relation::Same => (
            say!(lens, "bring-same"),
            vec![say!(lens, "bring-same-what")],
            vec![button("bring-fine", Take::KeepHere)],
        ),
        Relation::FirstHasMore(n) => (
            say!(lens, "bring-here-more"),
            vec![say!(lens, "bring-here-more-what", n = n)],
            vec![button("bring-keep-here", Take::KeepHere), both()],
        ),
        Relation::SecondHasMore(n) => {
            let more = TakeButton {
                label: say!(lens, "bring-take-more", n = n),
                take: Take::TakeBrought,
            };
            (
                say!(lens, "bring-more"),
                vec![say!(lens, "bring-more-what", n = n)],
                vec![more, both(), button("bring-keep-here", Take::KeepHere)],
            )
        }
        Relation::Apart { first, second } => {
            let mut buttons = vec![both(), button("bring-keep-here", Take::KeepHere)];
            let mut said = vec![say!(
                lens,
                "bring-apart-what",
                here = first,
                brought = second
            )];
            match meet(here, brought) {
                Ok(meeting) => {
                    conflicts = meeting
                        .conflicts()
                        .iter()
                        .map(|c| conflict(c, here.throw(), brought.throw(), lens))
                        .collect();
                    said.push(say!(lens, "bring-conflicts", n = conflicts.len()));
                    let brought = vec![false; conflicts.len()];
                    buttons.insert(0, button("bring-merge", Take::Merge { brought }));
                }
                Err(_) => said.push(say!(lens, "bring-unmergeable")),
            }
            (say!(lens, "bring-apart"), said, buttons)
        }
        Relation::Strangers => (
            say!(lens, "bring-new"),
            vec![say!(lens, "bring-new-what")],
            vec![both(), button("bring-keep-here", Take::KeepHere)],
        ),
    };
    BringView {
        file,
        title,
        said,
        copies,
        conflicts,
        buttons,
    }
}

/// A conflict in words, of copies whose throws are these.
pub fn conflict(conflict: &Conflict, first: &Throw, second: &Throw, lens: Lens<'_>) -> ConflictRow {
    let told = |changes: &[Change], throw: &Throw| -> Vec<String> {
        let lines = changes.iter().map(|change| {
            let what = events::events(&change.events, throw, lens);
            match change.way {
                Way::Did => what,
                Way::TookBack => say!(lens, "history-undo", what = what),
                Way::DidAgain => say!(lens, "history-redo", what = what),
            }
        });
        lines.collect()
    };
    ConflictRow {
        here: told(&conflict.first, first),
        brought: told(&conflict.second, second),
    }
}

/// Why two copies were not merged, as a code of the table of errors.
pub fn unmergeable(why: Unmergeable) -> &'static str {
    match why {
        Unmergeable::Strangers => "merge-strangers",
        Unmergeable::Undecided => "merge-undecided",
        Unmergeable::Misfit => "merge-misfit",
    }
}
