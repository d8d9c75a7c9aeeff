//! A throw file that was brought, beside the copy that is here, if there is one.
//!
//! What is in which is told in plain words; for two copies that went apart the conflicts
//! are told side by side, each to be decided. The buttons come with what they ask for.

use crate::log::journal::Journal;
use crate::log::merge::{Conflict, Divergence, Origin, Relation, Unmergeable, meet, relation};
use crate::show::context::Context;
use crate::show::events;
use crate::show::shelf::ShelfView;
use crate::throw::Throw;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// What to do with a throw that was brought.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "take")]
pub enum ImportChoice {
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
pub struct ImportButton {
    /// Its words.
    pub label: String,
    /// What it asks for.
    pub take: ImportChoice,
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
pub struct ImportView {
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
    pub buttons: Vec<ImportButton>,
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Imported {
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
    context: Context<'_>,
) -> ImportView {
    let mut view = bring_whole(here, brought, file, context);
    if left_out > 0 {
        view.said
            .insert(0, say!(context, "bring-torn", bytes = left_out as i64));
    }
    view
}

fn bring_whole(
    here: Option<&Journal>,
    brought: &Journal,
    file: u32,
    context: Context<'_>,
) -> ImportView {
    let copy = |key: &str, journal: &Journal| CopyRow {
        label: context.say(key, &[]),
        name: journal.throw().name.clone(),
        said: say!(context, "bring-steps", n = journal.len()),
        at: journal.entries().map(|(e, _)| e.at).max().unwrap_or(0),
    };
    let button = |key: &str, take: ImportChoice| ImportButton {
        label: context.say(key, &[]),
        take,
    };
    let both = || button("bring-both", ImportChoice::KeepBoth);
    let Some(here) = here else {
        return ImportView {
            file,
            title: say!(context, "bring-new"),
            said: vec![say!(context, "bring-new-what")],
            copies: vec![copy("bring-copy-brought", brought)],
            conflicts: Vec::new(),
            buttons: vec![button("bring-add", ImportChoice::Add)],
        };
    };
    let copies = vec![
        copy("bring-copy-here", here),
        copy("bring-copy-brought", brought),
    ];
    let mut conflicts = Vec::new();
    let (title, said, buttons) = match relation(here, brought) {
        Relation::Same => (
            say!(context, "bring-same"),
            vec![say!(context, "bring-same-what")],
            vec![button("bring-fine", ImportChoice::KeepHere)],
        ),
        Relation::FirstHasMore(n) => (
            say!(context, "bring-here-more"),
            vec![say!(context, "bring-here-more-what", n = n)],
            vec![button("bring-keep-here", ImportChoice::KeepHere), both()],
        ),
        Relation::SecondHasMore(n) => {
            let more = ImportButton {
                label: say!(context, "bring-take-more", n = n),
                take: ImportChoice::TakeBrought,
            };
            (
                say!(context, "bring-more"),
                vec![say!(context, "bring-more-what", n = n)],
                vec![
                    more,
                    both(),
                    button("bring-keep-here", ImportChoice::KeepHere),
                ],
            )
        }
        Relation::Apart { first, second } => {
            let mut buttons = vec![both(), button("bring-keep-here", ImportChoice::KeepHere)];
            let mut said = vec![say!(
                context,
                "bring-apart-what",
                here = first,
                brought = second
            )];
            match meet(here, brought) {
                Ok(meeting) => {
                    conflicts = meeting
                        .conflicts()
                        .iter()
                        .map(|c| conflict(c, here.throw(), brought.throw(), context))
                        .collect();
                    said.push(say!(context, "bring-conflicts", n = conflicts.len()));
                    let brought = vec![false; conflicts.len()];
                    buttons.insert(0, button("bring-merge", ImportChoice::Merge { brought }));
                }
                Err(_) => said.push(say!(context, "bring-unmergeable")),
            }
            (say!(context, "bring-apart"), said, buttons)
        }
        Relation::Strangers => (
            say!(context, "bring-new"),
            vec![say!(context, "bring-new-what")],
            vec![both(), button("bring-keep-here", ImportChoice::KeepHere)],
        ),
    };
    ImportView {
        file,
        title,
        said,
        copies,
        conflicts,
        buttons,
    }
}

/// A conflict in words, of copies whose throws are these.
pub fn conflict(
    conflict: &Conflict,
    first: &Throw,
    second: &Throw,
    context: Context<'_>,
) -> ConflictRow {
    let told = |changes: &[Divergence], throw: &Throw| -> Vec<String> {
        let lines = changes.iter().map(|change| {
            let what = events::events(&change.events, throw, context);
            match change.way {
                Origin::Did => what,
                Origin::TookBack => say!(context, "history-undo", what = what),
                Origin::DidAgain => say!(context, "history-redo", what = what),
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
