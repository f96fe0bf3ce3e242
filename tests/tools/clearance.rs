//! What fitting and warmth leave of the internal clearance.

use super::{close, mm, mpa, um};
use proptest::prelude::*;
use seatwise::mechanics::*;
use seatwise::quantity::{Length, Nanometres, TemperatureInterval};
use seatwise::stock::dimensions::{ClearanceGroup, Raceways, RollingElement};
use seatwise::stock::iso5753::{BearingFamily, ClearanceRow, tables};
use uom::si::f64::TemperatureCoefficient;
use uom::si::length::{micrometer, millimeter};
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::temperature_interval::kelvin;

fn in_um(length: Length) -> f64 {
    length.get::<micrometer>()
}
fn range(least: f64, most: f64) -> ClearanceRange {
    ClearanceRange { least: um(least), most: um(most) }
}
fn alpha(value: f64) -> TemperatureCoefficient {
    TemperatureCoefficient::new::<per_kelvin>(value)
}
fn warmer(step: f64) -> TemperatureInterval {
    TemperatureInterval::new::<kelvin>(step)
}

#[test]
fn losses_are_taken_from_both_ends_of_the_range() {
    let bearing = InternalClearance {
        delivered: range(13.0, 28.0),
        outer_ring: range(0.0, 9.0),
        inner_ring: range(2.0, 7.5),
        temperature: range(1.0, 4.0),
    };
    let left = bearing.solve().unwrap();
    for (got, want) in [(left.fitted, (-3.5, 26.0)), (left.running, (-7.5, 25.0))] {
        assert!((in_um(got.least) - want.0).abs() < 1e-9 && (in_um(got.most) - want.1).abs() < 1e-9, "{got:?}");
        assert!(got.may_be_negative() && !got.is_negative());
    }
    // Halves of 7.5, 4.5, 2.75 and 1.5 µm about the middle, 8.75 µm: √(7.5² + 4.5² + 2.75² + 1.5²) = 9.2905 µm.
    close(in_um(left.usual.least), 8.75 - 9.2905, 1e-3, "usual, least");
    close(in_um(left.usual.most), 8.75 + 9.2905, 1e-3, "usual, most");
    let untouched = InternalClearance {
        outer_ring: range(0.0, 0.0),
        inner_ring: range(0.0, 0.0),
        temperature: range(0.0, 0.0),
        ..bearing
    };
    assert_eq!(untouched.solve().unwrap().running, bearing.delivered);
}

#[test]
fn raceways_follow_the_handbook_rules() {
    // (4·62 + 30)/5 = 55.6 mm for balls, (3·62 + 30)/4 = 54 mm for rollers.
    let ball = Raceways::estimate(mm(30.0), mm(62.0), RollingElement::Ball).unwrap();
    let roller = Raceways::estimate(mm(30.0), mm(62.0), RollingElement::Roller).unwrap();
    let all = [ball.outer, ball.inner, ball.element, roller.outer, roller.inner, roller.element];
    for (got, want) in all.into_iter().zip([55.6, 36.4, 9.6, 54.0, 38.0, 8.0]) {
        close(got.get::<millimeter>(), want, 1e-12, "raceway");
    }
    for (bore, outside) in [(62.0, 30.0), (0.0, 62.0), (30.0, 30.0), (f64::NAN, 62.0), (30.0, f64::INFINITY)] {
        let said = Raceways::estimate(mm(bore), mm(outside), RollingElement::Ball).unwrap_err().to_string();
        assert!(said.contains("no room for a bearing"), "{said}");
    }
}

#[test]
fn warmth_of_the_inner_ring_takes_alpha_delta_t_and_the_raceway() {
    // 12.5e-6 · 10 K · 36.4 to 55.6 mm = 4.55 to 6.95 µm.
    let loss = temperature_loss(alpha(12.5e-6), warmer(10.0), mm(36.4), mm(55.6)).unwrap();
    close(in_um(loss.least), 4.55, 1e-9, "least");
    close(in_um(loss.most), 6.95, 1e-9, "most");
    let gain = temperature_loss(alpha(12.5e-6), warmer(-10.0), mm(36.4), mm(55.6)).unwrap();
    assert_eq!((gain.least, gain.most), (-loss.most, -loss.least));
}

#[test]
fn a_pressed_ring_loses_what_its_raceway_closes() {
    // Ring 55.6/62 mm in an aluminium boss of 80 mm, 20 µm tight: the plain ring of the joint gives the loss.
    let steel = Ring { inside: Some(mm(55.6)), outside: mm(62.0), elastic_modulus: mpa(208e3), poisson: 0.3 };
    let boss = Ring { inside: Some(mm(62.0)), outside: mm(80.0), elastic_modulus: mpa(70e3), poisson: 0.33 };
    let closing = |interference: f64| {
        let joint =
            Joint { inner: steel, outer: boss, diameter: mm(62.0), length: mm(16.0), interference: um(interference) };
        -joint.solve().unwrap().bore_change().unwrap()
    };
    let outer_ring = ClearanceRange::of(closing(20.0), closing(-5.0));
    let none = range(0.0, 0.0);
    let bearing = InternalClearance { delivered: range(5.0, 20.0), outer_ring, inner_ring: none, temperature: none };
    let left = bearing.solve().unwrap().fitted;
    // A loose fit takes nothing; a tight one at most its interference times 62/55.6, as a free ring would close.
    close(in_um(left.most), 20.0, 1e-12, "loose");
    let taken = 5.0 - in_um(left.least);
    assert!(taken > 5.0 && taken < 20.0 * 62.0 / 55.6, "{taken}");
}

#[test]
fn ranges_and_steps_that_cannot_be_are_refused_in_words() {
    let zero = range(0.0, 0.0);
    let good = InternalClearance { delivered: range(5.0, 20.0), outer_ring: zero, inner_ring: zero, temperature: zero };
    for (bad, wanted) in [
        (
            InternalClearance { delivered: range(20.0, 5.0), ..good },
            "clearance as delivered goes from 20.00 to 5.00 µm",
        ),
        (InternalClearance { delivered: range(-1.0, 5.0), ..good }, "zero or more"),
        (InternalClearance { outer_ring: range(3.0, 1.0), ..good }, "closing of the outer ring"),
        (InternalClearance { inner_ring: range(f64::NAN, 1.0), ..good }, "growth of the inner ring"),
        (InternalClearance { temperature: range(0.0, f64::INFINITY), ..good }, "loss by temperature"),
    ] {
        let said = bad.solve().unwrap_err().to_string();
        assert!(said.contains(wanted), "{said}");
    }
    let loss = |a, step, inner, outer| temperature_loss(alpha(a), warmer(step), mm(inner), mm(outer));
    for bad in [
        loss(0.0, 10.0, 36.0, 55.0),
        loss(12.0, 10.0, 36.0, 55.0),
        loss(12e-6, f64::NAN, 36.0, 55.0),
        loss(12e-6, 10.0, 55.0, 36.0),
        loss(12e-6, 10.0, 0.0, 36.0),
    ] {
        assert!(bad.is_err(), "{bad:?}");
    }
}

proptest! {
    #[test]
    fn a_tighter_group_never_leaves_more(bore in 6.001..400.0_f64, loss in -20.0..200.0_f64, spread in 0.0..30.0_f64) {
        let bore = Nanometres::from_mm(bore);
        for family in BearingFamily::ALL {
            let left = |group| {
                let row = tables().unwrap().clearance(family, group, bore).unwrap();
                let delivered = ClearanceRange { least: row.least.length(), most: row.most.length() };
                let (fit, none) = (range(loss, loss + spread), range(0.0, 0.0));
                let bearing = InternalClearance { delivered, outer_ring: fit, inner_ring: none, temperature: none };
                bearing.solve().unwrap().running
            };
            for pair in ClearanceGroup::ALL.windows(2) {
                let (tight, loose) = (left(pair[0]), left(pair[1]));
                prop_assert!(tight.least <= loose.least && tight.most <= loose.most);
            }
            // The group that is advised never becomes negative, and the one before it does.
            let most = um(loss + spread);
            let bears = |row: &ClearanceRow| row.least.length() >= most;
            if let Some(row) = tables().unwrap().tightest(family, ClearanceGroup::C2, bore, bears) {
                prop_assert!(in_um(left(row.group).least) >= -1e-9);
                if let Some(tighter) = ClearanceGroup::ALL.into_iter().rev().find(|group| *group < row.group) {
                    prop_assert!(left(tighter).may_be_negative());
                }
            }
        }
    }
}
