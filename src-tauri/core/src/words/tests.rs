//! Every language says all that English says, of the same things, and what it shows it
//! takes back.

use super::*;
use crate::measure::{
    Fraction, MetricUnit, System, eighth_inches, half_inches, inches, nm, sixty_fourths,
    tenths_of_mm,
};
use fluent_syntax::ast::{
    Entry, Expression, InlineExpression, Pattern, PatternElement, VariantKey,
};
use fluent_syntax::parser::parse;
use proptest::prelude::*;
use std::collections::{BTreeMap, BTreeSet};

/// What a sentence is given, by name: the variants that are chosen by it.
type Variables = BTreeMap<String, BTreeSet<String>>;

fn expression(found: &Expression<&str>, out: &mut Variables) {
    match found {
        Expression::Inline(inline) => self::inline(inline, out),
        Expression::Select { selector, variants } => {
            self::inline(selector, out);
            for variant in variants {
                if let InlineExpression::VariableReference { id } = selector {
                    let key = match &variant.key {
                        VariantKey::Identifier { name } => *name,
                        VariantKey::NumberLiteral { value } => *value,
                    };
                    out.entry(id.name.into()).or_default().insert(key.into());
                }
                pattern(&variant.value, out);
            }
        }
    }
}

fn inline(found: &InlineExpression<&str>, out: &mut Variables) {
    match found {
        InlineExpression::VariableReference { id } => {
            out.entry(id.name.to_string()).or_default();
        }
        InlineExpression::Placeable { expression } => self::expression(expression, out),
        InlineExpression::StringLiteral { .. } | InlineExpression::NumberLiteral { .. } => {}
        other => panic!("not used in these files: {other:?}"),
    }
}

fn pattern(found: &Pattern<&str>, out: &mut Variables) {
    for element in &found.elements {
        if let PatternElement::Placeable { expression } = element {
            self::expression(expression, out);
        }
    }
}

/// The sentences of one file, each once.
fn sentences(language: &Language, file: usize) -> BTreeMap<String, Variables> {
    let parsed = parse(language.files[file]);
    let parsed = parsed.unwrap_or_else(|(_, why)| panic!("{} {file}: {why:?}", language.code));
    let mut out = BTreeMap::new();
    for entry in &parsed.body {
        if let Entry::Message(message) = entry {
            let mut variables = Variables::new();
            let value = message.value.as_ref();
            pattern(value.expect("a message has a value"), &mut variables);
            let key = message.id.name.to_string();
            let twice = out.insert(key, variables);
            assert!(
                twice.is_none(),
                "{}: {} twice",
                language.code,
                message.id.name
            );
        }
    }
    out
}

fn is_number(variants: &BTreeSet<String>) -> bool {
    let chosen_by_count = |v: &String| v == "one" || v.parse::<i64>().is_ok();
    variants.iter().any(chosen_by_count)
}

#[test]
fn every_language_has_every_sentence_with_the_same_variables_and_no_other() {
    let mut all = 0;
    for file in 0..3 {
        let english = sentences(&LANGUAGES[0], file);
        all += english.len();
        for language in &LANGUAGES[1..] {
            let own = sentences(language, file);
            let keys = |s: &BTreeMap<String, Variables>| s.keys().cloned().collect::<BTreeSet<_>>();
            let (has, wants) = (keys(&own), keys(&english));
            let missing: Vec<_> = wants.difference(&has).collect();
            let other: Vec<_> = has.difference(&wants).collect();
            assert!(missing.is_empty(), "{} lacks {missing:?}", language.code);
            assert!(other.is_empty(), "only in {}: {other:?}", language.code);
            for (key, variables) in &english {
                let names = |v: &Variables| v.keys().cloned().collect::<Vec<_>>();
                assert_eq!(
                    names(&own[key]),
                    names(variables),
                    "{key} in {}",
                    language.code
                );
            }
        }
    }
    assert!(all > 900, "only {all} sentences found");
}

/// Words chosen by, in any language, such as `[pair]`: they come from the code and must be
/// the same everywhere.
#[test]
fn what_is_chosen_by_a_word_is_chosen_by_the_same_words_everywhere() {
    for file in 0..3 {
        let english = sentences(&LANGUAGES[0], file);
        for language in &LANGUAGES[1..] {
            for (key, variables) in sentences(language, file) {
                for (name, variants) in variables {
                    let asked = &english[&key][&name];
                    if !variants.is_empty() && !is_number(&variants) && variants.len() > 1 {
                        assert_eq!(&variants, asked, "{key} ${name} in {}", language.code);
                    }
                }
            }
        }
    }
}

#[test]
fn every_sentence_can_be_said_of_none_one_and_several() {
    for language in LANGUAGES {
        let words = Words::of(language.code);
        for file in 0..3 {
            for (key, variables) in sentences(language, file) {
                for count in [0, 1, 2, 5] {
                    let args: Vec<(&str, Arg)> = variables
                        .iter()
                        .map(|(name, variants)| {
                            let arg =
                                match variants.iter().nth(count as usize % variants.len().max(1)) {
                                    Some(word) if !is_number(variants) => Arg::from(word.as_str()),
                                    Some(_) => Arg::Count(count),
                                    None => Arg::from("Ω"),
                                };
                            (name.as_str(), arg)
                        })
                        .collect();
                    // `say` itself looks for errors in tests.
                    let said = words.say(&key, &args);
                    assert!(words.has(&key), "{key} in {}", language.code);
                    assert!(!said.contains(['{', '}']), "{key}: {said}");
                    for (name, variants) in &variables {
                        let shown = !variants.is_empty() || said.contains('Ω');
                        assert!(
                            shown,
                            "{key} in {} does not say ${name}: {said}",
                            language.code
                        );
                    }
                }
            }
        }
    }
}

#[test]
fn plurals_are_those_of_the_language() {
    let words = Words::of("de");
    let say = |key: &str, n: i64| words.say(key, &[("n", n.into())]);
    assert_eq!(say("count-pair", 1), "1 Paar");
    assert_eq!(say("count-pair", 0), "0 Paare");
    assert_eq!(say("count-pair", 5), "5 Paare");
    assert_eq!(say("did-count-spares", 0), "Keine Ersatzquadrate");
    assert_eq!(say("did-count-spares", 1), "Ein Ersatzquadrat vorhanden");
    assert_eq!(say("did-count-spares", 2), "2 Ersatzquadrate vorhanden");
    let turned = words.say(
        "did-turn",
        &[("piece", "Vierer A2".into()), ("quarters", 2.into())],
    );
    assert_eq!(turned, "Vierer A2 halb herumgedreht");
}

#[test]
fn what_a_throw_is_made_up_of_has_commas_and_cases() {
    for (language, counts, text) in [
        ("en", [12, 0, 0], "12 fours"),
        ("en", [1, 1, 0], "1 four, 1 single pair"),
        ("en", [6, 5, 1], "6 fours, 5 single pairs, 1 single square"),
        ("en", [0, 2, 1], "2 single pairs, 1 single square"),
        ("en", [2, 0, 3], "2 fours, 3 single squares"),
        ("en", [0, 0, 1], "1 single square"),
        ("de", [12, 0, 0], "12 Vierern"),
        ("de", [1, 1, 0], "1 Vierer, 1 einzelnen Paar"),
        (
            "de",
            [6, 5, 1],
            "6 Vierern, 5 einzelnen Paaren, 1 einzelnen Quadrat",
        ),
        ("de", [0, 0, 1], "1 einzelnen Quadrat"),
    ] {
        let [fours, pairs, squares] = counts.map(Into::into);
        let given = [("fours", fours), ("pairs", pairs), ("squares", squares)];
        assert_eq!(Words::of(language).say("blocks", &given), text);
    }
}

#[test]
fn one_is_one_and_none_is_none() {
    for (language, have, text) in [
        ("en", 0, "There is no square of Moss."),
        ("en", 1, "There is only one square of Moss."),
        ("en", 2, "There are only 2 squares of Moss."),
        ("de", 0, "Von Moss gibt es kein Quadrat."),
        ("de", 1, "Von Moss gibt es nur ein Quadrat."),
        ("de", 2, "Von Moss gibt es nur 2 Quadrate."),
    ] {
        let given = [("print", "Moss".into()), ("have", have.into())];
        assert_eq!(Words::of(language).say("error-stock", &given), text);
    }
    for (n, done, text) in [
        (1, 0, "one square"),
        (1, 1, "one square, glued"),
        (3, 0, "3 squares"),
        (3, 1, "3 squares, 1 of them glued"),
    ] {
        let given = [("n", n.into()), ("done", done.into())];
        assert_eq!(Words::english().say("covering-count", &given), text);
    }
}

/// Longest label a button takes on a phone however it stands.
const SHORT: usize = 20;
/// Longer than 1.6 times the English, and looked at on a phone of 360 × 740.
const LONG_BUT_SEEN: [&str; 0] = [];

#[test]
fn labels_are_not_much_longer_than_the_english_ones() {
    let english = Words::english();
    let labels = |key: &String| {
        let said = english.say(key, &[]);
        let sentence = said.ends_with(['.', '?']) || said.chars().count() > 44;
        !sentence
            && ["ui-", "tick-", "title-", "station-"]
                .iter()
                .any(|s| key.starts_with(s))
    };
    let mut seen = 0;
    for language in &LANGUAGES[1..] {
        let words = Words::of(language.code);
        let mut long = Vec::new();
        for file in 0..2 {
            let plain = sentences(&LANGUAGES[0], file);
            let plain = plain.into_iter().filter(|(_, v)| v.is_empty());
            for key in plain.map(|(key, _)| key).filter(labels) {
                seen += 1;
                let chars = |words: &Words| words.say(&key, &[]).chars().count();
                let (own, other) = (chars(&words), chars(&english));
                let tab = ["ui-work", "ui-faces", "ui-bench", "ui-plan", "ui-history"];
                assert!(!tab.contains(&key.as_str()) || own <= 8, "{key} is a tab");
                if own > SHORT && own * 10 > other * 16 && !LONG_BUT_SEEN.contains(&key.as_str()) {
                    long.push(format!("{key}: {}", words.say(&key, &[])));
                }
            }
        }
        assert!(long.is_empty(), "{}: {long:#?}", language.code);
    }
    assert!(seen > 200, "only {seen} labels");
}

#[test]
fn lengths_are_written_and_read_as_in_german() {
    let words = Words::of("de");
    let ruler = |system, metric| Ruler {
        system,
        metric,
        ..Ruler::default()
    };
    let inch = ruler(System::Inch, MetricUnit::Mm);
    let mm = ruler(System::Metric, MetricUnit::Mm);
    let cm = ruler(System::Metric, MetricUnit::Cm);
    let four = half_inches(19);
    let check = |length, ruler, text: &str, spoken: &str| {
        let shown = words.length(length, ruler);
        assert_eq!(shown.text.replace('\u{a0}', " "), text);
        assert_eq!(shown.spoken, spoken);
    };
    check(four, inch, "9½ Zoll", "9 und ein halb Zoll");
    check(four, mm, "≈ 241 mm", "etwa 241 Millimeter");
    check(four, cm, "≈ 24,1 cm", "etwa 24,1 Zentimeter");
    check(tenths_of_mm(2414), mm, "241,4 mm", "241,4 Millimeter");
    check(tenths_of_mm(2414), cm, "24,14 cm", "24,14 Zentimeter");
    check(half_inches(1), inch, "½ Zoll", "ein halber Zoll");
    check(eighth_inches(3), inch, "⅜ Zoll", "3 Achtel Zoll");
    check(
        sixty_fourths(64 + 4),
        inch,
        "1 1/16 Zoll",
        "1 und ein Sechzehntel Zoll",
    );
    check(inches(-1), inch, "−1 Zoll", "minus 1 Zoll");
    for typed in [
        "9½ Zoll",
        "9 1/2 zoll",
        "9,5 Zoll",
        "9.5 in",
        "9 1/2\"",
        "241,3 mm",
        "24,13 cm",
        "241,3 Millimeter",
    ] {
        assert_eq!(words.parse(typed, inch), Ok(four), "{typed}");
    }
    assert_eq!(words.parse("241,3", mm), Ok(four));
    assert_eq!(words.parse("1.234 mm", mm), Err(ParseError::Ambiguous));
    assert_eq!(words.parse("2 Fuß", mm), Ok(inches(24)));
    // What was typed in another language is still read, and neither is misread.
    assert_eq!(Words::english().parse("9½ Zoll", mm), Ok(four));
    assert_eq!(
        Words::english().parse("1,234 mm", mm),
        Err(ParseError::Ambiguous)
    );
    assert_eq!(words.decimal(1.25, 1), "1,2");
    let spoken = Words::english().length(half_inches(1), inch).spoken;
    assert_eq!(spoken, "half of an inch");
    let spoken = Words::english().length(four, inch).spoken;
    assert_eq!(spoken, "9 and a half inches");
}

#[test]
fn no_word_for_a_unit_means_two_things() {
    let mut sizes: BTreeMap<String, i64> = BTreeMap::new();
    for (name, size) in LANGUAGES.iter().flat_map(units) {
        assert!(
            !name.is_empty() && !name.contains(|c: char| c.is_ascii_digit()),
            "{name:?}"
        );
        assert_eq!(*sizes.entry(name.clone()).or_insert(size), size, "{name}");
    }
    assert!(sizes.contains_key("zoll") && sizes.contains_key("inches"));
}

#[test]
fn a_language_is_found_by_its_tag() {
    for (tag, code) in [
        ("de", Some("de")),
        ("DE", Some("de")),
        ("de-AT", Some("de")),
        ("de_CH.UTF-8@euro", Some("de")),
        ("en_GB", Some("en")),
        ("deu", None),
        ("C", None),
        ("C.UTF-8", None),
        ("", None),
    ] {
        assert_eq!(language(tag).map(|l| l.code), code, "{tag}");
    }
    assert_eq!(Words::of("tlh").language().code, "en");
}

#[test]
fn a_sentence_a_language_lacks_is_said_in_english() {
    let mut words = Words::of("de");
    words.bundle = Arc::new(FluentBundle::new_concurrent(vec!["de".parse().unwrap()]));
    assert_eq!(say!(words, "ui-back"), "Back");
    assert_eq!(say!(words, "no-such-sentence"), "no-such-sentence");
}

#[test]
fn lists_and_sentences_are_put_together() {
    let words = Words::of("de");
    let list = |items: &[&str]| words.list("list-short", items.iter().map(ToString::to_string));
    assert_eq!(list(&[]), "");
    assert_eq!(list(&["a"]), "a");
    assert_eq!(list(&["a", "b", "c"]), "a, b, c");
}

proptest! {
    #[test]
    fn every_language_takes_back_what_it_shows(
        which in 0..LANGUAGES.len(),
        marks in 0i64..31_000,
        fraction in 0usize..4,
        system in 0usize..3,
    ) {
        let words = Words::of(LANGUAGES[which].code);
        let fraction = [Fraction::Eighth, Fraction::Sixteenth, Fraction::ThirtySecond, Fraction::SixtyFourth][fraction];
        let (ruler, length) = match system {
            0 => {
                let ruler = Ruler { fraction, ..Ruler::default() };
                (ruler, nm(marks * NM_PER_INCH / fraction.marks()))
            }
            n => {
                let metric = if n == 1 { MetricUnit::Mm } else { MetricUnit::Cm };
                (Ruler { system: System::Metric, metric, ..Ruler::default() }, tenths_of_mm(marks))
            }
        };
        let shown = words.exact(length, ruler);
        prop_assert!(!shown.rounded);
        prop_assert_eq!(words.parse(&shown.text, ruler), Ok(length));
        // What is read for the eye is the same, or says that it was rounded.
        let seen = words.length(length, ruler);
        prop_assert_eq!(seen.rounded, seen.text.starts_with('≈'));
        prop_assert!(seen.rounded || seen == shown);
        // And in any other language too, or not at all.
        for other in LANGUAGES {
            let read = Words::of(other.code).parse(&shown.text, ruler);
            prop_assert!(read == Ok(length) || read == Err(ParseError::Ambiguous));
        }
    }
}
