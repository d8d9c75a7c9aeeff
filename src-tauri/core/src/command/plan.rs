//! Changing the plan of what is not yet made, the trim size and the laps.

use crate::command::outcome::taken_out;
use crate::command::pile::check_patches;
use crate::command::rejection::Rejection;
use crate::fitting::trimming::{choice, ruler_of};
use crate::measure::{Count, Length};
use crate::plan::assembly::{Assembly, Join, Kind, Rect};
use crate::plan::{Plan, laps_in};
use crate::throw::event::Event;
use crate::throw::fringe::least_lap;
use crate::throw::seams::made_in;
use crate::throw::state::Throw;
use crate::throw::tasks::Task;
use std::collections::BTreeMap;

/// The size to trim to stays what it was, where none is named: fours that are sewn cannot grow, as
/// a lesser lap would have them; and once all within the fours is sewn, no other lap is in them.
fn as_sewn(throw: &Throw, mut plan: Plan) -> Plan {
    let fours = || {
        let blocks = throw.assembly().blocks().into_iter();
        let fours = blocks.filter(|b| throw.assembly().kind(*b) == Kind::Four);
        fours.filter_map(|b| throw.work(b))
    };
    let was = if fours().any(|w| w.squared.is_some()) {
        throw.plan.target()
    } else {
        throw.plan.natural_four()
    };
    let within = |kind| matches!(kind, Kind::Pair | Kind::Four);
    let left = |j: &Join| within(throw.kind(j.whole)) && !throw.is_made(j.whole);
    let all_sewn = || !throw.assembly().joins().iter().any(left);
    let same = plan.side == throw.plan.side && plan.order == throw.plan.order;
    let same_grid = (plan.across, plan.down) == (throw.plan.across, throw.plan.down);
    let grows = plan.target() > was && fours().any(|w| w.made.is_some());
    if same && plan.trim.is_none() && (grows || same_grid && plan.target() != was && all_sewn()) {
        plan.trim = Some(was);
    }
    plan
}

pub(super) fn change_plan(throw: &Throw, plan: &Plan) -> Result<Vec<Event>, Rejection> {
    plan.check()?;
    let plan = &as_sewn(throw, *plan);
    check_patches(throw, plan)?;
    let cut = |s: &Rect| throw.has(*s, Task::Cut);
    let squares = || throw.assembly().whole().squares();
    if plan.side != throw.plan.side {
        let count = squares().filter(cut).count() as u32 + throw.spares.get();
        if count > 0 {
            return Err(Rejection::AlreadyCut { squares: count });
        }
    }
    let refit = refit(throw, plan)?;
    let mut events = Vec::new();
    if !refit.moves.is_empty() {
        events.push(Event::Moved { moves: refit.moves });
    }
    if !refit.aside.is_empty() {
        let aside = taken_out(&throw.after(&events), refit.aside);
        events.push(aside);
    }
    let after = throw.after(&events);
    let grid = Rect::grid(plan.across, plan.down);
    let cut = |s: &Rect| after.has(*s, Task::Cut) && !after.is_joined(*s);
    let freed: Vec<Rect> = squares().filter(|s| !grid.holds(*s)).filter(cut).collect();
    let mut glued: BTreeMap<u8, u32> = BTreeMap::new();
    for print in freed.iter().flat_map(|s| after.glued_on(*s)).flatten() {
        *glued.entry(print).or_default() += 1;
    }
    events.push(Event::PlanChanged {
        plan: *plan,
        spares: Count::at_most(freed.len() as u32),
        glued: glued
            .into_iter()
            .map(|(p, n)| (p, Count::at_most(n)))
            .collect(),
    });
    let marks = marked_anew(throw, &throw.after(&events));
    if !marks.is_empty() {
        events.push(Event::LapsMarked { laps: marks });
    }
    Ok(events)
}

/// The laps marked between blocks, as they are to be where a plan was changed: what made a
/// short block fit does not any more, once all are trimmed to another size.
fn marked_anew(before: &Throw, after: &Throw) -> Vec<(Rect, Rect, Option<Length>)> {
    if (before.plan.target(), before.plan.lap_between())
        == (after.plan.target(), after.plan.lap_between())
    {
        return Vec::new();
    }
    // No ruler comes with a command: the new laps lie on the marks the old ones lie on.
    let mut known: Vec<Length> = open_marks(after).map(|(_, _, lap)| lap).collect();
    known.push(after.plan.lap_between());
    let laps = choice(after, after.plan.target(), ruler_of(&known)).laps;
    let open = open_marks(after);
    let marks = open.map(|(a, b, lap)| {
        let found = laps.iter().find(|(c, d, _)| (*c, *d) == (a, b));
        ((a, b, found.map(|(_, _, lap)| *lap)), lap)
    });
    marks
        .filter(|((_, _, new), old)| *new != Some(*old))
        .map(|(mark, _)| mark)
        .collect()
}

/// The laps marked between blocks that are not joined yet.
fn open_marks(throw: &Throw) -> impl Iterator<Item = (Rect, Rect, Length)> + '_ {
    let blocks = throw.assembly().blocks();
    throw.marks().filter(move |(a, b, _)| {
        let open = throw
            .joined_by(*a, *b)
            .is_some_and(|j| !throw.begun(j.whole));
        blocks.contains(a) && open
    })
}

/// How sewn blocks find a place under another plan.
struct Refit {
    /// Blocks that change places, as a permutation.
    moves: Vec<(Rect, Rect)>,
    /// Blocks for which there is no place.
    aside: Vec<Rect>,
}

/// Keep every sewn piece: where it is, or in another place of the same shape, or aside.
///
/// A piece larger than a block, or a finished edge, has no other place: it is refused.
fn refit(throw: &Throw, plan: &Plan) -> Result<Refit, Rejection> {
    let old = throw.assembly();
    let new = Assembly::new(plan.across, plan.down, plan.order);
    let mut refit = Refit {
        moves: Vec::new(),
        aside: Vec::new(),
    };
    if old.whole() == new.whole() && throw.plan.order == plan.order {
        return Ok(refit);
    }
    let finishing = [Task::TrimEdge, Task::CutBinding, Task::StitchBinding];
    if old.whole() != new.whole() && finishing.iter().any(|t| throw.has(old.whole(), *t)) {
        return Err(Rejection::AlreadyMade(old.whole()));
    }
    let keeps = |p: Rect| new.join(p) == old.join(p) && new.is_block(p) == old.is_block(p);
    let sewn: Vec<Rect> = throw
        .worked()
        .filter(|(p, w)| !p.is_square() && (!w.done.is_empty() || throw.is_partly_sewn(**p)))
        .map(|(p, _)| *p)
        .collect();
    let blocks = old.blocks();
    let mut homeless = Vec::new();
    for piece in sewn.iter().filter(|p| !keeps(**p)) {
        match blocks.iter().find(|b| b.holds(*piece)) {
            Some(block) if !homeless.contains(block) => homeless.push(*block),
            Some(_) => {}
            None => return Err(Rejection::AlreadyMade(*piece)),
        }
    }
    homeless.sort();
    let mut free: Vec<Rect> = new
        .blocks()
        .into_iter()
        .filter(|b| blocks.contains(b) && !sewn.iter().any(|p| b.holds(*p)))
        .collect();
    for block in homeless {
        let shape = |b: &Rect| (b.rows, b.cols) == (block.rows, block.cols);
        match free.iter().position(shape) {
            Some(at) => {
                let place = free.remove(at);
                refit.moves.extend([(block, place), (place, block)]);
            }
            None => refit.aside.extend(made_in(throw, block)),
        }
    }
    Ok(refit)
}

pub(super) fn choose_trim(
    throw: &Throw,
    trim: Length,
    step: Option<Length>,
) -> Result<Vec<Event>, Rejection> {
    let step = step.unwrap_or_else(|| ruler_of(&[trim, throw.plan.lap_between()]));
    let trim = (trim != throw.plan.natural_four()).then_some(trim);
    let plan = Plan { trim, ..throw.plan };
    plan.check()?;
    check_patches(throw, &plan)?;
    let laps = choice(throw, plan.target(), step).laps;
    let stale =
        open_marks(throw).filter(|(a, b, _)| !laps.iter().any(|(c, d, _)| (c, d) == (a, b)));
    let mut marks: Vec<(Rect, Rect, Option<Length>)> =
        stale.map(|(a, b, _)| (a, b, None)).collect();
    marks.extend(laps.into_iter().map(|(a, b, lap)| (a, b, Some(lap))));
    let mut events = Vec::new();
    if plan != throw.plan {
        let spares = Count::NONE;
        let glued = Vec::new();
        events.push(Event::PlanChanged {
            plan,
            spares,
            glued,
        });
    }
    if !marks.is_empty() {
        events.push(Event::LapsMarked { laps: marks });
    }
    if events.is_empty() {
        return Err(Rejection::Nothing);
    }
    Ok(events)
}

pub(super) fn mark_laps(
    throw: &Throw,
    laps: &[(Rect, Rect, Option<Length>)],
) -> Result<Vec<Event>, Rejection> {
    if laps.is_empty() {
        return Err(Rejection::Nothing);
    }
    for (a, b, lap) in laps {
        let join = throw
            .joined_by(*a, *b)
            .filter(|j| throw.spots(j).contains(&(*a, *b)));
        if join.is_none_or(|j| throw.begun(j.whole)) {
            return Err(Rejection::NotNeighbours(*a, *b));
        }
        if let Some(lap) = lap {
            check_lap(throw, *lap)?;
        }
    }
    Ok(vec![Event::LapsMarked {
        laps: laps.to_vec(),
    }])
}

pub(super) fn check_lap(throw: &Throw, lap: Length) -> Result<(), Rejection> {
    let least = least_lap(throw);
    if lap < least || lap * laps_in(throw.plan.joining) * 2 >= throw.plan.side {
        return Err(Rejection::LapTooNarrow { lap, least });
    }
    let wider = std::cmp::max(throw.plan.lap_between(), lap);
    let plan = Plan {
        between: Some(wider),
        ..throw.plan
    };
    check_patches(throw, &plan)
}
