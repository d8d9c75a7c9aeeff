//! What the script of the printing worker calls.

use js_sys::{Array, Function, Uint8Array};
use lapwork_sheet::Progress;
use std::collections::BTreeMap;
use wasm_bindgen::prelude::*;

/// Print a job; `photos` are names and bytes in turn. `report` receives how many of how many steps
/// are done.
///
/// # Errors
/// Why there is no PDF.
#[wasm_bindgen]
pub fn print(job: &str, photos: &Array, report: &Function) -> Result<Vec<u8>, JsError> {
    let mut kept: BTreeMap<String, Vec<u8>> = BTreeMap::new();
    let all: Vec<JsValue> = photos.iter().collect();
    for pair in all.chunks_exact(2) {
        if let Some(name) = pair[0].as_string() {
            kept.insert(name, Uint8Array::new(&pair[1]).to_vec());
        }
    }
    let photo = |name: &lapwork_core::cloth::photos::PhotoId| kept.get(name.as_str()).cloned();
    let tell = |now: Progress| {
        let (done, all) = (JsValue::from(now.done()), JsValue::from(Progress::ALL));
        // A page that is gone needs no report.
        let _ = report.call2(&JsValue::NULL, &done, &all);
    };
    crate::print(job, &photo, &tell).map_err(|why| JsError::new(&why))
}
