//! The clothes pile, and one piece's outline with its cuts.

use crate::cloth::estimate;
use crate::cloth::garments::{self, ClothEdges, GarmentKind, GarmentSize, Source};
use crate::cloth::pile::{Heap, Use};
use crate::cloth::weight::{in_gsm, in_ounces};
use crate::command::{Command, decide};
use crate::log::journal::Journal;
use crate::measure::{Count, Length, System, in_nm, inches, millimetres, zero};
use crate::plan::Plan;
use crate::show::context::Context;
use crate::show::cutting::part;
use crate::show::off::RemedyRow;
use crate::show::parts::{Button, Choice, Figure, Head, head};
use crate::show::{change, fields};
use crate::throw::Throw;
use crate::throw::tasks::Task;
use serde::Serialize;
use ts_rs::TS;

/// One piece of a heap.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct HeapPiece {
    /// Counted from 0.
    pub index: u8,
    /// Which piece.
    pub label: String,
    /// What it gives or gave, in words.
    pub said: String,
    /// It is cut up and counted.
    pub cut: bool,
    /// It has an outline that can be looked at; a pack has none.
    pub outlined: bool,
}

/// One heap on the pile.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HeapRow {
    /// Its number.
    pub n: u16,
    /// What it is called.
    pub title: String,
    /// What it is for and gives, in words.
    pub said: String,
    /// What it can be for now, with names; nothing where there is no choice.
    pub uses: Vec<Choice<Use>>,
    /// Which of them it is for, counted from 0.
    pub makes: u32,
    /// Its pieces.
    pub pieces: Vec<HeapPiece>,
    /// Weight of its cloth, with its unit.
    pub weight: String,
    /// It stretches.
    pub stretch: bool,
    /// It was washed before.
    pub washed: bool,
    /// Squares are cut so much larger, with its unit.
    pub trimming: String,
    /// Takes it off the pile, while nothing of it is cut.
    pub take: Option<Button>,
}

/// The clothes pile.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct PileView {
    /// Common to all screens.
    pub head: Head,
    /// Squares wanted, cut for the throw, still to cut; spares; what the pile still gives.
    pub figures: Vec<Figure>,
    /// Whether it is enough, a sentence each.
    pub said: Vec<String>,
    /// The heaps.
    pub rows: Vec<HeapRow>,
    /// What can be done where it is not enough.
    pub ways: Vec<RemedyRow>,
    /// Garments with a starting outline.
    pub kinds: Vec<Choice<GarmentKind>>,
    /// Their sizes.
    pub sizes: Vec<Choice<GarmentSize>>,
    /// What a heap can be for.
    pub makes: Vec<Choice<Use>>,
    /// Lengths of cloth as they are sold, to begin with.
    pub cloths: Vec<ClothOffer>,
}

/// Cloth as it is sold, with its usual measures as text for the fields.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct ClothOffer {
    /// What it is called.
    pub label: String,
    /// Its width; empty where every piece is another.
    pub width: String,
    /// Its length.
    pub length: String,
    /// Trimmed off each cut edge.
    pub cut: String,
    /// Trimmed off each selvedge.
    pub selvedge: String,
    /// How many of its sides are selvedges.
    pub selvedges: u8,
}

/// Cloth off the roll, fat quarters, and any other piece: common practice, no source.
pub(super) fn cloths(context: Context<'_>) -> Vec<ClothOffer> {
    let system = context.ruler.system;
    let roll = match system {
        System::Inch => [inches(44), inches(36)],
        System::Metric => [millimetres(1_100), millimetres(1_000)],
    };
    let [_, quarter_length, _, quarter_width] = garments::fat_quarter(system).reach();
    let offers = [
        ("fat-quarter", Some([quarter_width, quarter_length]), 1),
        ("yardage", Some(roll), 2),
        ("piece", None, 0),
    ];
    let offer = |(key, size, selvedges): (&str, Option<[Length; 2]>, u8)| {
        let edges = ClothEdges::usual(system, selvedges);
        let [width, length] = size.map_or_else(Default::default, |size| {
            size.map(|l| fields::field(l, context))
        });
        ClothOffer {
            label: context.say(&format!("cloth-{key}"), &[]),
            width,
            length,
            cut: fields::field(edges.cut, context),
            selvedge: fields::field(edges.selvedge, context),
            selvedges,
        }
    };
    offers.map(offer).into()
}

/// What is told of squares bought ready cut that are larger than the plan's: how many each
/// gives, and what is left of it.
fn cut_down(throw: &Throw, heap: &Heap, context: Context<'_>) -> Option<String> {
    let Source::Precut(pack) = &heap.from else {
        return None;
    };
    let wanted = throw.plan.side;
    if pack.side <= wanted {
        return None;
    }
    let each = in_nm(pack.side) / in_nm(wanted).max(1);
    let left = pack.side - wanted * each;
    Some(say!(
        context,
        "pack-cut-down",
        side = context.length(pack.side),
        wanted = context.length(wanted),
        n = each * each,
        left = context.length(left),
        over = i64::from(left > zero())
    ))
}

const SIZES: [(GarmentSize, &str); 3] = [
    (GarmentSize::Small, "small"),
    (GarmentSize::Medium, "medium"),
    (GarmentSize::Large, "large"),
];

fn kind_key(kind: GarmentKind) -> &'static str {
    match kind {
        GarmentKind::MensJeans => "mens-jeans",
        GarmentKind::WomensJeans => "womens-jeans",
        GarmentKind::ChildsJeans => "childs-jeans",
        GarmentKind::JacketBack => "jacket-back",
        GarmentKind::Skirt => "skirt",
        GarmentKind::Sheet => "sheet",
        GarmentKind::Shirt => "shirt",
        GarmentKind::Blouse => "blouse",
    }
}

/// Garments with a starting outline.
pub(super) fn kinds(context: Context<'_>) -> Vec<Choice<GarmentKind>> {
    let kinds = GarmentKind::ALL.into_iter();
    kinds
        .map(|value| Choice {
            value,
            label: context.say(&format!("garment-{}", kind_key(value)), &[]),
        })
        .collect()
}

/// Their sizes.
pub(super) fn sizes(context: Context<'_>) -> Vec<Choice<GarmentSize>> {
    let sizes = SIZES.into_iter();
    sizes
        .map(|(value, key)| Choice {
            value,
            label: context.say(&format!("size-{key}"), &[]),
        })
        .collect()
}

/// The clothes pile.
pub(super) fn pile(journal: &Journal, context: Context<'_>) -> PileView {
    let throw = journal.throw();
    let side = throw.plan.side;
    let wanted = throw.plan.squares() as usize;
    let cut = throw
        .assembly()
        .whole()
        .squares()
        .filter(|s| throw.has(*s, Task::Cut))
        .count();
    let heaps: Vec<(u16, &Heap, Vec<Count>)> = throw
        .pile
        .iter()
        .map(|(n, heap)| (*n, heap, heap.squares(side)))
        .collect();
    let denim = || heaps.iter().filter(|(_, h, _)| h.makes.is_denim());
    let to_come: Count = denim().map(|(_, h, squares)| h.to_come(squares)).sum();
    let have = cut as i64 + i64::from(throw.spares) + i64::from(to_come);
    let over = have - wanted as i64;
    let count = |n: i64| context.plain(say!(context, "number", n = n));
    let figure = |key: &str, value| Figure {
        label: context.say(&format!("figure-{key}"), &[]),
        value,
    };
    let open = wanted - cut;
    let mut figures = vec![
        figure("wanted", count(wanted as i64)),
        figure("cut-for-it", count(cut as i64)),
        figure("open", count(open as i64)),
    ];
    if throw.spares > 0 {
        figures.push(figure("spares", count(i64::from(throw.spares))));
    }
    figures.push(figure("to-come", count(i64::from(to_come))));
    let (of_each, lacking) = by_denim(throw, &heaps, context);
    let mut said = Vec::new();
    if throw.pile.is_empty() {
        said.push(say!(context, "pile-empty"));
    }
    if cut == wanted {
        said.push(say!(context, "pile-all-cut"));
    } else if over >= 0 && lacking {
        said.push(say!(context, "pile-uneven"));
    } else if over >= 0 {
        said.push(say!(context, "pile-enough", over = over));
    } else if !throw.pile.is_empty() {
        said.push(say!(context, "pile-short", short = -over));
    }
    match of_each {
        told if told.is_empty() => said.extend(super::work::denims_to_cut(throw, context)),
        told => said.extend(told),
    }
    let [low, high] = denim().fold([Count::NONE; 2], |[low, high], (_, h, _)| {
        let [least, most] = estimate::to_come(h, &throw.plan);
        [low + least, high + most]
    });
    if low < high {
        said.push(say!(context, "pile-range", low = low, high = high));
    }
    if denim().any(|(_, h, _)| h.counted.iter().any(Option::is_none)) {
        said.push(say!(context, "pile-estimate"));
    }
    PileView {
        head: head(journal, context),
        figures,
        said,
        rows: heaps
            .iter()
            .map(|(n, heap, squares)| row(throw, *n, heap, squares, context))
            .collect(),
        ways: if over < 0 && !throw.pile.is_empty() {
            fewer(throw, have, context)
        } else {
            Vec::new()
        },
        kinds: kinds(context),
        sizes: sizes(context),
        makes: uses(throw, context).collect(),
        cloths: cloths(context),
    }
}

/// What a heap may be for: denim squares, or fabric squares of one of the prints.
fn uses(throw: &Throw, context: Context<'_>) -> impl Iterator<Item = Choice<Use>> {
    let denim = denims(throw).map(move |denim| Choice {
        value: Use::Denim { denim },
        label: of_denim(throw, denim, "make-denim", context),
    });
    let prints = throw.prints.iter().enumerate();
    denim.chain(prints.map(|(i, print)| Choice {
        value: Use::Fabric { print: i as u8 },
        label: print.name.clone(),
    }))
}

/// What a heap of denim may be for: any of the squares; where there are several denims, those
/// of one as well.
fn denims(throw: &Throw) -> impl Iterator<Item = Option<u8>> {
    let several = throw.denims.len() > 1;
    let each = (0..throw.denims.len()).map(|d| Some(d as u8));
    std::iter::once(None).chain(each.filter(move |_| several))
}

/// Words for a heap of denim, with the denim it is if that was said.
pub(super) fn of_denim(
    throw: &Throw,
    denim: Option<u8>,
    key: &str,
    context: Context<'_>,
) -> String {
    let named = denim.and_then(|d| throw.denims.get(usize::from(d)));
    match named {
        Some(denim) => context.say(
            &format!("{key}-of"),
            &[("denim", denim.name.as_str().into())],
        ),
        None => context.say(key, &[]),
    }
}

/// For each denim that a heap names: how many squares are still to be cut of it, and whether
/// what is on the pile and the spares at hand, of whatever denim, make them up; and whether one
/// of them falls short that no heap of unnamed denim can fill.
fn by_denim(
    throw: &Throw,
    heaps: &[(u16, &Heap, Vec<Count>)],
    context: Context<'_>,
) -> (Vec<String>, bool) {
    let given = |d: u8| {
        let of_it = heaps
            .iter()
            .filter(move |(_, h, _)| h.makes == Use::Denim { denim: Some(d) });
        of_it
            .map(|(_, h, squares)| h.to_come(squares))
            .sum::<Count>()
    };
    let any = heaps
        .iter()
        .any(|(_, h, _)| matches!(h.makes, Use::Denim { denim: Some(_) }));
    if !any {
        return (Vec::new(), false);
    }
    let mut lacking = false;
    let each = throw.denims.iter().zip(throw.uncut_by_denim());
    let told = each
        .enumerate()
        .filter_map(|(d, (denim, open))| {
            let gives = given(d as u8);
            let short = open.saturating_sub((gives + throw.spares).get());
            lacking |= short > 0;
            (open > 0 || gives > 0).then(|| {
                say!(
                    context,
                    "pile-of-denim",
                    denim = denim.name.as_str(),
                    open = open,
                    gives = gives,
                    short = short
                )
            })
        })
        .collect();
    let unnamed = heaps
        .iter()
        .any(|(_, h, squares)| h.makes == Use::Denim { denim: None } && h.to_come(squares) > 0);
    (told, lacking && !unnamed)
}

/// What can be done where the pile is too small: fewer squares, while the sewn ones stay.
fn fewer(throw: &Throw, have: i64, context: Context<'_>) -> Vec<RemedyRow> {
    let plan = throw.plan;
    let mut found: Vec<(u32, Plan)> = Vec::new();
    for less_across in 0..plan.across {
        for less_down in 0..plan.down {
            let tried = Plan {
                across: plan.across - less_across,
                down: plan.down - less_down,
                ..plan
            };
            if i64::from(tried.squares()) <= have && tried != plan {
                found.push((tried.squares(), tried));
            }
        }
    }
    // The fewest squares given up; of as many, the shape nearest to the planned one.
    let shape = |p: &Plan| {
        let ratio = |p: &Plan| f64::from(p.across) / f64::from(p.down);
        (ratio(p) / ratio(&plan)).ln().abs()
    };
    found.sort_by(|a, b| b.0.cmp(&a.0).then(shape(&a.1).total_cmp(&shape(&b.1))));
    found
        .into_iter()
        .filter_map(|(squares, tried)| {
            let action = Command::ChangePlan { plan: tried };
            let events = decide(Some(throw), &action).ok()?;
            let after = throw.after(&events);
            let size = after.finished();
            let title = say!(context, "grid", across = tried.across, down = tried.down);
            let mut lines = vec![
                say!(
                    context,
                    "grid-uses",
                    n = squares,
                    left = have - i64::from(squares)
                ),
                say!(
                    context,
                    "way-size",
                    size = context.by(size.width, size.height)
                ),
            ];
            lines.extend(change::left_over(throw, &after, context));
            Some(RemedyRow {
                button: Button {
                    label: title.clone(),
                    action,
                },
                done: title.clone(),
                title,
                lines,
            })
        })
        .take(4)
        .collect()
}

fn row(throw: &Throw, n: u16, heap: &Heap, squares: &[Count], context: Context<'_>) -> HeapRow {
    let what = match heap.makes {
        Use::Denim { denim } => of_denim(throw, denim, "heap-denim", context),
        Use::Fabric { print } => {
            let print = throw
                .prints
                .get(usize::from(print))
                .map_or("", |p| p.name.as_str());
            say!(context, "heap-fabric", print = print)
        }
    };
    let action = Command::TakeHeap { n };
    let mut uses: Vec<_> = uses(throw, context)
        .filter(|u| heap.may_make(u.value))
        .collect();
    let makes = uses.iter().position(|u| u.value == heap.makes);
    if uses.len() == 1 {
        uses.clear();
    }
    let gives = say!(
        context,
        "heap-gives",
        what = what,
        n = squares.iter().copied().sum::<Count>()
    );
    let said = match cut_down(throw, heap, context) {
        Some(cut) => say!(context, "heap-cut-down", gives = gives, cut = cut),
        None => gives,
    };
    HeapRow {
        n,
        title: heap.name().to_string(),
        said,
        makes: makes.unwrap_or_default() as u32,
        uses,
        pieces: heap
            .counted
            .iter()
            .zip(squares)
            .enumerate()
            .map(|(i, (counted, n))| HeapPiece {
                index: i as u8,
                label: part(heap, i, context),
                said: match counted {
                    Some(_) => say!(context, "piece-counted", n = *n),
                    None => say!(context, "piece-expected", n = *n),
                },
                cut: counted.is_some(),
                outlined: matches!(heap.from, Source::Cloth(_)),
            })
            .collect(),
        weight: weight(heap, context),
        stretch: heap.cloth.stretch,
        washed: heap.cloth.washed,
        trimming: fields::field(heap.trimming, context),
        take: decide(Some(throw), &action).is_ok().then(|| Button {
            label: say!(context, "heap-take", name = heap.name()),
            action,
        }),
    }
}

/// The weight of a heap's cloth with its unit.
fn weight(heap: &Heap, context: Context<'_>) -> String {
    let weight = heap.cloth.weight;
    context.either(
        say!(
            context,
            "ounces",
            n = context.words.decimal(in_ounces(weight), 1)
        ),
        say!(context, "gsm", n = in_gsm(weight).round() as i64),
    )
}
