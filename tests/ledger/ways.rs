//! Lists, charts and scatters: the results of many plans.

use super::lines::lines;
use super::{checked, document, planned};
use seatwise::job::Job;
use seatwise::plan::options::{self, Aim, WaysMap};
use seatwise::plan::scatter::{OneByOne, Request, scatter};
use seatwise::plan::{Method, chart};
use seatwise::quantity::{Force, Length, Ratio, ThermodynamicTemperature};
use seatwise::report;
use seatwise::stock::Library;
use seatwise::stock::medium::Medium;
use std::fmt::Write as _;
use uom::si::force::kilonewton;
use uom::si::length::micrometer;
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::degree_celsius;

fn media(names: &[&str]) -> Vec<Medium> {
    names.iter().map(|name| Library::default().medium(name).unwrap()).collect()
}

/// The ways of a job with these media, each with all that its document says.
fn list(job: &Job, names: &[&str], aim: Aim) -> String {
    let ways = options::options_for(job, &media(names), aim, &OneByOne).unwrap();
    let document = lines(&serde_json::from_str(&report::options::json(job, &ways).unwrap()).unwrap());
    let trials: Vec<String> = ways[0].ways.iter().map(|way| way.trials.to_string()).collect();
    document + &map(&ways[0].map) + &format!("plans made for each way: {}\n", trials.join(" "))
}

/// The map of the ways, a fifth of its points: °C and µm.
fn map(map: &WaysMap) -> String {
    let c = |at: &ThermodynamicTemperature| format!("{:.2}", at.get::<degree_celsius>());
    let um = |it: &Option<Length>| it.map_or("none".to_owned(), |it| format!("{:.3}", it.get::<micrometer>()));
    let list = |of: &[ThermodynamicTemperature]| of.iter().step_by(10).map(c).collect::<Vec<_>>().join(" ");
    let mut out = format!("map inner {}\nmap outer {}\n", list(&map.inner), list(&map.outer));
    for row in map.clearance.iter().step_by(10) {
        let row: Vec<String> = row.iter().step_by(10).map(um).collect();
        let _ = writeln!(out, "map clearance {}", row.join(" "));
    }
    let ends = [map.coldest, map.hottest].map(|end| end.as_ref().map(c));
    let _ = writeln!(out, "map limits {ends:?}, placing {}", um(&Some(map.placing)));
    for mark in &map.marks {
        let _ = writeln!(
            out,
            "mark {} at {} {}, {} {}",
            mark.rank,
            c(&mark.inner),
            c(&mark.outer),
            mark.drops_in,
            mark.comfortable
        );
    }
    out
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
    let mut out = lines(&document(&plan)["scatter"]);
    for seat in &plan.scatter.as_ref().unwrap().seats {
        let bars: Vec<String> = seat.histogram.iter().map(|bar| bar.count.to_string()).collect();
        let ends = seat.histogram.first().zip(seat.histogram.last()).unwrap();
        let um = |it: Length| it.get::<micrometer>();
        let _ = writeln!(out, "bars {:.3} to {:.3}: {}", um(ends.0.from), um(ends.1.to), bars.join(" "));
    }
    out
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
fn parts_drawn_for_two_readings() {
    insta::assert_snapshot!(drawn(include_str!("../../examples/warm-measured.toml"), 1.0));
}

#[test]
fn parts_drawn_onto_a_hollow_shaft() {
    insta::assert_snapshot!(drawn(include_str!("jobs/hollow-shaft.toml"), 3.0));
}

#[test]
fn parts_drawn_where_everything_scatters() {
    insta::assert_snapshot!(drawn(include_str!("jobs/every-scatter.toml"), 5.0));
}

#[test]
fn parts_drawn_from_a_bag() {
    insta::assert_snapshot!(drawn(include_str!("jobs/wrapped.toml"), 3.0));
}

/// The first tables are not good enough for spreads as wide as these.
#[test]
fn parts_drawn_with_wide_spreads() {
    insta::assert_snapshot!(drawn(include_str!("jobs/wide-spreads.toml"), 3.0));
}

#[test]
fn ways_with_every_medium() {
    let job = checked(include_str!("jobs/hold-it.toml"));
    let all = ["chest-freezer", "dry-ice-alcohol", "liquid-nitrogen", "oil-bath", "hot-air-gun"];
    insta::assert_snapshot!(list(&job, &all, Aim::TightestCase));
}

#[test]
fn parts_drawn_for_the_pump_case() {
    insta::assert_snapshot!(drawn(include_str!("../../examples/pump-case.toml"), 1.0));
}
