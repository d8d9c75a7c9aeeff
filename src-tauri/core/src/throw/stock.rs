//! Fabric squares: how many are placed, gone, and left; and the cloth a throw is made of.

use crate::cloth::bound::{self, StripShown};
use crate::cloth::fabric::Print;
use crate::cloth::pile::Use;
use crate::cloth::weight::Cloth;
use crate::measure::Count;
use crate::throw::state::Throw;

/// The cloth of the first heap for a use, or the usual one.
pub fn cloth_for(throw: &Throw, denim: bool) -> Cloth {
    let heap = throw.pile.values().find(|h| h.makes.is_denim() == denim);
    heap.map_or_else(if denim { Cloth::denim } else { Cloth::cotton }, |h| {
        h.cloth
    })
}

/// Fabric squares on all squares, both faces together.
pub fn covers(throw: &Throw) -> u32 {
    throw.covers().iter().map(|c| c.layers() - 1).sum()
}

/// What shows of the binding on each face.
pub fn strip_shown(throw: &Throw) -> StripShown {
    let (denim, cotton) = (cloth_for(throw, true), cloth_for(throw, false));
    bound::strip_shown(&throw.plan, covers(throw), &denim, &cotton)
}

/// Squares of a print placed so far, both faces together.
pub fn used(throw: &Throw, print: u8) -> u32 {
    let on = throw.covers().iter().flat_map(|c| [c.front, c.back]);
    on.filter(|p| *p == Some(print)).count() as u32
}

/// Squares of a print that are in the throw no more.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Gone {
    /// Glued on squares that were spoilt.
    pub spoilt: u32,
    /// Glued on squares of pieces set aside.
    pub aside: u32,
}

impl Gone {
    /// All of them.
    pub fn all(self) -> u32 {
        self.spoilt + self.aside
    }
}

/// Squares of a print that went with what was spoilt or set aside.
pub fn gone(throw: &Throw, print: u8) -> Gone {
    let spoilt = throw.losses.iter().flat_map(|l| l.glued);
    Gone {
        spoilt: spoilt.filter(|p| *p == Some(print)).count() as u32,
        aside: throw.aside_glued.get(&print).copied().unwrap_or(0),
    }
}

/// Squares of a print that the pile still gives.
pub fn to_come(throw: &Throw, print: u8) -> Count {
    let own = throw.pile.values();
    let own = own.filter(|heap| heap.makes == Use::Fabric { print });
    let each = own.map(|heap| {
        let uncut = heap.counted.iter().enumerate().filter(|(_, n)| n.is_none());
        uncut
            .map(|(i, _)| heap.expected(i, &throw.plan))
            .sum::<Count>()
    });
    each.sum()
}

/// The prints with their stock: squares counted less what is gone, and those the pile still gives;
/// none where nothing is known.
pub fn in_hand(throw: &Throw) -> Vec<Print> {
    let mut prints = throw.prints.clone();
    for (i, print) in (0..=u8::MAX).zip(&mut prints) {
        let to_come = to_come(throw, i);
        let known = print.stock.is_some() || to_come > 0;
        let counted = print.stock.unwrap_or(Count::NONE) - Count::at_most(gone(throw, i).all());
        print.stock = known.then_some(counted + to_come);
    }
    prints
}

/// The same for a layout that takes so many squares of fabric: where those known of are enough, it
/// takes none of a print that nobody has counted, unless some of it is placed already.
pub fn to_lay_out(throw: &Throw, wanted: u32) -> Vec<Print> {
    let mut prints = in_hand(throw);
    let known: Count = prints.iter().filter_map(|print| print.stock).sum();
    if known > 0 && known.get() >= wanted {
        for (i, print) in (0..=u8::MAX).zip(&mut prints) {
            if print.stock.is_none() && used(throw, i) == 0 {
                print.stock = Some(Count::NONE);
            }
        }
    }
    prints
}
