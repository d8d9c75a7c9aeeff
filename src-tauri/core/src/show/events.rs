//! What happened, in words: one sentence for each event.

use crate::cloth::fabric::Face;
use crate::log::journal::{Entry, Journal, What};
use crate::measure::{Count, zero};
use crate::plan::Joining;
use crate::plan::assembly::Rect;
use crate::show::context::Context;
use crate::show::names;
use crate::throw::facts::Pieced;
use crate::throw::{Event, Throw};

pub(super) fn what(said: &What, journal: &Journal, context: Context<'_>) -> String {
    match said {
        What::Do(list) => events(list, journal.throw(), context),
        What::Undo(n) => say!(
            context,
            "history-undo",
            what = numbered(journal, *n, context)
        ),
        What::Redo(n) => say!(
            context,
            "history-redo",
            what = numbered(journal, *n, context)
        ),
        What::Past(past) => what(past, journal, context),
    }
}

fn numbered(journal: &Journal, n: u64, context: Context<'_>) -> String {
    let found = journal.entries().nth(n.saturating_sub(1) as usize);
    let said = found.map(|(e, _)| match &e.what {
        What::Past(past) => past.as_ref(),
        what => what,
    });
    match said {
        Some(What::Do(list)) => events(list, journal.throw(), context),
        _ => String::new(),
    }
}

/// One entry in words.
pub(super) fn entry(entry: &Entry, throw: &Throw, context: Context<'_>) -> String {
    match &entry.what {
        What::Do(list) => events(list, throw, context),
        _ => String::new(),
    }
}

/// Whether a join is lapped or seamed, as the words files tell the two apart.
pub(super) fn joined(joining: Joining) -> &'static str {
    match joining {
        Joining::Lapped => "lapped",
        Joining::Seamed | Joining::Exposed => "seamed",
    }
}

/// Events in words. Of a layout that is laid out it is told what was laid, not for how many it was
/// looked: there may be fewer.
pub(super) fn events(events: &[Event], throw: &Throw, context: Context<'_>) -> String {
    let told = |e: &&Event| events.len() == 1 || !matches!(e, Event::Wished { .. });
    let told = events.iter().filter(told);
    let said: Vec<String> = told.map(|e| event(e, throw, context)).collect();
    context.words.list("list-long", said)
}

/// `pair 3·5 + 3·6`, or `24 pairs`.
fn pieces(list: &[Rect], throw: &Throw, context: Context<'_>) -> String {
    match list {
        [one] => names::piece(throw, *one, context),
        [first, ..] => names::count(throw.kind(*first), list.len(), context),
        [] => String::new(),
    }
}

pub(super) fn event(event: &Event, throw: &Throw, context: Context<'_>) -> String {
    match event {
        Event::Begun {
            name,
            plan,
            after: Some(after),
            ..
        } => say!(
            context,
            "did-begin-after",
            name = name.as_str(),
            grid = say!(context, "grid", across = plan.across, down = plan.down),
            after = after.name.as_str()
        ),
        Event::Begun { name, plan, .. } => say!(
            context,
            "did-begin",
            name = name.as_str(),
            grid = say!(context, "grid", across = plan.across, down = plan.down)
        ),
        Event::Renamed { name } => say!(context, "did-rename", name = name.as_str()),
        Event::Archived { archived: true } => say!(context, "did-archive"),
        Event::Archived { archived: false } => say!(context, "did-unarchive"),
        Event::PlanChanged { plan, .. } => say!(
            context,
            "did-change-plan",
            grid = say!(context, "grid", across = plan.across, down = plan.down),
            joining = joined(plan.joining),
            lap = context.length(plan.lap),
            trim = context.length(plan.target())
        ),
        Event::FacesChanged { faces, .. } => match faces.as_slice() {
            [(piece, cover)] => {
                let cloth = |face| {
                    let print = cover
                        .on(face)
                        .and_then(|p| throw.prints.get(usize::from(p)));
                    print.map_or_else(|| say!(context, "bare"), |p| p.name.clone())
                };
                say!(
                    context,
                    "did-face",
                    piece = names::piece(throw, *piece, context),
                    front = cloth(Face::Front),
                    back = cloth(Face::Back)
                )
            }
            _ => say!(context, "did-faces", n = faces.len()),
        },
        Event::ClothChanged { .. } => say!(context, "did-cloth"),
        Event::Done {
            task, pieces: list, ..
        } => {
            say!(
                context,
                format!("did-{}", task.key()),
                piece = pieces(list, throw, context)
            )
        }
        Event::SparesUsed { pieces: list, .. } => {
            say!(
                context,
                "did-use-spares",
                piece = pieces(list, throw, context)
            )
        }
        Event::SquareMoved { from, to } => say!(
            context,
            "did-move-square",
            from = names::piece(throw, *from, context),
            to = names::piece(throw, *to, context)
        ),
        Event::SparesCounted { spares } => say!(context, "did-count-spares", n = *spares),
        Event::Measured {
            piece,
            width,
            height,
        } => say!(
            context,
            "did-measure",
            piece = names::piece(throw, *piece, context),
            size = context.by(*width, *height)
        ),
        Event::SquaredUp {
            pieces: list,
            unmeasured,
        } => {
            let rects: Vec<Rect> = list.iter().map(|(p, _, _)| *p).collect();
            let mut sizes = list.iter().map(|(_, w, h)| (*w, *h));
            let first = sizes.next();
            let size = match first.filter(|first| sizes.all(|other| other == *first)) {
                Some((width, height)) => context.by(width, height).text,
                None => say!(context, "sizes-differ"),
            };
            let said = say!(
                context,
                "did-square-up",
                piece = pieces(&rects, throw, context),
                size = size
            );
            match unmeasured {
                Some(n) => say!(context, "did-unmeasured", what = said, n = *n),
                None => said,
            }
        }
        Event::Outlined { piece, .. } => {
            say!(
                context,
                "did-outline",
                piece = names::piece(throw, *piece, context)
            )
        }
        Event::LapsMarked { laps } => match laps.as_slice() {
            [(a, b, Some(lap))] => say!(
                context,
                "did-mark-lap",
                a = names::piece(throw, *a, context),
                b = names::piece(throw, *b, context),
                lap = context.length(*lap),
                joining = joined(throw.plan.joining)
            ),
            _ => say!(
                context,
                "did-mark-laps",
                n = laps.len(),
                joining = joined(throw.plan.joining)
            ),
        },
        Event::Unpicked {
            pieces: list,
            glued,
            ..
        } => {
            let length = list.iter().fold(zero(), |sum, (_, l)| sum + *l);
            let first = list.first();
            say!(
                context,
                if *glued { "did-lift" } else { "did-unpick" },
                piece = first.map_or_else(String::new, |(p, _)| names::piece(throw, *p, context)),
                more = list.len().saturating_sub(1),
                length = context.length(length)
            )
        }
        Event::Patched { piece, why, .. } => say!(
            context,
            "did-patch",
            piece = names::piece(throw, *piece, context),
            why = context.say(&format!("mishap-{}", why.key()), &[])
        ),
        Event::LaidOn { squares } => {
            let on = squares.iter().any(|(_, _, side)| side.is_some());
            let told = squares.iter().filter(|(_, _, side)| side.is_some() == on);
            let list: Vec<Rect> = told.map(|(square, _, _)| *square).collect();
            let key = if on { "did-lay-on" } else { "did-not-lay-on" };
            context.say(key, &[("piece", pieces(&list, throw, context).into())])
        }
        Event::Moved { moves } => match moves.first() {
            Some((from, to)) => say!(
                context,
                "did-move",
                from = names::piece(throw, *from, context),
                to = names::piece(throw, *to, context),
                n = moves.len()
            ),
            None => String::new(),
        },
        Event::Turned { pieces: list } => match list.as_slice() {
            [(piece, quarters)] => say!(
                context,
                "did-turn",
                piece = names::piece(throw, *piece, context),
                quarters = i64::from(*quarters)
            ),
            _ => say!(context, "did-turn-several", n = list.len()),
        },
        Event::Flipped { pieces: list } => {
            say!(context, "did-flip", pieces = pieces(list, throw, context))
        }
        Event::Pinned {
            pieces: list,
            pinned,
        } => {
            let list = pieces(list, throw, context);
            match pinned {
                true => say!(context, "did-pin-place", pieces = list),
                false => say!(context, "did-let-go", pieces = list),
            }
        }
        Event::Wished { wishes } if wishes.front == 0 && wishes.back == 0 => {
            say!(context, "did-wish-bare")
        }
        Event::Wished { wishes } => {
            say!(
                context,
                "did-wish",
                front = wishes.front,
                back = wishes.back
            )
        }
        Event::SetAside { pieces: list, .. } => {
            say!(
                context,
                "did-set-aside",
                piece = pieces(list, throw, context)
            )
        }
        Event::WholeMeasured { width, height } => {
            say!(
                context,
                "did-measure-whole",
                size = context.by(*width, *height)
            )
        }
        Event::Spoilt { piece, why, .. } => say!(
            context,
            "did-spoil",
            piece = names::piece(throw, *piece, context),
            why = context.say(&format!("mishap-{}", why.key()), &[])
        ),
        Event::HeapSet { heap, .. } => say!(context, "did-heap", name = heap.name()),
        Event::HeapTaken { .. } => say!(context, "did-take-heap"),
        Event::PieceCut {
            n,
            squares,
            strips,
            pieced,
            ..
        } => {
            let pieced = pieced.as_ref().map_or(Count::NONE, Pieced::count);
            let name = throw.pile.get(n).map_or("", |h| h.name());
            let strips = strips.map_or(Count::NONE, |s| s.count);
            say!(
                context,
                "did-cut-piece",
                name = name,
                n = *squares,
                parts = names::parted(squares.get(), pieced.get(), context),
                strips = strips
            )
        }
        Event::PieceBegun { n, lines, .. } => {
            let name = throw.pile.get(n).map_or("", |h| h.name());
            say!(context, "did-cut-lines", name = name, n = *lines)
        }
        Event::ScrapTried { scrap } => say!(
            context,
            "did-scrap",
            joining = joined(scrap.joining),
            lap = context.length(scrap.lap),
            verdict = context.say(&format!("scrap-{}", scrap.verdict.key()), &[])
        ),
        Event::PlateMeasured { opening } => {
            say!(context, "did-plate", opening = context.needle(*opening))
        }
        Event::Gathered { have: true, .. } => say!(context, "did-gather"),
        Event::Gathered { have: false, .. } => say!(context, "did-ungather"),
        Event::Noted {
            text, next: true, ..
        } => say!(context, "did-note-next", text = text.as_str()),
        Event::Noted { text, .. } => say!(context, "did-note", text = text.as_str()),
        Event::Pictured { words, .. } if words.is_empty() => say!(context, "did-picture"),
        Event::Pictured { words, .. } => {
            say!(context, "did-picture-words", words = words.as_str())
        }
        Event::Unpictured { .. } => say!(context, "did-unpicture"),
    }
}
