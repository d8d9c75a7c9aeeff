//! The cutting list of a piece in words: the same lines on screen, on paper and in a drawing.

use crate::cloth::cutting::{self, Beginning, CutPlan, FromEdge, Half, HalfRun, Patch};
use crate::cloth::garments::{Piece, Zone, ZoneKind};
use crate::cloth::pile::Heap;
use crate::cloth::steps::{CutStep, HalvesLie, steps};
use crate::command::Command;
use crate::log::journal::{Journal, What};
use crate::measure::{Count, Length, Ruler, in_nm, zero};
use crate::plan::assembly::Rect;
use crate::show::context::Context;
use crate::show::names;
use crate::show::parts::Button;
use crate::throw::account::{ClothAccount, LaidPiece, MOST_STRIPS, layout};
use crate::throw::wishes::Grain;
use crate::throw::{Event, Throw, Went};
use crate::types::TS;
use crate::words::Shown;
use serde::Serialize;
use std::cell::RefCell;
use std::collections::BTreeMap;

/// One line of a piece's cutting list.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct CutRow {
    /// What it is.
    pub title: String,
    /// How it is cut.
    pub text: String,
    /// What is chalked on its squares; nothing where they have no places.
    pub chalk: Option<String>,
    /// Whole squares of this line.
    pub squares: u32,
    /// Halves of squares.
    pub halves: u32,
    /// It is done.
    pub done: bool,
    /// It is the next one.
    pub now: bool,
    /// Takes it off the list, or puts it back; none once the piece is cut up.
    pub tick: Option<Button>,
}

/// A piece as it is cut: the layout that the account gives it, and the places of its squares.
pub(super) struct Laid {
    /// The piece as it lies to be cut.
    pub(super) lying: Piece,
    /// Squares and strips.
    pub(super) cuts: CutPlan,
    /// The places of the squares, in the order of the strips; fewer where some are spare.
    pub(super) places: Vec<Rect>,
    /// Lines that are done.
    pub(super) done: usize,
}

impl Laid {
    /// A piece of a heap as the account has it.
    pub(super) fn of(
        throw: &Throw,
        (n, index): (u16, usize),
        heap: &Heap,
        piece: &Piece,
        account: &ClothAccount,
    ) -> Laid {
        let at = (n, u8::try_from(index).unwrap_or(u8::MAX));
        let begun = throw.begun_pieces.get(&at);
        let strips = account.piece(n, index).strips;
        let LaidPiece { lying, cuts } = layout(throw, heap, (index, piece), strips);
        Laid {
            lying,
            cuts,
            places: account.places.get(&at).cloned().unwrap_or_default(),
            done: begun.map_or(0, |b| b.lines.get() as usize),
        }
    }

    /// A piece with so many strips, whatever the rest of the pile gives; its squares have no places
    /// yet.
    pub(super) fn alone(
        throw: &Throw,
        index: usize,
        heap: &Heap,
        piece: &Piece,
        strips: Count,
    ) -> Laid {
        let most = Count::at_most(strips.get().min(MOST_STRIPS));
        let LaidPiece { lying, cuts } = layout(throw, heap, (index, piece), most);
        Laid {
            lying,
            cuts,
            places: Vec::new(),
            done: 0,
        }
    }

    /// A piece that is cut up, as it lay when it was cut. Its squares have their places where all of
    /// them came out; else nobody said which of them did not.
    pub(super) fn cut_up(
        throw: &Throw,
        index: usize,
        heap: &Heap,
        piece: &Piece,
        (strips, places): (Count, &[Rect]),
    ) -> Laid {
        let mut laid = Laid::alone(throw, index, heap, piece, strips);
        if heap.counted.get(index).copied().flatten() == Some(Count::at_most(laid.cuts.count)) {
            laid.places = places.to_vec();
        }
        laid
    }

    /// What is chalked on a square, counted from 0.
    pub(super) fn chalk(&self, square: usize) -> Option<String> {
        self.places.get(square).map(|place| names::square(*place))
    }
}

/// The pieces that were cut up, in order: which, by heap and piece, the binding strips that came out
/// and where the squares went.
fn cut_pieces(
    journal: &Journal,
) -> impl DoubleEndedIterator<Item = ((u16, usize), (Count, Option<&Went>))> {
    let standing = journal.entries().filter(|(_, stands)| *stands);
    let events = standing.filter_map(|(entry, _)| match &entry.what {
        What::Do(events) => Some(events),
        _ => None,
    });
    events.flatten().filter_map(|event| match event {
        Event::PieceCut {
            n,
            piece,
            went,
            strips,
            ..
        } => {
            let strips = strips.map_or(Count::NONE, |s| s.count);
            Some(((*n, usize::from(*piece)), (strips, went.as_ref())))
        }
        _ => None,
    })
}

/// The binding strips that came out of a piece that is cut up, and the places of its squares.
pub(super) fn came_out(journal: &Journal, at: (u16, usize)) -> (Count, &[Rect]) {
    match cut_pieces(journal).rev().find(|(piece, _)| *piece == at) {
        Some((_, (strips, Some(Went::Squares { places, .. })))) => (strips, places),
        Some((_, (strips, _))) => (strips, &[]),
        None => (Count::NONE, &[]),
    }
}

/// The binding strips that came out of each piece that is cut up, by heap and piece.
pub(super) fn strips_out(journal: &Journal) -> BTreeMap<(u16, usize), Count> {
    cut_pieces(journal)
        .map(|(piece, (strips, _))| (piece, strips))
        .collect()
}

/// Where everything that is cut begins, worked out once for each ruler it is read off.
struct Beginnings<'a> {
    piece: &'a Piece,
    cuts: &'a CutPlan,
    known: RefCell<Vec<(Ruler, Vec<Beginning>)>>,
}

impl<'a> Beginnings<'a> {
    fn of(piece: &'a Piece, cuts: &'a CutPlan) -> Beginnings<'a> {
        let known = RefCell::default();
        Beginnings { piece, cuts, known }
    }

    fn at(&self, nth: usize, ruler: Ruler) -> Beginning {
        let mut known = self.known.borrow_mut();
        if let Some((_, all)) = known.iter().find(|(own, _)| *own == ruler) {
            return all[nth];
        }
        let all = cutting::beginnings(self.piece, self.cuts, ruler);
        let one = all[nth];
        known.push((ruler, all));
        one
    }

    /// What the left edge of something cut is measured from, and how far it is from there; nothing
    /// where it begins there. `nth` counts what is cut as [`cutting::beginnings`] does.
    fn told(&self, nth: usize, context: Context<'_>) -> (FromEdge, Option<Shown>) {
        let own = self.at(nth, context.ruler);
        let by = |ruler| context.words.single(self.at(nth, ruler).by, ruler);
        let left = (own.by > zero()).then(|| context.in_each(by));
        (own.from, left)
    }
}

/// Whether heights are measured above a hem; else above the lower edge.
fn hem(piece: &Piece) -> &'static str {
    // A pocket has its hem above.
    let [low, ..] = piece.reach();
    let below = |z: &Zone| z.kind == ZoneKind::Hem && z.from <= low;
    match piece.zones.iter().any(below) {
        true => "hem",
        false => "edge",
    }
}

/// The lines, in the order they are cut.
pub(super) fn rows(
    throw: &Throw,
    (n, index): (u16, u8),
    laid: &Laid,
    context: Context<'_>,
) -> Vec<CutRow> {
    let (piece, cuts) = (&laid.lying, &laid.cuts);
    let open = throw
        .pile
        .get(&n)
        .is_some_and(|heap| heap.counted.get(usize::from(index)) == Some(&None));
    // What the next height is measured above, and how many strips and runs were listed so far.
    let mut low = if cuts.turned { "edge" } else { hem(piece) };
    let mut place = 0;
    let runs = cuts.strips.iter().map(|s| s.runs().len()).sum::<usize>();
    let mut loose = cuts.binding.len() + runs;
    let own_halves = |halves: &[usize]| {
        let mut pairs: Vec<usize> = halves.iter().map(|n| cuts.pair_of(*n)).collect();
        pairs.sort_unstable();
        pairs.dedup();
        let own = pairs.into_iter();
        let own = own.filter_map(|pair| laid.chalk(cuts.whole() as usize + pair));
        own.collect::<Vec<String>>()
    };
    let begin = Beginnings::of(piece, cuts);
    let steps = steps(piece, cuts).into_iter().enumerate();
    steps
        .map(|(i, step)| {
            let (title, text, chalk, [squares, halves]) = match step {
                CutStep::Turn => {
                    // Turned, the hem lies to the left.
                    let [_, _, left, _] = piece.reach();
                    let hem = |z: &Zone| z.kind == ZoneKind::Hem && z.left <= left;
                    let end = if piece.zones.iter().any(hem) {
                        "hem"
                    } else {
                        "edge"
                    };
                    let text = [
                        say!(context, "cut-turn", end = end),
                        label_turned(throw, context),
                    ];
                    let text = context.words.list("sentences", text);
                    (say!(context, "cut-turn-title"), text, None, [0; 2])
                }
                CutStep::Top { below } => {
                    low = "cut";
                    let text = say!(context, "cut-top", below = context.length(below));
                    (say!(context, "cut-top-title"), text, None, [0; 2])
                }
                CutStep::Straight { above } => {
                    let above = context.length(above);
                    let text = say!(context, "cut-straight", above = above, low = low);
                    low = "straight";
                    (say!(context, "cut-straight-title"), text, None, [0; 2])
                }
                CutStep::Binding { patch, above } => {
                    let left = begin.told(place, context);
                    place += 1;
                    let text = binding(&patch, (above, low), left, context);
                    (say!(context, "cut-binding-title"), text, None, [0; 2])
                }
                CutStep::Strip {
                    nth,
                    gap,
                    from_top,
                    at_top,
                    high,
                    runs,
                    squares,
                    before,
                    halves,
                } => {
                    let mut text = Vec::new();
                    if gap > zero() {
                        text.push(say!(context, "cut-away", gap = context.length(gap)));
                        low = "cut";
                    }
                    let height = context.length(high);
                    text.push(match (from_top, at_top && gap == zero()) {
                        (false, _) => say!(context, "cut-across", high = height, from = low),
                        (true, true) => say!(context, "cut-down-edge", high = height),
                        (true, false) => say!(context, "cut-down", high = height),
                    });
                    low = "cut";
                    let side = in_nm(high).max(1);
                    for (k, run) in runs.iter().enumerate() {
                        let (from, left) = begin.told(place, context);
                        place += 1;
                        let key = match from {
                            FromEdge::Cloth => "cut-run",
                            FromEdge::Strip => "cut-run-strip",
                        };
                        let count = in_nm(run.right - run.left) / side;
                        let nth = if k == 0 { "first" } else { "next" };
                        text.push(match left {
                            None => say!(context, format!("{key}-edge"), nth = nth, count = count),
                            Some(left) => {
                                say!(context, key, nth = nth, left = left, count = count)
                            }
                        });
                    }
                    let beside = halves.iter().filter(|n| cuts.is_beside(&cuts.halves[**n]));
                    if beside.count() > 0 {
                        text.push(say!(
                            context,
                            "cut-half-beside",
                            wide = half_wide(cuts, context)
                        ));
                    }
                    let apart = cuts.loose_halves().into_iter();
                    for run in apart.filter(|run| run.strip == Some(nth)) {
                        text.push(half_run(&begin, (loose, &run), context));
                        loose += 1;
                    }
                    let own = (before..before + squares).filter_map(|k| laid.chalk(k as usize));
                    let own: Vec<String> = own.collect();
                    let spare = squares - own.len() as u32;
                    let twos = own_halves(&halves);
                    let chalk = (!laid.places.is_empty()).then(|| match own.is_empty() {
                        true => say!(context, "cut-chalk-spare", spare = spare),
                        false => say!(
                            context,
                            "cut-chalk",
                            places = context.words.list("list-short", own),
                            spare = spare
                        ),
                    });
                    let chalk = match twos.is_empty() {
                        true => chalk,
                        false => Some(context.words.list(
                            "sentences",
                            chalk.into_iter().chain([chalk_halves(twos, context)]),
                        )),
                    };
                    let n_halves = halves.len() as u32;
                    let title = say!(
                        context,
                        "cut-strip-title",
                        n = nth + 1,
                        squares = squares,
                        halves = n_halves
                    );
                    let text = context.words.list("sentences", text);
                    (title, text, chalk, [squares, n_halves])
                }
                CutStep::Halves {
                    lies,
                    above,
                    high,
                    halves,
                } => {
                    let (where_, nth) = match lies {
                        HalvesLie::Below(nth) => ("below", nth + 1),
                        HalvesLie::Above(nth) => ("above", nth + 1),
                        HalvesLie::Alone => ("alone", 0),
                    };
                    let mut text = Vec::new();
                    if above > zero() {
                        text.push(say!(context, "cut-away", gap = context.length(above)));
                    }
                    text.push(say!(
                        context,
                        "cut-halves-across",
                        high = context.length(high),
                        lies = where_,
                        n = nth
                    ));
                    let row = halves.first().map(|n| cuts.halves[*n].patch.from);
                    let apart = cuts.loose_halves().into_iter();
                    for run in apart.filter(|r| r.strip.is_none() && Some(r.patch.from) == row) {
                        text.push(half_run(&begin, (loose, &run), context));
                        loose += 1;
                    }
                    let n = halves.len() as u32;
                    let twos = own_halves(&halves);
                    let chalk = (!twos.is_empty()).then(|| chalk_halves(twos, context));
                    let title = say!(context, "cut-halves-title", n = n);
                    (title, context.words.list("sentences", text), chalk, [0, n])
                }
            };
            let done = i < laid.done;
            let lines = Count::at_most(if done { i } else { i + 1 } as u32);
            CutRow {
                tick: open.then(|| Button {
                    label: say!(context, "cut-line-done", title = title.as_str()),
                    action: Command::CutLines { n, index, lines },
                }),
                title,
                text,
                chalk,
                squares,
                halves,
                done,
                now: open && i == laid.done,
            }
        })
        .collect()
}

/// How wide a half is.
fn half_wide(cuts: &CutPlan, context: Context<'_>) -> Shown {
    let size = cuts.halves.first().map_or([zero(); 2], Half::size);
    context.length(std::cmp::min(size[0], size[1]))
}

/// A run of halves in words.
fn half_run(begin: &Beginnings<'_>, (nth, run): (usize, &HalfRun), context: Context<'_>) -> String {
    let (from, left) = begin.told(nth, context);
    let size = run.patch.right - run.patch.left;
    let each = crate::measure::nm(in_nm(size) / i64::from(run.count.max(1)));
    let wide = context.length(each);
    let key = match from {
        FromEdge::Cloth => "cut-half-run",
        FromEdge::Strip => "cut-half-run-strip",
    };
    match left {
        None => say!(
            context,
            format!("{key}-edge"),
            count = run.count,
            wide = wide
        ),
        Some(left) => say!(context, key, left = left, count = run.count, wide = wide),
    }
}

/// What is chalked on halves.
fn chalk_halves(places: Vec<String>, context: Context<'_>) -> String {
    let places = context.words.list("list-short", places);
    say!(context, "cut-chalk-halves", places = places)
}

/// How the squares of a turned piece are marked, so that each can be laid as its grain is to run.
pub(super) fn label_turned(throw: &Throw, context: Context<'_>) -> String {
    match throw.wishes.map_or(Grain::Free, |w| w.grain) {
        Grain::Free => say!(context, "cut-turn-label-free"),
        Grain::OneWay => say!(context, "cut-turn-label-one-way"),
        Grain::ByTurns => say!(context, "cut-turn-label-by-turns"),
    }
}

/// A strip for the binding in words: how far above what it begins, and how far from the left.
fn binding(
    patch: &Patch,
    (above, low): (Length, &str),
    (from, left): (FromEdge, Option<Shown>),
    context: Context<'_>,
) -> String {
    let (high, wide) = (patch.to - patch.from, patch.right - patch.left);
    let (length, width) = (std::cmp::max(high, wide), std::cmp::min(high, wide));
    let size = say!(
        context,
        "cut-binding-line",
        size = context.by(width, length),
        way = if high > wide { "along" } else { "across" }
    );
    let height = match above > zero() {
        true => say!(
            context,
            "cut-binding-above",
            above = context.length(above),
            low = low
        ),
        false => say!(context, "cut-binding-at", low = low),
    };
    let side = match (from, left) {
        (FromEdge::Cloth, None) => say!(context, "cut-binding-edge"),
        (FromEdge::Cloth, Some(left)) => say!(context, "cut-binding-left", left = left),
        (FromEdge::Strip, None) => say!(context, "cut-binding-strip-edge"),
        (FromEdge::Strip, Some(left)) => say!(context, "cut-binding-strip", left = left),
    };
    let begin = say!(
        context,
        "cut-binding-begin",
        height = height.as_str(),
        side = side.as_str()
    );
    context.words.list("sentences", [size, begin])
}

/// What is left over that is worth keeping, the largest piece of it.
pub(super) fn left_over(cuts: &CutPlan, context: Context<'_>) -> Option<String> {
    let size = |p: &Patch| [p.right - p.left, p.to - p.from];
    let largest = cuts.offcuts.iter().max_by_key(|p| {
        let [w, h] = size(p).map(|l| i128::from(in_nm(l)));
        w * h
    })?;
    let [w, h] = size(largest).map(|l| context.ruler.at_most(l));
    Some(say!(context, "cut-left", size = context.by(w, h)))
}
