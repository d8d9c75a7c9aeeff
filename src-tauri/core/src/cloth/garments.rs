//! What the squares are cut from: garments, cloth off the roll and packs.
//!
//! A [`Garment`] has its flat pieces (`cloth/pieces.rs`), which begin with the outlines of
//! `cloth/starts.rs` where nobody has measured them. A [`Precut`] is squares bought ready cut.

pub use crate::cloth::pieces::{
    GarmentPart, MOST, OutlineStation, Piece, PieceFault, Zone, ZoneKind, mirrored,
};
use crate::cloth::starts::first_outline;
pub use crate::cloth::starts::{
    GarmentKind, GarmentSize, GarmentStart, Guess, Knees, small_part, start,
};
use crate::measure::{Count, Length, NM_PER_MM, System, eighth_inches, in_nm, inches, nm, zero};
use crate::types::TS;
use serde::{Deserialize, Serialize};

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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::millimetres;

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

    /// By hand: of a fat quarter of 55 × 50 cm one long side is a selvedge, 2 cm of which go, and 1 cm of
    /// each cut edge; what is left lies from 2 to 54 cm across and from 1 to 49 cm up. Off the roll both
    /// long sides are selvedges. In inches it is ¾ in and ½ in.
    #[test]
    fn each_edge_loses_what_is_trimmed_off_it() {
        let left = |width: Length, length: Length, edges| {
            let piece = trimmed(width, length, edges).unwrap();
            let selvedges = piece.zones.iter().filter(|z| z.kind == ZoneKind::Selvedge);
            let selvedges = selvedges.count();
            let [mut from, mut to, mut left, mut right] = [zero(), length, zero(), width];
            for z in &piece.zones {
                match (z.left, z.right, z.from, z.to) {
                    (l, r, f, t) if l == zero() && r == width && f == zero() => from = t,
                    (l, r, f, t) if l == zero() && r == width && t == length => to = f,
                    (l, r, f, t) if l == zero() && f == zero() && t == length => left = r,
                    (l, r, f, t) if r == width && f == zero() && t == length => right = l,
                    _ => panic!("{z:?} lies along no edge"),
                }
            }
            (selvedges, [left, right, from, to])
        };
        let cm = |n: i64| millimetres(n * 10);
        let metric = |selvedges| ClothEdges::usual(System::Metric, selvedges);
        assert_eq!(left(cm(55), cm(50), metric(1)), (1, [2, 54, 1, 49].map(cm)));
        assert_eq!(
            left(cm(140), cm(100), metric(2)),
            (2, [2, 138, 1, 99].map(cm))
        );
        assert_eq!(left(cm(60), cm(40), metric(0)), (0, [1, 59, 1, 39].map(cm)));
        let inch = ClothEdges::usual(System::Inch, 2);
        let eighths = [6, 44 * 8 - 6, 4, 36 * 8 - 4].map(eighth_inches);
        assert_eq!(left(inches(44), inches(36), inch), (2, eighths));
        let size = |system| {
            let [_, high, _, right] = fat_quarter(system).reach();
            [right, high]
        };
        assert_eq!(size(System::Inch), [22, 18].map(inches));
        assert_eq!(size(System::Metric), [55, 50].map(cm));
    }

    /// By hand: between a selvedge of 2 cm and a cut edge of 1 cm there is cloth from 3 cm of width on, and
    /// between two cut edges from 2 cm of length on; at just so much there is none.
    #[test]
    fn cloth_that_is_all_edge_is_none() {
        let edges = ClothEdges::usual(System::Metric, 1);
        let is = |width: i64, length: i64| {
            trimmed(millimetres(width), millimetres(length), edges).is_some()
        };
        assert!(is(31, 21) && !is(30, 21) && !is(31, 20));
        // No edge is wider than the cloth, and none is less than nothing.
        let odd = |cut: i64, selvedge: i64| {
            let edges = ClothEdges {
                cut: millimetres(cut),
                selvedge: millimetres(selvedge),
                selvedges: 0,
            };
            trimmed(millimetres(100), millimetres(900), edges).is_some()
        };
        assert!(odd(10, 20) && !odd(10, 100) && !odd(-1, 20) && !odd(10, -1));
    }

    /// A pair of jeans of an older file says nothing of how it was begun; while one leg still has the
    /// outline it began with, it is known by that one, whichever it is.
    #[test]
    fn an_older_garment_is_known_by_a_piece_nobody_measured() {
        let pieces = start(
            GarmentKind::WomensJeans,
            GarmentSize::Large,
            Guess::Typical,
            System::Metric,
        );
        let mut garment = Garment {
            name: String::new(),
            pieces,
            start: None,
        };
        let said = |garment: &Garment| garment.began().map(|s| (s.kind, s.size, s.system));
        let was = Some((
            GarmentKind::WomensJeans,
            Some(GarmentSize::Large),
            System::Metric,
        ));
        assert_eq!(said(&garment), was);
        let measured = |garment: &mut Garment, n: usize| {
            garment.pieces[n].stations[1].at += millimetres(7);
        };
        measured(&mut garment, 1);
        assert_eq!(said(&garment), was);
        measured(&mut garment, 0);
        assert_eq!(said(&garment), None);
        measured(&mut garment, 1);
        garment.pieces[1].stations[1].at -= millimetres(14);
        assert_eq!(said(&garment), was);
    }
}
