//! A piece and where to cut it.

use crate::cloth::cutting::{self, CutPlan, Cutting};
use crate::cloth::garments::{
    self, Garment, GarmentPart, GarmentStart, Guess, Knees, Piece, Source, Zone, ZoneKind,
};
use crate::cloth::pairs;
use crate::cloth::patches;
use crate::cloth::pile::{Heap, Use};
use crate::cloth::reshape;
use crate::cloth::steps::steps;
use crate::cloth::ways::{self, CutWay};
use crate::command::{Command, Rejection, decide};
use crate::log::journal::Journal;
use crate::measure::{Count, Length, from_mm, in_mm, zero};
use crate::show::context::Context;
use crate::show::cutting_list::{CutRow, Laid, came_out, label_turned, left_over, rows};
use crate::show::drawing::canvas::Canvas;
use crate::show::drawing::piece::{Lying, cloth};
use crate::show::errors::rejection;
use crate::show::names::{self, ZONES};
use crate::show::parts::{Button, CautionNote, Choice, FieldProblem, Figure, Head, head};
use crate::show::picture::{InkKey, Picture};
use crate::show::typed::{PieceTyped, read_typed, typed_of};
use crate::throw::Throw;
use crate::throw::account::{ClothAccount, account, account_with, how_for};
use crate::throw::tasks::Caution;
use crate::types::TS;
use crate::words::Problem;
use serde::{Deserialize, Serialize};

/// A point of the outline being dragged, in the picture's units.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, TS)]
pub struct Drag {
    /// Which station, from the hem up, counted from 0.
    pub station: u16,
    /// Where it is now.
    pub x: f64,
    /// Where it is now.
    pub y: f64,
    /// It is still held: only this piece is laid out, with so many binding strips as were shown
    /// before. Where it is left out, so is the rest of the pile, which decides how many strips and
    /// which places are the piece's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[ts(optional)]
    pub held_strips: Option<Count>,
}

/// A point of the outline that can be dragged.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, TS)]
pub struct Handle {
    /// Which station.
    pub station: u16,
    /// Where, in the picture's units.
    pub x: f64,
    /// Where, in the picture's units.
    pub y: f64,
}

/// A piece's outline and where to cut it.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct PileCutView {
    /// Common to all screens.
    pub head: Head,
    /// The heap.
    pub n: u16,
    /// The piece, counted from 0.
    pub index: u8,
    /// Which piece.
    pub title: String,
    /// The fields, each measure with its unit spelled out.
    pub tidy: PieceTyped,
    /// What is wrong, by field (`station-0-at`, `zone-1-from`).
    pub faults: Vec<FieldProblem>,
    /// The outline, zones, strips and squares.
    pub picture: Option<Picture>,
    /// The piece as it lies to be cut, where it is turned for that.
    pub lying: Option<Picture>,
    /// Points that can be dragged.
    pub handles: Vec<Handle>,
    /// Squares, and what is given up by cutting straight across.
    pub figures: Vec<Figure>,
    /// The cutting list, in order.
    pub list: Vec<CutRow>,
    /// What is left over that is worth keeping.
    pub left: Option<String>,
    /// All of it came out as expected, in one tap; none once it is cut up, or while the outline
    /// was changed and not kept.
    pub all_came: Option<Button>,
    /// What it is worth knowing of its squares, a sentence each.
    pub said: Vec<String>,
    /// What to heed before it is cut, a sentence each.
    pub heeds: Vec<String>,
    /// Keeps the outline, where it was changed.
    pub keep: Option<Button>,
    /// Squares to expect, to begin the count with.
    pub expected: u32,
    /// Of these, squares pieced of two halves.
    pub expected_pieced: u32,
    /// Binding strips to expect.
    pub expected_strips: u32,
    /// Something of it is cut already.
    pub begun: bool,
    /// It is cut up; so many came out.
    pub counted: Option<u32>,
    /// Kinds of zone.
    pub zones: Vec<Choice<ZoneKind>>,
    /// It has no hem: heights are measured from its lower edge.
    pub flat: bool,
    /// The ways to cut it, the plain one first; nothing where no other gives more.
    pub ways: Vec<WayOffer>,
    /// The other half of the pair it is of.
    pub other: Option<OtherHalf>,
    /// The question where it is worn, for as long as nobody has said it.
    pub worn: Option<WornAsked>,
    /// The caution at the blade.
    pub caution: Option<CautionNote>,
    /// What the signs of the picture mean.
    pub key: Vec<InkKey>,
}

/// A way to cut a piece.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct WayOffer {
    /// Which, how many squares it gives, and how many more than the plain way that is.
    pub label: String,
    /// What it changes; nothing for the plain way.
    pub text: Option<String>,
    /// It is the one that is taken.
    pub chosen: bool,
    /// Takes it; none where it is taken.
    pub choose: Option<Button>,
}

/// The other half of a pair, seen from one of them.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct OtherHalf {
    /// The piece, counted from 0.
    pub index: u8,
    /// Gives it this outline, mirrored; none where that would change nothing, or cannot be.
    pub mirror: Option<Button>,
    /// It took over this outline, and nobody has said where it is worn: what leads there is
    /// called this.
    pub unsaid: Option<String>,
}

/// Where a piece is worn is to be said.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct WornAsked {
    /// The question.
    pub text: String,
    /// Nothing more is to be marked.
    pub nothing: Button,
}

/// Heights run up from the hem; the picture runs down from the top.
struct Frame {
    left: f64,
    top: f64,
    edge: f64,
}

/// Room round a piece in the window, in millimetres of cloth, for points to be taken hold of.
const HANDLES: f64 = 45.0;

impl Frame {
    fn of(piece: &Piece, edge: f64) -> Frame {
        let [_, top, left, _] = piece.reach();
        Frame {
            left: in_mm(left),
            top: in_mm(top),
            edge,
        }
    }
    fn x(&self, across: Length) -> f64 {
        in_mm(across) - self.left + self.edge
    }
    fn y(&self, up: Length) -> f64 {
        self.top - in_mm(up) + self.edge
    }
}

/// A dragged point put back on the outline, on round figures of the system in use.
fn dragged(piece: &Piece, drag: Drag, sheet: &Frame, context: Context<'_>) -> Piece {
    let length = |mm: f64| from_mm(mm.clamp(-99_000.0, 99_000.0));
    let right = length(drag.x - sheet.edge + sheet.left);
    let at = length(sheet.top - (drag.y - sheet.edge));
    let station = usize::from(drag.station);
    reshape::pulled(piece, station, right, at, context.ruler.system)
}

/// Whether a piece has no hem to measure from.
fn is_flat(part: GarmentPart) -> bool {
    use GarmentPart as P;
    matches!(
        part,
        P::Sheet | P::Cloth | P::Front | P::Sleeve | P::Pocket | P::Waistband
    )
}

/// Whether such a place is found on such a piece.
fn belongs(part: GarmentPart, zone: ZoneKind) -> bool {
    let leg = matches!(part, GarmentPart::LeftLeg | GarmentPart::RightLeg);
    match zone {
        ZoneKind::Outseam | ZoneKind::Knee => leg,
        ZoneKind::Hem => !is_flat(part) || matches!(part, GarmentPart::Sheet | GarmentPart::Pocket),
        ZoneKind::Pocket => !matches!(
            part,
            GarmentPart::Sheet | GarmentPart::Cloth | GarmentPart::Pocket | GarmentPart::Waistband
        ),
        ZoneKind::CutEdge => is_flat(part) || part == GarmentPart::Back,
        ZoneKind::Selvedge => matches!(part, GarmentPart::Sheet | GarmentPart::Cloth),
        ZoneKind::Hole | ZoneKind::Stain | ZoneKind::Seam => true,
    }
}

/// The name of a part in the words files.
fn part_key(part: GarmentPart) -> &'static str {
    match part {
        GarmentPart::LeftLeg => "left-leg",
        GarmentPart::RightLeg => "right-leg",
        GarmentPart::Back => "back",
        GarmentPart::Front => "front",
        GarmentPart::Sleeve => "sleeve",
        GarmentPart::Panel => "panel",
        GarmentPart::Pocket => "pocket",
        GarmentPart::Waistband => "waistband",
        GarmentPart::Sheet => "sheet",
        GarmentPart::Cloth => "cloth",
    }
}

/// What a piece is called, numbered where there are several of the same.
pub(super) fn part(heap: &Heap, index: usize, context: Context<'_>) -> String {
    let key = |p: &Piece| part_key(p.part);
    let Source::Cloth(garment) = &heap.from else {
        return say!(context, "part-pack");
    };
    let Some(own) = garment.pieces.get(index).map(key) else {
        return String::new();
    };
    let name = context.say(&format!("part-{own}"), &[]);
    let alike = garment.pieces.iter().filter(|p| key(p) == own).count();
    let before = garment
        .pieces
        .iter()
        .take(index)
        .filter(|p| key(p) == own)
        .count();
    if alike > 1 {
        say!(context, "part-numbered", part = name, n = before + 1)
    } else {
        name
    }
}

/// One piece's outline and where to cut it.
pub(super) fn cutting(
    journal: &Journal,
    at: (u16, u8),
    typed: Option<&PieceTyped>,
    drag: Option<Drag>,
    context: Context<'_>,
) -> Result<PileCutView, Problem> {
    cutting_by(journal, at, None, (typed, drag), context)
}

/// A piece as it goes on paper, by an account that is known already. Its picture has no more
/// room round it than the numbers of the strips take.
pub(super) fn on_paper(
    journal: &Journal,
    at: (u16, u8),
    known: &ClothAccount,
    context: Context<'_>,
) -> Result<PileCutView, Problem> {
    cutting_by(journal, at, Some(known), (None, None), context)
}

/// The same by an account, where one is known: it holds for the outline that is kept.
fn cutting_by(
    journal: &Journal,
    (n, index): (u16, u8),
    known: Option<&ClothAccount>,
    (typed, drag): (Option<&PieceTyped>, Option<Drag>),
    context: Context<'_>,
) -> Result<PileCutView, Problem> {
    let throw = journal.throw();
    let fail = |why: Rejection| rejection(&why, Some(throw), context);
    let heap = throw.pile.get(&n).ok_or_else(|| fail(Rejection::Pile))?;
    let counted = *heap
        .counted
        .get(usize::from(index))
        .ok_or_else(|| fail(Rejection::Pile))?;
    let Source::Cloth(garment) = &heap.from else {
        return Err(fail(Rejection::Pile));
    };
    let kept = garment
        .pieces
        .get(usize::from(index))
        .ok_or_else(|| fail(Rejection::Pile))?;
    let mut tidy = typed.cloned().unwrap_or_else(|| typed_of(kept, context));
    let mut faults = Vec::new();
    let mut piece = match typed {
        Some(_) => read_typed(kept, &mut tidy, &mut faults, context),
        None => Some(kept.clone()),
    };
    if let (Some(drag), Some(before)) = (drag, &piece) {
        // The picture the finger is on was drawn from this outline.
        let moved = dragged(before, drag, &Frame::of(before, HANDLES), context);
        if moved.check().is_ok() {
            tidy = typed_of(&moved, context);
            piece = Some(moved);
        }
    }
    let title = say!(
        context,
        "told",
        what = heap.name(),
        how = part(heap, usize::from(index), context)
    );
    let mut view = PileCutView {
        head: head(journal, context),
        n,
        index,
        title,
        tidy,
        faults,
        picture: None,
        lying: None,
        handles: Vec::new(),
        figures: Vec::new(),
        list: Vec::new(),
        left: None,
        all_came: None,
        said: Vec::new(),
        heeds: Vec::new(),
        keep: None,
        expected: 0,
        expected_pieced: 0,
        expected_strips: 0,
        begun: throw.begun_pieces.contains_key(&(n, index)),
        counted: counted.map(Count::get),
        flat: is_flat(kept.part),
        zones: ZONES
            .into_iter()
            .filter(|(zone, _)| {
                let there = kept.zones.iter().any(|z| z.kind == *zone);
                there || belongs(kept.part, *zone)
            })
            .map(|(value, key)| Choice {
                value,
                label: context.say(&format!("zone-{key}"), &[]),
            })
            .collect(),
        ways: Vec::new(),
        other: None,
        worn: None,
        caution: Some(CautionNote {
            caution: Caution::Blade,
            title: say!(context, "caution-blade-title"),
            text: say!(context, "caution-blade"),
        }),
        key: Vec::new(),
    };
    let Some(piece) = piece else { return Ok(view) };
    let how = how_for(throw, heap);
    // The whole pile is laid out with the outline as it is typed; while a finger holds a point,
    // only the piece under it.
    let changed = piece != *kept;
    let at = (n, usize::from(index));
    let is_paper = known.is_some();
    let strips_held = drag.and_then(|drag| drag.held_strips);
    let held = strips_held.is_some();
    let is_needed = counted.is_none() && known.is_none();
    let unchanged = (is_needed && !changed && !held).then(|| account(throw));
    let known = known.or(unchanged.as_ref());
    let came = counted.map(|squares| (squares, came_out(journal, at)));
    let mut laid = match (came, strips_held, known.filter(|_| !changed)) {
        (Some((_, came)), ..) => Laid::cut_up(throw, at.1, heap, &piece, came),
        (None, Some(strips), _) => Laid::alone(throw, at.1, heap, &piece, strips),
        (None, None, Some(known)) => Laid::of(throw, at, heap, &piece, known),
        (None, None, None) => {
            let heap = with_outline(heap, index, &piece);
            Laid::of(throw, at, &heap, &piece, &account_with(throw, n, &heap))
        }
    };
    if changed {
        // Lines that are done were of the outline that was kept.
        laid.done = 0;
    }
    let cuts = &laid.cuts;
    let squares = cuts.count;
    let parts = names::parted(squares, cuts.pieced, context);
    if let Some((squares, (strips, _))) = came {
        let parts = names::parted(squares.get(), heap.counted_pieced(at.1).get(), context);
        if squares < Count::at_most(laid.cuts.count) {
            view.said
                .push(say!(context, "cut-came-of", planned = laid.cuts.count));
        }
        let figure = |key: &str, value| Figure {
            label: context.say(key, &[]),
            value: context.plain(value),
        };
        let squares = say!(context, "number-parted", n = squares, parts = parts);
        view.figures = vec![figure("figure-came-out", squares)];
        if strips > 0 {
            let strips = say!(context, "number", n = strips);
            view.figures.push(figure("figure-strips-came-out", strips));
        }
    } else if held {
        // What else could be cut of it is worked out once the point is let go, and so are the
        // strips for the binding that the whole pile shares out then.
        view.figures = vec![Figure {
            label: say!(context, "figure-squares-here"),
            value: context.plain(say!(context, "number-about", n = squares)),
        }];
        view.said.push(say!(context, "cut-held"));
    } else {
        compare(&mut view, &laid, &how, context);
        if begins_so(garment, &piece) {
            view.said.push(say!(context, "part-start"));
        }
        if knee_is_guessed(garment, at.1, &piece) {
            // It is heeded before the first cut; paper has no such lines of its own.
            let lines = if is_paper {
                &mut view.said
            } else {
                &mut view.heeds
            };
            lines.push(say!(context, "knee-guessed"));
        }
        view.list = rows(throw, (n, index), &laid, context);
        view.left = left_over(cuts, context);
    }
    if changed {
        for row in &mut view.list {
            (row.tick, row.now) = (None, false);
        }
    }
    if counted.is_none() {
        view.worn = worn(heap, (n, index), kept, context);
        if view.worn.is_some() {
            view.heeds.push(say!(context, "worn-heed"));
        }
    }
    if let (false, None, Some(known)) = (changed, counted, known) {
        view.ways = ways_to_cut(throw, (n, index), heap, &piece, known, context);
    }
    if !changed && !held {
        view.other = other(throw, garment, heap, (n, index), context);
    }
    if heap.cloth.stretch {
        view.heeds.push(say!(context, "cut-stretch"));
    }
    if heap.wash_first() {
        view.heeds.push(say!(context, "cut-unwashed"));
    }
    view.expected = squares;
    view.expected_pieced = cuts.pieced;
    view.expected_strips = cuts.binding.len() as u32;
    if counted.is_none() && !changed && !held {
        let strips = Count::at_most(view.expected_strips);
        view.all_came = Some(Button {
            label: match squares {
                0 => say!(context, "cut-none-came", strips = view.expected_strips),
                n => say!(
                    context,
                    "cut-all-came",
                    n = n,
                    parts = parts.as_str(),
                    strips = view.expected_strips
                ),
            },
            action: Command::CutPiece {
                n,
                index,
                squares: Count::at_most(squares),
                by_strip: Vec::new(),
                pieced: (cuts.pieced > 0).then(|| Count::at_most(cuts.pieced)),
                strips: (strips > 0).then_some(strips),
                outline: None,
            },
        });
    }
    // On paper nothing is held with a finger, and the drawing fills its page.
    let frame = |piece: &Piece| {
        Frame::of(
            piece,
            if is_paper {
                letters(piece) * 1.25
            } else {
                HANDLES
            },
        )
    };
    let sheet = frame(&piece);
    let done = counted.is_none().then_some(laid.done);
    let mut key = Vec::new();
    let mut drawn = |piece: &Piece, cuts: &CutPlan, sheet: &Frame, done| {
        let lying = Lying {
            piece,
            cuts,
            side: how.cut_side(),
            cloth: cloth(throw, heap),
            scale: 1.0,
            at: [sheet.edge; 2],
            letters: letters(piece),
            lines: cuts.turned == laid.cuts.turned,
            chalk: (0..).map_while(|k| laid.chalk(k)).collect(),
        };
        key = lying.key(done, context);
        picture(&lying, sheet, done, &view.title, context)
    };
    if cuts.turned {
        let own = frame(&laid.lying);
        let lies = drawn(&laid.lying, cuts, &own, done);
        let upright = ways::turned_back(&piece, cuts);
        view.picture = Some(drawn(&piece, &upright, &sheet, None));
        view.lying = Some(lies);
    } else {
        view.picture = Some(drawn(&piece, cuts, &sheet, done));
    }
    if !held {
        view.key = key;
    }
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
        let action = Command::SetPiece {
            n,
            index,
            outline: piece.clone(),
        };
        if changed && decide(Some(throw), &action).is_ok() {
            view.keep = Some(Button {
                label: say!(context, "piece-keep"),
                action,
            });
        }
    }
    Ok(view)
}

/// What is told of a piece as it is laid out, and of what else could be cut of it.
fn compare(view: &mut PileCutView, laid: &Laid, how: &Cutting, context: Context<'_>) {
    let cuts = &laid.cuts;
    let squares = cuts.count;
    // What the strips of the binding leave is compared with what else could be cut of that.
    let rest = crate::cloth::strips::rest_of(&laid.lying, &cuts.binding);
    let naive = cutting::naive(&rest, how).unwrap_or(0);
    let free = cutting::free_yield(&rest, how).map_or(cuts.whole(), |f| f.count);
    let bound = cutting::bound(&rest, how).unwrap_or(free);
    let parts = names::parted(squares, cuts.pieced, context);
    view.figures = vec![Figure {
        label: say!(context, "figure-squares-here"),
        value: context.plain(say!(context, "number-parted", n = squares, parts = parts)),
    }];
    if squares == 0 {
        view.said.push(say!(context, "cut-nothing"));
        view.said.extend(still_of_use(&rest, cuts, how, context));
    } else {
        let whole = cuts.whole();
        if whole > naive {
            view.said.push(say!(context, "cut-gain", n = whole - naive));
        }
        if free > whole {
            view.said.push(say!(context, "cut-free", n = free - whole));
        }
        view.said.push(match bound.max(free) {
            most if most > whole => say!(context, "cut-bound", most = most),
            _ => say!(context, "cut-most"),
        });
    }
    if cuts.pieced > 0 {
        view.said.push(say!(context, "cut-pieced", n = cuts.pieced));
    }
}

/// Whether a pocket or a waistband still has the outline it began with.
fn begins_so(garment: &Garment, piece: &Piece) -> bool {
    let start = garment.start;
    let begun = start.and_then(|start| garments::small_part(start, piece.part));
    begun.as_ref() == Some(piece)
}

/// Whether a worn knee is drawn of which nobody has said whether it is there.
fn knee_is_guessed(garment: &Garment, index: usize, piece: &Piece) -> bool {
    let unseen = |start: &GarmentStart| start.knees == Knees::Unknown;
    let knees = |piece: &Piece| -> Vec<Zone> {
        let zones = piece.zones.iter().copied();
        zones.filter(|zone| zone.kind == ZoneKind::Knee).collect()
    };
    let Some(start) = garment.began().filter(unseen) else {
        return false;
    };
    // Widths that were measured say nothing of the knee.
    let begun = start.pieces(Guess::Typical);
    let guessed = begun.get(index).map(knees).unwrap_or_default();
    !guessed.is_empty() && knees(piece) == guessed
}

/// What can still be done with a piece that holds no square.
fn still_of_use(piece: &Piece, cuts: &CutPlan, how: &Cutting, context: Context<'_>) -> Vec<String> {
    let mut said = Vec::new();
    if !cuts.binding.is_empty() {
        said.push(say!(context, "cut-small-strips", n = cuts.binding.len()));
    }
    if let Ok(Some(patch)) = patches::largest(piece, how) {
        let [w, h] = [patch.right - patch.left, patch.to - patch.from];
        let [w, h] = [w, h].map(|l| context.ruler.at_most(l));
        if w > zero() && h > zero() {
            said.push(say!(context, "cut-small-patch", size = context.by(w, h)));
        }
    }
    if piece.part == GarmentPart::Pocket {
        said.push(say!(context, "cut-small-pocket"));
    }
    said
}

/// The height of the letters on a drawing of a piece, in its millimetres.
fn letters(piece: &Piece) -> f64 {
    let [_, top, left, right] = piece.reach();
    (in_mm(top).max(in_mm(right - left)) * 0.035).max(16.0)
}

/// The ways to cut a piece, where another than the plain one gives more of it or was taken.
fn ways_to_cut(
    throw: &Throw,
    (n, index): (u16, u8),
    heap: &Heap,
    piece: &Piece,
    given: &ClothAccount,
    context: Context<'_>,
) -> Vec<WayOffer> {
    let nth = usize::from(index);
    let (how, own) = (how_for(throw, heap), heap.way(nth));
    let mut ways = vec![CutWay::PLAIN];
    ways.extend(ways::offers(piece, &how).into_iter().map(|(way, _)| way));
    let bare = own.with_halves(false);
    if !ways.contains(&bare) {
        ways.push(bare);
    }
    // Halves are offered only where the throw lacks squares.
    let pieced = own.with_halves(true);
    let lacks = given.over() < 0
        || matches!(heap.makes, Use::Denim { denim: Some(d) }
            if given.denims.get(usize::from(d)).is_some_and(|c| given.short_of(c) > 0));
    if heap.makes.is_denim()
        && lacks
        && ways::squares(piece, &how, pieced) > ways::squares(piece, &how, bare)
    {
        ways.push(pieced);
    }
    if !ways.contains(&own) {
        ways.push(own);
    }
    if ways.len() == 1 {
        return Vec::new();
    }
    // What each gives with the binding strips that the whole pile shares out then.
    let gives = |way: CutWay| {
        if way == own {
            return given.piece(n, nth);
        }
        let mut heap = heap.clone();
        heap.ways.insert(index, way);
        account_with(throw, n, &heap).piece(n, nth)
    };
    let plain = gives(CutWay::PLAIN).squares.get();
    let each = ways.into_iter().map(|way| (way, gives(way)));
    let worth =
        each.filter(|(way, gives)| way.is_plain() || *way == own || gives.squares.get() > plain);
    let offers = worth.map(|(way, gives)| {
        let key = match (way.turned, way.both_edges) {
            (false, false) => "plain",
            (false, true) => "both",
            (true, false) => "turned",
            (true, true) => "turned-both",
        };
        let (squares, strips) = (gives.squares, gives.strips);
        let said = say!(
            context,
            "way-gives",
            n = squares,
            parts = names::parted(squares.get(), gives.pieced.get(), context),
            strips = strips
        );
        let name = context.say(&format!("way-{key}"), &[]);
        let name = match way.pieced {
            true => say!(context, "way-pieced", name = name),
            false => name,
        };
        let more = squares.get().saturating_sub(plain);
        let label = match way.is_plain() {
            true => say!(context, "told", what = name.as_str(), how = said),
            false => say!(
                context,
                "way-more",
                name = name.as_str(),
                gives = said,
                more = more
            ),
        };
        let both = way.both_edges.then(|| say!(context, "way-both-text"));
        let turned = way.turned.then(|| {
            [
                say!(context, "way-turned-text"),
                label_turned(throw, context),
            ]
        });
        let half = how.half.map_or_else(String::new, |half| {
            say!(
                context,
                "way-pieced-text",
                half = context.by(half, how.cut_side()),
                lap = context.length(throw.plan.lap)
            )
        });
        let pieced = way.pieced.then_some(half);
        let text: Vec<String> = turned
            .into_iter()
            .flatten()
            .chain(both)
            .chain(pieced)
            .collect();
        let chosen = way == own;
        WayOffer {
            choose: (!chosen).then(|| Button {
                label: say!(context, "way-take", name = name),
                action: Command::CutBy { n, index, way },
            }),
            label,
            text: (!text.is_empty()).then(|| context.words.list("sentences", text)),
            chosen,
        }
    });
    let offers: Vec<WayOffer> = offers.collect();
    // The plain way alone is no choice.
    if offers.len() == 1 {
        Vec::new()
    } else {
        offers
    }
}

/// The other half of the pair a piece is of, while it is not cut up.
fn other(
    throw: &Throw,
    garment: &Garment,
    heap: &Heap,
    (n, index): (u16, u8),
    context: Context<'_>,
) -> Option<OtherHalf> {
    let found = pairs::other_half(garment, usize::from(index))?;
    let own = u8::try_from(found).ok()?;
    if heap.counted.get(found) != Some(&None) {
        return None;
    }
    let key = part_key(garment.pieces[found].part);
    let action = Command::MirrorPiece { n, index };
    let mirror = decide(Some(throw), &action).is_ok().then(|| Button {
        label: context.say(&format!("mirror-{key}"), &[]),
        action,
    });
    let unsaid = heap
        .worn_unsaid
        .contains(&own)
        .then(|| context.say(&format!("mirror-worn-{key}"), &[]));
    Some(OtherHalf {
        index: own,
        mirror,
        unsaid,
    })
}

/// The question where a piece is worn that took over the outline of its other half.
fn worn(
    heap: &Heap,
    (n, index): (u16, u8),
    piece: &Piece,
    context: Context<'_>,
) -> Option<WornAsked> {
    if !heap.worn_unsaid.contains(&index) {
        return None;
    }
    let marked = piece.zones.iter().filter(|z| pairs::is_wear(z.kind));
    let marked: Vec<String> = marked.map(|z| names::zone(z.kind, context)).collect();
    let text = match marked.is_empty() {
        true => say!(context, "worn-asked"),
        false => say!(
            context,
            "worn-asked-marked",
            places = context.words.list("list-short", marked)
        ),
    };
    Some(WornAsked {
        text,
        nothing: Button {
            label: say!(context, "worn-nothing"),
            action: Command::WornSaid { n, index },
        },
    })
}

/// A heap with another outline of one of its pieces.
fn with_outline(heap: &Heap, index: u8, outline: &Piece) -> Heap {
    let mut heap = heap.clone();
    if let Source::Cloth(garment) = &mut heap.from
        && let Some(piece) = garment.pieces.get_mut(usize::from(index))
    {
        *piece = outline.clone();
    }
    heap
}

/// The piece in millimetres, with room round it for points to be taken hold of.
///
/// Lines of the cutting list that are `done` are marked, and the one after them.
fn picture(
    lying: &Lying<'_>,
    sheet: &Frame,
    done: Option<usize>,
    title: &str,
    context: Context<'_>,
) -> Picture {
    let (piece, cuts) = (lying.piece, lying.cuts);
    let [_, top, left, right] = piece.reach();
    let mut d = Canvas::default();
    lying.paint(&mut d, context);
    if let Some(done) = done {
        let shown = steps(piece, cuts).into_iter().take(done + 1).enumerate();
        for (i, step) in shown {
            lying.mark(&mut d, &step, i < done);
        }
    }
    lying.strip_numbers(&mut d);
    let spoken = say!(
        context,
        "picture-piece",
        name = title,
        n = cuts.count,
        parts = names::parted(cuts.count, cuts.pieced, context),
        strips = cuts.strips.len()
    );
    let size = [
        in_mm(right - left) + sheet.edge * 2.0,
        in_mm(top) + sheet.edge * 2.0,
    ];
    let mut picture = d.picture(size, lying.unit() / 2.0, spoken);
    picture.from = lying.at;
    picture
}
