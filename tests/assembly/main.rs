//! Seals and stacks held against published figures, closed forms and what must hold of any of them.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod rings;
mod scatter;
mod seals;
mod stacks;

#[path = "../checked/mod.rs"]
mod checked;

use checked::reference_rows;
use seatwise::quantity::Length;
use uom::si::length::millimeter;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn near(got: f64, wanted: f64, tolerance: f64, what: &str) {
    assert!((got - wanted).abs() <= tolerance, "{what}: {got}, wanted {wanted} within {tolerance}");
}
