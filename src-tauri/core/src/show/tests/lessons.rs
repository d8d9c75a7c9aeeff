//! Lessons are kept as figures and told in the reader's language, at the step they belong to.

use super::*;

/// A scorched square is a lesson for where it was last under the iron.
#[test]
fn what_was_scorched_is_told_where_it_was_ironed_last() {
    use crate::throw::Mishap;
    let spoil = |journal: &mut Journal, piece, why, at| {
        let spare = false;
        act(
            journal,
            &Command::Replace {
                piece,
                why,
                spare,
                denim: None,
                from: None,
            },
            at,
        );
    };
    let learned = |journal: &Journal, task: Task| {
        let words = Words::english();
        let all = crate::log::lessons::heritage(journal).lessons.into_iter();
        let here = all.filter(|l| l.task == Some(task));
        here.filter_map(|l| crate::show::lessons::said(&l, context(&words)))
            .collect::<Vec<_>>()
    };
    let mut journal = stitched(4, 2);
    let at = 1_000_000_000;
    spoil(&mut journal, Rect::square(1, 0), Mishap::Scorched, at);
    assert_eq!(
        learned(&journal, Task::PressBlock),
        ["One square was spoilt: scorched."]
    );
    assert!(learned(&journal, Task::PressCover).is_empty());
    // The next goes no further than its fabric, or than its pair.
    let all = |journal: &mut Journal, task, kind, at| {
        act(
            journal,
            &Command::TickNext {
                task,
                kind,
                count: Count::from(1),
            },
            at,
        );
    };
    all(&mut journal, Task::Cut, Kind::Square, at + 1);
    for (n, task) in [Task::Dot, Task::PressLap].into_iter().enumerate() {
        all(&mut journal, task, Kind::Pair, at + 2 + n as i64);
    }
    spoil(&mut journal, Rect::square(1, 0), Mishap::Scorched, at + 9);
    assert_eq!(learned(&journal, Task::PressLap).len(), 1);
    let entry = journal.propose_undo(at + 10).unwrap();
    journal.accept(entry).unwrap();
    assert!(learned(&journal, Task::PressLap).is_empty(), "taken back");
    spoil(&mut journal, Rect::square(1, 0), Mishap::Flaw, at + 11);
    assert_eq!(
        learned(&journal, Task::Cut),
        ["One square was spoilt: hole, stain or worn patch."]
    );
    assert_eq!(learned(&journal, Task::PressBlock).len(), 1);
}

/// What was derived from the record is read in the language and by the ruler of whoever opens the
/// throw; what files hold in words, and what the maker wrote, stays as it is.
#[test]
fn lessons_are_told_in_the_language_they_are_read_in() {
    use crate::measure::sixty_fourths;
    use crate::throw::Mishap;
    use crate::throw::heritage::{DerivedLesson, Heritage, Lesson};
    let lesson = |words: &str, hers, derived| Lesson {
        words: words.into(),
        task: Some(Task::Cut),
        hers,
        derived,
    };
    let (size, washed) = (
        (sixty_fourths(2560), sixty_fourths(3200)),
        (sixty_fourths(2496), sixty_fourths(3200)),
    );
    let texts = [
        DerivedLesson::Scrap {
            lap: sixty_fourths(32),
        },
        DerivedLesson::Drift {
            fours: Count::from(3),
            mean: sixty_fourths(8),
        },
        DerivedLesson::Whole {
            size,
            planned: size,
        },
        DerivedLesson::Washed {
            washes: 1,
            before: size,
            after: washed,
        },
        DerivedLesson::Spoilt {
            squares: Count::from(1),
            why: Mishap::Scorched,
        },
        DerivedLesson::More {
            squares: Count::from(2),
            face: Face::Back,
        },
    ];
    let mut lessons = vec![
        lesson("Cut the faded jeans first.", true, None),
        lesson("On a scrap, a lap of ½ in was found right.", false, None),
    ];
    lessons.extend(texts.map(|derived| lesson("", false, Some(derived))));
    let heritage = Heritage {
        name: "Old".into(),
        lessons,
        paces: vec![],
        drift: None,
        faces: vec![],
    };
    let action = Command::Begin {
        name: "New".into(),
        plan: Plan::default(),
        prints: vec![],
        denims: vec![],
    };
    let begun = Journal::begin_after(&action, heritage, 0).unwrap().0;
    // As it comes back from the disk.
    let read = crate::log::intake::read(begun.text().as_bytes()).unwrap();
    let (english, german) = (Words::english(), Words::of("de"));
    let metric = Ruler {
        system: System::Metric,
        ..Ruler::default()
    };
    let shown = |words: &Words, ruler: Ruler| -> Vec<String> {
        let context = Context {
            words,
            ruler,
            now: 0,
        };
        let View::Plan(plan) =
            answer(&read.journal, &Query::Plan { draft: None }, context).unwrap()
        else {
            panic!("no plan")
        };
        let rows = plan.lessons.unwrap().rows.into_iter();
        let rows: Vec<String> = rows.map(|row| row.words.replace('\u{a0}', " ")).collect();
        // The card of the step says the same.
        let at_step = crate::show::lessons::at_step(read.journal.throw(), Task::Cut, context);
        let at_step: Vec<String> = at_step.iter().map(|l| l.replace('\u{a0}', " ")).collect();
        assert_eq!(at_step, rows);
        rows
    };
    let kept = [
        "Cut the faded jeans first.",
        "On a scrap, a lap of ½ in was found right.",
    ];
    let in_english = shown(&english, Ruler::default());
    assert_eq!(in_english[..2], kept);
    assert_eq!(
        in_english[2..],
        [
            "On a scrap, a lap of ½ in was found right.",
            "3 measured fours came out ⅛ in over for each join, on average.",
            "Finished, it measured 40 × 50 in; planned 40 × 50 in.",
            "One wash changed it by \u{2212}2.5 % across and +0.0 % down (ISO 5077).",
            "One square was spoilt: scorched.",
            "Once cutting had begun, fabric was added to 2 more squares of the back.",
        ]
    );
    let in_german = shown(&german, metric);
    assert_eq!(in_german[..2], kept);
    assert_eq!(
        in_german[2],
        "An einer Nähprobe war eine Überlappung von ≈ 13 mm richtig."
    );
    assert!(in_german[6].ends_with("versengt."), "{in_german:?}");
    for (german, english) in in_german.iter().zip(&in_english).skip(2) {
        assert_ne!(german, english);
    }
    // A mean below half a mark is nothing to tell by that ruler.
    let tiny = DerivedLesson::Drift {
        fours: Count::from(3),
        mean: sixty_fourths(8) / 200,
    };
    let by_inch = Context {
        words: &english,
        ruler: Ruler::default(),
        now: 0,
    };
    assert_eq!(
        crate::show::lessons::said(&lesson("", false, Some(tiny)), by_inch),
        None
    );
}

/// What is derived from a record is kept without a sentence.
#[test]
fn what_is_told_from_the_record_is_kept_as_figures() {
    let mut journal = stitched(4, 2);
    let scrap = crate::plan::scraps::Scrap {
        joining: Joining::Lapped,
        lap: crate::measure::sixty_fourths(30),
        stitch: journal.throw().plan.stitch,
        verdict: crate::plan::scraps::ScrapVerdict::Right,
        note: String::new(),
    };
    act(&mut journal, &Command::TryScrap { scrap }, 1_000_000_000);
    let replace = Command::Replace {
        piece: Rect::square(1, 0),
        why: crate::throw::Mishap::Scorched,
        spare: false,
        denim: None,
        from: None,
    };
    act(&mut journal, &replace, 1_000_000_001);
    let left = crate::log::lessons::heritage(&journal);
    assert_eq!(left.lessons.len(), 2);
    assert!(left.lessons.iter().all(|l| l.words.is_empty()));
    let kept = serde_json::to_string(&left.lessons).unwrap();
    assert_eq!(
        kept,
        r#"[{"words":"","task":"dot","told":{"scrap":{"lap":11906250}}},{"words":"","task":"press-block","told":{"spoilt":{"squares":1,"why":"scorched"}}}]"#
    );
}

/// Faces laid out for the first time once cutting had begun are no lesson; fabric added after that
/// is.
#[test]
fn a_first_layout_is_no_change_of_mind() {
    let words = Words::english();
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    next(&mut journal, Task::Cut, Kind::Square, 16);
    let cover = |journal: &mut Journal, squares: &[Rect], at| {
        let action = Command::SetFace {
            face: Face::Front,
            pieces: squares.to_vec(),
            print: Some(0),
            laid_on: false,
        };
        act(journal, &action, at);
    };
    let told = |journal: &Journal| {
        let all = crate::log::lessons::heritage(journal).lessons.into_iter();
        all.filter_map(|l| crate::show::lessons::said(&l, context(&words)))
            .collect::<Vec<_>>()
    };
    cover(&mut journal, &[Rect::square(0, 0), Rect::square(2, 2)], 5);
    assert_eq!(told(&journal), Vec::<String>::new());
    cover(&mut journal, &[Rect::square(0, 2)], 6);
    assert_eq!(
        told(&journal),
        ["Once cutting had begun, fabric was added to one more square of the front."]
    );
}
