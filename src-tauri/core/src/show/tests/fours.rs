//! Measured fours: their verdict, the ways to save a short one, and the sizes for all.

use super::*;
use crate::fitting::trimming::shortfalls;
use crate::measure::nm;
use crate::plan::binding::EdgeSide;

/// What is cut off is told in whole millimetres on a metric ruler, what is left on one side.
#[test]
fn metric_trims_are_whole_millimetres() {
    let words = Words::english();
    let ruler = Ruler {
        system: System::Metric,
        metric: MetricUnit::Mm,
        ..Ruler::default()
    };
    let now = 1_800_000_000_000;
    let context = Context {
        words: &words,
        ruler,
        now,
    };
    let journal = crate::demo::throw(now);
    let piece = Rect::from([0, 2, 2, 2]);
    let width = "246".to_string();
    let look_at = Query::Measure {
        piece,
        height: width.clone(),
        width,
    };
    let Ok(View::Measure(seen)) = answer(&journal, &look_at, context) else {
        panic!()
    };
    // That its laps are too narrow is read first.
    let warned = seen.verdict.iter().take(2);
    assert_eq!(
        warned
            .filter(|line| line.contains("its lap is only 8"))
            .count(),
        2
    );
    let said = seen.verdict[2].replace('\u{a0}', " ");
    assert_eq!(
        said,
        "Across: 4.7 mm over. Trim 2 mm from the left and the rest, ≈ 3 mm, from the right; the crossing stays as near the middle as the ruler shows."
    );
}

/// A square freed by a smaller throw goes into a four that is sewn: that it opens seams is said, and
/// not that nothing is unpicked.
#[test]
fn a_square_set_free_for_a_sewn_four_opens_seams() {
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    let tick = |task, kind, count| Command::TickNext {
        task,
        kind,
        count: Count::at_most(count),
    };
    act(&mut journal, &tick(Task::Cut, Kind::Square, 16), 1);
    let hour = 3_600_000;
    let laps = [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch];
    for (n, task) in laps.into_iter().enumerate() {
        act(
            &mut journal,
            &tick(task, Kind::Pair, 2),
            hour * (n as i64 + 1),
        );
    }
    let square = Rect::square(0, 0);
    let off = off_view(&journal, square, Some(crate::throw::Mishap::Scorched));
    let fewer = off
        .ways
        .iter()
        .find(|way| way.title.starts_with("Make the throw 3 squares"));
    let lines = &fewer.expect("it is offered").lines;
    let opens = "To put it in, one seam is unpicked, 5\u{a0}in.";
    assert!(lines.contains(&opens.to_string()), "{lines:?}");
    assert!(!plain(lines).contains("Nothing sewn"), "{lines:?}");
    // What is given up with its column has no square put in, and opens nothing.
    let whole = stitched(4, 2);
    let off = off_view(
        &whole,
        Rect::square(0, 3),
        Some(crate::throw::Mishap::Scorched),
    );
    let itself = "It lies in what is given up.".to_string();
    let given_up = off.ways.iter().filter(|way| way.lines.contains(&itself));
    let lines: Vec<&Vec<String>> = given_up.map(|way| &way.lines).collect();
    assert!(!lines.is_empty(), "{:?}", off.ways);
    assert!(
        lines.iter().all(|l| !plain(l).contains("To put it in")),
        "{lines:?}"
    );
}

/// A four measured by its sides and diagonals: leaning, misread, and with a diagonal missing.
#[test]
fn a_four_by_its_sides_and_diagonals() {
    use crate::show::{MeasureView, OutlineTyped};
    let words = Words::english();
    let now = 1_800_000_000_000;
    let context = Context {
        now,
        ..context(&words)
    };
    let journal = crate::demo::throw(now);
    let piece = Rect::from([0, 2, 2, 2]);
    let measure = |sides: [&str; 4], diagonals: [&str; 2]| -> MeasureView {
        let typed = OutlineTyped {
            top: sides[0].into(),
            right: sides[1].into(),
            bottom: sides[2].into(),
            left: sides[3].into(),
            falling: diagonals[0].into(),
            rising: diagonals[1].into(),
        };
        match answer(&journal, &Query::Outline { piece, typed }, context) {
            Ok(View::Measure(view)) => view,
            other => panic!("{other:?}"),
        }
    };
    let shown = |view: &MeasureView, label: &str| {
        let found = view.figures.iter().find(|f| f.label == label);
        found.map_or_else(String::new, |f| f.value.text.replace('\u{a0}', " "))
    };
    // A true square of 9 3/4 in: an eighth comes off each side.
    let square = measure(["9 3/4"; 4], ["", ""]);
    words_are_whole(&square);
    assert!(square.keep.is_some() && !square.short && square.faults.is_empty());
    assert_eq!(shown(&square, "Corner off square"), "square");
    assert_eq!(shown(&square, "Trim from the left"), "⅛ in");
    // It leans: sides of 9 1/2 in, diagonals 13 3/4 and 13 1/8 in, so it holds no 9 1/2 in.
    let leaning = measure(["9 1/2"; 4], ["13 3/4", "13 1/8"]);
    words_are_whole(&leaning);
    assert!(leaning.short && leaning.keep.is_some());
    let pull = leaning.verdict[0].replace('\u{a0}', " ");
    assert!(
        pull.starts_with("It leans: from the top right to the bottom left it is ⅝ in shorter"),
        "{pull}"
    );
    assert!(shown(&leaning, "Corner off square").ends_with('°'));
    // It is pulled square and measured again before anything is cut.
    assert_eq!(leaning.verdict.len(), 1);
    assert_eq!(shown(&leaning, "Trim from the left"), "");
    // One that still leans once it was measured so is cut as it can be.
    let mut pulled = crate::demo::throw(now);
    let keep = leaning.keep.as_ref().expect("it can be kept");
    act(&mut pulled, &keep.action, now);
    // What a leaning four holds tells nothing of the lap.
    let seen = |journal: &Journal| crate::fitting::drift::seen(journal.throw()).len();
    let measured = journal
        .throw()
        .work(piece)
        .and_then(|w| w.measured)
        .is_some();
    assert_eq!(seen(&pulled) + usize::from(measured), seen(&journal));
    let again = match answer(
        &pulled,
        &Query::Outline {
            piece,
            typed: OutlineTyped {
                top: "9 1/2".into(),
                right: "9 1/2".into(),
                bottom: "9 1/2".into(),
                left: "9 1/2".into(),
                falling: "13 3/4".into(),
                rising: "13 1/8".into(),
            },
        },
        context,
    ) {
        Ok(View::Measure(view)) => view,
        other => panic!("{other:?}"),
    };
    assert!(
        again.verdict[0].starts_with("It still leans"),
        "{:?}",
        again.verdict
    );
    assert_ne!(shown(&again, "Trim from the left"), "");
    // A diagonal misread by an inch is named; one alone is asked for.
    let misread = measure(["9 1/2"; 4], ["14 1/2", "13 7/16"]);
    assert_eq!(misread.keep, None);
    assert_eq!(misread.faults[0].field, "falling");
    let alone = measure(["9 1/2"; 4], ["13 7/16", ""]);
    assert_eq!(
        (alone.keep, alone.faults[0].field.as_str()),
        (None, "rising")
    );
}

/// What is short at the outer edge is hidden by the binding: nothing is asked for any more.
#[test]
fn a_short_four_at_the_edge_is_settled() {
    use crate::show::{Ink, Mark};
    let mut journal = stitched(6, 2);
    let piece = Rect::from([0, 0, 2, 2]);
    sized(&mut journal, piece, FULL - 16, FULL);
    let off = off_view(&journal, piece, None);
    let rest = off.rest.clone().expect("settled").replace('\u{a0}', " ");
    assert!(
        rest.starts_with(
            "Short ¼ in at the left; the binding hides it. There is nothing more to do there."
        ),
        "{rest}"
    );
    let aside = |w: &crate::show::RemedyRow| matches!(w.button.action, Command::SetAside { .. });
    assert!(!off.ways.iter().any(aside), "{:?}", off.ways);
    // The gap is an empty strip along the left edge, with its measure in words.
    let marks = off.picture.unwrap().marks;
    let empty = marks.iter().filter_map(|m| match m {
        Mark::Area {
            x,
            ink: Ink::Blank,
            w,
            ..
        } => Some((*x, *w)),
        _ => None,
    });
    let left = marks.iter().filter_map(|m| match m {
        Mark::Area {
            x, ink: Ink::Denim, ..
        } => Some(*x),
        _ => None,
    });
    let left = left.fold(f64::INFINITY, f64::min);
    let empty: Vec<(f64, f64)> = empty.collect();
    assert_eq!(empty.len(), 1);
    assert!(
        (empty[0].0 + empty[0].1 - left).abs() < 1e-6,
        "{empty:?} {left}"
    );
    let said = |m: &Mark| matches!(m, Mark::Words { text, .. } if text.contains("missing"));
    assert!(marks.iter().any(said));
    // The step says the same, and may be ticked.
    let card = card_of(&journal, Task::SquareUp, FOUR);
    assert!(plain(&card.how).contains("Do not trim left or right. Short ¼ in at the left"));
    act(&mut journal, &card.ticks[0].action, 2);
    assert!(journal.throw().has(piece, Task::SquareUp));
}

/// Within a row the laps make up for it; the step says which and how wide.
#[test]
fn a_short_four_within_a_row_is_lapped_less_or_moved() {
    let mut journal = stitched(6, 2);
    let piece = Rect::from([0, 2, 2, 2]);
    sized(&mut journal, piece, FULL - 8, FULL);
    let off = off_view(&journal, piece, None);
    assert_eq!(off.rest, None);
    let way = |find: fn(&Command) -> bool| {
        let found = off.ways.iter().find(|w| find(&w.button.action));
        found.cloned().unwrap_or_else(|| panic!("{:?}", off.ways))
    };
    let lapped = way(|a| matches!(a, Command::MarkLaps { .. }));
    assert!(plain(&lapped.lines).contains(", not ½ in."), "{lapped:?}");
    assert!(lapped.done.starts_with("Done: "));
    let moved = way(|a| matches!(a, Command::Swap { .. }));
    assert!(
        moved
            .done
            .contains("Chalk the new labels on: 1·3 is now 1·1, 1·4 is now 1·2"),
        "{}",
        moved.done
    );
    // Moved to the edge, nothing more is asked for.
    let mut there = stitched(6, 2);
    sized(&mut there, piece, FULL - 8, FULL);
    act(&mut there, &moved.button.action, 2);
    let Command::Swap { b, .. } = moved.button.action else {
        panic!()
    };
    assert!(off_view(&there, b, None).rest.is_some());
    // Lapped less, the step says which side is joined how.
    act(&mut journal, &lapped.button.action, 2);
    assert!(off_view(&journal, piece, None).rest.is_some());
    let all = Command::TickNext {
        task: Task::SquareUp,
        kind: FOUR,
        count: Count::from(1),
    };
    act(&mut journal, &all, 3);
    let card = card_of(&journal, Task::SquareUp, FOUR);
    assert_eq!(card.piece, piece);
    let how = plain(&card.how);
    assert!(
        how.contains("Do not trim left or right. Join its") && how.contains("with a lap of only"),
        "{how}"
    );
}

/// What was marked for a short four is reckoned anew once all fours are trimmed smaller, and
/// the change says so.
#[test]
fn laps_marked_for_a_short_four_follow_the_plan() {
    let words = Words::english();
    let mut journal = stitched(6, 2);
    let piece = Rect::from([0, 2, 2, 2]);
    sized(&mut journal, piece, FULL - 8, FULL);
    let off = off_view(&journal, piece, None);
    let lapped = |w: &&crate::show::RemedyRow| matches!(w.button.action, Command::MarkLaps { .. });
    let way = off
        .ways
        .iter()
        .find(lapped)
        .expect("offered")
        .button
        .action
        .clone();
    act(&mut journal, &way, 2);
    let marked = |journal: &Journal| -> Vec<i64> {
        let marks = journal.throw().marks();
        marks
            .map(|(_, _, lap)| crate::measure::in_nm(lap) / 396_875)
            .collect()
    };
    // An eighth short: a sixteenth less on each side, of half an inch.
    assert_eq!(marked(&journal), [28, 28]);
    // Trimmed an eighth smaller, none is short any more.
    let plan = Plan {
        trim: Some(sixty_fourths(FULL - 8)),
        ..journal.throw().plan
    };
    let change = Command::ChangePlan { plan };
    let events = crate::command::decide(Some(journal.throw()), &change).unwrap();
    let (_, texts) = change::compare(&journal, &events, context(&words));
    assert!(texts.contains(&"Laps marked for pieces that are short are worked out again.".into()));
    act(&mut journal, &change, 3);
    assert_eq!(marked(&journal), Vec::<i64>::new());
    // Trimmed a sixteenth smaller, and lapped so much more: half as much is missing, at one lap.
    let entry = journal.propose_undo(4).unwrap();
    journal.accept(entry).unwrap();
    let plan = Plan {
        lap: sixty_fourths(36),
        trim: Some(sixty_fourths(FULL - 4)),
        ..journal.throw().plan
    };
    act(&mut journal, &Command::ChangePlan { plan }, 5);
    assert_eq!(marked(&journal), [36 - (8 - 4)]);
}

/// A four of pairs sewn wider than planned now: its seam is as long as they are.
#[test]
fn a_seam_is_as_long_as_what_it_joins() {
    let mut journal = bare_denim(2, 2);
    all_ready(&mut journal, Task::Cut, Kind::Square, 1);
    let join = [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch];
    for (hour, task) in (2..).zip(join) {
        all_ready(&mut journal, task, Kind::Pair, hour);
    }
    let plan = Plan {
        lap: eighth_inches(5),
        ..journal.throw().plan
    };
    act(&mut journal, &Command::ChangePlan { plan }, 30_000_000);
    let card = card_of(&journal, Task::Dot, FOUR);
    let seam = card
        .figures
        .iter()
        .find(|f| f.label == "Seam length")
        .expect("a seam");
    assert_eq!(seam.value.text.replace('\u{a0}', " "), "9½ in");
}

/// Read off a ruler of thirty-seconds.
fn by_thirty_seconds(words: &Words) -> Context<'_> {
    let ruler = Ruler {
        fraction: Fraction::ThirtySecond,
        ..Ruler::default()
    };
    Context {
        ruler,
        ..context(words)
    }
}

/// A size for all that asks for narrower laps says so where it is offered.
#[test]
fn a_trim_size_names_the_laps_it_asks_for() {
    let mut journal = stitched(6, 2);
    let piece = Rect::from([0, 2, 2, 2]);
    sized(&mut journal, piece, FULL - 16, FULL);
    // 3/16 in is 3/32 at either side: laps of 13/32 in, which a ruler of thirty-seconds shows.
    let words = Words::english();
    let context = by_thirty_seconds(&words);
    let Ok(View::Off(off)) = answer(&journal, &Query::Off { piece, why: None }, context) else {
        panic!("the screen of a piece that is off");
    };
    let trim = |w: &&crate::show::RemedyRow| matches!(w.button.action, Command::ChooseTrim { .. });
    let way = off.ways.iter().find(trim).expect("offered");
    assert_eq!(
        way.title.replace('\u{a0}', " "),
        "Trim all fours to 9 7/16 in, and lap less at 2 joins"
    );
    let lines = plain(&way.lines);
    for four in ["Four A1", "Four A3"] {
        assert!(
            lines.contains(&format!("Where it meets {four}: lap only")),
            "{lines}"
        );
    }
    // Taken, the step of the short one says how it is joined, and asks for nothing else.
    act(&mut journal, &way.button.action, 2);
    assert!(off_view(&journal, piece, None).rest.is_some());
}

/// Words wider than their column go one below the other, and stay within the picture.
#[test]
fn how_far_columns_are_off_can_be_read() {
    use crate::show::Mark;
    let words = Words::english();
    let mut journal = stitched(8, 4);
    for column in 0..4 {
        let piece = Rect::from([0, column * 2, 2, 2]);
        sized(&mut journal, piece, FULL, FULL - 12);
    }
    let picture = pictures::blocks(journal.throw(), context(&words));
    let mut texts: Vec<[f64; 3]> = Vec::new();
    for mark in &picture.marks {
        if let Mark::Words {
            x, y, text, size, ..
        } = mark
            && text.ends_with("under")
        {
            let half = text.chars().count() as f64 * size * 0.58 / 2.0;
            assert!(*x >= half - 0.5 && *x <= picture.width - half + 0.5);
            assert!(*y + size / 2.0 <= picture.height);
            texts.push([x - half, x + half, *y]);
        }
    }
    assert_eq!(texts.len(), 4);
    for (n, a) in texts.iter().enumerate() {
        let free = |b: &[f64; 3]| a[1] <= b[0] || b[1] <= a[0] || (a[2] - b[2]).abs() >= 6.0;
        assert!(texts[n + 1..].iter().all(free), "{texts:?}");
    }
}

/// A spoilt square in a sewn four: which seams are opened, before the new one goes in.
#[test]
fn what_is_opened_is_told_before_the_new_square_goes_in() {
    use crate::plan::assembly::Kind;
    use crate::throw::Mishap;
    let mut journal = stitched(4, 2);
    let piece = Rect::square(1, 0);
    let why = Mishap::Scorched;
    let off = off_view(&journal, piece, Some(why));
    let recut = off
        .ways
        .iter()
        .find(|w| matches!(w.button.action, Command::Replace { .. }))
        .unwrap();
    // The seam between the pairs was sewn last and crosses the end of the other, so it goes first.
    let which = "Unpick Pair 1·1 + 1·2 from Pair 2·1 + 2·2: only 5 in, along Square 2·1. \
                 Unpick Square 2·1 from Square 2·2: the whole seam, 5 in.";
    assert!(
        plain(&recut.lines).contains(which),
        "{}",
        plain(&recut.lines)
    );
    act(&mut journal, &recut.button.action, 2);
    let card = card_of(&journal, Task::Cut, Kind::Square);
    let open = card.open.expect("told");
    assert_eq!(
        open.title,
        "First unpick 2 seams, before the new Square 2·1 goes in"
    );
    assert_eq!(plain(&open.lines), which);
    act(&mut journal, &card.ticks[0].action, 3);
    let pair = card_of(&journal, Task::Dot, Kind::Pair);
    assert!(pair.open.is_some());
    act(&mut journal, &pair.ticks[0].action, 4);
    assert!(journal.throw().seams_to_unpick.is_empty());
    for (task, at) in [(Task::CoolLap, 9_000_000), (Task::Stitch, 9_000_001)] {
        let tick = Command::TickNext {
            task,
            kind: Kind::Pair,
            count: Count::from(1),
        };
        act(&mut journal, &tick, at);
    }
    // Of the four's own join only what was opened is to be made.
    let four = card_of(&journal, Task::Dot, FOUR);
    assert_eq!(four.open, None);
    let again = four.figures.iter().find(|f| f.label == "To make again");
    assert_eq!(again.unwrap().value.text.replace('\u{a0}', " "), "5 in");
}

/// A four that should be trimmed again can be joined as it is, as it always could: then it
/// is left so, until it is free again.
#[test]
fn a_four_to_trim_again_may_be_joined_as_it_is() {
    use crate::plan::assembly::Kind;
    let mut journal = four_fours();
    next(&mut journal, Task::PressBlock, Kind::Four, 4);
    next(&mut journal, Task::SquareUp, Kind::Four, 4);
    let trim = quarter_inches(37);
    act(&mut journal, &Command::ChooseTrim { trim, step: None }, 1);
    let (four, row) = (Rect::from([0, 0, 2, 2]), Rect::from([0, 0, 2, 4]));
    let whole = |throw: &crate::throw::Throw| {
        assert_eq!(
            throw.work_index(),
            &crate::throw::index::WorkIndex::of(throw)
        );
    };
    whole(journal.throw());
    assert!(journal.throw().trims_again(four));
    let dot = Command::Tick {
        task: Task::Dot,
        pieces: vec![row],
    };
    act(&mut journal, &dot, 2);
    whole(journal.throw());
    assert!(!journal.throw().trims_again(four) && journal.throw().complete(four));
    let open = Command::Unpick {
        pieces: vec![row],
        lap: None,
    };
    act(&mut journal, &open, 3);
    whole(journal.throw());
    assert!(journal.throw().trims_again(four));
}

/// Where no spare is left, the square of another place goes in: of the place whose denim shows
/// least. That place is to be cut again, from what the pile still has.
#[test]
fn a_loose_square_of_another_place_goes_into_a_sewn_four() {
    use crate::cloth::garments::{GarmentKind, GarmentSize};
    use crate::cloth::pile::Use;
    use crate::throw::Mishap;
    let mut journal = begin(Plan {
        across: 4,
        down: 2,
        ..Plan::default()
    });
    let all: Vec<Rect> = Rect::grid(4, 2).squares().collect();
    let [sewn, hidden, spoilt] = [[0, 0, 2, 2], [0, 2, 1, 1], [1, 0, 1, 1]].map(Rect::from);
    let cut = |pieces: Vec<Rect>| Command::Tick {
        task: Task::Cut,
        pieces,
    };
    act(&mut journal, &cut(all.clone()), 1);
    // Of one place the denim will not be seen.
    for face in Face::BOTH {
        let pieces = vec![hidden];
        let print = Some(0);
        act(
            &mut journal,
            &Command::SetFace {
                pieces,
                face,
                print,
                laid_on: false,
            },
            1,
        );
    }
    for (task, pieces) in [
        (Task::Dot, vec![[0, 0, 1, 2], [1, 0, 1, 2]]),
        (Task::PressLap, vec![[0, 0, 1, 2], [1, 0, 1, 2]]),
        (Task::CoolLap, vec![[0, 0, 1, 2], [1, 0, 1, 2]]),
        (Task::Stitch, vec![[0, 0, 1, 2], [1, 0, 1, 2]]),
        (Task::Dot, vec![[0, 0, 2, 2]]),
    ] {
        let pieces = pieces.into_iter().map(Rect::from).collect();
        act(&mut journal, &Command::Tick { task, pieces }, 1);
    }
    let offered = |journal: &Journal, title: &str| {
        let view = off_view(journal, spoilt, Some(Mishap::Flaw));
        let found = view
            .ways
            .iter()
            .find(|w| plain(std::slice::from_ref(&w.title)) == title);
        found.cloned()
    };
    let title = "Put in the loose square of Square 1·3";
    let way = offered(&journal, title).expect("offered");
    let texts = plain(&way.lines);
    assert!(
        texts.contains("Square 1·3 is open then, and is to be cut again."),
        "{texts}"
    );
    assert!(
        texts.contains("Chalk the new labels on: 1·3 is now 2·1."),
        "{texts}"
    );
    // The pile has the other denim only.
    let faded = journal.throw().denims[1].name.clone();
    let skirt = Command::AddGarment {
        kind: GarmentKind::Skirt,
        size: Some(GarmentSize::Large),
        knees: None,
        system: None,
        makes: Use::Denim { denim: Some(1) },
        name: "Skirt".into(),
    };
    act(&mut journal, &skirt, 1);
    let texts = plain(&offered(&journal, title).expect("offered").lines);
    assert!(
        texts.contains(&format!("{faded} suits that place best")),
        "{texts}"
    );
    // While a spare of its own denim lies ready, that is taken.
    let count = |n: u32| Command::CountSpares {
        spares: Count::at_most(n),
    };
    act(
        &mut journal,
        &Command::Pin {
            pieces: vec![hidden],
            pinned: true,
        },
        1,
    );
    let pinned = off_view(&journal, spoilt, Some(Mishap::Flaw)).ways;
    assert!(
        pinned.iter().all(|w| !w.title.contains("1·3")),
        "a pinned square stays"
    );
    act(
        &mut journal,
        &Command::Pin {
            pieces: vec![hidden],
            pinned: false,
        },
        1,
    );
    act(&mut journal, &count(0), 1);

    let way = offered(&journal, title).expect("offered");
    act(&mut journal, &way.button.action, 2);
    let throw = journal.throw();
    assert!(throw.has(spoilt, Task::Cut) && !throw.has(hidden, Task::Cut));
    assert_eq!(throw.uncut(None).collect::<Vec<_>>(), [hidden]);
    assert_eq!((throw.losses.len(), throw.spares.get()), (1, 0));
    // The place keeps the fabrics it is to get.
    assert_eq!(throw.cover(hidden).layers(), 3);
    assert_eq!(throw.cover(spoilt).layers(), 1);
    assert!(!throw.has(sewn, Task::Dot));
    assert_eq!(
        throw.work_index(),
        &crate::throw::index::WorkIndex::of(throw)
    );
    let words = Words::english();
    let history = answer(&journal, &Query::History { most: 1 }, context(&words)).unwrap();
    let said = serde_json::to_string(&history)
        .unwrap()
        .replace('\u{a0}', " ");
    assert!(
        said.contains("The loose square of Square 1·3 goes to Square 2·1"),
        "{said}"
    );
}

/// A millimetre gives, and is no trouble; a sixteenth of an inch, 1.6 mm, is.
#[test]
fn a_millimetre_short_is_eased_in() {
    let words = Words::english();
    // The one in the middle: no binding hides its edges across.
    let journal = stitched(6, 2);
    let piece = Rect::from([0, 2, 2, 2]);
    let measured = |width: &str| {
        let look_at = Query::Measure {
            piece,
            width: width.into(),
            height: "241.3 mm".into(),
        };
        match answer(&journal, &look_at, context(&words)) {
            Ok(View::Measure(seen)) => seen,
            other => panic!("{other:?}"),
        }
    };
    // 9 1/2 in is 241.3 mm.
    let little = measured("240.3 mm");
    assert!(!little.short, "{:?}", little.verdict);
    let said = plain(&little.verdict);
    assert!(
        said.contains("eases in") && !said.contains("nothing makes up"),
        "{said}"
    );
    let much = measured("239.7 mm");
    assert!(much.short, "{:?}", much.verdict);
    // Half a millimetre is under half of the ruler's sixteenths: it is told without a figure, as nothing else is.
    let least = measured("240.8 mm");
    let said = plain(&least.verdict);
    assert!(
        !least.short && said.contains("a very little short") && said.contains("eases in"),
        "{said}"
    );
    assert!(!said.contains("≈ 0 short is within"), "{said}");
}

/// By hand: 5/32 in (10/64) short, of which two laps of 7/16 in give 1/8 in. What is left, 1/32 in, is told where
/// the way is offered, as on the step once it is taken; and so are its minutes.
#[test]
fn what_is_eased_in_is_told_with_the_laps() {
    let mut journal = stitched(6, 2);
    let piece = Rect::from([0, 2, 2, 2]);
    sized(&mut journal, piece, FULL - 10, FULL);
    let off = off_view(&journal, piece, None);
    let laps = |w: &&crate::show::RemedyRow| matches!(w.button.action, Command::MarkLaps { .. });
    let way = off.ways.iter().find(laps).expect("laps are offered");
    let said = plain(&way.lines);
    assert!(said.contains("is within the give of the cloth"), "{said}");
    assert!(said.contains("About 7 minutes"), "{said}");
    act(&mut journal, &way.button.action, 2);
    let settled = off_view(&journal, piece, None).rest.expect("it is settled");
    assert!(
        settled.contains("is within the give of the cloth"),
        "{settled}"
    );
}

/// By hand: 237.6 mm of 241.3 are 3.7 mm short, of which two laps of 7/16 in give 3.175. The 0.525 mm that are left
/// are under half of a sixteenth of an inch (0.79 mm), so that no mark shows them: the laps are told, and no more.
#[test]
fn what_no_mark_shows_is_not_told_beside_laps() {
    let mut journal = stitched(6, 2);
    let piece = Rect::from([0, 2, 2, 2]);
    let (width, height) = (nm(237_600_000), sixty_fourths(FULL));
    let measure = Command::Measure {
        piece,
        width,
        height,
    };
    act(&mut journal, &measure, 1);
    let off = off_view(&journal, piece, None);
    let laps = |w: &&crate::show::RemedyRow| matches!(w.button.action, Command::MarkLaps { .. });
    let way = off.ways.iter().find(laps).expect("laps are offered");
    let said = plain(&way.lines);
    assert!(
        said.contains("7/16 in") && !said.contains("the give"),
        "{said}"
    );
    act(&mut journal, &way.button.action, 2);
    let settled = off_view(&journal, piece, None).rest.expect("it is settled");
    assert!(!settled.contains("the give"), "{settled}");
}

/// By hand: two fours of 9½ in, of which one measured 9⅝ × 9 9/16 before it was squared up. The lap
/// becomes ⅝ in, and fours are trimmed to 2 × 5 − ⅝ = 9⅜ in: ⅛ in is to come off what it holds now,
/// not what it once measured; and the throw will be 2 × 9⅜ − ⅝ = 18⅛ in wide, 9⅜ in high.
#[test]
fn what_is_trimmed_again_is_trimmed_from_what_it_holds_now() {
    let words = Words::english();
    let mut journal = stitched(4, 2);
    let [first, second] = [[0, 0, 2, 2], [0, 2, 2, 2]].map(Rect::from);
    sized(&mut journal, first, FULL + 8, FULL + 4);
    sized(&mut journal, second, FULL, FULL);
    for piece in [first, second] {
        let (task, pieces) = (Task::SquareUp, vec![piece]);
        act(&mut journal, &Command::Tick { task, pieces }, 2);
    }
    let plan = Plan {
        lap: sixty_fourths(40),
        trim: Some(sixty_fourths(FULL - 8)),
        ..journal.throw().plan
    };
    act(&mut journal, &Command::ChangePlan { plan }, 3);
    let throw = journal.throw();
    assert!(throw.trims_again(first) && !throw.is_through(first, Task::SquareUp));
    let size = throw.finished();
    assert_eq!(
        [size.width, size.height],
        [sixty_fourths(18 * 64 + 8), sixty_fourths(9 * 64 + 24)]
    );
    // Who joins them as they are is told of both, and that they keep their size.
    let whole = throw.assembly().whole();
    let told = crate::show::work::special(throw, Task::Dot, whole, context(&words));
    let told = plain(&told);
    for four in ["Four A1", "Four A2"] {
        let first = format!(
            "{four} is to be trimmed once more first, to 9⅜ × 9⅜ in: joined now, it stays at 9½ × 9½ in."
        );
        assert!(told.contains(&first), "{told}");
    }
    let card = card_of(&journal, Task::SquareUp, FOUR);
    assert_eq!(card.piece, first);
    let how = plain(&card.how);
    assert!(
        how.contains("It was squared up to 9½ × 9½ in before"),
        "{how}"
    );
    for way in ["Across", "Down"] {
        let told = format!("{way}: ⅛ in over. Trim 1/16 in from the");
        assert!(how.contains(&told), "{how}");
    }
    // The picture has the same figures, and the bench and the sheet count none as squared up.
    let said: Vec<&str> = card
        .picture
        .marks
        .iter()
        .filter_map(|mark| match mark {
            crate::show::Mark::Words { text, .. } => Some(text.as_str()),
            _ => None,
        })
        .collect();
    assert_eq!(said, ["trim 1/16\u{a0}in"; 4]);
    let bench = match answer(&journal, &Query::Bench { chosen: None }, context(&words)) {
        Ok(View::Bench(bench)) => bench,
        other => panic!("{other:?}"),
    };
    let squared = bench.tallies.iter().find(|t| t.label == "Squared up");
    assert_eq!(squared.expect("it is counted").done, 0);
    // Trimmed again, it is done.
    let (task, pieces) = (Task::SquareUp, vec![first]);
    act(&mut journal, &Command::Tick { task, pieces }, 4);
    assert!(journal.throw().is_through(first, Task::SquareUp));
}

/// By hand: a lap of 7/16 in is 11.1125 mm. Its middle is 7/32 in from the edge; beside needles 4 mm apart
/// 3.556 mm stand free, 4.48 of 32 in an inch. Two rows 4 mm apart run as far in: at 3.556 and 7.556 mm,
/// 4.48 and 9.52 of 32. Where it is lapped nothing is said of stitching.
#[test]
fn where_a_lap_is_narrower_its_stitching_is_told() {
    let words = Words::english();
    let context = by_thirty_seconds(&words);
    let [a, b] = [0, 2].map(|col| Rect::from([0, col, 2, 2]));
    let told = |stitch, task| {
        let mut journal = begin(Plan {
            across: 4,
            down: 2,
            stitch,
            ..Plan::default()
        });
        let laps = vec![(a, b, Some(sixty_fourths(28)))];
        act(&mut journal, &Command::MarkLaps { laps }, 1);
        let row = Rect::from([0, 0, 2, 4]);
        plain(&crate::show::work::special(
            journal.throw(),
            task,
            row,
            context,
        ))
    };
    let spacing = tenths_of_mm(40);
    let twin = crate::plan::Stitch::Twin { spacing };
    let lapped = "Where Four A1 meets Four A2, lap only 7/16 in.";
    assert_eq!(told(twin, Task::Dot), lapped);
    assert_eq!(
        told(twin, Task::Stitch),
        format!(
            "{lapped} There the middle of the stitching runs 7/32 in from the raw edge on top, with ≈ ⅛ in \
             of fringe each side."
        )
    );
    let two = crate::plan::Stitch::TwoRows { spacing };
    assert_eq!(
        told(two, Task::Stitch),
        format!(
            "{lapped} There the rows run ≈ ⅛ in and ≈ 5/16 in from the raw edge on top, with ≈ ⅛ in of \
             fringe each side."
        )
    );
}

/// By hand: a four of 9 3/16 in where 9½ are wanted is 5/16 in short. The lap below gives 1/16 and the binding
/// hides the ¼ in at the top; so its ends are not level with those of its neighbour, and
/// the edge is not trimmed to it.
#[test]
fn the_ends_of_a_short_four_are_not_brought_level() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = stitched(6, 4);
    let short = Rect::from([0, 2, 2, 2]);
    let blocks = journal.throw().assembly().blocks();
    for four in blocks {
        let height = if four == short { FULL - 20 } else { FULL };
        sized(&mut journal, four, FULL, height);
    }
    let below = Rect::from([2, 2, 2, 2]);
    let laps = vec![(short, below, Some(sixty_fourths(28)))];
    act(&mut journal, &Command::MarkLaps { laps }, 50_000_000);
    let throw = journal.throw();
    let found = shortfalls(throw, short);
    let shares: Vec<_> = found[0].shares.iter().map(|s| (s.side, s.by)).collect();
    let sixteenth = sixty_fourths(4);
    let ends = [
        (EdgeSide::Bottom, sixteenth),
        (EdgeSide::Top, sixteenth * 4),
    ];
    assert_eq!(shares, ends);
    let told = |task, piece| plain(&crate::show::work::special(throw, task, piece, context));
    let beside = Rect::from([0, 0, 2, 4]);
    let laid = told(Task::Dot, beside);
    assert!(
        laid.starts_with(
            "Four A2 is 5/16 in short along this edge: lay it so that it stands back from the line of \
             the rest by 1/16 in at the bottom and ¼ in at the top."
        ),
        "{laid}"
    );
    // Nothing else is said of its ends; where none is short they are brought level.
    let usual = |piece| {
        let pinned = crate::show::work::usual_how(throw, Task::Pin, piece, context);
        pinned.contains("the ends level")
    };
    assert!(!usual(beside) && usual(Rect::from([2, 0, 2, 4])));
    // A pair of rows is laid as it is, and so are two fours that are not short that way.
    assert!(!told(Task::Dot, throw.assembly().whole()).contains("stands back"));
    assert_eq!(told(Task::Dot, Rect::from([2, 0, 2, 4])), "");
    let edge = told(Task::TrimEdge, throw.assembly().whole());
    assert_eq!(
        edge,
        "Four A2 stands back from the edge by ¼ in at the top. The binding hides that: trim \
         nothing to it."
    );
}

/// Once all within the fours is sewn, another lap lies between them only: they are not trimmed
/// again for it.
#[test]
fn a_wider_lap_between_fours_leaves_what_is_within_them() {
    let wider = |journal: &mut Journal| {
        let plan = Plan {
            lap: sixty_fourths(40),
            ..journal.throw().plan
        };
        act(journal, &Command::ChangePlan { plan }, 3);
        journal.throw().plan
    };
    // All are sewn with ½ in: 2 × 5 − ½ in. Lapped ⅝ in they would be 9⅜ in.
    let mut journal = four_fours();
    let plan = wider(&mut journal);
    assert_eq!(plan.target(), sixty_fourths(608));
    assert_eq!(plan.lap_between(), sixty_fourths(40));
    // A size that is named is the one she wants.
    let named = Plan {
        trim: Some(sixty_fourths(600)),
        ..plan
    };
    act(&mut journal, &Command::ChangePlan { plan: named }, 4);
    assert_eq!(journal.throw().plan.target(), sixty_fourths(600));
    // One is left to sew: it is lapped so, and the others are trimmed to its size.
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    next(&mut journal, Task::Cut, Kind::Square, 16);
    for (kind, count) in [(Kind::Pair, 8), (Kind::Four, 3)] {
        for task in [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch] {
            next(&mut journal, task, kind, count);
        }
    }
    assert_eq!(wider(&mut journal).target(), sixty_fourths(600));
}

/// A four whose sides were measured is cut by what comes off each of them, on its card as where it was
/// measured, and not half from each side. By hand: 9¾ by 9⅝ in with square corners leaves ⅛ in at the left
/// and the right and 1/16 in at the top and the bottom of 9½ in.
#[test]
fn sides_that_were_measured_are_trimmed_one_by_one() {
    use crate::show::measuring::OutlineTyped;
    let words = Words::english();
    let mut journal = stitched(4, 4);
    let piece = Rect::from([0, 0, 2, 2]);
    let measured = |journal: &Journal, [top, right, bottom, left]: [&str; 4]| {
        let typed = OutlineTyped {
            top: top.into(),
            right: right.into(),
            bottom: bottom.into(),
            left: left.into(),
            ..OutlineTyped::default()
        };
        match answer(journal, &Query::Outline { piece, typed }, context(&words)) {
            Ok(View::Measure(seen)) => seen,
            other => panic!("{other:?}"),
        }
    };
    let trims = |figures: &[crate::show::parts::Figure]| -> Vec<(String, String)> {
        let rows = figures.iter().filter(|f| f.label.starts_with("Trim from"));
        rows.map(|f| (f.label.clone(), plain(std::slice::from_ref(&f.value.text))))
            .collect()
    };
    let square = measured(&journal, ["9 3/4", "9 5/8", "9 3/4", "9 5/8"]);
    let by_hand = ["1/16 in", "⅛ in", "1/16 in", "⅛ in"];
    let told: Vec<String> = trims(&square.figures).into_iter().map(|(_, t)| t).collect();
    assert_eq!(told, by_hand);
    // One that leans is pulled square first; what still leans when it is measured again is cut so.
    let sides = ["9 3/4", "9 5/8", "9 7/8", "9 5/8"];
    let leaning = measured(&journal, sides);
    assert_eq!(trims(&leaning.figures), []);
    act(&mut journal, &leaning.keep.expect("kept").action, 1);
    let uneven = measured(&journal, sides);
    let told = trims(&uneven.figures);
    assert!(told.iter().any(|(_, t)| t.contains(" to ")), "{told:?}");
    act(&mut journal, &uneven.keep.expect("kept").action, 1);
    let card = card_of(&journal, Task::SquareUp, FOUR);
    assert_eq!(card.piece, piece);
    assert_eq!(trims(&card.figures), told);
    // What it holds is not what it measures.
    let labels: Vec<&str> = card.figures.iter().map(|f| f.label.as_str()).collect();
    assert!(
        labels.contains(&"Largest size it holds") && !labels.contains(&"Measured"),
        "{labels:?}"
    );
    let said = plain(&card.how);
    assert!(
        said.contains("pull it gently along its short diagonal")
            && said.contains("Take off each side what is given")
            && !said.contains("half from each"),
        "{said}"
    );
    // So does the drawing of both, on each side.
    let drawn = serde_json::to_string(&card.picture).expect("a drawing");
    for (_, trim) in &told {
        let in_drawing = drawn.replace('\u{a0}', " ");
        assert!(in_drawing.contains(trim.as_str()), "{trim}: {drawn}");
    }
    // Once it is squared up there is nothing more to trim.
    let tick = Command::Tick {
        task: Task::SquareUp,
        pieces: vec![piece],
    };
    act(&mut journal, &tick, 2);
    assert!(crate::fitting::squaring::outlined(journal.throw(), piece).is_none());
}

/// In a plan with seams nothing that is told of a short four, and of what was done about it, speaks of a
/// lap.
#[test]
fn where_edges_are_seamed_no_lap_is_told_of() {
    let words = Words::english();
    let mut journal = begin(Plan {
        across: 6,
        down: 2,
        joining: crate::plan::Joining::Seamed,
        ..Plan::default()
    });
    all_denim(&mut journal);
    all_ready(&mut journal, Task::Cut, Kind::Square, 1);
    for (hour, kind) in [(2, Kind::Pair), (5, Kind::Four)] {
        for (more, task) in [Task::Pin, Task::Stitch, Task::PressSeam]
            .iter()
            .enumerate()
        {
            all_ready(&mut journal, *task, kind, hour + more as i64);
        }
    }
    all_ready(&mut journal, Task::PressBlock, Kind::Four, 9);
    let piece = Rect::from([0, 2, 2, 2]);
    let allowed = |view: &View| {
        let mut told = Vec::new();
        words_in(&serde_json::to_value(view).expect("a view"), &mut told);
        for text in told {
            let lower = text.to_lowercase();
            let mut parts = lower.split(|c: char| !c.is_alphabetic());
            let lap = parts.find(|w| matches!(*w, "lap" | "laps" | "lapped" | "lapping"));
            assert_eq!(lap, None, "{text}");
        }
    };
    let seen = |journal: &Journal, query: Query| {
        let view = answer(journal, &query, context(&words)).expect("an answer");
        allowed(&view);
        view
    };
    let look = |journal: &Journal| {
        seen(journal, Query::Trim);
        seen(journal, Query::History { most: 40 });
        match seen(journal, Query::Off { piece, why: None }) {
            View::Off(view) => view,
            other => panic!("{other:?}"),
        }
    };
    let wide = crate::measure::in_nm(journal.throw().target(piece).width);
    let mut ways = 0;
    // A little, as much as seams make up for, and more than that.
    for short in [1, 12, 60] {
        let (width, height) = (nm(wide) - sixty_fourths(short), nm(wide));
        let measured = Command::Measure {
            piece,
            width,
            height,
        };
        let mut short = journal.clone();
        act(&mut short, &measured, 10);
        seen(
            &short,
            Query::Measure {
                piece,
                width: format!("{} mm", crate::measure::in_mm(width)),
                height: format!("{} mm", crate::measure::in_mm(height)),
            },
        );
        let off = look(&short);
        for way in &off.ways {
            let mut mended = short.clone();
            act(&mut mended, &way.button.action, 11);
            look(&mended);
            ways += 1;
        }
    }
    assert!(ways > 3, "{ways}");
}

/// All that a view says: its texts, but not what its buttons do.
fn words_in(value: &serde_json::Value, told: &mut Vec<String>) {
    match value {
        serde_json::Value::String(text) => told.push(text.clone()),
        serde_json::Value::Array(list) => list.iter().for_each(|v| words_in(v, told)),
        serde_json::Value::Object(map) => map
            .iter()
            .filter(|(key, _)| *key != "action")
            .for_each(|(_, v)| words_in(v, told)),
        _ => {}
    }
}

/// A throw of 4 by 4 whose upper fours hold so much of 9½ in, squared up and joined as far as one asks.
fn upper_fours_of([left, right]: [[i64; 2]; 2], until: Task) -> Journal {
    let mut journal = stitched(4, 4);
    let at = |row, col| Rect::from([row, col, 2, 2]);
    for (piece, [width, height]) in [
        (at(0, 0), left),
        (at(0, 2), right),
        (at(2, 0), [FULL, FULL]),
        (at(2, 2), [FULL, FULL]),
    ] {
        sized(&mut journal, piece, width, height);
        let task = Task::SquareUp;
        let pieces = vec![piece];
        act(&mut journal, &Command::Tick { task, pieces }, 2);
    }
    let join = [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch];
    for (hour, piece) in [Rect::grid(4, 2), Rect::from([2, 0, 2, 4]), Rect::grid(4, 4)]
        .into_iter()
        .enumerate()
    {
        for (more, task) in join.into_iter().enumerate() {
            if piece == Rect::grid(4, 4) && task == until {
                return journal;
            }
            let at = (hour * 4 + more + 10) as Time * 3_600_000;
            let pieces = vec![piece];
            act(&mut journal, &Command::Tick { task, pieces }, at);
        }
    }
    journal
}

/// Where all of a side are short the edge runs along those that stand out farthest. By hand: of fours that
/// lack ⅛ and 1/16 in of 9½ the one stands back from the other by 1/16.
#[test]
fn a_side_of_short_fours_is_its_own_line() {
    let words = Words::english();
    let joined = upper_fours_of([[FULL, FULL - 4], [FULL, FULL - 8]], Task::TrimEdge);
    let view = work_view(&joined, None, context(&words));
    let card = view.card.expect("a step");
    assert_eq!(card.task, Task::TrimEdge);
    let said = plain(&card.how);
    assert!(
        said.contains("Four A2 stands back from the edge by 1/16 in at the top"),
        "{said}"
    );
    assert!(!said.contains("Four A1 stands back"), "{said}");
}

/// Rows of which one is shorter have no ends to bring level. By hand: two fours that each lack ⅛ in make
/// their row ¼ in shorter.
#[test]
fn rows_that_are_not_as_long_leave_their_ends() {
    let words = Words::english();
    let told = |upper| {
        let journal = upper_fours_of(upper, Task::Dot);
        let view = work_view(&journal, None, context(&words));
        let card = view.card.expect("a step");
        assert_eq!((card.task, card.piece), (Task::Dot, Rect::grid(4, 4)));
        plain(&card.how)
    };
    let uneven = told([[FULL - 8, FULL]; 2]);
    assert!(
        uneven.contains("Row of fours B is ¼ in longer")
            && uneven.contains("leave the ends as they come")
            && !uneven.contains("ends level"),
        "{uneven}"
    );
    let even = told([[FULL, FULL]; 2]);
    assert!(even.contains("then the ends level"), "{even}");
}

/// While squares lie to cool, those are not laid out with the rest.
#[test]
fn what_cools_is_not_laid_out() {
    let mut journal = begin(Plan {
        across: 4,
        down: 2,
        ..Plan::default()
    });
    all_denim(&mut journal);
    let square = Rect::square(0, 3);
    let face = Command::SetFace {
        pieces: vec![square],
        face: Face::Front,
        print: Some(0),
        laid_on: false,
    };
    act(&mut journal, &face, 1);
    all_ready(&mut journal, Task::Cut, Kind::Square, 1);
    let leave = "Leave what is cooling where it lies";
    let told = |journal: &Journal| plain(&card_of(journal, Task::Dot, Kind::Pair).how);
    assert!(!told(&journal).contains(leave));
    for task in [Task::CoverFront, Task::PressCover] {
        let pieces = vec![square];
        let just_now = context(&Words::english()).now - 1;
        act(&mut journal, &Command::Tick { task, pieces }, just_now);
    }
    let cooling = told(&journal);
    assert!(cooling.contains(leave), "{cooling}");
}
