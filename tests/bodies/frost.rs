//! Dew and frost on a cold part.

use super::*;

fn flux(air: &MoistAir, surface_c: f64) -> (f64, f64, Over) {
    let wetting = air.wetting(celsius(surface_c), film(6.0)).unwrap();
    let mass = wetting.mass.get::<kilogram_per_square_meter_second>();
    (mass, wetting.heat.get::<watt_per_square_meter>(), wetting.onto)
}

#[test]
fn it_starts_at_the_dew_point_and_the_frost_point() {
    for (t, humidity) in [(20.0, 0.3), (20.0, 0.7), (30.0, 0.8), (5.0, 0.5), (-10.0, 0.5)] {
        let air = moist_air(t, humidity);
        let (onset, over) = air.onset().unwrap();
        let at = |step: f64| flux(&air, onset.get::<degree_celsius>() + step);
        assert!(at(1e-4).0.abs() < 1e-15 && at(1e-4).1.abs() < 1e-15);
        assert!(at(-1e-3).0 > 0.0 && at(-1.0).0 > at(-0.5).0);
        assert_eq!(at(-1e-3).2, over);
    }
    // The dew point itself, from an independent library: 14.367 °C at 20 °C and 70 % (PsychroLib 2.5.0).
    assert!((moist_air(20.0, 0.7).onset().unwrap().0.get::<degree_celsius>() - 14.367).abs() < 0.02);
    assert_eq!(moist_air(5.0, 0.5).onset().unwrap().1, Over::Ice);
    assert_eq!(moist_air(20.0, 0.0).onset(), None);
}

#[test]
fn the_rate_is_that_of_the_analogy_worked_by_hand() {
    // 20 °C, 50 %: e = 1169.40 Pa (PsychroLib: 2338.80 at saturation); over ice at -40 °C 12.845 Pa. Le^(2/3) = 0.89733.
    // g = 6 × 0.621945 × 1156.56 / (1006 × 0.89733 × 101325) = 4.7185e-5 kg/(m² s); × 2834.52 kJ/kg = 133.75 W/m².
    let (mass, heat, onto) = flux(&moist_air(20.0, 0.5), -40.0);
    assert!((mass / 4.7185e-5 - 1.0).abs() < 1e-3, "{mass}");
    assert!((heat / 133.75 - 1.0).abs() < 1e-3, "{heat}");
    assert_eq!(onto, Over::Ice);
    // 30 °C, 80 %: e = 3396.82 Pa; over water at 10 °C 1228.00 Pa; 2500.91 - 23.7 = 2477.2 kJ/kg.
    // g = 6 × 0.621945 × 2168.82 / (1006 × 0.89733 × 101325) = 8.8482e-5; × 2477.2e3 = 219.19 W/m².
    let (mass, heat, onto) = flux(&moist_air(30.0, 0.8), 10.0);
    assert!((mass / 8.8482e-5 - 1.0).abs() < 1e-3, "{mass}");
    assert!((heat / 219.19 - 1.0).abs() < 1e-3, "{heat}");
    assert_eq!(onto, Over::Water);
    // In liquid-nitrogen cold the surface holds no vapour: the whole of it counts.
    let (cold, _, _) = flux(&moist_air(20.0, 0.5), -195.8);
    assert!((cold / 4.7185e-5 - 1169.40 / 1156.56).abs() < 1e-3);
}

#[test]
fn a_warm_up_with_frost_follows_an_independent_solver() {
    prove("Warming up with dew and frost");
}

/// Seconds from -60 °C to 10 °C on the bench at 20 °C, and the history.
fn warm_up(humidity: f64, wrap: Wrap) -> (f64, NetworkHistory) {
    let (capacity, conductivity) = (rising_capacity(), constant(40.0));
    let inside = Some(Inside { path: ConductionPath::both_faces(mm(10.0)), conductivity: &conductivity });
    let moisture = Some(moist_air(20.0, humidity));
    let exchange = Exchange { emissivity: 0.3, inside, moisture, wrap, ..surface(0, 0.0113, 6.0) };
    let history = alone(body(0.2, &capacity, 213.15), 293.15, exchange).run(seconds(3600.0)).unwrap();
    (history.first_time_at(0, celsius(10.0)).unwrap().get::<second>(), history)
}

#[test]
fn more_humidity_never_gives_a_longer_window() {
    let times: Vec<f64> = (0..=20).map(|i| warm_up(f64::from(i) / 20.0, Wrap::none()).0).collect();
    assert!(times.windows(2).all(|pair| pair[1] <= pair[0] + 1e-3), "{times:?}");
    assert!(times[10] < 0.85 * times[0], "{times:?}");
}

#[test]
fn dry_air_and_a_closed_bag_leave_nothing() {
    let dry = warm_up(0.0, Wrap::none());
    assert!(dry.1.water_on(0).mass().get::<gram>().abs() < 1e-12);
    let capacity = rising_capacity();
    let plain = Exchange { emissivity: 0.3, ..surface(0, 0.0113, 6.0) };
    let without = alone(body(0.2, &capacity, 213.15), 293.15, plain).run(seconds(3600.0)).unwrap();
    let time = without.first_time_at(0, celsius(10.0)).unwrap().get::<second>();
    assert!((dry.0 - time).abs() < 0.005 * time, "{} {time}", dry.0);
    let bag = warm_up(0.9, Wrap::plastic_bag(mm(0.05)).unwrap());
    assert!(bag.1.water_on(0).mass().get::<gram>().abs() < 1e-12);
    assert!(bag.0 > dry.0);
    // Paper lets vapour through.
    assert!(warm_up(0.9, Wrap::paper(mm(0.1)).unwrap()).1.water_on(0).mass().get::<gram>() > 0.1);
}

#[test]
fn the_energy_of_the_frost_is_latent_heat_times_mass_and_melting_takes_its_share_back() {
    let (_, history) = warm_up(0.8, Wrap::none());
    let (water, account) = (history.water_on(0), history.account());
    let (dew, frost) = (water.dew.get::<kilogram>(), water.frost.get::<kilogram>());
    assert!(dew > 1e-4 && frost > 1e-4);
    let latent = account.latent.get::<joule>();
    // Deposition 2834.52 kJ/kg; dew settles between 0 and 16.4 °C, so between 2500.9 and 2462 kJ/kg.
    let of_frost = 2.834_520_3e6 * frost;
    assert!(latent - of_frost < 2.5009e6 * dew && latent - of_frost > 2.462e6 * dew, "{latent}");
    // All of it has melted, 333.6 kJ/kg.
    let melted = account.melting.get::<joule>() / (333_605.7 * frost);
    assert!((melted - 1.0).abs() < 1e-3, "{melted}");
    assert_eq!(account.melting, water.melting);
    assert!(account.missing().get::<joule>().abs() < 1e-3 * account.stored.get::<joule>());
    // The flux of the helper is latent heat times mass too.
    let (mass, heat, _) = flux(&moist_air(20.0, 0.8), -30.0);
    assert!((heat / mass - 2.834_520_3e6).abs() < 10.0);
}

#[test]
fn air_that_cannot_be_is_refused() {
    let made =
        |t: f64, humidity: f64, pressure: f64| MoistAir::new(celsius(t), humidity, Pressure::new::<pascal>(pressure));
    assert!(made(20.0, 1.2, 101_325.0).unwrap_err().to_string().contains("humidity"));
    assert!(made(120.0, 0.5, 101_325.0).is_err());
    assert!(made(20.0, 0.5, 101.3).unwrap_err().to_string().contains("kPa"));
    assert!(made(20.0, f64::NAN, 101_325.0).is_err());
    let air = moist_air(20.0, 0.5);
    assert!(air.wetting(celsius(-18.0), film(-1.0)).is_err());
    assert!(air.wetting(celsius(150.0), film(5.0)).is_err());
}
