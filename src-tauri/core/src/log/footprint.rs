//! What an event touches and what it depends on. This decides whether two events that were made
//! on two copies of a throw can both stand.
//!
//! Promise, kept by the properties of [`crate::log::merge`]: when the footprints of two events do
//! not clash ([`Footprint::clashes`]) and both were made in the same state, either may
//! come first; each means the same after the other as it did without it.
//!
//! Limits: footprints are cautious. Two steps on one square clash even where they might agree,
//! and every step clashes with a change of the plan.

use crate::cloth::pile::Use;
use crate::plan::MOST;
use crate::plan::assembly::Rect;
use crate::throw::tasks::Task;
use crate::throw::{Event, Item, Throw, Went};

/// One thing an event may touch or rest on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Aspect {
    /// What the throw is called.
    Name,
    /// Whether it is put away.
    Shelf,
    /// Laps, sizes, stitch: what the next step is made by.
    Plan,
    /// Which places there are.
    Grid,
    /// The lists of fabrics and denims.
    Cloth,
    /// How many squares of a print are left to place.
    Stock(u8),
    /// Squares at hand without a place.
    Spares,
    /// All that is done within these places.
    Place(Rect),
    /// Which squares are cut, within these places.
    Cuts(Rect),
    /// A heap of the pile.
    Heap(u16),
    /// How the faces are to look.
    Wishes,
    /// The opening of the plate.
    Plate,
    /// Something to have at hand.
    Item(Item),
    /// A photo of the story, by the beginning of its name.
    Photo(u64),
}

impl Aspect {
    fn meets(self, other: Aspect) -> bool {
        match (self, other) {
            (Aspect::Place(a), Aspect::Place(b)) | (Aspect::Cuts(a), Aspect::Cuts(b)) => {
                overlap(a, b)
            }
            _ => self == other,
        }
    }
}

fn overlap(a: Rect, b: Rect) -> bool {
    let far = |start: u16, len: u16| u32::from(start) + u32::from(len);
    let along = |a: (u16, u16), b: (u16, u16)| {
        u32::from(a.0) < far(b.0, b.1) && u32::from(b.0) < far(a.0, a.1)
    };
    along((a.row, a.rows), (b.row, b.rows)) && along((a.col, a.cols), (b.col, b.cols))
}

/// Every place there can be.
fn everywhere() -> Rect {
    Rect::grid(MOST, MOST)
}

/// What an event touches and what it rests on.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Footprint {
    /// What it changes.
    touches: Vec<Aspect>,
    /// What must stay as it was for the event to mean the same.
    needs: Vec<Aspect>,
}

impl Footprint {
    /// Of events that happened one after another, the first to this throw.
    pub fn of(throw: &Throw, events: &[Event]) -> Footprint {
        let mut all = Footprint::default();
        let mut state = None;
        for event in events {
            let before = state.as_ref().unwrap_or(throw);
            let one = footprint(before, event);
            all.add(&one);
            if events.len() > 1 {
                state = Some(before.after([event]));
            }
        }
        all
    }

    /// Take in another.
    pub fn add(&mut self, other: &Footprint) {
        for part in &other.touches {
            if !self.touches.contains(part) {
                self.touches.push(*part);
            }
        }
        for part in &other.needs {
            if !self.needs.contains(part) {
                self.needs.push(*part);
            }
        }
    }

    /// Whether one changes what the other changes or rests on.
    pub fn clashes(&self, other: &Footprint) -> bool {
        let meet = |a: &[Aspect], b: &[Aspect]| a.iter().any(|x| b.iter().any(|y| x.meets(*y)));
        meet(&self.touches, &other.touches)
            || meet(&self.touches, &other.needs)
            || meet(&self.needs, &other.touches)
    }
}

fn places<'a>(pieces: impl IntoIterator<Item = &'a Rect>) -> Vec<Aspect> {
    pieces.into_iter().map(|p| Aspect::Place(*p)).collect()
}

/// The footprint of one event on the throw it happens to.
///
/// Every kind of event has its line here: what it changes goes into `touches`, what it was
/// decided by into `needs`. When in doubt name more.
fn footprint(throw: &Throw, event: &Event) -> Footprint {
    let mut needs = Vec::new();
    let touches = match event {
        Event::Begun { .. } => vec![Aspect::Place(everywhere()), Aspect::Plan, Aspect::Grid],
        Event::Renamed { .. } => vec![Aspect::Name],
        Event::Archived { .. } => vec![Aspect::Shelf],
        Event::PlanChanged { plan, spares, .. } => {
            let mut touches = vec![Aspect::Plan];
            let old = &throw.plan;
            if (plan.across, plan.down, plan.order) != (old.across, old.down, old.order) {
                let all = everywhere();
                touches.extend([Aspect::Grid, Aspect::Place(all), Aspect::Cuts(all)]);
            }
            if *spares > 0 {
                touches.push(Aspect::Spares);
            }
            touches
        }
        Event::FacesChanged { faces, .. } => {
            needs.push(Aspect::Cloth);
            let mut touches = places(faces.iter().map(|(piece, _)| piece));
            for (piece, cover) in faces {
                let before = throw.cover(*piece);
                // A fabric put on takes from what is left; one taken off gives back.
                for print in [cover.front, cover.back, before.front, before.back] {
                    let known = print.and_then(|p| Some((p, throw.prints.get(usize::from(p))?)));
                    if let Some((print, cloth)) = known
                        && cloth.stock.is_some()
                        && !touches.contains(&Aspect::Stock(print))
                    {
                        touches.push(Aspect::Stock(print));
                    }
                }
            }
            touches
        }
        Event::ClothChanged { .. } => vec![Aspect::Cloth],
        Event::Done { task, pieces, .. } => {
            needs.push(Aspect::Plan);
            let mut touches = places(pieces);
            if *task == Task::Cut {
                touches.extend(pieces.iter().map(|p| Aspect::Cuts(*p)));
            }
            touches
        }
        Event::SparesUsed { pieces, .. } => {
            needs.push(Aspect::Plan);
            let mut touches = places(pieces);
            touches.extend(pieces.iter().map(|p| Aspect::Cuts(*p)));
            touches.push(Aspect::Spares);
            touches
        }
        Event::SquareMoved { from, to } => {
            needs.push(Aspect::Plan);
            let both = [*from, *to];
            let mut touches = places(&both);
            touches.extend(both.map(Aspect::Cuts));
            touches
        }
        Event::SparesCounted { .. } => {
            needs.push(Aspect::Plan);
            vec![Aspect::Spares]
        }
        Event::Measured { piece, .. } => {
            needs.push(Aspect::Plan);
            vec![Aspect::Place(*piece)]
        }
        Event::Outlined { piece, .. } => vec![Aspect::Place(*piece)],
        Event::LapsMarked { laps } => {
            needs.push(Aspect::Plan);
            places(laps.iter().flat_map(|(a, b, _)| [a, b]))
        }
        Event::Patched { piece, .. } => vec![Aspect::Place(*piece)],
        Event::LaidOn { squares } => {
            // What it is trimmed to comes of the laps.
            needs.push(Aspect::Plan);
            places(squares.iter().map(|(square, _, _)| square))
        }
        Event::Unpicked {
            pieces, binding, ..
        } => {
            needs.push(Aspect::Plan);
            let mut touches = places(pieces.iter().map(|(piece, _)| piece));
            if *binding {
                touches.push(Aspect::Place(throw.assembly().whole()));
            }
            touches
        }
        Event::Moved { moves } => {
            let rects = || moves.iter().flat_map(|(from, to)| [from, to]);
            let mut touches = places(rects());
            touches.extend(rects().map(|p| Aspect::Cuts(*p)));
            touches
        }
        Event::Turned { pieces } => {
            needs.push(Aspect::Plan);
            let mut touches = places(pieces.iter().map(|(piece, _)| piece));
            touches.extend(pieces.iter().map(|(piece, _)| Aspect::Cuts(*piece)));
            touches
        }
        Event::Flipped { pieces } | Event::Pinned { pieces, .. } => places(pieces),
        Event::Wished { .. } => vec![Aspect::Wishes],
        Event::SetAside { pieces, .. } => {
            needs.push(Aspect::Plan);
            let mut touches = places(pieces);
            touches.extend(pieces.iter().map(|p| Aspect::Cuts(*p)));
            touches
        }
        Event::WholeMeasured { .. } => {
            needs.push(Aspect::Plan);
            vec![Aspect::Place(throw.assembly().whole())]
        }
        Event::SquaredUp { pieces, .. } => {
            needs.push(Aspect::Plan);
            places(pieces.iter().map(|(piece, _, _)| piece))
        }
        Event::Spoilt { piece, .. } => vec![Aspect::Place(*piece), Aspect::Cuts(*piece)],
        Event::HeapSet { n, heap } => {
            if heap.makes != Use::ANY_DENIM {
                needs.push(Aspect::Cloth);
            }
            vec![Aspect::Heap(*n)]
        }
        Event::HeapTaken { n } => vec![Aspect::Heap(*n)],
        Event::PieceCut {
            n,
            went: Some(went),
            ..
        } => {
            let mut touches = vec![Aspect::Heap(*n)];
            match went {
                Went::Stock { print } => touches.extend([Aspect::Cloth, Aspect::Stock(*print)]),
                // That the places are open and of the heap's denim is theirs and the heap's.
                Went::Squares { places: to, spares } => {
                    needs.push(Aspect::Plan);
                    touches.extend(places(to));
                    touches.extend(to.iter().map(|s| Aspect::Cuts(*s)));
                    if *spares > 0 {
                        touches.push(Aspect::Spares);
                    }
                }
            }
            touches
        }
        Event::PieceCut {
            n,
            squares,
            went: None,
            ..
        } => {
            let mut touches = vec![Aspect::Heap(*n)];
            match throw.pile.get(n).map(|heap| heap.makes) {
                Some(Use::Fabric { print }) => {
                    touches.extend([Aspect::Cloth, Aspect::Stock(print)])
                }
                // The squares go to the open places in order, so it rests on which are open,
                // and on their denim where the heap names one.
                makes => {
                    needs.extend([Aspect::Plan, Aspect::Cuts(everywhere())]);
                    let denim = match makes {
                        Some(Use::Denim { denim }) => denim,
                        _ => None,
                    };
                    if denim.is_some() {
                        needs.push(Aspect::Place(everywhere()));
                    }
                    let filled: Vec<Rect> =
                        throw.uncut(denim).take(squares.get() as usize).collect();
                    touches.extend(places(&filled));
                    touches.extend(filled.iter().map(|s| Aspect::Cuts(*s)));
                    if filled.len() < squares.get() as usize {
                        touches.push(Aspect::Spares);
                    }
                }
            }
            touches
        }
        Event::PieceBegun { n, .. } => vec![Aspect::Heap(*n)],
        Event::ScrapTried { .. } => Vec::new(),
        Event::PlateMeasured { .. } => vec![Aspect::Plate],
        Event::Gathered { item, .. } => {
            if matches!(item, Item::Fabric { .. }) {
                needs.push(Aspect::Cloth);
            }
            vec![Aspect::Item(*item)]
        }
        Event::Unpictured { photo } => vec![Aspect::Photo(photo.short())],
        Event::Pictured { photo, piece, .. } => {
            if piece.is_some() {
                needs.push(Aspect::Grid);
            }
            vec![Aspect::Photo(photo.short())]
        }
        Event::Noted { piece, .. } => {
            if piece.is_some() {
                needs.push(Aspect::Grid);
            }
            Vec::new()
        }
    };
    Footprint { touches, needs }
}
