//! Calls of the window with changed fields are answered or refused.

use super::*;

/// The names the shell knows for one sort of thing, from what it says of an unknown one.
fn names<T: DeserializeOwned>(tag: &str) -> Vec<String> {
    let Err(why) = serde_json::from_value::<T>(json!({tag: "?"})) else {
        panic!("“?” is known")
    };
    let why = why.to_string();
    let list = why.split_once("expected one of ").expect("a list").1;
    let mut names: Vec<String> = list
        .split(", ")
        .map(|name| name.trim_matches('`').to_string())
        .collect();
    names.sort_unstable();
    names
}

/// A service with the demo throw on it.
fn with_demo(folder: &TempDir) -> (Service, String) {
    let mut service = serve(folder.path());
    let id = service
        .shelf_command(&ShelfCommand::Demo, NOW)
        .unwrap()
        .id
        .unwrap();
    (service, id)
}

/// Run it; a panic is told with what was asked.
fn no_panic<T>(asked: &Value, run: impl FnOnce() -> T) -> T {
    catch_unwind(AssertUnwindSafe(run)).unwrap_or_else(|_| panic!("a panic from {asked}"))
}

#[test]
fn actions_with_fields_changed() {
    let actions = actions();
    let mut named: Vec<&str> = actions
        .iter()
        .map(|action| action["do"].as_str().unwrap())
        .collect();
    named.sort_unstable();
    assert_eq!(named, names::<Command>("do"), "one of every action");
    for action in &actions {
        let fine = serde_json::from_value::<Command>(action.clone());
        assert!(fine.is_ok(), "{action}: {fine:?}");
    }
    let folder = quick();
    let (mut service, mut id) = with_demo(&folder);
    let looks: Vec<Query> = looks()
        .into_iter()
        .map(|query| serde_json::from_value(query).unwrap())
        .collect();
    let (mut unread, mut refused, mut taken) = (0, 0, 0);
    for action in &actions {
        for asked in changed(action) {
            let Ok(action) = serde_json::from_value::<Command>(asked.clone()) else {
                unread += 1;
                continue;
            };
            no_panic(&asked, || {
                let begins = matches!(action, Command::Begin { .. });
                if begins {
                    let begun = service.shelf_command(
                        &ShelfCommand::Begin {
                            action: action.clone(),
                            pile: Vec::new(),
                        },
                        NOW,
                    );
                    if let Ok(begun) = begun {
                        let id = begun.id.unwrap();
                        service
                            .shelf_command(&ShelfCommand::Delete { id: id.clone() }, NOW)
                            .unwrap();
                        service
                            .shelf_command(&ShelfCommand::Erase { id }, NOW)
                            .unwrap();
                    }
                }
                match service.act(&id, &Request::Act { action }, NOW) {
                    Ok(_) => {
                        taken += 1;
                        for query in looks.iter().skip(taken % 4).step_by(4) {
                            let _ = service.view(&id, query, NOW);
                        }
                        // Mostly taken back, so that the next finds the throw much the same.
                        if taken % 5 != 0 {
                            service.act(&id, &Request::Undo, NOW).unwrap();
                        }
                    }
                    Err(problem) => {
                        assert!(!problem.said.contains("error-"), "{problem:?}");
                        refused += 1;
                    }
                }
            });
            if taken % 300 == 299 {
                // What was taken can be read again; then a fresh throw.
                drop(service);
                service = serve(folder.path());
                let shelf = service.hello(NOW).shelf;
                assert!(
                    shelf.rows.iter().all(|row| row.problem.is_none()),
                    "{:?}",
                    shelf.rows
                );
                id = service
                    .shelf_command(&ShelfCommand::Demo, NOW)
                    .unwrap()
                    .id
                    .unwrap();
                taken += 1;
            }
        }
    }
    println!(
        "actions with fields changed: {unread} not understood, {refused} refused, {taken} taken, no panic"
    );
    assert!(refused > 500 && taken > 200);
}

#[test]
fn looks_and_all_else_the_window_asks_with_fields_changed() {
    let looks = looks();
    let mut named: Vec<&str> = looks
        .iter()
        .map(|query| query["see"].as_str().unwrap())
        .collect();
    named.sort_unstable();
    named.dedup();
    assert_eq!(named, names::<Query>("see"), "one of every look");
    let folder = quick();
    let (mut service, id) = with_demo(&folder);
    let note = json!({"do": "add-garment", "kind": "mens-jeans", "size": "medium", "makes": {"for": "denim"}, "name": "J"});
    let action = serde_json::from_value(note).unwrap();
    service.act(&id, &Request::Act { action }, NOW).unwrap();
    let texts = [kept_texts("measures.json"), kept_texts("texts.json")].concat();
    let mut tried = 0;
    let mut chance = Chance(5);
    for query in &looks {
        let mut all = changed(query);
        let mut spots = Vec::new();
        places(query, "", &mut spots);
        for spot in spots.iter().skip(1) {
            if query.pointer(spot).is_some_and(Value::is_string) {
                for _ in 0..12 {
                    let mut one = query.clone();
                    let text = &texts[chance.below(texts.len() as u64) as usize];
                    *one.pointer_mut(spot).unwrap() = json!(text);
                    all.push(one);
                }
            }
        }
        for asked in all {
            if let Ok(query) = serde_json::from_value::<Query>(asked.clone()) {
                no_panic(&asked, || service.view(&id, &query, NOW).is_ok());
                tried += 1;
            }
        }
    }
    let draft = looks
        .iter()
        .find_map(|query| query.get("draft").filter(|draft| draft.is_object()))
        .unwrap();
    for asked in changed(draft) {
        if let Ok(draft) = serde_json::from_value::<PlanDraft>(asked.clone()) {
            no_panic(&asked, || service.draft(&draft, NOW));
            tried += 1;
            for wish in [
                json!({"by": "squares", "have": "48"}),
                json!({"by": "cloth", "jeans": [{"pairs": 1, "kind": "childs-jeans", "size": null, "knees": "torn"}], "pack": {"side": "5 in", "count": 42}, "width": "27", "height": ""}),
                json!({"by": "size", "width": "27", "height": "36"}),
            ]
            .iter()
            .flat_map(|wish| [wish.clone()].into_iter().chain(changed(wish)).step_by(17))
            {
                if let Ok(wish) = serde_json::from_value::<GridWish>(wish) {
                    no_panic(&asked, || service.grids(&draft, &wish, NOW));
                    tried += 1;
                }
            }
        }
    }
    for text in &texts {
        no_panic(&json!(text), || service.length(text, NOW).is_ok());
        for command in ["delete", "restore", "erase"] {
            let command =
                serde_json::from_value::<ShelfCommand>(json!({"command": command, "id": text}))
                    .unwrap();
            no_panic(&json!(text), || {
                service.shelf_command(&command, NOW).unwrap_err()
            });
        }
        tried += 4;
    }
    for asked in changed(&serde_json::to_value(Prefs::default()).unwrap()) {
        if let Ok(prefs) = serde_json::from_value::<Prefs>(asked.clone()) {
            no_panic(&asked, || {
                service.set_prefs(prefs, NOW).unwrap();
                for query in looks.iter().step_by(5) {
                    let query = serde_json::from_value(query.clone()).unwrap();
                    let _ = service.view(&id, &query, NOW);
                }
            });
            tried += 1;
        }
    }
    println!(
        "looks, drafts, wishes, ids and settings with fields changed: {tried} tried, no panic"
    );
    assert!(tried > 1000);
}

#[test]
fn places_are_within_the_largest_grid() {
    for bad in [
        "[0,0,0,1]",
        "[60,0,1,1]",
        "[0,0,61,1]",
        "[65535,65535,65535,65535]",
        "[0,0,1]",
        "[0,0,1,1,1]",
        "[-1,0,1,1]",
    ] {
        assert!(serde_json::from_str::<Rect>(bad).is_err(), "{bad}");
    }
    assert_eq!(
        serde_json::from_str::<Rect>("[59,59,1,1]").unwrap(),
        Rect::square(59, 59)
    );
}
