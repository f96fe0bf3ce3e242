use super::ICE_POINT_K;
use super::error::ThermalError;
use super::root::root;
use crate::quantity::{Pressure, ThermodynamicTemperature, within};
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::kelvin;

/// Lowest temperature of the formulas, K (-100 °C).
const COLDEST_K: f64 = 173.15;
/// Highest temperature of the formula over water, K (100 °C).
const HOTTEST_WATER_K: f64 = 373.15;
/// Highest temperature of the formula over ice, K (the triple point).
const HOTTEST_ICE_K: f64 = 273.16;
/// Temperature to which the inverse is carried, K.
const TEMPERATURE_TOLERANCE_K: f64 = 1e-9;

/// The surface with which vapour is in balance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Over {
    /// Liquid water; below 0 °C, water that has not frozen.
    Water,
    /// Ice.
    Ice,
}

impl Over {
    /// a, b, c, d, e of `ln(p/Pa) = a/T + b + c T + d T² + e ln T`, T in K.
    ///
    /// **Source**: D. Sonntag, "Advancements in the field of hygrometry", Meteorologische Zeitschrift N.F. 3 (1994)
    /// 51-66, read in published copies of the paper (over water in Pa and in hPa, which agree; over ice in Pa).
    fn coefficients(self) -> [f64; 5] {
        match self {
            Over::Water => [-6096.9385, 21.240_964_2, -2.711_193e-2, 1.673_952e-5, 2.433_502],
            Over::Ice => [-6024.5282, 29.327_07, 1.061_386_8e-2, -1.319_882_5e-5, -0.493_825_77],
        }
    }

    fn range(self) -> (f64, f64) {
        match self {
            Over::Water => (COLDEST_K, HOTTEST_WATER_K),
            Over::Ice => (COLDEST_K, HOTTEST_ICE_K),
        }
    }

    fn pressure(self, t: f64) -> f64 {
        let [a, b, c, d, e] = self.coefficients();
        (a / t + b + c * t + d * t * t + e * t.ln()).exp()
    }
}

/// Pressure of water vapour in balance with water or ice at a temperature.
///
/// **Valid for** -100 to 100 °C over water, -100 to 0.01 °C over ice; vapour alone (air at one atmosphere raises it by
/// about 0.4 %, which is left out).
///
/// # Errors
/// [`ThermalError::Value`] outside that range.
///
/// **Source**: D. Sonntag, "Advancements in the field of hygrometry", Meteorologische Zeitschrift N.F. 3 (1994) 51-66;
/// range of validity from memory.
pub fn saturation_pressure(temperature: ThermodynamicTemperature, over: Over) -> Result<Pressure, ThermalError> {
    let (from, to) = over.range();
    let celsius = temperature.get::<kelvin>() - ICE_POINT_K;
    // The table's end points must be allowed whatever the rounding of the unit they came in.
    let t = within("temperature", celsius, (from - ICE_POINT_K - 1e-9, to - ICE_POINT_K + 1e-9), "°C")? + ICE_POINT_K;
    Ok(Pressure::new::<pascal>(over.pressure(t)))
}

/// Pressure of the water vapour in air of a relative humidity (0 to 1).
///
/// Below 0 °C, humidity may be stated over water (the rule of weather services) or over ice; say which with `over`.
///
/// # Errors
/// [`ThermalError::Value`] for the temperature or the humidity.
pub fn vapour_pressure(
    air: ThermodynamicTemperature,
    relative_humidity: f64,
    over: Over,
) -> Result<Pressure, ThermalError> {
    let share = within("relative humidity", relative_humidity, (0.0, 1.0), "")?;
    Ok(saturation_pressure(air, over)? * share)
}

/// Temperature of a surface on which air with this vapour pressure begins to leave water.
///
/// # Errors
/// [`ThermalError::Value`] when the pressure belongs to no temperature from -100 to 100 °C.
pub fn dew_point(vapour: Pressure) -> Result<ThermodynamicTemperature, ThermalError> {
    saturation_temperature(vapour, Over::Water)
}

/// Temperature of a surface on which air with this vapour pressure begins to leave frost.
///
/// # Errors
/// [`ThermalError::Value`] when the pressure belongs to no temperature from -100 to 0.01 °C.
pub fn frost_point(vapour: Pressure) -> Result<ThermodynamicTemperature, ThermalError> {
    saturation_temperature(vapour, Over::Ice)
}

/// Temperature below which a part in this air gets wet or white, and whether it is dew or frost.
///
/// The dew point when it lies above 0 °C, else the frost point. The humidity is taken over water.
///
/// # Errors
/// As for [`vapour_pressure`]; air too dry for the formulas (frost point below -100 °C).
pub fn condensation_point(
    air: ThermodynamicTemperature,
    relative_humidity: f64,
) -> Result<(ThermodynamicTemperature, Over), ThermalError> {
    let vapour = vapour_pressure(air, relative_humidity, Over::Water)?;
    if vapour.get::<pascal>() > Over::Water.pressure(ICE_POINT_K) {
        Ok((dew_point(vapour)?, Over::Water))
    } else {
        Ok((frost_point(vapour)?, Over::Ice))
    }
}

fn saturation_temperature(vapour: Pressure, over: Over) -> Result<ThermodynamicTemperature, ThermalError> {
    let (from, to) = over.range();
    let limits = (over.pressure(from), over.pressure(to));
    let pressure = within("pressure of the water vapour", vapour.get::<pascal>(), limits, "Pa")?;
    // In logarithms the function is nearly straight in 1/T, and its ends do not differ by powers of ten.
    let t = root(|t| over.pressure(t).ln() - pressure.ln(), (from, to), TEMPERATURE_TOLERANCE_K);
    Ok(ThermodynamicTemperature::new::<kelvin>(t))
}
