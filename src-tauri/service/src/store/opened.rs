//! A throw file as it was read, and the seal by which it is recognised.

use super::{StoreError, TAIL};
use crate::disk::{About, DiskPath};
use lapwork_core::log::journal::{Entry, Journal, VERSION};
use std::sync::Arc;

/// A throw file as read, and what an append must know of it.
#[derive(Debug)]
pub struct Opened {
    /// The record; a snapshot of it is cheap.
    pub journal: Arc<Journal>,
    /// By what its sound bytes on the disk are known again.
    pub(super) seal: Seal,
    /// The newline after the last line is missing.
    pub(super) lacks_newline: bool,
    /// How many bytes of a torn last line are still there.
    pub(super) left_out: u64,
    /// The version of the format on the disk.
    pub(super) version: u32,
    /// The file is doubtful and could not be written afresh.
    pub(super) held: bool,
    /// What was left out of the file just now, if anything was.
    pub mended: Option<Mended>,
}

/// A torn last line that was left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mended {
    /// The copy of the file as it was.
    pub copy: DiskPath,
    /// How many bytes were left out.
    pub bytes: u64,
}

impl Opened {
    /// The version of the format on the disk.
    pub fn version(&self) -> u32 {
        self.version
    }

    /// Whether a torn last line is still in the file.
    pub fn torn(&self) -> bool {
        self.left_out > 0
    }

    /// Whether nothing may be added because the disk failed.
    pub fn held(&self) -> bool {
        self.held
    }

    /// How many bytes of a torn last line could not be read.
    pub fn left_out(&self) -> u64 {
        self.left_out
    }

    /// Take in an entry that is on the disk; returns nothing where it does not follow.
    pub fn accept(&mut self, entry: Entry) -> Option<()> {
        Arc::make_mut(&mut self.journal).accept(entry)
    }

    /// A record that was acknowledged, of whose file nothing is known.
    pub(crate) fn remembered(journal: Arc<Journal>) -> Opened {
        Opened {
            seal: Seal::of(journal.text().as_bytes()),
            journal,
            lacks_newline: false,
            left_out: 0,
            version: VERSION,
            held: false,
            mended: None,
        }
    }
}

/// By what a file is known to be the one that was read or written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Seal {
    /// Its length in bytes.
    pub(super) length: u64,
    /// The CRC-32 of all of it.
    pub(super) sum: u32,
    /// Its last bytes, no more than [`TAIL`].
    pub(super) tail: Vec<u8>,
    /// What the system reported of it when it was last held against the above; nothing where
    /// all of it is to be read the next time.
    pub(super) about: Option<About>,
}

impl Seal {
    pub(super) fn of(bytes: &[u8]) -> Seal {
        let mut seal = Seal {
            length: 0,
            sum: 0,
            tail: Vec::new(),
            about: None,
        };
        seal.grow(bytes);
        seal
    }

    /// These bytes are added at the end.
    pub(super) fn grow(&mut self, bytes: &[u8]) {
        self.length += bytes.len() as u64;
        let mut sum = crc32fast::Hasher::new_with_initial(self.sum);
        sum.update(bytes);
        self.sum = sum.finalize();
        self.tail
            .extend_from_slice(&bytes[bytes.len().saturating_sub(TAIL)..]);
        self.tail.drain(..self.tail.len().saturating_sub(TAIL));
    }

    pub(super) fn is_of(&self, bytes: &[u8]) -> bool {
        self.length == bytes.len() as u64 && self.sum == crc32fast::hash(bytes)
    }
}

pub(crate) fn opened(path: &DiskPath, bytes: &[u8]) -> Result<Opened, StoreError> {
    let read = Journal::read(bytes).map_err(|how| StoreError::Damaged {
        path: path.clone(),
        how,
    })?;
    Ok(Opened {
        journal: Arc::new(read.journal),
        seal: Seal::of(&bytes[..read.sound]),
        lacks_newline: read.lacks_newline,
        left_out: (bytes.len() - read.sound) as u64,
        version: read.version,
        held: false,
        mended: None,
    })
}
