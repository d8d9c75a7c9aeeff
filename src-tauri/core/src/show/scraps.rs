//! Test scraps, laps and stitches side by side.

use crate::cloth::weight::in_mm_thick;
use crate::command::{Command, decide};
use crate::faces::spread::thickest;
use crate::log::journal::Journal;
use crate::measure::{Length, ParseError, zero};
use crate::plan::scraps::{Scrap, ScrapVerdict, widest_stitch};
use crate::plan::{Advice, Joining, Plan, Stitch, fringe};
use crate::show::context::Context;
use crate::show::events::joined;
use crate::show::fields::by_needle;
use crate::show::parts::{Button, Choice, CompareRow, FieldProblem, Figure, Head, head};
use crate::show::picture::Picture;
use crate::show::plan::{self, StitchKind};
use crate::show::{change, errors, fields, pictures};
use crate::throw::Throw;
use crate::throw::stock::cloth_for;
use crate::types::TS;
use crate::words::Problem;
use serde::{Deserialize, Serialize};

/// What is typed for a test scrap.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ScrapTyped {
    /// How its edges are held together.
    pub joining: Joining,
    /// Its lap or allowance.
    pub lap: String,
    /// Which stitch.
    pub stitch: StitchKind,
    /// Twin spacing, distance of two rows, or stitch width.
    pub width: String,
    /// Opening of the plate; may be empty.
    pub opening: String,
}

/// One lap with what can be foreseen of it.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct LapColumn {
    /// What it is called.
    pub title: String,
    /// The join cut through, to scale.
    pub picture: Picture,
    /// Fringe, layers, thickness, clearance.
    pub figures: Vec<Figure>,
    /// What the maker should hear.
    pub advice: Vec<Problem>,
}

/// A scrap that was tried.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ScrapRow {
    /// What was tried.
    pub title: String,
    /// What came of it, a line each.
    pub lines: Vec<String>,
    /// Takes it for the plan.
    pub choose: Option<Button>,
    /// What taking it would do, before and after.
    pub compare: Vec<CompareRow>,
    /// What stays as it is and what is to be trimmed again, a sentence each.
    pub aside: Vec<String>,
}

/// Needle, stitch and lap, with test scraps.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ScrapsView {
    /// Common to all screens.
    pub head: Head,
    /// The fields, each measure with its unit spelled out.
    pub tidy: ScrapTyped,
    /// What is wrong, by field.
    pub faults: Vec<FieldProblem>,
    /// The plan's lap, and beside it the one typed where it is another.
    pub columns: Vec<LapColumn>,
    /// The scrap as typed, to keep with a verdict; none while something is wrong.
    pub scrap: Option<Scrap>,
    /// Keeps the plate's opening, where it was typed anew.
    pub plate: Option<Button>,
    /// Verdicts.
    pub verdicts: Vec<Choice<ScrapVerdict>>,
    /// Scraps tried, newest first.
    pub rows: Vec<ScrapRow>,
}

/// Needle, stitch and lap, with test scraps.
pub(super) fn scraps(
    journal: &Journal,
    typed: Option<&ScrapTyped>,
    context: Context<'_>,
) -> ScrapsView {
    let throw = journal.throw();
    let p = throw.plan;
    let standing = plan::draft_of(&p, context);
    let standing = ScrapTyped {
        joining: p.joining,
        lap: standing.lap,
        stitch: standing.stitch,
        width: standing.width,
        opening: throw
            .plate_opening
            .map_or_else(String::new, |o| fields::field(o, by_needle(context))),
    };
    let mut tidy = typed.unwrap_or(&standing).clone();
    let mut faults = Vec::new();
    let mut read = |field: &str, text: &mut String| {
        let context = match field {
            "width" | "opening" => by_needle(context),
            _ => context,
        };
        match context.parse(text) {
            Ok(length) => {
                *text = fields::field(length, context);
                Some(length)
            }
            Err(error) => {
                if error != ParseError::Empty || field != "opening" {
                    faults.push(FieldProblem {
                        field: field.into(),
                        problem: errors::typed(&error, context),
                    });
                }
                None
            }
        }
    };
    let lap = read("lap", &mut tidy.lap);
    let width = match tidy.stitch {
        StitchKind::Straight => Some(zero()),
        _ => read("width", &mut tidy.width),
    };
    let opening = read("opening", &mut tidy.opening).or(throw.plate_opening);
    let stitch = width.map(|width| tidy.stitch.of(width));
    let tried = lap.zip(stitch).map(|(lap, stitch)| Scrap {
        joining: tidy.joining,
        lap,
        stitch,
        verdict: ScrapVerdict::Right,
        note: String::new(),
    });
    let scrap =
        tried.filter(
            |s| match decide(Some(throw), &Command::TryScrap { scrap: s.clone() }) {
                Ok(_) => true,
                Err(why) => {
                    let problem = errors::rejection(&why, Some(throw), context);
                    faults.push(FieldProblem {
                        field: "lap".into(),
                        problem,
                    });
                    false
                }
            },
        );
    let mut columns = vec![column(
        throw,
        &p,
        say!(context, "scrap-plan"),
        opening,
        context,
    )];
    if let Some(scrap) = &scrap {
        let other = Plan {
            joining: scrap.joining,
            lap: scrap.lap,
            stitch: scrap.stitch,
            ..p
        };
        if other != p {
            columns.push(column(
                throw,
                &other,
                say!(context, "scrap-typed"),
                opening,
                context,
            ));
        }
    }
    let plate = opening
        .filter(|o| throw.plate_opening != Some(*o))
        .map(|opening| Button {
            label: say!(context, "scrap-keep-plate"),
            action: Command::SetPlate { opening },
        });
    let rows = throw
        .scraps
        .iter()
        .enumerate()
        .rev()
        .map(|(i, s)| scrap_row(journal, i, s, context))
        .collect();
    ScrapsView {
        head: head(journal, context),
        tidy,
        faults,
        columns,
        scrap,
        plate,
        verdicts: ScrapVerdict::ALL
            .into_iter()
            .map(|value| Choice {
                value,
                label: context.say(&format!("scrap-{}", value.key()), &[]),
            })
            .collect(),
        rows,
    }
}

pub(super) fn scrap_row(
    journal: &Journal,
    i: usize,
    scrap: &Scrap,
    context: Context<'_>,
) -> ScrapRow {
    let throw = journal.throw();
    let action = Command::UseScrap { scrap: i as u16 };
    let mut lines = vec![context.say(&format!("scrap-{}", scrap.verdict.key()), &[])];
    if let Some(fringe) = fringe(scrap.joining, scrap.lap, scrap.stitch) {
        lines.push(say!(
            context,
            "scrap-fringe",
            fringe = context.fringe(fringe)
        ));
    }
    if !scrap.note.is_empty() {
        lines.push(say!(context, "line-note", text = scrap.note.as_str()));
    }
    let events = decide(Some(throw), &action).ok();
    let changes = events
        .as_ref()
        .map(|e| change::compare(journal, e, context));
    let (compare, aside) = changes.unwrap_or_default();
    ScrapRow {
        title: say!(
            context,
            "scrap-title",
            joining = joined(scrap.joining),
            lap = context.length(scrap.lap),
            stitch = stitch(scrap.stitch, context)
        ),
        lines,
        choose: events.map(|_| Button {
            label: say!(context, "scrap-use"),
            action,
        }),
        compare,
        aside,
    }
}

pub(super) fn stitch(stitch: Stitch, context: Context<'_>) -> String {
    match stitch {
        Stitch::Straight => say!(context, "stitch-straight"),
        Stitch::Twin { spacing } => say!(context, "stitch-twin", width = context.needle(spacing)),
        Stitch::TwoRows { spacing } => {
            say!(context, "stitch-two-rows", width = context.needle(spacing))
        }
        Stitch::Zigzag { width } => say!(context, "stitch-zigzag", width = context.needle(width)),
    }
}

fn column(
    throw: &Throw,
    p: &Plan,
    title: String,
    opening: Option<Length>,
    context: Context<'_>,
) -> LapColumn {
    let mut figures = Vec::new();
    let mut add = |key: &str, value| {
        figures.push(Figure {
            label: context.say(&format!("figure-{key}"), &[]),
            value,
        });
    };
    add("lap", context.length(p.lap));
    add("stitch", context.plain(stitch(p.stitch, context)));
    match p.fringe() {
        Some(fringe) => add("fringe", context.fringe(fringe)),
        None => add("fringe", context.plain(say!(context, "no-fringe"))),
    }
    let (denim, cotton) = (cloth_for(throw, true), cloth_for(throw, false));
    let (lap, denims, crossing) = thickest(throw);
    // The thickest lap: its denims, more than two at a square of two halves, and what fabric lies
    // on them.
    let thick = |layers: u32, squares: u32| {
        let fabric = f64::from(layers.saturating_sub(squares));
        let mm = in_mm_thick(denim.thickness) * f64::from(squares)
            + in_mm_thick(cotton.thickness) * fabric;
        say!(
            context,
            "thick",
            n = context.words.decimal(mm, 1),
            layers = layers
        )
    };
    if lap > 0 {
        add("thick-lap", context.plain(thick(lap, denims)));
    }
    if crossing > 0 {
        add("thick-crossing", context.plain(thick(crossing, 4)));
    }
    if let Some(opening) = opening {
        let clear = widest_stitch(opening, p.stitch);
        add(
            "widest",
            clear.map_or_else(
                || context.plain(say!(context, "strikes")),
                |w| context.needle(w),
            ),
        );
    }
    // Of the lap alone: a scrap has no grid.
    let advice = p.advice().into_iter().filter(|a| *a != Advice::OddGrid);
    let advice = advice.map(|a| plan::advice(&a, context)).collect();
    LapColumn {
        title,
        picture: pictures::section(p, context),
        figures,
        advice,
    }
}
