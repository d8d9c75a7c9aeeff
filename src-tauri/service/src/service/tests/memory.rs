//! The whole service where there is no file system: on a disk in memory, with a clock, chance
//! and runner of the test's.

use super::note;
use crate::disk::{Disk as _, DiskPath, MemoryDisk};
use crate::host::{Clock, Host, Random, Runner};
use crate::import;
use crate::service::Service;
use crate::store::Store;
use lapwork_core::show::{Export, ImportChoice, Prefs, Request, ShelfCommand};
use lapwork_core::throw::Time;
use lapwork_core::throw::wishes::Wishes;
use std::io;

#[derive(Debug)]
struct Noon;

impl Clock for Noon {
    fn now(&self) -> Time {
        1_800_000_000_000
    }
}

#[derive(Debug)]
struct Counted(u8);

impl Random for Counted {
    fn fill(&mut self, bytes: &mut [u8]) -> io::Result<()> {
        self.0 = self.0.checked_add(1).ok_or(io::ErrorKind::Other)?;
        bytes.fill(self.0);
        Ok(())
    }
}

/// Does the work at once, as where there is one thread only.
#[derive(Debug)]
struct AtOnce;

impl Runner for AtOnce {
    fn run(&self, work: Box<dyn FnOnce() + Send>) {
        work();
    }
}

fn open(disk: &MemoryDisk) -> Service {
    let host = Host {
        clock: Box::new(Noon),
        random: Box::new(Counted(0)),
        runner: Box::new(AtOnce),
    };
    Service::new(Store::on("data", Box::new(disk.clone())), host)
}

#[test]
fn a_throw_is_begun_worked_on_and_merged_without_a_file_system() {
    let disk = MemoryDisk::new();
    let mut service = open(&disk);
    let now = service.now();
    assert_eq!(service.hello(now).problem, None);
    let id = service
        .shelf_command(&ShelfCommand::Demo, now)
        .unwrap()
        .id
        .unwrap();
    // The ids come of the randomness that was handed in.
    assert_eq!(id, format!("{now:011x}-02020202"));
    let file = DiskPath::from("data/throws").join(&id).join("throw.jsonl");
    let copy = disk.read(&file, u64::MAX).unwrap();
    assert!(copy.starts_with(b"{\"lapwork\":\"throw\",\"version\":2,\"throw\":\"0101"));
    let entry = service.act(&id, &note("here"), now).unwrap().entry;
    assert_eq!(
        service.act(&id, &Request::Undo, now).unwrap().entry,
        entry + 1
    );
    let large = Prefs {
        text: 150,
        ..Prefs::default()
    };
    service.set_prefs(large, now).unwrap();

    // A second service on the same disk writes nothing.
    let locked = open(&disk).hello(now).problem.unwrap();
    assert_eq!(locked.code, "locked");
    drop(service);
    let mut service = open(&disk);
    let hello = service.hello(now);
    assert_eq!((hello.problem, hello.prefs.text), (None, 150));
    let head = hello.shelf.rows[0].head.as_ref().unwrap();
    assert_eq!(head.entry, entry + 1);

    // Another file in the place of the throw's: told, put back and merged.
    disk.remove(&file).unwrap();
    let problem = service.act(&id, &note("lost?"), now).unwrap_err();
    assert_eq!(problem.code, "changed");
    let head = service.act(&id, &note("kept"), now).unwrap();
    assert_eq!(head.entry, entry + 2);
    let found = import::read(&DiskPath::from("copy.jsonl"), copy);
    let view = service.import(found, now).unwrap();
    assert_eq!(view.buttons[0].choice, ImportChoice::KeepHere);

    let exported = service.export(&id, &Export::Throw, now).unwrap();
    assert_eq!(exported[0].bytes, disk.read(&file, u64::MAX).unwrap());
    service
        .arrange(&id, Wishes::default(), 3, |_| {}, |_| {}, now)
        .unwrap();
    let layouts = service.stop_arranging().unwrap();
    assert!(!layouts.running && !layouts.cards.is_empty());
    service
        .shelf_command(&ShelfCommand::Delete { id: id.clone() }, now)
        .unwrap();
    let shelf = service
        .shelf_command(&ShelfCommand::Erase { id }, now)
        .unwrap()
        .shelf;
    assert!(shelf.rows.is_empty() && shelf.deleted.is_empty());
}
