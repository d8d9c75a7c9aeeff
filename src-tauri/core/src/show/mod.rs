//! From a throw to what the window shows.

use crate::deed::Refusal;
use crate::journal::{Damage, Journal};
use crate::measure::Ruler;
use crate::plan::Plan;
use crate::throw::{Throw, Time};
use crate::view::{GridWish, GridsView, Head, Look, PlanDraft, PlanView, Problem, ShelfRow, View};
use crate::words::Words;

/// What a view is made with: the words, the ruler, and the time.
#[derive(Clone, Copy)]
pub struct Lens<'a> {
    /// The language.
    pub words: &'a Words,
    /// The ruler.
    pub ruler: Ruler,
    /// Now.
    pub now: Time,
}

/// What the window asked to see of a throw.
///
/// # Errors
/// A [`Problem`] when there is no such piece.
pub fn look(_journal: &Journal, _look: &Look, _lens: Lens<'_>) -> Result<View, Problem> {
    todo!()
}

/// What every screen of a throw carries.
pub fn head(_journal: &Journal, _lens: Lens<'_>) -> Head {
    todo!()
}

/// A throw on the shelf.
pub fn shelf_row(_id: &str, _journal: &Journal, _lens: Lens<'_>) -> ShelfRow {
    todo!()
}

/// The draft of a plan for a throw not yet begun.
pub fn draft(_draft: &PlanDraft, _lens: Lens<'_>) -> PlanView {
    todo!()
}

/// A plan as typed fields.
pub fn draft_of(_plan: &Plan, _lens: Lens<'_>) -> PlanDraft {
    todo!()
}

/// Grids near a wish.
pub fn grids(_draft: &PlanDraft, _wish: &GridWish, _lens: Lens<'_>) -> GridsView {
    todo!()
}

/// A refusal in words; `throw` is what it was about.
pub fn refusal(_refusal: &Refusal, _throw: Option<&Throw>, _lens: Lens<'_>) -> Problem {
    todo!()
}

/// Damage to a throw file in words.
pub fn damage(_damage: &Damage, _lens: Lens<'_>) -> Problem {
    todo!()
}

/// The figures of a throw as JSON, for programs.
pub fn figures(_journal: &Journal, _lens: Lens<'_>) -> serde_json::Value {
    todo!()
}
