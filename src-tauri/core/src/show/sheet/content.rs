//! The content of the making sheet, as data for its template.

use crate::cloth::photos::PhotoId;
use crate::log::journal::Journal;
use crate::show::context::Context;
use crate::show::dates::ZoneName;
use crate::show::drawing::Style;
use crate::show::drawing::canvas::Canvas;
use crate::show::drawing::face::{FaceGrid, FaceMap};
use crate::show::drawing::letters::n;
use crate::show::export::PrintUnits;
use crate::show::lessons::Lessons;
use crate::show::parts::Move;
use crate::show::picture::{Ink, InkKey, Picture};
use crate::show::story::{self, Story};
use serde::Serialize;
use std::collections::BTreeMap;
use std::ops::Range;

/// A figure in both systems.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Row {
    /// What it is.
    pub label: String,
    /// As the maker's own ruler says.
    pub own: String,
    /// As the other system says; none where it is not a measure.
    pub other: Option<String>,
}

/// Something to have at hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SheetSupply {
    /// What.
    pub label: String,
    /// How much, and what to know.
    pub lines: Vec<String>,
    /// It is at hand already.
    pub have: bool,
}

/// A fabric or a denim.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Fabric {
    /// Its letters in the pictures; a denim has them in black print only.
    pub letters: String,
    /// Its name.
    pub name: String,
    /// A square of it; the half of a denim's where its wrong side shows, if it does.
    pub swatch: Picture,
    /// How many squares of it.
    pub count: String,
}

/// A line of a cutting list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SheetCutLine {
    /// It is cut.
    pub done: bool,
    /// What to cut, where, and what to chalk on it.
    pub text: String,
}

/// One outline with its cuts; several pieces may share it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Cuts {
    /// The pieces cut like this.
    pub titles: Vec<String>,
    /// The outline with places to avoid and where squares and strips lie.
    pub picture: Option<Picture>,
    /// The lines of its cutting list, in order; none once it is cut up.
    pub list: Vec<SheetCutLine>,
    /// What to keep of the rest, and what to know.
    pub said: Vec<String>,
    /// What the signs in the picture mean.
    pub key: Vec<InkKey>,
}

/// One garment, cloth or pack.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct HeapPart {
    /// What the maker calls it.
    pub title: String,
    /// What it is for and gives.
    pub lines: Vec<String>,
    /// Its pieces, each with what it gives.
    pub pieces: Vec<[String; 2]>,
    /// How to cut them.
    pub cuts: Vec<Cuts>,
}

/// One face, as it is seen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct FacePart {
    /// Front or back.
    pub title: String,
    /// What to know; the back says that it is mirrored.
    pub lines: Vec<String>,
    /// The picture in words.
    pub spoken: String,
    /// What its squares show.
    pub(in crate::show) map: FaceMap,
    /// The place each column is chalked with, from the left as it is seen.
    pub columns: Vec<u16>,
}

impl FacePart {
    /// How many rows there are.
    pub fn down(&self) -> u16 {
        self.map.down
    }

    /// Some of its columns and rows, counted from 0 as they are seen, with the numbers they
    /// are chalked with: squares of so large a side, numbers so high, letters of fabrics so
    /// high by the side. In black print the denims have letters too.
    pub fn picture(
        &self,
        columns: Range<u16>,
        rows: Range<u16>,
        [side, number]: [f64; 2],
        letters: f64,
        style: Style,
    ) -> Picture {
        let mut d = Canvas::default();
        let map = self.map.part(&columns, &rows);
        let edge = number * NUMBERS;
        let grid = FaceGrid {
            at: [edge, edge],
            cell: side,
        };
        let [right, low] = grid.point([map.across, map.down].map(f64::from));
        map.paint(&mut d, &grid);
        map.edges(&mut d, &grid);
        let between = |x, y| grid.point([x, y].map(f64::from));
        let mut heavy = String::new();
        for row in bounds(1..=self.map.down).filter(|at| (rows.start..=rows.end).contains(at)) {
            let [x, y] = between(0, row - rows.start);
            heavy += &format!("M{} {}H{}", n(x), n(y), n(right));
        }
        for col in bounds(self.columns.iter().copied())
            .filter(|at| (columns.start..=columns.end).contains(at))
        {
            let [x, y] = between(col - columns.start, 0);
            heavy += &format!("M{} {}V{}", n(x), n(y), n(low));
        }
        d.shape(heavy, Ink::Block, None);
        map.letters(&mut d, &grid, letters, 0.0);
        if style == Style::Ink {
            map.denim_letters(&mut d, &grid, letters * 0.72);
        }
        for (i, col) in self.columns.iter().enumerate().take(columns.end.into()) {
            if let Some(at) = i.checked_sub(columns.start.into()) {
                let x = grid.point([at as f64 + 0.5, 0.0])[0];
                d.words([x, edge / 2.0], col.to_string(), number);
            }
        }
        for row in rows.clone() {
            let y = grid.point([0.0, f64::from(row - rows.start) + 0.5])[1];
            d.words([edge / 2.0, y], (row + 1).to_string(), number);
        }
        let mut picture = d.picture([right + 1.0, low + 1.0], side / 2.0, self.spoken.clone());
        picture.from = grid.at;
        picture
    }
}

/// The room numbers take beside the squares, by their height.
pub const NUMBERS: f64 = 1.7;

/// Where fours begin and end among squares chalked with these numbers.
pub fn bounds(numbers: impl Iterator<Item = u16>) -> impl Iterator<Item = u16> {
    let mut out = vec![0];
    let mut last = None;
    let mut count = 0;
    for number in numbers {
        let four = (number - 1) / 2;
        if last.is_some_and(|last| last != four) {
            out.push(count);
        }
        last = Some(four);
        count += 1;
    }
    out.push(count);
    out.into_iter()
}

/// A caution.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Warning {
    /// In a word or two.
    pub title: String,
    /// What to do.
    pub text: String,
}

/// One kind of work in a stage.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SheetStep {
    /// What to do.
    pub title: String,
    /// Where.
    pub station: String,
    /// For how many pieces, and how many are done.
    pub count: String,
    /// How.
    pub how: Vec<String>,
    /// What was learned of it, on the throw before and on this one; where it comes up first.
    pub learned: Vec<String>,
    /// Figures needed for it.
    pub figures: Vec<Row>,
    /// The caution that belongs here: at length where it comes up first, then in short, once
    /// a stage.
    pub caution: Option<Warning>,
    /// A box for the step itself where it is not ticked piece by piece; whether it is done.
    pub tick: Option<bool>,
}

/// A step move by move.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SheetMoves {
    /// Which step, and where.
    pub title: String,
    /// Its moves in order.
    pub moves: Vec<Move>,
}

/// A box to tick.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Tick {
    /// It is done.
    pub done: bool,
    /// The letters of the print, where a fabric goes on.
    pub letters: String,
}

/// One piece with its boxes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SheetLine {
    /// The piece's name.
    pub label: String,
    /// A box for each column; none where it does not go through that work.
    pub ticks: Vec<Option<Tick>>,
}

/// Something the maker wrote down, or that happened.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SheetEntry {
    /// On which day.
    pub day: String,
    /// About which piece.
    pub piece: String,
    /// Her words, or what happened.
    pub text: String,
}

/// A stage of the work: squares, pairs, fours, larger joins, the whole, binding, washing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SheetStage {
    /// Its name.
    pub title: String,
    /// How many pieces.
    pub count: String,
    /// The work in order.
    pub steps: Vec<SheetStep>,
    /// What one of its steps does move by move, where that is drawn.
    pub moves: Option<SheetMoves>,
    /// Its steps in a word or two, in the order of the boxes.
    pub columns: Vec<String>,
    /// The pieces with their boxes.
    pub lines: Vec<SheetLine>,
    /// What she wrote down about pieces of this stage.
    pub notes: Vec<SheetEntry>,
    /// Blocks are squared up in it.
    pub squares_up: bool,
}

/// One block to be squared up.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SheetBlock {
    /// Its name.
    pub label: String,
    /// What to trim it to, where it is no four.
    pub target: String,
    /// Its width and height as measured, if it was.
    pub measured: Option<[String; 2]>,
    /// It leans: what it holds is told beneath.
    pub leans: bool,
    /// It is squared up.
    pub done: bool,
}

/// Squaring up.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Squaring {
    /// The sizes to trim to, and what was measured on average.
    pub figures: Vec<Row>,
    /// What the measures say.
    pub said: String,
    /// The blocks.
    pub blocks: Vec<SheetBlock>,
    /// What those hold that lean, which is less than their sides; empty where none does.
    pub leaning: String,
}

/// The wall card.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WallCard {
    /// The figures needed at the table, the iron and the machine.
    pub figures: Vec<Row>,
    /// The order of work, one short line each.
    pub order: Vec<String>,
    /// Cautions in short.
    pub cautions: Vec<Warning>,
    /// The prints with their letters.
    pub prints: Vec<Fabric>,
    /// How many prints found no room, in words.
    pub more: Option<String>,
}

/// A table to write in by hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WriteTable {
    /// What it is for.
    pub title: String,
    /// Its headings; the first is over the rows' names.
    pub heads: Vec<String>,
    /// Its rows: what is printed in the first cells; the other cells are left for the pen.
    pub rows: Vec<Vec<String>>,
}

/// What another maker writes on a blank handout.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Blank {
    /// Lines at the head: whose it is, and when it was begun.
    pub lines: Vec<String>,
    /// Laps tried on scraps.
    pub scraps: WriteTable,
    /// Squares cut, by denim and fabric.
    pub squares: WriteTable,
    /// The finished throw before and after washing.
    pub finished: WriteTable,
}

/// All of a throw that goes on paper.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sheet {
    /// The language of the words, as in BCP 47.
    pub language: String,
    /// What the maker calls the throw.
    pub name: String,
    /// Its size in a line.
    pub subtitle: String,
    /// The day of printing, in words.
    pub day: String,
    /// The day of printing: year, month, day; a blank handout has none.
    pub date: Option<[i32; 3]>,
    /// How far it is.
    pub progress: String,
    /// Headings and the like, by key.
    pub labels: BTreeMap<String, String>,
    /// The systems of units that it is printed in.
    pub units: PrintUnits,
    /// Lines to write on, where it is a blank handout.
    pub blank: Option<Blank>,
    /// The sizes.
    pub figures: Vec<Row>,
    /// Doubts about the plan that she should hear.
    pub advice: Vec<String>,
    /// What was learned: on the throw before, and on this one.
    pub lessons: Vec<Lessons>,
    /// What to have at hand.
    pub supplies: Vec<SheetSupply>,
    /// Weight, cloth and time.
    pub totals: Vec<Row>,
    /// What to know of them.
    pub said: Vec<String>,
    /// The prints.
    pub prints: Vec<Fabric>,
    /// The denims.
    pub denims: Vec<Fabric>,
    /// On some square the wrong side of its denim shows.
    pub wrong_side: bool,
    /// Some square is pieced of two halves.
    pub pieced: bool,
    /// Squares to spare and squares spoilt.
    pub tallies: Vec<Row>,
    /// The clothes pile.
    pub heaps: Vec<HeapPart>,
    /// What the signs in the pictures of what is cut up mean.
    pub past_key: Vec<InkKey>,
    /// Front and back.
    pub faces: Vec<FacePart>,
    /// The order of work.
    pub stages: Vec<SheetStage>,
    /// Squaring up; none where there is no block.
    pub squaring: Option<Squaring>,
    /// Laps that differ from the plan.
    pub laps: Vec<String>,
    /// Scraps tried: what, and what came of it.
    pub scraps: Vec<SheetSupply>,
    /// What she wrote down about the throw as such.
    pub notes: Vec<SheetEntry>,
    /// What changed on the way, the newest first.
    pub changes: Vec<SheetEntry>,
    /// The story, if it is to be printed.
    pub story: Option<Story>,
    /// Its photos that are printed, in order.
    pub photos: Vec<PhotoId>,
    /// Photos of the fabrics, where they are shown.
    pub swatches: Vec<PhotoId>,
    /// How many of its photos found no room, in words.
    pub left_off: Option<String>,
    /// The wall card.
    pub card: WallCard,
}

impl Sheet {
    /// The same with the story, by the days of a time zone, at its end.
    pub fn with_story(self, journal: &Journal, zone: &ZoneName, context: Context<'_>) -> Sheet {
        let words = self.units.words(context.words);
        let story_view = Context {
            words: &words,
            ruler: self.units.ruler(context.ruler),
            ..context
        };
        let story_view = story::story(journal, zone, story_view);
        let items = story_view.days.iter().flat_map(|day| &day.items);
        let mut photos: Vec<PhotoId> = items.filter_map(|item| item.photo.clone()).collect();
        let over = photos.len().saturating_sub(MOST_PHOTOS);
        photos.truncate(MOST_PHOTOS);
        Sheet {
            left_off: (over > 0)
                .then(|| say!(context, "sheet-left-off", n = over, most = MOST_PHOTOS)),
            photos,
            story: Some(story_view),
            ..self
        }
    }
}

/// How many photos are printed at most, the first.
pub const MOST_PHOTOS: usize = 100;
