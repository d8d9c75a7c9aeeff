//! The outline of a piece changed, and the places to keep clear going with it.
//!
//! A point dragged lands on round figures of the system in use ([`System::mark`]): 1 mm, or
//! 1/8 in. A height or width that the finger did not move past the next mark stays as it was
//! typed, to the nanometre.
//!
//! [`carried`] moves the places to keep clear with the cloth:
//!
//! * Up and down: a place that begins at the lower edge stays there, one that ends at the
//!   upper edge likewise, and one that does both reaches from edge to edge. Any other keeps
//!   its height and follows its middle, which stays in the same proportion between the two
//!   stations around it (between the ends of the piece, where stations were added or taken
//!   away), by whole marks.
//! * Across: as far from the left edge of the cloth as before; the outseam stays on the
//!   middle line. What reached an edge of the cloth reaches it still.
//! * None sticks out: a place that would end above the cloth is moved down, or cut short.
//!
//! (Plain geometry; no rule of these has a source.)

use crate::cloth::cutting;
use crate::cloth::garments::{Piece, Zone, ZoneKind};
use crate::measure::{Length, System, in_nm, nm};
use std::cmp::{max, min};

/// `length` at the nearest mark, or as it is where that mark is its own as well.
fn placed(length: Length, before: Length, mark: Length) -> Length {
    let nearest = |l: Length| {
        let step = in_nm(mark).max(1);
        nm((in_nm(l) + step / 2).div_euclid(step) * step)
    };
    if nearest(length) == nearest(before) {
        before
    } else {
        nearest(length)
    }
}

/// The piece with the right end of one station pulled to `right` and to the height `at`. The
/// middle of the cloth stays where it is, so that its left end goes as far the other way.
pub fn pulled(piece: &Piece, station: usize, right: Length, at: Length, system: System) -> Piece {
    let mark = system.mark();
    let mut after = piece.clone();
    let bound = |i: Option<usize>| i.and_then(|i| piece.stations.get(i)).map(|s| s.at);
    let below = bound(station.checked_sub(1));
    let above = bound(station.checked_add(1));
    if let Some(pulled) = after.stations.get_mut(station) {
        let middle = (pulled.left + pulled.right) / 2;
        let was = pulled.right - pulled.left;
        let width = max(placed((right - middle) * 2, was, mark), mark);
        if width != was {
            pulled.left = middle - width / 2;
            pulled.right = pulled.left + width;
        }
        let mut at = placed(at, pulled.at, mark);
        if let Some(below) = below {
            at = max(at, below + mark);
        }
        if let Some(above) = above {
            at = min(at, above - mark);
        }
        pulled.at = max(at, nm(0));
    }
    let zones = piece.zones.iter();
    after.zones = zones
        .map(|zone| carried(piece, &after, zone, system))
        .collect();
    after
}

/// A place to keep clear of `before`, where it lies on `after`.
pub fn carried(before: &Piece, after: &Piece, zone: &Zone, system: System) -> Zone {
    if before.stations == after.stations {
        return *zone;
    }
    let [from, to] = upright(before, after, [zone.from, zone.to], system.mark());
    let [was, was_end] = cutting::edges(before, zone.from);
    let [is, _] = cutting::edges(after, from);
    let moved = |by: Length| (zone.left + by, zone.right + by);
    let [_, _, least, most] = after.reach();
    let (mut left, mut right) = match zone.kind {
        ZoneKind::Outseam => (zone.left, zone.right),
        _ => moved(is - was),
    };
    if left >= most || right <= least {
        // Cloth so much narrower has no such place: it is kept clear at that edge.
        let wide = min(zone.right - zone.left, most - least);
        (left, right) = if right <= least {
            (least, least + wide)
        } else {
            (most - wide, most)
        };
    }
    if zone.kind != ZoneKind::Outseam {
        if zone.left <= was {
            left = least;
        }
        if zone.right >= was_end {
            right = most;
        }
    }
    Zone {
        from,
        to,
        left,
        right,
        ..*zone
    }
}

/// The heights between which a place lies on the changed cloth.
fn upright(before: &Piece, after: &Piece, [from, to]: [Length; 2], mark: Length) -> [Length; 2] {
    let ([was_low, was_high, ..], [low, high, ..]) = (before.reach(), after.reach());
    let tall = min(to, was_high) - max(from, was_low);
    match (from <= was_low, to >= was_high) {
        (true, true) => [low, high],
        (true, false) => [low, min(low + tall, high)],
        (false, true) => [max(high - tall, low), high],
        (false, false) => {
            let middle = (from + to) / 2;
            let by = in_nm(follows(before, after, middle) - middle);
            let step = in_nm(mark).max(1);
            let by = nm((by + step / 2).div_euclid(step) * step);
            let tall = min(tall, high - low);
            let from = min(max(from + by, low), high - tall);
            [from, from + tall]
        }
    }
}

/// Where a height of `before` lies on `after`: in the same proportion between two stations.
fn follows(before: &Piece, after: &Piece, at: Length) -> Length {
    let between = |[a, b]: [Length; 2], [c, d]: [Length; 2]| {
        let (run, part) = (i128::from(in_nm(b - a)).max(1), i128::from(in_nm(at - a)));
        let rise = i128::from(in_nm(d - c)) * part / run;
        c + nm(rise as i64)
    };
    if before.stations.len() == after.stations.len() {
        let pairs = before.stations.windows(2).zip(after.stations.windows(2));
        for (b, a) in pairs {
            if (b[0].at..=b[1].at).contains(&at) {
                return between([b[0].at, b[1].at], [a[0].at, a[1].at]);
            }
        }
    }
    let ([was_low, was_high, ..], [low, high, ..]) = (before.reach(), after.reach());
    between([was_low, was_high], [low, high])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::garments::{GarmentKind, GarmentPart, GarmentSize, Guess, start};
    use crate::measure::{eighth_inches, inches, millimetres, quarter_inches};
    use proptest::prelude::*;

    fn leg(system: System) -> Piece {
        let (kind, size) = (GarmentKind::MensJeans, GarmentSize::Medium);
        start(kind, size, Guess::Typical, system).remove(0)
    }

    fn of(piece: &Piece, kind: ZoneKind) -> Zone {
        let found = piece.zones.iter().find(|z| z.kind == kind);
        *found.expect("such a place")
    }

    #[test]
    fn a_pulled_point_lands_on_round_figures_of_the_system() {
        for (system, mark) in [
            (System::Metric, millimetres(1)),
            (System::Inch, eighth_inches(1)),
        ] {
            // An outline of the other system, taken hold of in this one.
            let piece = leg(if system == System::Metric {
                System::Inch
            } else {
                System::Metric
            });
            let end = piece.stations[1];
            let pulled = pulled(
                &piece,
                1,
                end.right - nm(20_123_456),
                end.at + nm(31_415_926),
                system,
            );
            let round = |l: Length| in_nm(l) % in_nm(mark) == 0;
            let now = pulled.stations[1];
            assert!(round(now.right - now.left) && round(now.at), "{now:?}");
            // What was not pulled stays to the nanometre.
            assert_eq!(pulled.stations[0], piece.stations[0]);
            assert_eq!(pulled.stations[2], piece.stations[2]);
        }
    }

    /// By hand: ⅛ in is 3.175 mm. What is pulled by 3 mm goes by an eighth, by 1.5 mm it stays.
    #[test]
    fn an_outline_is_pulled_by_eighths() {
        let piece = leg(System::Inch);
        let end = piece.stations[1];
        for (by, eighths) in [(3_000_000, 1), (1_500_000, 0), (-3_000_000, -1)] {
            let now = pulled(&piece, 1, end.right, end.at + nm(by), System::Inch);
            assert_eq!(now.stations[1].at, end.at + eighth_inches(eighths), "{by}");
        }
    }

    #[test]
    fn what_the_finger_did_not_move_stays_as_it_was_typed() {
        let piece = leg(System::Inch);
        let end = piece.stations[2];
        // 32 in is 812.8 mm: pulled sideways in metric, the height is still 32 in.
        let wider = pulled(
            &piece,
            2,
            end.right + millimetres(15),
            end.at + nm(200_000),
            System::Metric,
        );
        assert_eq!(wider.stations[2].at, inches(32));
        assert_ne!(wider.stations[2].right, end.right);
        // Let go where it was taken hold of, nothing has changed.
        assert_eq!(pulled(&piece, 2, end.right, end.at, System::Metric), piece);
    }

    #[test]
    fn hem_and_knee_go_with_the_leg() {
        let piece = leg(System::Inch);
        let knee = of(&piece, ZoneKind::Knee);
        // The hem is measured 2 in higher than it began: the piece is shorter from below.
        let low = piece.stations[0];
        let cut = pulled(&piece, 0, low.right, inches(2), System::Inch);
        let hem = of(&cut, ZoneKind::Hem);
        assert_eq!([hem.from, hem.to], [inches(2), inches(3)]);
        assert_eq!(of(&cut, ZoneKind::Outseam).from, inches(2));
        // The knee 4 in lower: so is what is worn there, as high as before. It lay from 16
        // to 20 in, its middle at 18 in between 17½ and 32 in; now that is 27/58 of an inch
        // from the lower: 18 in follows to 13½ + 0.5 · 18.5/14.5 = 14.138, by −3⅞ in.
        let bend = piece.stations[1];
        assert_eq!(bend.at, quarter_inches(70));
        let bent = pulled(&piece, 1, bend.right, bend.at - inches(4), System::Inch);
        let worn = of(&bent, ZoneKind::Knee);
        assert_eq!(worn.to - worn.from, knee.to - knee.from);
        let middle = (knee.from + knee.to) / 2;
        let now = (worn.from + worn.to) / 2;
        assert!(
            now < middle - inches(3) && now > middle - inches(5),
            "{middle:?} {now:?}"
        );
        assert_eq!(of(&bent, ZoneKind::Hem), of(&piece, ZoneKind::Hem));
    }

    #[test]
    fn both_hems_of_a_sheet_stay_at_its_ends() {
        let (kind, size) = (GarmentKind::Sheet, GarmentSize::Small);
        let sheet = start(kind, size, Guess::Typical, System::Metric).remove(0);
        let top = sheet.stations[1];
        let short = pulled(&sheet, 1, top.right, millimetres(2_000), System::Metric);
        let upper = short
            .zones
            .iter()
            .filter(|z| z.kind == ZoneKind::Hem)
            .nth(1);
        let upper = upper.expect("two hems");
        assert_eq!(upper.to, millimetres(2_000));
        assert_eq!(upper.from, millimetres(1_900));
    }

    proptest! {
        #[test]
        fn no_place_sticks_out_of_a_pulled_outline(
            metric: bool,
            moves in prop::collection::vec((0usize..3, -200i64..300, -300i64..500), 1..6),
        ) {
            let system = if metric { System::Metric } else { System::Inch };
            let mut piece = leg(system);
            for (station, across, up) in moves {
                let end = piece.stations[station];
                let next = pulled(
                    &piece,
                    station,
                    end.right + millimetres(across),
                    end.at + millimetres(up),
                    system,
                );
                prop_assert_eq!(next.check(), Ok(()));
                let [low, high, left, right] = next.reach();
                for zone in &next.zones {
                    prop_assert!(zone.from >= low && zone.to <= high, "{:?}", zone);
                    prop_assert!(zone.right > left && zone.left < right, "{:?}", zone);
                }
                let hem = of(&next, ZoneKind::Hem);
                prop_assert_eq!(hem.from, low);
                piece = next;
            }
        }
    }

    #[test]
    fn a_place_beside_much_narrower_cloth_is_kept_at_its_edge() {
        let wide = Piece::rectangle(GarmentPart::Cloth, inches(40), inches(30));
        let stain = Zone {
            kind: ZoneKind::Stain,
            from: inches(4),
            to: inches(6),
            left: inches(35),
            right: inches(38),
        };
        let narrow = Piece::rectangle(GarmentPart::Cloth, inches(20), inches(30));
        let moved = carried(&wide, &narrow, &stain, System::Inch);
        assert_eq!([moved.left, moved.right], [inches(17), inches(20)]);
    }
}
