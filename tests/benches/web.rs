//! The app in a browser, measured: first load, later starts, taps, memory, and how long the worker
//! takes for each screen.
//!
//! `cargo bench --workspace --profile dev --bench web` after `.ci/web`; the figures are those of
//! the wasm that was built there. The page's thread is slowed 4 times by the browser; the worker
//! is not, since the browser slows no other thread.

use lapwork_core::log::journal::Journal;
use lapwork_tests::maker::beginning;
use lapwork_tests::page::{Browser, Host, built, keep_worker};
use serde_json::json;
use std::path::Path;
use std::time::Duration;

/// Tells when the shelf was first there to be worked with, and how long each tap took.
const WATCH: &str = r"
    const look = () => {
      if (document.querySelector('[data-testid=new-throw]')) {
        requestAnimationFrame(() => setTimeout(() => (window.shelfAt = performance.now())));
      } else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
    window.taps = [];
    const done = () => document.body.innerText.match(/(\d+) of \d+ steps done/)?.[1];
    addEventListener('click', (event) => {
      if (!event.target.closest?.('[data-testid=tick]')) return;
      const before = done();
      const wait = () => {
        if (done() === before) return requestAnimationFrame(wait);
        setTimeout(() => window.taps.push(performance.now() - event.timeStamp));
      };
      requestAnimationFrame(wait);
    }, true);
";

/// Asks the worker for each of these screens of the throw last worked on, five times, and gives how
/// long the middle one took to be answered.
const SCREENS: &str = r"
    const [queries, done] = arguments;
    const worker = window.lapworkWorker;
    const ask = (command, given) => new Promise((answered) => {
      const n = 1e9 + Math.random();
      const heard = ({ data }) => {
        if (data.n !== n) return;
        worker.removeEventListener('message', heard);
        answered(JSON.parse(data.json).ok);
      };
      worker.addEventListener('message', heard);
      worker.postMessage({ do: 'ask', command, given: JSON.stringify(given), n });
    });
    const timed = async (id, query) => {
      const times = [];
      for (let n = 0; n < 5; n++) {
        const begun = performance.now();
        if (!(await ask('view', { id, query }))) return null;
        times.push(performance.now() - begun);
      }
      return times.sort((a, b) => a - b)[2];
    };
    (async () => {
      const { rows } = await ask('shelf', {});
      const told = [];
      for (const query of queries) told.push([query.see, await timed(rows[0].id, query)]);
      done(told);
    })();
";

/// Asks the worker for a face of the throw last worked on and taps the tick, in one task.
const BEHIND: &str = r"
    const [done] = arguments;
    const worker = window.lapworkWorker;
    const shelf = ({ data }) => {
      if (data.n !== 0.5) return;
      worker.removeEventListener('message', shelf);
      const { id } = JSON.parse(data.json).ok.rows[0];
      const given = JSON.stringify({ id, query: { see: 'faces', face: 'back' } });
      worker.postMessage({ do: 'ask', command: 'view', given, n: 0.25 });
      document.querySelector('[data-testid=tick]').click();
      done(null);
    };
    worker.addEventListener('message', shelf);
    worker.postMessage({ do: 'ask', command: 'shelf', given: '{}', n: 0.5 });
";

/// The screens that can be asked for without anything typed.
fn screens() -> serde_json::Value {
    json!([
        {"see": "work", "station": null, "batch": null},
        {"see": "bench", "chosen": null},
        {"see": "faces", "face": "front"},
        {"see": "wishes", "wishes": null},
        {"see": "floor", "part": 0},
        {"see": "covering"},
        {"see": "plan", "draft": null},
        {"see": "trim"},
        {"see": "pile"},
        {"see": "gather"},
        {"see": "history", "most": 100},
        {"see": "hand-on"},
    ])
}

fn watched(profile: &Path, slow: u32) -> Browser {
    let browser = Browser::open(profile, "about:blank");
    let source = json!({"source": WATCH});
    browser.command("Page.addScriptToEvaluateOnNewDocument", source);
    keep_worker(browser.driver());
    let rate = json!({"rate": slow});
    browser.command("Emulation.setCPUThrottlingRate", rate);
    browser
}

fn shelf(browser: &Browser, url: &str) -> f64 {
    browser.go(url);
    let at = browser.wait("return window.shelfAt ?? null");
    at.as_f64().expect("a time")
}

/// The middle one, and the one that 95 of 100 do not pass.
fn output(mut times: Vec<f64>) -> String {
    times.sort_by(f64::total_cmp);
    let at = |part: f64| times[((times.len() - 1) as f64 * part).round() as usize];
    format!(
        "p50 {:.0}, p95 {:.0} ms of {}",
        at(0.5),
        at(0.95),
        times.len()
    )
}

fn main() {
    let folder = built().expect("the app is built: .ci/web");
    let host = Host::serve(&folder, "/", 0);
    for slow in [1, 4] {
        println!("page slowed {slow} times");
        let mut first = Vec::new();
        for _ in 0..5 {
            let profile = tempfile::tempdir().expect("a folder");
            let browser = watched(profile.path(), slow);
            first.push(shelf(&browser, &host.url));
            browser.close();
        }
        println!("  first load to the shelf: {}", output(first));
        let profile = tempfile::tempdir().expect("a folder");
        let browser = watched(profile.path(), slow);
        shelf(&browser, &host.url);
        browser.wait("return navigator.serviceWorker.getRegistration().then((at) => !!at?.active)");
        let mut later = Vec::new();
        for _ in 0..9 {
            browser.go("about:blank");
            later.push(shelf(&browser, &host.url));
        }
        println!(
            "  later start, kept by the service worker: {}",
            output(later)
        );
        for (across, down) in [(6, 8), (60, 60)] {
            let action = beginning("Measured", across, down);
            let (journal, _) = Journal::begin(&action, 1_773_000_000_000).expect("a throw");
            let file = profile.path().join("measured.jsonl");
            std::fs::write(&file, journal.named(&format!("{across:032x}")).text())
                .expect("written");
            shelf(&browser, &host.url);
            browser.tap("bring");
            browser.choose("choose-throw", &file);
            browser.tap("take-add");
            let there = "return document.querySelector\
                 ('[data-testid=ask-bare], [data-testid=tick]')?.dataset.testid";
            if browser.wait(there) == "ask-bare" {
                browser.tap("ask-bare");
            }
            browser.wait("return document.querySelector('[data-testid=tick]') !== null");
            let begun = browser.steps_done();
            let taken = |count: usize, tap: &dyn Fn()| {
                browser.run("window.taps = []");
                for n in 0..count {
                    tap();
                    browser.wait(&format!("return window.taps.length > {n}"));
                    // The same step each time: what comes after it may have to cool first.
                    browser.tap("undo");
                    browser.wait(&format!(
                        "return document.body.innerText.match(/(\\d+) of \\d+ steps done/)?.[1] === '{begun}'"
                    ));
                }
                let taps = browser.run("return window.taps");
                output(serde_json::from_value(taps).expect("times"))
            };
            let taps = taken(60, &|| browser.tap("tick"));
            let memory = browser.memory() >> 20;
            println!("  {across} × {down}: tap to painted tick {taps}, page {memory} MiB");
            // A second tap too soon after another counts for nothing.
            let behind = taken(20, &|| {
                std::thread::sleep(Duration::from_millis(400));
                browser
                    .driver()
                    .run_and_wait(BEHIND, &[])
                    .expect("a face is asked for");
            });
            println!(
                "    … behind a face {behind}, page {} MiB then",
                browser.memory() >> 20
            );
            let told = browser.driver().run_and_wait(SCREENS, &[screens()]);
            let told = told.expect("the worker answers");
            let told = told.as_array().expect("a list").iter().map(|screen| {
                let took = screen[1].as_f64();
                let took = took.map_or("none".into(), |took| format!("{took:.0}"));
                format!("{} {took}", screen[0].as_str().unwrap_or_default())
            });
            let told: Vec<String> = told.collect();
            println!("    answered by the worker, ms: {}", told.join(", "));
        }
        browser.close();
    }
}
