//! Files that are no throw files, or damaged ones, are refused or read; they are never changed.

use super::*;

#[test]
fn files_that_are_no_throw_files() {
    let good = kept("every-event-1.jsonl");
    let text = String::from_utf8(good.clone()).unwrap();
    let bodies = bodies(&good);
    let (header, begun) = (format!("{}\n", bodies[0]), with_sum(&bodies[1]));
    let entry = |what: &str| {
        format!(
            "{header}{begun}{}",
            with_sum(&format!("{{\"n\":2,\"at\":1,{what}"))
        )
    };
    let note = |text: &str| {
        entry(&format!(
            "\"do\":[{{\"noted\":{{\"text\":{text},\"piece\":null}}}}]"
        ))
    };
    let refused: Vec<(&str, Vec<u8>)> = vec![
        ("nothing", vec![]),
        ("only zeros", vec![0; 5000]),
        ("a byte order mark", [b"\xef\xbb\xbf", &good[..]].concat()),
        (
            "UTF-16",
            text.encode_utf16().flat_map(u16::to_le_bytes).collect(),
        ),
        ("brackets", "[".repeat(100_000).into_bytes()),
        (
            "brackets in a line",
            format!(
                "{header}{}",
                with_sum(&format!(
                    "{{\"n\":1,\"at\":1,\"do\":{}",
                    "[".repeat(100_000)
                ))
            )
            .into_bytes(),
        ),
        (
            "brackets after a beginning",
            entry(&format!("\"do\":{}", "[".repeat(100_000))).into_bytes(),
        ),
        ("a lone surrogate", note("\"\\ud800\"").into_bytes()),
        (
            "half a surrogate pair",
            note("\"\\ud83d\\u0041\"").into_bytes(),
        ),
        (
            "keys twice in the header",
            format!("{{\"lapwork\":\"throw\",\"lapwork\":\"throw\",\"version\":1}}\n{begun}")
                .into_bytes(),
        ),
        (
            "keys twice in an entry",
            entry("\"n\":2,\"do\":[]").into_bytes(),
        ),
        (
            "keys twice in an event",
            entry("\"do\":[{\"renamed\":{\"name\":\"a\",\"name\":\"b\"}}]").into_bytes(),
        ),
        (
            "an unknown event",
            entry("\"do\":[{\"unheard-of\":{}}]").into_bytes(),
        ),
        (
            "a second beginning",
            format!(
                "{header}{begun}{}",
                with_sum(&bodies[1].replacen("\"n\":1", "\"n\":2", 1))
            )
            .into_bytes(),
        ),
        (
            "a gap",
            format!(
                "{header}{begun}{}",
                with_sum("{\"n\":3,\"at\":1,\"undo\":2")
            )
            .into_bytes(),
        ),
        (
            "undo of nothing",
            format!(
                "{header}{begun}{}",
                with_sum("{\"n\":2,\"at\":1,\"undo\":18446744073709551615")
            )
            .into_bytes(),
        ),
        (
            "version 0",
            text.replacen("\"version\":1", "\"version\":0", 1)
                .into_bytes(),
        ),
        (
            "a huge version",
            text.replacen("\"version\":1", "\"version\":4294967295", 1)
                .into_bytes(),
        ),
        (
            "a version beyond numbers",
            text.replacen("\"version\":1", "\"version\":1e400", 1)
                .into_bytes(),
        ),
        (
            "a grid of 65535",
            format!(
                "{header}{}",
                with_sum(
                    &bodies[1]
                        .replace("\"across\":6,\"down\":8", "\"across\":65535,\"down\":65535")
                )
            )
            .into_bytes(),
        ),
        (
            "a grid of 0",
            format!(
                "{header}{}",
                with_sum(&bodies[1].replace("\"across\":6,\"down\":8", "\"across\":0,\"down\":0"))
            )
            .into_bytes(),
        ),
        (
            "a square of a light year",
            format!(
                "{header}{}",
                with_sum(&bodies[1].replace("\"side\":127000000", "\"side\":9223372036854775807"))
            )
            .into_bytes(),
        ),
        (
            "places beyond every grid",
            entry("\"do\":[{\"set-aside\":{\"pieces\":[[65535,65535,65535,65535]]}}]").into_bytes(),
        ),
        (
            "spares beyond numbers",
            entry("\"do\":[{\"spares-counted\":{\"spares\":18446744073709551615}}]").into_bytes(),
        ),
        (
            "a time beyond numbers",
            format!(
                "{header}{begun}{}",
                with_sum("{\"n\":2,\"at\":1e30,\"do\":[]")
            )
            .into_bytes(),
        ),
    ];
    let folder = tempfile::tempdir().unwrap();
    for (what, bytes) in &refused {
        assert!(read_or_told(bytes).is_err(), "{what} was taken");
        assert!(intake::read(bytes).is_err(), "{what} was brought");
        // The whole way: told in words, and not touched.
        let throw = folder.path().join("throws/a");
        fs::create_dir_all(&throw).unwrap();
        fs::write(throw.join("throw.jsonl"), bytes).unwrap();
        let mut service = serve(folder.path());
        let shelf = service.hello(NOW).shelf;
        let problem = shelf.rows[0].problem.clone().unwrap();
        assert!(
            (problem.code.starts_with("file-") || problem.code == "newer-there"),
            "{what}: {problem:?}"
        );
        assert_eq!(
            &fs::read(throw.join("throw.jsonl")).unwrap(),
            bytes,
            "{what}"
        );
        assert_eq!(fs::read_dir(&throw).unwrap().count(), 1, "{what}");
    }
    // Other newlines are no damage.
    let other = text.replace('\n', "\r\n");
    assert_eq!(read_or_told(other.as_bytes()), read_or_told(&good));
    // Strange words are just words.
    for words in kept_texts("texts.json") {
        let quoted = serde_json::to_string(&words).unwrap();
        assert_eq!(read_or_told(note(&quoted).as_bytes()), Ok(2), "{words:?}");
    }
    println!(
        "{} kinds of files that are none: each told, none touched",
        refused.len()
    );
}

#[test]
fn files_with_bytes_changed() {
    let files = [kept("every-event-1.jsonl"), kept("throw-1.jsonl")];
    let edits = prop::collection::vec(
        (any::<prop::sample::Index>(), 0..6u8, any::<[u8; 4]>()),
        1..6,
    );
    let tried = runner(3_000).run(&(0..2usize, edits), |(which, edits)| {
        let mut bytes = files[which].clone();
        for (at, how, new) in edits {
            if bytes.is_empty() {
                break;
            }
            let at = at.index(bytes.len());
            match how {
                0 => bytes[at] = new[0],
                1 => bytes.truncate(at),
                2 => {
                    bytes.splice(at..at, new);
                }
                3 => {
                    bytes.drain(at..(at + usize::from(new[0])).min(bytes.len()));
                }
                4 => {
                    let again: Vec<u8> = bytes[at..(at + 300).min(bytes.len())].to_vec();
                    bytes.splice(at..at, again);
                }
                _ => bytes[at] = b"\n{}[]\",0\\"[usize::from(new[0]) % 9],
            }
        }
        let _ = read_or_told(&bytes);
        let _ = intake::read(&bytes);
        Ok(())
    });
    tried.unwrap();
    println!("3000 throw files with bytes changed, no panic");
}

#[test]
fn events_with_figures_changed_and_a_checksum_that_agrees() {
    let (mut read, mut output) = (0, 0);
    let looks: Vec<Query> = looks()
        .into_iter()
        .map(|query| serde_json::from_value(query).unwrap())
        .collect();
    // Events as they were, and events that say what was decided.
    for name in ["every-event-1.jsonl", "every-event-2-said.jsonl"] {
        let (some, others) = figures_changed(&kept(name), &looks);
        assert!(some > 100 && others > 200, "{name}: {some}, {others}");
        (read, output) = (read + some, output + others);
    }
    println!(
        "{} events changed: {read} read and shown, {output} told, no panic",
        read + output
    );
}

/// How many of the changed records were read and shown, and how many were told.
fn figures_changed(file: &[u8], looks: &[Query]) -> (usize, usize) {
    let (mut read, mut output) = (0, 0);
    let text = std::str::from_utf8(file).unwrap();
    let header = text.lines().next().unwrap();
    let bodies = bodies(file);
    for (line, body) in bodies.iter().enumerate().skip(1) {
        let value: Value = serde_json::from_str(&format!("{body}}}")).unwrap();
        // Every twelfth, others for each line; a sixth of them on every screen.
        let some = changed(&value).into_iter().skip(line % 12).step_by(12);
        for (n, one) in some.enumerate() {
            let mut text = format!("{header}\n");
            for (other, body) in bodies.iter().enumerate().skip(1) {
                if other == line {
                    let changed = serde_json::to_string(&one).unwrap();
                    text += &with_sum(changed.strip_suffix('}').unwrap_or(&changed));
                } else {
                    text += &with_sum(body);
                }
            }
            let tried = catch_unwind(|| {
                let _ = intake::read(text.as_bytes());
                let Ok(read) = Journal::read(text.as_bytes()) else {
                    return false;
                };
                if n % 6 == 0 {
                    shown(&read.journal, looks);
                }
                true
            });
            match tried {
                Ok(true) => read += 1,
                Ok(false) => output += 1,
                Err(_) => panic!("line {} with {one}", line + 1),
            }
        }
    }
    (read, output)
}
