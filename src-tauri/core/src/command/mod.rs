//! What the maker may do, and which events follow.
//!
//! [`decide`] checks a [`Command`] against a throw. It returns the resulting [`Event`]s, or a
//! [`Rejection`] that says what stands in the way and what would help. It changes nothing
//! itself. Each family of commands has a module of its own.

pub mod action;
mod check;
mod faces;
mod outcome;
mod pile;
mod plan;
pub mod rejection;
mod repair;
mod scraps;
mod story;
mod work;

pub use action::*;
use check::check_names;
pub(crate) use check::{check_cloth, clean_name};
pub(crate) use faces::may_turn_if;
pub use rejection::Rejection;
pub use work::{cooled, may_do, next_cool, ready, ready_for};

use crate::cloth::fabric::{Denim, Print};
use crate::cloth::garments::GarmentStart;
use crate::measure::System;
use crate::plan::Plan;
use crate::throw::event::{Event, Time};
use crate::throw::state::Throw;

/// What would come of `action`.
///
/// # Errors
/// The [`Rejection`] that says what stands in the way.
pub fn decide(throw: Option<&Throw>, action: &Command) -> Result<Vec<Event>, Rejection> {
    match (throw, action) {
        (
            None,
            Command::Begin {
                name,
                plan,
                prints,
                denims,
            },
        ) => begin(name, plan, prints, denims),
        (Some(throw), action) => decide_for(throw, action),
        (None, _) => Err(Rejection::Beginning),
    }
}

/// What would come of `action` at this moment: what has cooled by then need not be ticked, it is
/// recorded with the work that wanted it cool.
///
/// # Errors
/// The [`Rejection`] that says what stands in the way.
pub fn decide_at(throw: &Throw, action: &Command, at: Time) -> Result<Vec<Event>, Rejection> {
    let works = match action {
        Command::Tick { task, .. } | Command::TickNext { task, .. } => !task.is_cooling(),
        Command::TickSitting { .. } => true,
        _ => false,
    };
    let cooled = if works { cooled(throw, at) } else { vec![] };
    if cooled.is_empty() {
        return decide_for(throw, action);
    }
    let events = decide_for(&throw.after(&cooled), action)?;
    let mut out = work::wanted_cool(cooled, &events);
    out.extend(events);
    Ok(out)
}

fn begin(
    name: &str,
    plan: &Plan,
    prints: &[Print],
    denims: &[Denim],
) -> Result<Vec<Event>, Rejection> {
    plan.check()?;
    check_cloth(prints, denims)?;
    check_names(prints, denims, None)?;
    Ok(vec![Event::Begun {
        name: clean_name(name)?,
        plan: *plan,
        prints: prints.to_vec(),
        denims: denims.to_vec(),
        after: None,
    }])
}

/// What would come of an action on a throw that has been begun.
fn decide_for(throw: &Throw, action: &Command) -> Result<Vec<Event>, Rejection> {
    use Command as A;
    match action {
        A::Begin { .. } => Err(Rejection::Beginning),
        A::Rename { name } => Ok(vec![Event::Renamed {
            name: clean_name(name)?,
        }]),
        A::Archive { archived } => Ok(vec![Event::Archived {
            archived: *archived,
        }]),
        A::Gather { item, have } => Ok(vec![Event::Gathered {
            item: *item,
            have: *have,
        }]),

        A::ChangePlan { plan } => plan::change_plan(throw, plan),
        A::ChooseTrim { trim, step } => plan::choose_trim(throw, *trim, *step),
        A::MarkLaps { laps } => plan::mark_laps(throw, laps),

        A::SetFace {
            pieces,
            face,
            print,
            laid_on,
        } => faces::set_face(throw, pieces, *face, *print, *laid_on),
        A::SetDenim {
            pieces,
            denim,
            wrong_side_up,
        } => faces::set_denim(throw, pieces, *denim, *wrong_side_up),
        A::ShareDenims => faces::share_denims(throw),
        A::SetCloth { prints, denims } => faces::set_cloth(throw, prints, denims),
        A::LayOut { wishes, layout } => faces::lay_out(throw, wishes, layout),
        A::Wish { wishes } => faces::wish(throw, wishes),
        A::Turn { piece, quarters } => faces::turn(throw, *piece, *quarters),
        A::Flip { pieces } => faces::flip(throw, pieces),
        A::Pin { pieces, pinned } => faces::pin(throw, pieces, *pinned),
        A::Swap { a, b } => faces::swap(throw, *a, *b),

        A::Tick { task, pieces } => work::tick(throw, *task, pieces),
        A::TickNext { task, kind, count } => work::tick_next(throw, *task, *kind, *count),
        A::TickSitting { tasks, pieces } => work::tick_sitting(throw, tasks, pieces),
        A::UseSpares { pieces, denim } => work::use_spares(throw, pieces, *denim),
        A::CountSpares { spares } => work::count_spares(throw, *spares),
        A::Measure {
            piece,
            width,
            height,
        } => work::measure(throw, *piece, *width, *height),
        A::MeasureOutline { piece, measures } => work::measure_outline(throw, *piece, *measures),
        A::MeasureWhole { width, height } => work::measure_whole(throw, *width, *height),

        A::Unpick { pieces, lap } => repair::unpick_laid_back(throw, pieces, *lap),
        A::Replace {
            piece,
            why,
            spare,
            denim,
            from,
        } => {
            let with = repair::With {
                spare: *spare,
                denim: *denim,
                from: *from,
            };
            repair::replace_laid_back(throw, *piece, *why, with)
        }
        A::Patch {
            piece,
            face,
            print,
            why,
        } => repair::patch(throw, *piece, *face, *print, *why),
        A::SetAside { piece } => repair::set_aside(throw, *piece),
        A::Spoil { piece, why } => repair::spoil(throw, *piece, *why),

        A::AddGarment {
            kind,
            size,
            knees,
            system,
            makes,
            name,
        } => {
            let start = GarmentStart {
                kind: *kind,
                size: *size,
                knees: knees.unwrap_or_default(),
                system: system.unwrap_or(System::Inch),
            };
            pile::add_garment(throw, start, *makes, name)
        }
        A::AddAll { heaps } => {
            let mut events = Vec::new();
            for heap in heaps {
                if !matches!(
                    heap,
                    A::AddGarment { .. } | A::AddCloth { .. } | A::AddPack { .. }
                ) {
                    return Err(Rejection::Pile);
                }
                events.extend(decide_for(&throw.after(&events), heap)?);
            }
            if events.is_empty() {
                return Err(Rejection::Nothing);
            }
            events.extend(faces::share_undecided(&throw.after(&events)));
            Ok(events)
        }
        A::AddCloth {
            width,
            length,
            edges,
            makes,
            name,
        } => pile::add_cloth(throw, (*width, *length), *edges, *makes, name),
        A::AddPack {
            side,
            count,
            makes,
            mixed,
            name,
        } => pile::add_pack(throw, (*side, *count), *makes, *mixed, name),
        A::SetPiece { n, index, outline } => pile::set_piece(throw, *n, *index, outline),
        A::AddPart { n, part } => pile::add_part(throw, *n, *part),
        A::MirrorPiece { n, index } => pile::mirror_piece(throw, *n, *index),
        A::WornSaid { n, index } => pile::worn_said(throw, *n, *index),
        A::CutBy { n, index, way } => pile::cut_by(throw, (*n, *index), *way),
        A::DescribeCloth {
            n,
            weight,
            system,
            stretch,
            washed,
            trimming,
            makes,
        } => {
            let said = pile::Description {
                weight,
                system: *system,
                stretch: *stretch,
                washed: *washed,
                trimming: *trimming,
                makes: *makes,
            };
            pile::describe_cloth(throw, *n, said)
        }
        A::TakeHeap { n } => pile::take_heap(throw, *n),
        A::CutPiece {
            n,
            index,
            squares,
            by_strip,
            pieced,
            strips,
            outline,
        } => {
            let came = pile::CameOut {
                squares: *squares,
                by_strip,
                pieced: pieced.unwrap_or_default(),
                strips: *strips,
            };
            pile::cut_piece(throw, (*n, *index), &came, outline.as_ref())
        }
        A::CutLines { n, index, lines } => pile::cut_lines(throw, (*n, *index), *lines),

        A::TryScrap { scrap } => scraps::try_scrap(throw, scrap),
        A::UseScrap { scrap } => scraps::use_scrap(throw, *scrap),
        A::SetPlate { opening } => scraps::set_plate(*opening),

        A::Note {
            text,
            piece,
            task,
            next,
        } => story::note(throw, text, *piece, *task, *next),
        A::Picture {
            photo,
            words,
            piece,
            task,
        } => story::picture(throw, photo, words, *piece, *task),
        A::Unpicture { photo } => story::unpicture(throw, photo),
    }
}
