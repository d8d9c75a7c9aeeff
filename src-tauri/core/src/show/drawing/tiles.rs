//! The textures of cloth and the hatchings. Each is defined here and nowhere else: the window
//! receives them once, when it opens, and a drawing on paper contains those it needs.
//!
//! A tile holds the marks only and lies over the colour of its ground, so that no seam shows
//! between its repeats. A denim's wrong side is pale, since the light weft lies over the
//! coloured warp there, and its twill leans the other way, as it does in the cloth. Denims
//! beside one another in the list differ in how the twill is drawn, not by colour alone.

use super::letters::n;
use crate::cloth::fabric::Texture;
use crate::show::picture::{Tile, TileMarks, TileStroke};

/// Side of a tile in its own units.
pub(super) const SIDE: f64 = 24.0;

/// A repeat of twill beside one of a print's figure; that of the wrong side is coarser.
const TWILL: f64 = 0.375;
const WRONG: f64 = 0.5;
const HATCH: f64 = 0.25;

/// Up to this lightness of the ground light marks show better than dark ones.
const BY_GROUND: u8 = 140;
/// The marks are light on every ground.
pub(super) const ALWAYS_LIGHT: u8 = u8::MAX;

/// Every tile.
pub fn tiles() -> Vec<TileMarks> {
    ALL.into_iter().map(tile).collect()
}

const ALL: [Tile; 20] = [
    Tile::Print(Texture::Stripe),
    Tile::Print(Texture::Check),
    Tile::Print(Texture::Dot),
    Tile::Print(Texture::Sprig),
    Tile::Print(Texture::Slant),
    Tile::Print(Texture::Wave),
    Tile::Print(Texture::Cross),
    Tile::Twill,
    Tile::TwillBroken,
    Tile::TwillFlat,
    Tile::TwillDouble,
    Tile::TwillWrong,
    Tile::TwillBrokenWrong,
    Tile::TwillFlatWrong,
    Tile::TwillDoubleWrong,
    Tile::Next,
    Tile::Done,
    Tile::Lap,
    Tile::Waste,
    Tile::Amiss,
];

/// The tile of a print.
pub(in crate::show) fn of_print(texture: Texture) -> Option<Tile> {
    (texture != Texture::Plain).then_some(Tile::Print(texture))
}

/// The tile of the denim that is the `n`th in the list, from 0.
pub(in crate::show) fn of_denim(n: u8, wrong: bool) -> Tile {
    match (n % 4, wrong) {
        (0, false) => Tile::Twill,
        (1, false) => Tile::TwillBroken,
        (2, false) => Tile::TwillFlat,
        (_, false) => Tile::TwillDouble,
        (0, true) => Tile::TwillWrong,
        (1, true) => Tile::TwillBrokenWrong,
        (2, true) => Tile::TwillFlatWrong,
        (_, true) => Tile::TwillDoubleWrong,
    }
}

/// The right sides of denims in the order of a list, over and over.
pub fn twills() -> Vec<Tile> {
    (0..4).map(|n| of_denim(n, false)).collect()
}

/// A tile by its name.
pub(super) fn tile(tile: Tile) -> TileMarks {
    let (side, strength, light_up_to, strokes) = match tile {
        Tile::Print(Texture::Plain) => print(Vec::new()),
        // A ticking: one broad stripe between two fine ones.
        Tile::Print(Texture::Stripe) => {
            print(vec![line("M12 -1V25", 6.0), line("M4 -1V25M20 -1V25", 1.8)])
        }
        Tile::Print(Texture::Check) => print(vec![
            line("M12 -1V25M-1 12H25", 4.0),
            line("M3 -1V25M-1 3H25M21 -1V25M-1 21H25", 1.8),
        ]),
        Tile::Print(Texture::Dot) => {
            print(vec![line(&format!("{}{}", disc(6.0), disc(18.0)), 0.0)])
        }
        Tile::Print(Texture::Sprig) => print(vec![
            line(&sprig(6.0, 11.0), 1.8),
            line(&sprig(18.0, 23.0), 1.8),
        ]),
        Tile::Print(Texture::Slant) => print(vec![line("M-6 18 18 -6M-6 42 42 -6M6 30 30 6", 3.4)]),
        Tile::Print(Texture::Wave) => print(vec![line(
            "M-6 6q3 5 6 0t6 0t6 0t6 0t6 0t6 0M-6 18q3 5 6 0t6 0t6 0t6 0t6 0t6 0",
            2.2,
        )]),
        Tile::Print(Texture::Cross) => {
            print(vec![line("M3 3 9 9M9 3 3 9M15 15 21 21M21 15 15 21", 2.4)])
        }

        Tile::Twill => right(&[-12.0, 0.0, 12.0, 24.0], STEEP, None),
        Tile::TwillBroken => right(&[-12.0, 0.0, 12.0, 24.0], STEEP, Some("4.5 4.444")),
        Tile::TwillFlat => right(&[-24.0, 0.0, 24.0], FLAT, None),
        Tile::TwillDouble => right(&[-24.0, -17.0, 0.0, 7.0, 24.0], FLAT, None),
        Tile::TwillWrong => wrong(&[-12.0, 0.0, 12.0, 24.0], STEEP, 6.3, None),
        Tile::TwillBrokenWrong => wrong(&[-12.0, 0.0, 12.0, 24.0], STEEP, 6.3, Some("17 9.833")),
        Tile::TwillFlatWrong => wrong(&[-24.0, -12.0, 0.0, 12.0, 24.0], FLAT, 5.0, None),
        Tile::TwillDoubleWrong => wrong(&[-24.0, -16.0, 0.0, 8.0, 24.0], FLAT, 5.0, None),

        Tile::Next => (HATCH, 0.7, BY_GROUND, vec![line("M12 11.6V12.4", 5.2)]),
        Tile::Done => (
            HATCH,
            0.35,
            ALWAYS_LIGHT,
            vec![line("M-6 12 12 -6M-6 24 24 -6M0 30 30 0M12 30 30 12", 2.0)],
        ),
        Tile::Lap => (
            HATCH,
            0.35,
            ALWAYS_LIGHT,
            vec![line("M-1 -1 25 25M25 -1 -1 25", 2.0)],
        ),
        Tile::Waste => (
            HATCH,
            1.0,
            BY_GROUND,
            vec![line("M-6 12 12 -6M-6 30 30 -6M12 30 30 12", 2.8)],
        ),
        Tile::Amiss => (
            HATCH,
            1.0,
            BY_GROUND,
            vec![line("M4 4 20 20M20 4 4 20", 3.2)],
        ),
    };
    TileMarks {
        tile,
        side,
        strength,
        light_up_to,
        strokes,
    }
}

type Drawn = (f64, f64, u8, Vec<TileStroke>);

fn print(strokes: Vec<TileStroke>) -> Drawn {
    (1.0, 0.62, BY_GROUND, strokes)
}

fn line(d: &str, width: f64) -> TileStroke {
    TileStroke {
        d: d.to_string(),
        width,
        dash: None,
    }
}

/// How far a line of twill runs across while it runs over the whole height. Dashes divide
/// the length of a line, so that they go on from tile to tile.
const STEEP: f64 = 12.0;
const FLAT: f64 = 24.0;

/// The right side: fine light lines that lean to the right.
fn right(starts: &[f64], run: f64, dash: Option<&str>) -> Drawn {
    let d = starts.iter().map(|from| lean(*from, run, |x| x)).collect();
    (TWILL, 0.3, BY_GROUND, vec![stroke(d, 2.2, dash)])
}

/// The wrong side: broad light lines that lean to the left, little of the colour between.
fn wrong(starts: &[f64], run: f64, width: f64, dash: Option<&str>) -> Drawn {
    let turned = |x| SIDE - x;
    let d = starts.iter().map(|from| lean(*from, run, turned)).collect();
    (WRONG, 0.66, ALWAYS_LIGHT, vec![stroke(d, width, dash)])
}

fn stroke(d: String, width: f64, dash: Option<&str>) -> TileStroke {
    TileStroke {
        d,
        width,
        dash: dash.map(str::to_string),
    }
}

/// A slanting line from the lower edge up, a little past it at both ends.
fn lean(from: f64, run: f64, turn: impl Fn(f64) -> f64) -> String {
    let past = run / 2.0;
    format!(
        "M{} 36L{} -12",
        n(turn(from - past)),
        n(turn(from + run + past))
    )
}

fn disc(middle: f64) -> String {
    format!(
        "M{} {middle}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z",
        n(middle - 4.0)
    )
}

/// A stem with a bud and two leaves, standing on `x`, `y`.
fn sprig(x: f64, y: f64) -> String {
    let (top, low, high) = (y - 9.5, y - 2.5, y - 5.5);
    format!(
        "M{x} {y}V{top}M{x} {low}q-4 0 -4.5 -4q4.5 0 4.5 4M{x} {high}q4 0 4.5 -4q-4.5 0 -4.5 4",
        x = n(x),
        y = n(y),
        top = n(top),
        low = n(low),
        high = n(high)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_tile_has_a_name_of_its_own_and_marks() {
        let mut seen = std::collections::BTreeSet::new();
        for marks in tiles() {
            assert!(seen.insert(marks.tile), "{:?} comes twice", marks.tile);
            assert!(!marks.strokes.is_empty() && marks.side > 0.0);
            assert!((0.0..=1.0).contains(&marks.strength));
        }
        let denims = (0..4).flat_map(|n| [of_denim(n, false), of_denim(n, true)]);
        assert_eq!(denims.collect::<std::collections::BTreeSet<_>>().len(), 8);
    }
}
