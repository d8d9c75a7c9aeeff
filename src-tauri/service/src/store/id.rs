//! The names of throws' folders.

use super::StoreError;

/// The name of a throw's folder: 1 to 64 of `a–z`, `0–9` and `-`.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct ThrowId(String);

impl ThrowId {
    /// Read an id.
    ///
    /// # Errors
    /// [`StoreError::BadId`] for anything else, so that no path can be smuggled in.
    pub fn parse(text: &str) -> Result<ThrowId, StoreError> {
        let fine = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-';
        if (1..=64).contains(&text.len()) && text.bytes().all(fine) {
            Ok(ThrowId(text.to_string()))
        } else {
            Err(StoreError::BadId)
        }
    }

    /// The id as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}
