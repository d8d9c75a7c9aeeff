//! What a throw taught ([`crate::heritage`]), in words where it matters: on the plan and at
//! the steps of the throw made after it.
//!
//! What was told from the record is put into words here, in the language and by the ruler it
//! is read in. The maker's own notes, and what files hold that were written when lessons were
//! still kept in words, are shown as they are.

use super::{Lens, draft_of, names, off};
use crate::assembly::Rect;
use crate::faces::{Face, Print};
use crate::heritage::{self, Heritage, Lesson, Told};
use crate::journal::Journal;
use crate::measure::{Length, zero};
use crate::pace;
use crate::tasks::Task;
use crate::throw::{Note, Throw};
use crate::view::{AgainView, LessonRow, Lessons};

/// A lesson in words; none where there is nothing to tell by this ruler.
pub(super) fn said(lesson: &Lesson, lens: Lens<'_>) -> Option<String> {
    let Some(told) = &lesson.told else {
        return Some(lesson.words.clone());
    };
    Some(match *told {
        Told::Scrap { lap } => say!(lens, "lesson-scrap", lap = lens.length(lap)),
        Told::Drift { mean, .. } if lens.ruler.nearest(mean) == zero() => return None,
        Told::Drift { fours, mean } => {
            let off = lens.over_under(mean);
            say!(lens, "lesson-drift", n = fours, off = off)
        }
        Told::Whole { size, planned } => {
            let size = lens.by(size.0, size.1);
            let planned = lens.by(planned.0, planned.1);
            say!(lens, "lesson-whole", size = size, planned = planned)
        }
        Told::Washed {
            washes,
            before,
            after,
        } => {
            let across = off::percent(before.0, after.0, lens);
            let down = off::percent(before.1, after.1, lens);
            say!(
                lens,
                "lesson-wash",
                n = washes,
                across = across,
                down = down
            )
        }
        Told::Spoilt { squares, why } => {
            let why = lens.say(&format!("mishap-{}", why.key()), &[]);
            say!(lens, "lesson-spoilt", n = squares, why = why)
        }
        Told::More { squares, face } => {
            let key = match face {
                Face::Front => "lesson-more-front",
                Face::Back => "lesson-more-back",
            };
            say!(lens, key, n = squares)
        }
    })
}

/// The lessons on the plan screen.
pub(super) fn told(heritage: &Heritage, lens: Lens<'_>) -> Option<Lessons> {
    let mut rows: Vec<LessonRow> = heritage
        .lessons
        .iter()
        .filter_map(|lesson| {
            Some(LessonRow {
                step: lesson
                    .task
                    .map(|t| lens.say(&format!("task-{}", t.key()), &[])),
                words: said(lesson, lens)?,
                hers: lesson.hers,
            })
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
    let mut out: Vec<String> = of_step.filter_map(|l| said(l, lens)).collect();
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
    let (n, mean) = heritage.drift.map_or((0, zero()), |d| (d.fours, d.mean));
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
        lessons: told(&heritage::of(journal), lens),
    }
}
