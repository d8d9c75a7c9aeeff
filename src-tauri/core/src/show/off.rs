//! Pieces that are off, and the ways to save them.

use crate::cloth::fabric::Face;
use crate::command::{Command, Rejection, decide};
use crate::fitting::squaring::{leans, thin_laps, trim};
use crate::fitting::trimming::{holds, shortfalls};
use crate::log::journal::Journal;
use crate::measure::{Length, zero};
use crate::plan::assembly::{Rect, Seam};
use crate::rescue::{
    Freed, RecutFrom, Remedy, RemedyKind, can_be_off, freed, ways, ways_for_block, ways_for_glued,
};
use crate::show::change::left_over;
use crate::show::context::Context;
use crate::show::errors::rejection;
use crate::show::events::joined;
use crate::show::parts::{Button, Head, head};
use crate::show::picture::Picture;
use crate::show::{measuring, names, opening, pictures};
use crate::throw::account::account;
use crate::throw::seams::round;
use crate::throw::stock;
use crate::throw::tasks::{Task, cover_task};
use crate::throw::{Event, Mishap, SeamsToUnpick, Throw};
use crate::types::TS;
use crate::words::Problem;
use serde::Serialize;
use std::collections::BTreeMap;

/// One thing that can be done about a piece that is off.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct RemedyRow {
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
    pub ways: Vec<RemedyRow>,
    /// Said when there is nothing to do or to choose.
    pub rest: Option<String>,
}

/// A piece that is off, and what can be done.
pub(super) fn off(
    journal: &Journal,
    piece: Rect,
    why: Option<Mishap>,
    context: Context<'_>,
) -> Result<OffView, Problem> {
    let throw = journal.throw();
    if !throw.assembly().knows(piece) {
        return Err(rejection(
            &Rejection::NoSuchPiece(piece),
            Some(throw),
            context,
        ));
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
            if leans(throw, piece) {
                lines.push(say!(context, "off-leans"));
            }
            let off = |m, t| context.over_under(trim(m, t, context.ruler).over);
            lines.push(say!(
                context,
                "off-block",
                size = context.by(held.width, held.height),
                across = off(held.width, target.width),
                down = off(held.height, target.height)
            ));
            over = held.width > target.width || held.height > target.height;
            picture = Some(pictures::measured(throw, piece, held, context));
        } else if throw.has(piece, Task::Stitch) {
            // One that is not stitched yet is not measured.
            lines.push(say!(context, "off-measure-first"));
        }
        let thin = thin_laps(throw, piece);
        for seam in &thin {
            lines.push(match seam {
                Seam::Upright => say!(context, "off-thin-across"),
                Seam::Level => say!(context, "off-thin-down"),
            });
        }
        if over && !thin.is_empty() {
            lines.push(say!(context, "off-thin-stretched"));
        }
        if can_be_off(throw, piece) {
            found = ways_for_block(throw, piece, context.ruler);
        }
        let short = shortfalls(throw, piece);
        if !short.is_empty() && short.iter().all(|s| s.open == zero()) {
            // It may be sewn as it is: what would only move or remake it is not for now.
            let idle = |kind| {
                matches!(
                    kind,
                    RemedyKind::LapLess | RemedyKind::ToEdge(_) | RemedyKind::Another
                )
            };
            found.retain(|w| !idle(w.kind));
            let mut said = measuring::made_up(throw, piece, None, "short-open", context);
            said.push(say!(context, "short-settled"));
            settled = Some(context.words.list("sentences", said));
        } else {
            lines.extend(measuring::made_up(
                throw,
                piece,
                None,
                "short-left",
                context,
            ));
        }
    } else if piece.is_square() {
        match why {
            Some(why) if cut => {
                lines.push(context.say(&format!("off-{}", why.key()), &[]));
                found = ways(throw, piece, why);
            }
            // What happened to it is asked under a heading of its own.
            _ if cut => {}
            _ => lines.push(say!(context, "off-not-cut")),
        }
    }
    if throw.is_only_glued(piece) {
        found.extend(ways_for_glued(throw, piece));
    }
    let squares: Vec<PieceChoice> = piece
        .squares()
        .filter(|s| *s != piece && piece.count() <= 16 && throw.has(*s, Task::Cut))
        .map(|piece| PieceChoice {
            piece,
            label: names::piece(throw, piece, context),
        })
        .collect();
    if !squares.is_empty() {
        lines.push(say!(context, "off-which"));
    }
    let mishaps = Mishap::ALL
        .into_iter()
        .filter(|_| cut)
        // What is sewn in cannot be lost by itself.
        .filter(|why| *why != Mishap::Lost || throw.lies_loose(piece))
        .map(|why| MishapChoice {
            why,
            label: context.say(&format!("mishap-{}", why.key()), &[]),
        })
        .collect();
    let asked = (cut && why.is_some()) || block;
    Ok(OffView {
        head: head(journal, context),
        piece,
        title: names::piece(throw, piece, context),
        lines,
        picture,
        squares,
        mishaps,
        why,
        measure: block && throw.has(piece, Task::Stitch) && !throw.has(piece, Task::SquareUp),
        rest: settled.or_else(|| {
            let key = if over { "off-rest-trim" } else { "off-rest" };
            (asked && found.is_empty()).then(|| context.say(key, &[]))
        }),
        ways: found
            .iter()
            .map(|w| row(throw, piece, w, context))
            .collect(),
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

fn row(throw: &Throw, piece: Rect, way: &Remedy, context: Context<'_>) -> RemedyRow {
    let events = decide(Some(throw), &way.action).unwrap_or_default();
    let laps = marked(&events);
    let (title, done) = titles(throw, piece, way, laps.len(), context);
    let mut lines = Vec::new();
    // Seams that are opened once another square goes in.
    let mut later = Vec::new();
    if let RemedyKind::FewerAcross | RemedyKind::FewerDown = way.kind
        && let Command::ChangePlan { plan } = &way.action
        && let Some(freed) = freed(throw, piece, plan)
    {
        if freed != Freed::Itself {
            later = round(throw, piece);
            later.retain(|(whole, _)| !throw.is_only_glued(*whole));
        }
        lines.push(match freed {
            Freed::Itself => say!(context, "way-fewer-itself"),
            Freed::Squares(n) => say!(context, "way-fewer-squares", n = n),
            Freed::Cloth(n) => say!(context, "way-fewer-cloth", n = n),
        });
    }
    if let RemedyKind::FromPlace { from, again } = way.kind {
        let place = names::piece(throw, from, context);
        lines.push(say!(context, "way-from-place-open", place = place));
        lines.extend(cut_again(throw, from, again, context));
    }
    if let Command::Unpick { lap: Some(lap), .. } = &way.action {
        lines.push(say!(
            context,
            "way-new-lap",
            lap = context.length(*lap),
            joining = joined(throw.plan.joining)
        ));
    } else {
        for (a, b, lap) in &laps {
            let lap = context.length(*lap);
            let usual = context.length(throw.plan.lap_between());
            let name = |p: &Rect| names::piece(throw, *p, context);
            let other = match (*a == piece, *b == piece) {
                (true, _) => Some(b),
                (_, true) => Some(a),
                _ => None,
            };
            lines.push(match other {
                Some(other) => say!(
                    context,
                    "way-lap-at",
                    piece = name(other),
                    lap = lap,
                    usual = usual,
                    joining = joined(throw.plan.joining)
                ),
                None => say!(
                    context,
                    "way-lap-between",
                    a = name(a),
                    b = name(b),
                    lap = lap,
                    usual = usual,
                    joining = joined(throw.plan.joining)
                ),
            });
        }
    }
    let after = throw.after(&events);
    if way.kind == RemedyKind::LapLess {
        let short = shortfalls(&after, piece).into_iter();
        lines.extend(short.filter_map(|s| measuring::eased(throw, s.eased, false, context)));
    }
    let is_sewn = |event: &Event| match event {
        Event::Unpicked { glued, .. } => !glued,
        _ => false,
    };
    if way.seams > 0 && !events.iter().any(is_sewn) {
        lines.extend(opened(throw, piece, &events, context));
        lines.push(say!(context, "way-nothing-undone"));
    } else if way.seams > 0 {
        lines.push(say!(
            context,
            "way-unpick",
            n = way.seams,
            length = context.length(way.unpick)
        ));
        lines.extend(opened(throw, piece, &events, context));
    } else if !later.is_empty() {
        let length = later.iter().fold(zero(), |sum, (_, length)| sum + *length);
        lines.push(say!(
            context,
            "way-unpick-then",
            n = later.len(),
            length = context.length(length)
        ));
    } else if throw.is_joined(Rect::square(piece.row, piece.col)) || !piece.is_square() {
        lines.push(say!(context, "way-nothing-undone"));
    }
    if matches!(
        way.kind,
        RemedyKind::Spare(_) | RemedyKind::FromPlace { .. } | RemedyKind::Recut(_)
    ) {
        lines.extend(fabric_anew(throw, piece, context));
    }
    if let Command::Patch { print, .. } = &way.action
        && throw.is_joined(piece)
    {
        lines.push(match throw.lies_on_sewn(*print) {
            Some(side) => say!(context, "way-patch-laid-on", side = context.by(side, side)),
            None => say!(context, "way-patch-round"),
        });
    }
    if way.kind == RemedyKind::Another {
        lines.extend(taken_anew(throw, piece, context));
    }
    let anew = relabelled(throw, &events, context);
    lines.extend(anew.clone());
    let (now, then) = (throw.finished(), after.finished());
    if now != then {
        lines.push(say!(
            context,
            "way-size",
            size = context.by(then.width, then.height)
        ));
    }
    lines.extend(left_over(throw, &after, context));
    lines.push(say!(context, "way-minutes", n = way.minutes));
    RemedyRow {
        button: Button {
            label: title.clone(),
            action: way.action.clone(),
        },
        title,
        lines,
        done: context
            .words
            .list("sentences", std::iter::once(done).chain(anew)),
    }
}

/// How many squares another piece takes, and whether the pile and the spares give them.
fn taken_anew(throw: &Throw, piece: Rect, context: Context<'_>) -> Option<String> {
    let n = i64::from(piece.count());
    let over = account(throw).over().clamp(0, n);
    (!throw.pile.is_empty()).then(|| say!(context, "way-another-takes", n = n, lacking = n - over))
}

/// The fabric that is glued on a spoilt square and lost with it: the square put in its place takes
/// another, a sentence for each fabric.
fn fabric_anew(throw: &Throw, square: Rect, context: Context<'_>) -> Vec<String> {
    let glued = [Face::Front, Face::Back]
        .into_iter()
        .filter(|face| throw.has(square, cover_task(*face)));
    let mut of: Vec<u8> = glued
        .filter_map(|face| throw.cover(square).on(face))
        .collect();
    // The same on both faces takes two.
    let both = matches!(of[..], [front, back] if front == back);
    of.dedup();
    let told = of.into_iter().filter_map(|print| {
        let name = throw.prints.get(usize::from(print))?.name.as_str();
        let stock = stock::known(throw, print);
        let left = stock.map(|stock| stock.get().saturating_sub(stock::used(throw, print)));
        Some(match (left, both) {
            (None, false) => say!(context, "way-fabric-anew", print = name),
            (None, true) => say!(context, "way-fabric-anew-both", print = name),
            (Some(left), false) => say!(context, "way-fabric-anew-of", print = name, left = left),
            (Some(left), true) => {
                say!(
                    context,
                    "way-fabric-anew-both-of",
                    print = name,
                    left = left
                )
            }
        })
    });
    told.collect()
}

fn denim_name(throw: &Throw, denim: u8) -> &str {
    let denim = throw.denims.get(usize::from(denim));
    denim.map_or("", |d| d.name.as_str())
}

/// Where a square can be cut for a place that gives its own away.
fn cut_again(throw: &Throw, place: Rect, again: RecutFrom, context: Context<'_>) -> Option<String> {
    let own = denim_name(throw, throw.cover(place).denim);
    match again {
        RecutFrom::Unsaid => None,
        RecutFrom::MoreCloth => Some(say!(context, "way-from-place-more", own = own)),
        RecutFrom::Piece {
            denim: Some(denim), ..
        } => Some(say!(
            context,
            "way-from-place-other",
            own = own,
            denim = denim_name(throw, denim)
        )),
        RecutFrom::Piece { n, index, over, .. } => {
            let (name, part) = piece_of(throw, n, index, context);
            Some(say!(
                context,
                "way-from-place-piece",
                name = name,
                part = part,
                over = over
            ))
        }
    }
}

/// The name of a heap and of its piece.
fn piece_of(throw: &Throw, n: u16, index: u8, context: Context<'_>) -> (String, String) {
    let Some(heap) = throw.pile.get(&n) else {
        return Default::default();
    };
    let part = super::cutting::part(heap, usize::from(index), context);
    (heap.name().to_owned(), part)
}

/// Where the square comes from that is cut anew.
fn recut(throw: &Throw, from: RecutFrom, context: Context<'_>) -> String {
    match from {
        RecutFrom::Unsaid => say!(context, "way-recut"),
        RecutFrom::MoreCloth => say!(context, "way-recut-more"),
        RecutFrom::Piece {
            n,
            index,
            over,
            denim,
        } => {
            let (name, part) = piece_of(throw, n, index, context);
            match denim {
                Some(denim) => say!(
                    context,
                    "way-recut-other",
                    name = name,
                    part = part,
                    over = over,
                    denim = denim_name(throw, denim)
                ),
                None => say!(
                    context,
                    "way-recut-from",
                    name = name,
                    part = part,
                    over = over
                ),
            }
        }
    }
}

/// The name of a way, and the message once it is done.
fn titles(
    throw: &Throw,
    piece: Rect,
    way: &Remedy,
    laps: usize,
    context: Context<'_>,
) -> (String, String) {
    let face = |face| match face {
        Face::Front => "front",
        Face::Back => "back",
    };
    let name = |piece| names::piece(throw, piece, context);
    let here = name(piece);
    let plan = &throw.plan;
    let joining = joined(plan.joining);
    match way.kind {
        RemedyKind::Spare(other) => (
            match other {
                Some(denim) => say!(
                    context,
                    "way-spare-other",
                    denim = denim_name(throw, denim),
                    n = throw.spares_of(denim)
                ),
                None => say!(
                    context,
                    "way-spare",
                    n = throw.spares_for(throw.cover(piece).denim)
                ),
            },
            say!(context, "way-spare-done", piece = here),
        ),
        RemedyKind::FromPlace { from, .. } => (
            say!(context, "way-from-place", place = name(from)),
            say!(
                context,
                "way-from-place-done",
                piece = here,
                place = name(from)
            ),
        ),
        RemedyKind::Recut(from) => (
            recut(throw, from, context),
            say!(context, "way-recut-done", piece = here),
        ),
        RemedyKind::Patch(f) => (
            say!(context, "way-patch", face = face(f)),
            say!(context, "way-patch-done", piece = here, face = face(f)),
        ),
        RemedyKind::FewerAcross => (
            say!(context, "way-fewer-across", n = plan.across - 1),
            say!(context, "way-fewer-across-done", n = plan.across - 1),
        ),
        RemedyKind::FewerDown => (
            say!(context, "way-fewer-down", n = plan.down - 1),
            say!(context, "way-fewer-down-done", n = plan.down - 1),
        ),
        RemedyKind::LapLess => (
            say!(context, "way-lap-less", n = laps, joining = joining),
            say!(
                context,
                "way-lap-less-done",
                piece = here,
                n = laps,
                joining = joining
            ),
        ),
        RemedyKind::Resew => (
            say!(context, "way-resew", joining = joining),
            say!(context, "way-resew-done", piece = here, joining = joining),
        ),
        RemedyKind::ResewWider(lap) => (
            say!(
                context,
                "way-resew-wider",
                lap = context.length(lap),
                joining = joining
            ),
            say!(
                context,
                "way-resew-wider-done",
                piece = here,
                joining = joining,
                lap = context.length(lap)
            ),
        ),
        RemedyKind::Trim(size) => (
            say!(
                context,
                "way-trim",
                size = context.length(size),
                n = laps,
                joining = joining
            ),
            say!(
                context,
                "way-trim-done",
                joining = joining,
                size = context.length(size),
                n = laps
            ),
        ),
        RemedyKind::LapAgain(n) => {
            let lap = || context.length(throw.planned(piece).lap);
            let was = context.length(throw.made(piece).lap);
            match n {
                1 => (
                    say!(context, "way-lap-again", lap = lap()),
                    say!(context, "way-lap-again-done", piece = here, lap = lap()),
                ),
                _ => (
                    say!(context, "way-lap-again-all", n = n, was = was, lap = lap()),
                    say!(context, "way-lap-again-all-done", n = n, lap = lap()),
                ),
            }
        }
        RemedyKind::ToEdge(place) => (
            say!(context, "way-to-edge", place = name(place)),
            say!(
                context,
                "way-to-edge-done",
                piece = here,
                place = name(place)
            ),
        ),
        RemedyKind::Another => (
            say!(context, "way-another"),
            say!(context, "way-another-done", piece = here),
        ),
    }
}

/// Which seams are opened by what happens, a sentence each.
fn opened(throw: &Throw, piece: Rect, events: &[Event], context: Context<'_>) -> Vec<String> {
    let mut out = Vec::new();
    for (n, event) in events.iter().enumerate() {
        let Event::Unpicked {
            pieces,
            glued,
            block,
            ..
        } = event
        else {
            continue;
        };
        // A four that was turned is laid back before anything in it is opened.
        let laid = throw.after(&events[..n]);
        let spoilt = events[n..].iter().find_map(|e| match e {
            Event::Spoilt { piece, .. } => Some(*piece),
            _ => None,
        });
        let opening = SeamsToUnpick {
            joins: pieces.clone(),
            square: match block {
                Some(_) => None,
                None => spoilt.or(piece.is_square().then_some(piece)),
            },
            block: *block,
            glued: *glued,
        };
        out.extend(opening::lines(&laid, &opening, context));
    }
    out
}

/// So many new labels are told in one sentence.
const FEW_LABELS: usize = 8;

/// How the labels of squares that change places read afterwards, a sentence or a line for each row.
fn relabelled(throw: &Throw, events: &[Event], context: Context<'_>) -> Vec<String> {
    let mut rows: BTreeMap<u16, Vec<String>> = BTreeMap::new();
    for event in events {
        let moves = match event {
            Event::Moved { moves } => moves.clone(),
            Event::SquareMoved { from, to } => vec![(*from, *to)],
            _ => continue,
        };
        for (from, to) in &moves {
            let cut = from.squares().filter(|s| throw.has(*s, Task::Cut));
            for s in cut {
                let place = Rect {
                    row: s.row - from.row + to.row,
                    col: s.col - from.col + to.col,
                    ..s
                };
                rows.entry(s.row).or_default().push(say!(
                    context,
                    "relabel-one",
                    from = names::square(s),
                    to = names::square(place)
                ));
            }
        }
    }
    let list = |labels: Vec<String>| context.words.list("list-short", labels);
    match rows.values().map(Vec::len).sum::<usize>() {
        0 => Vec::new(),
        1..=FEW_LABELS => {
            let all = rows.into_values().flatten().collect();
            vec![say!(context, "relabel", list = list(all))]
        }
        n => {
            let first = say!(context, "relabel-many", n = n);
            let row =
                |(row, labels)| say!(context, "relabel-row", row = row + 1, list = list(labels));
            std::iter::once(first)
                .chain(rows.into_iter().map(row))
                .collect()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::journal::Journal;
    use crate::measure::{Count, Ruler};
    use crate::plan::assembly::Kind;
    use crate::words::Words;

    /// Two fours of a 4 by 2 throw change places: all eight labels in a sentence. With two more
    /// below them it is a line for each row.
    #[test]
    fn many_new_labels_are_told_row_by_row() {
        let words = Words::english();
        let context = Context {
            words: &words,
            ruler: Ruler::default(),
            now: 0,
        };
        let begin = crate::demo::begin("T", 4, 4);
        let mut journal = Journal::begin(&begin, 0).unwrap().0;
        let cut = Command::TickNext {
            task: Task::Cut,
            kind: Kind::Square,
            count: Count::at_most(16),
        };
        let entry = journal.propose(&cut, 1).unwrap();
        journal.accept(entry).unwrap();
        let four = |row, col| Rect::from([row, col, 2, 2]);
        let swap = |row| [(four(row, 0), four(row, 2)), (four(row, 2), four(row, 0))];
        let said = |moves: &[(Rect, Rect)]| {
            let moves = moves.to_vec();
            relabelled(journal.throw(), &[Event::Moved { moves }], context)
        };
        let few = said(&swap(0));
        assert_eq!(few.len(), 1, "{few:?}");
        assert!(
            few[0].starts_with("Chalk the new labels on: 1·1 is now 1·3, "),
            "{few:?}"
        );
        let many = said(&[swap(0), swap(2)].concat());
        assert_eq!(many[0], "Chalk new labels on 16 squares.");
        assert_eq!(
            many[3],
            "Row 3: 3·1 is now 3·3, 3·2 is now 3·4, 3·3 is now 3·1, 3·4 is now 3·2."
        );
        assert_eq!(many.len(), 5);
        assert_eq!(said(&[]), Vec::<String>::new());
    }
}
