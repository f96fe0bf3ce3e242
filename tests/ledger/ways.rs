//! Lists, charts and scatters: the results of many plans.

use super::lines::lines;
use super::{checked, document, planned};
use seatwise::job::Job;
use seatwise::plan::options::{self, Aim};
use seatwise::plan::scatter::{OneByOne, Request, scatter};
use seatwise::plan::{Method, chart};
use seatwise::quantity::{Force, Ratio};
use seatwise::report;
use seatwise::stock::Library;
use seatwise::stock::medium::Medium;
use uom::si::force::kilonewton;
use uom::si::ratio::percent;

fn media(names: &[&str]) -> Vec<Medium> {
    names.iter().map(|name| Library::default().medium(name).unwrap()).collect()
}

/// The ways of a job with these media, each with all that its document says.
fn list(job: &Job, names: &[&str], aim: Aim) -> String {
    let ways = options::options_for(job, &media(names), aim, &OneByOne).unwrap();
    lines(&serde_json::from_str(&report::options::json(job, &ways).unwrap()).unwrap())
}

#[test]
fn ways_of_a_tight_bush() {
    let job = checked(include_str!("jobs/boiling-water.toml"));
    insta::assert_snapshot!(list(&job, &["domestic-freezer", "dry-ice", "oven", "boiling-water"], Aim::TightestCase));
}

#[test]
fn ways_onto_a_shaft() {
    let job = checked(include_str!("jobs/hollow-shaft.toml"));
    insta::assert_snapshot!(list(&job, &["hot-plate", "induction-heater", "deep-freezer-80"], Aim::TightestCase));
}

#[test]
fn ways_by_share() {
    let job = checked(include_str!("../../examples/iron-hub.toml"));
    let aim = Aim::Share { share: Ratio::new::<percent>(95.0), seed: 3 };
    insta::assert_snapshot!(list(&job, &["domestic-freezer", "oven"], aim));
}

#[test]
fn chart_of_two_seats() {
    let job = checked(include_str!("jobs/two-seats.toml"));
    let rows: Vec<_> = chart::usual_rows(&job).into_iter().step_by(2).collect();
    let charts = chart::charts(&job, &rows, &media(&["domestic-freezer", "dry-ice"])).unwrap();
    insta::assert_snapshot!(report::chart::csv(&charts).unwrap());
}

/// Three hundred parts of a job.
fn drawn(text: &str, force_kn: f64) -> String {
    let job = checked(text);
    let mut plan = planned(&job, Method::Plane);
    let request =
        Request { draws: 300, seed: 11, force_limit: Some(Force::new::<kilonewton>(force_kn)), method: Method::Plane };
    plan.scatter = Some(scatter(&job, &request, &OneByOne).unwrap());
    lines(&document(&plan)["scatter"])
}

#[test]
fn parts_drawn_for_two_seats() {
    insta::assert_snapshot!(drawn(include_str!("jobs/two-seats.toml"), 4.0));
}

#[test]
fn parts_drawn_into_nitrogen() {
    insta::assert_snapshot!(drawn(include_str!("jobs/nitrogen-bush.toml"), 2.0));
}

#[test]
fn parts_drawn_for_the_pump_case() {
    insta::assert_snapshot!(drawn(include_str!("../../examples/pump-case.toml"), 1.0));
}
