//! The way through the work: how many taps it takes, what cools by itself, what comes next.

use super::*;
use crate::throw::Event;
use crate::throw::tasks::sitting;

/// Lay out fabrics on a throw of the demo's plan.
fn laid_out(plan: Plan, front: u32, back: u32) -> Journal {
    let mut journal = begin(plan);
    let wishes = Wishes {
        front: Count::at_most(front),
        back: Count::at_most(back),
        ..Wishes::default()
    };
    let layout = Arranger::new(journal.throw(), wishes, 1).layout(journal.throw());
    act(&mut journal, &Command::LayOut { wishes, layout }, 0);
    journal
}

/// What a command ticks: its tasks and to how many pieces.
fn ticked(action: &Command) -> (Vec<Task>, usize) {
    match action {
        Command::Tick { task, pieces } => (vec![*task], pieces.len()),
        Command::TickSitting { tasks, pieces } => (tasks.clone(), pieces.len()),
        Command::TickNext { task, count, .. } => (vec![*task], count.get() as usize),
        other => panic!("{other:?}"),
    }
}

/// Work a throw by its large button alone, and wait where something has to cool; gives what was
/// ticked by each tap.
fn by_the_large_button(mut journal: Journal) -> Vec<(Task, usize)> {
    let words = Words::english();
    let (mut now, mut taps) = (0, Vec::new());
    for _ in 0..2000 {
        let here = Context {
            now,
            ..context(&words)
        };
        let view = work_view(&journal, None, here);
        let Some(card) = view.card else { break };
        if let Some(at) = card.cool_at.filter(|at| *at > now) {
            // It cools by itself.
            now = at;
            continue;
        }
        // Squaring up is counted as one tap for all, as fours are that were not measured.
        let button = match card.task {
            Task::SquareUp => card.ticks.last().unwrap(),
            _ => &card.ticks[0],
        };
        let action = &button.action;
        let (tasks, pieces) = ticked(action);
        // Nothing is ticked that was not told: each task with how it is done, and all pieces.
        for task in &tasks {
            let texts = crate::show::work::usual_how(journal.throw(), *task, card.piece, here);
            let first = texts.lines().next().unwrap_or_default();
            let at = *task == Task::Dot || card.how.iter().any(|line| line == first);
            assert!(at, "{task:?} is not told: {:?}", card.how);
        }
        if pieces > 1 && card.task != Task::SquareUp {
            let together = card.together.as_deref().unwrap_or_default();
            assert_eq!(together, format!("the first of {pieces}"));
            let label = &button.label;
            assert!(label.contains(&pieces.to_string()), "{label}");
        }
        taps.push((tasks[0], pieces));
        // A sitting takes its time.
        let minutes: f64 = tasks.iter().map(|t| t.usual_minutes()).sum();
        now += (minutes * pieces as f64 * 60_000.0) as Time;
        act(&mut journal, action, now);
    }
    let (done, all) = journal.throw().progress();
    assert_eq!(done, all, "it does not come to its end");
    taps
}

/// Measuring the fours is not counted; squaring them up is one tap.
#[test]
fn a_throw_of_six_by_eight_takes_few_taps() {
    let without = Plan {
        trim_edge: false,
        ..Plan::default()
    };
    let taps = by_the_large_button(laid_out(without, 16, 12));
    println!("{} taps: {taps:?}", taps.len());
    assert!(taps.len() <= 40, "{} taps: {taps:?}", taps.len());
    // Trimming the edge is one tap more, and two rows with a single needle are none.
    let two_rows = Plan {
        stitch: crate::plan::Stitch::TwoRows {
            spacing: tenths_of_mm(60),
        },
        ..Plan::default()
    };
    for plan in [Plan::default(), two_rows] {
        let trimmed = by_the_large_button(laid_out(plan, 16, 12));
        assert_eq!(trimmed.len(), taps.len() + 1, "{trimmed:?}");
    }
}

#[test]
fn what_has_cooled_is_ready_and_is_recorded_with_the_work_that_wanted_it() {
    let words = Words::english();
    let mut journal = begin(Plan {
        across: 2,
        down: 2,
        ..Plan::default()
    });
    act(
        &mut journal,
        &Command::Wish {
            wishes: Wishes::default(),
        },
        0,
    );
    next(&mut journal, Task::Cut, Kind::Square, 4);
    let pairs = [Rect::from([0, 0, 1, 2]), Rect::from([1, 0, 1, 2])];
    let sit = Command::TickSitting {
        tasks: sitting(Task::Dot, Joining::Lapped).to_vec(),
        pieces: pairs.to_vec(),
    };
    act(&mut journal, &sit, 1_000);
    let cool_at = 1_000 + 5 * 60_000;
    let card_at = |journal: &Journal, now| {
        let here = Context {
            now,
            ..context(&words)
        };
        work_view(journal, None, here).card.unwrap()
    };
    let warm = card_at(&journal, cool_at - 1);
    assert_eq!((warm.task, warm.cool_at), (Task::CoolLap, Some(cool_at)));
    // A moment before, a stitch is refused; at the moment it records the cooling too.
    let stitch = Command::Tick {
        task: Task::Stitch,
        pieces: vec![pairs[0]],
    };
    assert!(journal.propose(&stitch, cool_at - 1).is_err());
    let cool = card_at(&journal, cool_at);
    assert_eq!((cool.task, cool.cool_at), (Task::Stitch, None));
    act(&mut journal, &stitch, cool_at);
    let throw = journal.throw();
    assert!(throw.has(pairs[0], Task::CoolLap) && throw.has(pairs[0], Task::Stitch));
    // The other has cooled as well, but nothing was done to it.
    assert!(!throw.has(pairs[1], Task::CoolLap));
    let undo = journal.propose_undo(cool_at).unwrap();
    journal.accept(undo).unwrap();
    assert!(!journal.throw().has(pairs[0], Task::CoolLap));
    // She may say so earlier.
    let early = Command::Tick {
        task: Task::CoolLap,
        pieces: pairs.to_vec(),
    };
    act(&mut journal, &early, cool_at + 1);
    assert!(journal.throw().has(pairs[1], Task::CoolLap));
}

/// The clock stood at 2100 when a lap was pressed, and was put right since: nothing waits until
/// then, and nothing is taken for cool that may be warm.
#[test]
fn a_press_in_the_far_future_holds_nothing_up() {
    let words = Words::english();
    let mut journal = begin(Plan {
        across: 2,
        down: 1,
        ..Plan::default()
    });
    let wishes = Wishes::default();
    act(&mut journal, &Command::Wish { wishes }, 0);
    next(&mut journal, Task::Cut, Kind::Square, 2);
    let pair = Rect::from([0, 0, 1, 2]);
    let (now, year_2100) = (1_773_230_400_000, 4_102_444_800_000);
    let sit = Command::TickSitting {
        tasks: sitting(Task::Dot, Joining::Lapped).to_vec(),
        pieces: vec![pair],
    };
    act(&mut journal, &sit, year_2100);
    let here = Context {
        now,
        ..context(&words)
    };
    let card = work_view(&journal, None, here).card.unwrap();
    assert_eq!((card.task, card.cool_at), (Task::CoolLap, None));
    assert_eq!(crate::command::next_cool(journal.throw(), now), None);
    let tick = |task| Command::Tick {
        task,
        pieces: vec![pair],
    };
    assert!(journal.propose(&tick(Task::Stitch), now).is_err());
    act(&mut journal, &tick(Task::CoolLap), now);
    act(&mut journal, &tick(Task::Stitch), now + 1);
    // A clock that is a little ahead is believed, for twice the cooling time at most.
    let five = 5 * 60_000;
    let undo = journal.propose_undo(now).unwrap();
    journal.accept(undo).unwrap();
    let cooled = |now| journal.throw().cooled_at(pair, now);
    assert_eq!(cooled(year_2100 - five), Some(year_2100 + five));
    assert_eq!(cooled(year_2100 - five - 1), None);
}

/// A covered square that has cooled lets the pair be lapped, and is recorded with it.
#[test]
fn a_cooled_square_is_recorded_with_the_lap_that_covers_it() {
    let mut journal = begin(Plan {
        across: 2,
        down: 1,
        ..Plan::default()
    });
    let square = Rect::square(0, 0);
    let cover = Command::SetFace {
        pieces: vec![square],
        face: Face::Front,
        print: Some(0),
    };
    act(&mut journal, &cover, 0);
    next(&mut journal, Task::Cut, Kind::Square, 2);
    for task in [Task::CutFabric, Task::CoverFront, Task::PressCover] {
        if journal.throw().next(square) == Some(task) {
            next(&mut journal, task, Kind::Square, 1);
        }
    }
    let pair = Rect::from([0, 0, 1, 2]);
    let lap = Command::Tick {
        task: Task::Dot,
        pieces: vec![pair],
    };
    let cool_at = journal.throw().cooled_at(square, 0).unwrap();
    assert!(journal.propose(&lap, cool_at - 1).is_err());
    let entry = journal.propose(&lap, cool_at).unwrap();
    let crate::log::journal::What::Do(events) = &entry.what else {
        panic!()
    };
    let tasks: Vec<Task> = events
        .iter()
        .map(|event| match event {
            Event::Done { task, .. } => *task,
            other => panic!("{other:?}"),
        })
        .collect();
    assert_eq!(tasks, [Task::CoolCover, Task::Dot]);
}

#[test]
fn no_bigger_part_is_begun_while_a_four_cools() {
    let words = Words::english();
    let mut journal = begin(Plan {
        across: 6,
        down: 2,
        ..Plan::default()
    });
    act(
        &mut journal,
        &Command::Wish {
            wishes: Wishes::default(),
        },
        0,
    );
    let fours = [0, 2, 4].map(|col| Rect::from([0, col, 2, 2]));
    next(&mut journal, Task::Cut, Kind::Square, 12);
    for task in [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch] {
        next(&mut journal, task, Kind::Pair, 6);
    }
    // Two fours are squared up and could be joined; the third still cools.
    for task in [
        Task::Dot,
        Task::PressLap,
        Task::CoolLap,
        Task::Stitch,
        Task::PressBlock,
        Task::SquareUp,
    ] {
        let pieces = fours[..2].to_vec();
        act(&mut journal, &Command::Tick { task, pieces }, 1_000);
    }
    let sit = Command::TickSitting {
        tasks: vec![Task::Dot, Task::PressLap],
        pieces: vec![fours[2]],
    };
    act(&mut journal, &sit, 2_000);
    let here = Context {
        now: 3_000,
        ..context(&words)
    };
    let view = work_view(&journal, None, here);
    assert_eq!(view.card.unwrap().task, Task::CoolLap);
    // It is offered all the same.
    let bigger = view.offers.iter().find(|o| o.task == Task::Dot).unwrap();
    assert!(!matches!(bigger.kind, Kind::Pair | Kind::Four));
}
