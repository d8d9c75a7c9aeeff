//! What the window asks for, answered: the shelf, the throws on it, the settings.
//!
//! A [`Desk`] holds the data folder, the words, the preferences and every throw read so
//! far. It has no clock and knows nothing of windows; the time is handed in.
//!
//! Promises: an entry is on the disk before it is taken into memory and before it is
//! answered. After a failed write the throw is read again from the disk before anything
//! else is done to it. While another Lapwork holds the folder nothing is written and
//! nothing is remembered, so that what is shown is what the other has kept. Every
//! [`Trouble`] is told in words from the one table of errors.

use crate::store::{Opened, Place, Store, ThrowId, Trouble};
use lapwork_core::deed::Action;
use lapwork_core::journal::Journal;
use lapwork_core::measure::Ruler;
use lapwork_core::plan::Plan;
use lapwork_core::show::{self, Lens};
use lapwork_core::throw::Time;
use lapwork_core::view::{
    Deed, GridWish, GridsView, Head, Hello, Look, PlanDraft, PlanView, Prefs, Problem, ShelfRow,
    ShelfView, Tend, Tended, View,
};
use lapwork_core::words::{Arg, Words};
use lapwork_core::{deed::Refusal, demo};
use std::collections::BTreeMap;
use std::hash::{BuildHasher, RandomState};
use std::io::ErrorKind;
use std::path::Path;

/// Size of text that can be chosen, in per cent.
const TEXT_SIZES: std::ops::RangeInclusive<u16> = 100..=200;

/// Everything behind the window.
pub struct Desk {
    store: Store,
    words: Words,
    prefs: Prefs,
    /// What was wrong with the settings file.
    unsettled: Option<Problem>,
    /// Throws read so far.
    open: BTreeMap<ThrowId, Opened>,
    /// What was mended since the start, by throw.
    mended: BTreeMap<ThrowId, Problem>,
}

impl Desk {
    /// The desk for a data folder. It can be looked at even if the folder cannot be
    /// written; [`Desk::hello`] says so.
    pub fn new(store: Store) -> Desk {
        let words = Words::english();
        let (prefs, unsettled) = match store.settings() {
            Ok(prefs) => (tidy(prefs), None),
            Err(trouble) => (Prefs::default(), Some(told(&words, &trouble))),
        };
        Desk {
            store,
            words,
            prefs,
            unsettled,
            open: BTreeMap::new(),
            mended: BTreeMap::new(),
        }
    }

    /// Forget every throw read so far; the disk is asked again.
    pub fn forget(&mut self) {
        self.open.clear();
    }

    fn lens(&self, now: Time) -> Lens<'_> {
        Lens {
            words: &self.words,
            ruler: self.prefs.ruler,
            now,
        }
    }

    fn told(&self, trouble: &Trouble) -> Problem {
        told(&self.words, trouble)
    }

    /// Make sure of being the one that writes.
    fn claim(&mut self) -> Result<(), Trouble> {
        if self.store.claim()? {
            self.forget();
        }
        Ok(())
    }

    /// What the window is given when it opens.
    pub fn hello(&mut self, now: Time) -> Hello {
        let claimed = self.claim();
        let shelf = self.shelf(now);
        let lens = self.lens(now);
        Hello {
            words: self.words.window(),
            prefs: self.prefs,
            draft: show::draft_of(&Plan::default(), lens),
            prints: demo::prints(),
            denims: demo::denims(),
            version: env!("CARGO_PKG_VERSION").to_string(),
            folder: self.store.folder().display().to_string(),
            problem: match claimed {
                Err(trouble) => Some(self.told(&trouble)),
                Ok(()) => self.unsettled.clone(),
            },
            shelf,
        }
    }

    /// The shelf of throws.
    pub fn shelf(&mut self, now: Time) -> ShelfView {
        let mut shelf = ShelfView {
            rows: Vec::new(),
            archived: Vec::new(),
            deleted: Vec::new(),
        };
        // A folder that cannot be listed is reported by `hello`, which claims it.
        for id in self.store.ids(Place::Throws).unwrap_or_default() {
            let row = self.row(&id, now);
            match &row.head {
                Some(head) if head.archived => shelf.archived.push(row),
                _ => shelf.rows.push(row),
            }
        }
        for id in self.store.ids(Place::Deleted).unwrap_or_default() {
            let row = match self.store.read(Place::Deleted, &id) {
                Ok(opened) => show::shelf_row(id.as_str(), &opened.journal, self.lens(now)),
                Err(trouble) => self.bad_row(Place::Deleted, &id, &trouble),
            };
            shelf.deleted.push(row);
        }
        for rows in [&mut shelf.rows, &mut shelf.archived, &mut shelf.deleted] {
            rows.sort_by(|a, b| b.at.cmp(&a.at).then_with(|| b.id.cmp(&a.id)));
        }
        shelf
    }

    fn row(&mut self, id: &ThrowId, now: Time) -> ShelfRow {
        if let Err(trouble) = self.reach(id, now) {
            return self.bad_row(Place::Throws, id, &trouble);
        }
        let Some(opened) = self.open.get(id) else {
            return self.bad_row(Place::Throws, id, &Trouble::NoSuchThrow);
        };
        let mut row = show::shelf_row(id.as_str(), &opened.journal, self.lens(now));
        row.problem = match self.mended.get(id) {
            Some(notice) => Some(notice.clone()),
            None if opened.torn() => Some(self.words.problem("torn-left", &[])),
            None => row.problem,
        };
        row
    }

    /// A throw that cannot be opened.
    fn bad_row(&self, place: Place, id: &ThrowId, trouble: &Trouble) -> ShelfRow {
        ShelfRow {
            id: id.as_str().to_string(),
            head: None,
            grid: String::new(),
            next: String::new(),
            at: self.store.written(place, id),
            picture: None,
            prints: Vec::new(),
            problem: Some(self.told(trouble)),
        }
    }

    /// See that a throw has been read.
    fn reach(&mut self, id: &ThrowId, now: Time) -> Result<(), Trouble> {
        if self.store.claimed() && self.open.contains_key(id) {
            return Ok(());
        }
        self.open.remove(id);
        let opened = self.store.open(id, now)?;
        if let Some(copy) = &opened.copy {
            let notice = self.words.problem("torn", &[("copy", name(copy))]);
            self.mended.insert(id.clone(), notice);
        }
        self.open.insert(id.clone(), opened);
        Ok(())
    }

    /// Read a throw if need be, then do something with it.
    fn with<T>(
        &mut self,
        id: &str,
        now: Time,
        ask: impl FnOnce(&Journal, Lens<'_>) -> Result<T, Problem>,
    ) -> Result<T, Problem> {
        let reached = ThrowId::parse(id).and_then(|id| self.reach(&id, now).map(|()| id));
        let id = reached.map_err(|trouble| self.told(&trouble))?;
        let opened = self.open.get(&id).ok_or(Trouble::NoSuchThrow);
        let opened = opened.map_err(|trouble| self.told(&trouble))?;
        ask(&opened.journal, self.lens(now))
    }

    /// What a screen shows of a throw.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn look(&mut self, id: &str, look: &Look, now: Time) -> Result<View, Problem> {
        self.with(id, now, |journal, lens| show::look(journal, look, lens))
    }

    /// Do something to a throw. It is on the disk when this returns.
    ///
    /// # Errors
    /// The [`Problem`] to show; the throw is then as it was.
    pub fn act(&mut self, id: &str, deed: &Deed, now: Time) -> Result<Head, Problem> {
        self.claim().map_err(|trouble| self.told(&trouble))?;
        let entry = self.with(id, now, |journal, lens| {
            let proposed = match deed {
                Deed::Act { action } => journal.propose(action, now),
                Deed::Undo => journal.propose_undo(now),
                Deed::Redo => journal.propose_redo(now),
            };
            proposed.map_err(|refusal| show::refusal(&refusal, Some(journal.throw()), lens))
        })?;
        let id = ThrowId::parse(id).map_err(|trouble| self.told(&trouble))?;
        if let Some(opened) = self.open.get_mut(&id) {
            let kept = self.store.append(&id, opened, &entry);
            if kept.is_err() || opened.journal.accept(entry).is_none() {
                // What is on the disk is what counts, and it is read again before the
                // next step.
                self.open.remove(&id);
            }
            kept.map_err(|trouble| self.told(&trouble))?;
        }
        self.with(id.as_str(), now, |journal, lens| {
            Ok(show::head(journal, lens))
        })
    }

    /// Do something on the shelf.
    ///
    /// # Errors
    /// The [`Problem`] to show; the shelf is then as it was.
    pub fn tend(&mut self, tend: &Tend, now: Time) -> Result<Tended, Problem> {
        self.claim().map_err(|trouble| self.told(&trouble))?;
        let begun = match tend {
            Tend::Begin { action } => {
                let journal = self.begun(action, now)?;
                Some(self.keep(&journal, now))
            }
            Tend::Demo => Some(self.keep(&demo::throw(now), now)),
            Tend::Delete { id } => self.carried(id, Place::Throws, Place::Deleted),
            Tend::Restore { id } => self.carried(id, Place::Deleted, Place::Throws),
            Tend::Erase { id } => ThrowId::parse(id)
                .and_then(|id| self.store.erase(&id))
                .map_or_else(|trouble| Some(Err(trouble)), |()| None),
        };
        let id = begun
            .transpose()
            .map_err(|trouble| self.told(&trouble))?
            .map(|id| id.as_str().to_string());
        Ok(Tended {
            id,
            shelf: self.shelf(now),
        })
    }

    fn begun(&self, action: &Action, now: Time) -> Result<Journal, Problem> {
        let begun = match action {
            Action::Begin { .. } => Journal::begin(action, now),
            _ => Err(Refusal::Beginning),
        };
        let refused = |refusal| show::refusal(&refusal, None, self.lens(now));
        Ok(begun.map_err(refused)?.0)
    }

    fn keep(&self, journal: &Journal, now: Time) -> Result<ThrowId, Trouble> {
        let id = self.fresh_id(now)?;
        self.store.begin(&id, journal)?;
        Ok(id)
    }

    /// `None` when all went well: no throw was begun.
    fn carried(&mut self, id: &str, from: Place, to: Place) -> Option<Result<ThrowId, Trouble>> {
        let carried = ThrowId::parse(id).and_then(|id| {
            self.open.remove(&id);
            self.store.carry(&id, from, to)
        });
        carried.err().map(Err)
    }

    /// An id no throw has: the time, and something not to be foreseen.
    fn fresh_id(&self, now: Time) -> Result<ThrowId, Trouble> {
        loop {
            let chance = RandomState::new().hash_one(now) as u32;
            let id = ThrowId::parse(&format!("{:011x}-{chance:08x}", now.max(0)))?;
            if !self.store.knows(&id) {
                return Ok(id);
            }
        }
    }

    /// The plan of a throw not yet begun.
    pub fn draft(&self, draft: &PlanDraft, now: Time) -> PlanView {
        show::draft(draft, self.lens(now))
    }

    /// Grids near a wish.
    pub fn grids(&self, draft: &PlanDraft, wish: &GridWish, now: Time) -> GridsView {
        show::grids(draft, wish, self.lens(now))
    }

    /// Choose how the window looks and reads.
    ///
    /// # Errors
    /// The [`Problem`] to show; the preferences are then as they were.
    pub fn set_prefs(&mut self, prefs: Prefs, now: Time) -> Result<Hello, Problem> {
        let prefs = tidy(prefs);
        let kept = self
            .claim()
            .and_then(|()| self.store.keep_settings(&prefs))
            .map_err(|trouble| self.told(&trouble));
        kept?;
        self.prefs = prefs;
        self.unsettled = None;
        Ok(self.hello(now))
    }
}

/// Preferences brought within bounds.
fn tidy(prefs: Prefs) -> Prefs {
    Prefs {
        text: prefs.text.clamp(*TEXT_SIZES.start(), *TEXT_SIZES.end()),
        ..prefs
    }
}

fn name(path: &Path) -> Arg {
    let name = path.file_name().unwrap_or(path.as_os_str());
    Arg::Text(name.to_string_lossy().into_owned())
}

/// A trouble in words.
pub fn told(words: &Words, trouble: &Trouble) -> Problem {
    let file = |path: &Path| ("file", Arg::Text(path.display().to_string()));
    match trouble {
        Trouble::Disk { path, why } => {
            let kind = match why.kind() {
                ErrorKind::StorageFull | ErrorKind::QuotaExceeded => "full",
                ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => "forbidden",
                ErrorKind::AlreadyExists => "exists",
                _ => "other",
            };
            let why = Arg::Text(why.to_string());
            words.problem("disk", &[file(path), ("kind", kind.into()), ("why", why)])
        }
        Trouble::Locked => words.problem("locked", &[]),
        Trouble::TooLarge { path } => words.problem("too-large", &[file(path)]),
        Trouble::NoSuchThrow => words.problem("no-such-throw", &[]),
        Trouble::Missing { path } => words.problem("missing", &[file(path)]),
        Trouble::BadId => words.problem("bad-id", &[]),
        Trouble::Settings { path } => words.problem("settings", &[file(path)]),
        Trouble::Unreadable => words.problem("unreadable", &[]),
        Trouble::Damage { path: _, how } => {
            let lens = Lens {
                words,
                ruler: Ruler::default(),
                now: 0,
            };
            show::damage(how, lens)
        }
    }
}
