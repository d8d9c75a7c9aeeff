//! What pieces are called: squares by row and place, fours by block, what is made of whole fours by
//! those, the rest by the squares at their corners.

use super::Context;
use crate::cloth::garments::ZoneKind;
use crate::plan::assembly::{Kind, Rect};
use crate::throw::Throw;

/// `3·5`: row 3, place 5, as chalked on the square.
pub(super) fn square(piece: Rect) -> String {
    format!("{}·{}", piece.row + 1, piece.col + 1)
}

/// `B`: a row of fours, so that no four is taken for a square.
pub(super) fn row_of_fours(n: usize) -> String {
    let letter = char::from(b'A' + (n % 26) as u8);
    match n / 26 {
        0 => letter.to_string(),
        more => format!("{}{letter}", row_of_fours(more - 1)),
    }
}

/// Whether the blocks in a row, counted from 0, are fours or single pairs.
pub(super) fn row_is_of(throw: &Throw, n: usize) -> &'static str {
    let plan = &throw.plan;
    made_of(plan.across == 1 || n * 2 + 1 == usize::from(plan.down))
}

/// Whether the blocks in a column, counted from 0, are fours or single pairs.
pub(super) fn column_is_of(throw: &Throw, n: usize) -> &'static str {
    let plan = &throw.plan;
    made_of(plan.down == 1 || n * 2 + 1 == usize::from(plan.across))
}

fn made_of(pairs: bool) -> &'static str {
    match pairs {
        true => "pairs",
        false => "fours",
    }
}

/// `B1`: the block's row of fours and its place there.
pub(super) fn block(piece: Rect) -> String {
    let row = row_of_fours(usize::from(piece.row / 2));
    format!("{row}{}", piece.col / 2 + 1)
}

/// A piece's short name.
pub(super) fn piece(throw: &Throw, piece: Rect, context: Context<'_>) -> String {
    let (first, last) = corners(piece);
    match throw.kind(piece) {
        Kind::Square => say!(context, "piece-square", at = square(piece)),
        Kind::Pair => say!(
            context,
            "piece-pair",
            first = square(first),
            second = square(last)
        ),
        Kind::Four => say!(context, "piece-four", at = block(piece)),
        Kind::Whole => say!(context, "piece-whole"),
        Kind::Row if piece.cols == throw.plan.across => {
            let n = usize::from(piece.row / 2);
            let of = row_is_of(throw, n);
            say!(context, "piece-row", row = row_of_fours(n), of = of)
        }
        Kind::Column if piece.rows == throw.plan.down => {
            let of = column_is_of(throw, usize::from(piece.col / 2));
            say!(context, "piece-column", column = piece.col / 2 + 1, of = of)
        }
        _ if piece.cols == throw.plan.across => {
            let first = row_of_fours(usize::from(piece.row / 2));
            let end = row_of_fours(usize::from((piece.row + piece.rows - 1) / 2));
            let n = (piece.row + piece.rows).div_ceil(2) - piece.row / 2;
            say!(context, "piece-rows", n = n, first = first, last = end)
        }
        _ if piece.rows == throw.plan.down => say!(
            context,
            "piece-columns",
            n = (piece.col + piece.cols).div_ceil(2) - piece.col / 2,
            first = piece.col / 2 + 1,
            last = (piece.col + piece.cols).div_ceil(2)
        ),
        _ => fours(piece, context).unwrap_or_else(|| {
            say!(
                context,
                "piece-part",
                first = square(first),
                last = square(last)
            )
        }),
    }
}

/// `Fours A1 to B2`: a part that is made of whole fours; nothing for any other.
fn fours(piece: Rect, context: Context<'_>) -> Option<String> {
    let even = [piece.row, piece.col, piece.rows, piece.cols];
    even.iter().all(|n| n.is_multiple_of(2)).then(|| {
        let last = Rect::square(piece.row + piece.rows - 2, piece.col + piece.cols - 2);
        say!(
            context,
            "piece-fours",
            n = piece.count() / 4,
            first = block(piece),
            last = block(last)
        )
    })
}

/// The fabrics to be cut for a square, the front's first.
pub(super) fn fabrics_to_cut(throw: &Throw, piece: Rect) -> Vec<String> {
    let cover = throw.cover(piece);
    let prints = [cover.front, cover.back].into_iter().flatten();
    let listed = prints.filter_map(|p| throw.prints.get(usize::from(p)));
    listed.filter(|p| p.uncut).map(|p| p.name.clone()).collect()
}

/// A piece's name for the ear.
pub(super) fn spoken(throw: &Throw, piece: Rect, context: Context<'_>) -> String {
    let (first, last) = corners(piece);
    let place = |s: Rect| say!(context, "spoken-place", row = s.row + 1, place = s.col + 1);
    match throw.kind(piece) {
        Kind::Square => say!(context, "spoken-square", place = place(piece)),
        Kind::Pair => say!(
            context,
            "spoken-pair",
            first = place(first),
            second = place(last)
        ),
        Kind::Four => say!(
            context,
            "spoken-four",
            at = block(piece),
            first = place(first),
            last = place(last)
        ),
        Kind::Row | Kind::Column | Kind::Part => fours(piece, context).unwrap_or_else(|| {
            say!(
                context,
                "spoken-part",
                first = place(first),
                last = place(last)
            )
        }),
        Kind::Whole => say!(context, "piece-whole"),
    }
}

fn corners(piece: Rect) -> (Rect, Rect) {
    let last = Rect::square(piece.row + piece.rows - 1, piece.col + piece.cols - 1);
    (Rect::square(piece.row, piece.col), last)
}

/// `5 pairs`.
pub(super) fn count(kind: Kind, n: usize, context: Context<'_>) -> String {
    say!(context, format!("count-{}", key(kind)), n = n)
}

/// The name of a kind in the language files.
pub(super) fn key(kind: Kind) -> &'static str {
    match kind {
        Kind::Square => "square",
        Kind::Pair => "pair",
        Kind::Four => "four",
        Kind::Row => "row",
        Kind::Column => "column",
        Kind::Part => "part",
        Kind::Whole => "whole",
    }
}

/// Kinds of places to avoid, with their names in the language files.
pub(super) const ZONES: [(ZoneKind, &str); 9] = [
    (ZoneKind::Knee, "knee"),
    (ZoneKind::Hole, "hole"),
    (ZoneKind::Stain, "stain"),
    (ZoneKind::Pocket, "pocket"),
    (ZoneKind::Outseam, "outseam"),
    (ZoneKind::Hem, "hem"),
    (ZoneKind::Seam, "seam"),
    (ZoneKind::CutEdge, "cut-edge"),
    (ZoneKind::Selvedge, "selvedge"),
];

/// A kind of place to avoid.
pub(super) fn zone(kind: ZoneKind, context: Context<'_>) -> String {
    let found = ZONES.iter().find(|(k, _)| *k == kind);
    let key = found.map_or("hole", |(_, key)| key);
    context.say(&format!("zone-{key}"), &[])
}

/// How many of some squares are whole and how many pieced of two halves, in brackets after their
/// number; nothing where all are whole.
pub(super) fn parted(squares: u32, pieced: u32, context: Context<'_>) -> String {
    match pieced {
        0 => String::new(),
        n => say!(
            context,
            "squares-parted",
            whole = squares.saturating_sub(n),
            n = n
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_four_is_never_named_like_a_square() {
        assert_eq!(block(Rect::from([0, 2, 2, 2])), "A2");
        assert_eq!(block(Rect::from([50, 58, 2, 2])), "Z30");
        assert_eq!(row_of_fours(29), "AD");
        assert_eq!(square(Rect::square(0, 1)), "1·2");
    }
}
