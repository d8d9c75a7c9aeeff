//! A blank handout for a class: the sheet of a throw as it was planned, with nothing from the
//! record of the maker who planned it, and with lines for another maker's own figures.

use super::content::{Blank, Sheet, WriteTable};
use super::sheet;
use crate::log::journal::{Entry, Journal, What};
use crate::plan::Plan;
use crate::show::context::Context;
use crate::show::dates::ZoneName;
use crate::show::export::PrintUnits;
use crate::show::{again, gather, scraps};
use crate::throw::account::account;
use crate::throw::heritage::Heritage;
use crate::throw::{Event, Throw};

/// Test scraps there is room to write down.
const SCRAPS: usize = 4;

/// The handout of a throw. Its plan, its faces, its fabrics and denims are the throw's; what
/// was done, measured, noted, tried and put on the pile is left out, and so are all days.
pub fn handout(journal: &Journal, context: Context<'_>, units: PrintUnits) -> Sheet {
    let begun = unbegun(journal, context);
    let journal = begun.as_ref().unwrap_or(journal);
    let words = units.words(context.words);
    let own = Context {
        words: &words,
        ruler: units.ruler(context.ruler),
        ..context
    };
    let made = sheet(journal, context, units, &|at| {
        ZoneName::default().calendar().day(at)
    });
    let blank = Blank {
        lines: ["blank-name", "blank-begun"]
            .map(|key| own.say(&format!("sheet-{key}"), &[]))
            .into(),
        scraps: scrap_lines(journal.throw(), own),
        squares: square_lines(&made, own),
        finished: size_lines(journal.throw(), own),
    };
    // A class has no pile that is said to lack anything.
    let unpiled = gather::unpiled(&account(journal.throw()), own);
    let supplies = made.supplies.into_iter().map(|mut supply| {
        supply.lines.retain(|line| *line != unpiled);
        supply
    });
    Sheet {
        supplies: supplies.collect(),
        day: String::new(),
        date: None,
        progress: String::new(),
        lessons: Vec::new(),
        tallies: Vec::new(),
        heaps: Vec::new(),
        past_key: Vec::new(),
        scraps: Vec::new(),
        notes: Vec::new(),
        changes: Vec::new(),
        laps: Vec::new(),
        blank: Some(blank),
        ..made
    }
}

/// A throw of the same plan and faces of which nothing was done yet.
fn unbegun(journal: &Journal, context: Context<'_>) -> Option<Journal> {
    let throw = journal.throw();
    let taken = again::again(journal, context);
    // A size larger than its own lap leaves cannot be had from new fours.
    let trim = throw.plan.trim.filter(|t| *t <= throw.plan.natural_four());
    let heritage = Heritage {
        name: String::new(),
        lessons: Vec::new(),
        paces: Vec::new(),
        drift: None,
        faces: throw.covers().to_vec(),
    };
    let begun = Event::Begun {
        name: throw.name.clone(),
        plan: Plan { trim, ..throw.plan },
        prints: taken.prints,
        denims: taken.denims,
        after: Some(Box::new(heritage)),
    };
    Journal::from_first(&Entry {
        n: 1,
        at: context.now,
        what: What::Do(vec![begun]),
    })
}

fn heads<const N: usize>(context: Context<'_>, keys: [&str; N]) -> Vec<String> {
    keys.map(|key| match key {
        "" => String::new(),
        key => context.say(key, &[]),
    })
    .into()
}

/// The plan's own lap first, since every maker tries that.
fn scrap_lines(throw: &Throw, context: Context<'_>) -> WriteTable {
    let p = &throw.plan;
    let mut rows = vec![vec![
        context.length(p.lap).text,
        scraps::stitch(p.stitch, context),
    ]];
    rows.resize(SCRAPS, Vec::new());
    WriteTable {
        title: say!(context, "sheet-blank-scraps"),
        heads: heads(
            context,
            [
                "figure-lap",
                "figure-stitch",
                "figure-fringe",
                "sheet-blank-found",
            ],
        ),
        rows,
    }
}

fn square_lines(made: &Sheet, context: Context<'_>) -> WriteTable {
    let cloths = made.denims.iter().chain(&made.prints);
    let used = cloths.map(|cloth| vec![cloth.name.clone(), cloth.count.clone()]);
    WriteTable {
        title: say!(context, "sheet-blank-squares"),
        heads: heads(
            context,
            ["", "sheet-blank-planned", "sheet-blank-cut", "sheet-spares"],
        ),
        rows: used.collect(),
    }
}

fn size_lines(throw: &Throw, context: Context<'_>) -> WriteTable {
    let size = throw.finished();
    let planned = [size.width, size.height].map(|l| context.length(l).text);
    let mine = |key: &str| vec![context.say(key, &[])];
    WriteTable {
        title: say!(context, "sheet-blank-finished"),
        heads: heads(context, ["", "sheet-width", "sheet-height"]),
        rows: vec![
            std::iter::once(say!(context, "sheet-blank-planned"))
                .chain(planned)
                .collect(),
            mine("sheet-blank-before"),
            mine("sheet-blank-after"),
        ],
    }
}
