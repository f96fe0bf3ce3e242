use super::super::error::ThermalError;
use super::super::root::root;
use super::account::{HeatAccount, Water, account, water};
use super::check::place;
use super::checked::Net;
use crate::quantity::{TemperatureInterval, ThermodynamicTemperature, Time};
use uom::si::energy::joule;
use uom::si::f64::Energy;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// Rounding of times, as a share of the length, that still counts as inside it.
const TIME_ROUNDING: f64 = 1e-9;
/// Share of a step to which a passing is located.
const SHARE_TOLERANCE: f64 = 1e-12;
/// Points of a step at which differences are compared.
const SAMPLES: u32 = 8;

/// Temperatures of all bodies of a network against time, and where the heat went.
#[derive(Clone, Debug, PartialEq)]
pub struct NetworkHistory {
    bodies: usize,
    surroundings: usize,
    steps: Steps,
    account: HeatAccount,
    waters: Vec<Water>,
}

/// Accepted steps: every number of the state as a cubic of the share of the step.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Steps {
    size: usize,
    spans: Vec<(f64, f64)>,
    /// Four coefficients for each number of each step.
    cubics: Vec<[f64; 4]>,
    end: Vec<f64>,
}

impl Steps {
    pub(super) fn new(size: usize, start: &[f64]) -> Self {
        let (spans, cubics) = (Vec::with_capacity(32), Vec::with_capacity(32 * size));
        Self { size, spans, cubics, end: start[..size].to_vec() }
    }

    /// Adds a step; `dense` are the two weights `d` of `y(s) = y0 (1 - s) + s (y1 + (1 - s) (d0 + s d1))`.
    pub(super) fn push<const N: usize>(
        &mut self,
        (begin, width): (f64, f64),
        from: &[f64; N],
        to: &[f64; N],
        dense: &[[f64; N]; 2],
    ) {
        self.spans.push((begin, width));
        for i in 0..self.size {
            let (d0, d1) = (dense[0][i], dense[1][i]);
            self.cubics.push([from[i], to[i] - from[i] + d0, d1 - d0, -d1]);
        }
        self.end.copy_from_slice(&to[..self.size]);
    }

    /// Adds a stretch in which nothing changes but what flows steadily.
    pub(super) fn rest(&mut self, begin: f64, width: f64, state: &[f64], rate: &[f64]) {
        self.spans.push((begin, width));
        for i in 0..self.size {
            self.cubics.push([state[i], rate[i] * width, 0.0, 0.0]);
            self.end[i] = state[i] + rate[i] * width;
        }
    }

    pub(super) fn end(&self) -> &[f64] {
        &self.end
    }

    fn length(&self) -> f64 {
        self.spans.last().map_or(0.0, |(begin, width)| begin + width)
    }

    fn in_step(&self, step: usize, number: usize, share: f64) -> f64 {
        let [c0, c1, c2, c3] = self.cubics[step * self.size + number];
        c0 + share * (c1 + share * (c2 + share * c3))
    }

    fn at(&self, number: usize, time: f64) -> f64 {
        let after = self.spans.partition_point(|span| span.0 <= time);
        match after.checked_sub(1) {
            Some(step) if time < self.length() => {
                let (begin, width) = self.spans[step];
                self.in_step(step, number, (time - begin) / width)
            }
            _ => self.end[number],
        }
    }

    fn time_of(&self, body: usize, target: f64) -> Option<f64> {
        self.spans.iter().enumerate().find_map(|(step, &(begin, width))| {
            let off = |share: f64| self.in_step(step, body, share) - target;
            // Halves, so that a turn within a step does not hide a passing from both ends.
            [(0.0, 0.5), (0.5, 1.0)].into_iter().find_map(|(from, to)| {
                let share = passing(&off, from, to)?;
                Some(begin + width * share)
            })
        })
    }
}

fn passing(off: &impl Fn(f64) -> f64, from: f64, to: f64) -> Option<f64> {
    let (before, after) = (off(from), off(to));
    if before.abs() < f64::MIN_POSITIVE {
        Some(from)
    } else if before * after > 0.0 {
        None
    } else {
        Some(root(off, (from, to), SHARE_TOLERANCE))
    }
}

impl NetworkHistory {
    pub(super) fn new(net: &Net, steps: Steps) -> Self {
        let (account, waters) = (account(net, steps.end(), steps.length()), water(net, steps.end()));
        Self { bodies: net.bodies.len(), surroundings: net.surroundings.len(), steps, account, waters }
    }

    /// How long it lasts.
    pub fn length(&self) -> Time {
        Time::new::<second>(self.steps.length())
    }

    /// Temperature of a body at a time since the beginning.
    ///
    /// # Errors
    /// [`ThermalError::Value`] for a body that does not exist, [`ThermalError::TimeOutside`].
    pub fn temperature_at(&self, body: usize, time: Time) -> Result<ThermodynamicTemperature, ThermalError> {
        place("body", body, self.bodies)?;
        let (asked_s, end_s) = (time.get::<second>(), self.steps.length());
        if asked_s >= 0.0 && asked_s <= end_s * (1.0 + TIME_ROUNDING) {
            Ok(ThermodynamicTemperature::new::<kelvin>(self.kelvin_at(body, asked_s)))
        } else {
            Err(ThermalError::TimeOutside { asked_s, end_s })
        }
    }

    /// Temperature (K) of a body that exists at a time (s) inside the history; the end value beyond it.
    pub(crate) fn kelvin_at(&self, body: usize, time: f64) -> f64 {
        self.steps.at(body, time)
    }

    /// Temperatures of all bodies at the end, with which the next network may begin.
    pub fn end(&self) -> Vec<ThermodynamicTemperature> {
        let temperatures = self.steps.end().iter().take(self.bodies);
        temperatures.map(|&t| ThermodynamicTemperature::new::<kelvin>(t)).collect()
    }

    /// First time at which a body has this temperature; `None` when it never has, or when there is no such body.
    pub fn first_time_at(&self, body: usize, temperature: ThermodynamicTemperature) -> Option<Time> {
        place("body", body, self.bodies).ok()?;
        self.steps.time_of(body, temperature.get::<kelvin>()).map(Time::new::<second>)
    }

    /// When two bodies differ most, and by how much (the first less the second).
    ///
    /// # Errors
    /// [`ThermalError::Value`] for a body that does not exist.
    pub fn largest_difference(&self, one: usize, other: usize) -> Result<(Time, TemperatureInterval), ThermalError> {
        place("body", one, self.bodies)?;
        place("body", other, self.bodies)?;
        let (time, difference) = self.extreme(|at| at(one) - at(other));
        Ok((Time::new::<second>(time), TemperatureInterval::new::<step_kelvin>(difference)))
    }

    /// When a body is farthest from its temperature at the beginning, and by how much.
    ///
    /// # Errors
    /// [`ThermalError::Value`] for a body that does not exist.
    pub fn largest_change(&self, body: usize) -> Result<(Time, TemperatureInterval), ThermalError> {
        place("body", body, self.bodies)?;
        let start = self.steps.at(body, 0.0);
        let (time, change) = self.extreme(|at| at(body) - start);
        Ok((Time::new::<second>(time), TemperatureInterval::new::<step_kelvin>(change)))
    }

    /// Time and value at which a function of the temperatures (K, by body) is largest in size, among the solver's steps
    /// and seven points in each.
    pub(super) fn extreme(&self, of: impl Fn(&dyn Fn(usize) -> f64) -> f64) -> (f64, f64) {
        let mut most = (self.steps.length(), of(&|body| self.steps.end[body]));
        for (step, &(begin, width)) in self.steps.spans.iter().enumerate() {
            for sample in 0..SAMPLES {
                let share = f64::from(sample) / f64::from(SAMPLES);
                let value = of(&|body| self.steps.in_step(step, body, share));
                if value.abs() > most.1.abs() {
                    most = (begin + share * width, value);
                }
            }
        }
        most
    }

    /// Heat that one of the surroundings has taken up until a time; negative when it has given heat.
    ///
    /// # Errors
    /// [`ThermalError::Value`] for surroundings that do not exist.
    pub fn heat_to(&self, surroundings: usize, until: Time) -> Result<Energy, ThermalError> {
        place("surroundings", surroundings, self.surroundings)?;
        Ok(Energy::new::<joule>(self.steps.at(self.bodies + surroundings, until.get::<second>())))
    }

    /// Where the heat went, at the end.
    pub fn account(&self) -> &HeatAccount {
        &self.account
    }

    /// Water and frost that settled on a body until the end; none when it faces no moist air.
    pub fn water_on(&self, body: usize) -> Water {
        self.waters.get(body).copied().unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Area, HeatTransfer, Mass, Power};
    use crate::stock::Curve;
    use crate::thermal::{Exchange, Network, NetworkBody, Partner, SurfaceFilm, Wrap};

    /// 0.2 kg of steel under a constant film of 20 W/(m² K) on 0.011 m², from 20 °C: a time constant of 427 s.
    fn steps(length: f64, surroundings: f64) -> NetworkHistory {
        let heat_capacity = Curve::constant(470.0, 20.0, 2000.0).expect("a curve");
        let at = ThermodynamicTemperature::new::<kelvin>;
        let (mass, power) = (Mass::new::<uom::si::mass::kilogram>(0.2), Power::default());
        let exchange = Exchange {
            body: 0,
            with: Partner::Surroundings(0),
            area: Area::new::<uom::si::area::square_meter>(0.011),
            film: SurfaceFilm::Constant(HeatTransfer::new::<uom::si::heat_transfer::watt_per_square_meter_kelvin>(
                20.0,
            )),
            emissivity: 0.0,
            inside: None,
            wrap: Wrap::none(),
            moisture: None,
        };
        let network = Network {
            bodies: vec![NetworkBody { mass, heat_capacity: &heat_capacity, start: at(293.15), power }],
            surroundings: vec![at(surroundings)],
            exchanges: vec![exchange],
            links: vec![],
        };
        network.run(Time::new::<second>(length)).expect("a history")
    }

    /// Each plan follows dozens of histories: a control that has lost its measure of the error takes far more steps, or far
    /// fewer and a wrong curve.
    #[test]
    fn a_usual_run_takes_tens_of_steps_whatever_its_length_and_all_of_it_is_the_exponential() {
        for surroundings in [255.15, 77.35, 393.15] {
            for length in [600.0, 6e3, 6e5] {
                let history = steps(length, surroundings);
                let count = history.steps.spans.len();
                assert!((5..=60).contains(&count), "{count} steps for {length} s");
                let mut before = 0.0;
                for (begin, width) in &history.steps.spans {
                    assert!((begin - before).abs() < 1e-9 * length && *width > 0.0, "a gap at {begin}");
                    before = begin + width;
                }
                assert!((before - length).abs() < 1e-9 * length);
                for share in [0.01, 0.1, 0.35, 0.5, 0.9, 1.0] {
                    let time: f64 = share * length;
                    let want = surroundings + (293.15 - surroundings) * (-time * 0.22 / 94.0).exp();
                    let off = history.kelvin_at(0, time) - want;
                    assert!(off.abs() < 1e-4 * (293.15 - surroundings).abs(), "{off} K off after {time} s");
                }
            }
        }
    }

    /// Once nothing changes any more, the rest of the time is one step.
    #[test]
    fn what_is_at_rest_is_not_followed_step_by_step() {
        let (long, longer) = (steps(6e4, 255.15), steps(6e6, 255.15));
        let last = |history: &NetworkHistory| *history.steps.spans.last().expect("a step");
        assert_eq!(long.steps.spans.len(), longer.steps.spans.len());
        // Rest is where a ten-millionth of the difference is left: ln 1e7 = 16 time constants, give or take a few.
        let time_constant = 94.0 / 0.22;
        for history in [&long, &longer] {
            let begun = last(history).0 / time_constant;
            assert!((12.0..24.0).contains(&begun), "at rest after {begun} time constants");
        }
    }
}
