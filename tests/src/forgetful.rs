//! A disk that fails where it is told to, and forgets what was not synced.
//!
//! Files live in a real folder, which is what the system shows. Beside it a model keeps
//! what would be found after a power cut: the bytes of a file once it was synced, the
//! names in a folder once the folder was. [`Forgetful::after_power_cut`] writes that
//! down as a folder of its own.
//!
//! The model: a sync that fails drops what was written since the last one, and the next
//! sync of that file says nothing of it, as Linux does; with [`Fault::forgets`] the
//! system also no longer shows it. A change of a name is one step, also across two
//! folders (as on every journalling file system), and is safe once either is synced.
//!
//! What was done is also written down in order ([`Forgetful::log`]).
//!
//! [`cases`] are the ways in which tests have it fail and what they do then; they are played
//! on both cores by [`in_halves`], one test at a time ([`alone`]).
//!
//! Limits: bytes and names only; no modes, times or links.

use lapwork_service::desktop::DesktopDisk;
use lapwork_service::disk::{About, Disk, DiskFile, DiskLock, DiskPath, OpenMode};
use std::collections::BTreeMap;
use std::fs::{self, OpenOptions};
use std::io;
use std::os::unix::fs::FileExt as _;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use tempfile::TempDir;

/// An error of the device.
pub const EIO: i32 = 5;
/// No space left.
pub const ENOSPC: i32 = 28;
/// A file system that may only be read.
pub const EROFS: i32 = 30;

/// How something goes wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum How {
    /// It is not done, and this number of the system's says why.
    Fails(i32),
    /// It is done, and said to have failed.
    Late(i32),
    /// Half of what was to be written is; the next writing fails for want of space.
    Short,
}

/// What goes wrong, and when.
#[derive(Debug, Clone, Copy)]
pub struct Fault {
    /// At which operation, counted from 0.
    pub at: usize,
    /// How.
    pub how: How,
    /// And every one after it too.
    pub lasting: bool,
    /// What a failed sync dropped is no longer shown either.
    pub forgets: bool,
}

/// Which names a power cut leaves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Names {
    /// Only those synced.
    Synced,
    /// All.
    All,
}

/// Which bytes a power cut leaves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bytes {
    /// Only those synced.
    Synced,
    /// Of those not synced the first half, then nothing but zeros.
    Half,
    /// All.
    All,
}

type Node = usize;

#[derive(Debug, Default)]
struct Contents {
    shown: Vec<u8>,
    kept: Vec<u8>,
    /// What was written since the last sync.
    fresh: Vec<(usize, usize)>,
}

#[derive(Debug)]
enum Thing {
    File(Contents),
    Folder {
        shown: BTreeMap<String, Node>,
        kept: BTreeMap<String, Node>,
    },
}

/// A change of names not yet synced.
#[derive(Debug, Clone)]
struct Change {
    gone: Option<(Node, String)>,
    come: Option<(Node, String, Node)>,
}

#[derive(Debug)]
struct Model {
    root: PathBuf,
    things: Vec<Thing>,
    pending: Vec<Change>,
    count: usize,
    /// What was done, and to which name within the root.
    log: Vec<(&'static str, String)>,
    fault: Option<Fault>,
    no_space: bool,
}

/// The disk; clones are the same disk.
#[derive(Debug, Clone)]
pub struct Forgetful(Arc<Mutex<Model>>);

fn folder() -> Thing {
    Thing::Folder {
        shown: BTreeMap::new(),
        kept: BTreeMap::new(),
    }
}

fn failed(number: i32) -> io::Error {
    io::Error::from_raw_os_error(number)
}

impl Forgetful {
    /// A disk with nothing on it but the folder `root`, which is there and empty.
    pub fn new(root: &Path, fault: Option<Fault>) -> Forgetful {
        Forgetful(Arc::new(Mutex::new(Model {
            root: root.to_path_buf(),
            things: vec![folder()],
            pending: Vec::new(),
            count: 0,
            log: Vec::new(),
            fault,
            no_space: false,
        })))
    }

    /// A disk with all on it that lies in the folder `root` now, and safe.
    pub fn over(root: &Path, fault: Option<Fault>) -> Forgetful {
        let disk = Forgetful::new(root, fault);
        {
            let mut model = disk.model();
            model.take_up(root);
            for change in std::mem::take(&mut model.pending) {
                model.keep(&change);
            }
        }
        disk
    }

    /// What was done, in order: the operation, and the name within the root. What failed
    /// is among it.
    pub fn log(&self) -> Vec<(&'static str, String)> {
        self.model().log.clone()
    }

    fn model(&self) -> MutexGuard<'_, Model> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// How many operations there were.
    pub fn count(&self) -> usize {
        self.model().count
    }

    /// From now on nothing goes wrong.
    pub fn mend(&self) {
        let mut model = self.model();
        model.fault = None;
        model.no_space = false;
    }

    /// Write down what a power cut would leave now, in the empty folder `place`.
    pub fn after_power_cut(&self, place: &Path, names: Names, bytes: Bytes) {
        self.model().write_down(0, place, names, bytes);
    }
}

impl Model {
    /// Add what lies in a folder.
    fn take_up(&mut self, place: &Path) {
        for found in fs::read_dir(place).expect("a folder").flatten() {
            let path = found.path();
            if path.is_dir() {
                self.add(&path, folder());
                self.take_up(&path);
            } else {
                let bytes = fs::read(&path).expect("a file");
                self.add(
                    &path,
                    Thing::File(Contents {
                        shown: bytes.clone(),
                        kept: bytes,
                        fresh: Vec::new(),
                    }),
                );
            }
        }
    }

    fn within(&self, path: &Path) -> String {
        let within = path.strip_prefix(&self.root).unwrap_or(path);
        within.to_string_lossy().into_owned()
    }

    /// What goes wrong with the operation that is about to be done.
    fn wrong(&mut self, what: &'static str, path: &Path) -> Option<How> {
        let within = self.within(path);
        self.log.push((what, within));
        let at = self.count;
        self.count += 1;
        self.fault
            .filter(|f| at == f.at || (f.lasting && at > f.at))
            .map(|f| f.how)
    }

    fn find(&self, path: &Path) -> Option<Node> {
        let within = path.strip_prefix(&self.root).ok()?;
        let mut node = 0;
        for part in within {
            let Thing::Folder { shown, .. } = &self.things[node] else {
                return None;
            };
            node = *shown.get(part.to_str()?)?;
        }
        Some(node)
    }

    fn place(&self, path: &Path) -> Option<(Node, String)> {
        let name = path.file_name()?.to_str()?.to_string();
        Some((self.find(path.parent()?)?, name))
    }

    fn shown(&mut self, folder: Node) -> &mut BTreeMap<String, Node> {
        match &mut self.things[folder] {
            Thing::Folder { shown, .. } => shown,
            Thing::File(_) => panic!("a file is no folder"),
        }
    }

    fn add(&mut self, path: &Path, thing: Thing) -> Node {
        let node = self.things.len();
        self.things.push(thing);
        let (folder, name) = self.place(path).expect("within the root");
        self.shown(folder).insert(name.clone(), node);
        self.pending.push(Change {
            gone: None,
            come: Some((folder, name, node)),
        });
        node
    }

    fn file(&mut self, node: Node) -> &mut Contents {
        match &mut self.things[node] {
            Thing::File(contents) => contents,
            Thing::Folder { .. } => panic!("a folder is no file"),
        }
    }

    /// The names of this folder are safe, with all that changed together with them.
    fn names_kept(&mut self, of: Node) {
        let pending = std::mem::take(&mut self.pending);
        for change in pending {
            let gone = change.gone.as_ref().map(|(folder, _)| *folder);
            let come = change.come.as_ref().map(|(folder, ..)| *folder);
            if gone == Some(of) || come == Some(of) {
                self.keep(&change);
            } else {
                self.pending.push(change);
            }
        }
    }

    fn keep(&mut self, change: &Change) {
        if let Some((folder, name)) = &change.gone
            && let Thing::Folder { kept, .. } = &mut self.things[*folder]
        {
            kept.remove(name);
        }
        if let Some((folder, name, node)) = &change.come
            && let Thing::Folder { kept, .. } = &mut self.things[*folder]
        {
            kept.insert(name.clone(), *node);
        }
    }

    fn write_down(&self, node: Node, place: &Path, names: Names, bytes: Bytes) {
        match &self.things[node] {
            Thing::Folder { shown, kept } => {
                if !place.is_dir() {
                    fs::create_dir(place).expect("a folder");
                }
                let all = match names {
                    Names::Synced => kept,
                    Names::All => shown,
                };
                for (name, node) in all {
                    self.write_down(*node, &place.join(name), names, bytes);
                }
            }
            Thing::File(contents) => {
                let mut left = match bytes {
                    Bytes::Synced => contents.kept.clone(),
                    Bytes::Half | Bytes::All => contents.shown.clone(),
                };
                if bytes == Bytes::Half {
                    for (from, to) in &contents.fresh {
                        let to = (*to).min(left.len());
                        let middle = (from + to) / 2;
                        left[middle.min(to)..to].fill(0);
                    }
                }
                fs::write(place, left).expect("a file");
            }
        }
    }
}

impl Forgetful {
    /// Open a file that is there, or one just made, and see that the model has it.
    fn opened(model: &mut Model, path: &Path) -> Node {
        match model.find(path) {
            Some(node) => node,
            None => model.add(path, Thing::File(Contents::default())),
        }
    }
}

impl Disk for Forgetful {
    fn make_folder(&self, path: &DiskPath) -> io::Result<()> {
        let mut model = self.model();
        let wrong = model.wrong("make folder", path.as_ref());
        if let Some(How::Fails(number)) = wrong {
            return Err(failed(number));
        }
        DesktopDisk.make_folder(path)?;
        model.add(path.as_ref(), folder());
        match wrong {
            Some(How::Late(number)) => Err(failed(number)),
            _ => Ok(()),
        }
    }

    fn open(&self, path: &DiskPath, how: OpenMode) -> io::Result<Box<dyn DiskFile>> {
        let mut model = self.model();
        let wrong = model.wrong("open", path.as_ref());
        if let Some(How::Fails(number)) = wrong {
            return Err(failed(number));
        }
        let on = DesktopDisk.open(path, how)?;
        let node = Forgetful::opened(&mut model, path.as_ref());
        match wrong {
            Some(How::Late(number)) => Err(failed(number)),
            _ => Ok(Box::new(ForgetfulFile {
                disk: self.clone(),
                node,
                path: path.clone(),
                on,
            })),
        }
    }

    fn read(&self, path: &DiskPath, most: u64) -> io::Result<Vec<u8>> {
        match self.model().wrong("read", path.as_ref()) {
            Some(How::Fails(number) | How::Late(number)) => Err(failed(number)),
            _ => DesktopDisk.read(path, most),
        }
    }

    fn about(&self, path: &DiskPath) -> io::Result<About> {
        DesktopDisk.about(path)
    }

    fn list(&self, path: &DiskPath) -> io::Result<Vec<DiskPath>> {
        DesktopDisk.list(path)
    }

    fn lock(&self, path: &DiskPath) -> io::Result<Option<Box<dyn DiskLock>>> {
        let mut model = self.model();
        let wrong = model.wrong("lock", path.as_ref());
        if let Some(How::Fails(number)) = wrong {
            return Err(failed(number));
        }
        let lock = DesktopDisk.lock(path)?;
        Forgetful::opened(&mut model, path.as_ref());
        match wrong {
            Some(How::Late(number)) => Err(failed(number)),
            _ => Ok(lock),
        }
    }

    fn rename(&self, from: &DiskPath, to: &DiskPath) -> io::Result<()> {
        let mut model = self.model();
        let wrong = model.wrong("rename", to.as_ref());
        if let Some(How::Fails(number)) = wrong {
            return Err(failed(number));
        }
        DesktopDisk.rename(from, to)?;
        let (old, name) = model.place(from.as_ref()).expect("within the root");
        let (new, other) = model.place(to.as_ref()).expect("within the root");
        let node = model.shown(old).remove(&name).expect("it is there");
        model.shown(new).insert(other.clone(), node);
        model.pending.push(Change {
            gone: Some((old, name)),
            come: Some((new, other, node)),
        });
        match wrong {
            Some(How::Late(number)) => Err(failed(number)),
            _ => Ok(()),
        }
    }

    fn remove(&self, path: &DiskPath) -> io::Result<()> {
        let mut model = self.model();
        let wrong = model.wrong("remove", path.as_ref());
        if let Some(How::Fails(number)) = wrong {
            return Err(failed(number));
        }
        DesktopDisk.remove(path)?;
        let (folder, name) = model.place(path.as_ref()).expect("within the root");
        model.shown(folder).remove(&name);
        model.pending.push(Change {
            gone: Some((folder, name)),
            come: None,
        });
        match wrong {
            Some(How::Late(number)) => Err(failed(number)),
            _ => Ok(()),
        }
    }

    fn sync_folder(&self, path: &DiskPath) -> io::Result<()> {
        let mut model = self.model();
        let wrong = model.wrong("sync folder", path.as_ref());
        if let Some(How::Fails(number)) = wrong {
            return Err(failed(number));
        }
        DesktopDisk.sync_folder(path)?;
        // What lies above the root is not in the model.
        if let Some(node) = model.find(path.as_ref()) {
            model.names_kept(node);
        }
        match wrong {
            Some(How::Late(number)) => Err(failed(number)),
            _ => Ok(()),
        }
    }
}

/// A file that is open on such a disk.
#[derive(Debug)]
struct ForgetfulFile {
    disk: Forgetful,
    node: Node,
    /// What it was called when it was opened.
    path: DiskPath,
    on: Box<dyn DiskFile>,
}

impl DiskFile for ForgetfulFile {
    fn about(&self) -> io::Result<About> {
        self.on.about()
    }

    fn read_end(&mut self, most: u64) -> io::Result<Vec<u8>> {
        match self.disk.model().wrong("read end", self.path.as_ref()) {
            Some(How::Fails(number) | How::Late(number)) => Err(failed(number)),
            _ => self.on.read_end(most),
        }
    }

    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let mut model = self.disk.model();
        if model.no_space {
            model.no_space = false;
            return Err(io::ErrorKind::StorageFull.into());
        }
        let wrong = model.wrong("write", self.path.as_ref());
        let bytes = match wrong {
            Some(How::Fails(number)) => return Err(failed(number)),
            Some(How::Short) => {
                model.no_space = true;
                &bytes[..bytes.len() / 2]
            }
            _ => bytes,
        };
        let written = if bytes.is_empty() {
            0
        } else {
            self.on.write(bytes)?
        };
        let contents = model.file(self.node);
        let from = contents.shown.len();
        contents.shown.extend_from_slice(&bytes[..written]);
        contents.fresh.push((from, from + written));
        match wrong {
            Some(How::Late(number)) => Err(failed(number)),
            Some(How::Short) if written == 0 => Err(io::ErrorKind::StorageFull.into()),
            _ => Ok(written),
        }
    }

    fn sync(&mut self) -> io::Result<()> {
        let mut model = self.disk.model();
        let wrong = model.wrong("sync", self.path.as_ref());
        let forgets = model.fault.is_some_and(|fault| fault.forgets);
        let contents = model.file(self.node);
        if let Some(How::Fails(number)) = wrong {
            // What was written is dropped, and nobody will say so a second time.
            let dropped = std::mem::take(&mut contents.fresh);
            if forgets {
                let end = contents.shown.len();
                let shown = OpenOptions::new().write(true).open(&self.path)?;
                for (from, to) in dropped {
                    let to = to.min(end);
                    for i in from.min(to)..to {
                        contents.shown[i] = contents.kept.get(i).copied().unwrap_or(0);
                    }
                    shown.write_all_at(&contents.shown[from.min(to)..to], from.min(to) as u64)?;
                }
            }
            return Err(failed(number));
        }
        contents.kept.resize(contents.shown.len(), 0);
        for (from, to) in std::mem::take(&mut contents.fresh) {
            let to = to.min(contents.shown.len());
            if from < to {
                contents.kept[from..to].copy_from_slice(&contents.shown[from..to]);
            }
        }
        match wrong {
            Some(How::Late(number)) => Err(failed(number)),
            _ => Ok(()),
        }
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        let mut model = self.disk.model();
        let wrong = model.wrong("cut", self.path.as_ref());
        if let Some(How::Fails(number)) = wrong {
            return Err(failed(number));
        }
        self.on.cut(length)?;
        model.file(self.node).shown.resize(length as usize, 0);
        match wrong {
            Some(How::Late(number)) => Err(failed(number)),
            _ => Ok(()),
        }
    }
}

/// A disk under an app that is killed after so many operations: none that comes later is
/// done. Clones are the same disk.
#[derive(Debug, Clone)]
pub struct Killed {
    on: Forgetful,
    left: Arc<AtomicUsize>,
}

impl Killed {
    /// Killed after `left` operations on this disk.
    pub fn after(left: usize, on: &Forgetful) -> Killed {
        Killed {
            on: on.clone(),
            left: Arc::new(AtomicUsize::new(left)),
        }
    }

    /// Whether the app lives still.
    pub fn lives(&self) -> bool {
        self.left.load(Ordering::SeqCst) > 0
    }

    fn one(&self) -> io::Result<&Forgetful> {
        let less = |left: usize| left.checked_sub(1);
        let had = self
            .left
            .fetch_update(Ordering::SeqCst, Ordering::SeqCst, less);
        had.map(|_| &self.on).map_err(|_| failed(EIO))
    }
}

impl Disk for Killed {
    fn make_folder(&self, path: &DiskPath) -> io::Result<()> {
        self.one()?.make_folder(path)
    }

    fn open(&self, path: &DiskPath, how: OpenMode) -> io::Result<Box<dyn DiskFile>> {
        let on = self.one()?.open(path, how)?;
        let under = self.clone();
        Ok(Box::new(KilledFile { under, on }))
    }

    fn read(&self, path: &DiskPath, most: u64) -> io::Result<Vec<u8>> {
        self.one()?.read(path, most)
    }

    fn about(&self, path: &DiskPath) -> io::Result<About> {
        self.on.about(path)
    }

    fn list(&self, path: &DiskPath) -> io::Result<Vec<DiskPath>> {
        self.on.list(path)
    }

    fn lock(&self, path: &DiskPath) -> io::Result<Option<Box<dyn DiskLock>>> {
        self.one()?.lock(path)
    }

    fn rename(&self, from: &DiskPath, to: &DiskPath) -> io::Result<()> {
        self.one()?.rename(from, to)
    }

    fn remove(&self, path: &DiskPath) -> io::Result<()> {
        self.one()?.remove(path)
    }

    fn sync_folder(&self, path: &DiskPath) -> io::Result<()> {
        self.one()?.sync_folder(path)
    }
}

/// A file that is open under such an app.
#[derive(Debug)]
struct KilledFile {
    under: Killed,
    on: Box<dyn DiskFile>,
}

impl DiskFile for KilledFile {
    fn about(&self) -> io::Result<About> {
        self.on.about()
    }

    fn read_end(&mut self, most: u64) -> io::Result<Vec<u8>> {
        self.under.one()?;
        self.on.read_end(most)
    }

    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.under.one()?;
        self.on.write(bytes)
    }

    fn sync(&mut self) -> io::Result<()> {
        self.under.one()?;
        self.on.sync()
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        self.under.one()?;
        self.on.cut(length)
    }
}

/// A folder in memory where there is one: what is tried there does not wait for a disk.
pub fn quick() -> TempDir {
    let in_memory = tempfile::tempdir_in("/dev/shm");
    in_memory.unwrap_or_else(|_| tempfile::tempdir().expect("a folder"))
}

/// One test at a time: a child process of another, between its fork and its start, would
/// still hold a lock that was let go here.
pub fn alone() -> MutexGuard<'static, ()> {
    static ONE: Mutex<()> = Mutex::new(());
    ONE.lock().unwrap_or_else(PoisonError::into_inner)
}

/// What a maker does after the first thing that went wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Then {
    /// The app is closed and opened again.
    Reopens,
    /// The power goes.
    PowerGoes(Names, Bytes),
    /// She goes on with what she meant to do; then the power goes.
    GoesOn(Names, Bytes),
}

/// Each of `count` operations failing in each of these ways (their own `at` is not looked
/// at), and three of the nine ends for each, turn about, so that every operation is tried
/// with every end.
pub fn cases(count: usize, kinds: &[Fault]) -> Vec<(Fault, Then)> {
    let cuts = [
        (Names::Synced, Bytes::Synced),
        (Names::All, Bytes::Synced),
        (Names::All, Bytes::Half),
        (Names::Synced, Bytes::All),
    ];
    let mut thens = vec![Then::Reopens];
    thens.extend(cuts.map(|(names, bytes)| Then::PowerGoes(names, bytes)));
    thens.extend(cuts.map(|(names, bytes)| Then::GoesOn(names, bytes)));
    let mut all = Vec::new();
    for at in 0..count {
        for (k, kind) in kinds.iter().enumerate() {
            for third in [0, 3, 6] {
                let then = thens[(at + k + third) % thens.len()];
                all.push((Fault { at, ..*kind }, then));
            }
        }
    }
    all
}

/// Problems told, by code, and how often.
pub type Told = BTreeMap<String, usize>;

/// Play half of the cases on each of two threads: how many were met, and what was told.
pub fn in_halves(
    cases: &[(Fault, Then)],
    play: impl Fn(Fault, Then, &mut Told) -> bool + Sync,
) -> (usize, Told) {
    let halves = cases.split_at(cases.len() / 2);
    let sums = std::thread::scope(|scope| {
        let two = [halves.0, halves.1].map(|half| {
            let play = &play;
            scope.spawn(move || {
                let mut output = Told::new();
                let met = half
                    .iter()
                    .filter(|(fault, then)| play(*fault, *then, &mut output));
                (met.count(), output)
            })
        });
        two.map(|one| one.join().expect("a half is played"))
    });
    let mut all = Told::new();
    let mut met = 0;
    for (half, output) in sums {
        met += half;
        for (code, n) in output {
            *all.entry(code).or_default() += n;
        }
    }
    (met, all)
}
