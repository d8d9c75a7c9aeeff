//! A corner of the binding in four moves: the upper right one, seen from the front.

use crate::measure::{System, in_mm};
use crate::plan::binding::row_from_edge;
use crate::show::drawing::canvas::Canvas;
use crate::show::drawing::face::{bare, binding};
use crate::show::picture::{Ink, Picture};
use crate::throw::Throw;
use crate::throw::stock::strip_shown;

/// How much of the throw is drawn, in widths of the binding as it shows.
const BODY: f64 = 4.0;
/// How far the free strip is drawn beyond the corner, in the same.
const TAIL: f64 = 1.6;
/// Room above the upper edge, in the same.
const ABOVE: f64 = 0.9;

/// A move once it is said in words.
type Drawn = Box<dyn FnOnce(String) -> Picture>;

/// The corner of the throw while its binding goes round it.
struct Corner {
    d: Canvas,
    /// How wide the binding shows.
    wide: f64,
    /// The corner itself.
    at: [f64; 2],
    /// The size of the drawing.
    size: [f64; 2],
}

impl Corner {
    /// The corner of the throw before anything lies on it.
    fn of(throw: &Throw) -> Corner {
        // Large enough to be drawn, whatever the strip.
        let wide = in_mm(strip_shown(throw).plain).max(1.0);
        let at = [BODY * wide, ABOVE * wide];
        let mut d = Canvas::default();
        let first = throw.assembly().whole().squares().next();
        let cloth = first.map(|s| bare(throw, s, crate::cloth::fabric::Face::Front));
        let body = [0.0, at[1], at[0], BODY * wide];
        d.named_area(body, Ink::Denim, cloth, None);
        Corner {
            d,
            wide,
            at,
            size: [(BODY + TAIL) * wide, (BODY + ABOVE) * wide],
        }
    }

    /// The strip along the upper edge as far as the corner and so far beyond it.
    fn upper(&mut self, throw: &Throw, beyond: f64) {
        let area = [0.0, self.at[1], self.at[0] + beyond, self.wide];
        self.d
            .named_area(area, Ink::Binding, Some(binding(throw)), None);
    }

    /// The strip down the right edge, from so far below the upper one.
    fn right(&mut self, throw: &Throw, from: f64) {
        let area = [
            self.at[0] - self.wide,
            self.at[1] + from,
            self.wide,
            BODY * self.wide - from,
        ];
        self.d
            .named_area(area, Ink::Binding, Some(binding(throw)), None);
    }

    /// The fold from the outer corner of the binding to the inner one.
    fn fold(&mut self) {
        let [x, y] = self.at;
        self.d
            .line([x, y, x - self.wide, y + self.wide], Ink::Outline);
    }

    fn done(self, words: String) -> Picture {
        self.d.picture(self.size, self.wide * 4.0, words)
    }
}

/// The four moves.
pub(in crate::show) fn corner(throw: &Throw, system: System) -> [Drawn; 4] {
    let wide = Corner::of(throw).wide;
    let row = (wide - in_mm(row_from_edge(system))).clamp(wide * 0.2, wide * 0.9);
    let tail = TAIL * wide;
    let boxed = |corner: Corner| -> Drawn { Box::new(move |words| corner.done(words)) };
    // It is held as far as the corner; the rest is free.
    let mut held = Corner::of(throw);
    held.upper(throw, tail * 0.9);
    let [x, y] = held.at;
    for n in 0..4 {
        let dot = x - wide * (0.5 + f64::from(n));
        let (side, middle) = (wide * 0.22, y + wide * 0.5);
        let area = [dot - side / 2.0, middle - side / 2.0, side, side];
        held.d.area(area, Ink::Now);
    }
    held.d.line([x, y, x, y + wide], Ink::Cut);
    // It is turned down, so that its crease lies along the next edge; what is over stands out.
    let mut turned = Corner::of(throw);
    turned.upper(throw, 0.0);
    turned.right(throw, wide * 0.5);
    let ear = format!(
        "M{} {}L{} {}L{} {}L{} {}Z",
        x - wide,
        y,
        x,
        y,
        x + wide * 0.8,
        y - wide * 0.8,
        x - wide * 0.1,
        y - wide * 0.8
    );
    turned.d.shape(ear, Ink::Binding, Some(binding(throw)));
    turned.d.arrow(
        [
            x + wide * 1.2,
            y + wide * 0.2,
            x + wide * 0.5,
            y + wide * 2.6,
        ],
        Ink::Rule,
    );
    // What is over becomes a fold from corner to corner.
    let mut folded = Corner::of(throw);
    folded.upper(throw, 0.0);
    folded.right(throw, wide);
    folded.fold();
    folded.d.arrow(
        [
            x + wide * 0.9,
            y - wide * 0.6,
            x - wide * 0.35,
            y + wide * 0.8,
        ],
        Ink::Rule,
    );
    // The stitching turns where both rows meet.
    let mut sewn = Corner::of(throw);
    sewn.upper(throw, 0.0);
    sewn.right(throw, wide);
    sewn.fold();
    let turn = [x - row, y + row];
    sewn.d.line([0.0, turn[1], turn[0], turn[1]], Ink::Stitch);
    sewn.d
        .line([turn[0], turn[1], turn[0], y + BODY * wide], Ink::Stitch);
    let side = wide * 0.34;
    let dot = [turn[0] - side / 2.0, turn[1] - side / 2.0, side, side];
    sewn.d.area(dot, Ink::Now);
    [held, turned, folded, sewn].map(boxed)
}
