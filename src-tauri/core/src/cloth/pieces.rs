//! A flat piece of cloth: its outline, and the places that must not be cut into.
//!
//! A leg opened along the inseam, the back of a jacket, a sheet: pressed flat, each
//! becomes a [`Piece`]. The maker
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

use crate::measure::{Area, Length, in_mm, in_nm, nm, square_metres, zero};
use crate::types::TS;
use serde::{Deserialize, Serialize};
use thiserror::Error;

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
    /// A back pocket, unpicked and pressed flat.
    Pocket,
    /// A waistband, taken off, opened and pressed flat; it lies with one end towards the maker.
    Waistband,
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
            | GarmentPart::Sleeve
            | GarmentPart::Pocket
            | GarmentPart::Waistband => garment,
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
    use crate::measure::inches;
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
        // A place that only touches an edge from outside lies beside the cloth.
        for beside in [
            hole(3, 4, -3, 0),
            hole(3, 4, 20, 22),
            hole(-2, 0, 1, 2),
            hole(30, 31, 1, 2),
        ] {
            check(&|p| p.zones.push(beside), PieceFault::ZoneOutside(0));
        }
        check(
            &|p| p.zones.push(hole(3, 4, 2, 2)),
            PieceFault::EmptyZone(0),
        );
        // Each figure of a station on its own.
        for far in [
            |s: &mut OutlineStation| s.at = nm(i64::MAX),
            |s: &mut OutlineStation| s.left = nm(i64::MIN),
            |s: &mut OutlineStation| s.right = nm(i64::MAX),
        ] {
            check(&|p| far(&mut p.stations[1]), PieceFault::StationTooFar(1));
        }
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
    fn an_area_in_inches() {
        let piece = Piece::rectangle(GarmentPart::Cloth, inches(10), inches(20));
        let off = piece.area() - square_metres(inches(10), inches(20));
        assert!(off.value.abs() < 1e-12);
        // By hand: 10 in wide, 8 in from 5 in up to 10 in: 9 × 5 and 8 × 5 in are 85 in².
        let station = |at, left, right| OutlineStation {
            at: inches(at),
            left: inches(left),
            right: inches(right),
        };
        let mut piece = piece;
        piece.stations = vec![station(0, -5, 5), station(5, -4, 4), station(10, -4, 4)];
        let off = piece.area() - square_metres(inches(17), inches(5));
        assert!(off.value.abs() < 1e-12);
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
