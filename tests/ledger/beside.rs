//! What stands beside the document of a plan: curves, outlines, the work of the card, sections, workings, exercises, readings.

use super::lines::{lines, rounded, without};
use super::{checked, each, planned};
use seatwise::plan::clearance_history::{ClearancePoint, Moment};
use seatwise::plan::drawing::{self, SectionCase, SectionRequest, draw};
use seatwise::plan::exercise::{ExerciseLevel, exercise};
use seatwise::plan::{self, Method, Plan, Sentence, Word};
use seatwise::quantity::{Length, System};
use seatwise::report::exercise::{Paper, Solution};
use seatwise::stock::Library;
use seatwise::{job, report};
use std::fmt::Write as _;
use uom::si::length::micrometer;

/// Of a curve, this many points are kept, evenly from the first to the last.
const POINTS: usize = 9;

fn thinned<T>(points: &[T]) -> impl Iterator<Item = &T> {
    let last = points.len().saturating_sub(1);
    let count = POINTS.min(points.len());
    (0..count).map(move |i| &points[i * last / count.saturating_sub(1).max(1)])
}

/// The curves, outlines, and the work of a plan: seconds, micrometres, newtons, millimetres.
fn held(text: &str) -> String {
    let job = checked(text);
    let plan = planned(&job, Method::Plane);
    let mut out = String::new();
    for seat in &plan.seats {
        let _ = writeln!(out, "{} seat: {}\nclearance in um after s", seat.seat.name(), said(&plan.answer(seat)));
        curve(&seat.history.points, &seat.history.moments, &mut out);
        let _ = writeln!(out, "in the seat");
        curve(&seat.history.in_seat.points, &seat.history.in_seat.moments, &mut out);
        let _ = writeln!(out, "force in N after s");
        for (time, force) in thinned(&seat.force_course.after) {
            let _ = writeln!(out, "{:.5e}: {:.5e}", time.value, force.value);
        }
    }
    outlines(&plan, &mut out);
    let work = plan.work();
    let _ = writeln!(out, "before {:?}, notes {:?}", work.before, work.notes);
    for stage in work.stages {
        let _ = writeln!(out, "{}", stage.title);
        for step in stage.steps {
            let _ = writeln!(
                out,
                "  {:?}, found {:?}, cautions {:?}: {}",
                step.kind,
                step.found,
                step.cautions,
                said(&step.text)
            );
            step.hold_point.iter().for_each(|hold| out.push_str(&format!("    hold: {}\n", said(hold))));
            for blank in &step.blanks {
                let _ = writeln!(out, "    {}: {}", blank.what, blank.wanted.as_ref().map(said).unwrap_or_default());
            }
        }
    }
    rounded(&out)
}

/// A sentence with its quantities in SI, and the way in which each may be rounded.
fn said(sentence: &Sentence) -> String {
    let word = |word: &Word| match word {
        Word::Text(text) => text.to_string(),
        Word::Value(value, toward) => format!("<{value:?} {toward:?}>"),
    };
    sentence.words.iter().map(word).collect()
}

fn curve(points: &[ClearancePoint], moments: &[Moment], out: &mut String) {
    let _ = writeln!(out, "{} points", points.len());
    for ClearancePoint { time, clearance } in thinned(points) {
        let [a, b, c] = [clearance.tightest, clearance.middle, clearance.loosest].map(|it| it.value * 1e6);
        let _ = writeln!(out, "{:.5e}: {a:.5e} {b:.5e} {c:.5e}", time.value);
    }
    for moment in moments {
        let _ = writeln!(out, "{:?} {:.5e}: {:.5e}", moment.kind, moment.time.value, moment.clearance.value * 1e6);
    }
}

fn outlines(plan: &Plan<'_>, out: &mut String) {
    let arrangement = plan.arrangement();
    for part in &arrangement.parts {
        let corners: Vec<String> =
            part.outline.iter().map(|at| format!("{:.3}/{:.3}", at.along.value * 1e3, at.radius.value * 1e3)).collect();
        let _ = writeln!(out, "{:?} {}: along/radius {}", part.kind, part.name, corners.join(" "));
    }
    for fit in &arrangement.fits {
        let (from, to) = fit.along;
        let [nominal, from, to] = [fit.nominal, from, to].map(|it| it.value * 1e3);
        let _ = writeln!(
            out,
            "{} {nominal:.3}, {from:.3} to {to:.3}, {:.4} um",
            fit.seat.name(),
            fit.clearance.value * 1e6
        );
    }
}

each! { held, "jobs/":
    held_boiling_water => "boiling-water",
    held_loose_shaft => "loose-shaft",
    held_raceway => "raceway",
    held_blind_plug => "blind-plug",
    held_order => "order",
    held_set_bush => "set-bush",
    held_every_scatter => "every-scatter",
    held_cannot_decide => "cannot-decide",
    held_chill_in_vain => "chill-in-vain",
    held_cover_screws => "cover-screws",
    held_hold_it => "hold-it",
    held_hollow_shaft => "hollow-shaft",
    held_inch_plug => "inch-plug",
    held_liner_free => "liner-free",
    held_liner_overload => "liner-overload",
    held_loose_fit => "loose-fit",
    held_nbr_in_dry_ice => "nbr-in-dry-ice",
    held_nitrogen_bush => "nitrogen-bush",
    held_oil_hub => "oil-hub",
    held_old_bearing => "old-bearing",
    held_passed_strength => "passed-strength",
    held_plastic_bush => "plastic-bush",
    held_quenched_iron => "quenched-iron",
    held_roller_ram => "roller-ram",
    held_screw_jig => "screw-jig",
    held_seal_beside => "seal-beside",
    held_stack_never => "stack-never",
    held_thick_quench => "thick-quench",
    held_thin_boss => "thin-boss",
    held_tight_groove => "tight-groove",
    held_too_hot => "too-hot",
    held_torques => "torques",
    held_two_seats => "two-seats",
    held_wrapped => "wrapped",
}

each! { held, "../../examples/":
    held_example_pump_case => "pump-case",
    held_example_iron_hub => "iron-hub",
    held_example_bronze_bush => "bronze-bush",
    held_example_fan_shaft => "fan-shaft",
    held_example_core_plug => "core-plug",
    held_example_trailer_hub => "trailer-hub",
    held_example_conveyor_drive => "conveyor-drive",
    held_example_gear_cover => "gear-cover",
    held_example_lined_bore => "lined-bore",
}

/// The section of a job at a moment that it has.
fn section(text: &str, moment: drawing::Moment, case: SectionCase) -> String {
    let job = checked(text);
    let seats = draw(&job, &SectionRequest { seat: None, moment, case }).unwrap();
    let mut out = lines(&serde_json::from_str(&report::section::json(&job, &seats).unwrap()).unwrap());
    // What a deck is made from: radius in the mesh, room beside it, and radius before fitting, of every fortieth node.
    for seat in &seats {
        for (k, part) in seat.field.parts.iter().enumerate() {
            for node in part.nodes.iter().step_by(40) {
                // Zero, not minus zero, for what is a rounding.
                let um = |length: Length| (length.get::<micrometer>() * 1e4).round() / 1e4 + 0.0;
                let (over, more) = (seat.oversize(k, node), seat.unfitted_radius(k, node) - node.place.radius);
                let _ = writeln!(out, "node of {k} at {}: {} {}", um(node.place.radius), um(over), um(more));
            }
        }
    }
    out
}

#[test]
fn section_of_a_pressed_bearing_with_a_shoulder() {
    let text = include_str!("jobs/screw-jig.toml");
    insta::assert_snapshot!(section(text, drawing::Moment::Room, SectionCase::Tightest));
}

#[test]
fn section_of_a_lined_bore_in_service() {
    let text = include_str!("jobs/liner-free.toml");
    insta::assert_snapshot!(section(text, drawing::Moment::Coldest, SectionCase::Loosest));
}

#[test]
fn section_of_a_shaft() {
    let text = include_str!("jobs/hollow-shaft.toml");
    insta::assert_snapshot!(section(text, drawing::Moment::Coldest, SectionCase::Middle));
}

/// The working of a plan that an example does not reach.
fn working(text: &str) -> String {
    let job = checked(text);
    rounded(&report::working::text(
        &report::working::working(&planned(&job, Method::Plane), System::Metric),
        System::Metric,
    ))
}

each! { working, "jobs/":
    working_of_two_seats => "two-seats",
    working_of_a_polyamide_bush => "plastic-bush",
    working_of_a_bush_that_takes_a_set => "set-bush",
    working_of_a_chill_in_vain => "chill-in-vain",
}

/// The answers of one exercise of each kind.
#[test]
fn answers_of_every_kind() {
    let mut out = String::new();
    for (level, count) in [(ExerciseLevel::One, 3), (ExerciseLevel::Two, 2), (ExerciseLevel::Three, 1)] {
        let drawn = exercise(3, level, count, &Library::default()).unwrap();
        let answers = serde_json::from_str(&Solution::new(&drawn).unwrap().json(Paper::Answers).unwrap()).unwrap();
        // The formulas are those of the workings; the job files stand in the story.
        out.push_str(&lines(&without(&answers, &["job", "working", "formula", "sources"])));
    }
    insta::assert_snapshot!(out);
}

/// What is drawn from some seeds: a job's text on one line each.
#[test]
fn jobs_that_are_drawn() {
    let mut out = String::new();
    for seed in 1..=6 {
        for level in [ExerciseLevel::One, ExerciseLevel::Two, ExerciseLevel::Three] {
            let count = if level == ExerciseLevel::Three { 2 } else { 3 };
            for problem in exercise(seed, level, count, &Library::default()).unwrap().problems {
                let last = &problem.cases[problem.cases.len() - 1];
                let text: Vec<&str> = last.text.split_whitespace().collect();
                let _ = writeln!(out, "{seed} {level:?} {} cases: {}", problem.cases.len(), text.join(" "));
            }
        }
    }
    insta::assert_snapshot!(out);
}

#[test]
fn readings_of_a_slow_freezer() {
    let job = checked(include_str!("../../examples/pump-case.toml"));
    let readings = job::check_log(include_str!("../../examples/pump-case-readings.csv"), &job).unwrap();
    let found = plan::log::compare(&job, &readings).unwrap();
    insta::assert_snapshot!(lines(&serde_json::from_str(&report::log::json(&found).unwrap()).unwrap()));
}

/// What a freezer heads for is its own temperature, also where the part is taken out before.
#[test]
fn readings_of_a_bearing_that_is_taken_out_before() {
    let text = include_str!("../../examples/pump-case.toml").replace("hold = \"2 h\"", "until = \"-5 °C\"");
    let job = checked(&text);
    let readings = job::check_log(include_str!("../../examples/pump-case-readings.csv"), &job).unwrap();
    let found = plan::log::compare(&job, &readings).unwrap();
    let document = serde_json::from_str(&report::log::json(&found).unwrap()).unwrap();
    insta::assert_snapshot!(lines(&without(&document, &["readings", "curve"])));
}

/// What an induction heater heads for is the temperature that it is stopped at.
#[test]
fn readings_of_an_induction_heater() {
    let job = checked(include_str!("jobs/hollow-shaft.toml"));
    let rows = "time,part,value\n0 s,bearing,24 °C\n3 s,bearing,41 °C\n6 s,bearing,56 °C\n9 s,bearing,74 °C\n12 s,bearing,88 °C\n";
    let readings = job::check_log(rows, &job).unwrap_or_else(|error| panic!("{error}"));
    let found = plan::log::compare(&job, &readings).unwrap();
    insta::assert_snapshot!(lines(&serde_json::from_str(&report::log::json(&found).unwrap()).unwrap()));
}
