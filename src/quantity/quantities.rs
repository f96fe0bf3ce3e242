//! One reader for each quantity that a job names.

use super::Entered;
use super::error::{QuantityError, plain, quoted};
use super::numeral::{Fractions, Reading, Scanner, numeral};
use super::read::{Wanted, comma, in_range, no_number, read};
use super::unit::Kind;
use super::{
    Force, HeatTransfer, Length, Mass, Power, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Time,
    Torque,
};
use uom::si::{
    force::newton, heat_transfer::watt_per_square_meter_kelvin, length::meter, mass::kilogram, power::watt,
    pressure::pascal, ratio::ratio, temperature_interval as step, thermodynamic_temperature as level, time::second,
    torque::newton_meter,
};

pub(super) const LENGTH: Wanted = Wanted {
    kind: Kind::Length,
    what: "a length",
    units: "mm, µm, cm, m, in, thou or ft",
    example: "62 mm or 2.4409 in",
    least: 0.0,
    most: 1e4,
    range: "0 to 10 km",
    // the largest size of ISO 286-1
    thousands_end: 3.15,
};

const COORDINATE: Wanted = Wanted {
    kind: Kind::Length,
    what: "a coordinate",
    units: "mm, cm, m, in or ft",
    example: "-45 mm or 1-3/4 in",
    least: -1e4,
    most: 1e4,
    range: "-10 km to 10 km",
    thousands_end: 3.15,
};

pub(super) const DEVIATION: Wanted = Wanted {
    kind: Kind::Length,
    what: "a deviation",
    units: "µm, mm, thou or in",
    example: "-13 um or +0.0005 in",
    // IT18 of the largest sizes in ISO 286-1 is 33 mm
    least: -0.05,
    most: 0.05,
    range: "-50 mm to 50 mm",
    thousands_end: 0.05,
};

const TEMPERATURE: Wanted = Wanted {
    kind: Kind::Temperature,
    what: "a temperature",
    units: "°C, °F or K",
    example: "90 °C or 194 °F",
    least: 0.0,
    most: 2273.15,
    range: "absolute zero to 2000 °C",
    thousands_end: 2273.15,
};

const STEP: Wanted = Wanted {
    kind: Kind::Step,
    what: "a temperature difference",
    units: "K, °C or °F",
    example: "5 K or 9 °F",
    least: -2000.0,
    most: 2000.0,
    range: "-2000 K to 2000 K",
    thousands_end: 2000.0,
};

const DURATION: Wanted = Wanted {
    kind: Kind::Duration,
    what: "a time",
    units: "s, min or h",
    example: "30 min or 1 h 30 min",
    least: 0.0,
    most: 3.6e7,
    range: "0 to 10000 h",
    thousands_end: 3.6e7,
};

const MASS: Wanted = Wanted {
    kind: Kind::Mass,
    what: "a mass",
    units: "kg, g, lb or oz",
    example: "0.20 kg or 7 oz",
    least: 0.0,
    most: 1e6,
    range: "0 to 1000 t",
    thousands_end: 1e6,
};

const PRESSURE: Wanted = Wanted {
    kind: Kind::Pressure,
    what: "a pressure or stress",
    units: "MPa, N/mm², bar, kPa, GPa, psi or ksi",
    example: "210 MPa or 30 ksi",
    least: 0.0,
    most: 2e12,
    range: "0 to 2000 GPa",
    thousands_end: 2e12,
};

const FORCE: Wanted = Wanted {
    kind: Kind::Force,
    what: "a force",
    units: "N, kN, lbf, kgf or a named ton-force",
    example: "4.4 kN, 990 lbf or 2 short ton-force",
    least: 0.0,
    most: 1e9,
    range: "0 to 1000000 kN",
    thousands_end: 1e9,
};

const TORQUE: Wanted = Wanted {
    kind: Kind::Torque,
    what: "a torque",
    units: "N·m, in·lb, ft·lb or kgf·m",
    example: "13.6 N·m or 120 in·lb",
    least: 0.0,
    most: 1e7,
    range: "0 to 10000 kN·m",
    thousands_end: 1e7,
};

const POWER: Wanted = Wanted {
    kind: Kind::Power,
    what: "a power",
    units: "W, kW or Btu/h",
    example: "1.5 kW",
    least: 0.0,
    most: 1e8,
    range: "0 to 100000 kW",
    thousands_end: 1e8,
};

const FILM: Wanted = Wanted {
    kind: Kind::Film,
    what: "a heat transfer coefficient",
    units: "W/(m²·K) or Btu/(h·ft²·°F)",
    example: "12 W/m2K",
    least: 0.0,
    most: 1e7,
    range: "0 to 10000000 W/(m²·K)",
    thousands_end: 1e7,
};

const SHARE: Wanted = Wanted {
    kind: Kind::Share,
    what: "a share",
    units: "%",
    example: "55 %",
    least: 0.0,
    most: 1.0,
    range: "0 % to 100 %",
    thousands_end: 1.0,
};

const NUMBER: Wanted = Wanted {
    kind: Kind::Bare,
    what: "a plain number",
    units: "digits, with no unit",
    example: "0.12",
    least: -1e9,
    most: 1e9,
    range: "-1000000000 to 1000000000",
    thousands_end: 1e9,
};

/// Reads a size or distance, such as "62 mm", "2.4409 in", "1-1/8 in" or "Ø62 mm".
///
/// # Errors
/// No number or unit, a unit of something else or with two readings, a negative length, or more than 10 km.
pub fn length(text: &str) -> Result<Entered<Length>, QuantityError> {
    // a drawing's diameter sign says nothing about the length; bytes before the number keep their places
    let bare = text.trim_start().trim_start_matches(['Ø', 'ø', '⌀']);
    let cut = text.len() - bare.len();
    let entered = read(bare, &LENGTH).map_err(|error| shifted(error, cut))?;
    Ok(entered.map(Length::new::<meter>))
}

/// Reads a distance along an axis, either way, such as "-45 mm" or "1-3/4 in".
///
/// # Errors
/// As [`length`], for distances beyond 10 km either way.
pub fn coordinate(text: &str) -> Result<Entered<Length>, QuantityError> {
    Ok(read(text, &COORDINATE)?.map(Length::new::<meter>))
}

/// Reads a small signed length, such as "-13 um" or "+0.5 thou".
///
/// # Errors
/// As [`length`], for sizes beyond 50 mm either way.
pub fn deviation(text: &str) -> Result<Entered<Length>, QuantityError> {
    Ok(read(text, &DEVIATION)?.map(Length::new::<meter>))
}

/// Reads a temperature, such as "-18 °C", "0 F" or "77 K". See [`temperature_step`] for differences.
///
/// # Errors
/// No number or unit, below absolute zero, above 2000 °C.
pub fn temperature(text: &str) -> Result<Entered<ThermodynamicTemperature>, QuantityError> {
    Ok(read(text, &TEMPERATURE)?.map(ThermodynamicTemperature::new::<level::kelvin>))
}

/// Reads a difference of two temperatures, such as "5 K" or "9 °F" (which are the same).
///
/// # Errors
/// No number or unit, more than 2000 K either way.
pub fn temperature_step(text: &str) -> Result<Entered<TemperatureInterval>, QuantityError> {
    Ok(read(text, &STEP)?.map(TemperatureInterval::new::<step::kelvin>))
}

/// Reads a time, such as "8 s", "30 min" or "1 h 30 min".
///
/// # Errors
/// No number or unit, a negative time, more than 10 000 h, or "1:30", which could be either of two.
pub fn duration(text: &str) -> Result<Entered<Time>, QuantityError> {
    if let Some((first, then)) = text.trim().split_once(':') {
        let clock = |s: &str| !s.is_empty() && s.chars().all(|c| c.is_ascii_digit());
        if clock(first) && clock(then) {
            let problem = format!("{} could be {first} h {then} min or {first} min {then} s", quoted(text.trim()));
            return Err(QuantityError::new(0..text.len(), problem, "write the units, such as 1 h 30 min"));
        }
    }
    Ok(read(text, &DURATION)?.map(Time::new::<second>))
}

/// Reads a mass, such as "0.20 kg" or "3 lb 12 oz".
///
/// # Errors
/// No number or unit, a negative mass, more than 1000 t.
pub fn mass(text: &str) -> Result<Entered<Mass>, QuantityError> {
    Ok(read(text, &MASS)?.map(Mass::new::<kilogram>))
}

/// Reads a pressure, stress or elastic modulus, such as "210 MPa" or "30 ksi".
///
/// # Errors
/// No number or unit, a negative pressure, more than 2000 GPa.
pub fn pressure(text: &str) -> Result<Entered<Pressure>, QuantityError> {
    Ok(read(text, &PRESSURE)?.map(Pressure::new::<pascal>))
}

/// Reads a force, such as "4.4 kN", "990 lbf" or "2 short ton-force".
///
/// # Errors
/// No number or unit, a bare "ton" (there are three), a negative force, more than a million kN.
pub fn force(text: &str) -> Result<Entered<Force>, QuantityError> {
    Ok(read(text, &FORCE)?.map(Force::new::<newton>))
}

/// Reads a torque, such as "13.6 N·m", "120 in-lb" or "10 ft.lb".
///
/// # Errors
/// No number or unit, a negative torque, more than ten million N·m.
pub fn torque(text: &str) -> Result<Entered<Torque>, QuantityError> {
    Ok(read(text, &TORQUE)?.map(Torque::new::<newton_meter>))
}

/// Reads a power, such as "1.5 kW" or "5000 Btu/h".
///
/// # Errors
/// No number or unit, a negative power, more than 100 000 kW.
pub fn power(text: &str) -> Result<Entered<Power>, QuantityError> {
    Ok(read(text, &POWER)?.map(Power::new::<watt>))
}

/// Reads a heat transfer coefficient, such as "12 W/m2K" or "2 Btu/h·ft²·°F".
///
/// # Errors
/// No number or unit, a negative value, more than 10⁷ W/(m²·K).
pub fn film_coefficient(text: &str) -> Result<Entered<HeatTransfer>, QuantityError> {
    Ok(read(text, &FILM)?.map(HeatTransfer::new::<watt_per_square_meter_kelvin>))
}

/// Reads a share of a whole in percent, such as "55 %".
///
/// # Errors
/// A bare number (0.55 and 55 are both typed for 55 %), less than 0 % or more than 100 %.
pub fn share(text: &str) -> Result<Entered<Ratio>, QuantityError> {
    if let Some(bare) = number(text).ok().filter(|bare| (0.0..=100.0).contains(&bare.value)) {
        return Err(bare_share(text, bare.value));
    }
    Ok(read(text, &SHARE)?.map(Ratio::new::<ratio>))
}

fn bare_share(text: &str, value: f64) -> QuantityError {
    let (percent, help) = if value <= 1.0 {
        let percent = plain(value * 100.0);
        let help = format!("write {percent} %, or {} % if that is meant", plain(value));
        (percent, help)
    } else {
        (plain(value), format!("write {} %", plain(value)))
    };
    QuantityError::new(0..text.len(), format!("{} has no unit: is {percent} % meant?", quoted(text)), help)
}

/// Reads a number that has no unit, such as a coefficient of friction, "0.12".
///
/// # Errors
/// No number, something after it, a comma with two readings, or more than 10⁹ either way.
pub fn number(text: &str) -> Result<Entered<f64>, QuantityError> {
    let mut scan = Scanner::new(text);
    scan.skip_space();
    let Some(found) = numeral(&mut scan, Fractions::Allowed)? else { return Err(no_number(&scan, &NUMBER)) };
    let typed = &text[found.from..found.to];
    scan.skip_space();
    if !scan.rest().is_empty() {
        let problem = format!("{} follows, but a plain number has no unit", quoted(scan.rest()));
        return Err(QuantityError::new(scan.at..text.len(), problem, NUMBER.help()));
    }
    let value = match found.reading {
        Reading::Sure(value) => value,
        Reading::Either { decimal, thousands } => return Err(comma(&found, decimal, thousands, "", typed)),
    };
    in_range(value, &NUMBER, text, found.from..found.to)?;
    Ok(Entered { value, system: None })
}

/// Moves the underlined bytes of an error that arose in the text after its first `cut` bytes.
pub(super) fn shifted(mut error: QuantityError, cut: usize) -> QuantityError {
    error.at = error.at.start + cut..error.at.end + cut;
    error
}
