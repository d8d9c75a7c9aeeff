//! Thread and glue for a throw: how much, how many spools and bobbins.
//!
//! # Thread by the geometry of the stitch
//!
//! `T` is the thickness sewn through, `L` the stitch length, `S = 1/L` the stitches per
//! unit length, `w` the full width of a zigzag, `d` the needle spacing of a twin needle.
//! Each thread runs along the seam once and shares the way through the cloth with the
//! other, so per length of seam, in a balanced stitch (ISO 4915 names the types):
//!
//! * 301 lockstitch: needle `1 + T·S`, bobbin `1 + T·S`, together `C = 2 + 2·T·S`. (Textbook
//!   formula, as at textilecalculations.com, "sewing thread consumption"; T = 0.01 in
//!   and S = 10 per in give 2.2.)
//! * two rows of 301 with a single needle: each row for itself, so per length of join needle
//!   and bobbin each `2·(1 + T·S)`, from one spool and one bobbin.
//! * 304 zigzag lockstitch: each stitch runs `√(L² + w²)` across, so needle and bobbin
//!   each `√(1 + (w·S)²) + T·S`. (From the stitch's geometry, arithmetic; a fancy stitch of
//!   that width that goes back over itself takes more.)
//! * twin needle: each of two needle threads `1 + T·S`. The hook catches both loops in the same
//!   stitch, so that the one bobbin thread crosses from loop to loop and then runs on to the
//!   next stitch:
//!
//!   ```text
//!   |\  |\  |\      left row    d across, then √(L² + d²) on to the next stitch,
//!   | \ | \ | \                 and twice through half the cloth and back
//!   |  \|  \|  \    right row
//!   ```
//!
//!   `d + √(L² + d²) + 2·T` a stitch, so `d·S + √(1 + (d·S)²) + 2·T·S`. (From the stitch's
//!   geometry, arithmetic; an estimate that errs on having enough, because a loose bobbin
//!   thread may cut the corner.)
//!
//! # The rule, and why it is higher
//!
//! Thread makers' guides estimate 2.5 of thread per length of 301 seam (220 cm → 550 cm)
//! for every cloth. Geometry treats the thread as a line with no thickness and no
//! slack: on thin cloth it gives little over 2. The rule covers the thread's own bending
//! about the other, loose tension, and moderately thick seams. Where `T·S` is a quarter
//! the two results agree; on denim laps (2 mm, 3 mm stitches: 2 + 2·⅔ = 3.3) geometry is higher,
//! and there the rule falls short. Both are shown ([`Need::rule`]), and the spools are
//! counted from geometry and waste. Of two rows of 301 the rule says twice as much. For other
//! stitches than 301 it says nothing.
//!
//! Waste, for tails, breaks and tests: 10–15 % (apparelscience.com); 15 % is the default
//! here, since the seams of a throw are short.
//!
//! # Seams
//!
//! [`seams`] adds up every join of the plan as it is made: two squares along a side, two
//! pairs along a pair, and so on, where laps are sewn across; and the binding once
//! round. Promises: exact in nanometres, and for a plan that passes its own check nothing
//! overflows. Limits: nothing for basting, backstitching or ripping out.
//!
//! # Glue
//!
//! Dots of a fixed volume lie at a fixed spacing along every lap. **The volume of a dot, 0.05 ml,
//! one every 2 in, and a bottle of 118 ml are our estimate, no source**; a maker who counts her
//! dots can correct them.
//!
//! ```
//! use lapwork_core::cloth::weight::thick;
//! use lapwork_core::measure::tenths_of_mm;
//! use lapwork_core::plan::Stitch;
//! use lapwork_core::cloth::thread::ratio;
//!
//! // 2 mm of cloth in stitches of 3 mm: 2 + 2 · ⅔ of thread per length of seam.
//! let thread = ratio(Stitch::Straight, tenths_of_mm(30), thick(2.0)).unwrap();
//! assert!((thread.total() - (2.0 + 4.0 / 3.0)).abs() < 1e-9);
//! ```

use crate::cloth::weight::{Cloth, Thickness, in_mm_thick};
use crate::measure::{Length, in_mm, in_nm, nm, zero};
use crate::plan::assembly::{Assembly, Join, Rect, Seam};
use crate::plan::{Plan, Stitch, longest_stitch, shortest_stitch};
use thiserror::Error;

/// Thread per length of 301 seam by the rule of thread makers' guides.
pub const RULE: f64 = 2.5;
/// Default share of waste (10–15 %: apparelscience.com).
pub const WASTE: f64 = 0.15;

/// Thread per length of seam, as plain ratios.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ratio {
    /// Of each needle thread.
    pub needle: f64,
    /// How many needle threads: two for a twin needle, on two spools.
    pub needles: u32,
    /// Of the bobbin thread.
    pub bobbin: f64,
}

impl Ratio {
    /// All threads together.
    pub fn total(self) -> f64 {
        self.needle * f64::from(self.needles) + self.bobbin
    }
}

/// Thread per length of seam for `stitch` of length `length` through `thickness`;
/// `None` where there is no stitch length or a thickness below nothing.
pub fn ratio(stitch: Stitch, length: Length, thickness: Thickness) -> Option<Ratio> {
    let (long, deep) = (in_mm(length), in_mm_thick(thickness));
    if long <= 0.0 || !deep.is_finite() || deep < 0.0 {
        return None;
    }
    let depth = deep / long;
    let across = |wide: Length| (1.0 + (in_mm(wide) / long).powi(2)).sqrt() + depth;
    let along = 1.0 + depth;
    let (needle, needles, bobbin) = match stitch {
        Stitch::Straight => (along, 1, along),
        Stitch::TwoRows { .. } => (along * 2.0, 1, along * 2.0),
        Stitch::Zigzag { width } => (across(width), 1, across(width)),
        Stitch::Twin { spacing } => {
            let from_loop_to_loop = in_mm(spacing) / long + depth;
            (along, 2, from_loop_to_loop + across(spacing))
        }
    };
    Some(Ratio {
        needle,
        needles,
        bobbin,
    })
}

/// Length of stitching in a throw.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Seams {
    /// All joins between squares, pairs and blocks.
    pub joins: Length,
    /// Once round the binding, with the joins of its strips.
    pub binding: Length,
}

impl Seams {
    /// Together.
    pub fn total(self) -> Length {
        self.joins + self.binding
    }
}

/// Every seam of a plan that passes its check.
pub fn seams(plan: &Plan) -> Seams {
    let assembly = Assembly::new(plan.across, plan.down, plan.order);
    // Within a block the natural sizes count, since a block is trimmed after it is sewn.
    let long = |join: &Join| {
        let Rect { cols, rows, .. } = join.whole;
        let squares = match join.seam {
            Seam::Upright => rows,
            Seam::Level => cols,
        };
        if cols <= 2 && rows <= 2 {
            plan.run(squares)
        } else {
            plan.blocks(squares)
        }
    };
    let joins = assembly.joins().iter().map(long).fold(zero(), |a, b| a + b);
    let (width, height) = plan.finished();
    let need = plan.binding_for(width, height);
    let binding = (width + height) * 2 + plan.binding.strip * i64::from(need.joins);
    Seams { joins, binding }
}

/// What the thread is wound on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Winding {
    /// Thread on a spool.
    pub spool: Length,
    /// Thread on a full bobbin.
    pub bobbin: Length,
    /// Share added for waste.
    pub waste: f64,
}

impl Default for Winding {
    /// A spool of 200 m, a bobbin of 40 m (from memory, for thread about as thick as denim
    /// asks; wind one and measure), 15 % waste.
    fn default() -> Self {
        Winding {
            spool: nm(200_000_000_000),
            bobbin: nm(40_000_000_000),
            waste: WASTE,
        }
    }
}

/// Why the thread cannot be computed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum ThreadFault {
    /// A stitch length outside 0.5 to 12 mm.
    #[error("the stitch length is not between 0.5 and 12 mm")]
    StitchLength,
    /// A spool or bobbin with under 1 m.
    #[error("less than 1 m on a spool or bobbin")]
    Winding,
    /// Waste below nothing or over 100 %.
    #[error("the waste is not between 0 and 100 %")]
    Waste,
    /// A thickness that cannot be.
    #[error("no such thickness")]
    Thickness,
}

/// Thread for a throw, waste included but in `rule`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Need {
    /// Length of seam.
    pub seam: Length,
    /// Thread for each needle.
    pub needle: Length,
    /// Of this, what only one of several needles takes.
    pub alone: Length,
    /// Needle threads.
    pub needles: u32,
    /// Thread from the bobbin.
    pub bobbin: Length,
    /// Thread per length of seam by geometry, without waste.
    pub ratio: f64,
    /// What the 2.5 rule says without waste, for straight rows of 301; none for other stitches.
    pub rule: Option<Length>,
    /// Spools for the needles: at least one for each.
    pub spools: u32,
    /// Bobbins to wind.
    pub bobbins: u32,
    /// Spools for needles and bobbins together, the bobbins wound off further spools or
    /// off what the needles leave.
    pub spools_in_all: u32,
}

impl Need {
    /// Needle and bobbin threads together.
    pub fn total(&self) -> Length {
        let others = i64::from(self.needles.saturating_sub(1));
        let others = in_nm(self.needle - self.alone).saturating_mul(others);
        let needles = in_nm(self.needle).saturating_add(others);
        nm(needles.saturating_add(in_nm(self.bobbin)))
    }

    /// This and what further stitching with as many needles takes.
    pub fn with(&self, more: &Need, winding: Winding) -> Need {
        self.plus(more, winding, zero())
    }

    /// This and what further stitching with one needle takes: its thread comes off the spool of
    /// the first needle.
    pub fn and(&self, more: &Need, winding: Winding) -> Need {
        self.plus(more, winding, more.needle)
    }

    /// This and further stitching, of which the first needle alone takes so much.
    fn plus(&self, more: &Need, winding: Winding, alone: Length) -> Need {
        if in_nm(more.seam) == 0 {
            return *self;
        }
        let seam = self.seam + more.seam;
        let length = |need: &Need| in_nm(need.seam) as f64 * need.ratio;
        let sum = Need {
            seam,
            needle: self.needle + more.needle,
            alone: self.alone + alone,
            bobbin: self.bobbin + more.bobbin,
            ratio: (length(self) + length(more)) / in_nm(seam) as f64,
            rule: self.rule.zip(more.rule).map(|(a, b)| a + b),
            ..*self
        };
        let others = full(sum.needle - sum.alone, winding.spool);
        let others = others.saturating_mul(sum.needles.saturating_sub(1));
        let spools = full(sum.needle, winding.spool).saturating_add(others);
        Need {
            spools,
            bobbins: full(sum.bobbin, winding.bobbin),
            spools_in_all: spools.max(full(sum.total(), winding.spool)),
            ..sum
        }
    }
}

/// Mean thickness of a lap: two squares, each of denim and its share of `covers` fabrics.
pub fn lap_thickness(plan: &Plan, covers: u32, denim: &Cloth, fabric: &Cloth) -> Thickness {
    let share = f64::from(covers) / f64::from(plan.squares().max(1));
    (denim.thickness + fabric.thickness * share) * 2.0
}

/// Full spools or bobbins that hold so much thread.
fn full(thread: Length, on: Length) -> u32 {
    let count = in_nm(thread) / in_nm(on) + i64::from(in_nm(thread) % in_nm(on) > 0);
    u32::try_from(count).unwrap_or(u32::MAX)
}

/// Thread for `seam` through `thickness`.
///
/// # Errors
/// A [`ThreadFault`] naming the figure that cannot be.
pub fn need(
    seam: Length,
    stitch: Stitch,
    stitch_length: Length,
    thickness: Thickness,
    winding: Winding,
) -> Result<Need, ThreadFault> {
    if !(shortest_stitch()..=longest_stitch()).contains(&stitch_length) {
        return Err(ThreadFault::StitchLength);
    }
    let one = nm(1_000_000_000);
    if winding.spool < one || winding.bobbin < one {
        return Err(ThreadFault::Winding);
    }
    if !(0.0..=1.0).contains(&winding.waste) {
        return Err(ThreadFault::Waste);
    }
    let thin = in_mm_thick(thickness) <= 100.0;
    let ratio = ratio(stitch, stitch_length, thickness).filter(|_| thin);
    let ratio = ratio.ok_or(ThreadFault::Thickness)?;
    let seam = nm(in_nm(seam).max(0));
    let times = |by: f64| nm((in_nm(seam) as f64 * by).ceil() as i64);
    let (needle, bobbin) = (
        times(ratio.needle * (1.0 + winding.waste)),
        times(ratio.bobbin * (1.0 + winding.waste)),
    );
    let spools = full(needle, winding.spool).saturating_mul(ratio.needles);
    // In floating point: three threads of an endless seam do not fit an i64.
    let all = in_nm(needle) as f64 * f64::from(ratio.needles) + in_nm(bobbin) as f64;
    let all = (all / in_nm(winding.spool) as f64).ceil() as u32;
    Ok(Need {
        seam,
        needle,
        alone: zero(),
        needles: ratio.needles,
        bobbin,
        ratio: ratio.total(),
        rule: matches!(stitch, Stitch::Straight | Stitch::TwoRows { .. })
            .then(|| times(RULE * f64::from(stitch.passes()))),
        spools,
        bobbins: full(bobbin, winding.bobbin),
        spools_in_all: spools.max(all),
    })
}

/// Thread for a whole throw, `covers` fabric squares on it: the joins in the plan's stitch, the
/// binding in one straight row through both halves of its strip and the edge between them, since a
/// twin needle cannot turn its corners.
///
/// # Errors
/// A [`ThreadFault`] naming the figure that cannot be.
pub fn for_throw(
    plan: &Plan,
    covers: u32,
    [denim, fabric]: [&Cloth; 2],
    winding: Winding,
) -> Result<Need, ThreadFault> {
    let thickness = lap_thickness(plan, covers, denim, fabric);
    let (seams, long) = (seams(plan), plan.stitch_long());
    let joins = need(seams.joins, plan.stitch, long, thickness, winding)?;
    let bound = thickness * 0.5 + denim.thickness * 2.0;
    let binding = need(seams.binding, Stitch::Straight, long, bound, winding)?;
    Ok(joins.and(&binding, winding))
}

/// Thread for the laps of so many squares that are pieced of two halves, each as long as a square,
/// through two layers of denim: their fabric is glued on later.
///
/// # Errors
/// A [`ThreadFault`] naming the figure that cannot be.
pub fn for_halves(
    plan: &Plan,
    pieced: u32,
    denim: &Cloth,
    winding: Winding,
) -> Result<Need, ThreadFault> {
    need(
        plan.side * i64::from(pieced),
        plan.stitch,
        plan.stitch_long(),
        denim.thickness * 2.0,
        winding,
    )
}

/// How glue is put on. The default is our estimate, no source.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gluing {
    /// From dot to dot.
    pub spacing: Length,
    /// Millilitres in a dot.
    pub dot_ml: f64,
    /// Millilitres in a bottle.
    pub bottle_ml: f64,
}

impl Default for Gluing {
    fn default() -> Self {
        Gluing {
            spacing: nm(50_800_000),
            dot_ml: 0.05,
            bottle_ml: 118.0,
        }
    }
}

/// Glue for a length of lap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Glue {
    /// Dots.
    pub dots: u32,
    /// Millilitres, our estimate.
    pub ml: f64,
    /// Bottles, our estimate; none where a bottle holds nothing.
    pub bottles: Option<u32>,
}

/// Dots under a fabric square: at its corners and in its middle. Common practice, no source.
const COVER_DOTS: u32 = 5;

/// Dots for `seam`, one at each end and one every `spacing`, and for so many fabric squares.
pub fn glue(seam: Length, squares: u32, how: Gluing) -> Glue {
    let spacing = in_nm(how.spacing).max(1_000_000);
    let dots = match in_nm(seam) {
        long if long > 0 => u32::try_from(long / spacing).map_or(u32::MAX, |d| d.saturating_add(1)),
        _ => 0,
    };
    let dots = dots.saturating_add(squares.saturating_mul(COVER_DOTS));
    let ml = f64::from(dots) * how.dot_ml.max(0.0);
    let bottles = (how.bottle_ml > 0.0).then(|| (ml / how.bottle_ml).ceil() as u32);
    Glue { dots, ml, bottles }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::weight::thick;
    use crate::measure::{inches, quarter_inches, tenths_of_mm};
    use crate::plan::JoinOrder;
    use proptest::prelude::*;

    #[test]
    fn a_zigzag_of_no_width_is_a_straight_stitch() {
        let flat = Stitch::Zigzag { width: zero() };
        let one = ratio(Stitch::Straight, tenths_of_mm(30), thick(2.0));
        assert_eq!(ratio(flat, tenths_of_mm(30), thick(2.0)), one);
        assert_eq!(ratio(flat, zero(), thick(2.0)), None);
        assert_eq!(ratio(flat, tenths_of_mm(30), thick(f64::NAN)), None);
    }

    #[test]
    fn three_four_five() {
        // L = 3, d = 4: the bobbin runs 4 across and 5 on, and twice 1.5 mm down and up: 12 a
        // stitch of 3. Each needle thread takes ½ more than the seam.
        let twin = Stitch::Twin {
            spacing: tenths_of_mm(40),
        };
        let r = ratio(twin, tenths_of_mm(30), thick(1.5)).unwrap();
        assert!((r.needle - 1.5).abs() < 1e-12 && r.needles == 2);
        assert!((r.bobbin - 4.0).abs() < 1e-12);
        let zigzag = Stitch::Zigzag {
            width: tenths_of_mm(40),
        };
        let r = ratio(zigzag, tenths_of_mm(30), thick(1.5)).unwrap();
        assert!((r.total() - 2.0 * (5.0 / 3.0 + 0.5)).abs() < 1e-12);
    }

    /// By hand: 2 mm of cloth in stitches of 4 mm. One row takes 1 + 2/4 of each thread, two rows
    /// 3 of each: 6 m of thread for a metre of lap, 3 m of it off the one spool and 3 m off the
    /// bobbin. With stitches of 2 mm a row takes 1 + 2/2, two rows 4 of each.
    #[test]
    fn two_rows_with_a_single_needle() {
        let metre = nm(1_000_000_000);
        let bare = Winding {
            waste: 0.0,
            ..Winding::default()
        };
        let rows = Stitch::TwoRows {
            spacing: tenths_of_mm(60),
        };
        let ask = |stitch, tenths| need(metre, stitch, tenths_of_mm(tenths), thick(2.0), bare);
        let got = ask(rows, 40).unwrap();
        assert_eq!((got.needle, got.bobbin), (metre * 3, metre * 3));
        assert_eq!((got.needles, got.spools, got.bobbins), (1, 1, 1));
        assert_eq!((got.seam, got.total()), (metre, metre * 6));
        // The makers' rule says 2½ times each row.
        assert_eq!(got.rule, Some(metre * 5));
        assert_eq!(ask(rows, 20).unwrap().total(), metre * 8);
        // Both rows are as far apart as the maker likes: it takes no more thread.
        let far = Stitch::TwoRows {
            spacing: tenths_of_mm(90),
        };
        assert_eq!(ask(far, 40), Ok(got));
    }

    #[test]
    fn the_seams_of_the_demo_throw() {
        // A four: 5 + 5 + 9½ in; 12 of them. Rows of 3 fours: 2 seams of 9½ each, 4 rows.
        // Then 3 seams of 27½. Binding: 2 × (27½ + 36½), and 4 joins of 1 in.
        let s = seams(&Plan::default());
        let quarters = 12 * 78 + 4 * 2 * 38 + 3 * 110;
        assert_eq!(s.joins, quarter_inches(quarters));
        assert_eq!(s.binding, inches(128 + 4));
    }

    /// By hand: fours trimmed to 9 in are sewn before that, 5 + 5 + 9½ in each; then 4 rows have 2
    /// seams of 9 in each, and 3 seams are as long as a row, 3 · 9 − 2 · ½ = 26 in. The binding goes
    /// round 26 × 34½ in: 121 in, and 125 in with its tail take 5 strips of 28 in, joined 4 times
    /// over 1 in.
    #[test]
    fn seams_within_a_four_are_as_long_as_before_it_is_trimmed() {
        let plan = Plan {
            trim: Some(inches(9)),
            ..Plan::default()
        };
        let s = seams(&plan);
        assert_eq!(s.joins, quarter_inches(12 * 78 + 4 * 2 * 36 + 3 * 104));
        assert_eq!(s.binding, inches(121 + 4));
        // A column that is left over: 3 across and 2 down are a four, an upright pair of 5 in seam,
        // and one seam of 9 in between them.
        let odd = Plan {
            across: 3,
            down: 2,
            ..plan
        };
        assert_eq!(seams(&odd).joins, quarter_inches(78 + 20 + 36));
        // A row that is left over likewise.
        let odd = Plan {
            across: 2,
            down: 3,
            ..plan
        };
        assert_eq!(seams(&odd).joins, quarter_inches(78 + 20 + 36));
    }

    fn without_waste() -> Winding {
        Winding {
            waste: 0.0,
            ..Winding::default()
        }
    }

    fn twin_of_4_mm() -> Stitch {
        Stitch::Twin {
            spacing: tenths_of_mm(40),
        }
    }

    /// By hand, of 100 m of seam, stitches of 3 mm and no thickness to speak of, without waste: a twin
    /// needle 4 mm wide takes 100 m for each needle, and 4/3 + 5/3 = 3 of bobbin thread a stitch
    /// length, 300 m. That is two spools in the machine, but 500 m in all, three spools of 200 m to
    /// buy, and eight bobbins of 40 m.
    #[test]
    fn a_twin_needles_bobbins_are_bought_too() {
        let (bare, twin) = (without_waste(), twin_of_4_mm());
        let metre = nm(1_000_000_000);
        let got = need(metre * 100, twin, tenths_of_mm(30), thick(0.0), bare).unwrap();
        assert_eq!((got.needle, got.bobbin), (metre * 100, metre * 300));
        assert_eq!((got.spools, got.spools_in_all, got.bobbins), (2, 3, 8));
        // Fifteen in a hundred more for tails and breaks where nothing else is said.
        let usual = Winding::default();
        let more = need(metre * 100, twin, tenths_of_mm(30), thick(0.0), usual).unwrap();
        assert!((crate::measure::in_mm(more.needle) - 115_000.0).abs() < 0.01);
        assert_eq!((got.seam, got.rule), (metre * 100, None));
    }

    /// By hand, in stitches of 3 mm with no thickness to speak of and no waste. 100 m with a twin
    /// needle 4 mm wide take 100 m of either needle thread and 4/3 + 5/3 = 3 times as much of the
    /// bobbin's. 150 m more in one straight row take 150 m of the first needle alone and 150 m of the
    /// bobbin: 250 and 100 m of needle thread and 450 m of the bobbin's, 800 m for 250 m of seam. In
    /// the machine that is two spools of 200 m and one, in all four, and 11¼ bobbins of 40 m.
    #[test]
    fn a_row_more_with_one_needle_comes_off_the_first_spool() {
        let (bare, twin) = (without_waste(), twin_of_4_mm());
        let metre = nm(1_000_000_000);
        let ask = |metres, stitch| {
            need(metre * metres, stitch, tenths_of_mm(30), thick(0.0), bare).unwrap()
        };
        let laps = ask(100, twin);
        let sum = laps.and(&ask(150, Stitch::Straight), bare);
        assert_eq!((sum.seam, sum.needle), (metre * 250, metre * 250));
        assert_eq!((sum.alone, sum.bobbin), (metre * 150, metre * 450));
        assert_eq!((sum.needles, sum.total()), (2, metre * 800));
        assert_eq!((sum.spools, sum.spools_in_all, sum.bobbins), (3, 4, 12));
        assert!((sum.ratio - 800.0 / 250.0).abs() < 1e-9);
        assert_eq!(sum.rule, None);
        // 50 m more with both needles take 50 m of either: 150, 150 and 450 m.
        let more = laps.with(&ask(50, twin), bare);
        assert_eq!((more.needle, more.alone), (metre * 150, zero()));
        assert_eq!((more.bobbin, more.total()), (metre * 450, metre * 750));
        assert_eq!((more.spools, more.spools_in_all, more.bobbins), (2, 4, 12));
        // No seam more is no thread more, and the makers' rule of two straight seams adds up.
        assert_eq!(laps.and(&ask(0, Stitch::Straight), bare), laps);
        let straight = ask(100, Stitch::Straight);
        let both = straight.with(&straight, bare);
        assert_eq!((both.total(), both.rule), (metre * 400, Some(metre * 500)));
        assert_eq!((both.spools, both.spools_in_all, both.bobbins), (1, 2, 5));
    }

    /// A spool that is used up to its end is one spool, and a hair more wants another.
    #[test]
    fn a_spool_is_full_to_its_end() {
        let metre = nm(1_000_000_000);
        assert_eq!(full(metre * 200, metre * 200), 1);
        assert_eq!(full(metre * 200 + nm(1), metre * 200), 2);
        assert_eq!(full(zero(), metre * 200), 0);
    }

    /// By hand: the lap of a pieced square is as long as its side, 5 in, through two layers of 0.95 mm:
    /// in stitches of 3 mm each thread takes 1 + 1.9/3. Six of them are 30 in; with 15 in a hundred of
    /// waste 2 · 30 · 1.6333 · 1.15 = 112.7 in.
    #[test]
    fn halves_are_lapped_through_two_layers_of_denim() {
        let plan = Plan {
            stitch: Stitch::Straight,
            ..Plan::default()
        };
        let got = for_halves(&plan, 6, &Cloth::denim(), Winding::default()).unwrap();
        assert_eq!(got.seam, inches(30));
        let told = crate::measure::in_mm(got.total()) / 25.4;
        assert!((told - 112.7).abs() < 0.01, "{told}");
    }

    /// By hand, in stitches of 3 mm: two squares of 0.95 mm denim, 1.9 mm, take 1 + 1.9/3 of needle
    /// and of bobbin thread; the binding goes through a square and both halves of the strip,
    /// 2.85 mm, 1 + 2.85/3. 392½ in of joins and 132 in of binding, with 15 in a hundred of waste:
    /// 2 · (392.5 · 1.6333 + 132 · 1.95) · 1.15 = 2066.5 in.
    #[test]
    fn thread_of_the_usual_throw_in_straight_rows() {
        let plan = Plan {
            stitch: Stitch::Straight,
            ..Plan::default()
        };
        let cloths = [&Cloth::denim(), &Cloth::cotton()];
        let got = for_throw(&plan, 0, cloths, Winding::default()).unwrap();
        let told = crate::measure::in_mm(got.total()) / 25.4;
        assert!((told - 2066.51).abs() < 0.01, "{told}");
        // The same without waste for each length of seam, and the makers' rule of 2½.
        let seam = crate::measure::in_mm(got.seam) / 25.4;
        assert!((seam - 524.5).abs() < 1e-6);
        assert!((got.ratio - told / 1.15 / seam).abs() < 1e-4);
        let rule = crate::measure::in_mm(got.rule.unwrap()) / 25.4;
        assert!((rule - 2.5 * 524.5).abs() < 0.001);
        // Half the squares have a fabric of 0.28 mm: (0.95 + 0.14) · 2.
        let thick = lap_thickness(&plan, 24, &Cloth::denim(), &Cloth::cotton());
        assert!((in_mm_thick(thick) - 2.18).abs() < 1e-9);
    }

    /// By hand: a bottle of 118 ml is 2360 dots of 0.05 ml, one every 2 in (our estimate, no source).
    #[test]
    fn a_bottle_of_glue_is_2360_dots() {
        let dots = |n: i64| glue(inches(2 * (n - 1)), 0, Gluing::default());
        assert_eq!((dots(2350).dots, dots(2350).bottles), (2350, Some(1)));
        assert_eq!((dots(2370).dots, dots(2370).bottles), (2370, Some(2)));
        assert!((dots(2370).ml - 118.5).abs() < 1e-9);
    }

    #[test]
    fn the_bobbins_are_among_the_spools_to_buy() {
        // 14 × 18 in one straight row. 63 fours of 19½ in; 9 rows of 6 seams of 9½ in; 8 seams
        // of 63½ in: 2249½ in. With the binding's 290 in and its joins that is over 64 m, and
        // laps of denim take over 3 of thread for 1 of seam: over 200 m with the waste.
        let plan = Plan {
            across: 14,
            down: 18,
            stitch: Stitch::Straight,
            ..Plan::default()
        };
        assert_eq!(seams(&plan).joins, quarter_inches(4 * 2249 + 2));
        let cloths = [&Cloth::denim(), &Cloth::cotton()];
        let need = for_throw(&plan, 0, cloths, Winding::default()).unwrap();
        assert_eq!((need.spools, need.spools_in_all), (1, 2));
    }

    #[test]
    fn one_square_has_no_joins() {
        let plan = Plan {
            across: 1,
            down: 1,
            ..Plan::default()
        };
        assert_eq!(seams(&plan).joins, zero());
    }

    #[test]
    fn faults_are_named() {
        let seam = nm(1_000_000_000);
        let ask = |length, thickness, winding| {
            need(seam, Stitch::Straight, length, thick(thickness), winding)
        };
        let plain = Winding::default();
        assert_eq!(ask(zero(), 2.0, plain), Err(ThreadFault::StitchLength));
        assert_eq!(
            ask(tenths_of_mm(30), -1.0, plain),
            Err(ThreadFault::Thickness)
        );
        let bare = Winding {
            bobbin: zero(),
            ..plain
        };
        assert_eq!(ask(tenths_of_mm(30), 2.0, bare), Err(ThreadFault::Winding));
        let waste = Winding {
            waste: f64::NAN,
            ..plain
        };
        assert_eq!(ask(tenths_of_mm(30), 2.0, waste), Err(ThreadFault::Waste));
        // On each limit, and just beyond it: 1 m on a spool, all of it wasted, 10 cm of cloth.
        let metre = |spool, bobbin| Winding {
            spool: seam + nm(spool),
            bobbin: seam + nm(bobbin),
            ..plain
        };
        let given = |winding| ask(tenths_of_mm(30), 2.0, winding).map(|_| ());
        assert_eq!(given(metre(0, 0)), Ok(()));
        assert_eq!(given(metre(-1, 0)), Err(ThreadFault::Winding));
        assert_eq!(given(metre(0, -1)), Err(ThreadFault::Winding));
        let wasted = |waste| given(Winding { waste, ..plain });
        assert_eq!([0.0, 1.0].map(wasted), [Ok(()); 2]);
        assert_eq!([-0.01, 1.01].map(wasted), [Err(ThreadFault::Waste); 2]);
        let through = |mm| ask(tenths_of_mm(30), mm, plain).map(|_| ());
        assert_eq!([0.0, 99.9].map(through), [Ok(()); 2]);
        assert_eq!(through(100.1), Err(ThreadFault::Thickness));
        let waste = Winding {
            waste: f64::NAN,
            ..plain
        };
        assert_eq!(ask(tenths_of_mm(30), 2.0, waste), Err(ThreadFault::Waste));
    }

    #[test]
    fn glue_in_dots() {
        let got = glue(inches(100), 0, Gluing::default());
        assert_eq!(got.dots, 51);
        assert_eq!(got.bottles, Some(1));
        assert_eq!(glue(zero(), 0, Gluing::default()).dots, 0);
        assert_eq!(glue(zero(), 3, Gluing::default()).dots, 15);
        assert_eq!(glue(zero(), u32::MAX, Gluing::default()).dots, u32::MAX);
        let odd = Gluing {
            spacing: zero(),
            dot_ml: f64::NAN,
            bottle_ml: 0.0,
        };
        assert_eq!(glue(nm(i64::MAX), 0, odd).bottles, None);
    }

    proptest! {
        #[test]
        fn a_twin_needle_wants_two_spools(
            long in 0i64..10_000_000_000_000,
            spacing in 10i64..=60,
            stitch in 5i64..=120,
            deep in 0.0..20.0f64,
        ) {
            let twin = Stitch::Twin { spacing: tenths_of_mm(spacing) };
            let ask = |s| need(nm(long), s, tenths_of_mm(stitch), thick(deep), Winding::default()).unwrap();
            let (two, one) = (ask(twin), ask(Stitch::Straight));
            prop_assert_eq!(two.spools, 2 * one.spools);
            prop_assert!(two.bobbin >= one.bobbin);
            prop_assert!(two.spools_in_all >= two.spools);
        }

        #[test]
        fn every_plan_has_its_seams(across in 1u16..=60, down in 1u16..=60, order in 0usize..3) {
            let order = [JoinOrder::Rows, JoinOrder::Columns, JoinOrder::Doubling][order];
            let plan = Plan { across, down, order, ..Plan::default() };
            let got = seams(&plan);
            // Every join is at least a square long, and there is one fewer than squares.
            prop_assert!(got.joins >= plan.side * i64::from(across.max(down) - 1));
            let (w, h) = plan.finished();
            prop_assert!(got.joins >= h * i64::from(across - 1));
            prop_assert!(got.joins >= w * i64::from(down - 1));
        }

        #[test]
        fn nothing_panics(seam: i64, stitch: i64, width: i64, deep: f64, spool: i64, bobbin: i64, waste: f64) {
            let winding = Winding { spool: nm(spool), bobbin: nm(bobbin), waste };
            for kind in [Stitch::Straight, Stitch::Twin { spacing: nm(width) }, Stitch::TwoRows { spacing: nm(width) }, Stitch::Zigzag { width: nm(width) }] {
                let _ = need(nm(seam), kind, nm(stitch), thick(deep), winding);
                let _ = need(nm(seam), kind, tenths_of_mm(30), thick(1.0), winding);
                let _ = need(nm(seam), kind, tenths_of_mm(30), thick(1.0), Winding::default());
            }
        }
    }
}
