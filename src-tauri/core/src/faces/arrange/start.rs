//! A first layout: fabrics spread over all places that are open.

use crate::cloth::fabric::{Cover, Print};
use crate::faces::arrange::board::{Board, NONE, cover, number};
use crate::faces::spread::{Ground, spread};
use crate::throw::wishes::{Pattern, Wishes};

/// Lay fabrics on all places that are open, as a start.
pub(super) fn fill(board: &mut Board, prints: &[Print], wishes: Wishes, seed: u64) {
    let all = board.squares.len();
    let fixed: Vec<[bool; 2]> = (0..all)
        .map(|x| [!board.open(0, x), !board.open(1, x)])
        .collect();
    let covers: Vec<Cover> = board.squares.iter().map(cover).collect();
    let ground = Ground {
        across: board.across as u16,
        down: board.down as u16,
        covers: &covers,
        fixed: &fixed,
        prints,
    };
    let spread = spread(ground, wishes.front.get(), wishes.back.get(), seed);
    for (square, cover) in board.squares.iter_mut().zip(&spread) {
        square.on = [number(cover.front), number(cover.back)];
    }
    if wishes.pattern == Pattern::Mirror {
        for f in 0..2 {
            mirror(board, &fixed, f);
        }
    }
}

/// Bring fabrics already chosen for a face into pairs about the middle.
pub(super) fn mirror(board: &mut Board, fixed: &[[bool; 2]], f: usize) {
    let all = board.squares.len();
    let mut hands: Vec<u8> = Vec::new();
    for (square, fixed) in board.squares.iter().zip(fixed) {
        if !fixed[f] && square.on[f] != NONE {
            hands.push(square.on[f]);
        }
    }
    let folded: Vec<usize> = {
        let mut seen = vec![false; all];
        (0..all)
            .filter(|x| !fixed[*x][f] && board.squares[*x].on[f] != NONE)
            .filter_map(|x| {
                let left = x.min(board.mate(x));
                let new = !seen[left] && left != board.mate(left);
                seen[left] = true;
                (new && !fixed[left][f] && !fixed[board.mate(left)][f]).then_some(left)
            })
            .collect()
    };
    hands.sort_unstable();
    for (square, fixed) in board.squares.iter_mut().zip(fixed) {
        if !fixed[f] {
            square.on[f] = NONE;
        }
    }
    // Two of a kind at a time; what has no partner goes to the first free places.
    let (mut twos, mut ones) = (Vec::new(), Vec::new());
    let mut rest = hands.as_slice();
    while let [first, tail @ ..] = rest {
        if tail.first() == Some(first) {
            twos.push(*first);
            rest = &tail[1..];
        } else {
            ones.push(*first);
            rest = tail;
        }
    }
    let mut places = folded.into_iter();
    // Deal the kinds in turn, so that neighbours differ.
    let half = twos.len().div_ceil(2);
    let dealt: Vec<u8> = (0..twos.len())
        .map(|i| twos[if i % 2 == 0 { i / 2 } else { half + i / 2 }])
        .collect();
    for print in dealt {
        let free = |board: &Board, x: &usize| {
            let mate = board.mate(*x);
            mate != *x
                && !fixed[*x][f]
                && !fixed[mate][f]
                && board.squares[*x].on[f] == NONE
                && board.squares[mate].on[f] == NONE
        };
        let at = places
            .by_ref()
            .find(|x| free(board, x))
            .or_else(|| (0..all).find(|x| free(board, x)));
        match at {
            Some(x) => {
                let mate = board.mate(x);
                board.squares[x].on[f] = print;
                board.squares[mate].on[f] = print;
            }
            None => ones.extend([print, print]),
        }
    }
    for print in ones {
        let open = |board: &Board, x: &usize| !fixed[*x][f] && board.squares[*x].on[f] == NONE;
        let middle = (0..all).find(|x| board.mate(*x) == *x && open(board, x));
        if let Some(x) = middle.or_else(|| (0..all).find(|x| open(board, x))) {
            board.squares[x].on[f] = print;
        }
    }
}
