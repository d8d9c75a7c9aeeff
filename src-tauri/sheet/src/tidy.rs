//! What must be done to typed text so that it can be set: control signs go, endless words
//! may break, and signs without letters are named.

use serde_json::Value;
use std::collections::BTreeSet;
pub(crate) use typst::text::Coverage;
use unicode_segmentation::UnicodeSegmentation;

/// A run without a break longer than this may break anywhere within.
const LONGEST_WORD: usize = 24;
/// Signs without letters that are named at most.
const MOST_NAMED: usize = 20;
/// A place where a line may break, of no width.
const MAY_BREAK: char = '\u{200b}';

/// Tidy every text in `data`; the signs that none of `letters` hold come back, as `漢`’s
/// would: `U+6F22`.
pub(crate) fn tidy(data: &mut Value, letters: &[Coverage]) -> Vec<String> {
    let mut missing = BTreeSet::new();
    each(data, &mut |text| {
        *text = readable(text);
        for sign in text.chars() {
            let number = sign as u32;
            let shown = !sign.is_whitespace() && !sign.is_control() && !is_format(sign);
            if shown && !letters.iter().any(|l| l.contains(number)) {
                missing.insert(number);
            }
        }
    });
    let mut named: Vec<String> = missing.iter().map(|n| format!("U+{n:04X}")).collect();
    if named.len() > MOST_NAMED {
        named.truncate(MOST_NAMED);
        named.push("…".into());
    }
    named
}

/// Signs that are never drawn.
fn is_format(sign: char) -> bool {
    matches!(sign, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}'
        | '\u{2060}'..='\u{206f}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}')
}

fn each(value: &mut Value, change: &mut dyn FnMut(&mut String)) {
    match value {
        Value::String(text) => change(text),
        Value::Array(list) => list.iter_mut().for_each(|v| each(v, change)),
        Value::Object(map) => map.values_mut().for_each(|v| each(v, change)),
        _ => {}
    }
}

fn readable(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut run = 0;
    for sign in text.graphemes(true) {
        if sign.chars().all(|c| c.is_control() && c != '\n') {
            out.push(' ');
            run = 0;
            continue;
        }
        // A no-break space does not break, but it lets one see where a word ends.
        run = if sign.trim().is_empty() { 0 } else { run + 1 };
        if run > LONGEST_WORD {
            out.push(MAY_BREAK);
            run = 1;
        }
        out.push_str(sign);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn endless_words_may_break_and_others_stay() {
        let word = "a".repeat(60);
        let parts: Vec<String> = readable(&word)
            .split(MAY_BREAK)
            .map(str::to_string)
            .collect();
        assert_eq!(
            parts.iter().map(String::len).collect::<Vec<_>>(),
            [24, 24, 12]
        );
        assert_eq!(parts.concat(), word);
        let plain = "The throw\nmeasures 27½\u{a0}×\u{a0}36½\u{a0}in.";
        assert_eq!(readable(plain), plain);
        assert_eq!(readable("bell\u{7}\tend"), "bell  end");
    }

    #[test]
    fn a_mark_is_not_parted_from_its_letter() {
        let word = "e\u{301}".repeat(30);
        assert!(
            readable(&word)
                .split(MAY_BREAK)
                .all(|part| part.starts_with('e'))
        );
    }
}
