//! Every number of a result is kept, so that a change of any shows in a review.
//!
//! The pages in `tests/snapshots` round what they print; here stand the documents that other programs read, to five significant
//! figures, of the examples and of jobs that take the ways the examples do not (`jobs/`). What is kept is what came out once and
//! was read then: it tells that a number moved, not that it is right. That it is right, the other tests say.

mod beside;
mod lines;
mod ways;

use lines::{lines, without};
use seatwise::job::{self, Job};
use seatwise::plan::{self, Method, Plan};
use seatwise::report;
use seatwise::stock::Library;
use serde_json::{Value, json};

/// What pages in `tests/snapshots` show of the same jobs.
const ON_PAGES: [&str; 7] = ["cautions", "assumptions", "sources", "steps", "basis", "source", "note"];

fn checked(text: &str) -> Job {
    job::check(text, &Library::default()).unwrap_or_else(|error| panic!("{error}\n{text}"))
}

fn planned(job: &Job, method: Method) -> Plan<'_> {
    plan::plan_by(job, method).unwrap_or_else(|error| panic!("{error}"))
}

fn document(plan: &Plan<'_>) -> Value {
    serde_json::from_str(&report::json::plan(plan).unwrap()).unwrap()
}

macro_rules! each {
    ($kept:path, $folder:literal: $($name:ident => $file:literal),* $(,)?) => {
        $(#[test]
        fn $name() {
            insta::assert_snapshot!($kept(include_str!(concat!($folder, $file, ".toml"))));
        })*
    };
}
use each;

/// The numbers of an example's plan.
fn example(text: &str) -> String {
    lines(&without(&document(&planned(&checked(text), Method::Auto)), &ON_PAGES))
}

/// Everything of a plan that no page shows.
fn whole(text: &str) -> String {
    lines(&without(&document(&planned(&checked(text), Method::Auto)), &["assumptions", "sources"]))
}

/// The same by the plane formula, whose bounds on force and pressure the section replaces where it can.
fn plane(text: &str) -> String {
    let plan = document(&planned(&checked(text), Method::Plane));
    let kept: Vec<String> =
        plan["seats"].as_array().unwrap().iter().map(|seat| lines(&without(seat, &ON_PAGES))).collect();
    kept.join("\n")
}

each! { example, "../../examples/":
    example_pump_case => "pump-case",
    example_iron_hub => "iron-hub",
    example_bronze_bush => "bronze-bush",
    example_fan_shaft => "fan-shaft",
    example_inch_gearbox => "inch-gearbox",
    example_core_plug => "core-plug",
    example_warm_measured => "warm-measured",
    example_half_hour_freezer => "half-hour-freezer",
    example_lined_bore => "lined-bore",
    example_gear_cover => "gear-cover",
    example_conveyor_drive => "conveyor-drive",
    example_trailer_hub => "trailer-hub",
}

each! { whole, "jobs/":
    hollow_shaft => "hollow-shaft",
    two_seats => "two-seats",
    nitrogen_bush => "nitrogen-bush",
    screw_jig => "screw-jig",
    roller_ram => "roller-ram",
    loose_fit => "loose-fit",
    cannot_decide => "cannot-decide",
    old_bearing => "old-bearing",
    stack_never => "stack-never",
    cover_screws => "cover-screws",
    passed_strength => "passed-strength",
    wrapped => "wrapped",
    inch_plug => "inch-plug",
    plastic_bush => "plastic-bush",
    too_hot => "too-hot",
    boiling_water => "boiling-water",
    thick_quench => "thick-quench",
    seal_beside => "seal-beside",
    liner_free => "liner-free",
    liner_overload => "liner-overload",
    torques => "torques",
    thin_boss => "thin-boss",
    nbr_in_dry_ice => "nbr-in-dry-ice",
    chill_in_vain => "chill-in-vain",
    hold_it => "hold-it",
    tight_groove => "tight-groove",
    quenched_iron => "quenched-iron",
    loose_shaft => "loose-shaft",
    raceway => "raceway",
    blind_plug => "blind-plug",
    order => "order",
    set_bush => "set-bush",
}

/// A seat whose temperatures are followed in its section, whether that is needed or not.
fn in_section(text: &str) -> String {
    let plan = document(&planned(&checked(text), Method::Section));
    lines(&without(&plan["seats"][0], &ON_PAGES))
}

each! { in_section, "jobs/":
    section_of_an_oil_hub => "oil-hub",
    section_of_a_polyamide_bush => "plastic-bush",
    section_of_a_quenched_bush => "quenched-bush",
}

/// Where each number of a plan comes from, and what was assumed.
fn grounds(text: &str) -> String {
    let plan = document(&planned(&checked(text), Method::Plane));
    lines(&json!({ "assumptions": plan["assumptions"], "sources": plan["sources"] }))
}

each! { grounds, "jobs/":
    grounds_of_two_seats => "two-seats",
    grounds_of_a_bush_in_nitrogen => "nitrogen-bush",
    grounds_of_an_old_bearing => "old-bearing",
    grounds_of_a_known_raceway => "raceway",
    grounds_of_a_blind_plug => "blind-plug",
}

each! { plane, "jobs/":
    plane_screw_jig => "screw-jig",
    plane_two_seats => "two-seats",
}

#[test]
fn mixer_seal_alone() {
    let job = job::check_seal(include_str!("../../examples/mixer-seal.toml")).unwrap();
    let plan = plan::seal::plan_alone(&job).unwrap().unwrap();
    let document = serde_json::from_str(&report::json::seal_alone(&plan).unwrap()).unwrap();
    insta::assert_snapshot!(lines(&without(&document, &ON_PAGES)));
}
