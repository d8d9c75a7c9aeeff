//! How long the answers take when reality differs, and how that grows.
//!
//! `cargo bench -p lapwork-core --bench replan`

use divan::Bencher;
use lapwork_core::assembly::Rect;
use lapwork_core::deed::ready;
use lapwork_core::faces::{Ground, spread};
use lapwork_core::measure::{Ruler, inch64};
use lapwork_core::plan::Plan;
use lapwork_core::show::{Lens, look};
use lapwork_core::tasks::{Station, Task};
use lapwork_core::throw::{Event, Throw};
use lapwork_core::trimming::choices;
use lapwork_core::view::Look;
use lapwork_core::words::Words;

fn main() {
    divan::main();
}

/// Squares across and down: 6 × 8, 30 × 30, 15 × 20 fours, 60 × 60.
const GRIDS: [(u16, u16); 4] = [(6, 8), (30, 30), (30, 40), (60, 60)];

fn events(across: u16, down: u16) -> Vec<Event> {
    let plan = Plan {
        across,
        down,
        ..Plan::default()
    };
    let prints = lapwork_core::demo::prints();
    let begun = Event::Begun {
        name: "b".into(),
        plan,
        prints,
        denims: vec![],
        after: None,
    };
    let mut out = vec![begun];
    let mut throw = Throw::begin(&out[0]).expect("a beginning");
    let blocks = throw.assembly().blocks();
    let in_block = |p: Rect| {
        blocks
            .iter()
            .any(|b| b.row == p.row / 2 * 2 && b.col == p.col / 2 * 2 && b.holds(p))
    };
    loop {
        let batch: Vec<(Rect, Task)> = ready(&throw)
            .filter(|(p, t)| in_block(*p) && !matches!(t, Task::PressBlock | Task::SquareUp))
            .collect();
        let Some((_, task)) = batch.first().copied() else {
            break;
        };
        let pieces = batch
            .into_iter()
            .filter(|(_, t)| *t == task)
            .map(|(p, _)| p)
            .collect();
        let event = Event::Done { task, pieces };
        throw.apply(&event, 0);
        out.push(event);
    }
    let natural = plan.natural_four();
    for (i, piece) in blocks.into_iter().enumerate() {
        // From 3/16 in under to 3/16 in over, never twice alike in a row.
        let off = |k: usize| inch64((k * 5 % 7) as i64 * 4 - 12);
        out.push(Event::Measured {
            piece,
            width: natural + off(i),
            height: natural + off(i + 3),
        });
    }
    out
}

fn folded(events: &[Event]) -> Throw {
    let mut throw = Throw::begin(&events[0]).expect("a beginning");
    for event in &events[1..] {
        throw.apply(event, 0);
    }
    throw
}

/// Every trim size tried, every short block saved: all blocks measured.
#[divan::bench(args = GRIDS)]
fn trim_sizes(bencher: Bencher, (across, down): (u16, u16)) {
    let throw = folded(&events(across, down));
    bencher.bench(|| choices(&throw, Ruler::default()));
}

/// The events of a throw folded to its state.
#[divan::bench(args = GRIDS)]
fn fold(bencher: Bencher, (across, down): (u16, u16)) {
    let events = events(across, down);
    bencher.bench(|| folded(&events));
}

/// One tick folded in, and the step screen made anew.
#[divan::bench(args = GRIDS)]
fn step_screen(bencher: Bencher, (across, down): (u16, u16)) {
    let events = events(across, down);
    let mut text = lapwork_core::journal::header_line("bench");
    for (i, event) in events.into_iter().enumerate() {
        let what = lapwork_core::journal::What::Do(vec![event]);
        text += &lapwork_core::journal::Entry {
            n: i as u64 + 1,
            at: 0,
            what,
        }
        .line();
    }
    let journal = lapwork_core::journal::Journal::read(text.as_bytes())
        .expect("sound")
        .journal;
    let words = Words::english();
    let lens = Lens {
        words: &words,
        ruler: Ruler::default(),
        now: 0,
    };
    let asked = Look::Work {
        station: Some(Station::Table),
        batch: None,
    };
    bencher.bench(|| look(&journal, &asked, lens).is_ok());
}

/// A third of the front and a quarter of the back spread evenly.
#[divan::bench(args = GRIDS)]
fn spread_faces(bencher: Bencher, (across, down): (u16, u16)) {
    let throw = folded(&events(across, down)[..1]);
    let n = throw.covers().len();
    let fixed = vec![[false; 2]; n];
    let ground = Ground {
        across,
        down,
        covers: throw.covers(),
        fixed: &fixed,
        prints: &throw.prints,
    };
    bencher.bench(|| spread(ground, n as u32 / 3, n as u32 / 4, 1));
}
