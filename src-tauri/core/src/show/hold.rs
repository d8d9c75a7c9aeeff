//! Laps that hold a wished-for size.

use crate::log::journal::Journal;
use crate::rescue::holding;
use crate::show::context::Context;
use crate::show::fields::typed_size;
use crate::show::parts::{Button, FieldProblem, Head, head};
use crate::types::TS;
use crate::words::Shown;
use serde::Serialize;

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
pub(super) fn hold(journal: &Journal, width: &str, height: &str, context: Context<'_>) -> HoldView {
    let throw = journal.throw();
    let mut faults = Vec::new();
    let size = typed_size(width, height, &mut faults, context);
    let between = |j: &&crate::plan::assembly::Join| {
        !throw.assembly().blocks().iter().any(|b| b.holds(j.whole)) && !throw.begun(j.whole)
    };
    let left = throw.assembly().joins().iter().filter(between).count();
    let rows = size.map_or_else(Vec::new, |wish| {
        holding::laps(throw, wish.width, wish.height, context.ruler, 5)
            .into_iter()
            .map(|h| {
                let mut lines = vec![
                    say!(
                        context,
                        "grid-width",
                        off = context.over_under(h.size.width - wish.width)
                    ),
                    say!(
                        context,
                        "grid-height",
                        off = context.over_under(h.size.height - wish.height)
                    ),
                ];
                if let Some(fringe) = h.fringe {
                    lines.push(say!(
                        context,
                        "hold-fringe",
                        fringe = context.fringe(fringe)
                    ));
                }
                let same = h.lap == throw.plan.lap_between();
                HoldRow {
                    lap: context.length(h.lap),
                    finished: context.by(h.size.width, h.size.height),
                    lines,
                    choose: (!same).then(|| Button {
                        label: say!(context, "hold-choose", lap = context.length(h.lap)),
                        action: h.action,
                    }),
                }
            })
            .collect()
    });
    HoldView {
        head: head(journal, context),
        faults,
        rows,
        said: say!(context, "hold-left", n = left),
    }
}
