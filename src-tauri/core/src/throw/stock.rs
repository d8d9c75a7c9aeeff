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

/// Squares of a print that there are for the throw: those counted less what is gone, and those the
/// pile still gives; none where nothing is known.
pub fn known(throw: &Throw, print: u8) -> Option<Count> {
    known_with(throw, print, to_come(throw, print))
}

/// The same where it is known how many the pile still gives.
pub fn known_with(throw: &Throw, print: u8, to_come: Count) -> Option<Count> {
    let counted = throw.prints.get(usize::from(print))?.stock;
    let gone = Count::at_most(gone(throw, print).all());
    let known = counted.is_some() || to_come > 0;
    known.then(|| counted.unwrap_or(Count::NONE) - gone + to_come)
}

/// The prints, each with what there is of it as its stock.
pub fn in_hand(throw: &Throw) -> Vec<Print> {
    let mut prints = throw.prints.clone();
    for (i, print) in (0..=u8::MAX).zip(&mut prints) {
        print.stock = known(throw, i);
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::fabric::Cover;
    use crate::cloth::garments::{Precut, Source};
    use crate::cloth::pile::Heap;
    use crate::fitting::tests::begun;
    use crate::measure::inches;
    use crate::plan::Plan;
    use crate::plan::assembly::Rect;
    use crate::throw::Event;

    /// A throw of four fabrics, of which so many squares were counted; the first two lie on three places.
    fn of(stock: [Option<u16>; 4]) -> Throw {
        let mut throw = begun(Plan::default());
        throw.prints = crate::demo::prints();
        for (print, stock) in throw.prints.iter_mut().zip(stock) {
            print.stock = stock.map(Count::from);
        }
        let on = |col, front, back| {
            let cover = Cover {
                front,
                back,
                ..Cover::default()
            };
            (Rect::square(0, col), cover)
        };
        let faces = vec![
            on(0, Some(0), Some(1)),
            on(1, None, Some(0)),
            on(2, Some(0), None),
        ];
        let laid = Event::FacesChanged {
            faces,
            again: None,
            by_hand: None,
        };
        throw.after(&[laid])
    }

    fn stocks(prints: &[Print]) -> Vec<Option<u32>> {
        prints.iter().map(|p| p.stock.map(Count::get)).collect()
    }

    /// By hand: 20 of the first are counted, and a pack of five 10 in squares, each of which gives four
    /// of 5 in, is to be cut: 40. Of the second nothing is counted; one comes. Once the first pack is
    /// cut it gives nothing further: what came of it is counted with the rest.
    #[test]
    fn fabric_in_hand_is_what_was_counted_and_what_is_still_to_be_cut() {
        let mut throw = of([Some(20), None, None, Some(0)]);
        let pack = |count, side, print| {
            let from = Source::Precut(Precut {
                name: "Pack".into(),
                side: inches(side),
                count: Count::from(count),
            });
            Heap::new(from, Use::Fabric { print }, Cloth::cotton())
        };
        throw.pile.insert(0, pack(5, 10, 0));
        throw.pile.insert(1, pack(1, 6, 1));
        assert_eq!([0, 1, 2].map(|p| to_come(&throw, p).get()), [20, 1, 0]);
        let want = [Some(40), Some(1), None, Some(0)];
        assert_eq!(stocks(&in_hand(&throw)), want);
        throw.pile.get_mut(&0).unwrap().counted[0] = Some(Count::from(20));
        assert_eq!([0, 1].map(|p| to_come(&throw, p).get()), [0, 1]);
        // Three of the first are placed on both faces together, one of the second, none of the third.
        assert_eq!([0, 1, 2].map(|p| used(&throw, p)), [3, 1, 0]);
        assert_eq!(covers(&throw), 4);
    }

    /// By hand: 20 and 8 squares are known of, and 28 are to be laid: no others are looked for. The
    /// second, which nobody counted, lies in the throw already and may be used on; the third may not.
    /// For 29 any will do, and where nothing is known at all, none are held back.
    #[test]
    fn what_nobody_counted_is_laid_only_where_the_rest_falls_short() {
        let throw = of([Some(20), None, None, Some(8)]);
        let want = [Some(20), None, Some(0), Some(8)];
        assert_eq!(stocks(&to_lay_out(&throw, 28)), want);
        let any = [Some(20), None, None, Some(8)];
        assert_eq!(stocks(&to_lay_out(&throw, 29)), any);
        // One square is enough where one is to be laid.
        let one = of([None, None, None, Some(1)]);
        assert_eq!(stocks(&to_lay_out(&one, 1))[2], Some(0));
        let unknown = of([None; 4]);
        assert_eq!(stocks(&to_lay_out(&unknown, 0)), [None; 4]);
    }

    /// By hand: a square with the first fabric in front and the second behind was scorched, one with the
    /// first on both faces miscut, and four of the first went with a piece that was set aside: three and
    /// four of the first are gone, one of the second. Of 20 of the first that were counted 13 are left.
    #[test]
    fn fabric_goes_with_what_is_spoilt_or_set_aside() {
        use crate::throw::Mishap;
        use crate::throw::state::Loss;
        let mut throw = of([Some(20), Some(3), None, None]);
        let lost = |glued| Loss {
            piece: Rect::square(0, 0),
            why: Mishap::Scorched,
            glued,
            at: 0,
        };
        throw.losses = vec![
            lost([Some(0), Some(1)]),
            lost([Some(0); 2]),
            lost([None; 2]),
        ];
        throw.aside_glued.insert(0, 4);
        let told = |print| {
            let gone = gone(&throw, print);
            (gone.spoilt, gone.aside, gone.all())
        };
        assert_eq!([0, 1, 2].map(told), [(3, 4, 7), (1, 0, 1), (0, 0, 0)]);
        assert_eq!(stocks(&in_hand(&throw)), [Some(13), Some(2), None, None]);
    }

    /// The cloth of a throw is that of its first heap for the use, else the usual.
    #[test]
    fn cloth_is_that_of_the_first_heap_for_its_use() {
        let mut throw = of([None; 4]);
        assert_eq!(cloth_for(&throw, true), Cloth::denim());
        assert_eq!(cloth_for(&throw, false), Cloth::cotton());
        let heavy = Cloth {
            stretch: true,
            ..Cloth::denim()
        };
        let from = || {
            Source::Precut(Precut {
                name: "Pack".into(),
                side: inches(5),
                count: Count::from(1),
            })
        };
        throw.pile.insert(
            0,
            Heap::new(from(), Use::Fabric { print: 0 }, Cloth::denim()),
        );
        throw
            .pile
            .insert(1, Heap::new(from(), Use::ANY_DENIM, heavy));
        assert_eq!(cloth_for(&throw, true), heavy);
        assert_eq!(cloth_for(&throw, false), Cloth::denim());
    }
}
