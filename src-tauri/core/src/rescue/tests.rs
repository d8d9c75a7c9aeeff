//! What can be done about a piece that is off, worked by hand.

use crate::cloth::fabric::{Cover, Face};
use crate::cloth::garments::{Precut, Source};
use crate::cloth::pile::{Heap, Use};
use crate::cloth::weight::Cloth;
use crate::fitting::tests::{begun, four, measured};
use crate::measure::{Count, Length, Ruler, half_inches, inches, sixty_fourths, zero};
use crate::plan::Plan;
use crate::plan::assembly::Rect;
use crate::rescue::{Freed, RecutFrom, RemedyKind, freed, ways, ways_for_block};
use crate::throw::tasks::Task;
use crate::throw::{Event, Mishap, Throw};

fn done(task: Task, pieces: Vec<Rect>) -> Event {
    Event::Done {
        task,
        pieces,
        made: vec![],
    }
}

/// A throw of 4 × 4 with two denims and two fabrics, all squares cut.
fn cut() -> Throw {
    let mut throw = Throw::begin(&Event::Begun {
        name: "t".into(),
        plan: Plan {
            across: 4,
            down: 4,
            ..Plan::default()
        },
        prints: crate::demo::prints(),
        denims: crate::demo::denims(),
        after: None,
    })
    .unwrap();
    let all: Vec<Rect> = throw.assembly().whole().squares().collect();
    throw.apply(&done(Task::Cut, all), 0);
    throw
}

fn faces(faces: Vec<(Rect, Cover)>, by_hand: bool) -> Event {
    Event::FacesChanged {
        faces,
        again: None,
        by_hand: Some(by_hand),
    }
}

/// Where a block may go whose shortage is hidden by the binding, and the minutes that takes; no seam is opened
/// for it.
fn edge(throw: &Throw, block: Rect) -> Option<(Rect, u32)> {
    let found = ways_for_block(throw, block, Ruler::default());
    found.into_iter().find_map(|way| match way.kind {
        RemedyKind::ToEdge(place) => {
            assert_eq!((way.seams, way.unpick), (0, zero()));
            Some((place, way.minutes))
        }
        _ => None,
    })
}

/// By hand: fours of 9½ in, three across and three down. A strip of 1 in hides 7.7 mm of an edge
/// (12.7 mm on each face, of which 5 mm must catch cloth), so ¼ in (6.35 mm). In the middle two laps
/// of 7/16 in give ⅛ in, not ¼. It takes 3 minutes to change places, and 1 for each edge that is
/// left to the binding (our judgement).
#[test]
fn a_short_four_goes_to_the_edge_that_hides_it() {
    let plan = Plan {
        across: 6,
        down: 6,
        ..Plan::default()
    };
    let full = half_inches(19);
    let less = |sixteenths: i64| full - sixty_fourths(4 * sixteenths);
    let short = |odd: &[(Rect, Length, Length)], block| edge(&measured(plan, odd), block);
    let middle = four(1, 1);
    // Short in width, left or right hides it: the first such place is the upper left corner.
    assert_eq!(
        short(&[(middle, less(4), full)], middle),
        Some((four(0, 0), 4))
    );
    assert_eq!(
        short(&[(middle, full, less(4))], middle),
        Some((four(0, 0), 4))
    );
    // Both ways only a corner does.
    let both = [(middle, less(4), less(4))];
    assert_eq!(short(&both, middle), Some((four(0, 0), 5)));
    // At the left edge in its own row already, and no corner is better.
    let left = four(1, 0);
    assert_eq!(short(&[(left, less(4), full)], left), None);
    // At the upper edge its width is not hidden.
    let upper = four(0, 1);
    assert_eq!(
        short(&[(upper, less(4), full)], upper),
        Some((four(0, 0), 4))
    );
    // 5/16 in (7.94 mm) is more than the edge hides: the lap beside it gives the rest, 2 minutes.
    assert_eq!(
        short(&[(middle, less(5), full)], middle),
        Some((four(0, 0), 6))
    );
    // What two laps give (4 minutes) is cheaper at an edge (1 minute).
    assert_eq!(
        short(&[(middle, less(2), full)], middle),
        Some((four(0, 0), 4))
    );
    // Where the whole left column is as short, each of them would be in the middle in its place:
    // nothing is won but on the right. What those cost is not this one's trouble.
    let mut odd = vec![(middle, less(4), full)];
    odd.extend((0..3).map(|row| (four(row, 0), less(4), full)));
    assert_eq!(short(&odd, middle), Some((four(0, 2), 4)));
}

/// By hand, on 4 × 6 squares: without the last row 4 squares come free, without the last column 6, as
/// far as they are cut; where none is, as many need not be cut.
#[test]
fn a_smaller_grid_frees_what_falls_outside_it() {
    let plan = Plan {
        across: 4,
        down: 6,
        ..Plan::default()
    };
    let lower = Plan { down: 5, ..plan };
    let narrower = Plan { across: 3, ..plan };
    let square = Rect::square(0, 0);
    let mut throw = begun(plan);
    throw.spares = Count::from(2);
    assert_eq!(freed(&throw, square, &lower), Some(Freed::Cloth(4)));
    assert_eq!(freed(&throw, square, &narrower), Some(Freed::Cloth(6)));
    assert_eq!(
        freed(&throw, Rect::square(5, 0), &lower),
        Some(Freed::Itself)
    );
    assert_eq!(
        freed(&throw, Rect::square(5, 0), &narrower),
        Some(Freed::Cloth(6))
    );
    // One of the last row is cut, and the square itself: one good square comes free.
    throw.apply(&done(Task::Cut, vec![square, Rect::square(5, 1)]), 0);
    assert_eq!(freed(&throw, square, &lower), Some(Freed::Squares(1)));
    assert_eq!(freed(&throw, square, &narrower), Some(Freed::Cloth(6)));
    throw.apply(&done(Task::Cut, vec![Rect::square(5, 3)]), 0);
    assert_eq!(freed(&throw, square, &lower), Some(Freed::Squares(2)));
    assert_eq!(freed(&throw, square, &narrower), Some(Freed::Squares(1)));
    // Two fours sewn to one another have no place in a grid without their lower row.
    let sewn = [[4, 0, 2, 2], [4, 2, 2, 2], [4, 0, 2, 4]];
    throw.apply(&done(Task::Stitch, sewn.map(Rect::from).to_vec()), 0);
    assert_eq!(freed(&throw, square, &lower), None);
    assert_eq!(freed(&throw, square, &narrower), None);
    // All fours but the last are sewn: the one beside it finds no other place and is laid aside, with
    // the two squares of it in the last row. The other two need not be cut.
    let mut throw = begun(plan);
    for block in throw.assembly().blocks() {
        if block != four(2, 1) {
            throw.apply(&done(Task::Cut, block.squares().collect()), 0);
            throw.apply(&done(Task::Stitch, vec![block]), 0);
        }
    }
    assert_eq!(freed(&throw, square, &lower), Some(Freed::Cloth(2)));
    // With the last one sewn too, both lower fours are laid aside with all that is in the last row: no
    // square comes free, and none was still to be cut.
    throw.apply(&done(Task::Cut, four(2, 1).squares().collect()), 0);
    throw.apply(&done(Task::Stitch, vec![four(2, 1)]), 0);
    assert_eq!(freed(&throw, square, &lower), None);
    let found = ways(&throw, square, Mishap::Lost);
    assert!(found.iter().all(|way| way.kind != RemedyKind::FewerDown));
}

/// The place whose loose square is taken for the first one.
fn taken(throw: &Throw) -> Option<(Rect, u32)> {
    let found = ways(throw, Rect::square(0, 0), Mishap::Lost);
    found.into_iter().find_map(|way| match way.kind {
        RemedyKind::FromPlace { from, again } => {
            assert_eq!(again, RecutFrom::Unsaid);
            Some((from, way.minutes))
        }
        _ => None,
    })
}

/// Sixteen squares of one denim lie cut. The one missed least, as a sewist would choose: one that no
/// face shows; else one that only one face shows; else one in a four that is not begun; of like ones
/// the last. Never one that was chosen by hand while another will do, never one that is pinned, of
/// another denim or glued. To take it is 2 minutes and to cut that one again 4 (our judgement).
#[test]
fn the_loose_square_that_is_missed_least() {
    let throw = cut();
    let own = throw.cover(Rect::square(0, 0));
    let at = Rect::square;
    assert_eq!(taken(&throw), Some((at(3, 3), 6)));
    // One fabric is to lie on 2·2, so that one face shows its denim.
    let one = Cover {
        front: Some(0),
        ..own
    };
    let both = Cover {
        back: Some(1),
        ..one
    };
    let throw = throw.after(&[faces(vec![(at(1, 1), one)], false)]);
    assert_eq!(taken(&throw), Some((at(1, 1), 6)));
    // None shows that of 1·3.
    let throw = throw.after(&[faces(vec![(at(0, 2), both)], false)]);
    assert_eq!(taken(&throw), Some((at(0, 2), 6)));
    // Pinned it stays; so does what is glued.
    let pinned = Event::Pinned {
        pieces: vec![at(0, 2)],
        pinned: true,
    };
    assert_eq!(taken(&throw.after(&[pinned])), Some((at(1, 1), 6)));
    let glued = done(Task::CoverFront, vec![at(0, 2)]);
    assert_eq!(taken(&throw.after(&[glued])), Some((at(1, 1), 6)));
    // Chosen by hand it comes after those that were not, plain as they are.
    let hers = faces(vec![(at(0, 2), both), (at(1, 1), one)], true);
    let throw = throw.after(&[hers]);
    assert_eq!(taken(&throw), Some((at(3, 3), 6)));
    // The last is of another denim.
    let other = Cover { denim: 1, ..own };
    let throw = throw.after(&[faces(vec![(at(3, 3), other)], false)]);
    assert_eq!(taken(&throw), Some((at(3, 2), 6)));
    // A pair of its four is sewn: the last of a four of which nothing is.
    let throw = throw.after(&[done(Task::Stitch, vec![Rect::from([2, 2, 1, 2])])]);
    assert_eq!(taken(&throw), Some((at(3, 1), 6)));
    // So is one of the next: of the two fours left, in one of which the lost square lies, the last.
    let sewn = throw.after(&[done(Task::Stitch, vec![Rect::from([2, 0, 1, 2])])]);
    assert_eq!(taken(&sewn), Some((at(1, 3), 6)));
    // A spare of its own denim goes first.
    let mut spare = throw.clone();
    spare.apply(
        &Event::SparesCounted {
            spares: Count::from(1),
        },
        0,
    );
    let found = ways(&spare, at(0, 0), Mishap::Lost);
    assert_eq!(
        (found[0].kind, found[0].minutes),
        (RemedyKind::Spare(None), 2)
    );
}

/// A patch covers what a square is damaged by, where there is fabric for it: 5 minutes, and 3 more to
/// stitch it round where no lap will hold its edges (our judgement). What is cut wrong or lost is not
/// mended by it.
#[test]
fn a_patch_is_five_minutes_and_three_more_where_it_is_sewn_in() {
    let mut throw = cut();
    let square = Rect::square(0, 0);
    let patch = |throw: &Throw, why| -> Vec<(Face, u32, usize, Length)> {
        let found = ways(throw, square, why);
        let patches = found.into_iter().filter_map(|way| match way.kind {
            RemedyKind::Patch(face) => Some((face, way.minutes, way.seams, way.unpick)),
            _ => None,
        });
        patches.collect()
    };
    let each = |minutes| Face::BOTH.map(|face| (face, minutes, 0, zero()));
    for why in [Mishap::Flaw, Mishap::Scorched] {
        assert_eq!(patch(&throw, why), each(5));
    }
    for why in [Mishap::MisCut, Mishap::Lost] {
        assert_eq!(patch(&throw, why), []);
    }
    // One square of each fabric, all but one of them in use elsewhere: that one is still there.
    for print in &mut throw.prints {
        print.stock = Some(Count::from(1));
    }
    let own = throw.cover(square);
    let on = |n: u8| Cover {
        front: Some(n),
        ..own
    };
    let all = throw.prints.len() as u8;
    let used = |n: u8| {
        (0..n)
            .map(|n| (Rect::square(3, u16::from(n)), on(n)))
            .collect()
    };
    let left = throw.after(&[faces(used(all - 1), false)]);
    assert_eq!(patch(&left, Mishap::Flaw), each(5));
    let none = throw.after(&[faces(used(all), false)]);
    assert_eq!(patch(&none, Mishap::Flaw), []);
    throw.apply(&done(Task::Stitch, vec![Rect::from([0, 0, 1, 2])]), 0);
    assert_eq!(patch(&throw, Mishap::Flaw), each(8));
}

/// By hand, as above: with the upper and the lower row sewn, the short four in the middle can only
/// change places with the one left or right of it; where one of the two is as short, nothing is won by
/// that, and it is the other. Sewn in columns it is the one above or below it.
#[test]
fn every_edge_hides_a_shortage() {
    use crate::plan::JoinOrder;
    let plan = |order| Plan {
        across: 6,
        down: 6,
        order,
        ..Plan::default()
    };
    let full = half_inches(19);
    let less = full - sixty_fourths(16);
    // Where the four in the middle goes, with one beside it as short as it is.
    let across = |beside| {
        let odd = [(four(1, 1), less, full), (beside, less, full)];
        let mut rows = measured(plan(JoinOrder::Rows), &odd);
        let pieces = [[0, 0, 2, 4], [0, 0, 2, 6], [4, 0, 2, 4], [4, 0, 2, 6]];
        rows.apply(&done(Task::Stitch, pieces.map(Rect::from).to_vec()), 0);
        edge(&rows, four(1, 1))
    };
    assert_eq!(across(four(1, 0)), Some((four(1, 2), 4)));
    assert_eq!(across(four(1, 2)), Some((four(1, 0), 4)));
    let down = |beside| {
        let odd = [(four(1, 1), full, less), (beside, full, less)];
        let mut columns = measured(plan(JoinOrder::Columns), &odd);
        let pieces = [[0, 0, 4, 2], [0, 0, 6, 2], [0, 4, 4, 2], [0, 4, 6, 2]];
        columns.apply(&done(Task::Stitch, pieces.map(Rect::from).to_vec()), 0);
        edge(&columns, four(1, 1))
    };
    assert_eq!(down(four(0, 1)), Some((four(2, 1), 4)));
    assert_eq!(down(four(2, 1)), Some((four(0, 1), 4)));
}

/// The fabric for a patch is the first of which there is some left.
#[test]
fn a_patch_is_of_the_first_fabric_there_is() {
    let mut throw = cut();
    let of = |throw: &Throw| {
        let found = ways(throw, Rect::square(0, 0), Mishap::Flaw);
        found.into_iter().find_map(|way| match way.action {
            crate::command::Command::Patch { print, .. } => Some(print),
            _ => None,
        })
    };
    assert_eq!(of(&throw), Some(0));
    throw.prints[0].stock = Some(Count::NONE);
    assert_eq!(of(&throw), Some(1));
    // What the pile still gives is left too: a square of 6 in gives one of 5 in. Once that is cut, it is counted.
    let scrap = Source::Precut(Precut {
        name: "Scrap".into(),
        side: inches(6),
        count: Count::from(1),
    });
    let heap = Heap::new(scrap, Use::Fabric { print: 0 }, Cloth::cotton());
    throw.pile.insert(0, heap);
    assert_eq!(of(&throw), Some(0));
    throw.pile.get_mut(&0).unwrap().counted[0] = Some(Count::NONE);
    assert_eq!(of(&throw), Some(1));
}

/// A four can be off once it is stitched and until it is joined to the next; a pair within it and a
/// square cannot.
#[test]
fn a_four_can_be_off_until_it_is_joined() {
    use crate::rescue::can_be_off;
    let mut throw = begun(Plan {
        across: 4,
        down: 2,
        ..Plan::default()
    });
    let (first, pair) = (four(0, 0), Rect::from([0, 0, 1, 2]));
    assert!(!can_be_off(&throw, first));
    throw.apply(&done(Task::Stitch, vec![pair]), 0);
    assert!(!can_be_off(&throw, pair) && !can_be_off(&throw, first));
    throw.apply(&done(Task::Stitch, vec![first, four(0, 1)]), 0);
    assert!(can_be_off(&throw, first) && !can_be_off(&throw, Rect::square(0, 0)));
    throw.apply(&done(Task::Dot, vec![Rect::grid(4, 2)]), 0);
    assert!(!can_be_off(&throw, first));
}

/// Another square for one that has fabric on one face and is sewn into its pair: the seam is 8 minutes to
/// open and sew again and the fabric 3 to glue on anew, and a spare 2 to take, 13 in all, though it be of
/// the other denim; more cloth is 30 to find, 41 in all (our judgement). The seam is 5 in long.
#[test]
fn what_was_done_to_a_square_is_done_again() {
    let square = Rect::square(0, 0);
    let throw = cut();
    let on = Cover {
        front: Some(0),
        ..throw.cover(square)
    };
    let mut throw = throw.after(&[faces(vec![(square, on)], false)]);
    throw.apply(&done(Task::Stitch, vec![Rect::from([0, 0, 1, 2])]), 0);
    // One square of the other denim came out of a pack of one, and has no place.
    let pack = Source::Precut(Precut {
        name: "Pack".into(),
        side: half_inches(10),
        count: Count::from(1),
    });
    let makes = Use::Denim { denim: Some(1) };
    let heap = Heap::new(pack, makes, Cloth::denim());
    throw.apply(&Event::HeapSet { n: 0, heap }, 0);
    let cut = Event::PieceCut {
        n: 0,
        piece: 0,
        squares: Count::from(1),
        went: None,
        strips: None,
        pieced: None,
    };
    throw.apply(&cut, 0);
    let found = ways(&throw, square, Mishap::Flaw);
    let told = |kind| {
        let way = found.iter().find(|way| way.kind == kind)?;
        Some((way.minutes, way.seams, way.unpick))
    };
    let seam = half_inches(10);
    assert_eq!(told(RemedyKind::Spare(None)), None);
    assert_eq!(told(RemedyKind::Spare(Some(1))), Some((13, 1, seam)));
    assert_eq!(
        told(RemedyKind::Recut(RecutFrom::MoreCloth)),
        Some((41, 1, seam))
    );
}

/// A four that is ⅛ in short is met by two laps of 7/16 in, 2 minutes each, whatever becomes of another
/// that no lap can save.
#[test]
fn laps_save_a_four_whatever_another_lacks() {
    let plan = Plan {
        across: 6,
        down: 6,
        ..Plan::default()
    };
    let full = half_inches(19);
    let (block, other) = (four(1, 1), four(2, 1));
    let odd = [
        (block, full - sixty_fourths(8), full),
        (other, full - half_inches(4), full),
    ];
    let told = |odd: &[(Rect, Length, Length)]| {
        let found = ways_for_block(&measured(plan, odd), block, Ruler::default());
        let way = found.into_iter().find(|w| w.kind == RemedyKind::LapLess)?;
        match way.action {
            crate::command::Command::MarkLaps { laps } => {
                Some((way.minutes, way.seams, laps.len()))
            }
            other => panic!("{other:?}"),
        }
    };
    assert_eq!(told(&odd), Some((4, 0, 2)));
    // Another that is saved by laps of its own has those chosen for itself.
    let odd = [odd[0], (other, full - sixty_fourths(8), full)];
    assert_eq!(told(&odd), Some((4, 0, 2)));
}

/// A four that is ⅛ in short in width and 2 in in height is not saved by two laps: they give its width alone.
/// Where they do save it, in 4 minutes, no smaller size is cheaper, and the size there is is not offered anew.
#[test]
fn laps_that_save_one_way_alone_are_not_offered() {
    let plan = Plan {
        across: 6,
        down: 6,
        ..Plan::default()
    };
    let (full, block) = (half_inches(19), four(1, 1));
    let laps = |width, height| {
        let throw = measured(plan, &[(block, full - width, full - height)]);
        let found = ways_for_block(&throw, block, Ruler::default());
        found.iter().any(|way| way.kind == RemedyKind::LapLess)
    };
    let (eighth, more) = (sixty_fourths(8), half_inches(4));
    assert!(laps(eighth, zero()) && laps(zero(), eighth) && laps(eighth, eighth));
    assert!(!laps(eighth, more) && !laps(more, eighth) && !laps(more, more));
    let throw = measured(plan, &[(block, full - eighth, full)]);
    let found = ways_for_block(&throw, block, Ruler::default());
    assert!(
        !found
            .iter()
            .any(|way| matches!(way.kind, RemedyKind::Trim(_)))
    );
}

/// By hand: fours seamed ½ in under a straight row are 9 in. One that is ¼ in short in width is so by the
/// seams of its two pairs, of which each square gives half: sewn ⅜ in in, they give it. The seam between
/// the pairs is opened for it, three in all at 8 minutes.
#[test]
fn a_seam_sewn_again_gives_half_on_either_side() {
    let plan = Plan {
        across: 6,
        down: 6,
        stitch: crate::plan::Stitch::Straight,
        ..Plan::default().joined(crate::plan::Joining::Exposed)
    };
    let (full, block) = (half_inches(18), four(1, 1));
    let mut throw = measured(plan, &[(block, full - sixty_fourths(16), full)]);
    let pairs = [[2, 2, 1, 2], [3, 2, 1, 2]].map(Rect::from);
    throw.apply(&done(Task::Stitch, pairs.to_vec()), 0);
    let found = ways_for_block(&throw, block, Ruler::default());
    let way = found.iter().find(|way| way.kind == RemedyKind::Resew);
    let told = way.map(|way| match &way.action {
        crate::command::Command::Unpick { lap, .. } => (way.minutes, way.seams, *lap),
        other => panic!("{other:?}"),
    });
    assert_eq!(told, Some((24, 3, Some(sixty_fourths(24)))));
}

/// Of two packs with a square over the one of the place's own denim is named, though it lies second on the
/// pile; where it has none over the other is, and the denim to which the place would change.
#[test]
fn a_square_is_cut_anew_from_its_own_denim() {
    let of = |own: u16| {
        let mut throw = cut();
        for (n, denim, count) in [(0, 1, 3), (1, 0, own)] {
            let pack = Source::Precut(Precut {
                name: "Pack".into(),
                side: half_inches(10),
                count: Count::from(count),
            });
            let heap = Heap::new(pack, Use::Denim { denim: Some(denim) }, Cloth::denim());
            throw.apply(&Event::HeapSet { n, heap }, 0);
        }
        let found = ways(&throw, Rect::square(0, 0), Mishap::Lost);
        found.into_iter().find_map(|way| match way.kind {
            RemedyKind::Recut(from) => Some(from),
            _ => None,
        })
    };
    let piece = |n, over, denim| RecutFrom::Piece {
        n,
        index: 0,
        over,
        denim,
    };
    assert_eq!(of(2), Some(piece(1, 2, None)));
    assert_eq!(of(1), Some(piece(1, 1, None)));
    assert_eq!(of(0), Some(piece(0, 3, Some(1))));
}

/// A throw two squares wide may become one square wide, and one two squares high a row. A single square
/// gives up neither.
#[test]
fn two_columns_may_become_one() {
    let offered = |across, down| {
        let plan = Plan {
            across,
            down,
            ..Plan::default()
        };
        let found = ways(&begun(plan), Rect::square(0, 0), Mishap::Lost);
        [RemedyKind::FewerAcross, RemedyKind::FewerDown]
            .map(|kind| found.iter().any(|way| way.kind == kind))
    };
    assert_eq!(offered(2, 2), [true, true]);
    assert_eq!(offered(1, 2), [false, true]);
    assert_eq!(offered(2, 1), [true, false]);
    assert_eq!(offered(1, 1), [false, false]);
}

/// Of 6 × 8 squares a column given up leaves 5 × 8, a row 6 × 7: 8 and 6 squares at 3 minutes each, and 2 to put
/// one of them in the place of the first, which is kept (our judgement).
#[test]
fn one_row_or_column_is_given_up_at_a_time() {
    let found = ways(&begun(Plan::default()), Rect::square(0, 0), Mishap::Lost);
    let left = |kind| {
        let way = found.iter().find(|way| way.kind == kind)?;
        match &way.action {
            crate::command::Command::ChangePlan { plan } => {
                Some((plan.across, plan.down, way.minutes))
            }
            other => panic!("{other:?}"),
        }
    };
    assert_eq!(left(RemedyKind::FewerAcross), Some((5, 8, 26)));
    assert_eq!(left(RemedyKind::FewerDown), Some((6, 7, 20)));
}

/// By hand: laps of ½ in are 12.7 mm, between two marks of a metric ruler. A four that is 2 mm short in width
/// is sewn again within its pairs (10.7 mm, so 10), three seams, and in no other way: its height is right.
#[test]
fn only_what_is_short_is_sewn_again() {
    let plan = Plan {
        across: 6,
        down: 6,
        ..Plan::default()
    };
    let ruler = Ruler {
        system: crate::measure::System::Metric,
        ..Ruler::default()
    };
    let (full, block) = (half_inches(19), four(1, 1));
    let short = full - crate::measure::tenths_of_mm(20);
    let mut throw = measured(plan, &[(block, short, full)]);
    let pairs = [[2, 2, 1, 2], [3, 2, 1, 2]].map(Rect::from);
    throw.apply(&done(Task::Stitch, pairs.to_vec()), 0);
    let found = ways_for_block(&throw, block, ruler);
    let again = found.iter().filter(|way| way.kind == RemedyKind::Resew);
    let seams: Vec<usize> = again.map(|way| way.seams).collect();
    assert_eq!(seams, [3]);
}

/// By hand: where all fours are ¼ in short one way or both, and the middle ones cannot be helped by laps, they
/// are trimmed to 9¼ in. The throw is then 26¾ in each way for 27½, 40.7 in² less, which counts 20 minutes
/// (1 for every 2 in², our judgement). No seam is opened.
#[test]
fn all_fours_are_trimmed_to_what_they_hold() {
    let plan = Plan {
        across: 6,
        down: 6,
        ..Plan::default()
    };
    let full = half_inches(19);
    let less = full - sixty_fourths(16);
    for (width, height) in [(less, less), (less, full), (full, less)] {
        let blocks = begun(plan).assembly().blocks();
        let all: Vec<_> = blocks.into_iter().map(|b| (b, width, height)).collect();
        let found = ways_for_block(&measured(plan, &all), four(1, 1), Ruler::default());
        let trims = found.iter().filter_map(|way| match way.kind {
            RemedyKind::Trim(size) => Some((size, way.minutes, way.seams, way.unpick)),
            _ => None,
        });
        assert_eq!(trims.collect::<Vec<_>>(), [(less, 20, 0, zero())]);
    }
}

/// Pairs glued ½ in when ¾ in are planned by now: one is lifted and lapped again in 3 minutes, two in 6
/// (our judgement). Each lap is 5 in long. One that was stitched is not lifted, nor is one lapped as planned.
#[test]
fn glued_laps_are_lapped_again_in_three_minutes_each() {
    use crate::rescue::ways_for_glued;
    let plan = Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    };
    let pair = |row, col| Rect::from([row, col, 1, 2]);
    let mut throw = begun(plan);
    throw.apply(
        &done(Task::Dot, vec![pair(0, 0), pair(1, 0), pair(2, 0)]),
        0,
    );
    throw.apply(&done(Task::Stitch, vec![pair(2, 0)]), 0);
    let wider = Plan {
        lap: sixty_fourths(48),
        ..plan
    };
    let changed = Event::PlanChanged {
        plan: wider,
        spares: Count::NONE,
        glued: vec![],
    };
    throw.apply(&changed, 0);
    throw.apply(&done(Task::Dot, vec![pair(3, 0)]), 0);
    let told: Vec<_> = ways_for_glued(&throw, pair(0, 0))
        .into_iter()
        .map(|way| (way.kind, way.minutes, way.seams, way.unpick))
        .collect();
    let again = |n: usize, minutes| {
        let long = half_inches(10 * n as i64);
        (RemedyKind::LapAgain(n), minutes, n, long)
    };
    assert_eq!(told, [again(1, 3), again(2, 6)]);
}

/// By hand: two laps of 7/16 in give 3.175 mm. A four that is 4 mm short lacks 0.825 mm then, which is eased
/// in: 2 minutes a lap and 3 for the care. Of 3 mm nothing is lacking.
#[test]
fn easing_in_what_laps_lack_takes_its_minutes() {
    let plan = Plan {
        across: 6,
        down: 6,
        ..Plan::default()
    };
    let (full, block) = (half_inches(19), four(1, 1));
    let minutes = |tenths: i64| {
        let short = full - crate::measure::tenths_of_mm(tenths);
        let throw = measured(plan, &[(block, short, full)]);
        let found = ways_for_block(&throw, block, Ruler::default());
        let way = found.iter().find(|way| way.kind == RemedyKind::LapLess);
        way.map(|way| way.minutes)
    };
    assert_eq!([40, 30, 43].map(minutes), [Some(7), Some(4), None]);
}

/// By hand: a four 9¾ in wide was lapped ¼ in within its pairs, which is too little (10 mm are the least).
/// To lap them ½ in the pairs and the seam between them are opened, three seams at 8 minutes. One 9¾ in high
/// was lapped too little between its pairs: one seam.
#[test]
fn laps_too_thin_are_sewn_wider() {
    let plan = Plan {
        across: 6,
        down: 6,
        ..Plan::default()
    };
    let (full, wide, block) = (
        half_inches(19),
        half_inches(19) + sixty_fourths(16),
        four(1, 1),
    );
    let told = |width, height| -> Vec<_> {
        let mut throw = measured(plan, &[(block, width, height)]);
        let pairs = [[2, 2, 1, 2], [3, 2, 1, 2]].map(Rect::from);
        throw.apply(&done(Task::Stitch, pairs.to_vec()), 0);
        let found = ways_for_block(&throw, block, Ruler::default());
        let told = found
            .into_iter()
            .map(|way| (way.kind, way.minutes, way.seams));
        told.collect()
    };
    let wider = RemedyKind::ResewWider(half_inches(1));
    assert_eq!(told(wide, full), [(wider, 24, 3)]);
    assert_eq!(told(full, wide), [(wider, 8, 1)]);
    assert_eq!(told(full, full), []);
}

/// By hand: with 3 mm beside two rows 4 mm apart a lap is 10 mm at the least. Where 14 mm were planned, a
/// four that is 4 mm short is sewn again with laps of just that; so is one that is 5 mm short, of which 1 mm
/// is eased in, and one that is 6 mm short cannot be.
#[test]
fn a_lap_is_sewn_again_down_to_the_least() {
    let mm = |n: i64| crate::measure::tenths_of_mm(10 * n);
    let plan = Plan {
        across: 6,
        down: 6,
        lap: mm(14),
        ..Plan::default()
    };
    let ruler = Ruler {
        system: crate::measure::System::Metric,
        ..Ruler::default()
    };
    let (full, block) = (plan.natural_four(), four(1, 1));
    let lap = |short| {
        let mut throw = measured(plan, &[(block, full - mm(short), full)]);
        let pairs = [[2, 2, 1, 2], [3, 2, 1, 2]].map(Rect::from);
        throw.apply(&done(Task::Stitch, pairs.to_vec()), 0);
        let found = ways_for_block(&throw, block, ruler);
        let way = found.into_iter().find(|way| way.kind == RemedyKind::Resew);
        way.map(|way| match way.action {
            crate::command::Command::Unpick { lap, .. } => lap,
            other => panic!("{other:?}"),
        })
    };
    let least = Some(Some(mm(10)));
    assert_eq!(
        [3, 4, 5, 6].map(lap),
        [Some(Some(mm(11))), least, least, None]
    );
    // Laps of 10 mm are as narrow as they may be: what lacks ½ mm gains nothing by sewing them again.
    let plan = Plan {
        lap: mm(10),
        ..plan
    };
    let short = plan.natural_four() - crate::measure::tenths_of_mm(5);
    let mut throw = measured(plan, &[(block, short, plan.natural_four())]);
    let pairs = [[2, 2, 1, 2], [3, 2, 1, 2]].map(Rect::from);
    throw.apply(&done(Task::Stitch, pairs.to_vec()), 0);
    let found = ways_for_block(&throw, block, ruler);
    assert!(found.iter().all(|way| way.kind != RemedyKind::Resew));
}
