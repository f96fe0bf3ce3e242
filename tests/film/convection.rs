//! Nusselt numbers, film coefficients of single bodies, radiation and stated ranges.

use super::*;

#[test]
fn free_convection_gives_the_nusselt_numbers_of_the_named_correlations() {
    assert_eq!(prove("Free convection").len(), 18 + 22 + 12 + 11 + 7);
}

#[test]
fn forced_convection_gives_the_nusselt_numbers_of_the_named_correlations() {
    assert_eq!(prove("Forced convection").len(), 12 + 2);
}

/// The dispatcher of a well-known library takes another correlation for this name: 40.3833 instead of 40.6371.
#[test]
fn the_cylinder_across_is_churchill_bernstein_and_not_its_neighbour() {
    let nusselt = ForcedConvection::CylinderAcross.nusselt(6071.0, 0.7).unwrap();
    assert!((nusselt - 40.6371).abs() < 0.000_05, "{nusselt}");
}

#[test]
fn film_coefficients_of_a_cylinder_in_air_agree_within_one_per_cent() {
    for row in rows("convection", "h natural convection, horizontal cylinder") {
        let (surface, air) = (given(&row, "Ts"), given(&row, "Ta"));
        // A cylinder so long that its faces do not count.
        let part = plug(given(&row, "L") * 1e3, 1e6);
        let film = part_in_air(&part, &still(air, Axis::Horizontal), celsius(surface)).unwrap();
        close(&row, w_m2k(film.faces[0].film), 0.01);
        assert!(film.faces[0].within_range && film.faces[0].surface == Surface::Outside);
    }
    for row in rows("convection", "h cross flow") {
        let diameter = given(&row, "D");
        let air = Air::at(celsius(given(&row, "film T")), pascals(101_325.0)).unwrap();
        let viscosity = air.kinematic_viscosity().get::<uom::si::kinematic_viscosity::square_meter_per_second>();
        let (re, pr) = (given(&row, "U") * diameter / viscosity, air.prandtl().get::<uom::si::ratio::ratio>());
        let nusselt = ForcedConvection::CylinderAcross.nusselt(re, pr).unwrap();
        let conductivity = air.conductivity().get::<uom::si::thermal_conductivity::watt_per_meter_kelvin>();
        close(&row, nusselt * conductivity / diameter, 0.01);
    }
}

#[test]
fn wind_on_a_part_is_churchill_bernstein_when_it_is_strong() {
    for row in rows("convection", "h cross flow") {
        let film_c = given(&row, "film T");
        let around = AirAround { air_speed: speed(given(&row, "U")), ..still(film_c, Axis::Horizontal) };
        let part = plug(given(&row, "D") * 1e3, 1e6);
        let outside = part_in_air(&part, &around, celsius(film_c)).unwrap().faces[0];
        // Free convection at no difference adds less than 0.1 %; the air properties may be off by 1 %.
        close(&row, w_m2k(outside.film), 0.011);
        assert!(outside.within_range);
    }
}

#[test]
fn correlations_out_of_range_name_their_bounds() {
    let said = NaturalConvection::HorizontalCylinder.nusselt(2e12, 0.7).unwrap_err().to_string();
    assert!(said.contains("1000000000000"), "{said}");
    let said = NaturalConvection::FreeFace.nusselt(9e3, 0.7).unwrap_err().to_string();
    assert!(said.contains("from 10000 "), "{said}");
    let said = NaturalConvection::HeldFace.nusselt(9e4, 0.7).unwrap_err().to_string();
    assert!(said.contains("from 100000 "), "{said}");
    assert!(NaturalConvection::VerticalPlate.nusselt(0.09, 0.7).is_err());
    assert!(NaturalConvection::Sphere.nusselt(2e11, 0.7).is_err());
    assert!(NaturalConvection::Sphere.nusselt(f64::NAN, 0.7).is_err());
    assert!(NaturalConvection::VerticalPlate.nusselt(1e5, 0.4).is_err());
    let said = ForcedConvection::CylinderAcross.nusselt(0.2, 0.5).unwrap_err().to_string();
    assert!(said.contains("from 0.4 "), "{said}");
    assert!(ForcedConvection::LaminarPlate.nusselt(6e5, 0.7).unwrap_err().to_string().contains("500000"));
    assert!(ForcedConvection::LaminarPlate.nusselt(1e4, 0.55).is_err());
}

#[test]
fn the_jump_of_mcadams_stands_where_its_doc_says() {
    let nusselt = |ra| NaturalConvection::FreeFace.nusselt(ra, 0.7).unwrap();
    let jump = nusselt(1.000_001e7) / nusselt(1e7);
    assert!((jump - 1.064).abs() < 0.001, "{jump}");
}

#[test]
fn radiation_is_the_law_of_the_fourth_power() {
    let checks = prove("Radiation");
    let net = checks.iter().filter(|check| check.what.starts_with("net")).count();
    assert_eq!((net, checks.len()), (22, 32));
    assert!(radiation_flux(1.1, celsius(20.0), celsius(30.0)).unwrap_err().to_string().contains("0 to 1"));
    assert!(radiation_coefficient(0.5, at_kelvin(0.0), celsius(30.0)).is_err());
    // At equal temperatures there is no flux but still a coefficient, 4 ε σ T³.
    let alike = celsius(20.0);
    assert!(w_m2(radiation_flux(1.0, alike, alike).unwrap()).abs() < 1e-12);
    assert!((w_m2k(radiation_coefficient(1.0, alike, alike).unwrap()) - 5.714).abs() < 0.0005);
}

#[test]
fn stated_ranges_are_ordered_and_say_where_they_come_from() {
    for range in [CONTACT_OF_MACHINED_FACES, HOT_AIR_GUN, OIL_BATH, WATER_BATH, DRY_ICE_ALCOHOL_BATH] {
        assert!(range.low() < range.middle() && range.middle() < range.high(), "{}", range.what);
        assert!(range.source.len() > 30 && !range.what.is_empty());
    }
    let conductance = HeatTransfer::new::<watt_per_square_meter_kelvin>(1000.0);
    assert!((w_m2k(contact_film(conductance, 0.25).unwrap()) - 250.0).abs() < 1e-9);
    assert!(contact_film(conductance, 1.2).is_err());
    assert!(contact_film(conductance * 1e3, 0.2).unwrap_err().to_string().contains("100000"));
}
