//! The events that a change to another layout consists of.

use crate::throw::event::Event;
use crate::throw::wishes::Layout;

impl Layout {
    /// Its moves, which come first.
    pub(crate) fn moved(&self) -> Option<Event> {
        let moves = self.moves.clone();
        (!moves.is_empty()).then_some(Event::Moved { moves })
    }

    /// Its turns, which come next; the faces come last.
    pub(crate) fn turned(&self) -> Option<Event> {
        let pieces = self.turns.clone();
        (!pieces.is_empty()).then_some(Event::Turned { pieces })
    }
}
