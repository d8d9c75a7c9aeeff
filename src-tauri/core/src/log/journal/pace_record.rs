//! How long the ticks of a record took: what [`crate::log::pace`] learns from, read once and then
//! continued entry by entry.

use crate::log::journal::entry::{Entry, What};
use crate::throw::tasks::Task;
use crate::throw::{Event, Time};
use std::collections::BTreeMap;

/// A longer gap than this is a break, in milliseconds.
pub const PAUSE: Time = 45 * 60_000;
/// Ticks closer together than this are ticked off afterwards, in milliseconds (our judgement).
pub const HASTE: Time = 10_000;
/// Below this share of what is usual a piece was not worked in that time: it was ticked off
/// afterwards, together with others (our judgement).
pub const LEAST_SHARE: f64 = 0.1;
/// Pieces of a kind before the maker's own pace counts.
pub const FEW: usize = 4;

/// The tasks an entry records, each with its number of pieces (of stitching, of rows), if it records
/// nothing but work.
/// Cooling takes none of the maker's time.
fn worked(events: &[Event]) -> Option<Vec<(Task, usize)>> {
    let mut out = Vec::new();
    for event in events {
        match event {
            Event::Done { task, .. } if task.is_cooling() => {}
            Event::Done {
                task: Task::Stitch,
                pieces,
                made,
            } => {
                let rows = made.first().map_or(1, |made| made.stitch.passes());
                out.push((Task::Stitch, pieces.len() * rows as usize));
            }
            Event::Done { task, pieces, .. } => out.push((*task, pieces.len())),
            Event::SquaredUp { pieces, .. } => out.push((Task::SquareUp, pieces.len())),
            _ => return None,
        }
    }
    Some(out)
}

/// One kind of step done in one go: its time, if known, shared by so many pieces.
#[derive(Debug, Clone, PartialEq)]
struct Stretch {
    task: Task,
    time: Option<Time>,
    pieces: usize,
}

/// Minutes for one piece, in order, each with the number of pieces that took so long.
#[derive(Debug, Clone, PartialEq, Default)]
struct Minutes(Vec<(f64, usize)>);

impl Minutes {
    fn add(&mut self, each: f64, pieces: usize) {
        let place = self.0.partition_point(|(m, _)| m.total_cmp(&each).is_lt());
        match self.0.get_mut(place) {
            Some((minutes, count)) if minutes.total_cmp(&each).is_eq() => *count += pieces,
            _ => self.0.insert(place, (each, pieces)),
        }
    }

    fn take_away(&mut self, each: f64, pieces: usize) {
        let place = self.0.partition_point(|(m, _)| m.total_cmp(&each).is_lt());
        let Some((_, count)) = self.0.get_mut(place) else {
            return;
        };
        *count -= pieces;
        if *count == 0 {
            self.0.remove(place);
        }
    }

    fn pieces(&self) -> usize {
        self.0.iter().map(|(_, count)| count).sum()
    }

    /// The value of the piece at this place of the order, counted from 0.
    fn at(&self, place: usize) -> f64 {
        let mut seen = 0;
        let found = self.0.iter().find(|(_, count)| {
            seen += count;
            seen > place
        });
        found.or(self.0.last()).map_or(0.0, |(minutes, _)| *minutes)
    }

    /// The value at `share` (0 to 1), by linear interpolation.
    fn quantile(&self, share: f64) -> f64 {
        let last = self.pieces().saturating_sub(1);
        let at = share * last as f64;
        let (low, part) = (at.floor() as usize, at.fract());
        self.at(low) + (self.at((low + 1).min(last)) - self.at(low)) * part
    }
}

/// What the entries of a record tell of the maker's pace. It is continued entry by entry, so that
/// a tick costs the same however long the record is.
#[derive(Debug, Clone, PartialEq, Default)]
pub(in crate::log) struct PaceRecord {
    before: Option<Time>,
    stretches: Vec<Stretch>,
    minutes: BTreeMap<Task, Minutes>,
}

impl PaceRecord {
    /// What these entries tell, each with whether it stands.
    pub(super) fn of<'e>(entries: impl Iterator<Item = (&'e Entry, bool)>) -> PaceRecord {
        let mut record = PaceRecord::default();
        for (entry, stands) in entries {
            record.add(entry, stands);
        }
        record
    }

    /// Continue it by one entry.
    pub(super) fn add(&mut self, entry: &Entry, stands: bool) {
        let gap = self.before.map(|b| entry.at - b);
        self.before = Some(entry.at);
        let (true, What::Do(events)) = (stands, &entry.what) else {
            return;
        };
        let Some(worked) = worked(events) else {
            return;
        };
        let hasty = gap.is_some_and(|g| g < HASTE);
        let known = gap.filter(|g| (HASTE..=PAUSE).contains(g));
        let usual: f64 = worked.iter().map(|(task, _)| task.usual_minutes()).sum();
        let tasks = worked.len();
        for (task, count) in worked {
            // One sitting's time is shared among its tasks as they usually take it.
            let share = |whole: Time| (whole as f64 * task.usual_minutes() / usual) as Time;
            let last = self.stretches.len().saturating_sub(tasks);
            let shared = self.stretches[last..].iter().rposition(|s| s.task == task);
            match shared.filter(|_| hasty) {
                Some(n) => {
                    self.learn(last + n, false);
                    self.stretches[last + n].pieces += count;
                    self.learn(last + n, true);
                }
                None => {
                    self.stretches.push(Stretch {
                        task,
                        time: known.map(share),
                        pieces: count,
                    });
                    self.learn(self.stretches.len() - 1, true);
                }
            }
        }
    }

    /// Adds what a stretch tells to the minutes, or takes it away from them.
    fn learn(&mut self, stretch: usize, adds: bool) {
        let Stretch { task, time, pieces } = self.stretches[stretch];
        let (Some(time), 1..) = (time, pieces) else {
            return;
        };
        let each = time as f64 / 60_000.0 / pieces as f64;
        if each < task.usual_minutes() * LEAST_SHARE {
            return;
        }
        let minutes = self.minutes.entry(task).or_default();
        match adds {
            true => minutes.add(each, pieces),
            false => minutes.take_away(each, pieces),
        }
    }

    /// The quartiles of the minutes that one piece took, once there are [`FEW`] of its kind.
    pub(in crate::log) fn quartiles(&self, task: Task) -> Option<[f64; 3]> {
        let own = self.minutes.get(&task).filter(|m| m.pieces() >= FEW)?;
        Some([0.25, 0.5, 0.75].map(|share| own.quantile(share)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::command::Command;
    use crate::log::journal::Journal;
    use crate::measure::Count;
    use crate::plan::assembly::{Kind, Rect};
    use crate::plan::{Joining, Plan, Stitch};
    use crate::throw::Made;
    use proptest::prelude::*;

    /// A record of sittings: after how many seconds each, and what was done to how many pieces.
    fn record(sittings: &[(i64, &[(Task, usize)])], rows: Stitch) -> PaceRecord {
        let mut record = PaceRecord::default();
        let mut at = 0;
        let entry = |at, what| Entry { n: 1, at, what };
        record.add(&entry(at, What::Undo(0)), false);
        for (after, tasks) in sittings {
            at += after * 1_000;
            let done = tasks.iter().map(|(task, count)| Event::Done {
                task: *task,
                pieces: vec![Rect::square(0, 0); *count],
                made: vec![Made {
                    joining: Joining::Seamed,
                    lap: Plan::default().lap,
                    stitch: rows,
                }],
            });
            record.add(&entry(at, What::Do(done.collect())), true);
        }
        record
    }

    /// By hand: four joins pinned and stitched in one sitting of 7 minutes. Pinning takes 1½ minutes as a
    /// rule and stitching 2, so that 3 minutes go to the pins, ¾ each, and 4 to the stitching, 1 each;
    /// where each join has two rows there are eight rows of half a minute. Pressing that is only
    /// waited for takes none of it.
    #[test]
    fn a_sittings_time_is_shared_as_its_tasks_usually_take_it() {
        let both: &[(Task, usize)] = &[(Task::Pin, 4), (Task::CoolLap, 4), (Task::Stitch, 4)];
        let found = record(&[(420, both)], Stitch::Straight);
        assert_eq!(found.quartiles(Task::Pin), Some([0.75; 3]));
        assert_eq!(found.quartiles(Task::Stitch), Some([1.0; 3]));
        assert_eq!(found.quartiles(Task::CoolLap), None);
        let spacing = Plan::default().lap;
        let found = record(&[(420, both)], Stitch::TwoRows { spacing });
        assert_eq!(found.quartiles(Task::Stitch), Some([0.5; 3]));
        // A tick right after is of the same sitting: 3 minutes for twelve pins, 4 for eight seams.
        let more: &[(Task, usize)] = &[(Task::Pin, 8), (Task::Stitch, 4)];
        let cut: &[(Task, usize)] = &[(Task::Cut, 4)];
        let found = record(&[(240, cut), (420, both), (5, more)], Stitch::Straight);
        assert_eq!(found.quartiles(Task::Pin), Some([0.25; 3]));
        assert_eq!(found.quartiles(Task::Stitch), Some([0.5; 3]));
        assert_eq!(found.quartiles(Task::Cut), Some([1.0; 3]));
        // Ten seconds are no haste any more, though too little for four cuts; 45 minutes are no break.
        let found = record(&[(240, cut), (10, cut)], Stitch::Straight);
        assert_eq!(found.quartiles(Task::Cut), Some([1.0; 3]));
        let found = record(&[(45 * 60, cut)], Stitch::Straight);
        assert_eq!(found.quartiles(Task::Cut), Some([11.25; 3]));
        let found = record(&[(45 * 60 + 1, cut)], Stitch::Straight);
        assert_eq!(found.quartiles(Task::Cut), None);
    }

    /// The value at `share` of a sorted list, by the definition itself.
    fn quantile(sorted: &[f64], share: f64) -> f64 {
        let at = share * (sorted.len() - 1) as f64;
        let above = sorted[(at.ceil() as usize).min(sorted.len() - 1)];
        let below = sorted[at.floor() as usize];
        below + (above - below) * at.fract()
    }

    proptest! {
        #[test]
        fn quantiles_of_counted_minutes_are_those_of_the_list(
            stretches in prop::collection::vec((0u32..40, 1usize..5, any::<bool>()), 1..40),
            share in 0.0f64..=1.0,
        ) {
            let mut minutes = Minutes::default();
            let mut list = vec![0.5];
            minutes.add(0.5, 1);
            for (each, pieces, stays) in stretches {
                let each = f64::from(each) / 7.0;
                minutes.add(each, pieces);
                match stays {
                    true => list.extend(std::iter::repeat_n(each, pieces)),
                    false => minutes.take_away(each, pieces),
                }
            }
            list.sort_by(f64::total_cmp);
            prop_assert_eq!(minutes.pieces(), list.len());
            prop_assert!((minutes.quantile(share) - quantile(&list, share)).abs() < 1e-9);
        }

        #[test]
        fn the_record_continued_is_the_record_read_anew(
            steps in prop::collection::vec((0u8..6, 1i64..4_000_000, 1u16..4), 0..40),
        ) {
            let begin = Command::Begin {
                name: "t".into(),
                plan: Plan::default(),
                prints: vec![],
                denims: vec![],
            };
            let mut journal = Journal::begin(&begin, 0).unwrap().0;
            let mut at = 0;
            for (step, gap, pieces) in steps {
                // Haste, work and breaks.
                at += gap / if gap % 3 == 0 { 400 } else { 1 };
                let entry = match step {
                    0 => journal.propose_undo(at),
                    1 => journal.propose_redo(at),
                    _ => journal.propose(&Command::TickNext {
                        task: Task::Cut,
                        kind: Kind::Square,
                        count: Count::from(pieces),
                    }, at),
                };
                if let Ok(entry) = entry {
                    journal.accept(entry).unwrap();
                }
                prop_assert_eq!(journal.pace_record(), &PaceRecord::of(journal.entries()));
            }
        }
    }
}
