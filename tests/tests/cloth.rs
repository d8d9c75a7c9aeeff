//! One account of the cloth: whatever is done, no square of any denim appears or vanishes, and
//! no two places tell it differently.

use lapwork_core::cloth::fabric::Face;
use lapwork_core::cloth::garments::{GarmentKind, GarmentSize, Source, Zone, ZoneKind};
use lapwork_core::cloth::pile::Use;
use lapwork_core::cloth::ways::CutWay;
use lapwork_core::command::{Command, decide};
use lapwork_core::log::journal::Journal;
use lapwork_core::measure::{Count, Ruler, sixty_fourths};
use lapwork_core::plan::Plan;
use lapwork_core::plan::assembly::{Kind, Rect};
use lapwork_core::show::sheet::Row;
use lapwork_core::show::tables::Table;
use lapwork_core::show::{self, Context, GatherRow, Query, View, ZoneName, answer};
use lapwork_core::throw::account::account;
use lapwork_core::throw::stock;
use lapwork_core::throw::tasks::Task;
use lapwork_core::throw::wishes::{DenimWish, Wishes};
use lapwork_core::throw::{Item, Mishap, Throw};
use lapwork_core::words::Words;
use proptest::prelude::*;

const NOON: i64 = 1_767_225_600_000;

/// A throw of 6 × 5 squares in two denims, and four pairs of legs that name theirs.
fn begun() -> Journal {
    let demo = lapwork_core::demo::throw(NOON);
    let begin = Command::Begin {
        name: "Two denims".into(),
        plan: Plan {
            across: 6,
            down: 5,
            ..Plan::default()
        },
        prints: demo.throw().prints.clone(),
        denims: demo.throw().denims.clone(),
    };
    let mut journal = Journal::begin(&begin, NOON).expect("a plan").0;
    let pieces = Rect::grid(6, 5).squares().filter(|s| s.row > 2).collect();
    act(
        &mut journal,
        &Command::SetDenim {
            pieces,
            denim: 1,
            wrong_side_up: false,
        },
    );
    for (kind, denim) in [
        (GarmentKind::MensJeans, 0),
        (GarmentKind::WomensJeans, 1),
        (GarmentKind::ChildsJeans, 0),
        (GarmentKind::Skirt, 1),
    ] {
        act(
            &mut journal,
            &Command::AddGarment {
                kind,
                size: Some(GarmentSize::Medium),
                knees: None,
                system: None,
                makes: Use::Denim { denim: Some(denim) },
                name: format!("{kind:?}"),
            },
        );
    }
    journal
}

/// Do it if it is allowed; whether it was.
fn act(journal: &mut Journal, command: &Command) -> bool {
    let Ok(entry) = journal.propose(command, NOON) else {
        return false;
    };
    journal.accept(entry).expect("what was proposed follows");
    true
}

/// Something done at random: cutting, losing, putting spares in, another grid, another denim; a
/// tear found, another way to cut, with halves or without, the other leg the same.
fn requests() -> impl Strategy<Value = Vec<(u8, u32)>> {
    prop::collection::vec((0u8..15, 0u32..10_000), 1..40)
}

fn command(throw: &Throw, (kind, pick): (u8, u32)) -> Command {
    let whole = throw.assembly().whole();
    let squares: Vec<Rect> = whole.squares().collect();
    let square = squares[pick as usize % squares.len()];
    let n = 1 + (pick % 4) as u16;
    let index = (pick / 4 % 2) as u8;
    match kind {
        // As it is expected, halves and all, or so many with so many halves.
        13 => {
            let given = account(throw).piece(n, usize::from(index));
            Command::CutPiece {
                n,
                index,
                squares: given.squares,
                by_strip: Vec::new(),
                pieced: Some(match pick % 3 {
                    0 => Count::at_most(pick / 8 % 3),
                    _ => given.pieced,
                }),
                strips: None,
                outline: None,
            }
        }
        14 => Command::CutBy {
            n,
            index,
            way: [CutWay::PLAIN, CutWay::OTHERS[0], CutWay::OTHERS[1]][pick as usize / 7 % 3]
                .with_halves(true),
        },
        0..=2 => Command::CutPiece {
            n,
            index,
            squares: Count::at_most(pick / 8 % 16),
            by_strip: Vec::new(),
            pieced: None,
            strips: (pick % 3 > 0).then(|| Count::at_most(pick % 3)),
            outline: None,
        },
        3 | 4 => Command::Replace {
            piece: square,
            why: Mishap::ALL[pick as usize / 7 % 4],
            spare: pick / 11 % 2 == 0,
            denim: [None, Some(0), Some(1)][pick as usize / 13 % 3],
            from: (pick % 3 == 0).then(|| squares[pick as usize / 17 % squares.len()]),
        },
        5 => Command::UseSpares {
            pieces: vec![square],
            denim: [None, Some(0), Some(1)][pick as usize / 13 % 3],
        },
        6 => Command::ChangePlan {
            plan: Plan {
                across: 3 + (pick % 5) as u16,
                down: 3 + (pick / 5 % 4) as u16,
                ..throw.plan
            },
        },
        7 => torn(throw, n, index, pick),
        8 => Command::CutBy {
            n,
            index,
            way: CutWay::OTHERS[pick as usize / 7 % 3],
        },
        9 => Command::MirrorPiece { n, index },
        10 => Command::CutLines {
            n,
            index,
            lines: Count::at_most(pick / 8 % 5),
        },
        11 => Command::SetFace {
            pieces: vec![square],
            face: Face::BOTH[pick as usize / 31 % 2],
            print: (pick % 4 > 0).then_some((pick / 37 % throw.prints.len() as u32) as u8),
            laid_on: false,
        },
        _ => Command::SetDenim {
            pieces: vec![square],
            denim: (pick / 17 % 2) as u8,
            wrong_side_up: false,
        },
    }
}

/// A tear across a piece, whose upper edge falls between the marks.
fn torn(throw: &Throw, n: u16, index: u8, pick: u32) -> Command {
    let Some(Source::Cloth(garment)) = throw.pile.get(&n).map(|heap| &heap.from) else {
        return Command::TakeHeap { n };
    };
    let mut outline = garment.pieces[usize::from(index) % garment.pieces.len()].clone();
    let [_, top, left, right] = outline.reach();
    let from = top - sixty_fourths(i64::from(pick % 1_500) + 300);
    outline.zones.push(Zone {
        kind: ZoneKind::Hole,
        from,
        to: from + sixty_fourths(100),
        left,
        right,
    });
    Command::SetPiece { n, index, outline }
}

/// Squares of each denim that lie in a place, cut.
fn placed(throw: &Throw) -> [u32; 2] {
    let mut placed = [0; 2];
    for square in throw.assembly().whole().squares() {
        if throw.has(square, Task::Cut) {
            placed[usize::from(throw.cover(square).denim)] += 1;
        }
    }
    placed
}

/// Squares that came out of the garments of each denim.
fn counted(throw: &Throw) -> [u32; 2] {
    let mut counted = [0; 2];
    for heap in throw.pile.values() {
        if let Use::Denim { denim: Some(d) } = heap.makes {
            let own: Count = heap.counted.iter().flatten().copied().sum();
            counted[usize::from(d)] += own.get();
        }
    }
    counted
}

/// Squares pieced of two halves, of each denim: those that came out, and those that lie in places.
fn pieced(throw: &Throw) -> [[u32; 2]; 2] {
    let mut out = [[0; 2]; 2];
    for heap in throw.pile.values() {
        if let Use::Denim { denim: Some(d) } = heap.makes {
            let own: Count = heap.pieced.values().copied().sum();
            out[0][usize::from(d)] += own.get();
        }
    }
    for square in throw.assembly().whole().squares() {
        if throw.is_pieced(square) {
            out[1][usize::from(throw.cover(square).denim)] += 1;
        }
    }
    out
}

/// A number of squares as it is told where some are pieced.
fn parted(all: u32, pieced: u32) -> String {
    match pieced {
        0 => all.to_string(),
        n => format!("{all} ({} whole + {n} pieced)", all - n),
    }
}

/// Text with its unbreakable spaces broken.
fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

/// The number a text begins with.
fn first_number(text: &str) -> Option<u32> {
    let digits: String = text.chars().take_while(char::is_ascii_digit).collect();
    digits.parse().ok()
}

/// The finished size as the plan screen tells it.
fn finished_size(journal: &Journal, context: Context<'_>) -> String {
    let Ok(View::Plan(plan)) = answer(journal, &Query::Plan { draft: None }, context) else {
        panic!()
    };
    let sized = |f: &&lapwork_core::show::Figure| f.label.starts_with("Finished size");
    plain(&plan.figures.iter().find(sized).expect("a size").value.text)
}

/// The plan screen, the layouts screen and the step of the binding.
fn plan_and_layouts_tell_the_account(
    journal: &Journal,
    context: Context<'_>,
) -> Result<(), TestCaseError> {
    let throw = journal.throw();
    let output = account(throw);
    let Ok(View::Plan(plan)) = answer(journal, &Query::Plan { draft: None }, context) else {
        panic!()
    };
    let figure = |label: &str| {
        let found = plan.figures.iter().find(|f| f.label == label);
        found.map(|f| plain(&f.value.text)).unwrap_or_default()
    };
    prop_assert_eq!(first_number(&figure("Squares")), Some(output.wanted));
    let strips = match output.strips.wanted {
        1 => "in 1 strip".to_string(),
        n => format!("in {n} strips"),
    };
    let binding = figure("Binding");
    prop_assert!(binding.ends_with(&strips), "{} {}", binding, strips);

    // For the squares still to cut a layout has what heaps and spares give of each denim.
    let wishes = Wishes {
        denims: Some(DenimWish::Any),
        ..Wishes::default()
    };
    let asked = Query::Wishes {
        wishes: Some(wishes),
    };
    let Ok(View::Wishes(layouts)) = answer(journal, &asked, context) else {
        panic!()
    };
    if output.cut < output.wanted {
        let said = layouts.pile.unwrap_or_default();
        for (d, denim) in (0..).zip(&throw.denims) {
            let n = output.denims[usize::from(d)].to_come + throw.spares_of(d);
            let of = format!("{n} of {}", denim.name);
            prop_assert!(said.contains(&of), "{} {}", said, of);
        }
        let left = layouts.lines.iter().find(|l| l.label == "From the pile");
        let left = left.map(|l| plain(&l.value)).unwrap_or_default();
        // Some denim may be lacking while there are enough in all.
        if left.starts_with("enough") {
            let over = left.split(' ').find_map(|word| word.parse::<i64>().ok());
            prop_assert_eq!(over.unwrap_or(1), output.over(), "{}", left);
        }
        if left.starts_with("nothing") {
            prop_assert_eq!(output.over(), 0, "{}", left);
        }
    }

    // The step that is next, where it is one of the cloth's.
    let cut = Query::Work {
        station: None,
        batch: Some((Task::Cut, Kind::Square)),
    };
    let Ok(View::Work(work)) = answer(journal, &cut, context) else {
        panic!()
    };
    let card = work.card.filter(|card| card.task == Task::Cut);
    prop_assert_eq!(card.is_some(), output.cut < output.wanted);
    if let Some(card) = card {
        let open = output.wanted - output.cut;
        let remain = plain(&card.remain);
        prop_assert_eq!(first_number(&remain), Some(open), "{}", remain);
        // A spare is offered just where there is one.
        let offered = card
            .ticks
            .iter()
            .any(|b| matches!(b.action, Command::UseSpares { .. }));
        prop_assert_eq!(offered, throw.spares > 0, "{:?}", card.ticks);
    }
    Ok(())
}

/// What to have at hand tells each denim as the faces, the squares and the pile do, and the table
/// tells the same.
fn denims_are_told_alike(
    journal: &Journal,
    gathered: &[GatherRow],
    table: &[Vec<String>],
    heaps: &[show::HeapRow],
) -> Result<(), TestCaseError> {
    let throw = journal.throw();
    let denim = gathered.iter().find(|r| r.item == Item::Denim);
    let lines = denim.map(|r| r.lines.clone()).unwrap_or_default();
    for (d, denim) in (0_u8..).zip(&throw.denims) {
        let wanted = throw.covers().iter().filter(|c| c.denim == d).count();
        let open = throw
            .uncut(None)
            .filter(|s| throw.cover(*s).denim == d)
            .count();
        let own = heaps
            .iter()
            .filter(|h| throw.pile[&h.n].makes == Use::Denim { denim: Some(d) });
        let pieces = own.flat_map(|h| &h.pieces).filter(|p| !p.cut);
        let gives: u32 = pieces
            .map(|p| first_number(p.said.trim_start_matches("about ")).unwrap_or(0))
            .sum();
        let told = lines
            .iter()
            .find(|l| l.starts_with(&format!("{}: ", denim.name)));
        let row = table
            .iter()
            .find(|r| r[0] == format!("Denim: {}", denim.name));
        prop_assert_eq!(told.is_some(), wanted > 0, "{:?}", lines);
        prop_assert_eq!(row.is_some(), wanted > 0);
        let (Some(told), Some(row)) = (told, row) else {
            continue;
        };
        let squares = match wanted {
            1 => "one square".to_string(),
            n => format!("{n} squares"),
        };
        let words = format!(
            "{}: {squares}, {open} still to cut, {gives} to come",
            denim.name
        );
        prop_assert!(told.starts_with(&words), "{} / {}", told, words);
        prop_assert_eq!(&row[1], &wanted.to_string());
        prop_assert_eq!(&row[7], &(wanted - open + gives as usize).to_string());
        prop_assert_eq!(&row[5], told);
    }
    Ok(())
}

/// The printed sheet's view and the tables.
fn paper_and_tables_tell_the_account(
    journal: &Journal,
    gathered: &[GatherRow],
    context: Context<'_>,
) -> Result<(), TestCaseError> {
    let throw = journal.throw();
    let output = account(throw);
    let calendar = ZoneName::named("UTC").calendar();
    let sheet = show::sheet(journal, context, show::PrintUnits::Both, &|at| {
        calendar.day(at)
    });
    let size = finished_size(journal, context);
    let on_paper = |rows: &[Row]| {
        let found = rows.iter().find(|r| r.label.starts_with("Finished size"));
        found.map(|r| plain(&r.own))
    };
    prop_assert_eq!(on_paper(&sheet.figures), Some(size.clone()));
    if let Some(card) = on_paper(&sheet.card.figures) {
        prop_assert_eq!(card, size);
    }
    let tally = |label: &str| {
        let found = sheet.tallies.iter().find(|r| r.label == label);
        found.map(|r| r.own.clone())
    };
    prop_assert_eq!(tally("Spare squares"), Some(throw.spares.get().to_string()));
    prop_assert_eq!(
        tally("Squares spoilt"),
        Some(throw.losses.len().to_string())
    );
    // What to have at hand on paper is what the screen says, but for the other system's measures.
    let labels = |rows: Vec<&str>| rows.into_iter().map(plain).collect::<Vec<_>>();
    prop_assert_eq!(
        labels(sheet.supplies.iter().map(|s| &*s.label).collect()),
        labels(gathered.iter().map(|r| &*r.label).collect())
    );
    for (paper, screen) in sheet.supplies.iter().zip(gathered) {
        prop_assert_eq!(paper.lines.len(), screen.lines.len(), "{}", screen.label);
        let counted = [Item::Denim, Item::Binding].contains(&screen.item)
            || matches!(screen.item, Item::Fabric { .. });
        if counted {
            for (paper, screen) in paper.lines.iter().zip(&screen.lines) {
                prop_assert_eq!(first_number(paper), first_number(screen));
            }
        }
    }
    // Each piece of the pile, in order, is told as on the screen of the pile.
    let Ok(View::Pile(pile)) = answer(journal, &Query::Pile, context) else {
        panic!()
    };
    for (paper, screen) in sheet.heaps.iter().zip(&pile.rows) {
        let said = |p: &lapwork_core::show::HeapPiece| [p.label.clone(), p.said.clone()];
        let screen: Vec<[String; 2]> = screen.pieces.iter().map(said).collect();
        prop_assert_eq!(&paper.pieces, &screen);
    }
    prop_assert_eq!(sheet.heaps.len(), pile.rows.len());

    // The tables: read by a CSV reader of its own, so that a comma in words divides nothing.
    let read = |table: Table| -> Vec<Vec<String>> {
        let text = table.csv(journal, context);
        let mut reader = csv::Reader::from_reader(text.as_bytes());
        let rows = reader.records().map(|r| r.expect("a row"));
        rows.map(|r| r.iter().map(str::to_string).collect())
            .collect()
    };
    let supplies = read(Table::Supplies);
    // Each denim has a line of its own after the denim in all.
    let (of_denims, supplies): (Vec<_>, Vec<_>) = supplies
        .into_iter()
        .partition(|row| row[0].starts_with("Denim: "));
    denims_are_told_alike(journal, gathered, &of_denims, &pile.rows)?;
    prop_assert_eq!(supplies.len(), gathered.len());
    for (row, screen) in supplies.iter().zip(gathered) {
        let want = match screen.item {
            Item::Denim => output.wanted,
            Item::Binding => output.strips.wanted,
            Item::Fabric { print } => stock::used(throw, print),
            _ => continue,
        };
        prop_assert_eq!(&row[1], &want.to_string(), "{:?}", row);
        // What is there and what is short make up what is wanted, or more.
        let figure = |n: usize| row[n].parse::<u32>().ok();
        if let (Some(there), Some(short)) = (figure(7), figure(8)) {
            prop_assert_eq!(short, want.saturating_sub(there), "{:?}", row);
        }
        match screen.item {
            Item::Denim => {
                prop_assert_eq!(figure(8), Some(u32::try_from(-output.over()).unwrap_or(0)))
            }
            Item::Binding => prop_assert_eq!(figure(8), Some(output.strips.lacking())),
            _ => {}
        }
    }
    let squares = read(Table::Squares);
    prop_assert_eq!(squares.len(), output.wanted as usize);
    for (print, row) in (0..).zip(read(Table::Covering)) {
        let used = stock::used(throw, print);
        prop_assert_eq!(&row[4], &used.to_string());
        let name = &throw.prints[usize::from(print)].name;
        let covers = squares.iter().flat_map(|r| [&r[6], &r[7]]);
        prop_assert_eq!(covers.filter(|c| *c == name).count(), used as usize);
        let paper = sheet.prints.iter().find(|p| p.name == *name);
        let paper = paper.map(|p| p.count.clone()).unwrap_or_default();
        prop_assert!(
            used == 0
                || paper
                    .split(|c: char| !c.is_ascii_digit())
                    .any(|n| n == used.to_string()),
            "{} {}",
            paper,
            used
        );
        let export = gathered.iter().find(|r| r.item == Item::Fabric { print });
        let says = |n: u32| match n {
            1 => "One square of ".to_string(),
            n => format!("{n} squares of "),
        };
        prop_assert_eq!(export.is_some(), used > 0);
        prop_assert!(
            export.is_none_or(|r| r.lines[0].starts_with(&says(used))),
            "{:?}",
            export
        );
    }
    let figures = show::figures(journal, context);
    prop_assert_eq!(&figures["spares"], &serde_json::json!(throw.spares));
    prop_assert_eq!(
        &figures["binding"]["strips"],
        &serde_json::json!(output.strips.wanted)
    );
    prop_assert_eq!(
        &figures["grid"]["squares"],
        &serde_json::json!(output.wanted)
    );
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Of each denim: what came out = what lies in places + what is spare + what was spoilt.
    #[test]
    fn no_square_appears_or_vanishes(requests in requests()) {
        let mut journal = begun();
        let mut spoilt = [0; 2];
        let mut spoilt_pieced = [0; 2];
        for request in requests {
            let throw = journal.throw();
            let request = command(throw, request);
            let lost = match &request {
                Command::Replace { piece, .. } => {
                    Some((throw.cover(*piece).denim, throw.is_pieced(*piece)))
                }
                _ => None,
            };
            if act(&mut journal, &request) && let Some((denim, of_halves)) = lost {
                spoilt[usize::from(denim)] += 1;
                spoilt_pieced[usize::from(denim)] += u32::from(of_halves);
            }
            let throw = journal.throw();
            let (placed, counted) = (placed(throw), counted(throw));
            for d in 0..2 {
                let denim = u8::try_from(d).unwrap();
                prop_assert_eq!(
                    counted[d],
                    placed[d] + throw.spares_of(denim) + spoilt[d],
                    "denim {} after {:?}", d, request
                );
            }
            // Those pieced of two halves by themselves, too; none is among the spares that is not
            // counted there.
            let [came, lying] = pieced(throw);
            for d in 0..2 {
                let denim = u8::try_from(d).unwrap();
                let spare = throw.spares_pieced_of(Some(denim));
                prop_assert!(spare <= throw.spares_of(denim));
                prop_assert_eq!(
                    came[d],
                    lying[d] + spare + spoilt_pieced[d],
                    "pieced of denim {} after {:?}", d, request
                );
            }
            prop_assert_eq!(throw.spares_unsaid(), 0);
            let output = account(throw);
            let strips = output.strips;
            prop_assert_eq!(strips.cut + strips.planned + strips.lacking(), strips.wanted);
            prop_assert!(strips.planned <= strips.open());
            // The places of the pieces are open, of the heap's denim, and each is given once.
            let mut given: Vec<Rect> = output.places.values().flatten().copied().collect();
            for ((n, _), places) in &output.places {
                for place in places {
                    prop_assert!(!throw.has(*place, Task::Cut));
                    let denim = Some(throw.cover(*place).denim);
                    prop_assert_eq!(throw.pile[n].makes, Use::Denim { denim });
                }
            }
            let all = given.len();
            given.sort();
            given.dedup();
            prop_assert_eq!(given.len(), all);
        }
    }

    /// The pile, the cutting page, the step, what to have at hand, the table and the sheet tell
    /// the same of squares, strips and spares.
    #[test]
    fn every_screen_and_sheet_tells_the_same(requests in requests()) {
        let words = Words::english();
        let context = Context {
            words: &words,
            ruler: Ruler::default(),
            now: NOON,
        };
        let mut journal = begun();
        for request in requests {
            let request = command(journal.throw(), request);
            act(&mut journal, &request);
        }
        let throw = journal.throw();
        let output = account(throw);
        let Ok(View::Pile(pile)) = answer(&journal, &Query::Pile, context) else { panic!() };
        let figure = |label: &str| {
            let found = pile.figures.iter().find(|f| f.label == label);
            found.map(|f| f.value.text.clone()).unwrap_or_default()
        };
        let open = throw.uncut(None).count();
        prop_assert_eq!(figure("Still to cut"), open.to_string());
        prop_assert_eq!(figure("Spare"), if throw.spares > 0 { parted(throw.spares.get(), throw.spares_pieced().get()) } else { String::new() });
        let [came, lying] = pieced(throw).map(|each| each.iter().sum::<u32>());
        prop_assert_eq!(figure("Cut"), parted(output.cut, lying));
        prop_assert_eq!(
            figure("Binding strips to cut"),
            format!("{} of {}", output.strips.open(), output.strips.wanted)
        );
        let csv = Table::Cutting.csv(&journal, context);
        let mut rows = csv.lines().skip(1);
        let mut to_come = 0;
        let mut to_come_pieced = 0;
        let mut came_pieced = 0;
        let mut strips = 0;
        for row in &pile.rows {
            for piece in &row.pieces {
                let query = Query::Cutting { n: row.n, index: piece.index, typed: None, drag: None };
                let Ok(View::Cutting(leg)) = answer(&journal, &query, context) else { panic!() };
                let cells: Vec<&str> = rows.next().unwrap_or_default().rsplitn(4, ',').collect();
                let own = output.piece(row.n, usize::from(piece.index));
                prop_assert_eq!(cells[0], own.pieced.get().to_string());
                if own.pieced > 0 {
                    let parts = parted(own.squares.get(), own.pieced.get());
                    let parts = parts.split_once(' ').unwrap().1.to_string();
                    prop_assert!(piece.said.contains(&parts), "{} {}", piece.said, parts);
                }
                if piece.cut {
                    prop_assert_eq!(cells[1], leg.counted.unwrap().to_string());
                    came_pieced += own.pieced.get();
                    continue;
                }
                prop_assert_eq!(cells[2], leg.expected.to_string());
                prop_assert!(
                    piece.said.starts_with(&format!("about {} square", leg.expected)),
                    "{} {}", piece.said, leg.expected
                );
                let listed: u32 = leg.list.iter().map(|line| line.squares).sum();
                let halves: u32 = leg.list.iter().map(|line| line.halves).sum();
                prop_assert_eq!([listed, halves], [leg.expected - leg.expected_pieced, leg.expected_pieced * 2]);
                prop_assert_eq!(own.pieced, leg.expected_pieced);
                to_come_pieced += leg.expected_pieced;
                to_come += leg.expected;
                strips += leg.expected_strips;
            }
        }
        // It is about so many while some of it is not measured.
        let gives = figure("The pile still gives");
        let estimated = pile.said.iter().any(|said| said.contains("may give anything from"));
        let gives = gives.strip_prefix("about ").map_or(gives.as_str(), |gives| {
            assert!(estimated, "{:?}", pile.said);
            gives
        });
        prop_assert_eq!(gives, parted(to_come, to_come_pieced));
        prop_assert_eq!(output.pieced, to_come_pieced);
        prop_assert_eq!(came, came_pieced);
        let each: u32 = output.denims.iter().map(|d| d.pieced).sum();
        prop_assert_eq!(each, to_come_pieced);
        let squares = Table::Squares.csv(&journal, context);
        let marked = squares.lines().skip(1).filter(|line| line.ends_with(",yes")).count();
        prop_assert_eq!(marked, lying as usize);
        prop_assert_eq!(strips, output.strips.planned + output.strips.over);
        // What to have at hand and the step of the binding read the same account.
        let Ok(View::Gather(gather)) = answer(&journal, &Query::Gather, context) else { panic!() };
        let said: String = gather.rows.iter().flat_map(|r| r.lines.clone()).collect();
        prop_assert!(said.contains(&format!("{open} still to cut")) || open == 0, "{}", said);
        if output.strips.cut > 0 && output.strips.open() > 0 {
            let cut = format!("Strips cut already: {} of {},", output.strips.cut, output.strips.wanted);
            prop_assert!(said.contains(&cut), "{}", said);
        }
        // Nothing is offered that is refused.
        for row in &pile.ways {
            prop_assert!(decide(Some(throw), &row.button.action).is_ok());
        }
        plan_and_layouts_tell_the_account(&journal, context)?;
        paper_and_tables_tell_the_account(&journal, &gather.rows, context)?;
    }
}
