//! What the app may do, and that it does no more: no network, no foreign code, no call
//! that was not given, no `unsafe`, no dependency without a reason.

use lapwork_tests::processes;
use lapwork_tests::program::lapwork;
use lapwork_tests::window::{Started, Window, screen};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .parent()
        .unwrap()
        .to_path_buf()
}

fn text(path: &str) -> String {
    fs::read_to_string(root().join(path)).unwrap_or_else(|why| panic!("{path}: {why}"))
}

fn json_of(path: &str) -> Value {
    serde_json::from_str(&text(path)).unwrap()
}

/// Every file below a folder whose name ends so.
fn files(folder: &str, ends: &[&str]) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut open = vec![root().join(folder)];
    while let Some(folder) = open.pop() {
        for entry in fs::read_dir(&folder).unwrap().flatten() {
            let path = entry.path();
            let name = entry.file_name().to_string_lossy().into_owned();
            if path.is_dir() {
                if !["node_modules", "target", "dist", "gen"].contains(&name.as_str()) {
                    open.push(path);
                }
            } else if ends.iter().any(|end| name.ends_with(end)) {
                found.push(path);
            }
        }
    }
    assert!(!found.is_empty(), "nothing in {folder}");
    found
}

#[test]
fn the_content_policy_lets_nothing_in() {
    let config = json_of("src-tauri/tauri.conf.json");
    let security = &config["app"]["security"];
    let meant = json!({
        "default-src": "'self'",
        "script-src": "'self'",
        "style-src": "'self'",
        // Photos are read by the shell and handed over under a name of its own.
        "img-src": "'self' data: photo: http://photo.localhost",
        "font-src": "'self'",
        // The shell's own two names for calls; neither leaves the program.
        "connect-src": "ipc: http://ipc.localhost",
        "object-src": "'none'",
        "base-uri": "'none'",
        "form-action": "'none'",
    });
    assert_eq!(security["csp"], meant);
    assert_eq!(security["freezePrototype"], true);
    assert_eq!(config["app"]["withGlobalTauri"], false);
    for loose in [
        "dangerousDisableAssetCspModification",
        "assetProtocol",
        "devCsp",
    ] {
        assert!(security.get(loose).is_none(), "{loose}");
    }
    assert!(config["build"].get("devUrl").is_none());
    assert!(config.get("plugins").is_none());
}

/// The words in quotes between two marks of a file.
fn between(text: &str, from: &str, to: &str) -> Vec<String> {
    let rest = text
        .split_once(from)
        .unwrap_or_else(|| panic!("no {from}"))
        .1;
    let part = rest.split_once(to).unwrap().0;
    part.split([',', '\n'])
        .map(|word| {
            word.trim()
                .trim_matches('"')
                .rsplit("::")
                .next()
                .unwrap_or("")
                .trim()
        })
        .filter(|word| !word.is_empty())
        .map(str::to_string)
        .collect()
}

/// `SetPrefs` as `set_prefs`.
fn snake(name: &str) -> String {
    let mut snake = String::new();
    for (at, c) in name.char_indices() {
        if at > 0 && c.is_ascii_uppercase() {
            snake.push('_');
        }
        snake.push(c.to_ascii_lowercase());
    }
    snake
}

#[test]
fn the_window_may_call_our_commands_and_nothing_else() {
    let set = |list: Vec<String>| -> BTreeSet<String> {
        let count = list.len();
        let set: BTreeSet<String> = list.into_iter().collect();
        assert_eq!(set.len(), count, "named twice");
        set
    };
    let built = set(between(
        &text("src-tauri/build.rs"),
        "CALLS: &[&str] = &[",
        "]",
    ));
    // The names of the calls are those of an enum's variants, in snake case.
    let shell = text("src-tauri/src/calls.rs");
    let shell = shell.split_once("enum Call {").unwrap().1;
    let shell = shell.split_once("\n}").unwrap().0;
    let variant = |line: &str| {
        let name = line.strip_prefix("    ")?.split_once(" {")?.0;
        let plain = name.chars().all(|c| c.is_ascii_alphabetic());
        let upper = name.starts_with(|c: char| c.is_ascii_uppercase());
        (plain && upper).then(|| snake(name))
    };
    let handled = set(shell.lines().filter_map(variant).collect());
    let capability = json_of("src-tauri/capabilities/main.json");
    let allowed: Vec<String> = capability["permissions"]
        .as_array()
        .unwrap()
        .iter()
        .map(|one| one.as_str().unwrap_or("not a plain name").to_string())
        .map(|one| one.strip_prefix("allow-").unwrap_or(&one).replace('-', "_"))
        .collect();
    let calls = text("ui/src/lib/ipc.ts");
    let called: BTreeSet<String> = calls
        .split("ask<")
        .skip(1)
        .filter_map(|call| Some(call.split_once("('")?.1.split_once('\'')?.0.to_string()))
        .collect();
    assert!(built.len() >= 9);
    assert_eq!(built, handled, "build.rs and window.rs");
    assert_eq!(built, set(allowed), "build.rs and capabilities/main.json");
    assert_eq!(built, called, "build.rs and ipc.ts");
    let ways = text("ui/src/lib/program.ts").matches("invoke(").count();
    assert_eq!(ways, 1, "one way to the program");
    assert!(!calls.contains("invoke("), "and another in ipc.ts");
    let window = text("src-tauri/src/window.rs");
    let early: Vec<&str> = window.split("invoke(").skip(1).collect();
    assert!(
        matches!(early[..], [one] if one.starts_with("'hello')")),
        "before the page's own code only the greeting"
    );
    assert_eq!(capability["windows"], json!(["main"]));
    assert!(capability.get("remote").is_none());
    let others = fs::read_dir(root().join("src-tauri/capabilities")).unwrap();
    assert_eq!(others.count(), 1);
}

#[test]
fn the_browsers_shell_asks_nobody_but_its_own_host() {
    let forbidden = [
        "{@html",
        "innerHTML",
        "outerHTML",
        "insertAdjacentHTML",
        "document.write",
        "eval(",
        "new Function",
        "WebSocket",
        "XMLHttpRequest",
        "EventSource",
        "sendBeacon",
        "RTCPeerConnection",
        "importScripts",
        "http://",
        "https://",
    ];
    for file in files("ui/web", &[".ts", ".js", ".html", ".webmanifest"]) {
        // The server to try it by is no part of the app.
        if file.ends_with("serve.js") {
            continue;
        }
        let text = fs::read_to_string(&file).unwrap();
        for word in forbidden {
            assert!(!text.contains(word), "{word} in {}", file.display());
        }
    }
    let policy = text("ui/web/build.js");
    let policy = policy.split_once("export const POLICY = [").unwrap().1;
    let policy = policy.split_once(']').unwrap().0;
    let parts: Vec<&str> = policy.split('"').skip(1).step_by(2).collect();
    let meant = [
        "default-src 'none'",
        "script-src 'self' 'wasm-unsafe-eval'",
        "style-src 'self'",
        // Photos are read by the worker and shown under addresses within the page.
        "img-src 'self' data: blob:",
        "connect-src 'self'",
        "worker-src 'self'",
        "manifest-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
    ];
    assert_eq!(parts, meant);
}

#[test]
fn the_window_holds_no_way_out_and_no_foreign_code() {
    let forbidden = [
        "{@html",
        "innerHTML",
        "outerHTML",
        "insertAdjacentHTML",
        "document.write",
        "eval(",
        "new Function",
        "fetch(",
        "WebSocket",
        "XMLHttpRequest",
        "EventSource",
        "sendBeacon",
        "RTCPeerConnection",
        "importScripts",
        "serviceWorker",
        "http://",
        "https://",
    ];
    for file in files("ui/src", &[".ts", ".svelte", ".css", ".js", ".html"]) {
        let text = fs::read_to_string(&file).unwrap();
        for word in forbidden {
            assert!(!text.contains(word), "{word} in {}", file.display());
        }
    }
    let index = text("ui/index.html");
    assert!(!index.contains("http") && !index.contains("<style"));

    let dist = root().join("ui/dist");
    let mut scripts = 0;
    for file in files_of_dist(&dist) {
        let text = fs::read_to_string(&file).unwrap();
        for word in forbidden
            .iter()
            .filter(|word| !["innerHTML", "http://", "https://"].contains(word))
        {
            assert!(!text.contains(word), "{word} in {}", file.display());
        }
        // Names of XML, and the addresses Svelte's own error texts point to, are no calls.
        let plain = text
            .replace("http://www.w3.org/", "")
            .replace("https://svelte.dev/e/", "");
        for scheme in ["http://", "https://", "//cdn"] {
            assert!(!plain.contains(scheme), "{scheme} in {}", file.display());
        }
        // Svelte makes its own fixed templates so, and hands them to trusted types.
        assert!(
            plain.matches("innerHTML").count() <= 2,
            "{}",
            file.display()
        );
        scripts += usize::from(file.extension().is_some_and(|end| end == "js"));
    }
    assert!(scripts > 0, "the window is not built");
}

fn files_of_dist(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).expect("npm run build").flatten() {
        let path = entry.path();
        if path.is_dir() {
            found.extend(files_of_dist(&path));
        } else if path
            .extension()
            .is_some_and(|end| ["js", "css", "html"].iter().any(|e| end == *e))
        {
            found.push(path);
        }
    }
    found
}

fn metadata(more: &[&str]) -> Value {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let output = Command::new(cargo)
        .args(["metadata", "--format-version", "1", "--offline"])
        .args(more)
        .current_dir(root())
        .output()
        .unwrap();
    assert!(output.status.success());
    serde_json::from_slice(&output.stdout).unwrap()
}

#[test]
fn no_crate_of_ours_may_be_unsafe() {
    let workspace = text("Cargo.toml");
    assert!(workspace.contains("unsafe_code = \"forbid\""));
    for package in metadata(&["--no-deps"])["packages"].as_array().unwrap() {
        let manifest = package["manifest_path"].as_str().unwrap();
        let manifest = fs::read_to_string(manifest).unwrap();
        assert!(
            manifest.contains("[lints]\nworkspace = true"),
            "{} does not take the lints over",
            package["name"]
        );
    }
    for file in files("src-tauri", &[".rs"])
        .into_iter()
        .chain(files("tests/src", &[".rs"]))
    {
        let text = fs::read_to_string(&file).unwrap();
        for word in ["unsafe {", "unsafe fn", "unsafe impl", "unsafe_code"] {
            assert!(!text.contains(word), "{word} in {}", file.display());
        }
    }
}

#[test]
fn every_dependency_has_its_reason() {
    let page = text("src-tauri/DEPENDENCIES.md");
    let table = page.split_once("**Licences.**").unwrap().0;
    let named = |name: &str| table.contains(&format!("`{name}`"));
    let mut wanting = BTreeSet::new();
    for package in metadata(&["--no-deps"])["packages"].as_array().unwrap() {
        for dependency in package["dependencies"].as_array().unwrap() {
            let name = dependency["name"].as_str().unwrap();
            if dependency.get("path").is_none_or(Value::is_null) && !named(name) {
                wanting.insert(name.to_string());
            }
        }
    }
    let package = json_of("ui/package.json");
    for part in ["dependencies", "devDependencies"] {
        for name in package[part]
            .as_object()
            .into_iter()
            .flat_map(|all| all.keys())
        {
            if !named(name) {
                wanting.insert(name.clone());
            }
        }
    }
    assert!(
        wanting.is_empty(),
        "not in src-tauri/DEPENDENCIES.md: {wanting:?}"
    );
}

/// What stands in for a library has its name and version. Should the typesetter ask for another
/// version, cargo only warns, and takes the library itself.
#[test]
fn what_stands_in_for_a_library_is_what_is_built() {
    let page = text("src-tauri/DEPENDENCIES.md");
    let locked = text("Cargo.lock");
    let folder = root().join("src-tauri/absent");
    let mut count = 0;
    for entry in fs::read_dir(folder).unwrap().flatten() {
        let name = entry.file_name().to_string_lossy().into_owned();
        let of_name = format!("name = \"{name}\"\n");
        let found: Vec<&str> = locked
            .split("[[package]]")
            .filter(|package| package.contains(&of_name))
            .collect();
        assert_eq!(found.len(), 1, "{name} is locked in other versions too");
        assert!(!found[0].contains("source ="), "{name} is not ours");
        assert!(page.contains(&format!("`{name}`")), "{name} is not listed");
        let manifest = fs::read_to_string(entry.path().join("Cargo.toml")).unwrap();
        assert!(manifest.contains("unsafe_code = \"forbid\""), "{name}");
        count += 1;
    }
    assert!(count > 0 && !locked.contains("[[patch.unused]]"));
}

/// Licences of crates we have looked at. The weakest ties: MPL-2.0 asks that changes to
/// its own files be shown, and we change none.
const LICENCES: [&str; 12] = [
    "MIT",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "0BSD",
    "ISC",
    "Zlib",
    "Unlicense",
    "CC0-1.0",
    "Unicode-3.0",
    "MPL-2.0",
];

#[test]
fn every_licence_is_one_we_know() {
    let mut counts: BTreeMap<String, usize> = BTreeMap::new();
    // Those of this kind of machine: others need not be here.
    let said = Command::new("rustc").arg("-vV").output().unwrap();
    let said = String::from_utf8(said.stdout).unwrap();
    let host = said.lines().find_map(|l| l.strip_prefix("host: ")).unwrap();
    let all = metadata(&["--filter-platform", host]);
    for package in all["packages"].as_array().unwrap() {
        if package["source"].is_null() {
            continue;
        }
        let said = package["license"].as_str().unwrap_or("none");
        let plain = said.replace(['(', ')'], "").replace('/', " OR ");
        // Of what may be chosen among, one that is known; of what holds together, each.
        let known = plain
            .split(" AND ")
            .all(|part| part.split(" OR ").any(|one| LICENCES.contains(&one.trim())));
        assert!(known, "{}: {said}", package["name"]);
        *counts.entry(said.to_string()).or_default() += 1;
    }
    println!("licences: {counts:?}");
    assert!(counts.values().sum::<usize>() > 300);
}

// ── The network ──────────────────────────────────────────────────────────────

/// Whether system calls can be watched here.
fn can_watch() -> bool {
    let tried = Command::new("strace")
        .args(["-f", "-o", "/dev/null", "true"])
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status();
    tried.is_ok_and(|ended| ended.success())
}

/// Calls that reach for the internet, as `strace` writes them.
fn reaches_out(log: &str) -> Vec<&str> {
    let inet = |line: &&str| line.contains("AF_INET") || line.contains("AF_PACKET");
    log.lines().filter(inet).collect()
}

/// Internet sockets a process and those it began hold now, by what `/proc/net` says of them.
fn internet_sockets(root: u32) -> Vec<String> {
    let mut held: Vec<String> = Vec::new();
    for id in processes::under(root).into_iter().chain([root]) {
        let files = fs::read_dir(format!("/proc/{id}/fd"));
        let links = files.into_iter().flatten().flatten();
        held.extend(links.filter_map(|file| {
            let to = fs::read_link(file.path()).ok()?;
            let inode = to.to_str()?.strip_prefix("socket:[")?.strip_suffix(']')?;
            Some(inode.to_string())
        }));
    }
    ["tcp", "tcp6", "udp", "udp6", "raw", "raw6", "packet"]
        .iter()
        .filter_map(|sort| fs::read_to_string(format!("/proc/net/{sort}")).ok())
        .flat_map(|table| {
            table
                .lines()
                .skip(1)
                .filter(|line| {
                    line.split_whitespace()
                        .any(|field| held.iter().any(|h| h == field))
                })
                .map(str::to_string)
                .collect::<Vec<_>>()
        })
        .collect()
}

/// That look sees a socket where there is one.
#[test]
fn a_socket_that_is_held_is_seen() {
    let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
    let port = format!(":{:04X}", listener.local_addr().unwrap().port());
    let seen = || {
        let held = internet_sockets(std::process::id());
        held.iter().any(|line| line.contains(&port))
    };
    assert!(seen());
    drop(listener);
    assert!(!seen());
}

/// No part of the app's identifier is a word of Java's or Kotlin's: it is a package's name
/// on Android.
#[test]
fn the_identifier_can_be_a_package_s_name() {
    let conf = json_of("src-tauri/tauri.conf.json");
    let identifier = conf["identifier"].as_str().unwrap();
    // The Java Language Specification, 3.9, and Kotlin's hard keywords (both from memory).
    let words = "abstract assert boolean break byte case catch char class const continue default \
        do double else enum extends final finally float for goto if implements import instanceof \
        int interface long native new package private protected public return short static \
        strictfp super switch synchronized this throw throws transient try void volatile while \
        true false null as fun in is object typealias typeof val var when";
    let parts: Vec<&str> = identifier.split('.').collect();
    assert!(parts.len() >= 2, "{identifier}");
    for part in parts {
        let letters = part.chars().all(|c| c.is_ascii_lowercase());
        assert!(letters && !part.is_empty(), "{identifier}: {part}");
        assert!(
            words.split_whitespace().all(|w| w != part),
            "{identifier}: {part}"
        );
    }
}

/// The app alone, nobody driving it: not one internet socket is so much as made.
#[test]
fn the_app_opens_no_internet_socket() {
    let watched = can_watch();
    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().join("data");
    let home = folder.path().join("home");
    fs::create_dir_all(&home).unwrap();
    let log = folder.path().join("calls");
    let (_screen, display) = screen();
    let mut run = if watched {
        let mut run = Command::new("strace");
        run.args(["-f", "-qq", "-o"])
            .arg(&log)
            .args(["-e", "trace=socket,connect,bind,sendto,sendmsg,sendmmsg"])
            .arg(lapwork());
        run
    } else {
        Command::new(lapwork())
    };
    let app = Started::new(
        run.env("DISPLAY", display)
            .env("LAPWORK_DATA", &data)
            .env("HOME", &home)
            .env("XDG_DATA_HOME", &home)
            .env("XDG_CACHE_HOME", &home)
            .env("XDG_CONFIG_HOME", &home)
            .env("GDK_BACKEND", "x11")
            .env("NO_AT_BRIDGE", "1")
            .env("WEBKIT_DISABLE_DMABUF_RENDERER", "1")
            .env("WEBKIT_DISABLE_COMPOSITING_MODE", "1")
            .env("LIBGL_ALWAYS_SOFTWARE", "1")
            .env_remove("WAYLAND_DISPLAY")
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null()),
    );
    // The page asks for the shelf, which claims the folder: then it is up.
    let began = Instant::now();
    while !data.join("lock").is_file() {
        assert!(
            began.elapsed() < Duration::from_secs(90),
            "the page never came up"
        );
        std::thread::sleep(Duration::from_millis(100));
    }
    if !watched {
        let mut looks = 0;
        let began = Instant::now();
        while began.elapsed() < Duration::from_secs(8) {
            let held = internet_sockets(app.id());
            assert!(held.is_empty(), "{held:#?}");
            looks += 1;
            std::thread::sleep(Duration::from_millis(20));
        }
        println!("system calls cannot be watched here: {looks} looks at what is held instead");
        return;
    }
    std::thread::sleep(Duration::from_secs(8));
    drop(app);
    let calls = fs::read_to_string(&log).unwrap();
    assert!(calls.contains("AF_UNIX"), "nothing was watched");
    let out = reaches_out(&calls);
    assert!(out.is_empty(), "{out:#?}");
    println!(
        "the app alone, 8 s after its page came up: {} socket calls watched, none to the internet",
        calls.lines().count()
    );
}

/// A journey in the driven window: the driver talks to it over the loopback, and that is
/// all; what the page itself tries to reach is refused.
#[test]
fn the_page_reaches_nothing_on_a_journey() {
    let data = tempfile::tempdir().unwrap();
    let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
    listener.set_nonblocking(true).unwrap();
    let there = listener.local_addr().unwrap();
    let log = data.path().join("calls");
    let watched = can_watch();
    let window = if watched {
        Window::open_watched(data.path(), &log)
    } else {
        Window::open(data.path())
    };
    let begun = window
        .call("shelf_command", json!({"command": {"command": "demo"}}))
        .unwrap();
    let id = begun["id"].as_str().unwrap();
    for query in [
        json!({"see": "work", "station": null, "batch": null}),
        json!({"see": "faces", "face": "front"}),
        json!({"see": "history", "most": 50}),
    ] {
        window
            .call("view", json!({"id": id, "query": query}))
            .unwrap();
    }
    let script = "const [there, done] = arguments;
        const http = 'http://' + there + '/';
        const came = {};
        document.addEventListener('securitypolicyviolation', (e) => {
            came[e.effectiveDirective] = (came[e.effectiveDirective] ?? 0) + 1;
        });
        const tried = [];
        const may = (name, run) => { try { tried.push(name); return run(); } catch (e) { came[name] = String(e); } };
        may('fetch', () => fetch(http).then(() => { came.fetched = true; }, () => { came.fetchRefused = true; }));
        may('post', () => fetch(http, { method: 'POST', mode: 'no-cors', body: 'x' }).catch(() => {}));
        may('xhr', () => { const x = new XMLHttpRequest(); x.open('GET', http); x.onerror = () => { came.xhrRefused = true; }; x.send(); });
        may('beacon', () => navigator.sendBeacon(http, 'x'));
        may('image', () => { const i = new Image(); i.onload = () => { came.imageLoaded = true; }; i.src = http + 'i.png'; });
        may('socket', () => new WebSocket('ws://' + there + '/'));
        may('events', () => new EventSource(http));
        for (const [tag, attributes] of [
            ['script', { src: http + 's.js' }],
            ['link', { rel: 'stylesheet', href: http + 's.css' }],
            ['link', { rel: 'prefetch', href: http + 'p' }],
            ['iframe', { src: http }],
            ['object', { data: http }],
            ['video', { src: http + 'v.mp4' }],
        ]) {
            may(tag, () => { const e = Object.assign(document.createElement(tag), attributes); document.body.append(e); });
        }
        may('style', () => { const s = document.createElement('style'); s.textContent = '@import url(' + http + ')'; document.head.append(s); });
        may('form', () => { const f = document.createElement('form'); f.action = http; f.method = 'post'; document.body.append(f); f.submit(); });
        may('open', () => window.open(http));
        may('inline', () => { const s = document.createElement('script'); s.textContent = 'window.inlined = true'; document.body.append(s); });
        may('evaluate', () => { came.evaluated = eval('1 + 1'); });
        setTimeout(() => done({ came, tried: tried.length, inlined: window.inlined ?? false }), 2500);";
    let came = window.run_and_wait(script, &[json!(there.to_string())]);
    assert!(came["tried"].as_u64().unwrap() >= 16, "{came}");
    assert_eq!(came["inlined"], json!(false), "{came}");
    for not in ["fetched", "imageLoaded", "evaluated"] {
        assert!(came["came"].get(not).is_none(), "{not}: {came}");
    }
    for refused in [
        "connect-src",
        "img-src",
        "script-src-elem",
        "style-src-elem",
        "fetchRefused",
    ] {
        assert!(came["came"].get(refused).is_some(), "{refused}: {came}");
    }
    let knocked = listener.accept();
    assert!(knocked.is_err(), "something came through: {knocked:?}");
    // The page still works.
    window.call("shelf", json!({})).unwrap();
    drop(window);
    if watched {
        let calls = fs::read_to_string(&log).unwrap();
        let port = format!("htons({})", there.port());
        let out: Vec<&str> = reaches_out(&calls)
            .into_iter()
            .filter(|line| line.contains("sin_addr") || line.contains("sin6_addr"))
            .filter(|line| {
                let loopback =
                    line.contains("inet_addr(\"127.0.0.1\")") || line.contains("\"::1\"");
                // Not even the loopback, when it is not the driver's.
                !loopback || line.contains(&port)
            })
            .collect();
        assert!(out.is_empty(), "{out:#?}");
        println!(
            "journey: {} socket calls watched, none beyond the driver's",
            calls.lines().count()
        );
    } else {
        println!("journey: system calls cannot be watched here; nothing reached the listener");
    }
    println!(
        "{} ways out tried from the page, all refused",
        came["tried"]
    );
}
