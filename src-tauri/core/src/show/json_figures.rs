//! The figures of a throw as JSON, for programs. Lengths are in millimetres and,
//! beside them, as the screens show them.

use super::{Context, head};
use crate::cloth::fabric::Face;
use crate::command::ready;
use crate::faces::spread::thickest;
use crate::fitting::squaring::{measured_fours, summary};
use crate::log::journal::Journal;
use crate::measure::{Length, in_mm};
use crate::words::Shown;
use serde_json::{Value, json};

/// The figures of a throw as JSON, for programs.
pub fn figures(journal: &Journal, context: Context<'_>) -> Value {
    let throw = journal.throw();
    let p = &throw.plan;
    let both = |l: Length, shown: Shown| json!({ "mm": in_mm(l), "shown": shown.text.replace('\u{a0}', " ") });
    let length = |l: Length| both(l, context.length(l));
    let size = |w: Length, h: Length| json!({ "width": length(w), "height": length(h) });
    let (planned_w, planned_h) = p.finished();
    let foreseen = throw.finished();
    let (runs, run_length) = throw.runs();
    let need = p.binding_for(foreseen.width, foreseen.height);
    let (lap_layers, _, crossing_layers) = thickest(throw);
    let head = head(journal, context);
    let measured = summary(&measured_fours(throw)).map(|s| {
        json!({
            "blocks": measured_fours(throw).len() / 2,
            "mean": length(s.mean),
            "spread": length(s.spread),
            "least": length(s.least),
            "most": length(s.most),
        })
    });
    let placed = throw.pieced_placed();
    let mut figures = json!({
        "name": throw.name,
        "archived": throw.archived,
        "grid": { "across": p.across, "down": p.down, "squares": p.squares() },
        "side": length(p.side),
        "lap": length(p.lap),
        "joining": p.joining,
        "stitch_width": both(p.stitch.width(), context.needle(p.stitch.width())),
        "fringe": p.fringe().map(|l| both(l, context.fringe(l))),
        "pair": size(p.run(2), p.side),
        "four": size(p.natural_four(), p.natural_four()),
        "trim": length(p.target()),
        "planned": size(planned_w, planned_h),
        "foreseen": size(foreseen.width, foreseen.height),
        "seams": { "runs": runs, "length": both(run_length, context.far(run_length)) },
        "layers": { "lap": lap_layers, "crossing": crossing_layers },
        "binding": { "length": both(need.length, context.long(need.length)), "strips": need.strips, "joins": need.joins },
        "covered": { "front": throw.covered(Face::Front), "back": throw.covered(Face::Back) },
        "spares": throw.spares,
        "spoilt": throw.losses.len(),
        "measured": measured,
        "steps": { "done": head.done, "all": head.all, "ready": ready(throw).count() },
        "entries": journal.len(),
    });
    if placed > 0 || throw.spares_pieced() > 0 {
        figures["pieced"] = json!({ "placed": placed, "spares": throw.spares_pieced() });
    }
    figures
}
