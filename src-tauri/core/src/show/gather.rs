//! What to have at hand, how heavy the throw gets and how long it takes.

use crate::cloth::fabric::Face;
use crate::cloth::pile::how;
use crate::cloth::thread::{Glue, Gluing, Need, Winding, for_halves, for_throw, glue, need, seams};
use crate::cloth::weight::{
    M_PER_YD, WASHER_KG, Washing, in_gsm, in_kilograms, in_ounces, kilograms, mass, washing,
};
use crate::log::journal::Journal;
use crate::measure::{Area, Length, nm, square_metres, zero};
use crate::plan::{Joining, Stitch};
use crate::show::context::Context;
use crate::show::enough;
use crate::show::parts::{Figure, Head, gone_told, head};
use crate::show::stages::time_left;
use crate::throw::account::{ClothAccount, account};
use crate::throw::stock::{cloth_for, covers, gone};
use crate::throw::{Item, Throw};
use crate::types::TS;
use serde::Serialize;

/// The kilograms of a pound (international avoirdupois pound, 1959; exact to eight places).
const KG_PER_LB: f64 = 0.453_592_37;

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

/// A long length for people: metres or yards, to a tenth, upwards.
fn long(length: Length, context: Context<'_>) -> String {
    let metres = crate::measure::in_mm(length) / 1000.0;
    let up = |n: f64| context.words.decimal((n * 10.0).ceil() / 10.0, 1);
    context.either(
        say!(context, "yards", n = up(metres / M_PER_YD)),
        say!(context, "metres", n = up(metres)),
    )
}

/// What a spool or a bobbin holds: whole metres or yards, downwards.
fn wound(length: Length, context: Context<'_>) -> String {
    let metres = crate::measure::in_mm(length) / 1000.0;
    let down = |n: f64| context.words.decimal(n.floor(), 0);
    context.either(
        say!(context, "yards", n = down(metres / M_PER_YD)),
        say!(context, "metres", n = down(metres)),
    )
}

/// The thread for the throw as it is planned.
fn thread(throw: &Throw, account: &ClothAccount) -> Option<Need> {
    let (denim, cotton) = (cloth_for(throw, true), cloth_for(throw, false));
    let stitch = throw.plan.stitch_long();
    let cloths = [&denim, &cotton];
    let winding = Winding::default();
    let whole_covers = covers(throw) - throw.small_patches();
    let seams = for_throw(&throw.plan, whole_covers, cloths, winding).ok()?;
    // Round a patch one straight row goes through the denim and its fabric.
    let around = throw.patch_seams();
    let thick = denim.thickness + cotton.thickness;
    let patches = need(around, Stitch::Straight, stitch, thick, winding).ok()?;
    let halves = for_halves(&throw.plan, pieced(throw, account), &denim, winding).ok()?;
    Some(seams.with(&halves, winding).and(&patches, winding))
}

/// Squares that are pieced of two halves, or will be as the pile is to be cut.
fn pieced(throw: &Throw, account: &ClothAccount) -> u32 {
    throw.pieced_placed() + account.pieced_places()
}

/// The cloth in all patches smaller than a square.
fn patch_area(throw: &Throw) -> Area {
    let faces = |square| {
        Face::BOTH
            .into_iter()
            .filter_map(move |face| throw.patch_on(square, face))
    };
    let sides = throw.assembly().whole().squares().flat_map(faces);
    let each = sides.map(|side| square_metres(side, side));
    each.fold(square_metres(nm(0), nm(0)), |sum, area| sum + area)
}

/// How much of something is wanted, for a table.
#[derive(Clone, Copy)]
pub(super) struct SupplyAmount {
    /// How many.
    pub(super) count: u32,
    /// Of what: the key of a word.
    pub(super) unit: &'static str,
    /// Side of a square, or length in all.
    pub(super) length: Option<Length>,
    /// How many there are or are to come from the pile, where that is known.
    pub(super) there: Option<u32>,
    /// How many are lacking, where that is known.
    pub(super) short: Option<u32>,
}

/// One denim of the throw, for a table.
pub(super) struct DenimSupply {
    /// What the maker calls it.
    pub(super) name: String,
    /// How much of it is wanted, and what there is.
    pub(super) amount: SupplyAmount,
    /// That in words.
    pub(super) said: String,
}

/// Whether there is something to tell of cutting: so many squares are cut, or cloth is on the pile.
fn is_begun(throw: &Throw, cut: u32) -> i64 {
    i64::from(cut > 0 || !throw.pile.is_empty())
}

/// What is said where no denim is on the pile.
pub(super) fn unpiled(account: &ClothAccount, context: Context<'_>) -> String {
    say!(context, "item-denim-unpiled", n = account.short())
}

/// Each denim of which squares are wanted, where there are several.
pub(super) fn denims(
    throw: &Throw,
    account: &ClothAccount,
    context: Context<'_>,
) -> Vec<DenimSupply> {
    if throw.denims.len() < 2 {
        return Vec::new();
    }
    // Squares of heaps that name no denim may be of any, so none is known to be short.
    let named = account.unnamed == 0 && !throw.pile.is_empty();
    let each = throw.denims.iter().zip(&account.denims);
    each.filter(|(_, cloth)| cloth.wanted > 0)
        .map(|(denim, cloth)| {
            let cut = cloth.wanted - cloth.open;
            let short = named.then(|| account.short_of(cloth));
            let squares = say!(
                context,
                "item-denim-of",
                denim = denim.name.as_str(),
                n = cloth.wanted,
                begun = is_begun(throw, cut),
                open = cloth.open,
                piled = i64::from(!throw.pile.is_empty()),
                gives = cloth.to_come
            );
            let mut said = vec![match cloth.strips {
                0 => squares,
                n => say!(context, "item-denim-of-strips", squares = squares, n = n),
            }];
            // What its own heaps lack is taken from the spares, as far as they go.
            let lacking = cloth.open.saturating_sub(cloth.to_come);
            let spared = short.map(|short| lacking.saturating_sub(short));
            said.extend(
                spared
                    .filter(|n| *n > 0)
                    .map(|n| say!(context, "item-from-spares", n = n)),
            );
            said.extend(
                short
                    .filter(|n| *n > 0)
                    .map(|n| say!(context, "item-short", n = n)),
            );
            DenimSupply {
                name: denim.name.clone(),
                amount: SupplyAmount {
                    count: cloth.wanted,
                    unit: "squares",
                    length: Some(throw.plan.side),
                    there: Some(cut + cloth.to_come),
                    short,
                },
                said: context.words.list("sentences", said),
            }
        })
        .collect()
}

/// How much of an item is wanted, where that can be said in figures.
pub(super) fn amount(throw: &Throw, account: &ClothAccount, item: Item) -> Option<SupplyAmount> {
    let p = &throw.plan;
    let of = |count, unit, length| {
        Some(SupplyAmount {
            count,
            unit,
            length,
            there: None,
            short: None,
        })
    };
    match item {
        Item::Denim => Some(SupplyAmount {
            there: Some(account.there()),
            short: Some(account.short()),
            ..of(account.wanted, "squares", Some(p.side))?
        }),
        Item::Fabric { print } => {
            let fabric = account.fabrics.get(usize::from(print))?;
            let patch = throw.prints.get(usize::from(print)).and_then(|p| p.patch);
            Some(SupplyAmount {
                there: fabric.there(),
                short: fabric.short(),
                ..of(fabric.placed, "squares", Some(patch.unwrap_or(p.side)))?
            })
        }
        Item::Binding => {
            let size = throw.finished();
            let need = p.binding_for(size.width, size.height);
            let strips = account.strips;
            Some(SupplyAmount {
                there: Some(strips.cut + strips.planned),
                short: Some(strips.lacking()),
                ..of(strips.wanted, "strips", Some(need.length))?
            })
        }
        Item::Thread => {
            let need = thread(throw, account)?;
            of(need.spools_in_all, "spools", Some(need.total()))
        }
        Item::Bobbins => {
            let need = thread(throw, account)?;
            of(need.bobbins, "bobbins", Some(need.bobbin))
        }
        Item::Glue => {
            let glued = glued(throw, account);
            of(glued.bottles.unwrap_or(1), "bottles", None)
        }
        _ => None,
    }
}

/// Glue for the laps, the fabric squares and the binding's edge.
fn glued(throw: &Throw, account: &ClothAccount) -> Glue {
    let (p, size) = (&throw.plan, throw.finished());
    let round = (size.width + size.height) * 2;
    let halves = p.side * i64::from(pieced(throw, account));
    // Seams are pinned.
    let joins = match p.joining {
        Joining::Lapped => seams(p).joins,
        Joining::Seamed | Joining::Exposed => zero(),
    };
    glue(joins + halves + round, covers(throw), Gluing::default())
}

/// Where the pile does not give all binding strips: how many lack.
fn strips_short(throw: &Throw, account: &ClothAccount, context: Context<'_>) -> Vec<String> {
    let lacking = account.strips.lacking();
    match throw.pile.is_empty() || lacking == 0 {
        true => Vec::new(),
        false => vec![enough::strips_told(throw, account, context)],
    }
}

/// What to have at hand.
pub(super) fn gather(journal: &Journal, context: Context<'_>) -> GatherView {
    let throw = journal.throw();
    let p = &throw.plan;
    let (denim, cotton) = (cloth_for(throw, true), cloth_for(throw, false));
    let covered = covers(throw);
    let account = account(throw);
    let mut rows = Vec::new();
    let mut row = |item: Item, label: String, lines: Vec<String>| {
        rows.push(GatherRow {
            item,
            label,
            lines,
            have: throw.gathered.contains(&item),
        });
    };
    let mut lines = vec![say!(
        context,
        "item-denim-squares",
        n = account.wanted,
        begun = is_begun(throw, account.cut),
        open = account.wanted - account.cut,
        side = context.by(p.side, p.side)
    )];
    if throw.spares > 0 {
        lines.push(say!(context, "item-denim-spares", n = throw.spares));
    }
    let of_halves = pieced(throw, &account);
    if of_halves > 0 {
        lines.push(say!(
            context,
            "item-denim-pieced",
            n = of_halves,
            lap = context.length(p.lap)
        ));
    }
    lines.extend(match throw.pile.is_empty() {
        true => (account.short() > 0).then(|| unpiled(&account, context)),
        false => {
            let to_come = enough::denim_to_come(throw);
            Some(enough::enough_squares(&account, to_come, context))
        }
    });
    lines.extend(denims(throw, &account, context).into_iter().map(|d| d.said));
    row(Item::Denim, say!(context, "item-denim"), lines);
    for (i, (print, fabric)) in throw.prints.iter().zip(&account.fabrics).enumerate() {
        let placed = fabric.placed;
        if placed == 0 {
            continue;
        }
        let mut lines = vec![match print.patch {
            Some(side) => say!(
                context,
                "item-fabric-patches",
                n = placed,
                side = context.by(side, side)
            ),
            None => say!(
                context,
                "item-fabric-squares",
                n = placed,
                side = context.by(p.side, p.side)
            ),
        }];
        let gone = gone(throw, i as u8);
        lines.extend(gone_told(gone, context));
        if fabric.to_come > 0 {
            lines.push(say!(context, "item-fabric-piled", n = fabric.to_come));
        }
        if let (Some(there), Some(short)) = (fabric.there(), fabric.short()) {
            lines.push(match (short, fabric.to_come) {
                (0, 0) => say!(context, "item-enough", n = there),
                (0, come) if come == there => say!(context, "item-enough-of-it"),
                (0, _) => say!(context, "item-enough-in-all", n = there),
                _ => say!(context, "item-short", n = short),
            });
        } else if print.patch.is_none() {
            let quarter = crate::cloth::garments::fat_quarter(context.ruler.system);
            let each =
                crate::cloth::cutting::lay_out(&quarter, &how(p.side)).map_or(0, |c| c.count);
            if each > 0 {
                lines.push(say!(
                    context,
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
        say!(context, "item-binding"),
        [
            vec![
                say!(
                    context,
                    "item-binding-strips",
                    n = need.strips,
                    width = context.length(p.binding.strip),
                    longest = context.length(p.binding.longest)
                ),
                say!(
                    context,
                    "item-binding-length",
                    length = context.long(need.length),
                    n = need.joins
                ),
            ],
            super::work::strips_left(throw, context),
            strips_short(throw, &account, context),
            vec![super::bound::told(throw, context)],
            super::bound::on_a_lap(throw, context).into_iter().collect(),
        ]
        .concat(),
    );
    if let Some(thread) = thread(throw, &account) {
        let twin = matches!(p.stitch, Stitch::Twin { .. });
        let mut lines = vec![say!(
            context,
            "item-thread-needles",
            needles = thread.needles,
            each = long(thread.needle, context)
        )];
        lines.push(say!(
            context,
            "item-thread-in-all",
            n = thread.spools_in_all,
            size = wound(Winding::default().spool, context)
        ));
        if twin {
            lines.push(say!(context, "item-thread-twin"));
        }
        if matches!(p.stitch, Stitch::TwoRows { .. }) {
            lines.push(say!(context, "item-thread-rows"));
        }
        if let Some(rule) = thread.rule {
            lines.push(say!(
                context,
                "item-thread-rule",
                length = long(rule, context)
            ));
        }
        row(Item::Thread, say!(context, "item-thread"), lines);
        let lines = vec![say!(
            context,
            "item-bobbins-length",
            length = long(thread.bobbin, context),
            n = thread.bobbins,
            size = wound(Winding::default().bobbin, context)
        )];
        row(Item::Bobbins, say!(context, "item-bobbins"), lines);
    }
    let mut lines = vec![super::work::needle(p.stitch, context)];
    if matches!(p.stitch, Stitch::Twin { .. }) {
        lines.push(say!(context, "item-needles-besides"));
    }
    lines.push(say!(context, "item-needles-spare"));
    row(Item::Needles, say!(context, "item-needles"), lines);
    let glued = glued(throw, &account);
    let bottles = glued.bottles.unwrap_or(1);
    row(
        Item::Glue,
        say!(context, "item-glue"),
        vec![say!(
            context,
            "item-glue-dots",
            dots = glued.dots,
            n = bottles,
            size = context.either(say!(context, "bottle-inch"), say!(context, "bottle-metric"))
        )],
    );
    row(
        Item::Marker,
        say!(context, "item-marker"),
        vec![say!(context, "item-marker-test")],
    );
    let mut lines = vec![say!(
        context,
        "item-cutter-what",
        side = context.length(p.side)
    )];
    if throw.assembly().blocks().iter().any(|b| b.count() == 4) {
        let trim = context.length(p.target());
        lines.push(say!(context, "item-cutter-square", side = trim));
    }
    row(Item::Cutter, say!(context, "item-cutter"), lines);
    row(
        Item::Press,
        say!(context, "item-press"),
        vec![say!(context, "item-press-what")],
    );
    let lapped = p.joining == Joining::Lapped;
    row(
        Item::Clips,
        match lapped {
            true => say!(context, "item-clips"),
            false => say!(context, "item-clips-pins"),
        },
        vec![match lapped {
            true => say!(context, "item-clips-what"),
            false => say!(context, "item-clips-pins-what"),
        }],
    );
    row(
        Item::Ripper,
        say!(context, "item-ripper"),
        vec![match p.joining {
            Joining::Exposed => say!(context, "item-ripper-snip"),
            _ => say!(context, "item-ripper-what"),
        }],
    );
    row(
        Item::Care,
        say!(context, "item-care"),
        vec![say!(context, "item-care-what")],
    );

    // A square of two halves has its lap more of denim.
    let laps = square_metres(p.side, p.lap) * f64::from(of_halves);
    let small = patch_area(throw);
    let weight = mass(p, covered - throw.small_patches(), &denim, &cotton)
        + laps * denim.weight
        + small * cotton.weight;
    let kg = in_kilograms(weight);
    let (lb, g) = (kg / KG_PER_LB, kg * 1_000.0);
    let pounds = match lb < 1.0 {
        true => say!(context, "ounces-weight", n = (lb * 16.0).round() as i64),
        false => say!(context, "pounds", n = context.words.decimal(lb, 1)),
    };
    let metric = match kg < 1.0 {
        true => say!(context, "grams", n = (g / 10.0).round() as i64 * 10),
        false => say!(context, "kilograms", n = context.words.decimal(kg, 1)),
    };
    let shown = context.either(pounds, metric);
    let paces = crate::log::pace::paces(journal);
    let figure = |key: &str, text: String| Figure {
        label: context.say(&format!("figure-{key}"), &[]),
        value: context.plain(text),
    };
    let cloth = context.either(
        say!(
            context,
            "ounces",
            n = context.words.decimal(in_ounces(denim.weight), 1)
        ),
        say!(context, "gsm", n = in_gsm(denim.weight).round() as i64),
    );
    let whole = |n: f64| context.words.decimal(n, 0);
    let load = context.either(
        say!(context, "pounds", n = whole(WASHER_KG / KG_PER_LB)),
        say!(context, "kilograms", n = whole(WASHER_KG)),
    );
    let load = load.as_str();
    let washer = match washing(weight, kilograms(WASHER_KG)) {
        Washing::Roomy => say!(context, "washer-roomy", size = load),
        Washing::Tight => say!(context, "washer-tight", size = load),
        Washing::TooHeavy => say!(context, "washer-heavy", size = load),
    };
    GatherView {
        head: head(journal, context),
        rows,
        figures: vec![
            figure("weight", shown),
            figure("denim-weight", cloth),
            figure("time", time_left(throw, &paces, context).told),
        ],
        said: vec![washer, say!(context, "gather-estimates")],
    }
}
