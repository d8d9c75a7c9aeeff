//! Evenness of the covered squares: the wrap-around discrepancy in whole numbers.

use crate::faces::arrange::weights::{EVEN, EVEN_PRINT};

/// One set of covered squares whose evenness counts.
#[derive(Debug, Clone)]
pub(super) struct PlaceSet {
    pub(super) weight: i64,
    pub(super) n: usize,
    pub(super) s: i64,
    /// For each place the sum of K to the places of the set.
    pub(super) phi: Vec<i64>,
}

impl PlaceSet {
    /// Both faces, then each print on the front, then each on the back; all still empty.
    pub(super) fn all(places: usize, prints: usize) -> Vec<PlaceSet> {
        let weights = [EVEN; 2].into_iter().chain(vec![EVEN_PRINT; 2 * prints]);
        weights
            .map(|weight| PlaceSet {
                weight,
                n: 0,
                s: 0,
                phi: vec![0; places],
            })
            .collect()
    }
}

/// The table of K for a grid, and what chance and the best there can be come to for each count.
#[derive(Debug, Clone)]
pub(super) struct Evenness {
    across: usize,
    /// K by rows and columns apart, mirrored about the middle column.
    kernel: Vec<i64>,
    floor: Vec<i64>,
    unit: Vec<i64>,
}

/// `2·n²·(3/2 − x(1 − x))` for two that are `d` of `n` apart, so that `x = d/n`.
fn part(d: i64, n: i64) -> i64 {
    3 * n * n - 2 * d * (n - d)
}

impl Evenness {
    /// The table for a grid.
    pub(super) fn new(across: usize, down: usize) -> Evenness {
        let (m, k, all) = (across as i64, down as i64, (across * down) as i128);
        let kernel = (0..k)
            .flat_map(|r| ((1 - m)..m).map(move |c| part(r, k) * part(c.abs(), m)))
            .collect();
        let k0 = i128::from(part(0, k) * part(0, m));
        let row: i128 = (0..k)
            .map(|r| {
                (0..m)
                    .map(|c| i128::from(part(r, k) * part(c, m)))
                    .sum::<i128>()
            })
            .sum();
        let (mut floors, mut units) = (Vec::new(), Vec::new());
        for n in 0..=all {
            let floor = n * n * row / all;
            let chance = n * k0 + n * (n - 1) * (row - k0) / (all - 1).max(1);
            floors.push(floor as i64);
            units.push(((chance - floor) / n.max(1)) as i64);
        }
        Evenness {
            across,
            kernel,
            floor: floors,
            unit: units,
        }
    }

    /// K of two places.
    pub(super) fn k(&self, a: usize, b: usize) -> i64 {
        let (ra, ca) = (a / self.across, a % self.across);
        let (rb, cb) = (b / self.across, b % self.across);
        let width = 2 * self.across - 1;
        self.kernel[ra.abs_diff(rb) * width + self.across - 1 + ca - cb]
    }

    /// What a set's unevenness costs.
    pub(super) fn cost(&self, set: &PlaceSet) -> i64 {
        let unit = self.unit[set.n];
        if unit <= 0 {
            return 0;
        }
        // In two steps, so that large grids do not overflow.
        let over = set.s - self.floor[set.n];
        over / unit * set.weight + over % unit * set.weight / unit
    }

    /// Where K stands in a table: of a place to itself, and of two so many rows and columns apart.
    pub(super) fn at(&self, down: usize, across: usize) -> (usize, usize) {
        let (width, middle) = (2 * self.across - 1, self.across - 1);
        (middle, down * width + middle + across)
    }

    /// The table of K, times a number.
    pub(super) fn scaled(&self, by: i64) -> Vec<i64> {
        self.kernel.iter().map(|k| by * k).collect()
    }

    /// What adding K of every place to one and taking away that to another does, K as in a table.
    pub(super) fn carry(
        &self,
        phi: &mut [i64],
        table: &[i64],
        (r0, c0): (usize, usize),
        (r1, c1): (usize, usize),
    ) {
        let width = 2 * self.across - 1;
        let row = |r: usize, to: usize, c: usize| {
            let from = r.abs_diff(to) * width + self.across - 1 - c;
            &table[from..from + self.across]
        };
        for (r, phi) in phi.chunks_exact_mut(self.across).enumerate() {
            let (less, more) = (row(r, r0, c0), row(r, r1, c1));
            for (phi, (less, more)) in phi.iter_mut().zip(less.iter().zip(more)) {
                *phi += more - less;
            }
        }
    }

    /// What one more of S costs a set of `n` places, of a weight.
    pub(super) fn share(&self, weight: i64, n: usize) -> i64 {
        match self.unit[n] {
            unit if unit > 0 => weight / unit,
            _ => 0,
        }
    }

    /// A set's unevenness, in parts of a hundred of what chance gives.
    pub(super) fn of_chance(&self, set: &PlaceSet) -> u32 {
        let unit = self.unit[set.n] * set.n as i64;
        if unit <= 0 {
            return 0;
        }
        let over = (set.s - self.floor[set.n]).max(0);
        (i128::from(over) * 100 / i128::from(unit)) as u32
    }

    /// Add to `phi` the K of every place to `x`, or take it away.
    pub(super) fn spread(&self, phi: &mut [i64], x: usize, sign: i64) {
        let width = 2 * self.across - 1;
        let (r0, c0) = (x / self.across, x % self.across);
        for (r, row) in phi.chunks_exact_mut(self.across).enumerate() {
            let from = r.abs_diff(r0) * width + self.across - 1 - c0;
            let kernel = &self.kernel[from..from + self.across];
            for (phi, k) in row.iter_mut().zip(kernel) {
                *phi += sign * k;
            }
        }
    }
}
