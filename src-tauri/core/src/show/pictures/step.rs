//! A step drawn: the piece and what is done to it, and where in the throw it lies.

use super::lap::Lap;
use super::small::{clad, part};
use super::{binding, trim};
use crate::cloth::fabric::Face;
use crate::measure::in_mm;
use crate::plan::assembly::{Join, Rect, Seam};
use crate::plan::{Joining, Stitch};
use crate::show::context::Context;
use crate::show::drawing::canvas::Canvas;
use crate::show::drawing::face::{bare, shown};
use crate::show::names;
use crate::show::picture::{Ink, Picture};
use crate::throw::tasks::Task;
use crate::throw::{Made, Size, Throw};

/// Most squares drawn one by one on a map.
const MOST_DRAWN: u32 = 400;

/// The step drawn: the piece and what is done to it, and where in the throw it lies.
pub(in crate::show) fn step(
    throw: &Throw,
    task: Task,
    piece: Rect,
    context: Context<'_>,
) -> Picture {
    let mut d = Canvas::default();
    let side = in_mm(throw.plan.side);
    let (width, height) = match (task, throw.assembly().join(piece)) {
        (Task::TrimEdge, _) => binding::trimmed(&mut d, throw),
        (Task::CutBinding, _) => binding::strips(&mut d, throw),
        (Task::JoinBinding, _) => binding::strip_ends(&mut d, throw, context),
        (Task::PressBinding, _) => binding::folded(&mut d, throw),
        (Task::GlueBinding, _) => binding::laid_round(&mut d, throw, context),
        (Task::StitchBinding | Task::Snip | Task::Wash | Task::Clip, _) => {
            binding::whole(&mut d, throw, context.ruler.system)
        }
        (_, None) => square(&mut d, throw, task, piece),
        (Task::SquareUp | Task::PressBlock, Some(_)) => trim::block(&mut d, throw, piece, context),
        (_, Some(join)) => joined(&mut d, throw, task, join, context),
    };
    // Of the whole there is nothing to find on a map. It lies beneath what is long, so that both
    // are drawn large on a narrow screen.
    let is_long = width > height * 1.5;
    let size = if piece == throw.assembly().whole() {
        [width, height]
    } else if is_long {
        let low = height + side * 0.15;
        let map = map(&mut d, throw, piece, (0.0, low), (width, side * 0.55));
        [width.max(map.0), low + map.1]
    } else {
        let right = width + side * 0.2;
        let map = map(&mut d, throw, piece, (right, 0.0), (side * 0.9, height));
        [right + map.0, height.max(map.1)]
    };
    d.picture(
        size,
        side / 2.0,
        say!(
            context,
            "picture-step",
            task = context.say(&format!("task-{}", task.key()), &[]),
            piece = names::spoken(throw, piece, context)
        ),
    )
}

/// Where a piece lies: the throw's outline, its blocks, and the piece.
fn map(d: &mut Canvas, throw: &Throw, piece: Rect, at: (f64, f64), room: (f64, f64)) -> (f64, f64) {
    let (across, down) = (f64::from(throw.plan.across), f64::from(throw.plan.down));
    let cell = (room.0 / across).min(room.1 / down);
    let (x, y) = at;
    d.area([x, y, across * cell, down * cell], Ink::Blank);
    if throw.plan.squares() <= MOST_DRAWN {
        for c in 1..throw.plan.across {
            let at = x + f64::from(c) * cell;
            d.line([at, y, at, y + down * cell], Ink::Rule);
        }
        for r in 1..throw.plan.down {
            let at = y + f64::from(r) * cell;
            d.line([x, at, x + across * cell, at], Ink::Rule);
        }
    }
    let place = |start: u16| f64::from(start) * cell;
    d.area(
        [
            x + place(piece.col),
            y + place(piece.row),
            place(piece.cols),
            place(piece.rows),
        ],
        Ink::Now,
    );
    (across * cell, down * cell)
}

fn square(d: &mut Canvas, throw: &Throw, task: Task, piece: Rect) -> (f64, f64) {
    let s = in_mm(throw.plan.side);
    let cover = throw.cover(piece);
    match task {
        Task::Cut => {
            // A strip as wide as the square, and the cuts across it.
            let strip = [0.0, s * 0.1, s * 2.0, s];
            d.named_area(
                strip,
                Ink::Denim,
                Some(bare(throw, piece, Face::Front)),
                None,
            );
            d.labelled([s * 0.5, s * 0.1, s, s], Ink::Now, names::square(piece));
            for x in [s * 0.5, s * 1.5] {
                d.line([x, 0.0, x, s * 1.2], Ink::Cut);
            }
            (s * 2.0, s * 1.2)
        }
        Task::CutFabric => {
            // As a denim square is cut, of the fabric it shows first.
            let face = match cover.front {
                Some(_) => Face::Front,
                None => Face::Back,
            };
            let cloth = cover.on(face).map(|_| shown(throw, piece, face));
            d.named_area([0.0, s * 0.1, s * 2.0, s], Ink::Now, cloth, None);
            for x in [s * 0.5, s * 1.5] {
                d.line([x, 0.0, x, s * 1.2], Ink::Cut);
            }
            (s * 2.0, s * 1.2)
        }
        Task::CoverFront | Task::CoverBack => {
            let face = if task == Task::CoverFront {
                Face::Front
            } else {
                Face::Back
            };
            let denim = bare(throw, piece, face);
            let label = Some(names::square(piece));
            d.named_area([0.0, 0.0, s, s], Ink::Denim, Some(denim), label);
            let print = cover.on(face).map(|_| shown(throw, piece, face));
            let part = throw.patch_on(piece, face).map_or(0.9, |p| in_mm(p) / s);
            let top = s * (1.0 - part) / 2.0;
            d.named_area([s * 1.1, top, s * part, s * part], Ink::Now, print, None);
            d.arrow([s * 1.3, s * 0.5, s * 0.75, s * 0.5], Ink::Rule);
            (s * 2.0, s)
        }
        Task::LapHalves | Task::PressHalves | Task::CoolHalves | Task::StitchHalves => {
            // Two halves, the left one over the right one.
            let lap = in_mm(throw.lapped_halves(piece).unwrap_or(throw.plan.lap));
            let half = (s + lap) / 2.0;
            for (x, ink) in [(half - lap, Ink::Next), (0.0, Ink::Denim)] {
                let cloth = Some(bare(throw, piece, Face::Front));
                d.named_area([x, 0.0, half, s], ink, cloth, None);
            }
            d.area([half - lap, 0.0, lap, s], Ink::Lap);
            d.words([s * 0.2, s * 0.5], names::square(piece), s * 0.13);
            if task == Task::StitchHalves {
                let middle = half - lap / 2.0;
                d.line([middle, 0.0, middle, s], Ink::Stitch);
            }
            (s, s)
        }
        _ => {
            let mut side = |x, face| {
                let label = Some(names::square(piece));
                let at = [x, 0.0, s, s];
                clad(d, throw, (piece, face), at, Ink::Denim, label);
            };
            side(0.0, Face::Front);
            let wide = match cover.back.is_some() {
                true => {
                    side(s * 1.1, Face::Back);
                    s * 2.1
                }
                false => s,
            };
            if task == Task::StitchPatch {
                let small = Face::BOTH
                    .into_iter()
                    .find_map(|f| throw.patch_on(piece, f));
                let edge = small.map_or(0.0, |p| in_mm(throw.plan.round(p)));
                let (near, far) = (edge + s * 0.03, s * 0.97 - edge);
                for side in [
                    [near, near, far, near],
                    [near, far, far, far],
                    [near, near, near, far],
                    [far, near, far, far],
                ] {
                    d.line(side, Ink::Stitch);
                }
            }
            (wide, s)
        }
    }
}

/// The squares of a part that are drawn beside its join: two across it, four along it.
fn near_join(part: Rect, seam: Seam, first: bool) -> Rect {
    let (cols, rows) = match seam {
        Seam::Upright => (part.cols.min(2), part.rows.min(4)),
        Seam::Level => (part.cols.min(4), part.rows.min(2)),
    };
    let mut near = Rect { cols, rows, ..part };
    match (first, seam) {
        (true, Seam::Upright) => near.col += part.cols - cols,
        (true, Seam::Level) => near.row += part.rows - rows,
        (false, _) => {}
    }
    near
}

/// Two parts lapped or seamed, as much of them as lies near the join.
fn joined(
    d: &mut Canvas,
    throw: &Throw,
    task: Task,
    join: &Join,
    context: Context<'_>,
) -> (f64, f64) {
    let made = throw.made(join.whole);
    let side = in_mm(throw.plan.side);
    let (a, b) = (throw.size(join.first), throw.size(join.second));
    let upright = join.seam == Seam::Upright;
    // Along the join both are as long; across it no more than two squares of each are drawn.
    let near = |size: Size| {
        let across = in_mm(if upright { size.width } else { size.height });
        across.min(side * 2.0)
    };
    let long = in_mm(if upright { a.height } else { a.width }).min(side * 4.0);
    let lap = match made.joining {
        Joining::Lapped => in_mm(made.lap),
        Joining::Seamed | Joining::Exposed => 0.0,
    };
    let turn = |[x, y, w, h]: [f64; 4]| if upright { [x, y, w, h] } else { [y, x, h, w] };
    let (first, second) = (near(a), near(b));
    part(
        d,
        throw,
        join.second,
        near_join(join.second, join.seam, false),
        turn([first - lap, 0.0, second, long]),
        Ink::Next,
    );
    part(
        d,
        throw,
        join.first,
        near_join(join.first, join.seam, true),
        turn([0.0, 0.0, first, long]),
        Ink::Denim,
    );
    let drawn = Lap {
        from: first - lap,
        along: 0.0,
        wide: lap,
        long,
        upright,
    };
    if lap > 0.0 {
        // Where it is glued and pressed, all of it counts; at the machine both edges and the rows.
        match task {
            Task::Stitch => drawn.beneath(d),
            _ => d.area(turn([first - lap, 0.0, lap, long]), Ink::Lap),
        }
        drawn.fringe(d);
    }
    let middle = first - lap / 2.0;
    let all = first + second - lap;
    // As large in the picture of a long seam as in that of a short one.
    let letters = (side * 0.13).max(all.max(long) * 0.05);
    if lap > 0.0 {
        let (over, under) = match upright {
            true => ([first / 2.0, letters], [all - second / 2.0, letters]),
            false => ([long / 2.0, letters], [long / 2.0, all - letters]),
        };
        d.words(over, say!(context, "picture-over"), letters);
        d.words(under, say!(context, "picture-under"), letters);
    }
    match task {
        Task::Dot => {
            let dots = (long / 25.0).round().clamp(2.0, 12.0);
            for i in 0..dots as u32 {
                let at = long * (f64::from(i) + 0.5) / dots;
                d.area(turn([middle - 2.0, at - 2.0, 4.0, 4.0]), Ink::Now);
            }
        }
        Task::Stitch if lap > 0.0 => {
            let made = Made {
                stitch: throw.plan.stitch,
                ..made
            };
            drawn.stitching(d, made);
            drawn.needles(d, made);
            if let Stitch::TwoRows { .. } = made.stitch {
                // The first row is the one near the edge on top; clear of the squares' names.
                let (far, along) = (letters * 0.8, long - side * 0.17);
                for (n, across) in [("1", first + far), ("2", first - lap - far)] {
                    let [x, y, ..] = turn([across, along, 0.0, 0.0]);
                    d.words([x, y], n.into(), letters);
                }
            }
        }
        Task::Stitch => {
            let half = in_mm(throw.plan.stitch.width()) / 2.0;
            let rows: &[f64] = if half > 0.0 { &[-1.0, 1.0] } else { &[0.0] };
            for row in rows {
                let at = middle + row * half;
                let [x1, y1, ..] = turn([at, 0.0, 0.0, 0.0]);
                let [x2, y2, ..] = turn([at, long, 0.0, 0.0]);
                d.line([x1, y1, x2, y2], Ink::Stitch);
            }
        }
        _ => {
            let [x1, y1, ..] = turn([middle, 0.0, 0.0, 0.0]);
            let [x2, y2, ..] = turn([middle, long, 0.0, 0.0]);
            d.line([x1, y1, x2, y2], Ink::Rule);
        }
    }
    if upright { (all, long) } else { (long, all) }
}
