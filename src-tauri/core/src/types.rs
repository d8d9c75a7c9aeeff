//! The derive `TS` that declares a type to the window.
//!
//! Only the test that makes the window's types asks for it, by the feature `types`. Otherwise it writes
//! nothing.

#[cfg(any(test, not(feature = "types")))]
pub(crate) use lapwork_undeclared::TS;
#[cfg(all(feature = "types", not(test)))]
pub(crate) use ts_rs::TS;
