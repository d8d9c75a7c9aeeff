//! Checks of fitting worked by hand, or computed in a second way.

use crate::fitting::trimming::{How, TrimChoice, choice, choices, shortfalls};
use crate::measure::{
    Fraction, Length, Ruler, eighth_inches, half_inches, in_nm, inches, nm, quarter_inches,
    sixty_fourths, zero,
};
use crate::plan::Plan;
use crate::plan::assembly::Rect;
use crate::throw::tasks::Task;
use crate::throw::{Event, Throw};

/// A throw of this plan with nothing made yet.
pub(crate) fn begun(plan: Plan) -> Throw {
    let begun = Event::Begun {
        name: "t".into(),
        plan,
        prints: vec![],
        denims: vec![],
        after: None,
    };
    Throw::begin(&begun).unwrap()
}

/// All fours stitched and measured, those named with their sizes, the others as planned.
pub(crate) fn measured(plan: Plan, odd: &[(Rect, Length, Length)]) -> Throw {
    let mut throw = begun(plan);
    for piece in throw.assembly().blocks() {
        let done = Event::Done {
            task: Task::Stitch,
            pieces: vec![piece],
            made: vec![],
        };
        throw.apply(&done, 0);
        let own = (plan.natural_four(), plan.natural_four());
        let found = odd.iter().find(|(p, _, _)| *p == piece);
        let (width, height) = found.map_or(own, |(_, w, h)| (*w, *h));
        let event = Event::Measured {
            piece,
            width,
            height,
        };
        throw.apply(&event, 0);
    }
    throw
}

pub(crate) fn four(row: u16, col: u16) -> Rect {
    Rect::from([row * 2, col * 2, 2, 2])
}

fn inch(fraction: Fraction) -> Ruler {
    Ruler {
        fraction,
        ..Ruler::default()
    }
}

fn at(found: &[TrimChoice], trim: Length) -> &TrimChoice {
    found.iter().find(|c| c.trim == trim).expect("a size tried")
}

/// Worked by hand. Twelve fours of 9½ in, but in the middle column one of 9⅜, one of 9 7/16 and
/// one of 9¼ in wide. ½ in laps under a 4 mm needle keep 3 mm of fringe down to 10 mm, so that
/// the narrowest lap is 7/16 in (11.1 mm) by sixteenths and 13/32 in (10.3 mm) by thirty-seconds,
/// and by eighths there is none (⅜ in is 9.5 mm).
#[test]
fn laps_lie_on_the_ruler() {
    let full = half_inches(19);
    let plan = Plan::default();
    let odd = [
        (four(0, 1), eighth_inches(75), full),
        (four(1, 1), sixty_fourths(9 * 64 + 28), full),
        (four(2, 1), quarter_inches(37), full),
    ];
    let throw = measured(plan, &odd);
    let laps = |fraction, trim| {
        let found = choices(&throw, inch(fraction));
        let laps: Vec<Length> = at(&found, trim).laps.iter().map(|(_, _, l)| *l).collect();
        laps
    };
    // At 9 7/16 in the 9⅜ is 1/16 short, the 9¼ 3/16. By sixteenths the 1/16 is one lap of
    // 7/16, and 3/16 is more than two such laps give, so that it is not lapped at all.
    let lower = sixty_fourths(9 * 64 + 28);
    assert_eq!(laps(Fraction::Sixteenth, lower), [sixty_fourths(28)]);
    // By thirty-seconds 3/16 is 3/32 at either side, a lap of 13/32 in twice.
    let fine = laps(Fraction::ThirtySecond, lower);
    assert_eq!(fine[1..], [sixty_fourths(26); 2]);
    // At 9½ in the 9⅜ is ⅛ short: two laps of 7/16 in.
    let two = laps(Fraction::Sixteenth, full);
    assert_eq!(two[..2], [sixty_fourths(28); 2]);
    // On a ruler of eighths no narrower lap can be marked.
    assert!(laps(Fraction::Eighth, full).is_empty());
}

/// Every lap offered is a mark of the ruler, keeps the least fringe (4 + 2·3 mm, worked by
/// hand) and is narrower than the plan's; and what the laps give is what is short and what is
/// told to be over, added up anew from the laps alone.
#[test]
fn what_laps_give_is_what_is_short_and_what_is_over() {
    let plan = Plan::default();
    let full = in_nm(plan.natural_four());
    let mut lapped = 0;
    for by in 1..40 {
        let short = nm(full - by * 79_375);
        let throw = measured(plan, &[(four(1, 1), short, plan.natural_four())]);
        for ruler in [
            inch(Fraction::Eighth),
            inch(Fraction::Sixteenth),
            inch(Fraction::ThirtySecond),
            inch(Fraction::SixtyFourth),
            Ruler::default().other(),
        ] {
            for c in choices(&throw, ruler) {
                for (_, _, lap) in &c.laps {
                    assert_eq!(ruler.nearest(*lap), *lap);
                    assert!(*lap >= nm(10_000_000) && *lap < plan.lap);
                }
                let given = c
                    .laps
                    .iter()
                    .fold(zero(), |sum, (_, _, lap)| sum + (plan.lap - *lap));
                let inner = c
                    .saves
                    .iter()
                    .filter(|s| matches!(s.how, How::Lapped { .. }));
                let saves: Vec<_> = inner.filter(|s| s.piece == four(1, 1)).collect();
                lapped += saves.len();
                if let [save] = saves[..] {
                    assert_eq!(given, save.short + save.over - save.eased);
                    assert!(save.eased == zero() || save.over == zero());
                    assert!(save.over >= zero() && save.over < ruler.step());
                }
            }
        }
    }
    assert!(lapped > 50);
}

/// One four at 7¾ in, at the edge, hides no size on a ruler of sixty-fourths, where 112 marks lie
/// between it and 9½ in. Every mark is computed here one by one.
#[test]
fn one_small_four_hides_no_size() {
    let plan = Plan::default();
    let full = plan.natural_four();
    let near = sixty_fourths(9 * 64 + 28);
    let mut odd: Vec<_> = (0..12).map(|k| (four(k / 3, k % 3), near, near)).collect();
    odd[5] = (four(1, 2), quarter_inches(31), full);
    let throw = measured(plan, &odd);
    let found = choices(&throw, inch(Fraction::SixtyFourth));
    // Eleven fours hold 9 7/16 in without any trouble: the size to take.
    assert_eq!(found[0].trim, near);
    // Nor does a smaller size that was chosen before.
    let chosen = Plan {
        trim: Some(quarter_inches(37)),
        ..plan
    };
    let found = choices(&measured(chosen, &odd), inch(Fraction::SixtyFourth));
    assert_eq!(found[0].trim, near);
}

/// Where all fours came out at 9 9/16 in, nothing need be cut away.
#[test]
fn all_larger_need_no_trimming() {
    let plan = Plan::default();
    let over = sixty_fourths(9 * 64 + 36);
    let odd: Vec<_> = (0..12).map(|k| (four(k / 3, k % 3), over, over)).collect();
    let found = choices(&measured(plan, &odd), Ruler::default());
    assert_eq!(
        (found[0].trim, found[0].cost, found[0].waste),
        (over, 0, zero())
    );
    // With one of them as planned, that is the size.
    let mut odd = odd;
    odd[0].1 = plan.natural_four();
    let found = choices(&measured(plan, &odd), Ruler::default());
    assert_eq!(found[0].trim, plan.natural_four());
}

/// A block that is so much short and can neither be sewn again nor made anew.
fn bar(short: i64) -> crate::fitting::trimming::Bar {
    crate::fitting::trimming::Bar {
        short,
        resew: None,
        renew: None,
    }
}

/// A plan whose binding hides nothing of an edge: a strip of 10 mm covers 5 mm of each face, which must all
/// catch cloth.
fn unhidden(across: u16, down: u16) -> Plan {
    let mut plan = Plan {
        across,
        down,
        ..Plan::default()
    };
    plan.binding.strip = nm(10_000_000);
    plan
}

/// Each saving's price by hand, in minutes: 2 for a join lapped less, 1 for an edge, 8 for a seam
/// opened and sewn again, 30 for a new block (our judgement; common practice, no source). A single
/// four has no neighbours, and a strip of 10 mm covers 5 mm of each face, which must all catch
/// cloth: so nothing is hidden at the edge. Its laps of ½ in give 1/16 in down to 7/16 in, the
/// narrowest on this ruler that keeps 10 mm.
#[test]
fn a_lap_is_opened_by_its_seams_and_only_for_what_it_gives() {
    let plan = unhidden(2, 2);
    let full = half_inches(19);
    let sixteenth = |n: i64| full - sixty_fourths(4 * n);
    let one = |width, height| {
        let throw = measured(plan, &[(four(0, 0), width, height)]);
        let found = choice(&throw, full, Ruler::default().step());
        (found.trouble, found.saves[0].how)
    };
    // Short in width: both pairs have their seam opened, and before it the one across: 3 · 8 minutes.
    assert_eq!(one(sixteenth(1), full), (240, How::Resewn));
    // Short in height: the one seam across.
    assert_eq!(one(full, sixteenth(1)), (80, How::Resewn));
    // Two sixteenths are more than the lap gives: a new block.
    assert_eq!(one(sixteenth(2), full), (300, How::Renewed));
    assert_eq!(one(full, sixteenth(2)), (300, How::Renewed));
}

/// By hand: a strip of 1 in (25.4 mm) lies 12.7 mm deep on each face, of which 5 mm must catch
/// cloth (common practice, no source), so that 7.7 mm of a short edge are hidden.
#[test]
fn the_binding_hides_what_it_need_not_catch() {
    let plan = Plan {
        across: 2,
        down: 2,
        ..Plan::default()
    };
    let full = half_inches(19);
    let short = |by: i64| measured(plan, &[(four(0, 0), full - nm(by), full)]);
    let found = |by| shortfalls(&short(by), four(0, 0))[0].clone();
    // The left edge takes 7.7 mm of 9 mm, and the right edge the rest.
    let shares: Vec<_> = found(9_000_000).shares.iter().map(|s| s.by).collect();
    assert_eq!(shares, [nm(7_700_000), nm(1_300_000)]);
    // Of 17 mm both edges take 15.4 mm; 1.6 mm are open, where 1 mm would be eased in.
    assert_eq!(
        (found(17_000_000).open, found(17_000_000).eased),
        (nm(1_600_000), zero())
    );
    assert_eq!(
        (found(16_400_000).open, found(16_400_000).eased),
        (zero(), nm(1_000_000))
    );
    // One edge is a minute's care, both are two; the throw is no smaller for it.
    let trouble = |by| choice(&short(by), full, Ruler::default().step()).trouble;
    assert_eq!([7_700_000, 7_800_000].map(trouble), [10, 20]);
}

/// By hand: three fours in a row, the middle one short in width. Lapped less by a sixteenth at one
/// join is 2 minutes, by a sixteenth at both is 4; 3/16 in is more than both give, and a new block
/// is 30 minutes, where opening three seams cannot give it either.
#[test]
fn joins_lapped_less_are_two_minutes_each() {
    let trouble = |sixteenths: i64| {
        let throw = three_in_a_row(&[(1, sixty_fourths(4 * sixteenths))]);
        choice(&throw, half_inches(19), Ruler::default().step()).trouble
    };
    assert_eq!([0, 1, 2, 3].map(trouble), [0, 20, 40, 300]);
}

/// By hand: at 9 in instead of 9½ in a throw of 6 × 8 squares is 3 · 9 − 2 · ½ = 26 in wide and
/// 4 · 9 − 3 · ½ = 34½ in high, 897 in² instead of 27½ · 36½ = 1003¾ in²: 106¾ in² lost, a minute
/// for every 2 in², in tenths 533¾.
#[test]
fn a_smaller_throw_costs_a_minute_for_two_square_inches() {
    let throw = measured(Plan::default(), &[]);
    let found = choice(&throw, inches(9), Ruler::default().step());
    assert_eq!((found.cost, found.trouble), (534, 0));
    // Each side of each four is ½ in over.
    assert_eq!(found.waste, half_inches(1));
}

/// Three across and two down are a four and an upright pair: of the pair only the height is a side
/// that squaring up trims.
#[test]
fn a_pair_has_one_side_to_trim() {
    let plan = Plan {
        across: 3,
        down: 2,
        ..Plan::default()
    };
    let pair = Rect::from([0, 2, 2, 1]);
    let full = half_inches(19);
    let throw = measured(plan, &[(pair, inches(5), quarter_inches(37))]);
    let sides = crate::fitting::squaring::measured_sides(&throw);
    assert_eq!(sides, [full, full, quarter_inches(37)]);
    // Two squares alone have the one side: ½ in comes off a pair that is 10 in wide.
    let plan = Plan {
        across: 2,
        down: 1,
        ..plan
    };
    let pair = Rect::from([0, 0, 1, 2]);
    let throw = measured(plan, &[(pair, inches(10), inches(5))]);
    let found = choice(&throw, full, Ruler::default().step());
    assert_eq!(found.waste, half_inches(1));
}

/// The coarsest ruler all laps lie on, by hand: 28/64 is 7/16 in, 26/64 is 13/32 in.
#[test]
fn laps_tell_the_ruler_they_were_read_off() {
    use crate::fitting::trimming::ruler_of;
    let sixty_fourth = sixty_fourths(1);
    for (laps, want) in [
        (vec![sixty_fourths(24)], eighth_inches(1)),
        (vec![sixty_fourths(24), sixty_fourths(28)], sixty_fourth * 4),
        (vec![sixty_fourths(28), sixty_fourths(26)], sixty_fourth * 2),
        (vec![sixty_fourths(27), sixty_fourths(24)], sixty_fourth),
        (vec![nm(10_000_000), nm(12_000_000)], nm(1_000_000)),
        (vec![nm(10_100_000), nm(12_000_000)], nm(100_000)),
        (vec![nm(10_100_000), sixty_fourths(27)], nm(1)),
    ] {
        assert_eq!(ruler_of(&laps), want, "{laps:?}");
    }
}

/// What it is worth to save a square, in minutes by hand: 4 to cut one, 2 to take a spare, 30 to find
/// cloth, 3 for its fabric, 8 for each seam; 3 for each square of the row or column that is given up.
#[test]
fn a_spoilt_square_is_priced_by_what_it_takes() {
    use crate::cloth::fabric::Cover;
    use crate::cloth::garments::{Precut, Source};
    use crate::cloth::pile::{Heap, Use};
    use crate::cloth::weight::Cloth;
    use crate::measure::Count;
    use crate::rescue::{RecutFrom, RemedyKind, ways};
    use crate::throw::Mishap;
    let square = Rect::square(7, 5);
    let done = |task, piece| Event::Done {
        task,
        pieces: vec![piece],
        made: vec![],
    };
    let mut throw = begun(Plan::default());
    throw.apply(&done(Task::Cut, square), 0);
    let told = |throw: &Throw, kind: RemedyKind| {
        let found = ways(throw, square, Mishap::Flaw);
        let way = found.into_iter().find(|w| w.kind == kind);
        way.map(|w| (w.minutes, w.seams, w.unpick))
    };
    let cut = RemedyKind::Recut(RecutFrom::Unsaid);
    assert_eq!(told(&throw, cut), Some((4, 0, zero())));
    // The last row has 6 squares, the last column 8.
    assert_eq!(told(&throw, RemedyKind::FewerDown), Some((18, 0, zero())));
    assert_eq!(told(&throw, RemedyKind::FewerAcross), Some((24, 0, zero())));
    assert_eq!(told(&throw, RemedyKind::Spare(None)), None);
    throw.spares = Count::from(1);
    assert_eq!(told(&throw, RemedyKind::Spare(None)), Some((2, 0, zero())));
    // With a fabric on its front 3 minutes more, and sewn to its neighbour along 5 in 8 more.
    let cover = Cover {
        front: Some(0),
        ..throw.cover(square)
    };
    let faces = Event::FacesChanged {
        faces: vec![(square, cover)],
        again: None,
        by_hand: None,
    };
    let mut glued = throw.after(&[faces]);
    assert_eq!(told(&glued, cut), Some((7, 0, zero())));
    glued.apply(&done(Task::Stitch, Rect::from([7, 4, 1, 2])), 0);
    assert_eq!(told(&glued, cut), Some((15, 1, inches(5))));
    assert_eq!(
        told(&glued, RemedyKind::Spare(None)),
        Some((13, 1, inches(5)))
    );
    // A pile with a single square in it has none over for the 48 places.
    let pack = Source::Precut(Precut {
        name: "Pack".into(),
        side: inches(5),
        count: Count::from(1),
    });
    let heap = Heap::new(pack, Use::ANY_DENIM, Cloth::denim());
    throw.apply(&Event::HeapSet { n: 1, heap }, 0);
    let more = RemedyKind::Recut(RecutFrom::MoreCloth);
    assert_eq!(told(&throw, more), Some((30, 0, zero())));
}

/// The same of a block, by hand: 2 minutes for each join lapped less; 8 for each seam opened, here
/// the one across its middle, 9½ in, and both of 5 in; 30 for another block.
#[test]
fn a_short_block_is_priced_by_what_it_takes() {
    use crate::rescue::{RemedyKind, ways_for_block};
    let plan = Plan {
        across: 6,
        down: 2,
        ..Plan::default()
    };
    let full = half_inches(19);
    let told = |sixteenths: i64, kind: RemedyKind| {
        let short = full - sixty_fourths(4 * sixteenths);
        let mut throw = measured(plan, &[(four(0, 1), short, full)]);
        let done = Event::Done {
            task: Task::Stitch,
            pieces: vec![Rect::from([0, 2, 1, 2]), Rect::from([1, 2, 1, 2])],
            made: vec![],
        };
        throw.apply(&done, 0);
        let found = ways_for_block(&throw, four(0, 1), Ruler::default());
        let way = found.into_iter().find(|w| w.kind == kind);
        way.map(|w| (w.minutes, w.seams, w.unpick))
    };
    let (less, another) = (RemedyKind::LapLess, RemedyKind::Another);
    assert_eq!(told(1, less), Some((2, 0, zero())));
    assert_eq!(told(2, less), Some((4, 0, zero())));
    assert_eq!(told(3, less), None);
    let resewn = Some((24, 3, half_inches(39)));
    assert_eq!(told(1, RemedyKind::Resew), resewn);
    // A lap of ½ in gives no more than 1/16 in.
    assert_eq!(told(2, RemedyKind::Resew), None);
    assert_eq!([1, 3].map(|n| told(n, another)), [Some((30, 0, zero())); 2]);
}

/// By hand: laps of ¾ in, which a 1/16 ruler lets go down to 7/16 in (10 mm, 4 and twice 3), so that
/// each of the two joins of the middle four gives up to 5/16 in. What needs both is shared as evenly
/// as the marks allow: the crossing stays nearest the middle.
#[test]
fn a_shortage_is_shared_evenly_between_marks() {
    let plan = Plan {
        across: 6,
        down: 2,
        lap: quarter_inches(3),
        ..Plan::default()
    };
    let full = plan.natural_four();
    let shared = |short: Length, ruler: Ruler| {
        let throw = measured(plan, &[(four(0, 1), full - short, full)]);
        let found = choice(&throw, full, ruler.step());
        let laps: Vec<Length> = found.laps.iter().map(|(_, _, lap)| *lap).collect();
        (found.trouble, laps, found.saves[0].over)
    };
    let sixteenth = inch(Fraction::Sixteenth);
    let laps = |a: i64, b: i64| vec![sixty_fourths(4 * a), sixty_fourths(4 * b)];
    // 5/16 in is what one join gives. 6/16 in is 3/16 at either.
    assert_eq!(
        shared(sixty_fourths(20), sixteenth),
        (20, vec![sixty_fourths(28)], zero())
    );
    assert_eq!(
        shared(sixty_fourths(24), sixteenth),
        (40, laps(9, 9), zero())
    );
    // 7/16 in: 3/16 and 4/16. 10/16 in: all that both give.
    assert_eq!(
        shared(sixty_fourths(28), sixteenth),
        (40, laps(9, 8), zero())
    );
    assert_eq!(
        shared(sixty_fourths(40), sixteenth),
        (40, laps(7, 7), zero())
    );
    // 13/32 in (26/64) lies between the marks: 3/16 at one and the rest, 14/64, by a lap of ½ in, which
    // gives 16/64: 2/64 over.
    assert_eq!(
        shared(sixty_fourths(26), sixteenth),
        (40, laps(9, 8), sixty_fourths(2))
    );
    // On a ruler of thirty-seconds 14/64 has its mark, a lap of 17/32 in; nothing is over.
    let fine = inch(Fraction::ThirtySecond);
    assert_eq!(
        shared(sixty_fourths(26), fine),
        (40, vec![sixty_fourths(36), sixty_fourths(34)], zero())
    );
    // At the edge the binding hides what lies between the marks. 10 mm is 3/16 in (4.7625 mm) by a lap
    // of 9/16 in and 5.2375 mm at the edge, and nothing is over; so on the right edge.
    for end in [0, 2] {
        let throw = measured(plan, &[(four(0, end), full - nm(10_000_000), full)]);
        let found = choice(&throw, full, sixteenth.step());
        let laps: Vec<Length> = found.laps.iter().map(|(_, _, lap)| *lap).collect();
        let told = (found.trouble, laps, found.saves[0].over);
        assert_eq!(told, (30, vec![sixty_fourths(36)], zero()), "{end}");
    }
    // With laps of ½ in the join gives 1/16 in (1.5875 mm) at most: of 8 mm the edge hides 6.4125.
    let half = Plan {
        lap: half_inches(1),
        ..plan
    };
    let full_half = half.natural_four();
    for end in [0, 2] {
        let short = full_half - nm(8_000_000);
        let throw = measured(half, &[(four(0, end), short, full_half)]);
        let found = choice(&throw, full_half, sixteenth.step());
        let laps: Vec<Length> = found.laps.iter().map(|(_, _, lap)| *lap).collect();
        let told = (found.trouble, laps, found.saves[0].over);
        assert_eq!(told, (30, vec![sixty_fourths(28)], zero()), "{end}");
    }
    // In millimetres: laps of 20 mm down to 10. 15½ mm is 7½ and 8, both with a lap of 12 mm, ½ mm over.
    let mm = |n: i64| nm(n * 1_000_000);
    let plan = Plan {
        lap: mm(20),
        ..plan
    };
    let full = plan.natural_four();
    let short = mm(31) / 2;
    let throw = measured(plan, &[(four(0, 1), full - short, full)]);
    let found = choice(&throw, full, mm(1));
    let laps: Vec<Length> = found.laps.iter().map(|(_, _, lap)| *lap).collect();
    assert_eq!((laps, found.saves[0].over), (vec![mm(12); 2], mm(1) / 2));
}

/// By hand: where a neighbour uses the same join, the room there is shared out once. Joins give 3
/// each, the outer edges nothing: one is 5 short, 3 before and 2 after, where its neighbour takes the
/// third; evened out it would take 3 there too. And the other way round with joins that give 3, 4, 4.
#[test]
fn what_a_neighbour_uses_of_a_join_is_not_shared_again() {
    use crate::fitting::trimming::{Bar, EDGE, How, NARROWER, RENEW, line};
    let bar = |short| Bar {
        short,
        resew: None,
        renew: Some(RENEW),
    };
    let price = [EDGE, NARROWER, NARROWER, NARROWER, EDGE];
    let lapped = |before, after| How::Lapped { before, after };
    let found = line(
        &[bar(0), bar(5), bar(1), bar(0)],
        &[0, 3, 3, 3, 0],
        &price,
        0,
    );
    let want = vec![How::Fits, lapped(3, 2), lapped(1, 0), How::Fits];
    assert_eq!(found, (2 * NARROWER, want));
    let found = line(
        &[bar(0), bar(3), bar(5), bar(0)],
        &[0, 3, 4, 4, 0],
        &price,
        0,
    );
    let want = vec![How::Fits, lapped(0, 3), lapped(1, 4), How::Fits];
    assert_eq!(found, (2 * NARROWER, want));
    // Alone it shares 5 as 2 and 3.
    let found = line(
        &[bar(0), bar(5), bar(0), bar(0)],
        &[0, 3, 3, 3, 0],
        &price,
        0,
    );
    assert_eq!(found.1[1], lapped(2, 3));
}

/// By hand: four fours in a row, the first two sewn to one another. They are one piece: what counts is
/// the second's width and the lap between them against the plan's ½ in, and only the join to the third
/// gives way, by 1/16 in, since a strip of 10 mm hides nothing at the edge. Beyond that it stays short
/// (120 minutes): nothing sewn is opened, and no new one put in.
#[test]
fn fours_sewn_to_one_another_are_one_piece() {
    use crate::plan::{Joining, Stitch};
    use crate::throw::Made;
    let plan = unhidden(8, 2);
    let full = half_inches(19);
    let sixteenth = |n: i64| sixty_fourths(4 * n);
    let trouble = |lap: Option<i64>, first: i64, second: i64| {
        let odd = [
            (four(0, 0), full + sixteenth(first), full),
            (four(0, 1), full + sixteenth(second), full),
        ];
        let mut throw = measured(plan, &odd);
        if let Some(lap) = lap {
            let made = Made {
                joining: Joining::Lapped,
                lap: sixteenth(lap),
                stitch: Stitch::Straight,
            };
            let whole = throw.joined_by(four(0, 0), four(0, 1)).unwrap().whole;
            let done = Event::Done {
                task: Task::Stitch,
                pieces: vec![whole],
                made: vec![made],
            };
            throw.apply(&done, 0);
        }
        let found = choice(&throw, full, Ruler::default().step());
        let pieces: Vec<Rect> = found.saves.iter().map(|s| s.piece).collect();
        (found.trouble, pieces)
    };
    let first = || vec![four(0, 0)];
    // Loose, the second laps less at both its joins.
    assert_eq!(trouble(None, 0, -2), (40, vec![four(0, 1)]));
    // Sewn as planned: 1/16 at the one join that is open; 2/16 it cannot give.
    assert_eq!(trouble(Some(8), 0, 0), (0, vec![]));
    assert_eq!(trouble(Some(8), 0, -1), (20, first()));
    assert_eq!(trouble(Some(8), 0, -2), (1200, first()));
    // Sewn 1/16 narrower than planned, that much is made up for.
    assert_eq!(trouble(Some(7), 0, -1), (0, vec![]));
    assert_eq!(trouble(Some(7), 0, -2), (20, first()));
    assert_eq!(trouble(Some(7), -2, 0), (20, first()));
    assert_eq!(trouble(Some(7), 0, -3), (1200, first()));
    // Sewn 1/16 wider, that much is lacking though both hold the size.
    assert_eq!(trouble(Some(9), 0, 0), (20, first()));
    assert_eq!(trouble(Some(9), 0, -1), (1200, first()));
    // What one of them has over is not trimmed off any more: it makes up for the other.
    assert_eq!(trouble(Some(8), 2, -2), (0, vec![]));
    assert_eq!(trouble(Some(8), 2, -3), (20, first()));
    assert_eq!(trouble(None, 2, -2), (40, vec![four(0, 1)]));
}

/// By hand, by whole millimetres: laps of 14 mm within a four can be sewn again with 10, which gives 4 mm, and
/// 1 mm is eased in. The joins are lapped 10 mm already and the edges hide nothing. So a four that is 5 mm short
/// is sewn again, three seams at 8 minutes, and for one that is 6 mm short there is a new one (30).
#[test]
fn a_four_is_sewn_again_for_all_but_what_is_eased_in() {
    let mm = |n: i64| nm(n * 1_000_000);
    let mut plan = Plan {
        across: 6,
        down: 2,
        lap: mm(14),
        between: Some(mm(10)),
        ..Plan::default()
    };
    plan.binding.strip = mm(10);
    let full = plan.natural_four();
    let found = |short| {
        let throw = measured(plan, &[(four(0, 1), full - mm(short), full)]);
        let found = choice(&throw, full, mm(1));
        (found.trouble, found.saves[0].how)
    };
    assert_eq!(found(5), (240, How::Resewn));
    assert_eq!(found(6), (300, How::Renewed));
}

/// By hand: seams of ½ in within a four under a straight row can be sewn again with 1/8 in, which leaves 3 mm,
/// and either square keeps 3/8 in of it. Those between are 1/8 in already, and the edges hide nothing. A four
/// that is ¾ in short is sewn again, three seams at 8 minutes; for 13/16 in there is a new one (30).
#[test]
fn a_seam_sewn_again_gives_on_either_side_of_it() {
    let mut plan = Plan {
        across: 6,
        down: 2,
        stitch: crate::plan::Stitch::Straight,
        ..Plan::default().joined(crate::plan::Joining::Exposed)
    };
    plan.between = Some(eighth_inches(1));
    plan.binding.strip = nm(10_000_000);
    let full = inches(9);
    let found = |sixteenths: i64| {
        let short = full - sixty_fourths(4 * sixteenths);
        let throw = measured(plan, &[(four(0, 1), short, full)]);
        let found = choice(&throw, full, Ruler::default().step());
        (found.trouble, found.saves[0].how)
    };
    assert_eq!(found(12), (240, How::Resewn));
    assert_eq!(found(13), (300, How::Renewed));
}

/// By hand: seams of ½ in under a straight row. A four that is 3/16 in short wants 3/32 in of either square; the
/// next mark of a sixteenths ruler leaves 3/8 in, which gives ¼ in, 1/16 in too much.
#[test]
fn what_a_seam_gives_too_much_is_told() {
    let plan = Plan {
        across: 6,
        down: 2,
        stitch: crate::plan::Stitch::Straight,
        ..Plan::default().joined(crate::plan::Joining::Exposed)
    };
    let short = inches(9) - sixty_fourths(12);
    let throw = measured(plan, &[(four(0, 1), short, inches(9))]);
    let found = choice(&throw, inches(9), Ruler::default().step());
    let told: Vec<_> = found.saves.iter().map(|s| s.over).collect();
    assert_eq!(told, [sixty_fourths(4)]);
    let laps: Vec<Length> = found.laps.iter().map(|(_, _, lap)| *lap).collect();
    assert_eq!(laps, [sixty_fourths(24)]);
}

/// By hand: two rows of two fours are sewn as planned, and then to one another 1/16 in narrower than planned.
/// That makes up for a four that is 1/16 in short in height, and not for 1/8 in, which stays short (120).
#[test]
fn rows_sewn_to_one_another_make_up_by_their_own_lap() {
    use crate::plan::{Joining, Stitch};
    use crate::throw::Made;
    let plan = unhidden(4, 4);
    let full = half_inches(19);
    let trouble = |sixteenths: i64| {
        let short = full - sixty_fourths(4 * sixteenths);
        let mut throw = measured(plan, &[(four(0, 0), full, short)]);
        for (piece, sixteenths) in [([0, 0, 2, 4], 8), ([2, 0, 2, 4], 8), ([0, 0, 4, 4], 7)] {
            let made = Made {
                joining: Joining::Lapped,
                lap: sixty_fourths(4 * sixteenths),
                stitch: Stitch::Straight,
            };
            let done = Event::Done {
                task: Task::Stitch,
                pieces: vec![Rect::from(piece)],
                made: vec![made],
            };
            throw.apply(&done, 0);
        }
        choice(&throw, full, Ruler::default().step()).trouble
    };
    assert_eq!([0, 1, 2].map(trouble), [0, 0, 1200]);
}

/// By hand: of two rows of two fours the upper one is sewn. Its first four is 1 in short in height, far more
/// than the seam below it gives, and a strip of 10 mm hides nothing at the edge. It lies in its row already,
/// so that no new four is put in (30 minutes) and none of its laps opened: the column stays short (120).
#[test]
fn a_four_that_is_sewn_into_its_row_is_not_made_anew() {
    let plan = unhidden(4, 4);
    let full = half_inches(19);
    let mut throw = measured(plan, &[(four(0, 0), full, full - inches(1))]);
    let how = |throw: &Throw| {
        let found = choice(throw, full, Ruler::default().step());
        let hows: Vec<How> = found.saves.iter().map(|s| s.how).collect();
        (found.trouble, hows)
    };
    assert_eq!(how(&throw), (300, vec![How::Renewed]));
    let sewn = Event::Done {
        task: Task::Stitch,
        pieces: vec![Rect::from([0, 0, 2, 4])],
        made: vec![],
    };
    throw.apply(&sewn, 0);
    assert_eq!(how(&throw), (1200, vec![How::LeftShort]));
}

/// The seams round a square, by hand, in 4 × 4 squares joined by rows: its pair, its four, and what
/// joins its four to the next one and its row to the next where it lies on that side.
#[test]
fn seams_round_a_square() {
    let plan = Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    };
    let mut throw = begun(plan);
    let joins = throw.assembly().joins().to_vec();
    for join in joins {
        let done = Event::Done {
            task: Task::Stitch,
            pieces: vec![join.whole],
            made: vec![],
        };
        throw.apply(&done, 0);
    }
    for (row, col, want) in [
        (0, 0, 2),
        (0, 1, 3),
        (1, 0, 3),
        (1, 1, 4),
        (2, 2, 4),
        (2, 3, 3),
        (3, 2, 3),
        (3, 3, 2),
    ] {
        let found = crate::throw::seams::round(&throw, Rect::square(row, col));
        assert_eq!(found.len(), want, "{row}, {col}");
        assert!(found.iter().all(|(_, length)| *length == inches(5)));
    }
    // Eight pairs of 5 in seam, four fours and two rows of 9½ in, and 18½ in between them.
    let (seams, long) = throw.runs();
    assert_eq!((seams, long), (15, half_inches(80 + 4 * 19 + 2 * 19 + 37)));
}

/// By hand: three fours in a row under a strip of 10 mm, which hides nothing; laps of ½ in keep 10 mm
/// of lap. A ruler of sixteenths gives 12.7 − 11.1125 = 1.5875 mm a join, two joins 3.175 mm; one of
/// millimetres 2.7 mm a join, two joins 5.4 mm. A shortage of 4 mm lacks 0.825 mm on the first, which
/// is eased in, for 2 · 2 and 3 minutes; on the second nothing is lacking. So neither ruler asks for
/// a new four, which is what 5 mm asks for in inches.
#[test]
fn what_coarse_marks_lack_is_eased_in() {
    let plan = unhidden(6, 2);
    let full = plan.natural_four();
    let found = |short: i64, step| {
        let throw = measured(plan, &[(four(0, 1), full - nm(short), full)]);
        let chosen = choice(&throw, full, step);
        let save = chosen.saves[0];
        (
            chosen.trouble,
            chosen.laps.len(),
            in_nm(save.eased),
            save.how,
        )
    };
    let lapped = |before, after| How::Lapped { before, after };
    let sixteenth = Ruler::default().step();
    let both = lapped(1_587_500, 1_587_500);
    assert_eq!(found(4_000_000, sixteenth), (70, 2, 825_000, both));
    let (trouble, laps, eased, _) = found(4_000_000, nm(1_000_000));
    assert_eq!((trouble, laps, eased), (40, 2, 0));
    // More than a millimetre is not eased in: a new four, 30 minutes.
    let renewed = (300, 0, 0, How::Renewed);
    assert_eq!(found(4_200_000, sixteenth), renewed);
    // Where laps suffice nothing is eased in, and where none can be narrower, a millimetre is.
    assert_eq!(
        found(1_500_000, sixteenth),
        (20, 1, 0, lapped(1_500_000, 0))
    );
    assert_eq!(
        found(1_000_000, nm(12_700_000)),
        (30, 0, 1_000_000, lapped(0, 0))
    );
}

/// By hand: two fours beside one join that gives 4 mm; each is 3 mm short and has nothing at its outer
/// edge. Both have 1 mm eased in (2 · 3 minutes) and share the join (2 minutes). As the laps then
/// stand, each has 2 mm of it, and nothing is open.
#[test]
fn two_that_share_a_join_both_ease_in_what_is_left() {
    use crate::fitting::trimming::{Bar, EASE, EDGE, NARROWER, RENEW, line};
    let bar = Bar {
        short: 3,
        resew: None,
        renew: Some(RENEW),
    };
    let price = [EDGE, NARROWER, EDGE];
    let shared = vec![
        How::Lapped {
            before: 0,
            after: 2,
        },
        How::Lapped {
            before: 2,
            after: 0,
        },
    ];
    let found = line(&[bar, bar], &[0, 4, 0], &price, 1);
    assert_eq!(found, (NARROWER + 2 * EASE, shared));

    let mut plan = Plan {
        across: 4,
        down: 2,
        lap: nm(14_000_000),
        ..Plan::default()
    };
    plan.binding.strip = nm(10_000_000);
    let full = plan.natural_four();
    let off = [0, 1].map(|c| (four(0, c), full - nm(3_000_000), full));
    let mut throw = measured(plan, &off);
    let laps = choice(&throw, full, nm(1_000_000)).laps;
    assert_eq!(laps, [(four(0, 0), four(0, 1), nm(10_000_000))]);
    let laps = laps.into_iter().map(|(a, b, lap)| (a, b, Some(lap)));
    let marked = crate::throw::Event::LapsMarked {
        laps: laps.collect(),
    };
    throw.apply(&marked, 0);
    for c in [0, 1] {
        let found = &shortfalls(&throw, four(0, c))[0];
        let shares: Vec<_> = found.shares.iter().map(|s| s.by).collect();
        assert_eq!(shares, [nm(2_000_000)]);
        assert_eq!((found.open, found.eased), (zero(), nm(1_000_000)));
    }
}

/// By hand: fours seamed ½ in under a straight row measure 9 in. The narrowest allowance on sixteenths that
/// leaves 3 mm is ⅛ in, and either square keeps what the allowance gives up: a seam can give 2 · ⅜ in. A
/// four that is ½ in short is met by one seam, of ¼ in less on either square.
#[test]
fn a_seam_gives_on_either_side_of_it() {
    let plan = Plan {
        across: 6,
        down: 6,
        stitch: crate::plan::Stitch::Straight,
        ..Plan::default().joined(crate::plan::Joining::Exposed)
    };
    assert_eq!(plan.natural_four(), inches(9));
    let middle = four(1, 1);
    let mut throw = measured(plan, &[(middle, half_inches(17), inches(9))]);
    let step = Ruler::default().step();
    let chosen = choice(&throw, plan.target(), step);
    let How::Lapped { before, after } = chosen.saves[0].how else {
        panic!("{:?}", chosen.saves)
    };
    assert_eq!(
        (chosen.saves.len(), before + after),
        (1, in_nm(half_inches(1)))
    );
    let [(a, b, lap)] = chosen.laps[..] else {
        panic!("{:?}", chosen.laps)
    };
    assert_eq!((chosen.trouble, lap), (20, quarter_inches(1)));
    let laps = vec![(a, b, Some(lap))];
    throw.apply(&Event::LapsMarked { laps }, 0);
    let [seen] = &shortfalls(&throw, middle)[..] else {
        panic!("one way only")
    };
    assert_eq!(
        (seen.short, seen.open, seen.eased),
        (half_inches(1), zero(), zero())
    );
    let met = seen.shares.iter().fold(zero(), |sum, s| sum + s.by);
    assert_eq!(met, half_inches(1));
}

/// By hand: of 4 × 6 squares one four in the second row and column is ¼ in short in width and ⅛ in in
/// height. So its row, the second of three, and its column, the second of two, are off; the others not.
/// Lapped ¼ in less beside it, its row is as long as it should be.
#[test]
fn rows_and_columns_are_told_by_their_number() {
    use crate::fitting::trimming::closing;
    use crate::plan::assembly::Seam;
    let plan = Plan {
        across: 4,
        down: 6,
        ..Plan::default()
    };
    let full = plan.natural_four();
    let odd = four(1, 1);
    let short = (odd, full - quarter_inches(1), full - eighth_inches(1));
    let mut throw = measured(plan, &[short]);
    let told = |throw: &Throw| {
        let all = closing(throw).into_iter();
        let off = all.filter(|(_, _, off)| *off != zero());
        off.collect::<Vec<_>>()
    };
    let column = (Seam::Level, 1, zero() - eighth_inches(1));
    let row = (Seam::Upright, 1, zero() - quarter_inches(1));
    assert_eq!(told(&throw), [row, column]);
    let numbers: Vec<_> = closing(&throw).iter().map(|(s, n, _)| (*s, *n)).collect();
    let rows = [0, 1, 2].map(|n| (Seam::Upright, n));
    let columns = [0, 1].map(|n| (Seam::Level, n));
    assert_eq!(numbers, [&rows[..], &columns].concat());
    let laps = vec![(four(1, 0), odd, Some(quarter_inches(1)))];
    throw.apply(&Event::LapsMarked { laps }, 0);
    assert_eq!(told(&throw), [column]);
    // Lapped ⅛ in less below it, its column is too, though the other column is lapped there as planned.
    let laps = vec![(odd, four(2, 1), Some(quarter_inches(2) - eighth_inches(1)))];
    throw.apply(&Event::LapsMarked { laps }, 0);
    assert_eq!(told(&throw), []);
}

/// By hand: the first of two fours is 5 short and has it from the outer edge (10), since the join (10)
/// and the other edge (10) are needed for the 16 of the second. Whatever the first does at its outer
/// edge, the second shares its 16 evenly, so that the crossing moves least.
#[test]
fn what_a_neighbour_does_at_its_other_end_does_not_hinder_sharing() {
    use crate::fitting::trimming::{Bar, EDGE, NARROWER, line};
    let bar = |short| Bar {
        short,
        resew: None,
        renew: None,
    };
    let lapped = |before, after| How::Lapped { before, after };
    let (cost, hows) = line(
        &[bar(5), bar(16)],
        &[10, 10, 10],
        &[EDGE, NARROWER, EDGE],
        0,
    );
    assert_eq!((cost, hows), (40, vec![lapped(5, 0), lapped(8, 8)]));
}

/// By hand: the last of two fours is 3 short, and the binding hides as much at its outer edge (1 minute), so
/// that the join before it is left alone. Likewise the first.
#[test]
fn what_one_end_gives_is_not_shared_with_the_other() {
    use crate::fitting::trimming::line;
    let lapped = |before, after| How::Lapped { before, after };
    let found = |first, last| line(&[bar(first), bar(last)], &[3, 3, 3], &[10, 20, 10], 0);
    assert_eq!(found(0, 3), (10, vec![How::Fits, lapped(0, 3)]));
    assert_eq!(found(3, 0), (10, vec![lapped(3, 0), How::Fits]));
}

/// How a four that is so many sixty-fourths short in width is saved on a ruler of 1/32 in, what that gives too
/// much, and its trouble.
fn on_thirty_seconds(plan: Plan, col: u16, short: i64) -> (Vec<(How, Length)>, i64) {
    let full = plan.natural_four();
    let throw = measured(plan, &[(four(0, col), full - sixty_fourths(short), full)]);
    let found = choice(&throw, full, inch(Fraction::ThirtySecond).step());
    let told = found.saves.iter().map(|s| (s.how, s.over));
    (told.collect(), found.trouble)
}

/// So many sixty-fourths from what lies before, and after.
fn lapped_by(before: i64, after: i64) -> How {
    How::Lapped {
        before: in_nm(sixty_fourths(before)),
        after: in_nm(sixty_fourths(after)),
    }
}

/// By hand, on a ruler of 1/32 in: laps of 15/32 in give up to 2/32 in (13/32 in are 10.3 mm), and a strip of
/// 12.6 mm hides 1.3 mm. A four that is 5/64 in short, 1.98 mm, wants both. Where the join gives 1/32 in the edge
/// has 3/64 in to hide, where it gives 2/32 in the edge has 1/64 in; the first is nearer to half and half.
#[test]
fn of_two_marks_the_one_nearer_the_middle_is_taken() {
    for (col, before, after) in [(1, 2, 3), (0, 3, 2)] {
        let mut plan = Plan {
            across: 4,
            down: 2,
            lap: sixty_fourths(30),
            ..Plan::default()
        };
        plan.binding.strip = nm(12_600_000);
        let (told, _) = on_thirty_seconds(plan, col, 5);
        assert_eq!(told, [(lapped_by(before, after), zero())], "{col}");
    }
}

/// By hand: one four is 10 short; the join before it gives 8 (2 minutes), the edge after it no more than 1.
/// What is lacking, 2, is eased in (3 minutes): taking 1 of it from the edge would cost another minute.
#[test]
fn what_is_eased_in_is_not_taken_from_an_end_that_is_left_alone() {
    use crate::fitting::trimming::line;
    let bar = bar(10);
    let lapped = |before, after| vec![How::Lapped { before, after }];
    assert_eq!(line(&[bar], &[8, 1], &[20, 10], 2), (50, lapped(8, 0)));
    assert_eq!(line(&[bar], &[1, 8], &[10, 20], 2), (50, lapped(0, 8)));
}

/// By hand: two fours beside one join that gives 3; each is 3 short and up to 2 of it may be eased in, so that
/// each wants 1 of the join at the least: 2 minutes for it and 3 for each that is eased in. The 1 that is left
/// goes to the first, and with that the join gives all it has.
#[test]
fn what_a_join_has_left_is_given_once() {
    use crate::fitting::trimming::line;
    let bar = bar(3);
    let lapped = |before, after| How::Lapped { before, after };
    let found = line(&[bar, bar], &[0, 3, 0], &[10, 20, 10], 2);
    assert_eq!(found, (80, vec![lapped(0, 2), lapped(1, 0)]));
}

/// By hand, on a ruler of 1/32 in: a strip of 14 mm hides 2 mm at the edge, one of 12.6 mm hides 1.3 mm, and a
/// join gives up to 3/32 in (13/32 in are 10.3 mm). The last four is 7/64 in short, 2.78 mm, and wants both: the
/// join gives 2/32 in, a mark, and the edge the rest, 3/64 in (1.19 mm), which needs no mark. Half and half,
/// 3½/64 in, would be nearer the middle, but the join would give ½/64 in too much. Likewise the first.
#[test]
fn a_shortage_is_shared_with_the_edge_by_the_mark_of_the_join() {
    for strip in [14_000_000, 12_600_000] {
        for (col, before, after) in [(2, 4, 3), (0, 3, 4)] {
            let mut plan = Plan {
                across: 6,
                down: 2,
                ..Plan::default()
            };
            plan.binding.strip = nm(strip);
            let (told, trouble) = on_thirty_seconds(plan, col, 7);
            assert_eq!(told, [(lapped_by(before, after), zero())], "{col}");
            assert_eq!(trouble, 30);
        }
    }
}

/// Three fours of 9½ in in a row, of which some are so much short in width.
fn three_in_a_row(short: &[(u16, Length)]) -> Throw {
    let plan = Plan {
        across: 6,
        down: 2,
        ..Plan::default()
    };
    let full = half_inches(19);
    let off = short.iter().map(|(c, by)| (four(0, *c), full - *by, full));
    measured(plan, &off.collect::<Vec<_>>())
}

/// The same, lapped 7/16 in between where the plan has ½.
fn lapped_less(short: &[(u16, Length)]) -> Throw {
    let mut throw = three_in_a_row(short);
    let lap = Some(sixty_fourths(28));
    let laps = vec![(four(0, 0), four(0, 1), lap), (four(0, 1), four(0, 2), lap)];
    throw.apply(&Event::LapsMarked { laps }, 0);
    throw
}

/// By hand: either lap gives 1/16 in. The middle four is 1/8 in short and has both, each told with the
/// four that lies there.
#[test]
fn a_share_is_told_with_the_neighbour_it_comes_from() {
    use crate::plan::binding::EdgeSide;
    let throw = lapped_less(&[(1, eighth_inches(1))]);
    let [found] = &shortfalls(&throw, four(0, 1))[..] else {
        panic!("short in width alone")
    };
    let told: Vec<_> = found
        .shares
        .iter()
        .map(|s| (s.side, s.by, s.join))
        .collect();
    let (sixteenth, lap) = (sixty_fourths(4), sixty_fourths(28));
    let from = |side, four| (side, sixteenth, Some((four, lap)));
    assert_eq!(
        told,
        [
            from(EdgeSide::Left, four(0, 0)),
            from(EdgeSide::Right, four(0, 2))
        ]
    );
    assert_eq!(found.open, zero());
}

/// A four that is 1/8 in short in width asks for something until both its laps give 1/16 in; one that holds its
/// size, or more, asks for nothing.
#[test]
fn a_short_four_is_decided_once_laps_make_up_for_it() {
    use crate::fitting::trimming::is_undecided;
    let short = [(1, eighth_inches(1))];
    let (open, met) = (three_in_a_row(&short), lapped_less(&short));
    assert!(is_undecided(&open, four(0, 1)) && !is_undecided(&met, four(0, 1)));
    assert!(!is_undecided(&open, four(0, 0)) && !is_undecided(&met, four(0, 0)));
    // What the laps give its width does nothing for its height.
    let (piece, full) = (four(0, 1), half_inches(19));
    let (width, height) = (full - eighth_inches(1), full - inches(1));
    let lower = met.after(&[Event::Measured {
        piece,
        width,
        height,
    }]);
    assert!(is_undecided(&lower, piece));
}

/// Every size is told once, and none that cannot be: though fours of 5 in squares came out 10½ in wide, none is
/// trimmed to more than 10 in, which is two squares side by side.
#[test]
fn sizes_to_trim_to_can_be_and_are_told_once() {
    let plan = Plan {
        across: 4,
        down: 2,
        ..Plan::default()
    };
    let trims = |width| -> Vec<Length> {
        let odd = [0, 1].map(|c| (four(0, c), width, width));
        let found = choices(&measured(plan, &odd), Ruler::default());
        found.iter().map(|c| c.trim).collect()
    };
    let wide = trims(half_inches(21));
    assert!(!wide.is_empty() && wide.iter().all(|trim| *trim <= inches(10)));
    let mut all = trims(half_inches(18));
    let n = all.len();
    assert!(all.contains(&quarter_inches(37)) && all.contains(&half_inches(19)));
    all.sort();
    all.dedup();
    assert_eq!(all.len(), n);
}

/// By hand: three fours in a row lapped 10 mm where 14 mm were planned, so that each join gives 4 mm; a strip of
/// 14 mm hides 2 mm at the edge. The middle one is 7 mm short and the last 5: with 1 mm of each eased in, the
/// middle has 4 and 2 of the joins, and the last the other 2 and the edge. Did the middle take all 7 of the
/// joins, 2 mm of the last would be open. Where it is 6 mm short it has 4 and 2, and the last the other 2 and the
/// edge, which is all that 4 mm want, and all but 1 mm of 5.
#[test]
fn nobody_takes_what_can_be_eased_in_before_the_others() {
    let mm = |n: i64| nm(n * 1_000_000);
    let mut plan = Plan {
        across: 6,
        down: 2,
        lap: mm(14),
        ..Plan::default()
    };
    plan.binding.strip = mm(14);
    let full = plan.natural_four();
    for (middle, last, eased) in [(7, 5, [1, 1]), (6, 4, [0, 0]), (6, 5, [0, 1])] {
        let odd = [(1, middle), (2, last)].map(|(c, short)| (four(0, c), full - mm(short), full));
        let mut throw = measured(plan, &odd);
        let lap = Some(mm(10));
        let laps = vec![(four(0, 0), four(0, 1), lap), (four(0, 1), four(0, 2), lap)];
        throw.apply(&Event::LapsMarked { laps }, 0);
        let told = |c| {
            let found = shortfalls(&throw, four(0, c)).swap_remove(0);
            let shares: Vec<_> = found.shares.iter().map(|s| s.by).collect();
            (shares, found.open, found.eased)
        };
        assert_eq!(told(1), (vec![mm(4), mm(2)], zero(), mm(eased[0])));
        assert_eq!(told(2), (vec![mm(2), mm(2)], zero(), mm(eased[1])));
    }
}

/// By hand: the first four is 1/16 in short too. The middle one has nothing but the laps, so it has
/// them first; the first one has its outer edge, where the binding hides as much.
#[test]
fn fours_within_a_row_have_the_laps_before_those_at_its_ends() {
    use crate::plan::binding::EdgeSide;
    let throw = lapped_less(&[(0, sixty_fourths(4)), (1, eighth_inches(1))]);
    let met = |c| {
        let found = shortfalls(&throw, four(0, c)).swap_remove(0);
        let shares = found.shares.into_iter();
        let shares: Vec<_> = shares.map(|s| (s.side, s.by, s.join.is_some())).collect();
        (shares, found.open)
    };
    let sixteenth = sixty_fourths(4);
    let both = vec![
        (EdgeSide::Left, sixteenth, true),
        (EdgeSide::Right, sixteenth, true),
    ];
    assert_eq!(met(1), (both, zero()));
    assert_eq!(met(0), (vec![(EdgeSide::Left, sixteenth, false)], zero()));
}

/// By hand, on sixteenths: the first of three fours is 5 mm short and has it from its outer edge; the
/// middle one is 1/32 in short and has a lap of 7/16 in for it, which gives 1/32 in too much. That is
/// told of the middle one, whose lap it is, and not of the first, which leaves that lap alone.
#[test]
fn what_a_lap_gives_too_much_is_told_of_the_four_that_asked_for_it() {
    let (edge, hair) = (nm(5_000_000), sixty_fourths(2));
    let throw = three_in_a_row(&[(0, edge), (1, hair)]);
    let found = choice(&throw, half_inches(19), Ruler::default().step());
    let told: Vec<_> = found
        .saves
        .iter()
        .map(|s| (s.piece, s.how, s.over))
        .collect();
    let lapped = |before, after| How::Lapped {
        before: in_nm(before),
        after: in_nm(after),
    };
    assert_eq!(
        told,
        [
            (four(0, 0), lapped(edge, zero()), zero()),
            (four(0, 1), lapped(hair, zero()), hair),
        ]
    );
}

/// By hand: the first of two fours is 5 short, more than the join between them gives (3), so it takes
/// nothing of it. The second is 2 short and has that from the join, whose price (20) is its own, whether
/// the first is sewn again (80), made new (300) or left short (1200).
#[test]
fn a_join_that_the_one_before_leaves_alone_has_its_price() {
    use crate::fitting::trimming::{Bar, line};
    let bar = |short, resew, renew| Bar {
        short,
        resew,
        renew,
    };
    let second = bar(2, None, None);
    let by_join = How::Lapped {
        before: 2,
        after: 0,
    };
    for (first, cost, how) in [
        (bar(5, Some(80), Some(300)), 100, How::Resewn),
        (bar(5, None, Some(300)), 320, How::Renewed),
        (bar(5, None, None), 1220, How::LeftShort),
    ] {
        let found = line(&[first, second], &[0, 3, 0], &[10, 20, 10], 0);
        assert_eq!(found, (cost, vec![how, by_join]));
    }
    // Nor does one that is eased in (30) whole. Of the 9 that the second is short the join gives 8 (20), and
    // the rest is eased in too.
    let found = line(
        &[bar(2, None, None), bar(9, None, None)],
        &[0, 8, 0],
        &[10, 20, 10],
        2,
    );
    let lapped = |before| How::Lapped { before, after: 0 };
    assert_eq!(found, (80, vec![lapped(0), lapped(8)]));
}
