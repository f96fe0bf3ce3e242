//! Step control.

use super::super::error::ThermalError;
use super::checked::Net;
use super::history::{NetworkHistory, Steps};
use super::rosenbrock::{Trial, step};
use crate::quantity::ValueError;

/// Local error of a temperature allowed in each step, as a share of the widest difference of temperature.
///
/// At 1e-5 two runs whose starts differ by a millikelvin part by half a second of a window that ends after an hour.
const STEP_TOLERANCE: f64 = 1e-6;
/// Latent heat by which an error in the mass of water counts as heat, J/kg; an order of size only.
const LATENT: f64 = 2.5e6;
/// First step: this share of the time in which the fastest body would cross the widest difference.
const FIRST_SHARE: f64 = 0.03;
/// Steps, taken or not, after which the run is given up; a usual run takes 20 to 100.
const MOST_STEPS: usize = 20_000;
/// Shortest step as a share of the time; below it a jump in a table is stepped over.
const SHORTEST: f64 = 1e-13;
/// Change still to come, as a share of the widest difference, at which all is at rest.
const AT_REST: f64 = 1e-7;
/// Change over all the time so far, in units of the one above, from which on rest is possible.
const WORTH_ASKING: f64 = 1e3;
/// Least difference that the tolerance refers to, K.
const SMALLEST_SCALE_K: f64 = 1e-2;
/// Difference of temperature with which rates are differentiated, K.
const NUDGE_K: f64 = 1e-4;
/// The same for masses of frost, kg.
const NUDGE_KG: f64 = 1e-9;
/// Safety, least and greatest factor on the step.
const SAFETY: f64 = 0.9;
const LEAST_FACTOR: f64 = 0.2;
const GREATEST_FACTOR: f64 = 5.0;

/// Follows the network for `length` seconds.
pub(super) fn solve(net: &Net, length: f64) -> Result<NetworkHistory, ThermalError> {
    // The solver works on arrays; a size a little too large costs less than a heap for every stage.
    let steps = match net.size() {
        0..=2 => Run::<2>::new(net, length)?.follow(),
        3..=4 => Run::<4>::new(net, length)?.follow(),
        5..=6 => Run::<6>::new(net, length)?.follow(),
        7..=9 => Run::<9>::new(net, length)?.follow(),
        10..=16 => Run::<16>::new(net, length)?.follow(),
        17..=32 => Run::<32>::new(net, length)?.follow(),
        size => Err(too_many(size)),
    }?;
    Ok(NetworkHistory::new(net, steps))
}

fn too_many(size: usize) -> ThermalError {
    #[allow(clippy::cast_precision_loss)]
    let value = size as f64;
    ValueError::OutOfRange {
        what: "number of bodies and accounts of heat and water",
        value,
        from: 1.0,
        to: 32.0,
        unit: "in one network",
    }
    .into()
}

/// A run on its way.
struct Run<'n, 'a, const N: usize> {
    net: &'n Net<'a>,
    length: f64,
    /// Widest difference of temperature, K.
    scale: f64,
    tolerance: [f64; N],
    time: f64,
    state: [f64; N],
    rate: [f64; N],
    steps: Steps,
}

impl<'n, 'a, const N: usize> Run<'n, 'a, N> {
    fn new(net: &'n Net<'a>, length: f64) -> Result<Self, ThermalError> {
        let (mut state, mut rate) = ([0.0; N], [0.0; N]);
        for (number, body) in state.iter_mut().zip(&net.bodies) {
            *number = body.start;
        }
        net.check_covered(&state)?;
        net.rates(&state, &mut rate);
        // A heater may take the bodies beyond what the surroundings say; a minute of it sets the scale.
        let scale = net.spread().max(fastest(net, &rate) * length.min(60.0)).max(SMALLEST_SCALE_K);
        // Heat to the surroundings follows the temperatures and needs no steps of its own.
        let mut tolerance = [f64::INFINITY; N];
        tolerance[..net.bodies.len()].fill(STEP_TOLERANCE * scale);
        let whole = STEP_TOLERANCE * scale * net.capacity(&state);
        for wet in 0..net.wet {
            // Where frost begins to melt the temperature hardly feels it, but the account must not miss it.
            let account = net.dew(wet);
            tolerance[account..account + 2].fill(whole / LATENT);
            tolerance[account + 2..account + 4].fill(whole);
        }
        Ok(Self { net, length, scale, tolerance, time: 0.0, state, rate, steps: Steps::new(net.size(), &state) })
    }

    fn follow(mut self) -> Result<Steps, ThermalError> {
        let fastest = fastest(self.net, &self.rate);
        let mut h = if fastest > 0.0 { FIRST_SHARE * self.scale / fastest } else { self.length };
        let mut jacobian = None;
        for _ in 0..MOST_STEPS {
            let left = self.length - self.time;
            if left <= f64::EPSILON * self.length {
                return Ok(self.steps);
            }
            if self.at_rest(left) {
                self.net.steady(&self.state, &mut self.rate);
                self.steps.rest(self.time, left, &self.state, &self.rate);
                return Ok(self.steps);
            }
            h = h.min(left);
            let slopes = jacobian.get_or_insert_with(|| self.jacobian());
            let rates = |state: &[f64; N], rates: &mut [f64; N]| self.net.rates(state, rates);
            let trial = step(rates, (&self.state, &self.rate), slopes, h);
            let error = trial.as_ref().map_or(f64::INFINITY, |trial| self.error(trial));
            let factor = (SAFETY * error.powf(-0.25)).clamp(LEAST_FACTOR, GREATEST_FACTOR);
            match trial.filter(|_| error <= 1.0 || (error.is_finite() && h < SHORTEST * self.length)) {
                Some(trial) => {
                    self.accept(&trial, h)?;
                    jacobian = None;
                    h *= factor;
                }
                None => h *= factor.min(SAFETY),
            }
        }
        Err(ThermalError::NotFollowed { reached_s: self.time })
    }

    fn accept(&mut self, trial: &Trial<N>, h: f64) -> Result<(), ThermalError> {
        self.steps.push((self.time, h), &self.state, &trial.end, &trial.dense);
        self.time += h;
        self.state = trial.end;
        self.net.check_covered(&self.state)?;
        self.net.rates(&self.state, &mut self.rate);
        Ok(())
    }

    /// Largest error over what is allowed; infinite when anything is not a number.
    fn error(&self, trial: &Trial<N>) -> f64 {
        let shares = trial.error.iter().zip(&self.tolerance).map(|(error, allowed)| (error / allowed).abs());
        shares.fold(1e-6, |most: f64, share| if share.is_finite() { most.max(share) } else { f64::INFINITY })
    }

    /// Derivatives of all rates by temperatures and frost masses; nothing depends on the other accounts.
    fn jacobian(&self) -> [[f64; N]; N] {
        let mut slopes = [[0.0; N]; N];
        let frost = (0..self.net.wet).map(|wet| (self.net.dew(wet) + 1, NUDGE_KG));
        for (j, nudge) in (0..self.net.bodies.len()).map(|body| (body, NUDGE_K)).chain(frost) {
            let (mut nudged, mut rates) = (self.state, [0.0; N]);
            nudged[j] += nudge;
            self.net.rates(&nudged, &mut rates);
            for i in 0..N {
                slopes[i][j] = (rates[i] - self.rate[i]) / nudge;
            }
        }
        slopes
    }

    /// Whether what is still to come does not matter: the rate, kept up for the time constant of the whole or for the
    /// time left, changes nothing.
    fn at_rest(&self, left: f64) -> bool {
        let (fastest, nothing) = (fastest(self.net, &self.rate), AT_REST * self.scale);
        // Rest takes many time constants, so most calls end before the constant must be worked out.
        let late = fastest * self.time < WORTH_ASKING * nothing;
        fastest * left < nothing || (late && fastest * self.net.time_constant(&self.state) < nothing)
    }
}

/// Largest rate of a temperature, K/s.
fn fastest(net: &Net, rate: &[f64]) -> f64 {
    rate[..net.bodies.len()].iter().fold(0.0, |most, value| value.abs().max(most))
}
