//! What is promised of a record, for any steps; other tests make their records here too.

use super::*;
use crate::cloth::fabric::Face;
use crate::command::{Command, Rejection};
use crate::measure::Count;
use crate::measure::{half_inches, sixty_fourths};
use crate::plan::Plan;
use crate::plan::assembly::Rect;
use crate::throw::counted::{FOLDED, INDEXED};
use crate::throw::index::WorkIndex;
use crate::throw::tasks::Task;
use crate::throw::{Event, Mishap, Time};
use proptest::prelude::*;

pub(crate) fn begin(across: u16, down: u16) -> Journal {
    let plan = Plan {
        across,
        down,
        ..Plan::default()
    };
    let print = crate::cloth::fabric::Print {
        name: "Dots".into(),
        colour: "#aa5500".into(),
        texture: crate::cloth::fabric::Texture::Dot,
        stock: None,
        uncut: false,
        mixed: false,
        patch: None,
        photo: None,
    };
    let action = Command::Begin {
        name: "Test".into(),
        plan,
        prints: vec![print],
        denims: vec![],
    };
    Journal::begin(&action, 0).unwrap().0
}

fn act(journal: &mut Journal, action: &Command, at: Time) -> Result<(), Rejection> {
    let entry = journal.propose(action, at)?;
    journal.accept(entry).unwrap();
    Ok(())
}

/// Some allowed (or refused) step, picked by numbers.
pub(crate) fn step(journal: &mut Journal, (what, pick): (u8, u32), at: Time) {
    let throw = journal.throw();
    let pieces: Vec<Rect> = throw.assembly().pieces().collect();
    let piece = pieces[pick as usize % pieces.len()];
    let squares: Vec<Rect> = throw.assembly().whole().squares().collect();
    let open: Vec<Rect> = pieces
        .iter()
        .copied()
        .filter(|p| throw.waits_for(*p).is_none() && !throw.complete(*p))
        .collect();
    let action = match what {
        0 => {
            let entry = journal.propose_undo(at);
            let _ = entry.map(|e| journal.accept(e).unwrap());
            return;
        }
        1 => {
            let entry = journal.propose_redo(at);
            let _ = entry.map(|e| journal.accept(e).unwrap());
            return;
        }
        2 => Command::Spoil {
            piece,
            why: Mishap::Scorched,
        },
        3 => Command::SetFace {
            pieces: vec![piece],
            face: Face::Back,
            print: Some(0),
            laid_on: false,
        },
        4 => Command::ChangePlan {
            plan: Plan {
                lap: sixty_fourths(24 + i64::from(pick % 16)),
                ..throw.plan
            },
        },
        5 => Command::Measure {
            piece,
            width: sixty_fourths(600 + i64::from(pick % 20)),
            height: half_inches(19),
        },
        6 => Command::Replace {
            piece,
            why: Mishap::Flaw,
            spare: pick % 2 == 0,
            denim: [None, Some(0), Some(1)][pick as usize / 2 % 3],
            from: (pick % 5 == 0).then(|| squares[pick as usize / 5 % squares.len()]),
        },
        7 => Command::Unpick {
            pieces: vec![piece],
            lap: (pick % 3 == 0).then_some(sixty_fourths(28)),
        },
        8 => match pick % 8 {
            0 => Command::ChangePlan {
                plan: Plan {
                    across: 1 + (pick / 5 % 5) as u16,
                    down: 1 + (pick / 25 % 5) as u16,
                    ..throw.plan
                },
            },
            1 => Command::ChooseTrim {
                trim: sixty_fourths(592 + i64::from(pick / 5 % 17)),
                step: None,
            },
            2 => Command::Patch {
                piece,
                face: Face::Front,
                print: 0,
                why: Mishap::Flaw,
            },
            3 => Command::SetAside { piece },
            4 => Command::Turn {
                piece,
                quarters: 1 + (pick / 8 % 3) as u8,
            },
            5 => Command::Flip {
                pieces: vec![piece],
            },
            6 => Command::Pin {
                pieces: vec![piece],
                pinned: pick / 8 % 2 == 0,
            },
            _ => {
                let blocks = throw.assembly().blocks();
                let b = blocks[pick as usize / 5 % blocks.len()];
                Command::Swap { a: piece, b }
            }
        },
        9 => match pick % 6 {
            0 => Command::AddGarment {
                kind: crate::cloth::garments::GarmentKind::Skirt,
                size: Some(crate::cloth::garments::GarmentSize::Small),
                knees: None,
                system: None,
                makes: if pick % 4 == 0 {
                    let denim = [None, Some(0), Some(1)][pick as usize / 24 % 3];
                    crate::cloth::pile::Use::Denim { denim }
                } else {
                    crate::cloth::pile::Use::Fabric { print: 0 }
                },
                name: "Skirt".into(),
            },
            1 => Command::CutPiece {
                n: 1 + (pick / 6 % 3) as u16,
                index: (pick / 18 % 3) as u8,
                squares: Count::at_most(pick / 54 % 9),
                by_strip: Vec::new(),
                pieced: None,
                strips: (pick / 486 % 3 > 0).then(|| Count::at_most(pick / 486 % 3)),
                outline: None,
            },
            2 => Command::TakeHeap {
                n: 1 + (pick / 6 % 3) as u16,
            },
            3 => Command::TryScrap {
                scrap: crate::plan::scraps::Scrap {
                    joining: throw.plan.joining,
                    lap: sixty_fourths(20 + i64::from(pick / 6 % 20)),
                    stitch: throw.plan.stitch,
                    verdict: crate::plan::scraps::ScrapVerdict::Right,
                    note: String::new(),
                },
            },
            4 => Command::UseScrap {
                scrap: (pick / 6 % 3) as u16,
            },
            _ => Command::Gather {
                item: crate::throw::Item::Glue,
                have: pick % 4 == 0,
            },
        },
        _ if open.is_empty() => Command::Note {
            text: "all done".into(),
            piece: None,
            task: None,
            next: pick % 2 == 0,
        },
        _ => {
            let piece = open[pick as usize % open.len()];
            Command::Tick {
                task: throw.next(piece).unwrap(),
                pieces: vec![piece],
            }
        }
    };
    let _ = act(journal, &action, at);
}

/// Whether an event says what was decided when it was made.
fn says_all(event: &Event) -> bool {
    match event {
        Event::Done { task, made, .. } => {
            let settles = matches!(task, Task::Dot | Task::Pin | Task::Stitch);
            settles != made.is_empty()
        }
        Event::PieceCut { went, .. } => went.is_some(),
        Event::SetAside { pieces, sizes } => pieces.len() == sizes.len(),
        _ => true,
    }
}

/// The event as it was before it said so.
fn unsay(event: &mut Event) {
    match event {
        Event::Done { made, .. } => made.clear(),
        Event::PieceCut { went, .. } => *went = None,
        Event::SetAside { sizes, .. } => sizes.clear(),
        Event::FacesChanged { again, .. } => *again = None,
        Event::Spoilt { opened, .. } => *opened = None,
        _ => {}
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]
    #[test]
    fn the_fold_is_the_same_live_and_replayed(steps in prop::collection::vec((0u8..20, any::<u32>()), 0..160)) {
        let mut journal = begin(3, 4);
        for (i, s) in steps.into_iter().enumerate() {
            step(&mut journal, s, i as Time);
            let throw = journal.throw();
            prop_assert_eq!(throw.work_index(), &crate::throw::index::WorkIndex::of(throw));
        }
        let read = Journal::read(journal.text().as_bytes()).unwrap();
        prop_assert!(!read.torn && !read.lacks_newline);
        prop_assert_eq!(read.journal.throw(), journal.throw());
        prop_assert_eq!(read.journal.text(), journal.text());
    }

    /// What was decided stands in the events. While the rules of today are those of files
    /// that do not say it, they fold to the same without.
    #[test]
    fn what_was_decided_is_said(steps in prop::collection::vec((0u8..26, any::<u32>()), 0..160)) {
        let mut journal = begin(3, 4);
        for (i, s) in steps.into_iter().enumerate() {
            step(&mut journal, s, i as Time);
        }
        let mut unsaid = journal.clone();
        for entry in &mut unsaid.entries {
            let What::Do(events) = &mut entry.what else { continue };
            for event in events {
                prop_assert!(says_all(event), "{event:?}");
                unsay(event);
            }
        }
        let text = unsaid.text();
        for key in ["\"made\":", "\"went\":", "\"again\":", "\"sizes\":", "\"opened\":"] {
            prop_assert!(!text.contains(key));
        }
        let folded = Journal::read(text.as_bytes()).unwrap().journal;
        prop_assert_eq!(folded.throw(), journal.throw());
    }

    #[test]
    fn undoing_all_and_redoing_all_is_nothing(steps in prop::collection::vec((2u8..20, any::<u32>()), 1..140)) {
        let mut journal = begin(4, 3);
        let mut states = vec![journal.throw().clone()];
        for (i, s) in steps.into_iter().enumerate() {
            let before = journal.len();
            step(&mut journal, s, i as Time);
            if journal.len() > before { states.push(journal.throw().clone()); }
        }
        for state in states.iter().rev().skip(1) {
            let entry = journal.propose_undo(500).unwrap();
            journal.accept(entry).unwrap();
            prop_assert_eq!(journal.throw(), state);
        }
        prop_assert!(journal.propose_undo(500).is_err());
        for state in states.iter().skip(1) {
            let entry = journal.propose_redo(600).unwrap();
            journal.accept(entry).unwrap();
            prop_assert_eq!(journal.throw(), state);
        }
    }

    #[test]
    fn no_piece_is_worked_before_its_parts(across in 1u16..7, down in 1u16..7, picks in prop::collection::vec(any::<u32>(), 0..300)) {
        let mut journal = begin(across, down);
        for (i, pick) in picks.into_iter().enumerate() {
            step(&mut journal, (10, pick), i as Time);
            let throw = journal.throw();
            for (piece, work) in throw.worked().filter(|(_, w)| !w.done.is_empty()) {
                prop_assert!(throw.waits_for(*piece).is_none());
                prop_assert!(work.done.iter().all(|(t, _)| throw.tasks(*piece).contains(t)));
            }
        }
    }
}

#[test]
fn checkpoints_stay_few_and_undoing_goes_back_through_them_all() {
    let mut journal = begin(2, 2);
    let bare = journal.throw().clone();
    for n in 0..3_000u32 {
        let name = format!("Throw {n}");
        act(&mut journal, &Command::Rename { name }, Time::from(n)).unwrap();
    }
    let kept = |journal: &Journal| -> Vec<usize> {
        let at: Vec<usize> = journal.checkpoints.iter().map(|(at, _)| *at).collect();
        assert!(at.len() < 40 && at[0] == 0 && at.is_sorted(), "{at:?}");
        at
    };
    // Going back to any moment folds no more than a quarter of its age, or two strides.
    for near in kept(&journal).windows(2) {
        let age = journal.stand.len() - near[1];
        assert!(near[1] - near[0] <= (age / 4).max(2 * STRIDE), "{near:?}");
    }
    for n in (0..3_000u32).rev() {
        assert_eq!(journal.throw().name, format!("Throw {n}"));
        let entry = journal.propose_undo(9_000).unwrap();
        journal.accept(entry).unwrap();
        kept(&journal);
    }
    assert_eq!(journal.throw(), &bare);
}

#[test]
fn a_four_whose_pairs_are_not_sewn_cannot_be_squared_up() {
    let journal = begin(2, 2);
    let four = Rect::grid(2, 2);
    let asked = journal.propose(
        &Command::Tick {
            task: Task::SquareUp,
            pieces: vec![four],
        },
        0,
    );
    let before = Rect::square(0, 0);
    assert_eq!(
        asked,
        Err(Rejection::First {
            task: Task::SquareUp,
            piece: four,
            before,
            needs: Task::Cut
        })
    );
}

#[test]
fn a_torn_last_line_is_dropped_and_damage_before_it_is_not() {
    let mut journal = begin(2, 2);
    for col in 0..2 {
        let pieces = vec![Rect::square(0, col)];
        act(
            &mut journal,
            &Command::Tick {
                task: Task::Cut,
                pieces,
            },
            5,
        )
        .unwrap();
    }
    let text = journal.text();
    let last = text[..text.len() - 1].rfind('\n').unwrap() + 1;
    for cut in last + 1..text.len() - 1 {
        let read = Journal::read(&text.as_bytes()[..cut]).unwrap();
        assert!(read.torn && read.sound == last, "cut at {cut}");
        assert_eq!(read.journal.len(), 2);
    }
    let whole = Journal::read(&text.as_bytes()[..text.len() - 1]).unwrap();
    assert!(whole.lacks_newline && !whole.torn && whole.journal.len() == 3);
    let mut bytes = text.clone().into_bytes();
    let middle = text[..last - 1].rfind('\n').unwrap() + 20;
    bytes[middle] ^= 1;
    assert_eq!(
        Journal::read(&bytes).unwrap_err(),
        FormatError::Line { line: 3 }
    );
    assert_eq!(Journal::read(b"hello").unwrap_err(), FormatError::NotAThrow);
    assert_eq!(
        Journal::read(b"{\"lapwork\":\"throw\",\"version\":9}\n").unwrap_err(),
        FormatError::Newer { version: 9 }
    );
    assert_eq!(
        Journal::read(header_line("a").as_bytes()).unwrap_err(),
        FormatError::Empty
    );
}

/// A line of a file, with its checksum.
fn summed_line(body: &str) -> String {
    let sum = crc32fast::hash(body.as_bytes());
    format!("{body},\"crc\":\"{sum:08x}\"}}\n")
}

#[test]
fn a_file_is_folded_once_and_only_what_stands() {
    let mut live = begin(2, 2);
    for n in 0..600u32 {
        let name = format!("Throw {n}");
        act(&mut live, &Command::Rename { name }, Time::from(n)).unwrap();
    }
    for _ in 0..300 {
        let entry = live.propose_undo(1_000).unwrap();
        live.accept(entry).unwrap();
    }
    // A step that is undone and done again many times, and one after each.
    for _ in 0..100 {
        let entry = live.propose_undo(2_000).unwrap();
        live.accept(entry).unwrap();
        let entry = live.propose_redo(2_000).unwrap();
        live.accept(entry).unwrap();
    }
    let text = live.text();
    FOLDED.set(0);
    let mut read = Journal::read(text.as_bytes()).unwrap().journal;
    assert_eq!(FOLDED.get(), 300, "of 600 that were made 300 stand");
    assert_eq!(read.throw(), live.throw());
    assert_eq!(read.text(), text);
    // Going on is as with a record that was made here.
    for n in (0..300u32).rev() {
        assert_eq!(read.throw().name, format!("Throw {n}"));
        FOLDED.set(0);
        let entry = read.propose_undo(9_000).unwrap();
        read.accept(entry).unwrap();
        assert!(FOLDED.get() <= 300 / 4 + 2 * STRIDE, "{}", FOLDED.get());
    }
    let entry = read.propose_redo(9_000).unwrap();
    read.accept(entry).unwrap();
    assert_eq!(read.throw().name, "Throw 0");
}

#[test]
fn a_piece_listed_twenty_thousand_times_is_worked_out_once() {
    let mut text = begin(6, 8).named("repeats").text();
    let list = vec!["[0,0,1,1]"; 20_000].join(",");
    text += &summed_line(&format!(
        "{{\"n\":2,\"at\":9,\"do\":[{{\"done\":{{\"task\":\"cut\",\"pieces\":[{list}]}}}}]"
    ));
    for n in 0..40 {
        let (what, n) = (["undo", "redo"][n % 2], n + 3);
        text += &summed_line(&format!("{{\"n\":{n},\"at\":9,\"{what}\":2"));
    }
    INDEXED.set(0);
    let read = Journal::read(text.as_bytes()).unwrap().journal;
    assert!(INDEXED.get() < 500, "{}", INDEXED.get());
    assert_eq!(read.throw().work_index(), &WorkIndex::of(read.throw()));
}

#[test]
fn what_touches_everything_is_worked_out_once_for_a_file() {
    let mut text = begin(20, 20).named("laps").text();
    for n in 2..1_002 {
        let laps = "{\"laps-marked\":{\"laps\":[]}}";
        text += &summed_line(&format!("{{\"n\":{n},\"at\":9,\"do\":[{laps},{laps}]"));
    }
    INDEXED.set(0);
    let read = Journal::read(text.as_bytes()).unwrap().journal;
    let pieces = read.throw().assembly().pieces().count();
    // At the beginning, at the end, and at a few checkpoints.
    assert!(
        INDEXED.get() <= 40 * pieces,
        "{} of {pieces}",
        INDEXED.get()
    );
    assert_eq!(read.throw().work_index(), &WorkIndex::of(read.throw()));
}

#[test]
fn a_file_with_carriage_returns_is_sound_and_reads_the_same() {
    let mut journal = begin(3, 3).named("from-elsewhere");
    act(&mut journal, &Command::Rename { name: "A".into() }, 1).unwrap();
    let text = journal.text();
    let read = Journal::read(text.replace('\n', "\r\n").as_bytes()).unwrap();
    assert!(!read.torn && read.version == VERSION);
    assert_eq!(read.journal.text(), text);
    // A header that was changed is damaged, with or without.
    let bent = text.replacen("from-elsewhere", "from-Elsewhere", 1);
    for bent in [bent.replace('\n', "\r\n"), bent] {
        assert_eq!(
            Journal::read(bent.as_bytes()).unwrap_err(),
            FormatError::Line { line: 1 }
        );
    }
}
