//! What is counted is what is there: fours that lean, rows of pairs, one of anything, layers of a plan to come.

use super::*;
use crate::measure::outline::{Measures, Sides};
use crate::plan::assembly::Seam;
use crate::show::MeasureView;
use crate::show::sheet::Sheet;
use crate::throw::stage::{Stage, stages};

/// A lozenge of this side, in sixty-fourths of an inch, with diagonals of 900/64 and 847/64 in: those of
/// a side of 618/64 in, since 900² + 847² = 4 · 618² to a ruler's reading.
fn lozenge(side: i64) -> Measures {
    let side = sixty_fourths(side);
    Measures {
        sides: Sides {
            top: side,
            right: side,
            bottom: side,
            left: side,
        },
        diagonals: Some((sixty_fourths(900), sixty_fourths(847))),
    }
}

fn lean(journal: &mut Journal, piece: Rect) {
    let measures = lozenge(FULL + 10);
    let action = Command::MeasureOutline { piece, measures };
    act(journal, &action, 2);
}

fn printed(journal: &Journal, words: &Words) -> Sheet {
    let day = ZoneName::default().calendar();
    let units = crate::show::export::PrintUnits::Inches;
    crate::show::sheet::sheet(journal, context(words), units, &|at| day.day(at))
}

fn measure_view(journal: &Journal, query: &Query, words: &Words) -> MeasureView {
    match answer(journal, query, context(words)) {
        Ok(View::Measure(view)) => view,
        other => panic!("{other:?}"),
    }
}

/// Of three fours measured two tell of the laps, and one leans.
#[test]
fn a_four_that_leans_is_said_to_be_left_out() {
    let words = Words::english();
    let mut journal = stitched(8, 4);
    let blocks = journal.throw().assembly().blocks();
    let said = |journal: &Journal| crate::show::measuring::summed(journal.throw(), context(&words));
    lean(&mut journal, blocks[2]);
    assert_eq!(
        said(&journal),
        (
            vec![],
            "The only four measured leaned, so nothing can be told from it yet.".into()
        )
    );
    for piece in &blocks[..2] {
        sized(&mut journal, *piece, FULL, FULL);
    }
    let (_, text) = said(&journal);
    assert!(text.starts_with("2 fours measured: too few"), "{text}");
    let one = " One more leaned when it was measured, so it is left out.";
    assert!(text.ends_with(one), "{text}");
    assert_eq!(printed(&journal, &words).squaring.unwrap().said, text);
    let look_at = Query::Measure {
        piece: blocks[4],
        width: String::new(),
        height: String::new(),
    };
    assert_eq!(measure_view(&journal, &look_at, &words).summary_said, text);
    lean(&mut journal, blocks[3]);
    let (_, text) = said(&journal);
    let two = " 2 more leaned when they were measured, so they are left out.";
    assert!(text.ends_with(two), "{text}");
    // Measured anew by its width and height it leans no longer.
    for piece in &blocks[2..4] {
        sized(&mut journal, *piece, FULL, FULL);
    }
    let (_, text) = said(&journal);
    assert!(!text.contains("left out"), "{text}");
}

/// By hand: diagonals as 900 to 847 make corners of 90° ± 3.47°, and the sides lie 618 · cos 3.47° = 616.9
/// apart. The largest square is turned half as far, 1.74°: 616.9 / (cos 1.74° + sin 1.74°) = 599, in
/// sixty-fourths 9 23/64 in.
#[test]
fn the_sheet_says_what_a_four_that_leans_holds() {
    let words = Words::english();
    let mut journal = stitched(8, 4);
    let blocks = journal.throw().assembly().blocks();
    lean(&mut journal, blocks[0]);
    sized(&mut journal, blocks[1], FULL, FULL);
    let held = journal.throw().work(blocks[0]).unwrap().measured.unwrap();
    for length in [held.width, held.height] {
        let about = sixty_fourths(598)..=sixty_fourths(600);
        assert!(about.contains(&length), "{length}");
    }
    let size = context(&words).by(held.width, held.height).text;
    let table = |journal: &Journal| printed(journal, &words).squaring.unwrap();
    let marked = |journal: &Journal| -> Vec<String> {
        let blocks = table(journal).blocks.into_iter();
        blocks.filter(|b| b.leans).map(|b| b.label).collect()
    };
    let side = context(&words).length(sixty_fourths(FULL + 10)).text;
    assert_eq!(
        table(&journal).blocks[0].measured,
        Some([side.clone(), side])
    );
    assert_eq!(marked(&journal), ["Four A1"]);
    let told = format!("Four A1 leans and holds {size}.");
    assert_eq!(table(&journal).leaning, told);
    // Those that hold as much are told together.
    lean(&mut journal, blocks[2]);
    assert_eq!(marked(&journal), ["Four A1", "Four A3"]);
    let told = format!("Four A1, Four A3 lean and hold {size} each.");
    assert_eq!(table(&journal).leaning, told);
    // Once it is cut it does not lean.
    let pieces = vec![blocks[0], blocks[2]];
    let task = Task::SquareUp;
    act(&mut journal, &Command::Tick { task, pieces }, 3);
    assert_eq!(marked(&journal), [""; 0]);
    assert_eq!(table(&journal).leaning, "");
}

/// A four at the left edge, within its column, is 3/16 in short both ways: the binding hides what is
/// missing across, and nothing what is missing down.
#[test]
fn what_is_open_is_told_by_its_way_and_kept_once() {
    let words = Words::english();
    let mut journal = stitched(6, 8);
    let piece = Rect::from([2, 0, 2, 2]);
    let typed = Query::Measure {
        piece,
        width: "9 5/16".into(),
        height: "9 5/16".into(),
    };
    let verdict = |journal: &Journal| plain(&measure_view(journal, &typed, &words).verdict);
    let open = "Down: nothing makes up for the missing 3/16 in yet.";
    let before = verdict(&journal);
    assert!(before.contains("Short 3/16 in at the left"), "{before}");
    let keep = format!("{open} Keep this measure, then see what can be done.");
    assert!(before.contains(&keep), "{before}");
    assert!(!before.contains("Across: nothing"), "{before}");
    sized(&mut journal, piece, FULL - 12, FULL - 12);
    let after = verdict(&journal);
    assert!(!after.contains("Keep this measure"), "{after}");
    let see = format!("{open} See what can be done.");
    assert!(after.contains(&see), "{after}");
    let other = Query::Measure {
        piece,
        width: "9 5/16".into(),
        height: "9 1/4".into(),
    };
    let other = plain(&measure_view(&journal, &other, &words).verdict);
    assert!(other.contains("Keep this measure"), "{other}");
    // The step and the screen of what is off say the way too.
    let card = card_of(&journal, Task::SquareUp, FOUR);
    let how = if card.piece == piece {
        plain(&card.how)
    } else {
        let throw = journal.throw();
        let args = (Some(Seam::Level), "short-open");
        let said = crate::show::measuring::made_up(throw, piece, args.0, args.1, context(&words));
        plain(&said)
    };
    let step = format!("{open} See “This one is off” before you go on.");
    assert!(how.contains(&step), "{how}");
    let lines = plain(&off_view(&journal, piece, None).lines);
    assert!(lines.contains(open), "{lines}");
    // By its sides too.
    let side = || "9 5/16".to_string();
    let typed = OutlineTyped {
        top: side(),
        right: side(),
        bottom: side(),
        left: side(),
        ..OutlineTyped::default()
    };
    let sides = Query::Outline { piece, typed };
    let verdict = |journal: &Journal| plain(&measure_view(journal, &sides, &words).verdict);
    assert!(verdict(&journal).contains(&keep));
    let keep_it = measure_view(&journal, &sides, &words).keep.unwrap();
    act(&mut journal, &keep_it.action, 3);
    assert!(verdict(&journal).contains(&see));
}

/// What a lap makes up for in part leaves the other part open.
#[test]
fn a_part_that_is_made_up_for_leaves_the_other() {
    for (code, way, part, text) in [
        (
            "en",
            "across",
            "rest",
            "Across: nothing makes up for the other ⅛ in yet.",
        ),
        (
            "en",
            "down",
            "all",
            "Down: nothing makes up for the missing ⅛ in yet.",
        ),
        (
            "de",
            "across",
            "all",
            "In der Breite sind die fehlenden ⅛ in noch nicht ausgeglichen.",
        ),
        (
            "de",
            "down",
            "rest",
            "In der Höhe sind die übrigen ⅛ in noch nicht ausgeglichen.",
        ),
    ] {
        let args = [
            ("by", "⅛ in".into()),
            ("way", way.into()),
            ("part", part.into()),
        ];
        assert_eq!(Words::of(code).say("short-left", &args), text);
    }
}

/// Of two fours one leans and is left out; the other is ticked by itself.
#[test]
fn the_one_that_is_left_is_ticked_as_one() {
    let mut journal = stitched(4, 2);
    let blocks = journal.throw().assembly().blocks();
    lean(&mut journal, blocks[0]);
    let label = |journal: &Journal| {
        let card = card_of(journal, Task::SquareUp, FOUR);
        for_all(&card).label.clone()
    };
    let card = card_of(&journal, Task::SquareUp, FOUR);
    let next = |b: &&Button| matches!(b.action, Command::TickNext { .. });
    let other = card.ticks.iter().find(next).expect("a tick of the other");
    assert_eq!(
        other.label,
        "The other one squared up (not measured), without Four A1"
    );
    let mut more = stitched(6, 2);
    let blocks = more.throw().assembly().blocks();
    sized(&mut more, blocks[1], FULL, FULL);
    sized(&mut more, blocks[2], FULL, FULL);
    assert_eq!(label(&more), "All 3 squared up (one not measured)");
    let german = Words::of("de");
    let one = [("n", 1.into()), ("past", "genäht".into())];
    assert_eq!(german.say("tick-some", &one), "Das andere genäht");
}

/// Five squares have the same fabric, three of them in front and two behind.
#[test]
fn one_fabric_is_one() {
    let mut journal = begin(Plan {
        across: 5,
        down: 1,
        ..Plan::default()
    });
    for n in 0..5 {
        let action = Command::SetFace {
            pieces: vec![Rect::square(0, n)],
            face: if n < 3 { Face::Front } else { Face::Back },
            print: Some(0),
            laid_on: false,
        };
        act(&mut journal, &action, 0);
    }
    let pack = Command::AddPack {
        side: inches(6),
        count: Count::from(12),
        makes: crate::cloth::pile::Use::Fabric { print: 0 },
        name: "Pack".into(),
        mixed: false,
    };
    act(&mut journal, &pack, 0);
    all_ready(&mut journal, Task::Cut, Kind::Square, 1);
    let card = card_of(&journal, Task::CutFabric, Kind::Square);
    assert_eq!(for_all(&card).label, "All 5 cut from one fabric");
    let args = [("n", 30.into()), ("fabrics", 1.into())];
    let glued = |code| Words::of(code).say("tick-all-fabrics", &args);
    assert_eq!(["en", "de"].map(glued), ["All 30 glued", "Alle 30 beklebt"]);
    let planned = [("front", 1.into()), ("back", 0.into())];
    assert_eq!(
        Words::english().say("did-wish", &planned),
        "Fabric planned: one square on the front, 0 on the back"
    );
}

/// Four by five squares are two rows of fours and one of two pairs; five by four a third column of pairs.
#[test]
fn a_row_of_pairs_is_not_called_one_of_fours() {
    let english = Words::english();
    let mut journal = bare_denim(4, 5);
    all_ready(&mut journal, Task::Cut, Kind::Square, 1);
    let mut told = Vec::new();
    for hour in 2..5 {
        let card = card_of(&journal, Task::Dot, Kind::Pair);
        told.extend(card.together.clone());
        act(
            &mut journal,
            &for_all_of_row(&card).action,
            hour * 3_600_000,
        );
    }
    assert_eq!(
        told,
        [
            "the first of 4 in row A of fours",
            "the first of 4 in row B of fours",
            "the first of 2 in row C of pairs"
        ]
    );
    let name = |across, down, rect: [u16; 4], words: &Words| {
        let journal = bare_denim(across, down);
        names::piece(journal.throw(), rect.into(), context(words))
    };
    let german = Words::of("de");
    for (across, down, rect, en, de) in [
        (4, 5, [4, 0, 1, 4], "Row of pairs C", "Paarreihe C"),
        (4, 5, [2, 0, 2, 4], "Row of fours B", "Viererreihe B"),
        (4, 6, [4, 0, 2, 4], "Row of fours C", "Viererreihe C"),
        (5, 4, [0, 4, 4, 1], "Column of pairs 3", "Paarspalte 3"),
        (5, 4, [0, 2, 4, 2], "Column of fours 2", "Viererspalte 2"),
    ] {
        assert_eq!(name(across, down, rect, &english), en);
        assert_eq!(name(across, down, rect, &german), de);
    }
}

/// The button for the row in hand.
fn for_all_of_row(card: &Card) -> &Button {
    let row = |button: &&Button| matches!(button.action, Command::TickSitting { .. });
    card.ticks.iter().find(row).expect("a row is ticked")
}

/// What the plan page tells of a grid that is typed is what it tells once the throw has it.
#[test]
fn layers_of_a_plan_to_come_are_those_the_throw_then_has() {
    let words = Words::english();
    let context = context(&words);
    let layers = |journal: &Journal, typed: Option<&PlanDraft>| {
        let view = crate::show::plan::plan_of(journal, typed, context);
        let found = view
            .figures
            .into_iter()
            .find(|f| f.label == "Layers of cloth");
        (found.expect("layers are told").value.text, view.change)
    };
    let mut journal = crate::demo::throw(context.now);
    let mut typed = crate::show::plan::draft_of(&journal.throw().plan, context);
    (typed.across, typed.down) = ("5".into(), "9".into());
    let (foreseen, change) = layers(&journal, Some(&typed));
    let change = change.expect("it can be changed").action;
    let places = Rect::grid(5, 9).squares();
    let covers: Vec<_> = places.map(|s| journal.throw().cover(s)).collect();
    // Sewn fours change places with those that are no longer whole: by the places of the old grid a lap
    // would have five layers.
    assert_eq!(crate::faces::spread::layers(5, 9, &covers), (5, 8));
    act(&mut journal, &change, context.now);
    let (text, _) = layers(&journal, None);
    assert_eq!(foreseen, text);
    assert_eq!(
        text,
        "up to 4 where two squares meet, 8 where four corners meet"
    );
}

/// The way through the work and the sheet count the same steps: seams are snipped with the binding, before
/// the first wash.
#[test]
fn snipping_belongs_to_the_binding_on_paper_too() {
    let words = Words::english();
    let journal = begin(Plan {
        joining: Joining::Exposed,
        ..Plan::default()
    });
    let sheet = printed(&journal, &words);
    let found = stages(journal.throw());
    let [binding, washing] = ["Binding", "Washing"].map(|title| {
        let stage = sheet.stages.iter().find(|stage| stage.title == title);
        stage.unwrap_or_else(|| panic!("{title}"))
    });
    for (stage, of) in [(binding, Stage::Bound), (washing, Stage::Washed)] {
        assert_eq!(stage.steps.len() as u32, found[&of].steps);
    }
    // The edge is trimmed, strips are cut, joined and pressed, the binding is glued and stitched.
    assert_eq!(binding.steps.len(), 7);
    assert_eq!(binding.columns.last().map(String::as_str), Some("snip"));
    assert_eq!(washing.columns, ["wash", "clip the threads"]);
    assert!(
        sheet
            .card
            .order
            .last()
            .unwrap()
            .ends_with("wash, clip the threads")
    );
}
