//! Laps that hold a wished-for size.

use crate::log::journal::Journal;
use crate::rescue::holding;
use crate::show::context::Lens;
use crate::show::fields::typed_size;
use crate::show::parts::{Button, FieldProblem, Head, head};
use crate::words::Shown;
use serde::Serialize;
use ts_rs::TS;

/// One lap that would hold the wished-for size.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HoldRow {
    /// The lap between blocks.
    pub lap: Shown,
    /// The finished size with it.
    pub finished: Shown,
    /// How far off, and the fringe it leaves, a sentence each.
    pub lines: Vec<String>,
    /// Choose it; none where it is the lap already.
    pub choose: Option<Button>,
}

/// Laps that hold a wished-for size.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HoldView {
    /// Common to all screens.
    pub head: Head,
    /// What is wrong with what was typed, by field (`width`, `height`).
    pub faults: Vec<FieldProblem>,
    /// Best first.
    pub rows: Vec<HoldRow>,
    /// How many joins remain, in words.
    pub said: String,
}

/// Laps that hold a wished-for size.
pub(super) fn hold(journal: &Journal, width: &str, height: &str, lens: Lens<'_>) -> HoldView {
    let throw = journal.throw();
    let mut faults = Vec::new();
    let size = typed_size(width, height, &mut faults, lens);
    let between = |j: &&crate::plan::assembly::Join| {
        !throw.assembly().blocks().iter().any(|b| b.holds(j.whole)) && !throw.begun(j.whole)
    };
    let left = throw.assembly().joins().iter().filter(between).count();
    let rows = size.map_or_else(Vec::new, |wish| {
        holding::laps(throw, wish.width, wish.height, lens.ruler, 5)
            .into_iter()
            .map(|h| {
                let mut lines = vec![
                    say!(
                        lens,
                        "grid-width",
                        off = lens.over_under(h.size.width - wish.width)
                    ),
                    say!(
                        lens,
                        "grid-height",
                        off = lens.over_under(h.size.height - wish.height)
                    ),
                ];
                if let Some(fringe) = h.fringe {
                    lines.push(say!(lens, "hold-fringe", fringe = lens.length(fringe)));
                }
                let same = h.lap == throw.plan.lap_between();
                HoldRow {
                    lap: lens.length(h.lap),
                    finished: lens.by(h.size.width, h.size.height),
                    lines,
                    choose: (!same).then(|| Button {
                        label: say!(lens, "hold-choose", lap = lens.length(h.lap)),
                        action: h.action,
                    }),
                }
            })
            .collect()
    });
    HoldView {
        head: head(journal, lens),
        faults,
        rows,
        said: say!(lens, "hold-left", n = left),
    }
}
