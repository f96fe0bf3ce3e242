//! Where a caution begins: a knob of a job is turned until the caution comes or goes, and there the number that it goes by
//! must stand at its limit.

mod beside;
mod exact;
mod found;

use crate::{AT_ONCE, job_text, number, oven};
use seatwise::stock::Library;
use seatwise::{job, plan, report};
use serde_json::Value;

/// A plan as the plane formula has it, which is monotone in every size.
fn plane(text: &str) -> Value {
    let text = job_text(text);
    let job = job::check(&text, &Library::default()).unwrap_or_else(|error| panic!("{error}\n{text}"));
    let plan = plan::plan_by(&job, plan::Method::Plane).unwrap();
    serde_json::from_str(&report::json::plan(&plan).unwrap()).unwrap()
}

/// Whether a caution is said, at a level where one is asked for, with these words where some are.
fn is_said(plan: &Value, (code, level, words): (&str, &str, &str)) -> bool {
    plan["cautions"].as_array().unwrap().iter().any(|caution| {
        // What stands first in a caution begins with a capital.
        let text = caution["text"].as_str().unwrap().to_lowercase();
        let level_is = level.is_empty() || caution["level"] == level;
        caution["code"] == code && level_is && text.contains(&words.to_lowercase())
    })
}

/// A job with a knob, written `@`, between a value at which a caution is silent and one at which it is said.
struct Knob {
    job: String,
    silent: f64,
    said: f64,
    caution: (&'static str, &'static str, &'static str),
}

impl Knob {
    fn new(job: &str, (silent, said): (f64, f64), caution: (&'static str, &'static str, &'static str)) -> Self {
        Self { job: job.to_owned(), silent, said, caution }
    }

    fn at(&self, value: f64) -> Value {
        plane(&self.job.replace('@', &format!("{value:.6}")))
    }

    /// The plans on both sides of the place where the caution begins, silent first; the knob is within a ten-thousandth of
    /// its way.
    fn begins(&self) -> [Value; 2] {
        let (mut silent, mut said) = (self.silent, self.said);
        let mut plans = [self.at(silent), self.at(said)];
        assert!(!is_said(&plans[0], self.caution), "{:?} is said at {silent}", self.caution);
        assert!(is_said(&plans[1], self.caution), "{:?} is not said at {said}", self.caution);
        for _ in 0..14 {
            let middle = 0.5 * (silent + said);
            let plan = self.at(middle);
            if is_said(&plan, self.caution) {
                (said, plans[1]) = (middle, plan);
            } else {
                (silent, plans[0]) = (middle, plan);
            }
        }
        plans
    }

    /// The caution begins where a number of the first seat, or of the plan, passes a limit.
    fn begins_at(&self, pointer: &str, limit: impl Fn(&Value) -> f64, tolerance: f64) {
        let plans = self.begins();
        let read = |plan: &Value| number(plan, pointer) - limit(plan);
        let (before, after) = (read(&plans[0]), read(&plans[1]));
        assert!(before.abs() < tolerance && after.abs() < tolerance, "{:?}: {before} then {after}", self.caution);
    }
}

/// A ring of steel of 62 mm in a plain boss as long as the ring: two rings of equal width are exact.
fn ring(interference: &str, rest: &str) -> String {
    format!(
        "[bearing]\nkind = \"plain bush\"\nbore = \"40 mm\"\noutside = \"62 mm\"\nwidth = \"16 mm\"\nchamfer = \"0 mm\"\n\
         material = $STEEL\noutside_limits = \"0/0 um\"\n[housing]\nbore_limits = \"-{interference}/-{interference} um\"\n\
         outside = \"90 mm\"\nlength = \"16 mm\"\nmaterial = $ALLOY\n{rest}"
    )
}

const SEAT: &str = "/seats/0";

#[test]
fn strength_is_near_from_a_quarter_over_and_passed_from_one() {
    let near = Knob::new(&ring("@", ""), (60.0, 140.0), ("elastic-limit-near", "caution", "comes close to"));
    let factor = format!("{SEAT}/press/yield_factor/tightest");
    near.begins_at(&factor, |_| 1.25, 1e-3);
    let passed = Knob::new(&ring("@", ""), (100.0, 180.0), ("elastic-limit-passed", "danger", "passes its strength"));
    passed.begins_at(&factor, |_| 1.0, 1e-3);
    let [before, after] = passed.begins();
    assert!(before["verdict"] == "press" && after["verdict"] == "do not");
    assert!(!is_said(&after, ("elastic-limit-near", "", "")) && !is_said(&before, ("elastic-limit-passed", "", "")));
    // In service the interference is held against the same limit.
    let service = ring("150", "[service]\ncoldest = \"@ °C\"\nhottest = \"30 °C\"\n");
    let limit = |plan: &Value| number(plan, "/seats/0/press/elastic_limit_um");
    let cold = Knob::new(&service, (10.0, -39.0), ("elastic-limit-in-service", "warning", "coldest in service"));
    cold.begins_at("/seats/0/service/0/interference_um/tightest", limit, 0.05);
}

/// A bush of a soft metal, 40/50 mm, in a boss as long as it.
fn soft_bush() -> String {
    let soft = crate::ALLOY.replace("160 MPa", "100 MPa");
    format!(
        "[bearing]\nkind = \"plain bush\"\nbore = \"40 mm\"\noutside = \"50 mm\"\nwidth = \"16 mm\"\nchamfer = \"0 mm\"\n\
         material = {soft}\noutside_limits = \"0/0 um\"\n[housing]\nbore_limits = \"-@/-@ um\"\noutside = \"90 mm\"\n\
         length = \"16 mm\"\nmaterial = $STEEL\n"
    )
}

#[test]
fn a_bush_takes_a_set_from_its_elastic_limit_flows_from_its_plastic_one_and_is_forbidden_where_its_bore_closes_too_far()
{
    let at = "/seats/0/fit/interference_um/tightest";
    let takes = Knob::new(&soft_bush(), (30.0, 75.0), ("bush-takes-set", "caution", "takes a set"));
    takes.begins_at(at, |plan| number(plan, "/seats/0/press/elastic_limit_um"), 0.02);
    assert!(takes.begins().iter().all(|plan| plan["verdict"] == "press"));
    // Wholly plastic: D Y/(2 E) [(1 - ν)(2 - 1/k) + (1 + ν)/k] of the bush and Y (1 - 1/k) on the boss.
    let (strain, nu, k) = (100.0 / 70e3, 0.33, 1.25);
    let of_bush = 0.5 * 50e3 * strain * ((1.0 - nu) * (2.0 - 1.0 / k) + (1.0 + nu) / k);
    let give = (90.0_f64.powi(2) + 2500.0) / (90.0_f64.powi(2) - 2500.0) + 0.3;
    let through = of_bush + 50e3 / 206e3 * give * 100.0 * (1.0 - 1.0 / k);
    let flows = Knob::new(&soft_bush(), (70.0, 120.0), ("bush-takes-set", "warning", "whole wall"));
    flows.begins_at(at, |_| through, 0.02);
    // From there the bore closes by the interference, up to 0.5 % of 40 mm.
    let last = through + 200.0 - 40e3 * strain * (1.0 + k.ln());
    let passed = Knob::new(&soft_bush(), (120.0, 245.0), ("elastic-limit-passed", "danger", "passes its strength"));
    passed.begins_at(at, |_| last, 0.05);
    let [before, after] = passed.begins();
    assert!(before["verdict"] == "press" && after["verdict"] == "do not");
}

#[test]
fn a_fit_is_loose_in_service_from_the_temperature_that_opens_it() {
    let service = ring("40", "[service]\ncoldest = \"0 °C\"\nhottest = \"@ °C\"\n");
    let hot = Knob::new(&service, (30.0, 150.0), ("loose-in-service", "warning", "every case is loose"));
    hot.begins_at("/seats/0/service/1/interference_um/loosest", |_| 0.0, 0.05);
    let band = service.replace("-40/-40", "-60/-30");
    let part = Knob::new(&band, (30.0, 70.0), ("loose-in-service", "warning", "part of the band is loose"));
    part.begins_at("/seats/0/service/1/interference_um/loosest", |_| 0.0, 0.05);
    let every = Knob::new(&band, (70.0, 150.0), ("loose-in-service", "warning", "every case is loose"));
    every.begins_at("/seats/0/service/1/interference_um/tightest", |_| 0.0, 0.05);
    // Light alloy creeps above 100 °C, while it is tight.
    let tight = ring("90", "[service]\ncoldest = \"0 °C\"\nhottest = \"@ °C\"\n");
    let creeps = Knob::new(&tight, (60.0, 120.0), ("creep-in-service", "caution", ""));
    creeps.begins_at("/seats/0/service/1/outer_c", |_| 100.0, 0.01);
    assert!(!is_said(&creeps.at(100.0), creeps.caution) && is_said(&creeps.at(100.1), creeps.caution));
    assert!(!is_said(&plane(&tight.replace("-90/-90", "-40/-40").replace('@', "120")), creeps.caution), "loose there");
    assert!(!is_said(&plane(&tight.replace("$ALLOY", "$IRON").replace('@', "120")), creeps.caution), "no light alloy");
}

#[test]
fn what_presses_is_too_small_below_the_force_that_is_needed() {
    let force = |plan: &Value| number(plan, "/seats/0/at_bore/force_n/tightest") / 1e3;
    for (press, needed) in [
        ("[press]\nmeans = \"arbor press\"\ncapacity = \"@ kN\"\n", 20.0),
        ("[press]\ncapacity = \"@ kN\"\n", 20.0),
        ("[press]\nmeans = \"hydraulic press\"\nram = \"20 mm\"\nram_pressure = \"@ MPa\"\n", 60.0),
    ] {
        let knob =
            Knob::new(&ring("40", press), (needed, 0.2), ("press-too-small", "warning", "more than the press gives"));
        let plans = knob.begins();
        if press.contains("means") {
            let read = |plan: &Value| number(plan, "/seats/0/means/available_n") / 1e3 - force(plan);
            assert!(read(&plans[0]) >= -1e-3 && read(&plans[1]) < 1e-3 && read(&plans[0]) < 0.01, "{press}");
        }
    }
    let rod = "[press]\nmeans = \"screw jig\"\nthread = \"M6\"\nstrength = \"5.6\"\n";
    let jig = Knob::new(&ring("@", rod), (10.0, 100.0), ("weak-screw", "warning", ""));
    jig.begins_at("/seats/0/means/screw/rod_share", |_| 1.0, 2e-3);
    let wall = "shoulder = { inside = \"50 mm\", wall = \"3 mm\" }\n";
    let knob = Knob::new(&ring("@", wall), (1.0, 90.0), ("weak-wall", "warning", ""));
    knob.begins_at("/seats/0/at_bore/force_n/tightest", |plan| number(plan, "/seats/0/wall/allowable_n"), 5.0);
}

#[test]
fn the_verdict_turns_where_a_case_has_the_placing_clearance() {
    let band =
        ring("40", &(oven("90 °C", "hold = \"2 h\"") + "[bench]\ncarry = \"0 s\"\nplacing_clearance = \"@ um\"\n"));
    let band = band.replace("-40/-40", "-60/-20");
    let tightest = Knob::new(&band, (5.0, 50.0), ("does-not-clear-tightest", "warning", "the tightest case"));
    tightest.begins_at(
        "/seats/0/at_bore/placing_clearance_um",
        |plan| number(plan, "/seats/0/at_bore/clearance_um/tightest"),
        0.01,
    );
    let [before, after] = tightest.begins();
    assert!(before["verdict"] == "drops in" && after["verdict"] == "some will not", "{}", after["verdict"]);
    let middle = Knob::new(&band, (40.0, 90.0), ("does-not-clear-middle", "warning", "even the middle case"));
    middle.begins_at(
        "/seats/0/at_bore/placing_clearance_um",
        |plan| number(plan, "/seats/0/at_bore/clearance_um/middle"),
        0.01,
    );
    assert_eq!(middle.begins()[1]["verdict"], "press");
}

#[test]
fn a_window_is_short_from_ten_seconds_in_hand_and_a_grip_soon_below_a_minute() {
    let carried = ring("40", &(oven("100 °C", "hold = \"2 h\"") + "[bench]\ncarry = \"@ s\"\n"));
    let window = |plan: &Value| number(plan, "/seats/0/window_s/tightest");
    let long = number(&plane(&carried.replace('@', "0")), "/seats/0/window_s/tightest");
    let short = Knob::new(&carried, (0.0, long - 5.0), ("short-window", "caution", "in shop air"));
    short.begins_at("/seats/0/at_bore/after_s", |plan| window(plan) - 10.0, 0.3);
    // What comes too late is not said twice.
    let late = short.at(long + 1.0);
    assert!(!is_said(&late, short.caution) && is_said(&late, ("does-not-clear-middle", "", "")));
    let chilled = "[chill]\npart = \"bush\"\nmedium = \"deep-freezer-80\"\nhold = \"8 h\"\n";
    let chilled = ring("@", &format!("{chilled}{AT_ONCE}")).replace("$ALLOY", "$IRON");
    let chilled =
        chilled.replace("bore = \"40 mm\"", "bore = \"10 mm\"").replace("90 mm", "160 mm").replace("16 mm", "40 mm");
    let grips = Knob::new(&chilled, (1.0, 40.0), ("grips-soon", "caution", "It must be home in one movement"));
    let [before, after] = grips.begins();
    let grip = |plan: &Value| plan.pointer("/seats/0/grip_s/tightest").and_then(Value::as_f64);
    assert!(
        grip(&after).is_some_and(|grip| grip < 60.0) && grip(&before).is_none_or(|grip| grip >= 60.0),
        "{:?} {:?}",
        grip(&before),
        grip(&after)
    );
}

#[test]
fn heat_and_cold_are_too_much_from_the_limit_of_the_material_on() {
    let hot = ring("40", &(oven("@ °C", "hold = \"48 h\"") + AT_ONCE));
    let reached = "/seats/0/warm/end_quick_c";
    // The magnesium of the library bears 130 °C.
    let magnesium = hot.replace("$ALLOY", "\"magnesium-az91\"");
    let limit = Knob::new(&magnesium, (110.0, 145.0), ("too-hot", "danger", "above its limit of 130 °C"));
    limit.begins_at(reached, |_| 130.05, 0.02);
    assert_eq!(limit.begins()[1]["verdict"], "do not");
    let cold = ring(
        "40",
        "[chill]\npart = \"bush\"\nmedium = \"deep-freezer-80\"\ntemperature = \"-75 °C\"\nhold = \"@ s\"\n",
    );
    let polyamide = cold.replace("$STEEL", "\"pa66\"") + AT_ONCE;
    let limit = Knob::new(&polyamide, (60.0, 14400.0), ("too-cold", "danger", "below its limit of -40 °C"));
    limit.begins_at("/seats/0/chill/end_quick_c", |_| -40.05, 0.05);
}

#[test]
fn dew_and_frost_begin_at_the_dew_point_and_at_freezing() {
    let chilled = "[chill]\npart = \"bush\"\nmedium = \"domestic-freezer\"\nfilm = \"10 W/m2K\"\nhold = \"@ s\"\n[bench]\ncarry = \"0 s\"\n";
    let damp = ring("40", &format!("{chilled}humidity = \"60 %\"\n"));
    let end = "/seats/0/chill/end_quick_c";
    // 20 °C and 60 %: dew point 12.0 °C (any psychrometric table).
    Knob::new(&damp, (1.0, 300.0), ("dew", "caution", "the dew point of the shop")).begins_at(end, |_| 12.0, 0.1);
    Knob::new(&damp, (600.0, 9000.0), ("frost", "caution", "frost")).begins_at(end, |_| 0.0, 0.05);
    let unknown = ring("40", chilled);
    Knob::new(&unknown, (600.0, 9000.0), ("frost-likely", "caution", "")).begins_at(end, |_| 0.0, 0.05);
}

#[test]
fn a_room_is_too_small_from_thin_air_or_from_carbon_dioxide_on() {
    for (medium, words) in [("liquid-nitrogen", "19.4 % of oxygen"), ("dry-ice", "of carbon dioxide")] {
        let text = format!(
            "[chill]\npart = \"bush\"\nmedium = \"{medium}\"\nhold = \"1 h\"\n[bench]\nroom = \"@ m3\"\ncarry = \"0 s\"\n"
        );
        let steel = ring("40", &text)
            .replace("16 mm", "160 mm")
            .replace("$STEEL", "\"stainless-304\"")
            .replace("$ALLOY", "\"carbon-steel\"");
        let knob = Knob::new(&steel, (400.0, 5.0), ("gas-in-the-room", "danger", ""));
        let [before, after] = knob.begins();
        assert!(is_said(&before, ("gas-in-the-room", "warning", "")) && after["verdict"] == "do not");
        let text = after["cautions"].as_array().unwrap().iter().find(|it| it["code"] == "gas-in-the-room").unwrap();
        // 20.9 % of air thinned to 19.5 %; or 3 % of carbon dioxide, whichever is first.
        assert!(text["text"].as_str().unwrap().contains(words), "{text}");
    }
}

#[test]
fn a_fit_is_called_loose_by_the_sign_of_its_limits() {
    let fit = |inner: &str, bore: &str| plane(&ring("40", "").replace("\"0/0 um\"", inner).replace("-40/-40 um", bore));
    let codes = |plan: &Value| ["loose-fit", "loose-in-part"].map(|code| is_said(plan, (code, "", "")));
    assert_eq!(codes(&fit("\"0/0 um\"", "0/0 um")), [true, false]);
    assert_eq!(codes(&fit("\"0/+1 um\"", "0/0 um")), [false, false]);
    assert_eq!(codes(&fit("\"0/+1 um\"", "0/+1 um")), [false, true]);
    assert_eq!(codes(&fit("\"-1/0 um\"", "0/+1 um")), [true, false]);
    assert_eq!(codes(&fit("\"+1/+1 um\"", "0/0 um")), [false, false]);
}

#[test]
fn one_temperature_for_a_piece_is_doubted_from_a_twentieth_of_its_time_on() {
    let bath = "[chill]\npart = \"bush\"\nmedium = \"dry-ice-alcohol\"\nfilm = \"@ W/m2K\"\nhold = \"1 min\"\n";
    let job = ring("1", &format!("{bath}{AT_ONCE}")).replace("16 mm", "60 mm");
    let (error, biot) = ("/seats/0/chill/time_error_share", "/seats/0/chill/biot");
    let code = "not-one-temperature";
    let note = Knob::new(&job, (60.0, 2000.0), (code, "note", "its times may be off by"));
    note.begins_at(error, |_| 0.05, 1e-3);
    // Beyond a Biot number of one the bound is a trend, and the section is needed.
    let caution = Knob::new(
        &job,
        (2000.0, 12_000.0),
        (code, "caution", "not followed in its section here; its times may be off by about"),
    );
    caution.begins_at(biot, |_| 1.0, 0.01);
    // A wall of more than half the radius has no bound, and its Biot number stands for it.
    let thick = job.replace("bore = \"40 mm\"", "bore = \"20 mm\"");
    Knob::new(&thick, (60.0, 2000.0), (code, "note", "no bound of its error")).begins_at(biot, |_| 0.1, 0.002);
    Knob::new(&thick, (2000.0, 15_000.0), (code, "caution", "more than this plan can tell")).begins_at(
        biot,
        |_| 1.0,
        0.01,
    );
}

#[test]
fn rings_of_a_bearing_differ_from_five_kelvin_on() {
    // Induction warms the inner ring alone.
    let warmed = "[bearing]\ndesignation = \"6210\"\nclosure = \"open\"\n[shaft]\noutside_limits = \"k6\"\nmaterial = \"carbon-steel\"\n\
                  [warm]\npart = \"bearing\"\nmedium = \"induction-heater\"\npower = \"600 W\"\nuntil = \"@ °C\"\n[bench]\ntemperature = \"37 °C\"\n";
    let differ = Knob::new(warmed, (40.0, 60.0), ("rings-differ", "caution", "warmer than the outer one on the way"));
    differ.begins_at("/seats/0/warm/ring_difference_k", |_| 5.0, 0.02);
}
