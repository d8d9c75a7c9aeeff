//! When a piece is off: unpicking, replacing, patching.

use crate::cloth::fabric::{Cover, Face};
use crate::command::check::known_squares;
use crate::command::faces::{back_in, laid_back, within_stock};
use crate::command::outcome::{faces_changed, spoilt, taken_out};
use crate::command::plan::check_lap;
use crate::command::rejection::Rejection;
use crate::command::work::spare_used;
use crate::measure::Length;
use crate::plan::assembly::{Join, Rect};
use crate::throw::event::Event;
use crate::throw::facts::Mishap;
use crate::throw::seams::round;
use crate::throw::state::Throw;
use crate::throw::stock::used;
use crate::throw::tasks::Task;

fn unpick(throw: &Throw, wanted: &[Rect], lap: Option<Length>) -> Result<Vec<Event>, Rejection> {
    if wanted.is_empty() {
        return Err(Rejection::Nothing);
    }
    let mut pieces: Vec<(Rect, Length)> = Vec::new();
    let mut marks = Vec::new();
    for piece in wanted {
        let join = throw
            .assembly()
            .join(*piece)
            .ok_or(Rejection::NothingToUnpick(*piece))?;
        if !throw.begun(*piece) {
            return Err(Rejection::NothingToUnpick(*piece));
        }
        let own = throw.size(*piece).along(join.seam);
        for (opened, length) in std::iter::once((*piece, own)).chain(round(throw, *piece)) {
            match pieces.iter_mut().find(|(p, _)| *p == opened) {
                Some((_, sofar)) => *sofar = std::cmp::max(*sofar, length),
                None => pieces.push((opened, length)),
            }
        }
        if let Some(lap) = lap {
            check_lap(throw, lap)?;
            marks.push((join.first, join.second, Some(lap)));
        }
    }
    let mut events = vec![opened(throw, pieces, wanted, None)];
    if !marks.is_empty() {
        events.push(Event::LapsMarked { laps: marks });
    }
    Ok(events)
}

/// Joins are opened again, round these pieces; where glue alone holds them, they are lifted.
fn opened(
    throw: &Throw,
    pieces: Vec<(Rect, Length)>,
    round: &[Rect],
    block: Option<Rect>,
) -> Event {
    let whole = throw.assembly().whole();
    let in_part = |(piece, length): &(Rect, Length)| {
        let sewn = throw.has(*piece, Task::Stitch) || throw.is_open_in_part(*piece);
        let before = throw.work(*piece).and_then(|w| w.opened);
        let opened = before.map_or(*length, |before| before + *length);
        let join = throw.assembly().join(*piece);
        join.is_some_and(|join| sewn && !throw.opens_all(join, opened))
    };
    // What is opened from end to end by now is sewn anew from end to end.
    let all = |(piece, length): (Rect, Length)| {
        let before = throw.work(piece).and_then(|w| w.opened);
        let before = before.filter(|_| throw.is_open_in_part(piece) && !in_part(&(piece, length)));
        (piece, before.map_or(length, |before| before + length))
    };
    let pieces: Vec<(Rect, Length)> = pieces.into_iter().map(all).collect();
    let event = |held| Event::Unpicked {
        glued: throw.are_only_glued(&pieces),
        in_part: pieces
            .iter()
            .filter(|p| in_part(p))
            .map(|(piece, _)| *piece)
            .collect(),
        binding: throw.has(whole, Task::GlueBinding)
            && round.iter().any(|p| throw.assembly().is_at_edge(*p)),
        block,
        held,
        pieces: pieces.clone(),
    };
    let after = throw.after(&[event(Vec::new())]);
    let blocks = pieces.iter().map(|(piece, _)| *piece);
    let blocks = blocks.filter(|p| throw.assembly().is_block(*p));
    event(blocks.filter(|p| after.is_held(*p)).collect())
}

/// Fours that were turned by a quarter and hold one of these pieces are laid back as they were sewn.
/// Those that are sewn in are taken out first.
fn laid_back_from(throw: &Throw, pieces: &[Rect]) -> (Vec<Event>, Vec<(Rect, u8)>) {
    let back = laid_back(throw, pieces);
    let mut events: Vec<Event> = Vec::new();
    for (block, _) in &back {
        let after = throw.after(&events);
        let joins = round(&after, *block);
        if !joins.is_empty() {
            events.push(opened(&after, joins, &[*block], Some(*block)));
        }
    }
    if !back.is_empty() {
        let pieces = back.clone();
        events.push(Event::Turned { pieces });
    }
    (events, back)
}

/// What takes the place of a square.
#[derive(Clone, Copy)]
pub(super) struct With {
    /// A spare; else one that is to be cut, or the square of another place.
    pub spare: bool,
    /// The denim of it, if not the place's own.
    pub denim: Option<u8>,
    /// The place whose loose square is taken.
    pub from: Option<Rect>,
}

/// Whether the square of one place may serve in another: it is cut, and nothing holds it there.
fn may_give(throw: &Throw, to: Rect, from: Rect) -> Result<(), Rejection> {
    if from == to {
        return Err(Rejection::NotSwappable(from, to));
    }
    known_squares(throw, &[from])?;
    if !throw.has(from, Task::Cut) {
        return Err(Rejection::NotCut(from));
    }
    if throw.is_joined(from) {
        return Err(Rejection::Joined(from));
    }
    if throw.is_pinned(from) {
        return Err(Rejection::Pinned(from));
    }
    match throw.lies_loose(from) {
        true => Ok(()),
        false => Err(Rejection::Glued(from)),
    }
}

fn replace(throw: &Throw, piece: Rect, why: Mishap, with: With) -> Result<Vec<Event>, Rejection> {
    let With { spare, denim, from } = with;
    if denim.is_some_and(|d| usize::from(d) >= throw.denims.len()) {
        return Err(Rejection::Cloth);
    }
    let piece = *known_squares(throw, &[piece])?
        .first()
        .ok_or(Rejection::Nothing)?;
    if !throw.has(piece, Task::Cut) {
        return Err(Rejection::NotCut(piece));
    }
    if spare && throw.spares == 0 {
        return Err(Rejection::Spares { have: 0 });
    }
    if let Some(from) = from {
        may_give(throw, piece, from)?;
    }
    let mut events = Vec::new();
    let pieces = round(throw, piece);
    if !pieces.is_empty() {
        events.push(opened(throw, pieces, &[piece], None));
    }
    let spoilt = spoilt(&throw.after(&events), piece, why);
    events.push(spoilt);
    let after = throw.after(&events);
    if let Some(from) = from {
        let (own, other) = (after.cover(piece), after.cover(from));
        if own.denim != other.denim {
            let denim = other.denim;
            let cover = Cover { denim, ..own };
            events.push(faces_changed(&after, vec![(piece, cover)], true));
        }
        events.push(Event::SquareMoved { from, to: piece });
    } else if spare {
        events.extend(spare_used(&after, piece, denim)?);
    } else if let Some(denim) = denim {
        let cover = Cover {
            denim,
            ..after.cover(piece)
        };
        events.push(faces_changed(&after, vec![(piece, cover)], true));
    }
    Ok(events)
}

pub(super) fn patch(
    throw: &Throw,
    piece: Rect,
    face: Face,
    print: u8,
    why: Mishap,
) -> Result<Vec<Event>, Rejection> {
    let piece = *known_squares(throw, &[piece])?
        .first()
        .ok_or(Rejection::Nothing)?;
    if usize::from(print) >= throw.prints.len() {
        return Err(Rejection::Cloth);
    }
    if !throw.has(piece, Task::Cut) {
        return Err(Rejection::NotCut(piece));
    }
    let cover = throw.cover(piece);
    if cover.on(face).is_some() {
        return Err(Rejection::Covered(piece));
    }
    within_stock(throw, print, used(throw, print) + 1)?;
    let joined = throw.is_joined(piece);
    let side = throw.lies_on_sewn(print).filter(|_| joined);
    let mut events = vec![
        Event::Patched {
            piece,
            why,
            // What is trimmed clear of the laps is told by itself.
            sewn: joined && side.is_none(),
        },
        faces_changed(throw, vec![(piece, cover.with(face, Some(print)))], false),
    ];
    if side.is_some() {
        let squares = vec![(piece, face, side)];
        events.push(Event::LaidOn { squares });
    }
    Ok(events)
}

/// Open joins, in a four that is first laid back as it was sewn.
pub(super) fn unpick_laid_back(
    throw: &Throw,
    pieces: &[Rect],
    lap: Option<Length>,
) -> Result<Vec<Event>, Rejection> {
    let (mut events, _) = laid_back_from(throw, pieces);
    events.extend(unpick(&throw.after(&events), pieces, lap)?);
    Ok(events)
}

/// Put another square in the place of one, in a four that is first laid back as it was sewn.
pub(super) fn replace_laid_back(
    throw: &Throw,
    piece: Rect,
    why: Mishap,
    with: With,
) -> Result<Vec<Event>, Rejection> {
    let (mut events, back) = laid_back_from(throw, &[piece]);
    let square = back_in(piece, &back);
    events.extend(replace(&throw.after(&events), square, why, with)?);
    Ok(events)
}

/// Take a sewn block out of the throw.
pub(super) fn set_aside(throw: &Throw, piece: Rect) -> Result<Vec<Event>, Rejection> {
    let assembly = throw.assembly();
    let open = |join: &Join| !throw.begun(join.whole) && !throw.is_partly_sewn(join.whole);
    let loose = assembly.blocks().contains(&piece) && assembly.goes_into(piece).is_none_or(open);
    // One that is open is not whole: a square of it may be still to cut.
    let opened = throw.work(piece).is_some_and(|w| w.opened.is_some());
    if !loose || opened || !throw.begun(piece) {
        return Err(Rejection::NothingToUnpick(piece));
    }
    Ok(vec![taken_out(throw, vec![piece])])
}

/// A square that is not joined yet is no good.
pub(super) fn spoil(throw: &Throw, piece: Rect, why: Mishap) -> Result<Vec<Event>, Rejection> {
    let piece = *known_squares(throw, &[piece])?
        .first()
        .ok_or(Rejection::Nothing)?;
    if !throw.has(piece, Task::Cut) {
        return Err(Rejection::NotCut(piece));
    }
    if throw.is_joined(piece) {
        return Err(Rejection::Joined(piece));
    }
    Ok(vec![spoilt(throw, piece, why)])
}
