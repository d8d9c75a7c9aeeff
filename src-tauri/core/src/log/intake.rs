//! Whether a record from outside may come in.
//!
//! Lapwork wrote the files in its data folder, but perhaps not a file that the maker imports: its
//! checksums may agree although it contains ten thousand squares across. [`check`] accepts only
//! what can be folded and shown without harm: counts, lengths, words and lists within limits, and
//! pieces that exist when something happens to them. A figure beyond the bounds of its type is
//! refused before that ([`crate::measure::bounds`]). [`check`] does not ask whether today's rules
//! would have allowed a step, since an older Lapwork may have had other rules; [`follows`] does,
//! for what is merged.

use crate::cloth::fabric::Cover;
use crate::cloth::garments::Source;
use crate::cloth::pile::{Heap, Use};
use crate::command::{
    LONGEST_CAPTION, LONGEST_NAME, LONGEST_NOTE, MOST_HEAPS, MOST_SQUARES, check_cloth, clean_name,
    may_do,
};
use crate::log::journal::{Entry, FormatError, Journal, Read, Refusal, What};
use crate::measure::{Length, in_nm};
use crate::plan::assembly::Rect;
use crate::plan::{MOST, Stitch, longest_side};
use crate::throw::account::MOST_STRIPS;
use crate::throw::heritage::{DerivedLesson, Heritage, Lesson, MOST_LESSONS};
use crate::throw::tasks::Task;
use crate::throw::{Event, Item, Made, Throw, Time, Went};
use std::cell::Cell;
use std::collections::BTreeSet;

// Where the limits lie is our judgement, well beyond what any throw has.

/// Most entries of an imported record. Ticking the largest grid one by one stays below.
pub const MOST_ENTRIES: usize = 50_000;
/// Longest list in an event: every piece of the largest grid, twice.
const LONGEST_LIST: usize = 20_000;
/// Farthest time from 1970, the year 9999.
const FARTHEST: Time = 253_402_300_799_999;
/// Most steps that folding and checking a record may cost ([`Throw::effort`]). In a debug build a
/// million took about an eighth of a second where a worked grid of 60 × 60 was made again each time.
const MOST_EFFORT: u64 = 200_000_000;

/// Read an imported record.
///
/// # Errors
/// [`FormatError`]: what is wrong with it, as for any file; [`FormatError::Unknown`],
/// [`FormatError::Absurd`] or [`FormatError::TooMuch`].
pub fn read(bytes: &[u8]) -> Result<Read, FormatError> {
    read_within(bytes, MOST_EFFORT)
}

/// The same with so many steps.
fn read_within(bytes: &[u8], most: u64) -> Result<Read, FormatError> {
    spare(bytes)?;
    let mut left = most;
    let read = Journal::read_if(bytes, |so_far, entry| may(so_far, entry, &mut left))?;
    // What is not read would be lost when it is written again.
    let sound = String::from_utf8_lossy(&bytes[..read.sound]);
    let text = read.journal.text();
    let (mut given, mut kept) = (sound.lines().enumerate().skip(1), text.lines().skip(1));
    let other = given.find(|(_, line)| kept.next() != Some(*line));
    if let Some((i, _)) = other {
        return Err(FormatError::Unknown { line: i + 1 });
    }
    Ok(read)
}

/// Refuse too many entries and plans that cannot be, before anything is folded.
fn spare(bytes: &[u8]) -> Result<(), FormatError> {
    for (i, line) in bytes.split(|b| *b == b'\n').enumerate().skip(1) {
        let line_number = i + 1;
        let entry = std::str::from_utf8(line).ok().and_then(Entry::from_line);
        if let Some(What::Do(events)) = entry.map(|entry| entry.what) {
            for event in &events {
                if let Event::Begun { plan, .. } | Event::PlanChanged { plan, .. } = event
                    && plan.check().is_err()
                {
                    return Err(FormatError::Absurd { line: line_number });
                }
            }
        }
        if i > MOST_ENTRIES {
            return Err(FormatError::TooMuch { line: line_number });
        }
    }
    Ok(())
}

/// Whether everything a record says can be.
///
/// # Errors
/// [`FormatError::Absurd`] with the first line that cannot be.
pub fn check(journal: &Journal) -> Result<(), FormatError> {
    let mut entries = journal.entries().map(|(entry, _)| entry);
    let line = |entry: &Entry| {
        let n = usize::try_from(entry.n).unwrap_or(usize::MAX);
        n.saturating_add(1)
    };
    let first = entries.next().ok_or(FormatError::Empty)?;
    let mut left = u64::MAX;
    may(None, first, &mut left).map_err(|why| why.at(line(first)))?;
    let begun = Journal::from_first(first);
    let mut so_far = begun.ok_or_else(|| Refusal::Absurd.at(line(first)))?;
    for entry in entries {
        may(Some(&mut so_far), entry, &mut left).map_err(|why| why.at(line(entry)))?;
        let follows = so_far.follow(entry.clone());
        follows.ok_or_else(|| Refusal::Absurd.at(line(entry)))?;
    }
    Ok(())
}

/// Whether an entry may come in on the record so far, with as many steps as are left.
fn may(so_far: Option<&mut Journal>, entry: &Entry, left: &mut u64) -> Result<(), Refusal> {
    let few = |events: &[Event]| events.len() <= 100;
    let says = match (&entry.what, so_far) {
        (What::Do(events), None) => events.len() == 1 && within_limits(&events[0]),
        (What::Do(events), Some(journal)) => {
            if !(few(events) && events.iter().all(within_limits)) {
                return Err(Refusal::Absurd);
            }
            *left = left
                .checked_sub(journal.fold_up())
                .ok_or(Refusal::TooMuch)?;
            let throw = journal.throw();
            if events.len() > 1 {
                *left = left.checked_sub(throw.bulk()).ok_or(Refusal::TooMuch)?;
            }
            // To check it is to fold it once, and it is folded again where it stands.
            let (cost, most) = (Cell::new(0_u64), *left);
            let says = every(throw, events, false, &|throw, event| {
                cost.set(cost.get() + throw.effort(event));
                cost.get() <= most && known(throw, event)
            });
            *left = left.checked_sub(cost.get()).ok_or(Refusal::TooMuch)?;
            says
        }
        (What::Past(past), _) => match past.as_ref() {
            What::Do(events) => few(events) && events.iter().all(within_limits),
            _ => true,
        },
        (What::Undo(_) | What::Redo(_), _) => true,
    };
    match in_time(entry.at) && says {
        true => Ok(()),
        false => Err(Refusal::Absurd),
    }
}

fn in_time(at: Time) -> bool {
    (-FARTHEST..=FARTHEST).contains(&at)
}

/// Whether each of the events is so, on the throw as the ones before it left it; with its index
/// up to date where `indexed`, else without.
fn every(
    throw: &Throw,
    events: &[Event],
    indexed: bool,
    so: &dyn Fn(&Throw, &Event) -> bool,
) -> bool {
    let mut state: Option<Throw> = None;
    events.iter().enumerate().all(|(i, event)| {
        let fine = so(state.as_ref().unwrap_or(throw), event);
        if fine && i + 1 < events.len() {
            let state = state.get_or_insert_with(|| throw.clone());
            if !indexed {
                state.leave_index();
            }
            state.apply_in_turn(event, 0);
            if indexed {
                state.settle_index();
            }
        }
        fine
    })
}

/// Whether events follow on a throw: the pieces are there, and ready for what is done.
pub fn follows(throw: &Throw, events: &[Event]) -> bool {
    every(throw, events, true, &|t, e| {
        within_limits(e) && known(t, e) && ready(t, e)
    })
}

fn place(piece: Rect) -> bool {
    let along =
        |start: u16, len: u16| len > 0 && u32::from(start) + u32::from(len) <= u32::from(MOST);
    along(piece.row, piece.rows) && along(piece.col, piece.cols)
}

/// Whether no piece is in the list twice.
fn once(pieces: &[Rect]) -> bool {
    let each: BTreeSet<&Rect> = pieces.iter().collect();
    each.len() == pieces.len()
}

/// A length of something real.
fn real(length: Length) -> bool {
    (1..=in_nm(longest_side()) * 200).contains(&in_nm(length))
}

/// A width that stitching can have.
fn wide(stitch: Stitch) -> bool {
    (0..=in_nm(longest_side())).contains(&in_nm(stitch.width()))
}

/// A lesson of an older throw that can be shown.
fn lesson(lesson: &Lesson) -> bool {
    let size = |(w, h): (Length, Length)| real(w) && real(h);
    let derived = match lesson.derived {
        None => true,
        Some(DerivedLesson::Scrap { lap }) => real(lap),
        Some(DerivedLesson::Drift { mean, .. }) => in_nm(mean).abs() <= in_nm(longest_side()),
        Some(DerivedLesson::Whole { size: one, planned }) => size(one) && size(planned),
        Some(DerivedLesson::Washed { before, after, .. }) => size(before) && size(after),
        Some(DerivedLesson::Spoilt { .. } | DerivedLesson::More { .. }) => true,
    };
    note(&lesson.words) && derived
}

fn note(text: &str) -> bool {
    text.chars().count() <= LONGEST_NOTE
}

fn named(name: &str) -> bool {
    clean_name(name).is_ok_and(|clean| clean.chars().count() <= LONGEST_NAME)
}

/// Whether an event's figures, words and lists are within limits. It does not look at what they happen to.
fn within_limits(event: &Event) -> bool {
    let list = |pieces: &[Rect]| pieces.len() <= LONGEST_LIST && pieces.iter().all(|p| place(*p));
    let cloth = |prints: &[crate::cloth::fabric::Print], denims: &[crate::cloth::fabric::Denim]| {
        check_cloth(prints, denims).is_ok()
    };
    match event {
        Event::Begun {
            name,
            plan,
            prints,
            denims,
            after,
        } => {
            let left = |heritage: &Heritage| {
                // The covers must find their cloth.
                let found = |n: u8| usize::from(n) < prints.len();
                let covers = |c: &Cover| {
                    [c.front, c.back].into_iter().flatten().all(found)
                        && usize::from(c.denim) < denims.len().max(1)
                };
                named(&heritage.name)
                    && heritage.lessons.len() <= MOST_LESSONS
                    && heritage.lessons.iter().all(lesson)
                    && heritage.paces.len() <= Task::ALL.len()
                    && heritage.faces.len() <= plan.squares() as usize
                    && heritage.faces.iter().all(covers)
            };
            named(name)
                && plan.check().is_ok()
                && cloth(prints, denims)
                && after.as_deref().is_none_or(left)
        }
        Event::Renamed { name } => named(name),
        Event::Archived { .. } | Event::HeapTaken { .. } | Event::Gathered { .. } => true,
        Event::PlanChanged { plan, glued, .. } => {
            plan.check().is_ok() && glued.len() <= usize::from(u8::MAX) + 1
        }
        Event::FacesChanged { faces, again, .. } => {
            faces.len() <= LONGEST_LIST
                && faces.iter().all(|(piece, _)| place(*piece))
                && again.as_deref().is_none_or(list)
        }
        Event::ClothChanged { prints, denims } => cloth(prints, denims),
        // No piece is done twice by one step.
        Event::Done { task, pieces, made } => {
            let held = |made: &Made| real(made.lap) && wide(made.stitch);
            let settles = matches!(task, Task::Dot | Task::Pin | Task::Stitch);
            let each = made.is_empty() || settles && [1, pieces.len()].contains(&made.len());
            list(pieces) && once(pieces) && each && made.iter().all(held)
        }
        Event::SetAside { pieces, sizes } => {
            let each = [0, pieces.len()].contains(&sizes.len());
            list(pieces) && once(pieces) && each && sizes.iter().all(|(w, h)| real(*w) && real(*h))
        }
        Event::SquareMoved { from, to } => place(*from) && place(*to) && from != to,
        Event::SparesUsed { pieces, of, pieced } => {
            let each = [0, pieces.len()].contains(&of.len());
            list(pieces) && once(pieces) && each && list(pieced)
        }
        Event::Measured {
            piece,
            width,
            height,
        } => place(*piece) && real(*width) && real(*height),
        Event::Outlined { piece, measures } => {
            let s = measures.sides;
            place(*piece)
                && [s.top, s.right, s.bottom, s.left].into_iter().all(real)
                && measures.diagonals.is_none_or(|(a, b)| real(a) && real(b))
        }
        Event::LapsMarked { laps } => {
            laps.len() <= LONGEST_LIST
                && laps
                    .iter()
                    .all(|(a, b, lap)| place(*a) && place(*b) && lap.is_none_or(real))
        }
        Event::Patched { piece, .. } | Event::Spoilt { piece, .. } => place(*piece),
        Event::LaidOn { squares } => {
            let each: BTreeSet<_> = squares
                .iter()
                .map(|(s, face, _)| (s, face.index()))
                .collect();
            each.len() == squares.len()
                && squares.len() <= LONGEST_LIST
                && squares
                    .iter()
                    .all(|(s, _, side)| place(*s) && side.is_none_or(real))
        }
        Event::Unpicked {
            pieces,
            in_part,
            block,
            held,
            ..
        } => {
            pieces.len() <= LONGEST_LIST
                && pieces.iter().all(|(p, l)| place(*p) && real(*l))
                && in_part.len() <= pieces.len()
                && held.len() <= pieces.len()
                && in_part.iter().chain(block).chain(held).all(|p| place(*p))
        }
        Event::Moved { moves } => {
            let small = |p: Rect| place(p) && p.count() <= 4;
            // Each square once on either side.
            let ends = |end: fn(&(Rect, Rect)) -> Rect| {
                let mut ends: Vec<Rect> = moves.iter().flat_map(|m| end(m).squares()).collect();
                ends.sort();
                ends
            };
            let fit = |(from, to): &(Rect, Rect)| {
                small(*from) && small(*to) && (from.rows, from.cols) == (to.rows, to.cols)
            };
            moves.len() <= LONGEST_LIST && moves.iter().all(fit) && {
                let (from, to) = (ends(|m| m.0), ends(|m| m.1));
                from == to && from.windows(2).all(|w| w[0] != w[1])
            }
        }
        Event::Turned { pieces } => {
            let fit = |(piece, quarters): &(Rect, u8)| {
                place(*piece)
                    && piece.count() <= 4
                    && (1..4).contains(quarters)
                    && (quarters % 2 == 0 || piece.rows == piece.cols)
            };
            pieces.len() <= LONGEST_LIST && pieces.iter().all(fit)
        }
        Event::Flipped { pieces } | Event::Pinned { pieces, .. } => list(pieces),
        Event::WholeMeasured { width, height } => real(*width) && real(*height),
        Event::SquaredUp { pieces, unmeasured } => {
            pieces.len() <= LONGEST_LIST
                && unmeasured.is_none_or(|n| n.get() as usize <= pieces.len())
                && pieces
                    .iter()
                    .all(|(piece, w, h)| place(*piece) && real(*w) && real(*h))
        }
        Event::HeapSet { heap, .. } => sound(heap),
        Event::PieceBegun { lines, strips, .. } => *lines <= MOST_SQUARES && *strips <= MOST_STRIPS,
        Event::PieceCut {
            squares,
            went,
            strips,
            pieced,
            ..
        } => {
            let pieced = pieced.as_ref().is_none_or(|pieced| {
                let within = match went {
                    Some(Went::Squares { places, spares }) => {
                        pieced.places.iter().all(|p| places.contains(p)) && pieced.spares <= *spares
                    }
                    Some(Went::Stock { .. }) | None => false,
                };
                list(&pieced.places) && within && real(pieced.lap)
            });
            let strips =
                strips.is_none_or(|s| s.count <= MOST_SQUARES && real(s.width) && real(s.length));
            let all = match went {
                Some(Went::Squares { places, spares }) => {
                    list(places)
                        && places.len() as u64 + u64::from(spares.get()) == u64::from(squares.get())
                }
                Some(Went::Stock { .. }) | None => true,
            };
            *squares <= MOST_SQUARES && all && strips && pieced
        }
        Event::ScrapTried { scrap } => note(&scrap.note) && real(scrap.lap) && wide(scrap.stitch),
        Event::PlateMeasured { opening } => real(*opening),
        Event::Noted { text, piece, .. } => note(text) && piece.is_none_or(place),
        Event::Pictured { words, piece, .. } => {
            words.chars().count() <= LONGEST_CAPTION && piece.is_none_or(place)
        }
        Event::SparesCounted { .. } | Event::Wished { .. } | Event::Unpictured { .. } => true,
    }
}

fn sound(heap: &Heap) -> bool {
    let (pieces, fine) = match &heap.from {
        Source::Cloth(garment) => {
            let pieces = &garment.pieces;
            let fine = named(&garment.name) && pieces.iter().all(|p| p.check().is_ok());
            (pieces.len(), fine)
        }
        Source::Precut(pack) => {
            let fine = named(&pack.name) && real(pack.side) && pack.count <= MOST_SQUARES;
            (1, fine)
        }
    };
    fine && (1..=50).contains(&pieces)
        && heap.counted.len() == pieces
        && heap.counted.iter().flatten().all(|n| *n <= MOST_SQUARES)
        && heap.pieced.values().all(|n| *n <= MOST_SQUARES)
        && heap.ways.keys().all(|i| usize::from(*i) < pieces)
        && heap.worn_unsaid.iter().all(|i| usize::from(*i) < pieces)
        && heap.cloth.check().is_ok()
        && (0..=in_nm(longest_side())).contains(&in_nm(heap.trimming))
}

/// Whether what an event speaks of is there.
fn known(throw: &Throw, event: &Event) -> bool {
    let there = |piece: &Rect| throw.assembly().knows(*piece);
    let joined = |piece: &Rect| throw.assembly().join(*piece).is_some();
    let print = |n: u8| usize::from(n) < throw.prints.len();
    match event {
        Event::Begun { .. } => false,
        Event::Renamed { .. }
        | Event::Archived { .. }
        | Event::PlanChanged { .. }
        | Event::SparesCounted { .. }
        | Event::WholeMeasured { .. }
        | Event::ScrapTried { .. }
        | Event::PlateMeasured { .. }
        | Event::Wished { .. }
        | Event::Noted { .. }
        | Event::Pictured { .. } => true,
        Event::Unpictured { photo } => throw.photos.iter().any(|p| p.id == *photo),
        // The covers must find their cloth.
        Event::ClothChanged { prints, denims } => throw.covers().iter().all(|cover| {
            let found = |n: u8| usize::from(n) < prints.len();
            [cover.front, cover.back].into_iter().flatten().all(found)
                && usize::from(cover.denim) < denims.len().max(1)
        }),
        Event::FacesChanged { faces, again, .. } => {
            let listed: BTreeSet<&Rect> = faces.iter().map(|(piece, _)| piece).collect();
            again.iter().flatten().all(|piece| listed.contains(piece))
                && faces.iter().all(|(piece, cover)| {
                    let cloth = [cover.front, cover.back].into_iter().flatten().all(print);
                    let denim = usize::from(cover.denim) < throw.denims.len().max(1);
                    piece.is_square() && there(piece) && cloth && denim
                })
        }
        Event::Done { pieces, made, .. } => {
            // Only a join is made with something.
            pieces.iter().all(there) && (made.is_empty() || pieces.iter().all(joined))
        }
        Event::SetAside { pieces, .. } => pieces.iter().all(there),
        Event::SparesUsed { pieces, of, pieced } => {
            let among = pieced.iter().all(|p| pieces.contains(p));
            let denim = |d: &u8| usize::from(*d) < throw.denims.len().max(1);
            among
                && pieces.iter().all(|p| p.is_square() && there(p))
                && of.iter().flatten().all(denim)
        }
        Event::SquareMoved { from, to } => {
            let square = |p: &Rect| p.is_square() && there(p);
            square(from) && square(to)
        }
        Event::Measured { piece, .. } | Event::Outlined { piece, .. } => {
            throw.assembly().is_block(*piece) && there(piece)
        }
        Event::LapsMarked { laps } => laps.iter().all(|(a, b, _)| there(a) && there(b)),
        Event::Patched { piece, .. } | Event::Spoilt { piece, .. } => {
            piece.is_square() && there(piece)
        }
        Event::LaidOn { squares } => squares.iter().all(|(s, _, _)| s.is_square() && there(s)),
        Event::Unpicked { pieces, .. } => pieces.iter().all(|(piece, _)| joined(piece)),
        Event::Moved { moves } => moves.iter().all(|(from, to)| there(from) && there(to)),
        Event::Turned { pieces } => pieces.iter().all(|(piece, _)| there(piece)),
        Event::Flipped { pieces } | Event::Pinned { pieces, .. } => {
            pieces.iter().all(|p| p.is_square() && there(p))
        }
        Event::SquaredUp { pieces, .. } => pieces
            .iter()
            .all(|(piece, _, _)| throw.assembly().is_block(*piece) && there(piece)),
        Event::HeapSet { n, heap } => {
            throw.has_cloth(heap.makes)
                && (throw.pile.contains_key(n) || throw.pile.len() < MOST_HEAPS)
        }
        Event::HeapTaken { n } => throw.pile.contains_key(n),
        Event::PieceBegun { n, piece, .. } => throw
            .pile
            .get(n)
            .is_some_and(|heap| heap.counted.get(usize::from(*piece)) == Some(&None)),
        Event::PieceCut {
            n,
            piece,
            went,
            strips,
            ..
        } => {
            let goes = |makes: Use| match went {
                Some(Went::Squares { places, .. }) => {
                    let each: BTreeSet<&Rect> = places.iter().collect();
                    makes.is_denim()
                        && each.len() == places.len()
                        && places.iter().all(|p| p.is_square() && there(p))
                }
                Some(Went::Stock { print: n }) => makes == Use::Fabric { print: *n } && print(*n),
                None => true,
            };
            throw.pile.get(n).is_some_and(|heap| {
                heap.counted.get(usize::from(*piece)) == Some(&None)
                    && goes(heap.makes)
                    && (strips.is_none() || heap.makes.is_denim())
            })
        }
        Event::Gathered { item, .. } => match item {
            Item::Fabric { print: n } => print(*n),
            _ => true,
        },
    }
}

/// Whether the pieces are at the point where this is done to them.
fn ready(throw: &Throw, event: &Event) -> bool {
    let may = |task: Task, piece: &Rect| may_do(throw, task, *piece).is_ok();
    match event {
        Event::Done { task, pieces, .. } => pieces.iter().all(|p| may(*task, p)),
        Event::PieceCut {
            went: Some(Went::Squares { places, .. }),
            ..
        } => places.iter().all(|p| may(Task::Cut, p)),
        Event::SparesUsed { pieces, .. } => {
            throw.spares.get() as usize >= pieces.len() && pieces.iter().all(|p| may(Task::Cut, p))
        }
        Event::SquareMoved { from, to } => throw.lies_loose(*from) && may(Task::Cut, to),
        Event::SquaredUp { pieces, .. } => pieces.iter().all(|(p, _, _)| may(Task::SquareUp, p)),
        Event::Measured { piece, .. } => {
            throw.has(*piece, Task::Stitch) && !throw.has(*piece, Task::SquareUp)
        }
        Event::Spoilt { piece, .. } => throw.has(*piece, Task::Cut),
        Event::Unpicked { pieces, .. } => {
            let sewn = |p: &Rect| throw.begun(*p) || throw.is_open_in_part(*p);
            pieces.iter().all(|(p, _)| sewn(p))
        }
        Event::Flipped { pieces } => pieces.iter().all(|p| !throw.is_joined(*p)),
        Event::WholeMeasured { .. } => {
            let whole = throw.assembly().whole();
            throw.assembly().join(whole).is_none() || throw.has(whole, Task::Stitch)
        }
        Event::LapsMarked { laps } => laps.iter().all(|(a, b, _)| {
            let join = throw.joined_by(*a, *b);
            join.is_none_or(|join| !throw.begun(join.whole))
        }),
        // Nothing stands in the way of these but what `known` asks.
        Event::Begun { .. }
        | Event::Renamed { .. }
        | Event::Archived { .. }
        | Event::PlanChanged { .. }
        | Event::FacesChanged { .. }
        | Event::ClothChanged { .. }
        | Event::SparesCounted { .. }
        | Event::Outlined { .. }
        | Event::Patched { .. }
        | Event::LaidOn { .. }
        | Event::Moved { .. }
        | Event::Turned { .. }
        | Event::Pinned { .. }
        | Event::Wished { .. }
        | Event::SetAside { .. }
        | Event::HeapSet { .. }
        | Event::HeapTaken { .. }
        | Event::PieceCut { .. }
        | Event::PieceBegun { .. }
        | Event::ScrapTried { .. }
        | Event::PlateMeasured { .. }
        | Event::Gathered { .. }
        | Event::Noted { .. }
        | Event::Unpictured { .. } => true,
        Event::Pictured { photo, .. } => !throw.photos.iter().any(|p| p.id == *photo),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::journal::tests::{begin, step};
    use crate::throw::counted::FOLDED;
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(400))]
        /// What is imported is written again to the byte.
        #[test]
        fn a_record_comes_in_and_goes_out_to_the_byte(steps in prop::collection::vec((0u8..26, any::<u32>()), 0..80)) {
            let mut journal = begin(4, 3).named("brought");
            for (i, s) in steps.into_iter().enumerate() {
                step(&mut journal, s, i as Time);
            }
            let text = journal.text();
            prop_assert_eq!(read(text.as_bytes()).unwrap().journal.text(), text);
        }
    }

    #[test]
    fn the_demo_comes_in_and_a_forged_one_does_not() {
        let demo = crate::demo::throw(1_700_000_000_000);
        assert_eq!(
            read(demo.text().as_bytes()).unwrap().journal.text(),
            demo.text()
        );
        let line = |text: &str, from: &str, to: &str| -> FormatError {
            let lines = text.lines().map(|line| {
                let Some((body, _)) = line.rsplit_once(",\"crc\"") else {
                    return line.to_string();
                };
                let body = body.replacen(from, to, 1);
                format!(
                    "{body},\"crc\":\"{:08x}\"}}",
                    crc32fast::hash(body.as_bytes())
                )
            });
            let text = lines.collect::<Vec<_>>().join("\n") + "\n";
            read(text.as_bytes()).unwrap_err()
        };
        let text = demo.text();
        assert_eq!(
            line(&text, "\"across\":6", "\"across\":6000"),
            FormatError::Absurd { line: 2 }
        );
        assert_eq!(
            line(&text, "\"washes\":3", "\"washes\":3,\"more\":1"),
            FormatError::Unknown { line: 2 }
        );
        assert_eq!(
            line(&text, "#b8442f", "red;}"),
            FormatError::Absurd { line: 2 }
        );
        let far = line(&text, "\"pieces\":[[", "\"pieces\":[[65535,0,9,9],[");
        // A piece beyond any grid is not even read as one.
        assert!(matches!(far, FormatError::Unknown { line: 14 }), "{far:?}");
    }

    /// A record of these steps on a grid, each line with its checksum.
    fn record(across: u16, down: u16, steps: &[String]) -> String {
        let mut text = begin(across, down).named("brought").text();
        for (i, step) in steps.iter().enumerate() {
            let body = format!("{{\"n\":{},\"at\":{i},{step}", i + 2);
            let sum = crc32fast::hash(body.as_bytes());
            text += &format!("{body},\"crc\":\"{sum:08x}\"}}\n");
        }
        text
    }

    #[test]
    fn a_step_that_names_a_piece_twice_does_not_come_in() {
        let step = |event: &str| [format!("\"do\":[{{{event}}}]")];
        for (event, line) in [
            (
                r#""done":{"task":"cut","pieces":[[0,0,1,1],[0,1,1,1]]}"#,
                None,
            ),
            (
                r#""done":{"task":"cut","pieces":[[0,0,1,1],[0,0,1,1]]}"#,
                Some(3),
            ),
            (r#""spares-used":{"pieces":[[0,0,1,1],[0,0,1,1]]}"#, Some(3)),
            (r#""set-aside":{"pieces":[[0,0,1,2],[0,0,1,2]]}"#, Some(3)),
        ] {
            let read = read(record(4, 3, &step(event)).as_bytes());
            let found = read.err();
            assert_eq!(
                found,
                line.map(|line| FormatError::Absurd { line }),
                "{event}"
            );
        }
    }

    /// The steps that a file costs are counted before they are made.
    #[test]
    fn a_file_that_costs_too_much_is_refused_before_it_is_folded() {
        let note = || "\"do\":[{\"noted\":{\"text\":\"x\",\"piece\":null}}]".to_string();
        let plan = serde_json::to_string(&begin(60, 60).throw().plan).unwrap();
        let replan = format!("{{\"plan-changed\":{{\"plan\":{plan},\"spares\":0}}}}");
        let replans = format!("\"do\":[{}]", vec![replan; 100].join(","));
        // Two steps done and undone, over and over, on a large grid with work on it: each time
        // the state is made again.
        let cut: Vec<String> = (0..60)
            .flat_map(|row| (0..60).map(move |col| format!("[{row},{col},1,1]")))
            .collect();
        let cut = format!(
            "\"do\":[{{\"done\":{{\"task\":\"cut\",\"pieces\":[{}]}}}}]",
            cut.join(",")
        );
        let mut back_and_forth = vec![cut];
        for _ in 0..400 {
            let n = back_and_forth.len() + 2;
            back_and_forth.extend([note(), note()]);
            back_and_forth.extend([format!("\"undo\":{}", n + 1), format!("\"undo\":{n}")]);
        }
        let ticks = "\"do\":[{\"done\":{\"task\":\"cut\",\"pieces\":[[0,0,1,1]]}}]";
        for (what, text, cost) in [
            ("plans", record(1, 1, &[replans]), 20_000_000),
            ("undo", record(60, 60, &back_and_forth), 4_000_000),
            (
                "one piece",
                record(1, 1, &vec![ticks.to_string(); 3_000]),
                4_000_000,
            ),
        ] {
            let folded = |most: u64| {
                FOLDED.set(0);
                let read = read_within(text.as_bytes(), most);
                (read.map(|read| read.journal.len()), FOLDED.get())
            };
            let (refused, few) = folded(cost);
            assert!(
                matches!(refused, Err(FormatError::TooMuch { .. })),
                "{what}: {refused:?}"
            );
            let (read, all) = folded(MOST_EFFORT);
            assert!(
                read.is_ok() && few < all,
                "{what}: {read:?}, {few} of {all}"
            );
        }
        // A throw that was worked on to its end costs next to nothing.
        let demo = crate::demo::throw(0).text();
        assert!(read_within(demo.as_bytes(), MOST_EFFORT / 100).is_ok());
        // Nor do many notes, all of them undone.
        let mut notes = vec![note(); 2_000];
        notes.extend((0..2_000).map(|n| format!("\"undo\":{}", 2_001 - n)));
        let text = record(6, 8, &notes);
        let (read, folded) = {
            FOLDED.set(0);
            let read = read_within(text.as_bytes(), MOST_EFFORT / 100);
            (read.map(|read| read.journal.len()), FOLDED.get())
        };
        assert_eq!((read, folded), (Ok(4_001), 1_999));
    }
}
