//! The service answers what the window asks: the shelf, the throws on it, the settings.
//!
//! A [`Service`] holds the data folder, the words, the preferences and every throw read so
//! far. It knows nothing of windows or of the operating system: the [`Host`] provides what it
//! needs of the machine. Callers pass in the time of each call; [`Service::now`] gives it.
//!
//! Promises: an entry is on the disk before it is taken into memory and before it is
//! acknowledged. After a failed write the service reads the throw from the disk again before it
//! does anything else to it, compares it with what was acknowledged, and restores what is
//! missing. Where another program changed a throw's file, the service treats the file it found
//! like an imported one, and the window asks for it by [`Service::pending_import`]. While another
//! Lapwork holds the folder, the service writes nothing and remembers nothing, so that it shows
//! what the other has stored. Every [`StoreError`] is put into words from the one table of
//! errors.

mod drafting;
mod exporting;
mod importing;
mod message;
mod photos;
mod reminding;
mod shelf;
mod snapshot;
mod steps;
#[cfg(test)]
mod tests;

pub use message::{damage, message};
pub use shelf::WINDOW_WAITS;
pub use snapshot::{Setting, Snapshot, is_quick};

use crate::host::Host;
use crate::import::Import;
use crate::search::LayoutSearch;
use crate::store::{Opened, Store, StoreError, ThrowId};
use lapwork_core::demo;
use lapwork_core::log::journal::Journal;
use lapwork_core::measure::System;
use lapwork_core::measure::bounds::Sent;
use lapwork_core::plan::Plan;
use lapwork_core::show::drawing::{tiles, twills};
use lapwork_core::show::{self, Context};
use lapwork_core::show::{Hello, ImportView, Prefs};
use lapwork_core::throw::Time;
use lapwork_core::words::Problem;
use lapwork_core::words::{self, Arg, LANGUAGES, Language, Words};
use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;

/// Size of text that can be chosen, in per cent.
const TEXT_SIZES: std::ops::RangeInclusive<u16> = 100..=200;

/// Longest code of a language in bytes (RFC 5646, section 4.4.1, foresees 35).
const LONGEST_TAG: usize = 35;

/// Everything behind the window.
pub struct Service {
    store: Store,
    host: Host,
    words: Words,
    /// The language where none is chosen.
    system: &'static Language,
    prefs: Prefs,
    /// What was wrong with the settings file.
    unsettled: Option<Problem>,
    /// Throws read so far.
    open: BTreeMap<ThrowId, Opened>,
    /// Deleted throws as they were read for the shelf; they do not change while they lie there.
    deleted: BTreeMap<ThrowId, Result<Arc<Journal>, StoreError>>,
    /// What was acknowledged of throws that are to be read again.
    acknowledged: BTreeMap<ThrowId, Arc<Journal>>,
    /// What was mended since the start, by throw.
    mended: BTreeMap<ThrowId, Problem>,
    /// An imported throw file, until the maker has decided what becomes of it.
    imported: Option<(u32, Import)>,
    /// How many were imported.
    imports: u32,
    /// What came of a file dropped on the window, until the window asks.
    pending: Option<Result<ImportView, Problem>>,
    /// The search for layouts.
    search: LayoutSearch,
    /// Counts what was done since the start that an older answer does not show.
    revision: u32,
    /// For how long the shelf may wait for throws to be read, in milliseconds.
    waits: Option<Time>,
    /// Whether the shelf reminds of throws of which much is in no copy.
    reminds: bool,
    /// The copy last made for export: of which throw, and the last entry it has.
    copy_made: Option<(ThrowId, u64)>,
}

impl Service {
    /// The service for a data folder. It can be viewed even if the folder cannot be
    /// written; [`Service::hello`] says so.
    pub fn new(store: Store, host: Host) -> Service {
        Service::for_locale(store, host, LANGUAGES[0].code)
    }

    /// A service that speaks the language of the system's `locale` where none is chosen, and
    /// begins in the measures used there.
    pub fn for_locale(store: Store, host: Host, locale: &str) -> Service {
        let system = words::language(locale).unwrap_or(&LANGUAGES[0]);
        let (kept, unsettled) = match store.settings() {
            Ok(kept) => (kept.map(tidy), None),
            Err(error) => (None, Some(message(&Words::of(system.code), &error))),
        };
        let prefs = kept.unwrap_or_else(|| Prefs::begun_in(System::customary(locale)));
        Service {
            store,
            host,
            words: words_for(&prefs, system),
            system,
            prefs,
            unsettled,
            open: BTreeMap::new(),
            deleted: BTreeMap::new(),
            acknowledged: BTreeMap::new(),
            mended: BTreeMap::new(),
            imported: None,
            imports: 0,
            pending: None,
            search: LayoutSearch::default(),
            revision: 0,
            waits: None,
            reminds: false,
            copy_made: None,
        }
    }

    /// What the machine's clock says.
    pub fn now(&self) -> Time {
        self.host.clock.now()
    }

    /// A sentence of the shell's, in the language that is spoken.
    pub fn say(&self, key: &str) -> String {
        self.words.say(key, &[])
    }

    /// Forget every throw read so far; the disk is asked again.
    pub fn forget(&mut self) {
        self.open.clear();
        self.deleted.clear();
    }

    /// Something was done that an answer given before does not show.
    fn changed(&mut self) {
        self.revision = self.revision.wrapping_add(1);
    }

    /// After something here broke off half-way: everything read so far is forgotten and read
    /// again from the disk, where all is that was acknowledged. Gives the [`Problem`] to tell.
    ///
    /// The records themselves stay known, folded anew from their entries, so that what is
    /// missing on the disk is put back as after a failed write.
    pub fn recover(&mut self) -> Problem {
        for (id, opened) in std::mem::take(&mut self.open) {
            let read = catch_unwind(AssertUnwindSafe(|| {
                Journal::read(opened.journal.text().as_bytes())
            }));
            // A record that cannot be folded is not trusted: the file alone counts.
            if let Ok(Ok(read)) = read
                && self.store.claimed()
            {
                self.acknowledged.insert(id, Arc::new(read.journal));
            }
        }
        self.changed();
        self.broke()
    }

    /// That something in the program broke off.
    pub fn broke(&self) -> Problem {
        self.words.problem("broke", &[])
    }

    /// A problem of the shell's, in the language that is spoken.
    pub fn problem(&self, code: &str, args: &[(&str, Arg)]) -> Problem {
        self.words.problem(code, args)
    }

    /// How the window looks and reads.
    pub fn prefs(&self) -> &Prefs {
        &self.prefs
    }

    fn context(&self, now: Time) -> Context<'_> {
        Context {
            words: &self.words,
            ruler: self.prefs.ruler,
            now,
        }
    }

    /// What the window sent, unless a figure in it is out of bounds.
    ///
    /// # Errors
    /// The [`Problem`] to show, which names the figure.
    pub fn accept<T>(&self, sent: Sent<T>) -> Result<T, Problem> {
        sent.0
            .map_err(|figure| show::out_of_bounds(&figure, &self.words))
    }

    /// What went wrong, in words.
    pub fn message(&self, error: &StoreError) -> Problem {
        message(&self.words, error)
    }

    /// Make sure that this service may write.
    fn claim(&mut self) -> Result<(), StoreError> {
        let before = self.store.claimed();
        let claimed = self.store.claim();
        if before && !matches!(claimed, Ok(false) | Err(StoreError::Away { .. })) {
            // This is not the folder that was claimed.
            for (id, opened) in std::mem::take(&mut self.open) {
                self.acknowledged.insert(id, opened.journal);
            }
        }
        if claimed? {
            self.forget();
        }
        Ok(())
    }

    /// What the window is given when it opens.
    pub fn hello(&mut self, now: Time) -> Hello {
        let claimed = self.claim();
        let shelf = self.shelf(now);
        let context = self.context(now);
        Hello {
            words: self.words.window(),
            prefs: self.prefs.clone(),
            language: self.words.language().code.to_string(),
            point: self.words.language().point.to_string(),
            languages: words::languages(),
            draft: show::draft_of(&Plan::usual(context.ruler.system), context),
            prints: demo::prints_in(&self.words),
            denims: demo::denims_in(&self.words),
            starts: show::StartOffers::of(context),
            tiles: tiles(),
            twills: twills(),
            version: env!("CARGO_PKG_VERSION").to_string(),
            folder: self.store.folder().to_string(),
            problem: match claimed {
                Err(error) => Some(self.message(&error)),
                Ok(()) => self.unsettled.clone(),
            },
            shelf,
        }
    }

    /// An id no throw has: the time, and something not to be foreseen.
    fn fresh_id(&mut self, now: Time) -> Result<ThrowId, StoreError> {
        loop {
            let mut chance = [0; 4];
            let filled = self.host.random.fill(&mut chance);
            filled.map_err(StoreError::Random)?;
            let chance = u32::from_le_bytes(chance);
            let id = ThrowId::parse(&format!("{:011x}-{chance:08x}", now.max(0)))?;
            if !self.store.knows(&id) {
                return Ok(id);
            }
        }
    }

    /// A name no other throw has, as good as certainly: 128 random bits.
    fn fresh_name(&mut self) -> Result<String, StoreError> {
        let mut chance = [0; 16];
        let filled = self.host.random.fill(&mut chance);
        filled.map_err(StoreError::Random)?;
        Ok(format!("{:032x}", u128::from_le_bytes(chance)))
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
            .map_err(|error| self.message(&error));
        kept?;
        self.words = words_for(&prefs, self.system);
        self.prefs = prefs;
        self.changed();
        self.unsettled = None;
        Ok(self.hello(now))
    }
}

/// Preferences limited to bounds.
fn tidy(prefs: Prefs) -> Prefs {
    Prefs {
        text: prefs.text.clamp(*TEXT_SIZES.start(), *TEXT_SIZES.end()),
        // A code longer than any names no language.
        language: prefs.language.filter(|tag| tag.len() <= LONGEST_TAG),
        ..prefs
    }
}

/// The words of the chosen language; of the system's where none is chosen or it is not known.
fn words_for(prefs: &Prefs, system: &'static Language) -> Words {
    let chosen = prefs.language.as_deref().and_then(words::language);
    Words::of(chosen.unwrap_or(system).code)
}
