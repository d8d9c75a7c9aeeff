//! Faces in the window, a square to a unit: the one that is worked on with its signs, a
//! part of the floor, and layouts to choose from.

use super::canvas::Canvas;
use super::face::{FaceGrid, FaceMap, LaidSquare, borders, grain, joins, lines, threads};
use crate::cloth::fabric::{Cover, Face};
use crate::plan::assembly::Rect;
use crate::show::context::Context;
use crate::show::names;
use crate::show::picture::{Hold, Ink, InkKey, Picture};
use crate::throw::Throw;
use crate::throw::tasks::{Task, cover_task};

/// After how many squares the figure of a print comes again.
const REPEAT: f64 = 0.5;
/// Most threads drawn along the raw edge.
const MOST_THREADS: f64 = 600.0;
/// Squares in one part of the floor, across: two fours, large enough on a phone. A narrower
/// part is not drawn larger.
pub(in crate::show) const FLOOR_WIDTH: u16 = 4;

const UNIT: &FaceGrid = &FaceGrid::UNIT;
/// Signs on a square, measured from its upper left corner.
const STAYS: &str = "m.17 .06l.11 .11 -.11 .11 -.11 -.11z";
const PIN: &str = "m.26 .26l.16 .16m-.14 -.24a.1 .1 0 1 0 -.2 0a.1 .1 0 1 0 .2 0";
const RING: &str = "m.1 .5a.4 .4 0 1 0 .8 0a.4 .4 0 1 0 -.8 0z";

/// A face as it is worked on.
pub(in crate::show) struct Worked<'a> {
    /// The throw.
    pub(in crate::show) throw: &'a Throw,
    /// Which face.
    pub(in crate::show) face: Face,
    /// Borders of the pieces that go as one, as they are seen.
    pub(in crate::show) units: &'a [Rect],
    /// Squares that a wish would keep apart, as they are seen.
    pub(in crate::show) clashes: &'a [(Rect, Rect)],
}

impl Worked<'_> {
    fn stays(&self, square: Rect) -> bool {
        self.throw.is_joined(square) || self.throw.has(square, cover_task(self.face))
    }

    fn sewn(&self) -> String {
        let stitched = |whole| self.throw.has(whole, Task::Stitch);
        let found = joins(self.throw, self.face, None, |join| stitched(join.whole));
        lines(&found, UNIT, 0.0)
    }

    /// The face: cloth, letters, what stays, what goes as one piece, what is pinned, the laps
    /// sewn so far with their fringe, and like fabrics that touch.
    pub(in crate::show) fn picture(&self, spoken: String, context: Context<'_>) -> Picture {
        let mut d = Canvas::default();
        let map = FaceMap::of(self.throw, self.face);
        let (across, down) = (f64::from(map.across), f64::from(map.down));
        let step = ((across + down) * 2.0 / MOST_THREADS).max(1.0 / 12.0);
        let raw = threads([0.0, 0.0, across, down], 0.08, step);
        d.shape(raw, Ink::Threads, None);
        map.paint(&mut d, UNIT);
        map.edges(&mut d, UNIT);
        d.shape(borders(self.units, UNIT, 0.05), Ink::Unit, None);
        let sewn = self.sewn();
        d.shape(sewn.clone(), Ink::Fringe, None);
        d.shape(sewn, Ink::Sewn, None);
        map.letters(&mut d, UNIT, 0.36, 0.02);
        if self.face == Face::Front {
            wrong(&mut d, &map, 0.26, context);
        }
        // Drawn only where it runs across.
        let crosswise = |laid: &LaidSquare| self.throw.cover(laid.square).crosswise;
        let at = map.spots([0.8, 0.84], crosswise);
        d.stamp(&grain(true, 0.13), at, Ink::Grain, None);
        let pinned = |laid: &LaidSquare| self.throw.is_pinned(laid.square);
        let stays = |laid: &LaidSquare| self.stays(laid.square) && !pinned(laid);
        d.stamp(STAYS, map.spots([0.0, 0.0], stays), Ink::Stays, None);
        d.stamp(PIN, map.spots([0.0, 0.0], pinned), Ink::Pin, None);
        let ties = self.clashes.iter().map(|(a, b)| tie(*a, *b));
        d.shape(ties.collect(), Ink::Clash, None);
        d.picture([f64::from(map.across), down], REPEAT, spoken)
    }

    /// The signs that are on it, each with its words.
    pub(in crate::show) fn signs(&self, context: Context<'_>) -> Vec<InkKey> {
        let throw = self.throw;
        let map = FaceMap::of(throw, self.face);
        let any = |holds: &dyn Fn(Rect) -> bool| map.squares.iter().any(|l| holds(l.square));
        let pinned = |square| throw.is_pinned(square);
        let mut out = Vec::new();
        let mut sign = |there: bool, key: &str, paint: &dyn Fn(&mut Canvas)| {
            if there {
                let mut d = Canvas::default();
                paint(&mut d);
                out.push(InkKey {
                    picture: d.picture([1.0, 1.0], REPEAT, String::new()),
                    label: context.say(key, &[]),
                });
            }
        };
        let shape = |d: &str, ink| {
            let d = d.to_string();
            move |canvas: &mut Canvas| canvas.shape(d.clone(), ink, None)
        };
        sign(
            !self.clashes.is_empty(),
            "sign-clash",
            &shape("M.2 .5H.8M.38 .38l.24 .24M.38 .62l.24 -.24", Ink::Clash),
        );
        sign(
            any(&|s| self.stays(s) && !pinned(s)),
            "sign-stays",
            &shape("M.5 .2l.3 .3 -.3 .3 -.3 -.3z", Ink::Stays),
        );
        sign(
            any(&pinned),
            "sign-pin",
            &shape(
                "M.46 .46l.33 .33M.5 .33a.17 .17 0 1 0 -.34 0a.17 .17 0 1 0 .34 0",
                Ink::Pin,
            ),
        );
        sign(
            !self.units.is_empty(),
            "sign-unit",
            &shape("M.12 .12h.76v.76h-.76z", Ink::Unit),
        );
        let pieced = map.squares.iter().any(|laid| laid.pieced);
        sign(pieced, "sign-pieced", &|d| {
            d.words([0.5, 0.5], "½".into(), 0.6);
        });
        sign(!self.sewn().is_empty(), "sign-lap", &|d| {
            d.shape("M0 .5H1".into(), Ink::Fringe, None);
            d.shape("M0 .5H1".into(), Ink::Sewn, None);
        });
        let reverse = map.kinds.iter().find(|kind| kind.shown.is_wrong());
        sign(reverse.is_some(), "sign-wrong", &|d| {
            let cloth = reverse.map(|kind| kind.cloth.clone());
            d.named_area([0.0, 0.0, 1.0, 1.0], Ink::Cloth, cloth, None);
            if self.face == Face::Front {
                let letter = say!(context, "sign-wrong-letter");
                d.letters(&letter, 0.66, vec![[0.5, 0.52]], Ink::Wrong);
            }
        });
        sign(
            any(&|s| throw.cover(s).crosswise),
            "sign-grain",
            &shape(&format!("M.5 .5{}", grain(true, 0.38)), Ink::Grain),
        );
        out
    }
}

/// The letter for the wrong side on the squares that show it.
fn wrong(d: &mut Canvas, map: &FaceMap, size: f64, context: Context<'_>) {
    let wrong = |laid: &LaidSquare| laid.shown.is_wrong();
    let letter = say!(context, "sign-wrong-letter");
    d.letters(&letter, size, map.spots([0.5, 0.52], wrong), Ink::Wrong);
}

/// A tie over the edge or corner where two are alike, with a cross in its middle.
fn tie(a: Rect, b: Rect) -> String {
    let middle = |p: u16, q: u16| (f64::from(p) + f64::from(q)) / 2.0 + 0.5;
    let reach = |p: u16, q: u16| (f64::from(q) - f64::from(p)) * 0.18;
    let (x, y) = (middle(a.col, b.col), middle(a.row, b.row));
    let (dx, dy) = (reach(a.col, b.col), reach(a.row, b.row));
    format!(
        "M{} {}L{} {}M{} {}l.16 .16m-.16 0l.16 -.16",
        x - dx,
        y - dy,
        x + dx,
        y + dy,
        x - 0.08,
        y - 0.08
    )
}

/// Squares as they lie on the floor, front up, each with its label, its letters, those of the
/// fabric beneath, and its grain.
pub(in crate::show) fn floor(throw: &Throw, area: Rect, context: Context<'_>) -> Picture {
    let mut d = Canvas::default();
    let map = FaceMap::within(throw, area);
    map.paint(&mut d, UNIT);
    map.edges(&mut d, UNIT);
    let stitched = |whole| throw.has(whole, Task::Stitch);
    let found = joins(throw, Face::Front, Some(area), |join| stitched(join.whole));
    let sewn = lines(&found, UNIT, 0.0);
    d.shape(sewn.clone(), Ink::Fringe, None);
    d.shape(sewn, Ink::Sewn, None);
    for laid in &map.squares {
        let at = UNIT.spot(laid, [0.06, 0.16]);
        let label = names::square(laid.square);
        d.held(at, label, 0.17, (Ink::Number, Hold::Start));
    }
    map.letters(&mut d, UNIT, 0.36, 0.0);
    wrong(&mut d, &map, 0.28, context);
    let letters = throw.letters();
    for laid in &map.squares {
        let under = throw.cover(laid.square).back;
        if let Some(letters) = under.and_then(|print| letters.get(usize::from(print))) {
            d.stamp(
                "h.3",
                vec![UNIT.spot(laid, [0.35, 0.71])],
                Ink::Beneath,
                None,
            );
            let at = UNIT.spot(laid, [0.5, 0.85]);
            d.letters(letters, 0.22, vec![at], Ink::Letters);
        }
    }
    for crosswise in [false, true] {
        let lies = |laid: &LaidSquare| throw.cover(laid.square).crosswise == crosswise;
        let at = map.spots([0.83, 0.8], lies);
        d.stamp(&grain(crosswise, 0.13), at, Ink::Grain, None);
    }
    let size = [map.across.max(FLOOR_WIDTH), map.down].map(f64::from);
    d.picture(size, REPEAT, String::new())
}

/// A face as it would be with these covers, with a ring round what would change.
pub(in crate::show) fn layout(
    throw: &Throw,
    covers: &[Cover],
    face: Face,
    changes: impl Fn(&Cover, &Cover) -> bool,
    spoken: String,
) -> Picture {
    let mut d = Canvas::default();
    let map = FaceMap::with(throw, covers, face);
    map.paint(&mut d, UNIT);
    map.edges(&mut d, UNIT);
    let across = usize::from(throw.plan.across);
    let place = |square: Rect| usize::from(square.row) * across + usize::from(square.col);
    let new = |laid: &LaidSquare| {
        let cover = covers.get(place(laid.square));
        cover.is_some_and(|cover| changes(&throw.cover(laid.square), cover))
    };
    d.stamp(RING, map.spots([0.0, 0.0], new), Ink::Ring, None);
    map.letters(&mut d, UNIT, 0.5, 0.03);
    d.picture([map.across, map.down].map(f64::from), REPEAT, spoken)
}
