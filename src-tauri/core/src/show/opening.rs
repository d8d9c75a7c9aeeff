//! Seams to be opened before work goes on: which, how far, and drawn.

use crate::measure::Length;
use crate::plan::assembly::{Join, Rect, Seam};
use crate::show::context::Context;
use crate::show::picture::Picture;
use crate::show::{names, pictures};
use crate::throw::tasks::Task;
use crate::throw::{SeamsToUnpick, Throw};
use crate::types::TS;
use serde::Serialize;
use std::cmp::Reverse;

/// Seams to be opened before the current step.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct OpenFirst {
    /// How many, and for what.
    pub title: String,
    /// Which and how much of each, a sentence each.
    pub lines: Vec<String>,
    /// Where they lie.
    pub picture: Picture,
}

/// Which seams, and how much of each: a sentence for every one.
pub(super) fn lines(throw: &Throw, opening: &SeamsToUnpick, context: Context<'_>) -> Vec<String> {
    let (whole_of, round) = seams(throw, opening);
    let name = |piece| names::piece(throw, piece, context);
    let said = |key: &str, (join, length): &(Join, Length), along: Rect| {
        context.say(
            key,
            &[
                ("a", name(join.first).into()),
                ("b", name(join.second).into()),
                ("length", context.length(*length).into()),
                ("along", name(along).into()),
            ],
        )
    };
    if opening.glued {
        // The same is done to each.
        let laps = opening.joins.iter().map(|(whole, _)| name(*whole));
        let laps = context.words.list("list-long", laps.collect::<Vec<_>>());
        return vec![say!(
            context,
            "opening-lift",
            n = opening.joins.len(),
            laps = laps
        )];
    }
    let centre = centre(opening);
    let whole_of = whole_of.iter().map(|s| ("opening-all", s));
    let round = round.iter().map(|s| ("opening-part", s));
    let mut seams: Vec<_> = whole_of.chain(round).collect();
    // What was sewn last crosses the ends of what was sewn before it, so it is opened first.
    seams.sort_by_key(|(_, (join, _))| Reverse(join.whole.count()));
    let seams = seams.into_iter();
    let seams = seams.map(|(key, s)| said(key, s, centre));
    let binding =
        binding_over(throw, centre).then(|| say!(context, "opening-binding", along = name(centre)));
    binding.into_iter().chain(seams).collect()
}

/// Whether the binding lies, or lay until it was opened, over an edge of a piece.
fn binding_over(throw: &Throw, piece: Rect) -> bool {
    let whole = throw.assembly().whole();
    let unbound = throw.work(whole).is_some_and(|work| work.unbound);
    (unbound || throw.has(whole, Task::GlueBinding)) && throw.assembly().is_at_edge(piece)
}

type OpenedSeams = Vec<(Join, Length)>;

/// The joins opened all along, and those opened beside a piece only.
fn seams(throw: &Throw, opening: &SeamsToUnpick) -> (OpenedSeams, OpenedSeams) {
    opening
        .joins
        .iter()
        .filter_map(|(whole, length)| Some((*throw.assembly().join(*whole)?, *length)))
        .partition(|(join, length)| throw.opens_all(join, *length))
}

/// What the seams are opened round.
fn centre(opening: &SeamsToUnpick) -> Rect {
    opening.centre().unwrap_or_else(|| Rect::square(0, 0))
}

/// What is to be opened before this piece is worked on, with a drawing.
pub(super) fn first(throw: &Throw, piece: Rect, context: Context<'_>) -> Option<OpenFirst> {
    let all = throw.to_open(piece);
    let opening = *all.last()?;
    let n: usize = all.iter().map(|opening| opening.joins.len()).sum();
    let held = if opening.glued { "glued" } else { "sewn" };
    let title = match opening.square {
        Some(square) => {
            let at = names::piece(throw, square, context);
            say!(context, format!("opening-square-{held}"), n = n, piece = at)
        }
        None => say!(context, format!("opening-lap-{held}"), n = n),
    };
    let lines: Vec<String> = all
        .iter()
        .flat_map(|opening| lines(throw, opening, context))
        .collect();
    let (whole_of, round) = seams(throw, opening);
    // Of laps lifted together the first is drawn, as the card is of it.
    let drawn = match opening.glued && opening.square.is_none() {
        true => 1,
        false => whole_of.len(),
    };
    let cuts: Vec<Rect> = whole_of
        .iter()
        .take(drawn)
        .map(|(join, _)| along(join, join.whole))
        .chain(round.iter().map(|(j, _)| along(j, centre(opening))))
        .chain(all.iter().filter(|o| o.block.is_some()).flat_map(|o| {
            let (whole_of, round) = seams(throw, o);
            let all_of = whole_of.into_iter().chain(round);
            all_of.map(|(join, _)| along(&join, centre(o)))
        }))
        .collect();
    let spoken = context.words.list("sentences", lines.clone());
    Some(OpenFirst {
        title,
        picture: pictures::opened(throw, centre(opening), opening.square, &cuts, spoken),
        lines,
    })
}

/// A seam as a line of places beside `piece`: no width across it.
fn along(join: &Join, piece: Rect) -> Rect {
    match join.seam {
        Seam::Upright => Rect {
            row: piece.row,
            rows: piece.rows,
            col: join.second.col,
            cols: 0,
        },
        Seam::Level => Rect {
            col: piece.col,
            cols: piece.cols,
            row: join.second.row,
            rows: 0,
        },
    }
}
