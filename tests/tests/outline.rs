//! The fitted piece against the outside: a general geometry library, and a search
//! that knows nothing of the method.

use geo::{Contains, Coord, Distance, Euclidean, LineString, Point, Polygon};
use lapwork_core::measure::outline::{Measures, Outline, OutlineFault, Sides, Spot};
use lapwork_core::measure::{Length, from_mm, in_mm};

/// Numbers in 0..1 that are the same every time: a linear congruential step (Knuth's
/// MMIX constants), its upper bits.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as f64 / f64::from(1_u32 << 31)
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.roll()
    }
}

/// A block of one of four kinds: any quadrilateral, a parallelogram, a trapezoid, or
/// nearly a rectangle.
fn block(dice: &mut Dice, kind: usize) -> [Spot; 4] {
    let (w, h) = (dice.between(60.0, 500.0), dice.between(60.0, 500.0));
    match kind % 4 {
        0 => {
            let mut jog = |x: f64, y: f64| {
                let by = 0.12;
                (x + w * dice.between(-by, by), y + h * dice.between(-by, by))
            };
            [jog(0.0, 0.0), jog(w, 0.0), jog(w, h), jog(0.0, h)]
        }
        1 => {
            let lean = h * dice.between(-0.25, 0.25);
            [(0.0, 0.0), (w, 0.0), (w + lean, h), (lean, h)]
        }
        2 => {
            let (a, b) = (dice.between(-0.1, 0.1) * w, dice.between(-0.1, 0.1) * w);
            [(0.0, 0.0), (w, 0.0), (w + b, h), (a, h)]
        }
        _ => {
            let mut jog =
                |x: f64, y: f64| (x + dice.between(-2.0, 2.0), y + dice.between(-2.0, 2.0));
            [jog(0.0, 0.0), jog(w, 0.0), jog(w, h), jog(0.0, h)]
        }
    }
}

fn apart(a: Spot, b: Spot) -> f64 {
    (a.0 - b.0).hypot(a.1 - b.1)
}

/// The outline from the lengths a tape would give.
fn outline(corners: [Spot; 4]) -> Outline {
    let [tl, tr, br, bl] = corners;
    let long = |a, b| from_mm(apart(a, b));
    Outline::new(Measures {
        sides: Sides {
            top: long(tl, tr),
            right: long(tr, br),
            bottom: long(br, bl),
            left: long(bl, tl),
        },
        diagonals: Some((long(tl, br), long(tr, bl))),
    })
    .expect("a block that can be")
}

fn polygon(corners: [Spot; 4]) -> Polygon {
    let ring = corners.iter().map(|c| Coord { x: c.0, y: c.1 }).collect();
    Polygon::new(LineString::new(ring), vec![])
}

/// A rectangle about a middle.
fn piece(w: f64, h: f64, middle: Spot, turn: f64) -> [Spot; 4] {
    let (sin, cos) = turn.sin_cos();
    [(-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5)].map(|(x, y)| {
        let (x, y) = (x * w, y * h);
        (middle.0 + x * cos - y * sin, middle.1 + x * sin + y * cos)
    })
}

/// The largest scale at one turn, from the primal side: wherever three sides are
/// touched at once, if the fourth allows it. Unknown middle (x, y) and scale s.
fn at_turn(corners: [Spot; 4], w: f64, h: f64, turn: f64) -> f64 {
    // Each side as a·x + b·y − r·s ≥ c.
    let offsets = piece(w, h, (0.0, 0.0), turn);
    let sides: [[f64; 4]; 4] = std::array::from_fn(|i| {
        let (from, to) = (corners[i], corners[(i + 1) % 4]);
        let long = apart(from, to);
        let (a, b) = ((from.1 - to.1) / long, (to.0 - from.0) / long);
        let r = offsets
            .iter()
            .map(|o| -(a * o.0 + b * o.1))
            .fold(f64::MIN, f64::max);
        [a, b, r, a * from.0 + b * from.1]
    });
    let det = |m: [[f64; 3]; 3]| {
        m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
            - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
            + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0])
    };
    let mut best = 0.0_f64;
    for skip in 0..4 {
        let rows: Vec<_> = (0..4).filter(|i| *i != skip).map(|i| sides[i]).collect();
        let with = |column: usize| {
            det(std::array::from_fn(|i| {
                let [a, b, r, c] = rows[i];
                let mut row = [a, b, -r];
                if column < 3 {
                    row[column] = c;
                }
                row
            }))
        };
        let whole = with(3);
        if whole.abs() < 1e-9 {
            continue;
        }
        let [x, y, s] = [0, 1, 2].map(|column| with(column) / whole);
        let [a, b, r, c] = sides[skip];
        if a * x + b * y - r * s >= c - 1e-7 {
            best = best.max(s);
        }
    }
    best
}

/// The largest scale over turns within 10°: 2,001 of them, then twice finer about the best.
fn searched(corners: [Spot; 4], w: f64, h: f64) -> f64 {
    let widest = 10.0_f64.to_radians();
    let (mut middle, mut reach, mut best) = (0.0, widest, 0.0);
    for steps in [1000, 100, 100, 100] {
        let from = middle;
        for step in -steps..=steps {
            let turn: f64 = from + reach * f64::from(step) / f64::from(steps);
            let scale = at_turn(corners, w, h, turn.clamp(-widest, widest));
            if scale > best {
                (best, middle) = (scale, turn.clamp(-widest, widest));
            }
        }
        reach *= 1.5 / f64::from(steps);
    }
    best
}

/// geo 0.33 (crates.io) finds the largest piece inside the outline, on 600 blocks.
#[test]
fn a_general_geometry_library_finds_the_piece_inside() {
    let mut dice = Dice(1);
    let mut worst = 0.0_f64;
    for kind in 0..600 {
        let outline = outline(block(&mut dice, kind));
        let edge = polygon(outline.corners());
        let (w, h) = (dice.between(40.0, 300.0), dice.between(40.0, 300.0));
        let fit = outline.largest(from_mm(w), from_mm(h)).expect("a fit");
        for corner in fit.corners {
            worst = worst.max(Euclidean.distance(&Point::from(corner), &edge));
        }
        let (w, h) = (in_mm(fit.width), in_mm(fit.height));
        let turn = fit.turn.to_radians();
        let inner = piece(w - 2e-6, h - 2e-6, fit.centre, turn);
        assert!(edge.contains(&polygon(inner)), "{outline:?} {fit:?}");
        // A little larger never goes in, here or nearby.
        for _ in 0..100 {
            let mut jog = |by: f64| dice.between(-by, by);
            let middle = (fit.centre.0 + jog(0.3), fit.centre.1 + jog(0.3));
            let turn = (turn + jog(0.01)).clamp(-10.0_f64.to_radians(), 10.0_f64.to_radians());
            let larger = polygon(piece(w + 0.01, h + 0.01 * h / w, middle, turn));
            assert!(!edge.contains(&larger), "{outline:?} {fit:?}");
        }
    }
    eprintln!("farthest a piece stands out of its outline, by geo: {worst:.1e} mm");
    assert!(worst < 1e-6);
}

/// A plain search of turns, with the primal programme solved by trying every corner of
/// it, finds nothing larger.
#[test]
fn a_plain_search_finds_nothing_larger() {
    let mut dice = Dice(2);
    let (mut theirs, mut ours) = (0.0_f64, 0.0_f64);
    for kind in 0..400 {
        let outline = outline(block(&mut dice, kind));
        let (w, h) = (dice.between(40.0, 300.0), dice.between(40.0, 300.0));
        let (w, h) = (in_mm(from_mm(w)), in_mm(from_mm(h)));
        let fit = outline.largest(from_mm(w), from_mm(h)).expect("a fit");
        let gap = (searched(outline.corners(), w, h) - fit.scale) * w.max(h);
        theirs = theirs.max(gap);
        ours = ours.max(-gap);
        assert!(gap < 0.01, "{outline:?} {fit:?}: {gap} mm");
    }
    eprintln!("the search is larger by {theirs:.1e} mm at most, smaller by {ours:.1e} mm at most");
    assert!(ours < 0.01);
}

/// geo finds the placed piece inside, and no random placement with its middle nearer to
/// the crossing.
#[test]
fn nothing_is_placed_nearer_to_the_crossing() {
    let mut dice = Dice(3);
    let (mut placed, mut away) = (0, 0);
    for kind in 0..400 {
        let outline = outline(block(&mut dice, kind));
        let edge = polygon(outline.corners());
        let (w, h) = (dice.between(40.0, 300.0), dice.between(40.0, 300.0));
        let fit = outline.largest(from_mm(w), from_mm(h)).expect("a fit");
        let by = dice.between(0.9, 1.01);
        let size = |l: Length| from_mm(in_mm(l) * by);
        let (width, height) = (size(fit.width), size(fit.height));
        let middle = outline.middle();
        let crossing = (
            middle.0 + dice.between(-10.0, 10.0),
            middle.1 + dice.between(-10.0, 10.0),
        );
        let cut = outline.place(width, height, Some(crossing));
        assert_eq!(cut.is_some(), by <= 1.0, "{outline:?}");
        let Some(cut) = cut else { continue };
        placed += 1;
        let (w, h) = (in_mm(width), in_mm(height));
        let inner = piece(w - 4e-6, h - 4e-6, cut.centre, cut.turn.to_radians());
        assert!(edge.contains(&polygon(inner)), "{outline:?} {cut:?}");
        // Each strip ends on the outline.
        let (sin, cos) = cut.turn.to_radians().sin_cos();
        let ends = [(0, 1), (1, 2), (3, 2), (0, 3)];
        let ways = [(sin, -cos), (cos, sin), (-sin, cos), (-cos, -sin)];
        for ((trim, end), way) in cut.trims.iter().zip(ends).zip(ways) {
            for (strip, corner) in [(trim.0, end.0), (trim.1, end.1)] {
                let (from, strip) = (cut.corners[corner], in_mm(strip));
                let spot = Point::new(from.0 + way.0 * strip, from.1 + way.1 * strip);
                assert!(Euclidean.distance(&spot, edge.exterior()) < 1e-5);
            }
        }
        let off = in_mm(cut.off);
        if off < 0.1 {
            continue;
        }
        away += 1;
        for _ in 0..500 {
            let (far, way) = (
                (off - 0.02) * dice.roll().sqrt(),
                dice.between(0.0, std::f64::consts::TAU),
            );
            let nearer = (crossing.0 + far * way.cos(), crossing.1 + far * way.sin());
            let turn = dice.between(-10.0, 10.0).to_radians();
            assert!(
                !edge.contains(&polygon(piece(w, h, nearer, turn))),
                "{outline:?} {cut:?}"
            );
        }
    }
    eprintln!("{placed} placed, {away} of them off the crossing");
    assert!(placed > 300 && away > 50);
}

/// A length read wrong by 12 mm on a block out of shape by up to 2 mm a corner: how often
/// the hint names it. Shown; judged only against plain guessing.
#[test]
fn the_hint_mostly_names_the_length_read_wrong() {
    let mut dice = Dice(5);
    let (mut refused, mut named) = (0, 0);
    for round in 0..3000 {
        let [tl, tr, br, bl] = block(&mut dice, 3);
        let mut six = [(tl, tr), (tr, br), (br, bl), (bl, tl), (tl, br), (tr, bl)]
            .map(|(a, b)| from_mm(apart(a, b)));
        let wrong = round % 6;
        six[wrong] += from_mm(if dice.roll() < 0.5 { -12.0 } else { 12.0 });
        let [top, right, bottom, left, falling, rising] = six;
        let measures = Measures {
            sides: Sides {
                top,
                right,
                bottom,
                left,
            },
            diagonals: Some((falling, rising)),
        };
        if let Err(OutlineFault::DoesNotClose { repeat, .. }) = Outline::new(measures) {
            refused += 1;
            named += u32::from(repeat as usize == wrong);
        }
    }
    let share = 100.0 * f64::from(named) / f64::from(refused);
    eprintln!("{refused} of 3000 refused; the hint named the right length in {share:.0} %");
    assert!(refused > 2000 && share > 50.0);
}

/// How long 300 blocks take: shown, not judged. `cargo test --release -- --ignored`.
#[test]
#[ignore = "a stopwatch, for a release build"]
fn stopwatch() {
    let mut dice = Dice(4);
    let blocks: Vec<_> = (0..300).map(|k| outline(block(&mut dice, k))).collect();
    let size = from_mm(241.3);
    for share in [0.9, 0.99, 1.0] {
        let (mut largest, mut place) = (std::time::Duration::ZERO, std::time::Duration::ZERO);
        for outline in &blocks {
            let middle = outline.middle();
            let crossing = (middle.0 + 4.0, middle.1 - 3.0);
            let begun = std::time::Instant::now();
            let fit = outline.largest(size, size).expect("a fit");
            largest += begun.elapsed();
            let side = from_mm(in_mm(fit.width) * share);
            let begun = std::time::Instant::now();
            assert!(outline.place(side, side, Some(crossing)).is_some());
            place += begun.elapsed();
        }
        let each = |d: std::time::Duration| d.as_secs_f64() * 1e6 / blocks.len() as f64;
        eprintln!(
            "at {share} of the largest: largest {:.2} µs, place {:.2} µs a block",
            each(largest),
            each(place)
        );
    }
}
