//! Materials that a job states by room-temperature values.

use seatwise::stock::material::{Bounds, Family, RoomValues, Status, Strength, StrengthKind, from_room_values};
use uom::si::f64::{
    MassDensity, Pressure, SpecificHeatCapacity, TemperatureCoefficient, ThermalConductivity, ThermodynamicTemperature,
};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::{gigapascal, megapascal};
use uom::si::ratio::part_per_million;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::thermal_conductivity::watt_per_meter_kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

fn zinc_casting() -> RoomValues {
    RoomValues {
        family: Family::LightAlloy,
        density: MassDensity::new::<kilogram_per_cubic_meter>(6600.0),
        elastic_modulus: Pressure::new::<gigapascal>(85.0),
        poisson_ratio: 0.29,
        strength: Strength { value: Pressure::new::<megapascal>(220.0), kind: StrengthKind::Proof02 },
        mean_expansion: TemperatureCoefficient::new::<per_kelvin>(27.0e-6),
        heat_capacity: SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(419.0),
        conductivity: ThermalConductivity::new::<watt_per_meter_kelvin>(113.0),
        emissivity: None,
        coldest: None,
        hottest: None,
        source: None,
    }
}

fn celsius(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(t)
}

#[test]
fn a_mean_coefficient_is_straight_inside_its_range_and_refused_outside() {
    let zinc = from_room_values("zinc-casting", &zinc_casting()).unwrap();
    // 27e-6 x 80 K = 2160 millionths; 27e-6 x -40 K = -1080 millionths.
    for (t, expected) in [(100.0, 2160.0), (-20.0, -1080.0), (20.0, 0.0)] {
        let got = zinc.expansion_from_20c(celsius(t)).unwrap().get::<part_per_million>();
        assert!((got - expected).abs() < 1e-6, "{t} °C: {got}");
    }
    for t in [-41.0, 121.0, -78.5] {
        assert!(zinc.expansion_from_20c(celsius(t)).is_err(), "{t} °C");
    }
}

#[test]
fn a_material_without_source_is_marked_so_and_one_with_is_not() {
    let marked = |values: &RoomValues| {
        let material = from_room_values("zinc-casting", values).unwrap();
        material.sources().map(|(key, p)| (key, p.status.clone())).collect::<Vec<_>>()
    };
    let without = marked(&zinc_casting());
    assert_eq!(without.iter().filter(|(_, status)| *status == Status::NoSourceGiven).count(), 7);
    assert!(without.iter().any(|(key, status)| *key == "coldest" && *status == Status::Practice));
    let with = marked(&RoomValues { source: Some("EN 1774".to_owned()), ..zinc_casting() });
    assert!(with.iter().all(|(_, status)| *status != Status::NoSourceGiven));
}

#[test]
fn a_stated_range_is_used() {
    let wide = RoomValues { coldest: Some(celsius(-80.0)), hottest: Some(celsius(90.0)), ..zinc_casting() };
    let zinc = from_room_values("zinc-casting", &wide).unwrap();
    assert!(zinc.expansion_from_20c(celsius(-79.0)).is_ok() && zinc.expansion_from_20c(celsius(91.0)).is_err());
}

#[test]
fn values_of_no_real_solid_are_refused_by_name() {
    let good = zinc_casting;
    let cases: [(&str, RoomValues); 6] = [
        ("poisson_ratio", RoomValues { poisson_ratio: 0.6, ..good() }),
        ("poisson_ratio", RoomValues { poisson_ratio: f64::NAN, ..good() }),
        ("mean_expansion", RoomValues { mean_expansion: TemperatureCoefficient::new::<per_kelvin>(27.0e-3), ..good() }),
        ("density", RoomValues { density: MassDensity::new::<kilogram_per_cubic_meter>(6.6), ..good() }),
        ("coldest", RoomValues { coldest: Some(celsius(25.0)), ..good() }),
        ("emissivity", RoomValues { emissivity: Some(Bounds { low: 0.8, high: 0.2 }), ..good() }),
    ];
    for (property, values) in cases {
        let said = from_room_values("zinc-casting", &values).unwrap_err().to_string();
        assert!(said.contains(property) && said.contains("zinc-casting"), "{said}");
    }
}
