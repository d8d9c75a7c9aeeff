//! One piece of the pile as a file of its own: where to cut it, with every measure.

use super::canvas::Canvas;
use super::inks::Style;
use super::letters::{n, width};
use super::piece::{Lying, cloth};
use super::svg::{ClothPhotos, SvgPaper, svg};
use crate::cloth::garments::Source;
use crate::command::Rejection;
use crate::log::journal::Journal;
use crate::measure::in_mm;
use crate::show::context::Context;
use crate::show::cutting;
use crate::show::cutting_list::{Laid, came_out, left_over, rows};
use crate::show::errors::rejection;
use crate::show::names;
use crate::show::picture::{Hold, Ink};
use crate::throw::Throw;
use crate::throw::account::{account, how_for};
use crate::words::Problem;

const EDGE: f64 = 48.0;
/// The longer way of the piece.
const LONG: f64 = 900.0;
/// Room for the figures on the left, and for the strips' numbers and the length on the right.
const LEFT: f64 = 150.0;
const RIGHT: f64 = 190.0;
/// Least width for words.
const LEAST: f64 = 620.0;
/// Height of figures.
const FIGURE: f64 = 19.0;
const SIGN: f64 = 40.0;

/// The cutting picture of one piece as a stand-alone SVG document: heap number and piece
/// counted from 0.
///
/// # Errors
/// A [`Problem`] when there is no such piece, or it has no outline.
pub fn piece_svg(
    journal: &Journal,
    (n, index): (u16, u8),
    style: Style,
    photos: &ClothPhotos<'_>,
    context: Context<'_>,
) -> Result<String, Problem> {
    let throw = journal.throw();
    let heap = throw.pile.get(&n).ok_or_else(|| no_piece(throw, context))?;
    let place = usize::from(index);
    let piece = match &heap.from {
        Source::Cloth(garment) => garment.pieces.get(place),
        Source::Precut(_) => None,
    };
    let piece = piece.ok_or_else(|| no_piece(throw, context))?;
    let laid = match heap.counted.get(place) {
        Some(Some(_)) => {
            let came = came_out(journal, (n, place));
            Laid::cut_up(throw, place, heap, piece, came)
        }
        _ => Laid::of(throw, (n, place), heap, piece, &account(throw)),
    };
    let (piece, cuts) = (&laid.lying, &laid.cuts);
    let [low, top, left, right] = piece.reach();
    let longest = in_mm(top - low).max(in_mm(right - left)).max(0.001);
    let scale = LONG / longest;
    let wide = (in_mm(right - left) * scale + LEFT + RIGHT).max(LEAST) + EDGE * 2.0;
    let mut sheet = PieceSheet {
        lying: Lying {
            piece,
            cuts,
            side: how_for(throw, heap).cut_side(),
            cloth: cloth(throw, heap),
            scale,
            at: [0.0, 0.0],
            letters: 22.0,
            lines: true,
            chalk: (0..).map_while(|k| laid.chalk(k)).collect(),
        },
        wide,
    };
    let mut d = Canvas::default();
    let part = cutting::part(heap, place, context);
    let mut said = vec![match heap.counted.get(place) {
        Some(Some(n)) => {
            let parts = names::parted(n.get(), heap.counted_pieced(place).get(), context);
            say!(context, "piece-counted", n = *n, parts = parts)
        }
        _ => say!(
            context,
            "piece-expected",
            n = cuts.count,
            parts = names::parted(cuts.count, cuts.pieced, context),
            strips = cuts.binding.len()
        ),
    }];
    if cuts.count == 0 {
        said.push(say!(context, "cut-nothing"));
    }
    if heap.cloth.stretch {
        said.push(say!(context, "cut-stretch"));
    }
    if heap.wash_first() {
        said.push(say!(context, "cut-unwashed"));
    }
    let room = wide - EDGE * 2.0;
    let mut y = EDGE + 36.0;
    y = d.lines([EDGE, y, room], (38.0, Ink::Title), heap.name(), 2) - 8.0;
    y = d.lines([EDGE, y, room], (24.0, Ink::Title), &part, 2);
    for line in &said {
        y = d.lines([EDGE, y, room], (19.0, Ink::Words), line, 3);
    }
    let across = in_mm(right - left) * scale;
    sheet.lying.at = [(wide - LEFT - RIGHT - across) / 2.0 + LEFT, y + 46.0];
    sheet.lying.paint(&mut d, context);
    sheet.heights(&mut d, context);
    sheet.measures(&mut d, context);
    y = sheet.lying.at[1] + in_mm(top - low) * scale + 74.0;
    y = sheet.key(&mut d, y, context);
    for row in rows(throw, (n, index), &laid, context) {
        y = d.lines([EDGE, y + 24.0, room], (18.0, Ink::Title), &row.title, 2) - 16.0;
        for line in std::iter::once(row.text).chain(row.chalk) {
            y = d.lines([EDGE, y + 18.0, room], (18.0, Ink::Words), &line, 4) - 16.0;
        }
    }
    if let Some(left) = left_over(cuts, context) {
        y = d.lines([EDGE, y + 24.0, room], (18.0, Ink::Words), &left, 2) - 16.0;
    }
    let spoken = say!(
        context,
        "picture-piece",
        name = part.as_str(),
        n = cuts.count,
        parts = names::parted(cuts.count, cuts.pieced, context),
        strips = cuts.strips.len()
    );
    let title = say!(context, "told", what = heap.name(), how = part.as_str());
    let size = [wide, y + EDGE - 8.0];
    let repeat = sheet.lying.unit().clamp(48.0, 132.0) / 3.0;
    let mut picture = d.picture(size, repeat, spoken);
    picture.from = sheet.lying.at;
    let paper = SvgPaper::sheet(size, style, 1.1);
    Ok(svg(&picture, &title, &paper, photos))
}

/// The refusal for a piece that is not there.
fn no_piece(throw: &Throw, context: Context<'_>) -> Problem {
    rejection(&Rejection::Pile, Some(throw), context)
}

struct PieceSheet<'a> {
    lying: Lying<'a>,
    wide: f64,
}

impl PieceSheet<'_> {
    /// The heights of the cuts above the hem on the left, the strips' numbers on the right.
    fn heights(&self, d: &mut Canvas, context: Context<'_>) {
        let lying = &self.lying;
        let [_, _, left, right] = lying.piece.reach();
        let (near, far) = (lying.x(left), lying.x(right));
        let mut last = f64::INFINITY;
        for up in lying.heights() {
            let y = lying.y(up);
            // Figures too near the one below step up, and a line leads to them.
            let shown = y.min(last - FIGURE * 1.25);
            last = shown;
            d.line([near - 14.0, y, near - 30.0, shown], Ink::Leader);
            let text = context.length(up).text;
            d.held([near - 34.0, shown], text, FIGURE, (Ink::Words, Hold::End));
        }
        for (i, strip) in lying.cuts.strips.iter().enumerate() {
            let y = (lying.y(strip.from) + lying.y(strip.to)) / 2.0;
            let (x, number) = (far + 34.0, (i + 1).to_string());
            d.stamp(
                "m-17 0a17 17 0 1 0 34 0a17 17 0 1 0 -34 0z",
                vec![[x, y]],
                Ink::Rule,
                None,
            );
            d.held([x, y], number, FIGURE, (Ink::Title, Hold::Middle));
        }
    }

    /// How long the piece is, and how wide at both ends.
    fn measures(&self, d: &mut Canvas, context: Context<'_>) {
        let lying = &self.lying;
        let [low, top, _, right] = lying.piece.reach();
        let mut both = |[x1, y1]: [f64; 2], [x2, y2]: [f64; 2]| {
            let (x, y) = ((x1 + x2) / 2.0, (y1 + y2) / 2.0);
            d.arrow([x, y, x1, y1], Ink::Rule);
            d.arrow([x, y, x2, y2], Ink::Rule);
        };
        let x = lying.x(right) + 70.0;
        both([x, lying.y(top)], [x, lying.y(low)]);
        let mut words = vec![(
            [x + 14.0, (lying.y(top) + lying.y(low)) / 2.0],
            Hold::Start,
            context.length(top - low).text,
        )];
        for (station, away) in [
            (lying.piece.stations.first(), 28.0),
            (lying.piece.stations.last(), -18.0),
        ] {
            let Some(station) = station.filter(|s| s.right > s.left) else {
                continue;
            };
            let y = lying.y(station.at) + away;
            let (x1, x2) = (lying.x(station.left), lying.x(station.right));
            both([x1, y], [x2, y]);
            let text = context.length(station.right - station.left).text;
            let middle = if away > 0.0 { y + 19.0 } else { y - 16.0 };
            let half = width(&text, FIGURE) / 2.0 + EDGE / 2.0;
            let x = ((x1 + x2) / 2.0).clamp(half, self.wide - half);
            words.push(([x, middle], Hold::Middle, text));
        }
        for (at, hold, text) in words {
            d.held(at, text, FIGURE, (Ink::Title, hold));
        }
    }

    /// What the lines and hatchings mean; gives where it ends.
    fn key(&self, d: &mut Canvas, mut y: f64, context: Context<'_>) -> f64 {
        let lying = &self.lying;
        let x = EDGE + SIGN + 14.0;
        let room = self.wide - EDGE - x;
        let mut line = |d: &mut Canvas, text: &str| {
            let end = d.lines([x, y + 18.0, room], (18.0, Ink::Words), text, 4) - 18.0;
            y = end.max(y + 24.0) + 8.0;
            y
        };
        let mut at = line(d, "");
        let frame = |at: f64| [EDGE, at + 1.0, SIGN, 22.0];
        if !lying.cuts.strips.is_empty() {
            let sign = format!("M{EDGE} {}h{SIGN}", n(at + 12.0));
            d.shape(sign, Ink::Cut, None);
            at = line(d, &say!(context, "draw-key-cut"));
        }
        let mut kinds: Vec<String> = Vec::new();
        for zone in &lying.piece.zones {
            let kind = names::zone(zone.kind, context);
            if !kinds.contains(&kind) {
                kinds.push(kind);
            }
        }
        if !kinds.is_empty() {
            d.area(frame(at), Ink::Waste);
            let kinds = context.words.list("list-short", kinds);
            at = line(d, &say!(context, "draw-key-avoid", kinds = kinds));
        }
        if !lying.cuts.halves.is_empty() {
            d.area(frame(at), Ink::Lap);
            at = line(d, &say!(context, "draw-key-half"));
        }
        if !lying.cuts.binding.is_empty() {
            d.area(frame(at), Ink::Next);
            at = line(d, &say!(context, "draw-key-strip"));
        }
        at
    }
}
