//! What a change of plan means: before and after, what is left over, the time left.

use crate::cloth::fabric::Face;
use crate::faces::inherit::{Lost, Why, off_grid};
use crate::log::journal::Journal;
use crate::measure::Length;
use crate::plan::assembly::{Kind, Rect};
use crate::show::context::Context;
use crate::show::names;
use crate::show::parts::CompareRow;
use crate::show::stages::time_left;
use crate::throw::index::tier;
use crate::throw::tasks::{Task, cover_task};
use crate::throw::{Event, Throw};
use std::collections::BTreeMap;

/// Pieces named one by one up to this many; more are counted.
const NAMED: usize = 4;

/// What a change leaves over, in one sentence; none when nothing is.
pub(super) fn left_over(before: &Throw, after: &Throw, context: Context<'_>) -> Option<String> {
    let made = set_aside(before, after);
    match made.as_slice() {
        [] => None,
        [piece] => {
            let size = before.size(*piece);
            Some(say!(
                context,
                "aside",
                piece = names::piece(before, *piece, context),
                size = context.by(size.width, size.height)
            ))
        }
        several => {
            let list = by_kind(before, several)
                .into_iter()
                .rev()
                .map(|(kind, pieces)| names::count(kind, pieces.len(), context));
            let list = context.words.list("list-and", list.collect::<Vec<_>>());
            Some(say!(context, "aside-several", list = list))
        }
    }
}

/// Pieces of one kind, by name or by number.
fn called(throw: &Throw, kind: Kind, pieces: &[Rect], context: Context<'_>) -> String {
    if pieces.len() > NAMED {
        return names::count(kind, pieces.len(), context);
    }
    let named = pieces.iter().map(|p| names::piece(throw, *p, context));
    context.words.list("list-short", named.collect::<Vec<_>>())
}

/// Pieces by kind, the smallest kind first.
fn by_kind(throw: &Throw, pieces: &[Rect]) -> Vec<(Kind, Vec<Rect>)> {
    let mut kinds: BTreeMap<u8, (Kind, Vec<Rect>)> = BTreeMap::new();
    for piece in pieces {
        let kind = throw.kind(*piece);
        let entry = kinds.entry(tier(kind)).or_insert((kind, Vec::new()));
        entry.1.push(*piece);
    }
    kinds.into_values().collect()
}

/// Pieces by kind, each kind by name or by number.
fn all_called(throw: &Throw, pieces: &[Rect], context: Context<'_>) -> String {
    let kinds = by_kind(throw, pieces);
    let each = kinds.iter().map(|(k, p)| called(throw, *k, p, context));
    context.words.list("list-short", each.collect::<Vec<_>>())
}

/// Whether a block is larger than what it is to be trimmed to.
fn over(throw: &Throw, block: Rect) -> bool {
    let target = throw.target(block);
    let held = crate::fitting::trimming::holds(throw, block);
    throw.assembly().is_block(block) && (held.width > target.width || held.height > target.height)
}

/// What stays as it was made, and what is to be trimmed again or is short, a sentence each.
fn stays(before: &Throw, after: &Throw, context: Context<'_>) -> Vec<String> {
    let mut out = Vec::new();
    let mut laps: BTreeMap<Length, Vec<Rect>> = BTreeMap::new();
    let mut again: Vec<Rect> = Vec::new();
    let mut trim: Vec<Rect> = Vec::new();
    let mut short: BTreeMap<(Length, Length), Vec<Rect>> = BTreeMap::new();
    for piece in after.assembly().pieces() {
        let join = after.assembly().join(piece);
        let has_made_part = join.is_some_and(|j| after.is_made(j.first) || after.is_made(j.second));
        let work = after.work(piece);
        if work.is_none() && !has_made_part {
            continue;
        }
        if let Some(made) = work.and_then(|work| work.made) {
            let planned = after.planned(piece);
            let was = before.planned(piece);
            let changed = (was.joining, was.lap) != (planned.joining, planned.lap);
            if changed && (made.joining, made.lap) != (planned.joining, planned.lap) {
                laps.entry(made.lap).or_default().push(piece);
            }
        }
        if before.target(piece) == after.target(piece) {
            continue;
        }
        if after.trims_again(piece) {
            again.push(piece);
        } else if let Some(size) = work.and_then(|work| work.squared) {
            let target = after.target(piece);
            if size.width < target.width || size.height < target.height {
                let short = short.entry((size.width, size.height)).or_default();
                short.push(piece);
            }
        } else if (after.is_made(piece) || has_made_part) && over(after, piece) {
            trim.push(piece);
        }
    }
    let only_glued = laps.values().flatten();
    let only_glued = only_glued
        .filter(|piece| after.is_only_glued(**piece))
        .count();
    for (lap, pieces) in laps {
        let pieces = all_called(after, &pieces, context);
        out.push(say!(
            context,
            "stays-lapped",
            pieces = pieces,
            lap = context.length(lap)
        ));
    }
    if only_glued > 0 {
        out.push(say!(context, "stays-glued", n = only_glued));
    }
    if let Some(first) = again.first() {
        let target = after.target(*first);
        let size = context.by(target.width, target.height);
        let pieces = all_called(after, &again, context);
        out.push(say!(context, "trim-again", pieces = pieces, size = size));
    }
    if let Some(first) = trim.first() {
        let target = after.target(*first);
        let size = context.by(target.width, target.height);
        let pieces = all_called(after, &trim, context);
        out.push(say!(context, "trim-now", pieces = pieces, size = size));
    }
    for ((width, height), pieces) in short {
        let pieces = all_called(after, &pieces, context);
        let size = context.by(width, height);
        out.push(say!(context, "stays-short", pieces = pieces, size = size));
    }
    out
}

/// Fabric squares that a throw to be does not have, in sentences.
pub(super) fn faces_lost(old: &Throw, lost: &[Lost], context: Context<'_>) -> Vec<String> {
    let mut out = Vec::new();
    for (why, key) in [(Why::NoPlace, "no-place"), (Why::NoFabric, "no-fabric")] {
        let these: Vec<&Lost> = lost.iter().filter(|l| l.why == why).collect();
        if these.is_empty() {
            continue;
        }
        let name = |print: u8| {
            let print = old.prints.get(usize::from(print));
            print.map_or("", |p| p.name.as_str())
        };
        let list: Vec<String> = if these.len() <= NAMED {
            let one = |l: &&Lost| {
                say!(
                    context,
                    "faces-lost-one",
                    print = name(l.print),
                    square = names::square(l.square),
                    face = match l.face {
                        Face::Front => "front",
                        Face::Back => "back",
                    }
                )
            };
            these.iter().map(one).collect()
        } else {
            let mut counts: BTreeMap<u8, usize> = BTreeMap::new();
            for one in &these {
                *counts.entry(one.print).or_default() += 1;
            }
            let counts = counts.into_iter();
            let count = |(print, n)| say!(context, "faces-lost-count", n = n, print = name(print));
            counts.map(count).collect()
        };
        let list = context.words.list("list-and", list);
        let key = format!("faces-lost-{key}");
        out.push(say!(context, key, n = these.len(), list = list));
    }
    out
}

/// What a change of the grid takes off the faces: fabric squares, and what was chosen by hand,
/// for which the new grid has no place.
fn cropped(before: &Throw, events: &[Event], context: Context<'_>) -> Vec<String> {
    let at = events
        .iter()
        .position(|e| matches!(e, Event::PlanChanged { .. }));
    let Some((at, Event::PlanChanged { plan, .. })) = at.map(|at| (at, &events[at])) else {
        return Vec::new();
    };
    // Sewn blocks have changed places, or gone, by then.
    let then = before.after(&events[..at]);
    let aside = set_aside(before, &then);
    let mut lost = off_grid(&then, plan);
    lost.retain(|l| !aside.iter().any(|p| p.holds(l.square)));
    let mut out = faces_lost(&then, &lost, context);
    let glued = lost
        .iter()
        .filter(|l| then.has(l.square, cover_task(l.face)));
    match glued.count() {
        0 => {}
        n => out.push(say!(context, "faces-lost-glued", n = n)),
    }
    let grid = Rect::grid(plan.across, plan.down);
    let outside = then
        .assembly()
        .whole()
        .squares()
        .filter(|s| !grid.holds(*s));
    let by_hand = outside.filter(|s| then.is_pinned(*s) || then.is_denim_by_hand(*s));
    match by_hand.count() {
        0 => {}
        n => out.push(say!(context, "faces-lost-by-hand", n = n)),
    }
    out
}

/// What a change would do, before and after.
pub(super) fn compare(
    journal: &Journal,
    events: &[Event],
    context: Context<'_>,
) -> (Vec<CompareRow>, Vec<String>) {
    let throw = journal.throw();
    let then = throw.after(events);
    let squares = |t: &Throw| {
        t.assembly()
            .whole()
            .squares()
            .filter(|s| !t.has(*s, Task::Cut))
            .count()
    };
    let seams = |t: &Throw| {
        t.assembly()
            .joins()
            .iter()
            .filter(|j| !t.has(j.whole, Task::Stitch))
            .count()
    };
    let paces = crate::log::pace::paces(journal);
    let size = |t: &Throw| {
        let size = t.finished();
        context.by(size.width, size.height)
    };
    let count = |n: usize| context.plain(say!(context, "number", n = n));
    let row = |key: &str, before, after| CompareRow {
        label: context.say(&format!("compare-{key}"), &[]),
        differs: before != after,
        before,
        after,
    };
    let [now, later] = [throw, &then].map(|t| time_left(t, &paces, context));
    // What stays as it is takes no line, but for the size. The hours are told by the quarter: what
    // falls within one is no change.
    let mut rows = vec![row("finished", size(throw), size(&then))];
    let others = [
        row("squares", count(squares(throw)), count(squares(&then))),
        row(
            "spares",
            count(throw.spares.get() as usize),
            count(then.spares.get() as usize),
        ),
        row("seams", count(seams(throw)), count(seams(&then))),
        CompareRow {
            differs: now.middle != later.middle,
            ..row("time", context.plain(now.told), context.plain(later.told))
        },
    ];
    rows.extend(others.into_iter().filter(|row| row.differs));
    let mut lines: Vec<String> = left_over(throw, &then, context).into_iter().collect();
    lines.extend(cropped(throw, events, context));
    lines.extend(stays(throw, &then, context));
    for event in events {
        if let Event::Moved { moves } = event {
            for pair in moves.chunks(2) {
                lines.push(say!(
                    context,
                    "moved",
                    from = names::piece(throw, pair[0].0, context),
                    to = names::piece(&then, pair[0].1, context)
                ));
            }
        }
    }
    if events.iter().any(|e| matches!(e, Event::LapsMarked { .. })) {
        lines.push(say!(context, "marks-anew"));
    }
    (rows, lines)
}

fn set_aside(before: &Throw, after: &Throw) -> Vec<Rect> {
    after
        .aside
        .iter()
        .skip(before.aside.len())
        .map(|a| a.piece)
        .collect()
}
