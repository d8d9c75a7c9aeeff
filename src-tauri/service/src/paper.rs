//! What goes on paper of a throw, and the days told on it.
//!
//! Days are those of the place where the order is given, which says how far it is from UTC.

use lapwork_core::log::journal::Journal;
use lapwork_core::show::Day;
use lapwork_core::show::PrintOrder;
use lapwork_core::show::{self, Context, Sheet};
use lapwork_core::throw::Time;
use time::{OffsetDateTime, UtcOffset};

/// Most minutes a place's time is from UTC.
const FARTHEST: i32 = 18 * 60;

/// What goes on paper, with the days of where the order was given.
pub fn sheet(journal: &Journal, lens: Context<'_>, order: PrintOrder) -> Sheet {
    let seconds = order.east.clamp(-FARTHEST, FARTHEST) * 60;
    let offset = UtcOffset::from_whole_seconds(seconds).unwrap_or(UtcOffset::UTC);
    let sheet = show::sheet(journal, lens, &|at| day(at, offset));
    match order.story && !order.card {
        true => sheet.with_story(journal, order.east, lens),
        false => sheet,
    }
}

/// On which day a moment falls.
fn day(at: Time, offset: UtcOffset) -> Day {
    let when = OffsetDateTime::from_unix_timestamp(at.div_euclid(1000))
        .unwrap_or(OffsetDateTime::UNIX_EPOCH);
    // At either end of the calendar the next day is none.
    let when = when.checked_to_offset(offset).unwrap_or(when);
    Day {
        year: when.year(),
        month: u8::from(when.month()),
        day: when.day(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn at_the_ends_of_the_calendar_a_day_is_a_day_wherever_one_is() {
        let last = 253_402_300_799_999;
        for hours in [-12, -1, 0, 1, 14] {
            let offset = UtcOffset::from_hms(hours, 0, 0).unwrap();
            for at in [last, -377_705_116_800_000, Time::MAX, Time::MIN, 0] {
                let day = day(at, offset);
                assert!((1..=31).contains(&day.day), "{at} {hours}: {day:?}");
            }
        }
    }

    #[test]
    fn a_day_is_that_of_the_place() {
        let east = UtcOffset::from_hms(10, 0, 0).unwrap();
        let evening = 1_767_222_000_000; // 31 December 2025, 23:00 UTC
        let told = |offset| {
            let day = day(evening, offset);
            (day.year, day.month, day.day)
        };
        assert_eq!(told(UtcOffset::UTC), (2025, 12, 31));
        assert_eq!(told(east), (2026, 1, 1));
    }
}
