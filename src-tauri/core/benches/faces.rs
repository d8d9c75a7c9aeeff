//! How much better the faces are laid out than by shuffling or by filling greedily.
//!
//! `cargo bench -p lapwork-core --bench faces` prints a table over 100 seeds: like
//! neighbours (both faces together, corners included), unevenness of the covered
//! squares and of each print (100 is chance, both faces averaged), and the mean over
//! crossings of the squared number of fabrics that meet there. Then how the cost falls
//! with time. Last, layouts of fabrics and denims at once, for each size and wish: when the
//! first answer is there, and what comes of twelve rounds; `-- denims` prints only this.

use lapwork_core::cloth::fabric::{Cover, Denim};
use lapwork_core::cloth::pile::Use;
use lapwork_core::command::{Command, decide};
use lapwork_core::demo;
use lapwork_core::faces::arrange::{Arranger, Score, of};
use lapwork_core::faces::spread::{Ground, spread};
use lapwork_core::measure::Count;
use lapwork_core::plan::assembly::Rect;
use lapwork_core::throw::wishes::{DenimWish, Pattern, Wishes};
use lapwork_core::throw::{Event, Throw};
use rand::SeedableRng;
use rand::seq::SliceRandom;
use rand_chacha::ChaCha8Rng;
use std::time::Instant;

fn main() {
    let only = |name: &str| std::env::args().any(|arg| arg == name);
    if !only("denims") {
        fabrics();
    }
    denims();
}

/// Fabrics and denims at once, three denims on the pile.
fn denims() {
    println!(
        "\n| Squares | Denims | First answer, ms | 12 rounds, ms | Cost at first | … then | Like fabrics | Like denims side by side | Patches of denim | Out of order |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |"
    );
    for (across, down) in [(6, 8), (12, 16), (30, 30), (60, 60)] {
        let throw = with_pile(across, down);
        for (name, denims, pattern) in [
            ("apart", DenimWish::Apart, Pattern::Free),
            ("together", DenimWish::Bands, Pattern::Free),
            ("light at the top", DenimWish::Any, Pattern::ShadeRows),
            ("light edges, apart", DenimWish::Apart, Pattern::LightEdges),
        ] {
            let wishes = Wishes {
                denims: Some(denims),
                pattern,
                ..wishes(&throw)
            };
            let start = Instant::now();
            let mut arranger = Arranger::new(&throw, wishes, 1);
            arranger.round();
            let first = (start.elapsed().as_secs_f64() * 1e3, arranger.cost());
            for _ in 1..12 {
                arranger.round();
            }
            let all = start.elapsed().as_secs_f64() * 1e3;
            let score = arranger.score();
            println!(
                "| {across} × {down} | {name} | {:.1} | {all:.0} | {} | {} | {} | {} | {} | {} |",
                first.0,
                first.1,
                arranger.cost(),
                score.alike[0].len() + score.alike[1].len(),
                score.denims_alike,
                score.denim_parts.0,
                score.off_pattern,
            );
        }
    }
}

/// A throw of three denims, as much of each on the pile as makes half, a third and a fifth.
fn with_pile(across: u16, down: u16) -> Throw {
    let mut throw = begun(across, down);
    let mut denims = demo::denims();
    denims.push(Denim {
        name: "Worn jeans".into(),
        colour: "#55708f".into(),
    });
    let cloth = Event::ClothChanged {
        prints: throw.prints.clone(),
        denims,
    };
    throw.apply(&cloth, 0);
    for (denim, part) in [2, 3, 5].into_iter().enumerate() {
        let action = Command::AddPack {
            side: throw.plan.side,
            count: Count::at_most(throw.plan.squares() / part + 1),
            makes: Use::Denim {
                denim: Some(denim as u8),
            },
            name: "Squares".into(),
            mixed: false,
        };
        for event in decide(Some(&throw), &action).expect("it goes on the pile") {
            throw.apply(&event, 0);
        }
    }
    throw
}

fn fabrics() {
    let seeds = 100;
    println!(
        "| Squares | How | Like neighbours: mean, most | Unevenness | … of each print | Fabrics² at a crossing | Cost |"
    );
    println!("| --- | --- | --- | --- | --- | --- | --- |");
    for (across, down) in [(6, 8), (12, 16), (30, 30)] {
        let throw = begun(across, down);
        let wishes = wishes(&throw);
        let mut lines = [Sum::default(), Sum::default(), Sum::default()];
        for seed in 0..seeds {
            let filled = covered(&throw, wishes, seed);
            lines[0].add(&with(&throw, &shuffled(&filled, seed)), wishes);
            lines[1].add(&with(&throw, &filled), wishes);
            let mut arranger = Arranger::new(&throw, wishes, seed);
            while !arranger.settled() && arranger.rounds() < 8 {
                arranger.round();
            }
            lines[2].add(&with(&throw, &arranger.covers()), wishes);
        }
        for (name, line) in ["shuffled", "greedy fill", "arranged, 8 rounds"]
            .iter()
            .zip(&lines)
        {
            line.print(across, down, name, seeds);
        }
    }
    println!(
        "\n| Squares | Round | ms | Cost | Like neighbours |\n| --- | --- | --- | --- | --- |"
    );
    for (across, down) in [(12, 16), (30, 30), (60, 60)] {
        let throw = begun(across, down);
        let wishes = wishes(&throw);
        let start = Instant::now();
        let mut arranger = Arranger::new(&throw, wishes, 1);
        for _ in 0..12 {
            let score = arranger.score();
            println!(
                "| {across} × {down} | {} | {:.1} | {} | {} |",
                arranger.rounds(),
                start.elapsed().as_secs_f64() * 1e3,
                arranger.cost(),
                score.alike[0].len() + score.alike[1].len()
            );
            arranger.round();
        }
    }
}

fn begun(across: u16, down: u16) -> Throw {
    let action = demo::begin("Table", across, down);
    let events = decide(None, &action).expect("the plan can be made");
    Throw::begin(&events[0]).expect("it begins")
}

/// A third of the front, a quarter of the back.
fn wishes(throw: &Throw) -> Wishes {
    Wishes {
        front: Count::at_most(throw.plan.squares() / 3),
        back: Count::at_most(throw.plan.squares() / 4),
        ..Wishes::default()
    }
}

fn covered(throw: &Throw, wishes: Wishes, seed: u64) -> Vec<Cover> {
    let fixed = vec![[false; 2]; throw.covers().len()];
    let ground = Ground {
        across: throw.plan.across,
        down: throw.plan.down,
        covers: throw.covers(),
        fixed: &fixed,
        prints: &throw.prints,
    };
    spread(ground, wishes.front.get(), wishes.back.get(), seed)
}

/// The same fabrics, each face shuffled.
fn shuffled(covers: &[Cover], seed: u64) -> Vec<Cover> {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let mut fronts: Vec<_> = covers.iter().map(|c| c.front).collect();
    let mut backs: Vec<_> = covers.iter().map(|c| c.back).collect();
    fronts.shuffle(&mut rng);
    backs.shuffle(&mut rng);
    let both = fronts.into_iter().zip(backs);
    both.map(|(front, back)| Cover {
        front,
        back,
        ..Cover::default()
    })
    .collect()
}

fn with(throw: &Throw, covers: &[Cover]) -> Throw {
    let squares: Vec<Rect> = throw.assembly().whole().squares().collect();
    let faces = squares.into_iter().zip(covers.iter().copied()).collect();
    throw.after(&[Event::FacesChanged {
        faces,
        again: None,
        by_hand: None,
    }])
}

#[derive(Default)]
struct Sum {
    alike: usize,
    most: usize,
    uneven: u32,
    prints: u32,
    thick: f64,
    cost: i64,
}

impl Sum {
    fn add(&mut self, throw: &Throw, wishes: Wishes) {
        let score: Score = of(throw, wishes);
        let alike = score.alike[0].len() + score.alike[1].len();
        self.alike += alike;
        self.most = self.most.max(alike);
        self.uneven += score.uneven[0] + score.uneven[1];
        self.prints += score.prints_uneven[0] + score.prints_uneven[1];
        self.thick += score.thickness;
        self.cost += score.cost;
    }

    fn print(&self, across: u16, down: u16, name: &str, seeds: u64) {
        let mean = |n: f64| n / seeds as f64;
        println!(
            "| {across} × {down} | {name} | {:.1}, {} | {:.1} | {:.1} | {:.2} | {:.0} |",
            mean(self.alike as f64),
            self.most,
            mean(f64::from(self.uneven)) / 2.0,
            mean(f64::from(self.prints)) / 2.0,
            mean(self.thick),
            mean(self.cost as f64),
        );
    }
}
