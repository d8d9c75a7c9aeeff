//! Choosing a trim size.

use crate::command::{Command, decide};
use crate::fitting::trimming::{How, Save, TrimChoice, choices, closing};
use crate::log::journal::Journal;
use crate::measure::{Length, zero};
use crate::plan::assembly::{Rect, Seam};
use crate::show::context::Context;
use crate::show::events::joined;
use crate::show::measuring::{eased, summed};
use crate::show::parts::{Button, Head, head};
use crate::show::picture::{InkKey, Picture};
use crate::show::{names, pictures};
use crate::throw::Throw;
use crate::types::TS;
use crate::words::Shown;
use serde::Serialize;
use std::collections::BTreeSet;

/// A trim size to choose.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct TrimRow {
    /// The size.
    pub size: Shown,
    /// The finished size with it.
    pub finished: Shown,
    /// What it costs, in words.
    pub said: String,
    /// Chosen now.
    pub chosen: bool,
    /// Choose it; none where it is chosen or cannot be.
    pub choose: Option<Button>,
    /// The one to take, all in all.
    pub best: bool,
    /// How each short piece is saved, a sentence each.
    pub saves: Vec<String>,
}

/// The trim sizes worth considering.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct TrimView {
    /// Common to all screens.
    pub head: Head,
    /// Largest first.
    pub rows: Vec<TrimRow>,
    /// Blocks measured so far, in words.
    pub said: String,
    /// Why the best is best, in two sentences.
    pub reason: Vec<String>,
    /// Rows and columns that do not close, a sentence each; or that all do.
    pub closing: Vec<String>,
    /// The blocks, those that are off marked.
    pub picture: Picture,
    /// What the marks mean.
    pub key: Vec<InkKey>,
}

/// The trim sizes worth considering, with what each does to the finished size.
pub(super) fn trims(journal: &Journal, context: Context<'_>) -> TrimView {
    let throw = journal.throw();
    let found = choices(throw, context.ruler);
    let best = found.first().map(|c| c.trim);
    let mut shown: Vec<&TrimChoice> = found.iter().take(5).collect();
    // The size chosen now and the untrimmed one are always among them.
    for size in [throw.plan.target(), throw.plan.natural_four()] {
        shown.extend(
            found
                .iter()
                .find(|c| c.trim == size && !shown.iter().any(|s| s.trim == size)),
        );
    }
    shown.sort_by_key(|c| std::cmp::Reverse(c.trim));
    let rows = shown
        .iter()
        .map(|c| trim_row(throw, c, best, context))
        .collect();
    let reason = found.first().map_or_else(Vec::new, |b| {
        let natural = throw.plan.natural_four();
        let now = found.iter().find(|c| c.trim == natural);
        let short = now.map_or(0, |c| pieces_saved(c, context));
        let first = match (b.trim == natural, short) {
            _ if b.trim > natural => say!(
                context,
                "reason-larger",
                size = context.length(b.trim),
                natural = context.length(natural)
            ),
            (true, 0) => say!(context, "reason-none-short", size = context.length(b.trim)),
            (true, n) => say!(context, "reason-keep", size = context.length(b.trim), n = n),
            (false, n) => {
                say!(
                    context,
                    "reason-smaller",
                    size = context.length(b.trim),
                    natural = context.length(natural),
                    n = n,
                    left = pieces_saved(b, context)
                )
            }
        };
        vec![first, say!(context, "reason-cost", n = b.cost / 10)]
    });
    let off: Vec<_> = closing(throw)
        .into_iter()
        .filter(|(_, _, off)| *off != zero())
        .collect();
    let closing = match off.is_empty() {
        true => vec![say!(context, "closing-all")],
        false => off
            .iter()
            .map(|(seam, n, off)| {
                let off = context.over_under(*off);
                match seam {
                    Seam::Upright => {
                        say!(
                            context,
                            "closing-row",
                            n = names::row_of_fours(*n),
                            of = names::row_is_of(throw, *n),
                            off = off
                        )
                    }
                    Seam::Level => {
                        let of = names::column_is_of(throw, *n);
                        say!(context, "closing-column", n = n + 1, of = of, off = off)
                    }
                }
            })
            .collect(),
    };
    let (_, said) = summed(throw, context);
    TrimView {
        head: head(journal, context),
        rows,
        said,
        reason,
        closing,
        key: pictures::block_key(throw, context),
        picture: pictures::blocks(throw, context),
    }
}

fn trim_row(
    throw: &Throw,
    choice: &TrimChoice,
    best: Option<Length>,
    context: Context<'_>,
) -> TrimRow {
    let size = choice.trim;
    let action = Command::ChooseTrim {
        trim: size,
        step: Some(context.ruler.step()),
    };
    let allowed = decide(Some(throw), &action);
    let finished = throw.after(allowed.iter().flatten()).finished();
    let chosen = throw.plan.target() == size && allowed.is_err();
    let said = [
        match pieces_saved(choice, context) {
            0 => say!(context, "trim-none-short"),
            n => say!(context, "trim-short", n = n),
        },
        match context.ruler.nearest(choice.waste) > zero() {
            true => say!(context, "trim-waste", waste = context.length(choice.waste)),
            false => say!(context, "trim-waste-none"),
        },
    ];
    TrimRow {
        size: context.length(size),
        finished: context.by(finished.width, finished.height),
        said: context.words.list("sentences", said),
        chosen,
        choose: allowed.is_ok().then(|| Button {
            label: say!(context, "trim-choose", size = context.length(size)),
            action,
        }),
        best: best == Some(size),
        saves: choice
            .saves
            .iter()
            .filter(|s| is_seen(s, context))
            .map(|s| save(throw, s, &choice.laps, context))
            .collect(),
    }
}

/// Whether a shortage is as much as a mark of the ruler shows.
fn is_seen(save: &Save, context: Context<'_>) -> bool {
    context.ruler.nearest(save.short) > zero()
}

/// How many pieces a choice leaves short; one may be so both ways.
fn pieces_saved(choice: &TrimChoice, context: Context<'_>) -> usize {
    let seen = choice.saves.iter().filter(|s| is_seen(s, context));
    let pieces: BTreeSet<Rect> = seen.map(|s| s.piece).collect();
    pieces.len()
}

/// How one short piece is saved, in a sentence.
fn save(throw: &Throw, save: &Save, laps: &[(Rect, Rect, Length)], context: Context<'_>) -> String {
    let way = if save.seam == Seam::Upright {
        "across"
    } else {
        "down"
    };
    let piece = names::piece(throw, save.piece, context);
    let short = context.length(save.short);
    let key = match save.how {
        How::Fits => return String::new(),
        How::Lapped { .. } => {
            let at: Vec<String> = laps
                .iter()
                .filter(|(a, b, _)| {
                    let other = if *a == save.piece {
                        b
                    } else if *b == save.piece {
                        a
                    } else {
                        return false;
                    };
                    (other.row == save.piece.row) == (save.seam == Seam::Upright)
                })
                .map(|(a, b, lap)| {
                    let other = if *a == save.piece { *b } else { *a };
                    say!(
                        context,
                        "save-lap",
                        piece = names::piece(throw, other, context),
                        lap = context.length(*lap),
                        joining = joined(throw.plan.joining)
                    )
                })
                .collect();
            let all_eased = save.eased == save.short;
            let first = match (at.is_empty(), all_eased) {
                (true, true) => "eased",
                (true, false) => "edge",
                (false, _) => "lapped",
            };
            let mut said = vec![say!(
                context,
                format!("save-{way}-{first}"),
                piece = piece,
                short = short,
                joining = joined(throw.plan.joining),
                laps = context.words.list("list-long", at)
            )];
            if save.over > zero() {
                said.push(say!(context, "save-over", over = context.length(save.over)));
            }
            if !all_eased {
                said.extend(eased(throw, save.eased, false, context));
            }
            return context.words.list("sentences", said);
        }
        How::Resewn => "resewn",
        How::Renewed => "renewed",
        How::LeftShort => "left",
    };
    say!(
        context,
        format!("save-{way}-{key}"),
        piece = piece,
        short = short,
        joining = joined(throw.plan.joining)
    )
}
