use super::ICE_POINT_K;
use super::error::ThermalError;
use crate::quantity::{Length, Pressure, Ratio, ThermodynamicTemperature, within};
use uom::si::diffusion_coefficient::square_meter_per_second as diffusivity_unit;
use uom::si::dynamic_viscosity::pascal_second;
use uom::si::f64::{
    DiffusionCoefficient, DynamicViscosity, KinematicViscosity, MassDensity, SpecificHeatCapacity,
    TemperatureCoefficient, ThermalConductivity,
};
use uom::si::kinematic_viscosity::square_meter_per_second;
use uom::si::length::meter;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::{kilopascal, pascal};
use uom::si::ratio::ratio;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::thermal_conductivity::watt_per_meter_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

/// Coldest and hottest air, °C.
pub(super) const RANGE_C: (f64, f64) = (-120.0, 300.0);
/// Lowest and highest pressure, kPa: from above 5000 m to below sea level.
const RANGE_KPA: (f64, f64) = (50.0, 110.0);
/// Lowest and highest elevation of the standard atmosphere here, m.
const RANGE_M: (f64, f64) = (-500.0, 5000.0);
/// Standard pressure at sea level, Pa (ISO 2533).
pub(super) const SEA_LEVEL_PA: f64 = 101_325.0;
/// Standard acceleration of free fall, m/s² (ISO 80000-3).
pub(super) const FREE_FALL: f64 = 9.806_65;
/// Specific gas constant of dry air, J/(kg K) (ISO 2533).
const GAS_CONSTANT: f64 = 287.052_87;

/// Dry air at a temperature and a pressure.
///
/// Density `p / (R T)`, expansion coefficient `1/T`; heat capacity of the ideal gas with two vibrations; viscosity and
/// conductivity of the thin gas.
///
/// **Valid for** -120 to 300 °C and 50 to 110 kPa; moisture is left out. Against the equation of state and transport
/// formulas of real air: within 1 % from -80 to 300 °C, within 2 % down to -120 °C. A part that comes from liquid
/// nitrogen into warm air has a film near -90 °C, hence the cold end.
///
/// **Source**: gas constant ISO 2533:1975; heat capacity E. W. Lemmon, R. T Jacobsen, S. G. Penoncello, D. G. Friend,
/// J. Phys. Chem. Ref. Data 29 (2000) 331-385 (ideal-gas part, smallest term left out); viscosity and conductivity
/// E. W. Lemmon, R. T Jacobsen, Int. J. Thermophysics 25 (2004) 21-69 (dilute-gas part). Coefficients from memory,
/// compared with CoolProp 8.0.0, which implements both papers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    pub(super) temperature: f64,
    pub(super) density: f64,
    pub(super) heat_capacity: f64,
    pub(super) viscosity: f64,
    pub(super) conductivity: f64,
}

impl Air {
    /// Air at this temperature and pressure.
    ///
    /// # Errors
    /// [`ThermalError::Value`] outside -120 to 300 °C or 50 to 110 kPa.
    pub fn at(temperature: ThermodynamicTemperature, pressure: Pressure) -> Result<Self, ThermalError> {
        Self::at_si("temperature of the air", temperature.get::<kelvin>(), pressure.get::<pascal>())
    }

    /// The same in K and Pa; `what` names the temperature in the error.
    pub(super) fn at_si(what: &'static str, temperature: f64, pressure: f64) -> Result<Self, ThermalError> {
        checked(what, temperature, pressure)?;
        Ok(Self::of(temperature, pressure))
    }

    /// The same of a temperature (K) and a pressure (Pa) that have been [`checked`].
    pub(super) fn of(temperature: f64, pressure: f64) -> Self {
        let micropascal_seconds = thin_gas_viscosity(temperature);
        Self {
            temperature,
            density: pressure / (GAS_CONSTANT * temperature),
            heat_capacity: ideal_gas_heat_capacity(temperature),
            viscosity: micropascal_seconds * 1e-6,
            conductivity: thin_gas_conductivity(temperature, micropascal_seconds),
        }
    }

    /// Density.
    pub fn density(&self) -> MassDensity {
        MassDensity::new::<kilogram_per_cubic_meter>(self.density)
    }

    /// Specific heat capacity at constant pressure.
    pub fn heat_capacity(&self) -> SpecificHeatCapacity {
        SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(self.heat_capacity)
    }

    /// Dynamic viscosity.
    pub fn dynamic_viscosity(&self) -> DynamicViscosity {
        DynamicViscosity::new::<pascal_second>(self.viscosity)
    }

    /// Thermal conductivity.
    pub fn conductivity(&self) -> ThermalConductivity {
        ThermalConductivity::new::<watt_per_meter_kelvin>(self.conductivity)
    }

    /// Prandtl number, `cp μ / k`.
    pub fn prandtl(&self) -> Ratio {
        Ratio::new::<ratio>(self.prandtl_si())
    }

    /// Kinematic viscosity, `μ / ρ`.
    pub fn kinematic_viscosity(&self) -> KinematicViscosity {
        KinematicViscosity::new::<square_meter_per_second>(self.viscosity / self.density)
    }

    /// Thermal diffusivity, `k / (ρ cp)`.
    pub fn thermal_diffusivity(&self) -> DiffusionCoefficient {
        DiffusionCoefficient::new::<diffusivity_unit>(self.conductivity / (self.density * self.heat_capacity))
    }

    /// Volume expansion coefficient of the ideal gas, `1/T`.
    pub fn expansion_coefficient(&self) -> TemperatureCoefficient {
        TemperatureCoefficient::new::<per_kelvin>(1.0 / self.temperature)
    }

    pub(super) fn prandtl_si(&self) -> f64 {
        self.heat_capacity * self.viscosity / self.conductivity
    }

    /// Rayleigh number of a body of 1 m at a temperature difference of 1 K, 1/(m³ K): `g β / (ν α)`.
    pub(super) fn rayleigh_per_cubic_metre_kelvin(&self) -> f64 {
        let per_viscosity = self.density * self.density * self.heat_capacity / (self.viscosity * self.conductivity);
        FREE_FALL / self.temperature * per_viscosity
    }
}

/// Pressure of the standard atmosphere at an elevation.
///
/// `p = p0 (T/T0)^(g/(R L))`, `T = T0 - L H`, T0 = 288.15 K, L = 6.5 K/km; the elevation is taken as the geopotential
/// altitude H, which differs by 4 m at 5000 m. Weather moves the true pressure by up to about 4 %.
///
/// **Valid for** -500 to 5000 m.
///
/// # Errors
/// [`ThermalError::Value`] outside that range.
///
/// **Source**: ISO 2533:1975; US Standard Atmosphere 1976, equation 33a (from memory).
pub fn standard_pressure(elevation: Length) -> Result<Pressure, ThermalError> {
    const SEA_LEVEL_K: f64 = 288.15;
    const LAPSE_K_PER_M: f64 = 6.5e-3;
    let height = within("elevation", shown(elevation.get::<meter>()), RANGE_M, "m")?;
    let share = 1.0 - LAPSE_K_PER_M * height / SEA_LEVEL_K;
    let pressure = Pressure::new::<pascal>(SEA_LEVEL_PA * share.powf(FREE_FALL / (GAS_CONSTANT * LAPSE_K_PER_M)));
    debug_assert!(pressure.get::<kilopascal>() > RANGE_KPA.0);
    Ok(pressure)
}

/// An error unless air is known at a temperature (K), which `what` names, and a pressure (Pa).
pub(super) fn checked(what: &'static str, temperature: f64, pressure: f64) -> Result<(), ThermalError> {
    let (celsius, kilopascals) = (temperature - ICE_POINT_K, pressure * 1e-3);
    let inside = |value: f64, (from, to): (f64, f64)| value >= from && value <= to;
    if !(inside(celsius, RANGE_C) && inside(kilopascals, RANGE_KPA)) {
        // What the change of unit left behind is no reason to refuse.
        within(what, shown(celsius), RANGE_C, "°C")?;
        within("pressure of the air", shown(kilopascals), RANGE_KPA, "kPa")?;
    }
    Ok(())
}

/// A value as it is shown in a message: without the last digits that the change of unit left behind.
pub(super) fn shown(value: f64) -> f64 {
    (value * 1e6).round() * 1e-6
}

/// Viscosity of thin air, µPa s: `0.0266958 √(M T) / (σ² Ω)`, `ln Ω = Σ b_i (ln T/ε)^i`.
fn thin_gas_viscosity(temperature: f64) -> f64 {
    const MOLAR_MASS: f64 = 28.9586;
    const SIZE_NM: f64 = 0.36;
    const WELL_K: f64 = 103.3;
    let x = (temperature / WELL_K).ln();
    let collision = 0.431 + x * (-0.4623 + x * (0.08406 + x * (0.005_341 - x * 0.003_31)));
    0.026_695_8 * (MOLAR_MASS * temperature).sqrt() / (SIZE_NM * SIZE_NM) * (-collision).exp()
}

/// Conductivity of thin air, W/(m K): `1.308 η + 1.405 τ^-1.1 - 1.036 τ^-0.3` mW/(m K), τ = 132.6312 K / T.
fn thin_gas_conductivity(temperature: f64, micropascal_seconds: f64) -> f64 {
    let x = (temperature / 132.6312).ln();
    (1.308 * micropascal_seconds + 1.405 * (1.1 * x).exp() - 1.036 * (0.3 * x).exp()) * 1e-3
}

/// Heat capacity of thin air, J/(kg K).
fn ideal_gas_heat_capacity(t: f64) -> f64 {
    const GAS_CONSTANT_OF_PAPER: f64 = 8.314_51 / 28.9586e-3;
    let slow = 3.490_888_032 + t * (2.395_525_583e-6 + t * (7.172_111_248e-9 - t * 3.115_413_101e-13));
    let vibration = |share: f64, u: f64| {
        let fading = (-u / t).exp();
        share * (u / t) * (u / t) * fading / ((1.0 - fading) * (1.0 - fading))
    };
    let vibrations = vibration(0.791_309_509, 3364.011) + vibration(0.212_236_768, 2242.45);
    GAS_CONSTANT_OF_PAPER * (slow + 0.223_806_688 / (t * t.sqrt()) + vibrations)
}
