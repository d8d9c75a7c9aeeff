//! The order in which bytes and names are synced.

use super::*;

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
