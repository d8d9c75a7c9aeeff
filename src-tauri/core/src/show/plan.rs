//! The plan as typed fields, with its figures, doubts and pictures; and grids.

use super::{Lens, errors, head, lessons, off, pictures};
use crate::assembly::{Assembly, Kind, Rect};
use crate::deed::{Action, decide};
use crate::faces::{Cover, Denim, Print, layers};
use crate::grids;
use crate::heritage;
use crate::journal::Journal;
use crate::measure::{Length, NM_PER_INCH, Ruler, System, in_nm, read, zero};
use crate::plan::{Advice, Binding, Plan, Stitch};
use crate::throw::{Size, Throw};
use crate::view::{
    Button, FieldProblem, Figure, GridRow, GridWish, GridsView, PlanDraft, PlanView, Problem,
    StitchKind,
};

/// An inch with decimals as it was typed, `16.3 in`, on an inch ruler.
fn decimal_inches(length: Length, lens: Lens<'_>) -> Option<String> {
    const PLACES: usize = 4;
    let tenths_of_mil = in_nm(length).checked_mul(10_i64.pow(PLACES as u32))?;
    if lens.ruler.system != System::Inch || tenths_of_mil % NM_PER_INCH != 0 {
        return None;
    }
    let count = tenths_of_mil / NM_PER_INCH;
    let text = lens.words.decimal(count as f64 / 1e4, PLACES);
    let point = lens.words.language().point;
    let number = text.trim_end_matches('0').trim_end_matches(point);
    Some(format!("{number} {}", lens.words.unit("in")))
}

/// A length for a field: exact, with its unit, in the current system if that holds it.
pub(super) fn field(length: Length, lens: Lens<'_>) -> String {
    use crate::measure::{Fraction, MetricUnit};
    let own = lens.ruler;
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
        let exact = rulers.iter().find(|r| !read(length, **r).rounded)?;
        Some(
            lens.words
                .single(length, *exact)
                .text
                .replace('\u{a0}', " "),
        )
    };
    let shown = shows(&[own, fine])
        .or_else(|| decimal_inches(length, lens))
        .or_else(|| shows(&[other]));
    match shown {
        Some(text) => text,
        // Neither ruler holds it (a mixture of both): whole nanometres, as millimetres.
        None => {
            let text = lens.words.decimal(crate::measure::in_mm(length), 6);
            let point = lens.words.language().point;
            let number = text.trim_end_matches('0').trim_end_matches(point);
            format!("{number} {}", lens.words.unit("mm"))
        }
    }
}

/// Needles and stitches are marked in millimetres: who works in centimetres types them so too.
fn by_needle(lens: Lens<'_>) -> Lens<'_> {
    let ruler = Ruler {
        metric: crate::measure::MetricUnit::Mm,
        ..lens.ruler
    };
    Lens { ruler, ..lens }
}

/// A plan as typed fields.
pub fn draft_of(plan: &Plan, lens: Lens<'_>) -> PlanDraft {
    let needle = by_needle(lens);
    let (stitch, width) = match plan.stitch {
        Stitch::Straight => (StitchKind::Straight, String::new()),
        Stitch::Twin { spacing } => (StitchKind::Twin, field(spacing, needle)),
        Stitch::Zigzag { width } => (StitchKind::Zigzag, field(width, needle)),
    };
    PlanDraft {
        side: field(plan.side, lens),
        lap: field(plan.lap, lens),
        across: plan.across.to_string(),
        down: plan.down.to_string(),
        joining: plan.joining,
        stitch,
        width,
        fringe: field(plan.least_fringe, lens),
        trim: plan.trim.map_or_else(String::new, |t| field(t, lens)),
        between: plan.between.map_or_else(String::new, |t| field(t, lens)),
        order: plan.order,
        strip: field(plan.binding.strip, lens),
        longest: field(plan.binding.longest, lens),
        tail: field(plan.binding.tail, lens),
        cooling: plan.cooling_minutes.to_string(),
        washes: plan.washes.to_string(),
    }
}

/// What the fields say: a plan, or what is wrong by field; and the fields tidied.
fn read_draft(draft: &PlanDraft, lens: Lens<'_>) -> (Option<Plan>, PlanDraft, Vec<FieldProblem>) {
    let mut tidy = draft.clone();
    let mut faults = Vec::new();
    let mut length = |name: &str, text: &mut String| -> Option<Length> {
        let lens = if name == "width" {
            by_needle(lens)
        } else {
            lens
        };
        match lens.parse(text) {
            Ok(length) => {
                *text = field(length, lens);
                Some(length)
            }
            Err(error) => {
                let problem = errors::typed(&error, lens);
                faults.push(FieldProblem {
                    field: name.into(),
                    problem,
                });
                None
            }
        }
    };
    let side = length("side", &mut tidy.side);
    let lap = length("lap", &mut tidy.lap);
    let stitch = match draft.stitch {
        StitchKind::Straight => Some(Stitch::Straight),
        StitchKind::Twin => {
            length("width", &mut tidy.width).map(|spacing| Stitch::Twin { spacing })
        }
        StitchKind::Zigzag => {
            length("width", &mut tidy.width).map(|width| Stitch::Zigzag { width })
        }
    };
    let fringe = length("fringe", &mut tidy.fringe);
    let trim = match draft.trim.trim() {
        "" => Some(None),
        _ => length("trim", &mut tidy.trim).map(Some),
    };
    let between = match draft.between.trim() {
        "" => Some(None),
        _ => length("between", &mut tidy.between).map(Some),
    };
    let strip = length("strip", &mut tidy.strip);
    let longest = length("longest", &mut tidy.longest);
    let tail = length("tail", &mut tidy.tail);
    let mut number = |name: &str, text: &str| -> Option<u16> {
        let number = text.trim().parse().ok();
        if number.is_none() {
            let problem = lens.words.problem("typed-not-a-count", &[]);
            faults.push(FieldProblem {
                field: name.into(),
                problem,
            });
        }
        number
    };
    let across = number("across", &draft.across);
    let down = number("down", &draft.down);
    let cooling = number("cooling", &draft.cooling);
    let washes = number("washes", &draft.washes);
    let plan = (|| {
        Some(Plan {
            side: side?,
            lap: lap?,
            between: between?,
            across: across?,
            down: down?,
            joining: draft.joining,
            stitch: stitch?,
            least_fringe: fringe?,
            trim: trim?,
            order: draft.order,
            binding: Binding {
                strip: strip?,
                longest: longest?,
                tail: tail?,
            },
            cooling_minutes: cooling?,
            washes: u8::try_from(washes?).unwrap_or(u8::MAX),
        })
    })();
    if let Some(fault) = plan.as_ref().and_then(|p| p.check().err()) {
        use crate::plan::PlanFault;
        let name = match fault {
            PlanFault::Side => "side",
            PlanFault::Grid if across.is_some_and(|n| (1..=crate::plan::MOST).contains(&n)) => {
                "down"
            }
            PlanFault::Grid => "across",
            PlanFault::Lap => "lap",
            PlanFault::Between => "between",
            PlanFault::StitchTooWide => "width",
            PlanFault::Trim => "trim",
            PlanFault::Binding => "strip",
            PlanFault::Counts => "washes",
        };
        faults.push(FieldProblem {
            field: name.into(),
            problem: errors::plan_fault(fault, lens),
        });
    }
    (plan.filter(|p| p.check().is_ok()), tidy, faults)
}

/// The draft of a plan for a throw not yet begun.
pub fn draft(draft: &PlanDraft, lens: Lens<'_>) -> PlanView {
    view(None, draft, None, lens)
}

/// The draft of a plan for a throw to be made after an older one, whose faces it takes as
/// far as they go with these prints and denims.
pub fn draft_after(
    old: &Throw,
    (prints, denims): (&[Print], &[Denim]),
    draft: &PlanDraft,
    lens: Lens<'_>,
) -> PlanView {
    let (plan, ..) = read_draft(draft, lens);
    let covers = plan.map(|plan| heritage::faces(old, &plan, prints, denims));
    view(None, draft, covers, lens)
}

/// The plan of a throw, as it stands or as it is being typed.
pub(super) fn plan_of(journal: &Journal, typed: Option<&PlanDraft>, lens: Lens<'_>) -> PlanView {
    let standing = draft_of(&journal.throw().plan, lens);
    view(Some(journal), typed.unwrap_or(&standing), None, lens)
}

fn view(
    journal: Option<&Journal>,
    typed: &PlanDraft,
    covers: Option<Vec<Cover>>,
    lens: Lens<'_>,
) -> PlanView {
    let (plan, tidy, faults) = read_draft(typed, lens);
    let (mut refusal, mut change) = (None, None);
    // With what is sewn, as it stands or as it would be.
    let mut foreseen = journal.map(|j| j.throw().clone());
    let (mut compare, mut aside) = (Vec::new(), Vec::new());
    if let (Some(journal), Some(plan)) = (journal, plan) {
        let action = Action::ChangePlan { plan };
        if plan != journal.throw().plan {
            match decide(Some(journal.throw()), &action) {
                Ok(events) => {
                    foreseen = Some(journal.throw().after(&events));
                    (compare, aside) = off::compare(journal, &events, lens);
                    change = Some(Button {
                        label: say!(lens, "plan-change"),
                        action,
                    });
                }
                Err(why) => {
                    foreseen = None;
                    refusal = Some(errors::refusal(&why, Some(journal.throw()), lens));
                }
            }
        }
    }
    let covers = covers.or_else(|| journal.map(|j| j.throw().covers().to_vec()));
    let sewn = journal.is_some_and(|j| j.throw().worked().any(|(_, w)| w.made.is_some()));
    let figures = |plan: &Plan| {
        let mut figures = figures_of(plan, foreseen.as_ref(), covers.as_deref(), lens);
        if let Some(first) = figures.first_mut().filter(|_| sewn && foreseen.is_some()) {
            first.label = say!(lens, "figure-finished-sewn");
        }
        figures
    };
    PlanView {
        head: journal.map(|j| head(j, lens)),
        tidy,
        faults,
        refusal,
        change,
        compare,
        aside,
        figures: plan.as_ref().map_or_else(Vec::new, figures),
        advice: plan.map_or_else(Vec::new, |p| {
            p.advice().iter().map(|a| advice(a, lens)).collect()
        }),
        picture: plan.map(|p| pictures::section(&p, lens)),
        grid: plan.map(|p| pictures::grid(&p, lens)),
        lessons: journal
            .and_then(|j| j.throw().after.as_ref())
            .and_then(|heritage| lessons::told(heritage, lens)),
        plan,
    }
}

/// The figures of a plan; with the throw that is made by it they are what the sewn pieces
/// lead to.
pub(super) fn figures_of(
    plan: &Plan,
    throw: Option<&Throw>,
    covers: Option<&[Cover]>,
    lens: Lens<'_>,
) -> Vec<Figure> {
    let finished = throw.map(Throw::finished);
    // A piece that is sewn has its size already.
    let to_sew = |kind: Kind| {
        let made = |t: &Throw, p: Rect| t.work(p).is_some_and(|w| w.made.is_some());
        let joins = throw.map(|t| (t, t.assembly().joins()));
        let (all, sewn) = joins.map_or((1, 0), |(t, joins)| {
            let of = joins.iter().map(|join| join.whole);
            let of: Vec<Rect> = of.filter(|p| t.assembly().kind(*p) == kind).collect();
            (of.len(), of.iter().filter(|p| made(t, **p)).count())
        });
        match sewn {
            0 => Some(""),
            n if n < all => Some("-to-sew"),
            _ => None,
        }
    };
    let mut out = Vec::new();
    let mut add = |key: &str, value| {
        out.push(Figure {
            label: lens.say(&format!("figure-{key}"), &[]),
            value,
        });
    };
    let (w, h) = finished.map_or_else(|| plan.finished(), |size| (size.width, size.height));
    add("finished", lens.by(w, h));
    add(
        "squares",
        lens.plain(say!(lens, "count-square", n = plan.squares())),
    );
    if let Some(more) = to_sew(Kind::Pair) {
        add(&format!("pair{more}"), lens.by(plan.run(2), plan.side));
    }
    if let Some(more) = to_sew(Kind::Four) {
        let four = plan.natural_four();
        add(&format!("four{more}"), lens.by(four, four));
    }
    if plan.target() != plan.natural_four() {
        add("trim-to", lens.by(plan.target(), plan.target()));
    }
    let assembly = Assembly::new(plan.across, plan.down, plan.order);
    let blocks = assembly.blocks();
    let count = |kind| blocks.iter().filter(|b| assembly.kind(**b) == kind).count();
    add(
        "blocks",
        lens.plain(say!(
            lens,
            "blocks",
            fours = count(Kind::Four),
            pairs = count(Kind::Pair),
            squares = count(Kind::Square)
        )),
    );
    let planned = |piece: Rect| Size {
        width: plan.blocks(piece.cols),
        height: plan.blocks(piece.rows),
    };
    let (runs, length) = throw.map_or_else(|| crate::thread::runs(&assembly, planned), Throw::runs);
    add(
        "seams",
        lens.plain(say!(lens, "seams", n = runs, length = lens.length(length))),
    );
    match plan.fringe() {
        Some(fringe) if fringe >= zero() => add("fringe", lens.length(fringe)),
        Some(fringe) => add("fringe", lens.over_under(fringe)),
        None => add("fringe", lens.plain(say!(lens, "no-fringe"))),
    }
    let fits = covers.filter(|c| c.len() == plan.squares() as usize);
    let (lap, crossing) = match fits {
        Some(covers) => layers(plan.across, plan.down, covers),
        None => layers(
            plan.across,
            plan.down,
            &vec![Default::default(); plan.squares() as usize],
        ),
    };
    if lap > 0 {
        add(
            "layers",
            lens.plain(say!(lens, "layers", lap = lap, crossing = crossing)),
        );
    }
    let need = plan.binding_for(w, h);
    add(
        "binding",
        lens.plain(say!(
            lens,
            "binding",
            n = need.strips,
            length = lens.length(need.length)
        )),
    );
    out
}

pub(super) fn advice(advice: &Advice, lens: Lens<'_>) -> Problem {
    match advice {
        Advice::FringeShort { fringe, enough } => {
            let shown = if *fringe < zero() {
                say!(lens, "none")
            } else {
                lens.length(*fringe).text
            };
            lens.words.problem(
                "advice-fringe",
                &[
                    ("fringe", shown.into()),
                    ("enough", up(*enough, lens).into()),
                ],
            )
        }
        Advice::OddGrid => lens.words.problem("advice-odd", &[]),
        Advice::TwinNeedle { spacing } => lens
            .words
            .problem("advice-twin", &[("spacing", lens.needle(*spacing).into())]),
        Advice::LapLarge => lens.words.problem("advice-lap-large", &[]),
    }
}

/// A length brought up to the next mark of the ruler, so that what is advised is enough.
fn up(length: Length, lens: Lens<'_>) -> crate::view::Shown {
    let near = lens.ruler.nearest(length);
    let mark = if near < length {
        near + lens.ruler.step()
    } else {
        near
    };
    lens.length(mark)
}

/// Grids near a wish.
pub fn grids(draft: &PlanDraft, wish: &GridWish, lens: Lens<'_>) -> GridsView {
    let (plan, _, mut faults) = read_draft(draft, lens);
    let fail = |problem| GridsView {
        problem: Some(problem),
        grids: Vec::new(),
    };
    let Some(plan) = plan else {
        return match faults.pop() {
            Some(fault) => fail(fault.problem),
            None => GridsView {
                problem: None,
                grids: Vec::new(),
            },
        };
    };
    match wish {
        GridWish::Squares { have } => match have.trim().parse::<u32>() {
            Ok(have) if have > 0 && have <= 1_000_000 => {
                let found = grids::for_squares(&plan, have, 6);
                let rows = found.iter().map(|g| {
                    let left = i64::from(have) - i64::from(g.squares);
                    let mut why = vec![say!(lens, "grid-uses", n = g.squares, left = left)];
                    why.extend(leftover(g.across, g.down, lens));
                    row(g, why, lens)
                });
                GridsView {
                    problem: None,
                    grids: rows.collect(),
                }
            }
            _ => fail(lens.words.problem("typed-not-a-count", &[])),
        },
        GridWish::Size { width, height } => {
            let sides = lens.parse(width).and_then(|w| Ok((w, lens.parse(height)?)));
            match sides {
                Ok((w, h)) => {
                    let found = grids::for_size(&plan, w, h, 6);
                    let rows = found.iter().map(|g| {
                        let mut why = vec![
                            say!(lens, "grid-width", off = lens.over_under(g.size.0 - w)),
                            say!(lens, "grid-height", off = lens.over_under(g.size.1 - h)),
                        ];
                        why.push(say!(lens, "grid-takes", n = g.squares));
                        why.extend(leftover(g.across, g.down, lens));
                        row(g, why, lens)
                    });
                    GridsView {
                        problem: None,
                        grids: rows.collect(),
                    }
                }
                Err(error) => fail(errors::typed(&error, lens)),
            }
        }
    }
}

fn leftover(across: u16, down: u16, lens: Lens<'_>) -> Vec<String> {
    let mut out = Vec::new();
    if across % 2 == 1 {
        out.push(say!(lens, "grid-odd-across"));
    }
    if down % 2 == 1 {
        out.push(say!(lens, "grid-odd-down"));
    }
    out
}

fn row(g: &grids::Grid, why: Vec<String>, lens: Lens<'_>) -> GridRow {
    GridRow {
        across: g.across,
        down: g.down,
        title: say!(lens, "grid", across = g.across, down = g.down),
        size: lens.by(g.size.0, g.size.1),
        why,
    }
}
