//! The two halves of a pair: legs, sleeves, the fronts of a shirt.
//!
//! Such halves are cut as mirror images, so that one outline, measured once, is that of both.
//! [`taken_over`] gives the other half the outline, the hem and the seams, with left and right
//! changed: of an opened leg the front panel and the back panel both, since the outseam between
//! them is the middle line. Where a half is worn is its own: the knee, holes and stains are not
//! taken over. Those that were marked on the other half stay there and go with its cloth
//! ([`reshape::carried`]); one that lies beside the new outline is left out.
//!
//! # Promises (kept by tests)
//!
//! * Taken over there and back, the outline is the one it was.
//! * Without worn places both halves give the same number of squares.
//! * What is taken over passes [`Piece::check`] where the piece it is taken from does.

use crate::cloth::garments::{Garment, GarmentPart, Piece, PieceFault, Zone, ZoneKind, mirrored};
use crate::cloth::reshape;
use crate::measure::System;

/// Whether such a place comes from wear, so that each half has its own.
pub fn is_wear(kind: ZoneKind) -> bool {
    match kind {
        ZoneKind::Knee | ZoneKind::Hole | ZoneKind::Stain => true,
        ZoneKind::Outseam
        | ZoneKind::Hem
        | ZoneKind::Pocket
        | ZoneKind::Seam
        | ZoneKind::CutEdge
        | ZoneKind::Selvedge => false,
    }
}

/// Which piece is the other half of this one: the other leg; of two fronts or two sleeves the
/// other.
pub fn other_half(garment: &Garment, index: usize) -> Option<usize> {
    let wanted = match garment.pieces.get(index)?.part {
        GarmentPart::LeftLeg => GarmentPart::RightLeg,
        GarmentPart::RightLeg => GarmentPart::LeftLeg,
        part @ (GarmentPart::Front | GarmentPart::Sleeve) => part,
        GarmentPart::Back
        | GarmentPart::Panel
        | GarmentPart::Pocket
        | GarmentPart::Waistband
        | GarmentPart::Sheet
        | GarmentPart::Cloth => {
            return None;
        }
    };
    let pieces = garment.pieces.iter().enumerate();
    let mut others = pieces.filter(|(i, p)| *i != index && p.part == wanted);
    // Of three sleeves nobody can say which two are a pair.
    let found = others.next().map(|(i, _)| i);
    found.filter(|_| others.next().is_none())
}

/// The other half with the outline, the hem and the seams of this one, mirrored, and with its
/// own worn places.
pub fn taken_over(from: &Piece, other: &Piece, system: System) -> Piece {
    let mut piece = mirrored(from, other.part);
    piece.zones.retain(|z| !is_wear(z.kind));
    let own: Vec<Zone> = other
        .zones
        .iter()
        .filter(|z| is_wear(z.kind))
        .map(|z| reshape::carried(other, &piece, z, system))
        .collect();
    piece.zones.extend(own);
    while let Err(PieceFault::ZoneOutside(i) | PieceFault::EmptyZone(i)) = piece.check() {
        piece.zones.remove(i);
    }
    piece
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::cutting::tests::piece;
    use crate::cloth::cutting::{Cutting, lay_out};
    use crate::cloth::garments::{GarmentKind, GarmentSize, Guess, start};
    use crate::measure::{half_inches, inches};
    use proptest::prelude::*;

    fn jeans() -> Garment {
        Garment {
            name: "Jeans".into(),
            pieces: start(
                GarmentKind::MensJeans,
                GarmentSize::Medium,
                Guess::Typical,
                System::Inch,
            ),
            start: None,
        }
    }

    /// By hand: a left leg that reaches 9½ in to the left of the outseam at the hem, and 7½ in to
    /// the right, is a right leg that reaches 7½ in to the left and 9½ in to the right.
    #[test]
    fn the_outline_and_the_seams_are_mirrored_and_the_wear_is_not() {
        let garment = jeans();
        let [mut left, right] = [garment.pieces[0].clone(), garment.pieces[1].clone()];
        left.stations[0].left = half_inches(-19);
        left.stations[0].right = half_inches(15);
        let zone = |kind, left: i64, right: i64| Zone {
            kind,
            from: inches(20),
            to: inches(22),
            left: inches(left),
            right: inches(right),
        };
        left.zones.push(zone(ZoneKind::Hole, 1, 3));
        left.zones.push(zone(ZoneKind::Seam, 4, 5));
        let taken = taken_over(&left, &right, System::Inch);
        assert_eq!(taken.part, GarmentPart::RightLeg);
        assert_eq!(taken.stations[0].left, half_inches(-15));
        assert_eq!(taken.stations[0].right, half_inches(19));
        let of = |piece: &Piece, kind| -> Vec<[crate::measure::Length; 2]> {
            let zones = piece.zones.iter().filter(|z| z.kind == kind);
            zones.map(|z| [z.left, z.right]).collect()
        };
        assert_eq!(of(&taken, ZoneKind::Seam), [[inches(-5), inches(-4)]]);
        assert!(of(&taken, ZoneKind::Hole).is_empty());
        // The right leg has a knee of its own, and keeps it at its height.
        let knee = |piece: &Piece| {
            let knee = piece.zones.iter().find(|z| z.kind == ZoneKind::Knee);
            knee.map(|z| [z.from, z.to])
        };
        assert!(knee(&right).is_some());
        assert_eq!(knee(&taken), knee(&right));
    }

    #[test]
    fn halves_are_found_in_pairs_only() {
        let mut garment = jeans();
        assert_eq!(
            [other_half(&garment, 0), other_half(&garment, 1)],
            [Some(1), Some(0)]
        );
        assert_eq!(other_half(&garment, 2), None);
        garment.pieces.pop();
        assert_eq!(other_half(&garment, 0), None);
        let shirt = GarmentKind::Shirt;
        garment.pieces = start(shirt, GarmentSize::Medium, Guess::Typical, System::Inch);
        let others: Vec<_> = (0..5).map(|i| other_half(&garment, i)).collect();
        assert_eq!(others, [None, Some(2), Some(1), Some(4), Some(3)]);
        garment.pieces.push(garment.pieces[4].clone());
        assert_eq!(other_half(&garment, 4), None, "three sleeves are no pair");
    }

    proptest! {
        #[test]
        fn there_and_back_it_is_the_same(from in piece(), other in piece()) {
            let taken = taken_over(&from, &other, System::Inch);
            prop_assert_eq!(taken.check(), Ok(()));
            let back = taken_over(&taken, &from, System::Inch);
            prop_assert_eq!(&back.stations, &from.stations);
            // The holes of each are where they were.
            prop_assert_eq!(&back.zones, &from.zones);
        }

        #[test]
        fn both_halves_give_as_many_squares(mut from in piece(), other in piece()) {
            for zone in &mut from.zones {
                zone.kind = ZoneKind::Seam;
            }
            let mut other = other;
            other.zones.clear();
            let taken = taken_over(&from, &other, System::Inch);
            let count = |piece: &Piece| lay_out(piece, &Cutting::default()).unwrap().count;
            prop_assert_eq!(count(&taken), count(&from));
        }
    }
}
