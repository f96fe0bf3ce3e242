//! A liner in a housing, a boss thinner on one side, and what a spanner feels at the shoulder: against rings in one another and the balance of a spring.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod checked;

use checked::mechanics_units::{close, in_mm, in_mpa, mm, mpa, ring};
use checked::prove;
use checked::walls::boss;
use proptest::prelude::*;
use seatwise::mechanics::*;
use seatwise::quantity::{Force, Length, Pressure, Ratio, Torque};
use seatwise::stock::threads::Thread;
use uom::si::angle::degree;
use uom::si::force::newton;
use uom::si::ratio::ratio;
use uom::si::torque::newton_meter;

fn share(value: f64) -> Ratio {
    Ratio::new::<ratio>(value)
}

#[test]
fn the_thin_side_of_a_boss_is_that_of_fitted_potentials_at_both_surfaces() {
    assert_eq!(prove("Thin side of an uneven boss").len(), 3 * 5);
    let side = boss(26.0, 42.0, 9.0).thin_side(mpa(10.0)).unwrap();
    close(in_mpa(side.at_bore.radial), -10.0, 1e-12, "pressure");
}

#[test]
fn a_boss_in_the_middle_is_a_ring_and_one_far_out_is_refused() {
    let even = ring(52.0, 84.0, 72e3, 0.33).under(mpa(20.0), mpa(0.0)).unwrap();
    let side = boss(26.0, 42.0, 0.0).thin_side(mpa(20.0)).unwrap();
    close(in_mpa(side.at_bore.hoop), in_mpa(even.at_inside.hoop), 1e-12, "bore");
    close(in_mpa(side.at_outside.hoop), in_mpa(even.at_outside.hoop), 1e-12, "outside");
    // More than a wall that is thin all round: it bends, too. The likely mistake is to take that for the bound.
    let thin = ring(52.0, 66.0, 72e3, 0.33).under(mpa(20.0), mpa(0.0)).unwrap();
    let side = boss(26.0, 42.0, 9.0).thin_side(mpa(20.0)).unwrap();
    assert!(side.at_outside.hoop > thin.at_outside.hoop && side.at_outside.hoop > side.at_bore.hoop);
    let said = boss(26.0, 42.0, 13.0).thin_side(mpa(20.0)).unwrap_err().to_string();
    assert!(said.contains("0.5") && said.contains("offset"), "{said}");
    assert!(EccentricRing { bore: mm(52.0), thin: mm(9.0), thick: mm(8.0) }.thin_side(mpa(1.0)).is_err());
}

/// An iron liner of 62/69 mm in a light-alloy boss.
fn lined(held: Held) -> LinedBore {
    LinedBore { liner: ring(62.0, 69.0, 110e3, 0.26), housing: ring(69.0, 84.0, 72e3, 0.33), seam: mm(69.0), held }
}

/// The same three rings as layers: a steel ring in the liner, with its interference, and the strains of liner and housing.
fn layers(bore: &LinedBore, of_ring: f64, of_liner: f64, strains: (f64, f64)) -> CompoundState {
    let layer = |ring, strain| Layer { ring, free_strain: share(strain) };
    let seam = |diameter: Length, interference: f64| Interface { diameter, interference: mm(interference) };
    let inner = ring(52.4, 62.0, 205e3, 0.29);
    Compound {
        layers: vec![layer(inner, 0.0), layer(bore.liner, strains.0), layer(bore.housing, strains.1)],
        interfaces: vec![seam(mm(62.0), of_ring), seam(bore.seam, of_liner)],
        ends: Ends::Free,
    }
    .solve()
    .unwrap()
}

#[test]
fn a_ring_pressed_into_a_lined_bore_meets_the_pressure_of_three_layers() {
    let bore = lined(Held::Pressed(mm(0.055)));
    let stands_for = bore.stands_for().unwrap();
    let inner = ring(52.4, 62.0, 205e3, 0.29);
    let joint = Joint { inner, outer: stands_for, diameter: mm(62.0), length: mm(17.0), interference: mm(0.030) };
    let fit = joint.solve().unwrap();
    // What the fitted liner's bore has been closed by its own fit is in the layers' interference and not in the joint's.
    let fitted = bore.under(Pressure::default(), share(0.0), share(0.0)).unwrap();
    let closed = -in_mm(fitted.liner.inside_change.unwrap());
    let state = layers(&bore, 0.030 - closed, 0.055, (0.0, 0.0));
    close(in_mpa(fit.pressure), in_mpa(state.interfaces[0].pressure), 1e-9, "pressure of the ring");
    let under = bore.under(fit.pressure, share(0.0), share(0.0)).unwrap();
    close(in_mpa(under.between), in_mpa(state.interfaces[1].pressure), 1e-9, "pressure at the seam");
    close(
        in_mpa(under.housing.at_inside.hoop),
        in_mpa(state.layers[2].at_inside.hoop),
        1e-9,
        "hoop stress of the housing",
    );
    // The one ring has the liner's own hoop stress at the bore, without that of the liner's fit.
    let own = in_mpa(under.liner.at_inside.hoop) - in_mpa(fitted.liner.at_inside.hoop);
    close(in_mpa(fit.outer.at_inside.hoop), own, 1e-9, "hoop stress at the bore");
}

#[test]
fn a_warm_lined_bore_grows_as_the_layers_do_and_like_the_liner_alone_once_that_is_free() {
    let bore = lined(Held::Pressed(mm(0.055)));
    for kelvin in [-40.0, 20.0, 60.0, 120.0, 200.0] {
        let strains = (10.5e-6 * kelvin, 21.5e-6 * kelvin);
        let state = bore.under(Pressure::default(), share(strains.0), share(strains.1)).unwrap();
        let layers = Compound {
            layers: vec![
                Layer { ring: bore.liner, free_strain: share(strains.0) },
                Layer { ring: bore.housing, free_strain: share(strains.1) },
            ],
            interfaces: vec![Interface { diameter: mm(69.0), interference: mm(0.055) }],
            ends: Ends::Free,
        };
        let fitted = |state: &CompoundState| in_mm(state.layers[0].inside_change.unwrap());
        let (warm, cold) = (layers.solve().unwrap(), {
            let mut cold = layers.clone();
            cold.layers.iter_mut().for_each(|layer| layer.free_strain = share(0.0));
            cold.solve().unwrap()
        });
        close(62.0 * state.bore_strain.get::<ratio>(), fitted(&warm) - fitted(&cold), 1e-9, "bore");
        close(in_mpa(state.between), in_mpa(warm.interfaces[0].pressure), 1e-9, "between");
    }
    // 55 µm of 69 mm are used up after 0.055/(69·11e-6) = 72.5 K; from there on the liner grows alone.
    let grown = |kelvin: f64| {
        bore.under(Pressure::default(), share(10.5e-6 * kelvin), share(21.5e-6 * kelvin))
            .unwrap()
            .bore_strain
            .get::<ratio>()
    };
    close(grown(173.0) - grown(73.0), 10.5e-6 * 100.0, 1e-9, "free liner");
    assert!(grown(70.0) - grown(60.0) > 1.2 * 10.5e-6 * 10.0, "a held liner follows its housing");
}

#[test]
fn a_cast_liner_of_the_housings_material_is_no_liner() {
    let one = ring(62.0, 84.0, 72e3, 0.33);
    let bore = LinedBore {
        liner: ring(62.0, 69.0, 72e3, 0.33),
        housing: ring(69.0, 84.0, 72e3, 0.33),
        seam: mm(69.0),
        held: Held::Bonded,
    };
    let stands_for = bore.stands_for().unwrap();
    close(in_mm(stands_for.outside), 84.0, 1e-9, "outside");
    let state = bore.under(mpa(10.0), share(1e-3), share(1e-3)).unwrap();
    let plain = one.under(mpa(10.0), Pressure::default()).unwrap();
    close(state.bore_strain.get::<ratio>(), 1e-3 + in_mm(plain.inside_change.unwrap()) / 62.0, 1e-9, "bore");
    close(in_mpa(state.liner.at_inside.hoop), in_mpa(plain.at_inside.hoop), 1e-9, "hoop");
}

#[test]
fn a_soft_liner_in_a_hard_housing_keeps_its_stiffness_where_no_ring_of_its_material_has_it() {
    // From a polymer to a bronze: a ring of the liner's own material gives way at least as much as one without end.
    for modulus in [3e3, 20e3, 60e3, 100e3, 120e3] {
        let bore = LinedBore {
            liner: ring(62.0, 63.0, modulus, 0.35),
            housing: ring(63.0, 150.0, 205e3, 0.29),
            seam: mm(63.0),
            held: Held::Bonded,
        };
        let stands_for = bore.stands_for().unwrap();
        close(in_mm(stands_for.outside), 150.0, 1e-12, "outside");
        let state = bore.under(mpa(10.0), share(0.0), share(0.0)).unwrap();
        let change = stands_for.under(mpa(10.0), Pressure::default()).unwrap().inside_change.unwrap();
        close(in_mm(change), 62.0 * state.bore_strain.get::<ratio>(), 1e-9, "bore under pressure");
    }
}

#[test]
fn what_is_no_lined_bore_is_refused() {
    let good = lined(Held::Bonded);
    let no_wall = LinedBore { housing: ring(69.0, 69.0, 72e3, 0.33), ..good };
    assert!(matches!(no_wall.stands_for(), Err(MechanicsError::NoWall { .. })));
    let apart = LinedBore { seam: mm(75.0), ..good };
    assert!(matches!(apart.stands_for(), Err(MechanicsError::NotAtJoint { .. })));
    let solid = LinedBore { liner: ring(0.0, 69.0, 72e3, 0.33), ..good };
    assert!(matches!(solid.stands_for(), Err(MechanicsError::OuterIsSolid)));
    assert!(good.under(mpa(1.0), share(0.5), share(0.0)).is_err());
    let tight = LinedBore { held: Held::Pressed(mm(5.0)), ..good };
    assert!(matches!(tight.under(mpa(1.0), share(0.0), share(0.0)), Err(MechanicsError::TooTight { .. })));
}

proptest! {
    #[test]
    fn a_hotter_lined_bore_of_a_housing_that_expands_more_is_never_smaller(
        wall in 1.0..8.0f64, interference in 0.0..0.12f64, kelvin in 0.0..150.0f64, more in 0.1..50.0f64,
    ) {
        let seam = 62.0 + 2.0 * wall;
        let bore = LinedBore {
            liner: ring(62.0, seam, 110e3, 0.26), housing: ring(seam, 95.0, 72e3, 0.33), seam: mm(seam),
            held: Held::Pressed(mm(interference)),
        };
        let at = |kelvin: f64| {
            bore.under(Pressure::default(), share(10.5e-6 * kelvin), share(21.5e-6 * kelvin)).unwrap()
        };
        let (warm, hot) = (at(kelvin), at(kelvin + more));
        prop_assert!(hot.bore_strain > warm.bore_strain);
        prop_assert!(hot.between <= warm.between && hot.between.value >= 0.0);
    }
}

fn m12() -> Screw {
    Screw { thread: ScrewThread::from(&Thread::parse("M12").unwrap()), face_diameter: None }
}

#[test]
fn a_rod_stretches_by_hookes_law_over_its_stress_area() {
    // M12: stress area 84.27 mm² (ISO 898-1); 10 kN on 100 mm of steel: 10e3·0.1/(206e9·84.27e-6) = 57.6 µm.
    let stretch = m12().thread.stretch(Force::new::<newton>(10e3), mm(100.0), mpa(206e3)).unwrap();
    close(in_mm(stretch), 10e3 * 0.1 / (206e9 * 84.27e-6) * 1e3, 1e-3, "stretch");
    assert!(m12().thread.stretch(Force::new::<newton>(10e3), mm(0.0), mpa(206e3)).is_err());
}

#[test]
fn a_turn_on_the_shoulder_raises_the_torque_by_lead_over_spring() {
    let friction = ScrewFrictionRange { low: ScrewFriction::both(0.10), high: ScrewFriction::both(0.16) };
    let newton_metres = Torque::new::<newton_meter>;
    let (running, limit) = (newton_metres(5.0), newton_metres(30.0));
    // 50 µm for 10 kN: a turn of 1.75 mm is 350 kN.
    let landing = Landing::of(&m12(), &friction, (Force::new::<newton>(10e3), mm(0.05)), running, limit).unwrap();
    let torque = |force: f64, friction| m12().torque(Force::new::<newton>(force), friction).unwrap().total();
    for (rise, friction) in [(landing.rise.0, friction.low), (landing.rise.1, friction.high)] {
        let want = torque(35e3, friction).get::<newton_meter>();
        close(rise.get::<newton_meter>(), want, 1e-9, "a tenth of a turn");
    }
    let turned = landing.turn_to_limit.get::<degree>();
    close(turned, 36.0 * 25.0 / landing.rise.1.get::<newton_meter>(), 1e-9, "turn to the limit");
    // Where the two cross nothing is left to turn.
    let crossed = Landing::of(&m12(), &friction, (Force::new::<newton>(10e3), mm(0.05)), limit, running).unwrap();
    assert!(crossed.turn_to_limit.get::<degree>().abs() < 1e-12);
    // What gives way more rises slower.
    let soft = Landing::of(&m12(), &friction, (Force::new::<newton>(10e3), mm(0.10)), running, limit).unwrap();
    close(soft.turn_to_limit.get::<degree>(), 2.0 * turned, 1e-9, "half the spring");
    assert!(Landing::of(&m12(), &friction, (Force::new::<newton>(10e3), mm(0.0)), running, limit).is_err());
}
