//! The search for layouts against an exact solver and a library of discrepancies.
//!
//! `outside/faces.py` gave each case of `outside/faces.json` to OR-tools CP-SAT, which
//! proves its least cost, and computed wrap-around discrepancies with SciPy
//! (`scipy.stats.qmc.discrepancy`, method `WD`). `LAPWORK_WRITE=1` writes what is asked.

use lapwork_core::cloth::fabric::{Cover, Denim, lightness};
use lapwork_core::cloth::pile::Use;
use lapwork_core::command::{Command, decide};
use lapwork_core::demo;
use lapwork_core::faces::arrange::{Arranger, of};
use lapwork_core::measure::Count;
use lapwork_core::plan::Plan;
use lapwork_core::plan::assembly::Rect;
use lapwork_core::throw::wishes::{DenimWish, Pattern, Wishes};
use lapwork_core::throw::{Event, Throw};
use serde_json::{Value, json};
use std::path::PathBuf;

fn path(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("outside")
        .join(name)
}

fn begun(across: u16, down: u16, prints: usize) -> Throw {
    let action = Command::Begin {
        name: "t".into(),
        plan: Plan {
            across,
            down,
            ..Plan::default()
        },
        prints: demo::prints().into_iter().take(prints).collect(),
        denims: vec![],
    };
    Throw::begin(&decide(None, &action).expect("a plan")[0]).expect("it begins")
}

/// Grids small enough to be proven: across, down, prints, covered in front and behind.
const ASKED: [(u16, u16, usize, u32, u32); 4] = [
    (3, 3, 1, 3, 2),
    (3, 4, 2, 4, 3),
    (4, 4, 1, 5, 4),
    (4, 4, 2, 5, 4),
];

/// Rounds on these few squares take a moment each.
const ROUNDS: u32 = 12;

fn search(case: (u16, u16, usize, u32, u32), seed: u64) -> Arranger {
    let (across, down, prints, front, back) = case;
    let throw = begun(across, down, prints);
    let wishes = Wishes {
        front: Count::at_most(front),
        back: Count::at_most(back),
        ..Wishes::default()
    };
    let mut arranger = Arranger::new(&throw, wishes, seed);
    for _ in 0..ROUNDS {
        arranger.round();
    }
    arranger
}

/// How many of each print lie on each face.
fn counts(arranger: &Arranger, prints: usize) -> [Vec<usize>; 2] {
    let covers = arranger.covers();
    let on: [fn(&Cover) -> Option<u8>; 2] = [|c| c.front, |c| c.back];
    on.map(|on| {
        (0..prints)
            .map(|p| covers.iter().filter(|c| on(c) == Some(p as u8)).count())
            .collect()
    })
}

#[test]
fn small_layouts_come_up_to_the_proven_optimum() {
    if std::env::var_os("LAPWORK_WRITE").is_some() {
        let asked: Vec<Value> = ASKED
            .into_iter()
            .map(|case| {
                json!({"across": case.0, "down": case.1, "seed": 1,
                       "counts": counts(&search(case, 1), case.2)})
            })
            .collect();
        std::fs::write(path("faces-asked.json"), format!("{:#}\n", json!(asked))).expect("a file");
        return;
    }
    let output = std::fs::read_to_string(path("faces.json")).expect("the record");
    let output: Value = serde_json::from_str(&output).expect("JSON");
    let optima = output["optima"].as_array().expect("cases");
    assert_eq!(optima.len(), ASKED.len());
    for (case, output) in ASKED.into_iter().zip(optima) {
        assert_eq!(output["status"], "OPTIMAL");
        // Seeds in which the counts of the prints are those of the record.
        let found: Vec<i64> = (1..=200)
            .map(|seed| search(case, seed))
            .filter(|a| json!(counts(a, case.2)) == output["counts"])
            .take(6)
            .map(|a| a.cost())
            .collect();
        let best = *found.iter().min().expect("a seed with these counts");
        let worst = *found.iter().max().expect("a seed with these counts");
        let least = output["least"].as_f64().expect("a cost");
        println!("{case:?}: proven {least:.1}, found {best} to {worst}");
        // Whole numbers lose less than one for each set of squares, two parts each.
        let rounding = 4.0 * (1.0 + case.2 as f64);
        assert!(
            best as f64 >= least - rounding,
            "{case:?}: {best} under the proven {least}"
        );
        assert!(
            worst as f64 <= least + rounding,
            "{case:?}: {worst} over the proven {least}"
        );
    }
}

/// Fabrics and denims at once: across, down, prints, covered in front and behind, squares of
/// each denim on the pile, and what is wished for them.
type Joint = (
    u16,
    u16,
    usize,
    [u32; 2],
    &'static [u32],
    DenimWish,
    Pattern,
);

const JOINT: [Joint; 6] = [
    (3, 3, 1, [3, 2], &[5, 4], DenimWish::Apart, Pattern::Free),
    (3, 4, 1, [4, 3], &[8, 4], DenimWish::Apart, Pattern::Free),
    (3, 4, 2, [4, 3], &[7, 5], DenimWish::Apart, Pattern::Free),
    (3, 4, 1, [4, 3], &[5, 4, 3], DenimWish::Bands, Pattern::Free),
    (
        3,
        4,
        2,
        [4, 3],
        &[5, 3, 4],
        DenimWish::Any,
        Pattern::ShadeRows,
    ),
    (
        3,
        4,
        1,
        [4, 3],
        &[7, 5],
        DenimWish::Apart,
        Pattern::ShadeRows,
    ),
];

/// A throw with two or three denims, so many squares of each on the pile.
fn with_denims(case: &Joint) -> Throw {
    let mut denims = demo::denims();
    denims.push(Denim {
        name: "Worn jeans".into(),
        colour: "#55708f".into(),
    });
    denims.truncate(case.4.len());
    let plan = Plan {
        across: case.0,
        down: case.1,
        ..Plan::default()
    };
    let action = Command::Begin {
        name: "t".into(),
        plan,
        prints: demo::prints().into_iter().take(case.2).collect(),
        denims,
    };
    let mut throw = Throw::begin(&decide(None, &action).expect("a plan")[0]).expect("it begins");
    for (denim, count) in case.4.iter().enumerate() {
        let action = Command::AddPack {
            side: plan.side,
            count: Count::at_most(*count),
            makes: Use::Denim {
                denim: Some(denim as u8),
            },
            name: "squares".into(),
            mixed: false,
        };
        for event in decide(Some(&throw), &action).expect("a pack") {
            throw.apply(&event, 0);
        }
    }
    throw
}

fn search_joint(throw: &Throw, case: &Joint, seed: u64) -> Arranger {
    let wishes = Wishes {
        front: Count::at_most(case.3[0]),
        back: Count::at_most(case.3[1]),
        denims: Some(case.5),
        pattern: case.6,
        ..Wishes::default()
    };
    let mut arranger = Arranger::new(throw, wishes, seed);
    for _ in 0..ROUNDS {
        arranger.round();
    }
    arranger
}

fn denim_counts(arranger: &Arranger, denims: usize) -> Vec<usize> {
    let covers = arranger.covers();
    let of = |d: usize| covers.iter().filter(|c| usize::from(c.denim) == d).count();
    (0..denims).map(of).collect()
}

#[test]
fn joint_layouts_of_fabrics_and_denims_come_up_to_the_proven_optimum() {
    if std::env::var_os("LAPWORK_WRITE").is_some() {
        let asked: Vec<Value> = JOINT
            .iter()
            .map(|case| {
                let throw = with_denims(case);
                let arranger = search_joint(&throw, case, 1);
                let light: Vec<u8> = throw.denims.iter().map(|d| lightness(&d.colour)).collect();
                json!({"across": case.0, "down": case.1, "counts": counts(&arranger, case.2),
                       "denims": {"counts": denim_counts(&arranger, case.4.len()), "light": light,
                                  "wish": case.5, "shade-rows": case.6 == Pattern::ShadeRows}})
            })
            .collect();
        let text = format!("{:#}\n", json!(asked));
        std::fs::write(path("faces-joint-asked.json"), text).expect("a file");
        return;
    }
    let output = std::fs::read_to_string(path("faces-joint.json")).expect("the record");
    let output: Vec<Value> = serde_json::from_str(&output).expect("JSON");
    assert_eq!(output.len(), JOINT.len());
    for (case, output) in JOINT.iter().zip(output) {
        assert_eq!(output["status"], "OPTIMAL");
        let throw = with_denims(case);
        let costs: Vec<i64> = (1..=200)
            .map(|seed| search_joint(&throw, case, seed))
            .filter(|a| json!(counts(a, case.2)) == output["counts"])
            .take(8)
            .inspect(|a| {
                // All that is on the pile is used, no more and no less.
                assert_eq!(
                    json!(denim_counts(a, case.4.len())),
                    output["denims"]["counts"]
                );
                assert_eq!(json!(case.4), output["denims"]["counts"]);
            })
            .map(|a| a.cost())
            .collect();
        let best = *costs.iter().min().expect("a seed with these counts");
        let least = output["least"].as_f64().expect("a cost");
        let rounding = 4.0 * (1.0 + case.2 as f64);
        let there = costs
            .iter()
            .filter(|c| **c as f64 <= least + rounding)
            .count();
        println!(
            "{case:?}: proven {least:.1}, found {best}, {there} of {} seeds",
            costs.len()
        );
        assert!(
            (best as f64 - least).abs() <= rounding,
            "{case:?}: {best}, where {least} is proven"
        );
    }
}

/// The squared discrepancy that chance gives on average, and the least there can be, for
/// `n` of the squares of a grid.
fn chance_and_floor(across: u16, down: u16, n: usize) -> (f64, f64) {
    let kernel = |d: u16, of: u16| {
        let x = f64::from(d) / f64::from(of);
        1.5 - x * (1.0 - x)
    };
    let row: f64 = (0..down)
        .flat_map(|r| (0..across).map(move |c| kernel(r, down) * kernel(c, across)))
        .sum();
    let (all, n) = (f64::from(across) * f64::from(down), n as f64);
    let own = 1.5 * 1.5;
    let pairs = n * (n - 1.0) * (row - own) / (all - 1.0);
    (
        (n * own + pairs) / (n * n) - 16.0 / 9.0,
        row / all - 16.0 / 9.0,
    )
}

#[test]
fn unevenness_is_the_wrap_around_discrepancy() {
    let output = std::fs::read_to_string(path("faces.json")).expect("the record");
    let output: Value = serde_json::from_str(&output).expect("JSON");
    let sets = output["discrepancies"].as_array().expect("sets");
    assert_eq!(sets.len(), 60);
    for set in sets {
        let number = |key: &str| set[key].as_u64().expect("a number") as u16;
        let (across, down) = (number("across"), number("down"));
        let places: Vec<u16> = set["places"]
            .as_array()
            .expect("places")
            .iter()
            .map(|p| p.as_u64().expect("a place") as u16)
            .collect();
        let covered = Cover {
            front: Some(0),
            ..Cover::default()
        };
        let faces = places
            .iter()
            .map(|p| (Rect::square(p / across, p % across), covered))
            .collect();
        let throw = begun(across, down, 1).after(&[Event::FacesChanged {
            faces,
            again: None,
            by_hand: None,
        }]);
        let ours = of(&throw, Wishes::default()).uneven[0];
        let scipy = set["wd"].as_f64().expect("a figure");
        let (chance, floor) = chance_and_floor(across, down, places.len());
        if places.len() == usize::from(across) * usize::from(down) {
            assert_eq!(ours, 0, "all covered is even");
            continue;
        }
        let parts = 100.0 * (scipy - floor) / (chance - floor);
        // Ours is rounded down to whole parts of a hundred.
        assert!(
            (f64::from(ours) + 0.5 - parts).abs() < 0.51,
            "{across} × {down}, {places:?}: {ours} and {parts}"
        );
    }
}
