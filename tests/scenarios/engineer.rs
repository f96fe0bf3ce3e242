//! What the one who designs or approves the seat must hear.

use super::*;

/// A 52 mm ring of the ordinary class in N7, in the light alloy of the worked cases.
fn n7() -> String {
    exact("6205", 30, 90, "$ALLOY").replace("outside_limits = \"0/0 um\"\n", "").replace("\"-30/-30 um\"", "\"N7\"")
}

#[test]
fn n7_on_52_mm_runs_from_4_um_loose_to_39_tight() {
    let plan = planned(&n7());
    for (case, wanted) in [("tightest", 39.0), ("middle", 17.5), ("loosest", -4.0)] {
        within(figure(&plan, &format!("/fit/interference_um/{case}")), wanted, 1e-6);
    }
    says(caution(&plan, "loose-in-part").unwrap(), &["up to 4 µm"]);
}

#[test]
fn the_same_fit_in_a_hot_alloy_case_is_loose_in_every_case() {
    let plan = planned(&(n7() + "[service]\ncoldest = \"90 °C\"\nhottest = \"110 °C\"\n"));
    // Worked, rounded to whole micrometres: -44 to -1 at 90 °C, -55 to -12 at 110 °C.
    for (state, loosest, tightest) in [(0, -44.0, -1.0), (1, -55.0, -12.0)] {
        within(figure(&plan, &format!("/service/{state}/interference_um/tightest")), tightest, 0.6);
        within(figure(&plan, &format!("/service/{state}/interference_um/loosest")), loosest, 0.6);
    }
    says(
        caution(&plan, "loose-in-service").unwrap(),
        &["every case is loose", "tighter class", "hold the ring by other means"],
    );
    // P7, 12 µm tighter, is still loose in part at 90 °C, and the plan says so too.
    let p7 = planned(&(n7().replace("\"N7\"", "\"P7\"") + "[service]\nhottest = \"90 °C\"\n"));
    says(caution(&p7, "loose-in-service").unwrap(), &["part of the band is loose"]);
}

#[test]
fn limits_hold_over_their_range_of_sizes_and_80_mm_is_in_the_lower_one() {
    let limits = |size: f64, class: &str| {
        let class = seatwise::fit::ToleranceClass::parse(class).unwrap();
        let found = seatwise::fit::limits_of_size(seatwise::quantity::Nanometres::from_mm(size), class).unwrap();
        (found.deviations.lower.um(), found.deviations.upper.um())
    };
    for (size, class, lower, upper) in [
        (52.0, "P7", -51.0, -21.0),
        (62.0, "P7", -51.0, -21.0),
        (80.0, "P7", -51.0, -21.0),
        (80.0, "N7", -39.0, -9.0),
        (80.001, "N7", -45.0, -10.0),
        (90.0, "N7", -45.0, -10.0),
    ] {
        let (got_lower, got_upper) = limits(size, class);
        within(got_lower, lower, 1e-9);
        within(got_upper, upper, 1e-9);
    }
}

#[test]
fn an_own_material_without_cold_values_is_never_used_in_nitrogen() {
    let text = job_text(&exact("6205", 30, 90, "$ALLOY")).replace("coldest = \"-80 °C\", ", "");
    let said = refused(&(text + "[chill]\npart = \"bearing\"\nmedium = \"LN2\"\nhold = \"20 min\"\n"));
    says(&said, &["thermal expansion of case steel is known from -40.0 °C", "not at -195.8 °C", "milder medium"]);
}

#[test]
fn an_own_material_without_a_source_is_marked() {
    let without = job_text(&n7()).replace(", source = \"worked case\"", "");
    let sources = planned(&without)["sources"].to_string();
    says(&sources, &["no source given"]);
    let with = planned(&n7())["sources"].to_string();
    assert!(!with.contains("no source given") && with.contains("worked case"));
}
