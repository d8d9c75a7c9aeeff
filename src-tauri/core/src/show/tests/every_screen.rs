//! Every screen of every state can be made, and every button on it can be pressed.

use super::*;

/// The joins of the binding are drawn as many as there are, the beginning named.
fn joins_drawn(throw: &crate::throw::Throw, picture: &Picture) {
    use crate::show::Mark;
    let size = throw.finished();
    let laid = crate::plan::binding::layout(&throw.plan, size.width, size.height);
    let said: Vec<&str> = picture
        .marks
        .iter()
        .filter_map(|m| match m {
            Mark::Words { text, .. } => Some(text.as_str()),
            _ => None,
        })
        .collect();
    let numbers = (1..laid.joins.len()).map(|n| n.to_string());
    let texts: Vec<String> = std::iter::once("begin".to_string())
        .chain(numbers)
        .collect();
    assert_eq!(said, texts);
}

/// Front and back of what is made, the back as it is seen from behind.
fn both_ended(throw: &crate::throw::Throw, ended: &[Picture; 2]) {
    use crate::show::Mark;
    for (face, picture) in Face::BOTH.into_iter().zip(ended) {
        drawn_within(picture, "ended");
        assert_eq!(picture.marks.len() as u32, throw.plan.squares());
        for mark in &picture.marks {
            let Mark::Area { x, y, cloth, .. } = mark else {
                panic!("{mark:?}");
            };
            let (row, seen) = ((y / 10.0).round() as u16, (x / 10.0).round() as u16);
            let square = crate::plan::assembly::Rect::square(row, seen);
            let square = match face {
                Face::Front => square,
                Face::Back => crate::faces::spread::mirrored(square, throw.plan.across),
            };
            let cover = throw.cover(square);
            let cloth = &picture.cloths[usize::from(cloth.expect("all is cut"))];
            let colours = |list: &mut dyn Iterator<Item = &String>| -> Vec<usize> {
                let places = list.enumerate().filter(|(_, c)| **c == cloth.colour);
                places.map(|(n, _)| n).collect()
            };
            // No two cloths of this throw have one colour.
            let prints = colours(&mut throw.prints.iter().map(|p| &p.colour));
            let denims = colours(&mut throw.denims.iter().map(|d| &d.colour));
            let wrong = format!("{:?}", cloth.tile).contains("Wrong");
            match cover.on(face) {
                Some(print) => assert_eq!((prints, denims), (vec![usize::from(print)], vec![])),
                None => {
                    assert_eq!((prints, denims), (vec![], vec![usize::from(cover.denim)]));
                    // Turned over, the other side of the denim shows.
                    assert_eq!(wrong, cover.wrong_side_up != (face == Face::Back));
                }
            }
        }
    }
}

/// Make a whole throw by pressing nothing but the big button.
fn make_it(plan: Plan, spread: (u32, u32)) {
    let words = Words::english();
    let mut now = 0;
    let mut journal = begin(plan);
    let wishes = Wishes {
        front: Count::at_most(spread.0),
        back: Count::at_most(spread.1),
        ..Wishes::default()
    };
    let layout = Arranger::new(journal.throw(), wishes, 1).layout(journal.throw());
    act(&mut journal, &Command::LayOut { wishes, layout }, now);
    let mut pressed = 0;
    loop {
        now += 3_600_000;
        let context = Context {
            now,
            ..context(&words)
        };
        let view = work_view(&journal, None, context);
        words_are_whole(&view);
        let Some(card) = view.card.as_deref() else {
            both_ended(journal.throw(), view.ended.as_ref().expect("all is done"));
            break;
        };
        assert!(view.ended.is_none());
        drawn_within(&card.picture, &card.title);
        for one in &card.moves {
            drawn_within(&one.picture, &one.text);
        }
        if card.task == Task::GlueBinding {
            joins_drawn(journal.throw(), &card.picture);
        }
        let all = for_all(card);
        act(&mut journal, &all.action, now);
        let throw = journal.throw();
        assert_eq!(
            throw.work_index(),
            &crate::throw::index::WorkIndex::of(throw)
        );
        pressed += 1;
        assert!(pressed < 500, "no end in sight");
    }
    let throw = journal.throw();
    let (done, all) = throw.progress();
    assert_eq!(done, all);
    assert!(throw.assembly().pieces().all(|p| throw.complete(p)));
    assert_eq!(
        (throw.finished().width, throw.finished().height),
        plan.finished()
    );
    words_are_whole(&answer(&journal, &Query::History { most: 500 }, context(&words)).unwrap());
}

#[test]
fn the_big_button_leads_from_cloth_to_a_washed_throw() {
    let plan = Plan::default();
    make_it(plan, (16, 12));
    for (across, down) in [
        (1, 1),
        (1, 2),
        (2, 1),
        (1, 7),
        (7, 1),
        (2, 2),
        (3, 3),
        (5, 4),
        (9, 11),
    ] {
        for order in [JoinOrder::Rows, JoinOrder::Columns, JoinOrder::Doubling] {
            for joining in [Joining::Lapped, Joining::Seamed, Joining::Exposed] {
                let squares = u32::from(across * down);
                make_it(
                    Plan {
                        across,
                        down,
                        order,
                        joining,
                        ..plan
                    },
                    (squares / 3, squares / 4),
                );
            }
        }
    }
}

#[test]
fn every_screen_of_the_demo_in_every_ruler() {
    let words = Words::english();
    let now = 1_800_000_000_000;
    let journal = crate::demo::throw(now);
    for system in [System::Inch, System::Metric] {
        for metric in [MetricUnit::Mm, MetricUnit::Cm] {
            let ruler = Ruler {
                system,
                metric,
                ..Ruler::default()
            };
            let context = Context {
                words: &words,
                ruler,
                now,
            };
            let mut looks = vec![
                Query::Faces { face: Face::Front },
                Query::Faces { face: Face::Back },
                Query::Plan { draft: None },
                Query::Trim,
                Query::Pile,
                Query::Gather,
                Query::Scraps { typed: None },
                Query::Cutting {
                    n: 1,
                    index: 0,
                    typed: None,
                    drag: None,
                },
                Query::History { most: 300 },
                Query::Story {
                    zone: ZoneName::named("Europe/Berlin"),
                },
                Query::Measure {
                    piece: Rect::from([0, 2, 2, 2]),
                    width: "9 5/8 in".into(),
                    height: "9 3/8 in".into(),
                },
            ];
            looks.extend(Station::ALL.map(|s| Query::Work {
                station: Some(s),
                batch: None,
            }));
            for piece in journal.throw().assembly().pieces() {
                looks.push(Query::Bench {
                    chosen: Some(piece),
                });
            }
            for asked in looks {
                words_are_whole(&answer(&journal, &asked, context).unwrap());
            }
            words_are_whole(&shelf_row("x", &journal, context));
            words_are_whole(&figures(&journal, context));
        }
    }
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig::with_cases(24))]
    /// Whatever happened on the bench, every screen can be shown and every button pressed.
    #[test]
    fn every_screen_of_every_state(across in 1u16..5, down in 1u16..5,
                                   steps in proptest::collection::vec((0u8..30, proptest::prelude::any::<u32>()), 0..120)) {
        let words = Words::english();
        let mut journal = crate::log::journal::tests::begin(across, down);
        for (i, s) in steps.into_iter().enumerate() {
            crate::log::journal::tests::step(&mut journal, s, i as Time * 60_000);
        }
        let context = context(&words);
        let mut looks = vec![Query::Trim, Query::Pile, Query::Gather, Query::Scraps { typed: None }, Query::Plan { draft: None }, Query::History { most: 500 },
            Query::Faces { face: Face::Back },
            Query::Hold { width: "30 in".into(), height: "40 in".into() },
            Query::Whole { width: "19 in".into(), height: "19 in".into() }];
        for piece in journal.throw().assembly().pieces() {
            looks.push(Query::Bench { chosen: Some(piece) });
            for why in crate::throw::Mishap::ALL {
                looks.push(Query::Off { piece, why: Some(why) });
            }
        }
        for asked in looks {
            let view = answer(&journal, &asked, context).unwrap();
            words_are_whole(&view);
            let buttons: Vec<Command> = match view {
                View::Off(off) => off.ways.into_iter().map(|w| w.button.action).collect(),
                View::Bench(b) => b.chosen.into_iter().flat_map(|c| c.buttons).map(|b| b.action).collect(),
                View::Trim(t) => t.rows.into_iter().filter_map(|r| r.choose).map(|b| b.action).collect(),
                View::Pile(p) => p.ways.into_iter().map(|w| w.button.action).collect(),
                View::Hold(h) => h.rows.into_iter().filter_map(|r| r.choose).map(|b| b.action).collect(),
                _ => continue,
            };
            for action in buttons {
                proptest::prop_assert!(journal.propose(&action, context.now).is_ok(), "{:?}", action);
            }
        }
        let work = work_view(&journal, None, context);
        words_are_whole(&work);
        for tick in work.card.into_iter().flat_map(|c| c.ticks) {
            proptest::prop_assert!(journal.propose(&tick.action, context.now).is_ok(), "{:?}", tick);
        }
    }
}
