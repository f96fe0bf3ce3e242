//! What a report prints is rounded once, to the side that was asked for, and can be read back.

use super::si;
use proptest::prelude::*;
use seatwise::quantity as q;
use seatwise::quantity::Toward::{Down, Nearest, Up};
use seatwise::quantity::{Deviations, Nanometres, System, Toward};
use uom::si::{
    force::newton, heat_transfer::watt_per_square_meter_kelvin, length::meter, mass::kilogram, power::watt,
    pressure::pascal, ratio::ratio, temperature_interval as step, thermodynamic_temperature as level, time::second,
    torque::newton_meter,
};

/// Prints an SI number as a quantity of `kind`.
fn show(kind: &str, si: f64, system: System, toward: Toward) -> String {
    match kind {
        "size" => q::show_size(q::Length::new::<meter>(si), system, toward),
        "small" => q::show_small_length(q::Length::new::<meter>(si), system, toward),
        "deviation" => q::show_deviation(q::Length::new::<meter>(si), system, toward),
        "Ra" => q::show_roughness(q::Roughness::Ra(q::Length::new::<meter>(si)), system, toward),
        "Rz" => q::show_roughness(q::Roughness::Rz(q::Length::new::<meter>(si)), system, toward),
        "temperature" => q::show_temperature(q::ThermodynamicTemperature::new::<level::kelvin>(si), system, 0, toward),
        "step" => q::show_temperature_step(q::TemperatureInterval::new::<step::kelvin>(si), system, toward),
        "duration" => q::show_duration(q::Time::new::<second>(si), toward),
        "force" => q::show_force(q::Force::new::<newton>(si), system, toward),
        "pressure" => q::show_pressure(q::Pressure::new::<pascal>(si), system, toward),
        "torque" => q::show_torque(q::Torque::new::<newton_meter>(si), system, toward),
        "mass" => q::show_mass(q::Mass::new::<kilogram>(si), system, toward),
        "film" => q::show_film_coefficient(q::HeatTransfer::new::<watt_per_square_meter_kelvin>(si), system, toward),
        "power" => q::show_power(q::Power::new::<watt>(si), system, toward),
        "share" => q::show_share(q::Ratio::new::<ratio>(si), toward),
        other => panic!("no writer for {other}"),
    }
}

/// Reads what a writer of `kind` printed, as an SI number.
fn read(kind: &str, text: &str) -> f64 {
    let reader = match kind {
        "size" => "length",
        "small" => "deviation",
        "Ra" | "Rz" => "roughness",
        same => same,
    };
    si(reader, text).unwrap_or_else(|e| panic!("{kind} {text:?}: {e}")).value
}

fn assert_shows(rows: &[(&str, f64, System, Toward, &str)]) {
    for &(kind, si, system, toward, want) in rows {
        assert_eq!(show(kind, si, system, toward), want, "{kind} {si} {system:?} {toward:?}");
    }
}

#[test]
fn metric_reports_are_in_shop_units() {
    let metric = [
        ("size", 0.062, Nearest, "62.000 mm"),
        ("size", 0.061_994_4, Nearest, "61.994 mm"),
        ("small", -13e-6, Nearest, "-13 µm"),
        ("small", 6.5e-6, Nearest, "6.5 µm"),
        ("small", 0.04e-6, Up, "0.1 µm"),
        ("small", -0.04e-6, Nearest, "0 µm"),
        ("deviation", 8e-6, Nearest, "+8 µm"),
        ("deviation", -8e-6, Nearest, "-8 µm"),
        ("deviation", 0.0, Nearest, "0 µm"),
        ("Ra", 1.6e-6, Nearest, "Ra 1.6 µm"),
        ("Rz", 6.3e-6, Nearest, "Rz 6.3 µm"),
        ("temperature", 363.15, Nearest, "90 °C"),
        ("temperature", 255.15, Up, "-18 °C"),
        ("temperature", 255.15, Down, "-18 °C"),
        ("temperature", 77.36, Down, "-196 °C"),
        ("step", 10.0, Nearest, "10 K"),
        ("step", 0.44, Up, "0.5 K"),
        ("step", -38.2, Down, "-39 K"),
        ("force", 4400.0, Up, "4.4 kN"),
        ("force", 4.4 * 1000.0 * 1.1 / 1.1, Up, "4.4 kN"),
        ("force", 4310.0, Up, "4.4 kN"),
        ("force", 0.0, Up, "0 N"),
        ("force", 45.2, Up, "46 N"),
        ("force", 990.0, Up, "990 N"),
        ("force", 991.0, Up, "1.0 kN"),
        ("force", 996.0, Nearest, "1.0 kN"),
        ("force", 12_300.0, Down, "12 kN"),
        ("force", 123_000.0, Up, "130 kN"),
        ("pressure", 8.1387e6, Nearest, "8.14 MPa"),
        ("pressure", 206e9, Nearest, "206000 MPa"),
        ("torque", 13.558, Nearest, "13.6 N·m"),
        ("mass", 0.2041, Nearest, "0.204 kg"),
        ("film", 12.0, Nearest, "12 W/(m²·K)"),
        ("film", 6.24, Up, "6.3 W/(m²·K)"),
        ("power", 950.0, Nearest, "950 W"),
        ("power", 1500.0, Nearest, "1.50 kW"),
        ("share", 0.55, Nearest, "55 %"),
        ("share", 0.000_66, Nearest, "0.066 %"),
        ("share", 0.9993, Down, "99 %"),
    ];
    assert_shows(&metric.map(|(kind, si, toward, want)| (kind, si, System::Metric, toward, want)));
}

#[test]
fn inch_reports_are_in_inch_units_throughout() {
    let inch = [
        ("size", 0.062, Nearest, "2.44094 in"),
        ("size", 0.061_998_86, Nearest, "2.44090 in"),
        ("small", -13e-6, Nearest, "-0.51 thou"),
        ("small", 30.48e-6, Nearest, "1.20 thou"),
        ("small", 25.4e-6, Nearest, "1.00 thou"),
        ("small", -101.6e-6, Nearest, "-4.00 thou"),
        ("small", 0.0, Nearest, "0.00 thou"),
        ("deviation", -25.4e-6, Nearest, "-1.00 thou"),
        ("deviation", 12.7e-6, Nearest, "+0.50 thou"),
        ("deviation", 0.0, Nearest, "0 thou"),
        ("Ra", 1.6e-6, Nearest, "Ra 63 µin"),
        ("temperature", 363.15, Nearest, "194 °F"),
        ("temperature", 255.372_222_222_222_2, Up, "0 °F"),
        ("step", 10.0, Nearest, "18 °F difference"),
        ("force", 4400.0, Up, "990 lbf"),
        ("force", 4_448.221_615_260_5, Up, "1000 lbf"),
        ("pressure", 8.1387e6, Nearest, "1180 psi"),
        ("torque", 13.558_179_483_314, Nearest, "120 in·lb"),
        ("torque", 162.698_153_799_768, Nearest, "120 ft·lb"),
        ("mass", 0.2041, Nearest, "0.450 lb"),
        ("film", 12.0, Nearest, "2.1 Btu/(h·ft²·°F)"),
        ("power", 1500.0, Nearest, "5120 Btu/h"),
    ];
    assert_shows(&inch.map(|(kind, si, toward, want)| (kind, si, System::Inch, toward, want)));
}

#[test]
fn times_are_as_fine_as_they_matter() {
    let rows = [
        (8.0, Down, "8 s"),
        (8.9, Down, "8 s"),
        (8.1, Up, "9 s"),
        (0.0, Down, "0 s"),
        (59.6, Up, "1 min 00 s"),
        (125.0, Nearest, "2 min 05 s"),
        (599.6, Up, "10 min"),
        (1680.0, Nearest, "28 min"),
        (3599.0, Up, "1 h 00 min"),
        (3599.0, Down, "59 min"),
        (4800.0, Nearest, "1 h 20 min"),
        (4_800.000_000_001, Up, "1 h 20 min"),
    ];
    for (seconds, toward, want) in rows {
        assert_eq!(show("duration", seconds, System::Metric, toward), want, "{seconds} s {toward:?}");
    }
}

#[test]
fn limits_are_printed_lower_first() {
    let limits = Deviations { lower: Nanometres(-13_000), upper: Nanometres(0) };
    assert_eq!(q::show_limits(limits, System::Metric), "-13/0 µm");
    assert_eq!(q::show_limits(limits, System::Inch), "-0.51/0 thou");
    let limits = Deviations { lower: Nanometres(6_500), upper: Nanometres(25_000) };
    assert_eq!(q::show_limits(limits, System::Metric), "+6.5/+25 µm");
}

#[test]
fn a_set_point_goes_up_to_the_next_mark_of_the_dial_and_stays_on_a_mark() {
    let rows = [
        (87.3, 5.0, Up, 90.0),
        (87.3, 5.0, Down, 85.0),
        (90.0, 5.0, Up, 90.0),
        (90.0 + 1e-11, 5.0, Up, 90.0),
        (90.0 - 1e-11, 5.0, Down, 90.0),
        (90.001, 5.0, Up, 95.0),
        (-18.2, 1.0, Up, -18.0),
        (-18.2, 1.0, Down, -19.0),
        (0.1 + 0.2, 0.1, Up, 0.3),
        (2.5, 1.0, Nearest, 3.0),
    ];
    for (value, step, toward, want) in rows {
        let got = q::to_step(value, step, toward);
        assert!((got - want).abs() < 1e-12, "{value} by {step} {toward:?}: got {got}");
    }
}

#[test]
fn a_temperature_has_the_decimals_asked_for() {
    let melting = q::celsius(0.04);
    assert_eq!(q::show_temperature(melting, System::Metric, 1, Up), "0.1 °C");
    assert_eq!(q::show_temperature(melting, System::Inch, 2, Nearest), "32.07 °F");
    assert_eq!(q::show_temperature(q::celsius(-0.3), System::Metric, 0, Nearest), "0 °C");
}

#[test]
fn what_is_not_finite_is_said_to_be_not_known() {
    for kind in KINDS.iter().map(|kind| kind.0) {
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            let text = show(kind, value, System::Metric, Up);
            assert!(text.ends_with("not known"), "{kind}: {text}");
        }
    }
}

#[test]
fn warming_is_the_difference_and_not_the_temperature() {
    let chilled = q::warming(q::celsius(-18.0), q::reference_temperature());
    assert!((chilled.get::<step::kelvin>() + 38.0).abs() < 1e-12);
    assert!((q::reference_temperature().get::<level::degree_celsius>() - 20.0).abs() < 1e-12);
    assert!((q::REFERENCE_TEMPERATURE_K - 293.15).abs() < 1e-12);
}

/// Kind, smallest and largest SI value, and the coarsest relative and absolute (SI) step that it is printed in.
const KINDS: &[(&str, f64, f64, f64, f64)] = &[
    ("size", 0.0, 3.15, 0.0, 1e-6),
    ("small", -0.04, 0.04, 0.0, 0.254e-6),
    ("deviation", -0.04, 0.04, 0.0, 0.254e-6),
    ("Ra", 0.0, 99e-6, 0.1, 0.026e-6),
    ("Rz", 0.0, 99e-6, 0.1, 0.026e-6),
    ("temperature", 1.0, 2000.0, 0.0, 1.0),
    ("step", -900.0, 900.0, 0.0, 1.0),
    ("duration", 0.0, 600.0, 0.0, 1.0),
    ("duration", 600.0, 1e6, 0.0, 60.0),
    ("force", 0.0, 1e6, 0.1, 4.45),
    ("pressure", 0.0, 2e9, 0.01, 1e4),
    ("torque", 0.0, 500.0, 0.01, 0.136),
    ("mass", 0.0, 500.0, 0.01, 1e-3),
    ("film", 0.0, 2e4, 0.1, 0.1),
    ("power", 0.0, 1e5, 0.01, 0.1),
    ("share", 0.0, 1.0, 0.1, 1e-5),
];

proptest! {
    #[test]
    fn every_printed_value_reads_back_on_the_side_asked_for(at in 0.0..1.0_f64, inch: bool) {
        let system = if inch { System::Inch } else { System::Metric };
        for &(kind, least, most, relative, absolute) in KINDS {
            let value = least + at * (most - least);
            let coarsest = (relative * value.abs()).max(absolute);
            let noise = 1e-8 * value.abs().max(absolute);
            let [up, down, near] = [Up, Down, Nearest].map(|toward| show(kind, value, system, toward));
            let [above, below, close] = [&up, &down, &near].map(|text| read(kind, text));
            prop_assert!(above >= value - noise, "{kind} {value}: {up}");
            prop_assert!(below <= value + noise, "{kind} {value}: {down}");
            prop_assert!(above - below <= 1.001 * coarsest + noise, "{kind} {value}: {down} to {up}");
            prop_assert!((close - value).abs() <= 0.501 * coarsest + noise, "{kind} {value}: {near}");
        }
    }

    #[test]
    fn a_printed_value_prints_as_itself_whatever_the_side(at in 0.0..1.0_f64, inch: bool) {
        let system = if inch { System::Inch } else { System::Metric };
        for &(kind, least, most, ..) in KINDS {
            let once = show(kind, least + at * (most - least), system, Nearest);
            let value = read(kind, &once);
            for toward in [Up, Down, Nearest] {
                prop_assert_eq!(&show(kind, value, system, toward), &once, "{} {}", kind, value);
            }
        }
    }

    #[test]
    fn limits_read_back_as_printed(a in -99_999_i64..99_999, b in -99_999_i64..99_999) {
        let limits = Deviations { lower: Nanometres(a.min(b) * 100), upper: Nanometres(a.max(b) * 100) };
        let text = q::show_limits(limits, System::Metric);
        prop_assert_eq!(q::limits(&text).unwrap().value, limits, "{}", text);
    }
}
