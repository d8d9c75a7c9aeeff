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
