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
        show::Choice<ts_rs::Dummy>,
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
        show::Stage,
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
        show::WayRow,
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
        show::Hand,
        show::HandButton,
        show::HandSection,
        show::HandOnView,
        show::Handed,
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
        show::Look,
        show::View,
        show::Prefs,
        words::LanguageName,
        show::Theme,
        show::ShelfView,
        show::Hello,
        show::Tend,
        show::Tended,
        show::Deed,
        show::Take,
        show::TakeButton,
        show::CopyRow,
        show::ConflictRow,
        show::BringView,
        show::Acted,
        show::Taken,
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
