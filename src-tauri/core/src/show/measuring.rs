//! Measuring a block and choosing a trim size.

use super::{Lens, errors, head, lessons, names, off, pictures, refusal};
use crate::assembly::{Rect, Seam};
use crate::deed::{Action, Refusal, decide};
use crate::drift::{self, Along, Sureness, Verdict, drift};
use crate::journal::Journal;
use crate::measure::{Length, ParseError, from_mm, zero};
use crate::outline::{Fault, Measures, Outline, Sides};
use crate::squaring::{held, measured_sides, natural, sewn_lap, summary, trim};
use crate::throw::{Size, Throw};
use crate::trimming::{Choice, How, Save, choices, closing, shortfalls};
use crate::view::{
    Button, FieldProblem, Figure, MeasureView, OutlineTyped, Problem, TrimRow, TrimView,
};
use std::collections::BTreeSet;

/// What was typed for a block, and what it means.
pub(super) fn measure(
    journal: &Journal,
    piece: Rect,
    width: &str,
    height: &str,
    lens: Lens<'_>,
) -> Result<MeasureView, Problem> {
    let throw = journal.throw();
    let fail = |why: Refusal| refusal(&why, Some(throw), lens);
    if !throw.assembly().knows(piece) {
        return Err(fail(Refusal::NoSuchPiece(piece)));
    }
    if !throw.assembly().is_block(piece) {
        return Err(fail(Refusal::NotMeasurable(piece)));
    }
    let target = throw.target(piece);
    let mut faults = Vec::new();
    let size = off::typed_size(width, height, &mut faults, lens);
    let (mut verdict, mut figures, mut picture, mut keep) = (Vec::new(), Vec::new(), None, None);
    let mut short = false;
    if let Some(size) = size {
        let action = Action::Measure {
            piece,
            width: size.width,
            height: size.height,
        };
        match decide(Some(throw), &action) {
            Ok(events) => {
                keep = Some(Button {
                    label: say!(lens, "measure-keep"),
                    action,
                });
                let kept = throw.after(&events);
                short = is_open(&kept, piece);
                verdict = verdict_of(&kept, piece, size, "short-open-keep", lens);
                figures = figures_of(throw, piece, size, lens);
                picture = Some(pictures::measured(&kept, piece, size, lens));
            }
            Err(why) => {
                let field = match &why {
                    Refusal::Unlikely { given, .. }
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
    let (summary, summary_said) = summed(throw, lens);
    let next = throw.assembly().blocks().into_iter().find(|b| {
        *b != piece
            && throw.is_measurable(*b)
            && throw.work(*b).is_none_or(|w| w.measured.is_none())
    });
    Ok(MeasureView {
        head: head(journal, lens),
        piece,
        title: names::piece(throw, piece, lens),
        target: Figure {
            label: say!(lens, "figure-trim-to"),
            value: lens.by(target.width, target.height),
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

/// Whether nothing makes up yet for some of what a block is short.
fn is_open(throw: &Throw, block: Rect) -> bool {
    shortfalls(throw, block).iter().any(|s| s.open > zero())
}

/// What makes up for what a block is short, one way or both; `open` is said where
/// nothing does yet.
pub(super) fn made_up(
    throw: &Throw,
    block: Rect,
    seam: Option<Seam>,
    open: &str,
    lens: Lens<'_>,
) -> Vec<String> {
    let mut out = Vec::new();
    let found = shortfalls(throw, block).into_iter();
    for short in found.filter(|s| seam.is_none_or(|seam| seam == s.seam)) {
        for share in &short.shares {
            let key = share.side.key();
            let by = lens.length(share.by);
            out.push(match share.join {
                None => lens.say(&format!("short-edge-{key}"), &[("by", by.into())]),
                Some((other, lap)) => lens.say(
                    &format!("short-join-{key}"),
                    &[
                        ("by", by.into()),
                        ("piece", names::piece(throw, other, lens).into()),
                        ("lap", lens.length(lap).into()),
                    ],
                ),
            });
        }
        if short.open > zero() {
            out.push(lens.say(open, &[("by", lens.length(short.open).into())]));
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
    lens: Lens<'_>,
) -> Vec<String> {
    let target = throw.target(piece);
    let sides = [
        ("across", Seam::Upright, size.width, target.width),
        ("down", Seam::Level, size.height, target.height),
    ];
    let mut out = Vec::new();
    for (side, seam, measured, wanted) in sides {
        let cut = trim(measured, wanted, lens.ruler);
        let key = match cut.over {
            over if over == zero() => "exact",
            over if over > zero() && cut.before == zero() => "over-one-side",
            // What is left of the halves falls between the marks: all of it on one side.
            over if over > zero() && lens.ruler.nearest(cut.after) != cut.after => "over-rest",
            over if over > zero() => "over",
            _ => "under",
        };
        out.push(
            lens.say(
                &format!("verdict-{side}-{key}"),
                &[
                    (
                        "over",
                        lens.length(if cut.over < zero() {
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
                    ("before", lens.marked(cut.before).into()),
                    ("after", lens.marked(cut.after).into()),
                ],
            ),
        );
        out.extend(made_up(throw, piece, Some(seam), open, lens));
    }
    out
}

fn figures_of(throw: &Throw, piece: Rect, size: Size, lens: Lens<'_>) -> Vec<Figure> {
    let (target, should) = (throw.target(piece), natural(throw, piece));
    let mut out = Vec::new();
    let joining = throw.made(piece).joining;
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
        let label = |key: &str| lens.say(&format!("figure-{key}-{side}"), &[]);
        out.push(Figure {
            label: label("off"),
            value: lens.over_under(trim(measured, wanted, lens.ruler).over),
        });
        if squares == 2 {
            let lap = sewn_lap(&throw.plan, joining, measured);
            let meant = sewn_lap(&throw.plan, joining, planned);
            let value = lens.length(lap);
            let text = say!(
                lens,
                "lap-sewn",
                lap = value.text,
                meant = lens.length(meant).text
            );
            out.push(Figure {
                label: label("lap-sewn"),
                value: crate::view::Shown { text, ..value },
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
    lens: Lens<'_>,
) -> Result<MeasureView, Problem> {
    let throw = journal.throw();
    let mut view = measure(journal, piece, "", "", lens)?;
    let mut read = |field: &str, typed: &str| match lens.parse(typed) {
        Ok(length) => Some(length),
        Err(ParseError::Empty) => None,
        Err(error) => {
            let problem = errors::typed(&error, lens);
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
            let problem = errors::typed(&ParseError::Empty, lens);
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
    let action = Action::MeasureOutline { piece, measures };
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
                    Refusal::Outline(Fault::DoesNotClose { repeat, .. }) => {
                        errors::line_key(*repeat)
                    }
                    _ => "top",
                };
                let problem = refusal(&why, Some(throw), lens);
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
        label: say!(lens, "measure-keep"),
        action,
    });
    let skew = outline.skew();
    let degrees = lens.words.decimal(skew.abs(), 1);
    view.figures.push(Figure {
        label: say!(lens, "figure-skew"),
        value: lens.plain(match skew.abs() < 0.05 {
            true => say!(lens, "skew-none"),
            false => say!(lens, "skew", degrees = degrees),
        }),
    });
    view.figures.push(Figure {
        label: say!(lens, "figure-holds"),
        value: lens.by(held.width, held.height),
    });
    if !too_small {
        view.verdict.push(say!(
            lens,
            "outline-holds",
            target = lens.by(target.width, target.height)
        ));
    } else {
        view.verdict.push(say!(
            lens,
            "outline-short",
            target = lens.by(target.width, target.height),
            held = lens.by(held.width, held.height)
        ));
        if let Some(kept) = &kept {
            let said = made_up(kept, piece, None, "short-open-keep", lens);
            view.verdict.extend(said);
        }
    }
    // Where the ruler goes: the trim size, or as much of it as the block holds.
    let (w, h) = if too_small {
        (held.width, held.height)
    } else {
        (target.width, target.height)
    };
    let cut = outline.place(w, h, None).or_else(|| {
        let fit = outline.largest(w, h)?;
        outline.place(fit.width, fit.height, None)
    });
    if let Some(cut) = &cut {
        let names = ["top", "right", "bottom", "left"];
        for (side, (from, to)) in names.into_iter().zip(cut.trims) {
            let ends = [lens.marked(from).text, lens.marked(to).text];
            let text = match ends[0] == ends[1] {
                true => ends[0].clone(),
                false => say!(
                    lens,
                    "wedge",
                    from = ends[0].as_str(),
                    to = ends[1].as_str()
                ),
            };
            let label = lens.say(&format!("figure-trim-{side}"), &[]);
            view.figures.push(Figure {
                label,
                value: lens.plain(text),
            });
        }
        if cut.turn.abs() >= 0.05 {
            let key = if cut.turn > 0.0 {
                "turn-right"
            } else {
                "turn-left"
            };
            view.verdict.push(say!(
                lens,
                key,
                degrees = lens.words.decimal(cut.turn.abs(), 1)
            ));
        }
    }
    view.picture = Some(pictures::outlined(
        throw,
        piece,
        &outline,
        cut.as_ref(),
        lens,
    ));
    Ok(view)
}

/// Mean, spread and lap of the fours measured so far, and what they say of the lap.
pub(super) fn summed(throw: &Throw, lens: Lens<'_>) -> (Vec<Figure>, String) {
    let Some(sum) = summary(&measured_sides(throw)) else {
        return (Vec::new(), say!(lens, "summary-none"));
    };
    let figure = |key: &str, value| Figure {
        label: lens.say(&format!("figure-{key}"), &[]),
        value,
    };
    let lap = sewn_lap(&throw.plan, throw.plan.joining, sum.mean);
    let figures = vec![
        figure("mean", lens.length(sum.mean)),
        figure("spread", lens.length(sum.spread)),
        figure("mean-lap", lens.length(lap)),
    ];
    (figures, drifted(throw, lens))
}

/// What the measured fours say of lap, cloth and hand.
fn drifted(throw: &Throw, lens: Lens<'_>) -> String {
    let found = drift(&drift::seen(throw), lens.ruler.step());
    let carried = throw.after.as_ref().filter(|h| h.drift.is_some());
    if let (Verdict::TooFew, Some(heritage)) = (found.verdict, carried) {
        // Too few of its own: what the throw before had to say of the lap.
        return lessons::drift_before(heritage, lens);
    }
    let size = |l: Length| lens.length(if l < zero() { zero() - l } else { l });
    let mean = lens.over_under(from_mm(found.mean));
    let n = found.count;
    let guess = found.sureness == Sureness::Guess;
    let mut said = match found.verdict {
        Verdict::AsPlanned if guess => say!(lens, "drift-guess", n = n, mean = mean),
        Verdict::TooFew => say!(lens, "drift-too-few", n = n, mean = mean),
        Verdict::AsPlanned => say!(lens, "drift-as-planned", n = n, mean = mean),
        Verdict::LapNarrow { by } => say!(lens, "drift-narrow", n = n, by = size(by)),
        Verdict::LapWide { by } => say!(lens, "drift-wide", n = n, by = size(by)),
        Verdict::Stretch { along } => {
            let way = match along {
                Along::Across => "across",
                Along::Down => "down",
                Along::Both => "both",
            };
            lens.say(
                &format!("drift-stretch-{way}"),
                &[("n", n.into()), ("mean", mean.into())],
            )
        }
        Verdict::Uneven => say!(lens, "drift-uneven", n = n, mean = mean),
        Verdict::Drifting { per_block } => {
            let key = if per_block > zero() {
                "drift-growing"
            } else {
                "drift-shrinking"
            };
            say!(lens, key, n = n, by = size(per_block))
        }
    };
    if let Some(change) = found.change_mark {
        let key = if change > zero() {
            "drift-mark-wider"
        } else {
            "drift-mark-narrower"
        };
        said = lens
            .words
            .list("sentences", [said, say!(lens, key, by = size(change))]);
    }
    let told = guess && found.verdict == Verdict::AsPlanned;
    if found.verdict != Verdict::TooFew && !told {
        let sure = match found.sureness {
            Sureness::Guess => say!(lens, "sure-guess"),
            Sureness::Likely => say!(lens, "sure-likely"),
            Sureness::Firm => say!(lens, "sure-firm"),
        };
        said = lens.words.list("sentences", [said, sure]);
    }
    said
}

/// The trim sizes worth considering, with what each does to the finished size.
pub(super) fn trims(journal: &Journal, lens: Lens<'_>) -> TrimView {
    let throw = journal.throw();
    let found = choices(throw, lens.ruler);
    let best = found.first().map(|c| c.trim);
    let mut shown: Vec<&Choice> = found.iter().take(5).collect();
    // The size chosen now and the untrimmed one are always among them.
    for size in [throw.plan.target(), throw.plan.natural_four()] {
        shown.extend(
            found
                .iter()
                .find(|c| c.trim == size && !shown.iter().any(|s| s.trim == size)),
        );
    }
    shown.sort_by_key(|c| std::cmp::Reverse(c.trim));
    let rows = shown
        .iter()
        .map(|c| trim_row(throw, c, best, lens))
        .collect();
    let reason = found.first().map_or_else(Vec::new, |b| {
        let natural = throw.plan.natural_four();
        let now = found.iter().find(|c| c.trim == natural);
        let short = now.map_or(0, pieces_saved);
        let first = match (b.trim == natural, short) {
            (true, 0) => say!(lens, "reason-none-short", size = lens.length(b.trim)),
            (true, n) => say!(lens, "reason-keep", size = lens.length(b.trim), n = n),
            (false, n) => {
                say!(
                    lens,
                    "reason-smaller",
                    size = lens.length(b.trim),
                    natural = lens.length(natural),
                    n = n,
                    left = pieces_saved(b)
                )
            }
        };
        vec![first, say!(lens, "reason-cost", n = b.cost / 10)]
    });
    let off: Vec<_> = closing(throw)
        .into_iter()
        .filter(|(_, _, off)| *off != zero())
        .collect();
    let closing = match off.is_empty() {
        true => vec![say!(lens, "closing-all")],
        false => off
            .iter()
            .map(|(seam, n, off)| {
                let off = lens.over_under(*off);
                match seam {
                    Seam::Upright => {
                        say!(lens, "closing-row", n = names::row_of_fours(*n), off = off)
                    }
                    Seam::Level => say!(lens, "closing-column", n = n + 1, off = off),
                }
            })
            .collect(),
    };
    let (_, said) = summed(throw, lens);
    TrimView {
        head: head(journal, lens),
        rows,
        said,
        reason,
        closing,
        key: pictures::block_key(throw, lens),
        picture: pictures::blocks(throw, lens),
    }
}

fn trim_row(throw: &Throw, choice: &Choice, best: Option<Length>, lens: Lens<'_>) -> TrimRow {
    let size = choice.trim;
    let action = Action::ChooseTrim { trim: size };
    let allowed = decide(Some(throw), &action);
    let finished = throw.after(allowed.iter().flatten()).finished();
    let chosen = throw.plan.target() == size && allowed.is_err();
    let said = [
        match pieces_saved(choice) {
            0 => say!(lens, "trim-none-short"),
            n => say!(lens, "trim-short", n = n),
        },
        say!(lens, "trim-waste", waste = lens.length(choice.waste)),
    ];
    TrimRow {
        size: lens.length(size),
        finished: lens.by(finished.width, finished.height),
        said: lens.words.list("sentences", said),
        chosen,
        choose: allowed.is_ok().then(|| Button {
            label: say!(lens, "trim-choose", size = lens.length(size)),
            action,
        }),
        best: best == Some(size),
        saves: choice
            .saves
            .iter()
            .map(|s| save(throw, s, &choice.laps, lens))
            .collect(),
    }
}

/// How many pieces a choice leaves short; one may be so both ways.
fn pieces_saved(choice: &Choice) -> usize {
    let pieces: BTreeSet<Rect> = choice.saves.iter().map(|s| s.piece).collect();
    pieces.len()
}

/// How one short piece is saved, in a sentence.
fn save(throw: &Throw, save: &Save, laps: &[(Rect, Rect, Length)], lens: Lens<'_>) -> String {
    let way = if save.seam == Seam::Upright {
        "across"
    } else {
        "down"
    };
    let piece = names::piece(throw, save.piece, lens);
    let short = lens.length(save.short);
    let key = match save.how {
        How::Fits => return String::new(),
        How::Lapped { .. } => {
            let at: Vec<String> = laps
                .iter()
                .filter(|(a, b, _)| {
                    let other = if *a == save.piece {
                        b
                    } else if *b == save.piece {
                        a
                    } else {
                        return false;
                    };
                    (other.row == save.piece.row) == (save.seam == Seam::Upright)
                })
                .map(|(a, b, lap)| {
                    let other = if *a == save.piece { *b } else { *a };
                    say!(
                        lens,
                        "save-lap",
                        piece = names::piece(throw, other, lens),
                        lap = lens.length(*lap)
                    )
                })
                .collect();
            if at.is_empty() {
                "edge"
            } else {
                return say!(
                    lens,
                    format!("save-{way}-lapped"),
                    piece = piece,
                    short = short,
                    laps = lens.words.list("list-long", at)
                );
            }
        }
        How::Resewn => "resewn",
        How::Renewed => "renewed",
        How::LeftShort => "left",
    };
    say!(
        lens,
        format!("save-{way}-{key}"),
        piece = piece,
        short = short
    )
}
