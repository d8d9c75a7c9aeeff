//! A throw on paper: the making sheet and the wall card, ready to typeset.
//!
//! A [`Sheet`] holds text and figures only; how they are laid out is the printer's. Every
//! figure is made by the function that makes it for the screen, once for each system, so
//! that paper and screen cannot differ. What the maker typed stays a plain string.
//!
//! Limits: callers pass in the day, since the core has no calendar; needles and stitches are
//! given in millimetres alone, as they are marked; the record of changes leaves out the
//! ticks, and older days than the last [`MOST_CHANGES`]; of the story's photos the first
//! [`MOST_PHOTOS`] are printed.

mod blank;
mod both;
pub mod content;
mod stages;

pub use blank::handout;
pub use content::*;

use crate::cloth::fabric::{Denim, Face};
use crate::cloth::garments::Source;
use crate::fitting::squaring::leans;
use crate::log::journal::{Journal, What};
use crate::log::lessons::heritage;
use crate::measure::Length;
use crate::measure::outline::Measures;
use crate::plan::assembly::Rect;
use crate::plan::{Joining, Stitch, rows};
use crate::show::context::Context;
use crate::show::dates::{Day, date};
use crate::show::drawing::face::{self, ClothShown, FaceMap, Letters};
use crate::show::events::joined;
use crate::show::export::PrintUnits;
use crate::show::lessons::{self, Lessons};
use crate::show::parts::{Swatch, head, swatches};
use crate::show::picture::{InkKey, Picture};
use crate::show::query::Query;
use crate::show::sheet::both::Both;
use crate::show::sheet::stages::{named, pieces_by_stage, stages, warning};
use crate::show::{cutting, events, gather, measuring, names, pile, plan, scraps};
use crate::throw::account::account;
use crate::throw::heritage::Lesson;
use crate::throw::state::Work;
use crate::throw::tasks::{Caution, Task};
use crate::throw::{Event, Throw, Time};
use std::collections::{BTreeMap, BTreeSet};

/// The changes of at most so many days are listed, the newest.
pub const MOST_CHANGES: usize = 60;

/// Of each kind of change, a day lists at most so many.
const MOST_A_DAY: usize = 3;

/// Fabrics listed on the wall card at most.
const MOST_ON_CARD: usize = 12;

/// The words that stand on every sheet.
const LABELS: [&str; 37] = [
    "making",
    "handout",
    "bench",
    "page",
    "figures",
    "supplies",
    "prints",
    "denims",
    "pile",
    "pile-past",
    "pile-other",
    "faces",
    "work",
    "squaring",
    "laps",
    "scraps",
    "notes",
    "record",
    "width",
    "height",
    "trimmed",
    "part",
    "ticked",
    "by-hand",
    "cautions",
    "order",
    "columns-steps",
    "cut-alike",
    "missing",
    "no-print",
    "wrong-side",
    "pieced",
    "totals",
    "caution",
    "lessons",
    "learned",
    "story",
];

/// A throw as it goes on paper. `day` gives the day of a moment.
pub fn sheet(
    journal: &Journal,
    context: Context<'_>,
    units: PrintUnits,
    day: &dyn Fn(Time) -> Day,
) -> Sheet {
    let context = Context {
        ruler: units.ruler(context.ruler),
        ..context
    };
    let words = units.words(context.words);
    let doubled = Context {
        words: &words,
        ..context
    };
    let (lessons, learned) = learned(journal, doubled);
    let both = Both {
        single: context,
        turned: (units == PrintUnits::Both).then(|| Context {
            ruler: context.ruler.other(),
            ..context
        }),
        doubled,
        learned,
    };
    let throw = journal.throw();
    let day_of = |at: Time| date(day(at), context.words);
    let size = throw.finished();
    let p = &throw.plan;
    let gathered = gather::gather(journal, both.doubled);
    let stages = stages(throw, &both, &day_of);
    let prints = fabrics(journal, context);
    let heaps = heaps(journal, &both);
    let totals = both.rows(|context| gather::gather(journal, context).figures);
    Sheet {
        language: context.words.language().code.to_string(),
        name: throw.name.clone(),
        subtitle: say!(
            both,
            "sheet-subtitle",
            grid = say!(both, "grid", across = p.across, down = p.down),
            squares = say!(both, "count-square", n = p.squares()),
            size = both.doubled.by(size.width, size.height)
        ),
        day: say!(both, "sheet-day", day = day_of(context.now)),
        date: Some(day(context.now).parts()),
        progress: head(journal, context).way.in_a_line(context),
        labels: LABELS
            .iter()
            .map(|key| (key.to_string(), both.say(&format!("sheet-{key}"), &[])))
            .chain([
                ("no-photo".to_string(), say!(both, "story-no-photo")),
                (
                    "own".to_string(),
                    both.say(&format!("sheet-system-{}", system(context)), &[]),
                ),
                (
                    "other".to_string(),
                    both.turned.map_or_else(String::new, |turned| {
                        both.say(&format!("sheet-system-{}", system(turned)), &[])
                    }),
                ),
            ])
            .collect(),
        units,
        blank: None,
        figures: sizes(throw, &both),
        advice: p
            .advice()
            .iter()
            .map(|a| plan::advice(a, both.doubled))
            .map(|problem| format!("{} {}", problem.said, problem.next))
            .collect(),
        lessons,
        supplies: gathered
            .rows
            .into_iter()
            .map(|row| SheetSupply {
                label: row.label,
                lines: row.lines,
                have: row.have,
            })
            .collect(),
        totals,
        said: gathered.said,
        denims: denims(throw, context),
        wrong_side: Face::BOTH.into_iter().any(|face| {
            let kinds = FaceMap::of(throw, face).kinds;
            kinds.iter().any(|kind| kind.shown.is_wrong())
        }),
        pieced: throw.pieced_placed() > 0,
        tallies: tallies(throw, context),
        past_key: past_key(&heaps),
        heaps,
        faces: vec![
            face(journal, Face::Front, &both),
            face(journal, Face::Back, &both),
        ],
        squaring: squaring(throw, &both),
        laps: laps(throw, &both),
        scraps: throw
            .scraps
            .iter()
            .enumerate()
            .map(|(i, scrap)| scraps::scrap_row(journal, i, scrap, both.doubled))
            .map(|row| SheetSupply {
                label: row.title,
                lines: row.lines,
                have: false,
            })
            .collect(),
        notes: throw
            .notes
            .iter()
            .filter(|n| n.piece.is_none_or(|p| !throw.assembly().knows(p)))
            .map(|n| SheetEntry {
                day: day_of(n.at),
                piece: String::new(),
                text: n.text.clone(),
            })
            .collect(),
        changes: changes(journal, both.doubled, &day_of),
        story: None,
        photos: Vec::new(),
        swatches: throw
            .prints
            .iter()
            .filter_map(|p| p.photo.clone())
            .collect(),
        left_off: None,
        card: card(throw, &both, &stages, &prints),
        stages,
        prints,
    }
}

/// What was learned on the throw before and what on this one, and the same by step.
fn learned(journal: &Journal, context: Context<'_>) -> (Vec<Lessons>, BTreeMap<Task, Vec<String>>) {
    let throw = journal.throw();
    let mut here = heritage(journal);
    let before = throw.after.iter().flat_map(|h| &h.lessons);
    let before: BTreeSet<String> = before.filter_map(|l| lessons::said(l, context)).collect();
    // Her own lessons from the throw before are there; her pace is given step by step.
    let told_there = |l: &Lesson| lessons::said(l, context).is_some_and(|l| before.contains(&l));
    here.lessons.retain(|l| !told_there(l));
    here.paces.clear();
    let own = lessons::view(&here, context).map(|view| Lessons {
        title: say!(context, "sheet-learned-here"),
        ..view
    });
    let older = throw.after.as_ref().and_then(|h| lessons::view(h, context));
    let by_step = |task: Task| {
        let mut lines = lessons::at_step(throw, task, context);
        let own = here.lessons.iter().filter(|l| l.task == Some(task));
        lines.extend(own.filter_map(|l| lessons::said(l, context)));
        (task, lines)
    };
    let by_step = Task::ALL.into_iter().map(by_step).collect();
    (older.into_iter().chain(own).collect(), by_step)
}

fn system(context: Context<'_>) -> &'static str {
    match context.ruler.system {
        crate::measure::System::Inch => "inch",
        crate::measure::System::Metric => "metric",
    }
}

fn sizes(throw: &Throw, both: &Both<'_>) -> Vec<Row> {
    let p = &throw.plan;
    let mut rows = both.row("square", |l| l.by(p.side, p.side));
    let lap = match p.joining {
        Joining::Lapped => "lap",
        _ => "allowance",
    };
    rows.extend(both.row(lap, |l| l.length(p.lap)));
    if p.lap_between() != p.lap {
        rows.extend(both.row("between", |l| l.length(p.lap_between())));
    }
    rows.extend(both.row("stitch", |l| l.plain(scraps::stitch(p.stitch, l))));
    rows.extend(both.row("stitch-length", |l| l.needle(p.stitch_long())));
    rows.extend(both.rows(|l| plan::figures_of(p, Some(throw), Some(throw.covers()), l)));
    if let Some(whole) = throw.wholes.last() {
        let size = whole.size;
        rows.extend(both.row("measured", |l| l.by(size.width, size.height)));
    }
    rows.extend(both.row("strip", |l| l.length(p.binding.strip)));
    rows.extend(both.row("cooling", |l| {
        l.plain(say!(l, "minutes", n = p.cooling_minutes))
    }));
    rows
}

fn tallies(throw: &Throw, context: Context<'_>) -> Vec<Row> {
    let row = |key: &str, n: usize| Row {
        label: context.say(&format!("sheet-{key}"), &[]),
        own: say!(context, "number", n = n),
        other: None,
    };
    vec![
        row("spares", throw.spares.get() as usize),
        row("spoilt", throw.losses.len()),
    ]
}

fn fabrics(journal: &Journal, context: Context<'_>) -> Vec<Fabric> {
    let throw = journal.throw();
    let fabric = |(swatch, n): (Swatch, u8)| Fabric {
        swatch: face::swatch(throw, &[ClothShown::Print(n)], &swatch.letters),
        letters: swatch.letters,
        name: swatch.print.name,
        count: swatch.count,
    };
    swatches(journal, context)
        .into_iter()
        .zip(0..)
        .map(fabric)
        .collect()
}

fn denims(throw: &Throw, context: Context<'_>) -> Vec<Fabric> {
    let letters = Letters::of(throw);
    let denim = |(denim, n): (&Denim, u8)| {
        let right = ClothShown::Denim { n, wrong: false };
        let wrong = ClothShown::Denim { n, wrong: true };
        let covers = || throw.covers().iter();
        let shows = |face| covers().any(|c| ClothShown::of(*c, face, throw.prints.len()) == wrong);
        let sides = match Face::BOTH.into_iter().any(shows) {
            true => vec![right, wrong],
            false => vec![right],
        };
        Fabric {
            swatch: face::swatch(throw, &sides, ""),
            letters: letters.on(right),
            name: denim.name.clone(),
            count: say!(
                context,
                "count-square",
                n = covers().filter(|c| c.denim == n).count()
            ),
        }
    };
    throw.denims.iter().zip(0..).map(denim).collect()
}

fn heaps(journal: &Journal, both: &Both<'_>) -> Vec<HeapPart> {
    let throw = journal.throw();
    let view = pile::pile(journal, both.doubled);
    let account = account(throw);
    let rows = view.rows.into_iter();
    rows.filter_map(|row| {
        let heap = throw.pile.get(&row.n)?;
        let mut lines = vec![row.said, row.weight];
        if row.stretch {
            lines.push(say!(both, "cut-stretch"));
        }
        if heap.wash_first() {
            lines.push(say!(both, "cut-unwashed"));
        }
        let mut cuts: Vec<Cuts> = Vec::new();
        let outlined = matches!(heap.from, Source::Cloth(_));
        for piece in row.pieces.iter().filter(|_| outlined) {
            let at = (row.n, piece.index);
            let seen = cutting::on_paper(journal, at, &account, both.doubled);
            let Ok(seen) = seen else { continue };
            // What is cut up needs no cutting list any more.
            let list = seen.list.iter().filter(|_| !piece.cut).map(|row| {
                let (title, text) = (row.title.as_str(), row.text.as_str());
                let line = say!(both, "cut-row", title = title, text = text);
                let parts = [Some(line), row.chalk.clone()];
                SheetCutLine {
                    done: row.done,
                    text: both
                        .doubled
                        .words
                        .list("sentences", parts.into_iter().flatten()),
                }
            });
            let list: Vec<SheetCutLine> = list.collect();
            // Remarks about the whole heap are not repeated.
            let mut said: Vec<String> = seen.left.into_iter().chain(seen.said).collect();
            said.retain(|line| !piece.cut && !lines.contains(line));
            let picture = seen.picture;
            let marks = |p: &Option<Picture>| p.as_ref().map(|p| p.marks.clone());
            let same = cuts
                .iter_mut()
                .find(|c| c.list == list && c.said == said && marks(&c.picture) == marks(&picture));
            match same {
                Some(cuts) => cuts.titles.push(piece.label.clone()),
                None => cuts.push(Cuts {
                    titles: vec![piece.label.clone()],
                    picture,
                    list,
                    said,
                    key: seen.key,
                }),
            }
        }
        Some(HeapPart {
            title: row.title,
            lines,
            pieces: row.pieces.into_iter().map(|p| [p.label, p.said]).collect(),
            cuts,
        })
    })
    .collect()
}

/// The signs of all that is cut up, each once.
fn past_key(heaps: &[HeapPart]) -> Vec<InkKey> {
    let mut key: Vec<InkKey> = Vec::new();
    let cuts = heaps.iter().flat_map(|heap| &heap.cuts);
    for line in cuts.filter(|c| c.list.is_empty()).flat_map(|c| &c.key) {
        if key.iter().all(|known| known.label != line.label) {
            key.push(line.clone());
        }
    }
    key
}

fn face(journal: &Journal, face: Face, both: &Both<'_>) -> FacePart {
    let throw = journal.throw();
    let seen = super::answer(journal, &Query::Faces { face }, both.single);
    let (title, spoken, mut lines) = match seen {
        Ok(crate::show::View::Faces(seen)) => (seen.title, seen.spoken, seen.lines),
        _ => Default::default(),
    };
    if face == Face::Back {
        lines.insert(0, say!(both, "sheet-mirrored"));
    }
    let map = FaceMap::of(throw, face);
    let first = map.squares.iter().filter(|laid| laid.y == 0);
    FacePart {
        title,
        spoken,
        lines,
        columns: first.map(|laid| laid.square.col + 1).collect(),
        map,
    }
}

fn squaring(throw: &Throw, both: &Both<'_>) -> Option<Squaring> {
    let blocks: Vec<Rect> = throw
        .assembly()
        .blocks()
        .into_iter()
        .filter(|b| throw.assembly().is_block(*b))
        .collect();
    if blocks.is_empty() {
        return None;
    }
    let context = both.doubled;
    let mut figures = Vec::new();
    let mut listed = BTreeSet::new();
    for block in &blocks {
        let target = throw.target(*block);
        let kind = throw.kind(*block);
        if listed.insert((names::key(kind), block.rows, block.cols)) {
            let mut rows = both.row("trim-to", |l| l.by(target.width, target.height));
            for row in &mut rows {
                row.label = say!(
                    both,
                    "sheet-trim-of",
                    kind = context.say(&format!("kind-{}", names::key(kind)), &[])
                );
            }
            figures.extend(rows);
        }
    }
    figures.extend(both.rows(|l| measuring::summed(throw, l).0));
    let four = throw.plan.target();
    Some(Squaring {
        figures,
        said: measuring::summed(throw, context).1,
        blocks: blocks
            .iter()
            .map(|block| {
                let target = throw.target(*block);
                let same = target.width == four && target.height == four;
                SheetBlock {
                    label: names::piece(throw, *block, context),
                    target: match same {
                        true => String::new(),
                        false => context.by(target.width, target.height).text,
                    },
                    measured: throw.work(*block).and_then(|w| as_measured(w, context)),
                    leans: still_leans(throw, *block),
                    done: throw.is_through(*block, Task::SquareUp),
                }
            })
            .collect(),
        leaning: leaning(throw, &blocks, context),
    })
}

/// Whether a block leans, which it does until it is cut.
fn still_leans(throw: &Throw, block: Rect) -> bool {
    let work = throw.work(block);
    work.is_some_and(|work| work.squared.is_none()) && leans(throw, block)
}

/// What blocks that lean hold, a sentence for each size.
fn leaning(throw: &Throw, blocks: &[Rect], context: Context<'_>) -> String {
    let mut by_size: Vec<(String, Vec<String>)> = Vec::new();
    for block in blocks.iter().filter(|b| still_leans(throw, **b)) {
        let Some(held) = throw.work(*block).and_then(|w| w.measured) else {
            continue;
        };
        let size = context.by(held.width, held.height).text;
        let name = names::piece(throw, *block, context);
        match by_size.iter_mut().find(|(known, _)| *known == size) {
            Some((_, names)) => names.push(name),
            None => by_size.push((size, vec![name])),
        }
    }
    let told = by_size.into_iter().map(|(size, names)| {
        say!(
            context,
            "sheet-leaning",
            n = names.len(),
            pieces = context.words.list("list-short", names),
            size = size
        )
    });
    context.words.list("sentences", told)
}

/// The width and height of a block as the tape gave them: both sides where they differ, and not
/// what a block that leans holds.
fn as_measured(work: &Work, context: Context<'_>) -> Option<[String; 2]> {
    let held = work.measured?;
    let text = |length: Length| context.length(length).text;
    let Some(Measures { sides, .. }) = work.outline else {
        return Some([held.width, held.height].map(text));
    };
    let two = [(sides.top, sides.bottom), (sides.left, sides.right)];
    Some(two.map(|(one, other)| match one == other {
        true => text(one),
        false => context.words.list("list-short", [text(one), text(other)]),
    }))
}

/// Laps marked for two neighbours, and joins begun with another lap than the plan's now.
fn laps(throw: &Throw, both: &Both<'_>) -> Vec<String> {
    let context = both.doubled;
    let mut out: Vec<String> = throw
        .marks()
        .map(|(a, b, lap)| {
            say!(
                context,
                "special-lap",
                a = names::piece(throw, a, context),
                b = names::piece(throw, b, context),
                lap = context.length(lap),
                joining = joined(throw.plan.joining)
            )
        })
        .collect();
    let within = |p: Rect| p.count() == 2 || throw.assembly().is_block(p);
    // Joins that differ alike are named in one line, those of one kind in the order of their boxes.
    let mut others: Vec<((Length, Length), Vec<Rect>)> = Vec::new();
    for piece in throw.assembly().pieces() {
        let Some(made) = throw.work(piece).and_then(|w| w.made) else {
            continue;
        };
        let planned = match within(piece) {
            true => throw.plan.lap,
            false => throw.plan.lap_between(),
        };
        if (made.joining, made.lap) != (throw.plan.joining, planned) {
            let like = (made.lap, planned);
            match others.iter_mut().find(|(known, _)| *known == like) {
                Some((_, pieces)) => pieces.push(piece),
                None => others.push((like, vec![piece])),
            }
        }
    }
    out.extend(others.into_iter().map(|((lap, planned), differ)| {
        let mut by_stage = Vec::new();
        for (key, pieces) in pieces_by_stage(throw) {
            let (names, n) = named(throw, &pieces, |p| differ.contains(&p), context);
            if n > 0 {
                let stage = both.say(&format!("sheet-stage-{key}"), &[]);
                by_stage.push(say!(both, "sheet-value-at", value = stage, pieces = names));
            }
        }
        say!(
            both,
            "sheet-lap-made",
            pieces = context.words.list("list-long", by_stage),
            n = differ.len(),
            lap = context.length(lap),
            planned = context.length(planned)
        )
    }));
    out
}

/// Whether an event is more than a tick, a measure, a note or a supply.
fn is_change(event: &Event) -> bool {
    if let Event::FacesChanged { faces, .. } = event {
        return !faces.is_empty();
    }
    matches!(
        event,
        Event::Begun { .. }
            | Event::Renamed { .. }
            | Event::PlanChanged { .. }
            | Event::ClothChanged { .. }
            | Event::LapsMarked { .. }
            | Event::Patched { .. }
            | Event::Unpicked { .. }
            | Event::Moved { .. }
            | Event::SetAside { .. }
            | Event::WholeMeasured { .. }
            | Event::Spoilt { .. }
    )
}

/// What changed, a line for each day, the newest first. Of each kind of change a day has at
/// most [`MOST_A_DAY`]; the rest are counted. Changed faces of a day are summed up.
fn changes(
    journal: &Journal,
    context: Context<'_>,
    day_of: &dyn Fn(Time) -> String,
) -> Vec<SheetEntry> {
    let throw = journal.throw();
    let mut days: Vec<(String, Vec<&Event>)> = Vec::new();
    let happened = journal.entries().rev().filter(|(_, stands)| *stands);
    for (entry, _) in happened {
        let What::Do(events) = &entry.what else {
            continue;
        };
        let changed = events.iter().rev().filter(|e| is_change(e));
        let day = day_of(entry.at);
        for event in changed {
            match days.last_mut() {
                Some((last, events)) if *last == day => events.push(event),
                _ => days.push((day.clone(), vec![event])),
            }
        }
    }
    let line = |(day, events): (String, Vec<&Event>)| SheetEntry {
        day,
        piece: String::new(),
        text: context
            .words
            .list("list-long", summed(events, throw, context)),
    };
    days.into_iter().take(MOST_CHANGES).map(line).collect()
}

/// The changes of a day in words.
fn summed(events: Vec<&Event>, throw: &Throw, context: Context<'_>) -> Vec<String> {
    let mut said = Vec::new();
    let mut faces = BTreeSet::new();
    let mut by_kind: Vec<(std::mem::Discriminant<Event>, usize)> = Vec::new();
    let mut more = 0;
    for event in events {
        if let Event::FacesChanged { faces: changed, .. } = event {
            faces.extend(changed.iter().map(|(piece, _)| *piece));
            continue;
        }
        let kind = std::mem::discriminant(event);
        let before = match by_kind.iter_mut().find(|(known, _)| *known == kind) {
            Some((_, count)) => {
                *count += 1;
                *count
            }
            None => {
                by_kind.push((kind, 1));
                1
            }
        };
        match before > MOST_A_DAY {
            true => more += 1,
            false => said.push(events::event(event, throw, context)),
        }
    }
    if !faces.is_empty() {
        said.push(say!(context, "did-faces", n = faces.len()));
    }
    if more > 0 {
        said.push(say!(context, "sheet-more-changes", n = more));
    }
    said
}

fn card(throw: &Throw, both: &Both<'_>, stages: &[SheetStage], prints: &[Fabric]) -> WallCard {
    let p = &throw.plan;
    let context = both.doubled;
    let mut figures = both.row("square", |l| l.by(p.side, p.side));
    let lapped = p.joining == Joining::Lapped;
    let lap = if lapped { "lap" } else { "allowance" };
    figures.extend(both.row(lap, |l| l.length(p.lap)));
    if p.lap_between() != p.lap {
        figures.extend(both.row("between", |l| l.length(p.lap_between())));
    }
    let rows = rows(p.joining, p.lap, p.stitch);
    match (p.stitch, rows.as_slice()) {
        (Stitch::TwoRows { .. }, [first, second]) => {
            figures.extend(both.row("row-first", |l| l.length(*first)));
            figures.extend(both.row("row-second", |l| l.length(*second)));
        }
        _ if lapped => figures.extend(both.row("middle", |l| l.length(p.lap / 2))),
        _ => {}
    }
    figures.extend(both.row("stitch", |l| l.plain(scraps::stitch(p.stitch, l))));
    figures.extend(both.row("stitch-length", |l| l.needle(p.stitch_long())));
    if let Some(fringe) = p.fringe() {
        figures.extend(both.row("fringe", |l| l.fringe(fringe)));
    }
    figures.extend(both.row("pair", |l| l.by(p.run(2), p.side)));
    let natural = p.natural_four();
    // A four that is no larger than it is trimmed to is told once.
    if natural != p.target() {
        figures.extend(both.row("four", |l| l.by(natural, natural)));
    }
    let mut trimmed = both.row("trim-to", |l| l.by(p.target(), p.target()));
    for row in &mut trimmed {
        let four = say!(both, "kind-four");
        row.label = say!(both, "sheet-trim-of", kind = four);
    }
    figures.extend(trimmed);
    let size = throw.finished();
    figures.extend(both.row("finished", |l| l.by(size.width, size.height)));
    figures.extend(both.row("strip", |l| l.length(p.binding.strip)));
    figures.extend(both.row("cooling", |l| {
        l.plain(say!(l, "minutes", n = p.cooling_minutes))
    }));
    let order = stages
        .iter()
        .map(|stage| {
            let columns = stage.columns.clone();
            let what = match stage.count.as_str() {
                "" => stage.title.clone(),
                count => count.to_string(),
            };
            (what, columns)
        })
        .map(|(what, columns)| {
            say!(
                both,
                "sheet-order-line",
                what = what,
                steps = columns.join(&both.say("sheet-then", &[]))
            )
        })
        .collect();
    let cautions = [
        Caution::Blade,
        Caution::Iron,
        Caution::Needle,
        Caution::Lint,
        Caution::Children,
    ];
    let used: Vec<Fabric> = prints.to_vec();
    let over = used.len().saturating_sub(MOST_ON_CARD);
    WallCard {
        figures,
        order,
        cautions: cautions.map(|c| warning(c, None, context)).into(),
        prints: used.into_iter().take(MOST_ON_CARD).collect(),
        more: (over > 0).then(|| say!(both, "sheet-more-prints", n = over)),
    }
}
