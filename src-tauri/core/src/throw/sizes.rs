//! The size each piece has or will have.
//!
//! A squared-up block is as large as it was left; any other piece is its parts' sum less
//! what their join takes up (its own lap once it is glued, the plan's before), and across
//! the seam as long as its longer part. A block still to be squared up, or to be trimmed
//! again, counts as the smaller of what it holds and the trim size. Where a line of blocks is short and
//! narrower laps are marked along it, they make up for that: the piece is as long as its longest line of
//! blocks less these laps, and no longer than it would be without the shortage.

use crate::measure::{Length, zero};
use crate::plan::assembly::{Rect, Seam};
use crate::throw::facts::{Made, Size};
use crate::throw::index::WorkIndex;
use crate::throw::state::{Throw, WholeMeasure, Work};
use crate::throw::tasks::Task;
use std::cmp::{max, min};
use std::collections::BTreeSet;

impl Throw {
    /// The size a block is trimmed to: the trim size across each side that has two squares.
    pub fn target(&self, block: Rect) -> Size {
        let side = |squares: u16| {
            if squares == 2 {
                self.plan.target()
            } else {
                self.plan.side
            }
        };
        Size {
            width: side(block.cols),
            height: side(block.rows),
        }
    }

    /// The size a piece has, or will have if nothing else goes amiss; see the module.
    pub fn size(&self, piece: Rect) -> Size {
        let known = self.assembly.number(piece);
        known
            .and_then(|n| self.work_index.size(n))
            .unwrap_or_else(|| self.size_from(piece, &WorkIndex::default()))
    }

    /// A piece's size from its parts', which are looked up where they are known.
    pub(crate) fn size_from(&self, piece: Rect, known: &WorkIndex) -> Size {
        let work = self.work.get(&piece);
        let squared = work.and_then(|w| w.squared);
        if let Some(squared) = squared.filter(|_| !self.trims_again(piece)) {
            return squared;
        }
        let Some(join) = self.assembly.join(piece) else {
            return Size {
                width: self.plan.side,
                height: self.plan.side,
            };
        };
        let of = |part: Rect| {
            let found = self.assembly.number(part).and_then(|n| known.size(n));
            found.unwrap_or_else(|| self.size_from(part, known))
        };
        let (a, b) = (of(join.first), of(join.second));
        let made = self.made(piece);
        let taken = made.take(&self.plan);
        let whole = match join.seam {
            Seam::Upright => Size {
                width: a.width + b.width - taken,
                height: max(a.height, b.height),
            },
            Seam::Level => Size {
                width: max(a.width, b.width),
                height: a.height + b.height - taken,
            },
        };
        let made_up = |seam, long| {
            self.made_up(piece, seam, &of)
                .map_or(long, |l| max(long, l))
        };
        let whole = Size {
            width: made_up(Seam::Upright, whole.width),
            height: made_up(Seam::Level, whole.height),
        };
        let whole = if self.turned.contains(&piece) {
            whole.turned()
        } else {
            whole
        };
        if self.assembly.is_block(piece) {
            let held = work.and_then(Work::held).unwrap_or(whole);
            let target = self.target(piece);
            return Size {
                width: min(held.width, target.width),
                height: min(held.height, target.height),
            };
        }
        whole
    }

    /// How long a piece of several blocks is across joins of this kind, by its lines of blocks along which
    /// narrower laps make up for what blocks are short; none where none are marked.
    fn made_up(&self, piece: Rect, seam: Seam, size: &dyn Fn(Rect) -> Size) -> Option<Length> {
        // Two blocks at most: their one lap is that of the join.
        if piece.count() <= 4 {
            return None;
        }
        let across = seam == Seam::Upright;
        let along = |size: Size| if across { size.width } else { size.height };
        let inside = |(a, b, _): &(Rect, Rect, Length)| piece.holds(*a) && piece.holds(*b);
        let marked = self.marks().filter(inside);
        let marked = marked.filter(|(a, b, _)| (a.row == b.row) == across);
        let at = |a: Rect| if across { a.row } else { a.col };
        let lines: BTreeSet<u16> = marked.map(|(a, _, _)| at(a) / 2 * 2).collect();
        let line = |at: u16| -> Vec<Rect> {
            let (from, len) = match across {
                true => (piece.col, piece.cols),
                false => (piece.row, piece.rows),
            };
            let block = |n| match across {
                true => self.block_at(at, n),
                false => self.block_at(n, at),
            };
            (from..from + len).step_by(2).map(block).collect()
        };
        let long = |blocks: Vec<Rect>| {
            let (mut held, mut wanted) = (zero(), zero());
            for block in &blocks {
                held += along(size(*block));
                wanted += along(self.target(*block));
            }
            for pair in blocks.windows(2) {
                let Some(join) = self.joined_by(pair[0], pair[1]) else {
                    continue;
                };
                let made = self.made(join.whole);
                let marked = self.marked(pair[0], pair[1]);
                let usual = marked.map_or(made.lap, |_| self.plan.lap_between());
                let take = |lap| Made { lap, ..made }.take(&self.plan);
                held -= take(marked.unwrap_or(made.lap));
                wanted -= take(usual);
            }
            min(held, wanted)
        };
        lines.into_iter().map(|at| long(line(at))).max()
    }

    /// How often the whole was washed.
    pub fn washes(&self) -> u8 {
        let work = self.work.get(&self.assembly.whole());
        let done = work.map_or(&[][..], |w| &w.done);
        done.iter().filter(|(t, _)| *t == Task::Wash).count() as u8
    }

    /// The whole as last measured, while it is in one piece.
    pub fn measured_whole(&self) -> Option<WholeMeasure> {
        let whole = self.assembly.whole();
        let one = self.assembly.join(whole).is_none() || self.has(whole, Task::Stitch);
        self.wholes.last().filter(|_| one).copied()
    }

    /// The size of the whole.
    pub fn finished(&self) -> Size {
        self.size(self.assembly.whole())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::fabric::Cover;
    use crate::cloth::pile::Use;
    use crate::measure::Count;
    use crate::measure::{
        eighth_inches, half_inches, inches, quarter_inches, sixty_fourths, tenths_of_mm,
    };
    use crate::plan::Plan;
    use crate::plan::{Joining, Stitch};
    use crate::throw::event::Event;
    use crate::throw::facts::{Mishap, Went};
    use proptest::prelude::*;

    fn begun(plan: Plan) -> Throw {
        Throw::begin(&Event::Begun {
            name: "t".into(),
            plan,
            prints: vec![],
            denims: vec![],
            after: None,
        })
        .unwrap()
    }

    #[test]
    fn a_lap_once_glued_keeps_its_measure() {
        let mut throw = begun(Plan {
            across: 2,
            down: 1,
            ..Plan::default()
        });
        let pair = Rect::grid(2, 1);
        throw.apply(
            &Event::Done {
                task: Task::Dot,
                pieces: vec![pair],
                made: vec![],
            },
            0,
        );
        let plan = Plan {
            lap: eighth_inches(3),
            ..throw.plan
        };
        throw.apply(
            &Event::PlanChanged {
                plan,
                spares: Count::NONE,
                glued: vec![],
            },
            1,
        );
        assert_eq!(throw.made(pair).lap, half_inches(1));
        assert_eq!(throw.size(pair).width, half_inches(19));
    }

    /// By hand: a pair seamed 12.7 mm in under needles 4 mm apart keeps 2 · 127 − 2 · 12.7 − 4 =
    /// 224.6 mm, whatever stitch is planned for the seams that are still to be sewn; those keep 228.6.
    #[test]
    fn a_seam_once_sewn_keeps_the_width_of_its_stitching() {
        let plan = Plan {
            across: 2,
            down: 2,
            ..Plan::default().joined(Joining::Exposed)
        };
        let mut throw = begun(plan);
        let pairs = [Rect::from([0, 0, 1, 2]), Rect::from([1, 0, 1, 2])];
        for task in [Task::Pin, Task::Stitch] {
            throw.apply(&done(task, &pairs[..1], &[]), 0);
        }
        let changed = |plan| Event::PlanChanged {
            plan,
            spares: Count::NONE,
            glued: vec![],
        };
        let straight = Plan {
            stitch: Stitch::Straight,
            ..plan
        };
        throw.apply(&changed(straight), 1);
        let widths = pairs.map(|pair| throw.size(pair).width);
        assert_eq!(widths, [tenths_of_mm(2246), tenths_of_mm(2286)]);
        // A seam that is pinned is sewn with the stitch at the machine.
        throw.apply(&done(Task::Pin, &pairs[1..], &[]), 2);
        throw.apply(&changed(plan), 3);
        throw.apply(&done(Task::Stitch, &pairs[1..], &[]), 4);
        assert_eq!(throw.size(pairs[1]).width, tenths_of_mm(2246));
    }

    /// By hand: fours trimmed to 9⅜ in, four rows of them, of which the second holds only 9¼: three times 9⅜
    /// and 9¼ less three laps of ½ are 35⅞ in. With 7/16 at both joins of that row they are 36, which is what
    /// four rows of 9⅜ would be, and with a third lap of 7/16 1/16 in more; one of them gives 1/16 in. Each join
    /// that is marked alike all along is lapped so. Marks in two columns of three still make up for it there, and
    /// leave the joins their own lap.
    #[test]
    fn laps_that_make_up_for_a_short_row_count_in_the_size() {
        let trim = Some(eighth_inches(75));
        let mut throw = begun(Plan {
            trim,
            ..Plan::default()
        });
        assert_eq!(throw.finished().height, inches(36));
        let four = |row: u16, col: u16| Rect::from([row * 2, col * 2, 2, 2]);
        for col in 0..3 {
            let squared = Event::SquaredUp {
                pieces: vec![(four(1, col), eighth_inches(75), quarter_inches(37))],
                unmeasured: None,
            };
            throw.apply(&squared, 0);
        }
        assert_eq!(throw.finished().height, eighth_inches(287));
        let marked = |rows: &[u16], cols: std::ops::Range<u16>| {
            let each = cols.flat_map(|col| rows.iter().map(move |row| (*row, col)));
            let lap = |(row, col)| (four(row, col), four(row + 1, col), Some(sixty_fourths(28)));
            let laps = each.map(lap).collect();
            let after = throw.after(&[Event::LapsMarked { laps }]);
            let upper = after
                .joined_by(four(0, 0), four(1, 0))
                .map(|join| after.made(join.whole).lap);
            let own = rows.contains(&0) && after.marks().count() == 3 * rows.len();
            assert_eq!(
                upper,
                Some(if own {
                    sixty_fourths(28)
                } else {
                    half_inches(1)
                })
            );
            after.finished()
        };
        let width = throw.finished().width;
        assert_eq!(marked(&[0, 1], 0..3).height, inches(36));
        assert_eq!(marked(&[0], 0..3).height, sixty_fourths(36 * 64 - 4));
        assert_eq!(marked(&[0, 1], 0..2).height, inches(36));
        assert_eq!(
            marked(&[0, 1, 2], 0..3).height,
            inches(36) + sixty_fourths(4)
        );
        assert_eq!(
            marked(&[2], 0..3).height,
            eighth_inches(287) + sixty_fourths(4)
        );
        assert_eq!(marked(&[0, 1], 0..3).width, width);
    }

    fn made(lap: i64) -> Made {
        Made {
            joining: Joining::Lapped,
            lap: sixty_fourths(lap),
            stitch: Stitch::Straight,
        }
    }

    fn done(task: Task, pieces: &[Rect], made: &[Made]) -> Event {
        Event::Done {
            task,
            pieces: pieces.to_vec(),
            made: made.to_vec(),
        }
    }

    #[test]
    fn a_join_is_made_as_the_event_says_whatever_is_planned() {
        let plan = Plan {
            across: 4,
            down: 2,
            ..Plan::default()
        };
        let pairs = [Rect::from([0, 0, 1, 2]), Rect::from([1, 0, 1, 2])];
        let marks = Event::LapsMarked {
            laps: vec![(
                Rect::square(0, 0),
                Rect::square(0, 1),
                Some(sixty_fourths(30)),
            )],
        };
        for lap in [24, 32, 40] {
            let plan = Plan {
                lap: sixty_fourths(lap),
                ..plan
            };
            let mut throw = begun(plan);
            throw.apply(&marks, 0);
            // One for each, and then one for all.
            throw.apply(&done(Task::Dot, &pairs, &[made(20), made(21)]), 0);
            assert_eq!(
                pairs.map(|p| throw.made(p).lap),
                [sixty_fourths(20), sixty_fourths(21)]
            );
            throw.apply(&done(Task::Stitch, &pairs, &[made(22)]), 0);
            assert_eq!(pairs.map(|p| throw.made(p)), [made(22), made(22)]);
            // Where it is not said, the plan and the marks are asked.
            let mut throw = begun(plan);
            throw.apply(&marks, 0);
            throw.apply(&done(Task::Dot, &pairs, &[]), 0);
            assert_eq!(
                pairs.map(|p| throw.made(p).lap),
                [sixty_fourths(30), sixty_fourths(lap)]
            );
            assert_eq!(throw.made(pairs[0]).stitch, plan.stitch);
        }
    }

    #[test]
    fn cut_squares_go_where_the_event_says_whatever_is_open() {
        use crate::cloth::garments::{Precut, Source};
        use crate::cloth::pile::Heap;
        use crate::cloth::weight::Cloth;
        let mut throw = begun(Plan {
            across: 3,
            down: 2,
            ..Plan::default()
        });
        let pack = Source::Precut(Precut {
            name: "Pack".into(),
            side: sixty_fourths(320),
            count: Count::from(40),
        });
        let heap = Heap::new(pack, Use::ANY_DENIM, Cloth::denim());
        throw.apply(&Event::HeapSet { n: 1, heap }, 0);
        let cut = |went| Event::PieceCut {
            strips: None,
            pieced: None,
            n: 1,
            piece: 0,
            squares: Count::from(4),
            went,
        };
        let places = vec![Rect::square(1, 2), Rect::square(0, 1)];
        let went = Went::Squares {
            places: places.clone(),
            spares: Count::from(2),
        };
        let said = throw.after(&[cut(Some(went))]);
        let is_cut = |throw: &Throw| -> Vec<Rect> {
            let all = throw.assembly().whole().squares();
            all.filter(|s| throw.has(*s, Task::Cut)).collect()
        };
        assert_eq!(is_cut(&said), [Rect::square(0, 1), Rect::square(1, 2)]);
        assert_eq!(
            (said.spares, said.pile[&1].counted[0]),
            (Count::from(2), Some(Count::from(4)))
        );
        // Where it is not said: the first that are open.
        let unsaid = throw.after(&[cut(None)]);
        let first: Vec<Rect> = throw.assembly().whole().squares().take(4).collect();
        assert_eq!((is_cut(&unsaid), unsaid.spares), (first, Count::from(0)));
    }

    #[test]
    fn a_square_is_pressed_once_more_as_the_event_says() {
        let square = Rect::square(0, 0);
        let mut throw = begun(Plan::default());
        for task in [Task::Cut, Task::PressCover, Task::CoolCover] {
            throw.apply(&done(task, &[square], &[]), 0);
        }
        let cover = Cover {
            back: Some(0),
            ..Cover::default()
        };
        for (again, pressed) in [
            (None, false),
            (Some(vec![]), true),
            (Some(vec![square]), false),
        ] {
            let faces = vec![(square, cover)];
            let after = throw.after(&[Event::FacesChanged {
                faces,
                again,
                by_hand: None,
            }]);
            assert_eq!(after.has(square, Task::PressCover), pressed);
        }
    }

    #[test]
    fn what_is_set_aside_is_as_large_as_the_event_says() {
        let four = Rect::from([0, 0, 2, 2]);
        let throw = begun(Plan::default());
        let size = |sizes: Vec<(Length, Length)>| {
            let pieces = vec![four];
            throw.after(&[Event::SetAside { pieces, sizes }]).aside[0].size
        };
        let said = size(vec![(sixty_fourths(600), sixty_fourths(601))]);
        assert_eq!(
            (said.width, said.height),
            (sixty_fourths(600), sixty_fourths(601))
        );
        assert_eq!(size(vec![]), throw.size(four));
    }

    #[test]
    fn seams_are_opened_for_a_square_where_the_event_says_so() {
        let (square, pair) = (Rect::square(0, 0), Rect::from([0, 0, 1, 2]));
        let other = Rect::from([0, 2, 1, 2]);
        let opened = |opened: Option<bool>, last: &[Rect]| {
            let mut throw = begun(Plan::default());
            for piece in last {
                let pieces = vec![(*piece, sixty_fourths(320))];
                let glued = throw.are_only_glued(&pieces);
                let opened = Event::Unpicked {
                    pieces,
                    glued,
                    in_part: vec![],
                    binding: false,
                    block: None,
                    held: vec![],
                };
                throw.apply(&opened, 0);
            }
            let spoilt = Event::Spoilt {
                piece: square,
                why: Mishap::Flaw,
                opened,
            };
            throw.apply(&spoilt, 1);
            throw
                .seams_to_unpick
                .iter()
                .any(|o| o.square == Some(square))
        };
        // Where the event says it, other seams may have been opened since; else only if it was the last.
        assert!(opened(Some(true), &[pair, other]) && opened(Some(true), &[pair]));
        assert!(!opened(Some(false), &[pair]) && !opened(Some(true), &[other]));
        assert!(opened(None, &[other, pair]) && !opened(None, &[pair, other]));
    }

    #[test]
    fn a_short_block_makes_its_own_row_short() {
        let mut throw = begun(Plan {
            across: 4,
            down: 2,
            ..Plan::default()
        });
        let four = Rect::from([0, 0, 2, 2]);
        let short = quarter_inches(37);
        throw.apply(
            &Event::Measured {
                piece: four,
                width: short,
                height: inches(10),
            },
            0,
        );
        assert_eq!(
            throw.finished(),
            Size {
                width: short + inches(9),
                height: half_inches(19)
            }
        );
    }

    proptest! {
        #[test]
        fn with_nothing_done_the_sum_of_the_parts_is_the_plan(
            across in 1u16..=60, down in 1u16..=60, which in 0usize..3, trim in 0i64..64,
            joining in prop::sample::select(vec![Joining::Lapped, Joining::Seamed, Joining::Exposed]),
            width in 0i64..90, between in prop::option::of(20i64..40),
        ) {
            use crate::plan::JoinOrder::*;
            let stitch = Stitch::Zigzag { width: tenths_of_mm(width) };
            let between = between.map(sixty_fourths);
            let order = [Rows, Columns, Doubling][which];
            let mut plan = Plan { across, down, order, stitch, between, ..Plan::default().joined(joining) };
            plan.trim = Some(plan.natural_four() - sixty_fourths(trim));
            let size = begun(plan).finished();
            prop_assert_eq!((size.width, size.height), plan.finished());
        }
    }
}
