//! A lap as it lies: which edge is on top, where the other lies beneath, the rows of stitching and
//! the fringe that stays free.

use crate::measure::in_mm;
use crate::plan::{Stitch, rows};
use crate::show::drawing::canvas::Canvas;
use crate::show::picture::Ink;
use crate::throw::Made;

/// From one thread of a fringe to the next, in laps.
const THREADS: f64 = 0.3;
/// How far they stand out, in laps.
const OUT: f64 = 0.28;
/// Most threads drawn along one lap.
const MOST: f64 = 120.0;

/// Where a lap lies in a picture. The piece on top comes from the left, or from above.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lap {
    /// Where the edge beneath ends: from the left, or from the top.
    pub from: f64,
    /// Where the lap begins along its length.
    pub along: f64,
    /// How wide it is drawn.
    pub wide: f64,
    /// How long it is drawn.
    pub long: f64,
    /// It runs up and down.
    pub upright: bool,
}

impl Lap {
    /// A point so far from the edge on top, into the lap, and so far along it.
    fn spot(&self, deep: f64, along: f64) -> (f64, f64) {
        let (across, along) = (self.from + self.wide - deep, self.along + along);
        match self.upright {
            true => (across, along),
            false => (along, across),
        }
    }

    /// A line along all of the lap, so far from the edge on top.
    fn line(&self, deep: f64) -> [f64; 4] {
        let ((x1, y1), (x2, y2)) = (self.spot(deep, 0.0), self.spot(deep, self.long));
        [x1, y1, x2, y2]
    }

    /// The edge that lies beneath, which cannot be seen from above.
    pub fn beneath(&self, d: &mut Canvas) {
        let [x1, y1, x2, y2] = self.line(self.wide);
        d.shape(format!("M{x1} {y1}L{x2} {y2}"), Ink::Hidden, None);
    }

    /// Threads standing out of the edge on top.
    pub fn fringe(&self, d: &mut Canvas) {
        let count = (self.long / (self.wide * THREADS)).floor().clamp(1.0, MOST);
        let mut path = String::new();
        for n in 0..count as u32 {
            let at = (f64::from(n) + 0.5) * self.long / count;
            // Uneven, and the same each time.
            let out = self.wide * OUT * (0.72 + 0.26 * (f64::from(n) * 2.4).sin());
            let ((x1, y1), (x2, y2)) = (self.spot(0.0, at), self.spot(-out, at));
            path += &format!("M{x1:.2} {y1:.2}L{x2:.2} {y2:.2}");
        }
        d.shape(path, Ink::Fray, None);
    }

    /// How far each row runs from the edge on top, as it is drawn.
    pub fn rows(&self, made: Made) -> Vec<f64> {
        let scale = self.wide / in_mm(made.lap).max(1e-6);
        let rows = rows(made.joining, made.lap, made.stitch).into_iter();
        rows.map(|row| in_mm(row) * scale).collect()
    }

    /// The stitching.
    pub fn stitching(&self, d: &mut Canvas, made: Made) {
        if let Stitch::Zigzag { width } = made.stitch {
            let wide = in_mm(width) * self.wide / in_mm(made.lap).max(1e-6);
            d.shape(self.zigzag(wide), Ink::Stitch, None);
            return;
        }
        for row in self.rows(made) {
            d.line(self.line(row), Ink::Stitch);
        }
    }

    /// A zigzag so wide about the middle of the lap.
    fn zigzag(&self, wide: f64) -> String {
        let count = (self.long / (self.wide * 0.5)).floor().clamp(2.0, MOST);
        let mut path = String::new();
        for n in 0..=count as u32 {
            let side = if n % 2 == 0 { -0.5 } else { 0.5 };
            let at = f64::from(n) * self.long / count;
            let (x, y) = self.spot(self.wide / 2.0 + wide * side, at);
            let to = if n == 0 { 'M' } else { 'L' };
            path += &format!("{to}{x:.2} {y:.2}");
        }
        path
    }

    /// The needle where the stitching has come to, or both of a twin needle with what holds them.
    pub fn needles(&self, d: &mut Canvas, made: Made) {
        let mut at = self.rows(made);
        if let Stitch::TwoRows { .. } = made.stitch {
            // One needle, in the second row.
            at = at.split_off(1);
        }
        let radius = (self.wide * 0.13).min(self.long * 0.03);
        let spots: Vec<(f64, f64)> = at
            .iter()
            .map(|deep| self.spot(*deep, self.long - radius * 2.5))
            .collect();
        if let [(x1, y1), (x2, y2)] = spots.as_slice() {
            d.line([*x1, *y1, *x2, *y2], Ink::Outline);
        }
        for (x, y) in spots {
            let (left, all) = (x - radius, radius * 2.0);
            d.shape(
                format!(
                    "M{left:.2} {y:.2}a{radius:.2} {radius:.2} 0 1 0 {all:.2} 0a{radius:.2} {radius:.2} 0 1 0 -{all:.2} 0z"
                ),
                Ink::Needle,
                None,
            );
        }
    }
}
