//! Lengths as typed into fields.

use crate::measure::{Length, MetricUnit, NM_PER_INCH, Ruler, System, in_nm, read_exact};
use crate::show::context::Context;
use crate::show::errors;
use crate::show::parts::FieldProblem;
use crate::throw::Size;

/// Read a width and a height; what is wrong goes to `faults`, nothing typed is no fault.
pub(super) fn typed_size(
    width: &str,
    height: &str,
    faults: &mut Vec<FieldProblem>,
    context: Context<'_>,
) -> Option<Size> {
    let mut read = |field: &str, typed: &str| match context.parse(typed) {
        Ok(length) => Some(length),
        Err(crate::measure::ParseError::Empty) => None,
        Err(error) => {
            faults.push(FieldProblem {
                field: field.into(),
                problem: errors::typed(&error, context),
            });
            None
        }
    };
    let (width, height) = (read("width", width), read("height", height));
    Some(Size {
        width: width?,
        height: height?,
    })
}

/// An inch with decimals as it was typed, `16.3 in`, on an inch ruler.
fn decimal_inches(length: Length, context: Context<'_>) -> Option<String> {
    const PLACES: usize = 4;
    let tenths_of_mil = in_nm(length).checked_mul(10_i64.pow(PLACES as u32))?;
    if context.ruler.system != System::Inch || tenths_of_mil % NM_PER_INCH != 0 {
        return None;
    }
    let count = tenths_of_mil / NM_PER_INCH;
    let text = context.words.decimal(count as f64 / 1e4, PLACES);
    let point = context.words.language().point;
    let number = text.trim_end_matches('0').trim_end_matches(point);
    Some(format!("{number} {}", context.words.unit("in")))
}

/// A length for a field: exact, with its unit, in the current system if that holds it.
pub(super) fn field(length: Length, context: Context<'_>) -> String {
    use crate::measure::{Fraction, MetricUnit};
    let own = context.ruler;
    let fine = Ruler {
        fraction: Fraction::SixtyFourth,
        ..own
    };
    let other = match own.system {
        System::Inch => Ruler {
            system: System::Metric,
            metric: MetricUnit::Mm,
            ..own
        },
        System::Metric => Ruler {
            system: System::Inch,
            ..fine
        },
    };
    let shows = |rulers: &[Ruler]| {
        let exact = rulers.iter().find(|r| !read_exact(length, **r).rounded)?;
        Some(
            context
                .words
                .exact(length, *exact)
                .text
                .replace('\u{a0}', " "),
        )
    };
    let shown = shows(&[own, fine])
        .or_else(|| decimal_inches(length, context))
        .or_else(|| shows(&[other]));
    match shown {
        Some(text) => text,
        // Neither ruler holds it (a mixture of both): whole nanometres, as millimetres.
        None => {
            let text = context.words.decimal(crate::measure::in_mm(length), 6);
            let point = context.words.language().point;
            let number = text.trim_end_matches('0').trim_end_matches(point);
            format!("{number} {}", context.words.unit("mm"))
        }
    }
}

/// Needles, stitches and plates are marked in millimetres everywhere: they are typed so too, as
/// [`Context::needle`] shows them.
pub(super) fn by_needle(context: Context<'_>) -> Context<'_> {
    let ruler = Ruler {
        system: System::Metric,
        metric: MetricUnit::Mm,
        ..context.ruler
    };
    Context { ruler, ..context }
}
