//! Doing the work: ticking steps, and measuring what came of them.

use crate::cloth::fabric::Cover;
use crate::command::outcome::{done, faces_changed};
use crate::command::rejection::Rejection;
use crate::fitting::squaring::{held, natural};
use crate::fitting::trimming::is_undecided;
use crate::measure::outline::Measures;
use crate::measure::{Count, Length, zero};
use crate::plan::assembly::{Kind, Rect};
use crate::plan::longest_side;
use crate::throw::event::{Event, Time};
use crate::throw::index::tier;
use crate::throw::state::Throw;
use crate::throw::tasks::Task;
use std::cmp::min;
use std::collections::{BTreeMap, HashSet};

pub(super) fn tick(throw: &Throw, task: Task, pieces: &[Rect]) -> Result<Vec<Event>, Rejection> {
    if pieces.is_empty() {
        return Err(Rejection::Nothing);
    }
    let mut seen = HashSet::new();
    for piece in pieces {
        may_do(throw, task, *piece)?;
        if !seen.insert(*piece) {
            return Err(Rejection::NotItsTask {
                piece: *piece,
                task,
            });
        }
    }
    if task == Task::SquareUp {
        let measured = |piece: &&Rect| throw.work(**piece).is_some_and(|w| w.measured.is_some());
        let unmeasured = pieces.len() - pieces.iter().filter(measured).count();
        let pieces = pieces
            .iter()
            .map(|piece| {
                // As measured, no larger than the trim size.
                let (size, target) = (throw.size(*piece), throw.target(*piece));
                let width = min(size.width, target.width);
                (*piece, width, min(size.height, target.height))
            })
            .collect();
        let unmeasured = (unmeasured > 0).then(|| Count::at_most(unmeasured as u32));
        return Ok(vec![Event::SquaredUp { pieces, unmeasured }]);
    }
    Ok(vec![done(throw, task, pieces.to_vec())])
}

/// Tick tasks one after another, each to all of the pieces.
pub(super) fn tick_sitting(
    throw: &Throw,
    tasks: &[Task],
    pieces: &[Rect],
) -> Result<Vec<Event>, Rejection> {
    let mut events = Vec::new();
    // No piece goes through more tasks than there are.
    for task in tasks.iter().take(Task::ALL.len()) {
        events.extend(tick(&throw.after(&events), *task, pieces)?);
    }
    match events.is_empty() {
        true => Err(Rejection::Nothing),
        false => Ok(events),
    }
}

/// What has cooled by `now` and was not ticked, as if it were.
pub fn cooled(throw: &Throw, now: Time) -> Vec<Event> {
    let mut by_task: BTreeMap<Task, Vec<Rect>> = BTreeMap::new();
    for (task, piece, _) in cooling(throw, now).filter(|(.., at)| *at <= now) {
        by_task.entry(task).or_default().push(piece);
    }
    let event = |(task, pieces)| done(throw, task, pieces);
    by_task.into_iter().map(event).collect()
}

/// When the next of what lies cooling is cool; none where nothing cools any more.
pub fn next_cool(throw: &Throw, now: Time) -> Option<Time> {
    let times = cooling(throw, now).map(|(.., at)| at);
    times.filter(|at| *at > now).min()
}

/// What lies cooling, with the time at which it is cool.
fn cooling(throw: &Throw, now: Time) -> impl Iterator<Item = (Task, Rect, Time)> + '_ {
    let ready = throw.work_index().ready().iter();
    let cooling = ready.filter(|((_, task), _)| task.is_cooling());
    cooling.flat_map(move |((_, task), numbers)| {
        let pieces = numbers
            .iter()
            .filter_map(|n| throw.assembly().numbered(*n as usize));
        pieces.filter_map(move |piece| Some((*task, piece, throw.cooled_at(piece, now)?)))
    })
}

/// Of what has cooled, that of which these events make use.
pub(super) fn wanted_cool(cooled: Vec<Event>, events: &[Event]) -> Vec<Event> {
    let worked: Vec<Rect> = events
        .iter()
        .flat_map(|event| match event {
            Event::Done { pieces, .. } => pieces.clone(),
            Event::SquaredUp { pieces, .. } => pieces.iter().map(|(p, ..)| *p).collect(),
            _ => vec![],
        })
        .collect();
    let wanted = |piece: &Rect| worked.iter().any(|w| w.holds(*piece));
    cooled
        .into_iter()
        .filter_map(|event| match event {
            Event::Done { task, pieces, made } => {
                let pieces: Vec<Rect> = pieces.into_iter().filter(wanted).collect();
                (!pieces.is_empty()).then_some(Event::Done { task, pieces, made })
            }
            _ => None,
        })
        .collect()
}

/// Every piece that can be worked on now, with its next task, squares first.
pub fn ready(throw: &Throw) -> impl Iterator<Item = (Rect, Task)> + '_ {
    throw.assembly().pieces().filter_map(|piece| {
        let task = throw.next(piece)?;
        throw.waits_for(piece).is_none().then_some((piece, task))
    })
}

/// The pieces of one kind that are ready for one task, in order.
pub fn ready_for(throw: &Throw, kind: Kind, task: Task) -> impl Iterator<Item = Rect> + '_ {
    let listed = throw.work_index().ready().get(&(tier(kind), task));
    listed
        .into_iter()
        .flatten()
        .filter_map(|n| throw.assembly().numbered(*n as usize))
        .filter(move |piece| throw.kind(*piece) == kind)
}

/// Whether `task` may be done to `piece` now.
///
/// # Errors
/// What must come first, or why the task is not this piece's.
pub fn may_do(throw: &Throw, task: Task, piece: Rect) -> Result<(), Rejection> {
    if !throw.assembly().knows(piece) {
        return Err(Rejection::NoSuchPiece(piece));
    }
    if let Some(before) = throw.waits_for(piece) {
        let deepest = first_open(throw, before);
        let needs = throw.next(deepest).unwrap_or(Task::Cut);
        return Err(Rejection::First {
            task,
            piece,
            before: deepest,
            needs,
        });
    }
    match throw.next(piece) {
        Some(next) if next == task => Ok(()),
        Some(next) if throw.tasks(piece).contains(&task) && !throw.has(piece, task) => {
            Err(Rejection::First {
                task,
                piece,
                before: piece,
                needs: next,
            })
        }
        _ => Err(Rejection::NotItsTask { piece, task }),
    }
}

/// The first part below `piece` that can be worked on now.
fn first_open(throw: &Throw, piece: Rect) -> Rect {
    let mut open = piece;
    while let Some(before) = throw.waits_for(open) {
        open = before;
    }
    open
}

pub(super) fn measure(
    throw: &Throw,
    piece: Rect,
    width: Length,
    height: Length,
) -> Result<Vec<Event>, Rejection> {
    if !throw.assembly().knows(piece) {
        return Err(Rejection::NoSuchPiece(piece));
    }
    if !throw.is_measurable(piece) {
        return Err(Rejection::NotMeasurable(piece));
    }
    let natural = natural(throw, piece);
    for (given, planned) in [(width, natural.width), (height, natural.height)] {
        if given <= zero()
            || given * 2 < planned
            || given > planned * 2
            || given > longest_side() * 2
        {
            return Err(Rejection::Unlikely { given, planned });
        }
    }
    Ok(vec![Event::Measured {
        piece,
        width,
        height,
    }])
}

pub(super) fn measure_whole(
    throw: &Throw,
    width: Length,
    height: Length,
) -> Result<Vec<Event>, Rejection> {
    let whole = throw.assembly().whole();
    if throw.assembly().join(whole).is_some() && !throw.has(whole, Task::Stitch) {
        return Err(Rejection::NotWhole);
    }
    let foreseen = throw.finished();
    for (given, planned) in [(width, foreseen.width), (height, foreseen.height)] {
        if given <= zero() || given * 2 < planned || given > planned * 2 {
            return Err(Rejection::Unlikely { given, planned });
        }
    }
    Ok(vec![Event::WholeMeasured { width, height }])
}

/// Tick the first pieces that are ready; blocks whose verdict is open are left out, each is
/// for the maker to look at by itself.
pub(super) fn tick_next(
    throw: &Throw,
    task: Task,
    kind: Kind,
    count: Count,
) -> Result<Vec<Event>, Rejection> {
    let pieces: Vec<Rect> = ready_for(throw, kind, task)
        .filter(|piece| task != Task::SquareUp || !is_undecided(throw, *piece))
        .take(count.get() as usize)
        .collect();
    tick(throw, task, &pieces)
}

/// Put spare squares in empty places.
pub(super) fn use_spares(
    throw: &Throw,
    pieces: &[Rect],
    denim: Option<u8>,
) -> Result<Vec<Event>, Rejection> {
    if denim.is_some_and(|d| usize::from(d) >= throw.denims.len()) {
        return Err(Rejection::Cloth);
    }
    if throw.spares < pieces.len() as u32 {
        let have = throw.spares.get();
        return Err(Rejection::Spares { have });
    }
    tick(throw, Task::Cut, pieces)?;
    let mut events = Vec::new();
    for piece in pieces {
        let more = spare_used(&throw.after(&events), *piece, denim)?;
        events.extend(more);
    }
    Ok(events)
}

/// A spare goes to an empty place: one of this denim where one is named, else one that serves
/// there. A place that gets another denim than it was to have is of that denim from now on.
pub(super) fn spare_used(
    throw: &Throw,
    piece: Rect,
    denim: Option<u8>,
) -> Result<Vec<Event>, Rejection> {
    let cover = throw.cover(piece);
    let of = match denim {
        Some(d) if throw.spares_of(d) == 0 => return Err(Rejection::Spares { have: 0 }),
        Some(d) => Some(d),
        None if throw.spares_for(cover.denim) > 0 => throw.spare_for(cover.denim),
        None => throw.other_spares(cover.denim).map(|(d, _)| d),
    };
    let mut events = Vec::new();
    if let Some(other) = of.filter(|d| *d != cover.denim) {
        let cover = Cover {
            denim: other,
            ..cover
        };
        events.push(faces_changed(throw, vec![(piece, cover)], true));
    }
    events.push(Event::SparesUsed {
        pieces: vec![piece],
        of: vec![of],
        pieced: (throw.next_spare_is_pieced(of).then_some(piece))
            .into_iter()
            .collect(),
    });
    Ok(events)
}

/// Say how many spare squares there are.
pub(super) fn count_spares(throw: &Throw, spares: Count) -> Result<Vec<Event>, Rejection> {
    if spares > 10_000 {
        let have = throw.spares.get();
        return Err(Rejection::Spares { have });
    }
    Ok(vec![Event::SparesCounted { spares }])
}

/// Measure a block's sides and diagonals: it is as large as the largest piece they hold.
pub(super) fn measure_outline(
    throw: &Throw,
    piece: Rect,
    measures: Measures,
) -> Result<Vec<Event>, Rejection> {
    let size = held(throw, piece, measures)?;
    let mut events = measure(throw, piece, size.width, size.height)?;
    events.push(Event::Outlined { piece, measures });
    Ok(events)
}
