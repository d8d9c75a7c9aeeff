//! Cloth, thread and yields against published figures and handbook arithmetic.

use lapwork_core::cloth::cutting::{Cutting, Pile, bound, lay_out};
use lapwork_core::cloth::garments::{Garment, Piece, Precut, Source, fat_quarter, yardage};
use lapwork_core::cloth::thread::{RULE, Winding, for_throw, need, ratio};
use lapwork_core::cloth::weight::{
    Cloth, gsm_per_ounce, in_gsm, in_kilograms, mass, ounces, thick,
};
use lapwork_core::measure::{Count, System, half_inches, in_mm, inches, nm};
use lapwork_core::plan::{Plan, Stitch};

/// NIST Handbook 44, Appendix C, and SP 811, Appendix B: 1 oz = 28.349523125 g and
/// 1 yd = 0.9144 m exactly, so 1 oz/yd² = 33.9057 g/m².
#[test]
fn an_ounce_on_a_square_yard() {
    assert!((gsm_per_ounce() - 33.9057).abs() < 5e-5);
    assert!((in_gsm(ounces(1.0)) - 33.905_747_4).abs() < 1e-6);
    // 14 oz denim is 475 g/m² to the gram.
    assert_eq!(in_gsm(ounces(14.0)).round(), 475.0);
}

/// A fifth of the cloth in a throw lies in laps: 6 × 8 of 5 in and ½ in laps is 27½ × 36½ in,
/// 1003¾ in², of 1200 in² of squares.
#[test]
fn laps_weigh_twice() {
    let plan = Plan::default();
    let kg = in_kilograms(mass(&plan, 0, &Cloth::denim(), &Cloth::cotton()));
    let (w, h) = plan.finished();
    let bare = in_mm(w) * in_mm(h) / 1e6 * in_gsm(Cloth::denim().weight) / 1000.0;
    let want = (1200.0 + 134.0) / (27.5 * 36.5);
    assert!((kg / bare - want).abs() < 1e-9);
}

/// The textbook's worked example (textilecalculations.com, "sewing thread consumption"):
/// T = 0.01 in, S = 10 per in → 2.2.
#[test]
fn the_textbook_example() {
    let tenth_inch = nm(2_540_000);
    let got = ratio(Stitch::Straight, tenth_inch, thick(0.254)).unwrap();
    assert!((got.total() - 2.2).abs() < 1e-12);
    assert!((got.needle - got.bobbin).abs() < 1e-12);
}

/// Thread makers' guides: 2.5 of thread per length of 301, 220 cm of seam → 550 cm; and
/// where thickness and stitch make T·S a quarter, geometry says the same.
#[test]
fn the_rule_of_thread_makers() {
    let bare = Winding {
        waste: 0.0,
        ..Winding::default()
    };
    let seam = nm(2_200_000_000);
    let got = need(seam, Stitch::Straight, nm(3_000_000), thick(0.75), bare).unwrap();
    assert_eq!(got.rule, Some(nm(5_500_000_000)));
    assert!((got.ratio - RULE).abs() < 1e-12);
    assert_eq!(got.total(), nm(5_500_000_000));
}

/// The 6 × 8 throw in denim, 3 mm stitches: a lap is 1.9 mm, so a straight row takes
/// 2 + 2 × 1.9 / 3 = 3.27 and the rule falls short; a twin needle takes two spools.
#[test]
fn a_throw_by_hand() {
    let cloths = [&Cloth::denim(), &Cloth::cotton()];
    let straight = Plan {
        stitch: Stitch::Straight,
        ..Plan::default()
    };
    let got = for_throw(&straight, 0, cloths, Winding::default()).unwrap();
    // The binding is one straight row through three layers, 2.85 mm.
    let (joined, bound) = (392.5, 132.0);
    let in_all =
        |joins: f64| (joins * joined + (2.0 + 2.0 * 2.85 / 3.0) * bound) / (joined + bound);
    assert!((got.ratio - in_all(2.0 + 2.0 * 1.9 / 3.0)).abs() < 1e-9);
    // 234 + 76 + 82½ in of joins and 132 in of binding.
    assert_eq!(got.seam, half_inches(1049));
    assert!(got.rule.unwrap() < got.total());
    let twin = for_throw(&Plan::default(), 0, cloths, Winding::default()).unwrap();
    // Needles 1 + 1.9/3 each; bobbin 4 across and √(3² + 4²) on, and twice 1.9, every 3 mm.
    let bobbin = (4.0 + 5.0 + 2.0 * 1.9) / 3.0;
    assert!((twin.ratio - in_all(2.0 * (1.0 + 1.9 / 3.0) + bobbin)).abs() < 1e-9);
    assert_eq!((twin.needles, twin.spools, twin.rule), (2, 2, None));
    // Two rows with a single needle: each join twice as much as one row, off one spool.
    let rows = Plan {
        stitch: Stitch::TwoRows {
            spacing: nm(5_000_000),
        },
        ..straight
    };
    let rows = for_throw(&rows, 0, cloths, Winding::default()).unwrap();
    assert!((rows.ratio - in_all(2.0 * (2.0 + 2.0 * 1.9 / 3.0))).abs() < 1e-9);
    assert_eq!((rows.needles, rows.spools, rows.seam), (1, 1, got.seam));
    assert_eq!(in_mm(rows.needle).round(), in_mm(rows.bobbin).round());
    // Stitches of 4 mm instead of 3 take less: 1.9 / 4 for every row.
    let longer = Plan {
        stitch_length: Some(nm(4_000_000)),
        ..straight
    };
    let longer = for_throw(&longer, 0, cloths, Winding::default()).unwrap();
    let each = |thick: f64| 2.0 + 2.0 * thick / 4.0;
    let want = (each(1.9) * joined + each(2.85) * bound) / (joined + bound);
    assert!((longer.ratio - want).abs() < 1e-9);
    // A straight 14 × 18 by hand: 13 seams of 81½ in, 17 of 63½ in and 290 in of binding are
    // 2,429 in (61.7 m). At 1.63 of needle thread in the laps and 1.95 in the binding and 15 % over
    // that is 119 m, off one spool of 200 m; with as much again on the bobbins it is 237 m, and
    // takes a second.
    let large = Plan {
        across: 14,
        down: 18,
        ..straight
    };
    let need = for_throw(&large, 0, cloths, Winding::default()).unwrap();
    assert_eq!((need.spools, need.spools_in_all), (1, 2));
    let metres = in_mm(twin.total()) / 1000.0;
    assert!((metres / (524.5 * 0.0254 * twin.ratio * 1.15) - 1.0).abs() < 1e-6);
}

/// 5 in squares: a fat quarter 18 × 22 in gives 12, one of 50 × 55 cm gives 12, a yard of
/// 42 in usable width 56, packs what was counted. (Arithmetic.)
#[test]
fn yields_of_bought_cloth() {
    let check = |piece: &Piece, step: System, want| {
        let how = Cutting {
            step: Cutting::usual_step(step),
            ..Cutting::default()
        };
        assert_eq!(lay_out(piece, &how).unwrap().count, want);
        assert_eq!(bound(piece, &how), Ok(want));
    };
    for step in [System::Inch, System::Metric] {
        check(&fat_quarter(System::Inch), step, 12);
        check(&fat_quarter(System::Metric), step, 12);
        check(&yardage(inches(42), inches(36)), step, 56);
    }
    let cloth = |name: &str, piece| {
        Source::Cloth(Garment {
            name: name.into(),
            pieces: vec![piece],
            start: None,
        })
    };
    let pack = |side, count| {
        Source::Precut(Precut {
            name: "charm".into(),
            side,
            count: Count::from(count),
        })
    };
    let sources = [
        cloth("stripe", fat_quarter(System::Inch)),
        pack(inches(5), 42),
        cloth("dots", yardage(inches(42), inches(36))),
        pack(inches(10), 10),
    ];
    let pile = Pile::lay_out(&sources, Cutting::default());
    let each: Vec<_> = pile.yields().iter().map(|y| y.count()).collect();
    assert_eq!(each, [12, 42, 56, 40]);
    assert_eq!(pile.total(), 150);
}
