//! The printed sheet, opened by poppler (Debian's poppler-utils): an outside reader of PDF.
//!
//! What is found in the text is compared with what the core says; the pages are drawn
//! and looked at pixel by pixel where ink matters.

#[path = "../../src-tauri/sheet/benches/filled.rs"]
#[allow(dead_code)]
mod filled;

use lapwork_core::cloth::fabric::Print;
use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::command::Command;
use lapwork_core::demo;
use lapwork_core::log::journal::Journal;
use lapwork_core::log::lessons::heritage;
use lapwork_core::measure::{Count, Ruler, System};
use lapwork_core::plan::Plan;
use lapwork_core::plan::assembly::{Kind, Rect};
use lapwork_core::show::sheet::{MOST_PHOTOS, Row, SheetEntry};
use lapwork_core::show::{self, Context, Query, Sheet, View, answer};
use lapwork_core::show::{PrintOrder, PrintPaper, PrintUnits, ZoneName};
use lapwork_core::throw::tasks::Task;
use lapwork_core::words::Words;
use lapwork_sheet::{
    Inks, LetterSize, Options, Paper, Photos, PrintFault, PrintKind, Progress, print, print_here,
};
use lapwork_tests::processes::{alone, most_memory, tell};
use lapwork_tests::program::lapwork;
use std::cell::Cell;
use std::collections::{BTreeSet, HashMap};
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};
use std::process;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{LazyLock, Mutex, OnceLock, PoisonError};
use std::time::{Duration, Instant};

const NOW: i64 = 1_800_000_000_000;
const PLAIN: Options = Options {
    paper: Paper::A4,
    size: LetterSize::Normal,
    ink: Inks::Colour,
    kind: PrintKind::Making,
};

/// What one of poppler's programs says.
fn poppler(program: &str, args: &[&str]) -> Vec<u8> {
    let output = process::Command::new(program).args(args).output();
    let output = output.unwrap_or_else(|why| {
        panic!("{program} cannot be run ({why}): install poppler-utils, as .ci/test does")
    });
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(output.status.success(), "{program}: {said}");
    // It complains there of what is wrong in a file it can read all the same. Two complaints
    // are its own mistakes: /Suspects is a boolean (ISO 32000-1, 14.7.1, table 321), and
    // /BorderColor may be an array of four arrays (14.8.5.3, table 343; both from memory).
    let mistaken = [
        "Syntax Warning: Attribute BorderColor value is of wrong type (array)",
        "Suspects object is wrong type",
    ];
    let complaints = said.replace(mistaken[0], "");
    let complaints = complaints.lines().filter(|l| !l.contains(mistaken[1]));
    let complaints: String = complaints.collect();
    assert!(complaints.trim().is_empty(), "{program}: {complaints}");
    output.stdout
}

fn lines(program: &str, args: &[&str]) -> String {
    String::from_utf8(poppler(program, args)).expect("UTF-8")
}

/// A printed sheet.
struct Paged {
    file: PathBuf,
    text: OnceLock<String>,
}

impl Paged {
    /// The sheet, printed once however often it is asked for.
    fn of(sheet: &Sheet, options: Options) -> &'static Paged {
        type Printed = HashMap<(String, Options), &'static OnceLock<Paged>>;
        static PRINTED: LazyLock<Mutex<Printed>> = LazyLock::new(Mutex::default);
        let all = serde_json::to_string(sheet).unwrap();
        let one: &'static OnceLock<Paged> = PRINTED
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .entry((all, options))
            .or_insert_with(|| Box::leak(Box::default()));
        one.get_or_init(|| Paged::anew(sheet, options))
    }

    fn anew(sheet: &Sheet, options: Options) -> Paged {
        let bytes = print(
            sheet,
            filled::photos(sheet, options.ink == Inks::Black),
            options,
            &mut |_| ControlFlow::Continue(()),
        );
        Paged::kept(&bytes.unwrap_or_else(|why| panic!("{}: {why}", sheet.name)))
    }

    /// Kept in cargo's own folder for tests, where the next run writes over it.
    fn kept(bytes: &[u8]) -> Paged {
        static KEPT: AtomicUsize = AtomicUsize::new(0);
        let n = KEPT.fetch_add(1, Ordering::Relaxed);
        let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("sheet-{n}.pdf"));
        std::fs::write(&file, bytes).unwrap();
        Paged {
            file,
            text: OnceLock::new(),
        }
    }

    fn path(&self) -> &str {
        self.file.to_str().unwrap()
    }

    fn info(&self, key: &str) -> String {
        let said = lines("pdfinfo", &[self.path()]);
        let found = said
            .lines()
            .find_map(|l| l.strip_prefix(&format!("{key}:")));
        found.unwrap_or_default().trim().to_string()
    }

    fn pages(&self) -> usize {
        self.info("Pages").parse().unwrap()
    }

    /// All text in the order it was set, white space, breaks and the pages' feet left out.
    fn text(&self) -> String {
        self.text.get_or_init(|| self.read()).clone()
    }

    fn read(&self) -> String {
        let args = ["-raw", "-enc", "UTF-8", self.path(), "-"];
        let mut text = bare(&lines("pdftotext", &args));
        let (title, pages) = (bare(&self.info("Title")), self.pages());
        for page in 1..=pages {
            let number = format!("Page{page}/{pages}");
            let Some(at) = text.find(&number) else {
                continue;
            };
            // A long name is cut there, so that what stands before the number is its beginning.
            let before: Vec<char> = text[..at].trim_end_matches('…').chars().collect();
            let foot = (1..=before.len().min(80))
                .rev()
                .map(|n| before[before.len() - n..].iter().collect::<String>())
                .find(|foot| title.starts_with(foot.as_str()))
                .unwrap_or_default();
            let from = text[..at].rfind(&foot).unwrap_or(at);
            text.replace_range(from..at + number.len(), "");
        }
        text
    }

    /// The words of each page with their boxes, and the pages' sizes, in points.
    fn words(&self) -> Vec<(f64, f64, Vec<Word>)> {
        let output = lines("pdftotext", &["-bbox", self.path(), "-"]);
        let number = |line: &str, name: &str| -> f64 {
            let after = line.split_once(&format!("{name}=\"")).unwrap().1;
            after.split_once('"').unwrap().0.parse().unwrap()
        };
        let mut pages = Vec::new();
        for line in output.lines().map(str::trim) {
            if line.starts_with("<page ") {
                pages.push((number(line, "width"), number(line, "height"), Vec::new()));
            } else if line.starts_with("<word ") {
                let text = line.split_once('>').unwrap().1.trim_end_matches("</word>");
                let word = Word {
                    x1: number(line, "xMin"),
                    y1: number(line, "yMin"),
                    x2: number(line, "xMax"),
                    y2: number(line, "yMax"),
                    text: text.to_string(),
                };
                pages.last_mut().unwrap().2.push(word);
            }
        }
        pages
    }

    /// Every pixel of every page as red, green, blue.
    fn pixels(&self) -> Vec<[u8; 3]> {
        self.pixels_by_page()
            .into_iter()
            .flat_map(|(_, all)| all)
            .collect()
    }

    /// The width of each page in pixels, and its pixels row by row, 40 to the inch.
    fn pixels_by_page(&self) -> Vec<(usize, Vec<[u8; 3]>)> {
        let folder = tempfile::tempdir().unwrap();
        let stem = folder.path().join("page");
        poppler(
            "pdftoppm",
            &["-r", "40", self.path(), stem.to_str().unwrap()],
        );
        let mut all = Vec::new();
        let found = std::fs::read_dir(folder.path()).unwrap();
        let mut files: Vec<PathBuf> = found.map(|f| f.unwrap().path()).collect();
        files.sort();
        for file in files {
            let bytes = std::fs::read(file).unwrap();
            let head: Vec<&[u8]> = bytes.splitn(4, |b| b.is_ascii_whitespace()).collect();
            assert_eq!(head[0], b"P6");
            let width = std::str::from_utf8(head[1]).unwrap().parse().unwrap();
            // Three header fields and the depth, then the pixels.
            let body = &head[3][head[3].iter().position(|b| *b == b'\n').unwrap() + 1..];
            let pixels = body.chunks_exact(3).map(|p| [p[0], p[1], p[2]]);
            all.push((width, pixels.collect()));
        }
        assert!(!all.is_empty());
        all
    }
}

/// One word where it stands.
struct Word {
    x1: f64,
    y1: f64,
    x2: f64,
    y2: f64,
    text: String,
}

/// Without white space, places to break and marks of direction.
fn bare(text: &str) -> String {
    let unseen = |c: char| {
        c.is_whitespace()
            || matches!(c, '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
    };
    text.chars().filter(|c| !unseen(*c)).collect()
}

/// No word beyond the margins, and none over another.
fn nothing_is_cut_off(paged: &Paged, what: &str) {
    let margin = 10.0 / 25.4 * 72.0;
    for (n, (width, height, words)) in paged.words().iter().enumerate() {
        for word in words {
            let inside = word.x1 >= margin
                && word.y1 >= margin * 0.8
                && word.x2 <= width - margin
                && word.y2 <= height - margin * 0.8;
            assert!(inside, "{what}, page {}: “{}” is cut off", n + 1, word.text);
        }
        for (i, a) in words.iter().enumerate() {
            for b in &words[i + 1..] {
                // A box reaches from the ascenders to the descenders, wider than the ink:
                // what counts is whether the middles of the letters meet.
                let (high, low) = (0.3 * (a.y2 - a.y1), 0.3 * (b.y2 - b.y1));
                let across = a.x2.min(b.x2) - a.x1.max(b.x1);
                let down = (a.y2 - high).min(b.y2 - low) - (a.y1 + high).max(b.y1 + low);
                assert!(
                    across < 0.6 || down < 0.6,
                    "{what}, page {}: “{}” lies over “{}”",
                    n + 1,
                    a.text,
                    b.text
                );
            }
        }
    }
}

/// Every throw that is printed here.
fn sheets() -> Vec<(&'static str, Sheet)> {
    vec![
        ("demo", filled::sheet(&demo::throw(NOW))),
        ("1 × 1", filled::sheet(&filled::throw(1, 1))),
        ("5 × 7", filled::sheet(&filled::throw(5, 7))),
        ("20 × 24", filled::sheet(&filled::throw(20, 24))),
        ("told", filled::story(&filled::throw(4, 6), 11)),
    ]
}

fn rows(sheet: &Sheet) -> Vec<&Row> {
    let steps = sheet.stages.iter().flat_map(|s| &s.steps);
    let squaring = sheet.squaring.iter().flat_map(|s| &s.figures);
    sheet
        .figures
        .iter()
        .chain(&sheet.totals)
        .chain(&sheet.tallies)
        .chain(squaring)
        .chain(steps.flat_map(|s| &s.figures))
        .collect()
}

#[test]
fn every_figure_and_every_word_of_the_throw_is_on_paper() {
    for (what, sheet) in sheets() {
        for (size, paper) in [
            (LetterSize::Normal, Paper::A4),
            (LetterSize::Large, Paper::Letter),
        ] {
            let paged = Paged::of(
                &sheet,
                Options {
                    size,
                    paper,
                    ..PLAIN
                },
            );
            let text = paged.text();
            let has = |wanted: &str| {
                assert!(
                    text.contains(&bare(wanted)),
                    "{what}: no “{wanted}” on paper"
                );
            };
            for row in rows(&sheet) {
                has(&row.own);
                row.other.iter().for_each(|other| has(other));
            }
            for item in &sheet.supplies {
                has(&item.label);
                item.lines.iter().for_each(|line| has(line));
            }
            for heap in &sheet.heaps {
                has(&heap.title);
                for cuts in &heap.cuts {
                    cuts.list.iter().for_each(|line| has(&line.text));
                    cuts.said.iter().for_each(|line| has(line));
                }
            }
            for stage in &sheet.stages {
                has(&stage.title);
                for step in &stage.steps {
                    has(&step.title);
                    step.how.iter().for_each(|line| has(line));
                    step.learned.iter().for_each(|line| has(line));
                    step.caution.iter().for_each(|caution| has(&caution.text));
                }
                stage.lines.iter().for_each(|line| has(&line.label));
            }
            let notes = sheet.stages.iter().flat_map(|s| &s.notes);
            for entry in notes.chain(&sheet.notes).chain(&sheet.changes) {
                has(&entry.text);
            }
            sheet.laps.iter().for_each(|line| has(line));
            let learned = sheet.lessons.iter().flat_map(|l| &l.rows);
            learned.for_each(|row| has(&row.words));
            for day in sheet.story.iter().flat_map(|story| &story.days) {
                has(&day.title);
                day.made.iter().for_each(|line| has(line));
                for item in &day.items {
                    has(&item.words);
                    item.about.iter().for_each(|about| has(about));
                }
            }
            for scrap in &sheet.scraps {
                has(&scrap.label);
                scrap.lines.iter().for_each(|line| has(line));
            }
            nothing_is_cut_off(paged, what);
        }
    }
}

#[test]
fn the_figures_are_those_the_core_tells_programs() {
    let words = Words::english();
    for journal in [demo::throw(NOW), filled::throw(5, 7), filled::throw(20, 24)] {
        let sheet = filled::sheet(&journal);
        let making = Paged::of(&sheet, PLAIN).text();
        let card = Paged::of(
            &sheet,
            Options {
                kind: PrintKind::Bench,
                ..PLAIN
            },
        )
        .text();
        for system in [System::Inch, System::Metric] {
            let ruler = Ruler {
                system,
                ..Ruler::default()
            };
            let context = Context {
                words: &words,
                ruler,
                now: NOW,
            };
            let output = show::figures(&journal, context);
            let shown = |path: &[&str]| {
                let at = path.iter().fold(&output, |at, key| &at[*key]);
                let shown = at["shown"].as_str();
                let shown = shown.unwrap_or_else(|| panic!("{path:?} in {output}"));
                // Before the two sides of a size one sign stands for both that they are rounded.
                let in_size = ["trim", "pair", "four", "planned", "foreseen"].contains(&path[0]);
                bare(match in_size {
                    false => shown,
                    true => shown.trim_start_matches('≈'),
                })
            };
            for path in [
                &["side"][..],
                &["lap"],
                &["fringe"],
                &["trim"],
                &["pair", "width"],
                &["pair", "height"],
                &["four", "width"],
                &["planned", "height"],
                &["foreseen", "height"],
            ] {
                assert!(making.contains(&shown(path)), "{path:?} {system:?}");
            }
            // Long lengths are told in metres or yards, as the plan's screen tells them.
            let Ok(View::Plan(plan)) = answer(&journal, &Query::Plan { draft: None }, context)
            else {
                panic!("the plan is shown")
            };
            for label in ["Stitching", "Binding"] {
                let told = plan.figures.iter().find(|figure| figure.label == label);
                let told = &told.expect(label).value.text;
                assert!(making.contains(&bare(told)), "{told} {system:?}");
            }
            for path in [
                &["side"][..],
                &["lap"],
                &["fringe"],
                &["trim"],
                &["four", "height"],
            ] {
                assert!(card.contains(&shown(path)), "card: {path:?} {system:?}");
            }
        }
    }
}

#[test]
fn paper_letters_and_name_are_as_asked_for() {
    let sheet = filled::sheet(&demo::throw(NOW));
    for kind in [PrintKind::Making, PrintKind::Bench] {
        for (paper, size) in [(Paper::A4, "(A4)"), (Paper::Letter, "(letter)")] {
            let paged = Paged::of(
                &sheet,
                Options {
                    paper,
                    kind,
                    ..PLAIN
                },
            );
            assert!(
                paged.info("Page size").contains(size),
                "{}",
                paged.info("Page size")
            );
            assert!(paged.info("Title").starts_with(&sheet.name));
            assert_eq!(paged.info("Tagged"), "yes");
            assert_eq!(paged.info("Creator"), "Lapwork");
            let output = bare(&lines("pdfinfo", &["-meta", paged.path()]));
            assert!(
                output.contains("<pdfuaid:part>1</pdfuaid:part>"),
                "{output}"
            );
            assert!(output.contains("<rdf:li>en</rdf:li>"), "{output}");
            let pages = paged.pages();
            assert!(
                if kind == PrintKind::Bench {
                    pages == 1
                } else {
                    (4..=12).contains(&pages)
                },
                "{pages}"
            );
            // name, type, encoding…, then: embedded, subset, unicode, object, generation.
            let fonts = lines("pdffonts", &[paged.path()]);
            let fonts: Vec<Vec<&str>> = fonts
                .lines()
                .skip(2)
                .map(|line| line.split_whitespace().rev().collect())
                .collect();
            assert!(!fonts.is_empty());
            for font in fonts {
                assert_eq!(
                    (font[4], font[3], font[2]),
                    ("yes", "yes", "yes"),
                    "{font:?}"
                );
            }
        }
    }
}

#[test]
fn black_ink_is_black() {
    let coloured = |[r, g, b]: &[u8; 3]| r != g || g != b;
    let output = filled::story(&filled::throw(2, 2), 3);
    for sheet in [
        filled::sheet(&demo::throw(NOW)),
        filled::sheet(&filled::throw(5, 7)),
        output,
    ] {
        for kind in [PrintKind::Making, PrintKind::Bench] {
            let black = Paged::of(
                &sheet,
                Options {
                    ink: Inks::Black,
                    kind,
                    ..PLAIN
                },
            );
            assert!(!black.pixels().iter().any(coloured), "{kind:?}");
            let colour = Paged::of(&sheet, Options { kind, ..PLAIN });
            assert!(colour.pixels().iter().any(coloured), "{kind:?}");
        }
    }
}

#[test]
fn what_is_typed_is_printed_letter_by_letter() {
    // No ` or ~, which pdftotext takes for accents, and no hyphen, which it drops at a line’s end.
    let nasty = "#panic(\"no\") $x^2$ *bold* _it_ @label <tag> \\ // /* = a [b](c) #{1} ...";
    let hebrew = "שלום";
    let arabic = "بيت";
    let endless = "Overlock".repeat(40);
    let long: String = "The lap held well here. "
        .repeat(420)
        .chars()
        .take(10_000)
        .collect();
    let mut journal = demo::throw(NOW);
    let mut act = |action: Command| {
        let entry = journal
            .propose(&action, NOW)
            .unwrap_or_else(|why| panic!("{why:?}"));
        journal.accept(entry).unwrap();
    };
    act(Command::Rename {
        name: "#show: x => [] *Porch* $a$".into(),
    });
    for text in [
        nasty.to_string(),
        endless.clone(),
        format!("{hebrew} and {arabic}"),
    ] {
        act(Command::Note {
            text: text.clone(),
            piece: None,
            task: None,
            next: false,
        });
        act(Command::Note {
            text,
            piece: Some(Rect::square(1, 1)),
            task: None,
            next: false,
        });
    }
    let mut prints = demo::prints();
    prints[0].name = "*Rose* #hip $1".into();
    prints[1].name = endless.chars().take(60).collect();
    let denims = demo::denims();
    act(Command::SetCloth { prints, denims });
    let mut sheet = filled::sheet(&journal);
    sheet.notes.push(SheetEntry {
        day: String::new(),
        piece: String::new(),
        text: long.clone(),
    });
    for (size, kind) in [
        (LetterSize::Normal, PrintKind::Making),
        (LetterSize::Large, PrintKind::Making),
        (LetterSize::Normal, PrintKind::Bench),
    ] {
        let paged = Paged::of(
            &sheet,
            Options {
                size,
                kind,
                ..PLAIN
            },
        );
        assert_eq!(
            paged
                .info("Title")
                .split(": ")
                .take(2)
                .collect::<Vec<_>>()
                .join(": "),
            "#show: x => [] *Porch* $a$"
        );
        let text = paged.text();
        assert!(
            text.contains(&bare("#show: x => [] *Porch* $a$")),
            "{kind:?}"
        );
        nothing_is_cut_off(paged, "typed");
        if kind == PrintKind::Bench {
            assert_eq!(paged.pages(), 1);
            continue;
        }
        assert_eq!(text.matches(&bare(nasty)).count(), 2);
        assert!(text.contains(&bare(&long)));
        assert_eq!(text.matches(&endless).count(), 2);
        assert!(text.contains(&bare("*Rose* #hip $1")));
        for word in [hebrew, arabic] {
            assert_eq!(text.matches(word).count(), 2, "{word}");
        }
    }
}

#[test]
fn signs_without_letters_are_named() {
    let mut sheet = filled::sheet(&filled::throw(1, 1));
    let plain = Paged::of(&sheet, PLAIN).text();
    assert!(!plain.contains("U+"));
    sheet.name = "Porch 漢 \u{1f9f5}\u{fe0f}".into();
    let paged = Paged::of(&sheet, PLAIN);
    let text = paged.text();
    assert!(text.contains("Porch□□"), "{text}");
    assert!(text.contains("U+6F22,U+1F9F5"));
    assert!(paged.info("Title").starts_with(&sheet.name));
    // A mark no letter carries, and letters that no one face has together.
    for odd in [
        "q\u{20dd}\u{489}",
        "\u{5d0}\u{301}\u{650}",
        "a\u{200d}\u{200d}b\u{ad}c",
        "\u{202e}abc",
    ] {
        sheet.name = format!("Porch {odd}");
        assert_eq!(
            Paged::of(
                &sheet,
                Options {
                    kind: PrintKind::Bench,
                    ..PLAIN
                }
            )
            .pages(),
            1
        );
    }
}

#[test]
fn the_bench_card_is_one_page_whatever_the_throw() {
    let mut full = filled::throw(60, 60);
    let many: Vec<Print> = demo::prints()
        .into_iter()
        .cycle()
        .take(40)
        .enumerate()
        .map(|(i, p)| Print {
            name: format!("{} of the long winter evenings, number {i}", p.name),
            ..p
        })
        .collect();
    let denims = demo::denims();
    let cloth = Command::SetCloth {
        prints: many,
        denims,
    };
    let entry = full
        .propose(&cloth, NOW)
        .unwrap_or_else(|why| panic!("{why:?}"));
    full.accept(entry).unwrap();
    for journal in [
        demo::throw(NOW),
        filled::throw(1, 1),
        filled::throw(5, 7),
        full,
    ] {
        let sheet = filled::sheet(&journal);
        for size in [LetterSize::Normal, LetterSize::Large] {
            for paper in [Paper::A4, Paper::Letter] {
                let options = Options {
                    size,
                    paper,
                    kind: PrintKind::Bench,
                    ..PLAIN
                };
                let paged = Paged::of(&sheet, options);
                assert_eq!(paged.pages(), 1, "{} {options:?}", sheet.name);
                nothing_is_cut_off(paged, &format!("{} {options:?}", sheet.name));
                let text = paged.text();
                for row in &sheet.card.figures {
                    assert!(text.contains(&bare(&row.own)), "{row:?}");
                    assert!(
                        row.other.as_ref().is_none_or(|o| text.contains(&bare(o))),
                        "{row:?}"
                    );
                }
                for caution in &sheet.card.cautions {
                    assert!(text.contains(&bare(&caution.text)), "{caution:?}");
                }
            }
        }
    }
}

#[test]
fn large_print_is_eighteen_points_and_more() {
    let sheet = filled::sheet(&demo::throw(NOW));
    // A word's box in Noto Sans is taller than its letters' size; that of the same word in
    // print of a known size gives the measure.
    let height = |size: LetterSize| {
        let paged = Paged::of(&sheet, Options { size, ..PLAIN });
        let pages = paged.words();
        let heights = pages
            .iter()
            .flat_map(|p| &p.2)
            .filter(|w| w.text == "outseam");
        heights.map(|w| w.y2 - w.y1).fold(f64::MAX, f64::min)
    };
    let (normal, large) = (height(LetterSize::Normal), height(LetterSize::Large));
    assert!(
        (large / normal - 18.0 / 11.0).abs() < 0.02,
        "{normal} {large}"
    );
}

/// How far down each page its words and pictures reach, as a share of the height between the
/// margins: the lowest dark pixel above the page's foot, at 40 dots to the inch.
fn filled_pages(paged: &Paged) -> Vec<f64> {
    let folder = tempfile::tempdir().unwrap();
    let stem = folder.path().join("page");
    let args = ["-r", "40", "-gray", paged.path(), stem.to_str().unwrap()];
    poppler("pdftoppm", &args);
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder.path())
        .unwrap()
        .map(|found| found.unwrap().path())
        .collect();
    files.sort();
    let mm = 40.0 / 25.4;
    let filled = |file: PathBuf| {
        let bytes = std::fs::read(file).unwrap();
        let head: Vec<&[u8]> = bytes.splitn(4, |b| b.is_ascii_whitespace()).collect();
        assert_eq!(head[0], b"P5");
        let width: usize = std::str::from_utf8(head[1]).unwrap().parse().unwrap();
        let body = &head[3][head[3].iter().position(|b| *b == b'\n').unwrap() + 1..];
        let rows: Vec<&[u8]> = body.chunks_exact(width).collect();
        let foot = rows.len() as f64 - 18.0 * mm;
        let lowest = rows
            .iter()
            .take(foot as usize)
            .rposition(|row| row.iter().any(|grey| *grey < 128))
            .unwrap_or(0);
        (lowest as f64 - 15.0 * mm) / (foot - 15.0 * mm)
    };
    files.into_iter().map(filled).collect()
}

/// The page on which words stand, counted from 0.
fn page_of(paged: &Paged, wanted: &str) -> Vec<usize> {
    let wanted = bare(wanted);
    let pages = paged.words().into_iter().enumerate();
    pages
        .filter(|(_, (_, _, words))| {
            let text: String = words.iter().map(|w| bare(&w.text)).collect();
            text.contains(&wanted)
        })
        .map(|(n, _)| n)
        .collect()
}

#[test]
fn a_large_throw_takes_few_pages_and_none_is_nearly_empty() {
    let large = Options {
        size: LetterSize::Large,
        ..PLAIN
    };
    let throw = filled::throw(12, 14);
    let bare = filled::unpiled(&throw);
    // A piece of the pile has a page of its own at most.
    for (sheet, options, most) in [
        (filled::sheet(&bare), PLAIN, 12),
        (filled::sheet(&filled::piled(&throw)), PLAIN, 12 + 8),
        (filled::sheet_by(&bare, PrintUnits::Metric), PLAIN, 12),
        (filled::handout(&throw, PrintUnits::Both), PLAIN, 12),
        (filled::sheet(&bare), large, 30),
        (filled::sheet(&demo::throw(NOW)), PLAIN, 11),
    ] {
        let paged = Paged::of(&sheet, options);
        assert!(paged.pages() <= most, "{}: {}", sheet.name, paged.pages());
        let filled = filled_pages(paged);
        assert!(
            filled.iter().all(|share| *share >= 0.25),
            "{} {options:?}: {filled:?}",
            sheet.name
        );
    }
}

#[test]
fn each_piece_has_its_large_drawing_and_its_lines_on_one_page() {
    let sheet = filled::sheet(&filled::piled(&filled::throw(12, 14)));
    let paged = Paged::of(&sheet, PLAIN);
    let pages = paged.words();
    let mut cut = 0;
    let all = sheet.heaps.iter();
    for (heap, cuts) in all.flat_map(|heap| heap.cuts.iter().map(move |cuts| (heap, cuts))) {
        // One page has every word of its lines, and says whose leg it is.
        let of = bare(&format!("{}: {}", heap.title, cuts.titles[0]));
        let page = (0..pages.len()).find(|n| {
            let text: String = pages[*n].2.iter().map(|w| bare(&w.text)).collect();
            let lines = cuts.list.iter().map(|line| &line.text);
            text.contains(&of)
                && lines
                    .chain(&cuts.said)
                    .all(|line| line.split(' ').all(|word| text.contains(&bare(word))))
        });
        assert!(page.is_some(), "{:?} is on no page", cuts.titles);
        cut += 1;
    }
    assert_eq!(cut, 8);
    // The ink of the drawing: the widest and highest run of pixels that is denim blue.
    let spans = denim_spans(paged);
    let drawn = spans.iter().skip(3).take(8);
    for (n, [wide, high]) in drawn.enumerate() {
        // Half of the page high, or as wide as the page allows.
        assert!(*high >= 0.5 || *wide >= 0.9, "piece {n}: {wide} {high}");
    }
}

/// A throw that the tests keep, some of whose denim is cut up and some not.
fn half_cut() -> Journal {
    let text = include_str!("../kept/cutting-2.jsonl");
    Journal::read(text.as_bytes()).unwrap().journal
}

#[test]
fn what_is_to_cut_comes_before_what_is_cut_and_each_page_says_what_its_signs_mean() {
    let sheet = filled::sheet(&half_cut());
    let cuts = || sheet.heaps.iter().flat_map(|heap| &heap.cuts);
    let (open, past): (Vec<_>, Vec<_>) = cuts().partition(|cuts| !cuts.list.is_empty());
    assert_eq!((open.len(), past.len()), (1, 1));
    for size in [LetterSize::Normal, LetterSize::Large] {
        for ink in [Inks::Colour, Inks::Black] {
            let paged = Paged::of(&sheet, Options { size, ink, ..PLAIN });
            let text = paged.text();
            let at = |wanted: &str| {
                text.find(&bare(wanted))
                    .unwrap_or_else(|| panic!("{wanted}"))
            };
            assert!(at(&sheet.labels["pile"]) < at(&open[0].list[1].text));
            assert!(at(&open[0].list[1].text) < at(&sheet.labels["pile-past"]));
            // The key stands under its heading, before what the heading is over.
            let (list, work) = (at(&open[0].list[0].text), at(&sheet.labels["work"]));
            for (heading, key, end) in [
                ("pile", &open[0].key, list),
                ("pile-past", &sheet.past_key, work),
            ] {
                let part = &text[at(&sheet.labels[heading])..end];
                assert!(key.len() >= 4, "{key:?}");
                for line in key {
                    assert!(part.contains(&bare(&line.label)), "{}", line.label);
                }
            }
        }
    }
    // The sign of what is done has a tick, not its colour alone; each sign differs from the others.
    let done = open[0].key.iter().find(|line| line.label == "Cut already.");
    assert_eq!(done.expect("a line is cut").picture.marks.len(), 2);
    for (n, line) in open[0].key.iter().enumerate() {
        let others = open[0].key.iter().skip(n + 1);
        assert!(
            others
                .clone()
                .all(|other| other.picture.marks != line.picture.marks)
        );
    }
    // Each piece of a large pile has its key on its own page.
    let sheet = filled::sheet(&filled::piled(&filled::throw(12, 14)));
    let paged = Paged::of(&sheet, PLAIN);
    let key = page_of(paged, "Next to be cut.");
    assert_eq!(key.len(), 8, "{key:?}");
}

#[test]
fn all_squares_stand_in_one_table() {
    for journal in [demo::throw(NOW), filled::throw(12, 14)] {
        let sheet = filled::sheet(&journal);
        let squares = &sheet.stages[0];
        let alone = |line: &&show::sheet::SheetLine| line.ticks[1..].iter().all(Option::is_none);
        assert!(squares.lines.iter().filter(alone).count() > 6);
        let text = Paged::of(&sheet, PLAIN).text();
        let steps = |n: usize| (1..=n).map(|n| n.to_string()).collect::<String>();
        let head = format!("{}{}", squares.title, steps(squares.columns.len()));
        assert!(text.contains(&head), "{head}");
        // No table has boxes for the first step alone.
        assert!(!text.contains(&format!("{}11", squares.title)));
    }
}

#[test]
fn large_print_puts_the_work_before_what_happened() {
    let large = Options {
        size: LetterSize::Large,
        ..PLAIN
    };
    let sheet = filled::sheet(&demo::throw(NOW));
    let paged = Paged::of(&sheet, large);
    let text = paged.text();
    let last = |wanted: &str| {
        text.rfind(&bare(wanted))
            .unwrap_or_else(|| panic!("{wanted}"))
    };
    let record = last(&sheet.labels["record"]);
    for stage in &sheet.stages {
        let step = stage.steps.last().unwrap();
        assert!(last(&step.title) < record, "{}", step.title);
    }
    assert!(last(&sheet.labels["squaring"]) < record);
    // What is measured at squaring up stands behind the stage that squares up.
    let at = sheet.stages.iter().rposition(|stage| stage.squares_up);
    let next = &sheet.stages[at.unwrap() + 1];
    assert!(last(&sheet.labels["by-hand"]) < last(&format!("{}{}", next.title, next.count)));
    let filled = filled_pages(paged);
    assert!(filled.iter().all(|share| *share >= 0.25), "{filled:?}");
    assert!(paged.pages() <= 24, "{}", paged.pages());
}

#[test]
fn the_wall_card_uses_its_page_and_tells_nothing_twice() {
    for journal in [demo::throw(NOW), filled::throw(5, 7), filled::throw(12, 14)] {
        let sheet = filled::sheet(&journal);
        let told: BTreeSet<_> = sheet.card.figures.iter().map(|row| &row.own).collect();
        assert_eq!(told.len(), sheet.card.figures.len(), "{told:?}");
        for size in [LetterSize::Normal, LetterSize::Large] {
            let card = Options {
                size,
                kind: PrintKind::Bench,
                ..PLAIN
            };
            let filled = filled_pages(Paged::of(&sheet, card));
            assert!(filled[0] >= 0.85, "{} {size:?}: {filled:?}", sheet.name);
        }
    }
}

/// How wide and how high what is blue as denim spans on each page, as shares of the room
/// between its margins.
fn denim_spans(paged: &Paged) -> Vec<[f64; 2]> {
    let blue = |[r, g, b]: [u8; 3]| b > 70 && r < 80 && g < 95 && b > r && b > g;
    let pages = paged.words().len();
    let pixels = paged.pixels_by_page();
    assert_eq!(pixels.len(), pages);
    let span = |(width, pixels): &(usize, Vec<[u8; 3]>)| {
        let rows = pixels.chunks_exact(*width);
        let high = rows.len() as f64 - 33.0 / 25.4 * 40.0;
        // A row of the drawing has a good deal of it; a letter or a line has not.
        let much = |row: &[[u8; 3]]| row.iter().filter(|p| blue(**p)).count() > *width / 12;
        let rows: Vec<(usize, &[[u8; 3]])> = rows.enumerate().filter(|(_, r)| much(r)).collect();
        let (Some(first), Some(last)) = (rows.first(), rows.last()) else {
            return [0.0, 0.0];
        };
        let left = rows
            .iter()
            .filter_map(|(_, r)| r.iter().position(|p| blue(*p)));
        let right = rows
            .iter()
            .filter_map(|(_, r)| r.iter().rposition(|p| blue(*p)));
        let wide = right.max().unwrap() - left.min().unwrap();
        [
            wide as f64 / (*width as f64 - 30.0 / 25.4 * 40.0),
            (last.0 - first.0) as f64 / high,
        ]
    };
    pixels.iter().map(span).collect()
}

#[test]
fn a_legend_stands_with_its_picture() {
    for journal in [demo::throw(NOW), filled::throw(5, 7), filled::throw(12, 14)] {
        let sheet = filled::sheet(&journal);
        let paged = Paged::of(&sheet, PLAIN);
        let legend = page_of(paged, &sheet.labels["no-print"]);
        for face in &sheet.faces {
            assert_eq!(page_of(paged, &face.title), legend, "{}", face.title);
        }
        assert_eq!(page_of(paged, &sheet.labels["prints"]), legend);
    }
    // Faces too large for one page have the letters under each.
    let sheet = filled::sheet(&filled::throw(20, 24));
    let paged = Paged::of(&sheet, PLAIN);
    for face in &sheet.faces {
        for page in page_of(paged, &face.title) {
            let names = sheet.prints.iter().map(|print| print.name.as_str());
            assert!(names.clone().count() > 2);
            for name in names {
                assert!(page_of(paged, name).contains(&page), "{name}");
            }
        }
    }
}

#[test]
fn one_system_of_units_is_printed_where_it_is_asked_for() {
    let journal = filled::throw(5, 7);
    for kind in [PrintKind::Making, PrintKind::Bench] {
        let text = |units| {
            let sheet = filled::sheet_by(&journal, units);
            Paged::of(&sheet, Options { kind, ..PLAIN }).text()
        };
        let (inches, metric) = (text(PrintUnits::Inches), text(PrintUnits::Metric));
        let both = text(PrintUnits::Both);
        assert!(both.contains("5×5in") && both.contains("127×127mm"));
        assert!(inches.contains("5×5in") && !inches.contains("127×127mm"));
        assert!(metric.contains("127×127mm") && !metric.contains("5×5in"));
    }
}

#[test]
fn a_blank_handout_tells_the_plan_and_nothing_of_her_record() {
    let journal = filled::pictured(&filled::throw(12, 14), 2);
    let (made, blank) = (
        filled::sheet(&journal),
        filled::handout(&journal, PrintUnits::Both),
    );
    assert!(blank.heaps.is_empty() && blank.notes.is_empty() && blank.changes.is_empty());
    assert!(blank.supplies.iter().all(|item| !item.have));
    let ticks = |sheet: &Sheet| {
        let lines = sheet.stages.iter().flat_map(|stage| &stage.lines);
        let ticks = lines.flat_map(|line| line.ticks.iter().flatten());
        ticks.filter(|tick| tick.done).count()
    };
    assert!(ticks(&made) > 100);
    assert_eq!(ticks(&blank), 0);
    let squaring = blank.squaring.as_ref().unwrap();
    assert_eq!(squaring.blocks.len(), 42);
    assert!(
        squaring
            .blocks
            .iter()
            .all(|b| b.measured.is_none() && !b.done)
    );
    // The plan and the faces are those of the throw.
    assert_eq!(blank.figures.len(), made.figures.len());
    assert_eq!(blank.faces[0].columns, made.faces[0].columns);
    let used = |sheet: &Sheet| -> Vec<String> {
        sheet
            .denims
            .iter()
            .map(|denim| denim.count.clone())
            .collect()
    };
    assert_eq!(used(&blank), used(&made));
    let paged = Paged::of(&blank, PLAIN);
    let text = paged.text();
    let lines = blank.blank.as_ref().unwrap();
    for wanted in [
        blank.labels["handout"].to_uppercase(),
        lines.lines[0].clone(),
        lines.scraps.title.clone(),
        lines.squares.title.clone(),
        lines.finished.title.clone(),
        "The binding at each corner".to_string(),
    ] {
        assert!(text.contains(&bare(&wanted)), "{wanted}");
    }
    for hers in [
        "2026",
        "November",
        "Barn jeans",
        "frays more",
        "Stretched at",
        "No denim is on the pile",
        "to come from the pile",
        "still to cut",
    ] {
        assert!(!text.contains(&bare(hers)), "{hers}");
    }
    assert_eq!(paged.info("CreationDate"), "");
    nothing_is_cut_off(paged, "handout");
}

#[test]
fn the_same_sheet_gives_the_same_bytes() {
    let sheet = filled::sheet(&demo::throw(NOW));
    let made = || {
        print(&sheet, Photos::new(), PLAIN, &mut |_| {
            ControlFlow::Continue(())
        })
    };
    assert_eq!(made(), made());
}

#[test]
fn cancelling_is_prompt() {
    let sheet = filled::sheet(&filled::throw(20, 24));
    for at in [Progress::Gathering, Progress::Setting] {
        let mut asked = None;
        let begun = Instant::now();
        let made = print(&sheet, Photos::new(), PLAIN, &mut |now| {
            // A while into the step.
            if now >= at
                && (at == Progress::Gathering || begun.elapsed() > Duration::from_millis(200))
            {
                asked = Some(Instant::now());
                return ControlFlow::Break(());
            }
            ControlFlow::Continue(())
        });
        let took = asked.expect("it was asked").elapsed();
        assert_eq!(made, Err(PrintFault::Cancelled));
        eprintln!("cancelled while {at:?}: {took:?}");
        assert!(took < Duration::from_millis(250), "{took:?}");
    }
}

/// The pictures poppler finds: each one's object, width and height in points.
fn pictures(paged: &Paged) -> Vec<(String, u32, u32)> {
    let output = lines("pdfimages", &["-list", paged.path()]);
    // page, number, type, width, height, colour, components, bits, encoding, interpolated, object
    let rows = output.lines().skip(2).map(|line| {
        let row: Vec<&str> = line.split_whitespace().collect();
        assert_eq!((row[2], row[8]), ("image", "jpeg"), "{line}");
        (
            row[10].to_string(),
            row[3].parse().unwrap(),
            row[4].parse().unwrap(),
        )
    });
    rows.collect()
}

#[test]
fn lessons_stand_in_front_and_at_their_step() {
    let sheet = filled::sheet(&filled::pictured(&filled::throw(5, 7), 1));
    let wanted =
        "On a scrap, a lap of ½ in (≈ 13 mm) was found right.".replace("½ in", "½\u{a0}in");
    let wanted = wanted.replace("≈ 13 mm", "≈\u{a0}13\u{a0}mm");
    let rows: Vec<&str> = sheet.lessons[0]
        .rows
        .iter()
        .map(|r| r.words.as_str())
        .collect();
    assert!(rows.contains(&wanted.as_str()), "{rows:?}");
    assert!(
        rows.iter()
            .any(|r| r.starts_with("More fabric on the back")),
        "{rows:?}"
    );
    let text = Paged::of(&sheet, PLAIN).text();
    assert_eq!(
        text.matches(&bare(&wanted)).count(),
        2,
        "in front, and where laps are glued"
    );
    let at = |words: &str| text.find(&bare(words)).unwrap();
    assert!(at(&sheet.labels["lessons"]) < at(&sheet.labels["supplies"]));
    // What the throw before taught is told first and under its name, hers once.
    let older = filled::pictured(&filled::throw(5, 7), 1);
    let begin = Command::Begin {
        name: "Second throw".into(),
        plan: older.throw().plan,
        prints: Vec::new(),
        denims: demo::denims(),
    };
    let (journal, _) = Journal::begin_after(&begin, heritage(&older), NOW).unwrap();
    let sheet = filled::sheet(&journal);
    assert_eq!(sheet.lessons.len(), 1);
    assert_eq!(sheet.lessons[0].title, "Learned from Porch throw 5 by 7");
    assert!(Paged::of(&sheet, PLAIN).text().contains(&bare(rows[0])));
}

#[test]
fn the_story_is_printed_with_its_photos_when_asked_for() {
    let journal = filled::pictured(&filled::throw(4, 6), 60);
    assert!(pictures(Paged::of(&filled::sheet(&journal), PLAIN)).is_empty());
    let words = Words::english();
    let sheet = filled::story_in(&journal, &words);
    assert_eq!((sheet.photos.len(), sheet.left_off.as_deref()), (60, None));
    for size in [LetterSize::Normal, LetterSize::Large] {
        let paged = Paged::of(&sheet, Options { size, ..PLAIN });
        let found = pictures(paged);
        let objects: BTreeSet<&str> = found.iter().map(|(object, _, _)| object.as_str()).collect();
        assert_eq!((found.len(), objects.len()), (60, 60));
        // In the order they are told, with the shape they have.
        let shapes = [(800, 600), (600, 800), (800, 800), (800, 450)];
        let in_order = found.iter().enumerate();
        assert!(
            in_order
                .clone()
                .all(|(n, (_, w, h))| (*w, *h) == shapes[n % 4]),
            "{found:?}"
        );
        nothing_is_cut_off(paged, "the story");
        let output = bare(&lines("pdfinfo", &["-meta", paged.path()]));
        assert!(
            output.contains("<pdfuaid:part>1</pdfuaid:part>"),
            "every photo is told in words"
        );
        // Without the text, which takes poppler a second for every five photos.
        let tags = poppler("pdfinfo", &["-struct", paged.path()]);
        let tags = String::from_utf8_lossy(&tags).into_owned();
        assert!(tags.matches("Figure").count() >= 60);
    }
    // Two more than go on paper are said to be left off; one that is gone is said to be gone.
    let mut sheet = filled::story(&filled::throw(2, 2), 102);
    assert_eq!(sheet.photos.len(), MOST_PHOTOS);
    let left = sheet.left_off.clone().unwrap();
    assert!(left.starts_with("2 photos are left off"), "{left}");
    let mut photos = filled::photos(&sheet, false);
    photos.remove(&sheet.photos[4]);
    sheet.changes.clear();
    let bytes = print(&sheet, photos, PLAIN, &mut |_| ControlFlow::Continue(()));
    let paged = Paged::kept(&bytes.unwrap());
    assert_eq!(pictures(&paged).len(), MOST_PHOTOS - 1);
    let text = paged.text();
    assert_eq!(text.matches(&bare(&sheet.labels["no-photo"])).count(), 1);
    assert!(text.contains(&bare(&left)));
}

/// The photo of a fabric is printed on the sheet and on the wall card, beside its letters and its
/// name, small and in the colours of the ink; where it is gone the fabric is drawn.
#[test]
fn the_photo_of_a_fabric_is_printed() {
    let mut picture = Vec::new();
    let photo = image::RgbImage::from_pixel(1600, 1000, image::Rgb([250, 0, 250]));
    let encoder = image::codecs::jpeg::JpegEncoder::new(&mut picture);
    photo.write_with_encoder(encoder).unwrap();
    let kept = lapwork_service::photos::shrink(&picture).unwrap();
    let mut journal = filled::throw(4, 4);
    let mut prints = journal.throw().prints.clone();
    let shown = |print: u8| lapwork_core::throw::stock::used(journal.throw(), print) > 0;
    let used = (0..prints.len() as u8)
        .find(|p| shown(*p))
        .expect("a fabric is used");
    prints[usize::from(used)].photo = PhotoId::parse(&"5c".repeat(32));
    let name = prints[usize::from(used)].name.clone();
    let denims = journal.throw().denims.clone();
    let cloth = Command::SetCloth { prints, denims };
    let entry = journal.propose(&cloth, 1_800_000_000_000).unwrap();
    journal.accept(entry).unwrap();
    let words = Words::english();
    let context = Context {
        words: &words,
        ruler: Ruler::default(),
        now: 1_800_000_000_000,
    };
    let press = lapwork_shell::printing::Press::default();
    for (card, black) in [(false, false), (true, false), (true, true)] {
        let order = PrintOrder {
            card,
            blank: false,
            units: PrintUnits::Both,
            paper: PrintPaper::A4,
            large: false,
            black,
            story: false,
            zone: ZoneName::default(),
        };
        let sheet = lapwork_service::paper::sheet(&journal, context, &order);
        let printed = |there: bool| {
            let found = |_: &PhotoId| there.then(|| kept.clone());
            let turn = press.begin();
            let pdf = press.print(turn, &sheet, &order, &found, &|_| {});
            Paged::kept(&pdf.unwrap())
        };
        let (seen, drawn) = (printed(true), printed(false));
        for paged in [&seen, &drawn] {
            assert!(paged.text().contains(&bare(&name)), "card {card}: {name}");
        }
        // As strongly coloured as the photo is, whatever the paper and the pixels make of it.
        let magenta = |paged: &Paged| {
            let pixels = paged.pixels();
            let strong = pixels
                .iter()
                .filter(|[r, g, b]| *r > 200 && *b > 200 && *g < 60);
            strong.count()
        };
        assert_eq!(
            magenta(&seen) > 0,
            !black,
            "card {card}: {}",
            magenta(&seen)
        );
        assert_eq!(magenta(&drawn), 0);
    }
}

#[test]
fn photos_from_the_store_are_made_small_and_grey_for_black_ink() {
    let mut picture = Vec::new();
    let photo = image::RgbImage::from_fn(1600, 1000, |x, y| {
        image::Rgb([(x / 8) as u8, (y / 5) as u8, 90])
    });
    let encoder = image::codecs::jpeg::JpegEncoder::new(&mut picture);
    photo.write_with_encoder(encoder).unwrap();
    let kept = lapwork_service::photos::shrink(&picture).unwrap();
    let sheet = filled::story(&filled::throw(2, 2), 2);
    let order = PrintOrder {
        card: false,
        blank: false,
        units: PrintUnits::Both,
        paper: PrintPaper::A4,
        large: false,
        black: true,
        story: true,
        zone: ZoneName::default(),
    };
    let press = lapwork_shell::printing::Press::default();
    // The second is damaged on the disk: told to be gone, and the rest is printed.
    let found = |name: &PhotoId| {
        let damaged = kept[..kept.len() / 2].to_vec();
        Some(if *name == sheet.photos[0] {
            kept.clone()
        } else {
            damaged[..200].to_vec()
        })
    };
    let paged = Paged::kept(
        &press
            .print(press.begin(), &sheet, &order, &found, &|_| {})
            .unwrap(),
    );
    let pictures = pictures(&paged);
    assert_eq!(pictures.len(), 1);
    assert_eq!((pictures[0].1, pictures[0].2), (800, 500));
    assert!(paged.pixels().iter().all(|[r, g, b]| r == g && g == b));
    assert_eq!(
        paged
            .text()
            .matches(&bare(&sheet.labels["no-photo"]))
            .count(),
        1
    );
}

/// Where a process of its own writes the largest sheet, in large print if its name says so.
const LARGEST: &str = "LAPWORK_LARGEST_SHEET";

/// Sets the making sheet of the largest throw, and says how often and in how much memory.
#[test]
fn part_largest() {
    let Some(out) = std::env::var_os(LARGEST).map(PathBuf::from) else {
        return;
    };
    let size = match out.ends_with("large.pdf") {
        true => LetterSize::Large,
        false => LetterSize::Normal,
    };
    let plan = Plan {
        across: 60,
        down: 60,
        ..Plan::default()
    };
    let begin = Command::Begin {
        name: "60 × 60".into(),
        plan,
        prints: demo::prints(),
        denims: demo::denims(),
    };
    let (mut journal, _) = Journal::begin(&begin, NOW).unwrap();
    let half = Command::TickNext {
        task: Task::Cut,
        kind: Kind::Square,
        count: Count::at_most(1800),
    };
    let entry = journal.propose(&half, NOW).unwrap();
    journal.accept(entry).unwrap();
    let (options, photos) = (Options { size, ..PLAIN }, Photos::default());
    let set = Cell::new(0);
    let report = |now| set.set(set.get() + u32::from(now == Progress::Setting));
    let bytes = print_here(&filled::sheet(&journal), photos, options, &report).unwrap();
    std::fs::write(out, bytes).unwrap();
    tell(&format!("{}|{}", set.get(), most_memory()));
}

/// A sheet of more than 40 pages is set once. Its thousands of boxes took 2.2 GB when each cell called
/// functions that the typesetter remembers, and long tables were measured before they were set; they take
/// about 500 MB.
#[test]
fn the_largest_sheet_is_set_once_in_little_memory() {
    let folder = tempfile::tempdir().unwrap();
    for name in ["normal.pdf", "large.pdf"] {
        let out = folder.path().join(name);
        let said = alone("part_largest", LARGEST, &out);
        let (set, most) = said.split_once('|').unwrap();
        let text = OnceLock::new();
        let pages = Paged { file: out, text }.pages();
        println!("{name}: {pages} pages, set {set} ×, {most} MiB");
        assert!(pages > 40 && set == "1", "{name}: {pages} {set}");
        assert!(most.parse::<u32>().unwrap() < 700, "{name}: {most} MiB");
    }
}

/// The program without a window.
fn ask(args: &[&str]) -> (Option<i32>, String) {
    let mut command = process::Command::new(lapwork());
    command.env_remove("DISPLAY").env_remove("WAYLAND_DISPLAY");
    let output = command.args(args).output().unwrap();
    let said = [output.stdout, output.stderr].concat();
    (output.status.code(), String::from_utf8(said).unwrap())
}

#[test]
fn it_is_printed_without_a_window() {
    let folder = tempfile::tempdir().unwrap();
    let place = |name: &str| folder.path().join(name).to_str().unwrap().to_string();
    let (throw, out) = (place("throw.jsonl"), place("sheet.pdf"));
    assert_eq!(ask(&["demo", &throw]).0, Some(0));
    let args = [
        "sheet", &throw, "--out", &out, "--paper", "letter", "--large", "--ink", "black", "--card",
    ];
    let (code, said) = ask(&args);
    assert_eq!(code, Some(0), "{said}");
    let info = lines("pdfinfo", &[&out]);
    assert!(info.contains("(letter)"), "{info}");
    let kept = std::fs::read(&out).unwrap();
    for args in [
        &args[..],
        &["sheet", &throw],
        &["sheet", &throw, "--out", &place("a.pdf"), "--paper", "a3"],
        &["sheet", &throw, "--out", &place("a.pdf"), "--ink", "red"],
        &["sheet", &place("none"), "--out", &place("a.pdf")],
    ] {
        let (code, said) = ask(args);
        assert_eq!(
            (code, said.lines().count()),
            (Some(2), 1),
            "{args:?} {said}"
        );
    }
    assert_eq!(
        std::fs::read(&out).unwrap(),
        kept,
        "what is there is left as it is"
    );
    assert!(!Path::new(&place("a.pdf")).exists());
    let metric = place("metric.pdf");
    assert_eq!(
        ask(&["sheet", &throw, "--metric", "--out", &metric]).0,
        Some(0)
    );
    assert!(lines("pdfinfo", &[&metric]).contains("(A4)"));
    // Both systems all the same; one alone where that is asked for.
    let said = |name: &str| bare(&lines("pdftotext", &["-raw", &place(name), "-"]));
    assert!(said("metric.pdf").contains("5×5in"));
    let handout = place("handout.pdf");
    let args = [
        "sheet", &throw, "--blank", "--units", "metric", "--out", &handout,
    ];
    assert_eq!(ask(&args).0, Some(0));
    let output = said("handout.pdf");
    assert!(output.contains("127×127mm") && !output.contains("5×5in"));
    assert!(lines("pdfinfo", &[&handout]).contains("Class handout"));
}
