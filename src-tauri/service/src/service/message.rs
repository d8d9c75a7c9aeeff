//! Errors of the store in words, from the one table of errors.

use crate::disk::DiskPath;
use crate::photos::{self, PhotoFault};
use crate::store::{Found, Seen, StoreError};
use lapwork_core::log::journal::FormatError;
use lapwork_core::measure::Ruler;
use lapwork_core::show::{self, Context};
use lapwork_core::words::Problem;
use lapwork_core::words::{Arg, Words};
use std::io::ErrorKind;

/// A error in words.
pub fn message(words: &Words, error: &StoreError) -> Problem {
    let file = |path: &DiskPath| ("file", Arg::Text(path.to_string()));
    match error {
        StoreError::Disk { path, why } => {
            let kind = match why.kind() {
                ErrorKind::StorageFull | ErrorKind::QuotaExceeded => "full",
                ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => "forbidden",
                ErrorKind::AlreadyExists => "exists",
                _ => "other",
            };
            let why = Arg::Text(why.to_string());
            words.problem("disk", &[file(path), ("kind", kind.into()), ("why", why)])
        }
        StoreError::Unsure { path, why, seen } => {
            let seen = match seen {
                Seen::Before => "before",
                Seen::After => "after",
                Seen::Neither => "neither",
            };
            let why = Arg::Text(why.to_string());
            words.problem("unsure", &[file(path), ("seen", seen.into()), ("why", why)])
        }
        StoreError::Changed {
            path,
            here,
            brought,
            found,
        } => {
            let found = match found {
                Found::Nothing => "nothing",
                Found::Unsound => "unsound",
                Found::Less => "less",
                Found::More(_) => "more",
            };
            let brought = brought.as_ref().map_or(Arg::from(""), name);
            let args = [
                file(path),
                ("found", found.into()),
                ("here", name(here)),
                ("brought", brought),
            ];
            words.problem("changed", &args)
        }
        StoreError::ChangedLeft { path, why } => {
            let why = Arg::Text(why.to_string());
            words.problem("changed-left", &[file(path), ("why", why)])
        }
        StoreError::Away { path } => words.problem("away", &[file(path)]),
        StoreError::Torn { .. } => words.problem("torn-left", &[]),
        StoreError::Held { path } => words.problem("held", &[file(path)]),
        StoreError::Locked => words.problem("locked", &[]),
        StoreError::TooLarge { path } => words.problem("too-large", &[file(path)]),
        StoreError::NoSuchThrow => words.problem("no-such-throw", &[]),
        StoreError::Missing { path } => words.problem("missing", &[file(path)]),
        StoreError::BadId => words.problem("bad-id", &[]),
        StoreError::Settings { path } => words.problem("settings", &[file(path)]),
        StoreError::Unreadable => words.problem("unreadable", &[]),
        StoreError::Unmergeable(why) => words.problem(show::unmergeable(*why), &[]),
        StoreError::NothingImported => words.problem("nothing-brought", &[]),
        StoreError::OtherImported => words.problem("other-brought", &[]),
        StoreError::Photo { path, fault } => match fault {
            PhotoFault::Large => {
                let most = photos::MOST_BYTES >> 20;
                words.problem("photo-large", &[file(path), ("most", most.into())])
            }
            PhotoFault::Pixels { have } => {
                let million = |n: u64| Arg::from(n.div_ceil(1_000_000));
                let most = million(photos::MOST_PIXELS);
                words.problem("photo-pixels", &[("have", million(*have)), ("most", most)])
            }
            PhotoFault::Side { have } => {
                let most = photos::MOST_SIDE;
                words.problem(
                    "photo-side",
                    &[("have", (*have).into()), ("most", most.into())],
                )
            }
            PhotoFault::Kind => words.problem("photo-kind", &[]),
            PhotoFault::Named(kind) => words.problem("photo-named", &[("kind", (*kind).into())]),
            PhotoFault::Broken => words.problem("photo-broken", &[]),
        },
        StoreError::Random(why) => words.problem("random", &[("why", Arg::Text(why.to_string()))]),
        StoreError::NoPhoto => words.problem("photo-none", &[]),
        StoreError::Damaged {
            path,
            how: FormatError::Newer { version },
        } => words.problem("newer-there", &[file(path), ("version", (*version).into())]),
        StoreError::Damaged { path, how } => {
            let mut problem = damage(words, how);
            let lies = words.say("shell-lies-at", &[file(path)]);
            problem.next = format!("{} {lies}", problem.next);
            problem
        }
    }
}

/// What is wrong with a throw file, in words.
pub fn damage(words: &Words, how: &FormatError) -> Problem {
    let context = Context {
        words,
        ruler: Ruler::default(),
        now: 0,
    };
    show::format_error(how, context)
}

pub(super) fn name(path: &DiskPath) -> Arg {
    Arg::Text(path.shown_name())
}
