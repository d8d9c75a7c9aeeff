//! The copies that lie beside a throw's file since it was merged, replaced or put back.
//!
//! Each merge leaves the file that was here and the one that was brought. The newest [`MOST_KEPT`]
//! of either kind are kept; older ones are removed once a newer one is on the disk. The maker may
//! clear them all. Copies of a torn file or of one of an older version are not among them.

use super::{Place, Store, StoreError, THROW_FILE, ThrowId, failed};
use crate::disk::{Disk, DiskPath};
use std::io;

/// So many copies of either kind are kept beside a throw.
pub(super) const MOST_KEPT: usize = 5;
/// What they are called after the name of the throw's file.
const KINDS: [&str; 2] = ["here", "brought"];

/// The copies kept beside a throw's file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct KeptCopies {
    /// How many.
    pub count: usize,
    /// How many bytes they take.
    pub bytes: u64,
}

/// The copies of a kind in a throw's folder, the oldest first.
fn of_kind(disk: &dyn Disk, folder: &DiskPath, kind: &str) -> Vec<DiskPath> {
    let begins = format!("{THROW_FILE}.{kind}-");
    // `here-1773230400000`, or `here-1773230400000-1` for a second one of that moment.
    let number = |path: &DiskPath| -> Option<(i64, u32)> {
        let after = path.name()?.strip_prefix(&begins)?;
        match after.get(1..)?.find('-').map(|at| after.split_at(at + 1)) {
            Some((at, nth)) => Some((at.parse().ok()?, nth[1..].parse().ok()?)),
            None => Some((after.parse().ok()?, 0)),
        }
    };
    let found = disk.list(folder).unwrap_or_default();
    let mut found: Vec<_> = found
        .into_iter()
        .filter_map(|path| Some((number(&path)?, path)))
        .collect();
    found.sort();
    found.into_iter().map(|(_, path)| path).collect()
}

/// The copies in a throw's folder, and what they take.
pub(crate) fn kept(disk: &dyn Disk, folder: &DiskPath) -> (Vec<DiskPath>, KeptCopies) {
    let each = KINDS.iter().flat_map(|kind| of_kind(disk, folder, kind));
    let paths: Vec<DiskPath> = each.collect();
    let length = |path: &DiskPath| disk.about(path).map_or(0, |about| about.length);
    let copies = KeptCopies {
        count: paths.len(),
        bytes: paths.iter().map(length).sum(),
    };
    (paths, copies)
}

/// Remove the copies in a throw's folder; gives what was removed.
pub(crate) fn clear(disk: &dyn Disk, folder: &DiskPath) -> Result<KeptCopies, StoreError> {
    let (paths, copies) = kept(disk, folder);
    for path in &paths {
        match disk.remove(path) {
            Err(why) if why.kind() != io::ErrorKind::NotFound => return Err(failed(path)(why)),
            _ => {}
        }
    }
    if !paths.is_empty() {
        disk.sync_folder(folder).map_err(failed(folder))?;
    }
    Ok(copies)
}

impl Store {
    /// The copies kept beside a throw in work.
    pub fn kept_copies(&self, id: &ThrowId) -> KeptCopies {
        kept(&*self.disk, &self.throw_folder(Place::Throws, id)).1
    }

    /// Remove the copies kept beside a throw in work; gives what was removed.
    ///
    /// # Errors
    /// What stood in the way; some of them may then be removed.
    pub fn clear_copies(&self, id: &ThrowId) -> Result<KeptCopies, StoreError> {
        self.must_be_claimed()?;
        let folder = self.throw_folder(Place::Throws, id);
        if !self.disk.is_folder(&folder) {
            return Err(StoreError::NoSuchThrow);
        }
        clear(&*self.disk, &folder)
    }

    /// Remove the oldest copies beside a throw's file beyond those that are kept.
    pub(super) fn bound_copies(&self, id: &ThrowId) {
        let folder = self.throw_folder(Place::Throws, id);
        for kind in KINDS {
            let copies = of_kind(&*self.disk, &folder, kind);
            let over = copies.len().saturating_sub(MOST_KEPT);
            for path in &copies[..over] {
                // One that stays takes room and does no harm.
                let _ = self.disk.remove(path);
            }
        }
    }
}
