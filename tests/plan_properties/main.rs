//! What must hold for the plan of any sound job, whatever its numbers.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod hostile;
mod jobs;
mod shaft;

use jobs::{Chill, Kind, RandomJob, Warm, Written};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use seatwise::stock::Library;
use seatwise::stock::medium::Law;
use seatwise::{job, plan, report};
use serde_json::Value;

const CASES: [&str; 3] = ["tightest", "middle", "loosest"];

/// Numbers of a plan are printed to six significant figures: half a unit of the last one, for values up to 999 µm, and
/// as much again for the solver of the temperatures (1e-6 of a step of 200 K moves a 150 mm ring by less than 0.001 µm).
const UM: f64 = 0.001;

fn planned(text: &str) -> Value {
    let job = job::check(text, &Library::default()).unwrap_or_else(|error| panic!("{error}\n{text}"));
    let plan = plan::plan(&job).unwrap_or_else(|error| panic!("{error}\n{text}"));
    serde_json::from_str(&report::json::plan(&plan).unwrap()).unwrap()
}

fn seat(job: &RandomJob) -> Value {
    planned(&job.text(Written::Metric))["seats"][0].clone()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

/// The three cases of a range.
fn range(value: &Value) -> [f64; 3] {
    CASES.map(|case| number(&value[case]))
}

fn clearance(seat: &Value) -> [f64; 3] {
    range(&seat["at_bore"]["clearance_um"])
}

/// Window in seconds; a placing clearance that does not go lasts for ever.
fn windows(seat: &Value) -> [f64; 3] {
    CASES.map(|case| seat["window_s"][case].as_f64().unwrap_or(f64::INFINITY))
}

/// A job with a chill, and the same with the inner part colder: a colder freezer, or a longer hold.
fn chilled_and_colder() -> impl Strategy<Value = (RandomJob, RandomJob)> {
    (jobs::job(), jobs::chill(), 1..=120_u32).prop_map(|(job, chill, more)| {
        let job = RandomJob { chill: Some(chill), ..job };
        let colder = match chill.steps {
            Some(steps) if steps > -5 => Chill { steps: Some(steps - 1), ..chill },
            _ => Chill { minutes: chill.minutes + more, ..chill },
        };
        (job.clone(), RandomJob { chill: Some(colder), ..job })
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(20))]

    #[test]
    fn a_colder_inner_part_never_leaves_less_clearance((job, colder) in chilled_and_colder()) {
        let (before, after) = (clearance(&seat(&job)), clearance(&seat(&colder)));
        for (before, after) in before.into_iter().zip(after) {
            prop_assert!(after >= before - UM, "{before} then {after}: {colder:?}");
        }
    }

    #[test]
    fn a_warmer_housing_never_leaves_less_clearance(job in jobs::job(), warm in jobs::warm(), hotter in 0..=3_i32, longer in 0..=60_u32) {
        let cool = RandomJob { warm: Some(warm), ..job.clone() };
        let warm = Warm { steps: warm.steps + hotter, minutes: warm.minutes + longer };
        let (before, after) = (clearance(&seat(&cool)), clearance(&seat(&RandomJob { warm: Some(warm), ..job })));
        for (before, after) in before.into_iter().zip(after) {
            prop_assert!(after >= before - UM, "{before} then {after}: {cool:?} and {warm:?}");
        }
    }

    #[test]
    fn chill_and_warmth_clear_and_never_close(job in jobs::job(), chill in jobs::chill(), warm in jobs::warm()) {
        let bare = clearance(&seat(&RandomJob { chill: None, warm: None, ..job.clone() }));
        for treated in [
            RandomJob { chill: Some(chill), warm: None, ..job.clone() },
            RandomJob { chill: None, warm: Some(warm), ..job.clone() },
        ] {
            for (bare, treated) in bare.into_iter().zip(clearance(&seat(&treated))) {
                prop_assert!(treated >= bare - UM);
            }
        }
    }

    #[test]
    fn more_hold_never_shortens_the_window((job, colder) in chilled_and_colder()) {
        for (before, after) in windows(&seat(&job)).into_iter().zip(windows(&seat(&colder))) {
            // The end of the window is sought to 0.01 s, and printed to six figures of at most four hours.
            prop_assert!(after >= before - 0.12, "{before} s then {after} s: {colder:?}");
        }
    }

    #[test]
    fn the_cases_stand_in_order(job in jobs::job()) {
        let seat = seat(&job);
        for rising in [&seat["at_bore"]["clearance_um"], &json_of_windows(&seat)] {
            let [tightest, middle, loosest] = range(rising);
            prop_assert!(tightest <= middle && middle <= loosest, "{rising}");
        }
        let press = &seat["press"];
        let falling = [
            &seat["fit"]["interference_um"],
            &seat["at_bore"]["force_n"],
            &press["pressure_mpa"],
            &press["force_n"],
            &press["hoop_outer_mpa"],
        ];
        for falling in falling.into_iter().chain(seat["service"].as_array().unwrap().iter().map(|s| &s["interference_um"])) {
            let [tightest, middle, loosest] = range(falling);
            prop_assert!(tightest >= middle && middle >= loosest, "{falling}");
        }
    }

    #[test]
    fn force_is_never_negative_and_none_where_the_joint_is_open(job in jobs::job()) {
        let seat = seat(&job);
        let forces = range(&seat["at_bore"]["force_n"]);
        for (force, clearance) in forces.into_iter().zip(clearance(&seat)) {
            prop_assert!(force >= 0.0);
            prop_assert_eq!(force > 0.0, clearance < 0.0, "{} N at {} um", force, clearance);
        }
        for pressure in range(&seat["press"]["pressure_mpa"]) {
            prop_assert!(pressure >= 0.0);
        }
    }

    #[test]
    fn a_tighter_bore_never_takes_less_force_to_press_or_to_draw(job in jobs::job(), lower in -12..4_i32, by in 0..6_i32) {
        let with = |lower: i32| {
            let bare = RandomJob { chill: None, warm: None, outer: jobs::Band::Limits(lower, 6), ..job.clone() };
            job::check(&bare.text(Written::Metric), &Library::default()).ok().map(|_| seat(&bare))
        };
        // A pair that is refused as a slip of the pen has no force.
        let (Some(wide), Some(tight)) = (with(lower), with(lower - by)) else { return Ok(()) };
        for pointer in ["/press/force_n", "/removal/pull_n", "/press/pressure_mpa"] {
            for (less, more) in range(at(&wide, pointer)).into_iter().zip(range(at(&tight, pointer))) {
                prop_assert!(more >= less * (1.0 - 1e-9), "{pointer}: {less} then {more}");
            }
        }
    }

    #[test]
    fn a_hotter_light_alloy_housing_never_holds_more(job in jobs::job(), cold in -8..4_i32, warmer in 1..16_i32) {
        let bare = RandomJob { housing_material: "cast-aluminium", part_material: "bearing-steel", ..job };
        let service = |hot: i32| seat(&RandomJob { service: Some((cold, hot)), ..bare.clone() });
        let (mild, hot) = (service(cold + warmer), service(cold + warmer + 2));
        for pointer in ["/service/1/interference_um", "/service/1/holds_n", "/service/1/holds_nm"] {
            for (mild, hot) in range(at(&mild, pointer)).into_iter().zip(range(at(&hot, pointer))) {
                prop_assert!(hot <= mild + 1e-9, "{pointer}: {mild} then {hot}");
            }
        }
    }

    #[test]
    fn a_chilled_part_that_stands_still_takes_more_force_than_at_once(job in jobs::job(), chill in jobs::chill()) {
        let seat = seat(&RandomJob { chill: Some(chill), warm: None, ..job });
        let standing = seat["standing"].as_array().unwrap();
        let forces: Vec<f64> = standing.iter().map(|entry| number(&entry["force_n"])).collect();
        prop_assert_eq!(forces.len(), 4);
        // Once both are equally cold and warm up together, a housing that moves more than its part lets go again.
        prop_assert!(forces.iter().all(|force| *force >= forces[0] * (1.0 - 1e-5) - 1e-6), "{forces:?}");
    }

    #[test]
    fn interference_is_the_clearance_with_its_sign_turned(job in jobs::job()) {
        // At 20 °C with nothing chilled or warmed, what stands at the mouth of the seat is the fit itself.
        let bare = RandomJob { chill: None, warm: None, shop_steps: 4, ..job };
        let seat = seat(&bare);
        for (interference, clearance) in range(&seat["fit"]["interference_um"]).into_iter().zip(clearance(&seat)) {
            prop_assert!((interference + clearance).abs() < UM, "{interference} and {clearance}");
        }
    }

    #[test]
    fn a_plain_press_meets_the_fit_at_the_temperature_of_the_shop(job in jobs::job()) {
        let bare = RandomJob { chill: None, warm: None, ..job };
        let seat = seat(&bare);
        let library = Library::default();
        let kelvins = 273.15 + 5.0 * f64::from(bare.shop_steps);
        let strain = |name: &str| library.material(name).unwrap().expansion().at(kelvins).unwrap();
        let part = if bare.kind == Kind::Bearing { "bearing-steel" } else { bare.part_material };
        // Independent of the plan: D + limits, each grown by its own strain. All in micrometres.
        let nominal = 1e3 * number(&seat["nominal_mm"]);
        let limit = |side: &str, end: &str| nominal + number(&seat["fit"][side][end]);
        let grown = |side: &str, end: &str, name: &str| limit(side, end) * (1.0 + strain(name));
        let tightest = grown("outer_limits_um", "lower", bare.housing_material) - grown("inner_limits_um", "upper", part);
        let loosest = grown("outer_limits_um", "upper", bare.housing_material) - grown("inner_limits_um", "lower", part);
        let [got_tightest, got_middle, got_loosest] = clearance(&seat);
        prop_assert!((got_tightest - tightest).abs() < UM, "{got_tightest} and {tightest}");
        prop_assert!((got_loosest - loosest).abs() < UM, "{got_loosest} and {loosest}");
        prop_assert!((got_middle - 0.5 * (tightest + loosest)).abs() < UM);
        prop_assert_eq!(&seat["at_bore"]["force_n"], &seat["press"]["force_n"]);
    }

    #[test]
    fn the_verdict_follows_from_the_clearance(job in jobs::job()) {
        let plan = planned(&job.text(Written::Metric));
        let seat = &plan["seats"][0];
        let [tightest, middle, _] = clearance(seat);
        let placing = number(&seat["at_bore"]["placing_clearance_um"]);
        let forbidden = plan["cautions"].as_array().unwrap().iter().any(|c| c["forbids"] == true);
        let expected = match () {
            () if forbidden => "do not",
            () if tightest >= placing => "drops in",
            () if middle >= placing => "some will not",
            () => "press",
        };
        prop_assert_eq!(seat["verdict"].as_str().unwrap(), expected);
        prop_assert_eq!(&plan["verdict"], &seat["verdict"], "one seat: the worst of one");
        // What drops in has a window as long as the carry; what does not, has at most that.
        let (window, carry) = (windows(seat)[0], f64::from(job.carry_s));
        if tightest >= placing {
            prop_assert!(window >= carry - 0.02, "{window} s of {carry} s");
        } else {
            prop_assert!(window <= carry + 0.02, "{window} s of {carry} s");
        }
    }

    #[test]
    fn every_number_is_finite_and_every_null_has_its_reason(job in jobs::job()) {
        // NaN and infinity turn into null in JSON, so a null must be one that the document allows.
        let plan = planned(&job.text(Written::Metric));
        let mut wrong = Vec::new();
        walk(&plan, "", &mut wrong);
        prop_assert!(wrong.is_empty(), "{wrong:?}");
        let seat = &plan["seats"][0];
        for (range, reason) in RANGES_WITH_REASONS {
            let null = CASES.iter().any(|case| at(seat, range)[*case].is_null());
            prop_assert_eq!(null, at(seat, reason).is_string(), "{}", range);
        }
    }

    #[test]
    fn millimetres_and_inches_give_the_same_plan(job in jobs::job()) {
        let [metric, inch] = [Written::Metric, Written::Inch].map(|written| planned(&job.text(written)));
        let mut apart = Vec::new();
        differ(&metric["seats"], &inch["seats"], "seats", &mut apart);
        prop_assert!(apart.is_empty(), "{apart:?}");
        prop_assert_eq!(&metric["verdict"], &inch["verdict"]);
        let codes = |plan: &Value| -> Vec<String> {
            plan["cautions"].as_array().unwrap().iter().map(|caution| caution["code"].to_string()).collect()
        };
        prop_assert_eq!(codes(&metric), codes(&inch));
    }

    #[test]
    fn a_film_stated_at_the_low_end_changes_nothing_of_the_slow_pace(job in jobs::job(), chill in jobs::chill()) {
        let medium = Library::default().medium(chill.medium).unwrap();
        let film = medium.film().unwrap();
        // Where a correlation gives the film there is no low end to state.
        prop_assume!(film.law == Law::Stated);
        let low = film.low.value;
        let usual = seat(&RandomJob { chill: Some(chill), ..job.clone() });
        let stated = seat(&RandomJob { chill: Some(Chill { film: Some(low), ..chill }), ..job });
        for key in ["end_c", "film_w_m2k", "biot", "time_constant_s"] {
            prop_assert_eq!(&usual["chill"][key], &stated["chill"][key], "{}", key);
        }
        for key in ["at_bore", "window_s", "time_to_clear_s", "verdict"] {
            prop_assert_eq!(&usual[key], &stated[key], "{}", key);
        }
        // The quicker end of the usual range is colder than the one film that was stated.
        prop_assert!(number(&usual["chill"]["end_quick_c"]) <= number(&stated["chill"]["end_quick_c"]));
    }

    #[test]
    fn the_same_job_gives_the_same_plan_byte_for_byte(job in jobs::job()) {
        let text = job.text(Written::Metric);
        let once = || {
            let job = job::check(&text, &Library::default()).unwrap();
            let plan = plan::plan(&job).unwrap();
            report::json::plan(&plan).unwrap() + &report::text::plan(&plan, job.system)
        };
        prop_assert_eq!(once(), once());
    }
}

#[test]
fn the_random_jobs_reach_every_verdict() {
    // Guards the properties above: none of them may hold only because one kind of job was drawn.
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let mut seen = std::collections::BTreeMap::<String, u32>::new();
    for _ in 0..60 {
        let job = jobs::job().new_tree(&mut runner).unwrap().current();
        *seen.entry(seat(&job)["verdict"].as_str().unwrap().to_owned()).or_default() += 1;
    }
    for verdict in ["do not", "drops in", "press", "some will not"] {
        assert!(seen.contains_key(verdict), "{verdict} never came up: {seen:?}");
    }
}

#[test]
fn a_joint_line_to_line_has_no_stress_whatever_the_scale_of_the_shop() {
    // h and H meet at zero in the tightest case. 68 °F is 20 °C but for the last bit of its kelvins, and that bit must not
    // turn up as an interference, a force and a strength of 1e16 times the stress.
    for shop in ["20 °C", "68 °F"] {
        let text = format!(
            "[bearing]\nkind = \"ball bearing\"\nbore = \"25 mm\"\noutside = \"52 mm\"\nwidth = \"15 mm\"\n\
             closure = \"open\"\n[housing]\nbore_limits = \"H7\"\nmaterial = \"grey-iron\"\n[bench]\n\
             temperature = \"{shop}\"\n"
        );
        let seat = &planned(&text)["seats"][0];
        for figure in ["/at_bore/clearance_um", "/at_bore/force_n", "/press/pressure_mpa"] {
            none_in_the_tightest_case(at(seat, figure), shop);
        }
        assert!(at(seat, "/press/yield_factor/tightest").is_null(), "{shop}: {}", at(seat, "/press/yield_factor"));
    }
}

fn none_in_the_tightest_case(range: &Value, shop: &str) {
    assert!(number(&range["tightest"]).abs() < f64::MIN_POSITIVE, "{shop}: {range}");
}

/// Windows as a range of numbers.
fn json_of_windows(seat: &Value) -> Value {
    let [tightest, middle, loosest] = windows(seat).map(|window| window.min(1e9));
    serde_json::json!({ "tightest": tightest, "middle": middle, "loosest": loosest })
}

/// Ranges whose entries may be null, each with the reason that then stands beside it.
const RANGES_WITH_REASONS: [(&str, &str); 5] = [
    ("/share_at_clear", "/share_at_clear_reason"),
    ("/time_to_clear_s", "/time_to_clear_reason"),
    ("/window_s", "/window_reason"),
    ("/lock_c", "/lock_reason"),
    ("/press/yield_factor", "/press/yield_factor_reason"),
];

fn at<'v>(seat: &'v Value, pointer: &str) -> &'v Value {
    seat.pointer(pointer).unwrap_or_else(|| panic!("no {pointer}"))
}

/// Keys under which the document allows null.
const NULLABLE: [&str; 77] = [
    "driver",
    "section_heat_reason",
    "thin_side",
    "binds",
    "inside_mm",
    "rz_um",
    "liner",
    "fasteners",
    "inspection",
    "uneven_wall",
    "seal",
    "stack",
    "scatter",
    "allowable_free_n",
    "allowable_on_back_n",
    "allowable_on_front_n",
    "as_plate_n",
    "section_heat",
    "race",
    "first_touch_s",
    "one_sided_s",
    "wall",
    "means",
    "outer_limit_c",
    "outer_alone_c",
    "both_c",
    "torque_nm",
    "rod_share",
    "tighter",
    "outer_ring_um",
    "inner_ring_um",
    "usual_group",
    "sure_group",
    "internal_clearance",
    "elastic_limit_tresca_um",
    "ring_change_um",
    "available_n",
    "gauge_mpa",
    "screw",
    "class",
    "stop_nm",
    "stop_because_of",
    "proof_load_n",
    "group",
    "allowable_n",
    "place",
    "root_stress_mpa",
    "deflection_um",
    "grip_at_latest_s",
    "share_at_clear",
    "medium_drift_k",
    "grip_one_sided_s",
    "frees_at_c",
    "ring_difference_k",
    "time_error_share",
    "share_reached",
    "enough_after_s",
    "coolant_kg",
    "coolant_l",
    "water_g",
    "reference",
    "revision",
    "chill",
    "warm",
    "time_to_clear_s",
    "window_s",
    "grip_s",
    "lock_c",
    "yield_factor",
    "uncertainty_um",
    "inner_c",
    "outer_c",
    "flow_high_mpa",
    "plastic_ratio_high",
    "surplus_um",
    "takes_set",
    "yields_um",
];

/// Collects what is no finite number and no allowed null.
fn walk(value: &Value, path: &str, wrong: &mut Vec<String>) {
    match value {
        Value::Object(map) => map.iter().for_each(|(key, value)| walk(value, &format!("{path}/{key}"), wrong)),
        Value::Array(list) => list.iter().enumerate().for_each(|(i, value)| walk(value, &format!("{path}/{i}"), wrong)),
        Value::Null => {
            let allowed = path.ends_with("_reason")
                || path.ends_with("/reason")
                || path.rsplit('/').take(2).any(|key| NULLABLE.contains(&key));
            if !allowed || path.contains("at_bore") {
                wrong.push(format!("{path} is null"));
            }
        }
        Value::Number(number) if !number.as_f64().is_some_and(f64::is_finite) => {
            wrong.push(format!("{path}: {number}"))
        }
        _ => {}
    }
}

/// Collects where two plans differ by more than the printed figures.
fn differ(a: &Value, b: &Value, path: &str, apart: &mut Vec<String>) {
    match (a, b) {
        (Value::Object(a), Value::Object(b)) if a.len() == b.len() => {
            a.iter().for_each(|(key, value)| differ(value, &b[key], &format!("{path}/{key}"), apart));
        }
        (Value::Array(a), Value::Array(b)) if a.len() == b.len() => {
            a.iter().zip(b).for_each(|(a, b)| differ(a, b, path, apart));
        }
        (Value::Number(x), Value::Number(y)) => {
            let (x, y) = (x.as_f64().unwrap(), y.as_f64().unwrap());
            // 2e-4 because the last digit of an input may change the number of the solver's steps, each of which may be off
            // by 2e-7 of the widest difference of temperature, and a slow crossing turns that into more of its time; 0.02 s
            // where a time is sought to 0.01 s; 1e-6 for a zero that is noise.
            let tolerance = if path.contains("_s/") { 0.02 } else { 1e-6 };
            if (x - y).abs() > 2e-4 * x.abs().max(y.abs()) + tolerance {
                apart.push(format!("{path}: {x} and {y}"));
            }
        }
        // What the limits were given as is quoted as typed.
        (Value::String(_), Value::String(_)) if path.ends_with("_basis") => {}
        (a, b) if a == b => {}
        (a, b) => apart.push(format!("{path}: {a} and {b}")),
    }
}
