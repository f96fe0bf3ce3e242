use super::super::error::ThermalError;
use super::in_air::{AirAround, Exposed, FLOOR_K};
use super::outline::RoundPart;
use super::pool::{NitrogenPool, NitrogenPoolCurve};
use crate::quantity::{HeatTransfer, TemperatureInterval, ThermodynamicTemperature, positive};
use crate::stock::{Curve, CurveError};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

/// Rows of a table without regimes for each factor of e in the difference, so that its error is the same for wide and narrow ones,
/// and the fewest that there are.
const ROWS_PER_E: f64 = 2.6;
const FEWEST_ROWS: usize = 8;
/// Closest approach of start and surroundings, K; closer than this the coefficient is a constant.
const CLOSEST_K: f64 = 1e-6;
/// How much colder than the pool a part may start, K: one that comes from a pool in thinner or denser air.
const COLDER_K: f64 = 1.0;
/// How far the table reaches beyond the surroundings, K: the last digits of a solver may stray there.
const MARGIN_K: f64 = 0.01;
/// How close to a change of regime a row stands on both sides, so that the table keeps the corner.
const CORNER: f64 = 1e-3;

/// A film coefficient over the temperature of the surface, made for inner loops: convection (or boiling) alone.
///
/// A table from the temperature at the start to that of the surroundings, read by [`Curve`]. Rows are dense near the
/// surroundings and at the changes of regime.
///
/// **Valid for** surface temperatures between start and surroundings; within 0.5 % of the direct call there.
#[derive(Clone, Debug, PartialEq)]
pub enum FilmLaw {
    /// The same at every temperature.
    Constant(HeatTransfer),
    /// W/(m² K) over the surface temperature, K.
    OfTemperature(Curve),
}

/// Film coefficient of a surface, as a balance of heat reads it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SurfaceFilm<'a> {
    /// The same throughout.
    Constant(HeatTransfer),
    /// Over the temperature of the surface (K), W/(m² K): a boiling curve, or a correlation in a table.
    OverSurface(&'a Curve),
}

impl<'a> From<&'a FilmLaw> for SurfaceFilm<'a> {
    fn from(law: &'a FilmLaw) -> Self {
        match law {
            FilmLaw::Constant(film) => Self::Constant(*film),
            FilmLaw::OfTemperature(curve) => Self::OverSurface(curve),
        }
    }
}

impl From<HeatTransfer> for SurfaceFilm<'_> {
    fn from(film: HeatTransfer) -> Self {
        Self::Constant(film)
    }
}

impl FilmLaw {
    /// The same coefficient at every temperature.
    ///
    /// # Errors
    /// [`ThermalError::Value`] for a coefficient that is not above zero.
    pub fn constant(film: HeatTransfer) -> Result<Self, ThermalError> {
        positive("film coefficient", film.get::<watt_per_square_meter_kelvin>(), "W/(m² K)")?;
        Ok(Self::Constant(film))
    }

    /// A part in still or moving air, from `start` to the temperature of the air: [`super::part_in_air`].
    ///
    /// # Errors
    /// As for [`super::part_in_air`].
    pub fn in_air(part: &RoundPart, around: &AirAround, start: ThermodynamicTemperature) -> Result<Self, ThermalError> {
        let exposed = Exposed::new(part, around)?;
        Self::between(start, around.air, |surface| exposed.mean(surface))
    }

    /// A part in boiling nitrogen, from `start` to the boiling point: [`NitrogenPoolCurve`].
    ///
    /// # Errors
    /// As for [`NitrogenPool::curve`]; a start colder than the boiling point by 1 K or more, or warmer by more than 445 K.
    pub fn in_nitrogen(pool: &NitrogenPool, start: ThermodynamicTemperature) -> Result<Self, ThermalError> {
        let curve = pool.curve()?;
        let boiling = curve.boiling_point().get::<kelvin>();
        let span = start.get::<kelvin>() - boiling;
        curve.film(TemperatureInterval::new::<step_kelvin>(if span > -COLDER_K { span.max(0.0) } else { span }))?;
        if span < CLOSEST_K {
            return Self::constant(HeatTransfer::new::<watt_per_square_meter_kelvin>(curve.coefficient(0.0)));
        }
        let beyond = (boiling - MARGIN_K, curve.coefficient(0.0));
        let hot = superheats(&curve, span).into_iter().map(|excess| (boiling + excess, curve.coefficient(excess)));
        let rows: Vec<(f64, f64)> = std::iter::once(beyond).chain(hot).collect();
        Curve::new(&rows).map(Self::OfTemperature).map_err(refused)
    }

    /// Any coefficient (W/(m² K)) of the surface temperature (K) that fades towards the surroundings without a corner.
    ///
    /// Differences below 0.1 K are covered by two rows: a coefficient that vanishes there is caught coarsely.
    ///
    /// # Errors
    /// What `film` returns; temperatures that are not above zero.
    pub fn between(
        start: ThermodynamicTemperature,
        surroundings: ThermodynamicTemperature,
        film: impl Fn(f64) -> Result<f64, ThermalError>,
    ) -> Result<Self, ThermalError> {
        let from = positive("temperature at the start", start.get::<kelvin>(), "K")?;
        let to = positive("temperature of the surroundings", surroundings.get::<kelvin>(), "K")?;
        if (from - to).abs() < CLOSEST_K {
            return Self::constant(HeatTransfer::new::<watt_per_square_meter_kelvin>(film(to)?));
        }
        let side = (from - to).signum();
        let span = (from - to).abs();
        // Some tens at the most: the temperatures of materials end below a thousand kelvin.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let rows = (ROWS_PER_E * (span / FLOOR_K).asinh()).ceil() as usize + 1;
        let differences = fading(span, rows.max(FEWEST_ROWS));
        // The last row belongs to the side that the part comes from: warm and cold faces differ.
        let at = |difference: &f64| film(to + side * difference.max(CLOSEST_K));
        let films = differences.iter().map(at).collect::<Result<Vec<f64>, _>>()?;
        let beside = (to - side * MARGIN_K, film(to)?);
        let rows = differences.iter().zip(&films).map(|(difference, film)| (to + side * difference, *film));
        let slopes = slopes(&differences, &films).into_iter().map(|slope| side * slope);
        let mut rows: Vec<(f64, f64)> = std::iter::once(beside).chain(rows).collect();
        let mut slopes: Vec<f64> = std::iter::once(0.0).chain(slopes).collect();
        if side < 0.0 {
            rows.reverse();
            slopes.reverse();
        }
        Curve::with_slopes(&rows, &slopes).map(Self::OfTemperature).map_err(refused)
    }

    /// The law with a factor on every coefficient, for the scatter of a correlation.
    ///
    /// # Errors
    /// [`ThermalError::Value`] for a factor that is not above zero.
    pub(crate) fn times(&self, factor: f64) -> Result<Self, ThermalError> {
        let factor = positive("factor on the film coefficient", factor, "")?;
        Ok(match self {
            Self::Constant(film) => Self::Constant(*film * factor),
            Self::OfTemperature(curve) => Self::OfTemperature(curve.times(factor)),
        })
    }

    /// The coefficient at a surface temperature.
    ///
    /// # Errors
    /// [`ThermalError::Property`] outside the table.
    pub fn at(&self, surface: ThermodynamicTemperature) -> Result<HeatTransfer, ThermalError> {
        match self {
            Self::Constant(film) => Ok(*film),
            Self::OfTemperature(curve) => {
                let film = curve.at(surface.get::<kelvin>()).map_err(refused)?;
                Ok(HeatTransfer::new::<watt_per_square_meter_kelvin>(film))
            }
        }
    }

    /// Smallest and largest coefficient of the table.
    pub fn extremes(&self) -> (HeatTransfer, HeatTransfer) {
        match self {
            Self::Constant(film) => (*film, *film),
            Self::OfTemperature(curve) => {
                let (least, most) = curve.extremes();
                let film = HeatTransfer::new::<watt_per_square_meter_kelvin>;
                (film(least), film(most))
            }
        }
    }
}

fn refused(source: CurveError) -> ThermalError {
    ThermalError::Property { property: PROPERTY, source }
}

/// How the table is named in errors.
const PROPERTY: &str = "film coefficient";

/// Differences from 0 to `span`, as a hyperbolic sine: even steps below [`FLOOR_K`], even factors above.
fn fading(span: f64, rows: usize) -> Vec<f64> {
    let last = rows - 1;
    let step = (span / FLOOR_K).asinh() / last as f64;
    // The exponential function of each place is that of the place before times the same factor.
    let (factor, mut grown) = (step.exp(), 1.0_f64);
    let mut differences = Vec::with_capacity(rows);
    for _ in 0..last {
        differences.push(0.5 * FLOOR_K * (grown - 1.0 / grown));
        grown *= factor;
    }
    differences.push(span);
    differences
}

/// Slopes of a film over differences as [`fading`] gives them, W/(m² K²): they are even in the argument of the sine, so that its
/// derivative is that of a polynomial through five neighbours, exact to the fourth power.
///
/// With the slopes that three neighbours give, the curve bends so abruptly at its rows that a solver counts them.
/// **Source**: five-point differences, M. Abramowitz, I. A. Stegun, "Handbook of Mathematical Functions", table 25.2 (from memory).
fn slopes(differences: &[f64], films: &[f64]) -> Vec<f64> {
    let last = films.len() - 1;
    let step = (differences[last] / FLOOR_K).asinh() / last as f64;
    let sum =
        |first: usize, weights: [f64; 5]| -> f64 { weights.iter().zip(&films[first..]).map(|(w, f)| w * f).sum() };
    let slope = |i: usize| {
        let twelve_steps = match i {
            // Without a difference it makes none on which side the surface is.
            0 => 0.0,
            1 => sum(0, [-3.0, -10.0, 18.0, -6.0, 1.0]),
            _ if i + 1 == last => sum(last - 4, [-1.0, 6.0, -18.0, 10.0, 3.0]),
            _ if i == last => sum(last - 4, [3.0, -16.0, 36.0, -48.0, 25.0]),
            _ => sum(i - 2, [1.0, -8.0, 0.0, 8.0, -1.0]),
        };
        twelve_steps / (12.0 * step * (differences[i] * differences[i] + FLOOR_K * FLOOR_K).sqrt())
    };
    (0..=last).map(slope).collect()
}

/// Superheats from 0 to `span` with rows at every corner of the boiling curve.
fn superheats(curve: &NitrogenPoolCurve, span: f64) -> Vec<f64> {
    let [start, peak, end] = [curve.boiling_superheat, curve.critical_superheat, curve.minimum_superheat];
    let mut all = fading(start * (1.0 - CORNER), 8);
    all.push(start);
    all.extend(factors(start * (1.0 + CORNER), peak * (1.0 - CORNER), 14));
    all.push(peak);
    all.extend(factors(peak * (1.0 + CORNER), end * (1.0 - CORNER), 20));
    all.push(end);
    all.extend(factors(end * (1.0 + CORNER), span.max(end * 1.1), 12));
    all.retain(|&excess| excess < span * (1.0 - 1e-6));
    all.push(span);
    all
}

/// `rows` values from `low` to `high` by even factors.
fn factors(low: f64, high: f64, rows: usize) -> impl Iterator<Item = f64> {
    let last = rows - 1;
    let step = (high / low).ln() / last as f64;
    (0..rows).map(move |i| low * (step * i as f64).exp())
}
