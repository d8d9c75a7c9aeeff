//! The app in a browser, as a phone would have it: Debian's Chromium with the screen of a phone
//! and touch, worked through its own driver.
//!
//! A [`Host`] serves the built app and can be stopped, which is to cut the network; a
//! [`Browser`] is opened on a profile's folder and can be killed. Both are ended when they go.
//! Needs `target/web` (`.ci/web`), `chromium`, `chromedriver` and `node`.

use crate::driver::{Driver, Element};
use crate::processes;
use crate::started::{PATIENCE, PHONE, STARTING, Started, free_port};
use serde_json::{Value, json};
use std::io::{BufRead as _, BufReader};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// The folder with the built app; nothing where it was not built.
///
/// # Panics
/// If it is not there though `LAPWORK_WEB` says that it was built.
pub fn built() -> Option<PathBuf> {
    let folder = root().join("target/web");
    let there = folder.join("index.html").is_file();
    assert!(
        there || std::env::var_os("LAPWORK_WEB").is_none(),
        "no {}",
        folder.display()
    );
    if !there {
        eprintln!("left out: the app for browsers is not built (.ci/web)");
    }
    there.then_some(folder)
}

/// Try until something comes of it.
fn wait_for<T>(what: &str, patience: Duration, mut when: impl FnMut() -> Option<T>) -> T {
    let start = Instant::now();
    loop {
        if let Some(found) = when() {
            return found;
        }
        assert!(start.elapsed() < patience, "waited in vain for {what}");
        std::thread::sleep(Duration::from_millis(40));
    }
}

/// A server of the app's files.
pub struct Host {
    _served: Started,
    /// The address of the app.
    pub url: String,
    /// Its port.
    pub port: u16,
}

impl Host {
    /// Serve a folder under a path, on a port; on any that is free if it is 0.
    pub fn serve(folder: &Path, base: &str, port: u16) -> Host {
        let mut command = Command::new("node");
        command
            .arg(root().join("ui/web/serve.js"))
            .arg(folder)
            .args([&port.to_string(), base])
            .stdin(Stdio::null())
            .stdout(Stdio::piped());
        let mut served = Started::new(&mut command);
        let mut line = String::new();
        let read = BufReader::new(served.said().expect("piped")).read_line(&mut line);
        assert!(read.is_ok_and(|n| n > 0), "nothing is served");
        let url = line.trim().to_string();
        let port = url
            .split(':')
            .nth(2)
            .and_then(|rest| rest.split('/').next());
        let port = port.and_then(|port| port.parse().ok()).expect("a port");
        Host {
            _served: served,
            url,
            port,
        }
    }
}

/// Start the browser's driver, which starts the browser later; gives its port too.
pub fn driver(profile: &Path) -> (Started, u16) {
    let port = free_port();
    let service = Started::new(
        Command::new("chromedriver")
            .arg(format!("--port={port}"))
            .env("HOME", profile)
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null()),
    );
    wait_for("the driver", PATIENCE, || {
        TcpStream::connect(("127.0.0.1", port)).ok()
    });
    (service, port)
}

/// Have the driver at this port open a browser on a profile's folder, with a phone's screen of
/// this width and height, and touch.
///
/// # Panics
/// If it does not open.
pub fn chromium(port: u16, profile: &Path, (width, height): (u32, u32)) -> Driver {
    let wish = json!({
        "browserName": "chrome",
        "goog:chromeOptions": {
            "binary": "/usr/bin/chromium",
            "args": [
                "--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage",
                "--lang=en-US", "--no-first-run",
                format!("--user-data-dir={}", profile.join("profile").display()),
            ],
            "prefs": {"download.default_directory": profile.join("downloads")},
            "mobileEmulation": {"deviceMetrics": {
                "width": width, "height": height, "pixelRatio": 3, "touch": true,
            }},
        },
    });
    let driver = Driver::with(port, &wish).unwrap_or_else(|why| panic!("no browser: {why}"));
    // Nobody would answer a dialog.
    let off = json!({"enabled": true});
    protocol(&driver, "Page.setInterceptFileChooserDialog", off);
    driver
}

/// Give the browser a command of its own protocol.
fn protocol(driver: &Driver, command: &str, given: Value) -> Value {
    let asked = json!({"cmd": command, "params": given});
    let output = driver.post("/goog/cdp/execute", asked);
    output.unwrap_or_else(|why| panic!("{command}: {why}"))
}

/// Give the phone's screen another size.
pub fn resize(driver: &Driver, (width, height): (u32, u32)) {
    let metrics = json!({"width": width, "height": height, "deviceScaleFactor": 3, "mobile": true});
    protocol(driver, "Emulation.setDeviceMetricsOverride", metrics);
    wait_for("the size", PATIENCE, || {
        let now = driver.run("return [innerWidth, innerHeight]", &[]);
        (now == Ok(json!([width, height]))).then_some(())
    });
}

/// From the next page on, remember the worker that holds the service, so that [`CALL`] can ask it
/// as the page does.
pub fn keep_worker(driver: &Driver) {
    let source = "const Own = window.Worker;
        window.Worker = class extends Own {
            postMessage(said, ...more) {
                if (said?.do === 'open') window.lapworkWorker = this;
                super.postMessage(said, ...more);
            }
        };";
    let given = json!({"source": source});
    protocol(driver, "Page.addScriptToEvaluateOnNewDocument", given);
}

macro_rules! asking {
    ($given:literal, $asked:literal) => {
        concat!(
            "const [",
            $given,
            ", done] = arguments;
    const n = 1e9 + Math.random();
    const worker = window.lapworkWorker;
    const heard = ({ data }) => {
        if (data.n !== n) return;
        worker.removeEventListener('message', heard);
        if ('files' in data) return done({ fine: data.files.map(({ bytes }) => [...bytes]) });
        if (!('json' in data)) return done({ refused: data.refused ?? data.broke });
        const { ok, problem } = JSON.parse(data.json);
        done(problem ? { refused: problem } : { fine: ok ?? null });
    };
    worker.addEventListener('message', heard);
    worker.postMessage({ n, ",
            $asked,
            " });"
        )
    };
}

/// A script that asks the worker kept by [`keep_worker`]; what it is given is the call, its
/// arguments, and where the answer goes.
pub const CALL: &str = asking!(
    "command, given",
    "do: 'ask', command, given: JSON.stringify(given)"
);

/// The same that has the worker read a throw file: its name, its text, and where the answer goes.
pub const IMPORT: &str = asking!(
    "name, text",
    "do: 'import', name, bytes: new TextEncoder().encode(text).buffer"
);

/// The same that has the worker export something of a throw: its id, what is wanted, and where the
/// bytes of each file go.
pub const EXPORT: &str = asking!(
    "id, wanted",
    "do: 'export', id, wanted: JSON.stringify(wanted)"
);

/// Touch an element in its middle.
///
/// # Errors
/// What the driver said.
pub fn touch(driver: &Driver, element: &Element) -> Result<(), String> {
    driver.press(element, "touch", 30)
}

/// A browser with one page.
pub struct Browser {
    driver: Driver,
    service: Started,
}

impl Browser {
    /// Open it on a profile's folder, and the page at an address in it.
    pub fn open(profile: &Path, url: &str) -> Browser {
        let (service, port) = driver(profile);
        let driver = chromium(port, profile, PHONE);
        let browser = Browser { driver, service };
        browser.go(url);
        browser
    }

    /// What speaks to it.
    pub fn driver(&self) -> &Driver {
        &self.driver
    }

    /// The memory of the page's process, in bytes: what it shares is counted in part (PSS).
    pub fn memory(&self) -> u64 {
        let all = processes::under(self.service.id()).into_iter();
        let renderers = all.filter(|id| {
            let output = std::fs::read_to_string(format!("/proc/{id}/cmdline"));
            output.is_ok_and(|output| output.contains("--type=renderer"))
        });
        let pss = |id: u32| -> Option<u64> {
            let output = std::fs::read_to_string(format!("/proc/{id}/smaps_rollup")).ok()?;
            let line = output.lines().find(|line| line.starts_with("Pss:"))?;
            line.split_whitespace().nth(1)?.parse().ok()
        };
        renderers.filter_map(pss).max().unwrap_or_default() * 1024
    }

    /// Go to an address.
    pub fn go(&self, url: &str) {
        let went = self.driver.post("/url", json!({"url": url}));
        went.unwrap_or_else(|why| panic!("{url}: {why}"));
    }

    /// Give the browser a command of its own protocol.
    pub fn command(&self, command: &str, given: Value) -> Value {
        protocol(&self.driver, command, given)
    }

    /// Close it as its maker does.
    pub fn close(self) {
        self.driver.close().unwrap_or_else(|why| panic!("{why}"));
    }

    /// Kill it, and all of its processes, without a goodbye.
    pub fn kill(self) {
        drop(self);
    }

    /// Run a script's body in the page.
    pub fn run(&self, script: &str) -> Value {
        let output = self.driver.run(script, &[]);
        output.unwrap_or_else(|why| panic!("{script}: {why}"))
    }

    /// Wait until a script's body gives something.
    pub fn wait(&self, script: &str) -> Value {
        wait_for(script, STARTING, || {
            let output = self.driver.run(script, &[]).ok()?;
            (output != Value::Null && output != Value::Bool(false)).then_some(output)
        })
    }

    /// Wait until the text of the page has this in it.
    pub fn wait_text(&self, text: &str) {
        let text = json!(text);
        self.wait(&format!("return document.body.innerText.includes({text})"));
    }

    /// Wait for what bears this name for tests, enabled.
    fn find(&self, testid: &str) -> Element {
        let found = self.wait(&format!(
            "const e = document.querySelector('[data-testid=\"{testid}\"]');\
             if (!e || e.matches(':disabled, [aria-disabled=true], [aria-busy=true]')) return null;\
             if (!e.getClientRects().length) return null;\
             e.scrollIntoView({{block: 'center'}});\
             return e;"
        ));
        Element::of(&found).expect("an element")
    }

    /// Touch what bears this name for tests.
    pub fn tap(&self, testid: &str) {
        let touched = touch(&self.driver, &self.find(testid));
        touched.unwrap_or_else(|why| panic!("{testid} is not touched: {why}"));
    }

    /// The text of what bears this name for tests.
    pub fn text(&self, testid: &str) -> String {
        let output = self.wait(&format!(
            "return document.querySelector('[data-testid=\"{testid}\"]')?.innerText"
        ));
        output.as_str().unwrap_or_default().to_string()
    }

    /// Choose a file in the field that bears this name for tests.
    pub fn choose(&self, testid: &str, file: &Path) {
        let field = self.wait(&format!(
            "return document.querySelector('[data-testid=\"{testid}\"]')"
        ));
        let field = Element::of(&field).expect("a field");
        let path = file.to_str().expect("a path in UTF-8");
        self.driver
            .keys(&field, path)
            .unwrap_or_else(|why| panic!("{testid}: {why}"));
    }

    /// How many steps the throw in hand is said to have done.
    pub fn steps_done(&self) -> u64 {
        let output = self
            .wait("return document.body.innerText.match(/(\\d+) of \\d+ steps done/)?.[1] ?? null");
        output
            .as_str()
            .and_then(|n| n.parse().ok())
            .expect("a number")
    }

    /// Wait until that many steps are done.
    pub fn wait_done(&self, count: u64) {
        self.wait_text(&format!("{count} of "));
        assert_eq!(self.steps_done(), count);
    }
}
