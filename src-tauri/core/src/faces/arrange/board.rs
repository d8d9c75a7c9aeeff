//! The grid with its costs, and the changes that a trial makes and takes back.

use crate::cloth::fabric::{Cover, lightness};
use crate::faces::arrange::evenness::{Evenness, PlaceSet};
use crate::faces::arrange::supply::DenimSupply;
use crate::faces::arrange::weights::{
    AGAINST, DENIM_BORDER, DENIM_TOUCHES, SHADE, THICK, TOO_THICK, UNLIKE, closeness,
};
use crate::plan::assembly::{Rect, source};
use crate::throw::Throw;
use crate::throw::loose::{Holds, places_for};
use crate::throw::tasks::Task;
use crate::throw::wishes::{DenimWish, Grain, Pattern, Wishes};

/// No fabric.
pub(super) const NONE: u8 = u8::MAX;

/// Not part of a joined piece.
pub(super) const LOOSE: u16 = u16::MAX;

/// One square as it lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Square {
    pub(super) on: [u8; 2],
    pub(super) denim: u8,
    pub(super) wrong_side_up: bool,
    pub(super) crosswise: bool,
    pub(super) glued: [bool; 2],
    /// Something was done to it: it is one certain square.
    pub(super) made: bool,
    /// Its number among the joined pieces.
    pub(super) unit: u16,
    /// The place it lay at first.
    pub(super) from: u16,
    /// Quarters it was turned by itself.
    pub(super) turned: u8,
}

/// A joined piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Unit {
    pub(super) at: Rect,
    pub(super) from: Rect,
    pub(super) turned: u8,
    /// May be turned by a quarter, not only by halves.
    pub(super) quarters: bool,
    /// Where else it may lie, as a number among the slots.
    pub(super) slots: u8,
}

/// What a trial changed, to be put back.
#[derive(Debug, Clone, Copy)]
pub(super) enum BoardChange {
    Square(usize, Square),
    Extra(usize, i64),
    Set(usize, usize, i64),
    Unit(usize, Unit),
}

/// The grid with its costs, kept up to date by every change.
#[derive(Debug, Clone)]
pub(super) struct Board {
    pub(super) across: usize,
    pub(super) down: usize,
    pub(super) wishes: Wishes,
    pub(super) squares: Vec<Square>,
    /// Denims of squares that are not cut yet are to be chosen.
    pub(super) chooses: bool,
    /// What the pile gives of each denim, where they are to be chosen and it is known.
    pub(super) supply: Option<DenimSupply>,
    /// Places whose piece stays there.
    pub(super) still: Vec<bool>,
    /// Places whose faces stay as they are.
    pub(super) shut: Vec<bool>,
    pub(super) units: Vec<Unit>,
    pub(super) slots: Vec<Vec<Rect>>,
    pub(super) prints: usize,
    /// Prints of which each square is another.
    pub(super) mixed: Vec<bool>,
    pub(super) light: Vec<i64>,
    /// The shade wished for at each place.
    pub(super) want: Vec<i64>,
    /// Fabrics at each crossing; a row has `across - 1`.
    pub(super) extra: Vec<i64>,
    pub(super) sets: Vec<PlaceSet>,
    pub(super) even: Evenness,
    pub(super) cost: i64,
    pub(super) log: Vec<BoardChange>,
    pub(super) pending: Vec<(usize, usize, i64)>,
}

pub(super) fn number(print: Option<u8>) -> u8 {
    print.unwrap_or(NONE)
}

impl Board {
    pub(super) fn new(throw: &Throw, wishes: Wishes) -> Board {
        let assembly = throw.assembly();
        let (across, down) = (usize::from(throw.plan.across), usize::from(throw.plan.down));
        let all = across * down;
        let place = |p: Rect| usize::from(p.row) * across + usize::from(p.col);
        let mut squares: Vec<Square> = assembly
            .whole()
            .squares()
            .map(|piece| {
                let cover = throw.cover(piece);
                Square {
                    on: [number(cover.front), number(cover.back)],
                    denim: cover.denim,
                    wrong_side_up: cover.wrong_side_up,
                    crosswise: cover.crosswise,
                    glued: [
                        throw.has(piece, Task::CoverFront),
                        throw.has(piece, Task::CoverBack),
                    ],
                    made: throw.work(piece).is_some(),
                    unit: LOOSE,
                    from: place(piece) as u16,
                    turned: 0,
                }
            })
            .collect();
        let (mut still, mut shut) = (vec![false; all], vec![false; all]);
        let holds = Holds::of(throw);
        for block in assembly.blocks() {
            if !holds.is_loose(block) {
                for square in block.squares() {
                    still[place(square)] = true;
                    shut[place(square)] = true;
                }
            }
        }
        for square in throw.pinned() {
            still[place(*square)] = true;
            shut[place(*square)] = true;
        }
        let mut units: Vec<Unit> = Vec::new();
        let mut slots: Vec<Vec<Rect>> = Vec::new();
        // Where a piece may lie follows from its shape, and from whether it is squared up.
        let shape = |p: &Rect| (assembly.is_block(*p), p.rows, p.cols);
        // Pieces hold one another or share no square.
        let mut marked = vec![false; all];
        for piece in throw.marks().flat_map(|(a, b, _)| [a, b]) {
            for square in piece.squares() {
                if let Some(marked) = marked.get_mut(place(square)) {
                    *marked = true;
                }
            }
        }
        for rect in holds.units() {
            let alike = |places: &Vec<Rect>| places.first().map(shape) == Some(shape(&rect));
            let slot = match slots.iter().position(alike) {
                Some(slot) => slot,
                None => {
                    slots.push(places_for(assembly, rect));
                    slots.len() - 1
                }
            };
            let lapped = rect.squares().any(|s| marked[place(s)]);
            let opened = throw.work(rect).is_some_and(|w| w.opened.is_some());
            let stays =
                !wishes.move_made || lapped || opened || rect.squares().any(|s| still[place(s)]);
            for square in rect.squares() {
                squares[place(square)].unit = units.len() as u16;
                still[place(square)] |= stays;
            }
            units.push(Unit {
                at: rect,
                from: rect,
                turned: 0,
                quarters: rect.count() == 4 && throw.has(rect, Task::Stitch),
                slots: slot as u8,
            });
        }
        if !wishes.move_made {
            for (still, square) in still.iter_mut().zip(&squares) {
                *still |= square.glued.contains(&true);
            }
        }
        let chooses = wishes.choose_denims() && throw.denims.len() > 1;
        if chooses {
            for (x, square) in assembly.whole().squares().enumerate() {
                // What is cut bears the label of its place.
                still[x] |= match squares[x].made {
                    true => !wishes.move_made,
                    false => throw.is_denim_by_hand(square) && !wishes.by_hand_too,
                };
            }
        }
        let light: Vec<i64> = throw
            .denims
            .iter()
            .map(|d| i64::from(lightness(&d.colour)))
            .collect();
        let prints = throw.prints.len();
        let mixed = throw.prints.iter().map(|print| print.mixed).collect();
        let mut board = Board {
            across,
            down,
            wishes,
            still,
            shut,
            units,
            slots,
            prints,
            mixed,
            light,
            want: Vec::new(),
            extra: vec![0; (across - 1) * (down - 1)],
            sets: Vec::new(),
            even: Evenness::new(across, down),
            cost: 0,
            log: Vec::new(),
            pending: Vec::new(),
            squares,
            chooses,
            supply: chooses.then(|| DenimSupply::of(throw)).flatten(),
        };
        board.want = board.wished_shades();
        board.count_up();
        board
    }

    /// The shade each place would have in the wished order, from the denims there are.
    pub(super) fn wished_shades(&self) -> Vec<i64> {
        let mut shades: Vec<i64> = self.squares.iter().map(|s| self.shade(s.denim)).collect();
        match self.wishes.pattern {
            Pattern::ShadeRows | Pattern::LightEdges => shades.sort_by_key(|s| -s),
            Pattern::Free | Pattern::Mirror => return Vec::new(),
        }
        let places = self.places_by_shade();
        let mut want = vec![0; shades.len()];
        for (place, shade) in places.into_iter().zip(shades) {
            want[place] = shade;
        }
        want
    }

    /// All places, those first that are to be lightest where an order of shades is wished for.
    pub(super) fn places_by_shade(&self) -> Vec<usize> {
        let mut places: Vec<usize> = (0..self.squares.len()).collect();
        let (across, down) = (self.across, self.down);
        if self.wishes.pattern == Pattern::LightEdges {
            places.sort_by_key(|p| {
                let (r, c) = (p / across, p % across);
                (r.min(down - 1 - r).min(c).min(across - 1 - c), *p)
            });
        }
        places
    }

    pub(super) fn shade(&self, denim: u8) -> i64 {
        self.light.get(usize::from(denim)).copied().unwrap_or(0)
    }

    /// Work every cost out from the squares.
    pub(super) fn count_up(&mut self) {
        let all = self.squares.len();
        self.cost = 0;
        self.extra.fill(0);
        self.sets = PlaceSet::all(all, self.prints);
        let kept = self.squares.clone();
        for square in &mut self.squares {
            square.on = [NONE; 2];
        }
        for x in 0..all {
            self.cost += self.ground_cost(x, 2);
        }
        for (x, square) in kept.iter().enumerate() {
            for (f, print) in square.on.into_iter().enumerate() {
                self.put(f, x, print);
            }
            self.keep();
        }
        self.keep();
    }

    /// Costs of a square's denim and grain; each two neighbours `halves` times halved.
    pub(super) fn ground_cost(&self, x: usize, halves: i64) -> i64 {
        let square = &self.squares[x];
        let mut cost = 0;
        match self.wishes.grain {
            Grain::Free => {}
            Grain::OneWay => cost += AGAINST * i64::from(square.crosswise),
            Grain::ByTurns => {
                let alike = self
                    .beside(x)
                    .filter(|y| self.squares[*y].crosswise == square.crosswise)
                    .count() as i64;
                cost += AGAINST * alike / halves;
            }
        }
        if let Some(want) = self.want.get(x) {
            cost += SHADE * (self.shade(square.denim) - want).abs();
        }
        if self.wishes.pattern == Pattern::Mirror {
            cost += (0..2).map(|f| self.unlike(f, x)).sum::<i64>() / halves;
        }
        let touching = (0..2).map(|f| self.near_denim(f, x)).sum::<i64>();
        cost + (touching + self.borders_cost(x)) / halves
    }

    pub(super) fn mate(&self, x: usize) -> usize {
        let (r, c) = (x / self.across, x % self.across);
        r * self.across + self.across - 1 - c
    }

    /// Whether a square and its mirror image differ on a face, as a cost.
    pub(super) fn unlike(&self, f: usize, x: usize) -> i64 {
        let (a, b) = (&self.squares[x], &self.squares[self.mate(x)]);
        let differ = a.on[f] != b.on[f]
            || (a.on[f] == NONE && (a.denim, a.wrong_side_up) != (b.denim, b.wrong_side_up));
        UNLIKE * i64::from(differ)
    }

    /// What bare denim at a place costs on a face by its neighbours of the same denim, which
    /// is seen where neither is covered.
    pub(super) fn near_denim(&self, f: usize, x: usize) -> i64 {
        if self.wishes.denims != Some(DenimWish::Apart) {
            return 0;
        }
        DENIM_TOUCHES * self.touching(f, x).count() as i64
    }

    /// Neighbours that show the same denim on a face as a place does.
    pub(super) fn touching(&self, f: usize, x: usize) -> impl Iterator<Item = usize> {
        let square = &self.squares[x];
        let bare = square.on[f] == NONE;
        self.beside(x).filter(move |y| {
            let other = &self.squares[*y];
            bare && other.on[f] == NONE && other.denim == square.denim
        })
    }

    /// What the edges between one denim and another cost round a place.
    pub(super) fn borders_cost(&self, x: usize) -> i64 {
        if self.wishes.denims != Some(DenimWish::Bands) {
            return 0;
        }
        let denim = self.squares[x].denim;
        let other = |y: &usize| self.squares[*y].denim != denim;
        DENIM_BORDER * self.beside(x).filter(other).count() as i64
    }

    /// Places that share an edge with this.
    pub(super) fn beside(&self, x: usize) -> impl Iterator<Item = usize> + use<> {
        let (across, down) = (self.across, self.down);
        let (r, c) = (x / across, x % across);
        [
            (r > 0).then(|| x - across),
            (c > 0).then(|| x - 1),
            (c + 1 < across).then(|| x + 1),
            (r + 1 < down).then(|| x + across),
        ]
        .into_iter()
        .flatten()
    }

    /// Places that meet this at a corner.
    pub(super) fn at_corners(&self, x: usize) -> impl Iterator<Item = usize> + use<> {
        let (across, down) = (self.across, self.down);
        let (r, c) = (x / across, x % across);
        [
            (r > 0 && c > 0).then(|| x - across - 1),
            (r > 0 && c + 1 < across).then(|| x - across + 1),
            (r + 1 < down && c > 0).then(|| x + across - 1),
            (r + 1 < down && c + 1 < across).then(|| x + across + 1),
        ]
        .into_iter()
        .flatten()
    }

    /// Whether no two squares of a print are alike.
    pub(super) fn is_mixed(&self, print: u8) -> bool {
        self.mixed.get(usize::from(print)) == Some(&true)
    }

    /// What a print costs at a place by its neighbours alike.
    pub(super) fn near(&self, f: usize, x: usize, print: u8) -> i64 {
        if print == NONE || self.is_mixed(print) {
            return 0;
        }
        let (edge, corner) = closeness(self.wishes.apart);
        let like = |y: &usize| self.squares[*y].on[f] == print;
        edge * self.beside(x).filter(like).count() as i64
            + corner * self.at_corners(x).filter(like).count() as i64
    }

    pub(super) fn resize(&mut self, set: usize, x: usize, sign: i64) {
        let before = self.even.cost(&self.sets[set]);
        let waiting: i64 = self
            .pending
            .iter()
            .filter(|(s, _, _)| *s == set)
            .map(|(_, y, sign)| sign * self.even.k(x, *y))
            .sum();
        let phi = self.sets[set].phi[x] + waiting;
        let k0 = self.even.k(x, x);
        let kept = &mut self.sets[set];
        self.log.push(BoardChange::Set(set, kept.n, kept.s));
        kept.s += sign * 2 * phi + k0;
        kept.n = if sign > 0 { kept.n + 1 } else { kept.n - 1 };
        self.pending.push((set, x, sign));
        self.cost += self.even.cost(&self.sets[set]) - before;
    }

    /// Lay a fabric, or none, on a face of a place.
    pub(super) fn put(&mut self, f: usize, x: usize, print: u8) {
        let old = self.squares[x].on[f];
        if old == print {
            return;
        }
        let mirror = self.wishes.pattern == Pattern::Mirror;
        if mirror {
            self.cost -= self.unlike(f, x);
        }
        self.cost -= self.near(f, x, old) + self.near_denim(f, x);
        self.log.push(BoardChange::Square(x, self.squares[x]));
        self.squares[x].on[f] = print;
        self.cost += self.near(f, x, print) + self.near_denim(f, x);
        if mirror {
            self.cost += self.unlike(f, x);
        }
        let more = i64::from(print != NONE) - i64::from(old != NONE);
        if more != 0 {
            self.resize(f, x, more);
            self.thicken(x, more);
        }
        for (p, sign) in [(old, -1), (print, 1)] {
            if usize::from(p) < self.prints {
                self.resize(2 + f * self.prints + usize::from(p), x, sign);
            }
        }
    }

    pub(super) fn thicken(&mut self, x: usize, more: i64) {
        let (r, c) = (x / self.across, x % self.across);
        let rows = r.saturating_sub(1)..=r.min(self.down.saturating_sub(2));
        for row in rows {
            if row + 1 >= self.down {
                continue;
            }
            for col in c.saturating_sub(1)..=c.min(self.across.saturating_sub(2)) {
                if col + 1 >= self.across {
                    continue;
                }
                let at = row * (self.across - 1) + col;
                let e = self.extra[at];
                self.log.push(BoardChange::Extra(at, e));
                self.extra[at] = e + more;
                self.cost += self.crossing_cost(e + more) - self.crossing_cost(e);
            }
        }
    }

    /// What a crossing costs at which so many fabrics meet.
    fn crossing_cost(&self, fabrics: i64) -> i64 {
        THICK * fabrics * fabrics + TOO_THICK * self.too_many(fabrics)
    }

    /// Fabrics at a crossing beyond those wished for.
    pub(super) fn too_many(&self, fabrics: i64) -> i64 {
        let most = self.wishes.crossing.map(|most| i64::from(most.get()));
        most.map_or(0, |most| (fabrics - most).max(0))
    }

    /// Give a place another square, faces and all.
    pub(super) fn lay(&mut self, x: usize, square: Square) {
        for f in 0..2 {
            self.put(f, x, square.on[f]);
        }
        self.cost -= self.ground_cost(x, 1);
        self.log.push(BoardChange::Square(x, self.squares[x]));
        self.squares[x] = square;
        self.cost += self.ground_cost(x, 1);
    }

    /// Keep what was changed.
    pub(super) fn keep(&mut self) {
        for (set, x, sign) in self.pending.drain(..) {
            self.even.spread(&mut self.sets[set].phi, x, sign);
        }
        self.log.clear();
    }

    /// Put back what was changed.
    pub(super) fn take_back(&mut self, cost: i64) {
        while let Some(change) = self.log.pop() {
            match change {
                BoardChange::Square(x, square) => self.squares[x] = square,
                BoardChange::Extra(at, e) => self.extra[at] = e,
                BoardChange::Set(set, n, s) => (self.sets[set].n, self.sets[set].s) = (n, s),
                BoardChange::Unit(n, unit) => self.units[n] = unit,
            }
        }
        self.pending.clear();
        self.cost = cost;
    }

    /// Whether the fabric on a face of a place may be changed.
    pub(super) fn open(&self, f: usize, x: usize) -> bool {
        let square = &self.squares[x];
        !self.shut[x] && square.unit == LOOSE && !square.glued[f]
    }

    /// Whether what lies at a place is one square that may lie elsewhere.
    pub(super) fn movable(&self, x: usize) -> bool {
        !self.still[x] && self.squares[x].unit == LOOSE
    }

    /// Exchange the fabrics of two places on a face.
    pub(super) fn swap_fabric(&mut self, f: usize, x: usize, y: usize) {
        let (a, b) = (self.squares[x].on[f], self.squares[y].on[f]);
        // Bare first, so that no stock and no set is ever over-full.
        self.put(f, x, NONE);
        self.put(f, y, a);
        self.put(f, x, b);
    }

    /// Exchange two loose squares; fabric not glued stays in its place.
    pub(super) fn swap_squares(&mut self, x: usize, y: usize) {
        let (mut a, mut b) = (self.squares[x], self.squares[y]);
        for f in 0..2 {
            if !a.glued[f] && !b.glued[f] {
                std::mem::swap(&mut a.on[f], &mut b.on[f]);
            }
        }
        self.lay(x, b);
        self.lay(y, a);
    }

    pub(super) fn place(&self, rect: Rect) -> usize {
        usize::from(rect.row) * self.across + usize::from(rect.col)
    }

    /// Whether everything within these places may be moved as it is.
    pub(super) fn clears(&self, rect: Rect) -> bool {
        rect.squares().all(|s| {
            let x = self.place(s);
            let unit = self.squares[x].unit;
            !self.still[x] && (unit == LOOSE || rect.holds(self.units[usize::from(unit)].at))
        })
    }

    /// Exchange all that lies in two places of one shape, the first turned on the way.
    pub(super) fn exchange(&mut self, a: Rect, b: Rect, turned: u8) {
        let lift = |board: &Board, r: Rect| -> Vec<Square> {
            r.squares().map(|s| board.squares[board.place(s)]).collect()
        };
        let (from_a, from_b) = (lift(self, a), lift(self, b));
        for (n, square) in b.squares().enumerate() {
            let source = source(n, (a.rows, a.cols), turned);
            let mut moved = from_a[source];
            moved.crosswise ^= turned % 2 == 1;
            self.lay(self.place(square), moved);
        }
        if a != b {
            for (n, square) in a.squares().enumerate() {
                self.lay(self.place(square), from_b[n]);
            }
        }
        for n in 0..self.units.len() {
            let unit = self.units[n];
            let (mut moved, within_a) = (unit, a.holds(unit.at));
            if within_a {
                moved.at = shifted(turn_within(unit.at, a, turned), a, b);
                moved.turned = (unit.turned + turned) % 4;
            } else if b.holds(unit.at) {
                moved.at = shifted(unit.at, b, a);
            } else {
                continue;
            }
            self.log.push(BoardChange::Unit(n, unit));
            self.units[n] = moved;
        }
    }
}

/// Where a piece within `all` lies once `all` is turned by halves (pairs) or is itself.
pub(super) fn turn_within(piece: Rect, all: Rect, turned: u8) -> Rect {
    if turned != 2 || piece == all {
        return piece;
    }
    Rect {
        row: all.row + all.row + all.rows - piece.row - piece.rows,
        col: all.col + all.col + all.cols - piece.col - piece.cols,
        ..piece
    }
}

pub(super) fn shifted(piece: Rect, from: Rect, to: Rect) -> Rect {
    Rect {
        row: piece.row - from.row + to.row,
        col: piece.col - from.col + to.col,
        ..piece
    }
}

pub(super) fn cover(square: &Square) -> Cover {
    let print = |p: u8| (p != NONE).then_some(p);
    Cover {
        front: print(square.on[0]),
        back: print(square.on[1]),
        denim: square.denim,
        wrong_side_up: square.wrong_side_up,
        crosswise: square.crosswise,
    }
}
