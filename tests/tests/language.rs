//! Another language, in the real window and without one.

use lapwork_core::command::Command;
use lapwork_core::log::journal::Journal;
use lapwork_core::words::{LANGUAGES, Language, language};
use lapwork_tests::program::lapwork;
use lapwork_tests::walk::Walk;
use serde_json::json;
use std::collections::BTreeSet;
use std::path::PathBuf;
use std::process::{self, Output};

/// The words of a language as its files use them, without what is put into sentences.
fn vocabulary(language: &Language) -> BTreeSet<String> {
    let mut out = BTreeSet::new();
    for line in language.files.iter().flat_map(|text| text.lines()) {
        if line.starts_with('#') {
            continue;
        }
        // A key, the sign of a choice and a variable are no words of the language.
        let mut rest = match line.split_once(" = ") {
            Some((_, value)) if !line.starts_with(' ') => value.to_string(),
            _ => line.to_string(),
        };
        if let Some(choice) = rest.find('[') {
            let end = rest.find(']').map_or(rest.len(), |at| at + 1);
            rest.replace_range(choice..end, " ");
        }
        while let Some(at) = rest.find('$') {
            let name = |c: char| c.is_ascii_alphanumeric() || c == '-' || c == '$';
            let end = rest[at..].find(|c| !name(c)).map_or(rest.len(), |n| at + n);
            rest.replace_range(at..end, " ");
        }
        out.extend(words_of(&rest));
    }
    out
}

fn words_of(text: &str) -> impl Iterator<Item = String> {
    text.split(|c: char| !c.is_alphabetic())
        .filter(|w| w.chars().count() > 2)
        .map(str::to_lowercase)
}

/// Words only English has.
fn english_only() -> BTreeSet<String> {
    let german = vocabulary(language("de").unwrap());
    let english = vocabulary(&LANGUAGES[0]);
    english.difference(&german).cloned().collect()
}

/// What can be seen and heard of the page.
fn output(walk: &Walk) -> String {
    let names = walk.window.run(
        "return [...document.querySelectorAll('*')].flatMap((e) =>
            ['aria-label', 'alt', 'title', 'placeholder'].map((n) => e.getAttribute(n) ?? '')
        ).join(' ') + ' ' + [...document.querySelectorAll('svg text, svg title')].map((e) => e.textContent).join(' ')
          + ' ' + [...document.querySelectorAll('input')].map((e) => e.type === 'text' ? e.value : '').join(' ')
          + ' ' + document.title",
        &[],
    );
    format!(
        "{} {}",
        walk.window.text(),
        names.as_str().unwrap_or_default()
    )
}

/// Nothing English is left on the screen, and nothing sticks out of it.
fn is_german(walk: &Walk, english: &BTreeSet<String>, screen: &str) {
    let folder = walk.reads("folder");
    let said = output(walk).replace(&folder, " ");
    let left: BTreeSet<String> = words_of(&said).filter(|w| english.contains(w)).collect();
    assert!(left.is_empty(), "English on {screen}: {left:?}\n{said}");
    if let Some(pictures) = std::env::var_os("LAPWORK_PICTURES") {
        let file = PathBuf::from(pictures).join(format!("{screen}.png"));
        walk.window.picture(&file);
    }
    let wide = walk.window.run(
        "const out = [...document.querySelectorAll('button, label, h1, h2, nav span')].filter((e) =>
            e.getBoundingClientRect().width > 2 && getComputedStyle(e).overflow !== 'hidden'
            && (e.innerText.trim() && e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0
                || e.getBoundingClientRect().right > innerWidth + 1)).map((e) => e.innerText);
         if (document.documentElement.scrollWidth > innerWidth) out.push('the page');
         return out;",
        &[],
    );
    assert_eq!(wide, json!([]), "sticks out on {screen}");
}

#[test]
fn the_words_only_english_has_are_many() {
    let english = english_only();
    assert!(english.len() > 500, "{}", english.len());
    for word in ["the", "square", "back", "settings", "lap", "stitch"] {
        assert!(english.contains(word), "{word}");
    }
    assert!(!english.contains("plan"));
}

#[test]
fn a_maker_chooses_german_and_reads_no_english_word() {
    let english = english_only();
    let data = tempfile::tempdir().unwrap();
    let mut walk = Walk::start(data.path());
    walk.window.size(360, 740);
    walk.tap("settings");
    walk.window.wait_text("Settings");
    walk.tap("field-language-de");
    walk.window.wait_text("Einstellungen");
    let lang = "return document.documentElement.lang";
    assert_eq!(walk.window.run(lang, &[]), json!("de"));
    is_german(&walk, &english, "settings");
    walk.tap("back");
    walk.window.wait_text("Neue Decke");
    is_german(&walk, &english, "shelf-empty");

    // A new throw, page by page.
    walk.tap("new-throw");
    walk.window.wait_text("Kante eines Quadrats");
    let mut lap = walk.reads("field-lap");
    is_german(&walk, &english, "new-1");
    for page in 2..=4 {
        walk.tap("next-page");
        walk.window.wait_text(&format!("{page} / 4"));
        lap += &walk.reads("field-lap");
        is_german(&walk, &english, &format!("new-{page}"));
    }
    assert_eq!(lap, "½ Zoll");
    // Back turns the pages, and then leads to the shelf.
    for page in (1..4).rev() {
        walk.tap("back");
        walk.window.wait_text(&format!("{page} / 4"));
    }
    walk.tap("back");
    walk.window.wait_text("Neue Decke");

    // The demo is named in German too.
    walk.tap("open-demo");
    walk.sees("card-title", "Quadrat zuschneiden");
    assert_eq!(walk.all("figure-value"), ["5 × 5 Zoll", "Dunkle Jeans"]);
    walk.window.wait_text("Decke für den Fensterplatz");
    is_german(&walk, &english, "work");
    for tab in ["faces", "bench", "plan", "history"] {
        walk.tap(&format!("tab-{tab}"));
        walk.window.wait_until("the tab is there", |w| {
            w.run(
                "return document.querySelector('nav [aria-current]').dataset.testid",
                &[],
            ) == json!(format!("tab-{tab}"))
        });
        is_german(&walk, &english, tab);
    }
    // Dates as Germans write them.
    let months = [
        "Januar",
        "Februar",
        "März",
        "April",
        "Mai",
        "Juni",
        "Juli",
        "August",
        "September",
        "Oktober",
        "November",
        "Dezember",
    ];
    let history = walk.window.text();
    assert!(months.iter().any(|m| history.contains(m)), "{history}");
    walk.tap("tab-pile");
    walk.window.wait_text("Kleiderstapel");
    is_german(&walk, &english, "tab-pile");
    for door in ["open-gather", "open-scraps"] {
        walk.tap("tab-plan");
        walk.tap(door);
        walk.window.wait_until("the screen is there", |w| {
            w.run("return document.querySelector('nav') === null", &[]) == json!(true)
        });
        is_german(&walk, &english, door);
        walk.tap("back");
    }

    // A four is measured as it is shown, in the language's own words.
    walk.tap("tab-bench");
    walk.tap("cell-0-2");
    walk.tap("piece-measure");
    walk.tap("key-9");
    walk.tap("key-½");
    walk.tap("key- in");
    assert_eq!(walk.reads("field-width"), "9½ Zoll");
    walk.keys(&["next", "2", "4", "1", ".", "3", " mm"]);
    assert_eq!(walk.reads("field-height"), "241,3 mm");
    walk.sees("verdict", "Breite: genau richtig.");
    walk.sees("verdict", "Höhe: genau richtig.");
    is_german(&walk, &english, "measure");
    walk.tap("back");

    // Metric, with a comma.
    walk.tap("tab-work");
    walk.tap("units");
    walk.tap("units-cm");
    walk.window.wait_until("centimetres", |_| {
        walk.all("figure-value") == ["12,7 × 12,7 cm", "Dunkle Jeans"]
    });

    // It is kept, and English comes back at once.
    walk.window.reopen();
    walk.window.size(360, 740);
    walk.window.wait_text("Deine Decken");
    is_german(&walk, &english, "shelf");
    walk.tap("throw-row");
    walk.sees("card-title", "Quadrat zuschneiden");
    walk.tap("settings");
    walk.tap("field-language-en");
    walk.window.wait_text("Settings");
    assert_eq!(walk.window.run(lang, &[]), json!("en"));
    walk.tap("back");
    walk.sees("card-title", "Cut a square");
    // What the throw's own things are called is not translated.
    assert_eq!(walk.all("figure-value"), ["12.7 × 12.7 cm", "Dunkle Jeans"]);
}

#[test]
fn what_is_handed_on_and_brought_is_german_on_narrow_screens() {
    let english = english_only();
    let data = tempfile::tempdir().unwrap();
    let mut walk = Walk::start(data.path());
    walk.tap("settings");
    walk.tap("field-language-de");
    walk.window.wait_text("Einstellungen");
    walk.tap("back");
    walk.tap("open-demo");
    walk.sees("card-title", "Quadrat zuschneiden");
    // Two copies that cannot both stand: named otherwise here and there.
    let file = data
        .path()
        .join("throws")
        .join(walk.id())
        .join("throw.jsonl");
    let copy = std::fs::read(&file).unwrap();
    let mut other = Journal::read(&copy).unwrap().journal;
    let rename = |name: &str| Command::Rename { name: name.into() };
    let last = other.entries().map(|(e, _)| e.at).max().unwrap();
    let note = Command::Note {
        text: "Mehr Stoff nach hinten.".into(),
        piece: None,
        task: None,
        next: true,
    };
    for action in [rename("Decke für die Diele"), note] {
        let entry = other.propose(&action, last + 1_000).unwrap();
        other.accept(entry).unwrap();
    }
    std::fs::write(walk.window.brought(), other.text()).unwrap();
    let request = json!({ "request": "act", "action": rename("Decke für die Eckbank") });
    walk.window
        .call("act", json!({ "id": walk.id(), "request": request }))
        .unwrap();
    walk.window.reopen();
    for (width, height) in [(390, 844), (360, 740)] {
        let see = |screen: &str| is_german(&walk, &english, &format!("{width}-{screen}"));
        walk.window.size(width, height);
        walk.window.wait_text("Deine Decken");
        see("shelf");
        walk.tap("throw-row");
        walk.sees("card-title", "Quadrat zuschneiden");
        see("work");
        walk.tap("tab-faces");
        walk.window.wait_text("Vorderseite");
        see("faces");
        walk.tap("tab-history");
        walk.tap("hand-on");
        walk.sees("hand-print", "Arbeitsblatt");
        for part in ["throw", "pictures", "print", "story"] {
            let script = "document.querySelector(arguments[0]).scrollIntoView({ block: 'start' })";
            let marked = format!("[data-testid=hand-{part}]");
            walk.window.run(script, &[json!(marked)]);
            see(&format!("hand-{part}"));
        }
        walk.window.run(
            "document.querySelector('[data-testid=print]').scrollIntoView({ block: 'end' })",
            &[],
        );
        see("hand-print-end");
        walk.tap("back");
        walk.tap("back");
        walk.tap("bring");
        walk.sees("conflict-0", "Decke für die Diele");
        see("bring");
        walk.tap("pick-0-brought");
        walk.window.run(
            "document.querySelector('[data-testid=take-merge]').scrollIntoView({ block: 'end' })",
            &[],
        );
        see("bring-end");
        walk.window.key("\u{e00c}");
        walk.window.wait_until("the sheet is closed", |w| {
            w.run(
                "return !document.querySelector('[data-testid=conflict-0]')",
                &[],
            ) == json!(true)
        });
    }
}

fn ask(args: &[&str], environment: &str) -> Output {
    let mut command = process::Command::new(lapwork());
    command.env_remove("DISPLAY").env_remove("WAYLAND_DISPLAY");
    for name in ["LANGUAGE", "LC_ALL", "LC_MESSAGES"] {
        command.env_remove(name);
    }
    command.env("LANG", environment).args(args);
    command.output().unwrap()
}

#[test]
fn without_a_window_the_system_s_language_or_the_one_named_is_spoken() {
    let help = |args: &[&str], environment| {
        let output = ask(args, environment);
        assert_eq!(output.status.code(), Some(0));
        String::from_utf8(output.stdout).unwrap()
    };
    assert!(help(&["--help"], "de_DE.UTF-8").contains("öffnet das Fenster"));
    assert!(help(&["--help"], "C.UTF-8").contains("open the window"));
    let named = help(&["--language", "de", "--help"], "C.UTF-8");
    assert!(named.contains("öffnet das Fenster"));
    let named = help(&["--language=en", "--help"], "de_DE.UTF-8");
    assert!(named.contains("open the window"));
    let unknown = ask(&["--language", "tlh", "--help"], "de_DE.UTF-8");
    assert_eq!(unknown.status.code(), Some(2));
    let line = String::from_utf8(unknown.stderr).unwrap();
    assert!(line.contains("„tlh“") && line.contains("en, de"), "{line}");

    let folder = tempfile::tempdir().unwrap();
    let demo = folder.path().join("demo");
    let demo = demo.to_str().unwrap();
    help(&["demo", demo, "--language", "de"], "C.UTF-8");
    let figures = help(
        &["figures", demo, "--language", "de", "--metric"],
        "C.UTF-8",
    );
    let figures: serde_json::Value = serde_json::from_str(&figures).unwrap();
    assert_eq!(figures["four"]["width"]["shown"], json!("≈ 241 mm"));
    assert_eq!(figures["name"], json!("Decke für den Fensterplatz"));
    let history = help(&["history", demo, "--language", "de"], "C.UTF-8");
    assert!(history.contains("Genäht") && history.contains("Zoll"));
}
