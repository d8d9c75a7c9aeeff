//! Blocks as they were measured, and what is cut off them or missing.

use super::small::part;
use crate::fitting::squaring;
use crate::fitting::trimming::{holds, shortfalls};
use crate::measure::outline::{Cut, Outline, Spot};
use crate::measure::{in_mm, zero};
use crate::plan::assembly::{Rect, Seam};
use crate::plan::binding::EdgeSide;
use crate::show::context::Context;
use crate::show::drawing::canvas::Canvas;
use crate::show::names;
use crate::show::picture::{Ink, Picture};
use crate::throw::{Size, Throw};

/// A block with what is to be cut away, or as it should be.
pub(super) fn block(
    d: &mut Canvas,
    throw: &Throw,
    piece: Rect,
    context: Context<'_>,
) -> (f64, f64) {
    if let Some((outline, cut)) = squaring::outlined(throw, piece) {
        return round(d, throw, &outline, Some(&cut), context);
    }
    let size = holds(throw, piece);
    trimming(d, throw, piece, size, [0.0, 0.0], context).all
}

/// Where a block lies in its drawing, beside what it is short of.
struct LaidBar {
    /// Its upper left corner.
    at: (f64, f64),
    /// Its width and height.
    size: (f64, f64),
    /// All of the drawing.
    all: (f64, f64),
}

/// A block; what is cut off hatched, what is missing an empty strip beside it, each
/// with its measure in words.
fn trimming(
    d: &mut Canvas,
    throw: &Throw,
    piece: Rect,
    size: Size,
    [x0, y0]: [f64; 2],
    context: Context<'_>,
) -> LaidBar {
    let target = throw.target(piece);
    let (w, h) = (in_mm(size.width), in_mm(size.height));
    // What is cut away or missing is drawn three times as wide, or it would not be seen.
    let seen = |l| in_mm(l) * 3.0;
    let mut missing = [zero(); 4];
    for short in shortfalls(throw, piece) {
        let far = match short.seam {
            Seam::Upright => EdgeSide::Right,
            Seam::Level => EdgeSide::Bottom,
        };
        for share in &short.shares {
            missing[share.side as usize] += share.by;
        }
        missing[far as usize] += short.open;
    }
    let [top, right, bottom, left] = missing;
    let (x, y) = (x0 + seen(left), y0 + seen(top));
    part(d, throw, piece, piece, [x, y, w, h], Ink::Denim);
    let across = squaring::trim(size.width, target.width, context.ruler);
    let down = squaring::trim(size.height, target.height, context.ruler);
    let letters = in_mm(throw.plan.side) * 0.13;
    let say_at = |d: &mut Canvas, side: EdgeSide, text: String| {
        // From the side inwards, clear of the squares' names.
        let long = text.chars().count() as f64 * letters * 0.29 + letters * 0.4;
        // Beside the seams in the middle, not on them; left and right one above the other, since
        // both together are as long as the block is wide.
        let middle_x = if piece.cols > 1 { w / 4.0 } else { w / 2.0 };
        let from_seam = letters * 1.3;
        let (at_x, at_y) = match side {
            EdgeSide::Left => (x + long, y + h / 2.0 - from_seam),
            EdgeSide::Right => (x + w - long, y + h / 2.0 + from_seam),
            EdgeSide::Top => (x + middle_x, y + letters),
            EdgeSide::Bottom => (x + middle_x, y + h - letters),
        };
        d.words([at_x, at_y], text, letters);
    };
    for (side, cut) in [
        (EdgeSide::Left, across.before),
        (EdgeSide::Right, across.after),
        (EdgeSide::Top, down.before),
        (EdgeSide::Bottom, down.after),
    ] {
        if cut <= zero() {
            continue;
        }
        let (area, [x1, y1, x2, y2]) = match side {
            EdgeSide::Left => (
                [x, y, seen(cut), h],
                [x + seen(cut), y, x + seen(cut), y + h],
            ),
            EdgeSide::Right => {
                let at = x + w - seen(cut);
                ([at, y, seen(cut), h], [at, y, at, y + h])
            }
            EdgeSide::Top => (
                [x, y, w, seen(cut)],
                [x, y + seen(cut), x + w, y + seen(cut)],
            ),
            EdgeSide::Bottom => {
                let at = y + h - seen(cut);
                ([x, at, w, seen(cut)], [x, at, x + w, at])
            }
        };
        d.area(area, Ink::Waste);
        d.line([x1, y1, x2, y2], Ink::Cut);
        say_at(
            d,
            side,
            say!(context, "picture-trim", length = context.marked(cut)),
        );
    }
    for (side, gap, area) in [
        (EdgeSide::Left, left, [x0, y, seen(left), h]),
        (EdgeSide::Right, right, [x + w, y, seen(right), h]),
        (EdgeSide::Top, top, [x, y0, w, seen(top)]),
        (EdgeSide::Bottom, bottom, [x, y + h, w, seen(bottom)]),
    ] {
        if gap > zero() {
            d.area(area, Ink::Blank);
            say_at(
                d,
                side,
                say!(context, "picture-missing", length = context.length(gap)),
            );
        }
    }
    LaidBar {
        at: (x, y),
        size: (w, h),
        all: (x - x0 + w + seen(right), y - y0 + h + seen(bottom)),
    }
}

/// A measured block with its trims and the measures beside it.
pub(in crate::show) fn measured(
    throw: &Throw,
    piece: Rect,
    size: Size,
    context: Context<'_>,
) -> Picture {
    let edge = in_mm(throw.plan.side) * 0.3;
    let mut d = Canvas::default();
    let laid = trimming(&mut d, throw, piece, size, [edge, edge], context);
    let ((w, h), (full_w, full_h)) = (laid.size, laid.all);
    let text = edge * 0.36;
    let (left, top) = laid.at;
    d.words(
        [left + w / 2.0, edge * 0.3],
        context.length(size.width).text,
        text,
    );
    for end in [left, left + w] {
        d.arrow([left + w / 2.0, edge * 0.75, end, edge * 0.75], Ink::Rule);
    }
    d.words(
        [edge * 2.0 + full_w, top + h / 2.0],
        context.length(size.height).text,
        text,
    );
    for end in [top, top + h] {
        let at = edge * 1.2 + full_w;
        d.arrow([at, top + h / 2.0, at, end], Ink::Rule);
    }
    d.picture(
        [full_w + edge * 3.2, full_h + edge * 1.3],
        in_mm(throw.plan.side) / 2.0,
        say!(
            context,
            "picture-measured",
            piece = names::spoken(throw, piece, context),
            size = context.by(size.width, size.height).spoken
        ),
    )
}

/// A block's true outline, and the cut that squares it up.
pub(in crate::show) fn outlined(
    throw: &Throw,
    piece: Rect,
    outline: &Outline,
    cut: Option<&Cut>,
    context: Context<'_>,
) -> Picture {
    let mut d = Canvas::default();
    let (width, height) = round(&mut d, throw, outline, cut, context);
    d.picture(
        [width, height],
        in_mm(throw.plan.side) / 2.0,
        say!(
            context,
            "picture-outline",
            piece = names::spoken(throw, piece, context)
        ),
    )
}

/// What is cut off the top, the right, the bottom and the left, in words.
pub(in crate::show) fn wedges(cut: &Cut, context: Context<'_>) -> [String; 4] {
    cut.trims.map(|(from, to)| {
        let (from, to) = (context.marked(from).text, context.marked(to).text);
        match from == to {
            true => from,
            false => say!(context, "wedge", from = from.as_str(), to = to.as_str()),
        }
    })
}

/// Draws an outline and the cut, with what comes off each side; gives the width and height of both.
fn round(
    d: &mut Canvas,
    throw: &Throw,
    outline: &Outline,
    cut: Option<&Cut>,
    context: Context<'_>,
) -> (f64, f64) {
    let corners = outline.corners();
    let least = |f: fn(&Spot) -> f64| corners.iter().map(f).fold(f64::INFINITY, f64::min);
    let most = |f: fn(&Spot) -> f64| corners.iter().map(f).fold(f64::NEG_INFINITY, f64::max);
    let (x0, y0) = (least(|c| c.0), least(|c| c.1));
    let edge = in_mm(throw.plan.side) * 0.08;
    let at = |(x, y): Spot| (x - x0 + edge, y - y0 + edge);
    let mut lines = |spots: [Spot; 4], ink| {
        for i in 0..4 {
            let ((x1, y1), (x2, y2)) = (at(spots[i]), at(spots[(i + 1) % 4]));
            d.line([x1, y1, x2, y2], ink);
        }
    };
    lines(corners, Ink::Now);
    let size = (
        most(|c| c.0) - x0 + edge * 2.0,
        most(|c| c.1) - y0 + edge * 2.0,
    );
    let Some(cut) = cut else {
        return size;
    };
    lines(cut.corners, Ink::Cut);
    let (x, y) = at(cut.centre);
    d.line([x - edge / 2.0, y, x + edge / 2.0, y], Ink::Cut);
    d.line([x, y - edge / 2.0, x, y + edge / 2.0], Ink::Cut);
    // Inside the cut, each at its side; left and right one above the other, since both together
    // are nearly as long as the block is wide.
    let letters = in_mm(throw.plan.side) * 0.12;
    let corners = cut.corners.map(at);
    let middle = |a: usize, b: usize| {
        let (a, b): (Spot, Spot) = (corners[a], corners[b]);
        ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0)
    };
    let [top, right, bottom, left] = [middle(0, 1), middle(1, 2), middle(2, 3), middle(3, 0)];
    let long = |text: &str| text.chars().count() as f64 * letters * 0.29 + letters * 0.4;
    let [on_top, on_right, on_bottom, on_left] = wedges(cut, context);
    let beside = letters * 1.3;
    let spot_left = [left.0 + long(&on_left), left.1 - beside];
    let spot_right = [right.0 - long(&on_right), right.1 + beside];
    d.words([top.0, top.1 + letters], on_top, letters);
    d.words(spot_right, on_right, letters);
    d.words([bottom.0, bottom.1 - letters], on_bottom, letters);
    d.words(spot_left, on_left, letters);
    size
}
