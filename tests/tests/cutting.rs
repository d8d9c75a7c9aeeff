//! The layout of a piece against the outside: every choice of strips on small pieces, a
//! general mixed-integer solver (crate `microlp` through `good_lp`) on larger ones, and
//! every placing at all on tiny ones; and what realistic pieces give.

use good_lp::{Expression, ProblemVariables, Solution, SolverModel, constraint, microlp, variable};
use lapwork_core::cloth::cutting::{Cutting, bound, expected, free_yield, lay_out, naive};
use lapwork_core::cloth::garments::{
    GarmentKind, GarmentPart, GarmentSize, Guess, OutlineStation, Piece, PieceFault, Zone,
    ZoneKind, fat_quarter, start,
};
use lapwork_core::cloth::ways::{CutWay, offers, squares};
use lapwork_core::measure::{Length, System, in_nm, inches, nm};

/// The same numbers every time: a linear congruential step (Knuth's MMIX constants), its
/// upper bits.
struct Dice(u64);

impl Dice {
    fn between(&mut self, low: i64, high: i64) -> i64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        low + ((self.0 >> 33) as i64) % (high - low + 1)
    }
}

/// The unit of the random pieces, the least common multiple of 1 to 22 in nanometres: edges
/// between stations so far apart fall on whole nanometres at every whole unit.
const UNIT: i64 = 232_792_560;

fn unit(count: i64) -> Length {
    nm(count * UNIT)
}

fn units(length: Length) -> f64 {
    in_nm(length) as f64 / UNIT as f64
}

fn hole([from, to, left, right]: [i64; 4]) -> Zone {
    Zone {
        kind: ZoneKind::Hole,
        from: inches(from),
        to: inches(to),
        left: inches(left),
        right: inches(right),
    }
}

/// A piece in whole units: `long` high in `bends` stretches, at most `wide`, with holes.
fn piece(dice: &mut Dice, long: i64, wide: i64, bends: i64, holes: i64) -> Piece {
    let station = |dice: &mut Dice, at| OutlineStation {
        at: unit(at),
        left: unit(dice.between(0, wide / 4)),
        right: unit(dice.between(wide / 2, wide)),
    };
    let stations = (0..=bends).map(|i| station(dice, long * i / bends));
    let mut piece = Piece {
        part: GarmentPart::Cloth,
        stations: stations.collect(),
        zones: Vec::new(),
    };
    for _ in 0..holes {
        let (from, left) = (dice.between(0, long - 1), dice.between(0, wide - 1));
        let (high, broad) = (dice.between(1, 3), dice.between(1, wide / 3));
        piece
            .zones
            .push(hole([from, from + high, left, left + broad]));
        if let Err(PieceFault::ZoneOutside(_)) = piece.check() {
            piece.zones.pop();
        }
    }
    piece
}

fn by_units(side: i64) -> Cutting {
    Cutting {
        side: unit(side),
        step: unit(1),
        ..Cutting::default()
    }
}

/// Whether a square lies inside and clear, asked at 80 heights of it and the
/// stations themselves by floating point: nothing in common with how it is laid out.
fn fits(piece: &Piece, left: f64, from: f64, side: f64) -> bool {
    let mut heights: Vec<f64> = (0..=80)
        .map(|k| from + side * f64::from(k) / 80.0)
        .collect();
    let stations = piece.stations.iter().map(|s| units(s.at));
    heights.extend(stations.filter(|y| (from..=from + side).contains(y)));
    let inside = heights.into_iter().all(|y| {
        piece.stations.windows(2).any(|w| {
            let (y0, y1) = (units(w[0].at), units(w[1].at));
            let part = (y - y0) / (y1 - y0);
            let edge = |a: Length, b: Length| units(a) + (units(b) - units(a)) * part;
            (y0 - 1e-9..=y1 + 1e-9).contains(&y)
                && edge(w[0].left, w[1].left) <= left + 1e-7
                && edge(w[0].right, w[1].right) >= left + side - 1e-7
        })
    });
    inside
        && piece.zones.iter().all(|z| {
            units(z.to) <= from + 1e-9
                || units(z.from) >= from + side - 1e-9
                || units(z.right) <= left + 1e-9
                || units(z.left) >= left + side - 1e-9
        })
}

/// Squares of one strip: the most, by trying to begin at the edge and behind
/// every hole.
fn strip(piece: &Piece, from: f64, side: f64) -> u32 {
    let [_, _, left, right] = piece.reach();
    let mut starts: Vec<f64> = piece.zones.iter().map(|z| units(z.right)).collect();
    // Where the left edge comes farthest in over the strip.
    let mut edge = f64::MIN;
    for w in piece.stations.windows(2) {
        let (y0, y1) = (units(w[0].at), units(w[1].at));
        for y in [from.clamp(y0, y1), (from + side).clamp(y0, y1)] {
            if (from..=from + side).contains(&y) {
                let part = (y - y0) / (y1 - y0);
                edge = edge.max(units(w[0].left) + (units(w[1].left) - units(w[0].left)) * part);
            }
        }
    }
    starts.push(edge);
    // Every run of squares may as well begin at one of these, shifted left until it touches.
    starts.sort_by(f64::total_cmp);
    let (mut at, mut count) = (units(left), 0);
    while at + side <= units(right) + 1e-7 {
        if fits(piece, at, from, side) {
            count += 1;
            at += side;
        } else {
            match starts.iter().find(|s| **s > at + 1e-9) {
                Some(next) => at = *next,
                None => break,
            }
        }
    }
    count
}

/// The most squares by trying every set of strips.
fn exhaustive(counts: &[u32], side: usize) -> u32 {
    let mut most = 0;
    for set in 0_u32..1 << counts.len() {
        let taken: Vec<usize> = (0..counts.len()).filter(|i| set >> i & 1 == 1).collect();
        if taken.windows(2).all(|w| w[1] - w[0] >= side) {
            most = most.max(taken.iter().map(|i| counts[*i]).sum());
        }
    }
    most
}

#[test]
fn no_choice_of_strips_gives_more_on_small_pieces() {
    let mut dice = Dice(7);
    let mut zoned = 0;
    for round in 0..300 {
        let side = dice.between(2, 4);
        let long = dice.between(side, side + 11);
        let (bends, holes) = (dice.between(1, 3).min(long), dice.between(0, 3));
        let piece = piece(&mut dice, long, 14, bends, holes);
        zoned += usize::from(!piece.zones.is_empty());
        let counts: Vec<u32> = (0..=long - side)
            .map(|y| strip(&piece, y as f64, side as f64))
            .collect();
        let want = exhaustive(&counts, side as usize);
        let got = lay_out(&piece, &by_units(side)).unwrap().count;
        assert_eq!(got, want, "round {round}: {piece:?}");
    }
    assert!(zoned > 150);
}

/// The most squares by strips as a programme: one variable for each place, at most one
/// strip over each unit.
fn solved(counts: &[u32], side: usize) -> f64 {
    let mut vars = ProblemVariables::new();
    let strips: Vec<_> = counts
        .iter()
        .map(|_| vars.add(variable().binary()))
        .collect();
    let total: Expression = strips
        .iter()
        .zip(counts)
        .map(|(x, n)| f64::from(*n) * *x)
        .sum();
    let rules = strips.windows(side.min(strips.len())).map(|over| {
        let sum: Expression = over.iter().copied().sum();
        constraint!(sum <= 1.0)
    });
    let rules: Vec<_> = rules.collect();
    let model = vars.maximise(total.clone()).using(microlp).with_all(rules);
    model.solve().expect("a solution").eval(total)
}

#[test]
fn a_general_solver_finds_no_more_on_long_pieces() {
    let mut dice = Dice(11);
    for round in 0..20 {
        let side = dice.between(4, 7);
        let long = dice.between(40, 80);
        let piece = piece(&mut dice, long, 50, 5, 9);
        let counts: Vec<u32> = (0..=long - side)
            .map(|y| strip(&piece, y as f64, side as f64))
            .collect();
        let want = solved(&counts, side as usize);
        let got = lay_out(&piece, &by_units(side)).unwrap().count;
        assert!(
            (f64::from(got) - want).abs() < 1e-6,
            "round {round}: {got} {want}"
        );
    }
}

/// The most squares by strips measured from both edges, as a programme: one variable for each
/// mark from below and for each from above, and one rule for each two that may not both be taken:
/// they overlap, or the one from below is not under the one from above.
fn solved_from_both(piece: &Piece, long: i64, side: i64, step: i64) -> f64 {
    let mut vars = ProblemVariables::new();
    let mut strips = Vec::new();
    for k in 0..=(long - side) / step {
        for (from, above) in [(k * step, false), (long - side - k * step, true)] {
            let squares = strip(piece, from as f64, side as f64);
            strips.push((from, above, squares, vars.add(variable().binary())));
        }
    }
    let total: Expression = strips.iter().map(|s| f64::from(s.2) * s.3).sum();
    let mut rules = Vec::new();
    for (i, a) in strips.iter().enumerate() {
        for b in &strips[i + 1..] {
            let meet = (a.0 - b.0).abs() < side;
            let crossed = a.1 != b.1 && (a.0 < b.0) == a.1;
            if meet || crossed {
                rules.push(constraint!(a.3 + b.3 <= 1.0));
            }
        }
    }
    let model = vars.maximise(total.clone()).using(microlp).with_all(rules);
    model.solve().expect("a solution").eval(total)
}

#[test]
fn a_general_solver_finds_no_more_from_both_edges() {
    let mut dice = Dice(17);
    let mut gains = 0;
    for round in 0..150 {
        // The length seldom falls on the marks from the lower edge.
        let step = dice.between(2, 4);
        let side = step * dice.between(1, 2);
        let long = dice.between(side * 2, 24);
        let (bends, holes) = (dice.between(1, 3), dice.between(1, 5));
        // So narrow that a hole takes a whole strip.
        let wide = side * 2 + dice.between(0, 2);
        let piece = piece(&mut dice, long, wide, bends, holes);
        let how = Cutting {
            step: unit(step),
            ..by_units(side)
        };
        let both = Cutting {
            both_edges: true,
            ..how
        };
        let want = solved_from_both(&piece, long, side, step);
        let [one, got] = [how, both].map(|how| lay_out(&piece, &how).unwrap().count);
        assert!(
            (f64::from(got) - want).abs() < 1e-6,
            "round {round}: {got} {want} {piece:?}"
        );
        assert!(got <= bound(&piece, &how).unwrap());
        gains += usize::from(got > one);
    }
    eprintln!("both edges give more than one on {gains} of 150 pieces");
    assert!(gains > 5, "{gains}");
}

/// Squares anywhere on whole units, by the solver: a free placing, which the bound must
/// never be under, nor strips or the freer layouts above.
fn anywhere(piece: &Piece, side: i64) -> f64 {
    let [_, high, _, right] = piece.reach().map(|l| in_nm(l) / UNIT);
    let mut vars = ProblemVariables::new();
    let mut spots = Vec::new();
    for y in 0..=high - side {
        for x in 0..=right - side {
            if fits(piece, x as f64, y as f64, side as f64) {
                spots.push((x, y, vars.add(variable().binary())));
            }
        }
    }
    let total: Expression = spots.iter().map(|s| s.2).sum();
    let mut rules = Vec::new();
    for y in 0..high {
        for x in 0..right {
            let over: Vec<_> = spots
                .iter()
                .filter(|s| (s.0..s.0 + side).contains(&x) && (s.1..s.1 + side).contains(&y))
                .map(|s| s.2)
                .collect();
            if over.len() > 1 {
                let sum: Expression = over.into_iter().sum();
                rules.push(constraint!(sum <= 1.0));
            }
        }
    }
    let model = vars.maximise(total.clone()).using(microlp).with_all(rules);
    model.solve().expect("a solution").eval(total)
}

#[test]
fn no_placing_at_all_beats_the_bound() {
    let mut dice = Dice(13);
    let (mut met, mut rounds) = (0, 0);
    for _ in 0..40 {
        let side = dice.between(2, 3);
        let holes = dice.between(1, 4);
        let mut piece = piece(&mut dice, 9, 9, 1, holes);
        // Upright edges, so that whole units lose nothing: then the solver's is the most.
        piece.stations[1].left = piece.stations[0].left;
        piece.stations[1].right = piece.stations[0].right;
        piece
            .zones
            .retain(|z| z.left < piece.stations[0].right && z.right > piece.stations[0].left);
        let how = by_units(side);
        let most = anywhere(&piece, side).round() as u32;
        let limit = bound(&piece, &how).unwrap();
        assert!(most <= limit, "{most} {limit} {piece:?}");
        assert!(free_yield(&piece, &how).unwrap().count <= most, "{piece:?}");
        met += usize::from(most == limit);
        rounds += 1;
    }
    eprintln!("the bound is met in {met} of {rounds} tiny pieces");
}

/// Ten realistic pieces, 5 in squares, 1/8 in: strips as laid out, strips from the hem up,
/// the freer layout, and the bound.
#[test]
fn ten_realistic_pieces() {
    use GarmentKind::{ChildsJeans, JacketBack, MensJeans, Sheet, Skirt, WomensJeans};
    use GarmentSize::{Large, Medium, Small};
    let first = |kind, size, guess| start(kind, size, guess, System::Inch).remove(0);
    let stained = |mut piece: Piece, zones: &[[i64; 4]]| {
        piece.zones.extend(zones.iter().map(|zone| hole(*zone)));
        piece
    };
    let pieces = [
        ("men's leg M", first(MensJeans, Medium, Guess::Typical)),
        (
            "men's leg L, torn at 12 in",
            stained(
                first(MensJeans, Large, Guess::Typical),
                &[[12, 14, -8, -5], [24, 25, 3, 5]],
            ),
        ),
        ("men's leg S, low", first(MensJeans, Small, Guess::Low)),
        ("women's leg M", first(WomensJeans, Medium, Guess::Typical)),
        (
            "women's leg L, high",
            first(WomensJeans, Large, Guess::High),
        ),
        ("child's leg L", first(ChildsJeans, Large, Guess::Typical)),
        ("jacket back M", first(JacketBack, Medium, Guess::Typical)),
        ("skirt M", first(Skirt, Medium, Guess::Typical)),
        (
            "sheet S, worn in the middle",
            stained(
                first(Sheet, Small, Guess::Typical),
                &[[40, 58, -12, 13], [17, 18, 20, 22]],
            ),
        ),
        ("fat quarter", fat_quarter(System::Inch)),
    ];
    let how = Cutting::default();
    eprintln!(
        "{:28} {:>5} {:>5} {:>5} {:>5}",
        "", "naive", "ours", "free", "bound"
    );
    let mut sums = [0; 4];
    for (name, piece) in &pieces {
        let ours = lay_out(piece, &how).unwrap().count;
        let free = free_yield(piece, &how).unwrap();
        let row = [
            naive(piece, &how).unwrap(),
            ours,
            free.count,
            bound(piece, &how).unwrap(),
        ];
        eprintln!(
            "{name:28} {:5} {:5} {:5} {:5}  {:?}",
            row[0], row[1], row[2], row[3], free.way
        );
        assert!(row.is_sorted(), "{name}: {row:?}");
        for (sum, n) in sums.iter_mut().zip(row) {
            *sum += n;
        }
    }
    eprintln!(
        "{:28} {:5} {:5} {:5} {:5}",
        "all", sums[0], sums[1], sums[2], sums[3]
    );
    // What the whole list gives, so that a loss is seen.
    assert!(sums[1] > sums[0]);
}

/// A leg as a tape would measure it, in whole millimetres: tapered, with its ridge and its hem,
/// and a worn knee on most.
fn measured_leg(dice: &mut Dice) -> Piece {
    let mm = |n: i64| nm(n * 1_000_000);
    let (long, hem) = (dice.between(680, 860), dice.between(300, 440));
    let (knee, thigh) = (hem + dice.between(20, 70), hem + dice.between(140, 280));
    let station = |at: i64, wide: i64| OutlineStation {
        at: mm(at),
        left: mm(-(wide * 55 / 100)),
        right: mm(wide - wide * 55 / 100),
    };
    let bend = long * 11 / 20;
    let zone = |kind, [from, to, left, right]: [i64; 4]| Zone {
        kind,
        from: mm(from),
        to: mm(to),
        left: mm(left),
        right: mm(right),
    };
    let mut zones = vec![
        zone(ZoneKind::Outseam, [0, long, -10, 10]),
        zone(ZoneKind::Hem, [0, 25, -thigh, thigh]),
    ];
    if dice.between(0, 3) > 0 {
        let (half, from) = (dice.between(30, 90), dice.between(10, 40));
        let wide = dice.between(60, 120);
        zones.push(zone(
            ZoneKind::Knee,
            [bend - half, bend + half, from, from + wide],
        ));
    }
    Piece {
        part: GarmentPart::LeftLeg,
        stations: vec![station(0, hem), station(bend, knee), station(long, thigh)],
        zones,
    }
}

/// What the other ways give on a hundred legs, squares of 5 in and of 12.5 cm: none less than the
/// plain way where it is offered, none more than the bound.
#[test]
fn other_ways_on_a_hundred_legs() {
    for (name, side) in [("5 in", inches(5)), ("12.5 cm", nm(125_000_000))] {
        let mut dice = Dice(19);
        let how = Cutting {
            side,
            ..Cutting::default()
        };
        let (mut sums, mut gained, mut freely) = ([0; 6], [0; 3], 0);
        for _ in 0..100 {
            let leg = measured_leg(&mut dice);
            let plain = squares(&leg, &how, CutWay::PLAIN);
            let [both, turned, all] = CutWay::OTHERS.map(|way| squares(&leg, &how, way));
            let limit = bound(&leg, &how).unwrap();
            let best = plain.max(both).max(turned).max(all);
            assert!(both >= plain && all >= turned && best <= limit);
            // Not held to the strips' lines; squares at different heights side by side are not tried.
            let free = free_yield(&leg, &how).unwrap().count;
            assert!(free >= plain && free <= limit);
            freely += free;
            let offered = offers(&leg, &how);
            assert!(offered.iter().all(|(_, n)| *n > plain));
            assert_eq!(offered.iter().map(|(_, n)| *n).fold(plain, u32::max), best);
            for (sum, n) in sums.iter_mut().zip([plain, both, turned, all, best, limit]) {
                *sum += n;
            }
            for (n, count) in gained.iter_mut().zip([both, turned, all]) {
                *n += u32::from(count > plain);
            }
        }
        let [plain, both, turned, all, best, limit] = sums;
        eprintln!(
            "{name}: plain {plain}, both edges {both} (more on {}), turned {turned} (more on {}), \
             both {all} (more on {}), the best way of each {best}, bands of either kind {freely}, \
             bound {limit}",
            gained[0], gained[1], gained[2]
        );
        assert!(best > plain);
    }
}

/// Common practice, no source: two pairs of men's jeans gave 53 five-inch squares. Two
/// pairs of a middling size must bracket that before anything was measured.
#[test]
fn two_pairs_of_mens_jeans_bracket_fifty_three() {
    let how = Cutting::default();
    let pair = expected(GarmentKind::MensJeans, GarmentSize::Medium, &how).unwrap();
    let two = [pair.low, pair.typical, pair.high].map(|n| n * 2);
    eprintln!("two pairs: {two:?}");
    assert!(two.is_sorted());
    assert!(two[0] <= 53 && 53 <= two[2], "{two:?}");
    // An estimate that says anything: within half again.
    assert!(two[2] * 2 <= two[0] * 3, "{two:?}");
}
