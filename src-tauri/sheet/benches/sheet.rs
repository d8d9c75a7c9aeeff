//! How long the sheets take: `cargo bench -p lapwork-sheet`.

#[allow(dead_code)] // The tests use the rest of it.
mod filled;

use lapwork_core::demo;
use lapwork_sheet::{Inks, LetterSize, Options, Paper, Photos, PrintKind, print};
use std::ops::ControlFlow;

fn main() {
    divan::main();
}

fn made(sheet: &lapwork_core::show::Sheet, photos: Photos, kind: PrintKind) -> Vec<u8> {
    let options = Options {
        paper: Paper::A4,
        size: LetterSize::Normal,
        ink: Inks::Colour,
        kind,
    };
    print(sheet, photos, options, &mut |_| ControlFlow::Continue(())).expect("the sheet can be set")
}

/// What goes on paper, put together by the core.
#[divan::bench(args = [(6, 8), (20, 24)], sample_count = 5)]
fn gathered(bencher: divan::Bencher, (across, down): (u16, u16)) {
    let journal = filled::throw(across, down);
    bencher.bench_local(|| filled::sheet(&journal));
}

/// The making sheet of a filled-in throw.
#[divan::bench(args = [(6, 8), (20, 24)], sample_count = 5)]
fn making(bencher: divan::Bencher, (across, down): (u16, u16)) {
    let sheet = filled::sheet(&filled::throw(across, down));
    bencher.bench_local(|| made(&sheet, Photos::new(), PrintKind::Making));
}

/// The making sheet with its story, which holds 60 photos.
#[divan::bench(sample_count = 5)]
fn story(bencher: divan::Bencher) {
    let sheet = filled::story(&filled::throw(6, 8), 60);
    bencher
        .with_inputs(|| filled::photos(&sheet, false))
        .bench_local_values(|photos| made(&sheet, photos, PrintKind::Making));
}

/// The wall card of the demo.
#[divan::bench(sample_count = 5)]
fn card(bencher: divan::Bencher) {
    let sheet = filled::sheet(&demo::throw(1_800_000_000_000));
    bencher.bench_local(|| made(&sheet, Photos::new(), PrintKind::Bench));
}
