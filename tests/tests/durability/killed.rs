//! The app killed at random moments.

use super::*;

/// Does one deed after another and says so after each, until it is killed.
#[test]
fn part_maker() {
    let _alone = alone();
    let Some((folder, seed)) = asked("killed::part_maker") else {
        return;
    };
    let mut service = serve(folder);
    let hello = service.hello(START);
    if let Some(problem) = hello.problem {
        say(&format!("problem {}", problem.code));
        return;
    }
    say("ready");
    let mut chance = Chance(seed);
    let id = "a";
    for at in 0..400 {
        let request = request(&mut chance);
        let done = service.act(id, &request, START + at);
        say(&format!("done {at} {}", done.is_ok()));
        match at % 16 {
            5 => {
                let prefs = Prefs {
                    text: 100 + (at % 90) as u16,
                    ..Prefs::default()
                };
                service.set_prefs(prefs, START).unwrap();
            }
            9 => {
                let action = beginning("Passing", 2, 2);
                let begun = service
                    .shelf_command(
                        &ShelfCommand::Begin {
                            action,
                            pile: Vec::new(),
                        },
                        START,
                    )
                    .unwrap()
                    .id
                    .unwrap();
                service
                    .shelf_command(&ShelfCommand::Delete { id: begun.clone() }, START)
                    .unwrap();
                service
                    .shelf_command(&ShelfCommand::Erase { id: begun }, START)
                    .unwrap();
            }
            13 => {
                service
                    .shelf_command(&ShelfCommand::Delete { id: id.into() }, START)
                    .unwrap();
                service
                    .shelf_command(&ShelfCommand::Restore { id: id.into() }, START)
                    .unwrap();
            }
            _ => {}
        }
    }
}

/// Kill a maker `kills` times in one folder after another; gives deeds acknowledged,
/// deeds in flight that were kept, and torn lines.
fn kill_makers(kills: u64, seed: u64) -> (u64, u64, u64) {
    let mut chance = Chance(seed);
    let (mut acknowledged, mut in_flight, mut torn) = (0, 0, 0);
    let mut folder = tempfile::tempdir().unwrap();
    let mut journal = record(seed, 1);
    claimed(folder.path()).begin(&id(), &journal).unwrap();
    for round in 0..kills {
        if round % 30 == 29 {
            folder = tempfile::tempdir().unwrap();
            journal = record(seed + round, 1);
            claimed(folder.path()).begin(&id(), &journal).unwrap();
        }
        let its_seed = chance.draw();
        let (mut child, mut out) = spawn(&mut part(
            "killed::part_maker",
            folder.path(),
            its_seed,
            &[],
        ));
        assert!(line(&mut out, "ready").is_some(), "it did not start");
        let most = 1 + chance.below(30);
        let mut acked = 0;
        let mut said = Vec::new();
        while acked < most {
            let Some(answer) = line(&mut out, "done ") else {
                break;
            };
            said.push(answer.ends_with("true"));
            acked += 1;
        }
        std::thread::sleep(Duration::from_micros(chance.below(2500)));
        kill(&mut child);
        while let Some(answer) = line(&mut out, "done ") {
            if answer.split(' ').count() == 3 {
                said.push(answer.ends_with("true"));
            }
        }
        acknowledged += said.len() as u64;
        // What must be there: all that was said, perhaps one deed more.
        let mut its = Chance(its_seed);
        for (at, fine) in said.iter().enumerate() {
            let did = done(&mut journal, &request(&mut its), START + at as Time);
            assert_eq!(did, *fine, "deed {at} of {its_seed}");
        }
        let mut after = journal.clone();
        done(&mut after, &request(&mut its), START + said.len() as Time);

        let mut service = serve(folder.path());
        assert_eq!(service.hello(START).problem, None);
        let mut shelf = service.shelf(START);
        if shelf.rows.iter().all(|row| row.id != "a") {
            // Killed between deleting and restoring.
            let restored = service.shelf_command(&ShelfCommand::Restore { id: "a".into() }, START);
            shelf = restored.unwrap().shelf;
        }
        for row in shelf.rows.iter().chain(&shelf.deleted) {
            let fine = row
                .problem
                .as_ref()
                .is_none_or(|problem| problem.code == "torn");
            torn += u64::from(row.problem.is_some());
            assert!(fine && row.head.is_some(), "{row:?}");
        }
        let text = read(folder.path()).0.journal.text();
        if text == after.text() && text != journal.text() {
            in_flight += 1;
            journal = after;
        }
        assert_eq!(
            text,
            journal.text(),
            "kill {round}, {} acknowledged",
            said.len()
        );
        // And on: write, and open again.
        service.act("a", &note("after the dark"), START).unwrap();
        assert!(done(&mut journal, &note("after the dark"), START));
        drop(service);
        assert_eq!(read(folder.path()).0.journal.text(), journal.text());
    }
    (acknowledged, in_flight, torn)
}

#[test]
fn killed_at_any_moment() {
    let _alone = alone();
    const KILLS: u64 = 300;
    let sums = std::thread::scope(|scope| {
        let two = [1000, 2000].map(|seed| scope.spawn(move || kill_makers(KILLS / 2, seed)));
        two.map(|one| one.join().unwrap())
    });
    let acknowledged: u64 = sums.iter().map(|sum| sum.0).sum();
    let in_flight: u64 = sums.iter().map(|sum| sum.1).sum();
    let torn: u64 = sums.iter().map(|sum| sum.2).sum();
    println!(
        "killed with -9: {KILLS} kills, {acknowledged} deeds acknowledged, lost: 0; \
         {in_flight} in flight kept whole, {torn} torn lines"
    );
    assert!(acknowledged > 2000);
}
