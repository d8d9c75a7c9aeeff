//! From a throw to what the window shows.
//!
//! Each screen has a module here that makes its view from the state and nothing
//! else. Promise: no view changes anything, and every button a view offers carries
//! an action that [`crate::command::decide`] allowed at that moment.

mod bench;
mod bring;
pub mod drawing;
mod errors;
mod faces;
mod figures;
mod gather;
mod hand_on;
mod history;
mod layouts;
mod lessons;
mod measuring;
mod names;
mod off;
mod opening;
mod pictures;
mod pile;
mod plan;
pub mod sheet;
mod story;
mod story_page;
pub mod tables;
mod work;

use crate::log::journal::Journal;
use crate::measure::{Length, MetricUnit, ParseError, Ruler, System, zero};
use crate::throw::Time;
use crate::view::{Head, Look, ShelfRow, Swatch, View};
use crate::words::{Arg, Words};
use crate::words::{Problem, Shown};

pub use bring::{bring, conflict, unmergeable};
pub use errors::{damage, out_of_bounds, refusal};
pub use figures::figures;
pub use hand_on::{file_name, usual_paper};
pub use layouts::layouts;
pub use lessons::{again, heritage};
pub use plan::{draft, draft_after, draft_of, grids};
pub use sheet::{Sheet, sheet};
pub use story::story;
pub use story_page::story_page;

/// A shown length without its sign for being rounded.
fn bare(text: &str) -> &str {
    text.strip_prefix("≈\u{a0}").unwrap_or(text)
}

/// What a view is made with: the words, the ruler, and the time.
#[derive(Clone, Copy)]
pub struct Lens<'a> {
    /// The language.
    pub words: &'a Words,
    /// The ruler.
    pub ruler: Ruler,
    /// Now.
    pub now: Time,
}

impl Lens<'_> {
    fn say(&self, key: &str, args: &[(&str, Arg)]) -> String {
        self.words.say(key, args)
    }

    /// A length as typed.
    fn parse(&self, typed: &str) -> Result<Length, ParseError> {
        self.words.parse(typed, self.ruler)
    }

    /// A length off the ruler.
    fn length(&self, length: Length) -> Shown {
        self.words.length(length, self.ruler)
    }

    /// A needle's spacing or a stitch's width: in millimetres everywhere, as needles are marked.
    fn needle(&self, length: Length) -> Shown {
        let mm = Ruler {
            system: System::Metric,
            metric: MetricUnit::Mm,
            ..self.ruler
        };
        self.words.single(length, mm)
    }

    /// What is told one way in each system; both where the words are doubled.
    fn either(&self, inch: String, metric: String) -> String {
        let (own, other) = match self.ruler.system {
            System::Inch => (inch, metric),
            System::Metric => (metric, inch),
        };
        match self.words.is_doubled() {
            true => say!(self, "sheet-both", first = own, second = other),
            false => own,
        }
    }

    /// Two lengths as `27½ × 36½ in`.
    fn by(&self, width: Length, height: Length) -> Shown {
        self.in_each(|ruler| self.by_ruler(width, height, ruler))
    }

    fn by_ruler(&self, width: Length, height: Length, ruler: Ruler) -> Shown {
        let (w, h) = (
            self.words.single(width, ruler),
            self.words.single(height, ruler),
        );
        let rounded = w.rounded || h.rounded;
        let (first, second) = (bare(&w.text), bare(&h.text));
        let unit = |s: &str| s.rsplit_once('\u{a0}').map(|(_, unit)| unit.to_string());
        let short = match first.rsplit_once('\u{a0}') {
            Some((number, _)) if unit(first) == unit(second) => number,
            _ => first,
        };
        // One sign for both, in front.
        let about = if rounded { "≈\u{a0}" } else { "" };
        Shown {
            text: format!("{about}{short}\u{a0}× {second}"),
            spoken: say!(self, "spoken-by", width = w.spoken, height = h.spoken),
            rounded,
        }
    }

    /// Plain words where a length would stand.
    fn plain(&self, text: String) -> Shown {
        Shown {
            spoken: text.clone(),
            text,
            rounded: false,
        }
    }

    /// A length, or the word for less than nothing.
    fn over_nothing(&self, length: Length) -> Shown {
        if length < zero() {
            self.plain(say!(self, "none"))
        } else {
            self.length(length)
        }
    }

    /// What is cut off or laid out by the ruler: to its nearest mark.
    fn marked(&self, length: Length) -> Shown {
        let one = |ruler: Ruler| {
            let mark = self.words.single(ruler.nearest(length), ruler);
            if ruler.nearest(length) == length {
                return mark;
            }
            Shown {
                text: format!("≈\u{a0}{}", mark.text),
                spoken: say!(self, "spoken-about", length = mark.spoken),
                rounded: true,
            }
        };
        self.in_each(one)
    }

    /// Something told off this ruler; off both where the words are doubled.
    fn in_each(&self, told: impl Fn(Ruler) -> Shown) -> Shown {
        self.words.in_each(self.ruler, told)
    }

    /// A length with the word for over or under.
    fn over_under(&self, over: Length) -> Shown {
        if over == zero() {
            return self.plain(say!(self, "exact"));
        }
        let (key, size) = if over > zero() {
            ("over", over)
        } else {
            ("under", zero() - over)
        };
        let size = self.length(size);
        if self.ruler.nearest(over) == zero() && size.text.starts_with("≈\u{a0}0") {
            return self.plain(say!(self, "within-a-mark"));
        }
        Shown {
            text: say!(self, key, length = size.text),
            spoken: say!(self, key, length = size.spoken),
            rounded: size.rounded,
        }
    }
}

/// What the window asked to see of a throw.
///
/// # Errors
/// A [`Problem`] when there is no such piece.
pub fn look(journal: &Journal, look: &Look, lens: Lens<'_>) -> Result<View, Problem> {
    Ok(match look {
        Look::Work { station, batch } => View::Work(work::work(journal, *station, *batch, lens)),
        Look::Bench { chosen } => View::Bench(bench::bench(journal, *chosen, lens)),
        Look::Faces { face } => View::Faces(faces::faces(journal, *face, lens)),
        Look::Wishes { wishes } => View::Wishes(Box::new(layouts::wishes(journal, *wishes, lens))),
        Look::Floor { part } => View::Floor(layouts::floor(journal, *part, lens)),
        Look::Covering => View::Covering(layouts::covering(journal, lens)),
        Look::Plan { draft } => {
            View::Plan(Box::new(plan::plan_of(journal, draft.as_deref(), lens)))
        }
        Look::Measure {
            piece,
            width,
            height,
        } => View::Measure(measuring::measure(journal, *piece, width, height, lens)?),
        Look::Outline { piece, typed } => {
            View::Measure(measuring::outline(journal, *piece, typed, lens)?)
        }
        Look::Trim => View::Trim(measuring::trims(journal, lens)),
        Look::Off { piece, why } => View::Off(off::off(journal, *piece, *why, lens)?),
        Look::Hold { width, height } => View::Hold(off::hold(journal, width, height, lens)),
        Look::Pile => View::Pile(pile::pile(journal, lens)),
        Look::Cutting {
            n,
            index,
            typed,
            drag,
        } => {
            let seen = pile::cutting(journal, (*n, *index), typed.as_ref(), *drag, lens)?;
            View::Cutting(Box::new(seen))
        }
        Look::Gather => View::Gather(gather::gather(journal, lens)),
        Look::Scraps { typed } => View::Scraps(gather::scraps(journal, typed.as_ref(), lens)),
        Look::Whole { width, height } => View::Whole(off::whole(journal, width, height, lens)),
        Look::HandOn => View::HandOn(hand_on::hand_on(journal, lens)),
        Look::Story { east } => View::Story(story::seen(journal, *east, lens)),
        Look::History { most } => View::History(history::history(journal, *most, lens)),
    })
}

/// A typed length, in nanometres, as an action takes it.
///
/// # Errors
/// The [`Problem`] with what was typed.
pub fn length(typed: &str, lens: Lens<'_>) -> Result<i64, Problem> {
    let parsed = lens.parse(typed);
    parsed
        .map(crate::measure::in_nm)
        .map_err(|error| errors::typed(&error, lens))
}

/// What every screen of a throw carries.
pub fn head(journal: &Journal, lens: Lens<'_>) -> Head {
    let throw = journal.throw();
    let (done, all) = throw.progress();
    let measured = throw.measured_whole().map(|whole| whole.size);
    let size = measured.unwrap_or_else(|| throw.finished());
    Head {
        name: throw.name.clone(),
        archived: throw.archived,
        entry: journal.len() as u32,
        undo: journal.last().map(|e| history::entry(e, throw, lens)),
        redo: journal.next().map(|e| history::entry(e, throw, lens)),
        done: done as u32,
        all: all as u32,
        progress: say!(lens, "progress", done = done, all = all),
        size: lens.by(size.width, size.height),
    }
}

/// A throw on the shelf.
pub fn shelf_row(id: &str, journal: &Journal, lens: Lens<'_>) -> ShelfRow {
    let throw = journal.throw();
    let work = work::work(journal, None, None, lens);
    let next = match (work.card, work.ask) {
        (Some(card), _) => card.title,
        (None, Some(ask)) => ask.title,
        (None, None) => work.rest.unwrap_or_default(),
    };
    ShelfRow {
        id: id.to_string(),
        head: Some(work.head),
        grid: say!(
            lens,
            "grid",
            across = throw.plan.across,
            down = throw.plan.down
        ),
        next,
        at: journal.entries().next_back().map_or(0, |(e, _)| e.at),
        picture: Some(pictures::thumbnail(
            throw,
            crate::cloth::fabric::Face::Front,
            lens,
        )),
        prints: swatches(journal, lens),
        problem: None,
    }
}

/// Squares of a fabric that went with what was spoilt or set aside, in words.
fn gone_told(gone: crate::throw::stock::Gone, lens: Lens<'_>) -> Vec<String> {
    let mut out = Vec::new();
    if gone.spoilt > 0 {
        out.push(say!(lens, "print-spoilt", n = gone.spoilt));
    }
    if gone.aside > 0 {
        out.push(say!(lens, "print-aside", n = gone.aside));
    }
    out
}

/// The fabrics as listed and drawn.
fn swatches(journal: &Journal, lens: Lens<'_>) -> Vec<Swatch> {
    let throw = journal.throw();
    let names = names::letters(&throw.prints);
    throw
        .prints
        .iter()
        .zip(names)
        .enumerate()
        .map(|(i, (print, letters))| {
            let used = crate::throw::stock::used(throw, i as u8);
            let gone = crate::throw::stock::gone(throw, i as u8);
            let mut told = vec![match print.stock {
                Some(stock) if gone.all() == 0 => {
                    say!(lens, "print-of", used = used, stock = stock)
                }
                _ => say!(lens, "print-used", used = used),
            }];
            told.extend(gone_told(gone, lens));
            if let Some(stock) = print.stock.filter(|_| gone.all() > 0) {
                let left = i64::from(stock) - i64::from(used) - i64::from(gone.all());
                told.push(match left {
                    0.. => say!(lens, "print-left", n = left),
                    _ => say!(lens, "print-short", n = -left),
                });
            }
            let count = lens.words.list("list-short", told);
            Swatch {
                print: print.clone(),
                letters,
                count,
            }
        })
        .collect()
}

#[cfg(test)]
mod tests;
