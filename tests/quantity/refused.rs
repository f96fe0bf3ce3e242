//! Refused texts: what the message says, and which bytes it underlines.

use super::si;
use proptest::prelude::*;

/// Kind, text, words of the problem, words of the help, and the underlined text.
type Refusal = (&'static str, &'static str, &'static [&'static str], &'static [&'static str], &'static str);

const REFUSED: &[Refusal] = &[
    ("length", "", &["nothing is written", "a length"], &["mm", "thou", "62 mm"], ""),
    ("length", "  ", &["nothing is written"], &["62 mm"], ""),
    ("length", "62", &["`62` has no unit"], &["mm", "in", "62 mm or 2.4409 in"], "62"),
    ("length", "mm", &["`mm` does not begin with a number"], &["62 mm"], "mm"),
    ("length", "1 mil", &["`1 mil`", "1 thou", "1 mm"], &["`thou`", "`mm`"], "mil"),
    ("length", "3 tenths", &["0.3 mm", "0.0003 in"], &["tenths of a mm", "tenths of a thou"], "tenths"),
    ("length", "1 tenth", &["0.1 mm", "0.0001 in"], &["tenths of a mm"], "tenth"),
    ("length", "3 hundredths", &["0.03 mm", "0.03 in"], &["hundredths of a mm"], "hundredths"),
    ("length", "62 kg", &["`kg` is a unit of mass", "a length"], &["mm", "in"], "kg"),
    ("length", "Ø62 kg", &["unit of mass"], &["mm"], "kg"),
    (
        "length",
        "62 milimetres",
        &["`milimetres` is not a unit of length"],
        &["did you mean millimetres?"],
        "milimetres",
    ),
    ("length", "5 hundreths", &["0.05 mm", "0.05 in"], &["hundredths of a mm"], "hundreths"),
    ("temperature", "20 °C ±1 °C", &["`±1 °C` follows"], &["one value"], "±1 °C"),
    ("pressure", "20-25 MPa", &["`-25 MPa` follows"], &["one value"], "-25 MPa"),
    ("length", "62 furlongs", &["`furlongs`"], &["write a length in mm"], "furlongs"),
    ("length", "-62 mm", &["`-62 mm` is negative"], &["sign"], "-62 mm"),
    ("length", "62 mm 13 um", &["`13 um` follows"], &["one value"], "13 um"),
    ("length", "62 mm -13/0 um", &["`-13/0 um` follows"], &["one value"], "-13/0 um"),
    ("length", "2.4409 in -0.5 thou", &["`-0.5 thou` follows"], &["one value"], "-0.5 thou"),
    ("length", "20-25 mm", &["`-25 mm` follows"], &["one value"], "-25 mm"),
    ("length", "1,234 in", &["1.234 in", "1234 in"], &["point"], "1,234"),
    ("length", "1,234 mm", &["1.234 mm", "1234 mm"], &["point"], "1,234"),
    ("length", "12,34,5 mm", &["`12,34,5`", "do not make a number"], &["1234.5"], "12,34,5"),
    ("length", "7/8 mm", &["fraction of a metric unit"], &["decimals"], "7/8 mm"),
    ("length", "1-9/8 in", &["`1-9/8`"], &["1-1/8"], "1-9/8"),
    ("length", "1/0 in", &["`1/0`"], &["7/8"], "1/0"),
    ("length", "nan mm", &["`nan mm` is not a finite number"], &["62 mm"], "nan mm"),
    ("length", "-inf mm", &["not a finite number"], &["62 mm"], "-inf mm"),
    ("length", "1e308 mm", &["`e308`"], &["e12"], "e308"),
    ("length", "1e9 mm", &["outside 0 to 10 km"], &["unit"], "1e9 mm"),
    ("length", "62.0000000000000001 mm", &["more than 15 digits"], &["gauge"], "62.0000000000000001"),
    ("deviation", "1 m", &["-50 mm to 50 mm"], &["unit"], "1 m"),
    ("deviation", "12,345 um", &["12.345 µm", "12345 µm"], &["point"], "12,345"),
    ("temperature", "-300 °C", &["`-300 °C` is below absolute zero"], &["unit"], "-300 °C"),
    ("temperature", "-460 F", &["below absolute zero", "-459.67 °F"], &["unit"], "-460 F"),
    ("temperature", "90", &["has no unit"], &["°C, °F or K"], "90"),
    ("temperature", "90 deg", &["90 °C", "90 °F"], &["`°C` or `°F`"], "deg"),
    ("temperature", "20-25 °C", &["`-25 °C` follows"], &["one value"], "-25 °C"),
    ("temperature", "5000 °C", &["2000 °C"], &["unit"], "5000 °C"),
    ("step", "5 mm", &["unit of length", "a temperature difference"], &["5 K or 9 °F"], "mm"),
    ("duration", "1:30", &["1 h 30 min", "1 min 30 s"], &["units"], "1:30"),
    ("duration", "5 m", &["`m` is a unit of length"], &["did you mean min?"], "m"),
    ("duration", "1h30", &["`30` has no unit"], &["1 h 30 min"], "30"),
    ("duration", "-5 min", &["negative"], &["sign"], "-5 min"),
    ("duration", "30 min 1 h", &["`1 h` follows"], &["one value"], "1 h"),
    ("mass", "2 tons", &["4000 lb", "4480 lb", "2000 kg"], &["lb or kg"], "tons"),
    ("pressure", "5 mPa", &["`mPa`"], &["did you mean MPa?"], "mPa"),
    ("force", "12 ton", &["24000 lbf", "26880 lbf", "12000 kgf"], &["short ton-force", "metric ton-force"], "ton"),
    ("force", "12-ton", &["24000 lbf"], &["long ton-force"], "-ton"),
    ("force", "900 lb", &["`lb` is a unit of mass", "a force"], &["did you mean lbf?"], "lb"),
    ("force", "90 kg", &["unit of mass"], &["did you mean kgf?"], "kg"),
    ("force", "1,500 N", &["1.5 N", "1500 N"], &["point"], "1,500"),
    ("torque", "120 in", &["unit of length"], &["in·lb"], "in"),
    ("power", "2 hp", &["`hp` is not a unit of power"], &["kW"], "hp"),
    ("film", "12 W", &["unit of power"], &["W/(m²·K)"], "W"),
    ("share", "0.55", &["is 55 % meant?"], &["55 %", "0.55 %"], "0.55"),
    ("share", "55", &["is 55 % meant?"], &["write 55 %"], "55"),
    ("share", "120 %", &["0 % to 100 %"], &["unit"], "120 %"),
    ("roughness", "1.6 um", &["Ra or Rz"], &["Ra 1.6 um"], "1.6 um"),
    ("roughness", "RMS 1.6 um", &["does not begin with Ra or Rz"], &["Ra 1.6 um"], "RMS 1.6 um"),
    ("roughness", "Ra 1.6", &["`1.6` has no unit"], &["µm"], "1.6"),
    ("roughness", "Rz 2 mm", &["0 to 1 mm"], &["unit"], " 2 mm"),
    ("number", "0.12 mm", &["`mm` follows"], &["0.12"], "mm"),
    ("number", "1,234", &["1.234 or 1234"], &["point"], "1,234"),
    ("limits", "15 um", &["one limit", "two"], &["±15 um"], "15 um"),
    ("limits", "13/0 um", &["`13` has no sign"], &["+13 or -13"], "13"),
    ("limits", "-13/0", &["has no unit"], &["-13/0 um"], "0"),
    ("limits", "±-15 um", &["sign after the ±"], &["±15 um"], "±-15 um"),
    ("limits", "-13/0 kg", &["unit of mass"], &["um"], "kg"),
    ("limits", "-80/0 mm", &["`-80`", "-50 mm to 50 mm"], &["unit"], "-80"),
    ("limits", "-13/0/5 um", &["`/5 um` follows"], &["-13/0 um"], "/5 um"),
    ("limits", "", &["nothing is written"], &["±15 um"], ""),
    ("sized limits", "62 mm", &["nothing is written", "pair of limits"], &["-13/0 um"], ""),
    ("sized limits", "62 -13/0 um", &["size `62` has no unit"], &["62 mm -13/0 um"], "62"),
    ("sized limits", "62 kg -13/0 um", &["unit of mass"], &["62 mm"], "kg"),
    ("sized limits", "-62 mm -13/0 um", &["negative"], &["sign"], "-62 mm"),
];

#[test]
fn what_cannot_be_meant_is_refused_with_what_to_write() {
    for &(kind, text, problem, help, underlined) in REFUSED {
        let error = si(kind, text).expect_err(text);
        for words in problem {
            assert!(error.problem.contains(words), "{kind} {text:?}: {words:?} is not in {:?}", error.problem);
        }
        for words in help {
            assert!(error.help.contains(words), "{kind} {text:?}: {words:?} is not in {:?}", error.help);
        }
        let marked = text.get(error.at.clone()).unwrap_or_else(|| panic!("{kind} {text:?}: {:?}", error.at));
        assert_eq!(marked.trim(), underlined.trim(), "{kind} {text:?}");
        assert_eq!(error.to_string(), format!("{}\n  help: {}", error.problem, error.help));
    }
}

const KINDS: &[&str] = &[
    "length",
    "deviation",
    "temperature",
    "step",
    "duration",
    "mass",
    "pressure",
    "force",
    "torque",
    "power",
    "film",
    "share",
    "roughness",
    "number",
    "limits",
    "sized limits",
];

proptest! {
    #[test]
    fn no_text_breaks_a_reader(text in "[-+−±0-9.,/eE \u{a0}a-zµμ°²·%\"'ØK()½:]{0,14}") {
        for kind in KINDS {
            match si(kind, &text) {
                Ok(entered) => prop_assert!(entered.value.is_finite(), "{kind} {text:?}"),
                Err(error) => {
                    prop_assert!(text.get(error.at.clone()).is_some(), "{kind} {text:?} {:?}", error.at);
                    prop_assert!(!error.problem.is_empty() && !error.help.is_empty());
                }
            }
        }
    }
}
