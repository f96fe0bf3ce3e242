//! Rings and joints from plain numbers in mm and MPa, shared by the tests of `mechanics`.
#![allow(dead_code, missing_docs, clippy::unwrap_used, reason = "shared by several test files")]

use seatwise::mechanics::{Joint, Ring};
use seatwise::quantity::{Length, Pressure};
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;

pub fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}

pub fn mpa(pressure: f64) -> Pressure {
    Pressure::new::<megapascal>(pressure)
}

pub fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

pub fn in_mpa(pressure: Pressure) -> f64 {
    pressure.get::<megapascal>()
}

/// Ring from diameters in mm and modulus in MPa; zero inside is solid.
pub fn ring(inside: f64, outside: f64, modulus: f64, poisson: f64) -> Ring {
    let inside = (inside > 0.0).then(|| mm(inside));
    Ring { inside, outside: mm(outside), elastic_modulus: mpa(modulus), poisson }
}

/// Joint of 16 mm length at the outside of `inner`, interference in mm.
pub fn joint(inner: Ring, outer: Ring, interference: f64) -> Joint {
    Joint { inner, outer, diameter: inner.outside, length: mm(16.0), interference: mm(interference) }
}

/// Both within `relative` of the wanted value; the floor of 1e-12 (mm, MPa, N) is for the exact zeros of the tables.
pub fn close(got: f64, want: f64, relative: f64, what: &str) {
    assert!((got - want).abs() <= relative * want.abs() + 1e-12, "{what}: {got}, wanted {want}");
}
