//! The clothes pile, and one piece's outline with its cuts.

use super::{Lens, errors, head, off, plan, refusal};
use crate::cloth::cutting::{self, BindingCut, CutPlan, Cutting, Patch};
use crate::cloth::garments::{
    GarmentKind, GarmentSize, Part, Piece, PieceFault, Source, Station, Zone, ZoneKind,
};
use crate::cloth::pile::{Heap, Use};
use crate::cloth::weight::{in_gsm, in_ounces};
use crate::command::{Action, Refusal, decide};
use crate::log::journal::Journal;
use crate::measure::{Count, Fraction, Length, Ruler, from_mm, in_mm, in_nm, read, zero};
use crate::plan::Plan;
use crate::throw::Throw;
use crate::throw::tasks::{Caution, Task};
use crate::view::{
    Button, CautionNote, Choice, Drag, FieldProblem, Figure, Handle, HeapPiece, HeapRow, Ink, Mark,
    Picture, PieceTyped, PileCutView, PileView, StationTyped, WayRow, ZoneTyped,
};
use crate::words::{Problem, Shown};

const ZONES: [(ZoneKind, &str); 7] = [
    (ZoneKind::Knee, "knee"),
    (ZoneKind::Hole, "hole"),
    (ZoneKind::Stain, "stain"),
    (ZoneKind::Pocket, "pocket"),
    (ZoneKind::Outseam, "outseam"),
    (ZoneKind::Hem, "hem"),
    (ZoneKind::Seam, "seam"),
];
const SIZES: [(GarmentSize, &str); 3] = [
    (GarmentSize::Small, "small"),
    (GarmentSize::Medium, "medium"),
    (GarmentSize::Large, "large"),
];

fn kind_key(kind: GarmentKind) -> &'static str {
    match kind {
        GarmentKind::MensJeans => "mens-jeans",
        GarmentKind::WomensJeans => "womens-jeans",
        GarmentKind::ChildsJeans => "childs-jeans",
        GarmentKind::JacketBack => "jacket-back",
        GarmentKind::Skirt => "skirt",
        GarmentKind::Sheet => "sheet",
    }
}

/// The clothes pile.
pub(super) fn pile(journal: &Journal, lens: Lens<'_>) -> PileView {
    let throw = journal.throw();
    let side = throw.plan.side;
    let wanted = throw.plan.squares() as usize;
    let cut = throw
        .assembly()
        .whole()
        .squares()
        .filter(|s| throw.has(*s, Task::Cut))
        .count();
    let heaps: Vec<(u16, &Heap, Vec<Count>)> = throw
        .pile
        .iter()
        .map(|(n, heap)| (*n, heap, heap.squares(side)))
        .collect();
    let denim = || heaps.iter().filter(|(_, h, _)| h.makes.is_denim());
    let to_come: Count = denim().map(|(_, h, squares)| h.to_come(squares)).sum();
    let have = cut as i64 + i64::from(throw.spares) + i64::from(to_come);
    let over = have - wanted as i64;
    let count = |n: i64| lens.plain(say!(lens, "number", n = n));
    let figure = |key: &str, value| Figure {
        label: lens.say(&format!("figure-{key}"), &[]),
        value,
    };
    let open = wanted - cut;
    let mut figures = vec![
        figure("wanted", count(wanted as i64)),
        figure("cut-for-it", count(cut as i64)),
        figure("open", count(open as i64)),
    ];
    if throw.spares > 0 {
        figures.push(figure("spares", count(i64::from(throw.spares))));
    }
    figures.push(figure("to-come", count(i64::from(to_come))));
    let (of_each, lacking) = by_denim(throw, &heaps, lens);
    let mut said = Vec::new();
    if throw.pile.is_empty() {
        said.push(say!(lens, "pile-empty"));
    }
    if cut == wanted {
        said.push(say!(lens, "pile-all-cut"));
    } else if over >= 0 && lacking {
        said.push(say!(lens, "pile-uneven"));
    } else if over >= 0 {
        said.push(say!(lens, "pile-enough", over = over));
    } else if !throw.pile.is_empty() {
        said.push(say!(lens, "pile-short", short = -over));
    }
    match of_each {
        told if told.is_empty() => said.extend(super::work::denims_to_cut(throw, lens)),
        told => said.extend(told),
    }
    if denim().any(|(_, h, _)| h.counted.iter().any(Option::is_none)) {
        said.push(say!(lens, "pile-estimate"));
    }
    PileView {
        head: head(journal, lens),
        figures,
        said,
        rows: heaps
            .iter()
            .map(|(n, heap, squares)| row(throw, *n, heap, squares, lens))
            .collect(),
        ways: if over < 0 && !throw.pile.is_empty() {
            fewer(throw, have, lens)
        } else {
            Vec::new()
        },
        kinds: GarmentKind::ALL
            .into_iter()
            .map(|value| Choice {
                value,
                label: lens.say(&format!("garment-{}", kind_key(value)), &[]),
            })
            .collect(),
        sizes: SIZES
            .into_iter()
            .map(|(value, key)| Choice {
                value,
                label: lens.say(&format!("size-{key}"), &[]),
            })
            .collect(),
        makes: uses(throw, lens).collect(),
    }
}

/// What a heap may be for: denim squares, or fabric squares of one of the prints.
fn uses(throw: &Throw, lens: Lens<'_>) -> impl Iterator<Item = Choice<Use>> {
    let denim = denims(throw).map(move |denim| Choice {
        value: Use::Denim { denim },
        label: of_denim(throw, denim, "make-denim", lens),
    });
    let prints = throw.prints.iter().enumerate();
    denim.chain(prints.map(|(i, print)| Choice {
        value: Use::Fabric { print: i as u8 },
        label: print.name.clone(),
    }))
}

/// What a heap of denim may be for: any of the squares; where there are several denims, those
/// of one as well.
fn denims(throw: &Throw) -> impl Iterator<Item = Option<u8>> {
    let several = throw.denims.len() > 1;
    let each = (0..throw.denims.len()).map(|d| Some(d as u8));
    std::iter::once(None).chain(each.filter(move |_| several))
}

/// Words for a heap of denim, with the denim it is if that was said.
pub(super) fn of_denim(throw: &Throw, denim: Option<u8>, key: &str, lens: Lens<'_>) -> String {
    let named = denim.and_then(|d| throw.denims.get(usize::from(d)));
    match named {
        Some(denim) => lens.say(
            &format!("{key}-of"),
            &[("denim", denim.name.as_str().into())],
        ),
        None => lens.say(key, &[]),
    }
}

/// For each denim that a heap names: how many squares are still to be cut of it, and whether
/// what is on the pile and the spares at hand, of whatever denim, make them up; and whether one
/// of them falls short that no heap of unnamed denim can fill.
fn by_denim(
    throw: &Throw,
    heaps: &[(u16, &Heap, Vec<Count>)],
    lens: Lens<'_>,
) -> (Vec<String>, bool) {
    let given = |d: u8| {
        let of_it = heaps
            .iter()
            .filter(move |(_, h, _)| h.makes == Use::Denim { denim: Some(d) });
        of_it
            .map(|(_, h, squares)| h.to_come(squares))
            .sum::<Count>()
    };
    let any = heaps
        .iter()
        .any(|(_, h, _)| matches!(h.makes, Use::Denim { denim: Some(_) }));
    if !any {
        return (Vec::new(), false);
    }
    let mut lacking = false;
    let each = throw.denims.iter().zip(throw.uncut_by_denim());
    let told = each
        .enumerate()
        .filter_map(|(d, (denim, open))| {
            let gives = given(d as u8);
            let short = open.saturating_sub((gives + throw.spares).get());
            lacking |= short > 0;
            (open > 0 || gives > 0).then(|| {
                say!(
                    lens,
                    "pile-of-denim",
                    denim = denim.name.as_str(),
                    open = open,
                    gives = gives,
                    short = short
                )
            })
        })
        .collect();
    let unnamed = heaps
        .iter()
        .any(|(_, h, squares)| h.makes == Use::Denim { denim: None } && h.to_come(squares) > 0);
    (told, lacking && !unnamed)
}

/// What can be done where the pile is too small: fewer squares, while the sewn ones stay.
fn fewer(throw: &Throw, have: i64, lens: Lens<'_>) -> Vec<WayRow> {
    let plan = throw.plan;
    let mut found: Vec<(u32, Plan)> = Vec::new();
    for less_across in 0..plan.across {
        for less_down in 0..plan.down {
            let tried = Plan {
                across: plan.across - less_across,
                down: plan.down - less_down,
                ..plan
            };
            if i64::from(tried.squares()) <= have && tried != plan {
                found.push((tried.squares(), tried));
            }
        }
    }
    // The fewest squares given up; of as many, the shape nearest to the planned one.
    let shape = |p: &Plan| {
        let ratio = |p: &Plan| f64::from(p.across) / f64::from(p.down);
        (ratio(p) / ratio(&plan)).ln().abs()
    };
    found.sort_by(|a, b| b.0.cmp(&a.0).then(shape(&a.1).total_cmp(&shape(&b.1))));
    found
        .into_iter()
        .filter_map(|(squares, tried)| {
            let action = Action::ChangePlan { plan: tried };
            let events = decide(Some(throw), &action).ok()?;
            let after = throw.after(&events);
            let size = after.finished();
            let title = say!(lens, "grid", across = tried.across, down = tried.down);
            let mut lines = vec![
                say!(
                    lens,
                    "grid-uses",
                    n = squares,
                    left = have - i64::from(squares)
                ),
                say!(lens, "way-size", size = lens.by(size.width, size.height)),
            ];
            lines.extend(off::left_over(throw, &after, lens));
            Some(WayRow {
                button: Button {
                    label: title.clone(),
                    action,
                },
                done: title.clone(),
                title,
                lines,
            })
        })
        .take(4)
        .collect()
}

fn row(throw: &Throw, n: u16, heap: &Heap, squares: &[Count], lens: Lens<'_>) -> HeapRow {
    let what = match heap.makes {
        Use::Denim { denim } => of_denim(throw, denim, "heap-denim", lens),
        Use::Fabric { print } => {
            let print = throw
                .prints
                .get(usize::from(print))
                .map_or("", |p| p.name.as_str());
            say!(lens, "heap-fabric", print = print)
        }
    };
    let action = Action::TakeHeap { n };
    let mut uses: Vec<_> = uses(throw, lens)
        .filter(|u| heap.may_make(u.value))
        .collect();
    let makes = uses.iter().position(|u| u.value == heap.makes);
    if uses.len() == 1 {
        uses.clear();
    }
    HeapRow {
        n,
        title: heap.name().to_string(),
        said: say!(
            lens,
            "heap-gives",
            what = what,
            n = squares.iter().copied().sum::<Count>()
        ),
        makes: makes.unwrap_or_default() as u32,
        uses,
        pieces: heap
            .counted
            .iter()
            .zip(squares)
            .enumerate()
            .map(|(i, (counted, n))| HeapPiece {
                index: i as u8,
                label: part(heap, i, lens),
                said: match counted {
                    Some(_) => say!(lens, "piece-counted", n = *n),
                    None => say!(lens, "piece-expected", n = *n),
                },
                cut: counted.is_some(),
                outlined: matches!(heap.from, Source::Cloth(_)),
            })
            .collect(),
        weight: weight(heap, lens),
        stretch: heap.cloth.stretch,
        washed: heap.cloth.washed,
        trimming: plan::field(heap.trimming, lens),
        take: decide(Some(throw), &action).is_ok().then(|| Button {
            label: say!(lens, "heap-take", name = heap.name()),
            action,
        }),
    }
}

/// The weight of a heap's cloth with its unit.
fn weight(heap: &Heap, lens: Lens<'_>) -> String {
    let weight = heap.cloth.weight;
    lens.either(
        say!(lens, "ounces", n = lens.words.decimal(in_ounces(weight), 1)),
        say!(lens, "gsm", n = in_gsm(weight).round() as i64),
    )
}

/// What a piece is called, numbered where there are several of the same.
pub(super) fn part(heap: &Heap, index: usize, lens: Lens<'_>) -> String {
    let key = |p: &Piece| match p.part {
        Part::LeftLeg => "left-leg",
        Part::RightLeg => "right-leg",
        Part::Back => "back",
        Part::Panel => "panel",
        Part::Sheet => "sheet",
        Part::Cloth => "cloth",
    };
    let Source::Cloth(garment) = &heap.from else {
        return say!(lens, "part-pack");
    };
    let Some(own) = garment.pieces.get(index).map(key) else {
        return String::new();
    };
    let name = lens.say(&format!("part-{own}"), &[]);
    let alike = garment.pieces.iter().filter(|p| key(p) == own).count();
    let before = garment
        .pieces
        .iter()
        .take(index)
        .filter(|p| key(p) == own)
        .count();
    if alike > 1 {
        say!(lens, "part-numbered", part = name, n = before + 1)
    } else {
        name
    }
}

/// A length as it lies on the cloth for a field: as it was typed, or else, where the slope
/// of an edge leaves a fraction, on the ruler's mark to the side that keeps more clear.
fn laid(length: Length, outwards: bool, lens: Lens<'_>) -> String {
    let fine = Ruler {
        fraction: Fraction::SixtyFourth,
        ..lens.ruler
    };
    let held = [fine, fine.other()];
    if held.iter().any(|r| !read(length, *r).rounded) {
        return plan::field(length, lens);
    }
    let up = lens.ruler.at_least(length);
    let mark = if outwards { up } else { up - lens.ruler.step() };
    plan::field(mark, lens)
}

/// An outline as typed fields. Widths are told without saying where the middle lies, and
/// places to keep clear from the edge of the cloth at their lower line.
fn typed_of(piece: &Piece, lens: Lens<'_>) -> PieceTyped {
    let [bottom, top, ..] = piece.reach();
    PieceTyped {
        stations: piece
            .stations
            .iter()
            .map(|s| StationTyped {
                at: plan::field(s.at, lens),
                width: plan::field(s.right - s.left, lens),
            })
            .collect(),
        zones: piece
            .zones
            .iter()
            .map(|z| {
                // A zone may reach past the cloth; what is told is the part on it.
                let low = std::cmp::max(z.from, bottom);
                let [left, right] = cutting::edges(piece, low);
                let from = std::cmp::max(z.left, left);
                let to = std::cmp::max(std::cmp::min(z.right, right), from);
                ZoneTyped {
                    kind: z.kind,
                    from: plan::field(low, lens),
                    to: plan::field(std::cmp::min(z.to, top), lens),
                    left: laid(from - left, false, lens),
                    width: laid(to - from, true, lens),
                }
            })
            .collect(),
    }
}

/// What the fields say, given the outline they began from: each width keeps the place of
/// its middle, each place to keep clear that from the edge of the cloth; what is wrong
/// goes to `faults`.
fn read_typed(
    kept: &Piece,
    tidy: &mut PieceTyped,
    faults: &mut Vec<FieldProblem>,
    lens: Lens<'_>,
) -> Option<Piece> {
    let mut read = |field: String, text: &mut String| match lens.parse(text) {
        Ok(length) => {
            *text = plan::field(length, lens);
            Some(length)
        }
        Err(error) => {
            faults.push(FieldProblem {
                field,
                problem: errors::typed(&error, lens),
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
        stations.push(Station { at, left, right });
    }
    let mut piece = Piece {
        part: kept.part,
        stations,
        zones: Vec::new(),
    };
    let over = Lens {
        ruler: lens.ruler.other(),
        ..lens
    };
    let standing = [typed_of(kept, lens).zones, typed_of(kept, over).zones];
    for (i, typed) in tidy.zones.iter_mut().enumerate() {
        // One left as it was is kept as it was, wherever it reaches; it goes with the edge.
        let same = standing.iter().any(|zones| zones.get(i) == Some(&*typed));
        if let Some(zone) = kept.zones.get(i).filter(|_| same) {
            piece.zones.push(beside(kept, &piece, zone));
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
            problem: errors::piece_fault(fault, lens),
        });
        return None;
    }
    Some(piece)
}

/// A place to keep clear on an outline that was changed: as far from the edge of the cloth
/// as before, and past it where it was. The outseam's ridge stays on the middle line, and
/// what would come off the cloth stays where it was.
fn beside(before: &Piece, after: &Piece, zone: &Zone) -> Zone {
    let [was, was_end] = cutting::edges(before, zone.from);
    let [is, _] = cutting::edges(after, zone.from);
    if was == is || zone.kind == ZoneKind::Outseam {
        return *zone;
    }
    let [_, _, least, most] = after.reach();
    let (left, right) = (zone.left + (is - was), zone.right + (is - was));
    if left >= most || right <= least {
        return *zone;
    }
    Zone {
        left: match zone.left <= was {
            true => std::cmp::min(left, least),
            false => left,
        },
        right: match zone.right >= was_end {
            true => std::cmp::max(right, most),
            false => right,
        },
        ..*zone
    }
}

/// Where the middle of an outline lies at a height: between two stations on the straight
/// line between their middles, beyond the ends as at the end.
fn middle(piece: &Piece, at: Length) -> Length {
    let of = |s: &Station| (s.left + s.right) / 2;
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

/// Heights run up from the hem; the picture runs down from the top.
struct Sheet {
    left: f64,
    top: f64,
    edge: f64,
}

impl Sheet {
    fn of(piece: &Piece) -> Sheet {
        let [_, top, left, _] = piece.reach();
        Sheet {
            left: in_mm(left),
            top: in_mm(top),
            edge: 45.0,
        }
    }
    fn x(&self, across: Length) -> f64 {
        in_mm(across) - self.left + self.edge
    }
    fn y(&self, up: Length) -> f64 {
        self.top - in_mm(up) + self.edge
    }
}

/// A dragged point put back on the outline: its height and width on the ruler's marks.
fn dragged(piece: &Piece, drag: Drag, sheet: &Sheet, lens: Lens<'_>) -> Piece {
    let mut piece = piece.clone();
    let mark = |mm: f64| lens.ruler.nearest(from_mm(mm.clamp(-99_000.0, 99_000.0)));
    let index = usize::from(drag.station);
    let bound = |i: Option<usize>| i.and_then(|i| piece.stations.get(i)).map(|s| s.at);
    let (below, above) = (bound(index.checked_sub(1)), bound(index.checked_add(1)));
    let step = lens.ruler.step();
    if let Some(station) = piece.stations.get_mut(index) {
        let right = mark(drag.x - sheet.edge + sheet.left);
        let middle = (station.left + station.right) / 2;
        let half = std::cmp::max(right - middle, step);
        (station.left, station.right) = (middle - half, middle + half);
        let mut at = mark(sheet.top - (drag.y - sheet.edge));
        if let Some(below) = below {
            at = std::cmp::max(at, below + step);
        }
        if let Some(above) = above {
            at = std::cmp::min(at, above - step);
        }
        station.at = std::cmp::max(at, zero());
    }
    piece
}

/// How the pieces of a heap are cut: denim gives the binding, too.
pub(super) fn how_for(throw: &Throw, heap: &Heap) -> Cutting {
    let mut how = heap.how(throw.plan.side);
    if heap.makes.is_denim() {
        let size = throw.finished();
        let binding = &throw.plan.binding;
        how.binding = Some(BindingCut {
            width: binding.strip,
            least: throw.plan.side,
            enough: throw.plan.binding_for(size.width, size.height).length,
        });
    }
    how
}

/// Where a run of squares or a strip begins, from the cloth's own left edge on its lower
/// line; nothing where it begins at that edge.
fn beginning(piece: &Piece, cuts: &CutPlan, patch: &Patch, lens: Lens<'_>) -> Option<Shown> {
    let told = |ruler| cutting::begins(piece, cuts, patch, ruler);
    let at_edge = told(lens.ruler) == zero();
    (!at_edge).then(|| lens.in_each(|ruler| lens.words.single(told(ruler), ruler)))
}

/// The strips in words, from the hem up.
pub(super) fn strips(piece: &Piece, cuts: &CutPlan, lens: Lens<'_>) -> Vec<String> {
    let strips = cuts.strips.iter().enumerate();
    strips
        .map(|(i, strip)| {
            let mut said = vec![say!(
                lens,
                "cut-strip",
                n = i + 1,
                from = lens.length(strip.from),
                to = lens.length(strip.to)
            )];
            let side = in_nm(strip.to - strip.from).max(1);
            for (nth, run) in strip.runs().iter().enumerate() {
                let count = in_nm(run.right - run.left) / side;
                said.push(match (nth, beginning(piece, cuts, run, lens)) {
                    (_, None) => say!(lens, "cut-run-edge", count = count),
                    (0, Some(left)) => say!(lens, "cut-run", left = left, count = count),
                    (_, Some(left)) => say!(lens, "cut-run-next", left = left, count = count),
                });
            }
            lens.words.list("sentences", said)
        })
        .collect()
}

/// The strips for the binding in words.
pub(super) fn binding_strips(piece: &Piece, cuts: &CutPlan, lens: Lens<'_>) -> Vec<String> {
    let patches = cuts.binding.iter();
    patches
        .map(|patch| {
            // A strip lies along the piece or across it.
            let (high, wide) = (patch.to - patch.from, patch.right - patch.left);
            let (length, width) = (std::cmp::max(high, wide), std::cmp::min(high, wide));
            let (size, from) = (lens.by(width, length), lens.length(patch.from));
            match beginning(piece, cuts, patch, lens) {
                None => say!(lens, "cut-binding-strip-edge", size = size, from = from),
                Some(left) => say!(
                    lens,
                    "cut-binding-strip",
                    size = size,
                    from = from,
                    left = left
                ),
            }
        })
        .collect()
}

/// A kind of place to avoid.
pub(super) fn zone(kind: ZoneKind, lens: Lens<'_>) -> String {
    let found = ZONES.iter().find(|(k, _)| *k == kind);
    let key = found.map_or("hole", |(_, key)| key);
    lens.say(&format!("zone-{key}"), &[])
}

/// One piece's outline and where to cut it.
pub(super) fn cutting(
    journal: &Journal,
    (n, index): (u16, u8),
    typed: Option<&PieceTyped>,
    drag: Option<Drag>,
    lens: Lens<'_>,
) -> Result<PileCutView, Problem> {
    let throw = journal.throw();
    let fail = |why: Refusal| refusal(&why, Some(throw), lens);
    let heap = throw.pile.get(&n).ok_or_else(|| fail(Refusal::Pile))?;
    let counted = *heap
        .counted
        .get(usize::from(index))
        .ok_or_else(|| fail(Refusal::Pile))?;
    let Source::Cloth(garment) = &heap.from else {
        return Err(fail(Refusal::Pile));
    };
    let kept = garment
        .pieces
        .get(usize::from(index))
        .ok_or_else(|| fail(Refusal::Pile))?;
    let mut tidy = typed.cloned().unwrap_or_else(|| typed_of(kept, lens));
    let mut faults = Vec::new();
    let mut piece = match typed {
        Some(_) => read_typed(kept, &mut tidy, &mut faults, lens),
        None => Some(kept.clone()),
    };
    if let (Some(drag), Some(before)) = (drag, &piece) {
        // The picture the finger is on was drawn from this outline.
        let moved = dragged(before, drag, &Sheet::of(before), lens);
        if moved.check().is_ok() {
            tidy = typed_of(&moved, lens);
            piece = Some(moved);
        }
    }
    let title = say!(
        lens,
        "told",
        what = heap.name(),
        how = part(heap, usize::from(index), lens)
    );
    let mut view = PileCutView {
        head: head(journal, lens),
        n,
        index,
        title,
        tidy,
        faults,
        picture: None,
        handles: Vec::new(),
        figures: Vec::new(),
        list: Vec::new(),
        said: Vec::new(),
        keep: None,
        expected: 0,
        counted: counted.map(Count::get),
        zones: ZONES
            .into_iter()
            .map(|(value, key)| Choice {
                value,
                label: lens.say(&format!("zone-{key}"), &[]),
            })
            .collect(),
        caution: Some(CautionNote {
            caution: Caution::Blade,
            title: say!(lens, "caution-blade-title"),
            text: say!(lens, "caution-blade"),
        }),
    };
    let Some(piece) = piece else { return Ok(view) };
    let how = how_for(throw, heap);
    let Ok(cuts) = cutting::lay_out(&piece, &how) else {
        return Ok(view);
    };
    let squares = cuts.count;
    let naive = cutting::naive(&piece, &how).unwrap_or(0);
    let free = cutting::free_yield(&piece, &how).map_or(squares, |f| f.count);
    let bound = cutting::bound(&piece, &how).unwrap_or(free);
    let figure = |key: &str, n: u32| Figure {
        label: lens.say(&format!("figure-{key}"), &[]),
        value: lens.plain(say!(lens, "number", n = n)),
    };
    view.figures = vec![
        figure("squares-here", squares),
        figure("from-hem", naive),
        figure("free", free),
        figure("bound", bound),
    ];
    if squares == 0 {
        view.said.push(say!(lens, "cut-nothing"));
    } else {
        view.said
            .push(say!(lens, "cut-given-up", n = free.saturating_sub(squares)));
        if squares > naive {
            view.said.push(say!(lens, "cut-gain", n = squares - naive));
        }
    }
    // A strip for the binding runs through what the cuts across would chop up.
    view.list = binding_strips(&piece, &cuts, lens);
    view.list.extend(strips(&piece, &cuts, lens));
    if heap.cloth.stretch {
        view.said.push(say!(lens, "cut-stretch"));
    }
    if !heap.cloth.washed {
        view.said.push(say!(lens, "cut-unwashed"));
    }
    view.expected = squares;
    view.picture = Some(picture(&piece, &cuts, how.cut_side(), &view.title, lens));
    let sheet = Sheet::of(&piece);
    if counted.is_none() {
        view.handles = piece
            .stations
            .iter()
            .enumerate()
            .map(|(i, s)| Handle {
                station: i as u16,
                x: sheet.x(s.right),
                y: sheet.y(s.at),
            })
            .collect();
        let action = Action::SetPiece {
            n,
            index,
            outline: piece.clone(),
        };
        if piece != *kept && decide(Some(throw), &action).is_ok() {
            view.keep = Some(Button {
                label: say!(lens, "piece-keep"),
                action,
            });
        }
    }
    Ok(view)
}

fn picture(piece: &Piece, cuts: &CutPlan, side: Length, title: &str, lens: Lens<'_>) -> Picture {
    let sheet = Sheet::of(piece);
    let [bottom, top, left, right] = piece.reach();
    let mut marks = Vec::new();
    let mut line = |x1, y1, x2, y2, ink| {
        marks.push(Mark::Line {
            x1,
            y1,
            x2,
            y2,
            ink,
            arrow: false,
        })
    };
    for pair in piece.stations.windows(2) {
        let (a, b) = (&pair[0], &pair[1]);
        line(
            sheet.x(a.left),
            sheet.y(a.at),
            sheet.x(b.left),
            sheet.y(b.at),
            Ink::Now,
        );
        line(
            sheet.x(a.right),
            sheet.y(a.at),
            sheet.x(b.right),
            sheet.y(b.at),
            Ink::Now,
        );
    }
    for end in [piece.stations.first(), piece.stations.last()]
        .into_iter()
        .flatten()
    {
        line(
            sheet.x(end.left),
            sheet.y(end.at),
            sheet.x(end.right),
            sheet.y(end.at),
            Ink::Now,
        );
    }
    let s = in_mm(side);
    let letters = (in_mm(top).max(in_mm(right - left)) * 0.035).max(16.0);
    for patch in &cuts.binding {
        marks.push(Mark::Area {
            x: sheet.x(patch.left),
            y: sheet.y(patch.to),
            w: in_mm(patch.right - patch.left),
            h: in_mm(patch.to - patch.from),
            ink: Ink::Next,
            print: None,
            colour: None,
            label: None,
        });
    }
    let mut number = 0;
    for strip in &cuts.strips {
        for x in &strip.squares {
            number += 1;
            marks.push(Mark::Area {
                x: sheet.x(*x),
                y: sheet.y(strip.to),
                w: s,
                h: s,
                ink: Ink::Denim,
                print: None,
                colour: None,
                label: Some(number.to_string()),
            });
        }
    }
    for zone in &piece.zones {
        // Only what lies on the cloth is drawn.
        let (from, to) = (
            std::cmp::max(zone.from, bottom),
            std::cmp::min(zone.to, top),
        );
        let (near, far) = (
            std::cmp::max(zone.left, left),
            std::cmp::min(zone.right, right),
        );
        let (z, t) = (in_mm(far - near).max(0.0), in_mm(to - from).max(0.0));
        let kind = zone.kind;
        marks.push(Mark::Area {
            x: sheet.x(near),
            y: sheet.y(to),
            w: z,
            h: t,
            ink: Ink::Waste,
            print: None,
            colour: None,
            label: (z.min(t) > 40.0).then(|| self::zone(kind, lens)),
        });
    }
    for (i, strip) in cuts.strips.iter().enumerate() {
        for up in [strip.from, strip.to] {
            let (x1, x2) = (sheet.x(left) - 8.0, sheet.x(right) + 8.0);
            let y = sheet.y(up);
            marks.push(Mark::Line {
                x1,
                y1: y,
                x2,
                y2: y,
                ink: Ink::Cut,
                arrow: false,
            });
        }
        marks.push(Mark::Words {
            x: sheet.x(left) - letters * 0.8,
            y: sheet.y((strip.from + strip.to) / 2),
            text: (i + 1).to_string(),
            size: letters,
        });
    }
    Picture {
        width: in_mm(right - left) + sheet.edge * 2.0,
        height: in_mm(top - bottom) + in_mm(bottom) + sheet.edge * 2.0,
        spoken: say!(
            lens,
            "picture-piece",
            name = title,
            n = cuts.count,
            strips = cuts.strips.len()
        ),
        marks,
    }
}
