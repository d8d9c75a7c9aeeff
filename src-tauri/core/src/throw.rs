//! The state of one throw: what is wished for and what has been done to what.
//!
//! A [`Throw`] is only ever made by folding events ([`Throw::apply`]); it decides
//! nothing. Whether an action may be done is [`crate::deed`]'s to say, and so is what comes
//! of it: which places get the cut squares, by what lap a join is made. An event holds all of
//! that. Files written before it did lack those fields; for them the fold fills in what was
//! the rule then (`would_go`, `would_be_made`, `would_press_again` and beside them), and that
//! rule stays as it is, whatever [`crate::deed`] decides from now on.
//!
//! What else the fold does chooses nothing, and is what the event means: places of a piece
//! set aside are empty again, joined pieces that were opened are as if never sewn, a lap
//! marked for a block that moved is forgotten, pieces that a new grid does not know are
//! dropped, what was glued on a lost square is counted with it. Readiness, foreseen sizes and
//! the tasks of a piece are read off the state whenever they are asked for; no event holds them.
//!
//! Predicted sizes ([`Throw::size`]): a squared-up block is as large as it was left;
//! any other piece is its parts' sum less what their join takes up (its own lap once
//! it is glued, the plan's before), and across the seam as long as its longer part.
//! A block not yet squared up counts as the smaller of that and the trim size.

use crate::arrange::{Wishes, source};
use crate::assembly::{Assembly, Join, Kind, Rect, Seam};
use crate::faces::{Cover, Denim, Face, Print};
use crate::heritage::Heritage;
use crate::measure::Length;
use crate::outline::Measures;
use crate::photos::PhotoId;
use crate::pile::{Heap, Use};
use crate::plan::{Joining, Plan, Stitch, take};
use crate::scraps::Scrap;
use crate::standing::Standing;
use crate::tasks::{Task, for_block, for_join, for_square, for_whole};
use crate::thread::runs;
use serde::{Deserialize, Serialize};
use std::cmp::{max, min};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use ts_rs::TS;

/// Milliseconds since 1970, UTC; always handed in, never asked for.
pub type Time = i64;

/// Something that happened; the journal is made of these.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Event {
    /// The throw was begun.
    Begun {
        /// Its name.
        name: String,
        /// What is to be made.
        plan: Plan,
        /// Fabrics for covering.
        prints: Vec<Print>,
        /// The denims.
        denims: Vec<Denim>,
        /// What an older throw left to it, if it is made after one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        after: Option<Box<Heritage>>,
    },
    /// It was given another name.
    Renamed {
        /// The new name.
        name: String,
    },
    /// It was put away, or taken out again.
    Archived {
        /// Put away.
        archived: bool,
    },
    /// The plan became another. Pieces that both grids know keep their work.
    PlanChanged {
        /// The new plan.
        plan: Plan,
        /// Cut squares that fall outside the new grid and become spares.
        spares: u32,
    },
    /// Faces of squares changed.
    FacesChanged {
        /// Each square with its new faces.
        faces: Vec<(Rect, Cover)>,
        /// Squares among them that are to be pressed and cooled once more. Where it is not
        /// said, those that got more fabric than they had.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        again: Option<Vec<Rect>>,
    },
    /// The lists of fabrics changed.
    ClothChanged {
        /// Fabrics for covering.
        prints: Vec<Print>,
        /// The denims.
        denims: Vec<Denim>,
    },
    /// A task was done to pieces.
    Done {
        /// The task.
        task: Task,
        /// The pieces.
        pieces: Vec<Rect>,
        /// What the join of each piece is made with from now on, in their order; a single one
        /// is for all of them. Where it is not said, a join that is laid or pinned takes what
        /// the plan and the laps marked say, and one that is stitched the plan's stitch.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        made: Vec<Made>,
    },
    /// Spare squares were put to use.
    SparesUsed {
        /// The places they went to.
        pieces: Vec<Rect>,
    },
    /// The number of spare squares at hand was counted.
    SparesCounted {
        /// How many.
        spares: u32,
    },
    /// A block was measured.
    Measured {
        /// The block.
        piece: Rect,
        /// Its width, as it lies.
        #[serde(rename = "w")]
        width: Length,
        /// Its height.
        #[serde(rename = "h")]
        height: Length,
    },
    /// A block's four sides and its diagonals were measured too; the width and height
    /// of the measure are those of the largest piece its outline holds.
    Outlined {
        /// The block.
        piece: Rect,
        /// Its sides and diagonals.
        measures: Measures,
    },
    /// Where two neighbours are joined, another lap is to be used than the plan's.
    LapsMarked {
        /// The two pieces and their lap; none to take the plan's again.
        laps: Vec<(Rect, Rect, Option<Length>)>,
    },
    /// A damaged square is to be covered where it is sewn.
    Patched {
        /// The square.
        piece: Rect,
        /// What happened.
        why: Mishap,
    },
    /// Joins were opened again, all or a part of their length.
    Unpicked {
        /// Each joined piece and the length opened.
        pieces: Vec<(Rect, Length)>,
    },
    /// Blocks, with all that was done to them, changed places among themselves.
    Moved {
        /// From where to where; each the same shape, each place once on either side.
        moves: Vec<(Rect, Rect)>,
    },
    /// Pieces were turned where they lie, front still up: quarters, clockwise.
    Turned {
        /// Each piece and how many quarters.
        pieces: Vec<(Rect, u8)>,
    },
    /// Loose squares were turned over: what was on their front is on their back.
    Flipped {
        /// The squares.
        pieces: Vec<Rect>,
    },
    /// Places were pinned: what lies there is to stay; or they were let go again.
    Pinned {
        /// The squares.
        pieces: Vec<Rect>,
        /// Pinned.
        pinned: bool,
    },
    /// It was said how the faces are to look.
    Wished {
        /// How.
        wishes: Wishes,
    },
    /// Joined pieces were taken out of this throw.
    SetAside {
        /// The pieces.
        pieces: Vec<Rect>,
        /// The width and height of each, in their order. Where it is not said, as the throw
        /// foresees them.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        sizes: Vec<(Length, Length)>,
    },
    /// The whole piece was measured.
    WholeMeasured {
        /// Its width.
        #[serde(rename = "w")]
        width: Length,
        /// Its height.
        #[serde(rename = "h")]
        height: Length,
    },
    /// Blocks were squared up to a size.
    SquaredUp {
        /// Each block with its width and height now.
        pieces: Vec<(Rect, Length, Length)>,
    },
    /// A square was spoilt before it was joined; its place is empty again.
    Spoilt {
        /// The place.
        piece: Rect,
        /// What happened.
        why: Mishap,
        /// Whether the seams round it were opened to take it out. Where it is not said, they
        /// were if they are the ones that were opened last.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        opened: Option<bool>,
    },
    /// A heap was put on the clothes pile, or changed.
    HeapSet {
        /// Its number.
        n: u16,
        /// The heap.
        heap: Heap,
    },
    /// A heap was taken off the pile.
    HeapTaken {
        /// Its number.
        n: u16,
    },
    /// A piece was cut up, and its squares counted.
    PieceCut {
        /// The heap.
        n: u16,
        /// The piece, counted from 0.
        piece: u8,
        /// How many squares came out.
        squares: u32,
        /// Where they went. Where it is not said, denim squares went to the places whose squares
        /// were still to be cut, row by row, to those of the heap's own denim where it has
        /// one, and the rest became spares; fabric squares went to the stock of the heap's print.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        went: Option<Went>,
    },
    /// A scrap was tried.
    ScrapTried {
        /// What was tried and what came of it.
        scrap: Scrap,
    },
    /// The opening of the machine's plate was measured.
    PlateMeasured {
        /// How wide it is.
        opening: Length,
    },
    /// Something on the list is at hand, or is not after all.
    Gathered {
        /// What.
        item: Item,
        /// Whether it is at hand.
        have: bool,
    },
    /// The maker wrote something down.
    Noted {
        /// Her words.
        text: String,
        /// The piece it is about, if any.
        piece: Option<Rect>,
        /// The step it is about, if any.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        task: Option<Task>,
        /// Marked for the next throw.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        next: bool,
    },
    /// A photo was put into the story.
    Pictured {
        /// The photo.
        photo: PhotoId,
        /// What is said of it; may be empty.
        words: String,
        /// The piece it shows, if any.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        piece: Option<Rect>,
        /// The step it shows, if any.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        task: Option<Task>,
    },
    /// A photo was taken out of the story.
    Unpictured {
        /// The photo.
        photo: PhotoId,
    },
}

/// Where the squares cut out of a piece went.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Went {
    /// Denim squares.
    Squares {
        /// The places they are for.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        places: Vec<Rect>,
        /// How many have no place yet.
        spares: u32,
    },
    /// Fabric squares, to the stock of this print.
    Stock {
        /// The print, counted from 0.
        print: u8,
    },
}

/// How a square came to be spoilt.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Mishap {
    /// Cut too small or crooked.
    MisCut,
    /// A hole, a stain or a worn patch.
    Flaw,
    /// Scorched.
    Scorched,
    /// Not to be found.
    Lost,
}

impl Mishap {
    /// All of them.
    pub const ALL: [Mishap; 4] = [Mishap::MisCut, Mishap::Flaw, Mishap::Scorched, Mishap::Lost];

    /// Its name in the language files.
    pub fn key(self) -> &'static str {
        match self {
            Mishap::MisCut => "mis-cut",
            Mishap::Flaw => "flaw",
            Mishap::Scorched => "scorched",
            Mishap::Lost => "lost",
        }
    }
}

/// Something to have at hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "item")]
pub enum Item {
    /// Jeans or other denim for the squares.
    Denim,
    /// Squares of a print.
    Fabric {
        /// The print, counted from 0.
        print: u8,
    },
    /// Strips for the binding.
    Binding,
    /// Thread for the needles.
    Thread,
    /// Thread on bobbins.
    Bobbins,
    /// Needles.
    Needles,
    /// Washable glue.
    Glue,
    /// A marker that vanishes.
    Marker,
    /// Cutter, mat and ruler.
    Cutter,
    /// Eye protection and a bag for the wash.
    Care,
}

/// A width and a height.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Size {
    /// Across.
    pub width: Length,
    /// Down.
    pub height: Length,
}

impl Size {
    /// The same, turned by a quarter.
    pub fn turned(self) -> Size {
        Size {
            width: self.height,
            height: self.width,
        }
    }

    /// How long a seam is that runs all through a piece of this size.
    pub fn along(self, seam: Seam) -> Length {
        match seam {
            Seam::Upright => self.height,
            Seam::Level => self.width,
        }
    }
}

/// What a join was made with, kept from the moment its edges were first held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Made {
    /// Lap or seam.
    pub joining: Joining,
    /// Its lap or allowance.
    pub lap: Length,
    /// Its stitch.
    pub stitch: Stitch,
}

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
pub struct Opening {
    /// Each joined piece and how much of its join.
    pub joins: Vec<(Rect, Length)>,
    /// The spoilt square that is taken out, if it is for one.
    pub square: Option<Rect>,
}

impl Opening {
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
    /// The denims.
    pub denims: Vec<Denim>,
    /// Squares at hand that have no place yet.
    pub spares: u32,
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
    pub openings: Vec<Opening>,
    /// Squares of each print that were glued on them.
    pub aside_glued: BTreeMap<u8, u32>,
    /// The clothes pile, by number.
    pub pile: BTreeMap<u16, Heap>,
    /// Scraps tried, oldest first.
    pub scraps: Vec<Scrap>,
    /// The opening of the machine's plate, where it was measured.
    pub opening: Option<Length>,
    /// What is at hand.
    pub gathered: BTreeSet<Item>,
    /// Places whose squares are to stay there.
    pinned: BTreeSet<Rect>,
    /// How the faces are to look, where it was said.
    pub wishes: Option<Wishes>,
    /// Fours turned by a quarter since they were sewn: their pairs run up and down.
    turned: BTreeSet<Rect>,
    /// Laps marked for the join of two neighbours.
    marked: BTreeMap<(Rect, Rect), Length>,
    covers: Vec<Cover>,
    work: HashMap<Rect, Work>,
    assembly: Assembly,
    standing: Standing,
}

/// What an event touches, for [`Standing`].
enum Touched {
    /// Nothing that work depends on.
    Nothing,
    /// These pieces.
    Pieces(Vec<Rect>),
    /// Anything.
    All,
}

fn touched(event: &Event) -> Touched {
    match event {
        Event::Done { pieces, .. } | Event::SparesUsed { pieces } => {
            Touched::Pieces(pieces.clone())
        }
        Event::FacesChanged { faces, .. } => Touched::Pieces(faces.iter().map(|f| f.0).collect()),
        Event::SquaredUp { pieces } => Touched::Pieces(pieces.iter().map(|p| p.0).collect()),
        Event::Measured { piece, .. }
        | Event::Outlined { piece, .. }
        | Event::Spoilt { piece, .. } => Touched::Pieces(vec![*piece]),
        Event::Renamed { .. }
        | Event::Archived { .. }
        | Event::ClothChanged { .. }
        | Event::SparesCounted { .. }
        | Event::Patched { .. }
        | Event::Pinned { .. }
        | Event::Wished { .. }
        | Event::WholeMeasured { .. }
        | Event::HeapSet { .. }
        | Event::HeapTaken { .. }
        | Event::ScrapTried { .. }
        | Event::PlateMeasured { .. }
        | Event::Gathered { .. }
        | Event::Noted { .. }
        | Event::Pictured { .. }
        | Event::Unpictured { .. } => Touched::Nothing,
        Event::Begun { .. }
        | Event::PlanChanged { .. }
        | Event::LapsMarked { .. }
        // A block that is free again may have to be trimmed again.
        | Event::Unpicked { .. }
        | Event::Moved { .. }
        | Event::Turned { .. }
        | Event::Flipped { .. }
        | Event::PieceCut { .. }
        | Event::SetAside { .. } => Touched::All,
    }
}

/// Whether a task is done to a square once its fabrics are glued on.
fn presses_cover(task: Task) -> bool {
    matches!(task, Task::PressCover | Task::CoolCover)
}

/// The first of `tasks` that is not among the `done`, each done once for each time it
/// is asked for.
pub(crate) fn first_left(tasks: &[Task], done: &[(Task, Time)]) -> Option<Task> {
    for (n, task) in tasks.iter().enumerate() {
        let times = tasks[..=n].iter().filter(|t| *t == task).count();
        let has = done.iter().filter(|(d, _)| d == task).count();
        if has < times {
            return Some(*task);
        }
    }
    None
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
            denims: denims.clone(),
            spares: 0,
            losses: Vec::new(),
            notes: Vec::new(),
            photos: Vec::new(),
            after: after.as_deref().cloned(),
            measured: Vec::new(),
            wholes: Vec::new(),
            aside: Vec::new(),
            openings: Vec::new(),
            aside_glued: BTreeMap::new(),
            pile: BTreeMap::new(),
            scraps: Vec::new(),
            opening: None,
            gathered: BTreeSet::new(),
            pinned: BTreeSet::new(),
            wishes: None,
            turned: BTreeSet::new(),
            marked: BTreeMap::new(),
            covers: wished
                .filter(|faces| faces.len() == plan.squares() as usize)
                .unwrap_or_else(bare),
            work: HashMap::new(),
            assembly: Assembly::new(plan.across, plan.down, plan.order),
            standing: Standing::default(),
        };
        throw.standing = Standing::of(&throw);
        Some(throw)
    }

    /// Fold one event in. Events that do not fit are passed over, never a panic.
    pub fn apply(&mut self, event: &Event, at: Time) {
        self.fold(event, at);
        match touched(event) {
            Touched::Nothing => {}
            Touched::Pieces(pieces) => {
                let mut standing = std::mem::take(&mut self.standing);
                standing.refresh(self, &pieces);
                self.standing = standing;
            }
            Touched::All => self.standing = Standing::of(self),
        }
    }

    /// How the work stands.
    pub fn standing(&self) -> &Standing {
        &self.standing
    }

    fn fold(&mut self, event: &Event, at: Time) {
        match event {
            Event::Begun { .. } => {}
            Event::Renamed { name } => self.name.clone_from(name),
            Event::Archived { archived } => self.archived = *archived,
            Event::PlanChanged { plan, spares } => self.change_plan(*plan, *spares),
            Event::FacesChanged { faces, again } => {
                let again = again.as_ref().map(|a| a.iter().collect::<BTreeSet<_>>());
                for (piece, cover) in faces {
                    let again = again.as_ref().map(|again| again.contains(piece));
                    self.set_cover(*piece, *cover, again);
                }
            }
            Event::ClothChanged { prints, denims } => {
                self.prints.clone_from(prints);
                self.denims.clone_from(denims);
                // What is no more on the list is not missed.
                let listed = |p: &u8| usize::from(*p) < prints.len();
                self.aside_glued.retain(|p, _| listed(p));
                for print in self.losses.iter_mut().flat_map(|l| &mut l.glued) {
                    *print = print.filter(listed);
                }
            }
            Event::Done { task, pieces, made } => {
                for (n, piece) in pieces.iter().enumerate() {
                    let made = match made.as_slice() {
                        [all] => Some(*all),
                        each => each.get(n).copied(),
                    };
                    self.mark(*piece, *task, made, at);
                }
            }
            Event::SparesUsed { pieces } => {
                self.spares = self.spares.saturating_sub(pieces.len() as u32);
                for piece in pieces {
                    self.mark(*piece, Task::Cut, None, at);
                }
            }
            Event::SparesCounted { spares } => self.spares = *spares,
            Event::Outlined { piece, measures } => {
                self.work.entry(*piece).or_default().outline = Some(*measures);
            }
            Event::LapsMarked { laps } => {
                for (a, b, lap) in laps {
                    match lap {
                        Some(lap) => self.marked.insert((*a, *b), *lap),
                        None => self.marked.remove(&(*a, *b)),
                    };
                }
            }
            Event::Unpicked { pieces } => {
                for (piece, opened) in pieces {
                    self.work.insert(
                        *piece,
                        Work {
                            opened: Some(*opened),
                            ..Work::default()
                        },
                    );
                    self.measured.retain(|p| p != piece);
                }
                self.openings.push(Opening {
                    joins: pieces.clone(),
                    square: None,
                });
            }
            // The damage is in the history; the cover that mends it is an event of its own.
            Event::Patched { .. } => {}
            Event::Moved { moves } => self.move_blocks(moves),
            Event::Turned { pieces } => {
                for (piece, quarters) in pieces {
                    self.turn(*piece, quarters % 4);
                }
            }
            Event::Flipped { pieces } => {
                for piece in pieces {
                    self.flip(*piece);
                }
            }
            Event::Pinned { pieces, pinned } => {
                for piece in pieces {
                    if *pinned && self.place(*piece).is_some() {
                        self.pinned.insert(*piece);
                    } else {
                        self.pinned.remove(piece);
                    }
                }
            }
            Event::Wished { wishes } => self.wishes = Some(*wishes),
            Event::SetAside { pieces, sizes } => {
                for (n, piece) in pieces.iter().enumerate() {
                    let said = sizes.get(n);
                    let size = said.map_or_else(
                        || self.size(*piece),
                        |(width, height)| Size {
                            width: *width,
                            height: *height,
                        },
                    );
                    let glued = piece.squares().flat_map(|s| self.glued(s)).flatten();
                    for print in glued.collect::<Vec<u8>>() {
                        *self.aside_glued.entry(print).or_default() += 1;
                    }
                    self.aside.push(Aside {
                        piece: *piece,
                        size,
                        at,
                    });
                    self.work.retain(|p, _| !piece.holds(*p));
                    self.openings
                        .retain(|o| !o.joins.iter().any(|(p, _)| piece.holds(*p)));
                    self.measured.retain(|p| !piece.holds(*p));
                    self.turned.retain(|p| !piece.holds(*p));
                }
            }
            Event::WholeMeasured { width, height } => {
                let size = Size {
                    width: *width,
                    height: *height,
                };
                let washes = self.washes();
                self.wholes.push(WholeMeasure { size, washes, at });
            }
            Event::Measured {
                piece,
                width,
                height,
            } => {
                let size = Size {
                    width: *width,
                    height: *height,
                };
                let work = self.work.entry(*piece).or_default();
                work.measured = Some(size);
                work.outline = None;
                self.measured.retain(|p| p != piece);
                self.measured.push(*piece);
            }
            Event::SquaredUp { pieces } => {
                for (piece, width, height) in pieces {
                    self.mark(*piece, Task::SquareUp, None, at);
                    let size = Size {
                        width: *width,
                        height: *height,
                    };
                    self.work.entry(*piece).or_default().squared = Some(size);
                }
            }
            Event::Spoilt { piece, why, opened } => {
                let glued = self.glued(*piece);
                self.work.remove(piece);
                // The seams round it were opened to take it out.
                let round = match opened {
                    None => self.openings.len().checked_sub(1),
                    Some(true) => self.openings.iter().rposition(|o| o.is_round(*piece)),
                    Some(false) => None,
                };
                if let Some(opening) = round.and_then(|n| self.openings.get_mut(n))
                    && opening.is_round(*piece)
                {
                    opening.square = Some(*piece);
                }
                self.losses.push(Loss {
                    piece: *piece,
                    why: *why,
                    glued,
                    at,
                });
            }
            Event::HeapSet { n, heap } => {
                self.pile.insert(*n, heap.clone());
            }
            Event::HeapTaken { n } => {
                self.pile.remove(n);
            }
            Event::PieceCut {
                n,
                piece,
                squares,
                went,
            } => self.count_cut((*n, *piece), *squares, went.as_ref(), at),
            Event::ScrapTried { scrap } => self.scraps.push(scrap.clone()),
            Event::PlateMeasured { opening } => self.opening = Some(*opening),
            Event::Gathered { item, have: true } => {
                self.gathered.insert(*item);
            }
            Event::Gathered { item, have: false } => {
                self.gathered.remove(item);
            }
            Event::Noted {
                text,
                piece,
                task,
                next,
            } => {
                self.notes.push(Note {
                    text: text.clone(),
                    piece: *piece,
                    task: *task,
                    next: *next,
                    at,
                });
            }
            Event::Pictured {
                photo,
                words,
                piece,
                task,
            } => self.photos.push(Photo {
                id: photo.clone(),
                words: words.clone(),
                piece: *piece,
                task: *task,
                at,
            }),
            Event::Unpictured { photo } => self.photos.retain(|p| p.id != *photo),
        }
    }

    /// The throw as it would be after these events.
    pub fn after<'a>(&self, events: impl IntoIterator<Item = &'a Event>) -> Throw {
        let mut after = self.clone();
        for event in events {
            after.apply(event, 0);
        }
        after
    }

    /// The prints glued on a square, front and back.
    fn glued(&self, square: Rect) -> [Option<u8>; 2] {
        let cover = self.cover(square);
        let on = |task, print: Option<u8>| print.filter(|_| self.has(square, task));
        [
            on(Task::CoverFront, cover.front),
            on(Task::CoverBack, cover.back),
        ]
    }

    /// Give blocks each other's places: their work, the work within them, their faces.
    fn move_blocks(&mut self, moves: &[(Rect, Rect)]) {
        let shifted = |p: Rect, from: Rect, to: Rect| Rect {
            row: p.row - from.row + to.row,
            col: p.col - from.col + to.col,
            ..p
        };
        let (mut lifted, mut covers) = (Vec::new(), Vec::new());
        for (from, to) in moves {
            let inside: Vec<Rect> = self
                .work
                .keys()
                .copied()
                .filter(|p| from.holds(*p))
                .collect();
            for piece in inside {
                lifted.extend(
                    self.work
                        .remove(&piece)
                        .map(|w| (shifted(piece, *from, *to), w)),
                );
            }
            covers.extend(
                from.squares()
                    .map(|s| (shifted(s, *from, *to), self.cover(s))),
            );
        }
        self.work.extend(lifted);
        for (square, cover) in covers {
            if let Some(i) = self.place(square) {
                self.covers[i] = cover;
            }
        }
        for piece in &mut self.measured {
            if let Some((from, to)) = moves.iter().find(|(from, _)| from.holds(*piece)) {
                *piece = shifted(*piece, *from, *to);
            }
        }
        for opening in &mut self.openings {
            let whole = |from: &Rect| opening.joins.iter().all(|(p, _)| from.holds(*p));
            let Some((from, to)) = moves.iter().find(|(from, _)| whole(from)) else {
                continue;
            };
            for (piece, _) in &mut opening.joins {
                *piece = shifted(*piece, *from, *to);
            }
            opening.square = opening.square.map(|s| shifted(s, *from, *to));
        }
        let touched = |p: &Rect| moves.iter().any(|(from, _)| from.holds(*p));
        self.marked.retain(|(a, b), _| !touched(a) && !touched(b));
        self.turned = std::mem::take(&mut self.turned)
            .into_iter()
            .map(|p| {
                let moved = moves.iter().find(|(from, _)| from.holds(p));
                moved.map_or(p, |(from, to)| shifted(p, *from, *to))
            })
            .collect();
    }

    /// Turn a piece where it lies. A half turn gives its two pairs each other's places;
    /// the quarter that is left over is kept in mind in `turned`.
    fn turn(&mut self, piece: Rect, quarters: u8) {
        if quarters == 0 || (quarters % 2 == 1 && piece.rows != piece.cols) {
            return;
        }
        let squares: Vec<Rect> = piece.squares().collect();
        let covers: Vec<Cover> = squares.iter().map(|s| self.cover(*s)).collect();
        let mut works: Vec<Option<Work>> = squares.iter().map(|s| self.work.remove(s)).collect();
        for (n, square) in squares.iter().enumerate() {
            let from = source(n, (piece.rows, piece.cols), quarters);
            if let Some(i) = self.place(*square) {
                self.covers[i] = covers[from];
                self.covers[i].crosswise ^= quarters % 2 == 1;
            }
            if let Some(work) = works[from].take() {
                self.work.insert(*square, work);
            }
        }
        if piece.is_square() {
            return;
        }
        let over = quarters + u8::from(self.turned.remove(&piece));
        if over % 2 == 1 {
            self.turned.insert(piece);
        }
        if over / 2 % 2 == 1
            && let Some(join) = self.assembly.join(piece).copied()
            && !join.first.is_square()
        {
            let (first, second) = (
                self.work.remove(&join.first),
                self.work.remove(&join.second),
            );
            if let Some(work) = first {
                self.work.insert(join.second, work);
            }
            if let Some(work) = second {
                self.work.insert(join.first, work);
            }
        }
        if let Some(work) = self.work.get_mut(&piece) {
            for _ in 0..quarters {
                work.measured = work.measured.map(Size::turned);
                work.squared = work.squared.map(Size::turned);
                work.outline = work.outline.map(Measures::turned);
            }
        }
    }

    /// Turn a loose square over.
    fn flip(&mut self, piece: Rect) {
        let Some(i) = self.place(piece) else { return };
        let cover = &mut self.covers[i];
        std::mem::swap(&mut cover.front, &mut cover.back);
        cover.wrong_side_up ^= true;
        if let Some(work) = self.work.get_mut(&piece) {
            for (task, _) in &mut work.done {
                *task = match *task {
                    Task::CoverFront => Task::CoverBack,
                    Task::CoverBack => Task::CoverFront,
                    other => other,
                };
            }
        }
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
    pub(crate) fn would_go(&self, makes: Use, squares: u32) -> Went {
        match makes {
            Use::Denim { denim } => {
                let places: Vec<Rect> = self.uncut(denim).take(squares as usize).collect();
                let spares = squares - places.len() as u32;
                Went::Squares { places, spares }
            }
            Use::Fabric { print } => Went::Stock { print },
        }
    }

    /// Squares out of a piece of a heap go where it is said they went.
    fn count_cut(&mut self, (n, piece): (u16, u8), squares: u32, went: Option<&Went>, at: Time) {
        let Some(heap) = self.pile.get_mut(&n) else {
            return;
        };
        let Some(counted) = heap.counted.get_mut(usize::from(piece)) else {
            return;
        };
        *counted = Some(squares);
        let makes = heap.makes;
        let went = went.cloned();
        match went.unwrap_or_else(|| self.would_go(makes, squares)) {
            Went::Squares { places, spares } => {
                self.spares = self.spares.saturating_add(spares);
                for square in places {
                    self.mark(square, Task::Cut, None, at);
                }
            }
            Went::Stock { print } => {
                if let Some(print) = self.prints.get_mut(usize::from(print)) {
                    print.stock = Some(print.stock.unwrap_or(0).saturating_add(squares));
                }
            }
        }
    }

    /// What a task settles of how a piece's join is made, if it were done now: all of it where
    /// the edges are held for the first time, the stitch at the machine.
    /// Files that do not say it are folded by this rule, so that it stays as it is.
    pub(crate) fn would_be_made(&self, piece: Rect, task: Task) -> Option<Made> {
        match task {
            Task::Dot | Task::Pin => Some(self.planned(piece)),
            // The stitch is the one at the machine now, not the one planned when glued.
            Task::Stitch => Some(Made {
                stitch: self.plan.stitch,
                ..self.made(piece)
            }),
            _ => None,
        }
    }

    /// Mark a task as done, with what is said of how the join is made.
    fn mark(&mut self, piece: Rect, task: Task, said: Option<Made>, at: Time) {
        let made = said.or_else(|| self.would_be_made(piece, task));
        let work = self.work.entry(piece).or_default();
        work.done.push((task, at));
        if made.is_some() {
            work.made = made;
        }
        if task == Task::Stitch {
            work.opened = None;
        }
        if matches!(task, Task::Dot | Task::Pin) {
            self.openings
                .retain(|o| !o.joins.iter().any(|(p, _)| *p == piece));
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

    /// A fabric added later is pressed and cooled with the rest once more, unless it is said
    /// whether it is.
    fn set_cover(&mut self, piece: Rect, cover: Cover, again: Option<bool>) {
        let Some(i) = self.place(piece) else { return };
        let again = again.unwrap_or(cover.layers() > self.covers[i].layers());
        self.covers[i] = cover;
        if let Some(work) = self.work.get_mut(&piece).filter(|_| again) {
            work.done.retain(|(task, _)| !presses_cover(*task));
        }
    }

    fn change_plan(&mut self, plan: Plan, spares: u32) {
        let old = Rect::grid(self.plan.across, self.plan.down);
        let new = Rect::grid(plan.across, plan.down);
        if old != new {
            let covers = new
                .squares()
                .map(|s| {
                    self.place(s)
                        .map_or_else(Cover::default, |i| self.covers[i])
                })
                .collect();
            self.covers = covers;
        }
        self.plan = plan;
        self.spares = self.spares.saturating_add(spares);
        self.assembly = Assembly::new(plan.across, plan.down, plan.order);
        let assembly = &self.assembly;
        self.work.retain(|piece, _| assembly.knows(*piece));
        self.measured.retain(|piece| assembly.knows(*piece));
        self.pinned.retain(|piece| assembly.knows(*piece));
        self.openings
            .retain(|o| o.joins.iter().all(|(piece, _)| assembly.knows(*piece)));
        self.turned.retain(|piece| assembly.knows(*piece));
        self.marked
            .retain(|(a, b), _| assembly.knows(*a) && assembly.knows(*b));
    }

    fn place(&self, piece: Rect) -> Option<usize> {
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
        let larger = squared.width > target.width || squared.height > target.height;
        let free = |join: &Join| !self.begun(join.whole);
        larger && self.assembly.goes_into(block).is_none_or(free)
    }

    /// How a piece's join was, or will be, made.
    pub fn made(&self, piece: Rect) -> Made {
        self.work
            .get(&piece)
            .and_then(|w| w.made)
            .unwrap_or_else(|| self.planned(piece))
    }

    /// How a piece's join would be made if it were begun now.
    pub fn planned(&self, piece: Rect) -> Made {
        let plan = &self.plan;
        let own = |start: u16, len: u16| start / 2 == (start + len - 1) / 2;
        let within = own(piece.row, piece.rows) && own(piece.col, piece.cols);
        let mut lap = if within { plan.lap } else { plan.lap_between() };
        if let Some(join) = self.assembly.join(piece)
            && let [spot] = self.spots(join).as_slice()
        {
            lap = self.marked.get(spot).copied().unwrap_or(lap);
        }
        Made {
            joining: plan.joining,
            lap,
            stitch: plan.stitch,
        }
    }

    /// The neighbours that meet along a join: its two parts within a block, and pairs of
    /// blocks between blocks.
    pub fn spots(&self, join: &Join) -> Vec<(Rect, Rect)> {
        let block = |row: u16, col: u16| Rect {
            row,
            col,
            rows: (self.plan.down - row).min(2),
            cols: (self.plan.across - col).min(2),
        };
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

    /// Whether a place is pinned.
    pub fn is_pinned(&self, square: Rect) -> bool {
        self.pinned.contains(&square)
    }

    /// Whether a four was turned by a quarter since it was sewn.
    pub fn is_turned(&self, block: Rect) -> bool {
        self.turned.contains(&block)
    }

    /// What is to be opened before this piece is worked on: it is the square that was
    /// taken out, or one of the joins itself.
    pub fn to_open(&self, piece: Rect) -> Option<&Opening> {
        self.openings
            .iter()
            .find(|o| o.square == Some(piece) || o.joins.iter().any(|(whole, _)| *whole == piece))
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

    /// All tasks a piece goes through, in order.
    pub fn tasks(&self, piece: Rect) -> Vec<Task> {
        self.tasks_of_size(piece, self.size(piece))
    }

    /// The same, its size being known.
    pub(crate) fn tasks_of_size(&self, piece: Rect, size: Size) -> Vec<Task> {
        let mut out = Vec::with_capacity(6);
        if piece.is_square() {
            for_square(&self.cover(piece), &mut out);
        } else {
            for_join(self.made(piece).joining, &mut out);
            if self.assembly.is_block(piece) {
                for_block(&mut out);
                if self.trims_again(piece) {
                    out.push(Task::SquareUp);
                }
            }
        }
        if piece == self.assembly.whole() {
            let strips = self.plan.binding_for(size.width, size.height).strips;
            for_whole(&self.plan, strips, &mut out);
        }
        out
    }

    /// The next task of a piece, taken by itself; `None` once it has been through all.
    pub fn next(&self, piece: Rect) -> Option<Task> {
        match self.assembly.number(piece) {
            Some(n) => self.standing.next(n),
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

    /// The first part of `piece` that is not through yet, which must come first. One that
    /// should be trimmed again can be joined as it is.
    pub fn waits_for(&self, piece: Rect) -> Option<Rect> {
        let join = self.assembly.join(piece)?;
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

    /// The size a block is trimmed to: the trim size across each side that has two squares.
    pub fn target(&self, block: Rect) -> Size {
        let side = |squares: u16| {
            if squares == 2 {
                self.plan.target()
            } else {
                self.plan.side
            }
        };
        Size {
            width: side(block.cols),
            height: side(block.rows),
        }
    }

    /// The size a piece has, or will have if nothing else goes amiss; see the module.
    pub fn size(&self, piece: Rect) -> Size {
        let known = self.assembly.number(piece);
        known
            .and_then(|n| self.standing.size(n))
            .unwrap_or_else(|| self.size_from(piece, &Standing::default()))
    }

    /// A piece's size from its parts', which are looked up where they are known.
    pub(crate) fn size_from(&self, piece: Rect, known: &Standing) -> Size {
        if let Some(squared) = self.work.get(&piece).and_then(|w| w.squared) {
            return squared;
        }
        let Some(join) = self.assembly.join(piece) else {
            return Size {
                width: self.plan.side,
                height: self.plan.side,
            };
        };
        let of = |part: Rect| {
            let found = self.assembly.number(part).and_then(|n| known.size(n));
            found.unwrap_or_else(|| self.size_from(part, known))
        };
        let (a, b) = (of(join.first), of(join.second));
        let made = self.made(piece);
        let taken = take(made.joining, made.lap);
        let whole = match join.seam {
            Seam::Upright => Size {
                width: a.width + b.width - taken,
                height: max(a.height, b.height),
            },
            Seam::Level => Size {
                width: max(a.width, b.width),
                height: a.height + b.height - taken,
            },
        };
        let whole = if self.turned.contains(&piece) {
            whole.turned()
        } else {
            whole
        };
        if self.assembly.is_block(piece) {
            let measured = self
                .work
                .get(&piece)
                .and_then(|w| w.measured)
                .unwrap_or(whole);
            let target = self.target(piece);
            return Size {
                width: min(measured.width, target.width),
                height: min(measured.height, target.height),
            };
        }
        whole
    }

    /// Seams of the throw, those sewn as they are, the others as they will be: how many, and
    /// how long together.
    pub fn runs(&self) -> (usize, Length) {
        runs(&self.assembly, |piece| self.size(piece))
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
        max(a, b)
    }

    /// Whether so much of a join is all of it: what is opened beside a piece is shorter.
    /// Four fifths and more count as all of it (our judgement).
    pub fn opens_all(&self, join: &Join, opened: Length) -> bool {
        opened * 5 >= self.size(join.whole).along(join.seam) * 4
    }

    /// How long a pressed piece cools, in milliseconds.
    pub fn cooling(&self) -> Time {
        Time::from(self.plan.cooling_minutes) * 60_000
    }

    /// When a piece has cooled that was pressed; `None` where it was not.
    pub fn cooled_at(&self, piece: Rect) -> Option<Time> {
        let work = self.work.get(&piece)?;
        let pressed = [Task::PressLap, Task::PressCover];
        let pressed = pressed.iter().filter_map(|t| work.when(*t)).max()?;
        Some(pressed.saturating_add(self.cooling()))
    }

    /// Whether a block is at the point where it is measured: stitched, not yet squared up.
    pub fn is_measurable(&self, block: Rect) -> bool {
        self.assembly.is_block(block)
            && self.has(block, Task::Stitch)
            && !self.has(block, Task::SquareUp)
    }

    /// How often the whole was washed.
    pub fn washes(&self) -> u8 {
        let work = self.work.get(&self.assembly.whole());
        let done = work.map_or(&[][..], |w| &w.done);
        done.iter().filter(|(t, _)| *t == Task::Wash).count() as u8
    }

    /// The whole as last measured, while it is in one piece.
    pub fn measured_whole(&self) -> Option<WholeMeasure> {
        let whole = self.assembly.whole();
        let one = self.assembly.join(whole).is_none() || self.has(whole, Task::Stitch);
        self.wholes.last().filter(|_| one).copied()
    }

    /// The size of the whole.
    pub fn finished(&self) -> Size {
        self.size(self.assembly.whole())
    }

    /// What kind of piece this is.
    pub fn kind(&self, piece: Rect) -> Kind {
        self.assembly.kind(piece)
    }

    /// How often each kind of step is still to be done.
    pub fn tasks_left(&self) -> BTreeMap<Task, usize> {
        let mut left = BTreeMap::new();
        for piece in self.assembly.pieces() {
            for task in self.tasks(piece) {
                *left.entry(task).or_insert(0) += 1;
            }
            for (task, _) in self.work.get(&piece).map_or(&[][..], |w| &w.done) {
                if let Some(n) = left.get_mut(task) {
                    *n = usize::saturating_sub(*n, 1);
                }
            }
        }
        left
    }

    /// Tasks done and tasks in all.
    pub fn progress(&self) -> (usize, usize) {
        self.standing.progress()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::inch64;
    use proptest::prelude::*;

    fn begun(plan: Plan) -> Throw {
        Throw::begin(&Event::Begun {
            name: "t".into(),
            plan,
            prints: vec![],
            denims: vec![],
            after: None,
        })
        .unwrap()
    }

    #[test]
    fn a_lap_once_glued_keeps_its_measure() {
        let mut throw = begun(Plan {
            across: 2,
            down: 1,
            ..Plan::default()
        });
        let pair = Rect::grid(2, 1);
        throw.apply(
            &Event::Done {
                task: Task::Dot,
                pieces: vec![pair],
                made: vec![],
            },
            0,
        );
        let plan = Plan {
            lap: inch64(24),
            ..throw.plan
        };
        throw.apply(&Event::PlanChanged { plan, spares: 0 }, 1);
        assert_eq!(throw.made(pair).lap, inch64(32));
        assert_eq!(throw.size(pair).width, inch64(9 * 64 + 32));
    }

    fn made(lap: i64) -> Made {
        Made {
            joining: Joining::Lapped,
            lap: inch64(lap),
            stitch: Stitch::Straight,
        }
    }

    fn done(task: Task, pieces: &[Rect], made: &[Made]) -> Event {
        Event::Done {
            task,
            pieces: pieces.to_vec(),
            made: made.to_vec(),
        }
    }

    #[test]
    fn a_join_is_made_as_the_event_says_whatever_is_planned() {
        let plan = Plan {
            across: 4,
            down: 2,
            ..Plan::default()
        };
        let pairs = [Rect::from([0, 0, 1, 2]), Rect::from([1, 0, 1, 2])];
        let marks = Event::LapsMarked {
            laps: vec![(Rect::square(0, 0), Rect::square(0, 1), Some(inch64(30)))],
        };
        for lap in [24, 32, 40] {
            let plan = Plan {
                lap: inch64(lap),
                ..plan
            };
            let mut throw = begun(plan);
            throw.apply(&marks, 0);
            // One for each, and then one for all.
            throw.apply(&done(Task::Dot, &pairs, &[made(20), made(21)]), 0);
            assert_eq!(pairs.map(|p| throw.made(p).lap), [inch64(20), inch64(21)]);
            throw.apply(&done(Task::Stitch, &pairs, &[made(22)]), 0);
            assert_eq!(pairs.map(|p| throw.made(p)), [made(22), made(22)]);
            // Where it is not said, the plan and the marks are asked.
            let mut throw = begun(plan);
            throw.apply(&marks, 0);
            throw.apply(&done(Task::Dot, &pairs, &[]), 0);
            assert_eq!(pairs.map(|p| throw.made(p).lap), [inch64(30), inch64(lap)]);
            assert_eq!(throw.made(pairs[0]).stitch, plan.stitch);
        }
    }

    #[test]
    fn cut_squares_go_where_the_event_says_whatever_is_open() {
        use crate::cloth::Cloth;
        use crate::garments::{Precut, Source};
        use crate::pile::Heap;
        let mut throw = begun(Plan {
            across: 3,
            down: 2,
            ..Plan::default()
        });
        let pack = Source::Precut(Precut {
            name: "Pack".into(),
            side: inch64(320),
            count: 40,
        });
        let heap = Heap::new(pack, Use::ANY_DENIM, Cloth::denim());
        throw.apply(&Event::HeapSet { n: 1, heap }, 0);
        let cut = |went| Event::PieceCut {
            n: 1,
            piece: 0,
            squares: 4,
            went,
        };
        let places = vec![Rect::square(1, 2), Rect::square(0, 1)];
        let went = Went::Squares {
            places: places.clone(),
            spares: 2,
        };
        let said = throw.after(&[cut(Some(went))]);
        let is_cut = |throw: &Throw| -> Vec<Rect> {
            let all = throw.assembly().whole().squares();
            all.filter(|s| throw.has(*s, Task::Cut)).collect()
        };
        assert_eq!(is_cut(&said), [Rect::square(0, 1), Rect::square(1, 2)]);
        assert_eq!((said.spares, said.pile[&1].counted[0]), (2, Some(4)));
        // Where it is not said: the first that are open.
        let unsaid = throw.after(&[cut(None)]);
        let first: Vec<Rect> = throw.assembly().whole().squares().take(4).collect();
        assert_eq!((is_cut(&unsaid), unsaid.spares), (first, 0));
    }

    #[test]
    fn a_square_is_pressed_once_more_as_the_event_says() {
        let square = Rect::square(0, 0);
        let mut throw = begun(Plan::default());
        for task in [Task::Cut, Task::PressCover, Task::CoolCover] {
            throw.apply(&done(task, &[square], &[]), 0);
        }
        let cover = Cover {
            back: Some(0),
            ..Cover::default()
        };
        for (again, pressed) in [
            (None, false),
            (Some(vec![]), true),
            (Some(vec![square]), false),
        ] {
            let faces = vec![(square, cover)];
            let after = throw.after(&[Event::FacesChanged { faces, again }]);
            assert_eq!(after.has(square, Task::PressCover), pressed);
        }
    }

    #[test]
    fn what_is_set_aside_is_as_large_as_the_event_says() {
        let four = Rect::from([0, 0, 2, 2]);
        let throw = begun(Plan::default());
        let size = |sizes: Vec<(Length, Length)>| {
            let pieces = vec![four];
            throw.after(&[Event::SetAside { pieces, sizes }]).aside[0].size
        };
        let said = size(vec![(inch64(600), inch64(601))]);
        assert_eq!((said.width, said.height), (inch64(600), inch64(601)));
        assert_eq!(size(vec![]), throw.size(four));
    }

    #[test]
    fn seams_are_opened_for_a_square_where_the_event_says_so() {
        let (square, pair) = (Rect::square(0, 0), Rect::from([0, 0, 1, 2]));
        let other = Rect::from([0, 2, 1, 2]);
        let opened = |opened: Option<bool>, last: &[Rect]| {
            let mut throw = begun(Plan::default());
            for piece in last {
                let pieces = vec![(*piece, inch64(320))];
                throw.apply(&Event::Unpicked { pieces }, 0);
            }
            let spoilt = Event::Spoilt {
                piece: square,
                why: Mishap::Flaw,
                opened,
            };
            throw.apply(&spoilt, 1);
            throw.openings.iter().any(|o| o.square == Some(square))
        };
        // Said: whatever else was opened since. Not said: if it was the last.
        assert!(opened(Some(true), &[pair, other]) && opened(Some(true), &[pair]));
        assert!(!opened(Some(false), &[pair]) && !opened(Some(true), &[other]));
        assert!(opened(None, &[other, pair]) && !opened(None, &[pair, other]));
    }

    #[test]
    fn a_short_block_makes_its_own_row_short() {
        let mut throw = begun(Plan {
            across: 4,
            down: 2,
            ..Plan::default()
        });
        let four = Rect::from([0, 0, 2, 2]);
        let short = inch64(9 * 64 + 16);
        throw.apply(
            &Event::Measured {
                piece: four,
                width: short,
                height: inch64(10 * 64),
            },
            0,
        );
        assert_eq!(
            throw.finished(),
            Size {
                width: short + inch64(9 * 64),
                height: inch64(9 * 64 + 32)
            }
        );
    }

    proptest! {
        #[test]
        fn with_nothing_done_the_sum_of_the_parts_is_the_plan(across in 1u16..=60, down in 1u16..=60, which in 0usize..3, trim in 0i64..64) {
            use crate::plan::JoinOrder::*;
            let mut plan = Plan { across, down, order: [Rows, Columns, Doubling][which], ..Plan::default() };
            plan.trim = Some(plan.natural_four() - inch64(trim));
            let size = begun(plan).finished();
            prop_assert_eq!((size.width, size.height), plan.finished());
        }
    }
}
