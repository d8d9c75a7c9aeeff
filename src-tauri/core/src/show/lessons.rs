//! What a throw taught: gathered for the next one, and shown there where it matters.
//!
//! The maker's own lessons are the notes she marked for the next throw. The others are
//! told from the record: the lap a scrap found right, what the measured fours were off by
//! for each lap, the finished size and the change in washing (ISO 5077), squares that
//! were spoilt, and fabric added to a face once cutting had begun. Nothing is told of
//! what was taken back.

use super::measuring::seen;
use super::{Lens, draft_of, names, off};
use crate::cloth::fabric::{Face, Print};
use crate::fitting::drift::{Verdict, drift};
use crate::log::journal::{Journal, What};
use crate::log::pace;
use crate::measure::{Count, Length, from_mm, zero};
use crate::plan::Joining;
use crate::plan::assembly::Rect;
use crate::plan::scraps;
use crate::throw::heritage::{Carried, Heritage, Lesson, MOST_LESSONS};
use crate::throw::tasks::{Station, Task};
use crate::throw::{Event, Mishap, Note, Throw};
use crate::view::{AgainView, LessonRow, Lessons};
use std::collections::BTreeMap;

/// What this throw leaves to one made after it, but for the faces: those are carried
/// once the new plan is known ([`crate::faces::inherit::faces`]).
pub fn heritage(journal: &Journal, lens: Lens<'_>) -> Heritage {
    let throw = journal.throw();
    let fours = seen(throw);
    let found = drift(&fours, lens.ruler.step());
    let own = (found.verdict != Verdict::TooFew).then(|| Carried {
        fours: Count::at_most(found.count as u32),
        mean: from_mm(found.mean),
    });
    let before = throw.after.as_ref();
    let mut lessons = hers(throw);
    lessons.extend(told_of(journal, own, lens));
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
    });
    let mut all: Vec<Lesson> = older.filter(|l| l.hers).cloned().chain(marked).collect();
    // The newest stay, where there are more than can be carried.
    let over = all.len().saturating_sub(MOST_LESSONS * 2 / 3);
    all.drain(..over);
    all
}

fn told_of(journal: &Journal, drift: Option<Carried>, lens: Lens<'_>) -> Vec<Lesson> {
    let throw = journal.throw();
    let mut out = Vec::new();
    let mut add = |task: Option<Task>, words: String| {
        out.push(Lesson {
            words,
            task,
            hers: false,
        });
    };
    let joint = match throw.plan.joining {
        Joining::Lapped => Task::Dot,
        Joining::Seamed | Joining::Exposed => Task::Pin,
    };
    let right = |s: &&scraps::Scrap| s.verdict == scraps::Verdict::Right;
    if let Some(scrap) = throw.scraps.iter().rev().find(right) {
        let lap = lens.length(scrap.lap);
        add(Some(joint), say!(lens, "lesson-scrap", lap = lap));
    }
    if let Some(Carried { fours, mean }) = drift
        && lens.ruler.nearest(mean) != zero()
    {
        let off = lens.over_under(mean);
        add(
            Some(joint),
            say!(lens, "lesson-drift", n = fours, off = off),
        );
    }
    if let Some(first) = throw.wholes.first() {
        let (w, h) = throw.plan.finished();
        let size = lens.by(first.size.width, first.size.height);
        let planned = lens.by(w, h);
        add(
            None,
            say!(lens, "lesson-whole", size = size, planned = planned),
        );
        let washed = throw
            .wholes
            .last()
            .filter(|last| last.washes > first.washes);
        if let Some(last) = washed {
            let across = off::percent(first.size.width, last.size.width, lens);
            let down = off::percent(first.size.height, last.size.height, lens);
            let n = last.washes - first.washes;
            let words = say!(lens, "lesson-wash", n = n, across = across, down = down);
            add(None, words);
        }
    }
    for why in Mishap::ALL {
        let n = throw.losses.iter().filter(|l| l.why == why).count();
        let tasks = match why {
            Mishap::MisCut | Mishap::Flaw => BTreeMap::from([(Some(Task::Cut), n)]),
            Mishap::Scorched => scorched(journal),
            Mishap::Lost => BTreeMap::from([(None, n)]),
        };
        let why = lens.say(&format!("mishap-{}", why.key()), &[]);
        for (task, n) in tasks.into_iter().filter(|(_, n)| *n > 0) {
            add(task, say!(lens, "lesson-spoilt", n = n, why = why.as_str()));
        }
    }
    for (face, task) in [
        (Face::Front, Task::CoverFront),
        (Face::Back, Task::CoverBack),
    ] {
        let n = added_midway(journal, face);
        if n > 0 {
            let key = match face {
                Face::Front => "lesson-more-front",
                Face::Back => "lesson-more-back",
            };
            add(Some(task), say!(lens, key, n = n));
        }
    }
    out
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
            if let Event::Spoilt { piece, why } = event
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

/// How many more squares of a face wear fabric now than when the first square was cut.
fn added_midway(journal: &Journal, face: Face) -> usize {
    let mut at_first_cut = None;
    let mut changed = false;
    retraced(journal, |before, events| {
        let cut = || before.worked().any(|(_, w)| w.when(Task::Cut).is_some());
        if at_first_cut.is_none() && cut() {
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

/// The lessons on the plan screen.
pub(super) fn told(heritage: &Heritage, lens: Lens<'_>) -> Option<Lessons> {
    let mut rows: Vec<LessonRow> = heritage
        .lessons
        .iter()
        .map(|lesson| LessonRow {
            step: lesson
                .task
                .map(|t| lens.say(&format!("task-{}", t.key()), &[])),
            words: lesson.words.clone(),
            hers: lesson.hers,
        })
        .collect();
    if !heritage.paces.is_empty() {
        rows.push(LessonRow {
            step: None,
            words: say!(lens, "lesson-paces", n = heritage.paces.len()),
            hers: false,
        });
    }
    let title = say!(lens, "lessons-from", name = heritage.name.as_str());
    (!rows.is_empty()).then_some(Lessons { title, rows })
}

/// What was learned of a step on the throw before, for its card.
pub(super) fn at_step(throw: &Throw, task: Task, lens: Lens<'_>) -> Vec<String> {
    let Some(heritage) = &throw.after else {
        return Vec::new();
    };
    let of_step = heritage.lessons.iter().filter(|l| l.task == Some(task));
    let mut out: Vec<String> = of_step.map(|l| l.words.clone()).collect();
    if let Some(pace) = pace::carried(throw, task) {
        let minutes = (pace.middle * 2.0).ceil() / 2.0;
        let point = lens.words.language().point.to_string();
        let minutes = match minutes {
            0.5 => "half".into(),
            1.0 => "one".into(),
            _ => format!("{minutes}").replace('.', &point),
        };
        out.push(say!(lens, "lesson-pace", minutes = minutes));
    }
    out
}

/// Most notes shown with a step.
const FEW_NOTES: usize = 3;

/// What was written down at this step, the newest first: of the piece in hand before
/// what was written at others, which says where.
pub(super) fn notes_at(throw: &Throw, task: Task, piece: Rect, lens: Lens<'_>) -> Vec<String> {
    let at_step = throw.notes.iter().rev().filter(|n| n.task == Some(task));
    let (own, others): (Vec<&Note>, Vec<&Note>) =
        at_step.partition(|n| n.piece.is_none_or(|p| p == piece));
    let told = |note: &Note| match note.piece.filter(|p| *p != piece) {
        Some(other) if throw.assembly().knows(other) => say!(
            lens,
            "noted-at",
            piece = names::piece(throw, other, lens),
            text = note.text.as_str()
        ),
        _ => note.text.clone(),
    };
    own.into_iter()
        .chain(others)
        .take(FEW_NOTES)
        .map(told)
        .collect()
}

/// What the fours of the throw before say, while there are too few of this one.
pub(super) fn drift_before(heritage: &Heritage, lens: Lens<'_>) -> String {
    let (n, mean) = heritage
        .drift
        .map_or((Count::NONE, zero()), |d| (d.fours, d.mean));
    let mean: Length = mean;
    say!(
        lens,
        "drift-before",
        name = heritage.name.as_str(),
        n = n,
        off = lens.over_under(mean)
    )
}

/// The longest name a throw may have leaves room for the words round it.
const ROOM: usize = 60;

/// A throw about to be made again: its plan, its cloth, and what it taught.
///
/// Stock is left uncounted: what was at hand has been used.
pub fn again(journal: &Journal, lens: Lens<'_>) -> AgainView {
    let throw = journal.throw();
    let name: String = throw.name.chars().take(ROOM).collect();
    AgainView {
        name: say!(lens, "again-name", name = name),
        draft: draft_of(&throw.plan, lens),
        prints: throw
            .prints
            .iter()
            .map(|p| Print {
                stock: None,
                ..p.clone()
            })
            .collect(),
        denims: throw.denims.clone(),
        lessons: told(&heritage(journal, lens), lens),
    }
}
