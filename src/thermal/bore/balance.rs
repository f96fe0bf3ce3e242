//! The heat balance of two parts that face each other over a gap, in plain SI.

use super::gap::CheckedGap;
use super::part::CheckedPart;
use crate::quantity::{Length, ThermodynamicTemperature};
use crate::stock::Reader;
use crate::thermal::{ThermalError, contact_temperature};
use uom::si::length::meter;

/// Stefan-Boltzmann constant, W/(m² K⁴); CODATA 2018, exact by the 2019 SI.
const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;
/// Share of the settled resistance inside a part that is counted towards the joint.
///
/// `L/(n k)` is reached only when the flux has been steady for a while; in the bore it grows until the end. In 23 races
/// solved along the radius or by finite elements half of it was never late: early by up to 5 % for thin rings, 13 % for
/// thick ones, 20 % for solid parts (concentric; up to 29 % when touching). The whole is late by up to 18 %, none early
/// by up to 73 %.
const JOINT_SHARE: f64 = 0.5;

/// Temperatures of inner and outer part, K.
pub(super) type Temperatures = [f64; 2];

/// `m c dT/dt = ± A U (T_outer - T_inner) - loss`, with `1/U = 1/h_gap + R_inner + R_outer` for the joint and
/// `loss = A_free H (T - T_shop) / (1 + H R)`, `H = h + ε σ (T² + T_s²)(T + T_s)`, for the rest.
#[derive(Clone, Copy, Debug)]
pub(super) struct Pair<'a> {
    parts: [CheckedPart<'a>; 2],
    gap: CheckedGap<'a>,
    sizes: [f64; 2],
    joint_area: f64,
    shop: f64,
    /// σ over `1/ε₁ + 1/ε₂ - 1`.
    across: f64,
    /// Resistance inside both parts to the joint, m² K/W.
    to_joint: f64,
    /// Resistance inside each part to its free surface, m² K/W.
    to_air: [f64; 2],
}

/// Heat capacities and expansions of inner and outer part, each with where it was read last.
pub(super) struct Tables<'a> {
    capacity: [Reader<'a>; 2],
    expansion: [Reader<'a>; 2],
}

/// Both parts at the difference that their losses keep up.
#[derive(Clone, Copy, Debug)]
pub(super) struct Together {
    pub(super) temperatures: Temperatures,
    /// Rate of the mean temperature, K/s.
    pub(super) rate: f64,
}

/// The numbers of one insertion, checked.
#[derive(Clone, Copy, Debug)]
pub(super) struct Setting {
    /// Sizes at 20 °C of inner and outer part, m.
    pub(super) sizes: [f64; 2],
    pub(super) joint_area: f64,
    pub(super) shop: f64,
}

impl<'a> Pair<'a> {
    /// The balance, with the conductivities midway between the start and the temperature without losses.
    pub(super) fn new(
        parts: [CheckedPart<'a>; 2],
        gap: CheckedGap<'a>,
        setting: Setting,
    ) -> Result<Self, ThermalError> {
        let Setting { sizes, joint_area, shop } = setting;
        let emissivities = parts.map(|part| part.emissivity);
        let radiates = emissivities.iter().all(|&emissivity| emissivity > 0.0);
        let across =
            if radiates { STEFAN_BOLTZMANN / (1.0 / emissivities[0] + 1.0 / emissivities[1] - 1.0) } else { 0.0 };
        let starts = parts.map(|part| part.start);
        let capacities = [parts[0].capacity(starts[0]), parts[1].capacity(starts[1])];
        let common = (capacities[0] * starts[0] + capacities[1] * starts[1]) / (capacities[0] + capacities[1]);
        let mut resistances = [(0.0, 0.0); 2];
        for (resistance, part) in resistances.iter_mut().zip(&parts) {
            let middle = 0.5 * (part.start + common);
            part.check_covered(middle)?;
            *resistance = part.resistances(middle);
        }
        let to_joint = JOINT_SHARE * (resistances[0].0 + resistances[1].0);
        let to_air = resistances.map(|resistance| resistance.1);
        Ok(Self { parts, gap, sizes, joint_area, shop, across, to_joint, to_air })
    }

    pub(super) fn starts(&self) -> Temperatures {
        self.parts.map(|part| part.start)
    }

    pub(super) fn shop(&self) -> f64 {
        self.shop
    }

    /// Whether anything leaves or enters the pair.
    pub(super) fn loses(&self) -> bool {
        self.parts.iter().any(|part| part.free_area > 0.0 && (part.film > 0.0 || part.free_emissivity > 0.0))
    }

    /// Bore of the outer part less outside of the inner one, m.
    pub(super) fn clearance(&self, t: &Temperatures) -> f64 {
        self.parts[1].size(self.sizes[1], t[1]) - self.parts[0].size(self.sizes[0], t[0])
    }

    /// The same, where it is asked for again and again.
    pub(super) fn clearance_in(&self, t: &Temperatures, tables: &Tables<'_>) -> f64 {
        let size = |part: usize| self.sizes[part] * (1.0 + tables.expansion[part].at_inside(t[part]));
        size(1) - size(0)
    }

    /// Common temperature at which the clearance is zero.
    pub(super) fn lock(&self) -> Option<ThermodynamicTemperature> {
        let [inner, outer] = self.sizes.map(Length::new::<meter>);
        contact_temperature(inner, self.parts[0].expansion, outer, self.parts[1].expansion)
    }

    /// Conductance of the gap itself, W/(m² K).
    pub(super) fn conductance(&self, t: &Temperatures, gripped: bool) -> f64 {
        self.conductance_over(t, (!gripped).then(|| self.clearance(t)))
    }

    /// The same over a clearance (m), or in the gripped seat.
    #[inline]
    fn conductance_over(&self, t: &Temperatures, clearance: Option<f64>) -> f64 {
        let film = 0.5 * (t[0] + t[1]);
        let between =
            clearance.map_or_else(|| self.gap.gripped(film), |clearance| self.gap.open(0.5 * clearance, film));
        between + self.across * (t[0] + t[1]) * (t[0] * t[0] + t[1] * t[1])
    }

    /// Heat that passes from the outer to the inner part, W.
    pub(super) fn through_joint(&self, t: &Temperatures, gripped: bool) -> f64 {
        self.passed(t, self.conductance(t, gripped))
    }

    fn passed(&self, t: &Temperatures, conductance: f64) -> f64 {
        self.joint_area * (t[1] - t[0]) * conductance / (1.0 + conductance * self.to_joint)
    }

    /// Heat that a part (0 inner, 1 outer) gives to the shop, W.
    pub(super) fn loss(&self, part: usize, t: f64) -> f64 {
        let &CheckedPart { free_area, film, free_emissivity, .. } = &self.parts[part];
        let s = self.shop;
        let outer = film + STEFAN_BOLTZMANN * free_emissivity * (t * t + s * s) * (t + s);
        free_area * (t - s) * outer / (1.0 + outer * self.to_air[part])
    }

    /// Its tables, each to be read where it was read before.
    pub(super) fn tables(&self) -> Tables<'a> {
        Tables {
            capacity: self.parts.map(|part| part.heat_capacity.reader()),
            expansion: self.parts.map(|part| part.expansion.reader()),
        }
    }

    /// dT/dt of both, K/s.
    pub(super) fn rates(&self, t: &Temperatures, gripped: bool, tables: &Tables<'_>) -> Temperatures {
        // A trial step of the solver may stray below absolute zero or to no number at all; then it is rejected.
        let t = &[t[0].max(0.0), t[1].max(0.0)];
        let clearance = (!gripped).then(|| self.clearance_in(t, tables));
        let across = self.passed(t, self.conductance_over(t, clearance));
        let [inner, outer] = self.capacities_in(t, tables);
        [(across - self.loss(0, t[0])) / inner, (-across - self.loss(1, t[1])) / outer]
    }

    /// Temperature that both would take if they evened out at once without loss, their capacities as they are now.
    pub(super) fn mean(&self, t: &Temperatures) -> f64 {
        let [inner, outer] = self.capacities(t);
        (inner * t[0] + outer * t[1]) / (inner + outer)
    }

    /// The state in which both change at the same rate, at a mean temperature: with `ΔT` the excess of the outer part,
    /// `A U ΔT = (C_outer loss_inner - C_inner loss_outer) / (C_inner + C_outer)`.
    ///
    /// Losses are taken at the mean first and then at the temperatures that follow, so what is left is of the order of
    /// the square of `ΔT` over the excess above the shop.
    pub(super) fn together(&self, mean: f64, tables: &Tables<'_>) -> Together {
        let mean = mean.max(0.0);
        let both = [mean, mean];
        let [inner, outer] = self.capacities_in(&both, tables);
        let sum = inner + outer;
        let conductance = self.conductance_over(&both, Some(self.clearance_in(&both, tables)));
        let per_kelvin = self.joint_area * conductance / (1.0 + conductance * self.to_joint);
        let mut found = Together { temperatures: [mean, mean], rate: 0.0 };
        for _ in 0..2 {
            let losses = [self.loss(0, found.temperatures[0]), self.loss(1, found.temperatures[1])];
            let excess = (outer * losses[0] - inner * losses[1]) / (sum * per_kelvin);
            found.temperatures = [mean - excess * outer / sum, mean + excess * inner / sum];
            found.rate = -(losses[0] + losses[1]) / sum;
        }
        found
    }

    /// Heat that passes from the outer to the inner part while they are together, W: what keeps both at one rate.
    pub(super) fn through_joint_together(&self, t: &Temperatures) -> f64 {
        let [inner, outer] = self.capacities(t);
        (outer * self.loss(0, t[0]) - inner * self.loss(1, t[1])) / (inner + outer)
    }

    /// Time constant in which a difference between the two evens out, s.
    pub(super) fn evening_time(&self, t: &Temperatures) -> f64 {
        let [inner, outer] = self.capacities(t);
        let conductance = self.conductance(t, false);
        inner * outer / (inner + outer) * (1.0 + conductance * self.to_joint) / (self.joint_area * conductance)
    }

    fn capacities(&self, t: &Temperatures) -> [f64; 2] {
        [self.parts[0].capacity(t[0]), self.parts[1].capacity(t[1])]
    }

    fn capacities_in(&self, t: &Temperatures, tables: &Tables<'_>) -> [f64; 2] {
        let capacity = |part: usize| self.parts[part].mass * tables.capacity[part].at_inside(t[part]);
        [capacity(0), capacity(1)]
    }

    /// Heat taken up by each part between two states, J.
    pub(super) fn heat_between(&self, from: &Temperatures, to: &Temperatures) -> [f64; 2] {
        [self.parts[0].heat_between(from[0], to[0]), self.parts[1].heat_between(from[1], to[1])]
    }

    /// An error unless every table covers the temperatures.
    pub(super) fn check_covered(&self, t: &Temperatures) -> Result<(), ThermalError> {
        self.parts[0].check_covered(t[0])?;
        self.parts[1].check_covered(t[1])?;
        self.gap.air.check_covered(0.5 * (t[0] + t[1]))
    }
}

/// How the pair is followed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Mode {
    /// Both temperatures, over the open gap.
    Open,
    /// Both temperatures, in the gripped seat.
    Gripped,
    /// Over the open gap, but the parts have come together and their small difference is what the losses keep up:
    /// only the mean temperature is left to follow. The equations of both would force steps of a few seconds through
    /// minutes in which next to nothing happens.
    Together,
}

/// The pair in one mode: what the solver sees. Its state is both temperatures, or the mean and nothing.
pub(super) struct Phase<'a, 'b> {
    pub(super) pair: &'b Pair<'a>,
    pub(super) mode: Mode,
    pub(super) tables: Tables<'a>,
}

impl Phase<'_, '_> {
    pub(super) fn rates(&self, state: &Temperatures) -> Temperatures {
        match self.mode {
            Mode::Open => self.pair.rates(state, false, &self.tables),
            Mode::Gripped => self.pair.rates(state, true, &self.tables),
            Mode::Together => [self.pair.together(state[0], &self.tables).rate, 0.0],
        }
    }
}
