//! Which strips to take, of all the places where one may lie.
//!
//! [`best`] takes strips measured from one edge, [`from_both`] strips measured from two edges that
//! meet in the middle. Both work on heights and counts alone.
//!
//! # Strips from both edges
//!
//! Marks measured from the lower edge seldom lie on those measured from the upper one, so that
//! strips which fit exactly below the upper edge may lie between the marks from below. Every strip
//! measured from below lies under every one measured from above. For each height at which they
//! may meet, the most squares below it and the most above it are added up, and the greatest sum
//! is taken; among equals as few strips as can be are measured from above. (Dynamic programming,
//! plain arithmetic.)
//!
//! # Promises (kept by tests)
//!
//! * No other choice of strips, some of the marks from below under some of the marks from
//!   above, gives more squares.
//! * [`from_both`] never gives fewer than [`best`].

/// For each place, the first at least `side` on; the number of places where there is none.
pub(super) fn following(places: &[i64], side: i64) -> Vec<usize> {
    let mut j = 0;
    let next = |at: &i64| {
        while places.get(j).is_some_and(|p| *p < at + side) {
            j += 1;
        }
        j
    };
    places.iter().map(next).collect()
}

/// The strips to take, by most squares, fewest cuts, nearest the hem.
pub(super) fn best(places: &[i64], side: i64, counts: &[(i64, i64)]) -> Vec<usize> {
    let n = places.len();
    let next = following(places, side);
    // From a place up: squares, less cuts, less heights; where the strip below ends
    // here (its upper cut is this one's lower), and where not.
    let mut touching = vec![[0; 3]; n + 1];
    let mut free = vec![[0; 3]; n + 1];
    let mut take = vec![[false; 2]; n];
    for i in (0..n).rev() {
        let ((squares, cuts), skip) = (counts[i], free[i + 1]);
        let on = next[i];
        let above = if on < n && places[on] == places[i] + side {
            touching[on]
        } else {
            free[on]
        };
        let with = |lines: i64| {
            [
                above[0] + squares,
                above[1] - cuts - lines,
                above[2] - (places[i] - places[0]),
            ]
        };
        let taken = squares > 0;
        take[i] = [taken && with(1) >= skip, taken && with(2) >= skip];
        touching[i] = if take[i][0] { with(1) } else { skip };
        free[i] = if take[i][1] { with(2) } else { skip };
    }
    let (mut i, mut touched) = (0, 1);
    let mut out = Vec::new();
    while i < n {
        if take[i][touched] {
            out.push(i);
            let on = next[i];
            touched = usize::from(!(on < n && places[on] == places[i] + side));
            i = on;
        } else {
            (i, touched) = (i + 1, 1);
        }
    }
    out
}

/// The strips to take: those measured from below, from the bottom up, and those measured from
/// above, from the top down, each by its number in its list.
///
/// `below` are heights of lower edges above the bottom, `above` are depths of upper edges under
/// the top, both in order; `tall` is how far the top is above the bottom.
pub(super) fn from_both(
    [below, above]: [&[i64]; 2],
    [squares_below, squares_above]: [&[(i64, i64)]; 2],
    tall: i64,
    side: i64,
) -> [Vec<usize>; 2] {
    let most = |places: &[i64], counts: &[(i64, i64)]| {
        // Of the first so many places, the most squares.
        let mut most = vec![0; places.len() + 1];
        for (i, at) in places.iter().enumerate() {
            let before = places.partition_point(|p| p + side <= *at);
            most[i + 1] = most[i].max(counts[i].0 + most[before]);
        }
        most
    };
    let (low, high) = (most(below, squares_below), most(above, squares_above));
    let under = |k: usize| {
        let end = k.checked_sub(1).map_or(0, |last| below[last] + side);
        above.partition_point(|depth| *depth <= tall - side - end)
    };
    let meet = (0..=below.len()).max_by_key(|k| (low[*k] + high[under(*k)], *k));
    let k = meet.unwrap_or(0);
    let j = under(k);
    [
        best(&below[..k], side, &squares_below[..k]),
        best(&above[..j], side, &squares_above[..j]),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Squares, cuts and heights of some strips, by the rule's own words: each square's upright cuts
    /// are told with its count, and two strips that touch share the line between them.
    fn worth(taken: &[usize], places: &[i64], side: i64, counts: &[(i64, i64)]) -> [i64; 3] {
        let mut lines: Vec<i64> = taken
            .iter()
            .flat_map(|i| [places[*i], places[*i] + side])
            .collect();
        lines.sort_unstable();
        lines.dedup();
        let sum = |of: &dyn Fn(usize) -> i64| taken.iter().map(|i| of(*i)).sum::<i64>();
        [
            sum(&|i| counts[i].0),
            -(sum(&|i| counts[i].1) + lines.len() as i64),
            -sum(&|i| places[i] - places[0]),
        ]
    }

    /// By hand: strips 4 high may begin at 0, 1, 4 and 5 and give a square each. Two fit: at 0 and 4
    /// they share a line, so that three lines are cut; at 0 and 5 or 1 and 5 it takes four, or three
    /// but one higher up.
    #[test]
    fn two_strips_that_share_a_line_take_one_cut_less() {
        assert_eq!(best(&[0, 1, 4, 5], 4, &[(1, 2); 4]), [0, 2]);
        // Where the strip at 4 takes two cuts more, those at 1 and 5 take fewer.
        let counts = [(1, 2), (1, 2), (1, 4), (1, 2)];
        assert_eq!(best(&[0, 1, 4, 5], 4, &counts), [1, 3]);
        // What gives nothing is not cut.
        assert_eq!(best(&[0, 4], 4, &[(0, 0), (1, 2)]), [1]);
        assert_eq!(following(&[0, 1, 4, 5], 4), [2, 3, 4, 4]);
    }

    proptest! {
        /// Every set of strips that do not overlap, tried one after another: none gives more squares,
        /// none as many with fewer cuts, none of these lies nearer the hem.
        #[test]
        fn no_choice_of_strips_is_better(
            gaps in prop::collection::vec(1i64..4, 1..9),
            counts in prop::collection::vec((0i64..4, 0i64..3), 9),
            side in 2i64..7,
            low in -3i64..4,
        ) {
            let places: Vec<i64> = gaps.iter().scan(low, |at, gap| { *at += gap; Some(*at) }).collect();
            // A strip of squares takes two upright cuts at least; one without takes none.
            let counts: Vec<(i64, i64)> = counts[..places.len()].iter()
                .map(|(n, more)| (*n, if *n > 0 { n + 1 + more } else { 0 })).collect();
            let found = best(&places, side, &counts);
            prop_assert!(found.windows(2).all(|w| places[w[0]] + side <= places[w[1]]));
            let most = (0_u32..1 << places.len())
                .map(|set| (0..places.len()).filter(|i| set >> i & 1 == 1).collect::<Vec<usize>>())
                .filter(|set| set.windows(2).all(|w| places[w[0]] + side <= places[w[1]]))
                .map(|set| worth(&set, &places, side, &counts))
                .max();
            prop_assert_eq!(Some(worth(&found, &places, side, &counts)), most);
        }
    }
}
