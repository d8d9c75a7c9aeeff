//! What can happen to a throw: the events its file is made of.
//!
//! Files hold these names and the names of their fields, so none of them may ever change.

use crate::cloth::fabric::{Cover, Denim, Face, Print};
use crate::cloth::photos::PhotoId;
use crate::cloth::pile::Heap;
use crate::measure::outline::Measures;
use crate::measure::{Count, Length};
use crate::plan::Plan;
use crate::plan::assembly::Rect;
use crate::plan::scraps::Scrap;
use crate::throw::facts::{Made, Mishap, Pieced, StripsCut, Went};
use crate::throw::heritage::Heritage;
use crate::throw::tasks::Task;
use crate::throw::wishes::Wishes;
use crate::types::TS;
use serde::{Deserialize, Serialize};

/// Milliseconds since 1970, UTC; callers always pass it in.
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
        spares: Count,
        /// Fabric squares glued on these, by print: they go with them. Where it is not said, they
        /// are taken for free again.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        glued: Vec<(u8, Count)>,
    },
    /// Faces of squares changed.
    FacesChanged {
        /// Each square with its new faces.
        faces: Vec<(Rect, Cover)>,
        /// Squares among them that are to be pressed and cooled once more. Where it is not
        /// said, those that got more fabric than they had.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        again: Option<Vec<Rect>>,
        /// Whether their denims were chosen by hand. Where it is not said, they were if
        /// nothing but the denim changed.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        by_hand: Option<bool>,
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
        /// The denim of each, in their order; none where it was never said. Where nothing is said
        /// of any, those of the place's own denim went first.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        of: Vec<Option<u8>>,
        /// The places among them that got a spare pieced of two halves.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        pieced: Vec<Rect>,
    },
    /// A cut square that lay loose in one place went to another, empty one. The place it came from
    /// is to be cut again.
    SquareMoved {
        /// The place it lay in.
        from: Rect,
        /// The place it went to.
        to: Rect,
    },
    /// The number of spare squares at hand was counted.
    SparesCounted {
        /// How many.
        spares: Count,
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
        /// The square was joined to others, so that no lap holds the edges of the patch: it
        /// is stitched round, as large as the square. Where it is not said, it is only glued, or
        /// [`Event::LaidOn`] says what it is trimmed to.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        sewn: bool,
    },
    /// Fabric is laid on squares that are sewn in, so that no lap holds its edges.
    LaidOn {
        /// Each square, the face, and the side its fabric is trimmed to: it lies clear of the laps
        /// and is stitched round. None where it is no longer laid on so.
        squares: Vec<(Rect, Face, Option<Length>)>,
    },
    /// Joins were opened again, all or a part of their length.
    Unpicked {
        /// Each joined piece and the length opened.
        pieces: Vec<(Rect, Length)>,
        /// Glue alone held them: they were lifted, and no seam was unpicked. Where it is not
        /// said, nobody knows.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        glued: bool,
        /// Those of them that are opened along a part only, so much more than they were: the rest
        /// stays as it was made, and so does what was done to the edge of the whole. Where it is
        /// not said, each is made anew from end to end.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        in_part: Vec<Rect>,
        /// The binding is opened where they reach it.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        binding: bool,
        /// The block that is taken out, where it is one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        block: Option<Rect>,
        /// Blocks among them that other seams, or the binding, still hold: they are not squared up
        /// again.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        held: Vec<Rect>,
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
        /// How many of them had not been measured before. Where it is not said, nobody knows.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        unmeasured: Option<Count>,
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
        squares: Count,
        /// Where they went. Where it is not said, denim squares went to the places whose squares
        /// were still to be cut, row by row, to those of the heap's own denim where it has
        /// one, and the rest became spares; fabric squares went to the stock of the heap's print.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        went: Option<Went>,
        /// Binding strips that came out besides.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        strips: Option<StripsCut>,
        /// Which of the squares are pieced of two halves, where some are.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pieced: Option<Pieced>,
    },
    /// The first lines of a piece's cutting list are done.
    PieceBegun {
        /// The heap.
        n: u16,
        /// The piece, counted from 0.
        piece: u8,
        /// How many lines; none where it is begun anew.
        lines: Count,
        /// Binding strips the piece is to give.
        strips: Count,
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
    /// Iron, pressing cloth, and a flat place to cool on.
    Press,
    /// Clips for the binding, and pins where seams are pinned.
    Clips,
    /// Seam ripper and small scissors.
    Ripper,
}
