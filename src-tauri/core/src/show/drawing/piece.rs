//! One piece of the pile: its outline, what to avoid, and where to cut. The same marks come
//! into the window, onto the printed sheet and into a file.

use super::canvas::Canvas;
use super::face::ClothShown;
use super::letters::{n, width};
use crate::cloth::cutting::{CutPlan, Patch};
use crate::cloth::garments::{Piece, Zone};
use crate::cloth::pile::{Heap, Use};
use crate::cloth::steps::{CutStep, steps};
use crate::measure::{Length, in_mm};
use crate::show::context::Context;
use crate::show::names;
use crate::show::picture::{DrawnCloth, Hold, Ink, InkKey, Mark};
use crate::throw::Throw;
use std::cmp::{max, min};

/// How a heap's cloth is drawn, right side up.
pub(in crate::show) fn cloth(throw: &Throw, heap: &Heap) -> DrawnCloth {
    let shown = match heap.makes {
        Use::Denim { denim } => ClothShown::Denim {
            n: denim.unwrap_or(0),
            wrong: false,
        },
        Use::Fabric { print } => ClothShown::Print(print),
    };
    shown.cloth(&throw.prints, &throw.denims)
}

/// Where a piece lies in a drawing.
pub(in crate::show) struct Lying<'a> {
    /// The piece.
    pub(in crate::show) piece: &'a Piece,
    /// Where it is cut.
    pub(in crate::show) cuts: &'a CutPlan,
    /// The side of a square.
    pub(in crate::show) side: Length,
    /// What it is of.
    pub(in crate::show) cloth: DrawnCloth,
    /// Units of the drawing to a millimetre.
    pub(in crate::show) scale: f64,
    /// The upper left of the outline's reach.
    pub(in crate::show) at: [f64; 2],
    /// Height of the letters.
    pub(in crate::show) letters: f64,
    /// The cuts across are shown; not while the outline is measured of a piece that is turned
    /// to be cut.
    pub(in crate::show) lines: bool,
    /// What is chalked on the squares, in the order of the strips; the others are spares, or,
    /// where none has a place, numbered.
    pub(in crate::show) chalk: Vec<String>,
}

impl Lying<'_> {
    pub(in crate::show) fn x(&self, across: Length) -> f64 {
        let [_, _, left, _] = self.piece.reach();
        self.at[0] + in_mm(across - left) * self.scale
    }

    pub(in crate::show) fn y(&self, up: Length) -> f64 {
        let [_, top, ..] = self.piece.reach();
        self.at[1] + in_mm(top - up) * self.scale
    }

    /// The side of a square as it is drawn.
    pub(in crate::show) fn unit(&self) -> f64 {
        in_mm(self.side) * self.scale
    }

    fn patch(&self, patch: &Patch) -> [f64; 4] {
        let (x, y) = (self.x(patch.left), self.y(patch.to));
        [x, y, self.x(patch.right) - x, self.y(patch.from) - y]
    }

    fn outline(&self) -> String {
        let left = self.piece.stations.iter().map(|s| (s.left, s.at));
        let right = self.piece.stations.iter().rev().map(|s| (s.right, s.at));
        let corners = left
            .chain(right)
            .map(|(x, up)| [self.x(x), self.y(up)])
            .collect();
        closed(corners)
    }

    /// Outline, squares, strips for the binding, places to avoid, cuts.
    pub(in crate::show) fn paint(&self, d: &mut Canvas, context: Context<'_>) {
        let outline = self.outline();
        d.shape(outline.clone(), Ink::Cloth, Some(self.cloth.clone()));
        // What is no square is cloth all the same, but stands back.
        d.shape(outline.clone(), Ink::Veiled, None);
        for patch in &self.cuts.binding {
            d.area(self.patch(patch), Ink::Next);
        }
        let mut number: usize = 0;
        for strip in &self.cuts.strips {
            let (y, high) = (self.y(strip.to), self.y(strip.from) - self.y(strip.to));
            for x in &strip.squares {
                number += 1;
                let area = [self.x(*x), y, self.unit(), high];
                let cloth = Some(self.cloth.clone());
                let label = match (self.chalk.get(number - 1), self.chalk.is_empty()) {
                    (Some(place), _) => place.clone(),
                    (None, false) => say!(context, "spare-label"),
                    (None, true) => number.to_string(),
                };
                d.named_area(area, Ink::Denim, cloth, Some(label));
                d.call(format!("square-{number}"));
            }
        }
        for (n, half) in self.cuts.halves.iter().enumerate() {
            let label = match self.chalk.get(number + self.cuts.pair_of(n)) {
                Some(place) => format!("½ {place}"),
                None => "½".to_string(),
            };
            d.named_area(self.patch(&half.patch), Ink::Lap, None, Some(label));
            d.call(format!("half-{}", n + 1));
        }
        for zone in &self.piece.zones {
            d.shape(
                self.on_cloth([zone.from, zone.to, zone.left, zone.right]),
                Ink::Waste,
                None,
            );
        }
        d.shape(outline, Ink::Outline, None);
        for zone in &self.piece.zones {
            self.zone_name(d, zone, context);
        }
        let [_, _, left, right] = self.piece.reach();
        let past = self.letters * 0.6;
        let heights = if self.lines {
            self.heights()
        } else {
            Vec::new()
        };
        for up in heights {
            let y = self.y(up);
            d.line([self.x(left) - past, y, self.x(right) + past, y], Ink::Cut);
        }
    }

    /// The heights of all cuts across, from the hem up.
    pub(in crate::show) fn heights(&self) -> Vec<Length> {
        let [low, top, ..] = self.piece.reach();
        let strips = self.cuts.strips.iter();
        let mut heights: Vec<Length> = strips.flat_map(|s| [s.from, s.to]).collect();
        heights.extend(
            steps(self.piece, self.cuts)
                .iter()
                .filter_map(|step| match step {
                    CutStep::Straight { above } => Some(low + *above),
                    CutStep::Top { below } => Some(top - *below),
                    CutStep::Turn
                    | CutStep::Binding { .. }
                    | CutStep::Strip { .. }
                    | CutStep::Halves { .. } => None,
                }),
        );
        heights.sort();
        heights.dedup();
        heights
    }

    /// A line of the cutting list that is done, or the next one.
    pub(in crate::show) fn mark(&self, d: &mut Canvas, step: &CutStep, done: bool) {
        match step {
            CutStep::Straight { above } if !done => {
                let [low, ..] = self.piece.reach();
                d.shape(self.across([low, low + *above]), Ink::Now, None);
            }
            CutStep::Top { below } if !done => {
                let [_, high, ..] = self.piece.reach();
                d.shape(self.across([high - *below, high]), Ink::Now, None);
            }
            CutStep::Turn if !done => d.shape(self.outline(), Ink::Now, None),
            CutStep::Straight { .. } | CutStep::Top { .. } | CutStep::Turn => {}
            CutStep::Binding { patch, .. } => self.mark_patch(d, patch, done),
            CutStep::Strip { runs, halves, .. } => {
                for run in runs {
                    self.mark_patch(d, run, done);
                }
                self.mark_halves(d, halves, done);
            }
            CutStep::Halves { halves, .. } => self.mark_halves(d, halves, done),
        }
    }

    fn mark_halves(&self, d: &mut Canvas, halves: &[usize], done: bool) {
        for half in halves.iter().filter_map(|n| self.cuts.halves.get(*n)) {
            self.mark_patch(d, &half.patch, done);
        }
    }

    /// What is cut is covered and ticked, so that it is known without its colour; what is next is
    /// framed.
    fn mark_patch(&self, d: &mut Canvas, patch: &Patch, done: bool) {
        let area = self.patch(patch);
        if done {
            d.area(area, Ink::Done);
            ticked(d, area);
        } else {
            d.area(area, Ink::Now);
        }
    }

    /// What the marks of this drawing mean, those it has, each with a sign; `done` is as many lines
    /// of the cutting list as are cut, and nothing where the whole piece is.
    pub(in crate::show) fn key(&self, done: Option<usize>, context: Context<'_>) -> Vec<InkKey> {
        let mut out = Vec::new();
        let cloth = || Some(self.cloth.clone());
        let frame = [1.0, 1.0, SIGN[0] - 2.0, SIGN[1] - 2.0];
        let mut line = |key: &str, draw: &dyn Fn(&mut Canvas)| {
            let mut d = Canvas::default();
            draw(&mut d);
            let label = context.say(&format!("key-{key}"), &[]);
            out.push(InkKey {
                picture: d.picture(SIGN, SIGN[1], label.clone()),
                label,
            });
        };
        let whole = self.cuts.whole() as usize;
        let square = |label: Option<String>| {
            move |d: &mut Canvas| d.named_area(frame, Ink::Denim, cloth(), label.clone())
        };
        if whole > 0 && done.is_none() {
            line("square-past", &square(self.chalk.first().cloned()));
        } else if whole > 0 {
            match self.chalk.first() {
                Some(place) => line("square-places", &square(Some(place.clone()))),
                None => line("square-numbered", &square(Some("1".into()))),
            }
        }
        if !self.chalk.is_empty() && self.chalk.len() < whole {
            line("spare", &square(Some(say!(context, "spare-label"))));
        }
        if !self.cuts.halves.is_empty() {
            line("half", &|d| {
                d.named_area(frame, Ink::Lap, None, Some("½".into()));
            });
        }
        if !self.cuts.binding.is_empty() {
            line("binding", &|d| d.area(frame, Ink::Next));
        }
        if !self.piece.zones.is_empty() {
            line("avoid", &|d| d.area(frame, Ink::Waste));
        }
        line("rest", &|d| {
            d.named_area(frame, Ink::Cloth, cloth(), None);
            d.area(frame, Ink::Veiled);
            d.area(frame, Ink::Edge);
        });
        if self.lines && !self.cuts.strips.is_empty() {
            let cut = |d: &mut Canvas| {
                d.line([0.0, SIGN[1] / 2.0, SIGN[0], SIGN[1] / 2.0], Ink::Cut);
            };
            let key = if done.is_some() { "cut" } else { "cut-past" };
            line(key, &cut);
        }
        if done.is_some_and(|done| done > 0) {
            line("done", &|d| {
                d.area(frame, Ink::Done);
                ticked(d, frame);
            });
        }
        if done.is_some() {
            line("now", &|d| d.area(frame, Ink::Now));
        }
        out
    }

    /// The numbers of the strips, left of them.
    pub(in crate::show) fn strip_numbers(&self, d: &mut Canvas) {
        if !self.lines {
            return;
        }
        let [_, _, left, _] = self.piece.reach();
        for (i, strip) in self.cuts.strips.iter().enumerate() {
            let y = (self.y(strip.from) + self.y(strip.to)) / 2.0;
            let at = [self.x(left) - self.letters * 0.8, y];
            d.words(at, (i + 1).to_string(), self.letters);
        }
    }

    /// The cloth between two heights.
    fn across(&self, [from, to]: [Length; 2]) -> String {
        let [_, _, left, right] = self.piece.reach();
        self.on_cloth([from, to, left, right])
    }

    /// The part of a place that lies on the cloth: between two heights and two sides.
    fn on_cloth(&self, [from, to, near, far]: [Length; 4]) -> String {
        let [low, top, _, _] = self.piece.reach();
        let (from, to) = (in_mm(max(from, low)), in_mm(min(to, top)));
        let (near, far) = (in_mm(near), in_mm(far));
        let mut heights = vec![from, to];
        for pair in self.piece.stations.windows(2) {
            let [a, b] = [&pair[0], &pair[1]].map(|s| (in_mm(s.at), in_mm(s.left), in_mm(s.right)));
            heights.extend([a.0, b.0]);
            // Where an edge of the cloth crosses an edge of the place.
            for ((v0, v1), limit) in [((a.1, b.1), near), ((a.2, b.2), far)] {
                if (v0 - limit) * (v1 - limit) < 0.0 {
                    heights.push(a.0 + (b.0 - a.0) * (limit - v0) / (v1 - v0));
                }
            }
        }
        heights.retain(|at| (from..=to).contains(at));
        heights.sort_by(f64::total_cmp);
        heights.dedup();
        let mut ends: Vec<(f64, f64, f64)> = Vec::new();
        for at in heights {
            let (left, right) = self.edges(at);
            let (left, right) = (left.max(near), right.min(far));
            if left <= right {
                ends.push((at, left, right));
            }
        }
        if ends.len() < 2 {
            return String::new();
        }
        let [_, top, reach, _] = self.piece.reach().map(in_mm);
        let point = |x: f64, up: f64| {
            [
                self.at[0] + (x - reach) * self.scale,
                self.at[1] + (top - up) * self.scale,
            ]
        };
        let left = ends.iter().map(|(up, left, _)| point(*left, *up));
        let right = ends.iter().rev().map(|(up, _, right)| point(*right, *up));
        closed(left.chain(right).collect())
    }

    /// Where the cloth begins and ends at a height, in millimetres.
    fn edges(&self, at: f64) -> (f64, f64) {
        let pairs = self.piece.stations.windows(2);
        let found = pairs.into_iter().find_map(|pair| {
            let [a, b] = [&pair[0], &pair[1]].map(|s| (in_mm(s.at), in_mm(s.left), in_mm(s.right)));
            let share = (at - a.0) / (b.0 - a.0).max(1e-9);
            (a.0 <= at && at <= b.0)
                .then_some((a.1 + (b.1 - a.1) * share, a.2 + (b.2 - a.2) * share))
        });
        // Rounded past an end it is as at that end.
        found.unwrap_or_else(|| {
            let end = self.piece.stations.last();
            end.map_or((0.0, 0.0), |s| (in_mm(s.left), in_mm(s.right)))
        })
    }

    /// The name of a place to avoid, a word to a line where it is larger that way, upright
    /// where the place is narrow; left out where there is no room.
    fn zone_name(&self, d: &mut Canvas, zone: &Zone, context: Context<'_>) {
        let [low, top, left, right] = self.piece.reach();
        let [x, y, w, h] = self.patch(&Patch {
            from: max(zone.from, low),
            to: min(zone.to, top),
            left: max(zone.left, left),
            right: min(zone.right, right),
        });
        let name = names::zone(zone.kind, context);
        let Some(set) = Set::best(&name, [w, h], self.letters) else {
            return;
        };
        let first = (set.lines.len() as f64 - 1.0) / 2.0;
        for (i, text) in set.lines.into_iter().enumerate() {
            let past = (i as f64 - first) * set.size * LEADING;
            let (across, down) = if set.upright {
                (past, 0.0)
            } else {
                (0.0, past)
            };
            d.marks.push(Mark::Words {
                x: x + w / 2.0 + across,
                y: y + h / 2.0 + down,
                text,
                size: set.size,
                ink: Ink::Number,
                hold: Hold::Middle,
                upright: set.upright,
            });
        }
    }
}

/// A sign of the key, in points.
const SIGN: [f64; 2] = [20.0, 10.0];

/// A tick in the middle of an area.
fn ticked(d: &mut Canvas, [x, y, w, h]: [f64; 4]) {
    let (side, x, y) = (w.min(h) * 0.5, x + w / 2.0, y + h / 2.0);
    let at = |across: f64, down: f64| format!("{} {}", n(x + across * side), n(y + down * side));
    let tick = format!("M{}L{}L{}", at(-0.5, 0.05), at(-0.12, 0.42), at(0.5, -0.42));
    d.shape(tick, Ink::Outline, None);
}

/// From line to line of a name, beside the height of its letters.
const LEADING: f64 = 1.2;
/// How far beyond its place a name of long words may reach, beside the place's width.
const BEYOND: f64 = 1.8;

/// How the name of a place is set.
#[derive(Debug, PartialEq)]
struct Set {
    lines: Vec<String>,
    size: f64,
    upright: bool,
}

impl Set {
    /// The way in which the letters come out largest, up to `most`, in a place so wide and so
    /// high. Where they would be small within the place they may reach beyond its sides.
    fn best(name: &str, [w, h]: [f64; 2], most: f64) -> Option<Set> {
        let lines = [
            vec![name.to_string()],
            name.split(' ').map(str::to_string).collect(),
        ];
        let ways = [(w, h, false), (h, w, true), (w * BEYOND, h, false)];
        let set = |(long, high, upright): (f64, f64, bool), lines: &Vec<String>| {
            let widest = lines.iter().map(|l| width(l, 1.0)).fold(0.4, f64::max);
            let rows = (lines.len() as f64 - 1.0) * LEADING + 1.0;
            Set {
                lines: lines.clone(),
                size: (long / widest).min(high * 0.9 / rows).min(most),
                upright,
            }
        };
        let mut all = ways.iter().flat_map(|way| {
            let each = lines.iter().map(|lines| set(*way, lines));
            each.filter(|set| set.size >= most * 0.7)
                .reduce(|a, b| if b.size > a.size { b } else { a })
        });
        all.next()
    }
}

/// Corners joined up.
fn closed(corners: Vec<[f64; 2]>) -> String {
    let mut d = String::new();
    for (i, [x, y]) in corners.into_iter().enumerate() {
        d.push(if i == 0 { 'M' } else { 'L' });
        d += &format!("{} {}", n(x), n(y));
    }
    d + "z"
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set(name: &str, place: [f64; 2]) -> Option<(Vec<String>, bool)> {
        Set::best(name, place, 28.0).map(|set| (set.lines, set.upright))
    }

    #[test]
    fn a_place_has_its_name_in_as_many_lines_as_make_it_large() {
        let one = |name: &str| vec![name.to_string()];
        assert_eq!(
            set("Worn knee", [400.0, 100.0]),
            Some((one("Worn knee"), false))
        );
        let two = vec!["Worn".to_string(), "knee".to_string()];
        assert_eq!(set("Worn knee", [94.0, 102.0]), Some((two, false)));
        // A long word reaches beyond its place rather than be left out.
        let long = vec!["Abgewetztes".to_string(), "Knie".to_string()];
        assert_eq!(set("Abgewetztes Knie", [94.0, 102.0]), Some((long, false)));
        assert_eq!(
            set("Outseam ridge", [30.0, 800.0]),
            Some((one("Outseam ridge"), true))
        );
        assert_eq!(set("Outseam ridge", [10.0, 800.0]), None);
    }
}
