//! Parts that several screens share.

use crate::cloth::fabric::Print;
use crate::command::Command;
use crate::fitting::reconcile::change;
use crate::log::journal::Journal;
use crate::measure::Length;
use crate::show::context::Context;
use crate::show::picture::Picture;
use crate::show::stages::{WayView, way};
use crate::show::{errors, events};
use crate::throw::tasks::Caution;
use crate::types::TS;
use crate::words::{Problem, Shown};
use serde::Serialize;

/// A named value.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Figure {
    /// What it is.
    pub label: String,
    /// The value.
    pub value: Shown,
}

/// One move of the hands, drawn.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Move {
    /// What is done, in a sentence.
    pub text: String,
    /// How it looks.
    pub picture: Picture,
}

/// A button and what it sends.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Button {
    /// Its words.
    pub label: String,
    /// What it asks for.
    pub action: Command,
}

/// Something wrong in one field.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct FieldProblem {
    /// The field of the draft.
    pub field: String,
    /// What is wrong.
    pub problem: Problem,
}

/// Something to choose, with its name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Choice<T> {
    /// What.
    pub value: T,
    /// In words.
    pub label: String,
}

/// What every screen of a throw carries.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Head {
    /// The throw's name.
    pub name: String,
    /// Put away.
    pub archived: bool,
    /// Number of the last entry.
    pub entry: u32,
    /// What undo would take back, in words.
    pub undo: Option<String>,
    /// What redo would do again, in words.
    pub redo: Option<String>,
    /// Steps done.
    pub done: u32,
    /// Steps in all.
    pub all: u32,
    /// The two as words.
    pub progress: String,
    /// Where in the work it is.
    pub way: WayView,
    /// When the next of what lies cooling is cool, in milliseconds since 1970; none where nothing
    /// cools.
    #[ts(type = "number | null")]
    pub cools_at: Option<i64>,
    /// Finished size as measured, or as now foreseen.
    pub size: Shown,
}

/// A fabric as listed and drawn.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Swatch {
    /// As it is in the throw.
    pub print: Print,
    /// One or two letters, so that colour is never the only sign.
    pub letters: String,
    /// How many are placed and how many there are, in words.
    pub count: String,
    /// So many of them are still to come from the pile.
    pub on_pile: u32,
}

/// A caution beside the work.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct CautionNote {
    /// Which.
    pub caution: Caution,
    /// In a few words.
    pub title: String,
    /// In full.
    pub text: String,
}

/// One figure before and after a change.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct CompareRow {
    /// What it is.
    pub label: String,
    /// Now.
    pub before: Shown,
    /// After the change.
    pub after: Shown,
    /// Whether they differ.
    pub differs: bool,
}

/// Squares of a fabric that went with what was spoilt or set aside, in words.
pub(super) fn gone_told(gone: crate::throw::stock::Gone, context: Context<'_>) -> Vec<String> {
    let mut out = Vec::new();
    if gone.spoilt > 0 {
        out.push(say!(context, "print-spoilt", n = gone.spoilt));
    }
    if gone.aside > 0 {
        out.push(say!(context, "print-aside", n = gone.aside));
    }
    out
}

/// The fabrics as listed and drawn.
pub(super) fn swatches(journal: &Journal, context: Context<'_>) -> Vec<Swatch> {
    let throw = journal.throw();
    let names = throw.letters();
    throw
        .prints
        .iter()
        .zip(names)
        .enumerate()
        .map(|(i, (print, letters))| {
            let to_come = crate::throw::stock::to_come(throw, i as u8);
            let stock = crate::throw::stock::known_with(throw, i as u8, to_come);
            let used = crate::throw::stock::used(throw, i as u8);
            let gone = crate::throw::stock::gone(throw, i as u8);
            let fits = |stock: &crate::measure::Count| u32::from(*stock) >= used && gone.all() == 0;
            let mut sentences = vec![match stock.filter(fits) {
                Some(stock) => say!(context, "print-of", used = used, stock = stock),
                None => say!(context, "print-used", used = used),
            }];
            sentences.extend(gone_told(gone, context));
            if let Some(stock) = stock.filter(|stock| !fits(stock)) {
                let left = i64::from(stock) - i64::from(used);
                sentences.push(match left {
                    0.. => say!(context, "print-left", n = left),
                    _ => say!(context, "print-short", n = -left),
                });
            }
            if print.mixed {
                sentences.push(say!(context, "print-mixed"));
            }
            if let Some(side) = print.patch {
                let round = context.length(throw.plan.round(side));
                sentences.push(say!(
                    context,
                    "print-patches",
                    side = context.length(side),
                    round = round
                ));
            }
            let count = context.words.list("list-short", sentences);
            Swatch {
                print: print.clone(),
                letters: letters.clone(),
                count,
                on_pile: to_come.get(),
            }
        })
        .collect()
}

/// What every screen of a throw carries.
pub fn head(journal: &Journal, context: Context<'_>) -> Head {
    let throw = journal.throw();
    let (done, all) = throw.progress();
    let measured = throw.measured_whole().map(|whole| whole.size);
    let size = measured.unwrap_or_else(|| throw.finished());
    Head {
        name: throw.name.clone(),
        archived: throw.archived,
        entry: journal.len() as u32,
        undo: journal.last().map(|e| events::entry(e, throw, context)),
        redo: journal.next().map(|e| events::entry(e, throw, context)),
        done: done as u32,
        all: all as u32,
        progress: say!(context, "progress", done = done, all = all),
        way: way(journal, context),
        cools_at: crate::command::next_cool(throw, context.now),
        size: context.by(size.width, size.height),
    }
}

/// A typed length, in nanometres, as an action takes it.
///
/// # Errors
/// The [`Problem`] with what was typed.
pub fn length(typed: &str, context: Context<'_>) -> Result<i64, Problem> {
    let parsed = context.parse(typed);
    parsed
        .map(crate::measure::in_nm)
        .map_err(|error| errors::typed(&error, context))
}

/// A change of size in per cent, with its sign.
pub(super) fn percent(before: Length, after: Length, context: Context<'_>) -> String {
    match change(before, after) {
        Some(p) => {
            let sign = if p < 0.0 { "\u{2212}" } else { "+" };
            format!("{sign}{}", context.words.decimal(p.abs(), 1))
        }
        None => String::new(),
    }
}
