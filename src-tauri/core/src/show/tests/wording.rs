//! Every sentence exists, and no other room asks for a screen.

use super::*;

/// A later sentence under the same key would hide the first.
#[test]
fn no_sentence_is_said_twice_over() {
    let mut seen = std::collections::BTreeSet::new();
    let files = [
        include_str!("../../../words/en/work.ftl"),
        include_str!("../../../words/en/window.ftl"),
        include_str!("../../../words/en/shell.ftl"),
    ];
    for line in files.iter().flat_map(|f| f.lines()) {
        if let Some((key, _)) = line.split_once(" =").filter(|(key, _)| !key.contains(' ')) {
            assert!(seen.insert(key), "{key} stands twice");
        }
    }
    assert!(seen.len() > 500);
}

/// Every key named in the sources has a sentence, and its arguments are all given.
#[test]
fn no_word_is_missing() {
    let words = Words::english();
    let mut sources = vec![include_str!("../../words/mod.rs").to_string()];
    let mut folders = vec![std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/show")];
    while let Some(folder) = folders.pop() {
        for path in std::fs::read_dir(folder)
            .unwrap()
            .map(|f| f.unwrap().path())
        {
            if path.is_dir() && path.ends_with("tests") {
                continue;
            } else if path.is_dir() {
                folders.push(path);
            } else {
                sources.push(std::fs::read_to_string(path).unwrap());
            }
        }
    }
    let mut checked = 0;
    for source in sources {
        for part in source.split("say!(").skip(1) {
            let Some(after) = part.split_once(',').map(|(_, rest)| rest.trim_start()) else {
                continue;
            };
            let Some(key) = after
                .strip_prefix('"')
                .and_then(|k| k.split_once('"'))
                .map(|(k, _)| k)
            else {
                continue;
            };
            assert!(words.has(key), "no words for {key}");
            checked += 1;
        }
        for part in source.split(".problem(\"").skip(1) {
            let key = part.split_once('"').unwrap().0;
            assert!(
                words.has(&format!("error-{key}")) && words.has(&format!("error-{key}-next")),
                "{key}"
            );
        }
    }
    assert!(checked > 60, "only {checked} keys found");
    for task in Task::ALL {
        for stem in ["title", "tick", "past", "task", "did"] {
            let key = format!("{stem}-{}", task.key());
            assert!(words.has(&key), "no words for {key}");
        }
    }
    for table in tables::Table::ALL {
        let file = format!("file-{}", table.key());
        for key in table.columns().iter().copied().chain([file.as_str()]) {
            assert!(words.has(key), "no words for {key}");
        }
    }
    for kind in ["square", "pair", "four", "row", "column", "part", "whole"] {
        assert!(words.has(&format!("kind-{kind}")), "{kind}");
    }
    for unit in ["squares", "strips", "spools", "bobbins", "bottles"] {
        assert!(words.has(&format!("unit-{unit}")), "{unit}");
    }
    for sign in ["clash", "stays", "pin", "unit", "lap", "wrong", "grain"] {
        assert!(words.has(&format!("sign-{sign}")), "{sign}");
    }
    for line in ["sewn", "open", "block", "fringe", "binding"] {
        assert!(words.has(&format!("draw-key-{line}")), "{line}");
    }
}

/// Rules of the work live with the work: only screens ask for screens.
#[test]
fn nothing_outside_asks_for_a_screen() {
    let source = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut folders = vec![source.clone()];
    let mut read = 0;
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path == source.join("show") {
                continue;
            }
            if path.is_dir() {
                folders.push(path);
                continue;
            }
            let text = std::fs::read_to_string(&path).unwrap_or_default();
            let code = text.lines().filter(|l| !l.trim_start().starts_with("//"));
            for line in code {
                assert!(!line.contains("crate::show"), "{}: {line}", path.display());
            }
            read += 1;
        }
    }
    assert!(read > 30, "only {read} files");
}
