//! Fabric squares smaller than the throw's: patches in the middle of denim squares.

use super::*;
use crate::cloth::pile::Use;
use crate::command::{Rejection, decide};
use crate::measure::{Length, half_inches};
use crate::show::{GatherView, Mark};

const PRINT: Use = Use::Fabric { print: 1 };

/// Two by two squares of 7 in with a fabric that nobody has counted yet.
fn sevens() -> Journal {
    let plan = Plan {
        across: 2,
        down: 2,
        side: inches(7),
        ..Plan::default()
    };
    let mut journal = begin(plan);
    let mut prints = journal.throw().prints.clone();
    prints[1].stock = None;
    let denims = journal.throw().denims.clone();
    act(&mut journal, &Command::SetCloth { prints, denims }, 1);
    journal
}

fn pack(side: Length) -> Command {
    Command::AddPack {
        side,
        count: Count::from(12),
        makes: PRINT,
        name: "Small squares".into(),
        mixed: false,
    }
}

/// Cutting denim is the same for all, whatever comes on it; gluing is not.
#[test]
fn squares_are_cut_together_whatever_is_glued_on_them() {
    let mut journal = sevens();
    act(&mut journal, &pack(inches(4)), 1);
    let squares: Vec<Rect> = Rect::grid(2, 2).squares().collect();
    for (n, print) in [(0, 1), (1, 0)] {
        let place = Command::SetFace {
            pieces: vec![squares[n]],
            face: Face::Front,
            print: Some(print),
            laid_on: false,
        };
        act(&mut journal, &place, 1);
    }
    let most_done = |journal: &Journal, task: Task| {
        let ticks = card_of(journal, task, Kind::Square).ticks.into_iter();
        let done = ticks.map(|button| {
            let mut after = journal.clone();
            act(&mut after, &button.action, 2);
            let done = |square: &&Rect| after.throw().has(**square, task);
            squares.iter().filter(done).count()
        });
        done.max()
    };
    assert_eq!(most_done(&journal, Task::Cut), Some(4));
    all_ready(&mut journal, Task::Cut, Kind::Square, 3);
    assert_eq!(most_done(&journal, Task::CoverFront), Some(1));

    // By hand: a patch of 4 in is drawn 4/7 as wide as the whole square of 7 in beside it.
    let steps = [
        Task::CoverFront,
        Task::PressCover,
        Task::CoolCover,
        Task::StitchPatch,
    ];
    for (hour, task) in (4..).zip(steps) {
        all_ready(&mut journal, task, Kind::Square, hour);
    }
    let drawn = card_of(&journal, Task::Dot, Kind::Pair).picture.marks;
    let wide = |square: usize| {
        let named = names::square(squares[square]);
        let area = drawn.iter().find_map(|mark| match mark {
            Mark::Area { w, label, .. } if label.as_ref() == Some(&named) => Some(*w),
            _ => None,
        });
        area.expect("each square is drawn")
    };
    let part = wide(0) / wide(1);
    assert!((part - 4.0 / 7.0).abs() < 1e-3, "{part}");
}

fn gather(journal: &Journal, context: Context<'_>) -> GatherView {
    match answer(journal, &Query::Gather, context) {
        Ok(View::Gather(view)) => view,
        other => panic!("{other:?}"),
    }
}

/// By hand: 7 in less twice the lap of ½ in and the ⅛ in that keep a patch clear are 5¾ in.
#[test]
fn a_patch_stays_clear_of_the_laps() {
    let mut journal = sevens();
    let most = quarter_inches(23);
    assert_eq!(journal.throw().plan.most_patch(), most);
    for (side, fits) in [
        (inches(4), true),
        (most, true),
        (most + sixty_fourths(1), false),
        (half_inches(13), false),
        (eighth_inches(7), false),
    ] {
        let found = decide(Some(journal.throw()), &pack(side));
        assert_eq!(found.is_ok(), fits, "{side:?}");
        if !fits {
            let small = matches!(found, Err(Rejection::PackSmall { most: m, .. }) if m == most);
            assert!(small, "{found:?}");
        }
    }
    // Denim is not pieced out of patches.
    let denim = Command::AddPack {
        side: inches(4),
        count: Count::from(12),
        makes: Use::ANY_DENIM,
        name: "Small squares".into(),
        mixed: false,
    };
    assert!(decide(Some(journal.throw()), &denim).is_err());

    act(&mut journal, &pack(inches(5)), 2);
    // Squaring up may take off one side, and a wider lap reaches further in.
    let plan = journal.throw().plan;
    let trimmed = Plan {
        trim: Some(plan.natural_four() - half_inches(1)),
        ..plan
    };
    assert_eq!(trimmed.most_patch(), quarter_inches(19));
    let wider = Plan {
        lap: inches(1),
        ..plan
    };
    for plan in [trimmed, wider] {
        let why = decide(Some(journal.throw()), &Command::ChangePlan { plan });
        assert!(matches!(why, Err(Rejection::PatchCaught { .. })), "{why:?}");
    }
    // A fabric has squares of one size.
    for other in [inches(4), inches(7), inches(10)] {
        let why = decide(Some(journal.throw()), &pack(other));
        assert_eq!(why, Err(Rejection::PackMixed(1)));
    }
    act(&mut journal, &pack(inches(5)), 3);
}

/// From the pack to the wash: 4 in on 7 in leave 1½ in of denim all round.
#[test]
fn a_patch_is_glued_and_stitched_round() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = sevens();
    act(&mut journal, &pack(inches(4)), 2);
    let Ok(View::Pile(pile)) = answer(&journal, &Query::Pile, context) else {
        panic!()
    };
    let said = plain(&[pile.rows[0].said.clone()]);
    assert!(said.contains("12 squares"), "{said}");
    assert!(said.contains("1½ in of denim all round"), "{said}");
    let counted = Command::CutPiece {
        n: 1,
        index: 0,
        squares: Count::from(12),
        by_strip: Vec::new(),
        pieced: None,
        strips: None,
        outline: None,
    };
    act(&mut journal, &counted, 3);
    let before = crate::faces::spread::thickest(journal.throw());
    let [one, two] = [Rect::square(0, 0), Rect::square(0, 1)];
    for (n, (face, pieces)) in [(Face::Front, vec![one, two]), (Face::Back, vec![one])]
        .into_iter()
        .enumerate()
    {
        let print = Some(1);
        let command = Command::SetFace {
            pieces,
            face,
            print,
            laid_on: false,
        };
        act(&mut journal, &command, 4 + n as i64);
    }
    let throw = journal.throw();
    // Nothing of it lies in a lap; it is stitched round on each face: 3 times 16 in.
    assert_eq!(crate::faces::spread::thickest(throw), before);
    assert_eq!((throw.small_patches(), throw.patch_rounds()), (3, 3));
    assert_eq!(throw.patch_seams(), inches(48));
    let rounds = |square| {
        let tasks = throw.tasks(square);
        tasks.iter().filter(|t| **t == Task::StitchPatch).count()
    };
    assert_eq!([one, two, Rect::square(1, 1)].map(rounds), [2, 1, 0]);
    assert!(!throw.tasks(one).contains(&Task::CutFabric));
    assert_eq!(throw.prints[1].stock, Some(Count::from(12)));
    let said: Vec<String> = gather(&journal, context)
        .rows
        .into_iter()
        .flat_map(|row| row.lines)
        .collect();
    assert!(plain(&said).contains("3 patches of 4 × 4 in"), "{said:?}");

    // The face shows it smaller than its square, with its denim round it.
    let asked = Query::Faces { face: Face::Front };
    let Ok(View::Faces(faces)) = answer(&journal, &asked, context) else {
        panic!()
    };
    let small = |mark: &Mark| matches!(mark, Mark::Shape { d, .. } if d.starts_with("h0.57v0.57"));
    assert!(faces.picture.marks.iter().any(small));
    assert!(plain(&faces.lines).contains("3 fabrics are patches"));

    let all = Rect::grid(2, 2).squares().collect();
    let cut = Command::Tick {
        task: Task::Cut,
        pieces: all,
    };
    act(&mut journal, &cut, 40_000_000);
    let card = card_of(&journal, Task::CoverFront, Kind::Square);
    let how = plain(&card.how);
    assert!(how.contains("1½ in of denim shows all round"), "{how}");
    words_are_whole(&card);
    let ticks = [
        Task::CoverFront,
        Task::CoverBack,
        Task::PressCover,
        Task::CoolCover,
        Task::StitchPatch,
    ];
    for (n, task) in ticks.into_iter().enumerate() {
        let pieces = match task {
            Task::CoverBack => vec![one],
            _ => vec![one, two],
        };
        act(
            &mut journal,
            &Command::Tick { task, pieces },
            50_000_000 + n as i64,
        );
    }
    let throw = journal.throw();
    assert!(throw.complete(two) && !throw.complete(one));
    assert_eq!(throw.next(one), Some(Task::StitchPatch));
    let card = card_of(&journal, Task::StitchPatch, Kind::Square);
    assert_eq!(plain(&[card.figures[0].value.text.clone()]), "4 × 4 in");
}

/// A throw of four by two squares whose left four is sewn.
fn with_a_four() -> Journal {
    let mut journal = begin(Plan {
        across: 4,
        down: 2,
        ..Plan::default()
    });
    all_ready(&mut journal, Task::Cut, Kind::Square, 1);
    let pairs = [0, 1].map(|row| Rect::from([row, 0, 1, 2]));
    for (hour, pieces) in [(2, &pairs[..]), (8, &[Rect::from([0, 0, 2, 2])])] {
        for (later, task) in [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch]
            .into_iter()
            .enumerate()
        {
            let pieces = pieces.to_vec();
            let at = (hour + later as i64) * 3_600_000;
            act(&mut journal, &Command::Tick { task, pieces }, at);
        }
    }
    journal
}

fn lay_on(pieces: &[Rect], face: Face, print: Option<u8>) -> Command {
    Command::SetFace {
        pieces: pieces.to_vec(),
        face,
        print,
        laid_on: true,
    }
}

/// By hand: of a square of 5 in the laps of ½ in and the ⅛ in that keep fabric clear of them leave 3¾ in
/// in the middle; round it are 15 in. A square that is still loose gets a whole one.
#[test]
fn fabric_is_laid_on_squares_that_are_sewn_in() {
    let words = Words::english();
    let context = context(&words);
    let mut journal = with_a_four();
    let later = 100_000_000;
    let [sewn, other, loose] = [(0, 0), (1, 1), (0, 2)].map(|(r, c)| Rect::square(r, c));
    let before = crate::faces::spread::thickest(journal.throw());
    let asked = Command::SetFace {
        pieces: vec![sewn],
        face: Face::Back,
        print: Some(1),
        laid_on: false,
    };
    let refused = decide(Some(journal.throw()), &asked);
    assert_eq!(refused, Err(Rejection::Joined(sewn)));
    let view =
        |journal: &Journal| match answer(journal, &Query::Faces { face: Face::Back }, context) {
            Ok(View::Faces(view)) => view,
            other => panic!("{other:?}"),
        };
    let shown = view(&journal);
    let bare = shown.cells.iter().filter(|cell| cell.sewn_bare);
    assert_eq!(bare.count(), 4);
    let said = shown.laid_on.expect("it can be laid on");
    assert!(
        plain(std::slice::from_ref(&said)).contains("trimmed to 3¾ × 3¾ in"),
        "{said}"
    );

    act(
        &mut journal,
        &lay_on(&[sewn, loose], Face::Back, Some(1)),
        3,
    );
    let side = quarter_inches(15);
    let throw = journal.throw();
    let on = |square| throw.patch_on(square, Face::Back);
    assert_eq!([on(sewn), on(loose)], [Some(side), None]);
    assert_eq!((throw.small_patches(), throw.patch_rounds()), (1, 1));
    assert_eq!(throw.patch_seams(), inches(15));
    // Cut from cloth, it is cut that large at once.
    let cut = |square| {
        let figures =
            crate::show::card_figures::card_figures(throw, Task::CutFabric, square, context);
        let square = say!(context, "figure-square");
        let figure = figures.into_iter().find(|figure| figure.label == square);
        figure.expect("told").value.text.replace('\u{a0}', " ")
    };
    assert_eq!([cut(sewn), cut(loose)], ["3¾ × 3¾ in", "5 × 5 in"]);
    // It lies in no lap; the whole one does.
    assert_eq!(before, (2, 2, 4));
    assert_eq!(crate::faces::spread::thickest(throw), (3, 2, 5));
    let left: Vec<Task> = throw.tasks(sewn).into_iter().skip(1).collect();
    let steps = [
        Task::CoverBack,
        Task::PressCover,
        Task::CoolCover,
        Task::StitchPatch,
    ];
    assert_eq!(left, steps);
    let shown = view(&journal);
    assert_eq!(shown.cells.iter().filter(|cell| cell.sewn_bare).count(), 3);
    let small = |mark: &Mark| matches!(mark, Mark::Shape { d, .. } if d.starts_with("h0.75v0.75"));
    assert!(shown.picture.marks.iter().any(small));
    let whole = |mark: &Mark| match mark {
        Mark::Shape {
            d,
            at,
            ink: crate::show::Ink::Cloth,
            ..
        } if d.starts_with("h1v1") => at.len(),
        _ => 0,
    };
    // Seven whole squares, and the denim round the patch.
    assert_eq!(shown.picture.marks.iter().map(whole).sum::<usize>(), 8);
    // The whole square of the same fabric is told of by itself: no button glues both.
    let ready: Vec<Rect> =
        crate::command::ready_for(journal.throw(), Kind::Square, Task::CoverBack).collect();
    assert_eq!(ready, [sewn, loose]);
    for button in card_of(&journal, Task::CoverBack, Kind::Square).ticks {
        let mut glued = journal.clone();
        act(&mut glued, &button.action, later);
        let done = |square| glued.throw().has(square, Task::CoverBack);
        assert!(done(sewn) && !done(loose), "{}", button.label);
    }
    // It is trimmed first, with a blade.
    let warned = card_of(&journal, Task::CoverBack, Kind::Square).caution;
    assert_eq!(
        warned.map(|c| c.caution),
        Some(crate::throw::tasks::Caution::Blade)
    );
    let how = plain(&card_of(&journal, Task::CoverBack, Kind::Square).how);
    assert!(
        how.contains("Trim the fabric to 3¾ × 3¾ in. Turn the work over."),
        "{how}"
    );

    // Another fabric in its stead, then none: nobody stitches round what is not there.
    act(
        &mut journal,
        &lay_on(&[sewn], Face::Back, Some(2)),
        later + 4,
    );
    assert_eq!(journal.throw().patch_on(sewn, Face::Back), Some(side));
    let mut off = journal.clone();
    act(&mut off, &lay_on(&[sewn], Face::Back, None), later + 5);
    assert_eq!(
        (off.throw().patch_rounds(), off.throw().tasks(sewn).len()),
        (0, 1)
    );
    // Once it is glued it stays.
    let glued = Command::Tick {
        task: Task::CoverBack,
        pieces: vec![sewn],
    };
    act(&mut journal, &glued, later + 6);
    let refused = decide(Some(journal.throw()), &lay_on(&[sewn], Face::Back, None));
    assert_eq!(refused, Err(Rejection::Glued(sewn)));
    // Chosen among others it stays, and they are changed.
    let shown = view(&journal).cells;
    let fixed = shown.iter().filter(|cell| cell.fixed);
    assert_eq!(fixed.map(|cell| cell.piece).collect::<Vec<_>>(), [sewn]);
    let mut among = journal.clone();
    act(
        &mut among,
        &lay_on(&[sewn, loose], Face::Back, Some(0)),
        later + 7,
    );
    let back = |square| among.throw().cover(square).back;
    assert_eq!((back(sewn), back(loose)), (Some(2), Some(0)));
    // Damage on its other face is covered and stitched round as well.
    let damage = Command::Patch {
        piece: sewn,
        face: Face::Front,
        print: 0,
        why: crate::throw::Mishap::Flaw,
    };
    act(&mut journal, &damage, later + 7);
    assert_eq!(journal.throw().patch_rounds(), 2);
    assert_eq!(journal.throw().patch_seams(), inches(30));
    act(
        &mut journal,
        &lay_on(&[other], Face::Front, Some(0)),
        later + 8,
    );
    assert_eq!(journal.throw().patch_rounds(), 3);
    words_are_whole(&view(&journal));
}

/// By hand: squares of 2½ in under laps of ½ in leave 1¼ in, those of 2¼ in 1 in, those of 2 in ¾ in,
/// which nobody stitches round. Fabric that comes in patches of 3 in is laid on as it is.
#[test]
fn what_is_laid_on_is_worth_stitching_round() {
    let laid = |side| {
        Plan {
            side,
            ..Plan::default()
        }
        .laid_on()
    };
    let sides = [10, 9, 8].map(|quarters| laid(quarter_inches(quarters)));
    assert_eq!(sides, [Some(quarter_inches(5)), Some(inches(1)), None]);
    let mut throw = with_a_four().throw().clone();
    throw.prints[0].patch = Some(inches(3));
    assert_eq!(throw.lies_on_sewn(0), Some(inches(3)));
    assert_eq!(throw.lies_on_sewn(1), Some(quarter_inches(15)));
    throw.plan.side = inches(2);
    let small = throw.assembly().whole().squares().next().expect("a square");
    let refused = decide(Some(&throw), &lay_on(&[small], Face::Front, Some(1)));
    assert_eq!(refused, Err(Rejection::Joined(small)));
}
