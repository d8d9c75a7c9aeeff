//! What the squares are cut from: a garment and its flat pieces.
//!
//! A leg opened along the inseam, the back of a jacket, a sheet: pressed flat, each
//! becomes a [`Piece`], an outline with places that must not be cut into. The maker
//! measures it with a tape across the piece at a few heights, and so it is kept: a
//! [`OutlineStation`] says how far the cloth reaches to the left and to the right at a height
//! above the hem, and between two stations the edges run straight. The middle line may
//! lie anywhere; for a leg it is the outseam, for a plain rectangle its left edge.
//! Grain runs along the piece.
//!
//! Places to keep clear are [`Zone`]s: upright rectangles in the same coordinates. A
//! round stain is kept as the rectangle about it, a slanting pocket likewise.
//!
//! Promises: [`Piece::check`] finds every piece that the cutting could not work with,
//! and no numbers make it panic. A piece that passes has its stations in order, its left
//! edge never right of its right edge, and all of it within 100 m of the middle.
//!
//! Limits: an outline has one left and one right edge at every height, so a piece with a
//! bay in its upper edge is given by the line below the bay, or as two pieces. At most
//! [`MOST`] stations and as many zones.
//!
//! # Starting outlines
//!
//! [`start`] gives an outline to begin with before anything was measured. **Its figures
//! are estimates, from memory and common practice, no source**; they are to be replaced
//! by the maker's tape. They stand in round figures of the system she measures in: widths and
//! heights on half inches or whole centimetres. For jeans the inseam and the width all round at hem, knee and
//! thigh are assumed by size; the leg is taken up to the crotch line (above it pockets,
//! yoke and fly leave little), 55 % of its width to the back of the outseam and 45 % to
//! the front; the outseam ridge is ¾ in wide, the hem 1 in high, a worn knee sits on the
//! front half. [`Guess::Low`] has widths 5 % less and a large worn knee, [`Guess::High`] 5 %
//! more and knees unworn; so the two lie about what the maker may find.

use crate::measure::{
    Area, Count, Length, NM_PER_INCH, NM_PER_MM, System, eighth_inches, in_mm, in_nm, inches, nm,
    square_metres, zero,
};
use serde::{Deserialize, Serialize};
use thiserror::Error;
use ts_rs::TS;

/// Most stations, and most zones, of one piece.
pub const MOST: usize = 200;
/// Farthest a piece may reach from its middle or its hem: 100 m.
const FARTHEST_NM: i64 = 100_000_000_000;
/// Widest leg or back, 2 m, and widest other cloth, 4 m (our judgement: cloth is woven to
/// about 3 m).
const WIDEST_NM: [i64; 2] = [2_000_000_000, 4_000_000_000];

/// How far the cloth reaches at one height.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[ts(rename = "OutlineStation")]
pub struct OutlineStation {
    /// Height above the hem.
    pub at: Length,
    /// Where the left edge is, from the middle line; left of it is less than nothing.
    pub left: Length,
    /// Where the right edge is.
    pub right: Length,
}

/// Why a place is kept clear.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum ZoneKind {
    /// The ridge of the outseam.
    Outseam,
    /// A hem.
    Hem,
    /// A pocket, or where one was.
    Pocket,
    /// A worn knee.
    Knee,
    /// A hole or a tear.
    Hole,
    /// A stain.
    Stain,
    /// Any other seam.
    Seam,
    /// A cut edge, trimmed off to square the cloth up.
    CutEdge,
    /// A selvedge, which is woven tighter and carries print marks.
    Selvedge,
}

/// A place no square may lie on; squares may touch its edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Zone {
    /// Why.
    pub kind: ZoneKind,
    /// Its lower edge, above the hem.
    pub from: Length,
    /// Its upper edge.
    pub to: Length,
    /// Its left edge, from the middle line.
    pub left: Length,
    /// Its right edge.
    pub right: Length,
}

/// Which part of a garment a piece is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum GarmentPart {
    /// The left leg, opened along the inseam.
    LeftLeg,
    /// The right leg, opened along the inseam.
    RightLeg,
    /// The back of a jacket or shirt.
    Back,
    /// A front of a shirt or blouse, without its button band.
    Front,
    /// A sleeve opened along its seam, without its cuff.
    Sleeve,
    /// A panel of a skirt.
    Panel,
    /// A sheet.
    Sheet,
    /// Cloth off the roll, a fat quarter, or anything else flat.
    Cloth,
}

/// One flat piece of cloth.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Piece {
    /// What it is of.
    pub part: GarmentPart,
    /// Its outline, from the hem up.
    pub stations: Vec<OutlineStation>,
    /// Places to keep clear.
    pub zones: Vec<Zone>,
}

/// What is wrong with a piece as given; numbers count from 0 in its lists.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum PieceFault {
    /// Fewer than two stations make no outline.
    #[error("an outline needs two stations")]
    TooFewStations,
    /// More than [`MOST`] stations or zones.
    #[error("more than {MOST} stations or zones")]
    TooMany,
    /// A station lies over 100 m away.
    #[error("station {0} is over 100 m away")]
    StationTooFar(usize),
    /// A station is not above the one before it.
    #[error("station {0} is not above the one before it")]
    OutOfOrder(usize),
    /// At a station the left edge lies right of the right edge.
    #[error("at station {0} the left edge lies right of the right edge")]
    Crossing(usize),
    /// The outline has no width anywhere.
    #[error("the outline has no width")]
    NoWidth,
    /// At a station the cloth has no width.
    #[error("at station {0} the cloth has no width")]
    NoWidthAt(usize),
    /// At a station it is wider than such a piece comes.
    #[error("at station {0} the cloth is wider than such a piece comes")]
    TooWide(usize),
    /// A zone lies over 100 m away.
    #[error("zone {0} is over 100 m away")]
    ZoneTooFar(usize),
    /// A zone has no width or no height.
    #[error("zone {0} is empty")]
    EmptyZone(usize),
    /// A zone lies wholly beside the piece.
    #[error("zone {0} lies beside the piece")]
    ZoneOutside(usize),
}

impl Piece {
    /// A rectangle with nothing to keep clear; its left edge is the middle line.
    pub fn rectangle(part: GarmentPart, width: Length, length: Length) -> Piece {
        let station = |at| OutlineStation {
            at,
            left: zero(),
            right: width,
        };
        Piece {
            part,
            stations: vec![station(zero()), station(length)],
            zones: Vec::new(),
        }
    }

    /// The same with one more place to keep clear.
    #[cfg(test)]
    pub(crate) fn without(mut self, zone: Zone) -> Piece {
        self.zones.push(zone);
        self
    }

    /// What stands in the way of cutting this piece.
    ///
    /// # Errors
    /// The first [`PieceFault`] found, outline before zones.
    pub fn check(&self) -> Result<(), PieceFault> {
        let far = |l: Length| !(-FARTHEST_NM..=FARTHEST_NM).contains(&in_nm(l));
        if self.stations.len() < 2 {
            return Err(PieceFault::TooFewStations);
        }
        if self.stations.len() > MOST || self.zones.len() > MOST {
            return Err(PieceFault::TooMany);
        }
        for (i, s) in self.stations.iter().enumerate() {
            if far(s.at) || far(s.left) || far(s.right) {
                return Err(PieceFault::StationTooFar(i));
            }
            if i > 0 && s.at <= self.stations[i - 1].at {
                return Err(PieceFault::OutOfOrder(i));
            }
            if s.left > s.right {
                return Err(PieceFault::Crossing(i));
            }
        }
        if self.stations.iter().all(|s| s.left == s.right) {
            return Err(PieceFault::NoWidth);
        }
        let [low, high, left, right] = self.reach();
        for (i, z) in self.zones.iter().enumerate() {
            if [z.from, z.to, z.left, z.right].into_iter().any(far) {
                return Err(PieceFault::ZoneTooFar(i));
            }
            if z.from >= z.to || z.left >= z.right {
                return Err(PieceFault::EmptyZone(i));
            }
            if z.to <= low || z.from >= high || z.right <= left || z.left >= right {
                return Err(PieceFault::ZoneOutside(i));
            }
        }
        Ok(())
    }

    /// What stands in the way of taking this for what a tape measured: as
    /// [`Piece::check`], and every width is one that such cloth has.
    ///
    /// # Errors
    /// The first [`PieceFault`] found.
    pub fn check_measured(&self) -> Result<(), PieceFault> {
        self.check()?;
        let [garment, other] = WIDEST_NM;
        let widest = match self.part {
            GarmentPart::LeftLeg
            | GarmentPart::RightLeg
            | GarmentPart::Back
            | GarmentPart::Front
            | GarmentPart::Sleeve => garment,
            GarmentPart::Panel | GarmentPart::Sheet | GarmentPart::Cloth => other,
        };
        for (i, station) in self.stations.iter().enumerate() {
            match in_nm(station.right - station.left) {
                0 => return Err(PieceFault::NoWidthAt(i)),
                wide if wide > widest => return Err(PieceFault::TooWide(i)),
                _ => {}
            }
        }
        Ok(())
    }

    /// Lowest, highest, farthest left and farthest right of the outline.
    pub fn reach(&self) -> [Length; 4] {
        let by = |pick: fn(&OutlineStation) -> Length| self.stations.iter().map(pick);
        [
            by(|s| s.at).min().unwrap_or(zero()),
            by(|s| s.at).max().unwrap_or(zero()),
            by(|s| s.left).min().unwrap_or(zero()),
            by(|s| s.right).max().unwrap_or(zero()),
        ]
    }

    /// Cloth within the outline, zones and all: the sum of trapezoids between stations.
    pub fn area(&self) -> Area {
        let mm2: f64 = self
            .stations
            .windows(2)
            .map(|w| {
                let wide = |s: &OutlineStation| in_mm(s.right) - in_mm(s.left);
                (wide(&w[0]) + wide(&w[1])) / 2.0 * (in_mm(w[1].at) - in_mm(w[0].at))
            })
            .sum();
        square_metres(nm(1_000_000_000), nm(1_000_000_000)) * (mm2 / 1e6)
    }
}

/// A garment, or other cloth, taken apart.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Garment {
    /// What the maker calls it.
    pub name: String,
    /// Its flat pieces.
    pub pieces: Vec<Piece>,
    /// The outlines it began with: a piece that still has one was not measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[ts(optional)]
    pub start: Option<GarmentStart>,
}

/// What was said of a garment that nobody has measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct GarmentStart {
    /// Which garment.
    pub kind: GarmentKind,
    /// How large; left out where that is to be measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[ts(optional)]
    pub size: Option<GarmentSize>,
    /// How its knees are.
    #[serde(default, skip_serializing_if = "Knees::is_unknown")]
    #[ts(as = "Option<Knees>", optional)]
    pub knees: Knees,
    /// The system its outlines are round in.
    pub system: System,
}

impl GarmentStart {
    /// The outlines to begin with, by a guess. Where no size was said, the guesses reach from
    /// small to large.
    pub fn pieces(&self, guess: Guess) -> Vec<Piece> {
        let size = self.size.unwrap_or(match guess {
            Guess::Low => GarmentSize::Small,
            Guess::Typical => GarmentSize::Medium,
            Guess::High => GarmentSize::Large,
        });
        start_with(self.kind, size, guess, self.knees, self.system)
    }
}

/// How the knees of jeans are.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Knees {
    /// Nobody has looked yet.
    #[default]
    Unknown,
    /// Unworn.
    Whole,
    /// Worn thin or torn.
    Torn,
}

impl Knees {
    fn is_unknown(&self) -> bool {
        *self == Knees::Unknown
    }
}

/// Squares bought ready cut. Packs of charm squares commonly hold 42, but count yours
/// (common practice, no source).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Precut {
    /// What the maker calls it.
    pub name: String,
    /// Side of a square.
    pub side: Length,
    /// How many there are, counted.
    pub count: Count,
}

impl Precut {
    /// Squares of side `wanted` it gives: as counted, times what each is cut down to; a
    /// 10 in square gives four of 5 in.
    pub fn gives(&self, wanted: Length) -> Count {
        let (own, wanted) = (in_nm(self.side).max(0), in_nm(wanted).max(1));
        let each = u32::try_from(own / wanted).unwrap_or(u32::MAX);
        Count::at_most(self.count.get().saturating_mul(each.saturating_mul(each)))
    }
}

/// Something squares come from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "source")]
pub enum Source {
    /// Cloth to be cut.
    Cloth(Garment),
    /// Squares ready cut.
    Precut(Precut),
}

/// Cloth off the roll: `width` is what is usable between the selvages.
pub fn yardage(width: Length, length: Length) -> Piece {
    Piece::rectangle(GarmentPart::Cloth, width, length)
}

/// A fat quarter: half a yard of 44 in cloth halved again, 18 × 22 in; or 50 × 55 cm.
pub fn fat_quarter(system: System) -> Piece {
    match system {
        System::Inch => yardage(inches(22), inches(18)),
        System::Metric => yardage(nm(550_000_000), nm(500_000_000)),
    }
}

/// What is trimmed off a rectangle of cloth before anything is cut from it, so that its edges
/// are straight and square to each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ClothEdges {
    /// Off each cut edge.
    pub cut: Length,
    /// Off each selvedge.
    pub selvedge: Length,
    /// How many of the two long sides are selvedges: of cloth off the roll both, of a fat
    /// quarter one, which is taken for the left.
    pub selvedges: u8,
}

impl ClothEdges {
    /// 1/2 in off a cut edge and 3/4 in off a selvedge, or 1 cm and 2 cm: common practice, no
    /// source.
    pub fn usual(system: System, selvedges: u8) -> ClothEdges {
        let [cut, selvedge] = match system {
            System::Inch => [eighth_inches(4), eighth_inches(6)],
            System::Metric => [nm(10 * NM_PER_MM), nm(20 * NM_PER_MM)],
        };
        ClothEdges {
            cut,
            selvedge,
            selvedges,
        }
    }

    /// Off the left and the right side.
    fn sides(&self) -> [(ZoneKind, Length); 2] {
        let side = |is_selvedge: bool| match is_selvedge {
            true => (ZoneKind::Selvedge, self.selvedge),
            false => (ZoneKind::CutEdge, self.cut),
        };
        [side(self.selvedges > 0), side(self.selvedges > 1)]
    }
}

/// A rectangle of cloth of this size with its edges to be trimmed; none where nothing would be
/// left of it.
pub fn trimmed(width: Length, length: Length, edges: ClothEdges) -> Option<Piece> {
    let mut piece = yardage(width, length);
    let [(left_kind, left), (right_kind, right)] = edges.sides();
    let sound = [edges.cut, edges.selvedge]
        .iter()
        .all(|e| *e >= zero() && *e < width);
    if !sound || left + right >= width || edges.cut * 2 >= length {
        return None;
    }
    let zones = [
        (ZoneKind::CutEdge, [zero(), edges.cut, zero(), width]),
        (
            ZoneKind::CutEdge,
            [length - edges.cut, length, zero(), width],
        ),
        (left_kind, [zero(), length, zero(), left]),
        (right_kind, [zero(), length, width - right, width]),
    ];
    let kept = zones
        .into_iter()
        .filter(|(_, z)| z[0] < z[1] && z[2] < z[3]);
    piece.zones = kept
        .map(|(kind, [from, to, left, right])| Zone {
            kind,
            from,
            to,
            left,
            right,
        })
        .collect();
    Some(piece)
}

/// Garments for which there is a starting outline.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum GarmentKind {
    /// A man's straight jeans, two legs.
    MensJeans,
    /// A woman's straight jeans, two legs.
    WomensJeans,
    /// A child's jeans, two legs; sizes about 4, 8 and 12 years.
    ChildsJeans,
    /// The back of a denim jacket, with its yoke and two upright seams.
    JacketBack,
    /// A skirt opened along one side seam.
    Skirt,
    /// A flat bed sheet: single, double, large double.
    Sheet,
    /// A shirt taken apart: the back below its yoke, two fronts without the button band, two
    /// sleeves without cuffs.
    Shirt,
    /// A blouse taken apart likewise; its fronts and back are shaped at the waist.
    Blouse,
}

impl GarmentKind {
    /// Every kind.
    pub const ALL: [GarmentKind; 8] = [
        GarmentKind::MensJeans,
        GarmentKind::WomensJeans,
        GarmentKind::ChildsJeans,
        GarmentKind::JacketBack,
        GarmentKind::Skirt,
        GarmentKind::Sheet,
        GarmentKind::Shirt,
        GarmentKind::Blouse,
    ];

    /// Whether it is denim, as a rule.
    pub fn is_denim(self) -> bool {
        !matches!(
            self,
            GarmentKind::Sheet | GarmentKind::Shirt | GarmentKind::Blouse
        )
    }
}

/// A garment's size, roughly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum GarmentSize {
    /// Small.
    Small,
    /// Middling.
    Medium,
    /// Large.
    Large,
}

/// How cautious a starting outline is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Guess {
    /// Narrow and worn.
    Low,
    /// As one would expect.
    Typical,
    /// Wide and little worn.
    High,
}

/// Round figures of a system, for what nobody has measured yet.
#[derive(Clone, Copy)]
struct Round {
    system: System,
    percent: i64,
}

impl Round {
    /// The nearest whole `step` (halves go up).
    fn to(length: i64, step: i64) -> Length {
        nm((length + step / 2).div_euclid(step) * step)
    }

    /// A height of so many quarter inches: on half inches, or whole centimetres.
    fn high(self, quarters: i64) -> Length {
        Round::to(quarters * NM_PER_INCH / 4, self.step())
    }

    /// A width of so many quarter inches, more or less by the guess, likewise.
    fn wide(self, quarters: i64) -> Length {
        let length = quarters * NM_PER_INCH / 4 * self.percent / 100;
        Round::to(length, self.step())
    }

    /// So many hundredths of a width: on eighths of an inch, or whole centimetres.
    fn share(self, width: Length, hundredths: i64) -> Length {
        let step = match self.system {
            System::Inch => NM_PER_INCH / 8,
            System::Metric => 10 * NM_PER_MM,
        };
        Round::to(in_nm(width) * hundredths / 100, step)
    }

    /// A hem or a ridge of so many eighths of an inch, or on half centimetres.
    fn small(self, eighths: i64) -> Length {
        match self.system {
            System::Inch => eighth_inches(eighths),
            System::Metric => Round::to(eighths * NM_PER_INCH / 8, 5 * NM_PER_MM),
        }
    }

    fn step(self) -> i64 {
        match self.system {
            System::Inch => NM_PER_INCH / 2,
            System::Metric => 10 * NM_PER_MM,
        }
    }
}

/// An outline to begin with, in round figures of a system, to be corrected by the tape.
/// Estimates, from memory and common practice, no source.
pub fn start(kind: GarmentKind, size: GarmentSize, guess: Guess, system: System) -> Vec<Piece> {
    start_with(kind, size, guess, Knees::Unknown, system)
}

/// Inseam or length, then widths from the hem up, in quarter inches.
fn figures(kind: GarmentKind, size: GarmentSize) -> [i64; 4] {
    let nth = match size {
        GarmentSize::Small => 0,
        GarmentSize::Medium => 1,
        GarmentSize::Large => 2,
    };
    let all = match kind {
        GarmentKind::MensJeans => [[120, 62, 70, 92], [128, 68, 76, 100], [128, 72, 82, 112]],
        GarmentKind::WomensJeans => [[116, 54, 60, 86], [120, 56, 64, 96], [120, 60, 70, 108]],
        GarmentKind::ChildsJeans => [[64, 40, 46, 56], [88, 48, 54, 66], [108, 54, 60, 76]],
        GarmentKind::JacketBack => [[80, 64, 72, 72], [88, 72, 80, 80], [96, 80, 88, 88]],
        GarmentKind::Skirt => [
            [68, 160, 148, 136],
            [72, 176, 164, 152],
            [72, 192, 180, 168],
        ],
        GarmentKind::Sheet => [
            [384, 264, 264, 264],
            [384, 324, 324, 324],
            [408, 360, 360, 360],
        ],
        // The back: its length below the yoke, its width at lower edge, waist and armhole.
        GarmentKind::Shirt => [[92, 80, 80, 80], [100, 92, 92, 92], [108, 104, 104, 104]],
        GarmentKind::Blouse => [[76, 72, 64, 68], [80, 80, 72, 76], [84, 92, 84, 88]],
    };
    all[nth]
}

/// Where the edges of the first piece of an outline lay that began before outlines began in round
/// figures: each half of a width on the lower eighth of an inch. Shirts and blouses came later.
fn first_outline(kind: GarmentKind, size: GarmentSize) -> Option<Vec<OutlineStation>> {
    let [length, hem, knee, thigh] = figures(kind, size);
    let back = match kind {
        GarmentKind::Shirt | GarmentKind::Blouse => return None,
        GarmentKind::MensJeans | GarmentKind::WomensJeans | GarmentKind::ChildsJeans => 55,
        _ => 50,
    };
    let part = |width: i64, share: i64| eighth_inches(width * 2 * share / 100);
    let wide = |at: i64, width: i64| OutlineStation {
        at: nm(at * NM_PER_INCH / 4),
        left: zero() - part(width, back),
        right: part(width, 100 - back),
    };
    let middle = match kind {
        GarmentKind::JacketBack => Some(length * 3 / 4),
        GarmentKind::Skirt => Some(length / 2),
        GarmentKind::Sheet => None,
        _ => Some(length * 11 / 20),
    };
    let middle = middle.map(|at| wide(at, knee));
    let ends = [wide(0, hem), wide(length, thigh)];
    let [low, high] = ends;
    Some(
        [Some(low), middle, Some(high)]
            .into_iter()
            .flatten()
            .collect(),
    )
}

impl Garment {
    /// The garment it was begun as: as it was said, or in an older file the one whose usual outline
    /// one of its pieces still has.
    pub fn began(&self) -> Option<GarmentStart> {
        if self.start.is_some() {
            return self.start;
        }
        let sizes = [GarmentSize::Medium, GarmentSize::Small, GarmentSize::Large];
        let systems = [System::Inch, System::Metric];
        GarmentKind::ALL.into_iter().find_map(|kind| {
            let each = sizes
                .iter()
                .flat_map(|s| systems.map(|system| (*s, system)));
            each.map(|(size, system)| GarmentStart {
                kind,
                size: Some(size),
                knees: Knees::Unknown,
                system,
            })
            .find(|start| {
                let typical = start.pieces(Guess::Typical);
                typical.len() == self.pieces.len()
                    && (0..typical.len()).any(|n| start.is_as_begun(self, n))
            })
        })
    }
}

impl GarmentStart {
    /// Whether a piece of a garment still has the edges it began with, so that nobody measured it.
    /// Of a garment that says what it began as, all of the piece must be as it was.
    pub fn is_as_begun(&self, garment: &Garment, n: usize) -> bool {
        let Some(piece) = garment.pieces.get(n) else {
            return false;
        };
        let typical = self.pieces(Guess::Typical);
        let Some(usual) = typical.get(n) else {
            return false;
        };
        if garment.start.is_some() {
            return piece == usual;
        }
        let size = self.size.unwrap_or(GarmentSize::Medium);
        let first = first_outline(self.kind, size).map(|stations| Piece {
            part: usual.part,
            stations,
            zones: Vec::new(),
        });
        let first = first.map(|piece| match usual.part {
            GarmentPart::RightLeg => mirrored(&piece, usual.part),
            _ => piece,
        });
        piece.stations == usual.stations || first.is_some_and(|f| f.stations == piece.stations)
    }
}

fn start_with(
    kind: GarmentKind,
    size: GarmentSize,
    guess: Guess,
    knees: Knees,
    system: System,
) -> Vec<Piece> {
    let figures = figures(kind, size);
    let percent = match (kind, guess) {
        (GarmentKind::Sheet, _) | (_, Guess::Typical) => 100,
        (_, Guess::Low) => 95,
        (_, Guess::High) => 105,
    };
    let round = Round { system, percent };
    let length = round.high(figures[0]);
    let [hem, knee, thigh] = [figures[1], figures[2], figures[3]].map(|w| round.wide(w));
    // `back` hundredths of the width lie left of the middle line.
    let wide = |at: Length, width: Length, back: i64| {
        let left = round.share(width, back);
        OutlineStation {
            at,
            left: zero() - left,
            right: width - left,
        }
    };
    let zone = |kind, [from, to, left, right]: [Length; 4]| Zone {
        kind,
        from,
        to,
        left,
        right,
    };
    let piece = |part, stations: Vec<OutlineStation>, zones: Vec<Zone>| Piece {
        part,
        stations,
        zones,
    };
    // Places from edge to edge reach as far as the cloth does anywhere.
    let across = |piece: &Piece, kind, from: Length, to: Length| {
        let [_, _, left, right] = piece.reach();
        zone(kind, [from, to, left, right])
    };
    match kind {
        GarmentKind::MensJeans | GarmentKind::WomensJeans | GarmentKind::ChildsJeans => {
            // The knee lies a little above the middle of the inseam.
            let bend = round.high(figures[0] * 11 / 20);
            let stations = vec![
                wide(zero(), hem, 55),
                wide(bend, knee, 55),
                wide(length, thigh, 55),
            ];
            let mut left = piece(GarmentPart::LeftLeg, stations, Vec::new());
            let half = round.small(3);
            let ridge = zone(ZoneKind::Outseam, [zero(), length, zero() - half, half]);
            let turned_up = across(&left, ZoneKind::Hem, zero(), round.small(8));
            left.zones = vec![ridge, turned_up];
            let (large, small) = ((figures[0] / 8, 55), (figures[0] / 16, 40));
            let worn = match (knees, guess) {
                (Knees::Whole, _) | (Knees::Unknown, Guess::High) => None,
                (Knees::Unknown | Knees::Torn, Guess::Low) => Some(large),
                (Knees::Torn, Guess::Typical) => Some(large),
                (Knees::Unknown, Guess::Typical) | (Knees::Torn, Guess::High) => Some(small),
            };
            if let Some((half_high, share)) = worn {
                // It sits in the middle of the front half.
                let front = left.stations[1].right;
                let aside = round.share(front, (100 - share) / 2);
                let high = round.high(half_high);
                let place = [bend - high, bend + high, aside, front - aside];
                left.zones.push(zone(ZoneKind::Knee, place));
            }
            let right = mirrored(&left, GarmentPart::RightLeg);
            vec![left, right]
        }
        GarmentKind::JacketBack => {
            let yoke = round.high(figures[0] * 3 / 4);
            let stations = vec![
                wide(zero(), hem, 50),
                wide(yoke, knee, 50),
                wide(length, thigh, 50),
            ];
            let mut back = piece(GarmentPart::Back, stations, Vec::new());
            let (seam, half) = (round.share(hem, 25), round.small(3));
            let upright = |at: Length| zone(ZoneKind::Seam, [zero(), yoke, at - half, at + half]);
            back.zones = vec![
                across(&back, ZoneKind::Hem, zero(), round.small(12)),
                across(
                    &back,
                    ZoneKind::Seam,
                    yoke - round.small(4),
                    yoke + round.small(2),
                ),
                upright(seam),
                upright(zero() - seam),
            ];
            vec![back]
        }
        GarmentKind::Skirt => {
            let stations = vec![
                wide(zero(), hem, 50),
                wide(round.high(figures[0] / 2), knee, 50),
                wide(length, thigh, 50),
            ];
            let mut panel = piece(GarmentPart::Panel, stations, Vec::new());
            let low = round.high(figures[0] * 2 / 3);
            let pocket = |left, right| zone(ZoneKind::Pocket, [low, length, left, right]);
            let (inner, outer) = (round.share(thigh, 12), round.share(thigh, 38));
            let half = round.small(3);
            panel.zones = vec![
                across(&panel, ZoneKind::Hem, zero(), round.small(8)),
                zone(ZoneKind::Seam, [zero(), length, zero() - half, half]),
                pocket(inner, outer),
                pocket(zero() - outer, zero() - inner),
            ];
            vec![panel]
        }
        GarmentKind::Sheet => {
            let stations = vec![wide(zero(), hem, 50), wide(length, thigh, 50)];
            let mut sheet = piece(GarmentPart::Sheet, stations, Vec::new());
            let [_, _, left, right] = sheet.reach();
            let edge = round.small(4);
            sheet.zones = vec![
                across(&sheet, ZoneKind::Hem, zero(), round.small(8)),
                across(&sheet, ZoneKind::Hem, length - round.small(32), length),
                zone(ZoneKind::Selvedge, [zero(), length, left, left + edge]),
                zone(ZoneKind::Selvedge, [zero(), length, right - edge, right]),
            ];
            vec![sheet]
        }
        GarmentKind::Shirt | GarmentKind::Blouse => {
            // Cut off along the seams; then all edges are trimmed straight.
            let edge = round.small(4);
            let squared = |mut piece: Piece| {
                let [low, high, ..] = piece.reach();
                piece.zones = vec![
                    across(&piece, ZoneKind::CutEdge, low, low + edge),
                    across(&piece, ZoneKind::CutEdge, high - edge, high),
                ];
                piece
            };
            let waist = round.high(figures[0] / 2);
            let body = |part, hundredths: i64| {
                let part_of = |w: Length| Round::to(in_nm(w) * hundredths / 100, round.step());
                let stations = vec![
                    wide(zero(), part_of(hem), 50),
                    wide(waist, part_of(knee), 50),
                    wide(length, part_of(thigh), 50),
                ];
                squared(piece(part, stations, Vec::new()))
            };
            // A front is half as wide as the back less the button band; a sleeve is half as
            // wide at the cuff as at the armhole, and four fifths as long as the back.
            let up = round.high(figures[0] * 4 / 5);
            let sleeve = || {
                let stations = vec![
                    wide(zero(), Round::to(in_nm(hem) * 45 / 100, round.step()), 50),
                    wide(up, Round::to(in_nm(hem) * 80 / 100, round.step()), 50),
                ];
                squared(piece(GarmentPart::Sleeve, stations, Vec::new()))
            };
            vec![
                body(GarmentPart::Back, 100),
                body(GarmentPart::Front, 44),
                body(GarmentPart::Front, 44),
                sleeve(),
                sleeve(),
            ]
        }
    }
}

/// The piece as its other half lies: left and right change places.
pub fn mirrored(piece: &Piece, part: GarmentPart) -> Piece {
    // Lengths that `check` refuses may have no opposite; they keep as near as can be.
    let turned = |l: Length| nm(in_nm(l).saturating_neg());
    Piece {
        part,
        stations: piece
            .stations
            .iter()
            .map(|s| OutlineStation {
                at: s.at,
                left: turned(s.right),
                right: turned(s.left),
            })
            .collect(),
        zones: piece
            .zones
            .iter()
            .map(|z| Zone {
                left: turned(z.right),
                right: turned(z.left),
                ..*z
            })
            .collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{half_inches, millimetres};
    use proptest::prelude::*;

    fn hole(from: i64, to: i64, left: i64, right: i64) -> Zone {
        Zone {
            kind: ZoneKind::Hole,
            from: inches(from),
            to: inches(to),
            left: inches(left),
            right: inches(right),
        }
    }

    #[test]
    fn faults_are_named() {
        let good = Piece::rectangle(GarmentPart::Cloth, inches(20), inches(30));
        assert_eq!(good.check(), Ok(()));
        let check = |change: &dyn Fn(&mut Piece), want| {
            let mut piece = good.clone();
            change(&mut piece);
            assert_eq!(piece.check(), Err(want));
        };
        check(&|p| p.stations.truncate(1), PieceFault::TooFewStations);
        check(
            &|p| p.zones = vec![hole(1, 2, 1, 2); MOST + 1],
            PieceFault::TooMany,
        );
        check(&|p| p.stations[1].at = zero(), PieceFault::OutOfOrder(1));
        check(
            &|p| p.stations[0].left = inches(21),
            PieceFault::Crossing(0),
        );
        check(
            &|p| p.stations[1].right = nm(i64::MIN),
            PieceFault::StationTooFar(1),
        );
        check(
            &|p| p.stations.iter_mut().for_each(|s| s.right = s.left),
            PieceFault::NoWidth,
        );
        check(
            &|p| p.zones.push(hole(3, 3, 1, 2)),
            PieceFault::EmptyZone(0),
        );
        check(
            &|p| p.zones.push(hole(3, 4, 2, 1)),
            PieceFault::EmptyZone(0),
        );
        check(
            &|p| p.zones.push(hole(30, 34, 2, 3)),
            PieceFault::ZoneOutside(0),
        );
        check(
            &|p| p.zones.push(hole(3, 4, -3, 0)),
            PieceFault::ZoneOutside(0),
        );
        check(
            &|p| {
                p.zones.push(Zone {
                    to: nm(i64::MAX),
                    ..hole(1, 2, 1, 2)
                });
            },
            PieceFault::ZoneTooFar(0),
        );
    }

    #[test]
    fn every_starting_outline_is_sound() {
        for kind in GarmentKind::ALL {
            for size in [GarmentSize::Small, GarmentSize::Medium, GarmentSize::Large] {
                for system in [System::Inch, System::Metric] {
                    let area = |guess| {
                        let pieces = start(kind, size, guess, system);
                        for piece in &pieces {
                            assert_eq!(piece.check(), Ok(()), "{kind:?} {size:?} {guess:?}");
                        }
                        pieces
                            .iter()
                            .map(Piece::area)
                            .fold(square_metres(zero(), zero()), |a, b| a + b)
                    };
                    assert!(area(Guess::Low) <= area(Guess::Typical));
                    assert!(area(Guess::Typical) <= area(Guess::High));
                }
            }
        }
    }

    /// Nobody measures 44.45 cm, or 16 7/8 in where 17 in is meant.
    #[test]
    fn a_starting_outline_has_round_figures_of_its_system() {
        for kind in GarmentKind::ALL {
            for size in [GarmentSize::Small, GarmentSize::Medium, GarmentSize::Large] {
                for guess in [Guess::Low, Guess::Typical, Guess::High] {
                    for (system, outline, place) in [
                        (System::Inch, NM_PER_INCH / 2, NM_PER_INCH / 8),
                        (System::Metric, 10 * NM_PER_MM, 5 * NM_PER_MM),
                    ] {
                        for piece in start(kind, size, guess, system) {
                            for s in &piece.stations {
                                let figures = [s.at, s.right - s.left];
                                let round = figures.iter().all(|l| in_nm(*l) % outline == 0);
                                assert!(round, "{kind:?} {size:?} {guess:?} {system:?} {s:?}");
                            }
                            for z in &piece.zones {
                                let figures = [z.from, z.to, z.left, z.right];
                                let round = figures.iter().all(|l| in_nm(*l) % place == 0);
                                assert!(round, "{kind:?} {size:?} {guess:?} {system:?} {z:?}");
                            }
                        }
                    }
                }
            }
        }
        let medium = |system| {
            let (kind, size) = (GarmentKind::MensJeans, GarmentSize::Medium);
            let leg = start(kind, size, Guess::Typical, system).remove(0);
            leg.stations
                .iter()
                .map(|s| [s.at, s.right - s.left])
                .collect::<Vec<_>>()
        };
        // 32 in long, 17, 19 and 25 in round; in metric the nearest whole centimetres.
        let inch = [[0, 34], [35, 38], [64, 50]].map(|f| f.map(half_inches));
        assert_eq!(medium(System::Inch), inch);
        let metric = [[0, 43], [44, 48], [81, 64]].map(|f| f.map(|cm| millimetres(cm * 10)));
        assert_eq!(medium(System::Metric), metric);
    }

    #[test]
    fn an_area_in_inches() {
        let piece = Piece::rectangle(GarmentPart::Cloth, inches(10), inches(20));
        let off = piece.area() - square_metres(inches(10), inches(20));
        assert!(off.value.abs() < 1e-12);
    }

    /// Half a metre of cloth is 48 cm once it is squared up: three squares of 12.5 cm, not
    /// four; across 55 cm, 52 cm between its trimmed edges, four.
    #[test]
    fn a_fat_quarter_is_squared_up_before_it_is_cut() {
        use crate::cloth::cutting::{Cutting, bound, lay_out};
        let how = |side, system| Cutting {
            side,
            step: Cutting::usual_step(system),
            ..Cutting::default()
        };
        let cm = |n: i64| millimetres(n * 10);
        let edges = ClothEdges::usual(System::Metric, 1);
        let quarter = trimmed(cm(55), cm(50), edges).unwrap();
        assert_eq!(quarter.check(), Ok(()));
        let metric = how(millimetres(125), System::Metric);
        assert_eq!(lay_out(&quarter, &metric).unwrap().count, 12);
        assert_eq!(bound(&quarter, &metric), Ok(12));
        // Untrimmed it promised four by four.
        assert_eq!(
            lay_out(&yardage(cm(55), cm(50)), &metric).unwrap().count,
            16
        );
        // 48 cm are four strips of 12 cm to the millimetre, from the trimmed edge on.
        let snug = lay_out(&quarter, &how(cm(12), System::Inch)).unwrap();
        assert_eq!(snug.count, 16);
        assert_eq!(snug.strips[0].from, cm(1));
        // 22 × 18 in: 20¾ by 17 in, four by three of 5 in.
        let quarter = trimmed(inches(22), inches(18), ClothEdges::usual(System::Inch, 1));
        let inch = how(inches(5), System::Inch);
        assert_eq!(lay_out(&quarter.unwrap(), &inch).unwrap().count, 12);
        // Cloth that is all edge is no cloth.
        assert_eq!(trimmed(cm(2), cm(50), edges), None);
        assert_eq!(trimmed(cm(50), cm(2), edges), None);
        let none = ClothEdges {
            cut: zero(),
            selvedge: zero(),
            selvedges: 2,
        };
        assert_eq!(trimmed(cm(50), cm(50), none), Some(yardage(cm(50), cm(50))));
    }

    #[test]
    fn packs_are_as_counted() {
        let pack = |side, count| Precut {
            name: "charm".into(),
            side: inches(side),
            count: Count::at_most(count),
        };
        assert_eq!(pack(5, 42).gives(inches(5)), 42);
        assert_eq!(pack(10, 42).gives(inches(5)), 168);
        assert_eq!(pack(4, 42).gives(inches(5)), 0);
        assert_eq!(pack(4, u32::MAX).gives(nm(i64::MIN)), Count::MOST);
    }

    fn any_length() -> impl Strategy<Value = Length> {
        prop_oneof![any::<i64>(), -10i64..10, -600_000_000i64..600_000_000].prop_map(nm)
    }

    proptest! {
        #[test]
        fn nothing_panics(
            stations in prop::collection::vec((any_length(), any_length(), any_length()), 0..5),
            zones in prop::collection::vec(prop::array::uniform4(any_length()), 0..4),
        ) {
            let piece = Piece {
                part: GarmentPart::Cloth,
                stations: stations.into_iter().map(|(at, left, right)| OutlineStation { at, left, right }).collect(),
                zones: zones.into_iter()
                    .map(|[from, to, left, right]| Zone { kind: ZoneKind::Stain, from, to, left, right })
                    .collect(),
            };
            let turned = mirrored(&piece, GarmentPart::Cloth);
            let _ = turned.area();
            if piece.check().is_ok() {
                prop_assert_eq!(turned.check(), Ok(()));
                prop_assert_eq!(mirrored(&turned, GarmentPart::Cloth), piece);
            }
        }
    }
}
