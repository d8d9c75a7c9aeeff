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
fn measured(plan: Plan, odd: &[(Rect, Length, Length)]) -> Throw {
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

fn four(row: u16, col: u16) -> Rect {
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
                    assert_eq!(given, save.short + save.over);
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

/// Each saving's price by hand, in minutes: 2 for a join lapped less, 1 for an edge, 8 for a seam
/// opened and sewn again, 30 for a new block (our judgement; common practice, no source). A single
/// four has no neighbours, and a strip of 10 mm covers 5 mm of each face, which must all catch
/// cloth: so nothing is hidden at the edge. Its laps of ½ in give 1/16 in down to 7/16 in, the
/// narrowest on this ruler that keeps 10 mm.
#[test]
fn a_lap_is_opened_by_its_seams_and_only_for_what_it_gives() {
    let mut plan = Plan {
        across: 2,
        down: 2,
        ..Plan::default()
    };
    plan.binding.strip = nm(10_000_000);
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
    let plan = Plan {
        across: 6,
        down: 2,
        ..Plan::default()
    };
    let full = half_inches(19);
    let trouble = |sixteenths: i64| {
        let width = full - sixty_fourths(4 * sixteenths);
        let throw = measured(plan, &[(four(0, 1), width, full)]);
        choice(&throw, full, Ruler::default().step()).trouble
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
