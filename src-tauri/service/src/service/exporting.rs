//! Exporting a throw as files.

use super::Service;
use super::reminding::last_of;
use crate::disk::DiskPath;
use crate::export::ExportFile;
use crate::import;
use crate::photos;
use crate::store::{StoreError, ThrowId};
use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::log::journal::Journal;
use lapwork_core::show;
use lapwork_core::show::{Export, Exported};
use lapwork_core::throw::Time;
use lapwork_core::words::Arg;
use lapwork_core::words::Problem;
use std::collections::BTreeSet;

impl Service {
    /// The files of an export that is made from the file on the disk.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn export(
        &mut self,
        id: &str,
        export: &Export,
        now: Time,
    ) -> Result<Vec<ExportFile>, Problem> {
        match export {
            Export::Throw => {
                let called = self.with(id, now, |journal, _| Ok(journal.throw().name.clone()))?;
                let made = ThrowId::parse(id).and_then(|id| Ok((self.own_bytes(&id)?, id)));
                let (bytes, id) = made.map_err(|error| self.message(&error))?;
                let opened = self.open.get(&id);
                self.copy_made = opened.map(|opened| (id.clone(), last_of(&opened.journal)));
                let file = ExportFile {
                    name: show::file_name(&called, "jsonl"),
                    bytes: import::with_photos(bytes, &self.fabric_photos(&id)),
                };
                Ok(vec![file])
            }
            _ => {
                let snapshot = self.snapshot(id, now)?;
                let id = ThrowId::parse(id).map_err(|error| self.message(&error))?;
                let photo = |photo: &PhotoId| self.store.photo(&id, photo).ok().flatten();
                snapshot.export(export, &photo)
            }
        }
    }

    /// The photos of a throw's fabrics that are kept here and may go with it.
    fn fabric_photos(&self, id: &ThrowId) -> Vec<(PhotoId, Vec<u8>)> {
        let opened = self.open.get(id).into_iter();
        let prints = opened.flat_map(|opened| &opened.journal.throw().prints);
        let named: BTreeSet<PhotoId> = prints.filter_map(|print| print.photo.clone()).collect();
        let kept = named.into_iter().filter_map(|photo| {
            let bytes = self.store.photo(id, &photo).ok()??;
            photos::is_small(&bytes).then_some((photo, bytes))
        });
        kept.collect()
    }

    /// A throw's file byte for byte; if the file is gone or was exchanged, the record in memory.
    fn own_bytes(&self, id: &ThrowId) -> Result<Vec<u8>, StoreError> {
        let there = self.store.bytes(id);
        let Some(opened) = self.open.get(id).filter(|_| self.store.claimed()) else {
            return there;
        };
        let known = opened.journal.text().into_bytes();
        Ok(match there {
            Ok(bytes)
                if Journal::read(&bytes)
                    .is_ok_and(|read| read.journal.text().into_bytes() == known) =>
            {
                bytes
            }
            _ => known,
        })
    }

    /// That a sheet could not be printed.
    pub fn print_failed(&self, why: String) -> Problem {
        self.words.problem("print", &[("why", why.into())])
    }

    /// What to say of exported files, or of what stood in the way.
    ///
    /// # Errors
    /// The [`Problem`] to show.
    pub fn exported(&self, put: Result<Vec<DiskPath>, StoreError>) -> Result<Exported, Problem> {
        let put = put.map_err(|error| self.message(&error))?;
        let shown = |path: &DiskPath| Arg::Text(path.to_string());
        let said = match put.as_slice() {
            [] => None,
            [one] => Some(self.words.say("handed", &[("file", shown(one))])),
            [first, ..] => {
                let folder = first.parent().unwrap_or_else(|| first.clone());
                let args = [("n", put.len().into()), ("folder", shown(&folder))];
                Some(self.words.say("handed-many", &args))
            }
        };
        Ok(Exported { said })
    }
}
