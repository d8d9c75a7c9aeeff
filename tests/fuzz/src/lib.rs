//! What is done with bytes from outside, one function for each way they come in.
//!
//! Each takes any bytes whatever and must end, without a panic, in bounded time and
//! memory. What it asserts beyond that holds for everything that was taken. The fuzz
//! targets call them with bytes guided by coverage; `tests/tests/fuzzed.rs` builds this
//! same file and calls them, without any of that, with what is kept in `tests/corpus/fuzzed`
//! and with kept files changed by chance.
//!
//! Checksums are put right before a record is read, since nothing would come past them:
//! see [`summed`].

#[path = "../../src/asked.rs"]
pub mod asked;

use lapwork_core::cloth::cutting::{Cutting, bound, free_yield, lay_out, naive};
use lapwork_core::cloth::garments::Piece;
use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::cloth::weight::{in_gsm, parse_weight};
use lapwork_core::command::Command;
use lapwork_core::demo;
use lapwork_core::fitting::squaring::held;
use lapwork_core::log::intake;
use lapwork_core::log::journal::{FormatError, Journal};
use lapwork_core::log::lessons::heritage;
use lapwork_core::log::merge::{MergeSide, meet};
use lapwork_core::measure::outline::{Measures, Outline};
use lapwork_core::measure::{
    Fraction, MetricUnit, ParseError, Ruler, System, in_nm, nm, parse, read,
};
use lapwork_core::plan::Plan;
use lapwork_core::plan::assembly::Rect;
use lapwork_core::show::drawing::{Drawing, Style};
use lapwork_core::show::tables::Table;
use lapwork_core::show::{self, Context};
use lapwork_core::show::{GridWish, PlanDraft, Prefs, Query, Request, ShelfCommand};
use lapwork_core::words::{LANGUAGES, Words};
use std::sync::LazyLock;

const NOW: i64 = 1_773_000_000_000;
/// No more than this is looked at: longer inputs take longer and reach nothing else.
pub const LONGEST: usize = 64 << 10;
/// What stands between the two records of [`merge`].
pub const BETWEEN: &str = "\n----\n";

static WORDS: LazyLock<Vec<Words>> =
    LazyLock::new(|| LANGUAGES.iter().map(|l| Words::of(l.code)).collect());

/// Every ruler there is.
fn rulers() -> impl Iterator<Item = Ruler> {
    let fractions = [
        Fraction::Eighth,
        Fraction::Sixteenth,
        Fraction::ThirtySecond,
        Fraction::SixtyFourth,
    ];
    let inches = fractions.map(|fraction| Ruler {
        system: System::Inch,
        fraction,
        ..Ruler::default()
    });
    let metric = [MetricUnit::Mm, MetricUnit::Cm].map(|metric| Ruler {
        system: System::Metric,
        metric,
        ..Ruler::default()
    });
    inches.into_iter().chain(metric)
}

/// A lens that follows from the bytes, so that the same bytes are always looked at alike.
fn context(sum: u32) -> Context<'static> {
    let ruler = rulers().nth(sum as usize % 6).unwrap_or_default();
    Context {
        words: &WORDS[(sum / 6) as usize % WORDS.len()],
        ruler,
        now: NOW,
    }
}

/// A typed length or weight: a length within bounds that is taken back as it is shown, or
/// told.
pub fn measure(bytes: &[u8]) {
    let typed = String::from_utf8_lossy(bytes);
    for ruler in rulers() {
        match parse(&typed, ruler) {
            Ok(length) => {
                assert!((0..=100_000_000_000).contains(&in_nm(length)), "{typed:?}");
                let reading = read(length, ruler);
                if !reading.rounded {
                    for point in ['.', ','] {
                        let shown = reading.digits.print(point);
                        assert_eq!(parse(&shown, ruler), Ok(length), "{typed:?} {shown:?}");
                    }
                }
            }
            Err(ParseError::OffTheMarks { nearest }) => assert!(in_nm(nearest) >= 0, "{typed:?}"),
            Err(_) => {}
        }
        for words in WORDS.iter() {
            let context = Context {
                words,
                ruler,
                now: NOW,
            };
            if let Err(problem) = show::length(&typed, context) {
                assert!(!problem.said.contains("error-"), "{problem:?}");
            }
        }
    }
    for system in [System::Inch, System::Metric] {
        if let Some(weight) = parse_weight(&typed, system) {
            let grams = in_gsm(weight);
            assert!(grams.is_finite() && grams >= 0.0, "{typed:?}");
        }
    }
    let file = show::file_name(&typed, "svg");
    assert!(
        !file.contains(['/', '\\', '\0']) && file.len() <= 255 && !file.starts_with('.'),
        "{file:?}"
    );
    if let Some(photo) = PhotoId::parse(&typed) {
        assert!(photo.as_str().bytes().all(|b| b.is_ascii_alphanumeric()));
    }
}

/// The lines of a record with every checksum put right; a line that is no object is left.
pub fn summed(bytes: &[u8]) -> Vec<u8> {
    let mut out = Vec::with_capacity(bytes.len() + 64);
    for line in bytes.split_inclusive(|b| *b == b'\n') {
        let (body, newline) = match line.split_last() {
            Some((b'\n', body)) => (body, true),
            _ => (line, false),
        };
        let cut = body.windows(7).rposition(|at| at == b",\"crc\":");
        let cut = cut.or_else(|| (body.ends_with(b"}")).then(|| body.len() - 1));
        match cut {
            Some(cut) if body.starts_with(b"{") => {
                let body = &body[..cut];
                out.extend_from_slice(body);
                out.extend_from_slice(
                    format!(",\"crc\":\"{:08x}\"}}", crc32fast::hash(body)).as_bytes(),
                );
            }
            _ => out.extend_from_slice(body),
        }
        if newline {
            out.push(b'\n');
        }
    }
    out
}

static LOOKS: LazyLock<Vec<Query>> = LazyLock::new(|| {
    let parse = |query| serde_json::from_value(query).expect("a look");
    asked::looks().into_iter().map(parse).collect()
});

/// One of all the things a record is shown as, by turns.
fn shown(journal: &Journal, turn: u32, context: Context<'_>) {
    let turn = turn as usize % (LOOKS.len() + 10);
    if let Some(query) = LOOKS.get(turn) {
        if let Ok(view) = show::answer(journal, query, context) {
            serde_json::to_string(&view).expect("a view can be sent");
        }
        return;
    }
    match turn - LOOKS.len() {
        0 => {
            show::shelf_row("a", journal, context);
        }
        1 => {
            show::figures(journal, context);
        }
        2 | 3 => {
            for drawing in Drawing::all(journal.throw()) {
                let _ = drawing.svg(journal, Style::Colour, &|_| None, context);
                drawing.file_name(journal.throw(), context);
            }
        }
        4 => {
            for table in Table::ALL {
                table.csv(journal, context);
            }
        }
        5 => {
            show::story_page(
                &show::story(journal, &show::ZoneName::named("Etc/GMT+12"), context),
                |_| None,
                context,
            );
        }
        6 => {
            let calendar = show::ZoneName::named("Europe/Berlin").calendar();
            show::sheet(journal, context, show::PrintUnits::Both, &|at| {
                calendar.day(at)
            });
        }
        7 => {
            show::again(journal, context);
            heritage(journal);
        }
        8 => {
            show::import(None, journal, (1, 0), context);
        }
        _ => {
            let mut undone = journal.clone();
            while let Ok(entry) = undone.propose_undo(NOW) {
                if undone.len() > journal.len() + 5 || undone.accept(entry).is_none() {
                    break;
                }
            }
        }
    }
}

/// A throw file in the data folder: damaged and told, or folded, shown, and written again
/// so that it reads the same.
pub fn record(bytes: &[u8]) {
    if bytes.len() > LONGEST {
        return;
    }
    let sum = crc32fast::hash(bytes);
    for bytes in [bytes, &summed(bytes)] {
        match Journal::read(bytes) {
            Ok(found) => {
                assert!(found.sound <= bytes.len());
                let again = Journal::read(found.journal.text().as_bytes()).expect("it reads again");
                assert_eq!(again.journal.throw(), found.journal.throw());
                assert!(!again.torn && !again.lacks_newline);
                shown(&found.journal, sum, context(sum));
            }
            Err(how) => output(&how, sum),
        }
    }
}

fn output(how: &FormatError, sum: u32) {
    let problem = show::format_error(how, context(sum));
    assert!(
        problem.said.len() > 10 && problem.next.len() > 10,
        "{problem:?}"
    );
}

/// A throw file brought from anywhere: told, or taken in and shown, and what is sound of
/// it is the same record to the byte.
pub fn brought(bytes: &[u8]) {
    if bytes.len() > LONGEST {
        return;
    }
    let sum = crc32fast::hash(bytes);
    for bytes in [bytes, &summed(bytes)] {
        match intake::read(bytes) {
            Ok(found) => {
                assert!(found.sound <= bytes.len());
                assert!(
                    Journal::read(bytes).is_ok(),
                    "brought, and could not be read"
                );
                let again = intake::read(found.journal.text().as_bytes()).expect("it comes again");
                assert_eq!(again.journal.throw(), found.journal.throw());
                shown(&found.journal, sum, context(sum));
            }
            Err(how) => output(&how, sum),
        }
    }
}

/// What the window asks of a throw, a line each: refused in words, or done so that the
/// record reads the same again and undoing it is as if it had never been.
pub fn actions(bytes: &[u8]) {
    if bytes.len() > LONGEST {
        return;
    }
    static BEGUN: LazyLock<Journal> = LazyLock::new(|| {
        let read = Journal::read(asked::KEPT).expect("a kept file");
        read.journal
    });
    let sum = crc32fast::hash(bytes);
    let context = context(sum);
    let mut journal = BEGUN.clone();
    // Undoing folds anew, so it is tried of the first that is done.
    let mut undone = false;
    for line in bytes.split(|b| *b == b'\n').take(12) {
        let request = match serde_json::from_slice::<Command>(line) {
            Ok(action) => Request::Act { action },
            Err(_) => match serde_json::from_slice::<Request>(line) {
                Ok(request) => request,
                Err(_) => continue,
            },
        };
        let proposed = match &request {
            Request::Act { action } => {
                if let Ok((begun, _)) = Journal::begin(action, NOW) {
                    assert_eq!(begun.throw().plan.check(), Ok(()), "begun");
                    journal = begun;
                    continue;
                }
                journal.propose(action, NOW)
            }
            Request::Undo => journal.propose_undo(NOW),
            Request::Redo => journal.propose_redo(NOW),
        };
        match proposed {
            Err(refusal) => {
                let problem = show::rejection(&refusal, Some(journal.throw()), context);
                assert!(!problem.said.contains("error-"), "{problem:?}");
            }
            Ok(entry) => {
                let before = journal.throw().clone();
                let acted = matches!(request, Request::Act { .. }) && !undone;
                undone = true;
                journal.accept(entry).expect("what is proposed is accepted");
                if acted {
                    let mut back = journal.clone();
                    let undo = back.propose_undo(NOW).expect("it can be undone");
                    back.accept(undo).expect("and is");
                    assert_eq!(back.throw(), &before, "undone");
                }
            }
        }
    }
    let text = journal.text();
    let again = Journal::read(text.as_bytes()).expect("it reads again");
    assert_eq!(again.journal.throw(), journal.throw());
    let brought = intake::read(text.as_bytes());
    assert!(
        brought.is_ok(),
        "allowed here, and not brought: {brought:?}"
    );
    shown(&journal, sum, context);
}

/// All else the window sends, a line each: settings, screens, drafts and the shelf.
pub fn sent(bytes: &[u8]) {
    if bytes.len() > LONGEST {
        return;
    }
    static THROW: LazyLock<Journal> = LazyLock::new(|| demo::throw(NOW));
    let sum = crc32fast::hash(bytes);
    let context = context(sum);
    for line in bytes.split(|b| *b == b'\n').take(6) {
        if let Ok(query) = serde_json::from_slice::<Query>(line)
            && let Ok(view) = show::answer(&THROW, &query, context)
        {
            serde_json::to_string(&view).expect("a view can be sent");
        }
        if let Ok(prefs) = serde_json::from_slice::<Prefs>(line) {
            let kept = serde_json::to_vec(&prefs).expect("settings can be kept");
            let again = serde_json::from_slice::<Prefs>(&kept).expect("and read");
            assert_eq!(again, prefs);
            let _ = prefs
                .language
                .as_deref()
                .and_then(lapwork_core::words::language);
        }
        if let Ok(draft) = serde_json::from_slice::<PlanDraft>(line) {
            show::draft(&draft, context);
        }
        if let Ok(ShelfCommand::Begin { action, .. } | ShelfCommand::Again { action, .. }) =
            serde_json::from_slice::<ShelfCommand>(line)
            && let Ok((begun, _)) = Journal::begin(&action, NOW)
        {
            shown(&begun, sum, context);
        }
    }
}

/// Two copies of a record: told why not, or made one, the same whichever is first, once
/// and for all, with nothing of either lost.
pub fn merge(bytes: &[u8]) {
    if bytes.len() > LONGEST {
        return;
    }
    let sum = crc32fast::hash(bytes);
    let split = bytes
        .windows(BETWEEN.len())
        .position(|at| at == BETWEEN.as_bytes());
    let Some(split) = split else {
        return;
    };
    let [first, second] = [
        &bytes[..split + 1],
        &bytes[(split + BETWEEN.len()).min(bytes.len())..],
    ]
    .map(|bytes| intake::read(&summed(bytes)));
    let (Ok(first), Ok(second)) = (first, second) else {
        return;
    };
    let (first, second) = (first.journal, second.journal);
    show::import(Some(&first), &second, (1, u64::from(sum)), context(sum));
    let (Ok(meeting), Ok(turned)) = (meet(&first, &second), meet(&second, &first)) else {
        return;
    };
    let count = meeting.conflicts().len();
    assert_eq!(count, turned.conflicts().len());
    let choices: Vec<MergeSide> = (0..count)
        .map(|i| match sum >> (i % 32) & 1 {
            0 => MergeSide::First,
            _ => MergeSide::Second,
        })
        .collect();
    let others: Vec<MergeSide> = choices.iter().map(|side| side.other()).collect();
    match (meeting.join(&choices), turned.join(&others)) {
        (Ok(joined), Ok(other)) => {
            assert_eq!(joined.throw(), other.throw(), "it matters which is first");
            let again = Journal::read(joined.text().as_bytes()).expect("it reads again");
            assert_eq!(again.journal.throw(), joined.throw());
            shown(&joined, sum, context(sum));
        }
        (Err(_), Err(_)) => {}
        (one, other) => panic!(
            "only one way: {:?} {:?}",
            one.map(|j| j.len()),
            other.map(|j| j.len())
        ),
    }
}

/// Outlines, a line each: of cloth, with how it is to be cut, and of sewn blocks.
pub fn outline(bytes: &[u8]) {
    if bytes.len() > LONGEST {
        return;
    }
    static THROW: LazyLock<Journal> = LazyLock::new(|| demo::throw(NOW));
    let mut how = Cutting::default();
    for line in bytes.split(|b| *b == b'\n').take(6) {
        if let Ok(said) = serde_json::from_slice::<Cutting>(line)
            && said.check().is_ok()
        {
            how = said;
        }
        if let Ok(piece) = serde_json::from_slice::<Piece>(line) {
            cloth(&piece, &how);
        }
        if let Ok(measures) = serde_json::from_slice::<Measures>(line) {
            let four = Rect::square(0, 0);
            let four = Rect {
                rows: 2,
                cols: 2,
                ..four
            };
            let _ = held(THROW.throw(), four, measures);
            if let Ok(outline) = Outline::new(measures) {
                let side = measures.sides.top;
                if let Some(cut) = outline.place(side, side, None) {
                    serde_json::to_string(&format!("{cut:?}")).expect("figures");
                }
                let fit = outline.largest(nm(241_300_000), nm(241_300_000));
                assert!(fit.is_none() || outline.closing().is_finite());
                assert!(outline.angles_off().iter().all(|off| off.is_finite()));
            }
        }
    }
}

fn cloth(piece: &Piece, how: &Cutting) {
    if piece.check().is_err() {
        assert!(lay_out(piece, how).is_err());
        return;
    }
    let Ok(plan) = lay_out(piece, how) else {
        return;
    };
    let squares = plan.count;
    let most = bound(piece, how).expect("it can be cut");
    assert!(squares <= most, "{squares} squares of at most {most}");
    if how.binding.is_none() {
        let one_way = naive(piece, how).expect("it can be cut");
        assert!(squares >= one_way, "{squares} squares, plainly {one_way}");
    }
    let _ = free_yield(piece, how);
}

/// A draft and what is wished for, a line each: grids that keep to it, or told.
pub fn grids(bytes: &[u8]) {
    if bytes.len() > LONGEST {
        return;
    }
    let sum = crc32fast::hash(bytes);
    let context = context(sum);
    let mut draft = show::draft_of(&Plan::default(), context);
    for line in bytes.split(|b| *b == b'\n').take(6) {
        if let Ok(said) = serde_json::from_slice::<PlanDraft>(line) {
            draft = said;
        }
        if let Ok(wish) = serde_json::from_slice::<GridWish>(line) {
            let seen = show::grids(&draft, &wish, context);
            assert!(seen.grids.len() <= 100);
            assert!(seen.problem.is_none() || seen.grids.is_empty());
        }
    }
}
