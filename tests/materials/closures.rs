//! Closures of bearings and elastomers.

use seatwise::stock::closure::{Closure, ClosureKind, elastomer, elastomers, precision_hottest, stabilised_to};
use uom::si::thermodynamic_temperature::degree_celsius;

fn coldest(text: &str) -> Option<f64> {
    Closure::parse(text).unwrap().coldest().map(|limit| limit.temperature.get::<degree_celsius>().round())
}

fn hottest(text: &str) -> f64 {
    Closure::parse(text).unwrap().hottest().temperature.get::<degree_celsius>().round()
}

#[test]
fn closures_are_read_as_a_shop_writes_them() {
    use ClosureKind::{ElastomerSeals, Open, Shields};
    for (text, kind, material) in [
        ("open", Open, None),
        ("Open", Open, None),
        ("shields", Shields, None),
        ("metal shields on both sides", Shields, None),
        ("2Z", Shields, None),
        ("elastomer seals", ElastomerSeals, None),
        ("2RS", ElastomerSeals, None),
        ("sealed", ElastomerSeals, None),
        ("NBR contact seals", ElastomerSeals, Some("NBR")),
        ("nitrile rubber seals", ElastomerSeals, Some("NBR")),
        ("non-contact seals, FKM", ElastomerSeals, Some("FKM")),
        ("seals of silicone rubber", ElastomerSeals, Some("VMQ")),
        ("hydrogenated nitrile rubber lip seals", ElastomerSeals, Some("HNBR")),
        ("ethylene propylene", ElastomerSeals, Some("EPDM")),
    ] {
        let closure = Closure::parse(text).unwrap_or_else(|error| panic!("{error}"));
        assert_eq!((closure.kind(), closure.elastomer().map(|e| e.id())), (kind, material), "{text}");
    }
}

#[test]
fn words_that_mean_nothing_or_two_things_are_refused() {
    for (text, word) in [("NBRR seals", "NBR"), ("opne", "opne"), ("felt seals", "felt"), ("nitrle seals", "NBR")] {
        let said = Closure::parse(text).unwrap_err().to_string();
        assert!(said.contains(word) && said.contains("not understood"), "{said}");
    }
    for text in ["", "contact", "open shields", "NBR shields", "NBR FKM seals", "open with seals"] {
        let said = Closure::parse(text).unwrap_err().to_string();
        assert!(said.contains("must say one of"), "{text}: {said}");
    }
}

/// Maintenance practice and seal charts as in the thermal reference notes (media.csv ME27 to ME32, ME39 to ME41).
#[test]
fn limits_follow_from_closure_and_elastomer() {
    assert!((hottest("open") - 120.0).abs() < 0.5 && (hottest("shields") - 80.0).abs() < 0.5);
    assert!((hottest("NBR seals") - 80.0).abs() < 0.5, "grease, not rubber, sets the limit");
    assert_eq!((coldest("open"), coldest("shields")), (None, None));
    assert_eq!(coldest("NBR contact seals"), Some(-30.0));
    assert_eq!(coldest("FKM seals"), Some(-20.0));
    assert_eq!(coldest("VMQ seals"), Some(-60.0));
    assert!((precision_hottest().unwrap().temperature.get::<degree_celsius>() - 66.0).abs() < 1e-9);
    for (class, limit) in [("SN", 120.0), ("S0", 150.0), ("s1", 200.0), ("S2", 250.0), ("S3", 300.0), ("S4", 350.0)] {
        let got = stabilised_to(class).unwrap().temperature.get::<degree_celsius>();
        assert!((got - limit).abs() < 1e-9, "{class}: {got}");
    }
    assert!(stabilised_to("S9").unwrap_err().to_string().contains("S4"));
}

#[test]
fn seals_of_unstated_material_are_taken_as_the_least_tolerant() {
    let unstated = Closure::parse("elastomer seals").unwrap();
    let limit = unstated.coldest().unwrap();
    for known in ["NBR", "HNBR", "FKM", "VMQ", "ACM"] {
        assert!(limit.temperature >= elastomer(known).unwrap().coldest().temperature, "{known}");
    }
    assert!(limit.reason.contains("not stated"), "{}", limit.reason);
}

#[test]
fn no_rubber_survives_liquid_nitrogen() {
    for material in elastomers().unwrap() {
        let survives = material.coldest().temperature.get::<degree_celsius>() < -196.0;
        assert_eq!(survives, material.id() == "PTFE", "{}", material.id());
        assert!(material.hottest().temperature > material.coldest().temperature);
        for limit in [material.coldest(), material.hottest()] {
            assert!(!limit.reason.is_empty() && limit.provenance.source.as_str().len() > 5, "{}", material.id());
        }
    }
}

#[test]
fn an_open_bearing_states_how_long_it_may_stay_hot_and_a_greased_one_has_a_note() {
    let open = Closure::parse("open").unwrap();
    let (exposures, _) = open.exposures().unwrap();
    assert_eq!(exposures.len(), 2);
    assert!(exposures[0].hours > exposures[1].hours && exposures[0].temperature < exposures[1].temperature);
    assert!(open.grease_note().is_none());
    assert!(Closure::parse("shields").unwrap().grease_note().unwrap().0.contains("condenses"));
    assert!(elastomer("rubbr").is_err());
}
