//! The fabrics of both faces while the squares lie still, exchanged by annealing.
//!
//! Where only fabrics change places and as many of each stay on each face, every cost is a sum over
//! single squares and over pairs of them. For each place the sum over all pairs that a fabric would
//! form there is kept (its field), so that a trial looks up a few numbers whatever the size of the
//! grid; only an exchange that is taken costs a pass over the grid.
//!
//! Costs are kept in large units, so that what the evenness of a set comes to can be a sum too.
//! Whole numbers throughout: the same draws give the same layout on every machine.

use crate::faces::arrange::board::NONE;
use crate::faces::arrange::evenness::{Evenness, PlaceSet};
use crate::faces::arrange::weights::{THICK, TOO_THICK, closeness};
use crate::throw::wishes::Apart;
use rand::RngCore;

/// Costs are kept times two to the power of this.
pub(super) const SHIFT: u32 = 28;

/// What is laid out, and what may be changed.
#[derive(Debug, Clone)]
pub(super) struct Laid {
    pub(super) across: usize,
    pub(super) down: usize,
    pub(super) prints: usize,
    /// Prints of which each square is another: two of them are not alike.
    pub(super) mixed: Vec<bool>,
    pub(super) apart: Apart,
    /// Fabrics that may meet at a crossing, where the maker says so.
    pub(super) most: Option<i64>,
    /// The print of each place on each face.
    pub(super) on: [Vec<u8>; 2],
    /// Whether it may be changed.
    pub(super) open: [Vec<bool>; 2],
    /// What each two squares side by side cost that are both bare on a face: to the right of a
    /// place and below it.
    pub(super) bare: [Vec<i64>; 2],
}

/// One neighbour of a place.
#[derive(Debug, Clone, Copy)]
struct Near {
    at: u32,
    /// What both covered on one face cost, beyond their evenness.
    covered: i64,
    /// What both covered cost, one on each face.
    across: i64,
    /// What two of one print cost.
    like: i64,
}

/// The fabrics with their fields.
#[derive(Debug, Clone)]
pub(super) struct Fabrics<'a> {
    laid: Laid,
    even: &'a Evenness,
    /// Row and column of each place.
    place: Vec<(u32, u32)>,
    near: Vec<Vec<Near>>,
    /// What the evenness of each two covered places costs by how far they are apart: for each face,
    /// and for each print on it.
    table: [Vec<i64>; 2],
    table_print: [Vec<Vec<i64>>; 2],
    /// For each place what a cover on a face meets, and what each print does beyond that.
    field: [Vec<i64>; 2],
    field_print: [Vec<Vec<i64>>; 2],
    /// Fabrics at each crossing, in rows of `across - 1`.
    extra: Vec<i64>,
    /// Covered places that may be changed, as face and place.
    movable: Vec<(u8, u32)>,
    /// Where a place is among them.
    index: [Vec<u32>; 2],
    /// Places that may be changed on each face.
    open: [Vec<u32>; 2],
    /// The cost, beside that of the beginning.
    cost: i64,
}

impl<'a> Fabrics<'a> {
    /// Fabrics as they are laid, with the evenness of each set of them ([`PlaceSet::all`]).
    pub(super) fn new(laid: Laid, sets: &[PlaceSet], even: &'a Evenness) -> Fabrics<'a> {
        let (across, down) = (laid.across, laid.down);
        let all = across * down;
        let (edge, corner) = closeness(laid.apart);
        // Crossings that two lines of squares share along one direction.
        let shared = |a: usize, b: usize, n: usize| match a.abs_diff(b) {
            0 => i64::from(a > 0) + i64::from(a + 1 < n),
            1 => 1,
            _ => 0,
        };
        let place = |x: usize| (x / across, x % across);
        let mut near = vec![Vec::with_capacity(8); all];
        for (x, near) in near.iter_mut().enumerate() {
            let (r, c) = place(x);
            for row in r.saturating_sub(1)..(r + 2).min(down) {
                for col in c.saturating_sub(1)..(c + 2).min(across) {
                    let y = row * across + col;
                    if y == x {
                        continue;
                    }
                    let thick = 2 * THICK * shared(r, row, down) * shared(c, col, across);
                    let first = x.min(y);
                    let bare = match x.abs_diff(y) {
                        _ if r != row && c != col => 0,
                        _ if r == row => laid.bare[0][first],
                        _ => laid.bare[1][first],
                    };
                    let like = if r == row || c == col { edge } else { corner };
                    near.push(Near {
                        at: y as u32,
                        covered: (thick + bare) << SHIFT,
                        across: thick << SHIFT,
                        like: like << SHIFT,
                    });
                }
            }
        }
        let crossings = |x: usize| {
            let (r, c) = place(x);
            shared(r, r, down) * shared(c, c, across)
        };
        let scale = |set: &PlaceSet| 2 * even.share(set.weight << SHIFT, set.n);
        let field = |set: &PlaceSet| -> Vec<i64> {
            let scale = scale(set);
            set.phi.iter().map(|phi| scale * phi).collect()
        };
        let of_print = |f: usize| &sets[2 + f * laid.prints..2 + (f + 1) * laid.prints];
        let table = |set: &PlaceSet| even.scaled(scale(set));
        let mut out = Fabrics {
            table: [table(&sets[0]), table(&sets[1])],
            table_print: [0, 1].map(|f| of_print(f).iter().map(table).collect()),
            field: [field(&sets[0]), field(&sets[1])],
            field_print: [0, 1].map(|f| of_print(f).iter().map(field).collect()),
            place: (0..all)
                .map(|x| ((x / across) as u32, (x % across) as u32))
                .collect(),
            extra: vec![0; (across - 1) * (down - 1)],
            movable: Vec::new(),
            index: [0, 1].map(|_| vec![u32::MAX; all]),
            open: [0, 1].map(|f| {
                let open = (0..all as u32).filter(|x| laid.open[f][*x as usize]);
                open.collect()
            }),
            cost: 0,
            near,
            even,
            laid,
        };
        for f in 0..2 {
            for x in 0..all {
                // What a cover costs by itself, and what bare squares no longer do.
                let bare: i64 = out.near[x].iter().map(|n| n.covered - n.across).sum();
                out.field[f][x] += ((THICK * crossings(x)) << SHIFT) - bare;
            }
        }
        for f in 0..2 {
            for x in 0..all {
                let print = out.laid.on[f][x];
                if print == NONE {
                    continue;
                }
                out.cover(f, x, 1);
                out.print(f, x, print, 1);
                if out.laid.open[f][x] {
                    out.index[f][x] = out.movable.len() as u32;
                    out.movable.push((f as u8, x as u32));
                }
            }
        }
        out
    }

    /// A place on a face comes to be covered, or no longer is: what that does to places about it.
    fn cover(&mut self, f: usize, x: usize, sign: i64) {
        for near in &self.near[x] {
            self.field[f][near.at as usize] += sign * near.covered;
            self.field[1 - f][near.at as usize] += sign * near.across;
        }
        for at in self.corners(x) {
            self.field[1 - f][x] += sign * ((2 * THICK) << SHIFT);
            self.extra[at] += sign;
        }
    }

    /// Whether no two squares of a print are alike.
    fn is_mixed(&self, print: usize) -> bool {
        self.laid.mixed.get(print) == Some(&true)
    }

    /// A print comes to a place, or leaves it: what that does to places about it.
    fn print(&mut self, f: usize, x: usize, print: u8, sign: i64) {
        let print = usize::from(print);
        if self.is_mixed(print) {
            return;
        }
        let Some(field) = self.field_print[f].get_mut(print) else {
            return;
        };
        for near in &self.near[x] {
            field[near.at as usize] += sign * near.like;
        }
    }

    fn row_and_column(&self, x: usize) -> (usize, usize) {
        let (r, c) = self.place[x];
        (r as usize, c as usize)
    }

    /// The crossings at the corners of a place.
    fn corners(&self, x: usize) -> impl Iterator<Item = usize> + use<'a> {
        let (across, down) = (self.laid.across, self.laid.down);
        let (r, c) = self.row_and_column(x);
        let rows = r.saturating_sub(1)..(r + 1).min(down - 1);
        rows.flat_map(move |row| {
            let cols = c.saturating_sub(1)..(c + 1).min(across - 1);
            cols.map(move |col| row * (across - 1) + col)
        })
    }

    /// What is too thick at crossings costs more if a fabric goes from one place to another.
    fn too_thick(&self, x: usize, y: usize) -> i64 {
        let Some(most) = self.laid.most else { return 0 };
        let over = |n: i64| (n - most).max(0);
        let mut out = 0;
        for at in self.corners(x) {
            if !self.corners(y).any(|other| other == at) {
                out += over(self.extra[at] - 1) - over(self.extra[at]);
            }
        }
        for at in self.corners(y) {
            if !self.corners(x).any(|other| other == at) {
                out += over(self.extra[at] + 1) - over(self.extra[at]);
            }
        }
        (TOO_THICK * out) << SHIFT
    }

    /// What it costs more to exchange what lies at two places on a face; the first is covered.
    pub(super) fn exchange_cost(&self, f: usize, x: usize, y: usize) -> i64 {
        let (p, q) = (self.laid.on[f][x], self.laid.on[f][y]);
        let (p, q) = (usize::from(p), usize::from(q));
        let ((r, c), (row, col)) = (self.row_and_column(x), self.row_and_column(y));
        let (down, across) = (r.abs_diff(row), c.abs_diff(col));
        let (none, k) = self.even.at(down, across);
        // What two that lie side by side cost is not met where the other was.
        let near = match down | across {
            1 => self.near[x].iter().find(|n| n.at as usize == y),
            _ => None,
        };
        let covered = near.map_or(0, |n| n.covered);
        let like = |print| near.filter(|_| !self.is_mixed(print)).map_or(0, |n| n.like);
        let (of_p, table) = (&self.field_print[f][p], &self.table_print[f][p]);
        let mut cost = of_p[y] - of_p[x] + table[none] - table[k] - like(p);
        if q == usize::from(NONE) {
            let (field, table) = (&self.field[f], &self.table[f]);
            cost += field[y] - field[x] + table[none] - table[k] - covered;
            cost += self.too_thick(x, y);
        } else {
            let (of_q, table) = (&self.field_print[f][q], &self.table_print[f][q]);
            cost += of_q[x] - of_q[y] + table[none] - table[k] - like(q);
        }
        cost
    }

    pub(super) fn exchange(&mut self, f: usize, x: usize, y: usize) {
        let (p, q) = (self.laid.on[f][x], self.laid.on[f][y]);
        self.laid.on[f].swap(x, y);
        let places = [self.row_and_column(x), self.row_and_column(y)];
        self.print(f, x, p, -1);
        self.print(f, y, p, 1);
        let [from, to] = places;
        let (own, table) = (&mut self.field_print[f], &self.table_print[f]);
        self.even
            .carry(&mut own[usize::from(p)], &table[usize::from(p)], from, to);
        if q == NONE {
            self.even
                .carry(&mut self.field[f], &self.table[f], from, to);
            self.cover(f, x, -1);
            self.cover(f, y, 1);
            let n = self.index[f][x];
            self.index[f].swap(x, y);
            self.movable[n as usize].1 = y as u32;
        } else {
            self.even
                .carry(&mut own[usize::from(q)], &table[usize::from(q)], to, from);
            self.print(f, y, q, -1);
            self.print(f, x, q, 1);
        }
    }

    /// The prints of both faces.
    pub(super) fn on(&self) -> &[Vec<u8>; 2] {
        &self.laid.on
    }

    /// Anneal from a temperature that is halved so many times, and end with the best that was met.
    pub(super) fn anneal(&mut self, trials: u64, hot: i64, halvings: u64, rng: &mut impl RngCore) {
        if self.movable.is_empty() {
            return;
        }
        let mut best = (self.cost, self.laid.on.clone());
        let mut done = 0;
        for level in 0..LEVELS {
            let heat = match level < SLOW {
                true => halved(hot << SHIFT, (level << FRACTION) * halvings / SLOW),
                false => 0,
            };
            while done < trials * (level + 1) / LEVELS {
                done += 1;
                let draw = rng.next_u64();
                let Some((f, x, y)) = self.drawn(draw) else {
                    continue;
                };
                let more = self.exchange_cost(f, x, y);
                if more <= 0 || more <= luck(heat, draw >> 48 & 0x7fff) {
                    self.exchange(f, x, y);
                    self.cost += more;
                    if self.cost < best.0 {
                        best.0 = self.cost;
                        best.1[0].clone_from(&self.laid.on[0]);
                        best.1[1].clone_from(&self.laid.on[1]);
                    }
                }
            }
        }
        (self.cost, self.laid.on) = best;
    }

    /// A face with two places to exchange, the first of them covered, by 49 bits of chance.
    pub(super) fn drawn(&self, draw: u64) -> Option<(usize, usize, usize)> {
        let part = |bits: u64, of: usize| (((bits & 0xff_ffff) * of as u64) >> 24) as usize;
        let (f, x) = *self.movable.get(part(draw, self.movable.len()))?;
        let (f, x) = (usize::from(f), x as usize);
        let y = if draw >> 63 == 0 {
            let open = &self.open[f];
            open[part(draw >> 24, open.len())] as usize
        } else {
            // Not far off, to refine what is nearly right.
            let n = part(draw >> 24, 25);
            let (across, down) = (self.laid.across, self.laid.down);
            let (r, c) = self.row_and_column(x);
            let (r, c) = (r + n / 5, c + n % 5);
            if r < 2 || c < 2 || r >= down + 2 || c >= across + 2 {
                return None;
            }
            (r - 2) * across + c - 2
        };
        (self.laid.open[f][y] && self.laid.on[f][x] != self.laid.on[f][y]).then_some((f, x, y))
    }
}

/// Levels of temperature within one annealing.
const LEVELS: u64 = 256;

/// The last of them that is not nothing.
const SLOW: u64 = 248;

/// Bits of a fraction of a halving.
const FRACTION: u32 = 16;

/// A number halved so many times, in parts; between whole halvings along a straight line.
fn halved(number: i64, halvings: u64) -> i64 {
    let (whole, part) = (halvings >> FRACTION, halvings & ((1 << FRACTION) - 1));
    let number = number >> whole;
    number - ((number >> FRACTION) * part as i64) / 2
}

/// How much worse an exchange may make it at a temperature, by 15 bits of chance: the temperature
/// times a number that is exponentially distributed (its logarithm to base 2 along straight lines).
fn luck(heat: i64, bits: u64) -> i64 {
    let bits = bits + 1;
    let whole = bits.ilog2();
    let part = (bits << 15 >> whole) as i64 - (1 << 15);
    (heat >> 15) * ((i64::from(15 - whole) << 15) - part)
}
