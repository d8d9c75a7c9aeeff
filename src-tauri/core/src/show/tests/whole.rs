//! The finished piece before and after washing.

use super::*;

#[test]
fn washing_is_told_from_sewing() {
    use crate::plan::assembly::Kind;
    let words = Words::english();
    let context = context(&words);
    let whole = |journal: &Journal, width: &str, height: &str| {
        let (width, height) = (width.into(), height.into());
        match answer(journal, &Query::Whole { width, height }, context) {
            Ok(View::Whole(view)) => view,
            other => panic!("{other:?}"),
        }
    };
    let said = |view: &crate::show::WholeView| view.lines.join(" ").replace('\u{a0}', " ");
    let wash = |journal: &mut Journal| next(journal, Task::Wash, Kind::Whole, 1);

    let mut journal = unwashed();
    let card = shown_work(&journal, &words).card.unwrap();
    assert!(card.measure_whole && card.how[0].starts_with("Measure the whole throw first"));
    // 18 1/2 in both ways is foreseen: 19 in less a lap of 1/2 in.
    let before = whole(&journal, "18 1/4 in", "17 in");
    words_are_whole(&before);
    assert_eq!(before.foreseen.label, "Should measure");
    assert!(said(&before).contains("18¼ in. It should measure 18½ in: ¼ in under."));
    assert!(said(&before).contains("Shared among 3 joins, that is ½ in under at each."));
    assert!(!said(&before).contains("wash"));

    // Never measured before washing, nothing is said of laps.
    let mut unmeasured = journal.clone();
    wash(&mut unmeasured);
    let unknown = whole(&unmeasured, "18 in", "18 in");
    assert!(said(&unknown).starts_with("It was not measured before washing"));
    assert!(!said(&unknown).contains("laps"), "{}", said(&unknown));

    let measure = |w: i64, h: i64| Command::MeasureWhole {
        width: inches(w),
        height: inches(h),
    };
    act(&mut journal, &measure(18, 18), 5);
    assert_eq!(head(&journal, context).size.text, "18\u{a0}× 18\u{a0}in");
    wash(&mut journal);
    next(&mut journal, Task::Clip, Kind::Whole, 1);
    let card = shown_work(&journal, &words).card.unwrap();
    assert!(!card.how[0].starts_with("Measure"), "{:?}", card.how);
    wash(&mut journal);
    let washed = whole(&journal, "17 1/2 in", "18 in");
    words_are_whole(&washed);
    assert_eq!(washed.foreseen.label, "Before washing");
    assert_eq!(
        said(&washed).replace(['\u{2068}', '\u{2069}'], ""),
        "Across: 18 in before, 17½ in after 2 washes: ½ in less (\u{2212}2.8 %). \
         Down: 18 in, as before washing. \
         Cloth usually draws in when washed. It does not mean that anything is sewn wrong."
    );
    next(&mut journal, Task::Clip, Kind::Whole, 1);
    act(&mut journal, &measure(17, 17), 6);
    // What was kept is said as it was, and the finish card has the measured size.
    assert!(said(&whole(&journal, "", "")).contains("17 in after 2 washes: 1 in less"));
    let rest = shown_work(&journal, &words).rest.unwrap();
    assert_eq!(
        rest.replace('\u{a0}', " "),
        "Finished. The throw measures 17 × 17 in, after 2 washes. Well made."
    );
    let texts = story(&journal, &ZoneName::default(), context).lines[0].replace('\u{a0}', " ");
    assert!(texts.contains("finished 17 × 17 in"), "{texts}");
}

/// By hand, as in `rescue::holding`: 6 × 8 squares with ½ in laps measure 27½ × 36½ in. For 27½ × 35¾
/// in ½ in laps stray ¾ in; ¾ in laps come to 27 × 35¾ in and stray ½ in, 11/16 in laps to 27⅛ × 35 15/16
/// in. Of the ¾ in (19.05 mm) 4 mm lie between the needles, and half of the rest on either side: 7.525 mm.
#[test]
fn what_is_offered_to_hold_a_size() {
    let words = Words::english();
    let context = context(&words);
    let offered = |journal: &Journal| {
        let query = Query::Hold {
            width: "27 1/2 in".into(),
            height: "35 3/4 in".into(),
        };
        match answer(journal, &query, context) {
            Ok(View::Hold(view)) => view,
            other => panic!("{other:?}"),
        }
    };
    let said = |text: &str| plain(&[text.to_string()]).replace('\u{a0}', " ");
    let mut journal = begin(Plan::default());
    let view = offered(&journal);
    words_are_whole(&view);
    assert_eq!(view.rows.len(), 5);
    let best = &view.rows[0];
    assert_eq!(said(&best.lap.text), "¾ in");
    assert_eq!(said(&best.finished.text), "27 × 35¾ in");
    let fringe = context.length(tenths_of_mm(752) / 10).text;
    let lines = said(&best.lines.join("; "));
    assert!(lines.contains("½ in under"), "{lines}");
    assert!(lines.contains(&said(&fringe)), "{lines}");
    let chosen = |row: &crate::show::HoldRow| match row.choose.as_ref().map(|b| &b.action) {
        Some(Command::ChangePlan { plan }) => plan.between,
        other => panic!("{other:?}"),
    };
    assert_eq!(chosen(best), Some(quarter_inches(3)));
    assert_eq!(said(&view.rows[1].finished.text), "27⅛ × 35 15/16 in");
    // Twelve fours have eleven joins between them.
    assert!(said(&view.said).contains("11 joins"), "{}", view.said);
    let sewn = crate::throw::Event::Done {
        task: Task::Stitch,
        pieces: vec![Rect::from([0, 0, 2, 4])],
        made: vec![],
    };
    let one = offered(&sewing::with(&journal, vec![sewn]));
    assert!(said(&one.said).contains("10 joins"), "{}", one.said);
    // Once it is the lap, nothing is to be chosen there, and to go back is offered.
    let action = best.choose.as_ref().unwrap().action.clone();
    act(&mut journal, &action, 1);
    let view = offered(&journal);
    assert_eq!(said(&view.rows[0].lap.text), "¾ in");
    assert!(view.rows[0].choose.is_none());
    assert!(view.rows[1..].iter().all(|row| row.choose.is_some()));
}

#[test]
fn that_it_is_too_early_to_measure_is_said_first() {
    let words = Words::english();
    let told =
        |journal: &Journal| crate::show::whole::whole(journal, "", "", context(&words)).lines;
    let lines = told(&stitched(4, 2));
    assert!(
        lines[0].starts_with("The throw is not in one piece yet"),
        "{lines:?}"
    );
    assert_eq!(told(&unwashed()), Vec::<String>::new());
    // What is typed too early is refused at its field, and nothing is made of it.
    let typed =
        |journal: &Journal| crate::show::whole::whole(journal, "18 in", "18 in", context(&words));
    let early = typed(&stitched(4, 2));
    assert_eq!((early.lines, early.faults.len()), (Vec::new(), 1));
    assert!(early.keep.is_none() && typed(&unwashed()).keep.is_some());
}

/// Washed once before anybody measured, then measured, then washed once more: what is set against
/// that measure is one wash, not two.
#[test]
fn washes_are_counted_from_the_measure_that_is_set_against() {
    let words = Words::english();
    let mut journal = unwashed();
    let wash = |journal: &mut Journal| next(journal, Task::Wash, Kind::Whole, 1);
    wash(&mut journal);
    let measure = Command::MeasureWhole {
        width: inches(18),
        height: inches(18),
    };
    act(&mut journal, &measure, 5);
    next(&mut journal, Task::Clip, Kind::Whole, 1);
    wash(&mut journal);
    let view = crate::show::whole::whole(&journal, "17 1/2 in", "18 in", context(&words));
    let said = plain(&view.lines).replace(['\u{2068}', '\u{2069}'], "");
    assert!(
        said.contains("18 in before, 17½ in after one wash:"),
        "{said}"
    );
    // What was pulled on the line is told as more, and nothing is told of drawing in.
    let view = crate::show::whole::whole(&journal, "18 1/4 in", "18 in", context(&words));
    let said = plain(&view.lines).replace(['\u{2068}', '\u{2069}'], "");
    assert!(said.contains("18¼ in after one wash: ¼ in more"), "{said}");
    assert!(!said.contains("draws in"), "{said}");
}
