//! The photos that lie beside a throw, in its folder.
//!
//! A file that belongs to a throw stays a separate file beside it; an event refers to it by name,
//! never by a path. Deleting, restoring and erasing a throw include its photos. A throw file
//! exported alone has none: its record stays sound when it is imported, and the photos are
//! reported missing. A photo that was chosen but not added to the story is removed when the next
//! one is chosen.

use super::{PHOTOS, Place, Store, StoreError, ThrowId, failed, put};
use crate::disk::{DiskPath, make_folders};
use crate::photos;
use lapwork_core::cloth::photos::PhotoId;
use std::collections::BTreeSet;
use std::io;

impl Store {
    fn photo_folder(&self, id: &ThrowId) -> DiskPath {
        self.throw_folder(Place::Throws, id).join(PHOTOS)
    }

    fn photo_file(&self, id: &ThrowId, photo: &PhotoId) -> DiskPath {
        let name = format!("{}.jpg", photo.as_str());
        self.photo_folder(id).join(&name)
    }

    /// Keep a photo beside a throw in work. It is on the disk when this returns; one that
    /// is there already is left.
    ///
    /// # Errors
    /// What stood in the way; the photo is then not there, if the disk lets it be taken away.
    pub fn keep_photo(
        &self,
        id: &ThrowId,
        photo: &PhotoId,
        bytes: &[u8],
    ) -> Result<(), StoreError> {
        self.must_be_claimed()?;
        let throw = self.throw_folder(Place::Throws, id);
        if !self.disk.is_folder(&throw) {
            return Err(StoreError::NoSuchThrow);
        }
        let folder = self.photo_folder(id);
        make_folders(&*self.disk, &folder).map_err(failed(&folder))?;
        let path = self.photo_file(id, photo);
        // A photo that cannot be read just now is not taken for one that is not there.
        let found = match self.disk.about(&path) {
            Ok(about) => Some(about),
            Err(why) if why.kind() == io::ErrorKind::NotFound => None,
            Err(why) => return Err(failed(&path)(why)),
        };
        let length = bytes.len() as u64;
        let there = match found {
            Some(about) if about.length == length => {
                self.disk.read(&path, length).map_err(failed(&path))? == bytes
            }
            _ => false,
        };
        // One that is there may be left from a time when its name, or its folder's, was
        // not said to be safe.
        let kept = match there {
            true => self.disk.sync_folder(&folder),
            false => put(&*self.disk, &path, bytes),
        };
        let kept = kept.and_then(|()| self.disk.sync_folder(&throw));
        kept.map_err(|why| {
            if found.is_none() {
                let _ = self.disk.remove(&path);
            }
            failed(&path)(why)
        })
    }

    /// A photo's bytes; none if it is not there.
    ///
    /// # Errors
    /// [`StoreError::Disk`], or [`StoreError::TooLarge`] for what Lapwork never wrote.
    pub fn photo(&self, id: &ThrowId, photo: &PhotoId) -> Result<Option<Vec<u8>>, StoreError> {
        let path = self.photo_file(id, photo);
        let most = photos::MOST_BYTES;
        let bytes = match self.disk.read(&path, most + 1) {
            Ok(bytes) => bytes,
            Err(why) if why.kind() == io::ErrorKind::NotFound => return Ok(None),
            Err(why) => return Err(failed(&path)(why)),
        };
        if bytes.len() as u64 > most {
            return Err(StoreError::TooLarge { path });
        }
        Ok(Some(bytes))
    }

    /// Remove photos that were chosen and then not put into the story: all but `named`; and
    /// what an app that died while it kept one left half written.
    pub fn sweep_photos(&self, id: &ThrowId, named: &BTreeSet<PhotoId>) {
        for path in self.disk.list(&self.photo_folder(id)).unwrap_or_default() {
            let name = path.name();
            let (stem, ending) = name.and_then(|n| n.split_once('.')).unwrap_or_default();
            let half = ending == "jpg.new";
            let photo = PhotoId::parse(stem);
            if self.claimed() && photo.is_some_and(|photo| half || !named.contains(&photo)) {
                // Left there, it does no harm but takes room.
                let _ = self.disk.remove(&path);
            }
        }
    }
}
