//! The faces and the layouts offered for them.

use super::*;

#[test]
fn what_is_free_is_said_before_layouts_are_looked_for() {
    let words = Words::english();
    let context = context(&words);
    let journal = four_fours();
    let ask = |front: u32, back: u32| {
        let wishes = Wishes {
            front: Count::at_most(front),
            back: Count::at_most(back),
            ..Wishes::default()
        };
        let wishes = Some(wishes);
        match answer(&journal, &Query::Wishes { wishes }, context) {
            Ok(View::Wishes(view)) => view,
            other => panic!("{other:?}"),
        }
    };
    let seen = ask(8, 3);
    assert_eq!(
        (seen.most, seen.wishes.front, seen.wishes.back),
        ([0, 0], Count::NONE, Count::NONE)
    );
    let said = seen.free.expect("said");
    assert!(said.contains("no square is free any more"), "{said}");
    let fresh = begin(Plan::default());
    let Ok(View::Wishes(seen)) = answer(&fresh, &Query::Wishes { wishes: None }, context) else {
        panic!()
    };
    assert_eq!((seen.free, seen.most), (None, [48, 48]));
}

#[test]
fn the_rings_are_where_a_layout_changes_something() {
    use crate::show::{Ink, Mark};
    let words = Words::english();
    let journal = begin(Plan::default());
    let wishes = Wishes {
        front: Count::from(9),
        back: Count::from(5),
        ..Wishes::default()
    };
    let found = [Arranger::new(journal.throw(), wishes, 1)];
    let seen = layouts(&journal, wishes, &found, (false, 1), context(&words));
    assert_eq!(seen.said, "One layout found");
    let card = &seen.cards[0];
    // Nothing is covered yet, so that all that is covered changes.
    let prints = &journal.throw().prints;
    let places = |picture: &Picture, ringed: bool| -> Vec<[u16; 2]> {
        let wanted = |ink: Ink, cloth: Option<u8>| match cloth {
            _ if ringed => ink == Ink::Ring,
            Some(cloth) => {
                let colour = &picture.cloths[usize::from(cloth)].colour;
                ink == Ink::Cloth && prints.iter().any(|print| print.colour == *colour)
            }
            None => false,
        };
        let mut out: Vec<[u16; 2]> = picture
            .marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Shape { at, ink, cloth, .. } if wanted(*ink, *cloth) => Some(at),
                _ => None,
            })
            .flat_map(|at| at.iter().map(|at| at.map(|side| side as u16)))
            .collect();
        out.sort();
        out
    };
    for (picture, covered) in [(&card.front, 9), (&card.back, 5)] {
        drawn_within(picture, "a layout");
        assert_eq!(places(picture, true), places(picture, false));
        assert_eq!(places(picture, true).len(), covered);
    }
    assert!(card.changed);
}

#[test]
fn made_again_the_layers_count_the_faces_taken_over() {
    let words = Words::english();
    let now = 1_800_000_000_000;
    let old = crate::demo::throw(now);
    let context = context(&words);
    let again = again(&old, context);
    let cloth = (again.prints.as_slice(), again.denims.as_slice());
    let layers = |view: &crate::show::PlanView| {
        let found = view.figures.iter().find(|f| f.label.contains("ayers"));
        found.map(|f| f.value.text.clone())
    };
    let then = draft_after(old.throw(), cloth, &again.draft, context);
    let Ok(View::Plan(was)) = answer(&old, &Query::Plan { draft: None }, context) else {
        panic!()
    };
    assert!(layers(&then).is_some());
    assert_eq!(layers(&then), layers(&was));
    assert_ne!(layers(&then), layers(&draft(&again.draft, context)));
}

/// An order of shades is met only where the squares have shades to put in order.
#[test]
fn an_order_of_shades_that_nothing_can_show_is_not_met() {
    use crate::throw::wishes::Pattern;
    let words = Words::english();
    // A new throw has two denims in its list, and every square is of the dark one.
    let journal = begin(Plan::default());
    for pattern in [Pattern::ShadeRows, Pattern::LightEdges] {
        let wishes = Wishes {
            front: Count::from(9),
            back: Count::from(5),
            pattern,
            ..Wishes::default()
        };
        let found = [Arranger::new(journal.throw(), wishes, 1)];
        let seen = layouts(&journal, wishes, &found, (false, 1), context(&words));
        let card = &seen.cards[0];
        let line = card
            .lines
            .iter()
            .find(|line| line.label == "Out of the order of shades")
            .unwrap();
        assert!(!line.met, "{line:?}");
        assert!(
            line.value.contains("every square is of one denim"),
            "{line:?}"
        );
        let met = card.lines.iter().filter(|line| line.met).count();
        assert!(met < card.lines.len());
        assert_eq!(
            card.met,
            format!("{met} of {} wishes met", card.lines.len())
        );
    }
}
