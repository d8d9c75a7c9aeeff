//! The faces of an older throw on the grid of a new one.
//!
//! Faces are a wish: they are carried place by place, each print by its name, as far as
//! the new grid, the new list of prints and their stock go. What cannot be carried over is reported
//! square by square ([`lost`]).

use crate::cloth::fabric::{Cover, Denim, Face, Print};
use crate::measure::Count;
use crate::plan::Plan;
use crate::plan::assembly::Rect;
use crate::throw::Throw;

/// Why a fabric square of the older throw is not on the new one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// The new grid does not have its place.
    NoPlace,
    /// Its print is not on the new list, or not enough of it.
    NoFabric,
}

/// A fabric square that is not carried.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Lost {
    /// Its place on the older grid.
    pub square: Rect,
    /// The face it is on.
    pub face: Face,
    /// Its print, in the older list.
    pub print: u8,
    /// Why.
    pub why: Why,
}

/// The fabric squares of a throw for which a grid has no place.
pub fn off_grid(old: &Throw, plan: &Plan) -> Vec<Lost> {
    let grid = Rect::grid(plan.across, plan.down);
    let outside = old.assembly().whole().squares().filter(|s| !grid.holds(*s));
    let lost = |square: Rect| {
        Face::BOTH.into_iter().filter_map(move |face| {
            let print = old.cover(square).on(face)?;
            let why = Why::NoPlace;
            Some(Lost {
                square,
                face,
                print,
                why,
            })
        })
    };
    outside.flat_map(lost).collect()
}

/// The older throw's fabric squares that are not on the new grid with the new list of prints.
pub fn lost(old: &Throw, plan: &Plan, prints: &[Print]) -> Vec<Lost> {
    let mut out = off_grid(old, plan);
    let new = faces(old, plan, prints, &[]);
    let grid = Rect::grid(plan.across, plan.down);
    for (square, cover) in grid.squares().zip(&new) {
        for face in Face::BOTH {
            let was = old.cover(square).on(face);
            if let Some(print) = was.filter(|_| cover.on(face).is_none()) {
                let why = Why::NoFabric;
                out.push(Lost {
                    square,
                    face,
                    print,
                    why,
                });
            }
        }
    }
    out
}

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
                patch: None,
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

    #[test]
    fn what_cannot_be_carried_is_told() {
        let journal = crate::demo::throw(1_800_000_000_000);
        let old = journal.throw();
        let on = |covers: &[Cover]| {
            let both = covers.iter().flat_map(|c| [c.front, c.back]);
            both.flatten().count()
        };
        let before = on(old.covers());
        for (across, down, prints) in [
            (old.plan.across, old.plan.down, old.prints.clone()),
            (4, 5, old.prints.clone()),
            (9, 9, old.prints[1..].to_vec()),
            (3, 9, old.prints[..2].to_vec()),
        ] {
            let plan = Plan {
                across,
                down,
                ..old.plan
            };
            let (kept, gone) = (faces(old, &plan, &prints, &[]), lost(old, &plan, &prints));
            assert_eq!(on(&kept) + gone.len(), before, "{across} × {down}");
            for one in gone {
                assert_eq!(old.cover(one.square).on(one.face), Some(one.print));
                let grid = Rect::grid(across, down);
                assert_eq!(grid.holds(one.square), one.why == Why::NoFabric);
            }
        }
    }
}
