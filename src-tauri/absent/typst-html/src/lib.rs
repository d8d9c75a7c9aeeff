//! Stands in for the library of that name, which sets a document as a web page. Lapwork's sheets
//! become PDF alone.
//!
//! It gives what the typesetter is compiled against. The module `html` of the template's language
//! is empty, so that a template that uses it is told that it holds no such thing; there are no
//! rules for setting anything as a web page.

use typst_library::foundations::{Content, Module, NativeRuleMap, Scope, StyleChain};
use typst_library::visualize::Color;
use typst_macros::elem;

/// The module `html` of the template's language: empty.
pub fn module() -> Module {
    Module::new("html", Scope::new())
}

/// Adds the rules for setting a document as a web page: none.
pub fn register(_: &mut NativeRuleMap) {}

/// What is within a formula for the web: nothing is one.
pub fn html_mathml_body<'a>(_: &'a Content, _: StyleChain<'a>) -> Option<Option<&'a Content>> {
    None
}

/// Content in a colour on a web page; as there are no web pages, it stays as it is.
pub fn html_span_filled(content: Content, _: Color) -> Content {
    content
}

/// An element of a web page. No template can make one, as the module does not hold it.
#[elem(name = "elem")]
pub struct HtmlElem {
    /// What kind it is of.
    #[required]
    pub tag: bool,
}

/// Kinds of elements.
pub mod tag {
    /// Whether spaces beside an element fall away: there is none.
    pub fn is_whitespace_collapsing(_: bool) -> bool {
        false
    }

    /// Whether an element goes into a paragraph: there is none.
    pub fn should_group_into_pars(_: bool) -> bool {
        false
    }
}
