//! The faces of an older throw on the grid of a new one.
//!
//! Faces are a wish: they are carried place by place, each print by its name, as far as
//! the new grid, the new list of prints and their stock go.

use crate::cloth::fabric::{Cover, Denim, Print};
use crate::measure::Count;
use crate::plan::Plan;
use crate::plan::assembly::Rect;
use crate::throw::Throw;

/// The older throw's faces on a new grid with new lists of cloth.
///
/// A print that is not in the new list under its name, or not in stock any more, leaves
/// the face bare; a denim that is not there becomes the first.
pub fn faces(old: &Throw, plan: &Plan, prints: &[Print], denims: &[Denim]) -> Vec<Cover> {
    let mut left: Vec<Option<u32>> = prints.iter().map(|p| p.stock.map(Count::get)).collect();
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
                uncut: false,
                ..p.clone()
            })
            .collect();
        assert_eq!(faces(old, &old.plan, &bare, &old.denims), old.covers());
        // The first print gone, the second turned to the front of the list, two of the third.
        let mut fewer = bare[1..].to_vec();
        fewer[1].stock = Some(Count::from(2));
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
