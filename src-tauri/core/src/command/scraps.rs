//! Test scraps, and the machine's plate.

use crate::command::action::LONGEST_NOTE;
use crate::command::plan::change_plan;
use crate::command::rejection::Rejection;
use crate::measure::{Length, zero};
use crate::plan::scraps::Scrap;
use crate::plan::{Plan, longest_side};
use crate::throw::event::Event;
use crate::throw::state::Throw;

/// Most scraps that are kept.
const MOST_SCRAPS: usize = 200;

/// Keep what came of a test scrap.
pub(super) fn try_scrap(throw: &Throw, scrap: &Scrap) -> Result<Vec<Event>, Rejection> {
    let tried = Plan {
        joining: scrap.joining,
        lap: scrap.lap,
        stitch: scrap.stitch,
        between: None,
        ..throw.plan
    };
    tried.check()?;
    if scrap.note.chars().count() > LONGEST_NOTE || throw.scraps.len() >= MOST_SCRAPS {
        return Err(Rejection::Words);
    }
    Ok(vec![Event::ScrapTried {
        scrap: scrap.clone(),
    }])
}

/// Take the lap and stitch of a scrap for the plan.
pub(super) fn use_scrap(throw: &Throw, scrap: u16) -> Result<Vec<Event>, Rejection> {
    let scrap = throw
        .scraps
        .get(usize::from(scrap))
        .ok_or(Rejection::Scrap)?;
    let plan = Plan {
        lap: scrap.lap,
        stitch: scrap.stitch,
        ..throw.plan.joined(scrap.joining)
    };
    if plan == throw.plan {
        return Err(Rejection::Nothing);
    }
    change_plan(throw, &plan)
}

/// Say how wide the opening of the machine's plate is.
pub(super) fn set_plate(opening: Length) -> Result<Vec<Event>, Rejection> {
    if opening <= zero() || opening > longest_side() {
        return Err(Rejection::Nothing);
    }
    Ok(vec![Event::PlateMeasured { opening }])
}
