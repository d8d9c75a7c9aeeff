//! The shelf: one row for each throw, and what can be done there.

use crate::command::Command;
use crate::log::journal::{Journal, What};
use crate::show::context::Context;
use crate::show::parts::Head;
use crate::show::picture::Picture;
use crate::show::{pictures, work};
use crate::throw::Event;
use crate::types::TS;
use crate::words::Problem;
use serde::{Deserialize, Serialize};

/// One throw on the shelf.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ShelfRow {
    /// Its folder's name.
    pub id: String,
    /// Its name, and how far it is.
    pub head: Option<Head>,
    /// The grid in words.
    pub grid: String,
    /// The next step in words.
    pub next: String,
    /// When it was last worked on, in milliseconds since 1970.
    #[ts(type = "number")]
    pub at: i64,
    /// When its last step was done, in milliseconds since 1970, if every step is.
    #[ts(type = "number | null")]
    pub finished: Option<i64>,
    /// A small picture of its front, drawn without photos.
    pub picture: Option<Picture>,
    /// What is wrong with it, if it cannot be opened, or what was mended.
    pub problem: Option<Problem>,
    /// It is not read yet: the shelf is to be asked again.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    #[ts(optional, as = "Option<bool>")]
    pub unread: bool,
    /// The copies that are kept beside its file since it was merged, if there are any.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[ts(optional)]
    pub copies: Option<String>,
}

/// The shelf of throws.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ShelfView {
    /// Throws in work, the last worked on first.
    pub rows: Vec<ShelfRow>,
    /// Throws put away.
    pub archived: Vec<ShelfRow>,
    /// Throws deleted but not yet erased.
    pub deleted: Vec<ShelfRow>,
    /// The throw whose copy is to be saved elsewhere, if one is.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[ts(optional)]
    pub reminder: Option<Reminder>,
}

/// A reminder to save a copy of a throw of which much is kept in one place alone.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Reminder {
    /// The throw's folder's name.
    pub id: String,
    /// Which throw it is, and what the maker does about it.
    pub said: String,
}

/// Something done on the shelf.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "command")]
pub enum ShelfCommand {
    /// Begin a throw (with [`Command::Begin`]).
    Begin {
        /// The beginning.
        action: Command,
        /// What is put on its pile at once.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[ts(optional, as = "Option<Vec<Command>>")]
        pile: Vec<Command>,
    },
    /// Make a fresh copy of the demo throw.
    Demo,
    /// Delete; it can be taken back.
    Delete {
        /// Which.
        id: String,
    },
    /// Begin a throw after the plan of an older one, with what was learned.
    Again {
        /// The older one.
        id: String,
        /// The beginning.
        action: Command,
        /// What is put on its pile at once.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[ts(optional, as = "Option<Vec<Command>>")]
        pile: Vec<Command>,
    },
    /// Take a deletion back.
    Restore {
        /// Which.
        id: String,
    },
    /// Erase a deleted throw for good.
    Erase {
        /// Which.
        id: String,
    },
    /// Remove the copies kept beside its file since it was merged.
    ClearCopies {
        /// Which.
        id: String,
    },
    /// Save no copy of it now: the maker is reminded again once much more is done.
    CopyLater {
        /// Which.
        id: String,
    },
}

/// What came of tending the shelf.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ShelfAnswer {
    /// The throw begun, if one was.
    pub id: Option<String>,
    /// The shelf now.
    pub shelf: ShelfView,
}

/// A throw on the shelf.
pub fn shelf_row(id: &str, journal: &Journal, context: Context<'_>) -> ShelfRow {
    let throw = journal.throw();
    let work = work::work(journal, None, None, context);
    let next = match (work.card, work.ask) {
        (Some(card), _) => card.title,
        (None, Some(ask)) => ask.title,
        (None, None) => work.rest.unwrap_or_default(),
    };
    // Photos are found for the throw that is open, and none is open on the shelf.
    let mut picture = pictures::thumbnail(throw, crate::cloth::fabric::Face::Front, context);
    for cloth in &mut picture.cloths {
        cloth.photo = None;
    }
    ShelfRow {
        id: id.to_string(),
        finished: finished(journal),
        head: Some(work.head),
        grid: say!(
            context,
            "grid",
            across = throw.plan.across,
            down = throw.plan.down
        ),
        next,
        at: journal.entries().next_back().map_or(0, |(e, _)| e.at),
        picture: Some(picture),
        problem: None,
        unread: false,
        copies: None,
    }
}

/// How many changes a throw may have before the maker is first reminded to save a copy of it.
const FIRST_CHANGES: usize = 8;
/// How many changes there may be since the last copy, or since the maker put the copy off.
const MORE_CHANGES: usize = 30;

/// What is known of the copies of a throw: up to which entry of its record something was done.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct CopyRecord {
    /// The last entry that a copy outside this shelf has.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub copied: Option<u64>,
    /// The last entry there was when the maker put the copy off.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub put_off: Option<u64>,
}

/// How many changes of a throw are in no copy, if the maker is to be reminded of them. A change
/// is an entry that stands: what was undone needs no copy.
pub fn changes_to_copy(journal: &Journal, known: CopyRecord) -> Option<usize> {
    let since = |n: u64| {
        let changes = journal
            .entries()
            .filter(|(entry, stands)| *stands && entry.n > n && matches!(entry.what, What::Do(_)));
        changes.count()
    };
    let changes = since(known.copied.unwrap_or_default());
    let enough = match (known.copied, known.put_off) {
        (None, None) => changes >= FIRST_CHANGES,
        (copied, put_off) => since(copied.max(put_off).unwrap_or_default()) >= MORE_CHANGES,
    };
    enough.then_some(changes)
}

/// The reminder to save a copy of this throw.
pub fn reminder(id: &str, journal: &Journal, known: CopyRecord, context: Context<'_>) -> Reminder {
    let name = journal.throw().name.as_str();
    Reminder {
        id: id.to_string(),
        said: match known.copied {
            None => say!(context, "copy-none", name = name),
            Some(_) => say!(context, "copy-old", name = name),
        },
    }
}

/// When the last step was done, of a throw of which every step is.
fn finished(journal: &Journal) -> Option<i64> {
    let (done, all) = journal.throw().progress();
    if all == 0 || done < all {
        return None;
    }
    let works = |events: &[Event]| {
        let mut events = events.iter();
        events.any(|event| matches!(event, Event::Done { .. } | Event::SquaredUp { .. }))
    };
    let mut standing = journal.entries().rev().filter(|(_, stands)| *stands);
    let last = standing.find(|(entry, _)| {
        let mut what = &entry.what;
        while let What::Past(past) = what {
            what = past;
        }
        matches!(what, What::Do(events) if works(events))
    });
    last.map(|(entry, _)| entry.at)
}
