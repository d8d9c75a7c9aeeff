use super::fabrics::{Fabrics, SHIFT};
use super::wishes::score;
use super::*;
use crate::cloth::fabric::{Cover, Face, Print, Texture, lightness};
use crate::cloth::pile::Use;
use crate::command::{Command, decide};
use crate::measure::{Count, eighth_inches};
use crate::plan::Plan;
use crate::plan::assembly::{Kind, Rect, source};
use crate::throw::Throw;
use crate::throw::loose::loose_units;
use crate::throw::tasks::Task;
use crate::throw::wishes::{Apart, DenimWish, Grain, Layout, Pattern, Wishes};
use proptest::prelude::*;
use std::collections::BTreeMap;

fn begun(across: u16, down: u16, stock: &[Option<u32>]) -> Throw {
    let print = |(n, stock): (usize, &Option<u32>)| Print {
        uncut: false,
        mixed: false,
        patch: None,
        photo: None,
        name: format!("print {n}"),
        colour: "#777777".into(),
        texture: Texture::Dot,
        stock: stock.map(Count::at_most),
    };
    let action = Command::Begin {
        name: "t".into(),
        plan: Plan {
            across,
            down,
            ..Plan::default()
        },
        prints: stock.iter().enumerate().map(print).collect(),
        denims: crate::demo::denims(),
    };
    Throw::begin(&decide(None, &action).unwrap()[0]).unwrap()
}

/// The same throw with prints of which each square is another.
fn with_mixed(mut throw: Throw, mixed: &[bool]) -> Throw {
    let mut prints = throw.prints.clone();
    for (print, mixed) in prints.iter_mut().zip(mixed) {
        print.mixed = *mixed;
    }
    let denims = throw.denims.clone();
    act(&mut throw, &Command::SetCloth { prints, denims });
    throw
}

fn act(throw: &mut Throw, action: &Command) {
    for event in decide(Some(throw), action).unwrap_or_default() {
        throw.apply(&event, 0);
    }
}

/// So many squares of a denim, ready cut, on the pile; none if there are none.
fn pack(count: u32, denim: Option<u8>) -> Command {
    Command::AddPack {
        side: Plan::default().side,
        count: Count::at_most(count),
        makes: Use::Denim { denim },
        name: "squares".into(),
        mixed: false,
    }
}

fn arranged(throw: &Throw, wishes: Wishes, seed: u64, rounds: u32) -> (Arranger, Layout) {
    let mut arranger = Arranger::new(throw, wishes, seed);
    for _ in 0..rounds {
        arranger.round();
    }
    let layout = arranger.layout(throw);
    (arranger, layout)
}

/// A throw some way on: squares cut and glued, some pairs and fours sewn.
fn worked_on(throw: &mut Throw, wishes: Wishes, pairs: u32, fours: u32) {
    let most = throw.plan.squares();
    let wishes = Wishes {
        front: wishes.front.min(Count::at_most(most)),
        back: wishes.back.min(Count::at_most(most)),
        ..wishes
    };
    let (_, layout) = arranged(throw, wishes, 5, 1);
    act(throw, &Command::LayOut { wishes, layout });
    let tick = |task, kind, count| Command::TickNext {
        task,
        kind,
        count: Count::at_most(count),
    };
    let n = throw.plan.squares();
    act(throw, &tick(Task::Cut, Kind::Square, n * 3 / 4));
    for task in [Task::CoverFront, Task::CoverBack] {
        act(throw, &tick(task, Kind::Square, n / 3));
    }
    for task in [Task::PressCover, Task::CoolCover] {
        act(throw, &tick(task, Kind::Square, n / 3));
    }
    let lap = [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch];
    for (kind, count) in [(Kind::Pair, pairs), (Kind::Four, fours)] {
        for task in lap {
            act(throw, &tick(task, kind, count));
        }
    }
}

/// What a piece shows, turned so that it can be compared: the least of its turns.
fn shown(throw: &Throw, piece: Rect) -> Vec<Cover> {
    let covers: Vec<Cover> = piece.squares().map(|s| throw.cover(s)).collect();
    let turns = if piece.rows == piece.cols { 0..4 } else { 0..2 };
    let quarters = if piece.rows == piece.cols { 1 } else { 2 };
    turns
        .map(|turn| {
            let turn = turn * quarters;
            (0..covers.len())
                .map(|n| {
                    let mut c = covers[source(n, (piece.rows, piece.cols), turn)];
                    c.crosswise ^= turn % 2 == 1;
                    c
                })
                .collect::<Vec<_>>()
        })
        .min_by_key(|covers| format!("{covers:?}"))
        .unwrap()
}

/// Every joined piece with what it shows and what was done to it, however placed.
fn units(throw: &Throw) -> BTreeMap<String, usize> {
    let mut out = BTreeMap::new();
    for unit in loose_units(throw) {
        let done: Vec<Task> = throw.work(unit).unwrap().done.iter().map(|d| d.0).collect();
        let shape = (unit.rows, unit.cols);
        *out.entry(format!("{shape:?} {:?} {done:?}", shown(throw, unit)))
            .or_insert(0) += 1;
    }
    out
}

/// Every loose square that something is glued to: the cloth, what is glued, and work.
fn glued(throw: &Throw) -> BTreeMap<String, usize> {
    let mut out = BTreeMap::new();
    for square in throw.assembly().whole().squares() {
        let fronts = throw.has(square, Task::CoverFront);
        let backs = throw.has(square, Task::CoverBack);
        if throw.is_joined(square) || !(fronts || backs) {
            continue;
        }
        let mut cover = throw.cover(square);
        cover.front = cover.front.filter(|_| fronts);
        cover.back = cover.back.filter(|_| backs);
        cover.crosswise = false;
        *out.entry(format!("{cover:?}")).or_insert(0) += 1;
    }
    out
}

fn any_wishes() -> impl Strategy<Value = Wishes> {
    (
        0u32..90,
        0u32..90,
        0usize..3,
        0usize..4,
        0usize..3,
        any::<[bool; 2]>(),
        0usize..5,
    )
        .prop_map(
            |(front, back, apart, pattern, grain, [move_made, by_hand_too], denims)| Wishes {
                front: Count::at_most(front),
                back: Count::at_most(back),
                apart: [Apart::Free, Apart::Edges, Apart::Corners][apart],
                pattern: [
                    Pattern::Free,
                    Pattern::Mirror,
                    Pattern::ShadeRows,
                    Pattern::LightEdges,
                ][pattern],
                grain: [Grain::Free, Grain::OneWay, Grain::ByTurns][grain],
                move_made,
                denims: [
                    None,
                    Some(DenimWish::Kept),
                    Some(DenimWish::Any),
                    Some(DenimWish::Apart),
                    Some(DenimWish::Bands),
                ][denims],
                by_hand_too,
                crossing: None,
            },
        )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(160))]

    #[test]
    fn made_pieces_are_never_broken_and_stock_never_exceeded(
        across in 1u16..9, down in 1u16..9, first in any_wishes(), second in any_wishes(),
        pairs in 0u32..9, fours in 0u32..4, seed in any::<u64>(), a in 0u32..20, pin in 0u32..200,
        packs in (0u32..60, 0u32..60, 0u32..20), by_hand in 0u32..9,
    ) {
        let mut throw = begun(across, down, &[Some(a), Some(9), None]);
        worked_on(&mut throw, first, pairs, fours);
        let most = throw.plan.squares();
        let second = Wishes { front: second.front.min(Count::at_most(most)), back: second.back.min(Count::at_most(most)), ..second };
        let squares: Vec<Rect> = throw.assembly().whole().squares().collect();
        let pinned = squares.get(pin as usize).copied();
        if let Some(square) = pinned {
            act(&mut throw, &Command::Pin { pieces: vec![square], pinned: true });
        }
        let (dark, light, unnamed) = packs;
        for (count, denim) in [(dark, Some(0)), (light, Some(1)), (unnamed, None)] {
            act(&mut throw, &pack(count, denim));
        }
        let hers = throw.uncut(None).take(by_hand as usize).collect::<Vec<_>>();
        act(&mut throw, &Command::SetDenim { pieces: hers, denim: 1, wrong_side_up: false });
        let (arranger, layout) = arranged(&throw, second, seed, 3);
        // Told from the state, the cost is what the search kept count of.
        prop_assert_eq!(score(&arranger.best).cost, {
            let mut anew = arranger.best.clone();
            anew.count_up();
            anew.cost
        });
        let action = Command::LayOut { wishes: second, layout };
        let events = match decide(Some(&throw), &action) {
            Ok(events) => events,
            Err(crate::command::Rejection::Nothing) => return Ok(()),
            Err(refusal) => return Err(TestCaseError::fail(format!("{refusal:?}"))),
        };
        let after = throw.after(&events);
        prop_assert_eq!(units(&throw), units(&after));
        prop_assert_eq!(glued(&throw), glued(&after));
        let covers: Vec<Cover> = after.covers().to_vec();
        prop_assert_eq!(covers, arranger.covers());
        if let Some(square) = pinned {
            prop_assert_eq!(throw.cover(square), after.cover(square));
        }
        for (p, print) in throw.prints.iter().enumerate() {
            let used = |t: &Throw| crate::throw::stock::used(t, p as u8);
            prop_assert!(print.stock.is_none_or(|s| used(&after) <= s.max(Count::at_most(used(&throw)))));
        }
        if !second.move_made {
            for unit in loose_units(&throw) {
                for square in unit.squares() {
                    prop_assert_eq!(throw.cover(square), after.cover(square));
                }
            }
        }
        let cut = |t: &Throw| squares.iter().filter(|s| t.has(**s, Task::Cut)).count();
        prop_assert_eq!(cut(&throw), cut(&after));
        let light = |t: &Throw, s: &Rect| t.cover(*s).denim == 1;
        let cut_light = |t: &Throw| squares.iter().filter(|s| t.has(**s, Task::Cut) && light(t, s)).count();
        prop_assert_eq!(cut_light(&throw), cut_light(&after));
        if second.choose_denims() {
            for square in squares.iter().filter(|s| if throw.has(**s, Task::Cut) {
                !second.move_made
            } else {
                throw.is_denim_by_hand(**s) && !second.by_hand_too
            }) {
                prop_assert_eq!(throw.cover(*square).denim, after.cover(*square).denim);
            }
            if let Some(supply) = DenimSupply::of(&throw) {
                // None lacks that could be had, as far as what stays allows.
                let lacks = |t: &Throw| {
                    let score = of(t, second).from_pile.expect("the pile is known");
                    score.lacking.iter().sum::<u32>()
                };
                let open = throw.uncut(None).filter(|s| !throw.is_pinned(*s) && !throw.is_denim_by_hand(*s));
                let stays = throw.uncut(None).count() - open.count();
                if stays == 0 {
                    let uncut = throw.uncut(None).count() as u32;
                    prop_assert_eq!(lacks(&after), uncut.saturating_sub(supply.all()));
                } else {
                    prop_assert!(lacks(&after) <= lacks(&throw));
                }
            }
        } else {
            let denims = |t: &Throw| squares.iter().filter(|s| light(t, s)).count();
            prop_assert_eq!(denims(&throw), denims(&after));
        }
    }

    #[test]
    fn same_seed_same_layout_and_never_worse(across in 2u16..10, down in 2u16..10, wishes in any_wishes(), seed in any::<u64>()) {
        let throw = begun(across, down, &[None, Some(7), None]);
        let mut one = Arranger::new(&throw, wishes, seed);
        let mut other = Arranger::new(&throw, wishes, seed);
        let mut cost = one.cost();
        for _ in 0..3 {
            one.round();
            other.round();
            prop_assert!(one.cost() <= cost);
            cost = one.cost();
            prop_assert_eq!(one.layout(&throw), other.layout(&throw));
        }
    }

    /// The sums by which fabrics are annealed tell what the cost of the whole board tells, but for
    /// what is rounded.
    #[test]
    fn an_exchange_costs_what_counting_anew_says(
        across in 1u16..8, down in 1u16..8, wishes in any_wishes(), most in 0u16..6,
        pins in proptest::collection::vec(0usize..64, 0..5), draws in proptest::collection::vec(any::<u64>(), 40),
        mixed in any::<[bool; 3]>(),
    ) {
        let mut throw = with_mixed(begun(across, down, &[Some(6), Some(9), None]), &mixed);
        let squares: Vec<Rect> = throw.assembly().whole().squares().collect();
        let most = (most < 5).then(|| Count::from(most));
        let wishes = Wishes { crossing: most, pattern: Pattern::Free, ..wishes };
        let (_, layout) = arranged(&throw, wishes, 2, 1);
        act(&mut throw, &Command::LayOut { wishes, layout });
        let pieces = pins.iter().filter_map(|n| squares.get(*n)).copied().collect();
        act(&mut throw, &Command::Pin { pieces, pinned: true });
        let mut board = Arranger::new(&throw, wishes, 4).best;
        let begun_as = board.clone();
        let mut fabrics = Fabrics::new(begun_as.laid(), &begun_as.sets, &begun_as.even);
        for draw in draws {
            let Some((f, x, y)) = fabrics.drawn(draw) else { continue };
            let told = fabrics.exchange_cost(f, x, y);
            fabrics.exchange(f, x, y);
            let before = board.cost;
            board.lay_fabrics(fabrics.on());
            // Of at most three sets, each with two parts rounded.
            let counted = (board.cost - before) << SHIFT;
            prop_assert!((told - counted).abs() <= 12 << SHIFT, "{} for {}", told >> SHIFT, counted >> SHIFT);
        }
    }

    #[test]
    fn four_quarters_are_none(quarters in 0u8..4, n in 0usize..4) {
        let back = (4 - quarters) % 4;
        prop_assert_eq!(source(source(n, (2, 2), back), (2, 2), quarters), n);
    }
}

/// A pack of many fabrics covers a whole face: of two by two squares each meets the three others, 6 pairs of
/// neighbours alike of one fabric, and none of a mixed pack; neither does any by which they are laid out.
#[test]
fn squares_that_are_all_different_may_lie_side_by_side() {
    let wishes = Wishes {
        front: Count::from(4),
        ..Wishes::default()
    };
    let score = |mixed: bool| {
        let mut throw = with_mixed(begun(2, 2, &[None]), &[mixed]);
        let pieces = throw.assembly().whole().squares().collect();
        let action = Command::SetFace {
            pieces,
            face: Face::Front,
            print: Some(0),
            laid_on: false,
        };
        act(&mut throw, &action);
        super::of(&throw, wishes)
    };
    let (one, mixed) = (score(false), score(true));
    assert_eq!((one.alike[0].len(), mixed.alike[0].len()), (6, 0));
    let (edge, corner) = super::weights::closeness(wishes.apart);
    assert_eq!(one.cost - mixed.cost, 4 * edge + 2 * corner);
}

/// The layout of one seed, so that a change of library or machine cannot pass unseen.
#[test]
fn a_kept_layout_is_found_again() {
    let throw = begun(6, 8, &[Some(8), Some(8), None, None]);
    let wishes = Wishes {
        front: Count::from(16),
        back: Count::from(12),
        ..Wishes::default()
    };
    let (arranger, _) = arranged(&throw, wishes, 2026, 4);
    let letters = |f: fn(&Cover) -> Option<u8>| -> String {
        let covers = arranger.covers();
        let letter = |c: &Cover| f(c).map_or('.', |p| (b'a' + p) as char);
        covers.iter().map(letter).collect()
    };
    let sum = crc32fast::hash((letters(|c| c.front) + &letters(|c| c.back)).as_bytes());
    assert_eq!(sum, 548_922_312);
}

#[test]
fn a_four_turned_and_moved_keeps_its_work_and_its_measure() {
    let mut throw = begun(4, 4, &[None]);
    let wishes = Wishes {
        front: Count::from(5),
        back: Count::from(3),
        ..Wishes::default()
    };
    worked_on(&mut throw, wishes, 2, 1);
    let (four, other) = (Rect::from([0, 0, 2, 2]), Rect::from([2, 2, 2, 2]));
    assert!(throw.has(four, Task::Stitch));
    act(
        &mut throw,
        &Command::TickNext {
            task: Task::PressBlock,
            kind: Kind::Four,
            count: Count::from(1),
        },
    );
    let size = throw.size(four);
    act(
        &mut throw,
        &Command::Measure {
            piece: four,
            width: size.width,
            height: size.height - eighth_inches(1),
        },
    );
    let corner = throw.cover(Rect::square(0, 0));
    act(&mut throw, &Command::Swap { a: four, b: other });
    assert_eq!(throw.cover(Rect::square(2, 2)), corner);
    act(
        &mut throw,
        &Command::Turn {
            piece: other,
            quarters: 1,
        },
    );
    let turned = Cover {
        crosswise: true,
        ..corner
    };
    assert_eq!(throw.cover(Rect::square(2, 3)), turned);
    assert!(throw.is_turned(other));
    assert_eq!(
        throw.work(other).unwrap().measured.unwrap(),
        crate::throw::Size {
            width: size.width - eighth_inches(1),
            height: size.height
        }
    );
    // To open it again it is laid back as it was sewn.
    act(
        &mut throw,
        &Command::Unpick {
            pieces: vec![other],
            lap: None,
        },
    );
    assert!(!throw.is_turned(other) && !throw.begun(other));
    assert_eq!(throw.cover(Rect::square(2, 2)), corner);
}

#[test]
fn lightness_is_that_of_the_colour() {
    assert_eq!(lightness("#000000"), 0);
    assert_eq!(lightness("#ffffff"), 255);
    assert_eq!(lightness("#00ff00"), 182);
    assert_eq!(lightness("pink"), 0);
}

/// The rows of a throw by the denims they are cut from: `d` dark, `l` light.
fn denim_rows(throw: &Throw, covers: &[Cover]) -> Vec<String> {
    let letter = |c: &Cover| ['d', 'l'][usize::from(c.denim)];
    let rows = covers.chunks(usize::from(throw.plan.across));
    rows.map(|row| row.iter().map(letter).collect()).collect()
}

fn choosing(denims: DenimWish, pattern: Pattern) -> Wishes {
    Wishes {
        denims: Some(denims),
        pattern,
        ..Wishes::default()
    }
}

#[test]
fn an_order_of_shades_is_met_from_the_pile_or_told_to_be_impossible() {
    let mut throw = begun(4, 6, &[]);
    let wishes = choosing(DenimWish::Any, Pattern::ShadeRows);
    assert_eq!(of(&throw, wishes).shades, Shades::NotYet);
    // Nothing is known of the pile: half of each.
    let (arranger, layout) = arranged(&throw, wishes, 1, 2);
    let half = ["llll", "llll", "llll", "dddd", "dddd", "dddd"];
    assert_eq!(denim_rows(&throw, &arranger.covers()), half);
    let mut met = throw.clone();
    act(&mut met, &Command::LayOut { wishes, layout });
    let score = of(&met, wishes);
    assert_eq!((score.shades, score.off_pattern), (Shades::Told, 0));
    // Only dark denim on the pile.
    act(&mut throw, &pack(40, Some(0)));
    let (arranger, _) = arranged(&throw, wishes, 1, 2);
    assert_eq!(arranger.score().shades, Shades::NoOther);
    assert_eq!(of(&throw, wishes).shades, Shades::NoOther);
    // As much light denim as makes two rows.
    act(&mut throw, &Command::TakeHeap { n: 1 });
    act(&mut throw, &pack(16, Some(0)));
    act(&mut throw, &pack(8, Some(1)));
    let (arranger, _) = arranged(&throw, wishes, 1, 2);
    let rows = ["llll", "llll", "dddd", "dddd", "dddd", "dddd"];
    assert_eq!(denim_rows(&throw, &arranger.covers()), rows);
    let from_pile = arranger.score().from_pile.unwrap();
    assert_eq!((from_pile.lacking, from_pile.left), (vec![0, 0], 0));
    // A dark square is cut and lies at the top: the order is not met, and that is said.
    let top = Rect::square(0, 1);
    let cut = |pieces| Command::Tick {
        task: Task::Cut,
        pieces,
    };
    act(&mut throw, &cut(vec![top]));
    let (arranger, _) = arranged(&throw, wishes, 1, 4);
    assert_eq!(arranger.covers()[1].denim, 0);
    assert!(arranger.score().off_pattern > 0);
}

#[test]
fn like_denims_lie_apart_or_together_as_wished() {
    let throw = begun(5, 6, &[None, None]);
    let wishes = Wishes {
        front: Count::from(8),
        back: Count::from(6),
        ..choosing(DenimWish::Apart, Pattern::Free)
    };
    let (arranger, _) = arranged(&throw, wishes, 3, 6);
    assert_eq!(arranger.score().denims_alike, 0);
    let wishes = Wishes {
        denims: Some(DenimWish::Bands),
        ..wishes
    };
    let (arranger, _) = arranged(&throw, wishes, 3, 6);
    assert_eq!(arranger.score().denim_parts, (2, 2));
}

#[test]
fn what_was_chosen_by_hand_stays() {
    let mut throw = begun(4, 4, &[None]);
    let corner = Rect::square(3, 3);
    let by_hand = Command::SetDenim {
        pieces: vec![corner],
        denim: 1,
        wrong_side_up: false,
    };
    act(&mut throw, &by_hand);
    assert!(throw.is_denim_by_hand(corner));
    let wishes = choosing(DenimWish::Any, Pattern::ShadeRows);
    let (arranger, layout) = arranged(&throw, wishes, 1, 3);
    assert_eq!(arranger.covers()[15].denim, 1);
    act(&mut throw, &Command::LayOut { wishes, layout });
    // The layout chose the others, which are not taken for hers.
    let hers = |t: &Throw| t.uncut(None).filter(|s| t.is_denim_by_hand(*s)).count();
    assert_eq!(hers(&throw), 1);
    // Another place takes the choice along.
    let other = Rect::square(0, 0);
    act(
        &mut throw,
        &Command::Swap {
            a: corner,
            b: other,
        },
    );
    assert!(throw.is_denim_by_hand(other) && !throw.is_denim_by_hand(corner));
    // Unless she gives it up.
    let wishes = Wishes {
        by_hand_too: true,
        pattern: Pattern::LightEdges,
        ..wishes
    };
    let mut dark = throw.clone();
    let all = dark.uncut(None).collect();
    let set = Command::SetDenim {
        pieces: all,
        denim: 0,
        wrong_side_up: false,
    };
    act(&mut dark, &set);
    let (arranger, _) = arranged(&dark, wishes, 1, 3);
    assert_eq!(arranger.covers().iter().filter(|c| c.denim == 1).count(), 8);
}

/// Fabrics that meet at each crossing, counted square by square.
fn crossings(covers: &[Cover], across: usize) -> Vec<u32> {
    let down = covers.len() / across;
    let corners = (1..down).flat_map(|r| (1..across).map(move |c| (r, c)));
    let at = |r: usize, c: usize| covers[r * across + c].layers() - 1;
    corners
        .map(|(r, c)| at(r - 1, c - 1) + at(r - 1, c) + at(r, c - 1) + at(r, c))
        .collect()
}

/// The fewest crossings with more than `most` fabrics, over every way to cover so many squares of
/// a small grid on each face.
fn fewest_too_thick([across, down]: [usize; 2], [front, back]: [u32; 2], most: u32) -> usize {
    let all = across * down;
    let ways = |n: u32| (0_u32..1 << all).filter(move |set| set.count_ones() == n);
    let cover = |front: u32, back: u32| -> Vec<Cover> {
        let has = |set: u32, x: usize| (set >> x & 1 == 1).then_some(0);
        let square = |x| Cover {
            front: has(front, x),
            back: has(back, x),
            ..Cover::default()
        };
        (0..all).map(square).collect()
    };
    let thick = |covers: Vec<Cover>| {
        let met = crossings(&covers, across);
        met.into_iter().filter(|n| *n > most).count()
    };
    let pairs = ways(front).flat_map(|f| ways(back).map(move |b| (f, b)));
    pairs.map(|(f, b)| thick(cover(f, b))).min().unwrap_or(0)
}

/// A wish for thin crossings is met wherever it can be on small grids, and is said to be met just
/// where counting square by square says so too.
#[test]
fn thin_crossings_are_found_where_they_can_be() {
    let mut could = [0; 2];
    for (size, covered, most) in [
        ([3, 3], [2, 2], 1),
        ([3, 3], [4, 0], 1),
        ([3, 3], [5, 0], 1),
        ([3, 3], [3, 2], 2),
        ([4, 3], [3, 3], 1),
        ([4, 3], [3, 1], 1),
        ([4, 3], [4, 2], 2),
        ([4, 2], [3, 2], 2),
        ([4, 2], [1, 1], 0),
    ] {
        let throw = begun(size[0] as u16, size[1] as u16, &[None, None]);
        let wishes = Wishes {
            front: Count::from(covered[0] as u16),
            back: Count::from(covered[1] as u16),
            apart: Apart::Free,
            crossing: Some(Count::from(most as u16)),
            ..Wishes::default()
        };
        let fewest = fewest_too_thick(size, covered, most);
        could[usize::from(fewest == 0)] += 1;
        for seed in 0..4 {
            let mut arranger = Arranger::new(&throw, wishes, seed);
            while !arranger.settled() {
                arranger.round();
            }
            let covers = arranger.covers();
            let counted = crossings(&covers, size[0]);
            let thick = counted.iter().filter(|n| **n > most).count();
            let of = format!("{size:?} {covered:?} {most} seed {seed}");
            assert_eq!(arranger.score().too_thick as usize, thick, "{of}");
            assert!(thick >= fewest, "{of}");
            assert_eq!(thick == 0, fewest == 0, "{of}: {thick}, could be {fewest}");
        }
    }
    assert!(could.iter().all(|n| *n > 1), "{could:?}");
}

/// By hand: 3 × 2 squares meet at two crossings. The upper left one has fabric on both faces and the
/// lower middle one in front: three fabrics meet at the first crossing, one at the second. The mean of
/// their squares is (9 + 1) / 2. Of what is not covered nothing is uneven.
#[test]
fn fabrics_are_counted_where_squares_meet() {
    let mut throw = begun(3, 2, &[None]);
    let bare = super::wishes::of(&throw, Wishes::default());
    assert_eq!((bare.thickest, bare.thickness), ((0, 2), 0.0));
    assert_eq!((bare.uneven, bare.prints_uneven), ([0; 2], [0; 2]));
    for (row, col, face) in [(0, 0, Face::Front), (0, 0, Face::Back), (1, 1, Face::Front)] {
        let action = Command::SetFace {
            pieces: vec![Rect::square(row, col)],
            face,
            print: Some(0),
            laid_on: false,
        };
        act(&mut throw, &action);
    }
    let told = super::wishes::of(&throw, Wishes::default());
    assert_eq!(told.covered, [2, 1]);
    // In a single row no four squares meet.
    let row = super::wishes::of(&begun(3, 1, &[None]), Wishes::default());
    assert_eq!((row.thickest, row.thickness), ((0, 0), 0.0));
    assert_eq!((told.thickest, told.thickness), ((3, 1), 5.0));
}

/// Four squares have one crossing: with a fabric on either face of one of them, two meet there, and the mean
/// of the squares is 4.
#[test]
fn one_crossing_is_its_own_mean() {
    let mut throw = begun(2, 2, &[None]);
    for face in Face::BOTH {
        let action = Command::SetFace {
            pieces: vec![Rect::square(0, 1)],
            face,
            print: Some(0),
            laid_on: false,
        };
        act(&mut throw, &action);
    }
    let told = super::wishes::of(&throw, Wishes::default());
    assert_eq!((told.thickest, told.thickness), ((2, 1), 4.0));
    // One square lies as evenly as chance has it, wherever it is.
    assert_eq!((told.uneven, told.prints_uneven), ([100; 2], [100; 2]));
}

/// By hand, K of two squares as the head of `arrange` has it, times 4 and the squares of both sides: in a
/// grid of 4 across and 2 down a square has 12 by rows to itself and 10 to the other row, 48 by columns to
/// itself, 42 to the next and 40 to the one after it, which is the farthest, since the edges meet.
#[test]
fn k_of_two_squares_by_hand() {
    let even = super::evenness::Evenness::new(4, 2);
    let from = |a: usize| (0..8).map(|b| even.k(a, b)).collect::<Vec<i64>>();
    let [own, next, far] = [48, 42, 40];
    let row = |by: i64, columns: [i64; 4]| columns.map(|c| by * c);
    let first = [own, next, far, next];
    assert_eq!(from(0), [row(12, first), row(10, first)].concat());
    let third = [far, next, own, next];
    assert_eq!(from(6), [row(10, third), row(12, third)].concat());
}

/// Two denims of one colour cannot show an order of shades; a light one and a dark one can.
#[test]
fn denims_alike_show_no_order_of_shades() {
    let told = |colours: [&str; 2]| {
        let mut throw = begun(2, 4, &[]);
        for (denim, colour) in throw.denims.iter_mut().zip(colours) {
            denim.colour = colour.into();
        }
        let own = throw.cover(Rect::square(0, 0));
        let other = Cover { denim: 1, ..own };
        let changed = crate::throw::Event::FacesChanged {
            faces: vec![(Rect::square(3, 0), other)],
            again: None,
            by_hand: None,
        };
        let wishes = Wishes {
            pattern: Pattern::ShadeRows,
            ..Wishes::default()
        };
        super::wishes::of(&throw.after(&[changed]), wishes).shades
    };
    assert_eq!(told(["#777777", "#777777"]), Shades::Alike);
    assert_eq!(told(["#dddddd", "#222222"]), Shades::Told);
}

/// From light edges to a dark middle there must be a middle: three squares each way. Rows of shades
/// take two rows.
#[test]
fn an_order_of_shades_takes_room() {
    let shades = |across, down, pattern| {
        let throw = begun(across, down, &[]);
        let own = throw.cover(Rect::square(0, 0));
        let other = Cover { denim: 1, ..own };
        let changed = crate::throw::Event::FacesChanged {
            faces: vec![(Rect::square(0, 0), other)],
            again: None,
            by_hand: None,
        };
        let wishes = Wishes {
            pattern,
            ..Wishes::default()
        };
        super::wishes::of(&throw.after(&[changed]), wishes).shades
    };
    let edges = |across, down| shades(across, down, Pattern::LightEdges);
    assert_eq!([edges(3, 3), edges(3, 8)], [Shades::Told; 2]);
    assert_eq!([edges(2, 8), edges(8, 2)], [Shades::NoRoom; 2]);
    let rows = |across, down| shades(across, down, Pattern::ShadeRows);
    assert_eq!([rows(1, 2), rows(8, 1)], [Shades::Told, Shades::NoRoom]);
}

/// The left half is to mirror the right: with fabric on one face of the left square alone, both squares
/// of that pair are out of the pattern, whichever face it is. With fabric on both of them none is.
#[test]
fn a_mirror_is_broken_on_either_face() {
    let wishes = Wishes {
        pattern: Pattern::Mirror,
        ..Wishes::default()
    };
    let off = |on: &[(u16, Face)]| {
        let mut throw = begun(4, 1, &[None]);
        for (col, face) in on {
            let action = Command::SetFace {
                pieces: vec![Rect::square(0, *col)],
                face: *face,
                print: Some(0),
                laid_on: false,
            };
            act(&mut throw, &action);
        }
        // Without a pattern nothing is out of it.
        assert_eq!(of(&throw, Wishes::default()).off_pattern, 0);
        of(&throw, wishes).off_pattern
    };
    assert_eq!(off(&[]), 0);
    for face in Face::BOTH {
        assert_eq!(off(&[(0, face)]), 2, "{face:?}");
        assert_eq!(off(&[(1, face)]), 2, "{face:?}");
        assert_eq!(off(&[(0, face), (3, face)]), 0, "{face:?}");
    }
}

/// By hand: of four squares two and two have four neighbours side by side. All with the grain one way
/// none is against that wish, and all four neighbours are against taking turns; crosswise like the black
/// squares of a chessboard two squares are against the one wish, and none against the other.
#[test]
fn grain_is_counted_by_squares_or_by_neighbours() {
    let against = |crosswise: &[(u16, u16)], grain| {
        let throw = begun(2, 2, &[]);
        let turned = crosswise.iter().map(|(row, col)| {
            let square = Rect::square(*row, *col);
            let cover = Cover {
                crosswise: true,
                ..throw.cover(square)
            };
            (square, cover)
        });
        let changed = crate::throw::Event::FacesChanged {
            faces: turned.collect(),
            again: None,
            by_hand: None,
        };
        let wishes = Wishes {
            grain,
            ..Wishes::default()
        };
        of(&throw.after(&[changed]), wishes).against_grain
    };
    for (grain, want) in [
        (Grain::Free, [0, 0, 0]),
        (Grain::OneWay, [0, 2, 1]),
        (Grain::ByTurns, [4, 0, 2]),
    ] {
        let board = [&[][..], &[(0, 0), (1, 1)], &[(0, 1)]];
        assert_eq!(board.map(|c| against(c, grain)), want, "{grain:?}");
    }
}

/// Two squares of one denim side by side show it on both faces, which is one pair alike; on one face
/// still where a fabric hides it on the other, whichever that is; and on none where it is hidden on both.
#[test]
fn denims_alike_are_counted_on_either_face() {
    let wishes = Wishes {
        denims: Some(DenimWish::Apart),
        ..Wishes::default()
    };
    let alike = |covered: &[Face]| {
        let mut throw = begun(2, 1, &[None]);
        for face in covered {
            let action = Command::SetFace {
                pieces: vec![Rect::square(0, 0)],
                face: *face,
                print: Some(0),
                laid_on: false,
            };
            act(&mut throw, &action);
        }
        of(&throw, wishes).denims_alike
    };
    assert_eq!(alike(&[]), 1);
    // Where the wish does not keep them apart, none are counted.
    let throw = begun(2, 1, &[None]);
    assert_eq!(of(&throw, Wishes::default()).denims_alike, 0);
    assert_eq!([Face::Front, Face::Back].map(|f| alike(&[f])), [1, 1]);
    assert_eq!(alike(&Face::BOTH), 0);
}

/// By hand: of two by two squares with one fabric on the upper left, another like it beside it touches it
/// side by side, one across the corner at its corner alone.
#[test]
fn neighbours_alike_are_those_the_wish_keeps_apart() {
    let pairs = |other: (u16, u16), apart| {
        let mut throw = begun(2, 2, &[None]);
        for (row, col) in [(0, 0), other] {
            let action = Command::SetFace {
                pieces: vec![Rect::square(row, col)],
                face: Face::Front,
                print: Some(0),
                laid_on: false,
            };
            act(&mut throw, &action);
        }
        let wishes = Wishes {
            apart,
            ..Wishes::default()
        };
        of(&throw, wishes).alike
    };
    let alike = |other, apart| pairs(other, apart).map(|pairs| pairs.len());
    let at = Rect::square;
    let [front, _] = pairs((0, 1), Apart::Edges);
    assert_eq!(front, [(at(0, 0), at(0, 1))]);
    for (apart, want) in [
        (Apart::Free, [[0, 0], [0, 0]]),
        (Apart::Edges, [[1, 0], [0, 0]]),
        (Apart::Corners, [[1, 0], [1, 0]]),
    ] {
        assert_eq!([alike((0, 1), apart), alike((1, 1), apart)], want);
    }
}

/// What chance gives is a hundred in a hundred: over all the 36 ways to cover two of three by three
/// squares unevenness is that on average, but for parts of one in a hundred that each rounds off.
#[test]
fn unevenness_is_a_hundred_by_chance() {
    let squares: Vec<Rect> = Rect::grid(3, 3).squares().collect();
    let mut all = Vec::new();
    for (n, one) in squares.iter().enumerate() {
        for other in &squares[n + 1..] {
            let mut throw = begun(3, 3, &[None]);
            let action = Command::SetFace {
                pieces: vec![*one, *other],
                face: Face::Front,
                print: Some(0),
                laid_on: false,
            };
            act(&mut throw, &action);
            all.push(f64::from(of(&throw, Wishes::default()).uneven[0]));
        }
    }
    let mean = all.iter().sum::<f64>() / all.len() as f64;
    assert_eq!(all.len(), 36);
    assert!((99.0..=100.0).contains(&mean), "{mean}");
}

/// Of two squares, one of each denim, in the wrong order one is too light for its place and the other too
/// dark: both are out of the pattern. The other way round neither is.
#[test]
fn too_light_and_too_dark_are_both_out_of_the_pattern() {
    let wishes = Wishes {
        pattern: Pattern::ShadeRows,
        ..Wishes::default()
    };
    let mut off = [0, 1].map(|first| {
        let throw = begun(1, 2, &[]);
        let of_denim = |row: u16, denim| {
            let square = Rect::square(row, 0);
            let cover = Cover {
                denim,
                ..throw.cover(square)
            };
            (square, cover)
        };
        let changed = crate::throw::Event::FacesChanged {
            faces: vec![of_denim(0, first), of_denim(1, 1 - first)],
            again: None,
            by_hand: None,
        };
        of(&throw.after(&[changed]), wishes).off_pattern
    });
    off.sort_unstable();
    assert_eq!(off, [0, 2]);
}

/// By hand: four squares are to be cut of the first denim. Of five in a pack one is left, of two two are
/// lacking.
#[test]
fn what_the_pile_gives_beyond_the_places_is_left() {
    let wishes = Wishes {
        denims: Some(DenimWish::Any),
        ..Wishes::default()
    };
    let told = |count| {
        let mut throw = begun(2, 2, &[]);
        act(&mut throw, &pack(count, Some(0)));
        let found = of(&throw, wishes).from_pile.expect("its denims are chosen");
        (found.lacking, found.left)
    };
    assert_eq!(told(5), (vec![0, 0], 1));
    assert_eq!(told(2), (vec![2, 0], 0));
}

/// Once a fabric is glued on the front of one of four squares, three fronts are free and four backs.
#[test]
fn a_glued_face_is_free_no_more() {
    let mut throw = begun(2, 2, &[None]);
    let square = Rect::square(0, 0);
    assert_eq!(free(&throw, Wishes::default()), [4, 4]);
    let action = Command::SetFace {
        pieces: vec![square],
        face: Face::Front,
        print: Some(0),
        laid_on: false,
    };
    act(&mut throw, &action);
    for task in [Task::Cut, Task::CoverFront] {
        let done = crate::throw::Event::Done {
            task,
            pieces: vec![square],
            made: vec![],
        };
        throw.apply(&done, 0);
    }
    assert_eq!(free(&throw, Wishes::default()), [3, 4]);
}
