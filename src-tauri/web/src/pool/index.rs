//! Which name stands for which slot, as it is kept.
//!
//! The index is one line of JSON and one with its CRC-32. It is kept in two slots in turn, so
//! that one of them is whole whenever the writing of the other breaks off; the newer whole one
//! counts.

use super::slots::{Slots, read_all, write_whole};
use serde::{Deserialize, Serialize};
use std::io;

/// The slots that hold the index; every other holds a file, or nothing.
pub(super) const SLOTS: usize = 2;
/// The longest index that is read: some hundred thousand names.
const MOST_BYTES: u64 = 64 << 20;
const VERSION: u32 = 1;

/// The names, as they are kept.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Index {
    /// Which form it has.
    pub pool: u32,
    /// Counts the writings; the slot it is kept in is `turn % 2`.
    pub turn: u64,
    /// The number the next file gets.
    pub next: u64,
    /// The folders.
    pub folders: Vec<String>,
    /// The files.
    pub files: Vec<KeptFile>,
}

/// A file in the index.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct KeptFile {
    /// Its whole name.
    pub path: String,
    /// The slot its bytes are in.
    pub slot: usize,
    /// Its number, which no other file ever had.
    pub id: u64,
}

impl Index {
    /// Read the newer whole one; nothing if there is none.
    ///
    /// # Errors
    /// What the system said, or [`io::ErrorKind::Unsupported`] for the index of a newer Lapwork.
    pub fn read(slots: &dyn Slots) -> io::Result<Option<Index>> {
        let mut newest: Option<Index> = None;
        for slot in 0..SLOTS.min(slots.count()) {
            let bytes = read_all(slots, slot, MOST_BYTES)?;
            if let Some(index) = Index::parse(&bytes)
                && newest
                    .as_ref()
                    .is_none_or(|newest| newest.turn < index.turn)
            {
                newest = Some(index);
            }
        }
        match newest {
            Some(index) if index.pool > VERSION => Err(io::Error::new(
                io::ErrorKind::Unsupported,
                "these files were written by a newer Lapwork",
            )),
            newest => Ok(newest),
        }
    }

    /// Keep it in the slot whose turn it is, and wait until it is there.
    ///
    /// # Errors
    /// What the system said; what is in the other slot still counts, or this does already.
    pub fn write(&mut self, slots: &dyn Slots) -> io::Result<()> {
        self.pool = VERSION;
        self.turn += 1;
        let line = serde_json::to_string(self).map_err(io::Error::other)?;
        let text = format!("{line}\n{:08x}\n", crc32fast::hash(line.as_bytes()));
        let slot = usize::from(self.turn % 2 == 1);
        write_whole(slots, slot, text.as_bytes())
    }

    fn parse(bytes: &[u8]) -> Option<Index> {
        let text = std::str::from_utf8(bytes).ok()?;
        let (line, crc) = text.strip_suffix('\n')?.split_once('\n')?;
        let crc = u32::from_str_radix(crc, 16).ok()?;
        if crc != crc32fast::hash(line.as_bytes()) {
            return None;
        }
        serde_json::from_str(line).ok()
    }
}
