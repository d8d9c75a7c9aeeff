//! Planning backwards: from the squares at hand, or the size wished for, to grids.
//!
//! From a count: every grid that uses at most `have` squares, ranked by how many
//! squares are left over and how far its shape strays from an easy throw shape
//! (the longer side 4/3 of the shorter; common practice, no source). The score is
//! `2 · left over / have + |ln(long / short · 3/4)|`, smaller is better (the weights are
//! our estimate of what a maker minds).
//!
//! From a size: the finished size of every grid is exact arithmetic
//! ([`Plan::finished`]); grids are ranked by
//! `|ln(width / wished)| + |ln(height / wished)|`, smaller is better.
//!
//! Both add a small penalty (0.02) for each odd count, because the leftover column
//! or row of pairs is more work. Ties go to fewer squares, then to the narrower.
//!
//! ```
//! use lapwork_core::plan::grids::{for_size, for_squares};
//! use lapwork_core::plan::Plan;
//!
//! let plan = Plan::default();
//! let best = for_squares(&plan, 50, 3);
//! assert_eq!((best[0].across, best[0].down), (6, 8));
//! // The size of a grid leads back to it.
//! let (width, height) = best[0].size;
//! assert_eq!(for_size(&plan, width, height, 1)[0].size, best[0].size);
//! ```

use crate::measure::{Length, in_mm};
use crate::plan::{MOST, Plan};

/// A grid that might be made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grid {
    /// Squares across.
    pub across: u16,
    /// Squares down.
    pub down: u16,
    /// Finished width and height.
    pub size: (Length, Length),
    /// Squares it takes.
    pub squares: u32,
    /// Smaller is better; see the module.
    pub score: f64,
}

const ODD: f64 = 0.02;

fn all(plan: &Plan, score: impl Fn(&Grid) -> Option<f64>) -> Vec<Grid> {
    let mut found = Vec::new();
    for across in 1..=MOST {
        for down in 1..=MOST {
            let tried = Plan {
                across,
                down,
                ..*plan
            };
            let mut grid = Grid {
                across,
                down,
                size: tried.finished(),
                squares: tried.squares(),
                score: 0.0,
            };
            if let Some(s) = score(&grid) {
                grid.score = s + ODD * f64::from(across % 2 + down % 2);
                found.push(grid);
            }
        }
    }
    found.sort_by(|a, b| {
        a.score
            .total_cmp(&b.score)
            .then(a.squares.cmp(&b.squares))
            .then(a.across.cmp(&b.across))
    });
    found
}

/// The `most` best grids, no wider than tall, that `have` squares will make.
pub fn for_squares(plan: &Plan, have: u32, most: usize) -> Vec<Grid> {
    let mut found = all(plan, |g| {
        (g.squares <= have && g.across <= g.down).then(|| {
            let (w, h) = (in_mm(g.size.0), in_mm(g.size.1));
            2.0 * f64::from(have - g.squares) / f64::from(have) + (h / w * 0.75).ln().abs()
        })
    });
    found.truncate(most);
    found
}

/// The `most` grids whose finished size comes closest to `width` × `height`.
pub fn for_size(plan: &Plan, width: Length, height: Length, most: usize) -> Vec<Grid> {
    let (want_w, want_h) = (in_mm(width).max(1.0), in_mm(height).max(1.0));
    let mut found = all(plan, |g| {
        let (w, h) = (in_mm(g.size.0), in_mm(g.size.1));
        Some((w / want_w).ln().abs() + (h / want_h).ln().abs())
    });
    found.truncate(most);
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::tenths_of_mm;
    use proptest::prelude::*;

    #[test]
    fn few_squares_left_over_count_for_more_than_the_shape() {
        let best = for_squares(&Plan::default(), 20, 3);
        let shapes = best.iter().map(|g| (g.across, g.down));
        assert_eq!(shapes.collect::<Vec<_>>(), [(4, 5), (3, 6), (4, 4)]);
    }

    #[test]
    fn fifty_three_squares_make_six_by_eight() {
        let best = for_squares(&Plan::default(), 53, 5);
        assert_eq!((best[0].across, best[0].down, best[0].squares), (6, 8, 48));
    }

    #[test]
    fn a_metric_wish_finds_the_nearest_grid() {
        let best = for_size(
            &Plan::default(),
            tenths_of_mm(10_000),
            tenths_of_mm(14_000),
            5,
        );
        // (1000 − 12.7) / 114.3 = 8.6 and (1400 − 12.7) / 114.3 = 12.1 squares: 8 or 9 by 12.
        assert!(matches!((best[0].across, best[0].down), (8 | 9, 12)));
    }

    /// What is wished is what each grid measures, so that nothing is off but by its odd counts, 0.02 each.
    /// Half-way between two grids the one without an odd count is taken.
    #[test]
    fn a_row_left_over_counts_against_a_grid() {
        let plan = Plan::default();
        let best = |across, down| {
            let (w, h) = Plan {
                across,
                down,
                ..plan
            }
            .finished();
            for_size(&plan, w, h, 1)[0]
        };
        for (across, down, odd) in [(6, 8, 0.0), (7, 8, 0.02), (6, 9, 0.02), (7, 9, 0.04)] {
            let found = best(across, down);
            assert_eq!((found.across, found.down), (across, down));
            assert!((found.score - odd).abs() < 1e-9, "{found:?}");
        }
        // A runner of one column is a grid too, as is a single square.
        for (across, down) in [(1, 6), (6, 1), (1, 1)] {
            let found = best(across, down);
            assert_eq!((found.across, found.down), (across, down));
        }
        assert_eq!(for_squares(&plan, 1, 9).len(), 1);
        let size = |n: u16| in_mm(plan.run(n));
        for (odd, even) in [(7, 6), (9, 10)] {
            let between = crate::measure::from_mm((size(odd) * size(even)).sqrt());
            let found = for_size(&plan, between, plan.run(8), 1)[0];
            assert_eq!((found.across, found.down), (even, 8));
            let found = for_size(&plan, plan.run(8), between, 1)[0];
            assert_eq!((found.across, found.down), (8, even));
        }
    }

    proptest! {
        #[test]
        fn no_grid_takes_more_than_there_is(have in 1u32..4000) {
            for grid in for_squares(&Plan::default(), have, 8) {
                prop_assert!(grid.squares <= have);
                prop_assert_eq!(grid.squares, u32::from(grid.across) * u32::from(grid.down));
            }
        }

        #[test]
        fn a_size_that_is_a_grid_finds_that_grid(across in 1u16..=30, down in 1u16..=30) {
            let plan = Plan { across: across * 2, down: down * 2, ..Plan::default() };
            let (w, h) = plan.finished();
            let best = for_size(&plan, w, h, 1)[0];
            prop_assert_eq!((best.across, best.down), (plan.across, plan.down));
        }
    }
}
