//! Photos kept, files handed out and brought in, old files brought up to this version:
//! each operation on the disk made to fail, the power cut, the app killed.
//!
//! A scene is some steps at a service. It is first played on a disk that does not fail, which
//! says what lies in the folder after each step; then once for every fault. Whatever
//! happens, what is found afterwards must be what lay there before or after the step that
//! met the fault, with everything acknowledged; what was told to have failed says where;
//! no file stands half written under its final name; and work goes on from there.
//!
//! The orders of syncs that hold this up are read off in [`the_order_of_it`].

use image::{ImageFormat, Rgb, RgbImage};
use lapwork_core::log::journal::Journal;
use lapwork_core::show::{Hello, ImportChoice, Request, ShelfCommand};
use lapwork_core::throw::Time;
use lapwork_core::words::Problem;
use lapwork_service::desktop::{self, DesktopDisk};
use lapwork_service::disk::{Disk, DiskPath};
use lapwork_service::export::{ExportFile, write, write_into};
use lapwork_service::import::read_throw;
use lapwork_service::photos;
use lapwork_service::service::Service;
use lapwork_service::store::{Place, ThrowId};
use lapwork_tests::forgetful::{
    Bytes, EIO, ENOSPC, EROFS, Fault, Forgetful, How, Killed, Names, Then, Told, alone, cases,
    in_halves, quick,
};
use lapwork_tests::maker::{Chance, beginning, done, entries, note};
use lapwork_tests::served::{serve, serve_on};
use lapwork_tests::tapped::Tapped;
use rustix::process::{Pid, Signal, kill_process};
use serde_json::json;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::io::{self, BufRead as _, BufReader, Cursor, Write as _};
use std::path::{Path, PathBuf};
use std::process::{self, Stdio};
use std::sync::Arc;
use std::sync::LazyLock;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::time::Duration;

#[path = "keeping/faults.rs"]
mod faults;
#[path = "keeping/killed.rs"]
mod killed;
#[path = "keeping/left_photos.rs"]
mod left_photos;
#[path = "keeping/order.rs"]
mod order;
#[path = "keeping/sessions.rs"]
mod sessions;
#[path = "keeping/torn.rs"]
mod torn;

const START: Time = 1_773_000_000_000;

fn act(asked: serde_json::Value) -> Request {
    let action = serde_json::from_value(asked).unwrap();
    Request::Act { action }
}

/// A photo made fit to keep, unlike any other number's.
fn photo(n: u64) -> Vec<u8> {
    let picture = RgbImage::from_fn(24, 18, |x, y| {
        Rgb([(x * 9) as u8 ^ n as u8, (y * 13) as u8, (n * 40) as u8])
    });
    let mut out = Cursor::new(Vec::new());
    picture.write_to(&mut out, ImageFormat::Png).unwrap();
    photos::shrink(out.get_ref()).unwrap()
}

static PHOTOS: LazyLock<Vec<Vec<u8>>> = LazyLock::new(|| (0..40).map(photo).collect());

fn hash(bytes: &[u8]) -> String {
    photos::name(bytes).unwrap().as_str().to_string()
}

fn picture(n: usize) -> Request {
    act(json!({
        "do": "picture", "photo": hash(&PHOTOS[n]), "words": format!("No. {n}"),
        "piece": [0, 0, 1, 1], "task": "cut",
    }))
}

fn record(name: &str, more: &[Request]) -> Journal {
    let (mut journal, _) = Journal::begin(&beginning(name, 2, 2), START).unwrap();
    for (n, request) in more.iter().enumerate() {
        assert!(
            done(&mut journal, request, START + n as Time),
            "{request:?}"
        );
    }
    journal
}

fn kept(name: &str) -> Vec<u8> {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
    fs::read(tests.join("kept").join(name)).unwrap()
}

/// What a maker would miss: her records, their photos, the files she handed out.
#[derive(Clone, PartialEq, Eq, Default)]
struct Lies {
    /// Each throw's version on the disk and its entries, by name.
    throws: BTreeMap<String, (u32, String)>,
    /// Photos by throw and hash.
    photos: BTreeSet<(String, String)>,
    /// Files handed out.
    out: BTreeMap<String, Vec<u8>>,
    /// Copies kept beside a throw: what sort, and their bytes.
    beside: BTreeSet<(String, Vec<u8>)>,
}

impl std::fmt::Debug for Lies {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        for (name, (version, text)) in &self.throws {
            let last = text.lines().last().unwrap_or_default();
            let count = text.lines().count();
            writeln!(f, "  {name}: version {version}, {count} entries, {last}")?;
        }
        for (name, photo) in &self.photos {
            writeln!(f, "  {name}: photo {}", &photo[..8])?;
        }
        for (name, bytes) in &self.out {
            writeln!(f, "  out/{name}: {} bytes", bytes.len())?;
        }
        for (sort, bytes) in &self.beside {
            writeln!(f, "  beside, {sort}: {} bytes", bytes.len())?;
        }
        Ok(())
    }
}

impl Lies {
    /// Copies beside a throw may be more than were meant: they only take up room. An old
    /// file may be brought up later, with what was added to it meanwhile; see [`backed`].
    fn is(&self, meant: &Lies) -> bool {
        let entries = |lies: &Lies| -> Vec<(String, String)> {
            let throws = lies.throws.iter();
            throws
                .map(|(name, (_, entries))| (name.clone(), entries.clone()))
                .collect()
        };
        let mut copies = meant.beside.iter().filter(|(sort, _)| sort != "version");
        entries(self) == entries(meant)
            && self.photos == meant.photos
            && self.out == meant.out
            && copies.all(|copy| self.beside.contains(copy))
    }
}

/// A file brought up to this version lies beside as it was, with all that was in it.
fn backed(lies: &Lies, old: &[u8], what: &str) {
    let mut copies = lies.beside.iter().filter(|(sort, _)| sort == "version");
    let up = lies.throws.values().all(|(version, _)| *version == 2);
    assert!(
        !up || copies.any(|(_, copy)| copy.starts_with(old)),
        "{what}: {lies:?}"
    );
    for (_, copy) in lies.beside.iter().filter(|(sort, _)| sort == "version") {
        let read = Journal::read(copy).unwrap();
        assert!(!read.torn && !read.lacks_newline, "{what}: half a copy");
        assert!(copy.starts_with(old), "{what}: half a copy");
    }
}

/// Query through a data folder; half a file under a final name is a failure.
fn lies(root: &Path, what: &str) -> Lies {
    let mut lies = Lies::default();
    let data = root.join("data");
    let store = desktop::store(data.clone());
    for place in [Place::Throws, Place::Deleted] {
        for id in store.ids(place).unwrap() {
            let file = store.throw_file(place, &id);
            let bytes = fs::read(&file).unwrap();
            let read = Journal::read(&bytes).unwrap_or_else(|how| panic!("{what}: {how:?}"));
            let name = read.journal.throw().name.clone();
            let folder = file.parent().unwrap();
            for found in fs::read_dir(&folder).unwrap().flatten() {
                let called = found.file_name().into_string().unwrap();
                let Some(copy) = called.strip_prefix("throw.jsonl.") else {
                    continue;
                };
                if copy != "new" && !copy.ends_with(".new") {
                    let sort = copy.split('-').next().unwrap().to_string();
                    let bytes = fs::read(found.path()).unwrap();
                    lies.beside.insert((sort, bytes));
                }
            }
            for found in fs::read_dir(folder.join("photos")).into_iter().flatten() {
                let path = found.unwrap().path();
                if path.extension().is_some_and(|ending| ending == "jpg") {
                    let bytes = fs::read(&path).unwrap();
                    let stem = path.file_stem().unwrap().to_str().unwrap();
                    assert_eq!(hash(&bytes), stem, "{what}: half a photo");
                    lies.photos.insert((name.clone(), stem.to_string()));
                }
            }
            let other = lies
                .throws
                .insert(name, (read.version, entries(&read.journal)));
            assert!(other.is_none(), "{what}: a throw is there twice");
        }
    }
    for found in fs::read_dir(root.join("out")).into_iter().flatten() {
        let path = found.unwrap().path();
        let name = path.file_name().unwrap().to_str().unwrap().to_string();
        if !name.starts_with('.') {
            lies.out.insert(name, fs::read(&path).unwrap());
        }
    }
    lies
}

/// Where a step is taken.
struct Stage<'a> {
    service: &'a mut Service,
    disk: &'a dyn Disk,
    root: &'a Path,
}

type Step = Box<dyn Fn(&mut Stage<'_>) -> Result<(), Problem> + Sync>;

struct Scene {
    name: &'static str,
    /// The throw's file of an older version, if it is about one.
    old: Option<Vec<u8>>,
    /// What is there before, on a disk that is well.
    lay: Box<dyn Fn(&Path) + Sync>,
    steps: Vec<Step>,
}

fn lay(root: &Path, id: &str, bytes: &[u8]) {
    let folder = root.join("data/throws").join(id);
    fs::create_dir_all(&folder).unwrap();
    fs::create_dir_all(root.join("data/deleted")).unwrap();
    fs::write(folder.join("throw.jsonl"), bytes).unwrap();
}

fn acts(id: &'static str, request: Request, at: Time) -> Step {
    Box::new(move |stage| stage.service.act(id, &request, at).map(|_| ()))
}

fn keeps(id: &'static str, n: usize) -> Step {
    Box::new(move |stage| {
        let bytes = Ok(PHOTOS[n].clone());
        stage.service.keep_photo(id, bytes, START).map(|_| ())
    })
}

/// Bring the file `name` of the root, and do this with it.
fn brings(name: &'static str, take: ImportChoice) -> Step {
    Box::new(move |stage| {
        let found = read_throw(stage.disk, &stage.root.join(name).into());
        let file = stage.service.import(found, START)?.file;
        stage
            .service
            .decide_import(&take, file, START + 77)
            .map(|_| ())
    })
}

fn hands(parcels: Vec<(&'static str, Vec<u8>)>) -> Step {
    Box::new(move |stage| {
        for (name, bytes) in &parcels {
            let path = DiskPath::from(stage.root.join("out").join(name));
            let put = write(stage.disk, &path, bytes);
            stage.service.exported(put.map(|()| vec![path]))?;
        }
        Ok(())
    })
}

fn scenes() -> Vec<Scene> {
    let shared = || record("Shared", &[note("one"), note("two")]);
    let with = |more: &[Request]| {
        let mut journal = shared();
        for (n, request) in more.iter().enumerate() {
            assert!(done(&mut journal, request, START + 50 + n as Time));
        }
        journal
    };
    let here = with(&[act(json!({"do": "rename", "name": "Shared"})), note("here")]);
    let apart = with(&[
        note("there"),
        act(json!({"do": "count-spares", "spares": 4})),
    ]);
    let more = with(&[note("more")]);
    let other = record("Other", &[note("by itself")]);
    let put = |root: &Path, name: &str, bytes: &[u8]| fs::write(root.join(name), bytes).unwrap();
    let old = kept("throw-1.jsonl");
    let large = kept("throw-2.jsonl");
    vec![
        Scene {
            name: "keeping photos and putting them to a step",
            old: None,
            lay: Box::new(|root| lay(root, "a", record("A", &[]).text().as_bytes())),
            steps: vec![
                keeps("a", 0),
                acts("a", picture(0), START),
                keeps("a", 1),
                acts("a", picture(1), START),
                keeps("a", 0),
                acts("a", Request::Undo, START),
                acts("a", note("on"), START),
            ],
        },
        Scene {
            name: "bringing up an old file",
            old: Some(old.clone()),
            lay: Box::new(move |root| lay(root, "old", &old)),
            steps: vec![
                Box::new(|stage| {
                    stage.service.shelf(START);
                    Ok(())
                }),
                acts("old", note("on"), START),
            ],
        },
        Scene {
            name: "taking in a file",
            old: None,
            lay: Box::new(move |root| {
                lay(root, "a", record("A", &[]).text().as_bytes());
                put(root, "other", other.text().as_bytes());
            }),
            steps: vec![
                brings("other", ImportChoice::Add),
                acts("a", note("on"), START),
                brings("other", ImportChoice::KeepBoth),
            ],
        },
        Scene {
            name: "taking a copy that has more",
            old: None,
            lay: Box::new(move |root| {
                lay(root, "a", shared().text().as_bytes());
                put(root, "more", more.text().as_bytes());
            }),
            steps: vec![
                brings("more", ImportChoice::TakeBrought),
                acts("a", note("on"), START),
            ],
        },
        Scene {
            name: "merging two copies",
            old: None,
            lay: Box::new(move |root| {
                lay(root, "a", here.text().as_bytes());
                put(root, "apart", apart.text().as_bytes());
            }),
            steps: vec![
                brings("apart", ImportChoice::Merge { brought: vec![] }),
                acts("a", note("on"), START),
            ],
        },
        Scene {
            name: "handing files out",
            old: None,
            lay: Box::new(|root| {
                lay(root, "a", record("A", &[]).text().as_bytes());
                fs::create_dir(root.join("out")).unwrap();
                fs::write(root.join("out/A.pdf"), "an old sheet").unwrap();
            }),
            steps: vec![
                hands(vec![("A.jsonl", large.clone())]),
                hands(vec![("A.pdf", large.clone())]),
                hands(vec![("front.svg", b"<svg/>".to_vec())]),
                Box::new(move |stage| {
                    let file = |name: &str| ExportFile {
                        name: name.to_string(),
                        bytes: large.clone(),
                    };
                    let files = [file("A.jsonl")];
                    let put = write_into(stage.disk, &stage.root.join("out").into(), &files);
                    stage.service.exported(put).map(|_| ())
                }),
            ],
        },
    ]
}

/// Before anything is done the shelf is looked at, as the window does.
fn open(root: &Path, disk: &(impl Disk + Clone + 'static)) -> Service {
    let mut service = serve_on(root.join("data"), disk.clone());
    let _ = service.hello(START);
    service
}

const PART: &str = "LAPWORK_PART";
