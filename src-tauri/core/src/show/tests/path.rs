//! The way through the work: how many taps it takes, what cools by itself, what comes next.

use super::*;
use crate::throw::Event;
use crate::throw::tasks::sitting;
use std::collections::{BTreeMap, BTreeSet};

/// Lay out fabrics on a throw of the demo's plan.
fn laid_out(plan: Plan, front: u32, back: u32) -> Journal {
    let mut journal = begin(plan);
    let wishes = Wishes {
        front: Count::at_most(front),
        back: Count::at_most(back),
        ..Wishes::default()
    };
    let layout = Arranger::new(journal.throw(), wishes, 1).layout(journal.throw());
    act(&mut journal, &Command::LayOut { wishes, layout }, 0);
    journal
}

/// What a command ticks: its tasks and to how many pieces.
fn ticked(action: &Command) -> (Vec<Task>, usize) {
    match action {
        Command::Tick { task, pieces } => (vec![*task], pieces.len()),
        Command::TickSitting { tasks, pieces } => (tasks.clone(), pieces.len()),
        Command::TickNext { task, count, .. } => (vec![*task], count.get() as usize),
        other => panic!("{other:?}"),
    }
}

/// Work a throw by its large button alone, and wait where something has to cool; gives what was
/// ticked by each tap.
fn by_the_large_button(mut journal: Journal) -> Vec<(Task, usize)> {
    let words = Words::english();
    let (mut now, mut taps) = (0, Vec::new());
    for _ in 0..2000 {
        let here = Context {
            now,
            ..context(&words)
        };
        let view = work_view(&journal, None, here);
        let Some(card) = view.card else { break };
        if let Some(at) = card.cool_at.filter(|at| *at > now) {
            // It cools by itself.
            now = at;
            continue;
        }
        // Squaring up is counted as one tap for all, as fours are that were not measured.
        let button = match card.task {
            Task::SquareUp => for_all(&card),
            _ => &card.ticks[0],
        };
        let action = &button.action;
        let (tasks, pieces) = ticked(action);
        // Nothing is ticked that was not told: each task with how it is done, and all pieces.
        for task in &tasks {
            let texts = crate::show::work::usual_how(journal.throw(), *task, card.piece, here);
            let first = texts.lines().next().unwrap_or_default();
            let at = *task == Task::Dot || card.how.iter().any(|line| line == first);
            assert!(at, "{task:?} is not told: {:?}", card.how);
        }
        if pieces > 1 && card.task != Task::SquareUp {
            let together = card.together.as_deref().unwrap_or_default();
            let told = format!("the first of {pieces}");
            assert!(together == told || together.starts_with(&format!("{told} in row ")));
            let label = &button.label;
            assert!(label.contains(&pieces.to_string()), "{label}");
        }
        taps.push((tasks[0], pieces));
        // A sitting takes its time.
        let minutes: f64 = tasks.iter().map(|t| t.usual_minutes()).sum();
        now += (minutes * pieces as f64 * 60_000.0) as Time;
        act(&mut journal, action, now);
    }
    let (done, all) = journal.throw().progress();
    assert_eq!(done, all, "it does not come to its end");
    taps
}

/// Measuring the fours is not counted; squaring them up is one tap.
#[test]
fn a_throw_of_six_by_eight_takes_few_taps() {
    let taps = by_the_large_button(laid_out(Plan::default(), 16, 12));
    println!("{} taps: {taps:?}", taps.len());
    assert!(taps.len() <= 40, "{} taps: {taps:?}", taps.len());
    // The pairs of a row are lapped in one sitting, also where fabric still cools on squares.
    let laps = taps.iter().filter(|(task, _)| *task == Task::Dot);
    let laps: Vec<usize> = laps.map(|(_, n)| *n).take(8).collect();
    assert_eq!(laps, [6, 6, 6, 6, 3, 3, 3, 3]);
    // Trimming the edge is one of them, and two rows with a single needle are none.
    let without = Plan {
        trim_edge: false,
        ..Plan::default()
    };
    let two_rows = Plan {
        stitch: crate::plan::Stitch::TwoRows {
            spacing: tenths_of_mm(60),
        },
        ..Plan::default()
    };
    for (plan, more) in [(without, 0), (two_rows, 1)] {
        let others = by_the_large_button(laid_out(plan, 16, 12));
        assert_eq!(others.len() + 1, taps.len() + more, "{others:?}");
    }
}

#[test]
fn what_has_cooled_is_ready_and_is_recorded_with_the_work_that_wanted_it() {
    let words = Words::english();
    let mut journal = begin(Plan {
        across: 2,
        down: 2,
        ..Plan::default()
    });
    act(
        &mut journal,
        &Command::Wish {
            wishes: Wishes::default(),
        },
        0,
    );
    next(&mut journal, Task::Cut, Kind::Square, 4);
    let pairs = [Rect::from([0, 0, 1, 2]), Rect::from([1, 0, 1, 2])];
    let sit = Command::TickSitting {
        tasks: sitting(Task::Dot, Joining::Lapped).to_vec(),
        pieces: pairs.to_vec(),
    };
    act(&mut journal, &sit, 1_000);
    let cool_at = 1_000 + 5 * 60_000;
    let card_at = |journal: &Journal, now| {
        let here = Context {
            now,
            ..context(&words)
        };
        work_view(journal, None, here).card.unwrap()
    };
    let warm = card_at(&journal, cool_at - 1);
    assert_eq!((warm.task, warm.cool_at), (Task::CoolLap, Some(cool_at)));
    // A moment before, a stitch is refused; at the moment it records the cooling too.
    let stitch = Command::Tick {
        task: Task::Stitch,
        pieces: vec![pairs[0]],
    };
    assert!(journal.propose(&stitch, cool_at - 1).is_err());
    let cool = card_at(&journal, cool_at);
    assert_eq!((cool.task, cool.cool_at), (Task::Stitch, None));
    act(&mut journal, &stitch, cool_at);
    let throw = journal.throw();
    assert!(throw.has(pairs[0], Task::CoolLap) && throw.has(pairs[0], Task::Stitch));
    // The other has cooled as well, but nothing was done to it.
    assert!(!throw.has(pairs[1], Task::CoolLap));
    let undo = journal.propose_undo(cool_at).unwrap();
    journal.accept(undo).unwrap();
    assert!(!journal.throw().has(pairs[0], Task::CoolLap));
    // She may say so earlier.
    let early = Command::Tick {
        task: Task::CoolLap,
        pieces: pairs.to_vec(),
    };
    act(&mut journal, &early, cool_at + 1);
    assert!(journal.throw().has(pairs[1], Task::CoolLap));
}

/// The clock stood at 2100 when a lap was pressed, and was put right since: nothing waits until
/// then, and nothing is taken for cool that may be warm.
#[test]
fn a_press_in_the_far_future_holds_nothing_up() {
    let words = Words::english();
    let mut journal = begin(Plan {
        across: 2,
        down: 1,
        ..Plan::default()
    });
    let wishes = Wishes::default();
    act(&mut journal, &Command::Wish { wishes }, 0);
    next(&mut journal, Task::Cut, Kind::Square, 2);
    let pair = Rect::from([0, 0, 1, 2]);
    let (now, year_2100) = (1_773_230_400_000, 4_102_444_800_000);
    let sit = Command::TickSitting {
        tasks: sitting(Task::Dot, Joining::Lapped).to_vec(),
        pieces: vec![pair],
    };
    act(&mut journal, &sit, year_2100);
    let here = Context {
        now,
        ..context(&words)
    };
    let card = work_view(&journal, None, here).card.unwrap();
    assert_eq!((card.task, card.cool_at), (Task::CoolLap, None));
    assert_eq!(crate::command::next_cool(journal.throw(), now), None);
    let tick = |task| Command::Tick {
        task,
        pieces: vec![pair],
    };
    assert!(journal.propose(&tick(Task::Stitch), now).is_err());
    act(&mut journal, &tick(Task::CoolLap), now);
    act(&mut journal, &tick(Task::Stitch), now + 1);
    // A clock that is a little ahead is believed, for twice the cooling time at most.
    let five = 5 * 60_000;
    let undo = journal.propose_undo(now).unwrap();
    journal.accept(undo).unwrap();
    let cooled = |now| journal.throw().cooled_at(pair, now);
    assert_eq!(cooled(year_2100 - five), Some(year_2100 + five));
    assert_eq!(cooled(year_2100 - five - 1), None);
}

/// A covered square that has cooled lets the pair be lapped, and is recorded with it.
#[test]
fn a_cooled_square_is_recorded_with_the_lap_that_covers_it() {
    let mut journal = begin(Plan {
        across: 2,
        down: 1,
        ..Plan::default()
    });
    let square = Rect::square(0, 0);
    let cover = Command::SetFace {
        pieces: vec![square],
        face: Face::Front,
        print: Some(0),
        laid_on: false,
    };
    act(&mut journal, &cover, 0);
    next(&mut journal, Task::Cut, Kind::Square, 2);
    for task in [Task::CutFabric, Task::CoverFront, Task::PressCover] {
        if journal.throw().next(square) == Some(task) {
            next(&mut journal, task, Kind::Square, 1);
        }
    }
    let pair = Rect::from([0, 0, 1, 2]);
    let lap = Command::Tick {
        task: Task::Dot,
        pieces: vec![pair],
    };
    let cool_at = journal.throw().cooled_at(square, 0).unwrap();
    assert!(journal.propose(&lap, cool_at - 1).is_err());
    let entry = journal.propose(&lap, cool_at).unwrap();
    let crate::log::journal::What::Do(events) = &entry.what else {
        panic!()
    };
    let tasks: Vec<Task> = events
        .iter()
        .map(|event| match event {
            Event::Done { task, .. } => *task,
            other => panic!("{other:?}"),
        })
        .collect();
    assert_eq!(tasks, [Task::CoolCover, Task::Dot]);
}

#[test]
fn no_bigger_part_is_begun_while_a_four_cools() {
    let words = Words::english();
    let mut journal = begin(Plan {
        across: 6,
        down: 2,
        ..Plan::default()
    });
    act(
        &mut journal,
        &Command::Wish {
            wishes: Wishes::default(),
        },
        0,
    );
    let fours = [0, 2, 4].map(|col| Rect::from([0, col, 2, 2]));
    next(&mut journal, Task::Cut, Kind::Square, 12);
    for task in [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch] {
        next(&mut journal, task, Kind::Pair, 6);
    }
    // Two fours are squared up and could be joined; the third still cools.
    for task in [
        Task::Dot,
        Task::PressLap,
        Task::CoolLap,
        Task::Stitch,
        Task::PressBlock,
        Task::SquareUp,
    ] {
        let pieces = fours[..2].to_vec();
        act(&mut journal, &Command::Tick { task, pieces }, 1_000);
    }
    let sit = Command::TickSitting {
        tasks: vec![Task::Dot, Task::PressLap],
        pieces: vec![fours[2]],
    };
    act(&mut journal, &sit, 2_000);
    let here = Context {
        now: 3_000,
        ..context(&words)
    };
    let view = work_view(&journal, None, here);
    assert_eq!(view.card.unwrap().task, Task::CoolLap);
    // It is offered all the same.
    let bigger = view.offers.iter().find(|o| o.task == Task::Dot).unwrap();
    assert!(!matches!(bigger.kind, Kind::Pair | Kind::Four));
}

/// A throw of 4 × 4 whose squares are cut, and so many pairs lapped and glued.
fn glued(pairs: u32) -> Journal {
    let mut journal = bare_denim(4, 4);
    next(&mut journal, Task::Cut, Kind::Square, 16);
    next(&mut journal, Task::Dot, Kind::Pair, pairs);
    journal
}

/// The lap is changed while pairs are only glued: their step says at which lap they were glued, and
/// they are lifted and lapped again, one or all of them. A stitched one is not offered.
#[test]
fn pairs_glued_before_the_lap_was_changed_are_lapped_again() {
    let words = Words::english();
    let mut journal = glued(3);
    let [sewn, glued, _] = [[0, 0, 1, 2], [0, 2, 1, 2], [1, 0, 1, 2]].map(Rect::from);
    for task in [Task::PressLap, Task::CoolLap, Task::Stitch] {
        let pieces = vec![sewn];
        act(&mut journal, &Command::Tick { task, pieces }, 1 << 40);
    }
    // As long as the plan has the same lap, it is for a crooked one alone.
    let ways = off_view(&journal, glued, None).ways;
    assert_eq!(ways.len(), 1, "{ways:?}");
    let lap = crate::measure::sixty_fourths(40);
    let plan = Plan {
        lap,
        ..journal.throw().plan
    };
    let change = Command::ChangePlan { plan };
    let events = crate::command::decide(Some(journal.throw()), &change).unwrap();
    let (_, said) = crate::show::change::compare(&journal, &events, context(&words));
    let told = "2 of them are only glued";
    assert!(said.iter().any(|line| line.starts_with(told)), "{said:?}");
    act(&mut journal, &change, 1 << 41);
    let told = |journal: &Journal, task| {
        let query = Some((task, Kind::Pair));
        let view = crate::show::work::work(journal, None, query, context(&words));
        view.card.expect("a step")
    };
    let press = plain(&told(&journal, Task::PressLap).how);
    assert!(
        press.contains("lapped at ½ in; the plan has ⅝ in now"),
        "{press}"
    );
    assert!(off_view(&journal, sewn, None).ways.is_empty());
    let ways = off_view(&journal, glued, None).ways;
    let titles = ways
        .iter()
        .map(|way| plain(std::slice::from_ref(&way.title)));
    assert_eq!(
        titles.collect::<Vec<_>>(),
        [
            "Lift it and lap it again at ⅝ in",
            "Lift all 2 that were lapped at ½ in, and lap them again at ⅝ in"
        ]
    );
    act(&mut journal, &ways[1].button.action, 1 << 42);
    // The story tells it as a turn of the work; nothing was sewn, and it was no mishap.
    let last = told_last(&journal, &words);
    assert_eq!(last.sort, crate::show::story::StorySort::Turn);
    let lifted = "Lifted, only glue held them: Pair 2·1 + 2·2 and one more";
    assert_eq!(last.words, lifted);
    let throw = journal.throw();
    assert!(throw.has(sewn, Task::Stitch) && !throw.begun(glued));
    let card = told(&journal, Task::Dot);
    let open = card.open.expect("what is to be lifted first");
    assert_eq!(open.title, "First lift 2 glued laps");
    assert!(
        plain(&open.lines).starts_with("Dampen each lap"),
        "{open:?}"
    );
    act(&mut journal, &card.ticks[0].action, 1 << 43);
    assert_eq!(journal.throw().made(glued).lap, lap);
    let press = plain(&told(&journal, Task::PressLap).how);
    assert!(
        !press.contains("lapped at") && !press.contains("unpicked"),
        "{press}"
    );
}

/// What the story ends with.
fn told_last(journal: &Journal, words: &Words) -> crate::show::story::StoryItem {
    let zone = crate::show::dates::ZoneName::named("UTC");
    let story = crate::show::story::story(journal, &zone, context(words));
    let last = story.days.last().and_then(|day| day.items.last());
    last.cloned().expect("something is told")
}

/// A seam that is unpicked is a mishap in the story, with the length opened.
#[test]
fn an_unpicked_seam_is_told_as_such() {
    let words = Words::english();
    let mut journal = glued(1);
    let pair = Rect::from([0, 0, 1, 2]);
    for task in [Task::PressLap, Task::CoolLap, Task::Stitch] {
        let pieces = vec![pair];
        act(&mut journal, &Command::Tick { task, pieces }, 1 << 40);
    }
    let unpick = Command::Unpick {
        pieces: vec![pair],
        lap: None,
    };
    act(&mut journal, &unpick, 1 << 41);
    let last = told_last(&journal, &words);
    assert_eq!(last.sort, crate::show::story::StorySort::Mishap);
    let told = plain(std::slice::from_ref(&last.words));
    assert_eq!(told, "Opened again: Pair 1·1 + 1·2, 5 in");
}

/// On the sheet the joins begun with another lap than the plan's are one line.
#[test]
fn laps_that_differ_alike_are_one_line_of_the_sheet() {
    let words = Words::english();
    let mut journal = glued(3);
    let lap = crate::measure::sixty_fourths(40);
    let plan = Plan {
        lap,
        ..journal.throw().plan
    };
    act(&mut journal, &Command::ChangePlan { plan }, 1 << 41);
    let calendar = crate::show::dates::ZoneName::named("UTC").calendar();
    let units = crate::show::export::PrintUnits::Inches;
    let day = |at| calendar.day(at);
    let sheet = crate::show::sheet::sheet(&journal, context(&words), units, &day);
    assert_eq!(
        plain(&sheet.laps),
        "Begun with ½ in instead of ⅝ in, 3 in all. Pairs: 1·1 + 1·2 to 1·3 + 1·4 in the order of their boxes."
    );
    // Beside a lap stands where it holds; what follows from the lap is told by the lap.
    let pairs = &sheet.stages[1];
    let figure = |step: usize, label: &str| {
        let rows = pairs.steps[step].figures.iter();
        let rows: Vec<_> = rows.filter(|row| row.label == label).collect();
        assert_eq!(rows.len(), 1, "{label}");
        assert_eq!(rows[0].other, None);
        plain(std::slice::from_ref(&rows[0].own))
    };
    assert_eq!(
        figure(0, "Lap"),
        "½ in: 1·1 + 1·2 to 1·3 + 1·4 in the order of their boxes; ⅝ in: all others"
    );
    assert_eq!(figure(1, "Lap"), "½ in; ⅝ in, as in step 1");
    let stitched = pairs
        .steps
        .iter()
        .position(|s| s.title == "Stitch the pair");
    assert_eq!(
        figure(
            stitched.expect("it is stitched"),
            "Stitching from the raw edge"
        ),
        "¼ in for a lap of ½ in; 5/16 in for a lap of ⅝ in"
    );
    // No name is broken where a line ends.
    assert!(
        sheet.laps[0].contains("1·1\u{a0}+\u{a0}1·2"),
        "{:?}",
        sheet.laps
    );
    assert_eq!(pairs.lines[0].label, "1·1\u{a0}+\u{a0}1·2");
    assert_eq!(figure(0, "Seam length"), "5 in");
}

/// Of a throw sewn half with one lap and half with another, no more names are told than there are
/// runs; the joins between larger parts differ in length, and the fewest are named.
#[test]
fn where_a_figure_holds_is_told_by_the_fewest_names() {
    let words = Words::english();
    let journal = begin(Plan::default());
    let calendar = crate::show::dates::ZoneName::named("UTC").calendar();
    let units = crate::show::export::PrintUnits::Both;
    let day = |at| calendar.day(at);
    let sheet = crate::show::sheet::sheet(&journal, context(&words), units, &day);
    let larger = &sheet.stages[3].steps[0];
    let seam = larger.figures.iter().find(|row| row.label == "Seam length");
    assert_eq!(
        plain(&[seam.expect("it is told").own.clone()]),
        "27½ in (≈ 699 mm): Rows A and B, Rows A to C; 9½ in (≈ 241 mm): all others"
    );
}

/// What is said of the hours left is the same of all as of the stages together, here and in the
/// list of what to have at hand, at any point of the work.
#[test]
fn the_hours_of_the_stages_add_up() {
    fn hours(text: &str) -> u32 {
        let text = text.split('(').next().unwrap_or_default();
        let words: Vec<&str> = text.split_whitespace().collect();
        let before = |unit: &str| {
            let at = words.iter().position(|word| word.starts_with(unit));
            at.map_or(0, |at| words[at - 1].parse::<u32>().expect("a number"))
        };
        before("h") * 60 + before("min")
    }
    let words = Words::english();
    let mut journal = laid_out(Plan::default(), 16, 12);
    for n in 0..400 {
        if n % 7 == 0 {
            let way = crate::show::stages::way(&journal, context(&words));
            let each = way.rows.iter().filter_map(|row| row.left.as_deref());
            let sum: u32 = each.map(hours).sum();
            assert_eq!(sum, hours(&way.left), "{way:?}");
            let gathered = crate::show::gather::gather(&journal, context(&words));
            let time = gathered.figures.iter().find(|f| f.label == "Work left");
            let time = &time.expect("the time left").value.text;
            assert_eq!(hours(time), sum, "{time}");
        }
        let Some(card) = work_view(&journal, None, context(&words)).card else {
            return;
        };
        act(&mut journal, &card.ticks[0].action, n * 3_600_000);
    }
    panic!("it does not come to its end");
}

/// Of the parts of a long join the squares beside it are drawn with their names: those of the upper
/// part above it, those of the lower one below.
#[test]
fn the_squares_beside_a_long_join_are_drawn() {
    let label = |mark: &crate::show::picture::Mark| match mark {
        crate::show::picture::Mark::Area { label, .. } => label.clone(),
        _ => None,
    };
    let words = Words::english();
    let mut journal = bare_denim(6, 8);
    let mut drawn = BTreeMap::new();
    for n in 0..400 {
        let Some(card) = work_view(&journal, None, context(&words)).card else {
            break;
        };
        if card.task == Task::Dot {
            let marks = card.picture.marks.iter();
            let names: BTreeSet<String> = marks.filter_map(label).collect();
            drawn.insert(card.piece, names);
        }
        act(&mut journal, &card.ticks[0].action, n * 3_600_000);
    }
    let whole = &drawn[&journal.throw().assembly().whole()];
    let join = *journal
        .throw()
        .assembly()
        .join(Rect::from([0, 0, 8, 6]))
        .unwrap();
    let (above, below) = (join.second.row, join.second.row + 1);
    for row in [above - 1, above, below, below + 1] {
        for place in 1..=4 {
            let name = format!("{row}·{place}");
            assert!(whole.contains(&name), "{name} of {whole:?}");
        }
    }
}

/// A square of a pair that only glue holds is spoilt: no seam is spoken of, but that its lap is
/// lifted, where it is offered, on the step and in what was opened.
#[test]
fn a_glued_pair_is_lifted_for_a_new_square() {
    let words = Words::english();
    let mut journal = glued(1);
    let square = Rect::square(0, 1);
    let ways = off_view(&journal, square, Some(crate::throw::Mishap::Lost)).ways;
    let cut = |way: &&crate::show::RemedyRow| way.title == "Cut another";
    let way = ways.iter().find(cut).expect("it can be cut again");
    let lines = plain(&way.lines);
    assert!(
        lines.contains("Dampen the lap of Pair 1·1 + 1·2"),
        "{lines}"
    );
    assert!(lines.contains("Nothing sewn is unpicked"), "{lines}");
    assert!(!lines.to_lowercase().contains("seam"), "{lines}");
    act(&mut journal, &way.button.action, 1);
    let card = card_of(&journal, Task::Cut, Kind::Square);
    let open = card.open.expect("it is lifted first");
    assert_eq!(
        open.title,
        "First lift one glued lap, before the new Square 1·2 goes in"
    );
    // The steps between cutting it and lapping it do not say it again.
    next(&mut journal, Task::Cut, Kind::Square, 1);
    let card = work_view(&journal, None, context(&words)).card.unwrap();
    assert_eq!(card.task, Task::Dot);
    assert!(card.open.is_some(), "{:?}", card.piece);
    act(&mut journal, &card.ticks[0].action, 2);
    let card = card_of(&journal, Task::Stitch, Kind::Pair);
    assert_eq!((card.piece, card.open), (Rect::from([0, 0, 1, 2]), None));
}

/// A step of the sheet is of pairs, of fours, or of what is larger.
#[test]
fn the_steps_of_a_sheet_name_what_they_make() {
    let words = Words::of("de");
    let context = context(&words);
    let journal = begin(Plan::default());
    let calendar = crate::show::dates::ZoneName::named("UTC").calendar();
    let units = crate::show::export::PrintUnits::Inches;
    let day = |at| calendar.day(at);
    // The pair and the four are named in every language, not only where the words are alike.
    let sheet = crate::show::sheet::sheet(&journal, context, units, &day);
    let titles = |n: usize| sheet.stages[n].steps[0].title.clone();
    assert_eq!(
        [titles(1), titles(2)],
        [
            "Paar überlappen und kleben",
            "Zwei Paare zum Vierer überlappen"
        ]
    );
    // Others too sew a scrap before the first lap, and are told once.
    let scrap = "Näh zuerst eine Probe mit dieser Nadel und diesem Garn.";
    let steps = sheet.stages.iter().flat_map(|stage| &stage.steps);
    let told: Vec<_> = steps.filter(|s| s.how.iter().any(|l| l == scrap)).collect();
    assert_eq!(told.len(), 1);
    assert_eq!(told[0].title, titles(1));
}
