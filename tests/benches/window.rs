//! How quick the real window is: its start, a tick, and the memory it takes.
//!
//! `cargo bench --workspace --profile dev --bench window`
//!
//! The program measured is the release, built first (or the profile that `LAPWORK_PROFILE`
//! names, such as `dev`); only this measuring is not. With `LAPWORK_PROGRAM=<path>` another program
//! is measured, such as that of an older commit, with the empty window that lies in `examples/`
//! beside it. A name after `--` (`starts`, `ticks`, `face`, `portal`, `shelf`) measures that alone.
//! Lapwork and a window with nothing in it, built the same way, are opened in turn on the same
//! screen in the same run.
//!
//! * start: from the process's beginning (`/proc`, to 10 ms) to the first contentful paint
//!   the page reports (W3C Paint Timing); for Lapwork that is its shelf, which can be used.
//! * tick: from the click's time stamp, when a finger that pressed for 60 ms lets go, to the task
//!   after the frame in which the number of steps done has changed. The entry has been synced to the
//!   disk by then. (That task is a message's, which WebKit sends through another process: a few
//!   milliseconds are in it that nobody sees.) Ticked is one square, or all that are left at once.
//!   Beside it stands the processor time of the program and of the web engine for each tick, which
//!   other work on the machine changes little; the driver's questions are in it.
//! * a tap while a face is made: on a throw of 60 × 60 the tab of the faces is tapped and the
//!   tick at once after it, in one task of the page. Timed are the tick until it is painted, the
//!   face until it is painted, the slowest of the calls made meanwhile that the shell refuses on
//!   its main thread (which is what waits if that thread does), and the longest time in which the
//!   page's own thread took up nothing.
//! * a full shelf: from the process's beginning until the first of 300 throws stands on the shelf,
//!   and until the last one has been read.
//! * memory: proportional set size (`Pss` of `/proc/<pid>/smaps_rollup`) of the program, and
//!   of the web engine's processes besides.

use lapwork_core::command::Command;
use lapwork_core::log::journal::Journal;
use lapwork_core::measure::Count;
use lapwork_core::plan::assembly::Kind;
use lapwork_core::throw::tasks::Task;
use lapwork_core::throw::wishes::Wishes;
use lapwork_core::{demo, throw::Time};
use lapwork_tests::processes;
use lapwork_tests::walk::Walk;
use lapwork_tests::window::{STARTING, Started, Window};
use std::fs;
use std::io::{BufRead as _, BufReader};
use std::path::{Path, PathBuf};
use std::process::{self, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};
use tempfile::TempDir;

/// How often each window is started.
const STARTS: usize = 11;
/// How often a tick is timed.
const TICKS: usize = 60;
/// How often a tap is timed while a face is made.
const TAPS: usize = 15;

fn main() {
    let programs = build();
    let size = fs::metadata(&programs.lapwork).expect("it was built").len();
    println!("program: {size} bytes\n");
    let named: Vec<String> = std::env::args().skip(1).collect();
    let parts = ["starts", "ticks", "face", "portal", "shelf"];
    let alone: Vec<&str> = parts
        .into_iter()
        .filter(|p| named.iter().any(|n| n == p))
        .collect();
    let wanted = |part: &str| alone.is_empty() || alone.contains(&part);
    if wanted("starts") {
        starts(&programs);
    }
    if wanted("ticks") {
        for (across, down) in [(6, 8), (12, 16), (60, 60)] {
            ticks_and_memory(&programs, across, down);
        }
    }
    if wanted("face") {
        tap_while_a_face_is_made(&programs);
    }
    if wanted("portal") {
        portal(&programs);
    }
    if wanted("shelf") {
        full_shelf(&programs.lapwork);
    }
}

/// How many throws a full shelf has.
const FULL: usize = 300;
/// How long is waited for all of them to be read.
const PATIENCE: Duration = Duration::from_secs(300);

/// The shelf of very many throws, each the demo: when the first stands there, and when all are read.
fn full_shelf(program: &Path) {
    let data = TempDir::new().expect("a folder");
    let text = demo::throw(epoch() as Time).text();
    for n in 0..FULL {
        let folder = data.path().join(format!("throws/bench-{n:03}"));
        fs::create_dir_all(&folder).expect("a folder");
        fs::write(folder.join("throw.jsonl"), &text).expect("a file");
    }
    let mut times = Vec::new();
    for _ in 0..STARTS {
        let window = Window::open_other(program, data.path(), &[]);
        let [id] = running(program)[..] else {
            panic!("{} is running more than once", program.display());
        };
        let began = began(id);
        let when = |what: &str, is: &str| {
            let script = format!(
                "const read = document.querySelectorAll('[data-testid=throw-row]').length;
                const unread = document.querySelectorAll('[data-testid=unread-row]').length;
                return {is} ? performance.timeOrigin + performance.now() : null;"
            );
            let until = Instant::now() + PATIENCE;
            loop {
                if let Some(at) = window.run(&script, &[]).as_f64() {
                    return at - began;
                }
                assert!(Instant::now() < until, "still not so: {what}");
                sleep(Duration::from_millis(20));
            }
        };
        let first = when("a throw stands there", "read > 0");
        let all = when("all are read", &format!("unread === 0 && read === {FULL}"));
        times.push([first, all]);
    }
    println!("a shelf of {FULL} throws, {STARTS} starts, median and p95:");
    for (n, what) in ["the first is there", "all are read"]
        .into_iter()
        .enumerate()
    {
        let of: Vec<f64> = times.iter().map(|t| t[n]).collect();
        println!(
            "  {what}  {:.0} ms, {:.0} ms",
            rank(&of, 0.5),
            rank(&of, 0.95)
        );
    }
    println!();
}

struct Programs {
    lapwork: PathBuf,
    empty: PathBuf,
}

/// Build both: the release, or what `LAPWORK_PROFILE` names.
fn build() -> Programs {
    // Another build, to compare with on the same machine.
    if let Some(lapwork) = std::env::var_os("LAPWORK_PROGRAM").map(PathBuf::from) {
        let beside = lapwork.parent().expect("it lies in a folder");
        let empty = beside.join("examples/empty");
        println!("program: {}", lapwork.display());
        return Programs { lapwork, empty };
    }
    let profile = std::env::var("LAPWORK_PROFILE").unwrap_or_else(|_| "release".into());
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    // The program alone first: as it is packaged.
    for target in [["--bin", "lapwork"], ["--example", "empty"]] {
        let built = process::Command::new(&cargo)
            .args(["build", "--package", "lapwork", "--profile", &profile])
            .args(target)
            .current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
            .status()
            .expect("cargo can be run");
        assert!(built.success(), "the program does not build");
    }
    let this = std::env::current_exe().expect("a bench knows where it is");
    let target = this.ancestors().nth(3).expect("a target folder");
    let folder = target.join(if profile == "dev" { "debug" } else { &profile });
    println!("profile: {profile}");
    Programs {
        lapwork: folder.join("lapwork"),
        empty: folder.join("examples/empty"),
    }
}

fn epoch() -> f64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH);
    since.expect("a clock after 1970").as_secs_f64() * 1e3
}

/// The processes that run a program of this file name, and those they started.
fn running(program: &Path) -> Vec<u32> {
    processes::all()
        .filter(|id| fs::read_link(format!("/proc/{id}/exe")).is_ok_and(|exe| exe == program))
        .collect()
}

/// When a process began, in milliseconds since 1970: `starttime`, in hundredths of a
/// second since the machine began.
fn began(id: u32) -> f64 {
    let ticks: f64 = processes::stat(id).expect("it runs")[19]
        .parse()
        .expect("a number");
    let up = fs::read_to_string("/proc/uptime").expect("Linux");
    let up = up.split_whitespace().next().and_then(|up| up.parse().ok());
    let up: f64 = up.expect("a number");
    epoch() - (up * 1e3 - ticks * 10.0)
}

/// Start a program once; milliseconds to its first contentful paint.
fn start(program: &Path, output: &[(&str, &str)]) -> f64 {
    let data = tempfile::tempdir().expect("a folder");
    let window = Window::open_other(program, data.path(), output);
    let painted = "const [paint] = performance.getEntriesByName('first-contentful-paint');
        return paint ? performance.timeOrigin + paint.startTime : null;";
    window.wait_until("something is painted", |w| {
        w.run(painted, &[]).as_f64().is_some()
    });
    let painted = window.run(painted, &[]).as_f64().expect("a time");
    let [id] = running(program)[..] else {
        panic!("{} is running more than once", program.display());
    };
    painted - began(id)
}

/// The value below which `share` of them lie (nearest rank).
fn rank(times: &[f64], share: f64) -> f64 {
    let mut times = times.to_vec();
    times.sort_by(f64::total_cmp);
    let at = (share * times.len() as f64).ceil() as usize;
    times[at.clamp(1, times.len()) - 1]
}

fn starts(programs: &Programs) {
    let (mut ours, mut empty) = (Vec::new(), Vec::new());
    // The first of each finds nothing of it in memory yet.
    start(&programs.lapwork, &[]);
    start(&programs.empty, &[]);
    for _ in 0..STARTS {
        ours.push(start(&programs.lapwork, &[]));
        empty.push(start(&programs.empty, &[]));
    }
    let [o, e] = [&ours, &empty].map(|times| rank(times, 0.5));
    let [o95, e95] = [&ours, &empty].map(|times| rank(times, 0.95));
    println!("start to first paint, {STARTS} times each, median and p95:");
    println!("  Lapwork       {o:.0} ms, {o95:.0} ms");
    println!("  empty window  {e:.0} ms, {e95:.0} ms");
    println!("  ratio of the medians {:.2}\n", o / e);
}

/// A session bus on which a portal is promised that never comes.
fn silent_portal(folder: &Path) -> (Started, String) {
    let services = folder.join("services");
    fs::create_dir(&services).expect("a folder");
    fs::write(
        services.join("org.freedesktop.portal.Desktop.service"),
        "[D-BUS Service]\nName=org.freedesktop.portal.Desktop\nExec=/bin/sleep 600\n",
    )
    .expect("a service");
    bus(
        folder,
        &format!("<servicedir>{}</servicedir>", services.display()),
    )
}

/// A session bus with these services.
fn bus(folder: &Path, services: &str) -> (Started, String) {
    let config = folder.join("bus.conf");
    let listen = folder.join("bus");
    let text = format!(
        "<busconfig><type>session</type><listen>unix:path={}</listen>{services}\
         <policy context=\"default\"><allow send_destination=\"*\" eavesdrop=\"true\"/>\
         <allow eavesdrop=\"true\"/><allow own=\"*\"/></policy></busconfig>",
        listen.display()
    );
    fs::write(&config, text).expect("a configuration");
    let mut command = process::Command::new("dbus-daemon");
    command
        .arg(format!("--config-file={}", config.display()))
        .args(["--nofork", "--print-address"])
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::null());
    let mut daemon = Started::new(&mut command);
    let mut address = String::new();
    let said = daemon.said().expect("it was piped");
    BufReader::new(said)
        .read_line(&mut address)
        .expect("an address");
    (daemon, address.trim().to_string())
}

/// What the desktop's portal has to do with the start.
fn portal(programs: &Programs) {
    println!("start once with portals asked for (GTK_USE_PORTAL=1):");
    let once = |name: &str, address: &str| {
        let output = [
            ("GTK_USE_PORTAL", "1"),
            ("DBUS_SESSION_BUS_ADDRESS", address),
        ];
        // One that never comes is told, not waited for.
        let [ours, empty] = [&programs.lapwork, &programs.empty].map(|program| {
            match std::panic::catch_unwind(|| start(program, &output)) {
                Ok(time) => format!("{time:.0} ms"),
                Err(_) => format!("not within {} s", STARTING.as_secs()),
            }
        });
        println!("  {name}: Lapwork {ours}, empty window {empty}");
    };
    once("no session bus", "disabled:");
    let folder = TempDir::new().expect("a folder");
    let (plain, address) = bus(folder.path(), "");
    once("a bus without a portal", &address);
    drop(plain);
    let folder = TempDir::new().expect("a folder");
    let (silent, address) = silent_portal(folder.path());
    once("a bus whose portal never answers", &address);
    drop(silent);
    println!();
}

/// A throw of that size in a data folder, near half of its squares cut one by one.
fn kept(across: u16, down: u16, data: &Path) {
    let now = epoch() as Time;
    let begin = demo::begin(&format!("{across} × {down}"), across, down);
    let (mut journal, _) = Journal::begin(&begin, now).expect("a throw");
    // All denim, so that the window does not ask first.
    let wishes = Wishes::default();
    let entry = journal.propose(&Command::Wish { wishes }, now);
    journal
        .accept(entry.expect("it may be wished"))
        .expect("it follows");
    let one = Command::TickNext {
        task: Task::Cut,
        kind: Kind::Square,
        count: Count::from(1),
    };
    for _ in 0..u32::from(across) * u32::from(down) / 2 {
        let entry = journal.propose(&one, now).expect("one is left");
        journal.accept(entry).expect("it follows");
    }
    let folder = data.join("throws/bench");
    fs::create_dir_all(&folder).expect("a folder");
    fs::write(folder.join("throw.jsonl"), journal.text()).expect("a file");
}

/// Milliseconds of processor time of the program and of the engine's processes so far.
fn busy(program: &Path) -> [f64; 2] {
    let [id] = running(program)[..] else {
        panic!("one program");
    };
    // `utime` and `stime`, in hundredths of a second.
    let of = |id: u32| {
        let fields = processes::stat(id).unwrap_or_default();
        let ticks = fields.iter().skip(11).take(2);
        ticks.filter_map(|t| t.parse::<f64>().ok()).sum::<f64>() * 10.0
    };
    [of(id), processes::under(id).into_iter().map(of).sum()]
}

fn pss(id: u32) -> f64 {
    let text = fs::read_to_string(format!("/proc/{id}/smaps_rollup")).expect("it runs");
    let line = text.lines().find(|l| l.starts_with("Pss:")).expect("Pss");
    let kib = line.split_whitespace().nth(1).and_then(|n| n.parse().ok());
    let kib: f64 = kib.expect("a number");
    kib / 1024.0
}

/// MiB of the program, and of all the processes under it.
fn memory(program: &Path) -> (f64, f64) {
    let [id] = running(program)[..] else {
        panic!("one program");
    };
    let engine = processes::under(id).into_iter().map(pss).sum();
    (pss(id), engine)
}

/// Set up in the page what times a tick.
const WATCH: &str = "
    window.ticked = [];
    let from = 0, before = '';
    const count = () =>
        document.querySelector('[role=progressbar]')?.getAttribute('aria-valuenow') ?? '';
    addEventListener('click', (event) => {
        from = event.timeStamp;
        before = count();
    }, true);
    new MutationObserver(() => {
        if (!from || count() === before) return;
        const began = from;
        from = 0;
        requestAnimationFrame(() => {
            const { port1, port2 } = new MessageChannel();
            port1.onmessage = () => window.ticked.push(performance.now() - began);
            port2.postMessage(0);
        });
    }).observe(document.body, { subtree: true, childList: true, attributes: true });";

/// Tap the faces and the tick at once after; gives the milliseconds to the tick painted, to the
/// face painted, the slowest call refused on the shell's main thread, the page's longest pause.
const TAP_DURING_FACE: &str = "
    const done = arguments[arguments.length - 1];
    const bar = document.querySelector('[role=progressbar]');
    const invoke = window.__TAURI_INTERNALS__.invoke;
    const told = { tick: null, face: null, call: 0, pause: 0 };
    const painted = (name, from) => requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
            told[name] = performance.now() - from;
            if (told.tick !== null && told.face !== null)
                setTimeout(() => done([told.tick, told.face, told.call, told.pause]), 50);
        };
        port2.postMessage(0);
    });
    const going = () => told.tick === null || told.face === null;
    let last = performance.now(), paused = 0;
    const beat = () => {
        const now = performance.now();
        told.pause = Math.max(told.pause, now - last);
        if (now - last > 10) paused += now - last;
        last = now;
        if (going()) setTimeout(beat, 1);
    };
    const probe = async () => {
        while (going()) {
            const sent = performance.now(), before = paused;
            await invoke('plugin:none|none').catch(() => undefined);
            // What the page itself was busy with is told apart.
            const answered = performance.now();
            await new Promise((beaten) => setTimeout(beaten, 5));
            told.call = Math.max(told.call, answered - sent - (paused - before));
        }
    };
    const before = bar.getAttribute('aria-valuenow');
    const squares = 3600;
    const faces = performance.now();
    document.querySelector('[data-testid=tab-faces]').click();
    const tick = performance.now();
    document.querySelector('[data-testid=tick]').click();
    let ticked = false, faced = false;
    new MutationObserver((_, watch) => {
        const now = document.querySelector('[role=progressbar]')?.getAttribute('aria-valuenow');
        if (!ticked && now !== before) { ticked = true; painted('tick', tick); }
        if (!faced && document.querySelectorAll('[role=gridcell]').length === squares) {
            faced = true;
            painted('face', faces);
        }
        if (ticked && faced) watch.disconnect();
    }).observe(document.body, { subtree: true, childList: true, attributes: true });
    beat();
    void probe();";

fn tap_while_a_face_is_made(programs: &Programs) {
    let data = tempfile::tempdir().expect("a folder");
    kept(60, 60, data.path());
    let window = Window::open_other(&programs.lapwork, data.path(), &[]);
    let walk = Walk { window };
    walk.window.click("button", "~60 × 60");
    walk.sees("card-title", "Cut a square");
    let mut times: [Vec<f64>; 4] = Default::default();
    for _ in 0..TAPS {
        let output = walk.window.run_and_wait(TAP_DURING_FACE, &[]);
        for (times, output) in times.iter_mut().zip(output.as_array().expect("four times")) {
            times.push(output.as_f64().expect("a time"));
        }
        std::thread::sleep(std::time::Duration::from_millis(400));
        walk.tap("tab-work");
        walk.sees("card-title", "Cut a square");
        std::thread::sleep(std::time::Duration::from_millis(400));
    }
    println!("60 × 60, a tap while the face is made, of {TAPS}: p50, most");
    let what = [
        "the tick painted",
        "the face painted",
        "slowest call of the shell's main thread",
        "longest pause of the page",
    ];
    for (what, times) in what.into_iter().zip(&times) {
        println!(
            "  {what}: {:.0} ms, {:.0} ms",
            rank(times, 0.5),
            rank(times, 1.0)
        );
    }
    println!();
}

/// Press a button that ticks, and take that back, again and again.
fn time_ticks(walk: &Walk, program: &Path, button: &str, what: &str) {
    let mut times = Vec::new();
    let mut spent = [0.0; 2];
    let press = |what: &str| {
        let ticked = || walk.window.run("return window.ticked.length", &[]);
        let before = ticked();
        walk.press(what);
        (walk.window).wait_until("a change is painted", |_| ticked() != before);
    };
    while times.len() < TICKS {
        let before = busy(program);
        press(button);
        let after = busy(program);
        for (spent, (after, before)) in spent.iter_mut().zip(after.into_iter().zip(before)) {
            *spent += after - before;
        }
        let time = walk.window.run("return window.ticked.at(-1)", &[]);
        times.push(time.as_f64().expect("a time"));
        press("undo");
    }
    println!(
        "  {what}: tick to paint p50 {:.1} ms, p95 {:.1} ms; processor time of each: program {:.1} ms, \
         engine {:.1} ms",
        rank(&times, 0.5),
        rank(&times, 0.95),
        spent[0] / TICKS as f64,
        spent[1] / TICKS as f64
    );
}

fn ticks_and_memory(programs: &Programs, across: u16, down: u16) {
    let data = tempfile::tempdir().expect("a folder");
    kept(across, down, data.path());
    let window = Window::open_other(&programs.lapwork, data.path(), &[]);
    let walk = Walk { window };
    walk.window.wait_text("Lapwork");
    let rest = memory(&programs.lapwork);
    walk.window.click("button", &format!("~{across} × {down}"));
    walk.sees("card-title", "Cut a square");
    walk.window.run(WATCH, &[]);
    println!("{across} × {down}, of {TICKS} ticks:");
    for (button, what) in [("tick-2", "one square"), ("tick", "all that are left")] {
        time_ticks(&walk, &programs.lapwork, button, what);
    }
    let screens = ["faces", "work"];
    for screen in screens {
        walk.tap(&format!("tab-{screen}"));
        std::thread::sleep(std::time::Duration::from_secs(1));
    }
    let open = memory(&programs.lapwork);
    println!(
        "  memory: on the shelf {:.0} MiB and the engine {:.0}; after ticks and faces {:.0} MiB and {:.0}",
        rest.0, rest.1, open.0, open.1
    );
}
