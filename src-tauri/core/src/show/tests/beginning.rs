//! Beginning with the cloth there is: the first grids, outlines in round figures, fabric squares.

use super::*;

/// From three pairs with torn knees and a size to the grids they allow, with what is lacking.
#[test]
fn a_throw_begins_with_the_jeans_there_are() {
    use crate::cloth::garments::{GarmentKind, GarmentSize, Knees};
    use crate::show::{GridWish, JeansTyped, PackTyped};
    for words in [Words::english(), Words::of("de")] {
        let context = context(&words);
        let draft = draft_of(&Plan::default(), context);
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
            let found = grids(&draft, &wish, context);
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
        // What the plan's own grid takes is told as it is of the same grid in the list.
        let own = ask(2, ["27 1/2 in", "36 1/2 in"], "5 in");
        let same = own.grids.iter().find(|g| (g.across, g.down) == (6, 8));
        assert_eq!(own.own, same.expect("6 by 8").why[..2]);
        // What is said to be enough needs no more, whatever the legs turn out to be.
        if words.language().code == "en" {
            let verdict = |grid: &GridRow| grid.why[0].clone();
            assert_eq!(three.said[1], "The fabric covers 42 faces of squares.");
            assert_eq!(three.pack, None);
            // Squares that cannot be are told, and cover nothing.
            for side in ["abc", "500 in", "0"] {
                let amiss = ask(3, wished, side);
                assert!(amiss.pack.is_some() && amiss.said.len() == 1, "{side}");
            }
            assert!(
                verdict(nearest).contains("more pairs of this size"),
                "{}",
                verdict(nearest)
            );
            let enough = |found: &GridsView| {
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
        laid_on: false,
    };
    act(&mut journal, &face(Face::Front, &all[..3]), 1);
    act(&mut journal, &face(Face::Back, &all[..1]), 1);
    let tasks = |journal: &Journal| journal.throw().tasks(all[0]);
    let pack = |side| Command::AddPack {
        side,
        count: Count::from(12),
        makes,
        name: "Pack".into(),
        mixed: false,
    };
    // A pack of the very size is cut already.
    act(&mut journal, &pack(inches(5)), 2);
    assert!(!tasks(&journal).contains(&Task::CutFabric));
    // One too small is refused with the size it would fit.
    let refused = crate::command::decide(Some(journal.throw()), &pack(inches(4))).unwrap_err();
    let texts = crate::show::errors::rejection(&refused, Some(journal.throw()), context);
    let next = texts.next.replace('\u{a0}', " ");
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
        by_strip: Vec::new(),
        pieced: None,
        strips: None,
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
    let texts = [["0 cm", "43 cm"], ["44 cm", "48 cm"], ["81 cm", "64 cm"]];
    assert_eq!(stations(&first), texts);
    let hem = &first.tidy.zones[1];
    assert_eq!(["0 cm", "2.5 cm"], [hem.from.as_str(), hem.to.as_str()]);
    // Dragged by 3.14159 cm to the side and down: on whole millimetres, the others as they were.
    let handle = first.handles[2];
    let drag = Drag {
        station: 2,
        x: handle.x - 31.4159,
        y: handle.y + 31.4159,
        held_strips: None,
    };
    let moved = cutting(Some(first.tidy.clone()), Some(drag));
    // (290 − 31.4159) + 350 mm of which the middle stays: 640 − 2 × 31.4159 = 577.17.
    let texts = [
        ["0 cm", "43 cm"],
        ["44 cm", "48 cm"],
        ["77.9 cm", "57.7 cm"],
    ];
    assert_eq!(stations(&moved), texts);
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
