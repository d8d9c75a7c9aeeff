//! Where the binding begins, so that no join of its strips comes over a lap.
//!
//! The strip runs clockwise from a point on the outline, `n` full strips lapped by `t`
//! (the last cut to length), so that joins come at the start and at the start plus
//! `k·(L − t)`, `k < n`. Laps meet the edge at known places: with fours trimmed to `T`,
//! between blocks at `k·(T − t) + t/2` and in the middle of each block of two squares;
//! corners count as places to avoid too. Every start on the ruler along the first strip
//! is tried, and the one whose nearest join is farthest from all of them is taken (ties
//! to the first). Joins never lie over a crossing (common practice, no source).
//!
//! Promise: of all starts on the ruler none keeps its joins farther off.
//!
//! ```
//! use lapwork_core::plan::binding::layout;
//! use lapwork_core::measure::Ruler;
//! use lapwork_core::plan::Plan;
//!
//! let plan = Plan::default();
//! let (width, height) = plan.finished();
//! let laid = layout(&plan, width, height, Ruler::default());
//! // Each strip ends in a join; none comes over a lap.
//! assert_eq!(laid.joins.len(), plan.binding_for(width, height).strips as usize);
//! assert!(laid.clear > plan.take());
//! ```

use crate::measure::{Length, Ruler, in_nm, nm, zero};
use crate::plan::Plan;

/// A side of the throw, clockwise from the top.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EdgeSide {
    /// Along the top, from the left.
    Top,
    /// Down the right side.
    Right,
    /// Along the bottom, from the right.
    Bottom,
    /// Up the left side.
    Left,
}

impl EdgeSide {
    /// Its name in the language files.
    pub fn key(self) -> &'static str {
        match self {
            EdgeSide::Top => "top",
            EdgeSide::Right => "right",
            EdgeSide::Bottom => "bottom",
            EdgeSide::Left => "left",
        }
    }
}

/// Where the strip begins and its joins come.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BindingLayout {
    /// The start, which is also where the ends meet, and then each join: the side and how
    /// far along it, clockwise.
    pub joins: Vec<(EdgeSide, Length)>,
    /// How far the nearest join keeps from the middle of any lap and from any corner.
    pub clear: Length,
}

/// Where the laps meet one side, in nanometres from its beginning.
fn laps(plan: &Plan, squares: u16) -> Vec<i64> {
    let (target, take) = (in_nm(plan.target()), in_nm(plan.take_between()));
    let mut out = Vec::new();
    for block in 0..squares.div_ceil(2) {
        let start = i64::from(block) * (target - take);
        if block > 0 {
            out.push(start + take / 2);
        }
        if squares - block * 2 >= 2 {
            out.push(start + target / 2);
        }
    }
    out
}

/// Where to begin binding a throw of this size so that the joins keep off the laps.
pub fn layout(plan: &Plan, width: Length, height: Length, ruler: Ruler) -> BindingLayout {
    let (w, h) = (in_nm(width).max(1), in_nm(height).max(1));
    let around = 2 * (w + h);
    // Places to avoid, clockwise from the top left corner.
    let mut avoid = vec![0, w, w + h, 2 * w + h];
    for x in laps(plan, plan.across) {
        avoid.extend([x, w + h + (w - x)]);
    }
    for y in laps(plan, plan.down) {
        avoid.extend([w + y, 2 * w + h + (h - y)]);
    }
    avoid.sort_unstable();
    let strips = i64::from(plan.binding_for(width, height).strips);
    let each = in_nm(plan.binding.longest - plan.take()).max(1);
    let near = |at: i64| {
        let at = at.rem_euclid(around);
        let next = avoid.partition_point(|a| *a < at);
        let after = avoid.get(next).map_or(around + avoid[0], |a| *a) - at;
        let before = at
            - next
                .checked_sub(1)
                .map_or(avoid[avoid.len() - 1] - around, |i| avoid[i]);
        after.min(before)
    };
    let step = in_nm(ruler.step()).max(1);
    let clear = |start: i64| {
        (0..strips)
            .map(|k| near(start + k * each))
            .min()
            .unwrap_or(0)
    };
    let tries = (each.min(around) / step).clamp(1, 20_000);
    let best = (0..tries)
        .map(|k| k * step)
        .max_by_key(|s| (clear(*s), -s))
        .unwrap_or(0);
    let side = |at: i64| match at.rem_euclid(around) {
        at if at < w => (EdgeSide::Top, nm(at)),
        at if at < w + h => (EdgeSide::Right, nm(at - w)),
        at if at < 2 * w + h => (EdgeSide::Bottom, nm(at - w - h)),
        at => (EdgeSide::Left, nm(at - 2 * w - h)),
    };
    let reached = |k: &i64| *k == 0 || k * each < around;
    BindingLayout {
        joins: (0..strips)
            .filter(reached)
            .map(|k| side(best + k * each))
            .collect(),
        clear: std::cmp::max(nm(clear(best)), zero()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{half_inches, in_mm, quarter_inches, sixty_fourths};
    use proptest::prelude::*;

    #[test]
    fn joins_of_the_usual_throw_keep_off_its_laps() {
        let plan = Plan::default();
        let (w, h) = plan.finished();
        let found = layout(&plan, w, h, Ruler::default());
        // 132 in of strip from 28 in pieces: 5 strips, so a start and four joins.
        assert_eq!(found.joins.len(), 5);
        // Squares show 4½ in between laps, so no join can be more than 2¼ in from one.
        assert!(
            found.clear >= half_inches(1) && found.clear <= quarter_inches(9),
            "{}",
            in_mm(found.clear)
        );
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(40))]
        #[test]
        fn no_start_on_the_ruler_does_better(across in 1u16..12, down in 1u16..12, longest in 160i64..1800) {
            let mut plan = Plan { across, down, ..Plan::default() };
            plan.binding.longest = sixty_fourths(longest);
            let (w, h) = plan.finished();
            let ruler = Ruler::default();
            let found = layout(&plan, w, h, ruler);
            // Measured again the long way: every join against every lap and corner.
            let (wn, hn) = (in_nm(w), in_nm(h));
            let around = 2 * (wn + hn);
            let mut marks = vec![0, wn, wn + hn, 2 * wn + hn];
            // Laps of untrimmed squares: the k-th is centred at k·s − (k − ½)·t.
            let (s, t) = (in_nm(plan.side), in_nm(plan.lap));
            let lap = |k: i64| k * s - k * t + t / 2;
            for k in 1..i64::from(across) { marks.extend([lap(k), wn + hn + wn - lap(k)]); }
            for k in 1..i64::from(down) { marks.extend([wn + lap(k), 2 * wn + hn + hn - lap(k)]); }
            let far = |at: i64| marks.iter().map(|m| {
                let d = (at - m).rem_euclid(around);
                d.min(around - d)
            }).min().unwrap();
            let strips = i64::from(plan.binding_for(w, h).strips);
            let each = in_nm(plan.binding.longest - plan.take());
            let best = (0..each.min(around) / in_nm(ruler.step()))
                .map(|k| (0..strips).map(|j| far(k * in_nm(ruler.step()) + j * each)).min().unwrap())
                .max().unwrap_or(0);
            prop_assert_eq!(in_nm(found.clear), best);
            for (_, along) in &found.joins {
                prop_assert!(*along >= zero());
            }
        }
    }
}
