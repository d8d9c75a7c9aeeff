//! Printing in a browser: the typesetter as a module of its own.
//!
//! The service's worker stays small and free: it makes a [`PrintJob`], and a worker of its own
//! loads this module, which reads the job and gives the PDF. That worker ends with its print, and
//! with it the memory that the print took. Stopping a print is ending the worker.

#[cfg(target_arch = "wasm32")]
pub mod browser;

use lapwork_core::cloth::photos::PhotoId;
use lapwork_service::paper::{self, PrintJob};
use lapwork_service::photos::{self, PaperPhoto};
use lapwork_sheet::{Options, Photos, PrintPhoto, Progress};

/// Print a job, given as JSON. `photo` gives the bytes kept of a photo, `report` receives the
/// progress.
///
/// # Errors
/// Why there is no PDF, in the words of the typesetter or of the reader of the job.
pub fn print(
    job: &str,
    photo: &dyn Fn(&PhotoId) -> Option<Vec<u8>>,
    report: &dyn Fn(Progress),
) -> Result<Vec<u8>, String> {
    let job: PrintJob = serde_json::from_str(job).map_err(|why| why.to_string())?;
    let sheet = job.sheet().map_err(|why| why.to_string())?;
    let mut all = Photos::new();
    for (name, side) in paper::photos(&sheet) {
        let found = photo(&name).and_then(|kept| photos::for_paper(&kept, side, job.order.black));
        if let Some(PaperPhoto {
            jpeg,
            width,
            height,
        }) = found
        {
            let printed = PrintPhoto {
                jpeg,
                width,
                height,
            };
            all.insert(name, printed);
        }
    }
    let made = lapwork_sheet::print_here(&sheet, all, Options::from(&job.order), report);
    made.map_err(|why| why.to_string())
}
