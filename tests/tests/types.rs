//! The window's TypeScript types are made from the Rust ones, and must not drift.
//!
//! `LAPWORK_WRITE=1 cargo test --workspace --test types` writes the file anew.
//!
//! Only what the shell's commands take and give is listed here. Every type that is reached
//! from there is found by itself, so that a new screen, action or field adds no line.

use lapwork_core::show::{
    AgainView, CommandAnswer, DraftAfter, Export, Exported, GridWish, GridsView, Hello,
    ImportChoice, ImportView, Imported, Layouts, PlanDraft, PlanView, Prefs, PrintOrder, Printing,
    Query, Request, ShelfAnswer, ShelfCommand, ShelfView, View, ViewAnswer,
};
use lapwork_core::throw::wishes::Wishes;
use lapwork_core::words;
use lapwork_core::words::Problem;
use std::collections::BTreeMap;
use std::path::Path;
use ts_rs::{Config, TS, TypeVisitor};

/// The declarations of all types reached so far, by their names.
#[derive(Default)]
struct Reached {
    config: Config,
    declared: BTreeMap<String, String>,
}

impl TypeVisitor for Reached {
    fn visit<T: TS + 'static + ?Sized>(&mut self) {
        // Numbers, texts, lists and the like have no declaration of their own; what a list
        // is of is visited by itself.
        if T::output_path().is_none() {
            return;
        }
        let declaration = T::decl(&self.config);
        let name = T::ident(&self.config);
        if let Some(before) = self.declared.get(&name) {
            assert!(
                *before == declaration,
                "two types are called {name}: give one of them another name by #[ts(rename)]"
            );
            return;
        }
        self.declared.insert(name, declaration);
        T::visit_dependencies(self);
    }
}

fn declared() -> String {
    let mut reached = Reached::default();
    macro_rules! visit {
        ($($root:ty),* $(,)?) => { $(reached.visit::<$root>();)* };
    }
    visit!(
        CommandAnswer,
        AgainView,
        ImportView,
        Request,
        DraftAfter,
        GridWish,
        GridsView,
        Export,
        Exported,
        Hello,
        Layouts,
        ViewAnswer,
        Wishes,
        Query,
        PlanDraft,
        PlanView,
        Prefs,
        PrintOrder,
        Printing,
        Problem,
        ShelfView,
        ImportChoice,
        Imported,
        ShelfCommand,
        ShelfAnswer,
        View,
    );
    let mut out = String::from(
        "// Made from the Rust types by tests/tests/types.rs. Do not edit.\n\
         // Lengths are whole numbers of nanometres; the window only passes them on.\n\n",
    );
    for declaration in reached.declared.values() {
        out.push_str(&format!("export {declaration}\n\n"));
    }
    let keys = words::window_keys();
    let union: Vec<String> = keys.iter().map(|k| format!("  | \"{k}\"")).collect();
    out.push_str(&format!("export type WordKey =\n{};\n", union.join("\n")));
    out
}

#[test]
fn the_windows_types_are_the_cores() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../ui/src/lib/types.ts");
    let want = declared();
    if std::env::var_os("LAPWORK_WRITE").is_some() {
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(&path, &want).unwrap();
    }
    let have = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(
        have == want,
        "ui/src/lib/types.ts has drifted; run LAPWORK_WRITE=1 cargo test --workspace --test types"
    );
}
