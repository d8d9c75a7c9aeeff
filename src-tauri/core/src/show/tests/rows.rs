//! Two rows with a single needle: everything that follows from that choice.

use super::*;
use crate::log::pace::{minutes_for, paces};
use crate::plan::Stitch;
use crate::show::Mark;
use crate::show::picture::Ink;
use crate::throw::stage::stages;

/// Squares of 125 mm lapped by 12 mm, two rows of 3.5 mm stitches 6 mm apart.
fn two_rows() -> Plan {
    Plan {
        across: 4,
        down: 2,
        stitch: Stitch::TwoRows {
            spacing: tenths_of_mm(60),
        },
        stitch_length: Some(tenths_of_mm(35)),
        ..Plan::usual(System::Metric)
    }
}

fn metric(words: &Words) -> Context<'_> {
    Context {
        ruler: Ruler {
            system: System::Metric,
            metric: MetricUnit::Mm,
            ..Ruler::default()
        },
        ..context(words)
    }
}

/// The card of the first pair that is ready to be stitched.
fn at_the_machine(plan: Plan, words: &Words) -> (Journal, Card) {
    let mut journal = begin(plan);
    all_denim(&mut journal);
    for (hour, (task, kind)) in [
        (Task::Cut, Kind::Square),
        (Task::Dot, Kind::Pair),
        (Task::PressLap, Kind::Pair),
        (Task::CoolLap, Kind::Pair),
    ]
    .into_iter()
    .enumerate()
    {
        all_ready(&mut journal, task, kind, hour as Time + 1);
    }
    let asked = Query::Work {
        station: None,
        batch: Some((Task::Stitch, Kind::Pair)),
    };
    let card = match answer(&journal, &asked, metric(words)) {
        Ok(View::Work(view)) => *view.card.expect("a step"),
        other => panic!("{other:?}"),
    };
    (journal, card)
}

fn figure(card: &Card, label: &str) -> Option<String> {
    let found = card.figures.iter().find(|f| f.label == label)?;
    Some(found.value.text.replace('\u{a0}', " "))
}

/// 6 mm in the middle of a lap of 12 mm: the rows run 3 and 9 mm from the edge on top, and 3 mm
/// stay free on either side.
#[test]
fn the_step_says_where_each_row_runs() {
    let words = Words::english();
    let (journal, card) = at_the_machine(two_rows(), &words);
    let said = |label| figure(&card, label).unwrap_or_else(|| panic!("{label}: {card:?}"));
    assert_eq!(said("First row, from the edge on top"), "3 mm");
    assert_eq!(said("Second row, from the edge on top"), "9 mm");
    assert_eq!(said("From row to row"), "6 mm");
    assert_eq!(said("Stitch length"), "3.5 mm");
    assert_eq!(said("Fringe each side"), "3 mm");
    assert_eq!(figure(&card, "Needle spacing"), None);
    let how = plain(&card.how);
    for part in [
        "the first 3 mm from the raw edge on top, the second 9 mm from it",
        "For the first, let the edge of the presser foot or a guide run along that raw edge, 3 mm from the needle",
        "For the second, let it run along the first row, 6 mm from the needle",
        "Stitch length 3.5 mm; three or four stitches back at both ends of each row",
        "a jeans needle, system 130/705 H, size 90/14 to 100/16",
    ] {
        assert!(how.contains(part), "{part}: {how}");
    }
    let labels: Vec<&str> = card.ticks.iter().map(|b| b.label.as_str()).collect();
    assert!(
        labels.iter().any(|l| l.ends_with("stitched, both rows")),
        "{labels:?}"
    );
    // One tap is a join, with both its rows.
    let mut after = journal.clone();
    act(&mut after, &card.ticks[0].action, 1_000_000_000);
    let stitched = |t: &crate::throw::Throw| {
        let pairs = t.assembly().pieces().filter(|p| t.has(*p, Task::Stitch));
        pairs.count()
    };
    assert_eq!(stitched(after.throw()), 4);
    assert_eq!(after.throw().progress().0, journal.throw().progress().0 + 4);
    for (_, work) in after.throw().worked().filter(|(p, _)| p.count() == 2) {
        assert_eq!(work.made.expect("made").stitch, two_rows().stitch);
    }
}

#[test]
fn other_stitches_are_said_as_they_are() {
    let words = Words::english();
    let plan = two_rows();
    let of = |stitch| {
        let (_, card) = at_the_machine(Plan { stitch, ..plan }, &words);
        (plain(&card.how), card)
    };
    let (how, card) = of(Stitch::Twin {
        spacing: tenths_of_mm(40),
    });
    assert!(
        how.contains("6 mm from the middle of the two needles"),
        "{how}"
    );
    assert!(
        how.contains("a twin needle 4 mm apart, system 130/705 H: one for jeans if it is made"),
        "{how}"
    );
    assert!(how.contains("tie them"), "{how}");
    assert_eq!(figure(&card, "Needle spacing").as_deref(), Some("4 mm"));
    assert!(card.ticks.iter().all(|b| !b.label.contains("rows")));
    let (how, card) = of(Stitch::Straight);
    assert!(how.contains("6 mm from the needle"), "{how}");
    assert_eq!(figure(&card, "From row to row"), None);
    // The caution for the plate stands wherever a needle is at work.
    let caution = card.caution.expect("a caution").text;
    for part in [
        "needle in the middle",
        "turn the wheel by hand",
        "The machine’s manual decides",
    ] {
        assert!(caution.contains(part), "{caution}");
    }
    // What only a twin needle can strike is told where one is used.
    assert!(!caution.contains("twin"), "{caution}");
    let (_, card) = of(Stitch::Twin {
        spacing: crate::measure::millimetres(4),
    });
    let caution = card.caution.expect("a caution").text;
    assert!(caution.contains("less the needle spacing"), "{caution}");
}

/// The rows, the needles and both edges are in the picture: one needle however many rows there
/// are, two for a twin needle.
#[test]
fn the_picture_shows_the_rows_and_the_needles() {
    let words = Words::english();
    for (stitch, rows, needles) in [
        (Stitch::Straight, 1, 1),
        (two_rows().stitch, 2, 1),
        (
            Stitch::Twin {
                spacing: tenths_of_mm(60),
            },
            2,
            2,
        ),
    ] {
        let plan = Plan {
            stitch,
            ..two_rows()
        };
        let (_, card) = at_the_machine(plan, &words);
        drawn_within(&card.picture, "stitch");
        let marks = &card.picture.marks;
        let shapes = |ink| {
            let of = |m: &&Mark| matches!(m, Mark::Shape { ink: found, .. } if *found == ink);
            marks.iter().filter(of).count()
        };
        let lines: Vec<f64> = marks
            .iter()
            .filter_map(|m| match m {
                Mark::Line {
                    x1,
                    ink: Ink::Stitch,
                    ..
                } => Some(*x1),
                _ => None,
            })
            .collect();
        assert_eq!(
            (lines.len(), shapes(Ink::Needle)),
            (rows, needles),
            "{stitch:?}"
        );
        assert_eq!((shapes(Ink::Hidden), shapes(Ink::Fray)), (1, 1));
        // To scale: the first square is 125 mm wide and lies on top of the second.
        if rows == 2 {
            assert!(
                (lines[0] - 122.0).abs() < 1e-6 && (lines[1] - 116.0).abs() < 1e-6,
                "{lines:?}"
            );
        }
    }
}

/// A pair that is glued and pressed shows its lap wherever it is drawn, stitched or not.
#[test]
fn a_pressed_pair_is_drawn_lapped() {
    let words = Words::english();
    let (mut journal, _) = at_the_machine(two_rows(), &words);
    all_ready(&mut journal, Task::Stitch, Kind::Pair, 9);
    let four = work_view(&journal, None, metric(&words))
        .card
        .expect("a four");
    assert_eq!((four.task, four.kind), (Task::Dot, Kind::Four));
    drawn_within(&four.picture, "four");
    let count = |ink| {
        let of = |m: &&Mark| matches!(m, Mark::Shape { ink: found, .. } | Mark::Line { ink: found, .. } if *found == ink);
        four.picture.marks.iter().filter(of).count()
    };
    // The laps of both pairs, each with two rows and the fringe of the edge on top; the lap that is
    // glued now has its fringe too.
    assert_eq!([Ink::Hidden, Ink::Stitch, Ink::Fray].map(count), [2, 4, 3]);
    let names: Vec<&str> = four
        .picture
        .marks
        .iter()
        .filter_map(|m| match m {
            Mark::Words { text, .. } => Some(text.as_str()),
            _ => None,
        })
        .collect();
    assert_eq!(names, ["over", "under"]);
}

/// Stitching takes twice as long, and a pace that was learned with one row counts for each row.
#[test]
fn two_rows_take_twice_the_time() {
    let words = Words::english();
    let one = Plan {
        stitch: Stitch::Straight,
        ..two_rows()
    };
    let (single, _) = at_the_machine(one, &words);
    let (double, _) = at_the_machine(two_rows(), &words);
    let stitch = |journal: &Journal| paces(journal)[&Task::Stitch].middle;
    assert!((stitch(&double) - 2.0 * stitch(&single)).abs() < 1e-9);
    let left = |j: &Journal| -> f64 {
        let (stages, paces) = (stages(j.throw()), paces(j));
        let each = stages.values();
        each.map(|reached| minutes_for(&reached.left, &paces).middle)
            .sum()
    };
    let [one, two] = [&single, &double].map(left);
    let joins = single.throw().assembly().joins().len() as f64;
    assert!(
        (two - one - joins * stitch(&single)).abs() < 1e-9,
        "{one} {two}"
    );
    // Four pairs in 24 minutes are 3 minutes a row: with one row a join then takes 3 minutes.
    let mut learned = double;
    let at = 4 * 3_600_000;
    let tick = Command::TickNext {
        task: Task::Stitch,
        kind: Kind::Pair,
        count: Count::from(4),
    };
    act(&mut learned, &tick, at + 24 * 60_000);
    assert!((stitch(&learned) - 6.0).abs() < 1e-9);
    let plan = Plan {
        stitch: Stitch::Straight,
        ..learned.throw().plan
    };
    act(
        &mut learned,
        &Command::ChangePlan { plan },
        at + 25 * 60_000,
    );
    assert!((stitch(&learned) - 3.0).abs() < 1e-9);
}

#[test]
fn what_to_have_at_hand_and_the_plan_say_so() {
    let words = Words::english();
    let journal = begin(two_rows());
    let context = metric(&words);
    let view = crate::show::gather::gather(&journal, context);
    let lines: Vec<String> = view.rows.into_iter().flat_map(|row| row.lines).collect();
    let said = plain(&lines);
    assert!(said.contains("take one spool on the machine"), "{said}");
    assert!(said.contains("a jeans needle, system 130/705 H"), "{said}");
    assert!(!said.contains("twin"), "{said}");
    let plan = crate::show::plan::plan_of(&journal, None, context);
    let seams = plan.figures.iter().find(|f| f.label == "Stitching");
    let text = &seams.expect("the stitching").value.text;
    assert!(text.ends_with("each stitched twice"), "{text}");
    assert!(plan.advice.iter().all(|p| p.code != "advice-twin"));
    // As typed and read again it is the same plan, and what is usual is not said.
    assert_eq!(plan.plan, Some(two_rows()));
    let mut typed = plan.tidy;
    assert_eq!(
        (typed.width.as_str(), typed.stitch_length.as_str()),
        ("6 mm", "3.5 mm")
    );
    typed.stitch_length = "3".into();
    let usual = crate::show::plan::plan_of(&journal, Some(&typed), context);
    assert_eq!(usual.plan.map(|p| p.stitch_length), Some(None));
    typed.stitch_length = "20".into();
    let wrong = crate::show::plan::plan_of(&journal, Some(&typed), context);
    assert_eq!(
        wrong.faults.first().map(|f| f.field.as_str()),
        Some("stitch_length")
    );
}
