//! Folding events into the state.
//!
//! The fold decides nothing: [`crate::command`] decides whether a command is allowed and what
//! comes of it. An event that does not fit is skipped; it never causes a panic.

use crate::cloth::fabric::{Cover, Print};
use crate::cloth::letters;
use crate::cloth::pile::Use;
use crate::measure::Count;
use crate::measure::outline::Measures;
use crate::plan::Plan;
use crate::plan::assembly::{Assembly, Rect, source};
use crate::throw::event::{Event, Time};
use crate::throw::facts::{BegunPiece, Made, Pieced, Size, Went};
use crate::throw::index::WorkIndex;
use crate::throw::state::{
    Aside, Loss, Note, Photo, PiecedSpare, SeamsToUnpick, Throw, WholeMeasure, Work,
};
use crate::throw::tasks::{HALVES, Task, presses_cover};
use std::collections::BTreeSet;

/// What an event touches, for [`WorkIndex`].
enum Touched {
    /// Nothing that work depends on.
    Nothing,
    /// These pieces.
    Pieces(Vec<Rect>),
    /// Anything.
    All,
}

fn touched(event: &Event) -> Touched {
    match event {
        Event::Done { pieces, .. } | Event::SparesUsed { pieces, .. } => {
            Touched::Pieces(pieces.clone())
        }
        Event::SquareMoved { from, to } => Touched::Pieces(vec![*from, *to]),
        Event::FacesChanged { faces, .. } => Touched::Pieces(faces.iter().map(|f| f.0).collect()),
        Event::SquaredUp { pieces, .. } => Touched::Pieces(pieces.iter().map(|p| p.0).collect()),
        Event::LaidOn { squares } => Touched::Pieces(squares.iter().map(|s| s.0).collect()),
        Event::Measured { piece, .. }
        | Event::Outlined { piece, .. }
        | Event::Patched { piece, .. }
        | Event::Spoilt { piece, .. } => Touched::Pieces(vec![*piece]),
        Event::Renamed { .. }
        | Event::Archived { .. }
        | Event::SparesCounted { .. }
        | Event::PieceBegun { .. }
        | Event::Pinned { .. }
        | Event::Wished { .. }
        | Event::WholeMeasured { .. }
        | Event::HeapSet { .. }
        | Event::HeapTaken { .. }
        | Event::ScrapTried { .. }
        | Event::PlateMeasured { .. }
        | Event::Gathered { .. }
        | Event::Noted { .. }
        | Event::Pictured { .. }
        | Event::Unpictured { .. } => Touched::Nothing,
        Event::Begun { .. }
        | Event::PlanChanged { .. }
        // Whether fabric squares are to be cut is decided by each fabric.
        | Event::ClothChanged { .. }
        | Event::LapsMarked { .. }
        // A block that is free again may have to be trimmed again.
        | Event::Unpicked { .. }
        | Event::Moved { .. }
        | Event::Turned { .. }
        | Event::Flipped { .. }
        | Event::PieceCut { .. }
        | Event::SetAside { .. } => Touched::All,
    }
}

impl Throw {
    /// Fold one event in. Events that do not fit are passed over, never a panic.
    pub fn apply(&mut self, event: &Event, at: Time) {
        self.apply_in_turn(event, at);
        self.settle_index();
    }

    /// Fold one of many events in. Where an event touches everything the index is left stale,
    /// so that it is worked out once for all of them ([`Throw::settle_index`]).
    pub(crate) fn apply_in_turn(&mut self, event: &Event, at: Time) {
        if let Event::SetAside { pieces, sizes } = event
            && sizes.len() < pieces.len()
        {
            // The sizes that the event does not say are those of the index.
            self.settle_index();
        }
        self.fold(event, at);
        match touched(event) {
            Touched::Nothing => {}
            Touched::Pieces(_) if self.index_stale => {}
            Touched::Pieces(mut pieces) => {
                let mut seen = BTreeSet::new();
                pieces.retain(|piece| seen.insert(*piece));
                let mut standing = std::mem::take(&mut self.work_index);
                standing.refresh(self, &pieces);
                self.work_index = standing;
            }
            Touched::All => self.leave_index(),
        }
    }

    /// Leave the index as it is, whatever is folded in, until it is settled.
    pub(crate) fn leave_index(&mut self) {
        self.index_stale = true;
    }

    /// Work the index out where it is stale.
    pub(crate) fn settle_index(&mut self) {
        if std::mem::take(&mut self.index_stale) {
            self.work_index = WorkIndex::of(self);
        }
    }

    fn fold(&mut self, event: &Event, at: Time) {
        #[cfg(test)]
        crate::throw::counted::FOLDED.set(crate::throw::counted::FOLDED.get() + 1);
        match event {
            Event::Begun { .. } => {}
            Event::Renamed { name } => self.name.clone_from(name),
            Event::Archived { archived } => self.archived = *archived,
            Event::PlanChanged {
                plan,
                spares,
                glued,
            } => {
                self.change_plan(*plan, *spares);
                for (print, n) in glued {
                    let gone = self.aside_glued.entry(*print).or_default();
                    *gone = gone.saturating_add(n.get());
                }
            }
            Event::FacesChanged {
                faces,
                again,
                by_hand,
            } => {
                let again = again.as_ref().map(|a| a.iter().collect::<BTreeSet<_>>());
                let by_hand = by_hand.unwrap_or_else(|| self.only_denims_change(faces));
                for (piece, cover) in faces {
                    if by_hand {
                        self.denim_by_hand.insert(*piece);
                    } else if self.cover(*piece).denim != cover.denim {
                        self.denim_by_hand.remove(piece);
                    }
                    let again = again.as_ref().map(|again| again.contains(piece));
                    self.set_cover(*piece, *cover, again);
                }
            }
            Event::ClothChanged { prints, denims } => {
                self.name_letters(prints);
                self.prints.clone_from(prints);
                self.denims.clone_from(denims);
                // What is no more on the list is not counted as missing.
                let listed = |p: &u8| usize::from(*p) < prints.len();
                self.aside_glued.retain(|p, _| listed(p));
                for print in self.losses.iter_mut().flat_map(|l| &mut l.glued) {
                    *print = print.filter(listed);
                }
            }
            Event::Done { task, pieces, made } => {
                for (n, piece) in pieces.iter().enumerate() {
                    let made = match made.as_slice() {
                        [all] => Some(*all),
                        each => each.get(n).copied(),
                    };
                    self.mark(*piece, *task, made, at);
                }
            }
            Event::SparesUsed { pieces, of, pieced } => {
                self.spares -= Count::at_most(pieces.len() as u32);
                for (n, piece) in pieces.iter().enumerate() {
                    let own = || Some(self.cover(*piece).denim);
                    let denim = of.get(n).copied().unwrap_or_else(own);
                    self.take_spare(denim);
                    self.mark(*piece, Task::Cut, None, at);
                    if pieced.contains(piece)
                        && let Some(spare) = self.take_pieced(denim)
                    {
                        let work = self.work.entry(*piece).or_default();
                        work.halves = Some(spare.lap);
                        work.done.extend(spare.done);
                    }
                }
                self.settle_spares();
            }
            Event::SquareMoved { from, to } => {
                // Fabric that was cut for the place stays cut.
                if let Some(work) = self.work.get_mut(from) {
                    let halves = work.halves.take();
                    let own = |task: &Task| halves.is_some() && HALVES.contains(task);
                    let lapped = work.done.iter().filter(|(task, _)| own(task));
                    let lapped: Vec<(Task, Time)> = lapped.copied().collect();
                    work.done
                        .retain(|(task, _)| *task != Task::Cut && !own(task));
                    if *work == Work::default() {
                        self.work.remove(from);
                    }
                    self.mark(*to, Task::Cut, None, at);
                    let work = self.work.entry(*to).or_default();
                    work.halves = halves;
                    work.done.extend(lapped);
                }
            }
            Event::SparesCounted { spares } => {
                self.spares = *spares;
                self.settle_spares();
            }
            Event::Outlined { piece, measures } => {
                self.work.entry(*piece).or_default().outline = Some(*measures);
            }
            Event::LapsMarked { laps } => {
                for (a, b, lap) in laps {
                    match lap {
                        Some(lap) => self.marked.insert((*a, *b), *lap),
                        None => self.marked.remove(&(*a, *b)),
                    };
                }
            }
            Event::Unpicked {
                pieces,
                in_part,
                binding,
                block,
                held,
                ..
            } => {
                let glued = self.are_only_glued(pieces);
                let in_part: BTreeSet<&Rect> = in_part.iter().collect();
                for (piece, opened) in pieces {
                    let was = self.work.remove(piece).unwrap_or_default();
                    let now = match in_part.contains(piece) {
                        true => was.opened_further(*opened),
                        false => Work {
                            opened: Some(*opened),
                            ..Work::default()
                        },
                    };
                    self.work.insert(*piece, now);
                    self.measured.retain(|p| p != piece);
                }
                for piece in held.iter().filter(|p| self.assembly.is_block(**p)) {
                    if let Some(work) = self.work.get_mut(piece) {
                        work.sewn_in = true;
                    }
                }
                let whole = self.assembly.whole();
                let parted = pieces.iter().any(|(p, _)| *p == whole) && !in_part.contains(&whole);
                if let Some(work) = self.work.get_mut(&whole)
                    && *binding
                    && !parted
                {
                    work.done.retain(|(task, _)| !task.binds());
                    work.unbound = true;
                }
                self.seams_to_unpick.push(SeamsToUnpick {
                    joins: pieces.clone(),
                    square: None,
                    block: *block,
                    glued,
                });
            }
            // The cover that mends the damage is an event of its own.
            Event::Patched { piece, sewn, .. } => {
                if let Some(work) = self.work.get_mut(piece).filter(|_| *sewn) {
                    let done = work.done.iter().filter(|(t, _)| *t == Task::StitchPatch);
                    work.patches = done.count() + 1;
                }
            }
            Event::LaidOn { squares } => {
                for (square, face, side) in squares {
                    if self.place(*square).is_some() {
                        let work = self.work.entry(*square).or_default();
                        work.laid_on[face.index()] = *side;
                    }
                }
            }
            Event::Moved { moves } => self.move_blocks(moves),
            Event::Turned { pieces } => {
                for (piece, quarters) in pieces {
                    self.turn(*piece, quarters % 4);
                }
            }
            Event::Flipped { pieces } => {
                for piece in pieces {
                    self.flip(*piece);
                }
            }
            Event::Pinned { pieces, pinned } => {
                for piece in pieces {
                    if *pinned && self.place(*piece).is_some() {
                        self.pinned.insert(*piece);
                    } else {
                        self.pinned.remove(piece);
                    }
                }
            }
            Event::Wished { wishes } => self.wishes = Some(*wishes),
            Event::SetAside { pieces, sizes } => {
                for (n, piece) in pieces.iter().enumerate() {
                    let said = sizes.get(n);
                    let size = said.map_or_else(
                        || self.size(*piece),
                        |(width, height)| Size {
                            width: *width,
                            height: *height,
                        },
                    );
                    let glued = piece.squares().flat_map(|s| self.glued(s)).flatten();
                    for print in glued.collect::<Vec<u8>>() {
                        *self.aside_glued.entry(print).or_default() += 1;
                    }
                    self.aside.push(Aside {
                        piece: *piece,
                        size,
                        at,
                    });
                    self.work.retain(|p, _| !piece.holds(*p));
                    self.seams_to_unpick
                        .retain(|o| !o.joins.iter().any(|(p, _)| piece.holds(*p)));
                    self.measured.retain(|p| !piece.holds(*p));
                    self.turned.retain(|p| !piece.holds(*p));
                }
            }
            Event::WholeMeasured { width, height } => {
                let size = Size {
                    width: *width,
                    height: *height,
                };
                let washes = self.washes();
                self.wholes.push(WholeMeasure { size, washes, at });
            }
            Event::Measured {
                piece,
                width,
                height,
            } => {
                let size = Size {
                    width: *width,
                    height: *height,
                };
                let work = self.work.entry(*piece).or_default();
                work.measured = Some(size);
                work.outline = None;
                self.measured.retain(|p| p != piece);
                self.measured.push(*piece);
            }
            Event::SquaredUp { pieces, .. } => {
                for (piece, width, height) in pieces {
                    self.mark(*piece, Task::SquareUp, None, at);
                    let size = Size {
                        width: *width,
                        height: *height,
                    };
                    self.work.entry(*piece).or_default().squared = Some(size);
                }
            }
            Event::Spoilt { piece, why, opened } => {
                let glued = self.glued(*piece);
                self.work.remove(piece);
                // The seams round it were opened to take it out.
                let round = match opened {
                    None => self.seams_to_unpick.len().checked_sub(1),
                    Some(true) => self
                        .seams_to_unpick
                        .iter()
                        .rposition(|o| o.is_round(*piece)),
                    Some(false) => None,
                };
                if let Some(opening) = round.and_then(|n| self.seams_to_unpick.get_mut(n))
                    && opening.is_round(*piece)
                {
                    opening.square = Some(*piece);
                }
                self.losses.push(Loss {
                    piece: *piece,
                    why: *why,
                    glued,
                    at,
                });
            }
            Event::HeapSet { n, heap } => {
                self.pile.insert(*n, heap.clone());
            }
            Event::HeapTaken { n } => {
                self.pile.remove(n);
                self.begun_pieces.retain(|(heap, _), _| heap != n);
            }
            Event::PieceCut {
                n,
                piece,
                squares,
                went,
                strips,
                pieced,
            } => {
                self.begun_pieces.remove(&(*n, *piece));
                self.cut_strips.extend(*strips);
                self.count_cut((*n, *piece), *squares, went.as_ref(), at);
                if let Some(pieced) = pieced {
                    self.count_pieced((*n, *piece), pieced);
                }
            }
            Event::PieceBegun {
                n,
                piece,
                lines,
                strips,
            } => {
                let begun = BegunPiece {
                    lines: *lines,
                    strips: *strips,
                };
                match *lines > 0 {
                    true => self.begun_pieces.insert((*n, *piece), begun),
                    false => self.begun_pieces.remove(&(*n, *piece)),
                };
            }
            Event::ScrapTried { scrap } => self.scraps.push(scrap.clone()),
            Event::PlateMeasured { opening } => self.plate_opening = Some(*opening),
            Event::Gathered { item, have: true } => {
                self.gathered.insert(*item);
            }
            Event::Gathered { item, have: false } => {
                self.gathered.remove(item);
            }
            Event::Noted {
                text,
                piece,
                task,
                next,
            } => {
                self.notes.push(Note {
                    text: text.clone(),
                    piece: *piece,
                    task: *task,
                    next: *next,
                    at,
                });
            }
            Event::Pictured {
                photo,
                words,
                piece,
                task,
            } => self.photos.push(Photo {
                id: photo.clone(),
                words: words.clone(),
                piece: *piece,
                task: *task,
                at,
            }),
            Event::Unpictured { photo } => self.photos.retain(|p| p.id != *photo),
        }
    }

    /// The throw as it would be after these events.
    pub fn after<'a>(&self, events: impl IntoIterator<Item = &'a Event>) -> Throw {
        let mut after = self.clone();
        for event in events {
            after.apply_in_turn(event, 0);
        }
        after.settle_index();
        after
    }

    /// Give blocks each other's places: their work, the work within them, their faces.
    fn move_blocks(&mut self, moves: &[(Rect, Rect)]) {
        let shifted = |p: Rect, from: Rect, to: Rect| Rect {
            row: p.row - from.row + to.row,
            col: p.col - from.col + to.col,
            ..p
        };
        let (mut lifted, mut covers) = (Vec::new(), Vec::new());
        for (from, to) in moves {
            let inside: Vec<Rect> = self
                .work
                .keys()
                .copied()
                .filter(|p| from.holds(*p))
                .collect();
            for piece in inside {
                lifted.extend(
                    self.work
                        .remove(&piece)
                        .map(|w| (shifted(piece, *from, *to), w)),
                );
            }
            covers.extend(
                from.squares()
                    .map(|s| (shifted(s, *from, *to), self.cover(s))),
            );
        }
        self.work.extend(lifted);
        for (square, cover) in covers {
            if let Some(i) = self.place(square) {
                self.covers[i] = cover;
            }
        }
        self.denim_by_hand = std::mem::take(&mut self.denim_by_hand)
            .into_iter()
            .map(|p| {
                let moved = moves.iter().find(|(from, _)| from.holds(p));
                moved.map_or(p, |(from, to)| shifted(p, *from, *to))
            })
            .collect();
        for piece in &mut self.measured {
            if let Some((from, to)) = moves.iter().find(|(from, _)| from.holds(*piece)) {
                *piece = shifted(*piece, *from, *to);
            }
        }
        for opening in &mut self.seams_to_unpick {
            let whole = |from: &Rect| opening.joins.iter().all(|(p, _)| from.holds(*p));
            let Some((from, to)) = moves.iter().find(|(from, _)| whole(from)) else {
                continue;
            };
            for (piece, _) in &mut opening.joins {
                *piece = shifted(*piece, *from, *to);
            }
            opening.square = opening.square.map(|s| shifted(s, *from, *to));
        }
        let touched = |p: &Rect| moves.iter().any(|(from, _)| from.holds(*p));
        self.marked.retain(|(a, b), _| !touched(a) && !touched(b));
        self.turned = std::mem::take(&mut self.turned)
            .into_iter()
            .map(|p| {
                let moved = moves.iter().find(|(from, _)| from.holds(p));
                moved.map_or(p, |(from, to)| shifted(p, *from, *to))
            })
            .collect();
    }

    /// Whether other denims, or their other side, are all that these faces bring.
    fn only_denims_change(&self, faces: &[(Rect, Cover)]) -> bool {
        let (prints, denim) = (
            |c: &Cover| (c.front, c.back),
            |c: &Cover| (c.denim, c.wrong_side_up),
        );
        let mut both = faces
            .iter()
            .map(|(piece, cover)| (self.cover(*piece), cover));
        both.clone().all(|(was, is)| prints(&was) == prints(is))
            && both.any(|(was, is)| denim(&was) != denim(is))
    }

    /// Turn a piece where it lies. A half turn gives its two pairs each other's places;
    /// the quarter that is left over is stored in `turned`.
    fn turn(&mut self, piece: Rect, quarters: u8) {
        if quarters == 0 || (quarters % 2 == 1 && piece.rows != piece.cols) {
            return;
        }
        let squares: Vec<Rect> = piece.squares().collect();
        let covers: Vec<Cover> = squares.iter().map(|s| self.cover(*s)).collect();
        let mut works: Vec<Option<Work>> = squares.iter().map(|s| self.work.remove(s)).collect();
        for (n, square) in squares.iter().enumerate() {
            let from = source(n, (piece.rows, piece.cols), quarters);
            if let Some(i) = self.place(*square) {
                self.covers[i] = covers[from];
                self.covers[i].crosswise ^= quarters % 2 == 1;
            }
            if let Some(work) = works[from].take() {
                self.work.insert(*square, work);
            }
        }
        if piece.is_square() {
            return;
        }
        let over = quarters + u8::from(self.turned.remove(&piece));
        if over % 2 == 1 {
            self.turned.insert(piece);
        }
        if over / 2 % 2 == 1
            && let Some(join) = self.assembly.join(piece).copied()
            && !join.first.is_square()
        {
            let (first, second) = (
                self.work.remove(&join.first),
                self.work.remove(&join.second),
            );
            if let Some(work) = first {
                self.work.insert(join.second, work);
            }
            if let Some(work) = second {
                self.work.insert(join.first, work);
            }
        }
        if let Some(work) = self.work.get_mut(&piece) {
            for _ in 0..quarters {
                work.measured = work.measured.map(Size::turned);
                work.squared = work.squared.map(Size::turned);
                work.outline = work.outline.map(Measures::turned);
            }
        }
    }

    /// Turn a loose square over.
    fn flip(&mut self, piece: Rect) {
        let Some(i) = self.place(piece) else { return };
        let cover = &mut self.covers[i];
        std::mem::swap(&mut cover.front, &mut cover.back);
        cover.wrong_side_up ^= true;
        if let Some(work) = self.work.get_mut(&piece) {
            work.laid_on.swap(0, 1);
            for (task, _) in &mut work.done {
                *task = match *task {
                    Task::CoverFront => Task::CoverBack,
                    Task::CoverBack => Task::CoverFront,
                    other => other,
                };
            }
        }
    }

    /// Squares out of a piece of a heap go where it is said they went.
    fn count_cut(&mut self, (n, piece): (u16, u8), squares: Count, went: Option<&Went>, at: Time) {
        let Some(heap) = self.pile.get_mut(&n) else {
            return;
        };
        let Some(counted) = heap.counted.get_mut(usize::from(piece)) else {
            return;
        };
        *counted = Some(squares);
        let makes = heap.makes;
        let went = went.cloned();
        match went.unwrap_or_else(|| self.would_go(makes, squares)) {
            Went::Squares { places, spares } => {
                self.spares += spares;
                if let Use::Denim { denim: Some(denim) } = makes {
                    self.add_spares(denim, spares.get());
                }
                for square in places {
                    self.mark(square, Task::Cut, None, at);
                }
            }
            Went::Stock { print } => {
                if let Some(print) = self.prints.get_mut(usize::from(print)) {
                    print.stock = Some(print.stock.unwrap_or_default() + squares);
                }
            }
        }
    }

    /// The prints on the new list that were on the one before keep their letters.
    fn name_letters(&mut self, prints: &[Print]) {
        let before = self.prints.iter().zip(&self.letters);
        let before: Vec<_> = before.map(|(p, own)| (&*p.name, &**own)).collect();
        self.letters = letters::kept(&before, prints.iter().map(|print| &*print.name));
    }

    /// Some of the squares that came out of a piece are pieced of two halves.
    fn count_pieced(&mut self, (n, piece): (u16, u8), pieced: &Pieced) {
        let Some(heap) = self.pile.get_mut(&n) else {
            return;
        };
        heap.pieced.insert(piece, pieced.count());
        let denim = match heap.makes {
            Use::Denim { denim } => denim,
            Use::Fabric { .. } => None,
        };
        for square in &pieced.places {
            if let Some(work) = self.work.get_mut(square) {
                work.halves = Some(pieced.lap);
            }
        }
        let spare = PiecedSpare {
            denim,
            lap: pieced.lap,
            done: Vec::new(),
        };
        let more = std::iter::repeat_n(spare, pieced.spares.get() as usize);
        self.pieced_spares.extend(more);
        self.settle_spares();
    }

    /// Mark a task as done, with what is said of how the join is made.
    fn mark(&mut self, piece: Rect, task: Task, said: Option<Made>, at: Time) {
        let made = said.or_else(|| self.would_be_made(piece, task));
        let work = self.work.entry(piece).or_default();
        work.done.push((task, at));
        if made.is_some() {
            work.made = made;
        }
        if task == Task::Stitch {
            work.opened = None;
            work.in_part = false;
        }
        if task == Task::StitchBinding {
            work.unbound = false;
        }
        if matches!(task, Task::Dot | Task::Pin) {
            self.seams_to_unpick
                .retain(|o| !o.joins.iter().any(|(p, _)| *p == piece));
        }
    }

    /// A fabric added later is pressed and cooled with the rest once more, unless it is said
    /// whether it is.
    fn set_cover(&mut self, piece: Rect, cover: Cover, again: Option<bool>) {
        let Some(i) = self.place(piece) else { return };
        let again = again.unwrap_or(cover.layers() > self.covers[i].layers());
        let was = std::mem::replace(&mut self.covers[i], cover);
        let other = (was.front, was.back) != (cover.front, cover.back);
        if let Some(work) = self.work.get_mut(&piece).filter(|_| other) {
            // What was cut for it was of another fabric.
            work.done.retain(|(task, _)| *task != Task::CutFabric);
        }
        if let Some(work) = self.work.get_mut(&piece).filter(|_| again) {
            work.done.retain(|(task, _)| !presses_cover(*task));
        }
    }

    fn change_plan(&mut self, plan: Plan, spares: Count) {
        let old = Rect::grid(self.plan.across, self.plan.down);
        let new = Rect::grid(plan.across, plan.down);
        let freed = old.squares().filter(|s| !new.holds(*s));
        let freed = freed.filter(|s| self.has(*s, Task::Cut) && !self.is_joined(*s));
        let freed: Vec<Rect> = freed.collect();
        let lapped = freed.iter().filter_map(|s| {
            let work = self.work.get(s)?;
            let done = work.done.iter().filter(|(task, _)| HALVES.contains(task));
            Some(PiecedSpare {
                denim: Some(self.cover(*s).denim),
                lap: work.halves?,
                done: done.copied().collect(),
            })
        });
        let lapped: Vec<PiecedSpare> = lapped.collect();
        let freed: Vec<u8> = freed.iter().map(|s| self.cover(*s).denim).collect();
        if old != new {
            let covers = new
                .squares()
                .map(|s| {
                    self.place(s)
                        .map_or_else(Cover::default, |i| self.covers[i])
                })
                .collect();
            self.covers = covers;
        }
        self.joined_otherwise |=
            plan.joining != self.plan.joining && self.work.values().any(|work| work.made.is_some());
        self.plan = plan;
        self.spares += spares;
        if freed.len() == spares.get() as usize {
            for denim in freed {
                self.add_spares(denim, 1);
            }
            self.pieced_spares.extend(lapped);
        }
        self.assembly = Assembly::new(plan.across, plan.down, plan.order);
        let assembly = &self.assembly;
        self.work.retain(|piece, _| assembly.knows(*piece));
        self.measured.retain(|piece| assembly.knows(*piece));
        self.pinned.retain(|piece| assembly.knows(*piece));
        self.denim_by_hand.retain(|piece| assembly.knows(*piece));
        self.seams_to_unpick
            .retain(|o| o.joins.iter().all(|(piece, _)| assembly.knows(*piece)));
        self.turned.retain(|piece| assembly.knows(*piece));
        self.marked
            .retain(|(a, b), _| assembly.knows(*a) && assembly.knows(*b));
    }
}
