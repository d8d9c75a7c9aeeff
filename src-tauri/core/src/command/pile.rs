//! The clothes pile: garments, cloth and packs, and cutting them up.

use crate::cloth::cutting::Cutting;
use crate::cloth::fabric::Print;
use crate::cloth::garments::{
    self, ClothEdges, Garment, GarmentKind, GarmentPart, GarmentStart, Guess, Knees, Piece, Precut,
    Source,
};
use crate::cloth::pairs;
use crate::cloth::pile::{Heap, Use};
use crate::cloth::steps::steps;
use crate::cloth::strips::strip_of;
use crate::cloth::ways::{self, CutWay};
use crate::cloth::weight::{Cloth, parse_weight};
use crate::command::action::*;
use crate::command::check::clean_name;
use crate::command::rejection::Rejection;
use crate::measure::{Count, Length, System, inches, zero};
use crate::plan::Plan;
use crate::plan::assembly::Rect;
use crate::throw::account::{ClothAccount, account, how_for, layout};
use crate::throw::event::Event;
use crate::throw::facts::{Pieced, StripsCut, Went};
use crate::throw::state::Throw;
use crate::throw::tasks::Task;
use std::collections::BTreeSet;

/// Smallest patch, 1 in: what is stitched round leaves nothing of a smaller one (our judgement).
fn least_patch() -> Length {
    inches(1)
}

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
    let mut events: Vec<Event> = settle_patch(throw, makes, None)?.into_iter().collect();
    events.extend(add_heap(throw, Source::Cloth(garment), makes)?);
    Ok(events)
}

/// What is said of a fabric whose squares are to be cut yet, where that is new.
fn to_be_cut(throw: &Throw, makes: Use) -> Option<Event> {
    said_of(throw, makes, |print| print.uncut = true)
}

/// What is said of a fabric from now on, where that is new.
fn said_of(throw: &Throw, makes: Use, change: impl Fn(&mut Print)) -> Option<Event> {
    let Use::Fabric { print } = makes else {
        return None;
    };
    let mut prints = throw.prints.clone();
    change(prints.get_mut(usize::from(print))?);
    (prints != throw.prints).then(|| Event::ClothChanged {
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
    let mut events: Vec<Event> = settle_patch(throw, makes, None)?.into_iter().collect();
    events.extend(add_heap(throw, Source::Cloth(garment), makes)?);
    // Said without its edges it is as it was said before there was a step for it.
    let after = throw.after(&events);
    events.extend(edges.and_then(|_| to_be_cut(&after, makes)));
    Ok(events)
}

/// A fabric is of patches of this side from now on, or of whole squares; refused where squares of
/// another size are counted, glued on or lie on the pile.
fn settle_patch(
    throw: &Throw,
    makes: Use,
    patch: Option<Length>,
) -> Result<Option<Event>, Rejection> {
    let Use::Fabric { print: n } = makes else {
        return Ok(None);
    };
    let print = throw.prints.get(usize::from(n)).ok_or(Rejection::Cloth)?;
    if print.patch == patch {
        return Ok(None);
    }
    let whole = throw.assembly().whole();
    let glued = whole
        .squares()
        .any(|s| throw.glued_on(s).contains(&Some(n)));
    let heaps = throw.pile.values().any(|heap| heap.makes == makes);
    if print.stock.is_some_and(|stock| stock > 0) || glued || heaps {
        return Err(Rejection::PackMixed(n));
    }
    Ok(said_of(throw, makes, |print| {
        print.patch = patch;
        print.uncut &= patch.is_none();
    }))
}

/// Whether a plan holds every patch of the throw clear of its laps.
pub(super) fn check_patches(throw: &Throw, plan: &Plan) -> Result<(), Rejection> {
    let most = plan.most_patch();
    let patches = throw.prints.iter().filter_map(|print| print.patch);
    match patches.max().filter(|side| *side > most) {
        Some(side) => Err(Rejection::PatchCaught { side, most }),
        None => Ok(()),
    }
}

/// Put squares bought ready cut on the pile. Larger ones are cut down; smaller ones of fabric are
/// patches where they lie clear of the laps, and else of no use: a lap would hold their edges in
/// places only.
pub(super) fn add_pack(
    throw: &Throw,
    (side, count): (Length, Count),
    makes: Use,
    mixed: bool,
    name: &str,
) -> Result<Vec<Event>, Rejection> {
    if count == 0 || count > MOST_SQUARES {
        return Err(Rejection::ManySquares { most: MOST_SQUARES });
    }
    let wanted = throw.plan.side;
    let most = throw.plan.most_patch();
    let is_patch = side < wanted && !makes.is_denim() && side >= least_patch() && side <= most;
    if side < wanted && !is_patch {
        return Err(Rejection::PackSmall {
            side,
            wanted,
            fabric: !makes.is_denim(),
            most,
        });
    }
    let pack = Precut {
        name: clean_name(name)?,
        side,
        count,
    };
    let mut events: Vec<Event> = settle_patch(throw, makes, is_patch.then_some(side))?
        .into_iter()
        .collect();
    events.extend(add_heap(throw, Source::Precut(pack), makes)?);
    if side > wanted {
        events.extend(to_be_cut(&throw.after(&events), makes));
    }
    if mixed {
        let after = throw.after(&events);
        events.extend(said_of(&after, makes, |print| print.mixed = true));
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
    // Whoever corrects an outline has the question where it is worn before her.
    heap.worn_unsaid.remove(&index);
    let how = how_for(throw, &heap);
    // A way that gives no more on the new outline is let go.
    heap.ways
        .retain(|i, way| *i != index || is_worth_it(outline, &how, *way));
    Ok(set_heap(throw, (n, index), heap))
}

/// A heap changed in one of its pieces.
fn set_heap(throw: &Throw, (n, index): (u16, u8), heap: Heap) -> Vec<Event> {
    let mut events = vec![Event::HeapSet { n, heap }];
    if throw.begun_pieces.contains_key(&(n, index)) {
        // The lines that are done were those of another outline, or of another way to cut it.
        events.push(Event::PieceBegun {
            n,
            piece: index,
            lines: Count::NONE,
            strips: Count::NONE,
        });
    }
    events
}

/// Cut a piece another way than the plain one, where that gives more squares; or the plain way
/// again.
pub(super) fn cut_by(
    throw: &Throw,
    (n, index): (u16, u8),
    way: CutWay,
) -> Result<Vec<Event>, Rejection> {
    let mut heap = uncut(throw, n, index)?.clone();
    let nth = usize::from(index);
    let Source::Cloth(garment) = &heap.from else {
        return Err(Rejection::Pile);
    };
    let piece = garment.pieces.get(nth).ok_or(Rejection::Pile)?;
    let how = how_for(throw, &heap);
    if way == heap.way(nth) || !is_worth_it(piece, &how, way) {
        return Err(Rejection::Nothing);
    }
    match way.is_plain() {
        true => heap.ways.remove(&index),
        false => heap.ways.insert(index, way),
    };
    Ok(set_heap(throw, (n, index), heap))
}

/// Whether a way gives more than the plain one, and halves more than whole squares alone.
fn is_worth_it(piece: &Piece, how: &Cutting, way: CutWay) -> bool {
    let squares = |way| ways::squares(piece, how, way);
    let bare = way.with_halves(false);
    let more = bare.is_plain() || squares(bare) > squares(CutWay::PLAIN);
    more && (!way.pieced || squares(way) > squares(bare))
}

/// Most back pockets of one garment.
const MOST_POCKETS: usize = 4;
/// Most pieces of one garment.
const MOST_PIECES: usize = 50;

/// Lay a back pocket or the waistband of jeans flat as a piece of its own.
pub(super) fn add_part(throw: &Throw, n: u16, part: GarmentPart) -> Result<Vec<Event>, Rejection> {
    let mut heap = throw.pile.get(&n).ok_or(Rejection::Pile)?.clone();
    let Source::Cloth(garment) = &mut heap.from else {
        return Err(Rejection::Pile);
    };
    let count = |part| garment.pieces.iter().filter(|p| p.part == part).count();
    let most = match part {
        GarmentPart::Pocket => MOST_POCKETS,
        GarmentPart::Waistband => 1,
        _ => return Err(Rejection::Pile),
    };
    let legs = count(GarmentPart::LeftLeg) + count(GarmentPart::RightLeg);
    if legs == 0 || count(part) >= most || garment.pieces.len() >= MOST_PIECES {
        return Err(Rejection::Pile);
    }
    let start = garment.start.unwrap_or(GarmentStart {
        kind: GarmentKind::MensJeans,
        size: None,
        knees: Knees::Unknown,
        system: System::Inch,
    });
    let piece = garments::small_part(start, part).ok_or(Rejection::Pile)?;
    garment.pieces.push(piece);
    heap.counted.push(None);
    Ok(vec![Event::HeapSet { n, heap }])
}

/// Give the other half of a pair the outline of this one, mirrored. Where that half is worn is
/// to be said.
pub(super) fn mirror_piece(throw: &Throw, n: u16, index: u8) -> Result<Vec<Event>, Rejection> {
    let heap = throw.pile.get(&n).ok_or(Rejection::Pile)?;
    let Source::Cloth(garment) = &heap.from else {
        return Err(Rejection::Pile);
    };
    let index = usize::from(index);
    let found = pairs::other_half(garment, index).ok_or(Rejection::Pile)?;
    let other = u8::try_from(found).map_err(|_| Rejection::Pile)?;
    let (from, to) = (&garment.pieces[index], &garment.pieces[found]);
    let system = garment.start.map_or(System::Inch, |start| start.system);
    let outline = pairs::taken_over(from, to, system);
    if outline == *to {
        return Err(Rejection::Nothing);
    }
    let mut events = set_piece(throw, n, other, &outline)?;
    if let Some(Event::HeapSet { heap, .. }) = events.first_mut() {
        heap.worn_unsaid.insert(other);
    }
    Ok(events)
}

/// The worn places of a piece are marked as they are.
pub(super) fn worn_said(throw: &Throw, n: u16, index: u8) -> Result<Vec<Event>, Rejection> {
    let mut heap = throw.pile.get(&n).ok_or(Rejection::Pile)?.clone();
    if !heap.worn_unsaid.remove(&index) {
        return Err(Rejection::Nothing);
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
    if let Use::Fabric { print } = makes
        && makes != heap.makes
    {
        let own = match &heap.from {
            Source::Precut(pack) if pack.side < throw.plan.side => Some(pack.side),
            _ => None,
        };
        if throw
            .prints
            .get(usize::from(print))
            .is_some_and(|p| p.patch != own)
        {
            return Err(Rejection::PackMixed(print));
        }
    }
    let small = |from: &Source| matches!(from, Source::Precut(pack) if pack.side < throw.plan.side);
    if makes.is_denim() && !heap.makes.is_denim() && small(&heap.from) {
        return Err(Rejection::Cloth);
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

/// What came out of a piece.
pub(super) struct CameOut<'a> {
    /// Good squares.
    pub squares: Count,
    /// Of these, how many of each strip from the hem up; empty where it was not said.
    pub by_strip: &'a [Count],
    /// Of the squares, those pieced of two halves.
    pub pieced: Count,
    /// Binding strips.
    pub strips: Option<Count>,
}

/// A piece is cut up, after its outline was corrected where one is given.
pub(super) fn cut_piece(
    throw: &Throw,
    (n, index): (u16, u8),
    came: &CameOut<'_>,
    outline: Option<&Piece>,
) -> Result<Vec<Event>, Rejection> {
    let squares = came.squares;
    if let Some(outline) = outline {
        let mut events = set_piece(throw, n, index, outline)?;
        let after = throw.after(&events);
        events.extend(cut_piece(&after, (n, index), came, None)?);
        return Ok(events);
    }
    let heap = uncut(throw, n, index)?;
    // Three times what is expected is a slip of the finger.
    let expected = heap.expected(usize::from(index), &throw.plan);
    let most = expected
        .get()
        .saturating_mul(3)
        .saturating_add(20)
        .min(MOST_SQUARES);
    if squares > most {
        return Err(Rejection::ManySquares { most });
    }
    let is_denim = heap.makes.is_denim();
    if came.pieced > squares
        || came.pieced > 0 && (!is_denim || !heap.way(usize::from(index)).pieced)
    {
        return Err(Rejection::Pieced);
    }
    let (went, pieced) = went(throw, (n, index), heap, came);
    let mut events = vec![Event::PieceCut {
        n,
        piece: index,
        squares,
        went: Some(went),
        strips: came_out(throw, heap, came.strips)?,
        pieced,
    }];
    if let Use::Fabric { print } = heap.makes {
        events.extend(cut_for(throw, print, came.squares));
    }
    Ok(events)
}

/// Where the squares of a piece go: denim squares to the places they were cut for, those of a
/// strip in the order of the strip, and then those pieced of halves. What has no place there goes to
/// open places of the heap's denim that no piece is cut for. What came out beyond what was expected
/// goes to places meant for other pieces as well. The rest is spare.
fn went(throw: &Throw, at: (u16, u8), heap: &Heap, came: &CameOut<'_>) -> (Went, Option<Pieced>) {
    let Use::Denim { denim } = heap.makes else {
        return (throw.would_go(heap.makes, came.squares), None);
    };
    let cloth = account(throw);
    let meant = cloth.places.get(&at).map_or(&[][..], Vec::as_slice);
    // The piece is laid out only where it is said strip by strip what came out.
    let strips = match came.by_strip {
        [] => Vec::new(),
        _ => squares_by_strip(throw, at, heap, &cloth),
    };
    let given = cloth.piece(at.0, usize::from(at.1));
    // The first places are those of whole squares.
    let whole = (given.squares - given.pieced).get() as usize;
    let (whole, of_halves) = meant.split_at(whole.min(meant.len()));
    let mut places = Vec::new();
    if !strips.is_empty() && came.by_strip.len() == strips.len() {
        let mut first = 0;
        for (of_strip, good) in strips.iter().zip(came.by_strip) {
            let end = whole.len().min(first + *of_strip as usize);
            let own = &whole[whole.len().min(first)..end];
            places.extend(own.iter().take(good.get() as usize).copied());
            first += *of_strip as usize;
        }
    } else {
        places.extend_from_slice(whole);
    }
    let wanted = came.squares.get() as usize;
    places.truncate(wanted - came.pieced.get() as usize);
    let pieced = of_halves.iter().take(came.pieced.get() as usize);
    let mut pieced: Vec<Rect> = pieced.copied().collect();
    places.extend_from_slice(&pieced);
    let others: BTreeSet<Rect> = cloth.places.values().flatten().copied().collect();
    let free = throw.uncut(denim).filter(|s| !others.contains(s));
    places.extend(free.take(wanted.saturating_sub(places.len())));
    let expected = given.squares.get() as usize;
    let known: BTreeSet<Rect> = places.iter().copied().collect();
    let later = throw.uncut(denim);
    let later = later.filter(|s| !known.contains(s) && !meant.contains(s));
    let beyond = wanted.saturating_sub(expected.max(known.len()));
    places.extend(later.take(beyond));
    places.truncate(wanted);
    let spares = came.squares - Count::at_most(places.len() as u32);
    // Pieced squares beyond those expected went to the last places, or are spare.
    let more = (came.pieced.get() as usize).saturating_sub(pieced.len());
    let others = places.iter().rev().filter(|place| !pieced.contains(place));
    let others: Vec<Rect> = others.take(more).copied().collect();
    pieced.extend(others);
    let spare = came.pieced - Count::at_most(pieced.len() as u32);
    let pieced = (came.pieced > 0).then_some(Pieced {
        places: pieced,
        spares: std::cmp::min(spare, spares),
        lap: throw.plan.lap,
    });
    (Went::Squares { places, spares }, pieced)
}

/// How many squares each strip of a piece is to give.
fn squares_by_strip(
    throw: &Throw,
    (n, index): (u16, u8),
    heap: &Heap,
    cloth: &ClothAccount,
) -> Vec<u32> {
    let index = usize::from(index);
    match &heap.from {
        Source::Cloth(garment) => garment.pieces.get(index).map_or_else(Vec::new, |piece| {
            let laid = layout(throw, heap, (index, piece), cloth.piece(n, index).strips);
            let strips = laid.cuts.strips.iter();
            strips.map(|s| s.squares.len() as u32).collect()
        }),
        Source::Precut(_) => Vec::new(),
    }
}

/// Binding strips that came out of a piece of a heap, if any.
fn came_out(
    throw: &Throw,
    heap: &Heap,
    strips: Option<Count>,
) -> Result<Option<StripsCut>, Rejection> {
    let Some(count) = strips.filter(|n| *n > 0) else {
        return Ok(None);
    };
    if !heap.makes.is_denim() {
        return Err(Rejection::Cloth);
    }
    if count > MOST_SQUARES {
        return Err(Rejection::ManySquares { most: MOST_SQUARES });
    }
    let strip = strip_of(&throw.plan, count.get());
    Ok(Some(StripsCut {
        count,
        width: strip.width,
        length: strip.length,
    }))
}

/// The first lines of a piece's cutting list are done; the piece then gives the strips it was
/// to give when its first line was done, but those the plan wants no more.
pub(super) fn cut_lines(
    throw: &Throw,
    (n, index): (u16, u8),
    lines: Count,
) -> Result<Vec<Event>, Rejection> {
    let heap = uncut(throw, n, index)?;
    let Source::Cloth(garment) = &heap.from else {
        return Err(Rejection::Pile);
    };
    let nth = usize::from(index);
    let piece = garment.pieces.get(nth).ok_or(Rejection::Pile)?;
    let strips = account(throw).piece(n, nth).strips;
    let laid = layout(throw, heap, (nth, piece), strips);
    let most = Count::at_most(steps(&laid.lying, &laid.cuts).len() as u32);
    Ok(vec![Event::PieceBegun {
        n,
        piece: index,
        lines: std::cmp::min(lines, most),
        strips,
    }])
}
