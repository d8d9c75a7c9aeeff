//! Stands in for the library of that name, which knows where words of many languages may be
//! hyphenated. Lapwork's sheets are set with `hyphenate: false`, so it is never asked.
//!
//! It gives what the typesetter is compiled against. No language is known here, and a word of an
//! unknown language is not hyphenated.

/// A language whose words can be hyphenated: none.
pub enum Lang {}

impl Lang {
    /// The language of a code: always unknown.
    pub fn from_iso(_: [u8; 2]) -> Option<Lang> {
        None
    }
}

/// The parts of a word. As there is no language, nobody can ask.
pub fn hyphenate(_: &str, lang: Lang) -> std::iter::Empty<&str> {
    match lang {}
}
