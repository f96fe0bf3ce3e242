//! Steps of the solver, kept as quartics.

use super::super::error::ThermalError;
use super::checked::Net;
use super::history::{NetworkHistory, Steps};
use differential_equations::interpolate::Interpolation;
use differential_equations::methods::ExplicitRungeKutta;
use differential_equations::ode::OrdinaryNumericalMethod;
use differential_equations::status::Status;

/// Local error of a temperature allowed in each step, as a share of the widest difference of temperature.
const STEP_TOLERANCE: f64 = 2e-7;
/// Local error of the accounts, which follow the temperatures and need no steps of their own (J or kg).
const NO_LIMIT: f64 = 1e30;
/// First step: this share of the time in which the fastest body would cross the widest difference.
const FIRST_SHARE: f64 = 0.02;
/// Steps after which the run is given up. A tenth of a kilogram in nucleate boiling needs some thousand for ten minutes.
const MOST_STEPS: usize = 200_000;
/// Change still to come, as a share of the widest difference, at which all is at rest.
const AT_REST: f64 = 1e-7;
/// Least difference that the tolerance refers to, K.
const SMALLEST_SCALE_K: f64 = 1e-2;

/// Follows the network for `length` seconds.
pub(super) fn solve(net: &Net, length: f64) -> Result<NetworkHistory, ThermalError> {
    // The solver works on arrays; a size a little too large costs less than a heap for every stage.
    let steps = match net.size() {
        0..=2 => run::<2>(net, length),
        3..=4 => run::<4>(net, length),
        5..=6 => run::<6>(net, length),
        7..=9 => run::<9>(net, length),
        10..=14 => run::<14>(net, length),
        15..=24 => run::<24>(net, length),
        25..=48 => run::<48>(net, length),
        size => Err(too_many(size)),
    }?;
    Ok(NetworkHistory::new(net, steps))
}

fn too_many(size: usize) -> ThermalError {
    #[allow(clippy::cast_precision_loss)]
    let value = size as f64;
    ThermalError::OutOfRange {
        what: "number of bodies and accounts of heat and water",
        value,
        from: 1.0,
        to: 48.0,
        unit: "in one network",
    }
}

fn run<const N: usize>(net: &Net, length: f64) -> Result<Steps, ThermalError> {
    let mut start = [0.0; N];
    for (number, body) in start.iter_mut().zip(&net.bodies) {
        *number = body.start;
    }
    net.check_covered(&start)?;
    let mut rate = [0.0; N];
    net.rates(&start, &mut rate);
    let fastest = fastest(net, &rate);
    let scale = net.spread().max(fastest * length.min(60.0)).max(SMALLEST_SCALE_K);
    let mut steps = Steps::new(net.size(), &start);
    if length <= 0.0 {
        return Ok(steps);
    }
    let first = if fastest > 0.0 { (FIRST_SHARE * scale / fastest).min(length) } else { length };
    let mut tolerance = [NO_LIMIT; N];
    tolerance[..net.bodies.len()].fill(STEP_TOLERANCE * scale);
    let mut solver = ExplicitRungeKutta::dopri5().rtol(0.0).atol(tolerance).h0(first).max_steps(MOST_STEPS);
    // Boiling may shorten the time constant of the start by so much at most.
    let shortest = net.time_constant(&start) / 300.0;
    let given_up = |reached_s: f64| ThermalError::NotFollowed { reached_s };
    solver.init(net, 0.0, length, &start).map_err(|_| given_up(0.0))?;
    loop {
        let begun = solver.t();
        let left = length - begun;
        if left <= f64::EPSILON * length {
            return Ok(steps);
        }
        if at_rest(net, solver.y(), &rate, (left, shortest, scale)) {
            steps.rest(begun, left, solver.y(), &rate);
            return Ok(steps);
        }
        if solver.h() > left {
            solver.set_h(left);
        }
        solver.step(net).map_err(|_| given_up(begun))?;
        if matches!(solver.status(), Status::RejectedStep) {
            continue;
        }
        let middle = solver.interpolate(0.5 * (begun + solver.t())).map_err(|_| given_up(begun))?;
        let (from, to) = (*solver.y_prev(), *solver.y());
        let mut after = [0.0; N];
        net.rates(&to, &mut after);
        steps.push((begun, solver.t() - begun), (&from, &middle, &to), (&rate, &after));
        rate = after;
        net.check_covered(&to)?;
    }
}

/// Largest rate of a temperature, K/s.
fn fastest(net: &Net, rate: &[f64]) -> f64 {
    rate[..net.bodies.len()].iter().fold(0.0, |most, value| value.abs().max(most))
}

/// Whether what is still to come does not matter: the rate, kept up for the time constant of the whole or for the time
/// left, changes nothing. `shortest` is a time constant below that of the whole, which spares most of the work.
fn at_rest(net: &Net, state: &[f64], rate: &[f64], (left, shortest, scale): (f64, f64, f64)) -> bool {
    let (fastest, nothing) = (fastest(net, rate), AT_REST * scale);
    fastest * left < nothing || (fastest * shortest < nothing && fastest * net.time_constant(state) < nothing)
}
