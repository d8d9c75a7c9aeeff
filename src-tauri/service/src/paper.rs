//! The content of a printed throw, with its days in the system's time zone.

use crate::photos::{PAPER_SIDE, SWATCH_SIDE};
use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::log::journal::{FormatError, Journal};
use lapwork_core::measure::Ruler;
use lapwork_core::show::{self, Context, PrintOrder, Sheet};
use lapwork_core::throw::Time;
use lapwork_core::words::Words;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What goes on paper, by the days of where the order was given.
pub fn sheet(journal: &Journal, context: Context<'_>, order: &PrintOrder) -> Sheet {
    if order.blank && !order.card {
        return show::sheet::handout(journal, context, order.units);
    }
    let calendar = order.zone.calendar();
    let sheet = show::sheet(journal, context, order.units, &|at| calendar.day(at));
    match order.story && !order.card {
        true => sheet.with_story(journal, &order.zone, context),
        false => sheet,
    }
}

/// The photos a sheet shows, each once, and how long the longer side of each is on paper, in points.
/// One of a fabric is small; where it is in the story too, it is as large as the story wants it.
pub fn photos(sheet: &Sheet) -> BTreeMap<PhotoId, u32> {
    let swatches = sheet.swatches.iter().map(|name| (name, SWATCH_SIDE));
    let story = sheet.photos.iter().map(|name| (name, PAPER_SIDE));
    let all = swatches.chain(story);
    all.map(|(name, side)| (name.clone(), side)).collect()
}

/// All that a sheet is made from, so that it can be made elsewhere.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PrintJob {
    /// The throw's record, as its file holds it.
    pub record: String,
    /// The code of the language it is printed in.
    pub language: String,
    /// The ruler it is measured with.
    pub ruler: Ruler,
    /// When it was ordered.
    pub now: Time,
    /// How it is to be printed.
    pub order: PrintOrder,
}

impl PrintJob {
    /// What goes on paper.
    ///
    /// # Errors
    /// That the record cannot be read.
    pub fn sheet(&self) -> Result<Sheet, FormatError> {
        let journal = Journal::read(self.record.as_bytes())?.journal;
        let context = Context {
            words: &Words::of(&self.language),
            ruler: self.ruler,
            now: self.now,
        };
        Ok(sheet(&journal, context, &self.order))
    }
}
