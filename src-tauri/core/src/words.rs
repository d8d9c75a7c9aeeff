//! All words the app says, by language.
//!
//! The texts are Fluent files (`words/<language>/*.ftl`, Project Fluent syntax): one
//! for the work, one for the window, one for the files it keeps. Nothing else in the core holds words to show.
//! A length is put into words here too, since decimal signs and names of fractions
//! belong to the language.

use crate::measure::{Digits, Length, Ruler, read};
use crate::view::{Problem, Shown};
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock};
use unic_langid::LanguageIdentifier;

const ENGLISH_CODE: &str = "en";
const ENGLISH: [&str; 3] = [
    include_str!("../words/en/work.ftl"),
    include_str!("../words/en/window.ftl"),
    include_str!("../words/en/shell.ftl"),
];

/// The words of one language.
pub struct Words {
    bundle: Arc<FluentBundle<Arc<FluentResource>>>,
    point: char,
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

/// Say something: `say!(words, "grid", across = 6, down = 8)`.
macro_rules! say {
    ($words:expr, $key:expr $(, $name:ident = $value:expr)* $(,)?) => {
        $words.say(&$key, &[$((stringify!($name), $crate::words::Arg::from($value))),*])
    };
}

impl Words {
    /// The English words.
    pub fn english() -> Words {
        let mut bundle = FluentBundle::new_concurrent(vec![
            ENGLISH_CODE
                .parse()
                .unwrap_or_else(|_| LanguageIdentifier::default()),
        ]);
        bundle.set_use_isolating(false);
        // Read once: there may be many desks in one program, as in tests.
        static READ: LazyLock<[Arc<FluentResource>; 3]> = LazyLock::new(|| {
            ENGLISH.map(|text| match FluentResource::try_new(text.to_string()) {
                Ok(resource) | Err((resource, _)) => Arc::new(resource),
            })
        });
        for resource in READ.iter() {
            bundle.add_resource_overriding(Arc::clone(resource));
        }
        Words {
            bundle: Arc::new(bundle),
            point: '.',
            doubled: false,
        }
    }

    /// The same words, telling every measure in both systems, as on paper that others
    /// read: `9½ in (241.3 mm)`.
    pub fn doubled(&self) -> Words {
        Words {
            bundle: Arc::clone(&self.bundle),
            doubled: true,
            ..*self
        }
    }

    /// Whether every measure is told in both systems.
    pub fn is_doubled(&self) -> bool {
        self.doubled
    }

    /// The language, as in BCP 47.
    pub fn language(&self) -> String {
        let first = self.bundle.locales.first();
        first.map_or_else(|| ENGLISH_CODE.into(), LanguageIdentifier::to_string)
    }

    /// The sentence for `key`; the key itself where there is none (a test forbids it).
    pub fn say(&self, key: &str, args: &[(&str, Arg)]) -> String {
        let Some(pattern) = self.bundle.get_message(key).and_then(|m| m.value()) else {
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
        self.bundle
            .format_pattern(pattern, Some(&given), &mut errors)
            .into_owned()
    }

    /// Whether there is a sentence for `key`.
    pub fn has(&self, key: &str) -> bool {
        self.bundle.has_message(key)
    }

    /// A problem from the one table of errors: `error-<code>` and `error-<code>-next`.
    pub fn problem(&self, code: &str, args: &[(&str, Arg)]) -> Problem {
        Problem {
            code: code.to_string(),
            said: self.say(&format!("error-{code}"), args),
            next: self.say(&format!("error-{code}-next"), args),
        }
    }

    /// A length as read off `ruler`; off its counterpart too where the words are doubled.
    pub fn length(&self, length: Length, ruler: Ruler) -> Shown {
        let own = self.single(length, ruler);
        if !self.doubled {
            return own;
        }
        let other = self.single(length, ruler.other());
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
        let reading = read(length, ruler);
        let spoken = match reading.digits {
            Digits::Inches { whole, num: 0, .. } => say!(self, "spoken-inches", whole = whole),
            Digits::Inches { whole: 0, num, den } => {
                say!(self, "spoken-fraction", part = self.fraction(num, den))
            }
            Digits::Inches { whole, num, den } => {
                say!(
                    self,
                    "spoken-inches-fraction",
                    whole = whole,
                    part = self.fraction(num, den)
                )
            }
            Digits::Mm { .. } | Digits::Cm { .. } => {
                let print = reading.digits.print(self.point);
                let (number, unit) = print.split_once('\u{a0}').unwrap_or((&print, ""));
                say!(self, format!("spoken-{unit}"), number = number)
            }
        };
        let sign = if reading.negative { "\u{2212}" } else { "" };
        let about = if reading.rounded { "≈\u{a0}" } else { "" };
        let spoken = if reading.negative {
            say!(self, "spoken-minus", length = spoken)
        } else {
            spoken
        };
        Shown {
            text: format!("{about}{sign}{}", reading.digits.print(self.point)),
            spoken: if reading.rounded {
                say!(self, "spoken-about", length = spoken)
            } else {
                spoken
            },
            rounded: reading.rounded,
        }
    }

    fn fraction(&self, num: i64, den: i64) -> String {
        say!(self, format!("spoken-part-{den}"), num = num)
    }

    /// The words of the window, by key.
    pub fn window(&self) -> BTreeMap<String, String> {
        window_keys()
            .into_iter()
            .map(|key| (key.clone(), self.say(&key, &[])))
            .collect()
    }
}

/// The keys of the window's own words, in order.
pub fn window_keys() -> Vec<String> {
    let mut keys: Vec<String> = ENGLISH[1]
        .lines()
        .filter_map(|line| line.split_once(" =").map(|(key, _)| key))
        .filter(|key| key.starts_with("ui-"))
        .map(str::to_string)
        .collect();
    keys.sort();
    keys
}
