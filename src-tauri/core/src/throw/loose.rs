//! Which pieces still lie loose, and where else each may lie.

use crate::plan::assembly::{Assembly, Rect};
use crate::throw::state::Throw;

/// Whether a join was begun, or opened again and not mended yet.
fn touched(throw: &Throw, piece: Rect) -> bool {
    throw
        .work(piece)
        .is_some_and(|w| !w.done.is_empty() || w.opened.is_some())
}

/// The joined pieces of a throw that can still be placed: blocks and pairs not sewn to more.
pub fn loose_units(throw: &Throw) -> Vec<Rect> {
    let assembly = throw.assembly();
    let mut units = Vec::new();
    for block in assembly.blocks() {
        if !is_loose(throw, block) {
            continue;
        }
        if block.count() > 1 && touched(throw, block) {
            units.push(block);
        } else if let Some(join) = assembly.join(block) {
            let pairs = [join.first, join.second];
            units.extend(
                pairs
                    .into_iter()
                    .filter(|p| !p.is_square() && touched(throw, *p)),
            );
        }
    }
    units
}

/// Whether a joined piece or square can be put elsewhere: nothing larger holds it.
pub fn is_loose(throw: &Throw, piece: Rect) -> bool {
    let mut up = piece;
    while let Some(join) = throw.assembly().goes_into(up) {
        if touched(throw, join.whole) {
            return false;
        }
        up = join.whole;
    }
    true
}

/// Places of the same kind and shape that a piece may take.
pub fn places_for(assembly: &Assembly, piece: Rect) -> Vec<Rect> {
    let shape = |p: &Rect| (p.rows, p.cols) == (piece.rows, piece.cols);
    if piece.is_square() {
        return assembly.whole().squares().collect();
    }
    if assembly.blocks().contains(&piece) {
        return assembly.blocks().into_iter().filter(shape).collect();
    }
    let pairs = assembly.joins().iter().map(|j| j.whole);
    pairs
        .filter(|p| p.count() == 2 && !assembly.is_block(*p))
        .filter(shape)
        .collect()
}
