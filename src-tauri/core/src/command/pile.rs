//! The clothes pile: garments, cloth and packs, and cutting them up.

use crate::cloth::garments::{
    self, ClothEdges, Garment, GarmentStart, Guess, Piece, Precut, Source,
};
use crate::cloth::pile::{Heap, Use};
use crate::cloth::weight::{Cloth, parse_weight};
use crate::command::action::*;
use crate::command::check::clean_name;
use crate::command::rejection::Rejection;
use crate::measure::{Count, Length, System, zero};
use crate::throw::event::Event;
use crate::throw::state::Throw;
use crate::throw::tasks::Task;

fn add_heap(throw: &Throw, from: Source, makes: Use) -> Result<Vec<Event>, Rejection> {
    if !throw.has_cloth(makes) {
        return Err(Rejection::Cloth);
    }
    let cloth = match makes {
        Use::Denim { .. } => Cloth::denim(),
        Use::Fabric { .. } => Cloth::cotton(),
    };
    if throw.pile.len() >= MOST_HEAPS {
        return Err(Rejection::Pile);
    }
    let n = throw
        .pile
        .keys()
        .next_back()
        .map_or(1, |last| last.saturating_add(1));
    Ok(vec![Event::HeapSet {
        n,
        heap: Heap::new(from, makes, cloth),
    }])
}

/// The heap, if it has such a piece and that is not cut up yet.
fn uncut(throw: &Throw, n: u16, index: u8) -> Result<&Heap, Rejection> {
    let heap = throw.pile.get(&n).ok_or(Rejection::Pile)?;
    match heap.counted.get(usize::from(index)) {
        Some(None) => Ok(heap),
        Some(Some(_)) => Err(Rejection::CutUp),
        None => Err(Rejection::Pile),
    }
}

/// Put a garment on the pile with a starting outline.
pub(super) fn add_garment(
    throw: &Throw,
    start: GarmentStart,
    makes: Use,
    name: &str,
) -> Result<Vec<Event>, Rejection> {
    let garment = Garment {
        name: clean_name(name)?,
        pieces: start.pieces(Guess::Typical),
        start: Some(start),
    };
    add_heap(throw, Source::Cloth(garment), makes)
}

/// What is said of a fabric whose squares are to be cut yet, where that is new.
fn to_be_cut(throw: &Throw, makes: Use) -> Option<Event> {
    let Use::Fabric { print } = makes else {
        return None;
    };
    let mut prints = throw.prints.clone();
    let print = prints.get_mut(usize::from(print)).filter(|p| !p.uncut)?;
    print.uncut = true;
    Some(Event::ClothChanged {
        prints,
        denims: throw.denims.clone(),
    })
}

/// Put a rectangle of cloth on the pile.
pub(super) fn add_cloth(
    throw: &Throw,
    (width, length): (Length, Length),
    edges: Option<ClothEdges>,
    makes: Use,
    name: &str,
) -> Result<Vec<Event>, Rejection> {
    let piece = match edges {
        Some(edges) => garments::trimmed(width, length, edges).ok_or(Rejection::Edges)?,
        None => garments::yardage(width, length),
    };
    piece.check_measured()?;
    let garment = Garment {
        name: clean_name(name)?,
        pieces: vec![piece],
        start: None,
    };
    let mut events = add_heap(throw, Source::Cloth(garment), makes)?;
    // Said without its edges it is as it was said before there was a step for it.
    events.extend(edges.and_then(|_| to_be_cut(throw, makes)));
    Ok(events)
}

/// Put squares bought ready cut on the pile. Larger ones are cut down; smaller ones are of no
/// use, since only the laps hold the edges of a fabric square.
pub(super) fn add_pack(
    throw: &Throw,
    side: Length,
    count: Count,
    makes: Use,
    name: &str,
) -> Result<Vec<Event>, Rejection> {
    if count == 0 || count > MOST_SQUARES {
        return Err(Rejection::ManySquares { most: MOST_SQUARES });
    }
    let wanted = throw.plan.side;
    if side < wanted {
        return Err(Rejection::PackSmall {
            side,
            wanted,
            fabric: !makes.is_denim(),
        });
    }
    let pack = Precut {
        name: clean_name(name)?,
        side,
        count,
    };
    let mut events = add_heap(throw, Source::Precut(pack), makes)?;
    if side > wanted {
        events.extend(to_be_cut(throw, makes));
    }
    Ok(events)
}

/// Correct the outline of a piece that is not cut up yet.
pub(super) fn set_piece(
    throw: &Throw,
    n: u16,
    index: u8,
    outline: &Piece,
) -> Result<Vec<Event>, Rejection> {
    outline.check_measured()?;
    let mut heap = uncut(throw, n, index)?.clone();
    if let Source::Cloth(garment) = &mut heap.from
        && let Some(piece) = garment.pieces.get_mut(usize::from(index))
    {
        *piece = outline.clone();
    }
    Ok(vec![Event::HeapSet { n, heap }])
}

/// What is said of a heap's cloth.
pub(super) struct Description<'a> {
    /// Its weight as typed.
    pub weight: &'a str,
    /// A bare number is in this system.
    pub system: System,
    /// It stretches.
    pub stretch: bool,
    /// It was washed before.
    pub washed: bool,
    /// Squares are cut so much larger.
    pub trimming: Length,
    /// What the heap is for, if that is to change.
    pub makes: Option<Use>,
}

/// Say what is known of a heap's cloth.
pub(super) fn describe_cloth(
    throw: &Throw,
    n: u16,
    said: Description<'_>,
) -> Result<Vec<Event>, Rejection> {
    let heap = throw.pile.get(&n).ok_or(Rejection::Pile)?;
    let makes = said.makes.unwrap_or(heap.makes);
    if !throw.has_cloth(makes) {
        return Err(Rejection::Cloth);
    }
    if !heap.may_make(makes) {
        return Err(Rejection::CutUp);
    }
    let weight = parse_weight(said.weight, said.system).ok_or(Rejection::Weight)?;
    let cloth = Cloth {
        weight,
        stretch: said.stretch,
        washed: said.washed,
        ..heap.cloth
    };
    cloth.check().map_err(|_| Rejection::Weight)?;
    if said.trimming < zero() || said.trimming > throw.plan.side {
        return Err(Rejection::CutLarger);
    }
    let heap = Heap {
        makes,
        cloth,
        trimming: said.trimming,
        ..heap.clone()
    };
    Ok(vec![Event::HeapSet { n, heap }])
}

/// Take a heap off the pile.
pub(super) fn take_heap(throw: &Throw, n: u16) -> Result<Vec<Event>, Rejection> {
    let heap = throw.pile.get(&n).ok_or(Rejection::Pile)?;
    if heap.is_cut() {
        return Err(Rejection::CutUp);
    }
    Ok(vec![Event::HeapTaken { n }])
}

/// The squares whose fabric is cut with so many squares of a print, if it is a step for any.
fn cut_for(throw: &Throw, print: u8, squares: Count) -> Option<Event> {
    let mut left = squares.get();
    let mut pieces = Vec::new();
    for square in throw.fabric_to_cut(print) {
        let takes = throw.cover(square).layers().saturating_sub(1);
        if takes > left {
            break;
        }
        // A square is covered once it is cut; its fabric may wait for it.
        if throw.next(square) == Some(Task::CutFabric) {
            left -= takes;
            pieces.push(square);
        }
    }
    (!pieces.is_empty()).then_some(Event::Done {
        task: Task::CutFabric,
        pieces,
        made: Vec::new(),
    })
}

/// A piece is cut up, after its outline was corrected where one is given.
pub(super) fn cut_piece(
    throw: &Throw,
    n: u16,
    index: u8,
    squares: Count,
    outline: Option<&Piece>,
) -> Result<Vec<Event>, Rejection> {
    if let Some(outline) = outline {
        let mut events = set_piece(throw, n, index, outline)?;
        events.extend(cut_piece(&throw.after(&events), n, index, squares, None)?);
        return Ok(events);
    }
    let heap = uncut(throw, n, index)?;
    // Three times what is expected is a slip of the finger.
    let expected = heap.expected(usize::from(index), throw.plan.side);
    let most = expected
        .get()
        .saturating_mul(3)
        .saturating_add(20)
        .min(MOST_SQUARES);
    if squares > most {
        return Err(Rejection::ManySquares { most });
    }
    let mut events = vec![Event::PieceCut {
        n,
        piece: index,
        squares,
        went: Some(throw.would_go(heap.makes, squares)),
    }];
    if let Use::Fabric { print } = heap.makes {
        events.extend(cut_for(throw, print, squares));
    }
    Ok(events)
}
