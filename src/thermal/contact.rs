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
    Meetings::new(inner_expansion, outer_expansion)?.contact(inner_at_20, outer_at_20)
}

/// Two materials and the temperatures between which a pair of parts of them is searched for its contact, for several pairs.
pub(crate) struct Meetings<'a> {
    inner: &'a Curve,
    outer: &'a Curve,
    /// Temperature and ΔL/L of both, from 20 °C upwards and downwards.
    ways: [Vec<Place>; 2],
}

/// Temperature (K), ΔL/L of the inner part, ΔL/L of the outer part.
type Place = (f64, f64, f64);

impl<'a> Meetings<'a> {
    /// Nothing where the tables have no temperature in common.
    pub(crate) fn new(inner: &'a Curve, outer: &'a Curve) -> Option<Self> {
        let (from, to) = common_range(inner, outer);
        if from > to {
            return None;
        }
        let place = |t: f64| (t, inner.at_inside(t), outer.at_inside(t));
        let start = REFERENCE_K.clamp(from, to);
        let [inner_rows, outer_rows] = [inner, outer].map(|curve| curve.points().map(|row| row.0));
        let above = std::iter::once(start).chain(merged(inner_rows, outer_rows, (start, to), f64::lt));
        let above = above.map(place).collect();
        let [inner_rows, outer_rows] = [inner, outer].map(|curve| curve.points().rev().map(|row| row.0));
        let below = std::iter::once(start).chain(merged(inner_rows, outer_rows, (start, from), f64::gt));
        Some(Self { inner, outer, ways: [above, below.map(place).collect()] })
    }

    /// [`contact_temperature`] of a pair of these materials.
    pub(crate) fn contact(&self, inner_at_20: Length, outer_at_20: Length) -> Option<ThermodynamicTemperature> {
        let (inner, outer) = (inner_at_20.get::<meter>(), outer_at_20.get::<meter>());
        if !(inner.is_finite() && outer.is_finite() && inner > 0.0 && outer > 0.0) {
            return None;
        }
        let left = |of_inner: f64, of_outer: f64| outer * (1.0 + of_outer) - inner * (1.0 + of_inner);
        let clearance = |t: f64| left(self.inner.at_inside(t), self.outer.at_inside(t));
        // Upwards and downwards from 20 °C, no farther than to the first zero, so the nearest one is found.
        let zeros = self.ways.iter().filter_map(|way| {
            let mut pairs = way.windows(2);
            pairs.find_map(|pair| {
                let [one, other] = [pair[0], pair[1]].map(|(t, of_inner, of_outer)| (t, left(of_inner, of_outer)));
                zero_between(clearance, one, other)
            })
        });
        zeros
            .min_by(|a, b| (a - REFERENCE_K).abs().total_cmp(&(b - REFERENCE_K).abs()))
            .map(ThermodynamicTemperature::new::<kelvin>)
    }
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
