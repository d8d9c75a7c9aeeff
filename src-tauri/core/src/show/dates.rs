//! Days in words.

use crate::words::Words;

/// A day, handed in by whoever has a calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Day {
    /// The year.
    pub year: i32,
    /// The month, from 1.
    pub month: u8,
    /// The day of the month, from 1.
    pub day: u8,
}

/// A day in words.
pub fn date(day: Day, words: &Words) -> String {
    let month = say!(words, format!("ui-month-{}", day.month));
    // A year is no count: it takes no thousands sign.
    say!(
        words,
        "ui-date",
        day = day.day,
        month = month,
        year = day.year.to_string()
    )
}
