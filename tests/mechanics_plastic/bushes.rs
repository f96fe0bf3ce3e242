//! A bush that yields from its bore, against the equations of its wall integrated in small steps, and what must hold of it.

use super::*;
use checked::mechanics_units::mm;

const YIELD: f64 = 125.0;
const MODULUS: f64 = 103e3;
const POISSON: f64 = 0.34;

/// A bronze bush of 50 mm outside in a hub of steel.
fn bush(bore: f64, hub: f64) -> PlasticBush {
    let (inner, outer) = (ring(bore, 50.0, MODULUS, POISSON), ring(50.0, hub, 206e3, 0.3));
    let outer_strength = Strength::ductile(mpa(3000.0));
    PlasticBush { joint: joint(inner, outer, 0.0), flow_stress: mpa(YIELD), outer: outer_strength, stiffer: 1.0 }
}

fn pressed(bush: PlasticBush, interference: f64) -> PlasticBush {
    PlasticBush { joint: Joint { interference: mm(interference), ..bush.joint }, ..bush }
}

/// Pressure on the outside, and its closing, of a ring whose bore has closed by `closing`: equilibrium and Hooke's law in small
/// steps outward, with a hoop stress that never passes the strength; plastic strain has no radial part by the flow rule.
fn integrated(bore: f64, outside: f64, closing: f64) -> (f64, f64) {
    const STEPS: u32 = 4000;
    let rate = |r: f64, [radial, moved]: [f64; 2]| {
        let hoop = (MODULUS * moved / r + POISSON * radial).max(-YIELD);
        [(hoop - radial) / r, (radial - POISSON * hoop) / MODULUS]
    };
    let (a, b) = (0.5 * bore, 0.5 * outside);
    let step = (b - a) / f64::from(STEPS);
    let mut state = [0.0, -0.5 * closing];
    for i in 0..STEPS {
        let r = a + f64::from(i) * step;
        let with = |rate: [f64; 2], by: f64| [state[0] + by * rate[0], state[1] + by * rate[1]];
        let one = rate(r, state);
        let two = rate(r + 0.5 * step, with(one, 0.5 * step));
        let three = rate(r + 0.5 * step, with(two, 0.5 * step));
        let four = rate(r + step, with(three, step));
        for k in 0..2 {
            state[k] += step / 6.0 * (one[k] + 2.0 * two[k] + 2.0 * three[k] + four[k]);
        }
    }
    (-state[0], -2.0 * state[1])
}

#[test]
fn pressure_and_closing_are_those_of_the_wall_integrated_in_small_steps() {
    for (bore, hub) in [(40.0, 85.0), (46.0, 60.0), (20.0, 120.0), (10.0, 400.0)] {
        let limits = bush(bore, hub).limits().unwrap();
        let (first, last) = (in_mm(limits.first.interference), in_mm(limits.last.interference));
        // In part, and beyond the whole wall, where the bore closes by the surplus.
        for share in [0.05, 0.3, 0.6, 0.9, 1.0, 1.2] {
            let interference = first + share * (last - first);
            let state = pressed(bush(bore, hub), interference).solve().unwrap();
            let (pressure, outside) = integrated(bore, 50.0, in_mm(state.bore_closing));
            let case = format!("bore {bore}, share {share}");
            // The step that holds the boundary of the zone has an error of its own: 4000 steps leave 1e-6.
            close(in_mpa(state.pressure), pressure, 2e-6, &case);
            // What the bush closes and the elastic hub grows is the interference.
            let joint = pressed(bush(bore, hub), 0.01).joint.solve().unwrap();
            let grows = in_mm(joint.outer.inside_change.unwrap()) / in_mpa(joint.pressure) * pressure;
            close(outside + grows, interference, 2e-6, &case);
            let share_of_wall = (state.plastic_ratio.get::<ratio>().powi(2) - 1.0) / ((50.0 / bore).powi(2) - 1.0);
            close(state.plastic_share.get::<ratio>(), share_of_wall, 1e-9, &case);
        }
    }
}

#[test]
fn it_begins_where_the_elastic_bore_yields_and_ends_at_the_plastic_limit() {
    for bore in [48.0, 40.0, 25.0, 5.0] {
        let (limits, k) = (bush(bore, 90.0).limits().unwrap(), 50.0 / bore);
        // Onset by the elastic check, whose criteria agree at a bore that is pressed from outside.
        let start = yield_start(&bush(bore, 90.0).joint, Part::Inner, mpa(YIELD)).unwrap();
        for onset in [start.tresca, start.von_mises] {
            close(in_mm(limits.first.interference), in_mm(onset.interference), 1e-12, "first yield");
            close(in_mpa(limits.first.pressure), in_mpa(onset.pressure), 1e-12, "first yield");
        }
        close(in_mpa(limits.last.pressure), YIELD * (1.0 - 1.0 / k), 1e-12, "plastic limit");
        // The plastic limit of a long tube that cannot grow longer is higher, but for a wall of nothing.
        assert!(in_mpa(limits.last.pressure) < 2.0 / 3.0_f64.sqrt() * YIELD * k.ln());
        let surplus = 0.004;
        let interference = in_mm(limits.last.interference) + surplus;
        let through = pressed(bush(bore, 90.0), interference).solve().unwrap();
        close(in_mpa(through.pressure), YIELD * (1.0 - 1.0 / k), 1e-12, "beyond it");
        close(in_mm(through.surplus), surplus, 1e-9, "surplus");
        close(through.plastic_share.get::<ratio>(), 1.0, 1e-12, "share");
        close(in_mm(through.bore_closing), bore * YIELD / MODULUS * (1.0 + k.ln()) + surplus, 1e-12, "closing");
    }
}

#[test]
fn von_mises_bears_more_than_tresca_and_at_the_most_as_with_two_over_root_three() {
    // Equilibrium of a wall that flows throughout by von Mises in plane stress, from the bore outward.
    const STEPS: u32 = 20_000;
    for bore in [46.0, 40.0, 25.0, 10.0] {
        let (a, step) = (0.5 * bore, 0.5 * (50.0 - bore) / f64::from(STEPS));
        let mut radial = 0.0_f64;
        for i in 0..STEPS {
            let r = a + (f64::from(i) + 0.5) * step;
            let hoop = |radial: f64| 0.5 * radial - (YIELD * YIELD - 0.75 * radial * radial).sqrt();
            let middle = radial + 0.5 * step * (hoop(radial) - radial) / r;
            radial += step * (hoop(middle) - middle) / r;
        }
        let (mises, tresca) = (-radial, in_mpa(bush(bore, 90.0).limits().unwrap().last.pressure));
        assert!(mises > tresca && mises < 2.0 / 3.0_f64.sqrt() * tresca, "bore {bore}: {tresca} {mises}");
    }
}

#[test]
fn a_stiffer_seat_presses_more_until_the_plastic_limit_and_leaves_more_to_the_bush() {
    // Thin and thick; with 1.8 the seat is stiffer than a rigid one would be around the plain bush.
    for (bore, stiffer) in [(46.0, 1.1), (40.0, 1.3), (40.0, 1.8), (10.0, 1.5)] {
        let plain = bush(bore, 85.0);
        let stiff = PlasticBush { stiffer, ..plain };
        let first = in_mm(plain.limits().unwrap().first.interference) / stiffer;
        close(in_mm(stiff.limits().unwrap().first.interference), first, 1e-12, "first yield");
        let elastic = pressed(stiff, 0.9 * first).solve().unwrap();
        close(
            in_mpa(elastic.pressure),
            stiffer * in_mpa(pressed(plain, 0.9 * first).solve().unwrap().pressure),
            1e-12,
            "p",
        );
        let last = in_mm(stiff.limits().unwrap().last.interference);
        close(
            in_mpa(stiff.limits().unwrap().last.pressure),
            in_mpa(plain.limits().unwrap().last.pressure),
            1e-12,
            "limit",
        );
        let mut before = elastic;
        for share in [0.1, 0.3, 0.5, 0.7, 0.9] {
            let interference = first + share * (last - first);
            let state = pressed(stiff, interference).solve().unwrap();
            let (pressure, outside) = integrated(bore, 50.0, in_mm(state.bore_closing));
            close(in_mpa(state.pressure), pressure, 2e-6, "pressure");
            // What is left for the boss: as much less as the joint is stiffer while elastic.
            let joint = pressed(plain, 0.01).joint.solve().unwrap();
            let closes = -in_mm(joint.inner.outside_change);
            let gives = (0.01 / stiffer - closes) / in_mpa(joint.pressure) * pressure;
            close(outside + gives, interference, 2e-6, "interference");
            assert!(state.pressure > before.pressure && state.plastic_ratio > before.plastic_ratio);
            before = state;
        }
    }
    for bad in [f64::NAN, 0.0, -1.0] {
        assert!(PlasticBush { stiffer: bad, ..pressed(bush(40.0, 85.0), 0.05) }.solve().is_err());
    }
}

#[test]
fn an_elastic_or_open_joint_is_the_plain_one() {
    for interference in [-0.1, 0.0, 0.02, 0.05] {
        let bush = pressed(bush(40.0, 85.0), interference);
        let (state, plain) = (bush.solve().unwrap(), bush.joint.solve().unwrap());
        close(in_mpa(state.pressure), in_mpa(plain.pressure), 1e-14, "pressure");
        close(in_mm(state.bore_closing), -in_mm(plain.bore_change().unwrap()), 1e-12, "closing");
        assert!((state.plastic_ratio.get::<ratio>() - 1.0).abs() < 1e-15);
        assert!(in_mm(state.permanent_set).abs() + in_mm(state.surplus) + state.plastic_share.get::<ratio>() < 1e-15);
    }
}

#[test]
fn a_bore_that_would_close_by_more_than_half_a_per_cent_a_solid_part_and_a_weak_hub_are_refused() {
    let given = bush(40.0, 85.0);
    let most = in_mm(given.largest().unwrap());
    let state = pressed(given, most).solve().unwrap();
    close(in_mm(state.bore_closing), 0.005 * 40.0, 1e-12, "at the end");
    let said = pressed(given, most * 1.0001).solve().unwrap_err().to_string();
    assert!(said.contains(&format!("more than the {most:.4} mm")) && said.contains("0.5 %"), "{said}");
    // In part only: a wall so thick that the end comes before it is plastic all through.
    let thick = PlasticBush { flow_stress: mpa(300.0), ..bush(5.0, 85.0) };
    let most = in_mm(thick.largest().unwrap());
    assert!(most < in_mm(thick.limits().unwrap().last.interference));
    close(in_mm(pressed(thick, most).solve().unwrap().bore_closing), 0.005 * 5.0, 1e-12, "in part");
    assert!(pressed(thick, most * 1.0001).solve().is_err());
    // A metal that is elastic to beyond 0.5 % has no plastic answer, and keeps the elastic one.
    let hard = PlasticBush { flow_stress: mpa(800.0), ..given };
    let first = in_mm(hard.limits().unwrap().first.interference);
    assert!(in_mm(hard.largest().unwrap()) < first);
    assert!(pressed(hard, first * 1.01).solve().is_err() && pressed(hard, first * 0.99).solve().is_ok());
    // Hub: 25 MPa in 85 over 50 mm make a hoop of 51 MPa, and 76 with the pressure by Tresca.
    let interference = in_mm(given.limits().unwrap().last.interference);
    let weak = PlasticBush { outer: Strength::brittle(mpa(50.0)), ..given };
    let said = pressed(weak, interference).solve().unwrap_err();
    assert!(matches!(said, MechanicsError::OuterYields { factor } if factor > 0.95 && factor < 1.0), "{said}");
    let solid = PlasticBush { joint: Joint { inner: ring(0.0, 50.0, MODULUS, POISSON), ..given.joint }, ..given };
    assert_eq!(solid.solve(), Err(MechanicsError::InnerIsSolid));
    for bad in [f64::NAN, 0.0, -1.0, f64::INFINITY] {
        assert!(PlasticBush { flow_stress: mpa(bad), ..pressed(given, 0.05) }.solve().is_err());
    }
    assert!(pressed(given, f64::NAN).solve().is_err() && pressed(given, f64::INFINITY).solve().is_err());
}

proptest! {
    #[test]
    fn a_second_fitting_stays_elastic_and_more_interference_never_bears_less(
        bore in 0.1..0.97_f64, hub in 1.05..4.0_f64, share in 0.0..1.3_f64, soft in 40e3..210e3_f64, more in 0.0..0.05_f64,
    ) {
        let (inner, outer) = (ring(60.0 * bore, 60.0, soft, 0.31), ring(60.0, 60.0 * hub, 206e3, 0.3));
        let given = PlasticBush {
            joint: joint(inner, outer, 0.0), flow_stress: mpa(100.0), outer: Strength::ductile(mpa(3000.0)), stiffer: 1.0,
        };
        let limits = given.limits().unwrap();
        let (from, to) = (in_mm(limits.first.interference), in_mm(limits.last.interference));
        let interference = from + share * (to - from);
        let largest = in_mm(given.largest().unwrap());
        prop_assume!(interference * 1.05 < largest);
        let first = pressed(given, interference).solve().unwrap();
        let set = in_mm(first.permanent_set);
        prop_assert!(set >= 0.0 && set < interference);
        let second = pressed(given, interference - set);
        close(in_mpa(second.joint.solve().unwrap().pressure), in_mpa(first.pressure), 1e-9, "second fitting");
        let tighter = pressed(given, interference * (1.0 + more)).solve().unwrap();
        prop_assert!(tighter.pressure >= first.pressure * (1.0 - 1e-12));
        prop_assert!(tighter.pressure <= limits.last.pressure * (1.0 + 1e-12));
        prop_assert!(tighter.pressure <= pressed(given, interference * (1.0 + more)).joint.solve().unwrap().pressure * (1.0 + 1e-12));
        prop_assert!(in_mm(tighter.bore_closing) >= in_mm(first.bore_closing) - 1e-12);
        prop_assert!(in_mm(tighter.permanent_set) >= set - 1e-12);
        prop_assert!(tighter.plastic_share.get::<ratio>() <= 1.0 + 1e-12);
    }
}
