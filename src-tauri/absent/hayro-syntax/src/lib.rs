//! Stands in for the library of that name, which reads PDF, so that a sheet may show a page of one.
//! Lapwork's sheets show drawings and photos alone.
//!
//! It gives what the typesetter is compiled against. [`Pdf::new`] reads nothing and calls each file
//! invalid; what only follows from a PDF has no value, so that the compiler knows it to be out of
//! reach.

use std::sync::Arc;

/// A PDF that was read: there is none.
#[derive(Debug)]
pub enum Pdf {}

/// The bytes of a PDF.
pub type PdfData = Arc<dyn AsRef<[u8]> + Send + Sync>;

impl Pdf {
    /// Reads a PDF.
    ///
    /// # Errors
    /// Always: PDF cannot be read.
    pub fn new<T>(_: Arc<T>) -> Result<Pdf, LoadPdfError> {
        Err(LoadPdfError::Invalid)
    }

    /// Its bytes.
    pub fn data(&self) -> &PdfData {
        match *self {}
    }

    /// Its pages.
    pub fn pages(&self) -> &[page::Page<'_>] {
        match *self {}
    }

    /// What tells where its parts are.
    pub fn xref(&self) -> &XRef {
        match *self {}
    }

    /// Its version.
    pub fn version(&self) -> PdfVersion {
        match *self {}
    }
}

/// What tells where the parts of a PDF are: there is none.
#[derive(Debug)]
pub enum XRef {}

impl XRef {
    /// Whether parts may be shown or not.
    pub fn has_optional_content_groups(&self) -> bool {
        match *self {}
    }
}

/// Pages.
pub mod page {
    use std::marker::PhantomData;

    #[derive(Debug)]
    enum Never {}

    /// A page: there is none.
    #[derive(Debug)]
    pub struct Page<'a>(Never, PhantomData<&'a ()>);

    impl Page<'_> {
        /// Its width and height.
        pub fn render_dimensions(&self) -> (f32, f32) {
            match self.0 {}
        }
    }
}

/// Why a PDF was not read. Of these, [`LoadPdfError::Invalid`] alone occurs.
#[derive(Debug, Clone, Copy)]
pub enum LoadPdfError {
    /// It is locked.
    Decryption(()),
    /// It is none, or cannot be read.
    Invalid,
}

/// A version of PDF.
#[derive(Debug, Clone, Copy)]
pub enum PdfVersion {
    /// 1.0
    Pdf10,
    /// 1.1
    Pdf11,
    /// 1.2
    Pdf12,
    /// 1.3
    Pdf13,
    /// 1.4
    Pdf14,
    /// 1.5
    Pdf15,
    /// 1.6
    Pdf16,
    /// 1.7
    Pdf17,
    /// 2.0
    Pdf20,
}
