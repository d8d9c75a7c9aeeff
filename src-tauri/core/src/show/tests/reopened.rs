//! Throws that are opened again, changed or trimmed late: nothing that is sewn, bound or washed is
//! forgotten or asked for again, and nothing open is passed over.

use super::*;
use crate::plan::Stitch;
use crate::throw::Mishap;

fn plain_begin(plan: Plan) -> Journal {
    let mut journal = begin(plan);
    all_denim(&mut journal);
    journal
}

/// Press the big button until `stop` or all is done. Gives back how often.
fn press_until(journal: &mut Journal, stop: impl Fn(&Card) -> bool) -> usize {
    let words = Words::english();
    let mut now = 20_000_000;
    for n in 0..3000 {
        now += 3_600_000;
        let here = Context {
            now,
            ..context(&words)
        };
        let view = work_view(journal, None, here);
        let Some(card) = view.card.as_deref() else {
            assert!(
                view.ended.is_some(),
                "no card and not ended: {:?}",
                view.rest
            );
            return n;
        };
        if stop(card) {
            return n;
        }
        assert!(
            !card.ticks.is_empty(),
            "no tick on {:?} {:?}",
            card.task,
            card.piece
        );
        let action = for_all(card).action.clone();
        act(journal, &action, now);
    }
    panic!("no end");
}

/// Press the big button, `minutes` passing each time; the tasks it leads to.
fn led_to(journal: &mut Journal, minutes: i64, most: usize) -> Vec<(Task, Rect)> {
    let words = Words::english();
    let (mut now, mut out) = (900_000_000_000, vec![]);
    for _ in 0..most {
        now += minutes * 60_000;
        let here = Context {
            now,
            ..context(&words)
        };
        let Some(card) = work_view(journal, None, here).card else {
            break;
        };
        out.push((card.task, card.piece));
        act(journal, &for_all(&card).action.clone(), now);
    }
    out
}

/// A throw of so many squares, led by the big button to the first such step.
fn led_until(across: u16, down: u16, task: Task) -> Journal {
    let mut journal = plain_begin(Plan {
        across,
        down,
        ..Plan::default()
    });
    press_until(&mut journal, |card| card.task == task);
    journal
}

fn replaced(piece: Rect) -> Command {
    Command::Replace {
        piece,
        why: Mishap::Scorched,
        spare: false,
        denim: None,
        from: None,
    }
}

/// While a pair deep in a throw is open, its edge is not trimmed.
#[test]
fn nothing_is_bound_or_washed_while_a_seam_in_it_is_open() {
    let mut journal = led_until(6, 8, Task::TrimEdge);
    act(
        &mut journal,
        &Command::Unpick {
            pieces: vec![Rect::from([0, 0, 1, 2])],
            lap: None,
        },
        1,
    );
    let whole = journal.throw().assembly().whole();
    let tick = Command::Tick {
        task: Task::TrimEdge,
        pieces: vec![whole],
    };
    assert!(
        journal.propose(&tick, 1).is_err(),
        "the edge is trimmed while pair 1·1 + 1·2 is open"
    );
}

/// The large button mends it before anything is washed.
#[test]
fn the_large_button_does_not_wash_an_open_throw() {
    let mut journal = led_until(6, 8, Task::TrimEdge);
    act(
        &mut journal,
        &Command::Unpick {
            pieces: vec![Rect::from([0, 0, 1, 2])],
            lap: None,
        },
        1,
    );
    let led = led_to(&mut journal, 1, 20);
    let washed = led.iter().position(|(t, _)| *t == Task::Wash).unwrap_or(99);
    let mended = led
        .iter()
        .rposition(|(t, p)| *t == Task::Stitch && p.cols == 4)
        .unwrap_or(98);
    assert!(mended < washed, "{led:?}");
}

/// A square in a four that was turned by a quarter and then sewn in: the four is taken out and laid back
/// first, since its seams run otherwise than where it lies.
#[test]
fn a_square_of_a_turned_four_is_replaced_where_it_lies() {
    let mut journal = led_until(4, 4, Task::SquareUp);
    act(
        &mut journal,
        &Command::Turn {
            piece: Rect::grid(2, 2),
            quarters: 1,
        },
        1,
    );
    press_until(&mut journal, |c| c.task == Task::TrimEdge);
    let square = Rect::square(0, 0);
    act(&mut journal, &replaced(square), 1);
    // The four is taken out, 9½ in along the row and along the last seam; laid back as it was sewn, its
    // own seams are opened round the square, which lies lower left then.
    let throw = journal.throw();
    let (four, row) = (Rect::grid(2, 2), Rect::grid(4, 2));
    let side = crate::measure::half_inches(19);
    let five = crate::measure::inches(5);
    let [outer, inner] = throw.seams_to_unpick.as_slice() else {
        panic!("{:?}", throw.seams_to_unpick);
    };
    assert_eq!(outer.block, Some(four));
    assert_eq!(outer.joins, [(row, side), (Rect::grid(4, 4), side)]);
    assert_eq!(
        inner.joins,
        [(Rect::from([1, 0, 1, 2]), five), (four, five)]
    );
    assert!(!throw.has(Rect::square(1, 0), Task::Cut) && throw.has(square, Task::Cut));
    // Both are told at the first step, the four's first.
    let words = Words::english();
    let view = work_view(&journal, None, context(&words));
    let open = view.card.and_then(|card| card.open).expect("seams first");
    assert_eq!(open.lines.len(), 4, "{:?}", open.lines);
    assert!(open.title.contains('4'), "{}", open.title);
    // It is squared up once more, and all is finished.
    let led = led_to(&mut journal, 60, 60);
    assert!(led.contains(&(Task::SquareUp, four)), "{led:?}");
    assert!(
        journal
            .throw()
            .assembly()
            .pieces()
            .all(|p| journal.throw().complete(p))
    );
}

/// A square along the last seam of a bound and washed throw is replaced, and the throw stays bound and washed.
#[test]
fn binding_and_washes_are_not_forgotten_with_a_seam_opened_beside_a_square() {
    let mut journal = plain_begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    press_until(&mut journal, |_| false);
    let whole = journal.throw().assembly().whole();
    let before = (
        journal.throw().washes(),
        journal.throw().has(whole, Task::StitchBinding),
    );
    act(&mut journal, &replaced(Rect::square(1, 1)), 1);
    let throw = journal.throw();
    assert_eq!(
        (throw.washes(), throw.has(whole, Task::StitchBinding)),
        before
    );
}

/// What is still sewn of a join keeps its lap.
#[test]
fn a_join_opened_in_part_keeps_its_lap() {
    let mut journal = led_until(4, 4, Task::TrimEdge);
    let size = journal.throw().finished();
    let plan = Plan {
        between: Some(sixty_fourths(48)),
        ..journal.throw().plan
    };
    act(&mut journal, &Command::ChangePlan { plan }, 1);
    assert_eq!(journal.throw().finished(), size);
    act(&mut journal, &replaced(Rect::square(1, 0)), 1);
    assert_eq!(
        journal.throw().finished(),
        size,
        "31 in of 36 are still sewn as they were"
    );
}

/// A throw of 4 by 4 whose upper row is sewn, and opened again along one square: its fours are still sewn to
/// one another along 4½ in.
fn half_sewn_row() -> Journal {
    let mut journal = plain_begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    press_until(&mut journal, |c| {
        matches!(c.task, Task::Dot) && c.kind == Kind::Row
    });
    let row = Rect::grid(4, 2);
    for task in [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch] {
        act(
            &mut journal,
            &Command::Tick {
                task,
                pieces: vec![row],
            },
            1,
        );
    }
    act(&mut journal, &replaced(Rect::square(1, 1)), 1);
    journal
}

/// A four that is still sewn in along half of an edge changes places with none, whatever the order of joining.
#[test]
fn a_half_sewn_row_keeps_its_fours_from_other_places() {
    let mut journal = half_sewn_row();
    let swap = Command::Swap {
        a: Rect::from([0, 2, 2, 2]),
        b: Rect::from([2, 2, 2, 2]),
    };
    assert!(journal.propose(&swap, 1).is_err());
    let plan = Plan {
        order: JoinOrder::Columns,
        ..journal.throw().plan
    };
    if let Ok(entry) = journal.propose(&Command::ChangePlan { plan }, 1) {
        journal.accept(entry).unwrap();
        assert!(
            journal.propose(&swap, 1).is_err(),
            "A2 is still sewn to A1 along 4½ in, and changes places with B2"
        );
    }
}

/// Nothing is set aside while half of an edge is sewn.
#[test]
fn a_four_half_sewn_in_is_not_set_aside() {
    let journal = half_sewn_row();
    let aside = Command::SetAside {
        piece: Rect::from([0, 2, 2, 2]),
    };
    assert!(
        journal.propose(&aside, 1).is_err(),
        "A2 is still sewn to A1 along 4½ in"
    );
}

/// Each smaller trim size is asked for anew.
#[test]
fn a_block_is_trimmed_a_third_time() {
    let mut journal = led_until(4, 2, Task::SquareUp);
    let four = Rect::grid(2, 2);
    let cut = Command::Tick {
        task: Task::SquareUp,
        pieces: vec![four],
    };
    act(&mut journal, &cut, 1);
    for trim in [75, 74] {
        act(
            &mut journal,
            &Command::ChooseTrim {
                trim: eighth_inches(trim),
                step: None,
            },
            1,
        );
        assert_eq!(
            journal.throw().next(four),
            Some(Task::SquareUp),
            "trimmed to {trim}/8"
        );
        act(&mut journal, &cut, 1);
    }
}

/// A throw of one block is not squared up once it is bound.
#[test]
fn a_bound_throw_of_one_block_is_not_squared_up() {
    for (across, down) in [(2, 2), (2, 1), (1, 2)] {
        let mut journal = plain_begin(Plan {
            across,
            down,
            ..Plan::default()
        });
        press_until(&mut journal, |c| c.task == Task::Wash);
        let size = journal.throw().finished();
        if let Ok(entry) = journal.propose(
            &Command::ChooseTrim {
                trim: eighth_inches(75),
                step: None,
            },
            1,
        ) {
            journal.accept(entry).unwrap();
        }
        let whole = journal.throw().assembly().whole();
        assert_eq!(
            journal.throw().next(whole),
            Some(Task::Wash),
            "{across} × {down}"
        );
        assert_eq!(journal.throw().finished(), size, "{across} × {down}");
    }
}

/// Seams sewn exposed are snipped whatever is planned now; laps are not.
#[test]
fn snipping_follows_what_is_sewn() {
    for (sewn, planned) in [
        (Joining::Exposed, Joining::Lapped),
        (Joining::Lapped, Joining::Exposed),
    ] {
        let mut journal = plain_begin(Plan {
            across: 4,
            down: 2,
            ..Plan::default().joined(sewn)
        });
        press_until(&mut journal, |c| c.task == Task::TrimEdge);
        let plan = journal.throw().plan.joined(planned);
        act(&mut journal, &Command::ChangePlan { plan }, 1);
        let tasks = journal.throw().tasks(journal.throw().assembly().whole());
        assert_eq!(
            tasks.contains(&Task::Snip),
            sewn == Joining::Exposed,
            "sewn {sewn:?}"
        );
    }
}

/// Three in a line keep the work of each when they are turned, or are not turned.
#[test]
fn three_in_a_line_are_not_torn_apart_by_turning() {
    let mut journal = led_until(3, 1, Task::TrimEdge);
    let whole = journal.throw().assembly().whole();
    if let Ok(entry) = journal.propose(
        &Command::Turn {
            piece: whole,
            quarters: 2,
        },
        1,
    ) {
        journal.accept(entry).unwrap();
    }
    let throw = journal.throw();
    assert!(
        throw
            .assembly()
            .pieces()
            .all(|p| p == whole || throw.complete(p))
    );
}

/// Fabric glued on squares that a smaller grid sets free is not free again.
#[test]
fn fabric_on_a_freed_square_is_gone() {
    let mut prints = crate::demo::prints();
    prints[0].stock = Some(Count::from(3));
    let begin = Command::Begin {
        name: "T".into(),
        plan: Plan {
            across: 4,
            down: 2,
            ..Plan::default()
        },
        prints,
        denims: crate::demo::denims(),
    };
    let mut journal = Journal::begin(&begin, 0).unwrap().0;
    let square = Rect::square(0, 3);
    act(
        &mut journal,
        &Command::SetFace {
            pieces: vec![square],
            face: Face::Front,
            print: Some(0),
            laid_on: false,
        },
        1,
    );
    all_ready(&mut journal, Task::Cut, Kind::Square, 1);
    act(
        &mut journal,
        &Command::Tick {
            task: Task::CoverFront,
            pieces: vec![square],
        },
        1,
    );
    let free = |j: &Journal| {
        crate::throw::stock::known(j.throw(), 0).unwrap().get()
            - crate::throw::stock::used(j.throw(), 0)
    };
    assert_eq!(free(&journal), 2);
    let plan = Plan {
        across: 3,
        ..journal.throw().plan
    };
    act(&mut journal, &Command::ChangePlan { plan }, 1);
    assert_eq!(free(&journal), 2);
}

/// One spare does not serve two denims.
#[test]
fn denims_short_add_up() {
    use crate::cloth::pile::Use;
    let mut journal = plain_begin(Plan {
        across: 2,
        down: 2,
        ..Plan::default()
    });
    act(
        &mut journal,
        &Command::SetDenim {
            pieces: vec![Rect::square(0, 0), Rect::square(0, 1)],
            denim: 1,
            wrong_side_up: false,
        },
        1,
    );
    let side = journal.throw().plan.side;
    for denim in [0, 1] {
        let makes = Use::Denim { denim: Some(denim) };
        act(
            &mut journal,
            &Command::AddPack {
                side,
                count: Count::from(1),
                makes,
                mixed: false,
                name: format!("p{denim}"),
            },
            1,
        );
    }
    act(
        &mut journal,
        &Command::CountSpares {
            spares: Count::from(1),
        },
        1,
    );
    let cloth = crate::throw::account::account(journal.throw());
    let each: u32 = cloth.denims.iter().map(|d| cloth.short_of(d)).sum();
    assert!(
        each >= cloth.short(),
        "all {} short, the denims {each}",
        cloth.short()
    );
}

/// A patch lies clear of what a seam takes.
#[test]
fn a_patch_lies_clear_of_a_wide_seam() {
    let stitch = Stitch::Zigzag {
        width: tenths_of_mm(90),
    };
    let plan = Plan {
        stitch,
        ..Plan::default().joined(Joining::Exposed)
    };
    plan.check().unwrap();
    assert!(
        plan.round(plan.most_patch()) >= plan.take() / 2,
        "{:?} {:?}",
        plan.round(plan.most_patch()),
        plan.take() / 2
    );
}

/// A four that is still sewn in is not squared up: its other edges are in laps.
#[test]
fn a_four_that_is_sewn_in_is_not_squared_up() {
    let mut journal = led_until(6, 6, Task::TrimEdge);
    act(&mut journal, &replaced(Rect::square(2, 2)), 1);
    let led = led_to(&mut journal, 60, 40);
    let edged = led.iter().position(|(task, _)| *task == Task::TrimEdge);
    let before = &led[..edged.expect("all is mended")];
    let four = Rect::from([2, 2, 2, 2]);
    assert!(before.contains(&(Task::PressBlock, four)), "{before:?}");
    assert!(
        before.iter().all(|(task, _)| *task != Task::SquareUp),
        "{before:?}"
    );
}

/// Where the binding lies over what is opened it is opened first and stitched on once more there, and
/// nothing else is done to the edge; the throw stays washed.
#[test]
fn the_binding_is_opened_over_a_square_at_the_edge() {
    let words = Words::english();
    let mut journal = plain_begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    press_until(&mut journal, |_| false);
    let whole = journal.throw().assembly().whole();
    let bind = [Task::GlueBinding, Task::StitchBinding];
    // It cools within the hour that passes each time.
    let lap = [Task::Dot, Task::PressLap, Task::Stitch];
    // The last seam runs below the second row: it is opened beside the one, not beside the other.
    for (square, name, all) in [
        (Rect::square(0, 1), "Square 1·2", bind.to_vec()),
        (Rect::square(1, 0), "Square 2·1", [&lap[..], &bind].concat()),
    ] {
        let first = format!("First open the binding along {name}");
        let off = off_view(&journal, square, Some(Mishap::Scorched));
        let mut told = off.ways.iter().map(|way| plain(&way.lines));
        assert!(told.any(|told| told.contains(&first)), "{:?}", off.ways);
        let mut opened = journal.clone();
        act(&mut opened, &replaced(square), 1);
        let view = work_view(&opened, None, context(&words));
        let open = view.card.and_then(|card| card.open).expect("seams first");
        assert!(open.lines[0].starts_with(&first), "{:?}", open.lines);
        let led = led_to(&mut opened, 60, 40);
        let of_whole = led.iter().filter(|(_, piece)| *piece == whole);
        let of_whole: Vec<Task> = of_whole.map(|(task, _)| *task).collect();
        assert_eq!(of_whole, all, "{name}");
        let throw = opened.throw();
        assert_eq!(throw.washes(), throw.plan.washes);
        assert!(!throw.work(whole).expect("sewn").unbound);
    }
}

/// What no ruler shows is not cut off once more.
#[test]
fn sizes_to_trim_from_and_to_are_told_apart() {
    let mut journal = led_until(4, 2, Task::SquareUp);
    act(
        &mut journal,
        &Command::Tick {
            task: Task::SquareUp,
            pieces: vec![Rect::grid(2, 2), Rect::from([0, 2, 2, 2])],
        },
        1,
    );
    act(
        &mut journal,
        &Command::ChooseTrim {
            trim: crate::measure::millimetres(241),
            step: None,
        },
        1,
    );
    // Three tenths of a millimetre are not cut off.
    let four = Rect::grid(2, 2);
    assert_eq!(journal.throw().next(four), None);
    // A whole one is.
    let trim = Command::ChooseTrim {
        trim: crate::measure::millimetres(240),
        step: None,
    };
    act(&mut journal, &trim, 1);
    assert_eq!(journal.throw().next(four), Some(Task::SquareUp));
}

/// A four that is opened round a square that is still to cut is not set aside as four squares, though it
/// is bound.
#[test]
fn an_open_block_is_not_set_aside() {
    let mut journal = led_until(2, 2, Task::Wash);
    act(&mut journal, &replaced(Rect::square(0, 0)), 1);
    let piece = Rect::grid(2, 2);
    let aside = Command::SetAside { piece };
    assert!(journal.propose(&aside, 1).is_err());
}
