use super::REFERENCE_K;
use super::root::root;
use crate::quantity::{Length, ThermodynamicTemperature};
use crate::stock::Curve;
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::kelvin;

/// Temperature to which the contact is searched, K.
const TEMPERATURE_TOLERANCE_K: f64 = 1e-9;
/// Common temperature of both parts at which the clearance is zero (the lock temperature).
///
/// `outer20 (1 + e_outer(T)) = inner20 (1 + e_inner(T))`
///
/// `None` when the clearance has the same sign throughout the range that both tables cover, or when a size is not
/// positive. When it is zero at several temperatures the one nearest to 20 °C is given: coming from a shop at 20 °C it
/// is the first that the parts meet on that side.
///
/// **Arguments**: diameters at 20 °C (outside of the inner part, bore of the outer part), ΔL/L of each part over K.
///
/// **Source**: definition of linear thermal expansion.
pub fn contact_temperature(
    inner_at_20: Length,
    inner_expansion: &Curve,
    outer_at_20: Length,
    outer_expansion: &Curve,
) -> Option<ThermodynamicTemperature> {
    let (inner, outer) = (inner_at_20.get::<meter>(), outer_at_20.get::<meter>());
    if !(inner.is_finite() && outer.is_finite() && inner > 0.0 && outer > 0.0) {
        return None;
    }
    let clearance =
        |t: f64| outer * (1.0 + outer_expansion.at_inside(t)) - inner * (1.0 + inner_expansion.at_inside(t));
    let grid = common_grid(inner_expansion, outer_expansion);
    let spans = grid.windows(2).filter_map(|span| zero_between(clearance, (span[0], span[1])));
    spans
        .min_by(|a, b| (a - REFERENCE_K).abs().total_cmp(&(b - REFERENCE_K).abs()))
        .map(ThermodynamicTemperature::new::<kelvin>)
}

fn zero_between(clearance: impl Fn(f64) -> f64, (low, high): (f64, f64)) -> Option<f64> {
    let (at_low, at_high) = (clearance(low), clearance(high));
    // Both ends zero (same size, same material): 20 °C is a grid point, so it is one of the candidates.
    if at_low.abs() < f64::MIN_POSITIVE {
        Some(low)
    } else if at_high.abs() < f64::MIN_POSITIVE {
        Some(high)
    } else if at_low * at_high < 0.0 {
        Some(root(clearance, (low, high), TEMPERATURE_TOLERANCE_K))
    } else {
        None
    }
}

/// Rows of both tables inside their common range, its ends, and 20 °C when inside.
///
/// Between two rows each curve is a smooth cubic, and their difference crosses zero once or not at all; a pair of crossings
/// within one span would need two materials that touch and part again over some twenty kelvin.
fn common_grid(inner: &Curve, outer: &Curve) -> Vec<f64> {
    let from = inner.range().0.max(outer.range().0);
    let to = inner.range().1.min(outer.range().1);
    let rows = inner.points().chain(outer.points()).map(|row| row.0);
    let mut grid: Vec<f64> = rows.chain([from, to, REFERENCE_K]).filter(|t| (from..=to).contains(t)).collect();
    grid.sort_unstable_by(f64::total_cmp);
    grid.dedup();
    grid
}
