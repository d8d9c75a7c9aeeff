//! Rejections and damaged files in words, from the one table of errors in the language file.

use super::{Context, names};
use crate::cloth::garments::PieceFault;
use crate::command::{
    LONGEST_CAPTION, LONGEST_NAME, LONGEST_NOTE, MOST_CLOTHS, MOST_PHOTOS, Rejection,
};
use crate::log::journal::FormatError;
use crate::measure::bounds::FigureOutOfBounds;
use crate::measure::outline::{Line, OutlineFault};
use crate::measure::{ParseError, eighth_inches, tenths_of_mm, zero};
use crate::plan::{MOST, PlanFault};
use crate::throw::Throw;
use crate::words::{Arg, Problem, Words};

/// A refusal in words; `throw` is what it was about.
pub fn rejection(refusal: &Rejection, throw: Option<&Throw>, context: Context<'_>) -> Problem {
    let name = |piece| match throw {
        Some(throw) => names::piece(throw, piece, context),
        None => names::square(piece),
    };
    let task = |task: crate::throw::tasks::Task| context.say(&format!("task-{}", task.key()), &[]);
    let (code, args): (&str, Vec<(&str, Arg)>) = match refusal {
        Rejection::Beginning => ("beginning", vec![]),
        Rejection::Plan(fault) => return plan_fault(*fault, context),
        Rejection::Name => ("name", vec![("most", LONGEST_NAME.into())]),
        Rejection::Words => ("words", vec![("most", LONGEST_NOTE.into())]),
        Rejection::NoSuchPiece(piece) => (
            "no-such-piece",
            vec![("piece", names::square(*piece).into())],
        ),
        Rejection::Nothing => ("nothing", vec![]),
        Rejection::NotItsTask { piece, task: t } => (
            "not-its-task",
            vec![("piece", name(*piece).into()), ("task", task(*t).into())],
        ),
        Rejection::First {
            task: t,
            piece,
            before,
            needs,
        } => (
            "first",
            vec![
                ("task", task(*t).into()),
                ("piece", name(*piece).into()),
                ("before", name(*before).into()),
                ("needs", task(*needs).into()),
            ],
        ),
        Rejection::AlreadyCut { squares } => ("already-cut", vec![("squares", (*squares).into())]),
        Rejection::DenimCut(piece) => ("denim-cut", vec![("piece", name(*piece).into())]),
        Rejection::CutLarger => ("cut-larger", vec![]),
        Rejection::PackSmall {
            side,
            wanted,
            fabric,
            most,
        } => (
            if *fabric {
                "pack-small"
            } else {
                "pack-small-denim"
            },
            vec![
                ("side", context.length(*side).into()),
                ("wanted", context.length(*wanted).into()),
                ("round", context.length((*wanted - *side) / 2).into()),
                ("most", context.length(context.ruler.at_most(*most)).into()),
            ],
        ),
        Rejection::Edges => ("edges", vec![]),
        Rejection::PackMixed(print) => (
            "pack-mixed",
            vec![(
                "print",
                throw
                    .and_then(|t| t.prints.get(usize::from(*print)))
                    .map_or("", |p| p.name.as_str())
                    .into(),
            )],
        ),
        Rejection::SameName(name) => ("same-name", vec![("name", name.as_str().into())]),
        Rejection::PatchCaught { side, most } => (
            "patch-caught",
            vec![
                ("side", context.length(*side).into()),
                ("most", context.length(context.ruler.at_most(*most)).into()),
            ],
        ),
        Rejection::Pieced => ("pieced", vec![]),
        Rejection::AlreadyMade(piece) => ("already-made", vec![("piece", name(*piece).into())]),
        Rejection::Joined(piece) => ("joined", vec![("piece", name(*piece).into())]),
        Rejection::Glued(piece) => ("glued", vec![("piece", name(*piece).into())]),
        Rejection::Stock { print, have } => {
            let print = throw.and_then(|t| t.prints.get(usize::from(*print)));
            let print = print.map_or_else(String::new, |p| p.name.clone());
            (
                "stock",
                vec![("print", print.into()), ("have", (*have).into())],
            )
        }
        Rejection::Cloth => ("cloth", vec![("most", MOST_CLOTHS.into())]),
        Rejection::Spares { have } => ("spares", vec![("have", (*have).into())]),
        Rejection::NotMeasurable(piece) => ("not-measurable", vec![("piece", name(*piece).into())]),
        Rejection::Pile => ("pile", vec![]),
        Rejection::CutUp => ("cut-up", vec![]),
        Rejection::Piece(fault) => return piece_fault(*fault, context),
        Rejection::ManySquares { most } => ("many-squares", vec![("most", (*most).into())]),
        Rejection::Weight => ("weight", vec![]),
        Rejection::Scrap => ("scrap", vec![]),
        Rejection::NotWhole => ("not-whole", vec![]),
        Rejection::Unlikely { given, planned } => (
            "unlikely",
            vec![
                ("given", context.length(*given).into()),
                ("planned", context.length(*planned).into()),
            ],
        ),
        Rejection::NotCut(piece) => ("not-cut", vec![("piece", name(*piece).into())]),
        Rejection::Outline(OutlineFault::Impossible) => ("outline-impossible", vec![]),
        Rejection::Outline(OutlineFault::DoesNotClose { by, repeat }) => {
            let line = context.say(&format!("outline-{}", line_key(*repeat)), &[]);
            let by = &if *by < zero() { zero() - *by } else { *by };
            (
                "outline-open",
                vec![("by", context.length(*by).into()), ("line", line.into())],
            )
        }
        Rejection::NothingToUnpick(piece) => {
            ("nothing-to-unpick", vec![("piece", name(*piece).into())])
        }
        Rejection::LapTooNarrow { lap, least } => (
            "lap-too-narrow",
            vec![
                ("lap", context.length(*lap).into()),
                ("least", context.length(*least).into()),
            ],
        ),
        Rejection::NotNeighbours(a, b) => (
            "not-neighbours",
            vec![("a", name(*a).into()), ("b", name(*b).into())],
        ),
        Rejection::Covered(piece) => ("covered", vec![("piece", name(*piece).into())]),
        Rejection::NotSwappable(a, b) => (
            "not-swappable",
            vec![("a", name(*a).into()), ("b", name(*b).into())],
        ),
        Rejection::Wishes { most } => ("wishes", vec![("most", (*most).into())]),
        Rejection::Pinned(piece) => ("pinned", vec![("piece", name(*piece).into())]),
        Rejection::NotTurnable(piece) => ("not-turnable", vec![("piece", name(*piece).into())]),
        Rejection::Layout(piece) => ("layout", vec![("piece", name(*piece).into())]),
        Rejection::Caption => ("caption", vec![("most", LONGEST_CAPTION.into())]),
        Rejection::PicturedAlready => ("pictured-already", vec![]),
        Rejection::Photo => ("photo", vec![("most", MOST_PHOTOS.into())]),
        Rejection::NothingToUndo => ("nothing-to-undo", vec![]),
        Rejection::NothingToRedo => ("nothing-to-redo", vec![]),
    };
    context.words.problem(code, &args)
}

/// The name of a side or diagonal in the language files and the measuring fields.
pub(super) fn line_key(line: Line) -> &'static str {
    match line {
        Line::Top => "top",
        Line::Right => "right",
        Line::Bottom => "bottom",
        Line::Left => "left",
        Line::Falling => "falling",
        Line::Rising => "rising",
    }
}

/// A fault of the plan in words.
pub(super) fn plan_fault(fault: PlanFault, context: Context<'_>) -> Problem {
    use crate::plan::{longest_side, longest_stitch, shortest_side, shortest_stitch};
    let (code, args): (&str, Vec<(&str, Arg)>) = match fault {
        PlanFault::Side => (
            "plan-side",
            vec![
                ("least", context.length(shortest_side()).into()),
                ("most", context.length(longest_side()).into()),
            ],
        ),
        PlanFault::Grid => ("plan-grid", vec![("most", MOST.into())]),
        PlanFault::Lap => {
            let usual = context.about(eighth_inches(4), tenths_of_mm(130));
            ("plan-lap", vec![("usual", usual.into())])
        }
        PlanFault::Between => ("plan-between", vec![]),
        PlanFault::StitchTooWide => ("plan-stitch", vec![]),
        PlanFault::StitchLength => (
            "plan-stitch-length",
            vec![
                ("least", context.needle(shortest_stitch()).into()),
                ("most", context.needle(longest_stitch()).into()),
            ],
        ),
        PlanFault::Trim => ("plan-trim", vec![]),
        PlanFault::Binding => {
            let least = context.about(eighth_inches(4), tenths_of_mm(100));
            ("plan-binding", vec![("least", least.into())])
        }
        PlanFault::Counts => ("plan-counts", vec![]),
    };
    context.words.problem(code, &args)
}

/// A fault of an outline in words.
pub(super) fn piece_fault(fault: PieceFault, context: Context<'_>) -> Problem {
    let (code, n) = match fault {
        PieceFault::TooFewStations => ("piece-few", 0),
        PieceFault::TooMany => ("piece-many", 0),
        PieceFault::StationTooFar(n) => ("piece-far", n),
        PieceFault::OutOfOrder(n) => ("piece-order", n),
        PieceFault::Crossing(n) => ("piece-crossing", n),
        PieceFault::NoWidth => ("piece-no-width", 0),
        PieceFault::NoWidthAt(n) => ("piece-no-width-at", n),
        PieceFault::TooWide(n) => ("piece-too-wide", n),
        PieceFault::ZoneTooFar(n) => ("piece-zone-far", n),
        PieceFault::EmptyZone(n) => ("piece-zone-empty", n),
        PieceFault::ZoneOutside(n) => ("piece-zone-outside", n),
    };
    context.words.problem(code, &[("n", (n + 1).into())])
}

/// A typed length that was not taken, in words.
pub(super) fn typed(error: &ParseError, context: Context<'_>) -> Problem {
    let system = context.ruler.system;
    let example = match system {
        crate::measure::System::Inch => say!(context, "example-inch"),
        crate::measure::System::Metric => say!(context, "example-metric"),
    };
    let mut args: Vec<(&str, Arg)> = vec![("example", example.into())];
    let code = match error {
        ParseError::Empty => "typed-empty",
        ParseError::NotALength => "typed-not-a-length",
        ParseError::Negative => "typed-negative",
        ParseError::Ambiguous => "typed-ambiguous",
        ParseError::OffTheMarks { nearest } => {
            let inches = crate::measure::Ruler {
                system: crate::measure::System::Inch,
                ..context.ruler
            };
            args.push(("nearest", context.words.length(*nearest, inches).into()));
            "typed-off-the-marks"
        }
        ParseError::TooLong => "typed-too-long",
        ParseError::UnknownUnit(unit) => {
            args.push(("unit", unit.clone().into()));
            "typed-unknown-unit"
        }
    };
    context.words.problem(code, &args)
}

/// A figure out of bounds that the window sent, in words.
pub fn out_of_bounds(figure: &FigureOutOfBounds, words: &Words) -> Problem {
    words.problem(
        "beyond",
        &[
            ("field", figure.field.as_str().into()),
            ("figure", figure.figure.as_str().into()),
        ],
    )
}

/// Damage to a throw file in words.
pub fn format_error(damage: &FormatError, context: Context<'_>) -> Problem {
    let (code, args): (&str, Vec<(&str, Arg)>) = match damage {
        FormatError::NotAThrow => ("file-not-a-throw", vec![]),
        FormatError::Newer { version } => ("file-newer", vec![("version", (*version).into())]),
        FormatError::Line { line } => ("file-line", vec![("line", (*line).into())]),
        FormatError::OutOfOrder { line } => ("file-out-of-order", vec![("line", (*line).into())]),
        FormatError::Empty => ("file-empty", vec![]),
        FormatError::Unknown { line } => ("file-unknown", vec![("line", (*line).into())]),
        FormatError::Absurd { line } => ("file-absurd", vec![("line", (*line).into())]),
        FormatError::TooMuch { line } => ("file-too-much", vec![("line", (*line).into())]),
        FormatError::FigureOutOfBounds { line, figure } => (
            "file-beyond",
            vec![
                ("line", (*line).into()),
                ("field", figure.field.as_str().into()),
                ("figure", figure.figure.as_str().into()),
            ],
        ),
    };
    context.words.problem(code, &args)
}
