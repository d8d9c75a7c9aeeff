//! Two programs on one data folder.

use super::*;

/// Tries to write, a few deeds if it may, and says what it kept.
#[test]
fn part_rival() {
    let _alone = alone();
    let Some((folder, seed)) = asked("two_writers::part_rival") else {
        return;
    };
    let mut service = serve(folder);
    let mut kept = 0;
    for n in 0..8 {
        match service.act("a", &note(&format!("{seed}-{n}")), START) {
            Ok(_) => kept += 1,
            Err(problem) => assert_eq!(problem.code, "locked", "{problem:?}"),
        }
    }
    say(&format!("said {kept}"));
}

#[test]
fn two_on_one_folder() {
    let _alone = alone();
    // One holds the folder, the other looks on.
    let folder = tempfile::tempdir().unwrap();
    claimed(folder.path()).begin(&id(), &record(2, 1)).unwrap();
    let (mut child, mut out) = spawn(&mut part("killed::part_maker", folder.path(), 5, &[]));
    assert!(line(&mut out, "done ").is_some());
    let mut looking = serve(folder.path());
    let hello = looking.hello(START);
    assert_eq!(hello.problem.unwrap().code, "locked");
    let mut refused = 0;
    for _ in 0..50 {
        let problem = looking.act("a", &note("no"), START).unwrap_err();
        assert!(
            ["locked", "no-such-throw"].contains(&problem.code.as_str()),
            "{problem:?}"
        );
        refused += 1;
    }
    kill(&mut child);
    assert_eq!(looking.hello(START).problem, None);
    if looking.shelf(START).rows.is_empty() {
        looking
            .shelf_command(&ShelfCommand::Restore { id: "a".into() }, START)
            .unwrap();
    }
    looking.act("a", &note("now"), START).unwrap();
    drop(looking);
    assert!(!read(folder.path()).0.torn());
    // Three rush at it.
    let mut kept = 0;
    let mut journal_was = read(folder.path()).0.journal.len();
    for round in 0..12 {
        let three = [0, 1, 2].map(|n| {
            let mut rival = part("two_writers::part_rival", folder.path(), round * 3 + n, &[]);
            spawn(&mut rival)
        });
        let mut now = 0;
        for (mut child, mut out) in three {
            let said = line(&mut out, "said ").expect("it ends well");
            now += said.trim_start_matches("said ").parse::<usize>().unwrap();
            assert!(child.wait().unwrap().success());
        }
        let opened = read(folder.path()).0;
        assert!(!opened.torn());
        assert_eq!(opened.journal.len(), journal_was + now, "round {round}");
        journal_was = opened.journal.len();
        kept += now;
    }
    assert!(kept > 0);
    println!(
        "two on one folder: {refused} deeds refused while held; 12 rushes of 3 processes, \
         {kept} deeds acknowledged, lost: 0"
    );
}
