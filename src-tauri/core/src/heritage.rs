//! What a throw leaves to the next one made after its plan.
//!
//! [`Heritage`] is kept with the beginning of the new throw, as data: the older throw
//! may be gone. Lessons are the maker's own, in her words, and what is told from the record
//! ([`Told`]): as figures, so that they are read in the language and by the ruler of
//! whoever opens the throw. Files that kept those in words are read as they are. Her pace and
//! the mean error of her lap are kept as figures too, and stand in until the new throw has
//! enough of its own ([`crate::pace::FEW`], three measured fours).
//!
//! # What a lesson is told from
//!
//! The maker's own lessons are the notes she marked for the next throw. The others are
//! told from the record: the lap a scrap found right, what the measured fours were off by
//! for each lap, the finished size and the change in washing (ISO 5077), squares that
//! were spoilt, and fabric added to a face once cutting had begun. Nothing is told of
//! what was taken back.
//!
//! Faces are a wish: they are carried place by place, each print by its name, as far as
//! the new grid, the new list of prints and their stock go.

use crate::assembly::Rect;
use crate::drift::{self, Verdict, drift};
use crate::faces::{Cover, Denim, Face, Print};
use crate::journal::{Journal, What};
use crate::measure::{Length, Ruler, from_mm, zero};
use crate::pace;
use crate::plan::{Joining, Plan};
use crate::scraps;
use crate::tasks::{Station, Task};
use crate::throw::{Event, Mishap, Size, Throw};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Most lessons that are carried on.
pub const MOST_LESSONS: usize = 60;

/// What an older throw left.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Heritage {
    /// The older throw's name.
    pub name: String,
    /// What was learned, in words.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub lessons: Vec<Lesson>,
    /// The maker's pace.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub paces: Vec<Learned>,
    /// What her measured fours were off by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drift: Option<Carried>,
    /// The faces to begin with, row by row; empty for bare ones.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub faces: Vec<Cover>,
}

/// Something learned.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Lesson {
    /// In words: what the maker wrote, or what was told in files that keep no [`Told`]; else
    /// empty.
    pub words: String,
    /// The step it is about; none where it is about the whole.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub task: Option<Task>,
    /// Whether the maker wrote it; else it was told from the record.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub hers: bool,
    /// What was told from the record.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub told: Option<Told>,
}

/// What is told from the record of a throw. Sizes are a width and a height.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Told {
    /// On a scrap this lap was found right.
    Scrap {
        /// The lap.
        lap: Length,
    },
    /// What the measured fours came out at for each lap, in the mean.
    Drift {
        /// How many fours.
        fours: u32,
        /// Measured less planned; above nought is over.
        mean: Length,
    },
    /// What the finished piece measured.
    Whole {
        /// As measured first.
        size: (Length, Length),
        /// As planned.
        planned: (Length, Length),
    },
    /// What washing did to it.
    Washed {
        /// How many washes lie between the two.
        washes: u8,
        /// The size before.
        before: (Length, Length),
        /// The size after.
        after: (Length, Length),
    },
    /// Squares that were no good.
    Spoilt {
        /// How many.
        squares: u32,
        /// Why.
        why: Mishap,
    },
    /// Squares of a face that got fabric once cutting had begun.
    More {
        /// How many.
        squares: u32,
        /// The face.
        face: Face,
    },
}

/// How long a step took her for one piece, in milliseconds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Learned {
    /// The step.
    pub task: Task,
    /// The lower quartile.
    pub low: u32,
    /// The median.
    pub middle: u32,
    /// The upper quartile.
    pub high: u32,
}

/// What the measured fours were off by, in the mean.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Carried {
    /// How many fours.
    pub fours: u32,
    /// Measured less planned, for each lap; above nought is over.
    pub mean: Length,
}

/// What this throw leaves to one made after it, but for the faces: those are carried
/// once the new plan is known ([`faces`]).
pub fn of(journal: &Journal) -> Heritage {
    let throw = journal.throw();
    // From how many fours on the mean is told does not depend on the ruler's marks.
    let found = drift(&drift::seen(throw), Ruler::default().step());
    let own = (found.verdict != Verdict::TooFew).then(|| Carried {
        fours: found.count as u32,
        mean: from_mm(found.mean),
    });
    let before = throw.after.as_ref();
    let mut lessons = hers(throw);
    lessons.extend(told_of(journal, own));
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
        told: None,
    });
    let mut all: Vec<Lesson> = older.filter(|l| l.hers).cloned().chain(marked).collect();
    // The newest stay, where there are more than can be carried.
    let over = all.len().saturating_sub(MOST_LESSONS * 2 / 3);
    all.drain(..over);
    all
}

/// What is told from the record, each with the step it is about.
fn told_of(journal: &Journal, drift: Option<Carried>) -> Vec<Lesson> {
    let throw = journal.throw();
    let mut out: Vec<(Option<Task>, Told)> = Vec::new();
    let joint = match throw.plan.joining {
        Joining::Lapped => Task::Dot,
        Joining::Seamed | Joining::Exposed => Task::Pin,
    };
    let right = |s: &&scraps::Scrap| s.verdict == scraps::Verdict::Right;
    if let Some(scrap) = throw.scraps.iter().rev().find(right) {
        out.push((Some(joint), Told::Scrap { lap: scrap.lap }));
    }
    if let Some(Carried { fours, mean }) = drift.filter(|d| d.mean != zero()) {
        out.push((Some(joint), Told::Drift { fours, mean }));
    }
    if let Some(first) = throw.wholes.first() {
        let both = |size: Size| (size.width, size.height);
        let (size, planned) = (both(first.size), throw.plan.finished());
        out.push((None, Told::Whole { size, planned }));
        let last = throw.wholes.last();
        if let Some(last) = last.filter(|last| last.washes > first.washes) {
            let washed = Told::Washed {
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
            let squares = n as u32;
            out.push((task, Told::Spoilt { squares, why }));
        }
    }
    for (face, task) in [
        (Face::Front, Task::CoverFront),
        (Face::Back, Task::CoverBack),
    ] {
        let squares = added_midway(journal, face) as u32;
        if squares > 0 {
            out.push((Some(task), Told::More { squares, face }));
        }
    }
    out.into_iter()
        .map(|(task, told)| Lesson {
            words: String::new(),
            task,
            hers: false,
            told: Some(told),
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

/// The older throw's faces on a new grid with new lists of cloth.
///
/// A print that is not in the new list under its name, or not in stock any more, leaves
/// the face bare; a denim that is not there becomes the first.
pub fn faces(old: &Throw, plan: &Plan, prints: &[Print], denims: &[Denim]) -> Vec<Cover> {
    let mut left: Vec<Option<u32>> = prints.iter().map(|p| p.stock).collect();
    let mut take = |print: Option<u8>| -> Option<u8> {
        let name = &old.prints.get(usize::from(print?))?.name;
        let at = prints.iter().position(|p| p.name == *name)?;
        if let Some(stock) = &mut left[at] {
            *stock = stock.checked_sub(1)?;
        }
        u8::try_from(at).ok()
    };
    let denim = |denim: u8| {
        let name = old.denims.get(usize::from(denim)).map(|d| &d.name);
        let at = denims.iter().position(|d| Some(&d.name) == name);
        at.and_then(|at| u8::try_from(at).ok()).unwrap_or(0)
    };
    Rect::grid(plan.across, plan.down)
        .squares()
        .map(|square| {
            let cover = old.cover(square);
            Cover {
                front: take(cover.front),
                back: take(cover.back),
                denim: denim(cover.denim),
                wrong_side_up: cover.wrong_side_up,
                crosswise: false,
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn faces_follow_names_grid_and_stock() {
        let journal = crate::demo::throw(1_800_000_000_000);
        let old = journal.throw();
        let all = |covers: &[Cover], print: u8| {
            covers
                .iter()
                .flat_map(|c| [c.front, c.back])
                .filter(|p| *p == Some(print))
                .count()
        };
        let bare: Vec<Print> = old
            .prints
            .iter()
            .map(|p| Print {
                stock: None,
                ..p.clone()
            })
            .collect();
        assert_eq!(faces(old, &old.plan, &bare, &old.denims), old.covers());
        // The first print gone, the second turned to the front of the list, two of the third.
        let mut fewer = bare[1..].to_vec();
        fewer[1].stock = Some(2);
        let found = faces(old, &old.plan, &fewer, &[]);
        assert_eq!(all(&found, 0), all(old.covers(), 1));
        assert_eq!(all(&found, 1), all(old.covers(), 2).min(2));
        assert!(found.iter().all(|c| c.denim == 0));
        // A larger grid keeps what both know.
        let plan = Plan {
            across: 7,
            down: 9,
            ..old.plan
        };
        let found = faces(old, &plan, &bare, &old.denims);
        assert_eq!(found.len(), 63);
        assert_eq!(found[7..13], old.covers()[6..12]);
        assert_eq!(found[6], Cover::default());
    }
}
