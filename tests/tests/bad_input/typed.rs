//! Typed nonsense is read as a length or refused.

use super::*;

/// Text as nobody means it: digits, units, signs and anything at all, mixed.
fn nonsense() -> impl Strategy<Value = String> {
    let bits = prop_oneof![
        4 => "[0-9]{1,40}",
        2 => "[ .,/'\"½⅛⅓−-]{1,3}",
        2 => prop::sample::select(vec!["in", "mm", "cm", "m", "ft", "oz", "g/m²", "NaN", "inf", "e9"])
            .prop_map(str::to_string),
        1 => any::<char>().prop_map(String::from),
        1 => "[\u{0}-\u{1f}\u{200b}-\u{200f}\u{202a}-\u{202e}\u{2066}-\u{2069}\u{feff}]{1,4}",
    ];
    prop::collection::vec(bits, 0..9).prop_map(|bits| bits.concat())
}

fn rulers() -> [Ruler; 3] {
    let ruler = |system, metric| Ruler {
        system,
        metric,
        ..Ruler::default()
    };
    [
        ruler(System::Inch, MetricUnit::Mm),
        ruler(System::Metric, MetricUnit::Mm),
        ruler(System::Metric, MetricUnit::Cm),
    ]
}

fn a_length_or_told(typed: &str) {
    for ruler in rulers() {
        match parse(typed, ruler) {
            Ok(length) => assert!((0..=100_000_000_000).contains(&in_nm(length)), "{typed:?}"),
            Err(ParseError::OffTheMarks { nearest }) => assert!(in_nm(nearest) >= 0, "{typed:?}"),
            Err(_) => {}
        }
    }
    for system in [System::Inch, System::Metric] {
        if let Some(weight) = parse_weight(typed, system) {
            let grams = lapwork_core::cloth::weight::in_gsm(weight);
            assert!(grams.is_finite() && grams >= 0.0, "{typed:?}");
        }
    }
}

#[test]
fn typed_nonsense_is_a_length_or_told() {
    let kept = [
        kept_texts("measures.json"),
        kept_texts("weights.json"),
        kept_texts("texts.json"),
    ];
    let kept: Vec<String> = kept.concat();
    for typed in &kept {
        a_length_or_told(typed);
    }
    let tried = runner(20_000).run(&nonsense(), |typed| {
        a_length_or_told(&typed);
        Ok(())
    });
    tried.unwrap();
    let long = Instant::now();
    for piece in ["9", "½", " ", "/", "\u{202e}"] {
        a_length_or_told(&piece.repeat(2_000_000));
    }
    assert!(long.elapsed() < Duration::from_secs(20));
    println!(
        "typed: {} kept and 20000 random texts, five of 2 million characters",
        kept.len()
    );
}
