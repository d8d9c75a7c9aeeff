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

use crate::arranging::{Found, MOST_ROUNDS};
use crate::handing::{Brought, Parcel};
use crate::photos::{self, Fault};
use crate::store::{Opened, Place, Seen, Store, ThrowId, Trouble};
use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use lapwork_core::command::Rejection;
use lapwork_core::command::{Command, LONGEST_NAME};
use lapwork_core::demo;
use lapwork_core::faces::inherit;
use lapwork_core::log::journal::{FormatError, Journal};
use lapwork_core::log::merge::{MergeSide, meet};
use lapwork_core::measure::bounds::Sent;
use lapwork_core::measure::{Ruler, System};
use lapwork_core::plan::Plan;
use lapwork_core::show::drawing::{Drawing, Style};
use lapwork_core::show::tables::Table;
use lapwork_core::show::{self, Context, Sheet};
use lapwork_core::show::{
    AgainView, CommandAnswer, DraftAfter, Export, Exported, GridWish, GridsView, Head, Hello,
    ImportChoice, ImportView, Imported, Layouts, PlanDraft, PlanView, Prefs, PrintOrder, Query,
    Request, ShelfAnswer, ShelfCommand, ShelfRow, ShelfView, View,
};
use lapwork_core::throw::heritage::Heritage;
use lapwork_core::throw::photos::PhotoId;
use lapwork_core::throw::{Throw, Time};
use lapwork_core::words::Problem;
use lapwork_core::words::{self, Arg, LANGUAGES, Language, Words};
use lapwork_sheet::PrintFault;
use std::collections::BTreeMap;
use std::hash::{BuildHasher, RandomState};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

/// Size of text that can be chosen, in per cent.
const TEXT_SIZES: std::ops::RangeInclusive<u16> = 100..=200;

/// Everything behind the window.
pub struct Desk {
    store: Store,
    words: Words,
    /// The language where none is chosen.
    system: &'static Language,
    prefs: Prefs,
    /// What was wrong with the settings file.
    unsettled: Option<Problem>,
    /// Throws read so far.
    open: BTreeMap<ThrowId, Opened>,
    /// What was mended since the start, by throw.
    mended: BTreeMap<ThrowId, Problem>,
    /// A throw file that was brought, until it is decided what becomes of it.
    brought: Option<(u32, Brought)>,
    /// How many were brought.
    files: u32,
    /// What came of a file dropped on the window, until the window asks.
    dropped: Option<Result<ImportView, Problem>>,
}

impl Desk {
    /// The desk for a data folder. It can be looked at even if the folder cannot be
    /// written; [`Desk::hello`] says so.
    pub fn new(store: Store) -> Desk {
        Desk::for_locale(store, LANGUAGES[0].code)
    }

    /// A desk that speaks the language of the system's `locale` where none is chosen, and
    /// begins in the measures used there.
    pub fn for_locale(store: Store, locale: &str) -> Desk {
        let system = words::language(locale).unwrap_or(&LANGUAGES[0]);
        let (kept, unsettled) = match store.settings() {
            Ok(kept) => (kept.map(tidy), None),
            Err(trouble) => (None, Some(told(&Words::of(system.code), &trouble))),
        };
        let prefs = kept.unwrap_or_else(|| Prefs::begun_in(System::customary(locale)));
        Desk {
            store,
            words: words_for(&prefs, system),
            system,
            prefs,
            unsettled,
            open: BTreeMap::new(),
            mended: BTreeMap::new(),
            brought: None,
            files: 0,
            dropped: None,
        }
    }

    /// A sentence of the shell's, in the language that is spoken.
    pub fn say(&self, key: &str) -> String {
        self.words.say(key, &[])
    }

    /// Forget every throw read so far; the disk is asked again.
    pub fn forget(&mut self) {
        self.open.clear();
    }

    fn lens(&self, now: Time) -> Context<'_> {
        Context {
            words: &self.words,
            ruler: self.prefs.ruler,
            now,
        }
    }

    /// What the window sent, if no figure in it is out of bounds.
    ///
    /// # Errors
    /// The [`Problem`] to show, which names the figure.
    pub fn accept<T>(&self, sent: Sent<T>) -> Result<T, Problem> {
        sent.0
            .map_err(|figure| show::out_of_bounds(&figure, &self.words))
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
            prefs: self.prefs.clone(),
            language: self.words.language().code.to_string(),
            point: self.words.language().point.to_string(),
            languages: words::languages(),
            draft: show::draft_of(&Plan::usual(lens.ruler.system), lens),
            prints: demo::prints_in(&self.words),
            denims: demo::denims_in(&self.words),
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
            None if opened.held() => Some(self.told(&Trouble::Held {
                path: self.store.throw_file(Place::Throws, id),
            })),
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
        if let Some(mended) = &opened.mended {
            let args = [
                ("bytes", mended.bytes.into()),
                ("count", opened.journal.len().into()),
                ("copy", Arg::Text(mended.copy.display().to_string())),
            ];
            let notice = self.words.problem("torn", &args);
            self.mended.insert(id.clone(), notice);
        }
        self.open.insert(id.clone(), opened);
        Ok(())
    }

    /// See that a throw has been read and can be added to: where a torn end or a failing
    /// disk stood in the way, it is tried anew.
    fn work_on(&mut self, id: &ThrowId, now: Time) -> Result<(), Trouble> {
        if self.open.get(id).is_some_and(|o| o.torn() || o.held()) {
            self.open.remove(id);
        }
        self.reach(id, now)?;
        let path = || self.store.throw_file(Place::Throws, id);
        match self.open.get(id) {
            Some(opened) if opened.torn() => Err(Trouble::Torn { path: path() }),
            Some(opened) if opened.held() => Err(Trouble::Held { path: path() }),
            _ => Ok(()),
        }
    }

    /// Read a throw if need be, then do something with it.
    fn with<T>(
        &mut self,
        id: &str,
        now: Time,
        ask: impl FnOnce(&Journal, Context<'_>) -> Result<T, Problem>,
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
    pub fn look(&mut self, id: &str, look: &Query, now: Time) -> Result<View, Problem> {
        self.with(id, now, |journal, lens| show::answer(journal, look, lens))
    }

    /// A throw as it stands, to look for layouts of it.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn throw(&mut self, id: &str, now: Time) -> Result<Throw, Problem> {
        self.with(id, now, |journal, _| Ok(journal.throw().clone()))
    }

    /// What a search for layouts has come to, as cards to choose from.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn layouts(&mut self, found: &Found, now: Time) -> Result<Layouts, Problem> {
        let rounds = (found.running, MOST_ROUNDS);
        self.with(&found.id, now, |journal, lens| {
            let (wishes, found) = (found.wishes, &found.layouts);
            Ok(show::layouts(journal, wishes, found, rounds, lens))
        })
    }

    /// Do something to a throw. It is on the disk when this returns.
    ///
    /// # Errors
    /// The [`Problem`] to show; the throw is then as it was.
    pub fn act(&mut self, id: &str, deed: &Request, now: Time) -> Result<Head, Problem> {
        self.claim().map_err(|trouble| self.told(&trouble))?;
        let throw = ThrowId::parse(id).and_then(|id| self.work_on(&id, now).map(|()| id));
        let throw = throw.map_err(|trouble| self.told(&trouble))?;
        let entry = self.with(id, now, |journal, lens| {
            let proposed = match deed {
                Request::Act { action } => journal.propose(action, now),
                Request::Undo => journal.propose_undo(now),
                Request::Redo => journal.propose_redo(now),
            };
            proposed.map_err(|refusal| show::rejection(&refusal, Some(journal.throw()), lens))
        })?;
        if let Some(opened) = self.open.get_mut(&throw) {
            let kept = self.store.append(&throw, opened, &entry);
            if kept.is_err() || opened.journal.accept(entry).is_none() {
                // What is on the disk is what counts, and it is read again before the
                // next step.
                self.open.remove(&throw);
            }
            kept.map_err(|trouble| self.told(&trouble))?;
        }
        self.with(id, now, |journal, lens| Ok(show::head(journal, lens)))
    }

    /// Do something to a throw, as [`Desk::act`] does, and look at it then.
    ///
    /// # Errors
    /// The [`Problem`] to show if it was not done; that it cannot be looked at is in the
    /// answer.
    pub fn act_and_look(
        &mut self,
        id: &str,
        deed: &Request,
        look: Option<&Query>,
        now: Time,
    ) -> Result<CommandAnswer, Problem> {
        let head = self.act(id, deed, now)?;
        let seen = look.map(|look| self.look(id, look, now)).transpose();
        let (view, problem) = match seen {
            Ok(view) => (view, None),
            Err(problem) => (None, Some(problem)),
        };
        Ok(CommandAnswer {
            head,
            view,
            problem,
        })
    }

    /// The files of something to be handed on, made from what is on the disk.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn hand(&mut self, id: &str, hand: &Export, now: Time) -> Result<Vec<Parcel>, Problem> {
        match hand {
            Export::Throw => {
                let called = self.with(id, now, |journal, _| Ok(journal.throw().name.clone()))?;
                let bytes = ThrowId::parse(id).and_then(|id| self.store.bytes(&id));
                let parcel = Parcel {
                    name: show::file_name(&called, "jsonl"),
                    bytes: bytes.map_err(|trouble| self.told(&trouble))?,
                };
                Ok(vec![parcel])
            }
            Export::Pictures => self.with(id, now, |journal, lens| {
                let throw = journal.throw();
                let parcel = |drawing: Drawing| {
                    let svg = drawing.svg(journal, Style::Colour, lens)?;
                    Ok(Parcel {
                        name: drawing.file_name(throw, lens),
                        bytes: svg.into_bytes(),
                    })
                };
                Drawing::all(throw).into_iter().map(parcel).collect()
            }),
            Export::Tables => self.with(id, now, |journal, lens| {
                let parcel = |table: Table| Parcel {
                    name: table.file_name(journal.throw(), lens),
                    bytes: table.csv(journal, lens).into_bytes(),
                };
                Ok(Table::ALL.into_iter().map(parcel).collect())
            }),
            Export::Story { east } => Ok(vec![self.story_page(id, *east, now)?]),
        }
    }

    /// What goes on paper of a throw, and the name of the file it goes into.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn sheet(
        &mut self,
        id: &str,
        order: PrintOrder,
        now: Time,
    ) -> Result<(String, Sheet), Problem> {
        self.with(id, now, |journal, lens| {
            let key = if order.card {
                "sheet-bench"
            } else {
                "sheet-making"
            };
            let called = format!("{} - {}", journal.throw().name, lens.words.say(key, &[]));
            let sheet = crate::printing::sheet(journal, lens, order);
            Ok((show::file_name(&called, "pdf"), sheet))
        })
    }

    /// The file of a print, if it was not stopped.
    ///
    /// # Errors
    /// The [`Problem`] to show.
    pub fn printed(
        &self,
        name: String,
        made: Result<Vec<u8>, PrintFault>,
    ) -> Result<Option<Parcel>, Problem> {
        match made {
            Ok(bytes) => Ok(Some(Parcel { name, bytes })),
            Err(PrintFault::Cancelled) => Ok(None),
            Err(PrintFault::Failed(why)) => {
                Err(self.words.problem("print", &[("why", why.into())]))
            }
        }
    }

    /// The story as one page, with the photos that are there in it.
    fn story_page(&mut self, id: &str, east: i32, now: Time) -> Result<Parcel, Problem> {
        let (story, called) = self.with(id, now, |journal, lens| {
            let called = lens.words.say("ui-story", &[]);
            let called = format!("{} - {called}", journal.throw().name);
            Ok((show::story(journal, east, lens), called))
        })?;
        let id = ThrowId::parse(id).map_err(|trouble| self.told(&trouble))?;
        let photo = |photo: &PhotoId| {
            let bytes = self.store.photo(&id, photo).ok().flatten()?;
            Some(BASE64_STANDARD.encode(bytes))
        };
        Ok(Parcel {
            name: show::file_name(&called, "html"),
            bytes: show::story_page(&story, photo, self.lens(now)).into_bytes(),
        })
    }

    /// Keep a photo beside a throw, to be put into its story by an action. Photos that were
    /// chosen before and never put in, nor ever taken out again, are removed.
    ///
    /// # Errors
    /// The [`Problem`] to show; the photo is then not there.
    pub fn keep_photo(
        &mut self,
        id: &str,
        taken: Result<Vec<u8>, Trouble>,
        now: Time,
    ) -> Result<String, Problem> {
        let kept = taken.and_then(|bytes| {
            self.claim()?;
            let id = ThrowId::parse(id)?;
            self.reach(&id, now)?;
            let photo = photos::name(&bytes).ok_or(Trouble::NoPhoto)?;
            if let Some(opened) = self.open.get(&id) {
                self.store.sweep_photos(&id, &opened.journal.photos());
            }
            self.store.keep_photo(&id, &photo, &bytes)?;
            Ok(photo.as_str().to_string())
        });
        kept.map_err(|trouble| self.told(&trouble))
    }

    /// A photo's bytes, for the window; none for anything that is not one.
    pub fn photo(&self, id: &str, photo: &str) -> Option<Vec<u8>> {
        let (id, photo) = (ThrowId::parse(id).ok()?, PhotoId::parse(photo)?);
        self.store.photo(&id, &photo).ok().flatten()
    }

    /// A throw about to be made again.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn again(&mut self, id: &str, now: Time) -> Result<AgainView, Problem> {
        self.with(id, now, |journal, lens| Ok(show::again(journal, lens)))
    }

    /// The record of a throw begun after another.
    fn begun_after(&mut self, id: &str, action: &Command, now: Time) -> Result<Journal, Problem> {
        self.with(id, now, |old, lens| {
            let refused = |refusal| show::rejection(&refusal, None, lens);
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
                ..show::heritage(old, lens)
            };
            let begun = Journal::begin_after(action, heritage, now).map_err(refused)?;
            Ok(begun.0.named(&fresh_name()))
        })
    }

    /// What to say of files handed on, or of what stood in the way.
    ///
    /// # Errors
    /// The [`Problem`] to show.
    pub fn handed(&self, put: Result<Vec<PathBuf>, Trouble>) -> Result<Exported, Problem> {
        let put = put.map_err(|trouble| self.told(&trouble))?;
        let shown = |path: &Path| Arg::Text(path.display().to_string());
        let said = match put.as_slice() {
            [] => None,
            [one] => Some(self.words.say("handed", &[("file", shown(one))])),
            [first, ..] => {
                let folder = shown(first.parent().unwrap_or(first));
                let args = [("n", put.len().into()), ("folder", folder)];
                Some(self.words.say("handed-many", &args))
            }
        };
        Ok(Exported { said })
    }

    /// Lay a throw file that was brought beside the copy that is here, if there is one.
    ///
    /// # Errors
    /// The [`Problem`] to show; nothing is then brought.
    pub fn bring(
        &mut self,
        found: Result<Brought, Trouble>,
        now: Time,
    ) -> Result<ImportView, Problem> {
        let brought = found.map_err(|trouble| self.told(&trouble))?;
        self.files = self.files.wrapping_add(1);
        let here = self.copy_of(&brought.journal, now);
        let here = here.and_then(|id| self.open.get(&id));
        let here = here.map(|opened| &opened.journal);
        let about = (self.files, brought.left_out);
        let view = show::bring(here, &brought.journal, about, self.lens(now));
        self.brought = Some((self.files, brought));
        Ok(view)
    }

    /// The same for a file dropped on the window; the window asks for it by
    /// [`Desk::dropped`].
    pub fn drop_in(&mut self, found: Result<Brought, Trouble>, now: Time) {
        self.dropped = Some(self.bring(found, now));
    }

    /// What came of a file dropped on the window, once.
    ///
    /// # Errors
    /// The [`Problem`] to show.
    pub fn dropped(&mut self) -> Result<Option<ImportView>, Problem> {
        self.dropped.take().transpose()
    }

    /// The throw on the shelf that is a copy of this one.
    fn copy_of(&mut self, journal: &Journal, now: Time) -> Option<ThrowId> {
        let mut ids = self.store.ids(Place::Throws).unwrap_or_default();
        ids.sort();
        ids.into_iter().find(|id| {
            // One that cannot be read is no copy to be told of.
            let read = self.reach(id, now).is_ok();
            let opened = self.open.get(id).filter(|_| read);
            opened.is_some_and(|opened| opened.journal.name() == journal.name())
        })
    }

    /// Do with the throw that was brought as the `file` of that number what was chosen.
    ///
    /// # Errors
    /// The [`Problem`] to show; the shelf is then as it was.
    pub fn take(&mut self, take: &ImportChoice, file: u32, now: Time) -> Result<Imported, Problem> {
        let brought = match self.brought.take() {
            Some((n, brought)) if n == file => Ok(brought),
            Some(other) => {
                self.brought = Some(other);
                Err(Trouble::OtherBrought)
            }
            None => Err(Trouble::NothingBrought),
        };
        let brought = brought.map_err(|trouble| self.told(&trouble))?;
        let taken = match take {
            ImportChoice::KeepHere => Ok((None, self.words.say("taken-here", &[]))),
            _ => self.take_in(&brought, take, now),
        };
        let taken = taken.map_err(|trouble| self.told(&trouble));
        let (id, said) = taken.inspect_err(|_| self.brought = Some((file, brought)))?;
        Ok(Imported {
            id: id.map(|id| id.as_str().to_string()),
            said,
            shelf: self.shelf(now),
        })
    }

    fn take_in(
        &mut self,
        brought: &Brought,
        take: &ImportChoice,
        now: Time,
    ) -> Result<(Option<ThrowId>, String), Trouble> {
        self.claim()?;
        let here = self.copy_of(&brought.journal, now);
        let (Some(id), false) = (here, *take == ImportChoice::KeepBoth) else {
            // A copy of its own, if there is one here; else as it is.
            let alone = match take {
                ImportChoice::Add => brought.journal.clone(),
                _ => self.copied(&brought.journal, now)?,
            };
            let key = if *take == ImportChoice::Add {
                "taken-added"
            } else {
                "taken-both"
            };
            let name = alone.throw().name.clone();
            let id = self.keep(&alone, now)?;
            return Ok((Some(id), self.words.say(key, &[("name", name.into())])));
        };
        // What is replaced is kept beside as it was: so it must be whole, or mended first.
        self.work_on(&id, now)?;
        let here = self.open.get(&id).ok_or(Trouble::NoSuchThrow)?;
        let meeting = meet(&here.journal, &brought.journal).map_err(Trouble::Unmergeable)?;
        let choices: Vec<MergeSide> = match take {
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
        let joined = meeting.join(&choices).map_err(Trouble::Unmergeable)?;
        let kept = self.store.untouched(&id)?;
        self.open.remove(&id);
        let beside: &[(&str, &[u8])] = match take {
            ImportChoice::Merge { .. } => &[("here", &kept), ("brought", &brought.bytes)],
            _ => &[("here", &kept)],
        };
        let copies = self.store.replace(&id, &joined, beside, now)?;
        let said = match copies.as_slice() {
            [here, brought] => {
                let args = [("here", name(here)), ("brought", name(brought))];
                self.words.say("taken-merged", &args)
            }
            copies => {
                let copy = copies.first().map_or(Arg::from(""), |copy| name(copy));
                self.words.say("taken-brought", &[("copy", copy)])
            }
        };
        Ok((Some(id), said))
    }

    /// The same record as that of a throw of its own.
    fn copied(&self, journal: &Journal, now: Time) -> Result<Journal, Trouble> {
        let mut copy = journal.clone().named(&fresh_name());
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
        let entry = entry.map_err(|_| Trouble::Unreadable)?;
        copy.accept(entry).ok_or(Trouble::Unreadable)?;
        Ok(copy)
    }

    /// Do something on the shelf.
    ///
    /// # Errors
    /// The [`Problem`] to show; the shelf is then as it was.
    pub fn tend(&mut self, tend: &ShelfCommand, now: Time) -> Result<ShelfAnswer, Problem> {
        self.claim().map_err(|trouble| self.told(&trouble))?;
        let begun = match tend {
            ShelfCommand::Begin { action } => {
                let journal = self.begun(action, now)?;
                Some(self.keep(&journal, now))
            }
            ShelfCommand::Again { id, action } => {
                let journal = self.begun_after(id, action, now)?;
                Some(self.keep(&journal, now))
            }
            ShelfCommand::Demo => {
                let demo = demo::throw_in(&self.words, now).named(&fresh_name());
                Some(self.keep(&demo, now))
            }
            ShelfCommand::Delete { id } => self.carried(id, Place::Throws, Place::Deleted),
            ShelfCommand::Restore { id } => self.carried(id, Place::Deleted, Place::Throws),
            ShelfCommand::Erase { id } => ThrowId::parse(id)
                .and_then(|id| self.store.erase(&id))
                .map_or_else(|trouble| Some(Err(trouble)), |()| None),
        };
        let id = begun
            .transpose()
            .map_err(|trouble| self.told(&trouble))?
            .map(|id| id.as_str().to_string());
        Ok(ShelfAnswer {
            id,
            shelf: self.shelf(now),
        })
    }

    fn begun(&self, action: &Command, now: Time) -> Result<Journal, Problem> {
        let begun = match action {
            Command::Begin { .. } => Journal::begin(action, now),
            _ => Err(Rejection::Beginning),
        };
        let refused = |refusal| show::rejection(&refusal, None, self.lens(now));
        Ok(begun.map_err(refused)?.0.named(&fresh_name()))
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

    /// The plan of a throw not yet begun that is made after an older one, whose faces it
    /// takes.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn draft_after(
        &mut self,
        draft: &PlanDraft,
        after: &DraftAfter,
        now: Time,
    ) -> Result<PlanView, Problem> {
        self.with(&after.id, now, |journal, lens| {
            let cloth = (after.prints.as_slice(), after.denims.as_slice());
            Ok(show::draft_after(journal.throw(), cloth, draft, lens))
        })
    }

    /// Grids near a wish.
    pub fn grids(&self, draft: &PlanDraft, wish: &GridWish, now: Time) -> GridsView {
        show::grids(draft, wish, self.lens(now))
    }

    /// A typed length, in nanometres, as an action takes it.
    ///
    /// # Errors
    /// The [`Problem`] with what was typed.
    pub fn length(&self, typed: &str, now: Time) -> Result<i64, Problem> {
        show::length(typed, self.lens(now))
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
        self.words = words_for(&prefs, self.system);
        self.prefs = prefs;
        self.unsettled = None;
        Ok(self.hello(now))
    }
}

/// A name no other throw has, as good as certainly: 128 bits from the system's own chance,
/// which keys its hashers.
fn fresh_name() -> String {
    let [a, b] = [0, 1].map(|n: u8| RandomState::new().hash_one(n));
    format!("{a:016x}{b:016x}")
}

/// Preferences brought within bounds.
fn tidy(prefs: Prefs) -> Prefs {
    Prefs {
        text: prefs.text.clamp(*TEXT_SIZES.start(), *TEXT_SIZES.end()),
        ..prefs
    }
}

/// The words of the chosen language; of the system's where none is chosen or it is not known.
fn words_for(prefs: &Prefs, system: &'static Language) -> Words {
    let chosen = prefs.language.as_deref().and_then(words::language);
    Words::of(chosen.unwrap_or(system).code)
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
        Trouble::Unsure { path, why, seen } => {
            let seen = match seen {
                Seen::Before => "before",
                Seen::After => "after",
                Seen::Neither => "neither",
            };
            let why = Arg::Text(why.to_string());
            words.problem("unsure", &[file(path), ("seen", seen.into()), ("why", why)])
        }
        Trouble::Torn { .. } => words.problem("torn-left", &[]),
        Trouble::Held { path } => words.problem("held", &[file(path)]),
        Trouble::Locked => words.problem("locked", &[]),
        Trouble::TooLarge { path } => words.problem("too-large", &[file(path)]),
        Trouble::NoSuchThrow => words.problem("no-such-throw", &[]),
        Trouble::Missing { path } => words.problem("missing", &[file(path)]),
        Trouble::BadId => words.problem("bad-id", &[]),
        Trouble::Settings { path } => words.problem("settings", &[file(path)]),
        Trouble::Unreadable => words.problem("unreadable", &[]),
        Trouble::Unmergeable(why) => words.problem(show::unmergeable(*why), &[]),
        Trouble::NothingBrought => words.problem("nothing-brought", &[]),
        Trouble::OtherBrought => words.problem("other-brought", &[]),
        Trouble::Photo { path, fault } => match fault {
            Fault::Large => {
                let most = photos::MOST_BYTES >> 20;
                words.problem("photo-large", &[file(path), ("most", most.into())])
            }
            Fault::Pixels { have } => {
                let million = |n: u64| Arg::from(n.div_ceil(1_000_000));
                let most = million(photos::MOST_PIXELS);
                words.problem("photo-pixels", &[("have", million(*have)), ("most", most)])
            }
            Fault::Kind => words.problem("photo-kind", &[]),
            Fault::Broken => words.problem("photo-broken", &[]),
        },
        Trouble::NoPhoto => words.problem("photo-none", &[]),
        Trouble::Damage {
            path,
            how: FormatError::Newer { version },
        } => words.problem("newer-there", &[file(path), ("version", (*version).into())]),
        Trouble::Damage { path, how } => {
            let mut problem = damage(words, how);
            let lies = words.say("shell-lies-at", &[file(path)]);
            problem.next = format!("{} {lies}", problem.next);
            problem
        }
    }
}

/// What is wrong with a throw file, in words.
pub fn damage(words: &Words, how: &FormatError) -> Problem {
    let lens = Context {
        words,
        ruler: Ruler::default(),
        now: 0,
    };
    show::format_error(how, lens)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs;
    use tempfile::TempDir;

    fn desk(folder: &TempDir) -> Desk {
        let mut desk = Desk::new(Store::at(folder.path().to_path_buf()));
        assert_eq!(desk.hello(0).problem, None);
        desk
    }

    /// A desk with one throw on it.
    fn begun(folder: &TempDir) -> (Desk, String, PathBuf) {
        let mut desk = desk(folder);
        let id = desk
            .tend(&ShelfCommand::Demo, 1_000_000)
            .unwrap()
            .id
            .unwrap();
        let file = folder.path().join("throws").join(&id).join("throw.jsonl");
        (desk, id, file)
    }

    fn noting(text: &str) -> Command {
        Command::Note {
            text: text.to_string(),
            piece: None,
            task: None,
            next: false,
        }
    }

    fn note(text: &str) -> Request {
        Request::Act {
            action: noting(text),
        }
    }

    /// What lies in a throw's file, with these notes more.
    fn noted(file: &Path, texts: &[&str]) -> Journal {
        let mut journal = Journal::read(&fs::read(file).unwrap()).unwrap().journal;
        for text in texts {
            let entry = journal.propose(&noting(text), 5).unwrap();
            journal.accept(entry).unwrap();
        }
        journal
    }

    fn entry(desk: &mut Desk, id: &str) -> u32 {
        let seen = desk.look(id, &Query::Trim, 0).unwrap();
        let View::Trim(seen) = seen else {
            panic!("asked for trim sizes")
        };
        seen.head.entry
    }

    fn row(desk: &mut Desk, id: &str) -> ShelfRow {
        let mut rows = desk.shelf(0).rows.into_iter();
        rows.find(|row| row.id == id).unwrap()
    }

    fn code(problem: Option<Problem>) -> String {
        problem.map(|problem| problem.code).unwrap_or_default()
    }

    #[test]
    fn what_was_acknowledged_is_there_after_reopening() {
        let folder = tempfile::tempdir().unwrap();
        let (mut desk, id, file) = begun(&folder);
        let head = desk.act(&id, &note("one"), 2_000_000).unwrap();
        let text = fs::read_to_string(&file).unwrap();
        assert!(text.ends_with("\"}\n") && text.contains("\"one\""));
        drop(desk);
        let mut desk = self::desk(&folder);
        assert_eq!(entry(&mut desk, &id), head.entry);
        let undone = desk.act(&id, &Request::Undo, 3_000_000).unwrap();
        assert_eq!(undone.entry, head.entry + 1);
        assert!(undone.redo.is_some());
        assert_eq!(row(&mut desk, &id).problem, None);
    }

    #[test]
    fn a_refusal_writes_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let (mut desk, id, file) = begun(&folder);
        let before = fs::read(&file).unwrap();
        assert_eq!(desk.act(&id, &note("  "), 0).unwrap_err().code, "words");
        let twice = ShelfCommand::Begin {
            action: Command::Archive { archived: true },
        };
        assert_eq!(desk.tend(&twice, 0).unwrap_err().code, "beginning");
        assert_eq!(fs::read(&file).unwrap(), before);
        assert_eq!(desk.shelf(0).rows.len(), 1);
    }

    #[test]
    fn a_torn_last_line_is_left_out_a_copy_kept_and_work_goes_on() {
        let folder = tempfile::tempdir().unwrap();
        let (mut desk, id, file) = begun(&folder);
        let before = desk.act(&id, &note("kept"), 0).unwrap().entry;
        desk.act(&id, &note("torn"), 0).unwrap();
        drop(desk);
        let whole = fs::read(&file).unwrap();
        let torn = &whole[..whole.len() - 9];
        fs::write(&file, torn).unwrap();

        let mut desk = self::desk(&folder);
        assert_eq!(code(row(&mut desk, &id).problem), "torn");
        assert_eq!(entry(&mut desk, &id), before);
        let copies: Vec<PathBuf> = fs::read_dir(file.parent().unwrap())
            .unwrap()
            .map(|found| found.unwrap().path())
            .filter(|path| *path != file)
            .collect();
        assert_eq!(copies.len(), 1);
        assert_eq!(fs::read(&copies[0]).unwrap(), torn);

        desk.act(&id, &note("again"), 0).unwrap();
        drop(desk);
        let mut desk = self::desk(&folder);
        assert_eq!(entry(&mut desk, &id), before + 1);
        assert_eq!(row(&mut desk, &id).problem, None);
    }

    #[test]
    fn a_lost_newline_is_restored_before_the_next_entry() {
        let folder = tempfile::tempdir().unwrap();
        let (desk, id, file) = begun(&folder);
        drop(desk);
        let mut whole = fs::read(&file).unwrap();
        assert_eq!(whole.pop(), Some(b'\n'));
        fs::write(&file, &whole).unwrap();

        let mut desk = self::desk(&folder);
        let before = entry(&mut desk, &id);
        assert_eq!(fs::read(&file).unwrap(), whole, "reading mends nothing");
        desk.act(&id, &note("one"), 0).unwrap();
        desk.act(&id, &note("two"), 0).unwrap();
        drop(desk);
        let mut desk = self::desk(&folder);
        assert_eq!(entry(&mut desk, &id), before + 2);
        assert_eq!(row(&mut desk, &id).problem, None);
    }

    #[test]
    fn damage_in_the_middle_is_told_and_the_file_left_alone() {
        let folder = tempfile::tempdir().unwrap();
        let (desk, id, file) = begun(&folder);
        drop(desk);
        let mut bytes = fs::read(&file).unwrap();
        let middle = bytes.len() / 2;
        bytes[middle] ^= 1;
        fs::write(&file, &bytes).unwrap();

        let mut desk = self::desk(&folder);
        let row = row(&mut desk, &id);
        assert!(row.head.is_none() && row.problem.is_some());
        assert!(desk.look(&id, &Query::Trim, 0).is_err());
        assert!(desk.act(&id, &note("one"), 0).is_err());
        assert_eq!(fs::read(&file).unwrap(), bytes);
        let folder = fs::read_dir(file.parent().unwrap()).unwrap();
        assert_eq!(folder.count(), 1);
    }

    #[test]
    fn the_second_to_open_sees_what_the_first_keeps_and_writes_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let (mut first, id, file) = begun(&folder);
        let mut second = Desk::new(Store::at(folder.path().to_path_buf()));
        assert_eq!(code(second.hello(0).problem), "locked");
        let before = entry(&mut second, &id);
        first.act(&id, &note("one"), 0).unwrap();
        assert_eq!(entry(&mut second, &id), before + 1);
        let kept = fs::read(&file).unwrap();
        assert_eq!(second.act(&id, &note("two"), 0).unwrap_err().code, "locked");
        let delete = ShelfCommand::Delete { id: id.clone() };
        for tend in [ShelfCommand::Demo, delete] {
            assert_eq!(second.tend(&tend, 0).unwrap_err().code, "locked");
        }
        let refused = second.set_prefs(Prefs::default(), 0);
        assert_eq!(refused.unwrap_err().code, "locked");
        assert_eq!(fs::read(&file).unwrap(), kept);
        assert!(!folder.path().join("settings.json").exists());

        drop(first);
        let head = second.act(&id, &note("three"), 0).unwrap();
        assert_eq!(head.entry, before + 2);
        assert_eq!(second.hello(0).problem, None);
    }

    #[test]
    fn a_torn_line_is_not_mended_by_the_second_to_open() {
        let folder = tempfile::tempdir().unwrap();
        let (first, id, file) = begun(&folder);
        let whole = fs::read(&file).unwrap();
        fs::write(&file, &whole[..whole.len() - 9]).unwrap();
        let mut second = Desk::new(Store::at(folder.path().to_path_buf()));
        assert_eq!(code(row(&mut second, &id).problem), "torn-left");
        assert_eq!(fs::read(&file).unwrap(), whole[..whole.len() - 9]);
        drop(first);
    }

    #[test]
    fn a_throw_is_deleted_restored_and_erased() {
        let folder = tempfile::tempdir().unwrap();
        let (mut desk, id, file) = begun(&folder);
        let kept = fs::read(&file).unwrap();
        let erase = ShelfCommand::Erase { id: id.clone() };
        let early = desk.tend(&erase, 0).unwrap_err();
        assert_eq!(
            early.code, "no-such-throw",
            "only what is deleted is erased"
        );

        let shelf = desk
            .tend(&ShelfCommand::Delete { id: id.clone() }, 0)
            .unwrap()
            .shelf;
        assert!(shelf.rows.is_empty() && shelf.deleted[0].id == id);
        assert!(shelf.deleted[0].head.is_some());
        let gone = desk.act(&id, &note("one"), 0).unwrap_err();
        assert_eq!(gone.code, "no-such-throw");

        let shelf = desk
            .tend(&ShelfCommand::Restore { id: id.clone() }, 0)
            .unwrap()
            .shelf;
        assert!(shelf.deleted.is_empty() && shelf.rows[0].id == id);
        assert_eq!(fs::read(&file).unwrap(), kept);
        desk.act(&id, &note("one"), 0).unwrap();

        desk.tend(&ShelfCommand::Delete { id: id.clone() }, 0)
            .unwrap();
        let shelf = desk.tend(&erase, 0).unwrap().shelf;
        assert!(shelf.rows.is_empty() && shelf.deleted.is_empty());
        assert_eq!(
            fs::read_dir(folder.path().join("deleted")).unwrap().count(),
            0
        );
    }

    #[test]
    fn a_throw_put_away_is_on_its_own_list() {
        let folder = tempfile::tempdir().unwrap();
        let (mut desk, id, _) = begun(&folder);
        let action = Command::Archive { archived: true };
        desk.act(&id, &Request::Act { action }, 0).unwrap();
        let shelf = desk.shelf(0);
        assert!(shelf.rows.is_empty() && shelf.archived[0].id == id);
    }

    #[test]
    fn bad_ids_reach_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let (mut desk, ..) = begun(&folder);
        fs::write(folder.path().join("throw.jsonl"), "mine").unwrap();
        for id in ["..", ".", "", "../throws", "a/b", "ABC"] {
            let id = id.to_string();
            let looked = desk.look(&id, &Query::Trim, 0).unwrap_err();
            let acted = desk.act(&id, &note("one"), 0).unwrap_err();
            let tends = [
                ShelfCommand::Delete { id: id.clone() },
                ShelfCommand::Restore { id: id.clone() },
                ShelfCommand::Erase { id },
            ];
            let tended = tends.map(|tend| desk.tend(&tend, 0).unwrap_err().code);
            assert_eq!([looked.code, acted.code], ["bad-id", "bad-id"]);
            assert_eq!(tended, ["bad-id", "bad-id", "bad-id"]);
        }
        assert_eq!(
            fs::read(folder.path().join("throw.jsonl")).unwrap(),
            b"mine"
        );
        let unknown = desk.look("not-there", &Query::Trim, 0).unwrap_err();
        assert_eq!(unknown.code, "no-such-throw");
    }

    #[test]
    fn a_failed_write_accepts_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let (mut desk, id, file) = begun(&folder);
        let before = entry(&mut desk, &id);
        let kept = fs::read(&file).unwrap();
        // Root may write anywhere, so the file itself gives way to a folder.
        fs::remove_file(&file).unwrap();
        fs::create_dir(&file).unwrap();
        assert_eq!(desk.act(&id, &note("one"), 0).unwrap_err().code, "disk");
        assert!(!desk.open.contains_key(&ThrowId::parse(&id).unwrap()));
        fs::remove_dir(&file).unwrap();
        fs::write(&file, &kept).unwrap();
        assert_eq!(entry(&mut desk, &id), before);
        assert_eq!(desk.act(&id, &note("two"), 0).unwrap().entry, before + 1);
    }

    /// The test runs itself again where the system lets no file grow past a limit, so
    /// that a write stops half-way, as it does on a disk that fills up.
    #[cfg(unix)]
    #[test]
    fn a_disk_that_fills_up_half_way_through_an_entry_accepts_nothing() {
        const INSIDE: &str = "LAPWORK_TEST_LIMITED";
        if std::env::var_os(INSIDE).is_none() {
            let test =
                "desk::tests::a_disk_that_fills_up_half_way_through_an_entry_accepts_nothing";
            let ended = std::process::Command::new("sh")
                .arg("-c")
                .arg("trap '' XFSZ; ulimit -f 500; exec \"$0\" --exact \"$1\"")
                .arg(std::env::current_exe().unwrap())
                .arg(test)
                .env(INSIDE, "1")
                .output()
                .unwrap();
            let said = String::from_utf8_lossy(&ended.stdout);
            assert!(
                ended.status.success() && said.contains("1 passed"),
                "{said}"
            );
            return;
        }
        let folder = tempfile::tempdir().unwrap();
        let (mut desk, id, file) = begun(&folder);
        let long = note(&"so ".repeat(600));
        let (kept, problem) = loop {
            let kept = fs::read(&file).unwrap();
            if let Err(problem) = desk.act(&id, &long, 0) {
                break (kept, problem);
            }
        };
        assert_eq!(problem.code, "disk");
        assert_eq!(fs::read(&file).unwrap(), kept, "cut back to what was sound");
        let last = entry(&mut desk, &id);
        assert_eq!(desk.act(&id, &long, 0).unwrap_err().code, "disk");
        assert_eq!(fs::read(&file).unwrap(), kept);
        drop(desk);
        let mut desk = self::desk(&folder);
        assert_eq!(entry(&mut desk, &id), last);
        assert_eq!(row(&mut desk, &id).problem, None);
    }

    #[test]
    fn a_file_another_program_changed_is_read_again_before_it_is_written() {
        let folder = tempfile::tempdir().unwrap();
        let (mut desk, id, file) = begun(&folder);
        let before = entry(&mut desk, &id);
        let kept = fs::read(&file).unwrap();
        desk.act(&id, &note("one"), 0).unwrap();
        fs::write(&file, &kept).unwrap();
        assert_eq!(desk.act(&id, &note("two"), 0).unwrap_err().code, "disk");
        assert_eq!(fs::read(&file).unwrap(), kept);
        assert_eq!(desk.act(&id, &note("two"), 0).unwrap().entry, before + 1);
    }

    #[test]
    fn a_folder_that_cannot_be_made_is_told_at_the_start() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("file");
        fs::write(&file, "mine").unwrap();
        let mut desk = Desk::new(Store::at(file.join("data")));
        let hello = desk.hello(0);
        assert!(hello.shelf.rows.is_empty());
        assert_eq!(code(hello.problem), "disk");
        assert_eq!(desk.tend(&ShelfCommand::Demo, 0).unwrap_err().code, "disk");
        assert_eq!(fs::read(&file).unwrap(), b"mine");
    }

    #[test]
    fn settings_are_kept_within_bounds_and_broken_ones_do_no_harm() {
        let folder = tempfile::tempdir().unwrap();
        let mut desk = self::desk(&folder);
        let large = Prefs {
            text: 900,
            ..Prefs::default()
        };
        assert_eq!(desk.set_prefs(large, 0).unwrap().prefs.text, 200);
        drop(desk);
        assert_eq!(self::desk(&folder).hello(0).prefs.text, 200);
        fs::write(folder.path().join("settings.json"), "gone").unwrap();
        let mut desk = Desk::new(Store::at(folder.path().to_path_buf()));
        let hello = desk.hello(0);
        assert_eq!(hello.prefs, Prefs::default());
        assert_eq!(code(hello.problem), "settings");
        let hello = desk.set_prefs(Prefs::default(), 0).unwrap();
        assert_eq!(hello.problem, None);
    }

    /// A file of version 1, as the one Lapwork before this wrote.
    fn old(journal: &Journal) -> String {
        let text = journal.text();
        let (_, entries) = text.split_once('\n').unwrap();
        format!("{{\"lapwork\":\"throw\",\"version\":1}}\n{entries}")
    }

    fn beside(file: &Path) -> Vec<PathBuf> {
        let found = fs::read_dir(file.parent().unwrap()).unwrap();
        let mut found: Vec<PathBuf> = found.map(|found| found.unwrap().path()).collect();
        found.retain(|path| path != file);
        found.sort();
        found
    }

    #[test]
    fn a_file_of_version_1_is_upgraded_once_it_is_kept_beside() {
        let folder = tempfile::tempdir().unwrap();
        let (desk, id, file) = begun(&folder);
        drop(desk);
        let journal = demo::throw(7);
        let given = old(&journal);
        fs::write(&file, &given).unwrap();
        // The second to open reads it and changes nothing.
        let (_first, mut second) = (self::desk(&tempfile::tempdir().unwrap()), {
            Desk::new(Store::at(folder.path().to_path_buf()))
        });
        let lock = fs::File::create(folder.path().join("lock")).unwrap();
        lock.try_lock().unwrap();
        assert!(row(&mut second, &id).head.is_some());
        assert_eq!(fs::read_to_string(&file).unwrap(), given);
        drop(lock);

        let mut desk = self::desk(&folder);
        assert_eq!(row(&mut desk, &id).problem, None);
        assert_eq!(fs::read_to_string(&file).unwrap(), journal.text());
        let copies = beside(&file);
        assert_eq!(copies, [file.with_file_name("throw.jsonl.version-1")]);
        assert_eq!(fs::read_to_string(&copies[0]).unwrap(), given);
        desk.act(&id, &note("on"), 0).unwrap();
        drop(desk);
        let mut desk = self::desk(&folder);
        assert_eq!(entry(&mut desk, &id) as usize, journal.len() + 1);
        assert_eq!(beside(&file), copies);
    }

    #[test]
    fn a_newer_file_is_refused_with_its_number_and_place_and_left_alone() {
        let folder = tempfile::tempdir().unwrap();
        let (desk, id, file) = begun(&folder);
        drop(desk);
        let text = fs::read_to_string(&file).unwrap();
        let newer = text.replacen("\"version\":2", "\"version\":7", 1);
        fs::write(&file, &newer).unwrap();
        let mut desk = self::desk(&folder);
        let problem = row(&mut desk, &id).problem.unwrap();
        assert!(problem.said.contains("file version 7"), "{problem:?}");
        assert!(problem.said.contains(file.to_str().unwrap()), "{problem:?}");
        assert_eq!(fs::read_to_string(&file).unwrap(), newer);
        assert!(beside(&file).is_empty());
    }

    fn brought(folder: &TempDir, bytes: &[u8]) -> Result<Brought, Trouble> {
        let path = folder.path().join("brought");
        fs::write(&path, bytes).unwrap();
        crate::handing::look_into(&path)
    }

    #[test]
    fn what_is_brought_and_handed_on_again_is_the_same_to_the_byte() {
        let folder = tempfile::tempdir().unwrap();
        let mut desk = self::desk(&folder);
        let given = demo::throw(3).text();
        let view = desk.bring(brought(&folder, given.as_bytes()), 9).unwrap();
        assert_eq!(view.buttons[0].take, ImportChoice::Add);
        let id = desk
            .take(&ImportChoice::Add, view.file, 9)
            .unwrap()
            .id
            .unwrap();
        let parcels = desk.hand(&id, &Export::Throw, 10).unwrap();
        assert_eq!(parcels[0].bytes, given.as_bytes());
        // The same once more changes nothing; it is taken in once only.
        let view = desk.bring(brought(&folder, given.as_bytes()), 11).unwrap();
        assert_eq!(view.buttons[0].take, ImportChoice::KeepHere);
        assert_eq!(
            desk.take(&ImportChoice::KeepHere, view.file, 11)
                .unwrap()
                .id,
            None
        );
        assert_eq!(desk.shelf(12).rows.len(), 1);
        let twice = desk.take(&ImportChoice::Add, view.file, 12).unwrap_err();
        assert_eq!(twice.code, "nothing-brought");
    }

    #[test]
    fn all_pictures_and_all_tables_are_handed_on_under_names_of_their_own() {
        let folder = tempfile::tempdir().unwrap();
        let (mut desk, id, _) = begun(&folder);
        for (hand, ending, begins) in [
            (Export::Pictures, ".svg", "<?xml"),
            (Export::Tables, ".csv", ""),
        ] {
            let parcels = desk.hand(&id, &hand, 9).unwrap();
            let mut names: Vec<&str> = parcels.iter().map(|p| p.name.as_str()).collect();
            assert!(names.iter().all(|name| name.ends_with(ending)), "{names:?}");
            names.sort_unstable();
            assert!(names.len() > 3 && names.windows(2).all(|w| w[0] != w[1]));
            for parcel in &parcels {
                let text = String::from_utf8(parcel.bytes.clone()).unwrap();
                assert!(
                    text.len() > 40 && text.starts_with(begins),
                    "{}",
                    parcel.name
                );
            }
        }
    }

    #[test]
    fn a_dropped_file_is_asked_for_once() {
        let folder = tempfile::tempdir().unwrap();
        let mut desk = self::desk(&folder);
        assert_eq!(desk.dropped().unwrap(), None);
        desk.drop_in(brought(&folder, demo::throw(3).text().as_bytes()), 9);
        assert!(desk.dropped().unwrap().is_some());
        assert_eq!(desk.dropped().unwrap(), None);
        desk.drop_in(brought(&folder, b"{}"), 9);
        assert_eq!(desk.dropped().unwrap_err().code, "file-not-a-throw");
        // The one that was asked about is still to be decided; no other is meant by it.
        let other = desk.take(&ImportChoice::Add, 2, 9).unwrap_err();
        assert_eq!(other.code, "other-brought");
        desk.drop_in(brought(&folder, demo::throw(4).text().as_bytes()), 9);
        let old = desk.take(&ImportChoice::Add, 1, 9).unwrap_err();
        assert_eq!(old.code, "other-brought");
        assert!(desk.take(&ImportChoice::Add, 2, 9).is_ok());
        let twice = desk.take(&ImportChoice::Add, 2, 9).unwrap_err();
        assert_eq!(twice.code, "nothing-brought");
    }

    #[test]
    fn a_brought_file_s_torn_end_is_told_and_kept() {
        let folder = tempfile::tempdir().unwrap();
        let (mut desk, _, file) = begun(&folder);
        let other = noted(&file, &["one", "two"]);
        let whole = other.text();
        let torn = &whole.as_bytes()[..whole.len() - 7];
        let lost = torn.len() - torn.iter().rposition(|b| *b == b'\n').unwrap() - 1;
        let view = desk.bring(brought(&folder, torn), 2_000_000).unwrap();
        let bytes = format!("The last {lost} bytes");
        assert!(view.said[0].contains(&bytes), "{:?}", view.said);
        assert_eq!(
            view.buttons[0].take,
            ImportChoice::TakeBrought,
            "one step more"
        );
        // The throw here goes on, so that the two are merged: both are kept as they were.
        let id = desk.shelf(2_000_000).rows[0].id.clone();
        desk.act(&id, &note("here"), 2_000_000).unwrap();
        let here = fs::read(&file).unwrap();
        let view = desk.bring(brought(&folder, torn), 2_000_000).unwrap();
        let merge = ImportChoice::Merge { brought: vec![] };
        desk.take(&merge, view.file, 2_000_000).unwrap();
        let mut copies: Vec<Vec<u8>> = beside(&file)
            .iter()
            .map(|copy| fs::read(copy).unwrap())
            .collect();
        copies.sort();
        let mut meant = [here, torn.to_vec()];
        meant.sort();
        assert_eq!(copies, meant);
        // Of a whole file nothing is left out.
        let view = desk
            .bring(brought(&folder, whole.as_bytes()), 2_000_000)
            .unwrap();
        assert!(!view.said[0].contains("bytes"), "{:?}", view.said);
    }

    /// A disk that is full until it is not.
    #[derive(Debug, Clone, Default)]
    struct Full(std::sync::Arc<std::sync::atomic::AtomicBool>);

    impl crate::disk::Disk for Full {
        fn write(&self, file: &fs::File, bytes: &[u8]) -> std::io::Result<usize> {
            if self.0.load(std::sync::atomic::Ordering::SeqCst) {
                return Err(ErrorKind::StorageFull.into());
            }
            crate::disk::RealDisk.write(file, bytes)
        }
    }

    #[test]
    fn a_torn_throw_is_mended_before_another_takes_its_place() {
        let folder = tempfile::tempdir().unwrap();
        let (desk, id, file) = begun(&folder);
        drop(desk);
        let whole = fs::read(&file).unwrap();
        let torn = &whole[..whole.len() - 5];
        fs::write(&file, torn).unwrap();
        let full = Full::default();
        full.0.store(true, std::sync::atomic::Ordering::SeqCst);
        let store = Store::on(folder.path().to_path_buf(), Box::new(full.clone()));
        let mut desk = Desk::new(store);
        let row = desk.hello(2_000_000).shelf.rows[0].clone();
        assert_eq!(row.problem.map(|p| p.code).as_deref(), Some("torn-left"));
        let view = desk.bring(brought(&folder, &whole), 2_000_000).unwrap();
        assert_eq!(view.buttons[0].take, ImportChoice::TakeBrought);
        let take = |desk: &mut Desk| desk.take(&ImportChoice::TakeBrought, view.file, 2_000_000);
        assert_eq!(take(&mut desk).unwrap_err().code, "torn-left");
        let deed = note("later");
        let refused = desk.act(&id, &deed, 2_000_000).unwrap_err();
        assert_eq!(refused.code, "torn-left");
        assert_eq!(fs::read(&file).unwrap(), torn, "untouched so far");
        full.0.store(false, std::sync::atomic::Ordering::SeqCst);
        take(&mut desk).unwrap();
        let copies = beside(&file);
        let kept = |copy: &PathBuf| fs::read(copy).unwrap() == torn;
        assert!(copies.iter().any(kept), "{copies:?}");
        assert_eq!(fs::read(&file).unwrap(), whole);
        assert!(desk.act(&id, &deed, 2_000_000).is_ok());
    }

    #[test]
    fn the_one_with_more_takes_the_place_of_the_other_which_is_kept() {
        let folder = tempfile::tempdir().unwrap();
        let (mut desk, _, file) = begun(&folder);
        let kept = fs::read(&file).unwrap();
        let more = noted(&file, &["more"]);
        let found = brought(&folder, more.text().as_bytes());
        let view = desk.bring(found, 2_000_000).unwrap();
        assert_eq!(view.buttons[0].take, ImportChoice::TakeBrought);
        desk.take(&ImportChoice::TakeBrought, view.file, 2_000_000)
            .unwrap();
        assert_eq!(fs::read_to_string(&file).unwrap(), more.text());
        let copies = beside(&file);
        assert_eq!(copies.len(), 1);
        assert_eq!(fs::read(&copies[0]).unwrap(), kept);
    }

    #[test]
    fn the_chosen_language_is_spoken_else_the_systems() {
        let german = "de_AT.UTF-8";
        let folder = tempfile::tempdir().unwrap();
        let store = || Store::at(folder.path().to_path_buf());
        let mut desk = Desk::for_locale(store(), german);
        let hello = desk.hello(0);
        assert_eq!((hello.language.as_str(), hello.point.as_str()), ("de", ","));
        assert_eq!(hello.prefs.ruler.system, System::Metric);
        assert_eq!(hello.draft.side, "125 mm");
        assert_eq!(hello.words["ui-back"], "Zurück");
        assert_eq!(hello.languages.len(), LANGUAGES.len());
        let prefs = |language: &str| Prefs {
            language: Some(language.into()),
            ..Prefs::default()
        };
        let hello = desk.set_prefs(prefs("en"), 0).unwrap();
        assert_eq!((hello.language.as_str(), hello.point.as_str()), ("en", "."));
        assert_eq!(hello.words["ui-back"], "Back");
        drop(desk);
        // What is kept goes before what is usual there.
        let hello = Desk::for_locale(store(), german).hello(0);
        assert_eq!(hello.language, "en");
        assert_eq!(hello.prefs.ruler.system, System::Inch);
        // A language of a newer Lapwork is kept, and the system's spoken meanwhile.
        let mut desk = Desk::for_locale(store(), german);
        let hello = desk.set_prefs(prefs("tlh"), 0).unwrap();
        assert_eq!(hello.language, "de");
        assert_eq!(hello.prefs.language.as_deref(), Some("tlh"));
    }

    #[test]
    fn every_trouble_has_its_words() {
        let path = PathBuf::from("there/throw.jsonl");
        let disk = |kind: ErrorKind| Trouble::Disk {
            path: path.clone(),
            why: kind.into(),
        };
        let words = Words::english();
        let mut problems: Vec<Problem> = [
            disk(ErrorKind::StorageFull),
            disk(ErrorKind::PermissionDenied),
            disk(ErrorKind::AlreadyExists),
            disk(ErrorKind::Other),
            Trouble::Locked,
            Trouble::TooLarge { path: path.clone() },
            Trouble::NoSuchThrow,
            Trouble::Missing { path: path.clone() },
            Trouble::BadId,
            Trouble::Settings { path: path.clone() },
            Trouble::Unreadable,
            Trouble::NothingBrought,
            Trouble::OtherBrought,
            Trouble::Torn { path: path.clone() },
            Trouble::Unmergeable(lapwork_core::log::merge::Unmergeable::Misfit),
            Trouble::Damage {
                path: path.clone(),
                how: FormatError::Newer { version: 9 },
            },
        ]
        .iter()
        .map(|trouble| told(&words, trouble))
        .collect();
        let unsure = |seen| Trouble::Unsure {
            path: path.clone(),
            why: ErrorKind::Other.into(),
            seen,
        };
        problems.extend([
            told(&words, &unsure(Seen::Before)),
            told(&words, &unsure(Seen::After)),
            told(&words, &unsure(Seen::Neither)),
            told(&words, &Trouble::Held { path: path.clone() }),
        ]);
        let damaged = Trouble::Damage {
            path: path.clone(),
            how: FormatError::Line { line: 3 },
        };
        let damaged = told(&words, &damaged);
        assert!(damaged.next.contains("there/throw.jsonl"), "{damaged:?}");
        problems.push(damaged);
        let torn = [
            ("copy", "copy".into()),
            ("bytes", 5.into()),
            ("count", 3.into()),
        ];
        problems.push(words.problem("torn", &torn));
        problems.push(words.problem("torn-left", &[]));
        for problem in problems {
            for text in [&problem.said, &problem.next] {
                assert!(text.ends_with('.'), "{}: {text}", problem.code);
                assert!(!text.contains(['{', '$']), "{}: {text}", problem.code);
            }
        }
    }
}
