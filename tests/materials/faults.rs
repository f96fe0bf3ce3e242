//! What a user's file with a slip in it is told.

use seatwise::stock::material::{Material, MaterialError, embedded_text};

/// A good file with one passage replaced; the passage must be there.
fn spoiled(from: &str, to: &str) -> String {
    let good = embedded_text("bearing-steel").unwrap();
    assert!(good.contains(from), "the file no longer has {from}");
    good.replacen(from, to, 1)
}

fn refused(text: &str) -> MaterialError {
    match Material::parse("my-steel", text) {
        Err(error) => error,
        Ok(_) => panic!("accepted:\n{text}"),
    }
}

/// Replaced passage, its replacement, words of the message, and what the span must underline.
const FAULTS: &[(&str, &str, &[&str], &str)] = &[
    ("kg_m3 = 7810", "kg_m3 = 7.81", &["density.kg_m3", "7.81", "between 500 and 23000"], "7.81"),
    ("kg_m3 = 7810", "kg_m3 = nan", &["density.kg_m3", "NaN"], "nan"),
    ("kg_m3 = 7810", "kg_m3 = inf", &["density.kg_m3", "inf"], "inf"),
    ("kg_m3 = 7810", "kg_m3 = \"7810\"", &["density", "text", "number without quotes"], "\"7810\""),
    ("kg_m3 = 7810", "g_cm3 = 7.81", &["density", "there is no `g_cm3`", "kg_m3"], "g_cm3"),
    ("kg_m3 = 7810\n", "", &["density", "`kg_m3` is missing"], "[density]"),
    ("gpa = 205", "gpa = 205000", &["elastic_modulus.gpa", "205000", "700"], "205000"),
    ("gpa = 205\n", "", &["elastic_modulus", "either `gpa` or `table_k_gpa`"], ""),
    ("value = 0.29", "value = 0.5", &["poisson_ratio.value", "0.5", "between 0 and 0.5"], "0.5"),
    ("value = 0.29", "value = 0", &["poisson_ratio.value"], "0"),
    ("kind = \"0.2 % proof\"", "kind = \"ultimate\"", &["strength", "ultimate", "0.2 % proof"], "\"ultimate\""),
    ("mpa = 2034", "mpa = -2034", &["strength.mpa", "-2034"], "-2034"),
    ("[293.15, 0], ", "", &["expansion", "[293.15, 0]", "20 °C"], "[\n"),
    ("[293.15, 0]", "[293.15, 3]", &["expansion", "[293.15, 0]"], "[\n"),
    ("[77, -1908]", "[77, -190]", &["expansion", "rise", "row 2"], "[90,"),
    ("[77, -1908]", "[97, -1908]", &["expansion", "row 2"], "[90,"),
    ("[77, -1908]", "[-196, -1908]", &["expansion", "-196", "4 to 1800 K"], "[-196,"),
    ("[77, -1908]", "[77, -1908, 1]", &["expansion", "not a pair"], "[77,"),
    ("table_k_um_m = [", "table_k_um_m = [] #", &["expansion"], ""),
    ("w_mk = 46.6", "w_mk = 46.6\ntable_k_w_mk = [[77, 40], [500, 40]]", &["conductivity", "either"], "46.6"),
    ("between_c = [-200, 200]\n", "", &["conductivity.w_mk", "between_c"], "46.6"),
    (
        "between_c = [-200, 200]",
        "between_c = [200, -200]",
        &["conductivity", "the first must be the lower"],
        "[200, -200]",
    ),
    ("between_c = [-200, 200]", "between_c = [-40, 200]", &["coldest.c", "conductivity", "-40.0"], "-196"),
    ("between_c = [-200, 200]", "between_c = [-200, 20, 200]", &["conductivity", "two temperatures"], "[-200,"),
    ("between_c = [-200, 200]", "between_c = [30, 200]", &["conductivity", "20 °C"], "[30, 200]"),
    ("low = 0.1", "low = 0.9", &["emissivity.high", "at least `emissivity.low`"], "0.4"),
    ("high = 0.4", "high = 1.4", &["emissivity.high", "1.4"], "1.4"),
    ("c = 150", "c = 900", &["hottest.c", "900.0 °C", "expansion"], "900"),
    ("c = -196", "c = 25", &["coldest.c", "below 20 °C"], "25"),
    ("c = -196", "c = -300", &["coldest.c", "-300"], "-300"),
    ("status = \"published text\"", "status = \"sure\"", &["density", "sure", "from memory"], "\"sure\""),
    ("status = \"published text\"\n", "", &["density", "`status` is missing"], "[density]"),
    ("source = \"SAE 52100 trade data sheet\"", "source = \" \"", &["density", "source is empty"], "\" \""),
    ("source = \"SAE 52100 trade data sheet\"\n", "", &["density", "`source` is missing"], "[density]"),
    ("family = \"steel\"", "family = \"metal\"", &["metal", "light alloy"], "\"metal\""),
    ("below_c = -80", "at_c = -80", &["caution", "at_c"], "at_c"),
    ("below_c = -80", "below_c = -80\nabove_c = 10", &["caution", "either `below_c` or `above_c`"], ""),
    ("[emissivity]", "[emisivity]", &["emisivity"], "emisivity"),
    ("about =", "about", &["my-steel"], ""),
];

#[test]
fn every_slip_is_named_with_its_value_its_range_and_its_place() {
    for (from, to, words, underlined) in FAULTS {
        let text = spoiled(from, to);
        let error = refused(&text);
        let said = error.to_string();
        assert!(said.contains("my-steel"), "{to}: {said}");
        for word in *words {
            assert!(said.contains(word), "{to}: \"{said}\" lacks \"{word}\"");
        }
        if !underlined.is_empty() {
            let span = error.span().unwrap_or_else(|| panic!("{to}: no place"));
            assert!(text[span.clone()].starts_with(underlined), "{to}: underlines {:?}", &text[span]);
        }
    }
}

/// The spoiled passages stand in a file that is good without them.
#[test]
fn the_file_is_accepted_as_it_is() {
    assert_eq!(Material::parse("my-steel", &spoiled("7810", "7810")).unwrap().id(), "my-steel");
}

#[test]
fn an_id_is_the_stem_of_a_file() {
    for id in ["", "My Steel", "stahl_1", "über"] {
        let said = Material::parse(id, embedded_text("bearing-steel").unwrap()).unwrap_err().to_string();
        assert!(said.contains("lower-case letters"), "{said}");
    }
}

#[test]
fn millimetres_in_the_expansion_table_are_noticed() {
    // 1e-6 strain written as nanometres per metre: a thousand times too large.
    let said = refused(&spoiled("[280, -151]", "[280, -29000]")).to_string();
    assert!(said.contains("expansion"), "{said}");
}
