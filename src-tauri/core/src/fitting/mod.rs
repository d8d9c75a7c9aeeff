//! Making pieces fit: squaring up, the trim size, stretch or lap, the finished piece.

pub mod drift;
pub mod reconcile;
pub mod squaring;
pub mod trimming;

#[cfg(test)]
pub(crate) mod tests;
