//! What the pile gives of each denim, and how many squares are taken of each.

use crate::throw::Throw;
use crate::throw::account::account;

/// Squares that can still be had of each denim.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct DenimSupply {
    /// From heaps of each denim, in the order of the throw's list.
    pub named: Vec<u32>,
    /// Spares, and from heaps of which it was not said what denim they are.
    pub unnamed: u32,
}

impl DenimSupply {
    /// What the pile gives of each denim for squares that are not cut yet.
    ///
    /// `None` where no denim was put on the pile: then nothing is known.
    pub fn of(throw: &Throw) -> Option<DenimSupply> {
        if !throw.pile.values().any(|heap| heap.makes.is_denim()) {
            return None;
        }
        let account = account(throw);
        Some(DenimSupply {
            named: account.denims.iter().map(|d| d.to_come).collect(),
            unnamed: account.spares + account.unnamed,
        })
    }

    /// All of it.
    pub fn all(&self) -> u32 {
        self.named.iter().sum::<u32>() + self.unnamed
    }

    /// Squares wanted of each denim beyond what there is of it; what is of no named denim
    /// makes up for the first that are short.
    pub fn lacking(&self, wanted: &[u32]) -> Vec<u32> {
        let mut unnamed = self.unnamed;
        let each = wanted.iter().enumerate();
        each.map(|(d, wanted)| {
            let over = wanted.saturating_sub(self.named.get(d).copied().unwrap_or(0));
            let helped = over.min(unnamed);
            unnamed -= helped;
            over - helped
        })
        .collect()
    }
}

/// How many squares of each denim are taken for as many as `have` counts.
///
/// Where the wishes mix denims, they are shared out in proportion to what there is of each
/// (the method of Sainte-Laguë), none beyond it while another is left; where nothing is known
/// of the pile, evenly. Otherwise they stay as they are, as far as there is enough of each.
pub(super) fn share(have: &[u32], mixes: bool, supply: Option<&DenimSupply>) -> Vec<u32> {
    let weight = |d: usize| {
        supply.map_or(1, |s| {
            u64::from(s.named.get(d).copied().unwrap_or(0)) + u64::from(s.unnamed)
        })
    };
    let any = (0..have.len()).any(|d| weight(d) > 0);
    if !mixes || !any {
        return moved_to_supply(have, supply);
    }
    let open: u32 = have.iter().sum();
    let mut out = vec![0_u32; have.len()];
    let mut unnamed = supply.map_or(0, |s| s.unnamed);
    for _ in 0..open {
        let named = |d: usize| supply.is_none_or(|s| out[d] < s.named.get(d).copied().unwrap_or(0));
        let score = |d: usize| (weight(d), 2 * u64::from(out[d]) + 1);
        let best = |a: &usize, b: &usize| {
            let ((wa, na), (wb, nb)) = (score(*a), score(*b));
            // Of two alike the first in the list.
            (wa * nb).cmp(&(wb * na)).then(b.cmp(a))
        };
        let wanted = || (0..have.len()).filter(|d| weight(*d) > 0);
        let there = |d: &usize| named(*d) || unnamed > 0;
        let Some(d) = wanted()
            .filter(there)
            .max_by(best)
            .or_else(|| wanted().max_by(best))
        else {
            break;
        };
        if !named(d) {
            unnamed = unnamed.saturating_sub(1);
        }
        out[d] += 1;
    }
    out
}

/// As it is, what there is not enough of exchanged for what is left.
fn moved_to_supply(have: &[u32], supply: Option<&DenimSupply>) -> Vec<u32> {
    let mut out = have.to_vec();
    let Some(supply) = supply else {
        return out;
    };
    for (d, mut lacking) in supply.lacking(have).into_iter().enumerate() {
        for (other, named) in supply.named.iter().enumerate() {
            let moved = lacking.min(named.saturating_sub(out[other]));
            if other != d {
                out[d] -= moved;
                out[other] += moved;
                lacking -= moved;
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn supply(named: &[u32], unnamed: u32) -> DenimSupply {
        DenimSupply {
            named: named.to_vec(),
            unnamed,
        }
    }

    #[test]
    fn denims_are_shared_by_what_there_is() {
        // Nothing known: evenly. Then in proportion, and never beyond what there is.
        assert_eq!(share(&[9, 0], true, None), [5, 4]);
        assert_eq!(share(&[60, 0], true, Some(&supply(&[60, 30], 0))), [40, 20]);
        assert_eq!(share(&[60, 0], true, Some(&supply(&[50, 10], 0))), [50, 10]);
        assert_eq!(
            share(&[60, 0, 0], true, Some(&supply(&[0, 10, 70], 0))),
            [0, 8, 52]
        );
        // Without a wish for more they stay, as far as there is enough.
        assert_eq!(share(&[60, 0], false, Some(&supply(&[60, 30], 0))), [60, 0]);
        assert_eq!(
            share(&[60, 0], false, Some(&supply(&[40, 30], 0))),
            [40, 20]
        );
        assert_eq!(
            share(&[60, 0], false, Some(&supply(&[40, 30], 15))),
            [55, 5]
        );
        assert_eq!(share(&[60, 0], false, None), [60, 0]);
    }

    proptest! {
        #[test]
        fn none_lacks_while_another_is_left(
            have in proptest::collection::vec(0u32..40, 1..5), named in proptest::collection::vec(0u32..60, 5),
            unnamed in 0u32..20, mixes in any::<bool>(),
        ) {
            let supply = DenimSupply { named: named[..have.len()].to_vec(), unnamed };
            let shared = share(&have, mixes, Some(&supply));
            let open: u32 = have.iter().sum();
            prop_assert_eq!(shared.iter().sum::<u32>(), open);
            let lacking: u32 = supply.lacking(&shared).iter().sum();
            prop_assert_eq!(lacking, open.saturating_sub(supply.all()));
        }
    }
}
