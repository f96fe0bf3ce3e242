//! Film coefficients that no correlation covers: a range with its source, to be used at both ends.

use super::super::error::ThermalError;
use crate::quantity::{HeatTransfer, within};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;

/// A film coefficient known only as a range, W/(m² K).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StatedRange {
    /// What it belongs to.
    pub what: &'static str,
    /// Lowest value, W/(m² K).
    pub low_w_m2k: f64,
    /// Highest value, W/(m² K).
    pub high_w_m2k: f64,
    /// Where the two come from.
    pub source: &'static str,
}

/// Dry machined metal faces that touch under light load, such as a part on a hot plate.
pub const CONTACT_OF_MACHINED_FACES: StatedRange = StatedRange {
    what: "contact of machined faces",
    low_w_m2k: 200.0,
    high_w_m2k: 2000.0,
    source: "contact conductance of dry machined metal faces in air under light load, textbook ranges (from memory); \
             faces pressed together at 1 MPa and more reach 2000 to 10 000",
};

/// Hot-air gun on a part that is larger than its jet.
pub const HOT_AIR_GUN: StatedRange = StatedRange {
    what: "hot-air gun",
    low_w_m2k: 25.0,
    high_w_m2k: 100.0,
    source: "forced convection of gases, 25 to 250 in course tables after Cengel; the lower part, because the jet mixes \
             with cold air and covers only a part of the surface (engineer's choice)",
};

/// Oil bath without stirring.
pub const OIL_BATH: StatedRange = StatedRange {
    what: "oil bath",
    low_w_m2k: 50.0,
    high_w_m2k: 300.0,
    source: "free convection of liquids: 50 to 100 in course tables after Cengel, 50 to 1000 in Incropera Table 1.1; the \
             lower half is taken for thick oil",
};

/// Boiling or stirred water on a part that is colder than 100 °C.
pub const WATER_BATH: StatedRange = StatedRange {
    what: "water bath",
    low_w_m2k: 500.0,
    high_w_m2k: 3000.0,
    source: "forced convection of liquids, 50 to 20 000 in course tables after Cengel; water stirred by its own bubbles \
             (engineer's choice)",
};

/// Dry ice in alcohol, stirred by its own bubbles only.
pub const DRY_ICE_ALCOHOL_BATH: StatedRange = StatedRange {
    what: "dry ice in alcohol",
    low_w_m2k: 100.0,
    high_w_m2k: 500.0,
    source: "estimate: free convection of alcohol stirred by gas bubbles; no measured source was found",
};

/// A part on the metal shelf of a freezer or an oven.
pub const METAL_SHELF: StatedRange = StatedRange {
    what: "metal shelf",
    low_w_m2k: 20.0,
    high_w_m2k: 1000.0,
    source: "a tenth of the contact of machined faces where frost, paint or an uneven shelf keeps them apart, half of it \
             on a clean flat shelf (common practice, no published source)",
};

/// Lowest and highest contact conductance that is taken, W/(m² K): from a part on grit to soldered faces.
const CONTACT_W_M2K: (f64, f64) = (10.0, 100_000.0);

impl StatedRange {
    /// Lowest value.
    pub fn low(&self) -> HeatTransfer {
        HeatTransfer::new::<watt_per_square_meter_kelvin>(self.low_w_m2k)
    }

    /// Highest value.
    pub fn high(&self) -> HeatTransfer {
        HeatTransfer::new::<watt_per_square_meter_kelvin>(self.high_w_m2k)
    }

    /// Geometric mean of the two: the value that is wrong by the same factor at worst on both sides.
    pub fn middle(&self) -> HeatTransfer {
        HeatTransfer::new::<watt_per_square_meter_kelvin>((self.low_w_m2k * self.high_w_m2k).sqrt())
    }
}

/// Film coefficient of a resting face from a stated contact conductance, meant for the whole surface of the part: the
/// conductance times the share of the surface that touches.
///
/// # Errors
/// A conductance outside 10 to 100 000 W/(m² K), a share outside 0 to 1.
pub fn contact_film(conductance: HeatTransfer, touching_share: f64) -> Result<HeatTransfer, ThermalError> {
    let given = conductance.get::<watt_per_square_meter_kelvin>();
    within("contact conductance", given, CONTACT_W_M2K, "W/(m² K)")?;
    Ok(conductance * within("share of the surface that touches", touching_share, (0.0, 1.0), "")?)
}
