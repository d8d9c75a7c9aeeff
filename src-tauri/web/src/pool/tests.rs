//! The pool over slots that fail where they are told to, and forget what was not synced.
//!
//! The model: a sync that fails drops what was written since the last one, and the next says
//! nothing of it. A scene is some steps at the service. It is played once without a fault, which
//! says what is kept after each step, and then for every operation on the slots and every way in
//! which it can go wrong. Whatever happens, what is found afterwards is what was kept before or
//! after the step that met the fault, and work goes on from there.

use super::*;
use lapwork_core::command::Command;
use lapwork_core::plan::Plan;
use lapwork_core::show::{Prefs, Request, ShelfCommand};
use lapwork_core::throw::Time;
use lapwork_service::host::{Clock, Host, Random, Runner};
use lapwork_service::service::Service;
use lapwork_service::store::{Place, Store};
use serde_json::json;

const FOLDER: &str = "Lapwork";
const NOW: Time = 1_800_000_000_000;

// ── Slots that forget ────────────────────────────────────────────────────────

#[derive(Debug, Clone)]
enum Op {
    Write(usize, Vec<u8>),
    Cut(usize),
}

impl Op {
    fn on(&self, bytes: &mut Vec<u8>) {
        match self {
            Op::Write(at, new) => {
                let end = at + new.len();
                if bytes.len() < end {
                    bytes.resize(end, 0);
                }
                bytes[*at..end].copy_from_slice(new);
            }
            Op::Cut(length) => bytes.resize(*length, 0),
        }
    }

    /// The first half of it, and nothing but zeros in the place of the rest.
    fn half(&self) -> Op {
        match self {
            Op::Write(at, new) => {
                let mut torn = new.clone();
                torn[new.len() / 2..].fill(0);
                Op::Write(*at, torn)
            }
            cut @ Op::Cut(_) => cut.clone(),
        }
    }
}

#[derive(Debug, Default, Clone)]
struct Slot {
    shown: Vec<u8>,
    kept: Vec<u8>,
    pending: Vec<Op>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum How {
    /// It is not done.
    Fails,
    /// It is done, and said to have failed.
    Late,
    /// Half of what was to be written is.
    Short,
    /// Neither it nor anything after it is done.
    Dies,
}

/// What a power cut leaves of what was not synced.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Left {
    Nothing,
    /// Each slot's last operation only by half.
    Torn,
    /// All of every second slot, nothing of the others.
    Some(usize),
    All,
}

#[derive(Debug, Default)]
struct Model {
    slots: Vec<Slot>,
    count: usize,
    fault: Option<(usize, How)>,
    met: bool,
}

impl Model {
    fn wrong(&mut self) -> Option<How> {
        let at = self.count;
        self.count += 1;
        let (when, how) = self.fault?;
        let wrong = at == when || (how == How::Dies && at > when);
        self.met |= wrong;
        wrong.then_some(how)
    }

    /// Do it, unless it is to fail.
    fn change(&mut self, slot: usize, op: Op) -> io::Result<()> {
        let wrong = self.wrong();
        let eio = || io::Error::from_raw_os_error(5);
        let op = match wrong {
            Some(How::Fails | How::Dies) => return Err(eio()),
            Some(How::Short) => op.half(),
            _ => op,
        };
        op.on(&mut self.slots[slot].shown);
        self.slots[slot].pending.push(op);
        match wrong {
            Some(How::Late | How::Short) => Err(eio()),
            _ => Ok(()),
        }
    }
}

#[derive(Debug, Clone, Default)]
struct Forgetful(Arc<Mutex<Model>>);

impl Forgetful {
    fn new(count: usize) -> Forgetful {
        let slots = vec![Slot::default(); count];
        Forgetful(Arc::new(Mutex::new(Model {
            slots,
            ..Model::default()
        })))
    }

    fn model(&self) -> MutexGuard<'_, Model> {
        self.0.lock().unwrap()
    }

    fn after_power_cut(&self, left: Left) -> Forgetful {
        let model = self.model();
        let slots = model.slots.iter().enumerate().map(|(n, slot)| {
            let mut bytes = slot.kept.clone();
            let last = slot.pending.len().saturating_sub(1);
            for (k, op) in slot.pending.iter().enumerate() {
                match left {
                    Left::Nothing => {}
                    Left::Torn if k == last => op.half().on(&mut bytes),
                    Left::Torn | Left::All => op.on(&mut bytes),
                    Left::Some(which) if n % 2 == which => op.on(&mut bytes),
                    Left::Some(_) => {}
                }
            }
            Slot {
                shown: bytes.clone(),
                kept: bytes,
                pending: Vec::new(),
            }
        });
        Forgetful(Arc::new(Mutex::new(Model {
            slots: slots.collect(),
            ..Model::default()
        })))
    }
}

impl Slots for Forgetful {
    fn count(&self) -> usize {
        self.model().slots.len()
    }

    fn length(&self, slot: usize) -> io::Result<u64> {
        Ok(self.model().slots[slot].shown.len() as u64)
    }

    fn read(&self, slot: usize, at: u64, bytes: &mut [u8]) -> io::Result<usize> {
        let model = self.model();
        let shown = &model.slots[slot].shown;
        let from = shown.get(at as usize..).unwrap_or_default();
        let read = from.len().min(bytes.len());
        bytes[..read].copy_from_slice(&from[..read]);
        Ok(read)
    }

    fn write(&self, slot: usize, at: u64, bytes: &[u8]) -> io::Result<usize> {
        let op = Op::Write(at as usize, bytes.to_vec());
        self.model().change(slot, op).map(|()| bytes.len())
    }

    fn cut(&self, slot: usize, length: u64) -> io::Result<()> {
        self.model().change(slot, Op::Cut(length as usize))
    }

    fn sync(&self, slot: usize) -> io::Result<()> {
        let mut model = self.model();
        let wrong = model.wrong();
        let eio = || io::Error::from_raw_os_error(5);
        let slot = &mut model.slots[slot];
        match wrong {
            Some(How::Dies) => return Err(eio()),
            Some(How::Fails | How::Short) => {
                slot.pending.clear();
                return Err(eio());
            }
            _ => {}
        }
        for op in std::mem::take(&mut slot.pending) {
            op.on(&mut slot.kept);
        }
        match wrong {
            Some(How::Late) => Err(eio()),
            _ => Ok(()),
        }
    }
}

// ── A service on them ────────────────────────────────────────────────────────

#[derive(Debug)]
struct Still;

impl Clock for Still {
    fn now(&self) -> Time {
        NOW
    }
}

/// The same numbers every time.
#[derive(Debug, Default)]
struct Counted(u8);

impl Random for Counted {
    fn fill(&mut self, bytes: &mut [u8]) -> io::Result<()> {
        for byte in bytes {
            self.0 = self.0.wrapping_mul(5).wrapping_add(1);
            *byte = self.0;
        }
        Ok(())
    }
}

#[derive(Debug)]
struct AtOnce;

impl Runner for AtOnce {
    fn run(&self, work: Box<dyn FnOnce() + Send>) {
        work();
    }
}

fn serve(pool: &Pool, salt: u8) -> Service {
    let host = Host {
        clock: Box::new(Still),
        random: Box::new(Counted(salt)),
        runner: Box::new(AtOnce),
    };
    Service::new(Store::on(FOLDER, Box::new(pool.clone())), host)
}

/// Everything that is kept: each throw's place, id and entries, and the settings.
fn kept(pool: &Pool) -> Vec<String> {
    let store = Store::on(FOLDER, Box::new(pool.clone()));
    let mut all = Vec::new();
    for place in [Place::Throws, Place::Deleted] {
        for id in store.ids(place).unwrap_or_default() {
            let opened = store.read(place, &id);
            let text = opened.map(|opened| opened.journal.text());
            let text = text.unwrap_or_else(|why| format!("{why:?}"));
            all.push(format!("{place:?} {} {text}", id.as_str()));
        }
    }
    all.sort();
    all.push(format!("{:?}", store.settings()));
    all
}

fn note(text: &str) -> Request {
    Request::Act {
        action: Command::Note {
            text: text.to_string(),
            piece: None,
            task: None,
            next: false,
        },
    }
}

type Step = fn(&mut Service, &mut Vec<String>) -> bool;

fn acted(service: &mut Service, id: &str, request: &Request) -> bool {
    service.act(id, request, NOW).is_ok()
}

fn begun(service: &mut Service, ids: &mut Vec<String>) -> bool {
    let action = serde_json::from_value(json!({
        "do": "begin",
        "name": "Bay",
        "plan": Plan { across: 2, down: 2, ..Plan::default() },
        "prints": [{"name": "Dots", "colour": "#aa5500", "texture": "dot", "stock": null}],
        "denims": [{"name": "Jeans", "colour": "#223355"}],
    }));
    let action = action.expect("a beginning");
    match service.shelf_command(
        &ShelfCommand::Begin {
            action,
            pile: Vec::new(),
        },
        NOW,
    ) {
        Ok(answer) => {
            ids.extend(answer.id);
            true
        }
        Err(_) => false,
    }
}

const STEPS: [Step; 11] = [
    |service, _| service.hello(NOW).problem.is_none(),
    begun,
    |service, ids| acted(service, &ids[0], &note("one")),
    |service, ids| acted(service, &ids[0], &note("two")),
    |service, _| {
        let prefs = Prefs {
            text: 120,
            ..Prefs::default()
        };
        service.set_prefs(prefs, NOW).is_ok()
    },
    begun,
    |service, ids| acted(service, &ids[1], &note("three")),
    |service, ids| {
        let id = ids[0].clone();
        service
            .shelf_command(&ShelfCommand::Delete { id }, NOW)
            .is_ok()
    },
    |service, ids| acted(service, &ids[1], &Request::Undo),
    |service, ids| {
        let id = ids[0].clone();
        service
            .shelf_command(&ShelfCommand::Erase { id }, NOW)
            .is_ok()
    },
    |service, ids| acted(service, &ids[1], &note("four")),
];

/// What is kept after each step, and how many operations that took.
fn without_fault(count: usize) -> (Vec<Vec<String>>, usize) {
    let slots = Forgetful::new(count);
    let pool = Pool::open(Box::new(slots.clone())).unwrap();
    let mut service = serve(&pool, 7);
    let (mut ids, mut states) = (Vec::new(), vec![kept(&pool)]);
    for step in STEPS {
        assert!(step(&mut service, &mut ids));
        states.push(kept(&pool));
        // What is acknowledged outlives a power cut.
        let cut = Pool::open(Box::new(slots.after_power_cut(Left::Nothing))).unwrap();
        assert_eq!(kept(&cut), kept(&pool));
    }
    let count = slots.model().count;
    (states, count)
}

#[test]
fn whatever_fails_what_was_acknowledged_is_kept_and_work_goes_on() {
    let (states, operations) = without_fault(8);
    let lefts = [
        Left::Nothing,
        Left::Torn,
        Left::Some(0),
        Left::Some(1),
        Left::All,
    ];
    let mut met = 0;
    for at in 0..operations {
        for how in [How::Fails, How::Late, How::Short, How::Dies] {
            let slots = Forgetful::new(8);
            slots.model().fault = Some((at, how));
            let Ok(pool) = Pool::open(Box::new(slots.clone())) else {
                // Nothing was kept yet; the next start begins anew.
                for left in lefts {
                    let cut = Pool::open(Box::new(slots.after_power_cut(left)));
                    assert!(cut.is_ok(), "{at} {how:?} {left:?}: {cut:?}");
                }
                continue;
            };
            let mut service = serve(&pool, 7);
            let mut ids = Vec::new();
            let mut done = 0;
            for step in STEPS {
                if !step(&mut service, &mut ids) {
                    break;
                }
                done += 1;
            }
            met += usize::from(slots.model().met);
            let case = |left: Left| format!("operation {at} {how:?}, step {done}, then {left:?}");
            // Two of the five ends for each, turn about.
            for left in [0, 2].map(|n| lefts[(at + n) % lefts.len()]) {
                let cut = slots.after_power_cut(left);
                let pool = Pool::open(Box::new(cut.clone()));
                let pool = pool.unwrap_or_else(|why| panic!("{}: {why}", case(left)));
                let found = kept(&pool);
                let next = states.get(done + 1).unwrap_or(&states[done]);
                // The next start mends a torn line, which is what its reading shows.
                let mut anew = serve(&pool, 99);
                assert_eq!(anew.hello(NOW).problem, None, "{}", case(left));
                let mended = kept(&pool);
                assert!(
                    [&states[done], next].contains(&&mended)
                        || found == mended && found == states[done],
                    "{}: {mended:#?}",
                    case(left)
                );
                let id = begun(&mut anew, &mut ids).then(|| ids.pop()).flatten();
                let id = id.unwrap_or_else(|| panic!("{}", case(left)));
                assert!(acted(&mut anew, &id, &note("on")), "{}", case(left));
                let again = Pool::open(Box::new(cut.after_power_cut(Left::Nothing))).unwrap();
                assert_eq!(kept(&again), kept(&pool), "{}", case(left));
            }
            if how == How::Dies || ids.is_empty() || done < 7 {
                continue;
            }
            // She goes on in the same program; what is acknowledged from now on is kept too.
            slots.model().fault = None;
            if acted(&mut service, &ids[1], &note("goes on")) {
                let cut = Pool::open(Box::new(slots.after_power_cut(Left::Nothing))).unwrap();
                let found = kept(&cut).join("\n");
                assert!(found.contains("goes on"), "operation {at} {how:?}");
            }
        }
    }
    assert!(met > operations * 3, "{met} faults met of {operations}");
}

#[test]
fn names_come_and_go_with_all_that_lies_below() {
    let slots = Forgetful::new(6);
    let disk = Pool::open(Box::new(slots.clone())).unwrap();
    let [a, b] = ["data/a", "data/b"].map(DiskPath::from);
    assert!(disk.make_folder(&a).is_err(), "the folder above is missing");
    disk.make_folder(&DiskPath::from("data")).unwrap();
    disk.make_folder(&a).unwrap();
    let mut file = disk.open(&a.join("x"), OpenMode::New).unwrap();
    assert!(disk.open(&a.join("x"), OpenMode::New).is_err());
    file.write(b"one two").unwrap();
    file.cut(5).unwrap();
    assert_eq!(file.read_end(3).unwrap(), b"e t");
    disk.rename(&a, &b).unwrap();
    assert_eq!(disk.read(&b.join("x"), 3).unwrap(), b"one");
    assert_eq!(disk.list(&b).unwrap(), [b.join("x")]);
    assert!(!disk.exists(&a) && disk.is_folder(&b));
    let identity = file.about().unwrap().identity;
    assert_eq!(disk.about(&b.join("x")).unwrap().identity, identity);
    file.sync().unwrap();
    disk.sync_folder(&b).unwrap();
    // Another life finds the same.
    let next = Pool::open(Box::new(slots.after_power_cut(Left::Nothing))).unwrap();
    assert_eq!(next.read(&b.join("x"), 9).unwrap(), b"one t");
    disk.remove(&b).unwrap();
    assert!(!disk.exists(&b.join("x")));
    assert!(file.write(b"more").is_err(), "its file is gone");
}

#[test]
fn a_slot_is_used_again_only_once_no_index_names_it() {
    let slots = Forgetful::new(4);
    let disk = Pool::open(Box::new(slots.clone())).unwrap();
    let [a, b, c] = ["a", "b", "c"].map(DiskPath::from);
    for path in [&a, &b] {
        let mut file = disk.open(path, OpenMode::New).unwrap();
        file.write(path.shown_name().as_bytes()).unwrap();
        file.sync().unwrap();
    }
    disk.sync_folder(&DiskPath::from(".")).unwrap();
    assert_eq!(disk.free(), 0);
    let full = disk.open(&c, OpenMode::New).unwrap_err();
    assert_eq!(full.kind(), io::ErrorKind::StorageFull);
    disk.remove(&a).unwrap();
    // Until that is on the disk the power may bring it back, whole.
    let cut = Pool::open(Box::new(slots.after_power_cut(Left::All))).unwrap();
    assert_eq!(cut.read(&a, 9).unwrap(), b"a");
    disk.open(&c, OpenMode::New).unwrap().write(b"ccc").unwrap();
    let cut = Pool::open(Box::new(slots.after_power_cut(Left::All))).unwrap();
    assert!(!cut.exists(&a), "its slot has something else in it");
    assert_eq!(cut.read(&b, 9).unwrap(), b"b");
    // More slots make more room.
    slots.model().slots.push(Slot::default());
    disk.grow().unwrap();
    assert_eq!(disk.free(), 1);
}

#[test]
fn one_page_writes_and_the_other_looks() {
    let slots = Forgetful::new(8);
    let pool = Pool::open(Box::new(slots.clone())).unwrap();
    let mut first = serve(&pool, 7);
    let mut ids = Vec::new();
    assert!(begun(&mut first, &mut ids));
    let looking = Pool::read_only(Box::new(slots.clone())).unwrap();
    let mut second = serve(&looking, 9);
    let hello = second.hello(NOW);
    assert_eq!(
        hello.problem.map(|problem| problem.code).as_deref(),
        Some("locked")
    );
    assert_eq!(hello.shelf.rows.len(), 1);
    let refused = second.act(&ids[0], &note("no"), NOW).unwrap_err();
    assert_eq!(refused.code, "locked");
    assert!(
        looking
            .lock(&DiskPath::from("Lapwork/lock"))
            .unwrap()
            .is_none()
    );
    let before = slots.model().count;
    assert!(looking.open(&DiskPath::from("x"), OpenMode::New).is_err());
    assert_eq!(slots.model().count, before, "nothing was changed");
}

#[test]
fn bytes_without_a_list_of_them_are_left_as_they_are() {
    let slots = Forgetful::new(5);
    let pool = Pool::open(Box::new(slots.clone())).unwrap();
    let mut file = pool.open(&DiskPath::from("x"), OpenMode::New).unwrap();
    file.write(b"mine").unwrap();
    file.sync().unwrap();
    pool.sync_folder(&DiskPath::from(".")).unwrap();
    for slot in 0..index::SLOTS {
        slots.model().slots[slot].shown[9] ^= 1;
    }
    let refused = Pool::open(Box::new(slots.clone())).unwrap_err();
    assert_eq!(refused.kind(), io::ErrorKind::InvalidData);
    assert_eq!(slots.model().slots[2].shown, b"mine");
    // One whole index is enough.
    slots.model().slots[0].shown[9] ^= 1;
    assert!(Pool::open(Box::new(slots)).is_ok());
}
