//! The edge before the binding, and the binding.

use super::*;
use crate::plan::binding::row_from_edge;
use crate::show::Mark;
use crate::show::picture::Ink;
use crate::throw::stage::{Stage, stages};
use crate::throw::stock::strip_shown;
use crate::throw::tasks::Caution;

/// A throw of two by two squares, sewn as far as its one four.
fn sewn(trim_edge: bool) -> Journal {
    let mut journal = stitched_with(Plan {
        across: 2,
        down: 2,
        trim_edge,
        ..Plan::default()
    });
    all_ready(&mut journal, Task::SquareUp, Kind::Four, 20);
    journal
}

fn stitched_with(plan: Plan) -> Journal {
    let mut journal = begin(plan);
    all_denim(&mut journal);
    all_ready(&mut journal, Task::Cut, Kind::Square, 1);
    for (hour, kind) in [(2, Kind::Pair), (8, Kind::Four)] {
        for (later, task) in [Task::Dot, Task::PressLap, Task::CoolLap, Task::Stitch]
            .into_iter()
            .enumerate()
        {
            all_ready(&mut journal, task, kind, hour + later as Time);
        }
    }
    all_ready(&mut journal, Task::PressBlock, Kind::Four, 15);
    journal
}

/// By hand: 6 × 8 squares of 5 in lapped ½ in measure 27½ × 36½ in, so that once round is 128 in; with
/// 4 in to finish with the strip is 132 in long, 5 strips of 28 in with 4 joins (28 · 5 − 4 · ½ = 138).
#[test]
fn lengths_on_the_steps_of_the_binding() {
    let words = Words::english();
    let journal = begin(Plan::default());
    let throw = journal.throw();
    let whole = throw.assembly().whole();
    let figure = |task, label: &str| {
        let figures = crate::show::card_figures::card_figures(throw, task, whole, context(&words));
        let found = figures.into_iter().find(|f| f.label == label);
        found.map(|f| f.value.text.replace('\u{a0}', " "))
    };
    let told = |text: &str| Some(text.to_string());
    assert_eq!(
        figure(Task::StitchBinding, "All the way round"),
        told("128 in")
    );
    assert_eq!(
        figure(Task::JoinBinding, "Joined, it is at least"),
        told("132 in")
    );
    assert_eq!(figure(Task::CutBinding, "Strips"), told("5 strips"));
    assert_eq!(figure(Task::JoinBinding, "Joins"), told("4"));
    assert_eq!(
        figure(Task::TrimEdge, "Should measure"),
        told("27½ × 36½ in")
    );
}

fn tick_whole(journal: &mut Journal, task: Task, hour: Time) {
    let whole = journal.throw().assembly().whole();
    let pieces = vec![whole];
    act(journal, &Command::Tick { task, pieces }, hour * 3_600_000);
}

#[test]
fn the_edge_is_a_step_of_its_own_before_the_binding() {
    let words = Words::english();
    let mut journal = sewn(true);
    let whole = journal.throw().assembly().whole();
    assert_eq!(journal.throw().next(whole), Some(Task::TrimEdge));
    let card = *work_view(&journal, None, context(&words))
        .card
        .expect("a step");
    assert_eq!((card.task, card.station), (Task::TrimEdge, Station::Table));
    assert_eq!(card.title, "Press and trim the whole edge");
    let caution = card.caution.expect("a caution");
    assert_eq!(caution.caution, Caution::BladeAndIron);
    for part in [
        "the soleplate and the steam burn",
        "close its guard every time",
    ] {
        assert!(caution.text.contains(part), "{}", caution.text);
    }
    drawn_within(&card.picture, "edge");
    let of = stages(journal.throw())[&Stage::Bound].clone();
    assert!(of.left.contains_key(&Task::TrimEdge));
    // No grid changes once its outside is cut.
    let wider = Plan {
        across: 4,
        ..journal.throw().plan
    };
    let change = Command::ChangePlan { plan: wider };
    act(&mut journal, &card.ticks[0].action, 21 * 3_600_000);
    assert!(journal.propose(&change, 22 * 3_600_000).is_err());
    assert_eq!(journal.throw().next(whole), Some(Task::CutBinding));
    let glue = |journal: &Journal| {
        plain(&[crate::show::work::usual_how(
            journal.throw(),
            Task::GlueBinding,
            whole,
            context(&words),
        )])
    };
    assert!(!glue(&journal).contains("Before you bind"));
    let older = sewn(false);
    assert!(glue(&older).starts_with("Before you bind, press the whole edge"));
    // There the edge is cut where the binding is glued: the step warns of the blade too.
    let caution = |journal: &Journal| {
        crate::show::work::usual_caution(journal.throw(), Task::GlueBinding, whole)
    };
    assert_eq!(caution(&journal), Some(Caution::Iron));
    assert_eq!(caution(&older), Some(Caution::BladeAndIron));
}

/// A throw whose plan does not know the step keeps its steps; the maker may add it until the strip
/// lies round the edge, and is never sent back to it.
#[test]
fn an_older_throw_keeps_its_steps() {
    let mut journal = sewn(false);
    let whole = journal.throw().assembly().whole();
    let all = journal.throw().progress().1;
    assert_eq!(journal.throw().next(whole), Some(Task::CutBinding));
    tick_whole(&mut journal, Task::CutBinding, 21);
    let with = |journal: &Journal| Command::ChangePlan {
        plan: Plan {
            trim_edge: true,
            ..journal.throw().plan
        },
    };
    let mut added = journal.clone();
    act(&mut added, &with(&journal), 22 * 3_600_000);
    assert_eq!(added.throw().next(whole), Some(Task::TrimEdge));
    assert_eq!(added.throw().progress().1, all + 1);
    for (hour, task) in [
        (22, Task::JoinBinding),
        (23, Task::PressBinding),
        (24, Task::GlueBinding),
    ] {
        tick_whole(&mut journal, task, hour);
    }
    let adding = with(&journal);
    act(&mut journal, &adding, 25 * 3_600_000);
    assert_eq!(journal.throw().next(whole), Some(Task::StitchBinding));
    assert_eq!(journal.throw().progress().1, all);
    // A plan that does not say so is one without.
    let mut json = serde_json::to_value(Plan::default()).unwrap();
    json.as_object_mut().unwrap().remove("trim_edge");
    let older: Plan = serde_json::from_value(json).unwrap();
    assert!(!older.trim_edge);
    // One that is made again has it.
    let words = Words::english();
    assert!(
        crate::show::again(&sewn(false), context(&words))
            .draft
            .trim_edge
    );
}

/// The figure of the step, what is to have at hand and the picture all come from the same
/// arithmetic: of 1 in of denim of 0.95 mm (25.4 − 0.95) / 2 = 12.225 mm show. It is told to the
/// ruler's mark, once on the step.
#[test]
fn what_shows_of_the_strip_is_the_same_everywhere() {
    let words = Words::english();
    let metric = Context {
        ruler: Ruler {
            system: System::Metric,
            metric: MetricUnit::Mm,
            ..Ruler::default()
        },
        ..context(&words)
    };
    let mut journal = sewn(true);
    let strip = strip_shown(journal.throw());
    assert_eq!(strip.plain, crate::measure::nm(12_225_000));
    let shown = metric.length(strip.plain).text;
    // 12.225 mm is 0.4813 in, 7.7 of 16.
    assert_eq!(shown, "≈\u{a0}12\u{a0}mm");
    assert_eq!(context(&words).length(strip.plain).text, "≈\u{a0}½\u{a0}in");
    let gathered = crate::show::gather::gather(&journal, metric);
    let rows = gathered.rows.into_iter();
    let lines: Vec<String> = rows.flat_map(|row| row.lines).collect();
    let sentence = crate::show::bound::told(journal.throw(), metric);
    assert!(sentence.contains(&shown), "{sentence}");
    assert!(lines.contains(&sentence), "{lines:?}");
    for (hour, task) in [
        (21, Task::TrimEdge),
        (22, Task::CutBinding),
        (23, Task::JoinBinding),
        (24, Task::PressBinding),
    ] {
        tick_whole(&mut journal, task, hour);
    }
    let card = *work_view(&journal, None, metric).card.expect("a step");
    assert_eq!(card.task, Task::GlueBinding);
    // What to do at the end is told at the end.
    let own = *work_view(&journal, None, context(&words))
        .card
        .expect("a step");
    let end = plain(&own.how[own.how.len() - 1..]);
    assert!(
        end.contains("Lap the end over the beginning by ½ in or a little more"),
        "{end}"
    );
    assert!(own.how[0].starts_with("Lay the throw with its front up"));
    let told = card.how.iter().filter(|line| line.contains(&shown));
    assert_eq!(told.count(), 0, "{:?}", card.how);
    let each = card
        .figures
        .iter()
        .find(|f| f.label == "Shows on each face");
    assert_eq!(each.expect("it is told").value.text, shown);
    tick_whole(&mut journal, Task::GlueBinding, 25);
    let card = *work_view(&journal, None, metric).card.expect("a step");
    let told = |label: &str| {
        let found = card.figures.iter().find(|f| f.label == label);
        found.expect(label).value.text.clone()
    };
    assert_eq!(told("From the raw edge of the strip"), "3\u{a0}mm");
    let fold = strip.plain - row_from_edge(System::Metric);
    assert_eq!(told("From the fold"), metric.length(fold).text);
}

/// By hand: 27½ × 36½ in with 5 strips of 28 in lapped ½ in, begun 20¼ in along the top: each join
/// comes 27½ in further on. 7¼ in of the top are left, so that the first comes 20¼ in down the
/// right side, 16¼ in of which are left; and so on.
#[test]
fn where_the_strip_begins_and_its_joins_come_is_a_figure_each() {
    let words = Words::english();
    let journal = begin(Plan::default());
    let throw = journal.throw();
    let whole = throw.assembly().whole();
    let figures = |task| {
        let figures = crate::show::card_figures::card_figures(throw, task, whole, context(&words));
        let told = |f: Figure| format!("{}: {}", f.label, f.value.text.replace('\u{a0}', " "));
        figures.into_iter().map(told).collect::<Vec<String>>()
    };
    assert_eq!(
        figures(Task::GlueBinding),
        [
            "Begin: top, from left: 20¼ in",
            "Joins: right, from top: 20¼ in",
            "Joins: bottom, from right: 11¼ in",
            "Joins: left, from bottom: 11¼ in",
            "Joins: top, from left: 2¼ in",
            "Shows on each face: ≈ ½ in",
        ]
    );
    assert_eq!(
        figures(Task::JoinBinding),
        ["Joins: 4", "Lap: ½ in", "Joined, it is at least: 132 in"]
    );
    assert_eq!(
        figures(Task::PressBinding),
        ["Folded, it is as wide as: ½ in"]
    );
    // No sentence of these steps has more than one length in it.
    for task in [
        Task::CutBinding,
        Task::JoinBinding,
        Task::PressBinding,
        Task::GlueBinding,
        Task::StitchBinding,
    ] {
        let how = crate::show::work::usual_how(throw, task, whole, context(&words));
        for line in how.split_terminator(['.', '\n']) {
            assert!(line.matches("\u{a0}in").count() <= 1, "{line}");
        }
    }
}

/// Each move at the corner has its picture, the last with a row of stitching that turns.
#[test]
fn a_corner_is_drawn_in_four_moves() {
    for words in [Words::english(), Words::of("de")] {
        let moves = crate::show::bound::corner(sewn(true).throw(), context(&words));
        assert_eq!(moves.len(), 4);
        for one in &moves {
            drawn_within(&one.picture, &one.text);
            assert_eq!(one.picture.spoken, one.text);
        }
        let rows: Vec<[f64; 4]> = moves[3]
            .picture
            .marks
            .iter()
            .filter_map(|m| match m {
                Mark::Line {
                    x1,
                    y1,
                    x2,
                    y2,
                    ink: Ink::Stitch,
                    ..
                } => Some([*x1, *y1, *x2, *y2]),
                _ => None,
            })
            .collect();
        let [along, down] = rows[..] else {
            panic!("{rows:?}")
        };
        assert_eq!(
            [along[2], along[3]],
            [down[0], down[1]],
            "it turns where both meet"
        );
        let sewn = |n: usize| {
            let marks = &moves[n].picture.marks;
            marks.iter().any(|m| {
                matches!(
                    m,
                    Mark::Line {
                        ink: Ink::Stitch,
                        ..
                    }
                )
            })
        };
        assert!((0..3).all(|n| !sewn(n)));
    }
}

/// By hand: lapped 7/16 in, strips of 28 in carry on by 27 9/16 in, so that of two joins in a row one lies
/// on the eighths of a coarse ruler and the other between them. What is told of both says that it is
/// rounded where one of them is.
#[test]
fn a_list_of_joins_is_rounded_where_one_of_them_is() {
    use crate::measure::half_inches;
    let words = Words::english();
    let plan = Plan {
        lap: sixty_fourths(28),
        across: 14,
        down: 18,
        ..Plan::default()
    };
    let journal = begin(plan);
    let throw = journal.throw();
    let ruler = Ruler {
        fraction: Fraction::Eighth,
        ..Ruler::default()
    };
    let here = Context {
        ruler,
        ..context(&words)
    };
    let size = throw.finished();
    let joins = crate::plan::binding::layout(&throw.plan, size.width, size.height).joins;
    let between = |at: crate::measure::Length| ruler.nearest(at) != at;
    let mut want = vec![between(joins[0].1)];
    let runs = joins[1..].chunk_by(|(a, _), (b, _)| a == b);
    want.extend(
        runs.clone()
            .map(|run| run.iter().any(|(_, at)| between(*at))),
    );
    assert!(runs.into_iter().any(|run| {
        let odd = run.iter().filter(|(_, at)| between(*at)).count();
        odd > 0 && odd < run.len()
    }));
    let told = crate::show::bound::places(throw, here);
    let rounded: Vec<bool> = told.iter().map(|f| f.value.rounded).collect();
    assert_eq!(rounded, want);
    assert!(size.width > half_inches(60));
}

/// Half of a lap lies on either side of its stitching: ¼ in of ½ in, as on any other lap.
#[test]
fn halves_are_stitched_along_the_middle_of_their_lap() {
    let words = Words::english();
    let journal = begin(Plan::default());
    let square = Rect::square(0, 0);
    let told = |task| -> Vec<String> {
        let throw = journal.throw();
        let figures = crate::show::card_figures::card_figures(throw, task, square, context(&words));
        let texts = figures.into_iter().map(|f| f.value.text);
        texts.map(|text| text.replace('\u{a0}', " ")).collect()
    };
    // Of a lap of 12.7 mm a twin needle of 4 mm leaves 4.35 mm each side, 3/16 in by a ruler of sixteenths.
    assert_eq!(
        told(Task::StitchHalves),
        ["¼ in", "4 mm", "3 mm", "≈ 3/16 in", "5 × 5 in", "5 in"]
    );
    assert_eq!(told(Task::LapHalves), ["½ in", "5 × 5 in"]);
}

/// A throw of the usual plan, bound with strips of this length.
fn bound_with(longest: crate::measure::Length) -> Journal {
    let mut plan = Plan::default();
    plan.binding.longest = longest;
    begin(plan)
}

/// Strips of 2 in lapped ½ in carry on by 1½ in: every lap of the throw, ½ in wide, is met by one of the
/// overlaps, 1 in apart, sooner or later. That is told; of the usual strips it is not.
#[test]
fn that_a_join_comes_on_a_lap_is_told() {
    let words = Words::english();
    let told = |longest| {
        let journal = bound_with(longest);
        let here = context(&words);
        crate::show::bound::on_a_lap(journal.throw(), here).is_some()
    };
    assert!(told(inches(2)));
    assert!(!told(inches(28)));
    // It is told while another length can still be cut; where the strip is laid, only what to do there.
    let journal = bound_with(inches(2));
    let throw = journal.throw();
    let whole = throw.assembly().whole();
    let before = crate::show::work::special(throw, Task::CutBinding, whole, context(&words));
    let advice = "make the longest strip a little longer or shorter";
    assert!(plain(&before).contains(advice), "{before:?}");
    let laid = crate::show::bound::clear(throw, context(&words));
    assert!(
        laid.contains("turn the wheel by hand") && !laid.contains("longer or shorter"),
        "{laid}"
    );
}

/// Round 6 by 8 of the usual squares are 2·(27½ + 36½) = 128 in, with the tail 132. Five strips of 27 in,
/// each of which carries on by 26½, reach 133; the last begins at 106 in. Of strips of 33 in four reach
/// 130½, so a fifth is joined on at 130 in, past the beginning.
#[test]
fn a_join_past_the_beginning_is_told() {
    let words = Words::english();
    let told = |longest| {
        let journal = bound_with(longest);
        let here = context(&words);
        let joins: usize = crate::show::bound::places(journal.throw(), here)
            .iter()
            .map(|figure| figure.value.text.split(", ").count())
            .sum();
        let past = crate::show::bound::clear(journal.throw(), here).contains("past the beginning");
        (joins, past)
    };
    assert_eq!(told(inches(27)), (5, false));
    assert_eq!(told(inches(33)), (4, true));
}

/// A twin needle comes out before the first step of the binding that sews; who sews with one needle
/// has none to take out, and either stitches the binding down with a single one. The glued binding is
/// pressed: the step warns of the iron.
#[test]
fn the_twin_needle_comes_out_before_the_binding() {
    let words = Words::english();
    let told = |stitch, task| {
        let journal = begin(Plan {
            stitch,
            ..Plan::default()
        });
        let throw = journal.throw();
        let whole = throw.assembly().whole();
        let mut told = crate::show::work::special(throw, task, whole, context(&words));
        told.push(crate::show::work::usual_how(
            throw,
            task,
            whole,
            context(&words),
        ));
        plain(&told)
    };
    let straight = crate::plan::Stitch::Straight;
    for (stitch, out) in [(Plan::default().stitch, true), (straight, false)] {
        let joined = told(stitch, Task::JoinBinding);
        assert_eq!(joined.starts_with("Take out the twin needle first"), out);
        let stitched = told(stitch, Task::StitchBinding);
        assert!(stitched.contains("put in a new, single jeans needle"));
    }
    // A single needle is warned of, not the one that was taken out.
    let needle = crate::throw::tasks::Caution::Needle;
    let warned = |task| {
        let journal = begin(Plan::default());
        crate::show::work::caution_text(journal.throw(), task, needle, context(&words))
    };
    assert!(warned(Task::Stitch).contains("A twin needle strikes the plate"));
    for single in [Task::JoinBinding, Task::StitchBinding, Task::StitchPatch] {
        let warned = warned(single);
        assert!(!warned.contains("twin"), "{single:?}: {warned}");
        assert!(warned.contains("Set a straight stitch, needle in the middle"));
    }
    let warned = Task::GlueBinding.caution();
    assert_eq!(warned, Some(crate::throw::tasks::Caution::Iron));
}
