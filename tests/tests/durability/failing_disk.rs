//! A disk that fails at each of a morning's operations.

use super::*;

/// One thing to do at the service; throws are known by their names.
#[derive(Debug, Clone)]
enum Step {
    Begin(&'static str),
    Act(&'static str, Request),
    Text(u16),
    Delete(&'static str),
    Restore(&'static str),
    Erase(&'static str),
}

impl Step {
    /// The throw it is about.
    fn throw(&self) -> Option<&'static str> {
        match self {
            Step::Begin(name)
            | Step::Act(name, _)
            | Step::Delete(name)
            | Step::Restore(name)
            | Step::Erase(name) => Some(name),
            Step::Text(_) => None,
        }
    }
}

/// A morning at the service: each kind of writing once at least.
fn script() -> Vec<Step> {
    use Step::{Act, Begin, Delete, Erase, Restore, Text};
    let cut = || {
        let cut = json!({"do": "tick-next", "task": "cut", "kind": "square", "count": 2});
        Request::Act {
            action: serde_json::from_value(cut).unwrap(),
        }
    };
    vec![
        Begin("one"),
        Act("one", cut()),
        Act("one", note(&"long ".repeat(300))),
        Text(120),
        Begin("two"),
        Act("two", note("short")),
        Act("two", Request::Undo),
        Delete("one"),
        Act("two", Request::Redo),
        Restore("one"),
        Act("one", note("back")),
        Delete("two"),
        Erase("two"),
        Text(150),
        Act("one", cut()),
        Act("one", Request::Undo),
    ]
}

/// What lies in a data folder: for each throw where it is and its record; and the text
/// size of the settings.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Lies {
    throws: BTreeMap<String, (bool, String)>,
    text: u16,
}

struct Meant {
    throws: BTreeMap<String, (bool, Journal)>,
    text: u16,
}

impl Meant {
    fn lies(&self) -> Lies {
        let throws = self.throws.iter();
        Lies {
            throws: throws
                .map(|(name, (deleted, journal))| (name.clone(), (*deleted, entries(journal))))
                .collect(),
            text: self.text,
        }
    }

    fn after(&self, step: &Step, at: Time) -> Meant {
        let mut throws = self.throws.clone();
        let mut text = self.text;
        match step {
            Step::Begin(name) => {
                let (journal, _) = Journal::begin(&beginning(name, 2, 2), at).unwrap();
                throws.insert((*name).into(), (false, journal));
            }
            Step::Act(name, request) => {
                let (_, journal) = throws.get_mut(*name).unwrap();
                assert!(done(journal, request, at), "{step:?} is not allowed");
            }
            Step::Text(size) => text = *size,
            Step::Delete(name) => throws.get_mut(*name).unwrap().0 = true,
            Step::Restore(name) => throws.get_mut(*name).unwrap().0 = false,
            Step::Erase(name) => {
                throws.remove(*name);
            }
        }
        Meant { throws, text }
    }
}

pub fn lies(folder: &Path) -> Lies {
    let store = desktop::store(folder.to_path_buf());
    let mut lies = Lies {
        text: store.settings().unwrap().unwrap_or_default().text,
        ..Lies::default()
    };
    for place in [Place::Throws, Place::Deleted] {
        for id in store.ids(place).unwrap() {
            let opened = store.read(place, &id);
            let opened = opened.unwrap_or_else(|why| panic!("{}: {why:?}", id.as_str()));
            let journal = opened.journal;
            let name = journal.throw().name.clone();
            let other = lies
                .throws
                .insert(name.clone(), (place == Place::Deleted, entries(&journal)));
            assert!(other.is_none(), "{name} is there twice");
        }
    }
    lies
}

/// The id of the throw of that name.
fn named(folder: &Path, name: &str) -> String {
    let store = desktop::store(folder.to_path_buf());
    for place in [Place::Throws, Place::Deleted] {
        for id in store.ids(place).unwrap() {
            let opened = store.read(place, &id);
            if opened.is_ok_and(|opened| opened.journal.throw().name == name) {
                return id.as_str().to_string();
            }
        }
    }
    String::from("not-there")
}

/// Do a step; the code of the problem if it is not done.
fn take(service: &mut Service, folder: &Path, step: &Step, at: Time) -> Result<(), String> {
    let done = match step {
        Step::Begin(name) => {
            let action = beginning(name, 2, 2);
            service
                .shelf_command(
                    &ShelfCommand::Begin {
                        action,
                        pile: Vec::new(),
                    },
                    at,
                )
                .map(|_| ())
        }
        Step::Act(name, request) => service.act(&named(folder, name), request, at).map(|_| ()),
        Step::Text(size) => {
            let prefs = Prefs {
                text: *size,
                ..Prefs::default()
            };
            service.set_prefs(prefs, at).map(|_| ())
        }
        Step::Delete(name) => {
            let id = named(folder, name);
            service
                .shelf_command(&ShelfCommand::Delete { id }, at)
                .map(|_| ())
        }
        Step::Restore(name) => {
            let id = named(folder, name);
            service
                .shelf_command(&ShelfCommand::Restore { id }, at)
                .map(|_| ())
        }
        Step::Erase(name) => {
            let id = named(folder, name);
            service
                .shelf_command(&ShelfCommand::Erase { id }, at)
                .map(|_| ())
        }
    };
    done.map_err(|problem| {
        assert!(
            problem.said.len() > 10 && problem.next.len() > 10,
            "{problem:?}"
        );
        problem.code
    })
}

/// Open what is left, see that it is one of those that may be, write, open again.
pub fn goes_on(folder: &Path, may_be: &[Lies], what: &str) {
    let mut service = serve(folder);
    let hello = service.hello(START);
    assert_eq!(hello.problem, None, "{what}");
    let rows = hello.shelf.rows.iter().chain(&hello.shelf.deleted);
    for row in rows {
        let torn = row.problem.as_ref().is_none_or(|p| p.code == "torn");
        assert!(torn && row.head.is_some(), "{what}: {row:?}");
    }
    let found = lies(folder);
    assert!(
        may_be.contains(&found),
        "{what}\nfound {found:#?}\nmay be {may_be:#?}"
    );
    for row in &hello.shelf.rows {
        let head = service.act(&row.id, &note("going on"), START).unwrap();
        service.set_prefs(Prefs::default(), START).unwrap();
        drop(service);
        service = serve(folder);
        assert_eq!(service.hello(START).problem, None, "{what}");
        let query = serde_json::from_value(json!({"see": "trim"})).unwrap();
        let seen = serde_json::to_value(service.view(&row.id, &query, START).unwrap()).unwrap();
        assert_eq!(seen["head"]["entry"], head.entry, "{what}");
    }
}

/// One morning with one fault; whether it was met.
fn morning(fault: Fault, then: Then, output: &mut Told) -> bool {
    let what = format!("{fault:?} {then:?}");
    let (folder, left) = (quick(), quick());
    let shown = folder.path().join("data");
    fs::create_dir(&shown).unwrap();
    let disk = Forgetful::new(&shown, Some(fault));
    let mut service = serve_on(shown.clone(), disk.clone());
    let _ = service.hello(START);
    let mut meant = Meant {
        throws: BTreeMap::new(),
        text: Prefs::default().text,
    };
    let mut may_be = vec![meant.lies()];
    let mut unsure: Option<(&str, Option<(bool, String)>)> = None;
    for (n, step) in script().iter().enumerate() {
        let at = START + n as Time;
        let after = meant.after(step, at);
        if unsure
            .as_ref()
            .is_some_and(|(name, _)| step.throw() == Some(name))
        {
            unsure = None;
        }
        may_be = match take(&mut service, &shown, step, at) {
            Ok(()) => vec![after.lies()],
            Err(code) => {
                *output.entry(code).or_default() += 1;
                vec![meant.lies(), after.lies()]
            }
        };
        if may_be.len() == 1 {
            meant = after;
            continue;
        }
        let now = lies(&shown);
        assert!(
            may_be.contains(&now),
            "{what}, {step:?}: {now:#?} {may_be:#?}"
        );
        if !matches!(then, Then::GoesOn(..)) {
            break;
        }
        // She sees what is there, which the window asks for at once, and does it again if it
        // is not.
        disk.mend();
        let _ = service.shelf(at);
        let output = matches!(step, Step::Text(_));
        if now != after.lies() || output {
            let again = take(&mut service, &shown, step, at);
            assert_eq!(again, Ok(()), "{what}, {step:?}");
        }
        may_be = vec![after.lies()];
        if let (Step::Delete(name) | Step::Restore(name) | Step::Erase(name), true) =
            (step, now == after.lies())
        {
            unsure = Some((name, meant.lies().throws.remove(*name)));
        }
        meant = after;
    }
    // She was told that the disk did not say it is safe, and did no more about it.
    if let Some((name, Some(throw))) = unsure {
        let mut back = may_be[0].clone();
        back.throws.insert(name.to_string(), throw);
        may_be.push(back);
    }
    let met = disk.count() > fault.at;
    drop(service);
    match then {
        Then::Reopens => goes_on(&shown, &may_be, &what),
        Then::PowerGoes(names, bytes) | Then::GoesOn(names, bytes) => {
            disk.after_power_cut(left.path(), names, bytes);
            goes_on(left.path(), &may_be, &what);
        }
    }
    met
}

#[test]
fn a_fault_at_every_operation() {
    let _alone = alone();
    // How many operations the morning has.
    let folder = quick();
    let shown = folder.path().join("data");
    fs::create_dir(&shown).unwrap();
    let disk = Forgetful::new(&shown, None);
    let mut service = serve_on(shown.clone(), disk.clone());
    assert_eq!(service.hello(START).problem, None);
    for (n, step) in script().iter().enumerate() {
        take(&mut service, &shown, step, START + n as Time).unwrap();
    }
    let count = disk.count();
    let plain = Fault {
        at: 0,
        how: How::Fails(EIO),
        lasting: false,
        forgets: false,
    };
    let kinds = [
        plain,
        Fault {
            forgets: true,
            ..plain
        },
        Fault {
            lasting: true,
            ..plain
        },
        Fault {
            lasting: true,
            forgets: true,
            ..plain
        },
        Fault {
            how: How::Fails(ENOSPC),
            ..plain
        },
        Fault {
            how: How::Fails(EROFS),
            lasting: true,
            ..plain
        },
        Fault {
            how: How::Late(EIO),
            ..plain
        },
        Fault {
            how: How::Late(EIO),
            lasting: true,
            ..plain
        },
        Fault {
            how: How::Short,
            ..plain
        },
    ];
    let all = cases(count, &kinds);
    let (met, output) = in_halves(&all, morning);
    println!(
        "a fault at each of {count} operations: {} cases, {met} met, told {output:?}, lost: 0",
        all.len()
    );
    assert!(met > 1500);
}
