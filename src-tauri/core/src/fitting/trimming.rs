//! Which size to trim the fours to, and how each short one is saved.
//!
//! For a trim size `T`, a block is short by `T` less what it holds. In a row of blocks
//! a shortage can be taken up where the block meets its neighbours, by lapping less
//! there, as long as each lap keeps the least fringe; at the outer edge, where the
//! binding hides it; by opening the block's own lap and sewing it narrower; by a new
//! block; or it stays, and the row is that much short. Blocks already sewn to one
//! another are one *bar*. Rows (for widths) and columns (for heights) are alike and
//! do not affect one another.
//!
//! The cost of a size is the trouble of the saves plus the throw that is lost, in
//! minutes. The minutes are our judgement, no source: 2 for a join lapped less, 1 for
//! an edge under the binding, 8 for each seam opened and sewn again, 30 for a new
//! block, 120 for a row left short, and 1 for every 2 in² of finished throw lost
//! against untrimmed fours. What is cut away in trimming is reported, not counted, so
//! that larger blocks never make the best worse.
//!
//! A lap can only be marked where the ruler has a mark. So the room of a join ends at the
//! narrowest mark that keeps the least fringe, and a shortage that falls between two marks
//! takes the narrower lap; by how much the piece is then over is given with the save
//! ([`Save::over`]), and [`closing`] gives it for the line.
//!
//! What the laps lack of a shortage by no more than [`EASED_NM`] is eased in while the edges are
//! lapped ([`Save::eased`]), for 3 minutes of care (our judgement). So a ruler with coarser marks
//! does not ask for a seam to be opened because of a fraction of a millimetre.
//!
//! Every mark from the largest size down is tried until the throw lost alone costs as much
//! as the cheapest size found, below which no size can be cheaper. The largest is the
//! untrimmed four, the size chosen now, or, where all blocks came out larger, what the
//! smallest of them holds.
//!
//! Promises (kept by tests): for each `T` the saves are the cheapest there are by these
//! costs, found by dynamic programming along each line over the room used up in the
//! next join, keeping only choices not beaten in both cost and room; the size
//! recommended is the cheapest of all candidates; no save breaks the least fringe or
//! touches a join already made.

use crate::fitting::squaring::{leans, thin_laps};
use crate::measure::{Length, NM_PER_INCH, NM_PER_MM, Ruler, in_mm, in_nm, nm, zero};
use crate::plan::assembly::{Rect, Seam};
use crate::plan::binding::EdgeSide;
use crate::plan::{Joining, Plan, laps_in};
use crate::throw::fringe::least_lap;
use crate::throw::tasks::Task;
use crate::throw::{Made, Size, Throw, Work};
use std::collections::BTreeMap;

/// Tenths of a minute for a join lapped less than the plan says.
pub const NARROWER: i64 = 20;
/// Tenths of a minute for an outer edge left to the binding.
pub const EDGE: i64 = 10;
/// Tenths of a minute to ease in what laps lack.
pub const EASE: i64 = 30;
/// Tenths of a minute to open one seam and sew it again.
pub const SEAM: i64 = 80;
/// Tenths of a minute for a new block.
pub const RENEW: i64 = 300;
/// Tenths of a minute for a line left short.
pub const SHORT: i64 = 1200;
/// So little is eased in when edges are joined: a millimetre (our judgement; practice, no source).
pub const EASED_NM: i64 = 1_000_000;
/// How much of the strip on each face must still catch cloth, 5 mm (common practice, no source).
const CATCH_NM: i64 = 5_000_000;

/// One piece of a line: a block, or blocks already sewn to one another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bar {
    /// How much it is short, in nanometres; nothing if it holds the size.
    pub short: i64,
    /// What sewing its own laps narrower costs, where that would do.
    pub resew: Option<i64>,
    /// What a new one costs, where one can be put in.
    pub renew: Option<i64>,
}

/// How a bar is brought to size.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum How {
    /// It holds the size.
    Fits,
    /// By lapping less before and after it, by so many nanometres; what these lack is eased in.
    Lapped {
        /// At its left or upper end.
        before: i64,
        /// At its right or lower end.
        after: i64,
    },
    /// By sewing its own laps narrower.
    Resewn,
    /// By a new one.
    Renewed,
    /// Not; the line is short.
    LeftShort,
}

/// The cheapest way to bring every bar of a line to size.
///
/// `room[j]` is how much may be taken up before bar `j` (and `room[n]` after the last),
/// `price[j]` what using any of it costs; `eased` is how much of each bar's shortage may be
/// eased in, which costs [`EASE`].
pub fn line(bars: &[Bar], room: &[i64], price: &[i64], eased: i64) -> (i64, Vec<How>) {
    line_on(bars, room, price, eased, &|_, taken| taken)
}

/// The same where a join can only be lapped less by certain amounts: `up(j, taken)` is the
/// least of them that gives `taken` before bar `j`. The rooms must be such amounts.
fn line_on(
    bars: &[Bar],
    room: &[i64],
    price: &[i64],
    eased: i64,
    up: &dyn Fn(usize, i64) -> i64,
) -> (i64, Vec<How>) {
    struct TrimStep {
        used: i64,
        cost: i64,
        from: usize,
        how: How,
    }
    let mut layers: Vec<Vec<TrimStep>> = vec![vec![TrimStep {
        used: 0,
        cost: 0,
        from: 0,
        how: How::Fits,
    }]];
    for (j, bar) in bars.iter().enumerate() {
        let mut next: Vec<TrimStep> = Vec::new();
        for (from, sofar) in layers[j].iter().enumerate() {
            let mut add = |used, extra, how| {
                next.push(TrimStep {
                    used,
                    cost: sofar.cost + extra,
                    from,
                    how,
                });
            };
            if bar.short <= 0 {
                add(0, 0, How::Fits);
                continue;
            }
            let (left, right) = (room[j] - sofar.used, room[j + 1]);
            let first_use = if sofar.used == 0 { price[j] } else { 0 };
            let least = (bar.short - eased).max(0);
            let eased_in = (least < bar.short).then_some((least, EASE));
            for (short, care) in [(bar.short, 0)].into_iter().chain(eased_in) {
                let lapped = |before, after| How::Lapped { before, after };
                if short == 0 {
                    add(0, care, lapped(0, 0));
                    continue;
                }
                if short <= left {
                    add(0, care + first_use, lapped(short, 0));
                }
                if short <= right {
                    add(short, care + price[j + 1], lapped(0, short));
                }
                if left > 0 && short > left && short - left <= right {
                    let cost = care + first_use + price[j + 1];
                    add(short - left, cost, lapped(left, short - left));
                }
            }
            if let Some(cost) = bar.resew {
                add(0, cost, How::Resewn);
            }
            if let Some(cost) = bar.renew {
                add(0, cost, How::Renewed);
            }
            add(0, SHORT, How::LeftShort);
        }
        // Keep what no other choice beats in both room and cost. Room once begun is
        // paid for, so a choice that leaves it untouched must beat it by its price too.
        next.sort_by_key(|s| (s.used, s.cost));
        let mut best = i64::MAX;
        next.retain(|s| {
            let keep = s.cost < best;
            if keep {
                best = if s.used == 0 {
                    s.cost + price[j + 1]
                } else {
                    s.cost
                };
            }
            keep
        });
        layers.push(next);
    }
    let last = layers
        .last()
        .and_then(|l| l.iter().enumerate().min_by_key(|(_, s)| s.cost));
    let Some((mut at, end)) = last else {
        return (0, Vec::new());
    };
    let cost = end.cost;
    let mut hows = Vec::with_capacity(bars.len());
    for layer in layers.iter().skip(1).rev() {
        hows.push(layer[at].how);
        at = layer[at].from;
    }
    hows.reverse();
    top_up(&mut hows, bars, room);
    even_out(&mut hows, room, up);
    (cost, hows)
}

/// Where some of a shortage is eased in, joins that are lapped less anyway give what they have left.
fn top_up(hows: &mut [How], bars: &[Bar], room: &[i64]) {
    let mut taken = taken_up(hows);
    for (j, (how, bar)) in hows.iter_mut().zip(bars).enumerate() {
        let How::Lapped { before, after } = how else {
            continue;
        };
        let mut lacking = bar.short - *before - *after;
        for (at, by) in [(j, before), (j + 1, after)] {
            if *by > 0 {
                let more = lacking.min(room[at] - taken[at]);
                *by += more;
                taken[at] += more;
                lacking -= more;
            }
        }
    }
}

/// How much is taken up before each bar and after the last.
fn taken_up(hows: &[How]) -> Vec<i64> {
    let mut taken = vec![0; hows.len() + 1];
    for (j, how) in hows.iter().enumerate() {
        if let How::Lapped { before, after } = how {
            taken[j] += before;
            taken[j + 1] += after;
        }
    }
    taken
}

/// The most that a join can give and that is no more than this: the amount next below, where this is
/// none of its amounts.
fn down(up: &dyn Fn(usize, i64) -> i64, j: usize, taken: i64) -> i64 {
    let above = up(j, taken);
    if above == taken {
        return taken;
    }
    let first = up(j, 1);
    above - (up(j, first + 1) - first)
}

/// Where both ends of a bar are its alone, share the shortage as evenly as the marks allow:
/// the crossing moves least.
fn even_out(hows: &mut [How], room: &[i64], up: &dyn Fn(usize, i64) -> i64) {
    for j in 0..hows.len() {
        let How::Lapped { before, after } = hows[j] else {
            continue;
        };
        let shared = |other: Option<&How>, takes: fn(i64, i64) -> i64| match other {
            Some(How::Lapped { before, after }) => takes(*before, *after) > 0,
            _ => false,
        };
        let alone = !shared(j.checked_sub(1).and_then(|i| hows.get(i)), |_, a| a)
            && !shared(hows.get(j + 1), |b, _| b);
        if !alone || before <= 0 || after <= 0 {
            continue;
        }
        let short = before + after;
        let half = short / 2;
        // The marks next to the half, at either end; the other end takes the rest.
        let above = [up(j, half), short - up(j + 1, half)];
        let below = [short - up(j + 1, short - half), up(j, half + 1)];
        // At an outer edge nothing lies on marks: the join beside it may take the mark below the half.
        let under = [down(up, j, half), short - down(up, j + 1, short - half)];
        // And as much as either end has room for.
        let most = [before, short - room[j + 1]];
        let splits = above.into_iter().chain(below).chain(under).chain(most);
        let best = splits
            .filter(|b| *b > 0 && *b < short)
            .filter(|b| up(j, *b) <= room[j] && up(j + 1, short - b) <= room[j + 1])
            .min_by_key(|b| {
                let over = up(j, *b) + up(j + 1, short - b) - short;
                (over, (2 * b - short).abs(), *b)
            });
        if let Some(before) = best {
            hows[j] = How::Lapped {
                before,
                after: short - before,
            };
        }
    }
}

/// A block that is short, and what becomes of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Save {
    /// The block, or the first of those sewn to one another.
    pub piece: Rect,
    /// Short in width (an upright seam would take it up) or in height.
    pub seam: Seam,
    /// By how much.
    pub short: Length,
    /// How it is saved.
    pub how: How,
    /// By how much the laps, which lie on the ruler's marks, give it more than it is short.
    pub over: Length,
    /// What the laps lack of it and is eased in.
    pub eased: Length,
}

/// What a trim size comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct TrimChoice {
    /// The size.
    pub trim: Length,
    /// The trouble and the loss, in tenths of a minute.
    pub cost: i64,
    /// Of which trouble.
    pub trouble: i64,
    /// Each short block.
    pub saves: Vec<Save>,
    /// Laps to use between blocks, where not the plan's.
    pub laps: Vec<(Rect, Rect, Length)>,
    /// Mean width of what comes off a side of a measured block.
    pub waste: Length,
}

/// One row or column of blocks as it lies on the bench.
struct BlockLine {
    seam: Seam,
    blocks: Vec<Rect>,
    /// The blocks of each bar, as a range.
    bars: Vec<(usize, usize)>,
}

fn along(size: Size, seam: Seam) -> Length {
    match seam {
        Seam::Upright => size.width,
        Seam::Level => size.height,
    }
}

fn lines(throw: &Throw) -> Vec<BlockLine> {
    let blocks = throw.assembly().blocks();
    let across = usize::from(throw.plan.across.div_ceil(2));
    let rows = blocks
        .chunks(across)
        .map(|row| (Seam::Upright, row.to_vec()));
    let columns = (0..across).map(|c| {
        (
            Seam::Level,
            blocks
                .iter()
                .skip(c)
                .step_by(across)
                .copied()
                .collect::<Vec<_>>(),
        )
    });
    rows.chain(columns)
        .map(|(seam, blocks)| {
            let mut bars: Vec<(usize, usize)> = Vec::new();
            for i in 0..blocks.len() {
                let sewn = i > 0
                    && throw
                        .joined_by(blocks[i - 1], blocks[i])
                        .is_some_and(|j| throw.begun(j.whole));
                match bars.last_mut().filter(|_| sewn) {
                    Some(bar) => bar.1 = i + 1,
                    None => bars.push((i, i + 1)),
                }
            }
            BlockLine { seam, blocks, bars }
        })
        .collect()
}

/// What a block holds now: as squared up, as measured, or as its laps make it.
pub fn holds(throw: &Throw, block: Rect) -> Size {
    let known = throw.work(block).and_then(Work::held);
    known.unwrap_or_else(|| crate::fitting::squaring::natural(throw, block))
}

impl BlockLine {
    fn wished(&self, throw: &Throw, block: Rect, trim: Length) -> Length {
        let squares = match self.seam {
            Seam::Upright => block.cols,
            Seam::Level => block.rows,
        };
        if squares == 2 { trim } else { throw.plan.side }
    }

    fn bar(&self, throw: &Throw, (from, to): (usize, usize), trim: Length, least: Length) -> Bar {
        let blocks = &self.blocks[from..to];
        let mut short = zero();
        for block in blocks {
            let wished = self.wished(throw, *block, trim);
            let held = along(holds(throw, *block), self.seam);
            // Within a bar only what is sewn counts; a block that stands free is trimmed.
            if to - from > 1 || held < wished {
                short += wished - held;
            }
        }
        for pair in blocks.windows(2) {
            if let Some(join) = throw.joined_by(pair[0], pair[1]) {
                let made = throw.made(join.whole);
                short += made.take(&throw.plan) - throw.plan.take_between();
            }
        }
        let block = blocks[0];
        let loose = to - from == 1
            && throw
                .assembly()
                .goes_into(block)
                .is_none_or(|j| !throw.begun(j.whole));
        let own = || {
            // The laps within the block that run this way, and how much each can give.
            let join = throw.assembly().join(block)?;
            let (inner, seams) = match (self.seam, block.rows, block.cols) {
                (Seam::Upright, 2, 2) => (throw.assembly().join(join.first)?.whole, 3),
                (Seam::Upright, 1, 2) | (Seam::Level, 2, _) => (block, 1),
                _ => return None,
            };
            let made = throw.made(inner);
            let give = (made.lap - least) * laps_in(made.joining);
            (give >= short - nm(EASED_NM)).then_some(SEAM * seams)
        };
        Bar {
            short: in_nm(short).max(0),
            resew: if loose { own() } else { None },
            renew: loose.then_some(RENEW),
        }
    }

    /// Room before each bar and after the last.
    fn room(&self, throw: &Throw, between: i64) -> (Vec<i64>, Vec<i64>) {
        let plan = &throw.plan;
        let bound = throw.has(throw.assembly().whole(), Task::GlueBinding);
        let edge = if bound {
            0
        } else {
            (in_nm(plan.binding.strip) / 2 - CATCH_NM).max(0)
        };
        let n = self.bars.len();
        let mut room = vec![between; n + 1];
        let mut price = vec![NARROWER; n + 1];
        for end in [0, n] {
            room[end] = edge;
            price[end] = EDGE;
        }
        (room, price)
    }
}

/// The laps between blocks that can be marked: those on the ruler that keep the least fringe.
struct Marks {
    joining: Joining,
    /// The plan's lap between blocks.
    usual: Length,
    /// The narrowest on the ruler.
    least: Length,
    step: i64,
}

impl Marks {
    fn new(throw: &Throw, step: Length) -> Marks {
        let (plan, step) = (&throw.plan, in_nm(step).max(1));
        let least = in_nm(least_lap(throw));
        Marks {
            joining: plan.joining,
            usual: plan.lap_between(),
            least: nm((least + step - 1).div_euclid(step) * step),
            step,
        }
    }

    /// Most that a join can give.
    fn room(&self) -> i64 {
        (in_nm(self.usual - self.least) * laps_in(self.joining)).max(0)
    }

    /// The widest lap on the ruler that gives as much.
    fn lap(&self, taken: i64) -> Length {
        if taken <= 0 {
            return self.usual;
        }
        // A seam has two allowances, each giving half.
        let all = in_nm(self.usual) * laps_in(self.joining) - taken;
        nm(all.div_euclid(laps_in(self.joining) * self.step) * self.step)
    }

    /// What that lap gives.
    fn up(&self, taken: i64) -> i64 {
        in_nm(self.usual - self.lap(taken)) * laps_in(self.joining)
    }
}

/// The coarsest ruler that all these laps lie on: the ruler they were read off, as far as
/// can be concluded from them.
pub fn ruler_of(laps: &[Length]) -> Length {
    let inch = |marks| nm(NM_PER_INCH / marks);
    let steps = [8, 16, 32, 64].map(inch).into_iter();
    let metric = [NM_PER_MM, NM_PER_MM / 10].map(nm);
    steps
        .chain(metric)
        .find(|step| laps.iter().all(|l| in_nm(*l) % in_nm(*step) == 0))
        .unwrap_or(nm(1))
}

/// A part of what a block is short, and where it is made up for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LapShare {
    /// On which side of the block.
    pub side: EdgeSide,
    /// How much of it.
    pub by: Length,
    /// The neighbour there and the lap it is joined with; none at the outer edge, where
    /// the binding hides it.
    pub join: Option<(Rect, Length)>,
}

/// What a block is short of the trim size one way, and what has been seen to of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shortfall {
    /// In width (an upright seam would take it up) or in height.
    pub seam: Seam,
    /// By how much.
    pub short: Length,
    /// Where it is made up for as things stand.
    pub shares: Vec<LapShare>,
    /// What nothing makes up for yet.
    pub open: Length,
    /// What nothing makes up for and need not: the cloth gives so much.
    pub eased: Length,
}

/// What a block is short of the trim size, and where the laps now marked and the outer
/// edge make up for it. What one block of a line uses of a lap its neighbour cannot
/// use again; blocks within the line come first, those at its ends have the edge too.
pub fn shortfalls(throw: &Throw, block: Rect) -> Vec<Shortfall> {
    let mut out = Vec::new();
    let (held, target) = (holds(throw, block), throw.target(block));
    if held.width >= target.width && held.height >= target.height {
        return out;
    }
    for line in lines(throw) {
        let Some(at) = line.blocks.iter().position(|b| *b == block) else {
            continue;
        };
        let short = line.shorts(throw)[at];
        if short <= 0 {
            continue;
        }
        let shares = line.shared_out(throw).swap_remove(at);
        let met = shares.iter().fold(zero(), |sum, s| sum + s.by);
        // A lap is kept to the nanometre; halves of it may lose one.
        let open = Some(nm(short) - met).filter(|l| in_nm(*l) > 2);
        let eased = open.filter(|l| in_nm(*l) <= EASED_NM);
        let open = open.filter(|_| eased.is_none());
        out.push(Shortfall {
            seam: line.seam,
            short: nm(short),
            shares,
            open: open.unwrap_or_else(zero),
            eased: eased.unwrap_or_else(zero),
        });
    }
    out
}

/// Whether what a measured block asks for is still open: it is short and nothing makes up
/// for that yet, or it leans, so that it is cut by its own outline.
pub fn is_undecided(throw: &Throw, block: Rect) -> bool {
    if throw.work(block).is_none_or(|w| w.measured.is_none()) {
        return false;
    }
    if leans(throw, block) || !thin_laps(throw, block).is_empty() {
        return true;
    }
    shortfalls(throw, block).iter().any(|s| s.open > zero())
}

/// Where blocks are short at the outer edge and the binding hides it, by block.
pub fn hidden(throw: &Throw) -> BTreeMap<Rect, Vec<LapShare>> {
    let mut out: BTreeMap<Rect, Vec<LapShare>> = BTreeMap::new();
    for line in lines(throw) {
        for (block, shares) in line.blocks.iter().zip(line.shared_out(throw)) {
            for share in shares.into_iter().filter(|share| share.join.is_none()) {
                out.entry(*block).or_default().push(share);
            }
        }
    }
    out
}

impl BlockLine {
    /// How much each block of the line is short of the trim size.
    fn shorts(&self, throw: &Throw) -> Vec<i64> {
        let trim = throw.plan.target();
        let short = |b: &Rect| {
            let held = along(holds(throw, *b), self.seam);
            in_nm(self.wished(throw, *b, trim) - held).max(0)
        };
        self.blocks.iter().map(short).collect()
    }

    /// What makes up for each block's shortage, by the laps in use and the outer edges.
    fn shared_out(&self, throw: &Throw) -> Vec<Vec<LapShare>> {
        let plan = &throw.plan;
        let n = self.blocks.len();
        let lap = |j: usize| {
            let (a, b) = (self.blocks[j - 1], self.blocks[j]);
            let made = throw.joined_by(a, b).map(|join| throw.made(join.whole).lap);
            throw
                .marked(a, b)
                .or(made)
                .unwrap_or_else(|| plan.lap_between())
        };
        // What may be taken up before each block, and after the last.
        let (edges, _) = self.room(throw, 0);
        let left: Vec<i64> = (0..=n)
            .map(|j| match j {
                0 => edges[0],
                j if j == n => edges[edges.len() - 1],
                j => (in_nm(plan.lap_between() - lap(j)) * laps_in(plan.joining)).max(0),
            })
            .collect();
        let sides = match self.seam {
            Seam::Upright => [EdgeSide::Left, EdgeSide::Right],
            Seam::Level => [EdgeSide::Top, EdgeSide::Bottom],
        };
        let ends = [0, n - 1];
        let within = (0..n).filter(|j| !ends.contains(j));
        let order: Vec<usize> = within.chain(ends).collect();
        // What is asked for is given in rounds; what is lacking after them stays so.
        let deal = |rounds: &[Vec<i64>]| {
            let (mut left, mut given) = (left.clone(), vec![[0, 0]; n]);
            for round in rounds {
                let mut lacking = round.clone();
                for j in order.iter().copied() {
                    for (k, side) in BlockLine::places(j, n) {
                        let by = lacking[j].min(left[k]);
                        lacking[j] -= by;
                        left[k] -= by;
                        given[j][side] += by;
                    }
                }
            }
            given
        };
        let shorts = self.shorts(throw);
        let mut given = deal(std::slice::from_ref(&shorts));
        let lacks = |(short, given): (&i64, &[i64; 2])| short - given[0] - given[1] > EASED_NM;
        if shorts.iter().zip(&given).any(lacks) {
            // No block takes what can be eased in before every other has what cannot.
            let first: Vec<i64> = shorts.iter().map(|s| (s - EASED_NM).max(0)).collect();
            let rest = shorts.iter().map(|s| (*s).min(EASED_NM)).collect();
            given = deal(&[first, rest]);
        }
        let shares = |j: usize| {
            let given = &given[j];
            let share = move |(k, side): (usize, usize)| LapShare {
                side: sides[side],
                by: nm(given[side]),
                join: (k > 0 && k < n)
                    .then(|| (self.blocks[if k == j { j - 1 } else { k }], lap(k))),
            };
            let places = BlockLine::places(j, n).into_iter();
            places
                .filter(|(_, side)| given[*side] > 0)
                .map(share)
                .collect()
        };
        (0..n).map(shares).collect()
    }

    /// The joins at both ends of a block, each with its side: laps first, then outer edges.
    fn places(j: usize, n: usize) -> [(usize, usize); 2] {
        match j {
            0 if n > 1 => [(1, 1), (0, 0)],
            _ => [(j, 0), (j + 1, 1)],
        }
    }
}

/// The cheapest saves for one trim size, by laps that lie on the ruler's marks.
pub fn choice(throw: &Throw, trim: Length, step: Length) -> TrimChoice {
    let mut out = TrimChoice {
        trim,
        cost: 0,
        trouble: 0,
        saves: Vec::new(),
        laps: Vec::new(),
        waste: waste(throw, trim),
    };
    let marks = Marks::new(throw, step);
    for line_of in lines(throw) {
        let bars: Vec<Bar> = line_of
            .bars
            .iter()
            .map(|b| line_of.bar(throw, *b, trim, marks.least))
            .collect();
        let (room, price) = line_of.room(throw, marks.room());
        let n = bars.len();
        let up = |j: usize, taken| match j {
            // At the outer edge the binding hides what it must.
            0 => taken,
            j if j == n => taken,
            _ => marks.up(taken),
        };
        let (cost, hows) = line_on(&bars, &room, &price, EASED_NM, &up);
        out.trouble += cost;
        let taken = taken_up(&hows);
        // What a join gives beyond what is wanted there is reported once, for the first it serves.
        let mut over: Vec<i64> = (0..=n).map(|j| up(j, taken[j]) - taken[j]).collect();
        for (j, (bar, how)) in bars.iter().zip(&hows).enumerate() {
            if *how == How::Fits {
                continue;
            }
            let (more, eased) = match how {
                How::Lapped { before, after } => {
                    let more = [(j, before), (j + 1, after)]
                        .into_iter()
                        .filter(|(_, by)| **by > 0)
                        .map(|(at, _)| std::mem::take(&mut over[at]))
                        .sum();
                    (more, bar.short - before - after)
                }
                _ => (0, 0),
            };
            out.saves.push(Save {
                piece: line_of.blocks[line_of.bars[j].0],
                seam: line_of.seam,
                short: nm(bar.short),
                how: *how,
                over: nm(more),
                eased: nm(eased),
            });
        }
        let inner = taken.iter().take(n).zip(&line_of.bars).skip(1);
        for (taken, (at, _)) in inner.filter(|(taken, _)| **taken > 0) {
            let (a, b) = (line_of.blocks[at - 1], line_of.blocks[*at]);
            out.laps.push((a, b, marks.lap(*taken)));
        }
    }
    out.cost = out.trouble + loss(&throw.plan, trim);
    out
}

/// Tenths of a minute for what the finished throw loses against untrimmed fours.
fn loss(plan: &Plan, trim: Length) -> i64 {
    let area = |trim| {
        let (w, h) = Plan {
            trim: Some(trim),
            ..*plan
        }
        .finished();
        in_mm(w) * in_mm(h)
    };
    let lost = (area(plan.natural_four()) - area(trim)).max(0.0);
    (lost / (25.4 * 25.4) * 5.0).round() as i64
}

fn waste(throw: &Throw, trim: Length) -> Length {
    let sides = crate::fitting::squaring::measured_sides(throw);
    let over: i64 = sides.iter().map(|m| in_nm(*m - trim).max(0)).sum();
    nm(over / sides.len().max(1) as i64)
}

/// The smallest and the largest size worth trying: what the smallest stitched block holds;
/// and the untrimmed four, the size chosen now, or what all blocks hold, where all came out
/// larger.
fn bounds(throw: &Throw) -> (Length, Length) {
    let plan = &throw.plan;
    let natural = plan.natural_four();
    let sides = |b: &Rect| {
        let held = holds(throw, *b);
        [
            (b.cols == 2).then_some(held.width),
            (b.rows == 2).then_some(held.height),
        ]
    };
    let blocks = throw.assembly().blocks();
    let of = |known: &dyn Fn(&Rect) -> bool| {
        let known = blocks.iter().filter(|b| known(b));
        known.flat_map(sides).flatten().min()
    };
    let least = of(&|b| throw.has(*b, Task::Stitch)).unwrap_or(natural);
    let larger = of(&|_| true).unwrap_or(natural);
    (least, natural.max(plan.target()).max(larger))
}

/// Every size worth trying with what it comes to, cheapest first; ties to the larger.
///
/// The sizes are every mark of the ruler, the untrimmed four and the size chosen now. A
/// smaller size costs as much trouble at most and loses more of the throw, so that the search
/// ends where that loss alone comes to the cheapest cost found.
pub fn choices(throw: &Throw, ruler: Ruler) -> Vec<TrimChoice> {
    let plan = &throw.plan;
    let (least, top) = bounds(throw);
    let step = in_nm(ruler.step());
    let can_be = |t: &Length| {
        let trim = Some(*t);
        Plan { trim, ..*plan }.check().is_ok()
    };
    let tried = |t: Length| choice(throw, t, ruler.step());
    let mut fixed = vec![plan.natural_four(), plan.target()];
    fixed.dedup();
    let mut found: Vec<TrimChoice> = fixed.iter().copied().filter(can_be).map(tried).collect();
    let mut cheapest = found.iter().map(|c| c.cost).min().unwrap_or(i64::MAX);
    let first = in_nm(least).div_euclid(step);
    let marks = (first..=in_nm(top).div_euclid(step))
        .rev()
        .map(|k| nm(k * step));
    for trim in marks.filter(can_be).filter(|t| !fixed.contains(t)) {
        if loss(plan, trim) > cheapest {
            break;
        }
        let one = tried(trim);
        cheapest = cheapest.min(one.cost);
        found.push(one);
    }
    found.sort_by_key(|c| (c.cost, std::cmp::Reverse(c.trim)));
    found
}

/// How far each row and column is off the length it should have, as things stand.
pub fn closing(throw: &Throw) -> Vec<(Seam, usize, Length)> {
    let plan = &throw.plan;
    let mut out = Vec::new();
    let (mut row, mut column) = (0, 0);
    for l in lines(throw) {
        let (number, wished) = match l.seam {
            Seam::Upright => (&mut row, plan.blocks(plan.across)),
            Seam::Level => (&mut column, plan.blocks(plan.down)),
        };
        let held = l
            .blocks
            .iter()
            .fold(zero(), |sum, b| sum + along(throw.size(*b), l.seam));
        let taken = l.blocks.windows(2).fold(zero(), |sum, pair| {
            let lap = throw.joined_by(pair[0], pair[1]).map(|j| {
                let made = throw.made(j.whole);
                let marked = (!throw.begun(j.whole))
                    .then(|| throw.marked(pair[0], pair[1]))
                    .flatten();
                let lap = marked.unwrap_or(made.lap);
                Made { lap, ..made }.take(plan)
            });
            sum + lap.unwrap_or_else(zero)
        });
        out.push((l.seam, *number, held - taken - wished));
        *number += 1;
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn bar(short: i64) -> Bar {
        Bar {
            short,
            resew: None,
            renew: Some(RENEW),
        }
    }

    #[test]
    fn a_shortage_is_shared_with_both_neighbours() {
        let (cost, hows) = line(
            &[bar(0), bar(4), bar(0)],
            &[0, 3, 3, 0],
            &[EDGE, NARROWER, NARROWER, EDGE],
            0,
        );
        assert_eq!(cost, 2 * NARROWER);
        assert_eq!(
            hows[1],
            How::Lapped {
                before: 2,
                after: 2
            }
        );
    }

    #[test]
    fn the_binding_hides_what_is_short_at_the_edge() {
        let (cost, hows) = line(&[bar(3), bar(0)], &[3, 3, 3], &[EDGE, NARROWER, EDGE], 0);
        assert_eq!(
            (cost, hows[0]),
            (
                EDGE,
                How::Lapped {
                    before: 3,
                    after: 0
                }
            )
        );
    }

    #[test]
    fn room_between_two_short_ones_is_used_once() {
        // Three units at the one join in the middle; each is two short, with no other room.
        let (cost, hows) = line(&[bar(2), bar(2)], &[0, 3, 0], &[EDGE, NARROWER, EDGE], 0);
        assert_eq!(cost, NARROWER + RENEW);
        assert_eq!(hows.iter().filter(|h| **h == How::Renewed).count(), 1);
    }

    proptest! {
        /// What is seen to and what is open add up; laps chosen for a size leave nothing open.
        #[test]
        fn chosen_laps_make_up_for_what_is_short(off in prop::collection::vec((-14i64..10, -14i64..10), 1..9), across in 1u16..4, down in 1u16..4) {
            use crate::measure::sixty_fourths;
            use crate::throw::Event;
            let plan = Plan { across: across * 2, down: down * 2, ..Plan::default() };
            let begun = Event::Begun { name: "t".into(), plan, prints: vec![], denims: vec![], after: None };
            let mut throw = Throw::begin(&begun).unwrap();
            let full = plan.natural_four();
            let blocks = throw.assembly().blocks();
            for (piece, (w, h)) in blocks.iter().zip(off.iter().cycle()) {
                let measured = Event::Measured { piece: *piece, width: full + sixty_fourths(*w), height: full + sixty_fourths(*h) };
                throw.apply(&measured, 0);
            }
            let chosen = choice(&throw, plan.target(), Ruler::default().step());
            let laps = chosen.laps.iter().map(|(a, b, lap)| (*a, *b, Some(*lap))).collect();
            throw.apply(&Event::LapsMarked { laps }, 0);
            let lapped = chosen.saves.iter().all(|s| matches!(s.how, How::Lapped { .. }));
            for block in blocks {
                let found = shortfalls(&throw, block);
                let short = chosen.saves.iter().filter(|s| s.piece == block).count();
                prop_assert_eq!(found.len(), short);
                for f in found {
                    let met = f.shares.iter().fold(zero(), |sum, s| sum + s.by);
                    prop_assert!((in_nm(f.short - met - f.open - f.eased)).abs() <= 2);
                    prop_assert!(!lapped || f.open == zero(), "{:?}", f);
                }
            }
        }

        #[test]
        fn no_join_gives_more_than_its_room(shorts in prop::collection::vec(0i64..9, 1..12), seed in prop::collection::vec(0i64..7, 13), eased in 0i64..3) {
            let bars: Vec<Bar> = shorts.iter().map(|s| bar(*s)).collect();
            let room = &seed[..=bars.len()];
            let price = vec![NARROWER; bars.len() + 1];
            let (cost, hows) = line(&bars, room, &price, eased);
            let mut taken = vec![0; bars.len() + 1];
            for (j, how) in hows.iter().enumerate() {
                match how {
                    How::Fits => prop_assert_eq!(bars[j].short, 0),
                    How::Lapped { before, after } => {
                        let lacking = bars[j].short - before - after;
                        prop_assert!((0..=eased).contains(&lacking));
                        taken[j] += before;
                        taken[j + 1] += after;
                    }
                    _ => prop_assert!(bars[j].short > 0),
                }
            }
            prop_assert!(taken.iter().zip(room).all(|(t, r)| t <= r));
            // A longer bar never makes it dearer.
            let longer: Vec<Bar> = shorts.iter().map(|s| bar((s - 1).max(0))).collect();
            prop_assert!(line(&longer, room, &price, eased).0 <= cost);
        }
    }
}
