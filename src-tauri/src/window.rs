//! The window, and what it may call.
//!
//! Each call takes the one [`Desk`] and answers at once; they run one after another,
//! in the order the window made them. Nothing here decides anything. The window stays
//! on the pages built into the program: it goes nowhere else, and the content policy
//! in `tauri.conf.json` lets it load nothing else.

use crate::arranging::Arranging;
use crate::desk::Desk;
use crate::store::Store;
use crate::{now, system_words};
use lapwork_core::view::{
    Arrange, Deed, GridWish, GridsView, Head, Hello, Layouts, Look, PlanDraft, PlanView, Prefs,
    Problem, ShelfView, Tend, Tended, View,
};
use std::path::PathBuf;
use std::sync::{Mutex, MutexGuard, PoisonError};
use tauri::{Manager as _, State, Url, WebviewWindowBuilder};

type Shared<'a> = State<'a, Mutex<Desk>>;

/// The desk; after a call that broke off half-way it reads everything from disk again.
fn desk<'a>(shared: &'a Shared<'_>) -> MutexGuard<'a, Desk> {
    shared.lock().unwrap_or_else(|broken| {
        let mut desk = broken.into_inner();
        desk.forget();
        desk
    })
}

#[tauri::command]
fn hello(shared: Shared<'_>) -> Hello {
    desk(&shared).hello(now())
}

#[tauri::command]
fn shelf(shared: Shared<'_>) -> ShelfView {
    desk(&shared).shelf(now())
}

#[tauri::command]
fn look(shared: Shared<'_>, id: String, look: Look) -> Result<View, Problem> {
    desk(&shared).look(&id, &look, now())
}

#[tauri::command]
fn act(shared: Shared<'_>, id: String, deed: Deed) -> Result<Head, Problem> {
    desk(&shared).act(&id, &deed, now())
}

#[tauri::command]
fn tend(shared: Shared<'_>, tend: Tend) -> Result<Tended, Problem> {
    desk(&shared).tend(&tend, now())
}

#[tauri::command]
fn draft(shared: Shared<'_>, draft: PlanDraft) -> PlanView {
    desk(&shared).draft(&draft, now())
}

#[tauri::command]
fn grids(shared: Shared<'_>, draft: PlanDraft, wish: GridWish) -> GridsView {
    desk(&shared).grids(&draft, &wish, now())
}

#[tauri::command]
fn arrange(
    shared: Shared<'_>,
    arranging: State<'_, Mutex<Arranging>>,
    ask: Arrange,
) -> Result<Option<Layouts>, Problem> {
    let mut arranging = arranging.lock().unwrap_or_else(PoisonError::into_inner);
    match ask {
        Arrange::Start { id, wishes, seed } => {
            let throw = desk(&shared).throw(&id, now())?;
            arranging.start(&id, throw, wishes, seed);
        }
        Arrange::Stop => arranging.stop(),
        Arrange::Look => {}
    }
    let found = arranging.found();
    drop(arranging);
    found
        .map(|found| desk(&shared).layouts(&found, now()))
        .transpose()
}

#[tauri::command]
fn length(shared: Shared<'_>, text: String) -> Result<i64, Problem> {
    desk(&shared).length(&text, now())
}

#[tauri::command]
fn set_prefs(shared: Shared<'_>, prefs: Prefs) -> Result<Hello, Problem> {
    desk(&shared).set_prefs(prefs, now())
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

/// Whether there is a screen to open a window on, as far as can be told beforehand.
fn screen() -> bool {
    let named = |name| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    !cfg!(target_os = "linux") || named("DISPLAY") || named("WAYLAND_DISPLAY")
}

/// Say on standard error why there is no window, and end.
fn give_up(problem: &Problem) -> ! {
    eprintln!("lapwork: {} {}", problem.said, problem.next);
    std::process::exit(1)
}

/// Open the window, and return when it is closed.
#[cfg_attr(mobile, tauri::mobile_entry_point)]
pub fn run() {
    let words = system_words();
    if !screen() {
        give_up(&words.problem("no-screen", &[]));
    }
    let opened = tauri::Builder::default()
        .setup(|app| {
            let Some(folder) = folder(app) else {
                give_up(&system_words().problem("no-home", &[]));
            };
            app.manage(Mutex::new(Desk::speaking(
                Store::at(folder),
                system_words().language(),
            )));
            app.manage(Mutex::new(Arranging::default()));
            for window in &app.config().app.windows {
                WebviewWindowBuilder::from_config(app, window)?
                    .on_navigation(built_in)
                    .build()?;
            }
            Ok(())
        })
        .invoke_handler(tauri::generate_handler![
            hello, shelf, look, act, tend, draft, grids, arrange, length, set_prefs
        ])
        .run(tauri::generate_context!());
    if let Err(why) = opened {
        give_up(&words.problem("no-window", &[("why", why.to_string().into())]));
    }
}
