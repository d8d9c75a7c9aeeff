//! Pieces that are off, laps that hold a size, and the whole against the plan.

use super::{Lens, errors, head, measuring, names, opening, pictures, refusal};
use crate::cloth::fabric::Face;
use crate::command::{Action, Refusal, decide};
use crate::fitting::reconcile::{Direction, before, change, reconcile};
use crate::fitting::squaring::trim;
use crate::fitting::trimming::{holds, shortfalls};
use crate::log::journal::Journal;
use crate::measure::{Length, zero};
use crate::plan::assembly::{Kind, Rect, Seam};
use crate::rescue::holding;
use crate::rescue::{Freed, Way, WayKind, can_be_off, freed, ways, ways_for_block};
use crate::throw::index::tier;
use crate::throw::tasks::Task;
use crate::throw::{Event, Mishap, Opening, Size, Throw};
use crate::view::{
    Button, CompareRow, FieldProblem, Figure, HoldRow, HoldView, MishapChoice, OffView,
    PieceChoice, WayRow, WholeView,
};
use crate::words::Problem;
use std::collections::BTreeMap;

/// A piece that is off, and what can be done.
pub(super) fn off(
    journal: &Journal,
    piece: Rect,
    why: Option<Mishap>,
    lens: Lens<'_>,
) -> Result<OffView, Problem> {
    let throw = journal.throw();
    if !throw.assembly().knows(piece) {
        return Err(refusal(&Refusal::NoSuchPiece(piece), Some(throw), lens));
    }
    let block = throw.assembly().is_block(piece);
    let cut = piece.is_square() && throw.has(piece, Task::Cut);
    let mut lines = Vec::new();
    let mut found = Vec::new();
    let (mut picture, mut over) = (None, false);
    let mut settled = None;
    if block {
        let (held, target) = (holds(throw, piece), throw.target(piece));
        if throw.work(piece).is_some_and(|w| w.measured.is_some()) {
            let off = |m, t| lens.over_under(trim(m, t, lens.ruler).over);
            lines.push(say!(
                lens,
                "off-block",
                size = lens.by(held.width, held.height),
                across = off(held.width, target.width),
                down = off(held.height, target.height)
            ));
            over = held.width > target.width || held.height > target.height;
            picture = Some(pictures::measured(throw, piece, held, lens));
        } else {
            lines.push(say!(lens, "off-measure-first"));
        }
        if can_be_off(throw, piece) {
            found = ways_for_block(throw, piece, lens.ruler);
        }
        let short = shortfalls(throw, piece);
        if !short.is_empty() && short.iter().all(|s| s.open == zero()) {
            // It may be sewn as it is: what would only move or remake it is not for now.
            let idle = |kind| {
                matches!(
                    kind,
                    WayKind::LapLess | WayKind::ToEdge(_) | WayKind::Another
                )
            };
            found.retain(|w| !idle(w.kind));
            let mut said = measuring::made_up(throw, piece, None, "short-open", lens);
            said.push(say!(lens, "short-settled"));
            settled = Some(lens.words.list("sentences", said));
        } else {
            lines.extend(measuring::made_up(throw, piece, None, "short-left", lens));
        }
    } else if piece.is_square() {
        match why {
            Some(why) if cut => {
                lines.push(lens.say(&format!("off-{}", why.key()), &[]));
                found = ways(throw, piece, why);
            }
            _ if cut => lines.push(say!(lens, "off-what")),
            _ => lines.push(say!(lens, "off-not-cut")),
        }
    }
    let squares: Vec<PieceChoice> = piece
        .squares()
        .filter(|s| *s != piece && piece.count() <= 16 && throw.has(*s, Task::Cut))
        .map(|piece| PieceChoice {
            piece,
            label: names::piece(throw, piece, lens),
        })
        .collect();
    if !squares.is_empty() {
        lines.push(say!(lens, "off-which"));
    }
    let mishaps = Mishap::ALL
        .into_iter()
        .filter(|_| cut)
        .map(|why| MishapChoice {
            why,
            label: lens.say(&format!("mishap-{}", why.key()), &[]),
        })
        .collect();
    let asked = (cut && why.is_some()) || block;
    Ok(OffView {
        head: head(journal, lens),
        piece,
        title: names::piece(throw, piece, lens),
        lines,
        picture,
        squares,
        mishaps,
        why,
        measure: block && throw.has(piece, Task::Stitch) && !throw.has(piece, Task::SquareUp),
        rest: settled.or_else(|| {
            let key = if over { "off-rest-trim" } else { "off-rest" };
            (asked && found.is_empty()).then(|| lens.say(key, &[]))
        }),
        ways: found.iter().map(|w| row(throw, piece, w, lens)).collect(),
    })
}

/// The laps that are marked by what happens, not taken back.
fn marked(events: &[Event]) -> Vec<(Rect, Rect, Length)> {
    let laps = events.iter().filter_map(|e| match e {
        Event::LapsMarked { laps } => Some(laps),
        _ => None,
    });
    laps.flatten()
        .filter_map(|(a, b, lap)| Some((*a, *b, (*lap)?)))
        .collect()
}

fn row(throw: &Throw, piece: Rect, way: &Way, lens: Lens<'_>) -> WayRow {
    let events = decide(Some(throw), &way.action).unwrap_or_default();
    let laps = marked(&events);
    let (title, done) = titles(throw, piece, way, laps.len(), lens);
    let mut lines = Vec::new();
    if let WayKind::FewerAcross | WayKind::FewerDown = way.kind
        && let Action::ChangePlan { plan } = &way.action
        && let Some(freed) = freed(throw, piece, plan)
    {
        lines.push(match freed {
            Freed::Itself => say!(lens, "way-fewer-itself"),
            Freed::Squares(n) => say!(lens, "way-fewer-squares", n = n),
            Freed::Cloth(n) => say!(lens, "way-fewer-cloth", n = n),
        });
    }
    if let Action::Unpick { lap: Some(lap), .. } = &way.action {
        lines.push(say!(lens, "way-new-lap", lap = lens.length(*lap)));
    } else {
        for (a, b, lap) in &laps {
            let lap = lens.length(*lap);
            let usual = lens.length(throw.plan.lap_between());
            let name = |p: &Rect| names::piece(throw, *p, lens);
            let other = match (*a == piece, *b == piece) {
                (true, _) => Some(b),
                (_, true) => Some(a),
                _ => None,
            };
            lines.push(match other {
                Some(other) => say!(
                    lens,
                    "way-lap-at",
                    piece = name(other),
                    lap = lap,
                    usual = usual
                ),
                None => say!(
                    lens,
                    "way-lap-between",
                    a = name(a),
                    b = name(b),
                    lap = lap,
                    usual = usual
                ),
            });
        }
    }
    if way.seams > 0 {
        lines.push(say!(
            lens,
            "way-unpick",
            n = way.seams,
            length = lens.length(way.unpick)
        ));
        lines.extend(opened(throw, piece, &events, lens));
    } else if throw.is_joined(Rect::square(piece.row, piece.col)) || !piece.is_square() {
        lines.push(say!(lens, "way-nothing-undone"));
    }
    let anew = relabelled(throw, &events, lens);
    lines.extend(anew.clone());
    let after = throw.after(&events);
    let (now, then) = (throw.finished(), after.finished());
    if now != then {
        lines.push(say!(
            lens,
            "way-size",
            size = lens.by(then.width, then.height)
        ));
    }
    lines.extend(left_over(throw, &after, lens));
    lines.push(say!(lens, "way-minutes", n = way.minutes));
    WayRow {
        button: Button {
            label: title.clone(),
            action: way.action.clone(),
        },
        title,
        lines,
        done: match anew {
            Some(anew) => lens.words.list("sentences", [done, anew]),
            None => done,
        },
    }
}

/// What a way is called, and what is said once it is done.
fn titles(throw: &Throw, piece: Rect, way: &Way, laps: usize, lens: Lens<'_>) -> (String, String) {
    let face = |face| match face {
        Face::Front => "front",
        Face::Back => "back",
    };
    let name = |piece| names::piece(throw, piece, lens);
    let here = name(piece);
    let plan = &throw.plan;
    match way.kind {
        WayKind::Spare => (
            say!(lens, "way-spare", n = throw.spares),
            say!(lens, "way-spare-done", piece = here),
        ),
        WayKind::Recut => (
            say!(lens, "way-recut"),
            say!(lens, "way-recut-done", piece = here),
        ),
        WayKind::Patch(f) => (
            say!(lens, "way-patch", face = face(f)),
            say!(lens, "way-patch-done", piece = here, face = face(f)),
        ),
        WayKind::FewerAcross => (
            say!(lens, "way-fewer-across", n = plan.across - 1),
            say!(lens, "way-fewer-across-done", n = plan.across - 1),
        ),
        WayKind::FewerDown => (
            say!(lens, "way-fewer-down", n = plan.down - 1),
            say!(lens, "way-fewer-down-done", n = plan.down - 1),
        ),
        WayKind::LapLess => (
            say!(lens, "way-lap-less", n = laps),
            say!(lens, "way-lap-less-done", piece = here, n = laps),
        ),
        WayKind::Resew => (
            say!(lens, "way-resew"),
            say!(lens, "way-resew-done", piece = here),
        ),
        WayKind::Trim(size) => (
            say!(lens, "way-trim", size = lens.length(size), n = laps),
            say!(lens, "way-trim-done", size = lens.length(size), n = laps),
        ),
        WayKind::ToEdge(place) => (
            say!(lens, "way-to-edge", place = name(place)),
            say!(lens, "way-to-edge-done", piece = here, place = name(place)),
        ),
        WayKind::Another => (
            say!(lens, "way-another"),
            say!(lens, "way-another-done", piece = here),
        ),
    }
}

/// Which seams are opened by what happens, a sentence each.
fn opened(throw: &Throw, piece: Rect, events: &[Event], lens: Lens<'_>) -> Vec<String> {
    let mut out = Vec::new();
    for (n, event) in events.iter().enumerate() {
        let Event::Unpicked { pieces } = event else {
            continue;
        };
        // A four that was turned is laid back before anything in it is opened.
        let laid = throw.after(&events[..n]);
        let spoilt = events[n..].iter().find_map(|e| match e {
            Event::Spoilt { piece, .. } => Some(*piece),
            _ => None,
        });
        let opening = Opening {
            joins: pieces.clone(),
            square: spoilt.or(piece.is_square().then_some(piece)),
        };
        out.extend(opening::lines(&laid, &opening, lens));
    }
    out
}

/// How the labels of squares that change places read afterwards.
fn relabelled(throw: &Throw, events: &[Event], lens: Lens<'_>) -> Option<String> {
    let mut list = Vec::new();
    for event in events {
        let Event::Moved { moves } = event else {
            continue;
        };
        for (from, to) in moves {
            let cut = from.squares().filter(|s| throw.has(*s, Task::Cut));
            list.extend(cut.map(|s| {
                let place = Rect {
                    row: s.row - from.row + to.row,
                    col: s.col - from.col + to.col,
                    ..s
                };
                say!(
                    lens,
                    "relabel-one",
                    from = names::square(s),
                    to = names::square(place)
                )
            }));
        }
    }
    (!list.is_empty()).then(|| {
        let list = lens.words.list("list-short", list);
        say!(lens, "relabel", list = list)
    })
}

fn set_aside(before: &Throw, after: &Throw) -> Vec<Rect> {
    after
        .aside
        .iter()
        .skip(before.aside.len())
        .map(|a| a.piece)
        .collect()
}

/// What a change leaves over, in one sentence; none when nothing is.
pub(super) fn left_over(before: &Throw, after: &Throw, lens: Lens<'_>) -> Option<String> {
    let made = set_aside(before, after);
    match made.as_slice() {
        [] => None,
        [piece] => {
            let size = before.size(*piece);
            Some(say!(
                lens,
                "aside",
                piece = names::piece(before, *piece, lens),
                size = lens.by(size.width, size.height)
            ))
        }
        several => {
            let list = by_kind(before, several)
                .into_iter()
                .rev()
                .map(|(kind, pieces)| names::count(kind, pieces.len(), lens));
            let list = lens.words.list("list-and", list.collect::<Vec<_>>());
            Some(say!(lens, "aside-several", list = list))
        }
    }
}

/// Work left as words: the middle, with its range.
pub(super) fn time_left(left: crate::log::pace::Pace, lens: Lens<'_>) -> String {
    let words = |minutes: f64| {
        let quarters = (minutes / 15.0).ceil() as i64;
        say!(lens, "hours", h = quarters / 4, m = quarters % 4 * 15)
    };
    if left.high <= 0.0 {
        return say!(lens, "none");
    }
    let key = if left.own { "time-own" } else { "time-usual" };
    say!(
        lens,
        key,
        middle = words(left.middle),
        low = words(left.low),
        high = words(left.high)
    )
}

/// Pieces named one by one up to this many; more are counted.
const NAMED: usize = 4;

/// Pieces of one kind, by name or by number.
fn called(throw: &Throw, kind: Kind, pieces: &[Rect], lens: Lens<'_>) -> String {
    if pieces.len() > NAMED {
        return names::count(kind, pieces.len(), lens);
    }
    let named = pieces.iter().map(|p| names::piece(throw, *p, lens));
    lens.words.list("list-short", named.collect::<Vec<_>>())
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
fn all_called(throw: &Throw, pieces: &[Rect], lens: Lens<'_>) -> String {
    let kinds = by_kind(throw, pieces);
    let each = kinds.iter().map(|(k, p)| called(throw, *k, p, lens));
    lens.words.list("list-short", each.collect::<Vec<_>>())
}

/// Whether a block is larger than what it is to be trimmed to.
fn over(throw: &Throw, block: Rect) -> bool {
    let target = throw.target(block);
    let held = crate::fitting::trimming::holds(throw, block);
    throw.assembly().is_block(block) && (held.width > target.width || held.height > target.height)
}

/// What stays as it was made, and what is to be trimmed again or is short, a sentence each.
fn stays(before: &Throw, after: &Throw, lens: Lens<'_>) -> Vec<String> {
    let mut out = Vec::new();
    let mut laps: BTreeMap<Length, Vec<Rect>> = BTreeMap::new();
    let mut again: Vec<Rect> = Vec::new();
    let mut trim: Vec<Rect> = Vec::new();
    let mut short: BTreeMap<(Length, Length), Vec<Rect>> = BTreeMap::new();
    for piece in after.assembly().pieces() {
        let Some(work) = after.work(piece) else {
            continue;
        };
        if let Some(made) = work.made {
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
        } else if let Some(size) = work.squared {
            let target = after.target(piece);
            if size.width < target.width || size.height < target.height {
                let short = short.entry((size.width, size.height)).or_default();
                short.push(piece);
            }
        } else if work.made.is_some() && over(after, piece) && !over(before, piece) {
            trim.push(piece);
        }
    }
    for (lap, pieces) in laps {
        let pieces = all_called(after, &pieces, lens);
        out.push(say!(
            lens,
            "stays-lapped",
            pieces = pieces,
            lap = lens.length(lap)
        ));
    }
    if let Some(first) = again.first() {
        let target = after.target(*first);
        let size = lens.by(target.width, target.height);
        let pieces = all_called(after, &again, lens);
        out.push(say!(lens, "trim-again", pieces = pieces, size = size));
    }
    if let Some(first) = trim.first() {
        let target = after.target(*first);
        let size = lens.by(target.width, target.height);
        let pieces = all_called(after, &trim, lens);
        out.push(say!(lens, "trim-now", pieces = pieces, size = size));
    }
    for ((width, height), pieces) in short {
        let pieces = all_called(after, &pieces, lens);
        let size = lens.by(width, height);
        out.push(say!(lens, "stays-short", pieces = pieces, size = size));
    }
    out
}

/// What a change would do, before and after.
pub(super) fn compare(
    journal: &Journal,
    events: &[Event],
    lens: Lens<'_>,
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
    let hours = |t: &Throw| time_left(crate::log::pace::left(t, &paces), lens);
    let size = |t: &Throw| {
        let size = t.finished();
        lens.by(size.width, size.height)
    };
    let count = |n: usize| lens.plain(say!(lens, "number", n = n));
    let row = |key: &str, before, after| CompareRow {
        label: lens.say(&format!("compare-{key}"), &[]),
        differs: before != after,
        before,
        after,
    };
    let rows = vec![
        row("finished", size(throw), size(&then)),
        row("squares", count(squares(throw)), count(squares(&then))),
        row(
            "spares",
            count(throw.spares.get() as usize),
            count(then.spares.get() as usize),
        ),
        row("seams", count(seams(throw)), count(seams(&then))),
        row("time", lens.plain(hours(throw)), lens.plain(hours(&then))),
    ];
    let mut lines: Vec<String> = left_over(throw, &then, lens).into_iter().collect();
    lines.extend(stays(throw, &then, lens));
    for event in events {
        if let Event::Moved { moves } = event {
            for pair in moves.chunks(2) {
                lines.push(say!(
                    lens,
                    "moved",
                    from = names::piece(throw, pair[0].0, lens),
                    to = names::piece(&then, pair[0].1, lens)
                ));
            }
        }
    }
    if events.iter().any(|e| matches!(e, Event::LapsMarked { .. })) {
        lines.push(say!(lens, "marks-anew"));
    }
    (rows, lines)
}

/// Read a width and a height; what is wrong goes to `faults`, nothing typed is no fault.
pub(super) fn typed_size(
    width: &str,
    height: &str,
    faults: &mut Vec<FieldProblem>,
    lens: Lens<'_>,
) -> Option<Size> {
    let mut read = |field: &str, typed: &str| match lens.parse(typed) {
        Ok(length) => Some(length),
        Err(crate::measure::ParseError::Empty) => None,
        Err(error) => {
            faults.push(FieldProblem {
                field: field.into(),
                problem: errors::typed(&error, lens),
            });
            None
        }
    };
    let (width, height) = (read("width", width), read("height", height));
    Some(Size {
        width: width?,
        height: height?,
    })
}

/// Laps that hold a wished-for size.
pub(super) fn hold(journal: &Journal, width: &str, height: &str, lens: Lens<'_>) -> HoldView {
    let throw = journal.throw();
    let mut faults = Vec::new();
    let size = typed_size(width, height, &mut faults, lens);
    let between = |j: &&crate::plan::assembly::Join| {
        !throw.assembly().blocks().iter().any(|b| b.holds(j.whole)) && !throw.begun(j.whole)
    };
    let left = throw.assembly().joins().iter().filter(between).count();
    let rows = size.map_or_else(Vec::new, |wish| {
        holding::laps(throw, wish.width, wish.height, lens.ruler, 5)
            .into_iter()
            .map(|h| {
                let mut lines = vec![
                    say!(
                        lens,
                        "grid-width",
                        off = lens.over_under(h.size.width - wish.width)
                    ),
                    say!(
                        lens,
                        "grid-height",
                        off = lens.over_under(h.size.height - wish.height)
                    ),
                ];
                if let Some(fringe) = h.fringe {
                    lines.push(say!(lens, "hold-fringe", fringe = lens.length(fringe)));
                }
                let same = h.lap == throw.plan.lap_between();
                HoldRow {
                    lap: lens.length(h.lap),
                    finished: lens.by(h.size.width, h.size.height),
                    lines,
                    choose: (!same).then(|| Button {
                        label: say!(lens, "hold-choose", lap = lens.length(h.lap)),
                        action: h.action,
                    }),
                }
            })
            .collect()
    });
    HoldView {
        head: head(journal, lens),
        faults,
        rows,
        said: say!(lens, "hold-left", n = left),
    }
}

/// The whole piece against the plan.
pub(super) fn whole(journal: &Journal, width: &str, height: &str, lens: Lens<'_>) -> WholeView {
    let throw = journal.throw();
    let mut faults = Vec::new();
    let size = typed_size(width, height, &mut faults, lens);
    let mut keep = None;
    if let Some(size) = size {
        let action = Action::MeasureWhole {
            width: size.width,
            height: size.height,
        };
        match decide(Some(throw), &action) {
            Ok(_) => {
                keep = Some(Button {
                    label: say!(lens, "measure-keep"),
                    action,
                })
            }
            Err(why) => {
                let problem = refusal(&why, Some(throw), lens);
                faults.push(FieldProblem {
                    field: "width".into(),
                    problem,
                });
            }
        }
    }
    let typed = size.filter(|_| keep.is_some()).map(|s| (s, throw.washes()));
    let kept_last = || throw.wholes.last().map(|w| (w.size, w.washes));
    let shown = typed.or_else(kept_last);
    let foreseen = throw.finished();
    WholeView {
        head: head(journal, lens),
        foreseen: match before(throw, throw.washes()) {
            Some(first) => Figure {
                label: say!(lens, "figure-before-wash"),
                value: lens.by(first.size.width, first.size.height),
            },
            None => Figure {
                label: say!(lens, "figure-foreseen"),
                value: lens.by(foreseen.width, foreseen.height),
            },
        },
        faults,
        lines: shown.map_or_else(Vec::new, |(size, washes)| {
            verdict(throw, size, washes, lens)
        }),
        keep,
        kept: kept(throw, lens),
    }
}

/// What a measure of the whole says: of the laps before the first wash, of washing after it.
fn verdict(throw: &Throw, measured: Size, washes: u8, lens: Lens<'_>) -> Vec<String> {
    if washes == 0 {
        return reconciled(throw, measured, lens);
    }
    let Some(first) = before(throw, washes) else {
        let mut out = vec![say!(lens, "whole-washed-unknown")];
        for d in reconcile(throw, measured) {
            out.push(against(&d, lens));
        }
        return out;
    };
    let n = washes - first.washes;
    let mut out = Vec::new();
    let mut shrank = false;
    for (way, was, now) in [
        ("across", first.size.width, measured.width),
        ("down", first.size.height, measured.height),
    ] {
        if was == now {
            out.push(lens.say(
                &format!("whole-washed-{way}-same"),
                &[("size", lens.length(now).into())],
            ));
            continue;
        }
        shrank |= now < was;
        let by = if now < was { was - now } else { now - was };
        out.push(lens.say(
            &format!("whole-washed-{way}"),
            &[
                ("before", lens.length(was).into()),
                ("now", lens.length(now).into()),
                ("by", lens.length(by).into()),
                ("how", if now < was { "less" } else { "more" }.into()),
                ("percent", percent(was, now, lens).into()),
                ("n", n.into()),
            ],
        ));
    }
    if shrank {
        out.push(say!(lens, "whole-washed-usual"));
    }
    out
}

/// One direction against what it should measure.
fn against(d: &Direction, lens: Lens<'_>) -> String {
    let way = match d.seam {
        Seam::Upright => "across",
        Seam::Level => "down",
    };
    let key = match d.off == zero() {
        true => format!("whole-{way}-exact"),
        false => format!("whole-{way}"),
    };
    lens.say(
        &key,
        &[
            ("measured", lens.length(d.measured).into()),
            ("foreseen", lens.length(d.foreseen).into()),
            ("off", lens.over_under(d.off).into()),
        ],
    )
}

/// Where the difference came from, a sentence each.
pub(super) fn reconciled(throw: &Throw, measured: Size, lens: Lens<'_>) -> Vec<String> {
    let mut out = Vec::new();
    for d in reconcile(throw, measured) {
        out.push(against(&d, lens));
        if d.off == zero() {
            continue;
        }
        if d.within_give {
            out.push(say!(lens, "whole-within"));
            continue;
        }
        out.push(say!(lens, "whole-beyond"));
        if let Some(each) = d.per_lap.filter(|p| lens.ruler.nearest(*p) != zero()) {
            let each = lens.over_under(each);
            out.push(say!(lens, "whole-each", laps = d.laps, each = each));
        }
    }
    out
}

/// A change of size in per cent, with its sign.
pub(super) fn percent(before: Length, after: Length, lens: Lens<'_>) -> String {
    match change(before, after) {
        Some(p) => {
            let sign = if p < 0.0 { "\u{2212}" } else { "+" };
            format!("{sign}{}", lens.words.decimal(p.abs(), 1))
        }
        None => String::new(),
    }
}

fn kept(throw: &Throw, lens: Lens<'_>) -> Vec<String> {
    let first = throw.wholes.first().map(|w| w.size);
    throw
        .wholes
        .iter()
        .enumerate()
        .map(|(i, w)| {
            let size = lens.by(w.size.width, w.size.height);
            match first.filter(|_| i > 0) {
                Some(before) => say!(
                    lens,
                    "whole-kept-change",
                    n = w.washes,
                    size = size,
                    across = percent(before.width, w.size.width, lens),
                    down = percent(before.height, w.size.height, lens)
                ),
                None => say!(lens, "whole-kept", n = w.washes, size = size),
            }
        })
        .collect()
}
