//! Saturation pressure, dew point and frost point.

use super::*;
use seatwise::quantity::Pressure;
use uom::si::pressure::pascal;

#[test]
fn saturation_pressure_agrees_with_two_other_formulations() {
    prove("Saturation pressure of water");
}

#[test]
fn dew_and_frost_points_agree_within_a_fiftieth_of_a_kelvin() {
    let checks = prove("Dew and frost points");
    let of = |what| checks.iter().filter(|check| check.what == what).count();
    assert!(of("dew point") >= 4 && of("frost point") >= 3, "{checks:?}");
    let dew = |row: &&Row| row["quantity"].starts_with("dew") && given(&row["inputs"], "T") >= 0.0;
    for row in rows("moist_air.csv").iter().filter(dew) {
        let (_, surface) =
            condensation_point(celsius(given(&row["inputs"], "T")), given(&row["inputs"], "RH")).unwrap();
        assert_eq!(surface, over(number(row, "value")));
    }
}

#[test]
fn frost_comes_before_dew_below_zero_and_limits_are_told() {
    let vapour = Pressure::new::<pascal>(100.0);
    assert!(frost_point(vapour).unwrap() > dew_point(vapour).unwrap());
    assert!(saturation_pressure(celsius(120.0), Over::Water).is_err());
    assert!(saturation_pressure(celsius(1.0), Over::Ice).is_err());
    assert!(saturation_pressure(celsius(100.0), Over::Water).is_ok());
    let said = vapour_pressure(celsius(20.0), 50.0, Over::Water).unwrap_err().to_string();
    assert!(said.contains("relative humidity is 50") && said.contains("0 to 1"), "{said}");
    assert!(dew_point(Pressure::new::<pascal>(0.0)).is_err());
    assert!(condensation_point(celsius(20.0), 0.0).is_err());
}
