//! The plan as typed fields, with its figures, doubts and pictures.

use crate::cloth::fabric::{Cover, Denim, Print};
use crate::command::{Command, decide};
use crate::faces::inherit;
use crate::faces::spread::{layers, thickest};
use crate::log::journal::Journal;
use crate::measure::{Length, millimetres};
use crate::plan::assembly::{Assembly, Kind, Rect};
use crate::plan::{Advice, Binding, JoinOrder, Joining, Plan, Stitch, USUAL_STITCH_MM};
use crate::show::context::Context;
use crate::show::fields::{by_needle, field};
use crate::show::lessons::{self, Lessons};
use crate::show::parts::{Button, CompareRow, FieldProblem, Figure, Head, head};
use crate::show::picture::Picture;
use crate::show::{change, errors, pictures};
use crate::throw::{Size, Throw};
use crate::types::TS;
use crate::words::Problem;
use serde::{Deserialize, Serialize};

/// Which stitch, without its width.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum StitchKind {
    /// One straight row.
    Straight,
    /// Twin needle.
    Twin,
    /// Two straight rows with a single needle.
    TwoRows,
    /// Zigzag or another wide stitch.
    Zigzag,
}

impl StitchKind {
    /// This stitch, so wide.
    pub(super) fn of(self, width: Length) -> Stitch {
        match self {
            StitchKind::Straight => Stitch::Straight,
            StitchKind::Twin => Stitch::Twin { spacing: width },
            StitchKind::TwoRows => Stitch::TwoRows { spacing: width },
            StitchKind::Zigzag => Stitch::Zigzag { width },
        }
    }
}

/// What is typed into the plan, as typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PlanDraft {
    /// Cut side.
    pub side: String,
    /// Lap or allowance.
    pub lap: String,
    /// Squares across.
    pub across: String,
    /// Squares down.
    pub down: String,
    /// How edges are held together.
    pub joining: Joining,
    /// Which stitch.
    pub stitch: StitchKind,
    /// Twin spacing, distance of two rows, or stitch width.
    pub width: String,
    /// How long a stitch is.
    pub stitch_length: String,
    /// Least fringe.
    pub fringe: String,
    /// Trim size; empty for the natural one.
    pub trim: String,
    /// Lap between blocks; empty for the same lap.
    pub between: String,
    /// Order of the larger joins.
    pub order: JoinOrder,
    /// The whole edge is pressed and trimmed before the binding.
    pub trim_edge: bool,
    /// Its seams take up the width of their stitching; carried along, there is nothing to choose.
    #[serde(default = "counted")]
    #[ts(as = "Option<bool>", optional)]
    pub stitch_in_seam: bool,
    /// Width of the binding strip.
    pub strip: String,
    /// Longest binding strip.
    pub longest: String,
    /// Tail of the binding.
    pub tail: String,
    /// Minutes to cool.
    pub cooling: String,
    /// Washes.
    pub washes: String,
}

/// The plan as it is shown and typed.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct PlanView {
    /// Common to all screens, for a throw that has been begun.
    pub head: Option<Head>,
    /// What was typed, each measure with its unit spelled out.
    pub tidy: PlanDraft,
    /// What is wrong, by field.
    pub faults: Vec<FieldProblem>,
    /// What stands in the way of changing this throw to it.
    pub refusal: Option<Problem>,
    /// The plan, when it can be.
    pub plan: Option<Plan>,
    /// The change, when there is one and it can be made.
    pub change: Option<Button>,
    /// What the change would do, before and after.
    pub compare: Vec<CompareRow>,
    /// What becomes of pieces that no longer fit, a sentence each.
    pub aside: Vec<String>,
    /// The figures.
    pub figures: Vec<Figure>,
    /// What the maker should hear.
    pub advice: Vec<Problem>,
    /// What of it the plan in force does not give: read before the change is agreed to.
    pub doubts: Vec<Problem>,
    /// The lap in section, to scale.
    pub picture: Option<Picture>,
    /// The grid.
    pub grid: Option<Picture>,
    /// What was learned on the throw this one is made after.
    pub lessons: Option<Lessons>,
}

/// A draft that does not say it is of a new throw.
fn counted() -> bool {
    true
}

/// A plan as typed fields.
pub fn draft_of(plan: &Plan, context: Context<'_>) -> PlanDraft {
    let needle = by_needle(context);
    let (stitch, width) = match plan.stitch {
        Stitch::Straight => (StitchKind::Straight, String::new()),
        Stitch::Twin { spacing } => (StitchKind::Twin, field(spacing, needle)),
        Stitch::TwoRows { spacing } => (StitchKind::TwoRows, field(spacing, needle)),
        Stitch::Zigzag { width } => (StitchKind::Zigzag, field(width, needle)),
    };
    PlanDraft {
        side: field(plan.side, context),
        lap: field(plan.lap, context),
        across: plan.across.to_string(),
        down: plan.down.to_string(),
        joining: plan.joining,
        stitch,
        width,
        stitch_length: field(plan.stitch_long(), needle),
        fringe: field(plan.least_fringe, context),
        trim: plan.trim.map_or_else(String::new, |t| field(t, context)),
        between: plan.between.map_or_else(String::new, |t| field(t, context)),
        order: plan.order,
        trim_edge: plan.trim_edge,
        stitch_in_seam: plan.stitch_in_seam || plan.joining == Joining::Lapped,
        strip: field(plan.binding.strip, context),
        longest: field(plan.binding.longest, context),
        tail: field(plan.binding.tail, context),
        cooling: plan.cooling_minutes.to_string(),
        washes: plan.washes.to_string(),
    }
}

/// What the fields say: a plan, or what is wrong by field; and the fields tidied.
pub(super) fn read_draft(
    draft: &PlanDraft,
    context: Context<'_>,
) -> (Option<Plan>, PlanDraft, Vec<FieldProblem>) {
    let mut tidy = draft.clone();
    let mut faults = Vec::new();
    let mut length = |name: &str, text: &mut String| -> Option<Length> {
        let context = match name {
            "width" | "stitch_length" => by_needle(context),
            _ => context,
        };
        match context.parse(text) {
            Ok(length) => {
                *text = field(length, context);
                Some(length)
            }
            Err(error) => {
                let problem = errors::typed(&error, context);
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
        kind => length("width", &mut tidy.width).map(|width| kind.of(width)),
    };
    let stitch_length = length("stitch_length", &mut tidy.stitch_length);
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
            let problem = context.words.problem("typed-not-a-count", &[]);
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
            // What is usual is not said, so that a plan is the same however it came to it.
            stitch_length: Some(stitch_length?)
                .filter(|long| *long != millimetres(USUAL_STITCH_MM)),
            least_fringe: fringe?,
            trim: trim?,
            order: draft.order,
            binding: Binding {
                strip: strip?,
                longest: longest?,
                tail: tail?,
            },
            stitch_in_seam: draft.stitch_in_seam && draft.joining != Joining::Lapped,
            trim_edge: draft.trim_edge,
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
            PlanFault::StitchLength => "stitch_length",
            PlanFault::Trim => "trim",
            PlanFault::Binding => "strip",
            PlanFault::Counts => "washes",
        };
        faults.push(FieldProblem {
            field: name.into(),
            problem: errors::plan_fault(fault, context),
        });
    }
    (plan.filter(|p| p.check().is_ok()), tidy, faults)
}

/// The draft of a plan for a throw not yet begun.
pub fn draft(draft: &PlanDraft, context: Context<'_>) -> PlanView {
    view(None, draft, None, context)
}

/// The draft of a plan for a throw to be made after an older one, whose faces it takes as
/// far as they go with these prints and denims.
pub fn draft_after(
    old: &Throw,
    (prints, denims): (&[Print], &[Denim]),
    draft: &PlanDraft,
    context: Context<'_>,
) -> PlanView {
    let (plan, ..) = read_draft(draft, context);
    let covers = plan.map(|plan| inherit::faces(old, &plan, prints, denims));
    let lost = plan.map_or_else(Vec::new, |plan| inherit::lost(old, &plan, prints));
    PlanView {
        aside: change::faces_lost(old, &lost, context),
        ..view(None, draft, covers, context)
    }
}

/// The plan of a throw, as it stands or as it is being typed.
pub(super) fn plan_of(
    journal: &Journal,
    typed: Option<&PlanDraft>,
    context: Context<'_>,
) -> PlanView {
    let standing = draft_of(&journal.throw().plan, context);
    view(Some(journal), typed.unwrap_or(&standing), None, context)
}

fn view(
    journal: Option<&Journal>,
    typed: &PlanDraft,
    covers: Option<Vec<Cover>>,
    context: Context<'_>,
) -> PlanView {
    let (plan, tidy, faults) = read_draft(typed, context);
    let (mut refusal, mut change) = (None, None);
    // With what is sewn, as it stands or as it would be.
    let mut foreseen = journal.map(|j| j.throw().clone());
    let (mut compare, mut aside) = (Vec::new(), Vec::new());
    if let (Some(journal), Some(plan)) = (journal, plan) {
        let action = Command::ChangePlan { plan };
        if plan != journal.throw().plan {
            match decide(Some(journal.throw()), &action) {
                Ok(events) => {
                    foreseen = Some(journal.throw().after(&events));
                    (compare, aside) = change::compare(journal, &events, context);
                    change = Some(Button {
                        label: say!(context, "plan-change"),
                        action,
                    });
                }
                Err(why) => {
                    foreseen = None;
                    refusal = Some(errors::rejection(&why, Some(journal.throw()), context));
                }
            }
        }
    }
    // What comes of the change: a size to trim to that is not typed may be that of what is sewn.
    let comes = foreseen.as_ref().filter(|_| change.is_some());
    let plan = comes.map(|throw| throw.plan).or(plan);
    // The faces go with their places into a grid that is being typed; a throw that comes of it has its
    // own.
    let covers = covers.or_else(|| {
        let (throw, plan) = (journal?.throw(), plan?);
        let grid = Rect::grid(plan.across, plan.down);
        Some(grid.squares().map(|square| throw.cover(square)).collect())
    });
    let sewn = journal.is_some_and(|j| j.throw().worked().any(|(_, w)| w.made.is_some()));
    let figures = |plan: &Plan| {
        let mut figures = figures_of(plan, foreseen.as_ref(), covers.as_deref(), context);
        if let Some(first) = figures.first_mut().filter(|_| sewn && foreseen.is_some()) {
            first.label = say!(context, "figure-finished-sewn");
        }
        figures
    };
    let advised = plan.map_or_else(Vec::new, |p| p.advice());
    let now = journal.map_or_else(Vec::new, |j| j.throw().plan.advice());
    let new = advised.iter().filter(|a| !now.contains(a));
    PlanView {
        head: journal.map(|j| head(j, context)),
        tidy,
        faults,
        refusal,
        change,
        compare,
        aside,
        figures: plan.as_ref().map_or_else(Vec::new, figures),
        advice: advised.iter().map(|a| advice(a, context)).collect(),
        doubts: new.map(|a| advice(a, context)).collect(),
        picture: plan.map(|p| pictures::section(&p, context)),
        grid: plan.map(|p| pictures::grid(&p, context)),
        lessons: journal
            .and_then(|j| j.throw().after.as_ref())
            .and_then(|heritage| lessons::view(heritage, context)),
        plan,
    }
}

/// The figures of a plan; with the throw that is made by it they are what the sewn pieces
/// lead to.
pub(super) fn figures_of(
    plan: &Plan,
    throw: Option<&Throw>,
    covers: Option<&[Cover]>,
    context: Context<'_>,
) -> Vec<Figure> {
    let finished = throw.map(Throw::finished);
    // A piece that is sewn has its size already.
    let to_sew = |kind: Kind| {
        let joins = throw.map(|t| (t, t.assembly().joins()));
        let (all, sewn) = joins.map_or((1, 0), |(t, joins)| {
            let of = joins.iter().map(|join| join.whole);
            let of: Vec<Rect> = of.filter(|p| t.assembly().kind(*p) == kind).collect();
            (of.len(), of.iter().filter(|p| t.is_made(**p)).count())
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
            label: context.say(&format!("figure-{key}"), &[]),
            value,
        });
    };
    let (w, h) = finished.map_or_else(|| plan.finished(), |size| (size.width, size.height));
    add("finished", context.by(w, h));
    add(
        "squares",
        context.plain(say!(context, "count-square", n = plan.squares())),
    );
    if let Some(more) = to_sew(Kind::Pair) {
        add(&format!("pair{more}"), context.by(plan.run(2), plan.side));
    }
    if let Some(more) = to_sew(Kind::Four) {
        let four = plan.natural_four();
        add(&format!("four{more}"), context.by(four, four));
    }
    if plan.target() != plan.natural_four() {
        add("trim-to", context.by(plan.target(), plan.target()));
    }
    let assembly = Assembly::new(plan.across, plan.down, plan.order);
    let blocks = assembly.blocks();
    let count = |kind| blocks.iter().filter(|b| assembly.kind(**b) == kind).count();
    add(
        "blocks",
        context.plain(say!(
            context,
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
    let (runs, length) = throw.map_or_else(
        || crate::throw::seams::runs(&assembly, planned),
        Throw::runs,
    );
    add(
        "seams",
        context.plain(say!(
            context,
            match plan.stitch.passes() {
                1 => "seams",
                _ => "seams-twice",
            },
            n = runs,
            length = context.far(length)
        )),
    );
    match plan.fringe() {
        Some(fringe) => add("fringe", context.fringe(fringe)),
        None => add("fringe", context.plain(say!(context, "no-fringe"))),
    }
    let between = plan.fringe_at(plan.lap_between());
    if let Some(between) = between.filter(|_| plan.lap_between() != plan.lap) {
        add("fringe-between", context.fringe(between));
    }
    let covers = throw.map(Throw::covers).or(covers);
    let fits = covers.filter(|c| c.len() == plan.squares() as usize);
    let (lap, crossing) = match (throw, fits) {
        (Some(throw), _) => {
            let (lap, _, crossing) = thickest(throw);
            (lap, crossing)
        }
        (None, Some(covers)) => layers(plan.across, plan.down, covers),
        (None, None) => layers(
            plan.across,
            plan.down,
            &vec![Default::default(); plan.squares() as usize],
        ),
    };
    if lap > 0 {
        // A hidden seam pressed open lies as thick as a lap; see [`crate::faces::spread::layers`].
        let key = match plan.joining {
            Joining::Seamed => "layers-seamed",
            Joining::Lapped | Joining::Exposed => "layers",
        };
        let layers = say!(context, key, lap = lap, crossing = crossing);
        // Before the faces are chosen only the denim is known.
        let covered = |covers: &[Cover]| covers.iter().any(|c| c.layers() > 1);
        let of = match fits.is_some_and(covered) {
            true => "layers",
            false => "layers-denim",
        };
        add(of, context.plain(layers));
    }
    let need = plan.binding_for(w, h);
    add(
        "binding",
        context.plain(say!(
            context,
            "binding",
            n = need.strips,
            length = context.long(need.length)
        )),
    );
    out
}

pub(super) fn advice(advice: &Advice, context: Context<'_>) -> Problem {
    match advice {
        Advice::FringeShort { fringe, enough } => context.words.problem(
            "advice-fringe",
            &[
                ("fringe", context.fringe(*fringe).into()),
                ("enough", up(*enough, context).into()),
            ],
        ),
        Advice::FringeBeyond { least, most } => context.words.problem(
            "advice-fringe-beyond",
            &[
                ("least", context.fringe(*least).into()),
                ("most", context.fringe(*most).into()),
            ],
        ),
        Advice::OddGrid => context.words.problem("advice-odd", &[]),
        Advice::TwinNeedle { spacing } => context.words.problem(
            "advice-twin",
            &[("spacing", context.needle(*spacing).into())],
        ),
        Advice::TrimBeyond { trim, natural } => context.words.problem(
            "advice-trim",
            &[
                ("trim", context.length(*trim).into()),
                ("natural", context.length(*natural).into()),
            ],
        ),
        Advice::TwinHidden => context.words.problem("advice-twin-hidden", &[]),
        Advice::LapLarge => context.words.problem("advice-lap-large", &[]),
    }
}

/// A length rounded up to the next mark of the ruler, so that what is advised is enough.
fn up(length: Length, context: Context<'_>) -> crate::words::Shown {
    let near = context.ruler.nearest(length);
    let mark = if near < length {
        near + context.ruler.step()
    } else {
        near
    };
    context.length(mark)
}
