//! Why something the maker asked for cannot be done now.

use crate::cloth::garments::PieceFault;
use crate::measure::Length;
use crate::measure::outline;
use crate::plan::PlanFault;
use crate::plan::assembly::Rect;
use crate::throw::tasks::Task;
use thiserror::Error;

/// Why an action cannot be done now.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum Rejection {
    /// The throw has been begun already, or not yet.
    #[error("the throw has been begun already, or not yet")]
    Beginning,
    /// The plan cannot be.
    #[error(transparent)]
    Plan(#[from] PlanFault),
    /// No name, or one too long.
    #[error("no name, or one too long")]
    Name,
    /// No words, or too many.
    #[error("no words, or too many")]
    Words,
    /// There is no such piece in this throw.
    #[error("no piece {0:?} in this throw")]
    NoSuchPiece(Rect),
    /// No piece was named.
    #[error("no piece was named")]
    Nothing,
    /// The task is not one of that piece's, or done already.
    #[error("{task:?} is not a task of {piece:?}, or is done")]
    NotItsTask {
        /// The piece.
        piece: Rect,
        /// What was asked.
        task: Task,
    },
    /// Something else comes first.
    #[error("before {task:?} of {piece:?} comes {needs:?} of {before:?}")]
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
    #[error("{squares} squares are cut at the old size")]
    AlreadyCut {
        /// How many.
        squares: u32,
    },
    /// The square is cut, so that its denim stays.
    #[error("{0:?} is cut, so its denim stays")]
    DenimCut(Rect),
    /// What squares are to be cut larger by is less than nothing, or too much.
    #[error("squares cannot be cut larger by that")]
    CutLarger,
    /// Squares bought ready cut are smaller than the plan's.
    #[error("squares of {side} are smaller than the plan's {wanted}")]
    PackSmall {
        /// The side of those in the pack.
        side: Length,
        /// The plan's.
        wanted: Length,
        /// They are fabric, to be glued on.
        fabric: bool,
        /// The largest patch that lies clear of the laps.
        most: Length,
    },
    /// A fabric has squares of one size only: whole ones, or patches.
    #[error("fabric {0} has squares of another size already")]
    PackMixed(u8),
    /// Two fabrics, or two denims, would have one name.
    #[error("two would be called {0}")]
    SameName(String),
    /// A patch would be caught by the laps of that plan.
    #[error("patches of {side} would be caught by the laps; {most} is the most")]
    PatchCaught {
        /// The side of the patches.
        side: Length,
        /// The largest that lies clear of the laps.
        most: Length,
    },
    /// More pieced squares than squares, or of a piece that is not cut into halves.
    #[error("so many squares of two halves cannot come out of this piece")]
    Pieced,
    /// Nothing of the cloth would be left once its edges are trimmed.
    #[error("nothing is left of the cloth once its edges are trimmed")]
    Edges,
    /// The piece is made already and has no place in the new grid or order.
    #[error("{0:?} is made and has no place in the new plan")]
    AlreadyMade(Rect),
    /// The square is joined to others, so its faces stay.
    #[error("{0:?} is joined to others")]
    Joined(Rect),
    /// A fabric is glued there already.
    #[error("{0:?} has a fabric glued on")]
    Glued(Rect),
    /// There are not so many squares of that print.
    #[error("only {have} squares of print {print}")]
    Stock {
        /// The print.
        print: u8,
        /// How many there are.
        have: u32,
    },
    /// No such print or denim, too many, or one in use was taken away.
    #[error("no such print or denim, too many, or one in use is missing")]
    Cloth,
    /// Fewer spare squares than that.
    #[error("only {have} spare squares")]
    Spares {
        /// How many there are.
        have: u32,
    },
    /// Only a stitched block that is not yet squared up is measured.
    #[error("{0:?} is no stitched block still to be squared up")]
    NotMeasurable(Rect),
    /// No such heap or piece on the pile, or there are too many.
    #[error("no such heap or piece on the pile, or too many")]
    Pile,
    /// The piece is cut up already.
    #[error("the piece is cut up already")]
    CutUp,
    /// The outline of a piece cannot be.
    #[error(transparent)]
    Piece(#[from] PieceFault),
    /// More squares than any piece gives.
    #[error("a piece gives at most {most} squares")]
    ManySquares {
        /// The most that is believed.
        most: u32,
    },
    /// Not a weight of cloth.
    #[error("not a weight of cloth")]
    Weight,
    /// No such scrap.
    #[error("no such scrap")]
    Scrap,
    /// The throw is not in one piece yet.
    #[error("the throw is not in one piece yet")]
    NotWhole,
    /// A measure that cannot be this block's: under half or over twice its planned size.
    #[error("measured {given}, planned {planned}")]
    Unlikely {
        /// What was given.
        given: Length,
        /// What was planned.
        planned: Length,
    },
    /// The square is not cut, so it cannot be spoilt.
    #[error("{0:?} is not cut")]
    NotCut(Rect),
    /// The sides and diagonals do not make a block.
    #[error(transparent)]
    Outline(#[from] outline::OutlineFault),
    /// The piece has no stitched or glued join to open.
    #[error("{0:?} has no join to open")]
    NothingToUnpick(Rect),
    /// That lap would leave less than the least fringe, or is no lap for this join.
    #[error("a lap of {lap} is narrower than {least}")]
    LapTooNarrow {
        /// What was asked.
        lap: Length,
        /// The narrowest that holds.
        least: Length,
    },
    /// These two are not neighbours whose join is still to be made.
    #[error("{0:?} and {1:?} have no join still to be made")]
    NotNeighbours(Rect, Rect),
    /// The square is covered on that face already.
    #[error("{0:?} is covered on that face")]
    Covered(Rect),
    /// The two blocks are not loose blocks of one shape.
    #[error("{0:?} and {1:?} are not loose blocks of one shape")]
    NotSwappable(Rect, Rect),
    /// More squares are wished covered than there are.
    #[error("there are only {most} squares to cover")]
    Wishes {
        /// How many there are.
        most: u32,
    },
    /// The square is pinned to its place.
    #[error("{0:?} is pinned")]
    Pinned(Rect),
    /// The piece cannot be turned that way.
    #[error("{0:?} cannot be turned that way")]
    NotTurnable(Rect),
    /// The layout does not fit the throw as it is now; the place where it does not.
    #[error("the layout does not fit at {0:?}")]
    Layout(Rect),
    /// The words under a photo are too many.
    #[error("too many words under a photo")]
    Caption,
    /// The photo is in the story already.
    #[error("the photo is in the story already")]
    PicturedAlready,
    /// No such photo in the story, or there are too many.
    #[error("no such photo in the story, or too many")]
    Photo,
    /// There is nothing to take back.
    #[error("nothing to undo")]
    NothingToUndo,
    /// There is nothing to do again.
    #[error("nothing to redo")]
    NothingToRedo,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::cutting::CuttingFault;
    use crate::log::journal::FormatError;
    use crate::measure::bounds::FigureOutOfBounds;
    use crate::measure::tenths_of_mm;
    use std::error::Error as _;

    #[test]
    fn errors_say_for_developers_what_was_wrong() {
        let lap = Rejection::LapTooNarrow {
            lap: tenths_of_mm(25),
            least: tenths_of_mm(100),
        };
        assert_eq!(
            lap.to_string(),
            "a lap of 2500000 nm is narrower than 10000000 nm"
        );
        assert_eq!(
            Rejection::from(PlanFault::Grid).to_string(),
            PlanFault::Grid.to_string()
        );
        assert_eq!(
            CuttingFault::from(PieceFault::EmptyZone(2)).to_string(),
            "zone 2 is empty"
        );
        let figure = FigureOutOfBounds {
            field: "do[0].spares-counted.spares".into(),
            figure: "4294967295".into(),
        };
        let damage = FormatError::FigureOutOfBounds { line: 3, figure };
        assert_eq!(damage.to_string(), "line 3 holds a figure out of bounds");
        assert_eq!(
            damage.source().unwrap().to_string(),
            "do[0].spares-counted.spares is out of bounds: 4294967295"
        );
    }
}
