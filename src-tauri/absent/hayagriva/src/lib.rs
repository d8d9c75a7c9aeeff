//! Stands in for the library of that name, which sets bibliographies and citations by hundreds of
//! styles. Lapwork's sheets have none.
//!
//! It gives what the typesetter is compiled against. [`io`] only says that bibliographies are not
//! built in, so that there is never an entry to be cited; a bibliography without entries is
//! rendered as none, which the typesetter reports as a fault.

use std::marker::PhantomData;

/// Has no value.
#[derive(Debug)]
enum Never {}

/// Reading bibliographies.
pub mod io {
    use super::{Library, Never};
    use std::fmt;
    use std::ops::Range;

    /// Why a text in BibLaTeX was not read. Of these, [`BibLaTeXError::Parse`] alone occurs.
    #[derive(Debug)]
    pub enum BibLaTeXError {
        /// It is no such text, or cannot be read.
        Parse(ParseError),
        /// It does not mean what is wanted.
        Type(TypeError),
    }

    /// Where and why a text was not read.
    #[derive(Debug)]
    pub struct ParseError {
        /// Where.
        pub span: Range<usize>,
        /// Why.
        pub kind: Absent,
    }

    /// Where and why a text does not mean what is wanted: never.
    #[derive(Debug)]
    pub struct TypeError {
        /// Where.
        pub span: Range<usize>,
        /// Why.
        pub kind: Absent,
        _never: Never,
    }

    /// Bibliographies are not built in.
    #[derive(Debug)]
    pub struct Absent(());

    impl fmt::Display for Absent {
        fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str("bibliographies are not built in")
        }
    }

    /// Reads a bibliography in YAML.
    ///
    /// # Errors
    /// Always, as YAML is not built in either; see `serde_yaml` beside this.
    pub fn from_yaml_str(text: &str) -> Result<Library, serde_yaml::Error> {
        serde_yaml::from_str(text)
    }

    /// Reads a bibliography in BibLaTeX.
    ///
    /// # Errors
    /// Always: bibliographies are not built in.
    pub fn from_biblatex_str(_: &str) -> Result<Library, Vec<BibLaTeXError>> {
        Err(vec![BibLaTeXError::Parse(ParseError {
            span: 0..0,
            kind: Absent(()),
        })])
    }
}

/// Styles and words that come with the library.
pub mod archive {
    use crate::citationberg::{IndependentStyle, Locale, Settings, Style, StyleClass};

    /// A style. There are none to choose by name; this is the one the typesetter begins with.
    #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
    pub enum ArchivedStyle {
        /// What the typesetter takes where nothing is chosen. Here, it is empty.
        InstituteOfElectricalAndElectronicsEngineers,
    }

    impl ArchivedStyle {
        /// All that can be chosen: none.
        pub fn all() -> &'static [ArchivedStyle] {
            &[]
        }

        /// The style of a name: always unknown.
        pub fn by_name(_: &str) -> Option<ArchivedStyle> {
            None
        }

        /// Its names.
        pub fn names(self) -> &'static [&'static str] {
            &["none"]
        }

        /// Its name to be shown.
        pub fn display_name(self) -> &'static str {
            "none"
        }

        /// The style itself: an empty one.
        pub fn get(self) -> Style {
            Style::Independent(IndependentStyle {
                settings: Settings {
                    class: StyleClass::InText,
                },
            })
        }
    }

    /// The words of all languages: none.
    pub fn locales() -> Vec<Locale> {
        Vec::new()
    }
}

/// Styles.
pub mod citationberg {
    use super::Never;

    /// A style.
    #[derive(Debug)]
    pub enum Style {
        /// One that is whole.
        Independent(IndependentStyle),
        /// One that changes another.
        Dependent,
    }

    /// A style that is whole.
    #[derive(Debug)]
    pub struct IndependentStyle {
        /// How it is to be used.
        pub settings: Settings,
    }

    impl IndependentStyle {
        /// Reads a style.
        ///
        /// # Errors
        /// Always: bibliographies are not built in.
        pub fn from_xml(_: &str) -> Result<IndependentStyle, &'static str> {
            Err("bibliographies are not built in")
        }
    }

    /// How a style is to be used.
    #[derive(Debug)]
    pub struct Settings {
        /// Where its citations stand.
        pub class: StyleClass,
    }

    /// Where citations stand.
    #[derive(Debug, PartialEq, Eq)]
    pub enum StyleClass {
        /// In the text.
        InText,
        /// At the foot of the page.
        Note,
    }

    /// The words of a language: there are none.
    #[derive(Debug)]
    pub struct Locale(Never);

    impl Locale {
        /// The code of its language.
        pub fn code(&self) -> &LocaleCode {
            match self.0 {}
        }
    }

    /// The code of a language.
    #[derive(Debug, Clone)]
    pub struct LocaleCode(pub String);

    /// How a part of an entry stands.
    #[derive(Debug)]
    pub enum Display {
        /// On lines of its own.
        Block,
        /// Moved to the right.
        Indent,
        /// In the margin.
        LeftMargin,
        /// Beside the others.
        RightInline,
    }

    /// Slanted or not.
    #[derive(Debug)]
    pub enum FontStyle {
        /// Not.
        Normal,
        /// Slanted.
        Italic,
    }

    /// In small capitals or not.
    #[derive(Debug)]
    pub enum FontVariant {
        /// Not.
        Normal,
        /// In small capitals.
        SmallCaps,
    }

    /// How thick letters are.
    #[derive(Debug)]
    pub enum FontWeight {
        /// As usual.
        Normal,
        /// Thick.
        Bold,
        /// Thin.
        Light,
    }

    /// Underlined or not.
    #[derive(Debug)]
    pub enum TextDecoration {
        /// Not.
        None,
        /// Underlined.
        Underline,
    }

    /// Raised, lowered or not.
    #[derive(Debug)]
    pub enum VerticalAlign {
        /// Not said.
        None,
        /// On the line.
        Baseline,
        /// Raised.
        Sup,
        /// Lowered.
        Sub,
    }

    /// Words of styles.
    pub mod taxonomy {
        /// What a place within a work is told by.
        #[derive(Debug)]
        pub enum Locator {
            /// In own words.
            Custom,
        }
    }
}

/// A bibliography: there is none.
#[derive(Debug)]
pub struct Library(Never);

impl Library {
    /// Whether it has no entries.
    pub fn is_empty(&self) -> bool {
        match self.0 {}
    }
}

impl IntoIterator for Library {
    type Item = Entry;
    type IntoIter = std::iter::Empty<Entry>;

    fn into_iter(self) -> Self::IntoIter {
        match self.0 {}
    }
}

/// A work: there is none.
#[derive(Debug)]
pub struct Entry(Never);

impl Entry {
    /// What it is cited by.
    pub fn key(&self) -> &str {
        match self.0 {}
    }

    /// Its title.
    pub fn title(&self) -> Option<&Title> {
        match self.0 {}
    }
}

/// The title of a work.
#[derive(Debug)]
pub struct Title {
    /// Its words.
    pub value: Words,
}

/// The words of a title: there are none.
#[derive(Debug)]
pub struct Words(Never);

impl Words {
    /// As one text.
    pub fn to_str(&self) -> &str {
        match self.0 {}
    }
}

/// Renders a bibliography and its citations: as none.
#[derive(Debug)]
pub struct BibliographyDriver<'a>(PhantomData<&'a ()>);

impl<'a> BibliographyDriver<'a> {
    /// Begins.
    #[expect(clippy::new_without_default, reason = "nobody asks for it")]
    pub fn new() -> Self {
        BibliographyDriver(PhantomData)
    }

    /// Takes where numbers begin, which changes nothing.
    pub fn with_citation_number_offset(self, _: usize) -> Self {
        self
    }

    /// Takes a citation, which changes nothing.
    pub fn citation(&mut self, _: CitationRequest<'a>) {}

    /// Renders no bibliography and no citations.
    pub fn finish(self, _: BibliographyRequest<'a>) -> Rendered {
        Rendered {
            bibliography: None,
            citations: Vec::new(),
        }
    }
}

/// A bibliography that is wanted.
#[derive(Debug)]
pub struct BibliographyRequest<'a> {
    /// Its style.
    pub style: &'a citationberg::IndependentStyle,
    /// Its language.
    pub locale: Option<citationberg::LocaleCode>,
    /// The words of languages.
    pub locale_files: &'a [citationberg::Locale],
}

/// A citation that is wanted.
#[derive(Debug)]
pub struct CitationRequest<'a>(PhantomData<&'a ()>);

impl<'a> CitationRequest<'a> {
    /// Takes what is wanted, which changes nothing.
    pub fn new(
        _: Vec<CitationItem<'a, Entry>>,
        _: &'a citationberg::IndependentStyle,
        _: Option<citationberg::LocaleCode>,
        _: &'a [citationberg::Locale],
        _: Option<u8>,
    ) -> Self {
        CitationRequest(PhantomData)
    }
}

/// A work that is cited.
#[derive(Debug)]
pub struct CitationItem<'a, T>(PhantomData<&'a T>);

impl<'a, T> CitationItem<'a, T> {
    /// Takes a work, which changes nothing.
    pub fn new(
        _: &'a T,
        _: Option<SpecificLocator>,
        _: Option<citationberg::LocaleCode>,
        _: bool,
        _: Option<CitePurpose>,
    ) -> Self {
        CitationItem(PhantomData)
    }
}

/// A place within a work.
#[derive(Debug)]
pub struct SpecificLocator(pub citationberg::taxonomy::Locator, pub LocatorPayload);

/// What is said of a place within a work.
#[derive(Debug)]
pub enum LocatorPayload {
    /// Something the typesetter sets itself.
    Transparent(TransparentLocator),
}

/// Something the typesetter sets itself.
#[derive(Debug)]
pub struct TransparentLocator(());

impl TransparentLocator {
    /// Takes it, which changes nothing.
    pub fn new<T>(_: T) -> TransparentLocator {
        TransparentLocator(())
    }
}

/// What of a work is cited.
#[derive(Debug)]
pub enum CitePurpose {
    /// Who wrote it.
    Author,
    /// When.
    Year,
    /// All of it.
    Full,
    /// As part of a sentence.
    Prose,
}

/// What was rendered.
#[derive(Debug)]
pub struct Rendered {
    /// The bibliography: none.
    pub bibliography: Option<RenderedBibliography>,
    /// The citations: none.
    pub citations: Vec<RenderedCitation>,
}

/// A rendered bibliography: there is none.
#[derive(Debug)]
pub struct RenderedBibliography {
    /// Its entries.
    pub items: Vec<BibliographyItem>,
    /// Whether their later lines are moved to the right.
    pub hanging_indent: bool,
    _never: Never,
}

/// An entry of a rendered bibliography: there is none.
#[derive(Debug)]
pub struct BibliographyItem {
    /// What it is cited by.
    pub key: String,
    /// What stands before it.
    pub first_field: Option<ElemChild>,
    /// The rest of it.
    pub content: ElemChildren,
    _never: Never,
}

/// A rendered citation: there is none.
#[derive(Debug)]
pub struct RenderedCitation {
    /// Its parts.
    pub citation: ElemChildren,
    _never: Never,
}

/// Parts of what was rendered.
#[derive(Debug)]
pub struct ElemChildren(pub Vec<ElemChild>);

impl ElemChildren {
    /// The part that means something: none.
    pub fn find_meta(&self, _: &ElemMeta) -> Option<&Elem> {
        None
    }
}

/// A part of what was rendered.
#[derive(Debug)]
pub enum ElemChild {
    /// A text.
    Text(Formatted),
    /// Several parts.
    Elem(Elem),
    /// A formula.
    Markup(String),
    /// A link.
    Link {
        /// What stands there.
        text: Formatted,
        /// Where it leads.
        url: String,
    },
    /// Something the typesetter sets itself.
    Transparent {
        /// Of which work.
        cite_idx: usize,
        /// How it looks.
        format: Formatting,
    },
}

/// Several parts: there are none.
#[derive(Debug)]
pub struct Elem {
    /// The parts.
    pub children: ElemChildren,
    /// How they stand.
    pub display: Option<citationberg::Display>,
    /// What they mean.
    pub meta: Option<ElemMeta>,
    _never: Never,
}

/// What parts mean.
#[derive(Debug, PartialEq, Eq)]
pub enum ElemMeta {
    /// The number of a citation.
    CitationNumber,
    /// A work.
    Entry(usize),
}

/// A text with its looks: there is none.
#[derive(Debug)]
pub struct Formatted {
    /// The text.
    pub text: String,
    /// Its looks.
    pub formatting: Formatting,
    _never: Never,
}

/// How a text looks: nothing does.
#[derive(Debug)]
pub struct Formatting {
    /// Slanted or not.
    pub font_style: citationberg::FontStyle,
    /// In small capitals or not.
    pub font_variant: citationberg::FontVariant,
    /// How thick its letters are.
    pub font_weight: citationberg::FontWeight,
    /// Underlined or not.
    pub text_decoration: citationberg::TextDecoration,
    /// Raised, lowered or not.
    pub vertical_align: citationberg::VerticalAlign,
    _never: Never,
}
