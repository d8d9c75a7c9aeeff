//! The data folder: throw files, the settings, and who may write them.
//!
//! ```text
//! throws/<id>/throw.jsonl    throws in work (and those put away)
//! deleted/<id>/throw.jsonl   throws deleted but not yet erased
//! settings.json              how the window looks and reads
//! lock                       held while the app is open
//! ```
//!
//! Promises: one writer at a time, by a lock on `lock` that the system lets go when
//! the app ends, however it ends. [`Store::append`] returns only once the line is on
//! the disk; if that fails the file is cut back to what was sound before. A new throw
//! and the settings appear whole or not at all. A path is only ever made from a
//! [`ThrowId`], so nothing outside the folder can be reached. Damaged files are never
//! changed; a torn last line is cut off only once a copy of the whole file lies beside it.
//!
//! Limits: a throw file of more than [`MOST_BYTES`] is neither read nor written. No
//! words are chosen here; a [`Trouble`] becomes words in [`crate::desk`].

use lapwork_core::journal::{Damage, Entry, Journal};
use lapwork_core::throw::Time;
use lapwork_core::view::Prefs;
use std::fs::{self, File, OpenOptions, TryLockError};
use std::io::{self, Read as _, Write as _};
use std::path::{Path, PathBuf};

/// The largest throw file that is read or written.
pub const MOST_BYTES: u64 = 64 << 20;
/// The longest line that is written; the core reads no longer ones.
const LONGEST_LINE: usize = 4 << 20;
const THROW_FILE: &str = "throw.jsonl";
/// What a throw's folder is called until it is whole.
const UNFINISHED: &str = ".new-";

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
}

fn disk(path: &Path) -> impl FnOnce(io::Error) -> Trouble + '_ {
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
    /// Bytes on the disk.
    length: u64,
    /// The newline after the last line is missing.
    lacks_newline: bool,
    /// A torn last line is still there.
    torn: bool,
    /// The copy made before a torn last line was cut off just now.
    pub copy: Option<PathBuf>,
}

impl Opened {
    /// Whether a torn last line is still in the file.
    pub fn torn(&self) -> bool {
        self.torn
    }
}

/// The data folder.
#[derive(Debug)]
pub struct Store {
    folder: PathBuf,
    lock: Option<File>,
}

impl Store {
    /// The data folder at `folder`. Nothing is touched until it is claimed.
    pub fn at(folder: PathBuf) -> Store {
        Store { folder, lock: None }
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
    /// folder cannot be made.
    pub fn claim(&mut self) -> Result<bool, Trouble> {
        if self.lock.is_some() {
            return Ok(false);
        }
        for place in [Place::Throws, Place::Deleted] {
            let path = self.folder.join(place.name());
            fs::create_dir_all(&path).map_err(disk(&path))?;
        }
        let path = self.folder.join("lock");
        let file = OpenOptions::new()
            .write(true)
            .create(true)
            .truncate(false)
            .open(&path)
            .map_err(disk(&path))?;
        match file.try_lock() {
            Ok(()) => self.lock = Some(file),
            Err(TryLockError::WouldBlock) => return Err(Trouble::Locked),
            Err(TryLockError::Error(why)) => return Err(disk(&path)(why)),
        }
        sync_folder(&self.folder)?;
        self.clear_unfinished();
        Ok(true)
    }

    /// Remove what an app that died half-way through beginning a throw left behind.
    fn clear_unfinished(&self) {
        let Ok(found) = fs::read_dir(self.folder.join(Place::Throws.name())) else {
            return;
        };
        for path in found.flatten().map(|found| found.path()) {
            let name = path.file_name().and_then(|name| name.to_str());
            if name.is_some_and(|name| name.starts_with(UNFINISHED)) {
                // Left there, it does no harm: it is no id, so it is never listed.
                let _ = fs::remove_dir_all(&path);
            }
        }
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
        read_throw(&self.throw_file(place, id))
    }

    /// Read a throw in work. If its last line is torn and this is the one that may
    /// write, a copy of the file is kept beside it and the line cut off; where that
    /// cannot be done the throw is readable all the same, and [`Opened::torn`].
    ///
    /// # Errors
    /// What stands in the way.
    pub fn open(&self, id: &ThrowId, now: Time) -> Result<Opened, Trouble> {
        let path = self.throw_file(Place::Throws, id);
        let opened = read_throw(&path)?;
        if !(opened.torn && self.claimed()) {
            return Ok(opened);
        }
        // A full or read-only disk must not keep the maker from seeing her throw.
        let Ok(copy) = mend(&path, opened.length, now) else {
            return Ok(opened);
        };
        Ok(Opened {
            torn: false,
            copy: Some(copy),
            ..opened
        })
    }

    /// Write an entry at the end of a throw's file and wait until it is on the disk.
    /// Only then may it be accepted. After an error `opened` no longer says what is
    /// on the disk: read the file again before the next append.
    ///
    /// # Errors
    /// What stood in the way; the entry is then not in the file.
    pub fn append(&self, id: &ThrowId, opened: &mut Opened, entry: &Entry) -> Result<(), Trouble> {
        self.must_be_claimed()?;
        let path = self.throw_file(Place::Throws, id);
        let line = entry.line();
        if Entry::from_line(line.trim_end_matches('\n')).as_ref() != Some(entry) {
            return Err(Trouble::Unreadable);
        }
        let newline = if opened.lacks_newline { "\n" } else { "" };
        let text = format!("{newline}{line}");
        let after = opened.length + text.len() as u64;
        if line.len() > LONGEST_LINE || after > MOST_BYTES {
            return Err(Trouble::TooLarge { path });
        }
        let mut file = OpenOptions::new()
            .append(true)
            .open(&path)
            .map_err(disk(&path))?;
        let length = file.metadata().map_err(disk(&path))?.len();
        if opened.torn || length != opened.length {
            let why = io::Error::other("the file is not as it was read");
            return Err(disk(&path)(why));
        }
        let written = file
            .write_all(text.as_bytes())
            .and_then(|()| file.sync_data());
        if let Err(why) = written {
            // What was not acknowledged must not come back; if even this fails, the
            // next reading finds either a torn line or the whole entry, and says so.
            let _ = file.set_len(length).and_then(|()| file.sync_data());
            return Err(disk(&path)(why));
        }
        opened.length = after;
        opened.lacks_newline = false;
        Ok(())
    }

    /// Keep a new throw.
    ///
    /// # Errors
    /// What stood in the way; the throw is then not there.
    pub fn begin(&self, id: &ThrowId, journal: &Journal) -> Result<(), Trouble> {
        self.must_be_claimed()?;
        if self.knows(id) {
            let path = self.throw_folder(Place::Throws, id);
            return Err(disk(&path)(io::ErrorKind::AlreadyExists.into()));
        }
        let throws = self.folder.join(Place::Throws.name());
        let unfinished = throws.join(format!("{UNFINISHED}{}", id.as_str()));
        let whole = self.throw_folder(Place::Throws, id);
        let made = begin_in(&unfinished, &journal.text())
            .and_then(|()| fs::rename(&unfinished, &whole).map_err(disk(&whole)))
            .and_then(|()| sync_folder(&throws));
        if made.is_err() {
            // The maker is told it was not begun, so nothing of it may come back.
            let _ = fs::remove_dir_all(&unfinished);
            let _ = fs::remove_dir_all(&whole);
        }
        made
    }

    /// Move a throw from one place to the other.
    ///
    /// # Errors
    /// What stood in the way.
    pub fn carry(&self, id: &ThrowId, from: Place, to: Place) -> Result<(), Trouble> {
        self.must_be_claimed()?;
        let (old, new) = (self.throw_folder(from, id), self.throw_folder(to, id));
        if !old.is_dir() {
            return Err(Trouble::NoSuchThrow);
        }
        if new.exists() {
            return Err(disk(&new)(io::ErrorKind::AlreadyExists.into()));
        }
        fs::rename(&old, &new).map_err(disk(&old))?;
        sync_folder(&self.folder.join(to.name()))?;
        sync_folder(&self.folder.join(from.name()))
    }

    /// Erase a deleted throw for good.
    ///
    /// # Errors
    /// What stood in the way.
    pub fn erase(&self, id: &ThrowId) -> Result<(), Trouble> {
        self.must_be_claimed()?;
        let path = self.throw_folder(Place::Deleted, id);
        if !path.is_dir() {
            return Err(Trouble::NoSuchThrow);
        }
        fs::remove_dir_all(&path).map_err(disk(&path))?;
        sync_folder(&self.folder.join(Place::Deleted.name()))
    }

    fn settings_file(&self) -> PathBuf {
        self.folder.join("settings.json")
    }

    /// The settings, or the usual ones if none were ever kept.
    ///
    /// # Errors
    /// [`Trouble::Settings`] if the file cannot be read or understood.
    pub fn settings(&self) -> Result<Prefs, Trouble> {
        let path = self.settings_file();
        let text = match fs::read(&path) {
            Ok(text) => text,
            Err(why) if why.kind() == io::ErrorKind::NotFound => return Ok(Prefs::default()),
            Err(_) => return Err(Trouble::Settings { path }),
        };
        serde_json::from_slice(&text).map_err(|_| Trouble::Settings { path })
    }

    /// Keep the settings.
    ///
    /// # Errors
    /// What stood in the way; the settings kept before are then still there.
    pub fn keep_settings(&self, prefs: &Prefs) -> Result<(), Trouble> {
        self.must_be_claimed()?;
        let path = self.settings_file();
        let unfinished = self.folder.join("settings.json.new");
        let text = serde_json::to_vec_pretty(prefs).map_err(|why| disk(&path)(why.into()))?;
        write_new(&unfinished, &text)?;
        fs::rename(&unfinished, &path).map_err(disk(&path))?;
        sync_folder(&self.folder)
    }
}

/// Read a throw file from anywhere; nothing is mended. A folder stands for the file in it.
///
/// # Errors
/// What stands in the way.
pub fn read_throw(path: &Path) -> Result<Opened, Trouble> {
    let within = path.join(THROW_FILE);
    let path = if path.is_dir() { &within } else { path };
    let file = match File::open(path) {
        Ok(file) => file,
        Err(why) if why.kind() == io::ErrorKind::NotFound => {
            let path = path.to_path_buf();
            return Err(match path.parent() {
                Some(folder) if folder.is_dir() => Trouble::Missing { path },
                _ => Trouble::NoSuchThrow,
            });
        }
        Err(why) => return Err(disk(path)(why)),
    };
    let mut bytes = Vec::new();
    file.take(MOST_BYTES + 1)
        .read_to_end(&mut bytes)
        .map_err(disk(path))?;
    let length = bytes.len() as u64;
    let path = path.to_path_buf();
    if length > MOST_BYTES {
        return Err(Trouble::TooLarge { path });
    }
    let read = Journal::read(&bytes).map_err(|how| Trouble::Damage { path, how })?;
    Ok(Opened {
        journal: read.journal,
        length: if read.torn { read.sound as u64 } else { length },
        lacks_newline: read.lacks_newline,
        torn: read.torn,
        copy: None,
    })
}

/// Write a new throw file at `path`, or in the folder there; gives where it was written.
///
/// # Errors
/// What stood in the way, also if there is such a file already; nothing is left then.
pub fn write_throw(path: &Path, journal: &Journal) -> Result<PathBuf, Trouble> {
    let path = if path.is_dir() {
        path.join(THROW_FILE)
    } else {
        path.to_path_buf()
    };
    let mut file = OpenOptions::new()
        .write(true)
        .create_new(true)
        .open(&path)
        .map_err(disk(&path))?;
    let written = file
        .write_all(journal.text().as_bytes())
        .and_then(|()| file.sync_all());
    if let Err(why) = written {
        // Half a file is worse than none; the error says it was not written.
        let _ = fs::remove_file(&path);
        return Err(disk(&path)(why));
    }
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => sync_folder(folder)?,
        _ => sync_folder(Path::new("."))?,
    }
    Ok(path)
}

/// Keep a copy of the file, then cut it to what is sound.
fn mend(path: &Path, sound: u64, now: Time) -> Result<PathBuf, Trouble> {
    let copy = path.with_file_name(format!("{THROW_FILE}.torn-{now}"));
    let bytes = fs::read(path).map_err(disk(path))?;
    let kept = write_new(&copy, &bytes).and_then(|()| match path.parent() {
        Some(folder) => sync_folder(folder),
        None => Ok(()),
    });
    if let Err(trouble) = kept {
        // Half a copy helps nobody; the file itself is untouched.
        let _ = fs::remove_file(&copy);
        return Err(trouble);
    }
    let file = OpenOptions::new()
        .write(true)
        .open(path)
        .map_err(disk(path))?;
    file.set_len(sound)
        .and_then(|()| file.sync_all())
        .map_err(disk(path))?;
    Ok(copy)
}

fn begin_in(folder: &Path, text: &str) -> Result<(), Trouble> {
    fs::create_dir_all(folder).map_err(disk(folder))?;
    write_new(&folder.join(THROW_FILE), text.as_bytes())?;
    sync_folder(folder)
}

/// Write a whole file, over an old one of that name, and wait until it is on the disk.
fn write_new(path: &Path, bytes: &[u8]) -> Result<(), Trouble> {
    let written = File::create(path).and_then(|mut file| {
        file.write_all(bytes)?;
        file.sync_all()
    });
    written.map_err(disk(path))
}

/// Wait until the names in a folder are on the disk. Only Unix lets a folder be synced.
fn sync_folder(path: &Path) -> Result<(), Trouble> {
    if cfg!(unix) {
        File::open(path)
            .and_then(|folder| folder.sync_all())
            .map_err(disk(path))?;
    }
    Ok(())
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
        assert_eq!(store.settings().unwrap(), Prefs::default());
        let prefs = Prefs {
            text: 140,
            ..Prefs::default()
        };
        store.keep_settings(&prefs).unwrap();
        assert_eq!(store.settings().unwrap(), prefs);
        // Settings from before a language could be chosen.
        let old = r#"{"ruler":{"system":"metric","fraction":"eighth","metric":"cm"},"text":125,"theme":"dark"}"#;
        fs::write(folder.path().join("settings.json"), old).unwrap();
        let read = store.settings().unwrap();
        assert_eq!((read.text, read.language), (125, None));
        fs::write(folder.path().join("settings.json"), "{").unwrap();
        assert!(matches!(store.settings(), Err(Trouble::Settings { .. })));
    }
}
