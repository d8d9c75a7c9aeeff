//! The window's TypeScript types are made from the Rust ones, and must not drift.
//!
//! `LAPWORK_WRITE=1 cargo test --workspace --test types` writes the file anew.

use lapwork_core::cloth::{fabric, garments, pile, weight};
use lapwork_core::measure::outline;
use lapwork_core::plan::{assembly, scraps};
use lapwork_core::throw::{tasks, wishes};
use lapwork_core::{command, measure, plan, show, throw, words};
use std::path::Path;
use ts_rs::{Config, TS};

fn declared() -> String {
    let mut out = String::from(
        "// Made from the Rust types by tests/tests/types.rs. Do not edit.\n\
         // Lengths are whole numbers of nanometres; the window only passes them on.\n\n",
    );
    let cfg = Config::default();
    macro_rules! declare {
        ($($t:ty),* $(,)?) => {
            $(out.push_str(&format!("export {}\n\n", <$t as TS>::decl(&cfg)));)*
        };
    }
    declare!(
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
        show::Choice<ts_rs::Dummy>,
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
        show::Figure,
        words::Problem,
        show::Button,
        show::Picture,
        show::Mark,
        show::Ink,
        show::Head,
        show::ShelfRow,
        show::Offer,
        show::StationTab,
        show::CautionNote,
        show::Card,
        show::FacesAsk,
        show::WorkView,
        show::Swatch,
        show::FaceCell,
        show::SewnLine,
        show::Clash,
        show::WishLine,
        show::WishesView,
        show::Share,
        show::LayoutCard,
        show::Layouts,
        show::Arrange,
        show::FloorCell,
        show::FloorView,
        show::CoveringGroup,
        show::CoveringLine,
        show::CoveringView,
        show::FacesView,
        show::SquareStage,
        show::BenchCell,
        show::StageKey,
        show::Tally,
        show::BenchView,
        show::PieceCard,
        show::PlanDraft,
        show::StitchKind,
        show::FieldProblem,
        show::PlanView,
        show::CompareRow,
        show::RemedyRow,
        show::OpenFirst,
        show::InkKey,
        show::PieceChoice,
        show::MishapChoice,
        show::OffView,
        show::HoldRow,
        show::HoldView,
        show::WholeView,
        show::HeapPiece,
        show::HeapRow,
        show::PileView,
        show::StationTyped,
        show::ZoneTyped,
        show::PieceTyped,
        show::Drag,
        show::Handle,
        show::PileCutView,
        show::GatherRow,
        show::GatherView,
        show::ScrapTyped,
        show::LapColumn,
        show::ScrapRow,
        show::ScrapsView,
        show::GridWish,
        show::GridRow,
        show::GridsView,
        show::MeasureView,
        show::OutlineTyped,
        show::TrimRow,
        show::TrimView,
        show::HistoryRow,
        show::HistoryView,
        show::Export,
        show::ExportButton,
        show::ExportSection,
        show::ExportView,
        show::Exported,
        show::PrintPaper,
        show::PrintOrder,
        show::Printing,
        show::LessonRow,
        show::Lessons,
        show::AgainView,
        show::DraftAfter,
        show::StorySort,
        show::StoryItem,
        show::StoryDay,
        show::Story,
        show::StoryView,
        show::Query,
        show::View,
        show::Prefs,
        words::LanguageName,
        show::Theme,
        show::ShelfView,
        show::Hello,
        show::ShelfCommand,
        show::ShelfAnswer,
        show::Request,
        show::ImportChoice,
        show::ImportButton,
        show::CopyRow,
        show::ConflictRow,
        show::ImportView,
        show::CommandAnswer,
        show::Imported,
    );
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
