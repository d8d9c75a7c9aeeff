//! A throw file to import, beside the copy that is already here, if there is one.
//!
//! The screen says in plain words what each copy contains. Where two copies went apart it shows
//! the conflicts side by side, each to be decided. Every button carries its choice.

use crate::cloth::fabric::Cover;
use crate::log::journal::Journal;
use crate::log::merge::{Conflict, Divergence, Origin, Relation, Unmergeable, meet, relation};
use crate::plan::Plan;
use crate::plan::assembly::Rect;
use crate::show::context::Context;
use crate::show::plan::draft_of;
use crate::show::scraps::stitch;
use crate::show::shelf::ShelfView;
use crate::show::{events, names};
use crate::throw::tasks::Task;
use crate::throw::{Event, Throw};
use crate::types::TS;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// What to do with an imported throw.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "choice")]
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
        /// For each conflict whether the imported side is kept.
        brought: Vec<bool>,
    },
}

/// A button that decides about an imported throw.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct ImportButton {
    /// Its words.
    pub label: String,
    /// What it asks for.
    pub choice: ImportChoice,
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

/// An imported throw, beside the copy here.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct ImportView {
    /// The number of the file, which the choice refers to.
    pub file: u32,
    /// What it is.
    pub title: String,
    /// What is in which, a line each.
    pub said: Vec<String>,
    /// What else there is to know, for who asks.
    pub details: Option<String>,
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

/// What to show of an imported throw as the `file` of that number, of whose torn end
/// `left_out` bytes could not be read.
pub fn import(
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
    let button = |key: &str, choice: ImportChoice| ImportButton {
        label: context.say(key, &[]),
        choice,
    };
    let both = || button("bring-both", ImportChoice::KeepBoth);
    let Some(here) = here else {
        return ImportView {
            file,
            title: say!(context, "bring-new"),
            said: vec![say!(context, "bring-new-what")],
            details: None,
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
                choice: ImportChoice::TakeBrought,
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
        details: None,
        copies,
        conflicts,
        buttons,
    }
}

/// A conflict between two copies in words.
pub fn conflict(
    conflict: &Conflict,
    first: &Throw,
    second: &Throw,
    context: Context<'_>,
) -> ConflictRow {
    let described = |changes: &[Divergence], throw: &Throw| -> Vec<String> {
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
    let (mut here, mut brought) = (
        described(&conflict.first, first),
        described(&conflict.second, second),
    );
    let alike = here == brought;
    here.extend(lost(conflict, first, false, context));
    brought.extend(lost(conflict, second, true, context));
    if alike && here == brought {
        here.push(say!(context, "bring-alike"));
        brought.push(say!(context, "bring-alike"));
    }
    ConflictRow { here, brought }
}

/// Names of pieces listed one by one; more are counted.
const NAMED: usize = 8;

/// What one side has of a conflict and the other has not, where its steps do not name it:
/// that is lost when the other is chosen.
fn lost(conflict: &Conflict, throw: &Throw, second: bool, context: Context<'_>) -> Vec<String> {
    let (mine, other) = match second {
        false => (&conflict.first, &conflict.second),
        true => (&conflict.second, &conflict.first),
    };
    let did = |side: &[Divergence]| -> Vec<Event> {
        let done = side.iter().filter(|d| d.way != Origin::TookBack);
        done.flat_map(|d| d.events.iter().cloned()).collect()
    };
    let (mine, other) = (did(mine), did(other));
    let mut out = Vec::new();
    // Pieces worked here and not there, by task.
    let theirs = worked(&other);
    for (task, pieces) in worked(&mine) {
        let own: Vec<Rect> = pieces
            .into_iter()
            .filter(|p| theirs.get(&task).is_none_or(|t| !t.contains(p)))
            .collect();
        if let Some(names) = named(throw, &own, context) {
            out.push(context.say(
                &format!("did-{}", task.key()),
                &[
                    ("piece", names.into()),
                    ("size", say!(context, "sizes-differ").into()),
                ],
            ));
        }
    }
    // Squares whose faces differ between the two sides.
    let theirs = covers(&other);
    let faces = covers(&mine).into_iter();
    let faces = faces.filter(|(square, cover)| theirs.get(square) != Some(cover));
    let faces: Vec<(Rect, Cover)> = faces.collect();
    let several = |e: &Event| matches!(e, Event::FacesChanged { faces, .. } if faces.len() > 1);
    if mine.iter().any(several) {
        for (square, cover) in faces.iter().take(NAMED) {
            let event = Event::FacesChanged {
                faces: vec![(*square, *cover)],
                again: None,
                by_hand: None,
            };
            out.push(events::event(&event, throw, context));
        }
        if faces.len() > NAMED {
            out.push(say!(context, "bring-more-squares", n = faces.len() - NAMED));
        }
    }
    let plan = |events: &[Event]| {
        events.iter().rev().find_map(|e| match e {
            Event::PlanChanged { plan, .. } => Some(*plan),
            _ => None,
        })
    };
    if let (Some(mine), Some(other)) = (plan(&mine), plan(&other)) {
        out.extend(plan_lines(&mine, &other, context));
    }
    let cloth = |events: &[Event]| -> Vec<String> {
        let lists = events.iter().filter_map(|e| match e {
            Event::ClothChanged { prints, denims } => Some((prints, denims)),
            _ => None,
        });
        let named = lists.flat_map(|(prints, denims)| {
            let prints = prints.iter().map(|p| match p.stock {
                Some(n) => say!(context, "bring-stock", name = p.name.as_str(), n = n),
                None => p.name.clone(),
            });
            prints.chain(denims.iter().map(|d| d.name.clone()))
        });
        named.collect()
    };
    let theirs = cloth(&other);
    let own = cloth(&mine);
    let own: Vec<String> = own.into_iter().filter(|n| !theirs.contains(n)).collect();
    if !own.is_empty() && !theirs.is_empty() {
        out.push(context.words.list("list-short", own));
    }
    match out.is_empty() {
        true => out,
        false => {
            let list = context.words.list("list-long", out);
            vec![say!(context, "bring-only", list = list)]
        }
    }
}

/// The pieces of each task that was done.
fn worked(events: &[Event]) -> BTreeMap<Task, BTreeSet<Rect>> {
    let mut out: BTreeMap<Task, BTreeSet<Rect>> = BTreeMap::new();
    for event in events {
        let (task, pieces): (Task, Vec<Rect>) = match event {
            Event::Done { task, pieces, .. } => (*task, pieces.clone()),
            Event::SparesUsed { pieces, .. } => (Task::Cut, pieces.clone()),
            Event::SquareMoved { to, .. } => (Task::Cut, vec![*to]),
            Event::SquaredUp { pieces, .. } => {
                (Task::SquareUp, pieces.iter().map(|p| p.0).collect())
            }
            _ => continue,
        };
        out.entry(task).or_default().extend(pieces);
    }
    out
}

/// The faces squares were given last.
fn covers(events: &[Event]) -> BTreeMap<Rect, Cover> {
    let changes = events.iter().filter_map(|e| match e {
        Event::FacesChanged { faces, .. } => Some(faces),
        _ => None,
    });
    changes.flatten().copied().collect()
}

fn named(throw: &Throw, pieces: &[Rect], context: Context<'_>) -> Option<String> {
    let first = pieces.iter().take(NAMED);
    let first = first.map(|p| names::piece(throw, *p, context));
    let list = context.words.list("list-short", first);
    match pieces.len() {
        0 => None,
        n if n > NAMED => Some(say!(context, "names-and-more", names = list, n = n - NAMED)),
        _ => Some(list),
    }
}

fn trim_edge_key(trimmed: bool) -> &'static str {
    match trimmed {
        true => "ui-trim-edge-step",
        false => "ui-trim-edge-none",
    }
}

/// The figures of a plan that are not the same in another.
fn plan_lines(mine: &Plan, other: &Plan, context: Context<'_>) -> Vec<String> {
    let described = |p: &Plan| -> [(&'static str, String); 13] {
        let d = draft_of(p, context);
        [
            ("ui-side", d.side),
            ("ui-lap", d.lap),
            ("ui-between", d.between),
            ("ui-trim", d.trim),
            ("ui-stitch", stitch(p.stitch, context)),
            ("ui-stitch-length", d.stitch_length),
            ("ui-fringe", d.fringe),
            ("ui-trim-edge", context.say(trim_edge_key(p.trim_edge), &[])),
            ("ui-strip", d.strip),
            ("ui-longest", d.longest),
            ("ui-tail", d.tail),
            ("ui-cooling-minutes", d.cooling),
            ("ui-washes", d.washes),
        ]
    };
    let pairs = described(mine).into_iter().zip(described(other));
    let differ = pairs.filter(|((_, mine), (_, other))| mine != other);
    differ
        .map(|((key, mine), _)| {
            let mine = match mine.is_empty() {
                true => say!(context, "none"),
                false => mine,
            };
            let label = context.say(key, &[]);
            say!(context, "told", what = label, how = mine)
        })
        .collect()
}

/// Why two copies were not merged, as a code of the table of errors.
pub fn unmergeable(why: Unmergeable) -> &'static str {
    match why {
        Unmergeable::Strangers => "merge-strangers",
        Unmergeable::Undecided => "merge-undecided",
        Unmergeable::Misfit => "merge-misfit",
    }
}
