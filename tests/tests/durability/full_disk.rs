//! A disk that is full, and a file that may not grow.

use super::*;

/// Fill the data folder's disk to all but so much, then work until it is full; see that
/// nothing is lost; make room and go on. Gives how many writes were refused.
fn full(data: &Path, filler: &Path, room: u64, long: usize) -> usize {
    let _ = fs::remove_dir_all(data);
    let mut service = serve(data);
    assert_eq!(service.hello(START).problem, None);
    let id = service
        .shelf_command(&ShelfCommand::Demo, START)
        .unwrap()
        .id
        .unwrap();
    // All of the disk, then give back `room`.
    let mut fill = fs::File::create(filler).unwrap();
    let block = [1u8; 1024];
    while fill.write_all(&block).is_ok() {}
    let length = fill.metadata().unwrap().len();
    fill.set_len(length.saturating_sub(room)).unwrap();
    drop(fill);
    let file = data.join("throws").join(&id).join("throw.jsonl");
    let mut refused = 0;
    for n in 0..400 {
        let kept = fs::read(&file).unwrap();
        let request = note(&format!("{n} {}", "x".repeat(long)));
        if let Err(problem) = service.act(&id, &request, START) {
            assert_eq!(problem.code, "disk", "{problem:?}");
            assert!(problem.said.contains("full"), "{problem:?}");
            assert_eq!(fs::read(&file).unwrap(), kept);
            refused += 1;
            break;
        }
    }
    let prefs = Prefs {
        text: 140,
        ..Prefs::default()
    };
    if let Err(problem) = service.set_prefs(prefs, START) {
        assert_eq!(problem.code, "disk");
        refused += 1;
    }
    if let Err(problem) = service.shelf_command(&ShelfCommand::Demo, START) {
        assert_eq!(problem.code, "disk");
        assert_eq!(
            service.shelf(START).rows.len(),
            1,
            "half a throw is on the shelf"
        );
        refused += 1;
    }
    // A torn line cannot be mended now, and is left as it is.
    let whole = fs::read(&file).unwrap();
    drop(service);
    let cut = fs::OpenOptions::new().write(true).open(&file).unwrap();
    cut.set_len(whole.len() as u64 - 3).unwrap();
    let mut service = serve(data);
    let hello = service.hello(START);
    let row = hello.shelf.rows.iter().find(|row| row.id == id).unwrap();
    let code = row.problem.as_ref().unwrap().code.clone();
    assert!(row.head.is_some() && ["torn", "torn-left"].contains(&code.as_str()));
    if code == "torn-left" {
        assert_eq!(fs::read(&file).unwrap(), whole[..whole.len() - 3]);
        assert!(service.act(&id, &note("no"), START).is_err());
        refused += 1;
    }
    drop(service);
    fs::remove_file(filler).unwrap();
    let mut service = serve(data);
    let head = service
        .hello(START)
        .shelf
        .rows
        .into_iter()
        .find(|row| row.id == id);
    let before = head.and_then(|row| row.head).unwrap().entry;
    let after = service.act(&id, &note("room again"), START).unwrap();
    assert_eq!(after.entry, before + 1);
    drop(service);
    let mut service = serve(data);
    let shelf = service.hello(START).shelf;
    let row = shelf.rows.iter().find(|row| row.id == id).unwrap();
    assert_eq!(row.problem, None);
    assert_eq!(row.head.as_ref().unwrap().entry, after.entry);
    refused
}

#[test]
fn part_full() {
    let _alone = alone();
    let Some((disk, _)) = asked("full_disk::part_full") else {
        return;
    };
    let (mut cases, mut refused) = (0, 0);
    for pages in 0..14 {
        for long in [0, 40, 300, 900, 1900] {
            refused += full(&disk.join("data"), &disk.join("filler"), pages * 4096, long);
            cases += 1;
        }
    }
    say(&format!(
        "said a full disk: {cases} cases, {refused} writes refused, lost: 0"
    ));
}

/// The system lets no file grow past a limit, at every byte of an entry.
#[test]
fn part_limited() {
    let _alone = alone();
    let Some((folder, _)) = asked("full_disk::part_limited") else {
        return;
    };
    let journal = record(9, 20);
    let mut cases = 0;
    for long in [0, 700] {
        let request = note(&format!("so {}", "x".repeat(long)));
        let mut after = journal.clone();
        done(&mut after, &request, START);
        let (least, most) = (journal.text().len(), after.text().len());
        for limit in least..=most {
            let folder = folder.join(format!("{long}-{limit}"));
            claimed(&folder).begin(&id(), &journal).unwrap();
            let mut service = serve(folder.clone());
            assert_eq!(service.hello(START).problem, None);
            let limits = |current: Option<u64>| Rlimit {
                current,
                maximum: None,
            };
            setrlimit(Resource::Fsize, limits(Some(limit as u64))).unwrap();
            let kept = service.act("a", &request, START);
            let bytes = read(&folder).1;
            setrlimit(Resource::Fsize, limits(None)).unwrap();
            assert_eq!(kept.is_ok(), limit == most, "{limit}");
            let meant = if limit == most { &after } else { &journal };
            assert_eq!(bytes, meant.text().as_bytes(), "{limit}");
            service.act("a", &note("on"), START).unwrap();
            drop(service);
            assert_eq!(read(&folder).0.journal.len(), meant.len() + 1);
            cases += 1;
        }
    }
    say(&format!(
        "said a file that may not grow (EFBIG): {cases} cases, lost: 0"
    ));
}

#[test]
fn a_disk_that_is_full() {
    let _alone = alone();
    let folder = tempfile::tempdir().unwrap();
    let disk = folder.path().join("disk");
    fs::create_dir(&disk).unwrap();
    let mount = "mount -t tmpfs -o size=512k none \"$1\" && shift && exec \"$@\"";
    let place = disk.to_str().unwrap();
    let before = ["unshare", "--mount", "sh", "-c", mount, "sh", place];
    match run(part("full_disk::part_full", &disk, 0, &before)) {
        Some(said) => println!("{said} (a tmpfs of 512 KiB)"),
        None => println!(
            "a full disk: no tmpfs may be mounted here; ENOSPC at every operation stands in \
             for it (a_fault_at_every_operation)"
        ),
    }
    let limit = ["sh", "-c", "trap '' XFSZ; exec \"$@\"", "sh"];
    let said = run(part("full_disk::part_limited", quick().path(), 0, &limit));
    println!("{}", said.expect("a shell"));
}
