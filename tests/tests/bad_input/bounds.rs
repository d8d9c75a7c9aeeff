//! Figures and counts out of bounds are refused, with the figure named.

use super::*;

/// Every number in a value, by its JSON pointer.
fn numbers(value: &Value) -> Vec<String> {
    let mut found = Vec::new();
    places(value, "", &mut found);
    let number = |place: &String| value.pointer(place).is_some_and(Value::is_number);
    found.into_iter().filter(number).collect()
}

/// Figures beyond the bounds of every type there is.
fn beyond() -> [Value; 6] {
    [
        json!(1_000_000_000_001_i64),
        json!(-1_000_000_000_001_i64),
        json!(i64::MAX),
        json!(i64::MIN),
        json!(u64::MAX),
        json!(1e300),
    ]
}

/// What `bounds.rs` promises of files: whichever figure of whichever event it is, one that
/// is out of bounds is refused, and told with its line and its place.
#[test]
fn no_figure_of_any_event_may_be_out_of_bounds() {
    let (mut tried, mut named) = (0, 0);
    for file in ["every-event-1.jsonl", "every-event-2.jsonl"] {
        let bodies = bodies(&kept(file));
        let header = std::str::from_utf8(&kept(file))
            .unwrap()
            .lines()
            .next()
            .unwrap()
            .to_string();
        for (line, body) in bodies.iter().enumerate().skip(1) {
            let value: Value = serde_json::from_str(&format!("{body}}}")).unwrap();
            // The number of the entry and its time are none of an event's figures.
            for place in numbers(&value)
                .iter()
                .filter(|p| !["/n", "/at"].contains(&p.as_str()))
            {
                for instead in beyond() {
                    let mut one = value.clone();
                    *one.pointer_mut(place).unwrap() = instead.clone();
                    let changed = serde_json::to_string(&one).unwrap();
                    let changed = with_sum(changed.strip_suffix('}').unwrap());
                    let before: String = bodies[1..line].iter().map(|b| with_sum(b)).collect();
                    let text = format!("{header}\n{before}{changed}");
                    let what = format!("{file}, line {}, {place}: {instead}", line + 1);
                    assert!(intake::read(text.as_bytes()).is_err(), "{what} was brought");
                    match Journal::read(text.as_bytes()) {
                        Ok(_) => panic!("{what} was read"),
                        Err(FormatError::FigureOutOfBounds {
                            line: output,
                            figure,
                        }) => {
                            assert_eq!(output, line + 1, "{what}");
                            let steps = place.split('/').skip(1);
                            assert!(
                                steps.clone().all(|s| figure.field.contains(s)),
                                "{what}: {figure:?}"
                            );
                            assert_eq!(figure.figure, instead.to_string(), "{what}");
                            named += 1;
                        }
                        // A place in the grid is read as a piece, a number of an entry as one.
                        Err(
                            FormatError::Unknown { line: output }
                            | FormatError::OutOfOrder { line: output },
                        ) => {
                            assert_eq!(output, line + 1, "{what}");
                        }
                        Err(other) => panic!("{what}: {other:?}"),
                    }
                    tried += 1;
                }
            }
        }
    }
    println!("{tried} figures of events out of bounds: all refused, {named} by name");
    assert!(tried > 1000 && named > 400);
}

/// The same of what the window sends.
#[test]
fn no_figure_the_window_sends_may_be_out_of_bounds() {
    fn refused<T: DeserializeOwned>(sent: &Value) -> Option<String> {
        match serde_json::from_value::<Sent<T>>(sent.clone()) {
            Ok(Sent(Ok(_))) => panic!("taken: {sent}"),
            Ok(Sent(Err(figure))) => Some(figure.field),
            Err(_) => None,
        }
    }
    let (mut tried, mut named) = (0, 0);
    for action in actions() {
        for place in numbers(&action) {
            for instead in beyond() {
                let mut one = action.clone();
                *one.pointer_mut(&place).unwrap() = instead;
                let fields = [
                    refused::<Command>(&one),
                    refused::<Request>(&json!({"request": "act", "action": one})),
                    refused::<ShelfCommand>(&json!({"command": "begin", "action": one})),
                ];
                tried += 1;
                if let [Some(own), Some(request), Some(command)] = &fields {
                    named += 1;
                    assert_eq!(
                        (request, command),
                        (&format!("action.{own}"), &format!("action.{own}"))
                    );
                } else {
                    assert_eq!(fields, [None, None, None], "{one} at {place}");
                }
            }
        }
    }
    let wishes = json!({"front": 12, "back": u32::MAX, "seed": 1});
    assert_eq!(
        refused::<Query>(&json!({"see": "wishes", "wishes": wishes})).as_deref(),
        Some("wishes.back")
    );
    assert_eq!(refused::<Wishes>(&wishes).as_deref(), Some("back"));
    // What the maker reads of it.
    let folder = quick();
    let desk = serve(folder.path());
    let count = json!({"request": "act", "action": {"do": "count-spares", "spares": u32::MAX}});
    let problem = desk
        .accept(serde_json::from_value::<Sent<Request>>(count).unwrap())
        .unwrap_err();
    assert_eq!(problem.code, "beyond");
    assert!(
        problem.said.contains("4294967295") && problem.said.contains("action.spares"),
        "{problem:?}"
    );
    println!("{tried} figures sent out of bounds: all refused, {named} by name");
    assert!(tried > 300 && named > 200);
}

/// A record that overflowed when its counts were added up, so that the app did not start.
#[test]
fn counts_that_overflow_are_told_and_the_app_starts() {
    let bytes = fs::read(corpus("spares.jsonl")).unwrap();
    let field = "do[0].spares-counted.spares".to_string();
    let how = FormatError::FigureOutOfBounds {
        line: 3,
        figure: FigureOutOfBounds {
            field,
            figure: u32::MAX.to_string(),
        },
    };
    assert_eq!(read_or_told(&bytes), Err(how.clone()));
    assert_eq!(intake::read(&bytes).unwrap_err(), how);
    let folder = tempfile::tempdir().unwrap();
    let throw = folder.path().join("throws/a");
    fs::create_dir_all(&throw).unwrap();
    fs::write(throw.join("throw.jsonl"), &bytes).unwrap();
    let mut desk = serve(folder.path());
    let shelf = desk.hello(NOW).shelf;
    let problem = shelf.rows[0].problem.clone().unwrap();
    assert_eq!(problem.code, "file-beyond");
    assert!(
        problem.said.contains("4294967295") && problem.said.contains('3'),
        "{problem:?}"
    );
    assert_eq!(
        fs::read(throw.join("throw.jsonl")).unwrap(),
        bytes,
        "it was touched"
    );
    assert!(
        desk.shelf_command(&ShelfCommand::Demo, NOW).is_ok(),
        "nothing else can be done"
    );
}

/// As many as may be counted, said again and again: added up they stop at the most.
#[test]
fn counts_at_their_bound_add_up_however_often_they_are_said() {
    let text = String::from_utf8(fs::read(corpus("spares.jsonl")).unwrap()).unwrap();
    let bodies = bodies(text.as_bytes());
    let most = Count::MOST.get();
    let plan = bodies[1]
        .split_once("\"plan\":")
        .unwrap()
        .1
        .split_once(",\"prints\"")
        .unwrap()
        .0;
    let print = |n: usize| {
        format!("{{\"name\":\"P{n}\",\"colour\":\"#445566\",\"texture\":\"dot\",\"stock\":{most}}}")
    };
    let prints = (0..500).map(print).collect::<Vec<_>>().join(",");
    let wide = 1_000_000_000_000_i64;
    let pack = |n: usize, makes: &str| {
        format!(
            "{{\"heap-set\":{{\"n\":{n},\"heap\":{{\"from\":{{\"source\":\"precut\",\"name\":\"Pack\",\"side\":{wide},\"count\":{most}}},\"makes\":{makes},\"cloth\":{{\"weight\":0.4,\"thickness\":0.001,\"stretch\":false,\"washed\":true}},\"trimming\":0,\"counted\":[null]}}}}}}"
        )
    };
    let mut events = vec![
        format!("{{\"cloth-changed\":{{\"prints\":[{prints}],\"denims\":[]}}}}"),
        format!("{{\"wished\":{{\"wishes\":{{\"front\":{most},\"back\":{most}}}}}}}"),
    ];
    for n in 1..=500 {
        events.push(format!("{{\"spares-counted\":{{\"spares\":{most}}}}}"));
        events.push(format!(
            "{{\"plan-changed\":{{\"plan\":{plan},\"spares\":{most}}}}}"
        ));
        let makes = ["{\"for\":\"denim\"}", "{\"for\":\"fabric\",\"print\":0}"][n % 2];
        events.push(pack(n, makes));
        events.push(format!(
            "{{\"piece-cut\":{{\"n\":{n},\"piece\":0,\"squares\":{most}}}}}"
        ));
        events.push(pack(n + 500, makes));
    }
    let mut text = format!("{}\n{}", text.lines().next().unwrap(), with_sum(&bodies[1]));
    for (i, event) in events.iter().enumerate() {
        let n = i + 2;
        text += &with_sum(&format!("{{\"n\":{n},\"at\":{n},\"do\":[{event}]"));
    }
    let read = Journal::read(text.as_bytes()).unwrap();
    assert_eq!(read.journal.len(), events.len() + 1);
    let throw = read.journal.throw();
    assert_eq!(
        (throw.spares, throw.prints[0].stock),
        (Count::MOST, Some(Count::MOST))
    );
    let looks: Vec<Query> = looks()
        .into_iter()
        .map(|query| serde_json::from_value(query).unwrap())
        .collect();
    shown(&read.journal, &looks);
    // What is beyond the rules of today does not come in from elsewhere.
    assert!(intake::read(text.as_bytes()).is_err());
}
