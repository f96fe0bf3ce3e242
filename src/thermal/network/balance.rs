//! Rates of change of all bodies and accounts.

use super::super::error::ThermalError;
use super::super::frost::{FUSION, freezes, melting_share};
use super::Partner;
use super::check::known;
use super::checked::Net;

impl Net<'_> {
    /// Temperature of what a surface faces.
    fn faced(&self, with: Partner, state: &[f64]) -> f64 {
        match with {
            Partner::Surroundings(index) => self.surroundings[index],
            Partner::Body(index) => state[index],
        }
    }

    /// Rates of all numbers of the state. Layout: temperatures, heat to each of the surroundings, then dew, frost, heat
    /// of melting and latent heat of each wet body.
    pub(super) fn rates(&self, state: &[f64], rates: &mut [f64]) {
        rates.fill(0.0);
        for (body, rate) in self.bodies.iter().zip(rates.iter_mut()) {
            *rate = body.power;
        }
        for link in &self.links {
            let (one, other) = (state[link.one], state[link.other]);
            let heat = link.conductance(one, other) * (one - other);
            rates[link.one] -= heat;
            rates[link.other] += heat;
        }
        self.through_surfaces(state, rates);
        self.warming(state, rates);
    }

    fn through_surfaces(&self, state: &[f64], rates: &mut [f64]) {
        for surface in &self.surfaces {
            let flux = surface.flux(state[surface.body], self.faced(surface.with, state));
            rates[surface.body] -= (flux.outward - flux.latent) * surface.area;
            let receiver = match surface.with {
                Partner::Surroundings(index) => self.bodies.len() + index,
                Partner::Body(index) => index,
            };
            rates[receiver] += flux.outward * surface.area;
            if let Some(wet) = self.bodies[surface.body].wet {
                let kind = usize::from(freezes(flux.surface));
                rates[self.dew(wet) + kind] += flux.water * surface.area;
                rates[self.dew(wet) + 3] += flux.latent * surface.area;
            }
        }
    }

    /// Turns the heat into each body to a rate of temperature; frost that melts takes part of it.
    fn warming(&self, state: &[f64], rates: &mut [f64]) {
        for (index, body) in self.bodies.iter().enumerate() {
            let t = state[index];
            let mut capacity = body.mass * body.capacity.at_inside(t);
            let mut melting = 0.0;
            if let Some(wet) = body.wet {
                // The solver's trial stages may leave a frost mass a last digit below zero.
                melting = state[self.dew(wet) + 1].max(0.0) * FUSION * melting_share(t);
                capacity += melting;
            }
            rates[index] /= capacity;
            if let Some(wet) = body.wet {
                rates[self.dew(wet) + 2] = melting * rates[index];
            }
        }
    }

    /// Makes the rates those of rest: temperatures stand still, and what the last trace of their change still carries is
    /// taken from the heat to the surroundings, in proportion, so that the account closes over any time.
    pub(super) fn steady(&self, state: &[f64], rates: &mut [f64]) {
        let (temperatures, accounts) = rates.split_at_mut(self.bodies.len());
        let mut rest = 0.0;
        for ((body, &t), rate) in self.bodies.iter().zip(state).zip(temperatures) {
            rest += body.mass * body.capacity.at_inside(t) * *rate;
            *rate = 0.0;
        }
        let heats = &mut accounts[..self.surroundings.len()];
        let whole: f64 = heats.iter().map(|heat| heat.abs()).sum();
        if whole > 0.0 {
            heats.iter_mut().for_each(|heat| *heat += rest * heat.abs() / whole);
        }
    }

    /// An error unless all tables cover the state.
    pub(super) fn check_covered(&self, state: &[f64]) -> Result<(), ThermalError> {
        for (body, &t) in self.bodies.iter().zip(state) {
            known(body.capacity, t, "heat capacity")?;
        }
        for surface in &self.surfaces {
            surface.check_covered(state[surface.body], self.faced(surface.with, state))?;
        }
        self.links.iter().try_for_each(|link| link.check_covered(state[link.one], state[link.other]))
    }

    /// Heat capacity of all bodies, J/K.
    pub(super) fn capacity(&self, state: &[f64]) -> f64 {
        self.bodies.iter().zip(state).map(|(body, &t)| body.mass * body.capacity.at_inside(t)).sum()
    }

    /// Heat capacity of all bodies over what leads to the surroundings, s; infinite when nothing does.
    pub(super) fn time_constant(&self, state: &[f64]) -> f64 {
        let open = self.surfaces.iter().filter(|surface| matches!(surface.with, Partner::Surroundings(_)));
        let leads: f64 = open.map(|s| s.conductance(state[s.body], self.faced(s.with, state))).sum();
        if leads > 0.0 { self.capacity(state) / leads } else { f64::INFINITY }
    }

    /// Widest difference among the temperatures at the start and those of the surroundings, K.
    pub(super) fn spread(&self) -> f64 {
        let all = self.bodies.iter().map(|body| body.start).chain(self.surroundings.iter().copied());
        let (low, high) = all.fold((f64::INFINITY, 0.0_f64), |(low, high), t| (low.min(t), high.max(t)));
        high - low
    }
}
