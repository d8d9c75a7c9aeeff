//! The clothes pile: what squares are to come from, and what really came out.
//!
//! Each [`Heap`] is a garment, cloth off the roll, or a pack of squares, and says what it
//! is for: denim for the squares, of one of the throw's denims or of any, or one of the
//! fabrics. What a piece will give is worked out in [`crate::cloth::cutting`]; what it gave is
//! counted by the maker, and from then on the count stands.

use crate::cloth::cutting::Cutting;
use crate::cloth::garments::Source;
use crate::cloth::halves;
use crate::cloth::ways::{CutWay, laid};
use crate::cloth::weight::Cloth;
use crate::measure::{Count, Length, zero};
use crate::plan::{Joining, Plan};
use crate::types::TS;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// How squares of this side are cut: at every eighth of an inch, nothing to trim.
pub fn how(side: Length) -> Cutting {
    Cutting {
        side,
        ..Cutting::default()
    }
}

/// What a heap is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case", tag = "for")]
pub enum Use {
    /// The denim squares.
    Denim {
        /// Those of this denim of the throw's, counted from 0; any of them where it was not
        /// said.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[ts(optional)]
        denim: Option<u8>,
    },
    /// Fabric squares of a print.
    Fabric {
        /// The print, counted from 0.
        print: u8,
    },
}

impl Use {
    /// For denim squares, whichever.
    pub const ANY_DENIM: Use = Use::Denim { denim: None };

    /// Whether denim squares come from it.
    pub fn is_denim(self) -> bool {
        matches!(self, Use::Denim { .. })
    }
}

/// One garment, length of cloth or pack.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct Heap {
    /// What it is.
    pub from: Source,
    /// What it is for.
    pub makes: Use,
    /// What is known of its cloth.
    pub cloth: Cloth,
    /// Squares are cut so much larger, to be trimmed later; nothing for rotary cutting.
    pub trimming: Length,
    /// Squares counted from each piece cut up so far, by piece.
    pub counted: Vec<Option<Count>>,
    /// Pieces that took over the outline of their other half, and of which nobody has said
    /// since where they are worn.
    #[serde(default, skip_serializing_if = "BTreeSet::is_empty")]
    #[ts(as = "Option<Vec<u8>>", optional)]
    pub worn_unsaid: BTreeSet<u8>,
    /// How pieces are cut that are not cut the plain way.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty", with = "by_piece")]
    #[ts(as = "Option<Vec<(u8, CutWay)>>", optional)]
    pub ways: BTreeMap<u8, CutWay>,
    /// Of the squares counted, how many are pieced of two halves, by piece, where some are.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty", with = "by_piece")]
    #[ts(as = "Option<Vec<(u8, Count)>>", optional)]
    pub pieced: BTreeMap<u8, Count>,
}

/// Ways or counts by piece as a list of pairs: numbers as names of a JSON object are not read again
/// inside an entry.
mod by_piece {
    use super::BTreeMap;
    use serde::{Deserialize, Deserializer, Serialize, Serializer};

    pub(super) fn serialize<T: Serialize, S: Serializer>(
        each: &BTreeMap<u8, T>,
        to: S,
    ) -> Result<S::Ok, S::Error> {
        to.collect_seq(each)
    }

    pub(super) fn deserialize<'de, T: Deserialize<'de>, D: Deserializer<'de>>(
        from: D,
    ) -> Result<BTreeMap<u8, T>, D::Error> {
        let list = Vec::<(u8, T)>::deserialize(from)?;
        Ok(list.into_iter().collect())
    }
}

impl Heap {
    /// Whether it is to be washed and pressed before it is cut: squares ready cut are not, since
    /// their raw edges would fray and draw in.
    pub fn wash_first(&self) -> bool {
        !self.cloth.washed && matches!(self.from, Source::Cloth(_))
    }

    /// A heap nothing has been cut from.
    pub fn new(from: Source, makes: Use, cloth: Cloth) -> Heap {
        let pieces = match &from {
            Source::Cloth(garment) => garment.pieces.len(),
            Source::Precut(_) => 1,
        };
        Heap {
            from,
            makes,
            cloth,
            trimming: zero(),
            counted: vec![None; pieces],
            worn_unsaid: BTreeSet::new(),
            ways: BTreeMap::new(),
            pieced: BTreeMap::new(),
        }
    }

    /// Whether something was cut from it.
    pub fn is_cut(&self) -> bool {
        self.counted.iter().any(Option::is_some)
    }

    /// Whether it can still be said to be for that: what was counted has gone to the
    /// squares, or to a print's stock, so from then on only which denim it is can change.
    pub fn may_make(&self, makes: Use) -> bool {
        let denim = self.makes.is_denim() && makes.is_denim();
        makes == self.makes || denim || !self.is_cut()
    }

    /// What the maker calls it.
    pub fn name(&self) -> &str {
        match &self.from {
            Source::Cloth(garment) => &garment.name,
            Source::Precut(pack) => &pack.name,
        }
    }

    /// How a piece is cut.
    pub fn way(&self, piece: usize) -> CutWay {
        let own = u8::try_from(piece).ok().and_then(|i| self.ways.get(&i));
        own.copied().unwrap_or_default()
    }

    /// How its squares are cut for a plan. Halves of squares are lapped as the throw's squares are,
    /// so that a throw with seams has none.
    pub fn how(&self, plan: &Plan) -> Cutting {
        let cut = Cutting {
            trimming: self.trimming,
            ..how(plan.side)
        };
        let half = halves::width(cut.cut_side(), plan.lap);
        let lapped = plan.joining == Joining::Lapped && plan.lap > zero();
        let half = (lapped && half < cut.cut_side()).then_some(half);
        Cutting { half, ..cut }
    }

    /// Squares of a piece that are pieced of halves, counted.
    pub fn counted_pieced(&self, piece: usize) -> Count {
        let own = u8::try_from(piece).ok().and_then(|i| self.pieced.get(&i));
        own.copied().unwrap_or_default()
    }

    /// Squares for this plan that one piece is expected to give.
    pub fn expected(&self, piece: usize, plan: &Plan) -> Count {
        match &self.from {
            Source::Cloth(garment) => garment
                .pieces
                .get(piece)
                .and_then(|p| laid(p, &self.how(plan), self.way(piece)).ok())
                .map_or(Count::NONE, |cut| Count::at_most(cut.count)),
            // Smaller squares of fabric are patches, each as it is.
            Source::Precut(pack) if pack.side < plan.side && !self.makes.is_denim() => pack.count,
            Source::Precut(pack) => pack.gives(plan.side),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cloth::garments::{Garment, Precut, fat_quarter};
    use crate::measure::{System, eighth_inches};

    /// A heap written down before denims were told apart reads and writes as it did.
    #[test]
    fn a_use_without_a_denim_is_written_as_ever() {
        for (text, makes) in [
            (r#"{"for":"denim"}"#, Use::ANY_DENIM),
            (
                r#"{"for":"denim","denim":1}"#,
                Use::Denim { denim: Some(1) },
            ),
            (r#"{"for":"fabric","print":0}"#, Use::Fabric { print: 0 }),
        ] {
            assert_eq!(serde_json::from_str::<Use>(text).unwrap(), makes);
            assert_eq!(serde_json::to_string(&makes).unwrap(), text);
        }
    }

    fn heap(from: Source, makes: Use) -> Heap {
        let cloth = Cloth {
            washed: false,
            ..Cloth::denim()
        };
        Heap::new(from, makes, cloth)
    }

    fn pack(eighths: i64) -> Source {
        Source::Precut(Precut {
            name: "pack".into(),
            side: eighth_inches(eighths),
            count: Count::at_most(10),
        })
    }

    /// By hand: halves for 5 in lapped by ½ in are 2¾ in wide, with ¼ in to trim off the square 2⅞ in. Where
    /// nothing is lapped there are none, and none where the lap is as wide as the square.
    #[test]
    fn halves_are_cut_where_they_can_be_lapped() {
        let plan = |joining, lap| Plan {
            side: eighth_inches(40),
            lap: eighth_inches(lap),
            joining,
            ..Plan::default()
        };
        let half = |trimming: i64, joining, lap| {
            let mut heap = heap(pack(40), Use::ANY_DENIM);
            heap.trimming = eighth_inches(trimming);
            heap.how(&plan(joining, lap)).half
        };
        let lapped = Joining::Lapped;
        assert_eq!(half(0, lapped, 4), Some(eighth_inches(22)));
        assert_eq!(half(2, lapped, 4), Some(eighth_inches(23)));
        assert_eq!([half(0, lapped, 0), half(0, lapped, 40)], [None; 2]);
        assert_eq!(
            [Joining::Seamed, Joining::Exposed].map(|j| half(0, j, 4)),
            [None; 2]
        );
    }

    /// By hand: ten squares of 10 in give four of 5 in each. Smaller ones of fabric are patches, each as it is;
    /// of denim they are no squares.
    #[test]
    fn squares_ready_cut_give_what_they_hold() {
        let plan = Plan {
            side: eighth_inches(40),
            ..Plan::default()
        };
        let fabric = Use::Fabric { print: 0 };
        let gives = |eighths, makes| heap(pack(eighths), makes).expected(0, &plan).get();
        assert_eq!([80, 40, 32].map(|side| gives(side, fabric)), [40, 10, 10]);
        assert_eq!(
            [80, 40, 32].map(|side| gives(side, Use::ANY_DENIM)),
            [40, 10, 0]
        );
    }

    /// Cloth is washed before it is cut, unless it was; squares ready cut never. Once something is counted it
    /// stays what it is for, though of which denim may still be said.
    #[test]
    fn what_is_cut_stays_what_it_is_for() {
        let quarters = |n| {
            Source::Cloth(Garment {
                name: "cloth".into(),
                pieces: vec![fat_quarter(System::Inch); n],
                start: None,
            })
        };
        let mut cloth = heap(quarters(2), Use::ANY_DENIM);
        let mut ready = heap(pack(40), Use::ANY_DENIM);
        assert!(cloth.wash_first() && !ready.wash_first());
        cloth.cloth.washed = true;
        ready.cloth.washed = true;
        assert!(!cloth.wash_first() && !ready.wash_first());
        let (other, fabric) = (Use::Denim { denim: Some(1) }, Use::Fabric { print: 1 });
        assert!(!cloth.is_cut() && cloth.may_make(fabric));
        cloth.counted[1] = Some(Count::at_most(12));
        assert!(cloth.is_cut() && !cloth.may_make(fabric));
        assert!(cloth.may_make(other) && cloth.may_make(Use::ANY_DENIM));
        let mut print = heap(quarters(1), fabric);
        print.counted[0] = Some(Count::at_most(12));
        assert!(print.may_make(fabric) && !print.may_make(Use::Fabric { print: 0 }));
        assert!(!print.may_make(other));
    }
}
