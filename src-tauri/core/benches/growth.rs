//! How long what the window asks for most takes, at three sizes of throw.
//!
//! `cargo bench -p lapwork-core --bench growth`

mod made;

use divan::Bencher;
use lapwork_core::cloth::cutting::{Cutting, Pile, bound, free_yield, naive};
use lapwork_core::cloth::fabric::Face;
use lapwork_core::cloth::garments::{Garment, Source};
use lapwork_core::cloth::pile::{Heap, Use};
use lapwork_core::cloth::weight::Cloth;
use lapwork_core::command::{Command, ready};
use lapwork_core::faces::arrange::Arranger;
use lapwork_core::fitting::trimming::choices;
use lapwork_core::log::journal::Journal;
use lapwork_core::measure::{Count, Ruler};
use lapwork_core::plan::Plan;
use lapwork_core::show::{Drag, GridWish, Handle, Query, View};
use lapwork_core::show::{answer, draft, draft_of, grids, head};
use lapwork_core::throw::Event;
use lapwork_core::throw::wishes::Wishes;
use made::{GRIDS, context, events, file, folded, jeans, journal};

fn main() {
    println!("sent to the window after a tick, in bytes:");
    for (across, down) in GRIDS {
        println!("  {across} × {down}: {}", sent(&half(across, down)));
    }
    divan::main();
}

/// Bytes of what the window is sent after a tick: the head, and the step screen.
fn sent(journal: &Journal) -> usize {
    let screen = answer(journal, &STEP, context()).expect("the screen");
    let head = serde_json::to_string(&head(journal, context())).expect("JSON");
    let screen = serde_json::to_string(&screen).expect("JSON");
    head.len() + screen.len()
}

const STEP: Query = Query::Work {
    station: None,
    batch: None,
};

/// Half of what happens until every four is measured: some squares are cut, some sewn.
fn half(across: u16, down: u16) -> Journal {
    let mut events = events(across, down);
    events.truncate(events.len() / 2);
    journal(events)
}

/// A throw file read from its first line to its last: every checksum, every event folded.
#[divan::bench(args = GRIDS)]
fn fold_file(bencher: Bencher, (across, down): (u16, u16)) {
    let text = file(events(across, down));
    bencher.bench(|| Journal::read(text.as_bytes()).is_ok());
}

/// One tick: asked for, checked, folded in. The disk is not in it.
#[divan::bench(args = GRIDS)]
fn tick(bencher: Bencher, (across, down): (u16, u16)) {
    let journal = half(across, down);
    let ticks: Vec<Command> = ready(journal.throw())
        .take(2)
        .map(|(piece, task)| Command::Tick {
            task,
            pieces: vec![piece],
        })
        .collect();
    let take = |journal: &mut Journal, tick: &Command| {
        let entry = journal.propose(tick, 0).expect("it is ready");
        journal.accept(entry)
    };
    bencher
        .with_inputs(|| {
            // A copy has no room to grow; after one tick it has, as any journal in use.
            let mut journal = journal.clone();
            take(&mut journal, &ticks[0]);
            journal
        })
        .bench_local_refs(|journal| take(journal, &ticks[1]));
}

/// The step screen made.
#[divan::bench(args = GRIDS)]
fn step_screen(bencher: Bencher, (across, down): (u16, u16)) {
    let journal = half(across, down);
    bencher.bench(|| answer(&journal, &STEP, context()).is_ok());
}

/// The screen with a face on it, every square drawn.
#[divan::bench(args = GRIDS)]
fn face_screen(bencher: Bencher, (across, down): (u16, u16)) {
    let journal = half(across, down);
    let asked = Query::Faces { face: Face::Back };
    bencher.bench(|| answer(&journal, &asked, context()).is_ok());
}

/// A plan typed, and all its figures.
#[divan::bench(args = GRIDS)]
fn plan(bencher: Bencher, (across, down): (u16, u16)) {
    let typed = draft_of(
        &Plan {
            across,
            down,
            ..Plan::default()
        },
        context(),
    );
    bencher.bench(|| draft(&typed, context()));
}

/// From the squares at hand to the grids that come closest.
#[divan::bench(args = GRIDS)]
fn plan_from_squares(bencher: Bencher, (across, down): (u16, u16)) {
    let typed = draft_of(&Plan::default(), context());
    let wish = GridWish::Squares {
        have: (u32::from(across) * u32::from(down)).to_string(),
    };
    bencher.bench(|| grids(&typed, &wish, context()));
}

/// The first good layout of both faces: a third of the front, a quarter of the back.
#[divan::bench(args = GRIDS)]
fn arrange(bencher: Bencher, (across, down): (u16, u16)) {
    let throw = folded(&events(across, down)[..1]);
    let squares = throw.plan.squares();
    let wishes = Wishes {
        front: Count::at_most(squares / 3),
        back: Count::at_most(squares / 4),
        ..Wishes::default()
    };
    bencher.bench(|| {
        let mut arranger = Arranger::new(&throw, wishes, 1);
        arranger.round();
        arranger.cost()
    });
}

/// A pile of so many pairs of jeans laid out.
#[divan::bench(args = [2, 8, 32])]
fn cut(bencher: Bencher, pairs: usize) {
    let pair = |i: usize| {
        Source::Cloth(Garment {
            name: format!("pair {i}"),
            pieces: jeans(i),
            start: None,
        })
    };
    let sources: Vec<Source> = (0..pairs).map(pair).collect();
    bencher.bench(|| Pile::lay_out(&sources, Cutting::default()).total());
}

/// Every four measured: every size to square up to tried, every short four saved.
#[divan::bench(args = GRIDS)]
fn square_up(bencher: Bencher, (across, down): (u16, u16)) {
    let throw = folded(&events(across, down));
    bencher.bench(|| choices(&throw, Ruler::default()));
}

/// A leg of so many pairs on the pile, a point of its outline and so many binding strips shown.
fn leg(pairs: usize) -> (Journal, Handle, Count) {
    let mut events = events(12, 16);
    events.truncate(1);
    events.extend((0..pairs).map(|i| Event::HeapSet {
        n: i as u16 + 1,
        heap: Heap::new(
            Source::Cloth(Garment {
                name: format!("pair {i}"),
                pieces: jeans(i),
                start: None,
            }),
            Use::ANY_DENIM,
            Cloth::denim(),
        ),
    }));
    let journal = journal(events);
    let Ok(View::Cutting(page)) = answer(&journal, &cutting(None), context()) else {
        panic!("a page")
    };
    let handle = page.handles[1];
    let strips = Count::at_most(page.expected_strips);
    (journal, handle, strips)
}

fn cutting(drag: Option<Drag>) -> Query {
    Query::Cutting {
        n: 1,
        index: 0,
        typed: None,
        drag,
    }
}

/// The answers to a point of a leg that goes from place to place, still held or let go each time.
fn dragged(bencher: Bencher, pairs: usize, held: bool) {
    let (journal, handle, strips) = leg(pairs);
    let mut moved = 0;
    bencher.bench_local(|| {
        moved = (moved + 7) % 60;
        let drag = Drag {
            station: handle.station,
            x: handle.x - f64::from(moved),
            y: handle.y,
            held_strips: held.then_some(strips),
        };
        answer(&journal, &cutting(Some(drag)), context()).is_ok()
    });
}

/// While it is held.
#[divan::bench(args = [2, 8, 32])]
fn drag_held(bencher: Bencher, pairs: usize) {
    dragged(bencher, pairs, true);
}

/// Once it is let go: the whole pile is shared out anew.
#[divan::bench(args = [2, 8, 32])]
fn drag_let_go(bencher: Bencher, pairs: usize) {
    dragged(bencher, pairs, false);
}

/// What is worked out of the leg only once it is let go: what else could be cut of it.
#[divan::bench]
fn drag_compared(bencher: Bencher) {
    let (leg, how) = (jeans(0).swap_remove(0), Cutting::default());
    bencher.bench(|| (naive(&leg, &how), free_yield(&leg, &how), bound(&leg, &how)));
}
