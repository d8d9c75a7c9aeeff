//! One account of the denim: squares, spares to keep back and binding, against the pile.
//!
//! What the pile, the cutting page, the binding's steps, the tables and the printed sheet say
//! of denim is read off this account, so that they cannot contradict each other.
//!
//! # Binding strips
//!
//! The plan wants so many strips of one length ([`Plan::binding_for`](crate::plan::Plan::binding_for)). Those that were cut are counted; the rest is
//! shared out over the pieces that are not cut up yet:
//!
//! 1. A piece that is being cut keeps the strips it was begun with, but those the plan wants no
//!    more and that can be left out without changing a line that is done.
//! 2. Each piece in the order of the pile gives the strips that fit beside its squares.
//! 3. Where that is not enough, strips are laid through squares, each where it costs fewest
//!    (among equals the earlier piece), as long as the throw does not need those squares: the
//!    whole pile then still gives all squares and the spares to keep back, and the heap's own
//!    denim, where it names one, still gives its own.
//! 4. What is still lacking wants cloth of its own.
//!
//! In step 3 only the first twelve pieces are examined, to bound the work.
//!
//! # Spares to keep back
//!
//! One square in twenty, and at least two, until the throw is joined: squares are scorched,
//! miscut and lost (our judgement; common practice, no source).
//!
//! # Promises (kept by tests)
//!
//! * Strips cut + strips planned + strips lacking = strips wanted. Those that lie in done lines
//!   of a piece and are not wanted any more are told apart ([`StripAccount::over`]).
//! * The squares of a piece are those of its layout with the strips it is to give.
//! * Strips laid through squares never make the squares fall short that did not before.

use crate::cloth::cutting::{CutPlan, Cutting, lay_out};
pub use crate::cloth::estimate::spares_to_keep;
use crate::cloth::garments::{Piece, Source};
use crate::cloth::pile::{Heap, Use};
use crate::cloth::steps::{CutStep, steps};
use crate::cloth::strips::{StripLayout, strip_of, with_strips};
use crate::cloth::ways;
use crate::measure::Count;
use crate::plan::assembly::Rect;
use crate::throw::state::Throw;
use crate::throw::stock;
use crate::throw::tasks::Task;
use std::borrow::Cow;
use std::collections::{BTreeMap, VecDeque};

/// Most strips one piece is asked for.
pub const MOST_STRIPS: u32 = 24;
/// Most pieces in which strips are laid through squares.
const MOST_LOOKED_AT: usize = 12;

/// What one piece of a heap gives, or gave.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PieceAccount {
    /// Squares: counted where it is cut up, expected otherwise.
    pub squares: Count,
    /// Of these, squares pieced of two halves.
    pub pieced: Count,
    /// Binding strips it is to give; none once it is cut up.
    pub strips: Count,
    /// It is cut up.
    pub cut: bool,
}

/// The binding strips.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StripAccount {
    /// Strips the plan wants.
    pub wanted: u32,
    /// Cut already.
    pub cut: u32,
    /// To be cut from the pile; never more than are open.
    pub planned: u32,
    /// In done lines of pieces that are being cut, beyond those the plan wants.
    pub over: u32,
}

impl StripAccount {
    /// Strips still to be cut.
    pub fn open(&self) -> u32 {
        self.wanted.saturating_sub(self.cut)
    }

    /// Strips that want cloth of their own.
    pub fn lacking(&self) -> u32 {
        self.open().saturating_sub(self.planned)
    }
}

/// The squares of one denim.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DenimAccount {
    /// Places of the throw that show it, cut or not.
    pub wanted: u32,
    /// Places whose squares are still to be cut from it.
    pub open: u32,
    /// Squares still to come from the heaps that name it.
    pub to_come: u32,
    /// Of these, squares pieced of two halves.
    pub pieced: u32,
    /// Binding strips to be cut from the heaps that name it.
    pub strips: u32,
    /// Spares that stand in for what its heaps lack: its own first, each for one place.
    pub spares: u32,
}

/// The squares of one fabric.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FabricAccount {
    /// Squares placed, both faces together.
    pub placed: u32,
    /// Squares that went with what was spoilt or set aside.
    pub gone: u32,
    /// Squares counted, those glued and gone among them; none where nobody counted.
    pub counted: Option<u32>,
    /// Squares still to come from the heaps for it.
    pub to_come: u32,
}

impl FabricAccount {
    /// Squares there are for the throw, glued or not, and those to come; none where nothing is
    /// known of them.
    pub fn there(&self) -> Option<u32> {
        let known = self.counted.is_some() || self.to_come > 0;
        let counted = self.counted.unwrap_or_default().saturating_sub(self.gone);
        known.then_some(counted + self.to_come)
    }

    /// Squares lacking; none where nothing is known of them.
    pub fn short(&self) -> Option<u32> {
        self.there().map(|there| self.placed.saturating_sub(there))
    }
}

/// All of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ClothAccount {
    /// Squares the throw takes.
    pub wanted: u32,
    /// Places whose squares are cut.
    pub cut: u32,
    /// Cut squares that have no place.
    pub spares: u32,
    /// Spares to keep back.
    pub keep: u32,
    /// Squares still to come from pieces that are not cut up.
    pub to_come: u32,
    /// Of these, squares pieced of two halves.
    pub pieced: u32,
    /// Of those to come, those of heaps that name no denim.
    pub unnamed: u32,
    /// Each denim of the throw, in order.
    pub denims: Vec<DenimAccount>,
    /// Each fabric of the throw, in order.
    pub fabrics: Vec<FabricAccount>,
    /// The binding.
    pub strips: StripAccount,
    /// Each piece by heap and place, counted from 0; heaps of fabric too.
    pub pieces: BTreeMap<(u16, u8), PieceAccount>,
    /// The places the squares of each piece are for that is not cut up; what is over of them is
    /// spare.
    pub places: BTreeMap<(u16, u8), Vec<Rect>>,
}

impl ClothAccount {
    /// Squares over once every place has one; less than nothing where some are lacking.
    pub fn over(&self) -> i64 {
        i64::from(self.cut) + i64::from(self.spares) + i64::from(self.to_come)
            - i64::from(self.wanted)
    }

    /// Squares there are, in places and spare, and those to come.
    pub fn there(&self) -> u32 {
        self.cut + self.spares + self.to_come
    }

    /// Squares lacking.
    pub fn short(&self) -> u32 {
        self.wanted.saturating_sub(self.there())
    }

    /// Squares of one denim that neither its own heaps nor the spares make up.
    pub fn short_of(&self, denim: &DenimAccount) -> u32 {
        denim.open.saturating_sub(denim.to_come + denim.spares)
    }

    /// Whether some denim falls short that neither spares nor heaps of unnamed denim can fill.
    pub fn is_uneven(&self) -> bool {
        self.unnamed == 0 && self.denims.iter().any(|d| self.short_of(d) > 0)
    }

    /// One piece.
    pub fn piece(&self, n: u16, index: usize) -> PieceAccount {
        let index = u8::try_from(index).unwrap_or(u8::MAX);
        self.pieces
            .get(&(n, index))
            .copied()
            .unwrap_or(PieceAccount {
                squares: Count::NONE,
                pieced: Count::NONE,
                strips: Count::NONE,
                cut: false,
            })
    }

    /// Places whose squares will be pieced of two halves, of pieces that are not cut up.
    pub fn pieced_places(&self) -> u32 {
        let each = self.places.iter().map(|(at, places)| {
            let piece = self.piece(at.0, usize::from(at.1));
            let whole = piece.squares - piece.pieced;
            (places.len() as u32).saturating_sub(whole.get())
        });
        each.sum()
    }
}

/// Deal the spares out to the denims whose heaps lack squares: first each its own, then, in order, what is
/// left to whatever still lacks some.
fn deal_spares(throw: &Throw, denims: &mut [DenimAccount]) {
    let mut left = throw.spares.get();
    for (d, denim) in (0..=u8::MAX).zip(denims.iter_mut()) {
        let lacking = denim.open.saturating_sub(denim.to_come);
        denim.spares = lacking.min(throw.spares_of(d)).min(left);
        left -= denim.spares;
    }
    for denim in denims {
        let lacking = denim.open.saturating_sub(denim.to_come + denim.spares);
        let more = lacking.min(left);
        denim.spares += more;
        left -= more;
    }
}

/// How the squares of a heap are cut for this throw.
pub fn how_for(throw: &Throw, heap: &Heap) -> Cutting {
    heap.how(&throw.plan)
}

/// A piece as it lies to be cut, and where.
#[derive(Debug, Clone, PartialEq)]
pub struct LaidPiece {
    /// Its outline as it lies: turned where it is cut so.
    pub lying: Piece,
    /// Squares and strips on it.
    pub cuts: CutPlan,
}

/// Where a piece of a heap is cut, by its number and its outline: its squares, and so many strips
/// for the binding. A piece that cannot be laid out gives nothing.
pub fn layout(
    throw: &Throw,
    heap: &Heap,
    (index, piece): (usize, &Piece),
    strips: Count,
) -> LaidPiece {
    let way = heap.way(index);
    let how = way.how(how_for(throw, heap));
    let lying = ways::lying(piece, way);
    let laid = match strips.get() {
        0 => lay_out(&lying, &how),
        most => with_strips(&lying, &how, strip_of(&throw.plan, most)),
    };
    let mut cuts = laid.unwrap_or_else(|_| CutPlan {
        strips: Vec::new(),
        from_top: 0,
        turned: false,
        lines: Vec::new(),
        count: 0,
        pieced: 0,
        halves: Vec::new(),
        binding: Vec::new(),
        offcuts: Vec::new(),
        spare: piece.area(),
    });
    cuts.turned = matches!(lying, Cow::Owned(_));
    LaidPiece {
        lying: lying.into_owned(),
        cuts,
    }
}

/// A piece that is not cut up, while strips are shared out.
struct OpenPiece {
    at: (u16, u8),
    /// It as it lies to be cut.
    piece: Piece,
    denim: Option<u8>,
    laid: StripLayout,
    strips: u32,
    /// The piece is being cut: how many of its lines are done.
    begun: Option<usize>,
}

/// The account of a throw's denim, and of what each piece on the pile gives.
pub fn account(throw: &Throw) -> ClothAccount {
    account_of(throw, throw.pile.iter().map(|(n, heap)| (*n, heap)))
}

/// The same with one heap as it would be.
pub fn account_with(throw: &Throw, n: u16, heap: &Heap) -> ClothAccount {
    account_of(
        throw,
        throw
            .pile
            .iter()
            .map(|(m, kept)| (*m, if *m == n { heap } else { kept })),
    )
}

fn account_of<'a>(throw: &Throw, pile: impl Iterator<Item = (u16, &'a Heap)>) -> ClothAccount {
    let plan = &throw.plan;
    let size = throw.finished();
    let strip = strip_of(plan, MOST_STRIPS);
    let whole = throw.assembly().whole();
    let wanted = plan.squares();
    let open = throw.uncut(None).count() as u32;
    let mut strips = StripAccount {
        wanted: plan.binding_for(size.width, size.height).strips,
        cut: 0,
        planned: 0,
        over: 0,
    };
    strips.cut = match throw.has(whole, Task::CutBinding) {
        true => strips.wanted,
        false => throw
            .strips_cut(strip.width, strip.length)
            .min(strips.wanted),
    };
    let mut pieces = BTreeMap::new();
    let mut opened: Vec<OpenPiece> = Vec::new();
    // Strips of pieces that are being cut.
    let mut promised = 0;
    for (n, heap) in pile {
        let how = how_for(throw, heap);
        for (index, counted) in heap.counted.iter().enumerate() {
            let at = (n, index as u8);
            let laid = match (&heap.from, heap.makes, counted) {
                (Source::Cloth(garment), Use::Denim { denim }, None) => {
                    garment.pieces.get(index).and_then(|piece| {
                        let way = heap.way(index);
                        let lying = ways::lying(piece, way);
                        let laid = StripLayout::new(&lying, &way.how(how), strip).ok()?;
                        Some((denim, lying.into_owned(), laid))
                    })
                }
                _ => None,
            };
            match laid {
                Some((denim, piece, laid)) => {
                    let begun = throw.begun_pieces.get(&at);
                    let mut piece = OpenPiece {
                        at,
                        piece,
                        denim,
                        laid,
                        strips: 0,
                        begun: begun.map(|b| b.lines.get() as usize),
                    };
                    let mut fewer = Vec::new();
                    for _ in 0..begun.map_or(0, |b| b.strips.get()).min(MOST_STRIPS) {
                        let before = piece.laid.clone();
                        if piece.take(true) {
                            fewer.push(before);
                        }
                    }
                    // What was begun first is needed first.
                    let mut excess = (promised + piece.strips).saturating_sub(strips.open());
                    while excess > 0 && fewer.pop().is_some_and(|before| piece.give_up(before)) {
                        excess -= 1;
                    }
                    promised += piece.strips;
                    opened.push(piece);
                }
                None => {
                    let squares = counted.unwrap_or_else(|| heap.expected(index, &throw.plan));
                    pieces.insert(
                        at,
                        PieceAccount {
                            squares,
                            pieced: heap.counted_pieced(index),
                            strips: Count::NONE,
                            cut: counted.is_some(),
                        },
                    );
                }
            }
        }
    }
    let mut lacking = strips.open();
    for piece in &opened {
        lacking = lacking.saturating_sub(piece.strips);
    }
    for piece in opened.iter_mut().filter(|p| p.begun.is_none()) {
        while lacking > 0 && piece.take(false) {
            lacking -= 1;
        }
    }
    // A pack of denim squares gives its own, and no strips.
    let packs: BTreeMap<Option<u8>, u32> = packs(throw, &pieces);
    let mut account = ClothAccount {
        wanted,
        cut: wanted - open,
        spares: throw.spares.get(),
        keep: spares_to_keep(wanted),
        to_come: 0,
        pieced: 0,
        unnamed: 0,
        denims: Vec::new(),
        fabrics: fabrics(throw, &pieces),
        strips,
        pieces,
        places: BTreeMap::new(),
    };
    let wanted_of = |denim: usize| {
        let covers = throw.covers();
        covers
            .iter()
            .filter(|c| usize::from(c.denim) == denim)
            .count() as u32
    };
    let wanted: Vec<u32> = (0..throw.denims.len()).map(wanted_of).collect();
    let uncut = throw.uncut_by_denim();
    let count_open = |opened: &[OpenPiece], account: &mut ClothAccount| {
        let of = |denim: Option<u8>| {
            let own = opened.iter().filter(|p| p.denim == denim);
            own.map(|p| p.laid.plan().count).sum::<u32>() + packs.get(&denim).copied().unwrap_or(0)
        };
        let each = uncut.iter().enumerate();
        account.denims = each
            .map(|(d, open)| DenimAccount {
                wanted: wanted.get(d).copied().unwrap_or_default(),
                open: *open,
                to_come: of(Some(d as u8)),
                pieced: (opened.iter().filter(|p| p.denim == Some(d as u8)))
                    .map(|p| p.laid.plan().pieced)
                    .sum(),
                strips: opened
                    .iter()
                    .filter(|p| p.denim == Some(d as u8))
                    .map(|p| p.strips)
                    .sum(),
                spares: 0,
            })
            .collect();
        deal_spares(throw, &mut account.denims);
        account.unnamed = of(None);
        account.pieced = opened.iter().map(|p| p.laid.plan().pieced).sum();
        account.to_come = account.unnamed + account.denims.iter().map(|d| d.to_come).sum::<u32>();
    };
    count_open(&opened, &mut account);
    let looked_at = opened.iter().enumerate().filter(|(_, p)| p.begun.is_none());
    let looked_at: Vec<usize> = looked_at.map(|(i, _)| i).take(MOST_LOOKED_AT).collect();
    let mut next: BTreeMap<usize, Option<(u32, StripLayout)>> = BTreeMap::new();
    while lacking > 0 {
        let room = account.over() - i64::from(account.keep);
        // Where none is to spare, a strip may still lie in what an earlier one left of its squares.
        if room < 0 {
            break;
        }
        let within = |piece: &OpenPiece, cost: u32| {
            let own = piece.denim.and_then(|d| account.denims.get(usize::from(d)));
            let spared = |d: &DenimAccount| d.to_come >= d.open + cost;
            i64::from(cost) <= room && own.is_none_or(spared)
        };
        let cheapest = looked_at
            .iter()
            .filter_map(|i| {
                let piece = &opened[*i];
                if piece.strips >= MOST_STRIPS {
                    return None;
                }
                let found = next.entry(*i).or_insert_with(|| {
                    let more = piece.laid.further().ok().flatten()?;
                    let cost = piece.laid.plan().count.saturating_sub(more.plan().count);
                    Some((cost, more))
                });
                let (cost, _) = found.as_ref()?;
                within(piece, *cost).then_some((*cost, *i))
            })
            .min();
        let Some((_, i)) = cheapest else { break };
        let Some((_, more)) = next.remove(&i).flatten() else {
            break;
        };
        opened[i].laid = more;
        opened[i].strips += 1;
        lacking -= 1;
        count_open(&opened, &mut account);
    }
    let planned: u32 = opened.iter().map(|p| p.strips).sum();
    account.strips.planned = planned.min(strips.open());
    account.strips.over = planned - account.strips.planned;
    for piece in &opened {
        account.pieces.insert(
            piece.at,
            PieceAccount {
                squares: Count::at_most(piece.laid.plan().count),
                pieced: Count::at_most(piece.laid.plan().pieced),
                strips: Count::at_most(piece.strips),
                cut: false,
            },
        );
    }
    account.places = places(throw, &account.pieces);
    account
}

/// Which open places the squares of each piece are for. Pieces of heaps that name their denim
/// come first, each in the order of the pile; they take the open places of that denim row by
/// row. The others take what is left, whichever denim it was to be.
fn places(
    throw: &Throw,
    pieces: &BTreeMap<(u16, u8), PieceAccount>,
) -> BTreeMap<(u16, u8), Vec<Rect>> {
    let mut open: BTreeMap<u8, VecDeque<Rect>> = BTreeMap::new();
    for square in throw.uncut(None) {
        let denim = throw.cover(square).denim;
        open.entry(denim).or_default().push_back(square);
    }
    let makes = |n: u16| throw.pile.get(&n).map(|heap| heap.makes);
    let mut out = BTreeMap::new();
    let uncut = || pieces.iter().filter(|(_, p)| !p.cut);
    for (at, piece) in uncut() {
        if let Some(Use::Denim { denim: Some(d) }) = makes(at.0) {
            let own = open.entry(d).or_default();
            let n = own.len().min(piece.squares.get() as usize);
            out.insert(*at, own.drain(..n).collect());
        }
    }
    let mut rest: Vec<Rect> = open.into_values().flatten().collect();
    rest.sort();
    let mut rest = VecDeque::from(rest);
    for (at, piece) in uncut() {
        if makes(at.0) == Some(Use::ANY_DENIM) {
            let n = rest.len().min(piece.squares.get() as usize);
            out.insert(*at, rest.drain(..n).collect());
        }
    }
    out
}

impl OpenPiece {
    /// Give the last strip up again, as it was laid before, unless a line that is done would have
    /// been another; whether it was given up.
    fn give_up(&mut self, before: StripLayout) -> bool {
        let done = self.begun.unwrap_or(0);
        let lines = |laid: &StripLayout| -> Vec<CutStep> {
            let all = steps(&self.piece, laid.plan());
            all.into_iter().take(done).collect()
        };
        let stands = lines(&before) == lines(&self.laid);
        if stands {
            self.laid = before;
            self.strips -= 1;
        }
        stands
    }

    /// One strip more, if one fits: beside the squares, or through them too.
    fn take(&mut self, through: bool) -> bool {
        if self.strips >= MOST_STRIPS {
            return false;
        }
        let more = match through {
            true => self.laid.further(),
            false => self.laid.free(),
        };
        let Ok(Some(more)) = more else { return false };
        self.laid = more;
        self.strips += 1;
        true
    }
}

/// Squares of denim packs that are not counted yet, by the denim they name.
fn packs(throw: &Throw, pieces: &BTreeMap<(u16, u8), PieceAccount>) -> BTreeMap<Option<u8>, u32> {
    let mut out = BTreeMap::new();
    for ((n, _), piece) in pieces.iter().filter(|(_, p)| !p.cut) {
        if let Some(Use::Denim { denim }) = throw.pile.get(n).map(|heap| heap.makes) {
            *out.entry(denim).or_insert(0) += piece.squares.get();
        }
    }
    out
}

/// Each fabric: what is placed, what was counted, and what the heaps for it still give.
fn fabrics(throw: &Throw, pieces: &BTreeMap<(u16, u8), PieceAccount>) -> Vec<FabricAccount> {
    let to_come = |print: u8| {
        let own = pieces.iter().filter(|((n, _), piece)| {
            let makes = throw.pile.get(n).map(|heap| heap.makes);
            !piece.cut && makes == Some(Use::Fabric { print })
        });
        own.map(|(_, piece)| piece.squares).sum::<Count>().get()
    };
    let each = throw.prints.iter().enumerate();
    each.map(|(n, print)| {
        // A foreign record may list more fabrics than squares can name.
        let n = u8::try_from(n).ok();
        FabricAccount {
            placed: n.map_or(0, |n| stock::used(throw, n)),
            gone: n.map_or(0, |n| stock::gone(throw, n).all()),
            counted: print.stock.map(Count::get),
            to_come: n.map_or(0, to_come),
        }
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: of 48 squares 20 are cut, 3 lie spare and 22 are to come: 45, so that 3 are lacking.
    /// With 30 to come there are 53, 5 over.
    #[test]
    fn what_is_lacking_is_what_is_wanted_less_all_there_is() {
        let account = |to_come, open, of_its_own, unnamed| ClothAccount {
            wanted: 48,
            cut: 20,
            spares: 3,
            keep: 3,
            to_come,
            pieced: 0,
            unnamed,
            denims: vec![DenimAccount {
                wanted: 30,
                open,
                to_come: of_its_own,
                pieced: 0,
                strips: 0,
                spares: 3,
            }],
            fabrics: vec![],
            strips: StripAccount {
                wanted: 5,
                cut: 2,
                planned: 1,
                over: 0,
            },
            pieces: BTreeMap::new(),
            places: BTreeMap::new(),
        };
        let told = |to_come| {
            let all = account(to_come, 10, 6, 0);
            (all.there(), all.short(), all.over())
        };
        assert_eq!(told(22), (45, 3, -3));
        assert_eq!(told(25), (48, 0, 0));
        assert_eq!(told(30), (53, 0, 5));
        // Ten places of one denim are open, 6 squares of it are to come and 3 lie spare: 1 is lacking,
        // unless a heap that names no denim gives it.
        let of = |to_come, unnamed| {
            let all = account(22, 10, to_come, unnamed);
            (all.short_of(&all.denims[0]), all.is_uneven())
        };
        assert_eq!(of(6, 0), (1, true));
        assert_eq!(of(6, 1), (1, false));
        assert_eq!(of(7, 0), (0, false));
    }

    /// A rectangle of cloth on the pile, in inches.
    fn cloth_of(width: i64, height: i64, makes: Use) -> Heap {
        use crate::cloth::garments::{Garment, yardage};
        use crate::cloth::weight::Cloth;
        use crate::measure::inches;
        let garment = Garment {
            name: "Cloth".into(),
            pieces: vec![yardage(inches(width), inches(height))],
            start: None,
        };
        Heap::new(Source::Cloth(garment), makes, Cloth::denim())
    }

    /// By hand: a piece of 30 × 10 in is twelve squares of 5 in and nothing over. Two by two squares, 9½ in
    /// each way, are bound with 2 · 19 + 4 = 42 in, two strips of 28 in. The first takes a row of six
    /// squares and leaves 4 in of it for the second: six squares are left, four for the throw and two to
    /// keep. A throw of five in a row takes three strips, and seven squares with those to keep: six would
    /// not do, so that no strip is laid through them.
    #[test]
    fn strips_are_laid_through_squares_that_are_over() {
        use crate::cloth::garments::Precut;
        use crate::cloth::weight::Cloth;
        use crate::fitting::tests::begun;
        use crate::measure::inches;
        use crate::plan::Plan;
        let cloth = |denim| cloth_of(30, 10, Use::Denim { denim });
        let told = |across, down| {
            let mut throw = begun(Plan {
                across,
                down,
                ..Plan::default()
            });
            throw.pile.insert(0, cloth(None));
            account(&throw)
        };
        let four = told(2, 2);
        assert_eq!((four.strips.wanted, four.strips.planned), (2, 2));
        assert_eq!(
            (four.strips.cut, four.strips.over, four.strips.lacking()),
            (0, 0, 0)
        );
        assert_eq!((four.to_come, four.keep, four.over()), (6, 2, 2));
        let piece = four.piece(0, 0);
        assert_eq!(
            (piece.squares, piece.strips),
            (Count::from(6), Count::from(2))
        );
        assert_eq!(four.places[&(0, 0)].len(), 4);
        let row = told(5, 1);
        assert_eq!((row.strips.wanted, row.strips.planned), (3, 0));
        assert_eq!((row.to_come, row.strips.lacking()), (12, 3));
        // Two by four squares of the first denim and 20 more of the second, ready cut: though there are many
        // over, the twelve of the first are all there is of it, so that a row less would not do. For two by
        // two squares it would.
        let named = |down| {
            let mut throw = begun(Plan {
                across: 2,
                down,
                ..Plan::default()
            });
            throw.denims = crate::demo::denims();
            let pack = Source::Precut(Precut {
                name: "Pack".into(),
                side: inches(5),
                count: Count::from(20),
            });
            let other = Use::Denim { denim: Some(1) };
            throw.pile.insert(0, cloth(Some(0)));
            throw.pile.insert(1, Heap::new(pack, other, Cloth::denim()));
            account(&throw)
        };
        let (eight, four) = (named(4), named(2));
        let first = |told: &ClothAccount| (told.denims[0].open, told.denims[0].to_come);
        assert_eq!((first(&eight), first(&four)), ((8, 12), (4, 6)));
        assert_eq!((eight.strips.planned, four.strips.planned), (0, 2));
        assert_eq!((eight.over(), four.denims[0].strips), (24, 2));
        assert_eq!((four.denims[1].to_come, four.unnamed), (20, 0));
        assert_eq!(four.denims[1].strips, 0);
        assert_eq!((eight.denims[0].wanted, eight.denims[1].wanted), (8, 0));
        // For two by three squares six would be left for six.
        let six = named(3);
        assert_eq!((first(&six), six.strips.planned), ((6, 6), 2));
    }

    /// By hand: a piece of 30 × 13 in is twelve squares of 5 in and 3 in over, room for three strips of 1 in.
    /// Two by two squares take two of them. One of 13 × 10 in gives four squares and, where it is said that
    /// what they leave is pieced, two halves of 2¾ in beside them, one square more of its denim.
    #[test]
    fn a_piece_gives_no_more_strips_than_are_wanted() {
        use crate::cloth::ways::CutWay;
        use crate::fitting::tests::begun;
        use crate::plan::Plan;
        let told = |width, height, pieced| {
            let mut throw = begun(Plan {
                across: 2,
                down: 2,
                ..Plan::default()
            });
            throw.denims = crate::demo::denims();
            let mut heap = cloth_of(width, height, Use::Denim { denim: Some(1) });
            let way = CutWay {
                pieced,
                ..CutWay::PLAIN
            };
            heap.ways.insert(0, way);
            throw.pile.insert(0, heap);
            account(&throw)
        };
        let plain = told(30, 13, false);
        assert_eq!((plain.strips.planned, plain.strips.over), (2, 0));
        let piece = plain.piece(0, 0);
        assert_eq!(
            (piece.squares, piece.strips),
            (Count::from(12), Count::from(2))
        );
        assert_eq!([0, 1].map(|d| plain.denims[d].strips), [0, 2]);
        // So does 3 in of cloth alone, though every square is lacking.
        let scrap = told(30, 3, false);
        assert_eq!(
            (scrap.strips.planned, scrap.to_come, scrap.short()),
            (2, 0, 4)
        );
        let pieced = told(13, 10, true);
        assert_eq!((pieced.to_come, pieced.pieced), (5, 1));
        assert_eq!([0, 1].map(|d| pieced.denims[d].to_come), [0, 5]);
        assert_eq!([0, 1].map(|d| pieced.denims[d].pieced), [0, 1]);
    }

    /// Two strips are wanted. A piece begun with three, none of which is cut, gives one of them up.
    #[test]
    fn strips_that_are_not_wanted_any_more_are_given_up() {
        use crate::fitting::tests::begun;
        use crate::plan::Plan;
        use crate::throw::BegunPiece;
        let told = |strips| {
            let mut throw = begun(Plan {
                across: 2,
                down: 2,
                ..Plan::default()
            });
            let heap = cloth_of(30, 15, Use::ANY_DENIM);
            throw.pile.insert(0, heap);
            let begun = BegunPiece {
                lines: Count::NONE,
                strips: Count::from(strips),
            };
            throw.begun_pieces.insert((0, 0), begun);
            let strips = account(&throw).strips;
            (strips.planned, strips.over, strips.lacking())
        };
        assert_eq!(
            [1, 2, 3, 4].map(told),
            [(1, 0, 1), (2, 0, 0), (2, 0, 0), (2, 0, 0)]
        );
    }

    /// By hand: 5 strips are wanted. With 2 cut 3 are open, and 2 lacking where the pile gives 1.
    #[test]
    fn strips_that_are_lacking() {
        let told = |cut, planned| {
            let strips = StripAccount {
                wanted: 5,
                cut,
                planned,
                over: 0,
            };
            (strips.open(), strips.lacking())
        };
        assert_eq!(told(2, 1), (3, 2));
        assert_eq!(told(2, 3), (3, 0));
        assert_eq!(told(5, 0), (0, 0));
        assert_eq!(told(6, 0), (0, 0));
    }

    /// By hand: 24 squares of a fabric are placed, of 20 counted 2 went with what was spoilt, and 3 are
    /// to come: there are 21, and 3 are lacking. Of what nobody counted nothing is known.
    #[test]
    fn fabric_that_is_lacking() {
        let told = |counted, to_come| {
            let fabric = FabricAccount {
                placed: 24,
                gone: 2,
                counted,
                to_come,
            };
            (fabric.there(), fabric.short())
        };
        assert_eq!(told(Some(20), 3), (Some(21), Some(3)));
        assert_eq!(told(Some(30), 0), (Some(28), Some(0)));
        assert_eq!(told(Some(1), 0), (Some(0), Some(24)));
        assert_eq!(told(None, 3), (Some(3), Some(21)));
        assert_eq!(told(None, 1), (Some(1), Some(23)));
        assert_eq!(told(None, 0), (None, None));
    }
}
