//! Wishes for the faces, layouts to choose from, the floor, and the covering list.

use super::{Lens, faces, head, names, swatches};
use crate::cloth::fabric::{Cover, Face};
use crate::command::Action;
use crate::faces::arrange::{self, Arranger, Score};
use crate::log::journal::Journal;
use crate::measure::Count;
use crate::plan::assembly::{Kind, Rect};
use crate::throw::Throw;
use crate::throw::loose::loose_units;
use crate::throw::stock::in_hand;
use crate::throw::tasks::Task;
use crate::throw::tasks::cover_task;
use crate::throw::wishes::{Apart, Grain, Layout, Pattern, Wishes};
use crate::view::{
    CoveringGroup, CoveringLine, CoveringView, FloorCell, FloorView, LayoutCard, Layouts, Share,
    WishLine, WishesView,
};

/// Squares in one part of the floor, across: two fours, large enough on a phone.
const FLOOR_WIDTH: u16 = 4;
/// Unevenness below this, in hundredths of chance, is called even (our judgement).
const EVEN_ENOUGH: u32 = 35;
/// Unevenness that chance alone would bring; beyond it there are clumps.
const CHANCE: u32 = 100;

/// The wishes that hold: what was said, or what the faces are now.
pub(super) fn standing(throw: &Throw) -> Wishes {
    throw.wishes.unwrap_or_else(|| Wishes {
        front: Count::at_most(throw.covered(Face::Front)),
        back: Count::at_most(throw.covered(Face::Back)),
        ..Wishes::default()
    })
}

/// Squares that keep their fabric on a face, whatever is wished.
fn least(throw: &Throw, face: Face) -> u32 {
    let squares = throw.assembly().whole().squares();
    squares
        .filter(|s| throw.cover(*s).on(face).is_some())
        .filter(|s| throw.is_joined(*s) || throw.is_pinned(*s) || throw.has(*s, cover_task(face)))
        .count() as u32
}

/// The wishes as they can be chosen.
pub(super) fn wishes(journal: &Journal, asked: Option<Wishes>, lens: Lens<'_>) -> WishesView {
    let throw = journal.throw();
    let squares = throw.plan.squares();
    let mut wishes = asked.unwrap_or_else(|| {
        let mut wishes = standing(throw);
        if wishes.front == 0 && wishes.back == 0 {
            (wishes.front, wishes.back) =
                (Count::at_most(squares / 3), Count::at_most(squares / 4));
        }
        wishes
    });
    let least = Face::BOTH.map(|face| least(throw, face));
    let open = arrange::free(throw, wishes);
    let most = [0, 1].map(|f| (least[f] + open[f]).min(squares));
    let within = |wished: Count, f: usize| {
        Count::at_most(wished.get().clamp(least[f].min(most[f]), most[f]))
    };
    wishes.front = within(wishes.front, 0);
    wishes.back = within(wishes.back, 1);
    let free = (open != [squares; 2]).then(|| {
        say!(
            lens,
            "wishes-free",
            front_free = open[0],
            front_least = least[0],
            front_most = most[0],
            back_free = open[1],
            back_least = least[1],
            back_most = most[1]
        )
    });
    let shares = [
        ("none", 0, 1),
        ("quarter", 1, 4),
        ("third", 1, 3),
        ("half", 1, 2),
    ]
    .map(|(key, part, of)| Share {
        label: lens.say(&format!("share-{key}"), &[]),
        squares: squares * part / of,
    })
    .into();
    let units = loose_units(throw).len();
    let glued = throw
        .assembly()
        .whole()
        .squares()
        .filter(|s| !throw.is_joined(*s))
        .filter(|s| throw.has(*s, Task::CoverFront) || throw.has(*s, Task::CoverBack))
        .count();
    let held = throw
        .assembly()
        .whole()
        .squares()
        .filter(|s| throw.is_joined(*s))
        .count();
    let pinned = throw.pinned().count();
    let stays = (units + glued + held + pinned > 0).then(|| {
        say!(
            lens,
            "wishes-stay",
            units = units,
            glued = glued,
            pinned = pinned
        )
    });
    let stock: Option<Count> = in_hand(throw).iter().map(|p| p.stock).sum();
    let wanted = wishes.front + wishes.back;
    let short = match stock {
        Some(stock) if stock < wanted => {
            Some(say!(lens, "wishes-short", have = stock, wanted = wanted))
        }
        None if throw.prints.is_empty() && wanted > 0 => Some(say!(lens, "wishes-no-prints")),
        _ => None,
    };
    let score = arrange::of(throw, wishes);
    WishesView {
        head: head(journal, lens),
        wishes,
        squares,
        least,
        most,
        free,
        shares,
        stays,
        made: units + glued > 0,
        short,
        lines: lines(&score, wishes, throw, lens),
    }
}

/// How well wishes are met, a line each.
pub(super) fn lines(score: &Score, wishes: Wishes, throw: &Throw, lens: Lens<'_>) -> Vec<WishLine> {
    let mut out = Vec::new();
    let mut line = |key: &str, value: String, met: bool| {
        out.push(WishLine {
            label: lens.say(&format!("wish-{key}"), &[]),
            value,
            met,
        });
    };
    let [front, back] = score.covered;
    line(
        "covered",
        say!(lens, "wish-covered-value", front = front, back = back),
        front == wishes.front && back == wishes.back,
    );
    if wishes.apart != Apart::Free && !throw.prints.is_empty() {
        let alike = score.alike[0].len() + score.alike[1].len();
        line(
            "apart",
            say!(lens, "wish-apart-value", n = alike),
            alike == 0,
        );
    }
    for (n, key) in ["even-front", "even-back"].into_iter().enumerate() {
        let covered = score.covered[n];
        if covered > 1 && covered < throw.plan.squares() {
            let uneven = score.uneven[n];
            let how = match uneven {
                ..EVEN_ENOUGH => "even",
                EVEN_ENOUGH..=CHANCE => "loose",
                _ => "clumps",
            };
            let value = say!(lens, "wish-even-value", how = how);
            line(key, value, uneven < EVEN_ENOUGH);
        }
    }
    let (most, often) = score.thickest;
    if most > 0 {
        let value = say!(lens, "wish-thick-value", n = most + 4, often = often);
        line("thick", value, true);
    }
    if wishes.grain != Grain::Free {
        let n = score.against_grain;
        line("grain", say!(lens, "wish-grain-value", n = n), n == 0);
    }
    if wishes.pattern != Pattern::Free {
        let key = match wishes.pattern {
            Pattern::Mirror => "mirror",
            Pattern::ShadeRows => "shade-rows",
            _ => "light-edges",
        };
        let n = score.off_pattern;
        line(key, say!(lens, "wish-pattern-value", n = n), n == 0);
    }
    out
}

/// Layouts found so far, as cards to choose from.
pub fn layouts(
    journal: &Journal,
    wishes: Wishes,
    found: &[Arranger],
    (running, most): (bool, u32),
    lens: Lens<'_>,
) -> Layouts {
    let throw = journal.throw();
    let rounds = found.iter().map(Arranger::rounds).min().unwrap_or(0);
    let across = usize::from(throw.plan.across);
    let cards = found
        .iter()
        .zip('A'..)
        .map(|(arranger, letter)| {
            let covers = arranger.covers();
            let number = |p: Option<u8>| p.map_or(-1, i16::from);
            let back = covers.chunks(across).flat_map(|row| row.iter().rev());
            let (layout, changed) = arranger.laid(throw);
            let lines = lines(&arranger.score(), wishes, throw, lens);
            let changes = changes(&layout, changed, lens);
            let met = lines.iter().filter(|l| l.met).count();
            let now = throw.covers();
            let new = |n: &usize, face| {
                let shown = |c: &Cover| (c.on(face), c.denim, c.wrong_side_up, c.crosswise);
                now.get(*n).is_none_or(|c| shown(c) != shown(&covers[*n]))
            };
            let places = || 0..covers.len();
            let turned = |n: usize| n / across * across + across - 1 - n % across;
            let front_new = places().filter(|n| new(n, Face::Front));
            let back_new = places().filter(|n| new(&turned(*n), Face::Back));
            let told = say!(lens, "layout-met", met = met, all = lines.len());
            LayoutCard {
                front_new: front_new.map(|n| n as u32).collect(),
                back_new: back_new.map(|n| n as u32).collect(),
                letter: letter.to_string(),
                front: covers.iter().map(|c| number(c.front)).collect(),
                back: back.map(|c| number(c.back)).collect(),
                denims: covers.iter().map(|c| c.denim).collect(),
                spoken: say!(
                    lens,
                    "layout-spoken",
                    letter = letter.to_string(),
                    met = told.as_str(),
                    changes = changes.as_str()
                ),
                lines,
                met: told,
                changes,
                action: Action::LayOut { wishes, layout },
            }
        })
        .collect();
    Layouts {
        running,
        rounds,
        most,
        said: match running {
            true => say!(lens, "layouts-running", n = rounds, all = most),
            false => say!(lens, "layouts-done", n = found.len()),
        },
        across: throw.plan.across,
        down: throw.plan.down,
        prints: swatches(journal, lens),
        denims: throw.denims.clone(),
        cards,
    }
}

/// What changes with a layout, in a sentence.
fn changes(layout: &Layout, changed: usize, lens: Lens<'_>) -> String {
    let sewn = layout
        .moves
        .iter()
        .filter(|(from, _)| !from.is_square())
        .count();
    let turned = layout.turns.iter().filter(|(p, _)| !p.is_square()).count();
    say!(
        lens,
        "layout-changes",
        n = changed,
        sewn = sewn,
        turned = turned
    )
}

/// A part of the floor: two rows of squares, some across, front up.
pub(super) fn floor(journal: &Journal, part: u32, lens: Lens<'_>) -> FloorView {
    let throw = journal.throw();
    let (across, down) = (throw.plan.across, throw.plan.down);
    let wide = u32::from(across.div_ceil(FLOOR_WIDTH));
    let parts = wide * u32::from(down.div_ceil(2));
    let part = part.min(parts.saturating_sub(1));
    let (row, col) = ((part / wide) as u16 * 2, (part % wide) as u16 * FLOOR_WIDTH);
    let area = Rect {
        row,
        col,
        rows: (down - row).min(2),
        cols: (across - col).min(FLOOR_WIDTH),
    };
    let units = loose_units(throw);
    let cells = area
        .squares()
        .map(|piece| {
            let cover = throw.cover(piece);
            let sewn = units
                .iter()
                .find(|u| u.holds(piece))
                .map(|u| names::piece(throw, *u, lens))
                .or_else(|| throw.is_joined(piece).then(|| say!(lens, "floor-joined")));
            let up = faces::cloth(throw, cover, Face::Front, lens);
            let under = faces::cloth(throw, cover, Face::Back, lens);
            let mut spoken = say!(
                lens,
                "floor-cell",
                piece = names::spoken(throw, piece, lens),
                up = up,
                under = under,
                grain = if cover.crosswise { "across" } else { "up" }
            );
            if let Some(sewn) = &sewn {
                spoken = say!(lens, "floor-cell-sewn", cell = spoken, sewn = sewn.as_str());
            }
            FloorCell {
                piece,
                x: piece.col - col,
                y: piece.row - row,
                label: names::square(piece),
                print: cover.front,
                under: cover.back,
                denim: cover.denim,
                wrong_side: cover.wrong_side_up,
                crosswise: cover.crosswise,
                spoken,
                sewn,
            }
        })
        .collect();
    let sewn = faces::sewn_lines(throw, Face::Front, Some(area));
    FloorView {
        head: head(journal, lens),
        title: say!(
            lens,
            "floor-title",
            first = names::square(Rect::square(row, col)),
            last = names::square(Rect::square(row + area.rows - 1, col + area.cols - 1)),
            row = names::row_of_fours(usize::from(row / 2))
        ),
        text: say!(lens, "floor-text"),
        across: area.cols,
        down: area.rows,
        cells,
        sewn,
        part,
        parts,
        prints: swatches(journal, lens),
        denims: throw.denims.clone(),
    }
}

/// What is glued where, by label.
pub(super) fn covering(journal: &Journal, lens: Lens<'_>) -> CoveringView {
    let throw = journal.throw();
    let squares: Vec<Rect> = throw.assembly().whole().squares().collect();
    let letters = names::letters(&throw.prints);
    let mut groups = Vec::new();
    for face in Face::BOTH {
        for (n, print) in throw.prints.iter().enumerate() {
            let on: Vec<Rect> = squares
                .iter()
                .copied()
                .filter(|s| throw.cover(*s).on(face) == Some(n as u8))
                .collect();
            if on.is_empty() {
                continue;
            }
            let (done, open): (Vec<Rect>, Vec<Rect>) =
                on.iter().partition(|s| throw.has(**s, cover_task(face)));
            let key = match face {
                Face::Front => "covering-front",
                Face::Back => "covering-back",
            };
            let label = |list: Vec<Rect>| list.into_iter().map(names::square).collect();
            groups.push(CoveringGroup {
                print: Some(n as u8),
                title: lens.say(key, &[("print", print.name.clone().into())]),
                count: say!(lens, "covering-count", n = on.len(), done = done.len()),
                open: label(open),
                done: label(done),
            });
        }
    }
    let lines = squares
        .iter()
        .filter(|s| throw.cover(**s).layers() > 1)
        .map(|s| {
            let cover = throw.cover(*s);
            let name = |p: Option<u8>| {
                p.and_then(|p| {
                    letters
                        .get(usize::from(p))
                        .zip(throw.prints.get(usize::from(p)))
                })
                .map_or_else(
                    || say!(lens, "bare"),
                    |(letters, print)| format!("{letters} {}", print.name),
                )
            };
            CoveringLine {
                label: names::square(*s),
                text: say!(
                    lens,
                    "covering-square",
                    front = name(cover.front),
                    back = name(cover.back)
                ),
            }
        })
        .collect();
    let assembly = throw.assembly();
    let pieces = assembly
        .joins()
        .iter()
        .filter(|j| matches!(throw.kind(j.whole), Kind::Pair | Kind::Four))
        .map(|j| {
            let list: Vec<String> = j.whole.squares().map(names::square).collect();
            let squares = lens.words.list("list-short", list);
            let key = match throw.has(j.whole, Task::Stitch) {
                true => "covering-piece-sewn",
                false => "covering-piece",
            };
            CoveringLine {
                label: names::piece(throw, j.whole, lens),
                text: lens.say(key, &[("squares", squares.into())]),
            }
        })
        .collect();
    CoveringView {
        head: head(journal, lens),
        labelling: (1..=3)
            .map(|n| lens.say(&format!("labelling-{n}"), &[]))
            .collect(),
        groups,
        prints: swatches(journal, lens),
        squares: lines,
        pieces,
    }
}
