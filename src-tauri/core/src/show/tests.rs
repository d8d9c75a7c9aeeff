//! Every word is there, and every view of every state can be made and its buttons pressed.

use super::*;
use crate::cloth::fabric::Face;
use crate::command::Command;
use crate::faces::arrange::Arranger;
use crate::measure::{
    Count, Fraction, MetricUnit, Ruler, System, eighth_inches, inches, quarter_inches,
    sixty_fourths, tenths_of_mm, zero,
};
use crate::plan::assembly::{Kind, Rect};
use crate::plan::{JoinOrder, Joining, Plan};
use crate::show::{Card, OutlineTyped, Picture, WorkView, ZoneName};
use crate::throw::Time;
use crate::throw::tasks::{Station, Task};
use crate::throw::wishes::Wishes;
use crate::words::Words;
use proptest::prelude::*;
use serde_json::Value;

mod sewing;

fn context(words: &Words) -> Context<'_> {
    Context {
        words,
        ruler: Ruler::default(),
        now: 10_000_000,
    }
}

fn begin(plan: Plan) -> Journal {
    let action = Command::Begin {
        name: "T".into(),
        plan,
        prints: crate::demo::prints(),
        denims: crate::demo::denims(),
    };
    Journal::begin(&action, 0).unwrap().0
}

fn act(journal: &mut Journal, action: &Command, at: Time) {
    let entry = journal
        .propose(action, at)
        .unwrap_or_else(|why| panic!("{action:?}: {why:?}"));
    journal.accept(entry).unwrap();
}

/// A later sentence under the same key would hide the first.
#[test]
fn no_sentence_is_said_twice_over() {
    let mut seen = std::collections::BTreeSet::new();
    let files = [
        include_str!("../../words/en/work.ftl"),
        include_str!("../../words/en/window.ftl"),
        include_str!("../../words/en/shell.ftl"),
    ];
    for line in files.iter().flat_map(|f| f.lines()) {
        if let Some((key, _)) = line.split_once(" =").filter(|(key, _)| !key.contains(' ')) {
            assert!(seen.insert(key), "{key} stands twice");
        }
    }
    assert!(seen.len() > 500);
}

/// Every key named in the sources has a sentence, and its arguments are all given.
#[test]
fn no_word_is_missing() {
    let words = Words::english();
    let mut sources = vec![include_str!("../words/mod.rs").to_string()];
    let mut folders = vec![std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/show")];
    while let Some(folder) = folders.pop() {
        for path in std::fs::read_dir(folder)
            .unwrap()
            .map(|f| f.unwrap().path())
        {
            if path.is_dir() {
                folders.push(path);
            } else if path.file_name().is_some_and(|name| name != "tests.rs") {
                sources.push(std::fs::read_to_string(path).unwrap());
            }
        }
    }
    let mut checked = 0;
    for source in sources {
        for part in source.split("say!(").skip(1) {
            let Some(after) = part.split_once(',').map(|(_, rest)| rest.trim_start()) else {
                continue;
            };
            let Some(key) = after
                .strip_prefix('"')
                .and_then(|k| k.split_once('"'))
                .map(|(k, _)| k)
            else {
                continue;
            };
            assert!(words.has(key), "no words for {key}");
            checked += 1;
        }
        for part in source.split(".problem(\"").skip(1) {
            let key = part.split_once('"').unwrap().0;
            assert!(
                words.has(&format!("error-{key}")) && words.has(&format!("error-{key}-next")),
                "{key}"
            );
        }
    }
    assert!(checked > 60, "only {checked} keys found");
    for task in Task::ALL {
        for stem in ["title", "tick", "past", "task", "did"] {
            let key = format!("{stem}-{}", task.key());
            assert!(words.has(&key), "no words for {key}");
        }
    }
    for table in tables::Table::ALL {
        let file = format!("file-{}", table.key());
        for key in table.columns().iter().copied().chain([file.as_str()]) {
            assert!(words.has(key), "no words for {key}");
        }
    }
    for kind in ["square", "pair", "four", "row", "column", "part", "whole"] {
        assert!(words.has(&format!("kind-{kind}")), "{kind}");
    }
    for unit in ["squares", "strips", "spools", "bobbins", "bottles"] {
        assert!(words.has(&format!("unit-{unit}")), "{unit}");
    }
    for sign in ["clash", "stays", "pin", "unit", "lap", "wrong", "grain"] {
        assert!(words.has(&format!("sign-{sign}")), "{sign}");
    }
    for line in ["sewn", "open", "block", "fringe", "binding"] {
        assert!(words.has(&format!("draw-key-{line}")), "{line}");
    }
}

fn work_view(journal: &Journal, station: Option<Station>, context: Context<'_>) -> WorkView {
    match answer(
        journal,
        &Query::Work {
            station,
            batch: None,
        },
        context,
    ) {
        Ok(View::Work(view)) => view,
        other => panic!("{other:?}"),
    }
}

/// No view says a key instead of words, nor an argument that was not given.
fn words_are_whole(view: &impl serde::Serialize) {
    let json = serde_json::to_string(view).unwrap();
    assert!(!json.contains("{$") && !json.contains("{ $"), "{json}");
    for stem in [
        "title-", "how-", "tick-", "past-", "figure-", "spoken-", "did-", "error-", "stage-",
    ] {
        for task in ["cut", "dot", "stitch", "square", "mm", "open", "first"] {
            assert!(
                !json.contains(&format!("\"{stem}{task}\"")),
                "{stem}{task}: {json}"
            );
        }
    }
}

/// Nothing of a picture lies outside it.
fn drawn_within(picture: &Picture, of: &str) {
    use crate::show::Mark;
    let within = |x: f64, y: f64| {
        let slack = 1e-6;
        let fits = x >= -slack && x <= picture.width + slack;
        fits && y >= -slack && y <= picture.height + slack
    };
    for mark in &picture.marks {
        let inside = match mark {
            Mark::Area { x, y, w, h, .. } => {
                *w >= 0.0 && *h >= 0.0 && within(*x, *y) && within(x + w, y + h)
            }
            Mark::Line { x1, y1, x2, y2, .. } => within(*x1, *y1) && within(*x2, *y2),
            Mark::Words { x, y, .. } => within(*x, *y),
            Mark::Letters { at, .. } => at.iter().all(|[x, y]| within(*x, *y)),
            Mark::Shape { d, at, .. } => {
                let from = if at.is_empty() { &[[0.0; 2]][..] } else { at };
                let ends = from.iter().flat_map(|from| path_ends(d, *from));
                ends.into_iter().all(|[x, y]| within(x, y))
            }
        };
        assert!(
            inside,
            "{of}: {mark:?} in {} × {}",
            picture.width, picture.height
        );
    }
}

/// Where each line or curve of a path ends.
fn path_ends(d: &str, from: [f64; 2]) -> Vec<[f64; 2]> {
    let spaced: String = d
        .chars()
        .flat_map(|c| match c {
            c if c.is_ascii_alphabetic() => vec![' ', c, ' '],
            c => vec![c],
        })
        .collect();
    let (mut ends, mut at, mut begun) = (Vec::new(), from, from);
    let (mut order, mut given) = ('M', Vec::new());
    for word in spaced.split_whitespace() {
        match word.parse::<f64>() {
            Ok(number) => given.push(number),
            Err(_) => (order, given) = (word.chars().next().unwrap(), Vec::new()),
        }
        let [x, y] = if order.is_lowercase() { at } else { [0.0; 2] };
        at = match (order, &given[..]) {
            ('z', []) => begun,
            ('h' | 'H', [a]) => [x + a, at[1]],
            ('v' | 'V', [b]) => [at[0], y + b],
            ('m' | 'M' | 'l' | 'L' | 't', [a, b]) => [x + a, y + b],
            ('q', [_, _, a, b]) | ('a', [_, _, _, _, _, a, b]) => [x + a, y + b],
            _ => continue,
        };
        if order.eq_ignore_ascii_case(&'m') {
            begun = at;
        }
        given.clear();
        ends.push(at);
    }
    ends
}

/// The joins of the binding are drawn as many as there are, the beginning named.
fn joins_drawn(throw: &crate::throw::Throw, picture: &Picture) {
    use crate::show::Mark;
    let size = throw.finished();
    let ruler = crate::measure::Ruler::default();
    let laid = crate::plan::binding::layout(&throw.plan, size.width, size.height, ruler);
    let said: Vec<&str> = picture
        .marks
        .iter()
        .filter_map(|m| match m {
            Mark::Words { text, .. } => Some(text.as_str()),
            _ => None,
        })
        .collect();
    let numbers = (1..laid.joins.len()).map(|n| n.to_string());
    let told: Vec<String> = std::iter::once("begin".to_string())
        .chain(numbers)
        .collect();
    assert_eq!(said, told);
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
        if card.task == Task::GlueBinding {
            joins_drawn(journal.throw(), &card.picture);
        }
        let ticks = &card.ticks;
        // The last button is the one for all of them, where there is one and it is a tick.
        let last = ticks.last().unwrap();
        act(&mut journal, &last.action, now);
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

#[test]
fn the_demo_says_what_is_next() {
    let words = Words::english();
    let now = 1_800_000_000_000;
    let journal = crate::demo::throw(now);
    let context = Context {
        now,
        ..context(&words)
    };
    let view = work_view(&journal, None, context);
    let card = view.card.unwrap();
    assert_eq!(
        (card.title.as_str(), card.which.as_str()),
        ("Cut a square", "Square 7·4")
    );
    assert!(
        card.ticks
            .iter()
            .any(|b| b.label == "Take one of 2 spare squares")
    );
    let iron = work_view(&journal, Some(Station::Iron), context)
        .card
        .unwrap();
    assert_eq!(iron.task, Task::CoolLap);
    assert_eq!(iron.cool_at, Some(now - 60_000 + 300_000));
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
                proptest::prop_assert!(journal.propose(&action, 1).is_ok(), "{:?}", action);
            }
        }
        let work = work_view(&journal, None, context);
        words_are_whole(&work);
        for tick in work.card.into_iter().flat_map(|c| c.ticks) {
            proptest::prop_assert!(journal.propose(&tick.action, 1).is_ok(), "{:?}", tick);
        }
    }
}

/// A garment that is one denim is cut for the squares of that denim, and they say so.
#[test]
fn a_garment_of_one_denim_goes_to_its_squares() {
    use crate::cloth::pile::Use;
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan {
        across: 4,
        down: 2,
        ..Plan::default()
    });
    all_denim(&mut journal);
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
    for (makes, told) in [
        (
            Some(1),
            "Enough denim squares in all, but not of each denim.",
        ),
        (None, "Enough denim squares, 2 to spare."),
    ] {
        act(&mut journal, &add(of(makes), 4), 1);
        assert_eq!(pile(&journal).said[0], told);
        let entry = journal.propose_undo(1).unwrap();
        journal.accept(entry).unwrap();
    }
    // The first square is dark, and nothing on the pile is.
    let card = card_of(&journal, Task::Cut, Kind::Square);
    assert!(!plain(&card.how).contains("To be cut from"));
    let cut = |squares: u16| Command::CutPiece {
        n: 1,
        index: 0,
        squares: squares.into(),
        outline: None,
    };
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

/// From three pairs with torn knees and a size to the grids they allow, with what is lacking.
#[test]
fn a_throw_begins_with_the_jeans_there_are() {
    use crate::cloth::garments::{GarmentKind, GarmentSize, Knees};
    use crate::show::{GridWish, JeansTyped, PackTyped};
    for words in [Words::english(), Words::of("de")] {
        let context = context(&words);
        let draft = super::plan::draft_of(&Plan::default(), context);
        let ask = |pairs: u32, [width, height]: [&str; 2], side: &str| {
            let wish = GridWish::Cloth {
                jeans: vec![JeansTyped {
                    pairs,
                    kind: GarmentKind::MensJeans,
                    size: Some(GarmentSize::Medium),
                    knees: Knees::Torn,
                }],
                pack: Some(PackTyped {
                    side: side.into(),
                    count: 42,
                }),
                width: width.into(),
                height: height.into(),
            };
            let found = grids::grids(&draft, &wish, context);
            words_are_whole(&found);
            assert!(found.problem.is_none(), "{:?}", found.problem);
            found
        };
        let wished = ["40 in", "55 in"];
        let three = ask(3, wished, "5 in");
        assert_eq!(three.said.len(), 2, "{:?}", three.said);
        // 40 × 55 in is nearest to 9 by 12: (9 · 4½ + ½, 12 · 4½ + ½) = 41 × 54½ in.
        let nearest = &three.grids[0];
        assert_eq!((nearest.across, nearest.down), (9, 12));
        // What is said to be enough needs no more, whatever the legs turn out to be.
        if words.language().code == "en" {
            let verdict = |grid: &super::grids::GridRow| grid.why[0].clone();
            assert_eq!(three.said[1], "The fabric covers 42 faces of squares.");
            assert!(
                verdict(nearest).contains("more pairs of this size"),
                "{}",
                verdict(nearest)
            );
            let enough = |found: &super::grids::GridsView| {
                let all = found.grids.iter();
                let enough = all.filter(|g| verdict(g) == "Your jeans are enough for it.");
                enough
                    .map(|g| u32::from(g.across) * u32::from(g.down))
                    .max()
            };
            let (few, many) = (enough(&three), enough(&ask(6, wished, "5 in")));
            assert!(few.is_some() && few < many, "{few:?} {many:?}");
            // No jeans yet: how many pairs the size takes, as a range.
            let none = ask(0, wished, "5 in");
            assert!(
                none.grids
                    .iter()
                    .all(|g| verdict(g).starts_with("You need about"))
            );
            // No size: what the jeans allow, and one that is larger.
            let any = ask(3, ["", ""], "5 in");
            assert!(any.grids.len() >= 3, "{:?}", any.grids);
            assert!(enough(&any).is_some());
            assert!(any.grids.iter().any(|g| verdict(g).contains("You need")));
            // A pack too small is told at once.
            let small = ask(3, wished, "4 in");
            assert!(
                small.said[1].contains("They fit a throw of"),
                "{:?}",
                small.said
            );
        }
    }
}

/// Cloth for a fabric is squared up and cut to squares, a step before they are glued; squares
/// bought as large as the plan's are not.
#[test]
fn the_fabric_squares_are_cut_before_they_are_glued() {
    use crate::cloth::garments::ClothEdges;
    use crate::cloth::pile::Use;
    use crate::measure::{System, inches};
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan {
        across: 2,
        down: 2,
        ..Plan::default()
    });
    let all: Vec<Rect> = journal.throw().assembly().whole().squares().collect();
    let makes = Use::Fabric { print: 0 };
    let face = |face, pieces: &[Rect]| Command::SetFace {
        pieces: pieces.to_vec(),
        face,
        print: Some(0),
    };
    act(&mut journal, &face(Face::Front, &all[..3]), 1);
    act(&mut journal, &face(Face::Back, &all[..1]), 1);
    let tasks = |journal: &Journal| journal.throw().tasks(all[0]);
    let pack = |side| Command::AddPack {
        side,
        count: Count::from(12),
        makes,
        name: "Pack".into(),
    };
    // A pack of the very size is cut already.
    act(&mut journal, &pack(inches(5)), 2);
    assert!(!tasks(&journal).contains(&Task::CutFabric));
    // One too small is refused with the size it would fit.
    let refused = crate::command::decide(Some(journal.throw()), &pack(inches(4))).unwrap_err();
    let told = crate::show::errors::rejection(&refused, Some(journal.throw()), context);
    let next = told.next.replace('\u{a0}', " ");
    assert!(next.contains("They fit a throw of 4 in squares"), "{next}");
    assert!(next.contains("½ in of denim all round"), "{next}");
    let mut larger = journal.clone();
    act(&mut larger, &pack(inches(6)), 3);
    assert!(tasks(&larger).contains(&Task::CutFabric));
    let Ok(View::Pile(pile)) = answer(&larger, &Query::Pile, context) else {
        panic!()
    };
    words_are_whole(&pile);
    let said = pile.rows[1].said.replace('\u{a0}', " ");
    assert!(
        said.ends_with("each gives one, and strips 1 in wide are left over."),
        "{said}"
    );
    let cloth = Command::AddCloth {
        width: inches(22),
        length: inches(18),
        edges: Some(ClothEdges::usual(System::Inch, 1)),
        makes,
        name: "Dots".into(),
    };
    act(&mut journal, &cloth, 3);
    assert_eq!(
        tasks(&journal)[..4],
        [
            Task::Cut,
            Task::CutFabric,
            Task::CoverFront,
            Task::CoverBack
        ]
    );
    assert!(!journal.throw().tasks(all[3]).contains(&Task::CutFabric));
    let before = journal.throw().progress().1;
    all_ready(&mut journal, Task::Cut, Kind::Square, 4);
    let card = card_of(&journal, Task::CutFabric, Kind::Square);
    assert_eq!(card.title, "Cut the fabric squares");
    words_are_whole(&card);
    // The fat quarter is cut up: four squares came out, enough for the first two places of it
    // (two faces and one) and one more.
    let cut = Command::CutPiece {
        n: 2,
        index: 0,
        squares: Count::from(3),
        outline: None,
    };
    act(&mut journal, &cut, 5);
    let has = |journal: &Journal, n: usize| journal.throw().has(all[n], Task::CutFabric);
    assert_eq!([0, 1, 2].map(|n| has(&journal, n)), [true, true, false]);
    all_ready(&mut journal, Task::CutFabric, Kind::Square, 6);
    all_ready(&mut journal, Task::CoverFront, Kind::Square, 7);
    assert_eq!(journal.throw().progress().1, before, "no step came or went");
    // Another fabric instead: what was cut is not of it.
    assert!(has(&journal, 2));
    // What was glued before it was said that the fabric is cloth is not asked for again.
    let mut late = begin(Plan::default());
    act(&mut late, &face(Face::Front, &all[..1]), 1);
    all_ready(&mut late, Task::Cut, Kind::Square, 2);
    all_ready(&mut late, Task::CoverFront, Kind::Square, 3);
    act(&mut late, &cloth, 4);
    assert!(!tasks(&late).contains(&Task::CutFabric));
}

/// In a metric throw no outline begins at 44.45 cm or is dragged to 414.259482 mm, and the
/// places to keep clear go with the cloth, which their fields then tell.
#[test]
fn a_metric_leg_begins_and_is_dragged_in_round_figures() {
    use crate::measure::{MetricUnit, System};
    use crate::show::{Drag, PileCutView};
    let words = Words::english();
    let context = Context {
        ruler: crate::measure::Ruler {
            system: System::Metric,
            metric: MetricUnit::Cm,
            ..crate::measure::Ruler::default()
        },
        ..context(&words)
    };
    let mut journal = begin(Plan::usual(System::Metric));
    let add = Command::AddGarment {
        kind: crate::cloth::garments::GarmentKind::MensJeans,
        size: Some(crate::cloth::garments::GarmentSize::Medium),
        knees: None,
        system: Some(System::Metric),
        makes: crate::cloth::pile::Use::ANY_DENIM,
        name: "Old jeans".into(),
    };
    act(&mut journal, &add, 1);
    let cutting = |typed, drag| -> PileCutView {
        let query = Query::Cutting {
            n: 1,
            index: 0,
            typed,
            drag,
        };
        match answer(&journal, &query, context) {
            Ok(View::Cutting(view)) => *view,
            other => panic!("{other:?}"),
        }
    };
    let first = cutting(None, None);
    let stations = |view: &PileCutView| -> Vec<[String; 2]> {
        let stations = view.tidy.stations.iter();
        stations.map(|s| [s.at.clone(), s.width.clone()]).collect()
    };
    let told = [["0 cm", "43 cm"], ["44 cm", "48 cm"], ["81 cm", "64 cm"]];
    assert_eq!(stations(&first), told);
    let hem = &first.tidy.zones[1];
    assert_eq!(["0 cm", "2.5 cm"], [hem.from.as_str(), hem.to.as_str()]);
    // Dragged by 3.14159 cm to the side and down: on whole millimetres, the others as they were.
    let handle = first.handles[2];
    let drag = Drag {
        station: 2,
        x: handle.x - 31.4159,
        y: handle.y + 31.4159,
    };
    let moved = cutting(Some(first.tidy.clone()), Some(drag));
    // (290 − 31.4159) + 350 mm of which the middle stays: 640 − 2 × 31.4159 = 577.17.
    let told = [
        ["0 cm", "43 cm"],
        ["44 cm", "48 cm"],
        ["77.9 cm", "57.7 cm"],
    ];
    assert_eq!(stations(&moved), told);
    // The hem line measured 3 cm higher by the tape: the hem is told there.
    let mut typed = first.tidy.clone();
    typed.stations[0].at = "3".into();
    let raised = cutting(Some(typed), None);
    assert!(raised.faults.is_empty(), "{:?}", raised.faults);
    let hem = &raised.tidy.zones[1];
    assert_eq!(["3 cm", "5.5 cm"], [hem.from.as_str(), hem.to.as_str()]);
    // The knee is measured 2 cm lower than it began, and so is what is worn there.
    let knee = |view: &PileCutView| {
        let knee = &view.tidy.zones[2];
        [knee.from.clone(), knee.to.clone()]
    };
    assert_eq!(knee(&raised), knee(&first));
    assert_eq!(knee(&first), ["39 cm", "49 cm"]);
    let mut typed = first.tidy.clone();
    typed.stations[1].at = "42".into();
    assert_eq!(knee(&cutting(Some(typed), None)), ["37 cm", "47 cm"]);
    for zone in &raised.tidy.zones {
        for length in [&zone.from, &zone.to] {
            let places = length
                .split_once('.')
                .map_or(0, |(_, p)| p.find(' ').unwrap());
            assert!(places <= 1, "{length}");
        }
    }
}

/// A leg is outlined, a knee kept clear, a point dragged, the piece cut up and counted short.
#[test]
fn a_leg_from_outline_to_count() {
    use crate::cloth::garments::ZoneKind;
    use crate::show::{Drag, PileCutView, ZoneTyped};
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    let add = Command::AddGarment {
        kind: crate::cloth::garments::GarmentKind::MensJeans,
        size: Some(crate::cloth::garments::GarmentSize::Medium),
        knees: None,
        system: None,
        makes: crate::cloth::pile::Use::ANY_DENIM,
        name: "Old jeans".into(),
    };
    act(&mut journal, &add, 1);
    let cutting = |journal: &Journal, typed, drag| -> PileCutView {
        match answer(
            journal,
            &Query::Cutting {
                n: 1,
                index: 0,
                typed,
                drag,
            },
            context,
        ) {
            Ok(View::Cutting(view)) => *view,
            other => panic!("{other:?}"),
        }
    };
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
    act(
        &mut journal,
        &Command::CutPiece {
            n: 1,
            index: 0,
            squares: Count::from(5),
            outline: None,
        },
        3,
    );
    act(
        &mut journal,
        &Command::CutPiece {
            n: 1,
            index: 1,
            squares: Count::from(6),
            outline: None,
        },
        4,
    );
    let Ok(View::Pile(pile)) = answer(&journal, &Query::Pile, context) else {
        panic!()
    };
    words_are_whole(&pile);
    assert!(
        pile.said.contains(&"5 denim squares short.".to_string()),
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

/// A cut is told from where the cloth begins on that line, not from where it is widest.
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
    let said: Vec<String> = cutting::strips(&piece, &cuts, context(&words))
        .iter()
        .map(|line| line.replace('\u{a0}', " "))
        .collect();
    let at_edge = "On the lower line start at the cloth’s left edge: ";
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
    let last = cutting::strips(&held, &cuts, context(&words))
        .pop()
        .unwrap();
    // The cloth begins 7 in left of the middle 15 in up; the squares at 5 in.
    assert!(
        last.contains("start 2\u{a0}in from the cloth’s left edge: 2 squares"),
        "{last}"
    );
}

/// A fabric glued on a square that is spoilt went with it, and so it is counted.
#[test]
fn a_spoilt_square_takes_its_fabric_with_it() {
    let words = Words::english();
    let context = context(&words);
    let mut prints = crate::demo::prints();
    prints[0].stock = Some(Count::from(4));
    let (mut journal, _) = Journal::begin(
        &Command::Begin {
            name: "T".into(),
            plan: Plan {
                across: 4,
                down: 4,
                ..Plan::default()
            },
            prints,
            denims: crate::demo::denims(),
        },
        0,
    )
    .unwrap();
    let squares: Vec<Rect> = journal.throw().assembly().whole().squares().collect();
    let face = |pieces: &[Rect]| Command::SetFace {
        pieces: pieces.to_vec(),
        face: Face::Front,
        print: Some(0),
    };
    act(&mut journal, &face(&squares[..2]), 1);
    let count = |journal: &Journal| parts::swatches(journal, context)[0].count.clone();
    assert_eq!(count(&journal), "2 of 4 used");
    for task in [Task::Cut, Task::CoverFront] {
        let pieces = vec![squares[0]];
        act(&mut journal, &Command::Tick { task, pieces }, 2);
    }
    let spoil = Command::Spoil {
        piece: squares[0],
        why: crate::throw::Mishap::Scorched,
    };
    act(&mut journal, &spoil, 3);
    assert_eq!(count(&journal), "2 used, 1 spoilt, 1 left");
    // One more is all there is.
    assert!(journal.propose(&face(&squares[2..4]), 4).is_err());
    act(&mut journal, &face(&squares[2..3]), 4);
    assert_eq!(count(&journal), "3 used, 1 spoilt, 0 left");
    for at in [5, 6] {
        let entry = journal.propose_undo(at).unwrap();
        journal.accept(entry).unwrap();
    }
    assert_eq!(count(&journal), "2 of 4 used");
}

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
    let said = seen.verdict[0].replace('\u{a0}', " ");
    assert_eq!(
        said,
        "Across: 4.7 mm over. Trim 2 mm from the left and the rest, ≈ 3 mm, from the right; the crossing stays as near the middle as the ruler shows."
    );
}

/// The card says which denim a square is cut from, and how many from each are to come.
#[test]
fn the_cut_card_names_the_denim() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    let squares: Vec<Rect> = journal.throw().assembly().whole().squares().collect();
    let faded = Command::SetDenim {
        pieces: squares[..3].to_vec(),
        denim: 1,
        wrong_side_up: false,
    };
    act(&mut journal, &faded, 1);
    let look_at = Query::Work {
        station: None,
        batch: Some((Task::Cut, Kind::Square)),
    };
    let Ok(View::Work(seen)) = answer(&journal, &look_at, context) else {
        panic!()
    };
    let card = seen.card.unwrap();
    let names = crate::demo::denims().into_iter().map(|d| d.name);
    let names: Vec<String> = names.collect();
    let from = card.figures.iter().find(|f| f.label == "From").unwrap();
    assert_eq!(from.value.text, names[1]);
    let told = format!("Still to cut: 13 from {}, 3 from {}.", names[0], names[1]);
    assert_eq!(card.how[0], told);
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
    assert!(shown(&leaning, "Corner off square").ends_with('°'));
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

/// No square is to get fabric, so that nobody asks.
fn all_denim(journal: &mut Journal) {
    let wishes = Wishes {
        front: Count::NONE,
        back: Count::NONE,
        ..Wishes::default()
    };
    act(journal, &Command::Wish { wishes }, 0);
}

/// Tick all pieces of a kind that are ready for a task.
fn all_ready(journal: &mut Journal, task: Task, kind: Kind, hour: Time) {
    let count = crate::command::ready_for(journal.throw(), kind, task).count() as u32;
    act(
        journal,
        &Command::TickNext {
            task,
            kind,
            count: Count::at_most(count),
        },
        hour * 3_600_000,
    );
}

/// A throw whose fours are all stitched and pressed, ready to be squared up.
fn stitched(across: u16, down: u16) -> Journal {
    use crate::plan::assembly::Kind;
    let mut journal = begin(Plan {
        across,
        down,
        ..Plan::default()
    });
    all_denim(&mut journal);
    let mut hour = 0;
    let mut all = |journal: &mut Journal, task, kind| {
        hour += 1;
        all_ready(journal, task, kind, hour);
    };
    all(&mut journal, Task::Cut, Kind::Square);
    let join = [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch];
    for kind in [Kind::Pair, Kind::Four] {
        for task in join {
            all(&mut journal, task, kind);
        }
    }
    all(&mut journal, Task::PressBlock, Kind::Four);
    journal
}

fn sized(journal: &mut Journal, piece: Rect, width: i64, height: i64) {
    let (width, height) = (sixty_fourths(width), sixty_fourths(height));
    let action = Command::Measure {
        piece,
        width,
        height,
    };
    act(journal, &action, 1);
}

fn off_view(
    journal: &Journal,
    piece: Rect,
    why: Option<crate::throw::Mishap>,
) -> crate::show::OffView {
    let words = Words::english();
    match answer(journal, &Query::Off { piece, why }, context(&words)) {
        Ok(View::Off(view)) => view,
        other => panic!("{other:?}"),
    }
}

fn card_of(journal: &Journal, task: Task, kind: crate::plan::assembly::Kind) -> Card {
    let words = Words::english();
    let asked = Query::Work {
        station: None,
        batch: Some((task, kind)),
    };
    match answer(journal, &asked, context(&words)) {
        Ok(View::Work(view)) => *view.card.filter(|c| c.task == task).expect("ready"),
        other => panic!("{other:?}"),
    }
}

fn plain(lines: &[String]) -> String {
    lines.join(" ").replace('\u{a0}', " ")
}

const FOUR: crate::plan::assembly::Kind = crate::plan::assembly::Kind::Four;
/// 9 1/2 in, in sixty-fourths.
const FULL: i64 = 9 * 64 + 32;

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
        rest.starts_with("Short ¼ in at the left; the binding hides it. Nothing more to do there."),
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
    let (_, told) = change::compare(&journal, &events, context(&words));
    assert!(told.contains(&"Laps marked for pieces that are short are worked out again.".into()));
    act(&mut journal, &change, 3);
    assert_eq!(marked(&journal), Vec::<i64>::new());
    // With laps a sixteenth wider the fours shrink by that: half as much is missing, at one lap.
    let entry = journal.propose_undo(4).unwrap();
    journal.accept(entry).unwrap();
    let plan = Plan {
        lap: sixty_fourths(36),
        ..journal.throw().plan
    };
    act(&mut journal, &Command::ChangePlan { plan }, 5);
    assert_eq!(marked(&journal), [36 - (8 - 4)]);
}

/// A four of pairs sewn wider than planned now: its seam is as long as they are.
#[test]
fn a_seam_is_as_long_as_what_it_joins() {
    let mut journal = begin(Plan {
        across: 2,
        down: 2,
        ..Plan::default()
    });
    all_denim(&mut journal);
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

/// A size for all that asks for narrower laps says so where it is offered.
#[test]
fn a_trim_size_names_the_laps_it_asks_for() {
    let mut journal = stitched(6, 2);
    let piece = Rect::from([0, 2, 2, 2]);
    sized(&mut journal, piece, FULL - 16, FULL);
    // 3/16 in is 3/32 at either side: laps of 13/32 in, which a ruler of thirty-seconds shows.
    let words = Words::english();
    let ruler = Ruler {
        fraction: Fraction::ThirtySecond,
        ..Ruler::default()
    };
    let context = Context {
        ruler,
        ..context(&words)
    };
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
    let mut told: Vec<[f64; 3]> = Vec::new();
    for mark in &picture.marks {
        if let Mark::Words {
            x, y, text, size, ..
        } = mark
            && text.ends_with("under")
        {
            let half = text.chars().count() as f64 * size * 0.58 / 2.0;
            assert!(*x >= half - 0.5 && *x <= picture.width - half + 0.5);
            assert!(*y + size / 2.0 <= picture.height);
            told.push([x - half, x + half, *y]);
        }
    }
    assert_eq!(told.len(), 4);
    for (n, a) in told.iter().enumerate() {
        let free = |b: &[f64; 3]| a[1] <= b[0] || b[1] <= a[0] || (a[2] - b[2]).abs() >= 6.0;
        assert!(told[n + 1..].iter().all(free), "{told:?}");
    }
}

/// A scorched square is a lesson for where it was last under the iron.
#[test]
fn what_was_scorched_is_told_where_it_was_ironed_last() {
    use crate::throw::Mishap;
    let spoil = |journal: &mut Journal, piece, why, at| {
        let spare = false;
        act(journal, &Command::Replace { piece, why, spare }, at);
    };
    let learned = |journal: &Journal, task: Task| {
        let words = Words::english();
        let all = crate::log::lessons::heritage(journal).lessons.into_iter();
        let here = all.filter(|l| l.task == Some(task));
        here.filter_map(|l| lessons::said(&l, context(&words)))
            .collect::<Vec<_>>()
    };
    let mut journal = stitched(4, 2);
    let at = 1_000_000_000;
    spoil(&mut journal, Rect::square(1, 0), Mishap::Scorched, at);
    assert_eq!(
        learned(&journal, Task::PressBlock),
        ["One square was no good: scorched."]
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
        ["One square was no good: hole, stain or worn."]
    );
    assert_eq!(learned(&journal, Task::PressBlock).len(), 1);
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
    let which = "Unpick Square 2·1 from Square 2·2: the whole seam, 5 in. \
                 Unpick Pair 1·1 + 1·2 from Pair 2·1 + 2·2: only 5 in, along Square 2·1.";
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
    for (task, at) in [
        (Task::PressLap, 5),
        (Task::CoolLap, 9_000_000),
        (Task::Stitch, 9_000_001),
    ] {
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
    let again = four.figures.iter().find(|f| f.label == "To be made again");
    assert_eq!(again.unwrap().value.text.replace('\u{a0}', " "), "5 in");
}

/// What is left over is what was made: pairs, where only pairs were.
#[test]
fn what_is_left_over_exists() {
    use crate::plan::assembly::Kind;
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    for (task, kind, count) in [(Task::Cut, Kind::Square, 16), (Task::Dot, Kind::Pair, 6)] {
        act(
            &mut journal,
            &Command::TickNext {
                task,
                kind,
                count: Count::from(count),
            },
            1,
        );
    }
    let plan = Plan {
        down: 2,
        ..journal.throw().plan
    };
    let throw = journal.throw();
    let events = crate::command::decide(Some(throw), &Command::ChangePlan { plan }).unwrap();
    let after = throw.after(&events);
    let words = Words::english();
    let said = change::left_over(throw, &after, context(&words));
    assert_eq!(
        said.as_deref(),
        Some("Left over: 2 pairs, for cushion fronts or corners of the next throw.")
    );
    // The four squares that were cut and never joined are not lost with them.
    assert_eq!((after.aside.len(), after.spares.get()), (2, 4));
}

/// A tick for several names those alike; one for all says where figures differ.
#[test]
fn ticks_say_what_they_count() {
    use crate::plan::assembly::Kind;
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    all_denim(&mut journal);
    let cut = Command::TickNext {
        task: Task::Cut,
        kind: Kind::Square,
        count: Count::from(16),
    };
    act(&mut journal, &cut, 1);
    let labels = |journal: &Journal| -> Vec<String> {
        let card = card_of(journal, Task::Dot, Kind::Pair);
        let labels = card.ticks.into_iter().map(|b| b.label);
        labels.map(|l| l.replace('\u{a0}', " ")).collect()
    };
    assert_eq!(
        labels(&journal),
        ["This one lapped and glued", "All 8 lapped and glued"]
    );
    let (a, b) = (Rect::square(3, 2), Rect::square(3, 3));
    let narrower = Command::MarkLaps {
        laps: vec![(a, b, Some(sixty_fourths(28)))],
    };
    act(&mut journal, &narrower, 2);
    assert_eq!(
        labels(&journal),
        [
            "This one lapped and glued",
            "These 7 at ½ in lapped and glued",
            "All 8 lapped and glued (laps differ)"
        ]
    );
}

fn shown_work(journal: &Journal, words: &Words) -> WorkView {
    work_view(journal, None, context(words))
}

/// Do a step to so many pieces of a kind.
fn next(journal: &mut Journal, task: Task, kind: crate::plan::assembly::Kind, count: u32) {
    act(
        journal,
        &Command::TickNext {
            task,
            kind,
            count: Count::at_most(count),
        },
        1,
    );
}

/// Squares cut, pairs and fours lapped and stitched, of a throw of 4 by 4 in bare denim.
fn four_fours() -> Journal {
    use crate::plan::assembly::Kind;
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        washes: 2,
        ..Plan::default()
    });
    next(&mut journal, Task::Cut, Kind::Square, 16);
    for (kind, count) in [(Kind::Pair, 8), (Kind::Four, 4)] {
        for task in [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch] {
            next(&mut journal, task, kind, count);
        }
    }
    journal
}

#[test]
fn a_note_says_at_which_piece_it_was_written() {
    let words = Words::english();
    let mut journal = begin(Plan::default());
    let note = |text: &str, col: u16| Command::Note {
        text: text.into(),
        piece: Some(Rect::square(0, col)),
        task: Some(Task::Cut),
        next: false,
    };
    act(&mut journal, &note("mine", 0), 1);
    act(&mut journal, &note("the other’s", 3), 2);
    let card = shown_work(&journal, &words).card.unwrap();
    assert_eq!(card.which, "Square 1·1");
    assert_eq!(card.notes, ["mine", "Written at Square 1·4: the other’s"]);
}

#[test]
fn fabric_is_asked_for_before_the_first_lap_and_only_once() {
    use crate::plan::assembly::Kind;
    let words = Words::english();
    let mut journal = begin(Plan {
        across: 2,
        down: 2,
        ..Plan::default()
    });
    let first = shown_work(&journal, &words);
    let ask = first.ask.expect("asked");
    assert_eq!(first.card.map(|c| c.task), Some(Task::Cut));
    next(&mut journal, Task::Cut, Kind::Square, 4);
    let before_lap = shown_work(&journal, &words);
    words_are_whole(&before_lap);
    assert!(before_lap.ask.is_some() && before_lap.card.is_none() && before_lap.rest.is_none());
    assert_eq!(shelf_row("x", &journal, context(&words)).next, ask.title);
    act(&mut journal, &ask.bare.action, 2);
    let answered = shown_work(&journal, &words);
    assert_eq!(answered.ask, None);
    assert_eq!(answered.card.map(|c| c.task), Some(Task::Dot));
    // Nor is it asked where no fabric is listed.
    let plain = Command::Begin {
        name: "T".into(),
        plan: Plan::default(),
        prints: vec![],
        denims: vec![],
    };
    let journal = Journal::begin(&plain, 0).unwrap().0;
    assert_eq!(shown_work(&journal, &words).ask, None);
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
    let Ok(View::Plan(seen)) = answer(
        &journal,
        &Query::Plan {
            draft: Some(Box::new(draft_of(&plan, context))),
        },
        context,
    ) else {
        panic!()
    };
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
        (&seen.aside, &seen.compare)
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

/// The whole throw made, up to the first wash.
fn unwashed() -> Journal {
    let words = Words::english();
    let mut journal = four_fours();
    for _ in 0..200 {
        let view = work_view(&journal, None, context(&words));
        let card = view.card.expect("something to do");
        if card.task == Task::Wash {
            return journal;
        }
        act(&mut journal, &card.ticks.last().unwrap().action, 1);
    }
    panic!("never came to the wash");
}

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
    assert!(card.measure_whole && card.how[0].starts_with("Measure the whole first"));
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
         Cloth usually draws in when washed. Nothing is sewn wrong for that."
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
    let told = story(&journal, &ZoneName::default(), context).lines[0].replace('\u{a0}', " ");
    assert!(told.contains("finished 17 × 17 in"), "{told}");
}

#[test]
fn what_is_free_is_said_before_layouts_are_looked_for() {
    let words = Words::english();
    let context = context(&words);
    let journal = four_fours();
    let ask = |front: u32, back: u32| {
        let wishes = Wishes {
            front: Count::at_most(front),
            back: Count::at_most(back),
            ..Wishes::default()
        };
        let wishes = Some(wishes);
        match answer(&journal, &Query::Wishes { wishes }, context) {
            Ok(View::Wishes(view)) => view,
            other => panic!("{other:?}"),
        }
    };
    let seen = ask(8, 3);
    assert_eq!(
        (seen.most, seen.wishes.front, seen.wishes.back),
        ([0, 0], Count::NONE, Count::NONE)
    );
    let said = seen.free.expect("said");
    assert!(said.contains("no square is free any more"), "{said}");
    let fresh = begin(Plan::default());
    let Ok(View::Wishes(seen)) = answer(&fresh, &Query::Wishes { wishes: None }, context) else {
        panic!()
    };
    assert_eq!((seen.free, seen.most), (None, [48, 48]));
}

#[test]
fn the_rings_are_where_a_layout_changes_something() {
    use crate::show::{Ink, Mark};
    let words = Words::english();
    let journal = begin(Plan::default());
    let wishes = Wishes {
        front: Count::from(9),
        back: Count::from(5),
        ..Wishes::default()
    };
    let found = [Arranger::new(journal.throw(), wishes, 1)];
    let seen = layouts(&journal, wishes, &found, (false, 1), context(&words));
    assert_eq!(seen.said, "One layout found");
    let card = &seen.cards[0];
    // Nothing is covered yet, so that all that is covered changes.
    let prints = &journal.throw().prints;
    let places = |picture: &Picture, ringed: bool| -> Vec<[u16; 2]> {
        let wanted = |ink: Ink, cloth: Option<u8>| match cloth {
            _ if ringed => ink == Ink::Ring,
            Some(cloth) => {
                let colour = &picture.cloths[usize::from(cloth)].colour;
                ink == Ink::Cloth && prints.iter().any(|print| print.colour == *colour)
            }
            None => false,
        };
        let mut out: Vec<[u16; 2]> = picture
            .marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Shape { at, ink, cloth, .. } if wanted(*ink, *cloth) => Some(at),
                _ => None,
            })
            .flat_map(|at| at.iter().map(|at| at.map(|side| side as u16)))
            .collect();
        out.sort();
        out
    };
    for (picture, covered) in [(&card.front, 9), (&card.back, 5)] {
        drawn_within(picture, "a layout");
        assert_eq!(places(picture, true), places(picture, false));
        assert_eq!(places(picture, true).len(), covered);
    }
    assert!(card.changed);
}

#[test]
fn made_again_the_layers_count_the_faces_taken_over() {
    let words = Words::english();
    let now = 1_800_000_000_000;
    let old = crate::demo::throw(now);
    let context = context(&words);
    let again = again(&old, context);
    let cloth = (again.prints.as_slice(), again.denims.as_slice());
    let layers = |view: &crate::show::PlanView| {
        let found = view.figures.iter().find(|f| f.label.contains("ayers"));
        found.map(|f| f.value.text.clone())
    };
    let then = draft_after(old.throw(), cloth, &again.draft, context);
    let Ok(View::Plan(was)) = answer(&old, &Query::Plan { draft: None }, context) else {
        panic!()
    };
    assert!(layers(&then).is_some());
    assert_eq!(layers(&then), layers(&was));
    assert_ne!(layers(&then), layers(&draft(&again.draft, context)));
}

/// Numbers a forger would try.
const WILD: [i64; 9] = [
    -1,
    0,
    1,
    61,
    255,
    65_535,
    4_294_967_295,
    i64::MAX / 2,
    i64::MIN / 2,
];

/// Every number in a line, in order.
fn numbers(value: &mut Value) -> Vec<&mut Value> {
    match value {
        Value::Number(_) => vec![value],
        Value::Array(list) => list.iter_mut().flat_map(numbers).collect(),
        Value::Object(map) => map.values_mut().flat_map(numbers).collect(),
        _ => Vec::new(),
    }
}

/// The record with one number of one line forged, and the checksum made to agree.
fn forged(text: &str, line: usize, which: usize, wild: i64) -> String {
    let mut lines: Vec<String> = text.lines().map(str::to_string).collect();
    let at = 1 + line % (lines.len() - 1);
    let body = lines[at].rsplit_once(",\"crc\"").unwrap().0.to_string() + "}";
    let mut value: Value = serde_json::from_str(&body).unwrap();
    let mut found = numbers(&mut value["do"]);
    if let Some(n) = found.len().checked_sub(1) {
        *found[which % (n + 1)] = wild.into();
    }
    // Keys keep their order, so that nothing but the number is strange.
    let said = value.to_string();
    let entry: Option<crate::log::journal::Entry> = serde_json::from_str(&said).ok();
    if let Some(entry) = entry {
        lines[at] = entry.line().trim_end().to_string();
    }
    lines.join("\n") + "\n"
}

fn looked_at(journal: &Journal) {
    let words = Words::english();
    let context = Context {
        words: &words,
        ruler: Ruler::default(),
        now: 10_000_000,
    };
    let piece = Rect::square(0, 0);
    let typed = OutlineTyped::default();
    for wanted in [
        Query::Work {
            station: None,
            batch: None,
        },
        Query::Bench {
            chosen: Some(piece),
        },
        Query::Faces {
            face: crate::cloth::fabric::Face::Back,
        },
        Query::Plan { draft: None },
        Query::Trim,
        Query::Outline { piece, typed },
        Query::Off { piece, why: None },
        Query::Pile,
        Query::Cutting {
            n: 1,
            index: 0,
            typed: None,
            drag: None,
        },
        Query::Gather,
        Query::Scraps { typed: None },
        Query::Whole {
            width: "40".into(),
            height: "40".into(),
        },
        Query::History { most: 500 },
        Query::HandOn,
    ] {
        let _ = answer(journal, &wanted, context);
    }
    let _ = figures(journal, context);
    let _ = shelf_row("a", journal, context);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// A number anywhere may be anything: it is refused, or what comes in can be shown.
    #[test]
    fn no_forged_number_breaks_anything(
        steps in prop::collection::vec((2u8..26, any::<u32>()), 1..60),
        line in any::<usize>(), which in any::<usize>(), wild in prop::sample::select(&WILD[..]),
    ) {
        let mut journal = crate::log::journal::tests::begin(3, 3);
        for (i, s) in steps.into_iter().enumerate() {
            crate::log::journal::tests::step(&mut journal, s, i as Time);
        }
        let text = forged(&journal.text(), line, which, wild);
        if let Ok(read) = crate::log::intake::read(text.as_bytes()) {
            looked_at(&read.journal);
        }
    }
}

/// What was told from the record is read in the language and by the ruler of whoever opens the
/// throw; what files hold in words, and what the maker wrote, stays as it is.
#[test]
fn lessons_are_told_in_the_language_they_are_read_in() {
    use crate::measure::sixty_fourths;
    use crate::throw::Mishap;
    use crate::throw::heritage::{Heritage, Lesson, Told};
    let lesson = |words: &str, hers, told| Lesson {
        words: words.into(),
        task: Some(Task::Cut),
        hers,
        told,
    };
    let (size, washed) = (
        (sixty_fourths(2560), sixty_fourths(3200)),
        (sixty_fourths(2496), sixty_fourths(3200)),
    );
    let told = [
        Told::Scrap {
            lap: sixty_fourths(32),
        },
        Told::Drift {
            fours: Count::from(3),
            mean: sixty_fourths(8),
        },
        Told::Whole {
            size,
            planned: size,
        },
        Told::Washed {
            washes: 1,
            before: size,
            after: washed,
        },
        Told::Spoilt {
            squares: Count::from(1),
            why: Mishap::Scorched,
        },
        Told::More {
            squares: Count::from(2),
            face: Face::Back,
        },
    ];
    let mut lessons = vec![
        lesson("Cut the faded jeans first.", true, None),
        lesson("On a scrap, a lap of ½ in was found right.", false, None),
    ];
    lessons.extend(told.map(|told| lesson("", false, Some(told))));
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
        let at_step = lessons::at_step(read.journal.throw(), Task::Cut, context);
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
            "3 measured fours came out ⅛ in over for each lap, on average.",
            "Finished, it measured 40 × 50 in; planned 40 × 50 in.",
            "One wash changed it by \u{2212}2.5 % across and +0.0 % down (ISO 5077).",
            "One square was no good: scorched.",
            "Once cutting had begun, fabric was added to 2 more squares of the back.",
        ]
    );
    let in_german = shown(&german, metric);
    assert_eq!(in_german[..2], kept);
    assert_eq!(
        in_german[2],
        "An einer Nähprobe war eine Überlappung von 12,7 mm richtig."
    );
    assert!(in_german[6].ends_with("versengt."), "{in_german:?}");
    for (german, english) in in_german.iter().zip(&in_english).skip(2) {
        assert_ne!(german, english);
    }
    // A mean below half a mark is nothing to tell by that ruler.
    let tiny = Told::Drift {
        fours: Count::from(3),
        mean: sixty_fourths(8) / 200,
    };
    let by_inch = Context {
        words: &english,
        ruler: Ruler::default(),
        now: 0,
    };
    assert_eq!(lessons::said(&lesson("", false, Some(tiny)), by_inch), None);
}

/// What is told from a record is kept without a sentence.
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

/// Rules of the work live with the work: only screens ask for screens.
#[test]
fn nothing_outside_asks_for_a_screen() {
    let source = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut folders = vec![source.clone()];
    let mut read = 0;
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path == source.join("show") {
                continue;
            }
            if path.is_dir() {
                folders.push(path);
                continue;
            }
            let text = std::fs::read_to_string(&path).unwrap_or_default();
            let code = text.lines().filter(|l| !l.trim_start().starts_with("//"));
            for line in code {
                assert!(!line.contains("crate::show"), "{}: {line}", path.display());
            }
            read += 1;
        }
    }
    assert!(read > 30, "only {read} files");
}

/// An order of shades is met only where the squares have shades to put in order.
#[test]
fn an_order_of_shades_that_nothing_can_show_is_not_met() {
    use crate::throw::wishes::Pattern;
    let words = Words::english();
    // A new throw has two denims in its list, and every square is of the dark one.
    let journal = begin(Plan::default());
    for pattern in [Pattern::ShadeRows, Pattern::LightEdges] {
        let wishes = Wishes {
            front: Count::from(9),
            back: Count::from(5),
            pattern,
            ..Wishes::default()
        };
        let found = [Arranger::new(journal.throw(), wishes, 1)];
        let seen = layouts(&journal, wishes, &found, (false, 1), context(&words));
        let card = &seen.cards[0];
        let line = card
            .lines
            .iter()
            .find(|line| line.label == "Out of the order of shades")
            .unwrap();
        assert!(!line.met, "{line:?}");
        assert!(
            line.value.contains("every square is of one denim"),
            "{line:?}"
        );
        let met = card.lines.iter().filter(|line| line.met).count();
        assert!(met < card.lines.len());
        assert_eq!(
            card.met,
            format!("{met} of {} wishes met", card.lines.len())
        );
    }
}
