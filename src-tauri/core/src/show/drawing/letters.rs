//! Numbers and letters as a drawing takes them: how wide a text comes out, where it breaks.

/// A number as SVG takes it, to a hundredth.
pub(in crate::show) fn n(number: f64) -> String {
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

/// How wide a text becomes at most, estimated for a wide, bold sans serif.
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
