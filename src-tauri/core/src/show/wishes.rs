//! The wishes for the faces, and which of them a layout meets.

use crate::cloth::fabric::Face;
use crate::faces::arrange::{self, DenimSupply, FromPile, Score, Shades};
use crate::log::journal::Journal;
use crate::measure::Count;
use crate::plan::assembly::Rect;
use crate::show::context::Context;
use crate::show::parts::{Head, head};
use crate::throw::Throw;
use crate::throw::loose::loose_units;
use crate::throw::stock::{in_hand, to_lay_out};
use crate::throw::tasks::{Task, cover_task};
use crate::throw::wishes::{Apart, DenimWish, Grain, Pattern, Wishes};
use crate::types::TS;
use serde::Serialize;

/// Unevenness below this, in hundredths of chance, is called even (our judgement).
const EVEN_ENOUGH: u32 = 35;

/// Unevenness that chance alone would bring; beyond it there are clumps.
const CHANCE: u32 = 100;

/// How well one wish is met.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct WishLine {
    /// What it is, in a word or two.
    pub label: String,
    /// How it stands.
    pub value: String,
    /// Whether it is met; none where it is told and nothing was wished for.
    pub met: Option<bool>,
}

/// A part of a face.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Share {
    /// `A quarter`.
    pub label: String,
    /// Squares.
    pub squares: u32,
}

/// How the faces are wished for, as it can be chosen.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct WishesView {
    /// Common to all screens.
    pub head: Head,
    /// As chosen now.
    pub wishes: Wishes,
    /// Squares in all.
    pub squares: u32,
    /// Fewest that can be covered on the front and on the back: what is glued or sewn.
    pub least: [u32; 2],
    /// Most squares that can be covered on the front and on the back.
    pub most: [u32; 2],
    /// How many squares are still free and what can be had, where some are not.
    pub free: Option<String>,
    /// Where squares that are sewn in are bare: that fabric can be laid on them by hand, in words.
    pub by_hand_on_sewn: Option<String>,
    /// Shares to choose with one tap, with what they come to.
    pub shares: Vec<Share>,
    /// What stays as it is, in words.
    pub stays: Option<String>,
    /// Something is made that could be moved.
    pub made: bool,
    /// There are several denims, and squares that are not cut yet.
    pub denims: bool,
    /// Where the denims are chosen, what the pile gives of each, in words.
    pub pile: Option<String>,
    /// How many squares not cut yet have a denim chosen by hand, in words.
    pub by_hand: Option<String>,
    /// More is wished for than there is fabric.
    pub short: Option<String>,
    /// How the faces stand to these wishes now.
    pub lines: Vec<WishLine>,
}

/// The wishes that hold: what was said, or what the faces are now.
pub(super) fn standing(throw: &Throw) -> Wishes {
    throw.wishes.unwrap_or_else(|| Wishes {
        front: Count::at_most(throw.covered(Face::Front)),
        back: Count::at_most(throw.covered(Face::Back)),
        ..Wishes::default()
    })
}

/// Squares that keep their fabric on a face under every wish.
fn least(throw: &Throw, face: Face) -> u32 {
    let squares = throw.assembly().whole().squares();
    squares
        .filter(|s| throw.cover(*s).on(face).is_some())
        .filter(|s| throw.is_joined(*s) || throw.is_pinned(*s) || throw.has(*s, cover_task(face)))
        .count() as u32
}

/// How many squares are covered on each face where nobody has said it: a third of them in front
/// and a quarter behind, or as many as there is fabric for.
fn suggested(throw: &Throw) -> (Count, Count) {
    let squares = throw.plan.squares();
    let (front, back) = (squares / 3, squares / 4);
    let known: Count = in_hand(throw).iter().filter_map(|print| print.stock).sum();
    let apart = Wishes::default().apart;
    // With no fabric in the list yet, one is still to come.
    let most = most_apart(throw, apart, front + back).filter(|most| *most > 0);
    let [front, back] = [front, back].map(|n| n.min(most.unwrap_or(squares)));
    let (front, back) = match known.get() {
        n if n > 0 && n < front + back => {
            let front = n * front / (front + back);
            (front, n - front)
        }
        _ => (front, back),
    };
    (Count::at_most(front), Count::at_most(back))
}

/// The wishes as they can be chosen.
pub(super) fn wishes(journal: &Journal, asked: Option<Wishes>, context: Context<'_>) -> WishesView {
    let throw = journal.throw();
    let squares = throw.plan.squares();
    let mut wishes = asked.unwrap_or_else(|| {
        let mut wishes = standing(throw);
        if wishes.front == 0 && wishes.back == 0 {
            (wishes.front, wishes.back) = suggested(throw);
        }
        if wishes.denims.is_none() && throw.denims.len() > 1 {
            wishes.denims = Some(DenimWish::Any);
        }
        wishes
    });
    let uncut: Vec<Rect> = throw.uncut(None).collect();
    let by_hand = uncut.iter().filter(|s| throw.is_denim_by_hand(**s));
    let by_hand = match by_hand.count() {
        0 => None,
        n => Some(say!(context, "wishes-by-hand", n = n)),
    };
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
            context,
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
        label: context.say(&format!("share-{key}"), &[]),
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
            context,
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
            Some(say!(context, "wishes-short", have = stock, wanted = wanted))
        }
        None if throw.prints.is_empty() && wanted > 0 => Some(say!(context, "wishes-no-prints")),
        _ => crowded(throw, wishes, context),
    };
    let score = arrange::of(throw, wishes);
    WishesView {
        head: head(journal, context),
        wishes,
        squares,
        least,
        most,
        free,
        by_hand_on_sewn: by_hand_on_sewn(throw, context),
        shares,
        stays,
        made: units + glued > 0,
        denims: throw.denims.len() > 1 && !uncut.is_empty(),
        pile: pile(throw, wishes, score.from_pile.as_ref(), context),
        by_hand,
        short,
        lines: lines_now(&score, wishes, throw, context),
    }
}

/// No layout changes what is sewn in; by hand, fabric can be laid on it.
fn by_hand_on_sewn(throw: &Throw, context: Context<'_>) -> Option<String> {
    throw.plan.laid_on()?;
    let bare = |s: Rect| throw.is_joined(s) && throw.cover(s).layers() < 3;
    let any = throw.assembly().whole().squares().any(bare);
    any.then(|| say!(context, "wishes-on-sewn"))
}

/// How many squares of a grid can be chosen so that no two touch, not even at corners.
fn lattice(across: u16, down: u16) -> u32 {
    u32::from(across.div_ceil(2)) * u32::from(down.div_ceil(2))
}

/// How many squares of a face can be covered at most so that no like fabrics touch, where so many
/// fabric squares are to be laid; nothing where they may touch.
///
/// Of squares that touch along no edge a grid holds `⌈n / 2⌉` at most, of squares that touch at no
/// corner either `⌈across / 2⌉ · ⌈down / 2⌉`: one at most of each two, or of each two by two, in
/// which the grid can be parted. Each fabric may have as many; one of which each square is another may
/// lie anywhere.
fn most_apart(throw: &Throw, apart: Apart, wanted: u32) -> Option<u32> {
    let (across, down) = (throw.plan.across, throw.plan.down);
    let of_each = match apart {
        Apart::Free => return None,
        Apart::Edges => throw.plan.squares().div_ceil(2),
        Apart::Corners => lattice(across, down),
    };
    let prints = to_lay_out(throw, wanted);
    let room = prints.iter().map(|print| match (print.stock, print.mixed) {
        (Some(Count::NONE), _) => 0,
        (stock, true) => stock.map_or(throw.plan.squares(), Count::get),
        (_, false) => of_each,
    });
    Some(room.fold(0, u32::saturating_add))
}

/// More squares of a face are to be covered than can be without like fabrics touching.
fn crowded(throw: &Throw, wishes: Wishes, context: Context<'_>) -> Option<String> {
    let most = most_apart(throw, wishes.apart, (wishes.front + wishes.back).get())?;
    let apart = match wishes.apart {
        Apart::Edges => "edges",
        _ => "corners",
    };
    let wanted = [("front", wishes.front), ("back", wishes.back)];
    let (face, wanted) = wanted.into_iter().find(|(_, n)| n.get() > most)?;
    Some(say!(
        context,
        "wishes-crowded",
        face = face,
        most = most,
        apart = apart,
        wanted = wanted
    ))
}

/// What the pile gives of each denim for the squares that are not cut yet.
fn pile(
    throw: &Throw,
    wishes: Wishes,
    from: Option<&FromPile>,
    context: Context<'_>,
) -> Option<String> {
    if !wishes.choose_denims() || throw.denims.len() < 2 {
        return None;
    }
    let Some(DenimSupply { named, unnamed }) = from.map(|from| &from.supply) else {
        return Some(say!(context, "wishes-no-pile"));
    };
    let item = |n: u32, denim: &str| say!(context, "wishes-pile-of", n = n, denim = denim);
    let each = throw.denims.iter().zip(named);
    let mut list: Vec<String> = each.map(|(denim, n)| item(*n, &denim.name)).collect();
    if *unnamed > 0 {
        list.push(say!(context, "wishes-pile-unnamed", n = *unnamed));
    }
    let list = context.words.list("list-and", list);
    Some(say!(context, "wishes-pile", list = list))
}

/// Squares of each denim beyond what the pile gives, in words.
fn lacking(throw: &Throw, from: &FromPile, context: Context<'_>) -> String {
    let each = throw.denims.iter().zip(&from.lacking);
    let list = each.filter(|(_, n)| **n > 0).map(|(denim, n)| {
        say!(
            context,
            "wishes-pile-of",
            n = *n,
            denim = denim.name.as_str()
        )
    });
    context.words.list("list-and", list.collect::<Vec<_>>())
}

/// How well wishes are met, a line each.
pub(super) fn lines(
    score: &Score,
    wishes: Wishes,
    throw: &Throw,
    context: Context<'_>,
) -> Vec<WishLine> {
    let mut out = Vec::new();
    let mut push = |key: &str, value: String, met: Option<bool>| {
        out.push(WishLine {
            label: context.say(&format!("wish-{key}"), &[]),
            value,
            met,
        });
    };
    let mut line = |key: &str, value: String, met: bool| push(key, value, Some(met));
    let [front, back] = score.covered;
    line(
        "covered",
        say!(context, "wish-covered-value", front = front, back = back),
        front == wishes.front && back == wishes.back,
    );
    if wishes.apart != Apart::Free && !throw.prints.is_empty() {
        match score.alike[0].len() + score.alike[1].len() {
            0 => line("apart-none", String::new(), true),
            alike => line("apart", say!(context, "number", n = alike), false),
        }
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
            let mut value = say!(context, "wish-even-value", how = how);
            // More squares than lie apart at corners by themselves crowd together round the gaps.
            let lattice = lattice(throw.plan.across, throw.plan.down);
            if uneven >= EVEN_ENOUGH && wishes.apart == Apart::Corners && covered > lattice {
                value = say!(context, "wish-even-edges", value = value);
            }
            line(key, value, uneven < EVEN_ENOUGH);
        }
    }
    if wishes.grain != Grain::Free {
        let n = score.against_grain;
        line("grain", say!(context, "wish-grain-value", n = n), n == 0);
    }
    if wishes.pattern != Pattern::Free {
        let key = match wishes.pattern {
            Pattern::Mirror => "mirror",
            Pattern::ShadeRows => "shade-rows",
            _ => "light-edges",
        };
        let n = score.off_pattern;
        let why = match score.shades {
            Shades::Told => None,
            Shades::OneDenim => Some("one-denim"),
            Shades::NotYet => Some("not-yet"),
            Shades::NoOther => Some("no-other"),
            Shades::Alike => Some("alike"),
            Shades::NoRoom => Some("no-room"),
        };
        match why {
            None => line(key, say!(context, "wish-pattern-value", n = n), n == 0),
            Some(why) => line(key, context.say(&format!("wish-shades-{why}"), &[]), false),
        }
    }
    denim_lines(score, wishes, throw, context, &mut line);
    let (key, value, met) = thick_line(score, wishes, context);
    if met.is_some() || score.thickest.0 > 0 {
        push(key, value, met);
    }
    out
}

/// How the faces stand to wishes now. While nothing is laid out, none of them is met or not met.
pub(super) fn lines_now(
    score: &Score,
    wishes: Wishes,
    throw: &Throw,
    context: Context<'_>,
) -> Vec<WishLine> {
    let mut lines = lines(score, wishes, throw, context);
    let bare = score.covered == [0, 0];
    if bare {
        lines.truncate(1);
    }
    // Where nobody has wished for anything, how many are covered is told, not met.
    if (bare || throw.wishes.is_none())
        && let Some(covered) = lines.first_mut()
    {
        covered.met = None;
    }
    lines
}

/// How thick the thickest crossings are. Four squares meet at each, and the fabrics on them; it is
/// a wish met or not met only where something was wished for.
fn thick_line(
    score: &Score,
    wishes: Wishes,
    context: Context<'_>,
) -> (&'static str, String, Option<bool>) {
    let (most, often) = score.thickest;
    let value = say!(context, "wish-thick-value", n = most + 4, often = often);
    let Some(wished) = wishes.crossing else {
        return ("thick", value, None);
    };
    match score.too_thick {
        0 => ("thick-met", value, Some(true)),
        n => {
            let value = say!(
                context,
                "wish-thick-over",
                value = value,
                n = n,
                wished = wished.get() + 4
            );
            ("thick", value, Some(false))
        }
    }
}

/// How well the wishes for denims are met.
fn denim_lines(
    score: &Score,
    wishes: Wishes,
    throw: &Throw,
    context: Context<'_>,
    line: &mut impl FnMut(&str, String, bool),
) {
    if throw.denims.len() < 2 {
        return;
    }
    let (parts, denims) = score.denim_parts;
    let one = |line: &mut dyn FnMut(&str, String, bool), key: &str| {
        line(key, say!(context, "wish-denims-one"), false);
    };
    match wishes.denims {
        Some(DenimWish::Apart | DenimWish::Bands) if denims < 2 => one(line, "denims"),
        Some(DenimWish::Apart) => match score.denims_alike {
            0 => line("denims-apart-none", String::new(), true),
            n => line("denims-apart", say!(context, "number", n = n), false),
        },
        Some(DenimWish::Bands) => {
            let value = say!(context, "wish-denims-parts", parts = parts, denims = denims);
            line("denims-bands", value, parts == denims);
        }
        _ => {}
    }
    if let Some(from) = &score.from_pile {
        let lacks = from.lacking.iter().sum::<u32>();
        let value = match (lacks, from.left) {
            (0, left) => say!(context, "wish-pile-enough", left = left),
            (_, 0) => say!(context, "wish-pile-short", n = lacks),
            (_, left) => {
                let list = lacking(throw, from, context);
                say!(context, "wish-pile-wasted", list = list, left = left)
            }
        };
        line("pile", value, lacks == 0);
    }
}
