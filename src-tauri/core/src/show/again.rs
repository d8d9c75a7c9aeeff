//! A throw about to be made again after an older one.

use crate::cloth::fabric::{Denim, Print};
use crate::log::journal::Journal;
use crate::log::lessons::heritage;
use crate::plan::{Joining, Plan};
use crate::show::context::Context;
use crate::show::lessons::{Lessons, view};
use crate::show::plan::{PlanDraft, draft_of};
use crate::types::TS;
use serde::{Deserialize, Serialize};

/// A throw about to be made again.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct AgainView {
    /// A name to begin with.
    pub name: String,
    /// The plan as typed fields.
    pub draft: PlanDraft,
    /// The fabrics.
    pub prints: Vec<Print>,
    /// The denims.
    pub denims: Vec<Denim>,
    /// What was learned.
    pub lessons: Option<Lessons>,
}

/// What a throw not yet begun takes its faces from, and the cloth it is to have.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct DraftAfter {
    /// The older throw.
    pub id: String,
    /// The fabrics.
    pub prints: Vec<Print>,
    /// The denims.
    pub denims: Vec<Denim>,
}

/// The longest name a throw may have leaves room for the words round it.
const ROOM: usize = 60;

/// A throw about to be made again: its plan, its cloth, and what it taught.
///
/// Stock is left uncounted, since the older throw has used it.
pub fn again(journal: &Journal, context: Context<'_>) -> AgainView {
    let throw = journal.throw();
    let name: String = throw.name.chars().take(ROOM).collect();
    // A size larger than its own lap leaves cannot be had from new fours.
    let trim = throw.plan.trim.filter(|t| *t <= throw.plan.natural_four());
    // A throw begun now has this step, whether or not the older one had it.
    let plan = Plan {
        trim,
        trim_edge: true,
        // So are its seams counted with their stitching.
        stitch_in_seam: throw.plan.joining != Joining::Lapped,
        ..throw.plan
    };
    AgainView {
        name: say!(context, "again-name", name = name),
        draft: draft_of(&plan, context),
        prints: throw
            .prints
            .iter()
            .map(|p| Print {
                stock: None,
                uncut: p.uncut,
                patch: None,
                // The photo lies beside the throw it was chosen for.
                photo: None,
                ..p.clone()
            })
            .collect(),
        denims: throw.denims.clone(),
        lessons: view(&heritage(journal), context),
    }
}
