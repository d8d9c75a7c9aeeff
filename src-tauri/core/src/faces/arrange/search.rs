//! The search, round by round.

use crate::cloth::fabric::Cover;
use crate::faces::arrange::board::{Board, LOOSE, NONE, Square, cover};
use crate::faces::arrange::fabrics::{Fabrics, Laid};
use crate::faces::arrange::start::fill;
use crate::faces::arrange::weights::DENIM_TOUCHES;
use crate::faces::arrange::wishes::{Score, score};
use crate::plan::assembly::Rect;
use crate::throw::stock::to_lay_out;
use crate::throw::wishes::{DenimWish, Grain, Layout, Pattern, Wishes};
use crate::throw::{Event, Throw};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// The threshold a round begins with.
const THRESHOLD: i64 = 260;

/// Grids of no more squares are searched from a higher threshold, which falls by its third
/// power, so that the search gets across poor layouts to better ones. On larger grids that gains
/// nothing (see the bench `faces`).
const SMALL: u64 = 24;

/// That threshold.
const HOT: i64 = 1200;

/// Trials in the first round, for each square.
const FIRST: u64 = 8;

/// The first round has no more, so that the first answer does not wait for it.
const FIRST_MOST: u64 = 8_000;

/// No round is longer, for each square.
const LONGEST: u64 = 512;

/// Fabrics are exchanged no more often in a round.
const MOST_TRIALS: u64 = 3_400_000;

/// How the fabrics are annealed in a round: trials, the temperature at first and how often it is
/// halved (our judgement, tried with the bench `optimum`).
fn annealing(squares: u64, round: u32) -> (u64, i64, u64) {
    if round == 0 {
        return ((8 * FIRST * squares).min(FIRST_MOST), 200, 4);
    }
    let longest = (12 * squares.pow(4)).min(MOST_TRIALS);
    // Each of the first rounds four times as long as the one before.
    let trials = longest >> (2 * 5_u32.saturating_sub(round));
    let hot = 40 + 2_400 / squares as i64;
    match (squares <= SMALL, round) {
        // By turns hot enough to get past fabrics that lie beside their like.
        (true, n) if n % 2 == 0 => (trials, 600, 4),
        (true, _) => (trials, 200, 2),
        (false, ..=4) => (trials, hot, 2),
        // The first long round, likewise hot enough to get past like neighbours.
        (false, 5) => (trials, 600, 5),
        // From the best so far, of which some stays.
        (false, _) => (trials, hot * 5 / 6, 1),
    }
}

/// Looks for good layouts, round by round.
#[derive(Debug, Clone)]
pub struct Arranger {
    board: Board,
    pub(super) best: Board,
    rng: ChaCha8Rng,
    rounds: u32,
    idle: u32,
    movables: Vec<usize>,
    unit_moves: bool,
    /// Something comes of it when bare denim changes places.
    denim_moves: bool,
    /// Squares change places or are turned, not only fabrics.
    square_moves: bool,
}

impl Arranger {
    /// A first layout for a throw: stock and what is made are looked up in it.
    pub fn new(throw: &Throw, wishes: Wishes, seed: u64) -> Arranger {
        let mut board = Board::new(throw, wishes);
        if board.chooses {
            board.deal_denims();
            board.want = board.wished_shades();
        }
        let wanted = wishes.front.get().saturating_add(wishes.back.get());
        fill(&mut board, &to_lay_out(throw, wanted), wishes, seed);
        board.count_up();
        let movables = (0..board.squares.len())
            .filter(|x| !board.still[*x])
            .collect();
        let unit_moves = board.units.iter().any(|u| !board.still[board.place(u.at)]);
        let denim_moves = matches!(wishes.denims, Some(DenimWish::Apart | DenimWish::Bands));
        let denim_moves = denim_moves && board.chooses;
        let glued = |x: usize| board.squares[x].glued.contains(&true) && board.movable(x);
        Arranger {
            square_moves: unit_moves
                || denim_moves
                || wishes.pattern != Pattern::Free
                || wishes.grain != Grain::Free
                || (0..board.squares.len()).any(glued),
            denim_moves,
            best: board.clone(),
            board,
            rng: ChaCha8Rng::seed_from_u64(seed ^ 0x6c61_7077_6f72_6b00),
            rounds: 0,
            idle: 0,
            movables,
            unit_moves,
        }
    }

    /// Rounds done.
    pub fn rounds(&self) -> u32 {
        self.rounds
    }

    /// Several rounds have brought nothing better: more will hardly help.
    pub fn settled(&self) -> bool {
        self.idle >= 4 && self.rounds >= 8
    }

    /// What the best so far comes to.
    pub fn cost(&self) -> i64 {
        self.best.cost
    }

    /// One round more; true if it brought something better.
    pub fn round(&mut self) -> bool {
        let before = self.best.cost;
        let mirror = self.board.wishes.pattern == Pattern::Mirror;
        if self.square_moves {
            self.move_about();
        }
        // The first answer does not wait for both.
        if !mirror && (self.rounds > 0 || !self.square_moves) {
            self.anneal_fabrics();
        }
        self.rounds += 1;
        let better = self.best.cost < before;
        self.idle = if better { 0 } else { self.idle + 1 };
        better
    }

    /// Exchange fabrics while the squares lie still.
    fn anneal_fabrics(&mut self) {
        let (trials, hot, halvings) = annealing(self.board.squares.len() as u64, self.rounds);
        let board = &self.board;
        let mut fabrics = Fabrics::new(board.laid(), &board.sets, &board.even);
        fabrics.anneal(trials, hot, halvings, &mut self.rng);
        let on = fabrics.on().clone();
        self.board.lay_fabrics(&on);
        self.keep_better();
    }

    fn keep_better(&mut self) {
        if self.board.cost < self.best.cost {
            self.best = self.board.clone();
        } else {
            self.board = self.best.clone();
        }
    }

    /// Move squares and fabrics at random.
    fn move_about(&mut self) {
        let all = self.board.squares.len() as u64;
        let trials = match self.rounds {
            0 => (all * FIRST).min(FIRST_MOST),
            n => all * (FIRST << n.min(16)).min(LONGEST),
        };
        let start = if self.rounds == 0 {
            THRESHOLD * 2
        } else {
            THRESHOLD
        };
        let hot = self.rounds > 0 && all <= SMALL;
        for n in 0..trials {
            let left = |of: i64| of * (trials - n - 1) as i64 / trials as i64;
            let threshold = match hot {
                // In larger units, as it is rounded three times.
                true => left(left(left(HOT << 10))) >> 10,
                false => start - start * (n + 1) as i64 / trials as i64,
            };
            let cost = self.board.cost;
            if self.attempt() && self.board.cost <= cost + threshold {
                self.board.keep();
            } else {
                self.board.take_back(cost);
            }
        }
        self.keep_better();
    }

    fn draw(&mut self, below: usize) -> usize {
        self.rng.random_range(0..below.max(1) as u32) as usize
    }

    /// Change something at random; false if it cannot be done.
    fn attempt(&mut self) -> bool {
        let kind = self.draw(20);
        match kind {
            0 | 1 if self.unit_moves => self.move_unit(),
            2 | 3 => self.move_square(),
            4 if self.board.wishes.grain != Grain::Free => self.turn_square(),
            5..=9 if self.denim_moves => self.move_square(),
            _ => self.move_fabric(),
        }
    }

    fn move_fabric(&mut self) -> bool {
        let f = self.draw(2);
        let all = self.board.squares.len();
        let covered = |board: &Board, x: usize| board.squares[x].on[f] != NONE && board.open(f, x);
        let mut x = self.draw(all);
        for _ in 0..12 {
            if covered(&self.board, x) {
                break;
            }
            x = self.draw(all);
        }
        if !covered(&self.board, x) {
            return false;
        }
        let y = if self.draw(2) == 0 {
            // Not far off, to refine what is nearly right.
            let (across, down) = (self.board.across as i64, self.board.down as i64);
            let (r, c) = ((x as i64) / across, (x as i64) % across);
            let (dr, dc) = (self.draw(5) as i64 - 2, self.draw(5) as i64 - 2);
            let (r, c) = (r + dr, c + dc);
            if r < 0 || c < 0 || r >= down || c >= across {
                return false;
            }
            (r * across + c) as usize
        } else {
            self.draw(all)
        };
        let board = &mut self.board;
        if !board.open(f, y) || board.squares[x].on[f] == board.squares[y].on[f] {
            return false;
        }
        board.swap_fabric(f, x, y);
        if board.wishes.pattern == Pattern::Mirror {
            let (a, b) = (board.mate(x), board.mate(y));
            let apart = ![x, y].contains(&a) && ![x, y].contains(&b);
            if apart && board.open(f, a) && board.open(f, b) {
                board.swap_fabric(f, a, b);
            }
        }
        true
    }

    fn two_movable(&mut self) -> Option<(usize, usize)> {
        let n = self.movables.len();
        if n < 2 {
            return None;
        }
        let (x, y) = (self.draw(n), self.draw(n));
        let (x, y) = (self.movables[x], self.movables[y]);
        (x != y && self.board.movable(x) && self.board.movable(y)).then_some((x, y))
    }

    fn move_square(&mut self) -> bool {
        let Some((x, y)) = self.two_movable() else {
            return false;
        };
        let look = |s: &Square| (s.denim, s.wrong_side_up, s.crosswise, s.glued);
        let board = &self.board;
        let (a, b) = (&board.squares[x], &board.squares[y]);
        let glued = a.glued.contains(&true) || b.glued.contains(&true);
        let wished = self.denim_moves
            || board.wishes.pattern != Pattern::Free
            || board.wishes.grain != Grain::Free;
        // Bare denim is not carried about where nothing comes of it.
        if !glued && (look(a) == look(b) || !wished) {
            return false;
        }
        self.board.swap_squares(x, y);
        true
    }

    fn turn_square(&mut self) -> bool {
        let n = self.movables.len();
        if n == 0 {
            return false;
        }
        let x = self.draw(n);
        let x = self.movables[x];
        if !self.board.movable(x) {
            return false;
        }
        let mut square = self.board.squares[x];
        square.crosswise ^= true;
        square.turned = (square.turned + 1) % 2;
        self.board.lay(x, square);
        true
    }

    fn move_unit(&mut self) -> bool {
        let n = self.draw(self.board.units.len());
        let unit = self.board.units[n];
        if self.board.still[self.board.place(unit.at)] {
            return false;
        }
        let turned = if unit.quarters {
            self.draw(4) as u8
        } else {
            2 * self.draw(2) as u8
        };
        let places = self.board.slots[usize::from(unit.slots)].len();
        let to = self.draw(places);
        let to = self.board.slots[usize::from(unit.slots)][to];
        if to == unit.at {
            if turned == 0 {
                return false;
            }
        } else if !self.board.clears(to) {
            return false;
        }
        self.board.exchange(unit.at, to, turned);
        true
    }

    /// How the best so far is laid out.
    pub fn score(&self) -> Score {
        score(&self.best)
    }

    /// The faces of every square in the best so far, row by row.
    pub fn covers(&self) -> Vec<Cover> {
        self.best.squares.iter().map(cover).collect()
    }

    /// The best so far, as what must be done to the throw to come there.
    pub fn layout(&self, throw: &Throw) -> Layout {
        self.laid(throw).0
    }

    /// The same, and how many squares change their fabric by it.
    pub fn laid(&self, throw: &Throw) -> (Layout, usize) {
        let board = &self.best;
        let at = |x: usize| Rect::square((x / board.across) as u16, (x % board.across) as u16);
        let mut layout = Layout::default();
        for unit in &board.units {
            if unit.at != unit.from {
                layout.moves.push((unit.from, unit.at));
            }
            if unit.turned != 0 {
                layout.turns.push((unit.at, unit.turned));
            }
        }
        for (from, to) in board.loose_moves() {
            if from != to {
                layout.moves.push((at(from), at(to)));
            }
        }
        for (x, square) in board.squares.iter().enumerate() {
            if square.unit == LOOSE && square.turned % 2 == 1 && square.made {
                layout.turns.push((at(x), 1));
            }
        }
        let events: Vec<Event> = layout.moved().into_iter().chain(layout.turned()).collect();
        let moved = throw.after(&events);
        let mut changed = 0;
        for (x, square) in board.squares.iter().enumerate() {
            let (wanted, is) = (cover(square), moved.cover(at(x)));
            if wanted != is {
                layout.faces.push((at(x), wanted));
                changed += usize::from((wanted.front, wanted.back) != (is.front, is.back));
            }
        }
        (layout, changed)
    }
}

impl Board {
    /// The fabrics as they lie, and which of them may lie elsewhere.
    pub(super) fn laid(&self) -> Laid {
        let places = 0..self.squares.len();
        let bare = |x: usize, y: usize, within: bool| {
            let alike = within && self.squares[x].denim == self.squares[y].denim;
            let apart = self.wishes.denims == Some(DenimWish::Apart);
            DENIM_TOUCHES * i64::from(alike && apart)
        };
        let open = |f: usize, x: usize| {
            let on = self.squares[x].on[f];
            self.open(f, x) && (on == NONE || usize::from(on) < self.prints)
        };
        let (across, all) = (self.across, self.squares.len());
        Laid {
            across,
            down: self.down,
            prints: self.prints,
            mixed: self.mixed.clone(),
            apart: self.wishes.apart,
            most: self.wishes.crossing.map(|most| i64::from(most.get())),
            on: [0, 1].map(|f| self.squares.iter().map(|s| s.on[f]).collect()),
            open: [0, 1].map(|f| places.clone().map(|x| open(f, x)).collect()),
            bare: [
                (0..all - 1)
                    .map(|x| bare(x, x + 1, (x + 1) % across > 0))
                    .collect(),
                (0..all - across)
                    .map(|x| bare(x, x + across, true))
                    .collect(),
            ],
        }
    }

    /// Lay the fabrics out like this.
    pub(super) fn lay_fabrics(&mut self, on: &[Vec<u8>; 2]) {
        for (f, on) in on.iter().enumerate() {
            let changed = |board: &Board, x: &usize| board.squares[*x].on[f] != on[*x];
            let changed: Vec<usize> = (0..on.len()).filter(|x| changed(self, x)).collect();
            // Bare first, so that no stock and no set is ever over-full.
            for print in [|_: u8| NONE, |print: u8| print] {
                for x in &changed {
                    self.put(f, *x, print(on[*x]));
                    self.keep();
                }
            }
        }
    }

    /// From where to where loose squares go. Squares that nothing was done to only make room:
    /// what they are to be is known from their faces. Those that cannot be known
    /// from one another stay if they can.
    fn loose_moves(&self) -> Vec<(usize, usize)> {
        let mut going: Vec<(usize, usize)> = self
            .squares
            .iter()
            .enumerate()
            .filter(|(_, s)| s.unit == LOOSE)
            .map(|(to, s)| (usize::from(s.from), to))
            .collect();
        // Among squares alike, send each to its own place where one of them ends there.
        let kind = |to: usize| {
            let s = &self.squares[to];
            let on = |f: usize| if s.glued[f] { s.on[f] } else { NONE };
            if !s.made {
                return None;
            }
            Some((
                s.denim,
                s.wrong_side_up,
                s.crosswise,
                s.turned,
                s.glued,
                [on(0), on(1)],
            ))
        };
        let mut by_kind: std::collections::BTreeMap<_, (Vec<usize>, Vec<usize>)> =
            std::collections::BTreeMap::new();
        for (from, to) in &going {
            let (sources, places) = by_kind.entry(kind(*to)).or_default();
            sources.push(*from);
            places.push(*to);
        }
        going.clear();
        for (sources, places) in by_kind.into_values() {
            let (stay, mut leave): (Vec<usize>, Vec<usize>) =
                sources.into_iter().partition(|s| places.contains(s));
            let mut fill: Vec<usize> = places.into_iter().filter(|p| !stay.contains(p)).collect();
            leave.sort_unstable();
            fill.sort_unstable();
            going.extend(leave.into_iter().zip(fill));
        }
        going
    }
}
