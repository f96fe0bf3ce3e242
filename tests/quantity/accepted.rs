//! Accepted spellings, their values and their families of units.

use super::si;
use crate::checked::prove;
use seatwise::quantity as q;
use seatwise::quantity::{Nanometres, System};
use uom::si::length::meter;

const METRIC: Option<System> = Some(System::Metric);
const INCH: Option<System> = Some(System::Inch);

fn assert_reads(kind: &str, rows: &[(&str, f64, Option<System>)]) {
    for &(text, want, system) in rows {
        let got = si(kind, text).unwrap_or_else(|e| panic!("{kind} {text:?}: {e}"));
        let close = (got.value - want).abs() <= 1e-12 * want.abs();
        assert!(close, "{kind} {text:?}: got {}, want {want}", got.value);
        assert_eq!(got.system, system, "{kind} {text:?}");
    }
}

#[test]
fn lengths_are_read_in_every_spelling_of_a_shop() {
    let rows = [
        ("62 mm", 0.062, METRIC),
        ("62mm", 0.062, METRIC),
        ("  +62 MM ", 0.062, METRIC),
        ("62\u{a0}mm", 0.062, METRIC),
        ("62\u{202f}mm", 0.062, METRIC),
        ("Ø62 mm", 0.062, METRIC),
        ("⌀ 62 mm", 0.062, METRIC),
        ("6.2 cm", 0.062, METRIC),
        ("0.062 m", 0.062, METRIC),
        ("1e3 mm", 1.0, METRIC),
        ("6.2E-2 m", 0.062, METRIC),
        ("25 um", 25e-6, METRIC),
        ("25um", 25e-6, METRIC),
        ("25 \u{b5}m", 25e-6, METRIC),
        ("25 \u{3bc}m", 25e-6, METRIC),
        ("25 microns", 25e-6, METRIC),
        ("1 micron", 1e-6, METRIC),
        ("3 hundredths of a mm", 30e-6, METRIC),
        ("3 hundredths mm", 30e-6, METRIC),
        ("3 thou of a mm", 3e-6, METRIC),
        ("2.4409 in", 0.061_998_86, INCH),
        ("2.4409in.", 0.061_998_86, INCH),
        ("2.4409 inches", 0.061_998_86, INCH),
        ("1 inch", 0.0254, INCH),
        ("2.4409\"", 0.061_998_86, INCH),
        ("2.4409″", 0.061_998_86, INCH),
        (".5 in", 0.0127, INCH),
        ("2. in", 0.0508, INCH),
        ("1.2 thou", 30.48e-6, INCH),
        ("1 thousandth", 25.4e-6, INCH),
        ("2 thousandths of an inch", 50.8e-6, INCH),
        ("3 tenths of a thou", 7.62e-6, INCH),
        ("3 tenths of a thousandth", 7.62e-6, INCH),
        ("63 uin", 1.6002e-6, INCH),
        ("63 µin", 1.6002e-6, INCH),
        ("63 microinch", 1.6002e-6, INCH),
        ("5 ft", 1.524, INCH),
        ("5 ft 3 in", 1.6002, INCH),
        ("5' 3\"", 1.6002, INCH),
        ("0 mm", 0.0, METRIC),
    ];
    assert_reads("length", &rows);
}

#[test]
fn fractions_of_an_inch_are_read_with_hyphen_space_or_printed_sign() {
    let rows = [
        ("7/8 in", 0.022_225, INCH),
        ("1-1/8 in", 0.028_575, INCH),
        ("1 1/8 in", 0.028_575, INCH),
        ("1 1/8\"", 0.028_575, INCH),
        ("2-7/16\"", 0.061_912_5, INCH),
        ("1⅛ in", 0.028_575, INCH),
        ("½ in", 0.0127, INCH),
        ("1-1/64in", 0.025_796_875, INCH),
    ];
    assert_reads("length", &rows);
}

#[test]
fn decimal_commas_and_thousands_are_told_apart() {
    let rows = [
        ("62,5 mm", 0.0625, METRIC),
        ("62.000 mm", 0.062, METRIC),
        ("61.994 mm", 0.061_994, METRIC),
        ("61,994 mm", 0.061_994, METRIC),
        ("0,012 mm", 12e-6, METRIC),
        ("1,234.5 mm", 1.2345, METRIC),
        ("1.234,5 mm", 1.2345, METRIC),
        ("2,4409 in", 0.061_998_86, INCH),
        ("1234.5 mm", 1.2345, METRIC),
        ("1,234,567 um", 1.234_567, METRIC),
    ];
    assert_reads("length", &rows);
    assert_reads("deviation", &[("1,234 mm", 1.234e-3, METRIC), ("-0,5 thou", -12.7e-6, INCH)]);
    assert_reads("number", &[("0,12", 0.12, None), ("0,125", 0.125, None)]);
}

#[test]
fn deviations_keep_every_form_of_minus() {
    let rows = [
        ("-13 um", -13e-6, METRIC),
        ("\u{2212}13 um", -13e-6, METRIC),
        ("\u{2013}13 um", -13e-6, METRIC),
        ("- 13 um", -13e-6, METRIC),
        ("+8 µm", 8e-6, METRIC),
        ("8 µm", 8e-6, METRIC),
        ("-0.5 thou", -12.7e-6, INCH),
        ("+0.0005 in", 12.7e-6, INCH),
    ];
    assert_reads("deviation", &rows);
}

#[test]
fn temperatures_and_differences_are_different_things() {
    let rows = [
        ("-18 °C", 255.15, METRIC),
        ("\u{2212}18°C", 255.15, METRIC),
        ("90 C", 363.15, METRIC),
        ("90 degC", 363.15, METRIC),
        ("90 deg C", 363.15, METRIC),
        ("90 ℃", 363.15, METRIC),
        ("0 °F", 459.67 / 1.8, INCH),
        ("0 F", 459.67 / 1.8, INCH),
        ("68 degF", 293.15, INCH),
        ("-300 °F", 159.67 / 1.8, INCH),
        ("77 K", 77.0, None),
        ("-273.15 °C", 0.0, METRIC),
        ("-459.67 °F", 0.0, INCH),
        ("0 K", 0.0, None),
    ];
    assert_reads("temperature", &rows);
    // the blunder to catch: 1 °F as a difference is 5/9 K, as a temperature 255.9 K
    let rows = [("1 °F", 5.0 / 9.0, INCH), ("9 F", 5.0, INCH), ("20 C", 20.0, METRIC), ("-38 K", -38.0, None)];
    assert_reads("step", &rows);
}

#[test]
fn times_are_read_alone_and_together() {
    let rows = [
        ("8 s", 8.0, None),
        ("8sec", 8.0, None),
        ("30 min", 1800.0, None),
        ("0.5 h", 1800.0, None),
        ("½ h", 1800.0, None),
        ("2 hours", 7200.0, None),
        ("1 h 30 min", 5400.0, None),
        ("1h30min", 5400.0, None),
        ("2 min 05 s", 125.0, None),
        ("1 h 2 min 3 s", 3723.0, None),
    ];
    assert_reads("duration", &rows);
}

#[test]
fn the_other_quantities_are_read_in_their_units() {
    assert_reads("mass", &[("0.20 kg", 0.2, METRIC), ("200 g", 0.2, METRIC), ("1 lb", 0.453_592_37, INCH)]);
    assert_reads("mass", &[("16 oz", 0.453_592_37, INCH), ("3 lb 8 oz", 1.587_573_295, INCH)]);
    let stress = [("210 MPa", 210e6, METRIC), ("210 N/mm²", 210e6, METRIC), ("210 N/mm2", 210e6, METRIC)];
    assert_reads("pressure", &stress);
    assert_reads("pressure", &[("206 GPa", 206e9, METRIC), ("7 bar", 7e5, METRIC), ("101 kPa", 101e3, METRIC)]);
    assert_reads("force", &[("4.4 kN", 4400.0, METRIC), ("990 N", 990.0, METRIC), ("2 kip", 8_896.443_230_521, INCH)]);
    assert_reads("force", &[("2 short ton-force", 17_792.886_461_042, INCH), ("0 lbf", 0.0, INCH)]);
    let wanted = 120.0 * 0.112_984_829_027_617;
    for unit in ["in·lb", "in-lb", "in.lb", "inlb", "in·lbf", "in lbs", "lb-in", "IN-LB", "inch pounds"] {
        assert_reads("torque", &[(&format!("120 {unit}"), wanted, INCH)]);
    }
    for unit in ["ft·lb", "ft-lb", "ft.lb", "ftlb", "ft·lbf", "lbf·ft"] {
        assert_reads("torque", &[(&format!("120 {unit}"), 12.0 * wanted, INCH)]);
    }
    for unit in ["N·m", "N.m", "Nm", "N m", "N-m", "nm"] {
        assert_reads("torque", &[(&format!("13.6 {unit}"), 13.6, METRIC)]);
    }
    assert_reads("power", &[("1.5 kW", 1500.0, None), ("60 W", 60.0, None)]);
    for unit in ["W/m²K", "W/(m²·K)", "W/m2K", "W/m2/K", "W/m^2-K", "W/(m2 K)", "W/m²°C"] {
        assert_reads("film", &[(&format!("12 {unit}"), 12.0, METRIC)]);
    }
    assert_reads("share", &[("55 %", 0.55, None), ("55%", 0.55, None), ("70 % RH", 0.7, None)]);
    assert_reads("number", &[("0.12", 0.12, None), (" 3 ", 3.0, None), ("-1e-3", -0.001, None)]);
}

#[test]
fn british_heat_units_agree_with_the_handbook() {
    // NIST SP 811 (2008), appendix B, IT Btu: 5.678263 W/(m²·K) and 0.2930711 W (from memory); half a last digit
    for unit in ["Btu/h·ft²·°F", "Btu/(h·ft²·°F)", "BTU/hr-ft2-F", "btu/h/ft2/°F"] {
        let film = si("film", &format!("1 {unit}")).unwrap();
        assert!((film.value - 5.678_263).abs() <= 0.5e-6, "{unit}: {}", film.value);
        assert_eq!(film.system, INCH);
    }
    assert!((si("power", "1 Btu/h").unwrap().value - 0.293_071_1).abs() <= 0.5e-7);
}

#[test]
fn factors_agree_with_figures_worked_out_apart() {
    assert_eq!(prove("Factors between units").len(), 19);
}

#[test]
fn roughness_keeps_its_parameter() {
    let read = |text: &str| q::roughness(text).unwrap().value;
    let um = |height: q::Length| height.get::<meter>() * 1e6;
    assert!(matches!(read("Ra 1.6 um"), q::Roughness::Ra(h) if (um(h) - 1.6).abs() < 1e-12));
    assert!(matches!(read("rz6,3 µm"), q::Roughness::Rz(h) if (um(h) - 6.3).abs() < 1e-12));
    assert!(matches!(read("Ra 63 uin"), q::Roughness::Ra(h) if (um(h) - 1.6002).abs() < 1e-12));
    assert_eq!(q::roughness("Ra 63 uin").unwrap().system, INCH);
}

#[test]
fn limits_are_read_in_either_order_to_the_nanometre() {
    let rows = [
        ("-13/0 um", -13_000, 0),
        ("0/-13 um", -13_000, 0),
        ("-13 um / 0", -13_000, 0),
        ("-13 um/0 um", -13_000, 0),
        ("-21/-51 um", -51_000, -21_000),
        ("\u{2212}21 \u{2212}51 µm", -51_000, -21_000),
        ("+0.012/-0.018 mm", -18_000, 12_000),
        ("+0,012/-0,018 mm", -18_000, 12_000),
        ("-0.5/0 thou", -12_700, 0),
        ("0/-0.0005 in", -12_700, 0),
        ("+0.3/-0.2 thou", -5_080, 7_620),
        ("±15 um", -15_000, 15_000),
        ("± 15um", -15_000, 15_000),
        ("+-15 um", -15_000, 15_000),
        ("+/-15 um", -15_000, 15_000),
        ("±0.0005 in", -12_700, 12_700),
    ];
    for (text, lower, upper) in rows {
        let got = q::limits(text).unwrap_or_else(|e| panic!("{text:?}: {e}")).value;
        assert_eq!((got.lower, got.upper), (Nanometres(lower), Nanometres(upper)), "{text:?}");
    }
    assert_eq!(q::limits("-0.5/0 thou").unwrap().system, INCH);
}

#[test]
fn sizes_are_read_with_their_limits() {
    let rows = [
        ("62 mm -13/0 um", 62_000_000, -13_000, 0),
        ("62 mm 0/-13 um", 62_000_000, -13_000, 0),
        ("62mm ±15um", 62_000_000, -15_000, 15_000),
        ("Ø62 ±0.015 mm", 62_000_000, -15_000, 15_000),
        ("62 +0.012/-0.018 mm", 62_000_000, -18_000, 12_000),
        ("2.4409 in -0.5/0 thou", 61_998_860, -12_700, 0),
        ("1-1/8 in -0.5/0 thou", 28_575_000, -12_700, 0),
        ("2-7/16\" +/-0.0005\"", 61_912_500, -12_700, 12_700),
    ];
    for (text, nominal, lower, upper) in rows {
        let got = q::sized_limits(text).unwrap_or_else(|e| panic!("{text:?}: {e}")).value;
        assert_eq!(got.nominal, Nanometres(nominal), "{text:?}");
        assert_eq!((got.deviations.lower, got.deviations.upper), (Nanometres(lower), Nanometres(upper)), "{text:?}");
    }
}
