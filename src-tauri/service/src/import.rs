//! Files the maker brings: throw files and photos, read and checked but not yet accepted.
//!
//! An exported throw file is the record, byte for byte; where fabrics have photos, one line more
//! follows with these, `{"photos":[{"name":"…","jpeg":"…"}]}` ([`with_photos`]). A Lapwork that does
//! not know that line takes it for a torn last line, leaves it out and says so.
//!
//! A file to import comes from the dialog or was dropped on the window; the page never names or
//! learns its path. [`read_throw`] reads it, [`lapwork_core::log::intake`] checks each entry before
//! it is folded, and the service holds the file until the maker has chosen what becomes of it
//! ([`Service::import`](crate::service::Service::import),
//! [`decide_import`](crate::service::Service::decide_import)). The throw's name in the header says
//! whether two files are copies of one throw; [`lapwork_core::log::merge`] makes one of them.

use crate::disk::{Disk, DiskPath};
use crate::photos::{self, PhotoFault};
use crate::store::{StoreError, bytes_of, failed, plain};
use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::log::intake;
use lapwork_core::log::journal::Journal;
use serde::{Deserialize, Serialize};

/// An imported throw file, read and checked but not yet accepted.
#[derive(Debug)]
pub struct Import {
    /// All of its record, to the byte.
    pub bytes: Vec<u8>,
    /// How many bytes of a torn last line could not be read.
    pub left_out: u64,
    /// Its record.
    pub journal: Journal,
    /// The photos of its fabrics that came with it.
    pub photos: Vec<(PhotoId, Vec<u8>)>,
}

/// How the line of photos begins, which no line of a record does.
const PHOTOS: &[u8] = b"{\"photos\":";

/// The line after a record with the photos of its fabrics.
#[derive(Serialize, Deserialize)]
struct PhotoLine {
    photos: Vec<SentPhoto>,
}

#[derive(Serialize, Deserialize)]
struct SentPhoto {
    name: PhotoId,
    /// Its bytes in base64 (RFC 4648, section 4).
    jpeg: String,
}

/// A record's file with these photos in a line after it; the record alone where there are none.
pub fn with_photos(mut record: Vec<u8>, photos: &[(PhotoId, Vec<u8>)]) -> Vec<u8> {
    let sent = photos.iter().map(|(name, bytes)| SentPhoto {
        name: name.clone(),
        jpeg: BASE64_STANDARD.encode(bytes),
    });
    let line = PhotoLine {
        photos: sent.collect(),
    };
    // After a torn line nothing may stand.
    if !line.photos.is_empty()
        && record.ends_with(b"\n")
        && let Ok(line) = serde_json::to_vec(&line)
    {
        record.extend(line);
        record.push(b'\n');
    }
    record
}

/// The record in an exported file, without the line of photos; and that line, or nothing.
pub(crate) fn parted(bytes: &[u8]) -> (&[u8], &[u8]) {
    let body = bytes.strip_suffix(b"\n").unwrap_or(bytes);
    let start = body.iter().rposition(|byte| *byte == b'\n');
    match start.map(|newline| bytes.split_at(newline + 1)) {
        Some((record, line)) if line.starts_with(PHOTOS) => (record, line),
        _ => (bytes, &[]),
    }
}

/// The photos in their line that are what their names say and fit to keep; nothing where the line
/// cannot be read.
fn photos_in(line: &[u8]) -> Option<Vec<(PhotoId, Vec<u8>)>> {
    let read: PhotoLine = serde_json::from_slice(line).ok()?;
    let sound = read
        .photos
        .into_iter()
        .filter_map(|SentPhoto { name, jpeg }| {
            let bytes = BASE64_STANDARD.decode(jpeg).ok()?;
            let own = photos::name(&bytes)? == name;
            (own && photos::is_small(&bytes)).then_some((name, bytes))
        });
    Some(sound.collect())
}

/// Read a throw file from anywhere. Nothing in it is trusted: see [`lapwork_core::log::intake`].
///
/// # Errors
/// What stands in the way, or what is wrong with it.
pub fn read_throw(disk: &dyn Disk, path: &DiskPath) -> Result<Import, StoreError> {
    read(path, bytes_of(disk, path)?)
}

/// The same for what was read from there.
///
/// # Errors
/// What is wrong with it.
pub fn read(path: &DiskPath, bytes: Vec<u8>) -> Result<Import, StoreError> {
    let (record, line) = parted(&bytes);
    let read = intake::read(record).map_err(|how| StoreError::Damaged {
        path: path.clone(),
        how,
    })?;
    let photos = match line {
        [] => Some(Vec::new()),
        line => photos_in(line),
    };
    let unread = if photos.is_none() { line.len() } else { 0 };
    Ok(Import {
        left_out: (record.len() - read.sound + unread) as u64,
        journal: read.journal,
        photos: photos.unwrap_or_default(),
        bytes: record.to_vec(),
    })
}

/// Read a photo from anywhere and make it fit to keep.
///
/// # Errors
/// What stands in the way.
pub fn read_photo(disk: &dyn Disk, path: &DiskPath) -> Result<Vec<u8>, StoreError> {
    let photo = |fault| StoreError::Photo {
        path: path.clone(),
        fault,
    };
    plain(disk, path)?;
    let most = photos::MOST_BYTES;
    let bytes = disk.read(path, most + 1).map_err(failed(path))?;
    if bytes.len() as u64 > most {
        return Err(photo(PhotoFault::Large));
    }
    photos::shrink(&bytes).map_err(photo)
}
