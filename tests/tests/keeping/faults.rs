//! A disk that fails at each operation of keeping photos, importing, merging and exporting.

use super::*;

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
fn play(scene: &Scene, (meant, fault, then): (&[Lies], Fault, Then), output: &mut Told) -> bool {
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
                *output.entry(problem.code).or_default() += 1;
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
        let (met, output) = in_halves(&cases, |fault, then, output| {
            play(&scene, (&meant, fault, then), output)
        });
        println!(
            "{}: a fault at each of {count} operations, {} cases, {met} met, told {output:?}, lost: 0",
            scene.name,
            cases.len()
        );
        assert!(met * 10 > cases.len() * 8, "{}", scene.name);
        all += cases.len();
    }
    println!("in all {all} cases");
}
