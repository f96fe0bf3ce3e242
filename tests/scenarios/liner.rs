//! A bore with a liner in it.

use super::*;

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
    assert!(caution(&hot, "liner-comes-free").is_some_and(|text| text.contains("71 °C")));
    let mild = planned(&lined(liner, &(oven("60 °C", LONG) + AT_ONCE)));
    assert!(caution(&mild, "liner-comes-free").is_none());
    // Beyond that the bore grows as the liner alone: 28.4 K of 10.5 µm/m after it came free.
    let cast = planned(&lined("{ wall = \"5 mm\", material = $IRON }", &(oven("100 °C", LONG) + AT_ONCE)));
    assert!(figure(&hot, "/at_bore/clearance_um/tightest") < figure(&cast, "/at_bore/clearance_um/tightest") - 2.0);
    says(&shown(&lined(liner, "")), &["pressed in with 40 µm to 40 µm", "it comes free from 71 °C"]);
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
fn a_lined_bore_is_planned_in_its_section_but_not_drawn() {
    let text = job_text(&lined("{ wall = \"5 mm\", material = $IRON }", "length = \"22 mm\"\n"));
    let job = job::check(&text, &Library::default()).unwrap();
    let request = plan::drawing::SectionRequest {
        seat: None,
        moment: plan::drawing::Moment::Room,
        case: plan::drawing::SectionCase::Tightest,
    };
    assert!(matches!(plan::drawing::draw(&job, &request), Err(plan::drawing::DrawingError::Lined)));
    within(figure(&planned(&text), "/liner/wall_mm"), 5.0, 1e-9);
    assert_eq!(planned(&text)["seats"][0]["press"]["shape"]["known"], "computed");
}
