//! Throws for the benches: begun, ticked through and measured without a window.
//!
//! Each bench uses what it needs of them.
#![allow(dead_code)]

use lapwork_core::cloth::garments::{GarmentKind, GarmentSize, Guess, Piece, start};
use lapwork_core::command::ready;
use lapwork_core::log::journal::{Entry, Journal, What, header_line};
use lapwork_core::measure::{System, sixty_fourths};
use lapwork_core::plan::Plan;
use lapwork_core::plan::assembly::Rect;
use lapwork_core::show::Context;
use lapwork_core::throw::tasks::Task;
use lapwork_core::throw::{Event, Throw};
use lapwork_core::words::Words;
use std::sync::LazyLock;

/// Squares across and down: a lap rug, a bed throw, and the most a plan may have.
pub const GRIDS: [(u16, u16); 3] = [(6, 8), (12, 16), (60, 60)];

/// The legs of the `i`th pair of jeans: of all kinds and sizes in turn.
pub fn jeans(i: usize) -> Vec<Piece> {
    let kinds = [
        GarmentKind::MensJeans,
        GarmentKind::WomensJeans,
        GarmentKind::ChildsJeans,
    ];
    let sizes = [GarmentSize::Small, GarmentSize::Medium, GarmentSize::Large];
    start(kinds[i % 3], sizes[i / 3 % 3], Guess::Typical, System::Inch)
}

/// How the benches see a throw: in English, in inches.
pub fn context() -> Context<'static> {
    static WORDS: LazyLock<Words> = LazyLock::new(Words::english);
    Context {
        words: &WORDS,
        ruler: Default::default(),
        now: 0,
    }
}

/// A throw file with these in it, an entry each.
pub fn file(events: Vec<Event>) -> String {
    let mut text = header_line("bench");
    for (n, event) in (1..).zip(events) {
        let what = What::Do(vec![event]);
        text += &Entry { n, at: 0, what }.line();
    }
    text
}

/// The record in such a file.
pub fn journal(events: Vec<Event>) -> Journal {
    Journal::read(file(events).as_bytes())
        .expect("sound")
        .journal
}

/// What happens until every four is sewn and measured, each piece ticked by itself.
pub fn events(across: u16, down: u16) -> Vec<Event> {
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
        let pieces: Vec<Rect> = batch
            .into_iter()
            .filter(|(_, t)| *t == task)
            .map(|(p, _)| p)
            .collect();
        out.extend(pieces.iter().map(|piece| Event::Done {
            task,
            pieces: vec![*piece],
            made: vec![],
        }));
        let made = vec![];
        throw.apply(&Event::Done { task, pieces, made }, 0);
    }
    let natural = plan.natural_four();
    for (i, piece) in blocks.into_iter().enumerate() {
        // From 3/16 in under to 3/16 in over, never twice alike in a row.
        let off = |k: usize| sixty_fourths((k * 5 % 7) as i64 * 4 - 12);
        out.push(Event::Measured {
            piece,
            width: natural + off(i),
            height: natural + off(i + 3),
        });
    }
    out
}

/// The state these come to.
pub fn folded(events: &[Event]) -> Throw {
    let mut throw = Throw::begin(&events[0]).expect("a beginning");
    for event in &events[1..] {
        throw.apply(event, 0);
    }
    throw
}
