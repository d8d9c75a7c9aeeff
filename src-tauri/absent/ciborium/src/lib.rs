//! Stands in for the library of that name, which reads and writes CBOR. Lapwork's sheets use none.
//!
//! It gives what the typesetter is compiled against. Each function only says that CBOR is not
//! built in.

const ABSENT: &str = "CBOR is not built in";

/// Reading.
pub mod de {
    /// Why nothing was read. Of these, [`Error::Semantic`] alone occurs.
    #[derive(Debug)]
    pub enum Error<T> {
        /// The bytes could not be had.
        Io(T),
        /// The bytes are no CBOR.
        Syntax(usize),
        /// The bytes do not mean what is wanted.
        Semantic(Option<usize>, String),
        /// One value lies too deep in others.
        RecursionLimitExceeded,
    }
}

/// Reads a value.
///
/// # Errors
/// Always: CBOR is not built in.
pub fn from_reader<T>(_: &[u8]) -> Result<T, de::Error<std::io::Error>> {
    Err(de::Error::Semantic(None, ABSENT.into()))
}

/// Writes a value.
///
/// # Errors
/// Always: CBOR is not built in.
pub fn into_writer<T: ?Sized>(_: &T, _: &mut Vec<u8>) -> Result<(), &'static str> {
    Err(ABSENT)
}
