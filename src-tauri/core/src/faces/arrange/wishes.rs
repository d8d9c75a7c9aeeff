//! How well a layout answers the wishes, measured.

use crate::faces::arrange::board::{Board, NONE};
use crate::faces::arrange::supply::DenimSupply;
use crate::faces::arrange::weights::SHADE_OFF;
use crate::plan::assembly::Rect;
use crate::throw::Throw;
use crate::throw::wishes::{Apart, DenimWish, Grain, Pattern, Wishes};

/// Whether the squares can show an order of shades.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Shades {
    /// They can, or no such order is wished for.
    #[default]
    Told,
    /// Every square is of one denim.
    OneDenim,
    /// Every square is of one denim, though the pile gives others for some of them.
    NotYet,
    /// Every square is of one denim, and the pile gives no other for those not cut yet.
    NoOther,
    /// The lightest and the darkest square are too nearly alike.
    Alike,
    /// The throw has only one row, or nothing but edge.
    NoRoom,
}

/// How well the faces are laid out, measured.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Score {
    /// What all of it comes to; less is better. For comparing layouts of one ground.
    pub cost: i64,
    /// Squares covered on each face.
    pub covered: [u32; 2],
    /// Neighbours alike on each face that the wish would keep apart.
    pub alike: [Vec<(Rect, Rect)>; 2],
    /// Unevenness of each face, in parts of a hundred of what chance gives.
    pub uneven: [u32; 2],
    /// The same, of each print by itself, on average.
    pub prints_uneven: [u32; 2],
    /// Most fabrics that meet at one crossing, and how many crossings have as many.
    pub thickest: (u32, u32),
    /// Crossings at which more fabrics meet than wished for.
    pub too_thick: u32,
    /// The mean over crossings of the square of the fabrics that meet there.
    pub thickness: f64,
    /// Squares (one way) or neighbours (by turns) against the wished grain.
    pub against_grain: u32,
    /// Squares out of the wished pattern.
    pub off_pattern: u32,
    /// Whether the squares can show the order of shades wished for.
    pub shades: Shades,
    /// Pairs of squares side by side that show the same denim on a face, where the wish
    /// would keep them apart; a pair that does on both faces once.
    pub denims_alike: u32,
    /// In how many parts the denims lie, and how many denims there are.
    pub denim_parts: (u32, u32),
    /// How the squares not cut yet stand to what the pile gives, where their denims are chosen.
    pub from_pile: Option<FromPile>,
}

/// How the squares not cut yet stand to what the pile gives.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FromPile {
    /// What it gives.
    pub supply: DenimSupply,
    /// Squares beyond that of each denim.
    pub lacking: Vec<u32>,
    /// Squares it gives that no place needs.
    pub left: u32,
}

/// How many squares may still get another fabric, or none, on the front and on the back.
pub fn free(throw: &Throw, wishes: Wishes) -> [u32; 2] {
    let board = Board::new(throw, wishes);
    [0, 1].map(|f| {
        (0..board.squares.len())
            .filter(|x| board.open(f, *x))
            .count() as u32
    })
}

/// How well a throw's faces, as they are planned, answer the wishes.
pub fn of(throw: &Throw, wishes: Wishes) -> Score {
    score(&Board::new(throw, wishes))
}

pub(super) fn score(board: &Board) -> Score {
    let at = |x: usize| Rect::square((x / board.across) as u16, (x % board.across) as u16);
    let mut out = Score {
        cost: board.cost,
        shades: shades(board),
        denims_alike: denims_alike(board),
        denim_parts: (board.denim_parts(), board.denims_used()),
        from_pile: from_pile(board),
        ..Score::default()
    };
    for (f, alike) in out.alike.iter_mut().enumerate() {
        for x in 0..board.squares.len() {
            let print = board.squares[x].on[f];
            if print == NONE || board.is_mixed(print) || board.wishes.apart == Apart::Free {
                continue;
            }
            let mut near: Vec<usize> = board.beside(x).collect();
            if board.wishes.apart == Apart::Corners {
                near.extend(board.at_corners(x));
            }
            for y in near {
                if y > x && board.squares[y].on[f] == print {
                    alike.push((at(x), at(y)));
                }
            }
        }
        out.covered[f] = board.sets[f].n as u32;
        out.uneven[f] = board.even.of_chance(&board.sets[f]);
        let own = &board.sets[2 + f * board.prints..2 + (f + 1) * board.prints];
        let all: usize = own.iter().map(|s| s.n).sum();
        let sum: u64 = own
            .iter()
            .map(|s| u64::from(board.even.of_chance(s)) * s.n as u64)
            .sum();
        out.prints_uneven[f] = sum.checked_div(all as u64).unwrap_or(0) as u32;
    }
    let most = board.extra.iter().copied().max().unwrap_or(0);
    let often = board.extra.iter().filter(|e| **e == most).count();
    out.thickest = (most as u32, often as u32);
    let too_thick = board.extra.iter().filter(|e| board.too_many(**e) > 0);
    out.too_thick = too_thick.count() as u32;
    let squared: i64 = board.extra.iter().map(|e| e * e).sum();
    out.thickness = squared as f64 / board.extra.len().max(1) as f64;
    for (x, square) in board.squares.iter().enumerate() {
        out.against_grain += match board.wishes.grain {
            Grain::Free => 0,
            Grain::OneWay => u32::from(square.crosswise),
            Grain::ByTurns => board
                .beside(x)
                .filter(|y| *y > x && board.squares[*y].crosswise == square.crosswise)
                .count() as u32,
        };
        out.off_pattern += match board.wishes.pattern {
            Pattern::Free => 0,
            Pattern::Mirror => u32::from((0..2).any(|f| board.unlike(f, x) > 0)),
            _ => u32::from((board.shade(square.denim) - board.want[x]).abs() > SHADE_OFF),
        };
    }
    out
}

/// Whether the squares can show the order of shades wished for.
fn shades(board: &Board) -> Shades {
    let room = match board.wishes.pattern {
        Pattern::Free | Pattern::Mirror => return Shades::Told,
        Pattern::ShadeRows => board.down > 1,
        Pattern::LightEdges => board.across.min(board.down) > 2,
    };
    let shades = || board.squares.iter().map(|s| board.shade(s.denim));
    let span = shades().max().zip(shades().min()).map_or(0, |(l, d)| l - d);
    let mut denims = board.squares.windows(2);
    if denims.all(|two| two[0].denim == two[1].denim) {
        match (board.chooses, board.could_mix()) {
            (false, _) => Shades::OneDenim,
            (true, true) => Shades::NotYet,
            (true, false) => Shades::NoOther,
        }
    } else if span <= SHADE_OFF {
        Shades::Alike
    } else if !room {
        Shades::NoRoom
    } else {
        Shades::Told
    }
}

fn denims_alike(board: &Board) -> u32 {
    if board.wishes.denims != Some(DenimWish::Apart) {
        return 0;
    }
    let touches = |x: usize, y: usize| (0..2).any(|f| board.touching(f, x).any(|z| z == y));
    let alike = |x: usize| {
        board
            .beside(x)
            .filter(move |y| *y > x && touches(x, *y))
            .count()
    };
    (0..board.squares.len()).map(alike).sum::<usize>() as u32
}

fn from_pile(board: &Board) -> Option<FromPile> {
    let supply = board.supply.clone()?;
    let wanted = board.uncut(false);
    let lacking = supply.lacking(&wanted);
    let met = wanted.iter().sum::<u32>() - lacking.iter().sum::<u32>();
    Some(FromPile {
        left: supply.all() - met,
        supply,
        lacking,
    })
}
