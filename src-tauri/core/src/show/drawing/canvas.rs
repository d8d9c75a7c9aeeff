//! The canvas that collects marks, one after another, and becomes a picture.

use super::letters::broken;
use crate::show::picture::{DrawnCloth, Hold, Ink, Mark, Picture};

/// Marks in the order they are painted, and the cloths they show.
#[derive(Debug, Default)]
pub(in crate::show) struct Canvas {
    pub(in crate::show) marks: Vec<Mark>,
    cloths: Vec<DrawnCloth>,
}

impl Canvas {
    /// The number of a cloth; the same cloth gets the same.
    pub(in crate::show) fn cloth(&mut self, cloth: DrawnCloth) -> u8 {
        let found = self.cloths.iter().position(|c| *c == cloth);
        let place = found.unwrap_or_else(|| {
            self.cloths.push(cloth);
            self.cloths.len() - 1
        });
        u8::try_from(place).unwrap_or(u8::MAX)
    }

    /// A rectangle.
    pub(in crate::show) fn area(&mut self, area: [f64; 4], ink: Ink) {
        self.named_area(area, ink, None, None);
    }

    /// A rectangle with letters in its middle.
    pub(in crate::show) fn labelled(&mut self, area: [f64; 4], ink: Ink, label: String) {
        self.named_area(area, ink, None, Some(label));
    }

    /// A rectangle, of cloth or not, with letters in its middle or none.
    pub(in crate::show) fn named_area(
        &mut self,
        [x, y, w, h]: [f64; 4],
        ink: Ink,
        cloth: Option<DrawnCloth>,
        label: Option<String>,
    ) {
        let cloth = cloth.map(|cloth| self.cloth(cloth));
        self.marks.push(Mark::Area {
            x,
            y,
            w,
            h,
            ink,
            cloth,
            label,
            name: None,
        });
    }

    /// What the last rectangle is called in a file.
    pub(in crate::show) fn call(&mut self, own: String) {
        if let Some(Mark::Area { name, .. }) = self.marks.last_mut() {
            *name = Some(own);
        }
    }

    /// A line.
    pub(in crate::show) fn line(&mut self, line: [f64; 4], ink: Ink) {
        self.straight(line, ink, false);
    }

    /// An arrow.
    pub(in crate::show) fn arrow(&mut self, line: [f64; 4], ink: Ink) {
        self.straight(line, ink, true);
    }

    fn straight(&mut self, [x1, y1, x2, y2]: [f64; 4], ink: Ink, arrow: bool) {
        self.marks.push(Mark::Line {
            x1,
            y1,
            x2,
            y2,
            ink,
            arrow,
        });
    }

    /// A shape measured from the top left of the drawing; nothing where there is none.
    pub(in crate::show) fn shape(&mut self, d: String, ink: Ink, cloth: Option<DrawnCloth>) {
        if d.is_empty() {
            return;
        }
        let cloth = cloth.map(|cloth| self.cloth(cloth));
        let at = Vec::new();
        self.marks.push(Mark::Shape { d, at, ink, cloth });
    }

    /// A shape at each of some places; nothing where there is no place.
    pub(in crate::show) fn stamp(
        &mut self,
        d: &str,
        at: Vec<[f64; 2]>,
        ink: Ink,
        cloth: Option<DrawnCloth>,
    ) {
        if at.is_empty() {
            return;
        }
        let (d, cloth) = (d.to_string(), cloth.map(|cloth| self.cloth(cloth)));
        self.marks.push(Mark::Shape { d, at, ink, cloth });
    }

    /// The same letters at some places; nothing where there is no place.
    pub(in crate::show) fn letters(&mut self, text: &str, size: f64, at: Vec<[f64; 2]>, ink: Ink) {
        if at.is_empty() {
            return;
        }
        self.marks.push(Mark::Letters {
            text: text.to_string(),
            size,
            at,
            ink,
        });
    }

    /// Words about a point.
    pub(in crate::show) fn words(&mut self, [x, y]: [f64; 2], text: String, size: f64) {
        self.held([x, y], text, size, (Ink::Words, Hold::Middle));
    }

    /// Words held at one of their ends, their middle so high.
    pub(in crate::show) fn held(
        &mut self,
        [x, y]: [f64; 2],
        text: String,
        size: f64,
        (ink, hold): (Ink, Hold),
    ) {
        self.marks.push(Mark::Words {
            x,
            y,
            text,
            size,
            ink,
            hold,
            upright: false,
        });
    }

    /// A text over several lines, its first line so high; gives the height of the next one.
    pub(in crate::show) fn lines(
        &mut self,
        [x, mut y, room]: [f64; 3],
        (size, ink): (f64, Ink),
        text: &str,
        most: usize,
    ) -> f64 {
        // What is not bold comes out a tenth narrower.
        let narrow = if ink == Ink::Title { 1.0 } else { 0.9 };
        for line in broken(text, size * narrow, room, most) {
            self.held([x, y - size * 0.36], line, size, (ink, Hold::Start));
            y += size * 1.3;
        }
        y
    }

    /// The picture; `repeat` is after how far the figure of a print comes again.
    pub(in crate::show) fn picture(
        self,
        [width, height]: [f64; 2],
        repeat: f64,
        spoken: String,
    ) -> Picture {
        Picture {
            width,
            height,
            spoken,
            repeat,
            from: [0.0, 0.0],
            cloths: self.cloths,
            marks: self.marks,
        }
    }
}

impl Picture {
    /// Have every text changed.
    pub fn each_text(&mut self, mut change: impl FnMut(&mut String)) {
        for mark in &mut self.marks {
            match mark {
                Mark::Words { text, .. } | Mark::Letters { text, .. } => change(text),
                Mark::Area { label, .. } => label.iter_mut().for_each(&mut change),
                Mark::Line { .. } | Mark::Shape { .. } => {}
            }
        }
    }
}
