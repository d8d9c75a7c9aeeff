//! The commands: what the maker may ask for.

use crate::cloth::fabric::{Denim, Face, Print};
use crate::cloth::garments::{ClothEdges, GarmentKind, GarmentPart, GarmentSize, Knees, Piece};
use crate::cloth::photos::PhotoId;
use crate::cloth::pile::Use;
use crate::cloth::ways::CutWay;
use crate::measure::outline::Measures;
use crate::measure::{Count, Length, System};
use crate::plan::Plan;
use crate::plan::assembly::{Kind, Rect};
use crate::plan::scraps::Scrap;
use crate::throw::event::Item;
use crate::throw::facts::Mishap;
use crate::throw::tasks::Task;
use crate::throw::wishes::{Layout, Wishes};
use crate::types::TS;
use serde::{Deserialize, Serialize};

/// Longest name, in characters.
pub const LONGEST_NAME: usize = 80;

/// Longest note, in characters.
pub const LONGEST_NOTE: usize = 2000;

/// Longest words under a photo, in characters.
pub const LONGEST_CAPTION: usize = 300;

/// Most photos in one story.
pub const MOST_PHOTOS: usize = 400;

/// Most fabrics of one sort.
pub const MOST_CLOTHS: usize = 40;

/// Most squares one piece or pack is believed to give.
pub(crate) const MOST_SQUARES: u32 = 2000;

/// Most heaps on a pile.
pub(crate) const MOST_HEAPS: usize = 100;

/// Something the maker asks for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "do")]
pub enum Command {
    /// Begin a throw.
    Begin {
        /// Its name.
        name: String,
        /// What is to be made.
        plan: Plan,
        /// Fabrics for covering.
        prints: Vec<Print>,
        /// The denims.
        denims: Vec<Denim>,
    },
    /// Give it another name.
    Rename {
        /// The new name.
        name: String,
    },
    /// Put it away, or take it out again.
    Archive {
        /// Put away.
        archived: bool,
    },
    /// Change the plan for what is not yet made.
    ChangePlan {
        /// The new plan.
        plan: Plan,
    },
    /// Put a fabric (or none) on one face of squares.
    SetFace {
        /// The squares.
        pieces: Vec<Rect>,
        /// Which face.
        face: Face,
        /// The print, or none for bare denim.
        print: Option<u8>,
        /// Also onto squares that are sewn in: there it is trimmed until it lies clear of the laps,
        /// glued and stitched round.
        #[serde(default)]
        laid_on: bool,
    },
    /// Take another denim for squares, or turn it over.
    SetDenim {
        /// The squares.
        pieces: Vec<Rect>,
        /// The denim.
        denim: u8,
        /// Wrong side to the front.
        wrong_side_up: bool,
    },
    /// Share the squares that are not cut yet out over the denims there are.
    ShareDenims,
    /// Lay the throw out anew, as worked out beforehand.
    LayOut {
        /// How the faces are to look.
        wishes: Wishes,
        /// What goes where.
        layout: Layout,
    },
    /// Say how the faces are to look; nothing is moved.
    Wish {
        /// How.
        wishes: Wishes,
    },
    /// Turn a piece where it lies, front still up.
    Turn {
        /// A loose square, or a joined piece not joined to others.
        piece: Rect,
        /// Quarters, clockwise.
        quarters: u8,
    },
    /// Turn loose squares over.
    Flip {
        /// The squares.
        pieces: Vec<Rect>,
    },
    /// Keep what lies in these places there, or let it go again.
    Pin {
        /// The squares.
        pieces: Vec<Rect>,
        /// Keep.
        pinned: bool,
    },
    /// Change the lists of fabrics.
    SetCloth {
        /// Fabrics for covering.
        prints: Vec<Print>,
        /// The denims.
        denims: Vec<Denim>,
    },
    /// A task is done.
    Tick {
        /// The task.
        task: Task,
        /// The pieces it was done to.
        pieces: Vec<Rect>,
    },
    /// A task is done to the first of the pieces that are ready for it.
    TickNext {
        /// The task.
        task: Task,
        /// To pieces of this kind.
        kind: Kind,
        /// How many.
        count: Count,
    },
    /// Tasks that are done one after another in one sitting, to the same pieces.
    TickSitting {
        /// The tasks, in their order.
        tasks: Vec<Task>,
        /// The pieces they were done to.
        pieces: Vec<Rect>,
    },
    /// Put spare squares in empty places.
    UseSpares {
        /// The places.
        pieces: Vec<Rect>,
        /// The denim of the spares; the places change to it. Where it is left out, spares of the
        /// places' own denim are taken, or of a denim that was never said.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        denim: Option<u8>,
    },
    /// Say how many spare squares there are.
    CountSpares {
        /// How many.
        spares: Count,
    },
    /// Measure a block.
    Measure {
        /// The block.
        piece: Rect,
        /// Its width, in nanometres.
        width: Length,
        /// Its height, in nanometres.
        height: Length,
    },
    /// Measure a block's four sides, and its diagonals.
    MeasureOutline {
        /// The block.
        piece: Rect,
        /// Its sides and diagonals.
        measures: Measures,
    },
    /// Measure the whole piece.
    MeasureWhole {
        /// Its width, in nanometres.
        width: Length,
        /// Its height, in nanometres.
        height: Length,
    },
    /// Trim the fours to this size, and lap short ones less where that saves them.
    ChooseTrim {
        /// The size, in nanometres.
        trim: Length,
        /// The distance between the marks of the ruler that the laps must lie on. Where it is left
        /// out, the coarsest ruler is taken on which the size and the plan's lap lie.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        step: Option<Length>,
    },
    /// Use another lap where neighbours are joined.
    MarkLaps {
        /// The two pieces and their lap in nanometres; none for the plan's.
        laps: Vec<(Rect, Rect, Option<Length>)>,
    },
    /// Open the joins of pieces again, with what touches them.
    Unpick {
        /// The joined pieces.
        pieces: Vec<Rect>,
        /// The lap to sew it with next time, if not the plan's.
        lap: Option<Length>,
    },
    /// A square is no good, wherever it is sewn: open the seams round it and put another in.
    Replace {
        /// The square.
        piece: Rect,
        /// What happened.
        why: Mishap,
        /// With a spare; else one is to be cut, or comes from another place.
        spare: bool,
        /// Of this denim, to which the place changes; else of its own.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        denim: Option<u8>,
        /// With the square of this place, which is cut and lies loose; the place is then to be
        /// cut again.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        from: Option<Rect>,
    },
    /// Glue a fabric square over the damage on one face of a sewn square.
    Patch {
        /// The square.
        piece: Rect,
        /// Which face.
        face: Face,
        /// The print.
        print: u8,
        /// What happened.
        why: Mishap,
    },
    /// Take a sewn block out of the throw; its places are to be filled anew.
    SetAside {
        /// The block.
        piece: Rect,
    },
    /// Two loose pieces change places; of a square sewn into a pair or four, all of it.
    Swap {
        /// One.
        a: Rect,
        /// The other.
        b: Rect,
    },
    /// A square that is not joined yet is no good.
    Spoil {
        /// The square.
        piece: Rect,
        /// What happened.
        why: Mishap,
    },
    /// Put a garment on the pile with a starting outline, an estimate to be measured.
    AddGarment {
        /// Which.
        kind: GarmentKind,
        /// How large; left out where she will measure.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        size: Option<GarmentSize>,
        /// How its knees are.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        knees: Option<Knees>,
        /// The outline begins in round figures of this system; inches where it is not said.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        system: Option<System>,
        /// What it is for.
        makes: Use,
        /// What it is called.
        name: String,
    },
    /// Put cloth off the roll or another rectangle on the pile.
    AddCloth {
        /// Its usable width, in nanometres.
        width: Length,
        /// Its length.
        length: Length,
        /// What is trimmed off its edges; nothing where it is not said.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        edges: Option<ClothEdges>,
        /// What it is for.
        makes: Use,
        /// What it is called.
        name: String,
    },
    /// Put squares bought ready cut on the pile.
    AddPack {
        /// Their side, in nanometres.
        side: Length,
        /// How many, counted.
        count: Count,
        /// What they are for.
        makes: Use,
        /// Each of them is another: the fabric they are for is such from now on.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        #[ts(optional, as = "Option<bool>")]
        mixed: bool,
        /// What they are called.
        name: String,
    },
    /// Put several things on the pile at once.
    AddAll {
        /// Garments, cloth and packs.
        heaps: Vec<Command>,
    },
    /// Correct the outline of a piece not cut up yet.
    SetPiece {
        /// The heap.
        n: u16,
        /// The piece, counted from 0.
        index: u8,
        /// Its outline and zones.
        outline: Piece,
    },
    /// Lay a back pocket or the waistband of jeans flat as a piece of its own.
    AddPart {
        /// The heap.
        n: u16,
        /// Which: a pocket or a waistband.
        part: GarmentPart,
    },
    /// Give the other half of a pair the outline of this one, mirrored.
    MirrorPiece {
        /// The heap.
        n: u16,
        /// The piece it is taken from, counted from 0.
        index: u8,
    },
    /// The worn places of a piece are marked as they are.
    WornSaid {
        /// The heap.
        n: u16,
        /// The piece, counted from 0.
        index: u8,
    },
    /// Cut a piece another way, or the plain way again; lines that are done are so no more.
    CutBy {
        /// The heap.
        n: u16,
        /// The piece, counted from 0.
        index: u8,
        /// How.
        way: CutWay,
    },
    /// Say what is known of a heap's cloth.
    DescribeCloth {
        /// The heap.
        n: u16,
        /// Its weight as typed, such as `14 oz` or `475 g/m²`.
        weight: String,
        /// A bare number is in this system.
        system: System,
        /// It stretches.
        stretch: bool,
        /// It was washed before.
        washed: bool,
        /// Cut so much larger, in nanometres.
        trimming: Length,
        /// What the heap is for, if that is to change.
        #[serde(default)]
        #[ts(optional)]
        makes: Option<Use>,
    },
    /// Take a heap off the pile.
    TakeHeap {
        /// The heap.
        n: u16,
    },
    /// A piece is cut up; so many squares came out.
    CutPiece {
        /// The heap.
        n: u16,
        /// The piece, counted from 0.
        index: u8,
        /// How many good squares.
        squares: Count,
        /// Of these, how many of each strip from the hem up, where some failed.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[ts(as = "Option<Vec<Count>>", optional)]
        by_strip: Vec<Count>,
        /// How many of the squares are pieced of two halves, where some are.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        pieced: Option<Count>,
        /// How many binding strips, where some were to come.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        strips: Option<Count>,
        /// The outline as changed and not kept yet, kept with it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        outline: Option<Piece>,
    },
    /// The first lines of a piece's cutting list are done.
    CutLines {
        /// The heap.
        n: u16,
        /// The piece, counted from 0.
        index: u8,
        /// How many lines are done now.
        lines: Count,
    },
    /// Keep what came of a test scrap.
    TryScrap {
        /// The scrap.
        scrap: Scrap,
    },
    /// Take the lap and stitch of a scrap for the plan.
    UseScrap {
        /// Which, counted from 0.
        scrap: u16,
    },
    /// Say how wide the opening of the needle plate is.
    SetPlate {
        /// In nanometres.
        opening: Length,
    },
    /// Something on the list is at hand, or is not.
    Gather {
        /// What.
        item: Item,
        /// Whether it is at hand.
        have: bool,
    },
    /// Write something down.
    Note {
        /// The words.
        text: String,
        /// The piece it is about.
        piece: Option<Rect>,
        /// The step it is about.
        #[serde(default)]
        task: Option<Task>,
        /// For the next throw.
        #[serde(default)]
        next: bool,
    },
    /// Put a photo into the story.
    Picture {
        /// The photo, as the shell has named it.
        #[ts(type = "string")]
        photo: PhotoId,
        /// What is said of it; may be empty.
        words: String,
        /// The piece it shows.
        piece: Option<Rect>,
        /// The step it shows.
        task: Option<Task>,
    },
    /// Take a photo out of the story.
    Unpicture {
        /// The photo.
        #[ts(type = "string")]
        photo: PhotoId,
    },
}
