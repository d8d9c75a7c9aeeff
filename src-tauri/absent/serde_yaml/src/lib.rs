//! Stands in for the library of that name, which reads and writes YAML. Lapwork's sheets use none.
//!
//! It gives what the typesetter is compiled against. Each function only says that YAML is not
//! built in.

use std::fmt;

/// Why nothing was done: YAML is not built in.
#[derive(Debug)]
pub struct Error(());

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("YAML is not built in")
    }
}

impl std::error::Error for Error {}

impl Error {
    /// Where the fault is: nowhere.
    pub fn location(&self) -> Option<Location> {
        None
    }
}

/// A place in a text: there is none.
#[derive(Debug)]
pub enum Location {}

impl Location {
    /// Its distance from the beginning.
    pub fn index(&self) -> usize {
        match *self {}
    }

    /// Its line.
    pub fn line(&self) -> usize {
        match *self {}
    }

    /// Its column.
    pub fn column(&self) -> usize {
        match *self {}
    }
}

/// Reads a value from bytes.
///
/// # Errors
/// Always: YAML is not built in.
pub fn from_slice<T>(_: &[u8]) -> Result<T, Error> {
    Err(Error(()))
}

/// Reads a value from a text.
///
/// # Errors
/// Always: YAML is not built in.
pub fn from_str<T>(_: &str) -> Result<T, Error> {
    Err(Error(()))
}

/// Writes a value.
///
/// # Errors
/// Always: YAML is not built in.
pub fn to_string<T: ?Sized>(_: &T) -> Result<String, Error> {
    Err(Error(()))
}
