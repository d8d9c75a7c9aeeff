//! A sheet that marks are put on, written as SVG.

use quick_xml::Writer;
use quick_xml::events::{BytesDecl, BytesEnd, BytesStart, BytesText, Event};

/// Faces of type common on each system, then whatever is there.
const TYPE: &str = "'Helvetica Neue', 'Segoe UI', Roboto, 'DejaVu Sans', Arial, sans-serif";

/// Where a text is held.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Hold {
    Start,
    Middle,
    End,
}

/// How a text is set.
#[derive(Clone, Copy)]
pub(super) struct Set {
    pub size: f64,
    pub bold: bool,
    pub hold: Hold,
    pub fill: &'static str,
}

/// Marks in the order they are painted.
pub(super) struct Page {
    out: Writer<Vec<u8>>,
}

/// A number as SVG takes it, to a hundredth.
pub(super) fn n(number: f64) -> String {
    let text = format!("{number:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" {
        "0".into()
    } else {
        text.into()
    }
}

/// Only what XML 1.0 allows (section 2.2, Char); ends of lines and tabs become spaces.
pub(super) fn legal(text: &str) -> String {
    text.chars()
        .filter_map(|c| match c {
            '\t' | '\n' | '\r' => Some(' '),
            c if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') => None,
            c => Some(c),
        })
        .collect()
}

/// At least how wide a text comes out: reckoned generously for a wide sans serif, bold.
pub(super) fn width(text: &str, size: f64) -> f64 {
    let ems = |c: char| match c {
        'i' | 'j' | 'l' | '.' | ',' | ':' | ';' | '!' | '|' | '\'' | '·' => 0.4,
        ' ' | '\u{a0}' => 0.37,
        'm' | 'w' | 'M' | 'W' | '@' | '%' | '≈' | '—' | '…' => 1.12,
        c if c.is_ascii_uppercase() => 0.84,
        c if c.is_ascii() => 0.72,
        '½' | '¼' | '¾' | '⅛' | '⅜' | '⅝' | '⅞' => 1.08,
        '’' | '‘' => 0.4,
        _ => 1.1,
    };
    text.chars().map(ems).sum::<f64>() * size
}

/// A text broken at spaces, or anywhere where a word is too long, so that no line is wider
/// than `room`; what does not fit into `most` lines is cut off with an ellipsis.
pub(super) fn broken(text: &str, size: f64, room: f64, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    let legal = legal(text);
    for word in legal.split(' ').filter(|w| !w.is_empty()) {
        let longer = if line.is_empty() {
            word.to_string()
        } else {
            format!("{line} {word}")
        };
        if width(&longer, size) <= room {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for c in word.chars() {
            line.push(c);
            if width(&line, size) > room && line.chars().count() > 1 {
                line.pop();
                lines.push(std::mem::take(&mut line));
                line.push(c);
            }
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    if lines.len() > most {
        lines.truncate(most);
        if let Some(last) = lines.last_mut() {
            while !last.is_empty() && width(last, size) + width("…", size) > room {
                last.pop();
            }
            last.push('…');
        }
    }
    lines
}

impl Page {
    pub(super) fn new() -> Page {
        Page {
            out: Writer::new(Vec::new()),
        }
    }

    /// Writing to memory cannot fail.
    fn event(&mut self, event: Event<'_>) {
        let _ = self.out.write_event(event);
    }

    fn start<'a>(name: &'a str, attributes: &[(&str, &str)]) -> BytesStart<'a> {
        BytesStart::new(name).with_attributes(attributes.iter().copied())
    }

    /// A mark with nothing in it.
    pub(super) fn mark(&mut self, name: &str, attributes: &[(&str, &str)]) {
        self.event(Event::Empty(Page::start(name, attributes)));
    }

    pub(super) fn open(&mut self, name: &str, attributes: &[(&str, &str)]) {
        self.event(Event::Start(Page::start(name, attributes)));
    }

    pub(super) fn close(&mut self, name: &str) {
        self.event(Event::End(BytesEnd::new(name)));
    }

    pub(super) fn path(&mut self, d: &str, attributes: &[(&str, &str)]) {
        if d.is_empty() {
            return;
        }
        let mut all = vec![("d", d)];
        all.extend_from_slice(attributes);
        self.mark("path", &all);
    }

    pub(super) fn area(&mut self, [x, y, w, h]: [f64; 4], attributes: &[(&str, &str)]) {
        let [x, y, w, h] = [x, y, w.max(0.0), h.max(0.0)].map(n);
        let mut all = vec![("x", &*x), ("y", &*y), ("width", &*w), ("height", &*h)];
        all.extend_from_slice(attributes);
        self.mark("rect", &all);
    }

    /// A text on its base line.
    pub(super) fn text(&mut self, x: f64, y: f64, set: Set, text: &str) {
        let hold = match set.hold {
            Hold::Start => "start",
            Hold::Middle => "middle",
            Hold::End => "end",
        };
        let (x, y, size) = (n(x), n(y), n(set.size));
        let weight = if set.bold { "bold" } else { "normal" };
        self.open(
            "text",
            &[
                ("x", &x),
                ("y", &y),
                ("font-size", &size),
                ("font-weight", weight),
                ("text-anchor", hold),
                ("fill", set.fill),
            ],
        );
        let text = legal(text);
        self.event(Event::Text(BytesText::new(&text)));
        self.close("text");
    }

    /// A text over several lines; gives the base line of the next one.
    pub(super) fn lines(
        &mut self,
        [x, mut y, room]: [f64; 3],
        set: Set,
        text: &str,
        most: usize,
    ) -> f64 {
        // What is not bold comes out a tenth narrower.
        let size = set.size * if set.bold { 1.0 } else { 0.9 };
        for line in broken(text, size, room, most) {
            self.text(x, y, set, &line);
            y += set.size * 1.3;
        }
        y
    }

    /// The whole document. Its size on paper keeps within A4 and Letter with a margin.
    pub(super) fn document(
        self,
        [w, h]: [f64; 2],
        paper: &str,
        title: &str,
        spoken: &str,
    ) -> String {
        let mm = (190.0 / w).min(255.0 / h);
        let (view, w_mm, h_mm) = (
            format!("0 0 {} {}", n(w), n(h)),
            format!("{}mm", n(w * mm)),
            format!("{}mm", n(h * mm)),
        );
        let body = self.out.into_inner();
        let mut page = Page::new();
        page.event(Event::Decl(BytesDecl::new("1.0", Some("UTF-8"), None)));
        page.open(
            "svg",
            &[
                ("xmlns", "http://www.w3.org/2000/svg"),
                ("version", "1.1"),
                ("width", &w_mm),
                ("height", &h_mm),
                ("viewBox", &view),
                ("font-family", TYPE),
            ],
        );
        for (name, text) in [("title", title), ("desc", spoken)] {
            page.open(name, &[]);
            page.event(Event::Text(BytesText::new(&legal(text))));
            page.close(name);
        }
        page.area([0.0, 0.0, w, h], &[("fill", paper)]);
        page.out.get_mut().extend_from_slice(&body);
        page.close("svg");
        let mut bytes = page.out.into_inner();
        bytes.push(b'\n');
        String::from_utf8(bytes).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn numbers_are_short() {
        assert_eq!(
            [0.0, -0.001, 1.5, 10.0, 2.71659].map(n),
            ["0", "0", "1.5", "10", "2.72"]
        );
    }

    #[test]
    fn forbidden_characters_are_left_out() {
        assert_eq!(legal("a\u{0}\u{b}\u{1f}b\u{fffe}c\td\u{7f}\u{85}"), "abc d");
        assert_eq!(legal("שמיכה & é"), "שמיכה & é");
    }

    proptest! {
        #[test]
        fn no_line_is_wider_than_its_room(text in "\\PC{0,80}", room in 30.0f64..400.0, most in 1usize..5) {
            let lines = broken(&text, 10.0, room, most);
            prop_assert!(lines.len() <= most);
            for line in &lines {
                prop_assert!(width(line, 10.0) <= room, "{line}");
            }
            let without = |s: &str| s.chars().filter(|c| *c != ' ').collect::<String>();
            let (all, kept) = (without(&legal(&text)), without(&lines.concat()));
            prop_assert!(kept == all || all.starts_with(kept.trim_end_matches('…')));
        }
    }
}
