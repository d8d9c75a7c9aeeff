//! A piece and where to cut it.

use crate::cloth::cutting;
use crate::cloth::garments::{GarmentPart, Piece, Source, ZoneKind};
use crate::cloth::pile::Heap;
use crate::cloth::reshape;
use crate::cloth::steps::steps;
use crate::command::{Command, Rejection, decide};
use crate::log::journal::Journal;
use crate::measure::{Count, Length, from_mm, in_mm};
use crate::show::context::Context;
use crate::show::cutting_list::{CutRow, Laid, left_over, rows};
use crate::show::drawing::canvas::Canvas;
use crate::show::drawing::piece::{Lying, cloth};
use crate::show::errors::rejection;
use crate::show::names::ZONES;
use crate::show::parts::{Button, CautionNote, Choice, FieldProblem, Figure, Head, head};
use crate::show::picture::Picture;
use crate::show::typed::{PieceTyped, read_typed, typed_of};
use crate::throw::account::{ClothAccount, account, account_with, how_for};
use crate::throw::tasks::Caution;
use crate::words::Problem;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// A point of the outline being dragged, in the picture's units.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, TS)]
pub struct Drag {
    /// Which station, from the hem up, counted from 0.
    pub station: u16,
    /// Where it is now.
    pub x: f64,
    /// Where it is now.
    pub y: f64,
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
    /// The caution at the blade.
    pub caution: Option<CautionNote>,
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
    matches!(part, P::Sheet | P::Cloth | P::Front | P::Sleeve)
}

/// Whether such a place is found on such a piece.
fn belongs(part: GarmentPart, zone: ZoneKind) -> bool {
    let leg = matches!(part, GarmentPart::LeftLeg | GarmentPart::RightLeg);
    match zone {
        ZoneKind::Outseam | ZoneKind::Knee => leg,
        ZoneKind::Hem => !is_flat(part) || part == GarmentPart::Sheet,
        ZoneKind::Pocket => part != GarmentPart::Sheet && part != GarmentPart::Cloth,
        ZoneKind::CutEdge => is_flat(part) || part == GarmentPart::Back,
        ZoneKind::Selvedge => matches!(part, GarmentPart::Sheet | GarmentPart::Cloth),
        ZoneKind::Hole | ZoneKind::Stain | ZoneKind::Seam => true,
    }
}

/// What a piece is called, numbered where there are several of the same.
pub(super) fn part(heap: &Heap, index: usize, context: Context<'_>) -> String {
    let key = |p: &Piece| match p.part {
        GarmentPart::LeftLeg => "left-leg",
        GarmentPart::RightLeg => "right-leg",
        GarmentPart::Back => "back",
        GarmentPart::Front => "front",
        GarmentPart::Sleeve => "sleeve",
        GarmentPart::Panel => "panel",
        GarmentPart::Sheet => "sheet",
        GarmentPart::Cloth => "cloth",
    };
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
        handles: Vec::new(),
        figures: Vec::new(),
        list: Vec::new(),
        left: None,
        all_came: None,
        said: Vec::new(),
        heeds: Vec::new(),
        keep: None,
        expected: 0,
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
        caution: Some(CautionNote {
            caution: Caution::Blade,
            title: say!(context, "caution-blade-title"),
            text: say!(context, "caution-blade"),
        }),
    };
    let Some(piece) = piece else { return Ok(view) };
    let how = how_for(throw, heap);
    // The whole pile is laid out with the outline as it is typed.
    let changed = piece != *kept;
    let told = match (changed, known) {
        (true, _) => &account_with(throw, n, &with_outline(heap, index, &piece)),
        (false, Some(known)) => known,
        (false, None) => &account(throw),
    };
    let mut laid = Laid::of(throw, (n, usize::from(index)), heap, &piece, told);
    if changed {
        // Lines that are done were of the outline that was kept.
        laid.done = 0;
    }
    let cuts = &laid.cuts;
    let squares = cuts.count;
    // What the strips of the binding leave is compared with what else could be cut of that.
    let rest = crate::cloth::strips::rest_of(&piece, &cuts.binding);
    let naive = cutting::naive(&rest, &how).unwrap_or(0);
    let free = cutting::free_yield(&rest, &how).map_or(squares, |f| f.count);
    let bound = cutting::bound(&rest, &how).unwrap_or(free);
    let figure = |key: &str, n: u32| Figure {
        label: context.say(&format!("figure-{key}"), &[]),
        value: context.plain(say!(context, "number", n = n)),
    };
    view.figures = vec![
        figure("squares-here", squares),
        figure("from-hem", naive),
        figure("free", free),
        figure("bound", bound),
    ];
    if squares == 0 {
        view.said.push(say!(context, "cut-nothing"));
    } else {
        view.said.push(say!(
            context,
            "cut-given-up",
            n = free.saturating_sub(squares)
        ));
        if squares > naive {
            view.said
                .push(say!(context, "cut-gain", n = squares - naive));
        }
    }
    view.list = rows(throw, (n, index), &piece, &laid, context);
    if changed {
        for row in &mut view.list {
            (row.tick, row.now) = (None, false);
        }
    }
    view.left = left_over(cuts, context);
    if heap.cloth.stretch {
        view.heeds.push(say!(context, "cut-stretch"));
    }
    if !heap.cloth.washed {
        view.heeds.push(say!(context, "cut-unwashed"));
    }
    view.expected = squares;
    view.expected_strips = cuts.binding.len() as u32;
    if counted.is_none() && !changed {
        let strips = Count::at_most(view.expected_strips);
        view.all_came = Some(Button {
            label: say!(
                context,
                "cut-all-came",
                n = squares,
                strips = view.expected_strips
            ),
            action: Command::CutPiece {
                n,
                index,
                squares: Count::at_most(squares),
                by_strip: Vec::new(),
                strips: (strips > 0).then_some(strips),
                outline: None,
            },
        });
    }
    let [_, top, left, right] = piece.reach();
    let letters = (in_mm(top).max(in_mm(right - left)) * 0.035).max(16.0);
    let edge = if known.is_some() {
        letters * 1.25
    } else {
        HANDLES
    };
    let sheet = Frame::of(&piece, edge);
    let lying = Lying {
        piece: &piece,
        cuts,
        side: how.cut_side(),
        cloth: cloth(throw, heap),
        scale: 1.0,
        at: [sheet.edge; 2],
        letters,
        chalk: (0..).map_while(|k| laid.chalk(k)).collect(),
    };
    let done = counted.is_none().then_some(laid.done);
    view.picture = Some(picture(&lying, &sheet, done, &view.title, context));
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
