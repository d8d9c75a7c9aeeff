//! Measuring a block and choosing a trim size.

use super::{Lens, errors, head, names, pictures, refusal};
use crate::assembly::Rect;
use crate::deed::{Action, Refusal, decide};
use crate::journal::Journal;
use crate::measure::{Length, in_nm, nm, parse, zero};
use crate::plan::Plan;
use crate::squaring::{candidates, measured_sides, natural, sewn_lap, summary, trim};
use crate::tasks::Task;
use crate::throw::{Size, Throw};
use crate::view::{Button, FieldProblem, Figure, MeasureView, Problem, TrimRow, TrimView};

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
    let mut read = |field: &str, typed: &str| match parse(typed, lens.ruler) {
        Ok(length) => Some(length),
        Err(crate::measure::ParseError::Empty) => None,
        Err(error) => {
            faults.push(FieldProblem {
                field: field.into(),
                problem: errors::typed(&error, lens),
            });
            None
        }
    };
    let size = match (read("width", width), read("height", height)) {
        (Some(width), Some(height)) => Some(Size { width, height }),
        _ => None,
    };
    let (mut verdict, mut figures, mut picture, mut keep) = (Vec::new(), Vec::new(), None, None);
    if let Some(size) = size {
        let action = Action::Measure {
            piece,
            width: size.width,
            height: size.height,
        };
        match decide(Some(throw), &action) {
            Ok(_) => {
                keep = Some(Button {
                    label: say!(lens, "measure-keep"),
                    action,
                });
                verdict = verdict_of(throw, piece, size, lens);
                figures = figures_of(throw, piece, size, lens);
                picture = Some(pictures::measured(throw, piece, size, lens));
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
        *b != piece && measurable(throw, *b) && throw.work(*b).is_none_or(|w| w.measured.is_none())
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
    })
}

fn measurable(throw: &Throw, block: Rect) -> bool {
    throw.assembly().is_block(block)
        && throw.has(block, Task::Stitch)
        && !throw.has(block, Task::SquareUp)
}

fn verdict_of(throw: &Throw, piece: Rect, size: Size, lens: Lens<'_>) -> Vec<String> {
    let target = throw.target(piece);
    let sides = [
        ("across", size.width, target.width),
        ("down", size.height, target.height),
    ];
    let mut out = Vec::new();
    for (side, measured, wanted) in sides {
        let cut = trim(measured, wanted, lens.ruler);
        let key = match cut.over {
            over if over == zero() => "exact",
            over if over > zero() && cut.before == zero() => "over-one-side",
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
                    ("before", lens.length(cut.before).into()),
                    ("after", lens.length(cut.after).into()),
                ],
            ),
        );
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

/// Count, mean, spread and lap of the fours measured so far.
fn summed(throw: &Throw, lens: Lens<'_>) -> (Vec<Figure>, String) {
    let Some(sum) = summary(&measured_sides(throw)) else {
        return (Vec::new(), say!(lens, "summary-none"));
    };
    let figure = |key: &str, value| Figure {
        label: lens.say(&format!("figure-{key}"), &[]),
        value,
    };
    let lap = sewn_lap(&throw.plan, throw.plan.joining, sum.mean);
    let blocks = throw.measured.len();
    let figures = vec![
        figure("mean", lens.length(sum.mean)),
        figure("spread", lens.length(sum.spread)),
        figure("mean-lap", lens.length(lap)),
    ];
    let off = sum.mean - throw.plan.natural_four();
    let key = match blocks {
        0..3 => "summary-few",
        _ if off > lens.ruler.step() => "summary-stretch",
        _ if off < zero() - lens.ruler.step() => "summary-tight",
        _ => "summary-true",
    };
    (
        figures,
        say!(lens, key, n = blocks, off = lens.over_under(off)),
    )
}

/// The trim sizes worth considering, with what each does to the finished size.
pub(super) fn trims(journal: &Journal, lens: Lens<'_>) -> TrimView {
    let throw = journal.throw();
    let rows = candidates(throw, lens.ruler)
        .into_iter()
        .map(|size| {
            let trim = (size != throw.plan.natural_four()).then_some(size);
            let plan = Plan { trim, ..throw.plan };
            let action = Action::ChangePlan { plan };
            let allowed = decide(Some(throw), &action);
            let mut after = throw.clone();
            for event in allowed.iter().flatten() {
                after.apply(event, lens.now);
            }
            let finished = after.finished();
            let (short, waste) = cost(throw, size);
            let chosen = throw.plan.target() == size;
            let said = [
                match short {
                    0 => say!(lens, "trim-none-short"),
                    n => say!(lens, "trim-short", n = n),
                },
                say!(lens, "trim-waste", waste = lens.length(waste)),
            ];
            TrimRow {
                size: lens.length(size),
                finished: lens.by(finished.width, finished.height),
                said: said.join(" "),
                chosen,
                choose: (!chosen && allowed.is_ok()).then(|| Button {
                    label: say!(lens, "trim-choose", size = lens.length(size)),
                    action,
                }),
            }
        })
        .collect();
    let (_, said) = summed(throw, lens);
    TrimView {
        head: head(journal, lens),
        rows,
        said,
    }
}

/// Measured blocks that fall short of a trim size, and the mean strip cut from a side
/// of a measured block.
fn cost(throw: &Throw, size: Length) -> (usize, Length) {
    let short = |p: &&Rect| {
        let measured = throw.work(**p).and_then(|w| w.measured);
        measured
            .is_some_and(|m| (p.cols == 2 && m.width < size) || (p.rows == 2 && m.height < size))
    };
    let sides = measured_sides(throw);
    let over: i64 = sides.iter().map(|m| in_nm(*m - size).max(0)).sum();
    let waste = nm(over / sides.len().max(1) as i64);
    (throw.measured.iter().filter(short).count(), waste)
}
