//! What the window receives at its start, and the settings.

use crate::cloth::fabric::{Denim, Print};
use crate::cloth::garments::{GarmentKind, GarmentSize};
use crate::measure::{Ruler, System};
use crate::show::context::Context;
use crate::show::parts::Choice;
use crate::show::picture::{Tile, TileMarks};
use crate::show::pile::{self, ClothOffer};
use crate::show::plan::PlanDraft;
use crate::show::shelf::ShelfView;
use crate::types::TS;
use crate::words::{LanguageName, Problem};
use serde::{Deserialize, Serialize};

/// How the window looks and reads.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Prefs {
    /// Inches or metric, and how fine.
    pub ruler: Ruler,
    /// Size of text in per cent: 100 to 200.
    pub text: u16,
    /// Dark, light, or as the device has it.
    pub theme: Theme,
    /// The code of the language; none for the device's own where it is spoken here.
    #[serde(default)]
    pub language: Option<String>,
    /// Neither sound nor vibration tells that something is cool.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[ts(optional, as = "Option<bool>")]
    pub quiet: bool,
}

impl Prefs {
    /// Those to begin with, in a system of measures.
    pub fn begun_in(system: System) -> Prefs {
        let ruler = Ruler {
            system,
            ..Ruler::default()
        };
        Prefs {
            ruler,
            ..Prefs::default()
        }
    }
}

impl Default for Prefs {
    fn default() -> Self {
        Prefs {
            ruler: Ruler::default(),
            text: 100,
            theme: Theme::Auto,
            language: None,
            quiet: false,
        }
    }
}

/// Dark or light.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Theme {
    /// As the device has it.
    Auto,
    /// Dark on light.
    Light,
    /// Light on dark.
    Dark,
}

/// Jeans and cloth to choose from before there is a throw.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct StartOffers {
    /// Kinds of jeans.
    pub jeans: Vec<Choice<GarmentKind>>,
    /// Their sizes.
    pub sizes: Vec<Choice<GarmentSize>>,
    /// Cloth as it is sold.
    pub cloths: Vec<ClothOffer>,
}

impl StartOffers {
    /// In the words and the system of a context.
    pub fn of(context: Context<'_>) -> StartOffers {
        let mut jeans = pile::kinds(context);
        jeans.retain(|kind| {
            use GarmentKind as K;
            matches!(kind.value, K::MensJeans | K::WomensJeans | K::ChildsJeans)
        });
        StartOffers {
            jeans,
            sizes: pile::sizes(context),
            cloths: pile::cloths(context),
        }
    }
}

/// What the window is given when it opens.
#[derive(Debug, Clone, PartialEq, Serialize, TS)]
pub struct Hello {
    /// The window's own words, by key.
    #[ts(type = "Record<WordKey, string>")]
    pub words: std::collections::BTreeMap<String, String>,
    /// Preferences.
    pub prefs: Prefs,
    /// The code of the language that is spoken.
    pub language: String,
    /// Its decimal sign.
    pub point: String,
    /// All languages, to choose from.
    pub languages: Vec<LanguageName>,
    /// The shelf.
    pub shelf: ShelfView,
    /// A plan to begin with.
    pub draft: PlanDraft,
    /// The fabrics a new throw begins with.
    pub prints: Vec<Print>,
    /// The denims a new throw begins with.
    pub denims: Vec<Denim>,
    /// What she may have, to be said before the first plan.
    pub starts: StartOffers,
    /// The textures of cloth and the hatchings, for every picture.
    pub tiles: Vec<TileMarks>,
    /// The textures of denims in the order of a list, over and over.
    pub twills: Vec<Tile>,
    /// Version of the app.
    pub version: String,
    /// Where the throws are kept.
    pub folder: String,
    /// What went wrong at the start, if anything.
    pub problem: Option<Problem>,
}
