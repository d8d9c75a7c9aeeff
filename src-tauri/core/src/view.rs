//! What the window shows, ready to show: words chosen, lengths read off the ruler,
//! pictures worked out, and each button with the action it sends.
//!
//! These are transport types; [`crate::show`] makes them. The window's TypeScript
//! types are generated from here (see `tests/tests/types.rs`).

use crate::cloth::fabric::{Denim, Face, Print};
use crate::cloth::garments::{GarmentKind, GarmentSize, ZoneKind};
use crate::cloth::pile::Use;
use crate::command::Action;
use crate::measure::{Ruler, System};
use crate::plan::assembly::{Kind, Rect};
use crate::plan::scraps::{Scrap, Verdict};
use crate::plan::{JoinOrder, Joining, Plan};
use crate::throw::tasks::{Caution, Station, Task};
use crate::throw::wishes::Wishes;
use crate::throw::{Item, Mishap};
use crate::words::{LanguageName, Problem, Shown};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// A named value.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Figure {
    /// What it is.
    pub label: String,
    /// The value.
    pub value: Shown,
}

/// A button and what it sends.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Button {
    /// Its words.
    pub label: String,
    /// What it asks for.
    pub action: Action,
}

/// A drawing. Coordinates are in its own units, from the top left.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Picture {
    /// Width of the drawing.
    pub width: f64,
    /// Height of the drawing.
    pub height: f64,
    /// The picture in words.
    pub spoken: String,
    /// What is drawn, the first at the bottom.
    pub marks: Vec<Mark>,
}

/// One thing drawn.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
#[serde(rename_all = "kebab-case", tag = "mark")]
pub enum Mark {
    /// A rectangle.
    Area {
        /// Left edge.
        x: f64,
        /// Upper edge.
        y: f64,
        /// Width.
        w: f64,
        /// Height.
        h: f64,
        /// How it is filled.
        ink: Ink,
        /// A print from the throw's list over it.
        print: Option<u8>,
        /// The colour of the denim it is of.
        colour: Option<String>,
        /// Letters in its middle.
        label: Option<String>,
    },
    /// A line, or an arrow.
    Line {
        /// Start.
        x1: f64,
        /// Start.
        y1: f64,
        /// End.
        x2: f64,
        /// End.
        y2: f64,
        /// How it is drawn.
        ink: Ink,
        /// With a head at its end.
        arrow: bool,
    },
    /// Words.
    Words {
        /// Middle of the words.
        x: f64,
        /// Middle of the words.
        y: f64,
        /// The words.
        text: String,
        /// Height of the letters.
        size: f64,
    },
}

/// What a mark stands for; the window chooses colour and pattern.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Ink {
    /// Bare denim.
    Denim,
    /// Denim still to be made.
    Blank,
    /// The piece in hand.
    Now,
    /// A piece that waits beside the one in hand.
    Next,
    /// Done.
    Done,
    /// Cloth overlapping cloth.
    Lap,
    /// A line of stitching.
    Stitch,
    /// What is cut away.
    Waste,
    /// A line to cut.
    Cut,
    /// A measure or an arrow.
    Rule,
    /// Something amiss.
    Amiss,
}

/// What every screen of a throw carries.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Head {
    /// The throw's name.
    pub name: String,
    /// Put away.
    pub archived: bool,
    /// Number of the last entry.
    pub entry: u32,
    /// What undo would take back, in words.
    pub undo: Option<String>,
    /// What redo would do again, in words.
    pub redo: Option<String>,
    /// Steps done.
    pub done: u32,
    /// Steps in all.
    pub all: u32,
    /// The two as words.
    pub progress: String,
    /// Finished size as measured, or as now foreseen.
    pub size: Shown,
}

/// One throw on the shelf.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ShelfRow {
    /// Its folder's name.
    pub id: String,
    /// Its name, and how far it is.
    pub head: Option<Head>,
    /// The grid in words.
    pub grid: String,
    /// The next step in words.
    pub next: String,
    /// When it was last worked on, in milliseconds since 1970.
    #[ts(type = "number")]
    pub at: i64,
    /// A small picture of its front.
    pub picture: Option<Picture>,
    /// The fabrics in that picture.
    pub prints: Vec<Swatch>,
    /// What is wrong with it, if it cannot be opened, or what was mended.
    pub problem: Option<Problem>,
}

/// Something on the step screen that could be done now.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Offer {
    /// The task.
    pub task: Task,
    /// To what kind of piece.
    pub kind: Kind,
    /// Where.
    pub station: Station,
    /// In words.
    pub title: String,
    /// How many, in words.
    pub count: String,
    /// Whether it is still cooling.
    pub waiting: bool,
}

/// Where work can be done now.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct StationTab {
    /// Which; none for anywhere.
    pub station: Option<Station>,
    /// Its name.
    pub label: String,
    /// Pieces ready there.
    pub ready: u32,
    /// Spoken label, with the count.
    pub spoken: String,
    /// Chosen now.
    pub chosen: bool,
}

/// A caution beside the work.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct CautionNote {
    /// Which.
    pub caution: Caution,
    /// In a few words.
    pub title: String,
    /// In full.
    pub text: String,
}

/// Seams to be opened before the step in hand.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct OpenFirst {
    /// How many, and for what.
    pub title: String,
    /// Which and how much of each, a sentence each.
    pub lines: Vec<String>,
    /// Where they lie.
    pub picture: Picture,
}

/// The step in hand.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Card {
    /// The task.
    pub task: Task,
    /// To what kind of piece.
    pub kind: Kind,
    /// Where it is done.
    pub station: Station,
    /// The place's name.
    pub station_name: String,
    /// What to do.
    pub title: String,
    /// The piece in hand.
    pub piece: Rect,
    /// Which piece, short.
    pub which: String,
    /// Which piece, spoken.
    pub which_spoken: String,
    /// The figures that matter now.
    pub figures: Vec<Figure>,
    /// How, a sentence each.
    pub how: Vec<String>,
    /// How many remain, in words.
    pub remain: String,
    /// The caution, if the work can hurt.
    pub caution: Option<CautionNote>,
    /// What must be opened before this piece is worked on.
    pub open: Option<OpenFirst>,
    /// The step drawn.
    pub picture: Picture,
    /// The buttons, the usual one first.
    pub ticks: Vec<Button>,
    /// When it began to cool, in milliseconds since 1970.
    #[ts(type = "number | null")]
    pub cool_from: Option<i64>,
    /// When it will have cooled, in milliseconds since 1970.
    #[ts(type = "number | null")]
    pub cool_at: Option<i64>,
    /// The block to measure, where measuring makes sense now.
    pub measure: Option<Rect>,
    /// The whole can be measured now, as before a wash.
    pub measure_whole: bool,
    /// The piece that may be off, where it can be said here.
    pub off: Option<Rect>,
    /// What was learned of this step on the throw before.
    pub lessons: Vec<String>,
    /// What was written down at this step.
    pub notes: Vec<String>,
}

/// Asked before squares are lapped bare, while fabrics are listed and none is laid out.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct FacesAsk {
    /// The question.
    pub title: String,
    /// Why it is asked now.
    pub text: String,
    /// No square gets fabric; it is not asked again.
    pub bare: Button,
}

/// The step screen.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct WorkView {
    /// Common to all screens.
    pub head: Head,
    /// The places, with how much is ready at each.
    pub stations: Vec<StationTab>,
    /// To be answered first: which squares get fabric.
    pub ask: Option<FacesAsk>,
    /// The step in hand; none when all is done or nothing is ready there, or while a lap
    /// has to wait for an answer.
    pub card: Option<Box<Card>>,
    /// What else could be done now.
    pub offers: Vec<Offer>,
    /// Said when there is no step.
    pub rest: Option<String>,
    /// Front and back, once all is done.
    pub ended: Option<[Picture; 2]>,
    /// The fabrics, for the picture.
    pub prints: Vec<Swatch>,
}

/// A fabric as listed and drawn.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Swatch {
    /// As it is in the throw.
    pub print: Print,
    /// One or two letters, so that colour is never the only sign.
    pub letters: String,
    /// How many are placed and how many there are, in words.
    pub count: String,
}

/// One square on a face.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct FaceCell {
    /// Its place as told from the front.
    pub piece: Rect,
    /// Column in the picture of this face, from the left.
    pub x: u16,
    /// Row in the picture.
    pub y: u16,
    /// The print shown, if covered.
    pub print: Option<u8>,
    /// The denim.
    pub denim: u8,
    /// Glued or joined, so that it stays.
    pub stays: bool,
    /// The denim's wrong side is on this face.
    pub wrong_side: bool,
    /// Its lengthwise grain runs across.
    pub crosswise: bool,
    /// Pinned to its place.
    pub pinned: bool,
    /// The loose piece it belongs to: itself, a pair or a four; none once it is joined to more.
    pub unit: Option<Rect>,
    /// The fewest quarters that piece may be turned by; 0 where it may not.
    pub turn: u8,
    /// Its label.
    pub label: String,
    /// The square in words.
    pub spoken: String,
}

/// Two squares on a face that a wish would keep apart, or unlike.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Clash {
    /// Column of one in the picture.
    pub x1: u16,
    /// Row of one.
    pub y1: u16,
    /// Column of the other.
    pub x2: u16,
    /// Row of the other.
    pub y2: u16,
}

/// How well one wish is met.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct WishLine {
    /// What it is, in a word or two.
    pub label: String,
    /// How it stands.
    pub value: String,
    /// Whether it is met.
    pub met: bool,
}

/// How the faces are wished for, as it can be chosen.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct WishesView {
    /// Common to all screens.
    pub head: Head,
    /// As chosen now.
    pub wishes: Wishes,
    /// Squares in all.
    pub squares: u32,
    /// Fewest that can be covered on the front and on the back: what is glued or sewn.
    pub least: [u32; 2],
    /// Most squares that can be covered on the front and on the back.
    pub most: [u32; 2],
    /// How many squares are still free and what can be had, where some are not.
    pub free: Option<String>,
    /// Shares to choose with one tap, with what they come to.
    pub shares: Vec<Share>,
    /// What stays as it is, in words.
    pub stays: Option<String>,
    /// Something is made that could be moved.
    pub made: bool,
    /// More is wished for than there is fabric.
    pub short: Option<String>,
    /// How the faces stand to these wishes now.
    pub lines: Vec<WishLine>,
}

/// A part of a face.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Share {
    /// `A quarter`.
    pub label: String,
    /// Squares.
    pub squares: u32,
}

/// A layout found, to be chosen.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct LayoutCard {
    /// Which of the several.
    pub letter: String,
    /// For each square, row by row as seen from the front: the print there, or -1.
    pub front: Vec<i16>,
    /// The same of the back as it looks turned over: each row from the other end.
    pub back: Vec<i16>,
    /// The denims on the front, row by row; the back shows them from the other end.
    pub denims: Vec<u8>,
    /// Places in `front` that show another cloth than they do now.
    pub front_new: Vec<u32>,
    /// The same of `back`.
    pub back_new: Vec<u32>,
    /// How well it meets the wishes.
    pub lines: Vec<WishLine>,
    /// How many of the wishes it meets, in words.
    pub met: String,
    /// What changes if it is taken.
    pub changes: String,
    /// The layout in words.
    pub spoken: String,
    /// Takes it.
    pub action: Action,
}

/// How far the search for layouts is.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Layouts {
    /// Still at it.
    pub running: bool,
    /// Rounds done, of all there will be.
    pub rounds: u32,
    /// Rounds there will be.
    pub most: u32,
    /// How far it is, in words.
    pub said: String,
    /// Squares across.
    pub across: u16,
    /// Squares down.
    pub down: u16,
    /// The fabrics.
    pub prints: Vec<Swatch>,
    /// The denims.
    pub denims: Vec<Denim>,
    /// The layouts so far.
    pub cards: Vec<LayoutCard>,
}

/// What is asked of the search for layouts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "ask")]
pub enum Arrange {
    /// Begin, and give up what was looked for before.
    Start {
        /// The throw.
        id: String,
        /// How the faces are to look.
        wishes: Wishes,
        /// Which of the many good ones.
        seed: u32,
    },
    /// How far is it?
    Look,
    /// Stop; what was found stays.
    Stop,
}

/// One square laid on the floor.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct FloorCell {
    /// Its place.
    pub piece: Rect,
    /// Column in the picture.
    pub x: u16,
    /// Row in the picture.
    pub y: u16,
    /// Its label.
    pub label: String,
    /// The print that is up, if any.
    pub print: Option<u8>,
    /// The print beneath, if any.
    pub under: Option<u8>,
    /// The denim.
    pub denim: u8,
    /// The denim's wrong side is up.
    pub wrong_side: bool,
    /// Its lengthwise grain runs across.
    pub crosswise: bool,
    /// What it is part of already, if anything.
    pub sewn: Option<String>,
    /// The square in words.
    pub spoken: String,
}

/// Some squares of one row of blocks, as they lie on the floor, front up.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct FloorView {
    /// Common to all screens.
    pub head: Head,
    /// Which part, in words.
    pub title: String,
    /// What to do.
    pub text: String,
    /// Columns in the picture.
    pub across: u16,
    /// Rows in the picture.
    pub down: u16,
    /// The squares.
    pub cells: Vec<FloorCell>,
    /// Laps stitched, in squares from the top left of the picture.
    pub sewn: Vec<SewnLine>,
    /// Which part this is, from 0.
    pub part: u32,
    /// Parts there are.
    pub parts: u32,
    /// The fabrics.
    pub prints: Vec<Swatch>,
    /// The denims.
    pub denims: Vec<Denim>,
}

/// Squares that get one fabric on one face.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct CoveringGroup {
    /// The fabric; none for bare denim.
    pub print: Option<u8>,
    /// `Rosehip on the front`.
    pub title: String,
    /// How many, and how many of them are glued.
    pub count: String,
    /// The labels of those still to be glued.
    pub open: Vec<String>,
    /// The labels of those that are done.
    pub done: Vec<String>,
}

/// One line of a list by label.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct CoveringLine {
    /// The label.
    pub label: String,
    /// What it is.
    pub text: String,
}

/// What is glued on which square, and what is joined to what, by label.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct CoveringView {
    /// Common to all screens.
    pub head: Head,
    /// How to label the real squares.
    pub labelling: Vec<String>,
    /// By fabric and face.
    pub groups: Vec<CoveringGroup>,
    /// The fabrics.
    pub prints: Vec<Swatch>,
    /// Square by square.
    pub squares: Vec<CoveringLine>,
    /// Pairs and fours by label, with their squares.
    pub pieces: Vec<CoveringLine>,
}

/// A stitched line on a face, in squares from the top left of the picture.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct SewnLine {
    /// Start.
    pub x1: u16,
    /// Start.
    pub y1: u16,
    /// End.
    pub x2: u16,
    /// End.
    pub y2: u16,
}

/// One face of the throw.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct FacesView {
    /// Common to all screens.
    pub head: Head,
    /// Which face.
    pub face: Face,
    /// What it is called, and that the back is mirrored.
    pub title: String,
    /// Squares across.
    pub across: u16,
    /// Squares down.
    pub down: u16,
    /// The squares.
    pub cells: Vec<FaceCell>,
    /// Laps sewn so far.
    pub sewn: Vec<SewnLine>,
    /// The fabrics.
    pub prints: Vec<Swatch>,
    /// The denims.
    pub denims: Vec<Denim>,
    /// What there is to say of it, a line each.
    pub lines: Vec<String>,
    /// Squares that a wish would keep apart.
    pub clashes: Vec<Clash>,
    /// How well the wishes are met.
    pub wishes: Vec<WishLine>,
    /// Borders of the pieces that go as one: pairs and fours sewn already.
    pub units: Vec<Rect>,
    /// Whether this face is the stitching side, in words.
    pub stitching: String,
    /// Squares covered on the front and on the back.
    pub covered: [u32; 2],
    /// Squares in all.
    pub squares: u32,
    /// The face in words.
    pub spoken: String,
}

/// How far a square is, as a sign.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Stage {
    /// Not cut.
    Open,
    /// Cut; something is still to be glued or to cool.
    Cut,
    /// Ready to be joined.
    Ready,
    /// Its edge is held but not sewn.
    Held,
    /// Sewn into a pair.
    Paired,
    /// Sewn into its block.
    Blocked,
    /// Its block is squared up.
    Squared,
    /// Sewn to other blocks.
    Joined,
}

/// One square on the bench.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct BenchCell {
    /// Its place.
    pub piece: Rect,
    /// Short label.
    pub label: String,
    /// How far it is.
    pub stage: Stage,
    /// The square and its stage in words.
    pub spoken: String,
}

/// A stage with its sign, for the key.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct StageKey {
    /// The stage.
    pub stage: Stage,
    /// Its name.
    pub label: String,
    /// How many squares are there now.
    pub count: u32,
}

/// A count on the bench.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Tally {
    /// Of what.
    pub label: String,
    /// Done.
    pub done: u32,
    /// In all.
    pub all: u32,
    /// In words.
    pub text: String,
}

/// The bench: every square, pair and four, and how far each is.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct BenchView {
    /// Common to all screens.
    pub head: Head,
    /// Squares across.
    pub across: u16,
    /// Squares down.
    pub down: u16,
    /// The squares.
    pub cells: Vec<BenchCell>,
    /// The key.
    pub key: Vec<StageKey>,
    /// The counts.
    pub tallies: Vec<Tally>,
    /// Spare squares at hand.
    pub spares: u32,
    /// Spoilt squares, in words.
    pub losses: String,
    /// The piece chosen, and those it belongs to.
    pub chosen: Vec<PieceCard>,
}

/// One piece in detail.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct PieceCard {
    /// The piece.
    pub piece: Rect,
    /// What it is and which.
    pub title: String,
    /// How far it is, a line each.
    pub lines: Vec<String>,
    /// What can be done to it.
    pub buttons: Vec<Button>,
    /// It can be measured now.
    pub measure: bool,
    /// It may be said to be off.
    pub off: bool,
}

/// What is typed into the plan, as typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PlanDraft {
    /// Cut side.
    pub side: String,
    /// Lap or allowance.
    pub lap: String,
    /// Squares across.
    pub across: String,
    /// Squares down.
    pub down: String,
    /// How edges are held together.
    pub joining: Joining,
    /// Which stitch.
    pub stitch: StitchKind,
    /// Twin spacing or stitch width.
    pub width: String,
    /// Least fringe.
    pub fringe: String,
    /// Trim size; empty for the natural one.
    pub trim: String,
    /// Lap between blocks; empty for the same lap.
    pub between: String,
    /// Order of the larger joins.
    pub order: JoinOrder,
    /// Width of the binding strip.
    pub strip: String,
    /// Longest binding strip.
    pub longest: String,
    /// Tail of the binding.
    pub tail: String,
    /// Minutes to cool.
    pub cooling: String,
    /// Washes.
    pub washes: String,
}

/// Which stitch, without its width.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum StitchKind {
    /// One straight row.
    Straight,
    /// Twin needle.
    Twin,
    /// Zigzag or another wide stitch.
    Zigzag,
}

/// Something wrong in one field.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct FieldProblem {
    /// The field of the draft.
    pub field: String,
    /// What is wrong.
    pub problem: Problem,
}

/// The plan, being looked at or typed.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct PlanView {
    /// Common to all screens, for a throw that has been begun.
    pub head: Option<Head>,
    /// What was typed, each measure with its unit spelled out.
    pub tidy: PlanDraft,
    /// What is wrong, by field.
    pub faults: Vec<FieldProblem>,
    /// What stands in the way of changing this throw to it.
    pub refusal: Option<Problem>,
    /// The plan, when it can be.
    pub plan: Option<Plan>,
    /// The change, when there is one and it can be made.
    pub change: Option<Button>,
    /// What the change would do, before and after.
    pub compare: Vec<CompareRow>,
    /// What becomes of pieces that no longer fit, a sentence each.
    pub aside: Vec<String>,
    /// The figures.
    pub figures: Vec<Figure>,
    /// What the maker should hear.
    pub advice: Vec<Problem>,
    /// The lap in section, to scale.
    pub picture: Option<Picture>,
    /// The grid.
    pub grid: Option<Picture>,
    /// What was learned on the throw this one is made after.
    pub lessons: Option<Lessons>,
}

/// One figure before and after a change.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct CompareRow {
    /// What it is.
    pub label: String,
    /// Now.
    pub before: Shown,
    /// After the change.
    pub after: Shown,
    /// Whether they differ.
    pub differs: bool,
}

/// One thing that can be done about a piece that is off.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct WayRow {
    /// What to do.
    pub title: String,
    /// What it means and costs, a sentence each.
    pub lines: Vec<String>,
    /// Said once it is done.
    pub done: String,
    /// Do it.
    pub button: Button,
}

/// A piece to choose.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct PieceChoice {
    /// The piece.
    pub piece: Rect,
    /// Its name.
    pub label: String,
}

/// A mishap to choose.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct MishapChoice {
    /// Which.
    pub why: Mishap,
    /// In words.
    pub label: String,
}

/// A piece that is off, and what can be done.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct OffView {
    /// Common to all screens.
    pub head: Head,
    /// The piece.
    pub piece: Rect,
    /// Which piece.
    pub title: String,
    /// What is known of it, a sentence each.
    pub lines: Vec<String>,
    /// The piece drawn, with what is short or over.
    pub picture: Option<Picture>,
    /// The squares in it, to say which is spoilt; empty for a square.
    pub squares: Vec<PieceChoice>,
    /// What may have happened to a square; empty where that is not asked.
    pub mishaps: Vec<MishapChoice>,
    /// The mishap chosen.
    pub why: Option<Mishap>,
    /// It can be measured.
    pub measure: bool,
    /// What can be done, least trouble first.
    pub ways: Vec<WayRow>,
    /// Said when there is nothing to do or to choose.
    pub rest: Option<String>,
}

/// One lap that would hold the wished-for size.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HoldRow {
    /// The lap between blocks.
    pub lap: Shown,
    /// The finished size with it.
    pub finished: Shown,
    /// How far off, and the fringe it leaves, a sentence each.
    pub lines: Vec<String>,
    /// Choose it; none where it is the lap already.
    pub choose: Option<Button>,
}

/// Laps that hold a wished-for size.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HoldView {
    /// Common to all screens.
    pub head: Head,
    /// What is wrong with what was typed, by field (`width`, `height`).
    pub faults: Vec<FieldProblem>,
    /// Best first.
    pub rows: Vec<HoldRow>,
    /// How many joins remain, in words.
    pub said: String,
}

/// The whole piece measured against the plan.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct WholeView {
    /// Common to all screens.
    pub head: Head,
    /// What it is set against: as foreseen, or as it was before washing.
    pub foreseen: Figure,
    /// What is wrong with what was typed, by field (`width`, `height`).
    pub faults: Vec<FieldProblem>,
    /// Where the difference came from, a sentence each.
    pub lines: Vec<String>,
    /// Keeps the measure.
    pub keep: Option<Button>,
    /// Each time the whole was measured, with its change in washing.
    pub kept: Vec<String>,
}

/// One piece of a heap.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct HeapPiece {
    /// Counted from 0.
    pub index: u8,
    /// Which piece.
    pub label: String,
    /// What it gives or gave, in words.
    pub said: String,
    /// It is cut up and counted.
    pub cut: bool,
    /// It has an outline that can be looked at; a pack has none.
    pub outlined: bool,
}

/// One heap on the pile.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HeapRow {
    /// Its number.
    pub n: u16,
    /// What it is called.
    pub title: String,
    /// What it is for and gives, in words.
    pub said: String,
    /// What it can be for now, with names; nothing where there is no choice.
    pub uses: Vec<Choice<Use>>,
    /// Which of them it is for, counted from 0.
    pub makes: u32,
    /// Its pieces.
    pub pieces: Vec<HeapPiece>,
    /// Weight of its cloth, with its unit.
    pub weight: String,
    /// It stretches.
    pub stretch: bool,
    /// It was washed before.
    pub washed: bool,
    /// Squares are cut so much larger, with its unit.
    pub trimming: String,
    /// Takes it off the pile, while nothing of it is cut.
    pub take: Option<Button>,
}

/// Something to choose, with its name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Choice<T> {
    /// What.
    pub value: T,
    /// In words.
    pub label: String,
}

/// The clothes pile.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct PileView {
    /// Common to all screens.
    pub head: Head,
    /// Squares wanted, cut for the throw, still to cut; spares; what the pile still gives.
    pub figures: Vec<Figure>,
    /// Whether it is enough, a sentence each.
    pub said: Vec<String>,
    /// The heaps.
    pub rows: Vec<HeapRow>,
    /// What can be done where it is not enough.
    pub ways: Vec<WayRow>,
    /// Garments with a starting outline.
    pub kinds: Vec<Choice<GarmentKind>>,
    /// Their sizes.
    pub sizes: Vec<Choice<GarmentSize>>,
    /// What a heap can be for.
    pub makes: Vec<Choice<Use>>,
}

/// One station of an outline as typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct StationTyped {
    /// Height above the hem.
    pub at: String,
    /// Width there.
    pub width: String,
}

/// A no-go zone as typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ZoneTyped {
    /// Why.
    pub kind: ZoneKind,
    /// From this height above the hem.
    pub from: String,
    /// To this height.
    pub to: String,
    /// From this far from the cloth's left edge at the lower line.
    pub left: String,
    /// So wide.
    pub width: String,
}

/// A piece as typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PieceTyped {
    /// Its stations, from the hem up.
    pub stations: Vec<StationTyped>,
    /// Its zones.
    pub zones: Vec<ZoneTyped>,
}

/// A point of the outline being dragged, in the picture's units.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, TS)]
pub struct Drag {
    /// Which station, from the hem up, counted from 0.
    pub station: u16,
    /// Where it is now.
    pub x: f64,
    /// Where it is now.
    pub y: f64,
}

/// A point of the outline that can be dragged.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, TS)]
pub struct Handle {
    /// Which station.
    pub station: u16,
    /// Where, in the picture's units.
    pub x: f64,
    /// Where, in the picture's units.
    pub y: f64,
}

/// A piece's outline and where to cut it.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct PileCutView {
    /// Common to all screens.
    pub head: Head,
    /// The heap.
    pub n: u16,
    /// The piece, counted from 0.
    pub index: u8,
    /// Which piece.
    pub title: String,
    /// The fields, each measure with its unit spelled out.
    pub tidy: PieceTyped,
    /// What is wrong, by field (`station-0-at`, `zone-1-from`).
    pub faults: Vec<FieldProblem>,
    /// The outline, zones, strips and squares.
    pub picture: Option<Picture>,
    /// Points that can be dragged.
    pub handles: Vec<Handle>,
    /// Squares, and what is given up by cutting straight across.
    pub figures: Vec<Figure>,
    /// The cutting list, a line each, in order.
    pub list: Vec<String>,
    /// What it is worth knowing of it, a sentence each.
    pub said: Vec<String>,
    /// Keeps the outline, where it was changed.
    pub keep: Option<Button>,
    /// Squares to expect, to begin the count with.
    pub expected: u32,
    /// It is cut up; so many came out.
    pub counted: Option<u32>,
    /// Kinds of zone.
    pub zones: Vec<Choice<ZoneKind>>,
    /// The caution at the blade.
    pub caution: Option<CautionNote>,
}

/// One thing to have at hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct GatherRow {
    /// What.
    pub item: Item,
    /// Its name.
    pub label: String,
    /// How much, a line each.
    pub lines: Vec<String>,
    /// It is at hand.
    pub have: bool,
}

/// What to have at hand.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct GatherView {
    /// Common to all screens.
    pub head: Head,
    /// The list.
    pub rows: Vec<GatherRow>,
    /// Weight, time left and the like.
    pub figures: Vec<Figure>,
    /// What there is to say, a sentence each.
    pub said: Vec<String>,
}

/// What is typed for a test scrap.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ScrapTyped {
    /// How its edges are held together.
    pub joining: Joining,
    /// Its lap or allowance.
    pub lap: String,
    /// Which stitch.
    pub stitch: StitchKind,
    /// Twin spacing or stitch width.
    pub width: String,
    /// Opening of the plate; may be empty.
    pub opening: String,
}

/// One lap with what can be foreseen of it.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct LapColumn {
    /// What it is called.
    pub title: String,
    /// The join cut through, to scale.
    pub picture: Picture,
    /// Fringe, layers, thickness, clearance.
    pub figures: Vec<Figure>,
    /// What the maker should hear.
    pub advice: Vec<Problem>,
}

/// A scrap that was tried.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ScrapRow {
    /// What was tried.
    pub title: String,
    /// What came of it, a line each.
    pub lines: Vec<String>,
    /// Takes it for the plan.
    pub choose: Option<Button>,
    /// What taking it would do, before and after.
    pub compare: Vec<CompareRow>,
    /// What stays as it is and what is to be trimmed again, a sentence each.
    pub aside: Vec<String>,
}

/// Needle, stitch and lap, with test scraps.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ScrapsView {
    /// Common to all screens.
    pub head: Head,
    /// The fields, each measure with its unit spelled out.
    pub tidy: ScrapTyped,
    /// What is wrong, by field.
    pub faults: Vec<FieldProblem>,
    /// The plan's lap, and beside it the one typed where it is another.
    pub columns: Vec<LapColumn>,
    /// The scrap as typed, to keep with a verdict; none while something is wrong.
    pub scrap: Option<Scrap>,
    /// Keeps the plate's opening, where it was typed anew.
    pub plate: Option<Button>,
    /// Verdicts.
    pub verdicts: Vec<Choice<Verdict>>,
    /// Scraps tried, newest first.
    pub rows: Vec<ScrapRow>,
}

/// What grids to look for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "by")]
pub enum GridWish {
    /// From the squares at hand.
    Squares {
        /// How many, as typed.
        have: String,
    },
    /// From a size.
    Size {
        /// Width, as typed.
        width: String,
        /// Height, as typed.
        height: String,
    },
}

/// One grid that comes close.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct GridRow {
    /// Squares across.
    pub across: u16,
    /// Squares down.
    pub down: u16,
    /// The grid in words.
    pub title: String,
    /// Its finished size.
    pub size: Shown,
    /// What is left over or amiss, and why.
    pub why: Vec<String>,
}

/// The grids that come closest.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct GridsView {
    /// What is wrong with the wish.
    pub problem: Option<Problem>,
    /// Best first.
    pub grids: Vec<GridRow>,
}

/// Measuring a block.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct MeasureView {
    /// Common to all screens.
    pub head: Head,
    /// The block.
    pub piece: Rect,
    /// Which block.
    pub title: String,
    /// What it should be.
    pub target: Figure,
    /// What is wrong with what was typed, by field (`width`, `height`).
    pub faults: Vec<FieldProblem>,
    /// The verdict in a sentence or two.
    pub verdict: Vec<String>,
    /// Over and under, what to trim from which side, the lap being sewn.
    pub figures: Vec<Figure>,
    /// The block with what is cut away.
    pub picture: Option<Picture>,
    /// Keeps the measure.
    pub keep: Option<Button>,
    /// The measured blocks so far: count, mean, spread, lap.
    pub summary: Vec<Figure>,
    /// What they say, in words.
    pub summary_said: String,
    /// The next block worth measuring.
    pub next: Option<Rect>,
    /// What is typed is short of the trim size: something is to be done about it.
    pub short: bool,
}

/// A block's sides and diagonals as typed; the diagonals may be left empty.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize, TS)]
pub struct OutlineTyped {
    /// Top side.
    pub top: String,
    /// Right side.
    pub right: String,
    /// Bottom side.
    pub bottom: String,
    /// Left side.
    pub left: String,
    /// Diagonal from top left to bottom right.
    pub falling: String,
    /// Diagonal from top right to bottom left.
    pub rising: String,
}

/// A trim size to choose.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct TrimRow {
    /// The size.
    pub size: Shown,
    /// The finished size with it.
    pub finished: Shown,
    /// What it costs, in words.
    pub said: String,
    /// Chosen now.
    pub chosen: bool,
    /// Choose it; none where it is chosen or cannot be.
    pub choose: Option<Button>,
    /// The one to take, all in all.
    pub best: bool,
    /// How each short piece is saved, a sentence each.
    pub saves: Vec<String>,
}

/// The trim sizes worth considering.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct TrimView {
    /// Common to all screens.
    pub head: Head,
    /// Largest first.
    pub rows: Vec<TrimRow>,
    /// Blocks measured so far, in words.
    pub said: String,
    /// Why the best is best, in two sentences.
    pub reason: Vec<String>,
    /// Rows and columns that do not close, a sentence each; or that all do.
    pub closing: Vec<String>,
    /// The blocks, those that are off marked.
    pub picture: Picture,
    /// What the marks mean.
    pub key: Vec<InkKey>,
}

/// What a mark in a drawing means.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct InkKey {
    /// The mark.
    pub ink: Ink,
    /// In words.
    pub label: String,
}

/// One line of history.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HistoryRow {
    /// Number of the entry.
    pub n: u32,
    /// When, in milliseconds since 1970.
    #[ts(type = "number")]
    pub at: i64,
    /// In plain words.
    pub text: String,
    /// Whether it still stands.
    pub stands: bool,
}

/// The dated history, newest first.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HistoryView {
    /// Common to all screens.
    pub head: Head,
    /// The lines.
    pub rows: Vec<HistoryRow>,
    /// Whether older ones are left out.
    pub more: bool,
}

/// What the window wants to see.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "see")]
pub enum Look {
    /// The step screen.
    Work {
        /// Only work done there.
        station: Option<Station>,
        /// This batch, not the one that comes first.
        batch: Option<(Task, Kind)>,
    },
    /// The bench.
    Bench {
        /// The piece chosen.
        chosen: Option<Rect>,
    },
    /// A face.
    Faces {
        /// Which.
        face: Face,
    },
    /// How the faces are to look.
    Wishes {
        /// As chosen; none for what was said last.
        wishes: Option<Wishes>,
    },
    /// Some squares of a row of blocks, to lay on the floor.
    Floor {
        /// Which part, from 0.
        part: u32,
    },
    /// What is glued where, by label.
    Covering,
    /// The plan of this throw, or the draft of another.
    Plan {
        /// What is typed; none to read the plan as it stands.
        draft: Option<Box<PlanDraft>>,
    },
    /// Measuring a block.
    Measure {
        /// Which.
        piece: Rect,
        /// Width as typed.
        width: String,
        /// Height as typed.
        height: String,
    },
    /// Measuring a block's sides and diagonals.
    Outline {
        /// Which.
        piece: Rect,
        /// As typed.
        typed: OutlineTyped,
    },
    /// Choosing a trim size.
    Trim,
    /// A piece that is off.
    Off {
        /// Which.
        piece: Rect,
        /// What happened to it.
        why: Option<Mishap>,
    },
    /// Laps that hold a wished-for size.
    Hold {
        /// Width as typed.
        width: String,
        /// Height as typed.
        height: String,
    },
    /// The clothes pile.
    Pile,
    /// A piece's outline and where to cut it.
    Cutting {
        /// The heap.
        n: u16,
        /// The piece, counted from 0.
        index: u8,
        /// The outline as typed; none for the one kept.
        typed: Option<PieceTyped>,
        /// A point being dragged.
        drag: Option<Drag>,
    },
    /// What to have at hand.
    Gather,
    /// Needle, stitch and lap, with test scraps.
    Scraps {
        /// As typed; none for the plan's.
        typed: Option<ScrapTyped>,
    },
    /// The whole piece against the plan.
    Whole {
        /// Width as typed.
        width: String,
        /// Height as typed.
        height: String,
    },
    /// History, newest first.
    History {
        /// How many lines at most.
        most: u32,
    },
    /// What can be handed on.
    HandOn,
    /// The story of its making.
    Story {
        /// How far local time is east of UTC, in minutes.
        east: i32,
    },
}

/// What came of a deed that is done and kept: the throw now, and the screen looked at again.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Acted {
    /// How the throw stands.
    pub head: Head,
    /// The screen, if it was asked for and can be shown.
    pub view: Option<View>,
    /// Why it cannot be: what it was about is no more. The deed is done all the same.
    pub problem: Option<Problem>,
}

/// What the window gets to see.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
#[serde(rename_all = "kebab-case", tag = "seen")]
pub enum View {
    /// The step screen.
    Work(WorkView),
    /// The bench.
    Bench(BenchView),
    /// A face.
    Faces(FacesView),
    /// How the faces are to look.
    Wishes(Box<WishesView>),
    /// Squares on the floor.
    Floor(FloorView),
    /// What is glued where.
    Covering(CoveringView),
    /// The plan.
    Plan(Box<PlanView>),
    /// Measuring.
    Measure(MeasureView),
    /// Trim sizes.
    Trim(TrimView),
    /// A piece that is off.
    Off(OffView),
    /// Laps that hold a size.
    Hold(HoldView),
    /// The whole piece.
    Whole(WholeView),
    /// The clothes pile.
    Pile(PileView),
    /// A piece's outline and its cuts.
    Cutting(Box<PileCutView>),
    /// What to have at hand.
    Gather(GatherView),
    /// Test scraps.
    Scraps(ScrapsView),
    /// History.
    History(HistoryView),
    /// What can be handed on.
    HandOn(HandOnView),
    /// The story of its making.
    Story(StoryView),
}

/// How the window looks and reads.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Prefs {
    /// Inches or metric, and how fine.
    pub ruler: Ruler,
    /// Size of text in per cent: 100 to 200.
    pub text: u16,
    /// Dark, light, or as the device has it.
    pub theme: Theme,
    /// The code of the language; none for the device's own where it is spoken here.
    #[serde(default)]
    pub language: Option<String>,
}

/// Dark or light.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Theme {
    /// As the device has it.
    Auto,
    /// Dark on light.
    Light,
    /// Light on dark.
    Dark,
}

impl Prefs {
    /// Those to begin with, in a system of measures.
    pub fn begun_in(system: System) -> Prefs {
        let ruler = Ruler {
            system,
            ..Ruler::default()
        };
        Prefs {
            ruler,
            ..Prefs::default()
        }
    }
}

impl Default for Prefs {
    fn default() -> Self {
        Prefs {
            ruler: Ruler::default(),
            text: 100,
            theme: Theme::Auto,
            language: None,
        }
    }
}

/// The shelf of throws.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ShelfView {
    /// Throws in work, the last worked on first.
    pub rows: Vec<ShelfRow>,
    /// Throws put away.
    pub archived: Vec<ShelfRow>,
    /// Throws deleted but not yet erased.
    pub deleted: Vec<ShelfRow>,
}

/// What the window is given when it opens.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Hello {
    /// The window's own words, by key.
    #[ts(type = "Record<WordKey, string>")]
    pub words: std::collections::BTreeMap<String, String>,
    /// Preferences.
    pub prefs: Prefs,
    /// The code of the language that is spoken.
    pub language: String,
    /// Its decimal sign.
    pub point: String,
    /// All languages, to choose from.
    pub languages: Vec<LanguageName>,
    /// The shelf.
    pub shelf: ShelfView,
    /// A plan to begin with.
    pub draft: PlanDraft,
    /// The fabrics a new throw begins with.
    pub prints: Vec<Print>,
    /// The denims a new throw begins with.
    pub denims: Vec<Denim>,
    /// Version of the app.
    pub version: String,
    /// Where the throws are kept.
    pub folder: String,
    /// What went wrong at the start, if anything.
    pub problem: Option<Problem>,
}

/// Something done on the shelf.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "tend")]
pub enum Tend {
    /// Begin a throw (with [`Action::Begin`]).
    Begin {
        /// The beginning.
        action: Action,
    },
    /// Make a fresh copy of the demo throw.
    Demo,
    /// Delete; it can be taken back.
    Delete {
        /// Which.
        id: String,
    },
    /// Begin a throw after the plan of an older one, with what was learned.
    Again {
        /// The older one.
        id: String,
        /// The beginning.
        action: Action,
    },
    /// Take a deletion back.
    Restore {
        /// Which.
        id: String,
    },
    /// Erase a deleted throw for good.
    Erase {
        /// Which.
        id: String,
    },
}

/// What came of tending the shelf.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Tended {
    /// The throw begun, if one was.
    pub id: Option<String>,
    /// The shelf now.
    pub shelf: ShelfView,
}

/// Something done to a throw.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "deed")]
pub enum Deed {
    /// An action.
    Act {
        /// Which.
        action: Action,
    },
    /// Take the last back.
    Undo,
    /// Do the last taken back again.
    Redo,
}

/// Something handed on out of a throw as a file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "hand")]
pub enum Hand {
    /// The throw itself, with its whole record.
    Throw,
    /// Every drawing there is, as SVG.
    Pictures,
    /// Every table there is, as CSV.
    Tables,
    /// The story of its making, as a page with its photos in it.
    Story {
        /// How far local time is east of UTC, in minutes.
        east: i32,
    },
}

/// A button that hands something on.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HandButton {
    /// Its words.
    pub label: String,
    /// What it hands on.
    pub hand: Hand,
}

/// One sort of thing to hand on.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HandSection {
    /// Stable name, for programs.
    pub key: String,
    /// Its title.
    pub title: String,
    /// What it is for, a line each.
    pub said: Vec<String>,
    /// What to press.
    pub buttons: Vec<HandButton>,
}

/// What can be handed on.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct HandOnView {
    /// Common to all screens.
    pub head: Head,
    /// Section by section.
    pub sections: Vec<HandSection>,
    /// How a sheet is printed unless the maker says otherwise.
    pub print: PrintOrder,
}

/// What came of handing something on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Handed {
    /// What to say; none where the maker thought better of it.
    pub said: Option<String>,
}

/// What to do with a throw that was brought.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "take")]
pub enum Take {
    /// Put it on the shelf.
    Add,
    /// Put it on the shelf beside the copy that is here, as a throw of its own.
    KeepBoth,
    /// Take it in place of the copy here, which it has all of.
    TakeBrought,
    /// Leave all as it is.
    KeepHere,
    /// Make one of the two.
    Merge {
        /// For each conflict whether the brought side is kept.
        brought: Vec<bool>,
    },
}

/// A button that decides about a throw that was brought.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct TakeButton {
    /// Its words.
    pub label: String,
    /// What it asks for.
    pub take: Take,
}

/// One of the copies.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct CopyRow {
    /// Where it is.
    pub label: String,
    /// What it calls the throw.
    pub name: String,
    /// How many steps it has.
    pub said: String,
    /// When it was last worked on, in milliseconds since 1970.
    #[ts(type = "number")]
    pub at: i64,
}

/// What cannot both stand, to be decided.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct ConflictRow {
    /// On this device, a step each.
    pub here: Vec<String>,
    /// In the file, a step each.
    pub brought: Vec<String>,
}

/// A throw that was brought, beside the copy here.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct BringView {
    /// The number of the file: what is done is said of this one.
    pub file: u32,
    /// What it is.
    pub title: String,
    /// What is in which, a line each.
    pub said: Vec<String>,
    /// The copies.
    pub copies: Vec<CopyRow>,
    /// What is to be decided before they become one.
    pub conflicts: Vec<ConflictRow>,
    /// What can be done, the usual first.
    pub buttons: Vec<TakeButton>,
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Taken {
    /// The throw to open, if there is one.
    pub id: Option<String>,
    /// What to say.
    pub said: String,
    /// The shelf now.
    pub shelf: ShelfView,
}

/// Paper to print on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum PrintPaper {
    /// 210 × 297 mm.
    A4,
    /// 8½ × 11 in.
    Letter,
}

/// How a sheet is to be printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PrintOrder {
    /// The wall card instead of the making sheet.
    pub card: bool,
    /// The paper.
    pub paper: PrintPaper,
    /// In large print.
    pub large: bool,
    /// In black and white.
    pub black: bool,
    /// With the story and its photos; the wall card has none.
    pub story: bool,
    /// How far local time is east of UTC, in minutes.
    pub east: i32,
}

/// How far a print is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
pub struct Printing {
    /// Steps done.
    pub done: u32,
    /// Steps in all.
    pub all: u32,
}

/// What was learned on an older throw.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Lessons {
    /// From which throw.
    pub title: String,
    /// Each in words.
    pub rows: Vec<LessonRow>,
}

/// Something learned.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct LessonRow {
    /// The step it is about, in words.
    pub step: Option<String>,
    /// In words.
    pub words: String,
    /// Whether the maker wrote it herself.
    pub hers: bool,
}

/// A throw about to be made again.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct AgainView {
    /// A name to begin with.
    pub name: String,
    /// The plan as typed fields.
    pub draft: PlanDraft,
    /// The fabrics.
    pub prints: Vec<Print>,
    /// The denims.
    pub denims: Vec<Denim>,
    /// What was learned.
    pub lessons: Option<Lessons>,
}

/// What a throw not yet begun takes its faces from, and the cloth it is to have.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct DraftAfter {
    /// The older throw.
    pub id: String,
    /// The fabrics.
    pub prints: Vec<Print>,
    /// The denims.
    pub denims: Vec<Denim>,
}

/// The story of a throw's making: a plain structure, to be shown, printed or written out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Story {
    /// The throw's name.
    pub title: String,
    /// What it is, a line each.
    pub lines: Vec<String>,
    /// Day by day, the first first; days without anything to tell are left out.
    pub days: Vec<StoryDay>,
}

/// One day of the making.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct StoryDay {
    /// The date (ISO 8601).
    pub date: String,
    /// The date in words.
    pub title: String,
    /// What was made that day, in a sentence.
    pub made: Option<String>,
    /// What else there is to tell, in order.
    pub items: Vec<StoryItem>,
}

/// Something told of a day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct StoryItem {
    /// Of what sort.
    pub sort: StorySort,
    /// The sort in words.
    pub label: String,
    /// The words; a photo's may be empty.
    pub words: String,
    /// The piece and the step it is about.
    pub about: Option<String>,
    /// The photo.
    #[ts(type = "string | null")]
    pub photo: Option<crate::throw::photos::PhotoId>,
}

/// What is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum StorySort {
    /// A turn the work took: begun, planned otherwise, measured, a scrap tried.
    Turn,
    /// Something written down.
    Note,
    /// Something written down for the next throw.
    Next,
    /// A photo.
    Photo,
    /// Something went wrong.
    Mishap,
}

/// The story screen.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct StoryView {
    /// Common to all screens.
    pub head: Head,
    /// The story.
    pub story: Story,
}
