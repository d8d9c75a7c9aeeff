//! What a throw leaves to the next one made after its plan.
//!
//! [`Heritage`] is kept with the beginning of the new throw, as data: the older throw
//! may be gone. Lessons are kept in words, the maker's own and those told from the
//! record ([`crate::show::heritage`] makes them); her pace and the mean error of her lap
//! are kept as figures, and stand in until the new throw has enough of its own
//! ([`crate::pace::FEW`], three measured fours).
//!
//! Faces are a wish: they are carried place by place, each print by its name, as far as
//! the new grid, the new list of prints and their stock go.

use crate::assembly::Rect;
use crate::faces::{Cover, Denim, Print};
use crate::measure::Length;
use crate::plan::Plan;
use crate::tasks::Task;
use crate::throw::Throw;
use serde::{Deserialize, Serialize};

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
    /// In words.
    pub words: String,
    /// The step it is about; none where it is about the whole.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub task: Option<Task>,
    /// Whether the maker wrote it; else it was told from the record.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub hers: bool,
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
