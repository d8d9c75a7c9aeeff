//! Stands in for the library of that name, which writes fonts: the letters of a variable font as
//! they are at one place of its range. The faces Lapwork's sheets are set in have no ranges.
//!
//! It gives what the typesetter is compiled against. [`tables::glyf::SimpleGlyph::from_bezpath`]
//! writes nothing and fails; what only follows from a written letter has no value, so that the
//! compiler knows it to be out of reach.

/// Parts of fonts.
pub mod tables {
    /// Outlines.
    pub mod glyf {
        use crate::{Absent, FontWrite, TableWriter};

        #[derive(Debug)]
        enum Never {}

        /// A letter to be written: there is none.
        #[derive(Debug)]
        pub struct SimpleGlyph {
            /// The box round it.
            pub bbox: Bbox,
            /// Its outlines.
            pub contours: Vec<Contour>,
            never: Never,
        }

        impl SimpleGlyph {
            /// Makes a letter of a path.
            ///
            /// # Errors
            /// Always: fonts cannot be written.
            pub fn from_bezpath<P>(_: &P) -> Result<SimpleGlyph, Absent> {
                Err(Absent(()))
            }
        }

        impl FontWrite for SimpleGlyph {
            fn write_into(&self, _: &mut TableWriter) {
                match self.never {}
            }
        }

        /// The box round a letter.
        #[derive(Debug)]
        pub struct Bbox {
            /// Where it begins.
            pub x_min: i16,
        }

        /// An outline.
        pub type Contour = Vec<(i16, i16)>;
    }
}

/// Why nothing was written: fonts cannot be.
#[derive(Debug)]
pub struct Absent(());

/// Takes what is written: nothing.
#[derive(Debug, Default)]
pub struct TableWriter(());

/// What can be written.
pub trait FontWrite {
    /// Writes it.
    fn write_into(&self, to: &mut TableWriter);
}

/// Writes a part of a font.
///
/// # Errors
/// Always: fonts cannot be written.
pub fn dump_table<T: FontWrite>(_: &T) -> Result<Vec<u8>, Absent> {
    Err(Absent(()))
}
