//! What is promised of merging, for copies that went any way.

use super::compare::present;
use super::*;
use crate::command::Command;
use crate::log::intake;
use crate::log::journal::tests::{begin, step};
use crate::log::journal::{Entry, Journal, What};
use crate::measure::sixty_fourths;
use crate::plan::Plan;
use crate::plan::assembly::Rect;
use crate::throw::tasks::Task;
use crate::throw::{Event, Mishap, Time};
use proptest::prelude::*;
use std::collections::BTreeSet;

type Steps = Vec<(u8, u32)>;

/// A copy after some more steps, the clock going on from `at`.
fn after(start: &Journal, steps: &[(u8, u32)], at: Time) -> Journal {
    let mut copy = start.clone();
    for (i, s) in steps.iter().enumerate() {
        step(&mut copy, *s, at + i as Time);
    }
    copy
}

fn steps(most: usize) -> impl Strategy<Value = Steps> {
    prop::collection::vec((0u8..26, any::<u32>()), 0..most)
}

fn sides(picks: u64, count: usize) -> Vec<MergeSide> {
    (0..count)
        .map(|i| {
            if picks >> (i % 64) & 1 == 0 {
                MergeSide::First
            } else {
                MergeSide::Second
            }
        })
        .collect()
}

fn standing(journal: &Journal) -> Vec<(Time, Vec<Event>)> {
    let stand = journal.entries().filter(|(_, stands)| *stands);
    stand
        .filter_map(|(entry, _)| match &entry.what {
            What::Do(events) => Some((entry.at, events.clone())),
            _ => None,
        })
        .collect()
}

fn does(copy: &mut Journal, at: Time, action: &Command) {
    let entry = copy.propose(action, at).unwrap();
    copy.accept(entry).unwrap();
}

fn cut(at: [u16; 4]) -> Command {
    tick(Task::Cut, at)
}

fn tick(task: Task, at: [u16; 4]) -> Command {
    let pieces = vec![Rect::from(at)];
    Command::Tick { task, pieces }
}

/// Both dotted the same pair at the same moment: one after a square of it was cut again,
/// the other after another lap was planned.
#[test]
fn entries_that_say_the_same_but_rest_on_other_work_are_no_common_step() {
    let mut start = begin(2, 2);
    for at in [[1, 0, 1, 1], [0, 0, 1, 1]] {
        does(&mut start, 1, &cut(at));
    }
    let (mut a, mut b) = (start.clone(), start);
    let spoil = Command::Spoil {
        piece: Rect::square(1, 0),
        why: Mishap::Scorched,
    };
    does(&mut a, 31, &spoil);
    does(&mut a, 35, &cut([1, 0, 1, 1]));
    does(&mut a, 37, &cut([1, 1, 1, 1]));
    does(&mut a, 38, &tick(Task::Dot, [1, 0, 1, 2]));
    does(&mut b, 33, &cut([1, 1, 1, 1]));
    let plan = Plan {
        lap: sixty_fourths(24),
        ..b.throw().plan
    };
    does(&mut b, 37, &Command::ChangePlan { plan });
    does(&mut b, 38, &tick(Task::Dot, [1, 0, 1, 2]));
    let conflicts = meet(&a, &b).unwrap().conflicts();
    assert_eq!(conflicts.len(), 1);
    // Each dotted its own: that is part of the question on both sides.
    for side in [&conflicts[0].first, &conflicts[0].second] {
        let dotted = |c: &Divergence| c.at == 38 && c.way == Origin::Did;
        assert!(side.iter().any(dotted), "{side:?}");
    }
    for picks in 0..2 {
        become_one(&a, &b, picks).unwrap();
    }
}

#[test]
fn the_same_ticks_in_another_order_are_no_question() {
    let start = begin(6, 8);
    let (mut a, mut b) = (start.clone(), start);
    let all: Vec<(u16, u16)> = (0..8).flat_map(|r| (0..6).map(move |c| (r, c))).collect();
    for (n, (row, col)) in all.iter().enumerate() {
        does(&mut a, 1000 * (n as Time + 1), &cut([*row, *col, 1, 1]));
    }
    let mut by_column = all.clone();
    by_column.sort_by_key(|(row, col)| (*col, *row));
    for (n, (row, col)) in by_column.iter().enumerate() {
        does(&mut b, 1000 * (n as Time + 1), &cut([*row, *col, 1, 1]));
    }
    // What one copy goes on with from there is no question either.
    does(&mut b, 90_000, &tick(Task::Dot, [0, 0, 1, 2]));
    let meeting = meet(&a, &b).unwrap();
    assert_eq!(meeting.conflicts(), vec![]);
    become_one(&a, &b, 0).unwrap();
    let one = meeting.join(&[]).unwrap();
    assert_eq!(standing(&one).len(), 1 + 48 + 1);
    // Each square counts as cut when it first was.
    for (row, col) in all {
        let square = Rect::square(row, col);
        let when = |copy: &Journal| copy.throw().work(square).unwrap().when(Task::Cut);
        assert_eq!(when(&one), when(&a).min(when(&b)));
    }
    // Both may go on with a copy that was merged before, or was not.
    let (mut merged, mut old) = (one, a);
    does(&mut merged, 100_000, &tick(Task::PressLap, [0, 0, 1, 2]));
    does(&mut old, 100_500, &tick(Task::Dot, [2, 2, 1, 2]));
    assert_eq!(meet(&merged, &old).unwrap().conflicts(), vec![]);
    become_one(&merged, &old, 0).unwrap();
}

/// An undo of an undo of an undo, as a forged file may hold it: what is recognised by takes no
/// more room than a few times the file.
#[test]
fn a_chain_of_undone_entries_takes_room_by_its_length() {
    let start = begin(6, 8).named("chain");
    let mut chain = start.clone();
    does(&mut chain, 1, &note("x"));
    let mut here = chain.clone();
    for n in 3..3_000 {
        let what = What::Past(Box::new(What::Undo(n - 1)));
        let entry = Entry {
            n,
            at: n as Time,
            what,
        };
        chain.accept(entry).unwrap();
    }
    does(&mut here, 9_000, &note("y"));
    let room: usize = known(&chain).iter().map(|known| known.says.len()).sum();
    assert!(
        room < 4 * chain.text().len(),
        "{room} of {}",
        chain.text().len()
    );
    become_one(&here, &chain, 0).unwrap();
    // A long step undone and done again a thousand times is not held a thousand times either.
    let mut long = start;
    does(&mut long, 1, &note(&"x".repeat(400)));
    for n in 3..1_003 {
        let what = [What::Redo(2), What::Undo(2)][n as usize % 2].clone();
        long.accept(Entry {
            n,
            at: n as Time,
            what,
        })
        .unwrap();
    }
    let room: usize = known(&long).iter().map(|known| known.says.len()).sum();
    assert!(
        room < 2 * long.text().len(),
        "{room} of {}",
        long.text().len()
    );
}

/// One copy took back all that both had begun with: as many steps as there are entries.
#[test]
fn a_long_beginning_taken_back_in_one_copy_stays_taken_back() {
    let mut start = begin(6, 8);
    for n in 0..400 {
        does(&mut start, n, &note(&format!("{n}")));
    }
    let (mut a, mut b) = (start.clone(), start);
    for n in 0..400 {
        let entry = a.propose_undo(1_000 + n).unwrap();
        a.accept(entry).unwrap();
    }
    does(&mut b, 2_000, &note("after"));
    for picks in 0..2 {
        become_one(&a, &b, picks).unwrap();
    }
}

fn note(text: &str) -> Command {
    Command::Note {
        text: text.into(),
        piece: None,
        task: None,
        next: false,
    }
}

/// So many cases, or `PROPTEST_CASES` where that asks for more.
fn cases(least: u32) -> ProptestConfig {
    let asked = ProptestConfig::default();
    let cases = asked.cases.max(least);
    ProptestConfig { cases, ..asked }
}

/// All that is promised of two copies of one throw, with these choices between them.
fn become_one(a: &Journal, b: &Journal, picks: u64) -> Result<(), TestCaseError> {
    let meeting = meet(a, b).unwrap();
    let conflicts = meeting.conflicts();
    let choices = sides(picks, conflicts.len());
    let joined = meeting.join(&choices);
    prop_assert!(joined.is_ok(), "{joined:?}");
    let joined = joined.unwrap();

    // The same from the other side.
    let back = meet(b, a).unwrap();
    let swapped: Vec<MergeSide> = choices.iter().map(|c| c.other()).collect();
    prop_assert_eq!(back.conflicts().len(), conflicts.len());
    for (x, y) in conflicts.iter().zip(back.conflicts()) {
        prop_assert_eq!(&x.first, &y.second);
        prop_assert_eq!(&x.second, &y.first);
    }
    prop_assert_eq!(back.join(&swapped).unwrap().text(), joined.text());

    // Once more changes nothing.
    prop_assert_eq!(meet(a, a).unwrap().join(&[]).unwrap().text(), a.text());
    for copy in [a, b] {
        let holds = matches!(
            relation(&joined, copy),
            Relation::Same | Relation::FirstHasMore(_)
        );
        prop_assert!(holds);
        let again = meet(&joined, copy).unwrap();
        prop_assert_eq!(again.conflicts().len(), 0);
        prop_assert_eq!(again.join(&[]).unwrap().text(), joined.text());
    }

    // It is a record like any other.
    let read = Journal::read(joined.text().as_bytes()).unwrap().journal;
    prop_assert_eq!(read.text(), joined.text());
    prop_assert_eq!(read.throw(), joined.throw());
    prop_assert_eq!(intake::check(&joined), Ok(()));

    // Nothing is lost.
    let kept: BTreeSet<Known> = known(&joined).into_iter().collect();
    for copy in [a, b] {
        prop_assert!(known(copy).iter().all(|k| kept.contains(k)));
    }
    let stands = standing(&joined);
    let lost: Vec<&Divergence> = conflicts
        .iter()
        .zip(&choices)
        .flat_map(|(c, side)| match side {
            MergeSide::First => &c.second,
            MergeSide::Second => &c.first,
        })
        .collect();
    for (copy, other) in [(a, b), (b, a)] {
        let others = standing(other);
        for done in standing(copy) {
            let there = stands.contains(&done)
                // The same step, as of the other's time.
                || stands.iter().any(|(at, events)| *events == done.1 && *at < done.0 && others.contains(&(*at, events.clone())));
            let losing = lost
                .iter()
                .any(|c| c.way != Origin::TookBack && c.at == done.0 && c.events == done.1);
            // Taken back on the other copy, which nothing spoke against.
            let had = |e: &Entry| e.at == done.0 && *present(&e.what) == What::Do(done.1.clone());
            let back = other.entries().any(|(e, _)| had(e)) && !others.contains(&done);
            prop_assert!(there || losing || back, "{done:?} is lost");
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(cases(300))]
    #[test]
    fn two_copies_become_one(
        grid in (1u16..6, 1u16..6),
        before in steps(40),
        here in steps(24),
        there in steps(24),
        clocks in (0i64..40, 0i64..40),
        picks in any::<u64>(),
    ) {
        let start = after(&begin(grid.0, grid.1), &before, 0);
        let a = after(&start, &here, 1000 + clocks.0);
        let b = after(&start, &there, 1000 + clocks.1);
        become_one(&a, &b, picks)?;
    }

    #[test]
    fn a_merged_copy_and_one_of_the_two_become_one(
        grid in (1u16..6, 1u16..6),
        before in steps(20),
        tails in (steps(20), steps(20), steps(12), steps(12)),
        clocks in (0i64..40, 0i64..40),
        picks in any::<u64>(),
    ) {
        let start = after(&begin(grid.0, grid.1), &before, 0);
        let a = after(&start, &tails.0, 1000 + clocks.0);
        let b = after(&start, &tails.1, 1000 + clocks.1);
        let meeting = meet(&a, &b).unwrap();
        let merged = meeting.join(&sides(picks, meeting.conflicts().len())).unwrap();
        let merged = after(&merged, &tails.2, 2000 + clocks.0);
        let b = after(&b, &tails.3, 2000 + clocks.1);
        become_one(&merged, &b, picks.rotate_right(32))?;
    }

    #[test]
    fn every_step_follows_on_its_own_record(grid in (1u16..6, 1u16..6), made in steps(120)) {
        let start = begin(grid.0, grid.1);
        let made = after(&start, &made, 5);
        prop_assert_eq!(intake::check(&made), Ok(()));
        let mut so_far = start;
        for (entry, _) in made.entries().skip(1) {
            if let What::Do(events) = &entry.what {
                prop_assert!(intake::follows(so_far.throw(), events), "{events:?}");
            }
            so_far.accept(entry.clone()).unwrap();
        }
    }
}
