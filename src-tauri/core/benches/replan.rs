//! How long the answers take when reality differs, and how that grows.
//!
//! `cargo bench -p lapwork-core --bench replan`

mod made;

use divan::Bencher;
use lapwork_core::fitting::trimming::choices;
use lapwork_core::measure::Ruler;

fn main() {
    divan::main();
}

/// Squares across and down: 6 × 8, 30 × 30, 15 × 20 fours, 60 × 60.
const GRIDS: [(u16, u16); 4] = [(6, 8), (30, 30), (30, 40), (60, 60)];

/// Every trim size tried, every short block saved: all blocks measured.
#[divan::bench(args = GRIDS)]
fn trim_sizes(bencher: Bencher, (across, down): (u16, u16)) {
    let throw = made::folded(&made::events(across, down));
    bencher.bench(|| choices(&throw, Ruler::default()));
}
