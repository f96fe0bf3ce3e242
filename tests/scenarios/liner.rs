//! A bore with a liner in it.

use super::*;
use seatwise::quantity::ThermodynamicTemperature;
use uom::si::thermodynamic_temperature::degree_celsius;

fn in_celsius(temperature: ThermodynamicTemperature) -> f64 {
    temperature.get::<degree_celsius>()
}

fn lined(liner: &str, more: &str) -> String {
    format!("{}\nliner = {liner}\n{more}", exact("6205", 30, 90, "$ALLOY"))
}

#[test]
fn a_cast_liner_of_the_same_metal_changes_nothing() {
    let plain = planned(&(exact("6205", 30, 90, "$ALLOY") + "\n" + &oven("100 °C", LONG) + AT_ONCE));
    let same = planned(&lined("{ wall = \"5 mm\", material = $ALLOY }", &(oven("100 °C", LONG) + AT_ONCE)));
    for pointer in [
        "/at_bore/clearance_um/tightest",
        "/press/force_n/tightest",
        "/press/hoop_outer_mpa/tightest",
        "/window_s/tightest",
        "/lock_c/tightest",
        "/warm/mass_kg",
    ] {
        let (plain, same) = (figure(&plain, pointer), figure(&same, pointer));
        within(same, plain, 2e-4 * plain.abs());
    }
    assert!(plain["seats"][0]["liner"].is_null() && same["seats"][0]["liner"].is_object());
}

#[test]
fn an_iron_liner_in_light_alloy_clears_less_when_warm_and_presses_harder() {
    // As long as the ring is wide, so that no bound of the shape comes between.
    let at = "length = \"15 mm\"\n".to_owned() + &oven("100 °C", LONG) + AT_ONCE;
    let plain = planned(&(exact("6205", 30, 90, "$ALLOY") + "\n" + &at));
    let iron = planned(&lined("{ wall = \"5 mm\", material = $IRON }", &at));
    let clearance = |plan: &Value| figure(plan, "/at_bore/clearance_um/tightest");
    // Between that of light alloy, -30 + 52·80·23e-3 = 65.7 µm, and that of iron alone, 13.7 µm.
    assert!(clearance(&iron) < clearance(&plain) - 5.0 && clearance(&iron) > 13.7 + 5.0, "{}", clearance(&iron));
    // The friction of the pair differs, so the pressures are compared.
    assert!(figure(&iron, "/press/pressure_mpa/tightest") > figure(&plain, "/press/pressure_mpa/tightest"));
    let expansion = figure(&iron, "/liner/bore_expansion_um_per_mk");
    assert!((10.5..23.0).contains(&expansion), "{expansion}");
    assert!(caution(&iron, "liner").is_some());
}

#[test]
fn a_pressed_liner_comes_free_where_its_interference_is_used_up_and_the_plan_warns() {
    // 40 µm at 62 mm, (23 - 10.5)e-6: used up after 51.6 K, at 71.6 °C.
    let liner = "{ wall = \"5 mm\", material = $IRON, interference = \"40 um\" }";
    let hot = planned(&lined(liner, &(oven("100 °C", LONG) + AT_ONCE)));
    within(figure(&hot, "/liner/free_from_c"), 20.0 + 40e-3 / (62.0 * 12.5e-6), 0.1);
    assert!(caution(&hot, "too-hot").is_some_and(|text| text.contains("71 °C") && text.contains("comes free")));
    assert_eq!(hot["verdict"], "do not");
    let mild = planned(&lined(liner, &(oven("60 °C", LONG) + AT_ONCE)));
    assert!(caution(&mild, "too-hot").is_none());
    // What it reaches while it is warmed is no matter of service.
    assert!(caution(&hot, "liner-comes-free").is_none() && caution(&mild, "liner-comes-free").is_none());
    // Beyond that the bore grows as the liner alone: 28.4 K of 10.5 µm/m after it came free.
    let cast = planned(&lined("{ wall = \"5 mm\", material = $IRON }", &(oven("100 °C", LONG) + AT_ONCE)));
    assert!(figure(&hot, "/at_bore/clearance_um/tightest") < figure(&cast, "/at_bore/clearance_um/tightest") - 2.0);
    says(&shown(&lined(liner, "")), &["pressed in with 40 µm in case alloy", "it comes free from 71 °C"]);
}

/// Reaching, drawing off, the dial and the list of ways all stay below the temperature at which the liner comes free.
#[test]
fn every_way_to_warm_a_housing_stays_below_the_temperature_that_frees_its_liner() {
    let free = 20.0 + 40e-3 / (62.0 * 12.5e-6);
    let text = |interference, more: &str| {
        let plain = exact("6205", interference, 90, "$ALLOY");
        format!("{plain}\nliner = {{ wall = \"5 mm\", material = $IRON, interference = \"40 um\" }}\n{more}")
    };
    // 75 µm would take the bore of this liner to about 150 °C.
    let tight = planned(&text(75, ""));
    says(caution(&tight, "would-clear").unwrap(), &["beyond the limit of 71 °C"]);
    within(figure(&tight, "/removal/outer_limit_c"), free, 0.1);
    // From 70.5 °C the next mark of a dial is 75 °C.
    says(&shown(&text(30, &(oven("70.5 °C", LONG) + AT_ONCE))), &["Set the dial to 71 °C."]);
    let job = job::check(&job_text(&text(60, "")), &Library::default()).unwrap();
    let oven = Library::default().medium("oven").unwrap();
    let ways = plan::options::options(&job, &[oven]).unwrap().remove(0).ways;
    let used: Vec<f64> = ways.iter().filter_map(|way| way.warm.as_ref()?.setting).map(in_celsius).collect();
    assert!(!used.is_empty() && used.iter().all(|setting| *setting <= free + 0.05), "{used:?} up to {free}");
}

/// Light alloy in iron shrinks more: 40 µm at 62 mm are used up 51.6 K below 20 °C.
#[test]
fn a_liner_that_shrinks_more_than_its_housing_comes_free_in_the_cold() {
    let text = |coldest: &str| {
        format!(
            "{}\nliner = {{ wall = \"5 mm\", material = $ALLOY, interference = \"40 um\" }}\n[service]\n\
             coldest = \"{coldest} °C\"\nhottest = \"60 °C\"\n",
            exact("6205", 30, 90, "$IRON")
        )
    };
    let cold = planned(&text("-40"));
    within(figure(&cold, "/liner/free_below_c"), 20.0 - 40e-3 / (62.0 * 12.5e-6), 0.1);
    assert!(cold["seats"][0]["liner"]["free_from_c"].is_null());
    says(caution(&cold, "liner-comes-free").unwrap(), &["-31 °C downwards", "-40 °C"]);
    assert!(caution(&planned(&text("-30")), "liner-comes-free").is_none());
    // Iron in light alloy the other way round: the hottest state counts, whatever the coldest is.
    let iron = |hottest: &str| {
        text("-40")
            .replace("$IRON", "$SEAT")
            .replace("$ALLOY", "$IRON")
            .replace("$SEAT", "$ALLOY")
            .replace("60 °C", hottest)
    };
    let hot = planned(&iron("90 °C"));
    says(caution(&hot, "liner-comes-free").unwrap(), &["71 °C upwards", "90 °C"]);
    assert!(caution(&planned(&iron("65 °C")), "liner-comes-free").is_none());
}

/// Lamé by hand, 52/62/90 mm: a fit of 280 µm alone presses iron and alloy with about 75 MPa on one another and pulls the alloy
/// with `q (90² + 62²)/(90² - 62²)`; equivalent stress and strength of 160 MPa give the factor.
#[test]
fn a_liner_and_its_housing_are_held_against_their_strength_without_the_ring_and_in_service() {
    let liner = |interference: &str, more: &str| {
        planned(&lined(&format!("{{ wall = \"5 mm\", material = $IRON, interference = \"{interference}\" }}"), more))
    };
    let gives = |modulus: f64, poisson: f64, (a, b): (f64, f64), inner: bool| {
        let ratio = (b * b + a * a) / (b * b - a * a);
        62.0 * if inner { ratio - poisson } else { ratio + poisson } / modulus
    };
    let pressure = |um: f64| {
        let compliance = gives(110e3, 0.26, (52.0, 62.0), true) + gives(70e3, 0.33, (62.0, 90.0), false);
        um * 1e-3 / compliance
    };
    let factor = |pressure: f64| {
        let hoop = pressure * (90.0_f64.powi(2) + 62.0_f64.powi(2)) / (90.0_f64.powi(2) - 62.0_f64.powi(2));
        160.0 / (hoop * hoop + hoop * pressure + pressure * pressure).sqrt()
    };
    let passed = liner("280 um", "");
    let (least, alone) = (figure(&passed, "/liner/housing_factor"), factor(pressure(280.0)));
    // With the ring it is less than of the liner's fit alone.
    assert!(least < 1.0 && least < alone, "{least} {alone}");
    let said = |plan: &Value, code: &str| {
        let cautions = plan["cautions"].as_array().unwrap().iter().filter(|caution| caution["code"] == code);
        cautions.map(|caution| caution["text"].as_str().unwrap().to_owned()).collect::<Vec<_>>().join(" ")
    };
    says(
        &said(&passed, "liner-overload"),
        &["The liner (case iron) passes", "The housing around the liner (case alloy) passes"],
    );
    assert_eq!(passed["verdict"], "do not");
    let light = liner("40 um", "");
    assert!(caution(&light, "liner-overload").is_none() && caution(&light, "liner-limit-near").is_none());
    // Without a ring to speak of: the fit of the liner alone.
    let bare = planned(&format!(
        "{}\nliner = {{ wall = \"5 mm\", material = $IRON, interference = \"100 um\" }}\n",
        exact("6205", 1, 90, "$ALLOY").replace("-1/-1 um", "+20/+20 um")
    ));
    within(figure(&bare, "/liner/housing_factor"), factor(pressure(100.0)), 2e-3);
    assert_eq!(bare["seats"][0]["liner"]["housing_factor_when"], "without the ring, at the temperature of the shop");
    // Cold, the alloy shrinks onto the iron: 62 mm · 12.5e-6 · 60 K are 46 µm more.
    let cold = planned(&format!(
        "{}\nliner = {{ wall = \"5 mm\", material = $IRON, interference = \"100 um\" }}\n[service]\ncoldest = \"-40 °C\"\n\
         hottest = \"40 °C\"\n",
        exact("6205", 1, 90, "$ALLOY").replace("-1/-1 um", "+60/+60 um")
    ));
    within(figure(&cold, "/liner/housing_factor"), factor(pressure(146.5)), 5e-3);
    assert_eq!(cold["seats"][0]["liner"]["housing_factor_when"], "without the ring, coldest in service");
}

/// A cast liner of a brittle metal is in compression while the housing shrinks onto it and pulls in the heat: its tension counts.
#[test]
fn the_strength_of_the_liner_itself_is_counted() {
    let liner = |hottest: &str| {
        let more = format!("[service]\ncoldest = \"20 °C\"\nhottest = \"{hottest} °C\"\n");
        planned(&lined("{ wall = \"5 mm\", material = $IRON }", &more))
    };
    let (warm, hot) = (liner("60"), liner("190"));
    let (mild, hard) = (figure(&warm, "/liner/liner_factor"), figure(&hot, "/liner/liner_factor"));
    assert!(hard < mild, "{hard} {mild}");
    assert_eq!(hot["seats"][0]["liner"]["liner_factor_when"], "without the ring, hottest in service");
}

/// Without `within` the interference counts as exact, which is said.
#[test]
fn an_interference_of_a_liner_without_limits_is_an_assumption() {
    let assumed = |within: &str| {
        let liner = format!("{{ wall = \"5 mm\", material = $IRON, interference = \"40 um\"{within} }}");
        let plan = planned(&lined(&liner, ""));
        plan["assumptions"].as_array().unwrap().iter().any(|entry| entry["what"] == "housing.liner.within")
    };
    assert!(assumed("") && !assumed(", within = \"5 um\""));
    says(
        &shown(&lined("{ wall = \"5 mm\", material = $IRON, interference = \"40 um\", within = \"5 um\" }", "")),
        &["pressed in with 35 µm to 45 µm"],
    );
}

#[test]
fn a_liner_that_is_none_is_refused_at_its_place() {
    let bad = [
        ("{ wall = \"25 mm\", material = $IRON }", "between a bore of 52 mm and a housing of 90 mm"),
        ("{ outside = \"52.2 mm\", material = $IRON }", "must lie from 53.040 to 88.960 mm"),
        ("{ outside = \"60 mm\", wall = \"4 mm\", material = $IRON }", "both `outside` and `wall`"),
        ("{ wall = \"5 mm\", material = $IRON, within = \"5 um\" }", "`within` needs `interference`"),
        ("{ wall = \"5 mm\", material = $IRON, interference = \"20 um\", within = \"30 um\" }", "must lie above 0 µm"),
        ("{ wall = \"5 mm\", material = $IRON, interference = \"900 um\" }", "up to 310 µm"),
        ("{ wall = \"5 mm\" }", "material"),
        ("{ wall = \"5 mm\", material = \"cheese\" }", "cheese"),
        ("{ wal = \"5 mm\", material = $IRON }", "did you mean `wall`"),
    ];
    for (liner, words) in bad {
        let message = refused(&lined(liner, ""));
        assert!(message.contains(words), "{liner}: {message}");
    }
}

#[test]
fn a_lined_bore_is_planned_and_drawn_in_its_section() {
    let text = job_text(&lined("{ wall = \"5 mm\", material = $IRON }", "length = \"22 mm\"\n"));
    let job = job::check(&text, &Library::default()).unwrap();
    let request = plan::drawing::SectionRequest {
        seat: None,
        moment: plan::drawing::Moment::Room,
        case: plan::drawing::SectionCase::Tightest,
    };
    let drawn = &plan::drawing::draw(&job, &request).unwrap()[0];
    assert_eq!(drawn.parts, ["outer ring", "liner", "housing"]);
    assert!(drawn.seam.as_ref().is_some_and(|seam| seam.bonded && seam.interference.value.abs() < 1e-12));
    within(figure(&planned(&text), "/liner/wall_mm"), 5.0, 1e-9);
    assert_eq!(planned(&text)["seats"][0]["press"]["shape"]["known"], "computed");
}
