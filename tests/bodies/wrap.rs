//! Bags, paper, trapped air, and media that warm with the part.

use super::*;

fn coefficient(h: f64, wrap: &Wrap) -> f64 {
    wrapped(film(h), wrap).unwrap().get::<watt_per_square_meter_kelvin>()
}

#[test]
fn resistances_add_up() {
    assert!((coefficient(8.0, &Wrap::none()) - 8.0).abs() < 1e-12);
    // 0.05 mm of polyethylene: 1.515e-4 m² K/W, worked by hand; on 8 W/(m² K) it is a thousandth.
    let bag = Wrap::plastic_bag(mm(0.05)).unwrap();
    assert!((bag.resistance_m2k_w() - 1.515_15e-4).abs() < 1e-9);
    assert!((coefficient(8.0, &bag) - 7.990_315).abs() < 1e-5);
    // 0.18 mm of paper: 1e-3 m² K/W.
    let paper = Wrap::paper(mm(0.18)).unwrap();
    assert!((paper.resistance_m2k_w() - 1e-3).abs() < 1e-12);
    let both = paper.and(bag);
    assert!((1.0 / coefficient(20.0, &both) - (0.05 + 1e-3 + 1.515_15e-4)).abs() < 1e-8);
    assert!(both.is_vapour_tight() && bag.is_vapour_tight() && !paper.is_vapour_tight());
}

#[test]
fn trapped_air_has_the_conductivity_of_air() {
    // CoolProp 8.0.0, 101325 Pa: °C, W/(m K). The formula is a standard's fit; within 2.5 % over this range.
    for (t, k) in [
        (-80.0, 0.017_924_9),
        (-60.0, 0.019_597_0),
        (-50.0, 0.020_416_2),
        (-40.0, 0.021_224_9),
        (-10.0, 0.023_590_7),
        (20.0, 0.025_873_8),
        (50.0, 0.028_082_9),
        (80.0, 0.030_225_3),
        (150.0, 0.035_000_7),
    ] {
        let air = Wrap::still_air(mm(2.0), celsius(t), 0.0).unwrap();
        let got = 2e-3 / air.resistance_m2k_w();
        assert!((got / k - 1.0).abs() < 0.025, "{t} °C: {got}");
    }
    // Radiation in parallel: at 293.15 K, 4 ε σ T³ = 5.714 ε.
    let still = Wrap::still_air(mm(2.0), celsius(20.0), 0.0).unwrap().resistance_m2k_w();
    let bright = Wrap::still_air(mm(2.0), celsius(20.0), 0.2).unwrap().resistance_m2k_w();
    assert!((1.0 / bright - 1.0 / still - 0.2 * 5.714).abs() < 1e-3);
    assert!(Wrap::still_air(mm(0.0), celsius(20.0), 0.2).unwrap().resistance_m2k_w() < 1e-15);
    assert!(Wrap::still_air(mm(11.0), celsius(20.0), 0.2).unwrap_err().to_string().contains("10 mm"));
    assert!(Wrap::still_air(mm(1.0), celsius(-100.0), 0.2).is_err());
    assert!(Wrap::layer(mm(1.0), 0.0).is_err() && Wrap::paper(mm(-1.0)).is_err());
}

#[test]
fn a_bagged_part_chills_as_one_under_the_wrapped_film() {
    let capacity = rising_capacity();
    let bag = Wrap::plastic_bag(mm(0.1)).unwrap().and(Wrap::still_air(mm(2.0), celsius(0.0), 0.2).unwrap());
    let run = |exchange| alone(body(0.2, &capacity, 293.15), 255.15, exchange).run(seconds(900.0)).unwrap().end()[0];
    let bagged = run(Exchange { wrap: bag, ..surface(0, 0.011, 20.0) }).get::<kelvin>();
    let by_film = run(surface(0, 0.011, coefficient(20.0, &bag))).get::<kelvin>();
    assert!((bagged - by_film).abs() < 1e-9, "{bagged} {by_film}");
    assert!(bagged > run(surface(0, 0.011, 20.0)).get::<kelvin>() + 1.0);
}

#[test]
fn water_settles_on_wrapped_paper_as_on_a_bare_part_under_the_wrapped_film() {
    // Heat and vapour pass the same layers, so that by the analogy of both the film through the paper drives both.
    let capacity = constant(460.0);
    let moisture = Some(MoistAir::new(celsius(20.0), 0.7, Pressure::new::<pascal>(101_325.0)).unwrap());
    let paper = Wrap::paper(mm(3.0)).unwrap();
    let run = |exchange: Exchange<'_>| {
        let network = alone(body(0.5, &capacity, 255.15), 293.15, Exchange { moisture, ..exchange });
        let history = network.run(seconds(60.0)).unwrap();
        (history.end()[0].get::<kelvin>(), history.water_on(0).mass().get::<kilogram>())
    };
    let (wrapped, bare) =
        (run(Exchange { wrap: paper, ..surface(0, 0.02, 60.0) }), run(surface(0, 0.02, coefficient(60.0, &paper))));
    assert!((wrapped.0 - bare.0).abs() < 1e-6 && (wrapped.1 - bare.1).abs() < 1e-6 * bare.1, "{wrapped:?} {bare:?}");
    // 1/60 + 3/180 m² K/W: the water comes half as fast.
    let without = run(surface(0, 0.02, 60.0));
    assert!(wrapped.1 > 0.5 * without.1 && wrapped.1 < 0.65 * without.1, "{wrapped:?} {without:?}");
}

/// A part of 2 kg in a medium of this heat capacity at -18 °C.
fn in_medium(heat_capacity: f64, holding: f64, time: f64) -> (f64, f64, f64) {
    let capacity = constant(460.0);
    let medium = LoadedMedium::new(
        celsius(-18.0),
        HeatCapacity::new::<joule_per_kelvin>(heat_capacity),
        watts(holding),
        celsius(20.0),
    )
    .unwrap();
    let mut network = Network { bodies: vec![body(2.0, &capacity, 293.15)], ..Network::default() };
    let place = network.add_medium(&medium);
    network.exchanges.push(Exchange { with: Partner::Body(place), ..surface(0, 0.05, 10.0) });
    let history = network.run(seconds(time)).unwrap();
    let missing = history.account().missing().get::<joule>();
    let warmest = (0..=200).map(|i| kelvin_at(&history, place, time * f64::from(i) / 200.0)).fold(0.0, f64::max);
    assert!(missing.abs() < 1.0, "{missing}");
    (history.end()[0].get::<kelvin>(), history.end()[place].get::<kelvin>(), warmest)
}

#[test]
fn an_infinite_medium_is_constant_surroundings() {
    let capacity = constant(460.0);
    let alone = alone(body(2.0, &capacity, 293.15), 255.15, surface(0, 0.05, 10.0)).run(seconds(1800.0)).unwrap();
    let want = alone.end()[0].get::<kelvin>();
    for holding in [0.0, 100.0] {
        let (part, medium, _) = in_medium(1e10, holding, 1800.0);
        assert!((part - want).abs() < 1e-3 && (medium - 255.15).abs() < 1e-3, "{part} {want} {medium}");
        let (small, _, _) = in_medium(5e3, holding, 1800.0);
        assert!(small > part + 0.5, "a medium that warms cools less: {small}");
    }
}

#[test]
fn a_medium_without_a_machine_ends_at_the_mixing_temperature() {
    // 920 J/K at 20 °C and 5000 J/K at -18 °C.
    let (part, medium, _) = in_medium(5e3, 0.0, 3e5);
    let mixed = (920.0 * 293.15 + 5000.0 * 255.15) / 5920.0;
    assert!((part - mixed).abs() < 1e-3 && (medium - mixed).abs() < 1e-3, "{part} {medium} {mixed}");
}

#[test]
fn a_freezer_warms_with_the_part_and_recovers() {
    let (part, medium, warmest) = in_medium(5e3, 60.0, 2e5);
    assert!(warmest > 257.0, "{warmest}");
    assert!((part - 255.15).abs() < 0.01 && (medium - 255.15).abs() < 0.01, "{part} {medium}");
    // More power to hold it, less rise.
    assert!(in_medium(5e3, 200.0, 3600.0).2 < warmest);
    let medium = |capacity: f64, power: f64, room: f64| {
        LoadedMedium::new(celsius(-18.0), HeatCapacity::new::<joule_per_kelvin>(capacity), watts(power), celsius(room))
    };
    assert!(medium(0.0, 10.0, 20.0).is_err() && medium(1e3, -1.0, 20.0).is_err() && medium(1e3, 10.0, -18.0).is_err());
    assert!(medium(1e3, 0.0, -18.0).is_ok());
}
