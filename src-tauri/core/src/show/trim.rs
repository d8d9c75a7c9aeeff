//! Choosing a trim size.

use crate::command::{Action, decide};
use crate::fitting::trimming::{Choice, How, Save, choices, closing};
use crate::log::journal::Journal;
use crate::measure::{Length, zero};
use crate::plan::assembly::{Rect, Seam};
use crate::show::context::Lens;
use crate::show::measuring::summed;
use crate::show::parts::{Button, Head, head};
use crate::show::picture::{InkKey, Picture};
use crate::show::{names, pictures};
use crate::throw::Throw;
use crate::words::Shown;
use serde::Serialize;
use std::collections::BTreeSet;
use ts_rs::TS;

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
pub(super) fn trims(journal: &Journal, lens: Lens<'_>) -> TrimView {
    let throw = journal.throw();
    let found = choices(throw, lens.ruler);
    let best = found.first().map(|c| c.trim);
    let mut shown: Vec<&Choice> = found.iter().take(5).collect();
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
        .map(|c| trim_row(throw, c, best, lens))
        .collect();
    let reason = found.first().map_or_else(Vec::new, |b| {
        let natural = throw.plan.natural_four();
        let now = found.iter().find(|c| c.trim == natural);
        let short = now.map_or(0, pieces_saved);
        let first = match (b.trim == natural, short) {
            (true, 0) => say!(lens, "reason-none-short", size = lens.length(b.trim)),
            (true, n) => say!(lens, "reason-keep", size = lens.length(b.trim), n = n),
            (false, n) => {
                say!(
                    lens,
                    "reason-smaller",
                    size = lens.length(b.trim),
                    natural = lens.length(natural),
                    n = n,
                    left = pieces_saved(b)
                )
            }
        };
        vec![first, say!(lens, "reason-cost", n = b.cost / 10)]
    });
    let off: Vec<_> = closing(throw)
        .into_iter()
        .filter(|(_, _, off)| *off != zero())
        .collect();
    let closing = match off.is_empty() {
        true => vec![say!(lens, "closing-all")],
        false => off
            .iter()
            .map(|(seam, n, off)| {
                let off = lens.over_under(*off);
                match seam {
                    Seam::Upright => {
                        say!(lens, "closing-row", n = names::row_of_fours(*n), off = off)
                    }
                    Seam::Level => say!(lens, "closing-column", n = n + 1, off = off),
                }
            })
            .collect(),
    };
    let (_, said) = summed(throw, lens);
    TrimView {
        head: head(journal, lens),
        rows,
        said,
        reason,
        closing,
        key: pictures::block_key(throw, lens),
        picture: pictures::blocks(throw, lens),
    }
}

fn trim_row(throw: &Throw, choice: &Choice, best: Option<Length>, lens: Lens<'_>) -> TrimRow {
    let size = choice.trim;
    let action = Action::ChooseTrim { trim: size };
    let allowed = decide(Some(throw), &action);
    let finished = throw.after(allowed.iter().flatten()).finished();
    let chosen = throw.plan.target() == size && allowed.is_err();
    let said = [
        match pieces_saved(choice) {
            0 => say!(lens, "trim-none-short"),
            n => say!(lens, "trim-short", n = n),
        },
        say!(lens, "trim-waste", waste = lens.length(choice.waste)),
    ];
    TrimRow {
        size: lens.length(size),
        finished: lens.by(finished.width, finished.height),
        said: lens.words.list("sentences", said),
        chosen,
        choose: allowed.is_ok().then(|| Button {
            label: say!(lens, "trim-choose", size = lens.length(size)),
            action,
        }),
        best: best == Some(size),
        saves: choice
            .saves
            .iter()
            .map(|s| save(throw, s, &choice.laps, lens))
            .collect(),
    }
}

/// How many pieces a choice leaves short; one may be so both ways.
fn pieces_saved(choice: &Choice) -> usize {
    let pieces: BTreeSet<Rect> = choice.saves.iter().map(|s| s.piece).collect();
    pieces.len()
}

/// How one short piece is saved, in a sentence.
fn save(throw: &Throw, save: &Save, laps: &[(Rect, Rect, Length)], lens: Lens<'_>) -> String {
    let way = if save.seam == Seam::Upright {
        "across"
    } else {
        "down"
    };
    let piece = names::piece(throw, save.piece, lens);
    let short = lens.length(save.short);
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
                        lens,
                        "save-lap",
                        piece = names::piece(throw, other, lens),
                        lap = lens.length(*lap)
                    )
                })
                .collect();
            if at.is_empty() {
                "edge"
            } else {
                return say!(
                    lens,
                    format!("save-{way}-lapped"),
                    piece = piece,
                    short = short,
                    laps = lens.words.list("list-long", at)
                );
            }
        }
        How::Resewn => "resewn",
        How::Renewed => "renewed",
        How::LeftShort => "left",
    };
    say!(
        lens,
        format!("save-{way}-{key}"),
        piece = piece,
        short = short
    )
}
