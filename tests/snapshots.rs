//! The text of every example, as a user sees it, and every number behind it. A change here is a change of behaviour.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

#[path = "ledger/mod.rs"]
mod ledger;

use seatwise::quantity::System;
use seatwise::stock::Library;
use seatwise::{job, plan, report};

fn text(job_text: &str, system: Option<System>) -> String {
    let job = job::check(job_text, &Library::default()).unwrap();
    report::text::plan(&plan::plan(&job).unwrap(), system.unwrap_or(job.system))
}

macro_rules! examples {
    ($($name:ident => $file:literal),* $(,)?) => {
        $(#[test]
        fn $name() {
            insta::assert_snapshot!(text(include_str!(concat!("../examples/", $file)), None));
        })*
    };
}

examples! {
    pump_case => "pump-case.toml",
    iron_hub => "iron-hub.toml",
    bronze_bush => "bronze-bush.toml",
    fan_shaft => "fan-shaft.toml",
    inch_gearbox => "inch-gearbox.toml",
    core_plug => "core-plug.toml",
    warm_measured => "warm-measured.toml",
    half_hour_freezer => "half-hour-freezer.toml",
    lined_bore => "lined-bore.toml",
    gear_cover => "gear-cover.toml",
    conveyor_drive => "conveyor-drive.toml",
    trailer_hub => "trailer-hub.toml",
}

#[test]
fn mixer_seal() {
    let job = job::check_seal(include_str!("../examples/mixer-seal.toml")).unwrap();
    let plan = plan::seal::plan_alone(&job).unwrap().unwrap();
    insta::assert_snapshot!(report::text::seal_alone(&plan, job.system, false));
}

#[test]
fn the_pump_case_in_inch_units() {
    insta::assert_snapshot!(text(include_str!("../examples/pump-case.toml"), Some(System::Inch)));
}
