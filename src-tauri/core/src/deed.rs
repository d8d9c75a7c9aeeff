//! What the maker may do, and what comes of it.
//!
//! [`decide`] checks an [`Action`] against a throw and gives the [`Event`]s it
//! leads to, or a [`Refusal`] that says what stands in the way and what would help.
//! It changes nothing itself.

use crate::assembly::{Kind, Rect};
use crate::faces::{Cover, Denim, Face, Ground, Print, spread};
use crate::measure::{Length, zero};
use crate::plan::{Plan, PlanFault, longest_side};
use crate::squaring::trimmed;
use crate::tasks::Task;
use crate::throw::{Event, Mishap, Throw};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Longest name or note, in characters.
pub const LONGEST_NAME: usize = 80;
/// Longest note, in characters.
pub const LONGEST_NOTE: usize = 2000;
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
    /// Spread fabric squares evenly over both faces.
    Spread {
        /// Squares covered on the front, in all.
        front: u32,
        /// Squares covered on the back, in all.
        back: u32,
        /// Which of the many good ways.
        seed: u32,
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
    /// A square that is not joined yet is no good.
    Spoil {
        /// The square.
        piece: Rect,
        /// What happened.
        why: Mishap,
    },
    /// Write something down.
    Note {
        /// The words.
        text: String,
        /// The piece it is about.
        piece: Option<Rect>,
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
    /// A measure that cannot be this block's: under half or over twice its planned size.
    Unlikely {
        /// What was given.
        given: Length,
        /// What was planned.
        planned: Length,
    },
    /// The square is not cut, so it cannot be spoilt.
    NotCut(Rect),
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
            Ok(vec![Event::FacesChanged { faces }])
        }
        Action::Spread { front, back, seed } => Ok(spread_faces(throw, *front, *back, *seed)),
        Action::SetCloth { prints, denims } => set_cloth(throw, prints, denims),
        Action::Tick { task, pieces } => tick(throw, *task, pieces),
        Action::TickNext { task, kind, count } => {
            let ready = ready(throw).filter(|(piece, t)| t == task && throw.kind(*piece) == *kind);
            let pieces: Vec<Rect> = ready
                .map(|(piece, _)| piece)
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
            Ok(vec![Event::Spoilt { piece, why: *why }])
        }
        Action::Note { text, piece } => {
            let text = text.trim();
            if text.is_empty() || text.chars().count() > LONGEST_NOTE {
                return Err(Refusal::Words);
            }
            if let Some(piece) = piece.filter(|p| !throw.assembly().knows(*p)) {
                return Err(Refusal::NoSuchPiece(piece));
            }
            Ok(vec![Event::Noted {
                text: text.to_string(),
                piece: *piece,
            }])
        }
    }
}

fn clean_name(name: &str) -> Result<String, Refusal> {
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

fn check_cloth(prints: &[Print], denims: &[Denim]) -> Result<(), Refusal> {
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

fn change_plan(throw: &Throw, plan: &Plan) -> Result<Vec<Event>, Refusal> {
    plan.check().map_err(Refusal::Plan)?;
    let cut = |s: &Rect| throw.has(*s, Task::Cut);
    let squares = || throw.assembly().whole().squares();
    if plan.side != throw.plan.side {
        let count = squares().filter(cut).count() as u32 + throw.spares;
        if count > 0 {
            return Err(Refusal::AlreadyCut { squares: count });
        }
    }
    let grid = Rect::grid(plan.across, plan.down);
    let changed = crate::assembly::Assembly::new(plan.across, plan.down, plan.order);
    let lost = throw
        .worked()
        .filter(|(piece, work)| {
            let sewn = !piece.is_square() && !work.done.is_empty();
            // A joined piece must be made of the same parts, or be no part of a larger one only.
            sewn && (changed.join(**piece) != throw.assembly().join(**piece)
                || changed.is_block(**piece) != throw.assembly().is_block(**piece))
        })
        .map(|(piece, _)| *piece)
        .min();
    if let Some(piece) = lost {
        return Err(Refusal::AlreadyMade(piece));
    }
    let finishing = throw.work(throw.assembly().whole()).is_some_and(|w| {
        w.done
            .iter()
            .any(|(t, _)| matches!(t, Task::CutBinding | Task::StitchBinding))
    });
    if finishing && grid != throw.assembly().whole() {
        return Err(Refusal::AlreadyMade(throw.assembly().whole()));
    }
    let spares = squares().filter(|s| !grid.holds(*s)).filter(cut).count() as u32;
    Ok(vec![Event::PlanChanged {
        plan: *plan,
        spares,
    }])
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
        && used(throw, print) + faces.len() as u32 > have
    {
        return Err(Refusal::Stock { print, have });
    }
    if faces.is_empty() {
        return Err(Refusal::Nothing);
    }
    Ok(vec![Event::FacesChanged { faces }])
}

/// Squares of a print placed so far, both faces together.
pub fn used(throw: &Throw, print: u8) -> u32 {
    let on = throw.covers().iter().flat_map(|c| [c.front, c.back]);
    on.filter(|p| *p == Some(print)).count() as u32
}

fn spread_faces(throw: &Throw, front: u32, back: u32, seed: u32) -> Vec<Event> {
    let squares: Vec<Rect> = throw.assembly().whole().squares().collect();
    let fixed: Vec<bool> = squares
        .iter()
        .map(|s| {
            throw.is_joined(*s) || throw.has(*s, Task::CoverFront) || throw.has(*s, Task::CoverBack)
        })
        .collect();
    let ground = Ground {
        across: throw.plan.across,
        down: throw.plan.down,
        covers: throw.covers(),
        fixed: &fixed,
        prints: &throw.prints,
    };
    let after = spread(ground, front, back, u64::from(seed));
    let faces = squares
        .into_iter()
        .zip(after)
        .filter(|(s, cover)| throw.cover(*s) != *cover)
        .collect();
    vec![Event::FacesChanged { faces }]
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
    let mut seen = std::collections::HashSet::new();
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
                let size = trimmed(throw, *piece);
                (*piece, size.width, size.height)
            })
            .collect();
        return Ok(vec![Event::SquaredUp { pieces }]);
    }
    Ok(vec![Event::Done {
        task,
        pieces: pieces.to_vec(),
    }])
}

/// Every piece that can be worked on now, with its next task, squares first.
pub fn ready(throw: &Throw) -> impl Iterator<Item = (Rect, Task)> + '_ {
    throw.assembly().pieces().filter_map(|piece| {
        let task = throw.next(piece)?;
        throw.waits_for(piece).is_none().then_some((piece, task))
    })
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
    if !throw.assembly().is_block(piece)
        || !throw.has(piece, Task::Stitch)
        || throw.has(piece, Task::SquareUp)
    {
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
