//! What garments give before they were measured, and whether that is enough for a throw.
//!
//! A garment that nobody has measured is laid out twice: narrow and worn, and wide and little
//! worn ([`Guess`]). What it gives lies between the two, and that range is what is told, never
//! one number. A piece that was measured gives what its outline gives, a piece that was cut up
//! what was counted, so that the range narrows as the work goes on.
//!
//! # The rule for "enough"
//!
//! A throw of `n` squares takes, of `s` square with a lap of `t`:
//!
//! * its `n` squares, and spares: one for every twenty squares, two at least (common practice,
//!   no source);
//! * its binding, `L` long ([`Plan::binding_for`]). What the squares leave of the cloth gives
//!   strips for it, those as long as a square and longer being worth joining, `B` in all. What
//!   is missing, `L − B`, is cut from squares: one square of `s` gives `⌊s / w⌋` strips `w` wide,
//!   each of which is worth `s − t`, since strips are lapped where they are joined.
//!
//! It is enough where the squares there are make up all three. (Plain arithmetic; estimates
//! before there is a throw. What a throw in hand needs is worked out in [`crate::throw`].)

use crate::cloth::cutting::{BindingCut, Cutting, lay_out};
use crate::cloth::garments::{GarmentStart, Guess, Piece, Source};
use crate::cloth::pile::{Heap, how};
use crate::measure::{Count, Length, in_nm, millimetres};
use crate::plan::Plan;

/// Squares for each spare one.
const SQUARES_TO_A_SPARE: u32 = 20;
/// Fewest spares.
const FEWEST_SPARES: u32 = 2;
/// Most further garments that are told of.
pub const MOST_MORE: u32 = 99;

/// What cloth gives, by one guess.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Supply {
    /// Squares.
    pub squares: u32,
    /// Binding strips in what they leave, all together, in nanometres.
    binding: i64,
}

impl Supply {
    /// So many squares, and strips of this length in all.
    pub fn new(squares: u32, binding: Length) -> Supply {
        Supply {
            squares,
            binding: in_nm(binding),
        }
    }

    /// This and so many times more.
    fn with(self, more: Supply, times: u32) -> Supply {
        let squares = more.squares.saturating_mul(times);
        Supply {
            squares: self.squares.saturating_add(squares),
            binding: more
                .binding
                .saturating_mul(i64::from(times))
                .saturating_add(self.binding),
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
        // A wider leg may leave less for the binding; each is taken by itself.
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
        binding: Some(BindingCut {
            width: plan.binding.strip,
            least: std::cmp::max(plan.side, plan.binding.strip),
            enough: millimetres(20_000),
        }),
        ..how(plan.side)
    };
    let Ok(cuts) = lay_out(piece, &cutting) else {
        return Supply::default();
    };
    let strips = cuts.binding.iter();
    let long = strips.map(|strip| std::cmp::max(strip.to - strip.from, strip.right - strip.left));
    Supply {
        squares: cuts.count,
        binding: long.map(in_nm).sum(),
    }
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
}

/// What a plan takes.
pub fn needs(plan: &Plan) -> Needs {
    let (width, height) = plan.finished();
    let squares = plan.squares();
    Needs {
        squares,
        spares: squares.div_ceil(SQUARES_TO_A_SPARE).max(FEWEST_SPARES),
        binding: plan.binding_for(width, height).length,
    }
}

/// Squares that are cut up for the binding.
fn for_binding(plan: &Plan, missing: i64) -> u32 {
    let (side, strip) = (in_nm(plan.side), in_nm(plan.binding.strip).max(1));
    let each = (side / strip) * (side - in_nm(plan.take())).max(0);
    match (missing.max(0), each) {
        (0, _) => 0,
        (_, ..=0) => u32::MAX,
        (missing, each) => u32::try_from((missing + each - 1) / each).unwrap_or(u32::MAX),
    }
}

/// Squares there must be for a plan, its spares and its binding.
pub fn squares_for(plan: &Plan, supply: Supply) -> u32 {
    let needs = needs(plan);
    let missing = in_nm(needs.binding).saturating_sub(supply.binding);
    let all = needs.squares.saturating_add(needs.spares);
    all.saturating_add(for_binding(plan, missing))
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
        Source::Cloth(garment) => garment.start.map(|start| {
            [Guess::Typical, Guess::Low, Guess::High].map(|guess| start.pieces(guess))
        }),
        Source::Precut(_) => None,
    };
    for (n, counted) in heap.counted.iter().enumerate() {
        if counted.is_some() {
            continue;
        }
        let own = heap.expected(n, plan.side);
        let begun = guesses.as_ref().filter(|[typical, ..]| match &heap.from {
            Source::Cloth(garment) => typical.get(n) == garment.pieces.get(n),
            Source::Precut(_) => false,
        });
        let by = |pieces: &[Piece]| {
            let cuts = pieces
                .get(n)
                .and_then(|p| lay_out(p, &heap.how(plan.side)).ok());
            cuts.map_or(own, |cuts| Count::at_most(cuts.count))
        };
        let [low, high] = begun.map_or([own; 2], |[_, low, high]| {
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
    use crate::measure::{System, half_inches, inches};

    fn jeans(knees: Knees) -> GarmentStart {
        GarmentStart {
            kind: GarmentKind::MensJeans,
            size: Some(GarmentSize::Medium),
            knees,
            system: System::Inch,
        }
    }

    /// Six by eight squares of 5 in lapped 1/2 in come to 27 1/2 × 36 1/2 in: 132 in of binding
    /// with its tail. Three spares. Of 100 in of strips 32 in are missing; a square gives five
    /// strips of 4 1/2 in, 22 1/2 in, so that two squares go into the binding: 53.
    #[test]
    fn enough_is_squares_spares_and_binding() {
        let plan = Plan::default();
        let needs = needs(&plan);
        assert_eq!((needs.squares, needs.spares), (48, 3));
        assert_eq!(needs.binding, half_inches(264));
        let with = |squares, strips| Supply::new(squares, inches(strips));
        assert_eq!(squares_for(&plan, with(60, 132)), 51);
        assert_eq!(squares_for(&plan, with(60, 100)), 53);
        // 132 in, all of it from squares: six, since five give 112 1/2 in.
        assert_eq!(squares_for(&plan, with(60, 0)), 57);
        assert!(enough(&plan, with(53, 100)) && !enough(&plan, with(52, 100)));
        assert!(enough(&plan, with(51, 132)) && !enough(&plan, with(50, 500)));
        // A pair gives 20 squares and 30 in of strips at worst, 26 and 60 in at best. At best
        // two are enough: 52 squares, and 12 in of strips missing take one (52). At worst two
        // give 40, and three 60, where 42 in missing take two (53).
        let one = Outlook {
            low: with(20, 30),
            high: with(26, 60),
        };
        assert_eq!(more_for(&plan, Outlook::default(), one), Some([2, 3]));
        // With one pair in hand one less, and never enough from cloth that gives nothing.
        assert_eq!(more_for(&plan, one, one), Some([1, 2]));
        let have = Outlook::default().with(one, 1);
        assert_eq!(more_for(&plan, have, Outlook::default()), None);
    }

    #[test]
    fn a_torn_knee_costs_squares() {
        let plan = Plan::default();
        let [whole, unknown, torn] = [Knees::Whole, Knees::Unknown, Knees::Torn]
            .map(|knees| Outlook::of(jeans(knees), &plan));
        assert!(torn.high.squares < whole.high.squares);
        assert!(unknown.low.squares < whole.low.squares);
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
}
