//! The plan screen: what is typed, and what a change says.

use super::*;

#[test]
fn a_plan_opened_in_the_other_system_and_left_is_the_same_plan() {
    let words = Words::english();
    let plans = [
        Plan::default(),
        Plan {
            lap: eighth_inches(3),
            trim: Some(sixty_fourths(601)),
            ..Plan::default()
        },
        Plan {
            side: tenths_of_mm(1234),
            lap: tenths_of_mm(131),
            ..Plan::default()
        },
        Plan {
            side: tenths_of_mm(1234) + sixty_fourths(3),
            ..Plan::default()
        },
    ];
    for plan in plans {
        for system in [System::Inch, System::Metric] {
            for metric in [MetricUnit::Mm, MetricUnit::Cm] {
                let context = Context {
                    ruler: Ruler {
                        system,
                        metric,
                        ..Ruler::default()
                    },
                    ..context(&words)
                };
                let typed = draft_of(&plan, context);
                let view = draft(&typed, context);
                assert_eq!(view.plan, Some(plan), "{typed:?}");
                assert_eq!(view.tidy, typed);
            }
        }
    }
}

/// Who works in centimetres types a needle's spacing in millimetres, as it is marked.
#[test]
fn needles_are_typed_in_millimetres() {
    let words = Words::english();
    let ruler = Ruler {
        system: System::Metric,
        metric: MetricUnit::Cm,
        ..Ruler::default()
    };
    let context = Context {
        ruler,
        ..context(&words)
    };
    let mut draft = draft_of(&Plan::usual(System::Metric), context);
    assert_eq!(
        (draft.width.as_str(), draft.side.as_str()),
        ("4 mm", "12.5 cm")
    );
    draft.width = "3".into();
    let journal = begin(Plan::default());
    let draft = Some(Box::new(draft));
    let Ok(View::Plan(seen)) = answer(&journal, &Query::Plan { draft }, context) else {
        panic!()
    };
    assert!(seen.faults.is_empty(), "{:?}", seen.faults);
    assert_eq!(seen.tidy.width, "3 mm");
}

/// A four of which one pair is sewn comes out as wide as that pair: it is to be trimmed as well.
#[test]
fn a_change_names_the_fours_of_which_pairs_are_sewn() {
    use crate::plan::assembly::Kind;
    let words = Words::english();
    let context = context(&words);
    let mut journal = bare_denim(4, 4);
    next(&mut journal, Task::Cut, Kind::Square, 16);
    for task in [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch] {
        next(&mut journal, task, Kind::Pair, 1);
    }
    let plan = Plan {
        lap: quarter_inches(3),
        between: None,
        ..journal.throw().plan
    };
    let draft = Some(Box::new(draft_of(&plan, context)));
    let Ok(View::Plan(seen)) = answer(&journal, &Query::Plan { draft }, context) else {
        panic!()
    };
    // By hand: 5 + 5 − ½ = 9½ in wide, of 5 + 5 − ¾ = 9¼ in.
    assert_eq!(
        seen.aside,
        [
            "Left as glued or sewn, with ½\u{a0}in: Pair 1·1 + 1·2.",
            "To be trimmed when squared up, to 9¼\u{a0}× 9¼\u{a0}in: Four A1.",
        ]
    );
}

#[test]
fn a_change_names_what_stays_and_what_is_trimmed_again() {
    use crate::plan::assembly::Kind;
    let words = Words::english();
    let context = context(&words);
    let mut journal = four_fours();
    all_denim(&mut journal);
    next(&mut journal, Task::PressBlock, Kind::Four, 4);
    next(&mut journal, Task::SquareUp, Kind::Four, 1);
    let squared = Rect::from([0, 0, 2, 2]);
    let plan = journal.throw().plan;
    let plan = Plan {
        lap: quarter_inches(3),
        between: None,
        ..plan
    };
    let would = |plan: &Plan| {
        let draft = Some(Box::new(draft_of(plan, context)));
        let Ok(View::Plan(seen)) = answer(&journal, &Query::Plan { draft }, context) else {
            panic!()
        };
        seen
    };
    // No lap of that width comes into a four any more: they keep their size.
    let kept = would(&plan);
    assert_eq!(
        kept.aside,
        ["Left as glued or sewn, with ½\u{a0}in: 8 pairs, Four A1, Four A2, Four B1, Four B2."]
    );
    // She may trim them to the size such fours would have all the same.
    let seen = would(&Plan {
        trim: Some(plan.natural_four()),
        ..plan
    });
    assert_eq!(
        seen.aside,
        [
            "Left as glued or sewn, with ½\u{a0}in: 8 pairs, Four A1, Four A2, Four B1, Four B2.",
            "To be trimmed again, to 9¼\u{a0}× 9¼\u{a0}in: Four A1.",
            "To be trimmed when squared up, to 9¼\u{a0}× 9¼\u{a0}in: Four A2, Four B1, Four B2.",
        ]
    );
    // One finished size: the same in the figures and in what changes.
    let finished = &seen.figures[0];
    assert_eq!(finished.label, "Finished size, with what is already sewn");
    assert_eq!(finished.value, seen.compare[0].after);
    // What the change leaves as it is takes no line.
    assert!(
        seen.compare[1..].iter().all(|row| row.differs),
        "{:?}",
        seen.compare
    );
    // A scrap with that lap says the same before it is taken.
    let scrap = crate::plan::scraps::Scrap {
        joining: plan.joining,
        lap: plan.lap,
        stitch: plan.stitch,
        verdict: crate::plan::scraps::ScrapVerdict::Right,
        note: String::new(),
    };
    act(&mut journal, &Command::TryScrap { scrap }, 2);
    let Ok(View::Scraps(scraps)) = answer(&journal, &Query::Scraps { typed: None }, context) else {
        panic!()
    };
    assert_eq!(
        (&scraps.rows[0].aside, &scraps.rows[0].compare),
        (&kept.aside, &kept.compare)
    );
    // Once changed, that four is trimmed once more, and then has the new size.
    act(&mut journal, &seen.change.unwrap().action, 3);
    let throw = journal.throw();
    assert_eq!(
        throw.work_index(),
        &crate::throw::index::WorkIndex::of(throw)
    );
    assert_eq!(throw.next(squared), Some(Task::SquareUp));
    let again = Command::Tick {
        task: Task::SquareUp,
        pieces: vec![squared],
    };
    let card = shown_work(&journal, &words).card.unwrap();
    assert_eq!((card.task, card.measure), (Task::SquareUp, None));
    assert!(card.how[0].contains("once more"), "{:?}", card.how);
    act(&mut journal, &again, 4);
    let throw = journal.throw();
    assert_eq!(throw.size(squared), throw.target(squared));
    assert!(throw.complete(squared));
    assert_eq!(
        throw.work_index(),
        &crate::throw::index::WorkIndex::of(throw)
    );
}

#[test]
fn a_grid_cropped_or_grown_keeps_its_faces_and_tells_those_it_cannot() {
    let words = Words::english();
    let mut journal = begin(Plan::default());
    let squares = |list: &[[u16; 2]]| list.iter().map(|[r, c]| Rect::square(*r, *c)).collect();
    let steps = [
        Command::SetFace {
            pieces: squares(&[[0, 0], [3, 3], [7, 2]]),
            face: Face::Front,
            print: Some(1),
            laid_on: false,
        },
        Command::SetFace {
            pieces: squares(&[[6, 5]]),
            face: Face::Back,
            print: Some(0),
            laid_on: false,
        },
        Command::SetDenim {
            pieces: squares(&[[2, 2], [7, 0]]),
            denim: 1,
            wrong_side_up: false,
        },
        Command::Pin {
            pieces: squares(&[[3, 3]]),
            pinned: true,
        },
    ];
    for (n, step) in steps.iter().enumerate() {
        act(&mut journal, step, n as i64);
    }
    let changed = |down: u16| {
        let plan = Plan {
            down,
            ..journal.throw().plan
        };
        let draft = Some(Box::new(draft_of(&plan, context(&words))));
        let Ok(View::Plan(seen)) = answer(&journal, &Query::Plan { draft }, context(&words)) else {
            panic!()
        };
        let change = Command::ChangePlan { plan };
        let events = crate::command::decide(Some(journal.throw()), &change).unwrap();
        (journal.throw().after(&events), seen.aside)
    };
    let (cropped, texts) = changed(6);
    let names: Vec<&str> = journal
        .throw()
        .prints
        .iter()
        .map(|p| p.name.as_str())
        .collect();
    let lost = format!(
        "2 fabric squares have no place on this grid: {} at 7·6 (back) and {} at 8·3 (front).",
        names[0], names[1]
    );
    let chosen = "One square that you keep in its place, or whose denim you chose, has no place on this grid.";
    assert_eq!(texts, [lost.as_str(), chosen]);
    let (grown, texts) = changed(10);
    assert_eq!(texts, [""; 0]);
    for (throw, kept) in [(&cropped, 6), (&grown, 8)] {
        for square in Rect::grid(6, kept).squares() {
            assert_eq!(throw.cover(square), journal.throw().cover(square));
        }
        assert!(throw.is_pinned(Rect::square(3, 3)));
        assert!(throw.is_denim_by_hand(Rect::square(2, 2)));
    }
}

/// By hand: fours of 9½ in, between which ¾ in are lapped: the second begins 8¾ in (222.25 mm) from the
/// left, and the last ends where the throw does, at 18¼ in (463.55 mm).
#[test]
fn the_grid_is_drawn_with_the_lap_between_fours() {
    let words = Words::english();
    let plan = Plan {
        across: 4,
        down: 2,
        between: Some(quarter_inches(3)),
        ..Plan::default()
    };
    let drawn = pictures::grid(&plan, context(&words));
    let fours: Vec<(f64, f64)> = drawn
        .marks
        .iter()
        .filter_map(|mark| match mark {
            crate::show::Mark::Area { x, w, .. } => Some((*x, x + w)),
            _ => None,
        })
        .collect();
    let [(left, _), (second, end)] = fours[..] else {
        panic!("{fours:?}")
    };
    assert!(
        left.abs() < 1e-6 && (second - 222.25).abs() < 1e-6,
        "{fours:?}"
    );
    assert!((end - 463.55).abs() < 1e-6, "{fours:?}");
}

/// A throw of exposed seams that was begun before their stitching was counted keeps its sizes while its
/// plan is typed; what is made again after it, a throw whose laps become seams, and one that takes its
/// seam from a scrap, count it.
#[test]
fn only_an_older_throws_seams_leave_out_their_stitching() {
    let words = Words::english();
    let context = context(&words);
    let older = Plan {
        joining: Joining::Exposed,
        ..Plan::default()
    };
    let counted = Plan::default().joined(Joining::Exposed);
    assert!(counted.finished().0 < older.finished().0);
    let typed = |draft: &PlanDraft| crate::show::draft(draft, context).plan.expect("a plan");
    for plan in [Plan::default(), older, counted] {
        assert_eq!(typed(&draft_of(&plan, context)), plan);
    }
    let seamed = |plan: &Plan| {
        let joining = Joining::Exposed;
        typed(&PlanDraft {
            joining,
            ..draft_of(plan, context)
        })
    };
    assert_eq!(seamed(&Plan::default()), counted);
    assert_eq!(seamed(&older), older);
    let again = crate::show::again::again(&begin(older), context);
    assert_eq!(typed(&again.draft), counted);
    let lapped = crate::show::again::again(&begin(Plan::default()), context);
    assert_eq!(typed(&lapped.draft), Plan::default());
    // A draft that does not say it, as an older window sends it, is of a new throw.
    let mut json = serde_json::to_value(draft_of(&counted, context)).unwrap();
    json.as_object_mut().unwrap().remove("stitch_in_seam");
    let unsaid: PlanDraft = serde_json::from_value(json).unwrap();
    assert_eq!(typed(&unsaid), counted);
    let of_scrap = |plan: Plan| {
        let mut journal = begin(plan);
        let scrap = crate::plan::scraps::Scrap {
            joining: Joining::Exposed,
            lap: plan.lap,
            stitch: crate::plan::Stitch::Straight,
            verdict: crate::plan::scraps::ScrapVerdict::Right,
            note: String::new(),
        };
        act(&mut journal, &Command::TryScrap { scrap }, 1);
        act(&mut journal, &Command::UseScrap { scrap: 0 }, 2);
        journal.throw().plan.stitch_in_seam
    };
    assert_eq!(
        [Plan::default(), older, counted].map(of_scrap),
        [true, false, true]
    );
}

/// By hand, twin needle of 4 mm: of ½ in, 12.7 mm, are left (12.7 − 4) ÷ 2 = 4.35 mm, of ⅝ in,
/// 15.875 mm, 5.9375 mm.
#[test]
fn another_lap_between_fours_has_its_own_fringe() {
    let words = Words::english();
    let context = Context {
        ruler: Ruler {
            system: System::Metric,
            metric: MetricUnit::Mm,
            ..Ruler::default()
        },
        ..context(&words)
    };
    let fringes = |between: Option<i64>| -> Vec<(String, String)> {
        let plan = Plan {
            between: between.map(sixty_fourths),
            ..Plan::default()
        };
        let figures = crate::show::plan::figures_of(&plan, None, None, context).into_iter();
        let fringes = figures.filter(|figure| figure.label.contains("Fringe"));
        fringes
            .map(|figure| (figure.label, plain(&[figure.value.text])))
            .collect()
    };
    let told = |label: &str, value: &str| (label.to_string(), value.to_string());
    let usual = told("Fringe each side", "≈ 4 mm");
    assert_eq!(fringes(None), std::slice::from_ref(&usual));
    assert_eq!(fringes(Some(32)), std::slice::from_ref(&usual));
    let wider = told("Fringe each side, between fours", "≈ 6 mm");
    assert_eq!(fringes(Some(40)), [usual, wider]);
}

/// What programs are given reads as the plan shows it.
#[test]
fn the_figures_for_programs_read_as_those_of_the_plan() {
    let words = Words::english();
    let journal = begin(Plan {
        across: 14,
        down: 18,
        lap: sixty_fourths(30),
        ..Plan::default()
    });
    for metric in [false, true] {
        let system = match metric {
            true => System::Metric,
            false => System::Inch,
        };
        let context = Context {
            ruler: Ruler {
                system,
                ..Ruler::default()
            },
            ..context(&words)
        };
        let given = figures(&journal, context);
        let Ok(View::Plan(view)) = answer(&journal, &Query::Plan { draft: None }, context) else {
            panic!()
        };
        let read = |key: &str| {
            let label = say!(context, format!("figure-{key}"));
            let figure = view.figures.iter().find(|f| f.label == label);
            figure
                .unwrap_or_else(|| panic!("{key}"))
                .value
                .text
                .replace('\u{a0}', " ")
        };
        let shown = |of: &Value| of["shown"].as_str().expect("shown").to_string();
        assert_eq!(shown(&given["fringe"]), read("fringe"));
        for (key, length) in [("seams", &given["seams"]), ("binding", &given["binding"])] {
            let (length, all) = (shown(&length["length"]), read(key));
            assert!(all.contains(&length), "{key}: {length} of {all}");
        }
        let stitch = shown(&given["stitch_width"]);
        assert!(stitch.ends_with(" mm"), "{stitch}");
    }
}
