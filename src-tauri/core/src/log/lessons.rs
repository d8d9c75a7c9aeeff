//! The lessons that a throw leaves to one made after it, derived from its record.
//!
//! The maker's own lessons are the notes she marked for the next throw. The others are
//! derived from the record: the lap a scrap found right, what the measured fours were off by
//! for each lap, the finished size and the change in washing (ISO 5077), squares that
//! were spoilt, and fabric added to a face once cutting had begun. Steps that were
//! undone yield no lesson.

use crate::cloth::fabric::Face;
use crate::fitting::drift::{self, DriftVerdict, drift};
use crate::log::journal::{Journal, What};
use crate::log::pace;
use crate::measure::{Count, Ruler, from_mm, zero};
use crate::plan::assembly::Rect;
use crate::plan::{Joining, scraps};
use crate::throw::heritage::{Carried, DerivedLesson, Heritage, Lesson, MOST_LESSONS};
use crate::throw::tasks::{Station, Task};
use crate::throw::{Event, Mishap, Size, Throw};
use std::collections::BTreeMap;

/// What this throw leaves to one made after it, but for the faces: those are carried
/// once the new plan is known ([`faces`]).
pub fn heritage(journal: &Journal) -> Heritage {
    let throw = journal.throw();
    // How many fours a mean needs does not depend on the ruler's marks.
    let found = drift(&drift::seen(throw), Ruler::default().step());
    let own = (found.verdict != DriftVerdict::TooFew).then(|| Carried {
        fours: Count::at_most(found.count as u32),
        mean: from_mm(found.mean),
    });
    let before = throw.after.as_ref();
    let mut lessons = hers(throw);
    lessons.extend(derived_lessons(journal, own));
    lessons.truncate(MOST_LESSONS);
    Heritage {
        name: throw.name.clone(),
        lessons,
        paces: pace::learned(journal),
        drift: own.or_else(|| before.and_then(|h| h.drift)),
        faces: Vec::new(),
    }
}

/// The notes she marked, and those that came down to this throw.
fn hers(throw: &Throw) -> Vec<Lesson> {
    let older = throw.after.iter().flat_map(|h| &h.lessons);
    let marked = throw.notes.iter().filter(|n| n.next).map(|n| Lesson {
        words: n.text.clone(),
        task: n.task,
        hers: true,
        derived: None,
    });
    let mut all: Vec<Lesson> = older.filter(|l| l.hers).cloned().chain(marked).collect();
    // The newest stay, where there are more than can be carried.
    let over = all.len().saturating_sub(MOST_LESSONS * 2 / 3);
    all.drain(..over);
    all
}

/// The lessons derived from the record, each with the step it is about.
fn derived_lessons(journal: &Journal, drift: Option<Carried>) -> Vec<Lesson> {
    let throw = journal.throw();
    let mut out: Vec<(Option<Task>, DerivedLesson)> = Vec::new();
    let joint = match throw.plan.joining {
        Joining::Lapped => Task::Dot,
        Joining::Seamed | Joining::Exposed => Task::Pin,
    };
    // The last thing said of a lap and stitch is what holds of it.
    let all = throw.scraps.iter().enumerate().rev();
    let mut right = all.filter(|(n, scrap)| {
        let same = |later: &scraps::Scrap| {
            (later.joining, later.lap, later.stitch) == (scrap.joining, scrap.lap, scrap.stitch)
        };
        scrap.verdict == scraps::ScrapVerdict::Right && !throw.scraps[n + 1..].iter().any(same)
    });
    if let Some((_, scrap)) = right.next() {
        out.push((Some(joint), DerivedLesson::Scrap { lap: scrap.lap }));
    }
    if let Some(Carried { fours, mean }) = drift.filter(|d| d.mean != zero()) {
        out.push((Some(joint), DerivedLesson::Drift { fours, mean }));
    }
    if let Some(first) = throw.wholes.first() {
        let both = |size: Size| (size.width, size.height);
        let (size, planned) = (both(first.size), throw.plan.finished());
        out.push((None, DerivedLesson::Whole { size, planned }));
        let last = throw.wholes.last();
        if let Some(last) = last.filter(|last| last.washes > first.washes) {
            let washed = DerivedLesson::Washed {
                washes: last.washes - first.washes,
                before: size,
                after: both(last.size),
            };
            out.push((None, washed));
        }
    }
    for why in Mishap::ALL {
        let n = throw.losses.iter().filter(|l| l.why == why).count();
        let tasks = match why {
            Mishap::MisCut | Mishap::Flaw => BTreeMap::from([(Some(Task::Cut), n)]),
            Mishap::Scorched => scorched(journal),
            Mishap::Lost => BTreeMap::from([(None, n)]),
        };
        for (task, n) in tasks.into_iter().filter(|(_, n)| *n > 0) {
            let squares = Count::at_most(n as u32);
            out.push((task, DerivedLesson::Spoilt { squares, why }));
        }
    }
    for (face, task) in [
        (Face::Front, Task::CoverFront),
        (Face::Back, Task::CoverBack),
    ] {
        let squares = Count::at_most(added_midway(journal, face) as u32);
        if squares > 0 {
            out.push((Some(task), DerivedLesson::More { squares, face }));
        }
    }
    out.into_iter()
        .map(|(task, derived)| Lesson {
            words: String::new(),
            task,
            hers: false,
            derived: Some(derived),
        })
        .collect()
}

/// What was done and not taken back, in turn, each time with the throw as it was before.
fn retraced(journal: &Journal, mut each: impl FnMut(&Throw, &[Event])) {
    let mut throw: Option<Throw> = None;
    for (entry, _) in journal.entries().filter(|(_, stands)| *stands) {
        let What::Do(events) = &entry.what else {
            continue;
        };
        let Some(before) = &mut throw else {
            throw = events.first().and_then(Throw::begin);
            continue;
        };
        each(before, events);
        for event in events {
            before.apply(event, entry.at);
        }
    }
}

/// How many squares were scorched, by where they had last been under the iron.
fn scorched(journal: &Journal) -> BTreeMap<Option<Task>, usize> {
    let mut found = BTreeMap::new();
    retraced(journal, |before, events| {
        for event in events {
            if let Event::Spoilt { piece, why, .. } = event
                && *why == Mishap::Scorched
            {
                *found.entry(ironed_last(before, *piece)).or_default() += 1;
            }
        }
    });
    found
}

/// The step at the iron that a square went through last, alone or in a larger piece.
fn ironed_last(throw: &Throw, square: Rect) -> Option<Task> {
    let round = throw.worked().filter(|(piece, _)| piece.holds(square));
    let ironed = round.flat_map(|(_, work)| {
        let at_the_iron = Task::ALL
            .iter()
            .filter(|t| t.station() == Station::Iron && !t.is_cooling());
        at_the_iron.filter_map(|task| Some((work.when(*task)?, *task)))
    });
    ironed.max().map(|(_, task)| task)
}

/// How many more squares of a face got fabric than lost it once the first square was cut, or the faces were
/// laid out after that. What a square that is turned over shows on its other face is not more.
fn added_midway(journal: &Journal, face: Face) -> usize {
    let mut begun = false;
    let mut more = 0_i64;
    retraced(journal, |before, events| {
        let cut = || before.worked().any(|(_, w)| w.when(Task::Cut).is_some());
        // Laid out for the first time once cutting had begun, nothing was added to what there was.
        let laid = || Face::BOTH.into_iter().any(|face| before.covered(face) > 0);
        begun = begun || (laid() && cut());
        let faces = |event: &Event| matches!(event, Event::FacesChanged { .. });
        if begun && events.iter().any(faces) {
            let after = before.after(events);
            more += i64::from(after.covered(face)) - i64::from(before.covered(face));
        }
    });
    usize::try_from(more).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::fabric::Cover;
    use crate::command::Command;
    use crate::fitting::squaring::natural;
    use crate::log::journal::Entry;
    use crate::measure::inches;
    use crate::plan::Plan;

    /// A throw of four by four made after another, with a print, and then these entries, a minute apart.
    fn after(heritage: Heritage, entries: Vec<Vec<Event>>) -> Journal {
        let begin = Command::Begin {
            name: "new".into(),
            plan: Plan {
                across: 4,
                down: 4,
                ..Plan::default()
            },
            prints: vec![],
            denims: vec![],
        };
        let mut journal = Journal::begin_after(&begin, heritage, 0).unwrap().0;
        for events in entries {
            let (last, _) = journal.entries().next_back().unwrap();
            let entry = Entry {
                n: last.n + 1,
                at: last.at + 60_000,
                what: What::Do(events),
            };
            journal.accept(entry).unwrap();
        }
        journal
    }

    fn older(lessons: Vec<Lesson>) -> Heritage {
        Heritage {
            name: "old".into(),
            lessons,
            paces: vec![],
            drift: None,
            faces: vec![],
        }
    }

    fn note(text: &str, next: bool) -> Event {
        Event::Noted {
            text: text.into(),
            piece: None,
            task: None,
            next,
        }
    }

    fn done(task: Task, pieces: &[[u16; 4]]) -> Event {
        Event::Done {
            task,
            pieces: pieces.iter().map(|r| Rect::from(*r)).collect(),
            made: vec![],
        }
    }

    fn words(journal: &Journal) -> Vec<String> {
        let lessons = heritage(journal).lessons.into_iter();
        lessons.map(|l| l.words).filter(|w| !w.is_empty()).collect()
    }

    /// What she says last of a lap and stitch holds; of another stitch it says nothing.
    #[test]
    fn a_scrap_found_wrong_later_is_handed_on_as_right_no_more() {
        use crate::plan::Stitch;
        use crate::plan::scraps::{Scrap, ScrapVerdict};
        let tried = |lap: i64, stitch, verdict| {
            let scrap = Scrap {
                joining: Joining::Lapped,
                lap: crate::measure::sixty_fourths(lap),
                stitch,
                verdict,
                note: String::new(),
            };
            vec![Event::ScrapTried { scrap }]
        };
        let twin = Plan::default().stitch;
        let told = |tries: &[(i64, Stitch, ScrapVerdict)]| {
            let entries = tries.iter().map(|(l, s, v)| tried(*l, *s, *v)).collect();
            derived(&after(older(vec![]), entries))
        };
        let right = |lap| {
            let lap = crate::measure::sixty_fourths(lap);
            vec![(Some(Task::Dot), DerivedLesson::Scrap { lap })]
        };
        use ScrapVerdict::{Bulky, Right};
        assert_eq!(told(&[(32, twin, Right), (32, twin, Bulky)]), []);
        assert_eq!(told(&[(32, twin, Bulky), (32, twin, Right)]), right(32));
        let earlier = [(40, twin, Right), (32, twin, Right), (32, twin, Bulky)];
        assert_eq!(told(&earlier), right(40));
        let other = [(32, twin, Right), (32, Stitch::Straight, Bulky)];
        assert_eq!(told(&other), right(32));
    }

    fn derived(journal: &Journal) -> Vec<(Option<Task>, DerivedLesson)> {
        let lessons = heritage(journal).lessons.into_iter();
        lessons.filter_map(|l| Some((l.task, l.derived?))).collect()
    }

    /// What she wrote for the next throw goes on from throw to throw; what was derived from an older record
    /// and notes of the day do not. Of 50 notes the newest 40 are carried, two thirds of 60.
    #[test]
    fn what_she_marked_is_handed_on() {
        let lesson = |words: &str, hers| Lesson {
            words: words.into(),
            task: None,
            hers,
            derived: None,
        };
        let from = || older(vec![lesson("Old.", true), lesson("Derived.", false)]);
        let today = vec![note("Hot today.", false), note("Press longer.", true)];
        let journal = after(from(), vec![today]);
        assert_eq!(words(&journal), ["Old.", "Press longer."]);
        let many = (1..=50).map(|n| note(&n.to_string(), true)).collect();
        let kept = words(&after(from(), vec![many]));
        assert_eq!(
            (kept.len(), kept[0].as_str(), kept[39].as_str()),
            (40, "11", "50")
        );
    }

    /// Nobody has measured a four of this throw: what the older one's were off by is handed on.
    #[test]
    fn without_fours_of_its_own_the_older_drift_is_handed_on() {
        let drift = Some(Carried {
            fours: Count::at_most(5),
            mean: inches(1) / 16,
        });
        let journal = after(
            Heritage {
                drift,
                ..older(vec![])
            },
            vec![],
        );
        assert_eq!(heritage(&journal).drift, drift);
    }

    /// By hand: three fours measured ⅛ in over both ways have a lap each way that took ⅛ in too little. Where
    /// they came out as planned there is nothing to tell.
    #[test]
    fn fours_that_came_out_as_planned_are_no_lesson() {
        let fours = [[0, 0, 2, 2], [0, 2, 2, 2], [2, 0, 2, 2]].map(Rect::from);
        let told = |over: crate::measure::Length| {
            let planned = natural(after(older(vec![]), vec![]).throw(), fours[0]);
            let measured = fours.map(|piece| Event::Measured {
                piece,
                width: planned.width + over,
                height: planned.height + over,
            });
            derived(&after(older(vec![]), vec![measured.to_vec()]))
        };
        assert_eq!(told(zero()), []);
        let mean = inches(1) / 8;
        let fours = Count::from(3);
        let drift = DerivedLesson::Drift { fours, mean };
        assert_eq!(told(mean), [(Some(Task::Dot), drift)]);
    }

    /// By hand: measured after the first wash and after the third, two washes lie between. Measured twice
    /// without a wash between, none did anything.
    #[test]
    fn a_wash_is_told_where_it_lies_between_two_measurements() {
        let whole = [[0, 0, 4, 4]];
        let wash = || vec![done(Task::Wash, &whole), done(Task::Clip, &whole)];
        let size = |w: i64, h: i64| (inches(w), inches(h));
        let measured = |(width, height)| vec![Event::WholeMeasured { width, height }];
        let (first, last) = (size(40, 50), size(39, 49));
        let told = |entries| {
            let lessons = derived(&after(older(vec![]), entries)).into_iter();
            let washed = lessons.filter_map(|(_, lesson)| match lesson {
                DerivedLesson::Washed {
                    washes,
                    before,
                    after,
                } => Some((washes, before, after)),
                _ => None,
            });
            washed.collect::<Vec<_>>()
        };
        let between = vec![wash(), measured(first), wash(), wash(), measured(last)];
        assert_eq!(told(between), [(2, first, last)]);
        assert_eq!(told(vec![wash(), measured(first), measured(last)]), []);
    }

    /// The fabric of a square was pressed and cooled, then its pair was dotted, while another pair was
    /// pressed: it was spoilt where it was pressed itself.
    #[test]
    fn a_square_was_scorched_where_it_was_ironed_itself() {
        let square = [[0, 0, 1, 1]];
        let journal = after(
            older(vec![]),
            vec![
                vec![done(Task::Cut, &square), done(Task::PressCover, &square)],
                vec![done(Task::CoolCover, &square)],
                vec![done(Task::Dot, &[[0, 0, 1, 2], [2, 2, 1, 2]])],
                vec![done(Task::PressLap, &[[2, 2, 1, 2]])],
                vec![Event::Spoilt {
                    piece: Rect::square(0, 0),
                    why: Mishap::Scorched,
                    opened: None,
                }],
            ],
        );
        let spoilt = DerivedLesson::Spoilt {
            squares: Count::from(1),
            why: Mishap::Scorched,
        };
        assert_eq!(derived(&journal), [(Some(Task::PressCover), spoilt)]);
    }

    /// By hand: one square is faced, then squares are cut and a pair is dotted in one go; two squares faced after
    /// that are two more. Facing before the first cut is none.
    #[test]
    fn what_is_faced_once_cutting_had_begun_is_more() {
        let faced = |squares: &[(u16, u16)]| Event::FacesChanged {
            faces: squares
                .iter()
                .map(|(row, col)| {
                    let cover = Cover {
                        front: Some(0),
                        ..Cover::default()
                    };
                    (Rect::square(*row, *col), cover)
                })
                .collect(),
            again: None,
            by_hand: None,
        };
        let cut = || {
            let squares = [[0, 0, 1, 1], [0, 1, 1, 1]];
            vec![done(Task::Cut, &squares), done(Task::Dot, &[[0, 0, 1, 2]])]
        };
        let more = |entries| {
            let lessons = derived(&after(older(vec![]), entries)).into_iter();
            let more = lessons.filter_map(|(task, lesson)| match lesson {
                DerivedLesson::More { squares, face } => Some((task, squares.get(), face)),
                _ => None,
            });
            more.collect::<Vec<_>>()
        };
        let late = vec![
            vec![faced(&[(3, 3)])],
            cut(),
            vec![faced(&[(2, 2), (2, 3)]), note("More.", false)],
        ];
        assert_eq!(more(late), [(Some(Task::CoverFront), 2, Face::Front)]);
        let early = vec![vec![faced(&[(3, 3)])], vec![faced(&[(2, 2)])], cut()];
        assert_eq!(more(early), []);
        // Turned over, a square shows its fabric on the back: that is no more of it than there was.
        let pieces = vec![Rect::square(3, 3)];
        let over = vec![Event::Flipped { pieces }];
        let turned = vec![vec![faced(&[(3, 3)])], cut(), over];
        assert_eq!(more(turned.clone()), []);
        let too = [turned, vec![vec![faced(&[(2, 2)])]]].concat();
        assert_eq!(more(too), [(Some(Task::CoverFront), 1, Face::Front)]);
    }
}
