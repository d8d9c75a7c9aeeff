//! The size each piece has or will have.
//!
//! A squared-up block is as large as it was left; any other piece is its parts' sum less
//! what their join takes up (its own lap once it is glued, the plan's before), and across
//! the seam as long as its longer part. A block not yet squared up counts as the smaller
//! of that and the trim size.

use crate::plan::assembly::{Rect, Seam};
use crate::plan::take;
use crate::throw::index::Standing;
use crate::throw::state::{Size, Throw, WholeMeasure};
use crate::throw::tasks::Task;
use std::cmp::{max, min};

impl Throw {
    /// The size a block is trimmed to: the trim size across each side that has two squares.
    pub fn target(&self, block: Rect) -> Size {
        let side = |squares: u16| {
            if squares == 2 {
                self.plan.target()
            } else {
                self.plan.side
            }
        };
        Size {
            width: side(block.cols),
            height: side(block.rows),
        }
    }

    /// The size a piece has, or will have if nothing else goes amiss; see the module.
    pub fn size(&self, piece: Rect) -> Size {
        let known = self.assembly.number(piece);
        known
            .and_then(|n| self.standing.size(n))
            .unwrap_or_else(|| self.size_from(piece, &Standing::default()))
    }

    /// A piece's size from its parts', which are looked up where they are known.
    pub(crate) fn size_from(&self, piece: Rect, known: &Standing) -> Size {
        if let Some(squared) = self.work.get(&piece).and_then(|w| w.squared) {
            return squared;
        }
        let Some(join) = self.assembly.join(piece) else {
            return Size {
                width: self.plan.side,
                height: self.plan.side,
            };
        };
        let of = |part: Rect| {
            let found = self.assembly.number(part).and_then(|n| known.size(n));
            found.unwrap_or_else(|| self.size_from(part, known))
        };
        let (a, b) = (of(join.first), of(join.second));
        let made = self.made(piece);
        let taken = take(made.joining, made.lap);
        let whole = match join.seam {
            Seam::Upright => Size {
                width: a.width + b.width - taken,
                height: max(a.height, b.height),
            },
            Seam::Level => Size {
                width: max(a.width, b.width),
                height: a.height + b.height - taken,
            },
        };
        let whole = if self.turned.contains(&piece) {
            whole.turned()
        } else {
            whole
        };
        if self.assembly.is_block(piece) {
            let measured = self
                .work
                .get(&piece)
                .and_then(|w| w.measured)
                .unwrap_or(whole);
            let target = self.target(piece);
            return Size {
                width: min(measured.width, target.width),
                height: min(measured.height, target.height),
            };
        }
        whole
    }

    /// How often the whole was washed.
    pub fn washes(&self) -> u8 {
        let work = self.work.get(&self.assembly.whole());
        let done = work.map_or(&[][..], |w| &w.done);
        done.iter().filter(|(t, _)| *t == Task::Wash).count() as u8
    }

    /// The whole as last measured, while it is in one piece.
    pub fn measured_whole(&self) -> Option<WholeMeasure> {
        let whole = self.assembly.whole();
        let one = self.assembly.join(whole).is_none() || self.has(whole, Task::Stitch);
        self.wholes.last().filter(|_| one).copied()
    }

    /// The size of the whole.
    pub fn finished(&self) -> Size {
        self.size(self.assembly.whole())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Count;
    use crate::measure::{eighth_inches, half_inches, inches, quarter_inches, sixty_fourths};
    use crate::plan::Plan;
    use crate::throw::event::Event;
    use proptest::prelude::*;

    fn begun(plan: Plan) -> Throw {
        Throw::begin(&Event::Begun {
            name: "t".into(),
            plan,
            prints: vec![],
            denims: vec![],
            after: None,
        })
        .unwrap()
    }

    #[test]
    fn a_lap_once_glued_keeps_its_measure() {
        let mut throw = begun(Plan {
            across: 2,
            down: 1,
            ..Plan::default()
        });
        let pair = Rect::grid(2, 1);
        throw.apply(
            &Event::Done {
                task: Task::Dot,
                pieces: vec![pair],
            },
            0,
        );
        let plan = Plan {
            lap: eighth_inches(3),
            ..throw.plan
        };
        throw.apply(
            &Event::PlanChanged {
                plan,
                spares: Count::NONE,
            },
            1,
        );
        assert_eq!(throw.made(pair).lap, half_inches(1));
        assert_eq!(throw.size(pair).width, half_inches(19));
    }

    #[test]
    fn a_short_block_makes_its_own_row_short() {
        let mut throw = begun(Plan {
            across: 4,
            down: 2,
            ..Plan::default()
        });
        let four = Rect::from([0, 0, 2, 2]);
        let short = quarter_inches(37);
        throw.apply(
            &Event::Measured {
                piece: four,
                width: short,
                height: inches(10),
            },
            0,
        );
        assert_eq!(
            throw.finished(),
            Size {
                width: short + inches(9),
                height: half_inches(19)
            }
        );
    }

    proptest! {
        #[test]
        fn with_nothing_done_the_sum_of_the_parts_is_the_plan(across in 1u16..=60, down in 1u16..=60, which in 0usize..3, trim in 0i64..64) {
            use crate::plan::JoinOrder::*;
            let mut plan = Plan { across, down, order: [Rows, Columns, Doubling][which], ..Plan::default() };
            plan.trim = Some(plan.natural_four() - sixty_fourths(trim));
            let size = begun(plan).finished();
            prop_assert_eq!((size.width, size.height), plan.finished());
        }
    }
}
