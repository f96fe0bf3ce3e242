//! Dry air and the standard atmosphere.

use super::*;
use uom::si::ratio::ratio;

#[test]
fn air_agrees_with_the_real_gas_within_one_per_cent_in_shop_air() {
    assert_eq!(prove("Air at shop temperatures").len(), 82);
}

#[test]
fn air_agrees_with_the_real_gas_within_two_per_cent_at_the_ends_of_its_range() {
    prove("Air at the ends of its range");
}

#[test]
fn pressure_thins_the_air_and_nothing_else() {
    let [sea, high] = [101_325.0, 60_000.0].map(|p| Air::at(celsius(20.0), pascals(p)).unwrap());
    assert!((high.density() / sea.density()).get::<ratio>() < 0.593);
    assert!((high.conductivity() / sea.conductivity()).get::<ratio>() > 0.999_999);
    assert!((high.kinematic_viscosity() / sea.kinematic_viscosity()).get::<ratio>() > 1.68);
}

#[test]
fn air_out_of_range_names_the_nearest_bound() {
    for (celsius_given, bound) in [(-121.0, "-120"), (301.0, "300 °C")] {
        let said = Air::at(celsius(celsius_given), pascals(1e5)).unwrap_err().to_string();
        assert!(said.contains(bound) && said.contains(&format!("is {celsius_given} °C")), "{said}");
    }
    let said = Air::at(celsius(20.0), pascals(49e3)).unwrap_err().to_string();
    assert!(said.contains("is 49 kPa") && said.contains("from 50"), "{said}");
    assert!(Air::at(celsius(f64::NAN), pascals(1e5)).is_err() && Air::at(celsius(20.0), pascals(f64::NAN)).is_err());
    assert!(Air::at(celsius(-120.0), pascals(50e3)).is_ok() && Air::at(celsius(300.0), pascals(110e3)).is_ok());
}

#[test]
fn the_standard_atmosphere_is_that_of_the_tables() {
    prove("Standard atmosphere");
    // US Standard Atmosphere 1976 at a geopotential altitude of 5000 m: 540.20 hPa (from memory).
    let p = standard_pressure(metres(5000.0)).unwrap().get::<pascal>();
    assert!((p - 54_020.0).abs() < 1.0, "{p}");
    assert!(standard_pressure(metres(-500.0)).unwrap().get::<pascal>() > 107_000.0);
    let said = standard_pressure(metres(5001.0)).unwrap_err().to_string();
    assert!(said.contains("5001 m") && said.contains("to 5000 m"), "{said}");
    assert!(standard_pressure(metres(-501.0)).is_err());
}
