//! The window: where it may go, what is dropped on it, and how it closes.
//!
//! [`calls`](crate::calls) answers what its page calls; this module decides nothing and does
//! nothing slow. The window stays on the pages built into the program, and the content policy in
//! `tauri.conf.json` lets it load nothing else. Photos come from `photo://localhost/<throw>/<hash>`
//! (on some systems `http://photo.localhost/…`): the policy's `img-src` allows only that address,
//! the app itself and `data:`. The page never has a path: the call `photo` opens a dialog or takes
//! the dropped file, and returns a name.

use crate::calls::{self, Workers};
use crate::{system_locale, system_words};
use lapwork_core::words::Problem;
use lapwork_service::desktop::DesktopDisk;
use lapwork_service::disk::DiskPath;
use lapwork_service::{import, photos};
use std::path::PathBuf;
use tauri::http::{self, Response};
use tauri::{
    AppHandle, DragDropEvent, Manager as _, RunEvent, Url, WebviewWindowBuilder, Window,
    WindowEvent,
};

/// Answers the page's request for `photo://localhost/<throw>/<photo>`. Both names are parsed
/// ([`ThrowId`](lapwork_service::store::ThrowId), `PhotoId`), so that no path outside the throw's
/// folder can be requested. Anything else, and a missing photo, is answered with 404, and the page
/// says so in the photo's place.
fn show_photo(app: &AppHandle, asked: &http::Request<Vec<u8>>) -> Response<Vec<u8>> {
    let path = asked.uri().path().replace("%2F", "/");
    let found = path
        .trim_start_matches('/')
        .split_once('/')
        .and_then(|(id, photo)| app.state::<Workers>().photo(id, photo));
    let status = if found.is_some() { 200 } else { 404 };
    // The name is the content's hash: what it names never changes.
    let kept = if found.is_some() {
        "max-age=31536000, immutable"
    } else {
        "no-store"
    };
    Response::builder()
        .status(status)
        .header("Content-Type", "image/jpeg")
        .header("X-Content-Type-Options", "nosniff")
        .header("Cache-Control", kept)
        .body(found.unwrap_or_default())
        .unwrap_or_default()
}

/// A file was dropped on the window: inspect it on a thread of its own, then inform the
/// page, which asks by `dropped`. The page never learns the path.
fn drop_in(window: &Window, path: PathBuf) {
    let app = window.app_handle().clone();
    let path = DiskPath::from(path);
    if photos::meant(&path.shown_name()) {
        app.state::<Workers>().drop_photo(path);
        calls::tell(&app, "lapwork-photo");
        return;
    }
    std::thread::spawn(move || {
        let found = import::read_throw(&DesktopDisk, &path);
        app.state::<Workers>().drop_throw(app.clone(), found);
    });
}

/// Where throws are kept: `LAPWORK_DATA` if set, else the usual place on this device.
#[cfg(desktop)]
fn folder(_app: &tauri::App) -> Option<PathBuf> {
    let chosen = std::env::var_os("LAPWORK_DATA").filter(|chosen| !chosen.is_empty());
    chosen.map(PathBuf::from).or_else(|| {
        let usual = directories::ProjectDirs::from("app", "lapwork", "Lapwork")?;
        Some(usual.data_dir().to_path_buf())
    })
}

/// Where throws are kept: the app's own place on this device.
#[cfg(mobile)]
fn folder(app: &tauri::App) -> Option<PathBuf> {
    app.path().app_data_dir().ok()
}

/// Whether the window may go there: only to the pages built into the program.
fn built_in(url: &Url) -> bool {
    matches!(
        (url.scheme(), url.host_str()),
        ("tauri", Some("localhost")) | ("http" | "https", Some("tauri.localhost"))
    )
}

/// Whether there is a screen to open a window on, as far as that can be known beforehand.
fn screen() -> bool {
    let named = |name| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    !cfg!(target_os = "linux") || named("DISPLAY") || named("WAYLAND_DISPLAY")
}

/// Say on standard error why there is no window, and end.
fn give_up(problem: &Problem) -> ! {
    eprintln!("lapwork: {} {}", problem.said, problem.next);
    std::process::exit(1)
}

/// What a window's own frame takes above its page, at the most, in logical pixels.
const FRAME: f64 = 40.0;

/// How high a window opens: as it is wished, or what a lower screen has room for, so that the large
/// button at its foot is in sight.
fn fitting(wished: f64, room: Option<f64>) -> f64 {
    match room {
        Some(room) if room < wished => (room - FRAME).max(0.0),
        _ => wished,
    }
}

/// The height of the screen that its bars leave free, in logical pixels.
fn room(app: &tauri::App) -> Option<f64> {
    let screen = app.primary_monitor().ok()??;
    let free = screen.work_area().size;
    let high = free.to_logical::<f64>(screen.scale_factor()).height;
    // Some systems do not tell.
    (high > 0.0).then_some(high)
}

/// Asks what every start of the page asks first, before the page's own code has come:
/// `ui/src/lib/program.ts` takes the promise.
const GREETING: &str = "window.lapworkGreeting = window.__TAURI_INTERNALS__.invoke('hello')";

/// Open the windows of the configuration. Where the home folder cannot be written, what the page
/// keeps for itself goes into a folder for temporary files, so that the window opens and tells
/// what is wrong with the folder of the throws.
fn open_windows(app: &tauri::App) -> tauri::Result<()> {
    let room = room(app);
    for window in &app.config().app.windows {
        let mut window = window.clone();
        window.height = fitting(window.height, room);
        let window = &window;
        let builder = || -> tauri::Result<_> {
            let builder = WebviewWindowBuilder::from_config(app, window)?;
            Ok(builder
                .on_navigation(built_in)
                .initialization_script(GREETING))
        };
        if builder()?.build().is_err() {
            let called = format!("lapwork-{}", std::process::id());
            let elsewhere = std::env::temp_dir().join(called);
            builder()?.data_directory(elsewhere).build()?;
        }
    }
    Ok(())
}

/// Open the window, and return when it is closed.
#[cfg_attr(mobile, tauri::mobile_entry_point)]
pub fn run() {
    if !screen() {
        give_up(&system_words().problem("no-screen", &[]));
    }
    let opened = tauri::Builder::default()
        .plugin(tauri_plugin_dialog::init())
        .register_asynchronous_uri_scheme_protocol("photo", |context, asked, answer| {
            let app = context.app_handle().clone();
            std::thread::spawn(move || answer.respond(show_photo(&app, &asked)));
        })
        .on_window_event(|window, event| {
            if let WindowEvent::DragDrop(DragDropEvent::Drop { paths, .. }) = event
                && let [path] = paths.as_slice()
            {
                drop_in(window, path.clone());
            }
        })
        .setup(|app| {
            let Some(folder) = folder(app) else {
                give_up(&system_words().problem("no-home", &[]));
            };
            // An error given to the caller would end in a panic; this one is told in words.
            let opened = Workers::start(folder, system_locale())
                .map_err(tauri::Error::from)
                .and_then(|workers| {
                    app.manage(workers);
                    open_windows(app)
                });
            if let Err(why) = opened {
                let why = [("why", why.to_string().into())];
                give_up(&system_words().problem("no-window", &why));
            }
            Ok(())
        })
        .invoke_handler(calls::answer)
        .build(tauri::generate_context!());
    match opened {
        Ok(app) => app.run(|app, event| {
            // The window is gone; what its maker has tapped is still to be kept.
            if let RunEvent::Exit = event
                && let Some(workers) = app.try_state::<Workers>()
            {
                workers.finish();
            }
        }),
        Err(why) => {
            give_up(&system_words().problem("no-window", &[("why", why.to_string().into())]))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::fitting;

    /// On a laptop's screen of 768 lines, 28 of them a bar, the window is no higher than what is left
    /// beneath its own frame; where there is room, or it is not told, the window is as wished.
    #[test]
    fn a_window_opens_no_higher_than_the_screen() {
        assert_eq!(fitting(844.0, Some(740.0)), 700.0);
        assert_eq!(fitting(844.0, Some(844.0)), 844.0);
        assert_eq!(fitting(844.0, Some(1040.0)), 844.0);
        assert_eq!(fitting(844.0, None), 844.0);
    }
}
