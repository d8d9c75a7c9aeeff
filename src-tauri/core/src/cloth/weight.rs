//! How heavy and how thick cloth is, and what the finished throw will weigh when it goes into
//! the washer.
//!
//! # Formulas
//!
//! * 1 oz (avoirdupois) = 28.349523125 g and 1 yd = 0.9144 m, exactly (NIST Handbook 44,
//!   Appendix C; SP 811, Appendix B), so 1 oz/yd² = 28.349523125 / 0.9144² = 33.9057 g/m².
//! * mass of a throw = denim area × denim + fabric area × fabric, where a square counts
//!   with its whole area, so that laps are counted as often as cloth lies there; what
//!   squaring up takes off fours and pairs is subtracted, of the fabric in proportion; the
//!   binding is a strip of denim as long as the plan asks, joins and tail with it.
//!   (Plain arithmetic.)
//!
//! Limits: thread, glue and fray are left out; they are a few hundredths at most (our
//! judgement). Change of size in washing is in [`crate::fitting::reconcile`].
//!
//! The household washer is taken to hold 7 kg of dry cotton, and a bulky piece to wash
//! well while it is no more than two thirds of that (common practice, no source); the
//! machine's manual decides.
//!
//! ```
//! use lapwork_core::cloth::weight::{in_gsm, ounces};
//!
//! // Denim of 12 oz/yd² is 407 g/m².
//! assert_eq!(in_gsm(ounces(12.0)).round(), 407.0);
//! ```

use crate::measure::limits::{MOST, OutOfBounds};
use crate::measure::{Area, System, square_metres};
use crate::plan::Plan;
use crate::types::TS;
use serde::{Deserialize, Serialize};
use std::ops::{Add, Mul};
use thiserror::Error;
use uom::si::areal_mass_density::{gram_per_square_meter, kilogram_per_square_meter};
use uom::si::f64::ArealMassDensity;
use uom::si::length::{meter, millimeter};
use uom::si::mass::kilogram;

/// A mass, floating point.
pub type Mass = uom::si::f64::Mass;

/// A mass per area, floating point; in JSON a number of kilograms per square metre, read
/// only up to [`MOST`].
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize, TS)]
#[serde(try_from = "f64", into = "f64")]
#[ts(type = "number")]
pub struct Weight(ArealMassDensity);

/// A thickness, floating point; in JSON a number of metres, read only up to [`MOST`].
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize, TS)]
#[serde(try_from = "f64", into = "f64")]
#[ts(type = "number")]
pub struct Thickness(uom::si::f64::Length);

impl TryFrom<f64> for Weight {
    type Error = OutOfBounds;

    fn try_from(figure: f64) -> Result<Weight, OutOfBounds> {
        match figure.abs() <= MOST {
            true => Ok(Weight(ArealMassDensity::new::<kilogram_per_square_meter>(
                figure,
            ))),
            false => Err(OutOfBounds::Weight),
        }
    }
}

impl From<Weight> for f64 {
    fn from(weight: Weight) -> f64 {
        weight.0.get::<kilogram_per_square_meter>()
    }
}

impl TryFrom<f64> for Thickness {
    type Error = OutOfBounds;

    fn try_from(figure: f64) -> Result<Thickness, OutOfBounds> {
        match figure.abs() <= MOST {
            true => Ok(Thickness(uom::si::f64::Length::new::<meter>(figure))),
            false => Err(OutOfBounds::Thickness),
        }
    }
}

impl From<Thickness> for f64 {
    fn from(thickness: Thickness) -> f64 {
        thickness.0.get::<meter>()
    }
}

impl Mul<Weight> for Area {
    type Output = Mass;
    fn mul(self, weight: Weight) -> Mass {
        self * weight.0
    }
}

impl Add for Thickness {
    type Output = Thickness;
    fn add(self, other: Thickness) -> Thickness {
        Thickness(self.0 + other.0)
    }
}

impl Mul<f64> for Thickness {
    type Output = Thickness;
    fn mul(self, times: f64) -> Thickness {
        Thickness(self.0 * times)
    }
}

/// Grams in an ounce avoirdupois, exactly (NIST Handbook 44, Appendix C).
pub const G_PER_OZ: f64 = 28.349_523_125;
/// Metres in a yard, exactly (NIST Handbook 44, Appendix C).
pub const M_PER_YD: f64 = 0.9144;
/// What a household washer holds, in kilograms of dry cotton (common practice, no source).
pub const WASHER_KG: f64 = 7.0;
/// The share of a load up to which a bulky piece washes well (common practice, no source).
pub const ROOMY: f64 = 2.0 / 3.0;

/// Grams per square metre in an ounce per square yard.
pub fn gsm_per_ounce() -> f64 {
    G_PER_OZ / (M_PER_YD * M_PER_YD)
}

/// So many grams per square metre.
pub fn gsm(grams: f64) -> Weight {
    Weight(ArealMassDensity::new::<gram_per_square_meter>(grams))
}

/// So many ounces per square yard.
pub fn ounces(oz: f64) -> Weight {
    gsm(oz * gsm_per_ounce())
}

/// In grams per square metre.
pub fn in_gsm(weight: Weight) -> f64 {
    weight.0.get::<gram_per_square_meter>()
}

/// In ounces per square yard.
pub fn in_ounces(weight: Weight) -> f64 {
    in_gsm(weight) / gsm_per_ounce()
}

/// So many kilograms.
pub fn kilograms(kg: f64) -> Mass {
    Mass::new::<kilogram>(kg)
}

/// In kilograms.
pub fn in_kilograms(mass: Mass) -> f64 {
    mass.get::<kilogram>()
}

/// So many millimetres thick.
pub fn thick(mm: f64) -> Thickness {
    Thickness(uom::si::f64::Length::new::<millimeter>(mm))
}

/// A thickness in millimetres.
pub fn in_mm_thick(thickness: Thickness) -> f64 {
    thickness.0.get::<millimeter>()
}

/// What is known of one cloth.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, TS)]
pub struct Cloth {
    /// Mass per area, in kilograms per square metre when stored.
    pub weight: Weight,
    /// Thickness of one layer, in metres when stored.
    pub thickness: Thickness,
    /// It stretches (elastane).
    pub stretch: bool,
    /// It was washed before, and has shrunk what it will.
    pub washed: bool,
}

impl Cloth {
    /// Denim of 14 oz, 0.95 mm, worn and washed (from memory; weigh and measure yours).
    pub fn denim() -> Cloth {
        Cloth {
            weight: ounces(14.0),
            thickness: thick(0.95),
            stretch: false,
            washed: true,
        }
    }

    /// Quilting cotton of 145 g/m², 0.28 mm, unwashed (from memory; weigh and measure yours).
    pub fn cotton() -> Cloth {
        Cloth {
            weight: gsm(145.0),
            thickness: thick(0.28),
            stretch: false,
            washed: false,
        }
    }

    /// Whether the figures can be: 10 to 2000 g/m² and 0.01 to 20 mm.
    ///
    /// # Errors
    /// A [`ClothFault`] naming the figure.
    pub fn check(&self) -> Result<(), ClothFault> {
        if !(10.0..=2000.0).contains(&in_gsm(self.weight)) {
            return Err(ClothFault::Weight);
        }
        if !(0.01..=20.0).contains(&in_mm_thick(self.thickness)) {
            return Err(ClothFault::Thickness);
        }
        Ok(())
    }
}

/// A weight as people write it: `14 oz`, `14 oz/yd²`, `475 g/m²`, `475 g`, `475 gsm`; a
/// bare number takes the system's own. `None` where it is not one.
pub fn parse_weight(typed: &str, system: System) -> Option<Weight> {
    let text: String = typed.trim().to_lowercase().replace(',', ".");
    let split = text
        .find(|c: char| !(c.is_ascii_digit() || c == '.'))
        .unwrap_or(text.len());
    let number: f64 = text[..split].parse().ok()?;
    let unit: String = text[split..]
        .chars()
        .filter(|c| !c.is_whitespace())
        .collect();
    let weight = match (unit.as_str(), system) {
        ("", System::Inch) | ("oz" | "oz/yd²" | "oz/yd2" | "oz/sqyd", _) => ounces(number),
        ("", System::Metric) | ("g" | "g/m²" | "g/m2" | "gsm", _) => gsm(number),
        _ => return None,
    };
    number.is_finite().then_some(weight)
}

/// A figure of a cloth that cannot be.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum ClothFault {
    /// Mass per area outside 10 to 2000 g/m².
    #[error("the weight is not between 10 and 2000 g/m²")]
    Weight,
    /// Thickness outside 0.01 to 20 mm.
    #[error("the thickness is not between 0.01 and 20 mm")]
    Thickness,
}

/// The cloth in a throw, every layer counted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClothAmount {
    /// Denim of the squares.
    pub denim: Area,
    /// Fabric of the covers.
    pub fabric: Area,
    /// Denim of the binding.
    pub binding: Area,
}

/// The cloth in the finished throw, `covers` squares of it faced with fabric (a square
/// with fabric on both faces counts twice).
pub fn amount(plan: &Plan, covers: u32) -> ClothAmount {
    let (across, down) = (f64::from(plan.across / 2), f64::from(plan.down / 2));
    let fours = across * down;
    // Beside an odd column or row lie pairs, trimmed along the one side that has two squares.
    let pairs = across * f64::from(plan.down % 2) + down * f64::from(plan.across % 2);
    let square = square_metres(plan.side, plan.side);
    let whole = square * f64::from(plan.squares());
    let (four, trimmed) = (plan.natural_four(), plan.target());
    let off_fours = (square_metres(four, four) - square_metres(trimmed, trimmed)) * fours;
    let off = off_fours + square_metres(four - trimmed, plan.side) * pairs;
    // A trim above the natural size stretches the cloth and takes nothing off.
    let off = if off.value > 0.0 { off } else { off * 0.0 };
    let share = f64::from(covers) / f64::from(plan.squares().max(1));
    let (width, height) = plan.finished();
    let need = plan.binding_for(width, height);
    let joins = plan.take() * i64::from(need.joins);
    ClothAmount {
        denim: whole - off,
        fabric: square * f64::from(covers) - off * share,
        binding: square_metres(plan.binding.strip, need.length + joins),
    }
}

/// What the finished throw weighs, dry.
pub fn mass(plan: &Plan, covers: u32, denim: &Cloth, fabric: &Cloth) -> Mass {
    let amount = amount(plan, covers);
    (amount.denim + amount.binding) * denim.weight + amount.fabric * fabric.weight
}

/// How a throw of some mass goes into a washer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Washing {
    /// With room to move.
    Roomy,
    /// It goes in, but alone and tightly: rinse twice, dry slowly.
    Tight,
    /// Over the load: a launderette's large machine.
    TooHeavy,
}

/// The judgement for a washer of `load` dry mass ([`WASHER_KG`] where not known).
pub fn washing(mass: Mass, load: Mass) -> Washing {
    if mass <= load * ROOMY {
        Washing::Roomy
    } else if mass <= load {
        Washing::Tight
    } else {
        Washing::TooHeavy
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weights_as_people_write_them() {
        for typed in ["14 oz", "14oz/yd²", "14", " 14.0 OZ "] {
            assert_eq!(
                parse_weight(typed, System::Inch),
                Some(ounces(14.0)),
                "{typed}"
            );
        }
        for typed in ["475 g/m²", "475gsm", "475", "475,0 g"] {
            assert_eq!(
                parse_weight(typed, System::Metric),
                Some(gsm(475.0)),
                "{typed}"
            );
        }
        for typed in ["", "heavy", "14 lb", "-3 oz", "1.2.3 oz"] {
            assert_eq!(parse_weight(typed, System::Inch), None, "{typed}");
        }
    }
    use crate::measure::inches;
    use proptest::prelude::*;

    #[test]
    fn the_demo_throw_by_hand() {
        // 48 squares of 5 in = 1200 in²; nothing trimmed; 24 covers = 600 in²; binding:
        // 2 × (27½ + 36½) + 4 = 132 in; 1 + (132 − 28)/27½ → 5 strips, 4 joins of ½ in: 134 in².
        let plan = Plan::default();
        let in2 = |a: Area| a.value / (0.0254 * 0.0254);
        let amount = amount(&plan, 24);
        assert!((in2(amount.denim) - 1200.0).abs() < 1e-6);
        assert!((in2(amount.fabric) - 600.0).abs() < 1e-6);
        assert!((in2(amount.binding) - 134.0).abs() < 1e-6);
        let kg = in_kilograms(mass(&plan, 24, &Cloth::denim(), &Cloth::cotton()));
        let want = (1334.0 * 14.0 * gsm_per_ounce() + 600.0 * 145.0) * 0.0254 * 0.0254 / 1000.0;
        assert!((kg - want).abs() < 1e-9, "{kg}");
    }

    #[test]
    fn trimming_takes_cloth_off() {
        let plan = Plan {
            trim: Some(inches(9)),
            ..Plan::default()
        };
        // 12 fours, each 9½² − 9² = 9¼ in² less.
        let off = amount(&Plan::default(), 0).denim - amount(&plan, 0).denim;
        assert!((off.value / (0.0254 * 0.0254) - 12.0 * 9.25).abs() < 1e-6);
        let stretched = Plan {
            trim: Some(inches(10)),
            ..Plan::default()
        };
        assert_eq!(
            amount(&stretched, 0).denim,
            amount(&Plan::default(), 0).denim
        );
    }

    /// By hand: half of 48 squares have a fabric, 24 · 25 = 600 in². Twelve fours trimmed from 9½ to
    /// 9 in lose 9¼ in² each, 111 in², half of it with fabric on it.
    #[test]
    fn fabric_is_trimmed_off_with_its_square() {
        let plan = Plan {
            trim: Some(inches(9)),
            ..Plan::default()
        };
        let fabric = amount(&plan, 24).fabric.value / (0.0254 * 0.0254);
        assert!((fabric - 544.5).abs() < 1e-6, "{fabric}");
    }

    /// By hand: 5 × 3 squares are two fours and a pair at their end, and below them two pairs and a
    /// single square. A pair trimmed from 9½ to 9 in loses ½ · 5 = 2½ in², a four 9¼ in²:
    /// 2 · 9¼ + 3 · 2½ = 26 in².
    #[test]
    fn pairs_that_are_left_over_are_trimmed_too() {
        let odd = Plan {
            across: 5,
            down: 3,
            ..Plan::default()
        };
        let trimmed = Plan {
            trim: Some(inches(9)),
            ..odd
        };
        let off = amount(&odd, 0).denim - amount(&trimmed, 0).denim;
        assert!((off.value / (0.0254 * 0.0254) - 26.0).abs() < 1e-6);
        // A single row is pairs alone: 3 of them in 7 squares, and a square.
        let row = |trim| Plan {
            across: 7,
            down: 1,
            trim,
            ..Plan::default()
        };
        let off = amount(&row(None), 0).denim - amount(&row(Some(inches(9))), 0).denim;
        assert!((off.value / (0.0254 * 0.0254) - 7.5).abs() < 1e-6);
    }

    /// Up to two thirds of the 7 kg it holds a washer is roomy, 4⅔ kg; up to all of it tight (common
    /// practice, no source).
    #[test]
    fn two_thirds_of_a_load_are_roomy() {
        let judge = |kg| washing(kilograms(kg), kilograms(7.0));
        assert_eq!([4.66, 4.67, 6.99, 7.01].map(judge), {
            use Washing::*;
            [Roomy, Tight, Tight, TooHeavy]
        });
        assert_eq!(judge(7.0), Washing::Tight);
        assert_eq!(WASHER_KG, 7.0);
    }

    #[test]
    fn the_washer_is_asked() {
        let judge = |kg| washing(kilograms(kg), kilograms(WASHER_KG));
        assert_eq!(judge(0.6), Washing::Roomy);
        assert_eq!(judge(5.0), Washing::Tight);
        assert_eq!(judge(7.1), Washing::TooHeavy);
    }

    /// NIST SP 811, Appendix B.8, has an ounce (avoirdupois) per square yard as 3.390 575 E−02 kg/m².
    #[test]
    fn an_ounce_per_square_yard_is_that_of_nist() {
        assert!((gsm_per_ounce() - 33.905_75).abs() < 5e-6);
        assert!((in_gsm(ounces(14.0)) - 474.680_5).abs() < 1e-4);
        assert!((in_ounces(gsm(33.905_75)) - 1.0).abs() < 1e-6);
    }

    /// A figure is read up to its bound either way, and not beyond it.
    #[test]
    fn figures_are_read_within_their_bounds() {
        for figure in [MOST, -MOST, 0.0] {
            assert_eq!(Weight::try_from(figure).map(f64::from), Ok(figure));
            assert_eq!(Thickness::try_from(figure).map(f64::from), Ok(figure));
        }
        for figure in [MOST * 1.01, -MOST * 1.01, f64::NAN] {
            assert_eq!(Weight::try_from(figure), Err(OutOfBounds::Weight));
            assert_eq!(Thickness::try_from(figure), Err(OutOfBounds::Thickness));
        }
    }

    /// The limits as they are told to the maker, on each of them and just beyond it.
    #[test]
    fn limits_of_a_cloth() {
        let check = |grams, mm| {
            let cloth = Cloth {
                weight: gsm(grams),
                thickness: thick(mm),
                ..Cloth::denim()
            };
            cloth.check()
        };
        for (grams, mm) in [
            (10.001, 1.0),
            (1999.9, 1.0),
            (100.0, 0.010_01),
            (100.0, 19.99),
        ] {
            assert_eq!(check(grams, mm), Ok(()));
        }
        for grams in [9.99, 2000.1] {
            assert_eq!(check(grams, 1.0), Err(ClothFault::Weight));
        }
        for mm in [0.0099, 20.01] {
            assert_eq!(check(100.0, mm), Err(ClothFault::Thickness));
        }
    }

    #[test]
    fn figures_that_cannot_be() {
        assert_eq!(Cloth::denim().check(), Ok(()));
        assert_eq!(Cloth::cotton().check(), Ok(()));
        let heavy = Cloth {
            weight: gsm(f64::NAN),
            ..Cloth::denim()
        };
        assert_eq!(heavy.check(), Err(ClothFault::Weight));
        let thin = Cloth {
            thickness: thick(-1.0),
            ..Cloth::denim()
        };
        assert_eq!(thin.check(), Err(ClothFault::Thickness));
    }

    proptest! {
        #[test]
        fn ounces_and_grams_are_inverse(oz in 0.01..60.0f64, grams in 1.0..2000.0f64) {
            prop_assert!((in_ounces(ounces(oz)) / oz - 1.0).abs() < 1e-12);
            prop_assert!((in_gsm(ounces(in_ounces(gsm(grams)))) / grams - 1.0).abs() < 1e-12);
            let kept = serde_json::to_string(&ounces(oz)).unwrap();
            prop_assert!((in_ounces(serde_json::from_str(&kept).unwrap()) / oz - 1.0).abs() < 1e-12);
        }

        #[test]
        fn more_covers_weigh_more(across in 1u16..=60, down in 1u16..=60, covers in 0u32..7000) {
            let plan = Plan { across, down, ..Plan::default() };
            let weigh = |n| mass(&plan, n, &Cloth::denim(), &Cloth::cotton());
            prop_assert!(weigh(covers) < weigh(covers + 1));
        }
    }
}
