//! Mistakes under [fasteners], [inspection] and in readings: each with its place, the number and the range.

use super::{job_text, refused, says};

fn screws(lines: &str) -> String {
    refused(&job_text(&format!("[fasteners]\n{lines}")))
}

#[test]
fn screws_in_one_place_are_refused_with_their_numbers_and_distance() {
    let said = screws(
        "thread = \"M6\"\npoints = [[\"0 mm\", \"40 mm\"], [\"40 mm\", \"0 mm\"], [\"0 mm\", \"40 mm\"], [\"-40 mm\", \"0 mm\"]]\n",
    );
    says(&said, &["screws 1 and 3 are 0.00 mm apart, but their heads need 10.0 mm", "a point entered twice"]);
    let crowded = screws("thread = \"M8\"\ncount = 24\ncircle = \"60 mm\"\n");
    says(&crowded, &["mm apart, but their heads need 13.0 mm", "circle too small"]);
    let mixed = "[[fasteners.groups]]\nthread = \"M8\"\ncount = 4\ncircle = \"80 mm\"\n\
                 [[fasteners.groups]]\nthread = \"M6\"\npoints = [[\"0 mm\", \"42 mm\"]]\n";
    says(&refused(&job_text(mixed)), &["screws 1 and 5 are 2.00 mm apart, but their heads need 11.5 mm"]);
}

#[test]
fn each_mistake_is_said_in_shop_words() {
    let six = "count = 6\ncircle = \"90 mm\"\n";
    let cases: [(&str, &[&str]); 14] = [
        ("thread = \"M6\"\n", &["`fasteners.circle` is missing", "points ="]),
        ("count = 6\ncircle = \"90 mm\"\n", &["`fasteners.thread` is missing", "\"M6\" or \"1/4-20 UNC\""]),
        ("thread = \"M6\"\ncircle = \"90 mm\"\n", &["`fasteners.count` is missing"]),
        ("thread = \"M6\"\ncount = 0\ncircle = \"90 mm\"\n", &["cannot be 0", "whole number from 1 to 200"]),
        ("thread = \"M6\"\ncount = 6.5\ncircle = \"90 mm\"\n", &["`fasteners.count` is a bare number", "whole number"]),
        (
            "thread = \"M6\"\npoints = [[\"1 mm\"]]\n",
            &["screw 1 of `fasteners.points` has 1 coordinates", "[across, up]"],
        ),
        ("thread = \"M6\"\npoints = [[1, 2]]\n", &["must hold texts", "[across, up]"]),
        ("thread = \"M6\"\npoints = [[\"1\", \"2 mm\"]]\n", &["has no unit"]),
        ("thread = \"M6\"\ncount = 3\npoints = [[\"0 mm\", \"40 mm\"]]\n", &["is 3 but 1 points are given"]),
        ("thread = \"M6\"\ntorque = \"10\"\n", &["has no unit", "N·m, in·lb, ft·lb or kgf·m"]),
        ("thread = \"M6\"\nturned = \"half\"\ncount = 6\ncircle = \"90 mm\"\n", &["cannot be \"half\"", "45°"]),
        ("thread = \"M6\"\nstages = [\"50 %\", \"30 %\", \"100 %\"]\n", &["must rise from 5 % or more to 100 %"]),
        ("thread = \"M6\"\nbolts = 6\n", &["[fasteners] has no `bolts`", "[fasteners] knows: thread, strength"]),
        (
            "thread = \"M6\"\nhead = \"6 mm\"\ncount = 6\ncircle = \"90 mm\"\n",
            &["a head of 6.00 mm over a hole of 6.60 mm"],
        ),
    ];
    for (lines, words) in cases {
        says(&screws(lines), words);
    }
    let ranges: [(&str, &[&str]); 5] = [
        ("torque = \"20 kN·m\"\n", &["0.05 N·m to 10000 N·m"]),
        ("engagement = \"0.2 mm\"\n", &["1 mm to 500 mm"]),
        ("torque_within = \"80 %\"\n", &["0 % to 50 %"]),
        ("into_tensile = \"5 MPa\"\n", &["10 MPa to 3000 MPa"]),
        ("friction = \"0.9\"\n", &["from 0.01 to 0.5"]),
    ];
    for (line, words) in ranges {
        says(&screws(&format!("thread = \"M6\"\n{six}{line}")), words);
    }
    says(&screws(&format!("thread = \"M48\"\n{six}")), &["no strength class is known for M48", "state torque"]);
    says(
        &screws(&format!("thread = \"M20\"\nengagement = \"2 mm\"\n{}", six.replace("90", "200"))),
        &["less than one pitch of M20"],
    );
}

#[test]
fn groups_that_are_none_and_keys_beside_them_are_refused() {
    says(&screws("groups = \"M6\"\n"), &["must be a list of tables", "[[fasteners.groups]]"]);
    let beside =
        "[fasteners]\ncircle = \"90 mm\"\n[[fasteners.groups]]\nthread = \"M6\"\ncount = 4\ncircle = \"90 mm\"\n";
    says(&refused(&job_text(beside)), &["stands beside groups"]);
}

#[test]
fn readings_are_refused_with_their_row() {
    let with = |readings: &str| {
        refused(&job_text("").replace("\"N7\"", &format!("{{ readings = {readings}, within = \"2 um\" }}")))
    };
    says(&with("[[\"51.96 mm\"]]"), &["there is 1 reading; give two or more"]);
    says(&with("[[\"51.96 mm\", \"51.97 mm\"], [\"51.96 mm\"]]"), &["row 2 has 1 readings but the first has 2"]);
    says(&with("[[\"51.96 mm\", \"2.046 mm\"]]"), &["2.046 mm", "in inches"]);
    says(&with("[51.96, 51.97]"), &["must hold texts", "one row a depth"]);
    says(&with("[[\"51.96 mm\"], \"51.97 mm\"]"), &["holds text among its rows"]);
    let both = job_text("")
        .replace("\"N7\"", "{ readings = [\"51.96 mm\", \"51.97 mm\"], measured = \"51.96 mm\", within = \"2 um\" }");
    says(&refused(&both), &["both `measured` and `readings` are given"]);
}

#[test]
fn findings_on_parts_that_the_job_does_not_have_are_refused() {
    let said = refused(&job_text("[inspection]\nrun_out = \"10 um\"\nlip_track = \"Ra 0.4 um\"\nfeel = \"smoth\"\n"));
    says(&said, &["`inspection.run_out` is of a [shaft]", "`inspection.lip_track` is of a [seal]"]);
    says(&refused(&job_text("[inspection]\nfeel = \"smoth\"\n")), &["did you mean \"smooth\"?", "\"gritty\""]);
    let wall = job_text("").replace("outside = \"80 mm\"", "wall = \"25 mm to 7 mm\"");
    says(&refused(&wall), &["goes from 25 mm to 7 mm; the thin side must come first"]);
    let unit = job_text("").replace("outside = \"80 mm\"", "wall = \"7 to 25 mm\"");
    says(&refused(&unit), &["`7` has no unit"]);
}

#[test]
fn mistakes_of_seat_and_screws_come_in_one_run() {
    let text = job_text("[fasteners]\nthread = \"M9\"\ncircle = \"60 mm\"\ntorque = \"120\"\n").replace("N7", "N77");
    let said = refused(&text);
    says(&said, &["N77", "no thread `M9`", "`fasteners.count` is missing", "`fasteners.torque`"]);
    says(&refused(&text.replace("6205", "none")), &["`fasteners.count` is missing"]);
}
