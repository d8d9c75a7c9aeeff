//! What a throw taught ([`crate::throw::heritage`]), in words where it matters: on the plan and at
//! the steps of the throw made after it.
//!
//! What was derived from the record is put into words here, in the language and by the ruler it
//! is read in. The maker's own notes, and what files hold that were written when lessons were
//! still kept in words, are shown as they are.

use crate::cloth::fabric::Face;
use crate::log::pace;
use crate::measure::{Count, Length, zero};
use crate::plan::assembly::Rect;
use crate::show::context::Context;
use crate::show::{names, parts};
use crate::throw::heritage::{DerivedLesson, Heritage, Lesson};
use crate::throw::tasks::Task;
use crate::throw::{Note, Throw};
use crate::types::TS;
use serde::Serialize;

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

/// A lesson in words; none where there is nothing to show by this ruler.
pub(super) fn said(lesson: &Lesson, context: Context<'_>) -> Option<String> {
    let Some(derived) = &lesson.derived else {
        return Some(lesson.words.clone());
    };
    Some(match *derived {
        DerivedLesson::Scrap { lap } => say!(context, "lesson-scrap", lap = context.length(lap)),
        DerivedLesson::Drift { mean, .. } if context.ruler.nearest(mean) == zero() => return None,
        DerivedLesson::Drift { fours, mean } => {
            let off = context.over_under(mean);
            say!(context, "lesson-drift", n = fours, off = off)
        }
        DerivedLesson::Whole { size, planned } => {
            let size = context.by(size.0, size.1);
            let planned = context.by(planned.0, planned.1);
            say!(context, "lesson-whole", size = size, planned = planned)
        }
        DerivedLesson::Washed {
            washes,
            before,
            after,
        } => {
            let across = parts::percent(before.0, after.0, context);
            let down = parts::percent(before.1, after.1, context);
            say!(
                context,
                "lesson-wash",
                n = washes,
                across = across,
                down = down
            )
        }
        DerivedLesson::Spoilt { squares, why } => {
            let why = context.say(&format!("mishap-{}", why.key()), &[]);
            say!(context, "lesson-spoilt", n = squares, why = why)
        }
        DerivedLesson::More { squares, face } => {
            let key = match face {
                Face::Front => "lesson-more-front",
                Face::Back => "lesson-more-back",
            };
            say!(context, key, n = squares)
        }
    })
}

/// The lessons on the plan screen.
pub(super) fn view(heritage: &Heritage, context: Context<'_>) -> Option<Lessons> {
    let mut rows: Vec<LessonRow> = heritage
        .lessons
        .iter()
        .filter_map(|lesson| {
            Some(LessonRow {
                step: lesson
                    .task
                    .map(|t| context.say(&format!("task-{}", t.key()), &[])),
                words: said(lesson, context)?,
                hers: lesson.hers,
            })
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
    let mut out: Vec<String> = of_step.filter_map(|l| said(l, context)).collect();
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

/// What was written down at this step, the newest first: of no piece, of the current one, or of one
/// that it is made of, which says where.
pub(super) fn notes_at(
    throw: &Throw,
    task: Task,
    piece: Rect,
    context: Context<'_>,
) -> Vec<String> {
    let at_step = throw.notes.iter().rev().filter(|n| n.task == Some(task));
    let at_step = at_step.filter(|n| n.piece.is_none_or(|of| piece.holds(of)));
    let (own, others): (Vec<&Note>, Vec<&Note>) =
        at_step.partition(|n| n.piece.is_none_or(|p| p == piece));
    let text_of = |note: &Note| match note.piece.filter(|p| *p != piece) {
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
        .map(text_of)
        .collect()
}

/// What the fours of the throw before say, while there are too few of this one.
pub(super) fn drift_before(heritage: &Heritage, context: Context<'_>) -> String {
    let (n, mean) = heritage
        .drift
        .map_or((Count::NONE, zero()), |d| (d.fours, d.mean));
    let mean: Length = mean;
    say!(
        context,
        "drift-before",
        name = heritage.name.as_str(),
        n = n,
        off = context.over_under(mean)
    )
}
