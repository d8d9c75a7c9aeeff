//! Plans of throws not yet begun, and lengths as they are typed.

use super::{Service, Snapshot};
use lapwork_core::show;
use lapwork_core::show::{DraftAfter, GridWish, GridsView, PlanDraft, PlanView};
use lapwork_core::throw::Time;
use lapwork_core::words::Problem;

impl Service {
    /// The plan of a throw not yet begun.
    pub fn draft(&self, draft: &PlanDraft, now: Time) -> PlanView {
        show::draft(draft, self.context(now))
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
        Ok(self.after(after, now)?.draft_after(draft, after))
    }

    /// A snapshot of the older throw that a throw is made after.
    ///
    /// # Errors
    /// The [`Problem`] to show instead.
    pub fn after(&mut self, after: &DraftAfter, now: Time) -> Result<Snapshot, Problem> {
        self.snapshot(&after.id, now)
    }

    /// Grids near a wish.
    pub fn grids(&self, draft: &PlanDraft, wish: &GridWish, now: Time) -> GridsView {
        show::grids(draft, wish, self.context(now))
    }

    /// A typed length, in nanometres, as an action takes it.
    ///
    /// # Errors
    /// The [`Problem`] with what was typed.
    pub fn length(&self, typed: &str, now: Time) -> Result<i64, Problem> {
        show::length(typed, self.context(now))
    }
}
