//! One account of the cloth: whatever is done, no square of any denim appears or vanishes, and
//! no two places tell it differently.

use lapwork_core::cloth::garments::{GarmentKind, GarmentSize};
use lapwork_core::cloth::pile::Use;
use lapwork_core::command::{Command, decide};
use lapwork_core::log::journal::Journal;
use lapwork_core::measure::{Count, Ruler};
use lapwork_core::plan::Plan;
use lapwork_core::plan::assembly::Rect;
use lapwork_core::show::tables::Table;
use lapwork_core::show::{Context, Query, View, answer};
use lapwork_core::throw::account::account;
use lapwork_core::throw::tasks::Task;
use lapwork_core::throw::{Mishap, Throw};
use lapwork_core::words::Words;
use proptest::prelude::*;

const NOON: i64 = 1_767_225_600_000;

/// A throw of 6 × 5 squares in two denims, and four pairs of legs that name theirs.
fn begun() -> Journal {
    let demo = lapwork_core::demo::throw(NOON);
    let begin = Command::Begin {
        name: "Two denims".into(),
        plan: Plan {
            across: 6,
            down: 5,
            ..Plan::default()
        },
        prints: Vec::new(),
        denims: demo.throw().denims.clone(),
    };
    let mut journal = Journal::begin(&begin, NOON).expect("a plan").0;
    let pieces = Rect::grid(6, 5).squares().filter(|s| s.row > 2).collect();
    act(
        &mut journal,
        &Command::SetDenim {
            pieces,
            denim: 1,
            wrong_side_up: false,
        },
    );
    for (kind, denim) in [
        (GarmentKind::MensJeans, 0),
        (GarmentKind::WomensJeans, 1),
        (GarmentKind::ChildsJeans, 0),
        (GarmentKind::Skirt, 1),
    ] {
        act(
            &mut journal,
            &Command::AddGarment {
                kind,
                size: Some(GarmentSize::Medium),
                knees: None,
                system: None,
                makes: Use::Denim { denim: Some(denim) },
                name: format!("{kind:?}"),
            },
        );
    }
    journal
}

/// Do it if it is allowed; whether it was.
fn act(journal: &mut Journal, command: &Command) -> bool {
    let Ok(entry) = journal.propose(command, NOON) else {
        return false;
    };
    journal.accept(entry).expect("what was proposed follows");
    true
}

/// Something done at random: cutting, losing, putting spares in, another grid, another denim.
fn deeds() -> impl Strategy<Value = Vec<(u8, u32)>> {
    prop::collection::vec((0u8..8, 0u32..10_000), 1..40)
}

fn command(throw: &Throw, (kind, pick): (u8, u32)) -> Command {
    let whole = throw.assembly().whole();
    let squares: Vec<Rect> = whole.squares().collect();
    let square = squares[pick as usize % squares.len()];
    let n = 1 + (pick % 4) as u16;
    let index = (pick / 4 % 2) as u8;
    match kind {
        0..=2 => Command::CutPiece {
            n,
            index,
            squares: Count::at_most(pick / 8 % 16),
            by_strip: Vec::new(),
            strips: (pick % 3 > 0).then(|| Count::at_most(pick % 3)),
            outline: None,
        },
        3 | 4 => Command::Replace {
            piece: square,
            why: Mishap::ALL[pick as usize / 7 % 4],
            spare: pick / 11 % 2 == 0,
            denim: [None, Some(0), Some(1)][pick as usize / 13 % 3],
            from: (pick % 3 == 0).then(|| squares[pick as usize / 17 % squares.len()]),
        },
        5 => Command::UseSpares {
            pieces: vec![square],
            denim: [None, Some(0), Some(1)][pick as usize / 13 % 3],
        },
        6 => Command::ChangePlan {
            plan: Plan {
                across: 3 + (pick % 5) as u16,
                down: 3 + (pick / 5 % 4) as u16,
                ..throw.plan
            },
        },
        _ => Command::SetDenim {
            pieces: vec![square],
            denim: (pick / 17 % 2) as u8,
            wrong_side_up: false,
        },
    }
}

/// Squares of each denim that lie in a place, cut.
fn placed(throw: &Throw) -> [u32; 2] {
    let mut placed = [0; 2];
    for square in throw.assembly().whole().squares() {
        if throw.has(square, Task::Cut) {
            placed[usize::from(throw.cover(square).denim)] += 1;
        }
    }
    placed
}

/// Squares that came out of the garments of each denim.
fn counted(throw: &Throw) -> [u32; 2] {
    let mut counted = [0; 2];
    for heap in throw.pile.values() {
        if let Use::Denim { denim: Some(d) } = heap.makes {
            let own: Count = heap.counted.iter().flatten().copied().sum();
            counted[usize::from(d)] += own.get();
        }
    }
    counted
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Of each denim: what came out = what lies in places + what is spare + what was spoilt.
    #[test]
    fn no_square_appears_or_vanishes(deeds in deeds()) {
        let mut journal = begun();
        let mut spoilt = [0; 2];
        for deed in deeds {
            let throw = journal.throw();
            let deed = command(throw, deed);
            let lost = match &deed {
                Command::Replace { piece, .. } => Some(throw.cover(*piece).denim),
                _ => None,
            };
            if act(&mut journal, &deed) && let Some(denim) = lost {
                spoilt[usize::from(denim)] += 1;
            }
            let throw = journal.throw();
            let (placed, counted) = (placed(throw), counted(throw));
            for d in 0..2 {
                let denim = u8::try_from(d).unwrap();
                prop_assert_eq!(
                    counted[d],
                    placed[d] + throw.spares_of(denim) + spoilt[d],
                    "denim {} after {:?}", d, deed
                );
            }
            prop_assert_eq!(throw.spares_unsaid(), 0);
            let told = account(throw);
            let strips = told.strips;
            prop_assert_eq!(strips.cut + strips.planned + strips.lacking(), strips.wanted);
            // The places of the pieces are open, of the heap's denim, and each is given once.
            let mut given: Vec<Rect> = told.places.values().flatten().copied().collect();
            for ((n, _), places) in &told.places {
                for place in places {
                    prop_assert!(!throw.has(*place, Task::Cut));
                    let denim = Some(throw.cover(*place).denim);
                    prop_assert_eq!(throw.pile[n].makes, Use::Denim { denim });
                }
            }
            let all = given.len();
            given.sort();
            given.dedup();
            prop_assert_eq!(given.len(), all);
        }
    }

    /// The pile, the cutting page, the step, what to have at hand, the table and the sheet tell
    /// the same of squares, strips and spares.
    #[test]
    fn every_screen_and_sheet_tells_the_same(deeds in deeds()) {
        let words = Words::english();
        let context = Context {
            words: &words,
            ruler: Ruler::default(),
            now: NOON,
        };
        let mut journal = begun();
        for deed in deeds {
            let deed = command(journal.throw(), deed);
            act(&mut journal, &deed);
        }
        let throw = journal.throw();
        let told = account(throw);
        let Ok(View::Pile(pile)) = answer(&journal, &Query::Pile, context) else { panic!() };
        let figure = |label: &str| {
            let found = pile.figures.iter().find(|f| f.label == label);
            found.map(|f| f.value.text.clone()).unwrap_or_default()
        };
        let open = throw.uncut(None).count();
        prop_assert_eq!(figure("Still to cut"), open.to_string());
        prop_assert_eq!(figure("Spare"), if throw.spares > 0 { throw.spares.get().to_string() } else { String::new() });
        prop_assert_eq!(
            figure("Binding strips to cut"),
            format!("{} of {}", told.strips.open(), told.strips.wanted)
        );
        let csv = Table::Cutting.csv(&journal, context);
        let mut rows = csv.lines().skip(1);
        let mut to_come = 0;
        let mut strips = 0;
        for row in &pile.rows {
            for piece in &row.pieces {
                let look = Query::Cutting { n: row.n, index: piece.index, typed: None, drag: None };
                let Ok(View::Cutting(leg)) = answer(&journal, &look, context) else { panic!() };
                let cells: Vec<&str> = rows.next().unwrap_or_default().rsplitn(3, ',').collect();
                if piece.cut {
                    prop_assert_eq!(cells[0], leg.counted.unwrap().to_string());
                    continue;
                }
                prop_assert_eq!(cells[1], leg.expected.to_string());
                prop_assert!(
                    piece.said.starts_with(&format!("about {} square", leg.expected)),
                    "{} {}", piece.said, leg.expected
                );
                let listed: u32 = leg.list.iter().map(|line| line.squares).sum();
                prop_assert_eq!(listed, leg.expected);
                to_come += leg.expected;
                strips += leg.expected_strips;
            }
        }
        prop_assert_eq!(figure("The pile still gives"), to_come.to_string());
        prop_assert_eq!(strips, told.strips.planned);
        // What to have at hand and the step of the binding read the same account.
        let Ok(View::Gather(gather)) = answer(&journal, &Query::Gather, context) else { panic!() };
        let said: String = gather.rows.iter().flat_map(|r| r.lines.clone()).collect();
        prop_assert!(said.contains(&format!("{open} still to cut")) || open == 0, "{}", said);
        if told.strips.cut > 0 && told.strips.open() > 0 {
            let cut = format!("{} of {} strips are cut already", told.strips.cut, told.strips.wanted);
            prop_assert!(said.contains(&cut), "{}", said);
        }
        // Nothing is offered that is refused.
        for row in &pile.ways {
            prop_assert!(decide(Some(throw), &row.button.action).is_ok());
        }
    }
}
