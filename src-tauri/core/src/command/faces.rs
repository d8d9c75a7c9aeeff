//! The two faces: fabrics on squares, layouts, places exchanged, pieces turned.

use crate::cloth::fabric::{Cover, Denim, Face, Print};
use crate::cloth::pile::Use;
use crate::command::check::{check_cloth, check_names, known_squares};
use crate::command::outcome::faces_changed;
use crate::command::rejection::Rejection;
use crate::faces::arrange::dealt;
use crate::measure::Count;
use crate::plan::assembly::{Rect, source};
use crate::throw::event::Event;
use crate::throw::loose::{is_loose, loose_units, places_for};
use crate::throw::state::Throw;
use crate::throw::stock::{self, used};
use crate::throw::tasks::{Task, cover_task};
use crate::throw::wishes::{DenimWish, Layout, Wishes};
use std::collections::{HashMap, HashSet};

pub(super) fn set_face(
    throw: &Throw,
    pieces: &[Rect],
    face: Face,
    print: Option<u8>,
    laid_on: bool,
) -> Result<Vec<Event>, Rejection> {
    if print.is_some_and(|p| usize::from(p) >= throw.prints.len()) {
        return Err(Rejection::Cloth);
    }
    let (mut faces, mut laid) = (Vec::new(), Vec::new());
    // What is glued or sewn in stays as it is; the rest is changed.
    let mut stays = None;
    for piece in known_squares(throw, pieces)? {
        let cover = throw.cover(piece);
        if cover.on(face) == print {
            continue;
        }
        let (joined, was) = (throw.is_joined(piece), throw.laid_on(piece, face));
        let side = print.filter(|_| joined).and_then(|p| throw.lies_on_sewn(p));
        let bare = cover.on(face).is_none() && laid_on && side.is_some();
        let fixed = if joined && was.is_none() && !bare {
            Some(Rejection::Joined(piece))
        } else {
            let glued = throw.has(piece, cover_task(face));
            glued.then_some(Rejection::Glued(piece))
        };
        if fixed.is_some() {
            stays = stays.or(fixed);
            continue;
        }
        if side != was {
            laid.push((piece, face, side));
        }
        faces.push((piece, cover.with(face, print)));
    }
    if faces.is_empty() {
        return Err(stays.unwrap_or(Rejection::Nothing));
    }
    if let Some(print) = print {
        within_stock(throw, print, used(throw, print) + faces.len() as u32)?;
    }
    let mut events = vec![faces_changed(throw, faces, false)];
    if !laid.is_empty() {
        events.push(Event::LaidOn { squares: laid });
    }
    Ok(events)
}

/// No more squares of a fabric that was counted can be placed than there are of it, what the pile still
/// gives among them. What nobody has counted yet is not held to what the pile is expected to give.
pub(super) fn within_stock(throw: &Throw, print: u8, placed: u32) -> Result<(), Rejection> {
    let print_of = throw.prints.get(usize::from(print));
    let counted = print_of.and_then(|print| print.stock);
    match counted.and(stock::known(throw, print)).map(Count::get) {
        Some(have) if placed > have => Err(Rejection::Stock { print, have }),
        _ => Ok(()),
    }
}

/// No more squares can be covered on a face than there are.
pub(super) fn check_wishes(throw: &Throw, wishes: &Wishes) -> Result<(), Rejection> {
    let most = throw.plan.squares();
    if wishes.front > most || wishes.back > most {
        return Err(Rejection::Wishes { most });
    }
    Ok(())
}

/// Whether all of a layout can be done to a throw, and what comes of it.
pub(super) fn lay_out(
    throw: &Throw,
    wishes: &Wishes,
    layout: &Layout,
) -> Result<Vec<Event>, Rejection> {
    check_wishes(throw, wishes)?;
    check_moves(throw, &layout.moves)?;
    let mut events: Vec<Event> = layout.moved().into_iter().collect();
    let moved = throw.after(&events);
    for (n, (piece, quarters)) in layout.turns.iter().enumerate() {
        let before = &layout.turns[..n];
        if before
            .iter()
            .any(|(p, _)| p.holds(*piece) || piece.holds(*p))
        {
            return Err(Rejection::Layout(*piece));
        }
        may_turn(&moved, *piece, *quarters)?;
    }
    events.extend(layout.turned());
    let turned = throw.after(&events);
    let mut faces: Vec<(Rect, Cover)> = Vec::new();
    let mut seen = HashSet::new();
    for (piece, cover) in &layout.faces {
        let is = turned.cover(*piece);
        if !seen.insert(*piece) || !piece.is_square() || !throw.assembly().knows(*piece) {
            return Err(Rejection::Layout(*piece));
        }
        let print = |p: Option<u8>| p.is_none_or(|p| usize::from(p) < throw.prints.len());
        let denim = usize::from(cover.denim) < throw.denims.len().max(1);
        if !print(cover.front) || !print(cover.back) || !denim {
            return Err(Rejection::Cloth);
        }
        let cloth = |c: &Cover| (c.denim, c.wrong_side_up, c.crosswise);
        if cloth(cover) != cloth(&is) && turned.has(*piece, Task::Cut) {
            return Err(Rejection::DenimCut(*piece));
        }
        if *cover != is && turned.is_pinned(*piece) {
            return Err(Rejection::Pinned(*piece));
        }
        for face in Face::BOTH {
            if cover.on(face) != is.on(face) {
                if turned.is_joined(*piece) {
                    return Err(Rejection::Joined(*piece));
                }
                if turned.has(*piece, cover_task(face)) {
                    return Err(Rejection::Glued(*piece));
                }
            }
        }
        if *cover != is {
            faces.push((*piece, *cover));
        }
    }
    if !faces.is_empty() {
        events.push(faces_changed(&turned, faces, false));
    }
    let after = throw.after(&events);
    for print in 0..throw.prints.len() as u8 {
        let now = used(&after, print);
        if now > used(throw, print) {
            within_stock(throw, print, now)?;
        }
    }
    if throw.wishes != Some(*wishes) {
        events.push(Event::Wished { wishes: *wishes });
    }
    if events.is_empty() {
        return Err(Rejection::Nothing);
    }
    Ok(events)
}

/// The joined piece a square goes with, or what was named itself.
fn unit_of(throw: &Throw, piece: Rect) -> Rect {
    let mut units = loose_units(throw).into_iter();
    units.find(|u| u.holds(piece)).unwrap_or(piece)
}

/// What is exchanged when two pieces are named: the pieces they are part of, and where
/// one is the larger, all that lies in the place of that shape round the other.
fn two_alike(throw: &Throw, a: Rect, b: Rect) -> (Rect, Rect) {
    let (one, other) = (unit_of(throw, a), unit_of(throw, b));
    let round = |large: Rect, small: Rect| {
        let places = places_for(throw.assembly(), large);
        places.into_iter().find(|p| p.holds(small)).unwrap_or(small)
    };
    match one.count().cmp(&other.count()) {
        std::cmp::Ordering::Less => (round(other, one), other),
        std::cmp::Ordering::Greater => (one, round(one, other)),
        std::cmp::Ordering::Equal => (one, other),
    }
}

/// Pieces that exchange places: each loose, of one shape and kind, each place once.
fn check_moves(throw: &Throw, moves: &[(Rect, Rect)]) -> Result<(), Rejection> {
    let (mut left, mut taken) = (HashSet::new(), HashSet::new());
    let mut of_kind: HashMap<Rect, HashSet<Rect>> = HashMap::new();
    for (from, to) in moves {
        if !throw.assembly().knows(*from) || !throw.assembly().knows(*to) {
            return Err(Rejection::NoSuchPiece(*from));
        }
        let squares = from.is_square() && to.is_square();
        if !squares {
            let places = of_kind
                .entry(*from)
                .or_insert_with(|| places_for(throw.assembly(), *from).into_iter().collect());
            if !places.contains(to) {
                return Err(Rejection::NotSwappable(*from, *to));
            }
        }
        if !is_loose(throw, *from) {
            return Err(Rejection::NotSwappable(*from, *to));
        }
        for square in from.squares() {
            if throw.is_pinned(square) {
                return Err(Rejection::Pinned(square));
            }
            if !left.insert(square) {
                return Err(Rejection::Layout(square));
            }
        }
        for square in to.squares() {
            if !taken.insert(square) {
                return Err(Rejection::Layout(square));
            }
        }
    }
    match left.symmetric_difference(&taken).next() {
        Some(square) => Err(Rejection::Layout(*square)),
        None => Ok(()),
    }
}

/// Whether a piece may be turned where it lies: a loose square or a stitched four by
/// quarters, any other loose joined piece by halves.
fn may_turn(throw: &Throw, piece: Rect, quarters: u8) -> Result<(), Rejection> {
    may_turn_if(throw, piece, quarters, || is_loose(throw, piece))
}

/// The same where it is known whether the piece lies loose.
pub(crate) fn may_turn_if(
    throw: &Throw,
    piece: Rect,
    quarters: u8,
    lies_loose: impl Fn() -> bool,
) -> Result<(), Rejection> {
    if !throw.assembly().knows(piece) {
        return Err(Rejection::NoSuchPiece(piece));
    }
    // Four squares in a line are as many, but only a square stays in its place.
    let quarter = piece.rows == piece.cols && (piece.is_square() || throw.has(piece, Task::Stitch));
    let opened = throw.work(piece).is_some_and(|w| w.opened.is_some());
    let sewn = piece.is_square() || throw.begun(piece);
    if quarters.is_multiple_of(4)
        || piece.rows > 2
        || piece.cols > 2
        || opened
        || !sewn
        || !lies_loose()
        || (quarters % 2 == 1 && !quarter)
    {
        return Err(Rejection::NotTurnable(piece));
    }
    match piece.squares().find(|s| throw.is_pinned(*s)) {
        Some(square) => Err(Rejection::Pinned(square)),
        None => Ok(()),
    }
}

pub(super) fn flip(throw: &Throw, pieces: &[Rect]) -> Result<Vec<Event>, Rejection> {
    let pieces = known_squares(throw, pieces)?;
    for piece in &pieces {
        if throw.is_joined(*piece) {
            return Err(Rejection::Joined(*piece));
        }
        if throw.is_pinned(*piece) {
            return Err(Rejection::Pinned(*piece));
        }
    }
    Ok(vec![Event::Flipped { pieces }])
}

/// Fours that hold one of these pieces and were turned by a quarter: they are laid
/// back as they were sewn before anything in them is opened.
pub(super) fn laid_back(throw: &Throw, pieces: &[Rect]) -> Vec<(Rect, u8)> {
    let blocks = throw.assembly().blocks();
    let turned = |b: &Rect| throw.is_turned(*b) && pieces.iter().any(|p| b.holds(*p));
    blocks
        .into_iter()
        .filter(turned)
        .map(|block| (block, 3))
        .collect()
}

/// Where a square lies once the four round it is laid back.
pub(super) fn back_in(square: Rect, turned: &[(Rect, u8)]) -> Rect {
    let Some((block, quarters)) = turned.iter().find(|(b, _)| b.holds(square)) else {
        return square;
    };
    let squares: Vec<Rect> = block.squares().collect();
    let at = squares.iter().position(|s| *s == square);
    (0..squares.len())
        .find(|n| Some(source(*n, (block.rows, block.cols), *quarters)) == at)
        .map_or(square, |n| squares[n])
}

pub(super) fn set_cloth(
    throw: &Throw,
    prints: &[Print],
    denims: &[Denim],
) -> Result<Vec<Event>, Rejection> {
    check_cloth(prints, denims)?;
    check_names(prints, denims, Some(throw))?;
    for (i, print) in prints.iter().enumerate() {
        // Of what size its squares are is said where they are put on the pile.
        let was = throw.prints.get(i).and_then(|was| was.patch);
        let known = throw.prints.iter().any(|was| was.patch == print.patch);
        if print.patch != was && (used(throw, i as u8) > 0 || print.patch.is_some() && !known) {
            return Err(Rejection::PackMixed(i as u8));
        }
    }
    for cover in throw.covers() {
        let missing = [cover.front, cover.back]
            .into_iter()
            .flatten()
            .any(|p| usize::from(p) >= prints.len());
        if missing || (cover.denim > 0 && usize::from(cover.denim) >= denims.len()) {
            return Err(Rejection::Cloth);
        }
    }
    // How many there are is what she counts, though fewer than are placed: that they are short is told.
    let (prints, denims) = (prints.to_vec(), denims.to_vec());
    Ok(vec![Event::ClothChanged { prints, denims }])
}

/// Take another denim for squares that are not cut yet, or turn it over; those that are cut
/// stay as they are.
pub(super) fn set_denim(
    throw: &Throw,
    pieces: &[Rect],
    denim: u8,
    wrong_side_up: bool,
) -> Result<Vec<Event>, Rejection> {
    if usize::from(denim) >= throw.denims.len().max(1) {
        return Err(Rejection::Cloth);
    }
    // What is cut stays as it is; the rest is changed.
    let squares = known_squares(throw, pieces)?;
    let faces: Vec<(Rect, Cover)> = squares
        .iter()
        .filter(|piece| !throw.has(**piece, Task::Cut))
        .map(|piece| {
            let cover = Cover {
                denim,
                wrong_side_up,
                ..throw.cover(*piece)
            };
            (*piece, cover)
        })
        .collect();
    match squares.first().filter(|_| faces.is_empty()) {
        Some(piece) => Err(Rejection::DenimCut(*piece)),
        None => Ok(vec![faces_changed(throw, faces, true)]),
    }
}

/// Share the squares that are not cut yet out over the denims there are: as wished for where the
/// wishes say it, else each keeps its denim while there is enough of it. What was cut, pinned or
/// chosen by hand stays.
pub(super) fn share_denims(throw: &Throw) -> Result<Vec<Event>, Rejection> {
    let wished = throw.wishes.unwrap_or_default();
    let denims = match wished.choose_denims() {
        true => wished.denims,
        false => Some(DenimWish::Any),
    };
    shared(throw, Wishes { denims, ..wished }).map(|event| vec![event])
}

/// The same for a throw whose denims nobody has decided on yet: all of its squares are of one denim,
/// none of them cut or chosen by hand, and the pile gives others too. Like denims then lie apart.
pub(super) fn share_undecided(throw: &Throw) -> Option<Event> {
    let covers = throw.covers();
    let first = covers.first()?.denim;
    let mut squares = throw.assembly().whole().squares();
    let others = throw.pile.values().any(|heap| match heap.makes {
        Use::Denim { denim } => denim.is_some_and(|denim| denim != first),
        Use::Fabric { .. } => false,
    });
    let is_decided = !others
        || throw.wishes.is_some()
        || covers.iter().any(|cover| cover.denim != first)
        || squares.any(|s| throw.is_denim_by_hand(s) || throw.has(s, Task::Cut));
    if is_decided {
        return None;
    }
    let denims = Some(DenimWish::Apart);
    let wishes = Wishes {
        denims,
        ..Wishes::default()
    };
    shared(throw, wishes).ok()
}

fn shared(throw: &Throw, wishes: Wishes) -> Result<Event, Rejection> {
    let squares = throw.assembly().whole().squares();
    let dealt = squares.zip(dealt(throw, wishes));
    let changed = dealt.filter(|(square, denim)| throw.cover(*square).denim != *denim);
    let faces: Vec<(Rect, Cover)> = changed
        .map(|(square, denim)| {
            let cover = Cover {
                denim,
                ..throw.cover(square)
            };
            (square, cover)
        })
        .collect();
    match faces.is_empty() {
        true => Err(Rejection::Nothing),
        false => Ok(faces_changed(throw, faces, false)),
    }
}

/// Say how the faces are to look.
pub(super) fn wish(throw: &Throw, wishes: &Wishes) -> Result<Vec<Event>, Rejection> {
    check_wishes(throw, wishes)?;
    if throw.wishes == Some(*wishes) {
        return Err(Rejection::Nothing);
    }
    Ok(vec![Event::Wished { wishes: *wishes }])
}

/// Turn a piece where it lies.
pub(super) fn turn(throw: &Throw, piece: Rect, quarters: u8) -> Result<Vec<Event>, Rejection> {
    let piece = unit_of(throw, piece);
    may_turn(throw, piece, quarters)?;
    Ok(vec![Event::Turned {
        pieces: vec![(piece, quarters % 4)],
    }])
}

/// Pin places, or let them go.
pub(super) fn pin(throw: &Throw, pieces: &[Rect], pinned: bool) -> Result<Vec<Event>, Rejection> {
    let pieces = known_squares(throw, pieces)?
        .into_iter()
        .filter(|p| throw.is_pinned(*p) != pinned)
        .collect::<Vec<_>>();
    if pieces.is_empty() {
        return Err(Rejection::Nothing);
    }
    Ok(vec![Event::Pinned { pieces, pinned }])
}

/// Let two loose pieces change places.
pub(super) fn swap(throw: &Throw, a: Rect, b: Rect) -> Result<Vec<Event>, Rejection> {
    let (one, other) = two_alike(throw, a, b);
    if one == other {
        return Err(Rejection::NotSwappable(a, b));
    }
    let moves = vec![(one, other), (other, one)];
    check_moves(throw, &moves)?;
    Ok(vec![Event::Moved { moves }])
}
