//! Tests of the screens, in a file for each kind of screen; what they share is here.

use super::*;
use crate::cloth::fabric::Face;
use crate::command::Command;
use crate::faces::arrange::Arranger;
use crate::measure::{
    Count, Fraction, MetricUnit, Ruler, System, eighth_inches, inches, quarter_inches,
    sixty_fourths, tenths_of_mm, zero,
};
use crate::plan::assembly::{Kind, Rect};
use crate::plan::{JoinOrder, Joining, Plan};
use crate::show::parts::Button;
use crate::show::{Card, OutlineTyped, Picture, WorkView, ZoneName};
use crate::throw::Time;
use crate::throw::tasks::{Station, Task};
use crate::throw::wishes::Wishes;
use crate::words::Words;
use proptest::prelude::*;
use serde_json::Value;

mod beginning;
mod binding;
mod counts;
mod every_screen;
mod faces;
mod forged;
mod fours;
mod halves;
mod lessons;
mod more;
mod patches;
mod path;
mod pile;
mod plan;
mod reopened;
mod rows;
mod sewing;
mod whole;
mod wording;
mod work;

fn context(words: &Words) -> Context<'_> {
    Context {
        words,
        ruler: Ruler::default(),
        now: 10_000_000,
    }
}

fn begin(plan: Plan) -> Journal {
    let action = Command::Begin {
        name: "T".into(),
        plan,
        prints: crate::demo::prints(),
        denims: crate::demo::denims(),
    };
    Journal::begin(&action, 0).unwrap().0
}

fn act(journal: &mut Journal, action: &Command, at: Time) {
    let entry = journal
        .propose(action, at)
        .unwrap_or_else(|why| panic!("{action:?}: {why:?}"));
    journal.accept(entry).unwrap();
}

fn work_view(journal: &Journal, station: Option<Station>, context: Context<'_>) -> WorkView {
    match answer(
        journal,
        &Query::Work {
            station,
            batch: None,
        },
        context,
    ) {
        Ok(View::Work(view)) => view,
        other => panic!("{other:?}"),
    }
}

/// No view says a key instead of words, nor an argument that was not given.
fn words_are_whole(view: &impl serde::Serialize) {
    let json = serde_json::to_string(view).unwrap();
    assert!(!json.contains("{$") && !json.contains("{ $"), "{json}");
    for stem in [
        "title-", "how-", "tick-", "past-", "figure-", "spoken-", "did-", "error-", "stage-",
    ] {
        for task in ["cut", "dot", "stitch", "square", "mm", "open", "first"] {
            assert!(
                !json.contains(&format!("\"{stem}{task}\"")),
                "{stem}{task}: {json}"
            );
        }
    }
}

/// Nothing of a picture lies outside it.
fn drawn_within(picture: &Picture, of: &str) {
    use crate::show::Mark;
    let within = |x: f64, y: f64| {
        let slack = 1e-6;
        let fits = x >= -slack && x <= picture.width + slack;
        fits && y >= -slack && y <= picture.height + slack
    };
    for mark in &picture.marks {
        let inside = match mark {
            Mark::Area { x, y, w, h, .. } => {
                *w >= 0.0 && *h >= 0.0 && within(*x, *y) && within(x + w, y + h)
            }
            Mark::Line { x1, y1, x2, y2, .. } => within(*x1, *y1) && within(*x2, *y2),
            Mark::Words { x, y, .. } => within(*x, *y),
            Mark::Letters { at, .. } => at.iter().all(|[x, y]| within(*x, *y)),
            Mark::Shape { d, at, .. } => {
                let from = if at.is_empty() { &[[0.0; 2]][..] } else { at };
                let ends = from.iter().flat_map(|from| path_ends(d, *from));
                ends.into_iter().all(|[x, y]| within(x, y))
            }
        };
        assert!(
            inside,
            "{of}: {mark:?} in {} × {}",
            picture.width, picture.height
        );
    }
}

/// Where each line or curve of a path ends.
fn path_ends(d: &str, from: [f64; 2]) -> Vec<[f64; 2]> {
    let spaced: String = d
        .chars()
        .flat_map(|c| match c {
            c if c.is_ascii_alphabetic() => vec![' ', c, ' '],
            c => vec![c],
        })
        .collect();
    let (mut ends, mut at, mut begun) = (Vec::new(), from, from);
    let (mut order, mut given) = ('M', Vec::new());
    for word in spaced.split_whitespace() {
        match word.parse::<f64>() {
            Ok(number) => given.push(number),
            Err(_) => (order, given) = (word.chars().next().unwrap(), Vec::new()),
        }
        let [x, y] = if order.is_lowercase() { at } else { [0.0; 2] };
        at = match (order, &given[..]) {
            ('z', []) => begun,
            ('h' | 'H', [a]) => [x + a, at[1]],
            ('v' | 'V', [b]) => [at[0], y + b],
            ('m' | 'M' | 'l' | 'L' | 't', [a, b]) => [x + a, y + b],
            ('q', [_, _, a, b]) | ('a', [_, _, _, _, _, a, b]) => [x + a, y + b],
            _ => continue,
        };
        if order.eq_ignore_ascii_case(&'m') {
            begun = at;
        }
        given.clear();
        ends.push(at);
    }
    ends
}

/// No square is to get fabric, so that nobody asks.
fn all_denim(journal: &mut Journal) {
    let wishes = Wishes {
        front: Count::NONE,
        back: Count::NONE,
        ..Wishes::default()
    };
    act(journal, &Command::Wish { wishes }, 0);
}

/// A throw of so many squares, all of them bare denim.
fn bare_denim(across: u16, down: u16) -> Journal {
    let mut journal = begin(Plan {
        across,
        down,
        ..Plan::default()
    });
    all_denim(&mut journal);
    journal
}

/// Tick all pieces of a kind that are ready for a task.
fn all_ready(journal: &mut Journal, task: Task, kind: Kind, hour: Time) {
    let count = crate::command::ready_for(journal.throw(), kind, task).count() as u32;
    act(
        journal,
        &Command::TickNext {
            task,
            kind,
            count: Count::at_most(count),
        },
        hour * 3_600_000,
    );
}

/// A throw whose fours are all stitched and pressed, ready to be squared up.
fn stitched(across: u16, down: u16) -> Journal {
    use crate::plan::assembly::Kind;
    let mut journal = bare_denim(across, down);
    let mut hour = 0;
    let mut all = |journal: &mut Journal, task, kind| {
        hour += 1;
        all_ready(journal, task, kind, hour);
    };
    all(&mut journal, Task::Cut, Kind::Square);
    let join = [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch];
    for kind in [Kind::Pair, Kind::Four] {
        for task in join {
            all(&mut journal, task, kind);
        }
    }
    all(&mut journal, Task::PressBlock, Kind::Four);
    journal
}

fn sized(journal: &mut Journal, piece: Rect, width: i64, height: i64) {
    let (width, height) = (sixty_fourths(width), sixty_fourths(height));
    let action = Command::Measure {
        piece,
        width,
        height,
    };
    act(journal, &action, 1);
}

fn off_view(
    journal: &Journal,
    piece: Rect,
    why: Option<crate::throw::Mishap>,
) -> crate::show::OffView {
    let words = Words::english();
    match answer(journal, &Query::Off { piece, why }, context(&words)) {
        Ok(View::Off(view)) => view,
        other => panic!("{other:?}"),
    }
}

fn card_of(journal: &Journal, task: Task, kind: crate::plan::assembly::Kind) -> Card {
    let words = Words::english();
    let asked = Query::Work {
        station: None,
        batch: Some((task, kind)),
    };
    match answer(journal, &asked, context(&words)) {
        Ok(View::Work(view)) => *view.card.filter(|c| c.task == task).expect("ready"),
        other => panic!("{other:?}"),
    }
}

fn plain(lines: &[String]) -> String {
    lines.join(" ").replace('\u{a0}', " ")
}

const FOUR: crate::plan::assembly::Kind = crate::plan::assembly::Kind::Four;

/// 9 1/2 in, in sixty-fourths.
const FULL: i64 = 9 * 64 + 32;

/// Do a step to so many pieces of a kind.
fn next(journal: &mut Journal, task: Task, kind: crate::plan::assembly::Kind, count: u32) {
    act(
        journal,
        &Command::TickNext {
            task,
            kind,
            count: Count::at_most(count),
        },
        1,
    );
}

/// Squares cut, pairs and fours lapped and stitched, of a throw of 4 by 4 in bare denim.
fn four_fours() -> Journal {
    use crate::plan::assembly::Kind;
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        washes: 2,
        ..Plan::default()
    });
    next(&mut journal, Task::Cut, Kind::Square, 16);
    for (kind, count) in [(Kind::Pair, 8), (Kind::Four, 4)] {
        for task in [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch] {
            next(&mut journal, task, kind, count);
        }
    }
    journal
}

fn shown_work(journal: &Journal, words: &Words) -> WorkView {
    work_view(journal, None, context(words))
}

/// The button of a card that ticks most pieces.
fn for_all(card: &Card) -> &Button {
    let pieces = |button: &&Button| match &button.action {
        Command::Tick { pieces, .. } | Command::TickSitting { pieces, .. } => pieces.len(),
        Command::TickNext { count, .. } => count.get() as usize,
        _ => 0,
    };
    card.ticks.iter().max_by_key(pieces).expect("a tick")
}

/// The whole throw made, up to the first wash.
fn unwashed() -> Journal {
    let words = Words::english();
    let here = context(&words);
    let mut journal = four_fours();
    for _ in 0..200 {
        let view = work_view(&journal, None, here);
        let card = view.card.expect("something to do");
        if card.task == Task::Wash {
            return journal;
        }
        act(&mut journal, &for_all(&card).action, here.now);
    }
    panic!("never came to the wash");
}
