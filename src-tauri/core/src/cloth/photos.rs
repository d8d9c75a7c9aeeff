//! The name of a photo: the hash of its content.
//!
//! The record holds only the name; the service keeps the picture beside the throw. A name
//! is 64 lower-case hex digits (SHA-256, FIPS 180-4) and nothing else, so that no path can
//! be made of one.

use serde::{Deserialize, Serialize};

/// A photo's name.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct PhotoId(String);

impl PhotoId {
    /// Read a name; `None` for anything but 64 small hex digits.
    pub fn parse(text: &str) -> Option<PhotoId> {
        let fine = |b: u8| b.is_ascii_digit() || (b'a'..=b'f').contains(&b);
        (text.len() == 64 && text.bytes().all(fine)).then(|| PhotoId(text.to_string()))
    }

    /// Its first 64 bits, which distinguish a few photos.
    pub fn short(&self) -> u64 {
        u64::from_str_radix(&self.0[..16], 16).unwrap_or_default()
    }

    /// The name as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for PhotoId {
    type Error = &'static str;

    fn try_from(text: String) -> Result<Self, Self::Error> {
        PhotoId::parse(&text).ok_or("not the name of a photo")
    }
}

impl From<PhotoId> for String {
    fn from(id: PhotoId) -> String {
        id.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_hash_is_a_name() {
        let name = "0123456789abcdef".repeat(4);
        assert_eq!(PhotoId::parse(&name).map(String::from), Some(name.clone()));
        let path = format!("../{}", &name[3..]);
        for bad in [
            "",
            &name[1..],
            &name.to_uppercase(),
            &path,
            &name.replace('0', "/"),
        ] {
            assert_eq!(PhotoId::parse(bad), None, "{bad}");
            let json = serde_json::to_string(bad).unwrap();
            assert!(serde_json::from_str::<PhotoId>(&json).is_err());
        }
    }
}
