//! What the maker may do, and what comes of it.
//!
//! [`decide`] checks an [`Action`] against a throw and gives the [`Event`]s it
//! leads to, or a [`Refusal`] that says what stands in the way and what would help.
//! It changes nothing itself.

use crate::arrange::{Layout, Wishes, is_loose, loose_units, places_for, source};
use crate::assembly::{Assembly, Join, Kind, Rect, Seam};
use crate::cloth::Cloth;
use crate::faces::{Cover, Denim, Face, Print};
use crate::garments::{
    self, Garment, GarmentKind, GarmentSize, Guess, Piece, PieceFault, Precut, Source,
};
use crate::measure::{Length, System, zero};
use crate::outline::{self, Measures};
use crate::photos::PhotoId;
use crate::pile::{Heap, Use};
use crate::plan::{Plan, PlanFault, longest_side};
use crate::scraps::Scrap;
use crate::standing::tier;
use crate::tasks::Task;
use crate::throw::{Event, Item, Made, Mishap, Throw};
use serde::{Deserialize, Serialize};
use std::cmp::min;
use std::collections::{HashMap, HashSet};
use ts_rs::TS;

/// Longest name or note, in characters.
pub const LONGEST_NAME: usize = 80;
/// Longest note, in characters.
pub const LONGEST_NOTE: usize = 2000;
/// Longest words under a photo, in characters.
pub const LONGEST_CAPTION: usize = 300;
/// Most photos in one story.
pub const MOST_PHOTOS: usize = 400;
/// Most fabrics of one sort.
pub const MOST_CLOTHS: usize = 40;

/// Something the maker asks for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "do")]
pub enum Action {
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
        count: u32,
    },
    /// Put spare squares in empty places.
    UseSpares {
        /// The places.
        pieces: Vec<Rect>,
    },
    /// Say how many spare squares there are.
    CountSpares {
        /// How many.
        spares: u32,
    },
    /// Measure a block.
    Measure {
        /// The block.
        piece: Rect,
        /// Its width, in nanometres.
        #[ts(type = "number")]
        width: Length,
        /// Its height, in nanometres.
        #[ts(type = "number")]
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
        #[ts(type = "number")]
        width: Length,
        /// Its height, in nanometres.
        #[ts(type = "number")]
        height: Length,
    },
    /// Trim the fours to this size, and lap short ones less where that saves them.
    ChooseTrim {
        /// The size, in nanometres.
        #[ts(type = "number")]
        trim: Length,
    },
    /// Use another lap where neighbours are joined.
    MarkLaps {
        /// The two pieces and their lap in nanometres; none for the plan's.
        #[ts(type = "[Rect, Rect, number | null][]")]
        laps: Vec<(Rect, Rect, Option<Length>)>,
    },
    /// Open the joins of pieces again, with what touches them.
    Unpick {
        /// The joined pieces.
        pieces: Vec<Rect>,
        /// The lap to sew it with next time, if not the plan's.
        #[ts(type = "number | null")]
        lap: Option<Length>,
    },
    /// A square is no good, wherever it is sewn: open the seams round it and put another in.
    Replace {
        /// The square.
        piece: Rect,
        /// What happened.
        why: Mishap,
        /// With a spare; else one is to be cut.
        spare: bool,
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
        /// How large.
        size: GarmentSize,
        /// What it is for.
        makes: Use,
        /// What it is called.
        name: String,
    },
    /// Put cloth off the roll or another rectangle on the pile.
    AddCloth {
        /// Its usable width, in nanometres.
        #[ts(type = "number")]
        width: Length,
        /// Its length.
        #[ts(type = "number")]
        length: Length,
        /// What it is for.
        makes: Use,
        /// What it is called.
        name: String,
    },
    /// Put squares bought ready cut on the pile.
    AddPack {
        /// Their side, in nanometres.
        #[ts(type = "number")]
        side: Length,
        /// How many, counted.
        count: u32,
        /// What they are for.
        makes: Use,
        /// What they are called.
        name: String,
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
        #[ts(type = "number")]
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
        squares: u32,
        /// The outline as changed and not kept yet, kept with it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        outline: Option<Piece>,
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
    /// Say how wide the plate's opening is.
    SetPlate {
        /// In nanometres.
        #[ts(type = "number")]
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

/// Why an action cannot be done now.
#[derive(Debug, Clone, PartialEq)]
pub enum Refusal {
    /// The throw has been begun already, or not yet.
    Beginning,
    /// The plan cannot be.
    Plan(PlanFault),
    /// No name, or one too long.
    Name,
    /// No words, or too many.
    Words,
    /// There is no such piece in this throw.
    NoSuchPiece(Rect),
    /// No piece was named.
    Nothing,
    /// The task is not one of that piece's, or done already.
    NotItsTask {
        /// The piece.
        piece: Rect,
        /// What was asked.
        task: Task,
    },
    /// Something else comes first.
    First {
        /// What was asked.
        task: Task,
        /// The piece it was asked for.
        piece: Rect,
        /// The piece that must be seen to first.
        before: Rect,
        /// And what must be done to it.
        needs: Task,
    },
    /// The square is cut at the old size already.
    AlreadyCut {
        /// How many.
        squares: u32,
    },
    /// The piece is made already and has no place in the new grid or order.
    AlreadyMade(Rect),
    /// The square is joined to others, so its faces stay.
    Joined(Rect),
    /// A fabric is glued there already.
    Glued(Rect),
    /// There are not so many squares of that print.
    Stock {
        /// The print.
        print: u8,
        /// How many there are.
        have: u32,
    },
    /// No such print or denim, too many, or one in use was taken away.
    Cloth,
    /// Fewer spare squares than that.
    Spares {
        /// How many there are.
        have: u32,
    },
    /// Only a stitched block that is not yet squared up is measured.
    NotMeasurable(Rect),
    /// No such heap or piece on the pile, or there are too many.
    Pile,
    /// The piece is cut up already.
    CutUp,
    /// The outline of a piece cannot be.
    Piece(PieceFault),
    /// More squares than any piece gives.
    ManySquares {
        /// The most that is believed.
        most: u32,
    },
    /// Not a weight of cloth.
    Weight,
    /// No such scrap.
    Scrap,
    /// The throw is not in one piece yet.
    NotWhole,
    /// A measure that cannot be this block's: under half or over twice its planned size.
    Unlikely {
        /// What was given.
        given: Length,
        /// What was planned.
        planned: Length,
    },
    /// The square is not cut, so it cannot be spoilt.
    NotCut(Rect),
    /// The sides and diagonals do not make a block.
    Outline(outline::Fault),
    /// The piece has no stitched or glued join to open.
    NothingToUnpick(Rect),
    /// That lap would leave less than the least fringe, or is no lap for this join.
    LapTooNarrow {
        /// What was asked.
        lap: Length,
        /// The narrowest that holds.
        least: Length,
    },
    /// These two are not neighbours whose join is still to be made.
    NotNeighbours(Rect, Rect),
    /// The square is covered on that face already.
    Covered(Rect),
    /// The two blocks are not loose blocks of one shape.
    NotSwappable(Rect, Rect),
    /// More squares are wished covered than there are.
    Wishes {
        /// How many there are.
        most: u32,
    },
    /// The square is pinned to its place.
    Pinned(Rect),
    /// The piece cannot be turned that way.
    NotTurnable(Rect),
    /// The layout does not fit the throw as it is now; the place where it does not.
    Layout(Rect),
    /// The words under a photo are too many.
    Caption,
    /// The photo is in the story already.
    PicturedAlready,
    /// No such photo in the story, or there are too many.
    Photo,
    /// There is nothing to take back.
    NothingToUndo,
    /// There is nothing to do again.
    NothingToRedo,
}

/// What would come of `action`.
///
/// # Errors
/// The [`Refusal`] that says what stands in the way.
pub fn decide(throw: Option<&Throw>, action: &Action) -> Result<Vec<Event>, Refusal> {
    if let Action::Begin {
        name,
        plan,
        prints,
        denims,
    } = action
    {
        if throw.is_some() {
            return Err(Refusal::Beginning);
        }
        plan.check().map_err(Refusal::Plan)?;
        check_cloth(prints, denims)?;
        let (name, prints, denims) = (clean_name(name)?, prints.clone(), denims.clone());
        return Ok(vec![Event::Begun {
            name,
            plan: *plan,
            prints,
            denims,
            after: None,
        }]);
    }
    let throw = throw.ok_or(Refusal::Beginning)?;
    match action {
        Action::Begin { .. } => Err(Refusal::Beginning),
        Action::Rename { name } => Ok(vec![Event::Renamed {
            name: clean_name(name)?,
        }]),
        Action::Archive { archived } => Ok(vec![Event::Archived {
            archived: *archived,
        }]),
        Action::ChangePlan { plan } => change_plan(throw, plan),
        Action::SetFace {
            pieces,
            face,
            print,
        } => set_face(throw, pieces, *face, *print),
        Action::SetDenim {
            pieces,
            denim,
            wrong_side_up,
        } => {
            if usize::from(*denim) >= throw.denims.len().max(1) {
                return Err(Refusal::Cloth);
            }
            let mut faces = Vec::new();
            for piece in known_squares(throw, pieces)? {
                if throw.has(piece, Task::Cut) {
                    return Err(Refusal::AlreadyCut { squares: 1 });
                }
                let cover = throw.cover(piece);
                faces.push((
                    piece,
                    Cover {
                        denim: *denim,
                        wrong_side_up: *wrong_side_up,
                        ..cover
                    },
                ));
            }
            Ok(vec![faces_changed(throw, faces)])
        }
        Action::LayOut { wishes, layout } => {
            check_wishes(throw, wishes)?;
            lay_out(throw, wishes, layout)
        }
        Action::Wish { wishes } => {
            check_wishes(throw, wishes)?;
            if throw.wishes == Some(*wishes) {
                return Err(Refusal::Nothing);
            }
            Ok(vec![Event::Wished { wishes: *wishes }])
        }
        Action::Turn { piece, quarters } => {
            let piece = unit_of(throw, *piece);
            may_turn(throw, piece, *quarters)?;
            Ok(vec![Event::Turned {
                pieces: vec![(piece, quarters % 4)],
            }])
        }
        Action::Flip { pieces } => flip(throw, pieces),
        Action::Pin { pieces, pinned } => {
            let pieces = known_squares(throw, pieces)?
                .into_iter()
                .filter(|p| throw.is_pinned(*p) != *pinned)
                .collect::<Vec<_>>();
            if pieces.is_empty() {
                return Err(Refusal::Nothing);
            }
            Ok(vec![Event::Pinned {
                pieces,
                pinned: *pinned,
            }])
        }
        Action::SetCloth { prints, denims } => set_cloth(throw, prints, denims),
        Action::Tick { task, pieces } => tick(throw, *task, pieces),
        Action::TickNext { task, kind, count } => {
            let pieces: Vec<Rect> = ready_for(throw, *kind, *task)
                .take(*count as usize)
                .collect();
            tick(throw, *task, &pieces)
        }
        Action::UseSpares { pieces } => {
            if throw.spares < pieces.len() as u32 {
                return Err(Refusal::Spares { have: throw.spares });
            }
            tick(throw, Task::Cut, pieces)?;
            Ok(vec![Event::SparesUsed {
                pieces: pieces.clone(),
            }])
        }
        Action::CountSpares { spares } => {
            if *spares > 10_000 {
                return Err(Refusal::Spares { have: throw.spares });
            }
            Ok(vec![Event::SparesCounted { spares: *spares }])
        }
        Action::Measure {
            piece,
            width,
            height,
        } => measure(throw, *piece, *width, *height),
        Action::MeasureOutline { piece, measures } => {
            let size = crate::squaring::held(throw, *piece, *measures).map_err(Refusal::Outline)?;
            let mut events = measure(throw, *piece, size.width, size.height)?;
            events.push(Event::Outlined {
                piece: *piece,
                measures: *measures,
            });
            Ok(events)
        }
        Action::MeasureWhole { width, height } => measure_whole(throw, *width, *height),
        Action::ChooseTrim { trim } => choose_trim(throw, *trim),
        Action::MarkLaps { laps } => mark_laps(throw, laps),
        Action::Unpick { pieces, lap } => {
            let back = laid_back(throw, pieces);
            if back.is_empty() {
                return unpick(throw, pieces, *lap);
            }
            let mut events = vec![Event::Turned { pieces: back }];
            events.extend(unpick(&throw.after(&events), pieces, *lap)?);
            Ok(events)
        }
        Action::SetAside { piece } => {
            let loose = throw.assembly().blocks().contains(piece)
                && throw
                    .assembly()
                    .goes_into(*piece)
                    .is_none_or(|j| !throw.begun(j.whole));
            if !loose || !throw.begun(*piece) {
                return Err(Refusal::NothingToUnpick(*piece));
            }
            Ok(vec![set_aside(throw, vec![*piece])])
        }
        Action::Replace { piece, why, spare } => {
            let back = laid_back(throw, &[*piece]);
            if back.is_empty() {
                return replace(throw, *piece, *why, *spare);
            }
            let square = back_in(*piece, &back);
            let mut events = vec![Event::Turned { pieces: back }];
            events.extend(replace(&throw.after(&events), square, *why, *spare)?);
            Ok(events)
        }
        Action::Patch {
            piece,
            face,
            print,
            why,
        } => patch(throw, *piece, *face, *print, *why),
        Action::Swap { a, b } => {
            let (one, other) = two_alike(throw, *a, *b);
            if one == other {
                return Err(Refusal::NotSwappable(*a, *b));
            }
            let moves = vec![(one, other), (other, one)];
            check_moves(throw, &moves)?;
            Ok(vec![Event::Moved { moves }])
        }
        Action::Spoil { piece, why } => {
            let piece = *known_squares(throw, &[*piece])?
                .first()
                .ok_or(Refusal::Nothing)?;
            if !throw.has(piece, Task::Cut) {
                return Err(Refusal::NotCut(piece));
            }
            if throw.is_joined(piece) {
                return Err(Refusal::Joined(piece));
            }
            Ok(vec![spoilt(throw, piece, *why)])
        }
        Action::AddGarment {
            kind,
            size,
            makes,
            name,
        } => {
            let pieces = garments::start(*kind, *size, Guess::Typical);
            let garment = Garment {
                name: clean_name(name)?,
                pieces,
            };
            add_heap(throw, Source::Cloth(garment), *makes)
        }
        Action::AddCloth {
            width,
            length,
            makes,
            name,
        } => {
            let piece = garments::yardage(*width, *length);
            piece.check_measured().map_err(Refusal::Piece)?;
            let garment = Garment {
                name: clean_name(name)?,
                pieces: vec![piece],
            };
            add_heap(throw, Source::Cloth(garment), *makes)
        }
        Action::AddPack {
            side,
            count,
            makes,
            name,
        } => {
            if *count == 0 || *count > MOST_SQUARES {
                return Err(Refusal::ManySquares { most: MOST_SQUARES });
            }
            if *side < throw.plan.side {
                return Err(Refusal::Plan(PlanFault::Side));
            }
            let pack = Precut {
                name: clean_name(name)?,
                side: *side,
                count: *count,
            };
            add_heap(throw, Source::Precut(pack), *makes)
        }
        Action::SetPiece { n, index, outline } => {
            outline.check_measured().map_err(Refusal::Piece)?;
            let mut heap = uncut(throw, *n, *index)?.clone();
            if let Source::Cloth(garment) = &mut heap.from
                && let Some(piece) = garment.pieces.get_mut(usize::from(*index))
            {
                *piece = outline.clone();
            }
            Ok(vec![Event::HeapSet { n: *n, heap }])
        }
        Action::DescribeCloth {
            n,
            weight,
            system,
            stretch,
            washed,
            trimming,
            makes,
        } => {
            let heap = throw.pile.get(n).ok_or(Refusal::Pile)?;
            let makes = makes.unwrap_or(heap.makes);
            if !throw.has_cloth(makes) {
                return Err(Refusal::Cloth);
            }
            if !heap.may_make(makes) {
                return Err(Refusal::CutUp);
            }
            let weight = crate::cloth::parse_weight(weight, *system).ok_or(Refusal::Weight)?;
            let cloth = Cloth {
                weight,
                stretch: *stretch,
                washed: *washed,
                ..heap.cloth
            };
            cloth.check().map_err(|_| Refusal::Weight)?;
            if *trimming < zero() || *trimming > throw.plan.side {
                return Err(Refusal::Plan(PlanFault::Trim));
            }
            let heap = Heap {
                makes,
                cloth,
                trimming: *trimming,
                ..heap.clone()
            };
            Ok(vec![Event::HeapSet { n: *n, heap }])
        }
        Action::TakeHeap { n } => {
            let heap = throw.pile.get(n).ok_or(Refusal::Pile)?;
            if heap.is_cut() {
                return Err(Refusal::CutUp);
            }
            Ok(vec![Event::HeapTaken { n: *n }])
        }
        Action::CutPiece {
            n,
            index,
            squares,
            outline: Some(outline),
        } => {
            let (n, index, squares, outline) = (*n, *index, *squares, outline.clone());
            let mut events = decide(Some(throw), &Action::SetPiece { n, index, outline })?;
            let cut = Action::CutPiece {
                n,
                index,
                squares,
                outline: None,
            };
            events.extend(decide(Some(&throw.after(&events)), &cut)?);
            Ok(events)
        }
        Action::CutPiece {
            n,
            index,
            squares,
            outline: None,
        } => {
            let heap = uncut(throw, *n, *index)?;
            // Three times what is expected is a slip of the finger.
            let expected = heap.expected(usize::from(*index), throw.plan.side);
            let most = expected
                .saturating_mul(3)
                .saturating_add(20)
                .min(MOST_SQUARES);
            if *squares > most {
                return Err(Refusal::ManySquares { most });
            }
            Ok(vec![Event::PieceCut {
                n: *n,
                piece: *index,
                squares: *squares,
                went: Some(throw.would_go(heap.makes, *squares)),
            }])
        }
        Action::TryScrap { scrap } => {
            let tried = Plan {
                joining: scrap.joining,
                lap: scrap.lap,
                stitch: scrap.stitch,
                between: None,
                ..throw.plan
            };
            tried.check().map_err(Refusal::Plan)?;
            if scrap.note.chars().count() > LONGEST_NOTE || throw.scraps.len() >= 200 {
                return Err(Refusal::Words);
            }
            Ok(vec![Event::ScrapTried {
                scrap: scrap.clone(),
            }])
        }
        Action::UseScrap { scrap } => {
            let scrap = throw
                .scraps
                .get(usize::from(*scrap))
                .ok_or(Refusal::Scrap)?;
            let plan = Plan {
                joining: scrap.joining,
                lap: scrap.lap,
                stitch: scrap.stitch,
                ..throw.plan
            };
            if plan == throw.plan {
                return Err(Refusal::Nothing);
            }
            change_plan(throw, &plan)
        }
        Action::SetPlate { opening } => {
            if *opening <= zero() || *opening > longest_side() {
                return Err(Refusal::Nothing);
            }
            Ok(vec![Event::PlateMeasured { opening: *opening }])
        }
        Action::Gather { item, have } => Ok(vec![Event::Gathered {
            item: *item,
            have: *have,
        }]),
        Action::Note {
            text,
            piece,
            task,
            next,
        } => {
            let text = text.trim();
            if text.is_empty() || text.chars().count() > LONGEST_NOTE {
                return Err(Refusal::Words);
            }
            about(throw, *piece)?;
            Ok(vec![Event::Noted {
                text: text.to_string(),
                piece: *piece,
                task: *task,
                next: *next,
            }])
        }
        Action::Picture {
            photo,
            words,
            piece,
            task,
        } => {
            let words = words.trim();
            if words.chars().count() > LONGEST_CAPTION {
                return Err(Refusal::Caption);
            }
            if throw.photos.iter().any(|p| p.id == *photo) {
                return Err(Refusal::PicturedAlready);
            }
            if throw.photos.len() >= MOST_PHOTOS {
                return Err(Refusal::Photo);
            }
            about(throw, *piece)?;
            Ok(vec![Event::Pictured {
                photo: photo.clone(),
                words: words.to_string(),
                piece: *piece,
                task: *task,
            }])
        }
        Action::Unpicture { photo } => {
            if !throw.photos.iter().any(|p| p.id == *photo) {
                return Err(Refusal::Photo);
            }
            Ok(vec![Event::Unpictured {
                photo: photo.clone(),
            }])
        }
    }
}

/// The piece something is said of is one of this throw's.
fn about(throw: &Throw, piece: Option<Rect>) -> Result<(), Refusal> {
    match piece.filter(|p| !throw.assembly().knows(*p)) {
        Some(piece) => Err(Refusal::NoSuchPiece(piece)),
        None => Ok(()),
    }
}

/// Most squares one piece or pack is believed to give.
pub(crate) const MOST_SQUARES: u32 = 2000;
/// Most heaps on a pile.
pub(crate) const MOST_HEAPS: usize = 100;

fn add_heap(throw: &Throw, from: Source, makes: Use) -> Result<Vec<Event>, Refusal> {
    if !throw.has_cloth(makes) {
        return Err(Refusal::Cloth);
    }
    let cloth = match makes {
        Use::Denim { .. } => Cloth::denim(),
        Use::Fabric { .. } => Cloth::cotton(),
    };
    if throw.pile.len() >= MOST_HEAPS {
        return Err(Refusal::Pile);
    }
    let n = throw
        .pile
        .keys()
        .next_back()
        .map_or(1, |last| last.saturating_add(1));
    Ok(vec![Event::HeapSet {
        n,
        heap: Heap::new(from, makes, cloth),
    }])
}

/// The heap, if it has such a piece and that is not cut up yet.
fn uncut(throw: &Throw, n: u16, index: u8) -> Result<&Heap, Refusal> {
    let heap = throw.pile.get(&n).ok_or(Refusal::Pile)?;
    match heap.counted.get(usize::from(index)) {
        Some(None) => Ok(heap),
        Some(Some(_)) => Err(Refusal::CutUp),
        None => Err(Refusal::Pile),
    }
}

pub(crate) fn clean_name(name: &str) -> Result<String, Refusal> {
    let name: String = name
        .chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    let name = name.trim();
    if name.is_empty() || name.chars().count() > LONGEST_NAME {
        return Err(Refusal::Name);
    }
    Ok(name.to_string())
}

pub(crate) fn check_cloth(prints: &[Print], denims: &[Denim]) -> Result<(), Refusal> {
    if prints.len() > MOST_CLOTHS || denims.len() > MOST_CLOTHS {
        return Err(Refusal::Cloth);
    }
    let colour = |c: &str| {
        c.len() == 7 && c.starts_with('#') && c[1..].bytes().all(|b| b.is_ascii_hexdigit())
    };
    let looks = prints.iter().map(|p| (&p.name, &p.colour));
    for (name, hue) in looks.chain(denims.iter().map(|d| (&d.name, &d.colour))) {
        clean_name(name)?;
        if !colour(hue) {
            return Err(Refusal::Cloth);
        }
    }
    Ok(())
}

/// Fours that are sewn cannot grow: where a lesser lap would make them larger and no size to
/// trim to is named, it stays what it was.
fn not_larger(throw: &Throw, mut plan: Plan) -> Plan {
    let fours = || {
        let blocks = throw.assembly().blocks().into_iter();
        let fours = blocks.filter(|b| throw.assembly().kind(*b) == Kind::Four);
        fours.filter_map(|b| throw.work(b))
    };
    let was = if fours().any(|w| w.squared.is_some()) {
        throw.plan.target()
    } else {
        throw.plan.natural_four()
    };
    let same = plan.side == throw.plan.side && plan.order == throw.plan.order;
    if same && plan.trim.is_none() && plan.target() > was && fours().any(|w| w.made.is_some()) {
        plan.trim = Some(was);
    }
    plan
}

fn change_plan(throw: &Throw, plan: &Plan) -> Result<Vec<Event>, Refusal> {
    plan.check().map_err(Refusal::Plan)?;
    let plan = &not_larger(throw, *plan);
    let cut = |s: &Rect| throw.has(*s, Task::Cut);
    let squares = || throw.assembly().whole().squares();
    if plan.side != throw.plan.side {
        let count = squares().filter(cut).count() as u32 + throw.spares;
        if count > 0 {
            return Err(Refusal::AlreadyCut { squares: count });
        }
    }
    let refit = refit(throw, plan)?;
    let mut events = Vec::new();
    if !refit.moves.is_empty() {
        events.push(Event::Moved { moves: refit.moves });
    }
    if !refit.aside.is_empty() {
        let aside = set_aside(&throw.after(&events), refit.aside);
        events.push(aside);
    }
    let after = throw.after(&events);
    let grid = Rect::grid(plan.across, plan.down);
    let cut = |s: &Rect| after.has(*s, Task::Cut) && !after.is_joined(*s);
    let spares = squares().filter(|s| !grid.holds(*s)).filter(cut).count() as u32;
    events.push(Event::PlanChanged {
        plan: *plan,
        spares,
    });
    let marks = marked_anew(throw, &throw.after(&events));
    if !marks.is_empty() {
        events.push(Event::LapsMarked { laps: marks });
    }
    Ok(events)
}

/// The laps marked between blocks, as they are to be where a plan was changed: what made a
/// short block fit does not any more, once all are trimmed to another size.
fn marked_anew(before: &Throw, after: &Throw) -> Vec<(Rect, Rect, Option<Length>)> {
    if (before.plan.target(), before.plan.lap_between())
        == (after.plan.target(), after.plan.lap_between())
    {
        return Vec::new();
    }
    let laps = crate::trimming::choice(after, after.plan.target()).laps;
    let open = open_marks(after);
    let marks = open.map(|(a, b, lap)| {
        let found = laps.iter().find(|(c, d, _)| (*c, *d) == (a, b));
        ((a, b, found.map(|(_, _, lap)| *lap)), lap)
    });
    marks
        .filter(|((_, _, new), old)| *new != Some(*old))
        .map(|(mark, _)| mark)
        .collect()
}

/// The laps marked between blocks that are not joined yet.
fn open_marks(throw: &Throw) -> impl Iterator<Item = (Rect, Rect, Length)> + '_ {
    let blocks = throw.assembly().blocks();
    throw.marks().filter(move |(a, b, _)| {
        let open = throw
            .joined_by(*a, *b)
            .is_some_and(|j| !throw.begun(j.whole));
        blocks.contains(a) && open
    })
}

/// How sewn blocks find a place under another plan.
struct Refit {
    /// Blocks that change places, as a permutation.
    moves: Vec<(Rect, Rect)>,
    /// Blocks for which there is no place.
    aside: Vec<Rect>,
}

/// Keep every sewn piece: where it is, or in another place of the same shape, or aside.
///
/// A piece larger than a block, or a finished edge, has no other place: it is refused.
fn refit(throw: &Throw, plan: &Plan) -> Result<Refit, Refusal> {
    let old = throw.assembly();
    let new = Assembly::new(plan.across, plan.down, plan.order);
    let mut refit = Refit {
        moves: Vec::new(),
        aside: Vec::new(),
    };
    if old.whole() == new.whole() && throw.plan.order == plan.order {
        return Ok(refit);
    }
    let finishing = [Task::CutBinding, Task::StitchBinding];
    if old.whole() != new.whole() && finishing.iter().any(|t| throw.has(old.whole(), *t)) {
        return Err(Refusal::AlreadyMade(old.whole()));
    }
    let keeps = |p: Rect| new.join(p) == old.join(p) && new.is_block(p) == old.is_block(p);
    let sewn: Vec<Rect> = throw
        .worked()
        .filter(|(p, w)| !p.is_square() && !w.done.is_empty())
        .map(|(p, _)| *p)
        .collect();
    let blocks = old.blocks();
    let mut homeless = Vec::new();
    for piece in sewn.iter().filter(|p| !keeps(**p)) {
        match blocks.iter().find(|b| b.holds(*piece)) {
            Some(block) if !homeless.contains(block) => homeless.push(*block),
            Some(_) => {}
            None => return Err(Refusal::AlreadyMade(*piece)),
        }
    }
    homeless.sort();
    let mut free: Vec<Rect> = new
        .blocks()
        .into_iter()
        .filter(|b| blocks.contains(b) && !sewn.iter().any(|p| b.holds(*p)))
        .collect();
    for block in homeless {
        let shape = |b: &Rect| (b.rows, b.cols) == (block.rows, block.cols);
        match free.iter().position(shape) {
            Some(at) => {
                let place = free.remove(at);
                refit.moves.extend([(block, place), (place, block)]);
            }
            None => refit.aside.extend(made_in(throw, block)),
        }
    }
    Ok(refit)
}

/// The largest joined pieces there really are within a piece.
pub(crate) fn made_in(throw: &Throw, piece: Rect) -> Vec<Rect> {
    let Some(join) = throw.assembly().join(piece) else {
        return Vec::new();
    };
    if throw.begun(piece) {
        return vec![piece];
    }
    let mut parts = made_in(throw, join.first);
    parts.extend(made_in(throw, join.second));
    parts
}

fn known_squares(throw: &Throw, pieces: &[Rect]) -> Result<Vec<Rect>, Refusal> {
    if pieces.is_empty() {
        return Err(Refusal::Nothing);
    }
    let unknown = |p: &&Rect| !p.is_square() || !throw.assembly().knows(**p);
    match pieces.iter().find(unknown) {
        Some(piece) => Err(Refusal::NoSuchPiece(*piece)),
        None => Ok(pieces.to_vec()),
    }
}

/// The task that glues a fabric on a face.
pub fn cover_task(face: Face) -> Task {
    match face {
        Face::Front => Task::CoverFront,
        Face::Back => Task::CoverBack,
    }
}

fn set_face(
    throw: &Throw,
    pieces: &[Rect],
    face: Face,
    print: Option<u8>,
) -> Result<Vec<Event>, Refusal> {
    if print.is_some_and(|p| usize::from(p) >= throw.prints.len()) {
        return Err(Refusal::Cloth);
    }
    let mut faces = Vec::new();
    for piece in known_squares(throw, pieces)? {
        let cover = throw.cover(piece);
        if cover.on(face) == print {
            continue;
        }
        if throw.is_joined(piece) {
            return Err(Refusal::Joined(piece));
        }
        if throw.has(piece, cover_task(face)) {
            return Err(Refusal::Glued(piece));
        }
        faces.push((piece, cover.with(face, print)));
    }
    if let Some(print) = print
        && let Some(have) = throw.prints[usize::from(print)].stock
        && used(throw, print) + gone(throw, print).all() + faces.len() as u32 > have
    {
        return Err(Refusal::Stock { print, have });
    }
    if faces.is_empty() {
        return Err(Refusal::Nothing);
    }
    Ok(vec![faces_changed(throw, faces)])
}

/// Squares of a print placed so far, both faces together.
pub fn used(throw: &Throw, print: u8) -> u32 {
    let on = throw.covers().iter().flat_map(|c| [c.front, c.back]);
    on.filter(|p| *p == Some(print)).count() as u32
}

/// Squares of a print that are in the throw no more.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Gone {
    /// Glued on squares that were spoilt.
    pub spoilt: u32,
    /// Glued on squares of pieces set aside.
    pub aside: u32,
}

impl Gone {
    /// All of them.
    pub fn all(self) -> u32 {
        self.spoilt + self.aside
    }
}

/// Squares of a print that went with what was spoilt or set aside.
pub fn gone(throw: &Throw, print: u8) -> Gone {
    let spoilt = throw.losses.iter().flat_map(|l| l.glued);
    Gone {
        spoilt: spoilt.filter(|p| *p == Some(print)).count() as u32,
        aside: throw.aside_glued.get(&print).copied().unwrap_or(0),
    }
}

/// The prints with their stock less what is gone.
pub fn in_hand(throw: &Throw) -> Vec<Print> {
    let mut prints = throw.prints.clone();
    for (i, print) in prints.iter_mut().enumerate() {
        let gone = gone(throw, i as u8).all();
        print.stock = print.stock.map(|n| n.saturating_sub(gone));
    }
    prints
}

/// No more squares can be covered on a face than there are.
fn check_wishes(throw: &Throw, wishes: &Wishes) -> Result<(), Refusal> {
    let most = throw.plan.squares();
    if wishes.front > most || wishes.back > most {
        return Err(Refusal::Wishes { most });
    }
    Ok(())
}

/// Whether all of a layout can be done to a throw, and what comes of it.
fn lay_out(throw: &Throw, wishes: &Wishes, layout: &Layout) -> Result<Vec<Event>, Refusal> {
    check_moves(throw, &layout.moves)?;
    let mut events: Vec<Event> = layout.moved().into_iter().collect();
    let moved = throw.after(&events);
    for (n, (piece, quarters)) in layout.turns.iter().enumerate() {
        let before = &layout.turns[..n];
        if before
            .iter()
            .any(|(p, _)| p.holds(*piece) || piece.holds(*p))
        {
            return Err(Refusal::Layout(*piece));
        }
        may_turn(&moved, *piece, *quarters)?;
    }
    events.extend(layout.turned());
    let turned = throw.after(&events);
    let mut faces: Vec<(Rect, Cover)> = Vec::new();
    let mut seen = HashSet::new();
    for (piece, cover) in &layout.faces {
        let is = turned.cover(*piece);
        if !seen.insert(*piece) || !piece.is_square() || !throw.assembly().knows(*piece) {
            return Err(Refusal::Layout(*piece));
        }
        let print = |p: Option<u8>| p.is_none_or(|p| usize::from(p) < throw.prints.len());
        let denim = usize::from(cover.denim) < throw.denims.len().max(1);
        if !print(cover.front) || !print(cover.back) || !denim {
            return Err(Refusal::Cloth);
        }
        let cloth = |c: &Cover| (c.denim, c.wrong_side_up, c.crosswise);
        if cloth(cover) != cloth(&is) && turned.has(*piece, Task::Cut) {
            return Err(Refusal::AlreadyCut { squares: 1 });
        }
        if *cover != is && turned.is_pinned(*piece) {
            return Err(Refusal::Pinned(*piece));
        }
        for face in Face::BOTH {
            if cover.on(face) != is.on(face) {
                if turned.is_joined(*piece) {
                    return Err(Refusal::Joined(*piece));
                }
                if turned.has(*piece, cover_task(face)) {
                    return Err(Refusal::Glued(*piece));
                }
            }
        }
        if *cover != is {
            faces.push((*piece, *cover));
        }
    }
    if !faces.is_empty() {
        events.push(faces_changed(&turned, faces));
    }
    let after = throw.after(&events);
    for (i, print) in throw.prints.iter().enumerate() {
        let print_n = i as u8;
        let (before, now) = (used(throw, print_n), used(&after, print_n));
        let gone = gone(throw, print_n).all();
        if let Some(have) = print
            .stock
            .filter(|have| now + gone > *have && now > before)
        {
            return Err(Refusal::Stock {
                print: print_n,
                have,
            });
        }
    }
    if throw.wishes != Some(*wishes) {
        events.push(Event::Wished { wishes: *wishes });
    }
    if events.is_empty() {
        return Err(Refusal::Nothing);
    }
    Ok(events)
}

/// The joined piece a square goes with, or what was named itself.
fn unit_of(throw: &Throw, piece: Rect) -> Rect {
    let mut units = loose_units(throw).into_iter();
    units.find(|u| u.holds(piece)).unwrap_or(piece)
}

/// What is exchanged when two pieces are named: the pieces they are part of, and where
/// one is the larger, all that lies in the place of that shape round the other.
fn two_alike(throw: &Throw, a: Rect, b: Rect) -> (Rect, Rect) {
    let (one, other) = (unit_of(throw, a), unit_of(throw, b));
    let round = |large: Rect, small: Rect| {
        let places = places_for(throw.assembly(), large);
        places.into_iter().find(|p| p.holds(small)).unwrap_or(small)
    };
    match one.count().cmp(&other.count()) {
        std::cmp::Ordering::Less => (round(other, one), other),
        std::cmp::Ordering::Greater => (one, round(one, other)),
        std::cmp::Ordering::Equal => (one, other),
    }
}

/// Pieces that exchange places: each loose, of one shape and kind, each place once.
fn check_moves(throw: &Throw, moves: &[(Rect, Rect)]) -> Result<(), Refusal> {
    let (mut left, mut taken) = (HashSet::new(), HashSet::new());
    let mut of_kind: HashMap<Rect, HashSet<Rect>> = HashMap::new();
    for (from, to) in moves {
        if !throw.assembly().knows(*from) || !throw.assembly().knows(*to) {
            return Err(Refusal::NoSuchPiece(*from));
        }
        let squares = from.is_square() && to.is_square();
        if !squares {
            let places = of_kind
                .entry(*from)
                .or_insert_with(|| places_for(throw.assembly(), *from).into_iter().collect());
            if !places.contains(to) {
                return Err(Refusal::NotSwappable(*from, *to));
            }
        }
        if !is_loose(throw, *from) {
            return Err(Refusal::NotSwappable(*from, *to));
        }
        for square in from.squares() {
            if throw.is_pinned(square) {
                return Err(Refusal::Pinned(square));
            }
            if !left.insert(square) {
                return Err(Refusal::Layout(square));
            }
        }
        for square in to.squares() {
            if !taken.insert(square) {
                return Err(Refusal::Layout(square));
            }
        }
    }
    match left.symmetric_difference(&taken).next() {
        Some(square) => Err(Refusal::Layout(*square)),
        None => Ok(()),
    }
}

/// Whether a piece may be turned where it lies: a loose square or a stitched four by
/// quarters, any other loose joined piece by halves.
pub(crate) fn may_turn(throw: &Throw, piece: Rect, quarters: u8) -> Result<(), Refusal> {
    if !throw.assembly().knows(piece) {
        return Err(Refusal::NoSuchPiece(piece));
    }
    // Four squares in a line are as many, but only a square stays in its place.
    let quarter = piece.rows == piece.cols && (piece.is_square() || throw.has(piece, Task::Stitch));
    let opened = throw.work(piece).is_some_and(|w| w.opened.is_some());
    let sewn = piece.is_square() || throw.begun(piece);
    if quarters.is_multiple_of(4)
        || piece.count() > 4
        || opened
        || !sewn
        || !is_loose(throw, piece)
        || (quarters % 2 == 1 && !quarter)
    {
        return Err(Refusal::NotTurnable(piece));
    }
    match piece.squares().find(|s| throw.is_pinned(*s)) {
        Some(square) => Err(Refusal::Pinned(square)),
        None => Ok(()),
    }
}

fn flip(throw: &Throw, pieces: &[Rect]) -> Result<Vec<Event>, Refusal> {
    let pieces = known_squares(throw, pieces)?;
    for piece in &pieces {
        if throw.is_joined(*piece) {
            return Err(Refusal::Joined(*piece));
        }
        if throw.is_pinned(*piece) {
            return Err(Refusal::Pinned(*piece));
        }
    }
    Ok(vec![Event::Flipped { pieces }])
}

/// Fours that hold one of these pieces and were turned by a quarter: they are laid
/// back as they were sewn before anything in them is opened.
fn laid_back(throw: &Throw, pieces: &[Rect]) -> Vec<(Rect, u8)> {
    let blocks = throw.assembly().blocks();
    let turned = |b: &Rect| throw.is_turned(*b) && pieces.iter().any(|p| b.holds(*p));
    blocks
        .into_iter()
        .filter(turned)
        .map(|block| (block, 3))
        .collect()
}

/// Where a square lies once the four round it is laid back.
fn back_in(square: Rect, turned: &[(Rect, u8)]) -> Rect {
    let Some((block, quarters)) = turned.iter().find(|(b, _)| b.holds(square)) else {
        return square;
    };
    let squares: Vec<Rect> = block.squares().collect();
    let at = squares.iter().position(|s| *s == square);
    (0..squares.len())
        .find(|n| Some(source(*n, (block.rows, block.cols), *quarters)) == at)
        .map_or(square, |n| squares[n])
}

fn set_cloth(throw: &Throw, prints: &[Print], denims: &[Denim]) -> Result<Vec<Event>, Refusal> {
    check_cloth(prints, denims)?;
    for cover in throw.covers() {
        let missing = [cover.front, cover.back]
            .into_iter()
            .flatten()
            .any(|p| usize::from(p) >= prints.len());
        if missing || (cover.denim > 0 && usize::from(cover.denim) >= denims.len()) {
            return Err(Refusal::Cloth);
        }
    }
    for (i, print) in prints.iter().enumerate() {
        if let Some(have) = print.stock.filter(|have| used(throw, i as u8) > *have) {
            return Err(Refusal::Stock {
                print: i as u8,
                have,
            });
        }
    }
    let (prints, denims) = (prints.to_vec(), denims.to_vec());
    Ok(vec![Event::ClothChanged { prints, denims }])
}

fn tick(throw: &Throw, task: Task, pieces: &[Rect]) -> Result<Vec<Event>, Refusal> {
    if pieces.is_empty() {
        return Err(Refusal::Nothing);
    }
    let mut seen = HashSet::new();
    for piece in pieces {
        may_do(throw, task, *piece)?;
        if !seen.insert(*piece) {
            return Err(Refusal::NotItsTask {
                piece: *piece,
                task,
            });
        }
    }
    if task == Task::SquareUp {
        let pieces = pieces
            .iter()
            .map(|piece| {
                // As measured, no larger than the trim size.
                let (size, target) = (throw.size(*piece), throw.target(*piece));
                let width = min(size.width, target.width);
                (*piece, width, min(size.height, target.height))
            })
            .collect();
        return Ok(vec![Event::SquaredUp { pieces }]);
    }
    Ok(vec![done(throw, task, pieces.to_vec())])
}

/// A task done, with what it settles of how joins are made.
fn done(throw: &Throw, task: Task, pieces: Vec<Rect>) -> Event {
    let settled = pieces.iter().map(|p| throw.would_be_made(*p, task));
    let mut made: Vec<Made> = settled.flatten().collect();
    // One that is for all of them is said once.
    if made.windows(2).all(|two| two[0] == two[1]) {
        made.truncate(1);
    }
    Event::Done { task, pieces, made }
}

/// Faces changed, with the squares that are to be pressed once more for it.
fn faces_changed(throw: &Throw, faces: Vec<(Rect, Cover)>) -> Event {
    let again = throw.would_press_again(&faces);
    Event::FacesChanged { faces, again }
}

/// Pieces set aside, with their sizes.
fn set_aside(throw: &Throw, pieces: Vec<Rect>) -> Event {
    let sizes = pieces.iter().map(|piece| throw.size(*piece));
    let sizes = sizes.map(|size| (size.width, size.height)).collect();
    Event::SetAside { pieces, sizes }
}

/// A square spoilt, and whether the seams opened last were opened to take it out.
fn spoilt(throw: &Throw, piece: Rect, why: Mishap) -> Event {
    let opened = throw.openings.last().map(|o| o.is_round(piece));
    Event::Spoilt { piece, why, opened }
}

/// Every piece that can be worked on now, with its next task, squares first.
pub fn ready(throw: &Throw) -> impl Iterator<Item = (Rect, Task)> + '_ {
    throw.assembly().pieces().filter_map(|piece| {
        let task = throw.next(piece)?;
        throw.waits_for(piece).is_none().then_some((piece, task))
    })
}

/// The pieces of one kind that are ready for one task, in order.
pub fn ready_for(throw: &Throw, kind: Kind, task: Task) -> impl Iterator<Item = Rect> + '_ {
    let listed = throw.standing().ready().get(&(tier(kind), task));
    listed
        .into_iter()
        .flatten()
        .filter_map(|n| throw.assembly().numbered(*n as usize))
        .filter(move |piece| throw.kind(*piece) == kind)
}

/// Whether `task` may be done to `piece` now.
///
/// # Errors
/// What must come first, or why the task is not this piece's.
pub fn may_do(throw: &Throw, task: Task, piece: Rect) -> Result<(), Refusal> {
    if !throw.assembly().knows(piece) {
        return Err(Refusal::NoSuchPiece(piece));
    }
    if let Some(before) = throw.waits_for(piece) {
        let deepest = first_open(throw, before);
        let needs = throw.next(deepest).unwrap_or(Task::Cut);
        return Err(Refusal::First {
            task,
            piece,
            before: deepest,
            needs,
        });
    }
    match throw.next(piece) {
        Some(next) if next == task => Ok(()),
        Some(next) if throw.tasks(piece).contains(&task) && !throw.has(piece, task) => {
            Err(Refusal::First {
                task,
                piece,
                before: piece,
                needs: next,
            })
        }
        _ => Err(Refusal::NotItsTask { piece, task }),
    }
}

/// The first part below `piece` that can be worked on now.
fn first_open(throw: &Throw, piece: Rect) -> Rect {
    let mut open = piece;
    while let Some(before) = throw.waits_for(open) {
        open = before;
    }
    open
}

fn measure(
    throw: &Throw,
    piece: Rect,
    width: Length,
    height: Length,
) -> Result<Vec<Event>, Refusal> {
    if !throw.assembly().knows(piece) {
        return Err(Refusal::NoSuchPiece(piece));
    }
    if !throw.is_measurable(piece) {
        return Err(Refusal::NotMeasurable(piece));
    }
    let natural = crate::squaring::natural(throw, piece);
    for (given, planned) in [(width, natural.width), (height, natural.height)] {
        if given <= zero()
            || given * 2 < planned
            || given > planned * 2
            || given > longest_side() * 2
        {
            return Err(Refusal::Unlikely { given, planned });
        }
    }
    Ok(vec![Event::Measured {
        piece,
        width,
        height,
    }])
}

fn measure_whole(throw: &Throw, width: Length, height: Length) -> Result<Vec<Event>, Refusal> {
    let whole = throw.assembly().whole();
    if throw.assembly().join(whole).is_some() && !throw.has(whole, Task::Stitch) {
        return Err(Refusal::NotWhole);
    }
    let foreseen = throw.finished();
    for (given, planned) in [(width, foreseen.width), (height, foreseen.height)] {
        if given <= zero() || given * 2 < planned || given > planned * 2 {
            return Err(Refusal::Unlikely { given, planned });
        }
    }
    Ok(vec![Event::WholeMeasured { width, height }])
}

fn choose_trim(throw: &Throw, trim: Length) -> Result<Vec<Event>, Refusal> {
    let trim = (trim != throw.plan.natural_four()).then_some(trim);
    let plan = Plan { trim, ..throw.plan };
    plan.check().map_err(Refusal::Plan)?;
    let laps = crate::trimming::choice(throw, plan.target()).laps;
    let stale =
        open_marks(throw).filter(|(a, b, _)| !laps.iter().any(|(c, d, _)| (c, d) == (a, b)));
    let mut marks: Vec<(Rect, Rect, Option<Length>)> =
        stale.map(|(a, b, _)| (a, b, None)).collect();
    marks.extend(laps.into_iter().map(|(a, b, lap)| (a, b, Some(lap))));
    let mut events = Vec::new();
    if plan != throw.plan {
        events.push(Event::PlanChanged { plan, spares: 0 });
    }
    if !marks.is_empty() {
        events.push(Event::LapsMarked { laps: marks });
    }
    if events.is_empty() {
        return Err(Refusal::Nothing);
    }
    Ok(events)
}

/// The narrowest lap a join may have: what leaves the least fringe, or the plan's own
/// lap where that is narrower still.
pub fn least_lap(throw: &Throw) -> Length {
    std::cmp::min(throw.plan.narrowest_lap(), throw.plan.lap_between())
}

fn mark_laps(throw: &Throw, laps: &[(Rect, Rect, Option<Length>)]) -> Result<Vec<Event>, Refusal> {
    if laps.is_empty() {
        return Err(Refusal::Nothing);
    }
    for (a, b, lap) in laps {
        let join = throw
            .joined_by(*a, *b)
            .filter(|j| throw.spots(j).contains(&(*a, *b)));
        if join.is_none_or(|j| throw.begun(j.whole)) {
            return Err(Refusal::NotNeighbours(*a, *b));
        }
        if let Some(lap) = lap {
            check_lap(throw, *lap)?;
        }
    }
    Ok(vec![Event::LapsMarked {
        laps: laps.to_vec(),
    }])
}

fn check_lap(throw: &Throw, lap: Length) -> Result<(), Refusal> {
    let least = least_lap(throw);
    if lap < least || crate::plan::take(throw.plan.joining, lap) * 2 >= throw.plan.side {
        return Err(Refusal::LapTooNarrow { lap, least });
    }
    Ok(())
}

/// Whether the seam of `join` runs along an edge of `piece`.
fn touches(join: &Join, piece: Rect) -> bool {
    match join.seam {
        Seam::Upright => piece.col == join.second.col || piece.col + piece.cols == join.second.col,
        Seam::Level => piece.row == join.second.row || piece.row + piece.rows == join.second.row,
    }
}

/// The begun joins round `piece` that must be opened to take it out, innermost first,
/// each with the length to open: the edge of the piece that lies along it.
pub fn round(throw: &Throw, piece: Rect) -> Vec<(Rect, Length)> {
    let mut out = Vec::new();
    let size = throw.size(piece);
    let mut inner = piece;
    while let Some(join) = throw.assembly().goes_into(inner) {
        if throw.begun(join.whole) && touches(join, piece) {
            out.push((join.whole, size.along(join.seam)));
        }
        inner = join.whole;
    }
    out
}

fn unpick(throw: &Throw, wanted: &[Rect], lap: Option<Length>) -> Result<Vec<Event>, Refusal> {
    if wanted.is_empty() {
        return Err(Refusal::Nothing);
    }
    let mut pieces: Vec<(Rect, Length)> = Vec::new();
    let mut marks = Vec::new();
    for piece in wanted {
        let join = throw
            .assembly()
            .join(*piece)
            .ok_or(Refusal::NothingToUnpick(*piece))?;
        if !throw.begun(*piece) {
            return Err(Refusal::NothingToUnpick(*piece));
        }
        let own = throw.size(*piece).along(join.seam);
        for (opened, length) in std::iter::once((*piece, own)).chain(round(throw, *piece)) {
            match pieces.iter_mut().find(|(p, _)| *p == opened) {
                Some((_, sofar)) => *sofar = std::cmp::max(*sofar, length),
                None => pieces.push((opened, length)),
            }
        }
        if let Some(lap) = lap {
            check_lap(throw, lap)?;
            marks.push((join.first, join.second, Some(lap)));
        }
    }
    let mut events = vec![Event::Unpicked { pieces }];
    if !marks.is_empty() {
        events.push(Event::LapsMarked { laps: marks });
    }
    Ok(events)
}

fn replace(throw: &Throw, piece: Rect, why: Mishap, spare: bool) -> Result<Vec<Event>, Refusal> {
    let piece = *known_squares(throw, &[piece])?
        .first()
        .ok_or(Refusal::Nothing)?;
    if !throw.has(piece, Task::Cut) {
        return Err(Refusal::NotCut(piece));
    }
    if spare && throw.spares == 0 {
        return Err(Refusal::Spares { have: 0 });
    }
    let mut events = Vec::new();
    let pieces = round(throw, piece);
    if !pieces.is_empty() {
        events.push(Event::Unpicked { pieces });
    }
    let spoilt = spoilt(&throw.after(&events), piece, why);
    events.push(spoilt);
    if spare {
        events.push(Event::SparesUsed {
            pieces: vec![piece],
        });
    }
    Ok(events)
}

fn patch(
    throw: &Throw,
    piece: Rect,
    face: Face,
    print: u8,
    why: Mishap,
) -> Result<Vec<Event>, Refusal> {
    let piece = *known_squares(throw, &[piece])?
        .first()
        .ok_or(Refusal::Nothing)?;
    let Some(cloth) = throw.prints.get(usize::from(print)) else {
        return Err(Refusal::Cloth);
    };
    if !throw.has(piece, Task::Cut) {
        return Err(Refusal::NotCut(piece));
    }
    let cover = throw.cover(piece);
    if cover.on(face).is_some() {
        return Err(Refusal::Covered(piece));
    }
    let taken = used(throw, print) + gone(throw, print).all();
    if let Some(have) = cloth.stock.filter(|have| taken >= *have) {
        return Err(Refusal::Stock { print, have });
    }
    Ok(vec![
        Event::Patched { piece, why },
        faces_changed(throw, vec![(piece, cover.with(face, Some(print)))]),
    ])
}
