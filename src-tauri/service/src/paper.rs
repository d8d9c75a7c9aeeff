//! The content of a printed throw, with its days in the system's time zone.

use lapwork_core::log::journal::Journal;
use lapwork_core::show::{self, Context, PrintOrder, Sheet};

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
