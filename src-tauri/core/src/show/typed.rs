//! A piece as typed: its outline and the places to avoid.

use crate::cloth::garments::{OutlineStation, Piece, PieceFault, Zone, ZoneKind};
use crate::cloth::{cutting, reshape};
use crate::measure::{Fraction, Length, Ruler, from_mm, in_mm, read_exact, zero};
use crate::show::context::Context;
use crate::show::parts::FieldProblem;
use crate::show::{errors, fields};
use crate::types::TS;
use serde::{Deserialize, Serialize};

/// One station of an outline as typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct StationTyped {
    /// Height above the hem.
    pub at: String,
    /// Width there.
    pub width: String,
}

/// A no-go zone as typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ZoneTyped {
    /// Why.
    pub kind: ZoneKind,
    /// From this height above the hem.
    pub from: String,
    /// To this height.
    pub to: String,
    /// From this far from the cloth's left edge at the lower line.
    pub left: String,
    /// So wide.
    pub width: String,
}

/// A piece as typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PieceTyped {
    /// Its stations, from the hem up.
    pub stations: Vec<StationTyped>,
    /// Its zones.
    pub zones: Vec<ZoneTyped>,
}

/// An outline as typed fields. Widths do not say where the middle is, and
/// places to keep clear from the edge of the cloth at their lower line.
pub(super) fn typed_of(piece: &Piece, context: Context<'_>) -> PieceTyped {
    let [bottom, top, ..] = piece.reach();
    PieceTyped {
        stations: piece
            .stations
            .iter()
            .map(|s| StationTyped {
                at: fields::field(s.at, context),
                width: fields::field(s.right - s.left, context),
            })
            .collect(),
        zones: piece
            .zones
            .iter()
            .map(|z| {
                // A zone may reach past the cloth; only the part on the cloth is given.
                let low = std::cmp::max(z.from, bottom);
                let [left, right] = cutting::edges(piece, low);
                let from = std::cmp::max(z.left, left);
                let to = std::cmp::max(std::cmp::min(z.right, right), from);
                ZoneTyped {
                    kind: z.kind,
                    from: fields::field(low, context),
                    to: fields::field(std::cmp::min(z.to, top), context),
                    left: laid(from - left, false, context),
                    width: laid(to - from, true, context),
                }
            })
            .collect(),
    }
}

/// What the fields say, given the outline they began from: each width keeps the place of
/// its middle, and a place to keep clear that was not typed anew goes with the cloth, which
/// `tidy` then contains; what is wrong goes to `faults`.
pub(super) fn read_typed(
    kept: &Piece,
    tidy: &mut PieceTyped,
    faults: &mut Vec<FieldProblem>,
    context: Context<'_>,
) -> Option<Piece> {
    let mut read = |field: String, text: &mut String| match context.parse(text) {
        Ok(length) => {
            *text = fields::field(length, context);
            Some(length)
        }
        Err(error) => {
            faults.push(FieldProblem {
                field,
                problem: errors::typed(&error, context),
            });
            None
        }
    };
    let mut stations = Vec::new();
    for (i, typed) in tidy.stations.iter_mut().enumerate() {
        let at = read(format!("station-{i}-at"), &mut typed.at);
        let width = read(format!("station-{i}-width"), &mut typed.width);
        let (at, width) = at.zip(width).unwrap_or((zero(), zero()));
        let same = kept
            .stations
            .iter()
            .find(|s| s.at == at && s.right - s.left == width);
        let (left, right) = match same {
            Some(s) => (s.left, s.right),
            None => {
                let left = middle(kept, at) - width / 2;
                (left, left + width)
            }
        };
        stations.push(OutlineStation { at, left, right });
    }
    let mut piece = Piece {
        part: kept.part,
        stations,
        zones: Vec::new(),
    };
    let over = Context {
        ruler: context.ruler.other(),
        ..context
    };
    let standing = [typed_of(kept, context).zones, typed_of(kept, over).zones];
    // Those restated where they lie now.
    let mut stayed = Vec::new();
    for (i, typed) in tidy.zones.iter_mut().enumerate() {
        // One left as it was is kept as it was, wherever it reaches; it goes with the cloth.
        let same = standing.iter().find_map(|zones| {
            let here = zones.get(i).filter(|zone| *zone == typed).map(|_| i);
            here.or_else(|| zones.iter().position(|zone| zone == typed))
        });
        if let Some(zone) = same.and_then(|n| kept.zones.get(n)) {
            let system = context.ruler.system;
            piece
                .zones
                .push(reshape::carried(kept, &piece, zone, system));
            stayed.push(i);
            continue;
        }
        let from = read(format!("zone-{i}-from"), &mut typed.from);
        let to = read(format!("zone-{i}-to"), &mut typed.to);
        let left = read(format!("zone-{i}-left"), &mut typed.left);
        let width = read(format!("zone-{i}-width"), &mut typed.width);
        if let (Some(from), Some(to), Some(left), Some(width)) = (from, to, left, width) {
            let [edge, end] = cutting::edges(&piece, from);
            let right = edge + left + width;
            let [_, _, least, most] = piece.reach();
            // What begins or ends at the edge of the cloth does so all the way up.
            let all = |at_edge: bool, reach: Length, own: Length| if at_edge { reach } else { own };
            piece.zones.push(Zone {
                kind: typed.kind,
                from,
                to,
                left: all(left == zero(), least, edge + left),
                right: all(
                    right >= end && width > zero(),
                    std::cmp::max(most, right),
                    right,
                ),
            });
        }
    }
    if !faults.is_empty() {
        return None;
    }
    // What was kept before is not doubted now.
    let fault = match piece.stations == kept.stations {
        true => piece.check(),
        false => piece.check_measured(),
    };
    if let Err(fault) = fault {
        let field = match fault {
            PieceFault::NoWidthAt(i) | PieceFault::TooWide(i) => format!("station-{i}-width"),
            _ => "outline".into(),
        };
        faults.push(FieldProblem {
            field,
            problem: errors::piece_fault(fault, context),
        });
        return None;
    }
    if piece.stations != kept.stations {
        let mut shown_zones = typed_of(&piece, context).zones;
        for i in stayed {
            std::mem::swap(&mut tidy.zones[i], &mut shown_zones[i]);
        }
    }
    Some(piece)
}

/// Where the middle of an outline lies at a height: between two stations on the straight
/// line between their middles, beyond the ends as at the end.
fn middle(piece: &Piece, at: Length) -> Length {
    let of = |s: &OutlineStation| (s.left + s.right) / 2;
    let above = piece.stations.iter().position(|s| s.at >= at);
    match above {
        Some(0) | None => {
            let end = if above.is_some() {
                piece.stations.first()
            } else {
                piece.stations.last()
            };
            end.map_or_else(zero, of)
        }
        Some(i) => {
            let (a, b) = (&piece.stations[i - 1], &piece.stations[i]);
            let share = in_mm(at - a.at) / in_mm(b.at - a.at).max(0.001);
            of(a) + from_mm(in_mm(of(b) - of(a)) * share)
        }
    }
}

/// A length as it lies on the cloth for a field: as it was typed, or else, where the slope
/// of an edge leaves a fraction, on the ruler's mark to the side that keeps more clear.
fn laid(length: Length, outwards: bool, context: Context<'_>) -> String {
    let fine = Ruler {
        fraction: Fraction::SixtyFourth,
        ..context.ruler
    };
    let held = [fine, fine.other()];
    if held.iter().any(|r| !read_exact(length, *r).rounded) {
        return fields::field(length, context);
    }
    let up = context.ruler.at_least(length);
    let mark = if outwards {
        up
    } else {
        up - context.ruler.step()
    };
    fields::field(mark, context)
}
