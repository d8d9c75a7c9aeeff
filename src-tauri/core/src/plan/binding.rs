//! Where the binding begins, so that no join of its strips comes over a lap.
//!
//! How many strips there are is [`Plan::binding_for`](crate::plan::Plan::binding_for); which
//! pieces of the pile give them is in `throw/account.rs`.
//!
//! The strip runs clockwise from a point on the outline, `n` full strips lapped by `t`
//! (the last cut to length), so that joins come at the start and at the start plus
//! `k·(L − t)`, `k < n`. From each of these the strips lie over each other for `t`. Laps meet
//! the edge at known places: with fours trimmed to `T`, between blocks around
//! `k·(T − t) + t/2` and in the middle of each block of two squares, and each is as wide as
//! it is lapped there. A join is as far off as the gap between where the strips overlap and
//! the nearest edge of a lap; the corners are places to avoid too, without a width. Every
//! start on the marks of the plan's own system along the first strip is tried, and the one whose
//! nearest join is farthest from all of them is taken; of several such the one whose joins are
//! farthest from the corners, where the strip is folded, then the first. Joins never lie over a
//! crossing (common practice, no source).
//!
//! Promise: of all those starts none keeps its joins farther off. Limit: no more than
//! 20,000 starts are tried and no more than 10,000 joins listed, so that a plan whose strips
//! are as short as its laps costs no more than another.
//!
//! ```
//! use lapwork_core::plan::binding::layout;
//! use lapwork_core::plan::Plan;
//!
//! let plan = Plan::default();
//! let (width, height) = plan.finished();
//! let laid = layout(&plan, width, height);
//! // Each strip ends in a join; none comes over a lap.
//! assert_eq!(laid.joins.len(), plan.binding_for(width, height).strips as usize);
//! assert!(laid.clear > plan.take());
//! ```

use crate::measure::{Length, Ruler, System, eighth_inches, in_nm, nm, tenths_of_mm, zero};
use crate::plan::Plan;

/// How far in from a raw edge a fold or a patch is stitched down: ⅛ in, or 3 mm
/// (common practice, no source).
pub fn row_from_edge(system: System) -> Length {
    match system {
        System::Inch => eighth_inches(1),
        System::Metric => tenths_of_mm(30),
    }
}

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
    /// All four, clockwise.
    pub const ALL: [EdgeSide; 4] = [
        EdgeSide::Top,
        EdgeSide::Right,
        EdgeSide::Bottom,
        EdgeSide::Left,
    ];

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
    /// So many joins come later than that, in the tail past the start.
    pub past: usize,
    /// How far the nearest overlap of two strips keeps from any lap and from any corner;
    /// nothing where one lies over a lap.
    pub clear: Length,
}

/// At most so many joins of strips are listed.
const MOST_JOINS: i64 = 10_000;
/// Most starts tried.
const MOST_STARTS: i64 = 20_000;
/// Most joins examined in all.
const MOST_JOINS_TRIED: i64 = 4_000_000;

/// Where the laps meet one side: the middle of each and half its width, in nanometres.
fn laps(plan: &Plan, squares: u16) -> Vec<(i64, i64)> {
    let within = in_nm(plan.take());
    let (target, take) = (in_nm(plan.target()), in_nm(plan.take_between()));
    let mut out = Vec::new();
    for block in 0..squares.div_ceil(2) {
        let start = i64::from(block) * (target - take);
        if block > 0 {
            out.push((start + take / 2, take / 2));
        }
        if squares - block * 2 >= 2 {
            out.push((start + target / 2, within / 2));
        }
    }
    out
}

/// The marks that a place along the edge is measured by: those of the plan's own system, so that
/// the binding begins at the same place whichever ruler is read.
fn marks(plan: &Plan) -> Ruler {
    let inches = Ruler::default();
    let lies_on = |length: Length| in_nm(length) % in_nm(inches.step()) == 0;
    match lies_on(plan.side) && lies_on(plan.lap) {
        true => inches,
        false => Ruler {
            system: System::Metric,
            ..inches
        },
    }
}

/// Where to begin binding a throw of this size so that the joins keep off the laps; of places that
/// keep off as well, the one whose joins are farthest from the corners, where the binding is folded.
pub fn layout(plan: &Plan, width: Length, height: Length) -> BindingLayout {
    let (w, h) = (in_nm(width).max(1), in_nm(height).max(1));
    let around = 2 * (w + h);
    // Places to avoid, clockwise from the top left corner.
    let mut avoid = vec![(0, 0), (w, 0), (w + h, 0), (2 * w + h, 0)];
    for (x, half) in laps(plan, plan.across) {
        avoid.extend([(x, half), (w + h + (w - x), half)]);
    }
    for (y, half) in laps(plan, plan.down) {
        avoid.extend([(w + y, half), (2 * w + h + (h - y), half)]);
    }
    avoid.sort_unstable();
    let overlap = in_nm(plan.take());
    let strips = i64::from(plan.binding_for(width, height).strips).min(MOST_JOINS);
    let each = in_nm(plan.binding.longest - plan.take()).max(1);
    // The gap between an overlap that begins here and what is next to its middle on either
    // side. Laps are farther apart than they are wide, so that nothing else is nearer.
    let near = |at: i64| {
        let middle = (at + overlap / 2).rem_euclid(around);
        let next = avoid.partition_point(|(a, _)| *a < middle);
        let (after, wide) = avoid.get(next).map_or(avoid[0], |a| *a);
        let after = (after - middle).rem_euclid(around) - wide;
        let (before, wide) = avoid[next.checked_sub(1).unwrap_or(avoid.len() - 1)];
        let before = (middle - before).rem_euclid(around) - wide;
        after.min(before) - overlap / 2
    };
    let step = in_nm(marks(plan).step()).max(1);
    let corners = [0, w, w + h, 2 * w + h, around];
    let from_corner = |start: i64| {
        let middles = (0..strips).map(|k| (start + k * each + overlap / 2).rem_euclid(around));
        let nearest = |at: i64| corners.iter().map(|corner| (at - corner).abs()).min();
        middles.filter_map(nearest).min().unwrap_or(0)
    };
    let clear = |start: i64| {
        (0..strips)
            .map(|k| near(start + k * each))
            .min()
            .unwrap_or(0)
    };
    let most = MOST_STARTS.min(MOST_JOINS_TRIED / strips.max(1)).max(1);
    let tries = (each.min(around) / step).clamp(1, most);
    let best = (0..tries)
        .map(|k| k * step)
        .max_by_key(|s| {
            let clear = clear(*s);
            // Where no start keeps all joins off, the start itself keeps off at least.
            let own = if clear > 0 { 0 } else { near(*s) };
            (clear.max(0), own, from_corner(*s), -s)
        })
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
        past: (0..strips).filter(|k| !reached(k)).count(),
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
        let found = layout(&plan, w, h);
        // 132 in of strip from 28 in pieces: 5 strips, so a start and four joins.
        assert_eq!(found.joins.len(), 5);
        // Laps of ½ in are 4 in from edge to edge; an overlap of ½ in keeps 1¾ in at most.
        assert!(
            found.clear >= half_inches(1) && found.clear <= quarter_inches(7),
            "{}",
            in_mm(found.clear)
        );
    }

    /// By hand: four squares are 9½ in each way, 38 in round. With its tail the strip is 42 in, two strips of
    /// 39 in lapped ½ in; the second would begin 38½ in on, past the start, where the ends meet anyway.
    #[test]
    fn a_strip_that_goes_all_round_has_one_join() {
        let mut plan = Plan {
            across: 2,
            down: 2,
            ..Plan::default()
        };
        let (w, h) = plan.finished();
        for (longest, joins) in [(39, 1), (38, 2)] {
            plan.binding.longest = half_inches(2 * longest);
            assert_eq!(plan.binding_for(w, h).strips, 2);
            assert_eq!(layout(&plan, w, h).joins.len(), joins, "{longest} in");
        }
    }

    /// A plan of whole sixteenths of an inch is measured by those. One with a square or a lap in millimetres
    /// is measured by millimetres.
    #[test]
    fn a_plan_in_both_systems_is_measured_by_millimetres() {
        let system = |side, lap| {
            let plan = Plan {
                side,
                lap,
                ..Plan::default()
            };
            marks(&plan).system
        };
        let (five, half) = (half_inches(10), half_inches(1));
        let (metric, twelve) = (tenths_of_mm(1250), tenths_of_mm(120));
        assert_eq!(system(five, half), System::Inch);
        assert_eq!(system(five, twelve), System::Metric);
        assert_eq!(system(metric, half), System::Metric);
        assert_eq!(system(metric, twelve), System::Metric);
    }

    /// Where one of the joins comes on a lap wherever the strip begins, the strip itself at least
    /// does not begin on a corner.
    #[test]
    fn a_binding_never_begins_on_a_corner() {
        let mut on_a_lap = 0;
        for (across, longest) in (2..7).flat_map(|n| (20..112).map(move |l| (n, l))) {
            let mut plan = Plan {
                across,
                down: 7,
                ..Plan::default()
            };
            plan.binding.longest = quarter_inches(longest);
            let (w, h) = plan.finished();
            let found = layout(&plan, w, h);
            assert!(
                found.joins[0].1 > zero(),
                "{across} across, {longest} quarters"
            );
            on_a_lap += u32::from(found.clear == zero());
        }
        assert!(on_a_lap > 0, "no such strip was tried");
    }

    /// Laps of a few nanometres pass the plan's check, and strips hardly longer.
    #[test]
    fn strips_as_short_as_laps_are_not_waited_for() {
        let mut plan = Plan {
            lap: nm(3),
            between: None,
            stitch: crate::plan::Stitch::Straight,
            ..Plan::default()
        };
        plan.binding.longest = nm(7);
        let (w, h) = plan.finished();
        assert!(layout(&plan, w, h).joins.len() <= MOST_JOINS as usize);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(40))]
        #[test]
        fn no_start_on_the_ruler_does_better(across in 1u16..12, down in 1u16..12, longest in 160i64..1800) {
            let mut plan = Plan { across, down, ..Plan::default() };
            plan.binding.longest = sixty_fourths(longest);
            let (w, h) = plan.finished();
            let ruler = Ruler::default();
            let found = layout(&plan, w, h);
            // Measured again the long way: every join against every lap and corner.
            let (wn, hn) = (in_nm(w), in_nm(h));
            let around = 2 * (wn + hn);
            let mut marks = vec![0, wn, wn + hn, 2 * wn + hn];
            // Laps of untrimmed squares: the k-th is centred at k·s − (k − ½)·t.
            let (s, t) = (in_nm(plan.side), in_nm(plan.lap));
            let lap = |k: i64| k * s - k * t + t / 2;
            for k in 1..i64::from(across) { marks.extend([lap(k), wn + hn + wn - lap(k)]); }
            for k in 1..i64::from(down) { marks.extend([wn + lap(k), 2 * wn + hn + hn - lap(k)]); }
            // From one cloth to the other: the overlap goes from `at` to `at + t`, a lap half
            // its width either way of its middle, a corner has none.
            let far = |at: i64| marks.iter().enumerate().map(|(i, m)| {
                let half = if i < 4 { 0 } else { t / 2 };
                let beyond = (m - half - at - t).rem_euclid(around);
                let before = (at - m - half).rem_euclid(around);
                // Where they lie over each other both would go round the whole throw.
                if beyond + before + 2 * half + t == around { beyond.min(before) } else { -1 }
            }).min().unwrap();
            let strips = i64::from(plan.binding_for(w, h).strips);
            let each = in_nm(plan.binding.longest - plan.take());
            let best = (0..each.min(around) / in_nm(ruler.step()))
                .map(|k| (0..strips).map(|j| far(k * in_nm(ruler.step()) + j * each)).min().unwrap())
                .max().unwrap_or(0);
            prop_assert_eq!(in_nm(found.clear), best.max(0));
            // Of those that keep off as well, none has all its joins farther from the corners.
            let corners = [0, wn, wn + hn, 2 * wn + hn];
            let from_corner = |start: i64| (0..strips).map(|j| corners.iter().map(|c| {
                let on = (start + j * each + t / 2 - c).rem_euclid(around);
                on.min(around - on)
            }).min().unwrap()).min().unwrap();
            let as_well = |start: &i64| (0..strips).map(|j| far(start + j * each)).min().unwrap() == best;
            let starts = (0..each.min(around) / in_nm(ruler.step())).map(|k| k * in_nm(ruler.step()));
            let farthest = starts.filter(as_well).map(from_corner).max();
            // Each join lies on its side, a strip less its overlap after the one before, and the
            // first of them keeps off as far as is told.
            let places: Vec<i64> = found.joins.iter().map(|(side, along)| {
                let (from, long) = match side {
                    EdgeSide::Top => (0, wn),
                    EdgeSide::Right => (wn, hn),
                    EdgeSide::Bottom => (wn + hn, wn),
                    EdgeSide::Left => (2 * wn + hn, hn),
                };
                assert!((0..long).contains(&in_nm(*along)), "{along:?} along {side:?}");
                from + in_nm(*along)
            }).collect();
            for pair in places.windows(2) {
                prop_assert_eq!((pair[1] - pair[0]).rem_euclid(around), each % around);
            }
            if best > 0 {
                prop_assert_eq!(Some(from_corner(places[0])), farthest);
            }
            let nearest = (0..strips).map(|j| far(places[0] + j * each)).min().unwrap();
            prop_assert_eq!(in_nm(found.clear), nearest.max(0));
            let all = (0..strips).filter(|j| *j == 0 || j * each < around).count();
            prop_assert_eq!(places.len(), all);
        }
    }
}
