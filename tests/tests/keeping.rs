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
    for (n, deed) in more.iter().enumerate() {
        assert!(done(&mut journal, deed, START + n as Time), "{deed:?}");
    }
    journal
}

fn kept(name: &str) -> Vec<u8> {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
    fs::read(tests.join("kept").join(name)).unwrap()
}

// ── What lies in a folder ────────────────────────────────────────────────────

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

// ── Scenes ───────────────────────────────────────────────────────────────────

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

fn acts(id: &'static str, deed: Request, at: Time) -> Step {
    Box::new(move |stage| stage.service.act(id, &deed, at).map(|_| ()))
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
        for (n, deed) in more.iter().enumerate() {
            assert!(done(&mut journal, deed, START + 50 + n as Time));
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

/// The scene on a disk that is well: what lies there after each step, how many operations
/// opening the folder took, and how many there were.
fn rehearsed(scene: &Scene) -> (Vec<Lies>, usize, usize) {
    let folder = quick();
    let root = folder.path();
    (scene.lay)(root);
    let disk = Forgetful::over(root, None);
    let mut all = vec![lies(root, scene.name)];
    let mut service = open(root, &disk);
    let opened = disk.count();
    for (n, step) in scene.steps.iter().enumerate() {
        let mut stage = Stage {
            service: &mut service,
            disk: &disk,
            root,
        };
        step(&mut stage).unwrap_or_else(|why| panic!("{}, step {n}: {why:?}", scene.name));
        all.push(lies(root, scene.name));
    }
    (all, opened, disk.count())
}

/// Open what is left on a disk that is well, see that it may be so, write, open again.
fn goes_on(
    root: &Path,
    scene: &Scene,
    may_be: &[&Lies],
    copies: &BTreeSet<(String, Vec<u8>)>,
    what: &str,
) {
    let found = lies(root, what);
    let fits = may_be.iter().any(|meant| found.is(meant));
    assert!(fits, "{what}\nfound {found:#?}\nmay be {may_be:#?}");
    if let Some(old) = &scene.old {
        backed(&found, old, what);
    }
    for copy in &found.beside {
        let (sort, bytes) = copy;
        let whole = match sort.as_str() {
            "version" => continue,
            // Of what the failed disk left of the file, whatever that was.
            "torn" => Journal::read(bytes).is_ok_and(|read| read.torn),
            _ => copies.contains(copy),
        };
        assert!(whole, "{what}: half a copy, {sort}");
    }
    let mut service = serve(root.join("data"));
    let hello = service.hello(START);
    assert_eq!(hello.problem, None, "{what}");
    for row in &hello.shelf.rows {
        assert!(row.head.is_some(), "{what}: {row:?}");
        let head = service.act(&row.id, &note("going on"), START).unwrap();
        drop(service);
        service = serve(root.join("data"));
        assert_eq!(service.hello(START).problem, None, "{what}");
        let id = ThrowId::parse(&row.id).unwrap();
        let again = desktop::store(root.join("data"))
            .read(Place::Throws, &id)
            .unwrap();
        assert_eq!(again.journal.len() as u32, head.entry, "{what}");
    }
    let after = lies(root, what);
    // An old file was brought up now at the latest.
    assert!(
        after.throws.values().all(|(version, _)| *version == 2),
        "{what}"
    );
    if let Some(old) = &scene.old {
        backed(&after, old, what);
    }
    assert_eq!(after.photos, found.photos, "{what}");
    assert_eq!(after.out, found.out, "{what}");
}

/// Play a scene with one fault; whether it was met.
fn play(scene: &Scene, (meant, fault, then): (&[Lies], Fault, Then), told: &mut Told) -> bool {
    let what = format!("{}: {fault:?} {then:?}", scene.name);
    let (folder, left) = (quick(), quick());
    let root = folder.path();
    (scene.lay)(root);
    let disk = Forgetful::over(root, Some(fault));
    let mut service = open(root, &disk);
    let mut may_be: Vec<&Lies> = vec![&meant[0], &meant[1]];
    for (n, step) in scene.steps.iter().enumerate() {
        let mut stage = Stage {
            service: &mut service,
            disk: &disk,
            root,
        };
        let taken = step(&mut stage);
        let (before, after) = (&meant[n], &meant[n + 1]);
        match taken {
            Ok(()) => may_be = vec![after],
            Err(problem) => {
                assert!(
                    problem.said.len() > 10 && problem.next.len() > 10,
                    "{problem:?}"
                );
                if ["disk", "unsure"].contains(&problem.code.as_str()) {
                    let place = root.to_str().unwrap();
                    assert!(problem.said.contains(place), "{what}: where? {problem:?}");
                }
                *told.entry(problem.code).or_default() += 1;
                may_be = vec![before, after];
            }
        }
        let now = lies(root, &what);
        let fits = may_be.iter().any(|meant| now.is(meant));
        assert!(fits, "{what}, step {n}\nfound {now:#?}\nmay be {may_be:#?}");
        if may_be.len() == 1 {
            continue;
        }
        if !matches!(then, Then::GoesOn(..)) {
            break;
        }
        disk.mend();
        // What she sees is not done, or was told is not safe, she does once more.
        let mut stage = Stage {
            service: &mut service,
            disk: &disk,
            root,
        };
        if !now.is(after) {
            let again = step(&mut stage);
            assert!(again.is_ok(), "{what}, step {n}: {again:?}");
            may_be = vec![after];
        }
    }
    let met = disk.count() > fault.at;
    drop(service);
    let copies: BTreeSet<(String, Vec<u8>)> =
        meant.iter().flat_map(|lies| lies.beside.clone()).collect();
    match then {
        Then::Reopens => goes_on(root, scene, &may_be, &copies, &what),
        Then::PowerGoes(names, bytes) | Then::GoesOn(names, bytes) => {
            disk.after_power_cut(left.path(), names, bytes);
            goes_on(left.path(), scene, &may_be, &copies, &what);
        }
    }
    met
}

#[test]
fn a_fault_at_every_operation_with_photos_and_files() {
    let _alone = alone();
    let plain = Fault {
        at: 0,
        how: How::Fails(EIO),
        lasting: false,
        forgets: false,
    };
    let with = |how, lasting, forgets| Fault {
        how,
        lasting,
        forgets,
        ..plain
    };
    let kinds = [
        plain,
        with(How::Fails(EIO), false, true),
        with(How::Fails(EIO), true, false),
        with(How::Fails(ENOSPC), false, false),
        with(How::Fails(EROFS), true, false),
        with(How::Late(EIO), false, false),
        with(How::Late(EIO), true, false),
        with(How::Short, false, false),
    ];
    let mut all = 0;
    for (n, scene) in scenes().into_iter().enumerate() {
        let (meant, opened, count) = rehearsed(&scene);
        // Opening the folder is the same in each scene, but where an old file is brought up.
        let from = if n > 0 && scene.old.is_none() {
            opened
        } else {
            0
        };
        let mut cases = cases(count, &kinds);
        cases.retain(|(fault, _)| fault.at >= from);
        let count = count - from;
        let (met, told) = in_halves(&cases, |fault, then, told| {
            play(&scene, (&meant, fault, then), told)
        });
        println!(
            "{}: a fault at each of {count} operations, {} cases, {met} met, told {told:?}, lost: 0",
            scene.name,
            cases.len()
        );
        assert!(met * 10 > cases.len() * 8, "{}", scene.name);
        all += cases.len();
    }
    println!("in all {all} cases");
}

// ── Another life ─────────────────────────────────────────────────────────────

/// After a life that ended badly: opened again on the same disk, which is well, worked on,
/// and then the power goes. All that was acknowledged is there; and all that was shown, unless
/// a sync had failed (`told` of then), after which the next may say that all is well when it
/// is not.
fn lives_on(root: &Path, disk: &Forgetful, told: bool, what: &str) {
    let entries = |hello: &Hello| -> BTreeMap<String, u32> {
        let rows = hello.shelf.rows.iter();
        rows.filter_map(|row| Some((row.id.clone(), row.head.as_ref()?.entry)))
            .collect()
    };
    let after_the_cut = |acted: &BTreeMap<String, u32>| {
        let left = quick();
        disk.after_power_cut(left.path(), Names::Synced, Bytes::Synced);
        let mut service = serve(left.path().join("data"));
        let hello = service.hello(START);
        assert_eq!(hello.problem, None, "{what}");
        let found = entries(&hello);
        for (id, entry) in acted {
            assert_eq!(found.get(id), Some(entry), "{what}: throw {id}");
            // And it can be worked on.
            service.act(id, &note("once more"), START + 300).unwrap();
        }
    };
    let mut service = open(root, disk);
    let hello = service.hello(START);
    assert_eq!(hello.problem, None, "{what}");
    let mut acted = entries(&hello);
    if !told {
        after_the_cut(&acted);
    }
    for (id, entry) in &mut acted {
        for n in 0..3 {
            let done = service.act(id, &note("acknowledged"), START + 100 + n);
            *entry = done.unwrap_or_else(|why| panic!("{what}: {why:?}")).entry;
        }
    }
    drop(service);
    after_the_cut(&acted);
}

/// Nothing but a deed, in a folder that is there and in one that is not.
fn plain_scenes() -> Vec<Scene> {
    let begin = || -> Step {
        Box::new(|stage| {
            let action = beginning("New", 2, 2);
            stage
                .service
                .tend(
                    &ShelfCommand::Begin {
                        action,
                        pile: Vec::new(),
                    },
                    START,
                )
                .map(|_| ())
        })
    };
    vec![
        Scene {
            name: "a throw begun where nothing was",
            old: None,
            lay: Box::new(|_| {}),
            steps: vec![begin()],
        },
        Scene {
            name: "a throw begun beside another",
            old: None,
            lay: Box::new(|root| lay(root, "a", record("A", &[]).text().as_bytes())),
            steps: vec![begin(), acts("a", note("one"), START)],
        },
        Scene {
            name: "a torn end left out",
            old: None,
            lay: Box::new(|root| {
                let whole = record("A", &[note("one")]).text();
                lay(root, "a", &whole.as_bytes()[..whole.len() - 9]);
            }),
            steps: vec![acts("a", note("on"), START)],
        },
    ]
}

#[test]
fn what_a_life_that_ended_badly_left_is_on_the_disk_before_it_is_shown() {
    let _alone = alone();
    let cases = AtomicUsize::new(0);
    // A life with this fault, or killed after so many operations; whether it lived to its
    // end, and how many operations it took.
    let life = |scene: &Scene, fault: Option<Fault>, left: usize| {
        let folder = quick();
        let root = folder.path();
        (scene.lay)(root);
        let disk = Forgetful::over(root, fault);
        let killed = Killed::after(left, &disk);
        let mut service = open(root, &killed);
        for step in &scene.steps {
            let mut stage = Stage {
                service: &mut service,
                disk: &killed,
                root,
            };
            if step(&mut stage).is_err() {
                break;
            }
        }
        drop(service);
        let count = disk.count();
        disk.mend();
        let what = format!("{}: {fault:?}, killed after {left}", scene.name);
        lives_on(root, &disk, fault.is_some(), &what);
        cases.fetch_add(1, Ordering::SeqCst);
        (killed.lives(), count)
    };
    let play = |scene: &Scene| {
        let (_, count) = life(scene, None, usize::MAX);
        // Killed after each of its operations.
        for at in 0..=count {
            assert_eq!(life(scene, None, at), (at > count, at), "{}", scene.name);
        }
        // Or closed after any of them had failed, and opened again as one is told to.
        let kinds = [
            (How::Fails(EIO), false),
            (How::Fails(EIO), true),
            (How::Late(EIO), false),
        ];
        for (at, (how, lasting)) in (0..count).flat_map(|at| kinds.map(|kind| (at, kind))) {
            let fault = Fault {
                at,
                how,
                lasting,
                forgets: false,
            };
            life(scene, Some(fault), usize::MAX);
        }
        println!(
            "{}: killed or failed at each of {count} operations",
            scene.name
        );
    };
    let all: Vec<Scene> = plain_scenes().into_iter().chain(scenes()).collect();
    let next = AtomicUsize::new(0);
    std::thread::scope(|scope| {
        for _ in 0..2 {
            scope.spawn(|| {
                while let Some(scene) = all.get(next.fetch_add(1, Ordering::SeqCst)) {
                    play(scene);
                }
            });
        }
    });
    let cases = cases.into_inner();
    println!("in all {cases} lives that ended badly, then worked on, then a power cut; lost: 0");
    assert!(cases > 1_000);
}

// ── The order ────────────────────────────────────────────────────────────────

/// Where in the log this was done, first of all.
fn when(log: &[(&'static str, String)], what: &str, name: impl Fn(&str) -> bool) -> usize {
    let found = log.iter().position(|(did, to)| *did == what && name(to));
    found.unwrap_or_else(|| panic!("no {what} among {log:#?}"))
}

/// A file's bytes are on the disk before it gets its name, and its name before anything is
/// acknowledged; a copy has both before the throw's own file is touched.
#[test]
fn the_order_of_it() {
    let _alone = alone();
    let mut seen = 0;
    for scene in scenes() {
        let folder = quick();
        let root = folder.path();
        (scene.lay)(root);
        let disk = Forgetful::over(root, None);
        let mut service = open(root, &disk);
        let mut from = 0;
        for step in &scene.steps {
            let mut stage = Stage {
                service: &mut service,
                disk: &disk,
                root,
            };
            step(&mut stage).unwrap();
            let all = disk.log();
            // An old file is brought up while the shelf is looked at.
            let log = &all[from..];
            from = all.len();
            for (n, (did, to)) in log.iter().enumerate() {
                let above = |name: &str| match name.rsplit_once('/') {
                    Some((above, _)) => above.to_string(),
                    None => String::new(),
                };
                match *did {
                    // Written, so synced, before the next thing is done to any name.
                    "write" => {
                        let then = log[n..].iter().find(|(did, _)| *did != "write");
                        assert_eq!(
                            then,
                            Some(&("sync", to.clone())),
                            "{}: {log:#?}",
                            scene.name
                        );
                    }
                    "rename" | "make folder" => {
                        let next = &log[n + 1..];
                        let synced = next
                            .iter()
                            .position(|(did, at)| *did == "sync folder" && *at == above(to));
                        assert!(synced.is_some(), "{}: {to}, {log:#?}", scene.name);
                        seen += 1;
                    }
                    _ => {}
                }
            }
            let own = |to: &str| to.ends_with("throw.jsonl");
            let copies: Vec<usize> = (0..log.len())
                .filter(|n| {
                    let (did, to) = &log[*n];
                    let copy = to.contains("throw.jsonl.") && !to.ends_with("throw.jsonl.new");
                    *did == "open" && copy
                })
                .collect();
            for copy in copies {
                let replaced = log[copy..]
                    .iter()
                    .position(|(did, to)| *did == "rename" && own(to));
                let replaced = copy + replaced.expect("a copy is kept because of this");
                let synced = log[copy..replaced]
                    .iter()
                    .any(|(did, _)| *did == "sync folder");
                assert!(synced, "{}: {log:#?}", scene.name);
                seen += 1;
            }
        }
    }
    // An entry: the file's end is read, the entry written and synced, and its end read back,
    // and nothing else; before the first of this life the file is
    // written anew.
    let folder = quick();
    lay(folder.path(), "a", record("A", &[]).text().as_bytes());
    let disk = Forgetful::over(folder.path(), None);
    let mut service = open(folder.path(), &disk);
    let from = disk.count();
    service.act("a", &note("one"), START).unwrap();
    let second = disk.count();
    service.act("a", &note("two"), START).unwrap();
    let log = disk.log();
    let did = |log: &[(&'static str, String)]| log.iter().map(|(did, _)| *did).collect::<Vec<_>>();
    let anew = [
        "read",
        "remove",
        "open",
        "write",
        "sync",
        "rename",
        "sync folder",
        "sync folder",
    ];
    let first = did(&log[from..second]);
    // The file is known to be the one that was written, by all of it the first time.
    let known = ["open", "read end", "read"];
    let added = ["write", "sync", "read end"];
    assert_eq!(first, [&anew[..], &known, &added].concat());
    assert_eq!(did(&log[second..]), [&known[..2], &added].concat());
    let made = when(&log, "sync folder", |to| to == "data");
    assert!(made < from, "the lock's name");
    println!("the order of {seen} changes of names: each as it must be");
    assert!(seen > 20);
}

// ── A torn throw ─────────────────────────────────────────────────────────────

#[test]
fn a_torn_throw_is_mended_before_another_takes_its_place() {
    let _alone = alone();
    let folder = quick();
    let root = folder.path();
    let whole = record("A", &[note("one")]).text().into_bytes();
    let torn = &whole[..whole.len() - 5];
    lay(root, "a", torn);
    let file = root.join("data/throws/a/throw.jsonl");
    let full = Arc::new(AtomicBool::new(true));
    let is_full = Arc::clone(&full);
    let disk = Tapped::with(move || match is_full.load(Ordering::SeqCst) {
        true => Err(io::ErrorKind::StorageFull.into()),
        false => Ok(()),
    });
    let mut service = serve_on(root.join("data"), disk);
    let row = service.hello(START).shelf.rows[0].clone();
    assert_eq!(row.problem.map(|p| p.code).as_deref(), Some("torn-left"));
    let brought = root.join("brought");
    fs::write(&brought, &whole).unwrap();
    let found = read_throw(&DesktopDisk, &brought.into());
    let view = service.import(found, START).unwrap();
    assert_eq!(view.buttons[0].take, ImportChoice::TakeBrought);
    let take =
        |service: &mut Service| service.decide_import(&ImportChoice::TakeBrought, view.file, START);
    assert_eq!(take(&mut service).unwrap_err().code, "torn-left");
    let refused = service.act("a", &note("later"), START).unwrap_err();
    assert_eq!(refused.code, "torn-left");
    assert_eq!(fs::read(&file).unwrap(), torn, "untouched so far");
    full.store(false, Ordering::SeqCst);
    take(&mut service).unwrap();
    let beside = fs::read_dir(file.parent().unwrap()).unwrap();
    let mut beside = beside.map(|found| fs::read(found.unwrap().path()).unwrap());
    assert!(beside.any(|bytes| bytes == torn), "the torn file is kept");
    assert_eq!(fs::read(&file).unwrap(), whole);
    assert!(service.act("a", &note("later"), START).is_ok());
}

// ── Photos chosen and left, and sweeping ─────────────────────────────────────

#[test]
fn photos_chosen_and_left_are_swept_and_no_others() {
    let _alone = alone();
    let folder = quick();
    let root = folder.path();
    lay(root, "a", record("A", &[]).text().as_bytes());
    let mut service = serve(root.join("data"));
    let photos = root.join("data/throws/a/photos");
    let keep =
        |service: &mut Service, n: usize| service.keep_photo("a", Ok(PHOTOS[n].clone()), START);
    let names = || -> BTreeSet<String> {
        let found = fs::read_dir(&photos).unwrap().flatten();
        found
            .map(|found| found.file_name().into_string().unwrap())
            .collect()
    };
    let called = |n: usize| format!("{}.jpg", hash(&PHOTOS[n]));
    keep(&mut service, 0).unwrap();
    service.act("a", &picture(0), START).unwrap();
    service.act("a", &Request::Undo, START).unwrap();
    keep(&mut service, 1).unwrap();
    // Half of one, from an app that died; and what is none of ours.
    fs::write(photos.join(format!("{}.new", called(5))), "half").unwrap();
    fs::write(photos.join("mine.txt"), "mine").unwrap();
    keep(&mut service, 2).unwrap();
    let meant = [called(0), called(2), "mine.txt".to_string()];
    assert_eq!(names(), BTreeSet::from(meant));
    // One whose bytes went bad is written anew.
    fs::write(photos.join(called(2)), "bad").unwrap();
    service.act("a", &picture(2), START).unwrap();
    keep(&mut service, 2).unwrap();
    assert_eq!(fs::read(photos.join(called(2))).unwrap(), PHOTOS[2]);
}

// ── Kills ────────────────────────────────────────────────────────────────────

const PART: &str = "LAPWORK_PART";

/// Keeps photos, puts them to a step, takes in files and hands some out, saying so after
/// each, until it is killed.
#[test]
fn part_keeper() {
    let _alone = alone();
    let Some(root) = std::env::var_os(PART).map(PathBuf::from) else {
        return;
    };
    let say = |line: String| {
        let mut out = std::io::stdout().lock();
        out.write_all(format!("{line}\n").as_bytes()).unwrap();
        out.flush().unwrap();
    };
    let mut service = serve(root.join("data"));
    assert_eq!(service.hello(START).problem, None);
    let other = record("Other", &[note("by itself")]);
    say("said ready".into());
    for n in 0..PHOTOS.len() {
        service
            .keep_photo("a", Ok(PHOTOS[n].clone()), START)
            .unwrap();
        service.act("a", &picture(n), START).unwrap();
        say(format!("said pictured {n}"));
        let name = format!("{n:032x}");
        fs::write(root.join("in"), other.clone().named(&name).text()).unwrap();
        let file = service
            .import(read_throw(&DesktopDisk, &root.join("in").into()), START)
            .unwrap()
            .file;
        service
            .decide_import(&ImportChoice::Add, file, START)
            .unwrap();
        say(format!("said added {n}"));
        let sheet = PHOTOS[n].repeat(20);
        write(&DesktopDisk, &root.join("out/sheet").into(), &sheet).unwrap();
        say(format!("said handed {n}"));
    }
}

#[test]
fn killed_while_keeping_photos_and_files() {
    let _alone = alone();
    const KILLS: usize = 60;
    let mut chance = Chance(77);
    let (mut pictured, mut added, mut handed) = (0, 0, 0);
    for kill in 0..KILLS {
        let folder = tempfile::tempdir().unwrap();
        let root = folder.path();
        lay(root, "a", record("A", &[]).text().as_bytes());
        fs::create_dir(root.join("out")).unwrap();
        let mut child = process::Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "part_keeper", "--nocapture"])
            .env(PART, root)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let mut out = BufReader::new(child.stdout.take().unwrap());
        let mut said: BTreeMap<String, usize> = BTreeMap::new();
        let mut line = |said: &mut BTreeMap<String, usize>| -> bool {
            let mut line = String::new();
            if out.read_line(&mut line).unwrap_or(0) == 0 {
                return false;
            }
            let whole = line.ends_with('\n');
            if let Some((_, what)) = line.trim().split_once("said ")
                && whole
            {
                let (what, n) = what.split_once(' ').unwrap_or((what, "0"));
                said.insert(what.to_string(), n.parse().unwrap());
            }
            true
        };
        while !said.contains_key("ready") {
            assert!(line(&mut said), "it did not start");
        }
        for _ in 0..chance.below(12) {
            line(&mut said);
        }
        std::thread::sleep(Duration::from_micros(chance.below(6000)));
        // It may have ended already, which is as good.
        let _ = kill_process(Pid::from_raw(child.id() as i32).unwrap(), Signal::KILL);
        child.wait().unwrap();
        while line(&mut said) {}

        let mut service = serve(root.join("data"));
        let hello = service.hello(START);
        assert_eq!(hello.problem, None);
        for row in &hello.shelf.rows {
            let torn = row.problem.as_ref().is_none_or(|p| p.code == "torn");
            assert!(torn && row.head.is_some(), "{row:?}");
        }
        drop(service);
        let what = format!("kill {kill}");
        // Names alike are told apart by the record; here only whether it can be read counts.
        let store = desktop::store(root.join("data"));
        let id = ThrowId::parse("a").unwrap();
        let journal = store.read(Place::Throws, &id).unwrap().journal;
        let in_story = journal.photos();
        for n in 0..said.get("pictured").map_or(0, |n| n + 1) {
            let name = hash(&PHOTOS[n]);
            assert!(in_story.iter().any(|p| p.as_str() == name), "{what}: {n}");
            pictured += 1;
        }
        // Every photo in the story is there, and none is half a one.
        for photo in &in_story {
            let bytes = store.photo(&id, photo).unwrap().expect("it is there");
            assert_eq!(hash(&bytes), photo.as_str(), "{what}");
        }
        for found in fs::read_dir(root.join("data/throws/a/photos"))
            .into_iter()
            .flatten()
        {
            let path = found.unwrap().path();
            if path.extension().is_some_and(|ending| ending == "jpg") {
                let bytes = fs::read(&path).unwrap();
                assert_eq!(hash(&bytes), path.file_stem().unwrap().to_str().unwrap());
            }
        }
        let names: BTreeSet<String> = store
            .ids(Place::Throws)
            .unwrap()
            .iter()
            .map(|id| {
                store
                    .read(Place::Throws, id)
                    .unwrap()
                    .journal
                    .name()
                    .to_string()
            })
            .collect();
        for n in 0..said.get("added").map_or(0, |n| n + 1) {
            assert!(names.contains(&format!("{n:032x}")), "{what}: {n}");
            added += 1;
        }
        let sheet = fs::read(root.join("out/sheet")).ok();
        let last = said.get("handed").copied();
        handed += last.map_or(0, |n| n + 1);
        let may_be = [last, Some(last.map_or(0, |n| n + 1))];
        let fits = may_be
            .iter()
            .any(|n| sheet == n.and_then(|n| PHOTOS.get(n)).map(|photo| photo.repeat(20)));
        assert!(fits, "{what}: the sheet is neither the last nor the next");
        // And on: another photo, kept and there.
        let mut service = serve(root.join("data"));
        service
            .keep_photo("a", Ok(PHOTOS[39].clone()), START)
            .unwrap();
        service.act("a", &picture(39), START).ok();
        service.tend(&ShelfCommand::Demo, START).unwrap();
        drop(service);
        let mut service = serve(root.join("data"));
        assert_eq!(service.hello(START).problem, None);
    }
    println!(
        "killed with -9 while keeping photos and files: {KILLS} kills, {pictured} photos, \
         {added} files brought, {handed} handed out acknowledged, lost: 0"
    );
    assert!(pictured > 60 && added > 30 && handed > 30);
}
