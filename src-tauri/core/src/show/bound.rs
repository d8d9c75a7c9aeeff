//! The binding in words: what shows of it, and how far its stitching runs from its edges.

use crate::plan::binding::row_from_edge;
use crate::show::context::Context;
use crate::show::parts::Move;
use crate::show::pictures;
use crate::throw::Throw;
use crate::throw::stock::strip_shown;
use crate::words::Shown;

/// What shows of the binding on each face, in a sentence.
pub(super) fn told(throw: &Throw, context: Context<'_>) -> String {
    let shown = strip_shown(throw);
    let (plain, joins) = (
        context.showing(shown.plain),
        context.showing(shown.on_joins),
    );
    // What reads the same is not told twice.
    let same = if plain == joins { "yes" } else { "no" };
    say!(
        context,
        "binding-shows",
        strip = context.length(throw.plan.binding.strip),
        same = same,
        plain = plain,
        joins = joins,
        itself = context.showing(shown.on_itself)
    )
}

/// How far from the fold the binding is stitched, for a ruler of each system.
pub(super) fn from_fold(throw: &Throw, context: Context<'_>) -> Shown {
    let plain = strip_shown(throw).plain;
    context.in_each(|ruler| {
        context
            .words
            .single(plain - row_from_edge(ruler.system), ruler)
    })
}

/// How the binding goes round a corner, move by move.
pub(super) fn corner(throw: &Throw, context: Context<'_>) -> Vec<Move> {
    let said = ["corner-1", "corner-2", "corner-3", "corner-4"];
    let drawn = pictures::corner(throw, context.ruler.system);
    let told = said.into_iter().zip(drawn);
    told.map(|(key, draw)| {
        let text = context.say(key, &[]);
        Move {
            picture: draw(text.clone()),
            text,
        }
    })
    .collect()
}
