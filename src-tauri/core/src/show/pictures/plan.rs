//! The blocks as they stand, the join cut through, the grid.

use crate::fitting::trimming::{closing, holds};
use crate::measure::{in_mm, zero};
use crate::plan::assembly::{Assembly, Kind, Rect, Seam};
use crate::plan::{Joining, Plan, Stitch};
use crate::show::context::Context;
use crate::show::drawing::canvas::Canvas;
use crate::show::names;
use crate::show::picture::{Ink, InkKey, Picture};
use crate::throw::tasks::Task;
use crate::throw::{Throw, Work};

/// Most squares drawn one by one in a small picture.
const MOST_DRAWN: u32 = 400;

/// How a block stands against the trim size.
fn block_ink(throw: &Throw, block: Rect) -> Ink {
    let stitched = block.is_square() || throw.has(block, Task::Stitch);
    let (held, target) = (holds(throw, block), throw.target(block));
    let over = (held.width - target.width, held.height - target.height);
    let known = |w: &Work| w.measured.is_some() || w.squared.is_some();
    match () {
        () if !stitched => Ink::Blank,
        () if over.0 < zero() || over.1 < zero() => Ink::Amiss,
        () if over.0 > zero() || over.1 > zero() => Ink::Waste,
        () if block.is_square() || throw.work(block).is_some_and(known) => Ink::Done,
        () => Ink::Next,
    }
}

/// What the marks of [`blocks`] mean, those that are there.
pub(in crate::show) fn block_key(throw: &Throw, context: Context<'_>) -> Vec<InkKey> {
    let there: Vec<Ink> = throw
        .assembly()
        .blocks()
        .into_iter()
        .map(|b| block_ink(throw, b))
        .collect();
    [
        (Ink::Done, "right"),
        (Ink::Next, "planned"),
        (Ink::Amiss, "short"),
        (Ink::Waste, "over"),
        (Ink::Blank, "open"),
    ]
    .into_iter()
    .filter(|(ink, _)| there.contains(ink))
    .map(|(ink, key)| {
        let mut d = Canvas::default();
        d.area([0.0, 0.0, 20.0, 20.0], ink);
        InkKey {
            picture: d.picture([20.0, 20.0], 14.0, String::new()),
            label: context.say(&format!("block-key-{key}"), &[]),
        }
    })
    .collect()
}

/// The blocks as they lie: those short of the trim size marked, those over it hatched;
/// a row or column that does not close has its difference at its end.
pub(in crate::show) fn blocks(throw: &Throw, context: Context<'_>) -> Picture {
    let mut d = Canvas::default();
    let mut off = 0;
    for block in throw.assembly().blocks() {
        let (x, y) = (f64::from(block.col) * 10.0, f64::from(block.row) * 10.0);
        let (w, h) = (f64::from(block.cols) * 10.0, f64::from(block.rows) * 10.0);
        let ink = block_ink(throw, block);
        let amiss = ink == Ink::Amiss;
        off += usize::from(amiss);
        d.labelled([x, y, w - 1.0, h - 1.0], ink, names::block(block));
    }
    let (width, height) = (
        f64::from(throw.plan.across) * 10.0,
        f64::from(throw.plan.down) * 10.0,
    );
    let mut room = (0.0, 0.0);
    // Where the words of each line below the blocks end so far: they may be wider than a column.
    let mut lines: Vec<f64> = Vec::new();
    for (seam, n, off) in closing(throw) {
        if off == zero() {
            continue;
        }
        let at = n as f64 * 20.0;
        let words = context.over_under(off).text;
        let long = words.chars().count() as f64 * 2.6;
        match seam {
            Seam::Upright => {
                let tall = (height - at).min(20.0);
                d.area([width, at, 3.0, tall - 1.0], Ink::Amiss);
                d.words([width + 5.0 + long / 2.0, at + tall / 2.0], words, 4.5);
                room.0 = long.max(room.0);
            }
            Seam::Level => {
                let wide = (width - at).min(20.0);
                d.area([at, height, wide - 1.0, 3.0], Ink::Amiss);
                let from = (at + (wide - long) / 2.0).min(width - long).max(0.0);
                let free = lines.iter().position(|end| *end < from);
                let line = free.unwrap_or_else(|| {
                    lines.push(0.0);
                    lines.len() - 1
                });
                lines[line] = from + long;
                d.words(
                    [from + long / 2.0, height + 7.0 + 6.0 * line as f64],
                    words,
                    4.5,
                );
                room.1 = 4.0 + 6.0 * lines.len() as f64;
            }
        }
    }
    d.picture(
        [
            width + if room.0 > 0.0 { room.0 + 6.0 } else { 0.0 },
            height + room.1,
        ],
        14.0,
        say!(context, "picture-blocks", n = off),
    )
}

/// The join cut through, to scale: the two edges, the stitching, the fringe.
pub(in crate::show) fn section(plan: &Plan, context: Context<'_>) -> Picture {
    let mut d = Canvas::default();
    let lap = in_mm(plan.lap);
    let (cloth, thick) = (18.0, 2.4);
    let half = in_mm(plan.stitch.width()) / 2.0;
    let width = cloth * 2.0 + lap;
    let stitches = |d: &mut Canvas, middle: f64, top: f64, bottom: f64| {
        let rows: &[f64] = if half > 0.0 { &[-1.0, 1.0] } else { &[0.0] };
        for row in rows {
            let x = middle + row * half;
            d.line([x, top, x, bottom], Ink::Stitch);
        }
        if half > 0.0 && matches!(plan.stitch, Stitch::Twin { .. }) {
            d.line([middle - half, bottom, middle + half, bottom], Ink::Stitch);
        }
    };
    let height = match plan.joining {
        Joining::Lapped => {
            let y = 8.0;
            d.area([0.0, y, cloth + lap, thick], Ink::Denim);
            d.area([cloth, y + thick, cloth + lap, thick], Ink::Next);
            stitches(&mut d, cloth + lap / 2.0, y - 1.2, y + thick * 2.0 + 1.2);
            let rule = y + thick * 2.0 + 5.0;
            for end in [cloth, cloth + lap] {
                d.arrow([cloth + lap / 2.0, rule, end, rule], Ink::Rule);
            }
            d.words(
                [cloth + lap / 2.0, rule + 3.4],
                context.length(plan.lap).text,
                3.4,
            );
            if let Some(fringe) = plan.fringe() {
                let x = cloth + lap - in_mm(fringe) / 2.0;
                d.words(
                    [x.max(cloth + lap * 0.7), 3.0],
                    context.fringe(fringe).text,
                    3.0,
                );
                d.arrow([x, 4.8, x, y - 0.4], Ink::Rule);
            }
            rule + 6.0
        }
        Joining::Seamed | Joining::Exposed => {
            // Both allowances stand up (exposed) or hang below (seamed). The squares open at the
            // row next to them, so that what stands is an allowance and half the stitching high.
            let middle = width / 2.0;
            let up = plan.joining == Joining::Exposed;
            let high = lap + half;
            let y = if up { high + 6.0 } else { 6.0 };
            d.area([0.0, y, middle, thick], Ink::Denim);
            d.area([middle, y, middle, thick], Ink::Next);
            let top = if up { y - high } else { y + thick };
            d.area([middle - thick, top, thick, high], Ink::Denim);
            d.area([middle, top, thick, high], Ink::Next);
            let out = |from_raw: f64| match up {
                true => top + from_raw,
                false => top + high - from_raw,
            };
            for row in if half > 0.0 { &[-1.0, 1.0][..] } else { &[0.0] } {
                // The row where they open is drawn clear of the cloth.
                let clear = if *row < 0.0 { 0.0 } else { 0.8 };
                let at = out(lap + row * half - clear);
                d.line(
                    [middle - thick - 1.0, at, middle + thick + 1.0, at],
                    Ink::Stitch,
                );
            }
            // The allowance, from the raw edges to the middle of the stitching.
            let beside = middle + thick + 2.0;
            for end in [0.0, lap] {
                d.arrow([beside, out(lap / 2.0), beside, out(end)], Ink::Rule);
            }
            d.words(
                [middle + thick + 9.0, out(lap / 2.0)],
                context.length(plan.lap).text,
                3.4,
            );
            high + thick + 14.0
        }
    };
    let fringe = plan
        .fringe()
        .map_or_else(|| say!(context, "no-fringe"), |f| context.fringe(f).spoken);
    d.picture(
        [width, height],
        width / 8.0,
        say!(
            context,
            "picture-section",
            lap = context.length(plan.lap).spoken,
            fringe = fringe
        ),
    )
}

/// The grid with its blocks, as large as it will be.
pub(in crate::show) fn grid(plan: &Plan, context: Context<'_>) -> Picture {
    let mut d = Canvas::default();
    let (w, h) = plan.finished();
    let (width, height) = (in_mm(w), in_mm(h));
    let assembly = Assembly::new(plan.across, plan.down, plan.order);
    let blocks = assembly.blocks();
    let step = in_mm(plan.target() - plan.take_between());
    let end = |start: u16, squares: u16, all: u16, far: f64| {
        if start + squares == all {
            far
        } else {
            f64::from(start / 2 + 1) * step
        }
    };
    for block in blocks.iter().filter(|_| plan.squares() <= MOST_DRAWN * 2) {
        let (x, y) = (
            f64::from(block.col / 2) * step,
            f64::from(block.row / 2) * step,
        );
        let right = end(block.col, block.cols, plan.across, width);
        let low = end(block.row, block.rows, plan.down, height);
        let ink = if assembly.kind(*block) == Kind::Four {
            Ink::Denim
        } else {
            Ink::Next
        };
        d.area([x, y, right - x, low - y], ink);
        if block.cols == 2 {
            d.line([(x + right) / 2.0, y, (x + right) / 2.0, low], Ink::Stitch);
        }
        if block.rows == 2 {
            d.line([x, (y + low) / 2.0, right, (y + low) / 2.0], Ink::Stitch);
        }
    }
    if plan.squares() > MOST_DRAWN * 2 {
        d.area([0.0, 0.0, width, height], Ink::Denim);
    }
    let size = context.by(w, h);
    d.picture(
        [width, height],
        width.max(height) / 8.0,
        say!(
            context,
            "picture-grid",
            across = plan.across,
            down = plan.down,
            size = size.spoken
        ),
    )
}
