//! What stands on a card: the verdict, steps, cautions at their steps, hold points, blanks, sources.

use crate::{all, binary, card, card_of, plain, seen, seen_of_page};
use scraper::Html;
use serde_json::Value;

fn json(job: &str) -> Value {
    serde_json::from_str(&binary::done(&["plan", job, "--format", "json"])).unwrap()
}

#[test]
fn the_verdict_stands_in_the_same_words_as_in_the_plan() {
    for job in ["examples/pump-case.toml", "examples/fan-shaft.toml", "examples/core-plug.toml"] {
        let text = card(job, &[]);
        let page = Html::parse_document(&text);
        let verdict = seen(all(&page, ".verdict")[0]);
        let plan = plain(&binary::done(&["plan", job]));
        assert!(plan.contains(&verdict), "{job}: {verdict}");
    }
}

#[test]
fn every_caution_of_the_plan_stands_on_the_card_with_its_signal_word() {
    for job in
        ["examples/pump-case.toml", "examples/gear-cover.toml", "examples/fan-shaft.toml", "examples/trailer-hub.toml"]
    {
        let text = card(job, &[]);
        let page = Html::parse_document(&text);
        let shown: Vec<String> = all(&page, ".signal").into_iter().map(seen).collect();
        let plan = json(job);
        let cautions = plan["cautions"].as_array().unwrap();
        assert_eq!(shown.len(), cautions.len(), "{job}: each once");
        for caution in cautions {
            let level = caution["signal"].as_str().unwrap().to_uppercase();
            let wanted = format!("{level} {}", plain(caution["text"].as_str().unwrap()));
            assert!(shown.contains(&wanted), "{job}: {wanted}");
        }
    }
}

#[test]
fn a_caution_stands_at_the_step_where_it_applies() {
    let text = card("examples/pump-case.toml", &[]);
    let page = Html::parse_document(&text);
    let steps: Vec<String> = all(&page, ".steps > li").into_iter().map(seen).collect();
    let step = |opening: &str| steps.iter().find(|step| step.contains(opening)).unwrap();
    assert!(step("Warm the housing").contains("WARNING Hot metal looks like cold metal"));
    assert!(step("Push it home").contains("NOTICE Push on the outer ring only"));
    assert!(!step("Chill the bearing").contains("Hot metal"));
}

#[test]
fn a_job_that_must_not_be_done_has_a_reason_and_no_steps() {
    let job = std::fs::read_to_string("examples/pump-case.toml").unwrap();
    let text = card_of(&job.replace("temperature = \"80 °C\"", "temperature = \"187 °C\""));
    let page = Html::parse_document(&text);
    assert!(seen(all(&page, ".verdict")[0]).starts_with("DO NOT"));
    assert!(all(&page, ".steps").is_empty());
    let whole = seen_of_page(&text);
    assert!(whole.contains("There are no steps") && !whole.contains("Done name"), "nothing is signed as done");
    // The reason stands first; it harms the seals and nobody, so that the word is not that of a danger to people.
    assert!(
        seen(all(&page, ".signal")[0])
            .starts_with("NOTICE The bearing (elastomer seals) in the warm housing would reach")
    );
}

#[test]
fn hold_points_have_a_box_and_initials_and_readings_have_their_limits() {
    let text = card("examples/pump-case.toml", &[]);
    let page = Html::parse_document(&text);
    let holds = all(&page, ".hold");
    assert_eq!(holds.len(), 3);
    assert!(holds.iter().all(|hold| hold.html().contains("initials") && hold.html().contains("tick")));
    let blanks: Vec<String> = all(&page, ".blanks li").into_iter().map(seen).collect();
    for wanted in [
        "outer ring at 20 °C 61.987 mm to 62.000 mm",
        "housing bore at 20 °C 61.961 mm to 61.991 mm",
        "from medium to seat less than 7 min 02 s",
        "highest torque never above 33.5 N·m",
    ] {
        assert!(blanks.iter().any(|blank| blank == wanted), "{wanted}: {blanks:?}");
    }
}

/// A card's steps, each as it is read.
fn steps(text: &str) -> Vec<String> {
    all(&Html::parse_document(text), ".steps > li").into_iter().map(seen).collect()
}

#[test]
fn what_can_fly_or_crush_stands_where_the_seal_and_the_ring_go_in_and_depths_have_blanks() {
    let steps = steps(&card("examples/conveyor-drive.toml", &[]));
    let step = |opening: &str| steps.iter().find(|step| step.contains(opening)).unwrap();
    assert!(step("Press it in square and in one go").contains("WARNING Pressing the seal"));
    assert!(!step("Push it home").contains("Pressing the seal"));
    assert!(step("Put the ring in with its sharp edge").contains("WARNING A retaining ring flies"));
    let seated = step("to the outer edge of the case at four places");
    assert!(["depth 1", "depth 4 -0.200 mm to 0.200 mm"].iter().all(|blank| seated.contains(blank)), "{seated}");
    let stacked = step("Before anything goes in");
    let place = |opening: &str| steps.iter().position(|step| step.contains(opening)).unwrap();
    assert!(place("Before anything goes in") < place("Push it home"), "it can be measured only then");
    assert!(place("Push it home") < place("After pressing"));
    assert!(stacked.contains("DIN 472 62x2 1.930 mm to 2.000 mm"), "{stacked}");
}

#[test]
fn spacer_and_shoulders_are_measured_before_a_bearing_is_driven_in() {
    let steps = steps(&card("examples/trailer-hub.toml", &[]));
    let place = |opening: &str| steps.iter().position(|step| step.contains(opening)).unwrap();
    let first = &steps[place("Measure the spacer")];
    assert!(first.contains("spacer 62.080 mm to 62.120 mm") && first.contains("between shoulders"), "{first}");
    assert!(
        place("Measure the spacer") < place("Press it") && place("Press it") < place("drive the first bearing home")
    );
}

#[test]
fn an_uneven_wall_is_told_of_where_it_warms() {
    let steps = steps(&card("examples/gear-cover.toml", &[]));
    let warms = steps.iter().find(|step| step.contains("Warm the housing")).unwrap();
    assert!(warms.contains("turn the piece in the oven"), "{warms}");
}

#[test]
fn the_safety_triangle_stands_where_someone_can_be_hurt_and_nowhere_else() {
    let text = card("examples/conveyor-drive.toml", &[]);
    let page = Html::parse_document(&text);
    let mut alerts = 0;
    for caution in all(&page, ".signal") {
        let words = seen(caution);
        let people = ["Hot metal", "Pressing the seal", "retaining ring flies"].iter().any(|what| words.contains(what));
        assert_eq!(caution.html().contains("<svg"), people, "{words}");
        alerts += usize::from(people);
    }
    assert_eq!(alerts, 3);
}

#[test]
fn a_press_is_stopped_at_what_it_gives_where_that_is_less_than_is_needed() {
    let text = card("examples/core-plug.toml", &[]);
    let page = Html::parse_document(&text);
    let push = steps(&text).into_iter().find(|step| step.contains("Press it into the housing")).unwrap();
    assert!(
        push.contains("expect up to 68 kN, more than the press gives. If it stands still at 20 kN, take it out again."),
        "{push}"
    );
    let blanks: Vec<String> = all(&page, ".blanks li").into_iter().map(seen).collect();
    assert!(blanks.contains(&"highest force stop at 20 kN".to_owned()), "{blanks:?}");
    assert!(!push.contains("rings"), "a plug has none: {push}");
}

#[test]
fn a_hold_point_speaks_of_what_is_treated() {
    let holds = |job: &str| -> Vec<String> {
        all(&Html::parse_document(&card(job, &[])), ".hold").into_iter().map(seen).collect()
    };
    let one = holds("examples/fan-shaft.toml");
    assert!(one.iter().any(|hold| hold.contains("the inner ring bore is as warm as planned")), "{one:?}");
    let both = holds("examples/pump-case.toml");
    assert!(both.iter().any(|hold| hold.contains("the temperatures above were reached")), "{both:?}");
}

/// A ring so large that it stays clear for more than an hour in the air of the shop: plots once had no place for that moment.
#[test]
fn a_window_of_hours_has_its_place_in_the_picture() {
    let text = card_of(
        "[bearing]\nkind = \"roller bearing\"\nbore = \"500 mm\"\noutside = \"720 mm\"\nwidth = \"167 mm\"\nclosure = \"open\"\n\
         [shaft]\noutside_limits = \"r6\"\nmaterial = \"carbon-steel\"\n\
         [warm]\npart = \"bearing\"\nmedium = \"oil-bath\"\ntemperature = \"110 °C\"\nuntil = \"settled\"\n",
    );
    let page = Html::parse_document(&text);
    let pictures: Vec<String> = all(&page, ".picture svg").into_iter().map(seen).collect();
    assert!(pictures.iter().any(|picture| picture.contains("all clear until 62 min")), "{pictures:?}");
}

#[test]
fn the_seat_is_drawn_to_scale_with_its_fit_magnified_and_says_so() {
    let text = card("examples/conveyor-drive.toml", &[]);
    let page = Html::parse_document(&text);
    let drawing = seen(all(&page, ".picture svg")[0]);
    for wanted in ["housing", "outer ring", "balls", "inner ring", "retaining ring", "shaft seal", "30 µm interference"]
    {
        assert!(drawing.contains(wanted), "{wanted}: {drawing}");
    }
    assert!(drawing.contains("To scale; the fit at 20 °C is drawn"), "{drawing}");
}

#[test]
fn two_treated_parts_are_held_to_the_plan_and_one_alone_to_what_clears() {
    let both = seen_of_page(&card("examples/pump-case.toml", &[]));
    assert!(both.contains("planned 77 °C") && both.contains("planned -17 °C"));
    let one = seen_of_page(&card("examples/gear-cover.toml", &[]));
    assert!(one.contains("67 °C or more at the seat"));
}

#[test]
fn the_date_is_that_of_the_flag_or_the_job_and_else_a_blank() {
    let date = |flags: &[&str], job: &str| {
        let run = binary::run(&[&["card", "-"], flags].concat(), job);
        let page = Html::parse_document(&run.out);
        seen(all(&page, ".block div")[2])
    };
    let job = "title = \"Seal\"\n[seal]\nsize = \"35x52x7\"\nlip = \"NBR\"\n";
    let dated = format!("date = \"2026-01-05\"\n{job}");
    assert_eq!(date(&[], job), "date");
    assert_eq!(date(&[], &dated), "date 2026-01-05");
    assert_eq!(date(&["--date", "2026-03-02"], &dated), "date 2026-03-02");
}

#[test]
fn a_value_without_a_source_is_flagged_and_one_with_a_source_is_not() {
    let own = |source: &str| {
        format!(
            "[bearing]\nkind = \"plain bush\"\nbore = \"40 mm\"\noutside = \"50 mm\"\nwidth = \"40 mm\"\n\
             outside_limits = \"s6\"\nmaterial = \"bronze\"\n[housing]\nbore_limits = \"H7\"\noutside = \"90 mm\"\n\
             material = {{ name = \"own iron\", family = \"steel\", density = \"7200 kg/m3\", modulus = \"110 GPa\", \
             poisson = \"0.26\", strength = \"200 MPa\", expansion = \"10.5e-6 /K\", heat_capacity = \"460 J/kgK\", \
             conductivity = \"50 W/mK\"{source} }}\n"
        )
    };
    let flagged = |text: &str| all(&Html::parse_document(text), ".flag").len();
    assert!(flagged(&card_of(&own(""))) > 1, "a count, and a flag at each value");
    assert_eq!(flagged(&card_of(&own(", source = \"works standard 12\""))), 0);
}

#[test]
fn a_temperature_between_two_marks_is_set_to_the_hotter_one_within_the_limit() {
    let job = std::fs::read_to_string("examples/pump-case.toml").unwrap();
    for (asked, said) in [("67.3 °C", "Set the dial to 70 °C."), ("79.6 °C", "Set the dial to 80 °C."), ("75 °C", "")]
    {
        let text =
            seen_of_page(&card_of(&job.replace("temperature = \"80 °C\"", &format!("temperature = \"{asked}\""))));
        assert_eq!(text.contains("Set the dial"), !said.is_empty(), "{asked}");
        assert!(text.contains(said), "{asked}: {said}");
    }
}
