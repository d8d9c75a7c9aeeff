//! One face of the throw as a file of its own, with its name, its size and a legend.

use super::canvas::Canvas;
use super::face::{
    ClothShown, FaceDrawing, FaceGrid, FaceMap, binding, borders, joins, lines, threads,
};
use super::inks::Style;
use super::letters::{n, width};
use super::svg::{ClothPhotos, SvgPaper, svg};
use crate::cloth::fabric::Face;
use crate::faces::spread::mirrored;
use crate::log::journal::Journal;
use crate::show::context::Context;
use crate::show::names;
use crate::show::picture::{Hold, Ink};
use crate::throw::Throw;
use crate::throw::tasks::Task;

/// Blank edge of the sheet.
const EDGE: f64 = 48.0;
/// Least width for words.
const LEAST: f64 = 720.0;
/// Width of an entry of the legend, at least.
const ENTRY: f64 = 300.0;
/// A swatch in the legend: wide enough for the figure beside the letters.
const SWATCH: f64 = 84.0;
const SWATCH_HIGH: f64 = 52.0;
/// How far a line ends before the next, in squares, so that joins can be distinguished.
const SHORT: f64 = 0.06;

/// One face of the throw as a stand-alone SVG document.
pub fn face_svg(
    journal: &Journal,
    face: Face,
    style: Style,
    photos: &ClothPhotos<'_>,
    context: Context<'_>,
) -> String {
    let throw = journal.throw();
    let mut sheet = FaceSheet::new(throw, face, style);
    let mut d = Canvas::default();
    let head = sheet.head(&mut d, context);
    sheet.grid.at = sheet.at(head);
    let [_, y] = sheet.grid.at;
    sheet.rim(&mut d);
    sheet.squares(&mut d);
    sheet.lines(&mut d);
    sheet.labels(&mut d);
    let foot = sheet.legend(&mut d, y + sheet.high() + sheet.rim_size() + 34.0, context);
    let title = title(face, context);
    let spoken = say!(
        context,
        "face-spoken",
        title = title.as_str(),
        across = throw.plan.across,
        down = throw.plan.down,
        n = sheet.covered()
    );
    let size = [sheet.wide(), foot + EDGE];
    let mut picture = d.picture(size, sheet.grid.cell / 3.0, spoken);
    picture.from = sheet.grid.at;
    let paper = SvgPaper::sheet(size, style, sheet.pen());
    svg(
        &picture,
        &format!("{}: {title}", throw.name),
        &paper,
        photos,
    )
}

fn title(face: Face, context: Context<'_>) -> String {
    match face {
        Face::Front => say!(context, "face-front"),
        Face::Back => say!(context, "face-back"),
    }
}

struct FaceSheet<'a> {
    throw: &'a Throw,
    face: Face,
    style: Style,
    /// Where the squares lie.
    grid: FaceGrid,
    map: FaceMap,
}

impl<'a> FaceSheet<'a> {
    fn new(throw: &'a Throw, face: Face, style: Style) -> Self {
        let (across, down) = (throw.plan.across, throw.plan.down);
        let longest = f64::from(across.max(down));
        // Whole figures of the patterns fit a side that is a multiple of 12.
        let cell = ((1300.0 / longest / 12.0).floor() * 12.0).clamp(24.0, 132.0);
        FaceSheet {
            throw,
            face,
            style,
            grid: FaceGrid {
                at: [0.0, 0.0],
                cell,
            },
            map: FaceMap::of(throw, face),
        }
    }

    fn across(&self) -> f64 {
        f64::from(self.throw.plan.across) * self.grid.cell
    }
    fn high(&self) -> f64 {
        f64::from(self.throw.plan.down) * self.grid.cell
    }
    fn pen(&self) -> f64 {
        (self.grid.cell / 48.0).clamp(0.7, 2.2)
    }
    /// Room beside the squares for the numbers of rows and columns.
    fn gutter(&self) -> f64 {
        self.rim_size() + 40.0
    }
    /// How far the fringe or the binding reaches.
    fn rim_size(&self) -> f64 {
        (self.grid.cell * 0.12).clamp(6.0, 14.0)
    }
    fn wide(&self) -> f64 {
        (self.across() + self.gutter() * 2.0).max(LEAST) + EDGE * 2.0
    }
    fn room(&self) -> f64 {
        self.wide() - EDGE * 2.0
    }
    fn at(&self, head: f64) -> [f64; 2] {
        let x = ((self.wide() - self.across()) / 2.0).round();
        [x, (head + self.gutter() + 6.0).round()]
    }
    fn covered(&self) -> usize {
        let squares = self.map.squares.iter();
        squares
            .filter(|laid| matches!(laid.shown, ClothShown::Print(_)))
            .count()
    }

    /// Title, size and which face this is; gives where they end.
    fn head(&self, d: &mut Canvas, context: Context<'_>) -> f64 {
        let p = &self.throw.plan;
        let size = self.throw.finished();
        let start = |y| [EDGE, y, self.room()];
        let name = (42.0, Ink::Title);
        let mut y = d.lines(start(EDGE + 36.0), name, &self.throw.name, 2);
        let second = (25.0, Ink::Title);
        y = d.lines(start(y - 8.0), second, &title(self.face, context), 2);
        let third = (20.0, Ink::Words);
        let figures = say!(
            context,
            "draw-size",
            grid = say!(context, "grid", across = p.across, down = p.down),
            side = context.by(p.side, p.side),
            size = context.by(size.width, size.height)
        );
        y = d.lines(start(y), third, &figures, 3);
        let side = match self.face {
            Face::Front => say!(context, "draw-stitching"),
            Face::Back => say!(context, "draw-turned"),
        };
        d.lines(start(y), third, &side, 4) - 20.0
    }

    fn bound(&self) -> bool {
        let whole = self.throw.assembly().whole();
        self.throw.has(whole, Task::StitchBinding)
    }

    /// Threads standing out of the raw outside, or the binding once it is on.
    fn rim(&self, d: &mut Canvas) {
        let ([x, y], rim) = (self.grid.at, self.rim_size());
        let (w, h) = (self.across(), self.high());
        if self.bound() {
            let outer = [x - rim, y - rim, w + rim * 2.0, h + rim * 2.0];
            let cloth = binding(self.throw);
            d.named_area(outer, Ink::Binding, Some(cloth), None);
            let (x1, y1) = (n(x - rim / 2.0), n(y - rim / 2.0));
            let (w, h) = (n(w + rim), n(h + rim));
            d.shape(format!("M{x1} {y1}h{w}v{h}h-{w}z"), Ink::Sewn, None);
            return;
        }
        let step = (self.grid.cell / 16.0).max(3.0);
        d.shape(threads([x, y, w, h], rim, step), Ink::Threads, None);
    }

    fn squares(&self, d: &mut Canvas) {
        let side = self.grid.cell;
        for kind in &self.map.kinds {
            for laid in self.map.showing(kind.shown) {
                let [x, y] = self.grid.spot(laid, [0.0, 0.0]);
                let cloth = kind.cloth.clone();
                d.named_area([x, y, side, side], Ink::Cloth, Some(cloth), None);
                let (row, col) = (laid.square.row + 1, laid.square.col + 1);
                d.call(format!("square-{row}-{col}"));
            }
        }
    }

    /// Edges of squares and fours, and the stitching of the joins that are sewn.
    fn lines(&self, d: &mut Canvas) {
        let sewn = |sewn: bool| {
            let stitched = |whole| self.throw.has(whole, Task::Stitch) == sewn;
            let found = joins(self.throw, self.face, None, |join| stitched(join.whole));
            lines(&found, &self.grid, SHORT)
        };
        let blocks = self.throw.assembly().blocks().into_iter();
        let seen: Vec<_> = blocks
            .map(|block| match self.face {
                Face::Front => block,
                Face::Back => mirrored(block, self.throw.plan.across),
            })
            .collect();
        d.shape(sewn(false), Ink::Edge, None);
        d.shape(borders(&seen, &self.grid, 0.0), Ink::Block, None);
        d.shape(sewn(true), Ink::Sewn, None);
    }

    /// Letters on the prints, each square's own number, and those of rows and columns.
    fn labels(&self, d: &mut Canvas) {
        let (cell, map) = (self.grid.cell, &self.map);
        if cell >= 72.0 {
            for laid in &map.squares {
                let own = names::square(laid.square);
                let at = self.grid.spot(laid, [0.06, 0.15]);
                d.held(at, own, cell * 0.125, (Ink::Number, Hold::Start));
            }
        }
        map.letters(d, &self.grid, 0.3, 0.0);
        if self.style == Style::Ink {
            map.denim_letters(d, &self.grid, 0.2);
        }
        let size = (cell * 0.5).clamp(11.0, 22.0);
        let away = self.rim_size() + 10.0;
        let [left, top] = self.grid.at;
        for laid in map.squares.iter().filter(|laid| laid.y == 0) {
            let x = self.grid.spot(laid, [0.5, 0.0])[0];
            let number = (laid.square.col + 1).to_string();
            d.words([x, top - away - size * 0.36], number, size);
        }
        for row in 0..map.down {
            let y = self.grid.point([0.0, f64::from(row) + 0.5])[1];
            let number = (row + 1).to_string();
            d.held([left - away, y], number, size, (Ink::Words, Hold::End));
        }
    }

    /// The cloths that show, and what the lines mean; gives where it ends.
    fn legend(&self, d: &mut Canvas, top: f64, context: Context<'_>) -> f64 {
        let columns = ((self.room() / ENTRY).floor() as usize).clamp(1, 4);
        let each = self.room() / columns as f64;
        let room = each - SWATCH - 36.0;
        let name = (20.0, Ink::Title);
        let plain = (18.0, Ink::Words);
        let (mut y, mut low) = (top, top);
        let mut at = 0;
        let mut entry = |d: &mut Canvas, paint: &dyn Fn(&mut Canvas, f64, f64) -> f64| {
            if at == columns {
                (at, y) = (0, low);
            }
            let x = EDGE + at as f64 * each;
            low = low.max(paint(d, x, y)).max(y + SWATCH_HIGH + 20.0);
            at += 1;
        };
        for kind in &self.map.kinds {
            let shown = kind.shown;
            let squares = self.map.showing(shown).count();
            let (own, count) = match shown {
                ClothShown::Print(p) => (
                    self.throw.prints.get(usize::from(p)).map(|p| &*p.name),
                    say!(context, "draw-count", n = squares),
                ),
                ClothShown::Denim { n, wrong: false } => (
                    self.throw.denims.get(usize::from(n)).map(|d| &*d.name),
                    say!(context, "draw-count", n = squares),
                ),
                ClothShown::Denim { n, wrong: true } => (
                    self.throw.denims.get(usize::from(n)).map(|d| &*d.name),
                    say!(context, "draw-count-wrong", n = squares),
                ),
            };
            let own = own.map_or_else(|| say!(context, "bare"), str::to_string);
            entry(d, &|d, x, y| {
                self.swatch(d, [x, y], kind);
                let x = x + SWATCH + 16.0;
                let y = d.lines([x, y + 20.0, room], name, &own, 2);
                d.lines([x, y, room], plain, &count, 3)
            });
        }
        let block = self.throw.assembly().blocks().iter().any(|b| b.count() > 1);
        let joins = self.throw.assembly().joins();
        let has = |sewn: bool| {
            joins
                .iter()
                .any(|j| self.throw.has(j.whole, Task::Stitch) == sewn)
        };
        let rim = if self.bound() {
            "draw-key-binding"
        } else {
            "draw-key-fringe"
        };
        let keys = [
            (has(true), "draw-key-sewn"),
            (has(false), "draw-key-open"),
            (block, "draw-key-block"),
            (
                self.map.squares.iter().any(|laid| laid.pieced),
                "draw-key-pieced",
            ),
            (true, rim),
        ];
        for (_, key) in keys.into_iter().filter(|(there, _)| *there) {
            entry(d, &|d, x, y| {
                self.sign(d, [x, y], key);
                let text = context.say(key, &[]);
                d.lines([x + SWATCH + 16.0, y + 32.0, room], plain, &text, 4)
            });
        }
        low - 18.0
    }

    fn swatch(&self, d: &mut Canvas, [x, y]: [f64; 2], kind: &FaceDrawing) {
        let frame = [x, y, SWATCH, SWATCH_HIGH];
        d.named_area(frame, Ink::Denim, Some(kind.cloth.clone()), None);
        let (size, ink) = match kind.shown {
            ClothShown::Print(_) => (SWATCH_HIGH * 0.3, Ink::Letters),
            ClothShown::Denim { .. } if self.style == Style::Ink => (SWATCH_HIGH * 0.26, Ink::Bare),
            ClothShown::Denim { .. } => return,
        };
        let room = SWATCH_HIGH * 0.6;
        let size = size.min(size * room / width(&kind.letters, size).max(1.0));
        let middle = [x + SWATCH - SWATCH_HIGH / 2.0, y + SWATCH_HIGH / 2.0];
        if !kind.letters.is_empty() {
            d.letters(&kind.letters, size, vec![middle], ink);
        }
    }

    fn sign(&self, d: &mut Canvas, [x, y]: [f64; 2], key: &str) {
        let middle = y + SWATCH_HIGH / 2.0;
        let line = format!("M{} {}H{}", n(x), n(middle), n(x + SWATCH));
        match key {
            "draw-key-sewn" => d.shape(line, Ink::Sewn, None),
            "draw-key-open" => d.shape(line, Ink::Edge, None),
            "draw-key-pieced" => {
                let at = [x + SWATCH / 2.0, middle];
                d.held(at, "½".into(), 26.0, (Ink::Title, Hold::Middle));
            }
            "draw-key-block" => {
                let side = n(SWATCH_HIGH - 8.0);
                let square = format!("M{} {}h{side}v{side}h-{side}z", n(x + 20.0), n(y + 4.0));
                d.shape(square, Ink::Block, None);
            }
            "draw-key-binding" => {
                let area = [x, y + SWATCH_HIGH * 0.36, SWATCH, SWATCH_HIGH * 0.28];
                d.named_area(area, Ink::Binding, Some(binding(self.throw)), None);
            }
            _ => {
                let threads: String = (0..21)
                    .map(|i| {
                        let at = x + 2.0 + f64::from(i) * 4.0;
                        let long = 10.0 + 3.0 * (f64::from(i) * 2.399_963).sin();
                        format!("M{} {}v-{}", n(at), n(middle), n(long))
                    })
                    .collect();
                d.shape(format!("{line}{threads}"), Ink::Threads, None);
            }
        }
    }
}
