//! The story of how a throw was made, day by day, from its record.
//!
//! A day opens with what was made, counted by step and kind of piece (`12 pairs
//! stitched; 2 fours squared up`); then come, in order, turns the work took, mishaps,
//! notes and photos. Steps on the way to another (pressing, cooling, gluing) are left
//! out of the count, and so is everything that was taken back.

use crate::log::journal::{Entry, Journal, What};
use crate::plan::assembly::{Kind, Rect};
use crate::show::context::Context;
use crate::show::dates::{self, Day, ZoneName};
use crate::show::parts::{Head, head};
use crate::show::{events, names};
use crate::throw::index::tier;
use crate::throw::tasks::Task;
use crate::throw::{Event, Throw};
use crate::types::TS;
use serde::Serialize;
use std::collections::BTreeMap;

/// The story of a throw's making: a plain structure, to be shown, printed or written out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Story {
    /// The throw's name.
    pub title: String,
    /// What it is, a line each.
    pub lines: Vec<String>,
    /// Day by day, the first first; days without anything to show are left out.
    pub days: Vec<StoryDay>,
}

/// One day of the making.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct StoryDay {
    /// The date (ISO 8601).
    pub date: String,
    /// The date in words.
    pub title: String,
    /// What was made that day, in a sentence.
    pub made: Option<String>,
    /// What else there is to show, in order.
    pub items: Vec<StoryItem>,
}

/// Something shown of a day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct StoryItem {
    /// Of what sort.
    pub sort: StorySort,
    /// The sort in words.
    pub label: String,
    /// The words; a photo's may be empty.
    pub words: String,
    /// The piece and the step it is about.
    pub about: Option<String>,
    /// The photo.
    #[ts(type = "string | null")]
    pub photo: Option<crate::cloth::photos::PhotoId>,
}

/// The kinds of lines in the story.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum StorySort {
    /// A turn the work took: begun, planned otherwise, measured, a scrap tried.
    Turn,
    /// Something written down.
    Note,
    /// Something written down for the next throw.
    Next,
    /// A photo.
    Photo,
    /// Something went wrong.
    Mishap,
}

/// The story screen.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct StoryView {
    /// Common to all screens.
    pub head: Head,
    /// The story.
    pub story: Story,
}

/// The screen.
pub(super) fn seen(journal: &Journal, zone: &ZoneName, context: Context<'_>) -> StoryView {
    StoryView {
        head: head(journal, context),
        story: story(journal, zone, context),
    }
}

/// The story, by the days of a time zone.
pub fn story(journal: &Journal, zone: &ZoneName, context: Context<'_>) -> Story {
    let throw = journal.throw();
    let calendar = zone.calendar();
    let mut days: BTreeMap<Day, GatheredDay> = BTreeMap::new();
    for (entry, stands) in journal.entries() {
        let What::Do(events) = &entry.what else {
            continue;
        };
        if !stands {
            continue;
        }
        let day = days.entry(calendar.day(entry.at)).or_default();
        for event in events {
            day.take(event, entry, throw, context);
        }
    }
    Story {
        title: throw.name.clone(),
        lines: about(journal, context),
        days: days
            .into_iter()
            .filter(|(_, day)| !(day.made.is_empty() && day.items.is_empty()))
            .map(|(date, day)| day.view(date, context))
            .collect(),
    }
}

/// What the throw is.
fn about(journal: &Journal, context: Context<'_>) -> Vec<String> {
    let throw = journal.throw();
    let plan = &throw.plan;
    let head = head(journal, context);
    vec![
        say!(
            context,
            "story-about",
            grid = say!(context, "grid", across = plan.across, down = plan.down),
            side = context.length(plan.side),
            size = head.size
        ),
        head.progress,
    ]
}

/// A day as it is gathered.
#[derive(Default)]
struct GatheredDay {
    /// By step and by the kind's place in the making.
    made: BTreeMap<(Task, u8, &'static str), (Kind, usize)>,
    items: Vec<StoryItem>,
}

/// Whether the story counts a step; the others lead to one of these.
fn is_shown(task: Task) -> bool {
    matches!(
        task,
        Task::Cut
            | Task::CoverFront
            | Task::CoverBack
            | Task::Stitch
            | Task::SquareUp
            | Task::StitchBinding
            | Task::Wash
    )
}

impl GatheredDay {
    fn count(&mut self, task: Task, kind: Kind, n: usize) {
        if is_shown(task) && n > 0 {
            let entry = self.made.entry((task, tier(kind), names::key(kind)));
            entry.or_insert((kind, 0)).1 += n;
        }
    }

    fn count_all(&mut self, task: Task, pieces: impl Iterator<Item = Rect>, throw: &Throw) {
        for piece in pieces {
            self.count(task, throw.kind(piece), 1);
        }
    }

    fn item(&mut self, sort: StorySort, words: String, context: Context<'_>) {
        let key = match sort {
            StorySort::Turn => "story-turn",
            StorySort::Note => "story-note",
            StorySort::Next => "story-next",
            StorySort::Photo => "story-photo",
            StorySort::Mishap => "story-mishap",
        };
        self.items.push(StoryItem {
            sort,
            label: context.say(key, &[]),
            words,
            about: None,
            photo: None,
        });
    }

    fn take(&mut self, event: &Event, entry: &Entry, throw: &Throw, context: Context<'_>) {
        let said = || events::event(event, throw, context);
        match event {
            Event::Done { task, pieces, .. } => {
                self.count_all(*task, pieces.iter().copied(), throw)
            }
            Event::SquaredUp { pieces, .. } => {
                let pieces = pieces.iter().map(|(p, _, _)| *p);
                self.count_all(Task::SquareUp, pieces, throw);
            }
            // Squares of fabric, such as those of a pack, are not the throw's own.
            Event::PieceCut { n, squares, .. } => {
                if throw.pile.get(n).is_none_or(|heap| heap.makes.is_denim()) {
                    self.count(Task::Cut, Kind::Square, squares.get() as usize);
                }
            }
            Event::Begun { .. }
            | Event::PlanChanged { .. }
            | Event::WholeMeasured { .. }
            | Event::ScrapTried { .. }
            // Glue is lifted because the plan changed, or to be laid straighter.
            | Event::Unpicked { glued: true, .. } => self.item(StorySort::Turn, said(), context),
            Event::Spoilt { .. }
            | Event::Patched { .. }
            | Event::Unpicked { .. }
            | Event::SetAside { .. } => self.item(StorySort::Mishap, said(), context),
            Event::Noted {
                text,
                piece,
                task,
                next,
            } => {
                let sort = if *next {
                    StorySort::Next
                } else {
                    StorySort::Note
                };
                self.item(sort, text.clone(), context);
                self.of(*piece, *task, throw, context);
            }
            Event::Pictured {
                photo,
                words,
                piece,
                task,
            } => {
                // Taken out again, it is no part of the story; put in anew, once.
                let stays = |p: &&crate::throw::Photo| p.id == *photo && p.at == entry.at;
                if throw.photos.iter().find(stays).is_some() {
                    self.item(StorySort::Photo, words.clone(), context);
                    self.of(*piece, *task, throw, context);
                    if let Some(item) = self.items.last_mut() {
                        item.photo = Some(photo.clone());
                    }
                }
            }
            Event::Renamed { .. }
            | Event::Archived { .. }
            | Event::FacesChanged { .. }
            | Event::LaidOn { .. }
            | Event::ClothChanged { .. }
            | Event::SparesUsed { .. }
            | Event::SquareMoved { .. }
            | Event::SparesCounted { .. }
            | Event::PieceBegun { .. }
            | Event::Measured { .. }
            | Event::Outlined { .. }
            | Event::LapsMarked { .. }
            | Event::Moved { .. }
            | Event::Turned { .. }
            | Event::Flipped { .. }
            | Event::Pinned { .. }
            | Event::Wished { .. }
            | Event::HeapSet { .. }
            | Event::HeapTaken { .. }
            | Event::PlateMeasured { .. }
            | Event::Gathered { .. }
            | Event::Unpictured { .. } => {}
        }
    }

    /// Say of the last item which piece and step it is about.
    fn of(&mut self, piece: Option<Rect>, task: Option<Task>, throw: &Throw, context: Context<'_>) {
        let piece = piece
            .filter(|p| throw.assembly().knows(*p))
            .map(|p| names::piece(throw, p, context));
        let task = task.map(|t| context.say(&format!("task-{}", t.key()), &[]));
        let parts: Vec<String> = piece.into_iter().chain(task).collect();
        if let Some(item) = self.items.last_mut().filter(|_| !parts.is_empty()) {
            item.about = Some(parts.join(" · "));
        }
    }

    fn view(self, date: Day, context: Context<'_>) -> StoryDay {
        let made: Vec<String> = self
            .made
            .into_iter()
            .map(|((task, _, _), (kind, n))| {
                let pieces = names::count(kind, n, context);
                context.say(
                    &format!("made-{}", task.key()),
                    &[("pieces", pieces.into()), ("n", n.into())],
                )
            })
            .collect();
        StoryDay {
            date: date.iso(),
            title: say!(
                context,
                "ui-day",
                weekday = context.say(&format!("ui-weekday-{}", date.weekday()), &[]),
                date = dates::date(date, context.words)
            ),
            made: (!made.is_empty()).then(|| {
                say!(
                    context,
                    "story-made",
                    list = context.words.list("list-long", made)
                )
            }),
            items: self.items,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::photos::PhotoId;
    use crate::command::Command;
    use crate::measure::Count;
    use crate::measure::Ruler;
    use crate::plan::Plan;
    use crate::throw::{Mishap, Time};
    use crate::words::Words;

    const HOUR: Time = 3_600_000;

    fn act(journal: &mut Journal, action: &Command, at: Time) {
        let entry = journal.propose(action, at).unwrap();
        journal.accept(entry).unwrap();
    }

    fn story_of(journal: &Journal, zone: &str) -> Story {
        let words = Words::english();
        let context = Context {
            words: &words,
            ruler: Ruler::default(),
            now: 0,
        };
        story(journal, &ZoneName::named(zone), context)
    }

    fn next(task: Task, kind: Kind, count: u32) -> Command {
        Command::TickNext {
            task,
            kind,
            count: Count::at_most(count),
        }
    }

    #[test]
    fn a_story_is_told_by_day_and_leaves_out_what_was_taken_back() {
        let begin = Command::Begin {
            name: "Porch throw".into(),
            plan: Plan {
                across: 2,
                down: 2,
                ..Plan::default()
            },
            prints: vec![],
            denims: vec![],
        };
        // 22:30 on 31 December 1999, UTC.
        let at = 946_679_400_000;
        let mut journal = Journal::begin(&begin, at).unwrap().0;
        act(&mut journal, &next(Task::Cut, Kind::Square, 3), at);
        act(&mut journal, &next(Task::Cut, Kind::Square, 1), at);
        let photo = PhotoId::parse(&"ab".repeat(32)).unwrap();
        let late = at + 2 * HOUR;
        for task in [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch] {
            act(&mut journal, &next(task, Kind::Pair, 2), late);
        }
        act(
            &mut journal,
            &Command::Picture {
                photo: photo.clone(),
                words: " Both pairs ".into(),
                piece: Some(Rect::from([0, 0, 1, 2])),
                task: Some(Task::Stitch),
            },
            late,
        );
        for text in ["kept", "taken back"] {
            let note = Command::Note {
                text: text.into(),
                piece: None,
                task: None,
                next: true,
            };
            act(&mut journal, &note, late);
        }
        let undo = journal.propose_undo(late).unwrap();
        journal.accept(undo).unwrap();

        let said = story_of(&journal, "UTC");
        let titles: Vec<(&str, &str)> = said
            .days
            .iter()
            .map(|d| (d.date.as_str(), d.title.as_str()))
            .collect();
        assert_eq!(
            titles,
            [
                ("1999-12-31", "Friday, 31 December 1999"),
                ("2000-01-01", "Saturday, 1 January 2000")
            ]
        );
        assert_eq!(said.days[0].made.as_deref(), Some("4 squares cut."));
        assert_eq!(said.days[0].items.len(), 1, "it was begun");
        assert_eq!(said.days[1].made.as_deref(), Some("2 pairs stitched."));
        let items: Vec<_> = said.days[1]
            .items
            .iter()
            .map(|i| (i.sort, i.words.as_str(), i.about.as_deref()))
            .collect();
        assert_eq!(
            items,
            [
                (
                    StorySort::Photo,
                    "Both pairs",
                    Some("Pair 1·1 + 1·2 · stitch")
                ),
                (StorySort::Next, "kept", None),
            ]
        );
        assert_eq!(said.days[1].items[0].photo, Some(photo.clone()));
        // West of Greenwich it was all done on one day, east of it on the next.
        assert_eq!(story_of(&journal, "<-03>3").days.len(), 1);
        assert_eq!(story_of(&journal, "<+02>-2").days[0].date, "2000-01-01");
        // A photo that was taken out of the story is no longer in it.
        act(&mut journal, &Command::Unpicture { photo }, late);
        assert_eq!(story_of(&journal, "UTC").days[1].items.len(), 1);
    }

    #[test]
    fn mishaps_and_squares_off_the_pile_are_told() {
        let journal = crate::demo::throw(1_800_000_000_000);
        let said = story_of(&journal, "UTC");
        let made = said.days.iter().filter_map(|d| d.made.as_deref());
        let made: Vec<&str> = made.collect();
        assert!(made[0].contains("50 squares cut"), "{made:?}");
        assert!(
            made.iter()
                .any(|m| m.contains("12 pairs stitched; 6 fours stitched; 1 four squared up")),
            "{made:?}"
        );
        let spoilt = said
            .days
            .iter()
            .flat_map(|d| &d.items)
            .find(|i| i.sort == StorySort::Mishap);
        let scorched = Mishap::Scorched.key();
        assert!(spoilt.is_some_and(|i| i.words.contains(scorched)));
    }
}
