//! The state of one throw: what is wished for and what has been done to what.
//!
//! A [`Throw`] is only ever made by folding events ([`Throw::apply`]).

use crate::cloth::fabric::{Cover, Denim, Face, Print};
use crate::cloth::letters::letters_of;
use crate::cloth::photos::PhotoId;
use crate::cloth::pile::{Heap, Use};
use crate::measure::outline::Measures;
use crate::measure::{Count, Length, in_nm, zero};
use crate::plan::assembly::{Assembly, ByPiece, Join, Kind, Rect, Seam};
use crate::plan::scraps::Scrap;
use crate::plan::{Joining, Plan};
use crate::throw::event::{Event, Item, Time};
use crate::throw::facts::{BegunPiece, Made, Mishap, Size, StripsCut, Went};
use crate::throw::heritage::Heritage;
use crate::throw::index::{WorkIndex, first_left};
use crate::throw::tasks::{
    LastTasks, Task, cover_task, for_block, for_join, for_square, for_whole, presses_cover,
};
use crate::throw::wishes::Wishes;
use std::collections::{BTreeMap, BTreeSet};

/// Less than this, half a millimetre, is not cut off a block once more.
const LEAST_CUT_NM: i64 = 500_000;

/// What has been done to one piece.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Work {
    /// Tasks done, with when.
    pub done: Vec<(Task, Time)>,
    /// How the join was made, for a joined piece.
    pub made: Option<Made>,
    /// As measured before squaring up.
    pub measured: Option<Size>,
    /// As left by squaring up.
    pub squared: Option<Size>,
    /// Its sides and diagonals, where they were measured.
    pub outline: Option<Measures>,
    /// How much of the join was opened again, until it is stitched once more.
    pub opened: Option<Length>,
    /// Whether the rest of it stays as it was made.
    pub in_part: bool,
    /// Whether it was sewn in, or bound, when it was opened: then its edges are not cut again.
    pub sewn_in: bool,
    /// Whether the binding was opened at a part of the edge, until it is stitched once more.
    pub unbound: bool,
    /// How often a patch on it is stitched round, those rounds done included.
    pub patches: usize,
    /// What fabric laid on it when it was sewn in is trimmed to, on the front and on the back.
    pub laid_on: [Option<Length>; 2],
    /// How far its halves are lapped, for a square that is pieced of two.
    pub halves: Option<Length>,
}

impl Work {
    /// When `task` was last done to it.
    pub fn when(&self, task: Task) -> Option<Time> {
        self.done
            .iter()
            .rev()
            .find(|(t, _)| *t == task)
            .map(|(_, at)| *at)
    }

    /// The same, opened further by so much, where the rest stays as it was made.
    pub(super) fn opened_further(self, by: Length) -> Work {
        let done = self.done.into_iter();
        Work {
            made: self.made,
            done: done.filter(|(task, _)| task.finishes()).collect(),
            opened: Some(self.opened.map_or(by, |opened| opened + by)),
            in_part: true,
            unbound: self.unbound,
            ..Work::default()
        }
    }

    /// What it holds, if that is known: what it was squared up to, else what it measured.
    pub fn held(&self) -> Option<Size> {
        self.squared.or(self.measured)
    }
}

/// A spare square pieced of two halves.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PiecedSpare {
    /// Its denim, where it is known.
    pub denim: Option<u8>,
    /// How far its halves are lapped.
    pub lap: Length,
    /// What was done to the halves.
    pub done: Vec<(Task, Time)>,
}

/// A square that was lost to the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Loss {
    /// Where it was meant to go.
    pub piece: Rect,
    /// What happened.
    pub why: Mishap,
    /// The prints glued on it, front and back: they went with it.
    pub glued: [Option<u8>; 2],
    /// When.
    pub at: Time,
}

/// The whole piece as measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WholeMeasure {
    /// Its size.
    pub size: Size,
    /// After how many washes.
    pub washes: u8,
    /// When.
    pub at: Time,
}

/// A joined piece that is no part of the throw any more.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Aside {
    /// Where it was.
    pub piece: Rect,
    /// Its size.
    pub size: Size,
    /// When it was set aside.
    pub at: Time,
}

/// Seams to be opened before work goes on at what they hold.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeamsToUnpick {
    /// Each joined piece and how much of its join.
    pub joins: Vec<(Rect, Length)>,
    /// The spoilt square that is taken out, if it is for one.
    pub square: Option<Rect>,
    /// The block that is taken out, where it is one.
    pub block: Option<Rect>,
    /// None of them was stitched: glue alone holds them.
    pub glued: bool,
}

impl SeamsToUnpick {
    /// What the seams are opened round.
    pub fn centre(&self) -> Option<Rect> {
        let first = self.joins.first().map(|(piece, _)| *piece);
        self.square.or(self.block).or(first)
    }

    /// Whether it opens this join all along this piece.
    pub(super) fn is_along(&self, whole: Rect, piece: Rect) -> bool {
        let opens = self.joins.iter().any(|(opened, _)| *opened == whole);
        opens && self.centre().is_some_and(|centre| centre.holds(piece))
    }

    /// Whether it is of nothing but joins that hold this square.
    pub fn is_round(&self, square: Rect) -> bool {
        self.joins.iter().all(|(whole, _)| whole.holds(square))
    }
}

/// Something the maker wrote down.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Note {
    /// Her words.
    pub text: String,
    /// The piece it is about.
    pub piece: Option<Rect>,
    /// The step it is about.
    pub task: Option<Task>,
    /// Marked for the next throw.
    pub next: bool,
    /// When.
    pub at: Time,
}

/// A photo in the story.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Photo {
    /// Its name.
    pub id: PhotoId,
    /// What is said of it.
    pub words: String,
    /// The piece it shows.
    pub piece: Option<Rect>,
    /// The step it shows.
    pub task: Option<Task>,
    /// When it was put in.
    pub at: Time,
}

/// One throw as it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Throw {
    /// What the maker calls it.
    pub name: String,
    /// Put away.
    pub archived: bool,
    /// What is to be made.
    pub plan: Plan,
    /// Fabrics for covering.
    pub prints: Vec<Print>,
    /// The letters by which each of the prints is known, which it keeps with its name.
    pub(super) letters: Vec<String>,
    /// The denims.
    pub denims: Vec<Denim>,
    /// Squares at hand that have no place yet.
    pub spares: Count,
    /// Spare squares whose denim is known, by denim; never more than there are spares.
    pub(super) spare_denims: BTreeMap<u8, u32>,
    /// Spare squares pieced of two halves; never more than there are spares.
    pub(super) pieced_spares: Vec<PiecedSpare>,
    /// Pieces of heaps that are being cut, by heap and place.
    pub begun_pieces: BTreeMap<(u16, u8), BegunPiece>,
    /// Binding strips cut so far.
    pub(super) cut_strips: Vec<StripsCut>,
    /// Squares spoilt so far.
    pub losses: Vec<Loss>,
    /// What was written down.
    pub notes: Vec<Note>,
    /// Photos in the story.
    pub photos: Vec<Photo>,
    /// What an older throw left to this one.
    pub after: Option<Heritage>,
    /// Blocks in the order they were measured.
    pub measured: Vec<Rect>,
    /// The whole, each time it was measured.
    pub wholes: Vec<WholeMeasure>,
    /// Pieces set aside.
    pub aside: Vec<Aside>,
    /// Seams to be opened, until one of them is lapped or pinned again.
    pub seams_to_unpick: Vec<SeamsToUnpick>,
    /// Whether edges were to be joined another way, lapped or seamed, since some were held.
    pub(super) joined_otherwise: bool,
    /// Squares of each print that were glued on them.
    pub aside_glued: BTreeMap<u8, u32>,
    /// The clothes pile, by number.
    pub pile: BTreeMap<u16, Heap>,
    /// Scraps tried, oldest first.
    pub scraps: Vec<Scrap>,
    /// The opening of the machine's plate, where it was measured.
    pub plate_opening: Option<Length>,
    /// What is at hand.
    pub gathered: BTreeSet<Item>,
    /// Places whose squares are to stay there.
    pub(super) pinned: BTreeSet<Rect>,
    /// Squares whose denim was chosen by hand.
    pub(super) denim_by_hand: BTreeSet<Rect>,
    /// How the faces are to look, where it was said.
    pub wishes: Option<Wishes>,
    /// Fours turned by a quarter since they were sewn: their pairs run up and down.
    pub(super) turned: BTreeSet<Rect>,
    /// Laps marked for the join of two neighbours.
    pub(super) marked: BTreeMap<(Rect, Rect), Length>,
    pub(super) covers: Vec<Cover>,
    pub(super) work: ByPiece<Work>,
    pub(super) assembly: Assembly,
    pub(super) work_index: WorkIndex,
    /// The index is out of date: it is settled before anybody else sees the state.
    pub(super) index_stale: bool,
}

impl Throw {
    /// A throw as it stands after its first event.
    ///
    /// `None` when that event does not begin a throw.
    pub fn begin(event: &Event) -> Option<Throw> {
        let Event::Begun {
            name,
            plan,
            prints,
            denims,
            after,
        } = event
        else {
            return None;
        };
        let bare = || vec![Cover::default(); plan.squares() as usize];
        let wished = after.as_ref().map(|h| h.faces.clone());
        let mut throw = Throw {
            name: name.clone(),
            archived: false,
            plan: *plan,
            prints: prints.clone(),
            letters: letters_of(prints.iter().map(|print| &*print.name), &[]),
            denims: denims.clone(),
            spares: Count::NONE,
            spare_denims: BTreeMap::new(),
            pieced_spares: Vec::new(),
            begun_pieces: BTreeMap::new(),
            cut_strips: Vec::new(),
            losses: Vec::new(),
            notes: Vec::new(),
            photos: Vec::new(),
            after: after.as_deref().cloned(),
            measured: Vec::new(),
            wholes: Vec::new(),
            aside: Vec::new(),
            seams_to_unpick: Vec::new(),
            joined_otherwise: false,
            aside_glued: BTreeMap::new(),
            pile: BTreeMap::new(),
            scraps: Vec::new(),
            plate_opening: None,
            gathered: BTreeSet::new(),
            pinned: BTreeSet::new(),
            denim_by_hand: BTreeSet::new(),
            wishes: None,
            turned: BTreeSet::new(),
            marked: BTreeMap::new(),
            covers: wished
                .filter(|faces| faces.len() == plan.squares() as usize)
                .unwrap_or_else(bare),
            work: ByPiece::default(),
            assembly: Assembly::new(plan.across, plan.down, plan.order),
            work_index: WorkIndex::default(),
            index_stale: false,
        };
        throw.work_index = WorkIndex::of(&throw);
        Some(throw)
    }

    /// How the work stands.
    pub fn work_index(&self) -> &WorkIndex {
        &self.work_index
    }

    /// The letters by which each of the prints is known.
    pub fn letters(&self) -> &[String] {
        &self.letters
    }

    /// The prints glued on a square, front and back.
    pub(super) fn glued(&self, square: Rect) -> [Option<u8>; 2] {
        let cover = self.cover(square);
        let on = |task, print: Option<u8>| print.filter(|_| self.has(square, task));
        [
            on(Task::CoverFront, cover.front),
            on(Task::CoverBack, cover.back),
        ]
    }

    /// The places whose squares are still to be cut, in order: those of this denim, or all.
    pub fn uncut(&self, denim: Option<u8>) -> impl Iterator<Item = Rect> {
        let open = self.assembly.whole().squares();
        open.filter(move |s| !self.has(*s, Task::Cut))
            .filter(move |s| denim.is_none_or(|d| self.cover(*s).denim == d))
    }

    /// How many squares are still to be cut of each denim.
    pub fn uncut_by_denim(&self) -> Vec<u32> {
        let mut open = vec![0; self.denims.len()];
        for square in self.uncut(None) {
            if let Some(n) = open.get_mut(usize::from(self.cover(square).denim)) {
                *n += 1;
            }
        }
        open
    }

    /// Binding strips cut out of pieces so far that serve for strips of this size.
    pub fn strips_cut(&self, width: Length, length: Length) -> u32 {
        let fit = |s: &&StripsCut| s.width == width && s.length >= length;
        let cut = self.cut_strips.iter().filter(fit);
        cut.map(|s| s.count.get()).sum()
    }

    /// Whether the cloth a heap is said to be for is one of the throw's.
    pub fn has_cloth(&self, makes: Use) -> bool {
        match makes {
            Use::Denim { denim } => denim.is_none_or(|d| usize::from(d) < self.denims.len()),
            Use::Fabric { print } => usize::from(print) < self.prints.len(),
        }
    }

    /// Where squares cut for this use go: denim to the open places in order, to those of its
    /// own denim where one is named; what is over is spare; fabric to the stock of its print.
    /// Files that do not say it are folded by this rule, so that it stays as it is.
    pub(crate) fn would_go(&self, makes: Use, squares: Count) -> Went {
        match makes {
            Use::Denim { denim } => {
                let places: Vec<Rect> = self.uncut(denim).take(squares.get() as usize).collect();
                let spares = squares - Count::at_most(places.len() as u32);
                Went::Squares { places, spares }
            }
            Use::Fabric { print } => Went::Stock { print },
        }
    }

    /// What a task settles of how a piece's join is made, if it were done now: all of it where
    /// the edges are held for the first time, the stitch at the machine.
    /// Files that do not say it are folded by this rule, so that it stays as it is.
    pub(crate) fn would_be_made(&self, piece: Rect, task: Task) -> Option<Made> {
        match task {
            // What is opened along a part goes on as the rest of it is made.
            Task::Dot | Task::Pin if self.is_open_in_part(piece) => Some(self.made(piece)),
            Task::Dot | Task::Pin => Some(self.planned(piece)),
            // The stitch is the one at the machine now, not the one planned when glued.
            Task::Stitch => Some(Made {
                stitch: self.plan.stitch,
                ..self.made(piece)
            }),
            _ => None,
        }
    }

    /// The squares of these that would be pressed once more if they were so covered now; `None`
    /// where none was pressed yet.
    /// Files that do not say it are folded by this rule, so that it stays as it is.
    pub(crate) fn would_press_again(&self, faces: &[(Rect, Cover)]) -> Option<Vec<Rect>> {
        let pressed = |square: Rect| {
            let done = self.work.get(&square).map_or(&[][..], |w| &w.done);
            done.iter().any(|(task, _)| presses_cover(*task))
        };
        let pressed: Vec<&(Rect, Cover)> = faces.iter().filter(|(s, _)| pressed(*s)).collect();
        let more = |(square, cover): &(Rect, Cover)| cover.layers() > self.cover(*square).layers();
        let again = pressed
            .iter()
            .filter(|f| more(f))
            .map(|(square, _)| *square);
        (!pressed.is_empty()).then(|| again.collect())
    }

    pub(super) fn place(&self, piece: Rect) -> Option<usize> {
        let inside = piece.is_square() && self.assembly.whole().holds(piece);
        inside.then(|| {
            usize::from(piece.row) * usize::from(self.plan.across) + usize::from(piece.col)
        })
    }

    /// The tree of joins.
    pub fn assembly(&self) -> &Assembly {
        &self.assembly
    }

    /// The faces of every square, row by row.
    pub fn covers(&self) -> &[Cover] {
        &self.covers
    }

    /// How many squares wear fabric on a face.
    pub fn covered(&self, face: Face) -> u32 {
        let covered = self.covers.iter().filter(|c| c.on(face).is_some());
        covered.count() as u32
    }

    /// The faces of one square (plain denim for what is not a square of this throw).
    pub fn cover(&self, square: Rect) -> Cover {
        self.place(square)
            .map_or_else(Cover::default, |i| self.covers[i])
    }

    /// What has been done to a piece, if anything.
    pub fn work(&self, piece: Rect) -> Option<&Work> {
        self.work.get(&piece)
    }

    /// Every piece something has been done to.
    pub fn worked(&self) -> impl Iterator<Item = (&Rect, &Work)> {
        self.work.iter()
    }

    /// Whether `task` has been done to `piece`.
    pub fn has(&self, piece: Rect, task: Task) -> bool {
        self.work
            .get(&piece)
            .is_some_and(|w| w.when(task).is_some())
    }

    /// Whether a block squared up before is larger than the trim size is now, and not
    /// joined to others yet: then it is to be trimmed again.
    pub fn trims_again(&self, block: Rect) -> bool {
        let Some(squared) = self.work.get(&block).and_then(|w| w.squared) else {
            return false;
        };
        let target = self.target(block);
        let over = |held: Length, target: Length| in_nm(held - target) >= LEAST_CUT_NM;
        let larger = over(squared.width, target.width) || over(squared.height, target.height);
        let free = |join: &Join| !self.begun(join.whole);
        // A throw of one block is trimmed no more once its edge is.
        let edged = block == self.assembly.whole() && self.is_edged();
        larger && !edged && self.assembly.goes_into(block).is_none_or(free)
    }

    /// Whether the edge of the whole is trimmed, bound or was washed: it is not cut any more.
    pub(super) fn is_edged(&self) -> bool {
        let work = self.work.get(&self.assembly.whole());
        work.is_some_and(|work| {
            let edge = |task: Task| task.binds() || matches!(task, Task::TrimEdge | Task::Wash);
            work.unbound || work.done.iter().any(|(task, _)| edge(*task))
        })
    }

    /// Whether this was done to a piece and is not to be done again.
    pub fn is_through(&self, piece: Rect, task: Task) -> bool {
        self.has(piece, task) && !(task == Task::SquareUp && self.trims_again(piece))
    }

    /// How a piece's join was, or will be, made.
    pub fn made(&self, piece: Rect) -> Made {
        self.work
            .get(&piece)
            .and_then(|w| w.made)
            .unwrap_or_else(|| self.planned(piece))
    }

    /// Whether a join is lapped and glued, and nothing of it stitched: it can be lifted again.
    pub fn is_only_glued(&self, piece: Rect) -> bool {
        self.assembly.join(piece).is_some()
            && self.made(piece).joining == Joining::Lapped
            && self.begun(piece)
            && !self.is_open_in_part(piece)
            && !self.has(piece, Task::Stitch)
    }

    /// Whether glue alone holds all of these joins.
    pub fn are_only_glued(&self, joins: &[(Rect, Length)]) -> bool {
        joins.iter().all(|(piece, _)| self.is_only_glued(*piece))
    }

    /// How a piece's join would be made if it were begun now.
    pub fn planned(&self, piece: Rect) -> Made {
        let plan = &self.plan;
        let own = |start: u16, len: u16| start / 2 == (start + len - 1) / 2;
        let within = own(piece.row, piece.rows) && own(piece.col, piece.cols);
        let mut lap = if within { plan.lap } else { plan.lap_between() };
        if !self.marked.is_empty()
            && let Some(join) = self.assembly.join(piece)
        {
            // Where a join is marked alike all along, it is made so.
            let mut marks = self
                .spots(join)
                .into_iter()
                .map(|spot| self.marked.get(&spot));
            let first = marks.next().flatten();
            if let Some(marked) = first.filter(|_| marks.all(|mark| mark == first)) {
                lap = *marked;
            }
        }
        Made {
            joining: plan.joining,
            lap,
            stitch: plan.stitch,
        }
    }

    /// The block that begins at this row and column of squares: a four, or what is left of one at the edge.
    pub(crate) fn block_at(&self, row: u16, col: u16) -> Rect {
        Rect {
            row,
            col,
            rows: (self.plan.down - row).min(2),
            cols: (self.plan.across - col).min(2),
        }
    }

    /// The neighbours that meet along a join: its two parts within a block, and pairs of
    /// blocks between blocks.
    pub fn spots(&self, join: &Join) -> Vec<(Rect, Rect)> {
        let block = |row, col| self.block_at(row, col);
        let (whole, second) = (join.whole, join.second);
        if !second.row.is_multiple_of(2) || !second.col.is_multiple_of(2) {
            return vec![(join.first, join.second)];
        }
        match join.seam {
            Seam::Upright => (whole.row..whole.row + whole.rows)
                .step_by(2)
                .map(|row| (block(row, second.col - 2), block(row, second.col)))
                .collect(),
            Seam::Level => (whole.col..whole.col + whole.cols)
                .step_by(2)
                .map(|col| (block(second.row - 2, col), block(second.row, col)))
                .collect(),
        }
    }

    /// Places whose squares are to stay there.
    pub fn pinned(&self) -> impl Iterator<Item = &Rect> {
        self.pinned.iter()
    }

    /// Whether a square's denim was chosen by hand.
    pub fn is_denim_by_hand(&self, square: Rect) -> bool {
        self.denim_by_hand.contains(&square)
    }

    /// Whether a place is pinned.
    pub fn is_pinned(&self, square: Rect) -> bool {
        self.pinned.contains(&square)
    }

    /// Whether a four was turned by a quarter since it was sewn.
    pub fn is_turned(&self, block: Rect) -> bool {
        self.turned.contains(&block)
    }

    /// What is to be opened before this piece is worked on: it is the square that was
    /// taken out, or one of the joins itself. What holds a block that is taken out for it comes first.
    pub fn to_open(&self, piece: Rect) -> Vec<&SeamsToUnpick> {
        let of = |o: &&SeamsToUnpick| {
            o.square == Some(piece) || o.joins.iter().any(|(whole, _)| *whole == piece)
        };
        let Some(own) = self.seams_to_unpick.iter().find(of) else {
            return Vec::new();
        };
        let round =
            |o: &&SeamsToUnpick| *o != own && o.block.is_some_and(|block| block.holds(piece));
        let mut all: Vec<&SeamsToUnpick> = self.seams_to_unpick.iter().filter(round).collect();
        all.push(own);
        all
    }

    /// The lap marked for two neighbours, if it is not the plan's.
    pub fn marked(&self, a: Rect, b: Rect) -> Option<Length> {
        self.marked.get(&(a, b)).copied()
    }

    /// Every lap that was marked.
    pub fn marks(&self) -> impl Iterator<Item = (Rect, Rect, Length)> + '_ {
        self.marked.iter().map(|((a, b), lap)| (*a, *b, *lap))
    }

    /// The join that will hold, or holds, two blocks together: the smallest piece with both.
    pub fn joined_by(&self, a: Rect, b: Rect) -> Option<&Join> {
        let mut piece = a;
        while let Some(join) = self.assembly.goes_into(piece) {
            if join.whole.holds(b) {
                return Some(join);
            }
            piece = join.whole;
        }
        None
    }

    /// Whether work on a piece's join has begun.
    pub fn begun(&self, piece: Rect) -> bool {
        self.work.get(&piece).is_some_and(|w| !w.done.is_empty())
    }

    /// Whether a join was opened, but not from end to end.
    pub fn is_partly_sewn(&self, piece: Rect) -> bool {
        let opened = self.work.get(&piece).and_then(|w| w.opened);
        let join = self.assembly.join(piece);
        opened
            .zip(join)
            .is_some_and(|(opened, join)| !self.opens_all(join, opened))
    }

    /// Whether a join is opened along a part only, and the rest of it stays as it was made.
    pub fn is_open_in_part(&self, piece: Rect) -> bool {
        self.work.get(&piece).is_some_and(|w| w.in_part)
    }

    /// Whether a piece's own join is glued, pinned or sewn.
    pub fn is_made(&self, piece: Rect) -> bool {
        self.work.get(&piece).is_some_and(|w| w.made.is_some())
    }

    /// Whether fabric squares are cut for a square: some that are to be glued on it are cloth
    /// still, or they were cut. What was glued on without is not asked for any more.
    fn cuts_fabric(&self, square: Rect) -> bool {
        let cover = self.cover(square);
        let uncut = |face: Face| {
            let print = cover.on(face).and_then(|p| self.prints.get(usize::from(p)));
            print.is_some_and(|p| p.uncut) && !self.has(square, cover_task(face))
        };
        uncut(Face::Front) || uncut(Face::Back) || self.has(square, Task::CutFabric)
    }

    /// The squares whose fabric is still to be cut, of this print and no other, in order.
    pub(crate) fn fabric_to_cut(&self, print: u8) -> impl Iterator<Item = Rect> + '_ {
        let open = self.assembly.whole().squares();
        open.filter(move |s| {
            let cover = self.cover(*s);
            let of_it = [cover.front, cover.back].into_iter().flatten();
            cover.layers() > 1
                && of_it.into_iter().all(|p| p == print)
                && self.cuts_fabric(*s)
                && !self.has(*s, Task::CutFabric)
        })
    }

    /// Whether a square is pieced of two halves.
    pub fn is_pieced(&self, square: Rect) -> bool {
        self.lapped_halves(square).is_some()
    }

    /// How many squares of the throw are pieced of two halves.
    pub fn pieced_placed(&self) -> u32 {
        let squares = self.assembly.whole().squares();
        squares.filter(|square| self.is_pieced(*square)).count() as u32
    }

    /// How far the halves of a square are lapped; nothing where it is whole.
    pub fn lapped_halves(&self, square: Rect) -> Option<Length> {
        self.work.get(&square).and_then(|w| w.halves)
    }

    /// All tasks a piece goes through, in order.
    pub fn tasks(&self, piece: Rect) -> Vec<Task> {
        self.tasks_of_size(piece, self.size(piece))
    }

    /// The same, its size being known.
    pub(crate) fn tasks_of_size(&self, piece: Rect, size: Size) -> Vec<Task> {
        let mut out = Vec::with_capacity(6);
        if piece.is_square() {
            let pieced = self.is_pieced(piece);
            for_square(
                &self.cover(piece),
                pieced,
                self.cuts_fabric(piece),
                &mut out,
            );
            out.extend(std::iter::repeat_n(Task::StitchPatch, self.rounds(piece)));
        } else {
            for_join(self.made(piece).joining, &mut out);
            if self.assembly.is_block(piece) {
                for_block(&mut out);
                // Sewn in on another side, its edges are in laps already.
                if self.work.get(&piece).is_some_and(|work| work.sewn_in) {
                    out.retain(|task| *task != Task::SquareUp);
                }
                if self.trims_again(piece) {
                    // Once more than it was done.
                    let done = self.work.get(&piece).map_or(&[][..], |w| &w.done);
                    let times = done.iter().filter(|(t, _)| *t == Task::SquareUp).count();
                    out.extend(std::iter::repeat_n(Task::SquareUp, times.max(1)));
                }
            }
        }
        if piece == self.assembly.whole() {
            let strips = self.plan.binding_for(size.width, size.height).strips;
            let unless = |task, later: &[Task]| {
                self.has(piece, task) || !later.iter().any(|later| self.has(piece, *later))
            };
            // Nobody is sent back to an edge that is bound, or to seams that were washed.
            let bound = [Task::GlueBinding, Task::StitchBinding, Task::Wash];
            let last = LastTasks {
                strips,
                trimmed: unless(Task::TrimEdge, &bound),
                snipped: unless(Task::Snip, &[Task::Wash]),
            };
            for_whole(&self.plan, self.has_exposed(), last, &mut out);
        }
        out
    }

    /// Whether some of the seams are exposed, as they were sewn or, where they are not, as they are
    /// planned.
    fn has_exposed(&self) -> bool {
        let exposed = self.plan.joining == Joining::Exposed;
        if !self.joined_otherwise {
            return exposed;
        }
        let mut joins = self.assembly.joins().iter();
        joins.any(|join| self.made(join.whole).joining == Joining::Exposed)
    }

    /// The next task of a piece, taken by itself; `None` once it has been through all.
    pub fn next(&self, piece: Rect) -> Option<Task> {
        match self.assembly.number(piece) {
            Some(n) => self.work_index.next(n),
            None => {
                let done = self.work.get(&piece).map_or(&[][..], |w| &w.done);
                first_left(&self.tasks(piece), done)
            }
        }
    }

    /// Whether a piece has been through all its own tasks.
    pub fn complete(&self, piece: Rect) -> bool {
        self.next(piece).is_none()
    }

    /// How often patches are stitched round, the rounds that are done included.
    pub fn patch_rounds(&self) -> u32 {
        let squares = self.assembly.whole().squares();
        let rounds: usize = squares.map(|square| self.rounds(square)).sum();
        u32::try_from(rounds).unwrap_or(u32::MAX)
    }

    /// The patch on a face of a square, where its fabric is smaller than it: its side.
    pub fn patch_on(&self, square: Rect, face: Face) -> Option<Length> {
        self.patch_of(square, face, &self.cover(square))
    }

    /// The same, were the square covered like this.
    pub fn patch_of(&self, square: Rect, face: Face, cover: &Cover) -> Option<Length> {
        let print = self.prints.get(usize::from(cover.on(face)?))?;
        self.laid_on(square, face).or(print.patch)
    }

    /// What the fabric on a face is trimmed to, where it is laid on a square that is sewn in: its side.
    pub fn laid_on(&self, square: Rect, face: Face) -> Option<Length> {
        self.work.get(&square)?.laid_on[face.index()]
    }

    /// The side to which fabric is cut for a square that is sewn in, where some is laid onto it.
    pub fn laid_side(&self, square: Rect) -> Option<Length> {
        let on = |face| self.laid_on(square, face);
        Face::BOTH.into_iter().find_map(on)
    }

    /// The side of a print's fabric where it is laid on a square that is sewn in; none where such a
    /// square is too small.
    pub fn lies_on_sewn(&self, print: u8) -> Option<Length> {
        let own = self.prints.get(usize::from(print))?.patch;
        let most = self.plan.laid_on()?;
        Some(own.map_or(most, |own| std::cmp::min(own, most)))
    }

    /// How many faces of a square have fabric that was laid on when it was sewn in.
    fn laid_on_it(&self, square: Rect) -> usize {
        let on = |face: &Face| {
            self.laid_on(square, *face).is_some() && self.cover(square).on(*face).is_some()
        };
        Face::BOTH.iter().filter(|face| on(face)).count()
    }

    /// The patches on a square.
    fn patches(&self, square: Rect) -> impl Iterator<Item = Length> {
        Face::BOTH
            .into_iter()
            .filter_map(move |face| self.patch_on(square, face))
    }

    /// How often something on a square is stitched round: what covers damage of a square that is
    /// sewn in, those rounds that are done included, each patch that is smaller than it, and what was
    /// laid on when it was sewn in.
    fn rounds(&self, square: Rect) -> usize {
        let damage = self.work.get(&square).map_or(0, |w| w.patches);
        let laid_on = self.laid_on_it(square);
        damage.max(self.patches(square).count() - laid_on) + laid_on
    }

    /// How many patches smaller than a square there are.
    pub fn small_patches(&self) -> u32 {
        let squares = self.assembly.whole().squares();
        squares.map(|s| self.patches(s).count() as u32).sum()
    }

    /// Length of stitching round patches, those rounds that are done included.
    pub fn patch_seams(&self) -> Length {
        let round = |square: Rect| {
            let small = self.patches(square).map(|side| side * 4);
            let all = self.rounds(square) - self.patches(square).count();
            small.fold(self.plan.side * 4 * all as i64, |sum, more| sum + more)
        };
        let squares = self.assembly.whole().squares();
        squares.map(round).fold(zero(), |sum, more| sum + more)
    }

    /// The prints glued on a square, front and back.
    pub fn glued_on(&self, square: Rect) -> [Option<u8>; 2] {
        self.glued(square)
    }

    /// The first square whose patch is still to be stitched round: no wash comes before.
    pub(super) fn patch_left(&self) -> Option<Rect> {
        let left = self.work.iter().filter(|(square, work)| {
            let rounds = work.done.iter().filter(|(t, _)| *t == Task::StitchPatch);
            square.is_square() && self.rounds(**square) > rounds.count()
        });
        left.map(|(square, _)| *square).min()
    }

    /// The first join within the whole that was opened and is not mended.
    fn open_join(&self, whole: Rect) -> Option<Rect> {
        let mut inner = self.assembly.joins().iter().map(|j| j.whole);
        let open = |p: &Rect| *p != whole && !self.complete(*p) && !self.trims_again(*p);
        inner.find(open)
    }

    /// The first part of `piece` that is not through yet, which must come first. One that
    /// should be trimmed again can be joined as it is.
    pub fn waits_for(&self, piece: Rect) -> Option<Rect> {
        let join = self.assembly.join(piece)?;
        if self.next(piece) == Some(Task::Wash)
            && let Some(patched) = self.patch_left()
        {
            return Some(patched);
        }
        if self.next(piece).is_some_and(Task::takes_a_whole_throw)
            && let Some(open) = self.open_join(piece)
        {
            return Some(open);
        }
        [join.first, join.second]
            .into_iter()
            .find(|part| !self.complete(*part) && !self.trims_again(*part))
    }

    /// Whether a square's edges are already held to another's (glued, pinned or sewn).
    pub fn is_joined(&self, square: Rect) -> bool {
        let mut piece = square;
        while let Some(join) = self.assembly.goes_into(piece) {
            if self
                .work
                .get(&join.whole)
                .is_some_and(|w| !w.done.is_empty())
            {
                return true;
            }
            piece = join.whole;
        }
        false
    }

    /// Whether a square is cut and nothing is glued on it or joined to it yet, so that it may
    /// serve in another place.
    pub fn lies_loose(&self, square: Rect) -> bool {
        self.has(square, Task::Cut)
            && !self.is_joined(square)
            && Face::BOTH.iter().all(|f| !self.has(square, cover_task(*f)))
    }

    /// How much of a piece's join is to be sewn: what was opened of it, else all of it. That is
    /// as long as its longer part, since a block is trimmed only once it is sewn.
    pub fn to_sew(&self, piece: Rect) -> Length {
        if let Some(opened) = self.work.get(&piece).and_then(|w| w.opened) {
            return opened;
        }
        let Some(join) = self.assembly.join(piece) else {
            return self.size(piece).height;
        };
        let [a, b] = [join.first, join.second].map(|part| self.size(part).along(join.seam));
        std::cmp::max(a, b)
    }

    /// Whether so much of a join is all of it: what is opened beside a piece is shorter.
    /// Four fifths and more count as all of it (our judgement).
    pub fn opens_all(&self, join: &Join, opened: Length) -> bool {
        opened * 5 >= self.size(join.whole).along(join.seam) * 4
    }

    /// Whether a block is at the point where it is measured: stitched, not yet squared up.
    pub fn is_measurable(&self, block: Rect) -> bool {
        self.assembly.is_block(block)
            && self.has(block, Task::Stitch)
            && !self.has(block, Task::SquareUp)
    }

    /// What kind of piece this is.
    pub fn kind(&self, piece: Rect) -> Kind {
        self.assembly.kind(piece)
    }

    /// Tasks done and tasks in all.
    pub fn progress(&self) -> (usize, usize) {
        self.work_index.progress()
    }
}
