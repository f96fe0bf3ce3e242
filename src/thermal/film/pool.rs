use super::super::air::SEA_LEVEL_PA;
use super::super::error::ThermalError;
use super::super::nitrogen::nitrogen_boiling_point;
use super::boiling::{
    CRITICAL_CONSTANT, FILM_SUPERHEAT_K, Pool, SENSIBLE_SHARE_OF_BROMLEY, SURFACE_CONSTANT, breen_westwater, bromley,
    checked_diameter, liquid_convection, rohsenow,
};
use super::in_air::FLOOR_K;
use super::radiation::coefficient;
use crate::quantity::{HeatTransfer, Length, Pressure, TemperatureInterval, ThermodynamicTemperature, within};
use uom::si::f64::HeatFluxDensity;
use uom::si::heat_flux_density::watt_per_square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::pressure::pascal;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

/// Superheats at which film boiling may be said to end, K: metal parts 25 to 60, Berenson's plate 69, coated ones more.
const MINIMUM_SUPERHEAT_K: (f64, f64) = (20.0, 90.0);
/// Factors by which measured film boiling may exceed the correlation.
const FILM_FACTOR: (f64, f64) = (0.5, 3.0);
/// Exponent of the Prandtl number in nucleate boiling of anything but water (Rohsenow 1952, from memory).
const PRANDTL_EXPONENT: f64 = 1.7;
/// Highest superheat, K.
const HOTTEST_K: f64 = FILM_SUPERHEAT_K.1;

/// Correlation of film boiling on a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FilmBoiling {
    /// [`super::bromley_film_boiling`]: the low end for parts of more than 10 mm.
    Bromley,
    /// [`super::breen_westwater_film_boiling`]: 1.6 times Bromley at 50 mm.
    BreenWestwater,
}

/// A part in a pool of boiling nitrogen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NitrogenPool {
    /// Outside diameter of the part.
    pub diameter: Length,
    /// Pressure of the air over the pool.
    pub pressure: Pressure,
    /// Correlation of film boiling.
    pub film: FilmBoiling,
    /// Factor on film boiling, 0.5 to 3; measured rates on rough or end-heated parts reach twice Bromley.
    pub film_factor: f64,
    /// Emissivity of the part for radiation through the vapour, 0 to 1; 0 leaves it out (under 1 % for bare metal).
    pub emissivity: f64,
    /// Superheat at which film boiling ends, 20 to 90 K; see [`super::berenson_minimum_superheat`].
    pub minimum_superheat: TemperatureInterval,
    /// Constant of [`super::zuber_critical_flux`], 0.118 to 0.18.
    pub critical_constant: f64,
    /// Surface constant of [`super::rohsenow_nucleate_boiling`], 0.003 to 0.02.
    pub surface_constant: f64,
}

impl NitrogenPool {
    /// A part of this diameter at sea level with the middle of every range: Bromley, no radiation, film boiling that ends at
    /// 40 K (middle of what is measured on metal, from memory), Zuber's 0.131, Rohsenow's 0.013.
    pub fn new(diameter: Length) -> Self {
        Self {
            diameter,
            pressure: Pressure::new::<pascal>(SEA_LEVEL_PA),
            film: FilmBoiling::Bromley,
            film_factor: 1.0,
            emissivity: 0.0,
            minimum_superheat: TemperatureInterval::new::<step_kelvin>(40.0),
            critical_constant: 0.131,
            surface_constant: 0.013,
        }
    }

    /// Its boiling curve.
    ///
    /// # Errors
    /// [`ThermalError::Value`] for a diameter outside 1 to 1000 mm, a pressure outside 50 to 110 kPa, or another value
    /// outside the range stated with it.
    pub fn curve(&self) -> Result<NitrogenPoolCurve, ThermalError> {
        let share = self.pressure.get::<pascal>() / SEA_LEVEL_PA;
        let boiling_point = nitrogen_boiling_point(self.pressure)?.get::<kelvin>();
        let pool = Pool { boiling_point, thinness: share };
        let minimum = self.minimum_superheat.get::<step_kelvin>();
        let minimum = within("superheat at which film boiling ends", minimum, MINIMUM_SUPERHEAT_K, "K")?;
        let critical = within("constant of the critical flux", self.critical_constant, CRITICAL_CONSTANT, "")?;
        let surface = within("surface constant", self.surface_constant, SURFACE_CONSTANT, "")?;
        let (nucleate, liquid) = (rohsenow(surface, PRANDTL_EXPONENT), liquid_convection());
        let critical_superheat = (pool.critical_flux(critical) / nucleate).cbrt();
        let mut curve = NitrogenPoolCurve {
            pool,
            diameter: checked_diameter(self.diameter)?,
            film: self.film,
            film_factor: within("factor on film boiling", self.film_factor, FILM_FACTOR, "")?,
            emissivity: within("emissivity", self.emissivity, (0.0, 1.0), "")?,
            liquid,
            nucleate,
            boiling_superheat: boiling_superheat(liquid / nucleate),
            critical_superheat,
            minimum_superheat: minimum,
            transition_exponent: 0.0,
        };
        let fall = curve.film_boiling(minimum) / (nucleate * critical_superheat * critical_superheat);
        curve.transition_exponent = fall.ln() / (minimum / critical_superheat).ln();
        Ok(curve)
    }
}

/// The boiling curve of a part: heat flux against the superheat of its surface over the boiling point.
///
/// From the cold end: convection of the liquid (`Nu = 0.15 Ra^(1/3)`, McAdams) until nucleate boiling (Rohsenow) exceeds it,
/// up to the critical flux (Zuber); film boiling (Bromley or Breen-Westwater) from the superheat at which it ends upward;
/// between the two a straight line in logarithms, as is common for transition boiling (from memory). The flux is
/// continuous throughout.
///
/// **Valid for** superheats of 0 to 445 K, 50 to 110 kPa. Edges, frost and roughness are left out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NitrogenPoolCurve {
    pool: Pool,
    diameter: f64,
    film: FilmBoiling,
    film_factor: f64,
    emissivity: f64,
    /// `h / ΔT^(1/3)` of the liquid.
    liquid: f64,
    /// `h / ΔT²` of nucleate boiling.
    nucleate: f64,
    pub(super) boiling_superheat: f64,
    pub(super) critical_superheat: f64,
    pub(super) minimum_superheat: f64,
    transition_exponent: f64,
}

impl NitrogenPoolCurve {
    /// Heat flux from a surface that is warmer than the boiling point by `superheat`.
    ///
    /// # Errors
    /// [`ThermalError::Value`] outside 0 to 445 K.
    pub fn flux(&self, superheat: TemperatureInterval) -> Result<HeatFluxDensity, ThermalError> {
        let excess = checked(superheat)?;
        Ok(HeatFluxDensity::new::<watt_per_square_meter>(self.coefficient(excess) * excess))
    }

    /// The same as a film coefficient over the boiling point; finite at zero superheat, where the superheat counts as
    /// `√(ΔT² + (0.1 K)²)`.
    ///
    /// # Errors
    /// As for [`Self::flux`].
    pub fn film(&self, superheat: TemperatureInterval) -> Result<HeatTransfer, ThermalError> {
        Ok(HeatTransfer::new::<watt_per_square_meter_kelvin>(self.coefficient(checked(superheat)?)))
    }

    /// Boiling point of the pool.
    pub fn boiling_point(&self) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<kelvin>(self.pool.boiling_point)
    }

    /// Superheat at which nucleate boiling reaches the critical flux.
    pub fn critical_superheat(&self) -> TemperatureInterval {
        TemperatureInterval::new::<step_kelvin>(self.critical_superheat)
    }

    /// Film coefficient, W/(m² K), at a superheat in K.
    pub(super) fn coefficient(&self, superheat: f64) -> f64 {
        if superheat <= self.critical_superheat {
            let convection = self.liquid * superheat.hypot(FLOOR_K).cbrt();
            convection.max(self.nucleate * superheat * superheat)
        } else if superheat < self.minimum_superheat {
            let peak = self.nucleate * self.critical_superheat * self.critical_superheat;
            peak * (superheat / self.critical_superheat).powf(self.transition_exponent)
        } else {
            self.film_boiling(superheat)
        }
    }

    fn film_boiling(&self, superheat: f64) -> f64 {
        let drive = self.pool.drive(superheat, SENSIBLE_SHARE_OF_BROMLEY);
        let convection = match self.film {
            FilmBoiling::Bromley => bromley(drive, self.diameter),
            FilmBoiling::BreenWestwater => breen_westwater(drive, self.diameter),
        };
        let wall = self.pool.boiling_point + superheat;
        self.film_factor * convection + 0.75 * self.emissivity * coefficient(wall, self.pool.boiling_point)
    }
}

/// Superheat at which nucleate boiling takes over: `ΔT² = ratio √(ΔT² + 0.1²)^(1/3)`.
fn boiling_superheat(ratio: f64) -> f64 {
    // Every round divides the error by six.
    (0..6).fold(ratio.powf(0.6), |excess, _| (ratio * excess.hypot(FLOOR_K).cbrt()).sqrt())
}

fn checked(superheat: TemperatureInterval) -> Result<f64, ThermalError> {
    Ok(within("superheat", superheat.get::<step_kelvin>(), (0.0, HOTTEST_K), "K")?)
}
