//! What it costs to fold an event, so that a record from outside can be refused before it is folded.
//!
//! The figures are counts of the lists that [`Throw::apply`] walks through, not of time: a step is
//! about what one short comparison takes. They are estimates from above, and no state or screen
//! depends on them.

use crate::plan::assembly::Rect;
use crate::throw::event::Event;
use crate::throw::facts::Went;
use crate::throw::state::Throw;
use std::collections::BTreeSet;

impl Throw {
    /// What a copy of the whole state costs.
    pub(crate) fn bulk(&self) -> u64 {
        let lists = [
            self.covers.len(),
            self.assembly.joins().len(),
            self.work.len() * 8,
            self.notes.len() * 4,
            self.photos.len() * 8,
            self.losses.len(),
            self.aside.len(),
            self.wholes.len(),
            self.scraps.len() * 4,
            self.measured.len(),
            self.seams_to_unpick.len() * 4,
            self.pinned.len() + self.denim_by_hand.len() + self.turned.len() + self.marked.len(),
            self.pile.len() * 16,
        ];
        1 + lists.iter().map(|n| *n as u64).sum::<u64>()
    }

    /// How often these pieces were worked on, each looked at once, and what is to be opened.
    fn worked_on<'a>(&self, pieces: impl IntoIterator<Item = &'a Rect>) -> u64 {
        let mut seen = BTreeSet::new();
        let mut cost = 0;
        for piece in pieces {
            cost += 4 + self.seams_to_unpick.len() as u64;
            if seen.insert(*piece) {
                cost += self.work(*piece).map_or(0, |work| work.done.len() as u64);
            }
        }
        cost
    }

    /// What it costs to fold this event into the state as it is.
    pub(crate) fn effort(&self, event: &Event) -> u64 {
        let squares = u64::from(self.plan.squares());
        let each = |count: usize, of: u64| count as u64 * of;
        let all = self.work.len() as u64
            + (self.measured.len() + self.turned.len() + self.marked.len()) as u64
            + self.seams_to_unpick.len() as u64
            + self.denim_by_hand.len() as u64;
        match event {
            Event::Done { pieces, .. } | Event::SparesUsed { pieces, .. } => self.worked_on(pieces),
            Event::SquaredUp { pieces, .. } => self.worked_on(pieces.iter().map(|p| &p.0)),
            Event::PieceCut { went, .. } => match went {
                Some(Went::Squares { places, .. }) => self.worked_on(places) + squares,
                _ => squares,
            },
            Event::SquareMoved { from, to } => self.worked_on([from, to]),
            Event::FacesChanged { faces, .. } => self.worked_on(faces.iter().map(|f| &f.0)) * 2,
            Event::Pinned { pieces, .. } | Event::Flipped { pieces } => each(pieces.len(), 8),
            Event::LapsMarked { laps } => each(laps.len(), 8),
            Event::SetAside { pieces, sizes } => {
                let unsaid = if sizes.len() < pieces.len() {
                    squares * 16
                } else {
                    0
                };
                let held: u64 = pieces.iter().map(|p| u64::from(p.count())).sum();
                unsaid + held * 4 + each(pieces.len(), all)
            }
            Event::Moved { moves } => {
                let held: u64 = moves.iter().map(|m| u64::from(m.0.count())).sum();
                held * 8 + each(moves.len(), 2 * all)
            }
            Event::Turned { pieces } => each(pieces.len(), 32),
            Event::Unpicked { pieces, .. } => each(pieces.len(), 8 + self.measured.len() as u64),
            Event::Begun { plan, .. } | Event::PlanChanged { plan, .. } => {
                squares.max(u64::from(plan.squares())) * 128 + all
            }
            Event::ClothChanged { .. } => squares + self.losses.len() as u64,
            Event::Measured { .. } | Event::Outlined { .. } | Event::Spoilt { .. } => 8 + all,
            Event::Patched { piece, .. } => self.worked_on([piece]),
            Event::LaidOn { squares } => self.worked_on(squares.iter().map(|s| &s.0)),
            Event::Unpictured { .. } => 8 + each(self.photos.len(), 4),
            Event::HeapTaken { .. } => 8 + self.begun_pieces.len() as u64,
            Event::HeapSet { heap, .. } => 8 + each(heap.counted.len(), 64),
            Event::Renamed { .. }
            | Event::Archived { .. }
            | Event::SparesCounted { .. }
            | Event::PieceBegun { .. }
            | Event::Wished { .. }
            | Event::WholeMeasured { .. }
            | Event::ScrapTried { .. }
            | Event::PlateMeasured { .. }
            | Event::Gathered { .. }
            | Event::Noted { .. }
            | Event::Pictured { .. } => 8,
        }
    }
}
