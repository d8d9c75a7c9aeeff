//! Lengths as a ruler shows them: typed, kept and shown without losing anything.
//!
//! A throw is cut with an inch ruler from cloth bought by the metre, so both
//! systems must hold exactly at the same time. A [`Length`] is a whole number of
//! nanometres (around a `uom` quantity over `i64`), because both of the trade's finest
//! marks are whole numbers of them:
//!
//! * 1/64 in = 25 400 000 nm / 64 = 396 875 nm (1 in = 25.4 mm exactly; NIST
//!   Handbook 44, Appendix C),
//! * 0.1 mm = 100 000 nm.
//!
//! Promises: adding and subtracting never rounds; [`parse`] keeps what was typed
//! or refuses it; [`read`] and [`read_exact`] say when what they show was rounded; and
//! what they show without rounding, `parse` takes back to the same length.
//!
//! Limits: lengths from 0 to 100 m may be typed, and up to a kilometre either way are read
//! from a file or the window ([`bounds`]). Areas, masses and thicknesses are floating point
//! (`uom::si::f64`), since square nanometres overflow an `i64` near 9 m².
//!
//! A length is not a number and not an area. What is said here compiles:
//!
//! ```
//! use lapwork_core::measure::{Length, inches, nm, square_metres};
//! let (sum, twice, area) = (inches(1) + inches(1), inches(1) * 2, square_metres(inches(1), inches(1)));
//! let longer: Length = sum - twice + nm(5);
//! ```
//!
//! and mixing them does not:
//!
//! ```compile_fail
//! use lapwork_core::measure::{inches, square_metres};
//! let nonsense = inches(1) + square_metres(inches(1), inches(1));
//! ```
//!
//! ```compile_fail
//! use lapwork_core::measure::inches;
//! let nonsense = inches(1) + 5;
//! ```
//!
//! ```compile_fail
//! use lapwork_core::measure::{Length, inches};
//! let nonsense: Length = inches(1) * inches(1);
//! ```
//!
//! ```compile_fail
//! use lapwork_core::measure::Length;
//! let nonsense: Length = 5;
//! ```
//!
//! ```compile_fail
//! use lapwork_core::measure::inches;
//! let nonsense = inches(1) < 5;
//! ```

pub mod bounds;
mod count;
mod length;
pub mod limits;
pub mod outline;

pub use count::Count;
pub use length::{ADDED_SAFELY, Length, MOST_NM, in_nm, nm};

use crate::types::TS;
use serde::{Deserialize, Serialize};
use thiserror::Error;
use unic_langid::LanguageIdentifier;

/// An area in square metres, floating point.
pub type Area = uom::si::f64::Area;

/// Nanometres in an inch (NIST Handbook 44, Appendix C: 1 in = 25.4 mm exactly).
pub const NM_PER_INCH: i64 = 25_400_000;
/// Nanometres in a millimetre.
pub const NM_PER_MM: i64 = 1_000_000;
/// The longest length that may be typed: 100 m.
const LONGEST_NM: i128 = 100_000 * NM_PER_MM as i128;

/// A length of `count` inches, exactly.
pub fn inches(count: i64) -> Length {
    nm(count * NM_PER_INCH)
}

/// A length of `count` half inches, exactly.
pub fn half_inches(count: i64) -> Length {
    nm(count * (NM_PER_INCH / 2))
}

/// A length of `count` quarters of an inch, exactly.
pub fn quarter_inches(count: i64) -> Length {
    nm(count * (NM_PER_INCH / 4))
}

/// A length of `count` eighths of an inch, exactly.
pub fn eighth_inches(count: i64) -> Length {
    nm(count * (NM_PER_INCH / 8))
}

/// A length of `count` sixty-fourths of an inch, exactly.
pub fn sixty_fourths(count: i64) -> Length {
    nm(count * (NM_PER_INCH / 64))
}

/// A length of `count` millimetres, exactly.
pub fn millimetres(count: i64) -> Length {
    nm(count * NM_PER_MM)
}

/// A length of `count` tenths of a millimetre, exactly.
pub fn tenths_of_mm(count: i64) -> Length {
    nm(count * (NM_PER_MM / 10))
}

/// `length` in millimetres, for drawing and statistics.
pub fn in_mm(length: Length) -> f64 {
    in_nm(length) as f64 / NM_PER_MM as f64
}

/// The length nearest to `mm` millimetres (half a nanometre at most away), a kilometre
/// either way at most; none for what is no number.
pub fn from_mm(mm: f64) -> Length {
    nm(((mm * NM_PER_MM as f64).round() as i64).clamp(-MOST_NM, MOST_NM))
}

/// The area of a rectangle, in floating point.
pub fn square_metres(width: Length, height: Length) -> Area {
    let metres = |l: Length| uom::si::f64::Length::new::<uom::si::length::meter>(in_mm(l) / 1000.0);
    metres(width) * metres(height)
}

/// No length at all.
pub fn zero() -> Length {
    nm(0)
}

/// The system of measures the maker works in at the moment.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum System {
    /// Inches and their fractions.
    Inch,
    /// Millimetres or centimetres.
    Metric,
}

impl System {
    /// The mark to which an outline is dragged: 1/8 in, or 1 mm.
    pub fn mark(self) -> Length {
        match self {
            System::Inch => eighth_inches(1),
            System::Metric => millimetres(1),
        }
    }

    /// The system of units to begin with on a system with the locale `tag` (`de-AT`,
    /// `en_GB.UTF-8`): inches where CLDR's supplemental data name the US or the UK measures
    /// (US, GB, LR, MM; from memory), metric in every other region. Without a region inches for
    /// English, since patchwork in English is in inches (common practice, no source), and
    /// wherever the tag names no language, such as `C` or `POSIX`.
    pub fn customary(tag: &str) -> System {
        let tag = tag.split(['.', '@']).next().unwrap_or_default();
        // What follows a single letter is an extension, and says nothing of the region.
        let parts = tag.split(['-', '_']).take_while(|part| part.len() > 1);
        let tag = parts.collect::<Vec<_>>().join("-");
        let Ok(tag) = tag.parse::<LanguageIdentifier>() else {
            return System::Inch;
        };
        let inches = match tag.region {
            Some(region) => ["US", "GB", "LR", "MM"].contains(&region.as_str()),
            None => ["en", "posix"].contains(&tag.language.as_str()),
        };
        if inches { System::Inch } else { System::Metric }
    }
}

/// The finest mark on the maker's inch ruler.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Fraction {
    /// 1/8 in.
    Eighth,
    /// 1/16 in.
    Sixteenth,
    /// 1/32 in.
    ThirtySecond,
    /// 1/64 in.
    SixtyFourth,
}

impl Fraction {
    /// Marks in an inch: 8, 16, 32 or 64.
    pub fn marks(self) -> i64 {
        match self {
            Fraction::Eighth => 8,
            Fraction::Sixteenth => 16,
            Fraction::ThirtySecond => 32,
            Fraction::SixtyFourth => 64,
        }
    }
}

/// The metric unit the maker prefers to read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum MetricUnit {
    /// Millimetres, to a tenth.
    Mm,
    /// Centimetres, to a hundredth.
    Cm,
}

/// How lengths are read and typed at the moment. Changing it changes no length.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
pub struct Ruler {
    /// Inches or metric.
    pub system: System,
    /// Finest inch mark shown.
    pub fraction: Fraction,
    /// Millimetres or centimetres.
    pub metric: MetricUnit,
}

impl Default for Ruler {
    fn default() -> Self {
        Ruler {
            system: System::Inch,
            fraction: Fraction::Sixteenth,
            metric: MetricUnit::Mm,
        }
    }
}

impl Ruler {
    /// The smallest step this ruler shows: one inch mark, or a millimetre.
    pub fn step(self) -> Length {
        match self.system {
            System::Inch => nm(NM_PER_INCH / self.fraction.marks()),
            System::Metric => nm(NM_PER_MM),
        }
    }

    /// The same ruler turned over: its other system.
    pub fn other(self) -> Ruler {
        let system = match self.system {
            System::Inch => System::Metric,
            System::Metric => System::Inch,
        };
        Ruler { system, ..self }
    }

    /// The first mark of this ruler at or above `length`.
    pub fn at_least(self, length: Length) -> Length {
        let step = in_nm(self.step());
        let short = in_nm(length).rem_euclid(step);
        length + nm((step - short) % step)
    }

    /// The last mark of this ruler at or below `length`.
    pub fn at_most(self, length: Length) -> Length {
        nm(in_nm(length) - in_nm(length).rem_euclid(in_nm(self.step())))
    }

    /// `length` rounded to the nearest step of this ruler (halves go up).
    pub fn nearest(self, length: Length) -> Length {
        let step = in_nm(self.step());
        nm((in_nm(length) + step / 2).div_euclid(step) * step)
    }
}

/// A length taken apart for showing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Reading {
    /// The length was below nothing (a shortfall).
    pub negative: bool,
    /// What is shown differs from the length itself.
    pub rounded: bool,
    /// The digits.
    pub digits: Digits,
}

/// The digits of a [`Reading`], by unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Digits {
    /// Whole inches and a reduced fraction `num`/`den` (0/1 when there is none).
    Inches {
        /// Whole inches.
        whole: i64,
        /// Numerator.
        num: i64,
        /// Denominator, a power of two up to 64.
        den: i64,
    },
    /// Tenths of a millimetre.
    Mm {
        /// Tenths.
        tenths: i64,
    },
    /// Hundredths of a centimetre.
    Cm {
        /// Hundredths.
        hundredths: i64,
    },
}

/// Read `length` off `ruler`: reduced inch fractions, or whole millimetres. Tenths of one are read
/// only where they were measured so: of what is a whole number of half inches, as most sizes of a
/// throw planned in inches are, they come of converting it (½ in is 12.7 mm), and no ruler has
/// marks for them.
pub fn read(length: Length, ruler: Ruler) -> Reading {
    let total = in_nm(length);
    let is_metric = total % TENTH == 0 && total % (NM_PER_INCH / 2) != 0;
    match ruler.system {
        System::Metric if !is_metric => read_in(length, ruler, NM_PER_MM),
        _ => read_exact(length, ruler),
    }
}

/// The same with tenths of a millimetre wherever there are any: what was typed, as it is typed
/// again, and what is set or compared more finely than a ruler marks it.
pub fn read_exact(length: Length, ruler: Ruler) -> Reading {
    read_in(length, ruler, TENTH)
}

/// A tenth of a millimetre.
const TENTH: i64 = NM_PER_MM / 10;

/// Read a length off a ruler, metric to so many nanometres.
fn read_in(length: Length, ruler: Ruler, metric: i64) -> Reading {
    let total = in_nm(length);
    let size = total.abs();
    let nearest = |step: i64| (size + step / 2) / step;
    let (count, step, digits) = match ruler.system {
        System::Inch => {
            let marks = ruler.fraction.marks();
            let step = NM_PER_INCH / marks;
            let count = nearest(step);
            let (mut num, mut den) = (count % marks, marks);
            while num % 2 == 0 && den > 1 {
                num /= 2;
                den /= 2;
            }
            let whole = count / marks;
            (count, step, Digits::Inches { whole, num, den })
        }
        System::Metric => {
            let count = nearest(metric);
            let tenths = count * (metric / TENTH);
            let digits = match ruler.metric {
                MetricUnit::Mm => Digits::Mm { tenths },
                MetricUnit::Cm => Digits::Cm { hundredths: tenths },
            };
            (count, metric, digits)
        }
    };
    Reading {
        negative: total < 0 && count > 0,
        rounded: count * step != size,
        digits,
    }
}

/// A decimal number of `tenths` or `hundredths` with no needless zeros.
fn decimal(count: i64, places: u32, point: char) -> String {
    let one = 10_i64.pow(places);
    let (whole, mut rest) = (count / one, count % one);
    let mut width = places as usize;
    if rest == 0 {
        return whole.to_string();
    }
    while rest % 10 == 0 {
        rest /= 10;
        width -= 1;
    }
    format!("{whole}{point}{rest:0width$}")
}

impl Digits {
    /// The digits alone, such as `9 1/2`, with `½` where such a sign exists, or
    /// `241.3`. `point` is the language's decimal sign.
    pub fn number(self, point: char) -> String {
        match self {
            Digits::Inches { whole, num, den } => {
                let part = match (num, den) {
                    (0, _) => String::new(),
                    (1, 2) => "½".into(),
                    (1, 4) => "¼".into(),
                    (3, 4) => "¾".into(),
                    (1, 8) => "⅛".into(),
                    (3, 8) => "⅜".into(),
                    (5, 8) => "⅝".into(),
                    (7, 8) => "⅞".into(),
                    (n, d) => format!("{n}/{d}"),
                };
                match (whole, part.as_str()) {
                    (w, "") => w.to_string(),
                    (0, p) => p.to_string(),
                    (w, p) if p.contains('/') => format!("{w}\u{a0}{p}"),
                    (w, p) => format!("{w}{p}"),
                }
            }
            Digits::Mm { tenths } => decimal(tenths, 1, point),
            Digits::Cm { hundredths } => decimal(hundredths, 2, point),
        }
    }

    /// The unit as its sign goes round the world: `in`, `mm` or `cm`.
    pub fn unit(self) -> &'static str {
        match self {
            Digits::Inches { .. } => "in",
            Digits::Mm { .. } => "mm",
            Digits::Cm { .. } => "cm",
        }
    }

    /// The digits and that sign, such as `9½ in` or `241.3 mm`.
    pub fn print(self, point: char) -> String {
        format!("{}\u{a0}{}", self.number(point), self.unit())
    }
}

/// Why a typed length was not taken.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum ParseError {
    /// Nothing was typed.
    #[error("nothing was typed")]
    Empty,
    /// Not a number with a unit.
    #[error("not a number with a unit")]
    NotALength,
    /// A minus sign.
    #[error("a length cannot be negative")]
    Negative,
    /// Could be read two ways: `1,234`, or a bare fraction while working in metric.
    #[error("the number can be read in two ways")]
    Ambiguous,
    /// A fraction that falls on no ruler mark, such as 1/3 in; the nearest 1/16.
    #[error("not on a mark of the ruler; the nearest is {nearest}")]
    OffTheMarks {
        /// The nearest length on a sixteenth-inch ruler.
        nearest: Length,
    },
    /// Over 100 m.
    #[error("longer than 100 m")]
    TooLong,
    /// A unit nobody here knows.
    #[error("unknown unit {0:?}")]
    UnknownUnit(String),
}

/// Units that may be typed in any language, with their nanometres.
const UNITS: &[(&str, i64)] = &[
    ("in.", NM_PER_INCH),
    ("in", NM_PER_INCH),
    ("\"", NM_PER_INCH),
    ("''", NM_PER_INCH),
    ("ft", 12 * NM_PER_INCH),
    ("yd", 36 * NM_PER_INCH),
    ("mm", NM_PER_MM),
    ("cm", 10 * NM_PER_MM),
    ("m", 1000 * NM_PER_MM),
];

/// How a language writes lengths.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Writing {
    /// Its decimal sign.
    pub point: char,
    /// Its words for units, in small letters, with their nanometres; `in`, `"`, `mm` and
    /// the like are taken everywhere.
    pub units: Vec<(String, i64)>,
}

impl Default for Writing {
    fn default() -> Self {
        Writing {
            point: '.',
            units: Vec::new(),
        }
    }
}

/// Take a length as people write it.
///
/// Units: a unit may be typed (`in`, `"`, `ft`, `yd`, `mm`, `cm`, `m`); a bare
/// number takes the ruler's own. Forms: `9 1/2`, `9½`, `9-1/2 in`, `9.5"`,
/// `24,1 cm`, `241mm`.
///
/// # Errors
/// A [`ParseError`] naming what was wrong; nothing is guessed or rounded.
pub fn parse(typed: &str, ruler: Ruler) -> Result<Length, ParseError> {
    parse_as(typed, ruler, &Writing::default())
}

/// Take a length as people of a language write it: as [`parse`] does, with the language's
/// own words for units (`9½ Zoll`).
///
/// A point and a comma are both taken as decimal signs, since keyboards and habits
/// differ. What could be a sign for thousands is refused: a number with both, and one
/// with exactly three digits behind, and one to three before, the sign that is not
/// the language's own (`1,234` in English, `1.234` in German). Behind its own sign three
/// digits are decimals.
///
/// # Errors
/// A [`ParseError`], as with [`parse`].
pub fn parse_as(typed: &str, ruler: Ruler, writing: &Writing) -> Result<Length, ParseError> {
    if typed.chars().count() > 60 {
        return Err(ParseError::NotALength);
    }
    let text = tidy(typed);
    if text.is_empty() {
        return Err(ParseError::Empty);
    }
    if text.starts_with('-') {
        return Err(ParseError::Negative);
    }
    let split = text
        .find(|c: char| !(c.is_ascii_digit() || " .,/-".contains(c)))
        .unwrap_or(text.len());
    let (number, unit) = (text[..split].trim(), text[split..].trim());
    if number.is_empty() {
        return Err(ParseError::NotALength);
    }
    let per_unit = if unit.is_empty() {
        match (ruler.system, ruler.metric) {
            (System::Inch, _) => NM_PER_INCH,
            (System::Metric, _) if number.contains('/') => return Err(ParseError::Ambiguous),
            (System::Metric, MetricUnit::Mm) => NM_PER_MM,
            (System::Metric, MetricUnit::Cm) => 10 * NM_PER_MM,
        }
    } else {
        let own = writing
            .units
            .iter()
            .map(|(name, size)| (name.as_str(), *size));
        own.chain(UNITS.iter().copied())
            .find(|(name, _)| *name == unit)
            .map(|(_, size)| size)
            .ok_or_else(|| {
                if unit.chars().any(|c| c.is_ascii_digit()) {
                    ParseError::NotALength
                } else {
                    ParseError::UnknownUnit(unit.to_string())
                }
            })?
    };
    let (num, den) = rational(number, writing.point)?;
    let scaled = num * i128::from(per_unit);
    if scaled / den > LONGEST_NM {
        return Err(ParseError::TooLong);
    }
    if scaled % den != 0 {
        let mark = i128::from(NM_PER_INCH / 16);
        let nearest = (scaled + den * mark / 2) / (den * mark) * mark;
        return Err(ParseError::OffTheMarks {
            nearest: nm(nearest as i64),
        });
    }
    Ok(nm((scaled / den) as i64))
}

/// One spelling for the many signs people type: plain digits, `/`, `"`, `-`.
fn tidy(typed: &str) -> String {
    let mut out = String::with_capacity(typed.len());
    for c in typed.trim().chars() {
        let fraction = match c {
            '½' => "1/2",
            '¼' => "1/4",
            '¾' => "3/4",
            '⅛' => "1/8",
            '⅜' => "3/8",
            '⅝' => "5/8",
            '⅞' => "7/8",
            '⅓' => "1/3",
            '⅔' => "2/3",
            _ => "",
        };
        match c {
            _ if !fraction.is_empty() => {
                if out.ends_with(|c: char| c.is_ascii_digit()) {
                    out.push(' ');
                }
                out.push_str(fraction);
            }
            '\u{2044}' | '\u{2215}' => out.push('/'),
            '\u{2033}' | '\u{201d}' | '\u{201c}' => out.push('"'),
            '\u{2019}' | '\u{2032}' => out.push('\''),
            '\u{2212}' | '\u{2010}'..='\u{2014}' => out.push('-'),
            c if c.is_whitespace() => out.push(' '),
            c => out.extend(c.to_lowercase()),
        }
    }
    out
}

/// `9`, `9.5`, `9,5`, `1/2`, `9 1/2` or `9-1/2` as a fraction of whole numbers.
fn rational(number: &str, point: char) -> Result<(i128, i128), ParseError> {
    let whole_number = |s: &str| -> Result<i128, ParseError> {
        if s.is_empty() || s.len() > 12 || !s.bytes().all(|b| b.is_ascii_digit()) {
            return Err(ParseError::NotALength);
        }
        s.parse().map_err(|_| ParseError::NotALength)
    };
    if let Some((front, den)) = number.split_once('/') {
        let den = whole_number(den.trim())?;
        if den == 0 {
            return Err(ParseError::NotALength);
        }
        let front = front.trim();
        let (whole, num) = match front.find([' ', '-']) {
            Some(end) => {
                let (whole, rest) = front.split_at(end);
                let num = rest.trim_start_matches([' ', '-']);
                let between = &rest[..rest.len() - num.len()];
                // `9-5/8` is 9⅝; what else has a minus could mean that it is taken off.
                if between != "-" && between.contains('-') {
                    return Err(ParseError::NotALength);
                }
                (whole_number(whole)?, whole_number(num)?)
            }
            None => (0, whole_number(front)?),
        };
        return Ok((whole * den + num, den));
    }
    if number.contains(['-', ' ']) {
        return Err(ParseError::NotALength);
    }
    match number.split_once(['.', ',']) {
        None => Ok((whole_number(number)?, 1)),
        Some((_, part)) if part.contains(['.', ',']) => Err(ParseError::Ambiguous),
        Some((front, part)) => {
            let thousands = !number.contains(point) && part.len() == 3 && front.len() <= 3;
            if thousands && whole_number(front).is_ok_and(|n| n > 0) {
                return Err(ParseError::Ambiguous);
            }
            let front = if front.is_empty() { "0" } else { front };
            let den = 10_i128.pow(part.len().min(12) as u32);
            Ok((whole_number(front)? * den + whole_number(part)?, den))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_minus_before_a_fraction_is_not_taken_for_a_join() {
        let ruler = Ruler::default();
        let nine_and_five_eighths = Ok(sixty_fourths(9 * 64 + 40));
        for typed in ["9-5/8", "9 5/8", "9  5/8", "9\u{2013}5/8"] {
            assert_eq!(parse(typed, ruler), nine_and_five_eighths, "{typed}");
        }
        for typed in ["9 -5/8", "9--5/8", "9 - 5/8", "9- 5/8", "9-"] {
            assert_eq!(parse(typed, ruler), Err(ParseError::NotALength), "{typed}");
        }
    }

    /// Each part of a fraction is a whole number of its own, and nothing is divided by nothing.
    #[test]
    fn a_part_of_a_fraction_that_is_no_whole_number_is_refused() {
        let ruler = Ruler::default();
        let wrong = [
            "1/",
            "/8",
            "/",
            "1/0",
            "1/2/4",
            "9 1/2/4",
            "1/2.5",
            "1.5/8",
            "9.5 1/2",
            "a 1/2",
            "9 a/2",
            "9 1/b",
            "1 2 3/8",
            "1/-8",
            "1/2 8",
            "1000000000000/8000000000000",
        ];
        for typed in wrong {
            assert!(parse(typed, ruler).is_err(), "{typed}");
        }
        // Up to twelve digits are read.
        let eighth = parse("100000000000/800000000000", ruler);
        assert_eq!(eighth, Ok(sixty_fourths(8)));
    }

    /// On sixteenths one mark below nothing is read with its minus, and what is nearest to nothing without.
    #[test]
    fn nothing_is_not_below_nothing() {
        let below = |n: i64| read(zero() - sixty_fourths(n), Ruler::default()).negative;
        assert_eq!(
            [4, 8, 1, 0, -4].map(below),
            [true, true, false, false, false]
        );
    }

    #[test]
    fn the_next_mark_and_the_last_one() {
        let ruler = Ruler::default();
        // Of sixteenths, in sixty-fourths: from 5 up to 8 and down to 4; a mark stays where it is.
        for (length, above, below) in [(5, 8, 4), (7, 8, 4), (8, 8, 8), (9, 12, 8), (0, 0, 0)] {
            let length = sixty_fourths(length);
            assert_eq!(ruler.at_least(length), sixty_fourths(above), "{length:?}");
            assert_eq!(ruler.at_most(length), sixty_fourths(below), "{length:?}");
        }
    }

    fn inch_ruler(fraction: Fraction) -> Ruler {
        Ruler {
            fraction,
            ..Ruler::default()
        }
    }
    fn metric_ruler(metric: MetricUnit) -> Ruler {
        Ruler {
            system: System::Metric,
            metric,
            ..Ruler::default()
        }
    }

    #[test]
    fn begins_in_the_measures_of_the_region() {
        for tag in [
            "",
            "C",
            "C.UTF-8",
            "POSIX",
            "en",
            "en-US",
            "en_US.UTF-8",
            "en-GB",
            "en-Latn-US",
            "es-US",
            "my-MM",
            "EN",
            "en-u-hc-h12",
        ] {
            assert_eq!(System::customary(tag), System::Inch, "{tag}");
        }
        for tag in [
            "de",
            "de-DE",
            "de_AT.UTF-8",
            "de_CH@euro",
            "en-AU",
            "en_IE",
            "fr",
            "zh-Hant-TW",
            "es-419",
            "gsw",
            "de-u-us-x",
        ] {
            assert_eq!(System::customary(tag), System::Metric, "{tag}");
        }
    }

    #[track_caller]
    fn check(typed: &str, ruler: Ruler, want: Result<Length, ParseError>) {
        assert_eq!(parse(typed, ruler), want, "typed {typed:?}");
    }

    #[test]
    fn lengths_as_people_type_them() {
        let inch = Ruler::default();
        for typed in [
            "9 1/2",
            "9½",
            "9-1/2 in",
            "9.5\"",
            "9,5 in",
            "9 1⁄2″",
            "9 ½ in.",
        ] {
            check(typed, inch, Ok(half_inches(19)));
        }
        check("24,1 cm", inch, Ok(tenths_of_mm(2410)));
        check("241mm", inch, Ok(tenths_of_mm(2410)));
        check("24.1", metric_ruler(MetricUnit::Cm), Ok(tenths_of_mm(2410)));
        check("241", metric_ruler(MetricUnit::Mm), Ok(tenths_of_mm(2410)));
        check("⅛", inch, Ok(eighth_inches(1)));
        check("9⅜", inch, Ok(eighth_inches(75)));
        check("0,125 in", inch, Ok(eighth_inches(1)));
        check("2 yd", inch, Ok(inches(72)));
        check(" 9  1/2 in", inch, Ok(half_inches(19)));
        check(".5", inch, Ok(half_inches(1)));
    }

    #[test]
    fn what_is_unclear_is_refused() {
        let inch = Ruler::default();
        check("", inch, Err(ParseError::Empty));
        check("-3", inch, Err(ParseError::Negative));
        check("−3 mm", inch, Err(ParseError::Negative));
        check("1,234", inch, Err(ParseError::Ambiguous));
        check("123,456 mm", inch, Err(ParseError::Ambiguous));
        // Nobody writes a sign for thousands behind four digits.
        check("1234,567 mm", inch, Ok(nm(1_234_567_000)));
        check("1,234.5 mm", inch, Err(ParseError::Ambiguous));
        check(
            "9 1/2",
            metric_ruler(MetricUnit::Mm),
            Err(ParseError::Ambiguous),
        );
        check("9 10", inch, Err(ParseError::NotALength));
        check("9 1/0", inch, Err(ParseError::NotALength));
        check("five", inch, Err(ParseError::NotALength));
        check(
            "9 parsecs",
            inch,
            Err(ParseError::UnknownUnit("parsecs".into())),
        );
        check("3 ft 2 in", inch, Err(ParseError::NotALength));
        check(
            "1/3",
            inch,
            Err(ParseError::OffTheMarks {
                nearest: sixty_fourths(20),
            }),
        );
        // 2/7 in is 4.57 sixteenths, 4/7 in 9.14.
        for (typed, sixteenths) in [("2/7", 5), ("4/7", 9)] {
            let nearest = sixty_fourths(4 * sixteenths);
            check(typed, inch, Err(ParseError::OffTheMarks { nearest }));
        }
        check("999999 m", inch, Err(ParseError::TooLong));
        // A hundred metres and no more.
        check("100 m", inch, Ok(millimetres(100_000)));
        check("100001 mm", inch, Err(ParseError::TooLong));
        check(
            "999999999999 999999999999/999999999999 m",
            inch,
            Err(ParseError::TooLong),
        );
    }

    #[test]
    fn each_language_has_its_decimal_sign_and_units() {
        let german = Writing {
            point: ',',
            units: vec![("zoll".into(), NM_PER_INCH)],
        };
        let check = |typed, want| {
            let ruler = metric_ruler(MetricUnit::Mm);
            assert_eq!(parse_as(typed, ruler, &german), want, "typed {typed:?}");
        };
        check("9½ Zoll", Ok(half_inches(19)));
        check("9 1/2 ZOLL", Ok(half_inches(19)));
        check("9,5 in", Ok(half_inches(19)));
        check("9.5\"", Ok(half_inches(19)));
        check("241,3", Ok(tenths_of_mm(2413)));
        check("241.3 mm", Ok(tenths_of_mm(2413)));
        check("1,234 mm", Ok(nm(1_234_000)));
        check("1.234 mm", Err(ParseError::Ambiguous));
        check("1.234,5 mm", Err(ParseError::Ambiguous));
        check("0.125 in", Ok(eighth_inches(1)));
        check("9 pouces", Err(ParseError::UnknownUnit("pouces".into())));
        let zoll = parse("9 Zoll", Ruler::default());
        assert_eq!(zoll, Err(ParseError::UnknownUnit("zoll".into())));
        assert_eq!(parse("1.234 mm", Ruler::default()), Ok(nm(1_234_000)));
    }

    #[test]
    fn shown_in_both_systems() {
        let check = |length, ruler, want: &str, rounded| {
            let reading = read(length, ruler);
            assert_eq!(reading.digits.print('.').replace('\u{a0}', " "), want);
            assert_eq!(reading.rounded, rounded, "{want}");
        };
        let four = half_inches(19);
        check(four, inch_ruler(Fraction::Eighth), "9½ in", false);
        // What comes of inches is read to the ruler's millimetre; what was measured in tenths is not.
        check(four, metric_ruler(MetricUnit::Mm), "241 mm", true);
        check(four, metric_ruler(MetricUnit::Cm), "24.1 cm", true);
        check(inches(5), metric_ruler(MetricUnit::Mm), "127 mm", false);
        check(half_inches(-1), metric_ruler(MetricUnit::Mm), "13 mm", true);
        let taped = tenths_of_mm(2414);
        check(taped, metric_ruler(MetricUnit::Mm), "241.4 mm", false);
        check(taped, metric_ruler(MetricUnit::Cm), "24.14 cm", false);
        for (unit, want) in [(MetricUnit::Mm, "241.3 mm"), (MetricUnit::Cm, "24.13 cm")] {
            let exact = read_exact(four, metric_ruler(unit));
            assert_eq!(exact.digits.print('.').replace('\u{a0}', " "), want);
            assert!(!exact.rounded);
        }
        check(
            sixty_fourths(21),
            inch_ruler(Fraction::SixtyFourth),
            "21/64 in",
            false,
        );
        check(
            sixty_fourths(21),
            inch_ruler(Fraction::Eighth),
            "⅜ in",
            true,
        );
        check(
            sixty_fourths(64 + 4),
            inch_ruler(Fraction::Sixteenth),
            "1 1/16 in",
            false,
        );
        check(eighth_inches(1), metric_ruler(MetricUnit::Mm), "3 mm", true);
        check(
            tenths_of_mm(1000),
            inch_ruler(Fraction::Sixteenth),
            "3 15/16 in",
            true,
        );
        check(
            tenths_of_mm(50),
            metric_ruler(MetricUnit::Cm),
            "0.5 cm",
            false,
        );
    }

    proptest! {
        #[test]
        fn what_is_shown_unrounded_is_taken_back(marks in 0i64..31_000, which in 0usize..4) {
            let fraction = [Fraction::Eighth, Fraction::Sixteenth, Fraction::ThirtySecond, Fraction::SixtyFourth][which];
            let length = nm(marks * NM_PER_INCH / fraction.marks());
            let reading = read(length, inch_ruler(fraction));
            prop_assert!(!reading.rounded);
            prop_assert_eq!(parse(&reading.digits.print('.'), inch_ruler(fraction)), Ok(length));
        }

        #[test]
        fn metric_likewise_with_point_or_comma(tenths in 0i64..900_000, cm in any::<bool>(), comma in any::<bool>()) {
            let ruler = metric_ruler(if cm { MetricUnit::Cm } else { MetricUnit::Mm });
            let reading = read_exact(tenths_of_mm(tenths), ruler);
            prop_assert!(!reading.rounded);
            let text = reading.digits.print(if comma { ',' } else { '.' });
            prop_assert_eq!(parse(&text, ruler), Ok(tenths_of_mm(tenths)));
            // Read for the eye it is the same, or it comes of inches and says that it was rounded.
            let seen = read(tenths_of_mm(tenths), ruler);
            prop_assert_eq!(seen.rounded, tenths % 127 == 0 && tenths % 10 != 0);
            if !seen.rounded {
                prop_assert_eq!(seen.digits, reading.digits);
            }
        }

        #[test]
        fn metric_shows_no_mark_that_no_ruler_has(sixty_fourth in 0i64..100_000, cm in any::<bool>()) {
            let ruler = metric_ruler(if cm { MetricUnit::Cm } else { MetricUnit::Mm });
            let length = sixty_fourths(sixty_fourth);
            let reading = read(length, ruler);
            prop_assert_eq!(reading.digits, read(ruler.nearest(length), ruler).digits);
            prop_assert_eq!(reading.rounded, ruler.nearest(length) != length);
        }

        #[test]
        fn three_digits_behind_the_other_sign_are_never_guessed(front in 1u32..1000, part in 0u32..1000, comma in any::<bool>()) {
            let (own, other) = if comma { (',', '.') } else { ('.', ',') };
            let writing = Writing { point: own, ..Writing::default() };
            let ruler = metric_ruler(MetricUnit::Mm);
            let typed = |sign: char| format!("{front}{sign}{part:03} mm");
            let length = nm(i64::from(front * 1000 + part) * 1000);
            prop_assert_eq!(parse_as(&typed(own), ruler, &writing), Ok(length));
            prop_assert_eq!(parse_as(&typed(other), ruler, &writing), Err(ParseError::Ambiguous));
        }

        #[test]
        fn marks_of_both_systems_add_and_survive_json(a in -9_000i64..9_000, b in -30_000i64..30_000) {
            let sum = sixty_fourths(a) + tenths_of_mm(b);
            prop_assert_eq!(sum - tenths_of_mm(b), sixty_fourths(a));
            let json = serde_json::to_string(&sum).unwrap();
            prop_assert_eq!(serde_json::from_str::<Length>(&json).unwrap(), sum);
        }

        #[test]
        fn rounding_is_never_more_than_half_a_mark(count in 0i64..2_000_000_000, which in 0usize..2) {
            let ruler = [inch_ruler(Fraction::Sixteenth), metric_ruler(MetricUnit::Mm)][which];
            let off = in_nm(ruler.nearest(nm(count))) - count;
            prop_assert!(off.abs() * 2 <= in_nm(ruler.step()));
        }

        #[test]
        fn no_text_makes_it_panic(typed in ".{0,80}") {
            let _ = parse(&typed, Ruler::default());
        }
    }
}
