//! Where in the work a throw is: its stages, how far each is, and how long each still takes.
//!
//! Every screen of a throw, the shelf and the making sheet show the same [`WayView`]. It depends on
//! the throw and the maker's pace alone, not on which step is in hand.

use crate::log::journal::Journal;
use crate::log::pace::{Pace, minutes_for, paces};
use crate::show::context::Context;
use crate::throw::Throw;
use crate::throw::stage::{Reached, Stage, stage_now, stages};
use crate::throw::tasks::Task;
use crate::types::TS;
use serde::Serialize;
use std::collections::BTreeMap;

/// Whether a stage lies behind, is the present one, or is to come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum StageIs {
    /// Nothing of it is left.
    Through,
    /// The throw is at it.
    Now,
    /// Some of it is done, or none, and an earlier one is not through.
    Ahead,
}

/// One stage.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct StageRow {
    /// Which.
    pub stage: Stage,
    /// Its name.
    pub label: String,
    /// Whether it is through, now or ahead.
    pub is: StageIs,
    /// The same in a word.
    pub state: String,
    /// Steps done.
    pub done: u32,
    /// Its steps.
    pub all: u32,
    /// How many pieces are through, in words.
    pub count: String,
    /// How long it still takes, in words; none where nothing is left or it takes no time of hers.
    pub left: Option<String>,
}

/// The way through the work.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct WayView {
    /// The stages the throw goes through, in order.
    pub rows: Vec<StageRow>,
    /// The stage the throw is at and how far within it, in a few words.
    pub said: String,
    /// Which stage of how many, for those who cannot see the row of them.
    pub place: String,
    /// How long all that is left takes.
    pub left: String,
    /// The same where there is little room.
    pub left_short: String,
}

/// Quarters of an hour, as they are said of a stage: by the hour where it takes long, since nobody
/// knows it better.
fn quarters(minutes: f64) -> i64 {
    let quarters = ((minutes / 15.0).round() as i64).max(i64::from(minutes > 0.0));
    match quarters {
        12.. => (quarters + 2) / 4 * 4,
        _ => quarters,
    }
}

/// A time in a few words: the middle alone, without its range; none where it takes none.
fn about(quarters: i64, context: Context<'_>) -> Option<String> {
    (quarters > 0).then(|| {
        let time = say!(context, "hours", h = quarters / 4, m = quarters % 4 * 15);
        say!(context, "path-left", time = time)
    })
}

/// The same where there is little room: `6¼ h`.
fn about_shortly(quarters: i64, context: Context<'_>) -> Option<String> {
    let part = ["", "¼", "½", "¾"][(quarters % 4) as usize];
    let time = match quarters {
        ..1 => return None,
        1..4 => say!(context, "hours", h = 0, m = quarters * 15),
        _ => say!(
            context,
            "hours-shortly",
            time = format!("{}{part}", quarters / 4)
        ),
    };
    Some(say!(context, "path-left-shortly", time = time))
}

/// All work left.
pub(super) struct TimeLeft {
    /// In quarters of an hour, as it is told in the first place.
    pub(super) middle: i64,
    /// In words: the middle, with its range.
    pub(super) told: String,
}

/// All work left. Each figure is what is said of the stages, added up.
pub(super) fn time_left(
    throw: &Throw,
    paces: &BTreeMap<Task, Pace>,
    context: Context<'_>,
) -> TimeLeft {
    let paced: Vec<Pace> = stages(throw)
        .values()
        .map(|reached| minutes_for(&reached.left, paces))
        .collect();
    let sum =
        |which: fn(&Pace) -> f64| -> i64 { paced.iter().map(|pace| quarters(which(pace))).sum() };
    let words = |quarters: i64| say!(context, "hours", h = quarters / 4, m = quarters % 4 * 15);
    let middle = sum(|pace| pace.middle);
    if paced.iter().all(|pace| pace.high <= 0.0) {
        let told = say!(context, "none");
        return TimeLeft { middle, told };
    }
    let key = match paced.iter().any(|pace| pace.own) {
        true => "time-own",
        false => "time-usual",
    };
    let told = say!(
        context,
        key,
        middle = words(middle),
        low = words(sum(|pace| pace.low)),
        high = words(sum(|pace| pace.high))
    );
    TimeLeft { middle, told }
}

fn count(stage: Stage, reached: &Reached, context: Context<'_>) -> String {
    let of = |done: u32, all: u32| say!(context, "path-count", done = done, all = all);
    match stage {
        Stage::Pile => say!(context, "path-pile", n = reached.pieces),
        // These are steps of one piece.
        Stage::Bound | Stage::Washed => {
            say!(
                context,
                "path-steps",
                done = reached.done,
                all = reached.steps
            )
        }
        _ => of(reached.through, reached.pieces),
    }
}

/// The way through the work.
pub(super) fn way(journal: &Journal, context: Context<'_>) -> WayView {
    let now_cool = journal.throw_at(context.now);
    let throw = &*now_cool;
    let paces = paces(journal);
    let found = stages(throw);
    let now = stage_now(&found);
    let label = |stage: Stage| context.say(&format!("path-stage-{}", stage.key()), &[]);
    let time = |left: &BTreeMap<_, _>| quarters(minutes_for(left, &paces).middle);
    let rows: Vec<StageRow> = found
        .iter()
        .map(|(stage, reached)| {
            let is = match reached.is_through() {
                true => StageIs::Through,
                false if Some(*stage) == now => StageIs::Now,
                false => StageIs::Ahead,
            };
            let state = match is {
                StageIs::Through => say!(context, "path-through"),
                StageIs::Now => say!(context, "path-now"),
                StageIs::Ahead if reached.done > 0 => say!(context, "path-begun"),
                StageIs::Ahead => say!(context, "path-ahead"),
            };
            StageRow {
                stage: *stage,
                label: label(*stage),
                is,
                state,
                done: reached.done,
                all: reached.steps,
                count: count(*stage, reached, context),
                left: about(time(&reached.left), context),
            }
        })
        .collect();
    let at = rows.iter().position(|row| row.is == StageIs::Now);
    let (said, place) = match at {
        Some(n) => (
            say!(
                context,
                "path-said",
                stage = rows[n].label.as_str(),
                count = rows[n].count.as_str()
            ),
            say!(context, "path-place", n = n + 1, all = rows.len()),
        ),
        None => (
            say!(context, "path-finished"),
            say!(context, "path-finished"),
        ),
    };
    // What is said of all is what is said of the stages, added up.
    let all_left = found.values().map(|r| time(&r.left)).sum();
    WayView {
        rows,
        said,
        place,
        left: about(all_left, context).unwrap_or_default(),
        left_short: about_shortly(all_left, context).unwrap_or_default(),
    }
}

impl WayView {
    /// All of it in one line, as it goes on paper.
    pub(super) fn in_a_line(&self, context: Context<'_>) -> String {
        let (place, said, left) = (self.place.as_str(), self.said.as_str(), self.left.as_str());
        match left.is_empty() {
            true => said.to_string(),
            false => say!(
                context,
                "path-sheet",
                place = place,
                said = said,
                left = left
            ),
        }
    }
}
