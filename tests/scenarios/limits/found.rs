//! What a plan finds by searching, put back into the job: it does just what was wanted of it.

use super::{plane, ring};
use crate::{number, oven};
use serde_json::Value;

const CLEARANCE: &str = "/seats/0/at_bore/clearance_um/tightest";
const PLACING: &str = "/seats/0/at_bore/placing_clearance_um";

/// The clearance of the tightest case beyond the placing clearance, µm.
fn spare(plan: &Value) -> f64 {
    number(plan, CLEARANCE) - number(plan, PLACING)
}

fn chilled(hold: &str) -> String {
    format!("[chill]\npart = \"bush\"\nmedium = \"dry-ice-alcohol\"\nhold = \"{hold}\"\n")
}

fn carried(treatments: &str, seconds: f64) -> Value {
    let bench = format!("[bench]\ntemperature = \"22 °C\"\nhumidity = \"55 %\"\ncarry = \"{seconds:.4} s\"\n");
    plane(&ring("25", &format!("{treatments}{bench}")).replace("$ALLOY", "$IRON"))
}

#[test]
fn at_the_latest_start_the_tightest_case_has_just_the_placing_clearance() {
    for treatments in
        [chilled("10 min"), oven("120 °C", "hold = \"2 h\""), chilled("5 min") + &oven("80 °C", "hold = \"1 h\"")]
    {
        let planned = carried(&treatments, 5.0);
        let window = number(&planned, "/seats/0/window_s/tightest");
        let late = carried(&treatments, window);
        assert!(spare(&late).abs() < 0.01, "{} µm at {window} s of {treatments}", spare(&late));
        assert!(
            spare(&carried(&treatments, window - 1.0)) > 0.01 && spare(&carried(&treatments, window + 1.0)) < -0.01
        );
        // How long it is free in its seat when it comes at the last moment is that of the plan that comes then.
        let [at_latest, then] = ["/seats/0/grip_at_latest_s", "/seats/0/grip_s/tightest"].map(|it| it.to_owned());
        let (at_latest, then) = (number(&planned, &at_latest), number(&late, &then));
        assert!((at_latest - then).abs() < 0.02 * then + 0.05, "{at_latest} {then}");
    }
}

#[test]
fn the_shortest_hold_just_clears_and_the_temperatures_that_clear_do() {
    let planned = carried(&chilled("10 min"), 0.0);
    let shortest = number(&planned, "/seats/0/time_to_clear_s/tightest");
    let held = carried(&chilled(&format!("{shortest:.4} s")), 0.0);
    assert!(spare(&held).abs() < 0.05, "{} µm after {shortest} s", spare(&held));
    let share = number(&planned, "/seats/0/share_at_clear/tightest");
    assert!((number(&held, "/seats/0/chill/share_reached") - share).abs() < 1e-3, "{share}");
    // Either part alone at the temperature that is said to clear.
    let outer = number(&planned, "/seats/0/clears_at/outer_c");
    assert!(outer < 22.0, "the chilled part clears a housing colder than the shop");
    let pressed = carried("", 0.0);
    let (inner, outer) =
        (number(&pressed, "/seats/0/clears_at/inner_c"), number(&pressed, "/seats/0/clears_at/outer_c"));
    let warm = carried(&oven(&format!("{outer:.4} °C"), "hold = \"72 h\""), 0.0);
    assert!(spare(&warm).abs() < 0.05, "{} µm at {outer} °C", spare(&warm));
    let cold =
        carried(&format!("[chill]\npart = \"bush\"\nmedium = \"dry-ice-alcohol\"\nuntil = \"{inner:.4} °C\"\n"), 0.0);
    assert!(spare(&cold).abs() < 0.05, "{} µm at {inner} °C", spare(&cold));
}

#[test]
fn both_parts_at_the_temperature_that_frees_them_have_no_interference() {
    let stuck = plane(&(ring("25", &oven("120 °C", "hold = \"2 h\"")) + "[bench]\ncarry = \"0 s\"\n"));
    let frees = number(&stuck, "/seats/0/frees_at_c");
    let service = format!("[service]\ncoldest = \"0 °C\"\nhottest = \"{frees:.4} °C\"\n");
    let both = plane(&ring("25", &service));
    assert!(number(&both, "/seats/0/service/1/interference_um/tightest").abs() < 0.01, "{frees}");
    // Pulled out by warming the housing alone.
    let alone = number(&stuck, "/seats/0/removal/outer_alone_c");
    let service =
        format!("[service]\ncoldest = \"0 °C\"\nhottest = {{ part = \"20 °C\", housing = \"{alone:.4} °C\" }}\n");
    let warmed = plane(&ring("25", &service));
    assert!(number(&warmed, "/seats/0/service/1/interference_um/tightest").abs() < 0.01, "{alone}");
}

/// The next class that keeps the fit is the first that does: with it nothing is loose in service, with the one before it is.
#[test]
fn the_tighter_class_that_is_named_keeps_the_fit_and_the_one_before_does_not() {
    let fit = |class: &str| {
        let service = "[service]\ncoldest = \"0 °C\"\nhottest = \"60 °C\"\n";
        plane(
            &ring("25", service)
                .replace("\"0/0 um\"", "\"ISO 492 Normal\"")
                .replace("-25/-25 um", class)
                .replace("plain bush", "ball bearing")
                .replace("material = $STEEL", "closure = \"open\""),
        )
    };
    let least = |plan: &Value| {
        let ends = [0, 1].map(|i| number(plan, &format!("/seats/0/service/{i}/interference_um/loosest")));
        ends[0].min(ends[1])
    };
    let loose = fit("K7");
    let named = loose["seats"][0]["tighter"].clone();
    let class = named["class"].as_str().unwrap();
    let kept = fit(class);
    assert!((least(&kept) - named["least_um"].as_f64().unwrap()).abs() < 1e-3 && least(&kept) >= 0.0);
    assert!((number(&kept, "/seats/0/fit/interference_um/tightest") - named["most_um"].as_f64().unwrap()).abs() < 1e-3);
    assert!(kept["seats"][0]["tighter"].is_null());
    let letters = ["K", "M", "N", "P", "R", "S", "T", "U"];
    let before = letters.iter().position(|letter| *letter == &class[..1]).unwrap() - 1;
    assert!(least(&fit(&format!("{}7", letters[before]))) < 0.0, "{class}");
}
