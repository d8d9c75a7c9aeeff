//! The two faces: which squares carry fabric in front, behind, on both, on neither.
//!
//! Everything is stated as seen from the front. Turned over like a page, left and
//! right change places: the back's column `c` is the front's `across − 1 − c`.
//!
//! [`spread`] covers a wished-for number of squares on each face and keeps what is
//! already glued or joined. It is a farthest-point sampling: each next square is one
//! of those farthest from every square covered so far on that face, distances
//! measured as if the grid's edges met (so that the edges get no more than their
//! share), ties broken by the seed; a square covered on the other face counts as
//! half a square nearer, which keeps the thick ones apart. Each gets the print that
//! touches fewest of its like, corners included, then the one most left in stock.
//!
//! Promises: same seed and state, same result on every machine; no print is used
//! beyond its stock; glued and joined squares keep their faces.

use crate::cloth::fabric::{Cover, Face, Print};
use crate::plan::assembly::Rect;
use crate::throw::Throw;
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// What [`spread`] works on.
#[derive(Debug, Clone, Copy)]
pub struct Ground<'a> {
    /// Squares across.
    pub across: u16,
    /// Squares down.
    pub down: u16,
    /// The faces as they are, row by row.
    pub covers: &'a [Cover],
    /// Which squares must keep theirs on the front and on the back, row by row.
    pub fixed: &'a [[bool; 2]],
    /// The prints to choose from.
    pub prints: &'a [Print],
}

/// Cover `front` and `back` squares in all, as evenly as may be; gives the new faces.
///
/// Where stock or free squares run out, fewer are covered.
pub fn spread(ground: Ground<'_>, front: u32, back: u32, seed: u64) -> Vec<Cover> {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let mut covers = ground.covers.to_vec();
    for (cover, [front, back]) in covers.iter_mut().zip(ground.fixed) {
        cover.front = cover.front.filter(|_| *front);
        cover.back = cover.back.filter(|_| *back);
    }
    let mut stock: Vec<i64> = ground
        .prints
        .iter()
        .enumerate()
        .map(|(i, p)| {
            let used = covers
                .iter()
                .flat_map(|c| [c.front, c.back])
                .filter(|on| *on == Some(i as u8))
                .count() as i64;
            p.stock.map_or(i64::MAX / 2, i64::from) - used
        })
        .collect();
    for (face, wish) in [(Face::Front, front), (Face::Back, back)] {
        spread_face(ground, &mut covers, &mut stock, face, wish, &mut rng);
    }
    covers
}

fn spread_face(
    ground: Ground<'_>,
    covers: &mut [Cover],
    stock: &mut [i64],
    face: Face,
    wish: u32,
    rng: &mut ChaCha8Rng,
) {
    let (across, down) = (i64::from(ground.across), i64::from(ground.down));
    let place = |i: usize| (i as i64 / across, i as i64 % across);
    let round = |d: i64, n: i64| d.abs().min(n - d.abs());
    let apart = |a: usize, b: usize| {
        let ((r1, c1), (r2, c2)) = (place(a), place(b));
        let (dr, dc) = (round(r1 - r2, down), round(c1 - c2, across));
        dr * dr + dc * dc
    };
    // Squared distance, in quarters of a square, to the nearest covered square.
    let mut near = vec![i64::MAX; covers.len()];
    let covered: Vec<usize> = (0..covers.len())
        .filter(|i| covers[*i].on(face).is_some())
        .collect();
    for &done in &covered {
        for (i, n) in near.iter_mut().enumerate() {
            *n = (*n).min(apart(i, done) * 4);
        }
    }
    for _ in covered.len()..wish as usize {
        let side = face.index();
        let free = |i: &usize| !ground.fixed[*i][side] && covers[*i].on(face).is_none();
        let best = (0..covers.len())
            .filter(free)
            .map(|i| {
                let thick = covers[i].layers() > 1;
                (
                    near[i].saturating_sub(i64::from(thick) * 2),
                    rng.random::<u32>(),
                    i,
                )
            })
            .max();
        let Some((_, _, at)) = best else { return };
        let (row, col) = place(at);
        let like = |print: usize| {
            let mut count = 0;
            for r in (row - 1).max(0)..=(row + 1).min(down - 1) {
                for c in (col - 1).max(0)..=(col + 1).min(across - 1) {
                    let there = covers[(r * across + c) as usize].on(face);
                    count += i64::from(there == Some(print as u8));
                }
            }
            count
        };
        let print = (0..stock.len())
            .filter(|p| stock[*p] > 0)
            .min_by_key(|p| (like(*p), -stock[*p], rng.random::<u32>()));
        let Some(print) = print else { return };
        stock[print] -= 1;
        covers[at] = covers[at].with(face, Some(print as u8));
        for (i, n) in near.iter_mut().enumerate() {
            *n = (*n).min(apart(i, at) * 4);
        }
    }
}

/// The most layers on any lap, and the most where four corners meet.
///
/// A seam pressed open has as many: on either side of it a square and its own allowance, and where
/// two cross, twice two. Pressed to one side it has three, the square and both allowances. Counted on
/// a drawing of four bare squares, whose second seam crosses two first ones turned opposite ways and
/// is itself turned down: below it lie the lower square and both allowances of the second seam. To the
/// right the lower pair is one layer thick and the upper, whose first seam is turned there, three:
/// 1 + 1 + 3 = 5; to the left 3 + 3 + 1 = 7. So six on average; all turned one way, nine on one side.
pub fn layers(across: u16, down: u16, covers: &[Cover]) -> (u32, u32) {
    let at =
        |r: u16, c: u16| covers[usize::from(r) * usize::from(across) + usize::from(c)].layers();
    let (mut lap, mut crossing) = (0, 0);
    for r in 0..down {
        for c in 0..across {
            let here = at(r, c);
            let right = (c + 1 < across).then(|| at(r, c + 1));
            let below = (r + 1 < down).then(|| at(r + 1, c));
            for beside in [right, below].into_iter().flatten() {
                lap = lap.max(here + beside);
            }
            if let (Some(a), Some(b)) = (right, below) {
                crossing = crossing.max(here + a + b + at(r + 1, c + 1));
            }
        }
    }
    (lap, crossing)
}

/// The thickest lap of a throw in layers, how many of these are denim, and the most layers where
/// four corners meet; a patch that is clear of the laps lies on none of them. Along the middle of a
/// square pieced of two halves lie two layers of denim, which meet the laps on two of its sides; no
/// corner lies there.
pub fn thickest(throw: &Throw) -> (u32, u32, u32) {
    let (across, down) = (throw.plan.across, throw.plan.down);
    // A patch lies clear of the laps and adds nothing there.
    let in_laps = |square: Rect| {
        let cover = throw.cover(square);
        let whole = |face| {
            cover
                .on(face)
                .filter(|_| throw.patch_on(square, face).is_none())
        };
        Cover {
            front: whole(Face::Front),
            back: whole(Face::Back),
            ..cover
        }
    };
    let covers: Vec<Cover> = throw.assembly().whole().squares().map(in_laps).collect();
    let (_, crossing) = layers(across, down, &covers);
    let here = |square: Rect| {
        let more = u32::from(throw.is_pieced(square));
        (in_laps(square).layers() + more, 1 + more)
    };
    let mut lap = (0, 0);
    for square in Rect::grid(across, down).squares() {
        let right = Rect::square(square.row, square.col + 1);
        let below = Rect::square(square.row + 1, square.col);
        for beside in [right, below] {
            if beside.col < across && beside.row < down {
                let (a, b) = (here(square), here(beside));
                lap = std::cmp::max(lap, (a.0 + b.0, a.1 + b.1));
            }
        }
    }
    (lap.0, lap.1, crossing)
}

/// Where a square of the front lies when the throw is turned over like a page.
pub fn mirrored(square: Rect, across: u16) -> Rect {
    Rect {
        col: across - square.col - square.cols,
        ..square
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::fabric::Texture;
    use crate::measure::Count;
    use proptest::prelude::*;

    fn prints(stock: &[Option<u32>]) -> Vec<Print> {
        stock
            .iter()
            .map(|s| Print {
                name: "print".into(),
                colour: "#777777".into(),
                texture: Texture::Dot,
                stock: s.map(Count::at_most),
                uncut: false,
                mixed: false,
                patch: None,
                photo: None,
            })
            .collect()
    }

    proptest! {
        #[test]
        fn spread_keeps_its_promises(across in 1u16..14, down in 1u16..14, front in 0u32..80, back in 0u32..80,
                                     seed in any::<u64>(), a in 0u32..20, holes in any::<u64>()) {
            let n = usize::from(across * down);
            let prints = prints(&[Some(a), Some(7), None]);
            let fixed: Vec<[bool; 2]> = (0..n).map(|i| [holes >> (i % 64) & 1 == 1; 2]).collect();
            let before: Vec<Cover> = fixed.iter().enumerate()
                .map(|(i, f)| Cover { front: (f[0] && i % 3 == 0).then_some(2), ..Cover::default() }).collect();
            let ground = Ground { across, down, covers: &before, fixed: &fixed, prints: &prints };
            let after = spread(ground, front, back, seed);
            prop_assert_eq!(&after, &spread(ground, front, back, seed));
            for i in 0..n {
                if fixed[i][0] { prop_assert_eq!(after[i], before[i]); }
            }
            for (p, print) in prints.iter().enumerate() {
                let used = after.iter().flat_map(|c| [c.front, c.back]).filter(|f| *f == Some(p as u8)).count();
                prop_assert!(print.stock.is_none_or(|s| used <= s.get() as usize));
            }
            let free = fixed.iter().filter(|f| !f[0]).count();
            let kept = before.iter().filter(|c| c.front.is_some()).count();
            let covered = after.iter().filter(|c| c.front.is_some()).count();
            prop_assert_eq!(covered, kept.max((front as usize).min(kept + free)));
        }

        #[test]
        fn turning_over_twice_is_nothing(across in 1u16..=60, col in 0u16..60, row in 0u16..60) {
            let square = Rect::square(row, col % across);
            prop_assert_eq!(mirrored(mirrored(square, across), across), square);
        }
    }

    /// Ten squares in a row, the first of them glued. The next comes where it is farthest, five away, since
    /// the ends meet; then any of the four that are two from one and three from the other, as the seed has it.
    #[test]
    fn the_next_square_is_farthest_from_what_is_glued() {
        let prints = prints(&[None]);
        let mut before = vec![Cover::default(); 10];
        before[0].front = Some(0);
        let mut fixed = vec![[false; 2]; 10];
        fixed[0] = [true; 2];
        let ground = Ground {
            across: 10,
            down: 1,
            covers: &before,
            fixed: &fixed,
            prints: &prints,
        };
        let covered = |wish, seed| -> Vec<usize> {
            let after = spread(ground, wish, 0, seed);
            (0..10).filter(|i| after[*i].front.is_some()).collect()
        };
        let mut third: Vec<usize> = Vec::new();
        for seed in 0..64 {
            assert_eq!(covered(2, seed), [0, 5]);
            third.extend(covered(3, seed).into_iter().filter(|i| i % 5 != 0));
        }
        third.sort_unstable();
        third.dedup();
        assert_eq!(third, [2, 3, 7, 8]);
    }

    /// Of two squares the first keeps its front and the second its back: the front's fabric lies on the second
    /// and the back's on the first.
    #[test]
    fn a_face_that_is_kept_leaves_the_other_free() {
        let prints = prints(&[None]);
        let before = vec![Cover::default(); 2];
        let ground = Ground {
            across: 2,
            down: 1,
            covers: &before,
            fixed: &[[true, false], [false, true]],
            prints: &prints,
        };
        let after = spread(ground, 2, 2, 1);
        let told: Vec<_> = after.iter().map(|c| (c.front, c.back)).collect();
        assert_eq!(told, [(None, Some(0)), (Some(0), None)]);
    }

    /// What is not glued is laid anew, and taken off where nothing is wished for.
    #[test]
    fn what_is_not_kept_is_taken_off() {
        let prints = prints(&[None]);
        let both = Cover {
            front: Some(0),
            back: Some(0),
            ..Cover::default()
        };
        let ground = Ground {
            across: 3,
            down: 1,
            covers: &[both; 3],
            fixed: &[[false, false], [true, false], [false, true]],
            prints: &prints,
        };
        let after = spread(ground, 0, 0, 1);
        let told: Vec<_> = after.iter().map(|c| (c.front, c.back)).collect();
        assert_eq!(told, [(None, None), (Some(0), None), (None, Some(0))]);
    }

    /// Two glued squares of a row of eight, the first and the third: the sixth is three from either, the
    /// farthest there is from both.
    #[test]
    fn the_nearest_of_all_that_is_glued_counts() {
        let prints = prints(&[None]);
        let mut before = vec![Cover::default(); 8];
        let mut fixed = vec![[false; 2]; 8];
        for i in [0, 2] {
            before[i].front = Some(0);
            fixed[i] = [true; 2];
        }
        let ground = Ground {
            across: 8,
            down: 1,
            covers: &before,
            fixed: &fixed,
            prints: &prints,
        };
        for seed in 0..16 {
            let after = spread(ground, 3, 0, seed);
            assert!(after[5].front.is_some(), "{after:?}");
        }
    }

    /// Of nine squares only the middle one is to be covered. A neighbour has the first fabric, whichever of
    /// the eight it is, so that the middle gets the second, though more is left of the first.
    #[test]
    fn a_fabric_is_kept_from_its_like_on_every_side() {
        let prints = prints(&[Some(5), Some(3)]);
        let mut fixed = vec![[true; 2]; 9];
        fixed[4] = [false; 2];
        let middle = |covers: &[Cover], wanted| {
            let ground = Ground {
                across: 3,
                down: 3,
                covers,
                fixed: &fixed,
                prints: &prints,
            };
            spread(ground, wanted, 0, 1)[4].front
        };
        for beside in [0, 1, 2, 3, 5, 6, 7, 8] {
            let mut before = vec![Cover::default(); 9];
            before[beside].front = Some(0);
            assert_eq!(middle(&before, 2), Some(1), "{beside}");
        }
        // Where none is beside it, there is more of the first.
        assert_eq!(middle(&[Cover::default(); 9], 1), Some(0));
    }

    #[test]
    fn layers_count_both_fabrics() {
        let mut covers = vec![Cover::default(); 4];
        assert_eq!(layers(2, 2, &covers), (2, 4));
        covers[0] = Cover {
            front: Some(0),
            back: Some(0),
            ..Cover::default()
        };
        assert_eq!(layers(2, 2, &covers), (4, 6));
        assert_eq!(layers(1, 1, &covers[..1]), (0, 0));
    }

    /// A square alone has no lap. Two side by side, or one above the other, have one: of two layers, both
    /// denim, where they are bare, and of three, two of them denim, with a fabric on the first.
    #[test]
    fn a_square_alone_has_no_lap() {
        use crate::fitting::tests::begun;
        use crate::plan::Plan;
        let told = |across, down| {
            let mut throw = begun(Plan {
                across,
                down,
                ..Plan::default()
            });
            throw.prints = prints(&[None]);
            let bare = thickest(&throw);
            let first = Rect::square(0, 0);
            let covered = Cover {
                front: Some(0),
                ..throw.cover(first)
            };
            let laid = crate::throw::Event::FacesChanged {
                faces: vec![(first, covered)],
                again: None,
                by_hand: None,
            };
            (bare, thickest(&throw.after(&[laid])))
        };
        assert_eq!(told(1, 1), ((0, 0, 0), (0, 0, 0)));
        assert_eq!(told(2, 1), ((2, 2, 0), (3, 2, 0)));
        assert_eq!(told(1, 2), ((2, 2, 0), (3, 2, 0)));
        assert_eq!(told(2, 2), ((2, 2, 4), (3, 2, 5)));
    }

    /// Four squares meet at a crossing: whichever of them has a fabric on each face, it is 1 + 1 + 1
    /// layers of the others and 3 of its own, six. The laps have 1 + 3.
    #[test]
    fn each_of_four_squares_counts_at_their_crossing() {
        for thick in 0..4 {
            let mut covers = vec![Cover::default(); 4];
            covers[thick] = Cover {
                front: Some(0),
                back: Some(0),
                ..Cover::default()
            };
            assert_eq!(layers(2, 2, &covers), (4, 6), "square {thick}");
        }
    }
}
