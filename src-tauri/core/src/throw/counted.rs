//! How much was folded on this thread, for the tests.

use std::cell::Cell;

thread_local! {
    /// Events folded into a state.
    pub(crate) static FOLDED: Cell<usize> = const { Cell::new(0) };
    /// Pieces worked out for an index.
    pub(crate) static INDEXED: Cell<usize> = const { Cell::new(0) };
}
