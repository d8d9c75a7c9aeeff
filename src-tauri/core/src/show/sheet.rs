//! A throw on paper: the making sheet and the wall card, ready to typeset.
//!
//! A [`Sheet`] holds text and figures only; how they are laid out is the printer's. Every
//! figure is made by the function that makes it for the screen, once for each system, so
//! that paper and screen cannot differ. What the maker typed stays a plain string.
//!
//! Limits: the day is handed in, since the core has no calendar; needles and stitches are
//! told in millimetres alone, as they are marked; the record of changes leaves out the
//! ticks, and older entries than the last [`MOST_CHANGES`]; of the story's photos the first
//! [`MOST_PHOTOS`] are printed.

use super::{Lens, gather, head, history, lessons, measuring, names, pile, plan, story};
use super::{swatches, work};
use crate::cloth::fabric::{Face, Texture};
use crate::cloth::garments::Source;
use crate::faces::spread::mirrored;
use crate::log::journal::{Journal, What};
use crate::plan::Joining;
use crate::plan::assembly::{Kind, Rect};
use crate::throw::heritage::Lesson;
use crate::throw::photos::PhotoId;
use crate::throw::tasks::{Caution, Task};
use crate::throw::{Event, Throw, Time};
use crate::view::{Figure, Lessons, Look, Picture, Story};
use crate::words::Words;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// How many changes are told at most, the newest.
pub const MOST_CHANGES: usize = 60;
/// How many photos are printed at most, the first.
pub const MOST_PHOTOS: usize = 100;
/// Fabrics told on the wall card at most.
const MOST_ON_CARD: usize = 12;

/// A day, handed in by whoever has a calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Day {
    /// The year.
    pub year: i32,
    /// The month, from 1.
    pub month: u8,
    /// The day of the month, from 1.
    pub day: u8,
}

/// A figure in both systems.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Row {
    /// What it is.
    pub label: String,
    /// As the maker's own ruler says.
    pub own: String,
    /// As the other system says; none where it is not a measure.
    pub other: Option<String>,
}

/// Something to have at hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Supply {
    /// What.
    pub label: String,
    /// How much, and what to know.
    pub lines: Vec<String>,
    /// It is at hand already.
    pub have: bool,
}

/// A fabric or a denim.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Fabric {
    /// Its letters in the pictures.
    pub letters: String,
    /// Its name.
    pub name: String,
    /// Its colour, `#rrggbb`.
    pub colour: String,
    /// Its drawn texture; none for a denim.
    pub texture: Option<Texture>,
    /// How many squares of it.
    pub count: String,
}

/// One outline with its cuts; several pieces may share it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Cuts {
    /// The pieces cut like this.
    pub titles: Vec<String>,
    /// The outline with places to avoid and where squares and strips lie.
    pub picture: Option<Picture>,
    /// Its strips, in order.
    pub list: Vec<String>,
    /// What to know.
    pub said: Vec<String>,
}

/// One garment, cloth or pack.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct HeapPart {
    /// What the maker calls it.
    pub title: String,
    /// What it is for and gives.
    pub lines: Vec<String>,
    /// Its pieces, each with what it gives.
    pub pieces: Vec<[String; 2]>,
    /// How to cut them.
    pub cuts: Vec<Cuts>,
}

/// One square in a picture of a face.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Cell {
    /// The print it shows, counted from 0.
    pub print: Option<u8>,
    /// The denim, counted from 0.
    pub denim: u8,
}

/// One face, as it is seen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct FacePart {
    /// Front or back.
    pub title: String,
    /// What to know; the back says that it is mirrored.
    pub lines: Vec<String>,
    /// The picture in words.
    pub spoken: String,
    /// The squares, row by row, as they are seen.
    pub rows: Vec<Vec<Cell>>,
    /// The place each column is chalked with, from the left as it is seen.
    pub columns: Vec<u16>,
}

/// A caution.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Warning {
    /// In a word or two.
    pub title: String,
    /// What to do.
    pub text: String,
}

/// One kind of work in a stage.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Step {
    /// What to do.
    pub title: String,
    /// Where.
    pub station: String,
    /// For how many pieces, and how many are done.
    pub count: String,
    /// How.
    pub how: Vec<String>,
    /// What was learned of it, on the throw before and on this one; where it comes up first.
    pub learned: Vec<String>,
    /// Figures needed for it.
    pub figures: Vec<Row>,
    /// The caution that belongs here: at length where it comes up first, then in short, once
    /// a stage.
    pub caution: Option<Warning>,
    /// A box for the step itself where it is not ticked piece by piece; whether it is done.
    pub tick: Option<bool>,
}

/// A box to tick.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Tick {
    /// It is done.
    pub done: bool,
    /// The letters of the print, where a fabric goes on.
    pub letters: String,
}

/// One piece with its boxes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Line {
    /// The piece's name.
    pub label: String,
    /// A box for each column; none where it does not go through that work.
    pub ticks: Vec<Option<Tick>>,
}

/// Something the maker wrote down, or that happened.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Entry {
    /// On which day.
    pub day: String,
    /// About which piece.
    pub piece: String,
    /// Her words, or what happened.
    pub text: String,
}

/// A stage of the work: squares, pairs, fours, larger joins, the whole, binding, washing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Stage {
    /// Its name.
    pub title: String,
    /// How many pieces.
    pub count: String,
    /// The work in order.
    pub steps: Vec<Step>,
    /// Its steps in a word or two, in the order of the boxes.
    pub columns: Vec<String>,
    /// The pieces with their boxes.
    pub lines: Vec<Line>,
    /// What she wrote down about pieces of this stage.
    pub notes: Vec<Entry>,
}

/// One block to be squared up.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Block {
    /// Its name.
    pub label: String,
    /// What to trim it to, where it is no four.
    pub target: String,
    /// Its width and height as measured, if it was.
    pub measured: Option<[String; 2]>,
    /// It is squared up.
    pub done: bool,
}

/// Squaring up.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Squaring {
    /// The sizes to trim to, and what was measured on average.
    pub figures: Vec<Row>,
    /// What the measures say.
    pub said: String,
    /// The blocks.
    pub blocks: Vec<Block>,
}

/// The wall card.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Card {
    /// The figures needed at the table, the iron and the machine.
    pub figures: Vec<Row>,
    /// The order of work, one short line each.
    pub order: Vec<String>,
    /// Cautions in short.
    pub cautions: Vec<Warning>,
    /// The prints with their letters.
    pub prints: Vec<Fabric>,
    /// How many prints found no room, in words.
    pub more: Option<String>,
}

/// All of a throw that goes on paper.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sheet {
    /// The language of the words, as in BCP 47.
    pub language: String,
    /// What the maker calls the throw.
    pub name: String,
    /// Its size in a line.
    pub subtitle: String,
    /// The day of printing, in words.
    pub day: String,
    /// The day of printing: year, month, day.
    pub date: [i32; 3],
    /// How far it is.
    pub progress: String,
    /// Headings and the like, by key.
    pub labels: BTreeMap<String, String>,
    /// The sizes.
    pub figures: Vec<Row>,
    /// Doubts about the plan that she should hear.
    pub advice: Vec<String>,
    /// What was learned: on the throw before, and on this one.
    pub lessons: Vec<Lessons>,
    /// What to have at hand.
    pub supplies: Vec<Supply>,
    /// Weight, cloth and time.
    pub totals: Vec<Row>,
    /// What to know of them.
    pub said: Vec<String>,
    /// The prints.
    pub prints: Vec<Fabric>,
    /// The denims.
    pub denims: Vec<Fabric>,
    /// Squares to spare and squares spoilt.
    pub tallies: Vec<Row>,
    /// The clothes pile.
    pub heaps: Vec<HeapPart>,
    /// Front and back.
    pub faces: Vec<FacePart>,
    /// The order of work.
    pub stages: Vec<Stage>,
    /// Squaring up; none where there is no block.
    pub squaring: Option<Squaring>,
    /// Laps that differ from the plan.
    pub laps: Vec<String>,
    /// Scraps tried: what, and what came of it.
    pub scraps: Vec<Supply>,
    /// What she wrote down about the throw as such.
    pub notes: Vec<Entry>,
    /// What changed on the way, the newest first.
    pub changes: Vec<Entry>,
    /// The story, where it was asked for.
    pub story: Option<Story>,
    /// Its photos that are printed, in order.
    pub photos: Vec<PhotoId>,
    /// How many of its photos found no room, in words.
    pub left_off: Option<String>,
    /// The wall card.
    pub card: Card,
}

impl Sheet {
    /// The same with the story at its end; `east` is how far local time is east of UTC, in
    /// minutes.
    pub fn with_story(self, journal: &Journal, east: i32, lens: Lens<'_>) -> Sheet {
        let doubled = lens.words.doubled();
        let words = &doubled;
        let told = story::story(journal, east, Lens { words, ..lens });
        let items = told.days.iter().flat_map(|day| &day.items);
        let mut photos: Vec<PhotoId> = items.filter_map(|item| item.photo.clone()).collect();
        let over = photos.len().saturating_sub(MOST_PHOTOS);
        photos.truncate(MOST_PHOTOS);
        Sheet {
            left_off: (over > 0)
                .then(|| say!(lens, "sheet-left-off", n = over, most = MOST_PHOTOS)),
            photos,
            story: Some(told),
            ..self
        }
    }
}

/// The words that stand on every sheet.
const LABELS: [&str; 32] = [
    "making",
    "bench",
    "page",
    "figures",
    "supplies",
    "prints",
    "denims",
    "pile",
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
    "totals",
    "caution",
    "lessons",
    "learned",
    "story",
];

/// What is made twice over: with the maker's ruler, and turned over.
struct Both<'a> {
    single: Lens<'a>,
    turned: Lens<'a>,
    doubled: Lens<'a>,
    /// What was learned of each step.
    learned: BTreeMap<Task, Vec<String>>,
}

impl Both<'_> {
    fn say(&self, key: &str, args: &[(&str, crate::words::Arg)]) -> String {
        self.doubled.say(key, args)
    }

    /// The same figures by either ruler, side by side.
    fn rows(&self, figures: impl Fn(Lens<'_>) -> Vec<Figure>) -> Vec<Row> {
        let (own, other) = (figures(self.single), figures(self.turned));
        own.into_iter()
            .zip(other)
            .map(|(own, other)| Row {
                label: own.label,
                other: (own.value.text != other.value.text).then_some(other.value.text),
                own: own.value.text,
            })
            .collect()
    }

    fn row(&self, key: &str, value: impl Fn(Lens<'_>) -> crate::words::Shown) -> Vec<Row> {
        self.rows(|lens| {
            vec![Figure {
                label: lens.say(&format!("figure-{key}"), &[]),
                value: value(lens),
            }]
        })
    }
}

/// A throw as it goes on paper. `day` tells on which day a moment fell.
pub fn sheet(journal: &Journal, lens: Lens<'_>, day: &dyn Fn(Time) -> Day) -> Sheet {
    let doubled = lens.words.doubled();
    let (lessons, learned) = learned(
        journal,
        Lens {
            words: &doubled,
            ..lens
        },
    );
    let both = Both {
        single: lens,
        turned: Lens {
            ruler: lens.ruler.other(),
            ..lens
        },
        doubled: Lens {
            words: &doubled,
            ..lens
        },
        learned,
    };
    let throw = journal.throw();
    let told = |at: Time| date(day(at), lens.words);
    let size = throw.finished();
    let p = &throw.plan;
    let gathered = gather::gather(journal, both.doubled);
    let stages = stages(throw, &both, &told);
    let prints = fabrics(journal, lens);
    let totals = both.rows(|lens| gather::gather(journal, lens).figures);
    let seen = head(journal, lens);
    Sheet {
        language: lens.words.language().code.to_string(),
        name: throw.name.clone(),
        subtitle: say!(
            both,
            "sheet-subtitle",
            grid = say!(both, "grid", across = p.across, down = p.down),
            squares = say!(both, "count-square", n = p.squares()),
            size = both.doubled.by(size.width, size.height)
        ),
        day: say!(both, "sheet-day", day = told(lens.now)),
        date: {
            let today = day(lens.now);
            [today.year, i32::from(today.month), i32::from(today.day)]
        },
        progress: seen.progress,
        labels: LABELS
            .iter()
            .map(|key| (key.to_string(), both.say(&format!("sheet-{key}"), &[])))
            .chain([
                ("no-photo".to_string(), say!(both, "story-no-photo")),
                (
                    "own".to_string(),
                    both.say(&format!("sheet-system-{}", system(lens)), &[]),
                ),
                (
                    "other".to_string(),
                    both.say(&format!("sheet-system-{}", system(both.turned)), &[]),
                ),
            ])
            .collect(),
        figures: sizes(throw, &both),
        advice: p
            .advice()
            .iter()
            .map(|a| plan::advice(a, both.doubled))
            .map(|told| format!("{} {}", told.said, told.next))
            .collect(),
        lessons,
        supplies: gathered
            .rows
            .into_iter()
            .map(|row| Supply {
                label: row.label,
                lines: row.lines,
                have: row.have,
            })
            .collect(),
        totals,
        said: gathered.said,
        denims: throw
            .denims
            .iter()
            .enumerate()
            .map(|(i, denim)| {
                let covers = throw.covers().iter();
                let n = covers.filter(|c| usize::from(c.denim) == i).count();
                Fabric {
                    letters: String::new(),
                    name: denim.name.clone(),
                    colour: denim.colour.clone(),
                    texture: None,
                    count: say!(lens, "count-square", n = n),
                }
            })
            .collect(),
        tallies: tallies(throw, lens),
        heaps: heaps(journal, &both),
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
            .map(|(i, scrap)| gather::scrap_row(journal, i, scrap, both.doubled))
            .map(|row| Supply {
                label: row.title,
                lines: row.lines,
                have: false,
            })
            .collect(),
        notes: throw
            .notes
            .iter()
            .filter(|n| n.piece.is_none_or(|p| !throw.assembly().knows(p)))
            .map(|n| Entry {
                day: told(n.at),
                piece: String::new(),
                text: n.text.clone(),
            })
            .collect(),
        changes: changes(journal, both.doubled, &told),
        story: None,
        photos: Vec::new(),
        left_off: None,
        card: card(throw, &both, &stages, &prints),
        stages,
        prints,
    }
}

/// What was learned on the throw before and what on this one, and the same by step.
fn learned(journal: &Journal, lens: Lens<'_>) -> (Vec<Lessons>, BTreeMap<Task, Vec<String>>) {
    let throw = journal.throw();
    let mut here = lessons::heritage(journal, lens);
    let before = throw.after.iter().flat_map(|h| &h.lessons);
    let before: BTreeSet<&str> = before.map(|l| l.words.as_str()).collect();
    // Her own from the throw before are told there; her pace is told step by step.
    here.lessons.retain(|l| !before.contains(l.words.as_str()));
    here.paces.clear();
    let own = lessons::told(&here, lens).map(|told| Lessons {
        title: say!(lens, "sheet-learned-here"),
        ..told
    });
    let older = throw.after.as_ref().and_then(|h| lessons::told(h, lens));
    let by_step = |task: Task| {
        let mut lines = lessons::at_step(throw, task, lens);
        let own = here.lessons.iter().filter(|l| l.task == Some(task));
        lines.extend(own.map(|l: &Lesson| l.words.clone()));
        (task, lines)
    };
    let by_step = Task::ALL.into_iter().map(by_step).collect();
    (older.into_iter().chain(own).collect(), by_step)
}

fn system(lens: Lens<'_>) -> &'static str {
    match lens.ruler.system {
        crate::measure::System::Inch => "inch",
        crate::measure::System::Metric => "metric",
    }
}

/// A day in words.
pub fn date(day: Day, words: &Words) -> String {
    let month = say!(words, format!("ui-month-{}", day.month));
    // A year is no count: it takes no thousands sign.
    say!(
        words,
        "ui-date",
        day = day.day,
        month = month,
        year = day.year.to_string()
    )
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
    rows.extend(both.row("stitch", |l| l.plain(gather::stitch(p.stitch, l))));
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

fn tallies(throw: &Throw, lens: Lens<'_>) -> Vec<Row> {
    let row = |key: &str, n: usize| Row {
        label: lens.say(&format!("sheet-{key}"), &[]),
        own: say!(lens, "number", n = n),
        other: None,
    };
    vec![
        row("spares", throw.spares.get() as usize),
        row("spoilt", throw.losses.len()),
    ]
}

fn fabrics(journal: &Journal, lens: Lens<'_>) -> Vec<Fabric> {
    swatches(journal, lens)
        .into_iter()
        .map(|s| Fabric {
            letters: s.letters,
            name: s.print.name,
            colour: s.print.colour,
            texture: Some(s.print.texture),
            count: s.count,
        })
        .collect()
}

fn heaps(journal: &Journal, both: &Both<'_>) -> Vec<HeapPart> {
    let throw = journal.throw();
    let view = pile::pile(journal, both.doubled);
    let rows = view.rows.into_iter();
    rows.filter_map(|row| {
        let heap = throw.pile.get(&row.n)?;
        let mut lines = vec![row.said, row.weight];
        if row.stretch {
            lines.push(say!(both, "cut-stretch"));
        }
        if !row.washed {
            lines.push(say!(both, "cut-unwashed"));
        }
        let mut cuts: Vec<Cuts> = Vec::new();
        let outlined = matches!(heap.from, Source::Cloth(_));
        for piece in row.pieces.iter().filter(|_| outlined) {
            let seen = pile::cutting(journal, (row.n, piece.index), None, None, both.doubled);
            let Ok(seen) = seen else { continue };
            // What is cut up needs no cutting list any more.
            let list = if piece.cut { Vec::new() } else { seen.list };
            // What was said of the whole heap is not said again.
            let mut said = seen.said;
            said.retain(|line| !piece.cut && !lines.contains(line));
            let marks = |p: &Option<Picture>| p.as_ref().map(|p| p.marks.clone());
            let same = cuts.iter_mut().find(|c| {
                c.list == list && c.said == said && marks(&c.picture) == marks(&seen.picture)
            });
            match same {
                Some(cuts) => cuts.titles.push(piece.label.clone()),
                None => cuts.push(Cuts {
                    titles: vec![piece.label.clone()],
                    picture: seen.picture,
                    list,
                    said,
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

fn face(journal: &Journal, face: Face, both: &Both<'_>) -> FacePart {
    let throw = journal.throw();
    let (across, down) = (throw.plan.across, throw.plan.down);
    let seen = super::look(journal, &Look::Faces { face }, both.single);
    let (title, spoken, mut lines) = match seen {
        Ok(crate::view::View::Faces(seen)) => (seen.title, seen.spoken, seen.lines),
        _ => Default::default(),
    };
    if face == Face::Back {
        lines.insert(0, say!(both, "sheet-mirrored"));
    }
    let at = |row, col| {
        let place = Rect::square(row, col);
        match face {
            Face::Front => place,
            Face::Back => mirrored(place, across),
        }
    };
    FacePart {
        title,
        spoken,
        lines,
        rows: (0..down)
            .map(|row| {
                (0..across)
                    .map(|col| {
                        let cover = throw.cover(at(row, col));
                        Cell {
                            print: cover.on(face),
                            denim: cover.denim,
                        }
                    })
                    .collect()
            })
            .collect(),
        columns: (0..across).map(|col| at(0, col).col + 1).collect(),
    }
}

/// The stages of joining, in order, as named in the words files.
fn stage_key(kind: Kind) -> &'static str {
    match kind {
        Kind::Row | Kind::Column | Kind::Part => "larger",
        kind => names::key(kind),
    }
}

/// Whether a task belongs to the binding or the washes, which come once for the whole.
fn last_stage(task: Task) -> Option<&'static str> {
    match task {
        Task::CutBinding
        | Task::JoinBinding
        | Task::PressBinding
        | Task::GlueBinding
        | Task::StitchBinding => Some("binding"),
        Task::Wash | Task::Clip => Some("washing"),
        _ => None,
    }
}

fn warning(caution: Caution, short: bool, lens: Lens<'_>) -> Warning {
    let key = caution.key();
    let text = match short {
        true => format!("sheet-caution-{key}"),
        false => format!("caution-{key}"),
    };
    Warning {
        title: lens.say(&format!("caution-{key}-title"), &[]),
        text: lens.say(&text, &[]),
    }
}

fn stages(throw: &Throw, both: &Both<'_>, told: &dyn Fn(Time) -> String) -> Vec<Stage> {
    let order = ["square", "pair", "four", "larger", "whole"];
    let mut by_stage: BTreeMap<usize, Vec<Rect>> = BTreeMap::new();
    for piece in throw.assembly().pieces() {
        let key = stage_key(throw.kind(piece));
        let at = order.iter().position(|k| *k == key).unwrap_or(0);
        by_stage.entry(at).or_default().push(piece);
    }
    let letters = names::letters(&throw.prints);
    let mut cautions = BTreeSet::new();
    let mut out: Vec<Stage> = by_stage
        .into_iter()
        .map(|(at, pieces)| {
            stage(
                throw,
                order[at],
                &pieces,
                &letters,
                &mut cautions,
                both,
                told,
            )
        })
        .collect();
    let whole = throw.assembly().whole();
    for key in ["binding", "washing"] {
        let mut steps = Vec::new();
        let mut columns: Vec<String> = Vec::new();
        let mut before: BTreeMap<Task, usize> = BTreeMap::new();
        for task in throw.tasks(whole) {
            if last_stage(task) != Some(key) {
                continue;
            }
            let turn = before.entry(task).or_insert(0);
            *turn += 1;
            if *turn == 1 {
                columns.push(both.say(&format!("sheet-column-{}", task.key()), &[]));
            }
            let done = throw.work(whole).map_or(0, |w| {
                w.done.iter().filter(|(done, _)| *done == task).count()
            });
            let title = both.say(
                &format!("title-{}", task.key()),
                &[
                    ("n", (*turn).into()),
                    ("all", throw.plan.washes.into()),
                    ("kind", "whole".into()),
                ],
            );
            let mut step = step(throw, task, title, &[whole], &mut cautions, both);
            if *turn > 1 {
                step.how.clear();
                step.learned.clear();
                step.caution = None;
            }
            step.count = String::new();
            step.tick = Some(done >= *turn);
            steps.push(step);
        }
        if !steps.is_empty() {
            out.push(Stage {
                title: both.say(&format!("sheet-stage-{key}"), &[]),
                count: String::new(),
                steps,
                columns,
                lines: Vec::new(),
                notes: Vec::new(),
            });
        }
    }
    out
}

fn stage(
    throw: &Throw,
    key: &str,
    pieces: &[Rect],
    letters: &[String],
    cautions: &mut BTreeSet<String>,
    both: &Both<'_>,
    told: &dyn Fn(Time) -> String,
) -> Stage {
    let lens = both.doubled;
    let own = |piece: Rect| -> Vec<Task> {
        let mut tasks = throw.tasks(piece);
        tasks.retain(|t| last_stage(*t).is_none());
        tasks
    };
    let tasks: BTreeSet<Task> = pieces.iter().flat_map(|p| own(*p)).collect();
    let mut here_told = BTreeSet::new();
    let steps = tasks
        .iter()
        .map(|task| {
            let here: Vec<Rect> = pieces
                .iter()
                .copied()
                .filter(|p| throw.tasks(*p).contains(task))
                .collect();
            let kind = lens.say(&format!("kind-{}", names::key(throw.kind(here[0]))), &[]);
            let title = lens.say(&format!("title-{}", task.key()), &[("kind", kind.into())]);
            let mut step = step(throw, *task, title, &here, cautions, both);
            step.caution = step.caution.filter(|c| here_told.insert(c.title.clone()));
            step
        })
        .collect();
    let line = |piece: &Rect| Line {
        label: match throw.kind(*piece) {
            Kind::Square => names::square(*piece),
            Kind::Pair => {
                let last = Rect::square(piece.row + piece.rows - 1, piece.col + piece.cols - 1);
                let first = Rect::square(piece.row, piece.col);
                say!(
                    both,
                    "sheet-line-pair",
                    first = names::square(first),
                    second = names::square(last)
                )
            }
            Kind::Four => names::block(*piece),
            _ => names::piece(throw, *piece, lens),
        },
        ticks: tasks
            .iter()
            .map(|task| {
                let face = match task {
                    Task::CoverFront => Some(Face::Front),
                    Task::CoverBack => Some(Face::Back),
                    _ => None,
                };
                let print = face.and_then(|f| throw.cover(*piece).on(f));
                throw.tasks(*piece).contains(task).then(|| Tick {
                    done: throw.has(*piece, *task),
                    letters: print
                        .and_then(|p| letters.get(usize::from(p)))
                        .cloned()
                        .unwrap_or_default(),
                })
            })
            .collect(),
    };
    Stage {
        title: both.say(&format!("sheet-stage-{key}"), &[]),
        count: match key {
            "whole" => String::new(),
            "larger" => say!(lens, "count-part", n = pieces.len()),
            _ => names::count(throw.kind(pieces[0]), pieces.len(), lens),
        },
        steps,
        columns: tasks
            .iter()
            .map(|t| both.say(&format!("sheet-column-{}", t.key()), &[]))
            .collect(),
        lines: pieces.iter().map(line).collect(),
        notes: throw
            .notes
            .iter()
            .filter_map(|n| Some((n, n.piece?)))
            .filter(|(_, p)| throw.assembly().knows(*p) && stage_key(throw.kind(*p)) == key)
            .map(|(n, piece)| Entry {
                day: told(n.at),
                piece: names::piece(throw, piece, lens),
                text: n.text.clone(),
            })
            .collect(),
    }
}

fn step(
    throw: &Throw,
    task: Task,
    title: String,
    pieces: &[Rect],
    cautions: &mut BTreeSet<String>,
    both: &Both<'_>,
) -> Step {
    let lens = both.doubled;
    let done = pieces.iter().filter(|p| throw.has(**p, task)).count();
    // Told of the first that is still to do.
    let first = pieces.iter().copied().find(|p| !throw.has(*p, task));
    let piece = first.unwrap_or(pieces[0]);
    let each = |piece: Rect| {
        let mut rows = both.rows(|l| work::figures(throw, task, piece, l));
        let alone = [say!(lens, "figure-fabric"), say!(lens, "figure-measured")];
        let alone = alone
            .into_iter()
            .chain([say!(lens, "figure-across"), say!(lens, "figure-down")])
            .collect::<Vec<String>>();
        rows.retain(|row| !alone.contains(&row.label));
        rows
    };
    let mut figures = each(piece);
    for other in pieces.iter().filter(|p| **p != piece) {
        for (row, other) in figures.iter_mut().zip(each(*other)) {
            if *row != other {
                row.own = say!(both, "sheet-differs");
                row.other = None;
            }
        }
    }
    let mut how: Vec<String> = match task {
        Task::JoinBinding | Task::GlueBinding => work::special(throw, task, piece, lens),
        _ => Vec::new(),
    };
    let key = work::how_key(throw, task, piece);
    how.extend(lens.say(&key, &[]).lines().map(str::to_string));
    if matches!(task, Task::Dot | Task::Pin | Task::Stitch) {
        for piece in pieces {
            if let Some(opened) = throw.work(*piece).and_then(|w| w.opened) {
                let said = say!(lens, "special-opened", length = lens.length(opened));
                how.push(say!(
                    both,
                    "sheet-of-piece",
                    piece = names::piece(throw, *piece, lens),
                    text = said
                ));
            }
        }
        let marked = pieces
            .iter()
            .filter_map(|p| throw.assembly().join(*p))
            .flat_map(|j| throw.spots(j))
            .filter(|(a, b)| throw.marked(*a, *b).is_some())
            .count();
        if marked > 0 {
            how.push(say!(both, "sheet-laps-see", n = marked));
        }
    }
    Step {
        title,
        station: work::station_name(task.station(), lens),
        count: say!(both, "sheet-count", done = done, all = pieces.len()),
        how,
        learned: match cautions.insert(format!("learned {task:?}")) {
            true => both.learned.get(&task).cloned().unwrap_or_default(),
            false => Vec::new(),
        },
        figures,
        // At length the first time, then in short.
        caution: task.caution().map(|caution| {
            let first = cautions.insert(format!("{caution:?}"));
            warning(caution, !first, lens)
        }),
        tick: None,
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
    let lens = both.doubled;
    let mut figures = Vec::new();
    let mut told = BTreeSet::new();
    for block in &blocks {
        let target = throw.target(*block);
        let kind = throw.kind(*block);
        if told.insert((names::key(kind), block.rows, block.cols)) {
            let mut rows = both.row("trim-to", |l| l.by(target.width, target.height));
            for row in &mut rows {
                row.label = say!(
                    both,
                    "sheet-trim-of",
                    kind = lens.say(&format!("kind-{}", names::key(kind)), &[])
                );
            }
            figures.extend(rows);
        }
    }
    figures.extend(both.rows(|l| measuring::summed(throw, l).0));
    let four = throw.plan.target();
    Some(Squaring {
        figures,
        said: measuring::summed(throw, lens).1,
        blocks: blocks
            .iter()
            .map(|block| {
                let target = throw.target(*block);
                let same = target.width == four && target.height == four;
                let measured = throw.work(*block).and_then(|w| w.measured);
                Block {
                    label: names::piece(throw, *block, lens),
                    target: match same {
                        true => String::new(),
                        false => lens.by(target.width, target.height).text,
                    },
                    measured: measured.map(|m| [m.width, m.height].map(|l| lens.length(l).text)),
                    done: throw.has(*block, Task::SquareUp),
                }
            })
            .collect(),
    })
}

/// Laps marked for two neighbours, and joins begun with another lap than the plan's now.
fn laps(throw: &Throw, both: &Both<'_>) -> Vec<String> {
    let lens = both.doubled;
    let mut out: Vec<String> = throw
        .marks()
        .map(|(a, b, lap)| {
            say!(
                lens,
                "special-lap",
                a = names::piece(throw, a, lens),
                b = names::piece(throw, b, lens),
                lap = lens.length(lap)
            )
        })
        .collect();
    let within = |p: Rect| p.count() == 2 || throw.assembly().is_block(p);
    for piece in throw.assembly().pieces() {
        let Some(made) = throw.work(piece).and_then(|w| w.made) else {
            continue;
        };
        let planned = match within(piece) {
            true => throw.plan.lap,
            false => throw.plan.lap_between(),
        };
        if (made.joining, made.lap) != (throw.plan.joining, planned) {
            out.push(say!(
                both,
                "sheet-lap-made",
                piece = names::piece(throw, piece, lens),
                lap = lens.length(made.lap),
                planned = lens.length(planned)
            ));
        }
    }
    out
}

/// Whether an event is more than a tick, a measure, a note or a supply.
fn is_change(event: &Event) -> bool {
    if let Event::FacesChanged { faces } = event {
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

fn changes(journal: &Journal, lens: Lens<'_>, told: &dyn Fn(Time) -> String) -> Vec<Entry> {
    let throw = journal.throw();
    let happened = journal.entries().rev().filter(|(_, stands)| *stands);
    happened
        .filter_map(|(entry, _)| {
            let What::Do(events) = &entry.what else {
                return None;
            };
            let said: Vec<String> = events
                .iter()
                .filter(|e| is_change(e))
                .map(|e| history::event(e, throw, lens))
                .collect();
            (!said.is_empty()).then(|| Entry {
                day: told(entry.at),
                piece: String::new(),
                text: lens.words.list("list-long", said),
            })
        })
        .take(MOST_CHANGES)
        .collect()
}

fn card(throw: &Throw, both: &Both<'_>, stages: &[Stage], prints: &[Fabric]) -> Card {
    let p = &throw.plan;
    let lens = both.doubled;
    let mut figures = both.row("square", |l| l.by(p.side, p.side));
    let lapped = p.joining == Joining::Lapped;
    let lap = if lapped { "lap" } else { "allowance" };
    figures.extend(both.row(lap, |l| l.length(p.lap)));
    if p.lap_between() != p.lap {
        figures.extend(both.row("between", |l| l.length(p.lap_between())));
    }
    if lapped {
        figures.extend(both.row("middle", |l| l.length(p.lap / 2)));
    }
    figures.extend(both.row("stitch", |l| l.plain(gather::stitch(p.stitch, l))));
    if let Some(fringe) = p.fringe() {
        figures.extend(both.row("fringe", |l| l.over_nothing(fringe)));
    }
    figures.extend(both.row("pair", |l| l.by(p.run(2), p.side)));
    let natural = p.natural_four();
    figures.extend(both.row("four", |l| l.by(natural, natural)));
    figures.extend(both.row("trim-to", |l| l.by(p.target(), p.target())));
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
    Card {
        figures,
        order,
        cautions: cautions.map(|c| warning(c, true, lens)).into(),
        prints: used.into_iter().take(MOST_ON_CARD).collect(),
        more: (over > 0).then(|| say!(both, "sheet-more-prints", n = over)),
    }
}
