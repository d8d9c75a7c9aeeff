//! More from a leg: its other half, and other ways to cut it.

use super::*;
use crate::cloth::garments::{GarmentKind, GarmentSize, Source, ZoneKind};
use crate::cloth::pile::Use;
use crate::show::{PileCutView, PileView};

fn with_jeans() -> Journal {
    let mut journal = begin(Plan::default());
    let add = Command::AddGarment {
        kind: GarmentKind::MensJeans,
        size: Some(GarmentSize::Medium),
        knees: None,
        system: None,
        makes: Use::ANY_DENIM,
        name: "Old jeans".into(),
    };
    act(&mut journal, &add, 1);
    journal
}

fn page(journal: &Journal, index: u8, context: Context<'_>) -> PileCutView {
    let query = Query::Cutting {
        n: 1,
        index,
        typed: None,
        drag: None,
    };
    match answer(journal, &query, context) {
        Ok(View::Cutting(view)) => *view,
        other => panic!("{other:?}"),
    }
}

fn pile(journal: &Journal, context: Context<'_>) -> PileView {
    match answer(journal, &Query::Pile, context) {
        Ok(View::Pile(view)) => view,
        other => panic!("{other:?}"),
    }
}

fn pieces(journal: &Journal) -> &[crate::cloth::garments::Piece] {
    match &journal.throw().pile[&1].from {
        Source::Cloth(garment) => &garment.pieces,
        Source::Precut(_) => panic!("cloth"),
    }
}

/// One tap gives the right leg the outline of the left one; where it is worn is asked for until
/// it is said, on its page, on the left leg's page and on the pile.
#[test]
fn the_other_leg_is_the_same_mirrored() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = with_jeans();
    // The starting outlines mirror each other, so there is nothing to take over.
    let first = page(&journal, 0, context);
    assert_eq!(first.other.as_ref().unwrap().mirror, None);
    assert_eq!(first.worn, None);
    let mut outline = pieces(&journal)[0].clone();
    outline.stations[0].right += inches(1);
    let hole = crate::cloth::garments::Zone {
        kind: ZoneKind::Hole,
        from: inches(10),
        to: inches(12),
        left: inches(2),
        right: inches(4),
    };
    outline.zones.push(hole);
    let keep = Command::SetPiece {
        n: 1,
        index: 0,
        outline,
    };
    act(&mut journal, &keep, 2);
    let other = page(&journal, 0, context).other.unwrap();
    assert_eq!((other.index, other.unsaid), (1, None));
    let mirror = other.mirror.unwrap();
    assert_eq!(mirror.label, "The right leg is the same, mirrored");
    act(&mut journal, &mirror.action, 3);
    let [left, right] = pieces(&journal) else {
        panic!()
    };
    assert_eq!(right.stations[0].left, zero() - left.stations[0].right);
    assert!(right.zones.iter().all(|z| z.kind != ZoneKind::Hole));
    assert!(right.zones.iter().any(|z| z.kind == ZoneKind::Knee));

    let other = page(&journal, 0, context).other.unwrap();
    assert_eq!(other.mirror, None, "it is the same now");
    assert_eq!(
        other.unsaid.as_deref(),
        Some("Mark where the right leg is worn")
    );
    let asked = page(&journal, 1, context);
    words_are_whole(&asked);
    let worn = asked.worn.unwrap();
    assert!(worn.text.contains("Marked here so far: Worn knee"));
    assert!(asked.heeds[0].starts_with("Nobody has marked yet"));
    let told = &pile(&journal, context).rows[0].pieces;
    assert!(told[1].said.ends_with("worn places not marked yet"));
    assert!(!told[0].said.contains("worn"));

    // Either it is said that there is nothing more, or the outline is kept with what was marked.
    let mut said = with_the_same(&journal);
    act(&mut said, &worn.nothing.action, 4);
    let mut kept = with_the_same(&journal);
    let mut outline = right.clone();
    outline.zones.push(hole);
    let keep = Command::SetPiece {
        n: 1,
        index: 1,
        outline,
    };
    act(&mut kept, &keep, 4);
    for journal in [said, kept] {
        assert_eq!(page(&journal, 1, context).worn, None);
        assert_eq!(page(&journal, 0, context).other.unwrap().unsaid, None);
        assert_eq!(
            journal.propose(&worn.nothing.action, 5),
            Err(crate::command::Rejection::Nothing)
        );
    }
}

/// A journal of its own, read from the text of another.
fn with_the_same(journal: &Journal) -> Journal {
    Journal::read(journal.text().as_bytes()).unwrap().journal
}
