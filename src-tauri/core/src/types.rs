//! The derive `TS` that declares a type to the window.
//!
//! The feature `types` makes it write; without that, and in the core's own tests, it writes nothing.

#[cfg(any(test, not(feature = "types")))]
pub(crate) use lapwork_undeclared::TS;
#[cfg(all(feature = "types", not(test)))]
pub(crate) use ts_rs::TS;
