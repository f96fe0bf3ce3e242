//! What is refused, and limits at which nothing may break.

use super::*;

fn usual() -> Gap<'static> {
    Gap::usual(Placement::OneSide)
}

#[test]
fn no_clearance_at_the_start_is_no_insertion() {
    for interference in [30.0, 0.0] {
        let seat = light_alloy(90.0, 20.0, 20.0, interference);
        let insertion = seat.run(Placement::OneSide, 3600.0);
        assert_eq!((insertion.course, insertion.grip()), (Course::NoClearance, Some(seconds(0.0))));
        assert_eq!(in_celsius(insertion.temperatures_at(seconds(0.0)).unwrap()), (20.0, 20.0));
        assert!(insertion.temperatures_at(seconds(1.0)).is_err(), "there is no later");
    }
}

#[test]
fn parts_as_warm_as_the_shop_stay_so() {
    let seat = light_alloy(90.0, 20.0, 20.0, -10.0);
    let insertion = seat.run(Placement::Concentric, 3600.0);
    assert_eq!(insertion.meeting.unwrap().at, seconds(0.0));
    let (inner, outer) = in_celsius(insertion.temperatures_at(seconds(1800.0)).unwrap());
    assert!((inner - 20.0).abs() < 1e-9 && (outer - 20.0).abs() < 1e-9, "{inner} {outer}");
    assert!((insertion.clearance_at(seconds(3600.0)).unwrap() - um(10.0)).abs() < um(1e-6));
}

#[test]
fn no_time_at_all_gives_the_start() {
    let seat = light_alloy(90.0, -18.0, 100.0, 30.0);
    let insertion = seat.run(Placement::OneSide, 0.0);
    assert_eq!((insertion.grip(), insertion.end()), (None, seconds(0.0)));
    let (inner, outer) = in_celsius(insertion.temperatures_at(seconds(0.0)).unwrap());
    assert!((inner + 18.0).abs() < 1e-9 && (outer - 100.0).abs() < 1e-9);
    let account = insertion.heat_account();
    assert!(account.inner.value.abs() < 1e-9 && account.through_joint.value.abs() < 1e-9);
}

#[test]
fn a_wrapped_pair_comes_to_rest_without_losing_anything() {
    let mut seat = light_alloy(90.0, -18.0, 100.0, -60.0);
    for part in [&mut seat.inner, &mut seat.outer] {
        (part.film, part.radiates) = (0.0, false);
    }
    let insertion = seat.run(Placement::Concentric, 86_400.0);
    let (inner, outer) = in_celsius(insertion.temperatures_at(seconds(86_400.0)).unwrap());
    let heats = [seat.inner.mass * STEEL[1], seat.outer.mass * ALUMINIUM[1]];
    let mixed = (heats[0] * -18.0 + heats[1] * 100.0) / (heats[0] + heats[1]);
    assert!((inner - mixed).abs() < 0.01 && (outer - mixed).abs() < 0.01, "{inner} {outer} {mixed}");
    assert!(insertion.heat_account().outer_to_shop.value.abs() < 1e-9);
}

#[test]
fn numbers_that_mean_nothing_are_refused_by_name() {
    let good = light_alloy(90.0, -18.0, 100.0, 30.0);
    let refused = |change: &dyn Fn(&mut Seat)| {
        let mut seat = good.clone();
        change(&mut seat);
        seat.exchange(usual()).run(seat.sizes(), seconds(60.0)).unwrap_err().to_string()
    };
    let said = [
        (refused(&|seat| seat.inner.mass = 0.0), "mass"),
        (refused(&|seat| seat.outer.mass = f64::NAN), "mass"),
        (refused(&|seat| seat.inner.free_area = -1.0), "free area"),
        (refused(&|seat| seat.inner.film = f64::INFINITY), "film coefficient"),
        (refused(&|seat| seat.outer.emissivity = 1.2), "emissivity"),
        (refused(&|seat| seat.length = 0.0), "length of the joint"),
        (refused(&|seat| seat.inner.capacity = constant(-1.0)), "heat capacity"),
        (refused(&|seat| seat.interference_um = 60_000.0), "bore of the outer part"),
        (refused(&|seat| seat.inner.start = -270.0), "is not known there"),
    ];
    for (message, expected) in said {
        assert!(message.contains(expected), "{message:?} does not name {expected:?}");
    }
    let gap = |smallest: f64| Gap { smallest: um(smallest), ..usual() };
    assert!(good.exchange(gap(0.0)).run(good.sizes(), seconds(60.0)).is_err());
    assert!(good.exchange(usual()).run(good.sizes(), seconds(f64::NAN)).is_err());
    assert!(good.exchange(usual()).run(good.sizes(), seconds(1e6)).is_err());
    assert!(good.exchange(usual()).frees_at(good.sizes(), um(-1.0)).is_err());
}

#[test]
fn a_table_that_ends_on_the_way_is_an_error() {
    let mut seat = light_alloy(90.0, -18.0, 100.0, 30.0);
    // Covers start, shop and the middle of the way, but not the temperature that the ring comes to.
    seat.inner.capacity = Curve::constant(460.0, 60.0, 335.0).unwrap();
    let refused = seat.exchange(usual()).run(seat.sizes(), seconds(600.0)).unwrap_err();
    assert!(refused.to_string().contains("heat capacity"), "{refused}");
}

#[test]
fn still_air_agrees_with_an_independent_property_library() {
    // CoolProp 8.0.0, PropsSI('L', 'T', T, 'P', 101325, 'Air'), W/(m K). Two formulas of the literature: 0.8 % at -80 °C.
    let rows = [
        (-80.0, 0.017_924_899_33),
        (-60.0, 0.019_596_972_65),
        (-30.0, 0.022_023_245_29),
        (-10.0, 0.023_590_691_36),
        (20.0, 0.025_873_828_3),
        (50.0, 0.028_082_863_47),
        (100.0, 0.031_619_889_07),
        (150.0, 0.035_000_7),
    ];
    for (t, expected) in rows {
        let got = still_air_conductivity(celsius(t)).unwrap().value;
        assert!((got / expected - 1.0).abs() < 0.008, "{t} °C: {got}, want {expected}");
    }
    assert!(still_air_conductivity(celsius(-196.0)).is_err(), "colder than the formula goes");
}
