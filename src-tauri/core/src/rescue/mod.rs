//! What can be done when a piece is off: a square spoilt at any stage, a block too small.
//!
//! [`ways`] lists what can still be done, the least trouble first. Nothing already sewn
//! is undone unless the maker picks a way that says so. Trouble is in minutes and is our
//! judgement, no source: 4 to cut a square (2 to take a spare, 30 to find more cloth, 2 to take the
//! square of another place besides what cutting that one again takes), 3 for each fabric glued
//! on it and for each lap lifted and glued again, 8 for each seam opened and sewn again, 5 for a
//! patch and 3 more to stitch it round where it is sewn in, 2 for each join lapped less, 30 for a
//! new block, 3 for each square of a row or column given up.
//!
//! Promise: every way's action is allowed at that moment.

pub mod holding;

use crate::cloth::fabric::Face;
use crate::cloth::pile::Use;
use crate::command::{Command, decide};
use crate::faces::arrange::{OtherDenim, in_another_denim};
use crate::fitting::squaring::thin_laps;
use crate::fitting::trimming::{EASE, EASED_NM, How, NARROWER, choice, choices, holds};
use crate::measure::{Length, Ruler, nm, zero};
use crate::plan::assembly::{Rect, Seam};
use crate::plan::{Plan, laps_in};
use crate::throw::account::account;
use crate::throw::fringe::least_lap;
use crate::throw::stock;
use crate::throw::tasks::Task;
use crate::throw::{Event, Mishap, Throw};

/// One thing that can be done.
#[derive(Debug, Clone, PartialEq)]
pub struct Remedy {
    /// What.
    pub kind: RemedyKind,
    /// Trouble, in minutes.
    pub minutes: u32,
    /// Seams to open; laps that only glue holds are counted too.
    pub seams: usize,
    /// Their length together.
    pub unpick: Length,
    /// What it asks for.
    pub action: Command,
}

/// Where a square that is cut anew comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RecutFrom {
    /// Nothing is on the pile, so nobody knows.
    Unsaid,
    /// A piece on the pile that gives more squares than places are meant for it.
    Piece {
        /// The heap.
        n: u16,
        /// The piece, counted from 0.
        index: u8,
        /// Squares it gives beyond those.
        over: u32,
        /// The denim to which the place changes, where its own is used up.
        denim: Option<u8>,
    },
    /// Nothing on the pile is over: the place stays open until cloth is found.
    MoreCloth,
}

/// What a way does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RemedyKind {
    /// Put a spare square in: of the place's own denim or of no known one, else of this denim.
    Spare(Option<u8>),
    /// Take the square that lies loose in another place, which is then to be cut again.
    FromPlace {
        /// The place.
        from: Rect,
        /// Where a square for it can be cut; of other denims the one that suits the place best.
        again: RecutFrom,
    },
    /// Cut a square.
    Recut(RecutFrom),
    /// Cover the damage on this face.
    Patch(Face),
    /// Give up a column.
    FewerAcross,
    /// Give up a row.
    FewerDown,
    /// Lap less where a short block meets its neighbours.
    LapLess,
    /// Open its own lap and sew it narrower.
    Resew,
    /// Open its own laps, which leave less than the least fringe, and sew them at this lap.
    ResewWider(Length),
    /// Lift a lap that only glue holds and lap it again, or so many that were glued alike.
    LapAgain(usize),
    /// Another trim size for all.
    Trim(Length),
    /// Change places with a block at the edge, where the binding hides it.
    ToEdge(Rect),
    /// Set it aside and make another.
    Another,
}

/// What can be done about a square that is no good.
pub fn ways(throw: &Throw, square: Rect, why: Mishap) -> Vec<Remedy> {
    let taken_out = Command::Replace {
        piece: square,
        why,
        spare: false,
        denim: None,
        from: None,
    };
    let (seams, unpick) = opened_by(throw, &taken_out);
    let gluing = throw.cover(square).layers() - 1;
    let remake = 3 * gluing + 8 * seams as u32;
    let mut out = Vec::new();
    let mut add = |kind, minutes, seams, unpick, action: Command| {
        if decide(Some(throw), &action).is_ok() {
            out.push(Remedy {
                kind,
                minutes,
                seams,
                unpick,
                action,
            });
        }
    };
    let replace_from = |spare, denim, from| Command::Replace {
        piece: square,
        why,
        spare,
        denim,
        from,
    };
    let replace = |spare, denim| replace_from(spare, denim, None);
    let own = throw.cover(square).denim;
    if throw.spares_for(own) > 0 {
        let kind = RemedyKind::Spare(None);
        add(kind, 2 + remake, seams, unpick, replace(true, None));
    }
    if let Some((other, _)) = throw.other_spares(own) {
        let kind = RemedyKind::Spare(Some(other));
        add(kind, 2 + remake, seams, unpick, replace(true, Some(other)));
    }
    let recuts = recuts(throw, own);
    let to_recut = |from: &RecutFrom| match from {
        RecutFrom::Piece { .. } | RecutFrom::Unsaid => 4,
        RecutFrom::MoreCloth => 30,
    };
    if throw.spares_of(own) == 0
        && let Some(other) = loose_of(throw, square)
        && let Some(mut again) = recuts.first().copied()
    {
        let opened = to_recut(&again);
        if let RecutFrom::Piece { denim: Some(d), .. } = &mut again {
            *d = other.denim.unwrap_or(*d);
        }
        let from = other.place;
        let kind = RemedyKind::FromPlace { from, again };
        let action = replace_from(false, None, Some(from));
        add(kind, 2 + opened + remake, seams, unpick, action);
    }
    for from in recuts {
        let minutes = to_recut(&from);
        let denim = match from {
            RecutFrom::Piece { denim, .. } => denim,
            RecutFrom::Unsaid | RecutFrom::MoreCloth => None,
        };
        let kind = RemedyKind::Recut(from);
        add(kind, minutes + remake, seams, unpick, replace(false, denim));
    }
    if matches!(why, Mishap::Flaw | Mishap::Scorched) {
        let is_left =
            |p: &u8| stock::known(throw, *p).is_none_or(|all| stock::used(throw, *p) < all);
        let print = (0..throw.prints.len() as u8).find(is_left);
        for face in Face::BOTH {
            if let Some(print) = print {
                let action = Command::Patch {
                    piece: square,
                    face,
                    print,
                    why,
                };
                let minutes = if throw.is_joined(square) { 8 } else { 5 };
                add(RemedyKind::Patch(face), minutes, 0, zero(), action);
            }
        }
    }
    let plan = throw.plan;
    let fewer_across = Plan {
        across: plan.across.max(2) - 1,
        ..plan
    };
    let fewer_down = Plan {
        down: plan.down.max(2) - 1,
        ..plan
    };
    for (kind, fewer, given_up) in [
        (RemedyKind::FewerAcross, fewer_across, plan.down),
        (RemedyKind::FewerDown, fewer_down, plan.across),
    ] {
        if fewer != plan && freed(throw, square, &fewer).is_some() {
            let action = Command::ChangePlan { plan: fewer };
            // Where the place is kept, another square goes into it afterwards.
            let kept = Rect::grid(fewer.across, fewer.down).holds(square);
            let put_in = if kept { 2 + remake } else { 0 };
            add(kind, 3 * u32::from(given_up) + put_in, 0, zero(), action);
        }
    }
    out.sort_by_key(|w| w.minutes);
    out
}

/// The place whose loose square of the same denim is missed least, with the denim that suits it best
/// where its own is used up. Places pinned are left out. Of the others those come first
/// whose denim was not chosen by hand, whose denim is seen on the fewest faces, which another denim
/// suits best as layouts are judged, in whose block nothing is joined, and which come last in the
/// throw.
fn loose_of(throw: &Throw, square: Rect) -> Option<OtherDenim> {
    let own = throw.cover(square).denim;
    let fits = |s: &Rect| {
        *s != square && throw.lies_loose(*s) && !throw.is_pinned(*s) && throw.cover(*s).denim == own
    };
    let places: Vec<Rect> = throw.assembly().whole().squares().filter(fits).collect();
    if places.is_empty() {
        return None;
    }
    let mut begun = throw.assembly().blocks();
    begun.retain(|b| b.squares().any(|s| throw.is_joined(s)));
    let found = in_another_denim(throw, &places);
    found.into_iter().min_by_key(|other| {
        let place = other.place;
        (
            throw.is_denim_by_hand(place),
            other.seen,
            other.cost,
            begun.iter().any(|b| b.holds(place)),
            std::cmp::Reverse(place),
        )
    })
}

/// Where a square of this denim can be cut anew: from a piece of its denim, or one of no named
/// denim, that gives more than it is meant to; from one of another denim; or from cloth that is
/// still to be found.
fn recuts(throw: &Throw, own: u8) -> Vec<RecutFrom> {
    if throw.pile.is_empty() {
        return vec![RecutFrom::Unsaid];
    }
    let cloth = account(throw);
    let over = |at: &(u16, u8)| {
        let piece = cloth.pieces.get(at).filter(|p| !p.cut)?;
        let meant = cloth.places.get(at)?.len() as u32;
        Some(piece.squares.get().saturating_sub(meant)).filter(|n| *n > 0)
    };
    let first = |fits: &dyn Fn(Option<u8>) -> bool| {
        cloth.pieces.keys().find_map(|at| {
            let Use::Denim { denim } = throw.pile.get(&at.0)?.makes else {
                return None;
            };
            let over = over(at).filter(|_| fits(denim))?;
            Some((*at, over, denim))
        })
    };
    let piece = |((n, index), over, denim): ((u16, u8), u32, Option<u8>)| RecutFrom::Piece {
        n,
        index,
        over,
        denim: denim.filter(|d| *d != own),
    };
    let mine = first(&|denim| denim == Some(own)).or_else(|| first(&|denim| denim.is_none()));
    let found = mine.or_else(|| first(&|denim| denim != Some(own)));
    match found {
        Some(found) => vec![piece(found)],
        None => vec![RecutFrom::MoreCloth],
    }
}

/// How giving up a row or column helps a square that is no good.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Freed {
    /// The square lies in it.
    Itself,
    /// So many good squares come free.
    Squares(u32),
    /// So many squares need not be cut.
    Cloth(u32),
}

/// How a smaller grid helps this square; `None` when it does not.
pub fn freed(throw: &Throw, square: Rect, fewer: &Plan) -> Option<Freed> {
    let grid = Rect::grid(fewer.across, fewer.down);
    if !grid.holds(square) {
        return Some(Freed::Itself);
    }
    let events = decide(Some(throw), &Command::ChangePlan { plan: *fewer }).ok()?;
    let more = throw.after(&events).spares - throw.spares;
    if more > 0 {
        return Some(Freed::Squares(more.get()));
    }
    let uncut = |s: &Rect| !grid.holds(*s) && !throw.has(*s, Task::Cut);
    let uncut = throw.assembly().whole().squares().filter(uncut).count() as u32;
    (uncut > 0).then_some(Freed::Cloth(uncut))
}

/// What can be done about a lap that only glue holds: it is lifted and lapped again, with all
/// others of its kind where the plan has another lap by now. Water loosens washable glue (common
/// practice, no source).
pub fn ways_for_glued(throw: &Throw, piece: Rect) -> Vec<Remedy> {
    let lap = throw.made(piece).lap;
    let like = |p: &Rect| {
        *p == piece
            || throw.is_only_glued(*p)
                && throw.kind(*p) == throw.kind(piece)
                && throw.made(*p).lap == lap
                && throw.planned(*p).lap != lap
    };
    let all: Vec<Rect> = (throw.assembly().joins().iter())
        .map(|join| join.whole)
        .filter(like)
        .collect();
    let mut out = Vec::new();
    for pieces in [vec![piece], all] {
        let n = pieces.len();
        let action = Command::Unpick { pieces, lap: None };
        let (seams, unpick) = opened_by(throw, &action);
        if (n > 1 || out.is_empty()) && seams > 0 {
            out.push(Remedy {
                kind: RemedyKind::LapAgain(n),
                minutes: 3 * n as u32,
                seams,
                unpick,
                action,
            });
        }
    }
    out
}

/// What can be done about a block that is short of the trim size.
pub fn ways_for_block(throw: &Throw, block: Rect, ruler: Ruler) -> Vec<Remedy> {
    let plan = &throw.plan;
    let (held, target) = (holds(throw, block), throw.target(block));
    let mut out = Vec::new();
    let mut add = |kind, minutes, seams, unpick, action: Command| {
        if decide(Some(throw), &action).is_ok() {
            out.push(Remedy {
                kind,
                minutes,
                seams,
                unpick,
                action,
            });
        }
    };
    let short = [
        (Seam::Upright, target.width - held.width),
        (Seam::Level, target.height - held.height),
    ];
    for seam in thin_laps(throw, block) {
        let pieces = inner(throw, block, seam);
        let Some(lap) = pieces.first().map(|p| throw.made(*p).lap) else {
            continue;
        };
        let action = Command::Unpick { pieces, lap: None };
        let (seams, unpick) = opened_by(throw, &action);
        let kind = RemedyKind::ResewWider(lap);
        add(kind, 8 * seams as u32, seams, unpick, action);
    }
    if short.iter().all(|(_, s)| *s <= zero()) {
        return out;
    }
    // Lapping less, as the cheapest choice for this very size has it.
    let chosen = choice(throw, plan.target(), ruler.step());
    let mine: Vec<_> = chosen.saves.iter().filter(|s| s.piece == block).collect();
    let lapped = |s: &&&crate::fitting::trimming::Save| matches!(s.how, How::Lapped { .. });
    if !mine.is_empty() && mine.iter().all(|s| lapped(&s)) {
        let laps: Vec<(Rect, Rect, Option<Length>)> = chosen
            .laps
            .iter()
            .filter(|(a, b, _)| *a == block || *b == block)
            .map(|(a, b, lap)| (*a, *b, Some(*lap)))
            .collect();
        if !laps.is_empty() {
            let eased = mine.iter().filter(|s| s.eased > zero()).count();
            let tenths = NARROWER * laps.len() as i64 + EASE * eased as i64;
            let minutes = (tenths / 10) as u32;
            add(
                RemedyKind::LapLess,
                minutes,
                0,
                zero(),
                Command::MarkLaps { laps },
            );
        }
    }
    // Its own laps sewn narrower, by what is short.
    for (seam, short) in short.into_iter().filter(|(_, s)| *s > zero()) {
        let inner = inner(throw, block, seam);
        let Some(lap) = inner.first().map(|p| throw.made(*p).lap) else {
            continue;
        };
        // A seam has two allowances, each giving half.
        // The widest lap on the ruler that gives as much, or all but what is eased in.
        let of = |short: Length| ruler.at_most(lap - short / laps_in(plan.joining));
        let narrower = [short, short - nm(EASED_NM)]
            .map(of)
            .into_iter()
            .find(|narrower| *narrower >= least_lap(throw));
        if let Some(narrower) = narrower.filter(|narrower| *narrower < lap) {
            let action = Command::Unpick {
                pieces: inner,
                lap: Some(narrower),
            };
            let (seams, unpick) = opened_by(throw, &action);
            add(RemedyKind::Resew, 8 * seams as u32, seams, unpick, action);
        }
    }
    // The size that is cheapest for all.
    if let Some(best) = choices(throw, ruler)
        .first()
        .filter(|c| c.trim != plan.target())
    {
        let minutes = (best.cost / 10) as u32;
        let action = Command::ChooseTrim {
            trim: best.trim,
            step: Some(ruler.step()),
        };
        add(RemedyKind::Trim(best.trim), minutes, 0, zero(), action);
    }
    // A place at the edge whose binding hides all that is short.
    if let Some((place, cost)) = edge_place(throw, block, ruler) {
        let minutes = 3 + (cost / 10) as u32;
        add(
            RemedyKind::ToEdge(place),
            minutes,
            0,
            zero(),
            Command::Swap { a: block, b: place },
        );
    }
    add(
        RemedyKind::Another,
        30,
        0,
        zero(),
        Command::SetAside { piece: block },
    );
    out.sort_by_key(|w| w.minutes);
    out
}

/// The joins within a block that its size along this seam's way depends on.
fn inner(throw: &Throw, block: Rect, seam: Seam) -> Vec<Rect> {
    let Some(join) = throw.assembly().join(block) else {
        return Vec::new();
    };
    match (seam, block.rows, block.cols) {
        (Seam::Upright, 2, 2) => vec![join.first, join.second],
        (Seam::Upright, 1, 2) | (Seam::Level, 2, _) => vec![block],
        _ => Vec::new(),
    }
}

/// How many seams an action opens, and how long they are together.
fn opened_by(throw: &Throw, action: &Command) -> (usize, Length) {
    let events = decide(Some(throw), action).unwrap_or_default();
    let opened = events.iter().filter_map(|event| match event {
        Event::Unpicked { pieces, .. } => Some(pieces),
        _ => None,
    });
    opened
        .flatten()
        .fold((0, zero()), |(seams, unpick), (_, length)| {
            (seams + 1, unpick + *length)
        })
}

/// The loose place of the same shape where this block would cost least, if that is less
/// than where it is, with its own cost there: what the throw costs then less what it would cost if
/// the block were not short.
fn edge_place(throw: &Throw, block: Rect, ruler: Ruler) -> Option<(Rect, i64)> {
    let here = choice(throw, throw.plan.target(), ruler.step()).trouble;
    let (across, down) = (throw.plan.across, throw.plan.down);
    let at_edge =
        |b: &Rect| b.row == 0 || b.col == 0 || b.row + b.rows == down || b.col + b.cols == across;
    let mut best: Option<(Rect, i64)> = None;
    for place in throw
        .assembly()
        .blocks()
        .into_iter()
        .filter(|b| *b != block)
        .filter(at_edge)
    {
        let Ok(events) = decide(Some(throw), &Command::Swap { a: block, b: place }) else {
            continue;
        };
        let after = throw.after(&events);
        let there = choice(&after, after.plan.target(), ruler.step()).trouble;
        if there < here && best.is_none_or(|(_, cost)| there < cost) {
            best = Some((place, there));
        }
    }
    let (place, there) = best?;
    let moved = decide(Some(throw), &Command::Swap { a: block, b: place }).ok()?;
    let mut full = throw.after(&moved);
    let target = full.target(place);
    let pieces = vec![(place, target.width, target.height)];
    let squared = Event::SquaredUp {
        pieces,
        unmeasured: None,
    };
    full.apply(&squared, 0);
    let others = choice(&full, full.plan.target(), ruler.step()).trouble;
    Some((place, there - others))
}

/// Whether a block may be short at all: it is stitched, and not yet joined to others.
pub fn can_be_off(throw: &Throw, block: Rect) -> bool {
    throw.assembly().is_block(block)
        && throw.has(block, Task::Stitch)
        && throw
            .assembly()
            .goes_into(block)
            .is_none_or(|j| !throw.begun(j.whole))
}

#[cfg(test)]
mod tests;
