//! Where a caution begins: a knob of a job is turned until the caution comes or goes, and there the number that it goes by
//! must stand at its limit.

use crate::{AT_ONCE, exact, job_text, number, oven, planned};
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
        let text = caution["text"].as_str().unwrap();
        caution["code"] == code && (level.is_empty() || caution["level"] == level) && text.contains(words)
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
fn screws_stretch_and_threads_strip_from_their_loads_on() {
    let cover = |rest: &str| {
        ring("40", &format!("[fasteners]\nthread = \"M8\"\ncount = 6\ncircle = \"120 mm\"\nstrength = \"8.8\"\n{rest}"))
    };
    let group = "/fasteners/groups/0";
    let proof = |plan: &Value| number(plan, "/fasteners/groups/0/proof_load_n");
    let torque = cover("torque = \"@ N·m\"\n");
    let may = Knob::new(&torque, (5.0, 35.0), ("torque-may-pass-proof", "caution", ""));
    may.begins_at(&format!("{group}/preload_most_n"), proof, 20.0);
    let above = Knob::new(&torque, (20.0, 90.0), ("torque-above-proof", "warning", ""));
    above.begins_at(&format!("{group}/preload_least_n"), proof, 20.0);
    // Least breaking load of M8 in class 8.8: 36.6 mm² of 800 MPa (ISO 898-1).
    let tears = Knob::new(&torque, (20.0, 120.0), ("torque-above-proof", "warning", "tear it off"));
    tears.begins_at(&format!("{group}/preload_least_n"), |_| 29_250.0, 100.0);
    let soft =
        cover("torque = \"@ N·m\"\ninto = \"cast-aluminium\"\ninto_tensile = \"200 MPa\"\nengagement = \"8 mm\"\n");
    let reserve = format!("{group}/threads/reserve");
    let little = number(&plane(&soft.replace('@', "10")), &reserve) * 10.0 / 1.1;
    Knob::new(&soft, (2.0, little), ("threads-little-reserve", "caution", "little is in hand")).begins_at(
        &reserve,
        |_| 1.25,
        2e-3,
    );
    Knob::new(&soft, (little, 3.0 * little), ("threads-strip", "warning", "torn out")).begins_at(
        &reserve,
        |_| 1.0,
        2e-3,
    );
}

#[test]
fn a_stack_is_judged_to_the_nanometre() {
    // Every size is exact but that of the ring, 2/1.93 mm (DIN 472 62x2, from memory): with the ring's wall of the groove at 12 mm
    // the play is 30 - 12 - 16 - 2 = 0 mm at the least and 0.07 mm at the most. Its land is to be 4.5 mm.
    let stack = |depth: &str, from_face: &str, rest: &str| {
        let chain = format!(
            "[stack]\ndepth = \"{depth} mm ±0 mm\"\nring = \"DIN 472 62x2\"\nbearing = \"16 mm ±0 mm\"\n{rest}"
        );
        plane(&ring("40", &chain.replace("$GROOVE", &format!("from_face = \"{from_face} mm ±0 mm\""))))
    };
    let codes = [
        "stack-cannot-close",
        "stack-may-not-close",
        "stack-little-play",
        "stack-much-play",
        "ring-in-groove",
        "groove-land",
    ];
    let said = |depth: &str, from_face: &str, rest: &str| -> Vec<&str> {
        let plan = stack(depth, from_face, rest);
        codes.into_iter().filter(|code| is_said(&plan, (code, "", ""))).collect()
    };
    let plain = "groove = { $GROOVE }\n";
    let closes = |from_face: &str| stack("30", from_face, plain)["stack"]["ring"]["closes"].clone();
    assert_eq!(["12", "12.001", "12.07", "12.071"].map(closes), ["always", "sometimes", "sometimes", "never"]);
    assert_eq!(said("30", "12", plain), [""; 0]);
    assert_eq!(said("30", "12.001", plain), ["stack-may-not-close"]);
    assert_eq!(said("30", "12.07", plain), ["stack-may-not-close"]);
    assert_eq!(said("30", "12.071", plain), ["stack-cannot-close"]);
    let wanted = "groove = { $GROOVE }\nplay = { least = \"0.05 mm\", most = \"0.12 mm\" }\n";
    assert_eq!(said("30", "11.95", wanted), [""; 0]);
    assert_eq!(said("30", "11.951", wanted), ["stack-little-play"]);
    assert_eq!(said("30", "11.949", wanted), ["stack-much-play"]);
    assert_eq!(said("30", "12", "groove = { $GROOVE, width = \"2 mm ±0 mm\" }\n"), [""; 0]);
    assert_eq!(said("30", "12", "groove = { $GROOVE, width = \"1.999 mm ±0 mm\" }\n"), ["ring-in-groove"]);
    assert_eq!(said("22.5", "4.5", plain), [""; 0]);
    assert_eq!(said("22.499", "4.499", plain), ["groove-land"]);
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
fn findings_of_an_inspection_count_from_their_limits_on() {
    let found = |rest: &str| {
        planned(
            &(exact("6205", 20, 90, "$ALLOY")
                + "[shaft]\noutside_limits = \"k5\"\nmaterial = $STEEL\n[seal]\nsize = \"25x52x7\"\nlip = \"NBR\"\nfitted = \"after the bearing\"\n[inspection]\nbearing = \"new\"\n"
                + rest),
        )
    };
    let said = |rest: &str, code: &str, words: &str| is_said(&found(rest), (code, "", words));
    assert!(!said("lead_in = \"0.5 mm\"", "short-lead-in", "") && said("lead_in = \"0.499 mm\"", "short-lead-in", ""));
    for (ra, words) in [("0.19", "carries no oil"), ("0.81", "wears the lip")] {
        assert!(said(&format!("lip_track = \"Ra {ra} um\""), "lip-track", words), "{ra}");
    }
    assert!(!said("lip_track = \"Ra 0.2 um\"", "lip-track", "") && !said("lip_track = \"Ra 0.8 um\"", "lip-track", ""));
    let allowed = number(&found("run_out = \"1 um\""), "/inspection/run_out_allowed_um");
    let run_out = |more: f64| said(&format!("run_out = \"{:.3} um\"", allowed + more), "shaft-runs-out", "");
    assert!(!run_out(0.0) && run_out(0.1));
}

#[test]
fn readings_are_judged_from_the_allowed_form_on() {
    let read = |readings: &str| {
        let text = exact("6205", 20, 90, "$ALLOY")
            .replace("\"-20/-20 um\"", &format!("{{ readings = {readings}, within = \"1 um\", at = \"20 °C\" }}"));
        planned(&text)
    };
    let codes = ["seat-out-of-round", "seat-tapered", "few-directions"];
    let said = |readings: &str| codes.map(|code| is_said(&read(readings), (code, "", "")));
    let allowed = number(&read("[[\"51.98 mm\", \"51.98 mm\", \"51.98 mm\"]]"), "/inspection/forms/0/allowed_um");
    let at = |more: f64| format!("{:.4} mm", 51.98 + (allowed + more) * 1e-3);
    let round = |more: f64| format!("[[\"51.98 mm\", \"{}\", \"51.98 mm\"]]", at(more));
    assert_eq!(said(&round(0.0)), [false, false, false], "{allowed}");
    assert_eq!(said(&round(0.5)), [true, false, false]);
    let taper =
        |more: f64| format!("[[\"51.98 mm\", \"51.98 mm\", \"51.98 mm\"], [\"{0}\", \"{0}\", \"{0}\"]]", at(more));
    assert_eq!(said(&taper(0.0)), [false, false, false]);
    assert_eq!(said(&taper(0.5)), [false, true, false]);
    assert!(is_said(&read(&taper(0.5)), ("seat-tapered", "", "largest at the last depth")));
    assert_eq!(said("[[\"51.98 mm\", \"51.98 mm\"]]"), [false, false, true]);
    assert!(is_said(&read("[[\"51.98 mm\"], [\"51.98 mm\"]]"), ("few-directions", "", "in 1 direction only")));
}
