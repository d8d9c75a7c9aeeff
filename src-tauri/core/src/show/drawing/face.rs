//! One face of the throw.

use super::super::{Context, names};
use super::cloth::Cloth;
use super::page::{Hold, Page, n, width};
use super::style::DARK;
use super::style::Style;
use crate::cloth::fabric::Face;
use crate::faces::spread::mirrored;
use crate::log::journal::Journal;
use crate::plan::assembly::{Rect, Seam};
use crate::throw::Throw;
use crate::throw::tasks::Task;
use std::collections::BTreeMap;

/// Blank edge of the sheet.
const EDGE: f64 = 48.0;
/// Least width for words.
const LEAST: f64 = 720.0;
/// Width of an entry of the legend, at least.
const ENTRY: f64 = 300.0;
/// A swatch in the legend: wide enough for the figure beside the letters.
const SWATCH: f64 = 84.0;
const SWATCH_HIGH: f64 = 52.0;
/// The stitching's thread.
const THREAD: &str = "#f2a76f";

/// One face of the throw as a stand-alone SVG document.
pub fn face_svg(journal: &Journal, face: Face, style: Style, context: Context<'_>) -> String {
    let throw = journal.throw();
    let sheet = Sheet::new(throw, face, style);
    let mut page = Page::new();
    let head = sheet.head(&mut page, context);
    let [x, y] = sheet.at(head);
    sheet.define(&mut page, [x, y]);
    sheet.rim(&mut page, [x, y]);
    sheet.squares(&mut page, [x, y]);
    sheet.lines(&mut page, [x, y]);
    sheet.labels(&mut page, [x, y]);
    let foot = sheet.legend(
        &mut page,
        y + sheet.high() + sheet.rim_size() + 34.0,
        context,
    );
    let title = title(face, context);
    let spoken = say!(
        context,
        "face-spoken",
        title = title.as_str(),
        across = throw.plan.across,
        down = throw.plan.down,
        n = sheet.covered()
    );
    let paper = match style {
        Style::Colour => "#fcf8ef",
        Style::Ink => "#ffffff",
    };
    page.document(
        [sheet.wide(), foot + EDGE],
        paper,
        &format!("{}: {title}", throw.name),
        &spoken,
    )
}

fn title(face: Face, context: Context<'_>) -> String {
    match face {
        Face::Front => say!(context, "face-front"),
        Face::Back => say!(context, "face-back"),
    }
}

struct Sheet<'a> {
    throw: &'a Throw,
    face: Face,
    style: Style,
    /// Side of a square.
    cell: f64,
    letters: Vec<String>,
    /// Squares of each cloth, as they lie in the picture.
    shown: BTreeMap<Cloth, Vec<(Rect, Rect)>>,
}

impl<'a> Sheet<'a> {
    fn new(throw: &'a Throw, face: Face, style: Style) -> Self {
        let (across, down) = (throw.plan.across, throw.plan.down);
        let longest = f64::from(across.max(down));
        // Whole figures of the patterns fit a side that is a multiple of 12.
        let cell = ((1300.0 / longest / 12.0).floor() * 12.0).clamp(24.0, 132.0);
        let mut shown: BTreeMap<Cloth, Vec<(Rect, Rect)>> = BTreeMap::new();
        for square in throw.assembly().whole().squares() {
            let cover = throw.cover(square);
            let print = cover
                .on(face)
                .filter(|p| usize::from(*p) < throw.prints.len());
            let cloth = match print {
                Some(print) => Cloth::Print(print),
                None => Cloth::Denim {
                    n: cover.denim,
                    wrong: cover.wrong_side_up == (face == Face::Front),
                },
            };
            let lies = match face {
                Face::Front => square,
                Face::Back => mirrored(square, across),
            };
            shown.entry(cloth).or_default().push((square, lies));
        }
        Sheet {
            throw,
            face,
            style,
            cell,
            letters: names::letters(&throw.prints),
            shown,
        }
    }

    fn across(&self) -> f64 {
        f64::from(self.throw.plan.across) * self.cell
    }
    fn high(&self) -> f64 {
        f64::from(self.throw.plan.down) * self.cell
    }
    /// Room beside the squares for the numbers of rows and columns.
    fn gutter(&self) -> f64 {
        self.rim_size() + 40.0
    }
    /// How far the fringe or the binding reaches.
    fn rim_size(&self) -> f64 {
        (self.cell * 0.12).clamp(6.0, 14.0)
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
        let prints = |c: &&Cloth| matches!(c, Cloth::Print(_));
        let covered = self.shown.keys().filter(prints);
        covered.map(|c| self.shown[c].len()).sum()
    }

    /// Title, size and which face this is; gives where they end.
    fn head(&self, page: &mut Page, context: Context<'_>) -> f64 {
        let p = &self.throw.plan;
        let size = self.throw.finished();
        let start = |y| [EDGE, y, self.room()];
        let name = self.style.set(42.0, true, Hold::Start);
        let mut y = page.lines(start(EDGE + 36.0), name, &self.throw.name, 2);
        let second = self.style.set(25.0, true, Hold::Start);
        y = page.lines(start(y - 8.0), second, &title(self.face, context), 2);
        let third = self.style.set(20.0, false, Hold::Start);
        let figures = say!(
            context,
            "draw-size",
            grid = say!(context, "grid", across = p.across, down = p.down),
            side = context.by(p.side, p.side),
            size = context.by(size.width, size.height)
        );
        y = page.lines(start(y), third, &figures, 3);
        let side = match self.face {
            Face::Front => say!(context, "draw-stitching"),
            Face::Back => say!(context, "draw-turned"),
        };
        page.lines(start(y), third, &side, 4) - 20.0
    }

    fn define(&self, page: &mut Page, at: [f64; 2]) {
        page.open("defs", &[]);
        for cloth in self.shown.keys() {
            cloth.define(page, self.throw, self.style, self.cell, at);
        }
        page.close("defs");
    }

    fn place(&self, lies: Rect, [x, y]: [f64; 2]) -> [f64; 2] {
        [
            x + f64::from(lies.col) * self.cell,
            y + f64::from(lies.row) * self.cell,
        ]
    }

    fn bound(&self) -> bool {
        let whole = self.throw.assembly().whole();
        self.throw.has(whole, Task::StitchBinding)
    }

    /// Threads standing out of the raw outside, or the binding once it is on.
    fn rim(&self, page: &mut Page, [x, y]: [f64; 2]) {
        let (w, h, rim) = (self.across(), self.high(), self.rim_size());
        if self.bound() {
            let fill = match self.style {
                Style::Colour => self.throw.denims.first().map_or(DARK.to_string(), |_| {
                    Cloth::Denim { n: 0, wrong: false }.colour(self.throw, self.style)
                }),
                Style::Ink => "#ffffff".into(),
            };
            page.area(
                [x - rim, y - rim, w + rim * 2.0, h + rim * 2.0],
                &[
                    ("fill", &fill),
                    ("stroke", self.style.dark()),
                    ("stroke-width", "2"),
                ],
            );
            let half = rim / 2.0;
            let thread = match self.style {
                Style::Colour => THREAD,
                Style::Ink => "#000000",
            };
            page.area(
                [x - half, y - half, w + rim, h + rim],
                &[
                    ("fill", "none"),
                    ("stroke", thread),
                    ("stroke-width", "2.5"),
                    ("stroke-dasharray", "9 6"),
                ],
            );
            return;
        }
        let step = (self.cell / 16.0).max(3.0);
        let mut d = String::new();
        // Threads of uneven length, the same each time: the sine of a number that never
        // comes round.
        let uneven = |i: u32| {
            let wave = (f64::from(i) * 2.399_963).sin();
            (
                rim * (0.72 + 0.26 * wave),
                step * 0.3 * (f64::from(i) * 1.7).cos(),
            )
        };
        let mut threads = |from: f64, long: f64, mark: &dyn Fn(f64, f64, f64) -> String| {
            let count = (long / step).floor() as u32;
            for i in 0..count {
                let (length, lean) = uneven(i);
                d += &mark(
                    from + (f64::from(i) + 0.5) * long / f64::from(count),
                    length,
                    lean,
                );
            }
        };
        threads(x, w, &|at, long, lean| {
            let (up, down) = (n(y - long), n(y + h + long));
            let (low, end) = (n(y + h), n(at + lean));
            format!(
                "M{a} {y}L{end} {up}M{a} {low}L{end} {down}",
                a = n(at),
                y = n(y)
            )
        });
        threads(y, h, &|at, long, lean| {
            let (left, right) = (n(x - long), n(x + w + long));
            let (far, end) = (n(x + w), n(at + lean));
            format!(
                "M{x} {a}L{left} {end}M{far} {a}L{right} {end}",
                a = n(at),
                x = n(x)
            )
        });
        let ink = match self.style {
            Style::Colour => "#5f7596",
            Style::Ink => "#000000",
        };
        page.path(
            &d,
            &[
                ("fill", "none"),
                ("stroke", ink),
                ("stroke-width", "1.1"),
                ("stroke-linecap", "round"),
            ],
        );
    }

    fn squares(&self, page: &mut Page, at: [f64; 2]) {
        for (cloth, squares) in &self.shown {
            let colour = cloth.colour(self.throw, self.style);
            let mut d = String::new();
            for (square, lies) in squares {
                let [x, y] = self.place(*lies, at);
                let id = format!("square-{}-{}", square.row + 1, square.col + 1);
                page.area(
                    [x, y, self.cell, self.cell],
                    &[("id", &id), ("fill", &colour)],
                );
                d += &format!("M{} {}h{c}v{c}h-{c}z", n(x), n(y), c = n(self.cell));
            }
            page.path(&d, &[("fill", &format!("url(#{})", cloth.id()))]);
        }
    }

    /// Edges of squares and fours, and the stitching of the joins that are sewn.
    fn lines(&self, page: &mut Page, at: [f64; 2]) {
        let (mut open, mut sewn) = (String::new(), String::new());
        for join in self.throw.assembly().joins() {
            let second = match self.face {
                Face::Front => join.second,
                Face::Back => mirrored(join.second, self.throw.plan.across),
            };
            let [x, y] = self.place(second, at);
            let (long, high) = (
                f64::from(second.cols) * self.cell,
                f64::from(second.rows) * self.cell,
            );
            // A little short of its ends, so that one join is told from the next.
            let gap = self.cell * 0.06;
            let line = match (join.seam, self.face) {
                (Seam::Upright, Face::Front) => [x, y + gap, x, y + high - gap],
                // Turned over, the second part lies left of the seam.
                (Seam::Upright, Face::Back) => [x + long, y + gap, x + long, y + high - gap],
                (Seam::Level, _) => [x + gap, y, x + long - gap, y],
            };
            let [x1, y1, x2, y2] = line.map(n);
            let d = if self.throw.has(join.whole, Task::Stitch) {
                &mut sewn
            } else {
                &mut open
            };
            *d += &format!("M{x1} {y1}L{x2} {y2}");
        }
        let mut edges = String::new();
        for block in self.throw.assembly().blocks() {
            let lies = match self.face {
                Face::Front => block,
                Face::Back => mirrored(block, self.throw.plan.across),
            };
            let [x, y] = self.place(lies, at);
            let (w, h) = (
                f64::from(lies.cols) * self.cell,
                f64::from(lies.rows) * self.cell,
            );
            edges += &format!("M{} {}h{w}v{h}h-{w}z", n(x), n(y), w = n(w), h = n(h));
        }
        let weight = self.weight();
        self.open_line(page, &open);
        page.path(
            &edges,
            &[
                ("fill", "none"),
                ("stroke", self.style.dark()),
                ("stroke-width", &n(weight * 1.5)),
                ("stroke-linejoin", "round"),
            ],
        );
        self.sewn_line(page, &sewn);
    }

    fn weight(&self) -> f64 {
        (self.cell / 48.0).clamp(0.7, 2.2)
    }

    fn open_line(&self, page: &mut Page, d: &str) {
        page.path(
            d,
            &[
                ("fill", "none"),
                ("stroke", self.style.dark()),
                ("stroke-width", &n(self.weight() * 0.6)),
            ],
        );
    }

    fn sewn_line(&self, page: &mut Page, d: &str) {
        let weight = self.weight();
        let (under, thread) = match self.style {
            Style::Colour => (DARK, THREAD),
            Style::Ink => ("#ffffff", "#000000"),
        };
        page.path(
            d,
            &[
                ("fill", "none"),
                ("stroke", under),
                ("stroke-width", &n(weight * 3.2)),
            ],
        );
        page.path(
            d,
            &[
                ("fill", "none"),
                ("stroke", thread),
                ("stroke-width", &n(weight * 1.6)),
                (
                    "stroke-dasharray",
                    &format!("{} {}", n(weight * 4.5), n(weight * 2.6)),
                ),
            ],
        );
    }

    /// Letters on the prints, each square's own number, and those of rows and columns.
    fn labels(&self, page: &mut Page, at: [f64; 2]) {
        let cell = self.cell;
        for (cloth, squares) in &self.shown {
            for (square, lies) in squares {
                let [x, y] = self.place(*lies, at);
                if cell >= 72.0 {
                    self.number(page, [x, y], &names::square(*square));
                }
                if let Cloth::Print(print) = cloth {
                    let middle = [x + cell / 2.0, y + cell / 2.0];
                    self.letter(page, middle, cell, *print);
                }
            }
        }
        let (across, down) = (self.throw.plan.across, self.throw.plan.down);
        let size = (cell * 0.5).clamp(11.0, 22.0);
        let set = |hold| self.style.set(size, false, hold);
        let away = self.rim_size() + 10.0;
        for col in 0..across {
            let lies = match self.face {
                Face::Front => Rect::square(0, col),
                Face::Back => mirrored(Rect::square(0, col), across),
            };
            let x = self.place(lies, at)[0] + cell / 2.0;
            let text = (col + 1).to_string();
            page.text(x, at[1] - away, set(Hold::Middle), &text);
        }
        for row in 0..down {
            let y = self.place(Rect::square(row, 0), at)[1] + cell / 2.0 + size * 0.36;
            let text = (row + 1).to_string();
            page.text(at[0] - away, y, set(Hold::End), &text);
        }
    }

    /// As chalked on the square, in its corner.
    fn number(&self, page: &mut Page, [x, y]: [f64; 2], text: &str) {
        let size = self.cell * 0.125;
        let (w, h) = (width(text, size), size * 1.35);
        let inset = self.cell * 0.06;
        page.area(
            [x + inset, y + inset, w, h],
            &[
                ("rx", &n(h * 0.25)),
                ("fill", self.style.plate()),
                ("fill-opacity", "0.9"),
            ],
        );
        let middle = x + inset + w / 2.0;
        let set = self.style.set(size, false, Hold::Middle);
        page.text(middle, y + inset + h * 0.77, set, text);
    }

    /// A print's letters on a sewn-on label.
    fn letter(&self, page: &mut Page, [x, y]: [f64; 2], cell: f64, print: u8) {
        let text = self.letters.get(usize::from(print)).map_or("?", |l| l);
        let size = cell * if text.chars().count() > 2 { 0.22 } else { 0.3 };
        let (w, h) = (
            (width(text, size) + size * 0.5).clamp(cell * 0.42, cell * 0.9),
            cell * 0.42,
        );
        page.area(
            [x - w / 2.0, y - h / 2.0, w, h],
            &[
                ("rx", &n(cell * 0.06)),
                ("fill", self.style.plate()),
                ("stroke", self.style.dark()),
                ("stroke-width", &n((cell / 90.0).max(0.5))),
            ],
        );
        let set = self.style.set(size, true, Hold::Middle);
        page.text(x, y + size * 0.36, set, text);
    }

    /// The cloths that show, and what the lines mean; gives where it ends.
    fn legend(&self, page: &mut Page, top: f64, context: Context<'_>) -> f64 {
        let columns = ((self.room() / ENTRY).floor() as usize).clamp(1, 4);
        let each = self.room() / columns as f64;
        let room = each - SWATCH - 36.0;
        let name = self.style.set(20.0, true, Hold::Start);
        let plain = self.style.set(18.0, false, Hold::Start);
        let (mut y, mut low) = (top, top);
        let mut at = 0;
        let mut entry = |page: &mut Page, paint: &dyn Fn(&mut Page, f64, f64) -> f64| {
            if at == columns {
                (at, y) = (0, low);
            }
            let x = EDGE + at as f64 * each;
            low = low.max(paint(page, x, y)).max(y + SWATCH_HIGH + 20.0);
            at += 1;
        };
        for (cloth, squares) in &self.shown {
            let (own, count) = match cloth {
                Cloth::Print(p) => (
                    self.throw.prints.get(usize::from(*p)).map(|p| &*p.name),
                    say!(context, "draw-count", n = squares.len()),
                ),
                Cloth::Denim { n, wrong: false } => (
                    self.throw.denims.get(usize::from(*n)).map(|d| &*d.name),
                    say!(context, "draw-count", n = squares.len()),
                ),
                Cloth::Denim { n, wrong: true } => (
                    self.throw.denims.get(usize::from(*n)).map(|d| &*d.name),
                    say!(context, "draw-count-wrong", n = squares.len()),
                ),
            };
            let own = own.map_or_else(|| say!(context, "bare"), str::to_string);
            entry(page, &|page, x, y| {
                self.swatch(page, [x, y], *cloth);
                let x = x + SWATCH + 16.0;
                let y = page.lines([x, y + 20.0, room], name, &own, 2);
                page.lines([x, y, room], plain, &count, 3)
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
            (true, rim),
        ];
        for (_, key) in keys.into_iter().filter(|(there, _)| *there) {
            entry(page, &|page, x, y| {
                self.sign(page, [x, y], key);
                let text = context.say(key, &[]);
                page.lines([x + SWATCH + 16.0, y + 32.0, room], plain, &text, 4)
            });
        }
        low - 18.0
    }

    fn swatch(&self, page: &mut Page, [x, y]: [f64; 2], cloth: Cloth) {
        let frame = [x, y, SWATCH, SWATCH_HIGH];
        page.area(frame, &[("fill", &cloth.colour(self.throw, self.style))]);
        page.area(
            frame,
            &[
                ("fill", &format!("url(#{})", cloth.id())),
                ("stroke", self.style.dark()),
                ("stroke-width", "1.2"),
            ],
        );
        if let Cloth::Print(print) = cloth {
            let middle = [x + SWATCH - SWATCH_HIGH / 2.0, y + SWATCH_HIGH / 2.0];
            self.letter(page, middle, SWATCH_HIGH, print);
        }
    }

    fn sign(&self, page: &mut Page, [x, y]: [f64; 2], key: &str) {
        let (middle, end) = (n(y + SWATCH_HIGH / 2.0), n(x + SWATCH));
        let line = format!("M{} {middle}H{end}", n(x));
        match key {
            "draw-key-sewn" => self.sewn_line(page, &line),
            "draw-key-open" => self.open_line(page, &line),
            "draw-key-block" => page.area(
                [x + 20.0, y + 4.0, SWATCH_HIGH - 8.0, SWATCH_HIGH - 8.0],
                &[
                    ("fill", "none"),
                    ("stroke", self.style.dark()),
                    ("stroke-width", &n(self.weight() * 1.5)),
                ],
            ),
            "draw-key-binding" => page.area(
                [x, y + SWATCH_HIGH * 0.36, SWATCH, SWATCH_HIGH * 0.28],
                &[
                    ("fill", "none"),
                    ("stroke", self.style.dark()),
                    ("stroke-width", "2"),
                ],
            ),
            _ => {
                let threads: String = (0..21)
                    .map(|i| {
                        let at = x + 2.0 + f64::from(i) * 4.0;
                        let long = 10.0 + 3.0 * (f64::from(i) * 2.399_963).sin();
                        format!("M{} {middle}v-{}", n(at), n(long))
                    })
                    .collect();
                page.path(
                    &format!("{line}{threads}"),
                    &[
                        ("fill", "none"),
                        ("stroke", self.style.dark()),
                        ("stroke-width", "1.2"),
                    ],
                );
            }
        }
    }
}
