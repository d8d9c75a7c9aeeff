//! The step screen: the one thing to do next, and what else could be done.
//!
//! Everything that can be done now falls into batches of one task and one kind of
//! piece. The current batch is the one the maker picked, or else the earliest: squares
//! before pairs before fours before larger pieces, and within those in the order work
//! usually goes. A batch that is still cooling steps back while anything else is ready, but no
//! bigger part is begun while pairs or fours still cool, and no row of pairs is lapped of which a
//! square does. What has cooled is ready by itself.
//!
//! The first of a card's buttons is for one sitting: all pieces alike, and of laps those of one
//! row of blocks, which are lapped and pressed one after another.

use crate::cloth::fabric::{Cover, Face};
use crate::cloth::garments::Source;
use crate::cloth::pile::{Heap, Use};
use crate::command::Command;
use crate::fitting::squaring;
use crate::fitting::trimming::{LapShare, hidden, is_undecided, shortfalls};
use crate::log::journal::Journal;
use crate::measure::{Count, Length, zero};
use crate::plan::assembly::{Join, Kind, Rect, Seam};
use crate::plan::binding::EdgeSide;
use crate::plan::{Joining, Stitch, fringe, rows};
use crate::show::card_figures::card_figures;
use crate::show::context::Context;
use crate::show::events::joined;
use crate::show::opening::{self, OpenFirst};
use crate::show::parts::{Button, CautionNote, Figure, Head, Move, head};
use crate::show::picture::Picture;
use crate::show::{bound, enough, lessons, measuring, names, pictures};
use crate::throw::account::{ClothAccount, account};
use crate::throw::index::tier;
use crate::throw::tasks::{Caution, Station, Task, covered_face, sitting};
use crate::throw::wishes::Wishes;
use crate::throw::{Throw, Time, Work};
use crate::types::TS;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

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

/// The current step.
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
    /// The current piece.
    pub piece: Rect,
    /// Which piece, short.
    pub which: String,
    /// Which piece, spoken.
    pub which_spoken: String,
    /// How many pieces of the sitting it is the first of, in words; none where it is the only one.
    pub together: Option<String>,
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
    /// Its moves drawn one after another, where the step has such.
    pub moves: Vec<Move>,
    /// The buttons, the usual one first.
    pub ticks: Vec<Button>,
    /// When it began to cool, in milliseconds since 1970.
    #[ts(type = "number | null")]
    pub cool_from: Option<i64>,
    /// When it will have cooled, in milliseconds since 1970.
    #[ts(type = "number | null")]
    pub cool_at: Option<i64>,
    /// Measuring comes first: the block was not measured yet.
    pub measure_first: bool,
    /// The block to measure, where measuring makes sense now.
    pub measure: Option<Rect>,
    /// The whole can be measured now, as before a wash.
    pub measure_whole: bool,
    /// The piece of the pile to be cut up next, where squares are cut.
    pub cut_next: Option<CutNext>,
    /// The piece that may be off, where it can be said here.
    pub off: Option<Rect>,
    /// By its measures it is off: what can be done about that comes before the tick.
    pub off_first: bool,
    /// What was learned of this step on the throw before.
    pub lessons: Vec<String>,
    /// What was written down at this step.
    pub notes: Vec<String>,
}

/// A piece of the pile to be cut up.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct CutNext {
    /// The heap.
    pub n: u16,
    /// The piece, counted from 0.
    pub index: u8,
    /// What is said to go there.
    pub label: String,
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
    /// The current step; none when all is done or nothing is ready there, or while a lap
    /// has to wait for an answer.
    pub card: Option<Box<Card>>,
    /// What else could be done now.
    pub offers: Vec<Offer>,
    /// Said when there is no step.
    pub rest: Option<String>,
    /// Front and back, once all is done.
    pub ended: Option<[Picture; 2]>,
}

/// One task to do to some pieces of one kind.
struct Batch {
    task: Task,
    kind: Kind,
    /// The first of them.
    piece: Rect,
    count: usize,
    /// When the first of them has cooled, for a cooling task.
    cool_at: Option<Time>,
    /// In every row of blocks that could be lapped now something still lies cooling.
    held: bool,
}

impl Batch {
    fn waiting(&self, now: Time) -> bool {
        self.cool_at.is_some_and(|at| at > now)
    }
}

/// The rows of blocks in which something smaller than these pieces still lies cooling.
fn cooling_rows(throw: &Throw, below: u8) -> BTreeSet<u16> {
    let ready = throw.work_index().ready().iter();
    let cooling = ready.filter(|((tier, task), _)| *tier < below && task.is_cooling());
    let numbers = cooling.flat_map(|(_, numbers)| numbers);
    let pieces = numbers.filter_map(|n| throw.assembly().numbered(*n as usize));
    pieces.map(|piece| piece.row / 2).collect()
}

fn batches(throw: &Throw, now: Time) -> Vec<Batch> {
    let ready = throw.work_index().ready().iter();
    ready
        .filter_map(|((tier_of, task), numbers)| {
            let pieces = || {
                numbers
                    .iter()
                    .filter_map(|n| throw.assembly().numbered(*n as usize))
            };
            let mut held = false;
            let piece = if task.is_cooling() {
                // What was pressed first has cooled first.
                pieces().min_by_key(|p| throw.cooled_at(*p, now))
            } else if *task == Task::Dot && *tier_of <= tier(Kind::Pair) {
                // A row is lapped in one sitting, so one that is ready as a whole comes first.
                let cooling = cooling_rows(throw, *tier_of);
                let whole = pieces().find(|piece| !cooling.contains(&(piece.row / 2)));
                held = whole.is_none();
                whole.or_else(|| pieces().next())
            } else {
                pieces().next()
            }?;
            Some(Batch {
                task: *task,
                kind: throw.kind(piece),
                piece,
                held,
                count: numbers.len(),
                cool_at: task
                    .is_cooling()
                    .then(|| throw.cooled_at(piece, now))
                    .flatten(),
            })
        })
        .collect()
}

/// The step screen.
pub(super) fn work(
    journal: &Journal,
    station: Option<Station>,
    asked: Option<(Task, Kind)>,
    context: Context<'_>,
) -> WorkView {
    let now = journal.throw_at(context.now);
    let throw = &*now;
    let batches = batches(throw, context.now);
    // While pairs or fours cool, no bigger part is begun.
    let cooling = |b: &Batch| b.waiting(context.now) && tier(b.kind) <= tier(Kind::Four);
    let small_cool = batches.iter().any(cooling);
    let begins_bigger =
        |b: &Batch| matches!(b.task, Task::Dot | Task::Pin) && tier(b.kind) > tier(Kind::Four);
    let here = |b: &&Batch| station.is_none_or(|s| b.task.station() == s);
    let chosen = batches
        .iter()
        .find(|b| asked == Some((b.task, b.kind)))
        .or_else(|| {
            batches
                .iter()
                .filter(here)
                .find(|b| !(b.waiting(context.now) || b.held || small_cool && begins_bigger(b)))
        })
        .or_else(|| {
            let waits = batches
                .iter()
                .filter(here)
                .filter(|b| b.waiting(context.now));
            waits.min_by_key(|b| b.cool_at)
        })
        .or_else(|| batches.iter().find(here));
    let ask = ask(throw, context);
    // One thing at a time: the question stands alone until it is answered or another step is
    // taken up. Once lapped a square keeps its faces, so no lap before they are settled.
    let chosen = chosen.filter(|b| {
        let taken_up = asked == Some((b.task, b.kind));
        ask.is_none() || (taken_up && !matches!(b.task, Task::Dot | Task::Pin))
    });
    let ask = ask.filter(|_| chosen.is_none());
    let offers = batches
        .iter()
        .filter(|b| chosen.is_none_or(|c| (c.task, c.kind) != (b.task, b.kind)))
        .map(|b| Offer {
            task: b.task,
            kind: b.kind,
            station: b.task.station(),
            title: title(throw, b, context),
            count: names::count(b.kind, b.count, context),
            waiting: b.waiting(context.now),
        })
        .collect();
    let rest = (chosen.is_none() && ask.is_none()).then(|| {
        match (batches.is_empty(), station, throw.measured_whole()) {
            (false, Some(s), _) => {
                say!(context, "rest-station", station = station_name(s, context))
            }
            (_, _, Some(whole)) => say!(
                context,
                "rest-measured",
                size = context.by(whole.size.width, whole.size.height),
                n = whole.washes
            ),
            _ => {
                let size = throw.finished();
                say!(
                    context,
                    "rest-finished",
                    size = context.by(size.width, size.height)
                )
            }
        }
    });
    let ended = (chosen.is_none() && batches.is_empty() && ask.is_none())
        .then(|| Face::BOTH.map(|face| pictures::thumbnail(throw, face, context)));
    WorkView {
        ask,
        head: head(journal, context),
        stations: stations(&batches, station, context),
        card: chosen.map(|b| {
            Box::new(Card {
                lessons: lessons::at_step(journal.throw(), b.task, context),
                ..card(throw, b, context)
            })
        }),
        offers,
        rest,
        ended,
    }
}

/// Which squares get fabric, while that was never said and can still be chosen.
fn ask(throw: &Throw, context: Context<'_>) -> Option<FacesAsk> {
    let laid = Face::BOTH.iter().any(|f| throw.covered(*f) > 0);
    let settled = throw.prints.is_empty() || throw.wishes.is_some() || laid;
    let squares = || throw.assembly().whole().squares();
    if settled || squares().all(|s| throw.is_joined(s)) {
        return None;
    }
    let mut said = vec![say!(context, "ask-faces-why", n = throw.prints.len())];
    if let [first, _, ..] = throw.denims.as_slice()
        && squares().all(|s| throw.cover(s).denim == 0)
    {
        let name = first.name.as_str();
        said.push(say!(context, "ask-faces-denim", denim = name));
    }
    Some(FacesAsk {
        title: say!(context, "ask-faces"),
        text: context.words.list("sentences", said),
        bare: Button {
            label: say!(context, "ask-faces-bare"),
            action: Command::Wish {
                wishes: Wishes::default(),
            },
        },
    })
}

pub(super) fn station_name(station: Station, context: Context<'_>) -> String {
    context.say(&format!("station-{}", station.key()), &[])
}

fn stations(batches: &[Batch], chosen: Option<Station>, context: Context<'_>) -> Vec<StationTab> {
    let places = std::iter::once(None).chain(Station::ALL.map(Some));
    places
        .map(|station| {
            let here = batches
                .iter()
                .filter(|b| station.is_none_or(|s| b.task.station() == s));
            let ready: usize = here.map(|b| b.count).sum();
            let label = match station {
                Some(s) => station_name(s, context),
                None => say!(context, "station-any"),
            };
            StationTab {
                station,
                spoken: say!(
                    context,
                    "station-spoken",
                    station = label.as_str(),
                    n = ready
                ),
                label,
                ready: ready as u32,
                chosen: station == chosen,
            }
        })
        .collect()
}

/// What to do, for this batch: the binding's wash says which wash it is.
fn title(throw: &Throw, batch: &Batch, context: Context<'_>) -> String {
    let times = |task| {
        let work = throw.work(batch.piece);
        work.map_or(0, |w| w.done.iter().filter(|(t, _)| *t == task).count()) + 1
    };
    match batch.task {
        Task::Wash | Task::Clip => say!(
            context,
            format!("title-{}", batch.task.key()),
            n = times(batch.task),
            all = throw.plan.washes
        ),
        Task::Dot | Task::Stitch | Task::Pin | Task::PressLap | Task::CoolLap | Task::PressSeam => {
            say!(
                context,
                format!("title-{}", batch.task.key()),
                kind = names::key(batch.kind)
            )
        }
        task => context.say(&format!("title-{}", task.key()), &[]),
    }
}

fn card(throw: &Throw, batch: &Batch, context: Context<'_>) -> Card {
    let task = batch.task;
    let piece = batch.piece;
    let (total, done) = throw.work_index().tally(batch.kind, task);
    let (total, done) = (total as usize, done as usize);
    // A piece to trim again was done once, and is to be done again.
    let again = match task {
        Task::SquareUp => crate::command::ready_for(throw, batch.kind, task)
            .filter(|piece| throw.trims_again(*piece))
            .count(),
        _ => 0,
    };
    let done = done.saturating_sub(again);
    let left = total.saturating_sub(done);
    let remain = match batch.kind {
        Kind::Whole => String::new(),
        kind if batch.count < left => say!(
            context,
            "remain-some-ready",
            left = names::count(kind, left, context),
            ready = batch.count
        ),
        kind => say!(
            context,
            "remain",
            left = names::count(kind, left, context),
            done = done,
            past = past(throw, task, context)
        ),
    };
    let cloth = cloth_there(throw, task);
    let next = cloth.as_ref();
    let next = next.and_then(|cloth| cut_next(throw, piece, cloth, context));
    // Where the pile has pieces to cut, they are cut one by one, and the squares counted that come
    // out of each; from packs no more squares are taken than are there.
    let most = cloth.as_ref().map(|cloth| match next {
        Some(_) => 0,
        None => cloth.to_come as usize,
    });
    let square_at_hand = piece.is_square() && throw.has(piece, Task::Cut);
    Card {
        task,
        kind: batch.kind,
        station: task.station(),
        station_name: station_name(task.station(), context),
        title: title(throw, batch, context),
        piece,
        which: names::piece(throw, piece, context),
        which_spoken: names::spoken(throw, piece, context),
        together: match together(throw, batch).len() {
            0 | 1 => None,
            n if by_row(throw, batch) => {
                let at = usize::from(piece.row / 2);
                let (row, of) = (names::row_of_fours(at), names::row_is_of(throw, at));
                Some(say!(context, "first-of-row", n = n, row = row, of = of))
            }
            n => Some(say!(context, "first-of", n = n)),
        },
        figures: card_figures(throw, task, piece, context),
        how: {
            let mut said = Vec::new();
            if task == Task::Cut {
                said.extend(told_of_spare(throw, piece, context));
                said.extend(enough::denims_to_cut(throw, context));
                let from = cloth.as_ref();
                said.extend(from.and_then(|cloth| cut_from(throw, piece, cloth, context)));
            }
            said.extend(how(throw, task, piece, context));
            said.extend(fabrics_of(throw, batch, context));
            let lacking = cloth.as_ref().filter(|cloth| cloth.short() > 0);
            said.extend(lacking.map(|cloth| enough::short_squares(cloth, context)));
            let next = sitting(task, throw.made(piece).joining).iter().skip(1);
            for task in next {
                let usual = usual_how(throw, *task, piece, context);
                said.extend(usual.lines().map(str::to_string));
                said.push(say!(context, "sitting-cool"));
            }
            for key in before_the_first(throw, task) {
                let joining = joined(throw.plan.joining);
                let cooling = throw.assembly().whole().squares();
                let mut cooling = cooling.map(|square| throw.next(square));
                let cooling = cooling.any(|next| next == Some(Task::CoolCover));
                let cooling = i64::from(cooling);
                let text = say!(context, key, joining = joining, cooling = cooling);
                said.insert(0, text);
            }
            let undecided = undecided(throw, batch);
            if !undecided.is_empty() && batch.count > 1 {
                let names = names_of(throw, &undecided, 12, context);
                said.push(say!(context, "special-left-out", names = names));
            }
            said
        },
        remain,
        caution: caution_at(throw, task, piece).map(|caution| {
            let key = caution.key();
            CautionNote {
                caution,
                title: context.say(&format!("caution-{key}-title"), &[]),
                text: caution_text(throw, task, caution, context),
            }
        }),
        open: opening::first(throw, piece, context)
            .filter(|_| matches!(task, Task::Cut | Task::Dot | Task::Pin)),
        picture: pictures::step(throw, task, piece, context),
        moves: match task {
            Task::GlueBinding => bound::corner(throw, context),
            _ => Vec::new(),
        },
        ticks: ticks(throw, batch, most, context),
        cool_from: batch.cool_at.map(|at| at.saturating_sub(throw.cooling())),
        cool_at: batch.cool_at,
        measure_first: task == Task::SquareUp
            && !throw.trims_again(piece)
            && throw.work(piece).is_none_or(|w| w.measured.is_none()),
        measure: (task == Task::SquareUp && !throw.trims_again(piece)).then_some(piece),
        measure_whole: matches!(task, Task::Wash | Task::Clip),
        cut_next: next,
        off: (square_at_hand || throw.assembly().join(piece).is_some())
            .then_some(piece)
            .filter(|p| p.count() <= 4),
        off_first: task == Task::SquareUp
            && !throw.trims_again(piece)
            && is_undecided(throw, piece),
        lessons: Vec::new(),
        notes: lessons::notes_at(throw, task, piece, context),
    }
}

/// What is asked for before the first join is made, the last first: all squares are laid out, and a scrap
/// is sewn, which comes before the first halves are lapped too.
fn before_the_first(throw: &Throw, task: Task) -> Vec<&'static str> {
    let mut squares = throw.assembly().whole().squares();
    let of_join = matches!(task, Task::Dot | Task::Pin);
    let of_halves = task == Task::LapHalves
        && throw.plan.joining == Joining::Lapped
        && !squares.any(|square| throw.has(square, Task::LapHalves));
    let joins = throw.assembly().joins();
    if !(of_join || of_halves) || joins.iter().any(|join| throw.begun(join.whole)) {
        return Vec::new();
    }
    let mut out = Vec::new();
    if of_join {
        out.push("special-lay-first");
    }
    if throw.scraps.is_empty() {
        out.push("special-scrap-first");
    }
    out
}

/// The caution at a step: its own, or that of what is done in one sitting with it, such as pressing a lap
/// that is glued, or trimming fabric that is laid on.
fn caution_at(throw: &Throw, task: Task, piece: Rect) -> Option<Caution> {
    if covered_face(task).is_some_and(|face| throw.laid_on(piece, face).is_some()) {
        return Some(Caution::Blade);
    }
    let with_it = sitting(task, throw.made(piece).joining).iter();
    usual_caution(throw, task, piece).or_else(|| with_it.copied().find_map(Task::caution))
}

/// What to take care of at this step of any such piece.
pub(super) fn usual_caution(throw: &Throw, task: Task, piece: Rect) -> Option<Caution> {
    // Without a step of its own the edge is pressed and trimmed where the binding is glued.
    if task == Task::GlueBinding && !throw.tasks(piece).contains(&Task::TrimEdge) {
        return Some(Caution::BladeAndIron);
    }
    task.caution()
}

/// How this is done to this very piece, a sentence each.
fn how(throw: &Throw, task: Task, piece: Rect, context: Context<'_>) -> Vec<String> {
    let mut out = special(throw, task, piece, context);
    let work = throw.work(piece);
    // What was trimmed once is as large as it was trimmed to.
    let held = work.and_then(Work::held);
    if let (Task::SquareUp, Some(size)) = (task, held) {
        if work.is_some_and(|w| w.outline.is_none() || w.squared.is_some()) {
            out.extend(measuring::verdict_of(
                throw,
                piece,
                size,
                "short-open",
                context,
            ));
            return out;
        }
        out.extend(measuring::made_up(
            throw,
            piece,
            None,
            "short-open",
            context,
        ));
        if let Some((outline, cut)) = squaring::outlined(throw, piece) {
            if outline.leans() {
                out.push(say!(context, "how-square-up-leans"));
            }
            out.push(say!(context, "how-square-up-outline"));
            out.extend(measuring::by_marks(&cut, context));
            return out;
        }
    }
    if let Some(face) = covered_face(task)
        && let Some(side) = throw.patch_on(piece, face)
    {
        let usual = match throw.laid_on(piece, face) {
            Some(_) => {
                let side = context.by(side, side);
                say!(context, format!("how-{}-laid-on", task.key()), side = side)
            }
            None => {
                let round = context.length(throw.plan.round(side));
                say!(context, format!("how-{}-patch", task.key()), round = round)
            }
        };
        out.extend(usual.lines().map(str::to_string));
        return out;
    }
    if let (Task::CutFabric, Some(side)) = (task, throw.laid_side(piece)) {
        let side = context.by(side, side);
        out.push(say!(context, "how-cut-fabric-laid-on", side = side));
        return out;
    }
    if let (Task::Dot, Some(join)) = (task, throw.assembly().join(piece)) {
        let own = throw.made(piece).lap;
        let spots = throw.spots(join).into_iter();
        let other = |lap: Length| lap != own;
        let named = spots.filter_map(|(a, b)| throw.marked(a, b)).any(other);
        let at = say!(
            context,
            "how-dot-at",
            named = i64::from(named),
            lap = context.length(own),
            over = names::piece(throw, join.first, context),
            under = names::piece(throw, join.second, context),
            side = match join.seam {
                Seam::Upright => "left",
                Seam::Level => "upper",
            }
        );
        out.extend(at.lines().map(str::to_string));
        out.extend(lined_up(throw, join, context));
        return out;
    }
    // Strips that are all cut are only laid ready.
    if task == Task::CutBinding && account(throw).strips.open() == 0 {
        return out;
    }
    let usual = usual_how(throw, task, piece, context);
    out.extend(usual.lines().map(str::to_string));
    if task == Task::GlueBinding {
        let over = context.length(throw.plan.lap);
        out.push(say!(context, "how-binding-end", over = over));
    }
    out
}

/// How this is done to any such piece, a sentence a line.
pub(super) fn usual_how(throw: &Throw, task: Task, piece: Rect, context: Context<'_>) -> String {
    let key = how_key(throw, task, piece);
    let (made, plan) = (throw.made(piece), &throw.plan);
    // The halves of a square are lapped in any plan.
    let (joining, lap) = match task {
        Task::StitchHalves => (
            Joining::Lapped,
            throw.lapped_halves(piece).unwrap_or(plan.lap),
        ),
        _ => (made.joining, made.lap),
    };
    // Where the stitching runs, from the raw edge on top.
    let rows = rows(joining, lap, plan.stitch);
    let row = |n: usize| context.length(rows.get(n).copied().unwrap_or_default());
    let mut out = say!(
        context,
        key,
        edge = context.edge_in(),
        apart = context.snips_apart(),
        middle = context.length(lap / 2),
        first = row(0),
        second = row(1),
        between = context.needle(plan.stitch.width()),
        long = context.needle(plan.stitch_long())
    );
    if let (Task::Dot | Task::Pin, Some(join)) = (task, throw.assembly().join(piece))
        && let Some(line) = lined_up(throw, join, context)
    {
        out.push('\n');
        out += &line;
    }
    if matches!(task, Task::Stitch | Task::StitchHalves) {
        out.push('\n');
        out += &needle(plan.stitch, context);
    }
    if task == Task::GlueBinding {
        out.push('\n');
        out += &bound::clear(throw, context);
    }
    out
}

fn along(join: &Join) -> u16 {
    match join.seam {
        Seam::Upright => join.whole.rows,
        Seam::Level => join.whole.cols,
    }
}

/// What is brought together where two pieces are laid on one another: the joins that meet along the
/// edge, and the ends; nothing where a short block's ends lie otherwise.
fn lined_up(throw: &Throw, join: &Join, context: Context<'_>) -> Option<String> {
    if !ends_left(throw, join, context).is_empty() {
        return None;
    }
    let squares = along(join);
    let joining = joined(throw.plan.joining);
    // Two pairs with laps that are not alike are not as long: squaring up sees to that.
    let long = |piece| match join.seam {
        Seam::Upright => throw.size(piece).height,
        Seam::Level => throw.size(piece).width,
    };
    let (first, second) = (long(join.first), long(join.second));
    if first != second && throw.assembly().is_block(join.whole) {
        let (longer, by) = match first > second {
            true => (join.first, first - second),
            false => (join.second, second - first),
        };
        return Some(say!(
            context,
            "how-line-up-uneven",
            piece = names::piece(throw, longer, context),
            by = context.length(by),
            joining = joining
        ));
    }
    // Rows of short blocks are not as long either, and stay so.
    let apart = std::cmp::max(first - second, second - first);
    if context.ruler.nearest(apart) > zero() && squares > 1 {
        let longer = if first > second {
            join.first
        } else {
            join.second
        };
        return Some(say!(
            context,
            "how-line-up-longer",
            piece = names::piece(throw, longer, context),
            by = context.length(apart),
            n = squares - 1,
            joining = joining
        ));
    }
    let said = say!(context, "how-line-up", n = squares - 1, joining = joining);
    Some(said)
}

/// The needle for a stitch: its system and size.
pub(super) fn needle(stitch: Stitch, context: Context<'_>) -> String {
    match stitch {
        Stitch::Twin { spacing } => {
            say!(context, "needle-twin", spacing = context.needle(spacing))
        }
        Stitch::Straight | Stitch::TwoRows { .. } | Stitch::Zigzag { .. } => {
            say!(context, "needle-single")
        }
    }
}

/// Whether a step is to sew two rows with a single needle.
fn sews_rows(throw: &Throw, task: Task) -> bool {
    task == Task::Stitch && throw.plan.stitch.passes() > 1
}

/// What was done, for a button of several pieces.
fn past(throw: &Throw, task: Task, context: Context<'_>) -> String {
    match sews_rows(throw, task) {
        true => say!(context, "past-stitch-rows"),
        false => context.say(&format!("past-{}", task.key()), &[]),
    }
}

/// The sentences that say how; a seam is pressed and pinned unlike a lap.
fn how_key(throw: &Throw, task: Task, piece: Rect) -> String {
    let made = throw.made(piece);
    match (task, made.joining, throw.plan.stitch) {
        (Task::Pin, Joining::Exposed, _) => "how-pin-exposed".into(),
        (Task::PressSeam, Joining::Exposed, _) => "how-press-seam-exposed".into(),
        (Task::PressSeam, _, _) if made.stitch.width() > zero() => "how-press-seam-wide".into(),
        (Task::JoinBinding, _, _) if throw.plan.joining != Joining::Lapped => {
            "how-join-binding-seam".into()
        }
        (Task::StitchPatch, _, Stitch::Twin { .. }) => "how-stitch-patch-twin".into(),
        (Task::StitchHalves, _, Stitch::Twin { .. }) => "how-stitch-halves-twin".into(),
        (Task::StitchHalves, _, Stitch::TwoRows { .. }) => "how-stitch-halves-rows".into(),
        (Task::StitchHalves, _, Stitch::Zigzag { .. }) => "how-stitch-halves-zigzag".into(),
        (Task::Stitch, Joining::Lapped, Stitch::Twin { .. }) => "how-stitch-twin".into(),
        (Task::Stitch, Joining::Lapped, Stitch::TwoRows { .. }) => "how-stitch-rows".into(),
        (Task::Stitch, Joining::Lapped, Stitch::Zigzag { .. }) => "how-stitch-lap-zigzag".into(),
        (Task::Stitch, Joining::Lapped, Stitch::Straight) => "how-stitch-lap".into(),
        (Task::Stitch, _, Stitch::TwoRows { .. }) => "how-stitch-seam-rows".into(),
        (Task::Stitch, _, Stitch::Straight) => "how-stitch-seam".into(),
        (Task::Stitch, _, Stitch::Twin { .. }) => "how-stitch-seam-twin".into(),
        (Task::Stitch, _, _) => "how-stitch-seam-wide".into(),
        (Task::GlueBinding, _, _) if !throw.tasks(piece).contains(&Task::TrimEdge) => {
            "how-glue-binding-untrimmed".into()
        }
        (Task::SquareUp, _, _) if throw.work(piece).is_none_or(|w| w.held().is_none()) => {
            "how-square-up-measure".into()
        }
        _ => format!("how-{}", task.key()),
    }
}

/// How many binding strips are cut already, and where the others are to come from.
pub(super) fn strips_left(throw: &Throw, context: Context<'_>) -> Vec<String> {
    let account = account(throw);
    let strips = account.strips;
    let mut out = Vec::new();
    if strips.cut > 0 && strips.open() > 0 {
        out.push(say!(
            context,
            "strips-cut-already",
            cut = strips.cut,
            wanted = strips.wanted,
            open = strips.open()
        ));
    } else if strips.open() == 0 {
        out.push(say!(context, "strips-all-cut", n = strips.wanted));
        return out;
    }
    let from = account.pieces.iter().filter(|(_, p)| p.strips > 0);
    let from = from.filter_map(|((n, index), piece)| {
        let heap = throw.pile.get(n)?;
        let part = super::cutting::part(heap, usize::from(*index), context);
        let what = say!(context, "told", what = heap.name(), how = part);
        Some(say!(context, "strips-from", n = piece.strips, what = what))
    });
    let from: Vec<String> = from.collect();
    if !from.is_empty() {
        let list = context.words.list("list-long", from);
        out.push(say!(context, "strips-from-pile", list = list));
    }
    out
}

/// How much of a join was opened, where that is a part of it.
pub(super) fn opened_in_part(throw: &Throw, piece: Rect) -> Option<Length> {
    let join = throw.assembly().join(piece)?;
    let opened = throw.work(piece)?.opened?;
    (!throw.opens_all(join, opened)).then_some(opened)
}

/// What is special about this piece: a part to do again, a lap narrower in places.
pub(super) fn special(throw: &Throw, task: Task, piece: Rect, context: Context<'_>) -> Vec<String> {
    let mut out = Vec::new();
    if task == Task::CutBinding {
        out.extend(strips_left(throw, context));
        // Once strips are cut their length is settled.
        if account(throw).strips.cut == 0 {
            out.extend(bound::on_a_lap(throw, context));
        }
    }
    if matches!(task, Task::GlueBinding | Task::StitchBinding)
        && throw.work(piece).is_some_and(|work| work.unbound)
    {
        out.push(say!(context, "special-unbound"));
    }
    // From here on a corner is turned, and a twin needle turns none.
    if let (Task::JoinBinding, Stitch::Twin { .. }) = (task, throw.plan.stitch) {
        out.push(say!(context, "special-twin-out"));
    }
    if task == Task::Wash && throw.wholes.is_empty() {
        // The change in washing needs a measure before it.
        out.push(match throw.washes() {
            0 => say!(context, "special-measure-first"),
            _ => say!(context, "special-measure-unknown"),
        });
    }
    if let (Task::SquareUp, Some(squared)) = (task, throw.work(piece).and_then(|w| w.squared)) {
        let (size, target) = (squared, throw.target(piece));
        out.push(say!(
            context,
            "special-trim-again",
            size = context.by(size.width, size.height),
            target = context.by(target.width, target.height)
        ));
    }
    // Joined as it is, a block that was to be trimmed again keeps its size.
    let parts = throw.assembly().join(piece).map(|j| [j.first, j.second]);
    let parts = parts.filter(|_| matches!(task, Task::Dot | Task::Pin));
    for part in parts
        .into_iter()
        .flatten()
        .filter(|p| throw.trims_again(*p))
    {
        let Some(size) = throw.work(part).and_then(|w| w.squared) else {
            continue;
        };
        let target = throw.target(part);
        out.push(say!(
            context,
            "special-trim-first",
            piece = names::piece(throw, part, context),
            size = context.by(size.width, size.height),
            target = context.by(target.width, target.height)
        ));
    }
    if task == Task::SquareUp && throw.work(piece).is_none_or(|w| w.held().is_none()) {
        out.extend(short_by_laps(throw, piece, context));
    }
    if matches!(task, Task::PressLap | Task::CoolLap | Task::Stitch)
        && throw.is_only_glued(piece)
        && throw.made(piece).lap != throw.planned(piece).lap
    {
        out.push(say!(
            context,
            "special-old-lap",
            was = context.length(throw.made(piece).lap),
            lap = context.length(throw.planned(piece).lap)
        ));
    }
    let print = covered_face(task).and_then(|face| throw.cover(piece).on(face));
    let print = print.and_then(|print| throw.prints.get(usize::from(print)));
    if print.is_some_and(|print| print.mixed) {
        out.push(say!(context, "special-mixed"));
    }
    if matches!(task, Task::TrimEdge | Task::GlueBinding) {
        out.extend(edges_left(throw, task, context));
    }
    if !matches!(task, Task::Dot | Task::Pin | Task::Stitch) {
        return out;
    }
    if let Some(opened) = opened_in_part(throw, piece) {
        out.push(say!(
            context,
            "special-opened",
            length = context.length(opened)
        ));
    }
    let spots = throw
        .assembly()
        .join(piece)
        .map_or_else(Vec::new, |j| throw.spots(j));
    if let (Task::Dot | Task::Pin, Some(join)) = (task, throw.assembly().join(piece)) {
        out.extend(ends_left(throw, join, context));
    }
    for (a, b) in spots {
        if let Some(lap) = throw.marked(a, b) {
            out.push(say!(
                context,
                "special-lap",
                a = names::piece(throw, a, context),
                b = names::piece(throw, b, context),
                lap = context.length(lap),
                joining = joined(throw.plan.joining)
            ));
            out.extend(stitched_at(throw, task, piece, lap, context));
        }
    }
    out
}

/// That a block nobody has measured comes out too small by its laps, which no trimming mends.
fn short_by_laps(throw: &Throw, block: Rect, context: Context<'_>) -> Option<String> {
    let (size, target) = (throw.size(block), throw.target(block));
    let short = size.width < target.width || size.height < target.height;
    short.then(|| {
        say!(
            context,
            "special-short-by-laps",
            joining = joined(throw.plan.joining),
            size = context.by(size.width, size.height),
            target = context.by(target.width, target.height)
        )
    })
}

/// Where the ends of short blocks lie along a join, so that each is made up for where it is to be: not
/// level with those of its neighbours.
fn ends_left(throw: &Throw, join: &Join, context: Context<'_>) -> Vec<String> {
    // In longer joins it is fixed already how the blocks lie to one another.
    let spots = throw.spots(join);
    let [(a, b)] = spots.as_slice() else {
        return Vec::new();
    };
    let blocks = [*a, *b].into_iter();
    let blocks = blocks.filter(|block| throw.assembly().is_block(*block));
    let told = blocks.filter_map(|block| {
        // Along an upright join it is its height that is short.
        let mut short = shortfalls(throw, block).into_iter();
        let short = short.find(|short| short.seam != join.seam && !short.shares.is_empty())?;
        let shares = short.shares.iter();
        let ends: Vec<String> = shares.map(|share| end(share, context)).collect();
        Some(say!(
            context,
            "special-ends",
            piece = names::piece(throw, block, context),
            short = context.length(short.short),
            ends = context.words.list("list-and", ends)
        ))
    });
    told.collect()
}

/// How far a block stands back at one end.
fn end(share: &LapShare, context: Context<'_>) -> String {
    let by = context.length(share.by);
    context.say(&format!("end-{}", share.side.key()), &[("by", by.into())])
}

/// Blocks that stand back from the outer edge, where the binding hides it: nothing is trimmed to them, and
/// their edge does not reach the crease of the binding.
fn edges_left(throw: &Throw, task: Task, context: Context<'_>) -> Vec<String> {
    let back = standing_back(throw).into_iter().map(|(block, shares)| {
        let ends: Vec<String> = shares.iter().map(|share| end(share, context)).collect();
        say!(
            context,
            format!("special-edge-{}", task.key()),
            piece = names::piece(throw, block, context),
            ends = context.words.list("list-and", ends)
        )
    });
    back.collect()
}

/// How far blocks stand back from the outer edge: from its line, which is that of those that stand out
/// farthest where all of a side are short.
fn standing_back(throw: &Throw) -> BTreeMap<Rect, Vec<LapShare>> {
    let mut back = hidden(throw);
    let whole = throw.assembly().whole();
    let on_side = |b: &Rect, side: EdgeSide| match side {
        EdgeSide::Top => b.row == whole.row,
        EdgeSide::Left => b.col == whole.col,
        EdgeSide::Bottom => b.row + b.rows == whole.row + whole.rows,
        EdgeSide::Right => b.col + b.cols == whole.col + whole.cols,
    };
    let blocks = throw.assembly().blocks();
    for side in EdgeSide::ALL {
        let along = blocks.iter().filter(|b| on_side(b, side));
        let by = along.map(|block| {
            let shares = back.get(block).into_iter().flatten();
            let of_side = shares.filter(|share| share.side == side);
            of_side.map(|share| share.by).fold(zero(), std::cmp::max)
        });
        let least = by.min().unwrap_or_default();
        for share in back.values_mut().flatten().filter(|s| s.side == side) {
            share.by -= least;
        }
    }
    for shares in back.values_mut() {
        shares.retain(|share| share.by > zero());
    }
    back.retain(|_, shares| !shares.is_empty());
    back
}

/// Where the stitching runs along a part of a join that is lapped by this much, and the fringe there.
fn stitched_at(
    throw: &Throw,
    task: Task,
    piece: Rect,
    lap: Length,
    context: Context<'_>,
) -> Option<String> {
    let (joining, stitch) = (throw.made(piece).joining, throw.plan.stitch);
    if task != Task::Stitch || joining != Joining::Lapped {
        return None;
    }
    let fringe = context.fringe(fringe(joining, lap, stitch)?);
    let at = match (stitch, rows(joining, lap, stitch).as_slice()) {
        (Stitch::TwoRows { .. }, [first, second]) => say!(
            context,
            "special-lap-rows",
            first = context.length(*first),
            second = context.length(*second),
            fringe = fringe
        ),
        _ => say!(
            context,
            "special-lap-middle",
            middle = context.length(lap / 2),
            fringe = fringe
        ),
    };
    Some(at)
}

/// Whether a task is the same to two pieces of one batch: what a tick for several must
/// not mix up unsaid.
fn alike(throw: &Throw, task: Task, a: Rect, b: Rect) -> bool {
    let cover = |face| throw.cover(a).on(face) == throw.cover(b).on(face);
    match task {
        Task::Cut => throw.cover(a).denim == throw.cover(b).denim,
        Task::CutFabric | Task::CoverFront | Task::CoverBack => {
            fabric_faces(task).iter().all(|face| cover(*face)) && patches_alike(throw, task, a, b)
        }
        Task::LapHalves | Task::PressHalves | Task::StitchHalves => {
            throw.lapped_halves(a) == throw.lapped_halves(b)
        }
        Task::SquareUp => {
            let held = |piece| throw.work(piece).and_then(Work::held);
            held(a) == held(b)
        }
        Task::Dot | Task::Pin | Task::PressLap | Task::Stitch => {
            let opened = |piece| throw.work(piece).and_then(|w| w.opened);
            laps_alike(throw, a, b) && opened(a) == opened(b)
        }
        _ => true,
    }
}

/// The faces whose fabric a task cuts or glues.
fn fabric_faces(task: Task) -> &'static [Face] {
    match task {
        Task::CutFabric => &Face::BOTH,
        Task::CoverFront => &[Face::Front],
        Task::CoverBack => &[Face::Back],
        _ => &[],
    }
}

/// Whether the fabric that a task cuts or glues is of one size on two squares.
fn patches_alike(throw: &Throw, task: Task, a: Rect, b: Rect) -> bool {
    let size = |piece, face| throw.patch_on(piece, face);
    let mut faces = fabric_faces(task).iter();
    faces.all(|face| size(a, *face) == size(b, *face))
}

/// Whether the joins of two pieces are lapped by the same all along.
fn laps_alike(throw: &Throw, a: Rect, b: Rect) -> bool {
    let laps = |piece| -> Vec<Length> {
        let all = throw.made(piece).lap;
        let spots = throw.assembly().join(piece).map(|j| throw.spots(j));
        let spots = spots.into_iter().flatten();
        let marked = spots.map(|(a, b)| throw.marked(a, b).unwrap_or(all));
        std::iter::once(all).chain(marked).collect()
    };
    laps(a) == laps(b)
}

/// Whether a piece of the pile is not cut up yet and gives something.
fn is_to_cut(cloth: &ClothAccount, n: u16, index: usize) -> bool {
    let piece = cloth.piece(n, index);
    !piece.cut && (piece.squares > 0 || piece.strips > 0)
}

/// What on the pile is of this square's denim and gives squares, if that was said.
fn cut_from(
    throw: &Throw,
    piece: Rect,
    cloth: &ClothAccount,
    context: Context<'_>,
) -> Option<String> {
    let denim = Some(throw.cover(piece).denim);
    let of_it = throw.pile.iter().filter(|(n, heap)| {
        let mut pieces = 0..heap.counted.len();
        heap.makes == Use::Denim { denim } && pieces.any(|index| is_to_cut(cloth, **n, index))
    });
    let names: Vec<String> = of_it.map(|(_, h)| h.name().to_string()).collect();
    (!names.is_empty()).then(|| {
        let heaps = context.words.list("list-short", names);
        say!(context, "cut-from", heaps = heaps)
    })
}

/// A caution in full; which needle or plate can be struck depends on the stitch.
pub(super) fn caution_text(
    throw: &Throw,
    task: Task,
    caution: Caution,
    context: Context<'_>,
) -> String {
    let stitch = match throw.plan.stitch {
        // One straight row with a single needle, whatever joins the squares.
        _ if matches!(
            task,
            Task::StitchPatch | Task::JoinBinding | Task::StitchBinding
        ) =>
        {
            "straight"
        }
        Stitch::Twin { .. } => "twin",
        Stitch::Zigzag { .. } => "zigzag",
        Stitch::Straight | Stitch::TwoRows { .. } => "straight",
    };
    let key = format!("caution-{}", caution.key());
    context.say(&key, &[("stitch", stitch.into())])
}

/// The account of the cloth while squares are cut; nothing is known of it where no denim is on the
/// pile.
fn cloth_there(throw: &Throw, task: Task) -> Option<ClothAccount> {
    let is_known = task == Task::Cut && throw.pile.values().any(|heap| heap.makes.is_denim());
    is_known.then(|| account(throw))
}

/// The piece to cut next for a square: one that is being cut, else the first on the pile of the
/// square's denim, else the first that gives squares of a denim still to be cut.
pub(super) fn cut_next(
    throw: &Throw,
    square: Rect,
    cloth: &ClothAccount,
    context: Context<'_>,
) -> Option<CutNext> {
    let open = throw.uncut_by_denim();
    let own = throw.cover(square).denim;
    let rank = |heap: &Heap| match heap.makes {
        Use::Denim { denim: Some(d) } if d == own => Some(1),
        Use::Denim { denim: None } => Some(2),
        Use::Denim { denim: Some(d) } => open
            .get(usize::from(d))
            .is_some_and(|n| *n > 0)
            .then_some(3),
        Use::Fabric { .. } => None,
    };
    let pieces = throw.pile.iter().flat_map(|(n, heap)| {
        let outlined = matches!(heap.from, Source::Cloth(_));
        let rank = rank(heap).filter(|_| outlined);
        let all = (0..heap.counted.len()).filter(|index| is_to_cut(cloth, *n, *index));
        all.filter_map(move |index| {
            let at = (*n, index as u8);
            let rank = match throw.begun_pieces.contains_key(&at) {
                true => rank.map(|_| 0),
                false => rank,
            };
            Some((rank?, at, heap))
        })
    });
    let (_, (n, index), heap) = pieces.min_by_key(|(rank, at, _)| (*rank, *at))?;
    Some(CutNext {
        n,
        index,
        label: say!(
            context,
            "cut-next",
            name = heap.name(),
            part = super::cutting::part(heap, usize::from(index), context)
        ),
    })
}

/// Blocks of this batch whose verdict is open, so that they are not squared up with others.
fn undecided(throw: &Throw, batch: &Batch) -> Vec<Rect> {
    let ready = crate::command::ready_for(throw, batch.kind, batch.task);
    ready
        .filter(|piece| batch.task == Task::SquareUp && is_undecided(throw, *piece))
        .collect()
}

/// The names of the first `most` pieces, and how many more there are.
fn names_of(throw: &Throw, pieces: &[Rect], most: usize, context: Context<'_>) -> String {
    let named = pieces.iter().take(most);
    let named = named.map(|p| names::piece(throw, *p, context));
    let list = context.words.list("list-short", named);
    match pieces.len().saturating_sub(most) {
        0 => list,
        more => say!(context, "names-and-more", names = list, n = more),
    }
}

/// The pieces of a batch that are the same as its first; blocks whose verdict is open are not.
fn like_the_first(throw: &Throw, batch: &Batch) -> Vec<Rect> {
    let undecided = undecided(throw, batch);
    crate::command::ready_for(throw, batch.kind, batch.task)
        .filter(|p| alike(throw, batch.task, batch.piece, *p))
        .filter(|p| *p == batch.piece || !undecided.contains(p))
        .collect()
}

/// So many squares are covered in one sitting whatever their fabrics: the card then lists them.
const COVERED: usize = 24;

/// Which fabric goes on which squares of one sitting, a line for each fabric.
fn fabrics_of(throw: &Throw, batch: &Batch, context: Context<'_>) -> Vec<String> {
    let Some(face) = covered_face(batch.task) else {
        return vec![];
    };
    let mut by_print: BTreeMap<u8, Vec<String>> = BTreeMap::new();
    for piece in together(throw, batch) {
        let named = names::square(piece);
        by_print
            .entry(throw.cover(piece).on(face).unwrap_or_default())
            .or_default()
            .push(named);
    }
    let line = |(print, squares): (u8, Vec<String>)| {
        let fabric = throw
            .prints
            .get(usize::from(print))
            .map_or("", |p| p.name.as_str());
        let squares = context.words.list("list-short", squares);
        say!(context, "told", what = fabric, how = squares)
    };
    by_print.into_iter().map(line).collect()
}

/// Whether a sitting takes no more than one row of blocks.
fn by_row(throw: &Throw, batch: &Batch) -> bool {
    tier(batch.kind) <= tier(Kind::Four) && !sitting_tasks(throw, batch).is_empty()
}

/// The pieces of one sitting: all that are alike; of pairs and fours to be lapped those in one
/// row of blocks, which are pressed before the next row is lapped.
fn together(throw: &Throw, batch: &Batch) -> Vec<Rect> {
    let row = |piece: Rect| piece.row / 2;
    let covers = matches!(batch.task, Task::CoverFront | Task::CoverBack);
    if covers && batch.count <= COVERED {
        // A patch is cut smaller, and stitched round: the step tells of one size alone.
        return crate::command::ready_for(throw, batch.kind, batch.task)
            .filter(|p| patches_alike(throw, batch.task, batch.piece, *p))
            .collect();
    }
    let by_row = by_row(throw, batch);
    let mut pieces = like_the_first(throw, batch);
    pieces.retain(|p| !by_row || row(*p) == row(batch.piece));
    pieces
}

/// The button for all of one sitting, where that is more than one task to one piece.
fn sitting_button(throw: &Throw, batch: &Batch, context: Context<'_>) -> Option<Button> {
    let task = batch.task;
    let pieces = together(throw, batch);
    let tasks = sitting_tasks(throw, batch);
    let past = match tasks.is_empty() {
        true => past(throw, task, context),
        false => say!(context, "past-lap-and-press"),
    };
    // What was never measured is not squared up with others by the large button.
    let bare = |p: &Rect| throw.work(*p).is_some_and(|w| w.measured.is_none());
    if task == Task::SquareUp && pieces.iter().any(bare) {
        return None;
    }
    let n = pieces.len();
    let action = match (tasks, n) {
        ([], 1) => return None,
        ([], _) => Command::Tick { task, pieces },
        _ => Command::TickSitting {
            tasks: tasks.to_vec(),
            pieces,
        },
    };
    let label = match n {
        1 => say!(context, "tick-sitting"),
        _ if matches!(task, Task::CoverFront | Task::CoverBack) && n == batch.count => {
            let fabrics = fabrics_of(throw, batch, context).len();
            say!(context, "tick-covered", n = n, fabrics = fabrics)
        }
        _ if n == batch.count => say!(context, "tick-all", n = n, past = past.as_str()),
        _ => say!(context, "tick-some", n = n, past = past.as_str()),
    };
    Some(Button { label, action })
}

/// What is done in one sitting to the pieces of a batch.
fn sitting_tasks(throw: &Throw, batch: &Batch) -> &'static [Task] {
    sitting(batch.task, throw.made(batch.piece).joining)
}

/// The buttons that say what is done, the largest first: for several at once only up to `most`,
/// where there is such a bound.
fn ticks(throw: &Throw, batch: &Batch, most: Option<usize>, context: Context<'_>) -> Vec<Button> {
    let (task, n) = (batch.task, batch.count);
    // Beside the button of a sitting, which presses too, it is said that these do not.
    let sits = !sitting_tasks(throw, batch).is_empty();
    let past = match sits {
        true => say!(context, "past-not-pressed"),
        false => past(throw, task, context),
    };
    let ready = || crate::command::ready_for(throw, batch.kind, task);
    let undecided = undecided(throw, batch);
    let alike = like_the_first(throw, batch);
    let differ = alike.len() < n;
    let within = |count: usize| most.is_none_or(|most| count <= most);
    let sitting = sitting_button(throw, batch, context);
    let sitting = sitting.filter(|_| within(together(throw, batch).len()));
    let whole_sitting = sitting.is_some();
    // The large button may be the one for all already.
    let all_first = whole_sitting && !sits && together(throw, batch).len() == n;
    let mut out: Vec<Button> = sitting.into_iter().collect();
    if sits && whole_sitting && together(throw, batch).len() > 1 {
        let past = say!(context, "past-lap-and-press");
        out.push(Button {
            label: say!(context, "tick-this", past = past),
            action: Command::TickSitting {
                tasks: sitting_tasks(throw, batch).to_vec(),
                pieces: vec![batch.piece],
            },
        });
    }
    out.push(Button {
        label: match n {
            1 if sews_rows(throw, task) => say!(context, "tick-stitch-rows"),
            1 if sits => say!(context, "tick-not-pressed"),
            1 => context.say(&format!("tick-{}", task.key()), &[]),
            _ => say!(context, "tick-this", past = past.as_str()),
        },
        action: Command::Tick {
            task,
            pieces: vec![batch.piece],
        },
    });
    let some_alike = differ && alike.len() > 1 && within(alike.len());
    if some_alike && together(throw, batch).len() < alike.len() {
        let lap = throw.made(batch.piece).lap;
        let label = match task {
            Task::Dot | Task::Pin | Task::PressLap | Task::Stitch => say!(
                context,
                "tick-alike-at",
                n = alike.len(),
                past = past.as_str(),
                lap = context.length(lap)
            ),
            Task::Cut => {
                let denim = usize::from(throw.cover(batch.piece).denim);
                let name = throw.denims.get(denim).map_or("", |d| d.name.as_str());
                say!(context, "tick-alike-denim", n = alike.len(), denim = name)
            }
            _ => say!(context, "tick-alike", n = alike.len(), past = past.as_str()),
        };
        let pieces = alike;
        out.push(Button {
            label,
            action: Command::Tick { task, pieces },
        });
    }
    // What the faces or the laps have different among those ticked at once.
    let prints: BTreeSet<u8> = ready()
        .flat_map(|p| {
            let Cover { front, back, .. } = throw.cover(p);
            match task {
                Task::CutFabric => [front, back],
                Task::CoverFront => [front, None],
                Task::CoverBack => [None, back],
                _ => [None, None],
            }
        })
        .flatten()
        .collect();
    let mut more = |count: usize, key: &str| {
        let mut label = say!(
            context,
            key,
            n = count,
            past = past.as_str(),
            fabrics = prints.len()
        );
        if task == Task::SquareUp {
            let decided = ready().filter(|p| !undecided.contains(p)).take(count);
            let measured = |p: Rect| throw.work(p).is_some_and(|w| w.measured.is_some());
            let bare = decided.filter(|p| !measured(*p)).count();
            if bare > 0 {
                label = say!(
                    context,
                    "tick-unmeasured",
                    label = label,
                    n = bare,
                    of = count
                );
            }
            if !undecided.is_empty() {
                let names = names_of(throw, &undecided, 3, context);
                label = say!(context, "tick-left-out", label = label, names = names);
            }
        }
        out.push(Button {
            label,
            action: Command::TickNext {
                task,
                kind: batch.kind,
                count: Count::at_most(count as u32),
            },
        });
    };
    let together = n - undecided.len();
    if together > 8 && within(8) && !differ && !whole_sitting {
        more(8, "tick-some");
    }
    let several = together > 1 || (together > 0 && undecided.contains(&batch.piece));
    let one_size = ready().all(|p| patches_alike(throw, task, batch.piece, p));
    if several && one_size && within(together) && !all_first {
        let key = match task {
            _ if !undecided.is_empty() => "tick-some",
            Task::CutFabric if differ => "tick-all-cut-fabrics",
            Task::CoverFront | Task::CoverBack if differ => "tick-all-fabrics",
            Task::Dot | Task::Pin | Task::PressLap | Task::Stitch
                if differ && ready().any(|p| !laps_alike(throw, batch.piece, p)) =>
            {
                "tick-all-laps"
            }
            _ => "tick-all",
        };
        more(together, key);
    }
    if task == Task::Cut
        && let Some(spare) = spares(throw, batch.piece, context)
    {
        // Where the pile has nothing left to cut it from, the spare is what there is.
        let at = if is_cut_from_nothing(throw, batch.piece) {
            0
        } else {
            out.len()
        };
        out.insert(at, spare);
    }
    out
}

/// That the pile has nothing for this place, and whether a spare is there.
fn told_of_spare(throw: &Throw, place: Rect, context: Context<'_>) -> Option<String> {
    let own = throw.cover(place).denim;
    let denim = throw.denims.get(usize::from(own))?;
    let key = match throw.spares_for(own) > 0 || throw.other_spares(own).is_some() {
        true => "special-spare",
        false => "special-no-spare",
    };
    is_cut_from_nothing(throw, place).then(|| say!(context, key, denim = denim.name.as_str()))
}

/// Whether denim is on the pile, and none of it gives another square for this place.
fn is_cut_from_nothing(throw: &Throw, place: Rect) -> bool {
    cloth_there(throw, Task::Cut).is_some_and(|cloth| {
        let own = usize::from(throw.cover(place).denim);
        let of_it = cloth.denims.get(own).map_or(0, |denim| denim.to_come);
        of_it + cloth.unnamed == 0
    })
}

/// The spares that can be put in an empty place: one that serves there, else one of another
/// denim.
pub(super) fn spares(throw: &Throw, place: Rect, context: Context<'_>) -> Option<Button> {
    let own = throw.cover(place).denim;
    let (label, denim) = match (throw.spares_for(own), throw.other_spares(own)) {
        (0, None) => return None,
        (0, Some((other, n))) => {
            let name = throw.denims.get(usize::from(other));
            let name = name.map_or("", |d| d.name.as_str());
            let label = say!(context, "tick-spare-other", denim = name, n = n);
            (label, Some(other))
        }
        (n, _) => (say!(context, "tick-spare", n = n), None),
    };
    Some(Button {
        label,
        action: Command::UseSpares {
            pieces: vec![place],
            denim,
        },
    })
}
