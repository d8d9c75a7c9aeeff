//! Importing throw files: comparing one with the copy that is here, and taking it in.

use super::{Service, message::name, reminding::last_of};
use crate::import::{self, Import};
use crate::store::{Found, Place, StoreError, ThrowId};
use lapwork_core::command::{Command, LONGEST_NAME};
use lapwork_core::log::journal::Journal;
use lapwork_core::log::merge::{MergeSide, meet};
use lapwork_core::show;
use lapwork_core::show::{ImportChoice, ImportView, Imported};
use lapwork_core::throw::Time;
use lapwork_core::words::Arg;
use lapwork_core::words::Problem;

impl Service {
    /// Compare an imported throw file with the copy that is here, if there is one.
    ///
    /// # Errors
    /// The [`Problem`] to show; nothing is then imported.
    pub fn import(
        &mut self,
        found: Result<Import, StoreError>,
        now: Time,
    ) -> Result<ImportView, Problem> {
        let brought = found.map_err(|error| self.message(&error))?;
        self.imports = self.imports.wrapping_add(1);
        let here = self.copy_of(&brought.journal, now);
        let here = here.and_then(|id| self.open.get(&id));
        let here = here.map(|opened| &*opened.journal);
        let about = (self.imports, brought.left_out);
        let view = show::import(here, &brought.journal, about, self.context(now));
        self.imported = Some((self.imports, brought));
        Ok(view)
    }

    /// Where a record was found in the place of a throw's file that has something more, lay
    /// it beside the throw, to be asked for.
    pub(super) fn offered(&mut self, error: StoreError, now: Time) -> StoreError {
        if let StoreError::Changed {
            path,
            here,
            brought: Some(copy),
            found: Found::More(bytes),
        } = &error
            && let Ok(brought) = import::read(path, bytes.clone())
        {
            let args = [("here", name(here)), ("brought", name(copy))];
            let said = self.words.say("bring-found", &[]);
            let details = self.words.say("bring-found-details", &args);
            let view = self.import(Ok(brought), now).map(|mut view| {
                view.said.insert(0, said);
                view.details = Some(details);
                view
            });
            self.pending = Some(view);
        }
        error
    }

    /// The same for a file dropped on the window; the window asks for it by
    /// [`Service::pending_import`].
    pub fn import_dropped(&mut self, found: Result<Import, StoreError>, now: Time) {
        self.pending = Some(self.import(found, now));
    }

    /// What came of a file dropped on the window, once.
    ///
    /// # Errors
    /// The [`Problem`] to show.
    pub fn pending_import(&mut self) -> Result<Option<ImportView>, Problem> {
        self.pending.take().transpose()
    }

    /// Whether [`Service::pending_import`] has something for the window.
    pub fn has_pending_import(&self) -> bool {
        self.pending.is_some()
    }

    /// The throw on the shelf that is a copy of this one.
    fn copy_of(&mut self, journal: &Journal, now: Time) -> Option<ThrowId> {
        let mut ids = self.store.ids(Place::Throws).unwrap_or_default();
        ids.sort();
        ids.into_iter().find(|id| {
            // A file that cannot be read is no copy.
            let read = self.reach(id, now).is_ok();
            let opened = self.open.get(id).filter(|_| read);
            opened.is_some_and(|opened| opened.journal.name() == journal.name())
        })
    }

    /// Do with the imported throw as the `file` of that number what was chosen.
    ///
    /// # Errors
    /// The [`Problem`] to show; the shelf is then as it was.
    pub fn decide_import(
        &mut self,
        choice: &ImportChoice,
        file: u32,
        now: Time,
    ) -> Result<Imported, Problem> {
        let brought = match self.imported.take() {
            Some((n, brought)) if n == file => Ok(brought),
            Some(other) => {
                self.imported = Some(other);
                Err(StoreError::OtherImported)
            }
            None => Err(StoreError::NothingImported),
        };
        let brought = brought.map_err(|error| self.message(&error))?;
        self.changed();
        let taken = match choice {
            ImportChoice::KeepHere => Ok((None, self.words.say("taken-here", &[]))),
            _ => self.take_in(&brought, choice, now),
        };
        let (id, said) = match taken {
            Ok(taken) => taken,
            Err(error) => {
                self.imported = Some((file, brought));
                // What was found in the place of the throw's own file is decided first.
                let error = self.offered(error, now);
                return Err(self.message(&error));
            }
        };
        Ok(Imported {
            id: id.map(|id| id.as_str().to_string()),
            said,
            shelf: self.shelf(now),
        })
    }

    fn take_in(
        &mut self,
        brought: &Import,
        choice: &ImportChoice,
        now: Time,
    ) -> Result<(Option<ThrowId>, String), StoreError> {
        self.claim()?;
        let here = self.copy_of(&brought.journal, now);
        let (Some(id), false) = (here, *choice == ImportChoice::KeepBoth) else {
            // It becomes a copy of its own if there is one here; else it is taken in as it is.
            let alone = match choice {
                ImportChoice::Add => brought.journal.clone(),
                _ => self.copied(&brought.journal, now)?,
            };
            let key = if *choice == ImportChoice::Add {
                "taken-added"
            } else {
                "taken-both"
            };
            let name = alone.throw().name.clone();
            let id = self.put_on_shelf(&alone, now)?;
            self.keep_brought(&id, brought);
            self.note_copy(&id, last_of(&brought.journal));
            return Ok((Some(id), self.words.say(key, &[("name", name.into())])));
        };
        // The replaced file is kept beside as it was, so it must be whole or repaired first.
        self.work_on(&id, now)?;
        let here = self.open.get(&id).ok_or(StoreError::NoSuchThrow)?;
        let meeting = meet(&here.journal, &brought.journal).map_err(StoreError::Unmergeable)?;
        let choices: Vec<MergeSide> = match choice {
            ImportChoice::Merge { brought } => {
                let side = |b: &bool| {
                    if *b {
                        MergeSide::Second
                    } else {
                        MergeSide::First
                    }
                };
                brought.iter().map(side).collect()
            }
            // The one with more has nothing to decide; if the throw here has gone on
            // meanwhile there may be, and it is asked again.
            _ => Vec::new(),
        };
        let joined = meeting.join(&choices).map_err(StoreError::Unmergeable)?;
        let kept = self.store.untouched(&id)?;
        if Journal::read(&kept).ok().map(|read| read.journal.text()) != Some(here.journal.text()) {
            // Another program was at it: that is put right first, and the maker asked again.
            let Some(opened) = self.open.get_mut(&id) else {
                return Err(StoreError::NoSuchThrow);
            };
            return Err(self.store.put_back(&id, opened, now));
        }
        self.open.remove(&id);
        let beside: &[(&str, &[u8])] = match choice {
            ImportChoice::Merge { .. } => &[("here", &kept), ("brought", &brought.bytes)],
            _ => &[("here", &kept)],
        };
        let copies = self.store.replace(&id, &joined, beside, now)?;
        self.keep_brought(&id, brought);
        if joined.text() == brought.journal.text() {
            self.note_copy(&id, last_of(&joined));
        }
        let said = match copies.as_slice() {
            [here, brought] => {
                let args = [("here", name(here)), ("brought", name(brought))];
                self.words.say("taken-merged", &args)
            }
            copies => {
                let copy = copies.first().map_or(Arg::from(""), name);
                self.words.say("taken-brought", &[("copy", copy)])
            }
        };
        Ok((Some(id), said))
    }

    /// Keep the photos of fabrics that came with a throw.
    fn keep_brought(&self, id: &ThrowId, brought: &Import) {
        let named = brought.journal.photos();
        for (photo, bytes) in &brought.photos {
            if named.contains(photo) {
                // Where one cannot be kept, its fabric is drawn as one without a photo is.
                let _ = self.store.keep_photo(id, photo, bytes);
            }
        }
    }

    /// The same record as that of a throw of its own.
    fn copied(&mut self, journal: &Journal, now: Time) -> Result<Journal, StoreError> {
        let mut copy = journal.clone().named(&self.fresh_name()?);
        let old = &journal.throw().name;
        let mut name = self
            .words
            .say("bring-copy-name", &[("name", old.as_str().into())]);
        if name.chars().count() > LONGEST_NAME {
            let over = name.chars().count() - LONGEST_NAME;
            let short: String = old.chars().take(old.chars().count() - over).collect();
            let short = short.trim_end();
            name = self.words.say("bring-copy-name", &[("name", short.into())]);
        }
        let entry = copy.propose(&Command::Rename { name }, now);
        let entry = entry.map_err(|_| StoreError::Unreadable)?;
        copy.accept(entry).ok_or(StoreError::Unreadable)?;
        Ok(copy)
    }
}
