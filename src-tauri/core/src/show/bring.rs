//! A throw file that was brought, beside the copy that is here, if there is one.
//!
//! What is in which is told in plain words; for two copies that went apart the conflicts
//! are told side by side, each to be decided. The buttons come with what they ask for.

use super::{Lens, history};
use crate::log::journal::Journal;
use crate::log::merge::{Change, Conflict, Relation, Unmergeable, Way, meet, relation};
use crate::throw::Throw;
use crate::view::{BringView, ConflictRow, CopyRow, Take, TakeButton};

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
            let what = history::events(&change.events, throw, lens);
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
