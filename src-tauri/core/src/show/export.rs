//! What can be exported from a throw, section by section, and the names of the files.
//!
//! A section has a title, a sentence or two and buttons; each button names what it exports
//! ([`Export`]). The service makes the bytes; the shell asks where they go and writes them.

use crate::log::journal::Journal;
use crate::measure::{Ruler, System};
use crate::show::context::Context;
use crate::show::dates::ZoneName;
use crate::show::drawing::Drawing;
use crate::show::parts::{Head, head};
use crate::show::tables::{Table, harmless};
use crate::types::TS;
use crate::words::Words;
use serde::{Deserialize, Serialize};

/// Something exported from a throw as a file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "export")]
pub enum Export {
    /// The throw itself, with its whole record.
    Throw,
    /// Every drawing there is, as SVG.
    Pictures,
    /// Every table there is, as CSV.
    Tables,
    /// The story of its making, as a page with its photos in it.
    Story {
        /// The time zone whose days are written.
        zone: ZoneName,
    },
}

/// A button that hands something on.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ExportButton {
    /// Its words.
    pub label: String,
    /// What it exports.
    pub export: Export,
}

/// One kind of export.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ExportSection {
    /// Stable name, for programs.
    pub key: String,
    /// Its title.
    pub title: String,
    /// What it is for, a line each.
    pub said: Vec<String>,
    /// What to press.
    pub buttons: Vec<ExportButton>,
}

/// The exports that are possible.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct ExportView {
    /// Common to all screens.
    pub head: Head,
    /// Section by section.
    pub sections: Vec<ExportSection>,
    /// How a sheet is printed unless the maker says otherwise.
    pub print: PrintOrder,
}

/// What came of handing something on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Exported {
    /// What to say; none where the maker thought better of it.
    pub said: Option<String>,
}

/// Paper to print on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum PrintPaper {
    /// 210 × 297 mm.
    A4,
    /// 8½ × 11 in.
    Letter,
}

/// The systems of units that lengths are printed in.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum PrintUnits {
    /// The maker's own system first, the other beside it.
    #[default]
    Both,
    /// Inches alone.
    Inches,
    /// Metric alone.
    Metric,
}

impl PrintUnits {
    /// The ruler whose figures come first.
    pub(super) fn ruler(self, ruler: Ruler) -> Ruler {
        let system = match self {
            PrintUnits::Both => ruler.system,
            PrintUnits::Inches => System::Inch,
            PrintUnits::Metric => System::Metric,
        };
        Ruler { system, ..ruler }
    }

    /// The words of sentences, which name every measure in each system that is printed.
    pub(super) fn words(self, words: &Words) -> Words {
        match self {
            PrintUnits::Both => words.doubled(),
            PrintUnits::Inches | PrintUnits::Metric => words.clone(),
        }
    }
}

/// How a sheet is to be printed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PrintOrder {
    /// The wall card instead of the making sheet.
    pub card: bool,
    /// The making sheet as a blank handout for a class: the plan without anything of this
    /// maker's record, with lines for another maker's own figures.
    pub blank: bool,
    /// The systems of units.
    pub units: PrintUnits,
    /// The paper.
    pub paper: PrintPaper,
    /// In large print.
    pub large: bool,
    /// In black and white.
    pub black: bool,
    /// With the story and its photos; the wall card and the handout have none.
    pub story: bool,
    /// The time zone whose days are written.
    pub zone: ZoneName,
}

/// How far a print is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
pub struct Printing {
    /// Steps done.
    pub done: u32,
    /// Steps in all.
    pub all: u32,
}

/// The screen.
pub(super) fn hand_on(journal: &Journal, context: Context<'_>) -> ExportView {
    ExportView {
        head: head(journal, context),
        sections: vec![
            the_throw(journal, context),
            many(
                "pictures",
                Drawing::all(journal.throw()).len(),
                Export::Pictures,
                context,
            ),
            ExportSection {
                said: tables_said(journal, context),
                ..many("tables", Table::ALL.len(), Export::Tables, context)
            },
        ],
        print: PrintOrder {
            card: false,
            blank: false,
            units: PrintUnits::Both,
            paper: usual_paper(context.ruler.system),
            large: false,
            black: false,
            story: false,
            zone: ZoneName::default(),
        },
    }
}

/// The paper that is usual where lengths are read like this.
pub fn usual_paper(system: System) -> PrintPaper {
    match system {
        System::Metric => PrintPaper::A4,
        System::Inch => PrintPaper::Letter,
    }
}

fn the_throw(journal: &Journal, context: Context<'_>) -> ExportSection {
    ExportSection {
        key: "throw".into(),
        title: say!(context, "hand-throw"),
        said: vec![say!(context, "hand-throw-what", n = journal.len())],
        buttons: vec![ExportButton {
            label: say!(context, "hand-throw-save"),
            export: Export::Throw,
        }],
    }
}

/// What the tables are, and how many typed texts were made harmless in them.
fn tables_said(journal: &Journal, context: Context<'_>) -> Vec<String> {
    let throw = journal.throw();
    let prints = throw.prints.iter().map(|p| p.name.as_str());
    let denims = throw.denims.iter().map(|d| d.name.as_str());
    let heaps = throw.pile.values().map(|heap| heap.name());
    let notes = throw.notes.iter().map(|note| note.text.as_str());
    let typed = prints.chain(denims).chain(heaps).chain(notes);
    let n = typed.filter(|text| harmless(text) != *text).count();
    let what = say!(context, "hand-tables-what", n = Table::ALL.len());
    let told = (n > 0).then(|| say!(context, "hand-tables-harmless", n = n));
    std::iter::once(what).chain(told).collect()
}

/// Files that are exported together, into one folder.
fn many(key: &str, n: usize, export: Export, context: Context<'_>) -> ExportSection {
    let say = |end: &str| context.say(&format!("hand-{key}{end}"), &[("n", n.into())]);
    ExportSection {
        key: key.into(),
        title: say(""),
        said: vec![say("-what")],
        buttons: vec![ExportButton {
            label: say("-save"),
            export,
        }],
    }
}

/// Longest name suggested for a file, in characters, without its ending.
const LONGEST_FILE_NAME: usize = 60;

/// A file name any system takes, made from what the maker calls something: separators,
/// controls and what some systems forbid become hyphens; signs that turn the direction of
/// writing are left out, since they could make another ending seem to be there.
pub fn file_name(name: &str, ending: &str) -> String {
    let plain: String = name
        .chars()
        .filter(|c| !matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}'))
        .map(|c| {
            let forbidden = c.is_control() || "/\\:*?\"<>|".contains(c);
            if forbidden { '-' } else { c }
        })
        .take(LONGEST_FILE_NAME)
        .collect();
    let plain = plain.trim_matches(|c: char| c.is_whitespace() || c == '.' || c == '-');
    let stem = plain.split('.').next().unwrap_or_default().to_lowercase();
    // Names of devices on one system, with any ending.
    let device = ["con", "prn", "aux", "nul"].contains(&stem.as_str())
        || (stem.len() == 4
            && (stem.starts_with("com") || stem.starts_with("lpt"))
            && stem.ends_with(|c: char| c.is_ascii_digit()));
    match (plain.is_empty(), device) {
        (true, _) => format!("throw.{ending}"),
        (_, true) => format!("throw {plain}.{ending}"),
        _ => format!("{plain}.{ending}"),
    }
}

#[cfg(test)]
mod tests {
    use super::file_name;

    #[test]
    fn a_name_becomes_a_file_name_that_goes_nowhere() {
        for (name, want) in [
            ("Window-seat throw", "Window-seat throw.jsonl"),
            ("../../etc/passwd", "etc-passwd.jsonl"),
            ("a/b\\c:d", "a-b-c-d.jsonl"),
            ("..", "throw.jsonl"),
            ("", "throw.jsonl"),
            ("  .hidden ", "hidden.jsonl"),
            ("Für Oma – nº 2", "Für Oma – nº 2.jsonl"),
            ("con", "throw con.jsonl"),
            ("LPT1.old", "throw LPT1.old.jsonl"),
            ("a\u{0}b\nc", "a-b-c.jsonl"),
            ("a\u{202e}gnp", "agnp.jsonl"),
            ("שמיכה", "שמיכה.jsonl"),
        ] {
            assert_eq!(file_name(name, "jsonl"), want);
        }
        assert!(file_name(&"w".repeat(400), "jsonl").len() < 100);
    }
}
