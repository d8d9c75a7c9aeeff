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
    let right = |s: &&scraps::Scrap| s.verdict == scraps::ScrapVerdict::Right;
    if let Some(scrap) = throw.scraps.iter().rev().find(right) {
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

/// How many more squares of a face wear fabric now than when the first square was cut, or when the
/// faces were laid out after that.
fn added_midway(journal: &Journal, face: Face) -> usize {
    let mut at_first_cut = None;
    let mut changed = false;
    retraced(journal, |before, events| {
        let cut = || before.worked().any(|(_, w)| w.when(Task::Cut).is_some());
        // Laid out for the first time once cutting had begun, nothing was added to what there was.
        let laid = || Face::BOTH.into_iter().any(|face| before.covered(face) > 0);
        if at_first_cut.is_none() && laid() && cut() {
            at_first_cut = Some(before.covered(face) as usize);
        }
        let faces = |event: &Event| matches!(event, Event::FacesChanged { .. });
        changed |= at_first_cut.is_some() && events.iter().any(faces);
    });
    // A larger grid with fabric from the start is no change of mind.
    match at_first_cut.filter(|_| changed) {
        Some(before) => (journal.throw().covered(face) as usize).saturating_sub(before),
        None => 0,
    }
}
