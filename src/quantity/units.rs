//! The units that a shop writes, and the words that are refused because they have two readings.
//!
//! Factors are built from exact definitions: 1 in = 25.4 mm, 1 lb = 0.45359237 kg (international yard and pound
//! agreement, 1959), standard gravity 9.80665 m/s² (3rd CGPM, 1901), IT Btu = 1055.05585262 J (from memory).
//! They are written here, and not taken from `uom`, because its pound-force and psi carry seven digits only.

use super::System;
use super::unit::Kind::{
    self, BodyHeat, Conductivity, Density, Duration, Expansion, Film, Force, HeatCapacity, Length, Mass, Power,
    Pressure, Share, Step, Temperature, Torque, Turning, Volume,
};
use super::unit::Unit;

const INCH_M: f64 = 0.0254;
const FOOT_M: f64 = 0.3048;
const POUND_KG: f64 = 0.453_592_37;
const OUNCE_KG: f64 = POUND_KG / 16.0;
const GRAVITY: f64 = 9.806_65;
const POUND_FORCE_N: f64 = POUND_KG * GRAVITY;
const PSI_PA: f64 = POUND_FORCE_N / (INCH_M * INCH_M);
const FAHRENHEIT_K: f64 = 5.0 / 9.0;
const BTU_PER_HOUR_W: f64 = 1_055.055_852_62 / 3600.0;

const METRIC: Option<System> = Some(System::Metric);
const IN: Option<System> = Some(System::Inch);

const fn unit(kind: Kind, names: &'static [&'static str], factor: f64, system: Option<System>) -> Unit {
    Unit { kind, names, factor, zero: 0.0, system }
}

const fn level(names: &'static [&'static str], factor: f64, zero: f64, system: Option<System>) -> Unit {
    Unit { kind: Temperature, names, factor, zero, system }
}

// The units in which reports print.
pub(super) const MM: Unit =
    unit(Length, &["mm", "millimetre", "millimetres", "millimeter", "millimeters"], 1e-3, METRIC);
pub(super) const MICROMETRE: Unit = unit(
    Length,
    &["µm", "µ", "micron", "microns", "micrometre", "micrometres", "micrometer", "micrometers"],
    1e-6,
    METRIC,
);
pub(super) const METRES: Unit = unit(Length, &["m", "metre", "metres", "meter", "meters"], 1.0, METRIC);
pub(super) const FEET: Unit = unit(Length, &["ft", "foot", "feet", "'"], FOOT_M, IN);
pub(super) const INCHES: Unit = unit(Length, &["in", "inch", "inches", "\"", "''"], INCH_M, IN);
pub(super) const THOU: Unit = unit(Length, &["thou", "thous", "thousandth", "thousandths"], INCH_M / 1e3, IN);
pub(super) const MICROINCH: Unit = unit(Length, &["µin", "microinch", "microinches"], INCH_M / 1e6, IN);
pub(super) const CELSIUS: Unit =
    level(&["°C", "C", "degC", "degrees C", "degree C", "degs C", "celsius", "degrees celsius"], 1.0, 273.15, METRIC);
pub(super) const FAHRENHEIT: Unit = level(
    &["°F", "F", "degF", "degrees F", "degree F", "degs F", "fahrenheit", "degrees fahrenheit"],
    FAHRENHEIT_K,
    459.67,
    IN,
);
pub(super) const KELVIN_STEP: Unit = unit(Step, &["K", "kelvin", "kelvins", "degK", "°K"], 1.0, None);
pub(super) const FAHRENHEIT_STEP: Unit =
    unit(Step, &["°F", "F", "degF", "degrees F", "degree F", "fahrenheit", "°F difference"], FAHRENHEIT_K, IN);
pub(super) const KILOGRAM: Unit = unit(Mass, &["kg", "kgs", "kilogram", "kilograms", "kilo", "kilos"], 1.0, METRIC);
pub(super) const POUNDS: Unit = unit(Mass, &["lb", "lbs", "lbm", "pound", "pounds"], POUND_KG, IN);
pub(super) const MEGAPASCAL: Unit = unit(Pressure, &["MPa", "N/mm²", "megapascal", "megapascals"], 1e6, METRIC);
pub(super) const PSI: Unit = unit(Pressure, &["psi", "lbf/in²", "lb/in²", "lbs/in²"], PSI_PA, IN);
pub(super) const NEWTON: Unit = unit(Force, &["N", "newton", "newtons"], 1.0, METRIC);
pub(super) const KILONEWTON: Unit = unit(Force, &["kN", "kilonewton", "kilonewtons"], 1e3, METRIC);
pub(super) const POUNDS_FORCE: Unit = unit(Force, &["lbf", "lbsf", "pound-force", "pounds-force"], POUND_FORCE_N, IN);
pub(super) const NEWTON_METRE: Unit =
    unit(Torque, &["N·m", "newton metre", "newton metres", "newton meter", "newton meters"], 1.0, METRIC);
pub(super) const INCH_POUND: Unit = unit(
    Torque,
    &["in·lb", "in·lbs", "in·lbf", "lb·in", "lbs·in", "lbf·in", "inch·lb", "inch·lbs", "inch pound", "inch pounds"],
    POUND_FORCE_N * INCH_M,
    IN,
);
pub(super) const FOOT_POUND: Unit = unit(
    Torque,
    &["ft·lb", "ft·lbs", "ft·lbf", "lb·ft", "lbs·ft", "lbf·ft", "foot·lb", "foot·lbs", "foot pound", "foot pounds"],
    POUND_FORCE_N * FOOT_M,
    IN,
);
pub(super) const KILOGRAM_FORCE_METRE: Unit =
    unit(Torque, &["kgf·m", "kg·m", "m·kg", "m·kgf", "kp·m"], GRAVITY, METRIC);
pub(super) const WATT: Unit = unit(Power, &["W", "watt", "watts"], 1.0, None);
pub(super) const KILOWATT: Unit = unit(Power, &["kW", "kilowatt", "kilowatts"], 1e3, None);
pub(super) const BTU_PER_HOUR: Unit = unit(Power, &["Btu/h", "Btu/hr", "Btuh"], BTU_PER_HOUR_W, IN);
pub(super) const REVOLUTIONS_PER_MINUTE: Unit =
    unit(Turning, &["rpm", "1/min", "r/min", "rev/min", "/min"], std::f64::consts::PI / 30.0, None);
pub(super) const FILM_METRIC: Unit = unit(
    Film,
    &["W/(m²·K)", "W/m²K", "W/m²/K", "W/(m²·°C)", "W/m²°C", "W/m²/°C", "W/(m²·C)", "W/m²C", "W/m²/C", "W·m-2·K-1"],
    1.0,
    METRIC,
);
pub(super) const FILM_INCH: Unit = unit(
    Film,
    &[
        "Btu/(h·ft²·°F)",
        "Btu/h·ft²·°F",
        "Btu/h/ft²/°F",
        "Btu/(h·ft²·F)",
        "Btu/h·ft²·F",
        "Btu/h/ft²/F",
        "Btu/(hr·ft²·°F)",
        "Btu/hr·ft²·°F",
        "Btu/hr/ft²/°F",
        "Btu/(hr·ft²·F)",
        "Btu/hr·ft²·F",
        "Btu/hr/ft²/F",
    ],
    BTU_PER_HOUR_W / (FOOT_M * FOOT_M * FAHRENHEIT_K),
    IN,
);
pub(super) const KILOJOULE_PER_KELVIN: Unit = unit(BodyHeat, &["kJ/K", "kJ/°C"], 1e3, METRIC);
pub(super) const BTU_PER_FAHRENHEIT: Unit =
    unit(BodyHeat, &["Btu/°F", "Btu/F"], 3600.0 * BTU_PER_HOUR_W / FAHRENHEIT_K, IN);
pub(super) const PERCENT: Unit = unit(Share, &["%", "percent", "pct", "% RH"], 1e-2, None);

/// Every unit, those of one kind together and the most used first. Spellings are compared without case, gaps and dots.
pub(super) const UNITS: &[Unit] = &[
    MM,
    MICROMETRE,
    unit(Length, &["thousandths of a mm", "thousandth of a mm", "thousandths mm", "thou of a mm"], 1e-6, METRIC),
    unit(Length, &["hundredths of a mm", "hundredth of a mm", "hundredths mm", "hundredth mm"], 1e-5, METRIC),
    unit(Length, &["tenths of a mm", "tenth of a mm", "tenths mm", "tenth mm"], 1e-4, METRIC),
    unit(Length, &["cm", "centimetre", "centimetres", "centimeter", "centimeters"], 1e-2, METRIC),
    METRES,
    INCHES,
    THOU,
    unit(Length, &["thousandths of an inch", "thousandth of an inch", "thousandths in"], INCH_M / 1e3, IN),
    unit(Length, &["hundredths of an inch", "hundredth of an inch"], INCH_M / 1e2, IN),
    unit(Length, &["tenths of a thou", "tenth of a thou", "tenths thou", "tenth thou"], INCH_M / 1e4, IN),
    unit(Length, &["tenths of a thousandth", "tenth of a thousandth"], INCH_M / 1e4, IN),
    MICROINCH,
    FEET,
    CELSIUS,
    FAHRENHEIT,
    level(&["K", "kelvin", "kelvins", "degK", "°K"], 1.0, 0.0, None),
    KELVIN_STEP,
    unit(Step, &["°C", "C", "degC", "degrees C", "degree C", "celsius", "°C difference"], 1.0, METRIC),
    FAHRENHEIT_STEP,
    unit(Duration, &["s", "sec", "secs", "second", "seconds"], 1.0, None),
    unit(Duration, &["min", "mins", "minute", "minutes"], 60.0, None),
    unit(Duration, &["h", "hr", "hrs", "hour", "hours"], 3600.0, None),
    unit(Duration, &["d", "day", "days"], 86_400.0, None),
    KILOGRAM,
    unit(Mass, &["g", "gram", "grams"], 1e-3, METRIC),
    unit(Mass, &["t", "tonne", "tonnes", "metric ton", "metric tons"], 1e3, METRIC),
    POUNDS,
    unit(Mass, &["oz", "ounce", "ounces"], OUNCE_KG, IN),
    MEGAPASCAL,
    unit(Pressure, &["bar", "bars"], 1e5, METRIC),
    unit(Pressure, &["GPa", "kN/mm²"], 1e9, METRIC),
    unit(Pressure, &["kPa"], 1e3, METRIC),
    unit(Pressure, &["hPa", "mbar"], 1e2, METRIC),
    unit(Pressure, &["Pa", "N/m²"], 1.0, METRIC),
    PSI,
    unit(Pressure, &["ksi"], PSI_PA * 1e3, IN),
    unit(Pressure, &["Msi", "Mpsi"], PSI_PA * 1e6, IN),
    NEWTON,
    KILONEWTON,
    unit(Force, &["daN"], 10.0, METRIC),
    unit(Force, &["kgf", "kilogram-force", "kp"], GRAVITY, METRIC),
    unit(Force, &["metric ton-force", "metric tons-force", "tonne-force"], GRAVITY * 1e3, METRIC),
    POUNDS_FORCE,
    unit(Force, &["kip", "kips"], POUND_FORCE_N * 1e3, IN),
    unit(Force, &["short ton-force", "short tons-force"], POUND_FORCE_N * 2000.0, IN),
    unit(Force, &["long ton-force", "long tons-force"], POUND_FORCE_N * 2240.0, IN),
    NEWTON_METRE,
    unit(Torque, &["kN·m"], 1e3, METRIC),
    unit(Torque, &["N·cm"], 1e-2, METRIC),
    unit(Torque, &["N·mm"], 1e-3, METRIC),
    KILOGRAM_FORCE_METRE,
    unit(Torque, &["kgf·cm", "kg·cm"], GRAVITY / 1e2, METRIC),
    INCH_POUND,
    FOOT_POUND,
    unit(Torque, &["in·oz", "in·ozf", "oz·in", "ozf·in"], OUNCE_KG * GRAVITY * INCH_M, IN),
    WATT,
    KILOWATT,
    BTU_PER_HOUR,
    REVOLUTIONS_PER_MINUTE,
    unit(Turning, &["rad/s"], 1.0, None),
    FILM_METRIC,
    FILM_INCH,
    unit(Volume, &["m³", "cubic metre", "cubic metres", "cubic meter", "cubic meters"], 1.0, METRIC),
    unit(Volume, &["l", "litre", "litres", "liter", "liters"], 1e-3, METRIC),
    unit(Volume, &["ft³", "cubic foot", "cubic feet"], FOOT_M * FOOT_M * FOOT_M, IN),
    unit(Density, &["kg/m³"], 1.0, METRIC),
    unit(Density, &["g/cm³", "g/cc", "kg/dm³"], 1e3, METRIC),
    unit(Density, &["lb/in³"], POUND_KG / (INCH_M * INCH_M * INCH_M), IN),
    unit(Expansion, &["um/(m·K)", "um/m·K", "um/m/K", "um/(m·°C)", "um/m·°C", "um/m/°C"], 1e-6, METRIC),
    unit(Expansion, &["ppm/K", "ppm/°C", "ppm/C"], 1e-6, METRIC),
    unit(Expansion, &["1/K", "/K", "K-1", "1/°C", "/°C"], 1.0, METRIC),
    unit(Expansion, &["uin/(in·°F)", "uin/in·°F", "uin/in/°F", "uin/in/F", "ppm/°F"], 1e-6 / FAHRENHEIT_K, IN),
    unit(Expansion, &["1/°F", "/°F"], 1.0 / FAHRENHEIT_K, IN),
    unit(HeatCapacity, &["J/(kg·K)", "J/kg·K", "J/kg/K", "J/(kg·°C)"], 1.0, METRIC),
    unit(HeatCapacity, &["kJ/(kg·K)", "kJ/kg·K", "kJ/kg/K"], 1e3, METRIC),
    unit(
        HeatCapacity,
        &["Btu/(lb·°F)", "Btu/lb·°F", "Btu/lb/°F"],
        3600.0 * BTU_PER_HOUR_W / (POUND_KG * FAHRENHEIT_K),
        IN,
    ),
    KILOJOULE_PER_KELVIN,
    unit(BodyHeat, &["J/K", "J/°C"], 1.0, METRIC),
    BTU_PER_FAHRENHEIT,
    unit(Conductivity, &["W/(m·K)", "W/m·K", "W/m/K", "W/(m·°C)"], 1.0, METRIC),
    unit(Conductivity, &["Btu/(h·ft·°F)", "Btu/h·ft·°F", "Btu/h/ft/°F"], BTU_PER_HOUR_W / (FOOT_M * FAHRENHEIT_K), IN),
    PERCENT,
];

/// A word that a shop uses for two different units.
#[derive(Debug)]
pub(super) struct Ambiguous {
    pub(super) kinds: &'static [Kind],
    pub(super) names: &'static [&'static str],
    /// What one of it could be: amount and unit.
    pub(super) readings: &'static [(f64, &'static str)],
    pub(super) write: &'static str,
}

/// The words that are refused, with their readings.
pub(super) const AMBIGUOUS: &[Ambiguous] = &[
    Ambiguous {
        kinds: &[Length],
        names: &["mil", "mils"],
        readings: &[(1.0, "thou"), (1.0, "mm")],
        write: "write `thou` (thousandths of an inch) or `mm`",
    },
    Ambiguous {
        kinds: &[Length],
        names: &["tenth", "tenths"],
        readings: &[(0.1, "mm"), (0.0001, "in")],
        write: "write `tenths of a mm` or `tenths of a thou`",
    },
    Ambiguous {
        kinds: &[Length],
        names: &["hundredth", "hundredths"],
        readings: &[(0.01, "mm"), (0.01, "in")],
        write: "write `hundredths of a mm` or `hundredths of an inch`",
    },
    Ambiguous {
        kinds: &[Temperature, Step],
        names: &["°", "deg", "degs", "degree", "degrees"],
        readings: &[(1.0, "°C"), (1.0, "°F")],
        write: "write `°C` or `°F`, or plain `C` or `F`",
    },
    Ambiguous {
        kinds: &[Force],
        names: &["ton", "tons", "tonf", "ton-force", "tons-force", "tf"],
        readings: &[(2000.0, "lbf"), (2240.0, "lbf"), (1000.0, "kgf")],
        write: "write `short ton-force`, `long ton-force` or `metric ton-force`",
    },
    Ambiguous {
        kinds: &[Mass],
        names: &["ton", "tons"],
        readings: &[(2000.0, "lb"), (2240.0, "lb"), (1000.0, "kg")],
        write: "write it in lb or kg",
    },
];
