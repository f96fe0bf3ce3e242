//! The heat balance of one lumped body in one stage, in plain SI.

use super::error::ThermalError;
use super::lumped::CheckedBody;
use super::root::root;
use super::stage::{CheckedFilm, CheckedStage};
use crate::stock::{Curve, Reader};

/// Stefan-Boltzmann constant, W/(m² K⁴); CODATA 2018, exact by the 2019 SI.
const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;
/// Temperature to which the balance of heating power and loss is searched, K.
const LIMIT_TOLERANCE_K: f64 = 1e-9;

/// `m c(T) dT/dt = P - A H (T - T_s) / (1 + H R)`, with `H = h + ε σ (T² + T_s²)(T + T_s)` and `R = L/(n k)`.
#[derive(Clone, Debug)]
pub(super) struct Balance<'a> {
    heat_capacity: &'a Curve,
    capacity: Reader<'a>,
    mass: f64,
    area: f64,
    film: CheckedFilm<'a>,
    /// The film, where it is a table.
    film_table: Option<Reader<'a>>,
    /// ε σ, or zero when the stage does not radiate.
    radiation: f64,
    surroundings: f64,
    power: f64,
    /// Conduction length over conductivity, m² K/W.
    inner: f64,
    divisor: f64,
}

impl<'a> Balance<'a> {
    /// The balance with the conductivity at the temperature midway between `start` and `end` (or the limit).
    pub(super) fn new(
        body: &CheckedBody<'a>,
        stage: &CheckedStage<'a>,
        start: f64,
        end: Option<f64>,
    ) -> Result<Self, ThermalError> {
        let conductivity = |t| {
            let known = body.conductivity.at(t);
            known.map_err(|source| ThermalError::Property { property: "thermal conductivity", source })
        };
        let mut balance = Self {
            heat_capacity: body.heat_capacity,
            capacity: body.heat_capacity.reader(),
            mass: body.mass,
            area: body.area,
            film: stage.film,
            film_table: match stage.film {
                CheckedFilm::Constant(_) => None,
                CheckedFilm::Table(curve) => Some(curve.reader()),
            },
            radiation: if stage.radiates { STEFAN_BOLTZMANN * body.emissivity } else { 0.0 },
            surroundings: stage.surroundings,
            power: stage.power,
            inner: body.path_length / conductivity(start)?,
            divisor: body.path_divisor,
        };
        let end = end.unwrap_or_else(|| balance.limit());
        // Strong heating has its limit far beyond any table; the part is taken out long before.
        let (coldest, hottest) = body.conductivity.range();
        let middle = (0.5 * (start + end)).clamp(coldest, hottest);
        balance.inner = body.path_length / conductivity(middle)?;
        Ok(balance)
    }

    /// Coefficient of film and radiation together, before the resistance inside, W/(m² K).
    pub(super) fn outer_coefficient(&self, t: f64) -> f64 {
        let s = self.surroundings;
        let film = self.film_table.as_ref().map_or_else(|| self.film.at(t), |table| table.at_inside(t));
        film + self.radiation * (t * t + s * s) * (t + s)
    }

    /// Biot number `H L / k` at a temperature.
    pub(super) fn biot(&self, t: f64) -> f64 {
        self.outer_coefficient(t) * self.inner
    }

    /// Coefficient that acts between the mean temperature and the surroundings, W/(m² K).
    fn coefficient(&self, t: f64) -> f64 {
        let outer = self.outer_coefficient(t);
        outer / (1.0 + outer * self.inner / self.divisor)
    }

    /// dT/dt, K/s.
    pub(super) fn rate(&self, t: f64) -> f64 {
        let loss = self.area * self.coefficient(t) * (t - self.surroundings);
        (self.power - loss) / (self.mass * self.capacity.at_inside(t))
    }

    /// Time constant `m c / (A h_eff)` at a temperature, s.
    pub(super) fn time_constant(&self, t: f64) -> f64 {
        1.0 / self.pace(t)
    }

    /// Share of the way to the surroundings that is gone in each second, 1/s: one over the time constant, by a single division.
    pub(super) fn pace(&self, t: f64) -> f64 {
        let outer = self.outer_coefficient(t);
        self.area * self.divisor * outer
            / (self.mass * self.capacity.at_inside(t) * (self.divisor + outer * self.inner))
    }

    /// Temperature that the body approaches, K: the surroundings, or where the loss equals the power.
    pub(super) fn limit(&self) -> f64 {
        if self.power <= 0.0 {
            return self.surroundings;
        }
        // Radiation only adds loss, so the limit without it lies above.
        let without = 1.0 / self.film.least() + self.inner / self.divisor;
        let highest = self.surroundings + self.power / self.area * without;
        let excess = |t: f64| self.power - self.area * self.coefficient(t) * (t - self.surroundings);
        let steady = matches!(self.film, CheckedFilm::Constant(_));
        if (steady && self.radiation <= 0.0) || excess(highest) >= 0.0 {
            return highest;
        }
        root(excess, (self.surroundings, highest), LIMIT_TOLERANCE_K)
    }

    /// Whether heat is put in.
    pub(super) fn is_heated(&self) -> bool {
        self.power > 0.0
    }

    /// Whether film, heat capacity and resistance are constant, so that the approach is exponential.
    pub(super) fn is_linear(&self) -> bool {
        let mut values = self.heat_capacity.points().map(|row| row.1);
        let first = values.next().unwrap_or_default();
        let steady = matches!(self.film, CheckedFilm::Constant(_)) && self.radiation <= 0.0;
        steady && values.all(|value| (value - first).abs() <= f64::EPSILON * first)
    }

    /// An error unless heat capacity and film are known at a temperature.
    pub(super) fn check_covered(&self, t: f64) -> Result<(), ThermalError> {
        let known = self.heat_capacity.at(t).map(|_| ());
        known.map_err(|source| ThermalError::Property { property: "heat capacity", source })?;
        self.film.check_covered(t)
    }
}
