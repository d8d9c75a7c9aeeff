//! The finished piece against the plan.

use crate::command::{Action, decide};
use crate::fitting::reconcile::{Direction, before, reconcile};
use crate::log::journal::Journal;
use crate::measure::zero;
use crate::plan::assembly::Seam;
use crate::show::context::Lens;
use crate::show::errors::refusal;
use crate::show::fields::typed_size;
use crate::show::parts::{Button, FieldProblem, Figure, Head, head, percent};
use crate::throw::{Size, Throw};
use serde::Serialize;
use ts_rs::TS;

/// The whole piece measured against the plan.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct WholeView {
    /// Common to all screens.
    pub head: Head,
    /// What it is set against: as foreseen, or as it was before washing.
    pub foreseen: Figure,
    /// What is wrong with what was typed, by field (`width`, `height`).
    pub faults: Vec<FieldProblem>,
    /// Where the difference came from, a sentence each.
    pub lines: Vec<String>,
    /// Keeps the measure.
    pub keep: Option<Button>,
    /// Each time the whole was measured, with its change in washing.
    pub kept: Vec<String>,
}

/// The whole piece against the plan.
pub(super) fn whole(journal: &Journal, width: &str, height: &str, lens: Lens<'_>) -> WholeView {
    let throw = journal.throw();
    let mut faults = Vec::new();
    let size = typed_size(width, height, &mut faults, lens);
    let mut keep = None;
    if let Some(size) = size {
        let action = Action::MeasureWhole {
            width: size.width,
            height: size.height,
        };
        match decide(Some(throw), &action) {
            Ok(_) => {
                keep = Some(Button {
                    label: say!(lens, "measure-keep"),
                    action,
                })
            }
            Err(why) => {
                let problem = refusal(&why, Some(throw), lens);
                faults.push(FieldProblem {
                    field: "width".into(),
                    problem,
                });
            }
        }
    }
    let typed = size.filter(|_| keep.is_some()).map(|s| (s, throw.washes()));
    let kept_last = || throw.wholes.last().map(|w| (w.size, w.washes));
    let shown = typed.or_else(kept_last);
    let foreseen = throw.finished();
    WholeView {
        head: head(journal, lens),
        foreseen: match before(throw, throw.washes()) {
            Some(first) => Figure {
                label: say!(lens, "figure-before-wash"),
                value: lens.by(first.size.width, first.size.height),
            },
            None => Figure {
                label: say!(lens, "figure-foreseen"),
                value: lens.by(foreseen.width, foreseen.height),
            },
        },
        faults,
        lines: shown.map_or_else(Vec::new, |(size, washes)| {
            verdict(throw, size, washes, lens)
        }),
        keep,
        kept: kept(throw, lens),
    }
}

/// What a measure of the whole says: of the laps before the first wash, of washing after it.
fn verdict(throw: &Throw, measured: Size, washes: u8, lens: Lens<'_>) -> Vec<String> {
    if washes == 0 {
        return reconciled(throw, measured, lens);
    }
    let Some(first) = before(throw, washes) else {
        let mut out = vec![say!(lens, "whole-washed-unknown")];
        for d in reconcile(throw, measured) {
            out.push(against(&d, lens));
        }
        return out;
    };
    let n = washes - first.washes;
    let mut out = Vec::new();
    let mut shrank = false;
    for (way, was, now) in [
        ("across", first.size.width, measured.width),
        ("down", first.size.height, measured.height),
    ] {
        if was == now {
            out.push(lens.say(
                &format!("whole-washed-{way}-same"),
                &[("size", lens.length(now).into())],
            ));
            continue;
        }
        shrank |= now < was;
        let by = if now < was { was - now } else { now - was };
        out.push(lens.say(
            &format!("whole-washed-{way}"),
            &[
                ("before", lens.length(was).into()),
                ("now", lens.length(now).into()),
                ("by", lens.length(by).into()),
                ("how", if now < was { "less" } else { "more" }.into()),
                ("percent", percent(was, now, lens).into()),
                ("n", n.into()),
            ],
        ));
    }
    if shrank {
        out.push(say!(lens, "whole-washed-usual"));
    }
    out
}

/// One direction against what it should measure.
fn against(d: &Direction, lens: Lens<'_>) -> String {
    let way = match d.seam {
        Seam::Upright => "across",
        Seam::Level => "down",
    };
    let key = match d.off == zero() {
        true => format!("whole-{way}-exact"),
        false => format!("whole-{way}"),
    };
    lens.say(
        &key,
        &[
            ("measured", lens.length(d.measured).into()),
            ("foreseen", lens.length(d.foreseen).into()),
            ("off", lens.over_under(d.off).into()),
        ],
    )
}

/// Where the difference came from, a sentence each.
fn reconciled(throw: &Throw, measured: Size, lens: Lens<'_>) -> Vec<String> {
    let mut out = Vec::new();
    for d in reconcile(throw, measured) {
        out.push(against(&d, lens));
        if d.off == zero() {
            continue;
        }
        if d.within_give {
            out.push(say!(lens, "whole-within"));
            continue;
        }
        out.push(say!(lens, "whole-beyond"));
        if let Some(each) = d.per_lap.filter(|p| lens.ruler.nearest(*p) != zero()) {
            let each = lens.over_under(each);
            out.push(say!(lens, "whole-each", laps = d.laps, each = each));
        }
    }
    out
}

fn kept(throw: &Throw, lens: Lens<'_>) -> Vec<String> {
    let first = throw.wholes.first().map(|w| w.size);
    throw
        .wholes
        .iter()
        .enumerate()
        .map(|(i, w)| {
            let size = lens.by(w.size.width, w.size.height);
            match first.filter(|_| i > 0) {
                Some(before) => say!(
                    lens,
                    "whole-kept-change",
                    n = w.washes,
                    size = size,
                    across = percent(before.width, w.size.width, lens),
                    down = percent(before.height, w.size.height, lens)
                ),
                None => say!(lens, "whole-kept", n = w.washes, size = size),
            }
        })
        .collect()
}
