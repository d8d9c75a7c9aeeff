//! Checks against the outside: published factors, handbook arithmetic, a general
//! units library, and figures of the trade.

use lapwork_core::measure::{
    Digits, Fraction, Length, MetricUnit, Reading, Ruler, System, in_nm, nm, parse, read,
    read_exact, sixty_fourths, tenths_of_mm,
};
use lapwork_core::plan::assembly::{Assembly, Kind};
use lapwork_core::plan::{JoinOrder, Joining, Plan, Stitch, fringe};
use lapwork_core::throw::{Event, Throw};

fn typed(text: &str) -> Length {
    parse(text, Ruler::default()).unwrap_or_else(|e| panic!("{text}: {e:?}"))
}

/// NIST Handbook 44, Appendix C, and SP 811, Appendix B: 1 in = 25.4 mm, 1 ft = 0.3048 m,
/// 1 yd = 0.9144 m, all exactly.
#[test]
fn nist_factors_are_exact() {
    assert_eq!(typed("1 in"), typed("25.4 mm"));
    assert_eq!(typed("5 in"), typed("127 mm"));
    assert_eq!(typed("1 ft"), typed("0.3048 m"));
    assert_eq!(typed("1 yd"), typed("0.9144 m"));
    assert_eq!(typed("36 in"), typed("1 yd"));
    assert_eq!(sixty_fourths(1) * 64, typed("1 in"));
    assert_eq!(tenths_of_mm(254), typed("1 in"));
}

/// Pint 0.25.3 (PyPI), asked by `tests/outside/conversions.py`; 1,000 random lengths.
#[test]
fn a_general_units_library_agrees() {
    let rows = include_str!("../outside/conversions.csv");
    let mut checked = 0;
    for row in rows.lines().skip(1) {
        let (text, mm) = row.split_once(',').expect(row);
        let (whole, part) = mm.split_once('.').unwrap_or((mm, ""));
        assert!(part.len() <= 6, "{row}: finer than a nanometre");
        let want: i64 = format!("{whole}{part:0<6}").parse().expect(row);
        assert_eq!(in_nm(typed(text)), want, "{row}");
        checked += 1;
    }
    assert_eq!(checked, 1000);
}

/// The same 1,000 lengths read off every ruler differ from Pint by at most half a mark.
#[test]
fn what_is_shown_is_the_nearest_mark() {
    for row in include_str!("../outside/conversions.csv").lines().skip(1) {
        let (text, mm) = row.split_once(',').expect(row);
        let mm: f64 = mm.parse().expect(row);
        for (ruler, mark) in [
            (
                Ruler {
                    system: System::Inch,
                    fraction: Fraction::Eighth,
                    metric: MetricUnit::Mm,
                },
                25.4 / 8.0,
            ),
            (
                Ruler {
                    system: System::Inch,
                    fraction: Fraction::SixtyFourth,
                    metric: MetricUnit::Mm,
                },
                25.4 / 64.0,
            ),
            (
                Ruler {
                    system: System::Metric,
                    fraction: Fraction::Eighth,
                    metric: MetricUnit::Cm,
                },
                1.0,
            ),
        ] {
            let off = |reading: Reading| {
                let shown = match reading.digits {
                    Digits::Inches { whole, num, den } => {
                        (whole as f64 + num as f64 / den as f64) * 25.4
                    }
                    Digits::Mm { tenths } => tenths as f64 / 10.0,
                    Digits::Cm { hundredths } => hundredths as f64 / 10.0,
                };
                (shown - mm).abs()
            };
            let length = typed(text);
            let seen = off(read(length, ruler));
            assert!(seen <= mark / 2.0 + 1e-9, "{row}: {seen} mm beside it");
            // What is typed again has a metric length to the tenth.
            let fine = match ruler.system {
                System::Inch => mark,
                System::Metric => 0.1,
            };
            let exact = off(read_exact(length, ruler));
            assert!(exact <= fine / 2.0 + 1e-9, "{row}: {exact} mm beside it");
        }
    }
}

/// Plain arithmetic, and common practice (no source) where it agrees: s = 5 in, o = ½ in
/// give a 9½ in four and a 27½ × 36½ in throw of 6 × 8, by squares and by fours.
#[test]
fn sizes_of_the_trade() {
    let plan = Plan::default();
    assert_eq!(plan.natural_four(), typed("9 1/2 in"));
    assert_eq!((plan.run(2), plan.side), (typed("9 1/2"), typed("5")));
    assert_eq!(
        (plan.run(6), plan.run(8)),
        (typed("27 1/2"), typed("36 1/2"))
    );
    assert_eq!(plan.finished(), (typed("27 1/2"), typed("36 1/2")));
    assert_eq!(plan.squares(), 48);
}

/// Plain arithmetic: the fringe is half of what the lap has over the stitching. That
/// 1.175 mm is too little and 4.35 mm is right is common practice (no source).
#[test]
fn fringes_of_the_trade() {
    let twin = Stitch::Twin {
        spacing: typed("4.0 mm"),
    };
    assert_eq!(
        fringe(Joining::Lapped, typed("1/4 in"), twin),
        Some(typed("1.175 mm"))
    );
    assert_eq!(
        fringe(Joining::Lapped, typed("1/2 in"), twin),
        Some(typed("4.35 mm"))
    );
    let least = Plan::default().least_fringe;
    assert!(typed("1.175 mm") < least && least < typed("4.35 mm"));
}

/// Plain arithmetic: laps of unlike width, metric and inch, add up without loss.
#[test]
fn mixed_systems_add_exactly() {
    let plan = Plan {
        side: typed("12.7 cm"),
        lap: typed("1/2 in"),
        ..Plan::default()
    };
    assert_eq!(plan.finished(), Plan::default().finished());
    let sum = (0..640).fold(nm(0), |sum, _| sum + sixty_fourths(1) + tenths_of_mm(1));
    assert_eq!(sum, typed("10 in") + typed("64 mm"));
}

/// Plain arithmetic, for every grid to 60 × 60: the parts add up to the whole, in
/// squares, in blocks, and in finished size.
#[test]
fn the_parts_make_the_whole_for_every_grid() {
    let plan = Plan::default();
    for across in 1..=60u16 {
        for down in 1..=60u16 {
            let tried = Plan {
                across,
                down,
                ..plan
            };
            let assembly = Assembly::new(across, down, JoinOrder::Rows);
            let blocks = assembly.blocks();
            let squares: u32 = blocks.iter().map(|b| b.count()).sum();
            assert_eq!(squares, tried.squares());
            let count = |kind| blocks.iter().filter(|b| assembly.kind(**b) == kind).count() as u16;
            assert_eq!(count(Kind::Four), (across / 2) * (down / 2));
            assert_eq!(
                count(Kind::Pair),
                (across % 2) * (down / 2) + (down % 2) * (across / 2)
            );
            assert_eq!(count(Kind::Square), (across % 2) * (down % 2));
            assert_eq!(tried.finished(), (tried.run(across), tried.run(down)));
        }
    }
    // The fold of sizes over the tree of joins, on a sample that has every kind of edge.
    for (across, down) in [
        (1, 1),
        (1, 60),
        (60, 1),
        (2, 2),
        (59, 59),
        (60, 60),
        (7, 12),
        (13, 4),
    ] {
        let plan = Plan {
            across,
            down,
            ..plan
        };
        let begun = Event::Begun {
            name: "t".into(),
            plan,
            prints: vec![],
            denims: vec![],
            after: None,
        };
        let size = Throw::begin(&begun).expect("a beginning").finished();
        assert_eq!((size.width, size.height), plan.finished());
    }
}
