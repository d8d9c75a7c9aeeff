//! The screens: what the window shows of a throw.
//!
//! Each screen has a module here with its view and the function that makes the view from the
//! state and nothing else. Promise: no view changes anything, and every button a view
//! offers carries an action that [`crate::command::decide`] allowed at that moment.

mod again;
mod bench;
mod bound;
mod card_figures;
mod change;
mod context;
mod cutting;
mod cutting_list;
mod dates;
pub mod drawing;
mod enough;
mod errors;
mod events;
mod export;
mod faces;
mod fields;
mod floor;
mod gather;
mod grids;
mod history;
mod hold;
mod import;
mod json_figures;
mod layouts;
mod lessons;
mod measuring;
mod names;
mod off;
mod opening;
mod parts;
mod picture;
mod pictures;
mod pile;
mod plan;
mod query;
mod scraps;
pub mod sheet;
mod shelf;
mod stages;
mod start;
mod story;
mod story_page;
pub mod tables;
mod trim;
mod typed;
mod whole;
mod wishes;
mod work;

pub use again::{AgainView, DraftAfter, again};
pub use bench::{BenchCell, BenchView, PieceCard, SquareStage, StageKey, Tally};
pub use context::Context;
pub use cutting::{Drag, Handle, OtherHalf, PileCutView, WayOffer, WornAsked};
pub use dates::{Calendar, Day, ZoneName, date};
pub use errors::{format_error, out_of_bounds, rejection};
pub use export::{
    Export, ExportButton, ExportSection, ExportView, Exported, PrintOrder, PrintPaper, PrintUnits,
    Printing, file_name, usual_paper,
};
pub use faces::{FaceCell, FacesView};
pub use floor::{CoveringGroup, CoveringLine, CoveringView, FloorCell, FloorView};
pub use gather::{GatherRow, GatherView};
pub use grids::{GridRow, GridWish, GridsView, JeansTyped, PackTyped, grids};
pub use history::{HistoryRow, HistoryView, whole_history};
pub use hold::{HoldRow, HoldView};
pub use import::{
    ConflictRow, CopyRow, ImportButton, ImportChoice, ImportView, Imported, conflict, import,
    unmergeable,
};
pub use json_figures::figures;
pub use layouts::{LayoutCard, Layouts, layouts};
pub use lessons::{LessonRow, Lessons};
pub use measuring::{MeasureView, OutlineTyped};
pub use off::{MishapChoice, OffView, PieceChoice, RemedyRow};
pub use opening::OpenFirst;
pub use parts::{
    Button, CautionNote, Choice, CompareRow, FieldProblem, Figure, Head, Swatch, head, length,
};
pub use picture::{DrawnCloth, Hold, Ink, InkKey, Mark, Picture, Tile, TileMarks, TileStroke};
pub use pile::{ClothOffer, HeapPiece, HeapRow, PileView};
pub use plan::{PlanDraft, PlanView, StitchKind, draft, draft_after, draft_of};
pub use query::{CommandAnswer, Query, Request, View, ViewAnswer};
pub use scraps::{LapColumn, ScrapRow, ScrapTyped, ScrapsView};
pub use sheet::content::Sheet;
pub use sheet::sheet;
pub use shelf::{
    CopyRecord, Reminder, ShelfAnswer, ShelfCommand, ShelfRow, ShelfView, changes_to_copy,
    reminder, shelf_row,
};
pub use stages::{StageIs, StageRow, WayView};
pub use start::{Hello, Prefs, StartOffers, Theme};
pub use story::{Story, StoryDay, StoryItem, StorySort, StoryView, story};
pub use story_page::story_page;
pub use trim::{TrimRow, TrimView};
pub use typed::{PieceTyped, StationTyped, ZoneTyped};
pub use whole::WholeView;
pub use wishes::{Share, WishLine, WishesView};
pub use work::{Card, FacesAsk, Offer, StationTab, WorkView};

use crate::log::journal::Journal;
use crate::words::Problem;

/// What the window asked to see of a throw.
///
/// # Errors
/// A [`Problem`] when there is no such piece.
pub fn answer(journal: &Journal, query: &Query, context: Context<'_>) -> Result<View, Problem> {
    Ok(match query {
        Query::Work { station, batch } => {
            View::Work(work::work(journal, *station, *batch, context))
        }
        Query::Bench { chosen } => View::Bench(bench::bench(journal, *chosen, context)),
        Query::Faces { face } => View::Faces(faces::faces(journal, *face, context)),
        Query::Wishes { wishes } => {
            View::Wishes(Box::new(wishes::wishes(journal, *wishes, context)))
        }
        Query::Floor { part } => View::Floor(floor::floor(journal, *part, context)),
        Query::Covering => View::Covering(floor::covering(journal, context)),
        Query::Plan { draft } => {
            View::Plan(Box::new(plan::plan_of(journal, draft.as_deref(), context)))
        }
        Query::Measure {
            piece,
            width,
            height,
        } => View::Measure(measuring::measure(journal, *piece, width, height, context)?),
        Query::Outline { piece, typed } => {
            View::Measure(measuring::outline(journal, *piece, typed, context)?)
        }
        Query::Trim => View::Trim(trim::trims(journal, context)),
        Query::Off { piece, why } => View::Off(off::off(journal, *piece, *why, context)?),
        Query::Hold { width, height } => View::Hold(hold::hold(journal, width, height, context)),
        Query::Pile => View::Pile(pile::pile(journal, context)),
        Query::Cutting {
            n,
            index,
            typed,
            drag,
        } => {
            let seen = cutting::cutting(journal, (*n, *index), typed.as_ref(), *drag, context)?;
            View::Cutting(Box::new(seen))
        }
        Query::Gather => View::Gather(gather::gather(journal, context)),
        Query::Scraps { typed } => View::Scraps(scraps::scraps(journal, typed.as_ref(), context)),
        Query::Whole { width, height } => {
            View::Whole(whole::whole(journal, width, height, context))
        }
        Query::HandOn => View::HandOn(export::hand_on(journal, context)),
        Query::Story { zone } => View::Story(story::seen(journal, zone, context)),
        Query::History { most } => View::History(history::history(journal, *most, context)),
    })
}

#[cfg(test)]
mod tests;
