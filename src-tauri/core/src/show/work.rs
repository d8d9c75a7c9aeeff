//! The step screen: the one thing to do next, and what else could be done.
//!
//! Everything that can be done now falls into batches of one task and one kind of
//! piece. The batch in hand is the one the maker picked, or else the earliest: squares
//! before pairs before fours before larger pieces, and within those in the order work
//! usually goes. A batch that is still cooling steps back while anything else is ready.

use super::{Lens, head, lessons, measuring, names, opening, pictures, swatches};
use crate::cloth::fabric::Face;
use crate::cloth::pile::Use;
use crate::command::Action;
use crate::fitting::squaring;
use crate::log::journal::Journal;
use crate::measure::{Count, Length, zero};
use crate::plan::assembly::{Kind, Rect};
use crate::plan::binding::Side;
use crate::plan::{Joining, Stitch, fringe, take};
use crate::throw::tasks::{Station, Task};
use crate::throw::wishes::Wishes;
use crate::throw::{Throw, Time};
use crate::view::{Button, Card, CautionNote, FacesAsk, Figure, Offer, StationTab, WorkView};

/// One task to do to some pieces of one kind.
struct Batch {
    task: Task,
    kind: Kind,
    /// The first of them.
    piece: Rect,
    count: usize,
    /// When the first of them has cooled, for a cooling task.
    cool_at: Option<Time>,
}

impl Batch {
    fn waiting(&self, now: Time) -> bool {
        self.cool_at.is_some_and(|at| at > now)
    }
}

/// When a piece now cooling may be lifted.
fn cool_at(throw: &Throw, piece: Rect) -> Option<Time> {
    let work = throw.work(piece)?;
    let pressed = [Task::PressLap, Task::PressCover]
        .iter()
        .filter_map(|t| work.when(*t))
        .max()?;
    Some(pressed.saturating_add(Time::from(throw.plan.cooling_minutes) * 60_000))
}

fn batches(throw: &Throw) -> Vec<Batch> {
    let ready = throw.standing().ready().iter();
    ready
        .filter_map(|((_, task), numbers)| {
            let mut pieces = numbers
                .iter()
                .filter_map(|n| throw.assembly().numbered(*n as usize));
            let piece = match task.is_cooling() {
                // What was pressed first has cooled first.
                true => pieces.min_by_key(|p| cool_at(throw, *p)),
                false => pieces.next(),
            }?;
            Some(Batch {
                task: *task,
                kind: throw.kind(piece),
                piece,
                count: numbers.len(),
                cool_at: task.is_cooling().then(|| cool_at(throw, piece)).flatten(),
            })
        })
        .collect()
}

/// The step screen.
pub(super) fn work(
    journal: &Journal,
    station: Option<Station>,
    asked: Option<(Task, Kind)>,
    lens: Lens<'_>,
) -> WorkView {
    let throw = journal.throw();
    let batches = batches(throw);
    let here = |b: &&Batch| station.is_none_or(|s| b.task.station() == s);
    let chosen = batches
        .iter()
        .find(|b| asked == Some((b.task, b.kind)))
        .or_else(|| batches.iter().filter(here).find(|b| !b.waiting(lens.now)))
        .or_else(|| batches.iter().filter(here).min_by_key(|b| b.cool_at));
    let ask = ask(throw, lens);
    // Once lapped a square keeps its faces, so no lap before they are settled.
    let chosen = chosen.filter(|b| ask.is_none() || !matches!(b.task, Task::Dot | Task::Pin));
    let offers = batches
        .iter()
        .filter(|b| chosen.is_none_or(|c| (c.task, c.kind) != (b.task, b.kind)))
        .map(|b| Offer {
            task: b.task,
            kind: b.kind,
            station: b.task.station(),
            title: title(throw, b, lens),
            count: names::count(b.kind, b.count, lens),
            waiting: b.waiting(lens.now),
        })
        .collect();
    let rest = (chosen.is_none() && ask.is_none()).then(|| {
        match (batches.is_empty(), station, throw.measured_whole()) {
            (false, Some(s), _) => say!(lens, "rest-station", station = station_name(s, lens)),
            (_, _, Some(whole)) => say!(
                lens,
                "rest-measured",
                size = lens.by(whole.size.width, whole.size.height),
                n = whole.washes
            ),
            _ => {
                let size = throw.finished();
                say!(
                    lens,
                    "rest-finished",
                    size = lens.by(size.width, size.height)
                )
            }
        }
    });
    let ended = (chosen.is_none() && batches.is_empty() && ask.is_none())
        .then(|| Face::BOTH.map(|face| pictures::thumbnail(throw, face, lens)));
    WorkView {
        ask,
        head: head(journal, lens),
        stations: stations(&batches, station, lens),
        card: chosen.map(|b| {
            Box::new(Card {
                lessons: lessons::at_step(journal.throw(), b.task, lens),
                ..card(throw, b, lens)
            })
        }),
        offers,
        rest,
        ended,
        prints: swatches(journal, lens),
    }
}

/// Which squares get fabric, while that was never said and can still be chosen.
fn ask(throw: &Throw, lens: Lens<'_>) -> Option<FacesAsk> {
    let laid = Face::BOTH.iter().any(|f| throw.covered(*f) > 0);
    let settled = throw.prints.is_empty() || throw.wishes.is_some() || laid;
    let squares = || throw.assembly().whole().squares();
    if settled || squares().all(|s| throw.is_joined(s)) {
        return None;
    }
    let mut said = vec![say!(lens, "ask-faces-why", n = throw.prints.len())];
    if let [first, _, ..] = throw.denims.as_slice()
        && squares().all(|s| throw.cover(s).denim == 0)
    {
        let name = first.name.as_str();
        said.push(say!(lens, "ask-faces-denim", denim = name));
    }
    Some(FacesAsk {
        title: say!(lens, "ask-faces"),
        text: lens.words.list("sentences", said),
        bare: Button {
            label: say!(lens, "ask-faces-bare"),
            action: Action::Wish {
                wishes: Wishes::default(),
            },
        },
    })
}

pub(super) fn station_name(station: Station, lens: Lens<'_>) -> String {
    lens.say(&format!("station-{}", station.key()), &[])
}

fn stations(batches: &[Batch], chosen: Option<Station>, lens: Lens<'_>) -> Vec<StationTab> {
    let places = std::iter::once(None).chain(Station::ALL.map(Some));
    places
        .map(|station| {
            let here = batches
                .iter()
                .filter(|b| station.is_none_or(|s| b.task.station() == s));
            let ready: usize = here.map(|b| b.count).sum();
            let label = match station {
                Some(s) => station_name(s, lens),
                None => say!(lens, "station-any"),
            };
            StationTab {
                station,
                spoken: say!(lens, "station-spoken", station = label.as_str(), n = ready),
                label,
                ready: ready as u32,
                chosen: station == chosen,
            }
        })
        .collect()
}

/// What to do, for this batch: the binding's wash says which wash it is.
fn title(throw: &Throw, batch: &Batch, lens: Lens<'_>) -> String {
    let times = |task| {
        let work = throw.work(batch.piece);
        work.map_or(0, |w| w.done.iter().filter(|(t, _)| *t == task).count()) + 1
    };
    match batch.task {
        Task::Wash | Task::Clip => say!(
            lens,
            format!("title-{}", batch.task.key()),
            n = times(batch.task),
            all = throw.plan.washes
        ),
        Task::Dot | Task::Stitch | Task::Pin | Task::PressLap | Task::CoolLap | Task::PressSeam => {
            say!(
                lens,
                format!("title-{}", batch.task.key()),
                kind = names::key(batch.kind)
            )
        }
        task => lens.say(&format!("title-{}", task.key()), &[]),
    }
}

fn card(throw: &Throw, batch: &Batch, lens: Lens<'_>) -> Card {
    let task = batch.task;
    let piece = batch.piece;
    let (total, done) = throw.standing().tally(batch.kind, task);
    let (total, done) = (total as usize, done as usize);
    // A piece to trim again was done once.
    let left = (total - done.min(total)).max(batch.count);
    let remain = match batch.kind {
        Kind::Whole => String::new(),
        kind if batch.count < left => say!(
            lens,
            "remain-some-ready",
            left = names::count(kind, left, lens),
            ready = batch.count
        ),
        kind => say!(
            lens,
            "remain",
            left = names::count(kind, left, lens),
            done = done
        ),
    };
    let square_at_hand = piece.is_square() && throw.has(piece, Task::Cut);
    Card {
        task,
        kind: batch.kind,
        station: task.station(),
        station_name: station_name(task.station(), lens),
        title: title(throw, batch, lens),
        piece,
        which: names::piece(throw, piece, lens),
        which_spoken: names::spoken(throw, piece, lens),
        figures: figures(throw, task, piece, lens),
        how: how(throw, task, piece, lens),
        remain,
        caution: task.caution().map(|caution| {
            let key = caution.key();
            CautionNote {
                caution,
                title: lens.say(&format!("caution-{key}-title"), &[]),
                text: lens.say(&format!("caution-{key}"), &[]),
            }
        }),
        open: opening::first(throw, piece, lens)
            .filter(|_| piece.is_square() || matches!(task, Task::Dot | Task::Pin)),
        picture: pictures::step(throw, task, piece, lens),
        ticks: ticks(throw, batch, lens),
        cool_from: batch
            .cool_at
            .map(|at| at.saturating_sub(Time::from(throw.plan.cooling_minutes) * 60_000)),
        cool_at: batch.cool_at,
        measure: (task == Task::SquareUp && !throw.trims_again(piece)).then_some(piece),
        measure_whole: matches!(task, Task::Wash | Task::Clip),
        off: (square_at_hand || throw.assembly().join(piece).is_some())
            .then_some(piece)
            .filter(|p| p.count() <= 4),
        lessons: Vec::new(),
        notes: lessons::notes_at(throw, task, piece, lens),
    }
}

/// How this is done to this very piece, a sentence each.
fn how(throw: &Throw, task: Task, piece: Rect, lens: Lens<'_>) -> Vec<String> {
    let mut out = special(throw, task, piece, lens);
    let work = throw.work(piece);
    let measured = work.and_then(|w| w.measured);
    if let (Task::SquareUp, Some(size)) = (task, measured) {
        if work.is_some_and(|w| w.outline.is_none()) {
            return measuring::verdict_of(throw, piece, size, "short-open", lens);
        }
        out.extend(measuring::made_up(throw, piece, None, "short-open", lens));
    }
    let usual = match (task, throw.assembly().join(piece)) {
        (Task::Dot, Some(join)) => say!(
            lens,
            "how-dot-at",
            lap = lens.length(throw.made(piece).lap),
            over = names::piece(throw, join.first, lens),
            under = names::piece(throw, join.second, lens)
        ),
        _ => lens.say(&how_key(throw, task, piece), &[]),
    };
    out.extend(usual.lines().map(str::to_string));
    out
}

/// The sentences that say how; a seam is pressed and pinned unlike a lap.
pub(super) fn how_key(throw: &Throw, task: Task, piece: Rect) -> String {
    let made = throw.made(piece);
    match (task, made.joining, throw.plan.stitch) {
        (Task::Pin, Joining::Exposed, _) => "how-pin-exposed".into(),
        (Task::Stitch, Joining::Lapped, Stitch::Twin { .. }) => "how-stitch-twin".into(),
        (Task::Stitch, Joining::Lapped, _) => "how-stitch-lap".into(),
        (Task::Stitch, _, _) => "how-stitch-seam".into(),
        (Task::SquareUp, _, _)
            if throw
                .work(piece)
                .is_none_or(|w| w.measured.or(w.squared).is_none()) =>
        {
            "how-square-up-measure".into()
        }
        _ => format!("how-{}", task.key()),
    }
}

/// Where the binding begins and its joins come, and how far they keep from the laps.
pub(super) fn bound(throw: &Throw, lens: Lens<'_>) -> (Vec<String>, String) {
    let size = throw.finished();
    let found = crate::plan::binding::layout(&throw.plan, size.width, size.height, lens.ruler);
    let place = |(side, along): &(Side, Length)| {
        lens.say(
            &format!("bound-{}", side.key()),
            &[("along", lens.length(*along).into())],
        )
    };
    let mut places = found.joins.iter().map(place);
    let start = places.next().unwrap_or_default();
    let rest: Vec<String> = places.collect();
    let mut how = vec![say!(lens, "bound-start", place = start)];
    if !rest.is_empty() {
        how.push(say!(
            lens,
            "bound-joins",
            places = lens.words.list("list-long", rest)
        ));
    }
    (
        how,
        say!(lens, "bound-clear", clear = lens.length(found.clear)),
    )
}

/// What is special about this piece: a part to do again, a lap narrower in places.
pub(super) fn special(throw: &Throw, task: Task, piece: Rect, lens: Lens<'_>) -> Vec<String> {
    let mut out = Vec::new();
    if matches!(task, Task::JoinBinding | Task::GlueBinding) {
        let (mut how, clear) = bound(throw, lens);
        how.push(clear);
        return how;
    }
    if task == Task::Cut {
        out.extend(denims_to_cut(throw, lens));
        out.extend(cut_from(throw, piece, lens));
    }
    if task == Task::Wash && throw.wholes.is_empty() {
        // What washing does is told only against a measure before it.
        out.push(match throw.washes() {
            0 => say!(lens, "special-measure-first"),
            _ => say!(lens, "special-measure-unknown"),
        });
    }
    if let (Task::SquareUp, Some(squared)) = (task, throw.work(piece).and_then(|w| w.squared)) {
        let (size, target) = (squared, throw.target(piece));
        out.push(say!(
            lens,
            "special-trim-again",
            size = lens.by(size.width, size.height),
            target = lens.by(target.width, target.height)
        ));
    }
    if !matches!(task, Task::Dot | Task::Pin | Task::Stitch) {
        return out;
    }
    if let Some(opened) = throw.work(piece).and_then(|w| w.opened) {
        out.push(say!(lens, "special-opened", length = lens.length(opened)));
    }
    let spots = throw
        .assembly()
        .join(piece)
        .map_or_else(Vec::new, |j| throw.spots(j));
    for (a, b) in spots {
        if let Some(lap) = throw.marked(a, b) {
            out.push(say!(
                lens,
                "special-lap",
                a = names::piece(throw, a, lens),
                b = names::piece(throw, b, lens),
                lap = lens.length(lap)
            ));
        }
    }
    out
}

/// Whether a task is the same to two pieces of one batch: what a tick for several must
/// not mix up unsaid.
fn alike(throw: &Throw, task: Task, a: Rect, b: Rect) -> bool {
    let cover = |face| throw.cover(a).on(face) == throw.cover(b).on(face);
    match task {
        Task::CoverFront => cover(Face::Front),
        Task::CoverBack => cover(Face::Back),
        Task::SquareUp => {
            let measured = |piece| throw.work(piece).and_then(|w| w.measured);
            measured(a) == measured(b)
        }
        Task::Dot | Task::Pin | Task::PressLap | Task::Stitch => {
            let opened = |piece| throw.work(piece).and_then(|w| w.opened);
            let marked = |piece| -> Vec<Option<Length>> {
                let spots = throw.assembly().join(piece).map(|j| throw.spots(j));
                let spots = spots.into_iter().flatten();
                spots.map(|(a, b)| throw.marked(a, b)).collect()
            };
            throw.made(a).lap == throw.made(b).lap
                && opened(a) == opened(b)
                && marked(a) == marked(b)
        }
        _ => true,
    }
}

/// How many squares are still to be cut from each denim, where the faces name more than one.
pub(super) fn denims_to_cut(throw: &Throw, lens: Lens<'_>) -> Option<String> {
    let open = throw.uncut_by_denim();
    let wanted = throw.denims.iter().zip(open).filter(|(_, n)| *n > 0);
    let named =
        wanted.map(|(denim, n)| say!(lens, "cut-of-denim", n = n, denim = denim.name.as_str()));
    let named: Vec<String> = named.collect();
    (named.len() > 1).then(|| {
        let list = lens.words.list("list-short", named);
        say!(lens, "cut-denims", list = list)
    })
}

/// What on the pile is of this square's denim and not cut up yet, if that was said.
fn cut_from(throw: &Throw, piece: Rect, lens: Lens<'_>) -> Option<String> {
    let denim = Some(throw.cover(piece).denim);
    let of_it = throw
        .pile
        .values()
        .filter(|h| h.makes == Use::Denim { denim } && h.counted.contains(&None));
    let names: Vec<String> = of_it.map(|h| h.name().to_string()).collect();
    (!names.is_empty()).then(|| {
        let heaps = lens.words.list("list-short", names);
        say!(lens, "cut-from", heaps = heaps)
    })
}

fn ticks(throw: &Throw, batch: &Batch, lens: Lens<'_>) -> Vec<Button> {
    let (task, n) = (batch.task, batch.count);
    let past = lens.say(&format!("past-{}", task.key()), &[]);
    let alike: Vec<Rect> = crate::command::ready_for(throw, batch.kind, task)
        .filter(|p| alike(throw, task, batch.piece, *p))
        .collect();
    let differ = alike.len() < n;
    let mut out = vec![Button {
        label: match n {
            1 => lens.say(&format!("tick-{}", task.key()), &[]),
            _ => say!(lens, "tick-this", past = past.as_str()),
        },
        action: Action::Tick {
            task,
            pieces: vec![batch.piece],
        },
    }];
    if differ && alike.len() > 1 {
        let lap = throw.made(batch.piece).lap;
        let label = match task {
            Task::Dot | Task::Pin | Task::PressLap | Task::Stitch => say!(
                lens,
                "tick-alike-at",
                n = alike.len(),
                past = past.as_str(),
                lap = lens.length(lap)
            ),
            _ => say!(lens, "tick-alike", n = alike.len(), past = past.as_str()),
        };
        let pieces = alike;
        out.push(Button {
            label,
            action: Action::Tick { task, pieces },
        });
    }
    let mut more = |count: usize, key: &str| {
        out.push(Button {
            label: say!(lens, key, n = count, past = past.as_str()),
            action: Action::TickNext {
                task,
                kind: batch.kind,
                count: Count::at_most(count as u32),
            },
        });
    };
    if n > 8 && !differ {
        more(8, "tick-some");
    }
    if n > 1 {
        more(
            n,
            if differ {
                "tick-all-differ"
            } else {
                "tick-all"
            },
        );
    }
    if task == Task::Cut && throw.spares > 0 {
        out.push(Button {
            label: say!(lens, "tick-spare", n = throw.spares),
            action: Action::UseSpares {
                pieces: vec![batch.piece],
            },
        });
    }
    out
}

pub(super) fn figures(throw: &Throw, task: Task, piece: Rect, lens: Lens<'_>) -> Vec<Figure> {
    let mut out = Vec::new();
    let plan = &throw.plan;
    let made = throw.made(piece);
    let mut add = |key: &str, value| {
        out.push(Figure {
            label: lens.say(&format!("figure-{key}"), &[]),
            value,
        });
    };
    // Of a join that was opened only that much is to be made again.
    let opened = throw.work(piece).and_then(|w| w.opened);
    let seam = match opened {
        Some(_) => "again",
        None => "seam",
    };
    let seam_length = |throw: &Throw| -> Length {
        if let Some(opened) = opened {
            return opened;
        }
        // As its parts are: a block is trimmed only once it is sewn.
        let Some(join) = throw.assembly().join(piece) else {
            return throw.size(piece).height;
        };
        let [a, b] = [join.first, join.second].map(|part| throw.size(part));
        match join.seam {
            crate::plan::assembly::Seam::Level => std::cmp::max(a.width, b.width),
            crate::plan::assembly::Seam::Upright => std::cmp::max(a.height, b.height),
        }
    };
    match task {
        Task::Cut => {
            add("square", lens.by(plan.side, plan.side));
            let denim = throw.denims.get(usize::from(throw.cover(piece).denim));
            if let Some(denim) = denim.filter(|d| !d.name.is_empty()) {
                add("from-denim", lens.plain(denim.name.clone()));
            }
        }
        Task::CoverFront | Task::CoverBack => {
            let face = if task == Task::CoverFront {
                Face::Front
            } else {
                Face::Back
            };
            let print = throw.cover(piece).on(face);
            let name = print.and_then(|p| throw.prints.get(usize::from(p)));
            add(
                "fabric",
                lens.plain(name.map_or_else(String::new, |p| p.name.clone())),
            );
            add("square", lens.by(plan.side, plan.side));
        }
        Task::CoolCover | Task::CoolLap => {
            add(
                "cooling",
                lens.plain(say!(lens, "minutes", n = plan.cooling_minutes)),
            );
        }
        Task::Dot => {
            add("lap", lens.length(made.lap));
            add(seam, lens.length(seam_length(throw)));
        }
        Task::Pin => {
            add("allowance", lens.length(made.lap));
            add(seam, lens.length(seam_length(throw)));
        }
        Task::PressLap => add("lap", lens.length(made.lap)),
        Task::Stitch => {
            if made.joining == Joining::Lapped {
                add("middle", lens.length(made.lap / 2));
            } else {
                add("allowance", lens.length(made.lap));
            }
            if plan.stitch.width() > zero() {
                let key = match plan.stitch {
                    Stitch::Twin { .. } => "twin",
                    _ => "stitch-width",
                };
                add(key, lens.needle(plan.stitch.width()));
            }
            if let Some(fringe) = fringe(made.joining, made.lap, plan.stitch) {
                add("fringe", lens.length(fringe));
            }
            add(seam, lens.length(seam_length(throw)));
        }
        Task::SquareUp => {
            let target = throw.target(piece);
            add("trim-to", lens.by(target.width, target.height));
            if let Some(measured) = throw.work(piece).and_then(|w| w.squared.or(w.measured)) {
                add("measured", lens.by(measured.width, measured.height));
                for (key, m, t) in [
                    ("across", measured.width, target.width),
                    ("down", measured.height, target.height),
                ] {
                    add(key, lens.over_under(squaring::trim(m, t, lens.ruler).over));
                }
            }
        }
        Task::PressBlock => {
            let size = squaring::natural(throw, piece);
            add("should-be", lens.by(size.width, size.height));
        }
        Task::CutBinding | Task::JoinBinding | Task::PressBinding | Task::GlueBinding => {
            let size = throw.finished();
            let need = plan.binding_for(size.width, size.height);
            match task {
                Task::CutBinding => {
                    add("strips", lens.plain(say!(lens, "strips", n = need.strips)));
                    add("strip", lens.length(plan.binding.strip));
                    add("longest", lens.length(plan.binding.longest));
                }
                Task::JoinBinding => {
                    add("joins", lens.plain(say!(lens, "number", n = need.joins)));
                    add("lap", lens.length(take(plan.joining, plan.lap)));
                }
                _ => add("each-face", lens.length(plan.binding.strip / 2)),
            }
            add("binding", lens.length(need.length));
        }
        Task::StitchBinding => {
            let size = throw.finished();
            add("round", lens.length((size.width + size.height) * 2));
        }
        Task::PressCover | Task::PressSeam | Task::Wash | Task::Clip => {}
    }
    out
}
