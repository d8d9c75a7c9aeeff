//! Stands in for the library of that name, which brings the syntaxes of programming languages.
//! Lapwork's sheets show no programs.
//!
//! It gives what the typesetter is compiled against. There are no syntaxes here; a program would
//! be set in one colour.

/// The syntaxes.
pub mod syntax {
    use syntect::parsing::SyntaxSet;

    /// All syntaxes: none.
    pub fn extra_no_newlines() -> SyntaxSet {
        SyntaxSet::default()
    }
}
