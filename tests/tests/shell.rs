//! The real window and the shell behind it: what it may call, and what survives.

use lapwork_tests::window::Window;
use serde_json::{Value, json};

fn entry(window: &Window, id: &str) -> Value {
    let query = json!({"id": id, "query": {"see": "trim"}});
    window.call("view", query).unwrap()["view"]["head"]["entry"].clone()
}

#[test]
fn what_was_acknowledged_survives_a_dead_battery() {
    let data = tempfile::tempdir().unwrap();
    let mut window = Window::open(data.path());
    let begun = window.call("shelf_command", json!({"command": {"command": "demo"}}));
    let id = begun.unwrap()["id"].as_str().unwrap().to_string();
    let note = json!({"do": "note", "text": "before the dark", "piece": null});
    let request = json!({"request": "act", "action": note});
    let acted = window
        .call("act", json!({"id": id, "request": request}))
        .unwrap();
    let head = &acted["head"];
    window.crash();
    assert_eq!(
        window.call("hello", json!({})).unwrap()["problem"],
        Value::Null
    );
    assert_eq!(entry(&window, &id), head["entry"]);
    window.reopen();
    assert_eq!(entry(&window, &id), head["entry"]);
}

#[test]
fn the_page_may_call_nothing_of_the_system_and_go_nowhere_else() {
    let data = tempfile::tempdir().unwrap();
    let window = Window::open(data.path());
    for command in [
        "plugin:window|set_title",
        "plugin:path|resolve_directory",
        "plugin:dialog|save",
        "plugin:dialog|open",
        "plugin:fs|read_file",
    ] {
        let refused = window.call(command, json!({"value": "x", "directory": 1}));
        let refused = refused.unwrap_err();
        assert!(
            refused.as_str().unwrap().contains("not allowed"),
            "{refused}"
        );
    }
    window.run(
        "window.here = true; location.href = 'http://127.0.0.1:9/'",
        &[],
    );
    std::thread::sleep(std::time::Duration::from_millis(300));
    assert_eq!(window.run("return window.here", &[]), json!(true));
    let script = "const mark = document.createElement('div');
        mark.innerHTML = '<img src=\"x\" onerror=\"window.hit = true\">';
        document.body.append(mark); return window.hit ?? null";
    assert_eq!(window.run(script, &[]), Value::Null);
    std::thread::sleep(std::time::Duration::from_millis(300));
    assert_eq!(window.run("return window.hit ?? null", &[]), Value::Null);
}

#[test]
fn a_second_window_on_the_same_folder_is_told_and_writes_nothing() {
    let data = tempfile::tempdir().unwrap();
    let lock = std::fs::File::create(data.path().join("lock")).unwrap();
    lock.try_lock().unwrap();
    let window = Window::open(data.path());
    let hello = window.call("hello", json!({})).unwrap();
    assert_eq!(hello["problem"]["code"], "locked");
    let begun = window.call("shelf_command", json!({"command": {"command": "demo"}}));
    assert_eq!(begun.unwrap_err()["code"], "locked");
    drop(lock);
    let begun = window.call("shelf_command", json!({"command": {"command": "demo"}}));
    assert!(begun.unwrap()["id"].is_string());
}
