//! The queries that the window asks, and the views that answer them.

use crate::cloth::fabric::Face;
use crate::command::Command;
use crate::plan::assembly::{Kind, Rect};
use crate::show::bench::BenchView;
use crate::show::cutting::{Drag, PileCutView};
use crate::show::dates::ZoneName;
use crate::show::export::ExportView;
use crate::show::faces::FacesView;
use crate::show::floor::{CoveringView, FloorView};
use crate::show::gather::GatherView;
use crate::show::history::HistoryView;
use crate::show::hold::HoldView;
use crate::show::measuring::{MeasureView, OutlineTyped};
use crate::show::off::OffView;
use crate::show::parts::Head;
use crate::show::pile::PileView;
use crate::show::plan::{PlanDraft, PlanView};
use crate::show::scraps::{ScrapTyped, ScrapsView};
use crate::show::story::StoryView;
use crate::show::trim::TrimView;
use crate::show::typed::PieceTyped;
use crate::show::whole::WholeView;
use crate::show::wishes::WishesView;
use crate::show::work::WorkView;
use crate::throw::Mishap;
use crate::throw::tasks::{Station, Task};
use crate::throw::wishes::Wishes;
use crate::types::TS;
use crate::words::Problem;
use serde::{Deserialize, Serialize};

/// What the window wants to see.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "see")]
pub enum Query {
    /// The step screen.
    Work {
        /// Only work done there.
        station: Option<Station>,
        /// This batch, not the one that comes first.
        batch: Option<(Task, Kind)>,
    },
    /// The bench.
    Bench {
        /// The piece chosen.
        chosen: Option<Rect>,
    },
    /// A face.
    Faces {
        /// Which.
        face: Face,
    },
    /// How the faces are to look.
    Wishes {
        /// As chosen; none for what was said last.
        wishes: Option<Wishes>,
    },
    /// Some squares of a row of blocks, to lay on the floor.
    Floor {
        /// Which part, from 0.
        part: u32,
    },
    /// What is glued where, by label.
    Covering,
    /// The plan of this throw, or the draft of another.
    Plan {
        /// What is typed; none for the current plan.
        draft: Option<Box<PlanDraft>>,
    },
    /// Measuring a block.
    Measure {
        /// Which.
        piece: Rect,
        /// Width as typed.
        width: String,
        /// Height as typed.
        height: String,
    },
    /// Measuring a block's sides and diagonals.
    Outline {
        /// Which.
        piece: Rect,
        /// As typed.
        typed: OutlineTyped,
    },
    /// Choosing a trim size.
    Trim,
    /// A piece that is off.
    Off {
        /// Which.
        piece: Rect,
        /// What happened to it.
        why: Option<Mishap>,
    },
    /// Laps that hold a wished-for size.
    Hold {
        /// Width as typed.
        width: String,
        /// Height as typed.
        height: String,
    },
    /// The clothes pile.
    Pile,
    /// A piece's outline and where to cut it.
    Cutting {
        /// The heap.
        n: u16,
        /// The piece, counted from 0.
        index: u8,
        /// The outline as typed; none for the one kept.
        typed: Option<PieceTyped>,
        /// A point being dragged.
        drag: Option<Drag>,
    },
    /// What to have at hand.
    Gather,
    /// Needle, stitch and lap, with test scraps.
    Scraps {
        /// As typed; none for the plan's.
        typed: Option<ScrapTyped>,
    },
    /// The whole piece against the plan.
    Whole {
        /// Width as typed.
        width: String,
        /// Height as typed.
        height: String,
    },
    /// History, newest first.
    History {
        /// How many lines at most.
        most: u32,
    },
    /// The exports that are possible.
    HandOn,
    /// The story of its making.
    Story {
        /// The time zone whose days are written.
        zone: ZoneName,
    },
}

/// What the window gets to see.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
#[serde(rename_all = "kebab-case", tag = "seen")]
pub enum View {
    /// The step screen.
    Work(WorkView),
    /// The bench.
    Bench(BenchView),
    /// A face.
    Faces(FacesView),
    /// How the faces are to look.
    Wishes(Box<WishesView>),
    /// Squares on the floor.
    Floor(FloorView),
    /// What is glued where.
    Covering(CoveringView),
    /// The plan.
    Plan(Box<PlanView>),
    /// Measuring.
    Measure(MeasureView),
    /// Trim sizes.
    Trim(TrimView),
    /// A piece that is off.
    Off(OffView),
    /// Laps that hold a size.
    Hold(HoldView),
    /// The whole piece.
    Whole(WholeView),
    /// The clothes pile.
    Pile(PileView),
    /// A piece's outline and its cuts.
    Cutting(Box<PileCutView>),
    /// What to have at hand.
    Gather(GatherView),
    /// Test scraps.
    Scraps(ScrapsView),
    /// History.
    History(HistoryView),
    /// The exports that are possible.
    HandOn(ExportView),
    /// The story of its making.
    Story(StoryView),
}

/// What a screen shows, and how new that is.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ViewAnswer {
    /// Counts what was done since the service was started. Answers may overtake each other:
    /// one with a lower number than another shows the throw as it was before.
    pub revision: u32,
    /// The screen.
    pub view: View,
}

/// The answer to a command that is stored: the throw as it is now, and the updated screen.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct CommandAnswer {
    /// How new it is: see [`LookAnswer`].
    pub revision: u32,
    /// How the throw stands.
    pub head: Head,
    /// The updated screen, if the query asked for it and it can be shown.
    pub view: Option<View>,
    /// Why the screen cannot be shown: its piece no longer exists. The command is stored all the
    /// same.
    pub problem: Option<Problem>,
}

/// Something done to a throw.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "request")]
pub enum Request {
    /// An action.
    Act {
        /// Which.
        action: Command,
    },
    /// Take the last back.
    Undo,
    /// Do the last taken back again.
    Redo,
}
