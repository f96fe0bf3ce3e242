//! What a class works out by hand first.

use super::*;

/// Micrometres per metre that a library material, or one of the worked cases, changes between 20 °C and `celsius`.
fn growth(material: &str, celsius: f64) -> f64 {
    let material = Library::default().material(material).unwrap();
    1e6 * material.expansion().at(273.15 + celsius).unwrap()
}

#[test]
fn the_clearance_line_of_a_heated_case_passes_zero_at_45_degrees() {
    // 30 µm, 52 mm, light alloy, bearing at 20 °C. Clearing with no placing clearance is where the line passes zero.
    let text = exact("6205", 30, 90, "$ALLOY") + &oven("100 °C", "until = \"30 °C\"") + AT_ONCE;
    let plan = planned(&(text.clone() + "placing_clearance = \"0 um\"\n"));
    within(figure(&plan, "/clears_at/outer_c"), 45.0, 0.5);
    // One point either side of it.
    let at = |celsius: u32| {
        let text = text.replace("until = \"30 °C\"", &format!("until = \"{celsius} °C\""));
        figure(&planned(&text), "/at_bore/clearance_um/middle")
    };
    assert!(at(44) < 0.0 && at(46) > 0.0);
}

#[test]
fn a_rod_40_um_over_its_hole_must_be_cooled_by_111_k() {
    let text = r#"
        [bearing]
        kind = "solid plug"
        outside = "30 mm"
        width = "30 mm"
        outside_limits = "+40/+40 um"
        material = MATERIAL
        [housing]
        bore_limits = "0/0 um"
        material = "carbon-steel"
        [chill]
        part = "plug"
        medium = "dry-ice"
        until = "-60 °C"
        [bench]
        carry = "0 s"
        placing_clearance = "0 um"
    "#;
    let wide = STEEL.replace("coldest = \"-80 °C\"", "coldest = \"-150 °C\"");
    let plan = planned(&text.replace("MATERIAL", &wide));
    // 40 µm / (30 mm × 12.0 µm/(m·K)) = 111 K: from 20 °C to -91 °C. With the radius for the diameter it would be 222 K
    // or 56 K; 111 °F for 111 K would be 62 K.
    let cooled_by = 20.0 - figure(&plan, "/clears_at/inner_c");
    within(cooled_by, 111.0, 0.5);
    // Real steel contracts less and less as it gets colder, so the library's needs more cold: by about a tenth.
    let real = 20.0 - figure(&planned(&text.replace("MATERIAL", "\"carbon-steel\"")), "/clears_at/inner_c");
    assert!((115.0..130.0).contains(&real), "{real} K");
}

#[test]
fn a_100_mm_ring_grows_120_um_in_100_k_and_its_hole_grows_too() {
    // Worked: steel +120 µm, aluminium +230 µm per 100 mm and 100 K. The library's own curves, to 5 %.
    roughly(growth("carbon-steel", 120.0) * 0.1, 120.0);
    roughly(growth("aluminium-6061-t6", 120.0) * 0.1, 230.0);
    // The hole: a warmed bush on a shaft of its own size opens by as much as the ring grows.
    let plan = planned(
        r#"
        [bearing]
        kind = "plain bush"
        bore = "100 mm"
        outside = "140 mm"
        width = "40 mm"
        bore_limits = "0/0 um"
        material = "carbon-steel"
        [shaft]
        outside_limits = "0/0 um"
        material = "carbon-steel"
        [warm]
        part = "bush"
        medium = "oven"
        temperature = "150 °C"
        until = "120 °C"
        [bench]
        carry = "0 s"
    "#,
    );
    let opened = figure(&plan, "/at_bore/clearance_um/middle");
    within(opened, growth("carbon-steel", 120.0) * 0.1, 0.01);
}
