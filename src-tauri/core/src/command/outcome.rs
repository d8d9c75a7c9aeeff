//! Events with the decisions they contain, so that folding them decides nothing.

use crate::cloth::fabric::Cover;
use crate::plan::assembly::Rect;
use crate::throw::event::Event;
use crate::throw::facts::Made;
use crate::throw::facts::Mishap;
use crate::throw::state::Throw;
use crate::throw::tasks::Task;

/// A task done, with what it settles of how joins are made.
pub(super) fn done(throw: &Throw, task: Task, pieces: Vec<Rect>) -> Event {
    let settled = pieces.iter().map(|p| throw.would_be_made(*p, task));
    let mut made: Vec<Made> = settled.flatten().collect();
    // What is the same for all of them is kept once.
    if made.windows(2).all(|two| two[0] == two[1]) {
        made.truncate(1);
    }
    Event::Done { task, pieces, made }
}

/// Faces changed, with the squares that are to be pressed once more for it; where denims are
/// among what changes, whether they were chosen by hand.
pub(super) fn faces_changed(throw: &Throw, faces: Vec<(Rect, Cover)>, by_hand: bool) -> Event {
    let again = throw.would_press_again(&faces);
    let denim = |(piece, cover): &(Rect, Cover)| {
        let was = throw.cover(*piece);
        (was.denim, was.wrong_side_up) != (cover.denim, cover.wrong_side_up)
    };
    let by_hand = (by_hand || faces.iter().any(denim)).then_some(by_hand);
    Event::FacesChanged {
        faces,
        again,
        by_hand,
    }
}

/// Pieces set aside, with their sizes.
pub(super) fn taken_out(throw: &Throw, pieces: Vec<Rect>) -> Event {
    let sizes = pieces.iter().map(|piece| throw.size(*piece));
    let sizes = sizes.map(|size| (size.width, size.height)).collect();
    Event::SetAside { pieces, sizes }
}

/// A square spoilt, and whether the seams opened last were opened to take it out.
pub(super) fn spoilt(throw: &Throw, piece: Rect, why: Mishap) -> Event {
    let opened = throw.seams_to_unpick.last().map(|o| o.is_round(piece));
    Event::Spoilt { piece, why, opened }
}
