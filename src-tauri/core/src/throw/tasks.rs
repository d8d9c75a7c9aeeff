//! The kinds of work, where each is done, and what each piece goes through.
//!
//! Every piece (see [`crate::plan::assembly`]) has a straight list of tasks:
//!
//! * a square: cut; where it is pieced of two halves, these are lapped and dotted with glue,
//!   pressed, left to cool and stitched; the fabric for it cut, where that is cloth still; a fabric glued on the front or the back where the faces ask
//!   for it; then pressed and left to cool; a patch on a square that is sewn in is
//!   stitched round, since none of the laps holds its edges;
//! * a lapped join: lapped and dotted with glue, pressed, left to cool, stitched;
//! * a seam: pinned, stitched, pressed;
//! * a block, besides: pressed flat and squared up, once more where the trim size has
//!   become smaller since and it is not joined yet;
//! * the whole, besides: its edge pressed and trimmed even, where the plan has that step, then the
//!   binding and the washes; before those the allowances of exposed seams are snipped, since that
//!   is what makes them fray.
//!
//! A piece may be started once all its parts have been through theirs.

use crate::cloth::fabric::{Cover, Face};
use crate::plan::{Joining, Plan};
use crate::types::TS;
use serde::{Deserialize, Serialize};

/// One kind of work done to one piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Task {
    /// Cut a square.
    Cut,
    /// Lap two halves of a square and hold them with dots of glue.
    LapHalves,
    /// Press the lap of two halves.
    PressHalves,
    /// Leave the lap of two halves to cool.
    CoolHalves,
    /// Stitch two halves into a square.
    StitchHalves,
    /// Cut the fabric squares for a square.
    CutFabric,
    /// Glue a fabric square on the front.
    CoverFront,
    /// Glue a fabric square on the back.
    CoverBack,
    /// Press a covered square.
    PressCover,
    /// Leave a covered square to cool.
    CoolCover,
    /// Stitch round a fabric glued over damage on a square that is sewn in.
    StitchPatch,
    /// Lap two edges and hold them with dots of glue.
    Dot,
    /// Press a glued lap.
    PressLap,
    /// Leave a pressed lap to cool.
    CoolLap,
    /// Lay two edges together and pin them.
    Pin,
    /// Stitch the join.
    Stitch,
    /// Press a stitched seam.
    PressSeam,
    /// Press a block flat.
    PressBlock,
    /// Square a block up.
    SquareUp,
    /// Press the whole edge and trim it even.
    TrimEdge,
    /// Cut the binding strips.
    CutBinding,
    /// Join the strips into one.
    JoinBinding,
    /// Fold the strip lengthwise and press it.
    PressBinding,
    /// Fold it over the edge and hold it with dots of glue.
    GlueBinding,
    /// Stitch it down.
    StitchBinding,
    /// Snip the allowances of exposed seams, so that they fray.
    Snip,
    /// Wash and dry.
    Wash,
    /// Clip the long threads.
    Clip,
}

/// Where work is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Station {
    /// The cutting table.
    Table,
    /// The iron, and the board pieces cool on.
    Iron,
    /// The sewing machine.
    Machine,
    /// The wash.
    Wash,
}

/// The usual caution at a task.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Caution {
    /// Rotary cutter.
    Blade,
    /// Hot iron, steam on glue.
    Iron,
    /// Both, one after the other.
    BladeAndIron,
    /// Needle strikes: metal, thick crossings, a twin needle set wide.
    Needle,
    /// Lint burns.
    Lint,
    /// Long fringe and small children.
    Children,
}

impl Caution {
    /// Its name in the language files.
    pub fn key(self) -> &'static str {
        match self {
            Caution::Blade => "blade",
            Caution::Iron => "iron",
            Caution::BladeAndIron => "blade-and-iron",
            Caution::Needle => "needle",
            Caution::Lint => "lint",
            Caution::Children => "children",
        }
    }
}

impl Task {
    /// All of them, in the order work usually goes.
    pub const ALL: [Task; 28] = [
        Task::Cut,
        Task::LapHalves,
        Task::PressHalves,
        Task::CoolHalves,
        Task::StitchHalves,
        Task::CutFabric,
        Task::CoverFront,
        Task::CoverBack,
        Task::PressCover,
        Task::CoolCover,
        Task::StitchPatch,
        Task::Dot,
        Task::PressLap,
        Task::CoolLap,
        Task::Pin,
        Task::Stitch,
        Task::PressSeam,
        Task::PressBlock,
        Task::SquareUp,
        Task::TrimEdge,
        Task::CutBinding,
        Task::JoinBinding,
        Task::PressBinding,
        Task::GlueBinding,
        Task::StitchBinding,
        Task::Snip,
        Task::Wash,
        Task::Clip,
    ];

    /// Where it is done.
    pub fn station(self) -> Station {
        match self {
            Task::Cut
            | Task::LapHalves
            | Task::CutFabric
            | Task::CoverFront
            | Task::CoverBack
            | Task::Dot
            | Task::Pin
            | Task::SquareUp
            | Task::TrimEdge
            | Task::CutBinding
            | Task::GlueBinding
            | Task::Snip
            | Task::Clip => Station::Table,
            Task::PressHalves
            | Task::CoolHalves
            | Task::PressCover
            | Task::CoolCover
            | Task::PressLap
            | Task::CoolLap
            | Task::PressSeam
            | Task::PressBlock
            | Task::PressBinding => Station::Iron,
            Task::StitchHalves
            | Task::StitchPatch
            | Task::Stitch
            | Task::JoinBinding
            | Task::StitchBinding => Station::Machine,
            Task::Wash => Station::Wash,
        }
    }

    /// Minutes this usually takes for one piece: a rough estimate of ours, no source.
    pub fn usual_minutes(self) -> f64 {
        match self {
            Task::CoolHalves | Task::CoolCover | Task::CoolLap => 0.0,
            Task::PressHalves | Task::PressCover | Task::PressLap | Task::PressSeam => 0.5,
            Task::Cut | Task::CutFabric | Task::PressBlock => 1.0,
            Task::CoverFront | Task::CoverBack | Task::Pin => 1.5,
            Task::StitchPatch => 3.0,
            Task::LapHalves | Task::StitchHalves => 2.0,
            Task::Dot | Task::Stitch | Task::SquareUp => 2.0,
            Task::CutBinding | Task::JoinBinding | Task::PressBinding => 15.0,
            Task::GlueBinding | Task::StitchBinding | Task::Snip => 30.0,
            Task::TrimEdge | Task::Wash | Task::Clip => 20.0,
        }
    }

    /// Whether it lays the binding on the edge.
    pub(super) fn binds(self) -> bool {
        matches!(self, Task::GlueBinding | Task::StitchBinding)
    }

    /// Whether it is done to the edge of the whole, or to all of it, once it is joined.
    pub(super) fn finishes(self) -> bool {
        self.binds()
            || matches!(
                self,
                Task::TrimEdge
                    | Task::CutBinding
                    | Task::JoinBinding
                    | Task::PressBinding
                    | Task::Snip
                    | Task::Wash
                    | Task::Clip
            )
    }

    /// Whether it is done to the throw as a whole, of which no seam may be open.
    pub(super) fn takes_a_whole_throw(self) -> bool {
        matches!(
            self,
            Task::TrimEdge
                | Task::GlueBinding
                | Task::StitchBinding
                | Task::Snip
                | Task::Wash
                | Task::Clip
        )
    }

    /// Whether the work is to wait, not to do.
    pub fn is_cooling(self) -> bool {
        matches!(self, Task::CoolHalves | Task::CoolCover | Task::CoolLap)
    }

    /// The caution that belongs to it.
    pub fn caution(self) -> Option<Caution> {
        match self {
            Task::Cut | Task::CutFabric | Task::SquareUp | Task::CutBinding => Some(Caution::Blade),
            Task::TrimEdge => Some(Caution::BladeAndIron),
            Task::PressHalves
            | Task::PressCover
            | Task::PressLap
            | Task::PressSeam
            | Task::PressBlock
            | Task::PressBinding
            | Task::GlueBinding => Some(Caution::Iron),
            Task::StitchHalves
            | Task::StitchPatch
            | Task::Stitch
            | Task::JoinBinding
            | Task::StitchBinding => Some(Caution::Needle),
            Task::Wash => Some(Caution::Lint),
            Task::Clip => Some(Caution::Children),
            _ => None,
        }
    }

    /// The name of this task in the language files, the same as in the throw file.
    pub fn key(self) -> &'static str {
        match self {
            Task::Cut => "cut",
            Task::LapHalves => "lap-halves",
            Task::PressHalves => "press-halves",
            Task::CoolHalves => "cool-halves",
            Task::StitchHalves => "stitch-halves",
            Task::CutFabric => "cut-fabric",
            Task::CoverFront => "cover-front",
            Task::CoverBack => "cover-back",
            Task::PressCover => "press-cover",
            Task::CoolCover => "cool-cover",
            Task::StitchPatch => "stitch-patch",
            Task::Dot => "dot",
            Task::PressLap => "press-lap",
            Task::CoolLap => "cool-lap",
            Task::Pin => "pin",
            Task::Stitch => "stitch",
            Task::PressSeam => "press-seam",
            Task::PressBlock => "press-block",
            Task::SquareUp => "square-up",
            Task::TrimEdge => "trim-edge",
            Task::CutBinding => "cut-binding",
            Task::JoinBinding => "join-binding",
            Task::PressBinding => "press-binding",
            Task::GlueBinding => "glue-binding",
            Task::StitchBinding => "stitch-binding",
            Task::Snip => "snip",
            Task::Wash => "wash",
            Task::Clip => "clip",
        }
    }
}

impl Station {
    /// All four.
    pub const ALL: [Station; 4] = [
        Station::Table,
        Station::Iron,
        Station::Machine,
        Station::Wash,
    ];

    /// Its name in the language files.
    pub fn key(self) -> &'static str {
        match self {
            Station::Table => "table",
            Station::Iron => "iron",
            Station::Machine => "machine",
            Station::Wash => "wash",
        }
    }
}

/// The tasks that are done in one sitting, beginning with this one: a lap that is glued is pressed
/// at once and left to cool.
pub fn sitting(task: Task, joining: Joining) -> &'static [Task] {
    match (task, joining) {
        (Task::Dot, Joining::Lapped) => &[Task::Dot, Task::PressLap],
        (Task::LapHalves, _) => &[Task::LapHalves, Task::PressHalves],
        _ => &[],
    }
}

/// A square's tasks, given what its faces ask for, whether it is pieced of halves and whether
/// fabric for it is to be cut.
pub fn for_square(cover: &Cover, pieced: bool, cut_fabric: bool, out: &mut Vec<Task>) {
    out.push(Task::Cut);
    if pieced {
        out.extend(HALVES);
    }
    if cut_fabric {
        out.push(Task::CutFabric);
    }
    if cover.front.is_some() {
        out.push(Task::CoverFront);
    }
    if cover.back.is_some() {
        out.push(Task::CoverBack);
    }
    if cover.layers() > 1 {
        out.extend([Task::PressCover, Task::CoolCover]);
    }
}

/// What is done to the halves of a pieced square before it is used.
pub const HALVES: [Task; 4] = [
    Task::LapHalves,
    Task::PressHalves,
    Task::CoolHalves,
    Task::StitchHalves,
];

/// A join's tasks.
pub fn for_join(joining: Joining, out: &mut Vec<Task>) {
    match joining {
        Joining::Lapped => out.extend([Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch]),
        Joining::Seamed | Joining::Exposed => {
            out.extend([Task::Pin, Task::Stitch, Task::PressSeam])
        }
    }
}

/// A block's further tasks.
pub fn for_block(out: &mut Vec<Task>) {
    out.extend([Task::PressBlock, Task::SquareUp]);
}

/// What of the last tasks depends on how far the work is.
#[derive(Debug, Clone, Copy)]
pub struct LastTasks {
    /// Strips of the binding.
    pub strips: u32,
    /// The edge is trimmed, unless it was bound without.
    pub trimmed: bool,
    /// Allowances are snipped, unless it was washed without.
    pub snipped: bool,
}

/// The last tasks of the whole.
pub fn for_whole(plan: &Plan, exposed: bool, last: LastTasks, out: &mut Vec<Task>) {
    let LastTasks {
        strips,
        trimmed,
        snipped,
    } = last;
    if trimmed && plan.trim_edge {
        out.push(Task::TrimEdge);
    }
    out.push(Task::CutBinding);
    if strips > 1 {
        out.push(Task::JoinBinding);
    }
    out.extend([Task::PressBinding, Task::GlueBinding, Task::StitchBinding]);
    if snipped && exposed {
        out.push(Task::Snip);
    }
    for _ in 0..plan.washes {
        out.extend([Task::Wash, Task::Clip]);
    }
}

/// The task that glues a fabric on a face.
pub fn cover_task(face: Face) -> Task {
    match face {
        Face::Front => Task::CoverFront,
        Face::Back => Task::CoverBack,
    }
}

/// The face that a task glues a fabric on.
pub fn covered_face(task: Task) -> Option<Face> {
    Face::BOTH
        .into_iter()
        .find(|face| cover_task(*face) == task)
}

/// Whether a task is done to a square once its fabrics are glued on.
pub(super) fn presses_cover(task: Task) -> bool {
    matches!(task, Task::PressCover | Task::CoolCover)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_the_names_in_the_file() {
        for task in Task::ALL {
            assert_eq!(
                serde_json::to_string(&task).unwrap(),
                format!("\"{}\"", task.key())
            );
        }
        for station in Station::ALL {
            assert_eq!(
                serde_json::to_string(&station).unwrap(),
                format!("\"{}\"", station.key())
            );
        }
    }

    #[test]
    fn only_covered_squares_are_pressed_and_cooled() {
        let list = |front, back, cut_fabric| {
            let mut out = Vec::new();
            for_square(
                &Cover {
                    front,
                    back,
                    ..Cover::default()
                },
                false,
                cut_fabric,
                &mut out,
            );
            out
        };
        assert_eq!(list(None, None, false), [Task::Cut]);
        assert_eq!(
            list(Some(0), None, true)[..3],
            [Task::Cut, Task::CutFabric, Task::CoverFront]
        );
        assert_eq!(
            list(Some(0), Some(1), false),
            [
                Task::Cut,
                Task::CoverFront,
                Task::CoverBack,
                Task::PressCover,
                Task::CoolCover
            ]
        );
    }

    /// By hand: the edge is trimmed where the plan has it so and it was not bound yet; one strip has no
    /// other to be joined to; only allowances that stand out are snipped, unless they were washed.
    #[test]
    fn the_last_tasks_by_hand() {
        let tasks = |joining, trim_edge, washes, last| {
            let plan = Plan {
                joining,
                trim_edge,
                washes,
                ..Plan::default()
            };
            let mut out = Vec::new();
            for_whole(&plan, joining == Joining::Exposed, last, &mut out);
            out
        };
        let last = |strips, trimmed, snipped| LastTasks {
            strips,
            trimmed,
            snipped,
        };
        let bound = [
            Task::CutBinding,
            Task::PressBinding,
            Task::GlueBinding,
            Task::StitchBinding,
        ];
        let lapped = Joining::Lapped;
        for (trim_edge, trimmed) in [(false, false), (false, true), (true, false)] {
            assert_eq!(tasks(lapped, trim_edge, 0, last(1, trimmed, true)), bound);
        }
        let all = tasks(lapped, true, 2, last(2, true, true));
        let (trim, join) = (Task::TrimEdge, Task::JoinBinding);
        let [cut, press, glue, stitch] = bound;
        let (wash, clip) = (Task::Wash, Task::Clip);
        let whole = [trim, cut, join, press, glue, stitch, wash, clip, wash, clip];
        assert_eq!(all, whole);
        let exposed = |snipped| tasks(Joining::Exposed, false, 1, last(1, false, snipped));
        let snipped = [cut, press, glue, stitch, Task::Snip, wash, clip];
        assert_eq!(exposed(true), snipped);
        assert_eq!(exposed(false), [cut, press, glue, stitch, wash, clip]);
        let seamed = tasks(Joining::Seamed, false, 1, last(1, false, true));
        assert_eq!(seamed, exposed(false));
    }
}
