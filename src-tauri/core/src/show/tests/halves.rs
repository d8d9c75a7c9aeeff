//! Squares pieced of two halves, from the offer to the finished throw.

use super::*;
use crate::cloth::pile::Use;
use crate::measure::in_mm;
use crate::show::{GatherView, PileCutView};

/// Two by two squares in one denim, and a cloth of 8 by 13 in on the pile: by hand two whole squares
/// with 3 in beside each, and so two halves of 2¾ in.
fn short_of_denim() -> Journal {
    let plan = Plan {
        across: 2,
        down: 2,
        ..Plan::default()
    };
    let mut journal = begin(plan);
    add_cloth(&mut journal, 8, 13);
    journal
}

fn add_cloth(journal: &mut Journal, width: i64, length: i64) {
    let add = Command::AddCloth {
        width: inches(width),
        length: inches(length),
        edges: None,
        makes: Use::Denim { denim: Some(0) },
        name: "Off a skirt".into(),
    };
    act(journal, &add, 1);
}

fn page(journal: &Journal, context: Context<'_>) -> PileCutView {
    let query = Query::Cutting {
        n: 1,
        index: 0,
        typed: None,
        drag: None,
    };
    match answer(journal, &query, context) {
        Ok(View::Cutting(view)) => *view,
        other => panic!("{other:?}"),
    }
}

fn gather(journal: &Journal, context: Context<'_>) -> GatherView {
    match answer(journal, &Query::Gather, context) {
        Ok(View::Gather(view)) => view,
        other => panic!("{other:?}"),
    }
}

/// All thread of a throw.
fn thread(throw: &crate::throw::Throw) -> crate::measure::Length {
    let thread = crate::show::gather::amount(
        throw,
        &crate::throw::account::account(throw),
        crate::throw::Item::Thread,
    );
    thread.and_then(|t| t.length).expect("a length")
}

/// Halves are offered while squares are lacking, and no longer.
#[test]
fn halves_are_offered_where_squares_are_lacking() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = short_of_denim();
    let ways = page(&journal, context).ways;
    assert_eq!(ways.len(), 2, "{ways:?}");
    assert!(ways[0].chosen);
    assert!(
        ways[1].label.contains("3 squares (2 whole + 1 pieced)"),
        "{}",
        ways[1].label
    );
    let text = plain(&ways[1].text.clone().into_iter().collect::<Vec<_>>());
    assert!(
        text.contains("2¾ × 5 in") || text.contains("2 3/4"),
        "{text}"
    );
    // Enough cloth: nothing is to be pieced.
    add_cloth(&mut journal, 40, 13);
    assert_eq!(page(&journal, context).ways, []);
}

/// A throw with seams laps nothing, so that nothing is pieced.
#[test]
fn a_throw_with_seams_has_no_halves() {
    let words = Words::english();
    let mut journal = short_of_denim();
    let plan = Plan {
        joining: Joining::Seamed,
        ..journal.throw().plan
    };
    act(&mut journal, &Command::ChangePlan { plan }, 2);
    assert_eq!(page(&journal, context(&words)).ways, []);
}

/// Cut, lapped, glued, pressed, cooled and stitched, and from then on a square like any other.
#[test]
fn two_halves_become_a_square() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = short_of_denim();
    let before = gather(&journal, context);
    let thread_before = thread(journal.throw());
    let take = page(&journal, context).ways[1].choose.clone().unwrap();
    act(&mut journal, &take.action, 2);

    let seen = page(&journal, context);
    assert_eq!((seen.expected, seen.expected_pieced), (3, 1));
    let rows: Vec<_> = seen.list.iter().map(|r| (r.squares, r.halves)).collect();
    assert_eq!(rows, [(1, 1), (1, 1)]);
    assert!(
        seen.list[0]
            .text
            .contains("right beside the squares, one half")
    );
    assert_eq!(seen.list[0].title, "Strip 1: one square, one half");
    assert!(seen.list[0].chalk.clone().unwrap().contains("2·1"));
    words_are_whole(&seen);
    let Ok(View::Pile(pile)) = answer(&journal, &Query::Pile, context) else {
        panic!()
    };
    let said = &pile.rows[0].pieces[0].said;
    assert_eq!(said, "about 3 squares (2 whole + 1 pieced)");

    // 5 in more of seam through two denims, waste and all, and 5 in more of dots of glue.
    let after = gather(&journal, context);
    let throw = journal.throw();
    let denim = crate::cloth::weight::Cloth::denim();
    let lap =
        crate::cloth::thread::ratio(throw.plan.stitch, tenths_of_mm(30), denim.thickness * 2.0);
    let by_hand = lap.unwrap().total() * 127.0 * 1.15;
    let more = thread(throw) - thread_before;
    assert!((in_mm(more) - by_hand).abs() < 0.01, "{more:?} {by_hand}");
    let dots = |view: &GatherView| {
        let row = view
            .rows
            .iter()
            .find(|r| r.item == crate::throw::Item::Glue);
        let digits: String = row.unwrap().lines[0]
            .chars()
            .skip_while(|c| !c.is_ascii_digit())
            .take_while(char::is_ascii_digit)
            .collect();
        digits.parse::<u32>().unwrap()
    };
    let more = dots(&after) - dots(&before);
    assert!((2..=3).contains(&more), "{more}");

    let came = page(&journal, context).all_came.unwrap();
    assert_eq!(came.label, "All 3 squares came out (2 whole + 1 pieced)");
    act(&mut journal, &came.action, 3);
    let throw = journal.throw();
    let square = Rect::square(1, 0);
    assert!(throw.is_pieced(square) && !throw.is_pieced(Rect::square(0, 0)));
    assert_eq!(throw.lapped_halves(square), Some(throw.plan.lap));
    assert_eq!(
        throw.tasks(square)[..5],
        [
            Task::Cut,
            Task::LapHalves,
            Task::PressHalves,
            Task::CoolHalves,
            Task::StitchHalves
        ]
    );
    let card = card_of(&journal, Task::LapHalves, Kind::Square);
    assert_eq!(card.piece, square);
    words_are_whole(&card);
    // One sitting: lapped, glued and pressed.
    let sitting = Command::TickSitting {
        tasks: vec![Task::LapHalves, Task::PressHalves],
        pieces: vec![square],
    };
    act(&mut journal, &sitting, 4);
    let throw = journal.throw();
    assert_eq!(throw.next(square), Some(Task::CoolHalves));
    assert_eq!(throw.cooled_at(square, 4), Some(4 + throw.cooling()));
    // The pair waits for it.
    let tick = |task, pieces: &[Rect]| Command::Tick {
        task,
        pieces: pieces.to_vec(),
    };
    let late = 4 + throw.cooling() + 1;
    act(&mut journal, &tick(Task::StitchHalves, &[square]), late);
    assert!(journal.throw().complete(square));
    assert!(journal.throw().is_pieced(square));

    // Its lap meets the neighbours' laps: three denims there, four corners as ever.
    assert_eq!(crate::faces::spread::thickest(journal.throw()), (3, 3, 4));
}

/// Halves that lose their place are spare, as far as they are made; whole spares are used first.
#[test]
fn pieced_spares_go_last() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = short_of_denim();
    let take = page(&journal, context).ways[1].choose.clone().unwrap();
    act(&mut journal, &take.action, 2);
    let came = page(&journal, context).all_came.unwrap();
    act(&mut journal, &came.action, 3);
    let square = Rect::square(1, 0);
    let halves = [Task::LapHalves, Task::PressHalves];
    for (n, task) in (0..).zip(halves) {
        let tick = Command::Tick {
            task,
            pieces: vec![square],
        };
        act(&mut journal, &tick, 4 + n);
    }
    let plan = Plan {
        down: 1,
        ..journal.throw().plan
    };
    act(&mut journal, &Command::ChangePlan { plan }, 10);
    let throw = journal.throw();
    assert_eq!(
        (throw.spares, throw.spares_pieced()),
        (Count::from(1), Count::from(1))
    );
    // A whole spare besides, and two places open again: the whole one is put in first.
    let count = Command::CountSpares {
        spares: Count::from(2),
    };
    act(&mut journal, &count, 11);
    let plan = Plan { down: 2, ..plan };
    act(&mut journal, &Command::ChangePlan { plan }, 12);
    let places = [Rect::square(1, 0), Rect::square(1, 1)];
    for (n, place) in (0..).zip(places) {
        let denim = None;
        let pieces = vec![place];
        act(&mut journal, &Command::UseSpares { pieces, denim }, 13 + n);
    }
    let throw = journal.throw();
    let found: Vec<bool> = places.iter().map(|p| throw.is_pieced(*p)).collect();
    assert_eq!(found.iter().filter(|p| **p).count(), 1);
    let last = places[found.iter().position(|p| *p).unwrap()];
    assert_eq!(
        throw.next(last),
        Some(Task::CoolHalves),
        "what was done stays done"
    );
    assert_eq!(throw.spares_pieced(), Count::NONE);
}
