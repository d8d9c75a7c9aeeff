//! The sheet's pictures as SVG, of the size they have on paper. A face too large for a page
//! is divided at the edges of fours.

use crate::{Inks, LetterSize, Options, Paper, Photos};
use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::show::drawing::{self, Style, svg};
use lapwork_core::show::sheet::content::{Cuts, FacePart, NUMBERS, bounds};
use lapwork_core::show::{InkKey, Picture, Sheet};
use serde_json::{Value, json};
use std::ops::Range;

/// A point, in millimetres.
const POINT: f64 = 25.4 / 72.0;
/// Squares are never drawn larger than this, in millimetres.
const MOST: f64 = 20.0;
/// Between two faces side by side.
const GAP: f64 = 8.0;
/// Room for words beside faces one over the other.
const ASIDE: f64 = 58.0;
/// Height of the letters of fabrics, by the side of their squares; in large print those of the
/// smallest square have 18 pt.
const LETTERS: f64 = 0.36;
const LARGE_LETTERS: f64 = 0.5;
/// The letters of the sheet, the first choice first.
const TYPE: &str = "'Noto Sans', 'Libertinus Serif', 'DejaVu Sans Mono'";

/// Pictures by the names of their files.
pub(crate) type Files = Vec<(String, String)>;

/// Pictures as they come to one kind of paper.
pub(crate) struct Pictures<'a> {
    options: Options,
    /// What is done to every text before it is set.
    tidy: &'a mut dyn FnMut(&mut String),
    photos: &'a Photos,
    files: Files,
}

impl Pictures<'_> {
    /// The sheet's pictures, and what the template has to know of them.
    pub(crate) fn of(
        sheet: &Sheet,
        options: Options,
        photos: &Photos,
        tidy: &mut dyn FnMut(&mut String),
    ) -> (Value, Files) {
        let mut all = Pictures {
            options,
            tidy,
            photos,
            files: Vec::new(),
        };
        let faces = all.faces(&sheet.faces);
        let swatches = |all: &mut Pictures<'_>, list: &[_]| -> Vec<Value> {
            let each = list.iter();
            each.map(|fabric: &lapwork_core::show::sheet::Fabric| all.swatch(&fabric.swatch))
                .collect()
        };
        let described = json!({
            "faces": faces,
            "prints": swatches(&mut all, &sheet.prints),
            "denims": swatches(&mut all, &sheet.denims),
            "heaps": sheet.heaps.iter().map(|heap| {
                heap.cuts.iter().map(|cuts| all.cuts(cuts)).collect::<Vec<Value>>()
            }).collect::<Vec<Vec<Value>>>(),
            "keys": sheet.heaps.iter().map(|heap| {
                heap.cuts.iter().map(|cuts| all.signs(&cuts.key)).collect::<Vec<_>>()
            }).collect::<Vec<_>>(),
            "past_key": all.signs(&sheet.past_key),
            "moves": sheet.stages.iter().map(|stage| {
                let moves = stage.moves.iter().flat_map(|part| &part.moves);
                moves.map(|one| all.moved(&one.picture)).collect::<Vec<Value>>()
            }).collect::<Vec<Vec<Value>>>(),
        });
        (described, all.files)
    }

    fn large(&self) -> bool {
        self.options.size == LetterSize::Large
    }

    fn style(&self) -> Style {
        match self.options.ink {
            Inks::Colour => Style::Colour,
            Inks::Black => Style::Ink,
        }
    }

    /// Width and height of the paper, in millimetres.
    fn paper(&self) -> [f64; 2] {
        match self.options.paper {
            Paper::A4 => [210.0, 297.0],
            Paper::Letter => [215.9, 279.4],
        }
    }

    /// The width between the margins.
    fn wide(&self) -> f64 {
        self.paper()[0] - 30.0
    }

    /// One picture, a unit of it so many millimetres; how wide a thin line is, and the smallest
    /// letters, in points.
    fn add(&mut self, mut picture: Picture, scale: f64, [pen, least]: [f64; 2]) -> Value {
        picture.each_text(&mut *self.tidy);
        let paper = drawing::SvgPaper {
            style: self.style(),
            scale,
            pen: pen * POINT / scale,
            least: least * POINT / scale,
            type_faces: TYPE,
            ground: false,
        };
        let photo = |name: &PhotoId| {
            let photo = self.photos.get(name)?;
            Some(BASE64_STANDARD.encode(&photo.jpeg))
        };
        let drawn = svg(&picture, "", &paper, &photo);
        // The same picture is kept once.
        let found = self.files.iter().position(|(_, kept)| *kept == drawn);
        let n = found.unwrap_or_else(|| {
            let name = format!("/picture-{}.svg", self.files.len());
            self.files.push((name, drawn));
            self.files.len() - 1
        });
        json!({
            "file": self.files[n].0,
            "width": picture.width * scale,
            "height": picture.height * scale,
            "spoken": picture.spoken,
        })
    }

    fn swatch(&mut self, picture: &Picture) -> Value {
        let side = if self.large() { 22.0 } else { 16.0 };
        self.add(picture.clone(), side * POINT / picture.width, [0.6, 0.0])
    }

    /// The signs of a key, a point of the paper for each of theirs; large with the letters.
    fn signs(&mut self, key: &[InkKey]) -> Vec<Value> {
        let scale = POINT * if self.large() { 1.7 } else { 1.0 };
        key.iter()
            .map(|line| self.add(line.picture.clone(), scale, [0.8, 6.0]))
            .collect()
    }

    /// One move of a step: four side by side, two in large print.
    fn moved(&mut self, picture: &Picture) -> Value {
        let across = if self.large() { 2.0 } else { 4.0 };
        let wide = (self.wide() - GAP * (across - 1.0)) / across;
        // In large print all four stand on the page of their step.
        let high = if self.large() { 0.5 } else { 0.7 };
        let scale = (wide / picture.width).min(wide * high / picture.height);
        self.add(picture.clone(), scale, [0.6, 0.0])
    }

    /// What is cut up already is shown small; what is still to cut about as large as the page
    /// allows, where the template finds the exact size.
    fn cuts(&mut self, cuts: &Cuts) -> Value {
        let Some(picture) = &cuts.picture else {
            return Value::Null;
        };
        let past = cuts.list.is_empty();
        let [width, height] = match (past, self.large()) {
            (true, large) => [self.wide() / if large { 2.0 } else { 4.0 } - 4.0, 55.0],
            (false, _) => [self.wide(), 170.0],
        };
        let scale = (width / picture.width).min(height / picture.height);
        self.add(picture.clone(), scale, [0.6, 7.0])
    }

    /// Both faces: how they are laid out, and the parts of each. Beside one another where their
    /// squares are large enough so, else one over the other, else a page for each, or for each part.
    fn faces(&mut self, faces: &[FacePart]) -> Value {
        let Some(first) = faces.first() else {
            return json!({ "laid": "beside", "parts": [] });
        };
        let (across, down) = (first.columns.len() as u16, first.down());
        let [_, high] = self.paper();
        let wide = self.wide();
        let (across_f, down_f) = (f64::from(across), f64::from(down));
        let beside = ((wide - GAP) / 2.0 / (across_f + 0.75))
            .min(MOST)
            .min((high - 170.0) / (down_f + 0.75));
        // Beside faces that are stacked there is room for the words and the legend.
        let stacked = ((high - 75.0) / 2.0 / (down_f + 0.75))
            .min(MOST)
            .min((wide - GAP - ASIDE) / (across_f + 0.75));
        // Squares are never drawn smaller than this, in large print so that their letters are
        // large too; a larger face is parted over pages.
        let least: f64 = if self.large() { 12.7 } else { 7.5 };
        let whole = |side| -> Vec<_> { faces.iter().map(|face| (face, side)).collect() };
        let together = match (self.large(), beside >= 9.0, stacked >= least) {
            (false, true, _) => Some(("beside", whole(beside))),
            (false, false, true) => Some(("stacked", whole(stacked))),
            (true, _, _) if beside >= least => Some(("beside", whole(beside))),
            _ => None,
        };
        if let Some((laid, whole)) = together {
            let parts = whole.into_iter();
            let parts = parts.map(|(face, side)| vec![self.part(face, 0..across, 0..down, side)]);
            return json!({ "laid": laid, "parts": parts.collect::<Vec<_>>() });
        }
        let tall = high - 37.0 - if self.large() { 62.0 } else { 40.0 };
        let parts: Vec<Vec<Value>> = faces
            .iter()
            .map(|face| {
                let side = (wide / (across_f + 1.0))
                    .min(tall / (down_f + 1.0))
                    .min(MOST);
                let fit = |all: u16, room: f64| match side >= least {
                    true => all,
                    false => ((room / least).floor() as u16).saturating_sub(1).max(2),
                };
                let columns = runs(&face.columns, fit(across, wide));
                let numbers: Vec<u16> = (1..=down).collect();
                let rows = runs(&numbers, fit(down, tall));
                let longest = |runs: &[Range<u16>]| {
                    runs.iter()
                        .map(|r| f64::from(r.end - r.start))
                        .fold(1.0, f64::max)
                };
                let side = (wide / (longest(&columns) + 1.0))
                    .min(tall / (longest(&rows) + 1.0))
                    .min(MOST);
                let places = rows
                    .iter()
                    .flat_map(|rows| columns.iter().map(move |columns| (rows, columns)));
                places
                    .map(|(rows, columns)| self.part(face, columns.clone(), rows.clone(), side))
                    .collect()
            })
            .collect();
        json!({ "laid": "parted", "parts": parts })
    }

    /// A part of a face, its squares so large in millimetres.
    fn part(&mut self, face: &FacePart, columns: Range<u16>, rows: Range<u16>, side: f64) -> Value {
        let most = if self.large() { 14.0 } else { 10.0 };
        let number = (side * 0.36).min(most * POINT).max(8.0 * POINT);
        // There is room for the numbers in a side of a square.
        debug_assert!(number * NUMBERS < side * 1.1);
        let letters = if self.large() { LARGE_LETTERS } else { LETTERS };
        let sizes = [side / POINT, number / POINT];
        let picture = face.picture(columns, rows, sizes, letters, self.style());
        self.add(picture, POINT, [0.8, 0.0])
    }
}

/// Runs of whole fours, `fit` squares at most and about as long as one another.
fn runs(numbers: &[u16], fit: u16) -> Vec<Range<u16>> {
    let all = numbers.len() as u16;
    let parts = all.div_ceil(fit.max(1)).max(1);
    let even = (all.div_ceil(parts).div_ceil(2) * 2).min(fit).max(2);
    let mut out = Vec::new();
    let (mut from, mut last) = (0, 0);
    for at in bounds(numbers.iter().copied()) {
        if at - from > even {
            out.push(from..last);
            from = last;
        }
        last = at;
    }
    out.push(from..last);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_face_is_parted_at_the_edges_of_fours() {
        let numbers: Vec<u16> = (1..=12).collect();
        assert_eq!(runs(&numbers, 12), std::slice::from_ref(&(0..12)));
        assert_eq!(runs(&numbers, 5), [0..4, 4..8, 8..12]);
        assert_eq!(runs(&[1], 12), std::slice::from_ref(&(0..1)));
        // Seen from behind, an odd column comes first.
        let turned: Vec<u16> = (1..=7).rev().collect();
        assert_eq!(runs(&turned, 4), [0..3, 3..7]);
    }
}
