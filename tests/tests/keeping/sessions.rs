//! What a session that ended badly left is on the disk before the next one shows it.

use super::*;

/// After a life that ended badly: opened again on the same disk, which is well, worked on,
/// and then the power goes. All that was acknowledged is there; and all that was shown, unless
/// a sync had failed (`told` of then), after which the next may say that all is well when it
/// is not.
fn lives_on(root: &Path, disk: &Forgetful, output: bool, what: &str) {
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
    if !output {
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
                .shelf_command(
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
