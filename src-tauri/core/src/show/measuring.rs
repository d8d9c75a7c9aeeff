//! Measuring a block: what is typed, and the verdict.

use crate::command::{Command, Rejection, decide};
use crate::fitting::drift::{self, Along, Drift, DriftVerdict, Sureness};
use crate::fitting::squaring::{
    Summary, held, leans, measured_fours, natural, ruled, sewn_lap, summary, thin_laps, trim,
};
use crate::fitting::trimming::shortfalls;
use crate::log::journal::Journal;
use crate::measure::outline::{Cut, Measures, Outline, OutlineFault, Sides};
use crate::measure::{Length, ParseError, from_mm, tenths_of_mm, zero};
use crate::plan::assembly::{Rect, Seam};
use crate::plan::{Joining, fringe};
use crate::show::context::Context;
use crate::show::errors::{self, rejection};
use crate::show::events::joined;
use crate::show::parts::{Button, FieldProblem, Figure, Head, head};
use crate::show::picture::Picture;
use crate::show::{fields, lessons, names, pictures};
use crate::throw::{Made, Size, Throw};
use crate::types::TS;
use crate::words::Problem;
use serde::{Deserialize, Serialize};

/// A block's sides and diagonals as typed; the diagonals may be left empty.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize, TS)]
pub struct OutlineTyped {
    /// Top side.
    pub top: String,
    /// Right side.
    pub right: String,
    /// Bottom side.
    pub bottom: String,
    /// Left side.
    pub left: String,
    /// Diagonal from top left to bottom right.
    pub falling: String,
    /// Diagonal from top right to bottom left.
    pub rising: String,
}

/// Measuring a block.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct MeasureView {
    /// Common to all screens.
    pub head: Head,
    /// The block.
    pub piece: Rect,
    /// Which block.
    pub title: String,
    /// What it should be.
    pub target: Figure,
    /// What is wrong with what was typed, by field (`width`, `height`).
    pub faults: Vec<FieldProblem>,
    /// The verdict in a sentence or two.
    pub verdict: Vec<String>,
    /// Over and under, what to trim from which side, the lap being sewn.
    pub figures: Vec<Figure>,
    /// The block with what is cut away.
    pub picture: Option<Picture>,
    /// Keeps the measure.
    pub keep: Option<Button>,
    /// The measured blocks so far: count, mean, spread, lap.
    pub summary: Vec<Figure>,
    /// What they say, in words.
    pub summary_said: String,
    /// The next block worth measuring.
    pub next: Option<Rect>,
    /// What is typed is short of the trim size: something is to be done about it.
    pub short: bool,
}

/// What was typed for a block, and what it means.
pub(super) fn measure(
    journal: &Journal,
    piece: Rect,
    width: &str,
    height: &str,
    context: Context<'_>,
) -> Result<MeasureView, Problem> {
    let throw = journal.throw();
    let fail = |why: Rejection| rejection(&why, Some(throw), context);
    if !throw.assembly().knows(piece) {
        return Err(fail(Rejection::NoSuchPiece(piece)));
    }
    if !throw.assembly().is_block(piece) {
        return Err(fail(Rejection::NotMeasurable(piece)));
    }
    let target = throw.target(piece);
    let mut faults = Vec::new();
    let size = fields::typed_size(width, height, &mut faults, context);
    let (mut verdict, mut figures, mut picture, mut keep) = (Vec::new(), Vec::new(), None, None);
    let mut short = false;
    if let Some(size) = size {
        let action = Command::Measure {
            piece,
            width: size.width,
            height: size.height,
        };
        match decide(Some(throw), &action) {
            Ok(events) => {
                keep = Some(Button {
                    label: say!(context, "measure-keep"),
                    action,
                });
                let kept = throw.after(&events);
                short = is_open(&kept, piece);
                let work = throw.work(piece);
                let is_kept = work.is_some_and(|w| w.measured == Some(size) && w.outline.is_none());
                verdict = verdict_of(&kept, piece, size, open_key(is_kept), context);
                figures = figures_of(throw, piece, size, context);
                picture = Some(pictures::measured(&kept, piece, size, context));
            }
            Err(why) => {
                let field = match &why {
                    Rejection::Unlikely { given, .. }
                        if *given == size.height && *given != size.width =>
                    {
                        "height"
                    }
                    _ => "width",
                };
                faults.push(FieldProblem {
                    field: field.into(),
                    problem: fail(why),
                });
            }
        }
    }
    let (summary, summary_said) = summed(throw, context);
    let next = throw.assembly().blocks().into_iter().find(|b| {
        *b != piece
            && throw.is_measurable(*b)
            && throw.work(*b).is_none_or(|w| w.measured.is_none())
    });
    Ok(MeasureView {
        head: head(journal, context),
        piece,
        title: names::piece(throw, piece, context),
        target: Figure {
            label: say!(context, "figure-trim-to"),
            value: context.by(target.width, target.height),
        },
        faults,
        verdict,
        figures,
        picture,
        keep,
        summary,
        summary_said,
        next,
        short,
    })
}

/// What is said of a measure that leaves some open: to keep it first, where it is not kept yet.
fn open_key(is_kept: bool) -> &'static str {
    match is_kept {
        true => "short-open-kept",
        false => "short-open-keep",
    }
}

/// Whether some of what a block is short is not made up for yet.
fn is_open(throw: &Throw, block: Rect) -> bool {
    shortfalls(throw, block).iter().any(|s| s.open > zero())
}

/// What is eased in, where anything is. Less than the ruler's marks show is told only where it is
/// `all` there is to tell, and then without a figure.
pub(super) fn eased(throw: &Throw, by: Length, all: bool, context: Context<'_>) -> Option<String> {
    let joining = joined(throw.plan.joining);
    if context.ruler.nearest(by) > zero() {
        let by = context.length(by);
        return Some(say!(context, "short-eased", by = by, joining = joining));
    }
    (all && by > zero()).then(|| say!(context, "short-eased-little", joining = joining))
}

/// What makes up for what a block is short, one way or both; `open` is said where
/// nothing does yet.
pub(super) fn made_up(
    throw: &Throw,
    block: Rect,
    seam: Option<Seam>,
    open: &str,
    context: Context<'_>,
) -> Vec<String> {
    let mut out = Vec::new();
    let found = shortfalls(throw, block).into_iter();
    for short in found.filter(|s| seam.is_none_or(|seam| seam == s.seam)) {
        for share in &short.shares {
            let key = share.side.key();
            let by = context.length(share.by);
            out.push(match share.join {
                None => context.say(&format!("short-edge-{key}"), &[("by", by.into())]),
                Some((other, lap)) => context.say(
                    &format!("short-join-{key}"),
                    &[
                        ("by", by.into()),
                        ("piece", names::piece(throw, other, context).into()),
                        ("lap", context.length(lap).into()),
                        ("joining", joined(throw.plan.joining).into()),
                    ],
                ),
            });
        }
        out.extend(eased(throw, short.eased, short.shares.is_empty(), context));
        if short.open > zero() {
            let way = match short.seam {
                Seam::Upright => "across",
                Seam::Level => "down",
            };
            let part = match short.shares.is_empty() {
                true => "all",
                false => "rest",
            };
            let by = context.length(short.open).into();
            let args = [("by", by), ("way", way.into()), ("part", part.into())];
            out.push(context.say(open, &args));
        }
    }
    out
}

/// What a measured block has over or under each way, and what to do about it.
pub(super) fn verdict_of(
    throw: &Throw,
    piece: Rect,
    size: Size,
    open: &str,
    context: Context<'_>,
) -> Vec<String> {
    let target = throw.target(piece);
    let mut sides = [
        ("across", Seam::Upright, size.width, target.width),
        ("down", Seam::Level, size.height, target.height),
    ];
    // What is to be done is told before what is right already.
    sides.sort_by_key(|(_, _, measured, wanted)| measured == wanted);
    let mut out = Vec::new();
    // What it measured before it was trimmed says how wide its laps are; what it holds now does not.
    let thin = match throw.work(piece).and_then(|w| w.squared) {
        Some(_) => Vec::new(),
        None => thin_laps(throw, piece),
    };
    let mut warned = 0;
    for (side, seam, measured, wanted) in sides {
        let cut = trim(measured, wanted, context.ruler);
        let key = match cut.over {
            over if over == zero() => "exact",
            over if over > zero() && cut.before == zero() => "over-one-side",
            // What is left of the halves falls between the marks: all of it on one side.
            over if over > zero() && context.ruler.nearest(cut.after) != cut.after => "over-rest",
            over if over > zero() => "over",
            _ => "under",
        };
        out.push(
            context.say(
                &format!("verdict-{side}-{key}"),
                &[
                    (
                        "over",
                        context
                            .length(if cut.over < zero() {
                                zero() - cut.over
                            } else {
                                cut.over
                            })
                            .into(),
                    ),
                    (
                        "even",
                        if cut.before == cut.after { "yes" } else { "no" }.into(),
                    ),
                    ("before", context.marked(cut.before).into()),
                    ("after", context.marked(cut.after).into()),
                ],
            ),
        );
        out.extend(made_up(throw, piece, Some(seam), open, context));
        if thin.contains(&seam) {
            let made = throw.made(piece);
            let lap = sewn_lap(&throw.plan, made.joining, made.stitch, measured);
            let fringe = fringe(made.joining, lap, made.stitch);
            let fringe = match fringe.filter(|fringe| *fringe >= zero()) {
                Some(fringe) => context.fringe(fringe),
                None => context.plain(say!(context, "none")),
            };
            let least = context.fringe(throw.plan.least_fringe);
            // It is read before anything is trimmed.
            out.insert(
                warned,
                say!(
                    context,
                    format!("verdict-{side}-thin"),
                    lap = context.length(lap),
                    fringe = fringe,
                    least = least
                ),
            );
            warned += 1;
        }
    }
    out
}

fn figures_of(throw: &Throw, piece: Rect, size: Size, context: Context<'_>) -> Vec<Figure> {
    let (target, should) = (throw.target(piece), natural(throw, piece));
    let mut out = Vec::new();
    let Made {
        joining, stitch, ..
    } = throw.made(piece);
    for (side, squares, measured, wanted, planned) in [
        ("across", piece.cols, size.width, target.width, should.width),
        (
            "down",
            piece.rows,
            size.height,
            target.height,
            should.height,
        ),
    ] {
        let label = |key: &str| context.say(&format!("figure-{key}-{side}"), &[]);
        out.push(Figure {
            label: label("off"),
            value: context.over_under(trim(measured, wanted, context.ruler).over),
        });
        let lapped = joining == Joining::Lapped;
        if squares == 2 {
            let lap = sewn_lap(&throw.plan, joining, stitch, measured);
            let meant = sewn_lap(&throw.plan, joining, stitch, planned);
            let value = context.length(lap);
            let text = say!(
                context,
                "lap-sewn",
                lap = value.text,
                meant = context.length(meant).text
            );
            out.push(Figure {
                label: label(if lapped { "lap-sewn" } else { "allowance-sewn" }),
                value: crate::words::Shown { text, ..value },
            });
        }
    }
    out
}

/// Measuring a block's four sides and its diagonals.
pub(super) fn outline(
    journal: &Journal,
    piece: Rect,
    typed: &OutlineTyped,
    context: Context<'_>,
) -> Result<MeasureView, Problem> {
    let throw = journal.throw();
    let mut view = measure(journal, piece, "", "", context)?;
    let mut read = |field: &str, typed: &str| match context.parse(typed) {
        Ok(length) => Some(length),
        Err(ParseError::Empty) => None,
        Err(error) => {
            let problem = errors::typed(&error, context);
            view.faults.push(FieldProblem {
                field: field.into(),
                problem,
            });
            None
        }
    };
    let [top, right, bottom, left, falling, rising] = [
        read("top", &typed.top),
        read("right", &typed.right),
        read("bottom", &typed.bottom),
        read("left", &typed.left),
        read("falling", &typed.falling),
        read("rising", &typed.rising),
    ];
    // One diagonal alone does not say how the block leans.
    for (field, own, other) in [
        ("falling", &typed.falling, &typed.rising),
        ("rising", &typed.rising, &typed.falling),
    ] {
        if own.trim().is_empty() && !other.trim().is_empty() {
            let problem = errors::typed(&ParseError::Empty, context);
            view.faults.push(FieldProblem {
                field: field.into(),
                problem,
            });
        }
    }
    if !view.faults.is_empty() {
        return Ok(view);
    }
    let (Some(top), Some(right), Some(bottom), Some(left)) = (top, right, bottom, left) else {
        return Ok(view);
    };
    let measures = Measures {
        sides: Sides {
            top,
            right,
            bottom,
            left,
        },
        diagonals: falling.zip(rising),
    };
    let action = Command::MeasureOutline { piece, measures };
    let allowed = decide(Some(throw), &action);
    let (outline, held) = match (
        &allowed,
        Outline::new(measures),
        held(throw, piece, measures),
    ) {
        (Ok(_), Ok(outline), Ok(held)) => (outline, held),
        _ => {
            if let Err(why) = allowed {
                let field = match &why {
                    Rejection::Outline(OutlineFault::DoesNotClose { repeat, .. }) => {
                        errors::line_key(*repeat)
                    }
                    _ => "top",
                };
                let problem = rejection(&why, Some(throw), context);
                view.faults.push(FieldProblem {
                    field: field.into(),
                    problem,
                });
            }
            return Ok(view);
        }
    };
    let target = throw.target(piece);
    let too_small = held.width < target.width || held.height < target.height;
    let kept = allowed.as_ref().map(|events| throw.after(events)).ok();
    view.short = kept.as_ref().is_some_and(|kept| is_open(kept, piece));
    view.keep = Some(Button {
        label: say!(context, "measure-keep"),
        action,
    });
    let skew = outline.skew();
    let degrees = context.words.decimal(skew.abs(), 1);
    view.figures.push(Figure {
        label: say!(context, "figure-skew"),
        value: context.plain(match !outline.leans() {
            true => say!(context, "skew-none"),
            false => say!(context, "skew", degrees = degrees),
        }),
    });
    view.figures.push(Figure {
        label: say!(context, "figure-holds"),
        value: context.by(held.width, held.height),
    });
    if outline.leans() && !leans(throw, piece) {
        // It is pulled square and measured again; only what then still leans is cut so.
        view.verdict.push(pull_square(measures, context));
        let picture = pictures::outlined(throw, piece, &outline, None, context);
        view.picture = Some(picture);
        return Ok(view);
    }
    if outline.leans() {
        view.verdict.push(say!(context, "pulled-still"));
    }
    if !too_small {
        view.verdict.push(say!(
            context,
            "outline-holds",
            target = context.by(target.width, target.height)
        ));
    } else {
        view.verdict.push(say!(
            context,
            "outline-short",
            target = context.by(target.width, target.height),
            held = context.by(held.width, held.height)
        ));
        if let Some(kept) = &kept {
            let known = throw.work(piece).and_then(|w| w.outline);
            let open = open_key(known == Some(measures));
            let said = made_up(kept, piece, None, open, context);
            view.verdict.extend(said);
        }
    }
    let cut = ruled(throw, piece, &outline, held);
    if let Some(cut) = &cut {
        view.figures.extend(trims(cut, context));
        view.verdict.extend(by_marks(cut, context));
    }
    view.picture = Some(pictures::outlined(
        throw,
        piece,
        &outline,
        cut.as_ref(),
        context,
    ));
    Ok(view)
}

/// What is cut off each side of a block, a figure a side: as much at both ends, or from one measure to
/// another.
pub(super) fn trims(cut: &Cut, context: Context<'_>) -> Vec<Figure> {
    let sides = ["top", "right", "bottom", "left"].into_iter();
    let told = pictures::wedges(cut, context).into_iter();
    let figure = |(side, text): (&str, String)| Figure {
        label: context.say(&format!("figure-trim-{side}"), &[]),
        value: context.plain(text),
    };
    sides.zip(told).map(figure).collect()
}

/// That both ends of a side are marked, where the cut does not run along it.
pub(super) fn by_marks(cut: &Cut, context: Context<'_>) -> Option<String> {
    (cut.turn.abs() >= 0.05).then(|| say!(context, "trim-by-marks"))
}

/// What the hand does to a block that leans, before anything is cut.
fn pull_square(measures: Measures, context: Context<'_>) -> String {
    match measures.diagonals {
        Some((falling, rising)) if falling != rising => {
            let (key, by) = match falling < rising {
                true => ("pull-falling", rising - falling),
                false => ("pull-rising", falling - rising),
            };
            context.say(key, &[("by", context.length(by).into())])
        }
        _ => say!(context, "pull-square"),
    }
}

/// How many of the measured fours lean, and so tell nothing of the laps.
fn leaning_fours(throw: &Throw) -> usize {
    let fours = throw.measured.iter();
    let fours = fours.filter(|p| (p.cols, p.rows) == (2, 2) && leans(throw, **p));
    fours.count()
}

/// Mean, spread and lap of the fours measured so far, and what they say of the lap.
pub(super) fn summed(throw: &Throw, context: Context<'_>) -> (Vec<Figure>, String) {
    let none = || match leaning_fours(throw) {
        0 => say!(context, "summary-none"),
        n => say!(context, "summary-none-straight", n = n),
    };
    let Some(sum) = summary(&measured_fours(throw)) else {
        return (Vec::new(), none());
    };
    let figure = |key: &str, value| Figure {
        label: context.say(&format!("figure-{key}"), &[]),
        value,
    };
    // Pairs that lie beside the fours tell nothing of them.
    if drift::seen(throw).is_empty() {
        return (Vec::new(), none());
    }
    let plan = &throw.plan;
    let lap = sewn_lap(plan, plan.joining, plan.stitch, sum.mean);
    let [least, most] = [sum.least, sum.most].map(|side| context.length(side).text);
    let spread = match least == most {
        true => least,
        false => say!(context, "wedge", from = least, to = most),
    };
    let figures = vec![
        figure("mean", context.length(sum.mean)),
        figure("spread", context.plain(spread)),
        figure(
            match throw.plan.joining {
                Joining::Lapped => "mean-lap",
                _ => "mean-allowance",
            },
            context.length(lap),
        ),
    ];
    (figures, drifted(throw, &sum, context))
}

/// Tenths of a millimetre by which measured sides may differ (standard deviation) and still be
/// called as planned: our judgement, no source.
const UNEVEN: i64 = 20;

/// What the measured fours say about the lap, the cloth and the maker's hand.
fn drifted(throw: &Throw, sides: &Summary, context: Context<'_>) -> String {
    let found = drift::drift(&drift::seen(throw), context.ruler.step());
    let carried = throw.after.as_ref().filter(|h| h.drift.is_some());
    if let (DriftVerdict::TooFew, Some(heritage)) = (found.verdict, carried) {
        // The throw has too few fours of its own: the lap of the throw before is used.
        return lessons::drift_before(heritage, context);
    }
    let left_out = match leaning_fours(throw) {
        0 => None,
        n => Some(say!(context, "summary-leaning", n = n)),
    };
    let said = drift_said(throw, &found, sides, context);
    let said = std::iter::once(said).chain(left_out);
    context.words.list("sentences", said)
}

/// The same of the fours that do not lean.
fn drift_said(throw: &Throw, found: &Drift, sides: &Summary, context: Context<'_>) -> String {
    // A seam takes two allowances, so that each is off by half.
    let (joining, parts) = match throw.plan.joining {
        Joining::Lapped => ("lapped", 1),
        Joining::Seamed | Joining::Exposed => ("seamed", 2),
    };
    let size = |l: Length| context.length(if l < zero() { zero() - l } else { l });
    let mean = context.over_under(from_mm(found.mean));
    let n = found.count;
    if found.verdict != DriftVerdict::TooFew && found.sureness == Sureness::Guess {
        return say!(context, "drift-guess", n = n, mean = mean);
    }
    let mut said = match found.verdict {
        DriftVerdict::AsPlanned if sides.spread > tenths_of_mm(UNEVEN) => {
            return say!(
                context,
                "drift-scattered",
                n = n,
                mean = mean,
                least = context.length(sides.least),
                most = context.length(sides.most)
            );
        }
        DriftVerdict::TooFew => say!(context, "drift-too-few", n = n, mean = mean),
        DriftVerdict::AsPlanned => say!(context, "drift-as-planned", n = n, mean = mean),
        DriftVerdict::LapNarrow { by } => say!(
            context,
            "drift-narrow",
            n = n,
            by = size(by / parts),
            joining = joining
        ),
        DriftVerdict::LapWide { by } => say!(
            context,
            "drift-wide",
            n = n,
            by = size(by / parts),
            joining = joining
        ),
        DriftVerdict::Stretch { along } => {
            let way = match along {
                Along::Across => "across",
                Along::Down => "down",
                Along::Both => "both",
            };
            context.say(
                &format!("drift-stretch-{way}"),
                &[("n", n.into()), ("mean", mean.into())],
            )
        }
        DriftVerdict::Uneven => say!(context, "drift-uneven", n = n, mean = mean),
        DriftVerdict::Drifting { per_block } => {
            let key = if per_block > zero() {
                "drift-growing"
            } else {
                "drift-shrinking"
            };
            say!(context, key, n = n, by = size(per_block))
        }
    };
    if let Some(change) = found.change_mark {
        let key = if change > zero() {
            "drift-mark-wider"
        } else {
            "drift-mark-narrower"
        };
        said = context.words.list(
            "sentences",
            [
                said,
                say!(context, key, by = size(change / parts), joining = joining),
            ],
        );
    }
    if found.verdict != DriftVerdict::TooFew {
        let sure = match found.sureness {
            Sureness::Guess => say!(context, "sure-guess"),
            Sureness::Likely => say!(context, "sure-likely"),
            Sureness::Firm => say!(context, "sure-firm"),
        };
        said = context.words.list("sentences", [said, sure]);
    }
    said
}
