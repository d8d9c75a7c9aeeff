//! What garments give before they were measured, and whether that is enough for a throw.
//!
//! A garment that nobody has measured is laid out twice: narrow and worn, and wide and little
//! worn ([`Guess`]). What it gives lies between the two, and that range is what is shown, never
//! one number. A piece that was measured gives what its outline gives, a piece that was cut up
//! what was counted, so that the range narrows as the work goes on.
//!
//! # The rule for "enough"
//!
//! A throw of `n` squares of side `s` takes:
//!
//! * its `n` squares, and spares ([`spares_to_keep`]);
//! * strips for its binding, all of one length `L` and `w` wide ([`Plan::binding_for`]). Those
//!   that fit beside the squares cost none. The others are cut from squares lying in a row:
//!   `⌈L / s⌉` squares give `⌊s / w⌋` strips.
//!
//! It is enough where the squares there are make up all of these. (Plain arithmetic, and on the
//! side of caution, since strips laid through the squares of one leg may cost fewer. It is for
//! estimates before there is a throw; what an open throw needs is in `throw/account.rs`, by
//! the same count of spares and of strips.)

use crate::cloth::cutting::{Cutting, lay_out};
use crate::cloth::garments::{GarmentStart, Guess, Piece, Source};
use crate::cloth::pile::{Heap, how};
use crate::cloth::strips::strip_of;
use crate::cloth::ways::laid;
use crate::measure::{Count, Length, in_nm};
use crate::plan::Plan;

/// Squares for each spare one.
const SQUARES_TO_A_SPARE: u32 = 20;
/// Fewest spares.
const FEWEST_SPARES: u32 = 2;
/// Most further garments that are suggested.
pub const MOST_MORE: u32 = 99;
/// Most strips looked for in one piece.
const MOST_STRIPS: u32 = 12;

/// Spares to keep back of so many squares: one in twenty, two at least. Squares are scorched,
/// miscut and lost (our judgement; common practice, no source).
pub fn spares_to_keep(squares: u32) -> u32 {
    squares.div_ceil(SQUARES_TO_A_SPARE).max(FEWEST_SPARES)
}

/// What cloth gives, by one guess.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Supply {
    /// Squares.
    pub squares: u32,
    /// Binding strips that fit beside them.
    pub strips: u32,
}

impl Supply {
    /// This and so many times more.
    fn with(self, more: Supply, times: u32) -> Supply {
        let sum = |own: u32, more: u32| own.saturating_add(more.saturating_mul(times));
        Supply {
            squares: sum(self.squares, more.squares),
            strips: sum(self.strips, more.strips),
        }
    }
}

/// What cloth gives, at the least and at the most.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Outlook {
    /// Narrow and worn.
    pub low: Supply,
    /// Wide and little worn.
    pub high: Supply,
}

impl Outlook {
    /// This and so many times more.
    pub fn with(self, more: Outlook, times: u32) -> Outlook {
        Outlook {
            low: self.low.with(more.low, times),
            high: self.high.with(more.high, times),
        }
    }

    /// What a garment gives that nobody has measured.
    pub fn of(start: GarmentStart, plan: &Plan) -> Outlook {
        let by = |guess| {
            let pieces = start.pieces(guess);
            let each = pieces.iter().map(|piece| supply(piece, plan));
            each.fold(Supply::default(), |sum, one| sum.with(one, 1))
        };
        let (one, other) = (by(Guess::Low), by(Guess::High));
        // A wider leg may leave room for fewer strips; each is taken by itself.
        Outlook {
            low: one,
            high: Supply {
                squares: other.squares.max(one.squares),
                ..other
            },
        }
    }
}

fn supply(piece: &Piece, plan: &Plan) -> Supply {
    let cutting = Cutting {
        binding: Some(strip_of(plan, MOST_STRIPS)),
        ..how(plan.side)
    };
    lay_out(piece, &cutting).map_or_else(
        |_| Supply::default(),
        |cuts| Supply {
            squares: cuts.count,
            strips: u32::try_from(cuts.binding.len()).unwrap_or(MOST_STRIPS),
        },
    )
}

/// What a throw takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Needs {
    /// Squares in their places.
    pub squares: u32,
    /// Squares kept back.
    pub spares: u32,
    /// Length of the binding.
    pub binding: Length,
    /// Strips for it.
    pub strips: u32,
}

/// What a plan takes.
pub fn needs(plan: &Plan) -> Needs {
    let (width, height) = plan.finished();
    let squares = plan.squares();
    let binding = plan.binding_for(width, height);
    Needs {
        squares,
        spares: spares_to_keep(squares),
        binding: binding.length,
        strips: binding.strips,
    }
}

/// Squares that are cut up for so many strips.
fn for_strips(plan: &Plan, missing: u32) -> u32 {
    let [side, width, length] =
        [plan.side, plan.binding.strip, plan.binding.longest].map(|l| in_nm(l).max(1));
    let of_a_row = u32::try_from(side / width).unwrap_or(u32::MAX).max(1);
    let row = u32::try_from((length + side - 1) / side).unwrap_or(u32::MAX);
    missing.div_ceil(of_a_row).saturating_mul(row)
}

/// Squares there must be for a plan, its spares and its binding.
pub fn squares_for(plan: &Plan, supply: Supply) -> u32 {
    let needs = needs(plan);
    let missing = needs.strips.saturating_sub(supply.strips);
    let all = needs.squares.saturating_add(needs.spares);
    all.saturating_add(for_strips(plan, missing))
}

/// Whether there is enough for a plan, its spares and its binding.
pub fn enough(plan: &Plan, supply: Supply) -> bool {
    supply.squares >= squares_for(plan, supply)
}

/// How many garments such as `one` there must be besides, at the least and at the most; nothing
/// where no number of them up to [`MOST_MORE`] would do.
pub fn more_for(plan: &Plan, have: Outlook, one: Outlook) -> Option<[u32; 2]> {
    let least = |have: Supply, one: Supply| {
        (0..=MOST_MORE).find(|times| enough(plan, have.with(one, *times)))
    };
    Some([least(have.high, one.high)?, least(have.low, one.low)?])
}

/// Squares still to come from a heap, at the least and at the most: of pieces as they began, by
/// the two guesses; of measured ones, what their outline gives.
pub fn to_come(heap: &Heap, plan: &Plan) -> [Count; 2] {
    let mut sum = [Count::NONE; 2];
    let guesses = match &heap.from {
        Source::Cloth(garment) => garment.began().map(|start| {
            let guesses = [Guess::Low, Guess::High].map(|guess| start.pieces(guess));
            (garment, start, guesses)
        }),
        Source::Precut(_) => None,
    };
    for (n, counted) in heap.counted.iter().enumerate() {
        if counted.is_some() {
            continue;
        }
        let own = heap.expected(n, plan);
        let begun = guesses
            .as_ref()
            .filter(|(garment, start, _)| start.is_as_begun(garment, n));
        let by = |pieces: &[Piece]| {
            let cuts = pieces
                .get(n)
                .and_then(|p| laid(p, &heap.how(plan), heap.way(n)).ok());
            cuts.map_or(own, |cuts| Count::at_most(cuts.count))
        };
        let [low, high] = begun.map_or([own; 2], |(_, _, [low, high])| {
            [by(low).min(own), by(high).max(own)]
        });
        sum = [sum[0] + low, sum[1] + high];
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::garments::{Garment, GarmentKind, GarmentSize, Knees};
    use crate::cloth::pile::Use;
    use crate::cloth::weight::Cloth;
    use crate::measure::{System, half_inches};

    fn jeans(knees: Knees) -> GarmentStart {
        GarmentStart {
            kind: GarmentKind::MensJeans,
            size: Some(GarmentSize::Medium),
            knees,
            system: System::Inch,
        }
    }

    /// Six by eight squares of 5 in lapped 1/2 in come to 27 1/2 × 36 1/2 in: 132 in of binding
    /// with its tail, five strips of 28 in, of which each adds 27 1/2 in to the first. Three
    /// spares. Strips that do not fit beside the squares take six squares in a row (30 in) for
    /// up to five of them.
    #[test]
    fn enough_is_squares_spares_and_binding() {
        let plan = Plan::default();
        let needs = needs(&plan);
        assert_eq!((needs.squares, needs.spares, needs.strips), (48, 3, 5));
        assert_eq!(needs.binding, half_inches(264));
        let with = |squares, strips| Supply { squares, strips };
        assert_eq!(squares_for(&plan, with(60, 5)), 51);
        assert_eq!(squares_for(&plan, with(60, 3)), 57);
        assert_eq!(squares_for(&plan, with(60, 0)), 57);
        assert!(enough(&plan, with(57, 0)) && !enough(&plan, with(56, 4)));
        assert!(enough(&plan, with(51, 5)) && !enough(&plan, with(50, 50)));
        // A pair gives 20 squares and a strip at worst, 26 and two at best. At best two give 52
        // and four strips: one is lacking, so that 57 are needed; three give 78. At worst three
        // give 60 and three strips, where 57 are needed.
        let one = Outlook {
            low: with(20, 1),
            high: with(26, 2),
        };
        assert_eq!(more_for(&plan, Outlook::default(), one), Some([3, 3]));
        // With one pair there already, one less, and never enough from cloth that gives nothing.
        assert_eq!(more_for(&plan, one, one), Some([2, 2]));
        assert_eq!(more_for(&plan, one, Outlook::default()), None);
        // Of scraps that give a square and a strip each there must be 51, and of such as give nothing for
        // the binding 57.
        let scrap = |strips| Outlook {
            low: with(1, strips),
            high: with(1, strips),
        };
        let many = |strips| more_for(&plan, Outlook::default(), scrap(strips));
        assert_eq!([many(1), many(0)], [Some([51, 51]), Some([57, 57])]);
        // One in twenty, and two at least.
        assert_eq!([1, 20, 40, 41].map(spares_to_keep), [2, 2, 2, 3]);
    }

    /// By hand: of 2 in strips two come of a row of 5 in squares, and 28 in are six squares long, as are
    /// 30 in; 31 in are seven. Five strips are three such rows.
    #[test]
    fn strips_cost_whole_rows_of_squares() {
        let plan = |longest: i64| {
            let mut plan = Plan::default();
            plan.binding.strip = half_inches(4);
            plan.binding.longest = half_inches(2 * longest);
            plan
        };
        let with = |strips| Supply { squares: 0, strips };
        assert_eq!(needs(&plan(28)).strips, 5);
        let cost = |longest, strips| squares_for(&plan(longest), with(strips)) - 51;
        assert_eq!(
            [5, 4, 3, 2, 0].map(|have| cost(28, have)),
            [0, 6, 6, 12, 18]
        );
        assert_eq!([30, 31].map(|longest| cost(longest, 0)), [18, 21]);
        // Of 3 in strips a row gives one: five strips are five rows.
        let mut wide = plan(28);
        wide.binding.strip = half_inches(6);
        assert_eq!(squares_for(&wide, with(0)) - 51, 30);
    }

    #[test]
    fn a_torn_knee_costs_squares() {
        let plan = Plan::default();
        let [whole, unknown, torn] = [Knees::Whole, Knees::Unknown, Knees::Torn]
            .map(|knees| Outlook::of(jeans(knees), &plan));
        assert!(torn.high.squares < whole.high.squares);
        assert!(unknown.low.squares < whole.low.squares);
        assert!(unknown.low.squares < unknown.high.squares);
        for outlook in [whole, unknown, torn] {
            assert!(outlook.low.squares <= outlook.high.squares);
            assert!(outlook.low.squares > 0);
        }
    }

    /// The range narrows: begun, then one leg measured, then counted.
    #[test]
    fn what_is_to_come_narrows_as_legs_are_measured() {
        let plan = Plan::default();
        let start = jeans(Knees::Unknown);
        let garment = Garment {
            name: "Jeans".into(),
            pieces: start.pieces(Guess::Typical),
            start: Some(start),
        };
        let mut heap = Heap::new(Source::Cloth(garment), Use::ANY_DENIM, Cloth::denim());
        let wide = |heap: &Heap| {
            let [low, high] = to_come(heap, &plan);
            assert!(low <= high);
            high.get() - low.get()
        };
        let begun = wide(&heap);
        if let Source::Cloth(garment) = &mut heap.from {
            garment.pieces[0].stations[0].right += half_inches(1);
        }
        let measured = wide(&heap);
        heap.counted[0] = Some(Count::from(9));
        assert_eq!(wide(&heap), measured);
        if let Source::Cloth(garment) = &mut heap.from {
            garment.pieces[1].stations[0].right += half_inches(1);
        }
        assert!(begun > measured && measured > 0, "{begun} {measured}");
        assert_eq!(wide(&heap), 0);
        // A garment put down before it was known how it began is taken as it lies.
        if let Source::Cloth(garment) = &mut heap.from {
            garment.start = None;
        }
        assert_eq!(wide(&heap), 0);
    }

    /// In a file from before garments said what they began as, a leg nobody measured shows its range
    /// too, whether it began in round figures or as legs first did.
    #[test]
    fn an_unmeasured_leg_of_an_older_file_has_its_range() {
        let plan = Plan::default();
        let start = jeans(Knees::Unknown);
        let heap_of = |start, pieces| {
            let garment = Garment {
                name: "Jeans".into(),
                pieces,
                start,
            };
            Heap::new(Source::Cloth(garment), Use::ANY_DENIM, Cloth::denim())
        };
        let pieces = start.pieces(Guess::Typical);
        let known = to_come(&heap_of(Some(start), pieces.clone()), &plan);
        assert!(known[0] < known[1]);
        assert_eq!(to_come(&heap_of(None, pieces.clone()), &plan), known);
        // Medium: 17 in, 19 in and 25 in round at heights of 0, 17 1/2 and 32 in, of which 55 % lie
        // left of the outseam and 45 % right, on the lower eighth: 74 and 61 eighths at the hem.
        let mut first = pieces;
        let eighths = [(0, 74, 61), (140, 83, 68), (256, 110, 90)];
        for (n, (at, back, front)) in eighths.into_iter().enumerate() {
            let [at, back, front] = [at, back, front].map(crate::measure::eighth_inches);
            let zero = crate::measure::zero();
            let stations = [(back, front), (front, back)];
            for (leg, (left, right)) in first.iter_mut().zip(stations) {
                let station = &mut leg.stations[n];
                (station.at, station.left, station.right) = (at, zero - left, right);
            }
        }
        let [low, high] = to_come(&heap_of(None, first.clone()), &plan);
        assert!(low < high);
        // One leg measured: only the other has a range.
        first[0].stations[0].right += half_inches(1);
        let [one_low, one_high] = to_come(&heap_of(None, first.clone()), &plan);
        assert!(one_low < one_high && one_high.get() - one_low.get() < high.get() - low.get());
        first[1].stations[0].right += half_inches(1);
        let [low, high] = to_come(&heap_of(None, first), &plan);
        assert_eq!(low, high);
    }
}
