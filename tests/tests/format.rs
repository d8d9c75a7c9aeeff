//! The throw file's format is pinned: files of each version are kept, never change, and
//! still open. Those of the version now written are written again to the byte; those of an
//! older one get the header of this one, and their entries stay the same to the byte.
//!
//! `LAPWORK_WRITE=1 cargo test --workspace --test format` writes the file of the
//! version now written; do that only when the version is raised.

use lapwork_core::cloth::fabric::Cover;
use lapwork_core::cloth::garments::{
    Garment, GarmentKind, GarmentSize, Guess, Precut, Source, start,
};
use lapwork_core::cloth::pile::{Heap, Use};
use lapwork_core::cloth::weight::Cloth;
use lapwork_core::log::intake;
use lapwork_core::log::journal::{Damage, Entry, Journal, VERSION, What, header_line};
use lapwork_core::measure::outline::{Measures, Sides};
use lapwork_core::measure::{Count, Ruler, half_inches, inches, sixty_fourths, tenths_of_mm};
use lapwork_core::plan::Plan;
use lapwork_core::plan::assembly::Rect;
use lapwork_core::plan::scraps::{Scrap, Verdict};
use lapwork_core::show::{Lens, figures};
use lapwork_core::throw::heritage::{Carried, Heritage, Learned, Lesson};
use lapwork_core::throw::photos::PhotoId;
use lapwork_core::throw::tasks::Task;
use lapwork_core::throw::wishes::Wishes;
use lapwork_core::throw::{Event, Item, Mishap};
use lapwork_core::words::Words;
use std::path::PathBuf;

/// Noon, 14 March 2026, UTC.
const NOON: i64 = 1_773_489_600_000;

fn kept(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("kept")
        .join(name)
}

/// What an older throw left, with every field.
fn heritage(squares: usize) -> Heritage {
    let lesson = |task, hers| Lesson {
        words: "Lay the dark jeans out first.".into(),
        task,
        hers,
    };
    Heritage {
        name: "The first one".into(),
        lessons: vec![lesson(None, true), lesson(Some(Task::Cut), false)],
        paces: vec![Learned {
            task: Task::Stitch,
            low: 60_000,
            middle: 90_000,
            high: 150_500,
        }],
        drift: Some(Carried {
            fours: Count::from(12),
            mean: sixty_fourths(2),
        }),
        faces: vec![
            Cover {
                back: Some(1),
                ..Cover::default()
            };
            squares
        ],
    }
}

/// A record in which every kind of event stands once, taken back and done again at the end.
fn of_every_kind() -> Journal {
    let demo = lapwork_core::demo::throw(NOON);
    let begun = demo.entries().next().expect("a beginning").0.clone();
    let What::Do(first) = &begun.what else {
        panic!("the beginning is an action")
    };
    let Event::Begun {
        plan,
        prints,
        denims,
        ..
    } = first[0].clone()
    else {
        panic!("it begins")
    };
    let square = Rect::square(0, 0);
    let (pair, four, other) = (
        Rect::from([0, 0, 1, 2]),
        Rect::from([0, 0, 2, 2]),
        Rect::from([0, 2, 2, 2]),
    );
    let (lap, side) = (sixty_fourths(28), sixty_fourths(606));
    let sides = Sides {
        top: side,
        right: side,
        bottom: half_inches(19),
        left: side,
    };
    let measures = Measures {
        sides,
        diagonals: Some((sixty_fourths(858), sixty_fourths(857))),
    };
    let cover = Cover {
        front: Some(1),
        back: None,
        denim: 1,
        wrong_side_up: true,
        crosswise: true,
    };
    let photo = PhotoId::parse(&"0123456789abcdef".repeat(4)).expect("a name");
    let events = vec![
        Event::Renamed {
            name: "Throw for the “attic” – nº 2".into(),
        },
        Event::Archived { archived: false },
        Event::FacesChanged {
            faces: vec![(square, cover)],
        },
        Event::ClothChanged { prints, denims },
        Event::Done {
            task: Task::Cut,
            pieces: four.squares().collect(),
        },
        Event::SparesCounted {
            spares: Count::from(3),
        },
        Event::SparesUsed {
            pieces: vec![Rect::square(5, 5)],
        },
        Event::Done {
            task: Task::Dot,
            pieces: vec![pair],
        },
        Event::Unpicked {
            pieces: vec![(pair, inches(5))],
        },
        Event::LapsMarked {
            laps: vec![(four, other, Some(lap)), (four, other, None)],
        },
        Event::Measured {
            piece: four,
            width: side,
            height: tenths_of_mm(2411),
        },
        Event::Outlined {
            piece: four,
            measures,
        },
        Event::Moved {
            moves: vec![(four, other), (other, four)],
        },
        Event::Turned {
            pieces: vec![(other, 2)],
        },
        Event::Flipped {
            pieces: vec![Rect::square(5, 5)],
        },
        Event::Pinned {
            pieces: vec![Rect::square(5, 4)],
            pinned: true,
        },
        Event::Wished {
            wishes: Wishes {
                front: Count::from(12),
                back: Count::from(9),
                ..Wishes::default()
            },
        },
        Event::SquaredUp {
            pieces: vec![(other, side, side)],
        },
        Event::SetAside {
            pieces: vec![other],
        },
        Event::Patched {
            piece: square,
            why: Mishap::Flaw,
        },
        Event::Spoilt {
            piece: Rect::square(5, 5),
            why: Mishap::Lost,
        },
        Event::HeapSet {
            n: 1,
            heap: Heap::new(
                Source::Cloth(Garment {
                    name: "Old jeans".into(),
                    pieces: start(GarmentKind::MensJeans, GarmentSize::Medium, Guess::Typical),
                }),
                Use::ANY_DENIM,
                Cloth::denim(),
            ),
        },
        Event::PieceCut {
            n: 1,
            piece: 0,
            squares: Count::from(3),
        },
        Event::HeapSet {
            n: 2,
            heap: Heap::new(
                Source::Precut(Precut {
                    name: "Pack".into(),
                    side: inches(5),
                    count: Count::from(42),
                }),
                Use::Fabric { print: 0 },
                Cloth::cotton(),
            ),
        },
        Event::HeapTaken { n: 2 },
        Event::ScrapTried {
            scrap: Scrap {
                joining: plan.joining,
                lap,
                stitch: plan.stitch,
                verdict: Verdict::Bulky,
                note: "Stiff.".into(),
            },
        },
        Event::PlateMeasured {
            opening: tenths_of_mm(70),
        },
        Event::Gathered {
            item: Item::Fabric { print: 1 },
            have: true,
        },
        Event::Noted {
            text: "½ in held.\nNext time more on the back.".into(),
            piece: Some(square),
            task: None,
            next: false,
        },
        Event::Noted {
            text: "Begin with the back.".into(),
            piece: None,
            task: Some(Task::CoverBack),
            next: true,
        },
        Event::Pictured {
            photo: photo.clone(),
            words: "The first pair".into(),
            piece: Some(pair),
            task: Some(Task::Stitch),
        },
        Event::Unpictured { photo },
        Event::WholeMeasured {
            width: half_inches(55),
            height: inches(36),
        },
        Event::PlanChanged {
            plan: Plan {
                between: Some(lap),
                trim: Some(side),
                ..plan
            },
            spares: Count::from(1),
        },
    ];
    for event in &events {
        // A kind that is added fails here until it is put in the list above.
        match event {
            Event::Begun { .. }
            | Event::Renamed { .. }
            | Event::Archived { .. }
            | Event::PlanChanged { .. }
            | Event::FacesChanged { .. }
            | Event::ClothChanged { .. }
            | Event::Done { .. }
            | Event::SparesUsed { .. }
            | Event::SparesCounted { .. }
            | Event::Measured { .. }
            | Event::Outlined { .. }
            | Event::LapsMarked { .. }
            | Event::Patched { .. }
            | Event::Unpicked { .. }
            | Event::Moved { .. }
            | Event::Turned { .. }
            | Event::Flipped { .. }
            | Event::Pinned { .. }
            | Event::Wished { .. }
            | Event::SetAside { .. }
            | Event::WholeMeasured { .. }
            | Event::SquaredUp { .. }
            | Event::Spoilt { .. }
            | Event::HeapSet { .. }
            | Event::HeapTaken { .. }
            | Event::PieceCut { .. }
            | Event::ScrapTried { .. }
            | Event::PlateMeasured { .. }
            | Event::Gathered { .. }
            | Event::Noted { .. }
            | Event::Pictured { .. }
            | Event::Unpictured { .. } => {}
        }
    }
    let past = |what| What::Past(Box::new(what));
    let note = Event::Noted {
        text: "Past.".into(),
        piece: None,
        task: None,
        next: false,
    };
    let mut begun = begun;
    if let What::Do(first) = &mut begun.what
        && let Some(Event::Begun { after, .. }) = first.first_mut()
    {
        *after = Some(Box::new(heritage(plan.squares() as usize)));
    }
    let last = events.len() as u64 + 1;
    let mut text = header_line("kept-2") + &begun.line();
    let whats = events
        .into_iter()
        .map(|e| What::Do(vec![e]))
        .chain([What::Undo(last), What::Redo(last)])
        // Of a copy that was merged: a step that does not stand, and its taking back.
        .chain([past(What::Do(vec![note])), past(What::Undo(last + 3))]);
    for (i, what) in whats.enumerate() {
        text += &Entry {
            n: i as u64 + 2,
            at: NOON + i as i64,
            what,
        }
        .line();
    }
    Journal::read(text.as_bytes()).expect("it follows").journal
}

fn check(name: &str, made: impl FnOnce() -> Journal) {
    let words = Words::english();
    let lens = Lens {
        words: &words,
        ruler: Ruler::default(),
        now: NOON,
    };
    let told = |journal: &Journal| format!("{:#}\n", figures(journal, lens));
    let (file, figures) = (
        kept(&format!("{name}.jsonl")),
        kept(&format!("{name}.json")),
    );
    if std::env::var_os("LAPWORK_WRITE").is_some() && VERSION == 2 {
        let made = made();
        std::fs::create_dir_all(kept("")).expect("a folder");
        std::fs::write(&file, made.text()).expect("a file");
        std::fs::write(&figures, told(&made)).expect("a file");
    }
    let text = std::fs::read_to_string(&file).expect("the kept file");
    let read = Journal::read(text.as_bytes()).expect("the kept file opens");
    assert!(!read.torn && !read.lacks_newline);
    let want = std::fs::read_to_string(&figures).expect("its figures");
    assert!(
        told(&read.journal) == want,
        "{name}: other figures than when it was kept"
    );
    assert!(
        read.journal.text() == text,
        "{name}: written otherwise than it was kept"
    );
}

#[test]
fn version_2_opens_and_is_written_again_to_the_byte() {
    check("throw-2", || {
        lapwork_core::demo::throw(NOON).named("kept-1")
    });
    check("every-event-2", of_every_kind);
}

/// A file of version 1 and what it becomes: its entries to the byte, under a header that
/// names the throw. The name is made from the first entry, the same on every device.
#[test]
fn version_1_opens_and_keeps_its_entries_to_the_byte() {
    let words = Words::english();
    let lens = Lens {
        words: &words,
        ruler: Ruler::default(),
        now: NOON,
    };
    for name in ["throw-1", "every-event-1"] {
        let text = std::fs::read_to_string(kept(&format!("{name}.jsonl"))).expect("kept");
        let read = intake::read(text.as_bytes()).expect("the kept file opens");
        assert_eq!(read.version, 1);
        let want = std::fs::read_to_string(kept(&format!("{name}.json"))).expect("kept");
        assert!(
            format!("{:#}\n", figures(&read.journal, lens)) == want,
            "{name}"
        );
        let (header, entries) = text.split_once('\n').expect("a header");
        assert_eq!(header, "{\"lapwork\":\"throw\",\"version\":1}");
        let upgraded = read.journal.text();
        assert_eq!(
            upgraded,
            header_line("first-19cdcc4a200-2e6-be7accab") + entries,
            "{name}"
        );
        let again = Journal::read(upgraded.as_bytes()).expect("it opens");
        assert_eq!((again.version, again.journal.text()), (2, upgraded));
    }
}

#[test]
fn a_newer_version_and_a_header_that_does_not_fit_are_refused() {
    let text = std::fs::read_to_string(kept("throw-2.jsonl")).expect("kept");
    let (_, entries) = text.split_once('\n').expect("a header");
    let read = |header: &str| Journal::read(format!("{header}\n{entries}").as_bytes());
    let newer = read("{\"lapwork\":\"throw\",\"version\":3,\"throw\":\"a\"}");
    assert_eq!(newer.unwrap_err(), Damage::Newer { version: 3 });
    for header in [
        "{\"lapwork\":\"throw\",\"version\":2}",
        "{\"lapwork\":\"throw\",\"version\":1,\"throw\":\"a\"}",
        "{\"lapwork\":\"throw\",\"version\":2,\"throw\":\"../a\"}",
    ] {
        assert_eq!(
            read(header).unwrap_err(),
            Damage::Line { line: 1 },
            "{header}"
        );
    }
    for header in ["{\"lapwork\":\"throw\",\"version\":0}", "{}", ""] {
        assert_eq!(read(header).unwrap_err(), Damage::NotAThrow, "{header}");
    }
}

#[test]
fn every_byte_of_the_kept_file_matters() {
    let file = std::fs::read(kept("throw-2.jsonl")).expect("the kept file");
    let whole = Journal::read(&file).expect("it opens").journal.text();
    let mut unnoticed = Vec::new();
    for at in (0..file.len()).step_by(7) {
        let mut flipped = file.clone();
        flipped[at] ^= 0x01;
        if let Ok(read) = Journal::read(&flipped)
            && !read.torn
            && read.journal.text() != whole
        {
            unnoticed.push(at);
        }
    }
    assert!(
        unnoticed.is_empty(),
        "flips not noticed at bytes {unnoticed:?}"
    );
}
