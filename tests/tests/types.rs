//! The window's TypeScript types are made from the Rust ones, and must not drift.
//!
//! `LAPWORK_WRITE=1 cargo test --workspace --test types` writes the file anew.

use lapwork_core::cloth::{fabric, garments, pile, weight};
use lapwork_core::measure::outline;
use lapwork_core::plan::{assembly, scraps};
use lapwork_core::throw::{tasks, wishes};
use lapwork_core::{command, measure, plan, throw, view, words};
use std::path::Path;
use ts_rs::{Config, TS};

fn declared() -> String {
    let mut out = String::from(
        "// Made from the Rust types by tests/tests/types.rs. Do not edit.\n\
         // Lengths are whole numbers of nanometres, weights kilograms per square metre, thicknesses\n\
         // metres; the window only passes them on.\n\n",
    );
    let cfg = Config::default();
    macro_rules! declare {
        ($($t:ty),* $(,)?) => {
            $(out.push_str(&format!("export {}\n\n", <$t as TS>::decl(&cfg)));)*
        };
    }
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
        garments::Station,
        garments::ZoneKind,
        garments::Zone,
        garments::Part,
        garments::Piece,
        garments::GarmentKind,
        garments::GarmentSize,
        pile::Use,
        scraps::Verdict,
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
        command::Action,
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
        view::WayRow,
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
        view::Hand,
        view::HandButton,
        view::HandSection,
        view::HandOnView,
        view::Handed,
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
        view::Look,
        view::View,
        view::Prefs,
        words::LanguageName,
        view::Theme,
        view::ShelfView,
        view::Hello,
        view::Tend,
        view::Tended,
        view::Deed,
        view::Take,
        view::TakeButton,
        view::CopyRow,
        view::ConflictRow,
        view::BringView,
        view::Acted,
        view::Taken,
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
