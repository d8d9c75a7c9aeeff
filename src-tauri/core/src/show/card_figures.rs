//! The figures on a step's card.
//!
//! To add one, call `add` with its key in the arm of its task, and write its label
//! `figure-<key>` in `words/en/work.ftl` and `words/de/work.ftl`. The window draws any list
//! (`ui/src/trade/Figures.svelte`).

use crate::cloth::fabric::Face;
use crate::fitting::squaring;
use crate::measure::{Length, zero};
use crate::plan::assembly::Rect;
use crate::plan::{Joining, Plan, Stitch, fringe, rows};
use crate::show::bound;
use crate::show::context::Context;
use crate::show::measuring::trims;
use crate::show::names::fabrics_to_cut;
use crate::show::parts::Figure;
use crate::throw::stock::strip_shown;
use crate::throw::tasks::Task;
use crate::throw::{Throw, Work};
use crate::words::Shown;

/// The figures that matter while this is done to a piece.
pub(super) fn card_figures(
    throw: &Throw,
    task: Task,
    piece: Rect,
    context: Context<'_>,
) -> Vec<Figure> {
    let mut out = Vec::new();
    let plan = &throw.plan;
    let made = throw.made(piece);
    let mut add = |key: &str, value| out.push(figure(key, value, context));
    // Of a join that was opened only that much is to be made again.
    let opened = throw.work(piece).and_then(|w| w.opened);
    let seam = match opened {
        Some(_) => "again",
        None => "seam",
    };
    match task {
        Task::Cut => {
            add("square", context.by(plan.side, plan.side));
            let denim = throw.denims.get(usize::from(throw.cover(piece).denim));
            if let Some(denim) = denim.filter(|d| !d.name.is_empty()) {
                add("from-denim", context.plain(denim.name.clone()));
            }
        }
        Task::CutFabric => {
            for name in fabrics_to_cut(throw, piece) {
                add("fabric", context.plain(name));
            }
            let side = throw.laid_side(piece).unwrap_or(plan.side);
            add("square", context.by(side, side));
        }
        Task::CoverFront | Task::CoverBack => {
            let face = if task == Task::CoverFront {
                Face::Front
            } else {
                Face::Back
            };
            let print = throw.cover(piece).on(face);
            let name = print.and_then(|p| throw.prints.get(usize::from(p)));
            add(
                "fabric",
                context.plain(name.map_or_else(String::new, |p| p.name.clone())),
            );
            match throw.patch_on(piece, face) {
                Some(side) => {
                    add("patch", context.by(side, side));
                    if throw.laid_on(piece, face).is_none() {
                        add("round-patch", context.length(plan.round(side)));
                    }
                }
                None => add("square", context.by(plan.side, plan.side)),
            }
        }
        Task::CoolHalves | Task::CoolCover | Task::CoolLap => {
            add(
                "cooling",
                context.plain(say!(context, "minutes", n = plan.cooling_minutes)),
            );
        }
        Task::LapHalves | Task::PressHalves | Task::StitchHalves => {
            let lap = throw.lapped_halves(piece).unwrap_or(plan.lap);
            match task {
                Task::StitchHalves => out.extend(stitching(Joining::Lapped, lap, plan, context)),
                _ => out.push(figure("lap", context.length(lap), context)),
            }
            out.push(figure("square", context.by(plan.side, plan.side), context));
            if task == Task::StitchHalves {
                out.push(figure("seam", context.length(plan.side), context));
            }
        }
        Task::Dot => {
            add("lap", context.length(made.lap));
            add(seam, context.length(throw.to_sew(piece)));
        }
        Task::Pin => {
            add("allowance", context.length(made.lap));
            add(seam, context.length(throw.to_sew(piece)));
        }
        Task::PressLap => add("lap", context.length(made.lap)),
        Task::Stitch => {
            out.extend(stitching(made.joining, made.lap, plan, context));
            let sewn = context.length(throw.to_sew(piece));
            out.push(figure(seam, sewn, context));
        }
        Task::SquareUp => {
            let target = throw.target(piece);
            add("trim-to", context.by(target.width, target.height));
            if let Some(measured) = throw.work(piece).and_then(Work::held) {
                let size = context.by(measured.width, measured.height);
                if let Some((_, cut)) = squaring::outlined(throw, piece) {
                    add("holds", size);
                    out.extend(trims(&cut, context));
                    return out;
                }
                add("measured", size);
                for (key, m, t) in [
                    ("across", measured.width, target.width),
                    ("down", measured.height, target.height),
                ] {
                    add(
                        key,
                        context.over_under(squaring::trim(m, t, context.ruler).over),
                    );
                }
            }
        }
        Task::PressBlock => {
            let size = squaring::natural(throw, piece);
            add("should-be", context.by(size.width, size.height));
        }
        Task::CutBinding | Task::JoinBinding => {
            let size = throw.finished();
            let need = plan.binding_for(size.width, size.height);
            if task == Task::CutBinding {
                add(
                    "strips",
                    context.plain(say!(context, "strips", n = need.strips)),
                );
                add("strip", context.length(plan.binding.strip));
                add("longest", context.length(plan.binding.longest));
            } else {
                add(
                    "joins",
                    context.plain(say!(context, "number", n = need.joins)),
                );
                match plan.joining {
                    Joining::Lapped => add("lap", context.length(plan.lap)),
                    _ => add("allowance", context.length(plan.lap)),
                }
                add("joined", context.long(need.length));
            }
        }
        Task::PressBinding => add("folded", context.length(plan.binding.strip / 2)),
        Task::GlueBinding => {
            out.extend(bound::places(throw, context));
            out.push(Figure {
                label: say!(context, "figure-each-face"),
                value: context.length(strip_shown(throw).plain),
            });
        }
        Task::StitchBinding => {
            let size = throw.finished();
            add("from-raw-edge", context.edge_in());
            add("from-fold", bound::from_fold(throw, context));
            add("stitch-length", context.needle(plan.stitch_long()));
            add("round", context.long((size.width + size.height) * 2));
        }
        Task::StitchPatch => {
            let faces = Face::BOTH.into_iter();
            let patches: Vec<Length> = faces.filter_map(|f| throw.patch_on(piece, f)).collect();
            for side in &patches {
                add("patch", context.by(*side, *side));
            }
            if patches.is_empty() {
                add("square", context.by(plan.side, plan.side));
            }
        }
        Task::TrimEdge => {
            let size = throw.finished();
            add("should-be", context.by(size.width, size.height));
        }
        Task::PressCover | Task::PressSeam | Task::Snip | Task::Wash | Task::Clip => {}
    }
    out
}

fn figure(key: &str, value: Shown, context: Context<'_>) -> Figure {
    Figure {
        label: context.say(&format!("figure-{key}"), &[]),
        value,
    }
}

/// Where a join is stitched, how, and the fringe that leaves.
fn stitching(joining: Joining, lap: Length, plan: &Plan, context: Context<'_>) -> Vec<Figure> {
    let stitch = plan.stitch;
    let mut out = Vec::new();
    let mut add = |key: &str, value| out.push(figure(key, value, context));
    let rows = rows(joining, lap, stitch);
    match (stitch, rows.as_slice()) {
        (Stitch::TwoRows { .. }, [first, second]) => {
            add("row-first", context.length(*first));
            add("row-second", context.length(*second));
        }
        _ if joining == Joining::Lapped => add("middle", context.length(lap / 2)),
        _ => add("allowance", context.length(lap)),
    }
    if stitch.width() > zero() {
        let key = match stitch {
            Stitch::Twin { .. } => "twin",
            Stitch::TwoRows { .. } => "rows-apart",
            Stitch::Straight | Stitch::Zigzag { .. } => "stitch-width",
        };
        add(key, context.needle(stitch.width()));
    }
    add("stitch-length", context.needle(plan.stitch_long()));
    if let Some(fringe) = fringe(joining, lap, stitch) {
        add("fringe", context.fringe(fringe));
    }
    out
}
