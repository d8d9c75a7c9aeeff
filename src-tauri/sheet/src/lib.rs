//! The making sheet and the wall card as PDF, typeset by Typst from a template of our own.
//!
//! The core says what goes on paper ([`Sheet`]); this crate lays it out and nothing else.
//!
//! Promises:
//! * The template receives what the maker typed as data and sets it letter by letter; none of it
//!   is ever read as markup.
//! * The typesetter sees the template, the data, the pictures and the photos that it is given, and
//!   nothing else: no disk, network, packages or clock. The same sheet gives the same bytes.
//! * All fonts come with the program and are embedded in the PDF.
//! * Cancelling is prompt. Typst cannot be stopped half-way, so it runs on a thread of its
//!   own: [`print`] returns as soon as it is asked to stop, and the thread's result is discarded.
//!   From then on the thread receives no more fonts and does not start its next step, so it soon
//!   ends.
//!
//! The PDF is tagged and, by Typst's own check, PDF/UA-1; should that check find a fault in
//! what was typed, such as a mark its letters cannot carry, it is printed without the claim.
//!
//! Pages are set anew, a little more closely, where one of them would be nearly empty (filled
//! less than a quarter of its height) or the last one filled less than half: at most three
//! times. The setting with the fewest nearly empty pages is printed; of those, that with the
//! fewest pages; of those, the loosest.
//!
//! Large print is set in 18 pt and laid out again, not magnified (16 to 18 pt and more is
//! what guidance on large print asks for, UKAAF and RNIB; from memory).

mod filling;
mod pictures;
mod tidy;
mod world;

use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::show::{PrintOrder, PrintPaper, Sheet};
use serde::Serialize;
use std::collections::BTreeMap;
use std::ops::ControlFlow;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{RecvTimeoutError, channel};
use std::time::Duration;
use thiserror::Error;
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};
use world::Typesetter;

/// How often the caller is asked whether to go on.
const ASK: Duration = Duration::from_millis(25);

/// What paper it is printed on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Paper {
    /// 210 × 297 mm.
    A4,
    /// 8½ × 11 in.
    Letter,
}

/// How large the letters are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum LetterSize {
    /// 11 pt.
    Normal,
    /// 18 pt.
    Large,
}

/// Whether it is printed in colour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Inks {
    /// In colour.
    Colour,
    /// In black on white; fabrics differ by texture and letters.
    Black,
}

/// What is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum PrintKind {
    /// The whole making sheet.
    Making,
    /// The wall card: one page.
    Bench,
}

/// How it is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub struct Options {
    /// The paper.
    pub paper: Paper,
    /// The size of the letters.
    pub size: LetterSize,
    /// The inks.
    pub ink: Inks,
    /// What is printed.
    pub kind: PrintKind,
}

impl From<&PrintOrder> for Options {
    fn from(order: &PrintOrder) -> Options {
        Options {
            paper: match order.paper {
                PrintPaper::A4 => Paper::A4,
                PrintPaper::Letter => Paper::Letter,
            },
            size: match order.large {
                true => LetterSize::Large,
                false => LetterSize::Normal,
            },
            ink: match order.black {
                true => Inks::Black,
                false => Inks::Colour,
            },
            kind: match order.card {
                true => PrintKind::Bench,
                false => PrintKind::Making,
            },
        }
    }
}

/// A photo to be printed, made small enough for it: its points are unpacked to be set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PrintPhoto {
    /// The picture as JPEG; one that cannot be read lets the print fail.
    pub jpeg: Vec<u8>,
    /// Its points from left to right.
    pub width: u32,
    /// Its points from top to bottom.
    pub height: u32,
}

/// Photos by their names. A photo of the story that is missing here is described as gone; a fabric
/// whose photo is missing is drawn.
pub type Photos = BTreeMap<PhotoId, PrintPhoto>;

/// What is being done now.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Progress {
    /// The data is made ready.
    Gathering,
    /// The pages are set.
    Setting,
    /// The PDF is written.
    Writing,
}

impl Progress {
    /// Steps done before this one, of [`Progress::ALL`].
    pub fn done(self) -> u32 {
        self as u32
    }

    /// How many steps there are.
    pub const ALL: u32 = 3;
}

/// Why there is nothing printed.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum PrintFault {
    /// It was cancelled.
    #[error("cancelled")]
    Cancelled,
    /// It could not be typeset: a fault of ours, in the typesetter's words.
    #[error("{0}")]
    Failed(String),
}

/// Typeset a sheet to PDF.
///
/// `progress` is asked every 25 ms on the caller's thread; once it breaks, this returns.
///
/// # Errors
/// [`PrintFault::Cancelled`] where `progress` broke, [`PrintFault::Failed`] where the
/// typesetter would not.
pub fn print(
    sheet: &Sheet,
    photos: Photos,
    options: Options,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Vec<u8>, PrintFault> {
    let mut now = Progress::Gathering;
    let stop = Arc::new(AtomicBool::new(false));
    let cancelled = |stop: &AtomicBool| {
        stop.store(true, Ordering::Relaxed);
        Err(PrintFault::Cancelled)
    };
    if progress(now).is_break() {
        return cancelled(&stop);
    }
    let typesetter = Typesetter::new(sheet, photos, options, Arc::clone(&stop))?;
    let (sender, receiver) = channel();
    std::thread::Builder::new()
        .name("typeset".into())
        .stack_size(16 << 20)
        .spawn(move || {
            let report = |next| {
                // Whoever cancelled does not listen any more.
                let _ = sender.send(News::Now(next));
            };
            let made = typeset(typesetter, &report);
            // Memory for the next sheet is not kept.
            comemo::evict(0);
            let _ = sender.send(News::Made(made));
        })
        .map_err(|why| PrintFault::Failed(why.to_string()))?;
    loop {
        match receiver.recv_timeout(ASK) {
            Ok(News::Made(made)) => return made,
            Ok(News::Now(next)) => now = next,
            Err(RecvTimeoutError::Timeout) => {}
            Err(RecvTimeoutError::Disconnected) => {
                return Err(PrintFault::Failed("the typesetter broke off".into()));
            }
        }
        if progress(now).is_break() {
            return cancelled(&stop);
        }
    }
}

/// The same on the caller's thread, where there are no others; it cannot be cancelled.
///
/// # Errors
/// [`PrintFault::Failed`] where the typesetter would not.
pub fn print_here(
    sheet: &Sheet,
    photos: Photos,
    options: Options,
    report: &dyn Fn(Progress),
) -> Result<Vec<u8>, PrintFault> {
    report(Progress::Gathering);
    let typesetter = Typesetter::new(sheet, photos, options, Arc::default())?;
    let made = typeset(typesetter, report);
    comemo::evict(0);
    made
}

/// What the typesetting thread reports.
enum News {
    Now(Progress),
    Made(Result<Vec<u8>, PrintFault>),
}

/// How much more closely pages may be set, in steps.
const CLOSEST: u8 = 3;
/// A page filled less than this, of its height between the margins, is nearly empty.
const FILLED: f64 = 0.25;
/// A last page filled less than this may be saved by setting the others more closely.
const SPARED: f64 = 0.5;
/// A sheet of more pages is set once: a page less is not worth the time and memory of setting all again.
const LONG: usize = 40;

fn typeset(typesetter: Typesetter, report: &dyn Fn(Progress)) -> Result<Vec<u8>, PrintFault> {
    let step = |typesetter: &Typesetter, next: Progress| {
        report(next);
        match typesetter.stopped() {
            true => Err(PrintFault::Cancelled),
            false => Ok(()),
        }
    };
    let failed = |why: typst::ecow::EcoVec<typst::diag::SourceDiagnostic>| {
        let said: Vec<String> = why
            .iter()
            .map(|d| match d.hints.first() {
                Some(hint) => format!("{} ({})", d.message, hint.v),
                None => d.message.to_string(),
            })
            .collect();
        PrintFault::Failed(said.join("; "))
    };
    let mut typesetter = typesetter;
    let mut best: Option<((usize, usize), PagedDocument)> = None;
    for close in 0..=CLOSEST {
        typesetter = typesetter.set(close)?;
        step(&typesetter, Progress::Setting)?;
        let made = typst::compile::<PagedDocument>(&typesetter);
        let made = made.output.map_err(failed)?;
        let bare = filling::bare(&made, FILLED);
        let full = bare == 0 && filling::is_last_filled(&made, SPARED);
        let pages = made.pages().len();
        let cost = (bare, pages);
        if best.as_ref().is_none_or(|(least, _)| cost < *least) {
            best = Some((cost, made));
        }
        if full || pages > LONG {
            break;
        }
        // What was remembered of this try is of no use to the next, whose data differ.
        comemo::evict(0);
    }
    let (_, document) = best.ok_or_else(|| PrintFault::Failed("no pages".into()))?;
    step(&typesetter, Progress::Writing)?;
    drop(typesetter);
    let universal = PdfStandards::new(&[PdfStandard::Ua_1])
        .map_err(|why| PrintFault::Failed(why.message().to_string()))?;
    let with = |standards: PdfStandards| PdfOptions {
        standards,
        creator: typst::foundations::Smart::Custom(Some("Lapwork".into())),
        ..PdfOptions::default()
    };
    typst_pdf::pdf(&document, &with(universal))
        .or_else(|_| typst_pdf::pdf(&document, &with(PdfStandards::default())))
        .map_err(failed)
}
