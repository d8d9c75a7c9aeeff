//! The binding in words: what shows of it, where its joins come, and how far its stitching runs
//! from its edges.

use crate::measure::{Length, zero};
use crate::plan::binding::{BindingLayout, EdgeSide, layout, row_from_edge};
use crate::show::context::Context;
use crate::show::parts::{Figure, Move};
use crate::show::pictures;
use crate::throw::Throw;
use crate::throw::stock::strip_shown;
use crate::words::Shown;

/// What shows of the binding on each face, in a sentence.
pub(super) fn told(throw: &Throw, context: Context<'_>) -> String {
    say!(
        context,
        "binding-shows",
        strip = context.length(throw.plan.binding.strip),
        plain = context.length(strip_shown(throw).plain)
    )
}

/// Where the binding lies once it is begun at the best place.
fn laid(throw: &Throw) -> BindingLayout {
    let size = throw.finished();
    layout(&throw.plan, size.width, size.height)
}

/// Where it begins, and where its joins come: for each side how far along it, clockwise.
pub(super) fn places(throw: &Throw, context: Context<'_>) -> Vec<Figure> {
    let joins = laid(throw).joins;
    let along = |places: Vec<Length>| {
        context.in_each(|ruler| {
            let one = |at: &Length| context.words.single(*at, ruler);
            let each: Vec<Shown> = places.iter().map(one).collect();
            let list = |told: fn(&Shown) -> String| {
                let told = each.iter().map(told);
                context.words.list("list-short", told)
            };
            Shown {
                text: list(|shown| shown.text.clone()),
                spoken: list(|shown| shown.spoken.clone()),
                rounded: each.iter().any(|shown| shown.rounded),
            }
        })
    };
    let mut out = Vec::new();
    let mut figure = |key: &str, side: EdgeSide, places: Vec<Length>| {
        out.push(Figure {
            label: context.say(&format!("figure-{key}-{}", side.key()), &[]),
            value: along(places),
        });
    };
    // The ends meet where it begins, which is the first join.
    let Some(((side, start), rest)) = joins.split_first() else {
        return out;
    };
    figure("begin", *side, vec![*start]);
    for run in rest.chunk_by(|(a, _), (b, _)| a == b) {
        let Some((side, _)) = run.first() else {
            continue;
        };
        figure("join", *side, run.iter().map(|(_, at)| *at).collect());
    }
    out
}

/// How far the joins of the strip keep from those of the squares and from the corners, and how many
/// more lie in what reaches past the beginning.
pub(super) fn clear(throw: &Throw, context: Context<'_>) -> String {
    let laid = laid(throw);
    let told = match laid.clear > zero() {
        true => say!(context, "bound-clear", clear = context.length(laid.clear)),
        false => say!(context, "bound-on-lap"),
    };
    match laid.past {
        0 => told,
        n => say!(context, "bound-clear-past", told = told, n = n),
    }
}

/// What to know before the strips are cut, where no beginning keeps all their joins clear.
pub(super) fn on_a_lap(throw: &Throw, context: Context<'_>) -> Option<String> {
    (laid(throw).clear <= zero()).then(|| say!(context, "strips-on-lap"))
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
