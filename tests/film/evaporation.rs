//! Coolant used up, and the air of the room.

use super::*;
use uom::si::energy::kilojoule;
use uom::si::mass::kilogram;
use uom::si::volume::{cubic_meter, liter};

fn heat(kilojoules: f64) -> Energy {
    Energy::new::<kilojoule>(kilojoules)
}
fn kg(mass: f64) -> Mass {
    Mass::new::<kilogram>(mass)
}
fn room(volume: f64) -> Volume {
    Volume::new::<cubic_meter>(volume)
}

#[test]
fn nitrogen_takes_its_latent_heat_and_if_asked_that_of_the_cold_gas() {
    prove("Cold that nitrogen gives");
    let cold = nitrogen_evaporated(heat(100.0), None).unwrap();
    // 806.1 kg/m³ at the boiling point.
    assert!((cold.volume.get::<liter>() - 0.6229).abs() < 0.0005, "{:?}", cold.volume);
}

#[test]
fn the_vapour_cannot_leave_colder_than_it_boils_or_warmer_than_the_table() {
    assert!(nitrogen_evaporated(heat(1.0), Some(at_kelvin(70.0))).unwrap_err().to_string().contains("-196"));
    assert!(nitrogen_evaporated(heat(1.0), Some(at_kelvin(301.0))).unwrap_err().to_string().contains("26.85"));
    assert!(nitrogen_evaporated(heat(-1.0), None).is_err());
    assert!(dry_ice_sublimed(heat(f64::NAN)).is_err());
}

/// 25.2 kJ/mol is the usual handbook figure (from memory): 573 kJ/kg.
#[test]
fn dry_ice_takes_573_kilojoules_a_kilogram() {
    let used = dry_ice_sublimed(heat(573.0)).unwrap();
    assert!((used.mass.get::<kilogram>() - 1.0).abs() < 0.001, "{:?}", used.mass);
    assert!((used.volume.get::<liter>() - 0.641).abs() < 0.001, "{:?}", used.volume);
}

/// Litres of nitrogen in 60 m³ and the oxygen that safety sheets give for them, to 0.1 %.
#[test]
fn five_litres_of_nitrogen_are_just_allowed_in_sixty_cubic_metres_and_ten_are_not() {
    for (litres, percent) in [(5.0, 19.7), (10.0, 18.6)] {
        let air =
            room_air_after(Coolant::Nitrogen, kg(litres * 0.806_1), room(60.0), celsius(20.0), pascals(101_325.0));
        let oxygen = air.unwrap().oxygen;
        assert!((oxygen * 100.0 - percent).abs() < 0.05, "{litres} l: {oxygen}");
        assert_eq!(oxygen < OXYGEN_DEFICIENT, litres > 5.0);
    }
}

#[test]
fn dry_ice_reaches_the_limit_of_carbon_dioxide_long_before_that_of_oxygen() {
    let after = |mass, volume| {
        room_air_after(Coolant::DryIce, kg(mass), room(volume), celsius(20.0), pascals(101_325.0)).unwrap()
    };
    // 1 kg makes 0.544 m³ of gas (1.839 kg/m³): in 60 m³ 0.9 % on top of 0.04 %.
    let air = after(1.0, 60.0);
    assert!((air.gas.get::<cubic_meter>() - 0.5437).abs() < 0.0005, "{:?}", air.gas);
    assert!((air.carbon_dioxide - 0.009_44).abs() < 0.000_02, "{}", air.carbon_dioxide);
    assert!(air.carbon_dioxide > CARBON_DIOXIDE_LONG_TERM_LIMIT && air.oxygen > OXYGEN_DEFICIENT);
    let air = after(4.0, 60.0);
    assert!(air.carbon_dioxide > CARBON_DIOXIDE_SHORT_TERM_LIMIT && air.oxygen > OXYGEN_DEFICIENT);
    assert!((after(0.0, 60.0).oxygen - 0.209).abs() < 1e-12);
}

#[test]
fn a_hot_or_high_room_is_filled_more_and_the_ends_of_the_ranges_are_told() {
    let after = |mass, volume, c, p| room_air_after(Coolant::Nitrogen, kg(mass), room(volume), celsius(c), pascals(p));
    let base = after(4.0, 60.0, 20.0, 101_325.0).unwrap().oxygen;
    assert!(after(4.0, 60.0, 40.0, 101_325.0).unwrap().oxygen < base);
    assert!(after(4.0, 60.0, 20.0, 80_000.0).unwrap().oxygen < base);
    assert!(after(4.0, 60.0, 61.0, 1e5).unwrap_err().to_string().contains("60 °C"));
    assert!(after(4.0, 0.0, 20.0, 1e5).is_err() && after(-4.0, 60.0, 20.0, 1e5).is_err());
    assert!(after(4.0, 60.0, 20.0, 2e5).unwrap_err().to_string().contains("110 kPa"));
}
