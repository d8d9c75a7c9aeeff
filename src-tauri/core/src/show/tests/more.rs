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
    let texts = &pile(&journal, context).rows[0].pieces;
    assert!(texts[1].said.ends_with("worn places not marked yet"));
    assert!(!texts[0].said.contains("worn"));

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

/// Cloth 5 in wide and 20 5/16 in long, torn from 5 in to 10 5/16 in: from the hem up two
/// squares, from both edges or turned three.
fn with_torn_cloth() -> Journal {
    let mut journal = begin(Plan::default());
    let add = Command::AddCloth {
        width: inches(5),
        length: sixty_fourths(1300),
        edges: None,
        makes: Use::ANY_DENIM,
        name: "Rest".into(),
    };
    act(&mut journal, &add, 1);
    let mut outline = pieces(&journal)[0].clone();
    outline.zones.push(crate::cloth::garments::Zone {
        kind: ZoneKind::Hole,
        from: inches(5),
        to: sixty_fourths(660),
        left: zero(),
        right: inches(5),
    });
    let keep = Command::SetPiece {
        n: 1,
        index: 0,
        outline,
    };
    act(&mut journal, &keep, 2);
    journal
}

/// Told only where it gives more, taken only by the maker, and then told the same everywhere.
#[test]
fn another_way_is_offered_where_it_gives_more() {
    use crate::show::tables::Table;
    let words = Words::english();
    let context = context(&words);
    // Of whole squares no way gives more here; what is left gives halves, which the throw lacks.
    let jeans = page(&with_jeans(), 0, context).ways;
    let taken: Vec<_> = jeans.iter().map(|way| way.chosen).collect();
    assert_eq!(taken, [true, false]);
    assert!(jeans[1].label.contains("with halves"), "{}", jeans[1].label);
    let mut journal = with_torn_cloth();
    let first = page(&journal, 0, context);
    words_are_whole(&first);
    assert_eq!((first.expected, first.ways.len()), (2, 3));
    let texts: Vec<_> = first.ways.iter().map(|w| w.label.as_str()).collect();
    let plain = "In strips from the lower edge up: 2 squares";
    let both = "From both edges: 3 squares, one more";
    assert_eq!(texts[..2], [plain, both]);
    assert!(first.ways[0].chosen && first.ways[0].choose.is_none());
    act(&mut journal, &first.list[0].tick.clone().unwrap().action, 3);
    assert_eq!(journal.throw().begun_pieces.len(), 1);

    let take = first.ways[1].choose.clone().unwrap();
    act(&mut journal, &take.action, 4);
    assert!(journal.throw().begun_pieces.is_empty());
    let seen = page(&journal, 0, context);
    words_are_whole(&seen);
    assert_eq!(seen.expected, 3);
    assert!(seen.ways[1].chosen && seen.ways[1].choose.is_none());
    let texts: Vec<_> = seen
        .list
        .iter()
        .map(|row| row.text.replace('\u{a0}', " "))
        .collect();
    assert_eq!(texts.len(), 3, "{texts:?}");
    assert!(texts[0].starts_with("Cut across 5 in above the lower edge."));
    assert!(texts[1].starts_with("From here on measure from the upper edge. Cut across 5 in"));
    assert!(texts[2].starts_with("Cut across 5 in below the last cut."));
    let account = crate::throw::account::account(journal.throw());
    assert_eq!(account.to_come, 3);
    assert!(
        pile(&journal, context).rows[0].pieces[0]
            .said
            .starts_with("about 3 squares")
    );
    let cloth = Table::Cutting.csv(&journal, context);
    assert!(
        cloth
            .lines()
            .nth(1)
            .is_some_and(|line| line.contains(",3,")),
        "{cloth}"
    );
    // Strip by strip what came out is of the strips as they are cut.
    for n in 0..3 {
        let tick = page(&journal, 0, context).list[n].tick.clone().unwrap();
        act(&mut journal, &tick.action, 5);
    }
    let taken = Command::CutPiece {
        n: 1,
        index: 0,
        squares: Count::from(2),
        by_strip: vec![Count::from(1), Count::from(0), Count::from(1)],
        pieced: None,
        strips: None,
        outline: None,
    };
    let mut cut = with_the_same(&journal);
    act(&mut cut, &taken, 6);
    let has = |n| cut.throw().has(Rect::square(0, n), Task::Cut);
    assert_eq!([0, 1, 2].map(has), [true, false, true]);

    // An outline on which it gives no more lets it go, and so does the plain way.
    let mut outline = pieces(&journal)[0].clone();
    outline.zones.clear();
    let keep = Command::SetPiece {
        n: 1,
        index: 0,
        outline,
    };
    let mut whole = with_the_same(&journal);
    act(&mut whole, &keep, 6);
    assert!(whole.throw().pile[&1].ways.is_empty());
    assert_eq!(page(&whole, 0, context).ways, []);
    let back = seen.ways[0].choose.clone().unwrap();
    act(&mut journal, &back.action, 6);
    assert!(journal.throw().pile[&1].ways.is_empty());
    let way = crate::cloth::ways::CutWay::OTHERS[0];
    let refused = Command::CutBy {
        n: 1,
        index: 0,
        way,
    };
    let why = whole.propose(&refused, 7);
    assert_eq!(why, Err(crate::command::Rejection::Nothing));
}

/// A turned piece is turned first; its squares are marked as the wish for the grain asks; its
/// outline is still measured as it hangs.
#[test]
fn a_turned_piece_tells_of_its_grain() {
    use crate::throw::wishes::Grain;
    let words = Words::english();
    let context = context(&words);
    let mut journal = with_torn_cloth();
    let upright = page(&journal, 0, context);
    let take = upright.ways[2].choose.clone().unwrap();
    assert_eq!(take.label, "Cut it this way: Turned a quarter");
    act(&mut journal, &take.action, 3);
    for (grain, said) in [
        (Grain::Free, "Turned otherwise"),
        (Grain::OneWay, "up and down in every square"),
        (Grain::ByTurns, "turned from each square to the next"),
    ] {
        let wishes = Wishes {
            grain,
            ..Wishes::default()
        };
        act(&mut journal, &Command::Wish { wishes }, 4);
        let seen = page(&journal, 0, context);
        words_are_whole(&seen);
        assert_eq!(seen.expected, 3);
        assert_eq!(seen.list[0].title, "Turn the piece");
        assert!(seen.list[0].text.contains(said), "{}", seen.list[0].text);
        assert!(seen.ways[2].text.as_ref().unwrap().contains(said));
        assert_eq!(seen.handles, upright.handles);
        // It lies on its side: as wide as it was high.
        let (lying, hanging) = (seen.lying.unwrap(), seen.picture.unwrap());
        assert_eq!([lying.width, lying.height], [hanging.height, hanging.width]);
    }
}

/// A pocket and a waistband are pieces of their own: no square fits them, and the page says what
/// can still be done; the waistband gives binding strips that the legs need not give.
#[test]
fn a_pocket_and_a_waistband_are_laid_flat() {
    use crate::cloth::garments::GarmentPart;
    let words = Words::english();
    let context = context(&words);
    let mut journal = with_jeans();
    let before = crate::throw::account::account(journal.throw());
    let add = |journal: &mut Journal, label: &str| {
        let parts = pile(journal, context).rows[0].parts.clone();
        let part = parts.into_iter().find(|b| b.label == label).unwrap();
        act(journal, &part.action, 2);
    };
    add(&mut journal, "Lay a back pocket flat as well");
    add(&mut journal, "Lay a back pocket flat as well");
    add(&mut journal, "Lay the waistband flat as well");
    let parts: Vec<_> = pieces(&journal).iter().map(|p| p.part).collect();
    let legs = [GarmentPart::LeftLeg, GarmentPart::RightLeg];
    let small = [
        GarmentPart::Pocket,
        GarmentPart::Pocket,
        GarmentPart::Waistband,
    ];
    assert_eq!(parts, [&legs[..], &small[..]].concat());
    let again = Command::AddPart {
        n: 1,
        part: GarmentPart::Waistband,
    };
    assert!(
        journal.propose(&again, 3).is_err(),
        "jeans have one waistband"
    );
    let seen = pile(&journal, context);
    words_are_whole(&seen);
    assert_eq!(seen.rows[0].pieces[3].label, "Back pocket 2");
    assert_eq!(seen.rows[0].parts.len(), 1);

    let pocket = page(&journal, 2, context);
    words_are_whole(&pocket);
    let said: Vec<_> = pocket
        .said
        .iter()
        .map(|s| s.replace('\u{a0}', " "))
        .collect();
    assert_eq!(pocket.expected, 0);
    assert_eq!(
        said,
        [
            "No whole square fits clear of the places to avoid.",
            "A patch of 5½ × 4½ in can be cut from it, for a worn place.",
            "Or keep it whole and sew it onto a square as a pocket.",
            "This outline is only a starting point, from common practice. Measure yours.",
        ]
    );
    let nothing = pocket.all_came.unwrap();
    assert_eq!(nothing.label, "Nothing is to be cut from it");
    let band = page(&journal, 4, context);
    assert_eq!((band.expected, band.expected_strips > 0), (0, true));
    assert!(
        band.said[1].starts_with("It still gives"),
        "{:?}",
        band.said
    );
    let after = crate::throw::account::account(journal.throw());
    assert!(after.strips.planned >= before.strips.planned);
    assert!(after.strips.lacking() <= before.strips.lacking());
    assert!(after.to_come >= before.to_come);
    // All came out, and the strips are counted.
    act(&mut journal, &band.all_came.unwrap().action, 4);
    let texts = crate::throw::account::account(journal.throw());
    assert_eq!(texts.strips.cut, band.expected_strips);
    assert_eq!(texts.to_come, after.to_come);
}

/// What gives no square and no strip is not what is cut next, nor what squares are cut from.
#[test]
fn a_piece_that_gives_nothing_is_not_cut_next() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = with_jeans();
    all_denim(&mut journal);
    let parts = pile(&journal, context).rows[0].parts.clone();
    let pocket = parts
        .iter()
        .find(|b| b.label == "Lay a back pocket flat as well");
    act(&mut journal, &pocket.unwrap().action, 1);
    let next = |journal: &Journal| {
        let card = work_view(journal, None, context).card.unwrap();
        assert_eq!(card.task, Task::Cut);
        card.cut_next.map(|next| next.label)
    };
    for leg in [0, 1] {
        assert!(next(&journal).is_some_and(|label| label.contains("leg")));
        let all = page(&journal, leg, context).all_came.unwrap();
        act(&mut journal, &all.action, 2);
    }
    assert_eq!(page(&journal, 2, context).expected, 0);
    assert_eq!(next(&journal), None);
}
