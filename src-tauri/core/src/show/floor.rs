//! Squares laid on the floor, and what is glued where.

use crate::cloth::fabric::{Cover, Face};
use crate::log::journal::Journal;
use crate::plan::assembly::{Kind, Rect};
use crate::show::context::Context;
use crate::show::drawing::face_window::{self, FLOOR_WIDTH};
use crate::show::faces;
use crate::show::names;
use crate::show::parts::{Head, Swatch, head, swatches};
use crate::show::picture::Picture;
use crate::throw::Throw;
use crate::throw::loose::loose_units;
use crate::throw::tasks::{Task, cover_task};
use crate::types::TS;
use serde::Serialize;

/// One square laid on the floor.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct FloorCell {
    /// Its place.
    pub piece: Rect,
    /// Its label.
    pub label: String,
    /// The square in words.
    pub spoken: String,
}

/// Some squares of one row of blocks, as they lie on the floor, front up.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct FloorView {
    /// Common to all screens.
    pub head: Head,
    /// Which part, in words.
    pub title: String,
    /// What to do.
    pub text: String,
    /// How the squares lie, a square to a unit.
    pub picture: Picture,
    /// The squares.
    pub cells: Vec<FloorCell>,
    /// Which part this is, from 0.
    pub part: u32,
    /// Parts there are.
    pub parts: u32,
}

/// Squares that get one fabric on one face.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct CoveringGroup {
    /// The fabric; none for bare denim.
    pub print: Option<u8>,
    /// `Rosehip on the front`.
    pub title: String,
    /// How many, and how many of them are glued.
    pub count: String,
    /// The labels of those still to be glued.
    pub open: Vec<String>,
    /// The labels of those that are done.
    pub done: Vec<String>,
}

/// One line of a list by label.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct CoveringLine {
    /// The label.
    pub label: String,
    /// What it is.
    pub text: String,
}

/// What is glued on which square, and what is joined to what, by label.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct CoveringView {
    /// Common to all screens.
    pub head: Head,
    /// How to label the real squares.
    pub labelling: Vec<String>,
    /// By fabric and face.
    pub groups: Vec<CoveringGroup>,
    /// The fabrics.
    pub prints: Vec<Swatch>,
    /// Square by square.
    pub squares: Vec<CoveringLine>,
    /// Pairs and fours by label, with their squares.
    pub pieces: Vec<CoveringLine>,
}

/// A part of the floor: two rows of squares, some across, front up.
pub(super) fn floor(journal: &Journal, part: u32, context: Context<'_>) -> FloorView {
    let throw = journal.throw();
    let (across, down) = (throw.plan.across, throw.plan.down);
    let wide = u32::from(across.div_ceil(FLOOR_WIDTH));
    let parts = wide * u32::from(down.div_ceil(2));
    let part = part.min(parts.saturating_sub(1));
    let (row, col) = ((part / wide) as u16 * 2, (part % wide) as u16 * FLOOR_WIDTH);
    let area = Rect {
        row,
        col,
        rows: (down - row).min(2),
        cols: (across - col).min(FLOOR_WIDTH),
    };
    let units = loose_units(throw);
    let cells = area
        .squares()
        .map(|piece| {
            let cover = throw.cover(piece);
            let sewn = units
                .iter()
                .find(|u| u.holds(piece))
                .map(|u| names::piece(throw, *u, context))
                .or_else(|| {
                    throw
                        .is_joined(piece)
                        .then(|| say!(context, "floor-joined"))
                });
            let up = lying(throw, cover, Face::Front, context);
            let under = match (cover.front, cover.back, cover.wrong_side_up) {
                (None, None, false) => say!(context, "floor-its-wrong-side"),
                (None, None, true) => say!(context, "floor-its-right-side"),
                _ => lying(throw, cover, Face::Back, context),
            };
            let mut spoken = say!(
                context,
                "floor-cell",
                piece = names::spoken(throw, piece, context),
                up = up,
                under = under,
                grain = if cover.crosswise { "across" } else { "up" }
            );
            if let Some(sewn) = &sewn {
                spoken = say!(
                    context,
                    "floor-cell-sewn",
                    cell = spoken,
                    sewn = sewn.as_str()
                );
            }
            FloorCell {
                piece,
                label: names::square(piece),
                spoken,
            }
        })
        .collect();
    FloorView {
        head: head(journal, context),
        title: say!(
            context,
            "floor-title",
            first = names::square(Rect::square(row, col)),
            last = names::square(Rect::square(row + area.rows - 1, col + area.cols - 1)),
            row = names::row_of_fours(usize::from(row / 2)),
            of = names::row_is_of(throw, usize::from(row / 2))
        ),
        text: say!(context, "floor-text"),
        picture: face_window::floor(throw, area, context),
        cells,
        part,
        parts,
    }
}

/// What lies on a face of a square: its fabric, or its denim by name.
fn lying(throw: &Throw, cover: Cover, face: Face, context: Context<'_>) -> String {
    let denim = throw.denims.get(usize::from(cover.denim));
    match denim.filter(|d| cover.on(face).is_none() && !d.name.is_empty()) {
        Some(denim) if cover.wrong_side_up != (face == Face::Back) => {
            say!(context, "floor-wrong-side", denim = denim.name.as_str())
        }
        Some(denim) => denim.name.clone(),
        None => faces::cloth(throw, cover, face, context),
    }
}

/// What is glued where, by label.
pub(super) fn covering(journal: &Journal, context: Context<'_>) -> CoveringView {
    let throw = journal.throw();
    let squares: Vec<Rect> = throw.assembly().whole().squares().collect();
    let letters = throw.letters();
    let mut groups = Vec::new();
    for face in Face::BOTH {
        for (n, print) in throw.prints.iter().enumerate() {
            let on: Vec<Rect> = squares
                .iter()
                .copied()
                .filter(|s| throw.cover(*s).on(face) == Some(n as u8))
                .collect();
            if on.is_empty() {
                continue;
            }
            let (done, open): (Vec<Rect>, Vec<Rect>) =
                on.iter().partition(|s| throw.has(**s, cover_task(face)));
            let key = match face {
                Face::Front => "covering-front",
                Face::Back => "covering-back",
            };
            let label = |list: Vec<Rect>| {
                let named = list.into_iter().map(|square| {
                    let name = names::square(square);
                    match throw.patch_on(square, face) {
                        Some(side) => say!(
                            context,
                            "covering-patch",
                            square = name,
                            side = context.length(side)
                        ),
                        None => name,
                    }
                });
                named.collect()
            };
            groups.push(CoveringGroup {
                print: Some(n as u8),
                title: context.say(key, &[("print", print.name.clone().into())]),
                count: {
                    let count = say!(context, "covering-count", n = on.len(), done = done.len());
                    let mixed = print.mixed.then(|| say!(context, "print-mixed"));
                    let both: Vec<String> = [count].into_iter().chain(mixed).collect();
                    context.words.list("list-short", both)
                },
                open: label(open),
                done: label(done),
            });
        }
    }
    let lines = squares
        .iter()
        .filter(|s| throw.cover(**s).layers() > 1)
        .map(|s| {
            let cover = throw.cover(*s);
            let name = |p: Option<u8>| {
                p.and_then(|p| {
                    letters
                        .get(usize::from(p))
                        .zip(throw.prints.get(usize::from(p)))
                })
                .map_or_else(
                    || say!(context, "bare"),
                    |(letters, print)| format!("{letters} {}", print.name),
                )
            };
            CoveringLine {
                label: names::square(*s),
                text: say!(
                    context,
                    "covering-square",
                    front = name(cover.front),
                    back = name(cover.back)
                ),
            }
        })
        .collect();
    let assembly = throw.assembly();
    let pieces = assembly
        .joins()
        .iter()
        .filter(|j| matches!(throw.kind(j.whole), Kind::Pair | Kind::Four))
        .map(|j| {
            let list: Vec<String> = j.whole.squares().map(names::square).collect();
            let squares = context.words.list("list-short", list);
            let key = match throw.has(j.whole, Task::Stitch) {
                true => "covering-piece-sewn",
                false => "covering-piece",
            };
            CoveringLine {
                label: names::piece(throw, j.whole, context),
                text: context.say(key, &[("squares", squares.into())]),
            }
        })
        .collect();
    CoveringView {
        head: head(journal, context),
        labelling: (1..=3)
            .map(|n| context.say(&format!("labelling-{n}"), &[]))
            .collect(),
        groups,
        prints: swatches(journal, context),
        squares: lines,
        pieces,
    }
}
