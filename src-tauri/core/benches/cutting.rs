//! How long it takes to lay out the pile, and one piece of it while it is drawn.
//!
//! `cargo bench -p lapwork-core --bench cutting`

mod made;

use divan::Bencher;
use lapwork_core::cloth::cutting::{Cutting, Pile, bound, free_yield, lay_out};
use lapwork_core::cloth::garments::{
    Garment, GarmentKind, GarmentSize, Guess, Piece, Source, Zone, ZoneKind, start,
};
use lapwork_core::measure::{System, inches, sixty_fourths};

fn main() {
    divan::main();
}

/// Forty pieces: twenty pairs of jeans of all kinds and sizes, each leg with a hole.
fn pile() -> Vec<Source> {
    let pair = |i: usize| {
        let pieces = made::jeans(i);
        let holed = |(k, mut piece): (usize, Piece)| {
            let from = sixty_fourths(((i * 5 + k * 7) % 12 + 2) as i64 * 64);
            piece.zones.push(Zone {
                kind: ZoneKind::Hole,
                from,
                to: from + inches(1),
                left: inches(2),
                right: inches(3),
            });
            piece
        };
        Source::Cloth(Garment {
            name: format!("pair {i}"),
            pieces: pieces.into_iter().enumerate().map(holed).collect(),
            start: None,
        })
    };
    (0..20).map(pair).collect()
}

fn leg() -> Piece {
    start(
        GarmentKind::MensJeans,
        GarmentSize::Medium,
        Guess::Typical,
        System::Inch,
    )
    .remove(0)
}

/// All forty pieces.
#[divan::bench]
fn whole_pile(bencher: Bencher) {
    let sources = pile();
    bencher.bench(|| Pile::lay_out(&sources, Cutting::default()).total());
}

/// One piece of the forty, its outline moved by the finger, and the total again.
#[divan::bench]
fn one_piece_of_the_pile(bencher: Bencher) {
    let mut pile = Pile::lay_out(&pile(), Cutting::default());
    let mut leg = leg();
    let mut frame = 0;
    bencher.bench_local(|| {
        frame += 1;
        leg.stations[1].right = sixty_fourths(8 * 64 + frame % 64);
        pile.change(7, 1, &leg);
        pile.total()
    });
}

/// One leg with binding strips from the rest.
#[divan::bench]
fn one_piece_and_binding(bencher: Bencher) {
    let how = Cutting {
        binding: Some(lapwork_core::cloth::cutting::BindingCut {
            width: inches(1),
            length: inches(28),
            most: 5,
        }),
        ..Cutting::default()
    };
    let leg = leg();
    bencher.bench(|| lay_out(&leg, &how));
}

/// The bound of one leg.
#[divan::bench]
fn bound_of_one_piece(bencher: Bencher) {
    let leg = leg();
    bencher.bench(|| bound(&leg, &Cutting::default()));
}

/// One leg not straight across.
#[divan::bench]
fn free_yield_of_one_piece(bencher: Bencher) {
    let leg = leg();
    bencher.bench(|| free_yield(&leg, &Cutting::default()));
}
