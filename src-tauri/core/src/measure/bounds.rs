//! How large a figure may be that comes from outside: from a file or from the window.
//!
//! The bounds belong to the types: a [`Length`](crate::measure::Length), a
//! [`Count`](crate::measure::Count), a weight and a thickness of cloth are refused while
//! they are deserialised if they lie beyond anything a throw has. So no value of a type that
//! is read holds a figure that arithmetic would overflow on, and nobody has to remember to
//! check. [`read`] and [`Sent`] are the ways in: they read, and report which figure it was.
//!
//! A deserialiser reports in text only, and loses its place within an enum that is identified by
//! its tag. So what was not read is examined once more: if it can be read with its large
//! figures replaced by 0, one of them is the reason, and the first such is named. This
//! happens only to what is refused anyway.
//!
//! Limits: a bound says only that a figure is no nonsense, not that it fits the throw; that
//! is for [`crate::command::decide`] and [`crate::log::intake`], and an event that does not
//! fit is passed over.

use crate::measure::Count;
use serde::de::{DeserializeOwned, Error as _};
use serde::{Deserialize, Deserializer};
use serde_json::Value;
use thiserror::Error;

/// Which figure of something from outside is out of bounds.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("{field} is out of bounds: {figure}")]
pub struct FigureOutOfBounds {
    /// Where it stands, by the names in the file or the request: `plan.side`.
    pub field: String,
    /// The figure as given.
    pub figure: String,
}

/// Why something from outside was not read.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum NotRead {
    /// A figure in it is out of bounds.
    #[error(transparent)]
    FigureOutOfBounds(#[from] FigureOutOfBounds),
    /// It is something else than what it should be.
    #[error("not what was to be read")]
    Unknown,
}

/// Read JSON from outside.
///
/// # Errors
/// [`NotRead`]: the figure that is out of bounds, or that it is something else altogether.
pub fn read<T: DeserializeOwned>(text: &str) -> Result<T, NotRead> {
    serde_json::from_str(text).map_err(|_| {
        let value = serde_json::from_str(text).ok();
        match value.and_then(culprit::<T>) {
            Some(beyond) => NotRead::FigureOutOfBounds(beyond),
            None => NotRead::Unknown,
        }
    })
}

/// What the window sends, or the figure in it that is out of bounds. Anything else that is
/// wrong with it is an error of deserialising, as without this.
#[derive(Debug, Clone, PartialEq)]
pub struct Sent<T>(pub Result<T, FigureOutOfBounds>);

impl<'de, T: DeserializeOwned> Deserialize<'de> for Sent<T> {
    fn deserialize<D: Deserializer<'de>>(sent: D) -> Result<Self, D::Error> {
        let value = Value::deserialize(sent)?;
        match T::deserialize(&value) {
            Ok(read) => Ok(Sent(Ok(read))),
            Err(why) => match culprit::<T>(value) {
                Some(beyond) => Ok(Sent(Err(beyond))),
                None => Err(D::Error::custom(why)),
            },
        }
    }
}

/// The first figure that keeps a value from being read as a `T` because it is too large.
fn culprit<T: DeserializeOwned>(mut value: Value) -> Option<FigureOutOfBounds> {
    let reads = |value: &Value| T::deserialize(value).is_ok();
    if reads(&value) {
        return None;
    }
    let mut large = Vec::new();
    find_large(&value, &mut String::new(), &mut large);
    // Put 0 for all of them but the first few.
    let keep = |value: &mut Value, few: usize| {
        for (i, (place, given)) in large.iter().enumerate() {
            if let Some(figure) = value.pointer_mut(place) {
                *figure = if i < few { given.clone() } else { 0.into() };
            }
        }
    };
    keep(&mut value, 0);
    if !reads(&value) {
        return None;
    }
    // It is read with the first `sound` of them as given, and not with the first `too_many`.
    let (mut sound, mut too_many) = (0, large.len());
    while too_many - sound > 1 {
        let middle = (sound + too_many) / 2;
        keep(&mut value, middle);
        match reads(&value) {
            true => sound = middle,
            false => too_many = middle,
        }
    }
    large.get(sound).map(|(place, given)| FigureOutOfBounds {
        field: field(place),
        figure: given.to_string(),
    })
}

/// Every figure beyond the least of all bounds, with its place as a JSON pointer (RFC 6901).
fn find_large(value: &Value, place: &mut String, found: &mut Vec<(String, Value)>) {
    let here = place.len();
    match value {
        Value::Number(n) => {
            let least = f64::from(Count::MOST.get());
            if n.as_f64().is_none_or(|n| n.abs() > least) {
                found.push((place.clone(), value.clone()));
            }
        }
        Value::Array(all) => {
            for (i, one) in all.iter().enumerate() {
                place.push_str(&format!("/{i}"));
                find_large(one, place, found);
                place.truncate(here);
            }
        }
        Value::Object(all) => {
            for (name, one) in all {
                place.push('/');
                place.push_str(&name.replace('~', "~0").replace('/', "~1"));
                find_large(one, place, found);
                place.truncate(here);
            }
        }
        Value::Null | Value::Bool(_) | Value::String(_) => {}
    }
}

/// A place as it is reported: `do[0].plan-changed.plan.side`.
fn field(place: &str) -> String {
    let mut path = String::new();
    for step in place.split('/').skip(1) {
        if step.bytes().all(|b| b.is_ascii_digit()) {
            path.push_str(&format!("[{step}]"));
        } else {
            if !path.is_empty() {
                path.push('.');
            }
            path.push_str(&step.replace("~1", "/").replace("~0", "~"));
        }
    }
    path
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Length;
    use serde_json::json;

    #[derive(Debug, PartialEq, Deserialize)]
    #[serde(rename_all = "kebab-case", tag = "do")]
    enum Said {
        Cut {
            side: Length,
            squares: Count,
        },
        Many {
            sides: Vec<(Length, Length)>,
            note: String,
        },
    }

    fn beyond(said: &Value) -> Option<(String, String)> {
        let read = read::<Said>(&said.to_string());
        let sent = serde_json::from_value::<Sent<Said>>(said.clone());
        match (read, sent) {
            (Ok(read), Ok(Sent(Ok(sent)))) => {
                assert_eq!(read, sent);
                None
            }
            (Err(NotRead::FigureOutOfBounds(read)), Ok(Sent(Err(sent)))) => {
                assert_eq!(read, sent);
                Some((read.field, read.figure))
            }
            other => panic!("{said}: {other:?}"),
        }
    }

    #[test]
    fn the_figure_out_of_bounds_is_named() {
        let fault = |field: &str, figure: &str| Some((field.to_string(), figure.to_string()));
        let cut =
            |side: Value, squares: Value| json!({"do": "cut", "side": side, "squares": squares});
        let most = json!(1_000_000_000_000_i64);
        assert_eq!(beyond(&cut(most.clone(), json!(10_000_000))), None);
        assert_eq!(
            beyond(&cut(json!(1_000_000_000_001_i64), json!(5))),
            fault("side", "1000000000001")
        );
        assert_eq!(
            beyond(&cut(json!(-1_000_000_000_001_i64), json!(5))),
            fault("side", "-1000000000001")
        );
        assert_eq!(
            beyond(&cut(most.clone(), json!(10_000_001))),
            fault("squares", "10000001")
        );
        assert_eq!(
            beyond(&cut(most.clone(), json!(u64::MAX))),
            fault("squares", "18446744073709551615")
        );
        // Large figures that may be there are not blamed.
        let sides = |odd: i64| json!({"do": "many", "note": "1e99", "sides": [[500_000_000, most], [odd, most], [i64::MAX, 1]]});
        assert_eq!(
            beyond(&sides(i64::MIN)),
            fault("sides[1][0]", "-9223372036854775808")
        );
        assert_eq!(
            beyond(&sides(-5)),
            fault("sides[2][0]", "9223372036854775807")
        );
    }

    #[test]
    fn what_is_wrong_otherwise_is_not_laid_on_a_figure() {
        for said in [
            json!({"do": "unheard-of", "side": i64::MAX}),
            json!({"do": "cut", "side": i64::MAX}),
            json!({"do": "cut", "side": i64::MAX, "squares": "many"}),
            json!({"do": "cut", "side": 5, "squares": -1}),
            json!(i64::MAX),
            json!(null),
        ] {
            assert_eq!(
                read::<Said>(&said.to_string()),
                Err(NotRead::Unknown),
                "{said}"
            );
            assert!(serde_json::from_value::<Sent<Said>>(said).is_err());
        }
        for text in [
            "",
            "[",
            "{\"do\":\"cut\",\"side\":1,\"side\":2,\"squares\":3}",
        ] {
            assert_eq!(read::<Said>(text), Err(NotRead::Unknown), "{text}");
        }
    }
}
