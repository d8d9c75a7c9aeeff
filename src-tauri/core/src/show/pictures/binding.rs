//! The binding: cut, joined, folded, laid round, stitched.

use super::lap::Lap;
use super::small::squares;
use crate::cloth::fabric::Face;
use crate::measure::{System, in_mm};
use crate::plan::Joining;
use crate::plan::binding::{EdgeSide, layout, row_from_edge};
use crate::show::context::Context;
use crate::show::drawing::canvas::Canvas;
use crate::show::drawing::face::binding;
use crate::show::picture::Ink;
use crate::throw::stock::strip_shown;
use crate::throw::{Made, Throw};

/// Most strips drawn one below the other.
const MOST_STRIPS: u32 = 6;

/// The strips of the binding one below the other, to scale: all are cut to one length.
pub(super) fn strips(d: &mut Canvas, throw: &Throw) -> (f64, f64) {
    let (plan, size) = (&throw.plan, throw.finished());
    let need = plan.binding_for(size.width, size.height);
    let width = in_mm(plan.side) * 2.0;
    let scale = width / in_mm(plan.binding.longest);
    let high = in_mm(plan.binding.strip) * scale;
    let drawn = need.strips.min(MOST_STRIPS);
    for n in 0..drawn {
        let y = f64::from(n) * high * 1.4;
        d.area([0.0, y, width, high], Ink::Now);
        for at in [y, y + high] {
            d.line([0.0, at, width, at], Ink::Cut);
        }
    }
    (width, f64::from(drawn) * high * 1.4 - high * 0.4)
}

/// The ends of two strips, one lapped over the other and stitched.
pub(super) fn strip_ends(d: &mut Canvas, throw: &Throw, context: Context<'_>) -> (f64, f64) {
    let (high, lap) = (in_mm(throw.plan.binding.strip), in_mm(throw.plan.take()));
    let long = in_mm(throw.plan.side) * 1.1;
    let width = long * 2.0 - lap;
    // The strip that lies on top comes from the left, as a square does.
    d.area([long - lap, 0.0, long, high], Ink::Next);
    d.area([0.0, 0.0, long, high], Ink::Now);
    let made = Made {
        joining: throw.plan.joining,
        lap: throw.plan.lap,
        stitch: throw.plan.stitch,
    };
    match made.joining {
        Joining::Lapped => {
            let drawn = Lap {
                from: long - lap,
                along: 0.0,
                wide: lap,
                long: high,
                upright: true,
            };
            drawn.beneath(d);
            drawn.stitching(d, made);
        }
        Joining::Seamed | Joining::Exposed => {
            d.area([long - lap, 0.0, lap, high], Ink::Lap);
            let middle = long - lap / 2.0;
            d.line([middle, 0.0, middle, high], Ink::Stitch);
        }
    }
    let letters = width * 0.06;
    let (middle, below) = ((long - lap) / 2.0, high + letters);
    d.words([middle, below], say!(context, "picture-over"), letters);
    d.words(
        [width - middle, below],
        say!(context, "picture-under"),
        letters,
    );
    (width, high + letters * 1.6)
}

/// The strip flat with its fold, and folded.
pub(super) fn folded(d: &mut Canvas, throw: &Throw) -> (f64, f64) {
    let (long, high) = (in_mm(throw.plan.side), in_mm(throw.plan.binding.strip));
    let denim = Some(binding(throw));
    d.named_area([0.0, 0.0, long, high], Ink::Denim, denim, None);
    d.line([0.0, high / 2.0, long, high / 2.0], Ink::Rule);
    let middle = long / 2.0;
    d.arrow([middle, high * 0.9, middle, high * 0.12], Ink::Rule);
    let gap = long * 0.3;
    d.arrow(
        [long * 1.05, high / 4.0, long + gap * 0.85, high / 4.0],
        Ink::Rule,
    );
    d.area([long + gap, 0.0, long, high / 2.0], Ink::Now);
    (long * 2.0 + gap, high)
}

/// The throw with what stands out of its edge, wider than it is, and the cuts along its sides.
pub(super) fn trimmed(d: &mut Canvas, throw: &Throw) -> (f64, f64) {
    let size = throw.finished();
    let scale = in_mm(throw.plan.side) * 1.6 / in_mm(size.width).max(in_mm(size.height));
    let (w, h) = (in_mm(size.width) * scale, in_mm(size.height) * scale);
    let over = w.min(h) * 0.05;
    let (all_w, all_h) = (w + over * 2.0, h + over * 2.0);
    for side in [
        [0.0, 0.0, all_w, over],
        [0.0, over + h, all_w, over],
        [0.0, over, over, h],
        [over + w, over, over, h],
    ] {
        d.area(side, Ink::Waste);
    }
    squares(d, throw, Face::Front, [over, over, w, h]);
    for cut in [
        [0.0, over, all_w, over],
        [over + w, 0.0, over + w, all_h],
        [0.0, over + h, all_w, over + h],
        [over, 0.0, over, all_h],
    ] {
        d.line(cut, Ink::Cut);
    }
    (all_w, all_h)
}

/// The throw's outline with its binding: its frame, and how wide the binding is.
fn laid(d: &mut Canvas, throw: &Throw) -> ([f64; 2], f64) {
    let size = throw.finished();
    let scale = in_mm(throw.plan.side) * 1.6 / in_mm(size.width).max(in_mm(size.height));
    let (w, h) = (in_mm(size.width) * scale, in_mm(size.height) * scale);
    let edge = (in_mm(strip_shown(throw).plain) * scale).max(2.0);
    d.area([0.0, 0.0, w, h], Ink::Now);
    let within = [edge, edge, w - edge * 2.0, h - edge * 2.0];
    squares(d, throw, Face::Front, within);
    ([w, h], edge)
}

/// Where the binding begins, which way it goes, and where its strips are joined.
pub(super) fn laid_round(d: &mut Canvas, throw: &Throw, context: Context<'_>) -> (f64, f64) {
    let ([w, h], edge) = laid(d, throw);
    let size = throw.finished();
    let found = layout(&throw.plan, size.width, size.height);
    let scale = w / in_mm(size.width);
    // A point so far along a side, clockwise, and so far in from it.
    let spot = |side: EdgeSide, along: f64, deep: f64| match side {
        EdgeSide::Top => (along, deep),
        EdgeSide::Right => (w - deep, along),
        EdgeSide::Bottom => (w - along, h - deep),
        EdgeSide::Left => (deep, h - along),
    };
    let letters = edge.max(w.min(h) * 0.07);
    let mut mark = |side, along, words: String| {
        let ((x1, y1), (x2, y2)) = (spot(side, along, 0.0), spot(side, along, edge));
        d.line([x1, y1, x2, y2], Ink::Cut);
        let (x, y) = spot(side, along, edge + letters * 0.8);
        let plate = words.chars().count().max(2) as f64 * letters * 0.62;
        let high = letters * 1.3;
        // Beside the binding, whichever side it is.
        let (dx, dy) = (edge * 1.3 + plate / 2.0, edge * 1.3 + high / 2.0);
        let (x, y) = (x.clamp(dx, w - dx), y.clamp(dy, h - dy));
        d.area([x - plate / 2.0, y - high / 2.0, plate, high], Ink::Rule);
        d.words([x, y], words, letters);
    };
    for (n, (side, along)) in found.joins.iter().enumerate() {
        let words = match n {
            0 => say!(context, "picture-begin"),
            _ => n.to_string(),
        };
        mark(*side, in_mm(*along) * scale, words);
    }
    if let Some((side, along)) = found.joins.first() {
        let end = match side {
            EdgeSide::Top | EdgeSide::Bottom => w,
            EdgeSide::Right | EdgeSide::Left => h,
        };
        let from = in_mm(*along) * scale;
        let to = (from + edge * 5.0).min(end);
        let ((x1, y1), (x2, y2)) = (spot(*side, from, edge / 2.0), spot(*side, to, edge / 2.0));
        d.arrow([x1, y1, x2, y2], Ink::Rule);
    }
    (w, h)
}

/// The whole with its binding stitched on, one row near the raw edge of the strip.
pub(super) fn whole(d: &mut Canvas, throw: &Throw, system: System) -> (f64, f64) {
    let ([w, h], edge) = laid(d, throw);
    let wide = in_mm(strip_shown(throw).plain).max(1.0);
    let row = edge * (1.0 - in_mm(row_from_edge(system)) / wide).clamp(0.2, 0.9);
    for [x1, y1, x2, y2] in [
        [row, row, w - row, row],
        [row, h - row, w - row, h - row],
        [row, row, row, h - row],
        [w - row, row, w - row, h - row],
    ] {
        d.line([x1, y1, x2, y2], Ink::Stitch);
    }
    (w, h)
}
