//! Outlines to begin with, before anything was measured.
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
//!
//! # Pockets and waistbands
//!
//! [`small_part`] gives an outline for a back pocket or a waistband of jeans, again **common
//! practice, no source**. A back pocket of men's jeans is taken for 6½ in wide above and 5½ in
//! below, 7 in high with its point, the uppermost inch turned down and stitched; a waistband, once
//! opened, for 3 in wide and as long as the waist, with 2 in at each end taken up by the button
//! and its hole.

use crate::cloth::pieces::{GarmentPart, OutlineStation, Piece, Zone, ZoneKind, mirrored};
use crate::measure::{Length, NM_PER_INCH, NM_PER_MM, System, eighth_inches, in_nm, nm, zero};
use crate::types::TS;
use serde::{Deserialize, Serialize};

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

/// A back pocket or a waistband of jeans to begin with; nothing for any other part, or for a
/// garment that is no jeans.
pub fn small_part(start: GarmentStart, part: GarmentPart) -> Option<Piece> {
    let nth = match start.size.unwrap_or(GarmentSize::Medium) {
        GarmentSize::Small => 0,
        GarmentSize::Medium => 1,
        GarmentSize::Large => 2,
    };
    // Of a pocket the width above and below and the height, then the waist, in quarter inches.
    let figures: [i64; 4] = match start.kind {
        GarmentKind::MensJeans => [[24, 20, 26, 128], [26, 22, 28, 144], [28, 24, 30, 168]],
        GarmentKind::WomensJeans => [[22, 18, 24, 112], [24, 20, 26, 128], [26, 22, 28, 152]],
        GarmentKind::ChildsJeans => [[16, 14, 18, 80], [20, 16, 22, 92], [22, 18, 24, 104]],
        GarmentKind::JacketBack
        | GarmentKind::Skirt
        | GarmentKind::Sheet
        | GarmentKind::Shirt
        | GarmentKind::Blouse => return None,
    }[nth];
    let round = Round {
        system: start.system,
        percent: 100,
    };
    let [above, below, high, long] = figures.map(|quarters| round.high(quarters));
    let wide = |at: Length, width: Length| OutlineStation {
        at,
        left: zero() - round.share(width, 50),
        right: width - round.share(width, 50),
    };
    let zone = |kind, from: Length, to: Length, width: Length| Zone {
        kind,
        from,
        to,
        left: zero() - round.share(width, 50),
        right: width - round.share(width, 50),
    };
    let (stations, zones) = match part {
        GarmentPart::Pocket => {
            let (point, turned_down) = (round.high(4), round.small(8));
            let stations = vec![
                wide(zero(), round.high(4)),
                wide(point + round.high(2), below),
                wide(high, above),
            ];
            let zones = vec![zone(ZoneKind::Hem, high - turned_down, high, above)];
            (stations, zones)
        }
        GarmentPart::Waistband => {
            let (width, end) = (round.high(12), round.small(16));
            let stations = vec![wide(zero(), width), wide(long, width)];
            let zones = vec![
                zone(ZoneKind::Hole, zero(), end, width),
                zone(ZoneKind::Hole, long - end, long, width),
            ];
            (stations, zones)
        }
        _ => return None,
    };
    Some(Piece {
        part,
        stations,
        zones,
    })
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
pub(super) fn first_outline(kind: GarmentKind, size: GarmentSize) -> Option<Vec<OutlineStation>> {
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{half_inches, millimetres, square_metres};

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

    #[test]
    fn pockets_and_waistbands_are_sound_and_round() {
        use crate::cloth::cutting::{BindingCut, Cutting, lay_out};
        for kind in GarmentKind::ALL {
            for size in [GarmentSize::Small, GarmentSize::Medium, GarmentSize::Large] {
                for (system, step) in [
                    (System::Inch, NM_PER_INCH / 2),
                    (System::Metric, 10 * NM_PER_MM),
                ] {
                    let start = GarmentStart {
                        kind,
                        size: Some(size),
                        knees: Knees::Unknown,
                        system,
                    };
                    let legs = start.pieces(Guess::Typical)[0].part == GarmentPart::LeftLeg;
                    for part in [GarmentPart::Pocket, GarmentPart::Waistband] {
                        let piece = small_part(start, part);
                        assert_eq!(piece.is_some(), legs, "{kind:?}");
                        let Some(piece) = piece else { continue };
                        assert_eq!(piece.check_measured(), Ok(()), "{kind:?} {size:?}");
                        let figures = piece.stations.iter().flat_map(|s| [s.at, s.right - s.left]);
                        assert!(figures.into_iter().all(|l| in_nm(l) % step == 0));
                    }
                    assert_eq!(small_part(start, GarmentPart::Back), None);
                }
            }
        }
        // By hand: no 5 in square lies in a pocket of men's jeans, 4½ in high between its point
        // and its hem; a waistband opened to 3 in gives three strips of 1 by 28 in.
        let start = GarmentStart {
            kind: GarmentKind::MensJeans,
            size: None,
            knees: Knees::Unknown,
            system: System::Inch,
        };
        let how = Cutting {
            binding: Some(BindingCut {
                width: half_inches(2),
                length: half_inches(56),
                most: 9,
            }),
            ..Cutting::default()
        };
        let of = |part| lay_out(&small_part(start, part).unwrap(), &how).unwrap();
        assert_eq!(of(GarmentPart::Pocket).count, 0);
        let band = of(GarmentPart::Waistband);
        assert_eq!((band.count, band.binding.len()), (0, 3));
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

    const SIZES: [GarmentSize; 3] = [GarmentSize::Small, GarmentSize::Medium, GarmentSize::Large];

    /// Each height and width of a larger size is no less, and more by two fifths at most (our judgement);
    /// the cloth of a piece grows.
    #[test]
    fn a_larger_size_is_larger_by_a_little() {
        let figures = |pieces: &[Piece]| -> Vec<i64> {
            let stations = pieces.iter().flat_map(|p| &p.stations);
            let each = stations.flat_map(|s| [in_nm(s.at), in_nm(s.right - s.left)]);
            each.collect()
        };
        for kind in GarmentKind::ALL {
            let of = |size| {
                let start = GarmentStart {
                    kind,
                    size: Some(size),
                    knees: Knees::Whole,
                    system: System::Inch,
                };
                let mut pieces = start.pieces(Guess::Typical);
                pieces.extend(
                    [GarmentPart::Pocket, GarmentPart::Waistband]
                        .iter()
                        .filter_map(|part| small_part(start, *part)),
                );
                pieces
            };
            for sizes in SIZES.windows(2) {
                let [one, two] = [of(sizes[0]), of(sizes[1])];
                for (a, b) in figures(&one).into_iter().zip(figures(&two)) {
                    assert!(a <= b && b * 5 <= a * 7, "{kind:?} {sizes:?} {a} {b}");
                }
                let grows = |(a, b): (&Piece, &Piece)| a.area() < b.area();
                assert!(one.iter().zip(&two).all(grows), "{kind:?} {sizes:?}");
            }
        }
    }

    /// Straight jeans are no wider at the knee than at the thigh and no wider at the hem than at the knee;
    /// a thigh is between two thirds and four fifths of the waist round (our judgement). A back
    /// pocket is wider above than below, and higher than wide.
    #[test]
    fn jeans_have_the_shape_of_a_body() {
        let jeans = [
            GarmentKind::MensJeans,
            GarmentKind::WomensJeans,
            GarmentKind::ChildsJeans,
        ];
        for (kind, size) in jeans.into_iter().flat_map(|k| SIZES.map(|s| (k, s))) {
            let leg = &start(kind, size, Guess::Typical, System::Inch)[0];
            let wide = |s: &OutlineStation| in_nm(s.right - s.left);
            let [hem, knee, thigh] = [0, 1, 2].map(|n| wide(&leg.stations[n]));
            assert!(hem <= knee && knee <= thigh, "{kind:?} {size:?}");
            let part = |part| {
                let start = GarmentStart {
                    kind,
                    size: Some(size),
                    knees: Knees::Unknown,
                    system: System::Inch,
                };
                small_part(start, part).unwrap()
            };
            let waist = in_nm(part(GarmentPart::Waistband).reach()[1]);
            assert!(
                thigh * 3 >= waist * 2 && thigh * 5 <= waist * 4,
                "{kind:?} {size:?}"
            );
            let pocket = part(GarmentPart::Pocket);
            let [below, above] = [1, 2].map(|n| wide(&pocket.stations[n]));
            let high = in_nm(pocket.reach()[1]);
            assert!(below < above && above < high && high * 4 <= above * 5);
        }
    }

    /// Flat sheets as they are commonly sold (from memory): single 66 × 96 in, double 81 × 96 in, large
    /// double 90 × 102 in.
    #[test]
    fn sheets_are_of_the_usual_sizes() {
        let sold = [[66, 96], [81, 96], [90, 102]];
        for (size, [wide, long]) in SIZES.into_iter().zip(sold) {
            let sheet = start(GarmentKind::Sheet, size, Guess::High, System::Inch).remove(0);
            let [low, high, left, right] = sheet.reach();
            assert_eq!(
                [right - left, high - low],
                [wide, long].map(|n| half_inches(2 * n))
            );
            // A hem of 1 in below, one of 4 in above, and half an inch of either selvedge.
            let clear: Vec<[Length; 2]> = sheet
                .zones
                .iter()
                .map(|z| [z.to - z.from, z.right - z.left])
                .collect();
            let across = |high| [half_inches(high), right - left];
            let up = [high - low, half_inches(1)];
            assert_eq!(clear, [across(2), across(8), up, up]);
        }
    }

    /// By hand, men's medium in inches: 19 in round at the knee, which is 17½ in up (11/20 of 32 in, on half
    /// inches). 55 in 100 of it lie to the back, 10½ in, and 8½ in to the front. A small worn knee has
    /// 40 in 100 of the front, from 2½ in (30 in 100 of 8½) to 6 in, and reaches up and down by a sixteenth
    /// of the leg, 2 in. Narrow and worn, the leg is 18 in round there: 9⅞ in to the back and 8⅛ in to
    /// the front, with a knee from 1¾ in (22½ in 100) to 6⅜ in, 4 in up and down.
    #[test]
    fn a_knee_is_worn_on_the_middle_of_the_front() {
        let knee = |guess, knees| {
            let start = GarmentStart {
                kind: GarmentKind::MensJeans,
                size: Some(GarmentSize::Medium),
                knees,
                system: System::Inch,
            };
            let [leg, other] = start.pieces(guess).try_into().unwrap();
            let [bend, _] = [leg.stations[1], other.stations[1]];
            let of = |piece: &Piece| {
                let zones = piece.zones.iter();
                let mut knees = zones.filter(|z| z.kind == ZoneKind::Knee);
                knees.next().map(|z| [z.from, z.to, z.left, z.right])
            };
            // The other leg is its mirror.
            let turned = of(&leg).map(|[a, b, c, d]| [a, b, zero() - d, zero() - c]);
            assert_eq!(of(&other), turned);
            let told = |l: Length| in_nm(l) * 8 / NM_PER_INCH;
            (
                [bend.at, bend.left, bend.right].map(told),
                of(&leg).map(|z| z.map(told)),
            )
        };
        let typical = [140, -84, 68];
        let small = Some([124, 156, 20, 48]);
        assert_eq!(knee(Guess::Typical, Knees::Unknown), (typical, small));
        assert_eq!(knee(Guess::Typical, Knees::Whole), (typical, None));
        let narrow = [140, -79, 65];
        let large = Some([108, 172, 14, 51]);
        assert_eq!(knee(Guess::Low, Knees::Unknown), (narrow, large));
        assert_eq!(knee(Guess::Low, Knees::Torn), (narrow, large));
        assert_eq!(knee(Guess::Low, Knees::Whole), (narrow, None));
        // Wide and little worn it is 20 in round there.
        assert_eq!(knee(Guess::High, Knees::Unknown), ([140, -88, 72], None));
        assert!(knee(Guess::High, Knees::Torn).1.is_some());
        // Torn as a rule is torn wide: 22½ in 100 of 8½ in are 1⅞ in.
        assert_eq!(
            knee(Guess::Typical, Knees::Torn),
            (typical, Some([108, 172, 15, 53]))
        );
    }

    /// What is kept clear of each garment, by hand from its figures in inches, all of it within the cloth
    /// and alike on both sides of the middle line.
    #[test]
    fn what_is_kept_clear_lies_alike_on_both_sides() {
        for kind in GarmentKind::ALL {
            for piece in start(kind, GarmentSize::Medium, Guess::High, System::Inch) {
                let [low, high, left, right] = piece.reach();
                for z in &piece.zones {
                    assert!(z.from >= low && z.to <= high, "{kind:?} {z:?}");
                    assert!(z.left >= left && z.right <= right, "{kind:?} {z:?}");
                    let other = (zero() - z.right, zero() - z.left);
                    let is_other =
                        |o: &Zone| (o.kind, o.left, o.right) == (z.kind, other.0, other.1);
                    let is_leg = left + right != zero();
                    assert!(is_leg || piece.zones.iter().any(is_other), "{kind:?} {z:?}");
                }
            }
        }
        let zones = |kind| {
            let piece = start(kind, GarmentSize::Medium, Guess::Typical, System::Inch).remove(0);
            let told = |l: Length| in_nm(l) * 8 / NM_PER_INCH;
            let zones = piece.zones.iter();
            zones
                .map(|z| (z.kind, [z.from, z.to, z.left, z.right].map(told)))
                .collect::<Vec<_>>()
        };
        // A leg of 32 in, 25 in round at the thigh: 13¾ in to the back. The ridge is ¾ in wide, the hem 1 in.
        let leg = zones(GarmentKind::MensJeans);
        assert_eq!(leg[0], (ZoneKind::Outseam, [0, 256, -3, 3]));
        assert_eq!(leg[1], (ZoneKind::Hem, [0, 8, -110, 90]));
        // The back of a jacket, 22 in long and 18 in wide below, 20 in above: 1½ in of hem, the yoke seam at
        // three quarters, and a seam ¾ in wide a quarter of the way in from either side.
        assert_eq!(
            zones(GarmentKind::JacketBack),
            [
                (ZoneKind::Hem, [0, 12, -80, 80]),
                (ZoneKind::Seam, [128, 134, -80, 80]),
                (ZoneKind::Seam, [0, 132, 33, 39]),
                (ZoneKind::Seam, [0, 132, -39, -33]),
            ]
        );
        // A skirt of 18 in, 38 in round above, with a seam up its middle and two pockets in its upper third.
        let skirt = zones(GarmentKind::Skirt);
        assert_eq!(skirt[0], (ZoneKind::Hem, [0, 8, -176, 176]));
        assert_eq!(skirt[1], (ZoneKind::Seam, [0, 144, -3, 3]));
        // Of 38 in 12 in 100 are 4½ in and 38 in 100 are 14½ in.
        assert_eq!(skirt[2], (ZoneKind::Pocket, [96, 144, 36, 116]));
    }

    /// By hand, a man's medium shirt in inches: its back is 23 in wide and 25 in long. A front is 44 in 100 of
    /// that wide, 10 in, so that both and a button band of 3 in are as wide as the back. A sleeve is 18½ in
    /// round at the armhole, 10½ in at the cuff and 20 in long. Half an inch is trimmed off each end.
    #[test]
    fn a_shirt_comes_apart_in_five() {
        let shirt = start(
            GarmentKind::Shirt,
            GarmentSize::Medium,
            Guess::Typical,
            System::Inch,
        );
        let told = |l: Length| in_nm(l) * 2 / NM_PER_INCH;
        let shape: Vec<Vec<[i64; 2]>> = shirt
            .iter()
            .map(|p| {
                p.stations
                    .iter()
                    .map(|s| [told(s.at), told(s.right - s.left)])
                    .collect()
            })
            .collect();
        let back = vec![[0, 46], [25, 46], [50, 46]];
        let front = vec![[0, 20], [25, 20], [50, 20]];
        let sleeve = vec![[0, 21], [40, 37]];
        assert_eq!(shape, [back, front.clone(), front, sleeve.clone(), sleeve]);
        for piece in &shirt {
            let ends = piece.zones.iter().map(|z| [told(z.from), told(z.to)]);
            let high = told(piece.reach()[1]);
            assert_eq!(ends.collect::<Vec<_>>(), [[0, 1], [high - 1, high]]);
        }
    }

    /// By hand, a pocket and a waistband of men's jeans, medium: 6½ in wide above and 5½ in below, 7 in high
    /// with a point of 1 in, 1 in of it turned down; a waistband of 3 by 36 in, 2 in gone at each end.
    #[test]
    fn a_pocket_and_a_waistband_by_hand() {
        let start = |size| GarmentStart {
            kind: GarmentKind::MensJeans,
            size,
            knees: Knees::Unknown,
            system: System::Inch,
        };
        let told = |l: Length| in_nm(l) * 8 / NM_PER_INCH;
        let shape = |part| {
            let piece = small_part(start(None), part).unwrap();
            let same = small_part(start(Some(GarmentSize::Medium)), part);
            assert_eq!(same.as_ref(), Some(&piece));
            let stations = piece
                .stations
                .iter()
                .map(|s| [s.at, s.left, s.right].map(told));
            let zones = piece
                .zones
                .iter()
                .map(|z| [z.from, z.to, z.left, z.right].map(told));
            (stations.collect::<Vec<_>>(), zones.collect::<Vec<_>>())
        };
        let (pocket, hem) = shape(GarmentPart::Pocket);
        assert_eq!(pocket, [[0, -4, 4], [12, -22, 22], [56, -26, 26]]);
        assert_eq!(hem, [[48, 56, -26, 26]]);
        let (band, ends) = shape(GarmentPart::Waistband);
        assert_eq!(band, [[0, -12, 12], [288, -12, 12]]);
        assert_eq!(ends, [[0, 16, -12, 12], [272, 288, -12, 12]]);
    }

    /// By hand in eighths of an inch, as outlines began at first: the half of a width on the lower eighth.
    /// Men's medium: 17 in at the hem are 74 and 61, 19 in at 17½ in are 83 and 68, 25 in are 110 and 90.
    #[test]
    fn where_older_outlines_began() {
        let told = |l: Length| in_nm(l) * 8 / NM_PER_INCH;
        let first = |kind| {
            let stations = first_outline(kind, GarmentSize::Medium)?;
            let stations = stations.iter();
            Some(
                stations
                    .map(|s| [s.at, s.left, s.right].map(told))
                    .collect::<Vec<_>>(),
            )
        };
        let leg = vec![[0, -74, 61], [140, -83, 68], [256, -110, 90]];
        assert_eq!(first(GarmentKind::MensJeans), Some(leg));
        // The back of a jacket has its yoke at three quarters of 22 in, a skirt its hips at half of 18 in.
        let jacket = vec![[0, -72, 72], [132, -80, 80], [176, -80, 80]];
        assert_eq!(first(GarmentKind::JacketBack), Some(jacket));
        let skirt = vec![[0, -176, 176], [72, -164, 164], [144, -152, 152]];
        assert_eq!(first(GarmentKind::Skirt), Some(skirt));
        let sheet = vec![[0, -324, 324], [768, -324, 324]];
        assert_eq!(first(GarmentKind::Sheet), Some(sheet));
        assert_eq!(first(GarmentKind::Shirt), None);
    }

    /// By hand in centimetres: 48 round at the knee, 55 in 100 of it to the back are 26.4, so 26, and 22 are
    /// left for the front.
    #[test]
    fn a_metric_leg_has_whole_centimetres_on_each_side() {
        let (kind, size) = (GarmentKind::MensJeans, GarmentSize::Medium);
        let knee = start(kind, size, Guess::Typical, System::Metric)[0].stations[1];
        assert_eq!([knee.left, knee.right], [-260, 220].map(millimetres));
    }

    /// Jeans, jackets and skirts are denim; knees nobody looked at are not written down.
    #[test]
    fn denim_and_knees() {
        let denim = GarmentKind::ALL.map(GarmentKind::is_denim);
        assert_eq!(denim, [true, true, true, true, true, false, false, false]);
        let written = |knees| {
            let start = GarmentStart {
                kind: GarmentKind::MensJeans,
                size: None,
                knees,
                system: System::Inch,
            };
            let written = serde_json::to_value(start).unwrap();
            written.get("knees").is_some()
        };
        assert!(!written(Knees::Unknown) && written(Knees::Whole) && written(Knees::Torn));
    }
}
