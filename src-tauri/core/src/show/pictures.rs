//! Drawings of steps, trims and laps, in millimetres.

use super::{Context, names};
use crate::cloth::fabric::Face;
use crate::fitting::squaring;
use crate::fitting::trimming::shortfalls;
use crate::measure::outline::{Cut, Outline, Spot};
use crate::measure::{in_mm, zero};
use crate::plan::assembly::{Join, Kind, Rect, Seam};
use crate::plan::binding::EdgeSide;
use crate::plan::{Joining, Plan, Stitch, take};
use crate::show::{Ink, InkKey, Mark, Picture};
use crate::throw::tasks::Task;
use crate::throw::{Size, Throw, Work};

/// Most squares drawn one by one in a small picture.
const MOST_DRAWN: u32 = 400;

struct Drawing {
    marks: Vec<Mark>,
}

impl Drawing {
    fn area(&mut self, [x, y, w, h]: [f64; 4], ink: Ink, print: Option<u8>, label: Option<String>) {
        self.marks.push(Mark::Area {
            x,
            y,
            w,
            h,
            ink,
            print,
            colour: None,
            label,
        });
    }
    /// A square of the throw, or a place of its cloth: in the colour of its own denim.
    fn cloth(
        &mut self,
        throw: &Throw,
        square: Rect,
        area: [f64; 4],
        (ink, print): (Ink, Option<u8>),
        named: bool,
    ) {
        self.area(area, ink, print, named.then(|| names::square(square)));
        let denim = throw.denims.get(usize::from(throw.cover(square).denim));
        if let Some(Mark::Area { colour, .. }) = self.marks.last_mut() {
            *colour = denim.map(|denim| denim.colour.clone());
        }
    }
    fn line(&mut self, [x1, y1, x2, y2]: [f64; 4], ink: Ink, arrow: bool) {
        self.marks.push(Mark::Line {
            x1,
            y1,
            x2,
            y2,
            ink,
            arrow,
        });
    }
    fn words(&mut self, x: f64, y: f64, text: String, size: f64) {
        self.marks.push(Mark::Words { x, y, text, size });
    }
}

/// Most squares of a small picture of a face.
const MOST_SMALL: u16 = 144;

/// A face, small; large grids show every second or third square.
pub(super) fn thumbnail(throw: &Throw, face: Face, context: Context<'_>) -> Picture {
    let mut drawing = Drawing { marks: Vec::new() };
    let (across, down) = small(throw);
    let (width, height) = (f64::from(across) * 10.0, f64::from(down) * 10.0);
    squares(&mut drawing, throw, face, [0.0, 0.0, width, height]);
    let key = match face {
        Face::Front => "picture-front",
        Face::Back => "picture-back",
    };
    Picture {
        width,
        height,
        spoken: say!(context, key, name = throw.name.as_str()),
        marks: drawing.marks,
    }
}

/// Every how many squares one is drawn where there is little room.
fn sparse(throw: &Throw) -> u16 {
    let (across, down) = (throw.plan.across, throw.plan.down);
    (1..)
        .find(|s| across.div_ceil(*s) * down.div_ceil(*s) <= MOST_SMALL)
        .unwrap_or(1)
}

/// Squares across and down of a small picture.
fn small(throw: &Throw) -> (u16, u16) {
    let step = sparse(throw);
    (
        throw.plan.across.div_ceil(step),
        throw.plan.down.div_ceil(step),
    )
}

/// The squares of a face as it is seen, within a frame.
fn squares(d: &mut Drawing, throw: &Throw, face: Face, [x, y, w, h]: [f64; 4]) {
    let step = sparse(throw);
    let (across, down) = small(throw);
    let (cw, ch) = (w / f64::from(across), h / f64::from(down));
    for row in 0..down {
        for col in 0..across {
            let square = Rect::square(row * step, col * step);
            let seen = match face {
                Face::Front => col,
                Face::Back => across - 1 - col,
            };
            let print = throw.cover(square).on(face);
            let at = [x + f64::from(seen) * cw, y + f64::from(row) * ch, cw, ch];
            match throw.has(square, Task::Cut) {
                true => d.cloth(throw, square, at, (Ink::Denim, print), false),
                false => d.area(at, Ink::Blank, print, None),
            }
        }
    }
}

/// The step drawn: the piece and what is done to it, and where in the throw it lies.
pub(super) fn step(throw: &Throw, task: Task, piece: Rect, context: Context<'_>) -> Picture {
    let mut drawing = Drawing { marks: Vec::new() };
    let side = in_mm(throw.plan.side);
    let (width, height) = match (task, throw.assembly().join(piece)) {
        (Task::CutBinding, _) => strips(&mut drawing, throw),
        (Task::JoinBinding, _) => strip_ends(&mut drawing, throw, context),
        (Task::PressBinding, _) => folded(&mut drawing, throw),
        (Task::GlueBinding, _) => laid_round(&mut drawing, throw, context),
        (Task::StitchBinding | Task::Snip | Task::Wash | Task::Clip, _) => {
            whole(&mut drawing, throw)
        }
        (_, None) => square(&mut drawing, throw, task, piece),
        (Task::SquareUp | Task::PressBlock, Some(_)) => block(&mut drawing, throw, piece, context),
        (_, Some(join)) => joined(&mut drawing, throw, task, join, context),
    };
    // Of the whole there is nothing to find on a map.
    let (gap, map) = match piece == throw.assembly().whole() {
        true => (0.0, (0.0, 0.0)),
        false => {
            let gap = side * 0.2;
            (
                gap,
                map(
                    &mut drawing,
                    throw,
                    piece,
                    (width + gap, 0.0),
                    (side * 0.9, height),
                ),
            )
        }
    };
    Picture {
        width: width + gap + map.0,
        height: height.max(map.1),
        spoken: say!(
            context,
            "picture-step",
            task = context.say(&format!("task-{}", task.key()), &[]),
            piece = names::spoken(throw, piece, context)
        ),
        marks: drawing.marks,
    }
}

/// Where a piece lies: the throw's outline, its blocks, and the piece.
fn map(
    d: &mut Drawing,
    throw: &Throw,
    piece: Rect,
    at: (f64, f64),
    room: (f64, f64),
) -> (f64, f64) {
    let (across, down) = (f64::from(throw.plan.across), f64::from(throw.plan.down));
    let cell = (room.0 / across).min(room.1 / down);
    let (x, y) = at;
    d.area([x, y, across * cell, down * cell], Ink::Blank, None, None);
    if throw.plan.squares() <= MOST_DRAWN {
        for c in 1..throw.plan.across {
            let at = x + f64::from(c) * cell;
            d.line([at, y, at, y + down * cell], Ink::Rule, false);
        }
        for r in 1..throw.plan.down {
            let at = y + f64::from(r) * cell;
            d.line([x, at, x + across * cell, at], Ink::Rule, false);
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
        None,
        None,
    );
    (across * cell, down * cell)
}

fn square(d: &mut Drawing, throw: &Throw, task: Task, piece: Rect) -> (f64, f64) {
    let s = in_mm(throw.plan.side);
    let cover = throw.cover(piece);
    match task {
        Task::Cut => {
            // A strip as wide as the square, and the cuts across it.
            let strip = [0.0, s * 0.1, s * 2.0, s];
            d.cloth(throw, piece, strip, (Ink::Denim, None), false);
            d.area(
                [s * 0.5, s * 0.1, s, s],
                Ink::Now,
                None,
                Some(names::square(piece)),
            );
            for x in [s * 0.5, s * 1.5] {
                d.line([x, 0.0, x, s * 1.2], Ink::Cut, false);
            }
            (s * 2.0, s * 1.2)
        }
        Task::CoverFront | Task::CoverBack => {
            let face = if task == Task::CoverFront {
                Face::Front
            } else {
                Face::Back
            };
            d.cloth(throw, piece, [0.0, 0.0, s, s], (Ink::Denim, None), true);
            d.area(
                [s * 1.1, s * 0.05, s * 0.9, s * 0.9],
                Ink::Now,
                cover.on(face),
                None,
            );
            d.line([s * 1.3, s * 0.5, s * 0.75, s * 0.5], Ink::Rule, true);
            (s * 2.0, s)
        }
        _ => {
            let front = [0.0, 0.0, s, s];
            d.cloth(throw, piece, front, (Ink::Denim, cover.front), true);
            if task == Task::StitchPatch {
                let (near, far) = (s * 0.03, s * 0.97);
                for [x1, y1, x2, y2] in [
                    [near, near, far, near],
                    [near, far, far, far],
                    [near, near, near, far],
                    [far, near, far, far],
                ] {
                    d.line([x1, y1, x2, y2], Ink::Stitch, false);
                }
            }
            if cover.back.is_some() {
                let back = [s * 1.1, 0.0, s, s];
                d.cloth(throw, piece, back, (Ink::Denim, cover.back), true);
                return (s * 2.1, s);
            }
            (s, s)
        }
    }
}

/// The squares of a part, at a corner, each with its front.
fn part(d: &mut Drawing, throw: &Throw, piece: Rect, [x, y, w, h]: [f64; 4], ink: Ink) {
    if piece.count() > 8 {
        d.area([x, y, w, h], ink, None, None);
        return;
    }
    let (cw, ch) = (w / f64::from(piece.cols), h / f64::from(piece.rows));
    for square in piece.squares() {
        let sx = x + f64::from(square.col - piece.col) * cw;
        let sy = y + f64::from(square.row - piece.row) * ch;
        let print = throw.cover(square).front;
        d.cloth(throw, square, [sx, sy, cw, ch], (ink, print), true);
    }
}

/// Two parts lapped or seamed, as much of them as lies near the join.
fn joined(
    d: &mut Drawing,
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
        turn([first - lap, 0.0, second, long]),
        Ink::Next,
    );
    part(
        d,
        throw,
        join.first,
        turn([0.0, 0.0, first, long]),
        Ink::Denim,
    );
    if lap > 0.0 {
        d.area(turn([first - lap, 0.0, lap, long]), Ink::Lap, None, None);
    }
    let middle = first - lap / 2.0;
    match task {
        Task::Dot => {
            let all = first + second - lap;
            // As large in the picture of a long seam as in that of a short one.
            let letters = (side * 0.13).max(all.max(long) * 0.05);
            let (over, under) = match upright {
                true => ([first / 2.0, letters], [all - second / 2.0, letters]),
                false => ([long / 2.0, letters], [long / 2.0, all - letters]),
            };
            if lap > 0.0 {
                d.words(over[0], over[1], say!(context, "picture-over"), letters);
                d.words(under[0], under[1], say!(context, "picture-under"), letters);
            }
            let dots = (long / 25.0).round().clamp(2.0, 12.0);
            for i in 0..dots as u32 {
                let at = long * (f64::from(i) + 0.5) / dots;
                d.area(
                    turn([middle - 2.0, at - 2.0, 4.0, 4.0]),
                    Ink::Now,
                    None,
                    None,
                );
            }
        }
        Task::Stitch => {
            let half = in_mm(throw.plan.stitch.width()) / 2.0;
            let rows: &[f64] = if half > 0.0 { &[-1.0, 1.0] } else { &[0.0] };
            for row in rows {
                let at = middle + row * half;
                let [x1, y1, ..] = turn([at, 0.0, 0.0, 0.0]);
                let [x2, y2, ..] = turn([at, long, 0.0, 0.0]);
                d.line([x1, y1, x2, y2], Ink::Stitch, false);
            }
        }
        _ => {
            let [x1, y1, ..] = turn([middle, 0.0, 0.0, 0.0]);
            let [x2, y2, ..] = turn([middle, long, 0.0, 0.0]);
            d.line([x1, y1, x2, y2], Ink::Rule, false);
        }
    }
    let across = first + second - lap;
    if upright {
        (across, long)
    } else {
        (long, across)
    }
}

/// A block with what is to be cut away, or as it should be.
fn block(d: &mut Drawing, throw: &Throw, piece: Rect, context: Context<'_>) -> (f64, f64) {
    let measured = throw.work(piece).and_then(|w| w.measured);
    let size = measured.unwrap_or_else(|| squaring::natural(throw, piece));
    trimming(d, throw, piece, size, context).all
}

/// Where a block lies in its drawing, beside what it is short of.
struct Laid {
    /// Its upper left corner.
    at: (f64, f64),
    /// Its width and height.
    size: (f64, f64),
    /// All of the drawing.
    all: (f64, f64),
}

/// A block; what is cut off hatched, what is missing an empty strip beside it, each
/// with its measure in words.
fn trimming(d: &mut Drawing, throw: &Throw, piece: Rect, size: Size, context: Context<'_>) -> Laid {
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
    let (x, y) = (seen(left), seen(top));
    part(d, throw, piece, [x, y, w, h], Ink::Denim);
    let across = squaring::trim(size.width, target.width, context.ruler);
    let down = squaring::trim(size.height, target.height, context.ruler);
    let letters = in_mm(throw.plan.side) * 0.13;
    let say_at = |d: &mut Drawing, side: EdgeSide, text: String| {
        // From the side inwards, clear of the squares' names.
        let long = text.chars().count() as f64 * letters * 0.29 + letters * 0.4;
        let (at_x, at_y) = match side {
            EdgeSide::Left => (x + long, y + h / 2.0),
            EdgeSide::Right => (x + w - long, y + h / 2.0),
            EdgeSide::Top => (x + w / 2.0, y + letters),
            EdgeSide::Bottom => (x + w / 2.0, y + h - letters),
        };
        d.words(at_x, at_y, text, letters);
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
        d.area(area, Ink::Waste, None, None);
        d.line([x1, y1, x2, y2], Ink::Cut, false);
        say_at(
            d,
            side,
            say!(context, "picture-trim", length = context.length(cut)),
        );
    }
    for (side, gap, area) in [
        (EdgeSide::Left, left, [0.0, y, x, h]),
        (EdgeSide::Right, right, [x + w, y, seen(right), h]),
        (EdgeSide::Top, top, [x, 0.0, w, y]),
        (EdgeSide::Bottom, bottom, [x, y + h, w, seen(bottom)]),
    ] {
        if gap > zero() {
            d.area(area, Ink::Blank, None, None);
            say_at(
                d,
                side,
                say!(context, "picture-missing", length = context.length(gap)),
            );
        }
    }
    Laid {
        at: (x, y),
        size: (w, h),
        all: (x + w + seen(right), y + h + seen(bottom)),
    }
}

/// A measured block with its trims and the measures beside it.
pub(super) fn measured(throw: &Throw, piece: Rect, size: Size, context: Context<'_>) -> Picture {
    let mut inner = Drawing { marks: Vec::new() };
    let laid = trimming(&mut inner, throw, piece, size, context);
    let ((w, h), (full_w, full_h)) = (laid.size, laid.all);
    let edge = in_mm(throw.plan.side) * 0.3;
    let mut d = Drawing { marks: Vec::new() };
    for mark in inner.marks {
        d.marks.push(shifted(mark, edge, edge));
    }
    let text = edge * 0.36;
    let (left, top) = (edge + laid.at.0, edge + laid.at.1);
    d.words(
        left + w / 2.0,
        edge * 0.3,
        context.length(size.width).text,
        text,
    );
    for end in [left, left + w] {
        d.line(
            [left + w / 2.0, edge * 0.75, end, edge * 0.75],
            Ink::Rule,
            true,
        );
    }
    d.words(
        edge * 2.0 + full_w,
        top + h / 2.0,
        context.length(size.height).text,
        text,
    );
    for end in [top, top + h] {
        let at = edge * 1.2 + full_w;
        d.line([at, top + h / 2.0, at, end], Ink::Rule, true);
    }
    Picture {
        width: full_w + edge * 3.2,
        height: full_h + edge * 1.3,
        spoken: say!(
            context,
            "picture-measured",
            piece = names::spoken(throw, piece, context),
            size = context.by(size.width, size.height).spoken
        ),
        marks: d.marks,
    }
}

/// Seams to be opened round a piece: the squares near it, an empty gap along each
/// seam; a square that is taken out stands out.
pub(super) fn opened(
    throw: &Throw,
    centre: Rect,
    square: Option<Rect>,
    seams: &[Rect],
    spoken: String,
) -> Picture {
    const CELL: f64 = 20.0;
    const GAP: f64 = 2.0;
    let mut d = Drawing { marks: Vec::new() };
    let whole = throw.assembly().whole();
    let (row, col) = (centre.row.saturating_sub(1), centre.col.saturating_sub(1));
    let near = Rect {
        row,
        col,
        rows: (centre.row + centre.rows + 1).min(whole.rows) - row,
        cols: (centre.col + centre.cols + 1).min(whole.cols) - col,
    };
    let (x, y) = (
        |c: u16| (f64::from(c) - f64::from(near.col)) * CELL,
        |r: u16| (f64::from(r) - f64::from(near.row)) * CELL,
    );
    let out = |s: &Rect| Some(*s) == square;
    for place in near.squares().filter(|s| !out(s)).chain(square) {
        let at = [x(place.col), y(place.row), CELL, CELL];
        if !out(&place) && throw.has(place, Task::Cut) {
            let print = throw.cover(place).front;
            d.cloth(throw, place, at, (Ink::Denim, print), true);
        } else {
            let ink = if out(&place) { Ink::Now } else { Ink::Blank };
            d.area(at, ink, None, Some(names::square(place)));
        }
    }
    for seam in seams {
        let from = (x(seam.col).max(0.0), y(seam.row).max(0.0));
        let to = (
            x(seam.col + seam.cols).min(x(near.col + near.cols)),
            y(seam.row + seam.rows).min(y(near.row + near.rows)),
        );
        let half = |flat: bool| if flat { GAP / 2.0 } else { 0.0 };
        let (across, down) = (half(seam.cols == 0), half(seam.rows == 0));
        let area = [
            from.0 - across,
            from.1 - down,
            to.0 - from.0 + across * 2.0,
            to.1 - from.1 + down * 2.0,
        ];
        d.area(area, Ink::Blank, None, None);
        d.line([from.0, from.1, to.0, to.1], Ink::Cut, false);
    }
    Picture {
        width: x(near.col + near.cols),
        height: y(near.row + near.rows),
        spoken,
        marks: d.marks,
    }
}

fn shifted(mark: Mark, dx: f64, dy: f64) -> Mark {
    match mark {
        Mark::Area {
            x,
            y,
            w,
            h,
            ink,
            print,
            colour,
            label,
        } => Mark::Area {
            x: x + dx,
            y: y + dy,
            w,
            h,
            ink,
            print,
            colour,
            label,
        },
        Mark::Line {
            x1,
            y1,
            x2,
            y2,
            ink,
            arrow,
        } => Mark::Line {
            x1: x1 + dx,
            y1: y1 + dy,
            x2: x2 + dx,
            y2: y2 + dy,
            ink,
            arrow,
        },
        Mark::Words { x, y, text, size } => Mark::Words {
            x: x + dx,
            y: y + dy,
            text,
            size,
        },
    }
}

/// The whole with its binding.
/// Most strips drawn one below the other.
const MOST_STRIPS: u32 = 6;

/// The strips of the binding one below the other, to scale, the last as long as is left.
fn strips(d: &mut Drawing, throw: &Throw) -> (f64, f64) {
    let (plan, size) = (&throw.plan, throw.finished());
    let need = plan.binding_for(size.width, size.height);
    let width = in_mm(plan.side) * 2.0;
    let scale = width / in_mm(plan.binding.longest);
    let high = in_mm(plan.binding.strip) * scale;
    let last = need.length - (plan.binding.longest - plan.take()) * i64::from(need.joins);
    let drawn = need.strips.min(MOST_STRIPS);
    for n in 0..drawn {
        let long = match n + 1 == need.strips {
            true => (in_mm(last) * scale).min(width),
            false => width,
        };
        let y = f64::from(n) * high * 1.4;
        d.area([0.0, y, long, high], Ink::Now, None, None);
        for at in [y, y + high] {
            d.line([0.0, at, long, at], Ink::Cut, false);
        }
    }
    (width, f64::from(drawn) * high * 1.4 - high * 0.4)
}

/// The ends of two strips, one lapped over the other and stitched.
fn strip_ends(d: &mut Drawing, throw: &Throw, context: Context<'_>) -> (f64, f64) {
    let (high, lap) = (
        in_mm(throw.plan.binding.strip),
        in_mm(take(throw.plan.joining, throw.plan.lap)),
    );
    let long = in_mm(throw.plan.side) * 1.1;
    let width = long * 2.0 - lap;
    d.area([0.0, 0.0, long, high], Ink::Next, None, None);
    d.area([long - lap, 0.0, long, high], Ink::Now, None, None);
    d.area([long - lap, 0.0, lap, high], Ink::Lap, None, None);
    for at in [long - lap * 0.75, long - lap * 0.25] {
        d.line([at, 0.0, at, high], Ink::Stitch, false);
    }
    let letters = width * 0.06;
    let (middle, below) = ((long - lap) / 2.0, high + letters);
    d.words(middle, below, say!(context, "picture-under"), letters);
    d.words(
        width - middle,
        below,
        say!(context, "picture-over"),
        letters,
    );
    (width, high + letters * 1.6)
}

/// The strip flat with its fold, and folded.
fn folded(d: &mut Drawing, throw: &Throw) -> (f64, f64) {
    let (long, high) = (in_mm(throw.plan.side), in_mm(throw.plan.binding.strip));
    d.area([0.0, 0.0, long, high], Ink::Denim, None, None);
    d.line([0.0, high / 2.0, long, high / 2.0], Ink::Rule, false);
    let middle = long / 2.0;
    d.line([middle, high * 0.9, middle, high * 0.12], Ink::Rule, true);
    let gap = long * 0.3;
    d.line(
        [long * 1.05, high / 4.0, long + gap * 0.85, high / 4.0],
        Ink::Rule,
        true,
    );
    d.area([long + gap, 0.0, long, high / 2.0], Ink::Now, None, None);
    (long * 2.0 + gap, high)
}

/// The throw's outline with its binding: its frame, and how wide the binding is.
fn bound(d: &mut Drawing, throw: &Throw) -> ([f64; 2], f64) {
    let size = throw.finished();
    let scale = in_mm(throw.plan.side) * 1.6 / in_mm(size.width).max(in_mm(size.height));
    let (w, h) = (in_mm(size.width) * scale, in_mm(size.height) * scale);
    let edge = (in_mm(throw.plan.binding.strip) / 2.0 * scale).max(2.0);
    d.area([0.0, 0.0, w, h], Ink::Now, None, None);
    let within = [edge, edge, w - edge * 2.0, h - edge * 2.0];
    squares(d, throw, Face::Front, within);
    ([w, h], edge)
}

/// Where the binding begins, which way it goes, and where its strips are joined.
fn laid_round(d: &mut Drawing, throw: &Throw, context: Context<'_>) -> (f64, f64) {
    let ([w, h], edge) = bound(d, throw);
    let size = throw.finished();
    let found = crate::plan::binding::layout(&throw.plan, size.width, size.height, context.ruler);
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
        d.line([x1, y1, x2, y2], Ink::Cut, false);
        let (x, y) = spot(side, along, edge + letters * 0.8);
        let plate = words.chars().count().max(2) as f64 * letters * 0.62;
        let high = letters * 1.3;
        // Beside the binding, whichever side it is.
        let (dx, dy) = (edge * 1.3 + plate / 2.0, edge * 1.3 + high / 2.0);
        let (x, y) = (x.clamp(dx, w - dx), y.clamp(dy, h - dy));
        d.area(
            [x - plate / 2.0, y - high / 2.0, plate, high],
            Ink::Rule,
            None,
            None,
        );
        d.words(x, y, words, letters);
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
        d.line([x1, y1, x2, y2], Ink::Rule, true);
    }
    (w, h)
}

fn whole(d: &mut Drawing, throw: &Throw) -> (f64, f64) {
    let ([w, h], edge) = bound(d, throw);
    for [x1, y1, x2, y2] in [
        [0.0, edge / 2.0, w, edge / 2.0],
        [0.0, h - edge / 2.0, w, h - edge / 2.0],
        [edge / 2.0, 0.0, edge / 2.0, h],
        [w - edge / 2.0, 0.0, w - edge / 2.0, h],
    ] {
        d.line([x1, y1, x2, y2], Ink::Stitch, false);
    }
    (w, h)
}

/// A block's true outline, and the cut that squares it up.
pub(super) fn outlined(
    throw: &Throw,
    piece: Rect,
    outline: &Outline,
    cut: Option<&Cut>,
    context: Context<'_>,
) -> Picture {
    let mut d = Drawing { marks: Vec::new() };
    let corners = outline.corners();
    let least = |f: fn(&Spot) -> f64| corners.iter().map(f).fold(f64::INFINITY, f64::min);
    let most = |f: fn(&Spot) -> f64| corners.iter().map(f).fold(f64::NEG_INFINITY, f64::max);
    let (x0, y0) = (least(|c| c.0), least(|c| c.1));
    let edge = in_mm(throw.plan.side) * 0.08;
    let at = |(x, y): Spot| (x - x0 + edge, y - y0 + edge);
    let mut round = |spots: [Spot; 4], ink| {
        for i in 0..4 {
            let ((x1, y1), (x2, y2)) = (at(spots[i]), at(spots[(i + 1) % 4]));
            d.line([x1, y1, x2, y2], ink, false);
        }
    };
    round(corners, Ink::Now);
    if let Some(cut) = cut {
        round(cut.corners, Ink::Cut);
        let (x, y) = at(cut.centre);
        d.line([x - edge / 2.0, y, x + edge / 2.0, y], Ink::Cut, false);
        d.line([x, y - edge / 2.0, x, y + edge / 2.0], Ink::Cut, false);
    }
    Picture {
        width: most(|c| c.0) - x0 + edge * 2.0,
        height: most(|c| c.1) - y0 + edge * 2.0,
        spoken: say!(
            context,
            "picture-outline",
            piece = names::spoken(throw, piece, context)
        ),
        marks: d.marks,
    }
}

/// How a block stands against the trim size.
fn block_ink(throw: &Throw, block: Rect) -> Ink {
    let stitched = block.is_square() || throw.has(block, Task::Stitch);
    let (held, target) = (
        crate::fitting::trimming::holds(throw, block),
        throw.target(block),
    );
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
pub(super) fn block_key(throw: &Throw, context: Context<'_>) -> Vec<InkKey> {
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
    .map(|(ink, key)| InkKey {
        ink,
        label: context.say(&format!("block-key-{key}"), &[]),
    })
    .collect()
}

/// The blocks as they lie: those short of the trim size marked, those over it hatched;
/// a row or column that does not close has its difference at its end.
pub(super) fn blocks(throw: &Throw, context: Context<'_>) -> Picture {
    let mut d = Drawing { marks: Vec::new() };
    let mut off = 0;
    for block in throw.assembly().blocks() {
        let (x, y) = (f64::from(block.col) * 10.0, f64::from(block.row) * 10.0);
        let (w, h) = (f64::from(block.cols) * 10.0, f64::from(block.rows) * 10.0);
        let ink = block_ink(throw, block);
        let amiss = ink == Ink::Amiss;
        off += usize::from(amiss);
        d.area(
            [x, y, w - 1.0, h - 1.0],
            ink,
            None,
            Some(names::block(block)),
        );
    }
    let (width, height) = (
        f64::from(throw.plan.across) * 10.0,
        f64::from(throw.plan.down) * 10.0,
    );
    let mut room = (0.0, 0.0);
    // Where the words of each line below the blocks end so far: they may be wider than a column.
    let mut lines: Vec<f64> = Vec::new();
    for (seam, n, off) in crate::fitting::trimming::closing(throw) {
        if off == zero() {
            continue;
        }
        let at = n as f64 * 20.0;
        let words = context.over_under(off).text;
        let long = words.chars().count() as f64 * 2.6;
        match seam {
            Seam::Upright => {
                let tall = (height - at).min(20.0);
                d.area([width, at, 3.0, tall - 1.0], Ink::Amiss, None, None);
                d.words(width + 5.0 + long / 2.0, at + tall / 2.0, words, 4.5);
                room.0 = long.max(room.0);
            }
            Seam::Level => {
                let wide = (width - at).min(20.0);
                d.area([at, height, wide - 1.0, 3.0], Ink::Amiss, None, None);
                let from = (at + (wide - long) / 2.0).min(width - long).max(0.0);
                let free = lines.iter().position(|end| *end < from);
                let line = free.unwrap_or_else(|| {
                    lines.push(0.0);
                    lines.len() - 1
                });
                lines[line] = from + long;
                d.words(
                    from + long / 2.0,
                    height + 7.0 + 6.0 * line as f64,
                    words,
                    4.5,
                );
                room.1 = 4.0 + 6.0 * lines.len() as f64;
            }
        }
    }
    Picture {
        width: width + if room.0 > 0.0 { room.0 + 6.0 } else { 0.0 },
        height: height + room.1,
        spoken: say!(context, "picture-blocks", n = off),
        marks: d.marks,
    }
}

/// The join cut through, to scale: the two edges, the stitching, the fringe.
pub(super) fn section(plan: &Plan, context: Context<'_>) -> Picture {
    let mut d = Drawing { marks: Vec::new() };
    let lap = in_mm(plan.lap);
    let (cloth, thick) = (18.0, 2.4);
    let half = in_mm(plan.stitch.width()) / 2.0;
    let width = cloth * 2.0 + lap;
    let stitches = |d: &mut Drawing, middle: f64, top: f64, bottom: f64| {
        let rows: &[f64] = if half > 0.0 { &[-1.0, 1.0] } else { &[0.0] };
        for row in rows {
            let x = middle + row * half;
            d.line([x, top, x, bottom], Ink::Stitch, false);
        }
        if half > 0.0 && matches!(plan.stitch, Stitch::Twin { .. }) {
            d.line(
                [middle - half, bottom, middle + half, bottom],
                Ink::Stitch,
                false,
            );
        }
    };
    let height = match plan.joining {
        Joining::Lapped => {
            let y = 8.0;
            d.area([0.0, y, cloth + lap, thick], Ink::Denim, None, None);
            d.area(
                [cloth, y + thick, cloth + lap, thick],
                Ink::Next,
                None,
                None,
            );
            stitches(&mut d, cloth + lap / 2.0, y - 1.2, y + thick * 2.0 + 1.2);
            let rule = y + thick * 2.0 + 5.0;
            for end in [cloth, cloth + lap] {
                d.line([cloth + lap / 2.0, rule, end, rule], Ink::Rule, true);
            }
            d.words(
                cloth + lap / 2.0,
                rule + 3.4,
                context.length(plan.lap).text,
                3.4,
            );
            if let Some(fringe) = plan.fringe() {
                let x = cloth + lap - in_mm(fringe) / 2.0;
                d.words(
                    x.max(cloth + lap * 0.7),
                    3.0,
                    context.length(fringe).text,
                    3.0,
                );
                d.line([x, 4.8, x, y - 0.4], Ink::Rule, true);
            }
            rule + 6.0
        }
        Joining::Seamed | Joining::Exposed => {
            // Both allowances stand up (exposed) or hang below (seamed).
            let middle = width / 2.0;
            let up = plan.joining == Joining::Exposed;
            let y = if up { lap + 6.0 } else { 6.0 };
            d.area([0.0, y, middle, thick], Ink::Denim, None, None);
            d.area([middle, y, middle, thick], Ink::Next, None, None);
            let top = if up { y - lap } else { y + thick };
            d.area([middle - thick, top, thick, lap], Ink::Denim, None, None);
            d.area([middle, top, thick, lap], Ink::Next, None, None);
            let at = if up { y - 0.8 } else { y + thick + 0.8 };
            d.line(
                [middle - thick - 1.0, at, middle + thick + 1.0, at],
                Ink::Stitch,
                false,
            );
            d.words(
                middle + thick + 9.0,
                top + lap / 2.0,
                context.length(plan.lap).text,
                3.4,
            );
            lap + thick + 14.0
        }
    };
    let fringe = plan
        .fringe()
        .map_or_else(|| say!(context, "no-fringe"), |f| context.length(f).spoken);
    Picture {
        width,
        height,
        spoken: say!(
            context,
            "picture-section",
            lap = context.length(plan.lap).spoken,
            fringe = fringe
        ),
        marks: d.marks,
    }
}

/// The grid with its blocks, as large as it will be.
pub(super) fn grid(plan: &Plan, context: Context<'_>) -> Picture {
    let mut d = Drawing { marks: Vec::new() };
    let (w, h) = plan.finished();
    let (width, height) = (in_mm(w), in_mm(h));
    let assembly = crate::plan::assembly::Assembly::new(plan.across, plan.down, plan.order);
    let blocks = assembly.blocks();
    let step = in_mm(plan.target() - take(plan.joining, plan.lap));
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
        d.area([x, y, right - x, low - y], ink, None, None);
        if block.cols == 2 {
            d.line(
                [(x + right) / 2.0, y, (x + right) / 2.0, low],
                Ink::Stitch,
                false,
            );
        }
        if block.rows == 2 {
            d.line(
                [x, (y + low) / 2.0, right, (y + low) / 2.0],
                Ink::Stitch,
                false,
            );
        }
    }
    if plan.squares() > MOST_DRAWN * 2 {
        d.area([0.0, 0.0, width, height], Ink::Denim, None, None);
    }
    let size = context.by(w, h);
    Picture {
        width,
        height,
        spoken: say!(
            context,
            "picture-grid",
            across = plan.across,
            down = plan.down,
            size = size.spoken
        ),
        marks: d.marks,
    }
}
