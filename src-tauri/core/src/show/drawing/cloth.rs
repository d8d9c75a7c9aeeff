//! How cloths are drawn: each print its figure, each denim its twill.
//!
//! A pattern holds the marks only and lies over the colour, so that no seam shows between
//! its repeats. A denim's wrong side has its twill running the other way, as it does in
//! the cloth; denims beside one another differ in how the twill is drawn, not by colour
//! alone.

use super::page::{Page, n};
use super::style::{DARK, LIGHT, Style};
use crate::cloth::fabric::Texture;
use crate::throw::Throw;

/// Bare denim where the throw lists none.
const BARE: &str = "#3a5788";
/// Repeats of a print's figure, and of a denim's twill, across a square.
const FIGURES: f64 = 3.0;
const TWILLS: f64 = 8.0;

/// What a square shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Cloth {
    Print(u8),
    Denim { n: u8, wrong: bool },
}

impl Cloth {
    /// The name of its pattern within the document.
    pub(super) fn id(self) -> String {
        match self {
            Cloth::Print(p) => format!("print-{p}"),
            Cloth::Denim { n, wrong: false } => format!("denim-{n}"),
            Cloth::Denim { n, wrong: true } => format!("denim-{n}-wrong"),
        }
    }

    pub(super) fn colour(self, throw: &Throw, style: Style) -> String {
        if style == Style::Ink {
            return "#ffffff".into();
        }
        let own = match self {
            Cloth::Print(p) => throw.prints.get(usize::from(p)).map(|p| &*p.colour),
            Cloth::Denim { n, .. } => throw.denims.get(usize::from(n)).map(|d| &*d.colour),
        };
        // What else an old file may hold is no colour.
        let sound = |c: &&str| {
            c.len() == 7 && c.starts_with('#') && c[1..].chars().all(|c| c.is_ascii_hexdigit())
        };
        own.filter(sound).unwrap_or(BARE).to_string()
    }

    /// What its marks are drawn with, and how strongly.
    fn ink(self, throw: &Throw, style: Style) -> (&'static str, &'static str) {
        match (style, self) {
            (Style::Ink, _) => ("#000000", "1"),
            (_, Cloth::Denim { .. }) => (LIGHT, "0.26"),
            (_, Cloth::Print(_)) if is_light(&self.colour(throw, style)) => (DARK, "0.6"),
            (_, Cloth::Print(_)) => (LIGHT, "0.66"),
        }
    }

    /// Define its pattern; it begins at `at` and fits a square of `cell`.
    pub(super) fn define(
        self,
        page: &mut Page,
        throw: &Throw,
        style: Style,
        cell: f64,
        at: [f64; 2],
    ) {
        let (ink, strength) = self.ink(throw, style);
        let (unit, stroke, body) = match self {
            Cloth::Print(p) => {
                let texture = throw
                    .prints
                    .get(usize::from(p))
                    .map_or(Texture::Plain, |p| p.texture);
                (cell / FIGURES, "1.8", figure(texture))
            }
            Cloth::Denim { n, wrong } => (cell / TWILLS, twill_stroke(style), twill(n, wrong)),
        };
        let (x, y, unit) = (n(at[0]), n(at[1]), n(unit));
        page.open(
            "pattern",
            &[
                ("id", &self.id()),
                ("patternUnits", "userSpaceOnUse"),
                ("x", &x),
                ("y", &y),
                ("width", &unit),
                ("height", &unit),
                ("viewBox", "0 0 24 24"),
            ],
        );
        page.open(
            "g",
            &[
                ("fill", "none"),
                ("stroke", ink),
                ("stroke-width", stroke),
                ("stroke-linecap", "round"),
                ("opacity", strength),
            ],
        );
        for (d, own) in body {
            match own {
                Mark::Line => page.path(&d, &[]),
                Mark::Wide(width) => page.path(&d, &[("stroke-width", width)]),
                Mark::Gaps(gaps) => page.path(&d, &[("stroke-dasharray", gaps)]),
                Mark::Full => page.path(&d, &[("fill", ink), ("stroke", "none")]),
            }
        }
        page.close("g");
        page.close("pattern");
    }
}

enum Mark {
    Line,
    Wide(&'static str),
    Gaps(&'static str),
    Full,
}

/// Whether dark marks show better on this colour than light ones.
pub(super) fn is_light(colour: &str) -> bool {
    let part = |at: usize| {
        let two = colour.get(at..at + 2).unwrap_or("0");
        f64::from(u8::from_str_radix(two, 16).unwrap_or(0))
    };
    // Luma weights of ITU-R BT.601.
    part(1) * 0.299 + part(3) * 0.587 + part(5) * 0.114 > 140.0
}

/// A print's figure on a repeat of 24 by 24.
fn figure(texture: Texture) -> Vec<(String, Mark)> {
    let line = |d: &str| (d.to_string(), Mark::Line);
    let full = |d: &str| (d.to_string(), Mark::Full);
    match texture {
        Texture::Plain => vec![],
        // A ticking: one broad stripe between two fine ones.
        Texture::Stripe => vec![
            ("M12 -1V25".to_string(), Mark::Wide("6")),
            line("M4 -1V25 M20 -1V25"),
        ],
        Texture::Check => vec![
            ("M12 -1V25 M-1 12H25".to_string(), Mark::Wide("4")),
            line("M3 -1V25 M-1 3H25 M21 -1V25 M-1 21H25"),
        ],
        Texture::Dot => vec![full(&format!("{}{}", disc(6.0, 6.0), disc(18.0, 18.0)))],
        Texture::Sprig => vec![line(&sprig(6.0, 11.0)), line(&sprig(18.0, 23.0))],
        Texture::Slant => vec![(
            "M-6 18 18 -6 M-6 42 42 -6 M6 30 30 6".to_string(),
            Mark::Wide("3.4"),
        )],
        Texture::Wave => [6, 18]
            .map(|y| {
                let d = format!("M-6 {y}q3 5 6 0t6 0t6 0t6 0t6 0t6 0");
                (d, Mark::Wide("2.2"))
            })
            .into(),
        Texture::Cross => vec![(
            "M3 3 9 9 M9 3 3 9 M15 15 21 21 M21 15 15 21".to_string(),
            Mark::Wide("2.4"),
        )],
    }
}

fn disc(x: f64, y: f64) -> String {
    format!("M{} {}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z", n(x - 4.0), n(y))
}

/// A stem with a bud and two leaves, standing on `x`, `y`.
fn sprig(x: f64, y: f64) -> String {
    let (top, low, high) = (y - 9.5, y - 2.5, y - 5.5);
    format!(
        "M{x} {y}V{top} M{x} {low}q-4 0 -4.5 -4q4.5 0 4.5 4 M{x} {high}q4 0 4.5 -4q-4.5 0 -4.5 4",
        x = n(x),
        y = n(y),
        top = n(top),
        low = n(low),
        high = n(high)
    )
}

fn twill_stroke(style: Style) -> &'static str {
    match style {
        Style::Colour => "2.4",
        Style::Ink => "1",
    }
}

/// Slanting lines over a repeat; each next denim drawn another way.
fn twill(n: u8, wrong: bool) -> Vec<(String, Mark)> {
    // From the lower edge up, `run` to the right over the whole height, a little past it.
    let lean = |from: f64, run: f64| {
        let past = run / 12.0;
        let turn = |x: f64| if wrong { 24.0 - x } else { x };
        format!("M{} 26L{} -2", turn(from - past), turn(from + run + past))
    };
    let all = |starts: &[f64], run| starts.iter().map(|s| lean(*s, run)).collect::<String>();
    match n % 4 {
        0 => vec![(all(&[-12.0, 0.0, 12.0, 24.0], 12.0), Mark::Line)],
        1 => vec![(all(&[-12.0, 0.0, 12.0, 24.0], 12.0), Mark::Gaps("5 5"))],
        2 => vec![(all(&[-24.0, 0.0, 24.0], 24.0), Mark::Line)],
        _ => vec![(all(&[-24.0, -17.0, 0.0, 7.0, 24.0], 24.0), Mark::Line)],
    }
}
