//! The window's TypeScript types are made from the Rust ones, and must not drift.
//!
//! `LAPWORK_WRITE=1 cargo test --workspace --test types` writes the file anew.
//!
//! Only what the shell's commands take and give is listed here. Every type that is reached
//! from there is found by itself, so that a new screen, action or field adds no line.

use lapwork_core::show::{
    AgainView, Arrange, CommandAnswer, DraftAfter, Export, Exported, GridWish, GridsView, Hello,
    ImportChoice, ImportView, Imported, Layouts, PlanDraft, PlanView, Prefs, PrintOrder, Printing,
    Query, Request, ShelfAnswer, ShelfCommand, ShelfView, View,
};
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
        Arrange,
        ImportView,
        Request,
        DraftAfter,
        GridWish,
        GridsView,
        Export,
        Exported,
        Hello,
        Layouts,
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
         // Lengths are whole numbers of nanometres, weights kilograms per square metre, thicknesses\n\
         // metres; the window only passes them on.\n\n",
    );
    for declaration in reached.declared.values() {
        out.push_str(&format!("export {declaration}\n\n"));
    }
<<<<<<< HEAD
=======
    declare!(
        measure::Length,
        measure::Count,
        measure::System,
        measure::Fraction,
        measure::MetricUnit,
        measure::Ruler,
        plan::Joining,
        plan::Stitch,
        plan::JoinOrder,
        plan::Binding,
        plan::Plan,
        assembly::Rect,
        assembly::Kind,
        fabric::Face,
        fabric::Texture,
        fabric::Print,
        fabric::Denim,
        tasks::Task,
        tasks::Station,
        tasks::Caution,
        throw::Mishap,
        throw::Item,
        weight::Weight,
        weight::Thickness,
        weight::Cloth,
        garments::OutlineStation,
        garments::ZoneKind,
        garments::Zone,
        garments::GarmentPart,
        garments::Piece,
        garments::GarmentKind,
        garments::GarmentSize,
        pile::Use,
        scraps::ScrapVerdict,
        scraps::Scrap,
        view::Choice<ts_rs::Dummy>,
        outline::Sides,
        outline::Measures,
        wishes::Apart,
        wishes::Pattern,
        wishes::Grain,
        wishes::Wishes,
        wishes::Layout,
        fabric::Cover,
        command::Command,
        words::Shown,
        view::Figure,
        words::Problem,
        view::Button,
        view::Picture,
        view::Mark,
        view::Ink,
        view::Head,
        view::ShelfRow,
        view::Offer,
        view::StationTab,
        view::CautionNote,
        view::Card,
        view::FacesAsk,
        view::WorkView,
        view::Swatch,
        view::FaceCell,
        view::SewnLine,
        view::Clash,
        view::WishLine,
        view::WishesView,
        view::Share,
        view::LayoutCard,
        view::Layouts,
        view::Arrange,
        view::FloorCell,
        view::FloorView,
        view::CoveringGroup,
        view::CoveringLine,
        view::CoveringView,
        view::FacesView,
        view::Stage,
        view::BenchCell,
        view::StageKey,
        view::Tally,
        view::BenchView,
        view::PieceCard,
        view::PlanDraft,
        view::StitchKind,
        view::FieldProblem,
        view::PlanView,
        view::CompareRow,
        view::RemedyRow,
        view::OpenFirst,
        view::InkKey,
        view::PieceChoice,
        view::MishapChoice,
        view::OffView,
        view::HoldRow,
        view::HoldView,
        view::WholeView,
        view::HeapPiece,
        view::HeapRow,
        view::PileView,
        view::StationTyped,
        view::ZoneTyped,
        view::PieceTyped,
        view::Drag,
        view::Handle,
        view::PileCutView,
        view::GatherRow,
        view::GatherView,
        view::ScrapTyped,
        view::LapColumn,
        view::ScrapRow,
        view::ScrapsView,
        view::GridWish,
        view::GridRow,
        view::GridsView,
        view::MeasureView,
        view::OutlineTyped,
        view::TrimRow,
        view::TrimView,
        view::HistoryRow,
        view::HistoryView,
        view::Export,
        view::ExportButton,
        view::ExportSection,
        view::ExportView,
        view::Exported,
        view::PrintPaper,
        view::PrintOrder,
        view::Printing,
        view::LessonRow,
        view::Lessons,
        view::AgainView,
        view::DraftAfter,
        view::StorySort,
        view::StoryItem,
        view::StoryDay,
        view::Story,
        view::StoryView,
        view::Query,
        view::View,
        view::Prefs,
        words::LanguageName,
        view::Theme,
        view::ShelfView,
        view::Hello,
        view::ShelfCommand,
        view::ShelfAnswer,
        view::Request,
        view::ImportChoice,
        view::ImportButton,
        view::CopyRow,
        view::ConflictRow,
        view::ImportView,
        view::CommandAnswer,
        view::Imported,
    );
>>>>>>> b8472e50ec5befafd9f28d28329e00f49d0ea617
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
