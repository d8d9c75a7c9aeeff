//! Up to where copies of the throws were saved elsewhere (`copied.json`).
//!
//! The file serves a reminder and nothing else: one that cannot be read counts as empty, and one
//! that cannot be written costs no more than another reminder.

use super::{MOST_SETTINGS, Store, StoreError, ThrowId, failed, put};
use crate::disk::DiskPath;
use lapwork_core::show::CopyRecord;
use std::collections::BTreeMap;

impl Store {
    fn copied_file(&self) -> DiskPath {
        self.folder.join("copied.json")
    }

    /// What is known of the copies of each throw.
    pub fn copy_records(&self) -> BTreeMap<String, CopyRecord> {
        let most = MOST_SETTINGS;
        let text = self.disk.read(&self.copied_file(), most + 1);
        let text = text.ok().filter(|text| text.len() as u64 <= most);
        text.and_then(|text| serde_json::from_slice(&text).ok())
            .unwrap_or_default()
    }

    /// Keep what is known of the copies of a throw; of throws that are gone nothing is kept.
    ///
    /// # Errors
    /// What stood in the way; what was kept before is then still there, unless only the folder
    /// could not be synced.
    pub fn keep_copy_record(&self, id: &ThrowId, record: CopyRecord) -> Result<(), StoreError> {
        self.must_be_claimed()?;
        let mut all = self.copy_records();
        all.retain(|id, _| ThrowId::parse(id).is_ok_and(|id| self.knows(&id)));
        all.insert(id.as_str().to_string(), record);
        let path = self.copied_file();
        let text = serde_json::to_vec_pretty(&all).map_err(|why| failed(&path)(why.into()))?;
        put(&*self.disk, &path, &text).map_err(failed(&path))
    }
}
