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
    let (from, to) = common_range(inner_expansion, outer_expansion);
    if from > to {
        return None;
    }
    let start = REFERENCE_K.clamp(from, to);
    // Upwards and downwards from 20 °C, no farther than to the first zero, so the nearest one is found.
    let [inner_rows, outer_rows] = [inner_expansion, outer_expansion].map(|curve| curve.points().map(|row| row.0));
    let above = nearest_zero(&clearance, start, merged(inner_rows, outer_rows, (start, to), f64::lt));
    let [inner_rows, outer_rows] =
        [inner_expansion, outer_expansion].map(|curve| curve.points().rev().map(|row| row.0));
    let below = nearest_zero(&clearance, start, merged(inner_rows, outer_rows, (start, from), f64::gt));
    let zeros = above.into_iter().chain(below);
    zeros
        .min_by(|a, b| (a - REFERENCE_K).abs().total_cmp(&(b - REFERENCE_K).abs()))
        .map(ThermodynamicTemperature::new::<kelvin>)
}

/// The first zero on the way from `start` over some places.
fn nearest_zero(clearance: &impl Fn(f64) -> f64, start: f64, places: impl Iterator<Item = f64>) -> Option<f64> {
    let mut before = (start, clearance(start));
    for place in places {
        let here = (place, clearance(place));
        let found = zero_between(clearance, before, here);
        if found.is_some() {
            return found;
        }
        before = here;
    }
    None
}

fn zero_between(clearance: impl Fn(f64) -> f64, one: (f64, f64), other: (f64, f64)) -> Option<f64> {
    // Both ends zero (same size, same material): 20 °C is the first of the places.
    if one.1.abs() < f64::MIN_POSITIVE {
        Some(one.0)
    } else if other.1.abs() < f64::MIN_POSITIVE {
        Some(other.0)
    } else if one.1 * other.1 < 0.0 {
        Some(root(clearance, (one.0.min(other.0), one.0.max(other.0)), TEMPERATURE_TOLERANCE_K))
    } else {
        None
    }
}

/// The range that both tables cover; upside down where they have none in common.
fn common_range(inner: &Curve, outer: &Curve) -> (f64, f64) {
    (inner.range().0.max(outer.range().0), inner.range().1.min(outer.range().1))
}

/// Rows of two tables between two places and the end itself, in the order of both: `before` says which of two comes first.
///
/// Between two rows each curve is a smooth cubic, and their difference crosses zero once or not at all; a pair of crossings
/// within one span would need two materials that touch and part again over some twenty kelvin.
fn merged(
    one: impl Iterator<Item = f64>,
    other: impl Iterator<Item = f64>,
    (start, end): (f64, f64),
    before: fn(&f64, &f64) -> bool,
) -> impl Iterator<Item = f64> {
    let within = move |row: &f64| before(&start, row) && before(row, &end);
    let (mut one, mut other) = (one.filter(within).peekable(), other.filter(within).peekable());
    let next = move || match (one.peek(), other.peek()) {
        (Some(a), Some(b)) if before(b, a) => other.next(),
        (Some(_), _) => one.next(),
        (None, _) => other.next(),
    };
    std::iter::from_fn(next).chain(std::iter::once(end))
}
