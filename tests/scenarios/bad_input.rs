//! What must be asked or refused, and in which words.

use super::*;

const GOOD: &str = r#"
    [bearing]
    designation = "6205"
    closure = "open"
    outside_limits = { measured = "51.996 mm", within = "2 um" }
    [housing]
    bore_limits = "N7"
    outside = "90 mm"
    material = "cast-aluminium"
"#;

fn bore(reading: &str) -> String {
    GOOD.replace("\"N7\"", &format!("{{ measured = \"{reading}\", within = \"2 um\" }}"))
}

fn boss(outside: &str) -> String {
    GOOD.replace("\"90 mm\"", &format!("\"{outside}\""))
}

#[test]
fn a_bore_far_larger_than_its_ring_is_asked_about_not_planned() {
    says(&refused(&bore("52.3 mm")), &["clearance of 308 um", "exchanged"]);
    let swapped = bore("51.996 mm").replacen("51.996", "52.3", 1);
    says(&refused(&swapped), &["interference", "exchange bore and ring"]);
}

#[test]
fn a_bore_typed_without_its_inch_is_found_and_inch_is_offered() {
    says(&refused(&bore("2.046 mm")), &["2.046 mm", "52.000 mm", "in inches"]);
    says(&refused(&bore("2.046")), &["no unit", "in"]);
    assert!(job::check(&bore("2.046 in"), &Library::default()).is_ok());
}

#[test]
fn one_per_cent_of_interference_is_refused_with_what_steel_bears() {
    says(&refused(&bore("51.5 mm")), &["500 um", "0.96 %", "yields at 0.1 to 0.3 %"]);
    // Below that line the elastic limit itself decides: 150 µm passes what a thin cast wall bears.
    let thin = bore("51.85 mm").replace("\"90 mm\"", "\"58 mm\"");
    let plan = planned(&thin);
    assert_eq!(plan["verdict"], "do not");
    says(caution(&plan, "elastic-limit-passed").unwrap(), &["passes its strength", "stays elastic up to"]);
}

#[test]
fn below_absolute_zero_is_refused_and_minus_300_fahrenheit_is_not() {
    let cold = |at: &str| GOOD.to_owned() + "[service]\ncoldest = \"" + at + "\"\n";
    says(&refused(&cold("-300 °C")), &["-300 °C", "absolute zero", "-273.15 °C"]);
    within(figure(&planned(&cold("-300 °F")), "/service/0/inner_c"), -184.4, 0.1);
    // As a nitrogen bath -300 °F is 11 K too warm to be one, and the refusal says what it can be.
    let bath =
        GOOD.to_owned() + "[chill]\npart = \"bearing\"\nmedium = \"LN2\"\nhold = \"1 h\"\ntemperature = \"-300 °F\"\n";
    says(&refused(&bath), &["-184.4 °C", "-198.0 to -195.0 °C"]);
}

#[test]
fn a_boss_no_larger_than_its_bore_is_refused_and_a_missing_one_is_flagged() {
    says(&refused(&boss("52 mm")), &["52.000 mm outside around a bore of 52.000 mm"]);
    says(&refused(&boss("50 mm")), &["50.000 mm outside", "must lie from 53.040"]);
    let plan = planned(&GOOD.replace("outside = \"90 mm\"\n", ""));
    let assumed = plan["assumptions"].as_array().unwrap();
    let boss = assumed.iter().find(|assumption| assumption["what"] == "housing.outside").unwrap();
    assert_eq!(boss["value"], "78.000 mm");
    says(boss["why"].as_str().unwrap(), &["thick boss", "state outside or wall"]);
}

#[test]
fn an_unknown_suffix_is_listed_and_decides_nothing() {
    let plan = planned(&GOOD.replace("\"6205\"", "\"6205-XYZ9\"").replace("    closure = \"open\"\n", ""));
    within(figure(&plan, "/nominal_mm"), 52.0, 1e-9);
    let assumed = plan["assumptions"].as_array().unwrap();
    let what = |name: &str| assumed.iter().find(|assumption| assumption["what"] == name).unwrap();
    says(what("suffix XYZ9")["why"].as_str().unwrap(), &["not interpreted", "state closure"]);
    // It stands on the first page, and with what to do among the cautions.
    says(caution(&plan, "suffix-not-read").unwrap(), &["XYZ9", "nothing was taken from it", "state it in the job"]);
    let first = shown(&GOOD.replace("\"6205\"", "\"6205-XYZ9\""));
    says(first.split("What to do").next().unwrap(), &["Of the designation, XYZ9 was not read"]);
    assert!(caution(&planned(GOOD), "suffix-not-read").is_none());
    // The closure is not guessed from it: the most sensitive is taken, and the plan says that it was.
    says(what("bearing.closure")["why"].as_str().unwrap(), &["not stated", "most sensitive"]);
}

#[test]
fn the_height_of_the_shop_is_echoed_in_metres_and_feet() {
    let high = |height: &str| shown(&(GOOD.to_owned() + "[bench]\nelevation = \"" + height + "\"\n"));
    says(&high("3000 ft"), &["bench.elevation 3000 ft 914 m 3000 ft"]);
    says(&high("1600 m"), &["bench.elevation 1600 m 1600 m 5249 ft"]);
}

#[test]
fn a_humidity_of_one_half_is_asked_about() {
    let humid = |share: &str| GOOD.to_owned() + "[bench]\nhumidity = \"" + share + "\"\n";
    says(&refused(&humid("0.5")), &["0.5", "is 50 % meant?"]);
    assert!(job::check(&humid("50 %"), &Library::default()).is_ok());
}

#[test]
fn an_oven_at_200_degrees_stops_at_the_cap_of_the_bearing() {
    let plan = planned(&(GOOD.to_owned() + &oven("200 °C", LONG)));
    assert_eq!(plan["verdict"], "do not");
    says(caution(&plan, "too-hot").unwrap(), &["200 °C", "120 °C"]);
}

#[test]
fn nonsense_in_a_field_names_the_field_and_spares_the_rest() {
    for (given, wanted) in [
        ("", "empty"),
        ("abc", "does not begin with a number"),
        ("nan mm", "not a finite number"),
        ("1e308 mm", "e308"),
        ("-52 mm", "negative"),
    ] {
        let found = job::check(&boss(given), &Library::default()).unwrap_err();
        assert_eq!(found.iter().count(), 1, "{given}: {found}");
        says(&found.to_string(), &["housing.outside", wanted]);
    }
}

#[test]
fn what_stops_a_plan_says_what_to_do() {
    use plan::PlanError;
    use seatwise::thermal::ThermalError;
    let beyond = || ThermalError::NotReachable { target_k: 200.0, start_k: 293.0, at_most_k: 250.0 };
    for (error, help) in [
        (PlanError::Untreated, "add its [chill] or [warm]"),
        (PlanError::Thermal(beyond()), "check the temperatures of the job"),
        (PlanError::Temperature { piece: "shaft", error: beyond() }, "change the medium, its temperature or the hold"),
    ] {
        assert!(error.help().contains(help) && !error.to_string().is_empty(), "{error}: {}", error.help());
    }
}
