//! Whether the cloth is enough, in words that the pile, the step and the list of what to have at
//! hand share.

use crate::cloth::estimate;
use crate::measure::Count;
use crate::show::context::Context;
use crate::throw::Throw;
use crate::throw::account::ClothAccount;

/// Squares still to come from the denim on the pile, at the least and at the most.
pub(super) fn denim_to_come(throw: &Throw) -> [Count; 2] {
    let denim = throw.pile.values().filter(|heap| heap.makes.is_denim());
    denim.fold([Count::NONE; 2], |[low, high], heap| {
        let [least, most] = estimate::to_come(heap, &throw.plan);
        [low + least, high + most]
    })
}

/// Whether squares that seem enough may still turn out too few with the spares to keep back, since
/// nobody has measured all they are to come from.
pub(super) fn is_unsure(account: &ClothAccount, to_come: [Count; 2]) -> bool {
    !account.is_uneven() && is_unsure_in_all(account, to_come)
}

/// The same of all denims together, however they are shared out.
fn is_unsure_in_all(account: &ClothAccount, [low, _]: [Count; 2]) -> bool {
    let (over, keep) = (account.over(), i64::from(account.keep));
    let at_least = over - i64::from(account.to_come.saturating_sub(low.get()));
    account.cut < account.wanted && over >= 0 && at_least < over && at_least < keep
}

/// How many squares are lacking.
pub(super) fn short_squares(account: &ClothAccount, context: Context<'_>) -> String {
    say!(
        context,
        "pile-short",
        short = account.short(),
        keep = account.keep
    )
}

/// Whether the squares there are and those to come are enough, with the spares to keep back: those
/// to come may be so many at the least and at the most.
pub(super) fn enough_squares(
    account: &ClothAccount,
    to_come: [Count; 2],
    context: Context<'_>,
) -> String {
    let (over, keep) = (account.over(), i64::from(account.keep));
    if account.cut >= account.wanted {
        say!(context, "pile-all-cut")
    } else if is_unsure_in_all(account, to_come) {
        let [low, high] = to_come;
        let open = account.wanted - account.cut;
        let key = match account.is_uneven() {
            true => "pile-perhaps-uneven",
            false => "pile-perhaps",
        };
        say!(
            context,
            key,
            low = low,
            high = high,
            wanted = open.saturating_sub(account.spares) + account.keep
        )
    } else if over < 0 {
        short_squares(account, context)
    } else if account.is_uneven() {
        say!(context, "pile-uneven")
    } else if over < keep {
        say!(context, "pile-few-spares", over = over, keep = keep)
    } else {
        say!(context, "pile-enough", over = over)
    }
}

/// Whether the binding strips are cut, or the pile gives them.
pub(super) fn strips_told(throw: &Throw, account: &ClothAccount, context: Context<'_>) -> String {
    let strips = account.strips;
    let size = context.by(throw.plan.binding.strip, throw.plan.binding.longest);
    match (strips.open(), strips.lacking()) {
        (0, _) => say!(context, "pile-strips-cut", n = strips.wanted),
        (open, 0) => say!(context, "pile-strips-planned", n = open, size = size),
        (open, lacking) => say!(
            context,
            "pile-strips-lacking",
            n = open,
            lacking = lacking,
            size = size
        ),
    }
}

/// How many squares are still to be cut from each denim, where the faces name more than one.
pub(super) fn denims_to_cut(throw: &Throw, context: Context<'_>) -> Option<String> {
    let several = throw.uncut_by_denim().iter().filter(|n| **n > 0).count() > 1;
    several.then(|| each_to_cut(throw, context))
}

/// How many squares are still to be cut from each denim.
pub(super) fn each_to_cut(throw: &Throw, context: Context<'_>) -> String {
    let open = throw.uncut_by_denim();
    let wanted = throw.denims.iter().zip(open).filter(|(_, n)| *n > 0);
    let named =
        wanted.map(|(denim, n)| say!(context, "cut-of-denim", n = n, denim = denim.name.as_str()));
    let list = context.words.list("list-short", named);
    say!(context, "cut-denims", list = list)
}
