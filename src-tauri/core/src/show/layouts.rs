//! Wishes for the faces, layouts to choose from, the floor, and the covering list.

use crate::cloth::fabric::{Cover, Denim, Face};
use crate::command::Command;
use crate::faces::arrange::Arranger;
use crate::log::journal::Journal;
use crate::show::context::Context;
use crate::show::parts::{Swatch, swatches};
use crate::show::wishes::{WishLine, lines};
use crate::throw::wishes::{Layout, Wishes};
use serde::Serialize;
use ts_rs::TS;

/// A layout found, to be chosen.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct LayoutCard {
    /// Which of the several.
    pub letter: String,
    /// For each square, row by row as seen from the front: the print there, or -1.
    pub front: Vec<i16>,
    /// The same of the back as it looks turned over: each row from the other end.
    pub back: Vec<i16>,
    /// The denims on the front, row by row; the back shows them from the other end.
    pub denims: Vec<u8>,
    /// Places in `front` that show another cloth than they do now.
    pub front_new: Vec<u32>,
    /// The same of `back`.
    pub back_new: Vec<u32>,
    /// How well it meets the wishes.
    pub lines: Vec<WishLine>,
    /// How many of the wishes it meets, in words.
    pub met: String,
    /// What changes if it is taken.
    pub changes: String,
    /// The layout in words.
    pub spoken: String,
    /// Takes it.
    pub action: Command,
}

/// How far the search for layouts is.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Layouts {
    /// Still at it.
    pub running: bool,
    /// Rounds done, of all there will be.
    pub rounds: u32,
    /// Rounds there will be.
    pub most: u32,
    /// How far it is, in words.
    pub said: String,
    /// Squares across.
    pub across: u16,
    /// Squares down.
    pub down: u16,
    /// The fabrics.
    pub prints: Vec<Swatch>,
    /// The denims.
    pub denims: Vec<Denim>,
    /// The layouts so far.
    pub cards: Vec<LayoutCard>,
}

/// Layouts found so far, as cards to choose from.
pub fn layouts(
    journal: &Journal,
    wishes: Wishes,
    found: &[Arranger],
    (running, most): (bool, u32),
    context: Context<'_>,
) -> Layouts {
    let throw = journal.throw();
    let rounds = found.iter().map(Arranger::rounds).min().unwrap_or(0);
    let across = usize::from(throw.plan.across);
    let cards = found
        .iter()
        .zip('A'..)
        .map(|(arranger, letter)| {
            let covers = arranger.covers();
            let number = |p: Option<u8>| p.map_or(-1, i16::from);
            let back = covers.chunks(across).flat_map(|row| row.iter().rev());
            let (layout, changed) = arranger.laid(throw);
            let lines = lines(&arranger.score(), wishes, throw, context);
            let changes = changes(&layout, changed, context);
            let met = lines.iter().filter(|l| l.met).count();
            let now = throw.covers();
            let new = |n: &usize, face| {
                let shown = |c: &Cover| (c.on(face), c.denim, c.wrong_side_up, c.crosswise);
                now.get(*n).is_none_or(|c| shown(c) != shown(&covers[*n]))
            };
            let places = || 0..covers.len();
            let turned = |n: usize| n / across * across + across - 1 - n % across;
            let front_new = places().filter(|n| new(n, Face::Front));
            let back_new = places().filter(|n| new(&turned(*n), Face::Back));
            let told = say!(context, "layout-met", met = met, all = lines.len());
            LayoutCard {
                front_new: front_new.map(|n| n as u32).collect(),
                back_new: back_new.map(|n| n as u32).collect(),
                letter: letter.to_string(),
                front: covers.iter().map(|c| number(c.front)).collect(),
                back: back.map(|c| number(c.back)).collect(),
                denims: covers.iter().map(|c| c.denim).collect(),
                spoken: say!(
                    context,
                    "layout-spoken",
                    letter = letter.to_string(),
                    met = told.as_str(),
                    changes = changes.as_str()
                ),
                lines,
                met: told,
                changes,
                action: Command::LayOut { wishes, layout },
            }
        })
        .collect();
    Layouts {
        running,
        rounds,
        most,
        said: match running {
            true => say!(context, "layouts-running", n = rounds, all = most),
            false => say!(context, "layouts-done", n = found.len()),
        },
        across: throw.plan.across,
        down: throw.plan.down,
        prints: swatches(journal, context),
        denims: throw.denims.clone(),
        cards,
    }
}

/// What changes with a layout, in a sentence.
fn changes(layout: &Layout, changed: usize, context: Context<'_>) -> String {
    let sewn = layout
        .moves
        .iter()
        .filter(|(from, _)| !from.is_square())
        .count();
    let turned = layout.turns.iter().filter(|(p, _)| !p.is_square()).count();
    say!(
        context,
        "layout-changes",
        n = changed,
        sewn = sewn,
        turned = turned
    )
}
