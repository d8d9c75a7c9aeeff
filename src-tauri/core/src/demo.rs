//! A throw to look round in, part-way done: a scenario of our own.
//!
//! A window-seat throw, 6 × 8, from two pairs of worn jeans. Most squares are cut and
//! covered, the first fours are sewn, one has stretched, one square was scorched, and
//! a pair lies cooling. It is made with the same actions a maker would take, so it can
//! be undone step by step.

use crate::cloth::fabric::{Cover, Denim, Print, Texture};
use crate::cloth::garments::{GarmentKind, GarmentSize};
use crate::cloth::pile::Use;
use crate::command::{Command, ready};
use crate::log::journal::Journal;
use crate::measure::{Count, Length, half_inches, sixty_fourths};
use crate::plan::Plan;
use crate::plan::assembly::{Kind, Rect};
use crate::plan::scraps::{Scrap, ScrapVerdict};
use crate::throw::tasks::Task;
use crate::throw::wishes::{Layout, Wishes};
use crate::throw::{Mishap, Time};
use crate::words::Words;

const MINUTE: Time = 60_000;
const DAY: Time = 24 * 60 * MINUTE;

/// The fabrics of the demo throw in front, a letter each: a layout that a search found once, kept
/// so that the demo stays as it is.
const FRONT: [&str; 8] = [
    "d.c...", "b..a..", "....ca", "c..b..", "..a..d", ".c...b", ".a.c..", "..b.a.",
];

/// Those behind, seen from the front.
const BACK: [&str; 8] = [
    ".....b", "..d.a.", "c.....", ".ba...", ".....d", "a..c..", "...b..", ".a..c.",
];

/// The fabrics a new throw begins with, to be renamed; in English.
pub fn prints() -> Vec<Print> {
    prints_in(&Words::english())
}

/// The fabrics a new throw begins with, to be renamed.
pub fn prints_in(words: &Words) -> Vec<Print> {
    [
        (say!(words, "demo-fabric-1"), "#b8442f", Texture::Dot),
        (say!(words, "demo-fabric-2"), "#d9a441", Texture::Stripe),
        (say!(words, "demo-fabric-3"), "#6b7f3f", Texture::Sprig),
        (say!(words, "demo-fabric-4"), "#2f7f86", Texture::Check),
    ]
    .map(|(name, colour, texture)| Print {
        name,
        colour: colour.into(),
        texture,
        stock: None,
        uncut: false,
        mixed: false,
        patch: None,
        photo: None,
    })
    .into()
}

/// The denims a new throw begins with; in English.
pub fn denims() -> Vec<Denim> {
    denims_in(&Words::english())
}

/// The denims a new throw begins with.
pub fn denims_in(words: &Words) -> Vec<Denim> {
    [
        (say!(words, "demo-denim-1"), "#2c3e5c"),
        (say!(words, "demo-denim-2"), "#7d95b3"),
    ]
    .map(|(name, colour)| Denim {
        name,
        colour: colour.into(),
    })
    .into()
}

/// Puts actions into a journal, one after another, some minutes apart.
struct Maker {
    journal: Journal,
    at: Time,
}

impl Maker {
    /// Take an action `minutes` after the one before. The scenario is checked by a
    /// test, so one that is refused is left out rather than met with a panic.
    fn act(&mut self, minutes: Time, action: &Command) {
        self.at += minutes * MINUTE;
        if let Ok(entry) = self.journal.propose(action, self.at) {
            let _ = self.journal.accept(entry);
        }
    }

    fn tick(&mut self, minutes: Time, task: Task, kind: Kind, count: u16) {
        let count = count.into();
        self.act(minutes, &Command::TickNext { task, kind, count });
    }

    /// Lap, press, cool and stitch the first `count` joins of a kind.
    fn join(&mut self, kind: Kind, count: u16) {
        for (minutes, task) in [
            (12, Task::Dot),
            (4, Task::PressLap),
            (8, Task::CoolLap),
            (15, Task::Stitch),
        ] {
            self.tick(minutes, task, kind, count);
        }
    }

    fn measure(&mut self, four: [u16; 4], width: Length, height: Length) {
        self.act(
            2,
            &Command::Measure {
                piece: Rect::from(four),
                width,
                height,
            },
        );
    }
}

/// What begins a throw of so many squares, with these fabrics and denims.
pub fn begin(name: &str, across: u16, down: u16) -> Command {
    Command::Begin {
        name: name.into(),
        plan: Plan {
            across,
            down,
            ..Plan::default()
        },
        prints: prints(),
        denims: denims(),
    }
}

/// The demo throw, as if worked on until `now`; its names are English.
pub fn throw(now: Time) -> Journal {
    throw_in(&Words::english(), now)
}

/// The demo throw, as if worked on until `now` by someone of that language.
///
/// # Panics
/// Never: its plan is the default one, which can be made.
pub fn throw_in(words: &Words, now: Time) -> Journal {
    let mut prints = prints_in(words);
    for (print, stock) in prints.iter_mut().zip([12, 10, 12, 8]) {
        print.stock = Some(Count::from(stock));
    }
    let begin = Command::Begin {
        name: say!(words, "demo-name"),
        plan: Plan::default(),
        prints,
        denims: denims_in(words),
    };
    let at = now - 3 * DAY;
    let (journal, _) = Journal::begin(&begin, at).expect("the default plan can be made");
    let mut maker = Maker { journal, at };
    let lighter = maker
        .journal
        .throw()
        .assembly()
        .whole()
        .squares()
        .filter(|s| (s.row * 5 + s.col * 3) % 7 < 3)
        .collect();
    maker.act(
        4,
        &Command::SetDenim {
            pieces: lighter,
            denim: 1,
            wrong_side_up: false,
        },
    );
    let wishes = Wishes {
        front: Count::from(16),
        back: Count::from(12),
        ..Wishes::default()
    };
    let laid = |square: Rect| {
        let on = |face: [&str; 8]| {
            let letter = face[usize::from(square.row)].as_bytes()[usize::from(square.col)];
            letter.checked_sub(b'a')
        };
        Cover {
            front: on(FRONT),
            back: on(BACK),
            ..maker.journal.throw().cover(square)
        }
    };
    let squares = maker.journal.throw().assembly().whole().squares();
    let layout = Layout {
        faces: squares.map(|square| (square, laid(square))).collect(),
        ..Layout::default()
    };
    maker.act(6, &Command::LayOut { wishes, layout });
    let garments = [say!(words, "demo-garment-1"), say!(words, "demo-garment-2")];
    let sizes = [GarmentSize::Large, GarmentSize::Medium];
    for ((denim, name), size) in (0..).zip(garments).zip(sizes) {
        maker.act(
            2,
            &Command::AddGarment {
                kind: GarmentKind::MensJeans,
                size: Some(size),
                knees: None,
                system: None,
                makes: Use::Denim { denim: Some(denim) },
                name,
            },
        );
    }
    // A quarter inch leaves too little fringe for a 4 mm twin needle; half an inch is right.
    for (lap, verdict) in [(16, ScrapVerdict::LittleFringe), (32, ScrapVerdict::Right)] {
        let plan = Plan::default();
        let scrap = Scrap {
            joining: plan.joining,
            lap: sixty_fourths(lap),
            stitch: plan.stitch,
            verdict,
            note: String::new(),
        };
        maker.act(12, &Command::TryScrap { scrap });
    }
    for (n, index, squares) in [(1, 0, 14), (1, 1, 13), (2, 0, 11), (2, 1, 12)] {
        let squares = Count::from(squares);
        maker.act(
            14,
            &Command::CutPiece {
                n,
                index,
                squares,
                pieced: None,
                by_strip: Vec::new(),
                strips: None,
                outline: None,
            },
        );
    }
    maker.act(
        1,
        &Command::Note {
            text: say!(words, "demo-note-leg"),
            piece: None,
            task: Some(Task::Cut),
            next: false,
        },
    );
    for task in [Task::CoverFront, Task::CoverBack] {
        maker.tick(20, task, Kind::Square, 48);
    }
    maker.at = now - DAY;
    maker.tick(9, Task::PressCover, Kind::Square, 48);
    maker.tick(12, Task::CoolCover, Kind::Square, 48);
    // The first two rows of fours.
    maker.join(Kind::Pair, 12);
    maker.join(Kind::Four, 6);
    maker.tick(6, Task::PressBlock, Kind::Four, 6);
    let four = half_inches(19);
    maker.measure([0, 0, 2, 2], four, four);
    maker.measure([0, 2, 2, 2], four, four + sixty_fourths(4));
    maker.measure(
        [0, 4, 2, 2],
        four + sixty_fourths(10),
        four + sixty_fourths(4),
    );
    maker.act(
        1,
        &Command::Note {
            text: say!(words, "demo-note-four"),
            piece: Some(Rect::from([0, 4, 2, 2])),
            task: Some(Task::SquareUp),
            next: false,
        },
    );
    maker.act(
        3,
        &Command::Tick {
            task: Task::SquareUp,
            pieces: vec![Rect::from([0, 0, 2, 2])],
        },
    );
    maker.act(
        5,
        &Command::Spoil {
            piece: Rect::square(6, 3),
            why: Mishap::Scorched,
        },
    );
    // One more pair, pressed a minute ago.
    let pair = ready(maker.journal.throw())
        .map(|(p, _)| p)
        .find(|p| p.count() == 2);
    if let Some(pair) = pair {
        maker.at = now - 4 * MINUTE;
        maker.act(
            1,
            &Command::Tick {
                task: Task::Dot,
                pieces: vec![pair],
            },
        );
        maker.act(
            2,
            &Command::Tick {
                task: Task::PressLap,
                pieces: vec![pair],
            },
        );
    }
    maker.journal
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::throw::Throw;

    #[test]
    fn the_scenario_is_as_told() {
        let journal = throw(1_800_000_000_000);
        let t: &Throw = journal.throw();
        let fours = t
            .assembly()
            .blocks()
            .iter()
            .filter(|b| t.has(**b, Task::Stitch))
            .count();
        assert_eq!(
            (fours, t.measured.len(), t.losses.len(), t.spares),
            (6, 3, 1, Count::from(2))
        );
        assert!(t.has(Rect::from([0, 0, 2, 2]), Task::SquareUp));
        assert!(!t.has(Rect::square(6, 3), Task::Cut));
        assert_eq!(
            t.worked()
                .filter(|(_, w)| w.done.last().is_some_and(|d| d.0 == Task::PressLap))
                .count(),
            1
        );
        assert!(
            journal
                .entries()
                .all(|(e, stands)| stands && e.at <= 1_800_000_000_000)
        );
    }
}
