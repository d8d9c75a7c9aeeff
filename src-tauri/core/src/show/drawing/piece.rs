//! One piece of the pile: its outline, what to avoid, and where to cut.

use super::super::Context;
use super::cloth::Cloth;
use super::page::{Hold, Page, n, width};
use super::style::{Style, no_piece};
use crate::cloth::cutting::{CutPlan, Patch, lay_out};
use crate::cloth::garments::{Piece, Source};
use crate::cloth::pile::Use;
use crate::log::journal::Journal;
use crate::measure::{Length, in_mm};
use crate::show::cutting;
use crate::throw::Throw;
use crate::words::Problem;
use std::cmp::{max, min};

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
    let how = crate::throw::stock::how_for(throw, heap);
    // A piece too small for one square is laid out with none.
    let cuts = lay_out(piece, &how).unwrap_or(CutPlan {
        strips: Vec::new(),
        lines: Vec::new(),
        count: 0,
        binding: Vec::new(),
        offcuts: Vec::new(),
        spare: piece.area(),
    });
    let [low, top, left, right] = piece.reach();
    let longest = in_mm(top - low).max(in_mm(right - left)).max(0.001);
    let scale = LONG / longest;
    let wide = (in_mm(right - left) * scale + LEFT + RIGHT).max(LEAST) + EDGE * 2.0;
    let mut sheet = Sheet {
        piece,
        cuts: &cuts,
        side: how.cut_side(),
        scale,
        wide,
        at: [0.0, 0.0],
        style,
        cloth: match heap.makes {
            Use::Denim { denim } => Cloth::Denim {
                n: denim.unwrap_or(0),
                wrong: false,
            },
            Use::Fabric { print } => Cloth::Print(print),
        },
    };
    let mut page = Page::new();
    let part = cutting::part(heap, place, context);
    let mut said = vec![match heap.counted.get(place) {
        Some(Some(n)) => say!(context, "piece-counted", n = *n),
        _ => say!(context, "piece-expected", n = cuts.count),
    }];
    if cuts.count == 0 {
        said.push(say!(context, "cut-nothing"));
    }
    if heap.cloth.stretch {
        said.push(say!(context, "cut-stretch"));
    }
    if !heap.cloth.washed {
        said.push(say!(context, "cut-unwashed"));
    }
    let room = wide - EDGE * 2.0;
    let set = |size, bold| sheet.style.set(size, bold, Hold::Start);
    let mut y = EDGE + 36.0;
    y = page.lines([EDGE, y, room], set(38.0, true), heap.name(), 2) - 8.0;
    y = page.lines([EDGE, y, room], set(24.0, true), &part, 2);
    for line in &said {
        y = page.lines([EDGE, y, room], set(19.0, false), line, 3);
    }
    let across = in_mm(right - left) * scale;
    sheet.at = [(wide - LEFT - RIGHT - across) / 2.0 + LEFT, y + 46.0];
    sheet.paint(&mut page, throw, context);
    y = sheet.at[1] + in_mm(top - low) * scale + 74.0;
    y = sheet.key(&mut page, y, context);
    let set = sheet.style.set(18.0, false, Hold::Start);
    let mut list = cutting::strips(piece, &cuts, context);
    list.extend(cutting::binding_strips(piece, &cuts, context));
    for line in list {
        y = page.lines([EDGE, y + 24.0, room], set, &line, 4) - 16.0;
    }
    let spoken = say!(
        context,
        "picture-piece",
        name = part.as_str(),
        n = cuts.count,
        strips = cuts.strips.len()
    );
    let title = say!(context, "told", what = heap.name(), how = part.as_str());
    let paper = match style {
        Style::Colour => "#fcf8ef",
        Style::Ink => "#ffffff",
    };
    Ok(page.document([wide, y + EDGE - 8.0], paper, &title, &spoken))
}

struct Sheet<'a> {
    piece: &'a Piece,
    cuts: &'a CutPlan,
    side: Length,
    scale: f64,
    wide: f64,
    /// The upper left of the outline's reach.
    at: [f64; 2],
    style: Style,
    cloth: Cloth,
}

impl Sheet<'_> {
    fn x(&self, across: Length) -> f64 {
        let [_, _, left, _] = self.piece.reach();
        self.at[0] + in_mm(across - left) * self.scale
    }
    fn y(&self, up: Length) -> f64 {
        let [_, top, ..] = self.piece.reach();
        self.at[1] + in_mm(top - up) * self.scale
    }
    fn cut(&self) -> &'static str {
        match self.style {
            Style::Colour => "#b3261e",
            Style::Ink => "#000000",
        }
    }

    fn outline(&self) -> String {
        let left = self.piece.stations.iter().map(|s| (s.left, s.at));
        let right = self.piece.stations.iter().rev().map(|s| (s.right, s.at));
        let mut d = String::new();
        for (i, (x, up)) in left.chain(right).enumerate() {
            d.push(if i == 0 { 'M' } else { 'L' });
            d += &format!("{} {}", n(self.x(x)), n(self.y(up)));
        }
        d + "z"
    }

    fn patch(&self, patch: &Patch) -> [f64; 4] {
        let (x, y) = (self.x(patch.left), self.y(patch.to));
        [x, y, self.x(patch.right) - x, self.y(patch.from) - y]
    }

    fn paint(&self, page: &mut Page, throw: &Throw, context: Context<'_>) {
        let outline = self.outline();
        let colour = self.cloth.colour(throw, self.style);
        let unit = in_mm(self.side) * self.scale;
        page.open("defs", &[]);
        self.cloth
            .define(page, throw, self.style, unit.clamp(48.0, 132.0), self.at);
        self.hatch(page);
        page.open("clipPath", &[("id", "cloth")]);
        page.path(&outline, &[]);
        page.close("clipPath");
        page.close("defs");
        page.path(&outline, &[("fill", &colour)]);
        // What is no square is cloth all the same, but stands back.
        page.path(
            &outline,
            &[("fill", self.style.plate()), ("fill-opacity", "0.6")],
        );
        for patch in &self.cuts.binding {
            page.area(self.patch(patch), &self.binding());
        }
        let fill = format!("url(#{})", self.cloth.id());
        let squares: Vec<[f64; 4]> = self
            .cuts
            .strips
            .iter()
            .flat_map(|strip| {
                let (y, high) = (self.y(strip.to), self.y(strip.from) - self.y(strip.to));
                strip
                    .squares
                    .iter()
                    .map(move |x| [self.x(*x), y, unit, high])
            })
            .collect();
        for (i, area) in squares.iter().enumerate() {
            let id = format!("square-{}", i + 1);
            page.area(*area, &[("id", &id), ("fill", &colour)]);
            page.area(
                *area,
                &[
                    ("fill", &fill),
                    ("stroke", self.style.dark()),
                    ("stroke-width", "1.4"),
                ],
            );
        }
        page.open("g", &[("clip-path", "url(#cloth)")]);
        for zone in &self.piece.zones {
            let patch = Patch {
                from: zone.from,
                to: zone.to,
                left: zone.left,
                right: zone.right,
            };
            page.area(
                self.patch(&self.on_cloth(&patch)),
                &[
                    ("fill", "url(#avoid)"),
                    ("stroke", self.cut()),
                    ("stroke-width", "1.2"),
                ],
            );
        }
        page.close("g");
        page.path(
            &outline,
            &[
                ("fill", "none"),
                ("stroke", self.style.dark()),
                ("stroke-width", "3"),
                ("stroke-linejoin", "round"),
            ],
        );
        for (i, area) in squares.iter().enumerate() {
            self.number(page, *area, &(i + 1).to_string());
        }
        self.zone_names(page, context);
        self.cut_lines(page, context);
        self.measures(page, context);
    }

    /// The part of a patch within the outline's reach.
    fn on_cloth(&self, patch: &Patch) -> Patch {
        let [low, top, left, right] = self.piece.reach();
        Patch {
            from: max(patch.from, low),
            to: min(patch.to, top),
            left: max(patch.left, left),
            right: min(patch.right, right),
        }
    }

    fn hatch(&self, page: &mut Page) {
        page.open(
            "pattern",
            &[
                ("id", "avoid"),
                ("patternUnits", "userSpaceOnUse"),
                ("width", "12"),
                ("height", "12"),
            ],
        );
        page.area(
            [0.0, 0.0, 12.0, 12.0],
            &[("fill", self.style.plate()), ("fill-opacity", "0.8")],
        );
        page.path(
            "M-3 3 3 -3M0 12 12 0M9 15 15 9M-3 9 3 15M0 0 12 12M9 -3 15 3",
            &[
                ("fill", "none"),
                ("stroke", self.cut()),
                ("stroke-width", "1.1"),
            ],
        );
        page.close("pattern");
    }

    fn binding(&self) -> [(&'static str, &'static str); 4] {
        [
            ("fill", self.style.plate()),
            ("stroke", self.style.dark()),
            ("stroke-width", "1.6"),
            ("stroke-dasharray", "3 4"),
        ]
    }

    fn number(&self, page: &mut Page, [x, y, w, h]: [f64; 4], text: &str) {
        let size = (w.min(h) * 0.34).min(26.0);
        let (wide, high) = (width(text, size) + size * 0.5, size * 1.4);
        let (x, y) = (x + w / 2.0, y + h / 2.0);
        page.area(
            [x - wide / 2.0, y - high / 2.0, wide, high],
            &[("rx", &n(high * 0.25)), ("fill", self.style.plate())],
        );
        page.text(
            x,
            y + size * 0.36,
            self.style.set(size, true, Hold::Middle),
            text,
        );
    }

    /// The names of places to avoid, upright where they are narrow; left out where there is
    /// no room.
    fn zone_names(&self, page: &mut Page, context: Context<'_>) {
        for zone in &self.piece.zones {
            let patch = self.on_cloth(&Patch {
                from: zone.from,
                to: zone.to,
                left: zone.left,
                right: zone.right,
            });
            let [x, y, w, h] = self.patch(&patch);
            let text = cutting::zone(zone.kind, context);
            let size = 15.0;
            let (long, high) = (width(&text, size) + 10.0, size * 1.3);
            let (x, y) = (x + w / 2.0, y + h / 2.0);
            let turned = format!("rotate(-90 {} {})", n(x), n(y));
            let turn: &[(&str, &str)] = match () {
                () if long <= w && high <= h => &[],
                () if long <= h && high <= w => &[("transform", &turned)],
                () => continue,
            };
            page.open("g", turn);
            page.area(
                [x - long / 2.0, y - high / 2.0, long, high],
                &[("rx", "4"), ("fill", self.style.plate())],
            );
            let set = self.style.set(size, false, Hold::Middle);
            page.text(x, y + size * 0.35, set, &text);
            page.close("g");
        }
    }

    /// Cuts across, with their heights above the hem on the left and the strips' numbers
    /// on the right.
    fn cut_lines(&self, page: &mut Page, context: Context<'_>) {
        let [_, _, left, right] = self.piece.reach();
        let (near, far) = (self.x(left), self.x(right));
        let mut heights: Vec<Length> = self
            .cuts
            .strips
            .iter()
            .flat_map(|s| [s.from, s.to])
            .collect();
        heights.sort();
        heights.dedup();
        let mut d = String::new();
        let mut last = f64::INFINITY;
        for up in heights {
            let y = self.y(up);
            d += &format!("M{} {y}H{}", n(near - 14.0), n(far + 14.0), y = n(y));
            // Figures too near the one below step up, and a line leads to them.
            let shown = y.min(last - FIGURE * 1.25);
            last = shown;
            page.path(
                &format!(
                    "M{} {}L{} {}",
                    n(near - 14.0),
                    n(y),
                    n(near - 30.0),
                    n(shown)
                ),
                &[
                    ("fill", "none"),
                    ("stroke", self.style.dark()),
                    ("stroke-width", "1"),
                ],
            );
            page.text(
                near - 34.0,
                shown + FIGURE * 0.36,
                self.style.set(FIGURE, false, Hold::End),
                &context.length(up).text,
            );
        }
        page.path(
            &d,
            &[
                ("fill", "none"),
                ("stroke", self.cut()),
                ("stroke-width", "2.2"),
                ("stroke-dasharray", "12 6"),
            ],
        );
        for (i, strip) in self.cuts.strips.iter().enumerate() {
            let (x, y) = (far + 34.0, (self.y(strip.from) + self.y(strip.to)) / 2.0);
            page.mark(
                "circle",
                &[
                    ("cx", &n(x)),
                    ("cy", &n(y)),
                    ("r", "17"),
                    ("fill", self.style.plate()),
                    ("stroke", self.style.dark()),
                    ("stroke-width", "1.6"),
                ],
            );
            let set = self.style.set(FIGURE, true, Hold::Middle);
            page.text(x, y + FIGURE * 0.36, set, &(i + 1).to_string());
        }
    }

    /// How long the piece is, and how wide at both ends.
    fn measures(&self, page: &mut Page, context: Context<'_>) {
        let [low, top, _, right] = self.piece.reach();
        let set = |hold| self.style.set(FIGURE, true, hold);
        let mut d = String::new();
        let mut arrow = |[x1, y1]: [f64; 2], [x2, y2]: [f64; 2]| {
            let long = (x2 - x1).hypot(y2 - y1).max(0.001);
            let (dx, dy) = ((x2 - x1) / long * 9.0, (y2 - y1) / long * 9.0);
            d += &format!("M{} {}L{} {}", n(x1), n(y1), n(x2), n(y2));
            for (x, y, turn) in [(x1, y1, 1.0), (x2, y2, -1.0)] {
                let (a, b) = (dx * turn, dy * turn);
                d += &format!(
                    "M{} {}L{} {}L{} {}",
                    n(x + a - b * 0.5),
                    n(y + b + a * 0.5),
                    n(x),
                    n(y),
                    n(x + a + b * 0.5),
                    n(y + b - a * 0.5)
                );
            }
        };
        let x = self.x(right) + 70.0;
        arrow([x, self.y(top)], [x, self.y(low)]);
        let text = context.length(top - low).text;
        page.text(
            x + 14.0,
            (self.y(top) + self.y(low)) / 2.0 + 7.0,
            set(Hold::Start),
            &text,
        );
        for (station, away) in [
            (self.piece.stations.first(), 28.0),
            (self.piece.stations.last(), -18.0),
        ] {
            let Some(station) = station.filter(|s| s.right > s.left) else {
                continue;
            };
            let y = self.y(station.at) + away;
            let (x1, x2) = (self.x(station.left), self.x(station.right));
            arrow([x1, y], [x2, y]);
            let text = context.length(station.right - station.left).text;
            let base = if away > 0.0 { y + 26.0 } else { y - 9.0 };
            let half = width(&text, FIGURE) / 2.0 + EDGE / 2.0;
            let middle = ((x1 + x2) / 2.0).clamp(half, self.wide - half);
            page.text(middle, base, set(Hold::Middle), &text);
        }
        page.path(
            &d,
            &[
                ("fill", "none"),
                ("stroke", self.style.dark()),
                ("stroke-width", "1.4"),
            ],
        );
    }

    /// What the lines and hatchings mean; gives where it ends.
    fn key(&self, page: &mut Page, mut y: f64, context: Context<'_>) -> f64 {
        let set = self.style.set(18.0, false, Hold::Start);
        let x = EDGE + SIGN + 14.0;
        let room = self.wide - EDGE - x;
        let mut line = |page: &mut Page, text: &str| {
            let end = page.lines([x, y + 18.0, room], set, text, 4) - 18.0;
            y = end.max(y + 24.0) + 8.0;
            y
        };
        let mut at = line(page, "");
        let frame = |at: f64| [EDGE, at + 1.0, SIGN, 22.0];
        if !self.cuts.strips.is_empty() {
            let d = format!("M{EDGE} {}h{SIGN}", n(at + 12.0));
            page.path(
                &d,
                &[
                    ("fill", "none"),
                    ("stroke", self.cut()),
                    ("stroke-width", "2.2"),
                    ("stroke-dasharray", "12 6"),
                ],
            );
            at = line(page, &say!(context, "draw-key-cut"));
        }
        let mut kinds: Vec<String> = Vec::new();
        for zone in &self.piece.zones {
            let kind = cutting::zone(zone.kind, context);
            if !kinds.contains(&kind) {
                kinds.push(kind);
            }
        }
        if !kinds.is_empty() {
            page.area(
                frame(at),
                &[
                    ("fill", "url(#avoid)"),
                    ("stroke", self.cut()),
                    ("stroke-width", "1.2"),
                ],
            );
            at = line(
                page,
                &say!(
                    context,
                    "draw-key-avoid",
                    kinds = context.words.list("list-short", kinds)
                ),
            );
        }
        if !self.cuts.binding.is_empty() {
            page.area(frame(at), &self.binding());
            at = line(page, &say!(context, "draw-key-strip"));
        }
        at
    }
}
