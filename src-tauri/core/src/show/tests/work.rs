//! The step screen: what a card says, which pieces a tick names, what may be noted.

use super::*;

#[test]
fn the_demo_says_what_is_next() {
    let words = Words::english();
    let now = 1_800_000_000_000;
    let journal = crate::demo::throw(now);
    let context = Context {
        now,
        ..context(&words)
    };
    let view = work_view(&journal, None, context);
    let card = view.card.unwrap();
    assert_eq!(
        (card.title.as_str(), card.which.as_str()),
        ("Cut a square", "Square 7·4")
    );
    let labels: Vec<&str> = card.ticks.iter().map(|b| b.label.as_str()).collect();
    // It was to be of the dark jeans, of which nothing is left to cut; those at hand are not.
    assert_eq!(labels, ["Take one of 2 spares of Faded jeans", "Cut"]);
    let told = "Nothing on the pile gives another square of Dark jeans.";
    assert!(card.how[0].starts_with(told), "{:?}", card.how);
    let iron = work_view(&journal, Some(Station::Iron), context)
        .card
        .unwrap();
    assert_eq!(iron.task, Task::CoolLap);
    assert_eq!(iron.cool_at, Some(now - 60_000 + 300_000));
    // Once its time is over the bench has it cool too.
    let bench = |now| {
        let chosen = Some(iron.piece);
        let at = Context { now, ..context };
        match answer(&journal, &Query::Bench { chosen }, at) {
            Ok(View::Bench(view)) => plain(&view.chosen[0].lines),
            other => panic!("{other:?}"),
        }
    };
    assert!(
        bench(now).contains("Next: let the lap cool"),
        "{}",
        bench(now)
    );
    let later = bench(now + 300_000);
    assert!(later.contains("Next: stitch"), "{later}");
}

/// A fabric glued on a square that is spoilt went with it, and so it is counted.
#[test]
fn a_spoilt_square_takes_its_fabric_with_it() {
    let words = Words::english();
    let context = context(&words);
    let mut prints = crate::demo::prints();
    prints[0].stock = Some(Count::from(4));
    let (mut journal, _) = Journal::begin(
        &Command::Begin {
            name: "T".into(),
            plan: Plan {
                across: 4,
                down: 4,
                ..Plan::default()
            },
            prints,
            denims: crate::demo::denims(),
        },
        0,
    )
    .unwrap();
    let squares: Vec<Rect> = journal.throw().assembly().whole().squares().collect();
    let face = |pieces: &[Rect]| Command::SetFace {
        pieces: pieces.to_vec(),
        face: Face::Front,
        print: Some(0),
        laid_on: false,
    };
    act(&mut journal, &face(&squares[..2]), 1);
    let count = |journal: &Journal| parts::swatches(journal, context)[0].count.clone();
    assert_eq!(count(&journal), "2 of 4 used");
    for task in [Task::Cut, Task::CoverFront] {
        let pieces = vec![squares[0]];
        act(&mut journal, &Command::Tick { task, pieces }, 2);
    }
    // What is put in its place takes another of that fabric.
    let query = Query::Off {
        piece: squares[0],
        why: Some(crate::throw::Mishap::Scorched),
    };
    let Ok(View::Off(off)) = answer(&journal, &query, context) else {
        panic!()
    };
    let anew =
        "The fabric glued on it is lost with it: glue on another square of Rosehip; 2 are left.";
    let recut = off
        .ways
        .iter()
        .find(|way| way.title.starts_with("Cut another"));
    assert!(
        recut.unwrap().lines.contains(&anew.to_string()),
        "{:?}",
        off.ways
    );
    // With it on both faces two are lost, and three are used: one of four is left.
    let mut both = journal.clone();
    let back = Command::SetFace {
        pieces: vec![squares[0]],
        face: Face::Back,
        print: Some(0),
        laid_on: false,
    };
    act(&mut both, &back, 2);
    let (task, pieces) = (Task::CoverBack, vec![squares[0]]);
    act(&mut both, &Command::Tick { task, pieces }, 2);
    let Ok(View::Off(off)) = answer(&both, &query, context) else {
        panic!()
    };
    let recut = off
        .ways
        .iter()
        .find(|way| way.title.starts_with("Cut another"));
    let told: Vec<&String> = recut
        .unwrap()
        .lines
        .iter()
        .filter(|line| line.contains("lost"))
        .collect();
    let anew = "The fabric glued on both faces is lost with it: that takes two other squares of Rosehip; one is left.";
    assert_eq!(told, [anew]);
    let spoil = Command::Spoil {
        piece: squares[0],
        why: crate::throw::Mishap::Scorched,
    };
    act(&mut journal, &spoil, 3);
    assert_eq!(count(&journal), "2 used, 1 spoilt, 1 left");
    // One more is all there is.
    assert!(journal.propose(&face(&squares[2..4]), 4).is_err());
    act(&mut journal, &face(&squares[2..3]), 4);
    assert_eq!(count(&journal), "3 used, 1 spoilt, 0 left");
    for at in [5, 6] {
        let entry = journal.propose_undo(at).unwrap();
        journal.accept(entry).unwrap();
    }
    assert_eq!(count(&journal), "2 of 4 used");
}

/// The card says which denim a square is cut from, and how many from each are to come.
#[test]
fn the_cut_card_names_the_denim() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    let squares: Vec<Rect> = journal.throw().assembly().whole().squares().collect();
    let faded = Command::SetDenim {
        pieces: squares[..3].to_vec(),
        denim: 1,
        wrong_side_up: false,
    };
    act(&mut journal, &faded, 1);
    let look_at = Query::Work {
        station: None,
        batch: Some((Task::Cut, Kind::Square)),
    };
    let Ok(View::Work(seen)) = answer(&journal, &look_at, context) else {
        panic!()
    };
    let card = seen.card.unwrap();
    let names = crate::demo::denims().into_iter().map(|d| d.name);
    let names: Vec<String> = names.collect();
    let from = card.figures.iter().find(|f| f.label == "From").unwrap();
    assert_eq!(from.value.text, names[1]);
    let texts = format!("Still to cut: 13 from {}, 3 from {}.", names[0], names[1]);
    assert_eq!(card.how[0], texts);
}

/// What is left over is what was made: pairs, where only pairs were.
#[test]
fn what_is_left_over_exists() {
    use crate::plan::assembly::Kind;
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    for (task, kind, count) in [(Task::Cut, Kind::Square, 16), (Task::Dot, Kind::Pair, 6)] {
        act(
            &mut journal,
            &Command::TickNext {
                task,
                kind,
                count: Count::from(count),
            },
            1,
        );
    }
    let plan = Plan {
        down: 2,
        ..journal.throw().plan
    };
    let throw = journal.throw();
    let events = crate::command::decide(Some(throw), &Command::ChangePlan { plan }).unwrap();
    let after = throw.after(&events);
    let words = Words::english();
    let said = change::left_over(throw, &after, context(&words));
    assert_eq!(
        said.as_deref(),
        Some("Left over: 2 pairs, for cushion fronts or corners of the next throw.")
    );
    // The four squares that were cut and never joined are not lost with them.
    assert_eq!((after.aside.len(), after.spares.get()), (2, 4));
}

/// A tick for several names those alike; one for all says where figures differ.
#[test]
fn ticks_say_what_they_count() {
    use crate::plan::assembly::Kind;
    let mut journal = bare_denim(4, 4);
    let cut = Command::TickNext {
        task: Task::Cut,
        kind: Kind::Square,
        count: Count::from(16),
    };
    act(&mut journal, &cut, 1);
    let labels = |journal: &Journal| -> Vec<String> {
        let card = card_of(journal, Task::Dot, Kind::Pair);
        let labels = card.ticks.into_iter().map(|b| b.label);
        labels.map(|l| l.replace('\u{a0}', " ")).collect()
    };
    assert_eq!(
        labels(&journal),
        [
            "These 4 lapped and pressed",
            "This one lapped and pressed",
            "This one lapped, not pressed yet",
            "All 8 lapped, not pressed yet"
        ]
    );
    let (a, b) = (Rect::square(3, 2), Rect::square(3, 3));
    let narrower = Command::MarkLaps {
        laps: vec![(a, b, Some(sixty_fourths(28)))],
    };
    act(&mut journal, &narrower, 2);
    assert_eq!(
        labels(&journal),
        [
            "These 4 lapped and pressed",
            "This one lapped and pressed",
            "This one lapped, not pressed yet",
            "These 7 at ½ in lapped, not pressed yet",
            "All 8 lapped, not pressed yet (laps differ)"
        ]
    );
}

#[test]
fn a_note_says_at_which_piece_it_was_written() {
    let mut journal = begin(Plan::default());
    let note = |text: &str, col: u16| Command::Note {
        text: text.into(),
        piece: Some(Rect::square(0, col)),
        task: Some(Task::Cut),
        next: false,
    };
    act(&mut journal, &note("mine", 0), 1);
    act(&mut journal, &note("the other’s", 3), 2);
    let card = card_of(&journal, Task::Cut, Kind::Square);
    assert_eq!(card.which, "Square 1·1");
    assert_eq!(card.notes, ["mine"]);
    // What was written at a part of a piece is read at the piece, with its place.
    let throw = journal.throw();
    let whole = throw.assembly().whole();
    let told = crate::show::lessons::notes_at(throw, Task::Cut, whole, context(&Words::english()));
    assert_eq!(
        told,
        [
            "Written at Square 1·4: the other’s",
            "Written at Square 1·1: mine"
        ]
    );
}

#[test]
fn fabric_is_asked_for_before_the_first_lap_and_only_once() {
    use crate::plan::assembly::Kind;
    let words = Words::english();
    let mut journal = begin(Plan {
        across: 2,
        down: 2,
        ..Plan::default()
    });
    let first = shown_work(&journal, &words);
    let ask = first.ask.expect("asked");
    // The question stands alone; squares may be cut before it is answered, if that is taken up.
    assert!(first.card.is_none() && first.offers.iter().any(|o| o.task == Task::Cut));
    let cutting = Query::Work {
        station: None,
        batch: Some((Task::Cut, Kind::Square)),
    };
    let Ok(View::Work(cutting)) = answer(&journal, &cutting, context(&words)) else {
        panic!()
    };
    assert!(cutting.ask.is_none() && cutting.card.is_some());
    next(&mut journal, Task::Cut, Kind::Square, 4);
    let before_lap = shown_work(&journal, &words);
    words_are_whole(&before_lap);
    assert!(before_lap.ask.is_some() && before_lap.card.is_none() && before_lap.rest.is_none());
    assert_eq!(shelf_row("x", &journal, context(&words)).next, ask.title);
    act(&mut journal, &ask.bare.action, 2);
    let answered = shown_work(&journal, &words);
    assert_eq!(answered.ask, None);
    assert_eq!(answered.card.map(|c| c.task), Some(Task::Dot));
    // Nor is it asked where no fabric is listed.
    let plain = Command::Begin {
        name: "T".into(),
        plan: Plan::default(),
        prints: vec![],
        denims: vec![],
    };
    let journal = Journal::begin(&plain, 0).unwrap().0;
    assert_eq!(shown_work(&journal, &words).ask, None);
}

/// By hand: two pairs of 5 in squares, lapped 1/2 in and stitched, are joined to a four. In the
/// picture the left square of each pair lies 12.7 mm over the right one and is drawn after it, and
/// the two rows of a 4 mm twin needle run 2 mm to each side of the middle of that lap.
#[test]
fn a_stitched_pair_is_drawn_lapped_with_both_rows() {
    use crate::show::{Ink, Mark};
    let mut journal = bare_denim(2, 2);
    next(&mut journal, Task::Cut, Kind::Square, 4);
    for task in [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch] {
        next(&mut journal, task, Kind::Pair, 2);
    }
    let picture = card_of(&journal, Task::Dot, FOUR).picture;
    let area = |name: &str| {
        let found = picture
            .marks
            .iter()
            .enumerate()
            .find_map(|(n, mark)| match mark {
                Mark::Area {
                    x,
                    y,
                    w,
                    h,
                    label: Some(label),
                    ..
                } if label == name => Some((n, [*x, *y, *w, *h])),
                _ => None,
            });
        found.unwrap_or_else(|| panic!("{name} is drawn"))
    };
    let near = |a: f64, b: f64| (a - b).abs() < 0.01;
    let ((left_at, left), (right_at, right)) = (area("1·1"), area("1·2"));
    assert!(left_at > right_at, "the left one lies over the right one");
    assert!(
        near(left[0] + left[2] - right[0], 12.7),
        "{left:?} {right:?}"
    );
    assert!(near(left[2], 127.0) && near(right[0] + right[2], 241.3));
    let middle = right[0] + 12.7 / 2.0;
    for at in [middle - 2.0, middle + 2.0] {
        let row = picture.marks.iter().any(|mark| match mark {
            Mark::Line { x1, x2, ink, .. } => *ink == Ink::Stitch && near(*x1, at) && near(*x2, at),
            _ => false,
        });
        assert!(row, "a row of stitches at {at}");
    }
}

/// A throw is finished when its last step is done, and a note later does not change when.
#[test]
fn the_shelf_says_since_when_a_throw_is_finished() {
    use crate::show::shelf_row;
    let words = Words::english();
    let mut journal = bare_denim(2, 1);
    let finished = |journal: &Journal| shelf_row("x", journal, context(&words)).finished;
    let mut at = 10_000_000;
    for _ in 0..60 {
        let view = work_view(&journal, None, context(&words));
        let Some(card) = view.card else { break };
        assert_eq!(finished(&journal), None);
        at += 3_600_000;
        let tick = for_all(&card).action.clone();
        act(&mut journal, &tick, at);
    }
    assert_eq!(finished(&journal), Some(at));
    let note = Command::Note {
        text: "It is on the chair.".into(),
        piece: None,
        task: None,
        next: false,
    };
    act(&mut journal, &note, at + 50);
    assert_eq!(finished(&journal), Some(at));
}
