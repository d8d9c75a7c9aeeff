//! How long the rest will take, learned from the maker's own ticks.
//!
//! The time a tick took is the time since the entry before it, if that is no more than
//! [`PAUSE`] (longer is a break, not work), shared among the pieces it ticked. Ticks less
//! than [`HASTE`] apart were made after the work: the same step's pieces share the time before
//! the first of them, and where that time is unknown they are ignored. So is a time that leaves a
//! piece less than [`LEAST_SHARE`] of what it usually takes. What was done in one
//! sitting shares its time among its tasks as they usually take it. For each
//! kind of step the pace is the median of those times, a piece counting as often as it
//! was ticked; the range is its quartiles. Until a step has been ticked for
//! [`FEW`] pieces what was learned on the throw this one is made after stands in, where
//! there is any, else the usual minutes of [`Task::usual_minutes`] stand in, an estimate of
//! ours, with a range of half to double.
//!
//! A join that goes through the machine twice, for two rows, counts as two in this: the pace is that
//! of one row, and a throw whose joins take two takes it twice. What is carried to the next throw is
//! the pace of one row.
//!
//! The median and quartiles are those of the sorted list, by linear interpolation
//! between neighbours (Hyndman and Fan 1996, definition 7, from memory).

use crate::log::journal::Journal;
pub use crate::log::journal::{FEW, HASTE, LEAST_SHARE, PAUSE};
use crate::throw::Throw;
use crate::throw::heritage::Learned;
use crate::throw::tasks::Task;
use std::collections::BTreeMap;

/// Minutes for one piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pace {
    /// The lower quartile.
    pub low: f64,
    /// The median.
    pub middle: f64,
    /// The upper quartile.
    pub high: f64,
    /// Whether it is the maker's own.
    pub own: bool,
}

impl Pace {
    /// So often.
    fn times(self, n: f64) -> Pace {
        Pace {
            low: self.low * n,
            middle: self.middle * n,
            high: self.high * n,
            ..self
        }
    }
}

/// The maker's pace for each kind of step, as the plan has it.
pub fn paces(journal: &Journal) -> BTreeMap<Task, Pace> {
    let mut found = paces_of_one(journal);
    if let Some(pace) = found.get_mut(&Task::Stitch) {
        let rows = journal.throw().plan.stitch.passes();
        *pace = pace.times(f64::from(rows));
    }
    found
}

/// The maker's pace for each kind of step; of stitching for one row.
fn paces_of_one(journal: &Journal) -> BTreeMap<Task, Pace> {
    let record = journal.pace_record();
    let pace = |task: Task| {
        if let Some([low, middle, high]) = record.quartiles(task) {
            let own = true;
            return Pace {
                low,
                middle,
                high,
                own,
            };
        }
        let usual = task.usual_minutes();
        carried(journal.throw(), task).unwrap_or(Pace {
            low: usual / 2.0,
            middle: usual,
            high: usual * 2.0,
            own: false,
        })
    };
    let all = Task::ALL.into_iter();
    all.map(|task| (task, pace(task))).collect()
}

/// Milliseconds in a minute, as carried from one throw to the next.
const MINUTE: f64 = 60_000.0;

/// The maker's pace as she had it on the throw this one is made after.
pub fn carried(throw: &Throw, task: Task) -> Option<Pace> {
    let learned = throw
        .after
        .as_ref()?
        .paces
        .iter()
        .find(|l| l.task == task)?;
    let minutes = |ms: u32| f64::from(ms) / MINUTE;
    // A file may say anything: put in order, so that the range holds the middle.
    let mut range = [learned.low, learned.middle, learned.high];
    range.sort_unstable();
    let [low, middle, high] = range.map(minutes);
    let own = true;
    Some(Pace {
        low,
        middle,
        high,
        own,
    })
}

/// What of her pace is carried on to the next throw.
pub fn learned(journal: &Journal) -> Vec<Learned> {
    let ms = |minutes: f64| (minutes * MINUTE).round() as u32;
    paces_of_one(journal)
        .into_iter()
        .filter(|(_, pace)| pace.own)
        .map(|(task, pace)| Learned {
            task,
            low: ms(pace.low),
            middle: ms(pace.middle),
            high: ms(pace.high),
        })
        .collect()
}

/// Minutes that so many tasks of each kind take.
pub fn minutes_for(tasks: &BTreeMap<Task, u32>, paces: &BTreeMap<Task, Pace>) -> Pace {
    let mut sum = Pace {
        low: 0.0,
        middle: 0.0,
        high: 0.0,
        own: false,
    };
    for (task, count) in tasks {
        if let Some(pace) = paces.get(task) {
            let n = f64::from(*count);
            sum.low += pace.low * n;
            sum.middle += pace.middle * n;
            sum.high += pace.high * n;
            sum.own |= pace.own;
        }
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::command::Command;
    use crate::measure::Count;
    use crate::plan::Plan;
    use crate::plan::assembly::Kind;
    use crate::throw::Time;
    use crate::throw::stage::stages;
    use proptest::prelude::*;

    fn cut_at(times: &[Time]) -> Journal {
        let plan = Plan {
            across: 6,
            down: 6,
            ..Plan::default()
        };
        let begin = Command::Begin {
            name: "t".into(),
            plan,
            prints: vec![],
            denims: vec![],
        };
        let mut journal = Journal::begin(&begin, 0).unwrap().0;
        for at in times {
            let tick = Command::TickNext {
                task: Task::Cut,
                kind: Kind::Square,
                count: Count::from(1),
            };
            let entry = journal.propose(&tick, *at).unwrap();
            journal.accept(entry).unwrap();
        }
        journal
    }

    #[test]
    fn the_makers_own_pace_is_the_median_and_breaks_do_not_count() {
        let minute = 60_000;
        // 1, 2, 3, 4 and 5 minutes, with a night between.
        let times = [
            minute,
            3 * minute,
            6 * minute,
            1000 * minute,
            1004 * minute,
            1009 * minute,
        ];
        let paces = paces(&cut_at(&times));
        let own = paces[&Task::Cut];
        assert_eq!(
            (own.low, own.middle, own.high, own.own),
            (2.0, 3.0, 4.0, true)
        );
        assert!(!paces[&Task::Stitch].own);
    }

    /// Three quarters of an hour at a step may be work, a minute more is a break; ten seconds are a
    /// tick of their own, nine are made after the work (our judgement; common practice, no source).
    #[test]
    fn a_break_is_over_45_minutes_and_haste_under_10_seconds() {
        let (second, minute) = (1000, 60_000);
        let every = |gap: Time| {
            let row: Vec<Time> = (1..=4).map(|n| n * gap).collect();
            paces(&cut_at(&row))[&Task::Cut]
        };
        assert_eq!(
            (every(45 * minute).middle, every(45 * minute).own),
            (45.0, true)
        );
        assert!(!every(46 * minute).own);
        assert!((every(10 * second).middle - 1.0 / 6.0).abs() < 1e-9);
        assert!(!every(9 * second).own);
        // Three squares are too few to go by; what is usual then ranges from half to double.
        let few = paces(&cut_at(&[minute, 2 * minute, 3 * minute]))[&Task::Cut];
        assert!(!few.own);
        assert_eq!((few.low * 4.0, few.middle * 2.0), (few.high, few.high));
    }

    /// By hand: three squares of 1, 2 and 3 minutes and two seams of 4, 5 and 6: 11, 16 and 21.
    #[test]
    fn what_is_left_is_added_up() {
        let pace = |[low, middle, high]: [f64; 3], own| Pace {
            low,
            middle,
            high,
            own,
        };
        let paces = BTreeMap::from([
            (Task::Cut, pace([1.0, 2.0, 3.0], false)),
            (Task::Stitch, pace([4.0, 5.0, 6.0], true)),
        ]);
        let tasks = BTreeMap::from([(Task::Cut, 3), (Task::Stitch, 2)]);
        assert_eq!(minutes_for(&tasks, &paces), pace([11.0, 16.0, 21.0], true));
        let cut = BTreeMap::from([(Task::Cut, 3)]);
        assert_eq!(minutes_for(&cut, &paces), pace([3.0, 6.0, 9.0], false));
        // Two minutes are carried on as 120,000 ms.
        let minute = 60_000;
        let times = [2, 4, 6, 8].map(|n| n * minute);
        assert_eq!(learned(&cut_at(&times))[0].middle, 120_000);
    }

    /// Two rows with one needle are sewn one after the other: each of the usual minutes counts twice for
    /// them, and those of every other step once.
    #[test]
    fn two_rows_take_twice_the_time() {
        let of = |stitch| {
            let begin = Command::Begin {
                name: "t".into(),
                plan: Plan {
                    stitch,
                    ..Plan::default()
                },
                prints: vec![],
                denims: vec![],
            };
            paces(&Journal::begin(&begin, 0).unwrap().0)
        };
        let spacing = crate::measure::tenths_of_mm(60);
        let (one, two) = (
            of(crate::plan::Stitch::Straight),
            of(crate::plan::Stitch::TwoRows { spacing }),
        );
        let (row, rows) = (one[&Task::Stitch], two[&Task::Stitch]);
        assert!(row.low > 0.0 && row.low < row.middle && row.middle < row.high);
        assert_eq!(
            (rows.low, rows.middle, rows.high),
            (
                row.low + row.low,
                row.middle + row.middle,
                row.high + row.high
            )
        );
        assert_eq!(one[&Task::Cut], two[&Task::Cut]);
    }

    #[test]
    fn ticking_off_afterwards_is_no_pace() {
        let (second, minute) = (1000, 60_000);
        // After twelve minutes, six ticks a second apart: two minutes each.
        let row: Vec<Time> = (0..6).map(|n| 12 * minute + n * second).collect();
        let own = paces(&cut_at(&row))[&Task::Cut];
        assert_eq!((own.middle, own.own), (2.0, true));
        // After a night nothing is known of them.
        let row: Vec<Time> = (0..6).map(|n| 600 * minute + n * second).collect();
        assert!(!paces(&cut_at(&row))[&Task::Cut].own);
    }

    /// By hand: a square is usually cut in a minute. Twelve ticked in one go a minute after the
    /// entry before would be 5 s each, which nobody cuts in; in two minutes it is 10 s each.
    #[test]
    fn many_pieces_ticked_off_at_once_after_a_moment_are_no_pace() {
        let minute = 60_000;
        let twelve_after = |gap: Time| {
            let mut journal = cut_at(&[]);
            let tick = Command::TickNext {
                task: Task::Cut,
                kind: Kind::Square,
                count: Count::from(12),
            };
            let entry = journal.propose(&tick, gap).unwrap();
            journal.accept(entry).unwrap();
            paces(&journal)[&Task::Cut]
        };
        assert!(!twelve_after(minute).own);
        let own = twelve_after(2 * minute);
        assert!(own.own && (own.middle - 1.0 / 6.0).abs() < 1e-9);
    }

    #[test]
    fn a_pace_is_carried_on_until_the_new_throw_has_its_own() {
        let minute = 60_000;
        let old = cut_at(&[2 * minute, 4 * minute, 6 * minute, 8 * minute]);
        let heritage = crate::throw::heritage::Heritage {
            name: "old".into(),
            lessons: vec![],
            paces: learned(&old),
            drift: None,
            faces: vec![],
        };
        assert_eq!(heritage.paces.len(), 1);
        let begin = Command::Begin {
            name: "new".into(),
            plan: Plan::default(),
            prints: vec![],
            denims: vec![],
        };
        let mut new = Journal::begin_after(&begin, heritage, 0).unwrap().0;
        let usual = paces(&cut_at(&[]))[&Task::Stitch];
        for (ticks, middle) in [(0, 2.0), (3, 2.0), (1, 7.0)] {
            for _ in 0..ticks {
                let tick = Command::TickNext {
                    task: Task::Cut,
                    kind: Kind::Square,
                    count: Count::from(1),
                };
                let at = new.entries().next_back().unwrap().0.at + 7 * minute;
                let entry = new.propose(&tick, at).unwrap();
                new.accept(entry).unwrap();
            }
            let found = paces(&new);
            assert_eq!(
                (found[&Task::Cut].middle, found[&Task::Cut].own),
                (middle, true)
            );
            assert_eq!(found[&Task::Stitch], usual);
        }
    }

    proptest! {
        #[test]
        fn the_range_holds_the_middle(gaps in prop::collection::vec(1i64..4_000_000, 0..30)) {
            let mut at = 0;
            let times: Vec<Time> = gaps.iter().map(|g| { at += g; at }).collect();
            let journal = cut_at(&times);
            let found = paces(&journal);
            for pace in found.values() {
                prop_assert!(pace.low <= pace.middle && pace.middle <= pace.high);
            }
            for reached in stages(journal.throw()).values() {
                let left = minutes_for(&reached.left, &found);
                prop_assert!(left.low <= left.middle && left.middle <= left.high);
            }
        }
    }
}
