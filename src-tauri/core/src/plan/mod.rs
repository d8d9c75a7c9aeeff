//! What the maker plans to make: the squares, the lap, the grid, the stitch.
//!
//! A [`Plan`] is the maker's wish, not the state of the bench; what is already
//! sewn is kept in [`crate::throw`]. With `s` the cut side, `o` the lap, `a` the seam
//! allowance and `w` how wide the stitching is, a join *takes up*
//!
//! * `o` when the edges are lapped,
//! * `2a + w` when they are seamed right sides together, or wrong sides together
//!   with the raw edges showing: the middle of the stitching runs `a` from the raw edges, and
//!   the pieces open at the row farthest from these, `a + w/2` from them on either piece;
//!
//! so with `t` for that take-up, a run of `n` squares is `n·s − (n−1)·t` long,
//! a pair is `2s − t` by `s`, a four is `2s − t` square, and the outer edges keep
//! what they have. (Plain arithmetic.)
//!
//! [`fringe`] says how much cloth stays free of the stitching.
//!
//! Limits: grids from 1 × 1 to 60 × 60; sides from 25 mm to 1 m.
//!
//! ```
//! use lapwork_core::measure::{inches, half_inches};
//! use lapwork_core::plan::Plan;
//!
//! // Squares of 5 in lapped by ½ in: 6 × 8 come to 27½ × 36½ in, a four to 9½ in.
//! let plan = Plan { side: inches(5), lap: half_inches(1), across: 6, down: 8, ..Plan::default() };
//! assert_eq!(plan.finished(), (half_inches(55), half_inches(73)));
//! assert_eq!(plan.natural_four(), half_inches(19));
//! ```

pub mod assembly;
pub mod binding;
mod fringe;
pub mod grids;
pub mod scraps;

pub use fringe::{fringe, rows};

use crate::measure::{Length, System, eighth_inches, half_inches, inches, millimetres, nm, zero};
use crate::types::TS;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Between a patch and the lap next to it, ⅛ in: both are laid by eye (our judgement, no source).
pub fn patch_clear() -> Length {
    eighth_inches(1)
}

/// The smallest patch that is worth stitching round, 1 in (our judgement, no source).
pub fn least_patch() -> Length {
    inches(1)
}

/// Most squares across or down.
pub const MOST: u16 = 60;
/// Shortest side that may be planned, 25 mm.
pub fn shortest_side() -> Length {
    nm(25_000_000)
}
/// Longest side that may be planned, 1 m.
pub fn longest_side() -> Length {
    nm(1_000_000_000)
}

/// How long a stitch is where no other length is set, in millimetres (on denim; common practice,
/// no source).
pub const USUAL_STITCH_MM: i64 = 3;
/// Shortest stitch that may be set, 0.5 mm.
pub fn shortest_stitch() -> Length {
    nm(500_000)
}
/// Longest stitch that may be set, 12 mm.
pub fn longest_stitch() -> Length {
    nm(12_000_000)
}

/// How two edges are held together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Joining {
    /// Raw edge over raw edge, stitched down the middle.
    Lapped,
    /// Right sides together, the allowances hidden inside.
    Seamed,
    /// Wrong sides together, the allowances standing out to fray.
    Exposed,
}

/// The line of stitching down a join.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "kind")]
pub enum Stitch {
    /// One straight row of lockstitch (ISO 4915 type 301).
    Straight,
    /// A twin needle: two rows above, a zigzag of bobbin thread beneath.
    Twin {
        /// Distance between the needles, in nanometres.
        spacing: Length,
    },
    /// Two straight rows of lockstitch with a single needle, one after the other.
    TwoRows {
        /// Distance from the first row to the second, in nanometres.
        spacing: Length,
    },
    /// Zigzag lockstitch (ISO 4915 type 304), or another stitch of that width.
    Zigzag {
        /// Full width of the stitch, in nanometres.
        width: Length,
    },
}

impl Stitch {
    /// How wide the stitching is across the join.
    pub fn width(self) -> Length {
        match self {
            Stitch::Straight => zero(),
            Stitch::Twin { spacing } | Stitch::TwoRows { spacing } => spacing,
            Stitch::Zigzag { width } => width,
        }
    }

    /// How often a join goes through the machine.
    pub fn passes(self) -> u32 {
        match self {
            Stitch::TwoRows { .. } => 2,
            Stitch::Straight | Stitch::Twin { .. } | Stitch::Zigzag { .. } => 1,
        }
    }
}

/// The order in which finished blocks are joined to one another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum JoinOrder {
    /// Blocks into rows across, then row to row.
    Rows,
    /// Blocks into columns down, then column to column.
    Columns,
    /// Two and two into ever larger blocks, turn about across and down.
    Doubling,
}

/// The folded strip round the outside.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Binding {
    /// Cut width of the strip; what shows of it on each face is [`crate::cloth::bound`].
    pub strip: Length,
    /// The longest strip the cloth gives.
    pub longest: Length,
    /// Extra length to finish with.
    pub tail: Length,
}

/// What is to be made. Lengths are whole nanometres.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Plan {
    /// Side of a square as cut.
    pub side: Length,
    /// The lap, or the seam allowance where the joining is a seam.
    pub lap: Length,
    /// The lap (or allowance) where blocks are joined to one another, if not the same.
    pub between: Option<Length>,
    /// Squares across.
    pub across: u16,
    /// Squares down.
    pub down: u16,
    /// How edges are held together.
    pub joining: Joining,
    /// The stitching down a join.
    pub stitch: Stitch,
    /// How long a stitch is; where it is not said, [`USUAL_STITCH_MM`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[ts(optional)]
    pub stitch_length: Option<Length>,
    /// Least fringe the maker trusts to hold (3 mm; common practice, no source).
    pub least_fringe: Length,
    /// Side the fours are trimmed to, where the maker has settled on one.
    pub trim: Option<Length>,
    /// The order of the larger joins.
    pub order: JoinOrder,
    /// The strip round the outside.
    pub binding: Binding,
    /// A seam takes up the width of its stitching besides its allowances. It is said of seams alone;
    /// where it is not said of them, a throw was begun without that width and keeps its sizes.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[ts(as = "Option<bool>", optional)]
    pub stitch_in_seam: bool,
    /// Pressing and trimming the whole edge is a step before the binding. Where it is not said, the
    /// binding begins without it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[ts(as = "Option<bool>", optional)]
    pub trim_edge: bool,
    /// Minutes a pressed piece is left to cool (5; common practice, no source).
    pub cooling_minutes: u16,
    /// How many first washes with clipping of threads (3; common practice, no source).
    pub washes: u8,
}

impl Default for Plan {
    /// Five-inch squares lapped ½ in, 6 × 8, 4 mm twin needle: common practice, no source.
    fn default() -> Self {
        Plan {
            side: inches(5),
            lap: half_inches(1),
            between: None,
            across: 6,
            down: 8,
            joining: Joining::Lapped,
            stitch: Stitch::Twin {
                spacing: nm(4_000_000),
            },
            stitch_length: None,
            least_fringe: nm(3_000_000),
            trim: None,
            order: JoinOrder::Rows,
            binding: Binding {
                strip: inches(1),
                longest: inches(28),
                tail: inches(4),
            },
            stitch_in_seam: false,
            trim_edge: true,
            cooling_minutes: 5,
            washes: 3,
        }
    }
}

impl Plan {
    /// What a new throw begins with, in whole measures of this system: the usual plan, or in
    /// metric 125 mm squares lapped 12 mm and a 25 mm strip. Common practice, no source.
    pub fn usual(system: System) -> Plan {
        match system {
            System::Inch => Plan::default(),
            System::Metric => Plan {
                side: millimetres(125),
                lap: millimetres(12),
                binding: Binding {
                    strip: millimetres(25),
                    longest: millimetres(700),
                    tail: millimetres(100),
                },
                ..Plan::default()
            },
        }
    }
}

/// A part of the plan that cannot be as it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum PlanFault {
    /// Side outside 25 mm to 1 m.
    #[error("the side of a square is not between 25 mm and 1 m")]
    Side,
    /// A grid side outside 1 to 60.
    #[error("the grid is not between 1 and {MOST} squares each way")]
    Grid,
    /// The lap (or both allowances) is half the side or more.
    #[error("the lap is nothing, or half the side or more")]
    Lap,
    /// The same, where blocks are joined to one another.
    #[error("the lap between blocks is nothing, or half the side or more")]
    Between,
    /// The stitching is wider than the lap or the two allowances.
    #[error("the stitching is wider than the lap")]
    StitchTooWide,
    /// The stitch length is not between 0.5 and 12 mm.
    #[error("the stitch length is not between 0.5 and 12 mm")]
    StitchLength,
    /// The trim size is larger than a four can be, or under the cut side.
    #[error("the trim size is not between the cut side and twice that")]
    Trim,
    /// The binding strip is under 10 mm or wider than a square, or its pieces are too short.
    #[error("the binding strip is too narrow, too wide or too short")]
    Binding,
    /// Washes over 9 or cooling over 240 minutes.
    #[error("more than 9 washes or 240 minutes of cooling")]
    Counts,
}

/// A doubt the maker should hear, which forbids nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Advice {
    /// The fringe is under the least the maker trusts: the thread works out in time.
    FringeShort {
        /// The fringe each side.
        fringe: Length,
        /// The narrowest lap (or allowance) that leaves the least fringe.
        enough: Length,
    },
    /// The least fringe asked for is more than any lap (or allowance) of these squares leaves.
    FringeBeyond {
        /// The least fringe asked for.
        least: Length,
        /// What the widest lap that a square has room for leaves no more than.
        most: Length,
    },
    /// Odd count across or down: a column or row of pairs is left over.
    OddGrid,
    /// A twin needle takes two spools, strikes the plate if set wide, and fixes the stitching side.
    TwinNeedle {
        /// The needle spacing.
        spacing: Length,
    },
    /// The trim size is larger than a four comes out with this lap.
    TrimBeyond {
        /// The trim size.
        trim: Length,
        /// What an untrimmed four measures.
        natural: Length,
    },
    /// A twin needle in a plain seam: its two rows hold the allowances together, so that the seam
    /// cannot be pressed open, and its stitches show where the seam is pulled (common practice, no
    /// source).
    TwinHidden,
    /// Squares wanted smaller than the lap allows comfortably: a third or more is lapped away.
    LapLarge,
}

impl Plan {
    /// What one join takes up of the two pieces: `o`, or `2a + w`.
    pub fn take(&self) -> Length {
        self.take_of(self.joining, self.lap, self.stitch)
    }

    /// What a join of this kind takes up.
    pub fn take_of(&self, joining: Joining, lap: Length, stitch: Stitch) -> Length {
        lap * laps_in(joining) + self.beside(joining, stitch)
    }

    /// What a join takes up besides its lap or its allowances: on a seam all of the stitching's
    /// width, half of it on either piece.
    pub fn beside(&self, joining: Joining, stitch: Stitch) -> Length {
        match joining {
            Joining::Seamed | Joining::Exposed if self.stitch_in_seam => stitch.width(),
            _ => zero(),
        }
    }

    /// The same plan with its edges held together so. A seam that comes in place of laps takes up
    /// the width of its stitching.
    #[must_use]
    pub fn joined(self, joining: Joining) -> Plan {
        let counted = self.stitch_in_seam || self.joining == Joining::Lapped;
        Plan {
            joining,
            stitch_in_seam: counted && joining != Joining::Lapped,
            ..self
        }
    }

    /// The lap (or allowance) where blocks are joined to one another.
    pub fn lap_between(&self) -> Length {
        self.between.unwrap_or(self.lap)
    }

    /// What a join between blocks takes up.
    pub fn take_between(&self) -> Length {
        self.take_of(self.joining, self.lap_between(), self.stitch)
    }

    /// How long a stitch is.
    pub fn stitch_long(&self) -> Length {
        self.stitch_length.unwrap_or(millimetres(USUAL_STITCH_MM))
    }

    /// Length of `n` squares in a row: `n·s − (n−1)·t`.
    pub fn run(&self, n: u16) -> Length {
        let n = i64::from(n);
        self.side * n - self.take() * (n - 1).max(0)
    }

    /// The side of an untrimmed four, `2s − t`.
    pub fn natural_four(&self) -> Length {
        self.run(2)
    }

    /// The side the fours are to be trimmed to.
    pub fn target(&self) -> Length {
        self.trim.unwrap_or(self.natural_four())
    }

    /// The largest patch that lies in the middle of a square clear of every lap: on each side there
    /// is room for the wider lap, for what squaring up takes off, which may all come off one side,
    /// and for [`patch_clear`].
    pub fn most_patch(&self) -> Length {
        let off = std::cmp::max(self.natural_four() - self.target(), zero());
        let lap = std::cmp::max(self.lap, self.lap_between());
        let lap = lap + self.beside(self.joining, self.stitch) / 2;
        self.side - (lap + off + patch_clear()) * 2
    }

    /// The side of fabric that is laid on a square when it is sewn in: as large as lies clear of every
    /// lap. None where too little of it would be left to be stitched round.
    pub fn laid_on(&self) -> Option<Length> {
        Some(self.most_patch()).filter(|side| *side >= least_patch())
    }

    /// Denim that shows round a patch of this side, before laps are laid over it.
    pub fn round(&self, patch: Length) -> Length {
        (self.side - patch) / 2
    }

    /// Length of `squares` squares as blocks: `B·T + odd·s − (joins)·t`, where `t` is
    /// what a join between blocks takes up.
    pub fn blocks(&self, squares: u16) -> Length {
        let (fours, odd) = (i64::from(squares / 2), i64::from(squares % 2));
        self.target() * fours + self.side * odd - self.take_between() * (fours + odd - 1).max(0)
    }

    /// Width and height of the joined piece, before the binding folds over its edge.
    pub fn finished(&self) -> (Length, Length) {
        (self.blocks(self.across), self.blocks(self.down))
    }

    /// How many squares the grid takes.
    pub fn squares(&self) -> u32 {
        u32::from(self.across) * u32::from(self.down)
    }

    /// Strip length and count for binding something of this size.
    ///
    /// The strip is as long as the outline and a tail; `n` strips of length `L`
    /// lapped by `t` give `n·L − (n−1)·t`, so the count is the least `n` that reaches.
    pub fn binding_for(&self, width: Length, height: Length) -> BindingNeed {
        let length = (width + height) * 2 + self.binding.tail;
        let (longest, take) = (self.binding.longest, self.take());
        let each = crate::measure::in_nm(longest - take).max(1);
        let rest = crate::measure::in_nm(length - longest).max(0);
        let strips = 1 + (rest + each - 1) / each;
        let strips = u32::try_from(strips).unwrap_or(u32::MAX);
        BindingNeed {
            length,
            strips,
            joins: strips - 1,
        }
    }

    /// What stands in the way of making this plan.
    ///
    /// # Errors
    /// The first [`PlanFault`] found, in the order the maker fills the form.
    pub fn check(&self) -> Result<(), PlanFault> {
        let within = |n: u16| (1..=MOST).contains(&n);
        if self.side < shortest_side() || self.side > longest_side() {
            return Err(PlanFault::Side);
        }
        if !within(self.across) || !within(self.down) {
            return Err(PlanFault::Grid);
        }
        let laid = |lap| lap * laps_in(self.joining);
        if self.lap <= zero() || laid(self.lap) * 2 >= self.side {
            return Err(PlanFault::Lap);
        }
        if self.lap_between() <= zero() || laid(self.lap_between()) * 2 >= self.side {
            return Err(PlanFault::Between);
        }
        let narrowest = laid(std::cmp::min(self.lap, self.lap_between()));
        if self.stitch.width() > narrowest || self.stitch.width() < zero() {
            return Err(PlanFault::StitchTooWide);
        }
        if !(shortest_stitch()..=longest_stitch()).contains(&self.stitch_long()) {
            return Err(PlanFault::StitchLength);
        }
        if self.least_fringe < zero() || self.least_fringe > self.side {
            return Err(PlanFault::Lap);
        }
        if self
            .trim
            .is_some_and(|t| t <= self.side || t > self.side * 2)
        {
            return Err(PlanFault::Trim);
        }
        let b = &self.binding;
        if b.strip < nm(10_000_000)
            || b.strip > self.side
            || b.tail < zero()
            || b.tail > longest_side()
        {
            return Err(PlanFault::Binding);
        }
        if b.longest <= laid(self.lap) * 2 || b.longest > nm(50_000_000_000) {
            return Err(PlanFault::Binding);
        }
        if self.washes > 9 || self.cooling_minutes > 240 {
            return Err(PlanFault::Counts);
        }
        Ok(())
    }

    /// What the maker should hear about this plan.
    pub fn advice(&self) -> Vec<Advice> {
        let mut out = Vec::new();
        let narrowest = std::cmp::min(self.lap, self.lap_between());
        let left = self.fringe_at(narrowest);
        if let Some(left) = left.filter(|left| *left < self.least_fringe) {
            let enough = self.narrowest_lap();
            // Twice what a join takes up has to leave something of the square.
            let widest = self.side / (laps_in(self.joining) * 2);
            out.push(match self.fringe_at(widest).filter(|_| enough >= widest) {
                Some(most) => Advice::FringeBeyond {
                    least: self.least_fringe,
                    most,
                },
                None => Advice::FringeShort {
                    fringe: left,
                    enough,
                },
            });
        }
        let natural = self.natural_four();
        if let Some(trim) = self.trim.filter(|trim| *trim > natural) {
            out.push(Advice::TrimBeyond { trim, natural });
        }
        if self.take() * 3 >= self.side {
            out.push(Advice::LapLarge);
        }
        if let Stitch::Twin { spacing } = self.stitch {
            out.push(Advice::TwinNeedle { spacing });
            if self.joining == Joining::Seamed {
                out.push(Advice::TwinHidden);
            }
        }
        if (self.across % 2 == 1 && self.across > 1) || (self.down % 2 == 1 && self.down > 1) {
            out.push(Advice::OddGrid);
        }
        out
    }
}

/// How many laps or allowances lie in one join.
pub fn laps_in(joining: Joining) -> i64 {
    match joining {
        Joining::Lapped => 1,
        Joining::Seamed | Joining::Exposed => 2,
    }
}

/// How much binding the outline takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BindingNeed {
    /// Whole length of strip.
    pub length: Length,
    /// Strips to cut.
    pub strips: u32,
    /// Joins between them.
    pub joins: u32,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{eighth_inches, half_inches, inches, quarter_inches, tenths_of_mm};
    use proptest::prelude::*;

    #[test]
    fn what_a_new_throw_begins_with_can_be_made_and_is_whole_in_its_own_system() {
        use crate::measure::{MetricUnit, Ruler};
        assert_eq!(Plan::usual(System::Inch), Plan::default());
        for system in [System::Inch, System::Metric] {
            let plan = Plan::usual(system);
            assert_eq!(plan.check(), Ok(()));
            assert_eq!(plan.advice(), Plan::default().advice());
            let ruler = Ruler {
                system,
                metric: MetricUnit::Mm,
                ..Ruler::default()
            };
            for length in [
                plan.side,
                plan.lap,
                plan.target(),
                plan.finished().0,
                plan.binding.strip,
                plan.binding.longest,
                plan.binding.tail,
            ] {
                assert_eq!(ruler.nearest(length), length, "{length:?}");
            }
        }
    }

    #[test]
    fn seams_take_two_allowances_and_leave_the_outer_edges() {
        let plan = Plan {
            joining: Joining::Seamed,
            lap: quarter_inches(1),
            ..Plan::default()
        };
        let straight = |plan| Plan {
            stitch: Stitch::Straight,
            ..plan
        };
        // Two 5 in squares with 1/4 in allowances: 9 1/2 in, the outer allowances still there.
        assert_eq!(straight(plan).run(2), half_inches(19));
        assert_eq!(plan.fringe(), None);
        let exposed = Plan {
            joining: Joining::Exposed,
            lap: half_inches(1),
            ..Plan::default()
        };
        assert_eq!(straight(exposed).run(2), inches(9));
        assert_eq!(exposed.fringe(), Some(nm(10_700_000)));
    }

    /// By a drawing: two squares of 127 mm with their edges together, and two rows 4 mm apart about
    /// a line 12.7 mm from the edges.
    ///
    /// ```text
    /// raw edges                                     far edge
    /// |   fringe    row    row                         |
    /// |--- 10.7 ---|-- 4 --|----------- 112.3 ---------|
    /// |------- 12.7 ---|   ^ opened out, each square begins here
    /// ```
    ///
    /// So a pair is 2 · 112.3 mm, 224.6 mm. Each of five joins across takes 14.7 mm of either
    /// square, 6 · 127 − 5 · 29.4 = 615 mm, and each of seven down, 8 · 127 − 7 · 29.4 = 810.2 mm.
    /// With one row it would be 635 and 838.2 mm: 20 and 28 mm more.
    #[test]
    fn a_seam_opens_at_the_row_farthest_from_its_raw_edges() {
        for joining in [Joining::Seamed, Joining::Exposed] {
            let spacing = tenths_of_mm(40);
            for stitch in [
                Stitch::Twin { spacing },
                Stitch::TwoRows { spacing },
                Stitch::Zigzag { width: spacing },
            ] {
                let plan = Plan {
                    stitch,
                    ..Plan::default().joined(joining)
                };
                assert_eq!(plan.natural_four(), tenths_of_mm(2246));
                let size = (tenths_of_mm(6150), tenths_of_mm(8102));
                assert_eq!(plan.finished(), size);
                // Asked for that size, the grid is found and told with it.
                let grid = grids::for_size(&plan, size.0, size.1, 1)[0];
                assert_eq!((grid.across, grid.down, grid.size), (6, 8, size));
                let straight = Plan {
                    stitch: Stitch::Straight,
                    ..plan
                };
                let size = (tenths_of_mm(6350), tenths_of_mm(8382));
                assert_eq!(straight.finished(), size);
                // A throw begun before that was counted keeps its sizes, whatever its stitch.
                let older = Plan {
                    stitch_in_seam: false,
                    ..plan
                };
                assert_eq!(older.finished(), size);
            }
        }
    }

    /// Plans that could be made before stitching counted in a seam can be made still: the two
    /// allowances are under half the side (2 · 30 mm of 127 mm), with the stitching they are over it.
    #[test]
    fn a_wide_stitch_forbids_no_allowance_that_was_allowed() {
        let plan = Plan {
            lap: millimetres(30),
            binding: Binding {
                longest: millimetres(121),
                ..Plan::default().binding
            },
            ..Plan::default().joined(Joining::Exposed)
        };
        assert_eq!(plan.check(), Ok(()));
        assert!(plan.take() * 2 > plan.side);
        assert_eq!(plan.blocks(2), millimetres(190));
        let wide = |mm| Plan {
            stitch: Stitch::Zigzag {
                width: millimetres(mm),
            },
            ..plan
        };
        // Stitching as wide as both allowances runs off the edge of neither.
        assert_eq!(wide(60).check(), Ok(()));
        assert_eq!(wide(61).check(), Err(PlanFault::StitchTooWide));
    }

    /// What is joined by seams instead of laps counts the stitching; an older throw's seams do not.
    #[test]
    fn seams_that_come_in_place_of_laps_count_their_stitching() {
        let lapped = Plan::default();
        assert!(!lapped.stitch_in_seam);
        let seamed = lapped.joined(Joining::Exposed);
        assert!(seamed.stitch_in_seam && seamed.joined(Joining::Seamed).stitch_in_seam);
        assert_eq!(seamed.joined(Joining::Lapped), lapped);
        let older = Plan {
            joining: Joining::Exposed,
            ..lapped
        };
        assert_eq!(older.joined(Joining::Exposed), older);
        assert!(!older.joined(Joining::Seamed).stitch_in_seam);
        let said = |plan: &Plan| {
            serde_json::to_string(plan)
                .unwrap()
                .contains("stitch_in_seam")
        };
        assert!(said(&seamed) && !said(&lapped) && !said(&older));
    }

    #[test]
    fn a_twin_needle_in_a_hidden_seam_is_doubted() {
        let told = |joining, stitch| {
            let plan = Plan {
                joining,
                stitch,
                ..Plan::default()
            };
            plan.advice().contains(&Advice::TwinHidden)
        };
        let spacing = tenths_of_mm(40);
        assert!(told(Joining::Seamed, Stitch::Twin { spacing }));
        for stitch in [Stitch::Straight, Stitch::TwoRows { spacing }] {
            assert!(!told(Joining::Seamed, stitch));
        }
        for joining in [Joining::Lapped, Joining::Exposed] {
            assert!(!told(joining, Stitch::Twin { spacing }));
        }
    }

    #[test]
    fn a_short_fringe_is_doubted_and_the_cure_is_named() {
        let plan = Plan {
            lap: quarter_inches(1),
            ..Plan::default()
        };
        assert!(plan.advice().contains(&Advice::FringeShort {
            fringe: nm(1_175_000),
            enough: tenths_of_mm(100),
        }));
        assert!(
            !Plan::default()
                .advice()
                .iter()
                .any(|a| matches!(a, Advice::FringeShort { .. }))
        );
    }

    /// Squares of 5 in are lapped by less than 2½ in: less 4 mm of stitching, 59.5 mm for two edges.
    #[test]
    fn a_fringe_that_no_lap_leaves_is_told() {
        let plan = |joining, least_fringe| Plan {
            joining,
            least_fringe,
            ..Plan::default()
        };
        let beyond = |most| Advice::FringeBeyond {
            least: inches(2),
            most,
        };
        let told = |plan: Plan, advice| plan.advice().contains(&advice);
        assert!(told(
            plan(Joining::Lapped, inches(2)),
            beyond(nm(29_750_000))
        ));
        // Two allowances: each less than 1¼ in, 2 mm of it inside the stitching.
        assert!(told(
            plan(Joining::Exposed, inches(2)),
            beyond(nm(29_750_000))
        ));
        let short = |least, enough| {
            let fringe = nm(4_350_000);
            told(
                plan(Joining::Lapped, least),
                Advice::FringeShort { fringe, enough },
            )
        };
        assert!(short(nm(29_749_000), nm(63_498_000)));
        assert!(!short(nm(29_750_000), nm(63_500_000)));
    }

    #[test]
    fn plans_that_cannot_be() {
        let check = |plan: Plan, want| assert_eq!(plan.check(), want);
        let good = Plan::default();
        check(good, Ok(()));
        check(
            Plan {
                side: eighth_inches(1),
                ..good
            },
            Err(PlanFault::Side),
        );
        check(Plan { across: 0, ..good }, Err(PlanFault::Grid));
        check(Plan { down: 61, ..good }, Err(PlanFault::Grid));
        check(
            Plan {
                lap: half_inches(5),
                ..good
            },
            Err(PlanFault::Lap),
        );
        check(
            Plan {
                lap: zero(),
                ..good
            },
            Err(PlanFault::Lap),
        );
        check(
            Plan {
                lap: eighth_inches(1),
                ..good
            },
            Err(PlanFault::StitchTooWide),
        );
        for (tenths, want) in [
            (4, Err(PlanFault::StitchLength)),
            (5, Ok(())),
            (120, Ok(())),
            (121, Err(PlanFault::StitchLength)),
        ] {
            let stitch_length = Some(tenths_of_mm(tenths));
            check(
                Plan {
                    stitch_length,
                    ..good
                },
                want,
            );
        }
        check(
            Plan {
                trim: Some(inches(11)),
                ..good
            },
            Err(PlanFault::Trim),
        );
    }

    /// Each limit as the documents state it, on it and just beyond it.
    #[test]
    fn limits_of_a_plan() {
        let good = Plan::default();
        let mm = |mm: i64| nm(mm * 1_000_000);
        let bound = |change: &dyn Fn(&mut Binding)| {
            let mut plan = good;
            change(&mut plan.binding);
            plan
        };
        // Squares of 25 mm to 1 m.
        let small = Plan {
            side: mm(25),
            lap: mm(10),
            stitch: Stitch::Straight,
            ..bound(&|b| b.strip = mm(10))
        };
        let side = |plan: Plan, side| Plan { side, ..plan };
        // Both laps under half the side; the fringe from nothing to the side.
        let between = |lap| Plan {
            between: Some(lap),
            ..good
        };
        let fringe = |least_fringe| Plan {
            least_fringe,
            ..good
        };
        let trim = |trim| Plan {
            trim: Some(trim),
            ..good
        };
        let counts = |washes, cooling_minutes| Plan {
            washes,
            cooling_minutes,
            ..good
        };
        let most = [inches(5), mm(1000), mm(50_000)];
        for (plan, want) in [
            (small, Ok(())),
            (side(small, mm(25) - nm(1)), Err(PlanFault::Side)),
            (side(good, mm(1000)), Ok(())),
            (side(good, mm(1000) + nm(1)), Err(PlanFault::Side)),
            (between(half_inches(5) - nm(1)), Ok(())),
            (between(half_inches(5)), Err(PlanFault::Between)),
            (between(zero()), Err(PlanFault::Between)),
            (fringe(zero()), Ok(())),
            (fringe(nm(-1)), Err(PlanFault::Lap)),
            (fringe(inches(5)), Ok(())),
            (fringe(inches(5) + nm(1)), Err(PlanFault::Lap)),
            (trim(inches(5)), Err(PlanFault::Trim)),
            (trim(inches(10)), Ok(())),
            (trim(inches(10) + nm(1)), Err(PlanFault::Trim)),
            (bound(&|b| b.strip = mm(10)), Ok(())),
            (
                bound(&|b| b.strip = mm(10) - nm(1)),
                Err(PlanFault::Binding),
            ),
            (bound(&|b| b.strip = most[0]), Ok(())),
            (
                bound(&|b| b.strip = most[0] + nm(1)),
                Err(PlanFault::Binding),
            ),
            (bound(&|b| b.tail = zero()), Ok(())),
            (bound(&|b| b.tail = nm(-1)), Err(PlanFault::Binding)),
            (bound(&|b| b.tail = most[1]), Ok(())),
            (
                bound(&|b| b.tail = most[1] + nm(1)),
                Err(PlanFault::Binding),
            ),
            // Longer than two laps of ½ in.
            (bound(&|b| b.longest = inches(1)), Err(PlanFault::Binding)),
            (bound(&|b| b.longest = inches(1) + nm(1)), Ok(())),
            (bound(&|b| b.longest = most[2]), Ok(())),
            (
                bound(&|b| b.longest = most[2] + nm(1)),
                Err(PlanFault::Binding),
            ),
            (counts(9, 240), Ok(())),
            (counts(10, 240), Err(PlanFault::Counts)),
            (counts(9, 241), Err(PlanFault::Counts)),
        ] {
            assert_eq!(plan.check(), want, "{plan:?}");
        }
    }

    /// By hand: of 5 in the wider lap and 1/8 in go off on either side, and what squaring up may
    /// take off one side: ½ in, from 9½ to 9 in.
    #[test]
    fn a_patch_lies_clear_of_the_wider_lap() {
        let plan = |lap, between| Plan {
            lap,
            between: Some(between),
            ..Plan::default()
        };
        let (half, more) = (half_inches(1), quarter_inches(3));
        assert_eq!(plan(half, more).most_patch(), quarter_inches(13));
        assert_eq!(plan(more, half).most_patch(), quarter_inches(13));
        let trimmed = Plan {
            trim: Some(inches(9)),
            ..plan(half, half)
        };
        assert_eq!(trimmed.most_patch(), quarter_inches(11));
    }

    /// What a new throw begins with is as large in millimetres as in inches, to 6 in 100: ½ in are 12.7 mm, and
    /// 12 is a whole measure.
    #[test]
    fn a_usual_plan_is_as_large_in_either_system() {
        let lengths = |system| {
            let plan = Plan::usual(system);
            let Binding {
                strip,
                longest,
                tail,
            } = plan.binding;
            [plan.side, plan.lap, strip, longest, tail]
        };
        let both = lengths(System::Inch)
            .into_iter()
            .zip(lengths(System::Metric));
        for (inch, metric) in both {
            let share = crate::measure::in_mm(metric) / crate::measure::in_mm(inch);
            assert!((share - 1.0).abs() < 0.06, "{inch} and {metric}");
        }
    }

    #[test]
    fn what_a_maker_hears_about_a_plan() {
        let of = |plan: Plan| {
            let mut told = plan.advice();
            told.retain(|a| !matches!(a, Advice::TwinNeedle { .. }));
            told
        };
        // A row or column of squares alone is no row left over.
        for (across, down, odd) in [
            (6, 8, false),
            (7, 8, true),
            (6, 9, true),
            (7, 9, true),
            (1, 8, false),
            (6, 1, false),
            (4, 10, false),
            (10, 4, false),
            (5, 8, true),
            (6, 5, true),
        ] {
            let plan = Plan {
                across,
                down,
                ..Plan::default()
            };
            assert_eq!(of(plan) == [Advice::OddGrid], odd, "{across} × {down}");
        }
        // Fours of 5 in squares lapped ½ in measure 9½ in: nothing beyond that can be trimmed to.
        let trim = |trim| Plan {
            trim: Some(trim),
            ..Plan::default()
        };
        let (natural, more) = (half_inches(19), half_inches(20));
        assert_eq!(of(trim(natural)), []);
        assert_eq!(
            of(trim(more)),
            [Advice::TrimBeyond {
                trim: more,
                natural
            }]
        );
        // A third of 6 in is 2 in.
        let lap = |lap| Plan {
            side: inches(6),
            lap,
            ..Plan::default()
        };
        assert_eq!(of(lap(inches(2))), [Advice::LapLarge]);
        assert_eq!(of(lap(inches(2) - nm(1))), []);
        // The narrower of two laps is the one that frays: ¼ in less 4 mm leaves 1.175 mm on each side.
        let between = Plan {
            between: Some(quarter_inches(1)),
            ..Plan::default()
        };
        assert_eq!(
            of(between),
            [Advice::FringeShort {
                fringe: nm(1_175_000),
                enough: tenths_of_mm(100)
            }]
        );
        // 10 mm less 4 mm leave just 3 mm on each side, as much as is asked for.
        let least = Plan {
            between: Some(tenths_of_mm(100)),
            ..Plan::default()
        };
        assert_eq!(of(least), []);
    }

    #[test]
    fn binding_strips_reach_round() {
        let plan = Plan::default();
        let (w, h) = plan.finished();
        let need = plan.binding_for(w, h);
        // 2·(27½ + 36½) + 4 = 132 in; 28 in strips lapped ½ in: 28, 55½, 83, 110½, 138.
        assert_eq!(
            need,
            BindingNeed {
                length: inches(132),
                strips: 5,
                joins: 4
            }
        );
    }

    proptest! {
        #[test]
        fn untrimmed_blocks_are_as_long_as_the_run(n in 1u16..=60, side in 1600i64..20_000, lap in 10i64..700) {
            let plan = Plan { side: tenths_of_mm(side / 2), lap: tenths_of_mm(lap.min(side / 5)), across: n, ..Plan::default() };
            prop_assert_eq!(plan.blocks(n), plan.run(n));
        }

        #[test]
        fn the_narrowest_lap_leaves_exactly_the_least_fringe(w in 0i64..90, f in 0i64..120, exposed in any::<bool>()) {
            let joining = if exposed { Joining::Exposed } else { Joining::Lapped };
            let plan = Plan { joining, stitch: Stitch::Twin { spacing: tenths_of_mm(w) }, least_fringe: tenths_of_mm(f), ..Plan::default() };
            prop_assert_eq!(fringe(joining, plan.narrowest_lap(), plan.stitch), Some(plan.least_fringe));
        }

        #[test]
        fn binding_count_is_the_least_that_reaches(w in 1000i64..30_000, h in 1000i64..30_000) {
            let plan = Plan::default();
            let need = plan.binding_for(tenths_of_mm(w), tenths_of_mm(h));
            let reach = |n: i64| plan.binding.longest * n - plan.take() * (n - 1);
            prop_assert!(reach(i64::from(need.strips)) >= need.length);
            prop_assert!(need.strips == 1 || reach(i64::from(need.strips) - 1) < need.length);
        }
    }
}
