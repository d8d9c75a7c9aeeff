//! A derive named like that of `ts-rs`, which writes nothing.
//!
//! The core derives `TS` on all that its views and commands hold, so that the window's types can be
//! made from them. Only the test that makes them asks for what that derive writes (the core's feature
//! `types`). The program, the page for browsers and the core's own tests are built without it.

use proc_macro::TokenStream;

/// Accepts the attributes of `ts-rs` and writes nothing.
#[proc_macro_derive(TS, attributes(ts))]
pub fn undeclared(_: TokenStream) -> TokenStream {
    TokenStream::new()
}
