//! Stands in for the library of that name, which colours programs by the syntaxes of their
//! languages. Lapwork's sheets show no programs.
//!
//! It gives what the typesetter is compiled against. There are no syntaxes, and none can be read;
//! a program would be set in one colour.

use parsing::ParseSyntaxError;
use std::fmt;

/// Why nothing was read: highlighting is not built in. Of these, [`LoadingError::Absent`] alone
/// occurs.
#[derive(Debug)]
pub enum LoadingError {
    /// A syntax cannot be read.
    ParseSyntax(ParseSyntaxError, String),
    /// Highlighting is not built in.
    Absent,
}

impl fmt::Display for LoadingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        ParseSyntaxError::Absent.fmt(f)
    }
}

/// Syntaxes.
pub mod parsing {
    use std::fmt;

    /// Why a syntax was not read. Of these, [`ParseSyntaxError::Absent`] alone occurs.
    #[derive(Debug)]
    pub enum ParseSyntaxError {
        /// It is no YAML.
        InvalidYaml(ScanError),
        /// Highlighting is not built in.
        Absent,
    }

    impl fmt::Display for ParseSyntaxError {
        fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str("highlighting is not built in")
        }
    }

    /// A fault in YAML: there is none, as none is read.
    #[derive(Debug)]
    pub enum ScanError {}

    impl ScanError {
        /// Where it is.
        pub fn marker(&self) -> Marker {
            match *self {}
        }
    }

    /// A place in YAML: there is none.
    #[derive(Debug)]
    pub enum Marker {}

    impl Marker {
        /// Its distance from the beginning.
        pub fn index(&self) -> usize {
            match *self {}
        }

        /// Its line.
        pub fn line(&self) -> usize {
            match *self {}
        }

        /// Its column.
        pub fn col(&self) -> usize {
            match *self {}
        }
    }

    /// A syntax that was read: there is none.
    #[derive(Debug)]
    pub enum SyntaxDefinition {}

    impl SyntaxDefinition {
        /// Reads a syntax.
        ///
        /// # Errors
        /// Always: highlighting is not built in.
        pub fn load_from_str(
            _: &str,
            _: bool,
            _: Option<&str>,
        ) -> Result<SyntaxDefinition, ParseSyntaxError> {
            Err(ParseSyntaxError::Absent)
        }
    }

    /// A syntax among others: there is none.
    #[derive(Debug)]
    pub struct SyntaxReference {
        /// Its name.
        pub name: String,
        /// The endings of its files.
        pub file_extensions: Vec<String>,
        pub(crate) never: Never,
    }

    #[derive(Debug)]
    pub(crate) enum Never {}

    /// Syntaxes: none.
    #[derive(Debug, Default)]
    pub struct SyntaxSet(());

    impl SyntaxSet {
        /// All of them: none.
        pub fn syntaxes(&self) -> &[SyntaxReference] {
            &[]
        }

        /// The one of a name: always unknown.
        pub fn find_syntax_by_token(&self, _: &str) -> Option<&SyntaxReference> {
            None
        }
    }

    /// Collects syntaxes: none.
    #[derive(Debug)]
    pub struct SyntaxSetBuilder(());

    impl SyntaxSetBuilder {
        /// Begins.
        #[expect(clippy::new_without_default, reason = "nobody asks for it")]
        pub fn new() -> SyntaxSetBuilder {
            SyntaxSetBuilder(())
        }

        /// Adds a syntax; as there is none, nobody can.
        pub fn add(&mut self, one: SyntaxDefinition) {
            match one {}
        }

        /// Those that were added: none.
        pub fn build(self) -> SyntaxSet {
            SyntaxSet(())
        }
    }

    /// What a piece of a program is; here, all are alike.
    #[derive(Debug, Clone, Copy)]
    pub struct Scope(());

    impl Scope {
        /// Takes its name, which changes nothing.
        ///
        /// # Errors
        /// Never.
        pub fn new(_: &str) -> Result<Scope, ParseSyntaxError> {
            Ok(Scope(()))
        }
    }
}

/// Looks.
pub mod highlighting {
    use crate::LoadingError;
    use crate::parsing::{ParseSyntaxError, Scope};
    use std::ops::BitOr;
    use std::str::FromStr;

    /// A colour.
    #[derive(Debug, Clone, Copy, PartialEq, Eq)]
    pub struct Color {
        /// Its red.
        pub r: u8,
        /// Its green.
        pub g: u8,
        /// Its blue.
        pub b: u8,
        /// How much it covers.
        pub a: u8,
    }

    impl Color {
        /// Black.
        pub const BLACK: Color = Color {
            r: 0,
            g: 0,
            b: 0,
            a: 255,
        };
    }

    /// Thick, slanted and underlined, or not.
    #[derive(Debug, Clone, Copy)]
    pub struct FontStyle(u8);

    impl FontStyle {
        /// Thick.
        pub const BOLD: FontStyle = FontStyle(1);
        /// Underlined.
        pub const UNDERLINE: FontStyle = FontStyle(2);
        /// Slanted.
        pub const ITALIC: FontStyle = FontStyle(4);

        /// Whether it has all of another.
        pub fn contains(self, other: FontStyle) -> bool {
            self.0 & other.0 == other.0
        }
    }

    impl BitOr for FontStyle {
        type Output = FontStyle;

        fn bitor(self, other: FontStyle) -> FontStyle {
            FontStyle(self.0 | other.0)
        }
    }

    /// How a piece of a program looks.
    #[derive(Debug, Clone, Copy)]
    pub struct Style {
        /// The colour of its letters.
        pub foreground: Color,
        /// How they are.
        pub font_style: FontStyle,
    }

    /// How a theme changes looks.
    #[derive(Debug)]
    pub struct StyleModifier {
        /// The colour of letters.
        pub foreground: Option<Color>,
        /// The colour behind them.
        pub background: Option<Color>,
        /// How they are.
        pub font_style: Option<FontStyle>,
    }

    /// What a theme changes the looks of.
    #[derive(Debug)]
    pub struct ScopeSelectors(());

    impl FromStr for ScopeSelectors {
        type Err = ParseSyntaxError;

        fn from_str(_: &str) -> Result<ScopeSelectors, ParseSyntaxError> {
            Ok(ScopeSelectors(()))
        }
    }

    /// One rule of a theme.
    #[derive(Debug)]
    pub struct ThemeItem {
        /// For what it is.
        pub scope: ScopeSelectors,
        /// What it changes.
        pub style: StyleModifier,
    }

    /// Looks of the whole.
    #[derive(Debug, Default)]
    pub struct ThemeSettings {
        /// The colour of letters.
        pub foreground: Option<Color>,
        /// The colour behind them.
        pub background: Option<Color>,
    }

    /// A theme.
    #[derive(Debug)]
    pub struct Theme {
        /// Its name.
        pub name: Option<String>,
        /// Who made it.
        pub author: Option<String>,
        /// Looks of the whole.
        pub settings: ThemeSettings,
        /// Its rules.
        pub scopes: Vec<ThemeItem>,
    }

    /// Themes.
    #[derive(Debug)]
    pub enum ThemeSet {}

    impl ThemeSet {
        /// Reads a theme.
        ///
        /// # Errors
        /// Always: highlighting is not built in.
        pub fn load_from_reader<R>(_: &mut R) -> Result<Theme, LoadingError> {
            Err(LoadingError::Absent)
        }
    }

    /// Gives pieces of a program their looks: to all the same.
    #[derive(Debug)]
    pub struct Highlighter<'a>(&'a Theme);

    impl<'a> Highlighter<'a> {
        /// By a theme, of which only the colour of the whole counts.
        pub fn new(theme: &'a Theme) -> Highlighter<'a> {
            Highlighter(theme)
        }

        /// The looks of a piece.
        pub fn style_for_stack(&self, _: &[Scope]) -> Style {
            Style {
                foreground: self.0.settings.foreground.unwrap_or(Color::BLACK),
                font_style: FontStyle(0),
            }
        }
    }
}

/// Highlighting line by line.
pub mod easy {
    use crate::LoadingError;
    use crate::highlighting::{Style, Theme};
    use crate::parsing::{SyntaxReference, SyntaxSet};

    /// Gives the pieces of lines their looks. As there is no syntax, nobody can ask.
    #[derive(Debug)]
    pub struct HighlightLines<'a>(&'a SyntaxReference);

    impl<'a> HighlightLines<'a> {
        /// By a syntax and a theme.
        pub fn new(syntax: &'a SyntaxReference, _: &'a Theme) -> HighlightLines<'a> {
            HighlightLines(syntax)
        }

        /// The pieces of a line with their looks.
        ///
        /// # Errors
        /// Never.
        pub fn highlight_line<'b>(
            &mut self,
            _: &'b str,
            _: &SyntaxSet,
        ) -> Result<Vec<(Style, &'b str)>, LoadingError> {
            match self.0.never {}
        }
    }
}
