//! The settings file.

use super::{MOST_SETTINGS, Store, StoreError, failed, put};
use crate::disk::DiskPath;
use lapwork_core::show::Prefs;
use std::io;

impl Store {
    fn settings_file(&self) -> DiskPath {
        self.folder.join("settings.json")
    }

    /// The settings, if any were ever kept.
    ///
    /// # Errors
    /// [`StoreError::Settings`] if the file cannot be read or understood.
    pub fn settings(&self) -> Result<Option<Prefs>, StoreError> {
        let path = self.settings_file();
        let most = MOST_SETTINGS;
        let text = match self.disk.read(&path, most + 1) {
            Ok(text) if text.len() as u64 <= most => text,
            Err(why) if why.kind() == io::ErrorKind::NotFound => return Ok(None),
            Ok(_) | Err(_) => return Err(StoreError::Settings { path }),
        };
        serde_json::from_slice(&text).map_err(|_| StoreError::Settings { path })
    }

    /// Keep the settings.
    ///
    /// # Errors
    /// What stood in the way; the settings kept before are then still there, unless only the
    /// folder could not be synced.
    pub fn keep_settings(&self, prefs: &Prefs) -> Result<(), StoreError> {
        self.must_be_claimed()?;
        let path = self.settings_file();
        let text = serde_json::to_vec_pretty(prefs).map_err(|why| failed(&path)(why.into()))?;
        put(&*self.disk, &path, &text).map_err(failed(&path))
    }
}
