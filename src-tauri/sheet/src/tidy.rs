//! Preparing typed text for the typesetter: control characters are removed, endless words may
//! break, and characters that no font contains become boxes and are named.

use serde_json::Value;
use std::collections::BTreeSet;
pub(crate) use typst::text::Coverage;
use unicode_segmentation::UnicodeSegmentation;

/// A word of more signs than this may break between any two; in large print, one of more
/// than [`LONGEST_LARGE`].
pub(crate) const LONGEST_WORD: usize = 22;
/// See [`LONGEST_WORD`].
pub(crate) const LONGEST_LARGE: usize = 18;
/// Marks over and under a letter that are set at most. No writing needs as many; each costs as
/// much as a letter, and hundreds on one letter cost far more.
const MOST_MARKS: usize = 8;
/// Signs without letters that are named at most.
const MOST_NAMED: usize = 20;
/// Stands for a sign without letters.
const BOX: char = '\u{25a1}';
/// A place where a line may break, of no width.
const MAY_BREAK: char = '\u{200b}';

/// Tidies texts, and keeps the signs that none of its letters hold.
pub(crate) struct Tidy<'a> {
    letters: &'a [Coverage],
    longest: usize,
    missing: BTreeSet<u32>,
}

impl<'a> Tidy<'a> {
    pub(crate) fn new(letters: &'a [Coverage], longest: usize) -> Tidy<'a> {
        Tidy {
            letters,
            longest,
            missing: BTreeSet::new(),
        }
    }

    /// Tidy one text: signs without letters become boxes.
    pub(crate) fn text(&mut self, text: &mut String) {
        let each = text.graphemes(true);
        let bounded: String = each
            .flat_map(|sign| sign.chars().take(1 + MOST_MARKS))
            .collect();
        let shown = bounded
            .chars()
            .filter(|sign| !is_selector(*sign))
            .flat_map(spelt)
            .flatten()
            .map(|sign| {
                let plain = sign.is_whitespace() || sign.is_control() || is_format(sign);
                if plain || self.letters.iter().any(|l| l.contains(sign as u32)) {
                    return sign;
                }
                self.missing.insert(sign as u32);
                BOX
            });
        let shown: String = shown.collect();
        *text = readable(&shown, self.longest);
    }

    /// Tidy every text in `data`.
    pub(crate) fn each(&mut self, data: &mut Value) {
        each(data, &mut |text| self.text(text));
    }

    /// The signs without letters by their numbers, `漢` as `U+6F22`.
    pub(crate) fn missing(&self) -> Vec<String> {
        let mut named: Vec<String> = self.missing.iter().map(|n| format!("U+{n:04X}")).collect();
        if named.len() > MOST_NAMED {
            named.truncate(MOST_NAMED);
            named.push("…".into());
        }
        named
    }
}

/// A number that is one sign with its full stop is spelt with signs the letters have.
fn spelt(sign: char) -> [Option<char>; 3] {
    let digit = |n| char::from_digit(n, 10);
    match sign {
        '\u{2488}'..='\u{249b}' => {
            let n = sign as u32 - 0x2487;
            [digit(n / 10).filter(|_| n > 9), digit(n % 10), Some('.')]
        }
        _ => [Some(sign), None, None],
    }
}

/// Signs that are never drawn.
fn is_format(sign: char) -> bool {
    matches!(sign, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}'
        | '\u{2060}'..='\u{206f}')
}

/// Signs that only choose how the one before is drawn, for which these letters have no choice.
fn is_selector(sign: char) -> bool {
    matches!(sign, '\u{fe00}'..='\u{fe0f}' | '\u{feff}' | '\u{e0000}'..='\u{e01ef}')
}

fn each(value: &mut Value, change: &mut dyn FnMut(&mut String)) {
    match value {
        Value::String(text) => change(text),
        Value::Array(list) => list.iter_mut().for_each(|v| each(v, change)),
        // The names of photos are not read.
        Value::Object(map) => map
            .iter_mut()
            .filter(|(key, _)| !matches!(key.as_str(), "photo" | "photos"))
            .for_each(|(_, v)| each(v, change)),
        _ => {}
    }
}

fn readable(text: &str, longest: usize) -> String {
    let mut out = String::with_capacity(text.len());
    let mut word: Vec<&str> = Vec::new();
    let end = |word: &mut Vec<&str>, out: &mut String| {
        let endless = word.len() > longest;
        for (i, sign) in word.drain(..).enumerate() {
            if endless && i > 0 {
                out.push(MAY_BREAK);
            }
            out.push_str(sign);
        }
    };
    for sign in text.graphemes(true) {
        let control = sign.chars().all(|c| c.is_control() && c != '\n');
        // A no-break space does not break, but it lets one see where a word ends.
        if control || sign.trim().is_empty() {
            end(&mut word, &mut out);
            out.push_str(if control { " " } else { sign });
        } else {
            word.push(sign);
        }
    }
    end(&mut word, &mut out);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn endless_words_may_break_and_others_stay() {
        let word = "a".repeat(60);
        let signs = readable(&word, LONGEST_WORD);
        assert_eq!(signs.split(MAY_BREAK).count(), 60);
        assert_eq!(signs.replace(MAY_BREAK, ""), word);
        let plain = "The throw\nmeasures 27½\u{a0}×\u{a0}36½\u{a0}in.";
        assert_eq!(readable(plain, LONGEST_WORD), plain);
        assert_eq!(readable("bell\u{7}\tend", LONGEST_WORD), "bell  end");
    }

    #[test]
    fn a_number_with_its_full_stop_is_spelt() {
        let mut text = "\u{2488} \u{2490} \u{2491} \u{249b}".to_string();
        Tidy::new(&[], LONGEST_WORD).text(&mut text);
        // Without letters each sign is a box.
        assert_eq!(text, "□□ □□ □□□ □□□");
        let spelt: String = "⒈⒛".chars().flat_map(spelt).flatten().collect();
        assert_eq!(spelt, "1.20.");
    }

    #[test]
    fn a_mark_is_not_parted_from_its_letter() {
        let word = "e\u{301}".repeat(30);
        let parts = readable(&word, LONGEST_WORD);
        assert!(parts.split(MAY_BREAK).all(|part| part == "e\u{301}"));
    }

    #[test]
    fn of_marks_heaped_on_one_letter_few_are_set_and_those_of_writings_all() {
        let mut tidy = Tidy::new(&[], LONGEST_WORD);
        let mut heaped = format!("o{}", "\u{301}".repeat(4_000)).repeat(2);
        tidy.text(&mut heaped);
        // Without letters each sign is a box; what matters is how many are left.
        assert_eq!(heaped.chars().count(), 2 * (1 + MOST_MARKS));
        for written in [
            "ệ".to_string(),
            "e\u{323}\u{302}".into(),
            "क्षि".into(),
            "ที่".into(),
        ] {
            let mut text = written.clone();
            tidy.text(&mut text);
            assert_eq!(text.chars().count(), written.chars().count(), "{written}");
        }
    }
}
