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
    use crate::cloth::garments::{
        GarmentKind, GarmentPart, GarmentSize, Guess, OutlineStation, start,
    };
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
        // The knee 4 in lower: so is what is worn there, as high as before. Its middle is on the knee.
        let bend = piece.stations[1];
        assert_eq!(bend.at, quarter_inches(70));
        assert_eq!((knee.from + knee.to) / 2, bend.at);
        let bent = pulled(&piece, 1, bend.right, bend.at - inches(4), System::Inch);
        let worn = of(&bent, ZoneKind::Knee);
        assert_eq!(worn.to - worn.from, knee.to - knee.from);
        assert_eq!(worn.from, knee.from - inches(4));
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

    fn place(kind: ZoneKind, [from, to, left, right]: [i64; 4]) -> Zone {
        Zone {
            kind,
            from: eighth_inches(from),
            to: eighth_inches(to),
            left: eighth_inches(left),
            right: eighth_inches(right),
        }
    }

    /// A piece by height, left and right in eighths of an inch.
    fn shaped(rows: &[[i64; 3]]) -> Piece {
        let stations = rows.iter().map(|row| {
            let [at, left, right] = row.map(eighth_inches);
            OutlineStation { at, left, right }
        });
        let mut piece = Piece::rectangle(GarmentPart::Cloth, inches(1), inches(1));
        piece.stations = stations.collect();
        piece
    }

    /// By hand, in eighths of an inch: on a leg of 140 and 256 the knee is pulled up to 172. A stain about
    /// 56 goes with the lower part, to 56 · 172 / 140 = 68.8, so by 13 whole eighths; one about 198
    /// with the upper one, to 172 + 58 · 84 / 116 = 214, by 16.
    #[test]
    fn a_stain_follows_the_part_of_the_leg_it_is_on() {
        let leg = |knee: i64| shaped(&[[0, -60, 60], [knee, -70, 70], [256, -90, 90]]);
        let moved = |from: i64, to: i64| {
            let stain = place(ZoneKind::Stain, [from, to, 0, 8]);
            let moved = carried(&leg(140), &leg(172), &stain, System::Inch);
            assert_eq!(moved.to - moved.from, stain.to - stain.from);
            moved.from - stain.from
        };
        assert_eq!(moved(54, 58), eighth_inches(13));
        assert_eq!(moved(194, 202), eighth_inches(16));
        // About 46 it is 46 · 32 / 140 = 10.5, a little over the half: by 11.
        assert_eq!(moved(44, 48), eighth_inches(11));
        // Where a station more was measured, it goes by the whole length: from 112 to 128 of 256, at
        // half way of 192.
        let cut = shaped(&[[0, -60, 60], [80, -65, 65], [172, -70, 70], [192, -90, 90]]);
        let stain = place(ZoneKind::Stain, [124, 132, 0, 8]);
        let moved = carried(&leg(140), &cut, &stain, System::Inch);
        assert_eq!([moved.from, moved.to], [92, 100].map(eighth_inches));
    }

    /// By hand, in eighths of an inch, on a cloth of 160 by 240 that turns out 120 by 192: what reached an
    /// edge reaches it, what ended above it ends there, and the rest is as far from the left as before.
    #[test]
    fn what_reached_an_edge_reaches_it_still() {
        let before = shaped(&[[0, 0, 160], [240, 0, 160]]);
        let moved = |rows: &[[i64; 3]], kind, at: [i64; 4]| {
            let moved = carried(&before, &shaped(rows), &place(kind, at), System::Inch);
            [moved.from, moved.to, moved.left, moved.right].map(|l| in_nm(l) * 8 / 25_400_000)
        };
        let less = [[0, 0, 120], [192, 0, 120]];
        let hole = ZoneKind::Hole;
        assert_eq!(moved(&less, hole, [0, 8, 0, 160]), [0, 8, 0, 120]);
        assert_eq!(moved(&less, hole, [232, 240, 0, 160]), [184, 192, 0, 120]);
        assert_eq!(moved(&less, hole, [0, 240, 20, 28]), [0, 192, 20, 28]);
        assert_eq!(
            moved(&less, hole, [200, 240, 150, 160]),
            [152, 192, 110, 120]
        );
        assert_eq!(moved(&less, hole, [0, 8, 0, 30]), [0, 8, 0, 30]);
        // Right where the cloth ends now there is none of it left: it is kept clear at that edge.
        assert_eq!(moved(&less, hole, [0, 8, 120, 130]), [0, 8, 110, 120]);
        assert_eq!(moved(&less, hole, [0, 8, 119, 130]), [0, 8, 119, 130]);
        // On longer cloth the upper hem goes up with the upper edge.
        let longer = [[0, 0, 160], [288, 0, 160]];
        assert_eq!(moved(&longer, hole, [232, 240, 0, 160]), [280, 288, 0, 160]);
        // On cloth that comes in from the left, what reached the left edge reaches as far as it does.
        let slanted = [[0, 0, 120], [192, 16, 120]];
        assert_eq!(
            moved(&slanted, hole, [232, 240, 0, 160]),
            [184, 192, 0, 120]
        );
        // A seam longer than what is left of the cloth ends with it.
        let short = [[16, 0, 160], [116, 0, 160]];
        assert_eq!(moved(&short, hole, [10, 230, 40, 48]), [16, 116, 40, 48]);
        // The left edge 16 farther in: a stain goes with it, the outseam stays on the middle line.
        let aside = [[0, 16, 160], [240, 16, 160]];
        assert_eq!(moved(&aside, hole, [80, 88, 40, 48]), [80, 88, 56, 64]);
        let seam = ZoneKind::Outseam;
        assert_eq!(moved(&aside, seam, [0, 240, 40, 48]), [0, 240, 40, 48]);
        // Where the cloth no longer reaches the outseam, it is kept clear at the edge towards it.
        assert_eq!(moved(&aside, seam, [0, 240, 4, 10]), [0, 240, 16, 22]);
        assert_eq!(moved(&aside, seam, [0, 240, 8, 16]), [0, 240, 16, 24]);
    }

    /// By hand: a hem of 17 in, 9½ in of it on one side, is pulled out by 1 in on the right; its middle
    /// stays, so that it is 2 in wider, 1 in on each side. No end goes below the lower edge.
    #[test]
    fn an_end_that_is_pulled_takes_the_other_along() {
        let piece = shaped(&[[16, -76, 60], [140, -80, 80]]);
        let end = piece.stations[0].right + inches(1);
        let wider = pulled(&piece, 0, end, inches(2), System::Inch);
        let now = wider.stations[0];
        assert_eq!([now.left, now.right], [-84, 68].map(eighth_inches));
        let low = pulled(&piece, 0, piece.stations[0].right, inches(-4), System::Inch);
        assert_eq!(low.stations[0].at, inches(0));
        // Pulled upwards only, a width of half an eighth stays as it was measured.
        let mut odd = piece.clone();
        odd.stations[1].right += eighth_inches(1) / 2;
        let end = odd.stations[1];
        let up = pulled(&odd, 1, end.right, end.at + inches(1), System::Inch).stations[1];
        assert_eq!([up.left, up.right], [end.left, end.right]);
        assert_eq!(up.at, end.at + inches(1));
        // Pulled past the next one, it ends a mark below or above it.
        let past = |n, at| pulled(&piece, n, piece.stations[n].right, at, System::Inch);
        assert_eq!(past(0, inches(90)).stations[0].at, eighth_inches(139));
        assert_eq!(past(1, inches(0)).stations[1].at, eighth_inches(17));
        // Pulled in past the middle, a mark of cloth is left.
        let none = pulled(&piece, 1, inches(-30), piece.stations[1].at, System::Inch);
        let now = none.stations[1];
        assert_eq!(now.right - now.left, eighth_inches(1));
    }
}
