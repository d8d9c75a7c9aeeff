//! What the screens say is what a sewing teacher would say.

use super::*;
use crate::measure::in_mm;
use crate::plan::Stitch;
use crate::show::Mark;
use crate::show::picture::Ink;
use crate::throw::{Event, Mishap};

/// Make a record of these events on top of another, as an older Lapwork could have written it.
pub(super) fn with(journal: &Journal, events: Vec<Event>) -> Journal {
    let mut text = journal.text();
    let n = journal.entries().count() as u64 + 1;
    let what = crate::log::journal::What::Do(events);
    text += &crate::log::journal::Entry { n, at: 2, what }.line();
    Journal::read(text.as_bytes()).expect("it follows").journal
}

/// A fabric glued over a scorch in a sewn four is stitched round: no lap holds its edges.
#[test]
fn a_patch_on_a_sewn_square_is_stitched_round() {
    let mut journal = stitched(4, 2);
    let square = Rect::square(0, 0);
    let off = off_view(&journal, square, Some(Mishap::Scorched));
    let patch = |w: &&crate::show::RemedyRow| matches!(w.button.action, Command::Patch { .. });
    let way = off.ways.iter().find(patch).expect("a patch is offered");
    assert!(
        plain(&way.lines).contains("stitch it down all round"),
        "{way:?}"
    );
    act(&mut journal, &way.button.action, 2);
    for (n, task) in [Task::CoverFront, Task::PressCover, Task::CoolCover]
        .into_iter()
        .enumerate()
    {
        let hour = 10 + n as i64;
        all_ready(&mut journal, task, Kind::Square, hour);
    }
    let throw = journal.throw();
    assert_eq!(throw.next(square), Some(Task::StitchPatch));
    let card = card_of(&journal, Task::StitchPatch, Kind::Square);
    assert_eq!(card.station, Station::Machine);
    assert!(plain(&card.how).contains("on all four sides, ⅛ in inside its edge"));
    act(&mut journal, &card.ticks[0].action, 60_000_000);
    assert!(journal.throw().complete(square));
    // Damage on the other face is covered too, and stitched round once more.
    let off = off_view(&journal, square, Some(Mishap::Scorched));
    let way = off.ways.iter().find(patch).expect("the back is free");
    act(&mut journal, &way.button.action, 60_000_001);
    let tasks = journal.throw().tasks(square);
    let rounds = tasks.iter().filter(|t| **t == Task::StitchPatch).count();
    assert_eq!(rounds, 2);
}

/// Its thread is counted: four sides of 3¾ in, clear of the laps, one straight row in stitches of 3 mm through denim
/// and cotton, on the spool of one needle and off the bobbin.
#[test]
fn the_thread_round_a_patch_is_counted() {
    use crate::cloth::weight::{Cloth, in_mm_thick};
    use crate::measure::in_mm;
    let words = Words::english();
    let metres = |journal: &Journal, item| {
        let throw = journal.throw();
        let account = crate::throw::account::account(throw);
        let amount = crate::show::gather::amount(throw, &account, item).expect("thread");
        in_mm(amount.length.expect("a length"))
    };
    let mut journal = stitched(4, 2);
    let item = crate::throw::Item::Thread;
    let before = metres(&journal, item);
    let off = off_view(&journal, Rect::square(0, 0), Some(Mishap::Scorched));
    let patch = |w: &&crate::show::RemedyRow| matches!(w.button.action, Command::Patch { .. });
    let way = off.ways.iter().find(patch).expect("a patch is offered");
    act(&mut journal, &way.button.action, 2);
    let thick = in_mm_thick(Cloth::denim().thickness + Cloth::cotton().thickness);
    let round = 4.0 * 95.25 * (2.0 + 2.0 * thick / 3.0) * 1.15;
    let more = metres(&journal, item) - before;
    assert!((more - round).abs() < 0.01, "{more} {round}");
    // A twin needle turns no corner.
    for (task, hour) in [
        (Task::CoverFront, 10),
        (Task::PressCover, 11),
        (Task::CoolCover, 12),
    ] {
        all_ready(&mut journal, task, Kind::Square, hour);
    }
    let card = card_of(&journal, Task::StitchPatch, Kind::Square);
    assert!(
        card.how[0].starts_with("Put a single needle in"),
        "{:?}",
        card.how
    );
    words_are_whole(&shown_work(&journal, &words));
}

/// A loose square's fabric is held by the laps to come, and a patch of an older file stays as
/// it was.
#[test]
fn no_other_patch_is_stitched_round() {
    let mut journal = begin(Plan::default());
    all_ready(&mut journal, Task::Cut, Kind::Square, 1);
    let (piece, why) = (Rect::square(0, 0), Mishap::Scorched);
    let action = Command::Patch {
        piece,
        face: Face::Front,
        print: 0,
        why,
    };
    act(&mut journal, &action, 9_000_000);
    assert!(!journal.throw().tasks(piece).contains(&Task::StitchPatch));
    let older = with(
        &stitched(4, 2),
        vec![{
            let line = r#"{"patched":{"piece":[0,0,1,1],"why":"scorched"}}"#;
            serde_json::from_str(line).expect("an older event")
        }],
    );
    assert!(!older.throw().tasks(piece).contains(&Task::StitchPatch));
}

/// Glue goes in the wash, so that no wash comes before the patch is stitched round.
#[test]
fn no_wash_comes_before_a_patch_is_stitched_round() {
    let mut journal = unwashed();
    let whole = journal.throw().assembly().whole();
    let square = Rect::square(0, 0);
    let off = off_view(&journal, square, Some(Mishap::Scorched));
    let patch = |w: &&crate::show::RemedyRow| matches!(w.button.action, Command::Patch { .. });
    let way = off.ways.iter().find(patch).expect("a patch is offered");
    assert_eq!(journal.throw().waits_for(whole), None);
    act(&mut journal, &way.button.action, 1 << 40);
    assert_eq!(journal.throw().waits_for(whole), Some(square));
    let wash = Command::Tick {
        task: Task::Wash,
        pieces: vec![whole],
    };
    assert!(journal.propose(&wash, 1 << 40).is_err());
    for (task, more) in [
        (Task::CoverFront, 1),
        (Task::PressCover, 2),
        (Task::CoolCover, 9_000_000),
        (Task::StitchPatch, 9_000_001),
    ] {
        let pieces = vec![square];
        act(
            &mut journal,
            &Command::Tick { task, pieces },
            (1 << 40) + more,
        );
    }
    act(&mut journal, &wash, (1 << 40) + 9_000_002);
}

/// Fours with an open verdict are left out of a tick for all, by name, and unmeasured ones are
/// said to be so.
#[test]
fn a_tick_for_all_leaves_open_verdicts_out() {
    let words = Words::english();
    let mut journal = stitched(8, 4);
    // One within the throw is short; one leans.
    let (short, skewed) = (Rect::from([0, 2, 2, 2]), Rect::from([2, 4, 2, 2]));
    sized(&mut journal, short, FULL - 15, FULL);
    let side = sixty_fourths(FULL + 10);
    let sides = crate::measure::outline::Sides {
        top: side,
        right: side,
        bottom: side,
        left: side,
    };
    let measures = crate::measure::outline::Measures {
        sides,
        diagonals: Some((sixty_fourths(890), sixty_fourths(860))),
    };
    let piece = skewed;
    act(
        &mut journal,
        &Command::MeasureOutline { piece, measures },
        2,
    );
    // The printed sheet has the sides as they were read.
    let day = crate::show::dates::ZoneName::default().calendar();
    let printed = crate::show::sheet::sheet(
        &journal,
        context(&words),
        crate::show::export::PrintUnits::Inches,
        &|at| day.day(at),
    );
    let blocks = printed.squaring.unwrap().blocks;
    let leans = blocks.iter().find(|b| b.label == "Four B3").unwrap();
    let read = context(&words).length(side).text;
    assert_eq!(leans.measured, Some([read.clone(), read]));
    sized(&mut journal, Rect::from([0, 4, 2, 2]), FULL, FULL);
    let card = card_of(&journal, Task::SquareUp, FOUR);
    let all = for_all(&card);
    assert_eq!(
        all.label,
        "These 6 squared up (5 not measured), without Four A2, Four B3"
    );
    assert!(plain(&card.how).contains("Not ticked with the rest: Four A2, Four B3."));
    act(&mut journal, &all.action, 3);
    let throw = journal.throw();
    assert!(!throw.has(short, Task::SquareUp) && !throw.has(skewed, Task::SquareUp));
    let squared = throw.assembly().blocks();
    let squared = squared.iter().filter(|b| throw.has(**b, Task::SquareUp));
    assert_eq!(squared.count(), 6);
    let rows = super::history::rows(&journal, 1, context(&words));
    assert!(
        rows[0].text.ends_with("(5 not measured)"),
        "{}",
        rows[0].text
    );
    // Each is still ticked by itself.
    let card = card_of(&journal, Task::SquareUp, FOUR);
    assert_eq!((card.piece, card.ticks.len()), (short, 1));
    assert!(card.off_first);
    act(&mut journal, &card.ticks[0].action, 4);
}

/// Gluing different fabrics says how many.
#[test]
fn a_tick_for_all_counts_the_fabrics() {
    let mut journal = begin(Plan {
        across: 4,
        down: 2,
        ..Plan::default()
    });
    for (n, print) in [0, 1, 1, 2].into_iter().enumerate() {
        let action = Command::SetFace {
            pieces: vec![Rect::square(0, n as u16)],
            face: Face::Front,
            print: Some(print),
            laid_on: false,
        };
        act(&mut journal, &action, 0);
    }
    let mut to_cut = journal.clone();
    all_ready(&mut journal, Task::Cut, Kind::Square, 1);
    let card = card_of(&journal, Task::CoverFront, Kind::Square);
    assert_eq!(for_all(&card).label, "All 4 glued (3 fabrics)");
    // Squares that are cut from the fabrics first are not glued yet.
    for print in 0..3 {
        let pack = Command::AddPack {
            side: crate::measure::inches(6),
            count: Count::from(12),
            makes: crate::cloth::pile::Use::Fabric { print },
            name: "Pack".into(),
            mixed: false,
        };
        act(&mut to_cut, &pack, 0);
    }
    all_ready(&mut to_cut, Task::Cut, Kind::Square, 1);
    let card = card_of(&to_cut, Task::CutFabric, Kind::Square);
    assert_eq!(for_all(&card).label, "All 4 cut from 3 fabrics");
}

/// What the measure screen says of the fours measured so far.
fn fours_said(journal: &Journal) -> String {
    let words = Words::english();
    let trims = answer(journal, &Query::Trim, context(&words));
    match trims {
        Ok(View::Trim(view)) => view.said.replace('\u{a0}', " "),
        other => panic!("{other:?}"),
    }
}

/// Three fours advise nothing, and fours that differ by half an inch are not as planned.
#[test]
fn few_or_uneven_fours_are_not_taken_for_a_habit() {
    let mut journal = stitched(8, 6);
    let blocks = journal.throw().assembly().blocks();
    for piece in blocks.iter().take(3) {
        sized(&mut journal, *piece, FULL + 12, FULL + 12);
    }
    assert_eq!(
        fours_said(&journal),
        "3 fours measured: 3/16 in over on average so far. \
         Too few to change the lap by: measure five or more."
    );
    let mut journal = stitched(8, 6);
    let off = [-15, 15, -9, 9, -12, 12, 12, -12, 9, -9, 15, -15];
    for (piece, off) in blocks.iter().zip(off) {
        sized(&mut journal, *piece, FULL + off, FULL + off);
    }
    let said = fours_said(&journal);
    assert!(said.contains("but they differ: from "), "{said}");
    assert!(!said.contains("fairly sure"), "{said}");
}

/// A pair that lies beside the fours tells nothing of how fours come out.
#[test]
fn pairs_are_not_told_as_fours() {
    let mut journal = stitched(3, 2);
    sized(&mut journal, Rect::from([0, 2, 2, 1]), 320, FULL - 16);
    assert_eq!(fours_said(&journal), "No four measured yet.");
    sized(&mut journal, Rect::from([0, 0, 2, 2]), FULL, FULL);
    let said = fours_said(&journal);
    assert!(said.starts_with("One four measured"), "{said}");
    // Nor do its sides come into theirs, in the window or in the figures for programs.
    let words = Words::english();
    let (figures, _) = crate::show::measuring::summed(journal.throw(), context(&words));
    assert_eq!(figures[0].value.text.replace('\u{a0}', " "), "9½ in");
    let given = figures_for_programs(&journal)["measured"].clone();
    assert_eq!(
        (&given["blocks"], &given["mean"]["shown"]),
        (&1.into(), &"9½ in".into())
    );
}

fn figures_for_programs(journal: &Journal) -> Value {
    let words = Words::english();
    figures(journal, context(&words))
}

/// Two pairs beside the fours of a throw of five rows are in a pair, not in a four, until they are
/// squared up; a square that is sewn in is that also while fabric is laid onto it.
#[test]
fn the_bench_says_of_each_square_what_it_is_in() {
    use crate::show::bench::{SquareStage, stage};
    let mut journal = stitched(2, 3);
    let at = |journal: &Journal, row: u16| stage(journal.throw(), Rect::square(row, 0));
    assert_eq!(at(&journal, 0), SquareStage::Blocked);
    assert_eq!(at(&journal, 2), SquareStage::Paired);
    let lay_on = Command::SetFace {
        pieces: vec![Rect::square(0, 0)],
        face: Face::Front,
        print: Some(0),
        laid_on: true,
    };
    act(&mut journal, &lay_on, 1 << 40);
    assert!(!journal.throw().complete(Rect::square(0, 0)));
    assert_eq!(at(&journal, 0), SquareStage::Blocked);
}

/// A four whose laps came out too narrow for the needle is not only trimmed: that its fringe is
/// too short is said, and sewing it again is offered.
#[test]
fn a_lap_sewn_too_narrow_is_told_and_can_be_sewn_again() {
    let mut journal = stitched(4, 2);
    let piece = Rect::from([0, 0, 2, 2]);
    // Laps of ¼ in instead of ½ in under a twin needle of 4 mm.
    sized(&mut journal, piece, FULL + 16, FULL);
    let card = card_of(&journal, Task::SquareUp, FOUR);
    let how = plain(&card.how);
    assert!(
        // (6.35 mm − 4 mm) / 2 are 1.175 mm, 1.48 of 32 in an inch.
        how.contains("its lap is only ¼ in, with ≈ 1/32 in of fringe"),
        "{how}"
    );
    assert!(how.contains("stretched would measure the same"), "{how}");
    // What can be done comes before the tick, and a tick for all leaves it out.
    assert!(card.off_first && card.off == Some(piece));
    assert!(
        for_all(&card).label.ends_with("without Four A1"),
        "{:?}",
        card.ticks
    );
    // Another takes four squares, of which three are on the pile.
    let mut piled = Journal::read(journal.text().as_bytes()).unwrap().journal;
    let pack = Command::AddPack {
        side: journal.throw().plan.side,
        count: Count::from(3),
        makes: crate::cloth::pile::Use::ANY_DENIM,
        name: "Pack".into(),
        mixed: false,
    };
    act(&mut piled, &pack, 2);
    // It is short as well: a new one is offered.
    sized(&mut piled, piece, FULL - 24, FULL);
    let off = off_view(&piled, piece, None);
    let anew = off
        .ways
        .iter()
        .find(|way| way.title.starts_with("Set it aside"));
    let takes = "It takes 4 squares, of which the pile and the spares lack 1.";
    assert!(
        anew.is_some_and(|way| way.lines.contains(&takes.to_string())),
        "{:?}",
        off.ways
    );
    let off = off_view(&journal, piece, None);
    assert_eq!(off.rest, None);
    // Cloth that stretched is trimmed, and nothing of it is unpicked.
    let said = plain(&off.lines);
    assert!(said.contains(
        "If the lap is as wide as planned, the cloth has stretched: then it is enough to"
    ));
    let way = &off.ways[0];
    assert_eq!(
        plain(std::slice::from_ref(&way.title)),
        "Unpick its lap and sew it again at ½ in"
    );
    act(&mut journal, &way.button.action, 2);
    let pair = Rect::from([0, 0, 1, 2]);
    assert_eq!(journal.throw().next(pair), Some(Task::Dot));
    // One that is right is not.
    sized(&mut journal, Rect::from([0, 2, 2, 2]), FULL + 2, FULL);
    assert!(!card_of(&journal, Task::SquareUp, FOUR).off_first);
    assert!(
        off_view(&journal, Rect::from([0, 2, 2, 2]), None)
            .ways
            .is_empty()
    );
}

/// An exposed seam frays only where it is snipped, which has a step before the first wash; how a
/// seam is pressed is said, and no lap is spoken of.
#[test]
fn exposed_seams_are_pressed_open_and_snipped_before_the_wash() {
    let words = Words::english();
    for joining in [Joining::Exposed, Joining::Seamed] {
        let mut journal = begin(Plan {
            across: 4,
            down: 4,
            joining,
            ..Plan::default()
        });
        all_denim(&mut journal);
        let mut steps: Vec<Task> = Vec::new();
        loop {
            let view = work_view(&journal, None, context(&words));
            let Some(card) = view.card else { break };
            let said = plain(&card.how);
            assert!(
                !said.contains(" lap") && !said.contains("Lap ") || card.task == Task::GlueBinding,
                "{:?}: {said}",
                card.task
            );
            if card.task == Task::PressSeam {
                assert!(said.contains("open"), "{said}");
            }
            // Once, before anything is joined.
            let is_first = card.task == Task::Pin && !steps.contains(&Task::Pin);
            for first in [
                "Sew a test scrap first, with this seam, needle and thread",
                "Before the first seam, lay all squares out on the floor",
            ] {
                assert_eq!(said.contains(first), is_first, "{:?}: {said}", card.task);
            }
            steps.push(card.task);
            act(&mut journal, &for_all(&card).action, 1);
        }
        let at = |task| steps.iter().position(|t| *t == task);
        match joining {
            Joining::Exposed => {
                assert!(at(Task::StitchBinding) < at(Task::Snip));
                assert!(at(Task::Snip) < at(Task::Wash));
            }
            _ => assert_eq!(at(Task::Snip), None),
        }
    }
}

/// By hand: an allowance of 12.7 mm and rows 4 mm apart about its line. The squares open at the row
/// 14.7 mm from the raw edges, so high does it stand; the other row is 10.7 mm from these, which is the
/// fringe told. The row where they open is drawn 0.8 mm clear of the cloth.
#[test]
fn a_seam_cut_through_stands_as_high_as_it_takes_up() {
    let words = Words::english();
    let spacing = tenths_of_mm(40);
    for joining in [Joining::Exposed, Joining::Seamed] {
        let plan = Plan {
            stitch: Stitch::Twin { spacing },
            ..Plan::default().joined(joining)
        };
        let drawn = pictures::section(&plan, context(&words));
        let mut standing = Vec::new();
        let mut rows = Vec::new();
        for mark in &drawn.marks {
            match mark {
                Mark::Area { y, w, h, .. } if h > w => standing.push((*y, *h)),
                Mark::Line { y1, ink, .. } if *ink == Ink::Stitch => rows.push(*y1),
                _ => {}
            }
        }
        let [(top, high), other] = standing[..] else {
            panic!("{standing:?}")
        };
        assert_eq!((top, high), other);
        assert!((high - 14.7).abs() < 1e-6, "{high}");
        let from_raw = |y: f64| match joining {
            Joining::Exposed => y - top,
            _ => top + high - y,
        };
        let mut rows: Vec<i64> = rows
            .iter()
            .map(|y| (from_raw(*y) * 10.0).round() as i64)
            .collect();
        rows.sort_unstable();
        assert_eq!(rows, [107, 139]);
        assert!((in_mm(plan.take()) - 29.4).abs() < 1e-6);
    }
}

/// One that was washed before there was such a step is not asked to go back to it.
#[test]
fn what_is_washed_already_is_not_snipped() {
    let journal = begin(Plan {
        across: 2,
        down: 1,
        joining: Joining::Exposed,
        ..Plan::default()
    });
    let whole = Rect::from([0, 0, 1, 2]);
    assert!(journal.throw().tasks(whole).contains(&Task::Snip));
    let mut throw = journal.throw().clone();
    let (task, pieces) = (Task::Wash, vec![whole]);
    let made = Vec::new();
    throw.apply(&Event::Done { task, pieces, made }, 1);
    assert!(!throw.tasks(whole).contains(&Task::Snip));
}

/// Two copies of a throw, and what is to be decided between them.
fn decided(first: &[Command], second: &[Command], joint: &Journal) -> Vec<[String; 2]> {
    let words = Words::english();
    let made = |actions: &[Command], from: Time| {
        let mut journal = joint.clone();
        for (n, action) in actions.iter().enumerate() {
            act(&mut journal, action, from + n as i64);
        }
        journal
    };
    let (here, brought) = (made(first, 100), made(second, 200));
    let view = import::import(Some(&here), &brought, (1, 0), context(&words));
    assert!(view.said.iter().all(|s| !s.contains("All else")));
    let rows = view.conflicts.into_iter();
    rows.map(|c| [plain(&c.here), plain(&c.brought)]).collect()
}

/// What differs between two choices that read alike is named, and what is lost with the other.
#[test]
fn choices_of_a_merge_say_what_is_lost() {
    let joint = begin(Plan::default());
    let cut = |from: u16| Command::Tick {
        task: Task::Cut,
        pieces: (from..from + 4)
            .map(|n| Rect::square(n / 6, n % 6))
            .collect(),
    };
    let rows = decided(&[cut(0)], &[cut(2)], &joint);
    let [here, brought] = &rows[0];
    let only = "Cut: 4 squares Only on this side, and lost if you choose the other: Cut: Square";
    assert_eq!(*here, format!("{only} 1·1, Square 1·2"));
    assert_eq!(*brought, format!("{only} 1·5, Square 1·6"));
    // A plan that differs in what its line does not tell.
    let plan = |minutes| Command::ChangePlan {
        plan: Plan {
            cooling_minutes: minutes,
            ..Plan::default()
        },
    };
    let rows = decided(&[plan(7)], &[plan(8)], &joint);
    assert_ne!(rows[0][0], rows[0][1]);
    assert!(rows[0][0].contains(": 7"), "{rows:?}");
}

/// While another grid is typed the layers stay those of the faces.
#[test]
fn layers_are_told_of_the_faces_while_the_grid_is_typed() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan::default());
    // Before the faces are chosen the label says that only the denim is counted.
    let typed = crate::show::plan::draft_of(&journal.throw().plan, context);
    let view = crate::show::plan::plan_of(&journal, Some(&typed), context);
    let bare = "Layers of denim, without fabric";
    let found = view.figures.iter().find(|f| f.label == bare);
    assert_eq!(
        found.map(|f| f.value.text.as_str()),
        Some("up to 2 where two squares meet, 4 where four corners meet")
    );
    for face in Face::BOTH {
        let action = Command::SetFace {
            pieces: vec![Rect::square(0, 0)],
            face,
            print: Some(0),
            laid_on: false,
        };
        act(&mut journal, &action, 0);
    }
    let layers = |typed: &PlanDraft| {
        let view = crate::show::plan::plan_of(&journal, Some(typed), context);
        let found = view.figures.into_iter();
        let layers = found.filter(|f| f.label == "Layers of cloth");
        layers
            .map(|f| f.value.text)
            .next()
            .expect("layers are told")
    };
    let mut typed = crate::show::plan::draft_of(&journal.throw().plan, context);
    let texts = layers(&typed);
    assert_eq!(
        texts,
        "up to 4 where two squares meet, 6 where four corners meet"
    );
    typed.across = "7".into();
    assert_eq!(layers(&typed), texts);
}

/// Who works in centimetres or in inches types the plate's opening in millimetres, as plates and needles
/// are marked; of a bare fraction nobody knows which it is.
#[test]
fn a_plate_is_typed_in_millimetres() {
    let words = Words::english();
    for system in [System::Metric, System::Inch] {
        let context = Context {
            ruler: Ruler {
                system,
                metric: MetricUnit::Cm,
                ..Ruler::default()
            },
            ..context(&words)
        };
        let journal = begin(Plan::default());
        let shown = super::scraps::scraps(&journal, None, context);
        let typed = crate::show::ScrapTyped {
            opening: "7".into(),
            width: "4".into(),
            ..shown.tidy
        };
        let shown = super::scraps::scraps(&journal, Some(&typed), context);
        assert_eq!(shown.faults, []);
        let opening = shown.plate.map(|b| b.action);
        let seven = tenths_of_mm(70);
        assert_eq!(opening, Some(Command::SetPlate { opening: seven }));
        assert_eq!((&*shown.tidy.opening, &*shown.tidy.width), ("7 mm", "4 mm"));
        // 9/32 in are 7.14375 mm.
        for (said, kept) in [("9/32 in", Some(inches(9) / 32)), ("9/32", None)] {
            let typed = crate::show::ScrapTyped {
                opening: said.into(),
                ..shown.tidy.clone()
            };
            let shown = super::scraps::scraps(&journal, Some(&typed), context);
            let action = shown.plate.map(|b| b.action);
            assert_eq!(action, kept.map(|opening| Command::SetPlate { opening }));
            assert_eq!(shown.faults.len(), usize::from(kept.is_none()));
        }
    }
}

/// Of two squares, one of them cut, the other gets the denim; a refusal speaks of the denim, and
/// one of a pack of the pack.
#[test]
fn refusals_say_what_stands_in_the_way() {
    let words = Words::english();
    let mut journal = begin(Plan::default());
    let [cut, open] = [Rect::square(0, 0), Rect::square(0, 1)];
    let tick = Command::Tick {
        task: Task::Cut,
        pieces: vec![cut],
    };
    act(&mut journal, &tick, 0);
    let denim = |pieces| Command::SetDenim {
        pieces,
        denim: 1,
        wrong_side_up: false,
    };
    act(&mut journal, &denim(vec![cut, open]), 1);
    let throw = journal.throw();
    assert_eq!((throw.cover(cut).denim, throw.cover(open).denim), (0, 1));
    let said = |action: &Command| {
        let why = journal.propose(action, 2).expect_err("it is refused");
        let said = errors::rejection(&why, Some(journal.throw()), context(&words));
        plain(&[said.said, said.next])
    };
    let refused = said(&denim(vec![cut]));
    assert!(
        refused.starts_with("Square 1·1 is cut already, so its denim stays."),
        "{refused}"
    );
    let pack = Command::AddPack {
        side: inches(4),
        count: Count::from(42),
        makes: crate::cloth::pile::Use::Fabric { print: 0 },
        name: "Pack".into(),
        mixed: false,
    };
    let refused = said(&pack);
    assert!(
        refused
            .starts_with("Squares of 4 in are too small for this throw: it is planned with 5 in."),
        "{refused}"
    );
}

/// Made again, a throw does not take over a trim size its own lap contradicts; and such a size is
/// told where it is planned.
#[test]
fn a_trim_size_that_cannot_be_is_not_made_again() {
    let words = Words::english();
    let plan = Plan {
        lap: eighth_inches(5),
        trim: Some(crate::measure::half_inches(19)),
        ..Plan::default()
    };
    let journal = begin(plan);
    let again = crate::show::again(&journal, context(&words));
    assert_eq!(again.draft.trim, "");
    let said = crate::show::plan::draft(
        &crate::show::plan::draft_of(&plan, context(&words)),
        context(&words),
    );
    assert!(
        said.advice.iter().any(|a| a.code == "advice-trim"),
        "{:?}",
        said.advice
    );
    let kept = begin(Plan {
        trim: Some(eighth_inches(75)),
        ..plan
    });
    assert_ne!(crate::show::again(&kept, context(&words)).draft.trim, "");
}

/// Where only one system is needed only one is told, and long ways in metres or yards.
#[test]
fn lengths_are_told_as_she_measures_them() {
    let words = Words::english();
    let inch = context(&words);
    let metric = Context {
        ruler: Ruler {
            system: System::Metric,
            metric: MetricUnit::Cm,
            ..Ruler::default()
        },
        ..inch
    };
    let text = |shown: crate::words::Shown| shown.text.replace('\u{a0}', " ");
    assert_eq!(text(metric.far(tenths_of_mm(370_205))), "37 m");
    assert_eq!(text(inch.far(tenths_of_mm(370_205))), "40 yd");
    assert_eq!(text(metric.far(tenths_of_mm(50_000))), "5 m");
    // Whoever measures 132 in of binding in metres has no use for its tenths of a millimetre; an
    // inch ruler reads it to the mark.
    assert_eq!(text(metric.long(inches(132))), "≈ 3.35 m");
    assert_eq!(text(metric.long(tenths_of_mm(33_500))), "3.35 m");
    assert_eq!(
        text(metric.long(crate::measure::half_inches(39))),
        "≈ 49.5 cm"
    );
    assert_eq!(text(inch.long(inches(132))), "132 in");
    let spoken = metric.long(inches(132)).spoken;
    assert_eq!(spoken, "about 3.35 metres");
    let fault = crate::plan::PlanFault::Lap;
    let [one, other] = [inch, metric].map(|c| errors::plan_fault(fault, c).next);
    assert!(one.contains('½') && !one.contains("mm"), "{one}");
    assert!(other.contains("13") && !other.contains("in)"), "{other}");
    let journal = begin(Plan::default());
    let bottles = |context| format!("{:?}", super::gather::gather(&journal, context));
    assert!(bottles(inch).contains("4 fl oz") && !bottles(inch).contains("118"));
    assert!(bottles(metric).contains("118 ml"));
}

/// A part that is whole rows or columns of fours is named by them.
#[test]
fn whole_rows_are_named_by_their_letters() {
    let words = Words::english();
    let context = context(&words);
    let journal = begin(Plan::default());
    let name = |rect: [u16; 4]| names::piece(journal.throw(), Rect::from(rect), context);
    assert_eq!(name([0, 0, 4, 6]), "Rows A and B");
    assert_eq!(name([2, 0, 6, 6]), "Rows B to D");
    assert_eq!(name([0, 2, 8, 4]), "Columns 2 and 3");
    // So is one of whole fours; one that has part of a four is named by its squares.
    assert_eq!(name([0, 0, 4, 4]), "Fours A1 to B2");
    assert_eq!(name([2, 2, 2, 4]), "Fours B2 and B3");
    assert_eq!(name([0, 0, 2, 3]), "Part 1·1 to 2·3");
    let spoken = |rect: [u16; 4]| names::spoken(journal.throw(), Rect::from(rect), context);
    assert_eq!(spoken([0, 0, 4, 4]), "Fours A1 to B2");
}

/// Who says that a piece is off is asked what is wrong, not told that nothing is.
#[test]
fn a_piece_that_is_off_is_asked_about() {
    let mut journal = stitched(4, 2);
    let piece = Rect::from([0, 0, 2, 2]);
    sized(&mut journal, piece, FULL, FULL);
    let rest = off_view(&journal, piece, None).rest.expect("said");
    assert!(rest.starts_with("What is wrong with it?"), "{rest}");
    // A four that is not sewn yet is not to be measured.
    let apart = begin(Plan::default());
    let lines = off_view(&apart, piece, None).lines;
    assert!(!plain(&lines).contains("Measure it"), "{lines:?}");
}

/// The fabric on the card is the one that lies ready for that face: of a square with one on either
/// face the front's is told in front and the back's behind. A denim without a name has no line.
#[test]
fn a_card_tells_the_fabric_of_its_own_face() {
    let words = Words::english();
    let mut journal = begin(Plan::default());
    let piece = Rect::square(0, 0);
    for (face, print) in [(Face::Front, 0), (Face::Back, 1)] {
        let action = Command::SetFace {
            pieces: vec![piece],
            face,
            print: Some(print),
            laid_on: false,
        };
        act(&mut journal, &action, 0);
    }
    let throw = journal.throw();
    let told = |throw: &crate::throw::Throw, task| -> Vec<String> {
        let figures = crate::show::card_figures::card_figures(throw, task, piece, context(&words));
        figures.into_iter().map(|f| f.value.text).collect()
    };
    let names = [0, 1].map(|n: usize| throw.prints[n].name.clone());
    assert_ne!(names[0], names[1]);
    let told_of = |task| told(throw, task)[0].clone();
    assert_eq!([Task::CoverFront, Task::CoverBack].map(told_of), names);
    let denim = throw.denims[0].name.clone();
    assert_eq!(told(throw, Task::Cut)[1..], [denim]);
    let mut unnamed = throw.clone();
    unnamed.denims[0].name.clear();
    assert_eq!(told(&unnamed, Task::Cut).len(), 1);
}

/// A single straight row has no width to set; a zigzag has.
#[test]
fn a_straight_row_has_no_width_on_its_card() {
    let words = Words::english();
    let lines = |stitch| {
        let journal = begin(Plan {
            stitch,
            ..Plan::default()
        });
        let pair = Rect::from([0, 0, 1, 2]);
        let throw = journal.throw();
        crate::show::card_figures::card_figures(throw, Task::Stitch, pair, context(&words)).len()
    };
    let width = tenths_of_mm(40);
    let straight = lines(crate::plan::Stitch::Straight);
    assert_eq!(lines(crate::plan::Stitch::Zigzag { width }), straight + 1);
}

/// By hand: two squares have only their ends to bring level; two pairs one lap each, which meet in the
/// middle; two rows of six squares five each. What is pinned has seams there.
#[test]
fn what_meets_along_a_join_is_brought_into_line() {
    use crate::show::work::usual_how;
    let words = Words::english();
    let of = |joining, task, piece| {
        let plan = Plan {
            joining,
            ..Plan::default()
        };
        let throw = crate::fitting::tests::begun(plan);
        let said = usual_how(&throw, task, Rect::from(piece), context(&words));
        said.lines().last().unwrap_or_default().to_string()
    };
    let lapped = |piece| of(Joining::Lapped, Task::Dot, piece);
    assert_eq!(lapped([0, 0, 1, 2]), "Bring the ends level.");
    assert_eq!(
        lapped([0, 0, 2, 2]),
        "Bring the two laps that meet in the middle into one line first, then the ends level."
    );
    assert_eq!(
        lapped([0, 0, 4, 6]),
        "Bring the laps that meet into one line, from the middle outwards, then the ends level."
    );
    let pinned = of(Joining::Seamed, Task::Pin, [0, 0, 2, 2]);
    assert!(pinned.contains("two seams that meet"), "{pinned}");
}

/// One pair was lapped 7/16 in where ½ in is planned: it is 1/16 in longer than the other, 9 9/16 in, and the
/// four is trimmed. Larger pieces are of fours that are squared up.
#[test]
fn pairs_of_unlike_width_are_not_brought_level() {
    let words = Words::english();
    let mut journal = bare_denim(4, 4);
    all_ready(&mut journal, Task::Cut, Kind::Square, 1);
    let (a, b) = (Rect::square(0, 0), Rect::square(0, 1));
    let narrower = Command::MarkLaps {
        laps: vec![(a, b, Some(sixty_fourths(28)))],
    };
    act(&mut journal, &narrower, 2);
    let told = |piece: [u16; 4]| {
        let throw = journal.throw();
        let how = crate::show::work::usual_how(throw, Task::Dot, piece.into(), context(&words));
        let line = how.lines().last().unwrap_or_default();
        line.replace('\u{a0}', " ")
    };
    assert_eq!(
        told([0, 0, 2, 2]),
        "Pair 1·1 + 1·2 is 1/16 in longer. Bring the two laps that meet in the middle into one line, and leave \
         the ends as they come: squaring up evens them."
    );
    for even in [[0, 2, 2, 2], [0, 0, 2, 4]] {
        assert!(told(even).contains("then the ends level"), "{even:?}");
    }
    // Where 9 9/16 in is wanted, the pair lapped as planned stays 1/16 in short: no four of two like it is
    // told to be trimmed to that without a word.
    let special = |lap: i64| {
        let mut plan = journal.throw().plan;
        plan.lap = sixty_fourths(lap);
        let throw = crate::fitting::tests::begun(plan);
        let mut made = throw.clone();
        let pairs = vec![Rect::from([0, 0, 1, 2]), Rect::from([1, 0, 1, 2])];
        let half = crate::throw::Made {
            lap: sixty_fourths(32),
            ..throw.made(pairs[0])
        };
        let dotted = crate::throw::Event::Done {
            task: Task::Dot,
            pieces: pairs,
            made: vec![half],
        };
        made.apply(&dotted, 1);
        let four = Rect::from([0, 0, 2, 2]);
        let said = crate::show::work::special(&made, Task::SquareUp, four, context(&words));
        said.join(" ").replace('\u{a0}', " ")
    };
    assert!(
        special(28).starts_with("By its laps it comes out at 9½ × 9 9/16 in, smaller than 9 9/16")
    );
    assert_eq!(special(32), "");
}

/// By hand: 40 × 40 squares of 5 in lapped ½ in have laps of 800 · 5 + 400 · 9½ + 20 · 19 · 9½ +
/// 19 · 180½ = 14,839½ in, and are 722 in round: a dot every 2 in is 7,781 dots of 0.05 ml, 389 ml, which
/// is four bottles of 118 ml. Where seams are pinned, glue holds the binding alone: 361 dots or so.
#[test]
fn what_is_pinned_takes_no_glue() {
    let bottles = |joining| {
        let plan = Plan {
            across: 40,
            down: 40,
            joining,
            ..Plan::default()
        };
        let throw = crate::fitting::tests::begun(plan);
        let account = crate::throw::account::account(&throw);
        let glue = crate::show::gather::amount(&throw, &account, crate::throw::Item::Glue);
        glue.expect("glue is counted").count
    };
    assert_eq!(bottles(Joining::Lapped), 4);
    assert_eq!(bottles(Joining::Seamed), 1);
}

/// A lap is pressed as soon as it is glued, so its step warns of the iron; what is pinned has no iron yet.
#[test]
fn what_is_pressed_in_one_sitting_warns_of_the_iron() {
    use crate::throw::tasks::Caution;
    let warned = |joining, task| {
        let mut journal = begin(Plan {
            joining,
            ..Plan::default()
        });
        all_denim(&mut journal);
        all_ready(&mut journal, Task::Cut, Kind::Square, 1);
        card_of(&journal, task, Kind::Pair)
            .caution
            .map(|c| c.caution)
    };
    assert_eq!(warned(Joining::Lapped, Task::Dot), Some(Caution::Iron));
    assert_eq!(warned(Joining::Seamed, Task::Pin), None);
}

/// The hands put glue on the fabric before they lay it down, and it lies right side up.
#[test]
fn fabric_has_its_glue_before_it_is_laid_on() {
    let words = Words::english();
    let mut keys = Vec::new();
    for face in ["front", "back"] {
        for kind in ["", "-patch", "-laid-on"] {
            keys.push(format!("how-cover-{face}{kind}"));
        }
    }
    for key in keys {
        let said = say!(context(&words), key.as_str(), round = "1 in", side = "4 in");
        let at = |part: &str| said.find(part).unwrap_or_else(|| panic!("{key}: {said}"));
        assert!(at("washable glue") < at(" it "), "{key}: {said}");
        assert!(at("washable glue") < at("right side up"), "{key}: {said}");
    }
}

/// A twin needle does not sew backwards, in a seam as in a lap; and where a square lies with its
/// wrong side to the front, the seam still comes on the back.
#[test]
fn a_seam_with_a_twin_needle_is_secured_by_tying() {
    let words = Words::english();
    for (joining, together) in [(Joining::Seamed, "fronts"), (Joining::Exposed, "backs")] {
        for stitch in [Plan::default().stitch, Stitch::Straight] {
            let journal = begin(Plan {
                joining,
                stitch,
                ..Plan::default()
            });
            let said = |task| {
                let pair = Rect::from([0, 0, 1, 2]);
                crate::show::work::usual_how(journal.throw(), task, pair, context(&words))
            };
            assert!(said(Task::Pin).contains(&format!("with their {together} together")));
            let twin = stitch != Stitch::Straight;
            let stitched = said(Task::Stitch);
            assert_eq!(stitched.contains("tie them"), twin, "{stitched}");
            assert_eq!(stitched.contains("stitches back at both ends"), !twin);
        }
    }
}
