//! The data folder: throw files, the settings, and who may write them.
//!
//! ```text
//! throws/<id>/throw.jsonl    throws in work (and those put away)
//! throws/<id>/photos/        photos of its story, <hash>.jpg; they go where their throw goes
//! deleted/<id>/throw.jsonl   throws deleted but not yet erased
//! settings.json              how the window looks and reads
//! lock                       held while the app is open
//! ```
//!
//! Promises: one writer at a time, by a lock on `lock` that the system lets go when
//! the app ends, however it ends. [`Store::append`] returns only once the line is on
//! the disk; if writing fails the file is cut back to what was sound before. A new
//! throw, the settings and a mended file appear whole or not at all; a throw erased is
//! gone at once. A path is only ever made from a [`ThrowId`], so nothing outside the
//! folder can be reached. Damaged files are never changed; a torn last line is left out
//! only once a copy of the whole file lies beside it.
//!
//! A file whose sync failed is *doubtful*: what the system shows of it may not be what
//! the disk holds, and a second sync might say all is well when it is not. It is closed,
//! read anew, and what is sound of it is put in a fresh file in its place before
//! anything is added; until that is done nothing is. [`Trouble::Unsure`] says what was
//! read.
//!
//! What an app that died left may be seen and not be on the disk. So the folders' names are
//! synced when they are claimed, a throw's file and its name before it is first shown, and
//! before its first new entry the file is written anew.
//!
//! Another program may change a throw's file while it is open here: one that synchronises
//! folders, or a backup. So before a line is added the file is held against what was written
//! (`Seal`): which file it is, its length, its last bytes, and all of it where the system
//! says that it was touched; once the line is synced the last of this is asked again. If it
//! is another file, nothing is added. The record as it was acknowledged is put back in its
//! place, once that record and the file that was found lie beside it
//! (`throw.jsonl.here-…`, `throw.jsonl.brought-…`), and [`Trouble::Changed`] gives what was
//! found, to be merged. Not noticed: a change within the same tick of the system's clock as
//! our own writing (some milliseconds) that leaves the length and the last 4096 bytes as
//! they were.
//!
//! A file of an older version is kept beside as it was (`throw.jsonl.version-1`), then
//! written anew with the header of this version, whole or not at all; a file of a newer
//! version is left alone. A throw is replaced ([`Store::replace`]) only once the files as
//! they were lie beside it.
//!
//! Limits: a throw file of more than [`MOST_BYTES`] is neither read nor written. No
//! words are chosen here; a [`Trouble`] becomes words in [`crate::desk`].

use crate::disk::{self, About, Disk, RealDisk, make_folders, sync_above, write_all, write_new};
use lapwork_core::intake;
use lapwork_core::journal::{Damage, Entry, Journal, VERSION};
use lapwork_core::merge::{Relation, Unmergeable, relation};
use lapwork_core::photos::PhotoId;
use lapwork_core::throw::Time;
use lapwork_core::view::Prefs;
use std::cell::RefCell;
use std::collections::BTreeSet;
use std::fs::{self, File, OpenOptions, TryLockError};
use std::io::{self, Read as _};
use std::path::{Path, PathBuf};

/// The largest throw file that is read or written.
pub const MOST_BYTES: u64 = 64 << 20;
/// The largest settings file that is read.
const MOST_SETTINGS: u64 = 1 << 20;
/// The longest line that is written; the core reads no longer ones.
const LONGEST_LINE: usize = 4 << 20;
/// The folder of a throw's photos, in its own.
const PHOTOS: &str = "photos";
const THROW_FILE: &str = "throw.jsonl";
/// How many bytes at a file's end are read back before something is added to it.
const TAIL: usize = 4096;
/// How often a file that another program exchanges for a copy of itself is written anew
/// before it is given up.
const MOST_COPIES: usize = 3;
/// What a throw's folder is called until it is whole.
const UNFINISHED: &str = ".new-";
/// What a throw's folder is called from the moment it is erased.
const GONE: &str = ".gone-";

/// The name of a throw's folder: 1 to 64 of `a–z`, `0–9` and `-`.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct ThrowId(String);

impl ThrowId {
    /// Read an id.
    ///
    /// # Errors
    /// [`Trouble::BadId`] for anything else, so that no path can be smuggled in.
    pub fn parse(text: &str) -> Result<ThrowId, Trouble> {
        let fine = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-';
        if (1..=64).contains(&text.len()) && text.bytes().all(fine) {
            Ok(ThrowId(text.to_string()))
        } else {
            Err(Trouble::BadId)
        }
    }

    /// The id as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// What can go wrong with the data folder.
#[derive(Debug)]
pub enum Trouble {
    /// Reading or writing failed.
    Disk {
        /// Where.
        path: PathBuf,
        /// What the system said.
        why: io::Error,
    },
    /// The disk failed and did not say whether what was written is safe.
    Unsure {
        /// Where.
        path: PathBuf,
        /// What the system said.
        why: io::Error,
        /// What is to be read there now.
        seen: Seen,
    },
    /// A torn last line is still in the file.
    Torn {
        /// Which file.
        path: PathBuf,
    },
    /// The file is not the one that was written: nothing was added, and the record as it was
    /// acknowledged is back in its place.
    Changed {
        /// Which file.
        path: PathBuf,
        /// The copy of the record as it was acknowledged.
        here: PathBuf,
        /// The copy of the file that was found, if there was one.
        brought: Option<PathBuf>,
        /// What was found.
        found: Found,
    },
    /// The file is not the one that was written, and the record could not be put back:
    /// nothing was touched.
    ChangedLeft {
        /// Which file.
        path: PathBuf,
        /// What the system said.
        why: io::Error,
    },
    /// The data folder was there, and is no longer.
    Away {
        /// Where it was.
        path: PathBuf,
    },
    /// After such a failure the file could not be written afresh, so nothing is added.
    Held {
        /// Which file.
        path: PathBuf,
    },
    /// Another Lapwork holds the folder.
    Locked,
    /// A throw file larger than is read or written.
    TooLarge {
        /// Which file.
        path: PathBuf,
    },
    /// There is no throw of that id where it was looked for.
    NoSuchThrow,
    /// There is a folder, but no throw file in it.
    Missing {
        /// The file that is not there.
        path: PathBuf,
    },
    /// Not an id at all.
    BadId,
    /// The settings file cannot be understood.
    Settings {
        /// Which file.
        path: PathBuf,
    },
    /// The throw file is damaged.
    Damage {
        /// Which file.
        path: PathBuf,
        /// How.
        how: Damage,
    },
    /// An entry that would not read back as it was written.
    Unreadable,
    /// Two copies that cannot be made one.
    Unmergeable(Unmergeable),
    /// No file was brought.
    NothingBrought,
    /// Another file was brought since.
    OtherBrought,
    /// A file that is no photo to keep.
    Photo {
        /// Which file.
        path: PathBuf,
        /// Why.
        fault: crate::photos::Fault,
    },
    /// No photo was dropped, or it was taken already.
    NoPhoto,
}

/// What was found in the place of a throw's file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Found {
    /// Nothing.
    Nothing,
    /// What is no sound record.
    Unsound,
    /// A record with nothing in it that was not known.
    Less,
    /// A record with something that was not known: its bytes.
    More(Vec<u8>),
}

/// What was read after the disk failed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Seen {
    /// All that was there before, and nothing of the step.
    Before,
    /// All that was there before, and the step.
    After,
    /// Something else; it is left untouched.
    Neither,
}

pub(crate) fn disk(path: &Path) -> impl FnOnce(io::Error) -> Trouble + '_ {
    move |why| Trouble::Disk {
        path: path.to_path_buf(),
        why,
    }
}

/// Where on the shelf a throw lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// In work, or put away.
    Throws,
    /// Deleted, not yet erased.
    Deleted,
}

impl Place {
    fn name(self) -> &'static str {
        match self {
            Place::Throws => "throws",
            Place::Deleted => "deleted",
        }
    }
}

/// A throw file as read, and what an append must know of it.
#[derive(Debug)]
pub struct Opened {
    /// The record.
    pub journal: Journal,
    /// By what its sound bytes on the disk are known again.
    seal: Seal,
    /// The newline after the last line is missing.
    lacks_newline: bool,
    /// How many bytes of a torn last line are still there.
    left_out: u64,
    /// The version of the format on the disk.
    version: u32,
    /// The file is doubtful and could not be written afresh.
    held: bool,
    /// What was left out of the file just now, if anything was.
    pub mended: Option<Mended>,
}

/// By what a file is known to be the one that was read or written.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Seal {
    /// Its length in bytes.
    length: u64,
    /// The CRC-32 of all of it.
    sum: u32,
    /// Its last bytes, no more than [`TAIL`].
    tail: Vec<u8>,
    /// What the system told of it when it was last held against the above; nothing where
    /// all of it is to be read the next time.
    about: Option<About>,
}

impl Seal {
    fn of(bytes: &[u8]) -> Seal {
        let mut seal = Seal {
            length: 0,
            sum: 0,
            tail: Vec::new(),
            about: None,
        };
        seal.grow(bytes);
        seal
    }

    /// These bytes are added at the end.
    fn grow(&mut self, bytes: &[u8]) {
        self.length += bytes.len() as u64;
        let mut sum = crc32fast::Hasher::new_with_initial(self.sum);
        sum.update(bytes);
        self.sum = sum.finalize();
        self.tail
            .extend_from_slice(&bytes[bytes.len().saturating_sub(TAIL)..]);
        self.tail.drain(..self.tail.len().saturating_sub(TAIL));
    }

    fn is_of(&self, bytes: &[u8]) -> bool {
        self.length == bytes.len() as u64 && self.sum == crc32fast::hash(bytes)
    }
}

/// How the file that lies there stands to the one that was written.
enum Lies {
    /// It is that one.
    Ours(About),
    /// It is another file with the same in it.
    Copy,
    /// It is not that one.
    Other,
}

/// A torn last line that was left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mended {
    /// The copy of the file as it was.
    pub copy: PathBuf,
    /// How many bytes were left out.
    pub bytes: u64,
}

impl Opened {
    /// Whether a torn last line is still in the file.
    pub fn torn(&self) -> bool {
        self.left_out > 0
    }

    /// A record that was acknowledged, of whose file nothing is known.
    pub(crate) fn remembered(journal: Journal) -> Opened {
        Opened {
            seal: Seal::of(journal.text().as_bytes()),
            journal,
            lacks_newline: false,
            left_out: 0,
            version: VERSION,
            held: false,
            mended: None,
        }
    }

    /// How many bytes of a torn last line could not be read.
    pub fn left_out(&self) -> u64 {
        self.left_out
    }

    /// Whether nothing may be added because the disk failed.
    pub fn held(&self) -> bool {
        self.held
    }
}

/// The data folder.
#[derive(Debug)]
pub struct Store {
    folder: PathBuf,
    lock: Option<File>,
    disk: Box<dyn Disk>,
    /// Throws whose file, or its name, a failed sync left in doubt.
    doubtful: RefCell<BTreeSet<ThrowId>>,
    /// Throws whose file and its name were synced since the folder was claimed.
    synced: RefCell<BTreeSet<ThrowId>>,
    /// Throws whose file was written whole and synced since then: nothing in it is of another
    /// life.
    fresh: RefCell<BTreeSet<ThrowId>>,
}

impl Store {
    /// The data folder at `folder`. Nothing is touched until it is claimed.
    pub fn at(folder: PathBuf) -> Store {
        Store::on(folder, Box::new(RealDisk))
    }

    /// The data folder at `folder` on a disk of the caller's.
    pub fn on(folder: PathBuf, disk: Box<dyn Disk>) -> Store {
        Store {
            folder,
            lock: None,
            disk,
            doubtful: RefCell::default(),
            synced: RefCell::default(),
            fresh: RefCell::default(),
        }
    }

    /// Where it is.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// Whether this is the one that may write.
    pub fn claimed(&self) -> bool {
        self.lock.is_some()
    }

    /// Become the one that may write; `true` if that is new, so that whatever was
    /// read before may be out of date.
    ///
    /// # Errors
    /// [`Trouble::Locked`] while another has the folder, [`Trouble::Disk`] if the
    /// folder cannot be made, [`Trouble::Away`] if it was claimed and is gone.
    pub fn claim(&mut self) -> Result<bool, Trouble> {
        if let Some(lock) = &self.lock {
            if self.away() {
                // It is not made anew: that would be another one, where a disk was taken out.
                let path = self.folder.clone();
                return Err(Trouble::Away { path });
            }
            let path = self.folder.join("lock");
            let own = self.disk.about_open(lock).map_err(disk(&path))?;
            match self.disk.about(&path) {
                Ok(there) if there.identity == own.identity => return Ok(false),
                Err(why) if why.kind() != io::ErrorKind::NotFound => return Err(disk(&path)(why)),
                // The folder is another than the one that was claimed.
                _ => {}
            }
            self.lock = None;
            for known in [&self.fresh, &self.synced] {
                known.borrow_mut().clear();
            }
        }
        for place in [Place::Throws, Place::Deleted] {
            let path = self.folder.join(place.name());
            make_folders(&*self.disk, &path).map_err(disk(&path))?;
        }
        let path = self.folder.join("lock");
        if !path.exists() {
            // The first time, or the time before got no further: the folder's own name, and
            // those above it, may not be on the disk yet.
            sync_above(&*self.disk, &self.folder).map_err(disk(&self.folder))?;
        }
        let mut how = OpenOptions::new();
        how.write(true).create(true).truncate(false);
        let file = self.disk.open(&path, &how).map_err(disk(&path))?;
        match file.try_lock() {
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => return Err(Trouble::Locked),
            Err(TryLockError::Error(why)) => return Err(disk(&path)(why)),
        }
        self.sync_folder(&self.folder)?;
        // An app that died may have left names that are seen but not on the disk.
        for place in [Place::Throws, Place::Deleted] {
            self.sync_folder(&self.folder.join(place.name()))?;
        }
        self.lock = Some(file);
        self.clear_unfinished();
        Ok(true)
    }

    /// Whether the folder was claimed and is gone.
    pub fn away(&self) -> bool {
        self.claimed() && !self.folder.join(Place::Throws.name()).is_dir()
    }

    /// Remove what an app that died half-way through beginning or erasing a throw left.
    fn clear_unfinished(&self) {
        for place in [Place::Throws, Place::Deleted] {
            let Ok(found) = fs::read_dir(self.folder.join(place.name())) else {
                continue;
            };
            for path in found.flatten().map(|found| found.path()) {
                let name = path.file_name().and_then(|name| name.to_str());
                if name.is_some_and(|name| name.starts_with(UNFINISHED) || name.starts_with(GONE)) {
                    // Left there, it does no harm: it is no id, so it is never listed.
                    let _ = self.disk.remove(&path);
                }
            }
        }
    }

    /// Wait until the names in a folder are on the disk.
    fn sync_folder(&self, path: &Path) -> Result<(), Trouble> {
        self.disk.sync_folder(path).map_err(disk(path))
    }

    fn must_be_claimed(&self) -> Result<(), Trouble> {
        self.lock.as_ref().map(|_| ()).ok_or(Trouble::Locked)
    }

    fn throw_folder(&self, place: Place, id: &ThrowId) -> PathBuf {
        self.folder.join(place.name()).join(id.as_str())
    }

    /// The file of a throw.
    pub fn throw_file(&self, place: Place, id: &ThrowId) -> PathBuf {
        self.throw_folder(place, id).join(THROW_FILE)
    }

    /// The throws there, in no order.
    ///
    /// # Errors
    /// [`Trouble::Disk`]; a folder that is not there yet holds none.
    pub fn ids(&self, place: Place) -> Result<Vec<ThrowId>, Trouble> {
        let path = self.folder.join(place.name());
        let found = match fs::read_dir(&path) {
            Ok(found) => found,
            Err(why) if why.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
            Err(why) => return Err(disk(&path)(why)),
        };
        let names = found.flatten().filter(|found| found.path().is_dir());
        Ok(names
            .filter_map(|found| ThrowId::parse(found.file_name().to_str()?).ok())
            .collect())
    }

    /// Whether there is such a throw, anywhere.
    pub fn knows(&self, id: &ThrowId) -> bool {
        [Place::Throws, Place::Deleted]
            .into_iter()
            .any(|place| self.throw_folder(place, id).exists())
    }

    /// When its file was last written, in milliseconds since 1970; 0 if unknown.
    pub fn written(&self, place: Place, id: &ThrowId) -> Time {
        fs::metadata(self.throw_file(place, id))
            .and_then(|about| about.modified())
            .map_or(0, crate::milliseconds)
    }

    /// Read a throw of any place; nothing is mended.
    ///
    /// # Errors
    /// What stands in the way.
    pub fn read(&self, place: Place, id: &ThrowId) -> Result<Opened, Trouble> {
        let path = self.throw_file(place, id);
        opened(&path, &bytes_of(&*self.disk, &path)?)
    }

    /// Read a throw in work. If this is the one that may write, a torn last line is left
    /// out once a copy of the file is kept beside it, and a doubtful file is written
    /// afresh; where that cannot be done the throw is readable all the same, and
    /// [`Opened::torn`] or [`Opened::held`].
    ///
    /// # Errors
    /// What stands in the way.
    pub fn open(&self, id: &ThrowId, now: Time) -> Result<Opened, Trouble> {
        let path = self.throw_file(Place::Throws, id);
        if self.claimed() {
            self.sync_seen(id, &path);
        }
        let bytes = bytes_of(&*self.disk, &path)?;
        let opened = opened(&path, &bytes)?;
        if !self.claimed() {
            return Ok(opened);
        }
        let doubtful = self.doubtful.borrow().contains(id);
        if !(opened.torn() || doubtful) {
            return Ok(self.upgraded(id, opened, now));
        }
        // A full or read-only disk must not keep the maker from seeing her throw.
        Ok(match self.renew(id, &bytes, &opened, now) {
            Ok(mended) => {
                let opened = Opened {
                    left_out: 0,
                    mended,
                    ..opened
                };
                self.upgraded(id, opened, now)
            }
            Err(_) => Opened {
                held: doubtful || !opened.torn(),
                ..opened
            },
        })
    }

    /// What an app that died wrote last may be seen and not be on the disk: it is put there
    /// before it is shown. Where that fails the throw is doubtful.
    fn sync_seen(&self, id: &ThrowId, path: &Path) {
        // What is no plain file is refused when it is read; to open a pipe is to wait.
        let known = |set: &RefCell<BTreeSet<ThrowId>>| set.borrow().contains(id);
        if known(&self.fresh) || known(&self.synced) || plain(path).is_err() {
            return;
        }
        // One that cannot be opened for writing cannot be added to either.
        let Ok(file) = self.disk.open(path, OpenOptions::new().append(true)) else {
            return;
        };
        let folder = self.throw_folder(Place::Throws, id);
        let synced = self.disk.sync(&file);
        match synced.and_then(|()| self.disk.sync_folder(&folder)) {
            Ok(()) => self.synced.borrow_mut().insert(id.clone()),
            Err(_) => self.doubtful.borrow_mut().insert(id.clone()),
        };
    }

    /// A throw file brought up to this version, where that can be done; where not it can
    /// be read and written on as it is, and is brought up another time.
    fn upgraded(&self, id: &ThrowId, opened: Opened, now: Time) -> Opened {
        if opened.version >= VERSION {
            return opened;
        }
        let path = self.throw_file(Place::Throws, id);
        match upgrade(&*self.disk, &path, &opened.journal, opened.version, now) {
            Ok(_) => {
                self.fresh.borrow_mut().insert(id.clone());
                Opened {
                    seal: Seal::of(opened.journal.text().as_bytes()),
                    lacks_newline: false,
                    version: VERSION,
                    ..opened
                }
            }
            Err(_) => {
                // The new file may be in its place without the disk having said so.
                let untouched = |about: fs::Metadata| about.len() == opened.seal.length;
                let held = !fs::metadata(&path).is_ok_and(untouched);
                if held {
                    self.doubtful.borrow_mut().insert(id.clone());
                }
                Opened { held, ..opened }
            }
        }
    }

    /// Put another record in the place of a throw's, once `beside` are kept beside it: what
    /// each is called (after `throw.jsonl.`) and its bytes. Gives their paths.
    ///
    /// # Errors
    /// What stood in the way; the throw's own file is then as it was, except that
    /// [`Trouble::Unsure`] says it can be read as the new one.
    pub fn replace(
        &self,
        id: &ThrowId,
        journal: &Journal,
        beside: &[(&str, &[u8])],
        now: Time,
    ) -> Result<Vec<PathBuf>, Trouble> {
        self.must_be_claimed()?;
        let path = self.throw_file(Place::Throws, id);
        let text = journal.text();
        if text.len() as u64 > MOST_BYTES {
            return Err(Trouble::TooLarge { path });
        }
        let mut kept: Vec<PathBuf> = Vec::new();
        // While the throw's own file is untouched, copies of it only take up room.
        let clear = |kept: &[PathBuf]| {
            for copy in kept {
                let _ = self.disk.remove(copy);
            }
        };
        for (called, bytes) in beside {
            let copy = free_name(&path, called, now);
            kept.push(copy.clone());
            if let Err(why) = put(&*self.disk, &copy, bytes) {
                clear(&kept);
                return Err(disk(&copy)(why));
            }
        }
        match put(&*self.disk, &path, text.as_bytes()) {
            Ok(()) => {
                self.fresh.borrow_mut().insert(id.clone());
                Ok(kept)
            }
            Err(why) => match fs::read(&path) {
                Ok(bytes) if bytes == text.as_bytes() => {
                    self.doubtful.borrow_mut().insert(id.clone());
                    let seen = Seen::After;
                    Err(Trouble::Unsure { path, why, seen })
                }
                read => {
                    if read.is_ok() {
                        clear(&kept);
                    }
                    Err(disk(&path)(why))
                }
            },
        }
    }

    /// A throw's file as it is, to the byte.
    ///
    /// # Errors
    /// What stands in the way.
    pub fn untouched(&self, id: &ThrowId) -> Result<Vec<u8>, Trouble> {
        bytes_of(&*self.disk, &self.throw_file(Place::Throws, id))
    }

    /// The sound part of a throw's file, to the byte: what is handed on.
    ///
    /// # Errors
    /// What stands in the way.
    pub fn bytes(&self, id: &ThrowId) -> Result<Vec<u8>, Trouble> {
        let path = self.throw_file(Place::Throws, id);
        let mut bytes = bytes_of(&*self.disk, &path)?;
        let read = Journal::read(&bytes).map_err(|how| Trouble::Damage { path, how })?;
        if read.torn {
            bytes.truncate(read.sound);
        }
        if read.lacks_newline {
            bytes.push(b'\n');
        }
        Ok(bytes)
    }

    /// Put what is sound of a throw's file, as just read, in a fresh file in its place. A
    /// copy of all of it is kept first if anything is left out.
    fn renew(
        &self,
        id: &ThrowId,
        bytes: &[u8],
        read: &Opened,
        now: Time,
    ) -> io::Result<Option<Mended>> {
        let path = self.throw_file(Place::Throws, id);
        let mended = if read.torn() {
            let copy = free_name(&path, "torn", now);
            put(&*self.disk, &copy, bytes)?;
            Some(Mended {
                copy,
                bytes: read.left_out,
            })
        } else {
            None
        };
        let sound = usize::try_from(read.seal.length).map_or(bytes, |sound| &bytes[..sound]);
        let beside = fresh_beside(&path);
        let throws = self.folder.join(Place::Throws.name());
        let renewed = write_new(&*self.disk, &beside, sound).and_then(|()| {
            // From here the names in the folder are in doubt until they are synced.
            self.doubtful.borrow_mut().insert(id.clone());
            disk::name(&*self.disk, &path, &beside)?;
            self.disk.sync_folder(&throws)
        });
        match renewed {
            Ok(()) => {
                self.doubtful.borrow_mut().remove(id);
                self.fresh.borrow_mut().insert(id.clone());
                Ok(mended)
            }
            Err(why) => {
                // As long as the file itself is untouched a copy only takes up room.
                let untouched = |about: fs::Metadata| about.len() == bytes.len() as u64;
                if let Some(mended) = mended
                    && fs::metadata(&path).is_ok_and(untouched)
                {
                    let _ = self.disk.remove(&mended.copy);
                }
                Err(why)
            }
        }
    }

    /// Write an entry at the end of a throw's file and wait until it is on the disk.
    /// Only then may it be accepted. After an error `opened` no longer says what is
    /// on the disk: read the file again before the next append, unless it was
    /// [`Trouble::Changed`].
    ///
    /// # Errors
    /// What stood in the way; the entry is then not in the file, except that
    /// [`Trouble::Unsure`] says what is to be read there.
    pub fn append(&self, id: &ThrowId, opened: &mut Opened, entry: &Entry) -> Result<(), Trouble> {
        self.must_be_claimed()?;
        let path = self.throw_file(Place::Throws, id);
        if opened.torn() {
            return Err(Trouble::Torn { path });
        }
        if opened.held {
            return Err(Trouble::Held { path });
        }
        let line = entry.line();
        if Entry::from_line(line.trim_end_matches('\n')).as_ref() != Some(entry) {
            return Err(Trouble::Unreadable);
        }
        let newline = if opened.lacks_newline { "\n" } else { "" };
        let text = format!("{newline}{line}");
        let length = opened.seal.length;
        if line.len() > LONGEST_LINE || length + text.len() as u64 > MOST_BYTES {
            return Err(Trouble::TooLarge { path });
        }
        let file = self.own_file(id, opened, entry.at)?;
        if let Err(why) = write_all(&*self.disk, &file, text.as_bytes()) {
            // What was not acknowledged must not come back.
            let cut = self.disk.cut(&file, length);
            if cut.and_then(|()| self.disk.sync(&file)).is_ok() {
                return Err(disk(&path)(why));
            }
            drop(file);
            return self.settle(id, opened, entry, why);
        }
        if let Err(why) = self.disk.sync(&file) {
            drop(file);
            return self.settle(id, opened, entry, why);
        }
        let mut seal = opened.seal.clone();
        seal.grow(text.as_bytes());
        match self.ends_as(&file, &path, &seal) {
            Ok(Some(about)) => {
                seal.about = Some(about);
                opened.seal = seal;
                opened.lacks_newline = false;
                Ok(())
            }
            Ok(None) => {
                drop(file);
                Err(self.put_back(id, opened, entry.at))
            }
            Err(why) => {
                drop(file);
                self.settle(id, opened, entry, why)
            }
        }
    }

    /// A throw's file opened to add to it, once it is known to be the one that was written.
    fn own_file(&self, id: &ThrowId, opened: &mut Opened, now: Time) -> Result<File, Trouble> {
        let path = self.throw_file(Place::Throws, id);
        for _ in 0..MOST_COPIES {
            if !self.fresh.borrow().contains(id) {
                self.freshen(id, opened, now)?;
            }
            let file = match self
                .disk
                .open(&path, OpenOptions::new().read(true).append(true))
            {
                Ok(file) => file,
                Err(why) if why.kind() == io::ErrorKind::NotFound => {
                    return Err(self.put_back(id, opened, now));
                }
                Err(why) => return Err(disk(&path)(why)),
            };
            match self.lies(&file, &path, &opened.seal) {
                Ok(Lies::Ours(about)) => {
                    opened.seal.about = Some(about);
                    return Ok(file);
                }
                // Whoever put it there may not have waited until it was on the disk.
                Ok(Lies::Copy) => {
                    self.fresh.borrow_mut().remove(id);
                }
                Ok(Lies::Other) => {
                    drop(file);
                    return Err(self.put_back(id, opened, now));
                }
                Err(why) => return Err(disk(&path)(why)),
            }
        }
        let why = io::Error::other("another program changes it again and again");
        Err(disk(&path)(why))
    }

    /// Whether the file that is open is the one at `path` and ends as the one that was
    /// written; what the system tells of it then.
    fn ends_as(&self, file: &File, path: &Path, seal: &Seal) -> io::Result<Option<About>> {
        let own = self.disk.about_open(file)?;
        let there = match self.disk.about(path) {
            Err(why) if why.kind() == io::ErrorKind::NotFound => return Ok(None),
            there => there?,
        };
        let alike = there.identity == own.identity && own.length == seal.length;
        let alike = alike && self.disk.read_end(file, TAIL as u64)? == seal.tail;
        Ok(alike.then_some(own))
    }

    /// How the file that is open stands to the one that was written.
    fn lies(&self, file: &File, path: &Path, seal: &Seal) -> io::Result<Lies> {
        let Some(own) = self.ends_as(file, path, seal)? else {
            return Ok(Lies::Other);
        };
        if seal.about == Some(own) && own.changed.is_some() {
            return Ok(Lies::Ours(own));
        }
        // It was touched, or nothing is known of it: all of it is held against what was
        // written.
        let bytes = self.disk.read(path, MOST_BYTES + 1)?;
        Ok(match seal.about {
            _ if !seal.is_of(&bytes) => Lies::Other,
            Some(known) if known.identity != own.identity => Lies::Copy,
            _ => Lies::Ours(own),
        })
    }

    /// Before the first entry is added since the folder was claimed, the file is written
    /// anew: a failed sync of another life may have left in it what is seen and never gets
    /// to the disk, and no sync would say so.
    fn freshen(&self, id: &ThrowId, opened: &mut Opened, now: Time) -> Result<(), Trouble> {
        let path = self.throw_file(Place::Throws, id);
        match bytes_of(&*self.disk, &path) {
            Ok(bytes) if opened.seal.is_of(&bytes) => {
                opened.seal.about = None;
                self.renew(id, &bytes, opened, now).map_err(disk(&path))?;
                Ok(())
            }
            Ok(_)
            | Err(Trouble::Missing { .. } | Trouble::NoSuchThrow | Trouble::TooLarge { .. }) => {
                Err(self.put_back(id, opened, now))
            }
            Err(trouble) => Err(trouble),
        }
    }

    /// What lies in the place of a throw's file is not what was written: keep it beside, and
    /// put the record back as it was acknowledged. Says what was done.
    pub(crate) fn put_back(&self, id: &ThrowId, opened: &mut Opened, now: Time) -> Trouble {
        let put = self.put_back_in(id, opened, now);
        put.unwrap_or_else(|trouble| match trouble {
            Trouble::Disk { path, why } | Trouble::Unsure { path, why, .. } => {
                Trouble::ChangedLeft { path, why }
            }
            trouble => trouble,
        })
    }

    fn put_back_in(
        &self,
        id: &ThrowId,
        opened: &mut Opened,
        now: Time,
    ) -> Result<Trouble, Trouble> {
        self.must_be_claimed()?;
        if self.away() {
            let path = self.folder.clone();
            return Err(Trouble::Away { path });
        }
        if self.throw_folder(Place::Deleted, id).exists() {
            return Err(Trouble::NoSuchThrow);
        }
        for known in [&self.fresh, &self.synced] {
            known.borrow_mut().remove(id);
        }
        let path = self.throw_file(Place::Throws, id);
        let text = opened.journal.text();
        let (found, bytes) = match bytes_of(&*self.disk, &path) {
            Ok(bytes) => (found(&opened.journal, &bytes), Some(bytes)),
            Err(Trouble::Missing { .. } | Trouble::NoSuchThrow) => (Found::Nothing, None),
            Err(Trouble::TooLarge { .. }) => (Found::Unsound, None),
            Err(trouble) => return Err(trouble),
        };
        let folder = self.throw_folder(Place::Throws, id);
        make_folders(&*self.disk, &folder).map_err(disk(&folder))?;
        let mut beside = vec![("here", text.as_bytes())];
        beside.extend(bytes.as_ref().map(|bytes| ("brought", bytes.as_slice())));
        // What is too large to be read is moved out of the way as it is.
        let moved = match (&found, &bytes) {
            (Found::Unsound, None) => {
                let aside = free_name(&path, "brought", now);
                self.disk.rename(&path, &aside).map_err(disk(&path))?;
                Some(aside)
            }
            _ => None,
        };
        let copies = self.replace(id, &opened.journal, &beside, now)?;
        *opened = Opened::remembered(opened.journal.clone());
        let mut copies = copies.into_iter();
        Ok(Trouble::Changed {
            here: copies.next().unwrap_or_else(|| path.clone()),
            brought: copies.next().or(moved),
            path,
            found,
        })
    }

    /// The disk failed at a file's end: read what is there, put that in a fresh file,
    /// and say which it was. If the entry is there and the fresh file safe, it is kept.
    fn settle(
        &self,
        id: &ThrowId,
        before: &mut Opened,
        entry: &Entry,
        why: io::Error,
    ) -> Result<(), Trouble> {
        self.doubtful.borrow_mut().insert(id.clone());
        let path = self.throw_file(Place::Throws, id);
        let read = bytes_of(&*self.disk, &path)
            .and_then(|bytes| opened(&path, &bytes).map(|now| (now, bytes)));
        let Ok((now, bytes)) = read else {
            let seen = Seen::Neither;
            return Err(Trouble::Unsure { path, why, seen });
        };
        let old = before.journal.text();
        let text = now.journal.text();
        let seen = if text == old {
            Seen::Before
        } else if text.strip_prefix(&old) == Some(&entry.line()) {
            Seen::After
        } else {
            let seen = Seen::Neither;
            return Err(Trouble::Unsure { path, why, seen });
        };
        match (self.renew(id, &bytes, &now, entry.at), seen) {
            (Ok(_), Seen::After) => {
                before.seal = now.seal;
                before.lacks_newline = now.lacks_newline;
                Ok(())
            }
            (Ok(_), _) => Err(disk(&path)(why)),
            (Err(_), seen) => Err(Trouble::Unsure { path, why, seen }),
        }
    }

    /// Keep a new throw.
    ///
    /// # Errors
    /// What stood in the way; the throw is then not there, except that
    /// [`Trouble::Unsure`] says what is to be read there.
    pub fn begin(&self, id: &ThrowId, journal: &Journal) -> Result<(), Trouble> {
        self.must_be_claimed()?;
        if self.knows(id) {
            let path = self.throw_folder(Place::Throws, id);
            return Err(disk(&path)(io::ErrorKind::AlreadyExists.into()));
        }
        let throws = self.folder.join(Place::Throws.name());
        let unfinished = throws.join(format!("{UNFINISHED}{}", id.as_str()));
        let whole = self.throw_folder(Place::Throws, id);
        let made = self
            .begin_in(&unfinished, &journal.text())
            .and_then(|()| self.disk.rename(&unfinished, &whole))
            .and_then(|()| self.disk.sync_folder(&throws));
        if made.is_ok() {
            self.fresh.borrow_mut().insert(id.clone());
        }
        made.map_err(|why| {
            // The maker is told it was not begun, so nothing of it may come back.
            let _ = self.disk.remove(&unfinished);
            let _ = self.disk.remove(&whole);
            if whole.exists() {
                self.doubtful.borrow_mut().insert(id.clone());
                let (path, seen) = (whole, Seen::After);
                return Trouble::Unsure { path, why, seen };
            }
            disk(&whole)(why)
        })
    }

    fn begin_in(&self, folder: &Path, text: &str) -> io::Result<()> {
        self.disk.make_folder(folder)?;
        write_new(&*self.disk, &folder.join(THROW_FILE), text.as_bytes())?;
        self.disk.sync_folder(folder)
    }

    /// Move a throw from one place to the other.
    ///
    /// # Errors
    /// What stood in the way; after [`Trouble::Unsure`] it is seen in the other place.
    pub fn carry(&self, id: &ThrowId, from: Place, to: Place) -> Result<(), Trouble> {
        self.must_be_claimed()?;
        let (old, new) = (self.throw_folder(from, id), self.throw_folder(to, id));
        if !old.is_dir() {
            return Err(Trouble::NoSuchThrow);
        }
        if new.exists() {
            return Err(disk(&new)(io::ErrorKind::AlreadyExists.into()));
        }
        let renamed = self.disk.rename(&old, &new);
        if old.exists() || !new.exists() {
            return renamed.map_err(disk(&old));
        }
        // The new place first: twice there after a power cut is better than nowhere.
        let synced = renamed.and_then(|()| {
            [to, from]
                .iter()
                .try_for_each(|place| self.disk.sync_folder(&self.folder.join(place.name())))
        });
        synced.map_err(|why| {
            self.doubtful.borrow_mut().insert(id.clone());
            let (path, seen) = (new, Seen::After);
            Trouble::Unsure { path, why, seen }
        })
    }

    /// Erase a deleted throw for good.
    ///
    /// # Errors
    /// What stood in the way; after [`Trouble::Unsure`] it is no longer on the shelf.
    pub fn erase(&self, id: &ThrowId) -> Result<(), Trouble> {
        self.must_be_claimed()?;
        let path = self.throw_folder(Place::Deleted, id);
        if !path.is_dir() {
            return Err(Trouble::NoSuchThrow);
        }
        let deleted = self.folder.join(Place::Deleted.name());
        let gone = deleted.join(format!("{GONE}{}", id.as_str()));
        // Off the shelf in one step, so that it is never there by halves.
        let renamed = self.disk.rename(&path, &gone);
        if path.exists() {
            return renamed.map_err(disk(&path));
        }
        let synced = renamed.and_then(|()| self.disk.sync_folder(&deleted));
        let removed = self.disk.remove(&gone);
        synced.and(removed).map_err(|why| Trouble::Unsure {
            path: gone,
            why,
            seen: Seen::After,
        })
    }

    fn photo_folder(&self, id: &ThrowId) -> PathBuf {
        self.throw_folder(Place::Throws, id).join(PHOTOS)
    }

    fn photo_file(&self, id: &ThrowId, photo: &PhotoId) -> PathBuf {
        let name = format!("{}.jpg", photo.as_str());
        self.photo_folder(id).join(name)
    }

    /// Keep a photo beside a throw in work. It is on the disk when this returns; one that
    /// is there already is left.
    ///
    /// # Errors
    /// What stood in the way; the photo is then not there, if the disk lets it be taken away.
    pub fn keep_photo(&self, id: &ThrowId, photo: &PhotoId, bytes: &[u8]) -> Result<(), Trouble> {
        self.must_be_claimed()?;
        let throw = self.throw_folder(Place::Throws, id);
        if !throw.is_dir() {
            return Err(Trouble::NoSuchThrow);
        }
        let folder = self.photo_folder(id);
        make_folders(&*self.disk, &folder).map_err(disk(&folder))?;
        let path = self.photo_file(id, photo);
        let alike = |about: fs::Metadata| about.len() == bytes.len() as u64;
        let there =
            fs::metadata(&path).is_ok_and(alike) && fs::read(&path).is_ok_and(|kept| kept == bytes);
        // One that is there may be left from a time when its name, or its folder's, was
        // not said to be safe.
        let kept = match there {
            true => self.disk.sync_folder(&folder),
            false => put(&*self.disk, &path, bytes),
        };
        let kept = kept.and_then(|()| self.disk.sync_folder(&throw));
        kept.map_err(|why| {
            if !there {
                let _ = self.disk.remove(&path);
            }
            disk(&path)(why)
        })
    }

    /// A photo's bytes; none if it is not there.
    ///
    /// # Errors
    /// [`Trouble::Disk`], or [`Trouble::TooLarge`] for what Lapwork never wrote.
    pub fn photo(&self, id: &ThrowId, photo: &PhotoId) -> Result<Option<Vec<u8>>, Trouble> {
        let path = self.photo_file(id, photo);
        let file = match File::open(&path) {
            Ok(file) => file,
            Err(why) if why.kind() == io::ErrorKind::NotFound => return Ok(None),
            Err(why) => return Err(disk(&path)(why)),
        };
        let mut bytes = Vec::new();
        let most = crate::photos::MOST_BYTES;
        file.take(most + 1)
            .read_to_end(&mut bytes)
            .map_err(disk(&path))?;
        if bytes.len() as u64 > most {
            return Err(Trouble::TooLarge { path });
        }
        Ok(Some(bytes))
    }

    /// Remove photos that were chosen and then not put into the story: all but `named`; and
    /// what an app that died while it kept one left half written.
    pub fn sweep_photos(&self, id: &ThrowId, named: &BTreeSet<PhotoId>) {
        let Ok(found) = fs::read_dir(self.photo_folder(id)) else {
            return;
        };
        for path in found.flatten().map(|found| found.path()) {
            let name = path.file_name().and_then(|name| name.to_str());
            let (stem, ending) = name.and_then(|n| n.split_once('.')).unwrap_or_default();
            let half = ending == "jpg.new";
            let photo = PhotoId::parse(stem);
            if self.claimed() && photo.is_some_and(|photo| half || !named.contains(&photo)) {
                // Left there, it does no harm but takes room.
                let _ = self.disk.remove(&path);
            }
        }
    }

    fn settings_file(&self) -> PathBuf {
        self.folder.join("settings.json")
    }

    /// The settings, if any were ever kept.
    ///
    /// # Errors
    /// [`Trouble::Settings`] if the file cannot be read or understood.
    pub fn settings(&self) -> Result<Option<Prefs>, Trouble> {
        let path = self.settings_file();
        let most = MOST_SETTINGS;
        let mut text = Vec::new();
        let read = File::open(&path).and_then(|f| f.take(most + 1).read_to_end(&mut text));
        match read {
            Ok(_) if text.len() as u64 <= most => {}
            Ok(_) => return Err(Trouble::Settings { path }),
            Err(why) if why.kind() == io::ErrorKind::NotFound => return Ok(None),
            Err(_) => return Err(Trouble::Settings { path }),
        }
        serde_json::from_slice(&text).map_err(|_| Trouble::Settings { path })
    }

    /// Keep the settings.
    ///
    /// # Errors
    /// What stood in the way; the settings kept before are then still there, unless only the
    /// folder could not be synced.
    pub fn keep_settings(&self, prefs: &Prefs) -> Result<(), Trouble> {
        self.must_be_claimed()?;
        let path = self.settings_file();
        let text = serde_json::to_vec_pretty(prefs).map_err(|why| disk(&path)(why.into()))?;
        put(&*self.disk, &path, &text).map_err(disk(&path))
    }
}

/// Read a throw file from anywhere; nothing is mended. A folder stands for the file in it.
///
/// # Errors
/// What stands in the way.
pub fn read_throw(path: &Path) -> Result<Opened, Trouble> {
    let within = path.join(THROW_FILE);
    let path = if path.is_dir() { &within } else { path };
    opened(path, &read_bytes(path)?)
}

/// The throw file meant by a path: a folder stands for the file in it.
pub fn throw_file_in(path: &Path) -> PathBuf {
    if path.is_dir() {
        path.join(THROW_FILE)
    } else {
        path.to_path_buf()
    }
}

/// Bring a throw file anywhere up to this version; gives where the file as it was is kept,
/// or nothing where there was nothing to do.
///
/// # Errors
/// What stood in the way; the file is then as it was. [`Trouble::Locked`] while a Lapwork
/// that may write has the data folder it lies in.
pub fn upgrade_file(path: &Path, opened: &Opened, now: Time) -> Result<Option<PathBuf>, Trouble> {
    if opened.version >= VERSION {
        return Ok(None);
    }
    let _held = lock_over(path)?;
    // What a Lapwork that has closed meanwhile added is not to be left out.
    let opened = read_throw(path)?;
    upgrade(&RealDisk, path, &opened.journal, opened.version, now).map(Some)
}

/// Hold the data folder a throw file lies in; nothing where it lies in none.
fn lock_over(path: &Path) -> Result<Option<File>, Trouble> {
    let path = fs::canonicalize(path).map_err(disk(path))?;
    // <data>/throws/<id>/throw.jsonl
    let Some(lock) = path.ancestors().nth(3).map(|data| data.join("lock")) else {
        return Ok(None);
    };
    let file = match OpenOptions::new().write(true).open(&lock) {
        Ok(file) => file,
        Err(why) if why.kind() == io::ErrorKind::NotFound => return Ok(None),
        Err(why) => return Err(disk(&lock)(why)),
    };
    match file.try_lock() {
        Ok(()) => Ok(Some(file)),
        Err(TryLockError::WouldBlock) => Err(Trouble::Locked),
        Err(TryLockError::Error(why)) => Err(disk(&lock)(why)),
    }
}

/// Write a throw file of an older version anew in this one, once the file as it is lies
/// beside it; gives where.
fn upgrade(
    on: &dyn Disk,
    path: &Path,
    journal: &Journal,
    version: u32,
    now: Time,
) -> Result<PathBuf, Trouble> {
    let bytes = bytes_of(on, path)?;
    let mut copy = path.with_file_name(format!("{THROW_FILE}.version-{version}"));
    if copy.exists() && fs::read(&copy).map_err(disk(&copy))? != bytes {
        copy = free_name(path, &format!("version-{version}"), now);
    }
    put(on, &copy, &bytes).map_err(disk(&copy))?;
    put(on, path, journal.text().as_bytes()).map_err(disk(path))?;
    Ok(copy)
}

/// All of a throw file, unless it is too large.
pub(crate) fn read_bytes(path: &Path) -> Result<Vec<u8>, Trouble> {
    bytes_of(&RealDisk, path)
}

/// Refuse what is neither file nor folder: one could wait for ever at the end of a pipe.
pub(crate) fn plain(path: &Path) -> Result<(), Trouble> {
    let odd = |about: fs::Metadata| !about.is_file() && !about.is_dir();
    if fs::metadata(path).is_ok_and(odd) {
        return Err(disk(path)(io::Error::other("it is no plain file")));
    }
    Ok(())
}

/// The same, on a disk of the caller's.
pub(crate) fn bytes_of(on: &dyn Disk, path: &Path) -> Result<Vec<u8>, Trouble> {
    plain(path)?;
    // Told by its size, so that no more than a file's name is read of a huge one.
    if fs::metadata(path).is_ok_and(|about| about.len() > MOST_BYTES) {
        let path = path.to_path_buf();
        return Err(Trouble::TooLarge { path });
    }
    let bytes = match on.read(path, MOST_BYTES + 1) {
        Ok(bytes) => bytes,
        Err(why) if why.kind() == io::ErrorKind::NotFound => {
            let path = path.to_path_buf();
            return Err(match path.parent() {
                Some(folder) if folder.is_dir() => Trouble::Missing { path },
                _ => Trouble::NoSuchThrow,
            });
        }
        Err(why) => return Err(disk(path)(why)),
    };
    if bytes.len() as u64 > MOST_BYTES {
        let path = path.to_path_buf();
        return Err(Trouble::TooLarge { path });
    }
    Ok(bytes)
}

fn opened(path: &Path, bytes: &[u8]) -> Result<Opened, Trouble> {
    let read = Journal::read(bytes).map_err(|how| Trouble::Damage {
        path: path.to_path_buf(),
        how,
    })?;
    Ok(Opened {
        journal: read.journal,
        seal: Seal::of(&bytes[..read.sound]),
        lacks_newline: read.lacks_newline,
        left_out: (bytes.len() - read.sound) as u64,
        version: read.version,
        held: false,
        mended: None,
    })
}

/// Write a new throw file at `path`, or in the folder there; gives where it was written.
/// It appears whole or not at all.
///
/// # Errors
/// What stood in the way, also if there is such a file already; nothing is left then,
/// unless only its folder could not be synced.
pub fn write_throw(path: &Path, journal: &Journal) -> Result<PathBuf, Trouble> {
    let path = if path.is_dir() {
        path.join(THROW_FILE)
    } else {
        path.to_path_buf()
    };
    if path.exists() {
        return Err(disk(&path)(io::ErrorKind::AlreadyExists.into()));
    }
    let beside = disk::part_of(&path);
    write_new(&RealDisk, &beside, journal.text().as_bytes()).map_err(disk(&path))?;
    // A second name is given only where there is none, in one step; a disk that knows no
    // second names has the file renamed.
    let named = match fs::hard_link(&beside, &path) {
        Err(why) if why.kind() != io::ErrorKind::AlreadyExists && !path.exists() => {
            fs::rename(&beside, &path)
        }
        linked => linked,
    };
    // Left beside it, the part would do no harm.
    let _ = fs::remove_file(&beside);
    named.map_err(disk(&path))?;
    let folder = path.parent().filter(|above| !above.as_os_str().is_empty());
    let folder = folder.unwrap_or(Path::new("."));
    RealDisk.sync_folder(folder).map_err(disk(folder))?;
    Ok(path)
}

/// What was found in the place of a record.
fn found(own: &Journal, bytes: &[u8]) -> Found {
    match intake::read(bytes) {
        Err(_) => Found::Unsound,
        Ok(read) => match relation(own, &read.journal) {
            Relation::Same | Relation::FirstHasMore(_) => Found::Less,
            _ => Found::More(bytes.to_vec()),
        },
    }
}

/// Put a whole file in the place of one that may be there.
fn put(on: &dyn Disk, path: &Path, bytes: &[u8]) -> io::Result<()> {
    disk::put(on, path, &fresh_beside(path), bytes)
}

/// Where a file is written before it takes the place of one.
fn fresh_beside(path: &Path) -> PathBuf {
    let mut fresh = path.as_os_str().to_os_string();
    fresh.push(".new");
    PathBuf::from(fresh)
}

/// A name beside a file for a copy of it that no other copy has, even if the clock was
/// set back.
fn free_name(path: &Path, called: &str, now: Time) -> PathBuf {
    let name = |n: u32| {
        let more = if n == 0 {
            String::new()
        } else {
            format!("-{n}")
        };
        path.with_file_name(format!("{THROW_FILE}.{called}-{now}{more}"))
    };
    (0..u32::MAX)
        .map(name)
        .find(|copy| !copy.exists())
        .unwrap_or_else(|| name(u32::MAX))
}

#[cfg(test)]
mod tests {
    use super::*;
    use lapwork_core::demo;

    fn claimed(folder: &Path) -> Store {
        let mut store = Store::at(folder.to_path_buf());
        assert!(store.claim().unwrap());
        store
    }

    #[test]
    fn an_id_cannot_leave_the_folder() {
        for bad in [
            "", ".", "..", "../x", "a/b", "a\\b", "A", "é", "a b", "a\0", "/etc", ".new-a",
        ] {
            assert!(
                matches!(ThrowId::parse(bad), Err(Trouble::BadId)),
                "{bad:?}"
            );
        }
        assert!(ThrowId::parse(&"a".repeat(65)).is_err());
        assert_eq!(ThrowId::parse("0a-9z").unwrap().as_str(), "0a-9z");
    }

    #[test]
    fn only_one_may_write_and_the_next_may_once_it_is_gone() {
        let folder = tempfile::tempdir().unwrap();
        let first = claimed(folder.path());
        let mut second = Store::at(folder.path().to_path_buf());
        assert!(matches!(second.claim(), Err(Trouble::Locked)));
        let id = ThrowId::parse("a").unwrap();
        let refused = second.begin(&id, &demo::throw(0));
        assert!(matches!(refused, Err(Trouble::Locked)));
        assert!(!second.knows(&id));
        drop(first);
        assert!(second.claim().unwrap());
        assert!(!second.claim().unwrap());
    }

    #[test]
    fn a_throw_half_begun_is_cleared_and_never_listed() {
        let folder = tempfile::tempdir().unwrap();
        let half = folder.path().join("throws/.new-a");
        fs::create_dir_all(&half).unwrap();
        fs::write(half.join(THROW_FILE), "{\"lap").unwrap();
        let store = claimed(folder.path());
        assert!(!half.exists());
        assert!(store.ids(Place::Throws).unwrap().is_empty());
    }

    #[test]
    fn a_throw_begun_is_whole_and_no_other_of_its_name_is_written_over() {
        let folder = tempfile::tempdir().unwrap();
        let store = claimed(folder.path());
        let (id, journal) = (ThrowId::parse("a").unwrap(), demo::throw(0));
        store.begin(&id, &journal).unwrap();
        assert_eq!(store.ids(Place::Throws).unwrap(), std::slice::from_ref(&id));
        let kept = fs::read_to_string(store.throw_file(Place::Throws, &id)).unwrap();
        assert_eq!(kept, journal.text());
        store.carry(&id, Place::Throws, Place::Deleted).unwrap();
        assert!(store.begin(&id, &journal).is_err());
        assert!(store.ids(Place::Throws).unwrap().is_empty());
    }

    #[test]
    fn a_file_too_large_is_not_read() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join(THROW_FILE);
        let file = File::create(&path).unwrap();
        file.set_len(MOST_BYTES + 1).unwrap();
        assert!(matches!(read_throw(&path), Err(Trouble::TooLarge { .. })));
        file.set_len(MOST_BYTES).unwrap();
        assert!(matches!(read_throw(&path), Err(Trouble::Damage { .. })));
    }

    #[test]
    fn a_throw_is_never_written_over_a_file() {
        let folder = tempfile::tempdir().unwrap();
        let journal = demo::throw(0);
        let written = write_throw(folder.path(), &journal).unwrap();
        assert!(read_throw(folder.path()).is_ok());
        fs::write(&written, "mine").unwrap();
        assert!(write_throw(folder.path(), &journal).is_err());
        assert!(write_throw(&written, &journal).is_err());
        assert_eq!(fs::read(&written).unwrap(), b"mine");
    }

    #[test]
    fn settings_are_kept_whole_and_broken_ones_are_told() {
        let folder = tempfile::tempdir().unwrap();
        let store = claimed(folder.path());
        assert_eq!(store.settings().unwrap(), None);
        let prefs = Prefs {
            text: 140,
            ..Prefs::default()
        };
        store.keep_settings(&prefs).unwrap();
        assert_eq!(store.settings().unwrap().as_ref(), Some(&prefs));
        // Settings from before a language could be chosen.
        let old = r#"{"ruler":{"system":"metric","fraction":"eighth","metric":"cm"},"text":125,"theme":"dark"}"#;
        fs::write(folder.path().join("settings.json"), old).unwrap();
        let read = store.settings().unwrap().unwrap();
        assert_eq!((read.text, read.language), (125, None));
        fs::write(folder.path().join("settings.json"), "{").unwrap();
        assert!(matches!(store.settings(), Err(Trouble::Settings { .. })));
        // Larger than settings can be, it is not read to its end.
        let file = File::create(folder.path().join("settings.json")).unwrap();
        file.set_len(1 << 40).unwrap();
        assert!(matches!(store.settings(), Err(Trouble::Settings { .. })));
    }

    #[cfg(unix)]
    #[test]
    fn nobody_waits_at_the_end_of_a_pipe() {
        let folder = tempfile::tempdir().unwrap();
        let pipe = folder.path().join("pipe.jsonl");
        let made = std::process::Command::new("mkfifo").arg(&pipe).status();
        assert!(made.unwrap().success());
        let throw = read_throw(&pipe);
        assert!(matches!(throw, Err(Trouble::Disk { .. })), "{throw:?}");
        let photo = crate::photos::take(&pipe);
        assert!(matches!(photo, Err(Trouble::Disk { .. })), "{photo:?}");
        assert!(matches!(
            read_throw(Path::new("/dev/zero")),
            Err(Trouble::Disk { .. })
        ));
        // Nor where a throw's own file should be.
        let store = claimed(folder.path());
        let id = ThrowId::parse("a").unwrap();
        let own = store.throw_file(Place::Throws, &id);
        fs::create_dir(own.parent().unwrap()).unwrap();
        fs::rename(&pipe, &own).unwrap();
        let throw = store.open(&id, 0);
        assert!(matches!(throw, Err(Trouble::Disk { .. })), "{throw:?}");
    }
}
