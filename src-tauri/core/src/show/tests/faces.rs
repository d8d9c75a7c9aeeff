//! The faces and the layouts offered for them.

use super::*;
use crate::cloth::fabric::{Denim, Print};
use crate::command::{Rejection, decide};
use crate::throw::event::Event;

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

/// More like fabrics than can lie apart are told before layouts are looked for: as many as the
/// largest set of squares of which no two touch, found by trying every set.
#[test]
fn more_than_can_lie_apart_is_told() {
    use crate::throw::wishes::Apart;
    let words = Words::english();
    let context = context(&words);
    let largest = |across: u16, down: u16, corners: bool| {
        let n = across * down;
        let touch = |a: u16, b: u16| {
            let (x, y) = (
                (a % across).abs_diff(b % across),
                (a / across).abs_diff(b / across),
            );
            if corners { x.max(y) == 1 } else { x + y == 1 }
        };
        let apart = |set: &u32| {
            let held: Vec<u16> = (0..n).filter(|i| set >> i & 1 == 1).collect();
            let mut each = held.iter().enumerate();
            each.all(|(i, a)| held[i + 1..].iter().all(|b| !touch(*a, *b)))
        };
        let sets = (0..1u32 << n).filter(apart);
        sets.map(u32::count_ones).max().unwrap_or(0)
    };
    for (across, down) in [(2, 2), (3, 2), (3, 3), (4, 3), (3, 5), (4, 4)] {
        for (apart, corners) in [(Apart::Edges, false), (Apart::Corners, true)] {
            let action = Command::Begin {
                name: "T".into(),
                plan: Plan {
                    across,
                    down,
                    ..Plan::default()
                },
                prints: crate::demo::prints()[..1].to_vec(),
                denims: crate::demo::denims(),
            };
            let journal = Journal::begin(&action, 0).unwrap().0;
            let said = |front: u32| {
                let wishes = Some(Wishes {
                    front: Count::at_most(front),
                    apart,
                    ..Wishes::default()
                });
                match answer(&journal, &Query::Wishes { wishes }, context) {
                    Ok(View::Wishes(view)) => view.short,
                    other => panic!("{other:?}"),
                }
            };
            let most = largest(across, down, corners);
            assert_eq!(said(most), None, "{across} × {down}, {apart:?}");
            let told = said(most + 1).unwrap_or_default();
            let begins = format!("On the front, at most {most} squares can be covered");
            assert!(told.starts_with(&begins), "{told}");
        }
    }
}

/// Fabrics kept apart at corners crowd together once they are more than the largest lattice: that
/// they can lie more evenly apart at the edges alone is told, and only then.
#[test]
fn crowded_fabrics_are_told_to_lie_apart_at_edges_alone() {
    use crate::throw::wishes::Apart;
    let words = Words::english();
    let context = context(&words);
    let told = |apart, covered: &[[u16; 2]]| {
        let mut journal = begin(Plan {
            across: 4,
            down: 4,
            ..Plan::default()
        });
        for (n, [row, col]) in covered.iter().enumerate() {
            let action = Command::SetFace {
                pieces: vec![Rect::square(*row, *col)],
                face: Face::Front,
                print: Some((n % 4) as u8),
                laid_on: false,
            };
            act(&mut journal, &action, 0);
        }
        let wishes = Some(Wishes {
            front: Count::at_most(covered.len() as u32),
            apart,
            ..Wishes::default()
        });
        let Ok(View::Wishes(view)) = answer(&journal, &Query::Wishes { wishes }, context) else {
            panic!()
        };
        let of = |line: &&crate::show::WishLine| line.label == "Spread on the front";
        view.lines.iter().find(of).expect("told").value.clone()
    };
    let hint = "kept apart at the edges alone, they can lie more evenly";
    // Five squares of a 4 by 4 grid, of which four can lie apart, all in its left half.
    let five = [[0, 0], [0, 1], [1, 0], [1, 1], [2, 0]];
    assert!(told(Apart::Corners, &five).ends_with(hint));
    assert!(!told(Apart::Edges, &five).contains(hint));
    assert!(!told(Apart::Corners, &five[..4]).contains(hint));
}

/// While nobody has wished for anything, how much is covered is told and not called met.
#[test]
fn nothing_wished_is_not_met() {
    let words = Words::english();
    let journal = begin(Plan::default());
    let Ok(View::Faces(seen)) = answer(
        &journal,
        &Query::Faces { face: Face::Front },
        context(&words),
    ) else {
        panic!()
    };
    // Nor is it said that no like fabrics touch where there are none.
    assert_eq!(seen.wishes.len(), 1, "{:?}", seen.wishes);
    assert_eq!(seen.wishes[0].met, None, "{:?}", seen.wishes);
}

/// What is proposed before anything is said can be laid: of one fabric, no more squares than can lie
/// apart. 6 by 8 squares are parted in twelve of two by two.
#[test]
fn what_is_proposed_can_be_laid() {
    let words = Words::english();
    let action = Command::Begin {
        name: "T".into(),
        plan: Plan::default(),
        prints: crate::demo::prints()[..1].to_vec(),
        denims: crate::demo::denims(),
    };
    let journal = Journal::begin(&action, 0).unwrap().0;
    let Ok(View::Wishes(seen)) = answer(&journal, &Query::Wishes { wishes: None }, context(&words))
    else {
        panic!()
    };
    assert_eq!((seen.wishes.front.get(), seen.wishes.back.get()), (12, 12));
    assert_eq!(seen.short, None);
}

/// With no fabric in the list a third and a quarter are proposed all the same, and it is said that
/// there are no squares for them.
#[test]
fn without_a_fabric_it_is_said_that_there_is_none() {
    let words = Words::english();
    let action = Command::Begin {
        name: "T".into(),
        plan: Plan::default(),
        prints: Vec::new(),
        denims: crate::demo::denims(),
    };
    let journal = Journal::begin(&action, 0).unwrap().0;
    let Ok(View::Wishes(seen)) = answer(&journal, &Query::Wishes { wishes: None }, context(&words))
    else {
        panic!()
    };
    assert_eq!((seen.wishes.front.get(), seen.wishes.back.get()), (16, 12));
    assert_eq!(
        seen.short.as_deref(),
        Some("There are no fabric squares; 28 are wanted.")
    );
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
        assert_eq!(line.met, Some(false), "{line:?}");
        assert!(
            line.value.contains("every square is of one denim"),
            "{line:?}"
        );
        let met = card
            .lines
            .iter()
            .filter(|line| line.met == Some(true))
            .count();
        let wished = card.lines.iter().filter(|line| line.met.is_some()).count();
        assert!(met < wished);
        assert_eq!(card.met, format!("{met} of {wished} wishes met"));
    }
}

/// How thick crossings are is told without being a wish; wished for, it is met only where no
/// crossing is thicker.
#[test]
fn thin_crossings_are_met_only_where_they_are() {
    let words = Words::english();
    let mut journal = begin(Plan {
        across: 3,
        down: 2,
        ..Plan::default()
    });
    // Both squares of the first column: two fabrics, so six layers at the first crossing.
    let pieces = vec![Rect::square(0, 0), Rect::square(1, 0)];
    let face = Face::Back;
    let print = Some(0);
    act(
        &mut journal,
        &Command::SetFace {
            pieces,
            face,
            print,
            laid_on: false,
        },
        1,
    );
    let line = |crossing: Option<u16>| {
        let wishes = Wishes {
            back: Count::from(2),
            crossing: crossing.map(Count::from),
            ..Wishes::default()
        };
        let query = Query::Wishes {
            wishes: Some(wishes),
        };
        let Ok(View::Wishes(view)) = answer(&journal, &query, context(&words)) else {
            panic!()
        };
        let found = view
            .lines
            .into_iter()
            .rev()
            .find(|l| l.label.contains("rossing"));
        let line = found.expect("crossings are told");
        (line.label, line.value, line.met)
    };
    let told = |label: &str, value: &str, met| (label.to_string(), value.to_string(), met);
    assert_eq!(
        line(None),
        told("Thickest crossing", "6 layers, once", None)
    );
    assert_eq!(
        line(Some(1)),
        told(
            "Thickest crossing",
            "6 layers, once; one crossing is thicker than 5 layers",
            Some(false)
        )
    );
    assert_eq!(
        line(Some(2)),
        told(
            "No crossing thicker than you want",
            "6 layers, once",
            Some(true)
        )
    );
}

/// A photo of a fabric is shown wherever the fabric is drawn, under its letters; on paper it is a
/// part of the drawing, and where it is gone the texture is there.
#[test]
fn a_photo_stands_for_a_fabric_beside_its_letters() {
    use crate::cloth::photos::PhotoId;
    use crate::show::drawing::{Drawing, Style};
    use crate::show::{Ink, Mark};
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan {
        across: 2,
        down: 2,
        ..Plan::default()
    });
    let pieces = vec![Rect::square(0, 0)];
    let (face, print) = (Face::Front, Some(1));
    act(
        &mut journal,
        &Command::SetFace {
            pieces,
            face,
            print,
            laid_on: false,
        },
        1,
    );
    let before = Drawing::Face { face };
    let drawn = |journal: &Journal, there: bool| {
        let photo = |_: &PhotoId| there.then(|| "QUJD".to_string());
        let svg = before.svg(journal, Style::Colour, &photo, context);
        svg.expect("a face is drawn")
    };
    let plain = drawn(&journal, true);
    assert!(!plain.contains("<image") && !plain.contains("xlink"));

    let mut prints = journal.throw().prints.clone();
    let photo = PhotoId::parse(&"5c".repeat(32));
    prints[1].photo = photo.clone();
    let denims = journal.throw().denims.clone();
    act(&mut journal, &Command::SetCloth { prints, denims }, 2);
    let Ok(View::Faces(view)) = answer(&journal, &Query::Faces { face }, context) else {
        panic!()
    };
    let cloths = view.picture.cloths.iter();
    assert_eq!(cloths.filter(|c| c.photo == photo).count(), 1);
    let letters = &view.prints[1].letters;
    let lettered = |mark: &Mark| matches!(mark, Mark::Letters { text, ink: Ink::Letters, .. } if text == letters);
    assert!(view.picture.marks.iter().any(lettered), "{letters}");

    let seen = drawn(&journal, true);
    let image = "xlink:href=\"data:image/jpeg;base64,QUJD\"";
    assert_eq!(
        [seen.matches(image).count(), seen.matches("<image").count()],
        [1, 1]
    );
    let name = &journal.throw().prints[1].name;
    assert!(seen.contains(&format!(">{letters}<")) && seen.contains(name.as_str()));
    assert_eq!(drawn(&journal, false), plain);
    // It is not swept away with photos that were chosen and not used, even once it was replaced.
    let mut prints = journal.throw().prints.clone();
    prints[1].photo = None;
    let denims = journal.throw().denims.clone();
    act(&mut journal, &Command::SetCloth { prints, denims }, 3);
    assert_eq!(journal.photos().into_iter().next(), photo);
    assert_eq!(drawn(&journal, true), plain);
}

/// Letters are on papers and in the maker's head: another fabric's new name moves none of them, on
/// whatever screen they stand.
#[test]
fn a_fabric_keeps_its_letters_when_another_gets_a_new_name() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan::default());
    let name = |journal: &mut Journal, names: [&str; 4]| {
        let mut prints = journal.throw().prints.clone();
        prints
            .iter_mut()
            .zip(names)
            .for_each(|(print, name)| print.name = name.into());
        let denims = journal.throw().denims.clone();
        act(journal, &Command::SetCloth { prints, denims }, 1);
    };
    let listed = |journal: &Journal| -> Vec<String> {
        let list = crate::show::parts::swatches(journal, context).into_iter();
        list.map(|swatch| swatch.letters).collect()
    };
    name(&mut journal, ["Rosehip", "Barley", "Moss", "Teal"]);
    assert_eq!(listed(&journal), ["R", "B", "M", "T"]);
    name(&mut journal, ["Berry", "Barley", "Moss", "Teal"]);
    assert_eq!(listed(&journal), ["Be", "B", "M", "T"]);
    for (print, letters) in [(0, "Be"), (1, "B")] {
        let square = Rect::square(0, print);
        let place = Command::SetFace {
            pieces: vec![square],
            face: Face::Front,
            print: Some(print as u8),
            laid_on: false,
        };
        act(&mut journal, &place, 2);
        let asked = Query::Faces { face: Face::Front };
        let Ok(View::Faces(view)) = answer(&journal, &asked, context) else {
            panic!()
        };
        let drawn = |mark: &Mark| matches!(mark, Mark::Letters { text, .. } if text == letters);
        assert!(view.picture.marks.iter().any(drawn), "{letters}");
    }
    // The file read anew says the same.
    let read = Journal::read(journal.named("letters").text().as_bytes()).expect("it is read");
    assert_eq!(listed(&read.journal), ["Be", "B", "M", "T"]);
}

/// Of two of one name no list could say which it means.
#[test]
fn no_two_fabrics_are_given_one_name() {
    let words = Words::english();
    let context = context(&words);
    let journal = begin(Plan::default());
    let throw = journal.throw();
    let refused = |journal: &Journal, prints: &[Print], denims: &[Denim]| {
        let (prints, denims) = (prints.to_vec(), denims.to_vec());
        journal
            .propose(&Command::SetCloth { prints, denims }, 1)
            .err()
    };
    let mut prints = throw.prints.clone();
    prints[2].name = format!(" {} ", prints[0].name.to_uppercase());
    let why = refused(&journal, &prints, &throw.denims).expect("two of one name");
    assert_eq!(why, Rejection::SameName(prints[0].name.clone()));
    let told = crate::show::errors::rejection(&why, Some(throw), context);
    assert!(told.said.contains(&prints[0].name), "{}", told.said);
    let mut denims = throw.denims.clone();
    denims[1].name = denims[0].name.clone();
    let why = refused(&journal, &throw.prints, &denims);
    assert_eq!(why, Some(Rejection::SameName(denims[0].name.clone())));
    // A fabric may be called as a denim is.
    let mut prints = throw.prints.clone();
    prints[2].name.clone_from(&throw.denims[0].name);
    assert_eq!(refused(&journal, &prints, &throw.denims), None);
    // A throw that began with two of one name before this was asked is not held up by it.
    let mut prints = throw.prints.clone();
    prints[1].name = prints[0].name.clone();
    let denims = throw.denims.clone();
    let changed = Event::ClothChanged {
        prints: prints.clone(),
        denims,
    };
    let after = throw.after(&[changed]);
    prints[1].colour = "#123456".into();
    let denims = throw.denims.clone();
    assert!(
        decide(
            Some(&after),
            &Command::SetCloth {
                prints: prints.clone(),
                denims
            }
        )
        .is_ok()
    );
    prints[2].name = prints[0].name.clone();
    let denims = throw.denims.clone();
    let why = decide(Some(&after), &Command::SetCloth { prints, denims });
    assert!(matches!(why, Err(Rejection::SameName(_))), "{why:?}");
}

/// Of ten squares one was spoilt with its fabric on: nine are left for nine places. Counted anew there were
/// nine, of which eight are left: what she counts is kept, and that one is short is told.
#[test]
fn a_count_that_is_corrected_leaves_out_what_is_gone() {
    let words = Words::english();
    let mut journal = begin(Plan {
        across: 4,
        down: 4,
        ..Plan::default()
    });
    let count = |journal: &mut Journal, stock: u16| {
        let mut prints = journal.throw().prints.clone();
        prints[1].stock = Some(stock.into());
        let denims = journal.throw().denims.clone();
        act(journal, &Command::SetCloth { prints, denims }, 1);
        let listed = crate::show::parts::swatches(journal, context(&words));
        listed[1].count.clone()
    };
    assert_eq!(count(&mut journal, 10), "0 of 10 used");
    let squares: Vec<Rect> = Rect::grid(4, 4).squares().collect();
    let place = Command::SetFace {
        pieces: squares[..9].to_vec(),
        face: Face::Front,
        print: Some(1),
        laid_on: false,
    };
    act(&mut journal, &place, 2);
    assert_eq!(count(&mut journal, 8), "9 used, 1 short");
    assert_eq!(count(&mut journal, 9), "9 of 9 used");
    for task in [Task::Cut, Task::CoverFront] {
        let pieces = squares[..1].to_vec();
        act(&mut journal, &Command::Tick { task, pieces }, 3);
    }
    let spoil = Command::Spoil {
        piece: squares[0],
        why: crate::throw::Mishap::Flaw,
    };
    act(&mut journal, &spoil, 4);
    assert_eq!(count(&mut journal, 10), "9 used, 1 spoilt, 0 left");
    assert_eq!(count(&mut journal, 9), "9 used, 1 spoilt, 1 short");
}

/// Of 6 by 8 squares 12 of each fabric can lie apart at the corners, 24 of two. A pack of 30 different
/// squares adds as many as it has; where nobody counted it, it covers whatever is asked for.
#[test]
fn a_mixed_pack_does_not_crowd() {
    let words = Words::english();
    let mut journal = begin(Plan::default());
    let crowded = |journal: &Journal, front: u16| {
        let wishes = Wishes {
            front: front.into(),
            ..Wishes::default()
        };
        let asked = Query::Wishes {
            wishes: Some(wishes),
        };
        match answer(journal, &asked, context(&words)) {
            Ok(View::Wishes(view)) => view.short.is_some(),
            other => panic!("{other:?}"),
        }
    };
    let mut list = |stock: [Option<u16>; 2], mixed| {
        let mut prints = crate::demo::prints();
        prints.truncate(2);
        for (print, stock) in prints.iter_mut().zip(stock) {
            print.stock = stock.map(Count::from);
        }
        prints[1].mixed = mixed;
        let denims = journal.throw().denims.clone();
        act(&mut journal, &Command::SetCloth { prints, denims }, 1);
        [24, 25, 42, 43].map(|front| crowded(&journal, front))
    };
    assert_eq!(list([None, None], false), [false, true, true, true]);
    assert_eq!(list([None, Some(30)], true), [false, false, false, true]);
    assert_eq!(list([None, None], true), [false; 4]);
}

#[test]
fn a_mixed_fabric_is_told_where_it_is_glued() {
    let words = Words::english();
    let mut journal = begin(Plan::default());
    let mut prints = journal.throw().prints.clone();
    prints[0].mixed = true;
    let denims = journal.throw().denims.clone();
    act(&mut journal, &Command::SetCloth { prints, denims }, 1);
    let square = Rect::square(0, 0);
    let place = |print| Command::SetFace {
        pieces: vec![square],
        face: Face::Front,
        print: Some(print),
        laid_on: false,
    };
    for (print, told) in [(0, true), (1, false)] {
        act(&mut journal, &place(print), 2);
        let throw = journal.throw();
        let said =
            crate::show::work::special(throw, Task::CoverFront, square, context(&words)).join(" ");
        assert_eq!(said.contains("is different"), told, "{said}");
        let listed = crate::show::parts::swatches(&journal, context(&words));
        assert!(listed[0].count.contains("each square different"));
        // So does the list of what is covered, and the printed step.
        let floor = crate::show::floor::covering(&journal, context(&words));
        let group = &floor.groups[0];
        assert_eq!(
            group.count.contains("each square different"),
            told,
            "{group:?}"
        );
        let printed = sheet_steps(&journal, context(&words));
        assert_eq!(
            printed.contains("Each square of Rosehip is different"),
            told,
            "{printed}"
        );
    }
}

/// The instructions of all printed steps.
fn sheet_steps(journal: &Journal, context: Context<'_>) -> String {
    let calendar = crate::show::dates::ZoneName::named("UTC").calendar();
    let units = crate::show::export::PrintUnits::Inches;
    let day = |at| calendar.day(at);
    let sheet = crate::show::sheet::sheet(journal, context, units, &day);
    let steps = sheet.stages.iter().flat_map(|stage| &stage.steps);
    steps
        .flat_map(|step| step.how.clone())
        .collect::<Vec<_>>()
        .join(" ")
}

/// Wished were more than there was room for: what was laid is told, not what was wished.
#[test]
fn of_a_layout_it_is_told_what_was_laid() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = begin(Plan {
        across: 2,
        down: 2,
        ..Plan::default()
    });
    let wishes = Wishes {
        front: Count::from(2),
        back: Count::from(2),
        ..Wishes::default()
    };
    act(&mut journal, &Command::Wish { wishes }, 1);
    let undo = |journal: &Journal| {
        crate::show::parts::head(journal, context)
            .undo
            .expect("said")
    };
    assert_eq!(
        undo(&journal),
        "Fabric planned: 2 squares on the front, 2 on the back"
    );
    let layout = Arranger::new(journal.throw(), wishes, 1).layout(journal.throw());
    let covered = layout.faces.len();
    let wishes = Wishes {
        back: Count::from(3),
        ..wishes
    };
    act(&mut journal, &Command::LayOut { wishes, layout }, 2);
    assert_eq!(
        undo(&journal),
        format!("Faces of {covered} squares changed")
    );
}

/// A pack of which each square is another makes its fabric such, for good: a later pack of it says nothing
/// of that, and of denim nothing is said.
#[test]
fn a_mixed_pack_makes_its_fabric_mixed() {
    use crate::cloth::pile::Use;
    let mut journal = begin(Plan::default());
    let add = |makes, mixed| Command::AddPack {
        side: inches(5),
        count: Count::from(42),
        makes,
        mixed,
        name: "Pack".into(),
    };
    let fabric = Use::Fabric { print: 2 };
    let mixed = |journal: &Journal| -> Vec<bool> {
        journal.throw().prints.iter().map(|p| p.mixed).collect()
    };
    act(&mut journal, &add(Use::Denim { denim: None }, true), 1);
    act(&mut journal, &add(fabric, false), 1);
    assert_eq!(mixed(&journal), [false; 4]);
    let events = |journal: &Journal, mixed| {
        let entry = journal.propose(&add(fabric, mixed), 1).unwrap();
        match entry.what {
            crate::log::journal::What::Do(events) => events.len(),
            other => panic!("{other:?}"),
        }
    };
    assert_eq!((events(&journal, false), events(&journal, true)), (1, 2));
    act(&mut journal, &add(fabric, true), 1);
    assert_eq!(mixed(&journal), [false, false, true, false]);
    assert_eq!(events(&journal, true), 1);
}
