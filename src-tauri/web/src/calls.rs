//! What the page may ask, and how it is answered: as the desktop's shell does, one call after
//! another.
//!
//! A [`PageService`] holds the service. Calls come as JSON and are answered as JSON, `{"ok": …}` or
//! `{"problem": …}`; what is made of bytes has a method of its own. The search for layouts runs
//! beside everything else, in a worker of its own ([`search`]), and so does a reader that makes the
//! screens of large throws, where there is one ([`PageService::set_reader`]).

use crate::reader::{Feed, Reading};
use lapwork_core::cloth::photos::PhotoId;
use lapwork_core::measure::bounds::Sent;
use lapwork_core::show::{
    CommandAnswer, DraftAfter, Export, GridWish, ImportChoice, Layouts, PlanDraft, Prefs,
    PrintOrder, Query, Request, ShelfCommand, ViewAnswer,
};
use lapwork_core::throw::Time;
use lapwork_core::throw::wishes::Wishes;
use lapwork_core::words::{self, Arg, Problem};
use lapwork_service::disk::{DiskPath, MemoryDisk};
use lapwork_service::export::ExportFile;
use lapwork_service::host::Host;
use lapwork_service::import;
use lapwork_service::paper::{self, PrintJob};
use lapwork_service::photos::PhotoFault;
use lapwork_service::service::{Service, WINDOW_WAITS};
use lapwork_service::store::{Store, StoreError};
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use std::sync::{Arc, Mutex, PoisonError};

/// A call of the page.
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
    Length {
        text: String,
    },
    SetPrefs {
        prefs: Prefs,
    },
    Dropped {},
    DecideImport {
        choice: ImportChoice,
        file: u32,
    },
    Again {
        id: String,
    },
    /// What a print is made from: the module that prints is not this one.
    Print {
        id: String,
        order: PrintOrder,
    },
    /// What to say where that module did not print.
    PrintFailed {
        why: String,
    },
    /// Files of these names were exported; with the throw, if its copy was.
    Exported {
        files: Vec<String>,
        #[serde(default)]
        throw: Option<String>,
    },
    /// What a search for layouts of a throw starts from.
    Order {
        id: String,
        wishes: Sent<Wishes>,
        seed: u32,
    },
    /// What to say where something broke off.
    Broke {},
}

/// Why nothing can be kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Stranded {
    /// The browser has no storage of the kind that is needed.
    None,
    /// It cannot be opened; what the browser said.
    Failed(String),
}

/// What a search for layouts starts from.
#[derive(Debug, Serialize, Deserialize)]
struct Order {
    record: String,
    prefs: Prefs,
    wishes: Wishes,
    seed: u32,
}

/// What the page prints from.
#[derive(Debug, Serialize)]
struct Print {
    /// The name of the file it is to become.
    file: String,
    /// The photos that are printed, to be passed on with the job.
    photos: Vec<PhotoId>,
    job: PrintJob,
}

/// The service, and what stands in its way.
pub struct PageService {
    service: Service,
    stranded: Option<Stranded>,
    feed: Feed,
    /// The screen that the last call has left to the reader.
    reading: Option<Reading>,
}

/// An answer as JSON.
pub(crate) fn to_json<T: Serialize>(answer: Result<T, Problem>) -> String {
    #[derive(Serialize)]
    #[serde(rename_all = "snake_case")]
    enum JsonAnswer<T> {
        Ok(T),
        Problem(Problem),
    }
    let answer = match answer {
        Ok(answer) => JsonAnswer::Ok(answer),
        Err(problem) => JsonAnswer::Problem(problem),
    };
    // Views hold nothing that JSON cannot say.
    serde_json::to_string(&answer).unwrap_or_else(|why| why.to_string())
}

/// The first of the browser's languages that is spoken here; else its first.
fn locale(languages: &str) -> &str {
    let known = |tag: &&str| words::language(tag).is_some();
    let mut all = languages.split('\n');
    let first = languages.split('\n').next().unwrap_or_default();
    all.find(known).unwrap_or(first)
}

impl PageService {
    /// A service over these files, in the first of the browser's `languages` (one a line) that is
    /// spoken here.
    pub fn new(
        store: Store,
        host: Host,
        languages: &str,
        stranded: Option<Stranded>,
    ) -> PageService {
        PageService {
            service: Service::for_locale(store, host, locale(languages))
                .waiting(WINDOW_WAITS)
                .reminding(),
            stranded,
            feed: Feed::default(),
            reading: None,
        }
    }

    /// There is a reader from now on, which has nothing yet; or there is none, and all screens are
    /// made here.
    pub fn set_reader(&mut self, is_there: bool) {
        self.feed.begin(is_there);
    }

    /// The screen that the last call has left to the reader, as JSON for it. The reader then has the
    /// answer to the call; the one given here says that the reader broke off.
    pub fn reading(&mut self) -> Option<String> {
        let reading = self.reading.take()?;
        serde_json::to_string(&reading).ok()
    }

    /// Answer a call: its name, and what it was given as JSON.
    ///
    /// # Errors
    /// That the page asked for something there is not.
    pub fn answer(&mut self, command: &str, given: &str) -> Result<String, String> {
        let given: Value = serde_json::from_str(given).map_err(|why| why.to_string())?;
        let given = match given {
            given @ Value::Object(_) => given,
            _ => Value::Object(Map::new()),
        };
        let named = Map::from_iter([(command.to_string(), given)]);
        let call = serde_json::from_value(Value::Object(named)).map_err(|why| why.to_string())?;
        Ok(self.done(call))
    }

    fn done(&mut self, call: Call) -> String {
        let now = self.service.now();
        match call {
            Call::Hello {} => {
                let mut hello = self.service.hello(now);
                if let Some(problem) = self.stranded() {
                    hello.problem = Some(problem);
                }
                to_json(Ok(hello))
            }
            Call::Shelf {} => to_json(Ok(self.service.shelf(now))),
            Call::View { id, query } => to_json(self.view(&id, query, now)),
            Call::Act { id, request, query } => {
                let acted = self.act(&id, request, query, now);
                self.stored(acted)
            }
            Call::ShelfCommand { command } => {
                self.feed.forget();
                let answered = self.service.accept(command);
                let answered =
                    answered.and_then(|command| self.service.shelf_command(&command, now));
                self.stored(answered)
            }
            Call::Draft { draft, after: None } => to_json(Ok(self.service.draft(&draft, now))),
            Call::Draft {
                draft,
                after: Some(after),
            } => {
                let after = self.service.accept(after);
                to_json(after.and_then(|after| self.service.draft_after(&draft, &after, now)))
            }
            Call::Grids { draft, wish } => to_json(Ok(self.service.grids(&draft, &wish, now))),
            Call::Length { text } => to_json(self.service.length(&text, now)),
            Call::SetPrefs { prefs } => {
                let set = self.service.set_prefs(prefs, now);
                self.stored(set)
            }
            Call::Dropped {} => to_json(self.service.pending_import()),
            Call::DecideImport { choice, file } => {
                self.feed.forget();
                let taken = self.service.decide_import(&choice, file, now);
                self.stored(taken)
            }
            Call::Again { id } => to_json(self.service.again(&id, now)),
            Call::Print { id, order } => {
                let snapshot = self.service.snapshot(&id, now);
                to_json(snapshot.map(|snapshot| {
                    let (file, sheet) = snapshot.sheet(&order);
                    let photos = paper::photos(&sheet).into_keys().collect();
                    let job = snapshot.print_job(&order);
                    Print { file, photos, job }
                }))
            }
            Call::PrintFailed { why } => to_json::<()>(Err(self.service.print_failed(why))),
            Call::Exported { files, throw } => {
                if let Some(throw) = throw {
                    self.service.copy_saved(&throw);
                }
                let files = files.iter().map(|name| DiskPath::from(name.as_str()));
                to_json(self.service.exported(Ok(files.collect())))
            }
            Call::Order { id, wishes, seed } => {
                let order = self.service.accept(wishes).and_then(|wishes| {
                    let record = self.service.snapshot(&id, now)?.journal().text();
                    let prefs = self.service.prefs().clone();
                    Ok(Order {
                        record,
                        prefs,
                        wishes,
                        seed,
                    })
                });
                to_json(order)
            }
            Call::Broke {} => to_json::<()>(Err(self.service.broke())),
        }
    }

    fn view(&mut self, id: &str, query: Sent<Query>, now: Time) -> Result<ViewAnswer, Problem> {
        let query = self.service.accept(query)?;
        let snapshot = self.service.snapshot(id, now)?;
        if self.feed.wants(&snapshot, &query) {
            self.reading = Some(self.feed.order(id, &snapshot, query, false));
            return Err(self.service.broke());
        }
        snapshot.answer(&query)
    }

    fn act(
        &mut self,
        id: &str,
        request: Sent<Request>,
        query: Option<Sent<Query>>,
        now: Time,
    ) -> Result<CommandAnswer, Problem> {
        let request = self.service.accept(request)?;
        let query = query.map(|query| self.service.accept(query)).transpose()?;
        let acted = self.service.act_and_view(id, &request, None, now)?;
        let Some(query) = query else {
            return Ok(acted);
        };
        // The command stays stored, whether its screen can be made or not.
        let problem = match self.service.snapshot(id, now) {
            Ok(snapshot) if self.feed.wants(&snapshot, &query) => {
                self.reading = Some(self.feed.order(id, &snapshot, query, true));
                self.service.broke()
            }
            Ok(snapshot) => return Ok(snapshot.acted(&query)),
            Err(problem) => problem,
        };
        Ok(CommandAnswer {
            problem: Some(problem),
            ..acted
        })
    }

    fn stranded(&self) -> Option<Problem> {
        let why = match self.stranded.as_ref()? {
            Stranded::None => "none",
            Stranded::Failed(why) => why.as_str(),
        };
        let args = [("why", Arg::from(why))];
        Some(self.service.problem("no-storage", &args))
    }

    /// An answer to what is to be kept: why it is not, where nothing can be.
    fn stored<T: Serialize>(&self, answer: Result<T, Problem>) -> String {
        match (answer, self.stranded()) {
            (Err(_), Some(problem)) => to_json::<T>(Err(problem)),
            (answer, _) => to_json(answer),
        }
    }

    /// Whether the page is to ask for what was found or dropped.
    pub fn offers(&self) -> bool {
        self.service.has_pending_import()
    }

    /// A throw file the maker chose: laid beside the copy that is here.
    pub fn import(&mut self, name: &str, bytes: Vec<u8>) -> String {
        let found = import::read(&DiskPath::from(name), bytes);
        let now = self.service.now();
        let brought = self.service.import(found, now);
        self.stored(brought)
    }

    /// The same for one that was dropped on the page or handed to the app; the page asks for it.
    pub fn drop_in(&mut self, name: &str, bytes: Vec<u8>) {
        let found = import::read(&DiskPath::from(name), bytes);
        self.service.import_dropped(found, self.service.now());
    }

    /// A photo the maker chose, made small by the browser; none where that could not read it.
    pub fn keep_photo(&mut self, id: &str, name: &str, small: Option<Vec<u8>>) -> String {
        let taken = small.ok_or_else(|| StoreError::Photo {
            path: DiskPath::from(name),
            fault: PhotoFault::Kind,
        });
        let kept = self.service.keep_photo(id, taken, self.service.now());
        self.stored(kept)
    }

    /// A photo's bytes; none for anything that is not one.
    pub fn photo(&self, id: &str, photo: &str) -> Option<Vec<u8>> {
        self.service.photo(id, photo)
    }

    /// The files of something to be exported.
    ///
    /// # Errors
    /// The answer that says why not.
    pub fn export(&mut self, id: &str, export: &str) -> Result<Vec<ExportFile>, String> {
        let export: Export = serde_json::from_str(export).map_err(|why| why.to_string())?;
        let files = self.service.export(id, &export, self.service.now());
        files.map_err(|problem| to_json::<()>(Err(problem)))
    }
}

/// Search for layouts as a [`PageService`] ordered it (the answer to `order`); `report` receives what was
/// found so far. Returns once the search has ended, with the answer.
pub fn search(order: &str, host: Host, report: impl Fn(String) + Send + 'static) -> String {
    let order: Order = match serde_json::from_str(order) {
        Ok(order) => order,
        Err(why) => return why.to_string(),
    };
    // A service of its own, with a copy of this throw alone.
    let store = Store::on("Lapwork", Box::new(MemoryDisk::new()));
    let mut service = Service::new(store, host);
    let now = service.now();
    let ended = Arc::new(Mutex::new(None));
    let end = {
        let ended = Arc::clone(&ended);
        move |found: Result<Layouts, Problem>| {
            *ended.lock().unwrap_or_else(PoisonError::into_inner) = Some(found);
        }
    };
    let begun = service.set_prefs(order.prefs, now).and_then(|_| {
        let path = DiskPath::from("copy");
        let found = import::read(&path, order.record.into_bytes());
        let view = service.import(found, now)?;
        let taken = service.decide_import(&ImportChoice::Add, view.file, now)?;
        let id = taken.id.unwrap_or_default();
        let report = move |found: Layouts| report(to_json(Ok(found)));
        service.arrange(&id, order.wishes, order.seed, report, end, now)
    });
    let found = begun.and_then(|()| {
        let ended = ended.lock().unwrap_or_else(PoisonError::into_inner).take();
        ended.unwrap_or_else(|| Err(service.broke()))
    });
    to_json(found)
}

#[cfg(test)]
mod tests;
