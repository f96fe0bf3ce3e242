//! What free and forced convection need of the air, at a film temperature: polynomials in place of logarithms and powers.
//!
//! A film over the temperature of a surface asks for these values at some thirty temperatures, each time a dozen logarithms,
//! powers and roots. All but the density depend on the temperature alone, so that cells of ten kelvin hold polynomials of the
//! fifth degree through the values at the six nodes of Chebyshev, made once when a film first needs them.
//!
//! The error of such a polynomial is at most `f⁽⁶⁾ (5 K)⁶ / (2⁵ 6!)`; the steepest of the values, the strength of buoyancy, falls
//! with the fifth power of the temperature at most, which makes 1e-8 of it at -120 °C and 2e-10 at 20 °C (held against the direct
//! formulas in the test).
//!
//! **Source**: remainder of interpolation at the nodes of Chebyshev, any textbook of numerical analysis.

use super::super::ICE_POINT_K;
use super::super::air::{Air, RANGE_C, checked};
use super::super::error::ThermalError;
use super::correlation::{across_factor, cylinder_factor, plate_factor};
use std::f64::consts::PI;
use std::sync::OnceLock;

/// Width of a cell, K, and how many there are from the coldest to the hottest air.
const CELL_K: f64 = 10.0;
const CELLS: usize = 42;
/// Nodes of a cell, one more than the degree of its polynomials.
const NODES: usize = 6;
/// Pressure at which the values of a cell are taken, Pa.
const PRESSURE_PA: f64 = 1e5;

/// Values of air at a film temperature and a pressure.
#[derive(Clone, Copy, Debug)]
pub(super) struct AirValues {
    /// Rayleigh number of a body of 1 m at a difference of 1 K.
    pub(super) rayleigh: f64,
    /// W/(m K).
    pub(super) conductivity: f64,
    pub(super) prandtl: f64,
    /// `0.387 / (1 + (0.559/Pr)^(9/16))^(8/27)` and the same with 0.492.
    pub(super) cylinder: f64,
    pub(super) plate: f64,
    /// Reynolds number of a body of 1 m in a wind of 1 m/s.
    pub(super) reynolds: f64,
    /// Factor of a cylinder across the wind.
    pub(super) across: f64,
}

/// How many values those are.
const VALUES: usize = 7;

/// Coefficients of each value in rising powers of the place in the cell, from -1 to 1.
type Cell = [[f64; NODES]; VALUES];

/// Made of constants alone: whoever asks first, a cell is the same.
static MADE: [OnceLock<Cell>; CELLS] = [const { OnceLock::new() }; CELLS];

impl AirValues {
    /// At a temperature (K) and a pressure (Pa); `what` names the temperature in the error.
    pub(super) fn at(what: &'static str, temperature: f64, pressure: f64) -> Result<Self, ThermalError> {
        checked(what, temperature, pressure)?;
        let cells = (temperature - coldest()) / CELL_K;
        // Checked above; the last digits of the ends belong to the cells there.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let index = (cells.max(0.0) as usize).min(CELLS - 1);
        #[allow(clippy::cast_precision_loss)]
        let place = 2.0 * (cells - index as f64) - 1.0;
        let cell = MADE[index].get_or_init(|| made(index));
        let [rayleigh, conductivity, prandtl, cylinder, plate, reynolds, across] =
            cell.each_ref().map(|c| value(c, place));
        let denser = pressure / PRESSURE_PA;
        let (rayleigh, reynolds) = (rayleigh * denser * denser, reynolds * denser);
        Ok(Self { rayleigh, conductivity, prandtl, cylinder, plate, reynolds, across })
    }
}

fn coldest() -> f64 {
    RANGE_C.0 + ICE_POINT_K
}

#[inline]
fn value(c: &[f64; NODES], x: f64) -> f64 {
    c[0] + x * (c[1] + x * (c[2] + x * (c[3] + x * (c[4] + x * c[5]))))
}

fn made(index: usize) -> Cell {
    #[allow(clippy::cast_precision_loss)]
    let middle = coldest() + CELL_K * (index as f64 + 0.5);
    #[allow(clippy::cast_precision_loss)]
    let angle = |node: usize| PI * (node as f64 + 0.5) / NODES as f64;
    let at_nodes: [[f64; VALUES]; NODES] =
        std::array::from_fn(|node| directly(&Air::of(middle + 0.5 * CELL_K * angle(node).cos(), PRESSURE_PA)));
    std::array::from_fn(|value| {
        // Shares of the polynomials of Chebyshev, then their powers.
        #[allow(clippy::cast_precision_loss)]
        let share = |degree: usize| {
            let sum: f64 = (0..NODES).map(|node| at_nodes[node][value] * (degree as f64 * angle(node)).cos()).sum();
            sum * if degree == 0 { 1.0 } else { 2.0 } / NODES as f64
        };
        let [s0, s1, s2, s3, s4, s5]: [f64; NODES] = std::array::from_fn(share);
        [s0 - s2 + s4, s1 - 3.0 * s3 + 5.0 * s5, 2.0 * s2 - 8.0 * s4, 4.0 * s3 - 20.0 * s5, 8.0 * s4, 16.0 * s5]
    })
}

/// The values by their formulas.
fn directly(air: &Air) -> [f64; VALUES] {
    let prandtl = air.prandtl_si();
    [
        air.rayleigh_per_cubic_metre_kelvin(),
        air.conductivity,
        prandtl,
        0.387 * cylinder_factor(prandtl),
        0.387 * plate_factor(prandtl),
        air.density / air.viscosity,
        across_factor(prandtl),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_polynomials_are_the_formulas_to_a_hundred_millionth() {
        let mut worst = 0.0_f64;
        for step in 0..=4200 {
            let kelvins = coldest() + 0.1 * f64::from(step);
            let pressure = 60_000.0 + 10.0 * f64::from(step);
            let air = AirValues::at("temperature", kelvins, pressure).unwrap();
            let AirValues { rayleigh, conductivity, prandtl, cylinder, plate, reynolds, across } = air;
            let read = [rayleigh, conductivity, prandtl, cylinder, plate, reynolds, across];
            for (read, direct) in read.iter().zip(directly(&Air::of(kelvins, pressure))) {
                worst = worst.max((read / direct - 1.0).abs());
            }
        }
        assert!(worst < 2e-8, "{worst:e}");
    }

    #[test]
    fn air_outside_its_range_is_refused_as_by_the_formulas() {
        for (kelvins, pressure) in [(153.0, 1e5), (573.3, 1e5), (293.0, 4.9e4), (293.0, 1.2e5), (f64::NAN, 1e5)] {
            let direct = Air::at_si("temperature", kelvins, pressure).map(|_| ());
            assert!(direct.is_err());
            assert_eq!(AirValues::at("temperature", kelvins, pressure).map(|_| ()).is_err(), direct.is_err());
        }
        assert!(AirValues::at("temperature", 573.15 + 1e-8, 1e5).is_ok());
    }
}
