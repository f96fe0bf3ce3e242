use crate::quantity::{Length, Mass, Ratio};
use std::f64::consts::PI;
use thiserror::Error;
use uom::si::f64::MassDensity;
use uom::si::length::millimeter;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::ratio::ratio;

/// Density of through-hardened bearing steel, kg/m³. From memory of common materials tables.
pub const BEARING_STEEL_DENSITY_KG_M3: f64 = 7810.0;

/// Share of the annulus bore to outside by width that is steel in a single-row deep groove ball bearing.
///
/// Middle of the shares that 18 known masses give, bore 8 to 100 mm (`tests/reference/fits/bearing_masses.csv`, masses
/// from memory); the rest is the gap between the rings, grease and air.
pub const SINGLE_ROW_FILL: f64 = 0.68;

/// Half-width of the band about [`SINGLE_ROW_FILL`] that holds all those shares, as a share of the mass.
pub const SINGLE_ROW_FILL_SPREAD: f64 = 0.06;

/// Why a mass cannot be estimated.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum MassError {
    /// A size is not above zero, or the outside does not exceed the bore.
    #[error(
        "a ring of bore {bore_mm} mm, outside {outside_mm} mm and width {width_mm} mm has no volume\n  help: sizes must \
         be above zero and the outside above the bore"
    )]
    Sizes {
        /// Bore, mm.
        bore_mm: f64,
        /// Outside, mm.
        outside_mm: f64,
        /// Width, mm.
        width_mm: f64,
    },
    /// The fill factor is not above 0 and at most 1.
    #[error("a fill factor of {given} is not possible\n  help: it must be above 0 and at most 1")]
    Fill {
        /// What was given.
        given: f64,
    },
}

/// Mass of a bearing estimated from its boundary dimensions.
///
/// m = fill · ρ · π/4 · (D² - d²) · B, with the density of bearing steel.
///
/// **Arguments**: bore d, outside D, width B; `fill` is the share of that annulus that is steel,
/// [`SINGLE_ROW_FILL`] for single-row deep groove ball bearings, 1 for a solid ring.
///
/// **Valid for** steel balls and rings; within about [`SINGLE_ROW_FILL_SPREAD`] with the stated fill.
///
/// # Errors
/// [`MassError`] when a size or the fill factor is not possible.
///
/// **Source**: geometry; the fill factor is an estimate, no published source.
pub fn estimated_mass(bore: Length, outside: Length, width: Length, fill: Ratio) -> Result<Mass, MassError> {
    let [bore_mm, outside_mm, width_mm] = [bore, outside, width].map(|size| size.get::<millimeter>());
    let finite = bore_mm.is_finite() && outside_mm.is_finite() && width_mm.is_finite();
    if !(finite && bore_mm >= 0.0 && outside_mm > bore_mm && width_mm > 0.0) {
        return Err(MassError::Sizes { bore_mm, outside_mm, width_mm });
    }
    let given = fill.get::<ratio>();
    if !(given > 0.0 && given <= 1.0) {
        return Err(MassError::Fill { given });
    }
    let density = MassDensity::new::<kilogram_per_cubic_meter>(BEARING_STEEL_DENSITY_KG_M3);
    Ok(fill * (outside * outside - bore * bore) * width * density * (PI / 4.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::mass::kilogram;

    fn mm(size: f64) -> Length {
        Length::new::<millimeter>(size)
    }

    #[test]
    fn a_solid_steel_ring_weighs_its_volume_times_its_density() {
        // π/4 · (62² - 30²) · 16 = 36995 mm³; · 7810 kg/m³ = 0.28893 kg
        let mass = estimated_mass(mm(30.0), mm(62.0), mm(16.0), Ratio::new::<ratio>(1.0)).unwrap();
        assert!((mass.get::<kilogram>() - 0.28893).abs() < 0.000_005, "{mass:?}");
    }

    #[test]
    fn impossible_sizes_and_fills_are_refused() {
        let fill = Ratio::new::<ratio>(SINGLE_ROW_FILL);
        for (bore, outside, width) in
            [(62.0, 30.0, 16.0), (30.0, 62.0, 0.0), (f64::NAN, 62.0, 16.0), (30.0, f64::INFINITY, 1.0)]
        {
            assert!(estimated_mass(mm(bore), mm(outside), mm(width), fill).is_err());
        }
        for share in [0.0, 1.01, f64::NAN] {
            assert!(estimated_mass(mm(30.0), mm(62.0), mm(16.0), Ratio::new::<ratio>(share)).is_err());
        }
    }
}
