//! Readings of a bore, an uneven boss, and the screws of a cover.

use super::*;

/// A ring of 51.996 mm in a bore that was read across in two directions.
const OVAL: &str = "title = \"Worked case\"\n[bearing]\ndesignation = \"6205\"\nmaterial = $STEEL\nclosure = \"open\"\n\
    outside_limits = { measured = \"51.996 mm\", within = \"0 um\", at = \"20 °C\" }\n[housing]\n\
    bore_limits = { readings = [\"51.960 mm\", \"51.985 mm\"], within = \"0 um\", at = \"20 °C\" }\noutside = \"90 mm\"\n\
    length = \"15 mm\"\nmaterial = $ALLOY\n";

#[test]
fn an_oval_bore_is_as_tight_as_its_least_reading_and_as_loose_as_its_largest() {
    let plan = planned(OVAL);
    // Worked: 51.996 - 51.985 = 11 µm to 51.996 - 51.960 = 36 µm; mean bore 51.9725, 23.5 µm; ovality 25 µm.
    for (case, wanted) in [("loosest", 11.0), ("middle", 23.5), ("tightest", 36.0)] {
        within(figure(&plan, &format!("/fit/interference_um/{case}")), wanted, 1e-6);
    }
    within(number(&plan, "/inspection/forms/0/out_of_round_um"), 25.0, 1e-6);
    says(caution(&plan, "seat-out-of-round").unwrap(), &["out of round by 25 µm", "more than the 13 µm"]);
    assert!(caution(&plan, "few-directions").is_some() && caution(&plan, "cannot-decide").is_none());
    says(&shown(OVAL), &["2 directions at 1 depth", "Out of round by 25 µm"]);
}

#[test]
fn a_boss_that_is_thinner_on_one_side_has_both_results_and_one_between() {
    let uneven =
        exact("6205", 30, 90, "$ALLOY").replace("outside = \"90 mm\"", "wall = \"7 mm to 25 mm\"\nlength = \"15 mm\"");
    let plan = planned(&uneven);
    let pressure = |end: &str| number(&plan, &format!("/uneven_wall/{end}/pressure_mpa/tightest"));
    // The ends are those of bosses with that wall all round: 52 + 14 = 66 mm and 52 + 50 = 102 mm.
    for (end, boss) in [("thin", 66), ("thick", 102)] {
        let even =
            exact("6205", 30, boss, "$ALLOY").replace("material = $ALLOY", "length = \"15 mm\"\nmaterial = $ALLOY");
        within(figure(&planned(&even), "/press/pressure_mpa/tightest"), pressure(end), 1e-4);
    }
    assert!(pressure("thin") < pressure("equivalent") && pressure("equivalent") < pressure("thick"));
    says(caution(&plan, "uneven-wall").unwrap(), &["theory is axisymmetric"]);
    says(&shown(&uneven), &["The theory is axisymmetric", "thin side", "equivalent", "thick side"]);
}

#[test]
fn inch_pounds_and_foot_pounds_on_a_cover_screw_are_echoed_and_held_against_its_size() {
    let with = |torque: &str| {
        exact("6205", 30, 90, "$ALLOY")
            + &format!("[fasteners]\nthread = \"M8\"\ncount = 6\ncircle = \"100 mm\"\ntorque = \"{torque}\"\n")
    };
    let (inch, foot) = (with("120 in.lb"), with("120 ft.lb"));
    within(number(&planned(&inch), "/fasteners/groups/0/torque_nm"), 13.6, 0.05);
    within(number(&planned(&foot), "/fasteners/groups/0/torque_nm"), 163.0, 0.5);
    says(&shown(&inch), &["120 in.lb 13.6 N·m 120 in·lb"]);
    says(&shown(&foot), &["120 ft.lb 163 N·m 120 ft·lb", "factor of 12 away", "were in·lb taken for ft·lb?"]);
    assert!(caution(&planned(&inch), "torque-unit").is_none());
}
