//! The real window, on a screen nobody sees, worked as a maker would work it.
//!
//! ```no_run
//! # use lapwork_tests::window::Window;
//! let data = tempfile::tempdir().unwrap();
//! let mut window = Window::open(data.path());
//! window.click("button", "See the demo");
//! window.wait_text("Six by eight");
//! window.reopen();
//! ```
//!
//! Promises: one window at a time, so journeys in one test file wait for each other;
//! every program started is ended when the [`Window`] goes, also when a test fails.
//! Whatever is looked for is waited for, [`PATIENCE`] at most. Things are found as a
//! screen reader tells them: by role and name, shown and not behind an open dialog.
//!
//! Limits: roles and names are worked out by a short script, not by the browser: the
//! usual elements, `role`, `aria-label`, `aria-labelledby`, labels, `alt`, `title` and
//! text. Needs `Xvfb`, `WebKitWebDriver`, `tauri-driver` and ImageMagick's `import`.

use crate::desktop;
use crate::driver::{Driver, Element};
use crate::page::{self, Host};
use crate::processes;
use crate::program;
use crate::started::free_port;
use serde_json::{Value, json};
use std::io::{BufRead as _, BufReader};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};
use tempfile::TempDir;

pub use crate::started::{PATIENCE, PHONE, STARTING, Started};

/// Size of the screen, which a window cannot outgrow.
pub const SCREEN: (u32, u32) = (1400, 1000);
static ONE_AT_A_TIME: Mutex<()> = Mutex::new(());

/// Finds elements by role and name; kept in the page as `lapworkFind`.
const FIND: &str = include_str!("find.js");

/// Lapwork's window.
pub struct Window {
    driver: Option<Driver>,
    // Ended in this order: the window, the driver with all it started, the screen.
    service: Option<Started>,
    _screen: Option<Started>,
    /// Where the app's page comes from and how large a phone shows it, where it is one in a browser.
    page: Option<(Host, (u32, u32))>,
    /// What the browser itself keeps, away from the home folder.
    home: TempDir,
    display: String,
    port: u16,
    data: PathBuf,
    /// What a test has put into the data folder is in the page.
    seeded: bool,
    /// Where the system calls that reach out are written down, if they are.
    watched: Option<PathBuf>,
    program: PathBuf,
    /// What the program is told beside the usual.
    output: Vec<(String, String)>,
    _alone: MutexGuard<'static, ()>,
}

impl Window {
    /// Open the window on a data folder, as large as a phone's.
    ///
    /// With `LAPWORK_SHELL=page` in the environment it is the page in a browser instead, worked by
    /// touch, on the screen of a phone of `LAPWORK_SIZE` (as `360x740`).
    ///
    /// # Panics
    /// If the page is asked for and was not built (`.ci/web`).
    pub fn open(data: &Path) -> Window {
        match std::env::var("LAPWORK_SHELL").as_deref() {
            Ok("page") => Window::in_browser(data),
            _ => Window::opened(program::lapwork(), data, None, &[]),
        }
    }

    fn in_browser(data: &Path) -> Window {
        let folder = page::built().expect("target/web is built by .ci/web");
        let size = std::env::var("LAPWORK_SIZE").ok().and_then(|size| {
            let (width, height) = size.split_once('x')?;
            Some((width.parse().ok()?, height.parse().ok()?))
        });
        let mut window = Window {
            driver: None,
            service: None,
            _screen: None,
            page: Some((Host::serve(&folder, "/", 0), size.unwrap_or(PHONE))),
            home: tempfile::tempdir().expect("a temporary folder"),
            display: String::new(),
            port: 0,
            data: data.to_path_buf(),
            seeded: false,
            watched: None,
            program: "/usr/bin/chromium".into(),
            output: Vec::new(),
            _alone: ONE_AT_A_TIME.lock().unwrap_or_else(PoisonError::into_inner),
        };
        window.serve();
        window.start();
        window
    }

    /// Open another program's window, with these in its environment.
    pub fn open_other(program: &Path, data: &Path, output: &[(&str, &str)]) -> Window {
        Window::opened(program, data, None, output)
    }

    /// The same, with every call of the driver and the window that has to do with
    /// sockets written to `log` by strace.
    pub fn open_watched(data: &Path, log: &Path) -> Window {
        Window::opened(program::lapwork(), data, Some(log.to_path_buf()), &[])
    }

    fn opened(
        program: &Path,
        data: &Path,
        watched: Option<PathBuf>,
        output: &[(&str, &str)],
    ) -> Window {
        let alone = ONE_AT_A_TIME.lock().unwrap_or_else(PoisonError::into_inner);
        let (screen, display) = screen();
        let mut window = Window {
            driver: None,
            service: None,
            _screen: Some(screen),
            page: None,
            home: tempfile::tempdir().expect("a temporary folder"),
            display,
            port: 0,
            data: data.to_path_buf(),
            seeded: false,
            watched,
            program: program.to_path_buf(),
            output: output
                .iter()
                .map(|(name, value)| ((*name).to_string(), (*value).to_string()))
                .collect(),
            _alone: alone,
        };
        std::fs::create_dir(window.handed()).expect("a folder");
        window.serve();
        window.start();
        window
    }

    /// Start the driver, which starts the window later.
    fn serve(&mut self) {
        if self.page.is_some() {
            let (service, port) = page::driver(self.home.path());
            self.service = Some(service);
            self.port = port;
            return;
        }
        let (port, native) = (free_port(), free_port());
        let service = Started::new(
            driver_command(self.watched.as_deref())
                .args(["--port", &port.to_string()])
                .args(["--native-port", &native.to_string()])
                .env("DISPLAY", &self.display)
                .env("LAPWORK_DATA", &self.data)
                .env("LANGUAGE", "en")
                .env("XDG_DATA_HOME", self.home.path())
                .env("XDG_CACHE_HOME", self.home.path())
                .env("XDG_CONFIG_HOME", self.home.path())
                .env("LAPWORK_HAND_TO", self.handed())
                .env("LAPWORK_HAND_FROM", self.brought())
                .env("GDK_BACKEND", "x11")
                .env("GTK_USE_PORTAL", "0")
                .env("GTK_A11Y", "none")
                .env("NO_AT_BRIDGE", "1")
                .env("WEBKIT_DISABLE_DMABUF_RENDERER", "1")
                .env("WEBKIT_DISABLE_COMPOSITING_MODE", "1")
                .env("LIBGL_ALWAYS_SOFTWARE", "1")
                .env_remove("WAYLAND_DISPLAY")
                .envs(self.output.iter().map(|(name, value)| (name, value)))
                .stdin(Stdio::null())
                .stdout(Stdio::null()),
        );
        self.service = Some(service);
        self.port = port;
        let answers = |port: u16| TcpStream::connect(("127.0.0.1", port)).is_ok();
        wait("the driver", || {
            (answers(port) && answers(native)).then_some(())
        });
    }

    fn start(&mut self) {
        if let Some((host, size)) = &self.page {
            let driver = page::chromium(self.port, self.home.path(), *size);
            page::keep_worker(&driver);
            let went = driver.post("/url", json!({"url": host.url}));
            went.unwrap_or_else(|why| panic!("{}: {why}", host.url));
            self.driver = Some(driver);
            self.seed();
            return;
        }
        let program = self.program.to_str().expect("a path in UTF-8");
        let driver = Driver::open(self.port, program);
        self.driver = Some(driver.unwrap_or_else(|why| panic!("no window: {why}")));
        let page = attempt_for(STARTING, || {
            let ready =
                "return document.readyState === 'complete' && location.href !== 'about:blank'";
            (self.try_run(ready, &[]) == Ok(Value::Bool(true))).then_some(())
        });
        page.expect("waited in vain for the page");
        self.size(PHONE.0, PHONE.1);
    }

    /// The page keeps no files in the data folder: the throws that a test has put there are imported,
    /// once.
    fn seed(&mut self) {
        if std::mem::replace(&mut self.seeded, true) {
            return;
        }
        let folders = std::fs::read_dir(self.data.join("throws"));
        let folders = folders.into_iter().flatten().flatten();
        let mut files: Vec<PathBuf> = folders.map(|at| at.path().join("throw.jsonl")).collect();
        files.retain(|file| file.is_file());
        if files.is_empty() {
            return;
        }
        files.sort();
        self.select("[data-testid=new-throw]");
        for file in files {
            self.add(&std::fs::read_to_string(&file).expect("a record"));
        }
        self.run("location.reload()", &[]);
        self.select("[data-testid=throw-row]");
    }

    /// Have the page keep a throw that is not there.
    fn add(&self, record: &str) {
        let given = [json!("throw.jsonl"), json!(record)];
        let found = self.run_and_wait(page::IMPORT, &given);
        let number = &found["fine"]["file"];
        assert!(number.is_u64(), "it is not imported: {found}");
        let choice = json!({"choice": {"choice": "add"}, "file": number});
        let taken = self.call("decide_import", choice);
        assert!(taken.is_ok(), "it is not taken in: {taken:?}");
    }

    /// Whether it is the page in a browser.
    pub fn is_page(&self) -> bool {
        self.page.is_some()
    }

    /// Where the file of a throw lies in the data folder; the page keeps none there.
    pub fn file(&self, id: &str) -> PathBuf {
        self.data.join("throws").join(id).join("throw.jsonl")
    }

    /// The record of a throw as it is kept, to the byte.
    pub fn record(&self, id: &str) -> Vec<u8> {
        if !self.is_page() {
            return std::fs::read(self.file(id)).expect("a record");
        }
        let given = [json!(id), json!({"export": "throw"})];
        let files = self.run_and_wait(page::EXPORT, &given)["fine"].take();
        let [bytes] = serde_json::from_value::<[Vec<u8>; 1]>(files).expect("one file");
        bytes
    }

    /// Put another record in the place of that of a throw, behind the app's back, and open it anew.
    pub fn replace(&mut self, id: &str, record: &str) {
        if self.is_page() {
            for command in ["delete", "erase"] {
                let gone = json!({"command": {"command": command, "id": id}});
                self.call("shelf_command", gone).expect("it goes");
            }
            self.add(record);
        } else {
            std::fs::write(self.file(id), record).expect("written");
        }
        self.reopen();
    }

    /// Have the app given this file, once `ask` has made it ask for one.
    pub fn bring(&self, record: &str, ask: impl FnOnce()) {
        std::fs::write(self.brought(), record).expect("written");
        ask();
        if self.is_page() {
            let field = self.select("[data-testid=choose-throw]");
            let path = self.brought();
            let chosen = self.driver().keys(&field, path.to_str().expect("a path"));
            chosen.unwrap_or_else(|why| panic!("not chosen: {why}"));
        }
    }

    /// Close the window and open it again on the same data folder.
    pub fn reopen(&mut self) {
        self.close();
        self.start();
    }

    /// Close the window and open it again on a desktop that is told to move nothing.
    pub fn reopen_still(&mut self) {
        let settings = self.home.path().join("gtk-3.0");
        std::fs::create_dir_all(&settings).expect("a folder for settings");
        let still = "[Settings]\ngtk-enable-animations=0\n";
        std::fs::write(settings.join("settings.ini"), still).expect("written");
        self.reopen();
    }

    /// Kill the app without a goodbye, as a dead battery would, and open it again.
    pub fn crash(&mut self) {
        self.driver = None;
        self.service = None;
        self.serve();
        self.start();
    }

    /// Close the window.
    pub fn close(&mut self) {
        if let Some(driver) = self.driver.take() {
            driver
                .close()
                .unwrap_or_else(|why| panic!("not closed: {why}"));
        }
    }

    /// Close the window as its maker does, by the desktop, and wait until the program has ended.
    pub fn close_by_desktop(&mut self) {
        let driver = self.service.as_ref().map(Started::id).expect("a driver");
        let running = || {
            processes::under(driver)
                .into_iter()
                .any(|id| processes::runs(id, &self.program))
        };
        assert!(running(), "the program is not there");
        desktop::close_windows(&self.display);
        wait("the program to end", || (!running()).then_some(()));
        // The driver has lost its window.
        self.driver = None;
    }

    /// Where files handed on go, in place of a dialog.
    pub fn handed(&self) -> PathBuf {
        if self.page.is_some() {
            return self.home.path().join("downloads");
        }
        self.home.path().join("handed")
    }

    /// The file that is brought when one is asked for, in place of a dialog.
    pub fn brought(&self) -> PathBuf {
        self.home.path().join("brought.jsonl")
    }

    /// The data folder.
    pub fn data(&self) -> &Path {
        &self.data
    }

    fn driver(&self) -> &Driver {
        self.driver.as_ref().expect("the window is open")
    }

    /// Give the window a size, and wait until the page has it.
    pub fn size(&self, width: u32, height: u32) {
        if let Some((_, phone)) = &self.page {
            // A phone's screen has the size it has; turned or larger it is another device.
            let asked = if (width, height) == PHONE {
                *phone
            } else {
                (width, height)
            };
            return page::resize(self.driver(), asked);
        }
        let asked = self.driver().size(width, height);
        asked.unwrap_or_else(|why| panic!("no such size: {why}"));
        wait(&format!("a window of {width} × {height}"), || {
            let now = self.run("return [innerWidth, innerHeight]", &[]);
            (now == json!([width, height])).then_some(())
        });
    }

    /// Put the window under the pointer, which rests in the middle of the screen: where no
    /// window manager is, that is what gives it the keyboard, and lets the focus be drawn.
    pub fn take_keyboard(&self) {
        let (x, y) = (SCREEN.0 / 2 - PHONE.0 / 2, SCREEN.1 / 2 - PHONE.1 / 2);
        let placed = self.driver().place(x, y);
        placed.unwrap_or_else(|why| panic!("not there: {why}"));
        self.wait_until("the window has the keyboard", |w| {
            w.run("return document.hasFocus()", &[]) == json!(true)
        });
    }

    fn try_run(&self, script: &str, arguments: &[Value]) -> Result<Value, String> {
        self.driver().run(script, arguments)
    }

    /// Run a script's body in the page, and give what it returns.
    pub fn run(&self, script: &str, arguments: &[Value]) -> Value {
        let done = self.try_run(script, arguments);
        done.unwrap_or_else(|why| panic!("script failed: {why}\n{script}"))
    }

    /// Run a script's body in the page, and give what it hands to its last argument.
    pub fn run_and_wait(&self, script: &str, arguments: &[Value]) -> Value {
        let done = self.driver().run_and_wait(script, arguments);
        done.unwrap_or_else(|why| panic!("script failed: {why}\n{script}"))
    }

    /// Call the shell as the page does; `Err` holds what it was refused with.
    ///
    /// # Errors
    /// The refusal.
    pub fn call(&self, command: &str, arguments: Value) -> Result<Value, Value> {
        let script = match self.page {
            Some(_) => page::CALL,
            None => {
                "const [command, given, done] = arguments;
            window.__TAURI_INTERNALS__.invoke(command, given)
                .then((fine) => done({ fine }), (refused) => done({ refused }));"
            }
        };
        let output = self
            .driver()
            .run_and_wait(script, &[json!(command), arguments]);
        let mut output = output.unwrap_or_else(|why| panic!("{command} does not answer: {why}"));
        match output.get_mut("refused") {
            Some(refused) => Err(refused.take()),
            None => Ok(output["fine"].take()),
        }
    }

    /// The text that is to be seen, unbroken spaces as plain ones.
    pub fn text(&self) -> String {
        const TEXT: &str = "return document.body.innerText";
        // A page that is just being loaded has no text yet, and drops what it was asked.
        let text = self.run_past("before the unload event", TEXT, &[]);
        text.as_str().unwrap_or_default().replace('\u{a0}', " ")
    }

    /// What a script's body returns, which is run again while it fails for this reason.
    fn run_past(&self, reason: &str, script: &str, arguments: &[Value]) -> Value {
        let done = attempt(|| match self.try_run(script, arguments) {
            Ok(done) => Some(done),
            Err(why) if why.contains(reason) => None,
            Err(why) => panic!("script failed: {why}\n{script}"),
        });
        done.unwrap_or_else(|| panic!("script failed each time: {reason}\n{script}"))
    }

    /// What a script finds. The page may be drawn anew between that and its being handed over.
    fn found(&self, script: &str, arguments: &[Value]) -> Value {
        self.run_past("stale element", script, arguments)
    }

    /// Wait until `words` are to be seen.
    pub fn wait_text(&self, words: &str) {
        let seen = attempt(|| self.text().contains(words).then_some(()));
        assert!(
            seen.is_some(),
            "“{words}” is not there but:\n{}",
            self.text()
        );
    }

    /// Wait until `words` are no longer to be seen.
    pub fn wait_text_gone(&self, words: &str) {
        let gone = attempt(|| (!self.text().contains(words)).then_some(()));
        assert!(gone.is_some(), "“{words}” stays:\n{}", self.text());
    }

    /// Wait until something is so.
    pub fn wait_until(&self, what: &str, so: impl Fn(&Window) -> bool) {
        let held = attempt(|| so(self).then_some(()));
        assert!(held.is_some(), "still not so: {what}\n{}", self.text());
    }

    /// All with that role whose name is `name` or, after `~`, contains it; any role for
    /// `*`. Those shown, in the order of the page; not waited for.
    pub fn all(&self, role: &str, name: &str) -> Vec<Element> {
        let found = self.found(FIND, &[json!(role), json!(name)]);
        let found = found.as_array().cloned().unwrap_or_default();
        found.iter().filter_map(Element::of).collect()
    }

    /// Whether there is any such element now.
    pub fn has(&self, role: &str, name: &str) -> bool {
        !self.all(role, name).is_empty()
    }

    /// The first with that role and name (see [`Window::all`]), waited for.
    pub fn find(&self, role: &str, name: &str) -> Element {
        let found = attempt(|| self.all(role, name).into_iter().next());
        found.unwrap_or_else(|| panic!("no {role} “{name}” in:\n{}", self.listing()))
    }

    /// The first that fits a CSS selector, waited for.
    pub fn select(&self, selector: &str) -> Element {
        let script = "return document.querySelector(arguments[0])";
        let found = attempt(|| Element::of(&self.found(script, &[json!(selector)])));
        found.unwrap_or_else(|| panic!("nothing fits {selector} in:\n{}", self.listing()))
    }

    /// Every role and name that is to be found, a line each; for reading when a test fails.
    pub fn listing(&self) -> String {
        let all = self.run(FIND, &[json!("list"), json!("")]);
        all.as_str().unwrap_or_default().to_string()
    }

    /// Click the first with that role and name, once it is there and can be clicked.
    pub fn click(&self, role: &str, name: &str) {
        let mut said = String::new();
        let done = attempt(|| {
            let element = self.all(role, name).into_iter().next()?;
            match self.driver().click(&element) {
                Ok(()) => Some(()),
                // It may just be moving or being drawn anew.
                Err(why) => {
                    said = why;
                    None
                }
            }
        });
        assert!(
            done.is_some(),
            "{role} “{name}” cannot be clicked: {said}\n{}",
            self.listing()
        );
    }

    /// Click an element, once it can be clicked.
    pub fn click_on(&self, element: &Element) {
        let mut said = String::new();
        let done = attempt(|| {
            let clicked = match self.page {
                Some(_) => page::touch(self.driver(), element),
                None => self.driver().click(element),
            };
            // It may just be moving or being drawn anew.
            clicked.map_err(|why| said = why).ok()
        });
        assert!(done.is_some(), "cannot be clicked: {said}");
    }

    /// Press on the middle of an element for as long as a finger does.
    pub fn press_on(&self, element: &Element) {
        let pressed = self.driver().press(element, "mouse", 60);
        pressed.unwrap_or_else(|why| panic!("cannot be pressed: {why}"));
    }

    /// Empty the field of that name, and type into it.
    pub fn fill(&self, name: &str, text: &str) {
        let field = self.find("textbox", name);
        self.driver()
            .clear(&field)
            .and_then(|()| self.driver().keys(&field, text))
            .unwrap_or_else(|why| panic!("cannot type into “{name}”: {why}"));
    }

    /// Choose what reads `option` in the list of that name.
    pub fn choose(&self, name: &str, option: &str) {
        let list = self.find("combobox", name);
        let script = "const [list, wanted] = arguments;
            const option = [...list.options].find((o) => o.text.trim() === wanted);
            if (!option) return false;
            list.value = option.value;
            list.dispatchEvent(new Event('input', { bubbles: true }));
            list.dispatchEvent(new Event('change', { bubbles: true }));
            return true;";
        let chosen = self.run(script, &[list.argument(), json!(option)]);
        assert_eq!(chosen, json!(true), "no “{option}” in “{name}”");
    }

    /// Press and let go a key, by the protocol's code, wherever the focus is.
    pub fn key(&self, key: &str) {
        let pressed = self
            .driver()
            .actions(json!([{"type": "key", "id": "keys", "actions": [
                {"type": "keyDown", "value": key},
                {"type": "keyUp", "value": key},
            ]}]));
        pressed.unwrap_or_else(|why| panic!("no key: {why}"));
    }

    /// Press and let go a key while another is held.
    pub fn key_with(&self, held: &str, key: &str) {
        let pressed = self
            .driver()
            .actions(json!([{"type": "key", "id": "keys", "actions": [
                {"type": "keyDown", "value": held},
                {"type": "keyDown", "value": key},
                {"type": "keyUp", "value": key},
                {"type": "keyUp", "value": held},
            ]}]));
        pressed.unwrap_or_else(|why| panic!("no key: {why}"));
    }

    /// What the focus is on: its role and name, with a space between.
    pub fn focus(&self) -> String {
        let output = self.run(FIND, &[json!("focus"), json!("")]);
        output.as_str().unwrap_or_default().to_string()
    }

    /// Save a picture of the window as a PNG file.
    pub fn picture(&self, file: &Path) {
        let place = self.run("return [screenX, screenY, outerWidth, outerHeight]", &[]);
        let at = |i: usize| place[i].as_f64().unwrap_or_default().max(0.0) as i64;
        let crop = format!("{}x{}+{}+{}", at(2), at(3), at(0), at(1));
        if let Some(folder) = file.parent() {
            std::fs::create_dir_all(folder).expect("a folder for pictures");
        }
        let taken = Command::new("import")
            .env("DISPLAY", &self.display)
            .args(["-silent", "-window", "root"])
            .args(["-crop", &crop, "+repage"])
            .arg(file)
            .status();
        let taken = taken.unwrap_or_else(|why| panic!("import cannot be started: {why}"));
        assert!(taken.success(), "no picture");
    }
}

impl Drop for Window {
    fn drop(&mut self) {
        if let Some(driver) = self.driver.take() {
            // Whatever does not close is killed with the driver.
            let _ = driver.close();
        }
    }
}

/// Start a screen; gives its name, such as `:7`.
pub fn screen() -> (Started, String) {
    let size = format!("{}x{}x24", SCREEN.0, SCREEN.1);
    let mut command = Command::new("Xvfb");
    command
        .args(["-displayfd", "1", "-screen", "0", &size, "-nolisten", "tcp"])
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::null());
    let mut screen = Started::new(&mut command);
    let said = screen.said().expect("it was piped");
    let mut line = String::new();
    let read = BufReader::new(said).read_line(&mut line);
    assert!(read.is_ok_and(|n| n > 0), "Xvfb did not start");
    (screen, format!(":{}", line.trim()))
}

/// The driver, under strace if it is to be watched.
fn driver_command(watched: Option<&Path>) -> Command {
    let Some(log) = watched else {
        return Command::new(tauri_driver());
    };
    let mut command = Command::new("strace");
    command
        .args([
            "-f",
            "-qq",
            "-e",
            "trace=socket,connect,bind,sendto,sendmsg,sendmmsg",
            "-o",
        ])
        .arg(log)
        .arg(tauri_driver());
    command
}

fn tauri_driver() -> PathBuf {
    let home = std::env::var_os("HOME").map(PathBuf::from);
    let cargo = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let bin = cargo.or(home.map(|home| home.join(".cargo")));
    let installed = bin.map(|bin| bin.join("bin/tauri-driver"));
    installed
        .filter(|installed| installed.is_file())
        .unwrap_or_else(|| "tauri-driver".into())
}

/// Try until something comes of it, for [`PATIENCE`] at most.
fn attempt<T>(what: impl FnMut() -> Option<T>) -> Option<T> {
    attempt_for(PATIENCE, what)
}

fn attempt_for<T>(patience: Duration, mut what: impl FnMut() -> Option<T>) -> Option<T> {
    let start = Instant::now();
    loop {
        if let Some(found) = what() {
            return Some(found);
        }
        if start.elapsed() > patience {
            return None;
        }
        std::thread::sleep(Duration::from_millis(40));
    }
}

fn wait<T>(what: &str, when: impl FnMut() -> Option<T>) -> T {
    attempt(when).unwrap_or_else(|| panic!("waited in vain for {what}"))
}
