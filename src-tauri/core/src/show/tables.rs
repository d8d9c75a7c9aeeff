//! Tables for spreadsheets and programs: CSV as RFC 4180 has it, UTF-8 with a byte-order mark,
//! lines ended by CR LF, the first line the headings.
//!
//! Promises: a number is written as the language writes it, with a decimal point or a decimal
//! comma; where it is a comma, the cells are parted by semicolons, as spreadsheets of such
//! regions expect, else by commas. Lengths stand in inches and in millimetres in columns of
//! their own, whose headings name the unit, as plain numbers; millimetres are exact, inches to
//! a millionth. No text is taken for a formula, whichever sign a spreadsheet parts cells by: where
//! a cell, or what follows a comma, a semicolon, a tab or an end of line in it, begins with `=`,
//! `+`, `-` or `@`, an apostrophe is put before that sign (the rule of OWASP's page on CSV
//! injection, from memory). The screen that offers the tables says so.

use super::{Context, bench, gather, history, names, pile};
use crate::cloth::fabric::Face;
use crate::cloth::garments::Source;
use crate::cloth::pile::{Heap, Use};
use crate::faces::spread::mirrored;
use crate::log::journal::Journal;
use crate::measure::{Length, NM_PER_INCH, in_nm};
use crate::show::cutting;
use crate::throw::account::{ClothAccount, account, layout};
use crate::throw::tasks::Task;
use crate::throw::{Item, Throw, Time};
use crate::types::TS;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};

/// A table that can be had.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Table {
    /// Every square with its cloths and how far it is.
    Squares,
    /// Every print with how many squares it covers.
    Covering,
    /// Every join in working order with its lap.
    Joins,
    /// Every piece of the pile with what it gives.
    Cutting,
    /// What to have at hand.
    Supplies,
    /// What was done, and when.
    Record,
}

impl Table {
    /// All of them.
    pub const ALL: [Table; 6] = [
        Table::Squares,
        Table::Covering,
        Table::Joins,
        Table::Cutting,
        Table::Supplies,
        Table::Record,
    ];

    /// What it is called on the command line.
    pub fn key(self) -> &'static str {
        match self {
            Table::Squares => "squares",
            Table::Covering => "covering",
            Table::Joins => "joins",
            Table::Cutting => "cutting",
            Table::Supplies => "supplies",
            Table::Record => "record",
        }
    }

    /// The table itself.
    pub fn csv(self, journal: &Journal, context: Context<'_>) -> String {
        let throw = journal.throw();
        let rows = match self {
            Table::Squares => squares(throw, context),
            Table::Covering => covering(throw, context),
            Table::Joins => joins(throw, context),
            Table::Cutting => cutting(throw, context),
            Table::Supplies => supplies(journal, context),
            Table::Record => record(journal, context),
        };
        let heads = self.columns().iter().map(|key| context.say(key, &[]));
        let point = context.words.point();
        let cell = |(key, cell): (&&str, String)| match is_number(key) {
            true => cell.replace('.', point.encode_utf8(&mut [0; 4])),
            false => harmless(&cell),
        };
        let row = |row: Vec<String>| self.columns().iter().zip(row).map(cell).collect();
        let rows = rows.into_iter().map(row);
        written(
            std::iter::once(heads.collect()).chain(rows),
            separator(point),
        )
    }

    /// A name for the file, safe on every system: letters, digits and hyphens.
    pub fn file_name(self, throw: &Throw, context: Context<'_>) -> String {
        let what = context.say(&format!("file-{}", self.key()), &[]);
        format!("{}.csv", slug(&throw.name, &what, 60))
    }

    /// The headings, by their keys in the words files.
    pub(super) fn columns(self) -> &'static [&'static str] {
        match self {
            Table::Squares => &[
                "column-label",
                "column-row",
                "column-column",
                "column-column-back",
                "column-denim",
                "column-wrong-up",
                "column-front",
                "column-back",
                "column-stage",
                "column-pieced",
            ],
            Table::Covering => &[
                "column-letters",
                "column-name",
                "column-on-front",
                "column-on-back",
                "column-total",
                "column-there",
            ],
            Table::Joins => &[
                "column-piece",
                "column-kind",
                "column-first",
                "column-second",
                "column-lap-in",
                "column-lap-mm",
                "column-sewn",
            ],
            Table::Cutting => &[
                "column-heap",
                "column-name",
                "column-piece",
                "column-for",
                "column-width-in",
                "column-width-mm",
                "column-height-in",
                "column-height-mm",
                "column-strips",
                "column-expected",
                "column-counted",
                "column-of-halves",
            ],
            Table::Supplies => &[
                "column-item",
                "column-count",
                "column-unit",
                "column-length-in",
                "column-length-mm",
                "column-words",
                "column-have",
                "column-there",
                "column-short",
            ],
            Table::Record => &[
                "column-time",
                "column-entry",
                "column-done",
                "column-stands",
            ],
        }
    }
}

/// Letters and digits of a name and what it is of, joined by hyphens, small; never empty,
/// at most `most` characters of the name.
pub(super) fn slug(name: &str, what: &str, most: usize) -> String {
    let parts = |text: &str| {
        let words = text.split(|c: char| !c.is_alphanumeric());
        let words: Vec<String> = words
            .filter(|w| !w.is_empty())
            .map(str::to_lowercase)
            .collect();
        words.join("-")
    };
    let mut own = String::new();
    // Names of files end at 255 bytes on common systems.
    for c in parts(name).chars().take(most) {
        if own.len() + c.len_utf8() > 120 {
            break;
        }
        own.push(c);
    }
    let own = own.trim_matches('-');
    // A combining sign may come out of making small; it is no letter.
    let own: String = own
        .chars()
        .filter(|c| c.is_alphanumeric() || *c == '-')
        .collect();
    let own = if own.is_empty() { "lapwork" } else { &own };
    match parts(what).as_str() {
        "" => own.to_string(),
        what => format!("{own}-{what}"),
    }
}

/// Columns of plain numbers.
fn is_number(key: &str) -> bool {
    matches!(
        key,
        "column-row"
            | "column-column"
            | "column-column-back"
            | "column-on-front"
            | "column-on-back"
            | "column-total"
            | "column-lap-in"
            | "column-lap-mm"
            | "column-heap"
            | "column-of-halves"
            | "column-width-in"
            | "column-width-mm"
            | "column-height-in"
            | "column-height-mm"
            | "column-strips"
            | "column-expected"
            | "column-counted"
            | "column-count"
            | "column-there"
            | "column-short"
            | "column-length-in"
            | "column-length-mm"
            | "column-entry"
    )
}

/// The sign between cells where numbers have this decimal sign.
fn separator(point: char) -> u8 {
    if point == ',' { b';' } else { b',' }
}

/// Tells spreadsheets that the file is UTF-8.
const BYTE_ORDER_MARK: char = '\u{feff}';

/// Rows as CSV. Writing to memory cannot fail.
fn written(rows: impl Iterator<Item = Vec<String>>, separator: u8) -> String {
    let mut out = csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .delimiter(separator)
        .from_writer(BYTE_ORDER_MARK.to_string().into_bytes());
    for row in rows {
        let _ = out.write_record(&row);
    }
    out.into_inner()
        .ok()
        .and_then(|bytes| String::from_utf8(bytes).ok())
        .unwrap_or_default()
}

/// A cell of text that no spreadsheet takes for a formula, whichever sign it parts cells by.
/// Blanks and quotation marks before the sign do not make it harmless.
pub(super) fn harmless(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut begins = true;
    for sign in text.chars() {
        if begins && matches!(sign, '=' | '+' | '-' | '@' | '＝' | '＋' | '－' | '＠') {
            out.push('\'');
        }
        begins = match sign {
            ',' | ';' | '\t' | '\r' | '\n' => true,
            '"' => begins,
            _ => begins && (sign.is_whitespace() || sign.is_control()),
        };
        out.push(sign);
    }
    out
}

/// Millionths as a plain decimal number with no needless zeros.
fn millionths(count: i128) -> String {
    let sign = if count < 0 { "-" } else { "" };
    let (whole, rest) = (
        count.unsigned_abs() / 1_000_000,
        count.unsigned_abs() % 1_000_000,
    );
    if rest == 0 {
        return format!("{sign}{whole}");
    }
    let rest = format!("{rest:06}");
    format!("{sign}{whole}.{}", rest.trim_end_matches('0'))
}

/// To the nearest hundredth.
fn mm_text(length: Length) -> String {
    hundredth(i128::from(in_nm(length)))
}

/// Exact on every 1/64, else to the nearest hundredth.
fn inch_text(length: Length) -> String {
    let scaled = i128::from(in_nm(length)) * 1_000_000;
    let inch = i128::from(NM_PER_INCH);
    match in_nm(length) % (NM_PER_INCH / 64) {
        0 => millionths(scaled / inch),
        _ => hundredth((scaled + inch / 2).div_euclid(inch)),
    }
}

/// Millionths rounded to the nearest hundredth.
fn hundredth(count: i128) -> String {
    millionths((count + 5_000).div_euclid(10_000) * 10_000)
}

fn yes(yes: bool, context: Context<'_>) -> String {
    if yes {
        say!(context, "table-yes")
    } else {
        say!(context, "table-no")
    }
}

fn squares(throw: &Throw, context: Context<'_>) -> Vec<Vec<String>> {
    let row = |square| {
        let cover = throw.cover(square);
        let print = |face| {
            let own = cover
                .on(face)
                .and_then(|p| throw.prints.get(usize::from(p)));
            own.map_or_else(String::new, |p| p.name.clone())
        };
        let denim = throw.denims.get(usize::from(cover.denim));
        vec![
            names::square(square),
            (square.row + 1).to_string(),
            (square.col + 1).to_string(),
            (mirrored(square, throw.plan.across).col + 1).to_string(),
            denim.map_or_else(String::new, |d| d.name.clone()),
            yes(cover.wrong_side_up, context),
            print(Face::Front),
            print(Face::Back),
            bench::stage_name(bench::stage(throw, square), context),
            yes(throw.is_pieced(square), context),
        ]
    };
    throw.assembly().whole().squares().map(row).collect()
}

fn covering(throw: &Throw, context: Context<'_>) -> Vec<Vec<String>> {
    let _ = context;
    let account = account(throw);
    let letters = throw.letters().iter().cloned();
    let prints = throw.prints.iter().zip(letters).enumerate();
    prints
        .map(|(i, (print, letters))| {
            let on = |face| {
                let covers = throw.covers().iter();
                covers.filter(|c| c.on(face) == Some(i as u8)).count()
            };
            let (front, back) = (on(Face::Front), on(Face::Back));
            vec![
                letters,
                print.name.clone(),
                front.to_string(),
                back.to_string(),
                (front + back).to_string(),
                account.fabrics[i]
                    .there()
                    .map_or_else(String::new, |n| n.to_string()),
            ]
        })
        .collect()
}

fn joins(throw: &Throw, context: Context<'_>) -> Vec<Vec<String>> {
    let joins = throw.assembly().joins().iter();
    joins
        .map(|join| {
            let name = |piece| names::piece(throw, piece, context);
            let lap = throw.made(join.whole).lap;
            let kind = names::key(throw.kind(join.whole));
            vec![
                name(join.whole),
                context.say(&format!("kind-{kind}"), &[]),
                name(join.first),
                name(join.second),
                inch_text(lap),
                mm_text(lap),
                yes(throw.has(join.whole, Task::Stitch), context),
            ]
        })
        .collect()
}

fn cutting(throw: &Throw, context: Context<'_>) -> Vec<Vec<String>> {
    let account = account(throw);
    let heaps = throw.pile.iter();
    heaps
        .flat_map(|(n, heap)| {
            let account = &account;
            (0..heap.counted.len()).map(move |i| piece(throw, (*n, i), heap, account, context))
        })
        .collect()
}

fn piece(
    throw: &Throw,
    (n, index): (u16, usize),
    heap: &Heap,
    account: &ClothAccount,
    context: Context<'_>,
) -> Vec<String> {
    let mut pieced = heap.counted_pieced(index).get();
    let (width, height, strips, expected) = match &heap.from {
        Source::Cloth(garment) => match garment.pieces.get(index) {
            Some(piece) => {
                let [low, top, left, right] = piece.reach();
                let strips = account.piece(n, index).strips;
                let cuts = layout(throw, heap, (index, piece), strips).cuts;
                let strips = Some(cuts.strips.len());
                if heap.counted.get(index) == Some(&None) {
                    pieced = cuts.pieced;
                }
                (Some(right - left), Some(top - low), strips, cuts.count)
            }
            None => (None, None, None, 0),
        },
        Source::Precut(pack) => {
            let side = Some(pack.side);
            let expected = heap.expected(index, &throw.plan).get();
            (side, side, None, expected)
        }
    };
    let in_mm = |l: Option<Length>| l.map_or_else(String::new, mm_text);
    let in_inches = |l: Option<Length>| l.map_or_else(String::new, inch_text);
    let what = match heap.makes {
        Use::Denim { denim } => pile::of_denim(throw, denim, "make-denim", context),
        Use::Fabric { print } => {
            let print = throw.prints.get(usize::from(print));
            print.map_or_else(String::new, |p| p.name.clone())
        }
    };
    let counted = heap.counted.get(index).copied().flatten();
    vec![
        n.to_string(),
        heap.name().to_string(),
        cutting::part(heap, index, context),
        what,
        in_inches(width),
        in_mm(width),
        in_inches(height),
        in_mm(height),
        strips.map_or_else(String::new, |n| n.to_string()),
        expected.to_string(),
        counted.map_or_else(String::new, |n| n.get().to_string()),
        pieced.to_string(),
    ]
}

fn supplies(journal: &Journal, context: Context<'_>) -> Vec<Vec<String>> {
    let throw = journal.throw();
    let account = account(throw);
    let rows = gather::gather(journal, context).rows.into_iter();
    rows.flat_map(|row| {
        let have = yes(row.have, context);
        let said = context.words.list("sentences", row.lines.iter().cloned());
        let amount = gather::amount(throw, &account, row.item);
        let whole = supply(row.label, amount, said, have, context);
        let parts = match row.item {
            Item::Denim => gather::denims(throw, &account, context),
            _ => Vec::new(),
        };
        let parts = parts.into_iter().map(move |part| {
            let name = say!(context, "item-denim-named", denim = part.name.as_str());
            supply(name, Some(part.amount), part.said, String::new(), context)
        });
        std::iter::once(whole).chain(parts)
    })
    .collect()
}

/// One line of the supplies.
fn supply(
    name: String,
    amount: Option<gather::SupplyAmount>,
    said: String,
    have: String,
    context: Context<'_>,
) -> Vec<String> {
    let number = |n: Option<u32>| n.map(|n| n.to_string()).unwrap_or_default();
    let unit = amount.map(|a| context.say(&format!("unit-{}", a.unit), &[]));
    let length = amount.and_then(|a| a.length);
    vec![
        name,
        number(amount.map(|a| a.count)),
        unit.unwrap_or_default(),
        length.map_or_else(String::new, inch_text),
        length.map_or_else(String::new, mm_text),
        said,
        have,
        number(amount.and_then(|a| a.there)),
        number(amount.and_then(|a| a.short)),
    ]
}

/// Oldest first.
fn record(journal: &Journal, context: Context<'_>) -> Vec<Vec<String>> {
    let mut rows: Vec<Vec<String>> = history::rows(journal, usize::MAX, context)
        .into_iter()
        .map(|row| {
            vec![
                moment(row.at),
                row.n.to_string(),
                row.text,
                yes(row.stands, context),
            ]
        })
        .collect();
    rows.reverse();
    rows
}

/// A moment as ISO 8601 has it, in UTC to the second: `2026-01-31T17:05:09Z`.
fn moment(at: Time) -> String {
    let Ok(when) = Timestamp::from_second(at.div_euclid(1000)) else {
        return at.to_string();
    };
    when.strftime("%Y-%m-%dT%H:%M:%SZ").to_string()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{half_inches, nm, sixty_fourths, tenths_of_mm};
    use proptest::prelude::*;

    #[test]
    fn numbers_are_plain() {
        assert_eq!(inch_text(half_inches(1)), "0.5");
        assert_eq!(inch_text(sixty_fourths(1)), "0.015625");
        assert_eq!(inch_text(tenths_of_mm(120)), "0.47");
        assert_eq!(inch_text(nm(52_750_789_344)), "2076.8");
        assert_eq!(mm_text(sixty_fourths(1)), "0.4");
        assert_eq!(mm_text(tenths_of_mm(2413)), "241.3");
        assert_eq!(mm_text(nm(-1_500_000)), "-1.5");
    }

    #[test]
    fn no_cell_is_a_formula() {
        for (typed, kept) in [
            ("=1+1", "'=1+1"),
            ("+1", "'+1"),
            ("-1", "'-1"),
            ("@a", "'@a"),
            ("Rose;=1+1", "Rose;'=1+1"),
            ("Rose,@a", "Rose,'@a"),
            ("Rose\t-1", "Rose\t'-1"),
            ("\t=a", "\t'=a"),
            (" \"=a", " \"'=a"),
            ("Rose; blue", "Rose; blue"),
            ("a=1", "a=1"),
            ("", ""),
        ] {
            assert_eq!(harmless(typed), kept);
        }
    }

    #[test]
    fn moments_are_in_utc() {
        // RFC 3339's own way of writing the first second of 1985-04-13, checked by `date -u`.
        assert_eq!(moment(482_196_050_520), "1985-04-12T23:20:50Z");
        assert_eq!(moment(0), "1970-01-01T00:00:00Z");
        assert_eq!(moment(i64::MAX), i64::MAX.to_string());
    }

    proptest! {
        #[test]
        fn a_file_name_is_safe(name in "\\PC{0,90}", what in "\\PC{0,20}") {
            let slug = slug(&name, &what, 60);
            prop_assert!(!slug.is_empty() && slug.len() < 240);
            prop_assert!(slug.chars().all(|c| c == '-' || c.is_alphanumeric()), "{slug}");
            prop_assert!(!slug.starts_with('-'));
        }

        #[test]
        fn whatever_parts_the_cells_none_is_a_formula(typed in "[-=+@;,\t\r\n\" a1']{0,12}") {
            let kept = harmless(&typed);
            for part in kept.split([',', ';', '\t', '\r', '\n']) {
                let first = part.trim_start_matches([' ', '"']).chars().next();
                prop_assert!(!first.is_some_and(|c| "=+-@".contains(c)), "{typed:?} {kept:?}");
            }
            // Nothing but apostrophes is added.
            let bare = |text: &str| text.replace('\'', "");
            prop_assert_eq!(bare(&kept), bare(&typed));
        }
    }
}
