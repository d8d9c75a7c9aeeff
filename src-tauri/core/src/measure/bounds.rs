//! How large a figure may be that comes from outside: from a file or from the window.
//!
//! Lengths are whole nanometres and are added, multiplied and divided without a check
//! each time. Nothing a throw is made of comes near a kilometre, so a figure beyond
//! [`MOST`] is refused where it comes in, and what is reckoned with stays far within
//! what a whole number holds.
//!
//! Limits: this says only that a figure is no nonsense, not that it fits the throw; that
//! is for [`crate::command::decide`], and an event that does not fit is passed over.

use serde::Serialize;
use serde_json::Value;

/// The largest figure taken: a kilometre in nanometres.
pub const MOST: i64 = 1_000_000_000_000;

/// Whether every figure in it may be.
pub fn believable(said: &impl Serialize) -> bool {
    serde_json::to_value(said).is_ok_and(|value| within(&value))
}

fn within(value: &Value) -> bool {
    match value {
        Value::Number(n) => n.as_f64().is_some_and(|n| n.abs() <= MOST as f64),
        Value::Array(all) => all.iter().all(within),
        Value::Object(all) => all.values().all(within),
        Value::Null | Value::Bool(_) | Value::String(_) => true,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn a_kilometre_is_the_most() {
        assert!(believable(
            &json!({"a": [MOST, -MOST, 0.5, "9999999999999"], "b": null})
        ));
        for beyond in [json!([[MOST + 1]]), json!({"a": u64::MAX}), json!(-1e13)] {
            assert!(!believable(&beyond), "{beyond}");
        }
    }
}
