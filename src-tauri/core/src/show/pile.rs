//! The clothes pile, and one piece's outline with its cuts.

use crate::cloth::garments::{self, ClothEdges, GarmentKind, GarmentPart, GarmentSize, Source};
use crate::cloth::pile::{Heap, Use};
use crate::cloth::weight::{in_gsm, in_ounces};
use crate::command::{Command, decide};
use crate::log::journal::Journal;
use crate::measure::{Count, Length, System, in_nm, inches, millimetres, nm, zero};
use crate::plan::Plan;
use crate::show::context::Context;
use crate::show::cutting::part;
use crate::show::cutting_list::strips_out;
use crate::show::enough::{
    denim_to_come, denims_to_cut, each_to_cut, enough_squares, is_unsure, strips_told,
};
use crate::show::off::RemedyRow;
use crate::show::parts::{Button, Choice, Figure, Head, head};
use crate::show::work::{CutNext, cut_next};
use crate::show::{change, fields, names};
use crate::throw::Throw;
use crate::throw::account::{ClothAccount, PieceAccount, account};
use crate::types::TS;
use serde::Serialize;
use std::collections::BTreeMap;

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
    /// It has an outline that can be shown; a pack has none.
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
    /// Lay further parts of it flat as pieces of their own.
    pub parts: Vec<Button>,
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
    /// The piece to cut next, where all that is needed is on the pile.
    pub next: Option<CutNext>,
    /// All squares of the throw are cut, and the pile was begun: the work goes on elsewhere.
    pub all_cut: bool,
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

/// What is said of squares bought ready cut that are larger than the plan's: how many each
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

/// What is said of fabric squares smaller than the plan's: how each lies on a denim square.
fn patches(throw: &Throw, heap: &Heap, context: Context<'_>) -> Option<String> {
    let Source::Precut(pack) = &heap.from else {
        return None;
    };
    let side = pack.side;
    (side < throw.plan.side && !heap.makes.is_denim()).then(|| {
        say!(
            context,
            "pack-patches",
            side = context.length(side),
            wanted = context.length(throw.plan.side),
            round = context.length(throw.plan.round(side))
        )
    })
}

/// Most strips more than planned that are tried to make them shorter.
const MOST_MORE_STRIPS: u32 = 8;

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
    let account = account(throw);
    let denim = || throw.pile.values().filter(|h| h.makes.is_denim());
    let count = |n: u32| context.plain(say!(context, "number", n = n));
    let figure = |key: &str, value| Figure {
        label: context.say(&format!("figure-{key}"), &[]),
        value,
    };
    let counted = |n: u32, pieced: u32| {
        let parts = names::parted(n, pieced, context);
        context.plain(say!(context, "number-parted", n = n, parts = parts))
    };
    let open = account.wanted - account.cut;
    let range = denim_to_come(throw);
    let [low, high] = range;
    let mut figures = vec![
        figure("wanted", count(account.wanted)),
        figure("cut-for-it", counted(account.cut, throw.pieced_placed())),
        figure("open", count(open)),
    ];
    if account.spares > 0 {
        let pieced = throw.spares_pieced().get();
        figures.push(figure("spares", counted(account.spares, pieced)));
    }
    let mut to_come = counted(account.to_come, account.pieced);
    if low < high {
        to_come = context.plain(say!(context, "number-about", n = to_come.text));
    }
    figures.push(figure("to-come", to_come));
    if open > 0 {
        figures.push(figure("keep-back", count(account.keep)));
    }
    let strips = account.strips;
    figures.push(figure(
        "strips-open",
        context.plain(say!(
            context,
            "strips-of",
            open = strips.open(),
            wanted = strips.wanted
        )),
    ));
    let of_each = by_denim(throw, &account, context);
    let mut said = Vec::new();
    if throw.pile.is_empty() {
        said.push(say!(context, "pile-empty"));
    }
    said.extend(enough(throw, &account, range, context));
    match of_each {
        sentences if sentences.is_empty() => said.extend(denims_to_cut(throw, context)),
        sentences => said.extend(sentences),
    }
    // Where it is not sure to be enough, that was said with the range.
    if low < high && !is_unsure(&account, range) {
        said.push(say!(context, "pile-range", low = low, high = high));
    }
    if denim().any(|h| h.counted.iter().any(Option::is_none)) {
        said.push(say!(context, "pile-estimate"));
    }
    let mut ways = Vec::new();
    if !throw.pile.is_empty() {
        ways.extend(share_out(throw, &account, context));
        if account.over() < 0 {
            ways.extend(fewer(
                throw,
                i64::from(account.wanted) + account.over(),
                context,
            ));
        } else {
            ways.extend(shorter(throw, &account, context));
        }
    }
    let strips_out = strips_out(journal);
    PileView {
        head: head(journal, context),
        figures,
        said,
        rows: throw
            .pile
            .iter()
            .map(|(n, heap)| row(throw, (*n, heap), &account, &strips_out, context))
            .collect(),
        next: throw
            .uncut(None)
            .next()
            .filter(|_| account.over() >= 0)
            .and_then(|square| cut_next(throw, square, &account, context)),
        all_cut: !throw.pile.is_empty() && account.cut >= account.wanted,
        ways,
        kinds: kinds(context),
        sizes: sizes(context),
        makes: uses(throw, context).collect(),
        cloths: cloths(context),
    }
}

/// Whether the denim at hand and on the pile is enough: for the squares and the spares to keep
/// back, and for the binding.
fn enough(
    throw: &Throw,
    account: &ClothAccount,
    to_come: [Count; 2],
    context: Context<'_>,
) -> Vec<String> {
    let mut said = Vec::new();
    let squares = account.cut < account.wanted;
    // An empty pile is told of by itself.
    if !(throw.pile.is_empty() && squares && account.short() > 0) {
        said.push(enough_squares(account, to_come, context));
    }
    if throw.pile.is_empty() && squares {
        return said;
    }
    let over = account.strips.over;
    if over > 0 {
        said.push(say!(context, "pile-strips-over", n = over));
    }
    said.push(strips_told(throw, account, context));
    said
}

/// Squares lacking of one denim and another than its own that the pile gives too many of: the
/// squares not cut yet can be shared out anew.
fn share_out(throw: &Throw, account: &ClothAccount, context: Context<'_>) -> Option<RemedyRow> {
    let lacking = |account: &ClothAccount| -> u32 {
        let each = account.denims.iter();
        each.map(|denim| account.short_of(denim)).sum()
    };
    let before = lacking(account);
    let over = account
        .denims
        .iter()
        .any(|denim| denim.to_come > denim.open);
    if before == 0 || !over {
        return None;
    }
    let action = Command::ShareDenims;
    let events = decide(Some(throw), &action).ok()?;
    let after = throw.after(&events);
    if lacking(&crate::throw::account::account(&after)) >= before {
        return None;
    }
    let title = say!(context, "way-share-denims");
    Some(RemedyRow {
        button: Button {
            label: title.clone(),
            action,
        },
        done: title.clone(),
        lines: vec![each_to_cut(&after, context)],
        title,
    })
}

/// Shorter binding strips that the pile gives without losing a square that is needed: the
/// longest of which there are enough.
fn shorter(throw: &Throw, account: &ClothAccount, context: Context<'_>) -> Option<RemedyRow> {
    let plan = throw.plan;
    let strips = account.strips;
    if strips.lacking() == 0 || strips.cut > 0 {
        return None;
    }
    let size = throw.finished();
    let need = plan.binding_for(size.width, size.height);
    (need.strips + 1..=need.strips + MOST_MORE_STRIPS).find_map(|count| {
        // So many strips, each lapped over the next, reach round: the next mark of the ruler.
        let lapped = need.length + plan.take() * i64::from(count - 1);
        let each = context
            .ruler
            .at_least(nm(in_nm(lapped).div_euclid(i64::from(count)) + 1));
        let mut tried = plan;
        tried.binding.longest = each;
        let action = Command::ChangePlan { plan: tried };
        let events = decide(Some(throw), &action).ok()?;
        let after = throw.after(&events);
        let cloth = crate::throw::account::account(&after);
        if cloth.strips.lacking() > 0 || cloth.over() < account.over().min(i64::from(account.keep))
        {
            return None;
        }
        let size = context.by(tried.binding.strip, each);
        let title = say!(
            context,
            "way-shorter-strips",
            n = cloth.strips.wanted,
            size = size
        );
        Some(RemedyRow {
            button: Button {
                label: title.clone(),
                action,
            },
            done: title.clone(),
            lines: vec![say!(
                context,
                "way-shorter-strips-joins",
                n = cloth.strips.wanted.saturating_sub(1),
                before = need.joins
            )],
            title,
        })
    })
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

/// For each denim, where a heap names one: how many squares are still to be cut of it, and
/// whether what is on the pile and the spares at hand, of whatever denim, make them up.
fn by_denim(throw: &Throw, account: &ClothAccount, context: Context<'_>) -> Vec<String> {
    let named = |h: &Heap| matches!(h.makes, Use::Denim { denim: Some(_) });
    if throw.denims.len() < 2 || !throw.pile.values().any(named) {
        return Vec::new();
    }
    let each = throw.denims.iter().zip(&account.denims);
    each.filter(|(_, cloth)| cloth.open > 0 || cloth.to_come > 0)
        .map(|(denim, cloth)| {
            say!(
                context,
                "pile-of-denim",
                denim = denim.name.as_str(),
                open = cloth.open,
                gives = cloth.to_come,
                short = account.short_of(cloth)
            )
        })
        .collect()
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

fn row(
    throw: &Throw,
    (n, heap): (u16, &Heap),
    account: &ClothAccount,
    strips_out: &BTreeMap<(u16, usize), Count>,
    context: Context<'_>,
) -> HeapRow {
    // What is cut up gave its strips; the account has those to come.
    let pieces = || {
        (0..heap.counted.len()).map(|i| {
            let mut piece = account.piece(n, i);
            if piece.cut {
                piece.strips = strips_out.get(&(n, i)).copied().unwrap_or(Count::NONE);
            }
            (i, piece)
        })
    };
    let squares: Count = pieces().map(|(_, p)| p.squares).sum();
    let strips: Count = pieces().map(|(_, p)| p.strips).sum();
    let pieced: Count = pieces().map(|(_, p)| p.pieced).sum();
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
        n = squares,
        parts = names::parted(squares.get(), pieced.get(), context),
        strips = strips
    );
    let said = match cut_down(throw, heap, context).or_else(|| patches(throw, heap, context)) {
        Some(cut) => say!(context, "heap-cut-down", gives = gives, cut = cut),
        None => gives,
    };
    HeapRow {
        n,
        title: heap.name().to_string(),
        said,
        makes: makes.unwrap_or_default() as u32,
        uses,
        pieces: pieces()
            .map(|(i, piece)| HeapPiece {
                index: i as u8,
                label: part(heap, i, context),
                said: match piece.cut {
                    true => say!(
                        context,
                        "piece-counted",
                        n = piece.squares,
                        parts = parted(piece, context),
                        strips = piece.strips
                    ),
                    false => expected(heap, i, piece, context),
                },
                cut: piece.cut,
                outlined: matches!(heap.from, Source::Cloth(_)),
            })
            .collect(),
        weight: weight(heap, context),
        stretch: heap.cloth.stretch,
        washed: heap.cloth.washed,
        trimming: fields::field(heap.trimming, context),
        parts: further_parts(throw, n, context),
        take: decide(Some(throw), &action).is_ok().then(|| Button {
            label: say!(context, "heap-take", name = heap.name()),
            action,
        }),
    }
}

/// Parts of a garment that may be laid flat as pieces of their own.
fn further_parts(throw: &Throw, n: u16, context: Context<'_>) -> Vec<Button> {
    let parts = [
        (GarmentPart::Pocket, "add-pocket"),
        (GarmentPart::Waistband, "add-waistband"),
    ];
    let buttons = parts.into_iter().map(|(part, key)| Button {
        label: context.say(key, &[]),
        action: Command::AddPart { n, part },
    });
    buttons
        .filter(|button| decide(Some(throw), &button.action).is_ok())
        .collect()
}

/// How many squares of a piece are whole and how many pieced.
fn parted(piece: PieceAccount, context: Context<'_>) -> String {
    names::parted(piece.squares.get(), piece.pieced.get(), context)
}

/// What a piece is expected to give.
fn expected(heap: &Heap, index: usize, piece: PieceAccount, context: Context<'_>) -> String {
    let gives = say!(
        context,
        "piece-expected",
        n = piece.squares,
        parts = parted(piece, context),
        strips = piece.strips
    );
    let unsaid = u8::try_from(index).is_ok_and(|i| heap.worn_unsaid.contains(&i));
    match unsaid {
        true => say!(context, "piece-worn-unsaid", gives = gives),
        false => gives,
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
