//! Holding the finished size: the lap for the joins that remain.
//!
//! With a wished-for size and what is already sewn, every lap on the ruler from the
//! narrowest that leaves the least fringe up to a third of the square is tried on the
//! joins between blocks that are still to be made, and what the throw would then measure
//! is foreseen ([`Throw::finished`]). The best is the one whose width and height together
//! stray least (sum of the two distances; ties to the wider lap).

use crate::command::{Command, decide};
use crate::measure::{Length, Ruler, in_nm, nm};
use crate::plan::{Plan, fringe};
use crate::throw::{Size, Throw};

/// One lap and what comes of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// The lap between blocks.
    pub lap: Length,
    /// The fringe it leaves, where there is one.
    pub fringe: Option<Length>,
    /// What the throw would measure.
    pub size: Size,
    /// Wide or high of the wish by so much in all.
    pub off: Length,
    /// The change.
    pub action: Command,
}

/// The laps that hold the wished-for size best, best first, `most` at most.
pub fn laps(throw: &Throw, width: Length, height: Length, ruler: Ruler, most: usize) -> Vec<Held> {
    let plan = throw.plan;
    let step = in_nm(ruler.step());
    let least = in_nm(plan.narrowest_lap());
    let first = (least + step - 1).div_euclid(step).max(1);
    let last = in_nm(plan.side) / 3 / step;
    let size = |l: Length| nm(in_nm(l).abs());
    let mut found: Vec<Held> = (first..=last)
        .filter_map(|k| {
            let lap = nm(k * step);
            let between = (lap != plan.lap).then_some(lap);
            let changed = Plan { between, ..plan };
            let action = Command::ChangePlan { plan: changed };
            let events = decide(Some(throw), &action).ok()?;
            let finished = throw.after(&events).finished();
            let off = size(finished.width - width) + size(finished.height - height);
            let fringe = fringe(plan.joining, lap, plan.stitch);
            Some(Held {
                lap,
                fringe,
                size: finished,
                off,
                action,
            })
        })
        .collect();
    found.sort_by_key(|h| (h.off, std::cmp::Reverse(h.lap)));
    found.truncate(most);
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fitting::tests::begun;
    use crate::measure::{eighth_inches, sixty_fourths};

    #[test]
    fn the_lap_that_was_used_holds_the_size_it_gave() {
        let plan = Plan::default();
        let throw = begun(plan);
        let (w, h) = plan.finished();
        let best = &laps(&throw, w, h, Ruler::default(), 3)[0];
        assert_eq!((best.lap, best.off), (plan.lap, nm(0)));
        // Two joins across and three down: 7/16 in laps make it 1/8 in wider and 3/16 in higher.
        let wish = (w + eighth_inches(1), h + sixty_fourths(12));
        let best = &laps(&throw, wish.0, wish.1, Ruler::default(), 3)[0];
        assert_eq!((best.lap, best.off), (sixty_fourths(28), nm(0)));
    }

    /// By hand: the narrowest lap that keeps 3 mm beside rows 4 mm apart is 10 mm, on sixteenths 7/16
    /// in; the widest is a third of 5 in, 1⅔ in, on sixteenths 26/16 in. That is 20 laps.
    #[test]
    fn laps_from_the_least_fringe_to_a_third_of_the_square() {
        let (w, h) = Plan::default().finished();
        let found = laps(&begun(Plan::default()), w, h, Ruler::default(), 99);
        let mut all: Vec<_> = found.iter().map(|held| held.lap).collect();
        all.sort_unstable();
        let want: Vec<_> = (7..=26).map(|n| sixty_fourths(4 * n)).collect();
        assert_eq!(all, want);
    }

    /// Where she trusts an edge with no fringe beside a straight row, every mark is a lap from the first
    /// on, 1/16 in; no lap at all is none. By hand that is 26 of them to a third of 5 in.
    #[test]
    fn without_a_least_fringe_the_first_mark_is_a_lap() {
        let plan = Plan {
            stitch: crate::plan::Stitch::Straight,
            least_fringe: nm(0),
            ..Plan::default()
        };
        let (w, h) = plan.finished();
        let found = laps(&begun(plan), w, h, Ruler::default(), 99);
        let least = found.iter().map(|held| held.lap).min();
        assert_eq!((found.len(), least), (26, Some(sixty_fourths(4))));
        // 1/16 in of fringe on either side of the row is a lap of 2/16 in, which is on a mark itself.
        let plan = Plan {
            least_fringe: sixty_fourths(4),
            ..plan
        };
        let found = laps(&begun(plan), w, h, Ruler::default(), 99);
        let least = found.iter().map(|held| held.lap).min();
        assert_eq!((found.len(), least), (25, Some(sixty_fourths(8))));
    }

    /// A plain seam has no fringe; its allowance is 5 mm at the least, as it pulls out below that (common
    /// practice, no source): on sixteenths 4/16 in, 6.35 mm.
    #[test]
    fn a_hidden_seam_keeps_an_allowance_of_five_millimetres() {
        let plan = Plan::default().joined(crate::plan::Joining::Seamed);
        let (w, h) = plan.finished();
        let found = laps(&begun(plan), w, h, Ruler::default(), 99);
        let least = found.iter().map(|held| held.lap).min();
        assert_eq!(least, Some(sixty_fourths(16)));
        assert!(found.iter().all(|held| held.fringe.is_none()));
    }

    /// By hand: with two joins across and three down each 1/16 in more of lap takes 1/8 in off the
    /// width and 3/16 in off the height. Wished as wide as planned and ¾ in lower, ½ in laps stray ¾
    /// in, ⅝ in laps ¼ + ⅜ in, 11/16 in laps ⅜ + 3/16 in, ¾ in laps ½ + 0 in and 13/16 in laps
    /// ⅝ + 3/16 in: the least is ½ in.
    #[test]
    fn width_and_height_count_alike() {
        let throw = begun(Plan::default());
        let (w, h) = Plan::default().finished();
        let found = laps(&throw, w, h - sixty_fourths(48), Ruler::default(), 3);
        let told: Vec<_> = found.iter().map(|held| (held.lap, held.off)).collect();
        assert_eq!(
            told,
            [(48, 32), (44, 36), (40, 40)]
                .map(|(lap, off)| (sixty_fourths(lap), sixty_fourths(off)))
        );
        assert_eq!(found[0].size.width, w - sixty_fourths(32));
        assert_eq!(found[0].size.height, h - sixty_fourths(48));
    }
}
