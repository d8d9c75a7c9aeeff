//! Refusals and damage in words, from the one table of errors in the language file.

use super::{Lens, names};
use crate::cloth::garments::PieceFault;
use crate::command::{
    LONGEST_CAPTION, LONGEST_NAME, LONGEST_NOTE, MOST_CLOTHS, MOST_PHOTOS, Refusal,
};
use crate::log::journal::Damage;
use crate::measure::bounds::FigureOutOfBounds;
use crate::measure::outline::{Fault, Line};
use crate::measure::{ParseError, zero};
use crate::plan::{MOST, PlanFault};
use crate::throw::Throw;
use crate::words::{Arg, Problem, Words};

/// A refusal in words; `throw` is what it was about.
pub fn refusal(refusal: &Refusal, throw: Option<&Throw>, lens: Lens<'_>) -> Problem {
    let name = |piece| match throw {
        Some(throw) => names::piece(throw, piece, lens),
        None => names::square(piece),
    };
    let task = |task: crate::throw::tasks::Task| lens.say(&format!("task-{}", task.key()), &[]);
    let (code, args): (&str, Vec<(&str, Arg)>) = match refusal {
        Refusal::Beginning => ("beginning", vec![]),
        Refusal::Plan(fault) => return plan_fault(*fault, lens),
        Refusal::Name => ("name", vec![("most", LONGEST_NAME.into())]),
        Refusal::Words => ("words", vec![("most", LONGEST_NOTE.into())]),
        Refusal::NoSuchPiece(piece) => (
            "no-such-piece",
            vec![("piece", names::square(*piece).into())],
        ),
        Refusal::Nothing => ("nothing", vec![]),
        Refusal::NotItsTask { piece, task: t } => (
            "not-its-task",
            vec![("piece", name(*piece).into()), ("task", task(*t).into())],
        ),
        Refusal::First {
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
        Refusal::AlreadyCut { squares } => ("already-cut", vec![("squares", (*squares).into())]),
        Refusal::AlreadyMade(piece) => ("already-made", vec![("piece", name(*piece).into())]),
        Refusal::Joined(piece) => ("joined", vec![("piece", name(*piece).into())]),
        Refusal::Glued(piece) => ("glued", vec![("piece", name(*piece).into())]),
        Refusal::Stock { print, have } => {
            let print = throw.and_then(|t| t.prints.get(usize::from(*print)));
            let print = print.map_or_else(String::new, |p| p.name.clone());
            (
                "stock",
                vec![("print", print.into()), ("have", (*have).into())],
            )
        }
        Refusal::Cloth => ("cloth", vec![("most", MOST_CLOTHS.into())]),
        Refusal::Spares { have } => ("spares", vec![("have", (*have).into())]),
        Refusal::NotMeasurable(piece) => ("not-measurable", vec![("piece", name(*piece).into())]),
        Refusal::Pile => ("pile", vec![]),
        Refusal::CutUp => ("cut-up", vec![]),
        Refusal::Piece(fault) => return piece_fault(*fault, lens),
        Refusal::ManySquares { most } => ("many-squares", vec![("most", (*most).into())]),
        Refusal::Weight => ("weight", vec![]),
        Refusal::Scrap => ("scrap", vec![]),
        Refusal::NotWhole => ("not-whole", vec![]),
        Refusal::Unlikely { given, planned } => (
            "unlikely",
            vec![
                ("given", lens.length(*given).into()),
                ("planned", lens.length(*planned).into()),
            ],
        ),
        Refusal::NotCut(piece) => ("not-cut", vec![("piece", name(*piece).into())]),
        Refusal::Outline(Fault::Impossible) => ("outline-impossible", vec![]),
        Refusal::Outline(Fault::DoesNotClose { by, repeat }) => {
            let line = lens.say(&format!("outline-{}", line_key(*repeat)), &[]);
            let by = &if *by < zero() { zero() - *by } else { *by };
            (
                "outline-open",
                vec![("by", lens.length(*by).into()), ("line", line.into())],
            )
        }
        Refusal::NothingToUnpick(piece) => {
            ("nothing-to-unpick", vec![("piece", name(*piece).into())])
        }
        Refusal::LapTooNarrow { lap, least } => (
            "lap-too-narrow",
            vec![
                ("lap", lens.length(*lap).into()),
                ("least", lens.length(*least).into()),
            ],
        ),
        Refusal::NotNeighbours(a, b) => (
            "not-neighbours",
            vec![("a", name(*a).into()), ("b", name(*b).into())],
        ),
        Refusal::Covered(piece) => ("covered", vec![("piece", name(*piece).into())]),
        Refusal::NotSwappable(a, b) => (
            "not-swappable",
            vec![("a", name(*a).into()), ("b", name(*b).into())],
        ),
        Refusal::Wishes { most } => ("wishes", vec![("most", (*most).into())]),
        Refusal::Pinned(piece) => ("pinned", vec![("piece", name(*piece).into())]),
        Refusal::NotTurnable(piece) => ("not-turnable", vec![("piece", name(*piece).into())]),
        Refusal::Layout(piece) => ("layout", vec![("piece", name(*piece).into())]),
        Refusal::Caption => ("caption", vec![("most", LONGEST_CAPTION.into())]),
        Refusal::PicturedAlready => ("pictured-already", vec![]),
        Refusal::Photo => ("photo", vec![("most", MOST_PHOTOS.into())]),
        Refusal::NothingToUndo => ("nothing-to-undo", vec![]),
        Refusal::NothingToRedo => ("nothing-to-redo", vec![]),
    };
    lens.words.problem(code, &args)
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
pub(super) fn plan_fault(fault: PlanFault, lens: Lens<'_>) -> Problem {
    use crate::plan::{longest_side, shortest_side};
    let (code, args): (&str, Vec<(&str, Arg)>) = match fault {
        PlanFault::Side => (
            "plan-side",
            vec![
                ("least", lens.length(shortest_side()).into()),
                ("most", lens.length(longest_side()).into()),
            ],
        ),
        PlanFault::Grid => ("plan-grid", vec![("most", MOST.into())]),
        PlanFault::Lap => ("plan-lap", vec![]),
        PlanFault::Between => ("plan-between", vec![]),
        PlanFault::StitchTooWide => ("plan-stitch", vec![]),
        PlanFault::Trim => ("plan-trim", vec![]),
        PlanFault::Binding => ("plan-binding", vec![]),
        PlanFault::Counts => ("plan-counts", vec![]),
    };
    lens.words.problem(code, &args)
}

/// A fault of an outline in words.
pub(super) fn piece_fault(fault: PieceFault, lens: Lens<'_>) -> Problem {
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
    lens.words.problem(code, &[("n", (n + 1).into())])
}

/// A typed length that was not taken, in words.
pub(super) fn typed(error: &ParseError, lens: Lens<'_>) -> Problem {
    let system = lens.ruler.system;
    let example = match system {
        crate::measure::System::Inch => say!(lens, "example-inch"),
        crate::measure::System::Metric => say!(lens, "example-metric"),
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
                ..lens.ruler
            };
            args.push(("nearest", lens.words.length(*nearest, inches).into()));
            "typed-off-the-marks"
        }
        ParseError::TooLong => "typed-too-long",
        ParseError::UnknownUnit(unit) => {
            args.push(("unit", unit.clone().into()));
            "typed-unknown-unit"
        }
    };
    lens.words.problem(code, &args)
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
pub fn damage(damage: &Damage, lens: Lens<'_>) -> Problem {
    let (code, args): (&str, Vec<(&str, Arg)>) = match damage {
        Damage::NotAThrow => ("file-not-a-throw", vec![]),
        Damage::Newer { version } => ("file-newer", vec![("version", (*version).into())]),
        Damage::Line { line } => ("file-line", vec![("line", (*line).into())]),
        Damage::OutOfOrder { line } => ("file-out-of-order", vec![("line", (*line).into())]),
        Damage::Empty => ("file-empty", vec![]),
        Damage::Unknown { line } => ("file-unknown", vec![("line", (*line).into())]),
        Damage::Absurd { line } => ("file-absurd", vec![("line", (*line).into())]),
        Damage::FigureOutOfBounds { line, figure } => (
            "file-beyond",
            vec![
                ("line", (*line).into()),
                ("field", figure.field.as_str().into()),
                ("figure", figure.figure.as_str().into()),
            ],
        ),
    };
    lens.words.problem(code, &args)
}
