//! The shelf of throws, and its commands.

use super::Service;
use super::reminding::last_of;
use crate::store::{Place, StoreError, ThrowId};
use lapwork_core::command::{Command, Rejection};
use lapwork_core::faces::inherit;
use lapwork_core::log::journal::Journal;
use lapwork_core::log::lessons::heritage;
use lapwork_core::show::{AgainView, ShelfAnswer, ShelfCommand, ShelfRow, ShelfView};
use lapwork_core::throw::Time;
use lapwork_core::throw::heritage::Heritage;
use lapwork_core::words::Problem;
use lapwork_core::{demo, show};

/// For how long a window waits while throws are read for the shelf, in milliseconds.
pub const WINDOW_WAITS: Time = 150;

impl Service {
    /// From now on the shelf is shown after so many milliseconds, whether all throws are read by
    /// then or not, so that many throws, or one that is slow to read, hold up neither the shelf nor
    /// what is tapped on it.
    #[must_use]
    pub fn waiting(mut self, milliseconds: Time) -> Service {
        self.waits = Some(milliseconds);
        self
    }

    /// The shelf of throws. Rows of throws that are not read yet say so; at least one more is read
    /// each time the shelf is asked for, the small ones first.
    pub fn shelf(&mut self, now: Time) -> ShelfView {
        let began = self.now();
        let enough = |service: &Service| {
            // A clock that was set back counts as time gone by.
            let took = service.now() - began;
            service
                .waits
                .is_some_and(|waits| !(0..=waits).contains(&took))
        };
        let mut shelf = ShelfView {
            rows: Vec::new(),
            archived: Vec::new(),
            deleted: Vec::new(),
            reminder: None,
        };
        // A folder that cannot be listed is reported by `hello`, which claims it. One that is
        // gone for the time being is shown as it was.
        let ids = match self.store.away() {
            true => self.open.keys().cloned().collect(),
            false => self.store.ids(Place::Throws).unwrap_or_default(),
        };
        // Another Lapwork has the folder: nothing is remembered, so nothing can follow later.
        let later = self.store.claimed();
        let ids = self.small_first(Place::Throws, ids);
        let mut read = 0;
        for id in ids {
            let known = self.open.contains_key(&id);
            if later && !known && read > 0 && enough(self) {
                shelf.rows.push(self.unread_row(Place::Throws, &id));
                continue;
            }
            read += usize::from(!known);
            let row = self.row(&id, now);
            match &row.head {
                Some(head) if head.archived => shelf.archived.push(row),
                _ => shelf.rows.push(row),
            }
        }
        let deleted = self.store.ids(Place::Deleted).unwrap_or_default();
        self.deleted.retain(|id, _| deleted.contains(id));
        for id in self.small_first(Place::Deleted, deleted) {
            let known = self.deleted.contains_key(&id);
            if later && !known && read > 0 && enough(self) {
                shelf.deleted.push(self.unread_row(Place::Deleted, &id));
                continue;
            }
            if !(known && later) {
                read += 1;
                let opened = self.store.read(Place::Deleted, &id);
                let journal = opened.map(|opened| opened.journal);
                self.deleted.insert(id.clone(), journal);
            }
            let row = match self.deleted.get(&id) {
                Some(Ok(journal)) => show::shelf_row(id.as_str(), journal, self.context(now)),
                Some(Err(error)) => self.bad_row(Place::Deleted, &id, error),
                None => self.unread_row(Place::Deleted, &id),
            };
            shelf.deleted.push(row);
        }
        for rows in [&mut shelf.rows, &mut shelf.archived, &mut shelf.deleted] {
            rows.sort_by(|a, b| b.at.cmp(&a.at).then_with(|| b.id.cmp(&a.id)));
        }
        shelf.reminder = self.reminder(&shelf, now);
        shelf
    }

    /// These throws, those with the smallest files first.
    fn small_first(&self, place: Place, mut ids: Vec<ThrowId>) -> Vec<ThrowId> {
        ids.sort_by_cached_key(|id| (self.store.length(place, id), id.clone()));
        ids
    }

    /// A throw that is not read yet.
    fn unread_row(&self, place: Place, id: &ThrowId) -> ShelfRow {
        ShelfRow {
            unread: true,
            ..self.bare_row(place, id)
        }
    }

    /// A row of which only the file is known.
    fn bare_row(&self, place: Place, id: &ThrowId) -> ShelfRow {
        ShelfRow {
            id: id.as_str().to_string(),
            head: None,
            grid: String::new(),
            next: String::new(),
            at: self.store.written(place, id),
            finished: None,
            picture: None,
            problem: None,
            unread: false,
            copies: None,
        }
    }

    /// What to say of the copies kept beside a throw, if there are any.
    fn copies_of(&self, id: &ThrowId) -> Option<String> {
        let kept = self.store.kept_copies(id);
        let args = [
            ("n", kept.count.into()),
            ("size", kilobytes(kept.bytes).into()),
        ];
        (kept.count > 0).then(|| self.words.say("kept-copies", &args))
    }

    fn row(&mut self, id: &ThrowId, now: Time) -> ShelfRow {
        if let Err(error) = self.reach(id, now) {
            return self.bad_row(Place::Throws, id, &error);
        }
        let Some(opened) = self.open.get(id) else {
            return self.bad_row(Place::Throws, id, &StoreError::NoSuchThrow);
        };
        let mut row = show::shelf_row(id.as_str(), &opened.journal, self.context(now));
        row.copies = self.copies_of(id);
        row.problem = match self.mended.get(id) {
            _ if self.store.away() => Some(self.message(&StoreError::Away {
                path: self.store.folder().clone(),
            })),
            Some(notice) => Some(notice.clone()),
            None if opened.torn() => Some(self.words.problem("torn-left", &[])),
            None if opened.held() => Some(self.message(&StoreError::Held {
                path: self.store.throw_file(Place::Throws, id),
            })),
            None => row.problem,
        };
        row
    }

    /// A throw that cannot be opened.
    fn bad_row(&self, place: Place, id: &ThrowId, error: &StoreError) -> ShelfRow {
        ShelfRow {
            problem: Some(self.message(error)),
            ..self.bare_row(place, id)
        }
    }

    /// Do something on the shelf.
    ///
    /// # Errors
    /// The [`Problem`] to show; the shelf is then as it was.
    pub fn shelf_command(
        &mut self,
        command: &ShelfCommand,
        now: Time,
    ) -> Result<ShelfAnswer, Problem> {
        self.claim().map_err(|error| self.message(&error))?;
        self.changed();
        let begun = match command {
            ShelfCommand::Begin { action, pile } => {
                let journal = self.begun(action, now)?;
                let journal = self.heaped(journal, pile, now)?;
                Some(self.keep(journal, now))
            }
            ShelfCommand::Again { id, action, pile } => {
                let journal = self.begun_after(id, action, now)?;
                let journal = self.heaped(journal, pile, now)?;
                Some(self.keep(journal, now))
            }
            ShelfCommand::Demo => {
                let demo = demo::throw_in(&self.words, now);
                let last = last_of(&demo);
                let kept = self.keep(demo, now);
                if let Ok(id) = &kept {
                    self.note_copy(id, last);
                }
                Some(kept)
            }
            ShelfCommand::Delete { id } => self.carried(id, Place::Throws, Place::Deleted),
            ShelfCommand::Restore { id } => self.carried(id, Place::Deleted, Place::Throws),
            ShelfCommand::ClearCopies { id } => ThrowId::parse(id)
                .and_then(|id| self.store.clear_copies(&id))
                .map_or_else(|error| Some(Err(error)), |_| None),
            ShelfCommand::CopyLater { id } => ThrowId::parse(id).map_or_else(
                |error| Some(Err(error)),
                |id| {
                    self.put_copy_off(&id);
                    None
                },
            ),
            ShelfCommand::Erase { id } => ThrowId::parse(id)
                .and_then(|id| {
                    self.store.erase(&id)?;
                    self.acknowledged.remove(&id);
                    Ok(())
                })
                .map_or_else(|error| Some(Err(error)), |()| None),
        };
        let id = begun
            .transpose()
            .map_err(|error| self.message(&error))?
            .map(|id| id.as_str().to_string());
        Ok(ShelfAnswer {
            id,
            shelf: self.shelf(now),
        })
    }

    /// The same with these on its pile, so that a throw is begun with all of them or not at all.
    fn heaped(
        &self,
        mut journal: Journal,
        pile: &[Command],
        now: Time,
    ) -> Result<Journal, Problem> {
        if !pile.is_empty() {
            let heaps = pile.to_vec();
            let entry = journal
                .propose(&Command::AddAll { heaps }, now)
                .map_err(|why| show::rejection(&why, Some(journal.throw()), self.context(now)))?;
            journal.accept(entry);
        }
        Ok(journal)
    }

    fn begun(&self, action: &Command, now: Time) -> Result<Journal, Problem> {
        let begun = match action {
            Command::Begin { .. } => Journal::begin(action, now),
            _ => Err(Rejection::Beginning),
        };
        let refused = |refusal| show::rejection(&refusal, None, self.context(now));
        Ok(begun.map_err(refused)?.0)
    }

    /// The record of a throw begun after another.
    fn begun_after(&mut self, id: &str, action: &Command, now: Time) -> Result<Journal, Problem> {
        self.with(id, now, |old, context| {
            let refused = |refusal| show::rejection(&refusal, None, context);
            let Command::Begin {
                plan,
                prints,
                denims,
                ..
            } = action
            else {
                return Err(refused(Rejection::Beginning));
            };
            let heritage = Heritage {
                faces: inherit::faces(old.throw(), plan, prints, denims),
                ..heritage(old)
            };
            let begun = Journal::begin_after(action, heritage, now).map_err(refused)?;
            Ok(begun.0)
        })
    }

    /// Keep a throw just begun, under a name of its own.
    fn keep(&mut self, journal: Journal, now: Time) -> Result<ThrowId, StoreError> {
        let journal = journal.named(&self.fresh_name()?);
        self.put_on_shelf(&journal, now)
    }

    /// Keep a throw that has its name.
    pub(super) fn put_on_shelf(
        &mut self,
        journal: &Journal,
        now: Time,
    ) -> Result<ThrowId, StoreError> {
        let id = self.fresh_id(now)?;
        self.store.begin(&id, journal)?;
        Ok(id)
    }

    /// `None` when all went well: no throw was begun.
    fn carried(&mut self, id: &str, from: Place, to: Place) -> Option<Result<ThrowId, StoreError>> {
        let carried = ThrowId::parse(id).and_then(|id| {
            self.open.remove(&id);
            self.deleted.remove(&id);
            self.store.carry(&id, from, to)
        });
        carried.err().map(Err)
    }

    /// A throw about to be made again.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn again(&mut self, id: &str, now: Time) -> Result<AgainView, Problem> {
        self.with(id, now, |journal, context| {
            Ok(show::again(journal, context))
        })
    }
}

/// So many kilobytes, at least one.
fn kilobytes(bytes: u64) -> u64 {
    bytes.div_ceil(1000).max(1)
}
