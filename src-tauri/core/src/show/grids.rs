//! Grids from the squares at hand or from a wished-for size.

use crate::plan::grids;
use crate::show::context::Context;
use crate::show::errors;
use crate::show::plan::{PlanDraft, read_draft};
use crate::words::{Problem, Shown};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// What grids to look for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "by")]
pub enum GridWish {
    /// From the squares at hand.
    Squares {
        /// How many, as typed.
        have: String,
    },
    /// From a size.
    Size {
        /// Width, as typed.
        width: String,
        /// Height, as typed.
        height: String,
    },
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
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct GridsView {
    /// What is wrong with the wish.
    pub problem: Option<Problem>,
    /// Best first.
    pub grids: Vec<GridRow>,
}

/// Grids near a wish.
pub fn grids(draft: &PlanDraft, wish: &GridWish, context: Context<'_>) -> GridsView {
    let (plan, _, mut faults) = read_draft(draft, context);
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
                    let mut why = vec![say!(context, "grid-uses", n = g.squares, left = left)];
                    why.extend(leftover(g.across, g.down, context));
                    row(g, why, context)
                });
                GridsView {
                    problem: None,
                    grids: rows.collect(),
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
                        problem: None,
                        grids: rows.collect(),
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
