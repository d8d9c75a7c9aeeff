//! Layouts of the faces to choose from.

use crate::cloth::fabric::{Cover, Face};
use crate::command::Command;
use crate::faces::arrange::Arranger;
use crate::log::journal::Journal;
use crate::show::context::Context;
use crate::show::drawing::face_window::layout as layout_picture;
use crate::show::parts::{Swatch, swatches};
use crate::show::picture::Picture;
use crate::show::wishes::{WishLine, lines};
use crate::throw::Throw;
use crate::throw::wishes::{Layout, Wishes};
use crate::types::TS;
use serde::Serialize;
use std::collections::BTreeSet;

/// A layout found, to be chosen.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct LayoutCard {
    /// Which of the several.
    pub letter: String,
    /// The front, with rings round what would change.
    pub front: Picture,
    /// The back as it looks turned over, likewise.
    pub back: Picture,
    /// Something would change.
    pub changed: bool,
    /// The prints it uses, counted from 0.
    pub used: Vec<u8>,
    /// How many squares it has of each denim, where there are several, in words.
    pub denims: Option<String>,
    /// How well it meets the wishes.
    pub lines: Vec<WishLine>,
    /// How many of the wishes it meets, in words.
    pub met: String,
    /// It meets all of them.
    pub meets_all: bool,
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
    /// The fabrics.
    pub prints: Vec<Swatch>,
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
    let cards = found
        .iter()
        .zip('A'..)
        .map(|(arranger, letter)| {
            let covers = arranger.covers();
            let (layout, changed) = arranger.laid(throw);
            let lines = lines(&arranger.score(), wishes, throw, context);
            let changes = changes(throw, &layout, &covers, changed, context);
            let wished = lines.iter().filter(|l| l.met.is_some()).count();
            let met = lines.iter().filter(|l| l.met == Some(true)).count();
            let differs = |face: Face| {
                let shown = move |c: &Cover| (c.on(face), c.denim, c.wrong_side_up, c.crosswise);
                move |was: &Cover, is: &Cover| shown(was) != shown(is)
            };
            let picture =
                |face, spoken| layout_picture(throw, &covers, face, differs(face), spoken);
            let changed_now = |face| {
                let both = throw.covers().iter().zip(&covers);
                let differs = differs(face);
                both.into_iter().any(move |(was, is)| differs(was, is))
            };
            let used: BTreeSet<u8> = Face::BOTH
                .into_iter()
                .flat_map(|face| covers.iter().filter_map(move |c| c.on(face)))
                .collect();
            let wishes_met = say!(context, "layout-met", met = met, all = wished);
            LayoutCard {
                letter: letter.to_string(),
                front: picture(Face::Front, say!(context, "face-front")),
                back: picture(Face::Back, say!(context, "face-back")),
                changed: Face::BOTH.into_iter().any(changed_now),
                used: used.into_iter().collect(),
                denims: of_each_denim(throw, &covers, context),
                spoken: say!(
                    context,
                    "layout-spoken",
                    letter = letter.to_string(),
                    met = wishes_met.as_str(),
                    changes = changes.as_str()
                ),
                lines,
                met: wishes_met,
                meets_all: met == wished,
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
        prints: swatches(journal, context),
        cards,
    }
}

/// How many squares there are of each denim.
fn of_each_denim(throw: &Throw, covers: &[Cover], context: Context<'_>) -> Option<String> {
    if throw.denims.len() < 2 {
        return None;
    }
    let of = |d: usize| covers.iter().filter(|c| usize::from(c.denim) == d).count();
    let each = throw.denims.iter().enumerate().filter(|(d, _)| of(*d) > 0);
    let list = each.map(|(d, denim)| {
        say!(
            context,
            "wishes-pile-of",
            n = of(d),
            denim = denim.name.as_str()
        )
    });
    Some(context.words.list("list-and", list.collect::<Vec<_>>()))
}

/// What changes with a layout, in a sentence or two.
fn changes(
    throw: &Throw,
    layout: &Layout,
    covers: &[Cover],
    changed: usize,
    context: Context<'_>,
) -> String {
    let sewn = layout
        .moves
        .iter()
        .filter(|(from, _)| !from.is_square())
        .count();
    let turned = layout.turns.iter().filter(|(p, _)| !p.is_square()).count();
    let mut squares = throw.assembly().whole().squares();
    let said = say!(
        context,
        "layout-changes",
        n = changed,
        sewn = sewn,
        turned = turned,
        joined = i64::from(squares.any(|square| throw.is_joined(square)))
    );
    // Squares to be cut from another denim; what is cut only changes places.
    let open = throw.uncut(None).filter_map(|square| {
        let at = usize::from(square.row) * usize::from(throw.plan.across) + usize::from(square.col);
        Some((throw.cover(square).denim, covers.get(at)?.denim))
    });
    match open.filter(|(was, is)| was != is).count() {
        0 => said.trim_end().to_string(),
        n => format!(
            "{} {}",
            said.trim_end(),
            say!(context, "layout-denims", n = n)
        ),
    }
}
