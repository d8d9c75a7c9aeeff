//! The clothes pile and its cutting screens, from an outline to the count of squares.

use super::*;
use crate::cloth::garments::{GarmentKind, GarmentSize};
use crate::cloth::pile::Use;
use crate::command::Rejection;
use crate::show::picture::{Ink, Mark};
use crate::show::{Drag, PieceTyped, PileCutView};
use crate::throw::Item;

/// A piece of a heap is cut up into so many squares.
fn cut_piece(n: u16, index: u8, squares: u16) -> Command {
    Command::CutPiece {
        n,
        index,
        squares: squares.into(),
        by_strip: Vec::new(),
        pieced: None,
        strips: None,
        outline: None,
    }
}

/// Puts a man's jeans of this size on the pile.
fn jeans(size: GarmentSize, makes: Use, name: &str) -> Command {
    Command::AddGarment {
        kind: GarmentKind::MensJeans,
        size: Some(size),
        knees: None,
        system: None,
        makes,
        name: name.into(),
    }
}

/// The page of a piece of the first heap.
fn cutting_page(
    journal: &Journal,
    index: u8,
    typed: Option<PieceTyped>,
    drag: Option<Drag>,
    context: Context<'_>,
) -> PileCutView {
    let query = Query::Cutting {
        n: 1,
        index,
        typed,
        drag,
    };
    match answer(journal, &query, context) {
        Ok(View::Cutting(view)) => *view,
        other => panic!("{other:?}"),
    }
}

/// What nobody has measured is called enough only where its least is; else its range is told at
/// once, and told no second time. Both pages that say so say the same.
#[test]
fn what_nobody_measured_is_not_called_enough() {
    let words = Words::english();
    let context = context(&words);
    let told = |across: u16| {
        let mut journal = begin(Plan {
            across,
            down: 4,
            ..Plan::default()
        });
        let pair = jeans(GarmentSize::Medium, Use::ANY_DENIM, "Old jeans");
        act(&mut journal, &pair, 1);
        let range = crate::show::enough::denim_to_come(journal.throw());
        let Ok(View::Pile(pile)) = answer(&journal, &Query::Pile, context) else {
            panic!()
        };
        let Ok(View::Gather(gather)) = answer(&journal, &Query::Gather, context) else {
            panic!()
        };
        let enough = &pile.said[0];
        assert!(
            gather.rows[0].lines.contains(enough),
            "{:?}",
            gather.rows[0]
        );
        (range.map(Count::get), pile.said)
    };
    let ([low, high], said) = told(4);
    assert!(low >= 16 + 3, "{low} are enough whatever comes of it");
    assert!(said[0].starts_with("Enough denim squares: "), "{said:?}");
    assert!(plain(&said).contains(&format!("anything from {low} to {high} squares.")));
    let ([low, high], said) = told(6);
    assert!(low < 24 + 3 && high > 24, "{low} to {high}");
    assert!(
        said[0].starts_with("Perhaps enough denim squares: "),
        "{said:?}"
    );
    let range = format!("anything from {low} to {high}");
    assert_eq!(plain(&said).matches(&range).count(), 1, "{said:?}");
}

/// A garment that is one denim is cut for the squares of that denim, and they say so.
#[test]
fn a_garment_of_one_denim_goes_to_its_squares() {
    use crate::cloth::pile::Use;
    let words = Words::english();
    let context = context(&words);
    let mut journal = bare_denim(4, 2);
    let [dark, faded] = [0, 1].map(|d| journal.throw().denims[d].name.clone());
    // The right half is faded.
    let whole = journal.throw().assembly().whole();
    let right: Vec<Rect> = whole.squares().filter(|s| s.col >= 2).collect();
    let pieces = right.clone();
    act(
        &mut journal,
        &Command::SetDenim {
            pieces,
            denim: 1,
            wrong_side_up: false,
        },
        1,
    );
    let side = journal.throw().plan.side;
    let add = |makes, count: u16| Command::AddPack {
        side,
        count: count.into(),
        makes,
        name: format!("Pack of {count}"),
        mixed: false,
    };
    let refused = journal.propose(&add(Use::Denim { denim: Some(9) }, 3), 1);
    assert!(refused.is_err(), "there is no tenth denim");
    act(&mut journal, &add(Use::Denim { denim: Some(1) }, 6), 1);
    let pile = |journal: &Journal| match answer(journal, &Query::Pile, context) {
        Ok(View::Pile(view)) => view,
        other => panic!("{other:?}"),
    };
    let view = pile(&journal);
    let offered: Vec<Use> = view.makes.iter().map(|m| m.value).collect();
    let of = |denim| Use::Denim { denim };
    assert!(offered.starts_with(&[of(None), of(Some(0)), of(Some(1))]));
    assert!(view.rows[0].said.contains(&faded), "{}", view.rows[0].said);
    let said = plain(&view.said);
    assert!(
        said.contains(&format!(
            "{dark}: 4 still to cut, 0 to come from the pile; 4 short."
        )),
        "{said}"
    );
    assert!(
        said.contains(&format!(
            "{faded}: 4 still to cut, 6 to come from the pile."
        )),
        "{said}"
    );
    // Squares enough in all do not make up for what one denim lacks, but any denim would.
    for (makes, texts) in [
        (
            Some(1),
            "Enough denim squares in all, but not of each denim.",
        ),
        (None, "Enough denim squares: 2 more than the throw takes."),
    ] {
        act(&mut journal, &add(of(makes), 4), 1);
        assert_eq!(pile(&journal).said[0], texts);
        let entry = journal.propose_undo(1).unwrap();
        journal.accept(entry).unwrap();
    }
    // The first square is dark, and nothing on the pile is.
    let card = card_of(&journal, Task::Cut, Kind::Square);
    assert!(!plain(&card.how).contains("To be cut from"));
    let cut = |squares: u16| cut_piece(1, 0, squares);
    act(&mut journal, &cut(6), 2);
    let throw = journal.throw();
    for square in whole.squares() {
        assert_eq!(throw.has(square, Task::Cut), right.contains(&square));
    }
    assert_eq!(throw.spares, 2, "what is over of it lies at hand");
    let said = plain(&pile(&journal).said);
    assert!(
        said.contains(&format!(
            "{dark}: 4 still to cut, 0 to come from the pile; 2 short."
        )),
        "{said}"
    );
    // It can still be said to be any denim, for squares counted later; no print, for these are
    // denim squares already. One nothing came from may be for anything.
    act(&mut journal, &add(of(None), 5), 3);
    let about = |n, makes| Command::DescribeCloth {
        n,
        weight: "14 oz".into(),
        system: System::Inch,
        stretch: false,
        washed: true,
        trimming: zero(),
        makes,
    };
    let view = pile(&journal);
    let uses = |row: usize| view.rows[row].uses.iter().map(|u| u.value);
    assert_eq!(
        uses(0).collect::<Vec<_>>(),
        [of(None), of(Some(0)), of(Some(1))]
    );
    assert!(uses(1).eq(view.makes.iter().map(|m| m.value)));
    assert!(journal.throw().prints.len() > 1, "there are prints to name");
    for row in &view.rows {
        assert_eq!(
            row.uses[row.makes as usize].value,
            journal.throw().pile[&row.n].makes
        );
        for makes in view.makes.iter().map(|m| m.value) {
            let allowed = journal.propose(&about(row.n, Some(makes)), 3).is_ok();
            let offered = row.uses.iter().any(|u| u.value == makes);
            assert_eq!(allowed, offered, "{} for {makes:?}", row.title);
        }
    }
    let refused = journal.propose(&about(2, Some(of(Some(9)))), 3);
    assert!(refused.is_err(), "there is no tenth denim");
    act(&mut journal, &about(2, None), 3);
    assert_eq!(journal.throw().pile[&2].makes, of(None), "left as it was");
    act(&mut journal, &about(2, Some(of(Some(1)))), 3);
    assert!(pile(&journal).rows[1].said.contains(&faded));
    act(&mut journal, &Command::TakeHeap { n: 2 }, 3);
    // Another for the dark ones is named on their card.
    act(&mut journal, &add(of(Some(0)), 5), 3);
    let card = card_of(&journal, Task::Cut, Kind::Square);
    let how = plain(&card.how);
    assert!(how.contains("To be cut from: Pack of 5."), "{how}");
}

/// A leg is outlined, a knee kept clear, a point dragged, the piece cut up and counted short.
#[test]
fn a_leg_from_outline_to_count() {
    use crate::cloth::garments::ZoneKind;
    use crate::show::{Drag, ZoneTyped};
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    let add = jeans(GarmentSize::Medium, Use::ANY_DENIM, "Old jeans");
    act(&mut journal, &add, 1);
    let cutting = |journal: &Journal, typed, drag| cutting_page(journal, 0, typed, drag, context);
    let first = cutting(&journal, None, None);
    words_are_whole(&first);
    assert!(
        first.keep.is_none() && first.expected >= 8 && first.list.len() >= 4,
        "{:?}",
        first.list
    );
    // A worn knee across the middle of the leg.
    let mut typed = first.tidy.clone();
    typed.zones.push(ZoneTyped {
        kind: ZoneKind::Knee,
        from: "16 in".into(),
        to: "22 in".into(),
        left: "2 in".into(),
        width: "9 in".into(),
    });
    let worn = cutting(&journal, Some(typed), None);
    assert!(worn.faults.is_empty(), "{:?}", worn.faults);
    assert!(worn.expected < first.expected);
    act(&mut journal, &worn.keep.clone().unwrap().action, 2);
    assert_eq!(cutting(&journal, None, None).tidy, worn.tidy);
    // A point dragged an inch inwards falls on the ruler's marks and is typed out.
    let handle = worn.handles[0];
    let drag = Drag {
        station: 0,
        x: handle.x - 25.0,
        y: handle.y,
        held_strips: None,
    };
    let moved = cutting(&journal, Some(worn.tidy.clone()), Some(drag));
    assert_ne!(moved.tidy.stations[0], worn.tidy.stations[0]);
    assert!(moved.keep.is_some());
    // A width no leg has, and one of nothing, are told at their field.
    for (width, code) in [("300 in", "piece-too-wide"), ("0 in", "piece-no-width-at")] {
        let mut typed = worn.tidy.clone();
        typed.stations[1].width = width.into();
        let wrong = cutting(&journal, Some(typed), None);
        let fault = wrong.faults.iter().find(|f| f.field == "station-1-width");
        assert_eq!(fault.map(|f| f.problem.code.as_str()), Some(code));
        assert!(wrong.keep.is_none() && wrong.picture.is_none());
    }
    // An inch with decimals stays one.
    let mut typed = worn.tidy.clone();
    typed.stations[1].width = "16.3".into();
    let tenths = cutting(&journal, Some(typed), None);
    assert_eq!(tenths.tidy.stations[1].width, "16.3 in");
    // The knee goes with the edge of the cloth: as far from it as before.
    let mut typed = worn.tidy.clone();
    for station in &mut typed.stations {
        station.width = "12 in".into();
    }
    let slim = cutting(&journal, Some(typed), None);
    assert!(slim.faults.is_empty(), "{:?}", slim.faults);
    let mut kept = journal.clone();
    act(&mut kept, &slim.keep.clone().unwrap().action, 3);
    let knee = cutting(&kept, None, None).tidy.zones.pop().unwrap();
    assert_eq!((knee.left.as_str(), knee.width.as_str()), ("2 in", "9 in"));
    // Cut up with what was changed and not kept: both are kept.
    let Command::SetPiece { n, index, outline } = slim.keep.clone().unwrap().action else {
        panic!()
    };
    let mut both = journal.clone();
    let cut = Command::CutPiece {
        n,
        index,
        squares: Count::from(3),
        by_strip: Vec::new(),
        pieced: None,
        strips: None,
        outline: Some(outline),
    };
    act(&mut both, &cut, 3);
    let seen = cutting(&both, None, None);
    assert_eq!(
        (seen.counted, seen.tidy.stations),
        (Some(3), slim.tidy.stations)
    );
    // Nonsense is told by field, and nothing is kept.
    let mut typed = worn.tidy.clone();
    typed.stations[1].width = "wide".into();
    let wrong = cutting(&journal, Some(typed), None);
    assert!(wrong.keep.is_none() && wrong.faults.iter().any(|f| f.field == "station-1-width"));
    // Fewer came out than expected: the pile says what can be done.
    act(&mut journal, &cut_piece(1, 0, 5), 3);
    act(&mut journal, &cut_piece(1, 1, 6), 4);
    let Ok(View::Pile(pile)) = answer(&journal, &Query::Pile, context) else {
        panic!()
    };
    words_are_whole(&pile);
    assert!(
        pile.said
            .contains(&"5 denim squares short, and 2 more to keep back as spares.".to_string()),
        "{:?}",
        pile.said
    );
    // One count everywhere: the pile, the step, and what to have at hand.
    let figure = |label: &str| {
        let found = pile.figures.iter().find(|f| f.label == label);
        found.map(|f| f.value.text.clone()).unwrap_or_default()
    };
    assert_eq!([figure("Cut"), figure("Still to cut")], ["11", "5"]);
    assert_eq!([figure("Spare"), figure("The pile still gives")], ["", "0"]);
    let batch = Some((Task::Cut, Kind::Square));
    let look_at = Query::Work {
        station: None,
        batch,
    };
    let Ok(View::Work(work)) = answer(&journal, &look_at, context) else {
        panic!()
    };
    let card = work.card.unwrap();
    assert!(card.remain.starts_with("5 squares"), "{}", card.remain);
    let Ok(View::Gather(gather)) = answer(&journal, &Query::Gather, context) else {
        panic!()
    };
    let denim = &gather.rows[0].lines[0];
    assert!(denim.ends_with("5 still to cut."), "{denim}");
    assert_eq!(pile.ways[0].title, "3 across × 3 down");
    assert!(journal.propose(&pile.ways[0].button.action, 5).is_ok());
    assert_eq!(
        journal
            .throw()
            .assembly()
            .whole()
            .squares()
            .filter(|s| journal.throw().has(*s, Task::Cut))
            .count(),
        11
    );
}

/// A cut is measured from where the cloth begins on that line, not from where it is widest.
#[test]
fn a_cut_is_told_from_the_edge_of_the_cloth() {
    use crate::cloth::garments::{GarmentPart, OutlineStation, Piece};
    let words = Words::english();
    // 8 in wide at the hem, 16 in at the top, 20 in up; the middle line is the middle.
    let station = |at, half: i64| OutlineStation {
        at: inches(at),
        left: zero() - inches(half),
        right: inches(half),
    };
    let piece = Piece {
        part: GarmentPart::Cloth,
        stations: vec![station(0, 4), station(20, 8)],
        zones: Vec::new(),
    };
    let how = crate::cloth::pile::how(inches(5));
    let cuts = crate::cloth::cutting::lay_out(&piece, &how).unwrap();
    let journal = begin(Plan::default());
    let texts = |piece: &Piece, cuts| -> Vec<String> {
        let laid = cutting_list::Laid {
            lying: piece.clone(),
            cuts,
            places: Vec::new(),
            done: 0,
        };
        let rows = cutting_list::rows(journal.throw(), (1, 0), &laid, context(&words));
        let texts = rows.into_iter().map(|row| row.text.replace('\u{a0}', " "));
        texts.collect()
    };
    let said = texts(&piece, cuts);
    let at_edge = "Off it, starting at its lower left corner: ";
    assert_eq!(said.len(), 4, "{said:?}");
    assert!(said.iter().all(|line| line.contains(at_edge)), "{said:?}");
    // A hole against the lower left corner: 2 in wide from the edge there.
    let held = piece.clone().without(crate::cloth::garments::Zone {
        kind: crate::cloth::garments::ZoneKind::Hole,
        from: inches(14),
        to: inches(20),
        left: zero() - inches(7),
        right: zero() - inches(5),
    });
    let cuts = crate::cloth::cutting::lay_out(&held, &how).unwrap();
    let last = texts(&held, cuts).pop().unwrap();
    // The cloth begins 7 in left of the middle 15 in up; the squares at 5 in.
    assert!(
        last.contains("starting 2 in from its lower left corner: 2 squares"),
        "{last}"
    );
}

/// The line across that is next is drawn on the cloth, not as wide as the piece is at its widest.
#[test]
fn the_next_cut_across_is_drawn_on_the_cloth() {
    let words = Words::english();
    let mut journal = begin(Plan::default());
    let add = jeans(GarmentSize::Large, Use::ANY_DENIM, "Old jeans");
    act(&mut journal, &add, 1);
    let seen = cutting_page(&journal, 0, None, None, context(&words));
    assert_eq!(seen.list[0].title, "A straight edge");
    let spans = |wanted: Ink| {
        let marks = &seen.picture.as_ref().unwrap().marks;
        let found = marks.iter().find_map(|mark| match mark {
            Mark::Shape { d, ink, .. } if *ink == wanted => Some(path_ends(d, [0.0; 2])),
            _ => None,
        });
        found.expect("a shape")
    };
    let reach = |points: &[[f64; 2]]| {
        let xs = points.iter().map(|p| p[0]);
        (
            xs.clone().fold(f64::MAX, f64::min),
            xs.fold(f64::MIN, f64::max),
        )
    };
    // The lowest two corners of the outline are the ends of the hem.
    let mut outline = spans(Ink::Outline);
    outline.sort_by(|a, b| b[1].total_cmp(&a[1]));
    let (hem, all) = (reach(&outline[..2]), reach(&outline));
    let (left, right) = reach(&spans(Ink::Now));
    let wide = all.1 - all.0;
    assert!((left - hem.0).abs() < wide / 50.0, "{left} {hem:?}");
    assert!((right - hem.1).abs() < wide / 50.0, "{right} {hem:?}");
    assert!(hem.1 - hem.0 < wide * 0.8, "a leg is narrower at the hem");
}

/// A leg's lines are ticked off one by one and put back; the binding strips it was begun with
/// stay its own; its squares go to the places that were chalked on them.
#[test]
fn a_leg_is_cut_line_by_line() {
    use crate::show::PileCutView;
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    let add = jeans(GarmentSize::Large, Use::ANY_DENIM, "Old jeans");
    act(&mut journal, &add, 1);
    let cutting = |journal: &Journal, index| cutting_page(journal, index, None, None, context);
    let first = cutting(&journal, 0);
    words_are_whole(&first);
    // 2 · (18½ + 18½) and a tail: three strips of 28 in, two of them from this leg.
    assert_eq!((first.expected, first.expected_strips), (15, 2));
    assert!(first.list.iter().all(|row| !row.done) && first.list[0].now);
    // That nobody has looked at the knee is told before the first cut.
    let guessed = |lines: &[String]| lines.iter().any(|line| line.contains("is a guess"));
    assert!(guessed(&first.heeds) && !guessed(&first.said));
    for n in 0..first.list.len() {
        let tick = cutting(&journal, 0).list[n].tick.clone().unwrap();
        act(&mut journal, &tick.action, 2);
        let seen = cutting(&journal, 0);
        let done = seen.list.iter().filter(|row| row.done).count();
        assert_eq!(done, n + 1);
        let texts = |view: &PileCutView| -> Vec<String> {
            view.list.iter().map(|row| row.text.clone()).collect()
        };
        assert_eq!(
            texts(&seen),
            texts(&first),
            "the list stays as it was begun"
        );
    }
    let back = cutting(&journal, 0).list[2].tick.clone().unwrap();
    act(&mut journal, &back.action, 3);
    assert_eq!(
        cutting(&journal, 0).list.iter().filter(|r| r.done).count(),
        2
    );
    // The other leg's places come after those of this one, whichever is cut first.
    let second = cutting(&journal, 1);
    // One of them goes to the last place, and the others are spare.
    let over = second.expected - 1;
    assert_eq!(
        second.list.iter().filter_map(|r| r.chalk.clone()).count(),
        6
    );
    // A spare is called the same in the picture, where it might be taken for the number of a place,
    // and in the list.
    let labels = |view: &PileCutView| -> Vec<String> {
        let marks = view.picture.iter().flat_map(|picture| &picture.marks);
        let labels = marks.filter_map(|mark| match mark {
            crate::show::Mark::Area { label, .. } => label.clone(),
            _ => None,
        });
        labels.collect()
    };
    let told = labels(&second);
    let spares = told.iter().filter(|label| *label == "S").count();
    assert_eq!((told.len() as u32, spares as u32), (second.expected, over));
    assert!(told.contains(&"4·4".to_string()), "{told:?}");
    let chalk: Vec<String> = second.list.iter().filter_map(|r| r.chalk.clone()).collect();
    assert!(chalk.iter().all(|line| line.contains('S')), "{chalk:?}");
    assert_eq!(chalk[0], "Chalk on them: 4·4, and S on the spare.");
    act(&mut journal, &second.all_came.unwrap().action, 4);
    let cut: Vec<Rect> = journal.throw().assembly().whole().squares().collect();
    let cut = cut
        .into_iter()
        .filter(|s| journal.throw().has(*s, Task::Cut));
    assert_eq!(cut.collect::<Vec<_>>(), [Rect::square(3, 3)]);
    assert_eq!(journal.throw().spares, over);
    // All the strips of a heap are told: of the leg that is cut and of the one to come.
    let pile_view = |journal: &Journal| match answer(journal, &Query::Pile, context) {
        Ok(View::Pile(pile)) => pile,
        other => panic!("{other:?}"),
    };
    let pile = pile_view(&journal);
    let said = &pile.rows[0].pieces[1].said;
    // The list of the first leg has 15 squares, that of the other 16.
    assert_eq!(said, "16 squares and one binding strip came out");
    let said = &pile.rows[0].said;
    assert!(said.ends_with("31 squares, 3 binding strips"), "{said}");
    // All that is needed is there, so that the next thing is to cut the leg that was begun.
    let next = pile.next.expect("a leg to cut");
    assert_eq!((next.n, next.index), (1, 0));
    act(&mut journal, &first.all_came.unwrap().action, 5);
    assert_eq!(pile_view(&journal).next, None, "all is cut");
    let open = journal.throw().uncut(None).count();
    assert_eq!((open, journal.throw().spares.get()), (0, over));
    let Ok(View::Pile(pile)) = answer(&journal, &Query::Pile, context) else {
        panic!()
    };
    assert_eq!(pile.said[1], "All 3 binding strips are cut.");
    // The page of a piece that is cut up shows what was cut, and compares it with nothing else.
    let before = first.picture.as_ref().unwrap();
    let after = cutting(&journal, 0);
    words_are_whole(&after);
    let labels = |picture: &Picture| -> Vec<String> {
        let areas = picture.marks.iter().filter_map(|mark| match mark {
            Mark::Area { label, .. } => label.clone(),
            _ => None,
        });
        areas.collect()
    };
    assert!(labels(before).contains(&"1·1".to_string()));
    assert_eq!(labels(after.picture.as_ref().unwrap()), labels(before));
    let figures: Vec<_> = after
        .figures
        .iter()
        .map(|f| f.value.text.as_str())
        .collect();
    assert_eq!(figures, ["15", "2"], "squares and strips that came out");
    assert!(
        after.said.is_empty() && after.list.is_empty(),
        "{:?}",
        after.said
    );
}

/// A throw begun with two denims on its pile is of both, as much of each as the pile gives: none is
/// said to lack while the other is over. What was chosen by hand stays.
#[test]
fn a_throw_begun_with_two_denims_is_of_both() {
    let words = Words::english();
    let context = context(&words);
    let plan = Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    };
    let pack = |denim, count: u16| Command::AddPack {
        side: plan.side,
        count: count.into(),
        makes: Use::Denim { denim: Some(denim) },
        name: format!("Pack of {count}"),
        mixed: false,
    };
    let both = Command::AddAll {
        heaps: vec![pack(0, 15), pack(1, 30)],
    };
    let mut journal = begin(plan);
    act(&mut journal, &both, 1);
    // Sainte-Laguë by hand: of 15/1, 15/3, 15/5 … and 30/1, 30/3, 30/5 … the 16 largest are
    // 30, 15, 10, 6, 5, 4.3, 3.3, 3, 2.7, 2.3, 2.1, 2, 1.8, 1.7, 1.6, 1.4: five of the first.
    assert_eq!(journal.throw().uncut_by_denim(), [5, 11]);
    let beside = |journal: &Journal| {
        let denim = |row, col| journal.throw().cover(Rect::square(row, col)).denim;
        let rows =
            (0..4).flat_map(|r| (0..3).map(move |c| [(r, c), (r, c + 1), (c, r), (c + 1, r)]));
        let alike = rows.flat_map(|[a, b, c, d]| [(a, b), (c, d)]);
        alike
            .filter(|(a, b)| denim(a.0, a.1) == 0 && denim(b.0, b.1) == 0)
            .count()
    };
    assert_eq!(beside(&journal), 0, "the rarer denim lies apart");
    let pile = |journal: &Journal| match answer(journal, &Query::Pile, context) {
        Ok(View::Pile(view)) => view,
        other => panic!("{other:?}"),
    };
    let seen = pile(&journal);
    words_are_whole(&seen);
    assert!(
        seen.said.iter().all(|s| !s.contains("short")),
        "{:?}",
        seen.said
    );
    let undone = journal.propose_undo(2).unwrap();
    journal.accept(undone).unwrap();
    // Chosen by hand first, then put on the pile: it stays, and the pile offers to share it out.
    let pieces: Vec<Rect> = journal
        .throw()
        .assembly()
        .whole()
        .squares()
        .take(2)
        .collect();
    let by_hand = Command::SetDenim {
        pieces: pieces.clone(),
        denim: 1,
        wrong_side_up: false,
    };
    act(&mut journal, &by_hand, 3);
    let few = Command::AddAll {
        heaps: vec![pack(0, 6), pack(1, 30)],
    };
    act(&mut journal, &few, 4);
    assert_eq!(journal.throw().uncut_by_denim(), [14, 2]);
    let seen = pile(&journal);
    let way = &seen.ways[0];
    assert_eq!(way.title, "Share the squares out over the denims you have");
    act(&mut journal, &way.button.action, 5);
    // Each keeps its denim while there is enough of it: six of the first.
    assert_eq!(journal.throw().uncut_by_denim(), [6, 10]);
    assert!(pieces.iter().all(|s| journal.throw().cover(*s).denim == 1));
    assert!(pile(&journal).ways.iter().all(|w| w.title != way.title));
}

/// A layout is made of the fabric that is known of, where that is enough: a pack on the pile counts,
/// and no more is suggested than it gives.
#[test]
fn a_layout_takes_the_fabric_there_is() {
    let words = Words::english();
    let context = context(&words);
    let plan = Plan {
        across: 7,
        down: 11,
        ..Plan::default()
    };
    let mut journal = begin(plan);
    all_denim(&mut journal);
    let mut prints = journal.throw().prints.clone();
    for print in &mut prints {
        print.stock = None;
    }
    let cloth = Command::SetCloth {
        prints,
        denims: journal.throw().denims.clone(),
    };
    act(&mut journal, &cloth, 1);
    let pack = Command::AddPack {
        side: plan.side,
        count: 42_u16.into(),
        makes: Use::Fabric { print: 2 },
        name: "Pack".into(),
        mixed: false,
    };
    act(&mut journal, &pack, 1);
    let wished = crate::show::wishes::wishes(&journal, None, context).wishes;
    // A third of 77 is 25 and a quarter 19: 44. Of 42, 42 · 25 / 44 = 23 are for the front.
    assert_eq!((wished.front.get(), wished.back.get()), (23, 19));
    let covers = Arranger::new(journal.throw(), wished, 1).covers();
    let placed: Vec<u8> = covers
        .iter()
        .flat_map(|c| [c.front, c.back])
        .flatten()
        .collect();
    assert_eq!(placed, [2; 42]);
}

/// No more squares are offered as cut in one tap than the cloth there is gives; without a pile
/// nothing is known of the cloth.
#[test]
fn all_squares_are_not_cut_from_cloth_that_gives_fewer() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = bare_denim(8, 8);
    let labels = |journal: &Journal| -> Vec<String> {
        let card = work_view(journal, None, context).card.unwrap();
        card.ticks
            .iter()
            .map(|b| b.label.replace('\u{a0}', " "))
            .collect()
    };
    let fabric = Command::AddPack {
        side: journal.throw().plan.side,
        count: 4_u16.into(),
        makes: Use::Fabric { print: 0 },
        name: "Pack".into(),
        mixed: false,
    };
    act(&mut journal, &fabric, 1);
    assert!(labels(&journal).contains(&"All 64 cut".to_string()));
    act(
        &mut journal,
        &jeans(GarmentSize::Medium, Use::ANY_DENIM, "Old jeans"),
        1,
    );
    let short = crate::throw::account::account(journal.throw()).short();
    assert!(short > 30, "{short}");
    assert!(!labels(&journal).contains(&"All 64 cut".to_string()));
    let Ok(View::Pile(pile)) = answer(&journal, &Query::Pile, context) else {
        panic!()
    };
    // One square in twenty is kept back: 64 / 20, rounded up.
    let said = format!("{short} denim squares short, and 4 more to keep back as spares.");
    assert_eq!(pile.said[0].replace('\u{a0}', " "), said);
}

/// While a point is held, only the piece under the finger is laid out: the squares and strips are
/// those of this outline with the strips it had, and the rest of the pile is not looked at.
#[test]
fn only_the_piece_under_the_finger_is_laid_out() {
    use crate::throw::account::{account, layout};
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan::default());
    for n in 0..20 {
        let size = [GarmentSize::Small, GarmentSize::Medium, GarmentSize::Large][n % 3];
        act(&mut journal, &jeans(size, Use::ANY_DENIM, "Jeans"), 1);
    }
    let page = |drag| cutting_page(&journal, 0, None, drag, context);
    let shown = page(None);
    let handle = shown.handles[1];
    let drag = |held_strips| Drag {
        station: 1,
        x: handle.x - 60.0,
        y: handle.y,
        held_strips,
    };
    let strips = Count::at_most(shown.expected_strips);
    let clock = std::time::Instant::now();
    let held = page(Some(drag(Some(strips))));
    let one = clock.elapsed();
    let clock = std::time::Instant::now();
    let whole = page(Some(drag(None)));
    println!(
        "{one:?} held, {:?} of {} pieces",
        clock.elapsed(),
        account(journal.throw()).pieces.len()
    );
    assert_eq!((&held.tidy, &held.handles), (&whole.tidy, &whole.handles));
    assert_eq!(held.expected_strips, shown.expected_strips);
    // Nothing is told as certain that is worked out once the point is let go.
    assert_eq!(held.figures.len(), 1);
    assert_eq!(
        held.figures[0].value.text,
        format!("about {}", held.expected)
    );
    assert!(held.list.is_empty() && held.all_came.is_none());
    let told = plain(&whole.said);
    assert!(
        told.contains("However it is cut, it gives no more"),
        "{told}"
    );
    assert!(!whole.list.is_empty());
    assert!(whole.list.iter().all(|row| row.tick.is_none()));
    // Not even where the finger has not moved yet.
    let still = page(Some(Drag {
        x: handle.x,
        ..drag(Some(strips))
    }));
    assert_eq!(still.figures.len(), 1);
    // The outline is kept as it was left.
    let keep = held.keep.expect("it can be kept");
    let mut kept = crate::log::journal::Journal::read(journal.text().as_bytes())
        .unwrap()
        .journal;
    act(&mut kept, &keep.action, 2);
    let throw = kept.throw();
    let heap = &throw.pile[&1];
    let crate::cloth::garments::Source::Cloth(garment) = &heap.from else {
        panic!()
    };
    let cuts = layout(throw, heap, (0, &garment.pieces[0]), strips).cuts;
    assert_eq!(held.expected, cuts.count);
}

/// A piece that is being cut gives up the strips the plan no longer wants, as long as none of its
/// done lines changes; a strip that is cut is told as over, not as planned.
#[test]
fn strips_no_longer_wanted_are_given_up_by_a_piece_that_is_being_cut() {
    use crate::throw::account::account;
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    let add = jeans(GarmentSize::Large, Use::ANY_DENIM, "Old jeans");
    act(&mut journal, &add, 1);
    let lines = |journal: &mut Journal, n: u32| {
        let lines = Count::at_most(n);
        let (n, index) = (1, 0);
        act(journal, &Command::CutLines { n, index, lines }, 2);
    };
    // Strips as long as all of the binding: one is wanted.
    let longer = |journal: &mut Journal| {
        let mut plan = journal.throw().plan;
        plan.binding.longest = inches(80);
        act(journal, &Command::ChangePlan { plan }, 3);
    };
    let leg = |journal: &Journal| cutting_page(journal, 0, None, None, context);
    let whole = |journal: &Journal| {
        let strips = account(journal.throw()).strips;
        assert!(strips.planned <= strips.open(), "{strips:?}");
        assert_eq!(
            strips.cut + strips.planned + strips.lacking(),
            strips.wanted
        );
        strips
    };
    lines(&mut journal, 1);
    assert_eq!(leg(&journal).expected_strips, 2);
    // 2 · (9½ + 9½) and a tail: 42 in, two strips. Of a throw of four squares one leg's two do.
    let mut plan = journal.throw().plan;
    (plan.across, plan.down) = (1, 1);
    let before = leg(&journal);
    act(&mut journal, &Command::ChangePlan { plan }, 3);
    // 2 · (5 + 5) and a tail: 24 in, one strip, and the piece gives one.
    let strips = whole(&journal);
    assert_eq!((strips.wanted, strips.planned, strips.over), (1, 1, 0));
    let after = leg(&journal);
    assert_eq!(after.expected_strips, 1);
    assert_eq!(after.list[0].text, before.list[0].text, "what is cut stays");
    // Both strips cut first: the second is over.
    (plan.across, plan.down) = (4, 4);
    act(&mut journal, &Command::ChangePlan { plan }, 4);
    lines(&mut journal, 0);
    lines(&mut journal, 3);
    assert_eq!(leg(&journal).expected_strips, 2);
    (plan.across, plan.down) = (1, 1);
    act(&mut journal, &Command::ChangePlan { plan }, 5);
    let strips = whole(&journal);
    assert_eq!((strips.wanted, strips.planned, strips.over), (1, 1, 1));
    assert_eq!(leg(&journal).expected_strips, 2);
    let Ok(View::Pile(pile)) = answer(&journal, &Query::Pile, context) else {
        panic!()
    };
    let said = plain(&pile.said);
    assert!(
        said.contains("One binding strip that is cut already is more"),
        "{said}"
    );
    longer(&mut journal);
    whole(&journal);
}

/// A spoilt square is replaced by what is really left of its denim: a spare of it, a square a
/// named leg has over, then another denim, whose place is of that denim from then on; and never
/// by a square that nothing is left for.
#[test]
fn a_spoilt_square_is_offered_what_is_left_of_its_denim() {
    use crate::cloth::pile::Use;
    use crate::throw::Mishap;
    let words = Words::english();
    let context = context(&words);
    let mut journal = bare_denim(4, 2);
    let [dark, faded] = [0, 1].map(|d| journal.throw().denims[d].name.clone());
    let whole = journal.throw().assembly().whole();
    let pieces: Vec<Rect> = whole.squares().filter(|s| s.col >= 2).collect();
    let set = Command::SetDenim {
        pieces,
        denim: 1,
        wrong_side_up: false,
    };
    act(&mut journal, &set, 1);
    let side = journal.throw().plan.side;
    for (denim, count) in [(0, 5u16), (1, 6)] {
        let add = Command::AddPack {
            side,
            count: count.into(),
            makes: Use::Denim { denim: Some(denim) },
            name: format!("Pack {denim}"),
            mixed: false,
        };
        act(&mut journal, &add, 1);
        let cut = cut_piece(u16::from(denim) + 1, 0, count);
        act(&mut journal, &cut, 2);
    }
    let spares = |journal: &Journal| {
        let throw = journal.throw();
        [
            throw.spares_of(0),
            throw.spares_of(1),
            throw.spares_unsaid(),
        ]
    };
    assert_eq!(spares(&journal), [1, 2, 0]);
    let square = Rect::square(0, 0);
    let ways = |journal: &Journal| -> Vec<crate::show::RemedyRow> {
        let query = Query::Off {
            piece: square,
            why: Some(Mishap::Scorched),
        };
        match answer(journal, &query, context) {
            Ok(View::Off(view)) => view.ways,
            other => panic!("{other:?}"),
        }
    };
    let titles = |journal: &Journal| -> Vec<String> {
        let own = |title: &String| {
            title.contains("spare") || title.contains("Cut") || title.contains("open")
        };
        ways(journal)
            .into_iter()
            .map(|w| w.title)
            .filter(own)
            .collect()
    };
    let more = "Leave its place open until more cloth is found";
    let of_faded = |n: u32| format!("Put one of {n} spares of {faded} in");
    assert_eq!(
        titles(&journal),
        [
            "Put the spare square in".to_string(),
            of_faded(2),
            more.into()
        ]
    );
    let first = ways(&journal)[0].button.action.clone();
    act(&mut journal, &first, 3);
    assert_eq!(spares(&journal), [0, 2, 0]);
    assert_eq!(journal.throw().cover(square).denim, 0);
    // No dark one is left: a faded one makes its place faded.
    assert_eq!(titles(&journal), [of_faded(2), more.into()]);
    let first = ways(&journal)[0].button.action.clone();
    act(&mut journal, &first, 4);
    assert_eq!(spares(&journal), [0, 1, 0]);
    let throw = journal.throw();
    assert!(throw.has(square, Task::Cut));
    assert_eq!(
        throw.cover(square).denim,
        1,
        "its place is of {faded} now, not of {dark}"
    );
    // A leg of dark jeans comes onto the pile: all its squares are over.
    let add = jeans(
        GarmentSize::Large,
        Use::Denim { denim: Some(0) },
        "Dark pair",
    );
    act(&mut journal, &add, 5);
    let texts = titles(&journal);
    assert!(
        texts.contains(&"Put the spare square in".to_string())
            && texts.iter().any(|t| t.starts_with("Cut one of")),
        "{texts:?}"
    );
    let dark_square = Rect::square(1, 0);
    let query = Query::Off {
        piece: dark_square,
        why: Some(Mishap::Lost),
    };
    let Ok(View::Off(view)) = answer(&journal, &query, context) else {
        panic!()
    };
    assert!(
        view.ways.iter().any(|w| w
            .title
            .starts_with("Cut another from Dark pair, Left leg (about")),
        "{:?}",
        view.ways.iter().map(|w| &w.title).collect::<Vec<_>>()
    );
    // What falls outside a smaller grid is spare of its own denim; what is counted by hand is not.
    let smaller = Plan {
        across: 3,
        ..journal.throw().plan
    };
    act(&mut journal, &Command::ChangePlan { plan: smaller }, 6);
    assert_eq!(spares(&journal), [0, 3, 0]);
    let count = |n: u32| Command::CountSpares {
        spares: Count::at_most(n),
    };
    act(&mut journal, &count(5), 7);
    assert_eq!(spares(&journal), [0, 3, 2]);
    act(&mut journal, &count(2), 8);
    assert_eq!(spares(&journal), [0, 2, 0]);
}

/// What to have at hand is told by denim and by fabric, against the pile. Worked by hand: 4 × 4
/// squares, eight of each denim; packs of six of the first and nine of the second; five squares
/// of a fabric placed on the back, and a pack of three for it.
#[test]
fn what_to_have_at_hand_is_checked_against_the_pile() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    let lines = |journal: &Journal| {
        let Ok(View::Gather(gather)) = answer(journal, &Query::Gather, context) else {
            panic!()
        };
        gather.rows.into_iter().map(|r| (r.item, r.lines))
    };
    let of = |journal: &Journal, item: Item| lines(journal).find(|(i, _)| *i == item).unwrap().1;
    // Nothing on the pile: all of it lacks.
    let denim = of(&journal, Item::Denim);
    assert_eq!(
        denim[1],
        "16 squares are still missing. No denim is on the pile yet."
    );
    let lower = Rect::grid(4, 4).squares().filter(|s| s.row > 1);
    act(
        &mut journal,
        &Command::SetDenim {
            pieces: lower.collect(),
            denim: 1,
            wrong_side_up: false,
        },
        1,
    );
    let names: Vec<String> = journal
        .throw()
        .denims
        .iter()
        .map(|d| d.name.clone())
        .collect();
    let back = Rect::grid(4, 4).squares().take(5);
    act(
        &mut journal,
        &Command::SetFace {
            pieces: back.collect(),
            face: Face::Back,
            print: Some(1),
            laid_on: false,
        },
        3,
    );
    let pack = |count: u32, makes| Command::AddPack {
        side: inches(5),
        count: Count::at_most(count),
        makes,
        name: "Pack".into(),
        mixed: false,
    };
    let makes = |denim| Use::Denim { denim: Some(denim) };
    for heap in [
        pack(6, makes(0)),
        pack(9, makes(1)),
        pack(3, Use::Fabric { print: 1 }),
    ] {
        act(&mut journal, &heap, 4);
    }
    let Ok(View::Gather(gather)) = answer(&journal, &Query::Gather, context) else {
        panic!()
    };
    words_are_whole(&gather);
    // 7 kg ÷ 0.4536 = 15.4 lb, in pounds alone where inches are chosen.
    let washer = gather.said[0].replace('\u{a0}', " ");
    assert!(
        washer.contains("(15 lb)") && !washer.contains("kg"),
        "{washer}"
    );
    // 6 + 9 are one short of 16, and both of it of the first denim: 8 − 6 = 2.
    let denim = of(&journal, Item::Denim);
    assert_eq!(
        denim[1],
        "One denim square short, and 2 more to keep back as spares."
    );
    let told = |n: usize, gives: u32| {
        let name = &names[n];
        format!("{name}: 8 squares, 8 still to cut, {gives} to come from the pile.")
    };
    assert_eq!(denim[2], format!("{} 2 short.", told(0, 6)));
    assert_eq!(denim[3], told(1, 9));
    // 5 placed, 3 in the pack.
    let fabric = of(&journal, Item::Fabric { print: 1 });
    assert_eq!(
        fabric[1..],
        ["3 squares are to come from the pile.", "2 short."]
    );
    // The table tells the same: wanted, there, short.
    let table = crate::show::tables::Table::Supplies.csv(&journal, context);
    let has = |name: &str, wanted: u32, told: &str| {
        let start = format!("{name},{wanted},squares,5,127,");
        let end = format!(",{told}");
        let mut lines = table.lines();
        let found = lines.any(|l| l.starts_with(&start) && l.ends_with(&end));
        assert!(found, "{start} … {end}\n{table}");
    };
    has("Denim", 16, "15,1");
    has(&format!("Denim: {}", names[0]), 8, "6,2");
    has(&format!("Denim: {}", names[1]), 8, "9,0");
    has(&journal.throw().prints[1].name, 5, "3,2");
}

/// The tools are those the plan needs: pins where seams are pinned, a square ruler where fours
/// are squared up.
#[test]
fn the_tools_are_those_the_plan_needs() {
    let words = Words::english();
    let context = context(&words);
    let rows = |plan: Plan| {
        let journal = begin(plan);
        let Ok(View::Gather(gather)) = answer(&journal, &Query::Gather, context) else {
            panic!()
        };
        gather.rows
    };
    let of = |plan: Plan, item: Item| {
        let row = rows(plan).into_iter().find(|r| r.item == item).unwrap();
        format!("{}: {}", row.label, row.lines.join(" "))
    };
    let plan = Plan::default();
    let seamed = |joining| Plan { joining, ..plan };
    for (joining, pins, snips) in [
        (Joining::Lapped, false, false),
        (Joining::Seamed, true, false),
        (Joining::Exposed, true, true),
    ] {
        let plan = seamed(joining);
        assert_eq!(of(plan, Item::Clips).contains("Pins"), pins, "{joining:?}");
        let ripper = of(plan, Item::Ripper);
        assert_eq!(ripper.contains("allowances"), snips, "{joining:?}");
        assert!(of(plan, Item::Press).contains("pressing cloth"));
    }
    let cutter = |across, down| {
        let plan = Plan {
            across,
            down,
            ..plan
        };
        of(plan, Item::Cutter)
    };
    // Two of 5 in lapped by 1/2 in: 9 1/2 in.
    assert!(cutter(4, 4).contains("a square ruler of 9½\u{a0}in or more"));
    assert!(!cutter(1, 6).contains("square ruler"), "{}", cutter(1, 6));
}

/// By hand: two packs of four; the first is unpacked, so that four squares are counted and four are still on the
/// pile. Eight can be placed, and nine cannot; of eight and one spoilt in cutting the second, seven.
#[test]
fn fabric_still_on_the_pile_can_be_placed() {
    let plan = Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    };
    let mut journal = begin(plan);
    let mut prints = journal.throw().prints.clone();
    prints.iter_mut().for_each(|print| print.stock = None);
    let denims = journal.throw().denims.clone();
    act(&mut journal, &Command::SetCloth { prints, denims }, 1);
    for name in ["First", "Second"] {
        let pack = Command::AddPack {
            side: plan.side,
            count: 4_u16.into(),
            makes: Use::Fabric { print: 0 },
            name: name.into(),
            mixed: false,
        };
        act(&mut journal, &pack, 1);
    }
    let heaps: Vec<u16> = journal.throw().pile.keys().copied().collect();
    let unpack = |n: usize, squares: u16| cut_piece(heaps[n], 0, squares);
    let place = |journal: &Journal, squares: usize| {
        let all = Rect::grid(4, 4).squares().take(squares);
        let action = Command::SetFace {
            pieces: all.collect(),
            face: Face::Front,
            print: Some(0),
            laid_on: false,
        };
        journal.propose(&action, 2).map(drop)
    };
    let refused = |have| Err(Rejection::Stock { print: 0, have });
    act(&mut journal, &unpack(0, 4), 2);
    assert_eq!(place(&journal, 8), Ok(()));
    assert_eq!(place(&journal, 9), refused(8));
    act(&mut journal, &unpack(1, 3), 2);
    assert_eq!(place(&journal, 7), Ok(()));
    assert_eq!(place(&journal, 8), refused(7));
}

/// Four dark squares and four faded ones are wanted. Three dark ones were bought and six faded ones: one
/// dark one is lacking, and two faded ones are over. What takes its place is said.
#[test]
fn what_a_denim_lacks_is_said_to_come_from_the_spares() {
    use crate::cloth::pile::Use;
    let words = Words::english();
    let mut journal = bare_denim(4, 2);
    let whole = journal.throw().assembly().whole();
    let set = Command::SetDenim {
        pieces: whole.squares().filter(|s| s.col >= 2).collect(),
        denim: 1,
        wrong_side_up: false,
    };
    act(&mut journal, &set, 1);
    let told = |journal: &Journal| -> Vec<bool> {
        let throw = journal.throw();
        let account = crate::throw::account::account(throw);
        let each = crate::show::gather::denims(throw, &account, context(&words));
        let from_spares = |said: &str| said.contains("One of them is to be taken from the spares");
        each.iter().map(|d| from_spares(&d.said)).collect()
    };
    for (denim, count) in [(0, 3u16), (1, 6)] {
        let add = Command::AddPack {
            side: journal.throw().plan.side,
            count: count.into(),
            makes: Use::Denim { denim: Some(denim) },
            name: format!("Pack {denim}"),
            mixed: false,
        };
        act(&mut journal, &add, 1);
    }
    act(&mut journal, &cut_piece(1, 0, 3), 2);
    assert_eq!(told(&journal), [false; 2]);
    act(&mut journal, &cut_piece(2, 0, 6), 2);
    assert_eq!(told(&journal), [true, false]);
}
