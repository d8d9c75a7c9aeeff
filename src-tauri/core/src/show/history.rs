//! The dated history in plain words.

use super::{Lens, head, names};
use crate::assembly::Rect;
use crate::faces::Face;
use crate::journal::{Entry, Journal, What};
use crate::measure::zero;
use crate::throw::{Event, Throw};
use crate::view::{HistoryRow, HistoryView};

/// Newest first, `most` lines at most.
pub(super) fn history(journal: &Journal, most: u32, lens: Lens<'_>) -> HistoryView {
    let most = most.clamp(1, 2000) as usize;
    HistoryView {
        head: head(journal, lens),
        rows: rows(journal, most, lens),
        more: journal.len() > most,
    }
}

/// The newest entries, `most` at most, newest first.
pub(super) fn rows(journal: &Journal, most: usize, lens: Lens<'_>) -> Vec<HistoryRow> {
    let entries = journal.entries().rev().take(most);
    entries
        .map(|(e, stands)| HistoryRow {
            n: e.n as u32,
            at: e.at,
            text: what(&e.what, journal, lens),
            stands: stands || matches!(e.what, What::Undo(_) | What::Redo(_)),
        })
        .collect()
}

fn what(said: &What, journal: &Journal, lens: Lens<'_>) -> String {
    match said {
        What::Do(list) => events(list, journal.throw(), lens),
        What::Undo(n) => say!(lens, "history-undo", what = numbered(journal, *n, lens)),
        What::Redo(n) => say!(lens, "history-redo", what = numbered(journal, *n, lens)),
        What::Past(past) => what(past, journal, lens),
    }
}

pub(super) fn numbered(journal: &Journal, n: u64, lens: Lens<'_>) -> String {
    let found = journal.entries().nth(n.saturating_sub(1) as usize);
    let said = found.map(|(e, _)| match &e.what {
        What::Past(past) => past.as_ref(),
        what => what,
    });
    match said {
        Some(What::Do(list)) => events(list, journal.throw(), lens),
        _ => String::new(),
    }
}

/// One entry in words.
pub(super) fn entry(entry: &Entry, throw: &Throw, lens: Lens<'_>) -> String {
    match &entry.what {
        What::Do(list) => events(list, throw, lens),
        _ => String::new(),
    }
}

/// Events in words.
pub(super) fn events(events: &[Event], throw: &Throw, lens: Lens<'_>) -> String {
    let said: Vec<String> = events.iter().map(|e| event(e, throw, lens)).collect();
    lens.words.list("list-long", said)
}

/// `pair 3·5 + 3·6`, or `24 pairs`.
fn pieces(list: &[Rect], throw: &Throw, lens: Lens<'_>) -> String {
    match list {
        [one] => names::piece(throw, *one, lens),
        [first, ..] => names::count(throw.kind(*first), list.len(), lens),
        [] => String::new(),
    }
}

pub(super) fn event(event: &Event, throw: &Throw, lens: Lens<'_>) -> String {
    match event {
        Event::Begun {
            name,
            plan,
            after: Some(after),
            ..
        } => say!(
            lens,
            "did-begin-after",
            name = name.as_str(),
            grid = say!(lens, "grid", across = plan.across, down = plan.down),
            after = after.name.as_str()
        ),
        Event::Begun { name, plan, .. } => say!(
            lens,
            "did-begin",
            name = name.as_str(),
            grid = say!(lens, "grid", across = plan.across, down = plan.down)
        ),
        Event::Renamed { name } => say!(lens, "did-rename", name = name.as_str()),
        Event::Archived { archived: true } => say!(lens, "did-archive"),
        Event::Archived { archived: false } => say!(lens, "did-unarchive"),
        Event::PlanChanged { plan, .. } => say!(
            lens,
            "did-change-plan",
            grid = say!(lens, "grid", across = plan.across, down = plan.down),
            lap = lens.length(plan.lap),
            trim = lens.length(plan.target())
        ),
        Event::FacesChanged { faces, .. } => match faces.as_slice() {
            [(piece, cover)] => {
                let cloth = |face| {
                    let print = cover
                        .on(face)
                        .and_then(|p| throw.prints.get(usize::from(p)));
                    print.map_or_else(|| say!(lens, "bare"), |p| p.name.clone())
                };
                say!(
                    lens,
                    "did-face",
                    piece = names::piece(throw, *piece, lens),
                    front = cloth(Face::Front),
                    back = cloth(Face::Back)
                )
            }
            _ => say!(lens, "did-faces", n = faces.len()),
        },
        Event::ClothChanged { .. } => say!(lens, "did-cloth"),
        Event::Done {
            task, pieces: list, ..
        } => {
            say!(
                lens,
                format!("did-{}", task.key()),
                piece = pieces(list, throw, lens)
            )
        }
        Event::SparesUsed { pieces: list } => {
            say!(lens, "did-use-spares", piece = pieces(list, throw, lens))
        }
        Event::SparesCounted { spares } => say!(lens, "did-count-spares", n = *spares),
        Event::Measured {
            piece,
            width,
            height,
        } => say!(
            lens,
            "did-measure",
            piece = names::piece(throw, *piece, lens),
            size = lens.by(*width, *height)
        ),
        Event::SquaredUp { pieces: list } => {
            let rects: Vec<Rect> = list.iter().map(|(p, _, _)| *p).collect();
            let size = list
                .first()
                .map(|(_, w, h)| lens.by(*w, *h).text)
                .unwrap_or_default();
            say!(
                lens,
                "did-square-up",
                piece = pieces(&rects, throw, lens),
                size = size
            )
        }
        Event::Outlined { piece, .. } => {
            say!(
                lens,
                "did-outline",
                piece = names::piece(throw, *piece, lens)
            )
        }
        Event::LapsMarked { laps } => match laps.as_slice() {
            [(a, b, Some(lap))] => say!(
                lens,
                "did-mark-lap",
                a = names::piece(throw, *a, lens),
                b = names::piece(throw, *b, lens),
                lap = lens.length(*lap)
            ),
            _ => say!(lens, "did-mark-laps", n = laps.len()),
        },
        Event::Unpicked { pieces: list } => {
            let rects: Vec<Rect> = list.iter().map(|(p, _)| *p).collect();
            let length = list.iter().fold(zero(), |sum, (_, l)| sum + *l);
            say!(
                lens,
                "did-unpick",
                piece = rects
                    .first()
                    .map_or_else(String::new, |p| names::piece(throw, *p, lens)),
                n = rects.len(),
                length = lens.length(length)
            )
        }
        Event::Patched { piece, why } => say!(
            lens,
            "did-patch",
            piece = names::piece(throw, *piece, lens),
            why = lens.say(&format!("mishap-{}", why.key()), &[])
        ),
        Event::Moved { moves } => match moves.first() {
            Some((from, to)) => say!(
                lens,
                "did-move",
                from = names::piece(throw, *from, lens),
                to = names::piece(throw, *to, lens),
                n = moves.len()
            ),
            None => String::new(),
        },
        Event::Turned { pieces: list } => match list.as_slice() {
            [(piece, quarters)] => say!(
                lens,
                "did-turn",
                piece = names::piece(throw, *piece, lens),
                quarters = i64::from(*quarters)
            ),
            _ => say!(lens, "did-turn-several", n = list.len()),
        },
        Event::Flipped { pieces: list } => {
            say!(lens, "did-flip", pieces = pieces(list, throw, lens))
        }
        Event::Pinned {
            pieces: list,
            pinned,
        } => {
            let list = pieces(list, throw, lens);
            match pinned {
                true => say!(lens, "did-pin-place", pieces = list),
                false => say!(lens, "did-let-go", pieces = list),
            }
        }
        Event::Wished { wishes } if wishes.front == 0 && wishes.back == 0 => {
            say!(lens, "did-wish-bare")
        }
        Event::Wished { wishes } => {
            say!(lens, "did-wish", front = wishes.front, back = wishes.back)
        }
        Event::SetAside { pieces: list, .. } => {
            say!(lens, "did-set-aside", piece = pieces(list, throw, lens))
        }
        Event::WholeMeasured { width, height } => {
            say!(lens, "did-measure-whole", size = lens.by(*width, *height))
        }
        Event::Spoilt { piece, why, .. } => say!(
            lens,
            "did-spoil",
            piece = names::piece(throw, *piece, lens),
            why = lens.say(&format!("mishap-{}", why.key()), &[])
        ),
        Event::HeapSet { heap, .. } => say!(lens, "did-heap", name = heap.name()),
        Event::HeapTaken { .. } => say!(lens, "did-take-heap"),
        Event::PieceCut { n, squares, .. } => {
            let name = throw.pile.get(n).map_or("", |h| h.name());
            say!(lens, "did-cut-piece", name = name, n = *squares)
        }
        Event::ScrapTried { scrap } => say!(
            lens,
            "did-scrap",
            lap = lens.length(scrap.lap),
            verdict = lens.say(&format!("scrap-{}", scrap.verdict.key()), &[])
        ),
        Event::PlateMeasured { opening } => {
            say!(lens, "did-plate", opening = lens.length(*opening))
        }
        Event::Gathered { have: true, .. } => say!(lens, "did-gather"),
        Event::Gathered { have: false, .. } => say!(lens, "did-ungather"),
        Event::Noted {
            text, next: true, ..
        } => say!(lens, "did-note-next", text = text.as_str()),
        Event::Noted { text, .. } => say!(lens, "did-note", text = text.as_str()),
        Event::Pictured { words, .. } if words.is_empty() => say!(lens, "did-picture"),
        Event::Pictured { words, .. } => {
            say!(lens, "did-picture-words", words = words.as_str())
        }
        Event::Unpictured { .. } => say!(lens, "did-unpicture"),
    }
}
