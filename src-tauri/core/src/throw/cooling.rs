//! When a pressed piece has cooled.
//!
//! A piece cools for the plan's `cooling_minutes` after it was last pressed, also while the app is
//! closed. The step screen compares that time with the clock and puts other steps first meanwhile
//! (`Batch::waiting` in `show/work.rs`). Cooling ends by itself: what has cooled need not be ticked
//! ([`crate::command::decide_at`]). The maker decides: she may tick a cooling step early
//! ([`crate::command::may_do`]).
//!
//! A piece that was pressed later than a cooling time from now was pressed while the clock was
//! wrong: nobody knows when that was. Nothing waits for it; its cooling step is for the maker to
//! tick once it is cool.

use crate::plan::assembly::Rect;
use crate::throw::event::Time;
use crate::throw::state::Throw;
use crate::throw::tasks::Task;

impl Throw {
    /// How long a pressed piece cools, in milliseconds.
    pub fn cooling(&self) -> Time {
        Time::from(self.plan.cooling_minutes) * 60_000
    }

    /// When a piece has cooled that was pressed; `None` where it was not, or at a time that
    /// cannot be.
    pub fn cooled_at(&self, piece: Rect, now: Time) -> Option<Time> {
        let work = self.work.get(&piece)?;
        let pressed = [Task::PressLap, Task::PressCover, Task::PressHalves];
        let pressed = pressed.iter().filter_map(|t| work.when(*t)).max()?;
        let can_be = pressed <= now.saturating_add(self.cooling());
        can_be.then(|| pressed.saturating_add(self.cooling()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fitting::tests::begun;
    use crate::plan::Plan;
    use crate::throw::event::Event;

    const MINUTE: Time = 60_000;

    /// A square of two halves is pressed after an hour and, with its fabric, after three. It cools for 5
    /// minutes from the last time. What was never pressed does not cool, nor does what was pressed in a
    /// time to come: at 2:54 three o'clock is further off than it would cool, at 2:55 it is not.
    #[test]
    fn a_piece_cools_from_when_it_was_last_pressed() {
        let mut throw = begun(Plan::default());
        let piece = Rect::square(0, 0);
        let at = |hours: Time, minutes: Time| (hours * 60 + minutes) * MINUTE;
        assert_eq!(throw.cooling(), 5 * MINUTE);
        assert_eq!(throw.cooled_at(piece, at(9, 0)), None);
        for (task, hour) in [(Task::PressHalves, 1), (Task::PressCover, 3)] {
            let done = Event::Done {
                task,
                pieces: vec![piece],
                made: vec![],
            };
            throw.apply(&done, at(hour, 0));
        }
        assert_eq!(throw.cooled_at(piece, at(3, 1)), Some(at(3, 5)));
        assert_eq!(throw.cooled_at(piece, at(9, 0)), Some(at(3, 5)));
        assert_eq!(throw.cooled_at(piece, at(2, 55)), Some(at(3, 5)));
        assert_eq!(throw.cooled_at(piece, at(2, 54)), None);
    }
}
