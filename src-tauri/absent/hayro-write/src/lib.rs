//! Stands in for the library of that name, which copies pages of one PDF into another. Lapwork's
//! sheets show drawings and photos alone.
//!
//! It gives what the typesetter is compiled against. As no PDF can be read (see `hayro-syntax`
//! beside this), nobody can ask for its pages.

pub use hayro_syntax;

use hayro_syntax::Pdf;
use pdf_writer::writers::Group;
use pdf_writer::{Chunk, Ref, Settings};

/// A page that is wanted.
#[derive(Debug)]
pub struct ExtractionQuery(());

impl ExtractionQuery {
    /// As a page.
    pub fn new_page(_: usize) -> ExtractionQuery {
        ExtractionQuery(())
    }

    /// As a picture.
    pub fn new_xobject(_: usize) -> ExtractionQuery {
        ExtractionQuery(())
    }
}

/// Why a page was not copied.
#[derive(Debug, Clone, Copy)]
pub enum ExtractionError {
    /// There is no such page.
    InvalidPageIndex(usize),
}

/// The pages that were copied.
pub struct ExtractionResult {
    /// What they consist of.
    pub chunk: Chunk,
    /// Where each begins.
    pub root_refs: Vec<Result<Ref, ExtractionError>>,
    /// What they belong to.
    pub page_tree_parent_ref: Ref,
}

/// Copies pages. As there is no PDF, nobody can ask.
///
/// # Errors
/// Never.
pub fn extract<'a>(
    pdf: &Pdf,
    _: Box<dyn FnMut() -> Ref + 'a>,
    _: Settings,
    _: impl FnMut(&mut Group<'_>),
    _: &[ExtractionQuery],
) -> Result<ExtractionResult, ExtractionError> {
    match *pdf {}
}
