//! What the page may call, and which thread answers each call.
//!
//! | Thread | What it does |
//! | --- | --- |
//! | the window's | It takes the page's calls as they come and queues each before it reads the next. It never touches the disk. It waits for a worker only once the window is closed. |
//! | the service's worker | It owns the [`Service`] and executes calls in the order they were sent: every command, the shelf, settings, plans being typed. It also makes the step screen (less than 1 ms at 60 × 60). |
//! | the reader | It makes every other screen from a [`Snapshot`]. The worker takes the snapshot when the query's turn comes, so a command never waits behind the reader. |
//! | one for each dialog, export, print, search | It runs in parallel. It asks the worker for a snapshot, or to store something. |
//!
//! * **Order.** Calls are executed in the order in which the page made them. They are queued
//!   where Tauri hands them over, on the window's one thread ([`answer`], called by
//!   `Builder::invoke_handler`). Tauri would start its own async commands from a pool, in any
//!   order. Tauri does not promise to keep the type it passes ([`Invoke`]) stable, so a
//!   newer Tauri may require a change here.
//! * **Stale answers.** Each answer about a throw carries a revision, which counts the changes
//!   since the start. The page drops an answer with a lower revision and asks that question
//!   again (`ui/src/lib/open-throw.svelte.ts`).
//! * **Progress.** Printing and the layout search report progress over a [`Channel`]; the page
//!   does not poll.
//! * **A panic** is caught on every thread, and the maker sees the error `broke`. On the worker,
//!   [`Service::recover`] then discards the state in memory, reads the throws again from their
//!   files and compares them with what was acknowledged; see [`worker`](crate::worker).
//! * **Closing.** When the window is gone, the program waits until the worker's queue is empty
//!   ([`Workers::finish`]).
//! * **Untrusted input.** A call takes a command or query as [`Sent`], so that the maker learns
//!   which figure was out of bounds.

use crate::dialogs;
use crate::printing::{Press, PrintTurn};
use crate::worker::{Recover, Worker, gone};
use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::measure::bounds::Sent;
use lapwork_core::show::{
    CommandAnswer, DraftAfter, Export, Exported, GridWish, ImportChoice, ImportView, PlanDraft,
    Prefs, PrintOrder, Printing, Query, Request, ShelfCommand,
};
use lapwork_core::throw::wishes::Wishes;
use lapwork_core::words::Problem;
use lapwork_service::desktop::{self, DesktopDisk};
use lapwork_service::disk::DiskPath;
use lapwork_service::export::ExportFile;
use lapwork_service::import::{self, Import};
use lapwork_service::service::{Service, Snapshot, WINDOW_WAITS, is_quick};
use lapwork_service::store::{StoreError, ThrowId};
use lapwork_sheet::PrintFault;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use std::io;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::PathBuf;
use std::sync::{Mutex, PoisonError};
use tauri::ipc::{Channel, Invoke, InvokeBody, InvokeMessage, InvokeResolver, JavaScriptChannelId};
use tauri::{AppHandle, Manager as _, Wry};

/// A call of the page. `build.rs` and `capabilities/main.json` name the same.
#[derive(Deserialize)]
#[serde(rename_all = "snake_case")]
enum Call {
    Hello {},
    Shelf {},
    View {
        id: String,
        query: Sent<Query>,
    },
    Act {
        id: String,
        request: Sent<Request>,
        query: Option<Sent<Query>>,
    },
    ShelfCommand {
        command: Sent<ShelfCommand>,
    },
    Draft {
        draft: PlanDraft,
        after: Option<Sent<DraftAfter>>,
    },
    Grids {
        draft: PlanDraft,
        wish: GridWish,
    },
    Arrange {
        id: String,
        wishes: Sent<Wishes>,
        seed: u32,
        progress: JavaScriptChannelId,
    },
    StopArranging {},
    Length {
        text: String,
    },
    SetPrefs {
        prefs: Prefs,
    },
    Export {
        id: String,
        export: Export,
    },
    Import {},
    Dropped {},
    DecideImport {
        choice: ImportChoice,
        file: u32,
    },
    Print {
        id: String,
        order: PrintOrder,
        progress: JavaScriptChannelId,
    },
    StopPrinting {},
    Again {
        id: String,
    },
    Photo {
        id: String,
        dropped: bool,
    },
}

impl Call {
    fn read(message: &InvokeMessage<Wry>) -> serde_json::Result<Call> {
        let given = match message.payload() {
            InvokeBody::Json(given @ Value::Object(_)) => given.clone(),
            _ => Value::Object(Map::new()),
        };
        let named = Map::from_iter([(message.command().to_string(), given)]);
        serde_json::from_value(Value::Object(named))
    }
}

/// Answers one call; may be taken to any thread.
struct Answer(InvokeResolver<Wry>);

impl Answer {
    fn give<T: Serialize>(self, answer: Result<T, Problem>) {
        match answer {
            Ok(answer) => self.0.resolve(answer),
            Err(problem) => self.0.reject(problem),
        }
    }
}

impl Recover for Service {
    fn recover(&mut self) -> Problem {
        Service::recover(self)
    }
}

/// Makes screens from snapshots; owns nothing.
struct Reader;

impl Recover for Reader {
    fn recover(&mut self) -> Problem {
        gone()
    }
}

/// All that answers the page.
pub struct Workers {
    worker: Worker<Service>,
    reader: Worker<Reader>,
    folder: PathBuf,
    press: Press,
    /// The photo last dropped on the window, until the page asks for it.
    dropped_photo: Mutex<Option<DiskPath>>,
}

/// What the worker made of a call. It is passed on once and never stored.
enum Turn<T> {
    /// The worker answered it.
    Answered(T),
    /// The reader is to answer it from this snapshot.
    ForReader(Snapshot, ScreenReading<T>),
}

/// How the reader makes an answer from a snapshot.
type ScreenReading<T> = Box<dyn FnOnce(&Snapshot) -> Result<T, Problem> + Send>;

impl Workers {
    /// Begin to serve a data folder, in the language of the system's `locale` where none is
    /// chosen.
    ///
    /// # Errors
    /// What the system said where it starts no thread.
    pub fn start(folder: PathBuf, locale: String) -> io::Result<Workers> {
        let store = desktop::store(folder.clone());
        Ok(Workers {
            worker: Worker::start("service", move || {
                Service::for_locale(store, desktop::host(), &locale).waiting(WINDOW_WAITS)
            })?,
            reader: Worker::start("reader", || Reader)?,
            folder,
            press: Press::default(),
            dropped_photo: Mutex::default(),
        })
    }

    /// Wait until everything the page has asked to be kept is kept.
    pub fn finish(&self) {
        self.worker.finish();
    }

    /// A photo's bytes; none for anything that is not one. Asks nobody: photos never change.
    pub fn photo(&self, id: &str, photo: &str) -> Option<Vec<u8>> {
        let (id, photo) = (ThrowId::parse(id).ok()?, PhotoId::parse(photo)?);
        let store = desktop::store(self.folder.clone());
        store.photo(&id, &photo).ok().flatten()
    }

    /// A photo was dropped on the window.
    pub fn drop_photo(&self, path: DiskPath) {
        *self
            .dropped_photo
            .lock()
            .unwrap_or_else(PoisonError::into_inner) = Some(path);
    }

    /// A throw file was dropped on the window and looked into.
    pub fn drop_throw(&self, app: AppHandle, found: Result<Import, StoreError>) {
        self.worker.send(
            move |service| {
                service.import_dropped(found, service.now());
                Ok(())
            },
            move |_| announce_import(&app),
        );
    }

    fn serve<T: Serialize + 'static>(
        &self,
        answer: Answer,
        work: impl FnOnce(&mut Service) -> Result<T, Problem> + Send + 'static,
    ) {
        self.worker.send(work, move |done| answer.give(done));
    }

    /// Have the reader make a screen, and give what `with` makes of it.
    fn read<T: Serialize + 'static>(
        &self,
        answer: Answer,
        snapshot: Snapshot,
        read: impl FnOnce(&Snapshot) -> Result<T, Problem> + Send + 'static,
    ) {
        let work = move |_: &mut Reader| {
            let made = catch_unwind(AssertUnwindSafe(|| read(&snapshot)));
            made.unwrap_or_else(|_| Err(snapshot.broke()))
        };
        self.reader.send(work, move |made| answer.give(made));
    }

    /// Have the worker take a call in its turn, and the reader answer it where the worker
    /// leaves that to it.
    fn serve_by_turns<T: Serialize + Send + 'static>(
        &self,
        app: AppHandle,
        answer: Answer,
        work: impl FnOnce(&mut Service) -> Result<Turn<T>, Problem> + Send + 'static,
    ) {
        self.worker.send(work, move |turn| match turn {
            Ok(Turn::Answered(answered)) => answer.give(Ok(answered)),
            Ok(Turn::ForReader(snapshot, reading)) => {
                app.state::<Workers>().read(answer, snapshot, reading);
            }
            Err(problem) => answer.give::<()>(Err(problem)),
        });
    }

    fn view(&self, app: AppHandle, answer: Answer, id: String, query: Sent<Query>) {
        let own = app.clone();
        self.serve_by_turns(app, answer, move |service| {
            let query = service.accept(query)?;
            let snapshot = service.snapshot(&id, service.now());
            announce_pending_import(&own, service);
            let snapshot = snapshot?;
            if is_quick(&query) {
                return snapshot.answer(&query).map(Turn::Answered);
            }
            let reading = move |snapshot: &Snapshot| snapshot.answer(&query);
            Ok(Turn::ForReader(snapshot, Box::new(reading)))
        });
    }

    fn act(
        &self,
        app: AppHandle,
        answer: Answer,
        id: String,
        request: Sent<Request>,
        query: Option<Sent<Query>>,
    ) {
        let own = app.clone();
        self.serve_by_turns(app, answer, move |service| {
            let now = service.now();
            let request = service.accept(request)?;
            let query = query.map(|query| service.accept(query)).transpose()?;
            let (quick, slow) = match query {
                Some(query) if !is_quick(&query) => (None, Some(query)),
                quick => (quick, None),
            };
            let acted = service.act_and_view(&id, &request, quick.as_ref(), now);
            announce_pending_import(&own, service);
            #[cfg(debug_assertions)]
            break_on_purpose(&request);
            let acted = acted?;
            let Some(query) = slow else {
                return Ok(Turn::Answered(acted));
            };
            // The command stays stored, whether its screen can be made or not.
            match service.snapshot(&id, now) {
                Ok(snapshot) => {
                    let reading = move |snapshot: &Snapshot| Ok(snapshot.acted(&query));
                    Ok(Turn::ForReader(snapshot, Box::new(reading)))
                }
                Err(problem) => Ok(Turn::Answered(CommandAnswer {
                    problem: Some(problem),
                    ..acted
                })),
            }
        });
    }

    fn draft(
        &self,
        app: AppHandle,
        answer: Answer,
        draft: PlanDraft,
        after: Option<Sent<DraftAfter>>,
    ) {
        self.serve_by_turns(app, answer, move |service| {
            let Some(after) = after else {
                return Ok(Turn::Answered(service.draft(&draft, service.now())));
            };
            let after = service.accept(after)?;
            let snapshot = service.after(&after, service.now())?;
            let reading = move |older: &Snapshot| Ok(older.draft_after(&draft, &after));
            Ok(Turn::ForReader(snapshot, Box::new(reading)))
        });
    }

    /// The maker is asked where it goes; the window and the worker are free meanwhile.
    fn export(&self, app: &AppHandle, id: &str, export: Export) -> Result<Exported, Problem> {
        let throw = id.to_string();
        let files = match export {
            // To the byte as it is on the disk.
            Export::Throw => self
                .worker
                .ask(move |service| service.export(&throw, &export, service.now()))?,
            _ => {
                let snapshot = self.snapshot(throw)?;
                snapshot.export(&export, &|photo| self.photo(id, photo.as_str()))?
            }
        };
        self.put(app, files)
    }

    /// A sheet is made and put where the maker says; stopped, nothing comes of it.
    fn print(
        &self,
        app: &AppHandle,
        id: &str,
        (turn, order): (PrintTurn, &PrintOrder),
        progress: &Channel<Printing>,
    ) -> Result<Exported, Problem> {
        let (name, sheet) = self.snapshot(id.to_string())?.sheet(order);
        let photo = |photo: &PhotoId| self.photo(id, photo.as_str());
        let tell = |now: Printing| {
            // A page that is gone needs no message.
            let _ = progress.send(now);
        };
        match self.press.print(turn, &sheet, order, &photo, &tell) {
            Ok(bytes) => self.put(app, vec![ExportFile { name, bytes }]),
            Err(PrintFault::Cancelled) => Ok(Exported { said: None }),
            Err(PrintFault::Failed(why)) => self
                .worker
                .ask(move |service| Err(service.print_failed(why))),
        }
    }

    fn snapshot(&self, id: String) -> Result<Snapshot, Problem> {
        self.worker
            .ask(move |service| service.snapshot(&id, service.now()))
    }

    fn put(&self, app: &AppHandle, files: Vec<ExportFile>) -> Result<Exported, Problem> {
        let put = dialogs::put(app, &files);
        self.worker.ask(move |service| service.exported(put))
    }

    /// The maker is asked which file; it is read and checked before the worker has it.
    fn import(&self, app: &AppHandle) -> Result<Option<ImportView>, Problem> {
        let found = match dialogs::fetch(app) {
            Ok(None) => return Ok(None),
            Ok(Some(path)) => import::read_throw(&DesktopDisk, &path),
            Err(error) => Err(error),
        };
        self.worker
            .ask(move |service| service.import(found, service.now()).map(Some))
    }

    /// A photo the maker chooses, or the one she dropped: made small before the worker has it,
    /// which keeps it beside the throw. Gives its name; nothing if she called it off.
    fn keep_photo(
        &self,
        app: &AppHandle,
        id: String,
        dropped: bool,
    ) -> Result<Option<String>, Problem> {
        let found = if dropped {
            let mut dropped = self
                .dropped_photo
                .lock()
                .unwrap_or_else(PoisonError::into_inner);
            dropped.take().map(Some).ok_or(StoreError::NoPhoto)
        } else {
            let called = self.worker.ask(|service| Ok(service.say("shell-photos")))?;
            dialogs::fetch_photo(app, &called)
        };
        let taken = match found {
            Ok(None) => return Ok(None),
            Ok(Some(path)) => import::read_photo(&DesktopDisk, &path),
            Err(error) => Err(error),
        };
        self.worker
            .ask(move |service| service.keep_photo(&id, taken, service.now()).map(Some))
    }
}

/// Answer on a thread of its own.
fn on_its_own_thread<T: Serialize + 'static>(
    app: AppHandle,
    answer: Answer,
    work: impl FnOnce(&Workers, &AppHandle) -> Result<T, Problem> + Send + 'static,
) {
    let otherwise = Answer(answer.0.clone());
    let begun = std::thread::Builder::new().spawn(move || {
        let workers = app.state::<Workers>();
        let done = catch_unwind(AssertUnwindSafe(|| work(&workers, &app)));
        // Said in the language the worker speaks.
        let broke = || {
            let said = workers.worker.ask(|service| Ok(service.broke()));
            Err(said.unwrap_or_else(|problem| problem))
        };
        answer.give(done.unwrap_or_else(|_| broke()));
    });
    if begun.is_err() {
        otherwise.give::<()>(Err(gone()));
    }
}

/// Where another program changed a throw's file, the page is to ask for what was found.
fn announce_pending_import(app: &AppHandle, service: &Service) {
    if service.has_pending_import() {
        announce_import(app);
    }
}

fn announce_import(app: &AppHandle) {
    tell(app, "lapwork-dropped");
}

/// Have the page hear of something it did not ask for.
pub fn tell(app: &AppHandle, event: &str) {
    for page in app.webview_windows().into_values() {
        // A page that is gone needs no message.
        let _ = page.eval(format!("window.dispatchEvent(new Event('{event}'))"));
    }
}

/// Panic in the middle of a command, for a test: where a note says what `LAPWORK_BREAK_ON` does.
/// The release has nothing of this.
#[cfg(debug_assertions)]
fn break_on_purpose(request: &Request) {
    use lapwork_core::command::Command;
    if let Request::Act {
        action: Command::Note { text, .. },
    } = request
        && std::env::var("LAPWORK_BREAK_ON").is_ok_and(|on| on == *text)
    {
        panic!("asked to break off by LAPWORK_BREAK_ON");
    }
}

/// Take up a call of the page; called on the window's thread.
pub fn answer(invoke: Invoke<Wry>) -> bool {
    let Invoke {
        message, resolver, ..
    } = invoke;
    let call = match Call::read(&message) {
        Ok(call) => call,
        Err(why) => {
            resolver.reject(why.to_string());
            return true;
        }
    };
    let webview = message.webview();
    let app = webview.app_handle().clone();
    let workers = app.state::<Workers>();
    let answer = Answer(resolver);
    match call {
        Call::Hello {} => workers.serve(answer, |service| Ok(service.hello(service.now()))),
        Call::Shelf {} => {
            let own = app.clone();
            workers.serve(answer, move |service| {
                let shelf = service.shelf(service.now());
                announce_pending_import(&own, service);
                Ok(shelf)
            });
        }
        Call::View { id, query } => workers.view(app.clone(), answer, id, query),
        Call::Act { id, request, query } => workers.act(app.clone(), answer, id, request, query),
        Call::ShelfCommand { command } => {
            workers.serve(answer, move |service| {
                let command = service.accept(command)?;
                service.shelf_command(&command, service.now())
            });
        }
        Call::Draft { draft, after } => workers.draft(app.clone(), answer, draft, after),
        Call::Grids { draft, wish } => workers.serve(answer, move |service| {
            Ok(service.grids(&draft, &wish, service.now()))
        }),
        Call::Arrange {
            id,
            wishes,
            seed,
            progress,
        } => {
            let progress = progress.channel_on::<Wry, _>(webview);
            // Answered when the search has ended, or at once where none could begin.
            let ended = Answer(answer.0.clone());
            let work = move |service: &mut Service| {
                let tell = move |found| {
                    let _ = progress.send(found);
                };
                let end = move |found| ended.give(found);
                let wishes = service.accept(wishes)?;
                service.arrange(&id, wishes, seed, tell, end, service.now())
            };
            workers.worker.send(work, move |begun| {
                if let Err(problem) = begun {
                    answer.give::<()>(Err(problem));
                }
            });
        }
        Call::StopArranging {} => workers.serve(answer, |service| Ok(service.stop_arranging())),
        Call::Length { text } => {
            workers.serve(answer, move |service| service.length(&text, service.now()));
        }
        Call::SetPrefs { prefs } => {
            workers.serve(answer, move |service| {
                service.set_prefs(prefs, service.now())
            });
        }
        Call::Export { id, export } => {
            on_its_own_thread(app.clone(), answer, move |workers, app| {
                workers.export(app, &id, export)
            });
        }
        Call::Import {} => {
            on_its_own_thread(app.clone(), answer, |workers, app| workers.import(app))
        }
        Call::Dropped {} => workers.serve(answer, Service::pending_import),
        Call::DecideImport { choice, file } => {
            let own = app.clone();
            workers.serve(answer, move |service| {
                let taken = service.decide_import(&choice, file, service.now());
                announce_pending_import(&own, service);
                taken
            });
        }
        Call::Print {
            id,
            order,
            progress,
        } => {
            let progress = progress.channel_on(webview);
            // The print has its turn before the next call is read, which may be to stop it.
            let turn = workers.press.begin();
            on_its_own_thread(app.clone(), answer, move |workers, app| {
                workers.print(app, &id, (turn, &order), &progress)
            });
        }
        Call::StopPrinting {} => {
            workers.press.stop();
            answer.give(Ok(()));
        }
        Call::Again { id } => {
            workers.serve(answer, move |service| service.again(&id, service.now()))
        }
        Call::Photo { id, dropped } => {
            on_its_own_thread(app.clone(), answer, move |workers, app| {
                workers.keep_photo(app, id, dropped)
            })
        }
    }
    true
}
