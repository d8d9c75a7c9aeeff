//! What to have at hand, how heavy it gets, how long it takes; and test scraps.

use crate::cloth::pile::how;
use crate::cloth::thread::{Glue, Gluing, Need, Winding, for_throw, glue, seams};
use crate::cloth::weight::{
    Cloth, WASHER_KG, Washing, in_gsm, in_kilograms, in_ounces, kilograms, mass, washing,
};
use crate::log::journal::Journal;
use crate::measure::{Length, in_nm, nm};
use crate::plan::Stitch;
use crate::show::change;
use crate::show::context::Lens;
use crate::show::parts::{Figure, Head, gone_told, head};
use crate::throw::stock::{gone, used};
use crate::throw::tasks::Task;
use crate::throw::{Item, Throw};
use serde::Serialize;
use ts_rs::TS;

/// One thing to have at hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct GatherRow {
    /// What.
    pub item: Item,
    /// Its name.
    pub label: String,
    /// How much, a line each.
    pub lines: Vec<String>,
    /// It is at hand.
    pub have: bool,
}

/// What to have at hand.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct GatherView {
    /// Common to all screens.
    pub head: Head,
    /// The list.
    pub rows: Vec<GatherRow>,
    /// Weight, time left and the like.
    pub figures: Vec<Figure>,
    /// What there is to say, a sentence each.
    pub said: Vec<String>,
}

/// Stitch length reckoned with, 3 mm (common practice on denim, no source).
const STITCH_NM: i64 = 3_000_000;

/// The cloth of the first heap for a use, or the usual one.
pub(super) fn cloth_for(throw: &Throw, denim: bool) -> Cloth {
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
                true => say!(lens, "item-enough", n = stock - gone.all()),
                false => say!(lens, "item-short", n = wanted - stock),
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
            figure("time", change::time_left(left, lens)),
        ],
        said: vec![washer, say!(lens, "gather-estimates")],
    }
}
