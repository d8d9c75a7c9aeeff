//! The worker of a browser: its files, its clock, its randomness, and what its script calls.
//!
//! Everything here runs on the worker's one thread. The browser's objects cannot leave it, so
//! they are kept beside the [`PageService`], which knows them by number.

use crate::calls::{PageService, Stranded, search};
use crate::pool::{Pool, Slots};
use crate::reader::Reader;
use js_sys::{Array, Date, Function, Uint8Array};
use lapwork_core::throw::Time;
use lapwork_service::host::{Clock, Host, Random, Runner};
use lapwork_service::store::Store;
use std::cell::RefCell;
use std::io;
use wasm_bindgen::JsCast as _;
use wasm_bindgen::prelude::*;
use web_sys::{
    DedicatedWorkerGlobalScope, DomException, FileSystemReadWriteOptions,
    FileSystemSyncAccessHandle,
};

/// Where the store lies on its disk; shown as the place where throws are kept.
const FOLDER: &str = "Lapwork";

thread_local! {
    static SERVICE: RefCell<Option<PageService>> = const { RefCell::new(None) };
    static POOL: RefCell<Option<Pool>> = const { RefCell::new(None) };
    static HANDLES: RefCell<Vec<FileSystemSyncAccessHandle>> = const { RefCell::new(Vec::new()) };
    static READER: RefCell<Reader> = RefCell::default();
    static REPORT: RefCell<Option<Function>> = const { RefCell::new(None) };
}

/// What the browser said.
fn said(why: &JsValue) -> io::Error {
    let Some(why) = why.dyn_ref::<DomException>() else {
        return io::Error::other(format!("{why:?}"));
    };
    let kind = match why.name().as_str() {
        "QuotaExceededError" => io::ErrorKind::QuotaExceeded,
        "NotAllowedError" | "SecurityError" => io::ErrorKind::PermissionDenied,
        _ => io::ErrorKind::Other,
    };
    io::Error::new(kind, why.message())
}

/// Numbers of bytes, which the browser gives as floats, exact up to 2⁵³.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "whole, not below 0"
)]
fn whole(number: f64) -> u64 {
    number.max(0.0) as u64
}

#[expect(clippy::cast_precision_loss, reason = "no file comes near 2⁵³ bytes")]
fn float(number: u64) -> f64 {
    number as f64
}

/// The files that were opened for this worker.
#[derive(Debug)]
struct Handles;

impl Handles {
    fn with<T>(
        slot: usize,
        ask: impl FnOnce(&FileSystemSyncAccessHandle) -> Result<T, JsValue>,
    ) -> io::Result<T> {
        HANDLES.with_borrow(|handles| {
            let handle = handles.get(slot).ok_or(io::ErrorKind::NotFound)?;
            ask(handle).map_err(|why| said(&why))
        })
    }
}

fn at(at: u64) -> FileSystemReadWriteOptions {
    let options = FileSystemReadWriteOptions::new();
    options.set_at(float(at));
    options
}

impl Slots for Handles {
    fn count(&self) -> usize {
        HANDLES.with_borrow(Vec::len)
    }

    fn length(&self, slot: usize) -> io::Result<u64> {
        Handles::with(slot, |handle| handle.get_size().map(whole))
    }

    fn read(&self, slot: usize, from: u64, bytes: &mut [u8]) -> io::Result<usize> {
        let read = Handles::with(slot, |handle| {
            handle.read_with_u8_array_and_options(bytes, &at(from))
        });
        usize::try_from(whole(read?)).map_err(io::Error::other)
    }

    fn write(&self, slot: usize, to: u64, bytes: &[u8]) -> io::Result<usize> {
        let written = Handles::with(slot, |handle| {
            handle.write_with_u8_array_and_options(bytes, &at(to))
        });
        usize::try_from(whole(written?)).map_err(io::Error::other)
    }

    fn cut(&self, slot: usize, length: u64) -> io::Result<()> {
        Handles::with(slot, |handle| handle.truncate_with_f64(float(length)))
    }

    fn sync(&self, slot: usize) -> io::Result<()> {
        Handles::with(slot, FileSystemSyncAccessHandle::flush)
    }
}

/// What another page's files held when they were read; nothing can be written.
#[derive(Debug, Default)]
struct Copies(Vec<Vec<u8>>);

impl Slots for Copies {
    fn count(&self) -> usize {
        self.0.len()
    }

    fn length(&self, slot: usize) -> io::Result<u64> {
        Ok(self.0.get(slot).map_or(0, |bytes| bytes.len() as u64))
    }

    fn read(&self, slot: usize, from: u64, bytes: &mut [u8]) -> io::Result<usize> {
        let from = usize::try_from(from).map_err(io::Error::other)?;
        let there = self.0.get(slot).and_then(|all| all.get(from..));
        let there = there.unwrap_or_default();
        let read = there.len().min(bytes.len());
        bytes[..read].copy_from_slice(&there[..read]);
        Ok(read)
    }

    fn write(&self, _: usize, _: u64, _: &[u8]) -> io::Result<usize> {
        Err(io::ErrorKind::ReadOnlyFilesystem.into())
    }

    fn cut(&self, _: usize, _: u64) -> io::Result<()> {
        Err(io::ErrorKind::ReadOnlyFilesystem.into())
    }

    fn sync(&self, _: usize) -> io::Result<()> {
        Err(io::ErrorKind::ReadOnlyFilesystem.into())
    }
}

#[derive(Debug)]
struct WorkerClock;

impl Clock for WorkerClock {
    #[expect(clippy::cast_possible_truncation, reason = "milliseconds since 1970")]
    fn now(&self) -> Time {
        Date::now() as Time
    }
}

#[derive(Debug)]
struct WorkerRandom;

impl Random for WorkerRandom {
    fn fill(&mut self, bytes: &mut [u8]) -> io::Result<()> {
        let worker: DedicatedWorkerGlobalScope = js_sys::global().unchecked_into();
        let crypto = worker.crypto().map_err(|why| said(&why))?;
        let filled = crypto.get_random_values_with_u8_array(bytes);
        filled.map(|_| ()).map_err(|why| said(&why))
    }
}

/// A worker has one thread: what takes long gets a worker of its own.
#[derive(Debug)]
struct AtOnce;

impl Runner for AtOnce {
    fn run(&self, work: Box<dyn FnOnce() + Send>) {
        work();
    }
}

fn host() -> Host {
    Host {
        clock: Box::new(WorkerClock),
        random: Box::new(WorkerRandom),
        runner: Box::new(AtOnce),
    }
}

/// A file was opened for this worker; they come in the order of their numbers.
#[wasm_bindgen(js_name = addFile)]
pub fn add_file(handle: FileSystemSyncAccessHandle) {
    HANDLES.with_borrow_mut(|handles| handles.push(handle));
    POOL.with_borrow(|pool| {
        if let Some(pool) = pool {
            // A file that cannot be emptied is not used.
            let _ = pool.grow();
        }
    });
}

/// How many new files there is room for.
#[wasm_bindgen(js_name = freeFiles)]
pub fn free_files() -> usize {
    POOL.with_borrow(|pool| pool.as_ref().map_or(usize::MAX, Pool::free))
}

/// Begin to serve from the files that were opened, in one of these `languages`.
#[wasm_bindgen]
pub fn open(languages: &str) {
    match Pool::open(Box::new(Handles)) {
        Ok(pool) => serve(pool, languages, None),
        Err(why) => strand(languages, Some(why.to_string())),
    }
}

/// Begin to show what the files of another page held.
#[wasm_bindgen(js_name = readOnly)]
pub fn read_only(languages: &str, files: &Array) {
    let files = files.iter();
    let files = files.map(|bytes| bytes.unchecked_into::<Uint8Array>().to_vec());
    match Pool::read_only(Box::new(Copies(files.collect()))) {
        Ok(pool) => serve(pool, languages, None),
        Err(why) => strand(languages, Some(why.to_string())),
    }
}

/// Begin without any files, and say why: nothing where the browser has no such storage.
#[wasm_bindgen]
pub fn strand(languages: &str, why: Option<String>) {
    let stranded = why.map_or(Stranded::None, Stranded::Failed);
    // Nothing lies in no files.
    if let Ok(pool) = Pool::read_only(Box::new(Copies::default())) {
        serve(pool, languages, Some(stranded));
    }
}

fn serve(pool: Pool, languages: &str, stranded: Option<Stranded>) {
    let store = Store::on(FOLDER, Box::new(pool.clone()));
    let service = PageService::new(store, host(), languages, stranded);
    SERVICE.set(Some(service));
    POOL.set(Some(pool));
}

fn with<T>(ask: impl FnOnce(&mut PageService) -> T) -> Result<T, JsError> {
    SERVICE
        .with_borrow_mut(|service| service.as_mut().map(ask))
        .ok_or_else(|| JsError::new("nothing is open"))
}

/// Answer a call of the page.
///
/// # Errors
/// That the page asked for something there is not.
#[wasm_bindgen]
pub fn ask(command: &str, given: &str) -> Result<String, JsError> {
    with(|service| service.answer(command, given))?.map_err(|why| JsError::new(&why))
}

/// There is a reader from now on, which has nothing yet; or there is none.
///
/// # Errors
/// That nothing is open.
#[wasm_bindgen(js_name = setReader)]
pub fn set_reader(is_there: bool) -> Result<(), JsError> {
    with(|service| service.set_reader(is_there))
}

/// What the last call has left to the reader, whose answer is then the one to give.
///
/// # Errors
/// That nothing is open.
#[wasm_bindgen]
pub fn reading() -> Result<Option<String>, JsError> {
    with(PageService::reading)
}

/// As the reader, make a screen that a service has left to it.
///
/// # Errors
/// That what was ordered does not follow on what was ordered before.
#[wasm_bindgen]
pub fn read(reading: &str) -> Result<String, JsError> {
    let read = READER.with_borrow_mut(|reader| reader.read(reading));
    read.map_err(|why| JsError::new(&why))
}

/// Whether the page is to ask for what was found or dropped.
///
/// # Errors
/// That nothing is open.
#[wasm_bindgen]
pub fn offers() -> Result<bool, JsError> {
    with(|service| service.offers())
}

/// A throw file the maker chose.
///
/// # Errors
/// That nothing is open.
#[wasm_bindgen(js_name = importFile)]
pub fn import(name: &str, bytes: Vec<u8>) -> Result<String, JsError> {
    with(|service| service.import(name, bytes))
}

/// A throw file that was dropped on the page or handed to the app.
///
/// # Errors
/// That nothing is open.
#[wasm_bindgen(js_name = dropIn)]
pub fn drop_in(name: &str, bytes: Vec<u8>) -> Result<(), JsError> {
    with(|service| service.drop_in(name, bytes))
}

/// A photo the maker chose, made small; none where it could not be read.
///
/// # Errors
/// That nothing is open.
#[wasm_bindgen(js_name = keepPhoto)]
pub fn keep_photo(id: &str, name: &str, small: Option<Vec<u8>>) -> Result<String, JsError> {
    with(|service| service.keep_photo(id, name, small))
}

/// A photo's bytes; none for anything that is not one.
///
/// # Errors
/// That nothing is open.
#[wasm_bindgen]
pub fn photo(id: &str, photo: &str) -> Result<Option<Vec<u8>>, JsError> {
    with(|service| service.photo(id, photo))
}

/// The files of something to be exported, name and bytes in turn; an answer to give where that
/// is all there is.
///
/// # Errors
/// That nothing is open.
#[wasm_bindgen(js_name = exportFiles)]
pub fn export(id: &str, export: &str) -> Result<JsValue, JsError> {
    Ok(match with(|service| service.export(id, export))? {
        Ok(files) => {
            let all = Array::new();
            for file in files {
                all.push(&JsValue::from(file.name));
                all.push(&Uint8Array::from(file.bytes.as_slice()));
            }
            all.into()
        }
        Err(answer) => JsValue::from(answer),
    })
}

/// Search for layouts as was ordered; `report` receives what was found so far.
#[wasm_bindgen(js_name = search)]
pub fn search_layouts(order: &str, report: Function) -> String {
    REPORT.set(Some(report));
    search(order, host(), |found| {
        REPORT.with_borrow(|report| {
            if let Some(report) = report {
                // A page that is gone needs no report.
                let _ = report.call1(&JsValue::NULL, &JsValue::from(found));
            }
        });
    })
}
