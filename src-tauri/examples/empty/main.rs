//! A window with nothing in it, built as Lapwork is: what its start is held against.
//!
//! `cargo bench --workspace --profile dev --bench window` opens it.

fn main() {
    let context = tauri::generate_context!("examples/empty/tauri.conf.json");
    tauri::Builder::default()
        .run(context)
        .expect("a screen to open a window on");
}
