//! Stands in for the library of that name, which makes filler text. Lapwork's sheets have none.
//!
//! It gives what the typesetter is compiled against. There are no words here, so that `lorem` of
//! the template's language gives a full stop alone.

use std::marker::PhantomData;

/// A text to learn from: empty.
pub const LOREM_IPSUM: &str = "";
/// A text to learn from: empty.
pub const LIBER_PRIMUS: &str = "";

/// Makes text like one it has learnt: none.
#[derive(Debug)]
pub struct MarkovChain<'a>(PhantomData<&'a ()>);

impl<'a> MarkovChain<'a> {
    /// Begins.
    #[expect(clippy::new_without_default, reason = "nobody asks for it")]
    pub fn new() -> MarkovChain<'a> {
        MarkovChain(PhantomData)
    }

    /// Takes a text, which changes nothing.
    pub fn learn(&mut self, _: &'a str) {}

    /// Words that follow two others: none.
    pub fn iter_from(&self, _: (&'a str, &'a str)) -> std::iter::Empty<&'a str> {
        std::iter::empty()
    }
}
