//! Throws of any size with everything filled in, made by actions, for benches and tests.

use image::codecs::jpeg::JpegEncoder;
use lapwork_core::cloth::fabric::Face;
use lapwork_core::cloth::garments::{GarmentKind, GarmentSize};
use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::cloth::pile::Use;
use lapwork_core::command::Command;
use lapwork_core::demo::{denims, prints};
use lapwork_core::log::journal::Journal;
use lapwork_core::measure::{Count, Ruler, sixty_fourths};
use lapwork_core::plan::Plan;
use lapwork_core::plan::assembly::{Kind, Rect};
use lapwork_core::plan::scraps::{Scrap, ScrapVerdict};
use lapwork_core::show::{self, Context, Sheet};
use lapwork_core::show::{PrintUnits, ZoneName};
use lapwork_core::throw::Mishap;
use lapwork_core::throw::tasks::Task;
use lapwork_core::words::Words;
use lapwork_sheet::{Photos, PrintPhoto};
use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

/// When everything happened.
const AT: i64 = 1_800_000_000_000;

/// A throw with a pile, faces, sewn, measured and squared-up fours, a marked lap, scraps and notes,
/// as far as its size allows.
pub fn throw(across: u16, down: u16) -> Journal {
    let plan = Plan {
        across,
        down,
        ..Plan::default()
    };
    let begin = Command::Begin {
        name: format!("Porch throw {across} by {down}"),
        plan,
        prints: prints(),
        denims: denims(),
    };
    let (mut journal, _) = Journal::begin(&begin, AT).expect("the plan can be made");
    let mut act = |action: Command| {
        if let Ok(entry) = journal.propose(&action, AT) {
            let _ = journal.accept(entry);
        }
    };
    let squares = u32::from(across) * u32::from(down);
    let tick = |task, kind, count| Command::TickNext {
        task,
        kind,
        count: Count::at_most(count),
    };
    act(Command::SetDenim {
        pieces: Rect::grid(across, down)
            .squares()
            .filter(|s| (s.row + 2 * s.col).is_multiple_of(5))
            .collect(),
        denim: 1,
        wrong_side_up: false,
    });
    for print in 0..4u8 {
        for (face, [by_row, by_col], every) in [(Face::Front, [5, 3], 12), (Face::Back, [3, 5], 16)]
        {
            let pieces = Rect::grid(across, down)
                .squares()
                .filter(|s| (s.row * by_row + s.col * by_col) % every == u16::from(print))
                .collect();
            act(Command::SetFace {
                pieces,
                face,
                print: Some(print),
                laid_on: false,
            });
        }
    }
    for (kind, size, makes, name) in [
        (
            GarmentKind::MensJeans,
            GarmentSize::Large,
            Use::ANY_DENIM,
            "Barn jeans",
        ),
        (
            GarmentKind::Skirt,
            GarmentSize::Medium,
            Use::ANY_DENIM,
            "Long skirt",
        ),
        (
            GarmentKind::Sheet,
            GarmentSize::Small,
            Use::Fabric { print: 1 },
            "Barley sheet",
        ),
    ] {
        act(Command::AddGarment {
            kind,
            size: Some(size),
            knees: None,
            system: None,
            makes,
            name: name.into(),
        });
    }
    for (lap, verdict) in [(16, ScrapVerdict::LittleFringe), (32, ScrapVerdict::Right)] {
        act(Command::TryScrap {
            scrap: Scrap {
                joining: plan.joining,
                lap: sixty_fourths(lap),
                stitch: plan.stitch,
                verdict,
                note: "Tried on the leg’s hem.".into(),
            },
        });
    }
    act(tick(Task::Cut, Kind::Square, squares));
    for task in [
        Task::CoverFront,
        Task::CoverBack,
        Task::PressCover,
        Task::CoolCover,
    ] {
        act(tick(task, Kind::Square, squares));
    }
    let some = (squares / 4).max(1);
    for kind in [Kind::Pair, Kind::Four] {
        for task in [
            Task::Dot,
            Task::PressLap,
            Task::CoolLap,
            Task::Stitch,
            Task::PressBlock,
        ] {
            act(tick(task, kind, some));
        }
    }
    let four = 9 * 64 + 32;
    let fours = Rect::grid(across, down)
        .squares()
        .filter(|s| s.row % 2 == 0 && s.col % 2 == 0 && s.row + 1 < down && s.col + 1 < across);
    for (i, s) in fours.enumerate() {
        let piece = Rect {
            rows: 2,
            cols: 2,
            ..s
        };
        let off = [0, 4, -6, 8, 2][i % 5];
        act(Command::Measure {
            piece,
            width: sixty_fourths(four + off),
            height: sixty_fourths(four + off / 2),
        });
        if off == 0 {
            act(Command::Tick {
                task: Task::SquareUp,
                pieces: vec![piece],
            });
        }
    }
    let block = |col| Rect {
        row: 0,
        col,
        rows: 2,
        cols: 2,
    };
    act(Command::MarkLaps {
        laps: vec![(block(0), block(2), Some(sixty_fourths(26)))],
    });
    act(Command::Spoil {
        piece: Rect::square(down - 1, across - 1),
        why: Mishap::Scorched,
    });
    act(Command::Note {
        text: "The skirt frays more than the jeans; shorter stitches hold it.".into(),
        piece: None,
        task: None,
        next: false,
    });
    act(Command::Note {
        text: "Cut this one from the pocket’s shade.".into(),
        piece: Some(Rect::square(0, 0)),
        task: None,
        next: false,
    });
    act(Command::Note {
        text: "Stretched at the end of the seam.".into(),
        piece: Some(block(0)),
        task: None,
        next: false,
    });
    journal
}

/// The same without its pile.
pub fn unpiled(journal: &Journal) -> Journal {
    let mut journal = journal.clone();
    let old: Vec<u16> = journal.throw().pile.keys().copied().collect();
    for n in old {
        let entry = journal.propose(&Command::TakeHeap { n }, AT);
        let entry = entry.expect("it may be done");
        journal.accept(entry).expect("it is sound");
    }
    journal
}

/// What a class sews from: eight pieces of denim, none of them cut.
pub fn piled(journal: &Journal) -> Journal {
    let mut journal = unpiled(journal);
    let garments = [
        (GarmentKind::MensJeans, GarmentSize::Large, "Barn jeans"),
        (GarmentKind::MensJeans, GarmentSize::Small, "Sunday jeans"),
        (GarmentKind::WomensJeans, GarmentSize::Medium, "Pale jeans"),
        (GarmentKind::JacketBack, GarmentSize::Large, "Old jacket"),
        (GarmentKind::Skirt, GarmentSize::Medium, "Long skirt"),
    ];
    let added = garments.map(|(kind, size, name)| Command::AddGarment {
        kind,
        size: Some(size),
        knees: None,
        system: None,
        makes: Use::ANY_DENIM,
        name: name.into(),
    });
    for action in added {
        let entry = journal.propose(&action, AT).expect("it may be done");
        journal.accept(entry).expect("it is sound");
    }
    journal
}

/// Its sheet, by the inch ruler.
pub fn sheet(journal: &Journal) -> Sheet {
    sheet_in(journal, &Words::english())
}

/// Its sheet in these units.
pub fn sheet_by(journal: &Journal, units: PrintUnits) -> Sheet {
    printed(journal, &Words::english(), units)
}

/// Its sheet in other words.
pub fn sheet_in(journal: &Journal, words: &Words) -> Sheet {
    printed(journal, words, PrintUnits::Both)
}

fn printed(journal: &Journal, words: &Words, units: PrintUnits) -> Sheet {
    let context = Context {
        words,
        ruler: Ruler::default(),
        now: AT,
    };
    // 25 November 2026, noon.
    let day = ZoneName::named("UTC").calendar().day(1_795_608_000_000);
    show::sheet(journal, context, units, &|_| day)
}

/// Its blank handout for a class.
pub fn handout(journal: &Journal, units: PrintUnits) -> Sheet {
    let words = Words::english();
    let context = Context {
        words: &words,
        ruler: Ruler::default(),
        now: AT,
    };
    show::sheet::handout(journal, context, units)
}

/// A day's milliseconds.
const DAY: i64 = 86_400_000;

/// Its sheet with the story of the days after, which hold so many photos.
pub fn story(journal: &Journal, photos: u32) -> Sheet {
    story_in(&pictured(journal, photos), &Words::english())
}

/// A throw's sheet with its story, in other words.
pub fn story_in(journal: &Journal, words: &Words) -> Sheet {
    let context = Context {
        words,
        ruler: Ruler::default(),
        now: AT,
    };
    sheet_in(journal, words).with_story(journal, &ZoneName::default(), context)
}

/// The same throw with so many photos, some a day, each of something else; and a lesson or two.
pub fn pictured(journal: &Journal, photos: u32) -> Journal {
    let mut journal = journal.clone();
    let words = [
        "The first four by the window, before it was squared up.",
        "",
        "Fringe after the second wash: fuller on the jeans than on the skirt, and softest at the edge.",
    ];
    for n in 0..photos {
        let at = AT + i64::from(n / 5 + 1) * DAY;
        let piece = (n % 2 == 0).then(|| Rect::square(0, 0));
        let task = (n % 4 == 0).then_some(Task::CoverFront);
        let action = Command::Picture {
            photo: PhotoId::parse(&format!("{n:064x}")).expect("a name"),
            words: words[n as usize % 3].into(),
            piece,
            task,
        };
        let note = Command::Note {
            text: "More fabric on the back next time; glue dots nearer the edge.".into(),
            piece: None,
            task: (n == 0).then_some(Task::CoverBack),
            next: true,
        };
        for action in [action, note]
            .into_iter()
            .take(if n % 10 == 0 { 2 } else { 1 })
        {
            let entry = journal.propose(&action, at).expect("it may be told");
            journal.accept(entry).expect("it is sound");
        }
    }
    journal
}

/// Photos for it, drawn: upright, lying and square in turn, no two alike.
pub fn photos(sheet: &Sheet, black: bool) -> Photos {
    static DRAWN: Mutex<BTreeMap<(usize, bool), PrintPhoto>> = Mutex::new(BTreeMap::new());
    let mut drawn = DRAWN.lock().unwrap_or_else(PoisonError::into_inner);
    let mut photo = |n| {
        drawn
            .entry((n, black))
            .or_insert_with(|| draw(n, black))
            .clone()
    };
    let names = sheet.photos.iter().enumerate();
    names.map(|(n, name)| (name.clone(), photo(n))).collect()
}

fn draw(n: usize, black: bool) -> PrintPhoto {
    let (width, height) = [(800, 600), (600, 800), (800, 800), (800, 450)][n % 4];
    // Drawn small and made larger by the library, which is quick in any build.
    let drawn = image::RgbImage::from_fn(width / 4, height / 4, |x, y| {
        let (x, y) = (4 * x as usize + 13 * n, 4 * y as usize + 7 * n);
        let weave = ((x / 3 + y / 5) % 7 * 9) as u8;
        let patch = ((x / 130 + 2 * (y / 130) + n) % 5 * 25) as u8;
        image::Rgb([50, 60, 75].map(|ground| ground + patch + weave))
    });
    let picture = image::DynamicImage::from(drawn).resize_exact(
        width,
        height,
        image::imageops::FilterType::Triangle,
    );
    let mut jpeg = Vec::new();
    let mut encoder = JpegEncoder::new_with_quality(&mut jpeg, 82);
    match black {
        true => encoder.encode_image(&picture.to_luma8()),
        false => encoder.encode_image(&picture.to_rgb8()),
    }
    .expect("it can be written");
    PrintPhoto {
        jpeg,
        width,
        height,
    }
}
