//! The statistics of the lap against the outside: SciPy, and a certified data set.

use lapwork_core::fitting::drift::{Deviation, DriftVerdict, drift};
use lapwork_core::measure::nm;
use serde_json::Value;

fn seen(across: &[i64], down: &[i64]) -> Vec<Deviation> {
    let pairs = across.iter().zip(down);
    pairs
        .map(|(a, d)| Deviation {
            across: nm(*a),
            down: nm(*d),
        })
        .collect()
}

/// SciPy 1.17.1 (PyPI), asked by `tests/outside/drift.py`: `describe`, `sem`,
/// `t.interval`, `ttest_1samp`, `linregress` and Welch's `ttest_ind` on 50 sets.
#[test]
fn a_general_statistics_library_agrees() {
    let sets: Vec<Value> =
        serde_json::from_str(include_str!("../outside/drift.json")).expect("recorded results");
    assert_eq!(sets.len(), 50);
    let mut worst = (0.0_f64, "");
    for set in &sets {
        let list = |name: &str| -> Vec<i64> {
            let numbers = set[name].as_array().expect(name).iter();
            numbers.map(|n| n.as_i64().expect(name)).collect()
        };
        let found = drift(&seen(&list("across"), &list("down")), nm(1_000_000));
        let (low, top) = found.interval.expect("an interval");
        let trend = found.trend.expect("a trend");
        for (name, ours) in [
            ("mean", found.mean),
            ("spread", found.spread.expect("a spread")),
            ("low", low),
            ("top", top),
            ("p", found.p.expect("a p")),
            ("slope", trend.slope),
            ("error", trend.error),
            ("slope_p", trend.p),
            ("welch_p", found.directions.expect("two directions").p),
        ] {
            let theirs = set[name].as_f64().expect(name);
            let gap = (ours - theirs).abs() / theirs.abs().max(f64::MIN_POSITIVE);
            if gap > worst.0 {
                worst = (gap, name);
            }
            assert!(gap < 1e-9, "{name}: {ours} against {theirs}");
        }
    }
    eprintln!("worst relative gap to SciPy: {:.1e} ({})", worst.0, worst.1);
}

/// NIST Statistical Reference Datasets, NumAcc1 (certified values quoted from
/// memory): 10000001, 10000003, 10000002 has mean 10000002 and standard deviation 1.
#[test]
fn nist_numacc1() {
    let numbers = [10_000_001, 10_000_003, 10_000_002];
    let found = drift(&seen(&numbers, &numbers), nm(1_000_000));
    let (mean, spread) = (found.mean * 1e6, found.spread.expect("a spread") * 1e6);
    assert!((mean - 10_000_002.0).abs() < 1e-7, "{mean}");
    assert!((spread - 1.0).abs() < 1e-12, "{spread}");
}

/// How often chance alone is taken for something, in 4,000 made-up throws of 6 and of
/// 12 fours each, with deviations about a bell curve (twelve dice) half a mark wide and wider.
///
/// Under half a mark the thresholds in marks hold back most alarms. However wide it is, three tests
/// at one in twenty raise no more than their sum, three in twenty (Boole's inequality).
#[test]
fn chance_alone_is_seldom_taken_for_more() {
    let mut state = 9_u64;
    let mut die = || {
        // A linear congruential step (Knuth's MMIX constants), its upper bits.
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (state >> 33) as f64 / f64::from(1_u32 << 31)
    };
    let few = [6, 12].map(|count| (count, 0.5, 400));
    let wide = [6, 12].map(|count| [1.0, 1.6, 3.0].map(|marks| (count, marks, 600)));
    for (count, marks, most) in few.into_iter().chain(wide.into_iter().flatten()) {
        let mut alarms = 0;
        for _ in 0..4000 {
            let mut off = || {
                let bell = (0..12).map(|_| die()).sum::<f64>() - 6.0;
                nm((bell * marks * 1e6) as i64)
            };
            let fours: Vec<_> = (0..count)
                .map(|_| Deviation {
                    across: off(),
                    down: off(),
                })
                .collect();
            alarms += u32::from(drift(&fours, nm(1_000_000)).verdict != DriftVerdict::AsPlanned);
        }
        eprintln!(
            "{count} fours, {marks} marks: {:.1} % false alarms",
            f64::from(alarms) / 40.0
        );
        assert!(alarms < most);
    }
}
