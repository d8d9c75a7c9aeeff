//! The order in which squares become one piece.
//!
//! Squares become pairs, pairs become fours; where a count is odd, the leftover
//! column is made of pairs one above the other, the leftover row of pairs side by
//! side, and a corner square stays single. These *blocks* are then joined in the
//! order the plan asks for ([`JoinOrder`]).
//!
//! A piece of the work is named by the places it covers, a [`Rect`]; one tree of
//! [`Join`]s leads from the squares to the whole.
//!
//! Promises, kept by the properties below for every grid to 60 × 60 and every order:
//! * each join is a straight seam along one whole edge shared by its two parts;
//! * each square and each part is used exactly once, and the last join is the whole;
//! * joins come after the joins they need.
//!
//! ```
//! use lapwork_core::plan::assembly::{Assembly, Kind, Rect};
//! use lapwork_core::plan::JoinOrder;
//!
//! // Three by two: a four, and a pair from the odd column.
//! let assembly = Assembly::new(3, 2, JoinOrder::Rows);
//! let kinds: Vec<Kind> = assembly.blocks().into_iter().map(|b| assembly.kind(b)).collect();
//! assert_eq!(kinds, [Kind::Four, Kind::Pair]);
//! // Six squares take five joins, and the last makes the whole.
//! assert_eq!(assembly.joins().len(), 5);
//! assert_eq!(assembly.joins()[4].whole, Rect::grid(3, 2));
//! ```

use crate::plan::{JoinOrder, MOST};
use crate::types::TS;
use serde::{Deserialize, Serialize};
use std::collections::HashMap;
use thiserror::Error;

/// The places a piece covers, counted from the top left of the front.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(try_from = "Places", into = "[u16; 4]")]
#[ts(type = "[number, number, number, number]")]
pub struct Rect {
    /// Row of the top left square, from 0.
    pub row: u16,
    /// Column of the top left square, from 0.
    pub col: u16,
    /// Squares down.
    pub rows: u16,
    /// Squares across.
    pub cols: u16,
}

/// Four numbers from outside that may be the places of a piece.
#[derive(Deserialize)]
struct Places([u16; 4]);

/// Places that lie in no grid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
#[error("places outside every grid: there are at most {MOST} squares each way")]
struct OutsideGrid;

impl TryFrom<Places> for Rect {
    type Error = OutsideGrid;

    /// Only within the largest grid, so that no arithmetic with places overflows.
    fn try_from(Places(numbers): Places) -> Result<Self, Self::Error> {
        let [row, col, rows, cols] = numbers;
        let within = |from: u16, count: u16| {
            count >= 1 && from.checked_add(count).is_some_and(|end| end <= MOST)
        };
        if within(row, rows) && within(col, cols) {
            Ok(Rect::from(numbers))
        } else {
            Err(OutsideGrid)
        }
    }
}

impl From<[u16; 4]> for Rect {
    fn from([row, col, rows, cols]: [u16; 4]) -> Self {
        Rect {
            row,
            col,
            rows,
            cols,
        }
    }
}

impl From<Rect> for [u16; 4] {
    fn from(r: Rect) -> Self {
        [r.row, r.col, r.rows, r.cols]
    }
}

impl Rect {
    /// The single square at `row`, `col`.
    pub fn square(row: u16, col: u16) -> Self {
        Rect {
            row,
            col,
            rows: 1,
            cols: 1,
        }
    }

    /// The whole of a grid.
    pub fn grid(across: u16, down: u16) -> Self {
        Rect {
            row: 0,
            col: 0,
            rows: down,
            cols: across,
        }
    }

    /// Whether this is one square.
    pub fn is_square(self) -> bool {
        self.rows == 1 && self.cols == 1
    }

    /// How many squares it covers.
    pub fn count(self) -> u32 {
        u32::from(self.rows) * u32::from(self.cols)
    }

    /// Whether all of `other` lies within this piece.
    pub fn holds(self, other: Rect) -> bool {
        let far = |start: u16, len: u16| u32::from(start) + u32::from(len);
        other.row >= self.row
            && other.col >= self.col
            && far(other.row, other.rows) <= far(self.row, self.rows)
            && far(other.col, other.cols) <= far(self.col, self.cols)
    }

    /// The squares it covers, row by row.
    pub fn squares(self) -> impl Iterator<Item = Rect> {
        (self.row..self.row + self.rows)
            .flat_map(move |r| (self.col..self.col + self.cols).map(move |c| Rect::square(r, c)))
    }
}

/// Which way a seam runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Seam {
    /// Up and down, between a left and a right part.
    Upright,
    /// From side to side, between an upper and a lower part.
    Level,
}

/// Two parts becoming one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Join {
    /// What comes of it.
    pub whole: Rect,
    /// The left or upper part; its edge lies on top of a lap.
    pub first: Rect,
    /// The right or lower part.
    pub second: Rect,
    /// Which way the seam runs.
    pub seam: Seam,
}

/// What kind of piece a [`Rect`] is in its grid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// One square.
    Square,
    /// Two squares.
    Pair,
    /// Two pairs, 2 × 2.
    Four,
    /// Some blocks of one row across.
    Row,
    /// Some blocks of one column down.
    Column,
    /// Any other joined part.
    Part,
    /// All of it.
    Whole,
}

/// Something of each piece. Pieces that are kept are those of a grid, at most some thousands, so
/// that nobody gains by choosing pieces whose hashes are alike.
pub type ByPiece<T> = HashMap<Rect, T, foldhash::fast::FixedState>;

/// The whole tree of joins for a grid and an order.
#[derive(Debug, Clone, PartialEq)]
pub struct Assembly {
    across: u16,
    down: u16,
    joins: Vec<Join>,
    by_whole: ByPiece<usize>,
    into: ByPiece<usize>,
}

impl Assembly {
    /// Lay out the joins of a grid. Both counts are at least 1.
    pub fn new(across: u16, down: u16, order: JoinOrder) -> Self {
        let mut joins = Vec::new();
        let blocks = block_rects(across, down);
        for block in blocks.iter().flatten() {
            block_joins(*block, &mut joins);
        }
        let (rows, cols) = (blocks.len(), blocks[0].len());
        match order {
            JoinOrder::Rows => {
                let rows: Vec<Rect> = blocks
                    .iter()
                    .filter_map(|row| chain(row, Seam::Upright, &mut joins))
                    .collect();
                chain(&rows, Seam::Level, &mut joins);
            }
            JoinOrder::Columns => {
                let columns: Vec<Rect> = (0..cols)
                    .filter_map(|c| {
                        let column: Vec<Rect> = (0..rows).map(|r| blocks[r][c]).collect();
                        chain(&column, Seam::Level, &mut joins)
                    })
                    .collect();
                chain(&columns, Seam::Upright, &mut joins);
            }
            JoinOrder::Doubling => doubling(blocks, &mut joins),
        }
        let by_whole = joins
            .iter()
            .enumerate()
            .map(|(i, j)| (j.whole, i))
            .collect();
        let into = joins
            .iter()
            .enumerate()
            .flat_map(|(i, j)| [(j.first, i), (j.second, i)])
            .collect();
        Assembly {
            across,
            down,
            joins,
            by_whole,
            into,
        }
    }

    /// A piece's number: squares row by row, then what the joins make, in their order.
    pub fn number(&self, piece: Rect) -> Option<usize> {
        if piece.is_square() {
            return self.whole().holds(piece).then(|| {
                usize::from(piece.row) * usize::from(self.across) + usize::from(piece.col)
            });
        }
        let squares = usize::from(self.across) * usize::from(self.down);
        self.by_whole.get(&piece).map(|n| squares + n)
    }

    /// The piece of a number.
    pub fn numbered(&self, number: usize) -> Option<Rect> {
        let squares = usize::from(self.across) * usize::from(self.down);
        if number < squares {
            let across = usize::from(self.across);
            return Some(Rect::square(
                (number / across) as u16,
                (number % across) as u16,
            ));
        }
        self.joins.get(number - squares).map(|j| j.whole)
    }

    /// All joins, each after those it needs.
    pub fn joins(&self) -> &[Join] {
        &self.joins
    }

    /// The join that makes `piece`, if it is made by one.
    pub fn join(&self, piece: Rect) -> Option<&Join> {
        self.by_whole.get(&piece).map(|i| &self.joins[*i])
    }

    /// The join that `piece` goes into next, if any.
    pub fn goes_into(&self, piece: Rect) -> Option<&Join> {
        self.into.get(&piece).map(|i| &self.joins[*i])
    }

    /// Whether `piece` is a piece of this work at all.
    pub fn knows(&self, piece: Rect) -> bool {
        self.whole() == piece
            || self.by_whole.contains_key(&piece)
            || (piece.is_square() && self.whole().holds(piece))
    }

    /// Everything.
    pub fn whole(&self) -> Rect {
        Rect::grid(self.across, self.down)
    }

    /// The blocks (fours, leftover pairs, a single corner), row by row.
    pub fn blocks(&self) -> Vec<Rect> {
        block_rects(self.across, self.down)
            .into_iter()
            .flatten()
            .collect()
    }

    /// Whether a side of `piece` lies at the edge of the whole.
    pub fn is_at_edge(&self, piece: Rect) -> bool {
        let whole = self.whole();
        let [right, bottom] = [piece.col + piece.cols, piece.row + piece.rows];
        piece.row == 0 || piece.col == 0 || right == whole.cols || bottom == whole.rows
    }

    /// Whether `piece` is squared up: a block of more than one square.
    pub fn is_block(&self, piece: Rect) -> bool {
        let edge = |len: u16, start: u16, all: u16| len == 2 || (len == 1 && start + 1 == all);
        piece.count() > 1
            && piece.rows <= 2
            && piece.cols <= 2
            && piece.row.is_multiple_of(2)
            && piece.col.is_multiple_of(2)
            && edge(piece.cols, piece.col, self.across)
            && edge(piece.rows, piece.row, self.down)
    }

    /// What kind of piece this is.
    pub fn kind(&self, piece: Rect) -> Kind {
        if piece.is_square() {
            Kind::Square
        } else if piece.count() == 2 {
            Kind::Pair
        } else if piece.rows == 2 && piece.cols == 2 {
            Kind::Four
        } else if piece == self.whole() {
            Kind::Whole
        } else if piece.rows <= 2 {
            Kind::Row
        } else if piece.cols <= 2 {
            Kind::Column
        } else {
            Kind::Part
        }
    }

    /// Squares, then what the joins make: every piece, each after its parts.
    pub fn pieces(&self) -> impl Iterator<Item = Rect> + '_ {
        self.whole()
            .squares()
            .chain(self.joins.iter().map(|j| j.whole))
    }
}

fn block_rects(across: u16, down: u16) -> Vec<Vec<Rect>> {
    (0..down.div_ceil(2))
        .map(|r| {
            (0..across.div_ceil(2))
                .map(|c| Rect {
                    row: r * 2,
                    col: c * 2,
                    rows: (down - r * 2).min(2),
                    cols: (across - c * 2).min(2),
                })
                .collect()
        })
        .collect()
}

/// The pair or the two pairs and their four within one block.
fn block_joins(block: Rect, joins: &mut Vec<Join>) {
    let rows: Vec<Rect> = (block.row..block.row + block.rows)
        .filter_map(|r| {
            let row: Vec<Rect> = (block.col..block.col + block.cols)
                .map(|c| Rect::square(r, c))
                .collect();
            chain(&row, Seam::Upright, joins)
        })
        .collect();
    chain(&rows, Seam::Level, joins);
}

/// Join the parts one after another; gives back the piece they become.
fn chain(parts: &[Rect], seam: Seam, joins: &mut Vec<Join>) -> Option<Rect> {
    let (&first, rest) = parts.split_first()?;
    Some(
        rest.iter()
            .fold(first, |sofar, next| add(sofar, *next, seam, joins)),
    )
}

fn add(first: Rect, second: Rect, seam: Seam, joins: &mut Vec<Join>) -> Rect {
    let whole = match seam {
        Seam::Upright => Rect {
            cols: first.cols + second.cols,
            ..first
        },
        Seam::Level => Rect {
            rows: first.rows + second.rows,
            ..first
        },
    };
    joins.push(Join {
        whole,
        first,
        second,
        seam,
    });
    whole
}

/// Join neighbours two and two, across and down in turn, until one piece is left.
fn doubling(mut parts: Vec<Vec<Rect>>, joins: &mut Vec<Join>) {
    while parts.len() > 1 || parts[0].len() > 1 {
        for row in &mut parts {
            *row = row
                .chunks(2)
                .filter_map(|two| chain(two, Seam::Upright, joins))
                .collect();
        }
        parts = parts
            .chunks(2)
            .map(|two| match two {
                [upper, lower] => upper
                    .iter()
                    .zip(lower)
                    .map(|(a, b)| add(*a, *b, Seam::Level, joins))
                    .collect(),
                rest => rest.concat(),
            })
            .collect();
    }
}

/// Which square of a piece comes to lie at number `n` once it is turned by quarters
/// clockwise; squares are numbered row by row. Quarter turns are for square pieces.
pub fn source(n: usize, (rows, cols): (u16, u16), quarters: u8) -> usize {
    let (rows, cols) = (usize::from(rows), usize::from(cols));
    let (r, c) = (n / cols, n % cols);
    let (r, c) = match quarters % 4 {
        1 => (rows - 1 - c, r),
        2 => (rows - 1 - r, cols - 1 - c),
        3 => (c, cols - 1 - r),
        _ => (r, c),
    };
    r * cols + c
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::collections::HashSet;

    const ORDERS: [JoinOrder; 3] = [JoinOrder::Rows, JoinOrder::Columns, JoinOrder::Doubling];

    /// What a maker calls each piece of a throw of six by eight: what is two squares high is a row
    /// even where it ends short of the throw's edge, what is two wide a column.
    #[test]
    fn a_piece_is_called_by_its_squares() {
        let work = Assembly::new(6, 8, JoinOrder::Rows);
        let kind = |rows, cols| {
            work.kind(Rect {
                row: 0,
                col: 0,
                rows,
                cols,
            })
        };
        let called = [
            ((1, 1), Kind::Square),
            ((1, 2), Kind::Pair),
            ((2, 1), Kind::Pair),
            ((2, 2), Kind::Four),
            ((1, 3), Kind::Row),
            ((1, 6), Kind::Row),
            ((2, 4), Kind::Row),
            ((2, 6), Kind::Row),
            ((3, 1), Kind::Column),
            ((4, 2), Kind::Column),
            ((8, 2), Kind::Column),
            ((3, 3), Kind::Part),
            ((4, 6), Kind::Part),
            ((8, 6), Kind::Whole),
        ];
        for ((rows, cols), name) in called {
            assert_eq!(kind(rows, cols), name, "{rows} high, {cols} wide");
        }
    }

    /// What the module promises, for one grid and order.
    fn check(across: u16, down: u16, order: JoinOrder) {
        let work = Assembly::new(across, down, order);
        let mut free: HashSet<Rect> = work.whole().squares().collect();
        for join in work.joins() {
            let (a, b, w) = (join.first, join.second, join.whole);
            assert!(
                free.remove(&a) && free.remove(&b),
                "{join:?} uses a part that is not there"
            );
            match join.seam {
                Seam::Upright => {
                    assert_eq!((a.row, a.rows, a.col + a.cols), (b.row, b.rows, b.col));
                }
                Seam::Level => {
                    assert_eq!((a.col, a.cols, a.row + a.rows), (b.col, b.cols, b.row));
                }
            }
            assert_eq!(a.count() + b.count(), w.count());
            assert!(w.holds(a) && w.holds(b));
            assert!(free.insert(w));
        }
        assert_eq!(free, HashSet::from([work.whole()]));
        assert_eq!(work.joins().len() as u32 + 1, work.whole().count());
        for block in work.blocks() {
            assert_eq!(work.is_block(block), block.count() > 1);
            assert!(work.knows(block));
        }
    }

    /// By hand: six fours in a row are doubled: two and two, then the first two pairs, then those and the
    /// third. So are six in a column.
    #[test]
    fn fours_are_doubled_two_and_two() {
        let larger = |across, down| -> Vec<[u16; 2]> {
            let assembly = Assembly::new(across, down, JoinOrder::Doubling);
            let all = assembly.joins().iter().map(|join| join.whole);
            let long = all.map(|r| match across > down {
                true => [r.col, r.cols],
                false => [r.row, r.rows],
            });
            long.filter(|[_, n]| *n > 2).collect()
        };
        let want = [[0, 4], [4, 4], [8, 4], [0, 8], [0, 12]];
        assert_eq!(larger(12, 2), want);
        assert_eq!(larger(2, 12), want);
    }

    #[test]
    fn every_grid_to_twelve_and_the_long_thin_ones() {
        for order in ORDERS {
            for across in 1..=12 {
                for down in 1..=12 {
                    check(across, down, order);
                }
            }
            for n in 1..=60 {
                check(1, n, order);
                check(n, 1, order);
                check(2, n, order);
            }
        }
    }

    #[test]
    fn an_odd_grid_has_leftover_pairs_and_a_single_corner() {
        let work = Assembly::new(5, 3, JoinOrder::Rows);
        let kinds: Vec<Kind> = work.blocks().into_iter().map(|b| work.kind(b)).collect();
        use Kind::{Four, Pair, Square};
        assert_eq!(kinds, [Four, Four, Pair, Pair, Pair, Square]);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(60))]
        #[test]
        fn any_grid_to_sixty(across in 1u16..=60, down in 1u16..=60, which in 0usize..3) {
            check(across, down, ORDERS[which]);
        }
    }
}
