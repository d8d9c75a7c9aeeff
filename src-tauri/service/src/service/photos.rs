//! Photos of a throw's story.

use super::Service;
use crate::photos;
use crate::store::{StoreError, ThrowId};
use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::throw::Time;
use lapwork_core::words::Problem;

impl Service {
    /// Keep a photo beside a throw, to be put into its story by an action. Photos that were
    /// chosen before and never put in, nor ever taken out again, are removed.
    ///
    /// # Errors
    /// The [`Problem`] to show; the photo is then not there.
    pub fn keep_photo(
        &mut self,
        id: &str,
        taken: Result<Vec<u8>, StoreError>,
        now: Time,
    ) -> Result<String, Problem> {
        let kept = taken.and_then(|bytes| {
            self.claim()?;
            let id = ThrowId::parse(id)?;
            self.reach(&id, now)?;
            let photo = photos::name(&bytes).ok_or(StoreError::NoPhoto)?;
            if let Some(opened) = self.open.get(&id) {
                self.store.sweep_photos(&id, &opened.journal.photos());
            }
            self.store.keep_photo(&id, &photo, &bytes)?;
            Ok(photo.as_str().to_string())
        });
        kept.map_err(|error| self.message(&error))
    }

    /// A photo's bytes, for the window; none for anything that is not one.
    pub fn photo(&self, id: &str, photo: &str) -> Option<Vec<u8>> {
        let (id, photo) = (ThrowId::parse(id).ok()?, PhotoId::parse(photo)?);
        self.store.photo(&id, &photo).ok().flatten()
    }
}
