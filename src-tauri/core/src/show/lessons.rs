//! What a throw taught: gathered for the next one, and shown there where it matters.
//!
//! The maker's own lessons are the notes she marked for the next throw. The others are
//! told from the record: the lap a scrap found right, what the measured fours were off by
//! for each lap, the finished size and the change in washing (ISO 5077), squares that
//! were spoilt, and fabric added to a face once cutting had begun. Nothing is told of
//! what was taken back.

use crate::cloth::fabric::Face;
use crate::fitting::drift::{DriftVerdict, drift};
use crate::fitting::squaring::measured_drift;
use crate::log::journal::{Journal, What};
use crate::log::pace;
use crate::measure::{Length, from_mm, zero};
use crate::plan::assembly::Rect;
use crate::plan::{Joining, scraps};
use crate::show::context::Context;
use crate::show::{names, parts};
use crate::throw::heritage::{Carried, Heritage, Lesson, MOST_LESSONS};
use crate::throw::tasks::{Station, Task};
use crate::throw::{Event, Mishap, Note, Throw};
use serde::Serialize;
use std::collections::BTreeMap;
use ts_rs::TS;

/// What was learned on an older throw.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Lessons {
    /// From which throw.
    pub title: String,
    /// Each in words.
    pub rows: Vec<LessonRow>,
}

/// Something learned.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct LessonRow {
    /// The step it is about, in words.
    pub step: Option<String>,
    /// In words.
    pub words: String,
    /// Whether the maker wrote it herself.
    pub hers: bool,
}

/// What this throw leaves to one made after it, but for the faces: those are carried
/// once the new plan is known ([`crate::faces::inherit::faces`]).
pub fn heritage(journal: &Journal, context: Context<'_>) -> Heritage {
    let throw = journal.throw();
    let fours = measured_drift(throw);
    let found = drift(&fours, context.ruler.step());
    let own = (found.verdict != DriftVerdict::TooFew).then(|| Carried {
        fours: found.count as u32,
        mean: from_mm(found.mean),
    });
    let before = throw.after.as_ref();
    let mut lessons = hers(throw);
    lessons.extend(told_of(journal, own, context));
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

fn told_of(journal: &Journal, drift: Option<Carried>, context: Context<'_>) -> Vec<Lesson> {
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
    let right = |s: &&scraps::Scrap| s.verdict == scraps::ScrapVerdict::Right;
    if let Some(scrap) = throw.scraps.iter().rev().find(right) {
        let lap = context.length(scrap.lap);
        add(Some(joint), say!(context, "lesson-scrap", lap = lap));
    }
    if let Some(Carried { fours, mean }) = drift
        && context.ruler.nearest(mean) != zero()
    {
        let off = context.over_under(mean);
        add(
            Some(joint),
            say!(context, "lesson-drift", n = fours, off = off),
        );
    }
    if let Some(first) = throw.wholes.first() {
        let (w, h) = throw.plan.finished();
        let size = context.by(first.size.width, first.size.height);
        let planned = context.by(w, h);
        add(
            None,
            say!(context, "lesson-whole", size = size, planned = planned),
        );
        let washed = throw
            .wholes
            .last()
            .filter(|last| last.washes > first.washes);
        if let Some(last) = washed {
            let across = parts::percent(first.size.width, last.size.width, context);
            let down = parts::percent(first.size.height, last.size.height, context);
            let n = last.washes - first.washes;
            let words = say!(context, "lesson-wash", n = n, across = across, down = down);
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
        let why = context.say(&format!("mishap-{}", why.key()), &[]);
        for (task, n) in tasks.into_iter().filter(|(_, n)| *n > 0) {
            add(
                task,
                say!(context, "lesson-spoilt", n = n, why = why.as_str()),
            );
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
            add(Some(task), say!(context, key, n = n));
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
pub(super) fn told(heritage: &Heritage, context: Context<'_>) -> Option<Lessons> {
    let mut rows: Vec<LessonRow> = heritage
        .lessons
        .iter()
        .map(|lesson| LessonRow {
            step: lesson
                .task
                .map(|t| context.say(&format!("task-{}", t.key()), &[])),
            words: lesson.words.clone(),
            hers: lesson.hers,
        })
        .collect();
    if !heritage.paces.is_empty() {
        rows.push(LessonRow {
            step: None,
            words: say!(context, "lesson-paces", n = heritage.paces.len()),
            hers: false,
        });
    }
    let title = say!(context, "lessons-from", name = heritage.name.as_str());
    (!rows.is_empty()).then_some(Lessons { title, rows })
}

/// What was learned of a step on the throw before, for its card.
pub(super) fn at_step(throw: &Throw, task: Task, context: Context<'_>) -> Vec<String> {
    let Some(heritage) = &throw.after else {
        return Vec::new();
    };
    let of_step = heritage.lessons.iter().filter(|l| l.task == Some(task));
    let mut out: Vec<String> = of_step.map(|l| l.words.clone()).collect();
    if let Some(pace) = pace::carried(throw, task) {
        let minutes = (pace.middle * 2.0).ceil() / 2.0;
        let point = context.words.language().point.to_string();
        let minutes = match minutes {
            0.5 => "half".into(),
            1.0 => "one".into(),
            _ => format!("{minutes}").replace('.', &point),
        };
        out.push(say!(context, "lesson-pace", minutes = minutes));
    }
    out
}

/// Most notes shown with a step.
const FEW_NOTES: usize = 3;

/// What was written down at this step, the newest first: of the piece in hand before
/// what was written at others, which says where.
pub(super) fn notes_at(
    throw: &Throw,
    task: Task,
    piece: Rect,
    context: Context<'_>,
) -> Vec<String> {
    let at_step = throw.notes.iter().rev().filter(|n| n.task == Some(task));
    let (own, others): (Vec<&Note>, Vec<&Note>) =
        at_step.partition(|n| n.piece.is_none_or(|p| p == piece));
    let told = |note: &Note| match note.piece.filter(|p| *p != piece) {
        Some(other) if throw.assembly().knows(other) => say!(
            context,
            "noted-at",
            piece = names::piece(throw, other, context),
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
pub(super) fn drift_before(heritage: &Heritage, context: Context<'_>) -> String {
    let (n, mean) = heritage.drift.map_or((0, zero()), |d| (d.fours, d.mean));
    let mean: Length = mean;
    say!(
        context,
        "drift-before",
        name = heritage.name.as_str(),
        n = n,
        off = context.over_under(mean)
    )
}
