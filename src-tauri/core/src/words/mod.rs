//! All words the app says, by language.
//!
//! The texts are Fluent files (`words/<language>/*.ftl`, Project Fluent syntax): one
//! for the work, one for the window, one for the files it keeps. No other module of the core
//! contains text to show. Lengths are put into words here too, since decimal signs, units and
//! names of fractions belong to the language, and a length that is shown must be accepted when
//! it is typed.
//!
//! To add a language, add a folder beside `words/en` with the same three files and a line in
//! [`LANGUAGES`]: its code, its own name, its decimal sign. The files contain plural variants,
//! names of units (`ui-unit-`), words accepted as units when typed (`unit-typed-`) and list
//! separators; `ui-date` and `ui-day` define how days are written on the screen, in the story and
//! on paper, and hours follow the code.
//!
//! Promises: [`LANGUAGES`] is the only list of languages. A sentence one language lacks is
//! said in English. Words for units are taken in every language's spelling, so that what was
//! typed before the language was changed is still read.

use crate::measure::{
    Count, Digits, Length, NM_PER_INCH, NM_PER_MM, ParseError, Reading, Ruler, Writing, read,
    read_exact,
};
use crate::types::TS;
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use serde::Serialize;
use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock};
use unic_langid::LanguageIdentifier;

/// A language the app can speak.
#[derive(Debug)]
pub struct Language {
    /// Its code (BCP 47), which picks plural rules and dates too.
    pub code: &'static str,
    /// What it is called by those who speak it.
    pub name: &'static str,
    /// Its decimal sign.
    pub point: char,
    /// Its words: for the work, the window, the shell.
    pub files: [&'static str; 3],
}

macro_rules! language {
    ($code:literal, $name:literal, $point:literal) => {
        Language {
            code: $code,
            name: $name,
            point: $point,
            files: [
                include_str!(concat!("../../words/", $code, "/work.ftl")),
                include_str!(concat!("../../words/", $code, "/window.ftl")),
                include_str!(concat!("../../words/", $code, "/shell.ftl")),
            ],
        }
    };
}

/// Every language there is; the first is spoken where no other is wished for.
pub const LANGUAGES: &[Language] = &[
    language!("en", "English", '.'),
    language!("de", "Deutsch", ','),
];

/// The language for a tag such as `de`, `de-AT` or `de_DE.UTF-8`, if there is one.
pub fn language(tag: &str) -> Option<&'static Language> {
    let tag = tag.split(['.', '@']).next()?.replace('_', "-");
    let mut tag = tag.as_str();
    loop {
        let found = LANGUAGES.iter().find(|l| l.code.eq_ignore_ascii_case(tag));
        match (found, tag.rsplit_once('-')) {
            (Some(found), _) => return Some(found),
            (None, Some((front, _))) => tag = front,
            (None, None) => return None,
        }
    }
}

/// Nanometres in each unit that may be typed, by the end of its key.
const TYPED: [(&str, i64); 6] = [
    ("in", NM_PER_INCH),
    ("ft", 12 * NM_PER_INCH),
    ("yd", 36 * NM_PER_INCH),
    ("mm", NM_PER_MM),
    ("cm", 10 * NM_PER_MM),
    ("m", 1000 * NM_PER_MM),
];

type Bundle = FluentBundle<FluentResource>;

/// The words of one language.
#[derive(Clone)]
pub struct Words {
    bundle: Arc<Bundle>,
    /// English, for what this language lacks.
    otherwise: Option<Arc<Bundle>>,
    language: &'static Language,
    writing: Arc<Writing>,
    doubled: bool,
}

/// Something put into a sentence.
#[derive(Debug, Clone)]
pub enum Arg {
    /// A count, which picks the plural.
    Count(i64),
    /// Words or a name.
    Text(String),
}

impl From<&str> for Arg {
    fn from(text: &str) -> Self {
        Arg::Text(text.to_string())
    }
}
impl From<String> for Arg {
    fn from(text: String) -> Self {
        Arg::Text(text)
    }
}
impl From<Shown> for Arg {
    fn from(shown: Shown) -> Self {
        Arg::Text(shown.text)
    }
}
macro_rules! counts {
    ($($t:ty),*) => { $(impl From<$t> for Arg {
        fn from(count: $t) -> Self { Arg::Count(count as i64) }
    })* };
}
counts!(u8, u16, u32, u64, i64, usize, i32);
impl From<Count> for Arg {
    fn from(count: Count) -> Self {
        Arg::Count(count.into())
    }
}

/// Say something: `say!(words, "grid", across = 6, down = 8)`.
macro_rules! say {
    ($words:expr, $key:expr $(, $name:ident = $value:expr)* $(,)?) => {
        $words.say(&$key, &[$((stringify!($name), $crate::words::Arg::from($value))),*])
    };
}

impl Words {
    /// The English words.
    pub fn english() -> Words {
        Words::of(LANGUAGES[0].code)
    }

    /// The words for a language tag; English where there is no such language.
    pub fn of(tag: &str) -> Words {
        // Read once: there may be many desks in one program, as in tests.
        static READ: LazyLock<Vec<Words>> = LazyLock::new(|| {
            let english = Arc::new(bundle(&LANGUAGES[0]));
            let others = LANGUAGES[1..].iter().map(|language| Words {
                bundle: Arc::new(bundle(language)),
                otherwise: Some(Arc::clone(&english)),
                language,
                writing: Arc::new(writing(language)),
                doubled: false,
            });
            let first = Words {
                bundle: Arc::clone(&english),
                otherwise: None,
                language: &LANGUAGES[0],
                writing: Arc::new(writing(&LANGUAGES[0])),
                doubled: false,
            };
            std::iter::once(first).chain(others).collect()
        });
        let wanted = language(tag).unwrap_or(&LANGUAGES[0]);
        let found = READ.iter().find(|w| w.language.code == wanted.code);
        found.unwrap_or(&READ[0]).clone()
    }

    /// The language these are the words of.
    pub fn language(&self) -> &'static Language {
        self.language
    }

    /// The same words, telling every measure in both systems, as on paper that others
    /// read: `9½ in (241.3 mm)`.
    pub fn doubled(&self) -> Words {
        Words {
            doubled: true,
            ..self.clone()
        }
    }

    /// Whether every measure is written in both systems.
    pub fn is_doubled(&self) -> bool {
        self.doubled
    }

    /// The sentence for `key`; the key itself where there is none (a test forbids it).
    pub fn say(&self, key: &str, args: &[(&str, Arg)]) -> String {
        let found = |bundle: &Bundle| bundle.get_message(key).is_some_and(|m| m.value().is_some());
        let bundle = match &self.otherwise {
            Some(english) if !found(&self.bundle) => english,
            _ => &self.bundle,
        };
        let Some(pattern) = bundle.get_message(key).and_then(|m| m.value()) else {
            return key.to_string();
        };
        let mut given = FluentArgs::new();
        for (name, arg) in args {
            let value = match arg {
                Arg::Count(n) => FluentValue::from(*n),
                Arg::Text(t) => FluentValue::from(t.as_str()),
            };
            given.set(name.to_string(), value);
        }
        let mut errors = Vec::new();
        let said = bundle
            .format_pattern(pattern, Some(&given), &mut errors)
            .into_owned();
        if cfg!(test) {
            assert!(errors.is_empty(), "{key}: {errors:?}");
        }
        said
    }

    /// Whether there is a sentence for `key`.
    pub fn has(&self, key: &str) -> bool {
        self.bundle.has_message(key)
    }

    /// Several things said one after another; `key` puts `$next` behind `$before`.
    pub fn list(&self, key: &str, items: impl IntoIterator<Item = String>) -> String {
        let joined = items.into_iter().reduce(|before, next| {
            self.say(key, &[("before", before.into()), ("next", next.into())])
        });
        joined.unwrap_or_default()
    }

    /// A number with so many digits behind the language's decimal sign.
    pub fn decimal(&self, number: f64, places: usize) -> String {
        let point = self.language.point;
        format!("{number:.places$}").replace('.', point.encode_utf8(&mut [0; 4]))
    }

    /// The decimal sign of this language.
    pub fn point(&self) -> char {
        self.language.point
    }

    /// Take a length as it is typed in this language.
    ///
    /// # Errors
    /// A [`ParseError`], as [`crate::measure::parse`] gives.
    pub fn parse(&self, typed: &str, ruler: Ruler) -> Result<Length, ParseError> {
        crate::measure::parse_as(typed, ruler, &self.writing)
    }

    /// A problem from the one table of errors: `error-<code>`, `error-<code>-next`, and where
    /// there is more to know `error-<code>-details`.
    pub fn problem(&self, code: &str, args: &[(&str, Arg)]) -> Problem {
        Problem {
            code: code.to_string(),
            said: self.say(&format!("error-{code}"), args),
            next: self.say(&format!("error-{code}-next"), args),
            details: Some(format!("error-{code}-details"))
                .filter(|key| self.has(key))
                .map(|key| self.say(&key, args)),
        }
    }

    /// A length as read off `ruler`; off its counterpart too where the words are doubled.
    pub fn length(&self, length: Length, ruler: Ruler) -> Shown {
        self.in_each(ruler, |ruler| self.single(length, ruler))
    }

    /// Something read off `ruler`; off its counterpart too where the words are doubled.
    pub(crate) fn in_each(&self, ruler: Ruler, told: impl Fn(Ruler) -> Shown) -> Shown {
        let own = told(ruler);
        if !self.doubled {
            return own;
        }
        let other = told(ruler.other());
        Shown {
            text: say!(self, "sheet-both", first = own.text, second = other.text),
            spoken: say!(
                self,
                "sheet-both",
                first = own.spoken,
                second = other.spoken
            ),
            rounded: own.rounded && other.rounded,
        }
    }

    /// A length as read off `ruler` alone.
    pub fn single(&self, length: Length, ruler: Ruler) -> Shown {
        self.told(read(length, ruler))
    }

    /// The same with tenths of a millimetre wherever there are any.
    pub fn exact(&self, length: Length, ruler: Ruler) -> Shown {
        self.told(read_exact(length, ruler))
    }

    fn told(&self, reading: Reading) -> Shown {
        let unit = reading.digits.unit();
        let number = reading.digits.number(self.language.point);
        let spoken = match reading.digits {
            Digits::Inches { whole, num: 0, .. } => say!(self, "spoken-inches", whole = whole),
            Digits::Inches { whole, num, den } => {
                let part = self.fraction(whole, num, den);
                match whole {
                    0 => say!(self, "spoken-fraction", part = part),
                    _ => say!(self, "spoken-inches-fraction", whole = whole, part = part),
                }
            }
            Digits::Mm { .. } | Digits::Cm { .. } => {
                say!(self, format!("spoken-{unit}"), number = number.as_str())
            }
        };
        let unit = self.unit(unit);
        let sign = if reading.negative { "\u{2212}" } else { "" };
        let about = if reading.rounded { "≈\u{a0}" } else { "" };
        let spoken = if reading.negative {
            say!(self, "spoken-minus", length = spoken)
        } else {
            spoken
        };
        Shown {
            text: format!("{about}{sign}{number}\u{a0}{unit}"),
            spoken: if reading.rounded {
                say!(self, "spoken-about", length = spoken)
            } else {
                spoken
            },
            rounded: reading.rounded,
        }
    }

    /// The short name of a unit: `in`, `mm` or `cm` in this language.
    pub fn unit(&self, unit: &str) -> String {
        self.say(&format!("ui-unit-{unit}"), &[])
    }

    fn fraction(&self, whole: i64, num: i64, den: i64) -> String {
        say!(self, format!("spoken-part-{den}"), num = num, whole = whole)
    }

    /// The words of the window, by key. A day's parts, which it puts into `ui-date` and
    /// `ui-day` itself, stand there in braces by their names.
    pub fn window(&self) -> BTreeMap<String, String> {
        let parts = ["day", "month", "year", "weekday", "date"];
        let parts = parts.map(|part| (part, format!("{{{part}}}").into()));
        window_keys()
            .into_iter()
            .map(|key| (key.clone(), self.say(&key, &parts)))
            .collect()
    }
}

/// All languages, to choose from.
pub fn languages() -> Vec<LanguageName> {
    let name = |l: &Language| LanguageName {
        code: l.code.to_string(),
        name: l.name.to_string(),
    };
    LANGUAGES.iter().map(name).collect()
}

fn bundle(language: &Language) -> Bundle {
    let code = language.code.parse();
    let code = code.unwrap_or_else(|_| LanguageIdentifier::default());
    let mut bundle = FluentBundle::new_concurrent(vec![code]);
    bundle.set_use_isolating(false);
    for text in language.files {
        let resource = match FluentResource::try_new(text.to_string()) {
            Ok(resource) | Err((resource, _)) => resource,
        };
        bundle.add_resource_overriding(resource);
    }
    bundle
}

fn writing(language: &'static Language) -> Writing {
    Writing {
        point: language.point,
        units: units(language),
    }
}

/// Words for units that may be typed: this language's first, then those of all others.
fn units(own: &'static Language) -> Vec<(String, i64)> {
    let others = LANGUAGES.iter().filter(|l| !std::ptr::eq(*l, own));
    let mut out = Vec::new();
    for language in std::iter::once(own).chain(others) {
        for (unit, size) in TYPED {
            for key in [format!("unit-typed-{unit} ="), format!("ui-unit-{unit} =")] {
                let lines = language.files.iter().flat_map(|text| text.lines());
                let names = lines.filter_map(|line| line.strip_prefix(&key));
                for name in names.flat_map(|names| names.split(',')) {
                    out.push((name.trim().to_lowercase(), size));
                }
            }
        }
    }
    out
}

/// The keys of the window's own words, in order.
pub fn window_keys() -> Vec<String> {
    let mut keys: Vec<String> = LANGUAGES[0].files[1]
        .lines()
        .filter_map(|line| line.split_once(" =").map(|(key, _)| key))
        .filter(|key| key.starts_with("ui-"))
        .map(str::to_string)
        .collect();
    keys.sort();
    keys
}

/// A language to choose.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct LanguageName {
    /// Its code.
    pub code: String,
    /// What it is called by those who speak it.
    pub name: String,
}

/// What went wrong, and what to do.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Problem {
    /// Stable code, for programs.
    pub code: String,
    /// What is wrong and where, in plain words.
    pub said: String,
    /// What to do next.
    pub next: String,
    /// What else there is to know, for who asks.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[ts(optional)]
    pub details: Option<String>,
}

/// A length as shown and as spoken.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Shown {
    /// For the eye, with ≈ before it when rounded.
    pub text: String,
    /// For a screen reader.
    pub spoken: String,
    /// Whether it was rounded to the ruler.
    pub rounded: bool,
}

#[cfg(test)]
mod tests;
