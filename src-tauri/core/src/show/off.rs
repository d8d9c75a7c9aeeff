//! Pieces that are off, laps that hold a size, and the whole against the plan.

use crate::cloth::fabric::Face;
use crate::command::{Action, Refusal, decide};
use crate::fitting::squaring::trim;
use crate::fitting::trimming::{holds, shortfalls};
use crate::log::journal::Journal;
use crate::measure::{Length, zero};
use crate::plan::assembly::Rect;
use crate::rescue::{Freed, Way, WayKind, can_be_off, freed, ways, ways_for_block};
use crate::show::change::left_over;
use crate::show::context::Lens;
use crate::show::errors::refusal;
use crate::show::parts::{Button, Head, head};
use crate::show::picture::Picture;
use crate::show::{measuring, names, opening, pictures};
use crate::throw::tasks::Task;
use crate::throw::{Event, Mishap, Opening, Throw};
use crate::words::Problem;
use serde::Serialize;
use ts_rs::TS;

/// One thing that can be done about a piece that is off.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct WayRow {
    /// What to do.
    pub title: String,
    /// What it means and costs, a sentence each.
    pub lines: Vec<String>,
    /// Said once it is done.
    pub done: String,
    /// Do it.
    pub button: Button,
}

/// A piece to choose.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct PieceChoice {
    /// The piece.
    pub piece: Rect,
    /// Its name.
    pub label: String,
}

/// A mishap to choose.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct MishapChoice {
    /// Which.
    pub why: Mishap,
    /// In words.
    pub label: String,
}

/// A piece that is off, and what can be done.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct OffView {
    /// Common to all screens.
    pub head: Head,
    /// The piece.
    pub piece: Rect,
    /// Which piece.
    pub title: String,
    /// What is known of it, a sentence each.
    pub lines: Vec<String>,
    /// The piece drawn, with what is short or over.
    pub picture: Option<Picture>,
    /// The squares in it, to say which is spoilt; empty for a square.
    pub squares: Vec<PieceChoice>,
    /// What may have happened to a square; empty where that is not asked.
    pub mishaps: Vec<MishapChoice>,
    /// The mishap chosen.
    pub why: Option<Mishap>,
    /// It can be measured.
    pub measure: bool,
    /// What can be done, least trouble first.
    pub ways: Vec<WayRow>,
    /// Said when there is nothing to do or to choose.
    pub rest: Option<String>,
}

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
