//! Throws handed on and brought back, in the real window.

use lapwork_tests::walk::Walk;
use std::fs;

#[test]
fn the_throw_is_handed_on_to_the_byte_and_never_over_another() {
    let data = tempfile::tempdir().unwrap();
    let walk = Walk::start(data.path());
    walk.tap("open-demo");
    walk.sees("card-title", "Cut a square");
    let id = walk.id();
    walk.tap("tab-history");
    walk.tap("hand-on");
    walk.sees("hand-throw", "The throw itself");
    walk.tap("hand-throw-0");
    walk.sees("handed", "Window-seat throw.jsonl");
    let kept = fs::read(data.path().join("throws").join(&id).join("throw.jsonl")).unwrap();
    let handed = walk.window.handed();
    assert_eq!(
        fs::read(handed.join("Window-seat throw.jsonl")).unwrap(),
        kept
    );
    walk.tap("hand-throw-0");
    walk.sees("handed", "Window-seat throw (2).jsonl");
    let mut names: Vec<String> = fs::read_dir(&handed)
        .unwrap()
        .map(|found| found.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    assert_eq!(
        names,
        ["Window-seat throw (2).jsonl", "Window-seat throw.jsonl"]
    );
}
