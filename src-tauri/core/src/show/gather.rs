//! What to have at hand, how heavy it gets, how long it takes; and test scraps.

use super::{Lens, errors, gone_told, head, off, pictures, plan};
use crate::cloth::pile::how;
use crate::cloth::thread::{Glue, Gluing, Need, Winding, for_throw, glue, seams};
use crate::cloth::weight::{
    Cloth, WASHER_KG, Washing, in_gsm, in_kilograms, in_mm_thick, in_ounces, kilograms, mass,
    washing,
};
use crate::command::{Action, decide};
use crate::faces::spread::layers;
use crate::log::journal::Journal;
use crate::measure::{Count, Length, ParseError, in_nm, nm, zero};
use crate::plan::scraps::{Scrap, Verdict, widest_stitch};
use crate::plan::{Advice, Plan, Stitch, fringe};
use crate::throw::stock::{gone, used};
use crate::throw::tasks::Task;
use crate::throw::{Item, Throw};
use crate::view::{
    Button, Choice, FieldProblem, Figure, GatherRow, GatherView, LapColumn, ScrapRow, ScrapTyped,
    ScrapsView, StitchKind,
};

/// Stitch length reckoned with, 3 mm (common practice on denim, no source).
const STITCH_NM: i64 = 3_000_000;

/// The cloth of the first heap for a use, or the usual one.
fn cloth_for(throw: &Throw, denim: bool) -> Cloth {
    let heap = throw.pile.values().find(|h| h.makes.is_denim() == denim);
    heap.map_or_else(if denim { Cloth::denim } else { Cloth::cotton }, |h| {
        h.cloth
    })
}

fn covers(throw: &Throw) -> u32 {
    throw.covers().iter().map(|c| c.layers() - 1).sum()
}

/// A long length for people: metres or yards, to a tenth, upwards.
fn long(length: Length, lens: Lens<'_>) -> String {
    let metres = crate::measure::in_mm(length) / 1000.0;
    let up = |n: f64| lens.words.decimal((n * 10.0).ceil() / 10.0, 1);
    lens.either(
        say!(lens, "yards", n = up(metres / 0.9144)),
        say!(lens, "metres", n = up(metres)),
    )
}

/// What a spool or a bobbin holds: whole metres or yards, downwards.
fn wound(length: Length, lens: Lens<'_>) -> String {
    let metres = crate::measure::in_mm(length) / 1000.0;
    let down = |n: f64| lens.words.decimal(n.floor(), 0);
    lens.either(
        say!(lens, "yards", n = down(metres / 0.9144)),
        say!(lens, "metres", n = down(metres)),
    )
}

/// The thread for the throw as it is planned.
fn thread(throw: &Throw) -> Option<Need> {
    let (denim, cotton) = (cloth_for(throw, true), cloth_for(throw, false));
    let stitch = nm(STITCH_NM);
    let cloths = [&denim, &cotton];
    for_throw(
        &throw.plan,
        covers(throw),
        cloths,
        stitch,
        Winding::default(),
    )
    .ok()
}

/// How much of something is wanted, for a table.
#[derive(Clone, Copy)]
pub(super) struct Amount {
    /// How many.
    pub(super) count: u32,
    /// Of what: the key of a word.
    pub(super) unit: &'static str,
    /// Side of a square, or length in all.
    pub(super) length: Option<Length>,
}

/// How much of an item is wanted, where that can be said in figures.
pub(super) fn amount(throw: &Throw, item: Item) -> Option<Amount> {
    let p = &throw.plan;
    let of = |count, unit, length| {
        Some(Amount {
            count,
            unit,
            length,
        })
    };
    match item {
        Item::Denim => of(p.squares(), "squares", Some(p.side)),
        Item::Fabric { print } => of(used(throw, print), "squares", Some(p.side)),
        Item::Binding => {
            let size = throw.finished();
            let need = p.binding_for(size.width, size.height);
            of(need.strips, "strips", Some(need.length))
        }
        Item::Thread => {
            let need = thread(throw)?;
            let all = nm(in_nm(need.needle).saturating_mul(i64::from(need.needles)));
            of(need.spools, "spools", Some(all))
        }
        Item::Bobbins => {
            let need = thread(throw)?;
            of(need.bobbins, "bobbins", Some(need.bobbin))
        }
        Item::Glue => {
            let glued = glued(throw);
            of(glued.bottles.unwrap_or(1), "bottles", None)
        }
        _ => None,
    }
}

/// Glue for the laps, the fabric squares and the binding's edge.
fn glued(throw: &Throw) -> Glue {
    let (p, size) = (&throw.plan, throw.finished());
    let round = (size.width + size.height) * 2;
    glue(seams(p).joins + round, covers(throw), Gluing::default())
}

/// What to have at hand.
pub(super) fn gather(journal: &Journal, lens: Lens<'_>) -> GatherView {
    let throw = journal.throw();
    let p = &throw.plan;
    let (denim, cotton) = (cloth_for(throw, true), cloth_for(throw, false));
    let covered = covers(throw);
    let mut rows = Vec::new();
    let mut row = |item: Item, label: String, lines: Vec<String>| {
        rows.push(GatherRow {
            item,
            label,
            lines,
            have: throw.gathered.contains(&item),
        });
    };
    let open = throw
        .assembly()
        .whole()
        .squares()
        .filter(|s| !throw.has(*s, Task::Cut))
        .count();
    let mut lines = vec![say!(
        lens,
        "item-denim-squares",
        n = p.squares(),
        open = open,
        side = lens.by(p.side, p.side)
    )];
    if throw.spares > 0 {
        lines.push(say!(lens, "item-denim-spares", n = throw.spares));
    }
    row(Item::Denim, say!(lens, "item-denim"), lines);
    for (i, print) in throw.prints.iter().enumerate() {
        let placed = used(throw, i as u8);
        if placed == 0 {
            continue;
        }
        let mut lines = vec![say!(
            lens,
            "item-fabric-squares",
            n = placed,
            side = lens.by(p.side, p.side)
        )];
        let gone = gone(throw, i as u8);
        lines.extend(gone_told(gone, lens));
        if let Some(stock) = print.stock {
            let wanted = placed + gone.all();
            lines.push(match stock >= wanted {
                true => say!(lens, "item-enough", n = stock - Count::at_most(gone.all())),
                false => say!(lens, "item-short", n = wanted - stock.get()),
            });
        } else {
            let quarter = crate::cloth::garments::fat_quarter(lens.ruler.system);
            let each =
                crate::cloth::cutting::lay_out(&quarter, &how(p.side)).map_or(0, |c| c.count);
            if each > 0 {
                lines.push(say!(
                    lens,
                    "item-fat-quarters",
                    n = placed.div_ceil(each),
                    each = each
                ));
            }
        }
        row(Item::Fabric { print: i as u8 }, print.name.clone(), lines);
    }
    let size = throw.finished();
    let need = p.binding_for(size.width, size.height);
    row(
        Item::Binding,
        say!(lens, "item-binding"),
        [
            vec![
                say!(
                    lens,
                    "item-binding-strips",
                    n = need.strips,
                    width = lens.length(p.binding.strip),
                    longest = lens.length(p.binding.longest)
                ),
                say!(
                    lens,
                    "item-binding-length",
                    length = lens.length(need.length),
                    n = need.joins
                ),
            ],
            vec![super::work::bound(throw, lens).1],
        ]
        .concat(),
    );
    if let Some(thread) = thread(throw) {
        let twin = matches!(p.stitch, Stitch::Twin { .. });
        let mut lines = vec![say!(
            lens,
            "item-thread-needles",
            needles = thread.needles,
            each = long(thread.needle, lens),
            spools = thread.spools,
            size = wound(Winding::default().spool, lens)
        )];
        if twin {
            lines.push(say!(lens, "item-thread-twin"));
        }
        if let Some(rule) = thread.rule {
            lines.push(say!(lens, "item-thread-rule", length = long(rule, lens)));
        }
        row(Item::Thread, say!(lens, "item-thread"), lines);
        let lines = vec![say!(
            lens,
            "item-bobbins-length",
            length = long(thread.bobbin, lens),
            n = thread.bobbins,
            size = wound(Winding::default().bobbin, lens)
        )];
        row(Item::Bobbins, say!(lens, "item-bobbins"), lines);
    }
    let needles = match p.stitch {
        Stitch::Twin { spacing } => say!(lens, "item-needles-twin", spacing = lens.needle(spacing)),
        _ => say!(lens, "item-needles-single"),
    };
    row(
        Item::Needles,
        say!(lens, "item-needles"),
        vec![needles, say!(lens, "item-needles-spare")],
    );
    let glued = glued(throw);
    let bottles = glued.bottles.unwrap_or(1);
    row(
        Item::Glue,
        say!(lens, "item-glue"),
        vec![say!(lens, "item-glue-dots", dots = glued.dots, n = bottles)],
    );
    row(
        Item::Marker,
        say!(lens, "item-marker"),
        vec![say!(lens, "item-marker-test")],
    );
    row(
        Item::Cutter,
        say!(lens, "item-cutter"),
        vec![say!(lens, "item-cutter-what", side = lens.length(p.side))],
    );
    row(
        Item::Care,
        say!(lens, "item-care"),
        vec![say!(lens, "item-care-what")],
    );

    let weight = mass(p, covered, &denim, &cotton);
    let kg = in_kilograms(weight);
    let (lb, g) = (kg / 0.453_592_37, kg * 1_000.0);
    let pounds = match lb < 1.0 {
        true => say!(lens, "ounces-weight", n = (lb * 16.0).round() as i64),
        false => say!(lens, "pounds", n = lens.words.decimal(lb, 1)),
    };
    let metric = match kg < 1.0 {
        true => say!(lens, "grams", n = (g / 10.0).round() as i64 * 10),
        false => say!(lens, "kilograms", n = lens.words.decimal(kg, 1)),
    };
    let shown = lens.either(pounds, metric);
    let left = crate::log::pace::left(throw, &crate::log::pace::paces(journal));
    let figure = |key: &str, text: String| Figure {
        label: lens.say(&format!("figure-{key}"), &[]),
        value: lens.plain(text),
    };
    let cloth = lens.either(
        say!(
            lens,
            "ounces",
            n = lens.words.decimal(in_ounces(denim.weight), 1)
        ),
        say!(lens, "gsm", n = in_gsm(denim.weight).round() as i64),
    );
    let washer = match washing(weight, kilograms(WASHER_KG)) {
        Washing::Roomy => say!(lens, "washer-roomy"),
        Washing::Tight => say!(lens, "washer-tight"),
        Washing::TooHeavy => say!(lens, "washer-heavy"),
    };
    GatherView {
        head: head(journal, lens),
        rows,
        figures: vec![
            figure("weight", shown),
            figure("denim-weight", cloth),
            figure("time", off::time_left(left, lens)),
        ],
        said: vec![washer, say!(lens, "gather-estimates")],
    }
}

/// Needle, stitch and lap, with test scraps.
pub(super) fn scraps(journal: &Journal, typed: Option<&ScrapTyped>, lens: Lens<'_>) -> ScrapsView {
    let throw = journal.throw();
    let p = throw.plan;
    let standing = plan::draft_of(&p, lens);
    let standing = ScrapTyped {
        joining: p.joining,
        lap: standing.lap,
        stitch: standing.stitch,
        width: standing.width,
        opening: throw
            .opening
            .map_or_else(String::new, |o| plan::field(o, lens)),
    };
    let mut tidy = typed.unwrap_or(&standing).clone();
    let mut faults = Vec::new();
    let mut read = |field: &str, text: &mut String| match lens.parse(text) {
        Ok(length) => {
            *text = plan::field(length, lens);
            Some(length)
        }
        Err(error) => {
            if error != ParseError::Empty || field != "opening" {
                faults.push(FieldProblem {
                    field: field.into(),
                    problem: errors::typed(&error, lens),
                });
            }
            None
        }
    };
    let lap = read("lap", &mut tidy.lap);
    let width = match tidy.stitch {
        StitchKind::Straight => Some(zero()),
        _ => read("width", &mut tidy.width),
    };
    let opening = read("opening", &mut tidy.opening).or(throw.opening);
    let stitch = width.map(|w| match tidy.stitch {
        StitchKind::Straight => Stitch::Straight,
        StitchKind::Twin => Stitch::Twin { spacing: w },
        StitchKind::Zigzag => Stitch::Zigzag { width: w },
    });
    let tried = lap.zip(stitch).map(|(lap, stitch)| Scrap {
        joining: tidy.joining,
        lap,
        stitch,
        verdict: Verdict::Right,
        note: String::new(),
    });
    let scrap =
        tried.filter(
            |s| match decide(Some(throw), &Action::TryScrap { scrap: s.clone() }) {
                Ok(_) => true,
                Err(why) => {
                    let problem = errors::refusal(&why, Some(throw), lens);
                    faults.push(FieldProblem {
                        field: "lap".into(),
                        problem,
                    });
                    false
                }
            },
        );
    let mut columns = vec![column(throw, &p, say!(lens, "scrap-plan"), opening, lens)];
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
                say!(lens, "scrap-typed"),
                opening,
                lens,
            ));
        }
    }
    let plate = opening
        .filter(|o| throw.opening != Some(*o))
        .map(|opening| Button {
            label: say!(lens, "scrap-keep-plate"),
            action: Action::SetPlate { opening },
        });
    let rows = throw
        .scraps
        .iter()
        .enumerate()
        .rev()
        .map(|(i, s)| scrap_row(journal, i, s, lens))
        .collect();
    ScrapsView {
        head: head(journal, lens),
        tidy,
        faults,
        columns,
        scrap,
        plate,
        verdicts: Verdict::ALL
            .into_iter()
            .map(|value| Choice {
                value,
                label: lens.say(&format!("scrap-{}", value.key()), &[]),
            })
            .collect(),
        rows,
    }
}

pub(super) fn scrap_row(journal: &Journal, i: usize, scrap: &Scrap, lens: Lens<'_>) -> ScrapRow {
    let throw = journal.throw();
    let action = Action::UseScrap { scrap: i as u16 };
    let mut lines = vec![lens.say(&format!("scrap-{}", scrap.verdict.key()), &[])];
    if let Some(fringe) = fringe(scrap.joining, scrap.lap, scrap.stitch) {
        lines.push(say!(
            lens,
            "scrap-fringe",
            fringe = lens.over_nothing(fringe)
        ));
    }
    if !scrap.note.is_empty() {
        lines.push(say!(lens, "line-note", text = scrap.note.as_str()));
    }
    let events = decide(Some(throw), &action).ok();
    let changes = events.as_ref().map(|e| off::compare(journal, e, lens));
    let (compare, aside) = changes.unwrap_or_default();
    ScrapRow {
        title: say!(
            lens,
            "scrap-title",
            lap = lens.length(scrap.lap),
            stitch = stitch(scrap.stitch, lens)
        ),
        lines,
        choose: events.map(|_| Button {
            label: say!(lens, "scrap-use"),
            action,
        }),
        compare,
        aside,
    }
}

pub(super) fn stitch(stitch: Stitch, lens: Lens<'_>) -> String {
    match stitch {
        Stitch::Straight => say!(lens, "stitch-straight"),
        Stitch::Twin { spacing } => say!(lens, "stitch-twin", width = lens.needle(spacing)),
        Stitch::Zigzag { width } => say!(lens, "stitch-zigzag", width = lens.needle(width)),
    }
}

fn column(
    throw: &Throw,
    p: &Plan,
    title: String,
    opening: Option<Length>,
    lens: Lens<'_>,
) -> LapColumn {
    let mut figures = Vec::new();
    let mut add = |key: &str, value| {
        figures.push(Figure {
            label: lens.say(&format!("figure-{key}"), &[]),
            value,
        });
    };
    add("lap", lens.length(p.lap));
    add("stitch", lens.plain(stitch(p.stitch, lens)));
    match p.fringe() {
        Some(fringe) => add("fringe", lens.over_nothing(fringe)),
        None => add("fringe", lens.plain(say!(lens, "no-fringe"))),
    }
    let (denim, cotton) = (cloth_for(throw, true), cloth_for(throw, false));
    let (lap, crossing) = layers(p.across, p.down, throw.covers());
    // The thickest lap: two denims and what fabric lies on them.
    let thick = |layers: u32, squares: u32| {
        let fabric = f64::from(layers.saturating_sub(squares));
        let mm = in_mm_thick(denim.thickness) * f64::from(squares)
            + in_mm_thick(cotton.thickness) * fabric;
        say!(
            lens,
            "thick",
            n = lens.words.decimal(mm, 1),
            layers = layers
        )
    };
    if lap > 0 {
        add("thick-lap", lens.plain(thick(lap, 2)));
    }
    if crossing > 0 {
        add("thick-crossing", lens.plain(thick(crossing, 4)));
    }
    if let Some(opening) = opening {
        let clear = widest_stitch(opening, p.stitch);
        add(
            "widest",
            clear.map_or_else(|| lens.plain(say!(lens, "strikes")), |w| lens.length(w)),
        );
    }
    // Of the lap alone: a scrap has no grid.
    let advice = p.advice().into_iter().filter(|a| *a != Advice::OddGrid);
    let advice = advice.map(|a| plan::advice(&a, lens)).collect();
    LapColumn {
        title,
        picture: pictures::section(p, lens),
        figures,
        advice,
    }
}
