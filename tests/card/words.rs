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
            let level = caution["level"].as_str().unwrap().to_uppercase();
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
    assert!(step("Push it home").contains("CAUTION housing seat: push on the outer ring only"));
    assert!(!step("Chill the bearing").contains("Hot metal"));
}

#[test]
fn a_job_that_must_not_be_done_has_a_reason_and_no_steps() {
    let job = std::fs::read_to_string("examples/pump-case.toml").unwrap();
    let text = card_of(&job.replace("temperature = \"80 °C\"", "temperature = \"187 °C\""));
    let page = Html::parse_document(&text);
    assert!(seen(all(&page, ".verdict")[0]).starts_with("DO NOT"));
    assert!(all(&page, ".steps").is_empty());
    assert!(seen(all(&page, ".signal")[0]).starts_with("DANGER"));
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
