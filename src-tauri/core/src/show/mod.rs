//! From a throw to what the window shows.
//!
//! Each screen has a module here with its view and the function that makes it from the
//! state and nothing else. Promise: no view changes anything, and every button a view
//! offers carries an action that [`crate::command::decide`] allowed at that moment.

mod again;
mod bench;
mod change;
mod context;
mod cutting;
mod dates;
pub mod drawing;
mod errors;
mod events;
mod export;
mod faces;
mod fields;
mod figures;
mod floor;
mod gather;
mod grids;
mod history;
mod hold;
mod import;
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
pub use bench::{BenchCell, BenchView, PieceCard, Stage, StageKey, Tally};
pub use context::Lens;
pub use cutting::{Drag, Handle, PileCutView};
pub use dates::{Day, date};
pub use errors::{damage, refusal};
pub use export::{
    Hand, HandButton, HandOnView, HandSection, Handed, PrintOrder, PrintPaper, Printing, file_name,
    usual_paper,
};
pub use faces::{Clash, FaceCell, FacesView, SewnLine};
pub use figures::figures;
pub use floor::{CoveringGroup, CoveringLine, CoveringView, FloorCell, FloorView};
pub use gather::{GatherRow, GatherView};
pub use grids::{GridRow, GridWish, GridsView, grids};
pub use history::{HistoryRow, HistoryView};
pub use hold::{HoldRow, HoldView};
pub use import::{
    BringView, ConflictRow, CopyRow, Take, TakeButton, Taken, bring, conflict, unmergeable,
};
pub use layouts::{Arrange, LayoutCard, Layouts, layouts};
pub use lessons::{LessonRow, Lessons, heritage};
pub use measuring::{MeasureView, OutlineTyped};
pub use off::{MishapChoice, OffView, PieceChoice, WayRow};
pub use opening::OpenFirst;
pub use parts::{
    Button, CautionNote, Choice, CompareRow, FieldProblem, Figure, Head, Swatch, head, length,
};
pub use picture::{Ink, InkKey, Mark, Picture};
pub use pile::{HeapPiece, HeapRow, PileView};
pub use plan::{PlanDraft, PlanView, StitchKind, draft, draft_after, draft_of};
pub use query::{Acted, Deed, Look, View};
pub use scraps::{LapColumn, ScrapRow, ScrapTyped, ScrapsView};
pub use sheet::content::Sheet;
pub use sheet::sheet;
pub use shelf::{ShelfRow, ShelfView, Tend, Tended, shelf_row};
pub use start::{Hello, Prefs, Theme};
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
pub fn look(journal: &Journal, look: &Look, lens: Lens<'_>) -> Result<View, Problem> {
    Ok(match look {
        Look::Work { station, batch } => View::Work(work::work(journal, *station, *batch, lens)),
        Look::Bench { chosen } => View::Bench(bench::bench(journal, *chosen, lens)),
        Look::Faces { face } => View::Faces(faces::faces(journal, *face, lens)),
        Look::Wishes { wishes } => View::Wishes(Box::new(wishes::wishes(journal, *wishes, lens))),
        Look::Floor { part } => View::Floor(floor::floor(journal, *part, lens)),
        Look::Covering => View::Covering(floor::covering(journal, lens)),
        Look::Plan { draft } => {
            View::Plan(Box::new(plan::plan_of(journal, draft.as_deref(), lens)))
        }
        Look::Measure {
            piece,
            width,
            height,
        } => View::Measure(measuring::measure(journal, *piece, width, height, lens)?),
        Look::Outline { piece, typed } => {
            View::Measure(measuring::outline(journal, *piece, typed, lens)?)
        }
        Look::Trim => View::Trim(trim::trims(journal, lens)),
        Look::Off { piece, why } => View::Off(off::off(journal, *piece, *why, lens)?),
        Look::Hold { width, height } => View::Hold(hold::hold(journal, width, height, lens)),
        Look::Pile => View::Pile(pile::pile(journal, lens)),
        Look::Cutting {
            n,
            index,
            typed,
            drag,
        } => {
            let seen = cutting::cutting(journal, (*n, *index), typed.as_ref(), *drag, lens)?;
            View::Cutting(Box::new(seen))
        }
        Look::Gather => View::Gather(gather::gather(journal, lens)),
        Look::Scraps { typed } => View::Scraps(scraps::scraps(journal, typed.as_ref(), lens)),
        Look::Whole { width, height } => View::Whole(whole::whole(journal, width, height, lens)),
        Look::HandOn => View::HandOn(export::hand_on(journal, lens)),
        Look::Story { east } => View::Story(story::seen(journal, *east, lens)),
        Look::History { most } => View::History(history::history(journal, *most, lens)),
    })
}

#[cfg(test)]
mod tests;
