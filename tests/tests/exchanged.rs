//! Another program changes a throw's file while it is open here: what was acknowledged
//! stays, what was found is kept, and both are told.
//!
//! Each case is played twice: right after Lapwork was opened, and after a first step, since
//! the file is written anew before the first.

use lapwork_core::command::Command;
use lapwork_core::log::journal::Journal;
use lapwork_core::show::{Export, ImportChoice, Query, Request, ShelfCommand};
use lapwork_core::throw::Time;
use lapwork_core::words::Problem;
use lapwork_service::desktop::DesktopDisk;
use lapwork_service::disk::Disk;
use lapwork_service::import::read_throw;
use lapwork_service::service::Service;
use lapwork_tests::maker::{beginning, note};
use lapwork_tests::served::{serve, serve_on};
use lapwork_tests::tapped::Tapped;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex};
use tempfile::TempDir;

const START: Time = 1_773_000_000_000;

/// A throw in hand, with a step acknowledged: a note that says "mine".
struct Scene {
    folder: TempDir,
    service: Service,
    id: String,
    file: PathBuf,
    /// The record before that step.
    before: Journal,
    /// The record with it: all that was acknowledged.
    known: Journal,
}

fn with(journal: &Journal, text: &str, at: Time) -> Journal {
    let mut journal = journal.clone();
    let Request::Act { action } = note(text) else {
        unreachable!()
    };
    let entry = journal.propose(&action, at).unwrap();
    journal.accept(entry).unwrap();
    journal
}

fn lies(file: &Path) -> Journal {
    Journal::read(&fs::read(file).unwrap()).unwrap().journal
}

fn opened(data: &Path, disk: impl Disk + 'static) -> Service {
    let mut service = serve_on(data, disk);
    assert_eq!(service.hello(START).problem, None);
    service
}

impl Scene {
    fn new(ticked: bool) -> Scene {
        Scene::on(ticked, DesktopDisk)
    }

    fn on(ticked: bool, disk: impl Disk + 'static) -> Scene {
        let folder = tempfile::tempdir().unwrap();
        let data = folder.path().join("data");
        let mut service = opened(&data, DesktopDisk);
        let action = beginning("Throw", 3, 2);
        let id = service
            .shelf_command(
                &ShelfCommand::Begin {
                    action,
                    pile: Vec::new(),
                },
                START,
            )
            .unwrap()
            .id;
        let id = id.unwrap();
        let file = data.join("throws").join(&id).join("throw.jsonl");
        let mut before = lies(&file);
        if !ticked {
            before = with(&before, "mine", START + 1);
            service.act(&id, &note("mine"), START + 1).unwrap();
        }
        drop(service);
        let mut service = opened(&data, disk);
        let mut known = before.clone();
        if ticked {
            known = with(&before, "mine", START + 1);
            service.act(&id, &note("mine"), START + 1).unwrap();
        } else {
            before = beginning_of(&known);
        }
        assert_eq!(lies(&file).text(), known.text());
        Scene {
            folder,
            service,
            id,
            file,
            before,
            known,
        }
    }

    fn data(&self) -> PathBuf {
        self.folder.path().join("data")
    }

    fn act(&mut self, text: &str) -> Result<u32, Problem> {
        let at = START + 1_000;
        self.service
            .act(&self.id, &note(text), at)
            .map(|head| head.entry)
    }

    fn copies(&self, called: &str) -> Vec<Vec<u8>> {
        let found = fs::read_dir(self.file.parent().unwrap()).unwrap();
        let named = found.map(|found| found.unwrap().path()).filter(|path| {
            let name = path.file_name().unwrap().to_str().unwrap();
            name.starts_with(&format!("throw.jsonl.{called}-"))
        });
        named.map(|path| fs::read(path).unwrap()).collect()
    }

    /// The next step is refused and told; what was known is back, and both are kept.
    fn is_told(&mut self, found: Option<&[u8]>) -> Problem {
        let problem = self.act("next").unwrap_err();
        assert_eq!(problem.code, "changed", "{problem:?}");
        // In short what she needs; where the file lies and its copies for who asks.
        let details = problem.details.clone().expect("details");
        assert!(details.contains(self.file.to_str().unwrap()), "{problem:?}");
        assert!(details.contains("throw.jsonl.here-"), "{problem:?}");
        assert_eq!(problem.said, "Another program changed this throw’s file.");
        assert!(problem.next.starts_with("Nothing is lost."), "{problem:?}");
        assert!(problem.next.ends_with("ap again."), "{problem:?}");
        for text in [&problem.said, &problem.next] {
            assert!(!text.contains("throw.jsonl"), "{problem:?}");
        }
        for text in [&problem.said, &problem.next, &details] {
            assert!(!text.contains(['$', '{']), "{problem:?}");
        }
        assert_eq!(fs::read_to_string(&self.file).unwrap(), self.known.text());
        assert_eq!(self.copies("here"), [self.known.text().into_bytes()]);
        let brought: Vec<Vec<u8>> = found.map(<[u8]>::to_vec).into_iter().collect();
        assert_eq!(self.copies("brought"), brought);
        problem
    }

    /// Work goes on, and all of it is there when Lapwork is opened again.
    fn goes_on(mut self, known: &Journal) {
        let entry = self.act("next").unwrap();
        assert_eq!(entry as usize, known.len() + 1);
        let entry = self.act("and next").unwrap();
        drop(self.service);
        let journal = with(known, "next", START + 1_000);
        let journal = with(&journal, "and next", START + 1_000);
        assert_eq!(lies(&self.file).text(), journal.text());
        let mut service = opened(&self.folder.path().join("data"), DesktopDisk);
        let rows = service.shelf(START).rows;
        assert_eq!(rows.len(), 1);
        assert_eq!(rows[0].problem, None);
        let head = rows[0].head.as_ref().unwrap();
        assert_eq!(head.entry, entry);
    }
}

fn beginning_of(journal: &Journal) -> Journal {
    let first = journal.entries().next().unwrap().0;
    Journal::from_first(first).unwrap().named(journal.name())
}

/// Put another file in the place of one, as programs that synchronise do.
fn rename_over(file: &Path, bytes: &[u8]) {
    let part = file.with_extension("part");
    fs::write(&part, bytes).unwrap();
    fs::rename(&part, file).unwrap();
}

fn write_in_place(file: &Path, bytes: &[u8]) {
    fs::write(file, bytes).unwrap();
}

type Put = fn(&Path, &[u8]);
const WAYS: [Put; 2] = [write_in_place, rename_over];

fn each(play: impl Fn(Scene, Put)) {
    for ticked in [true, false] {
        for put in WAYS {
            play(Scene::new(ticked), put);
        }
    }
}

/// What was found is offered; merged, nothing of either is lost.
fn merges(scene: &mut Scene, found: &Journal) -> Journal {
    let view = scene
        .service
        .pending_import()
        .unwrap()
        .expect("it is offered");
    let details = view.details.as_deref().expect("details");
    assert!(details.contains("throw.jsonl.brought-"), "{view:?}");
    assert!(!view.said[0].contains("throw.jsonl"), "{view:?}");
    let take = view.buttons[0].choice.clone();
    assert!(matches!(take, ImportChoice::Merge { .. }), "{view:?}");
    let taken = scene
        .service
        .decide_import(&take, view.file, START + 2_000)
        .unwrap();
    assert_eq!(taken.id.as_deref(), Some(scene.id.as_str()));
    let one = lies(&scene.file);
    for journal in [&scene.known, found] {
        for (entry, _) in journal.entries() {
            let there = |(other, _): (&lapwork_core::log::journal::Entry, bool)| {
                (other.at, &other.what) == (entry.at, &entry.what)
            };
            assert!(one.entries().any(there), "{entry:?} is lost");
        }
    }
    one
}

#[test]
fn of_the_same_length() {
    each(|mut scene, put| {
        let other = with(&scene.before, "hers", START + 1);
        let bytes = other.text().into_bytes();
        assert_eq!(bytes.len(), scene.known.text().len());
        put(&scene.file, &bytes);
        let problem = scene.is_told(Some(&bytes));
        assert!(problem.next.contains("Choose"), "{problem:?}");
        let one = merges(&mut scene, &other);
        scene.goes_on(&one);
    });
}

#[test]
fn of_the_same_length_with_an_entry_more() {
    each(|mut scene, put| {
        // One long note here, two short ones there.
        let two = |journal: &Journal| {
            let one = with(journal, "a", START + 300);
            with(&one, "b", START + 301)
        };
        let here = |text: &str| with(&scene.known, text, START + 900);
        let other = two(&scene.known);
        let short = here("x").text().len();
        let text = "x".repeat(1 + other.text().len() - short);
        let known = here(&text);
        let request = note(&text);
        scene.service.act(&scene.id, &request, START + 900).unwrap();
        scene.known = known;
        let bytes = other.text().into_bytes();
        assert_eq!(bytes.len(), scene.known.text().len());
        assert_eq!(other.len(), scene.known.len() + 1);
        put(&scene.file, &bytes);
        scene.is_told(Some(&bytes));
        let one = merges(&mut scene, &other);
        scene.goes_on(&one);
    });
}

#[test]
fn of_the_same_length_and_with_the_same_end() {
    each(|mut scene, put| {
        // Another word long before the last lines: neither length nor end tells.
        let long = "so ".repeat(500);
        let tail = |journal: &Journal| {
            let times = START + 500..START + 504;
            times.fold(journal.clone(), |journal, at| with(&journal, &long, at))
        };
        for at in START + 500..START + 504 {
            scene.service.act(&scene.id, &note(&long), at).unwrap();
        }
        scene.known = tail(&scene.known);
        let other = tail(&with(&scene.before, "hers", START + 1));
        let bytes = other.text().into_bytes();
        assert_eq!(bytes.len(), scene.known.text().len());
        // Later than the tick of the system's clock in which our own line was written.
        std::thread::sleep(std::time::Duration::from_millis(30));
        put(&scene.file, &bytes);
        scene.is_told(Some(&bytes));
        let one = merges(&mut scene, &other);
        scene.goes_on(&one);
    });
}

#[test]
fn a_shorter_one_from_before() {
    each(|mut scene, put| {
        let bytes = scene.before.text().into_bytes();
        put(&scene.file, &bytes);
        let problem = scene.is_told(Some(&bytes));
        let details = problem.details.as_deref().expect("details");
        assert!(details.contains("nothing more"), "{problem:?}");
        assert_eq!(
            scene.service.pending_import().unwrap(),
            None,
            "nothing to decide"
        );
        let known = scene.known.clone();
        scene.goes_on(&known);
    });
}

#[test]
fn a_longer_one_that_goes_on() {
    each(|mut scene, put| {
        let other = with(&scene.known, "hers", START + 300);
        let bytes = other.text().into_bytes();
        put(&scene.file, &bytes);
        scene.is_told(Some(&bytes));
        let view = scene
            .service
            .pending_import()
            .unwrap()
            .expect("it is offered");
        assert_eq!(view.buttons[0].choice, ImportChoice::TakeBrought);
        let take = ImportChoice::TakeBrought;
        scene
            .service
            .decide_import(&take, view.file, START + 2_000)
            .unwrap();
        scene.goes_on(&other);
    });
}

#[test]
fn one_that_is_no_record_or_another_throws() {
    each(|mut scene, put| {
        let length = scene.known.text().len();
        let bytes = vec![b'x'; length];
        put(&scene.file, &bytes);
        let problem = scene.is_told(Some(&bytes));
        assert!(
            problem
                .details
                .as_deref()
                .is_some_and(|d| d.contains("could not be read as a throw")),
            "{problem:?}"
        );
        assert_eq!(scene.service.pending_import().unwrap(), None);
        let known = scene.known.clone();
        scene.goes_on(&known);
    });
    each(|mut scene, put| {
        let (other, _) = Journal::begin(&beginning("Other", 2, 2), START).unwrap();
        let bytes = other.named("other").text().into_bytes();
        put(&scene.file, &bytes);
        scene.is_told(Some(&bytes));
        let view = scene
            .service
            .pending_import()
            .unwrap()
            .expect("it is offered");
        assert_eq!(view.buttons[0].choice, ImportChoice::Add);
        let known = scene.known.clone();
        scene.goes_on(&known);
    });
}

#[test]
fn the_file_or_its_folder_is_removed() {
    for ticked in [true, false] {
        let mut scene = Scene::new(ticked);
        fs::remove_file(&scene.file).unwrap();
        scene.is_told(None);
        assert_eq!(scene.service.pending_import().unwrap(), None);
        let known = scene.known.clone();
        scene.goes_on(&known);

        let mut scene = Scene::new(ticked);
        fs::remove_dir_all(scene.file.parent().unwrap()).unwrap();
        scene.is_told(None);
        let known = scene.known.clone();
        scene.goes_on(&known);
    }
}

#[test]
fn the_data_folder_is_taken_away_and_comes_back() {
    for ticked in [true, false] {
        let mut scene = Scene::new(ticked);
        let away = scene.folder.path().join("away");
        fs::rename(scene.data(), &away).unwrap();
        for _ in 0..2 {
            let problem = scene.act("next").unwrap_err();
            assert_eq!(problem.code, "away", "{problem:?}");
            let place = scene.data();
            assert!(
                problem.said.contains(place.to_str().unwrap()),
                "{problem:?}"
            );
            assert!(!place.exists(), "no other is made in its place");
        }
        // Everything known can be seen, and handed on.
        assert!(scene.service.view(&scene.id, &Query::Trim, START).is_ok());
        let rows = scene.service.shelf(START).rows;
        assert_eq!(rows.len(), 1);
        assert_eq!(rows[0].problem.as_ref().unwrap().code, "away");
        let files = scene
            .service
            .export(&scene.id, &Export::Throw, START)
            .unwrap();
        assert_eq!(files[0].bytes, scene.known.text().as_bytes());
        let answered = scene
            .service
            .shelf_command(&ShelfCommand::Demo, START)
            .unwrap_err();
        assert_eq!(answered.code, "away");
        fs::rename(&away, scene.data()).unwrap();
        let known = scene.known.clone();
        scene.goes_on(&known);
    }
}

/// Copy a folder, as a backup does.
fn copy(from: &Path, to: &Path) {
    fs::create_dir(to).unwrap();
    for found in fs::read_dir(from).unwrap() {
        let path = found.unwrap().path();
        let there = to.join(path.file_name().unwrap());
        match path.is_dir() {
            true => copy(&path, &there),
            false => fs::copy(&path, &there).map(|_| ()).unwrap(),
        }
    }
}

#[test]
fn the_data_folder_is_exchanged_for_one_of_before() {
    let mut scene = Scene::new(true);
    let backup = scene.folder.path().join("backup");
    copy(&scene.data(), &backup);
    scene.act("since").unwrap();
    scene.known = with(&scene.known, "since", START + 1_000);
    fs::rename(scene.data(), scene.folder.path().join("away")).unwrap();
    fs::rename(&backup, scene.data()).unwrap();
    let found = fs::read(&scene.file).unwrap();
    scene.is_told(Some(&found));
    // The folder that is there now is held, so that no other Lapwork writes in it.
    let mut other = serve(scene.data());
    assert_eq!(other.hello(START).problem.unwrap().code, "locked");
    drop(other);
    let known = scene.known.clone();
    scene.goes_on(&known);
}

#[test]
fn a_copy_of_itself_changes_nothing() {
    each(|mut scene, put| {
        let bytes = scene.known.text().into_bytes();
        put(&scene.file, &bytes);
        scene.act("first").unwrap();
        scene.known = with(&scene.known, "first", START + 1_000);
        let beside = fs::read_dir(scene.file.parent().unwrap()).unwrap();
        assert_eq!(beside.count(), 1, "nothing lies beside it");
        let known = scene.known.clone();
        scene.goes_on(&known);
    });
}

#[test]
fn what_is_handed_on_is_what_is_known() {
    each(|mut scene, put| {
        let other = with(&scene.before, "hers", START + 1);
        put(&scene.file, other.text().as_bytes());
        let files = scene
            .service
            .export(&scene.id, &Export::Throw, START)
            .unwrap();
        assert_eq!(files[0].bytes, scene.known.text().as_bytes());
    });
}

#[test]
fn another_file_that_is_taken_in_meanwhile_loses_neither() {
    each(|mut scene, put| {
        let third = with(&scene.known, "third", START + 400);
        let path = scene.folder.path().join("third.jsonl");
        fs::write(&path, third.text()).unwrap();
        let found = read_throw(&DesktopDisk, &path.as_path().into());
        let view = scene.service.import(found, START).unwrap();
        let other = with(&scene.before, "hers", START + 1);
        put(&scene.file, other.text().as_bytes());
        let take = view.buttons[0].choice.clone();
        let problem = scene.service.decide_import(&take, view.file, START + 2_000);
        assert_eq!(problem.unwrap_err().code, "changed");
        merges(&mut scene, &other);
        let found = read_throw(&DesktopDisk, &path.as_path().into());
        let view = scene.service.import(found, START).unwrap();
        let take = view.buttons[0].choice.clone();
        let known = lies(&scene.file);
        scene
            .service
            .decide_import(&take, view.file, START + 3_000)
            .unwrap();
        assert_eq!(lies(&scene.file).len(), known.len() + 1);
    });
}

type Exchange = (Put, PathBuf, Vec<u8>);

/// What happens right before a line is written.
#[derive(Clone, Default)]
struct Between {
    /// What is put in the place of which file, and how.
    put: Arc<Mutex<Option<Exchange>>>,
    full: Arc<AtomicBool>,
}

impl Between {
    fn disk(&self) -> Tapped {
        let own = self.clone();
        Tapped::with(move || {
            if own.full.load(Ordering::SeqCst) {
                return Err(io::ErrorKind::StorageFull.into());
            }
            if let Some((put, path, bytes)) = own.put.lock().unwrap().take() {
                put(&path, &bytes);
            }
            Ok(())
        })
    }
}

#[test]
fn between_the_look_at_the_file_and_the_writing() {
    for put in WAYS {
        let disk = Between::default();
        let mut scene = Scene::on(true, disk.disk());
        let other = with(&scene.before, "hers", START + 1);
        let bytes = other.text().into_bytes();
        *disk.put.lock().unwrap() = Some((put, scene.file.clone(), bytes));
        let problem = scene.act("next").unwrap_err();
        assert_eq!(problem.code, "changed", "{problem:?}");
        assert_eq!(lies(&scene.file).text(), scene.known.text());
        merges(&mut scene, &other);
        let one = lies(&scene.file);
        scene.goes_on(&one);
    }
}

#[test]
fn while_the_disk_is_full_nothing_is_touched_or_forgotten() {
    for put in WAYS {
        let disk = Between::default();
        let mut scene = Scene::on(true, disk.disk());
        let other = with(&scene.before, "hers", START + 1);
        let bytes = other.text().into_bytes();
        put(&scene.file, &bytes);
        disk.full.store(true, Ordering::SeqCst);
        for _ in 0..2 {
            let problem = scene.act("next").unwrap_err();
            assert_eq!(problem.code, "changed-left", "{problem:?}");
            assert_eq!(fs::read(&scene.file).unwrap(), bytes);
            assert!(scene.copies("here").is_empty() && scene.copies("brought").is_empty());
        }
        disk.full.store(false, Ordering::SeqCst);
        scene.is_told(Some(&bytes));
        let one = merges(&mut scene, &other);
        scene.goes_on(&one);
    }
}

/// A disk fails, and before the file is read again another program is at it.
#[test]
fn after_a_failure_what_is_read_again_is_held_against_what_was_known() {
    for put in WAYS {
        let disk = Between::default();
        let mut scene = Scene::on(true, disk.disk());
        disk.full.store(true, Ordering::SeqCst);
        assert_eq!(scene.act("next").unwrap_err().code, "disk");
        disk.full.store(false, Ordering::SeqCst);
        let other = with(&scene.before, "hers", START + 1);
        let bytes = other.text().into_bytes();
        put(&scene.file, &bytes);
        let viewed = scene
            .service
            .view(&scene.id, &Query::Trim, START)
            .unwrap_err();
        assert_eq!(viewed.code, "changed");
        assert_eq!(scene.copies("brought"), [bytes]);
        let one = merges(&mut scene, &other);
        scene.goes_on(&one);
    }
}

/// `cargo test --workspace --test exchanged how_long -- --ignored --nocapture`
#[test]
#[ignore = "a measurement, not a test"]
fn how_long_a_step_takes() {
    for notes in [10, 2_000] {
        let mut scene = Scene::new(true);
        for n in 0..notes {
            scene.act(&format!("note {n}")).unwrap();
        }
        let begun = std::time::Instant::now();
        const STEPS: u32 = 300;
        for _ in 0..STEPS {
            let action = Command::Note {
                text: "step".into(),
                piece: None,
                task: None,
                next: false,
            };
            let request = Request::Act { action };
            scene.service.act(&scene.id, &request, START).unwrap();
        }
        println!("{notes} notes: {:?} a step", begun.elapsed() / STEPS);
    }
}
