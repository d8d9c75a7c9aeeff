//! What the window lets be heard: that something is cool, and a step that is read aloud.
//!
//! A window on a screen nobody sees has neither sound nor vibration nor voices, so the page is
//! given its own before a throw is opened, and they write down what is asked of them.

use lapwork_core::command::Command;
use lapwork_core::log::journal::Journal;
use lapwork_core::measure::Ruler;
use lapwork_core::plan::Plan;
use lapwork_core::show::{Context, Query, View, answer};
use lapwork_core::words::Words;
use lapwork_tests::walk::{Walk, for_all};
use serde_json::{Value, json};
use std::path::Path;
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

/// How long the pairs still lie, in milliseconds, once the throw is on the shelf.
const LEFT: i64 = 30_000;

fn now() -> i64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH);
    i64::try_from(since.expect("after 1970").as_millis()).expect("a time")
}

/// A throw of two pairs, which were pressed and laid to cool so that this much is left of the time.
fn cooling(left: i64) -> String {
    let plan = Plan {
        across: 4,
        down: 1,
        ..Plan::default()
    };
    let pressed = now() + left - i64::from(plan.cooling_minutes) * 60_000;
    let begin = Command::Begin {
        name: "Two pairs".into(),
        plan,
        prints: lapwork_core::demo::prints(),
        denims: lapwork_core::demo::denims(),
    };
    let (mut journal, _) = Journal::begin(&begin, pressed - 5_000).expect("a plan");
    let words = Words::english();
    let context = Context {
        words: &words,
        ruler: Ruler::default(),
        now: pressed,
    };
    for _ in 0..20 {
        let query = Query::Work {
            station: None,
            batch: None,
        };
        let Ok(View::Work(view)) = answer(&journal, &query, context) else {
            panic!("no step")
        };
        let action = match (view.ask, view.card) {
            (Some(ask), _) => ask.bare.action,
            (None, Some(card)) if card.cool_at.is_some() => break,
            (None, Some(card)) => {
                let seen = serde_json::to_value(&card).expect("JSON");
                card.ticks[for_all(&seen)].action.clone()
            }
            (None, None) => panic!("nothing to do"),
        };
        let entry = journal.propose(&action, pressed).expect("it is offered");
        journal.accept(entry).expect("what was proposed follows");
    }
    journal.named("heard-1").text()
}

/// A throw whose pairs lie cooling appears on the shelf of a window that listens.
fn begin(data: &Path, left: i64) -> Walk {
    let walk = Walk::start(data);
    let folder = data.join("throws").join("heard-1");
    std::fs::create_dir_all(&folder).expect("a folder");
    std::fs::write(folder.join("throw.jsonl"), cooling(left)).expect("a file");
    walk.window.run("location.reload()", &[]);
    walk.window.wait_text("Two pairs");
    listen(&walk);
    walk
}

/// Give the page sound, vibration and voices of its own.
fn listen(walk: &Walk) {
    let script = "const heard = { notes: [], trembled: [], spoken: [], silenced: 0 };
        window.heard = heard;
        const param = () => ({ setValueAtTime() {}, linearRampToValueAtTime() {} });
        window.AudioContext = class {
            currentTime = 0;
            destination = {};
            createOscillator() {
                const frequency = { value: 0 };
                return {
                    frequency,
                    connect: (to) => to,
                    start() { heard.notes.push(frequency.value); },
                    stop() { setTimeout(() => this.onended?.()); },
                };
            }
            createGain() { return { gain: param(), connect: (to) => to }; }
            async close() {}
        };
        Object.defineProperty(navigator, 'vibrate', {
            configurable: true,
            value: (pattern) => { heard.trembled.push(pattern); return true; },
        });
        window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
        const voices = [
            { lang: 'de-DE', localService: true, default: true },
            { lang: 'en-GB', localService: true, default: false },
        ];
        Object.defineProperty(window, 'speechSynthesis', {
            configurable: true,
            value: {
                getVoices: () => voices,
                speak: (u) => heard.spoken.push([u.text, u.lang]),
                cancel: () => { heard.silenced += 1; heard.spoken = []; },
            },
        });";
    walk.window.run(script, &[]);
}

/// From now on long waits of the page end a second late, as they do where a device is slow.
fn late(walk: &Walk) {
    let script = "const wait = window.setTimeout;
        window.setTimeout = (run, ms = 0, ...rest) =>
            wait(run, ms > 5000 ? ms + 1000 : ms, ...rest);";
    walk.window.run(script, &[]);
}

fn heard(walk: &Walk, what: &str) -> Value {
    walk.window
        .run("return window.heard[arguments[0]]", &[json!(what)])
}

/// Wait until what lies there is cool, which takes longer than anything else is waited for.
fn until_cool(walk: &Walk) {
    let begun = Instant::now();
    while !walk
        .reads("said")
        .contains("The time to cool is over. Touch it: if it feels cool, go on.")
    {
        let waited = begun.elapsed();
        assert!(waited < Duration::from_secs(60), "{}", walk.window.text());
        std::thread::sleep(Duration::from_millis(100));
    }
}

#[test]
fn cooling_ends_with_sound_vibration_and_words() {
    let data = tempfile::tempdir().unwrap();
    let walk = begin(data.path(), LEFT);
    // The step that is seen counts down by itself, and asks what comes next before the bell is due.
    late(&walk);
    walk.tap("throw-row");
    walk.sees("card-title", "cool");
    assert!(!walk.reads("cool-left").is_empty(), "it still cools");
    assert_eq!(heard(&walk, "notes"), json!([]));
    until_cool(&walk);
    // Two notes, the second higher, and the device trembles, both once.
    assert_eq!(heard(&walk, "notes"), json!([660, 880]));
    assert_eq!(heard(&walk, "trembled"), json!([[200, 100, 200]]));
    walk.window.wait_until("nothing cools any more", |_| {
        walk.reads("cool-left").is_empty()
    });
    walk.sees("card-title", "Stitch the pair");
}

#[test]
fn a_silent_end_of_cooling_is_told_in_words_on_any_screen() {
    let data = tempfile::tempdir().unwrap();
    let walk = begin(data.path(), LEFT);
    // Silenced in the settings.
    walk.tap("settings");
    walk.tap("signal-off");
    walk.tap("back");
    walk.tap("throw-row");
    walk.sees("card-title", "cool");
    walk.tap("tab-plan");
    until_cool(&walk);
    assert_eq!(heard(&walk, "notes"), json!([]));
    assert_eq!(heard(&walk, "trembled"), json!([]));
    // The words stand on the screen that is open, and lead to the work.
    walk.sees(
        "second",
        "The time to cool is over. Touch it: if it feels cool, go on.",
    );
    walk.tap("second-button");
    walk.sees("card-title", "Stitch the pair");
}

#[test]
fn that_all_is_cool_before_its_time_is_asked_first() {
    let data = tempfile::tempdir().unwrap();
    let walk = begin(data.path(), 290_000);
    walk.tap("throw-row");
    walk.sees("card-title", "cool");
    let before = walk.done();
    walk.tap("tick");
    walk.window.wait_text("Still warm");
    walk.window
        .wait_text("If it is lifted warm, the glue lets go");
    walk.tap("let-it-lie");
    walk.window.wait_text_gone("Still warm");
    assert_eq!(walk.done(), before, "nothing was ticked");
    assert!(!walk.reads("cool-left").is_empty(), "it still cools");
    // She says that it is cool to the touch.
    walk.tap("tick");
    walk.tap("cool-early");
    walk.window
        .wait_until("it is ticked", |_| walk.done() > before);
    walk.sees("card-title", "Stitch the pair");
    // What she said herself is not told her.
    assert_eq!(heard(&walk, "notes"), json!([]));
}

#[test]
fn a_step_is_read_aloud_until_another_is_seen() {
    let data = tempfile::tempdir().unwrap();
    let walk = begin(data.path(), 290_000);
    walk.tap("throw-row");
    walk.sees("card-title", "cool");
    let size = walk.window.run(
        "const { width, height } = document.querySelector('[data-testid=read-aloud]').getBoundingClientRect();
         return Math.min(width, height) >= 48;",
        &[],
    );
    assert_eq!(size, json!(true), "it is large enough for a finger");
    walk.tap("read-aloud");
    let spoken = heard(&walk, "spoken");
    let texts = spoken.as_array().expect("a list").iter();
    let texts: Vec<&str> = texts.filter_map(|u| u[0].as_str()).collect();
    assert!(texts[0].contains("cool"), "{texts:?}");
    let how =
        "Leave it flat until it is cool to the touch. If it is lifted warm, the glue lets go.";
    assert!(texts.contains(&how), "{texts:?}");
    let in_english = |u: &Value| u[1] == json!("en-GB");
    assert!(
        spoken.as_array().unwrap().iter().all(in_english),
        "{spoken}"
    );
    // Another step is seen: the one before is read no more.
    assert_eq!(heard(&walk, "silenced"), json!(0));
    walk.tick("tick");
    walk.sees("card-title", "Stitch the pair");
    walk.window.wait_until("it is silent", |_| {
        heard(&walk, "silenced") == json!(1) && heard(&walk, "spoken") == json!([])
    });
    // A second tap stops it as well, and so does leaving.
    walk.tap("read-aloud");
    assert_ne!(heard(&walk, "spoken"), json!([]));
    walk.tap("read-aloud");
    assert_eq!(heard(&walk, "spoken"), json!([]));
    walk.tap("read-aloud");
    walk.tap("tab-plan");
    walk.window
        .wait_until("it is silent", |_| heard(&walk, "spoken") == json!([]));
}

/// Where the device has no voice of its own for the language, nothing is offered.
#[test]
fn without_a_voice_nothing_is_offered_to_be_read() {
    let data = tempfile::tempdir().unwrap();
    let walk = begin(data.path(), 290_000);
    walk.window.run(
        "window.speechSynthesis.getVoices = () => [{ lang: 'en-GB', localService: false, default: true }]",
        &[],
    );
    walk.tap("throw-row");
    walk.sees("card-title", "cool");
    assert_eq!(walk.window.all("button", "Read aloud").len(), 0);
}
