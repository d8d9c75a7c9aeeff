//! The choice of a trim size is the cheapest there is: against exhaustive search on small
//! cases, and against a general mixed-integer solver (crate `microlp` through `good_lp`)
//! on long ones. And every way offered keeps its promise.

use good_lp::{Expression, ProblemVariables, Solution, SolverModel, constraint, microlp, variable};
use lapwork_core::command::{Command, decide};
use lapwork_core::fitting::trimming::{
    Bar, EASE, EDGE, How, NARROWER, RENEW, SEAM, SHORT, choice, choices, line,
};
use lapwork_core::measure::{Count, Length, Ruler, inches, sixty_fourths, zero};
use lapwork_core::plan::assembly::Rect;
use lapwork_core::plan::{JoinOrder, Plan};
use lapwork_core::rescue::{ways, ways_for_block};
use lapwork_core::throw::fringe::least_lap;
use lapwork_core::throw::tasks::Task;
use lapwork_core::throw::{Event, Mishap, Throw};
use proptest::prelude::*;

/// The cheapest cost by trying everything: every way for every bar, every split of every
/// shortage in whole units, with any part of it that may be eased in.
fn exhaustive(bars: &[Bar], room: &[i64], price: &[i64], eased: i64) -> i64 {
    fn go(
        bars: &[Bar],
        j: usize,
        (room, price, eased): (&[i64], &[i64], i64),
        used: &mut Vec<i64>,
    ) -> i64 {
        let given = (room, price, eased);
        let Some(bar) = bars.get(j) else {
            let paid = used.iter().zip(price).filter(|(u, _)| **u > 0);
            return paid.map(|(_, p)| *p).sum();
        };
        if bar.short <= 0 {
            return go(bars, j + 1, given, used);
        }
        let mut best = SHORT + go(bars, j + 1, given, used);
        for cost in [bar.resew, bar.renew].into_iter().flatten() {
            best = best.min(cost + go(bars, j + 1, given, used));
        }
        for easing in 0..=eased.min(bar.short) {
            let care = if easing > 0 { EASE } else { 0 };
            for before in 0..=bar.short - easing {
                let after = bar.short - easing - before;
                if used[j] + before <= room[j] && after <= room[j + 1] {
                    used[j] += before;
                    used[j + 1] += after;
                    best = best.min(care + go(bars, j + 1, given, used));
                    used[j] -= before;
                    used[j + 1] -= after;
                }
            }
        }
        best
    }
    go(bars, 0, (room, price, eased), &mut vec![0; bars.len() + 1])
}

/// The same as a mixed-integer programme.
fn solved(bars: &[Bar], room: &[i64], price: &[i64], eased: i64) -> f64 {
    let mut vars = ProblemVariables::new();
    let mut cost = Expression::from(0.0);
    let paid: Vec<_> = price
        .iter()
        .map(|p| {
            let y = vars.add(variable().binary());
            cost += *p as f64 * y;
            y
        })
        .collect();
    let mut taken: Vec<Expression> = vec![Expression::from(0.0); bars.len() + 1];
    let mut rules = Vec::new();
    for (j, bar) in bars.iter().enumerate().filter(|(_, b)| b.short > 0) {
        let lapped = vars.add(variable().binary());
        let left = vars.add(variable().binary());
        cost += SHORT as f64 * left;
        let mut ways = lapped + left;
        for price in [bar.resew, bar.renew].into_iter().flatten() {
            let way = vars.add(variable().binary());
            cost += price as f64 * way;
            ways += way;
        }
        rules.push(constraint!(ways == 1.0));
        let before = vars.add(variable().min(0.0));
        let after = vars.add(variable().min(0.0));
        let easing = vars.add(variable().binary());
        cost += EASE as f64 * easing;
        let least = bar.short as f64 * lapped - eased.min(bar.short) as f64 * easing;
        rules.push(constraint!(before + after >= least));
        taken[j] += before;
        taken[j + 1] += after;
    }
    for ((taken, room), y) in taken.into_iter().zip(room).zip(&paid) {
        rules.push(constraint!(taken <= *room as f64 * *y));
    }
    let model = vars.minimise(cost.clone()).using(microlp).with_all(rules);
    let solution = model.solve().expect("the solver finds an end");
    solution.eval(&cost)
}

fn bars() -> impl Strategy<Value = Vec<Bar>> {
    let bar = (0i64..7, any::<bool>(), any::<bool>()).prop_map(|(short, resew, renew)| Bar {
        short,
        resew: resew.then_some(SEAM),
        renew: renew.then_some(RENEW),
    });
    prop::collection::vec(bar, 1..6)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]
    #[test]
    fn a_line_is_as_cheap_as_exhaustive_search_finds(bars in bars(), rooms in prop::collection::vec(0i64..6, 6), eased in 0i64..3) {
        let room = &rooms[..=bars.len()];
        let mut price = vec![NARROWER; bars.len() + 1];
        price[0] = EDGE;
        price[bars.len()] = EDGE;
        prop_assert_eq!(line(&bars, room, &price, eased).0, exhaustive(&bars, room, &price, eased));
    }
}

#[test]
fn long_lines_are_as_cheap_as_a_general_solver_finds() {
    let mut worst: f64 = 0.0;
    let mut seed: u64 = 7;
    let mut roll = |n: u64| {
        // A small generator of our own (MMIX constants, from memory) to have the same lines always.
        seed = seed
            .wrapping_mul(6364136223846793005)
            .wrapping_add(1442695040888963407);
        ((seed >> 33) % n) as i64
    };
    for _ in 0..60 {
        let n = 20 + roll(11) as usize;
        let bars: Vec<Bar> = (0..n)
            .map(|_| Bar {
                short: (roll(10) - 4).max(0),
                resew: (roll(2) == 0).then_some(SEAM * 3),
                renew: (roll(4) > 0).then_some(RENEW),
            })
            .collect();
        let room: Vec<i64> = (0..=n).map(|_| roll(6)).collect();
        let price: Vec<i64> = (0..=n)
            .map(|j| if j == 0 || j == n { EDGE } else { NARROWER })
            .collect();
        let eased = roll(3);
        let (ours, theirs) = (
            line(&bars, &room, &price, eased).0 as f64,
            solved(&bars, &room, &price, eased),
        );
        worst = worst.max((ours - theirs).abs());
    }
    eprintln!("worst gap to the general solver over 60 lines of 20 to 30 blocks: {worst}");
    assert!(worst < 1e-6);
}

/// A throw whose blocks are all stitched and measured, so many sixty-fourths off.
fn measured(across: u16, down: u16, order: JoinOrder, off: &[(i64, i64)]) -> Throw {
    let plan = Plan {
        across,
        down,
        order,
        ..Plan::default()
    };
    let begun = Event::Begun {
        name: "t".into(),
        plan,
        prints: lapwork_core::demo::prints(),
        denims: vec![],
        after: None,
    };
    let mut throw = Throw::begin(&begun).expect("a beginning");
    loop {
        let blocks = throw.assembly().blocks();
        let in_block = |p: Rect| blocks.iter().any(|b| b.holds(p));
        let open = lapwork_core::command::ready(&throw)
            .find(|(p, t)| in_block(*p) && !matches!(t, Task::PressBlock | Task::SquareUp));
        let Some((piece, task)) = open else { break };
        throw.apply(
            &Event::Done {
                task,
                pieces: vec![piece],
                made: vec![],
            },
            0,
        );
    }
    let blocks: Vec<Rect> = throw
        .assembly()
        .blocks()
        .into_iter()
        .filter(|b| b.count() > 1)
        .collect();
    for (block, (w, h)) in blocks.into_iter().zip(off.iter().cycle()) {
        let natural = lapwork_core::fitting::squaring::natural(&throw, block);
        let off = |squares: u16, by: i64| {
            if squares == 2 {
                sixty_fourths(by)
            } else {
                inches(0)
            }
        };
        throw.apply(
            &Event::Measured {
                piece: block,
                width: natural.width + off(block.cols, *w),
                height: natural.height + off(block.rows, *h),
            },
            0,
        );
    }
    throw
}

fn taken(throw: &Throw, action: &Command) -> Throw {
    let mut after = throw.clone();
    for event in decide(Some(throw), action).expect("what is offered is allowed") {
        after.apply(&event, 1);
    }
    after
}

fn sewn(throw: &Throw) -> Vec<(Rect, Vec<Task>, Option<Length>)> {
    let mut out: Vec<_> = throw
        .worked()
        .map(|(p, w)| {
            (
                *p,
                w.done.iter().map(|d| d.0).collect(),
                w.made.map(|m| m.lap),
            )
        })
        .collect();
    out.sort_by_key(|(p, _, _)| *p);
    out
}

fn offs() -> impl Strategy<Value = Vec<(i64, i64)>> {
    prop::collection::vec((-14i64..10, -14i64..10), 1..9)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// The best size is the cheapest of every mark of the ruler, each by itself.
    #[test]
    fn the_best_size_is_the_cheapest_of_all(off in offs(), across in 2u16..7, down in 2u16..7) {
        let throw = measured(across, down, JoinOrder::Rows, &off);
        let found = choices(&throw, Ruler::default());
        for sixteenth in 8 * 16..=9 * 16 + 8 {
            let one = choice(&throw, sixty_fourths(sixteenth * 4), Ruler::default().step());
            let offered = found.iter().any(|c| c.trim == one.trim);
            prop_assert!(!offered || one.cost >= found[0].cost);
            // Below the smallest four nothing is gained: it only loses more of the throw.
            prop_assert!(offered || one.cost >= found[0].cost);
        }
    }

    /// No choice breaks the least fringe or touches a sewn piece, and each gives the size it promised.
    #[test]
    fn a_chosen_size_keeps_its_promise(off in offs(), across in 2u16..8, down in 2u16..8, which in 0usize..3) {
        let order = [JoinOrder::Rows, JoinOrder::Columns, JoinOrder::Doubling][which];
        let throw = measured(across, down, order, &off);
        for c in choices(&throw, Ruler::default()).iter().take(6) {
            for (a, b, lap) in &c.laps {
                prop_assert!(*lap >= least_lap(&throw));
                let join = throw.joined_by(*a, *b).expect("neighbours");
                prop_assert!(!throw.begun(join.whole));
            }
            let Ok(_) = decide(Some(&throw), &Command::ChooseTrim { trim: c.trim, step: Some(Ruler::default().step()) }) else { continue };
            let after = taken(&throw, &Command::ChooseTrim { trim: c.trim, step: Some(Ruler::default().step()) });
            prop_assert_eq!(after.plan.target(), c.trim);
            prop_assert_eq!(sewn(&throw), sewn(&after));
            let lapped_inside = c.saves.iter().all(|s| matches!(s.how, How::Lapped { .. }))
                && c.saves.iter().all(|s| {
                    // Not at the outer edge, where the piece stays short under the binding.
                    s.piece.row > 0 && s.piece.col > 0
                        && s.piece.row + s.piece.rows < down && s.piece.col + s.piece.cols < across
                });
            if lapped_inside {
                // Laps lie on marks of the ruler; what they give beyond the shortage is told.
                let over = c.saves.iter().fold(zero(), |sum, s| sum + s.over);
                let eased = c.saves.iter().fold(zero(), |sum, s| sum + s.eased);
                let (size, plan) = (after.finished(), after.plan.finished());
                prop_assert!(size.width >= plan.0 - eased && size.width <= plan.0 + over);
                prop_assert!(size.height >= plan.1 - eased && size.height <= plan.1 + over);
            }
        }
    }

    /// Larger blocks never make the best choice worse.
    #[test]
    fn larger_blocks_never_cost_more(off in offs(), more in prop::collection::vec(0i64..5, 8), across in 2u16..7, down in 2u16..7) {
        let small = measured(across, down, JoinOrder::Rows, &off);
        let larger: Vec<(i64, i64)> = off.iter().zip(more.iter().cycle()).map(|((w, h), m)| (w + m, h + m)).collect();
        let large = measured(across, down, JoinOrder::Rows, &larger);
        let cost = |t: &Throw| {
            // Over the same sizes for both.
            (8 * 16..=9 * 16 + 8).map(|k| choice(t, sixty_fourths(k * 4), Ruler::default().step()).cost).min()
        };
        prop_assert!(cost(&large) <= cost(&small));
        for k in (9 * 16..=9 * 16 + 8).step_by(2) {
            prop_assert!(choice(&large, sixty_fourths(k * 4), Ruler::default().step()).cost <= choice(&small, sixty_fourths(k * 4), Ruler::default().step()).cost);
        }
    }

    /// Every way offered for a short block or a spoilt square is allowed and does what it says.
    #[test]
    fn every_way_offered_can_be_taken(off in offs(), across in 2u16..6, down in 2u16..6, pick in any::<u16>(), spares in 0u32..2) {
        let mut throw = measured(across, down, JoinOrder::Rows, &off);
        throw.apply(&Event::SparesCounted { spares: Count::at_most(spares) }, 0);
        let blocks: Vec<Rect> = throw.assembly().blocks().into_iter().filter(|b| b.count() > 1).collect();
        let block = blocks[usize::from(pick) % blocks.len()];
        for way in ways_for_block(&throw, block, Ruler::default()) {
            let after = taken(&throw, &way.action);
            if way.seams == 0 && !matches!(way.action, Command::Swap { .. } | Command::SetAside { .. }) {
                prop_assert_eq!(sewn(&throw), sewn(&after), "{:?} undid something", way);
            }
            for (a, b, lap) in after.marks() {
                prop_assert!(lap >= least_lap(&throw), "{:?} {:?}", a, b);
            }
        }
        let square = Rect::square(pick % down, (pick / 7) % across);
        for why in Mishap::ALL {
            for way in ways(&throw, square, why) {
                let after = taken(&throw, &way.action);
                match &way.action {
                    Command::Replace { spare, from, .. } => {
                        prop_assert_eq!(after.has(square, Task::Cut), *spare || from.is_some());
                        if let Some(from) = from {
                            prop_assert!(throw.lies_loose(*from) && !after.has(*from, Task::Cut));
                            prop_assert_eq!(after.cover(*from), throw.cover(*from));
                        }
                        prop_assert!(!after.is_joined(square));
                        prop_assert_eq!(after.losses.len(), throw.losses.len() + 1);
                    }
                    Command::Patch { face, .. } => {
                        prop_assert!(after.cover(square).on(*face).is_some());
                        prop_assert!(!after.complete(square));
                        prop_assert_eq!(sewn(&throw), sewn(&after));
                    }
                    Command::ChangePlan { plan } => prop_assert_eq!(after.plan, *plan),
                    other => prop_assert!(false, "{:?}", other),
                }
            }
        }
    }

    /// Sewn blocks keep their work through any change of grid: in place, elsewhere, or set aside.
    #[test]
    fn no_sewn_block_is_lost_when_the_grid_changes(across in 2u16..7, down in 2u16..7, new_across in 1u16..8, new_down in 1u16..8) {
        let throw = measured(across, down, JoinOrder::Rows, &[(0, 0)]);
        let plan = Plan { across: new_across, down: new_down, ..throw.plan };
        let Ok(events) = decide(Some(&throw), &Command::ChangePlan { plan }) else { return Ok(()) };
        let mut after = throw.clone();
        for event in &events {
            after.apply(event, 0);
        }
        let sewn = |t: &Throw| t.worked().filter(|(p, w)| t.assembly().is_block(**p) && !w.done.is_empty()).count();
        prop_assert_eq!(sewn(&after) + after.aside.len(), sewn(&throw));
    }
}
