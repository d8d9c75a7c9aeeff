//! Why something the maker asked for cannot be done now.

use crate::cloth::garments::PieceFault;
use crate::measure::Length;
use crate::measure::outline;
use crate::plan::PlanFault;
use crate::plan::assembly::Rect;
use crate::throw::tasks::Task;

/// Why an action cannot be done now.
#[derive(Debug, Clone, PartialEq)]
pub enum Rejection {
    /// The throw has been begun already, or not yet.
    Beginning,
    /// The plan cannot be.
    Plan(PlanFault),
    /// No name, or one too long.
    Name,
    /// No words, or too many.
    Words,
    /// There is no such piece in this throw.
    NoSuchPiece(Rect),
    /// No piece was named.
    Nothing,
    /// The task is not one of that piece's, or done already.
    NotItsTask {
        /// The piece.
        piece: Rect,
        /// What was asked.
        task: Task,
    },
    /// Something else comes first.
    First {
        /// What was asked.
        task: Task,
        /// The piece it was asked for.
        piece: Rect,
        /// The piece that must be seen to first.
        before: Rect,
        /// And what must be done to it.
        needs: Task,
    },
    /// The square is cut at the old size already.
    AlreadyCut {
        /// How many.
        squares: u32,
    },
    /// The piece is made already and has no place in the new grid or order.
    AlreadyMade(Rect),
    /// The square is joined to others, so its faces stay.
    Joined(Rect),
    /// A fabric is glued there already.
    Glued(Rect),
    /// There are not so many squares of that print.
    Stock {
        /// The print.
        print: u8,
        /// How many there are.
        have: u32,
    },
    /// No such print or denim, too many, or one in use was taken away.
    Cloth,
    /// Fewer spare squares than that.
    Spares {
        /// How many there are.
        have: u32,
    },
    /// Only a stitched block that is not yet squared up is measured.
    NotMeasurable(Rect),
    /// No such heap or piece on the pile, or there are too many.
    Pile,
    /// The piece is cut up already.
    CutUp,
    /// The outline of a piece cannot be.
    Piece(PieceFault),
    /// More squares than any piece gives.
    ManySquares {
        /// The most that is believed.
        most: u32,
    },
    /// Not a weight of cloth.
    Weight,
    /// No such scrap.
    Scrap,
    /// The throw is not in one piece yet.
    NotWhole,
    /// A measure that cannot be this block's: under half or over twice its planned size.
    Unlikely {
        /// What was given.
        given: Length,
        /// What was planned.
        planned: Length,
    },
    /// The square is not cut, so it cannot be spoilt.
    NotCut(Rect),
    /// The sides and diagonals do not make a block.
    Outline(outline::OutlineFault),
    /// The piece has no stitched or glued join to open.
    NothingToUnpick(Rect),
    /// That lap would leave less than the least fringe, or is no lap for this join.
    LapTooNarrow {
        /// What was asked.
        lap: Length,
        /// The narrowest that holds.
        least: Length,
    },
    /// These two are not neighbours whose join is still to be made.
    NotNeighbours(Rect, Rect),
    /// The square is covered on that face already.
    Covered(Rect),
    /// The two blocks are not loose blocks of one shape.
    NotSwappable(Rect, Rect),
    /// More squares are wished covered than there are.
    Wishes {
        /// How many there are.
        most: u32,
    },
    /// The square is pinned to its place.
    Pinned(Rect),
    /// The piece cannot be turned that way.
    NotTurnable(Rect),
    /// The layout does not fit the throw as it is now; the place where it does not.
    Layout(Rect),
    /// The words under a photo are too many.
    Caption,
    /// The photo is in the story already.
    PicturedAlready,
    /// No such photo in the story, or there are too many.
    Photo,
    /// There is nothing to take back.
    NothingToUndo,
    /// There is nothing to do again.
    NothingToRedo,
}
