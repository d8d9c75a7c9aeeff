//! The window, and what it may call.
//!
//! Each call takes the one [`Service`] and answers at once; they run one after another,
//! in the order the window made them. Nothing here decides anything. The window stays
//! on the pages built into the program: it goes nowhere else, and the content policy
//! in `tauri.conf.json` lets it load nothing else.

use crate::dialogs;
use crate::printing::Press;
use crate::{system_locale, system_words};
use lapwork_core::measure::bounds::Sent;
use lapwork_core::show::{
    AgainView, Arrange, CommandAnswer, DraftAfter, Export, Exported, GridWish, GridsView, Hello,
    ImportChoice, ImportView, Imported, Layouts, PlanDraft, PlanView, Prefs, PrintOrder, Printing,
    Query, Request, ShelfAnswer, ShelfCommand, ShelfView, View,
};
use lapwork_core::throw::photos::PhotoId;
use lapwork_core::words::Problem;
use lapwork_service::desktop::{self, DesktopDisk, now};
use lapwork_service::disk::DiskPath;
use lapwork_service::export::ExportFile;
use lapwork_service::service::Service;
use lapwork_service::store::StoreError;
use lapwork_service::{import, photos};
use lapwork_sheet::PrintFault;
use std::path::PathBuf;
use std::sync::{Mutex, MutexGuard, PoisonError};
use tauri::http::{self, Response};
use tauri::{
    AppHandle, DragDropEvent, Manager as _, State, Url, WebviewWindowBuilder, Window, WindowEvent,
};

type Shared<'a> = State<'a, Mutex<Service>>;

/// The service; after a call that broke off half-way it reads everything from disk again.
fn service<'a>(shared: &'a Shared<'_>) -> MutexGuard<'a, Service> {
    shared.lock().unwrap_or_else(|broken| {
        let mut service = broken.into_inner();
        service.forget();
        service
    })
}

#[tauri::command]
fn hello(shared: Shared<'_>) -> Hello {
    service(&shared).hello(now())
}

/// Where another program changed a throw's file, the page is to ask for what was found.
fn offer(app: &AppHandle, service: &Service) {
    if service.has_pending_import() {
        tell_dropped(app);
    }
}

fn tell_dropped(app: &AppHandle) {
    for page in app.webview_windows().into_values() {
        // A page that is gone need not be told.
        let _ = page.eval("window.dispatchEvent(new Event('lapwork-dropped'))");
    }
}

#[tauri::command]
fn shelf(app: AppHandle, shared: Shared<'_>) -> ShelfView {
    let mut service = service(&shared);
    let shelf = service.shelf(now());
    offer(&app, &service);
    shelf
}

#[tauri::command]
fn look(
    app: AppHandle,
    shared: Shared<'_>,
    id: String,
    look: Sent<Query>,
) -> Result<View, Problem> {
    let mut service = service(&shared);
    let look = service.accept(look)?;
    let seen = service.look(&id, &look, now());
    offer(&app, &service);
    seen
}

#[tauri::command]
fn act(
    app: AppHandle,
    shared: Shared<'_>,
    id: String,
    deed: Sent<Request>,
    look: Option<Sent<Query>>,
) -> Result<CommandAnswer, Problem> {
    let mut service = service(&shared);
    let deed = service.accept(deed)?;
    let look = look.map(|look| service.accept(look)).transpose()?;
    let acted = service.act_and_look(&id, &deed, look.as_ref(), now());
    offer(&app, &service);
    acted
}

#[tauri::command]
fn tend(shared: Shared<'_>, tend: Sent<ShelfCommand>) -> Result<ShelfAnswer, Problem> {
    let mut service = service(&shared);
    let tend = service.accept(tend)?;
    service.tend(&tend, now())
}

#[tauri::command]
fn draft(
    shared: Shared<'_>,
    draft: PlanDraft,
    after: Option<Sent<DraftAfter>>,
) -> Result<PlanView, Problem> {
    let mut service = service(&shared);
    match after {
        Some(after) => {
            let after = service.accept(after)?;
            service.draft_after(&draft, &after, now())
        }
        None => Ok(service.draft(&draft, now())),
    }
}

#[tauri::command]
fn grids(shared: Shared<'_>, draft: PlanDraft, wish: GridWish) -> GridsView {
    service(&shared).grids(&draft, &wish, now())
}

#[tauri::command]
fn arrange(shared: Shared<'_>, ask: Sent<Arrange>) -> Result<Option<Layouts>, Problem> {
    let mut service = service(&shared);
    let ask = service.accept(ask)?;
    service.arrange(ask, |_| {}, now())
}

#[tauri::command]
fn length(shared: Shared<'_>, text: String) -> Result<i64, Problem> {
    service(&shared).length(&text, now())
}

#[tauri::command]
fn set_prefs(shared: Shared<'_>, prefs: Prefs) -> Result<Hello, Problem> {
    service(&shared).set_prefs(prefs, now())
}

/// The maker is asked where it goes, on a thread of its own, so that the window and the
/// service are free meanwhile.
#[tauri::command(async)]
fn hand(app: AppHandle, shared: Shared<'_>, id: String, hand: Export) -> Result<Exported, Problem> {
    let files = service(&shared).export(&id, &hand, now())?;
    let put = dialogs::put(&app, &files);
    service(&shared).exported(put)
}

/// The maker is asked which file; it is read and checked before the service is taken.
#[tauri::command(async)]
fn bring(app: AppHandle, shared: Shared<'_>) -> Result<Option<ImportView>, Problem> {
    let found = match dialogs::fetch(&app) {
        Ok(None) => return Ok(None),
        Ok(Some(path)) => import::read_throw(&DesktopDisk, &path),
        Err(error) => Err(error),
    };
    service(&shared).import(found, now()).map(Some)
}

/// What came of a file dropped on the window.
#[tauri::command]
fn dropped(shared: Shared<'_>) -> Result<Option<ImportView>, Problem> {
    service(&shared).pending_import()
}

#[tauri::command(async)]
fn take(
    app: AppHandle,
    shared: Shared<'_>,
    take: ImportChoice,
    file: u32,
) -> Result<Imported, Problem> {
    let mut service = service(&shared);
    let taken = service.decide_import(&take, file, now());
    offer(&app, &service);
    taken
}

/// What a throw made after this one begins with.
#[tauri::command]
fn again(shared: Shared<'_>, id: String) -> Result<AgainView, Problem> {
    service(&shared).again(&id, now())
}

/// The photo last dropped on the window, until the page asks for it.
#[derive(Default)]
struct Fallen(Mutex<Option<DiskPath>>);

/// A photo the maker chooses, or the one she dropped: made small before the service is taken,
/// then kept beside the throw. Gives its name; nothing if she called it off.
#[tauri::command(async)]
fn photo(
    app: AppHandle,
    shared: Shared<'_>,
    fallen: State<'_, Fallen>,
    id: String,
    dropped: bool,
) -> Result<Option<String>, Problem> {
    let found = if dropped {
        let mut fallen = fallen.0.lock().unwrap_or_else(PoisonError::into_inner);
        fallen.take().map(Some).ok_or(StoreError::NoPhoto)
    } else {
        dialogs::fetch_photo(&app, &service(&shared).say("shell-photos"))
    };
    let taken = match found {
        Ok(None) => return Ok(None),
        Ok(Some(path)) => import::read_photo(&DesktopDisk, &path),
        Err(error) => Err(error),
    };
    service(&shared).keep_photo(&id, taken, now()).map(Some)
}

/// Answer the page's asking for `photo://localhost/<throw>/<photo>`. Both are read into
/// names from which no path outside the throw's folder can be made; anything else, and a
/// photo that is not there, is answered with 404.
fn show_photo(app: &AppHandle, asked: &http::Request<Vec<u8>>) -> Response<Vec<u8>> {
    let path = asked.uri().path().replace("%2F", "/");
    let found = path
        .trim_start_matches('/')
        .split_once('/')
        .and_then(|(id, photo)| service(&app.state()).photo(id, photo));
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

/// A file was dropped on the window: look into it on a thread of its own, then tell the
/// page, which asks by `dropped`. The page never learns the path.
fn drop_in(window: &Window, path: PathBuf) {
    let app = window.app_handle().clone();
    let path = DiskPath::from(path);
    if photos::meant(&path.shown_name()) {
        let fallen = app.state::<Fallen>();
        *fallen.0.lock().unwrap_or_else(PoisonError::into_inner) = Some(path);
        for page in app.webview_windows().into_values() {
            let _ = page.eval("window.dispatchEvent(new Event('lapwork-photo'))");
        }
        return;
    }
    std::thread::spawn(move || {
        let found = import::read_throw(&DesktopDisk, &path);
        service(&app.state()).import_dropped(found, now());
        tell_dropped(&app);
    });
}

/// A sheet is made and put where the maker says; stopped, nothing comes of it.
#[tauri::command(async)]
fn print(
    app: AppHandle,
    shared: Shared<'_>,
    press: State<'_, Press>,
    id: String,
    order: PrintOrder,
) -> Result<Exported, Problem> {
    let (name, sheet) = service(&shared).sheet(&id, &order, now())?;
    let photo = |photo: &PhotoId| service(&shared).photo(&id, photo.as_str());
    let made = press.print(&sheet, &order, &photo);
    let bytes = match made {
        Ok(bytes) => bytes,
        Err(PrintFault::Cancelled) => return Ok(Exported { said: None }),
        Err(PrintFault::Failed(why)) => return Err(service(&shared).print_failed(why)),
    };
    let file = ExportFile { name, bytes };
    let put = dialogs::put(&app, &[file]);
    service(&shared).exported(put)
}

/// How far the print in hand is.
#[tauri::command]
fn printing(press: State<'_, Press>) -> Option<Printing> {
    press.look()
}

/// Stop the print in hand.
#[tauri::command]
fn stop_printing(press: State<'_, Press>) {
    press.stop();
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
            let locale = system_locale();
            app.manage(Mutex::new(Service::for_locale(
                desktop::store(folder),
                desktop::host(),
                &locale,
            )));
            app.manage(Fallen::default());
            app.manage(Press::default());
            for window in &app.config().app.windows {
                WebviewWindowBuilder::from_config(app, window)?
                    .on_navigation(built_in)
                    .build()?;
            }
            Ok(())
        })
        .invoke_handler(tauri::generate_handler![
            hello,
            shelf,
            look,
            act,
            tend,
            draft,
            grids,
            arrange,
            length,
            set_prefs,
            hand,
            bring,
            dropped,
            take,
            print,
            printing,
            stop_printing,
            again,
            photo
        ])
        .run(tauri::generate_context!());
    if let Err(why) = opened {
        give_up(&words.problem("no-window", &[("why", why.to_string().into())]));
    }
}
