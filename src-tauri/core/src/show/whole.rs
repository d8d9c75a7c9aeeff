//! The finished piece against the plan.

use crate::command::{Command, decide};
use crate::fitting::reconcile::{Direction, before, reconcile};
use crate::log::journal::Journal;
use crate::measure::zero;
use crate::plan::assembly::Seam;
use crate::show::context::Context;
use crate::show::errors::rejection;
use crate::show::fields::typed_size;
use crate::show::parts::{Button, FieldProblem, Figure, Head, head, percent};
use crate::throw::{Size, Throw};
use crate::types::TS;
use serde::Serialize;

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
pub(super) fn whole(
    journal: &Journal,
    width: &str,
    height: &str,
    context: Context<'_>,
) -> WholeView {
    let throw = journal.throw();
    let mut faults = Vec::new();
    let size = typed_size(width, height, &mut faults, context);
    let foreseen = throw.finished();
    let Size { width, height } = size.unwrap_or(foreseen);
    let action = Command::MeasureWhole { width, height };
    let refused = decide(Some(throw), &action).err();
    let refused = refused.map(|why| rejection(&why, Some(throw), context));
    let (mut keep, mut too_early) = (None, None);
    match (size, refused) {
        (Some(_), None) => {
            keep = Some(Button {
                label: say!(context, "measure-keep"),
                action,
            })
        }
        (Some(_), Some(problem)) => faults.push(FieldProblem {
            field: "width".into(),
            problem,
        }),
        // That it is too early to measure is said before anything is typed.
        (None, problem) => too_early = problem,
    }
    let typed = size.filter(|_| keep.is_some()).map(|s| (s, throw.washes()));
    let kept_last = || throw.wholes.last().map(|w| (w.size, w.washes));
    let shown = typed.or_else(kept_last);
    WholeView {
        head: head(journal, context),
        foreseen: match before(throw, throw.washes()) {
            Some(first) => Figure {
                label: say!(context, "figure-before-wash"),
                value: context.by(first.size.width, first.size.height),
            },
            None => Figure {
                label: say!(context, "figure-foreseen"),
                value: context.by(foreseen.width, foreseen.height),
            },
        },
        faults,
        lines: match (too_early, shown) {
            (Some(problem), _) => vec![problem.said, problem.next],
            (None, Some((size, washes))) => verdict(throw, size, washes, context),
            (None, None) => Vec::new(),
        },
        keep,
        kept: kept(throw, context),
    }
}

/// What a measure of the whole says: of the laps before the first wash, of washing after it.
fn verdict(throw: &Throw, measured: Size, washes: u8, context: Context<'_>) -> Vec<String> {
    if washes == 0 {
        return reconciled(throw, measured, context);
    }
    let Some(first) = before(throw, washes) else {
        let mut out = vec![say!(context, "whole-washed-unknown")];
        for d in reconcile(throw, measured) {
            out.push(against(&d, context));
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
            out.push(context.say(
                &format!("whole-washed-{way}-same"),
                &[("size", context.length(now).into())],
            ));
            continue;
        }
        shrank |= now < was;
        let by = if now < was { was - now } else { now - was };
        out.push(context.say(
            &format!("whole-washed-{way}"),
            &[
                ("before", context.length(was).into()),
                ("now", context.length(now).into()),
                ("by", context.length(by).into()),
                ("how", if now < was { "less" } else { "more" }.into()),
                ("percent", percent(was, now, context).into()),
                ("n", n.into()),
            ],
        ));
    }
    if shrank {
        out.push(say!(context, "whole-washed-usual"));
    }
    out
}

/// One direction against what it should measure.
fn against(d: &Direction, context: Context<'_>) -> String {
    let way = match d.seam {
        Seam::Upright => "across",
        Seam::Level => "down",
    };
    let key = match d.off == zero() {
        true => format!("whole-{way}-exact"),
        false => format!("whole-{way}"),
    };
    context.say(
        &key,
        &[
            ("measured", context.length(d.measured).into()),
            ("foreseen", context.length(d.foreseen).into()),
            ("off", context.over_under(d.off).into()),
        ],
    )
}

/// Where the difference came from, a sentence each.
fn reconciled(throw: &Throw, measured: Size, context: Context<'_>) -> Vec<String> {
    let mut out = Vec::new();
    for d in reconcile(throw, measured) {
        out.push(against(&d, context));
        if d.off == zero() {
            continue;
        }
        out.push(match d.within_give {
            true => say!(context, "whole-within"),
            false => say!(context, "whole-beyond"),
        });
        if let Some(each) = d.per_lap.filter(|p| context.ruler.nearest(*p) != zero()) {
            let each = context.over_under(each);
            out.push(say!(context, "whole-each", laps = d.laps, each = each));
        }
    }
    out
}

fn kept(throw: &Throw, context: Context<'_>) -> Vec<String> {
    let first = throw.wholes.first().map(|w| w.size);
    throw
        .wholes
        .iter()
        .enumerate()
        .map(|(i, w)| {
            let size = context.by(w.size.width, w.size.height);
            match first.filter(|_| i > 0) {
                Some(before) => say!(
                    context,
                    "whole-kept-change",
                    n = w.washes,
                    size = size,
                    across = percent(before.width, w.size.width, context),
                    down = percent(before.height, w.size.height, context)
                ),
                None => say!(context, "whole-kept", n = w.washes, size = size),
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fitting::tests::begun;
    use crate::measure::{half_inches, inches};
    use crate::plan::Plan;
    use crate::words::Words;

    /// By hand: 6 × 8 squares of 5 in lapped ½ in come to 27½ × 36½ in. At 36 in ½ in is lacking,
    /// 1.4 %, which cloth may give; shared among 7 joins it is 1/14 in, on this ruler 1/16 in.
    #[test]
    fn what_is_lacking_is_shared_among_the_joins_even_where_cloth_gives_it() {
        let words = Words::english();
        let context = Context {
            words: &words,
            ruler: Default::default(),
            now: 0,
        };
        let measured = Size {
            width: half_inches(55),
            height: inches(36),
        };
        let said = reconciled(&begun(Plan::default()), measured, context).join(" ");
        let said = said
            .replace(['\u{2068}', '\u{2069}'], "")
            .replace('\u{a0}', " ");
        assert!(said.contains("Across: 27½ in, exactly"), "{said}");
        assert!(said.contains("Shared among 7 joins, that is"), "{said}");
        assert!(said.contains("1/16 in under at each"), "{said}");
        assert!(!said.contains("Nothing is wrong"), "{said}");
    }

    /// By hand: 1/16 in over, shared among 7 joins, is less than a hundredth of an inch at each, which no
    /// ruler shows; ¼ in is 1/28 in, more than half of 1/16 in.
    #[test]
    fn what_no_ruler_shows_is_not_shared_out() {
        let words = Words::english();
        let context = Context {
            words: &words,
            ruler: Default::default(),
            now: 0,
        };
        let said = |over: i64| {
            let measured = Size {
                width: half_inches(55),
                height: half_inches(73) + crate::measure::sixty_fourths(over),
            };
            reconciled(&begun(Plan::default()), measured, context).join(" ")
        };
        assert!(!said(4).contains("Shared among"), "{}", said(4));
        assert!(said(16).contains("Shared among"), "{}", said(16));
    }

    /// By hand: from 18 to 17½ in is ½ in of 18, 2.8 % less.
    #[test]
    fn each_measure_kept_is_told_with_its_change_from_the_first() {
        let words = Words::english();
        let context = Context {
            words: &words,
            ruler: Default::default(),
            now: 0,
        };
        let mut throw = begun(Plan::default());
        let at = |washes, half: i64| crate::throw::WholeMeasure {
            size: Size {
                width: half_inches(half),
                height: inches(18),
            },
            washes,
            at: 0,
        };
        throw.wholes = vec![at(0, 36), at(1, 35)];
        let told = kept(&throw, context);
        assert_eq!(told.len(), 2);
        assert!(!told[0].contains('%'), "{}", told[0]);
        assert!(told[1].contains("2.8"), "{}", told[1]);
    }
}
