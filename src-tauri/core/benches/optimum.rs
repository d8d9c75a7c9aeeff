//! How near layouts of fabrics come to the best there is.
//!
//! `cargo bench -p lapwork-core --bench optimum` makes cases up by chance (grid, fabrics, wishes,
//! pinned squares). `-- small` takes grids of 3 × 3 to 5 × 4 and finds the least cost of each
//! by going through all ways to cover each face (`Faces::least`), or where these are too many by a
//! longer search (not proven), and counts the seeds that reach it.
//! `-- large` takes 6 × 8 and 12 × 16 and compares a second of search with a long
//! one, of which nothing is proven. Cases that the search was tuned on are made with `-- tuned`;
//! the others are for measuring only.

use lapwork_core::cloth::fabric::Cover;
use lapwork_core::command::{Command, decide};
use lapwork_core::demo;
use lapwork_core::faces::arrange::{Arranger, of};
use lapwork_core::measure::Count;
use lapwork_core::plan::assembly::Rect;
use lapwork_core::throw::wishes::{Apart, Wishes};
use lapwork_core::throw::{Event, Throw};
use rand::seq::{IndexedRandom, SliceRandom};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::BTreeMap;
use std::time::Instant;

/// Rounds as the window has them, and layouts shown side by side.
const ROUNDS: u32 = 12;
const SEVERAL: usize = 4;

/// Pairs of ways to cover the faces that are gone through at most for a proof.
const PAIRS: u64 = 60_000_000;

/// Rounds of the searches that stand in for a proof.
const LONG_ROUNDS: u32 = 36;

/// Seconds of the long searches.
const LONG: f64 = 30.0;

/// Small grids.
const CASES: usize = 16;

fn main() {
    let only = |name: &str| std::env::args().any(|arg| arg == name);
    let seed = if only("tuned") { 11 } else { 20_261_129 };
    if !only("large") {
        small(seed);
    }
    if !only("small") {
        large(seed);
    }
}

/// A throw to be laid out.
struct Case {
    throw: Throw,
    wishes: Wishes,
    name: String,
}

fn case(across: u16, down: u16, rng: &mut ChaCha8Rng) -> Case {
    let action = demo::begin("Table", across, down);
    let events = decide(None, &action).expect("the plan can be made");
    let mut throw = Throw::begin(&events[0]).expect("it begins");
    let squares = across * down;
    let prints = rng.random_range(1..=if squares > 20 { 4 } else { 3 });
    throw.prints.truncate(prints);
    let apart = [Apart::Corners, Apart::Corners, Apart::Edges, Apart::Free];
    let most = [None, None, None, Some(2), Some(3)];
    let wishes = Wishes {
        front: Count::from(rng.random_range(2..=squares / 2)),
        back: Count::from(rng.random_range(2..=squares / 2)),
        apart: *apart.choose(rng).expect("one of them"),
        crossing: most.choose(rng).expect("one of them").map(Count::from),
        ..Wishes::default()
    };
    let pinned = if rng.random_bool(0.5) {
        rng.random_range(1..=3)
    } else {
        0
    };
    let mut all: Vec<Rect> = throw.assembly().whole().squares().collect();
    let pinned = all.partial_shuffle(rng, pinned).0.to_vec();
    if !pinned.is_empty() {
        let mut print = || {
            rng.random_bool(0.5)
                .then(|| rng.random_range(0..prints as u8))
        };
        let cover = |front, back| Cover {
            front,
            back,
            ..Cover::default()
        };
        let faces = pinned.iter().map(|p| (*p, cover(print(), print())));
        let faces = Event::FacesChanged {
            faces: faces.collect(),
            again: None,
            by_hand: None,
        };
        throw.apply(&faces, 0);
        let pin = Command::Pin {
            pieces: pinned.clone(),
            pinned: true,
        };
        for event in decide(Some(&throw), &pin).expect("they can be pinned") {
            throw.apply(&event, 0);
        }
    }
    let name = format!(
        "{across} × {down}, {prints} fabrics, {} + {}, {:?}, at most {:?}, {} pinned",
        wishes.front.get(),
        wishes.back.get(),
        wishes.apart,
        wishes.crossing.map(Count::get),
        pinned.len()
    );
    Case {
        throw,
        wishes,
        name,
    }
}

fn small(seed: u64) {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    println!(
        "| Case | Seeds at the optimum | Above it: mean, worst | Best of four | Seconds for one |"
    );
    println!("| --- | --- | --- | --- | --- |");
    let (mut at, mut all, mut fours, mut worst) = (0, 0, 0, 0.0_f64);
    let (mut above_all, mut cases) = (0.0, 0);
    let sizes = [
        (3, 3),
        (4, 3),
        (3, 5),
        (4, 4),
        (5, 4),
        (4, 4),
        (5, 4),
        (5, 4),
    ];
    for (across, down) in sizes.into_iter().cycle().take(CASES) {
        let case = case(across, down, &mut rng);
        let start = Instant::now();
        let found: Vec<(Arranger, i64)> = (0..40)
            .map(|seed| {
                let mut arranger = Arranger::new(&case.throw, case.wishes, seed << 8);
                while arranger.rounds() < ROUNDS && !arranger.settled() {
                    arranger.round();
                }
                let cost = arranger.cost();
                (arranger, cost)
            })
            .collect();
        let each = start.elapsed().as_secs_f64() / 40.0;
        // The seeds differ in how many squares are of which fabric, which the search keeps.
        let mut least_of: BTreeMap<[Vec<usize>; 2], i64> = BTreeMap::new();
        for (arranger, cost) in &found {
            let counts = counts(&arranger.covers(), case.throw.prints.len());
            let least = least_of.entry(counts).or_insert(*cost);
            *least = *cost.min(least);
        }
        let mut proven = true;
        for (kept, least) in &mut least_of {
            match Faces::new(&case, kept).least(*least) {
                Some(solved) => *least = solved,
                None => {
                    proven = false;
                    let alike = found.iter().map(|(arranger, _)| arranger);
                    let alike = alike
                        .filter(|a| counts(&a.covers(), case.throw.prints.len()) == *kept)
                        .take(2);
                    for arranger in alike {
                        let mut longer = arranger.clone();
                        while longer.rounds() < LONG_ROUNDS {
                            longer.round();
                        }
                        *least = longer.cost().min(*least);
                    }
                }
            }
        }
        let above: Vec<f64> = found
            .iter()
            .map(|(arranger, cost)| {
                let counts = counts(&arranger.covers(), case.throw.prints.len());
                let least = least_of[&counts];
                (cost - least) as f64 / least as f64
            })
            .collect();
        let reached = above.iter().filter(|a| **a == 0.0).count();
        let four = |four: &&[f64]| four.contains(&0.0);
        let four = above.chunks(SEVERAL).filter(four).count();
        let most = above.iter().copied().fold(0.0, f64::max);
        println!(
            "| {}{} | {reached} of 40 | {:.2} %, {:.1} % | {four} of 10 | {each:.2} |",
            case.name,
            if proven { "" } else { " (not proven)" },
            100.0 * above.iter().sum::<f64>() / 40.0,
            100.0 * most,
        );
        at += reached;
        fours += four;
        all += 40;
        cases += usize::from(reached == 40);
        worst = worst.max(most);
        above_all += above.iter().sum::<f64>();
    }
    println!(
        "| all: {cases} of {CASES} cases always | {at} of {all} | {:.3} %, {:.1} % | {fours} of {} | |",
        100.0 * above_all / f64::from(all),
        100.0 * worst,
        all / SEVERAL as i32,
    );
}

/// How many of each print lie on each face.
fn counts(covers: &[Cover], prints: usize) -> [Vec<usize>; 2] {
    let on: [fn(&Cover) -> Option<u8>; 2] = [|c| c.front, |c| c.back];
    let of = |on: fn(&Cover) -> Option<u8>, p: usize| {
        let like = covers.iter().filter(|c| on(c) == Some(p as u8));
        like.count()
    };
    on.map(|on| (0..prints).map(|p| of(on, p)).collect())
}

/// Costs of small layouts, worked out by the formulas at the head of `faces/arrange` without the
/// search's tables.
struct Faces {
    across: usize,
    down: usize,
    counts: [Vec<usize>; 2],
    apart: Apart,
    most: Option<i64>,
    /// What lies on pinned squares, on each face.
    fixed: [Vec<Option<Option<u8>>>; 2],
    kernel: Vec<Vec<i64>>,
    /// By how many squares are covered: what S cannot go under, and what chance adds for each.
    scale: Vec<(i64, i64)>,
    /// Least S of so many squares.
    least_s: Vec<i64>,
}

/// A way to cover a face.
struct Way {
    set: u32,
    /// What it costs by itself: evenness, crossings and its fabrics.
    cost: i64,
}

impl Faces {
    fn new(case: &Case, counts: &[Vec<usize>; 2]) -> Faces {
        let plan = case.throw.plan;
        let (across, down) = (usize::from(plan.across), usize::from(plan.down));
        let all = across * down;
        // 2n² (3/2 − x (1 − x)), x = d/n, in both directions.
        let part = |d: usize, n: usize| (3 * n * n - 2 * d * (n - d)) as i64;
        let k = |a: usize, b: usize| {
            let (r, c) = (
                (a / across).abs_diff(b / across),
                (a % across).abs_diff(b % across),
            );
            part(r, down) * part(c, across)
        };
        let kernel: Vec<Vec<i64>> = (0..all)
            .map(|a| (0..all).map(|b| k(a, b)).collect())
            .collect();
        let (k0, row) = (kernel[0][0], kernel[0].iter().sum::<i64>());
        let scale = (0..=all as i64).map(|n| {
            let floor = n * n * row / all as i64;
            let chance = n * k0 + n * (n - 1) * (row - k0) / (all as i64 - 1);
            (floor, (chance - floor) / n.max(1))
        });
        let fixed =
            [|c: &Cover| c.front, |c: &Cover| c.back].map(|on: fn(&Cover) -> Option<u8>| {
                let squares = case.throw.assembly().whole().squares();
                squares
                    .map(|s| {
                        let pinned = case.throw.is_pinned(s);
                        pinned.then(|| on(&case.throw.cover(s)))
                    })
                    .collect()
            });
        let mut out = Faces {
            across,
            down,
            counts: counts.clone(),
            apart: case.wishes.apart,
            most: case.wishes.crossing.map(|most| i64::from(most.get())),
            fixed,
            scale: scale.collect(),
            kernel,
            least_s: Vec::new(),
        };
        let mut least = vec![i64::MAX; all + 1];
        for (n, least) in least.iter_mut().enumerate().take(all / 2 + 1) {
            *least = subsets(all, n).map(|set| out.s(set)).min().unwrap_or(0);
        }
        out.least_s = least;
        out
    }

    fn s(&self, set: u32) -> i64 {
        let mut s = 0;
        let mut rest = set;
        while rest != 0 {
            let a = rest.trailing_zeros() as usize;
            rest &= rest - 1;
            let mut others = rest;
            while others != 0 {
                s += 2 * self.kernel[a][others.trailing_zeros() as usize];
                others &= others - 1;
            }
            s += self.kernel[a][a];
        }
        s
    }

    fn even(&self, n: usize, s: i64, weight: i64) -> i64 {
        let (floor, unit) = self.scale[n];
        if unit <= 0 {
            return 0;
        }
        let over = s - floor;
        over / unit * weight + over % unit * weight / unit
    }

    /// Fabrics at each crossing.
    fn met(&self, set: u32) -> Vec<i64> {
        let has = |r: usize, c: usize| i64::from(set >> (r * self.across + c) & 1);
        let rows = 1..self.down;
        let each = rows.flat_map(|r| (1..self.across).map(move |c| (r, c)));
        each.map(|(r, c)| has(r - 1, c - 1) + has(r - 1, c) + has(r, c - 1) + has(r, c))
            .collect()
    }

    fn like(&self, a: usize, b: usize) -> i64 {
        let (edge, corner) = match self.apart {
            Apart::Corners => (2500, 2500),
            Apart::Edges => (2500, 250),
            Apart::Free => (200, 100),
        };
        let across = self.across;
        match (
            (a / across).abs_diff(b / across),
            (a % across).abs_diff(b % across),
        ) {
            (0, 1) | (1, 0) => edge,
            (1, 1) => corner,
            _ => 0,
        }
    }

    /// The least cost of the fabrics on the places of a set; `most` or more if it is not less.
    fn colours(&self, f: usize, set: u32, most: i64) -> i64 {
        let places: Vec<usize> = (0..self.kernel.len())
            .filter(|x| set >> x & 1 == 1)
            .collect();
        let mut left = self.counts[f].clone();
        let (mut sets, mut best) = (vec![0; left.len()], most);
        self.colour(f, &places, &mut left, &mut sets, 0, &mut best);
        best
    }

    fn colour(
        &self,
        f: usize,
        places: &[usize],
        left: &mut Vec<usize>,
        sets: &mut Vec<u32>,
        cost: i64,
        best: &mut i64,
    ) {
        let Some((x, rest)) = places.split_first() else {
            let even = |p: usize| self.even(self.counts[f][p], self.s(sets[p]), 400);
            *best = (*best).min(cost + (0..sets.len()).map(even).sum::<i64>());
            return;
        };
        if cost + self.least_colours(f) >= *best {
            return;
        }
        for p in 0..left.len() {
            if left[p] == 0 || self.fixed[f][*x].is_some_and(|on| on != Some(p as u8)) {
                continue;
            }
            let (mut like, mut others) = (0, sets[p]);
            while others != 0 {
                like += self.like(*x, others.trailing_zeros() as usize);
                others &= others - 1;
            }
            left[p] -= 1;
            sets[p] |= 1 << x;
            self.colour(f, rest, left, sets, cost + like, best);
            sets[p] &= !(1 << x);
            left[p] += 1;
        }
    }

    /// No fabrics on a face cost less.
    fn least_colours(&self, f: usize) -> i64 {
        let counts = self.counts[f].iter();
        counts.map(|n| self.even(*n, self.least_s[*n], 400)).sum()
    }

    /// All ways to cover a face, by the least cost of their fabrics.
    fn ways(&self, f: usize) -> Vec<Way> {
        let all = self.kernel.len();
        let n = self.counts[f].iter().sum();
        let fits = |set: &u32| {
            let mut fixed = self.fixed[f].iter().enumerate();
            fixed.all(|(x, on)| on.is_none_or(|on| on.is_some() == (set >> x & 1 == 1)))
        };
        let fabrics = self.least_colours(f);
        let way = |set: u32| {
            let thick: i64 = self.met(set).iter().map(|e| 45 * e * e).sum();
            let cost = self.even(n, self.s(set), 1000) + thick + fabrics;
            Way { set, cost }
        };
        let mut ways: Vec<Way> = subsets(all, n).filter(fits).map(way).collect();
        ways.sort_by_key(|way| way.cost);
        ways
    }

    /// The ways that may be part of a layout that costs less than `best`, with what their fabrics
    /// cost, the cheapest first; `others` is the least that the other face comes to.
    fn coloured(&self, f: usize, ways: Vec<Way>, others: i64, best: i64) -> Vec<Way> {
        let fabrics = self.least_colours(f);
        let may = ways.into_iter().filter(|way| way.cost + others < best);
        let coloured = may.filter_map(|way| {
            let without = way.cost - fabrics;
            let cost = without + self.colours(f, way.set, best - others - without);
            (cost + others < best).then_some(Way { cost, ..way })
        });
        let mut ways: Vec<Way> = coloured.collect();
        ways.sort_by_key(|way| way.cost);
        ways
    }

    /// The least cost of any layout with these counts, which is at most `known`: a pair of a way to
    /// cover the front and one to cover the back is left out only where what it comes to at
    /// least, by sums that leave parts out, is no less than the best so far.
    /// Nothing where there are more pairs than [`PAIRS`].
    fn least(&self, known: i64) -> Option<i64> {
        let mut best = known;
        let [fronts, backs] = [self.ways(0), self.ways(1)];
        let (Some(front), Some(back)) = (fronts.first(), backs.first()) else {
            return Some(best);
        };
        let [front_least, back_least] = [front.cost, back.cost];
        let fronts = self.coloured(0, fronts, back_least, best);
        let front_least = fronts.first().map_or(front_least, |way| way.cost);
        let backs = self.coloured(1, backs, front_least, best);
        let back_n: usize = self.counts[1].iter().sum();
        let mut pairs = 0_u64;
        for front in &fronts {
            if backs.is_empty() || front.cost + backs[0].cost >= best {
                break;
            }
            let met = self.met(front.set);
            // What a fabric behind a place adds where it meets those in front.
            let adds: Vec<i64> = (0..self.kernel.len())
                .map(|x| {
                    self.met(1 << x)
                        .iter()
                        .zip(&met)
                        .map(|(a, b)| 90 * a * b)
                        .sum()
                })
                .collect();
            let mut sorted = adds.clone();
            sorted.sort_unstable();
            let least_added: i64 = sorted[..back_n].iter().sum();
            for back in &backs {
                if front.cost + back.cost + least_added >= best {
                    break;
                }
                pairs += 1;
                if pairs > PAIRS {
                    return None;
                }
                let (mut cost, mut rest) = (front.cost + back.cost, back.set);
                while rest != 0 {
                    cost += adds[rest.trailing_zeros() as usize];
                    rest &= rest - 1;
                }
                if let Some(most) = self.most.filter(|_| cost < best) {
                    let both = met.iter().zip(self.met(back.set)).map(|(a, b)| a + b);
                    cost += both.map(|n| 2500 * (n - most).max(0)).sum::<i64>();
                }
                best = best.min(cost);
            }
        }
        Some(best)
    }
}

/// All sets of `n` of so many places.
fn subsets(all: usize, n: usize) -> impl Iterator<Item = u32> {
    (0_u32..1 << all).filter(move |set| set.count_ones() as usize == n)
}

/// A second of search beside a long one.
fn large(seed: u64) {
    let mut rng = ChaCha8Rng::seed_from_u64(seed ^ 1);
    println!(
        "\n| Case | One second: mean, worst of 2 seeds | Twelve rounds: mean, worst; seconds | Best of the long searches |"
    );
    println!("| --- | --- | --- | --- |");
    for (across, down) in [(6, 8), (6, 8), (12, 16), (12, 16)] {
        let case = case(across, down, &mut rng);
        let run = |seed: u64, rounds: u32, seconds: f64| {
            let start = Instant::now();
            let mut arranger = Arranger::new(&case.throw, case.wishes, seed);
            while arranger.rounds() < rounds && start.elapsed().as_secs_f64() < seconds {
                arranger.round();
            }
            let counts = counts(&arranger.covers(), case.throw.prints.len());
            (arranger.cost(), start.elapsed().as_secs_f64(), counts)
        };
        let (mut second, mut twelve, mut seconds, mut longest) = (vec![], vec![], 0.0, vec![]);
        for n in 0..2 {
            // The long search of the same seed has the same counts.
            let long = run(n, u32::MAX, LONG);
            let quick = run(n, u32::MAX, 1.0);
            let rounds = run(n, ROUNDS, f64::MAX);
            assert_eq!(long.2, quick.2);
            let above = |cost: i64| 100.0 * (cost - long.0) as f64 / long.0 as f64;
            second.push(above(quick.0));
            twelve.push(above(rounds.0));
            seconds += rounds.1 / 2.0;
            longest.push(long.0);
        }
        let mean = |of: &[f64]| of.iter().sum::<f64>() / of.len() as f64;
        let most = |of: &[f64]| of.iter().copied().fold(f64::MIN, f64::max);
        println!(
            "| {} | {:.2} %, {:.2} % | {:.2} %, {:.2} %; {seconds:.1} s | {} |",
            case.name,
            mean(&second),
            most(&second),
            mean(&twelve),
            most(&twelve),
            longest.iter().min().expect("two"),
        );
    }
    // Costs are those that throws are judged by.
    let case = case(6, 8, &mut rng);
    let arranger = Arranger::new(&case.throw, case.wishes, 1);
    assert_eq!(
        of(&laid(&case.throw, &arranger), case.wishes).cost,
        arranger.cost()
    );
}

fn laid(throw: &Throw, arranger: &Arranger) -> Throw {
    let squares: Vec<Rect> = throw.assembly().whole().squares().collect();
    let faces = squares.into_iter().zip(arranger.covers()).collect();
    throw.after(&[Event::FacesChanged {
        faces,
        again: None,
        by_hand: None,
    }])
}
