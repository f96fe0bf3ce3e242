//! Media and friction.

use std::collections::BTreeSet;

use seatwise::stock::friction::{Lubrication, friction};
use seatwise::stock::material::Family;
use seatwise::stock::medium::{Direction, Hazard, Medium, MediumError, Residue, Transfer, embedded, embedded_media};
use uom::si::f64::ThermodynamicTemperature;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

fn celsius(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(t)
}

fn film(medium: &Medium) -> (f64, f64) {
    let film = medium.film().unwrap();
    (film.low.get::<watt_per_square_meter_kelvin>(), film.high.get::<watt_per_square_meter_kelvin>())
}

#[test]
fn every_medium_is_there_with_sources_and_names_of_its_own() {
    let media = embedded_media().unwrap();
    let ids: Vec<&str> = media.iter().map(Medium::id).collect();
    let expected = [
        "domestic-freezer",
        "chest-freezer",
        "deep-freezer-80",
        "dry-ice",
        "dry-ice-alcohol",
        "liquid-nitrogen",
        "still-air",
        "fan",
        "oven",
        "hot-plate",
        "boiling-water",
        "oil-bath",
        "induction-heater",
        "hot-air-gun",
    ];
    assert_eq!(ids, expected);
    let mut seen = BTreeSet::new();
    for medium in &media {
        assert_eq!(medium.sources().filter(|(_, p)| p.source.as_str().len() > 5).count(), 2, "{}", medium.id());
        for name in medium.names().chain([medium.id()]) {
            assert!(seen.insert(name.to_lowercase().replace(['-', ' '], "")), "{name} stands for two media");
            assert_eq!(embedded(name).unwrap().id(), medium.id());
        }
    }
}

/// CoolProp, IEC 62552 and tables of baths, as in the thermal reference notes (media.csv ME01 to ME09).
#[test]
fn chilling_media_have_the_published_temperatures() {
    for (id, published) in [
        ("freezer", -18.0),
        ("chest-freezer", -25.0),
        ("deep-freezer-80", -80.0),
        ("dry-ice", -78.5),
        ("liquid-nitrogen", -195.8),
    ] {
        let got = embedded(id).unwrap().at(None).unwrap().get::<degree_celsius>();
        assert!((got - published).abs() < 0.051, "{id}: {got}");
    }
    // Sources give -72 to -78 for alcohol; the end that chills less is the default.
    assert!((embedded("dry-ice-alcohol").unwrap().at(None).unwrap().get::<degree_celsius>() + 72.0).abs() < 1e-9);
}

#[test]
fn directions_agree_with_temperatures() {
    for medium in embedded_media().unwrap() {
        let range = medium.temperature();
        match medium.direction() {
            Direction::Chill => assert!(range.high < celsius(0.0), "{}", medium.id()),
            Direction::Warm => assert!(range.low >= celsius(40.0), "{}", medium.id()),
            Direction::Air => assert!(range.default.is_some(), "{}", medium.id()),
        }
    }
}

#[test]
fn only_gases_radiate_and_films_are_ordered_as_heat_transfer_has_it() {
    for medium in embedded_media().unwrap() {
        if let Transfer::Film(film) = medium.transfer() {
            let gas = ["domestic-freezer", "chest-freezer", "deep-freezer-80", "still-air", "fan", "oven"];
            assert_eq!(film.radiates, gas.contains(&medium.id()), "{}", medium.id());
        }
    }
    let of = |id: &str| film(&embedded(id).unwrap());
    assert!(of("still-air").1 < of("fan").0 && of("fan").1 < of("liquid-nitrogen").0);
    assert!(of("domestic-freezer").1 < of("dry-ice-alcohol").0 && of("oil-bath").1 < of("boiling-water").0);
    // ME20, ME21, ME23 of the thermal reference notes.
    assert_eq!((of("domestic-freezer"), of("fan")), ((3.0, 8.0), (11.0, 28.0)));
    let nitrogen = of("liquid-nitrogen");
    assert!((nitrogen.0 - 53.0).abs() < 1e-9 && (nitrogen.1 - 2.0 * 105.0).abs() < 1e-9);
}

#[test]
fn a_medium_that_is_set_by_hand_needs_a_temperature_and_refuses_a_wild_one() {
    for id in ["oven", "hot-plate", "oil-bath", "hot-air-gun", "induction-heater"] {
        let medium = embedded(id).unwrap();
        assert!(matches!(medium.at(None), Err(MediumError::NoTemperature { .. })), "{id}");
        assert!(medium.at(Some(celsius(90.0))).is_ok(), "{id}");
        let said = medium.at(Some(celsius(900.0))).unwrap_err().to_string();
        assert!(said.contains("900.0 °C") && said.contains(id), "{said}");
    }
    assert!(embedded("freezer").unwrap().at(Some(celsius(-40.0))).is_err());
    assert!(embedded("freezer").unwrap().at(Some(celsius(-20.0))).is_ok());
}

#[test]
fn dangers_are_attached_to_what_brings_them() {
    let has = |id: &str, hazard: Hazard| embedded(id).unwrap().hazards().contains(&hazard);
    for (id, hazard) in [
        ("liquid-nitrogen", Hazard::Cryogen),
        ("liquid-nitrogen", Hazard::Asphyxiation),
        ("dry-ice", Hazard::DryIce),
        ("deep-freezer-80", Hazard::ColdPart),
        ("dry-ice-alcohol", Hazard::DryIce),
        ("dry-ice-alcohol", Hazard::FlammableSolvent),
        ("oil-bath", Hazard::HotOil),
        ("boiling-water", Hazard::Steam),
        ("induction-heater", Hazard::InductionMagnetism),
    ] {
        assert!(has(id, hazard), "{id} lacks {}", hazard.code());
    }
    for medium in embedded_media().unwrap() {
        let is_hot = medium.direction() == Direction::Warm;
        assert_eq!(medium.hazards().contains(&Hazard::HotPart), is_hot, "{}", medium.id());
    }
    assert!(!has("freezer", Hazard::Cryogen));
}

#[test]
fn wet_media_say_what_they_leave() {
    let leaves = |id: &str| embedded(id).unwrap().residue();
    assert_eq!(leaves("oil-bath"), Residue::Oil);
    assert_eq!(leaves("boiling-water"), Residue::Water);
    assert_eq!(leaves("dry-ice-alcohol"), Residue::Solvent);
    assert_eq!(leaves("oven"), Residue::Nothing);
}

#[test]
fn an_unknown_medium_is_answered_with_the_nearest() {
    let said = embedded("liquid nitrogn").unwrap_err().to_string();
    assert!(said.contains("liquid-nitrogen"), "{said}");
}

#[test]
fn every_pair_of_families_has_friction_in_either_order() {
    for one in Family::ALL {
        for other in Family::ALL {
            for lubrication in [Lubrication::Dry, Lubrication::Oiled] {
                let range = friction(one, other, lubrication).unwrap();
                assert_eq!(range, friction(other, one, lubrication).unwrap());
                assert!(range.low > 0.02 && range.high < 0.4 && range.low < range.high, "{one} {other}");
                assert!(range.provenance.source.as_str().len() > 5);
            }
        }
    }
}

/// DIN 7190 as remembered (friction.csv of the mechanics reference): every value lies in the range of its pair.
#[test]
fn friction_ranges_hold_the_values_they_were_made_from() {
    use Lubrication::{Dry, Oiled};
    for (family, lubrication, values) in [
        (Family::Steel, Dry, [0.08, 0.11, 0.15, 0.20]),
        (Family::Steel, Oiled, [0.06, 0.07, 0.08, 0.12]),
        (Family::CastIron, Dry, [0.09, 0.11, 0.12, 0.16]),
        (Family::CastIron, Oiled, [0.05, 0.06, 0.06, 0.10]),
        (Family::LightAlloy, Dry, [0.06, 0.07, 0.10, 0.15]),
        (Family::LightAlloy, Oiled, [0.04, 0.04, 0.05, 0.05]),
        (Family::CopperAlloy, Dry, [0.06, 0.07, 0.17, 0.25]),
    ] {
        let range = friction(Family::Steel, family, lubrication).unwrap();
        assert!(!range.is_fallback, "{family}");
        assert!(values.iter().all(|v| *v >= range.low - 1e-12 && *v <= range.high + 1e-12), "{family} {lubrication:?}");
    }
    assert!(friction(Family::Steel, Family::Titanium, Dry).unwrap().is_fallback);
    assert!(friction(Family::Polymer, Family::Ceramic, Dry).unwrap().is_fallback);
}

#[test]
fn oil_lowers_friction() {
    for family in Family::ALL {
        let dry = friction(Family::Steel, family, Lubrication::Dry).unwrap();
        let oiled = friction(Family::Steel, family, Lubrication::Oiled).unwrap();
        assert!(oiled.low <= dry.low && oiled.high < dry.high, "{family}");
    }
}
