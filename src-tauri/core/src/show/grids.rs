//! Grids from the squares at hand or from a wished-for size.

use crate::cloth::estimate::{self, Outlook};
use crate::cloth::garments::{GarmentKind, GarmentSize, GarmentStart, Knees, Precut};
use crate::command::Rejection;
use crate::measure::{Count, Length, inches, zero};
use crate::plan::{Plan, grids};
use crate::show::context::Context;
use crate::show::errors;
use crate::show::plan::{PlanDraft, read_draft};
use crate::types::TS;
use crate::words::{Problem, Shown};
use serde::{Deserialize, Serialize};

/// What grids to look for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "by")]
pub enum GridWish {
    /// From the squares at hand.
    Squares {
        /// How many, as typed.
        have: String,
    },
    /// From the jeans and the fabric she has, a size she wishes for, or both.
    Cloth {
        /// Her jeans.
        jeans: Vec<JeansTyped>,
        /// A pack of fabric squares.
        pack: Option<PackTyped>,
        /// Width, as typed; may be empty.
        width: String,
        /// Height, as typed; may be empty.
        height: String,
    },
    /// From a size.
    Size {
        /// Width, as typed.
        width: String,
        /// Height, as typed.
        height: String,
    },
}

/// Jeans she has, as said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct JeansTyped {
    /// How many pairs.
    pub pairs: u32,
    /// Which.
    pub kind: GarmentKind,
    /// How large; none where she will measure.
    pub size: Option<GarmentSize>,
    /// How their knees are.
    pub knees: Knees,
}

/// Squares of fabric bought ready cut, as said.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PackTyped {
    /// Side of one, as typed.
    pub side: String,
    /// How many.
    pub count: u32,
}

/// One grid that comes close.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct GridRow {
    /// Squares across.
    pub across: u16,
    /// Squares down.
    pub down: u16,
    /// The grid in words.
    pub title: String,
    /// Its finished size.
    pub size: Shown,
    /// What is left over or amiss, and why.
    pub why: Vec<String>,
}

/// The grids that come closest.
#[derive(Debug, Clone, Default, PartialEq, Serialize, TS)]
pub struct GridsView {
    /// What is wrong with the wish.
    pub problem: Option<Problem>,
    /// What is wrong with the side of the pack's squares.
    pub pack: Option<Problem>,
    /// What there is, a sentence each.
    pub said: Vec<String>,
    /// What the plan's own grid takes of that, and whether it is enough.
    pub own: Vec<String>,
    /// Best first.
    pub grids: Vec<GridRow>,
}

/// Most pairs of one kind that are laid out.
const MOST_PAIRS: u32 = 99;
/// Most rows of jeans.
const MOST_JEANS: usize = 40;

/// The grids that her jeans and the fabric allow, or a size asks for, and what is lacking.
fn from_cloth(
    plan: &Plan,
    (jeans, pack): (&[JeansTyped], Option<&PackTyped>),
    size: Option<(Length, Length)>,
    context: Context<'_>,
) -> GridsView {
    let mut have = Outlook::default();
    let mut one = None;
    for row in jeans.iter().take(MOST_JEANS).filter(|row| row.pairs > 0) {
        let start = GarmentStart {
            kind: row.kind,
            size: row.size,
            knees: row.knees,
            system: context.ruler.system,
        };
        let pair = Outlook::of(start, plan);
        have = have.with(pair, row.pairs.min(MOST_PAIRS));
        one = one.or(Some(pair));
    }
    let pairs: u32 = jeans
        .iter()
        .map(|row| row.pairs.min(MOST_PAIRS))
        .fold(0, u32::saturating_add);
    // Where no jeans are named, a usual pair is what is counted in.
    let pair = one.unwrap_or_else(|| {
        let usual = GarmentStart {
            kind: GarmentKind::MensJeans,
            size: None,
            knees: Knees::Unknown,
            system: context.ruler.system,
        };
        Outlook::of(usual, plan)
    });
    let mut said = Vec::new();
    if pairs > 0 {
        said.push(say!(
            context,
            "cloth-gives",
            pairs = pairs,
            low = have.low.squares,
            high = have.high.squares
        ));
    }
    said.extend(pack.and_then(|pack| pack_told(plan, pack, context)));
    let with = |g: &grids::Grid| Plan {
        across: g.across,
        down: g.down,
        ..*plan
    };
    let sure = |g: &grids::Grid| estimate::enough(&with(g), have.low);
    let likely = |g: &grids::Grid| estimate::enough(&with(g), have.high);
    let mut found: Vec<grids::Grid> = Vec::new();
    let mut add = |more: Vec<grids::Grid>| {
        for grid in more {
            if !found
                .iter()
                .any(|g| (g.across, g.down) == (grid.across, grid.down))
            {
                found.push(grid);
            }
        }
    };
    if let Some((width, height)) = size {
        add(grids::for_size(plan, width, height, 3));
    }
    if pairs > 0 {
        let of = |most: u32, fits: &dyn Fn(&grids::Grid) -> bool, n: usize| {
            let mut all = grids::for_squares(plan, most.max(1), 400);
            all.retain(fits);
            all.truncate(n);
            all
        };
        let wished = size.is_some();
        add(of(have.low.squares, &sure, if wished { 1 } else { 2 }));
        add(of(have.high.squares, &likely, 1));
        if !wished {
            // One that is larger, so that what it takes can be shown.
            let larger = have.high.squares.saturating_mul(3) / 2;
            add(of(larger, &|g| !likely(g), 1));
        }
    }
    let takes = |plan: &Plan| {
        let needs = estimate::needs(plan);
        let more = estimate::more_for(plan, have, pair);
        let enough = match more {
            Some([_, 0]) => say!(context, "cloth-enough"),
            Some([0, most]) => say!(context, "cloth-perhaps", most = most),
            Some([least, most]) => {
                let key = match (pairs > 0, least == most) {
                    (true, true) => "cloth-more",
                    (true, false) => "cloth-more-range",
                    (false, true) => "cloth-pairs",
                    (false, false) => "cloth-pairs-range",
                };
                let answer = match least == most {
                    true => vec![("n", most.into())],
                    false => vec![("least", least.into()), ("most", most.into())],
                };
                context.say(key, &answer)
            }
            None => say!(context, "cloth-never"),
        };
        let strips = estimate::squares_for(plan, have.low) - needs.squares - needs.spares;
        let takes = say!(
            context,
            "cloth-takes",
            n = needs.squares,
            spares = needs.spares,
            binding = context.long(needs.binding),
            strips = strips
        );
        vec![enough, takes]
    };
    let rows = found.iter().map(|g| {
        let mut why = takes(&with(g));
        if let Some((w, h)) = size {
            why.push(say!(
                context,
                "grid-width",
                off = context.over_under(g.size.0 - w)
            ));
            why.push(say!(
                context,
                "grid-height",
                off = context.over_under(g.size.1 - h)
            ));
        }
        why.extend(leftover(g.across, g.down, context));
        row(g, why, context)
    });
    GridsView {
        grids: rows.collect(),
        own: takes(plan),
        said,
        problem: None,
        pack: pack.and_then(|pack| pack_amiss(pack, context)),
    }
}

/// The largest squares that are bought ready cut: our judgement, no source.
const MOST_PACK: i64 = 40;

/// What is wrong with the side of a pack's squares, as typed.
fn pack_amiss(pack: &PackTyped, context: Context<'_>) -> Option<Problem> {
    match context.parse(&pack.side) {
        Err(error) => Some(errors::typed(&error, context)),
        Ok(side) if side <= zero() || side > inches(MOST_PACK) => {
            Some(context.words.problem("pack-side", &[]))
        }
        Ok(_) => None,
    }
}

/// What is to be said of a pack of fabric squares: that they do not fit, or are cut down.
fn pack_told(plan: &Plan, pack: &PackTyped, context: Context<'_>) -> Option<String> {
    if pack_amiss(pack, context).is_some() {
        return None;
    }
    let side = context.parse(&pack.side).ok()?;
    if side < plan.side && side <= plan.most_patch() && side > zero() {
        return Some(say!(
            context,
            "cloth-patches",
            n = pack.count,
            side = context.length(side),
            round = context.length(plan.round(side))
        ));
    }
    if side < plan.side {
        let why = Rejection::PackSmall {
            side,
            wanted: plan.side,
            fabric: true,
            most: plan.most_patch(),
        };
        let answer = errors::rejection(&why, None, context);
        return Some(context.words.list("sentences", [answer.said, answer.next]));
    }
    let precut = Precut {
        name: String::new(),
        side,
        count: Count::at_most(pack.count),
    };
    let n = precut.gives(plan.side);
    Some(say!(context, "cloth-covers", n = n))
}

/// Grids near a wish.
pub fn grids(draft: &PlanDraft, wish: &GridWish, context: Context<'_>) -> GridsView {
    let (plan, _, mut faults) = read_draft(draft, context);
    let fail = |problem| GridsView {
        problem: Some(problem),
        ..GridsView::default()
    };
    let Some(plan) = plan else {
        return match faults.pop() {
            Some(fault) => fail(fault.problem),
            None => GridsView::default(),
        };
    };
    match wish {
        GridWish::Cloth {
            jeans,
            pack,
            width,
            height,
        } => {
            let empty = |text: &String| text.trim().is_empty();
            let size = match empty(width) || empty(height) {
                true => Ok(None),
                false => context
                    .parse(width)
                    .and_then(|w| Ok(Some((w, context.parse(height)?)))),
            };
            match size {
                Ok(size) => from_cloth(&plan, (jeans, pack.as_ref()), size, context),
                Err(error) => fail(errors::typed(&error, context)),
            }
        }
        GridWish::Squares { have } => match have.trim().parse::<u32>() {
            Ok(have) if have > 0 && have <= 1_000_000 => {
                let found = grids::for_squares(&plan, have, 6);
                let rows = found.iter().map(|g| {
                    let left = i64::from(have) - i64::from(g.squares);
                    let mut why = vec![say!(context, "grid-uses", n = g.squares, left = left)];
                    why.extend(leftover(g.across, g.down, context));
                    row(g, why, context)
                });
                GridsView {
                    grids: rows.collect(),
                    ..GridsView::default()
                }
            }
            _ => fail(context.words.problem("typed-not-a-count", &[])),
        },
        GridWish::Size { width, height } => {
            let sides = context
                .parse(width)
                .and_then(|w| Ok((w, context.parse(height)?)));
            match sides {
                Ok((w, h)) => {
                    let found = grids::for_size(&plan, w, h, 6);
                    let rows = found.iter().map(|g| {
                        let mut why = vec![
                            say!(
                                context,
                                "grid-width",
                                off = context.over_under(g.size.0 - w)
                            ),
                            say!(
                                context,
                                "grid-height",
                                off = context.over_under(g.size.1 - h)
                            ),
                        ];
                        why.push(say!(context, "grid-takes", n = g.squares));
                        why.extend(leftover(g.across, g.down, context));
                        row(g, why, context)
                    });
                    GridsView {
                        grids: rows.collect(),
                        ..GridsView::default()
                    }
                }
                Err(error) => fail(errors::typed(&error, context)),
            }
        }
    }
}

fn leftover(across: u16, down: u16, context: Context<'_>) -> Vec<String> {
    let mut out = Vec::new();
    if across % 2 == 1 {
        out.push(say!(context, "grid-odd-across"));
    }
    if down % 2 == 1 {
        out.push(say!(context, "grid-odd-down"));
    }
    out
}

fn row(g: &grids::Grid, why: Vec<String>, context: Context<'_>) -> GridRow {
    GridRow {
        across: g.across,
        down: g.down,
        title: say!(context, "grid", across = g.across, down = g.down),
        size: context.by(g.size.0, g.size.1),
        why,
    }
}
