//! Plans of throws not yet begun, and lengths as they are typed.

use super::Service;
use lapwork_core::show;
use lapwork_core::show::{DraftAfter, GridWish, GridsView, PlanDraft, PlanView};
use lapwork_core::throw::Time;
use lapwork_core::words::Problem;

impl Service {
    /// The plan of a throw not yet begun.
    pub fn draft(&self, draft: &PlanDraft, now: Time) -> PlanView {
        show::draft(draft, self.lens(now))
    }

    /// The plan of a throw not yet begun that is made after an older one, whose faces it
    /// takes.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn draft_after(
        &mut self,
        draft: &PlanDraft,
        after: &DraftAfter,
        now: Time,
    ) -> Result<PlanView, Problem> {
        self.with(&after.id, now, |journal, lens| {
            let cloth = (after.prints.as_slice(), after.denims.as_slice());
            Ok(show::draft_after(journal.throw(), cloth, draft, lens))
        })
    }

    /// Grids near a wish.
    pub fn grids(&self, draft: &PlanDraft, wish: &GridWish, now: Time) -> GridsView {
        show::grids(draft, wish, self.lens(now))
    }

    /// A typed length, in nanometres, as an action takes it.
    ///
    /// # Errors
    /// The [`Problem`] with what was typed.
    pub fn length(&self, typed: &str, now: Time) -> Result<i64, Problem> {
        show::length(typed, self.lens(now))
    }
}
