//! The files a [`Pool`](super::Pool) keeps everything in, each known by its number.

use std::fmt::Debug;
use std::io;

/// Files that are open from the start and stay so, numbered from 0 without gaps.
///
/// A browser opens files only while nothing else runs, but reads and writes an open one at
/// once. Every operation fails with what the system said.
#[expect(clippy::missing_errors_doc, reason = "said once, above")]
pub trait Slots: Debug + Send {
    /// How many there are. There may be more later, never fewer.
    fn count(&self) -> usize;

    /// The length of one in bytes.
    fn length(&self, slot: usize) -> io::Result<u64>;

    /// Read from one, beginning `at` this byte, and say how many were read: fewer than
    /// `bytes` takes only at its end.
    fn read(&self, slot: usize, at: u64, bytes: &mut [u8]) -> io::Result<usize>;

    /// Write some of `bytes` into one, beginning `at` this byte, and say how many.
    fn write(&self, slot: usize, at: u64, bytes: &[u8]) -> io::Result<usize>;

    /// Cut one to a length.
    fn cut(&self, slot: usize, length: u64) -> io::Result<()>;

    /// Wait until one is on the disk, with its length.
    fn sync(&self, slot: usize) -> io::Result<()>;
}

/// Read all of one, no more than `most` bytes.
pub(super) fn read_all(slots: &dyn Slots, slot: usize, most: u64) -> io::Result<Vec<u8>> {
    let length = slots.length(slot)?.min(most);
    read_from(slots, slot, 0, length)
}

/// Read so many bytes of one, beginning `at` this byte.
pub(super) fn read_from(
    slots: &dyn Slots,
    slot: usize,
    at: u64,
    length: u64,
) -> io::Result<Vec<u8>> {
    let mut bytes = vec![0; usize::try_from(length).map_err(io::Error::other)?];
    let mut have = 0;
    while have < bytes.len() {
        match slots.read(slot, at + have as u64, &mut bytes[have..])? {
            0 => break,
            read => have += read,
        }
    }
    bytes.truncate(have);
    Ok(bytes)
}

/// Write a whole file: its bytes, its length, and wait until it is on the disk.
pub(super) fn write_whole(slots: &dyn Slots, slot: usize, bytes: &[u8]) -> io::Result<()> {
    let mut done = 0;
    while done < bytes.len() {
        match slots.write(slot, done as u64, &bytes[done..])? {
            0 => return Err(io::ErrorKind::WriteZero.into()),
            written => done += written,
        }
    }
    slots.cut(slot, bytes.len() as u64)?;
    slots.sync(slot)
}
