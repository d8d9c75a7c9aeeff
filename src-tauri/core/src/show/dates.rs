//! Days by the rules of a time zone, and days in words.
//!
//! Source: the IANA time zone database, bundled with the `jiff` library, so that every
//! shell gives the same day and the core reads no file. Limit: rules that a country
//! changes later are known only to a later build.

use crate::throw::Time;
use crate::types::TS;
use crate::words::Words;
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::{TimeZone, TimeZoneDatabase};
use serde::{Deserialize, Serialize};
use std::sync::OnceLock;

/// The name of a time zone in the IANA database, such as `Europe/Berlin`; a POSIX rule,
/// such as `CET-1CEST,M3.5.0,M10.5.0/3`, is understood too. An unknown name means UTC.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(transparent)]
pub struct ZoneName(String);

impl ZoneName {
    /// The zone of this name.
    pub fn named(name: impl Into<String>) -> ZoneName {
        ZoneName(name.into())
    }

    /// Its calendar.
    pub fn calendar(&self) -> Calendar {
        static KNOWN: OnceLock<TimeZoneDatabase> = OnceLock::new();
        let known = KNOWN.get_or_init(TimeZoneDatabase::bundled);
        let rules = known
            .get(&self.0)
            .or_else(|_| TimeZone::posix(&self.0))
            .unwrap_or(TimeZone::UTC);
        Calendar(rules)
    }
}

/// The days of a time zone.
#[derive(Debug, Clone)]
pub struct Calendar(TimeZone);

impl Calendar {
    /// The day on which a moment (milliseconds since 1970, UTC) falls, by the offset that
    /// the zone's clocks had at that moment. A moment outside the calendar falls on the
    /// day of the count's beginning.
    pub fn day(&self, at: Time) -> Day {
        let when = Timestamp::from_millisecond(at).unwrap_or(Timestamp::UNIX_EPOCH);
        Day(self.0.to_datetime(when).date())
    }
}

/// A day of the calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Day(Date);

impl Day {
    /// As ISO 8601 writes it: `2026-01-31`.
    pub(super) fn iso(self) -> String {
        self.0.to_string()
    }

    /// Its year, month and day of the month, the latter two from 1.
    pub(super) fn parts(self) -> [i32; 3] {
        [
            self.0.year().into(),
            self.0.month().into(),
            self.0.day().into(),
        ]
    }

    /// The day of the week from 1, a Monday, to 7.
    pub(super) fn weekday(self) -> i8 {
        self.0.weekday().to_monday_one_offset()
    }
}

/// A day in words.
pub fn date(day: Day, words: &Words) -> String {
    let [year, month, day] = day.parts();
    let month = say!(words, format!("ui-month-{month}"));
    // A year is no count: it takes no thousands sign.
    say!(
        words,
        "ui-date",
        day = day,
        month = month,
        year = year.to_string()
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn iso(zone: &str, at: Time) -> String {
        ZoneName::named(zone).calendar().day(at).iso()
    }

    const HOUR: Time = 3_600_000;

    /// The European Union's clocks go forward at 01:00 UTC on the last Sunday of March and
    /// back at 01:00 UTC on the last Sunday of October (Directive 2000/84/EC, articles 2
    /// and 3); the United States' at 02:00 local time on the second Sunday of March and
    /// the first of November (15 U.S.C. § 260a). The moments below are worked by hand:
    /// 1 July 2026, 00:00 UTC is 1 782 864 000 s, 1 January 2026, 00:00 UTC 1 767 225 600 s.
    #[test]
    fn a_day_ends_by_the_clocks_of_its_own_season() {
        let summer = 1_782_864_000_000;
        let winter = 1_767_225_600_000;
        // In Berlin midnight is at 22:00 UTC in summer and at 23:00 UTC in winter.
        assert_eq!(iso("Europe/Berlin", summer - 2 * HOUR - 1), "2026-06-30");
        assert_eq!(iso("Europe/Berlin", summer - 2 * HOUR), "2026-07-01");
        assert_eq!(iso("Europe/Berlin", winter - 2 * HOUR), "2025-12-31");
        assert_eq!(iso("Europe/Berlin", winter - HOUR), "2026-01-01");
        // In New York it is at 04:00 UTC in summer and at 05:00 UTC in winter.
        assert_eq!(iso("America/New_York", summer + 4 * HOUR - 1), "2026-06-30");
        assert_eq!(iso("America/New_York", summer + 4 * HOUR), "2026-07-01");
        assert_eq!(iso("America/New_York", winter + 4 * HOUR), "2025-12-31");
        assert_eq!(iso("America/New_York", winter + 5 * HOUR), "2026-01-01");
    }

    #[test]
    fn a_zone_is_known_by_its_name_or_by_a_rule() {
        let late = 1_767_222_000_000; // 31 December 2025, 23:00 UTC
        assert_eq!(iso("UTC", late), "2025-12-31");
        assert_eq!(iso("Australia/Brisbane", late), "2026-01-01");
        assert_eq!(iso("AEST-10", late), "2026-01-01");
        for unknown in ["", "Nowhere/At_All", "\u{0}", "../../etc/passwd"] {
            assert_eq!(iso(unknown, late), "2025-12-31", "{unknown}");
        }
    }

    #[test]
    fn a_week_begins_on_monday() {
        // 1 January 1970 was a Thursday.
        assert_eq!(ZoneName::named("UTC").calendar().day(0).weekday(), 4);
    }

    proptest! {
        /// No moment breaks the calendar, a later one falls on no earlier day, and two
        /// places give the same moment at most two days apart (UTC-12 to UTC+14).
        #[test]
        fn every_moment_has_its_day(at in any::<Time>(), later in 0..400 * 24 * HOUR) {
            let edges = [at, Time::MIN, Time::MAX, 253_402_207_200_999, -377_705_023_201_000];
            for at in edges {
                ZoneName::named("Pacific/Kiritimati").calendar().day(at);
                ZoneName::named("Etc/GMT+12").calendar().day(at);
            }
            let at = at.rem_euclid(4_000_000_000_000);
            let here = ZoneName::named("Europe/Berlin").calendar();
            prop_assert!(here.day(at) <= here.day(at + later));
            let east = ZoneName::named("Pacific/Kiritimati").calendar().day(at);
            let west = ZoneName::named("Etc/GMT+12").calendar().day(at);
            prop_assert!(west <= east && east.0.since(west.0).unwrap().get_days() <= 2);
        }
    }
}
