//! Quantities as the numbers of the document, in the unit that each name states.

use super::figures;
use super::range::RangeDocument;
use crate::quantity::{Cases, Force, Length, Pressure, ThermodynamicTemperature, Time};
use uom::si::force::newton;
use uom::si::length::{micrometer, millimeter};
use uom::si::pressure::megapascal;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

pub(in crate::report) fn celsius(temperature: ThermodynamicTemperature) -> f64 {
    figures(temperature.get::<degree_celsius>())
}

pub(in crate::report) fn mpa(pressure: Pressure) -> f64 {
    figures(pressure.get::<megapascal>())
}

pub(in crate::report) fn newtons(force: Force) -> f64 {
    figures(force.get::<newton>())
}

pub(super) fn range<T>(cases: Cases<T>) -> RangeDocument<T> {
    RangeDocument { tightest: cases.tightest, middle: cases.middle, loosest: cases.loosest }
}

/// The reason, where one of the three is null.
pub(super) fn reason(range: &RangeDocument<Option<f64>>, why: &str) -> Option<String> {
    let some_null = [range.tightest, range.middle, range.loosest].iter().any(Option::is_none);
    some_null.then(|| why.to_owned())
}

pub(super) fn seconds(time: Time) -> f64 {
    figures(time.get::<second>())
}

pub(in crate::report) fn um(length: Length) -> f64 {
    figures(length.get::<micrometer>())
}

pub(in crate::report) fn mm(length: Length) -> f64 {
    figures(length.get::<millimeter>())
}
